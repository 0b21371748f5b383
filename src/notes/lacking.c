// SPDX-License-Identifier: MIT
// The words that say a part is not there, put together as people put them: "has long since vanished", "are
// nowhere to be seen", "came without", "was robbed of its", "there isn't a". The kind by the part, where no
// rule names that part.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"
#include "notes/lacking.h"
#include "notes/stuff.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// Longest of the phrases that stands at `i`; how many tokens.
static bool joined(const struct tokens *tokens, size_t i) {
    return i < tokens->count && tokens->at[i].stop == STOP_NONE && tokens->at[i].kind == TOKEN_WORD;
}

// "The handle has lost a flake", "case missing its hook": it is what lacks something.
static bool has_object(const struct tokens *tokens, size_t i) {
    static const char *const lose[] = {"lost", "missing", "lacking", "mislaid", "wanting"};
    static const char *const objects[] = {"a",    "an",      "its",   "his",  "her",  "their", "the",
                                          "one",  "two",     "some",  "any",  "both", "all",   "three",
                                          "four", "five",    "six",   "most", "half", "bits",  "much",
                                          "part", "several", "every", "of"};
    bool many = token_is(tokens, i - 1, "missing") && joined(tokens, i) &&
                tokens->at[i].one != tokens->at[i].fold; // "the zip is missing teeth"
    return AMONG(tokens, i - 1, lose) && joined(tokens, i - 1) && (AMONG(tokens, i, objects) || many);
}

// "Isn't in its clip", "not in the tin".
static size_t not_in_place(const struct tokens *tokens, size_t i) {
    static const char *const nots[] = {"not", "isn't", "aren't", "wasn't", "weren't", "isnt", "never"};
    static const char *const owners[] = {"its", "the", "their", "his"};
    static const char *const places[] = {
        "clip",     "slot",   "place",  "pouch",  "holder", "tin",    "box",     "bag",   "case",
        "drawer",   "lid",    "tray",   "roll",   "loop",   "socket", "pocket",  "set",   "lot",
        "picture",  "photo",  "hole",   "clips",  "slots",  "places", "recess",  "tube",  "sheath",
        "envelope", "sleeve", "packet", "carton", "chest",  "rack",   "bracket", "photos"};
    return AMONG(tokens, i, nots) && token_is(tokens, i + 1, "in") && AMONG(tokens, i + 2, owners) &&
                   AMONG(tokens, i + 3, places)
               ? 4
               : 0;
}

// "The movement has been taken out.": and nothing more is said of it.
static size_t taken_out(const struct tokens *tokens, size_t i) {
    static const char *const ways[] = {"taken out", "pulled out", "stripped out", "removed"};
    size_t n = ANY(tokens, i - 1, "been") ? token_longest(tokens, i, ways, COUNT(ways)) : 0;
    return n && (i + n >= tokens->count || tokens->at[i + n].stop != STOP_NONE) ? n : 0;
}

