// SPDX-License-Identifier: MIT
// A part that was found to be right denies the fault that is asked of such a part, and no other: "handle is
// tight" a loose one, "zip works" a zip's, "cord good" a frayed cord, "drawers slide fine" seized ones,
// "holds water" a leak. "Glass is good" names nothing that was looked for and denies nothing.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/place.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Words with a bar between. A part that its kind does not imply is kept as said.
struct pair {
    const char *parts, *told, *kind;
};

static const struct pair pairs[] = {
    {"cord|cable|flex|power cord|power lead|mains lead|lead and plug|cord and plug|plug",
     "good|fine|ok|okay|sound|intact|solid|great|perfect|all good|in good shape|in good condition|in good "
     "order|"
     "in good nick|looks good|looks fine|looks okay|looks ok|seems fine|seems good|not frayed",
     "cord-frayed"},
    {"zip|zips|zipper|zippers",
     "works|work|good|fine|ok|okay|smooth|runs|works fine|work fine|works great|works good|works well|work "
     "well|runs its full length|works perfectly|works smoothly|runs fine|runs smooth|runs smoothly|goes "
     "up|goes up and down|goes up and down fine|slides fine|zips fine|zips up fine|zips up|working|in "
     "working order|moves its whole length|runs its whole length|goes its whole length",
     "zip-fault"},
    {"clasp|clasps|catch",
     "works|work|good|fine|works fine|works well|closes|closes well|secure|holds|strong", "clasp-fault"},
    {"lining", "clean|intact|good|sound|fine|perfect|in good shape|clean and intact|all good|great",
     "lining-damage"},
    {"seams|stitching|hem|hems|seam",
     "good|tight|sound|solid|intact|strong|all good|fine|secure|all sound|all intact|all tight", "seam-open"},
    {"spine|spines|hinges|inner hinges|spine and hinges", "ok|okay|fine|good|sound|tight|intact|solid|firm",
     "binding-weak"},
    {"solder|soldering|soldered joints|soldered seams", "sound|good|intact|solid|fine|holding", "seam-split"},
    {"boards|planks|staves|slats", "sound|all sound|sound and solid|uncracked|unsplit", "wood-split"},
    {"elastic|rubber|rubbers|tires|tyres|gasket|seal|seals",
     "good|fine|ok|okay|strong|supple|soft|springy|stretchy|pliable|flexible|not perished|still has "
     "stretch|soft and "
     "supple",
     "rubber-perished"},
    {"soles|sole|heels", "tight|firm|on tight|well attached|firmly attached|firmly on|secure|solid",
     "sole-separation"},
    {"veneer", "ok|okay|fine|tight|sound|good|intact|all there|solid|flat|all good|all intact|perfect",
     "veneer-damage"},
    {"paint|varnish", "solid|sound|firm|tight|intact|not flaking", "paint-flaking"},
    {"colors|colours|color|colour",
     "bright|strong|vivid|good|unfaded|vibrant|rich|fresh|bright and strong|good and strong|nice and "
     "bright|true",
     "fading"},
    {"globe|chimney|glass chimney|tumbler|decanter|bowl glass",
     "clear|crystal clear|sparkling|bright and clear|clean and clear|not cloudy", "cloudy-glass"},
    {"glass",
     "clear as a bell|clear as day|perfectly clear|nice and clear|crystal clear|sparkling|not cloudy",
     "cloudy-glass"},
    {"plating|plate|chrome|nickel|silver plate",
     "good|fine|sound|intact|bright|unworn|all there|shiny|good and bright|still bright", "plate-wear"},
    {"silvering", "good|intact|perfect|sound|all there|clear|unspotted", "mirror-silvering"},
    {"pages|paper|leaves|page edges", "white|bright|still white|still bright|nice and white|unyellowed",
     "toning"},
    {"pages|text|margins", "unmarked|clean and unmarked|free of writing|unmarked throughout",
     "writing-inside"},
    {"gold|gilt|gilding",
     "still bright|still there|still all there|good and bright|all present|unworn|all "
     "there|intact|bright|good|perfect|complete",
     "gilt-wear"},
    {"paper", "strong|supple|flexible|sound", "brittle-paper"},
    {"strap|straps|carrying strap|leather straps|leather strap",
     "whole and supple|whole|good|sound|strong|solid|supple|intact|in good shape|fine|all good",
     "strap-damage"},
    {"leather|leathers", "whole and supple|supple|soft|sound|pliable|soft and supple|still supple|still soft",
     "leather-crack"},
    {"optics|telescope|finder|finders|viewfinder|prisms|both eyes|lenses|lens|crystal|screen|dial "
     "glass|watch glass|gauge glass|eyepieces|eyepiece",
     "clear|clear and bright|clean and clear|bright and clear|perfectly clear|unscratched", "screen-damage"},
    {"battery bay|battery box|battery contacts|battery terminals|battery holder|terminals|contacts|battery "
     "area",
     "clean|bright|spotless|shiny|clean and bright|clean and shiny|all clean|corrosion free",
     "battery-corrosion"},
    {"eyes|nut|handle|handles|knob|knobs|finial|lid "
     "knob|spout|head|feet|foot|stem|ears|bracket|brackets|arms|ferrule|hinge|hinges|hoops|rivets|stones|"
     "blade|pivot|pin|pins|screws|bolts|nuts|bail|ring|rings|chain|bezel|wheels|tines|slats|spindles|boards|"
     "eyelets|grommets|studs|tote|clapper|nozzle|latch|hasp|axle|spokes",
     "tight|firm|secure|solid|sound|rock solid|sturdy|tight and solid|on tight|good and tight|nice and "
     "tight|solid and tight|firmly on|firmly attached|firmly fixed|all tight|both tight|all secure|both "
     "solid|all solid|strong|good and solid|nice and solid|nice and firm|firm and secure|well attached",
     "loose-part"},
    {"spout|handle|handles|finial|beak|ears|feet|knob|arms|wings|fingers",
     "intact|unbroken|undamaged|uninjured", "broken-part"},
    {"gimbals|jaws|vice|focus|focusing|focussing|bearings|wheel|wheels|crank|winder|valves|pistons|slides|"
     "movement|action|"
     "drawers|drawer|hinge|hinges|"
     "zoom|shutter|tuners|pegs|screw|screws|taps|tap|knobs|keys",
     "smooth|free|free and smooth|smooth and free|nice and smooth|all free|free moving|all smooth|nice and "
     "free",
     "seized"},
    {"binding|bindings|text block",
     "tight|sound|good|solid|firm|square|intact|strong|perfect|square and tight|nice and tight|tight and "
     "square|all "
     "tight",
     "binding-weak"},
    {"fringe|fringes|tassels|tassel|trim|braid|beading|fringing",
     "complete|intact|all there|good|full|all intact|all present", "trim-loss"},
    {"cane|cane seat|rush seat|seat|upholstery|caning|rush|canework|cane work",
     "good|sound|intact|tight|in good order|in good shape|in good condition|firm|all good|perfect",
     "upholstery-wear"},
    {"neck|fingerboard|fretboard|rails|runners|sole|base|bottom|lid|board|panel|top|plate|table top|cover",
     "flat|straight|dead straight|dead flat|dead true|perfectly flat|straight and flat|flat and true|nice "
     "and flat|not warped",
     "warped"},
    {"lid|lids|door|doors|drawer|drawers|cover|flap|flaps|hatch|shutter|shutters",
     "closes flush|close flush|shuts flush|shut flush|sits flush|sit flush|flush|fits flush|closes "
     "square|close "
     "square|shuts square|shut square|closes true|close true|shuts true|shut true|hangs true|hang true|hangs "
     "square|hangs straight|hang straight|sits square|sit square|lies flush|meet flush|meets flush|closes "
     "down "
     "flush|shuts down flush",
     "warped"},
    {"wheels|wheel|rims",
     "true|run true|runs true|spin true|spins true|turns true|turn true|straight and true", "dent-bend"},
    {"stone|stones", "true|runs true|turns true|run true|turn true", "warped"},
    {"blade|blades|tines|shaft|prongs|rod|barrel|needle|spokes|pins|tubes|frame tubes",
     "straight|dead straight|true|all straight|perfectly straight|straight and true|nice and straight",
     "dent-bend"},
    {"legs|leg|joints|dovetails|dovetail joints|mortises|frame|stretchers|rungs|arms and legs|back legs|all "
     "joints|back and legs",
     "tight|firm|secure|solid|rock solid|solid as a rock|as solid as a rock|rock "
     "steady|sturdy|sound|strong|all tight|all solid|all firm|good and solid|"
     "tight and solid|solid and tight|nice and tight|nice and solid|all sound|steady",
     "loose-joint"},
};

