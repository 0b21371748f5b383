// SPDX-License-Identifier: MIT
// Words before a noun that say what it is for or whose tool it was belong to its name: "kitchen dresser",
// "doctor's bag", "chest freezer", "hoof parer". Looks, makers and words of number do not.
#include "notes/any.h"
#include "notes/chunk.h"
#include "notes/number.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Places and work that goods are named after; most are nouns that are no goods by themselves.
static const char *const purposes[] = {
    "apothecary", "parcel",     "letter",    "dispensary", "theatre",   "dental",    "surgical",  "filing",
    "medical",    "industrial", "bait",      "bakery",     "baking",    "bank",      "bar",       "barn",
    "bath",       "bathroom",   "bedroom",   "bedside",    "boat",      "boot",      "bread",     "bug",
    "building",   "butcher",    "butter",    "cabin",      "cake",      "camp",      "campfire",  "camping",
    "canning",    "carding",    "carving",   "cattle",     "chapel",    "chart",     "cheese",    "chemist",
    "chest",      "chicken",    "church",    "cider",      "classroom", "clothes",   "coal",      "coffee",
    "corn",       "cottage",    "dairy",     "darning",    "deck",      "desk",      "dessert",   "dining",
    "dinner",     "dish",       "drafting",  "drawing",    "drying",    "ear",       "egg",       "factory",
    "farm",       "farmhouse",  "feed",      "field",      "fire",      "fireplace", "fish",      "fishing",
    "flour",      "foot",       "fruit",     "garage",     "garden",    "glove",     "glue",      "goat",
    "grain",      "gravy",      "grease",    "greenhouse", "hall",      "hallway",   "hand",      "harbor",
    "hardware",   "hat",        "hay",       "head",       "hen",       "hospital",  "hotel",     "household",
    "hunting",    "ice",        "ironing",   "jelly",      "jewelry",   "kindling",  "kitchen",   "lab",
    "laboratory", "lamb",       "laundry",   "lawn",       "library",   "lobster",   "log",       "luggage",
    "lunch",      "mail",       "mains",     "mantel",     "map",       "marine",    "measuring", "meat",
    "mechanic",   "mess",       "milk",      "mill",       "mixing",    "net",       "vernier",   "telegraph",
    "parish",     "vestry",     "harbour",   "canal",      "cloakroom", "nail",      "night",     "nursery",
    "nut",        "office",     "oil",       "onion",      "orchard",   "parlor",    "parlour",   "pasta",
    "pastry",     "patio",      "pen",       "pencil",     "pharmacy",  "piano",     "pickle",    "pie",
    "plant",      "plumbing",   "pocket",    "pond",       "porch",     "post",      "potato",    "potting",
    "poultry",    "preserving", "pruning",   "pub",        "railroad",  "railway",   "rain",      "recipe",
    "riding",     "roasting",   "saddle",    "sailing",    "salad",     "sauce",     "sausage",   "school",
    "serving",    "shaving",    "sheep",     "ship",       "shoe",      "shop",      "shot",      "sleigh",
    "soap",       "solder",     "soup",      "spice",      "sports",    "stable",    "stair",     "stew",
    "store",      "storm",      "street",    "study",      "sugar",     "surgery",   "survey",    "syrup",
    "tack",       "tavern",     "tea",       "theater",    "ticket",    "tile",      "tire",      "tobacco",
    "tool",       "tow",        "towel",     "traffic",    "travel",    "trouser",   "tyre",      "umbrella",
    "utility",    "vanity",     "vegetable", "vine",       "wash",      "water",     "weaving",   "weld",
    "alarm",      "sap",        "oven",      "screw",      "bolt",      "engine",    "signal",    "station",
    "pantry",     "sump",       "boiler",    "furnace",    "kiln",      "forge",     "vinegar",   "whisky",
    "whiskey",    "cordial",    "medicine",  "poison",     "wasp",      "mole",      "rat",       "mouse",
    "pigeon",     "organ",      "window",    "gate",       "gutter",    "drain",     "sink",      "pump",
    "barrel",     "cask",       "bung",      "twine",      "cutlery",   "lavatory",  "toilet",    "platform",
    "tram",       "tractor",    "harness",   "slug",       "pig",       "calf",      "turkey",    "goose",
    "welding",    "wine",       "work",      "workshop",   "writing",   "yarn"};

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
    "surgeon's",    "surveyor's",   "tailor's",       "teacher's",   "butler's",       "tinsmith's",
    "trapper's",    "watchmaker's", "wheelwright's",  "guard's",     "bosun's",        "mate's",
    "purser's",     "steward's",    "priest's",       "bishop's",    "vicar's",        "cadet's",
    "groom's",      "scout's",      "usher's"};

