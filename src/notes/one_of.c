// SPDX-License-Identifier: MIT
// "Three blades, one broken at the tip", "4 knobs one is a replacement": the parts were counted just before,
// and the fault is of some of them, not of all.
#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { BACK_MOST = 7 };

// "One of them is", "one has", "one broken": between the number and the fault.
static bool is_filler(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"of",  "them",  "these", "which", "is",   "are",    "has", "have",
                                        "had", "a",     "an",    "been",  "with", "got",    "was", "bit",
                                        "not", "isn't", "the",   "very",  "both", "little", "w/"};
    return token_among(tokens, i, words, COUNT(words));
}

// A noun in the plural with its number before it: "three blades", "4 side windows". Its first token, or `to`.
static size_t counted_before(const struct fault_reader *r, size_t to, int *number) {
    const struct tokens *tokens = &r->note->tokens;
    enum { ADJECTIVES_MOST = 2 };
    const struct token *last = to > 0 ? &tokens->at[to - 1] : NULL;
    enum taken taken = to > 0 ? (enum taken)r->note->taken[to - 1] : TAKEN_NOT;
    if (!last || last->kind != TOKEN_WORD || last->one == last->fold ||
        (taken != TAKEN_NOT && taken != TAKEN_PART && taken != TAKEN_COUNT))
        return to;
    for (size_t from = to - 1; from > 0 && to - from <= ADJECTIVES_MOST + 1; from--) {
        static const char *const verbs[] = {"lack", "lacks",   "their", "have", "has",
                                            "with", "missing", "lost",  "need"};
        if (tokens->at[from - 1].stop != STOP_NONE || r->scope.fault[from] ||
            token_among(tokens, from, verbs, COUNT(verbs)))
            return to;
        *number = degrees_number(tokens, from - 1);
        if (*number) return from;
    }
    return to;
}

static bool is_bare(const struct fault_reader *r, size_t to) {
    const struct token *last = to > 0 ? &r->note->tokens.at[to - 1] : NULL;
    return last && r->part[to - 1] && !r->scope.fault[to - 1] && last->one != last->fold &&
           r->note->taken[to - 1] != TAKEN_TYPE && r->note->taken[to - 1] != TAKEN_MEASURE;
}

bool fault_by_noun(const struct fault_reader *r, const struct fault_hit *hit) {
    const char *noun = hit->kinds[0]->noun, *last = noun ? strrchr(noun, ' ') : NULL;
    return noun && text_same(last ? last + 1 : noun, r->note->tokens.at[hit->to - 1].one);
}

// "Fringe both ends, one hole": of the whole, and of neither end.
static bool is_feature(const struct fault_reader *r, const struct fault_hit *hit, size_t end) {
    return end > 1 && ANY(&r->note->tokens, end - 2, "both", "each", "all", "at", "with", "either", "two") &&
           fault_by_noun(r, hit);
}

// "Rope handles on both ends, one is frayed": of the handles, and of no end. Past the last of them.
static size_t heads_of_ends(const struct fault_reader *r, size_t end) {
    const struct tokens *tokens = &r->note->tokens;
    if (end < 4 || !ANY(tokens, end - 2, "both", "each", "either") || !ANY(tokens, end - 3, "on", "at", "to"))
        return end;
    bool joined = tokens->at[end - 2].stop == STOP_NONE && tokens->at[end - 3].stop == STOP_NONE &&
                  tokens->at[end - 4].stop == STOP_NONE;
    return joined && is_bare(r, end - 3) ? end - 3 : end;
}

int parts_shared(const struct fault_reader *r, const struct fault_hit *hit, int *of, size_t *from,
                 size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->kinds[0]->form == ABSENCE) return 0;
    size_t at = hit->from;
    for (size_t back = 0; back < BACK_MOST && at > 0; back++, at--) {
        if (tokens->at[at - 1].stop != STOP_NONE) return 0;
        // "Two tunes, one tooth missing": the number is that of the fault's own part.
        if (at == hit->from && r->part[hit->from] && degrees_number(tokens, at - 1)) return 0;
        int some = degrees_number(tokens, at - 1);
        if (!some) {
            if (!is_filler(tokens, at - 1)) return 0;
            continue;
        }
        size_t end = at - 1;
        while (end > 0 && (tokens->at[end - 1].stop == STOP_COMMA || token_is(tokens, end - 1, "and") ||
                           token_is(tokens, end - 1, "but") || ANY(tokens, end - 1, "-", "(")))
            end--;
        end = heads_of_ends(r, end);
        size_t start = counted_before(r, end, of);
        bool bare = start == end && some == 1 && is_bare(r, end) &&
                    !is_feature(r, hit, end); // "brass clasps, one broken"
        if (bare) {
            *of = 0;
            start = end - 1;
        } else if (start == end || *of <= some)
            return 0;
        *from = start;
        *to = end;
        return some;
    }
    return 0;
}