// "Turns", "slides" and how: what moves is not stuck.
static const char *const moves[] = {"turns",
                                    "wind",
                                    "winds",
                                    "turn",
                                    "moves",
                                    "move",
                                    "spins",
                                    "spin",
                                    "slides",
                                    "slide",
                                    "opens",
                                    "open",
                                    "opens and closes",
                                    "open and close",
                                    "swings",
                                    "swing",
                                    "rotates",
                                    "goes up and down",
                                    "go up and down",
                                    "goes in and out",
                                    "winds up and down",
                                    "turns on and off",
                                    "lifts",
                                    "goes round",
                                    "opens and shuts",
                                    "open and shut",
                                    "focuses",
                                    "closes and opens",
                                    "racks in and out",
                                    "pull out",
                                    "pulls out",
                                    "unscrews",
                                    "adjusts",
                                    "adjust",
                                    "extend",
                                    "extends",
                                    "fold",
                                    "rotate",
                                    "swing",
                                    "tilt",
                                    "swivel",
                                    "retract",
                                    "unscrew",
                                    "lock and unlock",
                                    "turns and returns",
                                    "raises and lowers",
                                    "screws in",
                                    "tilts",
                                    "swivels",
                                    "retracts",
                                    "pumps",
                                    "extends",
                                    "folds",
                                    "locks and unlocks"};