size_t lacking_behind(const struct tokens *tokens, size_t i) {
    static const char *const leads[] = {
        "is",        "are",       "was",       "were",       "has",     "have",     "had",
        "been",      "be",        "being",     "got",        "gets",    "went",     "gone",
        "going",     "seems",     "seem",      "appears",    "appear",  "looks",    "to",
        "both",      "all",       "long",      "since",      "sadly",   "alas",     "now",
        "already",   "also",      "just",      "then",       "clean",   "simply",   "unfortunately",
        "sometime",  "somehow",   "somewhere", "completely", "totally", "entirely", "apparently",
        "evidently", "obviously", "probably",  "quite",      "mostly",  "largely",  "nearly",
        "almost",    "mainly",    "too",       "either",     "must",    "may",      "might",
        "himself",   "itself"};
    // By themselves: "the lid is missing".
    static const char *const gone[] = {"absent",
                                       "absent without leave",
                                       "adrift somewhere",
                                       "astray",
                                       "awol",
                                       "binned",
                                       "chucked out",
                                       "did not survive",
                                       "didn't survive",
                                       "didn't turn up",
                                       "disappeared",
                                       "discarded",
                                       "ditched",
                                       "eloped",
                                       "flown the nest",
                                       "gone",
                                       "hasn't survived",
                                       "haven't survived",
                                       "isn't among them",
                                       "isn't in it",
                                       "isn't in the box",
                                       "isn't included",
                                       "isn't on it",
                                       "isn't present",
                                       "isn't to be found",
                                       "aren't in it",
                                       "aren't in the box",
                                       "aren't included",
                                       "aren't on it",
                                       "aren't present",
                                       "aren't to be found",
                                       "lacking",
                                       "left the building",
                                       "lost",
                                       "mislaid",
                                       "missing",
                                       "misplaced",
                                       "never found",
                                       "never made it",
                                       "never showed up",
                                       "never turned up",
                                       "no longer here",
                                       "no longer with us",
                                       "no longer in it",
                                       "no longer on it",
                                       "no longer present",
                                       "no longer there",
                                       "no longer with it",
                                       "not among them",
                                       "not in it",
                                       "not in the box",
                                       "not on it",
                                       "not provided",
                                       "not found",
                                       "not to hand",
                                       "not located",
                                       "parted from it",
                                       "not supplied",
                                       "nowhere in sight",
                                       "nowhere to be had",
                                       "nowhere about",
                                       "nowhere around",
                                       "removed and lost",
                                       "scarpered",
                                       "snaffled",
                                       "stayed behind",
                                       "swiped",
                                       "taken a walk",
                                       "the way of all flesh",
                                       "vanished",
                                       "walkabout",
                                       "wandered",
                                       "wandered off",
                                       "walked off",
                                       "what's missing",
                                       "what is missing",
                                       "done a runner",
                                       "did a runner",
                                       "done a bunk",
                                       "fallen off and lost",
                                       "off and missing",
                                       "off and gone",
                                       "off and lost",
                                       "fell off and got lost",
                                       "fell off and lost",
                                       "came off and got lost",
                                       "came off and lost",
                                       "come off and lost",
                                       "snapped off and lost",
                                       "broke off and lost",
                                       "fallen by the wayside",
                                       "to the great beyond",
                                       "not survived",
                                       "not with them",
                                       "isn't with them",
                                       "aren't with them",
                                       "not in with it",
                                       "never seen again",
                                       "not been seen since",
                                       "didn't make it",
                                       "did not make it",
                                       "didn't last",
                                       "did not last",
                                       "wasn't in the box",
                                       "weren't in the box",
                                       "wasn't in the bag",
                                       "wasn't in the case",
                                       "wasn't in the lot",
                                       "weren't in the lot",
                                       "wasn't among them",
                                       "weren't among them",
                                       "sold separately",
                                       "listed separately",
                                       "to parts unknown",
                                       "off to pastures new",
                                       "in a different lot",
                                       "in some box or other",
                                       "still at the house",
                                       "still in the loft",
                                       "still in the attic",
                                       "no longer attached",
                                       "fallen out and lost",
                                       "fell out and got lost",
                                       "dropped off and got lost",
                                       "come adrift and lost",
                                       "not coming with it",
                                       "not going with it",
                                       "not part of the sale",
                                       "not part of it",
                                       "not for sale with it",
                                       "staying with me",
                                       "kept back",
                                       "held back",
                                       "not here any more",
                                       "not there any more",
                                       "not with it any more",
                                       "long departed",
                                       "worn away to nothing",
                                       "perished to nothing",
                                       "perished and gone",
                                       "rotted away",
                                       "rusted away to nothing"};
    // Behind a verb of going or being alone: "went astray", and not "somewhere else".
    static const char *const led[] = {"for good",
                                      "for a burton",
                                      "for a walk",
                                      "west",
                                      "walked",
                                      "robbed",
                                      "elsewhere",
                                      "no more",
                                      "history",
                                      "begging",
                                      "wanting",
                                      "in the bin",
                                      "in the skip",
                                      "departed",
                                      "deserted",
                                      "stolen",
                                      "chucked",
                                      "to the tip",
                                      "out of it",
                                      "to the dump",
                                      "to the skip",
                                      "to the scrap man",
                                      "to the jumble",
                                      "to jumble",
                                      "to charity",
                                      "in the fire",
                                      "on the fire",
                                      "on the bonfire",
                                      "in the rubbish",
                                      "in the trash",
                                      "in the dumpster",
                                      "somewhere else",
                                      "adrift",
                                      "in another box",
                                      "in a different box",
                                      "in some other box",
                                      "in a box somewhere",
                                      "somewhere in the house",
                                      "sold off",
                                      "at large",
                                      "in another lot",
                                      "in another listing",
                                      "somewhere in the loft",
                                      "somewhere in the attic",
                                      "somewhere in the shed",
                                      "somewhere in the garage",
                                      "somewhere in storage",
                                      "somewhere at home",
                                      "staying here"};
    size_t at = i;
    while (at < i + 5 && joined(tokens, at) && AMONG(tokens, at, leads)) at++;
    // "gone" leads ("gone missing") and says it by itself; a bare "went", "been" or "walked" says nothing.
    for (;; at--) {
        size_t n = token_longest(tokens, at, gone, COUNT(gone)),
               m = token_longest(tokens, at, led, COUNT(led));
        bool needs_lead = m > n;
        if (needs_lead) n = m;
        if (!n) n = not_in_place(tokens, at);
        if (!n && at > i) n = taken_out(tokens, at);
        if (at == i && token_is(tokens, at, "wanting") &&
            (at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE))
            return 1;
        if (n && has_object(tokens, at + n)) return 0;
        if (n && !(needs_lead && at == i)) return at + n - i;
        if (at == i) return 0;
    }
}

