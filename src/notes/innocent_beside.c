// SPDX-License-Identifier: MIT
// Words of a fault that only tell more of the one beside them: how far it goes, how it came about.
#include "notes/any.h"
#include "notes/beside.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_kind(const struct fault_hit *hit, const char *id) {
    for (size_t k = 0; k < hit->kind_count; k++)
        if (text_same(hit->kinds[k]->rule.id, id)) return true;
    return false;
}

// "Some beads are missing, patch the size of a nickel": how much of it is gone, and no piece put on.
static bool is_extent(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const losses[] = {"missing", "gone",   "lost",   "worn",  "off",    "bare",   "bald",
                                         "thin",    "rubbed", "flaked", "faded", "moth",   "moths",  "eaten",
                                         "eat",     "loss",   "wear",   "shed",  "peeled", "lifted", "chewed",
                                         "ate",     "fallen", "came",   "come"};
    static const char *const sizes[] = {"the size", "as big", "about", "size",    "maybe",     "roughly",
                                        "near",     "at",     "on",    "by",      "no bigger", "the",
                                        "half",     "in",     "under", "smaller", "bigger"};
    enum { BACK = 14 };
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    if (hit->to != i + 1 || !ANY(tokens, i, "patch", "patches", "spot")) return false;
    if (!is_kind(hit, "darned-patched") && !is_kind(hit, "glued-repair")) return false;
    while (i > 0 && ANY(tokens, i - 1, "a", "one", "small", "big", "in", "little", "large")) i--;
    if (i == 0 || (tokens->at[i - 1].stop != STOP_COMMA && i == hit->from) ||
        !token_longest(tokens, hit->to, sizes, COUNT(sizes)))
        return false;
    for (size_t n = 0; i > 0 && n < BACK && tokens->at[i - 1].stop < STOP_SENTENCE; i--, n++) {
        if (ANY(tokens, i - 1, "with", "has", "and")) return false;
        if (token_among(tokens, i - 1, losses, COUNT(losses))) return true;
    }
    return false;
}

// "Red has run into the cream, must have been washed wrong": how it came about.
static bool is_wash(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "size-changed") || !ANY(tokens, hit->from, "washed", "dried", "laundered") ||
        !ANY(tokens, hit->to - 1, "wrong", "hot", "badly"))
        return false;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from >= start && r->hits[k].to <= hit->from) return true;
    return false;
}

// "The thread looks old but it held": of a part it tells its years, and nobody asks who made it.
static bool is_old_part(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    return is_kind(hit, "authenticity-unverified") && ANY(tokens, i, "look", "looks") &&
           token_is(tokens, i + 1, "old") && i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
           r->note->taken[i - 1] != TAKEN_TYPE && (r->part[i - 1] || spot_plain_noun(r, i - 1));
}

// "The waistband is stretched out and has no snap left": what is slack was told.
static bool is_slack_again(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if ((!is_kind(hit, "leather-crack") && !is_kind(hit, "rubber-perished")) ||
        !ANY(tokens, hit->from + 1, "snap", "stretch", "spring", "bounce", "give"))
        return false;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->from; i++)
        if (ANY(tokens, i, "stretched", "slack", "baggy", "saggy") && !(r->scope.stance[i] & STANCE_DENIED))
            return true;
    return false;
}

// "Two drawers and both work": of what opens and shuts on goods that do nothing themselves.
static bool is_of_fastening(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const parts[] = {
        "lock",    "locks",   "latch", "latches", "drawer", "drawers", "door",    "doors",  "zipper",
        "zippers", "zip",     "zips",  "clasp",   "clasps", "catch",   "catches", "buckle", "buckles",
        "snap",    "snaps",   "hinge", "hinges",  "wheel",  "wheels",  "casters", "pocket", "pockets",
        "leaves",  "closure", "key",   "keys",    "sash",   "lid",     "lids"};
    enum { BACK = 12 };
    const struct tokens *tokens = &r->note->tokens;
    bool all = false;
    for (size_t i = hit->from; i < hit->to; i++) all |= ANY(tokens, i, "both", "all");
    if (!all || hit->from == 0 || tokens->at[hit->from - 1].stop != STOP_NONE) return false;
    if (!is_kind(hit, "working-tested") || running_can(r->note) ||
        !ANY(tokens, hit->to - 1, "work", "works", "working", "fine", "good"))
        return false;
    for (size_t i = hit->from, n = 0; i > 0 && n < BACK && tokens->at[i - 1].stop < STOP_SENTENCE; i--, n++)
        if (token_among(tokens, i - 1, parts, COUNT(parts))) return true;
    return false;
}

// "Starched nice and stiff": so on purpose.
static bool is_starched(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, hit->to - 1, "stiff", "crisp", "hard")) return false;
    for (size_t i = hit->from; i > 0 && i + 4 > hit->from && tokens->at[i - 1].stop == STOP_NONE; i--)
        if (ANY(tokens, i - 1, "starched", "starch")) return true;
    return false;
}

// "Bend the lead and the rubber comes off", "comes off in crumbs": what one does to see it, and what it comes
// to.
static bool is_of_trial(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    if (hit->to != i + 1) return false;
    bool opens =
        i == 0 || tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "you", "if", "and", "when");
    if (is_kind(hit, "dent-bend") && ANY(tokens, i, "bend", "dent"))
        return opens && ANY(tokens, i + 1, "the", "it", "them", "a", "its", "your") &&
               tokens->at[i].stop == STOP_NONE;
    return is_kind(hit, "dust-grime") && ANY(tokens, i, "crumbs") && i > 0 &&
           ANY(tokens, i - 1, "in", "to", "into") && tokens->at[i - 1].stop == STOP_NONE;
}

bool fault_is_beside(const struct fault_reader *r, const struct fault_hit *hit) {
    return is_extent(r, hit) || is_wash(r, hit) || is_old_part(r, hit) || is_slack_again(r, hit) ||
           is_of_fastening(r, hit) || is_starched(r, hit) || is_of_trial(r, hit);
}
