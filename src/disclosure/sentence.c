// SPDX-License-Identifier: MIT
// Faults of one subject share a sentence, as a person would put them: "The handle is loose and has a crack
// near the tip." Faults of the whole at one place share its mention: "On the rim it has two chips and light
// wear." What is missing is listed once: "The lid and the rack are missing." A sentence tells at most three
// faults and stays short. A clause with a list of its own stands alone, so that it is never in doubt what
// belongs to what.
#include "disclosure/sentence.h"

#include "disclosure/copied.h"
#include "text/order.h"

#include <string.h>

// AHEAD: how far a fault is looked for that may join; with thousands of them a look at all would take too
// long.
enum { CLAUSES_MOST = 3, WORDS_MOST = 18, AHEAD = 100 };

struct teller {
    struct disclosure_maker *maker;
    struct arena *arena;
    const struct clause *clauses;
    size_t count;
    bool *told;
};

static size_t words_in(const char *text) {
    size_t n = *text ? 1 : 0;
    for (; *text; text++) n += *text == ' ';
    return n;
}

static size_t words_of(const struct clause *c) {
    return words_in(c->rest) + words_in(c->place) + 1;
}

static const char *joined(struct arena *arena, const char *a, const char *b) {
    return *a && *b ? arena_format(arena, "%s %s", a, b) : *a ? a : b;
}

static const char *list(struct teller *t, const char *const *items, size_t count) {
    return say_list(t->arena, items, count, t->maker->locale);
}

static bool is_whole(const struct clause *c) {
    return text_same(c->subject, "it") || text_same(c->subject, "they") || text_same(c->subject, "there");
}

static const char *reasons(struct teller *t, const struct clause *const *group, size_t count) {
    struct buf out = buf_start(t->arena);
    for (size_t i = 0; i < count; i++) {
        const char *one = arena_format(t->arena, "flaw %s", group[i]->flaw->kind->rule.id);
        if (!strstr(out.at, one)) buf_format(&out, "%s%s", i ? ", " : "", one);
    }
    return out.at;
}

static void emit(struct teller *t, const char *text, const struct clause *const *group, size_t count) {
    if (!count) return;
    for (size_t i = 0; i < count; i++) t->told[group[i] - t->clauses] = true;
    disclosure_add(t->maker, text, reasons(t, group, count), group[0]->flaw->span);
}

// --- "the lid and the rack are missing" ---

static bool shares_missing(const struct clause *a, const struct clause *b) {
    return a->missing && b->missing && a->maybe == b->maybe && text_same(a->rest, b->rest) &&
           text_same(a->place, b->place) && !b->alone;
}

static void tell_missing(struct teller *t, size_t first) {
    const struct clause *group[CLAUSES_MOST], *head = &t->clauses[first];
    const char *subjects[CLAUSES_MOST];
    size_t count = 0;
    for (size_t i = first; i < t->count && i < first + AHEAD && count < CLAUSES_MOST; i++) {
        const struct clause *c = &t->clauses[i];
        if (t->told[i] || (i > first && (head->alone || !shares_missing(head, c)))) continue;
        subjects[count] = c->subject;
        group[count++] = c;
    }
    const char *verb = clause_verb_words(VERB_IS, count > 1 || head->many, head->maybe);
    const char *predicate = joined(t->arena, head->rest, head->place);
    emit(t, arena_format(t->arena, "%s %s %s", list(t, subjects, count), verb, predicate), group, count);
}

// --- "on the rim it has two chips and light wear" ---

static bool shares_place(const struct clause *a, const struct clause *b) {
    return is_whole(a) && is_whole(b) && a->verb == VERB_HAS && b->verb == VERB_HAS && a->maybe == b->maybe &&
           text_same(a->subject, b->subject) && *a->place && text_same(a->place, b->place);
}

static const char *there_or_has(const struct teller *t, const struct clause *c) {
    if (!text_same(c->subject, "there"))
        return arena_format(t->arena, "%s %s", c->subject, clause_verb_words(VERB_HAS, c->many, c->maybe));
    return arena_format(t->arena, "there %s", clause_verb_words(VERB_IS, c->many_rest, c->maybe));
}

// What works, and what smells, is told apart from what is seen.
static bool same_matter(const struct clause *a, const struct clause *b) {
    bool seen =
        a->band != BAND_FUNCTION && a->band != BAND_ODOR && b->band != BAND_FUNCTION && b->band != BAND_ODOR;
    return seen || a->band == b->band;
}

