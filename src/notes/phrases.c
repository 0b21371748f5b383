// SPDX-License-Identifier: MIT
// The table is built here and looked into by phrase_search.c. Phrases are compared as sequences of word
// hashes, so that neither the rules' texts nor the note's are touched again. A hyphened token is as many
// words as it has parts; a hit ends only where a token ends.
#include "notes/phrases.h"

#include <stdlib.h>
#include <string.h>

#include "notes/phrase_table.h"
#include "text/index.h"

enum { HASHES_ROOM = 64 }; // more than a phrase has
enum { FLAWS_MOST = (1 << 29) - 1, WORDS_MOST = (1 << 24) - 1 };

// The words of a text, which goes without the tokens that they were found by: there are tens of thousands.
static size_t hashes_of(struct arena *arena, const char *text, uint64_t hashes[HASHES_ROOM],
                        const uint64_t **at) {
    struct arena_mark mark = arena_mark(arena);
    struct tokens tokens = tokens_cut(arena, text, strlen(text));
    struct phrase_words words = phrase_words_of_tokens(arena, &tokens);
    uint64_t *to = words.count <= HASHES_ROOM ? hashes : arena_array(arena, words.count, sizeof *to);
    for (size_t i = 0; i < words.count; i++) to[i] = words.at[i].hash;
    if (to == hashes) arena_release(arena, &mark);
    *at = to;
    return words.count;
}

static struct phrase *add(struct arena *arena, struct phrases *p, const char *text, size_t flaw,
                          bool unless) {
    uint64_t room[HASHES_ROOM];
    const uint64_t *hashes;
    size_t count = hashes_of(arena, text, room, &hashes);
    if (!count) return NULL;
    p->at = arena_grow(arena, p->at, p->count, &p->room, sizeof *p->at);
    size_t late = count > PHRASE_WORDS_BEHIND ? PHRASE_WORDS_BEHIND : count - 1;
    p->at[p->count++] = (struct phrase){.late = upper_half(hashes[late]),
                                        .late_at = late & UINT8_MAX,
                                        .count = count & WORDS_MOST,
                                        .first = (uint32_t)p->word_count,
                                        .flaw = flaw & FLAWS_MOST,
                                        .unless = unless};
    for (size_t i = 0; i < count; i++) {
        p->words = arena_grow(arena, p->words, p->word_count, &p->word_room, sizeof *p->words);
        p->words[p->word_count++] = hashes[i];
    }
    return &p->at[p->count - 1];
}

// How much is needed, nearly: what grows leaves behind what it was.
static void tell_room(struct phrases *p, const struct texts *texts) {
    for (size_t i = 0; i < texts->count; i++) {
        p->room++;
        p->word_room++;
        for (const char *c = texts->at[i]; *c; c++) p->word_room += *c == ' ' || *c == '-';
    }
}

static uint64_t key_of(const struct phrases *p, const struct phrase *phrase) {
    const uint64_t *words = &p->words[phrase->first];
    if (phrase->count == 1) return words[0];
    uint64_t two = key_of_two(words[0], words[1]);
    return phrase->count == 2 ? two : key_of_three(two, words[2]);
}

struct sortable {
    uint64_t key;
    struct phrase phrase;
};

static int phrase_order(const void *a, const void *b) {
    const struct sortable *x = a, *y = b;
    if (x->key != y->key) return x->key < y->key ? -1 : 1;
    if (x->phrase.unless != y->phrase.unless) return x->phrase.unless ? -1 : 1;
    if (x->phrase.count != y->phrase.count) return x->phrase.count > y->phrase.count ? -1 : 1;
    return (x->phrase.first > y->phrase.first) - (x->phrase.first < y->phrase.first);
}

static void sort(struct arena *arena, struct phrases *p) {
    if (!p->at) return; // no phrases
    struct sortable *all = arena_array(arena, p->count + 1, sizeof *all);
    for (size_t i = 0; i < p->count; i++) all[i] = (struct sortable){key_of(p, &p->at[i]), p->at[i]};
    if (p->count) qsort(all, p->count, sizeof *all, phrase_order);
    for (size_t i = 0; i < p->count; i++) p->at[i] = all[i].phrase;
}

