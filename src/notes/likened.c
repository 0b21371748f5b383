// SPDX-License-Identifier: MIT
// "Crack in the foot, you can put a finger in it", "scratched, down to the wood", "a stain, a patch the size
// of a hand": behind a fault such words tell how bad it is, and name no second one.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { BACK_MOST = 7, NO_MOST = 3 };

// "Enough to snag a cloth", "you could get a finger in it", "wipes off on your finger".
static bool is_effect(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {
        "enough to",        "you can put",      "you could put", "you can get",    "you could get",
        "i can get",        "i could get",      "you can poke",  "you could poke", "you could lose",
        "you can see down", "i can put",        "i could put",   "you can stick",  "you could stick",
        "flake like a",     "flake the size",   "splits when",   "tears when",     "rips when",
        "splits if",        "daylight through", "daylight in",   "daylight there", "wipes off on",
        "wipes off onto",   "rubs off on",      "comes off on",  "comes off onto"};
    if (token_longest(tokens, i, cues, COUNT(cues))) return true;
    if (!token_is(tokens, i, "hold") || !ANY(tokens, i + 1, "it", "them")) return false;
    size_t at = i + 2 + (token_is(tokens, i + 2, "up") ? 1 : 0); // "to the window"
    return ANY(tokens, at, "to", "against") && ANY(tokens, at + 1, "the", "a");
}

// "A patch the size of a hand" of a stain is no patch that was sewn on.
static bool is_patch(const struct tokens *tokens, size_t i) {
    if (!token_is(tokens, i, "patch") || i == 0 || !ANY(tokens, i - 1, "a", "one")) return false;
    return ANY(tokens, i + 1, "the", "like", "about", "as", "roughly", "maybe", "bigger", "no", "around",
               "an") ||
           (i + 1 < tokens->count && tokens->at[i + 1].kind == TOKEN_FIGURE);
}

// "Down to the wood", "through to brass": how deep.
static bool is_depth(const struct tokens *tokens, size_t i) {
    size_t at = i + (ANY(tokens, i, "right", "all", "clean") ? 1 : 0);
    at += token_phrase(tokens, at, "the way");
    if (!ANY(tokens, at, "down", "through") || !token_is(tokens, at + 1, "to")) return false;
    at += 2;
    while (ANY(tokens, at, "the", "bare", "white", "base")) at++;
    return ANY(tokens, at, "metal", "wood", "iron", "brass", "steel", "copper", "primer", "tin", "canvas",
               "alloy", "timber");
}

static bool is_likeness(const struct fault_reader *r, const struct fault_hit *hit, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (is_effect(tokens, i) || is_depth(tokens, i) || is_patch(tokens, i)) return true;
    bool web = ANY(tokens, hit->to - 1, "cobweb", "cobwebs", "web", "hair", "thread");
    if (web && (ANY(tokens, i, "like", "as", "than"))) return true; // "fine as a cobweb"
    bool alone = i == hit->from && i > 0 && tokens->at[i - 1].stop == STOP_COMMA &&
                 (hit->to >= tokens->count || tokens->at[hit->to].stop != STOP_NONE);
    if (!alone || !ANY(tokens, i, "hairline", "hairlines"))
        return alone && ANY(tokens, i, "pinpricks", "pinprick");
    size_t at = i - 1; // "a split in the seat, hairline"; but "chip to the rim, hairline"
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           !ANY(tokens, at - 1, "crack", "cracks", "cracked", "split", "splits", "line", "lines", "fracture",
                "fractures", "check", "checks"))
        at--;
    return at > 0 && tokens->at[at - 1].stop == STOP_NONE;
}

// "Might come off, I haven't tried": to clean it, and not to use it.
static bool is_cleaning(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 9 };
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "untested")) return false;
    for (size_t i = hit->from; i > 0 && hit->from - i < FAR && tokens->at[i - 1].stop < STOP_SENTENCE; i--)
        if (ANY(tokens, i - 1, "come", "wash", "clean", "polish", "shift", "lift", "wipe", "brush", "rub",
                "air") &&
            i > 1 && ANY(tokens, i - 2, "might", "may", "should", "could", "would", "probably", "will"))
            return true;
    return false;
}

// "Flex frayed, copper showing", "one leg bent, just off true": the same fault by another word.
static bool is_same(const struct fault_reader *r, const struct fault_hit *before,
                    const struct fault_hit *hit) {
    static const char *const pairs[][2] = {{"cord-frayed", "plate-wear"},
                                           {"cord-frayed", "fraying"},
                                           {"tarnish", "yellowing"},
                                           {"hairline", "inside-not-inspected"}, // "hasn't opened"
                                           {"crack-through", "inside-not-inspected"},
                                           {"wood-split", "inside-not-inspected"},
                                           {"crack", "inside-not-inspected"}};
    enum { SURE = 3 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t k = 0; k < COUNT(pairs); k++)
        if (text_same(before->kinds[0]->rule.id, pairs[k][0]) &&
            text_same(hit->kinds[0]->rule.id, pairs[k][1]) &&
            (k < SURE || token_is(tokens, hit->to - 1, "opened")))
            return true;
    return token_is(tokens, hit->to - 1, "true") && tokens->at[before->to].stop == STOP_COMMA;
}

static bool is_denied(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->to; i > 0 && i + NO_MOST > hit->from; i--) {
        if (i <= hit->from && tokens->at[i - 1].stop != STOP_NONE) return false;
        const char *word = tokens->at[i - 1].fold;
        if (ANY(tokens, i - 1, "no", "not", "never", "without", "any", "nor") || strstr(word, "n't"))
            return true;
    }
    return hit->denied;
}

void faults_drop_likeness(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    size_t kept = 0;
    for (size_t k = 0; k < r->hit_count; k++) {
        const struct fault_hit *hit = &r->hits[k], *before = kept ? &r->hits[kept - 1] : NULL;
        bool likened = false;
        size_t i = hit->from;
        for (size_t n = 0; before && !likened && n < BACK_MOST && i >= before->to; n++, i--) {
            if (i < hit->from && tokens->at[i].stop != STOP_NONE) break;
            likened = is_likeness(r, hit, i);
        }
        likened |= before && (is_cleaning(r, hit) || is_same(r, before, hit));
        for (size_t at = before ? before->to : 0; likened && at < hit->from; at++)
            likened = tokens->at[at].stop < STOP_SENTENCE;
        likened = likened && before->kinds[0]->form == FAULT && !is_denied(r, before);
        if (!likened) r->hits[kept++] = *hit;
    }
    r->hit_count = kept;
}
