// SPDX-License-Identifier: MIT
// "What looks like a crack is only a scratch", "the rim looks chipped but that's just how the glaze ran",
// "cloudy, but it's only dust": the seller looked, and it is something else. What it only seemed to be is not
// there; what it turned out to be is told by its own words.
#include "notes/any.h"
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const turns[] = {"is",
                                    "are",
                                    "was",
                                    "were",
                                    "turned out",
                                    "turns out",
                                    "turned out to be",
                                    "turns out to be",
                                    "proved to be",
                                    "proves to be",
                                    "is in fact",
                                    "is actually"};

static size_t markers_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "only",   "just",   "actually",    "really",       "in fact",
        "merely", "simply", "nothing but", "no more than", "nothing more than"};
    size_t from = i, n;
    while ((n = token_longest(tokens, i, words, COUNT(words))) != 0) i += n;
    return i - from;
}

static bool is_article(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "a", "an", "the", "its", "some", "my", "old", "bits", "bit", "of", "where", "loose",
               "stray", "marks");
}

// What goods have on them or in them that is no fault, or dirt that is told by itself.
static bool is_harmless(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"dust",
                                        "dirt",
                                        "muck",
                                        "grime",
                                        "mud",
                                        "soot",
                                        "wax",
                                        "polish",
                                        "chalk",
                                        "pencil",
                                        "crayon",
                                        "limewash",
                                        "whitewash",
                                        "flour",
                                        "sawdust",
                                        "cobweb",
                                        "cobwebs",
                                        "hair",
                                        "thread",
                                        "fluff",
                                        "lint",
                                        "reflection",
                                        "shadow",
                                        "light",
                                        "grain",
                                        "knot",
                                        "pattern",
                                        "glaze",
                                        "mold line",
                                        "mould line",
                                        "mold seam",
                                        "mould seam",
                                        "seam",
                                        "join",
                                        "joint",
                                        "decoration",
                                        "design",
                                        "print",
                                        "weave",
                                        "slub",
                                        "nail holes",
                                        "varnish",
                                        "dye",
                                        "ink",
                                        "figure",
                                        "condensation",
                                        "lacquer",
                                        "tape",
                                        "glue",
                                        "paint",
                                        "grease",
                                        "scratch",
                                        "mark",
                                        "label",
                                        "string",
                                        "spit",
                                        "straw",
                                        "veneer line",
                                        "casting line",
                                        "casting mark",
                                        "casting seam",
                                        "tool marks",
                                        "tool mark",
                                        "tack holes",
                                        "tacks",
                                        "pin holes",
                                        "pins",
                                        "screw holes",
                                        "nails",
                                        "staples",
                                        "camera",
                                        "photo",
                                        "flash",
                                        "lens cap",
                                        "lace",
                                        "lighting",
                                        "picture",
                                        "figuring",
                                        "medullary rays",
                                        "inclusion",
                                        "willow",
                                        "cane",
                                        "bark"};
    return token_longest(tokens, i, words, COUNT(words)) > 0;
}

// What may hide it for a while and is no cause of it: a lens is hazy by its dust, and pale by the light.
static bool is_on_top(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "dust", "dirt", "reflection", "hair", "chalk", "condensation", "cobweb", "cobwebs",
               "fluff", "lint", "flour", "sawdust", "muck", "mud", "thread", "shadow");
}

static bool is_made_so(const struct tokens *tokens, size_t i) {
    static const char *const ways[] = {"how it",    "how they",       "how the",    "the way",
                                       "part of",   "meant to",       "meant like", "made like",
                                       "made that", "supposed to be", "as made"};
    return token_longest(tokens, i, ways, COUNT(ways)) > 0;
}

// Does a noun phrase for something harmless begin at `i`?
static bool names_harmless(const struct tokens *tokens, size_t i, bool on_top) {
    enum { WORDS_MOST = 4 };
    if (!on_top && is_made_so(tokens, i)) return true;
    if (!on_top && ANY(tokens, i, "from", "off")) i++; // "they're from old tacks"
    for (size_t at = i; at < tokens->count && at < i + WORDS_MOST && tokens->at[at].kind == TOKEN_WORD;
         at++) {
        if (ANY(tokens, at, "small", "tiny", "little", "slight", "light", "minor") &&
            !(at == i && token_is(tokens, at, "light")))
            return false;
        if (on_top ? is_on_top(tokens, at) : is_harmless(tokens, at)) return true;
        if (ANY(tokens, at, "on", "in", "at", "and", "or", "that", "with", "from")) return false;
    }
    return false;
}

