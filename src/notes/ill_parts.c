// SPDX-License-Identifier: MIT
// A part and a word for what has become of it, where no rule of a kind knows the two together: "the edges
// curl", "keys dull", "one spring is stretched", "chrome's bubbling". The stuff of the part tells the kind.
// Read after all that the rules find, and only where part and word are all that their clause says.
#include <string.h>

#include "notes/any.h"
#include "notes/stuff.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct {
    const char *words; // one, with its inflections
    const char *any;   // NULL: only on the stuffs below
    const char *of[STUFFS];
} ills[] = {
    {" crooked skewed skewwhiff ", NULL, {[STUFF_WOOD] = "warped", [STUFF_METAL] = "dent-bend"}},
    {" crushed flattened squashed mangled dished ",
     "dent-bend",
     {[STUFF_PAPER] = "crease", [STUFF_CLOTH] = "crease"}},
    {" curling curled curls curl ", "warped", {[STUFF_LEATHER] = "warped"}},
    {" puckered puckers puckering cockled rippled ripples ",
     "warped",
     {[STUFF_CLOTH] = "crease", [STUFF_PAPER] = "tide-line"}},
    {" bubbling bubbled bubbly blistering bubbles ",
     "paint-flaking",
     {[STUFF_METAL] = "plate-wear",
      [STUFF_LEATHER] = "peeling-coating",
      [STUFF_PLASTIC] = "peeling-coating",
      [STUFF_FIRED] = "firing-flaw"}},
    {" flaking flakes flaky ",
     "paint-flaking",
     {[STUFF_LEATHER] = "peeling-coating",
      [STUFF_PLASTIC] = "peeling-coating",
      [STUFF_PAPER] = "brittle-paper",
      [STUFF_RUBBER] = "rubber-perished"}},
    {" lifting ",
     "loose-part",
     {[STUFF_WOOD] = "veneer-damage",
      [STUFF_LEATHER] = "peeling-coating",
      [STUFF_PLASTIC] = "peeling-coating"}},
    {" shrunk shrunken ", "size-changed", {[STUFF_WOOD] = "wood-split", [STUFF_RUBBER] = "rubber-perished"}},
    {" stretched overstretched ",
     "size-changed",
     {[STUFF_METAL] = "dent-bend", [STUFF_RUBBER] = "rubber-perished"}},
    {" sprung ", "loose-part", {[STUFF_WOOD] = "warped"}},
    {" strained ", "loose-part", {NULL}},
    {" slack ", "loose-part", {[STUFF_RUBBER] = "rubber-perished", [STUFF_CLOTH] = "size-changed"}},
    {" marked streaky streaked spotty spotted patchy splotchy ",
     NULL,
     {[STUFF_CLOTH] = "stain", [STUFF_LEATHER] = "stain", [STUFF_PAPER] = "stain", [STUFF_FIRED] = "stain"}},
    {" browned ",
     "yellowing",
     {[STUFF_PAPER] = "toning", [STUFF_METAL] = "tarnish", [STUFF_FIRED] = "stain"}},
    {" blackened ", "stain", {[STUFF_METAL] = "tarnish"}},
    {" dull dulled ",
     NULL,
     {[STUFF_METAL] = "tarnish", [STUFF_WOOD] = "finish-crackle", [STUFF_FIRED] = "cloudy-glass"}},
    {" dry ", NULL, {[STUFF_LEATHER] = "leather-crack", [STUFF_RUBBER] = "rubber-perished"}},
    {" dried parched hardened hard ",
     NULL,
     {[STUFF_LEATHER] = "leather-crack", [STUFF_RUBBER] = "rubber-perished", [STUFF_WOOD] = "wood-split"}},
    {" damp soggy waterlogged ", "water-damage", {[STUFF_PAPER] = "water-damage"}},
    {" undone unstitched unsewn unpicked unwinding unwound unraveling unravelling unwrapped unwrapping ",
     "loose-part",
     {[STUFF_CLOTH] = "seam-open", [STUFF_LEATHER] = "seam-open"}},
    {" loose sloppy floppy unhooked unclipped unscrewed unbolted disconnected ", "loose-part", {NULL}},
    {" shot ",
     "wear-rub",
     {[STUFF_RUBBER] = "rubber-perished", [STUFF_LEATHER] = "leather-crack", [STUFF_CLOTH] = "fabric-weak"}},
    {" crossed ", NULL, {NULL}},
    {" lumpy ", NULL, {[STUFF_CLOTH] = "upholstery-wear"}},
    {" balding bald ",
     NULL,
     {[STUFF_CLOTH] = "wear-rub", [STUFF_RUBBER] = "sole-wear", [STUFF_LEATHER] = "wear-rub"}},
    {" damaged ",
     "broken-part",
     {[STUFF_FIRED] = "chip",
      [STUFF_CLOTH] = "tear",
      [STUFF_PAPER] = "tear",
      [STUFF_METAL] = "dent-bend",
      [STUFF_LEATHER] = "wear-rub"}},
    {" squeaks squeak squeals squeal creaks creak clunks clunk grinds grind ",
     "partly-working",
     {[STUFF_WOOD] = "loose-joint"}},
    {" crumbled crumbling crumbly ",
     "broken-part",
     {[STUFF_RUBBER] = "rubber-perished",
      [STUFF_CLOTH] = "fabric-weak",
      [STUFF_PAPER] = "brittle-paper",
      [STUFF_LEATHER] = "leather-crack"}},
    {" matted felted ", NULL, {[STUFF_CLOTH] = "size-changed"}},
    {" bitten nibbled ",
     "wear-rub",
     {[STUFF_PAPER] = "pest-signs", [STUFF_CLOTH] = "pest-signs", [STUFF_FIRED] = "chip"}},
    {" thinning ", NULL, {[STUFF_CLOTH] = "fabric-weak", [STUFF_METAL] = "blade-wear"}},
    {" chewed gnawed ",
     "wear-rub",
     {[STUFF_PAPER] = "pest-signs",
      [STUFF_CLOTH] = "pest-signs",
      [STUFF_WOOD] = "pest-signs",
      [STUFF_LEATHER] = "pest-signs",
      [STUFF_METAL] = "wear-rub",
      [STUFF_PLASTIC] = "wear-rub"}},
    {" wrecked ruined bust busted knackered bashed mullered buggered ",
     "broken-part",
     {[STUFF_CLOTH] = "fabric-weak", [STUFF_RUBBER] = "rubber-perished"}},
};

