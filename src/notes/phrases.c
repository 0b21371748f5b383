// SPDX-License-Identifier: MIT
// Phrases are compared as sequences of word hashes, so that neither the rules' texts nor the note's are
// touched again. A hyphened token is as many words as it has parts; a hit ends only where a token ends.
#include "notes/phrases.h"

#include <stdlib.h>
#include <string.h>

#include "notes/cut.h"
#include "notes/near.h"
#include "text/index.h"

struct phrase {
    size_t first; // in `words`
    size_t count;
    size_t flaw; // number in the rule set
    bool unless;
};

// Phrases of two words and more by both of their first words, those of one by that one: a word like "no"
// begins hundreds.
struct bucket {
    uint64_t key;
    uint32_t from, to; // in `phrases`, longest first; `to` is 0 where it is free
};

enum { SIEVE_CELLS = 2048 }; // of 64 bits: small enough to stay near the processor

struct phrases {
    const struct ruleset *rules;
    uint64_t *words;
    size_t word_count, word_room;
    struct phrase *at;
    size_t count, room;
    struct bucket *buckets;
    size_t mask;
    uint64_t sieve[SIEVE_CELLS]; // a bit for the key of each bucket: most words begin nothing
    size_t longest;              // words of the longest phrase
    struct near *near;
    struct index *parts; // of the flaws' rules
};

// --- words of a text: its tokens' parts, without apostrophes and hyphens ---

struct word {
    uint64_t hash;
    size_t token;
    bool ends; // the last of its token
};

static bool is_hyphen(const struct token *token) {
    return token->kind == TOKEN_SIGN && token->fold[0] == '-' && !token->fold[1] && token->joined;
}

static uint64_t part_hash(const char *from, size_t size) {
    enum { PART_ROOM = 64 };
    char plain[PART_ROOM];
    size_t n = 0;
    for (size_t i = 0; i < size && n < PART_ROOM; i++)
        if (from[i] != '\'') plain[n++] = from[i];
    return token_hash(plain, n) | 1;
}

static size_t parts_of(const struct token *token) {
    size_t count = 1;
    for (const char *c = token->fold; *c && token->kind != TOKEN_SIGN; c++)
        count += *c == '-' && c > token->fold;
    return count;
}

// Words of all tokens; a hyphen that stands alone between two words is no word.
static struct word *words_of(struct arena *arena, const struct tokens *tokens, size_t *count) {
    size_t room = 1;
    for (size_t i = 0; i < tokens->count; i++) room += tokens->at[i].plain ? 1 : parts_of(&tokens->at[i]);
    struct word *words = arena_array(arena, room, sizeof *words);
    *count = 0;
    for (size_t i = 0; i < tokens->count; i++) {
        const char *fold = tokens->at[i].fold;
        if (tokens->at[i].plain) {
            words[(*count)++] = (struct word){tokens->at[i].hash | 1, i, true};
            continue;
        }
        if (is_hyphen(&tokens->at[i])) continue;
        for (bool sign = tokens->at[i].kind == TOKEN_SIGN;;) {
            size_t size = sign ? strlen(fold) : strcspn(fold + 1, "-") + 1;
            words[(*count)++] = (struct word){part_hash(fold, size), i, !fold[size]};
            if (!fold[size]) break;
            fold += size + 1;
            if (!*fold) {
                words[*count - 1].ends = true;
                break;
            }
        }
    }
    return words;
}

// --- building ---

static void add(struct arena *arena, struct phrases *p, const char *text, size_t flaw, bool unless) {
    struct tokens tokens = tokens_cut(arena, text, strlen(text));
    size_t count;
    const struct word *words = words_of(arena, &tokens, &count);
    if (!count) return;
    p->at = arena_grow(arena, p->at, p->count, &p->room, sizeof *p->at);
    p->at[p->count++] = (struct phrase){p->word_count, count, flaw, unless};
    for (size_t i = 0; i < count; i++) {
        p->words = arena_grow(arena, p->words, p->word_count, &p->word_room, sizeof *p->words);
        p->words[p->word_count++] = words[i].hash;
    }
}

