// SPDX-License-Identifier: MIT
// A hash table leads from a word to the patterns that can begin with it; a pattern is then walked place by
// place, the word before its absence. Nothing is spread out beforehand: a pattern of six places stands for
// thousands of phrases.
#include "notes/spoken.h"

#include <string.h>

#include "notes/cut.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { GAP_MOST = 3, SIEVE_CELLS = 1024, STOPS_ROOM = 40 };

struct place_of_words {
    size_t from, to; // in `hashes`
    bool optional, gap;
};

struct pattern {
    size_t from, to; // in `places`
    size_t flaw;
    bool gated;
};

struct opening {
    uint64_t hash, behind;       // `behind`: a bit for each word that may stand next
    size_t pattern, place, next; // next: index + 1; 0 at the end
};

struct spoken {
    struct arena *arena;
    uint64_t *hashes;
    struct place_of_words *places;
    struct pattern *patterns;
    struct opening *openings;
    size_t hash_count, hash_room, place_count, place_room, pattern_count, pattern_room, opening_count,
        opening_room;
    size_t *slots, slot_count, longest;
    uint64_t stops[STOPS_ROOM];
    uint64_t sieve[SIEVE_CELLS]; // a bit for the word of each opening: most words begin nothing
};

static uint64_t word_hash(const char *word, size_t size) {
    enum { ROOM = 64 };
    char plain[ROOM];
    size_t n = 0;
    for (size_t i = 0; i < size && n < ROOM; i++)
        if (word[i] != '\'') plain[n++] = word[i];
    return token_hash(plain, n) | 1;
}

// "white|pale|-"
static void add_place(struct spoken *s, const char *text, size_t size) {
    struct place_of_words place = {.from = s->hash_count};
    for (size_t at = 0; at < size;) {
        size_t n = 0;
        while (at + n < size && text[at + n] != '|') n++;
        bool sign = n == 1 && (text[at] == '-' || text[at] == '~');
        if (sign) {
            place.optional |= text[at] == '-';
            place.gap |= text[at] == '~';
        } else {
            s->hashes = arena_grow(s->arena, s->hashes, s->hash_count, &s->hash_room, sizeof *s->hashes);
            s->hashes[s->hash_count++] = word_hash(text + at, n);
        }
        at += n + 1;
    }
    place.to = s->hash_count;
    s->places = arena_grow(s->arena, s->places, s->place_count, &s->place_room, sizeof *s->places);
    s->places[s->place_count++] = place;
}

static uint64_t bit_of(uint64_t hash) {
    return (uint64_t)1 << (hash >> 14) % 64;
}

// Bits of the words that may stand at `place`; all where any may, or none has to.
static uint64_t bits_from(const struct spoken *s, const struct pattern *pattern, size_t place) {
    uint64_t bits = 0;
    for (; place < pattern->to; place++) {
        if (s->places[place].gap) return UINT64_MAX;
        for (size_t h = s->places[place].from; h < s->places[place].to; h++) bits |= bit_of(s->hashes[h]);
        if (!s->places[place].optional) return bits;
    }
    return UINT64_MAX;
}

// The words that may come first: behind places that may be skipped those of the next as well.
static void add_openings(struct spoken *s, size_t number) {
    const struct pattern *pattern = &s->patterns[number];
    for (size_t k = pattern->from; k < pattern->to; k++) {
        for (size_t h = s->places[k].from; h < s->places[k].to; h++) {
            s->openings =
                arena_grow(s->arena, s->openings, s->opening_count, &s->opening_room, sizeof *s->openings);
            s->openings[s->opening_count++] =
                (struct opening){s->hashes[h], bits_from(s, pattern, k + 1), number, k, 0};
        }
        if (!s->places[k].optional) return;
    }
}

static void add_pattern(struct spoken *s, const char *text, size_t flaw, bool gated) {
    struct pattern pattern = {.from = s->place_count, .flaw = flaw, .gated = gated};
    size_t words = 0;
    for (const char *at = text; *at; at += strspn(at, " \n")) {
        size_t n = strcspn(at, " \n");
        add_place(s, at, n);
        words += s->places[s->place_count - 1].gap ? GAP_MOST : 1;
        at += n;
    }
    pattern.to = s->place_count;
    if (words > s->longest) s->longest = words;
    s->patterns = arena_grow(s->arena, s->patterns, s->pattern_count, &s->pattern_room, sizeof *s->patterns);
    s->patterns[s->pattern_count++] = pattern;
    add_openings(s, s->pattern_count - 1);
}