static const char *const freely[] = {"freely",
                                     "sweet",
                                     "sweetly",
                                     "beautifully",
                                     "a treat",
                                     "like a dream",
                                     "lovely",
                                     "smoothly",
                                     "easily",
                                     "smooth",
                                     "easy",
                                     "fine",
                                     "well",
                                     "nicely",
                                     "ok",
                                     "okay",
                                     "free",
                                     "great",
                                     "good",
                                     "fine and smooth",
                                     "as it should",
                                     "as they should",
                                     "properly",
                                     "like butter",
                                     "without sticking",
                                     "real smooth",
                                     "real nice",
                                     "no trouble",
                                     "no problem",
                                     "perfectly",
                                     "like it should",
                                     "smooth as anything",
                                     "as new",
                                     "with no trouble",
                                     "with ease",
                                     "just fine",
                                     "nice and smooth",
                                     "all the way",
                                     "both ways",
                                     "in both directions",
                                     "its full height",
                                     "end to end",
                                     "free end to end",
                                     "from end to end",
                                     "right round",
                                     "without any trouble",
                                     "no bother",
                                     "quite freely",
                                     "very smoothly",
                                     "real easy"};
// Drawers and lids run; of an engine the same words say that it works.
static const char *const sliding[] = {"drawer", "drawers", "bolt", "carriage", "runner", "runners", "pulley"};

// "Binding's tight": the part and its verb in one.
static bool is_owner(const struct tokens *tokens, size_t i, const char *word) {
    size_t size = strlen(word);
    return i < tokens->count && !strncmp(tokens->at[i].fold, word, size) &&
           text_same(tokens->at[i].fold + size, "'s");
}

static size_t listed(const struct tokens *tokens, size_t i, const char *words) {
    size_t longest = 0;
    char word[40];
    if (!token_may_open_one(tokens, i, words)) return 0;
    char first = tokens->at[i].fold[0]; // most begin with another letter
    for (const char *at = words; *at;) {
        size_t n = strcspn(at, "|");
        if ((*at == first || first == '\'') && n < sizeof word) {
            memcpy(word, at, n);
            word[n] = '\0';
            size_t taken = token_phrase(tokens, i, word);
            if (!taken && is_owner(tokens, i, word)) taken = 1;
            if (taken > longest) longest = taken;
        }
        at += n + (at[n] == '|');
    }
    return longest;
}

