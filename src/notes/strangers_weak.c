// SPDX-License-Identifier: MIT
// Words that name no fault where no word for the thing stands in their sentence: everyday verbs, what is lost
// by people, what others do all day, and orders.
#include "notes/any.h"
#include "notes/strangers.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// Everyday words that are a fault's beside a word for the thing, or where they are nearly all that is said.
static bool is_everyday(const struct telling *t) {
    static const char *const words[] = {"altered",
                                        "marriage of",
                                        "project",
                                        "flaps",
                                        "flapping",
                                        "rattling",
                                        "dim light",
                                        "migrated",
                                        "leached",
                                        "microscopic",
                                        "plucked",
                                        "bowing",
                                        "dimple",
                                        "dimples",
                                        "kinks",
                                        "urine",
                                        "penicillin",
                                        "molds",
                                        "undone",
                                        "uncovered",
                                        "slow",
                                        "marked",
                                        "jammed",
                                        "locked up",
                                        "gummed",
                                        "sheared",
                                        "wear and tear",
                                        "careworn",
                                        "rotten",
                                        "crumpled",
                                        "bruised",
                                        "freckled",
                                        "perspiration",
                                        "sweat",
                                        "engraved",
                                        "cut out",
                                        "cut short",
                                        "cut down",
                                        "made into a",
                                        "on his own",
                                        "on her own",
                                        "out of order",
                                        "burned out",
                                        "stopped at",
                                        "fell silent",
                                        "given up",
                                        "doesn't belong",
                                        "don't belong",
                                        "don't match",
                                        "don't dare",
                                        "don't know how to",
                                        "not heard",
                                        "take a chance",
                                        "as is",
                                        "tears when",
                                        "broken",
                                        "torn",
                                        "ripped",
                                        "slashed",
                                        "discoloration",
                                        "blackened",
                                        "turned down",
                                        "said to be",
                                        "reputed to be",
                                        "attributed to",
                                        "names of",
                                        "wrote the",
                                        "he drew",
                                        "she drew",
                                        "drew",
                                        "hum",
                                        "loose",
                                        "floppy",
                                        "slack",
                                        "slack in",
                                        "play in the",
                                        "wobbly",
                                        "rocky",
                                        "shaky",
                                        "rickety",
                                        "twisted",
                                        "curled up",
                                        "battered",
                                        "dented",
                                        "wrinkle",
                                        "wrinkles",
                                        "wrinkled",
                                        "crease",
                                        "writing",
                                        "handwriting",
                                        "marriage",
                                        "married",
                                        "associated",
                                        "attributed",
                                        "names of the",
                                        "name is",
                                        "his name",
                                        "her name",
                                        "their names",
                                        "former name",
                                        "names",
                                        "of property",
                                        "of the property",
                                        "of this property",
                                        "property of",
                                        "of personal property",
                                        "phone number",
                                        "rocks",
                                        "carbon",
                                        "tears",
                                        "tear",
                                        "flood",
                                        "flooded",
                                        "reluctant",
                                        "posted",
                                        "mailed",
                                        "canceled",
                                        "cancelled",
                                        "cancellation",
                                        "was sent",
                                        "opened",
                                        "seized",
                                        "clogged",
                                        "blocked",
                                        "converted",
                                        "conversion",
                                        "modified",
                                        "adapted",
                                        "drilled",
                                        "replaced",
                                        "replaced by",
                                        "replacement",
                                        "been replaced",
                                        "remnant",
                                        "partial",
                                        "buzzing",
                                        "intermittently",
                                        "moody",
                                        "lottery",
                                        "suspect",
                                        "moon",
                                        "dirt",
                                        "crumbs",
                                        "soot",
                                        "algae",
                                        "fungus",
                                        "spores",
                                        "tired",
                                        "dead",
                                        "fused",
                                        "broke",
                                        "break",
                                        "breaks",
                                        "shot",
                                        "snapped",
                                        "smashed",
                                        "shattered",
                                        "lipstick",
                                        "spilled",
                                        "spilt",
                                        "splash of",
                                        "splash",
                                        "splashed",
                                        "splashed with",
                                        "dropped a",
                                        "dropped the",
                                        "dropped her",
                                        "dropped their",
                                        "dropped his",
                                        "poured the",
                                        "poured a",
                                        "sticks",
                                        "stuck",
                                        "not to",
                                        "being.",
                                        "much later",
                                        "tries to",
                                        "went to",
                                        "every so often",
                                        "off and on",
                                        "on and off",
                                        "memory of something",
                                        "had been",
                                        "oil spill",
                                        "smear",
                                        "dribble",
                                        "leftover",
                                        "leftovers",
                                        "worn out",
                                        "pulled off",
                                        "pulled away",
                                        "broke off",
                                        "knocked off",
                                        "fell off",
                                        "dropped off",
                                        "struggles",
                                        "lifeless",
                                        "defunct",
                                        "scored",
                                        "wear",
                                        "worked hard",
                                        "hard life",
                                        "in a state",
                                        "bowed",
                                        "twisted",
                                        "fade",
                                        "faded away",
                                        "light",
                                        "cracked",
                                        "scraped",
                                        "keyed",
                                        "slit",
                                        "hole",
                                        "holes",
                                        "bent",
                                        "bend",
                                        "barked",
                                        "bald",
                                        "dust",
                                        "oily",
                                        "greasy",
                                        "grease",
                                        "musty",
                                        "fishy",
                                        "moldy",
                                        "mold",
                                        "losses",
                                        "loss",
                                        "gone to",
                                        "disconnected",
                                        "restored",
                                        "restoration",
                                        "repair",
                                        "repaired",
                                        "repairs",
                                        "glued",
                                        "stretched",
                                        "incomplete",
                                        "orphan",
                                        "were two",
                                        "burned",
                                        "burnt",
                                        "burn",
                                        "melted",
                                        "scorched",
                                        "blistered",
                                        "ragged",
                                        "shattering",
                                        "fragile",
                                        "weakened",
                                        "tattered",
                                        "swollen",
                                        "swelled",
                                        "soaked",
                                        "split",
                                        "cloudy",
                                        "clouded",
                                        "misty",
                                        "foggy",
                                        "haze",
                                        "stretched out",
                                        "changed the",
                                        "they changed",
                                        "makeshift",
                                        "works",
                                        "work",
                                        "worked",
                                        "played all",
                                        "gave it a whirl",
                                        "lost",
                                        "dirty",
                                        "muddy",
                                        "unwashed",
                                        "stiff",
                                        "frozen"};
    static const char *const had[] = {"has",   "have",  "had",     "having",   "some",   "with",    "without",
                                      "shows", "bit",   "bits",    "few",      "couple", "there's", "theres",
                                      "needs", "need",  "slight",  "slightly", "small",  "little",  "tiny",
                                      "minor", "light", "heavy",   "several",  "lots",   "plenty",  "no",
                                      "odd",   "badly", "heavily", "only"};
    enum { SAID = 5, APART = 3 };
    size_t n = token_longest(t->tokens, t->from, words, COUNT(words));
    bool apart = t->to - t->from >= APART && t->end - t->start > SAID && // "light was filtered through"
                 (text_same(t->kind->rule.id, "hole") || text_same(t->kind->rule.id, "fading"));
    static const char *const opens[] = {"tears", "rocks",   "carbon", "writing",
                                        "urine", "married", "mailed", "sticks"};
    bool led = t->from > t->start || AMONG(t->tokens, t->from, opens);
    if (!led || t->end - t->start < SAID || (!apart && (!n || n != t->to - t->from))) return false;
    bool passive = false;
    size_t at = stranger_predicate(t, &passive);
    struct word_entry entry; // "the gnomon broke off": of a part that no list has
    if (!apart && at > t->start + 1 && !stranger_stops(t, at - 1) &&
        ANY(t->tokens, t->start, "the", "one", "its") && at <= t->start + 3 && !stranger_at(t, at - 1) &&
        word_at(t->r->note, at - 1, 1u << USE_THING | 1u << USE_NAMER, &entry))
        return false;
    for (size_t i = t->start; i < t->from; i++)
        if (AMONG(t->tokens, i, had) || stranger_stops(t, i)) return false;
    if (t->from == t->start + 1 && ANY(t->tokens, t->start, "a", "an", "one", "bad", "old"))
        return false; // "a tear you could drive through"
    if (ANY(t->tokens, t->start, "there", "couldn't", "can't", "i", "i'd", "i've", "we") ||
        degrees_number(t->tokens, t->start))
        return false;
    for (size_t i = 0; i < t->r->hit_count; i++) // another fault is told beside it
        if (t->r->hits[i].from >= t->start && t->r->hits[i].to <= t->end &&
            (t->r->hits[i].to <= t->from || t->r->hits[i].from >= t->to))
            return false;
    return true;
}