// "… is only a scratch", "… turned out to be nail holes"; but "… is only on the surface" is still there.
static bool tells_else(const struct tokens *tokens, size_t i, size_t verb) {
    size_t marks = markers_at(tokens, i + verb), at = i + verb + marks;
    if (at >= tokens->count || tokens->at[at].kind != TOKEN_WORD) return false;
    bool proved = ANY(tokens, i, "turned", "turns", "proved", "proves");
    if (is_article(tokens, at)) return !ANY(tokens, at, "bit", "some") || marks || proved;
    return names_harmless(tokens, at, false) || is_made_so(tokens, at);
}

static void take_for_else(struct scope *s, size_t cue, size_t from, size_t to, size_t end) {
    for (size_t at = from; at < end; at++) s->stance[at] &= (uint16_t)~STANCE_DOUBT;
    scope_mark(s, from, to, STANCE_DENIED, cue);
}

// "What I took for a stain washed off": it is there no more.
static size_t comes_off(const struct tokens *tokens, size_t i) {
    static const char *const ways[] = {
        "washed off",  "washed out",   "washed away",  "rubbed off",  "rubbed out", "wiped off",
        "wiped away",  "came off",     "came out",     "comes off",   "comes out",  "wipes off",
        "brushed off", "blew off",     "polished out", "cleaned off", "cleaned up", "came clean",
        "buffed out",  "scrubbed off", "soaked out"};
    size_t n = token_longest(tokens, i, ways, COUNT(ways));
    return n && (i + n >= tokens->count || tokens->at[i + n].stop != STOP_NONE ||
                 ANY(tokens, i + n, "with", "when", "in", "and", "so", "easily", "completely", "fine"))
               ? n
               : 0;
}

// "What looks like X is Y".
static bool read_what(struct scope *s, size_t i) {
    static const char *const opens[] = {
        "looks like",      "looked like",   "looks to be",    "looked to be",    "appears to be",
        "appeared to be",  "seems to be",   "seemed to be",   "looks",           "i took for",
        "i took to be",    "i thought was", "i thought were", "look like",       "appear to be",
        "might look like", "may look like", "could pass for", "i first took for"};
    const struct tokens *tokens = &s->note->tokens;
    if (!ANY(tokens, i, "what", "that", "which")) return false;
    size_t n = token_longest(tokens, i + 1, opens, COUNT(opens));
    if (!n) return false;
    size_t from = i + 1 + n, end = scope_sentence_end(s, i);
    bool fault = false;
    for (size_t at = from; at < end && tokens->at[at].stop == STOP_NONE; at++) {
        size_t verb = fault ? token_longest(tokens, at, turns, COUNT(turns)) : 0;
        if (verb) {
            if (!tells_else(tokens, at, verb)) return false;
            take_for_else(s, i, from, at, end);
            return true;
        }
        if (fault && comes_off(tokens, at)) {
            take_for_else(s, i, from, at, end);
            return true;
        }
        fault |= s->fault[at];
    }
    return false;
}

// "…, but it's only Y" at the joint `i`.
static void read_but(struct scope *s, size_t i) {
    static const char *const its[] = {"it's",
                                      "its",
                                      "that's",
                                      "thats",
                                      "this is",
                                      "it is",
                                      "that is",
                                      "they're",
                                      "they are",
                                      "these are",
                                      "those are",
                                      "is",
                                      "it was",
                                      "it turned out to be",
                                      "it turns out to be",
                                      "turned out to be"};
    static const char *const seems[] = {"looks", "look",     "looked",    "seems",  "seemed", "appears",
                                        "like",  "appeared", "resembles", "thinks", "swear",  "think"};
    const struct tokens *tokens = &s->note->tokens;
    size_t at = i + 1;
    while (ANY(tokens, at, "but", "though", "i", "think", "actually")) at++;
    size_t n = token_longest(tokens, at, its, COUNT(its));
    if (!n) return;
    size_t marks = markers_at(tokens, at + n);
    at += n + marks;
    size_t start = scope_sentence_start(s, i ? i - 1 : 0), from = i;
    bool sentence = tokens->at[i].stop >= STOP_SENTENCE;
    while (from > start && !token_among(tokens, from - 1, seems, COUNT(seems))) from--;
    bool seeming = from > start;
    if ((sentence && (!seeming || !marks)) || (!seeming && !marks)) return;
    if (!names_harmless(tokens, at, !seeming)) return;
    if (!seeming)
        for (from = i; from > start && tokens->at[from - 1].stop == STOP_NONE;) from--;
    for (size_t k = from; k < i; k++)
        if (s->stance[k] & (STANCE_DENIED | STANCE_NONE_SEEN)) return; // it said so itself
    if (seeming)
        take_for_else(s, from ? from - 1 : 0, from, i, i);
    else
        scope_mark(s, from, i, STANCE_OTHER, i);
}

