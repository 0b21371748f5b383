// SPDX-License-Identifier: MIT
// "The cup that goes over the top is missing", "the handle of the lid has gone", "spare spool shown on the
// label is not in the box": the part that lacks stands before what tells which one it is.
#include <string.h>

#include "notes/any.h"
#include "notes/lacking.h"
#include "notes/traces.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

enum { FAR = 9 };

// What is worn away is no part that lacks.
static bool is_surface(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "tin",       "tinning",   "gilding", "gilt",    "gold",   "paint",      "pattern",   "print",
        "finish",    "lacquer",   "polish",  "plating", "plate",  "decoration", "varnish",   "design",
        "lettering", "transfer",  "color",   "colour",  "glaze",  "enamel",     "silvering", "nap",
        "pile",      "leather",   "veneer",  "bits",    "bit",    "piece",      "pieces",    "corner",
        "corners",   "end",       "ends",    "edge",    "top",    "tip",        "page",      "pages",
        "numbers",   "line",      "lines",   "stone",   "stones", "rubber",     "elastic",   "spring",
        "works",     "stitching", "thread",  "side",    "lining"};
    return AMONG(tokens, i, words);
}

// "That goes over the top", "shown on the label", "of the lid", "for it": what may stand between.
static bool opens(const struct tokens *tokens, size_t i, bool *clause) {
    static const char *const relative[] = {"that", "which", "who"};
    static const char *const places[] = {"of",    "for",   "from",    "on",     "in",     "over",
                                         "at",    "to",    "off",     "under",  "inside", "round",
                                         "above", "below", "between", "behind", "beside"};
    static const char *const shown[] = {"mentioned", "shown",       "listed",  "pictured", "supplied",
                                        "described", "illustrated", "holding", "securing", "covering"};
    static const char *const owed[] = {"should",     "would", "once",  "came", "had",
                                       "originally", "used",  "ought", "needs"};
    *clause = AMONG(tokens, i, relative) || // "the shade it should have isn't here"
              (ANY(tokens, i, "it", "they") && AMONG(tokens, i + 1, owed));
    return *clause || AMONG(tokens, i, places) || AMONG(tokens, i, shown);
}

static void read_subject(struct fault_reader *r, size_t i) {
    static const char *const verbs[] = {"is",     "are", "has", "have", "was", "were", "isn't",
                                        "aren't", "had", "but", "and",  "or",  "with", "so"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    bool start = i == 0 || tokens->at[i - 1].stop != STOP_NONE ||
                 ANY(tokens, i - 1, "the", "its", "but", "and", "a", "one", "that", "little", "though");
    if (!start || !part_named_at(r, i, &part) || !r->part[part.to - 1] || is_surface(tokens, part.to - 1))
        return;
    bool clause;
    if (part.to >= tokens->count || tokens->at[part.to].stop != STOP_NONE || !opens(tokens, part.to, &clause))
        return;
    for (size_t k = part.from; k < part.to; k++)
        if (r->scope.fault[k] && !r->part[k]) return;
    bool inner = clause; // a relative clause has one verb of its own
    for (size_t at = part.to + 1; at < part.to + FAR && at < tokens->count; at++) {
        size_t n = 0;
        if (tokens->at[at].stop != STOP_NONE) return;
        if (at > part.to + 1 && lacking_said_behind(&r->scope, at, &n) && !absent_turns_into(r, at + n)) {
            if (token_is(tokens, at + n - 1, "missing") && n > 1 && ANY(tokens, at, "not", "isn't", "aren't"))
                return;
            if (r->scope.stance[i] & (STANCE_OTHER | STANCE_WITHDRAWN | STANCE_UNKNOWN)) return;
            for (size_t k = 0; k < r->hit_count; k++)
                if (r->hits[k].from > part.to && r->hits[k].to <= at + n &&
                    r->hits[k].kinds[0]->form == ABSENCE) {
                    part_close(r, r->hits[k].from, r->hits[k].to); // "box is missing" of the lid of the box
                    const struct flaw *loose = ruleset_flaw(r->note->rules, "loose-part");
                    if (loose) r->hits[k].kinds[0] = loose;
                }
            part_tell_missing(r, &part, i, at + n);
            return;
        }
        if (r->scope.fault[at] && !r->part[at]) return;
        if (AMONG(tokens, at, verbs)) {
            if (!inner) return;
            inner = false;
        }
    }
}

void read_subjects(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++)
        if (r->note->tokens.at[i].kind == TOKEN_WORD) read_subject(r, i);
}
