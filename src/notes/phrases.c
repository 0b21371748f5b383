// SPDX-License-Identifier: MIT
// Phrases are compared as sequences of word hashes, so that neither the rules' texts nor the note's are
// touched again. A hyphened token is as many words as it has parts; a hit ends only where a token ends.
#include "notes/phrases.h"

#include <stdlib.h>
#include <string.h>

#include "notes/near.h"
#include "notes/phrase_words.h"
#include "notes/spoken.h"
#include "text/index.h"

struct phrase {
    uint32_t late;        // half of the hash of the word at `late_at`: the last that is looked at first
    uint32_t late_at : 8, // in the phrase
        count : 24;
    uint32_t first;     // of its words in `words`
    uint32_t flaw : 30; // number in the rule set
    uint32_t unless : 1;
    uint32_t gated : 1; // of `sound`, without "{any}"
};

// Phrases of two words and more by both of their first words, those of one by that one: a word like "no"
// begins hundreds.
struct bucket {
    uint64_t key;
    uint32_t from, said, to; // in `phrases`, those of `unless` and then the others, each longest first
    uint32_t spoken; // its pattern's opening with OPENING_LAST, or where those of its patterns begin, + 1
    uint64_t third;  // a bit for each word that may be the third of one of them
};

static const uint32_t OPENING_LAST = 1u << 31; // of a bucket

// Of 64 bits: small enough to stay near the processor.
enum { SIEVE_BITS = 14, SIEVE_OF_ONE_BITS = 10 }; // of the number of a cell

struct phrases {
    const struct ruleset *rules;
    uint64_t *words;
    size_t word_count, word_room;
    struct phrase *at;
    size_t count, room;
    struct bucket *buckets; // free where the key is 0
    size_t mask;
    uint32_t *openings; // of patterns, those of a bucket one behind the other
    size_t opening_count;
    uint64_t sieve[1 << SIEVE_BITS],
        sieve_of_one[1 << SIEVE_OF_ONE_BITS]; // a bit for the key of each bucket, of two
                                              // words and of one, and for what begins a pattern: most
                                              // words begin nothing
    size_t longest;                           // words of the longest phrase
    struct near *near;
    struct index *parts;    // of the flaws' rules
    struct phrases *sounds; // of the rules' `sound`, NULL in themselves
    struct phrases *groups; // what patterns with groups are looked for by; they are rarer than all others
    struct spoken *spoken;
    const struct spoken_gate *gates; // its own
    struct slip_words *slips;
};

enum { HASHES_ROOM = 64 }; // more than a phrase has
enum { FLAWS_MOST = (1 << 30) - 1, WORDS_MOST = (1 << 24) - 1 };

static inline uint32_t upper_half(uint64_t hash) {
    return (uint32_t)(hash >> 32);
}

// --- building ---

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

static void add(struct arena *arena, struct phrases *p, const char *text, size_t flaw, bool unless,
                bool gated) {
    uint64_t room[HASHES_ROOM];
    const uint64_t *hashes;
    size_t count = hashes_of(arena, text, room, &hashes);
    if (!count) return;
    p->at = arena_grow(arena, p->at, p->count, &p->room, sizeof *p->at);
    size_t late = count > PHRASE_WORDS_BEHIND ? PHRASE_WORDS_BEHIND : count - 1;
    p->at[p->count++] = (struct phrase){.late = upper_half(hashes[late]),
                                        .late_at = late & UINT8_MAX,
                                        .count = count & WORDS_MOST,
                                        .first = (uint32_t)p->word_count,
                                        .flaw = flaw & FLAWS_MOST,
                                        .unless = unless,
                                        .gated = gated};
    for (size_t i = 0; i < count; i++) {
        p->words = arena_grow(arena, p->words, p->word_count, &p->word_room, sizeof *p->words);
        p->words[p->word_count++] = hashes[i];
    }
}

// How much is needed, nearly: what grows leaves behind what it was.
static void tell_room(struct phrases *p, const struct texts *texts) {
    for (size_t i = 0; i < texts->count; i++) {
        p->room++;
        p->word_room++;
        for (const char *c = texts->at[i]; *c; c++) p->word_room += *c == ' ' || *c == '-';
    }
}

static uint64_t key_of_two(uint64_t first, uint64_t second) {
    return (first * 0x9E3779B97F4A7C15u) ^
           second; // both are odd, so that this is even and a single word's is not
}

