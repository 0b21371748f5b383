// SPDX-License-Identifier: MIT
// What was denied and is there all the same, said without the word for the fault: "no chips, but there is one
// on the foot", "no rust other than inside the lid", "the veneer isn't lifting anywhere but one corner".
#include <string.h>

#include "notes/faults.h"
#include "notes/figure.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_there(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"is",  "there's", "theres", "has", "was",  "wait", "though", "except",
                                        "but", "find",    "found",  "see", "from", "than", "for"};
    for (size_t back = 1; back <= 2 && back <= i; back++)
        if (token_among(tokens, i - back, words, COUNT(words))) return true;
    return false;
}

static bool drop_size(struct record *record, size_t byte) {
    size_t measures = 0, values = 0;
    for (size_t i = 0; i < record->measurement_count; i++)
        if (record->measurements[i].span.from != byte)
            record->measurements[measures++] = record->measurements[i];
    for (size_t i = 0; i < record->attribute_count; i++)
        if (!text_same(record->attributes[i].name, "size") || record->attributes[i].span.from != byte)
            record->attributes[values++] = record->attributes[i];
    bool dropped = measures < record->measurement_count || values < record->attribute_count;
    record->measurement_count = measures;
    record->attribute_count = values;
    return dropped;
}

// "One on the base, 4 mm": the figure behind it was taken for the thing's own.
static void move_size(struct fault_reader *r, struct item_flaw *flaw, size_t i) {
    enum { FAR = 9, MOST_MM = 60 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t k = i + 1; k < i + FAR && k < tokens->count && !flaw->has_size; k++) {
        struct figure figure;
        size_t taken;
        if (tokens->at[k].stop >= STOP_CLAUSE) return;
        if (r->note->taken[k] != TAKEN_MEASURE || !figure_at(r->note, k, &figure, &taken) || !figure.unit ||
            !figure.unit->kind || !text_same(figure.unit->kind, "mm") || figure.base > MOST_MM ||
            !drop_size(r->note->record, tokens->at[k].from))
            continue;
        flaw->has_size = true;
        flaw->size = figure;
        flaw->severity = degree_of_size(flaw->kind, figure.base);
    }
}

// "No chips, one in the set has a hairline": there "one" is one of the pieces.
static bool is_piece(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"has", "have",  "is",   "are",   "was",   "needs", "shows",
                                        "had", "looks", "does", "works", "isn't", "with"};
    return token_among(tokens, i, verbs, COUNT(verbs)) && tokens->at[i - 1].stop == STOP_NONE;
}

// "No chips … but there is one on the foot": "one" is of the kind that was denied last.
static void read_ones(struct fault_reader *r) {
    enum { FAR = 14 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 1; i + 1 < tokens->count; i++) {
        bool opens = tokens->at[i - 1].stop == STOP_COMMA || tokens->at[i - 1].stop == STOP_CLAUSE;
        if (!token_is(tokens, i, "one") || !(opens || is_there(tokens, i)) || r->note->taken[i] != TAKEN_NOT)
            continue;
        bool place = token_is(tokens, i + 1, "on") || token_is(tokens, i + 1, "in") ||
                     token_is(tokens, i + 1, "at") || token_is(tokens, i + 1, "near") ||
                     token_is(tokens, i + 1, "inside") || token_is(tokens, i + 1, "by");
        if (!place) continue;
        for (size_t h = r->hit_count; h-- > 0;) {
            const struct fault_hit *hit = &r->hits[h];
            if (hit->to > i || i - hit->to > FAR || hit->kinds[0]->form != FAULT) continue;
            if (!(fault_stance(r, hit) & (STANCE_DENIED | STANCE_NONE_SEEN))) break;
            struct fault_hit one = *hit;
            one.from = i;
            one.to = i + 1;
            struct spot spot = spot_of_hit(r, &one);
            if (opens && (spot.where_to <= spot.where_from || is_piece(tokens, spot.where_to))) break;
            const char *where = fault_place(r->note, spot.where_from, spot.where_to);
            fault_tell(r, &one, kind_of_hit(r, hit, where), NULL, where);
            for (size_t k = hit->from > 0 ? hit->from - 1 : 0; k < i; k++) // "no dents anywhere except"
                if (r->note->taken[k] == TAKEN_NOT && k + 1 != hit->from)
                    note_take(r->note, k, k + 1, TAKEN_SCOPE);
            move_size(r, &r->note->record->flaws[r->note->record->flaw_count - 1], i);
            break;
        }
    }
}

