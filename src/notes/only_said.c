// SPDX-License-Identifier: MIT
// Words of a fault in a clause that tells none: what goods are made to do ("catches the grease"), holes that
// are made to be holes, what weather a thing stands, what was taken off, and what happened to somebody
// else's.
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/traces.h"
#include "text/order.h"

static bool is_of(const struct fault_reader *r, const char *const *ids, size_t count) {
    const struct family *family = r->note->record->family;
    for (size_t i = 0; family && i < count; i++)
        if (text_same(family->rule.id, ids[i])) return true;
    return false;
}
#define OF(r, ...)                                                                                           \
    is_of(r, (const char *const[]){__VA_ARGS__}, sizeof((const char *const[]){__VA_ARGS__}) / sizeof(char *))

// One of the words stands within `far` tokens behind the hit, in its sentence.
#define BEHIND(r, hit, far, ...)                                                                             \
    (word_behind(r, hit, far, #__VA_ARGS__, (const char *const[]){__VA_ARGS__, NULL}))
static bool word_behind(const struct fault_reader *r, const struct fault_hit *hit, size_t far,
                        const char *name, const char *const *words) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t k = hit->to; k < hit->to + far && k < tokens->count; k++) {
        if (tokens->at[k].stop >= STOP_SENTENCE) return false;
        if (any_of(tokens, k, name, words)) return true;
    }
    return false;
}

// "My neighbors' set went amber but these look fresh".
static bool is_of_others(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { BACK = 6, FAR = 8 };
    const struct tokens *tokens = &r->note->tokens;
    bool theirs = false;
    for (size_t i = hit->from, n = 0; i > 0 && n < BACK && tokens->at[i - 1].stop < STOP_SENTENCE; i--, n++)
        theirs |= ANY(tokens, i - 1, "neighbors", "neighbor's", "neighbours", "sisters", "friends", "others",
                      "moms") &&
                  i > 1 && ANY(tokens, i - 2, "my", "the", "our", "her", "his");
    if (!theirs) return false;
    for (size_t k = hit->to; k < hit->to + FAR && k < tokens->count && tokens->at[k].stop < STOP_SENTENCE;
         k++)
        if (ANY(tokens, k, "but") && ANY(tokens, k + 1, "these", "this", "mine", "ours", "it", "not"))
            return true;
    return false;
}

bool fault_is_only_said(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const char *id = hit->kinds[0]->rule.id;
    size_t from = hit->from, last = hit->to - 1;
    if (is_of_others(r, hit)) return true;
    if (text_same(id, "fading") && token_is(tokens, last, "fade") && from > 0 &&
        ANY(tokens, from - 1, "will", "that'll", "it'll", "they'll", "should", "would", "might", "may", "to",
            "can"))
        return true; // "a smell that'll fade": not yet
    if (text_same(id, "broken-part") && token_is(tokens, last, "off") && last > from &&
        ANY(tokens, last - 1, "brush", "wash", "wipe", "scrub", "rub"))
        return true; // "mud on the toe won't brush off"
    if (text_same(id, "hem-altered") && token_is(tokens, from, "up") &&
        ANY(tokens, from + 1, "along", "near", "by", "around", "at", "close"))
        return true; // "dots up along the hem": where
    if (text_same(id, "not-working") && token_is(tokens, last, "dead") &&
        ANY(tokens, hit->to, "grey", "gray", "white", "black", "flat", "straight", "level", "center",
            "centre", "calm"))
        return true; // "a dead gray cast"
    bool grease =
        text_same(id, "grease-film") || text_same(id, "sticky-plastic") || text_same(id, "dust-grime");
    if (grease && from > 1 &&
        (ANY(tokens, from - 1, "catches", "catch", "traps", "collects", "makes", "make", "cuts", "removes",
             "keeps") ||
         ANY(tokens, from - 2, "catches", "catch", "traps", "collects", "makes", "make", "cuts", "removes",
             "keeps")))
        return true; // what it is for
    if (text_same(id, "hole") && ANY(tokens, from, "light", "lights", "daylight") &&
        token_is(tokens, last, "through") && OF(r, "lighting", "glassware", "ceramics", "decor"))
        return true; // "lets the light through"
    if (text_same(id, "water-damage") && ANY(tokens, from, "rained", "rain", "wet", "soaked", "snowed") &&
        BEHIND(r, hit, 7, "care", "mind", "hurt", "harm", "bother", "fine", "made", "waterproof", "dry"))
        return true; // "it's been rained on and doesn't care"
    if (text_same(id, "tape-repair") && ANY(tokens, last, "tape", "taped") &&
        BEHIND(r, hit, 9, "took", "peeled", "removed", "off"))
        return true; // "tape around the handle for years, took it off"
    if (text_same(id, "cloudy-glass") && ANY(tokens, last, "dishwasher") &&
        BEHIND(r, hit, 6, "never", "fine", "clean", "ok", "okay", "still", "fit", "too", "perfect", "clear"))
        return true; // "all been through the dishwasher, you'd never know"
    return false;
}

// "Chalky flakes" in a kettle, holes "plugged with white": what the water left; armpits that are stiff with
// sweat.
const struct flaw *kind_of_leavings(const struct fault_reader *r, const struct fault_hit *hit,
                                    const struct flaw *kind) {
    const struct tokens *tokens = &r->note->tokens;
    const char *id = kind->rule.id, *meant = NULL;
    size_t before = hit->from > 0 ? hit->from - 1 : 0;
    bool chalk = ANY(tokens, before, "chalky", "limey", "lime", "scaly", "mineral", "calcium");
    if (text_same(id, "chip") && chalk && ANY(tokens, hit->from, "flakes", "flake", "bits", "chips"))
        meant = "mineral-deposit";
    if (text_same(id, "hole") &&
        BEHIND(r, hit, 7, "plugged", "clogged", "blocked", "furred", "stopped", "caked") &&
        BEHIND(r, hit, 10, "white", "lime", "limescale", "scale", "chalk", "calcium", "minerals"))
        meant = "mineral-deposit";
    if (text_same(id, "seized") && OF(r, "clothing") && before > 0)
        for (size_t i = hit->from, n = 0; i > 0 && n < 8 && tokens->at[i - 1].stop < STOP_SENTENCE; i--, n++)
            if (ANY(tokens, i - 1, "armpits", "armpit", "underarms", "underarm", "pits"))
                meant = "sweat-stain";
    const struct flaw *other = meant ? ruleset_flaw(r->note->rules, meant) : NULL;
    return other ? other : kind;
}