static bool ends(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"and", "but", "no",   "though", "with",
                                        "so",  "the", "just", "not",    "only"};
    static const char *const hedges[] = {"to me",       "as far",    "that i can", "for its age",
                                         "for the age", "from what", "all round",  "all around",
                                         "throughout",  "all over",  "everywhere", "all along",
                                         "overall",     "as well",   "too"};
    static const char *const holders[] = {"handle", "handles", "shaft", "haft", "frame",  "base",
                                          "stem",   "body",    "wall",  "post", "stick",  "pole",
                                          "rail",   "axle",    "stock", "head", "spindle"};
    if (ANY(tokens, i, "on", "in", "to") &&
        ANY(tokens, i + 1, "the", "its", "their")) // "tight on the handle"
        return token_among(tokens, i + 2, holders, COUNT(holders)) &&
               (i + 3 >= tokens->count || tokens->at[i + 3].stop != STOP_NONE);
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           token_among(tokens, i, words, COUNT(words)) || token_longest(tokens, i, hedges, COUNT(hedges));
}

static bool is_clear(const struct fault_reader *r, size_t from, size_t to) {
    static const uint16_t governed = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_UNKNOWN |
                                     STANCE_WITHDRAWN | STANCE_OTHER | STANCE_PLANNED | STANCE_DOUBT |
                                     STANCE_LIMITED | STANCE_HEARD;
    for (size_t i = from; i < to; i++)
        if ((r->scope.stance[i] & governed) || r->note->taken[i] == TAKEN_MARK ||
            r->note->taken[i] == TAKEN_ASIDE)
            return false;
    return true;
}

// Does something follow that takes it back: "legs solid except one", "zip works but sticks"?
static bool is_taken_back(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"except", "apart",  "other", "but",  "until", "if",      "when",
                                        "only",   "though", "bar",   "save", "minus", "besides", "aside"};
    static const char *const anew[] = {"the", "no", "its", "there's", "a"}; // "fine but the lock is gone"
    if (token_is(tokens, i, "but") && token_among(tokens, i + 1, anew, COUNT(anew))) return false;
    return i < tokens->count && (token_among(tokens, i, words, COUNT(words)) ||
                                 (tokens->at[i].stop == STOP_COMMA && token_among(tokens, i + 1, words, 3)));
}

// "The screw turns, it just takes some force": what is told as a fault is not denied beside it.
static bool is_told(const struct fault_reader *r, const struct flaw *kind, const char *part) {
    for (size_t i = 0; i < r->note->record->flaw_count; i++) {
        const struct item_flaw *flaw = &r->note->record->flaws[i];
        if (flaw->kind == kind && (!flaw->part || !part || fault_is_one_of(r, flaw->part, part))) return true;
    }
    return false;
}

// A part that the kind's own words have is not said twice.
static const char *kept_part(struct fault_reader *r, const struct flaw *kind, size_t from, size_t to) {
    const char *part = fault_place(r->note, from, to);
    static const char *const stuffs[] = {"color", "colour", "gold", "gilt", "gilding", "paper", "stitching"};
    bool stuff = false;
    for (size_t k = 0; k < COUNT(stuffs); k++) stuff |= text_same(r->note->tokens.at[to - 1].one, stuffs[k]);
    return stuff || (kind->says && strstr(kind->says, part)) ? NULL : part;
}

static bool starts_here(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "the",  "and",   "its",   "both",     "all",   "with",  "but",   "which",  "has",  "plus",  "each",
        "my",   "a",     "has",   "also",     "of",    "four",  "two",   "has",    "that", "three", "six",
        "five", "eight", "other", "carrying", "glass", "brass", "metal", "wooden", "main", "top"};
    return i == 0 || tokens->at[i - 1].stop != STOP_NONE || token_among(tokens, i - 1, words, COUNT(words));
}

