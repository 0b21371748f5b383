// SPDX-License-Identifier: MIT
// How bad a fault is where no word of degree beside it says so: by how it is noticed, what comes of it, what
// it is like in size or number, where it stands on its kind's scale, and what the next sentence says of it.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

// What is not seen or cleaned: that it works, is missing or unknown has no such degrees.
static bool is_seen(const struct flaw *kind) {
    return kind->form == FAULT && (kind->class == CLASS_DAMAGE || kind->class == CLASS_DIRT ||
                                   kind->class == CLASS_ODOR || kind->class == CLASS_REPAIR);
}

// "Flea bites round the rim, half a dozen I'd say": a number behind what is counted.
static int number_behind(const struct fault_reader *r, const struct around *behind) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = behind->from; i < behind->to; i++) {
        if (tokens->at[i].stop == STOP_NONE) continue;
        size_t at = i + 1;
        while (ANY(tokens, at, "about", "maybe", "a", "good", "at", "least", "some", "only", "just", "around",
                   "half", "there's", "say", "the"))
            at++;
        int n = at < behind->to ? degrees_number(tokens, at) : 0;
        size_t end = at + 1;
        if (n &&
            (end >= tokens->count || tokens->at[end].stop != STOP_NONE ||
             ANY(tokens, end, "of", "or", "i", "i'd", "in", "all", "maybe", "altogether", "that", "at",
                 "on")) &&
            !(token_is(tokens, end, "in") && ANY(tokens, end + 1, "inch", ".", "wide", "long")))
            return n;
    }
    return 0;
}

static enum severity of_likeness(const struct fault_reader *r, const struct fault_hit *hit,
                                 const struct item_flaw *flaw, const struct around *behind) {
    double like = flaw->has_size ? flaw->size.base : size_of_object(r, hit);
    if (like <= 0 && !flaw->has_size) like = degree_loose_length(&r->note->tokens, behind);
    enum severity found = like > 0 ? degree_of_likeness(flaw->kind, like) : SEVERITY_UNKNOWN;
    if (found || flaw->of) return found;
    int count = flaw->count ? flaw->count : number_behind(r, behind);
    found = degree_of_number(flaw->kind, count);
    return found ? found : degree_of_count(flaw->kind, count);
}

// "Glue on the backs, heavy brown lumps": what it is like, behind a comma, begins with a word of degree.
static enum severity of_likeness_told(const struct fault_reader *r, const struct around *behind) {
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = behind->from; i + 1 < behind->to; i++) {
        if (tokens->at[i].stop == STOP_NONE) continue;
        size_t at = i + 1, n = 0;
        for (size_t k = at; k < at + 4 && k < behind->to; k++) // ", the right one quite bad"
            if (ANY(tokens, k, "one", "ones") && ANY(tokens, at, "the", "one", "a")) at = k + 1;
        while (
            ANY(tokens, at, "a", "an", "the", "some", "just", "only", "with", "mostly", "all", "is", "are"))
            at++;
        enum severity bad = at > i + 1 ? degree_word_behind(r, at, &n) : SEVERITY_UNKNOWN;
        if (bad && ANY(tokens, at - 1, "one", "ones", "is", "are")) return bad;
        enum severity found = degree_word(r, at, &n);
        if (found && degree_is_of_goods(r, at, n)) found = SEVERITY_UNKNOWN;
        size_t end = at + n;
        if (found && n == 1 && degree_adverb(tokens, at) && end < behind->to &&
            tokens->at[end].stop == STOP_NONE && !r->scope.fault[end])
            found = SEVERITY_UNKNOWN; // "…, utterly charming"
        while (found && end < behind->to && end < at + n + WORDS_MOST && tokens->at[end].stop == STOP_NONE &&
               !r->part[end])
            end++;
        bool ends = end >= tokens->count || tokens->at[end].stop != STOP_NONE;
        if (found && ends) return found;
    }
    return SEVERITY_UNKNOWN;
}