static uint64_t key_of(const struct phrases *p, const struct phrase *phrase) {
    const uint64_t *words = &p->words[phrase->first];
    return phrase->count > 1 ? key_of_two(words[0], words[1]) : words[0];
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
    struct sortable *all = arena_array(arena, p->count + 1, sizeof *all);
    for (size_t i = 0; i < p->count; i++) all[i] = (struct sortable){key_of(p, &p->at[i]), p->at[i]};
    if (p->count) qsort(all, p->count, sizeof *all, phrase_order);
    for (size_t i = 0; i < p->count; i++) p->at[i] = all[i].phrase;
}

// The bucket of a key, or the free one where it belongs.
static struct bucket *bucket_of(const struct phrases *p, uint64_t key) {
    size_t at = (size_t)(key >> 7) & p->mask;
    while (p->buckets[at].key != key && p->buckets[at].key) at = (at + 1) & p->mask;
    return &p->buckets[at];
}

static void sieve_add(struct phrases *p, uint64_t key, bool one) {
    uint64_t *cell =
        one ? &p->sieve_of_one[key >> (64 - SIEVE_OF_ONE_BITS)] : &p->sieve[key >> (64 - SIEVE_BITS)];
    *cell |= (uint64_t)1 << (key >> 8) % 64;
}

static void index_buckets(struct arena *arena, struct phrases *p) {
    p->mask = 15;
    // Phrases and openings share keys, so a quarter more than all of them is twice what there are.
    while (p->mask < (p->count + p->opening_count) * 5 / 4) p->mask = p->mask * 2 + 1;
    p->buckets = arena_array(arena, p->mask + 1, sizeof *p->buckets);
    for (size_t from = 0, to; from < p->count; from = to) {
        uint64_t key = key_of(p, &p->at[from]);
        size_t said = from;
        uint64_t third = 0;
        for (to = from; to < p->count && key_of(p, &p->at[to]) == key;) {
            third |= p->at[to].count > 2 ? spoken_bit(p->words[p->at[to].first + 2]) : UINT64_MAX;
            if (p->at[to].count > p->longest) p->longest = p->at[to].count;
            said += p->at[to++].unless;
        }
        *bucket_of(p, key) = (struct bucket){key, (uint32_t)from, (uint32_t)said, (uint32_t)to, 0, third};
        sieve_add(p, key, p->at[from].count == 1);
    }
}

// Most keys have none, as one look at a sieve tells.
static inline bool passes(const uint64_t *sieve, int bits, uint64_t key) {
    return sieve[key >> (64 - bits)] >> (key >> 8) % 64 & 1;
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
            add(arena, p, any ? text + sizeof NEAR_ANY - 1 : text, i, false, !any);
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

// Counts those of a bucket in `spoken`.
static void make_bucket(void *context, uint64_t first, uint64_t second, size_t opening) {
    struct phrases *p = context;
    struct bucket *bucket = bucket_of_opening(p, first, second);
    (void)opening;
    bucket->key = second ? key_of_two(first, second) : first;
    bucket->third = UINT64_MAX;
    bucket->spoken++;
    sieve_add(p, bucket->key, !second);
}

// Each bucket's room is filled from its end.
static void add_opening(void *context, uint64_t first, uint64_t second, size_t opening) {
    struct phrases *p = context;
    struct bucket *bucket = bucket_of_opening(p, first, second);
    uint32_t last = bucket->spoken & OPENING_LAST, at = bucket->spoken & ~OPENING_LAST;
    if (!last && (p->openings[at - 1] & ~OPENING_LAST) == opening) return; // told twice
    p->openings[at - 2] = (uint32_t)opening | last;
    bucket->spoken = at - 1;
}

// The patterns' openings among the phrases.
static void index_openings(struct arena *arena, struct phrases *p, bool grouped) {
    spoken_tell_openings(p->spoken, grouped, count_opening, p);
    phrases_index(arena, p);
    p->openings = arena_array(arena, p->opening_count + 1, sizeof *p->openings);
    spoken_tell_openings(p->spoken, grouped, make_bucket, p);
    uint32_t to = 1;
    for (size_t i = 0; i <= p->mask; i++) {
        struct bucket *bucket = &p->buckets[i];
        to += bucket->spoken;
        if (bucket->spoken) bucket->spoken = to | OPENING_LAST;
    }
    spoken_tell_openings(p->spoken, grouped, add_opening, p);
    for (size_t i = 0; i <= p->mask; i++) {
        struct bucket *bucket = &p->buckets[i];
        if (bucket->spoken && p->openings[bucket->spoken - 1] & OPENING_LAST)
            bucket->spoken = p->openings[bucket->spoken - 1];
    }
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
    }
    p->at = arena_array(arena, p->room + 1, sizeof *p->at);
    p->words = arena_array(arena, p->word_room + 1, sizeof *p->words);
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct finder *finder = &rules->flaws[i]->finder;
        for (size_t k = 0; k < finder->said.count; k++) add(arena, p, finder->said.at[k], i, false, false);
        for (size_t k = 0; k < finder->unless.count; k++) add(arena, p, finder->unless.at[k], i, true, false);
    }
    index_openings(arena, p, false);
    index_openings(arena, groups, true);
    if (p->longest < spoken_longest(p->spoken)) p->longest = spoken_longest(p->spoken);
    return p;
}