// Does another fault still untold stand at the place of this one? Then the two are told together, and neither
// with what comes before: what is left out of a record may not change how the rest is told.
static bool has_company(const struct teller *t, size_t i) {
    const struct clause *c = &t->clauses[i];
    if (c->alone || c->verb != VERB_HAS || !is_whole(c)) return false;
    for (size_t k = 0; k < t->count; k++) {
        const struct clause *other = &t->clauses[k];
        if (k != i && !t->told[k] && !other->alone && same_matter(c, other) && shares_place(c, other) &&
            words_in(c->rest) + words_in(other->rest) <= WORDS_MOST)
            return true;
    }
    return false;
}

static bool tell_at_place(struct teller *t, size_t first) {
    const struct clause *group[CLAUSES_MOST], *head = &t->clauses[first];
    const char *items[CLAUSES_MOST];
    size_t count = 0, words = 0;
    if (head->alone || head->verb != VERB_HAS || !is_whole(head)) return false;
    for (size_t i = first; i < t->count && i < first + AHEAD && count < CLAUSES_MOST; i++) {
        const struct clause *c = &t->clauses[i];
        if (t->told[i] || c->alone || !same_matter(head, c) || !shares_place(head, c) ||
            words + words_in(c->rest) > WORDS_MOST)
            continue;
        words += words_in(c->rest) + 1;
        items[count] = c->rest;
        group[count++] = c;
    }
    if (count < 2) return false;
    emit(t, arena_format(t->arena, "%s %s %s", head->place, there_or_has(t, head), list(t, items, count)),
         group, count);
    return true;
}

// --- one subject ---

static bool shares_subject(const struct clause *a, const struct clause *b) {
    return !a->missing && !b->missing && a->maybe == b->maybe && text_same(a->subject, b->subject);
}

static bool is_past(const struct clause *c) {
    return !strncmp(c->rest, "not been ", 9) || !strncmp(c->rest, "been ", 5) ||
           !strncmp(c->rest, "shrunk", 6);
}

// A part is told once and for all. The whole is told in the order of the paragraph: what stands between may
// not be passed over, and that it works or not stands alone.
// "It has not been tested and a chip" is no sentence: the two uses of "has" stand apart.
static bool may_join(const struct clause *head, const struct clause *c, bool passed_over) {
    if (head->verb == VERB_HAS && c->verb == VERB_HAS && is_past(head) != is_past(c)) return false;
    if (!is_whole(head)) return true;
    if (head->verb != c->verb) return false; // "it is working and has dust"
    return !passed_over && (head->band == c->band || head->band != BAND_FUNCTION);
}

// How one sentence may be worded. What stands in the notes word for word is worded another way, the first
// that differs.
struct wording {
    bool seen;    // "A chip shows on the ear": one fault at a place
    bool shows;   // "shows a crack" for "has a crack"
    bool named;   // "The radio has …" for "It has …"
    bool fronted; // "On the ear it has a chip"
    bool single;  // the first fault alone
};

static const struct wording wordings[] = {{.seen = true},
                                          {.shows = false},
                                          {.fronted = true},
                                          {.shows = true},
                                          {.named = true},
                                          {.single = true},
                                          {.shows = true, .named = true}};

static const char *verb_words(const struct clause *head, enum clause_verb verb, const struct wording *w) {
    if (verb != VERB_HAS || !w->shows) return clause_verb_words(verb, head->many, head->maybe);
    return head->maybe ? "may show" : head->many ? "show" : "shows";
}

static const char *verb_part(struct teller *t, const struct clause *const *group, size_t count,
                             enum clause_verb verb, const struct wording *w) {
    const char *items[CLAUSES_MOST];
    size_t n = 0;
    struct wording plain = *w;
    for (size_t i = 0; i < count; i++) {
        if (group[i]->verb != verb) continue;
        items[n++] = w->fronted ? group[i]->rest : joined(t->arena, group[i]->rest, group[i]->place);
        if (is_past(group[i])) plain.shows = false; // "has not been tested"
    }
    return n ? arena_format(t->arena, "%s %s", verb_words(group[0], verb, &plain), list(t, items, n)) : "";
}