// "Straps all there but one buckle has snapped": a statement of its own behind the "but".
static bool states_behind(const struct tokens *tokens, size_t i) {
    enum { FAR = 5 };
    for (size_t at = i + 1; at < i + FAR && at < tokens->count && tokens->at[at - 1].stop == STOP_NONE; at++)
        if (ANY(tokens, at, "has", "is", "have", "are", "was", "needs", "isn't", "won't", "doesn't", "looks"))
            return !ANY(tokens, at - 1, "which", "that");
    return false;
}

size_t lacking_before(const struct tokens *tokens, size_t i) {
    static const char *const lacks[] = {"all there but",
                                        "all there except",
                                        "all there except for",
                                        "all there apart from",
                                        "all there bar",
                                        "bereft of",
                                        "can't see any sign of",
                                        "couldn't see any sign of",
                                        "haven't seen any sign of",
                                        "never any sign of",
                                        "can't see a sign of",
                                        "see no sign of",
                                        "saw no sign of",
                                        "found no sign of",
                                        "there's no sign of",
                                        "there is no sign of",
                                        "not any sign of",
                                        "came to me without",
                                        "came without",
                                        "comes without",
                                        "complete apart from",
                                        "complete bar",
                                        "complete but for",
                                        "complete except",
                                        "complete except for",
                                        "crying out for",
                                        "deprived of",
                                        "devoid of",
                                        "did not come with",
                                        "didn't have",
                                        "didn't get",
                                        "do not have",
                                        "does not come with",
                                        "does not have",
                                        "doesn't include",
                                        "does not include",
                                        "didn't include",
                                        "won't include",
                                        "been parted from",
                                        "divorced from",
                                        "without any",
                                        "doesn't come with",
                                        "doesn't have",
                                        "don't have",
                                        "denuded of",
                                        "had no",
                                        "has mislaid",
                                        "has parted with",
                                        "has shed",
                                        "hasn't any",
                                        "hasn't got",
                                        "hasn't got any",
                                        "have no",
                                        "haven't any",
                                        "haven't got",
                                        "haven't",
                                        "i've no",
                                        "i've never had",
                                        "in need of",
                                        "in want of",
                                        "it's got no",
                                        "got no",
                                        "lack",
                                        "lacking",
                                        "lacks",
                                        "lost",
                                        "minus",
                                        "misses",
                                        "missing",
                                        "never came with",
                                        "no longer got",
                                        "no longer has",
                                        "not a sign of",
                                        "not got",
                                        "not with",
                                        "nothing left of",
                                        "parted with",
                                        "robbed of",
                                        "sans",
                                        "separated from",
                                        "shorn of",
                                        "short of",
                                        "shy of",
                                        "sold without",
                                        "stripped of",
                                        "supplied without",
                                        "there are no",
                                        "there isn't",
                                        "there is no",
                                        "there was no",
                                        "there's no",
                                        "there's not",
                                        "theres no",
                                        "wanting",
                                        "what became of",
                                        "what happened to",
                                        "with neither",
                                        "without",
                                        "without so much as"};
    static const char *const counts[] = {
        "one",     "two",  "three",   "four",   "five", "six",      "some",   "both",   "all",   "most",
        "several", "half", "another", "any",    "a",    "an",       "the",    "its",    "their", "his",
        "it's",    "new",  "few",     "couple", "of",   "original", "proper", "single", "my"};
    // With no word for how many, these lead to a part; the rest ask for one ("wants a clean").
    size_t n = token_longest(tokens, i, lacks, COUNT(lacks));
    if (!n || tokens->at[i + n - 1].stop != STOP_NONE) return 0;
    if (token_is(tokens, i, "all") && (ill_before_part(tokens, i + n) || states_behind(tokens, i + n)))
        return 0; // "all there but slack"
    size_t at = i + n;
    while (at < i + n + 4 && joined(tokens, at) && AMONG(tokens, at, counts)) at++;
    static const char *const asks[] = {"haven't", "lost", "not with", "there isn't", "hasn't got"};
    if (at == i + n && token_longest(tokens, i, asks, COUNT(asks)) == n) return 0;
    return at - i;
}