static bool is_denied(const struct fault_reader *r, const struct fault_hit *hit) {
    uint16_t stance = fault_stance(r, hit);
    return (stance & (STANCE_DENIED | STANCE_NONE_SEEN)) && !(stance & (STANCE_EXCEPT | STANCE_DOUBLE));
}

// "But a crease on the spine": a word that is a part as well, as a fault of its own.
static bool is_fault_itself(const struct fault_reader *r, size_t i) {
    static const char *const places[] = {"the", "its", "on", "in", "at", "near", "along", "inside", "round"};
    if (i > 0 && token_among(&r->note->tokens, i - 1, places, COUNT(places))) return false;
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from == i && !r->hits[k].near && r->hits[k].kinds[0]->form == FAULT) return true;
    return false;
}

// The first token of what is excepted behind `i`, with no fault of its own; the count of tokens if none.
static size_t excepted_behind(const struct fault_reader *r, size_t i) {
    enum { FAR = 8 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = i; at < tokens->count && at < i + FAR; at++) {
        if (r->scope.fault[at] && (!r->part[at] || is_fault_itself(r, at))) break;
        if (r->scope.stance[at] & STANCE_EXCEPT) return at;
        if (tokens->at[at].stop >= STOP_CLAUSE) break;
    }
    return tokens->count;
}

// "One corner at the back", "on the base": a place, and nothing said of it.
static size_t place_alone(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const skipped[] = {
        "the",     "a",     "one",    "for",    "just",  "right", "maybe",  "two",   "its", "spot",   "bit",
        "patch",   "touch", "little", "small",  "tiny",  "spots", "place",  "some",  "few", "couple", "mark",
        "there's", "it",    "faint",  "slight", "light", "very",  "specks", "speck", "of",  "tiniest"};
    enum { SKIP_MOST = 5, WORDS_MOST = 6 };
    const struct tokens *tokens = &r->note->tokens;
    size_t to = spot_place_at(r, i, from), at = i;
    while (!to && at < i + SKIP_MOST && token_among(tokens, at, skipped, COUNT(skipped)))
        to = spot_place_at(r, ++at, from); // "a spot on the latch"
    if (!to && at < tokens->count && r->part[at] && !is_fault_itself(r, at)) {
        *from = at;
        for (to = at; to < tokens->count && r->part[to] && to < at + WORDS_MOST;) to++;
        size_t ignored, behind = spot_place_at(r, to, &ignored);
        if (behind && tokens->at[to].stop == STOP_NONE) to = behind;
    }
    static const char *const goes_on[] = {"where", "that", "which", "when", "if",
                                          "you",   "and",  "but",   "from"};
    bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                token_among(tokens, to, goes_on, COUNT(goes_on));
    return to && ends ? to : 0;
}

// "The veneer isn't lifting anywhere but one corner": not of the whole veneer.
static void forget_clear(struct record *record, const struct flaw *kind) {
    size_t kept = 0;
    for (size_t i = 0; i < record->clear_count; i++)
        if (record->clear[i].kind != kind) record->clear[kept++] = record->clear[i];
    record->clear_count = kept;
}

static void read_excepted(struct fault_reader *r) {
    for (size_t h = 0; h < r->hit_count; h++) {
        const struct fault_hit *hit = &r->hits[h];
        if (hit->kinds[0]->form != FAULT || !is_denied(r, hit)) continue;
        size_t start = excepted_behind(r, hit->to), from = 0, to = 0;
        if (start < r->note->tokens.count) to = place_alone(r, start, &from);
        if (!to) continue;
        const char *where = fault_place(r->note, from, to);
        forget_clear(r->note->record, kind_of_hit(r, hit, where));
        struct fault_hit there = *hit;
        there.from = start;
        there.to = to;
        fault_tell(r, &there, kind_of_hit(r, hit, where), NULL, where);
    }
}

void read_again(struct fault_reader *r) {
    read_ones(r);
    read_excepted(r);
}