static void sieve_add(struct phrases *p, uint64_t key, bool one) {
    uint64_t *cell =
        one ? &p->sieve_of_one[key >> (64 - SIEVE_OF_ONE_BITS)] : &p->sieve[key >> (64 - SIEVE_BITS)];
    *cell |= (uint64_t)1 << (key >> 8) % 64;
}

// The two words that lead to a phrase of more.
static void lead_to_third(struct phrases *p, const uint64_t *words) {
    uint64_t key = key_of_two(words[0], words[1]);
    struct bucket *bucket = bucket_of(p, key);
    bucket->key = key;
    bucket->third |= spoken_bit(words[2]);
    sieve_add(p, key, false);
}

static void index_buckets(struct arena *arena, struct phrases *p) {
    size_t keys = p->count + p->opening_count;
    for (size_t i = 0; p->at && i < p->count; i++) keys += p->at[i].count > 2; // what leads to it
    p->mask = 15;
    // They share some; a look is short where two of three are free.
    while (p->mask < 2 * keys) p->mask = p->mask * 2 + 1;
    p->buckets = arena_array(arena, p->mask + 1, sizeof *p->buckets);
    for (size_t from = 0, to; p->at && from < p->count; from = to) {
        const struct phrase *first = &p->at[from];
        uint64_t key = key_of(p, first);
        size_t said = from;
        for (to = from; to < p->count && key_of(p, &p->at[to]) == key; to++) {
            if (p->at[to].count > p->longest) p->longest = p->at[to].count;
            said += p->at[to].unless;
        }
        struct bucket *bucket = bucket_of(p, key);
        bucket->key = key;
        bucket->from = (uint32_t)from;
        bucket->said = (uint32_t)said;
        bucket->to = (uint32_t)to;
        if (said > from) bucket->has |= HAS_UNLESS;
        if (to > said) bucket->has |= HAS_SAID;
        if (first->count > 2)
            lead_to_third(p, &p->words[first->first]);
        else
            sieve_add(p, key, first->count == 1);
    }
}

static void gather_parts(struct arena *arena, struct phrases *p) {
    size_t count = 0;
    for (size_t i = 0; i < p->rules->flaw_count; i++) count += p->rules->flaws[i]->parts.count;
    p->parts = index_new(arena, count);
    for (size_t i = 0; i < p->rules->flaw_count; i++)
        for (size_t k = 0; k < p->rules->flaws[i]->parts.count; k++) {
            const char *part = p->rules->flaws[i]->parts.at[k];
            if (strcmp(part, "both") != 0 && strcmp(part, "light") != 0 && strcmp(part, "piece") != 0)
                index_add(p->parts, part, strlen(part), i);
        }
}

bool phrases_is_part(const struct phrases *p, const char *word) {
    return p && index_find(p->parts, word, strlen(word)) != INDEX_NONE;
}

const struct slip_words *phrases_slips(const struct phrases *p) {
    return p ? p->slips : NULL;
}

static struct phrases *phrases_made(struct arena *arena, const struct ruleset *rules) {
    struct phrases *p = arena_alloc(arena, sizeof *p);
    p->rules = rules;
    return p;
}

static void phrases_index(struct arena *arena, struct phrases *p) {
    sort(arena, p);
    index_buckets(arena, p);
}

static struct phrases *sounds_new(struct arena *arena, const struct ruleset *rules) {
    struct phrases *p = phrases_made(arena, rules);
    p->near = near_new(arena, rules, true);
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct texts *sound = &rules->flaws[i]->sound;
        for (size_t k = 0; k < sound->count; k++) {
            const char *text = sound->at[k];
            if (strstr(text, NEAR_BAR)) continue;
            bool any = !strncmp(text, NEAR_ANY, sizeof NEAR_ANY - 1);
            struct phrase *added = add(arena, p, any ? text + sizeof NEAR_ANY - 1 : text, i, false);
            if (added) added->gated = !any;
        }
    }
    phrases_index(arena, p);
    return p;
}

