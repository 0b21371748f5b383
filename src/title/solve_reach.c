// SPDX-License-Identifier: MIT
// Many a search asks for a second name of the thing, which shares its noun with the first: no title answers
// that, and it takes no prices to see.
#include "title/solve_reach.h"

struct reach {
    const struct title_problem *problem;
    const uint32_t *sure;
    bool *offered; // stems
};

static bool says(const struct title_spelling *spelling, uint16_t word) {
    for (size_t k = 0; k < spelling->word_count; k++)
        if (spelling->words[k] == word) return true;
    return false;
}

static bool is_sure(const struct title_problem *problem, const struct title_phrase *phrase) {
    bool covered = phrase->rollup >= 0 && (size_t)phrase->rollup < problem->rollup_count;
    return phrase->must && !covered && phrase->count > 0;
}

uint32_t *reach_sure_words(struct arena *arena, const struct title_problem *problem) {
    uint32_t *sure = arena_array(arena, problem->word_count, sizeof *sure);
    for (size_t p = 0; p < problem->phrase_count; p++) {
        const struct title_phrase *phrase = &problem->phrases[p];
        if (!is_sure(problem, phrase)) continue;
        for (size_t k = 0; k < phrase->spellings[0].word_count; k++) {
            uint16_t word = phrase->spellings[0].words[k];
            size_t i = 1;
            while (i < phrase->count && says(&phrase->spellings[i], word)) i++;
            if (i == phrase->count) sure[word] = (uint32_t)p + 1;
        }
    }
    return sure;
}

bool reach_may_stand(const uint32_t *sure, size_t phrase, const struct title_spelling *spelling) {
    for (size_t k = 0; k < spelling->word_count; k++) {
        uint32_t owner = sure[spelling->words[k]];
        if (owner && owner != phrase + 1) return false;
    }
    return true;
}

// What the spelling tells, and its stems as offered.
static int64_t offer(struct reach *r, size_t phrase, const struct title_spelling *spelling, int64_t most) {
    if (spelling->length > r->problem->limit || !reach_may_stand(r->sure, phrase, spelling)) return most;
    for (size_t k = 0; k < spelling->stem_count; k++) r->offered[spelling->stems[k]] = true;
    int64_t tells = (int64_t)spelling->tells - spelling->cost;
    return tells > most ? tells : most;
}

static int64_t most_paid(const struct reach *r, const struct title_want *want) {
    int64_t most = 0;
    for (size_t i = 0; i < want->count; i++) {
        const struct title_wording *wording = &want->wordings[i];
        bool may = wording->weight > most;
        for (size_t k = 0; k < wording->count && may; k++) may = r->offered[wording->stems[k]];
        if (may) most = wording->weight;
    }
    return most;
}

// The best of each phrase, and the heaviest answer of each want that has its stems anywhere.
bool reach_floor(struct arena *arena, const struct title_problem *problem, int64_t floor) {
    struct reach r = {problem, reach_sure_words(arena, problem),
                      arena_array(arena, problem->stem_count, sizeof *r.offered)};
    int64_t most = 0;
    for (size_t p = 0; p < problem->phrase_count; p++) {
        const struct title_phrase *phrase = &problem->phrases[p];
        bool must = is_sure(problem, phrase);
        int64_t told = must ? INT32_MIN : 0;
        for (size_t i = 0; i < phrase->count; i++) told = offer(&r, p, &phrase->spellings[i], told);
        most += told;
    }
    for (size_t i = 0; i < problem->rollup_count; i++)
        most += offer(&r, problem->phrase_count + i, &problem->rollups[i], 0);
    for (size_t k = 0; k < problem->want_count; k++) most += most_paid(&r, &problem->wants[k]);
    return most >= floor;
}
