// SPDX-License-Identifier: MIT
// Beginnings of words, and turns of speech, of damage, loss, function or smell: what nobody understood may be
// a fault. Too many of them ask once too often; too few keep silent about a fault.
#include "listing/harm.h"

#include <string.h>

#include "notes/alien.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Sorted by bytes, for a search by the first one.
static const char *const beginnings[] = {"a bow in",
                                         "a go at",
                                         "a line in the",
                                         "absent",
                                         "adrift",
                                         "all but",
                                         "another story",
                                         "astray",
                                         "at it",
                                         "awful",
                                         "bad side",
                                         "bang",
                                         "bash",
                                         "bent",
                                         "best side",
                                         "better days",
                                         "bleach",
                                         "blemish",
                                         "blot",
                                         "blunt",
                                         "bodge",
                                         "bowed",
                                         "break",
                                         "brittle",
                                         "broke",
                                         "bubbl",
                                         "buckl",
                                         "burn",
                                         "busted",
                                         "but for",
                                         "buzz",
                                         "came away",
                                         "can't",
                                         "cannot",
                                         "cant ",
                                         "charg",
                                         "chew",
                                         "chip",
                                         "cloud",
                                         "come away",
                                         "comes away",
                                         "comes off",
                                         "corro",
                                         "could be better",
                                         "crack",
                                         "craz",
                                         "crook",
                                         "crumbl",
                                         "cut",
                                         "cut out",
                                         "damage",
                                         "damp",
                                         "darker than",
                                         "daylight",
                                         "dead",
                                         "defect",
                                         "dent",
                                         "desired",
                                         "detach",
                                         "dinged",
                                         "dings",
                                         "dirty",
                                         "discol",
                                         "do not",
                                         "do with a new",
                                         "dodgy",
                                         "does not",
                                         "doesn't",
                                         "doesnt",
                                         "done for",
                                         "double image",
                                         "drawn",
                                         "drip",
                                         "dropped",
                                         "drops",
                                         "duff",
                                         "dull",
                                         "eaten",
                                         "fade",
                                         "faded",
                                         "fail",
                                         "falls",
                                         "fault",
                                         "filler",
                                         "finger catches",
                                         "fix",
                                         "flak",
                                         "flaw",
                                         "flies",
                                         "flies off",
                                         "flooded",
                                         "fog",
                                         "foul",
                                         "fray",
                                         "frayed",
                                         "from a distance",
                                         "from one side",
                                         "from the front",
                                         "fumes",
                                         "funny",
                                         "gains",
                                         "gets hot",
                                         "glue",
                                         "gnaw",
                                         "gone",
                                         "got hot",
                                         "got to it",
                                         "gouge",
                                         "grim",
                                         "grinds",
                                         "gummy",
                                         "had it",
                                         "had its day",
                                         "halves",
                                         "handy",
                                         "hard life",
                                         "has run",
                                         "has seen",
                                         "have gone",
                                         "have run",
                                         "haze",
                                         "hazy",
                                         "heats",
                                         "held on",
                                         "hiss",
                                         "hole",
                                         "hums",
                                         "iffy",
                                         "ignore",
                                         "immaculate but",
                                         "in a fire",
                                         "in bits",
                                         "in two",
                                         "is short",
                                         "isn't right",
                                         "isn't the one",
                                         "issues",
                                         "jammed",
                                         "jams",
                                         "jumps",
                                         "kaput",
                                         "keeps going",
                                         "kink",
                                         "knacker",
                                         "knock",
                                         "lack",
                                         "last legs",
                                         "leak",
                                         "leans",
                                         "let go",
                                         "lets water",
                                         "lifting",
                                         "lifts",
                                         "lighter than",
                                         "loose",
                                         "loses",
                                         "lost",
                                         "marks",
                                         "mend",
                                         "mice",
                                         "mildew",
                                         "miss",
                                         "mold",
                                         "most of",
                                         "moth",
                                         "mould",
                                         "mouse",
                                         "musty",
                                         "needs",
                                         "nibbl",
                                         "nick",
                                         "niff",
                                         "not all",
                                         "not quite right",
                                         "not right",
                                         "odor",
                                         "odour",
                                         "off a different",
                                         "off another",
                                         "one isn't",
                                         "only one",
                                         "only two",
                                         "other isn't",
                                         "ought to",
                                         "out of round",
                                         "out of true",
                                         "oxid",
                                         "part isn't",
                                         "patch",
                                         "peel",
                                         "perish",
                                         "pitted",
                                         "pong",
                                         "power",
                                         "problem",
                                         "pulling",
                                         "rained",
                                         "rat ",
                                         "rats",
                                         "rattl",
                                         "ravel",
                                         "receive",
                                         "reek",
                                         "repair",
                                         "restor",
                                         "rip",
                                         "rocks",
                                         "rotted",
                                         "rotten",
                                         "rotting",
                                         "rough",
                                         "ruin",
                                         "runs",
                                         "rust",
                                         "sagg",
                                         "sags",
                                         "scrape",
                                         "scratch",
                                         "scuff",
                                         "seiz",
                                         "separat",
                                         "shatter",
                                         "shedding",
                                         "shock",
                                         "shot",
                                         "shrunk",
                                         "sick",
                                         "sit flat",
                                         "sit level",
                                         "sit right",
                                         "skew",
                                         "skips",
                                         "slips",
                                         "smash",
                                         "smell",
                                         "smok",
                                         "smudg",
                                         "snag",
                                         "snap",
                                         "soak",
                                         "something else",
                                         "sparks",
                                         "spill",
                                         "spins",
                                         "split",
                                         "splotch",
                                         "spot",
                                         "sprung",
                                         "squeak",
                                         "squeal",
                                         "stain",
                                         "stale",
                                         "stand straight",
                                         "stand up",
                                         "stank",
                                         "static",
                                         "stick",
                                         "sticky",
                                         "stiff",
                                         "stink",
                                         "stops",
                                         "stretch",
                                         "stuck",
                                         "sunk",
                                         "tarn",
                                         "tatter",
                                         "tear",
                                         "the flood",
                                         "the rain",
                                         "the wars",
                                         "them isn't",
                                         "ticks",
                                         "tingle",
                                         "tips over",
                                         "to bits",
                                         "to death",
                                         "toast",
                                         "torn",
                                         "transmit",
                                         "trips",
                                         "trouble",
                                         "tumble",
                                         "under water",
                                         "undone",
                                         "uneven",
                                         "unstuck",
                                         "unwind",
                                         "unwoven",
                                         "used hard",
                                         "walkabout",
                                         "wants",
                                         "warp",
                                         "wear",
                                         "weep",
                                         "went west",
                                         "wheez",
                                         "whiff",
                                         "without",
                                         "wobbl",
                                         "won't",
                                         "wonky",
                                         "wont",
                                         "worked",
                                         "working",
                                         "works",
                                         "worm",
                                         "worn",
                                         "worse",
                                         "wreck",
                                         "wrong",
                                         "yellowed",
                                         "yellowing"};