// "The line down the side is a mold seam", "brown spots are part of the print": what the word of a fault
// names is how it was made or what it is made of.
static bool read_is(struct scope *s, size_t i) {
    static const char *const made[] = {
        "mold line",    "mould line",     "mold seam", "mould seam", "casting line", "casting mark",
        "casting seam", "tool marks",     "tool mark", "reflection", "reflections",  "shadow",
        "shadows",      "grain",          "figure",    "figuring",   "knot",         "knots",
        "pattern",      "design",         "print",     "decoration", "weave",        "slub",
        "slubs",        "medullary rays", "inclusion", "inclusions", "natural",      "flecking",
        "firing crack", "firing line",    "kiln mark", "kiln marks", "pontil",       "pontil mark"};
    static const char *const ways[] = {"part of the",       "part of its",      "how it was",
                                       "how they were",     "how the",          "the way it",
                                       "where the mold",    "where the mould",  "where it sat in",
                                       "where it was cast", "where they sat in"};
    static const char *const verbs[] = {"is",       "are",         "is just",      "are just",  "is only",
                                        "are only", "is actually", "are actually", "is really", "are really"};
    enum { SUBJECT_MOST = 8 };
    const struct tokens *tokens = &s->note->tokens;
    bool starts = i == 0 || tokens->at[i - 1].stop >= STOP_COMMA;
    if (!starts || ANY(tokens, i, "there", "it", "this", "what")) return false;
    bool fault = false;
    for (size_t at = i; at < tokens->count && at < i + SUBJECT_MOST && tokens->at[at].stop == STOP_NONE;
         at++) {
        size_t n = fault ? token_longest(tokens, at, verbs, COUNT(verbs)) : 0;
        if (!n) {
            if (ANY(tokens, at, "has", "have", "with", "had", "shows")) return false;
            fault |= s->fault[at];
            continue;
        }
        size_t to = at + n;
        if (!token_longest(tokens, to, ways, COUNT(ways))) {
            while (is_article(tokens, to) && !ANY(tokens, to, "where", "loose", "stray")) to++;
            if (!token_longest(tokens, to, made, COUNT(made)) ||
                ANY(tokens, to + 1, "wear", "aging", "ageing", "age", "patina", "fading"))
                return false;
        }
        for (size_t k = i; k < at; k++)
            if (s->stance[k] & (STANCE_DENIED | STANCE_NONE_SEEN)) return false;
        scope_mark(s, i, at, STANCE_OTHER, i);
        return true;
    }
    return false;
}

// "A crack I'd call a hairline", "a chip, or rather a flea bite": of two names the second is meant.
static void read_call(struct scope *s, size_t i) {
    static const char *const calls[] = {
        "i'd call",        "i would call", "you'd call",      "you might call", "you could call",
        "some would call", "i'd call it",  "i would call it", "i call",         "i'd say is",
        "i'd say it's",    "or rather",    "more like",       "more of",        "which i'd call",
        "that i'd call",   "people call",  "they call",       "really more of"};
    enum { BACK = 3 };
    const struct tokens *tokens = &s->note->tokens;
    size_t n = token_longest(tokens, i, calls, COUNT(calls)), at = i + n;
    if (!n) return;
    while (ANY(tokens, at, "a", "an", "it", "just", "more", "of", "little")) at++;
    if (at >= tokens->count || !s->fault[at]) return;
    size_t before = i;
    while (
        before > 0 && i - before < BACK && !s->fault[before - 1] &&
        (tokens->at[before - 1].stop <= STOP_COMMA) &&
        (tokens->at[before - 1].stop == STOP_COMMA || ANY(tokens, before - 1, "what", "that", "which", "or")))
        before--;
    if (before == 0 || !s->fault[before - 1]) return;
    size_t from = before - 1;
    while (from > 0 && s->fault[from - 1]) from--;
    scope_mark(s, from, before, STANCE_OTHER, i);
}

// Where the statement of token `i` begins.
static size_t subject_from(const struct scope *s, size_t i) {
    while (i > 0 && s->note->tokens.at[i - 1].stop < STOP_COMMA) i--;
    return i;
}

void scope_seeming(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (read_what(s, i) || (s->fault[i] && read_is(s, subject_from(s, i)))) continue;
        read_call(s, i);
        bool joint = token_is(tokens, i, "but") || token_is(tokens, i, "though") ||
                     (i > 0 && tokens->at[i].stop != STOP_NONE);
        if (joint) read_but(s, i);
    }
}
