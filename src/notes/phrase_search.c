// SPDX-License-Identifier: MIT
// Word by word: the sieve rules most out, a bucket tells what may begin there, and a look at one word of each
// whether it is worth more. Bars come before what they bar, longer phrases before shorter ones.
#include <stdlib.h>
#include <string.h>

#include "notes/bare.h"
#include "notes/phrase_table.h"

struct barred {
    const struct flaw *flaw;
    size_t from, to; // bytes while words are searched, then tokens
};

// Places are bytes while words are searched: so far nothing is known of tokens.
struct search {
    struct arena *arena;
    const struct phrases *phrases;
    const struct phrase_word *words;
    size_t count;
    uint32_t *covered;     // one a flaw: a word of it that ends up to here is inside another hit
    uint32_t *barred;      // one a flaw: a word of it that begins before here is inside an `unless`
    struct barred *unless; // where `unless` phrases stand
    size_t unless_count, unless_room;
    struct phrase_hits hits;
    size_t room, barred_room;
    struct spoken_found found;
};

// Of a phrase in a bucket of word `i`: the first three, or all it has, are its own. Most of the longer ones
// end with another word. Behind the last there are enough to look at.
static inline bool stands(const struct search *s, const struct phrase *phrase, size_t i) {
    size_t count = phrase->count;
    const struct phrase_word *words = s->words + i;
    if (count > 3) {
        if (upper_half(words[phrase->late_at].hash) != phrase->late || count > s->count - i) return false;
        const uint64_t *hashes = s->phrases->words + phrase->first;
        for (size_t k = 3; k < count; k++)
            if (words[k].hash != hashes[k]) return false;
    }
    return words[count - 1].ends;
}

static void tell_barred(struct search *s, const struct phrase *phrase, size_t i) {
    const struct flaw *flaw = s->phrases->rules->flaws[phrase->flaw];
    size_t from = s->words[i].from, to = s->words[i + phrase->count - 1].to;
    for (size_t k = s->unless_count; k-- > 0;) {
        const struct barred *b = &s->unless[k];
        if (b->flaw != flaw || b->from > from || b->to <= from) continue;
        s->hits.barred = arena_grow(s->arena, s->hits.barred, s->hits.barred_count, &s->barred_room,
                                    sizeof *s->hits.barred);
        s->hits.barred[s->hits.barred_count++] = (struct phrase_barred){flaw, from, to, b->from, b->to};
        return;
    }
}

static void keep_hit(struct search *s, size_t flaw, size_t i, size_t end, bool gated, bool alone) {
    if (s->hits.count == s->room)
        s->hits.at = arena_grow(s->arena, s->hits.at, s->hits.count, &s->room, sizeof *s->hits.at);
    s->hits.at[s->hits.count++] = (struct phrase_hit){.flaw = s->phrases->rules->flaws[flaw],
                                                      .from = s->words[i].from,
                                                      .to = s->words[end - 1].to,
                                                      .gated = gated,
                                                      .alone = alone};
}

// The three that follow are asked for few words, and stay out of the loop over all.
SELDOM static void keep(struct search *s, const struct phrase *phrase, size_t i) {
    if (!stands(s, phrase, i)) return;
    size_t end = i + phrase->count;
    if (end <= s->covered[phrase->flaw]) return;
    if (i < s->barred[phrase->flaw]) {
        tell_barred(s, phrase, i);
        return;
    }
    if (!phrase->alone) s->covered[phrase->flaw] = (uint32_t)end;
    keep_hit(s, phrase->flaw, i, end, phrase->gated, phrase->alone);
}

static inline bool is_met(const struct spoken_bits *need, struct spoken_window window,
                          const struct phrase_word *words) {
    const struct phrase_word *word = words + window.from, *end = word + window.count;
    for (; word < end; word++)
        if (spoken_may_be(need, word->hash)) return true;
    return !window.count;
}

enum { HIT_BYTES_MOST = 4096 }; // a longer hit is none

// Does an `unless` of the flaw that stands there, or begins before it, hold its first word?
static bool is_barred_at(const struct search *s, const struct flaw *flaw, size_t from) {
    for (size_t k = s->unless_count; k-- > 0 && s->unless[k].from + HIT_BYTES_MOST > from;) {
        const struct barred *b = &s->unless[k];
        if (b->flaw == flaw && b->from <= from && from < b->to) return true;
    }
    return false;
}