static size_t first_of(char letter) {
    size_t from = 0;
    for (size_t to = COUNT(beginnings); from < to;) {
        size_t middle = from + (to - from) / 2;
        if ((unsigned char)beginnings[middle][0] < (unsigned char)letter)
            from = middle + 1;
        else
            to = middle;
    }
    return from;
}

// What goods and their parts are called: no harm, though it begins like one.
static bool is_goods(const char *word) {
    static const char *const goods[] = {
        "blotter",       "blotting",     "breakfast",   "buckle",    "burner",    "burnish",
        "buzzer",        "charger",      "chipping",    "composing", "crazy",     "cutlery",
        "cutter",        "cut glass",    "cut crystal", "damper",    "dental",    "dentil",
        "drawn thread",  "drawn-thread", "drawn work",  "drip pan",  "drip tray", "fixed",
        "gluepot",       "glue pot",     "mother",      "nickel",    "nicely",    "patchwork",
        "powder",        "ripple",       "roughly",     "spotlight", "spotless",  "stain glass",
        "stained glass", "stick stand",  "stickpin",    "stretcher", "teardrop",  "toaster",
        "toast rack",    "tumbler",      "wearer",      "worktop"};
    for (size_t i = 0; i < COUNT(goods); i++) {
        if (*word != *goods[i]) continue;
        size_t n = strlen(goods[i]);
        if (strncmp(word, goods[i], n) != 0) continue;
        if (word[n] == 's') n++;
        if (!strncmp(word + n, "'s", 2)) n += 2;
        if (!word[n] || word[n] == ' ' || word[n] == ',' || word[n] == '.') return true;
    }
    return false;
}

