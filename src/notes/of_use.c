// SPDX-License-Identifier: MIT
// Words of a fault that tell what a thing is made to do, or what was done with it before it was sold.
#include "notes/of_use.h"

#include <string.h>

#include "notes/any.h"
#include "notes/place.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// The subject before the verb at `i`: the word in front of it, adverbs aside.
static size_t subject_of(const struct tokens *tokens, size_t i) {
    while (i > 1 && tokens->at[i - 1].stop == STOP_NONE &&
           ANY(tokens, i - 1, "still", "also", "now", "just", "both", "all", "and", "even", "always"))
        i--;
    return i > 0 && tokens->at[i - 1].stop == STOP_NONE ? i - 1 : SIZE_MAX;
}

// "Dial spins round and comes back", "the reel turns", "castors swivel": that is what it is for, unless it is
// said to do so where it should not.
static bool moves_by_design(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const movers[] = {
        "dial",      "dials",   "wheel",  "wheels",      "platter",  "turntable", "fan",      "fans",
        "propeller", "reel",    "reels",  "spool",       "spools",   "crank",     "castor",   "castors",
        "caster",    "casters", "globe",  "roller",      "rollers",  "rotor",     "spindle",  "pulley",
        "pulleys",   "chuck",   "drum",   "impeller",    "flywheel", "bearing",   "bearings", "cylinder",
        "carousel",  "motor",   "bobbin", "weathervane", "vane",     "sails",     "stylus",   "record",
        "shaft",     "mandrel", "seat",   "beaters",     "gears",    "cogs",      "dasher",   "winder"};
    static const char *const excess[] = {"freely",  "loosely", "easily", "loose",   "in",   "on",
                                         "without", "when",    "but",    "instead", "with", "off"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "loose-part")) return false;
    size_t verb = hit->from;
    while (verb < hit->to && !ANY(tokens, verb, "spins", "spin", "turns", "turn", "rotates", "rotate",
                                  "swivels", "swivel", "revolves", "revolve", "twirls", "spinning"))
        verb++;
    if (verb == hit->to) return false;
    size_t subject = verb > hit->from ? verb - 1 : subject_of(tokens, verb);
    if (subject == SIZE_MAX) return false;
    const char *type = r->note->record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    // The knob of a brace is turned in the hand.
    bool of_brace =
        type && text_same(head ? head + 1 : type, "brace") && ANY(tokens, subject, "knob", "head", "handle");
    if (!of_brace && !token_among(tokens, subject, movers, COUNT(movers))) return false;
    return !token_among(tokens, hit->to, excess, COUNT(excess)) || tokens->at[hit->to - 1].stop != STOP_NONE;
}

// "Repair numbers scratched inside", "a repair ticket": of a paper or a mark, not of a mend.
static bool is_repair_of_paper(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const papers[] = {"number",  "numbers", "mark",    "marks",   "bill",    "bills",
                                         "receipt", "ticket",  "tickets", "tag",     "tags",    "label",
                                         "labels",  "stamp",   "shop",    "man",     "date",    "dates",
                                         "note",    "notes",   "slip",    "manual",  "service", "log",
                                         "sticker", "card",    "book",    "history", "records", "invoice"};
    const struct tokens *tokens = &r->note->tokens;
    return hit->kinds[0]->class == CLASS_REPAIR &&
           ANY(tokens, hit->to - 1, "repair", "repairer's", "repairs") &&
           tokens->at[hit->to - 1].stop == STOP_NONE && token_among(tokens, hit->to, papers, COUNT(papers));
}

// "In good nick", "both in great nick": how well it has kept.
static bool is_state_of_keeping(const struct tokens *tokens, const struct fault_hit *hit) {
    return hit->to == hit->from + 1 && hit->from > 0 && ANY(tokens, hit->from, "nick", "order", "shape") &&
           ANY(tokens, hit->from - 1, "good", "great", "decent", "fair", "nice", "lovely", "fine",
               "excellent", "reasonable", "tidy", "better", "best", "perfect", "super", "cracking", "sound");
}

// "Top of his crook is broken off and lost": the upper end of it.
static bool is_top_of(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "missing-lid")) return false;
    for (size_t i = hit->from; i + 1 < hit->to; i++)
        if (ANY(tokens, i, "top", "tops") && ANY(tokens, i + 1, "of", "inch", "half", "end", "part", "bit"))
            return !ANY(tokens, i + 2, "it", "this", "two", "three");
    return false;
}

// "The base is ground flat", "bottom ground and polished": how glass is finished, where no chip is told.
static bool is_ground_by_maker(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { BACK = 5 };
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "rim-ground")) return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(tokens, i, "rim", "lip", "edge", "chip", "chips", "nick", "out", "down")) return false;
    for (size_t i = hit->from, n = 0; i > 0 && n < BACK && tokens->at[i - 1].stop == STOP_NONE; i--, n++)
        if (ANY(tokens, i - 1, "base", "bottom", "underside", "back", "pontil", "foot"))
            return !ANY(tokens, i - 2, "rim", "edge") && !ANY(tokens, hit->to, "to", "where");
    return false;
}

