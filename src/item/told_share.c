// SPDX-License-Identifier: MIT
// "Most rusty", "some of the pages foxed": how many of the pieces have it, in words that are no number. Such
// a word is no degree of the damage: most are rusty, and none of them need be heavily so.
#include "item/told_share.h"

#include <string.h>

#include "say/say.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { BEFORE = 60, WORDS_MOST = 8 };

static const char *const shares[] = {"nearly all", "almost all", "most",     "some",     "several", "many",
                                     "a few",      "a couple",   "the rest", "a number", "all"};
// What may stand between the share and the fault, beside the part.
static const char *const fillers[] = {
    "of",     "the",      "them",  "these",   "its", "their", "my",     "are",  "is",     "have",
    "has",    "been",     "got",   "were",    "a",   "bit",   "little", "very", "quite",  "rather",
    "pretty", "slightly", "badly", "lightly", "now", "gone",  "well",   "with", "heavily"};

static bool is_one_of(const char *word, size_t size, const char *const *words, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (strlen(words[i]) == size && !strncmp(word, words[i], size)) return true;
    return false;
}

// Where the clause of the fault begins: behind the last mark, "and" or "but".
static const char *clause_start(const char *text) {
    const char *start = text;
    static const char *const joints[] = {" and ", " but ", " though ", " while ", " - "};
    for (const char *at = text; *at; at++) {
        if (strchr(",.;:!?()\n", *at)) start = at + 1;
        for (size_t i = 0; i < COUNT(joints); i++)
            if (!strncmp(at, joints[i], strlen(joints[i]))) start = at + strlen(joints[i]);
    }
    return start + strspn(start, " ");
}

// Whether nothing stands there but the part, words that fill, and the share itself; `*part` where it is
// named. `next`: the part stands behind the text.
static bool only_the_part(const char *text, const char *part, bool next, bool *named, bool *them) {
    size_t part_size = part ? strlen(part) : 0, words = 0;
    while (*text) {
        text += strspn(text, " ");
        if (!*text) break;
        if (part_size && !strncmp(text, part, part_size) && (text[part_size] == ' ' || !text[part_size])) {
            *named = true;
            text += part_size;
            continue;
        }
        size_t size = strcspn(text, " "), gap = strspn(text + size, " ");
        if (part_size && !*named && !is_one_of(text, size, fillers, COUNT(fillers)) &&
            (text[size + gap] ? !strncmp(text + size + gap, part, part_size) : next)) {
            text += size; // "a few of the thin dividers"
            continue;
        }
        if (!is_one_of(text, size, fillers, COUNT(fillers)) || ++words > WORDS_MOST) return false;
        static const char *const verbs[] = {"them", "are", "have", "these"};
        *them |= is_one_of(text, size, verbs, COUNT(verbs));
        text += size;
    }
    return true;
}

static bool starts_with(const char *text, const char *start) {
    return !strncmp(text, start, strlen(start));
}

// The share may be among the words of the fault ("all rusted"), and so may "of the".
static size_t head_size(const char *said) {
    size_t n = 0;
    for (size_t i = 0; i < COUNT(shares) && !n; i++)
        if (starts_with(said, shares[i]) && said[strlen(shares[i])] == ' ') n = strlen(shares[i]) + 1;
    if (n && starts_with(said + n, "of the ")) n += strlen("of the ");
    return n;
}

const char *told_share(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    if (flaw->count || flaw->of || !flaw->span.from) return NULL;
    if (flaw->part && !say_is_plural(flaw->part)) return NULL;
    size_t from = flaw->span.from > BEFORE ? flaw->span.from - BEFORE : 0;
    size_t ahead = strnlen(record->notes + flaw->span.from, BEFORE);
    const char *said = utf8_fold(arena, arena_copy(arena, record->notes + flaw->span.from, ahead));
    const char *text = utf8_fold(arena, arena_copy(arena, record->notes + from, flaw->span.from - from));
    const char *clause = clause_start(text);
    if (clause == text && from) return NULL;
    text = arena_format(arena, "%s%.*s", clause, (int)head_size(said), said);
    clause = text;
    for (size_t i = 0; i < COUNT(shares); i++) {
        size_t n = strlen(shares[i]);
        if (strncmp(clause, shares[i], n) != 0 || (clause[n] && clause[n] != ' ')) continue;
        bool named = false, them = false;
        const char *part = flaw->part ? utf8_fold(arena, flaw->part) : NULL;
        bool next = part && starts_with(said + head_size(said), part);
        if (!only_the_part(clause + n, part, next, &named, &them)) return NULL;
        named |= next;
        bool bare = !clause[n + strspn(clause + n, " ")];
        if (flaw->part && !named) return NULL;
        return named || them || (bare && (flaw->adjective_said || flaw->kind->form != FAULT)) ? shares[i]
                                                                                              : NULL;
    }
    return NULL;
}