static uint64_t key_of_two(uint64_t first, uint64_t second) {
    return (first * 0x9E3779B97F4A7C15u) ^ second;
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
    while (p->buckets[at].to && p->buckets[at].key != key) at = (at + 1) & p->mask;
    return &p->buckets[at];
}

static uint64_t *sieve_cell(struct phrases *p, uint64_t key) {
    return &p->sieve[(key >> 20) % SIEVE_CELLS];
}

static void index_buckets(struct arena *arena, struct phrases *p) {
    p->mask = 15;
    while (p->mask < p->count * 2) p->mask = p->mask * 2 + 1;
    p->buckets = arena_array(arena, p->mask + 1, sizeof *p->buckets);
    for (size_t from = 0, to; from < p->count; from = to) {
        uint64_t key = key_of(p, &p->at[from]);
        for (to = from; to < p->count && key_of(p, &p->at[to]) == key;) {
            if (p->at[to].count > p->longest) p->longest = p->at[to].count;
            to++;
        }
        *bucket_of(p, key) = (struct bucket){key, (uint32_t)from, (uint32_t)to};
        *sieve_cell(p, key) |= (uint64_t)1 << (key >> 8) % 64;
    }
}

// An empty one where no phrase has that key.
static struct bucket bucket_at(const struct phrases *p, uint64_t key) {
    if (!(p->sieve[(key >> 20) % SIEVE_CELLS] >> (key >> 8) % 64 & 1)) return (struct bucket){0, 0, 0};
    return *bucket_of(p, key);
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

const struct phrases *phrases_new(struct arena *arena, const struct ruleset *rules) {
    struct phrases *p = arena_alloc(arena, sizeof *p);
    p->rules = rules;
    p->near = near_new(arena, rules);
    gather_parts(arena, p);
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct finder *finder = &rules->flaws[i]->finder;
        for (size_t k = 0; k < finder->said.count; k++) add(arena, p, finder->said.at[k], i, false);
        for (size_t k = 0; k < finder->unless.count; k++) add(arena, p, finder->unless.at[k], i, true);
    }
    sort(arena, p);
    index_buckets(arena, p);
    return p;
}

// --- finding ---

struct barred {
    const struct flaw *flaw;
    size_t from, to; // tokens
};

struct search {
    struct arena *arena;
    const struct phrases *phrases;
    const struct word *words;
    size_t count;
    size_t *covered;       // one a flaw: a word of it that ends up to here is inside another hit
    size_t *barred;        // one a flaw: a word of it that begins before here is inside an `unless`
    struct barred *unless; // where `unless` phrases stand
    size_t unless_count, unless_room;
    struct phrase_hits hits;
    size_t room, barred_room;
};

static bool stands(const struct search *s, const struct phrase *phrase, size_t i) {
    if (phrase->count > s->count - i || !s->words[i + phrase->count - 1].ends) return false;
    for (size_t k = 1; k < phrase->count; k++)
        if (s->words[i + k].hash != s->phrases->words[phrase->first + k]) return false;
    return true;
}

static void tell_barred(struct search *s, const struct phrase *phrase, size_t i) {
    const struct flaw *flaw = s->phrases->rules->flaws[phrase->flaw];
    size_t from = s->words[i].token, to = s->words[i + phrase->count - 1].token + 1;
    for (size_t k = s->unless_count; k-- > 0;) {
        const struct barred *b = &s->unless[k];
        if (b->flaw != flaw || b->from > from || b->to <= from) continue;
        s->hits.barred = arena_grow(s->arena, s->hits.barred, s->hits.barred_count, &s->barred_room,
                                    sizeof *s->hits.barred);
        s->hits.barred[s->hits.barred_count++] = (struct phrase_barred){flaw, from, to, b->from, b->to};
        return;
    }
}

