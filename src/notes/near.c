// SPDX-License-Identifier: MIT
// A hash table leads from a word to the groups that hold it. From each such word the few that follow are
// looked at for the other group of the same pair.
#include "notes/near.h"

#include <stdlib.h>
#include <string.h>

#include "notes/cut.h"
#include "text/order.h"

enum { REACH = 6 }; // tokens of weight from the first word to the second, at most

// The entries of one word stand side by side, in the order of the pairs: a walk over them touches few lines
// of memory.
struct near_word {
    uint32_t pair;              // dense number of the pair
    bool second, gated, listed; // listed: a comma may part the two, as in a list under one "no"
    bool ordered;               // the first group stands before the second
    bool last;                  // of the word
};

struct near_slot {
    uint32_t head, tag; // index + 1 of a word's first entry, 0 where it is free; a part of the hash
};

// While the rules are read.
struct near_read {
    uint64_t hash;
    struct near_word word;
};

struct near {
    struct arena *arena;
    struct near_read *read;
    struct near_word *members;
    uint64_t *hashes;          // of the members
    const struct flaw **flaws; // of the pairs
    size_t count, room;
    struct near_slot *slots;
    size_t slot_count;
};

enum { WORD_ROOM = 64 };

static uint64_t hash_of(const char *word, size_t size) {
    char plain[WORD_ROOM];
    size_t n = 0;
    for (size_t i = 0; i < size && n < WORD_ROOM; i++)
        if (word[i] != '\'' && word[i] != '-') plain[n++] = word[i];
    return token_hash(plain, n);
}

// "{then}" keeps the order of the groups. "{on}" in a group gates the pair: it counts only for a thing that
// the kind occurs on. "{no}" in a group stands for these: a word that is a fault's only where it is denied
// or not looked for ("no worm", "not checked for worm").
static const char denials[] =
    "no not without any never isn't aren't hasn't haven't don't doesn't didn't wasn't weren't ain't "
    "nothing nor neither nobody nobody's isnt doesnt aint zero free unsure sure whether if for check checked";

struct group {
    size_t pair;
    bool second, gated, listed, ordered;
};

static void add_words(struct near *n, const struct group *group, const char *words, size_t size) {
    for (size_t at = 0; at < size;) {
        size_t length = 0;
        while (at + length < size && words[at + length] != ' ') length++;
        if (length == 4 && !memcmp(words + at, "{no}", length)) {
            add_words(n, group, denials, sizeof denials - 1);
        } else if (length && words[at] != '{') {
            n->read = arena_grow(n->arena, n->read, n->count, &n->room, sizeof *n->read);
            n->read[n->count++] = (struct near_read){hash_of(words + at, length),
                                                     {.pair = (uint32_t)group->pair,
                                                      .second = group->second,
                                                      .gated = group->gated,
                                                      .listed = group->listed,
                                                      .ordered = group->ordered}};
        }
        at += length + 1;
    }
}

static uint32_t tag_of(uint64_t hash) {
    return (uint32_t)(hash >> 32);
}

static size_t slot_of(const struct near *n, uint64_t hash) {
    size_t at = (size_t)(hash ^ (hash >> 31)) & (n->slot_count - 1);
    while (n->slots[at].head &&
           (n->slots[at].tag != tag_of(hash) || n->hashes[n->slots[at].head - 1] != hash))
        at = (at + 1) & (n->slot_count - 1);
    return at;
}

static int read_order(const void *a, const void *b) {
    const struct near_read *x = a, *y = b;
    if (x->hash != y->hash) return x->hash < y->hash ? -1 : 1;
    if (x->word.pair != y->word.pair) return x->word.pair < y->word.pair ? -1 : 1;
    return x->word.second - y->word.second;
}