static const char *compose_there(struct teller *t, const struct clause *const *group, size_t count,
                                 const struct wording *w) {
    const char *items[CLAUSES_MOST];
    for (size_t i = 0; i < count; i++)
        items[i] = w->fronted ? group[i]->rest : joined(t->arena, group[i]->rest, group[i]->place);
    return arena_format(t->arena, "%s%s%s %s", w->fronted ? group[0]->place : "", w->fronted ? " " : "",
                        there_or_has(t, group[0]), list(t, items, count));
}

static const char *compose_seen(struct teller *t, const struct clause *c) {
    const char *verb = c->maybe ? "may show" : c->many_rest ? "show" : "shows";
    bool loss = !strncmp(c->place, "from ", 5) && strstr(c->rest, "loss"); // "gone from the corner"
    const char *place = loss ? arena_format(t->arena, "at %s", c->place + 5) : c->place;
    return arena_format(t->arena, "%s %s %s", c->rest, verb, place);
}

static const char *compose(struct teller *t, const struct clause *const *group, size_t count,
                           const struct wording *w) {
    const struct clause *head = group[0];
    if (w->seen) return compose_seen(t, head);
    if (text_same(head->subject, "there")) return compose_there(t, group, count, w);
    const char *parts[3];
    size_t n = 0;
    for (int verb = VERB_IS; verb <= VERB_WAS; verb++) {
        const char *part = verb_part(t, group, count, (enum clause_verb)verb, w);
        if (*part) parts[n++] = part;
    }
    const char *type = t->maker->record->type.value;
    if (type && head->many) type = say_plural(t->arena, type);
    const char *subject = w->named && type ? arena_format(t->arena, "the %s", type) : head->subject;
    const char *front = w->fronted ? arena_format(t->arena, "%s ", head->place) : "";
    return arena_format(t->arena, "%s%s %s", front, subject, list(t, parts, n));
}

static bool has_place(const struct clause *head, size_t count) {
    return count == 1 && is_whole(head) && head->verb == VERB_HAS && *head->place && head->place[0] != '(';
}

static bool applies(const struct wording *w, const struct clause *head, size_t count) {
    if (w->named && (!is_whole(head) || text_same(head->subject, "there"))) return false;
    if (w->seen && (head->band == BAND_ODOR || head->flaw->kind->form != FAULT)) return false;
    if (w->fronted || w->seen) return has_place(head, count);
    return !w->single || count > 1;
}

static void tell_group(struct teller *t, const struct clause *const *group, size_t count) {
    for (size_t i = 0; i < sizeof wordings / sizeof *wordings; i++) {
        const struct wording *w = &wordings[i];
        if (!applies(w, group[0], count)) continue;
        size_t told = w->single ? 1 : count;
        const char *text = compose(t, group, told, w);
        if (copied_runs_in(t->maker->runs, text)) continue;
        emit(t, text, group, told);
        if (told < count) tell_group(t, group + told, count - told);
        return;
    }
    // None differs from the notes throughout: then the one that shares the least with how people say it.
    bool seen = has_place(group[0], count) && group[0]->flaw->kind->form == FAULT;
    emit(t, compose(t, group, count, &(struct wording){.seen = seen}), group, count);
}

static void tell_subject(struct teller *t, size_t first) {
    const struct clause *group[CLAUSES_MOST], *head = &t->clauses[first];
    size_t count = 0, words = words_in(head->subject);
    bool passed_over = false;
    for (size_t i = first; i < t->count && i < first + AHEAD && count < CLAUSES_MOST; i++) {
        const struct clause *c = &t->clauses[i];
        if (t->told[i] || (i != first && has_company(t, i))) continue;
        bool fits = i == first || (!head->alone && !c->alone && shares_subject(head, c) &&
                                   may_join(head, c, passed_over) && words + words_of(c) <= WORDS_MOST);
        passed_over |= !fits;
        if (!fits) continue;
        words += words_of(c);
        group[count++] = c;
    }
    tell_group(t, group, count);
}

void tell_clauses(struct disclosure_maker *maker, const struct clause *clauses, size_t count) {
    struct teller t = {maker, maker->arena, clauses, count,
                       arena_array(maker->arena, count + 1, sizeof(bool))};
    for (size_t i = 0; i < count; i++) {
        if (t.told[i]) continue;
        if (clauses[i].missing)
            tell_missing(&t, i);
        else if (!tell_at_place(&t, i))
            tell_subject(&t, i);
    }
}