// "Zip works": the thing itself was not tried by that.
static void forget_working(struct fault_reader *r, size_t from, size_t to) {
    struct record *record = r->note->record;
    struct note_span told = note_span_of(r->note, from, to);
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        bool same = fault_is_virtue(flaw->kind) && flaw->span.from >= told.from && flaw->span.to <= told.to;
        if (!same) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

// "Legs are solid, no wobble": the second says the same of the legs alone.
static void forget_wider(struct fault_reader *r, const struct flaw *kind, size_t to) {
    enum { FAR = 4 };
    struct record *record = r->note->record;
    for (size_t i = 0; i < record->clear_count; i++) {
        struct item_clear *clear = &record->clear[i];
        size_t behind = to;
        while (behind < r->note->tokens.count && r->note->tokens.at[behind].from < clear->span.from) behind++;
        bool near = clear->span.from >= r->note->tokens.at[to - 1].to && behind - to <= FAR &&
                    scope_sentence_end(&r->scope, to - 1) >= behind;
        if (clear->kind != kind || clear->part || clear->where || !near) continue;
        record->clear[i] = record->clear[--record->clear_count];
        return;
    }
}

// "Handle is still nice and tight".
static bool read_pair(struct fault_reader *r, const struct pair *pair, size_t i) {
    static const char *const links[] = {
        "lovely", "and",    "nicely", "is",    "are",        "still",  "also",   "all",   "both",
        "very",   "pretty", "really", "feels", "feel",       "seems",  "seem",   "looks", "look",
        "quite",  "nice",   "stays",  "well",  "absolutely", "itself", "remains"};
    static const char *const hedged[] = {"as far", "that i can", "from what", "to me", "so far"};
    static const char *const seeming[] = {"looks", "look", "seems", "seem"};
    const struct tokens *tokens = &r->note->tokens;
    size_t part = listed(tokens, i, pair->parts);
    if (!part) return false;
    size_t at = i + part;
    const char *on; // "the nut on top is tight", "glass eyes, both tight"
    if (ANY(tokens, at, "on", "at") && tokens->at[at].stop == STOP_NONE) at += place_at(r->note, at, &on);
    if (at < tokens->count && tokens->at[at].stop == STOP_COMMA && ANY(tokens, at + 1, "both", "all")) at++;
    size_t told = listed(tokens, at, pair->told);
    while (!told && at < i + part + 4 && token_among(tokens, at, links, COUNT(links)))
        told = listed(tokens, ++at, pair->told);
    size_t to = at + told;
    size_t excepted = told ? sound_excepts(tokens, to) : 0;
    bool sound = excepted || (ends(tokens, to) && !is_taken_back(tokens, to));
    if (!told || !sound || !is_clear(r, i, to)) return false;
    const struct flaw *kind = ruleset_flaw(r->note->rules, pair->kind);
    static const char *const hems[] = {"hem", "hems", "stitching"};
    static const char *const joints[] = {"joints", "dovetails", "dovetail", "mortises"};
    if (kind && text_same(pair->kind, "loose-joint") && !kind_can_be(r, kind, NULL) &&
        !token_among(tokens, i, joints, COUNT(joints)))
        kind = ruleset_flaw(r->note->rules, "loose-part");
    if (kind && text_same(pair->kind, "seam-open") && !token_is(tokens, i + part - 1, "stitching") &&
        r->note->record->family && !kind_can_be(r, kind, NULL))
        kind = ruleset_flaw(r->note->rules, "seam-split"); // of a tin
    const struct flaw *split = ruleset_flaw(r->note->rules, "seam-split");
    if (kind && split && text_same(pair->kind, "seam-open") && !token_is(tokens, i + part - 1, "stitching") &&
        !token_among(tokens, i, hems, COUNT(hems)) && kind_is_of_material(r, split, NULL))
        kind = split; // of a copper lamp
    static const char *const bagged[] = {"handle", "handles"};
    const struct family *family = r->note->record->family;
    if (family && text_same(family->rule.id, "bags") &&
        token_among(tokens, i + part - 1, bagged, COUNT(bagged)))
        kind = ruleset_flaw(r->note->rules, "strap-damage");
    if (family && text_same(family->rule.id, "linens") && text_same(pair->kind, "binding-weak"))
        kind = ruleset_flaw(r->note->rules, "seam-open"); // of a quilt
    bool gated = text_same(pair->kind, "clasp-fault") || text_same(pair->kind, "binding-weak") ||
                 text_same(pair->kind, "upholstery-wear");
    if (kind && gated && !kind_can_be(r, kind, NULL)) return false;
    if (!kind) return false;
    forget_working(r, i, to);
    const char *where = kept_part(r, kind, i, i + part);
    if (is_told(r, kind, where)) return false;
    if (excepted) return sound_tell_except(r, kind, where, i, excepted);
    if (where) forget_wider(r, kind, to);
    for (size_t k = 0; k < r->note->record->clear_count; k++)
        if (r->note->record->clear[k].kind == kind && !where) return true;
    bool seems = false; // "looks fine": looked at, and none seen
    seems |= token_longest(tokens, to, hedged, COUNT(hedged)) > 0;
    for (size_t k = i + part; k < to; k++) seems |= token_among(tokens, k, seeming, COUNT(seeming));
    clear_add(r, kind, where, NULL, seems, i, to);
    return true;
}

// "Beam swings free", "the arrow spins freely", before token `end`: a noun that no list of parts has.
static bool names_what_moves(const struct fault_reader *r, size_t end) {
    static const char *const whole[] = {"it",   "they", "that", "this",       "which", "one",
                                        "both", "all",  "each", "everything", "what",  "and",
                                        "but",  "some", "then", "other"};
    const struct tokens *tokens = &r->note->tokens;
    if (end == 0 || tokens->at[end - 1].kind != TOKEN_WORD || tokens->at[end - 1].stop != STOP_NONE ||
        r->note->taken[end - 1] != TAKEN_NOT || token_among(tokens, end - 1, whole, COUNT(whole)))
        return false;
    size_t at = end - 1;
    if (at > 0 && ANY(tokens, at - 1, "the", "its")) at--;
    return at == 0 || tokens->at[at - 1].stop >= STOP_CLAUSE || tokens->at[at - 1].kind != TOKEN_WORD;
}

// "Crank turns freely", "drawers run smooth": the part before the verb.
static bool read_moving(struct fault_reader *r, size_t i) {
    static const char *const runs[] = {"runs", "run", "glides", "glide"};
    static const char *const links[] = {"still", "both", "all", "also", "itself"};
    enum { WORDS_MOST = 2 };
    const struct tokens *tokens = &r->note->tokens;
    size_t verb = token_longest(tokens, i, moves, COUNT(moves));
    bool slides = i > 0 && token_among(tokens, i - 1, sliding, COUNT(sliding));
    if (!verb && slides) verb = token_longest(tokens, i, runs, COUNT(runs));
    size_t how = verb ? token_longest(tokens, i + verb, freely, COUNT(freely)) : 0, to = i + verb + how;
    static const char *const hedges[] = {"but", "just", "only", "though",  "when",
                                         "if",  "with", "it",   "stiffly", "barely"};
    static const char *const bare[] = {"turns", "turn", "moves", "move", "rotates"};
    bool alone =
        verb == 1 && !how && r->note->taken[i] != TAKEN_FLAW &&
        token_among(tokens, i, bare, COUNT(bare)) && // "Dials turn."
        (i + 1 >= tokens->count || tokens->at[i + 1].stop >= STOP_CLAUSE ||
         (tokens->at[i + 1].stop == STOP_COMMA && !token_among(tokens, i + 2, hedges, COUNT(hedges))));
    bool on_own =
        ANY(tokens, to, "on", "in") && ANY(tokens, to + 1, "its", "their") &&
        (to + 3 >= tokens->count || tokens->at[to + 3].stop != STOP_NONE); // "swings free on its pins"
    if ((!how && !alone) || (!on_own && !ends(tokens, to)) || is_taken_back(tokens, to) ||
        !is_clear(r, i, to))
        return false;
    size_t end = i;
    while (end > 0 && token_among(tokens, end - 1, links, COUNT(links))) end--;
    size_t from = end;
    while (from > 0 && end - from < WORDS_MOST && tokens->at[from - 1].kind == TOKEN_WORD &&
           r->note->taken[from - 1] != TAKEN_TYPE && r->part[from - 1])
        from--;
    if (from == end && how && names_what_moves(r, end)) from = end - 1;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "seized");
    bool opens = i == 0 || tokens->at[i - 1].stop >= STOP_CLAUSE || // "Slides easily.", "it turns easily"
                 (ANY(tokens, i - 1, "it", "they") && (i == 1 || tokens->at[i - 2].stop >= STOP_CLAUSE));
    if ((from == end && (!opens || alone)) || !kind) return false;
    const char *part = fault_place(r->note, from, end);
    if (is_told(r, kind, part)) return false;
    for (size_t k = 0; k < r->note->record->clear_count && part; k++) { // told of the whole by the same words
        struct item_clear *clear = &r->note->record->clear[k];
        if (clear->kind != kind || clear->part || clear->span.from != tokens->at[i].from) continue;
        clear->part = part;
        return true;
    }
    clear_add(r, kind, part, NULL, false, i, to);
    return true;
}