// Is it inside a hit of the flaw that begins before it? What counts for some things only covers nothing.
static bool is_covered(const struct search *s, const struct phrase_hit *hit) {
    for (size_t k = s->hits.count; k-- > 0 && s->hits.at[k].from + HIT_BYTES_MOST > hit->from;) {
        const struct phrase_hit *h = &s->hits.at[k];
        if (h->flaw == hit->flaw && !h->gated && h->from < hit->from && h->to >= hit->to) return true;
    }
    return false;
}

// Hits stand by where they begin; at one word those of patterns come first.
static bool stands_before(const struct phrase_hit *a, const struct phrase_hit *b) {
    if (a->from != b->from) return a->from < b->from;
    return a->pattern && (!b->pattern || a->pattern < b->pattern);
}

// A pattern is found by a word inside it: what begins there and is covered by it has been kept before it.
static void keep_before(struct search *s, const struct phrase_hit *hit) {
    struct phrase_hits *hits = &s->hits;
    size_t first = hits->count;
    while (first > 0 && !stands_before(&hits->at[first - 1], hit)) first--;
    size_t kept = first;
    for (size_t k = first; k < hits->count; k++) {
        const struct phrase_hit *h = &hits->at[k];
        if (hit->gated || h->flaw != hit->flaw || h->to > hit->to) hits->at[kept++] = *h;
    }
    hits->count = kept;
    if (hits->count == s->room)
        hits->at = arena_grow(s->arena, hits->at, hits->count, &s->room, sizeof *hits->at);
    memmove(&hits->at[first + 1], &hits->at[first], (kept - first) * sizeof *hits->at);
    hits->at[first] = *hit;
    hits->count++;
}

SELDOM static void keep_spoken(struct search *s, size_t opening, size_t i) {
    struct spoken_hit found;
    if (!spoken_stands(s->phrases->spoken, opening, s->words, s->count, i, &s->found, &found)) return;
    struct phrase_hit hit = {.flaw = s->phrases->rules->flaws[found.flaw],
                             .from = s->words[found.from].from,
                             .to = s->words[found.to - 1].to,
                             .pattern = (uint32_t)opening + 1,
                             .gated = found.gated};
    if (found.from < s->barred[found.flaw] && is_barred_at(s, hit.flaw, hit.from)) return;
    uint32_t *covered = &s->covered[found.flaw];
    if (found.to <= *covered && is_covered(s, &hit)) return;
    if (!found.gated && *covered < found.to) *covered = (uint32_t)found.to;
    keep_before(s, &hit);
}

SELDOM static void bar(struct search *s, const struct phrase *phrase, size_t i) {
    if (!stands(s, phrase, i)) return;
    if (s->barred[phrase->flaw] < i + phrase->count) s->barred[phrase->flaw] = (uint32_t)(i + phrase->count);
    if (s->unless_count == s->unless_room)
        s->unless = arena_grow(s->arena, s->unless, s->unless_count, &s->unless_room, sizeof *s->unless);
    s->unless[s->unless_count++] = (struct barred){s->phrases->rules->flaws[phrase->flaw], s->words[i].from,
                                                   s->words[i + phrase->count - 1].to};
}

static inline void bar_in(struct search *s, const struct bucket *bucket, size_t i) {
    const struct phrase *phrase = s->phrases->at + bucket->from, *end = s->phrases->at + bucket->said;
    for (; phrase < end; phrase++) bar(s, phrase, i);
}

static inline void keep_in(struct search *s, const struct bucket *bucket, size_t i) {
    const struct phrase *phrase = s->phrases->at + bucket->said, *end = s->phrases->at + bucket->to;
    for (; phrase < end; phrase++) keep(s, phrase, i);
}

static inline void keep_pattern(struct search *s, const struct bucket_opening *opening, size_t i) {
    if (!is_met(&opening->need, opening->window, s->words + i)) return;
    const struct spoken_gate *gate = &s->phrases->gates[opening->number];
    if (is_met(&gate->needs[1], gate->windows[1], s->words + i)) keep_spoken(s, opening->number, i);
}

