// SPDX-License-Identifier: MIT
// What is told of one place and denied of another, by words that stand for it: "chips round the foot, none
// inside", "rust on the lid but not on the hinges", "a crack in the back, the front has none", "the left side
// is misty, the right perfectly clear". It is denied of that place alone.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool ends(const struct tokens *tokens, size_t i) {
    static const char *const hedges[] = {"at all", "that i can", "i can", "as far", "that i could", "so far"};
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || ANY(tokens, i, "and", "but", "though") ||
           token_longest(tokens, i, hedges, COUNT(hedges));
}

static bool opens(const struct tokens *tokens, size_t i) {
    return i > 0 &&
           (tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "but", "and", "though", "although"));
}

// The last fault before token `i`, in its sentence or the one before, that is told as there; NULL if the last
// is none.
static const struct fault_hit *told_before(const struct fault_reader *r, size_t i) {
    enum { FAR = 16 };
    static const uint16_t other = STANCE_WITHDRAWN | STANCE_OTHER | STANCE_PAST | STANCE_UNKNOWN |
                                  STANCE_PLANNED | STANCE_HEARD | STANCE_DENIED | STANCE_NONE_SEEN;
    for (size_t h = r->hit_count; h-- > 0;) {
        const struct fault_hit *hit = &r->hits[h];
        if (hit->from >= i) continue;
        size_t start = scope_sentence_start(&r->scope, i);
        bool far = start > 1 && hit->from < scope_sentence_start(&r->scope, start - 1);
        if (hit->to > i || i - hit->to > FAR || far || hit->kinds[0]->form != FAULT) return NULL;
        return (fault_stance(r, hit) & other) && !(fault_stance(r, hit) & STANCE_EXCEPT) ? NULL : hit;
    }
    return NULL;
}

// The flaw that a hit became, the last one of its kinds.
static const struct item_flaw *flaw_of(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct record *record = r->note->record;
    for (size_t i = record->flaw_count; i-- > 0;)
        for (size_t k = 0; k < hit->kind_count; k++)
            if (record->flaws[i].kind == hit->kinds[k]) return &record->flaws[i];
    return NULL;
}

static void deny(struct fault_reader *r, const struct fault_hit *hit, const char *part, const char *where,
                 size_t from, size_t to) {
    const struct item_flaw *flaw = flaw_of(r, hit);
    const struct flaw *kind = flaw ? flaw->kind : kind_of_hit(r, hit, part ? part : where);
    if (text_same(kind->rule.id, "box-wear")) // "the box is dented, not the tin": another kind on it, which
        note_take(r->note, from, to, TAKEN_SCOPE); // nobody named
    else
        clear_add(r, kind, part, where, false, from, to);
}

// "None inside", "not on the hinges", "none anywhere else".
static size_t read_none(struct fault_reader *r, size_t i) {
    static const char *const nones[] = {"none", "none at all", "not any", "never any"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, nones, COUNT(nones));
    bool not = !n && ANY(tokens, i, "not", "never") && !ANY(tokens, i + 1, "in", "any");
    if (token_is(tokens, i, "not") && ANY(tokens, i + 1, "in", "inside") && ANY(tokens, i + 2, "the", "it"))
        not = true;
    if (not ) n = 1;
    if (!n || !opens(tokens, i) || r->note->taken[i] != TAKEN_NOT) return i + 1;
    const struct fault_hit *hit = told_before(r, i);
    if (!hit || (not &&hit->from < scope_sentence_start(&r->scope, i))) return i + 1;
    size_t at = i + n, from = at, to = 0;
    if (denial_is_of_rest(r->note, at)) {
        to = at + (token_is(tokens, at, "anywhere") ? 2 : 1);
        deny(r, hit, NULL, "elsewhere", i, to);
        return to;
    }
    if (spot_preposition(tokens, at) || spot_adverb(tokens, at)) to = spot_place_at(r, at, &from);
    if (!to && not &&spot_article(tokens, at)) { // "chip on the foot, not the rim"
        while (spot_article(tokens, at)) at++;
        for (from = to = at; to < tokens->count && tokens->at[to].stop == STOP_NONE && r->part[to];) to++;
        if (to == from) to = 0;
    }
    if (!to && !not &&spot_preposition(tokens, at)) { // "none in the leadpipe": a part that no list has
        for (from = at + 1; spot_article(tokens, from);) from++;
        to = from > at + 1 && from < tokens->count && tokens->at[from].kind == TOKEN_WORD &&
                     r->note->taken[from] == TAKEN_NOT
                 ? from + 1
                 : 0;
        if (to && to < tokens->count && tokens->at[from].stop == STOP_NONE &&
            tokens->at[to].kind == TOKEN_WORD && !ends(tokens, to))
            to++;
    }
    if (!to || to <= from || !ends(tokens, to)) return i + 1;
    for (size_t k = i; k < to; k++)
        if (r->scope.fault[k] && !r->part[k]) return i + 1;
    deny(r, hit, NULL, fault_place(r->note, from, to), i, to);
    return to;
}