// "Nozzle tight": any other part, but what is meant to close or to slide.
static bool read_firm(struct fault_reader *r, size_t i) {
    static const char *const firm[] = {"tight",           "firm",           "secure",
                                       "on tight",        "nice and tight", "good and tight",
                                       "firmly attached", "solid",          "rock solid"};
    static const char *const links[] = {"is", "are", "still", "all", "both", "very", "feels"};
    static const char *const closing[] = {
        "locks",  "lock",    "binding", "binding's", "lid's", "spine",   "case",    "cases",
        "box",    "chassis", "shell",   "housing",   "tank",  "cabinet", "canvas",  "shaft",
        "frame",  "base",    "rest",    "lid",       "lids",  "cap",     "stopper", "cork",
        "drawer", "drawers", "door",    "doors",     "cover", "seam",    "seams",   "binding",
        "joints", "glass",   "wood",    "back",      "top",   "bottom",  "body",    "fit",
        "slide",  "slides",  "cursor",  "focus",     "zoom",  "plunger"};
    const struct tokens *tokens = &r->note->tokens;
    if (!r->part[i] || r->note->taken[i] == TAKEN_TYPE || token_among(tokens, i, closing, COUNT(closing)) ||
        (i + 1 < tokens->count && r->part[i + 1] && tokens->at[i].stop == STOP_NONE))
        return false;
    size_t first = i; // "wood grip", "the brass top plate"
    while (first > 0 && tokens->at[first - 1].stop == STOP_NONE && !r->scope.fault[first - 1] &&
           r->note->taken[first - 1] != TAKEN_TYPE &&
           (r->part[first - 1] || r->note->taken[first - 1] == TAKEN_VALUE || spot_side(tokens, first - 1)))
        first--;
    struct word_entry noun; // "pivot bolt"
    bool led = first > 0 && tokens->at[first - 1].stop == STOP_NONE && starts_here(tokens, first - 1) &&
               r->note->taken[first - 1] == TAKEN_NOT &&
               word_at(r->note, first - 1, 1u << USE_THING, &noun) == 1;
    if (!starts_here(tokens, first) && !led) return false;
    if (led) first--;
    size_t named = led ? first : i;
    while (named > first && r->part[named - 1]) named--;
    size_t at = i + 1;
    while (token_among(tokens, at, links, COUNT(links))) at++;
    size_t n = token_longest(tokens, at, firm, COUNT(firm)), to = at + n;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "loose-part");
    bool held = ANY(tokens, to, "on", "in", "to", "at") && ANY(tokens, to + 1, "the", "its", "both") &&
                (to + 3 >= tokens->count || tokens->at[to + 3].stop != STOP_NONE); // "tight on the tang"
    if (!n || !kind || (!held && !ends(tokens, to)) || is_taken_back(tokens, to) || !is_clear(r, i, to))
        return false;
    for (size_t k = 0; k < r->note->record->clear_count; k++)
        if (r->note->record->clear[k].span.from <= tokens->at[i].from &&
            r->note->record->clear[k].span.to >= tokens->at[to - 1].to)
            return false; // it is told already
    if (is_told(r, kind, fault_place(r->note, named, i + 1))) return false;
    clear_add(r, kind, fault_place(r->note, named, i + 1), NULL, false, named, to);
    bool both = false; // "bail and wood grip both solid"
    for (size_t k = i + 1; k < at; k++) both |= ANY(tokens, k, "both", "all", "are");
    if (both && first > 1 && token_is(tokens, first - 1, "and") && r->part[first - 2] &&
        r->note->taken[first - 2] == TAKEN_NOT) {
        clear_add(r, kind, fault_place(r->note, first - 2, first - 1), NULL, false, first - 2, first - 1);
    }
    return true;
}