const char *lacking_kind(const char *part, const char *family) {
    static const struct {
        const char *kind, *words;
    } kinds[] = {
        {"missing-hardware",
         " nut wingnut castor caster escutcheon latch hasp glide peg washer rivet bolt screw hook eyelet "
         "grommet fixing drawer-pull clip stud runner keeper catch thumbscrew cleat rowlock "},
        {"missing-key", " handcrank starting-handle winding-handle winding-key "},
        {"missing-cord", " lead adaptor adapter transformer charger "},
        {"missing-pieces",
         " pawn domino counter peg marble spoon fork knife rook bishop knight king queen token draught "
         "checker jigsaw-piece joker skittle "},
        {"missing-box", " sleeve-box gig-bag "},
        {"missing-instructions",
         " booklet handbook rulebook rules rule diagram plan drawing leaflet instruction paperwork "},
        {"missing-stopper", " bung stopper "},
        {"trim-loss", " tassel fringe bobble sequin "},
        {"seam-open", " stitching stitch "},
    };
    // What the same word is depends on the goods.
    static const struct {
        const char *kind, *families, *words;
    } owned[] = {
        {"missing-cord", " electrical tools lighting ", " cord flex cable "},
        {"missing-jacket", " books ", " wrapper dustwrapper dustcover dj dw "},
        {"missing-tag", " clothing linens bags footwear ", " label tag "},
        {"stone-missing", " jewelry ",
         " diamante rhinestone paste crystal garnet sapphire ruby turquoise opal amethyst cabochon "},
        {"missing-mate", " jewelry footwear ", " mate partner twin "},
        {"missing-accessory", " footwear sports ", " lace bootlace shoelace "},
        {"trim-loss", " decor holiday crafts ", " lace "},
        {"missing-hardware", " footwear ",
         " nail hobnail iron spike stud cleat segg heel-plate toe-plate tip "},
        {"missing-liner", " footwear ", " insole footbed "},
        {"missing-pieces", " games-puzzles ", " peg ball hoop quoit ring shaker dice die cue pin "},
        {"trim-loss", " clothing linens bags lighting decor crafts holiday ",
         " bead strand tuft pompom pom-pom rosette feather "},
        {"missing-pieces", " games-puzzles ", " blank double ace deuce jack ten nine tile pip "},
        {"finish-crackle", " furniture music ", " varnish lacquer polish shellac finish "},
        {"paint-flaking", " decor music ", " varnish lacquer "},
        {"gilt-wear", " decor ceramics glassware books ", " gilt gilding gold "},
    };
    if (!strncmp(part, "battery ", 8) && strstr(" lid flap door cover hatch cap back panel ", part + 8))
        return "missing-battery-cover";
    static const char leaves[] =
        " page leaf map plate frontispiece index flyleaf endpaper section title-page centrefold centerfold "
        "recipe chart diagram gathering ";
    static const char fasteners[] = " popper toggle cufflink press-stud press-stud loop snap hook eye frog ";
    const char *head = strrchr(part, ' ');
    head = head ? head + 1 : part;
    size_t n = strlen(head);
    const char *at = leaves;
    bool book = family && (text_same(family, "books") || text_same(family, "paper"));
    for (; book && (at = strstr(at, head)) != NULL; at++)
        if (at[-1] == ' ' && at[n] == ' ') return "pages-loose";
    bool worn = family && (text_same(family, "clothing") || text_same(family, "bags"));
    for (at = fasteners; worn && (at = strstr(at, head)) != NULL; at++)
        if (at[-1] == ' ' && at[n] == ' ') return "missing-button";
    for (size_t k = 0; family && k < COUNT(owned); k++) {
        bool kin = *family == '*' || strstr(owned[k].families, family);
        for (at = owned[k].words; kin && (at = strstr(at, head)) != NULL; at++)
            if (at[-1] == ' ' && at[n] == ' ') return owned[k].kind;
    }
    for (size_t k = 0; k < COUNT(kinds); k++)
        for (at = kinds[k].words; (at = strstr(at, head)) != NULL; at++)
            if (at[-1] == ' ' && at[n] == ' ') return kinds[k].kind;
    return NULL;
}