// "I ran my nail over every point", "ran a magnet along it": how it was looked at.
static bool is_ran_over(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return text_same(hit->kinds[0]->rule.id, "working-tested") && ANY(tokens, hit->from, "ran", "run") &&
           ANY(tokens, hit->from + 1, "my", "a", "your", "the", "his", "her") &&
           ANY(tokens, hit->from + 2, "nail", "finger", "fingers", "fingernail", "thumb", "thumbnail", "hand",
               "hands", "magnet", "cloth", "duster", "comb", "coin", "pin", "brush", "eye", "eyes", "torch",
               "light", "tongue", "palm");
}

// "The alarm buzzes", of a buzzer: what it is for.
static bool is_sound_of_alarm(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->kinds[0]->class != CLASS_FUNCTION ||
        !ANY(tokens, hit->from, "buzzes", "buzz", "buzzed", "buzzing"))
        return false;
    size_t subject = subject_of(tokens, hit->from);
    if (subject != SIZE_MAX &&
        ANY(tokens, subject, "alarm", "alarms", "buzzer", "doorbell", "bell", "intercom"))
        return true;
    const char *type = r->note->record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    if (!type) return false;
    head = head ? head + 1 : type;
    return text_same(head, "doorbell") || text_same(head, "buzzer") || text_same(head, "clippers") ||
           text_same(head, "shaver") || text_same(head, "razor");
}

// "I borrowed a key to try it: it ticks for a minute", "we have no records so couldn't try it": of the thing,
// and not of what it was tried with.
void fault_drop_means(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->kinds[0]->class != CLASS_FUNCTION || spot->part_from == spot->part_to ||
        !ANY(tokens, spot->part_to - 1, "key", "battery", "batteries", "record", "records", "tape", "tapes",
             "film", "bulb", "charger", "disc", "fuel", "paraffin", "reel", "slides"))
        return;
    bool of_it =
        (hit->from > 0 && token_is(tokens, hit->from - 1, "it")) || ANY(tokens, hit->from, "it", "then");
    of_it |= ANY(tokens, hit->to - 1, "it", "try", "test") || ANY(tokens, hit->to, "it");
    if (of_it && !ANY(tokens, spot->part_to, "is", "was", "doesn't", "won't"))
        spot->part_from = spot->part_to = 0;
}

// "I did wipe it down", "gave it a wipe": done before it was sold.
static bool is_wiped_by_seller(const struct tokens *tokens, const struct fault_hit *hit) {
    if (hit->kinds[0]->class != CLASS_DIRT || hit->from == 0) return false;
    return ANY(tokens, hit->from, "wipe", "wiped", "dusted") &&
           ANY(tokens, hit->from - 1, "i", "did", "we", "i've", "we've", "just");
}

// "Worn to two weddings", "only worn around the house", "I've worn it a week": that somebody had it on. "Worn
// at the cuffs", "worn to a thread" tells wear.
static bool is_put_on(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const ids[] = {"clothing", "footwear", "jewelry", "clocks-watches", "sports", "bags"};
    static const char *const its[] = {"it", "them", "this", "these", "those", "him", "her"};
    static const char *const heres[] = {"house", "home",   "garden", "office", "town",   "village",
                                        "flat",  "summer", "bed",    "winter", "street", "indoors"};
    static const char *const ends[] = {"thread", "threads", "holes", "nothing", "bits",   "shreds", "bare",
                                       "pieces", "nap",     "stubs", "backing", "stitch", "weave",  "canvas"};
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    size_t next = hit->to;
    if (!text_same(hit->kinds[0]->rule.id, "wear-unspecified") || !token_is(tokens, next - 1, "worn") ||
        next >= tokens->count || tokens->at[next - 1].stop != STOP_NONE)
        return false;
    if (token_among(tokens, next, its, COUNT(its))) return true;
    bool worn = false;
    for (size_t i = 0; family && i < COUNT(ids); i++) worn |= text_same(family->rule.id, ids[i]);
    if (!worn) return false;
    if (ANY(tokens, next, "the", "just", "only", "maybe", "about", "perhaps", "more", "less")) next++;
    if (ANY(tokens, next, "once", "twice", "indoors", "outdoors", "with", "when", "under", "over", "by"))
        return true;
    const char *where;
    bool leads = ANY(tokens, next, "to", "for", "at", "on", "in", "around", "about", "round");
    if (!leads)
        return degrees_number(tokens, next) &&
               ANY(tokens, next + 1, "times", "days", "evenings", "seasons", "winters", "summers", "hours");
    bool home = false;
    for (size_t i = next + 1; i < tokens->count && i <= next + WORDS_MOST; i++) {
        if (token_among(tokens, i, ends, COUNT(ends))) return false;
        home |= token_among(tokens, i, heres, COUNT(heres));
        if (tokens->at[i].stop != STOP_NONE || home) break;
        if (r->part[i] || r->scope.fault[i]) return false;
    }
    bool bound = ANY(tokens, next + 1, "the", "one", "both", "its"); // "on the palms"
    return home || ANY(tokens, next, "to", "for") || (!bound && !place_at(r->note, next, &where));
}