static inline void keep_patterns(struct search *s, const struct bucket *bucket, size_t i, uint64_t third) {
    const struct bucket_opening *opening = &s->phrases->openings[bucket->spoken],
                                *end = opening + bucket->spoken_count;
    for (; opening < end; opening++)
        if (opening->third & third) keep_pattern(s, opening, i);
}

// What is in it that may stand before such a third word, as `enum bucket_has`.
static inline unsigned has_before(const struct bucket *bucket, uint64_t third) {
    return bucket->third_spoken & third ? bucket->has | HAS_SPOKEN : bucket->has;
}

// All that bars before all that is kept, and longer phrases before shorter ones.
SELDOM static void search_all(struct search *s, const struct bucket *three, const struct bucket *two,
                              const struct bucket *one, size_t i, uint64_t third, unsigned has) {
    if (has & HAS_UNLESS) bar_in(s, three, i);
    if (has & HAS_UNLESS << HAS_BITS) bar_in(s, two, i);
    if (has & HAS_UNLESS << 2 * HAS_BITS) bar_in(s, one, i);
    if (has & HAS_SPOKEN << HAS_BITS) keep_patterns(s, two, i, third);
    if (has & HAS_SPOKEN << 2 * HAS_BITS) keep_patterns(s, one, i, third);
    if (has & HAS_SAID) keep_in(s, three, i);
    if (has & HAS_SAID << HAS_BITS) keep_in(s, two, i);
    if (has & HAS_SAID << 2 * HAS_BITS) keep_in(s, one, i);
}

SELDOM static void search_one(struct search *s, const struct bucket *bucket, size_t i, uint64_t third,
                              unsigned has) {
    if (has & HAS_UNLESS) bar_in(s, bucket, i);
    if (has & HAS_SPOKEN) keep_patterns(s, bucket, i, third);
    if (has & HAS_SAID) keep_in(s, bucket, i);
}

static bool overlaps(const struct phrase_hit *h, const struct near_hit *hit) {
    return h->flaw == hit->flaw && h->from < hit->to && h->to > hit->from;
}

// Is the same flaw told there already? The first `sorted` hits are those of phrases, by their first token;
// each token has a word at least, but for a hyphen alone between two.
static bool is_told(struct search *s, size_t sorted, const struct near_hit *hit) {
    size_t reach = 2 * s->phrases->longest, from = 0;
    for (size_t to = sorted; from < to;) {
        size_t middle = from + (to - from) / 2;
        if (s->hits.at[middle].from + reach < hit->from)
            from = middle + 1;
        else
            to = middle;
    }
    for (; from < sorted && s->hits.at[from].from < hit->to; from++) {
        if (!overlaps(&s->hits.at[from], hit)) continue;
        s->hits.at[from].gated &= hit->gated; // as below
        return true;
    }
    for (size_t i = sorted; i < s->hits.count; i++) {
        if (!overlaps(&s->hits.at[i], hit)) continue;
        if (hit->gated && s->hits.at[i].gated && s->hits.at[i].from != hit->from)
            continue; // each counts for some things
        s->hits.at[i].gated &=
            hit->gated; // a pair that counts for any thing outranks one that counts for some
        return true;
    }
    return false;
}

// One of its words inside an `unless` of the flaw: "never held it up to the light"; of a pattern the first.
static bool is_barred(const struct search *s, const struct near_hit *hit, bool pair) {
    for (size_t i = 0; i < s->unless_count; i++) {
        const struct barred *b = &s->unless[i];
        bool first = b->from <= hit->from && hit->from < b->to,
             second = pair && b->from < hit->to && hit->to <= b->to;
        if (b->flaw == hit->flaw && (first || second)) return true;
    }
    return false;
}

static int hit_order(const void *a, const void *b) {
    const struct phrase_hit *x = a, *y = b;
    if (x->from != y->from) return x->from < y->from ? -1 : 1;
    return (x->near > y->near) - (x->near < y->near);
}

enum { NEAR_MOST = 4000 }; // in one note; more are no note

// Where the same flaw is not told already.
static void keep_apart(struct search *s, size_t sorted, const struct near_hit *hit, bool near) {
    if (is_told(s, sorted, hit)) return;
    s->hits.at = arena_grow(s->arena, s->hits.at, s->hits.count, &s->room, sizeof *s->hits.at);
    s->hits.at[s->hits.count++] = (struct phrase_hit){.flaw = hit->flaw,
                                                      .from = hit->listed ? hit->to - 1 : hit->from,
                                                      .to = hit->to,
                                                      .near = near,
                                                      .denied = hit->listed,
                                                      .gated = hit->gated};
}