// All words of the table, so that most tokens cost one look.
static const char *const ill_words[] = {
    "bald",        "balding",       "bashed",     "bitten",       "blackened",  "blistering",  "browned",
    "bubbled",     "bubbles",       "bubbling",   "bubbly",       "buggered",   "bust",        "busted",
    "chewed",      "clunk",         "clunks",     "cockled",      "creak",      "creaks",      "crooked",
    "crossed",     "crumbled",      "crumbling",  "crumbly",      "crushed",    "curl",        "curled",
    "curling",     "curls",         "damaged",    "damp",         "dished",     "dried",       "dry",
    "dull",        "dulled",        "felted",     "flakes",       "flaking",    "flaky",       "flattened",
    "floppy",      "gnawed",        "grind",      "grinds",       "hard",       "hardened",    "knackered",
    "lifting",     "loose",         "lumpy",      "mangled",      "marked",     "matted",      "mullered",
    "nibbled",     "overstretched", "parched",    "patchy",       "puckered",   "puckering",   "puckers",
    "rippled",     "ripples",       "ruined",     "shrunk",       "shrunken",   "shot",        "skewed",
    "skewwhiff",   "slack",         "sloppy",     "soggy",        "splotchy",   "spotted",     "spotty",
    "sprung",      "squashed",      "squeak",     "squeaks",      "squeal",     "squeals",     "strained",
    "streaked",    "streaky",       "stretched",  "thinning",     "unwinding",  "unwound",     "unraveling",
    "unravelling", "unwrapped",     "unwrapping", "disconnected", "unbolted",   "unclipped",   "undone",
    "unhooked",    "unscrewed",     "unpicked",   "unsewn",       "unstitched", "waterlogged", "wrecked"};

