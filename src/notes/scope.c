// SPDX-License-Identifier: MIT
// What the files of the phenomena share: cues, clauses, marks. Order matters in one place only: what is
// excepted and what is withdrawn is read after what is denied.
#include "notes/scope.h"
#include "text/order.h"

#include <stdlib.h>
#include <string.h>

// Order of the table: by bytes, where a space comes before every letter, so that all cues of one first word
// stand together.
static int first_order(const char *word, const char *phrase) {
    while (*word && *word == *phrase) word++, phrase++;
    int behind = *phrase == ' ' ? 0 : (unsigned char)*phrase;
    return (unsigned char)*word - behind;
}

static size_t search_first(const char *word, const struct cue *cues, size_t count) {
    size_t from = 0;
    for (size_t to = count; from < to;) {
        size_t middle = from + (to - from) / 2;
        if (first_order(word, cues[middle].phrase) > 0)
            from = middle + 1;
        else
            to = middle;
    }
    return from;
}

// Where the cues begin that begin with the word, found once for each.
static size_t first_cue(const struct tokens *tokens, size_t i, const struct cue *cues, size_t count) {
    const struct token *token = &tokens->at[i];
    if (!token->vain) return search_first(token->fold, cues, count);
    struct asked_place *place = asked_place_of(tokens->asked, cues, token->vain);
    if (place->list != cues || place->word != token->vain)
        *place = (struct asked_place){cues, token->vain, search_first(token->fold, cues, count)};
    return place->from;
}

const struct cue *cue_search(const struct scope *scope, const struct cue *cues, size_t count, size_t i,
                             size_t *taken) {
    const struct tokens *tokens = &scope->note->tokens;
    const char *word = tokens->at[i].fold;
    size_t from = first_cue(tokens, i, cues, count);
    const struct cue *best = NULL;
    for (size_t size = strlen(word); from < count && !first_order(word, cues[from].phrase); from++) {
        const char *rest = cues[from].phrase + size;
        if (*rest == ' ' && !token_may_begin(tokens, i + 1, rest[1])) continue;
        size_t n = token_phrase(tokens, i, cues[from].phrase);
        if (n > *taken) {
            *taken = n;
            best = &cues[from];
        }
    }
    return best;
}

void scope_mark(struct scope *scope, size_t from, size_t to, enum stance stance, size_t cue) {
    for (size_t i = from; i < to && i < scope->note->tokens.count; i++) {
        scope->stance[i] |= (uint16_t)stance;
        scope->cue[i] = cue;
    }
}

static bool ends_sentence(const struct token *token) {
    return token->stop >= STOP_SENTENCE;
}

static bool is_contrast(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"but",    "however", "although", "though",
                                        "except", "yet",     "whereas",  "while"};
    return token_among(tokens, i, words, sizeof words / sizeof *words);
}

// No sentence that a person says is longer; what repeats without a stop would else be gone through again for
// each of its words.
enum { SENTENCE_MOST = 200 };

size_t scope_clause_end(const struct scope *scope, size_t i) {
    const struct tokens *tokens = &scope->note->tokens;
    for (size_t at = i; at < tokens->count; at++)
        if (tokens->at[at].stop >= STOP_CLAUSE || (at > i && is_contrast(tokens, at)) ||
            at > i + SENTENCE_MOST)
            return at;
    return tokens->count;
}

size_t scope_sentence_end(const struct scope *scope, size_t i) {
    const struct tokens *tokens = &scope->note->tokens;
    for (size_t n = 0; n < SENTENCE_MOST && i < tokens->count && !ends_sentence(&tokens->at[i]); n++) i++;
    return i;
}

size_t scope_sentence_start(const struct scope *scope, size_t i) {
    for (size_t n = 0; n < SENTENCE_MOST && i > 0 && !ends_sentence(&scope->note->tokens.at[i - 1]); n++) i--;
    return i;
}

size_t scope_clause_start(const struct scope *scope, size_t i) {
    const struct tokens *tokens = &scope->note->tokens;
    for (size_t n = 0;
         n < SENTENCE_MOST && i > 0 && tokens->at[i - 1].stop < STOP_CLAUSE && !is_contrast(tokens, i - 1);
         n++)
        i--;
    return i;
}

// "a chip", "some wear", "one small nick": what opens anew and is not under an earlier "no".
static bool opens_statement(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "a",     "an",      "some", "several", "one",    "two",        "three", "four",  "slight", "small",
        "minor", "little",  "tiny", "light",   "few",    "couple",     "faint", "there", "theres", "there's",
        "shows", "showing", "odd",  "bit",     "couple", "occasional", "lots",  "loads", "plenty"};
    return token_among(tokens, i, words, sizeof words / sizeof *words);
}

void scope_read(struct scope *scope, unsigned off) {
    const struct tokens *tokens = &scope->note->tokens;
    struct arena *arena = scope->note->arena;
    scope->stance = arena_array(arena, tokens->count + 1, sizeof *scope->stance);
    scope->cue = arena_array(arena, tokens->count + 1, sizeof *scope->cue);
    scope->positive = arena_array(arena, tokens->count + 1, sizeof *scope->positive);
    for (size_t i = 0; i < tokens->count; i++) {
        scope->cue[i] = SIZE_MAX;
        scope->positive[i] = opens_statement(tokens, i);
    }
    static const struct {
        enum phenomenon which;
        void (*read)(struct scope *);
    } all[] = {{SCOPE_UNKNOWN, scope_unknown},     {SCOPE_DENIAL, scope_denial},
               {SCOPE_LIMITED, scope_limited},     {SCOPE_PAST, scope_past},
               {SCOPE_DOUBT, scope_doubt},         {SCOPE_PACKING, scope_packing},
               {SCOPE_EXCEPTION, scope_exception}, {SCOPE_CORRECTION, scope_correction},
               {SCOPE_INTENDED, scope_intended},   {SCOPE_HEARD, scope_heard}};
    for (size_t i = 0; i < sizeof all / sizeof *all; i++)
        if (!(off & all[i].which)) all[i].read(scope);
}