// Is a word of tone at `i` said of the fault: "jaws chipped but grip", "cracked, still works"? In "tears at
// folds", "dents on the grip", "split, lid shuts" it names a place, or is of another thing.
static bool is_said_of_it(const struct fault_reader *r, const struct around *behind, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    bool own = true; // nothing but small words between
    for (size_t at = i; at > behind->from && tokens->at[at - 1].stop == STOP_NONE; at--) {
        if (ANY(tokens, at - 1, "but", "though", "although", "yet", "still", "however")) return true;
        if (degree_names_part(r, at - 1)) return false;
        own &=
            ANY(tokens, at - 1, "it", "they", "just", "all", "is", "are", "does", "do", "quite", "very",
                "perfectly", "pretty", "now", "also", "which", "can", "will", "and", "so", "really", "fairly",
                "completely", "absolutely", "nicely", "well", "fully", "remains", "stays", "seems", "feels",
                "looks", "it's", "they're", "that's", "perfectly", "only", "purely", "mostly", "always",
                "thing", "to", "be", "as", "i", "would", "say", "more", "than", "what", "you'd", "nothing",
                "for", "up", "been", "down", "enough", "good", "works", "work", "perfectly") &&
            !(at == i && ANY(tokens, at - 1, "to"));
    }
    return own;
}

// "Holds ten pounds", "hold on to it", "fits a small room", "fine stitching": nothing of how the fault is.
static bool takes_object(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE) return false;
    if (ANY(tokens, i, "hold", "holds", "grip", "grips", "fits", "plays", "runs", "opens", "turns", "folds",
            "closes", "shuts", "swings"))
        return !ANY(tokens, i + 1, "fine", "well", "ok", "okay", "alright", "freely", "smoothly", "nicely",
                    "tight", "tightly", "firm", "firmly", "still", "perfectly", "as", "and", "but", "though",
                    "good", "great", "properly", "right", "lovely", "together", "easily", "sweetly", "true",
                    "clean", "normally", "quietly", "happily", "anyway", "regardless", "solid", "securely",
                    "when", "if", "once", "now", "for");
    return ANY(tokens, i, "fine", "normal", "ordinary", "free", "sound", "firm", "tight", "secure", "stable",
               "usable", "superficial") &&
           tokens->at[i + 1].kind == TOKEN_WORD && !spot_preposition(tokens, i + 1) &&
           !ANY(tokens, i + 1, "and", "but", "or", "though", "still", "enough", "wear", "as", "all", "now",
                "otherwise", "really", "i", "just", "so", "to", "once", "when", "if", "again", "only",
                "marks", "scratches");
}

// That it still holds or works is the middle step of some scales, and little of the others.
enum severity degree_still_good(const struct flaw *kind) {
    static const char *const middle[] = {"dent-bend",    "warped",     "strap-damage",
                                         "binding-weak", "wood-split", "leather-crack",
                                         "seam-open",    "crack",      "crack-through"};
    for (size_t i = 0; i < sizeof middle / sizeof *middle; i++)
        if (text_same(kind->rule.id, middle[i])) return SEVERITY_MODERATE;
    return SEVERITY_LIGHT;
}

static enum severity of_use(const struct fault_reader *r, const struct fault_hit *hit,
                            const struct flaw *kind, const struct around *behind) {
    static const char *const mends[] = {"easily",   "easy",       "fixable", "repairable",
                                        "mendable", "fix",        "simple",  "straight",
                                        "bent",     "straighten", "quick",   "straightened"};
    enum severity found = degree_of_use(r, hit);
    for (size_t i = behind->from; found && i < behind->to; i++)
        if (token_among(&r->note->tokens, i, mends, sizeof mends / sizeof *mends)) return found;
    for (size_t i = behind->from; found == SEVERITY_LIGHT && i + 1 < behind->to; i++)
        if (ANY(&r->note->tokens, i, "does", "do") && ANY(&r->note->tokens, i + 1, "the", "its", "work"))
            return degree_still_good(kind); // "but does the job"
    for (size_t i = behind->from; found == SEVERITY_LIGHT && i < behind->to; i++)
        if (ANY(&r->note->tokens, i, "still", "works", "usable", "useable", "holds", "turns", "closes",
                "shuts", "opens", "fits", "latches", "locks", "seals", "stands", "sits"))
            return degree_still_good(kind);
    return found;
}

