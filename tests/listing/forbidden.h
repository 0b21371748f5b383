// SPDX-License-Identifier: MIT
// Words that no rule and no code may print: they promise what nobody can know, or praise. A seller's own
// words may hold them, and stand then in quotes where it is told that they were kept out.
#ifndef TEST_FORBIDDEN_H
#define TEST_FORBIDDEN_H

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

#include "text/arena.h"
#include "text/utf8.h"

static const char *const FORBIDDEN[] = {"safe",
                                        "food safe",
                                        "food-safe",
                                        "lead free",
                                        "lead-free",
                                        "waterproof",
                                        "authentic",
                                        "guaranteed",
                                        "no returns",
                                        "all sales final",
                                        "not responsible",
                                        "will wash out",
                                        "smoke free home",
                                        "smoke-free home",
                                        "no damage",
                                        "stunning",
                                        "gorgeous",
                                        "amazing",
                                        "exquisite",
                                        "magnificent",
                                        "spectacular",
                                        "fabulous",
                                        "breathtaking",
                                        "beautiful",
                                        "wow",
                                        "must see",
                                        "must have",
                                        "awesome",
                                        "rare",
                                        "scarce",
                                        "unique",
                                        "one of a kind",
                                        "mint condition",
                                        "near mint",
                                        "flawless",
                                        "immaculate",
                                        "pristine",
                                        "faultless",
                                        "perfect",
                                        "excellent",
                                        "spotless",
                                        "lovely",
                                        "charming",
                                        "fantastic",
                                        "investment",
                                        "museum quality",
                                        "heirloom",
                                        "priceless",
                                        "valuable",
                                        "like new",
                                        "good as new",
                                        "works perfectly",
                                        "htf",
                                        "ooak",
                                        "l@@k",
                                        "cute",
                                        "appraised",
                                        "sanitised",
                                        "sanitized"};

static inline bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (unsigned char)c >= 0x80;
}

// A match safe is a box for matches.
static inline bool is_noun(const char *text, const char *at) {
    return !strncmp(at, "safe", 4) && at - text >= 6 && !strncmp(at - 6, "match ", 6);
}

// The first of them that stands in the text as whole words, or NULL.
static inline const char *forbidden_in(struct arena *arena, const char *text) {
    const char *folded = utf8_fold(arena, text);
    for (size_t i = 0; i < sizeof FORBIDDEN / sizeof *FORBIDDEN; i++) {
        size_t n = strlen(FORBIDDEN[i]);
        for (const char *at = folded; (at = strstr(at, FORBIDDEN[i])); at++)
            if ((at == folded || !is_letter(at[-1])) && !is_letter(at[n]) && !is_noun(folded, at))
                return FORBIDDEN[i];
    }
    return NULL;
}

// Without what stands in quotes on one line.
static inline const char *unquoted(struct arena *arena, const char *text) {
    char *copy = arena_copy(arena, text, strlen(text)), *to = copy;
    for (const char *at = copy; *at;) {
        bool opens = (*at == '"' || *at == '\'') && (at == copy || !is_letter(at[-1]));
        const char *end = opens ? at + 1 : NULL;
        while (end && *end && *end != '\n' && !(*end == *at && !is_letter(end[1]))) end++;
        at = end && *end == *at ? end + 1 : at;
        if (*at && !(end && at > end)) *to++ = *at++;
    }
    *to = '\0';
    return copy;
}

#endif