static void keep(struct search *s, const struct phrase *phrase, size_t i) {
    size_t end = i + phrase->count;
    if (end <= s->covered[phrase->flaw]) return;
    if (i < s->barred[phrase->flaw]) {
        tell_barred(s, phrase, i);
        return;
    }
    s->covered[phrase->flaw] = end;
    s->hits.at = arena_grow(s->arena, s->hits.at, s->hits.count, &s->room, sizeof *s->hits.at);
    s->hits.at[s->hits.count++] = (struct phrase_hit){.flaw = s->phrases->rules->flaws[phrase->flaw],
                                                      .from = s->words[i].token,
                                                      .to = s->words[end - 1].token + 1};
}

static void bar_in(struct search *s, const struct bucket *bucket, size_t i) {
    for (size_t k = bucket->from; k < bucket->to; k++) {
        const struct phrase *phrase = &s->phrases->at[k];
        if (!phrase->unless || !stands(s, phrase, i)) continue;
        if (s->barred[phrase->flaw] < i + phrase->count) s->barred[phrase->flaw] = i + phrase->count;
        s->unless = arena_grow(s->arena, s->unless, s->unless_count, &s->unless_room, sizeof *s->unless);
        s->unless[s->unless_count++] =
            (struct barred){s->phrases->rules->flaws[phrase->flaw], s->words[i].token,
                            s->words[i + phrase->count - 1].token + 1};
    }
}

static void keep_in(struct search *s, const struct bucket *bucket, size_t i) {
    for (size_t k = bucket->from; k < bucket->to; k++)
        if (!s->phrases->at[k].unless && stands(s, &s->phrases->at[k], i)) keep(s, &s->phrases->at[k], i);
}

// All that bars before all that is kept, and longer phrases before shorter ones.
static void search_at(struct search *s, size_t i) {
    uint64_t first = s->words[i].hash;
    struct bucket one = bucket_at(s->phrases, first), more = {0, 0, 0};
    if (i + 1 < s->count) more = bucket_at(s->phrases, key_of_two(first, s->words[i + 1].hash));
    bar_in(s, &more, i);
    bar_in(s, &one, i);
    keep_in(s, &more, i);
    keep_in(s, &one, i);
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
    for (; from < sorted && s->hits.at[from].from < hit->to; from++)
        if (overlaps(&s->hits.at[from], hit)) return true;
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

// One of its words inside an `unless` of the flaw: "never held it up to the light".
static bool is_barred(const struct search *s, const struct near_hit *hit) {
    for (size_t i = 0; i < s->unless_count; i++) {
        const struct barred *b = &s->unless[i];
        bool first = b->from <= hit->from && hit->from < b->to,
             second = b->from < hit->to && hit->to <= b->to;
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

// Pairs of words where no phrase of the same flaw stands already.
static void search_near(struct search *s, const struct tokens *tokens) {
    struct near_search near = near_start(s->arena, s->phrases->near, tokens);
    size_t before = s->hits.count, found = 0;
    struct near_hit hit;
    while (found < NEAR_MOST && near_next(&near, &hit)) {
        found++;
        if (is_told(s, before, &hit) || is_barred(s, &hit)) continue;
        s->hits.at = arena_grow(s->arena, s->hits.at, s->hits.count, &s->room, sizeof *s->hits.at);
        s->hits.at[s->hits.count++] = (struct phrase_hit){.flaw = hit.flaw,
                                                          .from = hit.listed ? hit.to - 1 : hit.from,
                                                          .to = hit.to,
                                                          .near = !hit.listed,
                                                          .denied = hit.listed,
                                                          .gated = hit.gated};
    }
    if (s->hits.count > before) qsort(s->hits.at, s->hits.count, sizeof *s->hits.at, hit_order);
}

struct phrase_hits phrases_find(struct arena *arena, const struct phrases *phrases,
                                const struct tokens *tokens) {
    struct search search = {.arena = arena, .phrases = phrases};
    search.words = words_of(arena, tokens, &search.count);
    search.covered = arena_array(arena, phrases->rules->flaw_count + 1, sizeof *search.covered);
    search.barred = arena_array(arena, phrases->rules->flaw_count + 1, sizeof *search.barred);
    for (size_t i = 0; i < search.count; i++)
        if (!i || search.words[i - 1].ends) search_at(&search, i);
    search_near(&search, tokens);
    return search.hits;
}