// By the tone of what is added: "jaws chipped but grip", "cracked across but screwed down tight".
static enum severity of_tone(const struct fault_reader *r, const struct flaw *kind,
                             const struct around *behind) {
    static const char *const mild[] = {
        "sturdy",        "functions",   "operates",   "holding",  "fine",        "free",       "freely",
        "work",          "ok",          "okay",       "alright",  "tight",       "firm",       "sound",
        "stable",        "usable",      "useable",    "works",    "hold",        "holds",      "grip",
        "grips",         "closes",      "shuts",      "opens",    "swings",      "folds",      "turns",
        "runs",          "plays",       "fits",       "harmless", "superficial", "cosmetic",   "ordinary",
        "normal",        "serviceable", "functional", "secure",   "anyway",      "regardless", "negligible",
        "inconspicuous", "discreet",    "manageable", "tolerable"};
    static const char *const bad[] = {
        "worse",     "gaping",     "gapes",    "ruined",     "rotten",     "useless",   "dangerous",
        "unsafe",    "ugly",       "nasty",    "everywhere", "wrecked",    "crumbly",   "ghastly",
        "shocking",  "disgusting", "unusable", "unwearable", "unreadable", "illegible", "hopeless",
        "knackered", "shot",       "goosed",   "buggered",   "fubar",      "toast"};
    static const char *const others[] = {"there",  "has",     "have",    "in",    "on",    "to",      "needs",
                                         "got",    "smells",  "visible", "shows", "dirty", "wet",     "damp",
                                         "a",      "the",     "some",    "no",    "not",   "bad",     "leaks",
                                         "sticks", "missing", "it",      "i",     "you",   "attached"};
    const struct tokens *tokens = &r->note->tokens;
    bool good = false;
    for (size_t i = behind->from; i < behind->to; i++) {
        bool no = i > 0 && ANY(tokens, i - 1, "not", "no", "never", "isn't", "doesn't", "nothing", "nor",
                               "won't", "don't", "hardly", "barely", "longer", "only", "aren't", "can't");
        if (!no && token_among(tokens, i, bad, sizeof bad / sizeof *bad)) return SEVERITY_HEAVY;
        good |= !no && token_among(tokens, i, mild, sizeof mild / sizeof *mild) &&
                is_said_of_it(r, behind, i) &&
                (!takes_object(r, i) || ANY(tokens, i - 1, "but", "still", "though"));
        good |= token_is(tokens, i, "still") && i + 1 < behind->to && tokens->at[i].stop == STOP_NONE &&
                tokens->at[i + 1].kind == TOKEN_WORD && !r->scope.fault[i + 1] &&
                !token_among(tokens, i + 1, others, sizeof others / sizeof *others); // "still presses"
    }
    return good ? degree_still_good(kind) : SEVERITY_UNKNOWN;
}

// "Creased at the ankle as boots are": no more than is usual.
static bool is_usual(const struct fault_reader *r, const struct around *behind) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = behind->from; i + 2 < behind->to; i++)
        if (token_is(tokens, i, "as") && tokens->at[i + 1].kind == TOKEN_WORD &&
            ANY(tokens, i + 2, "are", "do", "does", "will", "get", "would", "always", "tend", "often",
                "usually", "go"))
            return !ANY(tokens, i + 1, "you", "it", "they", "i", "we");
    return false;
}

// "Worn on the thumb rest only", "just round the edge": here and nowhere else.
static bool is_limited(const struct fault_reader *r, const struct around *behind) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = behind->from; i < behind->to; i++) {
        bool ends = i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE;
        if (token_is(tokens, i, "only") && ends && i > behind->from) return true;
        if (ANY(tokens, i, "only", "just") &&
            ANY(tokens, i + 1, "on", "at", "round", "around", "along", "near", "by", "in", "inside", "under",
                "underneath", "behind", "to", "towards", "toward", "across", "where") &&
            ANY(tokens, i + 2, "the", "one", "a", "its", "it"))
            return true;
    }
    return false;
}

// "The wheel won't spin" of what may be stiff or stuck: it does not move at all, unless more is said.
static enum severity of_stuck(const struct fault_reader *r, const struct fault_hit *hit,
                              const struct flaw *kind) {
    static const char *const less[] = {"freely", "fully", "smoothly", "easily", "properly", "far",
                                       "right",  "well",  "quite",    "all",    "without",  "unless",
                                       "nicely", "past",  "until",    "till"};
    const struct tokens *tokens = &r->note->tokens;
    enum { FAR = 3 };
    if (!text_same(kind->rule.id, "seized")) return SEVERITY_UNKNOWN;
    bool no = false;
    for (size_t i = hit->from; i < hit->to; i++)
        no |=
            strstr(tokens->at[i].fold, "n't") || ANY(tokens, i, "not", "cannot", "wont", "refuses", "never");
    for (size_t i = hit->from; no && i < hit->to + FAR; i++)
        if (token_among(tokens, i, less, sizeof less / sizeof *less)) return SEVERITY_UNKNOWN;
    return no ? SEVERITY_HEAVY : SEVERITY_UNKNOWN;
}

