// SPDX-License-Identifier: MIT
// A touch or a sniff and what came of it: "ran my finger round the rim, smooth", "sniffed the lining,
// nothing". What was sought follows from the sense.
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const touches[] = {"finger", "fingers", "fingertip", "thumb",     "nail",
                                      "nails",  "felt",    "fingered",  "fingernail"};
static const char *const sniffs[] = {"sniffed", "sniff", "nose", "smelled", "smelt"};
static const char *const outcomes[] = {"smooth",
                                       "all smooth",
                                       "it's smooth",
                                       "its smooth",
                                       "nothing",
                                       "not a thing",
                                       "nothing there",
                                       "nothing at all",
                                       "nothing catches",
                                       "is smooth",
                                       "smooth all the way",
                                       "found nothing",
                                       "felt nothing",
                                       "and nothing",
                                       "perfectly smooth",
                                       "quite smooth",
                                       "smooth everywhere",
                                       "there's nothing"};

static bool ends(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || token_is(tokens, i, "and");
}

// The part between the sense and the outcome: "round the rim".
static const char *felt_part(struct fault_reader *r, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (r->part[i] && r->note->taken[i] != TAKEN_TYPE &&
            !token_among(&r->note->tokens, i, touches, COUNT(touches)))
            return fault_place(r->note, i, i + 1);
    return NULL;
}

static bool is_told(const struct fault_reader *r, const struct flaw *kind) {
    for (size_t i = 0; i < r->note->record->flaw_count; i++)
        if (r->note->record->flaws[i].kind == kind) return true;
    return false;
}

static void tell(struct fault_reader *r, const char *id, const char *part, size_t from, size_t to) {
    const struct flaw *kind = ruleset_flaw(r->note->rules, id);
    if (!kind) return;
    struct fault_hit hit = {.from = from, .to = to, .kinds = {kind}, .kind_count = 1};
    kind = kind_of_hit(r, &hit, part);
    if (!kind_can_be(r, kind, part) || is_told(r, kind)) return;
    clear_add(r, kind, part, NULL, true, from, to);
}

void read_felt(struct fault_reader *r) {
    static const uint16_t governed =
        STANCE_PAST | STANCE_UNKNOWN | STANCE_HEARD | STANCE_OTHER | STANCE_PLANNED;
    enum { FAR = 10 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        bool touch = token_among(tokens, i, touches, COUNT(touches));
        if (!touch && !token_among(tokens, i, sniffs, COUNT(sniffs))) continue;
        if (r->scope.stance[i] & governed) continue;
        size_t end = scope_sentence_end(&r->scope, i);
        for (size_t at = i + 1; at <= end && at < i + FAR && at < tokens->count; at++) {
            bool parted = tokens->at[at - 1].stop != STOP_NONE || token_is(tokens, at - 1, "and");
            size_t n = parted ? token_longest(tokens, at, outcomes, COUNT(outcomes)) : 0;
            if (!n || !ends(tokens, at + n)) continue;
            const char *part = felt_part(r, i, at);
            if (touch) {
                tell(r, "chip", part, at, at + n);
            } else {
                tell(r, "odor-musty", NULL, at, at + n);
                tell(r, "odor-smoke", NULL, at, at + n);
            }
            i = at + n - 1;
            break;
        }
    }
}
