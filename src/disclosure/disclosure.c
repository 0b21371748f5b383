// SPDX-License-Identifier: MIT
// Order of the paragraph: function, structure, missing parts, repairs, dirt and smell, states; then what was
// not looked at; then what was looked for and not seen, as narrow as it was said.
#include "disclosure/disclosure.h"

#include <stdint.h>
#include <string.h>

// Texts numbered in order of first use.
struct texts_met {
    const char **at;
    size_t count, room;
    size_t *slots; // number + 1; 0 where empty
    size_t slot_count;
};

static size_t slot_of(const struct texts_met *met, const char *text) {
    uint64_t h = 14695981039346656037u;
    for (const char *c = text; *c; c++) h = (h ^ (unsigned char)*c) * 1099511628211u;
    size_t at = (size_t)(h ^ (h >> 32)) & (met->slot_count - 1);
    while (met->slots[at] && met->at && strcmp(met->at[met->slots[at] - 1], text) != 0)
        at = (at + 1) & (met->slot_count - 1);
    return at;
}

static size_t text_number(struct arena *arena, struct texts_met *met, const char *text) {
    if (2 * (met->count + 1) > met->slot_count) {
        met->slot_count = met->slot_count ? 2 * met->slot_count : 32;
        met->slots = arena_array(arena, met->slot_count, sizeof *met->slots);
        for (size_t i = 0; i < met->count; i++) met->slots[slot_of(met, met->at[i])] = i + 1;
    }
    size_t at = slot_of(met, text);
    if (met->slots[at]) return met->slots[at] - 1;
    met->at = arena_grow(arena, (void *)met->at, met->count, &met->room, sizeof *met->at);
    met->at[met->count++] = text;
    met->slots[at] = met->count;
    return met->count - 1;
}

struct teller {
    struct arena *arena;
    struct disclosure d;
    struct texts_met told;
};

static void add(struct teller *t, const char *text, const char *because, struct note_span span) {
    size_t before = t->told.count;
    if (text_number(t->arena, &t->told, text) < before) return; // the same fault said twice is told once
    struct disclosure *d = &t->d;
    d->sentences = arena_grow(t->arena, d->sentences, d->count, &d->room, sizeof *d->sentences);
    d->sentences[d->count++] = (struct sentence){text, because, span};
}

static void add_flaws(struct teller *t, const struct record *record, enum locale locale) {
    for (int class = CLASS_FUNCTION; class <= CLASS_FEATURE; class ++)
        for (size_t i = 0; i < record->flaw_count; i++) {
            const struct item_flaw *flaw = &record->flaws[i];
            if ((int)flaw->kind->class != class) continue;
            add(t, flaw_sentence(t->arena, flaw, locale),
                arena_format(t->arena, "flaw %s", flaw->kind->rule.id), flaw->span);
        }
}

static void add_unchecked(struct teller *t, const struct ruleset *rules, const struct record *record,
                          enum locale locale) {
    if (!record->unchecked.count) return;
    struct arena *arena = t->arena;
    const char **names = arena_array(arena, record->unchecked.count, sizeof *names);
    for (size_t i = 0; i < record->unchecked.count; i++) {
        const struct flaw *flaw = ruleset_flaw(rules, record->unchecked.at[i]);
        names[i] = flaw ? flaw->print : record->unchecked.at[i];
    }
    const char *text =
        arena_format(arena, "Not checked: %s.", say_list(arena, names, record->unchecked.count, locale));
    add(t, text, "unchecked", (struct note_span){0, 0});
}

static const char *clear_noun(struct arena *arena, const struct item_clear *clear) {
    const struct flaw *kind = clear->kind;
    if (kind->form != FAULT) return kind->print;
    if (kind->mass || say_is_plural(kind->noun)) return kind->noun;
    return kind->plural ? kind->plural : say_plural(arena, kind->noun);
}

static const char *clear_place(struct arena *arena, const struct item_clear *clear) {
    const char *place = clear->part ? arena_format(arena, "on the %s", clear->part) : NULL;
    const char *where = clear->where ? say_place(arena, clear->where) : NULL;
    if (place && where) return arena_format(arena, "%s %s", place, where);
    return place ? place : where ? where : "";
}

// Those at one place stand in one sentence: "No chips or cracks seen on the rim."
struct clear_group {
    size_t first, last; // of the entries at one place
};

static void add_group(struct teller *t, const struct record *record, const char *place,
                      const struct clear_group *group, const size_t *next) {
    struct buf out = buf_start(t->arena);
    buf_text(&out, "No ");
    for (size_t i = group->first;; i = next[i]) {
        if (i != group->first) buf_text(&out, i == group->last ? " or " : ", ");
        buf_text(&out, clear_noun(t->arena, &record->clear[i]));
        if (i == group->last) break;
    }
    buf_format(&out, " seen%s%s.", *place ? " " : "", place);
    add(t, out.at, "clear", record->clear[group->first].span);
}

// Those at one place stand in one sentence: "No chips or cracks seen on the rim."
static void add_clear(struct teller *t, const struct record *record) {
    struct texts_met places = {0};
    struct clear_group *groups = arena_array(t->arena, record->clear_count + 1, sizeof *groups);
    size_t *next = arena_array(t->arena, record->clear_count + 1, sizeof *next);
    for (size_t i = 0; i < record->clear_count; i++) {
        size_t before = places.count;
        size_t which = text_number(t->arena, &places, clear_place(t->arena, &record->clear[i]));
        if (which == before)
            groups[which].first = i;
        else
            next[groups[which].last] = i;
        groups[which].last = i;
    }
    for (size_t i = 0; i < places.count; i++) add_group(t, record, places.at[i], &groups[i], next);
}

struct disclosure disclosure_write(struct arena *arena, const struct ruleset *rules,
                                   const struct record *record, enum locale locale,
                                   const struct variants *variants) {
    struct teller t = {.arena = arena, .d = {.text = ""}};
    add_flaws(&t, record, locale);
    add_unchecked(&t, rules, record, locale);
    add_clear(&t, record);
    struct buf all = buf_start(arena);
    for (size_t i = 0; i < t.d.count; i++) {
        struct sentence *sentence = &t.d.sentences[i];
        sentence->text = say_spelling(arena, variants, sentence->text, locale);
        buf_format(&all, "%s%s", i ? " " : "", sentence->text);
    }
    t.d.text = all.at;
    return t.d;
}
