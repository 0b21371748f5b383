// SPDX-License-Identifier: MIT
// How bad a fault is by how it is noticed: "you'd have to tilt it to see", "only shows in low sun", "nobody
// would ever know", "can't miss it", "the first thing you see". What is hard to find is little, what nobody
// can overlook is much; what is merely seen is between.
#include "notes/any.h"
#include "notes/faults.h"

enum { BACK = 5, PURPOSE = 12 };

static bool is_seeing(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "see", "notice", "spot", "find", "feel", "tell", "know", "show", "shows", "smell",
               "detect", "seen", "noticed", "saw", "spotted", "found", "showing", "visible", "noticeable",
               "obvious", "apparent", "conspicuous", "perceptible", "discernible", "evident", "felt") ||
           (token_is(tokens, i, "catch") && i > 0 && ANY(tokens, i - 1, "only", "just")) ||
           (token_is(tokens, i, "make") &&
            (token_is(tokens, i + 1, "out") || token_is(tokens, i + 2, "out")));
}

// Behind a word of seeing: what is seen is the fault, and not the thing or what is on it.
static bool sees_it(const struct tokens *tokens, size_t i) {
    bool knows = ANY(tokens, i, "tell", "know");
    if (ANY(tokens, i, "visible", "noticeable", "obvious", "apparent", "conspicuous", "perceptible",
            "evident", "discernible", "seen", "noticed", "showing", "felt"))
        return true;
    size_t at = i + (token_is(tokens, i, "make") && token_is(tokens, i + 1, "out") ? 2 : 1);
    if (at >= tokens->count || tokens->at[at].stop != STOP_NONE) return true;
    if (!knows && ANY(tokens, at, "if", "when")) return true;
    return ANY(tokens, at, "it", "them", "that", "this", "these", "it's", "they're", "em", "unless", "until",
               "till", "from", "at", "in", "on", "with", "without", "much", "once", "looking", "under", "and",
               "but", "anyway", "really", "though", "up", "through", "by", "they", "there", "where", "as",
               "because", "either", "after", "first", "straight", "right", "anything", "too") &&
           !(knows && ANY(tokens, at, "on", "in", "where", "from", "anything", "that", "this"));
}

static bool is_no(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "don't", "dont", "doesn't", "doesnt", "won't", "wont", "wouldn't", "wouldnt",
               "can't", "cant", "cannot", "couldn't", "couldnt", "didn't", "didnt", "never", "hardly",
               "barely", "scarcely", "not", "nobody", "isn't", "aren't", "isnt", "arent", "wasn't", "no-one",
               "nor") ||
           ANY(tokens, i, "nobody'd", "nobody'll", "noone", "you'd never", "neither") ||
           (token_is(tokens, i, "one") && i > 0 && token_is(tokens, i - 1, "no"));
}

static bool is_between(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "really", "even", "always", "ever", "be", "to", "able", "just", "quite", "often",
               "easily", "you", "i", "would", "is", "it", "that", "so", "all", "very", "much", "immediately",
               "readily", "people", "most", "actually", "will", "they", "anyone", "if", "honestly", "you'd",
               "them", "too", "overly", "particularly", "at", "you'll", "else", "can", "could", "it's", "bit",
               "a", "tell", "see", "going", "likely", "normally", "it'd");
}

// The "not" or "hardly" that a word of seeing at `i` belongs to.
static bool is_unseen(const struct tokens *tokens, size_t from, size_t i) {
    for (size_t k = i; k > from && i - k < BACK && tokens->at[k - 1].stop == STOP_NONE; k--) {
        if (is_no(tokens, k - 1)) return true;
        if (!is_between(tokens, k - 1)) return false;
    }
    return false;
}

static bool is_only(const struct tokens *tokens, size_t from, size_t i) {
    for (size_t k = i; k > from && i - k < BACK && tokens->at[k - 1].stop == STOP_NONE; k--) {
        if (token_is(tokens, k - 1, "only")) return true;
        bool just =
            token_is(tokens, k - 1, "just") && k > 1 && ANY(tokens, k - 2, "can", "could", "you'd", "is");
        if (just) return true;
        if (!is_between(tokens, k - 1) && !ANY(tokens, k - 1, "can", "could", "'d", "does", "becomes"))
            return false;
    }
    return ANY(tokens, i, "shows", "show", "visible", "noticeable", "seen", "obvious", "see", "notice") &&
           (token_is(tokens, i + 1, "only") ||
            (ANY(tokens, i + 1, "it", "them", "up") && token_is(tokens, i + 2, "only")));
}