// What may be the other of two, or what is left of several: "the front", "left side", "the other one".
static size_t side_at(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const sides[] = {"left",   "right",     "front", "back",  "top",   "bottom",
                                        "inside", "outside",   "upper", "lower", "other", "others",
                                        "rest",   "underside", "inner", "outer", "rear",  "reverse",
                                        "body",   "lid",       "base"};
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    while (spot_article(tokens, i)) i++;
    size_t to = i;
    bool side = false;
    while (to < tokens->count && to < i + WORDS_MOST && tokens->at[to].stop == STOP_NONE &&
           !r->scope.fault[to] && r->note->taken[to] != TAKEN_TYPE) {
        bool one = token_among(tokens, to, sides, COUNT(sides));
        if (!one && !r->part[to] && !(to > i && ANY(tokens, to, "side", "one", "ones", "half", "end"))) break;
        side |= one || r->part[to];
        to++;
    }
    *from = i;
    return side ? to : 0;
}

// "The front has none", "others don't have any".
static size_t read_has_none(struct fault_reader *r, size_t i) {
    static const char *const has[] = {
        "has none",        "have none",        "shows none",       "show none",       "hasn't any",
        "haven't any",     "doesn't have any", "don't have any",   "hasn't got any",  "hasn't got one",
        "haven't got any", "doesn't have one", "don't have one",   "has got none",    "has none at all",
        "haven't got one", "doesn't have it",  "don't have it",    "has no such",     "is free of it",
        "is free of them", "are free of it",   "are free of them", "is free from it", "hasn't one",
        "hasn't got it"};
    const struct tokens *tokens = &r->note->tokens;
    size_t from = i, to = opens(tokens, i) ? side_at(r, i, &from) : 0;
    size_t n = to ? token_longest(tokens, to, has, COUNT(has)) : 0;
    const struct fault_hit *hit = n && ends(tokens, to + n) ? told_before(r, i) : NULL;
    if (!hit) return i + 1;
    const char *part = fault_place(r->note, from, to);
    deny(r, hit, part, NULL, from, to + n);
    return to + n;
}

// Words of two sides, one of which has it.
static bool is_opposite(const char *place, const struct tokens *tokens, size_t from, size_t to) {
    static const char *const pairs[][2] = {{"left", "right"},     {"front", "back"},  {"top", "bottom"},
                                           {"inside", "outside"}, {"upper", "lower"}, {"inner", "outer"},
                                           {"one", "other"},      {"lid", "body"},    {"lid", "base"}};
    for (size_t i = from; place && i < to; i++)
        for (size_t k = 0; k < COUNT(pairs); k++)
            for (int side = 0; side < 2; side++)
                if (token_is(tokens, i, pairs[k][side]) && strstr(place, pairs[k][1 - side])) return true;
    return false;
}

// What "clean" or "clear" says is not on it.
static bool is_cleaned(const struct flaw *kind, bool clear) {
    static const char *const seen[] = {"cloudy-glass", "screen-damage", "mold"};
    static const char *const off[] = {
        "rust",   "stain",          "mineral-deposit", "verdigris",       "dust-grime",        "grease-film",
        "foxing", "writing-inside", "tarnish",         "sticker-residue", "battery-corrosion", "pest-signs"};
    for (size_t i = 0; i < COUNT(seen); i++)
        if (text_same(kind->rule.id, seen[i])) return true;
    for (size_t i = 0; i < COUNT(off) && !clear; i++)
        if (text_same(kind->rule.id, off[i])) return true;
    return false;
}

// "Fungus in the left eyepiece, right is clean".
static size_t read_clean(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t from = i, to = opens(tokens, i) ? side_at(r, i, &from) : 0, at = to;
    if (!to) return i + 1;
    while (ANY(tokens, at, "is", "are", "was", "perfectly", "quite", "completely", "still", "nice", "and",
               "all", "totally", "lovely", "much", "absolutely", "looks", "both"))
        at++;
    if (!ANY(tokens, at, "clean", "clear", "spotless") || !ends(tokens, at + 1)) return i + 1;
    const struct fault_hit *hit = told_before(r, i);
    const struct item_flaw *flaw = hit ? flaw_of(r, hit) : NULL;
    if (!flaw || !is_cleaned(flaw->kind, token_is(tokens, at, "clear")) ||
        !(is_opposite(flaw->where, tokens, from, to) || is_opposite(flaw->part, tokens, from, to)))
        return i + 1;
    deny(r, hit, NULL, fault_place(r->note, from, to), from, at + 1);
    return at + 1;
}

