// SPDX-License-Identifier: MIT
// Nouns whose number the endings alone do not tell, as sorted lists of lower-case words.
#ifndef SAY_NOUNS_H
#define SAY_NOUNS_H

#include <stdbool.h>
#include <stddef.h>

enum noun_kind {
    NOUNS_PLURAL_ONLY, // plural in form for one thing; nothing comes off
    NOUNS_MASS,        // stuff without a number; neither form changes
    NOUNS_SINGULAR_S,  // singular though they end in s, where the endings do not show it
    NOUNS_IE,          // ending in -ie: -ies loses only its s
    NOUNS_OES,         // ending in -o with -oes: potato, potatoes
    NOUNS_USE,         // ending in -use, unlike cactuses and buses
    NOUNS_IS,          // ending in -is with -ises; all other -ises are -ise
    NOUNS_AS,          // ending in -as or -os with -ases, -oses; all others are -ase, -ose
    NOUNS_SS_E,        // ending in -sse
    NOUNS_CHE,         // ending in -che or -she: only the s comes off
    NOUNS_XE,          // ending in -xe: axe, axes
    NOUNS_ZZ,          // doubling their z: quiz, quizzes
    NOUNS_Z,           // ending in -z after a vowel: topaz, topazes
    NOUNS_I_U,         // ending in -i or -u whose plural looks like -is, -us
    NOUNS_CH_K,        // ending in a -ch that sounds like k: stomachs
    NOUNS_STUFF,       // words that share one head when joined: "salt and peppers", "black and whites"
    NOUNS_MAN,         // ending in -man without being a man
    NOUNS_MEN,         // ending in -men in the singular
    NOUNS_SPELLED,     // short forms said letter by letter though they have a vowel
    NOUNS_COUNT
};

struct noun_list {
    const char *const *words;
    size_t count;
};
struct noun_pair {
    const char *singular, *plural;
};
struct noun_pairs {
    const struct noun_pair *at;
    size_t count;
};

struct noun_ending {
    struct noun_pair pair;
    size_t singular, plural; // bytes of each
};

bool nouns_has(enum noun_kind kind, const char *word);
// NULL when the word is not one of an irregular pair.
const struct noun_pair *nouns_of_singular(const char *word);
const struct noun_pair *nouns_of_plural(const char *word);
// Pairs that also hold at the end of longer words.
const struct noun_ending *nouns_endings(size_t *count);
// The tables themselves, for checks.
const struct noun_list *nouns_list(enum noun_kind kind);
struct noun_pairs nouns_by_singular(void);
struct noun_pairs nouns_by_plural(void);

#endif
