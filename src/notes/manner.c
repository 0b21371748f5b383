// SPDX-License-Identifier: MIT
// How much, by words that only strengthen or weaken: "very rusty", "quite scratched", "scratched up pretty
// good", "rusty as anything", "quite a dent". They tell a degree beside a word of state; beside a noun most
// of them tell none ("pretty cup", "really a stand").
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue strengths[] = {
    {"awful", SEVERITY_HEAVY},
    {"bloody", SEVERITY_HEAVY},
    {"crazy", SEVERITY_HEAVY},
    {"damn", SEVERITY_HEAVY},
    {"darn", SEVERITY_HEAVY},
    {"dead", SEVERITY_HEAVY},
    {"ever so", SEVERITY_LIGHT},
    {"ever so slightly", SEVERITY_LIGHT},
    {"exceedingly", SEVERITY_HEAVY},
    {"exceptionally", SEVERITY_HEAVY},
    {"extremely", SEVERITY_HEAVY},
    {"fairly", SEVERITY_MODERATE},
    {"good and", SEVERITY_HEAVY},
    {"hella", SEVERITY_HEAVY},
    {"horrendously", SEVERITY_HEAVY},
    {"incredibly", SEVERITY_HEAVY},
    {"insanely", SEVERITY_HEAVY},
    {"kind of", SEVERITY_LIGHT},
    {"kinda", SEVERITY_LIGHT},
    {"majorly", SEVERITY_HEAVY},
    {"mega", SEVERITY_HEAVY},
    {"plenty", SEVERITY_HEAVY},
    {"pretty", SEVERITY_MODERATE},
    {"proper", SEVERITY_HEAVY},
    {"properly", SEVERITY_HEAVY},
    {"quite", SEVERITY_MODERATE},
    {"rather", SEVERITY_MODERATE},
    {"real", SEVERITY_HEAVY},
    {"really", SEVERITY_HEAVY},
    {"really quite", SEVERITY_HEAVY},
    {"reasonably", SEVERITY_MODERATE},
    {"ridiculously", SEVERITY_HEAVY},
    {"seriously", SEVERITY_HEAVY},
    {"so", SEVERITY_HEAVY},
    {"somewhat", SEVERITY_MODERATE},
    {"sort of", SEVERITY_LIGHT},
    {"sorta", SEVERITY_LIGHT},
    {"super", SEVERITY_HEAVY},
    {"too", SEVERITY_HEAVY},
    {"ultra", SEVERITY_HEAVY},
    {"v", SEVERITY_HEAVY},
    {"v .", SEVERITY_HEAVY},
    {"v.", SEVERITY_HEAVY},
    {"very", SEVERITY_HEAVY},
    {"very very", SEVERITY_HEAVY},
    {"vv", SEVERITY_HEAVY},
    {"way too", SEVERITY_HEAVY},
};

static const struct cue quantities[] = {
    {"a heck of a", SEVERITY_HEAVY},      {"a heck of a lot of", SEVERITY_HEAVY},
    {"a hell of a", SEVERITY_HEAVY},      {"a hell of a lot of", SEVERITY_HEAVY},
    {"a load of", SEVERITY_HEAVY},        {"a right old", SEVERITY_HEAVY},
    {"a whole bunch of", SEVERITY_HEAVY}, {"an awful lot of", SEVERITY_HEAVY},
    {"bunch of", SEVERITY_MODERATE},      {"decent amount of", SEVERITY_MODERATE},
    {"decent size", SEVERITY_MODERATE},   {"fair old", SEVERITY_HEAVY},
    {"fair size", SEVERITY_MODERATE},     {"good size", SEVERITY_MODERATE},
    {"heck of a", SEVERITY_HEAVY},        {"hell of a", SEVERITY_HEAVY},
    {"lot of", SEVERITY_HEAVY},           {"more than a little", SEVERITY_MODERATE},
    {"quite a", SEVERITY_HEAVY},          {"quite an", SEVERITY_HEAVY},
    {"quite the", SEVERITY_HEAVY},        {"quite a lot of", SEVERITY_HEAVY},
    {"some serious", SEVERITY_HEAVY},     {"such a", SEVERITY_HEAVY},
    {"the usual", SEVERITY_UNKNOWN},      {"way too many", SEVERITY_HEAVY},
    {"way too much", SEVERITY_HEAVY},
};

