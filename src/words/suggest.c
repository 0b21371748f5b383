// SPDX-License-Identifier: MIT
// Three sieves, each dearer than the one before: masks, then the distance worked out for all letters of the
// word at once in the bits of one integer, then the weighed edits.
#include "words/suggest.h"

#include <string.h>

const struct rank_weights RANK_WEIGHTS = {
    .richness = {-5, 10, 10, 10, 10, 5, 5, 5, 5, 0},
    .capital = 40,
    .prefixed = 15,
    .one_dictionary = 50,
    .other_only = 60,
    .trade = -20,
};

enum { THREE_EDITS_FROM = 7 };

struct search {
    const struct lexicon *lexicon;
    const struct edit_weights *edits;
    const struct rank_weights *ranks;
    const char *typed;
    size_t size;
    uint64_t mask, places[256]; // where each letter stands in the typed word
    struct ranked *out;
    size_t count, most;
};

static unsigned char lower(char c) {
    return (unsigned char)(c >= 'A' && c <= 'Z' ? c + ('a' - 'A') : c);
}

// Optimal string alignment distance by bit vectors (Hyyrö 2003), the typed word as the pattern.
static unsigned distance(const struct search *s, const char *word, size_t size) {
    uint64_t positive = ~UINT64_C(0), negative = 0, diagonal = 0, places_before = 0;
    uint64_t last = UINT64_C(1) << (s->size - 1);
    unsigned distance = (unsigned)s->size;
    for (size_t i = 0; i < size; i++) {
        uint64_t places = s->places[lower(word[i])];
        uint64_t swapped = (((~diagonal) & places) << 1) & places_before;
        diagonal = ((((places & positive) + positive) ^ positive) | places | negative) | swapped;
        uint64_t up = negative | ~(diagonal | positive), down = diagonal & positive;
        if (up & last) distance++;
        if (down & last) distance--;
        up = (up << 1) | 1;
        down <<= 1;
        positive = down | ~(diagonal | up);
        negative = up & diagonal;
        places_before = places;
    }
    return distance;
}

static int rarity_cost(const struct search *s, const struct lexicon_word *word) {
    const struct rank_weights *r = s->ranks;
    int cost = r->richness[word->richness];
    if (word->traits & LEXICON_TRADE) cost += r->trade;
    if (word->traits & LEXICON_CAPITAL) cost += r->capital;
    if (word->traits & LEXICON_PREFIXED) cost += r->prefixed;
    if (!(word->traits & LEXICON_MAIN) || !(word->traits & LEXICON_OTHER)) cost += r->one_dictionary;
    if (!(word->traits & (LEXICON_MAIN | LEXICON_TRADE))) cost += r->other_only;
    return cost;
}

// Best first; of two alike the one that comes first by its letters.
static bool is_before(const struct search *s, const struct ranked *a, const struct ranked *b) {
    if (a->cost != b->cost) return a->cost < b->cost;
    const struct lexicon_word *x = &s->lexicon->words[a->id], *y = &s->lexicon->words[b->id];
    const char *letters = s->lexicon->letters;
    int order = memcmp(letters + x->at, letters + y->at, x->size < y->size ? x->size : y->size);
    return order ? order < 0 : x->size < y->size;
}

static void consider(struct search *s, uint32_t id) {
    const struct lexicon_word *word = &s->lexicon->words[id];
    char small[LEXICON_LONGEST];
    for (size_t i = 0; i < word->size; i++) small[i] = (char)lower(s->lexicon->letters[word->at + i]);
    int rarity = rarity_cost(s, word);
    struct ranked fresh = {id, rarity + weigh_edits(s->edits, s->typed, s->size, small, word->size)};
    size_t at = s->count;
    while (at > 0 && is_before(s, &fresh, &s->out[at - 1])) at--;
    if (at >= s->most) return;
    if (s->count < s->most) s->count++;
    memmove(&s->out[at + 1], &s->out[at], (s->count - at - 1) * sizeof *s->out);
    s->out[at] = fresh;
}

// The masks of words within `edits` differ in two bits for each letter changed and in one for each more or
// less.
static void scan(struct search *s, size_t length, unsigned edits) {
    const struct lexicon_class *class = &s->lexicon->of_length[length];
    unsigned apart = (unsigned)(length > s->size ? length - s->size : s->size - length),
             bits = 2 * edits - apart;
    for (size_t i = 0; i < class->count; i++) {
        uint64_t differ = class->masks[i] ^ s->mask;
        for (unsigned b = 0; b < bits; b++) differ &= differ - 1; // takes the lowest bit away
        if (differ) continue;
        const struct lexicon_word *word = &s->lexicon->words[class->ids[i]];
        if (distance(s, s->lexicon->letters + word->at, word->size) <= edits) consider(s, class->ids[i]);
    }
}

static void scan_lengths(struct search *s, unsigned edits) {
    size_t from = s->size > edits ? s->size - edits : 1, to = s->size + edits;
    s->count = 0;
    for (size_t length = from; length <= to && length <= LEXICON_LONGEST; length++) scan(s, length, edits);
}

size_t suggest_rank(const struct lexicon *lexicon, const struct edit_weights *edits,
                    const struct rank_weights *ranks, const char *typed, size_t size, struct ranked *out,
                    size_t most) {
    if (size < 2 || size > LEXICON_LONGEST) return 0;
    struct search s = {.lexicon = lexicon,
                       .edits = edits,
                       .ranks = ranks,
                       .typed = typed,
                       .size = size,
                       .mask = lexicon_mask(typed, size),
                       .out = out,
                       .most = most < SUGGEST_MOST ? most : SUGGEST_MOST};
    for (size_t i = 0; i < size; i++) s.places[lower(typed[i])] |= UINT64_C(1) << i;
    scan_lengths(&s, size < 4 ? 1 : 2);
    if (!s.count && size >= THREE_EDITS_FROM) scan_lengths(&s, 3);
    return s.count;
}