static void count_opening(void *context, uint64_t first, uint64_t second, size_t opening) {
    struct phrases *p = context;
    (void)first, (void)second, (void)opening;
    p->opening_count++;
}

static struct bucket *bucket_of_opening(const struct phrases *p, uint64_t first, uint64_t second) {
    return bucket_of(p, second ? key_of_two(first, second) : first);
}

static void make_bucket(void *context, uint64_t first, uint64_t second, size_t opening) {
    struct phrases *p = context;
    struct bucket *bucket = bucket_of_opening(p, first, second);
    bucket->key = second ? key_of_two(first, second) : first;
    bucket->third_spoken |= spoken_gates(p->spoken)[opening].third;
    bucket->spoken_count++;
    sieve_add(p, bucket->key, !second);
}

// Each bucket's room is filled from its end.
static void add_opening(void *context, uint64_t first, uint64_t second, size_t opening) {
    struct phrases *p = context;
    struct bucket *bucket = bucket_of_opening(p, first, second);
    if (bucket->spoken_count && p->openings[bucket->spoken].number == opening) return; // told twice
    const struct spoken_gate *gate = &spoken_gates(p->spoken)[opening];
    p->openings[--bucket->spoken] =
        (struct bucket_opening){gate->third, gate->needs[0], gate->windows[0], (uint32_t)opening};
    bucket->spoken_count++;
}

// The patterns' openings among the phrases.
static void index_openings(struct arena *arena, struct phrases *p, bool grouped) {
    spoken_tell_openings(p->spoken, grouped, count_opening, p);
    phrases_index(arena, p);
    p->openings = arena_array(arena, p->opening_count + 1, sizeof *p->openings);
    spoken_tell_openings(p->spoken, grouped, make_bucket, p);
    uint32_t to = 0;
    for (size_t i = 0; i <= p->mask; i++) {
        struct bucket *bucket = &p->buckets[i];
        to += bucket->spoken_count;
        bucket->spoken = to;
        bucket->spoken_count = 0;
    }
    spoken_tell_openings(p->spoken, grouped, add_opening, p);
    p->gates = spoken_gates(p->spoken);
}

const struct phrases *phrases_new(struct arena *arena, const struct ruleset *rules) {
    struct phrases *p = phrases_made(arena, rules), *groups = phrases_made(arena, rules);
    p->near = near_new(arena, rules, false);
    p->spoken = groups->spoken = spoken_new(arena, rules);
    p->sounds = sounds_new(arena, rules);
    p->groups = groups;
    gather_parts(arena, p);
    p->slips = slip_words_new(arena, rules);
    for (size_t i = 0; i < rules->flaw_count; i++) {
        tell_room(p, &rules->flaws[i]->finder.said);
        tell_room(p, &rules->flaws[i]->finder.unless);
        tell_room(p, &rules->flaws[i]->alone);
    }
    p->at = arena_array(arena, p->room + 1, sizeof *p->at);
    p->words = arena_array(arena, p->word_room + 1, sizeof *p->words);
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct finder *finder = &rules->flaws[i]->finder;
        for (size_t k = 0; k < finder->said.count; k++) add(arena, p, finder->said.at[k], i, false);
        for (size_t k = 0; k < finder->unless.count; k++) add(arena, p, finder->unless.at[k], i, true);
        const struct texts *alone = &rules->flaws[i]->alone;
        for (size_t k = 0; k < alone->count; k++) {
            struct phrase *added = add(arena, p, alone->at[k], i, false);
            if (added) added->gated = added->alone = true;
        }
    }
    index_openings(arena, p, false);
    index_openings(arena, groups, true);
    if (p->longest < spoken_longest(p->spoken)) p->longest = spoken_longest(p->spoken);
    return p;
}