static bool begins_harm(const char *word) {
    if (is_goods(word)) return false;
    for (size_t i = first_of(*word); i < COUNT(beginnings) && *word == beginnings[i][0]; i++) {
        const char *at = word, *want = beginnings[i];
        while (*want && *want == *at) want++, at++;
        if (!*want) return true;
    }
    return false;
}

// "Inkwell hole", "sound holes": the thing was made with them.
static bool is_made_hole(const char *text, const char *at) {
    static const char *const before[] = {
        "inkwell ", "screw ",   "key ",    "finger ", "sound ",  "air ",    "drain ", "peg ",     "nail ",
        "bolt ",    "plug ",    "filler ", "pin ",    "hand ",   "spout ",  "vent ",  "cable ",   "hanging ",
        "lamp ",    "tap ",     "string ", "knot ",   "cord ",   "pigeon ", "thumb ", "drip ",    "weep ",
        "dowel ",   "draught ", "belt ",   "wire ",   "fixing ", "bung ",   "chain ", "mounting "};
    if (strncmp(at, "hole", 4) != 0) return false;
    for (size_t i = 0; i < COUNT(before); i++) {
        size_t n = strlen(before[i]);
        if ((size_t)(at - text) >= n && !strncmp(at - n, before[i], n)) return true;
    }
    return false;
}

// "Both stand straight": it is no harm but where something does not.
static bool is_praise(const char *text, const char *at) {
    static const char *const stands[] = {"stand straight", "stand up", "sit flat", "sit level", "sit right"};
    static const char *const motions[] = {"runs ", "works ", "spins ", "lifts ", "ticks "};
    static const char *const wells[] = {"true", "fine",  "well", "smooth",  "sweet",
                                        "nice", "quiet", "free", "perfect", "ok"};
    for (size_t i = 0; i < COUNT(motions); i++) // "runs true"
        for (size_t k = 0; k < COUNT(wells) && !strncmp(at, motions[i], strlen(motions[i])); k++)
            if (!strncmp(at + strlen(motions[i]), wells[k], strlen(wells[k])) && !strstr(text, "but"))
                return true;
    bool stand = false;
    for (size_t i = 0; i < COUNT(stands); i++) stand |= !strncmp(at, stands[i], strlen(stands[i]));
    return stand && !strstr(text, "n't") && !strstr(text, "not") && !strstr(text, "never") &&
           !strstr(text, "nt ") && !strstr(text, "to ") && !strstr(text, "if ") && !strstr(text, "cannot");
}

// The word that ends before `at`, and where it begins.
static const char *word_before(const char *text, const char *at) {
    while (at > text && at[-1] == ' ') at--;
    while (at > text && at[-1] != ' ') at--;
    return at;
}

static bool is_word(const char *at, const char *const *words, size_t count) {
    size_t n = strcspn(at, " ,.;:\n");
    for (size_t i = 0; i < count; i++)
        if (strlen(words[i]) == n && !strncmp(at, words[i], n)) return true;
    return false;
}

// "Doesn't leak", "not frayed", "no other marks", "no nails sticking out": denied. Not so what the thing is
// to do ("not working", "doesn't sit flat"), what is denied in part ("not all", "not only"), nor what is told
// to end ("never stops leaking"). What takes it back stands in the words themselves, from `own` on.
static bool is_denied(const char *text, const char *own, const char *at) {
    static const char *const nots[] = {"no",      "not",     "never",   "without", "doesn't",
                                       "don't",   "didn't",  "isn't",   "aren't",  "wasn't",
                                       "hasn't",  "haven't", "nothing", "none",    "nor",
                                       "neither", "doesnt",  "hasnt",   "isnt"};
    static const char *const between[] = {
        "any",   "a",    "an",    "the",  "been",    "got",     "have",     "had",  "has",   "longer", "sign",
        "signs", "of",   "other", "more", "even",    "really",  "actually", "gone", "come",  "be",     "it",
        "seem",  "look", "or",    "to",   "further", "obvious", "visible",  "i",    "could", "see"};
    static const char *const uses[] = {
        "charg", "draws", "drawn",  "heats",   "power",    "receive", "runs", "sit ",    "spins", "stand",
        "stops", "ticks", "worked", "working", "transmit", "works",   "lack", "all but", "only",  "most",
        "best",  "can't", "cannot", "wont",    "won't",    "do with", "not ", "handy"};
    enum { FAR = 4 };
    for (size_t i = 0; i < COUNT(uses); i++)
        if (!strncmp(at, uses[i], strlen(uses[i]))) return false;
    static const char *const unlesses[] = {"but", "except", "bar ", "apart", "only", "unless", "if "};
    for (size_t i = 0; i < COUNT(unlesses); i++)
        if (strstr(own, unlesses[i])) return false;
    bool noun = false; // "no nails sticking"
    for (size_t n = 0; at > text && n < FAR; n++) {
        at = word_before(text, at);
        if (is_word(at, nots, COUNT(nots))) return true;
        if (is_word(at, between, COUNT(between))) continue;
        if (noun || strpbrk(at, ",;:") == at + strcspn(at, " ,;:")) return false;
        noun = true;
        const char *no = word_before(text, at);
        if (no == at || !is_word(no, (const char *const[]){"no", "nothing"}, 2)) return false;
    }
    return false;
}