// Those that stand before a part as well; the rest are verbs, or are said of what a part is for ("lifting
// ring").
static const char *const attributes[] = {
    "bashed",   "blackened", "bust",     "busted",    "chewed",   "crooked",   "crumbling",
    "crushed",  "curled",    "curling",  "damaged",   "flaking",  "flattened", "floppy",
    "gnawed",   "hard",      "hardened", "knackered", "loose",    "mangled",   "ruined",
    "shrunken", "skewed",    "slack",    "sloppy",    "squashed", "stretched", "wrecked"};

bool ill_before_part(const struct tokens *tokens, size_t i) {
    return token_among(tokens, i, attributes, COUNT(attributes)) &&
           !token_is(tokens, i, "hard"); // "no hard case"
}

static const char *const copulas[] = {
    "is",  "are",  "has",     "have",     "looks",     "look",   "gone",   "going", "been",  "was",  "seems",
    "got", "gets", "getting", "starting", "beginning", "turned", "that's", "that",  "which", "thats"};
static const char *const manners[] = {
    "a",    "bit",    "little", "very",   "badly",      "slightly", "quite", "all",    "rather", "pretty",
    "too",  "fairly", "now",    "well",   "right",      "somewhat", "most",  "mostly", "partly", "to",
    "also", "just",   "both",   "really", "completely", "up",       "out",   "in"};

// "Needs replacing": how many tokens.
static size_t wanted_at(const struct tokens *tokens, size_t i) {
    static const char *const wants[] = {"needs", "need", "wants", "want", "requires", "require"};
    static const char *const works[] = {"replacing", "attention", "fixing",      "repair",
                                        "repairing", "mending",   "sorting",     "renewing",
                                        "changing",  "renewal",   "replacement", "repairs"};
    return token_among(tokens, i, wants, COUNT(wants)) && token_among(tokens, i + 1, works, COUNT(works)) ? 2
                                                                                                          : 0;
}

// "The rope's had it", "leathers are on their last legs", "washers past saving": how many tokens.
static size_t spent_at(const struct tokens *tokens, size_t i) {
    static const char *const phrases[] = {"had it",
                                          "had its day",
                                          "had their day",
                                          "had its chips",
                                          "had their chips",
                                          "on its last legs",
                                          "on their last legs",
                                          "beyond repair",
                                          "beyond saving",
                                          "beyond use",
                                          "beyond it",
                                          "past saving",
                                          "past repair",
                                          "past mending",
                                          "past using",
                                          "done for",
                                          "no good",
                                          "no good now",
                                          "no use",
                                          "no use now",
                                          "gone home",
                                          "good for nothing",
                                          "fit for the bin",
                                          "fit for nothing"};
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE) return 0;
    size_t n = token_longest(tokens, i, phrases, COUNT(phrases));
    if (!n || !token_is(tokens, i, "had")) return n;
    size_t size = strlen(tokens->at[i - 1].fold); // "I've had it for years"
    bool has =
        ANY(tokens, i - 1, "has", "have") || (size > 2 && !strcmp(tokens->at[i - 1].fold + size - 2, "'s"));
    bool ends = i + n >= tokens->count || tokens->at[i + n].stop != STOP_NONE ||
                ANY(tokens, i + n, "and", "but", "so", "really", "now", "though");
    return has && ends ? n : 0;
}

static bool is_of_mirror(const struct fault_reader *r, size_t part) {
    const char *type = r->note->record->type.value;
    return ANY(&r->note->tokens, part, "mirror", "mirrors") ||
           (type && strstr(type, "mirror") && ANY(&r->note->tokens, part, "glass", "plate"));
}

