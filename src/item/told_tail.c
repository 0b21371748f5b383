// SPDX-License-Identifier: MIT
// What the notes say right behind a fault or its place: what a part was replaced or mended with, and whether
// a place is one in which or at which it is ("broken off in the lock", "split at the back").
#include "item/told_tail.h"

#include <string.h>

#include "say/say.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { WORDS_MOST = 5, FAR = 60 };

static bool is_one_of(const char *word, size_t size, const char *const *words, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (strlen(words[i]) == size && !strncmp(word, words[i], size)) return true;
    return false;
}

static bool is_plain(const char *word, size_t size) {
    for (size_t i = 0; i < size; i++)
        if (!(word[i] >= 'a' && word[i] <= 'z') && word[i] != '-' && word[i] != '\'') return false;
    return size > 0;
}

// Only stuff and fittings, in small letters: no name of a person may come along.
static const char *stuff_behind(struct arena *arena, const char *text) {
    static const char *const opens[] = {"a",   "an",  "some",   "two",   "three", "four",
                                        "one", "new", "modern", "plain", "old"};
    static const char *const ends[] = {"and",    "but",  "which",   "that",  "so",      "when", "after", "by",
                                       "from",   "at",   "in",      "on",    "to",      "haha", "lol",   "i",
                                       "my",     "his",  "if",      "as",    "then",    "not",  "no",    "or",
                                       "before", "with", "for",     "is",    "was",     "it",   "they",  "he",
                                       "she",    "we",   "someone", "years", "because", "like"};
    const char *at = text;
    static const char *const stuffs[] = {
        "tape",    "wire",    "string", "twine",     "glue",       "rope",       "cord",
        "leather", "solder",  "putty",  "filler",    "resin",      "cloth",      "canvas",
        "pine",    "brass",   "copper", "tin",       "fiberglass", "fibreglass", "epoxy",
        "steel",   "plywood", "ply",    "cardboard", "plastic",    "oak",        "ash",
        "elm",     "beech",   "cotton", "duct",      "gaffer",     "electrical", "insulating",
        "cork",    "rubber",  "felt",   "staples",   "screws",     "nails",      "bolts"};
    size_t words = 0;
    bool mass = false;
    while (words < WORDS_MOST && *at) {
        size_t size = strcspn(at, " ,.;:!?()\n");
        bool stuff = !words && is_one_of(at, size, stuffs, COUNT(stuffs));
        if (!words && !stuff && !is_one_of(at, size, opens, COUNT(opens))) return NULL;
        mass |= stuff;
        bool fixed = words && (!strncmp(at, "on a ", 5) || !strncmp(at, "and a ", 6)); // "a nut on a wire"
        if (!fixed && (is_one_of(at, size, ends, COUNT(ends)) || !is_plain(at, size))) break;
        at += size;
        words++;
        if (*at != ' ') break;
        at++;
    }
    while (at > text && at[-1] == ' ') at--;
    return words > (mass ? 0 : 1) ? arena_copy(arena, text, (size_t)(at - text)) : NULL;
}