// "One blade is split, the other isn't": read, and no entry, as nobody names what the other is.
static size_t read_other(struct fault_reader *r, size_t i) {
    static const char *const nots[] = {"isn't", "aren't", "hasn't",  "haven't", "doesn't",
                                       "don't", "is not", "are not", "has not", "isnt"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    while (spot_article(tokens, at)) at++;
    if (!opens(tokens, i) || !ANY(tokens, at, "other", "others", "rest")) return i + 1;
    size_t to = at + 1 + ANY(tokens, at + 1, "one", "ones", "two", "three", "four", "side", "end");
    size_t n = token_longest(tokens, to, nots, COUNT(nots));
    const struct fault_hit *hit = n && ends(tokens, to + n) ? told_before(r, i) : NULL;
    if (!hit) return i + 1;
    note_take(r->note, at, to + n, TAKEN_SCOPE);
    return to + n;
}

// "Left arm isn't loose, the other is": the other one has what was denied of the first.
static size_t read_other_is(struct fault_reader *r, size_t i) {
    static const char *const verbs[] = {"is", "are", "does", "has", "was", "do", "have"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    while (spot_article(tokens, at)) at++;
    if (!opens(tokens, i) || !ANY(tokens, at, "other", "others")) return i + 1;
    size_t to = at + 1 + ANY(tokens, at + 1, "one", "ones", "two", "three", "side", "end");
    if (!token_among(tokens, to, verbs, COUNT(verbs)) ||
        !(to + 1 >= tokens->count || tokens->at[to + 1].stop || tokens->at[to].stop))
        return i + 1;
    const struct fault_hit *hit = NULL;
    for (size_t h = r->hit_count; h-- > 0 && !hit;)
        if (r->hits[h].to <= i) hit = &r->hits[h];
    bool denied = hit && (fault_stance(r, hit) & (STANCE_DENIED | STANCE_NONE_SEEN)) &&
                  hit->from >= scope_sentence_start(&r->scope, i) && hit->kinds[0]->form == FAULT;
    const struct record *record = r->note->record;
    if (!denied || !record->clear_count) return i + 1;
    const struct item_clear *clear = &record->clear[record->clear_count - 1];
    struct fault_hit there = *hit;
    there.from = at;
    there.to = to + 1;
    const char *first = clear->part ? clear->part : clear->where, *last = first ? strrchr(first, ' ') : NULL;
    bool bare = first && to == at + 1; // "the other" of two arms
    const char *noun = last ? last + 1 : first;
    fault_tell(r, &there, clear->kind,
               bare ? arena_format(r->note->arena, "other %s", noun) : fault_place(r->note, at, to), NULL);
    return to + 1;
}

// "No hands missing but the bird is": what lacks is told by what does not.
static size_t read_but_is(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0 || !ANY(tokens, i - 1, "but", "though", "only", "just")) return i + 1;
    size_t from = i;
    while (spot_article(tokens, from) || ANY(tokens, from, "one", "a")) from++;
    size_t to = from;
    while (to < from + 2 && to < tokens->count && tokens->at[to].kind == TOKEN_WORD &&
           tokens->at[to].stop == STOP_NONE && !ANY(tokens, to, "is", "are"))
        to++;
    if (to == from || from == i || !ANY(tokens, to, "is", "are") || tokens->at[to].stop != STOP_NONE ||
        (to + 1 < tokens->count && tokens->at[to + 1].stop == STOP_NONE))
        return i + 1;
    const struct record *record = r->note->record;
    const struct item_clear *clear = record->clear_count ? &record->clear[record->clear_count - 1] : NULL;
    bool near = clear && clear->kind->form == ABSENCE && clear->span.to <= tokens->at[i - 1].from &&
                clear->span.from >= tokens->at[scope_sentence_start(&r->scope, i)].from;
    if (!near || r->note->taken[from] == TAKEN_FLAW) return i + 1;
    const char *part = fault_words(r->note, from, to);
    const struct flaw *kind = absent_kind_here(r, part, 1);
    if (!kind || kind->form != ABSENCE) return i + 1;
    fault_add(r, kind, fault_place(r->note, from, to), NULL, from, to + 1);
    return to + 1;
}

void read_none_there(struct fault_reader *r) {
    static size_t (*const readers[])(struct fault_reader *, size_t) = {read_none, read_has_none, read_clean,
                                                                       read_other, read_other_is};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 1; i < tokens->count && r->hit_count;) {
        size_t next = i + 1;
        if (tokens->at[i].kind == TOKEN_WORD && opens(tokens, i))
            for (size_t k = 0; k < COUNT(readers) && next == i + 1; k++) next = readers[k](r, i);
        i = next;
    }
}

void read_but_lacks(struct fault_reader *r) {
    if (!r->note->record->clear_count) return;
    for (size_t i = 1; i < r->note->tokens.count;) i = read_but_is(r, i);
}