// --- finding ---

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

// Most phrases of a bucket end with another word. Behind the last there are enough to look at.
static inline bool may_stand(const struct phrase *phrase, const struct phrase_word *words) {
    return upper_half(words[phrase->late_at].hash) == phrase->late;
}

// Of a phrase in the bucket of word `i` that may stand there: the first two, or the only one, are its own.
static bool stands(const struct search *s, const struct phrase *phrase, size_t i) {
    size_t count = phrase->count;
    const struct phrase_word *words = s->words + i;
    const uint64_t *hashes = s->phrases->words + phrase->first;
    if (count > s->count - i) return false;
    for (size_t k = 2; k < count; k++)
        if (words[k].hash != hashes[k]) return false;
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

static void keep_hit(struct search *s, size_t flaw, size_t i, size_t end, bool gated) {
    if (s->hits.count == s->room)
        s->hits.at = arena_grow(s->arena, s->hits.at, s->hits.count, &s->room, sizeof *s->hits.at);
    s->hits.at[s->hits.count++] = (struct phrase_hit){.flaw = s->phrases->rules->flaws[flaw],
                                                      .from = s->words[i].from,
                                                      .to = s->words[end - 1].to,
                                                      .gated = gated};
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
    s->covered[phrase->flaw] = (uint32_t)end;
    keep_hit(s, phrase->flaw, i, end, phrase->gated);
}

// Only what is looked for by a group has words it needs in front.
static inline bool is_met(const struct spoken_gate *gate, size_t n, const struct search *s, size_t i,
                          bool grouped) {
    size_t from = i + (size_t)gate->windows[n].from, to = from + gate->windows[n].count;
    if (grouped && gate->windows[n].from < 0) { // what is before the first word has wrapped
        if (from > i) from = 0;
        if (to > i) to = 0;
    }
    for (; from < to; from++)
        if (spoken_may_be(&gate->needs[n], s->words[from].hash)) return true;
    return !gate->windows[n].count;
}

// The next opening, + 1, that may stand at word `i`, of those from `at` on in a bucket; 0 behind the last.
static inline size_t next_opening(const struct search *s, const struct phrases *p, uint32_t *at, size_t i,
                                  uint64_t third, bool grouped) {
    while (*at) {
        uint32_t opening = *at & OPENING_LAST ? *at : p->openings[*at - 1];
        *at = opening & OPENING_LAST ? 0 : *at + 1;
        opening &= ~OPENING_LAST;
        const struct spoken_gate *gate = &p->gates[opening];
        if (gate->third & third && is_met(gate, 0, s, i, grouped) && is_met(gate, 1, s, i, grouped))
            return opening + 1;
    }
    return 0;
}

// One that counts for some things only covers no phrase that counts for all.
SELDOM static void keep_spoken(struct search *s, size_t opening, size_t i) {
    struct spoken_hit hit;
    if (!spoken_stands(s->phrases->spoken, opening, s->words, s->count, i, &s->found, &hit)) return;
    size_t end = i + hit.count;
    if (end <= s->covered[hit.flaw] || i < s->barred[hit.flaw]) return;
    if (!hit.gated) s->covered[hit.flaw] = (uint32_t)end;
    keep_hit(s, hit.flaw, i, end, hit.gated);
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
    for (; phrase < end; phrase++)
        if (may_stand(phrase, s->words + i)) bar(s, phrase, i);
}

static inline void keep_in(struct search *s, const struct bucket *bucket, size_t i) {
    const struct phrase *phrase = s->phrases->at + bucket->said, *end = s->phrases->at + bucket->to;
    for (; phrase < end; phrase++)
        if (may_stand(phrase, s->words + i)) keep(s, phrase, i);
}

static inline void keep_patterns(struct search *s, const struct bucket *bucket, size_t i, uint64_t third) {
    uint32_t at = bucket->spoken;
    for (size_t opening; (opening = next_opening(s, s->phrases, &at, i, third, false)) != 0;)
        keep_spoken(s, opening - 1, i);
}

// All that bars before all that is kept, and longer phrases before shorter ones.
SELDOM static void search_both(struct search *s, const struct bucket *longer, const struct bucket *single,
                               size_t i, uint64_t third) {
    bar_in(s, longer, i);
    bar_in(s, single, i);
    keep_patterns(s, longer, i, third);
    keep_patterns(s, single, i, third);
    keep_in(s, longer, i);
    keep_in(s, single, i);
}

SELDOM static void search_one(struct search *s, const struct bucket *bucket, size_t i, uint64_t third) {
    bar_in(s, bucket, i);
    keep_patterns(s, bucket, i, third);
    keep_in(s, bucket, i);
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
    const struct phrase_word *word = words->at;
    // Behind the last is one of zeros.
    for (uint64_t first; (first = word->hash) != 0; word++) {
        uint64_t two = key_of_two(first, word[1].hash);
        bool more = passes(phrases->sieve, SIEVE_BITS, two),
             one = passes(phrases->sieve_of_one, SIEVE_OF_ONE_BITS, first);
        if (!(more | one) || !word->starts) continue;
        uint64_t third = spoken_bit(word[2].hash);
        const struct bucket *longer = more ? bucket_of(phrases, two) : NULL,
                            *single = one ? bucket_of(phrases, first) : NULL;
        if (longer && !(longer->third & third)) longer = NULL;
        if (longer && single)
            search_both(s, longer, single, (size_t)(word - words->at), third);
        else if (longer || single)
            search_one(s, longer ? longer : single, (size_t)(word - words->at), third);
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
    *to = token_from(tokens, *to);
}

static void all_to_tokens(struct search *s, const struct tokens *tokens) {
    for (size_t i = 0; i < s->hits.count; i++) to_tokens(tokens, &s->hits.at[i].from, &s->hits.at[i].to);
    for (size_t i = 0; i < s->unless_count; i++) to_tokens(tokens, &s->unless[i].from, &s->unless[i].to);
    for (size_t i = 0; i < s->hits.barred_count; i++) {
        struct phrase_barred *barred = &s->hits.barred[i];
        to_tokens(tokens, &barred->from, &barred->to);
        to_tokens(tokens, &barred->unless_from, &barred->unless_to);
    }
}

// Patterns with groups that are looked for by a word, where no phrase of the same flaw stands already.
static void keep_groups(struct search *s, const struct tokens *tokens, uint32_t at, size_t i, size_t sorted) {
    const struct phrases *p = s->phrases->groups;
    for (size_t opening; (opening = next_opening(s, p, &at, i, UINT64_MAX, true)) != 0;) {
        struct spoken_hit hit;
        if (!spoken_stands(p->spoken, opening - 1, s->words, s->count, i, &s->found, &hit)) continue;
        struct near_hit found = {.gated = hit.gated,
                                 .flaw = p->rules->flaws[hit.flaw],
                                 .from = s->words[i].from,
                                 .to = s->words[i + hit.count - 1].to};
        to_tokens(tokens, &found.from, &found.to);
        if (!is_barred(s, &found, false)) keep_apart(s, sorted, &found, false);
    }
}

static void search_groups(struct search *s, const struct tokens *tokens) {
    const struct phrases *p = s->phrases->groups;
    size_t before = s->hits.count;
    for (size_t i = 0; p && i < s->count; i++) {
        uint64_t first = s->words[i].hash, two = key_of_two(first, s->words[i + 1].hash);
        if (passes(p->sieve, SIEVE_BITS, two)) keep_groups(s, tokens, bucket_of(p, two)->spoken, i, before);
        if (passes(p->sieve_of_one, SIEVE_OF_ONE_BITS, first))
            keep_groups(s, tokens, bucket_of(p, first)->spoken, i, before);
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
