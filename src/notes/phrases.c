// SPDX-License-Identifier: MIT
// Phrases are compared as sequences of word hashes, so that neither the rules' texts nor the note's are
// touched again. A hyphened token is as many words as it has parts; a hit ends only where a token ends.
#include "notes/phrases.h"

#include <stdlib.h>
#include <string.h>

#include "notes/bare.h"
#include "notes/near.h"
#include "notes/phrase_words.h"
#include "notes/spoken.h"
#include "text/index.h"

struct phrase {
    uint64_t last;         // word
    uint32_t first, count; // in `words`
    uint32_t flaw;         // number in the rule set
    bool unless;
    bool gated; // of `sound`, without "{any}"
    bool alone;
};

// Phrases of two words and more by both of their first words, those of one by that one: a word like "no"
// begins hundreds.
struct bucket {
    uint64_t key;
    uint32_t from, said, to; // in `phrases`, those of `unless` and then the others, each longest first
    uint32_t spoken;         // the first of its patterns in `links`, + 1
    uint64_t third;          // a bit for each word that may be the third of one of them
};

struct link {
    uint32_t opening, next; // of a pattern; index + 1, 0 at the end
};

// Of 64 bits: small enough to stay near the processor.
enum { SIEVE_CELLS = 16384, SIEVE_OF_ONE_CELLS = 1024 };

struct phrases {
    const struct ruleset *rules;
    uint64_t *words;
    size_t word_count, word_room;
    struct phrase *at;
    size_t count, room;
    struct bucket *buckets; // free where the key is 0
    size_t mask;
    struct link *links;
    size_t link_count;
    uint64_t sieve[SIEVE_CELLS],
        sieve_of_one[SIEVE_OF_ONE_CELLS]; // a bit for the key of each bucket, of two
                                          // words and of one, and for what begins a pattern: most
                                          // words begin nothing
    size_t longest;                       // words of the longest phrase
    struct near *near;
    struct index *parts;    // of the flaws' rules
    struct phrases *sounds; // of the rules' `sound`, NULL in themselves
    struct phrases *groups; // what patterns with groups are looked for by; they are rarer than all others
    struct spoken *spoken;
    const struct spoken_gate *gates; // its own
    struct slip_words *slips;
};

// --- building ---

static struct phrase *add(struct arena *arena, struct phrases *p, const char *text, size_t flaw,
                          bool unless) {
    struct tokens tokens = tokens_cut(arena, text, strlen(text));
    struct phrase_words words = phrase_words_of_tokens(arena, &tokens);
    if (!words.count) return NULL;
    p->at = arena_grow(arena, p->at, p->count, &p->room, sizeof *p->at);
    p->at[p->count++] = (struct phrase){words.at[words.count - 1].hash,
                                        (uint32_t)p->word_count,
                                        (uint32_t)words.count,
                                        (uint32_t)flaw,
                                        unless,
                                        false,
                                        false};
    for (size_t i = 0; i < words.count; i++) {
        p->words = arena_grow(arena, p->words, p->word_count, &p->word_room, sizeof *p->words);
        p->words[p->word_count++] = words.at[i].hash;
    }
    return &p->at[p->count - 1];
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
        one ? &p->sieve_of_one[(key >> 20) % SIEVE_OF_ONE_CELLS] : &p->sieve[(key >> 20) % SIEVE_CELLS];
    *cell |= (uint64_t)1 << (key >> 8) % 64;
}

