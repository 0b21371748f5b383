// SPDX-License-Identifier: MIT
// Each word is looked up once; only a sign of which every group was met is looked at closer.
#include "evidence/signs.h"

#include <string.h>

#include "evidence/sense.h"

enum { WORD_ROOM = 48, NEAR_MOST = 12, FIRST_ROOM = 128, MET_ROOM = 384 };

struct word {
    struct span span;
    const char *folded;
    size_t n, sentence;
};

struct met {
    size_t group, word, sentence;
    struct span span;
};

struct look {
    const struct signs *signs;
    const char *text, *own;
    struct word *words;
    size_t word_count, word_room;
    struct met *met;
    size_t met_count, met_room;
    bool *seen; // groups
};

static bool ends_sentence(const char *text, size_t from, size_t to) {
    for (size_t i = from; i < to; i++) {
        if (text[i] == '!' || text[i] == '?' || text[i] == ';' || text[i] == '\n') return true;
        if (text[i] == '.' && (text[i + 1] == ' ' || text[i + 1] == '\n' || !text[i + 1])) return true;
    }
    return false;
}

static void cut_words(struct arena *arena, struct look *look, size_t size) {
    char word[WORD_ROOM];
    size_t at = 0, from = 0, sentence = 0, n, end = 0;
    while ((n = sign_word_next(look->text, size, &at, &from, word, sizeof word)) != 0) {
        sentence += ends_sentence(look->text, end, from);
        if (look->word_count == look->word_room)
            look->words =
                arena_grow(arena, look->words, look->word_count, &look->word_room, sizeof *look->words);
        look->words[look->word_count++] = (struct word){{from, at}, arena_copy(arena, word, n), n, sentence};
        end = at;
    }
}

// Behind the first `n` bytes, which are known: as it is, or one of several: "torch", "torches".
static bool ends_well(const struct word *word, size_t n) {
    const char *rest = word->folded + n;
    return !rest[0] || (rest[0] == 's' && !rest[1]) || (rest[0] == 'e' && rest[1] == 's' && !rest[2]);
}

// How many words of the text the phrase takes from `at`, whose word begins as its first; 0: it is not there.
static size_t phrase_length(const struct look *look, size_t at, const struct sign_word *sign) {
    if (sign->size == sign->whole) return ends_well(&look->words[at], sign->size);
    if (look->words[at].n != sign->size) return 0;
    const char *phrase = sign->words + sign->size + 1;
    for (size_t count = 1;; count++) {
        if (at + count == look->word_count) return 0;
        const struct word *word = &look->words[at + count];
        size_t n = 0;
        while (phrase[n] && phrase[n] == word->folded[n]) n++;
        bool last = !phrase[n];
        if (word->sentence != look->words[at].sentence) return 0;
        if (last) return ends_well(word, n) ? count + 1 : 0;
        if (phrase[n] != ' ' || word->folded[n]) return 0;
        phrase += n + 1;
    }
}

static void meet(struct arena *arena, struct look *look, size_t at, size_t n) {
    const struct signs *signs = look->signs;
    const struct word *word = &look->words[at];
    size_t first = signs_first(signs, word->folded, n), end = first;
    if (first < signs->word_count) end += signs->words[first].alike;
    for (size_t i = first; i < end; i++) {
        size_t count = phrase_length(look, at, &signs->words[i]);
        if (!count) continue;
        struct span span = {word->span.from, look->words[at + count - 1].span.to};
        if (look->met_count == look->met_room)
            look->met = arena_grow(arena, look->met, look->met_count, &look->met_room, sizeof *look->met);
        look->met[look->met_count++] = (struct met){signs->words[i].group, at, word->sentence, span};
        look->seen[signs->words[i].group] = true;
    }
}

