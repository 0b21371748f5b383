// SPDX-License-Identifier: MIT
// A mark says when such marks were used. Neither form ever says when the thing was made.
#include "listing/dates.h"

#include <string.h>

#include "notes/age.h"
#include "text/order.h"

static const char caution[] = "A mark tells its own years, not the thing's: old molds, stock and papers are "
                              "used up, and marks are copied.";

bool dates_must(const struct dating *d) {
    return !d->fits || d->future_count > 0;
}

static void mark_text(struct arena *arena, struct buf *out, const struct dated_mark *m) {
    buf_format(out, "\n\"%s\"", m->words);
    if (!text_same(m->words, m->mark)) buf_format(out, " in \"%s\"", m->mark);
    buf_text(out, ": ");
    if (m->wrong)
        buf_format(out, "bounds nothing, since %s [%s]\n", m->wrong, m->bound->rule.id);
    else
        buf_format(out, "%s (%s%s) [%s]\n", dating_years(arena, m->not_before, m->not_after),
                   bound_sure_name(m->bound->sure), m->counts ? "" : ", narrows nothing", m->bound->rule.id);
    buf_format(out, "  %s\n", m->told);
    if (m->bound->rule.why) buf_format(out, "  why: %s\n", m->bound->rule.why);
    buf_format(out, "  source: %s\n", m->bound->rule.source);
}

// Every finding, in the order of its weight.
static void each_finding(struct arena *arena, const struct dating *d, void *to,
                         void (*tell)(void *to, const char *level, const char *code, const char *message)) {
    for (size_t i = 0; i < d->conflict_count; i++)
        tell(to, "must", "dates.conflict", dating_conflict_text(arena, &d->conflicts[i]));
    for (size_t i = 0; i < d->future_count; i++)
        tell(to, "must", "dates.future",
             arena_format(arena, "'%s' was not used before %d, which is still to come", d->future[i]->words,
                          d->future[i]->not_before));
    for (size_t i = 0; i < d->count; i++)
        if (d->marks[i].wrong)
            tell(to, "should", "dates.number",
                 arena_format(arena, "'%s': %s; look at it again", d->marks[i].words, d->marks[i].wrong));
    struct date_words words;
    for (size_t i = 0; i < d->silent_count; i++)
        if (!date_words(arena, d->silent[i], &words))
            tell(to, "could", "dates.unknown", arena_format(arena, "no rule knows '%s'", d->silent[i]));
    if (d->slow) tell(to, "should", "rule.slow", "a rule's pattern took too long and was given up");
}

static void line(void *to, const char *level, const char *code, const char *message) {
    buf_format(to, "%s: %s [%s]\n", level, message, code);
}

// Words of age are the seller's and no mark: their years are told, and bound nothing.
static void words_text(struct arena *arena, struct buf *out, const char *mark) {
    struct date_words words;
    if (!date_words(arena, mark, &words)) return;
    buf_format(out, "\n\"%s\": ", mark);
    if (words.from || words.to)
        buf_format(out, "%s as words of age; ", dating_years(arena, words.from, words.to));
    buf_format(out, "%s\n", words.because);
}

void dates_text(struct buf *out, const struct dating *d) {
    struct arena *arena = out->arena;
    buf_format(out, "%s\n", dating_summary(arena, d));
    for (size_t i = 0; i < d->count; i++) mark_text(arena, out, &d->marks[i]);
    for (size_t i = 0; i < d->silent_count; i++) words_text(arena, out, d->silent[i]);
    buf_byte(out, '\n');
    each_finding(arena, d, out, line);
    buf_format(out, "%s\n", caution);
}

struct list {
    struct arena *arena;
    struct node *node;
};

static void put_text(struct arena *arena, struct node *map, const char *key, const char *text) {
    if (text) node_put(arena, map, key, node_text(arena, text));
}

static void put_year(struct arena *arena, struct node *map, const char *key, int year) {
    if (year) node_put(arena, map, key, node_whole(arena, year));
}

static void push(void *to, const char *level, const char *code, const char *message) {
    const struct list *list = to;
    struct node *map = node_map(list->arena);
    put_text(list->arena, map, "level", level);
    put_text(list->arena, map, "code", code);
    put_text(list->arena, map, "message", message);
    node_push(list->arena, list->node, map);
}

static struct node *mark_tree(struct arena *arena, const struct dated_mark *m) {
    struct node *map = node_map(arena);
    put_text(arena, map, "mark", m->mark);
    put_text(arena, map, "found", m->words);
    put_text(arena, map, "bound", m->bound->rule.id);
    put_year(arena, map, "not_before", m->not_before);
    put_year(arena, map, "not_after", m->not_after);
    put_text(arena, map, "sure", bound_sure_name(m->bound->sure));
    node_put(arena, map, "narrows", node_bool_new(arena, m->counts));
    put_text(arena, map, "text", m->told);
    put_text(arena, map, "wrong", m->wrong);
    put_text(arena, map, "why", m->bound->rule.why);
    put_text(arena, map, "source", m->bound->rule.source);
    return map;
}

static struct node *side_tree(struct arena *arena, const struct dated_mark *m) {
    struct node *map = node_map(arena);
    put_text(arena, map, "mark", m->mark);
    put_text(arena, map, "bound", m->bound->rule.id);
    return map;
}

static struct node *conflict_tree(struct arena *arena, const struct date_conflict *c) {
    struct node *map = node_map(arena), *late = side_tree(arena, c->late),
                *early = side_tree(arena, c->early);
    put_year(arena, late, "not_before", c->late->not_before);
    put_year(arena, early, "not_after", c->early->not_after);
    node_put(arena, map, "late", late);
    node_put(arena, map, "early", early);
    return map;
}

static struct node *words_tree(struct arena *arena, const struct dating *d) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < d->silent_count; i++) {
        struct date_words words;
        if (!date_words(arena, d->silent[i], &words)) continue;
        struct node *map = node_map(arena);
        put_text(arena, map, "text", d->silent[i]);
        put_year(arena, map, "from", words.from);
        put_year(arena, map, "to", words.to);
        put_text(arena, map, "because", words.because);
        node_push(arena, list, map);
    }
    return list;
}

struct node *dates_tree(struct arena *arena, const struct dating *d, bool alone) {
    struct node *map = node_map(arena), *marks = node_list(arena), *conflicts = node_list(arena);
    struct list findings = {arena, node_list(arena)};
    if (d->fits) {
        put_year(arena, map, "from", d->from);
        put_year(arena, map, "to", d->to);
    }
    node_put(arena, map, "fits", node_bool_new(arena, d->fits));
    put_text(arena, map, "told", dating_summary(arena, d));
    for (size_t i = 0; i < d->count; i++) node_push(arena, marks, mark_tree(arena, &d->marks[i]));
    node_put(arena, map, "bounds", marks);
    for (size_t i = 0; i < d->conflict_count; i++)
        node_push(arena, conflicts, conflict_tree(arena, &d->conflicts[i]));
    node_put(arena, map, "conflicts", conflicts);
    put_text(arena, map, "caution", caution);
    if (!alone) return map;
    struct node *words = words_tree(arena, d);
    if (words->count) node_put(arena, map, "words", words);
    each_finding(arena, d, &findings, push);
    node_put(arena, map, "findings", findings.node);
    return map;
}