// Behind a word of state, at the end of what is said.
static const struct cue behind[] = {
    {"a good bit", SEVERITY_MODERATE},
    {"a good deal", SEVERITY_HEAVY},
    {"a good way", SEVERITY_HEAVY},
    {"a wee bit", SEVERITY_LIGHT},
    {"as all get out", SEVERITY_HEAVY},
    {"as anything", SEVERITY_HEAVY},
    {"as can be", SEVERITY_HEAVY},
    {"as heck", SEVERITY_HEAVY},
    {"as hell", SEVERITY_HEAVY},
    {"as sin", SEVERITY_HEAVY},
    {"bad", SEVERITY_HEAVY},
    {"good and proper", SEVERITY_HEAVY},
    {"like crazy", SEVERITY_HEAVY},
    {"like mad", SEVERITY_HEAVY},
    {"pretty good", SEVERITY_HEAVY},
    {"pretty heavy", SEVERITY_HEAVY},
    {"pretty well", SEVERITY_HEAVY},
    {"quite bad", SEVERITY_HEAVY},
    {"rather bad", SEVERITY_HEAVY},
    {"real bad", SEVERITY_HEAVY},
    {"real good", SEVERITY_HEAVY},
    {"real heavy", SEVERITY_HEAVY},
    {"solid", SEVERITY_HEAVY},
    {"something awful", SEVERITY_HEAVY},
    {"something fierce", SEVERITY_HEAVY},
    {"straight through", SEVERITY_HEAVY},
    {"super bad", SEVERITY_HEAVY},
    {"thin", SEVERITY_HEAVY},
    {"through", SEVERITY_HEAVY},
    {"thru", SEVERITY_HEAVY},
    {"to a frazzle", SEVERITY_HEAVY},
    {"to heck", SEVERITY_HEAVY},
    {"to nothing", SEVERITY_HEAVY},
    {"up bad", SEVERITY_HEAVY},
    {"up badly", SEVERITY_HEAVY},
    {"up good", SEVERITY_HEAVY},
    {"up pretty bad", SEVERITY_HEAVY},
    {"up pretty badly", SEVERITY_HEAVY},
    {"up pretty good", SEVERITY_HEAVY},
    {"up real bad", SEVERITY_HEAVY},
    {"up real good", SEVERITY_HEAVY},
    {"up something awful", SEVERITY_HEAVY},
    {"up something fierce", SEVERITY_HEAVY},
};

// The cue that ends at token `i`, the longest one; how many tokens it takes.
static enum severity ends_at(const struct fault_reader *r, const struct cue *cues, size_t count, size_t i,
                             size_t *taken) {
    enum { WORDS_MOST = 6 };
    enum severity found = SEVERITY_UNKNOWN;
    *taken = 0;
    for (size_t n = 1; n <= WORDS_MOST && n <= i; n++) {
        if (r->note->tokens.at[i - n].stop != STOP_NONE) break;
        size_t size;
        const struct cue *cue = cue_at(&r->scope, cues, count, i - n, &size);
        if (!cue || size != n) continue;
        found = (enum severity)cue->kind;
        *taken = n;
    }
    return found;
}

static bool ends_in(const char *word, const char *ending) {
    size_t size = strlen(word), tail = strlen(ending);
    return size > tail + 1 && text_same(word + size - tail, ending);
}

// "Rusty", "scratched", "worn", "loose", and "smells": said of the thing, and not the name of what it has.
static bool tells_state(const struct fault_reader *r, const struct fault_hit *hit, size_t i) {
    static const char *const words[] = {
        "worn",      "torn",       "bent",     "loose",      "dull",    "thin",      "stiff",
        "warped",    "weak",       "split",    "tight",      "stuck",   "brittle",   "soft",
        "rough",     "damp",       "hard",     "burnt",      "ripe",    "blunt",     "slack",
        "cloudy",    "smells",     "stinks",   "reeks",      "wobbles", "rattles",   "sticks",
        "needs",     "hums",       "tatty",    "threadbare", "frail",   "fragile",   "foxed",
        "dry",       "sagging",    "flaking",  "peeling",    "pitted",  "fraying",   "raveling",
        "ravelling", "unraveling", "cracking", "splitting",  "lifting", "crumbling", "curling"};
    const char *word = r->note->tokens.at[i].fold;
    for (size_t k = 0; k < hit->kind_count; k++)
        if (hit->kinds[k]->adjective && text_same(hit->kinds[k]->adjective, word)) return true;
    return token_among(&r->note->tokens, i, words, COUNT(words)) || ends_in(word, "ed") ||
           ends_in(word, "y") || ends_in(word, "en");
}