// "To see it", "before you notice": what the trouble was taken for.
static bool is_purpose(const struct tokens *tokens, size_t i, size_t to) {
    for (size_t k = i; k < to && k < i + PURPOSE && tokens->at[k].stop < STOP_CLAUSE; k++)
        if (ANY(tokens, k, "to", "before", "and", "you", "you'd", "even") && is_seeing(tokens, k + 1))
            return true;
    return false;
}

// "You need good eyes", "needs a loupe to see", "you'd need a lens to find".
static bool is_aid(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "need", "needs", "take", "takes", "want", "needed")) return false;
    size_t at = i + 1;
    while (ANY(tokens, at, "a", "an", "your", "my", "to", "have", "really")) at++;
    if (ANY(tokens, at, "glass", "lens", "mirror", "light", "lamp", "flashlight", "candle"))
        return is_purpose(tokens, at + 1, tokens->count);
    return ANY(tokens, at, "loupe", "magnifier", "magnifying", "microscope", "torch", "glasses", "specs") ||
           (ANY(tokens, at, "good", "sharp", "keen", "young", "better", "strong") &&
            ANY(tokens, at + 1, "eyes", "eyesight", "light", "lens", "glasses"));
}

// "You'd have to look hard", "need to tilt it to see", "had to be told".
static enum severity trouble_at(const struct tokens *tokens, size_t i, size_t to) {
    static const char *const pure[] = {"look",    "hunt",    "search",      "squint", "peer",  "know",
                                       "inspect", "looking", "concentrate", "sniff",  "strain"};
    static const char *const pains[] = {
        "hold", "tilt",  "run",   "get",   "put",  "turn", "lift", "stick",   "lean", "angle", "bend",
        "take", "rub",   "stand", "catch", "use",  "wear", "be",   "go",      "come", "press", "push",
        "bury", "shine", "touch", "want",  "pick", "open", "move", "stretch", "have"};
    static const char *const told[] = {"looking", "told", "shown", "picky", "fussy", "really"};
    if (!ANY(tokens, i, "have", "had", "need", "needs", "got", "has", "needed", "must") ||
        !(token_is(tokens, i + 1, "to") || token_is(tokens, i, "must")))
        return SEVERITY_UNKNOWN;
    size_t at = i + (token_is(tokens, i, "must") ? 1 : 2);
    while (ANY(tokens, at, "really", "actually", "properly", "almost", "practically", "literally")) at++;
    bool no = i > 0 && ANY(tokens, i - 1, "don't", "dont", "didn't", "doesn't", "won't", "not");
    size_t up = at + 2 + (token_is(tokens, at + 2, "up") ? 1 : 0);
    bool held = token_is(tokens, at, "hold") && ANY(tokens, at + 1, "it", "them") &&
                ANY(tokens, up, "to", "against") && ANY(tokens, up + 2, "window", "light", "sun", "lamp");
    bool found =
        held || token_among(tokens, at, pure, sizeof pure / sizeof *pure) ||
        (ANY(tokens, at, "be", "go") && token_among(tokens, at + 1, told, sizeof told / sizeof *told)) ||
        (token_among(tokens, at, pains, sizeof pains / sizeof *pains) && is_purpose(tokens, at + 1, to));
    if (!found || (token_is(tokens, at, "know") && ANY(tokens, at + 1, "what", "which", "how")))
        return SEVERITY_UNKNOWN; // "you'd need to know what it said"
    return no ? SEVERITY_HEAVY : SEVERITY_LIGHT;
}

// "Unless you look", "unless it's pointed out"; but "won't stay shut unless you tie it" tells of no seeing.
static bool is_unless(const struct tokens *tokens, size_t i) {
    enum { FAR = 6 };
    for (size_t k = i + 1; k < tokens->count && k < i + FAR && tokens->at[k - 1].stop == STOP_NONE; k++)
        if (is_seeing(tokens, k) ||
            ANY(tokens, k, "look", "looking", "looked", "hold", "held", "tilt", "tilted", "know", "knew",
                "told", "tell", "point", "pointed", "catch", "catches", "light", "lit", "wet", "damp",
                "close", "up", "turn", "turned", "search", "searching", "hunt", "feel", "study", "inspect",
                "squint", "run", "pick", "picky", "fussy", "lift", "check", "really", "bright", "sun",
                "angle", "nose", "sniff", "picking", "studying", "hunting", "feeling", "magnifying", "glass",
                "loupe"))
            return true;
    return false;
}