// Pairs of words where no phrase of the same flaw stands already.
static void search_near(struct search *s, const struct tokens *tokens) {
    struct near_search near = near_start(s->arena, s->phrases->near, tokens);
    size_t before = s->hits.count, found = 0;
    struct near_hit hit;
    while (found < NEAR_MOST && near_next(&near, &hit)) {
        found++;
        if (!is_barred(s, &hit, true)) keep_apart(s, before, &hit, !hit.listed);
    }
    if (s->hits.count > before) qsort(s->hits.at, s->hits.count, sizeof *s->hits.at, hit_order);
}

enum { ROOM_AT_FIRST = 16 }; // more than most notes need

static void search_words(struct arena *arena, const struct phrases *phrases, const struct phrase_words *words,
                         struct search *s) {
    size_t flaws = phrases->rules->flaw_count;
    s->arena = arena;
    s->phrases = phrases;
    s->words = words->at;
    s->count = words->count;
    s->covered = arena_array(arena, 2 * flaws + 1, sizeof *s->covered);
    s->barred = s->covered + flaws;
    s->hits = (struct phrase_hits){.at = arena_room(arena, ROOM_AT_FIRST * sizeof *s->hits.at)};
    s->unless = arena_room(arena, ROOM_AT_FIRST * sizeof *s->unless);
    s->unless_count = s->barred_room = 0;
    s->room = s->unless_room = ROOM_AT_FIRST;
    s->found.group = 0;
    static const struct bucket none = {0};
    const struct phrase_word *word = words->at;
    // Behind the last is one of zeros.
    for (uint64_t first; (first = word->hash) != 0; word++) {
        uint64_t two = key_of_two(first, word[1].hash);
        bool more = passes(phrases->sieve, SIEVE_BITS, two),
             one = passes(phrases->sieve_of_one, SIEVE_OF_ONE_BITS, first);
        if (!(more | one)) continue;
        uint64_t third = spoken_bit(word[2].hash);
        size_t i = (size_t)(word - words->at);
        const struct bucket *longest = &none, *longer = &none, *single = &none;
        unsigned of_longest = 0, of_longer = 0, of_single = 0;
        if (more) {
            longer = bucket_of(phrases, two);
            of_longer = has_before(longer, third);
            if (longer->third & third) {
                longest = bucket_of(phrases, key_of_three(two, word[2].hash));
                of_longest = longest->has;
            }
        }
        if (one) {
            single = bucket_of(phrases, first);
            of_single = has_before(single, third);
        }
        unsigned has = of_longest | of_longer << HAS_BITS | of_single << 2 * HAS_BITS;
        if (!word->starts) has &= HAS_SPOKEN << HAS_BITS | HAS_SPOKEN << 2 * HAS_BITS; // inside a token
        if (!has) continue;
        if (!(has & ((1u << 2 * HAS_BITS) - 1)))
            search_one(s, single, i, third, has >> 2 * HAS_BITS);
        else
            search_all(s, longest, longer, single, i, third, has);
    }
}

size_t phrases_scan(struct arena *arena, const struct phrases *phrases, const char *text, size_t size) {
    struct phrase_words words = phrase_words_of_text(arena, text, size);
    if (!words.at) return SIZE_MAX;
    struct search search;
    search_words(arena, phrases, &words, &search);
    return search.hits.count;
}

// The first token that begins at a byte or behind it.
static size_t token_from(const struct tokens *tokens, size_t byte) {
    size_t from = 0, to = tokens->count;
    while (from < to) {
        size_t middle = from + (to - from) / 2;
        if (tokens->at[middle].from < byte)
            from = middle + 1;
        else
            to = middle;
    }
    return from;
}

static void to_tokens(const struct tokens *tokens, size_t *from, size_t *to) {
    *from = token_from(tokens, *from);
    while (*from < tokens->count && tokens->at[*from].to == tokens->at[*from].from)
        ++*from; // a stop that nobody wrote stands at the byte of the word behind it
    *to = token_from(tokens, *to);
}