static const char *kind_said(const struct fault_reader *r, size_t word, size_t part) {
    const struct token *token = &r->note->tokens.at[word];
    if (ANY(&r->note->tokens, word, "spotted", "spotty", "patchy", "splotchy", "marked", "blackened") &&
        is_of_mirror(r, part))
        return "mirror-silvering";
    if (ANY(&r->note->tokens, word, "flaking", "flakes", "flaky") &&
        ANY(&r->note->tokens, part, "dial", "dials", "face", "lettering", "letters", "numerals", "numbers"))
        return "paint-flaking";
    const struct family *family = r->note->record->family; // what was cooked in it
    const char *type = r->note->record->type.value;
    if (token_is(&r->note->tokens, word, "browned") && type && strstr(type, "toaster")) return NULL; // toast
    if (token_is(&r->note->tokens, word, "browned") && family && text_same(family->rule.id, "kitchenware") &&
        ANY(&r->note->tokens, part, "inside", "interior", "insides", "bottom", "well", "sides"))
        return "stain";
    bool lifts = ANY(&r->note->tokens, word, "flaking", "flakes", "flaky", "bubbling", "bubbled", "lifting");
    if (lifts && ANY(&r->note->tokens, part, "plating", "chrome", "nickel")) return "plate-wear";
    if (lifts && ANY(&r->note->tokens, part, "glaze")) return "chip"; // it comes off with the clay
    if (token_is(&r->note->tokens, word, "crossed") && ANY(&r->note->tokens, part, "thread", "threads"))
        return "broken-part";
    if (ANY(&r->note->tokens, word, "dull", "dulled") &&
        ANY(&r->note->tokens, part, "chain", "cutter", "cutters", "knives", "bits", "teeth", "cutting") &&
        family && !text_same(family->rule.id, "jewelry"))
        return "blade-wear"; // of a saw
    if (ANY(&r->note->tokens, part, "hair", "fur") && ANY(&r->note->tokens, word, "chewed", "gnawed"))
        return NULL;
    for (size_t k = 0; k < COUNT(ills); k++) {
        if (!stuff_among(ills[k].words, token)) continue;
        const char *kind = ills[k].of[stuff_of_part(r, part)];
        return kind ? kind : ills[k].any;
    }
    return NULL;
}

// "Has a loose base", "two loose jaws", but not "a box of loose keys" nor a cake tin "with a loose base".
static bool is_loose_one(const struct fault_reader *r, size_t i) {
    static const char *const works[] = {"tools",  "cameras", "electrical", "music",
                                        "sports", "parts",   "lighting",   "clocks-watches"};
    static const char *const leads[] = {"a",   "one",  "two",  "three",  "four", "some",  "few", "several",
                                        "has", "have", "got",  "couple", "very", "bit",   "the", "slightly",
                                        "its", "both", "five", "little", "six",  "rather"};
    const struct family *family = r->note->record->family;
    const struct tokens *tokens = &r->note->tokens;
    bool here = false;
    for (size_t k = 0; family && k < COUNT(works); k++) here |= !strcmp(works[k], family->rule.id);
    if (!here) return false;
    bool opens = i == 0 || tokens->at[i - 1].stop != STOP_NONE;
    return opens ? tokens->at[i + 1].one == tokens->at[i + 1].fold
                 : token_among(tokens, i - 1, leads, COUNT(leads));
}

// "No strings broken but they're slack": the part that the same sentence has spoken of; 0 if there is none.
static size_t part_of_pronoun(const struct fault_reader *r, size_t i) {
    static const char *const several[] = {"they", "they're", "theyre"};
    static const char *const pronouns[] = {"it", "it's", "they", "they're", "theyre"};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_among(tokens, i, pronouns, COUNT(pronouns))) return 0;
    bool plural = token_among(tokens, i, several, COUNT(several));
    for (size_t at = i; at > 0 && tokens->at[at - 1].stop < STOP_SENTENCE; at--)
        if (r->part[at - 1] && (!plural || tokens->at[at - 1].one != tokens->at[at - 1].fold)) return at;
    return 0;
}