// "Unless you hold it up", "till you look", "only when it's wet", "if you look close".
static bool is_condition(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "unless")) return is_unless(tokens, i);
    if (ANY(tokens, i, "until", "till") && ANY(tokens, i + 1, "you", "i", "it's", "held", "it") &&
        !ANY(tokens, i + 4, "home", "back", "out")) // "till I got it home"
        return ANY(tokens, i + 2, "look", "hold", "get", "pick", "turn", "know", "washed", "got", "picked",
                   "held", "turned", "pointed", "cleaned", "looked", "saw", "took", "see", "tilt", "feel");
    if (token_is(tokens, i, "only") && ANY(tokens, i + 1, "when", "if", "from", "under", "with")) return true;
    if (ANY(tokens, i, "when", "if") && ANY(tokens, i + 1, "held", "tilted", "backlit")) return true;
    size_t you = ANY(tokens, i, "if", "when") && ANY(tokens, i + 1, "you", "you're", "i") ? i + 2 : 0;
    if (you && token_is(tokens, you, "really")) you++;
    return you && ANY(tokens, you, "look", "looked", "looking", "tilt", "squint", "hunt", "sniff", "peer",
                      "search", "know", "hold", "inspect", "really", "stick", "angle", "concentrate");
}

// "In a strong light", "when the sun hits it", "under a loupe".
static bool is_lit(const struct tokens *tokens, size_t i) {
    static const char *const lamps[] = {"light", "sun",        "sunlight", "daylight", "lamp",
                                        "torch", "flashlight", "sunshine", "lights",   "lighting"};
    if (ANY(tokens, i, "in", "under", "at")) {
        size_t at = i + 1;
        while (ANY(tokens, at, "a", "an", "the")) at++;
        if (ANY(tokens, at, "certain", "right", "strong", "low", "bright", "raking", "good", "some",
                "slanting", "direct", "full") &&
            (token_among(tokens, at + 1, lamps, sizeof lamps / sizeof *lamps) ||
             ANY(tokens, at + 1, "angles", "angle")))
            return true;
        if (ANY(tokens, at, "certain", "some") && token_is(tokens, at + 1, "angles")) return true;
    }
    if (ANY(tokens, i, "when", "if", "where", "once") && ANY(tokens, i + 1, "the", "it"))
        return (token_among(tokens, i + 2, lamps, sizeof lamps / sizeof *lamps) &&
                !ANY(tokens, i + 3, "is", "goes", "comes", "flickers")) ||
               (token_is(tokens, i + 2, "catches") && ANY(tokens, i + 3, "the", "light"));
    if (ANY(tokens, i, "with", "under") && ANY(tokens, i + 1, "a", "my", "the"))
        return ANY(tokens, i + 2, "loupe", "magnifier", "magnifying", "microscope") ||
               (ANY(tokens, i + 2, "strong", "bright", "good") &&
                ANY(tokens, i + 3, "torch", "light", "lamp", "glass", "lens"));
    return false;
}

// "Can't miss it", "easily missed": which way it is said.
static enum severity missed_at(const struct tokens *tokens, size_t from, size_t i) {
    if (!ANY(tokens, i, "miss", "missed", "overlook", "overlooked", "ignore", "disguising", "missing", "hide",
             "mistaking"))
        return SEVERITY_UNKNOWN;
    if (i > from && ANY(tokens, i - 1, "no", "can't", "cant", "cannot", "won't", "couldn't", "don't", "not",
                        "won't", "wont", "wouldn't"))
        return token_is(tokens, i, "missing") && !token_is(tokens, i + 1, "it") ? SEVERITY_UNKNOWN
                                                                                : SEVERITY_HEAVY;
    if (i > from + 1 && token_is(tokens, i - 1, "to") &&
        ANY(tokens, i - 2, "hard", "impossible", "difficult", "tough"))
        return SEVERITY_HEAVY;
    if (token_is(tokens, i, "missing") || token_is(tokens, i, "hide")) return SEVERITY_UNKNOWN;
    bool easy = i > from + 1 && token_is(tokens, i - 1, "to") && ANY(tokens, i - 2, "easy", "simple");
    bool might = i > from && ANY(tokens, i - 1, "easily", "nearly", "almost", "could", "would", "you'd",
                                 "might", "may", "probably", "i");
    return easy || might ? SEVERITY_LIGHT : SEVERITY_UNKNOWN;
}

