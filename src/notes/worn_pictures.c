// SPDX-License-Identifier: MIT
// What a thing shows wears like paint: "printed with lemons … the lemons are wearing off", "gold scrolls …
// gold is worn off at the front". Any noun may be a picture, so it counts as one only where the note has it
// before as what is on the thing. A word of a fault is then made of the verb alone, and all that reads one
// (how many, where, how bad) goes on as ever.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool goes_on(const struct tokens *tokens, size_t i) {
    return i > 0 && i < tokens->count && tokens->at[i - 1].stop == STOP_NONE;
}

// "Wearing off", "worn away", "mostly scrubbed off": the token behind; 0 if none.
static size_t worn_at(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"wearing", "worn",    "rubbing",  "rubbed",   "washing",
                                        "washed",  "flaking", "flaked",   "peeling",  "peeled",
                                        "wear",    "rub",     "scrubbed", "wore",     "scraped",
                                        "wash",    "flake",   "peel",     "scratched"};
    if (!AMONG(tokens, i, verbs) || !goes_on(tokens, i + 1)) return 0;
    return ANY(tokens, i + 1, "off", "away", "thin", "through") ? i + 2 : 0;
}

// The first of the helping words before the verb at `i`.
static size_t helpers_before(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "is",     "are",     "has",    "have",      "been",  "was",    "were",    "had",      "mostly",
        "nearly", "almost",  "partly", "half",      "all",   "a",      "bit",     "little",   "starting",
        "starts", "started", "start",  "beginning", "begun", "to",     "badly",   "slightly", "somewhat",
        "just",   "about",   "pretty", "also",      "quite", "mainly", "totally", "partially"};
    while (goes_on(tokens, i) && AMONG(tokens, i - 1, words)) i--;
    return i;
}

// Words that say of what stands beside them that it is on the thing.
static bool is_shown_by(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "printed", "painted", "decal", "decals", "picture", "pictures", "pattern", "design",
               "decorated", "showing", "etched", "enameled", "stenciled", "transfer", "print", "with",
               "depicting", "scene", "handpainted", "decoration", "motif", "logo", "lettering");
}

// Is the noun at `i` told before as what the thing shows?
static bool is_shown(const struct fault_reader *r, size_t i) {
    enum { FAR = 4 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t k = 0; k + 2 < i; k++) {
        if (strcmp(tokens->at[k].one, tokens->at[i].one) != 0) continue;
        for (size_t at = k, n = 0; at > 0 && n < FAR && tokens->at[at - 1].stop < STOP_CLAUSE; at--, n++)
            if (is_shown_by(tokens, at - 1)) return true;
        for (size_t at = k + 1; at < i && at <= k + FAR && tokens->at[at - 1].stop < STOP_COMMA; at++)
            if (is_shown_by(tokens, at) && !ANY(tokens, at, "with")) return true;
    }
    return false;
}

// Gold on a machine is paint or a transfer.
static bool is_gold_on_machine(const struct fault_reader *r, size_t i) {
    return ANY(&r->note->tokens, i, "gold", "gilt", "scrolls", "scrollwork", "pinstripes", "striping",
               "pinstriping", "stripes") &&
           kind_has_word("electrical tools crafts sports games-puzzles toys music",
                         r->note->record->family->rule.id);
}

static bool is_painted_goods(const struct fault_reader *r) {
    static const char on[] = "glassware ceramics kitchenware metalware toys holiday decor electrical tools "
                             "crafts games-puzzles sports lighting media clocks-watches music";
    const struct family *family = r->note->record->family;
    return family && kind_has_word(on, family->rule.id);
}

static bool is_taken(const struct fault_reader *r, size_t from, size_t to) {
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from < to && r->hits[k].to > from) return true;
    return false;
}

static void insert(struct fault_reader *r, const struct fault_hit *hit) {
    struct fault_hit *all = arena_array(r->note->arena, r->hit_count + 1, sizeof *all);
    size_t at = 0;
    while (at < r->hit_count && r->hits[at].from < hit->from) at++;
    for (size_t k = 0; k < r->hit_count; k++) all[k + (k >= at)] = r->hits[k];
    all[at] = *hit;
    r->hits = all;
    r->hit_count++;
}

void worn_pictures_gather(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "decoration-wear");
    if (!kind || !is_painted_goods(r)) return;
    for (size_t i = 2; i + 1 < tokens->count; i++) {
        size_t to = worn_at(tokens, i), from = to ? helpers_before(tokens, i) : 0;
        if (!from || !goes_on(tokens, from) || tokens->at[from - 1].kind != TOKEN_WORD ||
            !(is_shown(r, from - 1) || is_gold_on_machine(r, from - 1)) || is_taken(r, from - 1, to))
            continue;
        insert(r, &(struct fault_hit){.from = i, .to = to, .kinds = {kind}, .kind_count = 1});
    }
}