bool degree_is_state(const struct fault_reader *r, const struct fault_hit *hit) {
    return tells_state(r, hit, hit->to - 1);
}

static bool is_not(const struct tokens *tokens, size_t i) {
    static const char *const nots[] = {"not",    "isn't",  "aren't", "never",  "isnt",
                                       "wasn't", "hardly", "no",     "nothing"};
    return i > 0 && token_among(tokens, i - 1, nots, COUNT(nots));
}

// "So rusted it won't close" says how much; "fell, so cracked" says why.
static bool is_why(const struct tokens *tokens, size_t i) {
    static const char *const links[] = {"is", "are", "was", "it's", "its", "they're", "all", "just", "looks"};
    return token_is(tokens, i, "so") && (i == 0 || !token_among(tokens, i - 1, links, COUNT(links)));
}

static enum severity before(const struct fault_reader *r, const struct fault_hit *hit, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n;
    static const char *const causes[] = {"sun",   "water", "heat",  "moth",  "mouse", "weather", "age",
                                         "smoke", "fire",  "salt",  "damp",  "frost", "acid",    "wear",
                                         "foot",  "play",  "road",  "light", "time",  "hand",    "oil",
                                         "fly",   "dog",   "storm", "soot",  "shelf", "spine",   "edge"};
    if (i == hit->from && hit->to == i + 2 && token_among(tokens, i, causes, COUNT(causes))) i++;
    bool cause = i > 0 && token_among(tokens, i - 1, causes, COUNT(causes)); // "very sun faded"
    enum severity found = tells_state(r, hit, i)
                              ? ends_at(r, strengths, COUNT(strengths), cause ? i - 1 : i, &n)
                              : SEVERITY_UNKNOWN;
    if (found && cause) i--;
    if (found && !is_not(tokens, i - n) && !is_why(tokens, i - n)) return found;
    found = ends_at(r, quantities, COUNT(quantities), i, &n);
    return found && !is_not(tokens, i - n) ? found : SEVERITY_UNKNOWN;
}

// "Hard as nails", "loose as anything": whatever it is likened to.
static bool is_likened(const struct tokens *tokens, size_t i) {
    static const char *const others[] = {"new",       "well",   "is",   "seen",    "shown",  "pictured",
                                         "expected",  "you",    "it",   "they",    "far",    "i",
                                         "long",      "though", "if",   "usual",   "normal", "before",
                                         "described", "per",    "such", "they're", "it's"};
    if (!token_is(tokens, i, "as") || token_among(tokens, i + 1, others, COUNT(others))) return false;
    size_t at = i + 1;
    while (ANY(tokens, at, "a", "an", "the")) at++;
    return at < tokens->count && tokens->at[at].kind == TOKEN_WORD && tokens->at[at].stop == STOP_NONE &&
           (at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE);
}

// "Wobbles like mad", "leaks like a sieve", "loose like a jelly": no less than that; but it may look like it.
static bool is_like(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, i, "like") || i == 0 || tokens->at[i - 1].stop != STOP_NONE) return false;
    if (ANY(tokens, i - 1, "looks", "look", "smells", "smell", "reeks", "stinks", "something", "more", "sort",
            "feels", "it's", "just", "marks", "mark", "shaped"))
        return false;
    if (ANY(tokens, i + 1, "mad", "crazy", "hell", "heck", "billy-o", "billyo", "fury", "blazes", "stink",
            "nobody's", "there's", "anything", "nothing"))
        return true;
    if (ANY(tokens, i + 1, "you", "it", "someone", "somebody", "something", "it's", "they'd",
            "he'd")) // "like
        return !ANY(tokens, i + 2, "see", "do", "does", "get", "said", "says", "should", "was", "used",
                    "would", "are", "is", "want", "know", "did", "expect") || // you wouldn't believe"
               (ANY(tokens, i + 1, "it") && ANY(tokens, i + 2, "was") &&
                ANY(tokens, i + 3, "dragged", "kept", "left"));
    return ANY(tokens, i - 1, "wobbles", "wobble", "rattles", "rattle", "leaks", "leak", "shakes", "squeaks",
               "creaks", "stiff", "loose", "slack", "sheds", "moults", "flaps", "wobbly", "sways", "rocks",
               "stuck", "sticks", "hangs", "flops") &&
           ANY(tokens, i + 1, "a", "an", "the");
}