// What strikes anyone who looks.
static const struct cue struck[] = {
    {"across a room", SEVERITY_HEAVY},
    {"across the room", SEVERITY_HEAVY},
    {"across the street", SEVERITY_HEAVY},
    {"across the yard", SEVERITY_HEAVY},
    {"all anyone sees", SEVERITY_HEAVY},
    {"all you can see", SEVERITY_HEAVY},
    {"all you can smell", SEVERITY_HEAVY},
    {"all you notice", SEVERITY_HEAVY},
    {"all you see", SEVERITY_HEAVY},
    {"as soon as you", SEVERITY_HEAVY},
    {"before you open", SEVERITY_HEAVY},
    {"before you see it", SEVERITY_HEAVY},
    {"blind man", SEVERITY_HEAVY},
    {"catches the eye", SEVERITY_HEAVY},
    {"catches your eye", SEVERITY_HEAVY},
    {"clear a room", SEVERITY_HEAVY},
    {"clear as day", SEVERITY_HEAVY},
    {"clears a room", SEVERITY_HEAVY},
    {"drawn straight", SEVERITY_HEAVY},
    {"drawn to it", SEVERITY_HEAVY},
    {"draws the eye", SEVERITY_HEAVY},
    {"draws your eye", SEVERITY_HEAVY},
    {"eye goes right", SEVERITY_HEAVY},
    {"eye goes straight", SEVERITY_HEAVY},
    {"eye goes to it", SEVERITY_HEAVY},
    {"eyes go straight", SEVERITY_HEAVY},
    {"feet away", SEVERITY_HEAVY},
    {"fills the", SEVERITY_HEAVY},
    {"first thing anyone", SEVERITY_HEAVY},
    {"first thing i", SEVERITY_HEAVY},
    {"first thing people", SEVERITY_HEAVY},
    {"first thing that hits", SEVERITY_HEAVY},
    {"first thing they", SEVERITY_HEAVY},
    {"first thing to catch", SEVERITY_HEAVY},
    {"first thing you", SEVERITY_HEAVY},
    {"from the door", SEVERITY_HEAVY},
    {"from the doorway", SEVERITY_HEAVY},
    {"greets you", SEVERITY_HEAVY},
    {"hits you", SEVERITY_HEAVY},
    {"in your face", SEVERITY_HEAVY},
    {"jumps at", SEVERITY_HEAVY},
    {"jumps out", SEVERITY_HEAVY},
    {"knocks you", SEVERITY_HEAVY},
    {"leaps out", SEVERITY_HEAVY},
    {"make your eyes", SEVERITY_HEAVY},
    {"makes your eyes", SEVERITY_HEAVY},
    {"meets you", SEVERITY_HEAVY},
    {"mile away", SEVERITY_HEAVY},
    {"mile off", SEVERITY_HEAVY},
    {"next room", SEVERITY_HEAVY},
    {"other end of the room", SEVERITY_HEAVY},
    {"other side of the room", SEVERITY_HEAVY},
    {"paces away", SEVERITY_HEAVY},
    {"plain as day", SEVERITY_HEAVY},
    {"plain as the nose", SEVERITY_HEAVY},
    {"pulls the eye", SEVERITY_HEAVY},
    {"pulls your eye", SEVERITY_HEAVY},
    {"screams at you", SEVERITY_HEAVY},
    {"slaps you", SEVERITY_HEAVY},
    {"smacks you", SEVERITY_HEAVY},
    {"soon as you", SEVERITY_HEAVY},
    {"stands out", SEVERITY_HEAVY},
    {"stares at you", SEVERITY_HEAVY},
    {"stares back", SEVERITY_HEAVY},
    {"staring at you", SEVERITY_HEAVY},
    {"sticks out", SEVERITY_HEAVY},
    {"takes the eye", SEVERITY_HEAVY},
    {"takes your eye", SEVERITY_HEAVY},
    {"the minute you", SEVERITY_HEAVY},
    {"the moment you", SEVERITY_HEAVY},
    {"the second you", SEVERITY_HEAVY},
    {"turns your stomach", SEVERITY_HEAVY},
    {"whole house", SEVERITY_HEAVY},
    {"whole room", SEVERITY_HEAVY},
    {"yards away", SEVERITY_HEAVY},
    {"yards off", SEVERITY_HEAVY},
};

static bool is_striking(const struct fault_reader *r, size_t i) {
    size_t n;
    if (!cue_at(&r->scope, struck, sizeof struck / sizeof *struck, i, &n)) return false;
    // "The minute you unfold it": on opening, which the scale of a smell knows
    return !(token_is(&r->note->tokens, i + n - 1, "you") &&
             ANY(&r->note->tokens, i + n, "open", "unfold", "unroll", "unwrap", "unzip", "lift", "unpack",
                 "shake", "undo"));
}