// "Service runs all the way", "the band played all night": of what works, but not here.
static bool is_work_of_others(const struct telling *t) {
    if (!text_same(t->kind->rule.id, "working-tested") && !text_same(t->kind->rule.id, "powers-on-only"))
        return false;
    bool passive = false;
    size_t at = stranger_predicate(t, &passive);
    struct word_entry entry;
    if (at == t->start || stranger_stops(t, at - 1) || stranger_pronoun(t, at - 1) == TELLER) return false;
    if (ANY(t->tokens, at - 1, "low", "high", "medium", "fast", "slow", "hot", "cold", "warm", "speed",
            "speeds", "setting", "settings", "heats", "buttons", "functions"))
        return false; // "low and high both blow hot"
    return stranger_person(t, at - 1) ||
           word_at(t->r->note, at - 1, 1u << USE_THING | 1u << USE_NAMER | THOUGHT | NATURE, &entry);
}

// "Can you close the cracks?", "how should it be cleaned?"
static bool is_question(const struct telling *t) {
    static const char *const opens[] = {"can",  "could", "do",    "does", "did",   "are",
                                        "is",   "how",   "why",   "what", "where", "who",
                                        "will", "would", "shall", "may",  "which", "should"};
    return t->end < t->tokens->count && token_is(t->tokens, t->end, "?") &&
           AMONG(t->tokens, t->start, opens) &&
           !ANY(t->tokens, t->start + 1, "that", "this", "there", "those", "these");
}