// Words that are looks or pictures as well, and the goods that they name all the same.
static const struct {
    const char *word, *goods;
} pairs[] = {
    {"ash", " pan can bucket box tray shovel scoop bin door "},
    {"cream", " jar jug can pot pitcher bottle separator pail ladle churn "},
    {"honey", " jar pot extractor dipper spoon crock tin "},
    {"seed", " drill packet box tin tray spreader cabinet sower planter "},
    {"wool", " winder basket cards carder bag "},
    {"seal", " press "},
    {"dog", " dish bowl collar crate bed lead leash tag "},
    {"cat", " dish bowl bed carrier "},
    {"bird", " bath bell house table whistle "},
    {"cow", " tag chain bell horn "},
    {"horse", " tack rug collar blanket bit trough brush feeder manger bucket bell clippers comb drench "},
    {"butterfly", " net "},
    {"beer", " tap pump engine crate barrel mug glass bottle mat tray stein can "},
    {"duck", " call decoy "},
    {"eel", " trap spear fork "},
    {"bull", " ring lead "},
    {"leaf", " cutter rake sweeper "},
    {"apple", " peeler corer crate barrel picker press mill rack box "},
    {"cherry", " pitter stoner picker "},
    {"rose", " bowl "},
    {"mustard", " pot jar spoon "},
    {"fruit", " bowl press crate knife "},
    {"pumpkin", " lantern pail "},
    {"ship", " bell lamp lantern clock wheel compass model "},
    {"ships", " bell lamp lantern clock wheel compass "},
    {"flower", " pot press frog basket brick "},
    {"plant", " stand mister pot "}};

static bool is_pair(const struct note *note, size_t i) {
    if (i + 1 >= note->tokens.count) return false;
    const char *head = note->tokens.at[i + 1].one;
    size_t size = strlen(head);
    for (size_t k = 0; k < COUNT(pairs); k++) {
        if (!token_is(&note->tokens, i, pairs[k].word)) continue;
        for (const char *at = pairs[k].goods; (at = strstr(at, head)) != NULL; at += size)
            if (at[-1] == ' ' && at[size] == ' ') return true;
    }
    return false;
}

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
    if (i > 0 && word_at(note, i - 1, 1u << USE_MATERIAL, &entry) > 1) return false; // "silver plate teapot"
    return noun.thing || (noun.uses & (1u << USE_THING) && !noun.gated && !noun.candidate);
}

// "Carpenter's", and without its apostrophe before one thing.
static bool is_trade(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (token_among(tokens, i, trades, COUNT(trades))) return true;
    const char *word = tokens->at[i].fold;
    size_t size = strlen(word);
    if (size < 5 || word[size - 1] != 's' || strchr(word, '\'')) return false;
    for (size_t k = 0; k < COUNT(trades); k++)
        if (strlen(trades[k]) == size + 1 && !strncmp(trades[k], word, size - 1)) return true;
    return false;
}

// "Thatcher's", "goods of whose trade": who does such work, by the end of the word; but "my mother's".
static bool is_worker(const struct tokens *tokens, size_t i) {
    static const char *const ends[] = {"er's", "or's", "man's", "ist's", "smith's", "wright's", "herd's"};
    static const char *const kin[] = {
        "mother's",   "father's",      "brother's",     "sister's",   "owner's",    "maker's",
        "dealer's",   "grandfather's", "grandmother's", "seller's",   "daughter's", "partner's",
        "somebody's", "other's",       "former's",      "woman's",    "man's",      "seller's",
        "either's",   "winter's",      "summer's",      "gentleman's"};
    const char *word = tokens->at[i].fold;
    size_t size = strlen(word);
    if (size < 6 || word[size - 1] != 's' || word[size - 2] != '\'') return false;
    for (size_t k = 0; k < COUNT(ends); k++) {
        size_t end = strlen(ends[k]);
        if (size > end + 1 && !strcmp(word + size - end, ends[k]))
            return !token_among(tokens, i, kin, COUNT(kin));
    }
    return false;
}