bool lacking_extra(const char *noun) {
    static const char *const words[] = {
        "brush",   "hose",   "nozzle", "tool",    "attachment", "bag",     "filter", "needle", "pad",
        "tube",    "basket", "tray",   "clip",    "hook",       "stake",   "pole",   "peg",    "mat",
        "ball",    "net",    "bat",    "dart",    "nib",        "reed",    "bow",    "rosin",  "mute",
        "stick",   "rack",   "grille", "grate",   "guard",      "battery", "bulb",   "mantle", "wick",
        "chimney", "globe",  "pump",   "saddle",  "pedal",      "mount",   "tripod", "cap",    "hood",
        "flash",   "remote", "stand",  "plate",   "mirror",     "shelf",   "pan",    "beater", "paddle",
        "spike",   "float",  "reel",   "paddles", "oar",        "sail"};
    for (size_t i = 0; i < COUNT(words); i++)
        if (text_same(noun, words[i])) return true;
    return false;
}

const char *lacking_place_behind(struct fault_reader *r, size_t i) {
    size_t from, to;
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0 || i >= tokens->count || tokens->at[i - 1].stop != STOP_NONE ||
        !ANY(tokens, i, "on", "off", "from", "at", "along", "in", "inside", "down", "near", "by"))
        return NULL;
    to = spot_place_at(r, i, &from);
    if (!to || r->note->taken[from] == TAKEN_TYPE) return NULL;
    note_take(r->note, from, to, TAKEN_PART);
    return fault_words(r->note, from, to);
}