// Words by words, those of each in the order of the rules.
static void lay_out(struct near *n) {
    if (n->count) qsort(n->read, n->count, sizeof *n->read, read_order);
    n->members = arena_array(n->arena, n->count + 1, sizeof *n->members);
    n->hashes = arena_array(n->arena, n->count + 1, sizeof *n->hashes);
    n->slot_count = 16;
    while (n->slot_count < 2 * n->count) n->slot_count *= 2;
    n->slots = arena_array(n->arena, n->slot_count, sizeof *n->slots);
    for (size_t i = 0; i < n->count; i++) {
        n->members[i] = n->read[i].word;
        n->hashes[i] = n->read[i].hash;
        n->members[i].last = i + 1 == n->count || n->read[i + 1].hash != n->read[i].hash;
        if (!i || n->read[i - 1].hash != n->read[i].hash)
            n->slots[slot_of(n, n->hashes[i])] = (struct near_slot){(uint32_t)i + 1, tag_of(n->hashes[i])};
    }
    n->read = NULL;
}

// The entry behind `m`, both as index + 1; 0 at the end.
static size_t next_of(const struct near *n, size_t m) {
    return n->members[m - 1].last ? 0 : m + 1;
}

static size_t pairs_of(const struct ruleset *rules, bool sound) {
    size_t count = 0;
    for (size_t i = 0; i < rules->flaw_count; i++)
        count += sound ? rules->flaws[i]->sound.count : rules->flaws[i]->near.count;
    return count;
}

struct near *near_new(struct arena *arena, const struct ruleset *rules, bool sound) {
    struct near *n = arena_alloc(arena, sizeof *n);
    n->arena = arena;
    n->flaws = arena_array(arena, pairs_of(rules, sound) + 1, sizeof *n->flaws);
    size_t pairs = 0;
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct texts *near = sound ? &rules->flaws[i]->sound : &rules->flaws[i]->near;
        for (size_t k = 0; k < near->count; k++, pairs++) {
            const char *bar = strstr(near->at[k], NEAR_BAR);
            n->flaws[pairs] = rules->flaws[i];
            if (!bar) continue;
            bool gated = sound ? !strstr(near->at[k], NEAR_ANY) : strstr(near->at[k], "{on}") != NULL,
                 listed = strstr(near->at[k], "{no}") != NULL;
            bool ordered = listed || sound || strstr(near->at[k], "{then}") != NULL; // the "no" comes first
            add_words(n, &(struct group){pairs, false, gated, listed, ordered}, near->at[k],
                      (size_t)(bar - near->at[k]));
            bar += sizeof NEAR_BAR - 1;
            add_words(n, &(struct group){pairs, true, gated, listed, ordered}, bar, strlen(bar));
        }
    }
    lay_out(n);
    return n;
}

static uint32_t head_of(const struct near *n, const struct token *token) {
    if (token->kind == TOKEN_SIGN) return 0;
    if (token->plain) return n->slots[slot_of(n, token->hash)].head;
    size_t size = strlen(token->fold);
    if (size > 2 && text_same(token->fold + size - 2, "'s")) size -= 2; // "paint's gone"
    return n->slots[slot_of(n, hash_of(token->fold, size))].head;
}

struct near_search near_start(struct arena *arena, const struct near *n, const struct tokens *tokens) {
    struct near_search s = {.near = n, .tokens = tokens};
    s.heads = arena_array(arena, tokens->count + 1, sizeof *s.heads);
    for (size_t i = 0; i < tokens->count && n->count; i++) {
        bool inches = i && tokens->at[i - 1].kind == TOKEN_FIGURE && token_is(tokens, i, "in");
        if (!inches) s.heads[i] = head_of(n, &tokens->at[i]);
    }
    return s;
}

// Between the two words a size, what stands in brackets and the words that lead to a place weigh nothing:
// "jacket has a 1/2 in (1.3 cm) tear", "veneer on the side of the case is split".
static bool is_weightless(const struct tokens *tokens, size_t i, bool *bracket) {
    static const char *const words[] = {"of", "the", "on", "in",  "at",   "a",   "an",
                                        "is", "are", "to", "has", "have", "its", "about"};
    if (token_is(tokens, i, "(")) *bracket = true;
    bool inside = *bracket;
    if (token_is(tokens, i, ")")) *bracket = false;
    return inside || tokens->at[i].kind == TOKEN_FIGURE ||
           token_among(tokens, i, words, sizeof words / sizeof *words);
}

