// SPDX-License-Identifier: MIT
// Each must in its shortest spelling; the musts of a roll-up by that where it is shorter than all of them
// together, since it stands for any number of them. Each of these choices is the least by itself, so that
// together they are the least there is as soon as no word stands in them twice.
#include "title/solve_least.h"

#include <string.h>

struct least {
    const struct title_problem *problem;
    int *spelling;
    size_t length;
    bool *used; // words
};

static bool is_covered(const struct title_problem *problem, const struct title_phrase *phrase) {
    return phrase->must && phrase->rollup >= 0 && (size_t)phrase->rollup < problem->rollup_count;
}

// Takes the words of a text; false when one of them was taken before.
static bool use(struct least *least, const struct title_spelling *text) {
    for (size_t k = 0; k < text->word_count; k++) {
        if (least->used[text->words[k]]) return false;
        least->used[text->words[k]] = true;
    }
    least->length += text->length + 1;
    return true;
}

// The first of the shortest; the phrase has one.
static size_t shortest(const struct title_phrase *phrase) {
    size_t best = 0;
    for (size_t i = 1; i < phrase->count; i++)
        if (phrase->spellings[i].length < phrase->spellings[best].length) best = i;
    return best;
}

static bool use_own(struct least *least, size_t p) {
    const struct title_phrase *phrase = &least->problem->phrases[p];
    size_t best = shortest(phrase);
    least->spelling[p] = (int)best;
    return use(least, &phrase->spellings[best]);
}

// By the roll-up where that is shorter, else by their own words, which come first where it is not.
static bool use_rollup(struct least *least, size_t rollup) {
    const struct title_problem *problem = least->problem;
    size_t own = 0, covered = 0;
    for (size_t p = 0; p < problem->phrase_count; p++) {
        const struct title_phrase *phrase = &problem->phrases[p];
        if (!is_covered(problem, phrase) || (size_t)phrase->rollup != rollup) continue;
        own += phrase->spellings[shortest(phrase)].length + 1;
        covered++;
    }
    if (!covered) return true;
    if (problem->rollups[rollup].length + 1 < own) {
        least->spelling[problem->phrase_count + rollup] = 0;
        return use(least, &problem->rollups[rollup]);
    }
    for (size_t p = 0; p < problem->phrase_count; p++)
        if (is_covered(problem, &problem->phrases[p]) && (size_t)problem->phrases[p].rollup == rollup &&
            !use_own(least, p))
            return false;
    return true;
}

bool solve_least(struct arena *arena, const struct title_problem *problem, int *spelling, size_t *length) {
    struct least least = {.problem = problem, .spelling = spelling};
    least.used = arena_array(arena, problem->word_count, sizeof *least.used);
    for (size_t g = 0; g < problem->phrase_count + problem->rollup_count; g++) spelling[g] = -1;
    for (size_t p = 0; p < problem->phrase_count; p++) {
        const struct title_phrase *phrase = &problem->phrases[p];
        if (phrase->must && !phrase->count) return false;
        if (phrase->must && !is_covered(problem, phrase) && !use_own(&least, p)) return false;
    }
    for (size_t r = 0; r < problem->rollup_count; r++)
        if (!use_rollup(&least, r)) return false;
    *length = least.length;
    return true;
}