// "Globe uncracked", "unchipped": the fault that the word takes back.
static bool read_un(struct fault_reader *r, size_t i) {
    static const struct {
        const char *word, *kinds[2];
    } words[] = {{"uncracked", {"crack", "crack-through"}},
                 {"unchipped", {"chip", "enamel-chip"}},
                 {"undented", {"dent-bend", NULL}},
                 {"unscratched", {"scratches", "screen-damage"}},
                 {"unstained", {"stain", NULL}},
                 {"unfaded", {"fading", NULL}},
                 {"untorn", {"tear", NULL}},
                 {"unwarped", {"warped", NULL}},
                 {"unrepaired", {"glued-repair", NULL}},
                 {"unrestored", {"filled-overpainted", NULL}},
                 {"unbent", {"dent-bend", NULL}},
                 {"unrusted", {"rust", NULL}}};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t k = 0; k < COUNT(words); k++) {
        if (!token_is(tokens, i, words[k].word) || r->note->taken[i] == TAKEN_FLAW || !is_clear(r, i, i + 1))
            continue;
        struct fault_hit hit = {.from = i, .to = i + 1};
        for (size_t n = 0; n < 2 && words[k].kinds[n]; n++) {
            const struct flaw *kind = ruleset_flaw(r->note->rules, words[k].kinds[n]);
            if (kind) hit.kinds[hit.kind_count++] = kind;
        }
        if (!hit.kind_count) return false;
        size_t end = i, from;
        while (end > 0 && ANY(tokens, end - 1, "is", "are", "still", "all", "both")) end--;
        from = end > 0 && r->part[end - 1] && r->note->taken[end - 1] != TAKEN_TYPE ? end - 1 : end;
        const char *part = fault_place(r->note, from, end);
        clear_add(r, kind_of_hit(r, &hit, part), part, NULL, false, i, i + 1);
        return true;
    }
    return false;
}

// The letters that words parted by "|" begin with; all of them for another sign.
static bool opens_pair(const struct tokens *tokens, size_t i) {
    static const char key[] = "a part that is found to be right";
    int told = token_told(tokens, i, key);
    if (told >= 0) return told;
    bool opens = false;
    for (size_t k = 0; k < COUNT(pairs) && !opens; k++) opens = token_may_open_one(tokens, i, pairs[k].parts);
    token_tell(tokens, i, key, opens);
    return opens;
}

void read_sound_parts(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        bool taken = read_moving(r, i) || read_watertight(r, i) || read_not_through(r, i) || read_un(r, i);
        bool joined =
            i > 0 && r->part[i - 1] && starts_here(&r->note->tokens, i - 1); // "handle rivets tight"
        bool may = !taken && opens_pair(&r->note->tokens, i) && (joined || starts_here(&r->note->tokens, i));
        for (size_t k = 0; k < COUNT(pairs) && may && !taken; k++) taken = read_pair(r, &pairs[k], i);
        if (!taken) read_firm(r, i);
    }
}