// What counts alone and does not stand so is no hit.
static void all_to_tokens(struct search *s, const struct tokens *tokens) {
    size_t kept = 0;
    for (size_t i = 0; i < s->hits.count; i++) {
        struct phrase_hit *hit = &s->hits.at[i];
        to_tokens(tokens, &hit->from, &hit->to);
        if (!hit->alone || bare_stands(tokens, hit->from, hit->to)) s->hits.at[kept++] = *hit;
    }
    s->hits.count = kept;
    for (size_t i = 0; i < s->unless_count; i++) to_tokens(tokens, &s->unless[i].from, &s->unless[i].to);
    for (size_t i = 0; i < s->hits.barred_count; i++) {
        struct phrase_barred *barred = &s->hits.barred[i];
        to_tokens(tokens, &barred->from, &barred->to);
        to_tokens(tokens, &barred->unless_from, &barred->unless_to);
    }
}

// Only what is looked for by a group has words it needs in front, and there may be fewer.
static bool is_met_around(const struct spoken_gate *gate, size_t n, const struct search *s, size_t i) {
    size_t before = gate->windows[n].from < 0 ? (size_t)-gate->windows[n].from : 0,
           count = gate->windows[n].count;
    size_t from = before > i ? 0 : i + (size_t)gate->windows[n].from,
           to = before > i + count ? 0 : i + (size_t)gate->windows[n].from + count;
    for (; from < to; from++)
        if (spoken_may_be(&gate->needs[n], s->words[from].hash)) return true;
    return !count;
}

// Patterns with groups that are looked for by a word, where no phrase of the same flaw stands already.
static void keep_grouped(struct search *s, const struct tokens *tokens, size_t opening, size_t i,
                         size_t sorted) {
    const struct phrases *p = s->phrases->groups;
    const struct spoken_gate *gate = &p->gates[opening];
    struct spoken_hit hit;
    if (!is_met_around(gate, 0, s, i) || !is_met_around(gate, 1, s, i)) return;
    if (!spoken_stands(p->spoken, opening, s->words, s->count, i, &s->found, &hit)) return;
    struct near_hit found = {.gated = hit.gated,
                             .flaw = p->rules->flaws[hit.flaw],
                             .from = s->words[i].from,
                             .to = s->words[hit.to - 1].to};
    to_tokens(tokens, &found.from, &found.to);
    if (!is_barred(s, &found, false)) keep_apart(s, sorted, &found, false);
}

static void keep_groups(struct search *s, const struct tokens *tokens, const struct bucket *bucket, size_t i,
                        size_t sorted) {
    const struct bucket_opening *openings = &s->phrases->groups->openings[bucket->spoken];
    for (uint32_t k = 0; k < bucket->spoken_count; k++)
        keep_grouped(s, tokens, openings[k].number, i, sorted);
}

static void search_groups(struct search *s, const struct tokens *tokens) {
    const struct phrases *p = s->phrases->groups;
    size_t before = s->hits.count;
    for (size_t i = 0; p && i < s->count; i++) {
        uint64_t first = s->words[i].hash, two = key_of_two(first, s->words[i + 1].hash);
        if (passes(p->sieve, SIEVE_BITS, two)) keep_groups(s, tokens, bucket_of(p, two), i, before);
        if (passes(p->sieve_of_one, SIEVE_OF_ONE_BITS, first))
            keep_groups(s, tokens, bucket_of(p, first), i, before);
    }
    if (s->hits.count > before) qsort(s->hits.at, s->hits.count, sizeof *s->hits.at, hit_order);
}

struct phrase_hits phrases_find(struct arena *arena, const struct phrases *phrases,
                                const struct tokens *tokens) {
    struct phrase_words words = {NULL, 0};
    if (!tokens->altered) words = phrase_words_of_text(arena, tokens->text, tokens->size);
    if (!words.at) words = phrase_words_of_tokens(arena, tokens);
    struct search search;
    search_words(arena, phrases, &words, &search);
    all_to_tokens(&search, tokens);
    search_groups(&search, tokens);
    search_near(&search, tokens);
    return search.hits;
}

struct phrase_hits phrases_find_sound(struct arena *arena, const struct phrases *phrases,
                                      const struct tokens *tokens) {
    return phrases->sounds ? phrases_find(arena, phrases->sounds, tokens) : (struct phrase_hits){0};
}
