// SPDX-License-Identifier: MIT
// Words before a noun that say what it is for or whose tool it was belong to its name: "kitchen dresser",
// "doctor's bag", "chest freezer". Looks, makers and words of number do not.
#include "notes/chunk.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Places and work that goods are named after; most are nouns that are no goods by themselves.
static const char *const purposes[] = {
    "apothecary", "bakery",   "bank",    "bar",        "barn",        "bathroom",  "bedroom", "bedside",
    "boat",       "boot",     "bread",   "butcher",    "cabin",       "cake",      "camp",    "camping",
    "campfire",   "chapel",   "cheese",  "chemist",    "chest",       "church",    "cider",   "classroom",
    "coal",       "coffee",   "cottage", "dairy",      "desk",        "dessert",   "dining",  "dinner",
    "drafting",   "drawing",  "egg",     "factory",    "farm",        "farmhouse", "field",   "fire",
    "fireplace",  "fish",     "fishing", "fruit",      "garage",      "garden",    "gravy",   "greenhouse",
    "hall",       "hallway",  "hand",    "harbor",     "hardware",    "hospital",  "hotel",   "household",
    "hunting",    "jewelry",  "kitchen", "lab",        "laboratory",  "laundry",   "lawn",    "library",
    "mantel",     "map",      "marine",  "mechanic",   "medical",     "milk",      "nursery", "office",
    "orchard",    "parlor",   "parlour", "patio",      "pharmacy",    "piano",     "pickle",  "plant",
    "pocket",     "porch",    "post",    "preserving", "pub",         "railroad",  "railway", "riding",
    "roasting",   "sailing",  "salad",   "school",     "schoolhouse", "serving",   "shaving", "ship",
    "shop",       "soup",     "sports",  "stable",     "stew",        "store",     "storm",   "street",
    "study",      "surgery",  "survey",  "tavern",     "tea",         "theater",   "tobacco", "traffic",
    "travel",     "umbrella", "utility", "vanity",     "wash",        "water",     "wine",    "work",
    "workshop",   "writing"};

static const char *const trades[] = {
    "apothecary's", "architect's",  "artist's",       "baker's",     "barber's",       "beekeeper's",
    "blacksmith's", "brewer's",     "bricklayer's",   "butcher's",   "cabinetmaker's", "captain's",
    "carpenter's",  "chef's",       "chemist's",      "clerk's",     "cobbler's",      "conductor's",
    "cook's",       "cooper's",     "dentist's",      "doctor's",    "draftsman's",    "engineer's",
    "farmer's",     "farrier's",    "fireman's",      "fisherman's", "gardener's",     "glazier's",
    "grocer's",     "hunter's",     "jeweler's",      "jeweller's",  "joiner's",       "lineman's",
    "logger's",     "machinist's",  "mason's",        "mechanic's",  "miller's",       "miner's",
    "nurse's",      "painter's",    "photographer's", "physician's", "plumber's",      "policeman's",
    "porter's",     "postman's",    "potter's",       "printer's",   "saddler's",      "sailor's",
    "seaman's",     "sheriff's",    "shepherd's",     "ship's",      "shoemaker's",    "soldier's",
    "surgeon's",    "surveyor's",   "tailor's",       "teacher's",   "tinsmith's",     "trapper's",
    "watchmaker's", "wheelwright's"};

static const char *const counters[] = {"set",  "pair", "lot",   "box",   "bag",  "tin",  "jar",
                                       "tray", "case", "crate", "pack",  "bin",  "item", "piece",
                                       "top",  "one",  "shelf", "style", "type", "side", "combo"};

static const uint32_t looks = (1u << USE_MATERIAL) | (1u << USE_COLOR) | (1u << USE_TECHNIQUE) |
                              (1u << USE_PATTERN) | (1u << USE_FINISH) | (1u << USE_SHAPE) |
                              (1u << USE_STYLE) | (1u << USE_PERIOD);

static bool is_free_word(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    return t->kind == TOKEN_WORD && t->stop == STOP_NONE && note->taken[i] == TAKEN_NOT &&
           !note->fault_word[i] && (!t->capital || t->starts || note->tokens.shouts);
}

// Goods that qualify other goods: "chest freezer". Without capitals notes run on, and both may be meant.
static bool is_goods(const struct note *note, size_t i) {
    struct noun_found noun;
    struct word_entry entry;
    if (note->tokens.flat || !noun_at(note, i, &noun) || noun.to != i + 1 || !noun.noun) return false;
    if (note->tokens.at[i].one != note->tokens.at[i].fold) return false; // many: "plates cups"
    if (token_among(&note->tokens, i, counters, COUNT(counters)) || word_at(note, i, looks, &entry))
        return false;
    return noun.thing || (noun.uses & (1u << USE_THING) && !noun.gated && !noun.candidate);
}

size_t purpose_from(const struct note *note, size_t noun) {
    enum { WORDS_MOST = 2 };
    size_t from = noun;
    while (from > 0 && noun - from < WORDS_MOST && is_free_word(note, from - 1)) {
        if (token_among(&note->tokens, from - 1, trades, COUNT(trades))) return from - 1;
        bool purpose = token_among(&note->tokens, from - 1, purposes, COUNT(purposes));
        if (!purpose && !is_goods(note, from - 1)) break;
        from--;
    }
    return from;
}