// By what is said of it in so many words, here or in the next sentence.
static enum severity of_words(const struct fault_reader *r, const struct fault_hit *hit,
                              const struct flaw *kind, const struct around *at) {
    enum severity found = degree_of_notice(r, &at[AROUND_BEHIND], false);
    if (!found) found = degree_of_notice(r, &at[AROUND_BEFORE], true);
    if (!found) found = degree_of_effect(r, hit, kind, &at[AROUND_BEHIND]);
    if (!found) found = degree_of_notice(r, &at[AROUND_NEXT], false);
    return found ? found : degree_of_effect(r, hit, kind, &at[AROUND_NEXT]);
}

// "Rust hole": what it is called is what the scale calls heavy, however small.
static bool is_heavy_itself(const struct fault_reader *r, const struct fault_hit *hit,
                            const struct flaw *kind) {
    const struct texts *tells = &kind->tells[SEVERITY_HEAVY];
    for (size_t i = hit->from; i < hit->to && kind->most_mm[SEVERITY_LIGHT] <= 0; i++)
        for (size_t k = 0; k < tells->count; k++) {
            size_t n = token_phrase(&r->note->tokens, i, tells->at[k]);
            bool nearly = i + n < hit->to && // "doesn't close flush": it closes
                          ANY(&r->note->tokens, i + n, "flush", "square", "true", "snug", "evenly");
            if (n && i + n <= hit->to && !nearly) return true;
        }
    return false;
}

enum severity degree_weigh(const struct fault_reader *r, const struct fault_hit *hit,
                           const struct item_flaw *flaw) {
    const struct flaw *kind = flaw->kind;
    struct around at[AROUND_COUNT];
    if (unknown_is_own(kind) || fault_is_virtue(kind)) return degree_on_scale(r, hit, kind);
    degree_around(r, hit, kind, at);
    bool seen = is_seen(kind);
    enum severity found = seen ? of_words(r, hit, kind, at) : SEVERITY_UNKNOWN;
    if (!found && !hit->near && is_heavy_itself(r, hit, kind)) found = SEVERITY_HEAVY;
    if (!found) found = of_likeness(r, hit, flaw, &at[AROUND_BEHIND]);
    if (found && flaw->has_size &&
        text_same(kind->rule.id, "enamel-chip")) { // a pea's size, where food cooks
        enum severity place = degree_on_scale(r, hit, kind);
        if (place == SEVERITY_HEAVY) found = place;
    }
    if (!found) found = degree_on_scale(r, hit, kind);
    if (found == SEVERITY_HEAVY && degree_is_bound(&r->note->tokens, &at[AROUND_BEHIND]))
        found = SEVERITY_MODERATE;
    bool fails = kind->form == FAULT; // "turns but you need to jiggle it" of what is only stiff, too
    if (!found && fails) found = degree_of_failing(r, kind, &at[AROUND_BEHIND]);
    if (!found && seen) found = degree_of_extent(r, kind, &at[AROUND_BEHIND]);
    if (!found && seen) found = degree_of_failing(r, kind, &at[AROUND_NEXT]);
    if (!found) found = of_use(r, hit, kind, &at[AROUND_BEHIND]);
    if (!found) found = of_stuck(r, hit, kind);
    if (!found) found = degree_on_scale_in(r, kind, at[AROUND_NEXT].from, at[AROUND_NEXT].to);
    if (!found) found = of_likeness_told(r, &at[AROUND_BEHIND]);
    if (!found && seen) found = degree_short_of(r, hit, kind);
    bool little = seen && (is_usual(r, &at[AROUND_BEHIND]) || is_limited(r, &at[AROUND_BEHIND]));
    if (!found && little) found = SEVERITY_LIGHT;
    if (!found && seen) found = degree_of_sight(r, &at[AROUND_BEHIND]);
    if (!found && seen) found = of_tone(r, kind, &at[AROUND_BEHIND]);
    if (!found && seen) found = degree_of_sight(r, &at[AROUND_NEXT]);
    return found;
}