static void index_buckets(struct arena *arena, struct phrases *p) {
    p->mask = 15;
    // Phrases and openings share keys, so a quarter more than all of them is twice what there are.
    while (p->mask < (p->count + p->link_count) * 5 / 4) p->mask = p->mask * 2 + 1;
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

static const struct bucket no_bucket;

// Most keys have none, as one look at a sieve tells.
static inline bool passes(const uint64_t *sieve, size_t cells, uint64_t key) {
    return sieve[(key >> 20) % cells] >> (key >> 8) % 64 & 1;
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

static void count_link(void *context, uint64_t first, uint64_t second, size_t opening) {
    struct phrases *p = context;
    (void)first, (void)second, (void)opening;
    p->link_count++;
}

static void add_link(void *context, uint64_t first, uint64_t second, size_t opening) {
    struct phrases *p = context;
    uint64_t key = second ? key_of_two(first, second) : first;
    struct bucket *bucket = bucket_of(p, key);
    if (bucket->spoken && p->links[bucket->spoken - 1].opening == opening) return;
    p->links[p->link_count++] = (struct link){(uint32_t)opening, bucket->spoken};
    bucket->key = key;
    bucket->third = UINT64_MAX;
    bucket->spoken = (uint32_t)p->link_count;
    sieve_add(p, key, !second);
}

// The patterns' openings among the phrases.
static void link_openings(struct arena *arena, struct phrases *p, bool grouped) {
    spoken_tell_openings(p->spoken, grouped, count_link, p);
    phrases_index(arena, p);
    p->links = arena_array(arena, p->link_count + 1, sizeof *p->links);
    p->link_count = 0;
    spoken_tell_openings(p->spoken, grouped, add_link, p);
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
        const struct finder *finder = &rules->flaws[i]->finder;
        for (size_t k = 0; k < finder->said.count; k++) add(arena, p, finder->said.at[k], i, false);
        for (size_t k = 0; k < finder->unless.count; k++) add(arena, p, finder->unless.at[k], i, true);
        const struct texts *alone = &rules->flaws[i]->alone;
        for (size_t k = 0; k < alone->count; k++) {
            struct phrase *added = add(arena, p, alone->at[k], i, false);
            if (added) added->gated = added->alone = true;
        }
    }
    link_openings(arena, p, false);
    link_openings(arena, groups, true);
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

// Of a phrase in the bucket of `words`, of which `left` are left: the first two, or the only one, are known
// to be its own, and the last tells most apart.
static bool stands(const struct phrases *p, const struct phrase *phrase, const struct phrase_word *words,
                   size_t left) {
    size_t count = phrase->count;
    if (count > left || words[count - 1].hash != phrase->last || !words[count - 1].ends) return false;
    const uint64_t *hashes = p->words + phrase->first;
    for (size_t k = 2; k + 1 < count; k++)
        if (words[k].hash != hashes[k]) return false;
    return true;
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

static struct phrase_hit *keep_hit(struct search *s, size_t flaw, size_t i, size_t end, bool gated) {
    if (s->hits.count == s->room)
        s->hits.at = arena_grow(s->arena, s->hits.at, s->hits.count, &s->room, sizeof *s->hits.at);
    s->hits.at[s->hits.count++] = (struct phrase_hit){.flaw = s->phrases->rules->flaws[flaw],
                                                      .from = s->words[i].from,
                                                      .to = s->words[end - 1].to,
                                                      .gated = gated};
    return &s->hits.at[s->hits.count - 1];
}

static void keep(struct search *s, const struct phrase *phrase, size_t i) {
    size_t end = i + phrase->count;
    if (end <= s->covered[phrase->flaw]) return;
    if (i < s->barred[phrase->flaw]) {
        tell_barred(s, phrase, i);
        return;
    }
    if (!phrase->alone) s->covered[phrase->flaw] = (uint32_t)end;
    keep_hit(s, phrase->flaw, i, end, phrase->gated)->alone = phrase->alone;
}

static bool may_stand(const struct search *s, const struct spoken_gate *gate, uint64_t third, size_t i) {
    if (!(gate->third & third)) return false;
    const struct phrase_word *words = s->words + i;
    bool behind = !gate->behind_reach, before = !gate->before_reach;
    for (size_t k = 1; k <= gate->behind_reach && !behind; k++)
        behind = spoken_may_be(&gate->behind, words[k].hash);
    for (size_t k = 1; behind && k <= gate->before_reach && k <= i && !before; k++)
        before = spoken_may_be(&gate->before, s->words[i - k].hash);
    return behind && before;
}

static bool link_stands(struct search *s, const struct phrases *p, const struct link *link, size_t i,
                        uint64_t third, struct spoken_hit *hit) {
    return may_stand(s, &p->gates[link->opening], third, i) &&
           spoken_stands(p->spoken, link->opening, s->words, s->count, i, &s->found, hit);
}

// Of two chains of patterns. One that counts for some things only covers no phrase that counts for all.
static void keep_spoken(struct search *s, const uint32_t links[2], size_t i, uint64_t third) {
    const struct phrases *p = s->phrases;
    for (size_t chain = 0; chain < 2; chain++)
        for (uint32_t link = links[chain]; link; link = p->links[link - 1].next) {
            struct spoken_hit hit;
            if (!link_stands(s, p, &p->links[link - 1], i, third, &hit)) continue;
            size_t end = i + hit.count;
            if (end <= s->covered[hit.flaw] || i < s->barred[hit.flaw]) continue;
            if (!hit.gated) s->covered[hit.flaw] = (uint32_t)end;
            keep_hit(s, hit.flaw, i, end, hit.gated);
        }
}

static void bar_in(struct search *s, const struct bucket *bucket, size_t i) {
    const struct phrase *phrase = s->phrases->at + bucket->from, *end = s->phrases->at + bucket->said;
    const struct phrase_word *words = s->words + i;
    for (size_t left = s->count - i; phrase < end; phrase++) {
        if (!stands(s->phrases, phrase, words, left)) continue;
        if (s->barred[phrase->flaw] < i + phrase->count)
            s->barred[phrase->flaw] = (uint32_t)(i + phrase->count);
        if (s->unless_count == s->unless_room)
            s->unless = arena_grow(s->arena, s->unless, s->unless_count, &s->unless_room, sizeof *s->unless);
        s->unless[s->unless_count++] = (struct barred){s->phrases->rules->flaws[phrase->flaw],
                                                       s->words[i].from, s->words[i + phrase->count - 1].to};
    }
}

static void keep_in(struct search *s, const struct bucket *bucket, size_t i) {
    const struct phrase *phrase = s->phrases->at + bucket->said, *end = s->phrases->at + bucket->to;
    const struct phrase_word *words = s->words + i;
    for (size_t left = s->count - i; phrase < end; phrase++)
        if (stands(s->phrases, phrase, words, left)) keep(s, phrase, i);
}

// All that bars before all that is kept, and longer phrases before shorter ones.
static void search_at(struct search *s, const struct bucket *longer, const struct bucket *single, size_t i) {
    uint64_t third = spoken_bit(s->words[i + 2].hash);
    if (!(longer->third & third)) longer = &no_bucket;
    if (longer->from < longer->said) bar_in(s, longer, i);
    if (single->from < single->said) bar_in(s, single, i);
    if (longer->spoken | single->spoken)
        keep_spoken(s, (const uint32_t[]){longer->spoken, single->spoken}, i, third);
    if (longer->said < longer->to) keep_in(s, longer, i);
    if (single->said < single->to) keep_in(s, single, i);
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

static struct search search_words(struct arena *arena, const struct phrases *phrases,
                                  const struct phrase_words *words) {
    struct search search = {.arena = arena, .phrases = phrases, .words = words->at, .count = words->count};
    size_t flaws = phrases->rules->flaw_count;
    search.covered = arena_array(arena, 2 * flaws + 1, sizeof *search.covered);
    search.barred = search.covered + flaws;
    search.hits.at = arena_room(arena, ROOM_AT_FIRST * sizeof *search.hits.at);
    search.unless = arena_room(arena, ROOM_AT_FIRST * sizeof *search.unless);
    search.room = search.unless_room = ROOM_AT_FIRST;
    const struct phrase_word *word = words->at, *end = word + words->count;
    const uint64_t *sieve = phrases->sieve, *sieve_of_one = phrases->sieve_of_one;
    for (; word < end; word++) {
        uint64_t first = word->hash, two = key_of_two(first, word[1].hash);
        bool more = passes(sieve, SIEVE_CELLS, two), one = passes(sieve_of_one, SIEVE_OF_ONE_CELLS, first);
        if (!(more | one) || !word->starts) continue;
        search_at(&search, more ? bucket_of(phrases, two) : &no_bucket,
                  one ? bucket_of(phrases, first) : &no_bucket, (size_t)(word - words->at));
    }
    return search;
}

size_t phrases_scan(struct arena *arena, const struct phrases *phrases, const char *text, size_t size) {
    struct phrase_words words = phrase_words_of_text(arena, text, size);
    return words.at ? search_words(arena, phrases, &words).hits.count : SIZE_MAX;
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

// Patterns with groups, where no phrase of the same flaw stands already.
static void search_groups(struct search *s, const struct tokens *tokens) {
    const struct phrases *p = s->phrases->groups;
    size_t before = s->hits.count;
    for (size_t i = 0; p && i < s->count; i++) {
        uint64_t first = s->words[i].hash, two = key_of_two(first, s->words[i + 1].hash);
        uint32_t links[2] = {0, 0};
        if (passes(p->sieve, SIEVE_CELLS, two)) links[0] = bucket_of(p, two)->spoken;
        if (passes(p->sieve_of_one, SIEVE_OF_ONE_CELLS, first)) links[1] = bucket_of(p, first)->spoken;
        for (size_t chain = 0; chain < 2; chain++)
            for (uint32_t link = links[chain]; link; link = p->links[link - 1].next) {
                struct spoken_hit hit;
                if (!link_stands(s, p, &p->links[link - 1], i, UINT64_MAX, &hit)) continue;
                struct near_hit found = {.gated = hit.gated, .flaw = p->rules->flaws[hit.flaw]};
                found.from = s->words[i].from;
                found.to = s->words[i + hit.count - 1].to;
                to_tokens(tokens, &found.from, &found.to);
                if (!is_barred(s, &found, false)) keep_apart(s, before, &found, false);
            }
    }
    if (s->hits.count > before) qsort(s->hits.at, s->hits.count, sizeof *s->hits.at, hit_order);
}

struct phrase_hits phrases_find(struct arena *arena, const struct phrases *phrases,
                                const struct tokens *tokens) {
    struct phrase_words words = {NULL, 0};
    if (!tokens->altered) words = phrase_words_of_text(arena, tokens->text, tokens->size);
    if (!words.at) words = phrase_words_of_tokens(arena, tokens);
    struct search search = search_words(arena, phrases, &words);
    all_to_tokens(&search, tokens);
    search_groups(&search, tokens);
    search_near(&search, tokens);
    return search.hits;
}

struct phrase_hits phrases_find_sound(struct arena *arena, const struct phrases *phrases,
                                      const struct tokens *tokens) {
    return phrases->sounds ? phrases_find(arena, phrases->sounds, tokens) : (struct phrase_hits){0};
}
