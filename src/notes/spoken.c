// SPDX-License-Identifier: MIT
// A pattern is walked place by place, the word before its absence. Only its first two words are spread out
// beforehand: a pattern of six places stands for thousands of phrases.
#include "notes/spoken.h"

#include <string.h>

#include "notes/cut.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { GAP_MOST = 3, STOPS_ROOM = 40, SIEVE_CELLS = 8192 };

#define STOP_PLACE (SIZE_MAX - 1) // of the words that end a gap

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
    size_t pattern, place;
};

struct spoken {
    struct arena *arena;
    uint64_t *hashes;
    struct place_of_words *places;
    struct pattern *patterns;
    struct opening *openings;
    struct spoken_gate *gates; // one an opening
    size_t hash_count, hash_room, place_count, place_room, pattern_count, pattern_room, opening_count,
        opening_room, gate_room;
    size_t longest;
    uint64_t stops[STOPS_ROOM];
    uint64_t sieve[SIEVE_CELLS]; // a bit for each word of each place: most words are not
};

static uint64_t word_hash(const char *word, size_t size) {
    enum { ROOM = 64 };
    char plain[ROOM];
    size_t n = 0;
    for (size_t i = 0; i < size && n < ROOM; i++)
        if (word[i] != '\'') plain[n++] = word[i];
    return token_hash(plain, n) | 1;
}

static uint64_t key_at(size_t place, uint64_t hash) {
    return hash ^ (place + 1) * 0x9E3779B97F4A7C15u;
}

static void sieve_add(struct spoken *s, size_t place, uint64_t hash) {
    uint64_t key = key_at(place, hash);
    s->sieve[(key >> 20) % SIEVE_CELLS] |= (uint64_t)1 << (key >> 8) % 64;
}

static bool may_hold(const struct spoken *s, size_t place, uint64_t hash) {
    uint64_t key = key_at(place, hash);
    return s->sieve[(key >> 20) % SIEVE_CELLS] >> (key >> 8) % 64 & 1;
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
            sieve_add(s, s->place_count, s->hashes[s->hash_count - 1]);
        }
        at += n + 1;
    }
    place.to = s->hash_count;
    s->places = arena_grow(s->arena, s->places, s->place_count, &s->place_room, sizeof *s->places);
    s->places[s->place_count++] = place;
}

static uint64_t bits_of(const struct spoken *s, const struct place_of_words *place) {
    uint64_t bits = 0;
    for (size_t h = place->from; h < place->to; h++) bits |= spoken_bit(s->hashes[h]);
    return bits;
}

// How likely a place is filled by chance: the more words can, and the more of them stand in any note.
static size_t chance_of(const struct spoken *s, const struct place_of_words *place) {
    enum { COMMON_WEIGHT = 30 };
    static const char *const common[] = {"the", "a",  "an", "of",  "is",  "are", "and",  "it", "its",
                                         "in",  "to", "on", "has", "was", "at",  "with", "i",  "that"};
    size_t weight = place->to - place->from;
    for (size_t h = place->from; h < place->to; h++)
        for (size_t k = 0; k < COUNT(common); k++)
            if (s->hashes[h] == word_hash(common[k], strlen(common[k]))) weight += COMMON_WEIGHT;
    return weight;
}

// Of the places behind the opening one the two that say most, near enough to be looked at.
static void find_needs(const struct spoken *s, const struct opening *opening, struct spoken_gate *gate) {
    size_t reach = 0, least[SPOKEN_NEEDS] = {SIZE_MAX, SIZE_MAX};
    for (size_t k = opening->place + 1; k < s->patterns[opening->pattern].to; k++) {
        const struct place_of_words *place = &s->places[k];
        reach += place->gap ? GAP_MOST : 1;
        if (place->gap || place->optional || reach > SPOKEN_REACH) continue;
        size_t chance = chance_of(s, place) * reach, worse = least[1] > least[0];
        if (chance >= least[worse]) continue;
        least[worse] = chance;
        gate->place[worse] = (uint32_t)k;
        gate->need[worse] = bits_of(s, place);
        gate->reach[worse] = (uint8_t)reach;
    }
}

// Which words may stand two behind the opening one, where no gap and no end comes before.
static uint64_t third_of(const struct spoken *s, const struct opening *opening) {
    size_t to = s->patterns[opening->pattern].to;
    uint64_t bits = 0;
    for (size_t second = opening->place + 1; second < to; second++) {
        if (s->places[second].gap) return UINT64_MAX;
        size_t third = second + 1;
        for (bool more = true; more; third++) {
            if (third == to || s->places[third].gap) return UINT64_MAX;
            bits |= bits_of(s, &s->places[third]);
            more = s->places[third].optional;
        }
        if (!s->places[second].optional) return bits;
    }
    return UINT64_MAX;
}