// "Corner off, have the piece": what broke off comes with it.
static const char *piece_kept(struct arena *arena, const struct record *record,
                              const struct item_flaw *flaw) {
    static const char *const kept[] = {
        "have the piece",    "have the bit",   "got the piece",   "got the bit",    "have got the piece",
        "piece is with",     "bit is with",    "bit's with",      "piece's with",   "bit is included",
        "piece is included", "piece included", "piece is there",  "bit is there",   "kept the piece",
        "kept the bit",      "piece kept",     "bit is in",       "piece is in",    "pieces are in",
        "have the pieces",   "got the pieces", "bit is here",     "piece is here",  "still have it",
        "still got it",      "piece is in",    "have the broken", "got the broken", "bits are with"};
    if (flaw->kind->class != CLASS_DAMAGE || flaw->kind->form != FAULT) return NULL;
    static const char *const breaks[] = {"broken-part", "chip", "crack-through", "veneer-damage",
                                         "enamel-chip"};
    bool can = false;
    for (size_t i = 0; i < COUNT(breaks); i++) can |= !strcmp(flaw->kind->rule.id, breaks[i]);
    if (!can) return NULL;
    size_t to = flaw->span.to + strnlen(record->notes + flaw->span.to, FAR);
    const char *text = utf8_fold(arena, arena_copy(arena, record->notes + flaw->span.to, to - flaw->span.to));
    text = arena_copy(arena, text, strcspn(text, ".;!?"));
    static const char *const lost[] = {"not got",        "n't got",  "n't have",  "not have",    "never had",
                                       "no longer have", "nor have", "never got", "without the", "wish i",
                                       "not kept",       "n't kept", "not here",  "n't here",    "not with",
                                       "n't with",       "not in",   "not there"};
    for (size_t i = 0; i < COUNT(lost); i++)
        if (strstr(text, lost[i])) return NULL; // "we have not got the piece"
    for (size_t i = 0; i < COUNT(kept); i++)
        if (strstr(text, kept[i])) return "(the piece is with it)";
    return NULL;
}

const char *told_with(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    if (flaw->kind->class != CLASS_REPAIR) return piece_kept(arena, record, flaw);
    if (flaw->span.to < 4) return NULL;
    const char *at = record->notes + flaw->span.to;
    if (!strncmp(at - 4, "with", 4) && *at == ' ')
        at++;
    else if (!strncmp(at, " with ", 6))
        at += 6;
    else
        return NULL;
    const char *stuff = stuff_behind(arena, at);
    return stuff ? arena_format(arena, "with %s", stuff) : NULL;
}

// Of a place that is no more than a noun; others bring their own word. A state takes any: "not tested on a
// line", "converted into a lamp".
const char *told_link(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    static const char *const links[] = {"in the", "at the", "on a",   "into a",   "into the", "in a",
                                        "with a", "at a",   "on the", "from the", "with the", "under the"};
    enum { OF_A_FAULT = 2 };
    if (!flaw->where) return NULL;
    size_t from = flaw->span.from, to = flaw->span.to + strnlen(record->notes + flaw->span.to, FAR);
    const char *text = utf8_fold(arena, arena_copy(arena, record->notes + from, to - from));
    const char *where = utf8_fold(arena, flaw->where);
    size_t count = flaw->kind->form == STATE ? COUNT(links) : OF_A_FAULT;
    for (size_t i = 0; i < count; i++) {
        const char *at = strstr(text, arena_format(arena, " %s %s", links[i], where));
        if (at && !strpbrk(arena_copy(arena, text, (size_t)(at - text)), ".;!?")) return links[i];
    }
    return NULL;
}

bool told_of_part(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    if (!flaw->part || !flaw->where || flaw->kind->form != FAULT) return false;
    size_t from = flaw->span.from > FAR ? flaw->span.from - FAR : 0;
    const char *text = utf8_fold(arena, arena_copy(arena, record->notes + from, flaw->span.from - from));
    const char *joint = arena_format(arena, "%s %s", utf8_fold(arena, flaw->part),
                                     utf8_fold(arena, say_place(arena, flaw->where)));
    const char *at = strstr(text, joint);
    return at && !strpbrk(at + strlen(joint), ".,;:!?");
}

bool told_largest(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    static const char *const words[] = {"biggest", "largest", "longest", "worst",      "deepest",
                                        "widest",  "bigger",  "longer",  "one of them"};
    if (flaw->count < 2 && !flaw->several) return false;
    size_t to = flaw->span.to + strnlen(record->notes + flaw->span.to, FAR);
    const char *text = utf8_fold(arena, arena_copy(arena, record->notes + flaw->span.to, to - flaw->span.to));
    for (size_t i = 0; i < COUNT(words); i++)
        if (strstr(text, words[i])) return true;
    return false;
}