static void meet_all(struct arena *arena, struct look *look) {
    for (size_t i = 0; i < look->word_count; i++) {
        const struct word *word = &look->words[i];
        meet(arena, look, i, word->n);
        if (word->n < 4 || word->folded[word->n - 1] != 's') continue;
        meet(arena, look, i, word->n - 1);
        if (word->folded[word->n - 2] == 'e') meet(arena, look, i, word->n - 2);
    }
}

static bool is_near(const struct met *a, const struct met *b) {
    size_t apart = a->word > b->word ? a->word - b->word : b->word - a->word;
    return a->sentence == b->sentence && apart && apart <= NEAR_MOST;
}

// Is a word of the group near that one? Of groups that bar, anywhere in the sentence.
static bool stands_by(const struct look *look, const struct met *met, size_t group, bool bars) {
    for (size_t i = 0; i < look->met_count; i++) {
        const struct met *other = &look->met[i];
        if (other->group != group) continue;
        if (bars ? other->sentence == met->sentence
                 : is_near(met, other) && !sense_is_denied(look->text, other->span.from, other->span.to))
            return true;
    }
    return false;
}

static bool section_at(const struct look *look, const struct met *met, size_t first, size_t end) {
    if (sense_is_denied(look->text, met->span.from, met->span.to)) return false;
    for (size_t g = first; g < end; g++)
        if (g != met->group &&
            stands_by(look, met, g, look->signs->groups[g].bars) == look->signs->groups[g].bars)
            return false;
    return true;
}

static bool is_own(const struct look *look, const struct met *met) {
    return look->own[met->span.from] == look->text[met->span.from];
}

// Words about another thing than the one for sale.
static bool is_beside(const struct look *look, const struct caution *caution, struct span span) {
    if (caution->shown || caution->history) return false;
    if (sense_is_else(look->text, span.to)) return true;
    return !caution_is_state(caution) &&
           (sense_is_pictured(look->text, span.from, span.to) ||
            (!caution->residue && sense_was_inside(look->text, span.from, span.to)));
}

// From its first group on; a section of groups that only bar bars them in the whole text.
static const struct met *section_met(const struct look *look, const struct sign *sign, size_t first,
                                     size_t end) {
    for (size_t i = 0; i < look->met_count; i++)
        if (look->met[i].group == first && is_own(look, &look->met[i]) &&
            section_at(look, &look->met[i], first, end) && !is_beside(look, sign->caution, look->met[i].span))
            return &look->met[i];
    return NULL;
}

static bool sign_met(const struct look *look, const struct sign *sign, struct span *at) {
    const struct sign_group *groups = look->signs->groups;
    size_t end = sign->first + sign->count;
    for (size_t g = sign->first, next; g < end; g = next) {
        next = g + 1;
        while (next < end && groups[next].section == groups[g].section) next++;
        if (groups[g].bars) {
            if (look->seen[g]) return false;
            continue;
        }
        const struct met *met = section_met(look, sign, g, next);
        if (!met) return false;
        if (g == sign->first) *at = met->span;
    }
    return true;
}

static bool all_seen(const struct look *look, const struct sign *sign) {
    for (size_t g = sign->first; g < sign->first + sign->count; g++)
        if (!look->signs->groups[g].bars && !look->seen[g]) return false;
    return true;
}

void signs_find(struct arena *arena, const struct signs *signs, const char *text, const char *own,
                size_t size, struct span *at) {
    struct look look = {.signs = signs, .text = text, .own = own};
    look.seen = arena_array(arena, signs->group_count + 1, sizeof *look.seen);
    look.word_room = FIRST_ROOM;
    look.met_room = MET_ROOM;
    look.words = arena_room(arena, look.word_room * sizeof *look.words);
    look.met = arena_room(arena, look.met_room * sizeof *look.met);
    cut_words(arena, &look, size);
    meet_all(arena, &look);
    for (size_t i = 0; i < signs->count; i++) {
        const struct sign *sign = &signs->signs[i];
        struct span span;
        if (!at[sign->caution->number].to && all_seen(&look, sign) && sign_met(&look, sign, &span))
            at[sign->caution->number] = span;
    }
}