// "Uncapping knife", "rigging knife": work that a thing does; but "selling lamp".
static bool is_work(const struct note *note, size_t i) {
    static const char *const others[] = {
        "selling",     "listing",  "clearing",  "offering",    "moving",     "going",    "getting",
        "having",      "being",    "looking",   "doing",       "including",  "using",    "wanting",
        "needing",     "keeping",  "giving",    "seeing",      "showing",    "missing",  "leaking",
        "working",     "matching", "remaining", "surviving",   "existing",   "amazing",  "charming",
        "interesting", "striking", "stunning",  "outstanding", "during",     "nothing",  "something",
        "everything",  "anything", "bring",     "spring",      "string",     "evening",  "morning",
        "ceiling",     "fitting",  "finding",   "buying",      "downsizing", "making",   "posting",
        "shipping",    "wearing",  "sticking",  "sitting",     "lying",      "rubbing",  "appealing",
        "housing",     "lining",   "bring",     "willing",     "pricing",    "reducing", "thing"};
    enum { LEAST = 6, STEM_MOST = 40 };
    const char *word = note->tokens.at[i].fold;
    size_t size = strlen(word);
    if (size < LEAST || size > STEM_MOST || strcmp(word + size - 3, "ing") != 0 ||
        token_among(&note->tokens, i, others, COUNT(others)))
        return false;
    char stem[STEM_MOST + 2];
    memcpy(stem, word, size - 3);
    stem[size - 3] = '\0';
    struct word_entry entry;
    if (wordbook_find(note->book, stem, size - 3, &entry)) return true; // "fleshing"
    if (stem[size - 4] == stem[size - 5] && wordbook_find(note->book, stem, size - 4, &entry))
        return true; // "uncapping"
    stem[size - 3] = 'e';
    return wordbook_find(note->book, stem, size - 2, &entry); // "grading"
}

// "Hoof parer", "station pointer", "leg vice": a noun for what can be touched, and no part of its own stuff
// ("brass handle lamp"), no place on it, no picture.
static bool is_namer(const struct note *note, size_t i) {
    static const char *const vain[] = {"machine", "stuff",   "beauty",  "antique", "ornament", "replica",
                                       "photo",   "picture", "shop",    "stall",   "market",   "attic",
                                       "loft",    "item",    "bargain", "sliver",  "lather",   "monster",
                                       "beast",   "mint",    "gem",     "oddment", "bit"};
    static const char *const sides[] = {"handle", "top",    "base",  "lid",  "back",  "shade",
                                        "trim",   "front",  "door",  "side", "frame", "rim",
                                        "edge",   "seat",   "knob",  "body", "foot",  "corner",
                                        "panel",  "drawer", "blade", "grip", "cap",   "cover"};
    struct word_entry entry;
    const struct token *t = &note->tokens.at[i];
    if (!note->book || t->one != t->fold || token_among(&note->tokens, i, vain, COUNT(vain)) ||
        token_among(&note->tokens, i, counters, COUNT(counters)))
        return false;
    if (word_at(note, i,
                looks | (1u << USE_THEME) | (1u << USE_GATED) | (1u << USE_FILLER) | (1u << USE_PLACE),
                &entry))
        return false;
    struct noun_found noun;
    if (noun_at(note, i, &noun) && noun.to == i + 1 &&
        (noun.thing || (noun.uses & (1u << USE_THING) && !noun.candidate && !noun.gated)))
        return false; // goods of their own
    if (is_work(note, i)) return true;
    if (word_at(note, i, 1u << USE_NAMER, &entry) != 1) return false;
    bool part = word_at(note, i, 1u << USE_PART, &entry) > 0;
    if (!part) return true;
    return !note->tokens.flat && !token_among(&note->tokens, i, sides, COUNT(sides)) &&
           !(i > 0 && word_at(note, i - 1, looks, &entry));
}

// Is it the first run of its sentence, where a thing is named? Further on what stands before may be all
// sorts.
static bool names_here(const struct note *note, size_t noun) {
    enum { BEFORE_MOST = 6 };
    for (size_t k = noun, n = 0; n < BEFORE_MOST; k--, n++) {
        if (k == 0 || note->tokens.at[k].starts || note->tokens.at[k - 1].stop >= STOP_SENTENCE) return true;
        if (note->tokens.at[k - 1].stop != STOP_NONE) return false;
    }
    return false;
}

size_t purpose_from(const struct note *note, size_t noun) {
    enum { WORDS_MOST = 2 };
    size_t from = noun;
    while (from > 0 && noun - from < WORDS_MOST && is_free_word(note, from - 1)) {
        if (is_trade(note, from - 1) || is_worker(&note->tokens, from - 1)) return from - 1;
        struct word_entry stuff; // "ash net needle"
        if (from < noun && word_at(note, from - 1, 1u << USE_MATERIAL, &stuff)) break;
        if (from > 1 && ANY(&note->tokens, from - 1, "head", "mask") &&
            note->tokens.at[from - 2].stop == STOP_NONE && word_at(note, from - 2, 1u << USE_THEME, &stuff))
            break; // "horse head bookends" show a horse's head
        if (from > 1 && note->tokens.at[from - 2].stop == STOP_NONE &&
            word_at(note, from - 2, 1u << USE_PATTERN | 1u << USE_TECHNIQUE, &stuff) == 2)
            break; // "fair isle cardigan"
        bool purpose =
            token_among(&note->tokens, from - 1, purposes, COUNT(purposes)) || is_pair(note, from - 1);
        if (!purpose && !is_goods(note, from - 1) && !(names_here(note, from) && is_namer(note, from - 1)))
            break;
        from--;
    }
    return from;
}