static const char *const motions[] = {"turn", "turns", "work", "works", "roll", "rolls", "open",  "opens",
                                      "spin", "spins", "move", "moves", "run",  "runs",  "close", "closes",
                                      "shut", "shuts", "hold", "holds", "lock", "locks", "slide", "slides"};

// The part right before the word, its verb and words of degree; 0 if the clause says something else.
static size_t part_before(const struct fault_reader *r, size_t i, bool *meant) {
    enum { BACK = 5 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    for (size_t n = 0; n < BACK && at > 0; n++) {
        const struct token *token = &tokens->at[at - 1];
        if (token->stop != STOP_NONE || token->kind != TOKEN_WORD) return 0;
        if (r->part[at - 1]) return at;
        size_t spoken_of = part_of_pronoun(r, at - 1);
        *meant = spoken_of > 0;
        if (spoken_of) return spoken_of;
        bool moves = at > 2 && ANY(tokens, at - 1, "but", "and") && tokens->at[at - 2].stop == STOP_NONE &&
                     token_among(tokens, at - 2, motions, COUNT(motions));
        if (moves) { // "gears turn but squeak"
            at -= 2;
            continue;
        }
        if (!token_among(tokens, at - 1, copulas, COUNT(copulas)) &&
            !token_among(tokens, at - 1, manners, COUNT(manners)))
            return stuff_subject(r, at);
        at--;
    }
    return stuff_subject(r, at);
}

// "A damaged plug", "flaking dial": the part that the word stands before, where no other word of what is
// wrong and no thing follows it; 0 if there is none.
static size_t part_after(const struct fault_reader *r, size_t i) {
    static const char *const sides[] = {"left", "right", "top",   "bottom", "front", "back",
                                        "rear", "upper", "lower", "inner",  "outer", "brass"};
    static const char *const before[] = {"is", "are", "was", "were", "not", "isn't", "aren't", "never"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i + 1;
    if (ANY(tokens, i, "loose", "sloppy", "floppy") && !is_loose_one(r, i)) return 0;
    if (tokens->at[i].stop != STOP_NONE || (i > 0 && token_among(tokens, i - 1, before, COUNT(before))))
        return 0;
    if (token_among(tokens, at, sides, COUNT(sides)) && tokens->at[at].stop == STOP_NONE) at++;
    if (at >= tokens->count || !r->part[at] || r->scope.fault[at]) return 0;
    size_t to = at + 1;
    while (to < tokens->count && tokens->at[to - 1].stop == STOP_NONE && r->part[to]) to++;
    bool thing = r->note->taken[to - 1] == TAKEN_TYPE;
    return thing || (to < tokens->count && tokens->at[to - 1].stop == STOP_NONE && r->scope.fault[to]) ? 0
                                                                                                       : to;
}

// "The leg was loose, I glued it" is read by the rule; "I bent the soles hard" is how it was done.
static bool only_before(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (ANY(tokens, i, "loose", "sloppy", "floppy")) return true;
    if (!token_is(tokens, i, "hard") || i == 0 || !r->part[i - 1]) return false;
    size_t start = i - 1;
    while (start > 0 && r->part[start - 1] && tokens->at[start - 1].stop == STOP_NONE) start--;
    return start > 0 && tokens->at[start - 1].stop == STOP_NONE;
}

static bool closes(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"and",  "but",      "at",  "in",     "on",    "round", "around",
                                        "near", "up",       "out", "along",  "from",  "with",  "badly",
                                        "a",    "slightly", "so",  "where",  "now",   "under", "by",
                                        "when", "off",      "too", "for",    "since", "after", "to",
                                        "from", "down",     "all", "across", "one",   "both",  "each"};
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           token_among(tokens, i, words, COUNT(words));
}

void read_ill_parts(struct fault_reader *r) {
    static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_WITHDRAWN |
                                STANCE_OTHER | STANCE_UNKNOWN | STANCE_PLANNED;
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        size_t n = wanted_at(tokens, i), spent = n ? 0 : spent_at(tokens, i);
        n += spent;
        if (!n) n = tokens->at[i].kind == TOKEN_WORD && token_among(tokens, i, ill_words, COUNT(ill_words));
        size_t verb =
            i > 1 && ANY(tokens, i - 1, "all", "quite", "bone", "perfectly", "nice", "still") ? i - 1 : i;
        if (n == 1 && token_is(tokens, i, "dry") && verb > 1 &&
            (ANY(tokens, verb - 1, "inside", "insides", "interior", "bottom") ||
             (ANY(tokens, verb - 1, "is", "are", "was") &&
              ANY(tokens, verb - 2, "inside", "insides", "interior", "bottom"))))
            continue; // "inside is dry": no damp got in
        if (n == 1 && token_is(tokens, i, "hard") &&
            ANY(tokens, i - 1, "shut", "closed", "down", "home", "tight", "snaps", "shuts", "closes", "grips",
                "clicks", "locks", "presses", "sits", "bites", "works", "pulls"))
            continue; // "snaps shut hard": how it does so
        if (n == 1 && token_is(tokens, i, "slack") && ANY(tokens, i - 1, "up", "the", "any", "some"))
            continue; // "takes up slack"
        if (!n || !note_free(r->note, i, i + n) || r->scope.stance[i] & off) continue;
        bool meant = false; // by a pronoun: its name has had its say
        size_t behind = closes(tokens, i + n) && !only_before(r, i) ? part_before(r, i, &meant) : 0;
        size_t named;
        if (!behind && closes(tokens, i + n) && !only_before(r, i) && spot_of_contrast(r, i, &named, &behind))
            meant = true;
        bool effort = token_is(tokens, i, "hard") &&
                      ANY(tokens, i + 1, "pull", "push", "tug", "turn", "knock", "press", "twist");
        if (!behind && n == 1 && !effort && token_among(tokens, i, attributes, COUNT(attributes)))
            behind = part_after(r, i);
        if (!behind) continue;
        if (behind <= i) behind = stuff_head(r, behind);
        size_t part = behind - 1, from = part;
        if (token_is(tokens, part, "back") && part > 0 && r->scope.fault[part - 1])
            continue; // "glued back crooked"
        if (!meant && !note_free(r->note, part, behind) && r->note->taken[part] != TAKEN_PART) continue;
        static const char *const spents[STUFFS] = {[STUFF_CLOTH] = "fabric-weak",
                                                   [STUFF_RUBBER] = "rubber-perished",
                                                   [STUFF_LEATHER] = "leather-crack"};
        size_t more = i + n; // "straps no good, perished": the fault is named
        if (spent && more + 1 < tokens->count && tokens->at[more].stop != STOP_NONE &&
            tokens->at[more].stop <= STOP_CLAUSE && r->scope.fault[more + 1])
            continue;
        const char *id = !spent                                 ? NULL
                         : ANY(tokens, part, "strap", "straps") ? "strap-damage"
                                                                : spents[stuff_of_part(r, part)];
        if (!id) id = n > 1 ? "broken-part" : kind_said(r, i, part);
        const struct flaw *kind = id ? ruleset_flaw(r->note->rules, id) : NULL;
        if (!kind) continue;
        while (from > 0 && from != i + 1 && r->part[from - 1]) from--;
        struct fault_hit hit = {.from = i, .to = i + n, .kinds = {kind}, .kind_count = 1};
        fault_tell(r, &hit, kind, fault_place(r->note, from, behind), stuff_where(r, &hit));
    }
}