// "Doesn't", "does not" before what would be harm: the denial itself is none.
static bool is_denial(const char *text, const char *own, const char *at) {
    static const char *const unknown[] = {"can't identify",  "can't place",    "can't name",  "can't tell",
                                          "can't say",       "can't remember", "can't swear", "can't be sure",
                                          "cannot identify", "can't make out", "can't prove", "can't recall",
                                          "cannot say"};
    for (size_t i = 0; i < COUNT(unknown); i++)
        if (!strncmp(at, unknown[i], strlen(unknown[i]))) return true; // of who writes, and not of the thing
    static const char *const denials[] = {"doesn't ", "does not ", "do not ", "doesnt ", "without "};
    for (size_t i = 0; i < COUNT(denials); i++) {
        size_t n = strlen(denials[i]);
        if (strncmp(at, denials[i], n) != 0) continue;
        for (const char *word = at + n; *word; word++)
            if ((word[-1] == ' ' || word[-1] == '-') && begins_harm(word)) return is_denied(text, own, word);
    }
    return false;
}

// "8 power": how much field glasses magnify.
static bool is_magnifying(const char *text, const char *at) {
    return !strncmp(at, "power", 5) && at > text + 1 && at[-2] >= '0' && at[-2] <= '9';
}

bool harm_is_told(const char *text, size_t from) {
    const char *own = text + from;
    for (const char *at = own; *at; at++)
        if ((at == own || at[-1] == ' ' || at[-1] == '-') && begins_harm(at) && !is_made_hole(text, at) &&
            !is_magnifying(text, at) && !is_praise(text, at) && !is_denied(text, own, at) &&
            !is_denial(text, own, at))
            return true;
    return false;
}

bool harm_is_foreign(const char *text) {
    enum { WORD_ROOM = 16 };
    size_t count = 0;
    for (const char *at = text; *at;) {
        size_t size = strcspn(at, " ,.;:\n");
        char word[WORD_ROOM];
        if (size && size < WORD_ROOM) {
            memcpy(word, at, size);
            word[size] = '\0';
            count += alien_word(word);
        }
        at += size + (at[size] != '\0');
    }
    return count >= 2;
}

// "Runs", "works": asks nothing where it is told how the thing runs or works.
bool harm_is_motion(const char *text) {
    static const char *const motions[] = {"runs",  "works",   "working", "ticks",
                                          "spins", "charges", "plays",   "heats"};
    for (size_t i = 0; i < COUNT(motions); i++)
        if (text_same(text, motions[i])) return true;
    return false;
}

// Understood as far as it goes: that nothing is wrong is said of no fault in particular.
bool harm_is_denied(const char *text) {
    static const char *const denials[] = {
        "no damage",    "no issues",        "no problems",    "nothing wrong",  "no faults",
        "no flaws",     "no defects",       "no smell",       "no smells",      "no odor",
        "no odour",     "no odors",         "no odours",      "doesn't smell",  "does not smell",
        "no blemishes", "no imperfections", "without faults", "without damage", "no marks",
        "no problem",   "no fault",         "no losses",      "no harm"};
    for (size_t i = 0; i < sizeof denials / sizeof *denials; i++)
        if (text_same(text, denials[i])) return true;
    return false;
}