// "Almost rubbed away", "practically worn through": the end of it is near.
static bool is_almost(const struct tokens *tokens, const struct fault_hit *hit) {
    if (hit->from == 0) return false;
    if (hit->from > 1 && token_is(tokens, hit->from - 1, "to") &&
        ANY(tokens, hit->from - 2, "about", "ready", "going", "close", "set", "fit"))
        return true;   // "about to break"
    bool near = false; // before the fault, or inside of it: "decoration almost rubbed away"
    for (size_t i = hit->from - 1; i <= hit->to; i++) {
        if (near &&
            ANY(tokens, i, "away", "off", "gone", "through", "out", "bare", "bald", "illegible", "unreadable",
                "blind", "smooth", "apart") &&
            (i < hit->to || tokens->at[i - 1].stop == STOP_NONE))
            return true;
        near |=
            i < hit->to && (ANY(tokens, i, "almost", "nearly", "practically", "virtually") ||
                            (i > 0 && ANY(tokens, i - 1, "all", "pretty") && ANY(tokens, i, "but", "much")));
    }
    return false;
}

enum severity degree_of_manner(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (is_almost(tokens, hit)) return SEVERITY_HEAVY;
    size_t most =
        hit->from > 1 && ANY(tokens, hit->from - 1, "are", "is", "were") ? 2 : 1; // "spanners, most rusty"
    if (hit->from >= most && token_is(tokens, hit->from - most, "most") && tells_state(r, hit, hit->to - 1) &&
        (hit->from == most || tokens->at[hit->from - most - 1].stop != STOP_NONE))
        return SEVERITY_HEAVY;
    if (hit->from > 0 && token_is(tokens, hit->from - 1, "enough") && token_is(tokens, hit->to, "to"))
        return SEVERITY_HEAVY; // "enough dents to keep a smith busy"
    enum severity found = before(r, hit, hit->from);
    if (!found && hit->near) found = before(r, hit, hit->to - 1);
    if (found) return found;
    static const char *const worn[] = {"worn", "wore", "rusted", "rotted", "burnt", "burned", "corroded"};
    if (token_is(tokens, hit->to - 1, "out") && token_among(tokens, hit->to - 2, worn, COUNT(worn)) &&
        hit->to > 1)
        return SEVERITY_HEAVY; // "straps worn out"
    if (token_is(tokens, hit->to, "out") && token_among(tokens, hit->to - 1, worn, COUNT(worn)))
        return SEVERITY_HEAVY;
    size_t like = token_is(tokens, hit->to - 1, "like") ? hit->to - 1 : hit->to; // in its own phrase
    if (is_like(r, like)) return SEVERITY_HEAVY;
    if (is_likened(tokens, hit->to) && tells_state(r, hit, hit->to - 1)) return SEVERITY_HEAVY;
    size_t n;
    const struct cue *cue = cue_at(&r->scope, behind, COUNT(behind), hit->to, &n);
    size_t end = hit->to + n;
    bool ends = end >= tokens->count || tokens->at[end].stop != STOP_NONE ||
                ANY(tokens, end, "and", "but", "on", "in", "inside", "so", "almost", "nearly");
    bool state = tells_state(r, hit, hit->from) || tells_state(r, hit, hit->to - 1); // "scratched up"
    if (cue && state && token_is(tokens, hit->to, "through") && token_is(tokens, end, "in") &&
        ANY(tokens, end + 1, "places", "spots", "patches", "parts", "one"))
        return SEVERITY_MODERATE; // "worn through in spots"
    enum severity own;
    if (cue && ends && state && degree_tell_is(r, hit, hit->to, n, &own)) return own; // plate worn "thin"
    return cue && ends && state ? (enum severity)cue->kind : SEVERITY_UNKNOWN;
}