// "The base hides it", "tucked out of sight", "covered by the shade".
static bool is_hidden(const struct tokens *tokens, size_t i) {
    if (i > 0 &&
        ANY(tokens, i - 1, "not", "can't", "no", "won't", "doesn't", "to", "nothing", "may", "could"))
        return false;
    if (ANY(tokens, i, "hides", "conceals", "disguises", "masks")) return true;
    if (ANY(tokens, i, "hidden", "covered", "concealed", "disguised", "masked"))
        return ANY(tokens, i + 1, "by", "under", "behind", "when", "once", "away", "underneath", "from");
    return (token_is(tokens, i, "out") && token_is(tokens, i + 1, "of") &&
            ANY(tokens, i + 2, "sight", "view")) ||
           (token_is(tokens, i, "tucked") && ANY(tokens, i + 1, "away", "behind", "under"));
}

static enum severity at(const struct fault_reader *r, size_t from, size_t to, size_t i, bool before) {
    const struct tokens *tokens = &r->note->tokens;
    enum severity found = missed_at(tokens, from, i);
    if (found) return found;
    if (is_striking(r, i)) return SEVERITY_HEAVY;
    if (is_aid(tokens, i)) return SEVERITY_LIGHT;
    found = trouble_at(tokens, i, to);
    if (found) return found;
    if (!before && (is_condition(tokens, i) || is_lit(tokens, i) || is_hidden(tokens, i)))
        return SEVERITY_LIGHT;
    if (!is_seeing(tokens, i)) return SEVERITY_UNKNOWN;
    if (token_is(tokens, i, "see") && token_is(tokens, i + 1, "through")) // "foggy, you can't see through it"
        return !before && is_unseen(tokens, from, i) ? SEVERITY_HEAVY : SEVERITY_UNKNOWN;
    if (ANY(tokens, i, "spot", "see", "notice") && !is_unseen(tokens, from, i) &&
        (ANY(tokens, i + 2, "straight", "immediately", "instantly", "right") ||
         (ANY(tokens, i + 2, "at") && ANY(tokens, i + 3, "once"))))
        return SEVERITY_HEAVY; // "you'd spot it straight away"
    if (is_only(tokens, from, i)) return SEVERITY_LIGHT;
    if (!before && ANY(tokens, i, "noticeable", "visible", "seen", "obvious") && ANY(tokens, i + 1, "if") &&
        !is_unseen(tokens, from, i))
        return SEVERITY_LIGHT; // "noticeable if you lay it next to the other"
    if (before)
        return i > from && ANY(tokens, i - 1, "hardly", "barely", "scarcely") ? SEVERITY_LIGHT
                                                                              : SEVERITY_UNKNOWN;
    return sees_it(tokens, i) && is_unseen(tokens, from, i) ? SEVERITY_LIGHT : SEVERITY_UNKNOWN;
}

// "Hardly there", "barely anything": there, and next to nothing.
static bool is_scarce(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "hardly", "barely", "scarcely") &&
           ANY(tokens, i + 1, "there", "any", "anything", "a", "at", "worth", "even", "visible", "noticeable",
               "perceptible", "shows", "show", "detectable");
}

enum severity degree_of_notice(const struct fault_reader *r, const struct around *span, bool before) {
    for (size_t i = span->from; i < span->to; i++) {
        if (!before && is_scarce(&r->note->tokens, i)) return SEVERITY_LIGHT;
        enum severity found = at(r, span->from, span->to, i, before);
        if (found) return found;
    }
    return SEVERITY_UNKNOWN;
}

// "You can see it", "it does show": no more than that.
enum severity degree_of_sight(const struct fault_reader *r, const struct around *span) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = span->from; i < span->to; i++) {
        if (!is_seeing(tokens, i) || !sees_it(tokens, i) || ANY(tokens, i, "know", "find", "spot")) continue;
        bool state = ANY(tokens, i, "visible", "noticeable", "obvious", "shows", "showing", "evident");
        size_t k = i;
        while (k > span->from && ANY(tokens, k - 1, "clearly", "plainly", "easily", "really", "just",
                                     "definitely", "certainly", "still", "both"))
            k--;
        bool can = k > span->from && ANY(tokens, k - 1, "can", "will", "you'll", "do", "does", "could",
                                         "you'd", "would", "you");
        if (state || can) return SEVERITY_MODERATE;
    }
    return SEVERITY_UNKNOWN;
}
