// SPDX-License-Identifier: MIT
// The worth of any choice, straight from the definition in title/problem.h.
// Plain and quadratic on purpose, and sharing nothing with the solver: each of the two is the check of the
// other.
#include "title/problem.h"

static const struct title_spelling *text_at(const struct title_problem *problem, const int *spelling,
                                            const bool *rollup, size_t place) {
    if (place >= problem->phrase_count)
        return rollup[place - problem->phrase_count] ? &problem->rollups[place - problem->phrase_count]
                                                     : NULL;
    const struct title_phrase *phrase = &problem->phrases[place];
    if (spelling[place] < 0 || (size_t)spelling[place] >= phrase->count) return NULL;
    return &phrase->spellings[spelling[place]];
}

static bool stem_is_there(const struct title_problem *problem, const int *spelling, const bool *rollup,
                          uint16_t stem) {
    for (size_t place = 0; place < problem->phrase_count + problem->rollup_count; place++) {
        const struct title_spelling *text = text_at(problem, spelling, rollup, place);
        for (size_t i = 0; text != NULL && i < text->stem_count; i++)
            if (text->stems[i] == stem) return true;
    }
    return false;
}

static bool wording_is_answered(const struct title_problem *problem, const int *spelling, const bool *rollup,
                                const struct title_wording *wording) {
    for (size_t i = 0; i < wording->count; i++)
        if (!stem_is_there(problem, spelling, rollup, wording->stems[i])) return false;
    return true;
}

static int64_t want_pays(const struct title_problem *problem, const int *spelling, const bool *rollup,
                         const struct title_want *want) {
    int64_t best = 0;
    for (size_t i = 0; i < want->count; i++) {
        const struct title_wording *wording = &want->wordings[i];
        if (wording->weight > best && wording_is_answered(problem, spelling, rollup, wording))
            best = wording->weight;
    }
    return best;
}

static size_t times_said(const struct title_problem *problem, const int *spelling, const bool *rollup,
                         uint16_t word) {
    size_t times = 0;
    for (size_t place = 0; place < problem->phrase_count + problem->rollup_count; place++) {
        const struct title_spelling *text = text_at(problem, spelling, rollup, place);
        for (size_t i = 0; text != NULL && i < text->word_count; i++) times += text->words[i] == word;
    }
    return times;
}

static bool phrase_is_lawful(const struct title_phrase *phrase, int spelling, const bool *rollup) {
    if (spelling >= 0) return (size_t)spelling < phrase->count;
    if (spelling == -1) return !phrase->must;
    return spelling == -2 && phrase->must && phrase->rollup >= 0 && rollup[phrase->rollup];
}

static bool rollup_is_lawful(const struct title_problem *problem, const int *spelling, size_t index) {
    for (size_t p = 0; p < problem->phrase_count; p++)
        if (spelling[p] == -2 && problem->phrases[p].rollup == (int)index) return true;
    return false;
}

static bool choice_is_lawful(const struct title_problem *problem, const int *spelling, const bool *rollup) {
    for (size_t p = 0; p < problem->phrase_count; p++)
        if (!phrase_is_lawful(&problem->phrases[p], spelling[p], rollup)) return false;
    for (size_t r = 0; r < problem->rollup_count; r++)
        if (rollup[r] && !rollup_is_lawful(problem, spelling, r)) return false;
    for (size_t place = 0; place < problem->phrase_count + problem->rollup_count; place++) {
        const struct title_spelling *text = text_at(problem, spelling, rollup, place);
        for (size_t i = 0; text != NULL && i < text->word_count; i++)
            if (times_said(problem, spelling, rollup, text->words[i]) > 1) return false;
    }
    return true;
}

bool title_worth(const struct title_problem *problem, const int *spelling, const bool *rollup, int64_t *worth,
                 size_t *length) {
    size_t texts = 0;
    *worth = 0;
    *length = 0;
    for (size_t k = 0; k < problem->want_count; k++)
        *worth += want_pays(problem, spelling, rollup, &problem->wants[k]);
    for (size_t place = 0; place < problem->phrase_count + problem->rollup_count; place++) {
        const struct title_spelling *text = text_at(problem, spelling, rollup, place);
        if (text == NULL) continue;
        *worth += (int64_t)text->tells - text->cost;
        *length += text->length + (texts++ > 0 ? 1 : 0);
    }
    return *length <= problem->limit && choice_is_lawful(problem, spelling, rollup);
}