// "Put a new battery in", "new bulb": what is used up and put in anew is no part that was replaced.
bool use_is_consumable(const struct tokens *tokens, size_t from, size_t to) {
    static const char *const used[] = {"battery", "batteries", "bulb", "bulbs", "fuse", "cell", "cells"};
    static const char *const parts[] = {"movement", "cover", "door",      "holder",      "lid",
                                        "tray",     "pack",  "terminals", "compartment", "box",
                                        "clip",     "hatch", "works",     "socket",      "contacts"};
    for (size_t i = from; i <= to && i < tokens->count; i++) {
        if (i == to && (i == 0 || tokens->at[i - 1].stop != STOP_NONE)) break;
        if (token_among(tokens, i, used, COUNT(used)))
            return !token_among(tokens, i + 1, parts, COUNT(parts));
    }
    return false;
}

// "Typed a letter on it": none that is engraved.
static bool is_typed(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { BACK = 4 };
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "monogram") || !ANY(tokens, hit->from, "letter", "letters"))
        return false;
    for (size_t i = hit->from; i > 0 && i + BACK > hit->from; i--)
        if (ANY(tokens, i - 1, "typed", "wrote", "write", "type", "written", "posted", "open", "opens"))
            return true;
    return false;
}

// "Hemmed all our curtains on it": what was sewn with the machine.
static bool is_sewn_with_it(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 5 };
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "hem-altered")) return false;
    for (size_t i = hit->from; i < hit->to + FAR && i + 1 < tokens->count; i++) {
        if (ANY(tokens, i, "on", "with") && ANY(tokens, i + 1, "it", "this") && i >= hit->from + 1)
            return true;
        if (tokens->at[i].stop != STOP_NONE) return false;
    }
    return false;
}

// "Bubble is clear" of a level: what it shows level by.
static bool is_bubble_of_level(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return text_same(hit->kinds[0]->rule.id, "firing-flaw") &&
           ANY(tokens, hit->to - 1, "bubble", "bubbles") &&
           kind_note_has(r, "level levels plumb inclinometer sextant gunsight");
}

// "Rubbed with mineral oil", "rubbed down with a soft cloth": how it was cared for.
static bool is_rubbed_for_care(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const cares[] = {"oil",   "oils",   "wax",      "beeswax",     "polish",
                                        "cloth", "paste",  "soap",     "salt",        "vinegar",
                                        "lemon", "duster", "rag",      "flannel",     "chamois",
                                        "cream", "butter", "vaseline", "conditioner", "baking"};
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to;
    if (!text_same(hit->kinds[0]->rule.id, "wear-rub") || !ANY(tokens, at - 1, "rubbed", "rub", "rubbing"))
        return false;
    while (ANY(tokens, at, "it", "them", "down", "in", "over", "all", "well")) at++;
    if (!ANY(tokens, at, "with", "in")) return false;
    for (size_t k = at; k < tokens->count && k <= at + WORDS_MOST; k++) {
        if (token_among(tokens, k, cares, COUNT(cares))) return true;
        if (tokens->at[k].stop != STOP_NONE) break;
    }
    return false;
}

// "I got tired of scrubbing": the seller was.
static bool is_tired_seller(const struct tokens *tokens, const struct fault_hit *hit) {
    return ANY(tokens, hit->to - 1, "tired") && ANY(tokens, hit->to, "of") &&
           !ANY(tokens, hit->to + 1, "look", "looks", "aspect");
}

// "Broke in good", "nicely broken in": worn until it was soft.
static bool is_broken_in(const struct tokens *tokens, const struct fault_hit *hit) {
    static const char *const behind[] = {"good",      "well",        "nice", "nicely", "just",
                                         "already",   "and",         "now",  "enough", "right",
                                         "perfectly", "comfortably", "soft", "by"};
    size_t at = hit->to;
    if (!ANY(tokens, at - 1, "broke", "broken", "breaking", "break") || !ANY(tokens, at, "in")) return false;
    return at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE ||
           token_among(tokens, at + 1, behind, COUNT(behind));
}

bool fault_is_of_use(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return moves_by_design(r, hit) || is_repair_of_paper(r, hit) || is_state_of_keeping(tokens, hit) ||
           is_top_of(r, hit) || is_ground_by_maker(r, hit) || is_ran_over(r, hit) ||
           is_wiped_by_seller(tokens, hit) || is_sound_of_alarm(r, hit) || is_put_on(r, hit) ||
           (text_same(hit->kinds[0]->rule.id, "replaced-part") &&
            use_is_consumable(tokens, hit->from, hit->to)) ||
           is_typed(r, hit) || is_sewn_with_it(r, hit) || is_bubble_of_level(r, hit) ||
           is_rubbed_for_care(r, hit) || is_tired_seller(tokens, hit) || is_broken_in(tokens, hit) ||
           use_is_effect(r, hit);
}