// "On the rocks", "less durable rocks": no verb of what stands unsteadily.
static bool is_noun_of_land(const struct telling *t) {
    static const char *const subjects[] = {"it",   "chair", "table", "stool", "base",
                                           "that", "which", "one",   "and",   "bench"};
    if (t->to != t->from + 1 || !ANY(t->tokens, t->from, "rocks")) return false;
    if (t->from == t->start) return ANY(t->tokens, t->to, "and", "formed", "are", "that", "of");
    return !AMONG(t->tokens, t->from - 1, subjects);
}

// "Remove the dirty dishes", "dust the bread with flour": what somebody is told to do.
bool stranger_is_told_to(const struct telling *t) {
    static const char *const verbs[] = {
        "break",  "remove",  "brush",    "clean",     "wash",     "put",     "take",    "turn",    "spread",
        "spoon",  "plaster", "set",      "splint",    "tear",     "clip",    "staple",  "mark",    "dust",
        "stain",  "spill",   "smear",    "dribble",   "slosh",    "wipe",    "sweep",   "recall",  "get",
        "freeze", "press",   "drill",    "chop",      "cut",      "write",   "release", "stick",   "refine",
        "plant",  "flood",   "look",     "imagine",   "please",   "let's",   "don't",   "nip",     "gouge",
        "slit",   "slash",   "puncture", "crease",    "fracture", "glue",    "repair",  "engrave", "locate",
        "sponge", "treat",   "trim",     "propagate", "pour",     "drizzle", "crib",    "winch",   "wrench",
        "reseat", "piece",   "leave",    "poke",      "burn",     "dip",     "keep",    "use"};
    static const char *const objects[] = {"the",  "a",      "an",    "your", "this", "these", "my",
                                          "his",  "her",    "one's", "up",   "off",  "away",  "out",
                                          "into", "little", "oil",   "some", "down", "apart"};
    static const char *const sizes[] = {"size", "length", "width", "whole", "full",
                                        "inch", "couple", "few",   "bit",   "way"};
    size_t at = t->start;
    for (size_t i = at; i < t->end; i++)
        if (ANY(t->tokens, i, "it", "it's", "its", "them", "they", "this", "but")) return false;
    if (ANY(t->tokens, at, "please")) at++;
    return AMONG(t->tokens, at, verbs) && AMONG(t->tokens, at + 1, objects) &&
           !AMONG(t->tokens, at + 2, sizes) && !AMONG(t->tokens, at + 3, sizes);
}

// "There is no guarantee", "my wallet was lost": what lacks is no part of anything.
static bool is_lack_of_stranger(const struct telling *t) {
    if (t->kind->form != ABSENCE) return false;
    size_t last = t->to - 1;
    if (t->tokens->at[last].kind != TOKEN_WORD || t->r->part[last]) return false;
    bool no = ANY(t->tokens, t->from, "no", "without", "missing", "there's", "there"); // "no poster"
    return (stranger_at(t, last) & (no ? SOMEBODY : SOMEBODY | THOUGHT)) || stranger_possessed(t, last);
}

bool stranger_is_weak(const struct telling *t) {
    return is_lack_of_stranger(t) || is_everyday(t) || is_work_of_others(t) || is_question(t) ||
           is_noun_of_land(t);
}