// "Bracket clock, stopped": of a short name that opens a sentence the comma behind it parts nothing.
static bool names_before_comma(const struct tokens *tokens, size_t i) {
    enum { WORDS_MOST = 4 };
    if (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_COMMA) return false;
    size_t from = i;
    while (from > 0 && tokens->at[from - 1].stop == STOP_NONE && i - from < WORDS_MOST) from--;
    return from == 0 || tokens->at[from - 1].stop >= STOP_SENTENCE;
}

static bool tells_state(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"dead",    "worn",   "torn",  "bent",   "split",  "gone",  "stuck",
                                        "loose",   "broken", "shot",  "rusty",  "stiff",  "blown", "missing",
                                        "silent",  "blunt",  "lost",  "thin",   "rotten", "frail", "weak",
                                        "brittle", "mold",   "mould", "fungus", "haze",   "rust",  "worm",
                                        "moth",    "hazy",   "foggy"};
    static const char *const others[] = {"wired", "painted", "framed", "boxed", "signed", "dated", "lined"};
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD) return false;
    size_t n = strlen(tokens->at[i].fold);
    bool done = n > 4 && text_same(tokens->at[i].fold + n - 2, "ed");
    return (done && !token_among(tokens, i, others, sizeof others / sizeof *others)) ||
           token_among(tokens, i, words, sizeof words / sizeof *words);
}

// "The lid shuts and there's a stain", "a wine glass and it's rough": a clause of its own.
static bool opens_clause(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"there",   "there's",   "theres",   "it's",
                                        "they",    "they're",   "that's",   "i",
                                        "someone", "someone's", "somebody", "somebody's"};
    static const char *const articles[] = {"the", "its", "one", "a",
                                           "an"}; // "moth at one corner and the greens gone"
    bool and = token_is(tokens, i, "and");
    if (token_is(tokens, i, "as") && token_is(tokens, i + 1, "the"))
        return true; // "as the rim's been knocked"
    return ((and || token_is(tokens, i, "so")) &&
            token_among(tokens, i + 1, words, sizeof words / sizeof *words)) ||
           ((and || (token_is(tokens, i, "so") && i > 0 && tells_state(tokens, i - 1))) &&
            token_among(tokens, i + 1, articles, sizeof articles / sizeof *articles));
}

// "It doesn't slip when you turn it": what is done then is not what is denied.
static bool opens_condition(const struct tokens *tokens, size_t first, size_t i) {
    static const char *const whens[] = {"when", "whenever", "if", "once"};
    static const char *const nots[] = {"doesn't", "doesnt", "don't", "dont",     "won't", "wont",
                                       "never",   "didn't", "didnt", "wouldn't", "does"};
    return i > first + 1 && token_among(tokens, i, whens, sizeof whens / sizeof *whens) &&
           token_among(tokens, first, nots, sizeof nots / sizeof *nots);
}

// The tokens behind the first word, in its clause, that are words of any pair: mostly none, and then no pair
// of the first word is looked at.
static void look_behind(struct near_search *s) {
    const struct tokens *tokens = s->tokens;
    bool bracket = false, comma = false;
    size_t weight = 0;
    static const char *const ends[] = {"but", "unless", "because", "until"}; // "all but gone" is none
    s->other_count = s->unlisted_count = 0;
    size_t open = names_before_comma(tokens, s->i) && tells_state(tokens, s->i + 2) ? s->i + 1 : s->i;
    for (size_t at = s->i + 1; at < tokens->count && at <= s->i + NEAR_MOST_TOKENS; at++) {
        if (tokens->at[at].stop >= STOP_CLAUSE ||
            (token_among(tokens, at, ends, sizeof ends / sizeof *ends) && !token_is(tokens, at - 1, "all")) ||
            opens_clause(tokens, at) || opens_condition(tokens, s->i, at))
            return;
        comma |= tokens->at[at].stop >= STOP_COMMA && at != open;
        if (open > s->i && at > open + 1) comma = true; // only what follows at once
        weight += !is_weightless(tokens, at, &bracket);
        if (weight > REACH) return;
        if (!s->heads[at]) continue;
        s->rest[s->other_count] = s->heads[at];
        s->others[s->other_count++] = at;
        if (!comma) s->unlisted_count = s->other_count;
    }
}