// Behind places that may be skipped the next one opens the pattern as well.
static void add_openings(struct spoken *s, size_t number) {
    const struct pattern *pattern = &s->patterns[number];
    for (size_t k = pattern->from; k < pattern->to; k++) {
        s->openings =
            arena_grow(s->arena, s->openings, s->opening_count, &s->opening_room, sizeof *s->openings);
        struct opening *opening = &s->openings[s->opening_count++];
        *opening = (struct opening){.pattern = number, .place = k};
        s->gates = arena_grow(s->arena, s->gates, s->opening_count - 1, &s->gate_room, sizeof *s->gates);
        struct spoken_gate *gate = &s->gates[s->opening_count - 1];
        *gate = (struct spoken_gate){.third = third_of(s, opening), .need = {UINT64_MAX, UINT64_MAX}};
        find_needs(s, opening, gate);
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
    for (size_t i = 0; i < COUNT(stops); i++) {
        s->stops[i] = word_hash(stops[i], strlen(stops[i]));
        sieve_add(s, STOP_PLACE, s->stops[i]);
    }
    return s;
}

size_t spoken_longest(const struct spoken *s) {
    return s->longest;
}

const struct spoken_gate *spoken_gates(const struct spoken *s) {
    return s->gates;
}

// By each word that may stand first, and each that may stand next.
static void tell_opening(const struct spoken *s, size_t number, spoken_told *tell, void *context) {
    const struct opening *opening = &s->openings[number];
    const struct place_of_words *first = &s->places[opening->place];
    bool any = true; // what has to stand next is not known
    for (size_t k = opening->place + 1; any && k < s->patterns[opening->pattern].to; k++) {
        const struct place_of_words *next = &s->places[k];
        if (next->gap) break;
        for (size_t a = first->from; a < first->to; a++)
            for (size_t b = next->from; b < next->to; b++) tell(context, s->hashes[a], s->hashes[b], number);
        any = next->optional;
    }
    for (size_t a = first->from; any && a < first->to; a++) tell(context, s->hashes[a], 0, number);
}

void spoken_tell_openings(const struct spoken *s, spoken_told *tell, void *context) {
    for (size_t i = s->opening_count; i-- > 0;) tell_opening(s, i, tell, context);
}

struct places {
    const struct spoken *spoken;
    const struct phrase_word *words;
    size_t count, to; // `to`: end of the pattern's places
};

static bool holds(const struct spoken *s, size_t place, uint64_t hash) {
    if (!may_hold(s, place, hash)) return false;
    for (size_t h = s->places[place].from; h < s->places[place].to; h++)
        if (s->hashes[h] == hash) return true;
    return false;
}

// A sign, and a word that denies or turns, ends what any word may fill.
static bool is_stop(const struct spoken *s, const struct phrase_word *word) {
    if (!may_hold(s, STOP_PLACE, word->hash)) return false;
    for (size_t i = 0; i < COUNT(stops); i++)
        if (word->hash == s->stops[i]) return true;
    return false;
}

static size_t walk_from(const struct places *w, size_t place, size_t i);

// Up to three words of any kind, then the places from `place` on.
static size_t walk_gap(const struct places *w, size_t place, size_t i) {
    const struct place_of_words *next = &w->spoken->places[place];
    bool plain = place < w->to && !next->gap && !next->optional;
    for (size_t n = 0; n <= GAP_MOST && i + n <= w->count; n++) {
        size_t end = plain && !holds(w->spoken, place, w->words[i + n].hash) ? 0 : walk_from(w, place, i + n);
        if (end) return end;
        if (i + n < w->count && is_stop(w->spoken, &w->words[i + n])) return 0;
    }
    return 0;
}

// Where the places from `place` on end if they stand at word `i`; 0 if they do not.
static size_t walk_from(const struct places *w, size_t place, size_t i) {
    for (; place < w->to; place++) {
        const struct place_of_words *here = &w->spoken->places[place];
        if (here->gap) return walk_gap(w, place + 1, i);
        bool held = i < w->count && holds(w->spoken, place, w->words[i].hash);
        if (held && here->optional) {
            size_t end = walk_from(w, place + 1, i + 1);
            if (end) return end;
        } else if (held) {
            i++;
        } else if (!here->optional)
            return 0;
    }
    return w->words[i - 1].ends ? i : 0;
}

bool spoken_stands(const struct spoken *s, size_t number, const struct phrase_word *words, size_t count,
                   size_t i, struct spoken_hit *hit) {
    const struct opening *opening = &s->openings[number];
    const struct spoken_gate *gate = &s->gates[number];
    size_t sure = 0; // asked before all places are walked
    bool near = !gate->reach[sure];
    for (size_t k = 1; !near && k <= gate->reach[sure]; k++)
        near = may_hold(s, gate->place[sure], words[i + k].hash);
    if (!near) return false;
    const struct pattern *pattern = &s->patterns[opening->pattern];
    struct places places = {s, words, count, pattern->to};
    size_t end = walk_from(&places, opening->place + 1, i + 1);
    *hit = (struct spoken_hit){pattern->flaw, end - i, pattern->gated};
    return end > 0;
}