// "Pair of telescope cases", "two lantern boxes": the note opens with how many there are.
static bool is_counted(const struct note *note, size_t from) {
    const struct tokens *tokens = &note->tokens;
    size_t taken = 0;
    while (from > 0 && tokens->at[from - 1].stop < STOP_SENTENCE &&
           (ANY(tokens, from - 1, "of", "pair", "set", "lot", "a", "both", "matching") ||
            number_whole(tokens, from - 1, &taken)))
        from--;
    return from == 0;
}

// "Trumpet case", "pencil bag": a holder behind goods is what is sold, though the word alone says little.
bool purpose_holder(const struct note *note, const struct chunk *chunk, struct noun_found *holder) {
    static const char *const holders[] = {
        "bag",     "case", "box",     "bin",   "stand",  "rack",   "can",   "holder", "set",    "crate",
        "carrier", "cart", "trolley", "model", "barrow", "basket", "scale", "scales", "plan",   "plans",
        "rope",    "top",  "lift",    "lifts", "bags",   "cases",  "boxes", "stands", "crates", "racks"};
    // What nobody would tell of the goods before it: "oak stool crate" is no stool with a crate.
    static const char *const apart[] = {"racks",   "crates", "rack",  "crate",  "carrier", "cart",
                                        "trolley", "barrow", "scale", "scales", "plan",    "plans",
                                        "rope",    "top",    "lift",  "lifts"};
    static const char *const gone[] = {"included", "missing", "only", "not",  "lid",
                                       "is",       "has",     "was",  "gone", "are"};
    if (chunk->count < 2) return false;
    const struct noun_found *last = &chunk->nouns[chunk->count - 1], *before = last - 1;
    if (last->thing || !token_among(&note->tokens, last->from, holders, COUNT(holders)) ||
        last->to != chunk->to || last->to != last->from + 1 || before->to != last->from || before->part ||
        !before->noun || note->taken[before->from] == TAKEN_COUNT) // "two scales"
        return false;
    bool own = token_among(&note->tokens, last->from, apart, COUNT(apart));
    if (token_among(&note->tokens, last->to, gone, COUNT(gone)) || (note->tokens.flat && !own)) return false;
    struct word_entry entry;
    bool purpose = token_among(&note->tokens, before->from, purposes, COUNT(purposes));
    bool vague =
        word_at(note, before->from, looks, &entry) || (!before->thing && before->gated && !before->family);
    if (vague && !purpose) return false;
    static const char *const openers[] = {"a", "an", "the", "this", "old"}, *const shows[] = {"a", "an",
                                                                                              "this"};
    bool opens =
        chunk->from == 0 || note->tokens.at[chunk->from - 1].stop >= STOP_SENTENCE ||
        (chunk->from == 1 && token_among(&note->tokens, 0, openers, COUNT(openers))) ||
        (token_among(&note->tokens, chunk->from - 1, shows, COUNT(shows)) &&
         ANY(&note->tokens, chunk->from - 2, "selling", "is", "it's", "got", "have", "here's", "listing"));
    if (!opens && !is_counted(note, chunk->from) &&
        !(chunk->from > 2 && ANY(&note->tokens, chunk->from - 1, "a", "an") &&
          ANY(&note->tokens, chunk->from - 2, ",", "it's", "no") &&
          ANY(&note->tokens, chunk->from - 3, "no", "nope", ","))) // "no, a leather telescope case"
        return false;
    *holder = own ? *last : *before;
    holder->from = before->from;
    if (own) holder->gated = holder->candidate = holder->part = false;
    if (own && !holder->family)
        holder->family = ANY(&note->tokens, last->from, "barrow", "cart", "scale", "scales") ? "tools"
                         : ANY(&note->tokens, last->from, "plan", "plans")                   ? "paper"
                         : ANY(&note->tokens, last->from, "lift", "lifts", "rope")           ? "parts"
                         : ANY(&note->tokens, last->from, "top")                             ? "furniture"
                                                                                             : "decor";
    holder->to = last->to;
    holder->noun = arena_format(note->arena, "%s %s", before->noun, last->noun ? last->noun : "case");
    return true;
}

// "Pop crate, 24 bottle", "toast rack, 6 slice": how many it holds, in the singular.
bool purpose_is_capacity(const struct note *note, const struct noun_found *head) {
    const struct tokens *tokens = &note->tokens;
    size_t taken;
    return head->from > 1 && head->to == head->from + 1 && tokens->at[head->from - 2].stop == STOP_COMMA &&
           tokens->at[head->from].one == tokens->at[head->from].fold &&
           !ANY(tokens, head->from, "pair", "set") && number_whole(tokens, head->from - 1, &taken) > 1;
}