// Chains are in the order of the pairs.
static bool answers(const struct near *n, size_t head, const struct near_word *first) {
    for (size_t m = head; m && n->members[m - 1].pair <= first->pair; m = next_of(n, m))
        if (n->members[m - 1].pair == first->pair && n->members[m - 1].second != first->second) return true;
    return false;
}

// "The coating is scratched and flaking in the middle": both words, so that the place is of both.
static size_t last_of_list(const struct near_search *s, size_t at, const struct near_word *first) {
    const struct tokens *tokens = s->tokens;
    while (at + 2 < tokens->count && (token_is(tokens, at + 1, "and") || token_is(tokens, at + 1, "or")) &&
           answers(s->near, s->heads[at + 2], first))
        at += 2;
    return at;
}

// The same for first words of rising pairs, as chains have them: what is behind was looked at.
static bool answers_next(const struct near *n, size_t *head, const struct near_word *first) {
    while (*head && n->members[*head - 1].pair < first->pair) *head = next_of(n, *head);
    return *head && n->members[*head - 1].pair == first->pair && answers(n, *head, first);
}

// The token of the other group behind the first word; 0 if none.
static size_t other_behind(struct near_search *s, const struct near_word *first) {
    size_t count = first->listed ? s->other_count : s->unlisted_count;
    for (size_t k = 0; k < count; k++)
        if (answers_next(s->near, &s->rest[k], first)) return last_of_list(s, s->others[k], first);
    return 0;
}

// "Worm: none", "any moth? Not that I found", "moth none, stains none": the denial stands behind the word.
static bool is_answered(const struct tokens *tokens, size_t i) {
    static const char *const nones[] = {"none", "nope", "nil", "no", "zero"};
    static const char *const seens[] = {"not that", "none that", "none",   "no",
                                        "nope",     "not a bit", "didn't", "not"};
    if (++i >= tokens->count) return false;
    if (tokens->at[i].stop == STOP_SENTENCE)
        return token_is(tokens, i, "?") &&
               token_longest(tokens, i + 1, seens, sizeof seens / sizeof *seens) > 0;
    i += tokens->at[i].stop == STOP_CLAUSE || tokens->at[i].stop == STOP_COMMA || token_is(tokens, i, "-");
    return token_among(tokens, i, nones, sizeof nones / sizeof *nones) &&
           (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE ||
            token_phrase(tokens, i + 1, "that i"));
}

bool near_next(struct near_search *s, struct near_hit *hit) {
    const struct near *n = s->near;
    for (; s->i < s->tokens->count; ++s->i, s->entry = 0) {
        size_t m = s->entry ? next_of(n, s->entry) : s->heads[s->i];
        if (m && !s->entry) look_behind(s);
        bool answered = m && is_answered(s->tokens, s->i);
        for (; m && (s->other_count || answered); m = next_of(n, m)) {
            const struct near_word *word = &n->members[m - 1];
            if (answered && word->listed && word->second) {
                *hit = (struct near_hit){true, word->gated, n->flaws[word->pair], s->i, s->i + 1};
                s->entry = m;
                return true;
            }
            size_t other = word->ordered && word->second ? 0 : other_behind(s, word);
            if (!other) continue;
            *hit = (struct near_hit){word->listed, word->gated, n->flaws[word->pair], s->i, other + 1};
            s->entry = m;
            return true;
        }
    }
    return false;
}