static size_t slot_of(const struct spoken *s, uint64_t hash) {
    size_t at = (size_t)(hash ^ (hash >> 31)) & (s->slot_count - 1);
    while (s->slots[at] && s->openings[s->slots[at] - 1].hash != hash) at = (at + 1) & (s->slot_count - 1);
    return at;
}

static void index_openings(struct spoken *s) {
    s->slot_count = 16;
    while (s->slot_count < 2 * s->opening_count) s->slot_count *= 2;
    s->slots = arena_array(s->arena, s->slot_count, sizeof *s->slots);
    for (size_t i = s->opening_count; i-- > 0;) { // so that chains are in the order of the rules
        uint64_t hash = s->openings[i].hash;
        size_t slot = slot_of(s, hash);
        s->openings[i].next = s->slots[slot];
        s->slots[slot] = i + 1;
        s->sieve[(hash >> 20) % SIEVE_CELLS] |= (uint64_t)1 << (hash >> 8) % 64;
    }
}

static const char *const stops[] = {",",       ".",      ";",       ":",       "!",     "?",       "(",
                                    ")",       "\"",     "\n",      "/",       "no",    "not",     "isn't",
                                    "aren't",  "never",  "without", "doesn't", "don't", "won't",   "hasn't",
                                    "haven't", "wasn't", "weren't", "but",     "nor",   "nothing", "didn't",
                                    "can't",   "unless", "if",      "until"};

struct spoken *spoken_new(struct arena *arena, const struct ruleset *rules) {
    struct spoken *s = arena_alloc(arena, sizeof *s);
    s->arena = arena;
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct texts *any = &rules->flaws[i]->spoken, *gated = &rules->flaws[i]->spoken_on;
        for (size_t k = 0; k < any->count; k++) add_pattern(s, any->at[k], i, false);
        for (size_t k = 0; k < gated->count; k++) add_pattern(s, gated->at[k], i, true);
    }
    for (size_t i = 0; i < COUNT(stops); i++) s->stops[i] = word_hash(stops[i], strlen(stops[i]));
    index_openings(s);
    return s;
}

size_t spoken_longest(const struct spoken *s) {
    return s->longest;
}

struct walk {
    const struct spoken *spoken;
    const struct phrase_word *words;
    size_t count, to; // `to`: end of the pattern's places
};

static bool holds(const struct spoken *s, size_t place, uint64_t hash) {
    for (size_t h = s->places[place].from; h < s->places[place].to; h++)
        if (s->hashes[h] == hash) return true;
    return false;
}

// A sign, and a word that denies or turns, ends what any word may fill.
static bool is_stop(const struct spoken *s, const struct phrase_word *word) {
    for (size_t i = 0; i < COUNT(stops); i++)
        if (word->hash == s->stops[i]) return true;
    return false;
}

// Where the places from `place` on end if they stand at word `i`; 0 if they do not.
static size_t walk_from(const struct walk *w, size_t place, size_t i) {
    if (place == w->to) return w->words[i - 1].ends ? i : 0;
    const struct place_of_words *here = &w->spoken->places[place];
    if (here->gap) {
        for (size_t n = 0; n <= GAP_MOST && i + n <= w->count; n++) {
            size_t end = walk_from(w, place + 1, i + n);
            if (end) return end;
            if (i + n < w->count && is_stop(w->spoken, &w->words[i + n])) return 0;
        }
        return 0;
    }
    if (i < w->count && holds(w->spoken, place, w->words[i].hash)) {
        size_t end = walk_from(w, place + 1, i + 1);
        if (end) return end;
    }
    return here->optional ? walk_from(w, place + 1, i) : 0;
}

bool spoken_next(const struct spoken *s, const struct phrase_word *words, size_t count, size_t i,
                 size_t *entry, struct spoken_hit *hit) {
    uint64_t hash = words[i].hash;
    if (!(s->sieve[(hash >> 20) % SIEVE_CELLS] >> (hash >> 8) % 64 & 1)) return false;
    uint64_t behind = i + 1 < count ? bit_of(words[i + 1].hash) : UINT64_MAX;
    size_t m = *entry ? s->openings[*entry - 1].next : s->slots[slot_of(s, hash)];
    for (; m; m = s->openings[m - 1].next) {
        const struct opening *opening = &s->openings[m - 1];
        if (!(opening->behind & behind)) continue;
        const struct pattern *pattern = &s->patterns[opening->pattern];
        struct walk walk = {s, words, count, pattern->to};
        size_t end = walk_from(&walk, opening->place + 1, i + 1);
        if (!end) continue;
        *hit = (struct spoken_hit){pattern->flaw, end - i, pattern->gated};
        *entry = m;
        return true;
    }
    return false;
}
