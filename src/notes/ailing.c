// SPDX-License-Identifier: MIT
// A part that does what it should, but badly, in words that name no fault by themselves: "the lock plays up",
// "the drawer needs a good tug", "the switch is dodgy", "the hasp hangs by one screw". The part tells the
// kind.
#include <string.h>

#include "notes/any.h"
#include "notes/of_use.h"
#include "notes/stuff.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum ailment {
    FAILS,  // it does not do its work, or not always
    STICKS, // it moves badly
    HANGS   // it does not sit fast
};

static const struct {
    const char *phrase;
    enum ailment ailment;
    bool closes; // only where the clause ends with it
} predicates[] = {{"faulty", FAILS, false},
                  {"dodgy", FAILS, false},
                  {"no use", FAILS, true},
                  {"useless", FAILS, true},
                  {"no good", FAILS, true},
                  {"not much good", FAILS, true},
                  {"not much use", FAILS, true},
                  {"has had it", FAILS, true},
                  {"had it", FAILS, true},
                  {"is shot", FAILS, true},
                  {"plays up", FAILS, false},
                  {"playing up", FAILS, false},
                  {"acts up", FAILS, false},
                  {"acting up", FAILS, false},
                  {"awkward", STICKS, true},
                  {"loose-ish", HANGS, false},
                  {"loosish", HANGS, false},
                  {"unreliable", FAILS, false},
                  {"iffy", FAILS, false},
                  {"suspect", FAILS, true},
                  {"does nothing", FAILS, true},
                  {"do nothing", FAILS, true},
                  {"doesn't do its job", FAILS, false},
                  {"doesn't do what it should", FAILS, false},
                  {"doesn't do anything", FAILS, false},
                  {"doesn't do much", FAILS, true},
                  {"sticks", STICKS, true},
                  {"stick", STICKS, true},
                  {"jams", STICKS, true},
                  {"jam", STICKS, true},
                  {"catches", STICKS, true},
                  {"binds", STICKS, true},
                  {"drags", STICKS, true},
                  {"hangs up", STICKS, false},
                  {"hang up", STICKS, true},
                  {"only just moves", STICKS, true},
                  {"moves but only just", STICKS, true},
                  {"hard work", STICKS, true},
                  {"hard going", STICKS, true},
                  {"tight to turn", STICKS, false},
                  {"stops halfway", STICKS, false},
                  {"stops short", STICKS, true},
                  {"only comes out halfway", STICKS, false},
                  {"will only come out halfway", STICKS, false},
                  {"only opens halfway", STICKS, false},
                  {"only opens part way", STICKS, false},
                  {"won't go all the way", STICKS, false},
                  {"doesn't go all the way", STICKS, false},
                  {"silent", FAILS, true},
                  {"shot", FAILS, true},
                  {"tired", FAILS, true},
                  {"droops", HANGS, false},
                  {"flops", HANGS, false},
                  {"sinks", HANGS, true},
                  {"has sunk", STICKS, false},
                  {"have sunk", STICKS, false},
                  {"sags down", HANGS, false},
                  {"drips", FAILS, false},
                  {"weeps", FAILS, false},
                  {"has to be coaxed", STICKS, false},
                  {"has to be forced", STICKS, false},
                  {"has to be eased", STICKS, false},
                  {"has to be jiggled", STICKS, false},
                  {"has to be wiggled", STICKS, false},
                  {"has to be nudged", STICKS, false},
                  {"has to be persuaded", STICKS, false},
                  {"has to be lifted", STICKS, false},
                  {"needs to be coaxed", STICKS, false},
                  {"needs to be forced", STICKS, false},
                  {"needs to be eased", STICKS, false},
                  {"needs to be jiggled", STICKS, false},
                  {"needs to be wiggled", STICKS, false},
                  {"needs to be nudged", STICKS, false},
                  {"needs to be persuaded", STICKS, false},
                  {"needs to be lifted", STICKS, false},
                  {"have to be coaxed", STICKS, false},
                  {"have to be forced", STICKS, false},
                  {"have to be eased", STICKS, false},
                  {"have to be jiggled", STICKS, false},
                  {"have to be wiggled", STICKS, false},
                  {"have to be nudged", STICKS, false},
                  {"have to be persuaded", STICKS, false},
                  {"have to be lifted", STICKS, false},
                  {"need to be coaxed", STICKS, false},
                  {"need to be forced", STICKS, false},
                  {"need to be eased", STICKS, false},
                  {"need to be jiggled", STICKS, false},
                  {"need to be wiggled", STICKS, false},
                  {"need to be nudged", STICKS, false},
                  {"need to be persuaded", STICKS, false},
                  {"need to be lifted", STICKS, false},
                  {"must be coaxed", STICKS, false},
                  {"must be forced", STICKS, false},
                  {"must be eased", STICKS, false},
                  {"must be jiggled", STICKS, false},
                  {"must be wiggled", STICKS, false},
                  {"must be nudged", STICKS, false},
                  {"must be persuaded", STICKS, false},
                  {"must be lifted", STICKS, false},
                  {"deaf", FAILS, true},
                  {"rubs", STICKS, true},
                  {"defective", FAILS, false},
                  {"needs attention", FAILS, false},
                  {"needs looking at", FAILS, false},
                  {"needs seeing to", FAILS, false},
                  {"needs fixing", FAILS, false},
                  {"needs repair", FAILS, false},
                  {"stiffly", STICKS, false},
                  {"grudgingly", STICKS, false},
                  {"reluctantly", STICKS, false},
                  {"with difficulty", STICKS, false},
                  {"with a struggle", STICKS, false},
                  {"loose", HANGS, true},
                  {"loose in its", HANGS, false},
                  {"loose on its", HANGS, false},
                  {"wobbly", HANGS, true},
                  {"quiet", FAILS, true},
                  {"lags", FAILS, false},
                  {"dips", FAILS, false},
                  {"drops out", FAILS, false},
                  {"fades", FAILS, true},
                  {"spins without catching", FAILS, false},
                  {"turns without catching", FAILS, false},
                  {"spins without gripping", FAILS, false},
                  {"mute", FAILS, true},
                  {"scratchy", FAILS, false},
                  {"crackly", FAILS, false},
                  {"dim", FAILS, true},
                  {"faint", FAILS, true},
                  {"weak", FAILS, true},
                  {"lazy", FAILS, true},
                  {"distorted", FAILS, false},
                  {"distorts", FAILS, false},
                  {"fuzzy", FAILS, true},
                  {"patchy", FAILS, true},
                  {"hit and miss", FAILS, false},
                  {"slips", FAILS, false},
                  {"is slipping", FAILS, false},
                  {"buzzes", FAILS, false},
                  {"hisses", FAILS, false},
                  {"crackles", FAILS, false},
                  {"squeals", FAILS, false},
                  {"cuts out", FAILS, false},
                  {"flickers", FAILS, false},
                  {"stays cold", FAILS, false},
                  {"stays dark", FAILS, false},
                  {"stays silent", FAILS, false},
                  {"stays pale", FAILS, false},
                  {"stays off", FAILS, false},
                  {"stays dead", FAILS, false},
                  {"stays blank", FAILS, false},
                  {"stays dim", FAILS, false},
                  {"comes on late", FAILS, false},
                  {"has stopped", FAILS, false},
                  {"doesn't bite", FAILS, false},
                  {"won't bite", FAILS, false},
                  {"doesn't come back", STICKS, false},
                  {"don't come back", STICKS, false},
                  {"won't come back", STICKS, false},
                  {"doesn't spring back", STICKS, false},
                  {"don't spring back", STICKS, false},
                  {"doesn't return", STICKS, false},
                  {"don't return", STICKS, false},
                  {"spins loose", HANGS, false},
                  {"turns loosely", HANGS, false},
                  {"spins round and round", HANGS, false},
                  {"just spins", HANGS, true},
                  {"takes two hands to shift", STICKS, false},
                  {"takes two hands to turn", STICKS, false},
                  {"takes two hands to open", STICKS, false},
                  {"takes two hands to close", STICKS, false},
                  {"takes two hands to move", STICKS, false},
                  {"takes both hands to shift", STICKS, false},
                  {"takes both hands to turn", STICKS, false},
                  {"takes both hands to open", STICKS, false},
                  {"takes both hands to close", STICKS, false},
                  {"takes both hands to move", STICKS, false},

                  {"noisy", FAILS, false},
                  {"slow", FAILS, true},
                  {"erratic", FAILS, false},
                  {"intermittent", FAILS, false},
                  {"temperamental", FAILS, false},
                  {"sluggish", STICKS, false},
                  {"hard to pull", STICKS, false},
                  {"hard to open", STICKS, false},
                  {"hard to close", STICKS, false},
                  {"hard to move", STICKS, false},
                  {"hard to shift", STICKS, false},
                  {"hard to slide", STICKS, false},
                  {"hard to shut", STICKS, false},
                  {"dry and stiff", STICKS, false},
                  {"stiff and dry", STICKS, false},
                  {"sloppy", HANGS, true},
                  {"slack", HANGS, true},
                  {"hangs by", HANGS, false},
                  {"hanging by", HANGS, false},
                  {"held on by", HANGS, false},
                  {"holding on by", HANGS, false}};

// "Needs some oil", "wants a good shove", "takes two hands to shift": what it asks of whoever uses it.
static const char *const asks[] = {"needs", "need", "wants", "want", "takes", "take", "requires"};
static const char *const helps[] = {
    "holding",  "effort",    "hand",      "oil",         "oiling",      "tug",     "nudge",         "shove",
    "push",     "pull",      "thump",     "tap",         "knock",       "jiggle",  "jiggling",      "wiggle",
    "wiggling", "force",     "forcing",   "persuading",  "persuasion",  "coaxing", "encouragement", "freeing",
    "easing",   "greasing",  "grease",    "lubricating", "lubrication", "waxing",  "heave",         "kick",
    "whack",    "bang",      "yank",      "lift",        "wrench",      "pliers",  "patience",      "knack",
    "help",     "adjusting", "adjustment"};

static bool closes(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "i",      "i'd",     "probably", "a",       "at",        "on",    "when",     "if",    "and",
        "but",    "near",    "half",     "halfway", "sometimes", "in",    "slightly", "badly", "now",
        "though", "until",   "before",   "so",      "because",   "every", "with",     "from",  "since",
        "due",    "through", "after",    "round",   "where",     "along"};
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           token_among(tokens, i, words, COUNT(words));
}

static size_t predicate_at(const struct tokens *tokens, size_t i, enum ailment *ailment) {
    size_t most = 0;
    if (!token_may_open(tokens, i, predicates, COUNT(predicates), sizeof *predicates)) return 0;
    for (size_t k = 0; k < COUNT(predicates); k++) {
        size_t n = token_phrase(tokens, i, predicates[k].phrase);
        if (n <= most || (predicates[k].closes && !closes(tokens, i + n))) continue;
        most = n;
        *ailment = predicates[k].ailment;
    }
    return most;
}

static size_t asked_at(const struct tokens *tokens, size_t i) {
    enum { FAR = 5 };
    static const char *const tends[] = {"now and then", "occasionally", "every", "once a", "from time"};
    static const char *const apart[] = {"new", "to", "replacing", "no", "for", "but", "and"};
    if (!token_among(tokens, i, asks, COUNT(asks))) return 0;
    for (size_t at = i + 1; at <= i + FAR && at < tokens->count && tokens->at[at].stop == STOP_NONE; at++) {
        if (token_among(tokens, at, apart, COUNT(apart))) return 0;
        if (token_among(tokens, at, helps, COUNT(helps)))
            return token_longest(tokens, at + 1, tends, COUNT(tends)) ? 0 : at + 1 - i;
    }
    return 0;
}

// A cake tin is made with a loose base.
static bool is_of_tin(const struct fault_reader *r) {
    const char *type = r->note->record->type.value;
    return type && (strstr(type, "tin") || strstr(type, "pan") || strstr(type, "mold"));
}

// "One dim digit", "a sticky key": the adjective before the part.
static size_t dim_part(const struct fault_reader *r, size_t i, size_t *part, enum ailment *ailment) {
    static const char *const fails[] = {"dim",  "silent", "faulty",       "dodgy",    "dumb",
                                        "mute", "dead",   "weak",         "scratchy", "crackly",
                                        "lazy", "iffy",   "intermittent", "defective"};
    static const char *const sticks[] = {"sticky",   "sticking", "stiff",  "stuck",
                                         "sluggish", "seized",   "jammed", "frozen"};
    static const char *const hangs[] = {"loose", "wobbly", "floppy", "slack", "sloppy"};
    static const char *const firsts[] = {"a",    "one",  "two", "three", "four", "has",
                                         "with", "some", "the", "few",   "and"};
    static const char *const sides[] = {"left", "right", "front", "back", "top", "bottom", "main", "rear"};
    static const char *const mends[] = {"replaced", "fitted", "renewed", "changed", "sorted", "fixed"};
    const struct tokens *tokens = &r->note->tokens;
    bool bad = token_among(tokens, i, fails, COUNT(fails)),
         stuck = token_among(tokens, i, sticks, COUNT(sticks)),
         hung = token_among(tokens, i, hangs, COUNT(hangs));
    if ((!bad && !stuck && !hung) || i == 0 || tokens->at[i].stop != STOP_NONE) return 0;
    *part = token_among(tokens, i + 1, sides, COUNT(sides)) ? i + 2 : i + 1;
    bool fixed = hung && *part < tokens->count && r->part[*part] && r->note->taken[*part] != TAKEN_TYPE &&
                 tokens->at[*part].one == tokens->at[*part].fold && // "loose base", not "loose stones"
                 !(ANY(tokens, *part, "base", "bottom") && is_of_tin(r));
    if ((!function_kind(r, *part) && !fixed) || token_is(tokens, *part, "bulb")) return 0;
    if (token_among(tokens, *part + 1, mends, COUNT(mends))) return 0;
    *ailment = bad ? FAILS : stuck ? STICKS : HANGS;
    bool opens = token_among(tokens, i - 1, firsts, COUNT(firsts)) || tokens->at[i - 1].stop != STOP_NONE;
    return opens ? *part + 1 - i : 0;
}

// The part right behind an article: "with the lock", "get the bottom drawer to".
static bool part_behind(const struct fault_reader *r, size_t i, size_t *part) {
    enum { WORDS = 3 };
    static const char *const articles[] = {"the", "its", "one", "this", "that"};
    const struct tokens *tokens = &r->note->tokens;
    if (token_among(tokens, i, articles, COUNT(articles))) i++;
    for (size_t at = i; at < i + WORDS && at < tokens->count && tokens->at[at].stop == STOP_NONE; at++) {
        *part = at;
        if (function_kind(r, at) && !function_kind(r, at + 1)) return true;
    }
    *part = i; // "trouble with the lock."
    return function_kind(r, i) != NULL;
}

// "Trouble with the lock", "couldn't get the drawer to open".
static size_t trouble_with(const struct fault_reader *r, size_t i, size_t *part, enum ailment *ailment) {
    static const char *const troubles[] = {"problem", "trouble", "problems", "fault", "issue", "issues"};
    static const char *const cannot[] = {"can't", "couldn't", "cannot", "cant", "couldnt", "not"};
    static const char *const motions[] = {"move",  "turn",   "open",  "close", "budge", "shift",
                                          "slide", "undo",   "shut",  "go",    "lift",  "come",
                                          "fold",  "unlock", "screw", "stay",  "free"};
    const struct tokens *tokens = &r->note->tokens;
    *ailment = FAILS;
    static const char *const nos[] = {"no", "without", "any", "not", "never", "little", "zero", "had"};
    bool none = i > 0 && token_among(tokens, i - 1, nos, COUNT(nos));
    if (!none && token_among(tokens, i, troubles, COUNT(troubles)) && token_is(tokens, i + 1, "with") &&
        part_behind(r, i + 2, part))
        return *part + 1 - i;
    bool get = token_is(tokens, i, "get") && i > 0 && token_among(tokens, i - 1, cannot, COUNT(cannot));
    if (!get || !part_behind(r, i + 1, part) || !token_is(tokens, *part + 1, "to")) return 0;
    if (token_among(tokens, *part + 2, motions, COUNT(motions))) *ailment = STICKS;
    return *part + 3 - i;
}

// "Pendulum loose", "the base feels a bit wobbly", "strap: loose": any part may sit loose, with works or not.
static bool loose_part(const struct fault_reader *r, size_t i, size_t *part) {
    static const char *const between[] = {
        "is",   "are",  "looks",  "look",  "feels",    "feel",     "seems", "got",  "gets",
        "a",    "bit",  "little", "touch", "slightly", "rather",   "quite", "very", "pretty",
        "too",  "also", "just",   "now",   "both",     "been",     "has",   "have", "come",
        "very", "gone", "really", "so",    "fairly",   "somewhat", "was",   "were", "being"};
    static const char *const inside[] = {"in", "on", "at", "from", "of", "inside", "with", "under", "by"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    while (at > 0 && token_among(tokens, at - 1, between, COUNT(between)) &&
           tokens->at[at - 1].stop == STOP_NONE)
        at--;
    if (at == i && at > 0 && (token_is(tokens, at - 1, ":") || token_is(tokens, at - 1, "-"))) at--;
    if (at == 0 || !r->part[at - 1] || r->note->taken[at - 1] == TAKEN_TYPE) return false;
    *part = at - 1;
    while (at > 0 && r->part[at - 1]) at--;
    if (at > 0 && ANY(tokens, at - 1, "the", "its", "a", "one")) at--;
    return at == 0 || tokens->at[at - 1].stop != STOP_NONE || token_is(tokens, i - 1, "being") ||
           !token_among(tokens, at - 1, inside, COUNT(inside));
}

// "Hoops rusty and loose", "the beam is bent and a bit loose on its pivot": beside another fault of the part.
static bool loose_besides(const struct fault_reader *r, size_t i, size_t *part) {
    static const char *const between[] = {"is",     "are",   "a",    "bit",  "little", "touch", "slightly",
                                          "rather", "very",  "also", "both", "all",    "been",  "has",
                                          "have",   "quite", "got",  "gone", "badly"};
    enum { BACK = 5 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    while (at > 0 && token_among(tokens, at - 1, between, COUNT(between))) at--;
    if (at < 2 || !ANY(tokens, at - 1, "and", "&") || !r->scope.fault[at - 2] ||
        tokens->at[at - 2].stop != STOP_NONE)
        return false;
    bool ended = i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE ||
                 ANY(tokens, i + 1, "on", "at", "in", "now", "too", "but");
    size_t end = at - 1;
    for (at = end; at > 0 && end - at < BACK && tokens->at[at - 1].stop == STOP_NONE; at--) {
        if (r->part[at - 1] && r->note->taken[at - 1] != TAKEN_TYPE) {
            *part = at - 1;
            return ended;
        }
        if (!r->scope.fault[at - 1] && !token_among(tokens, at - 1, between, COUNT(between))) return false;
    }
    return false;
}

// "It's loose at the spout": where it is loose is the part.
static bool loose_place(const struct fault_reader *r, size_t i, size_t to, size_t *part) {
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0 || !ANY(tokens, i - 1, "it's", "its", "is", "bit", "looks", "feels", "it")) return false;
    if (!ANY(tokens, to, "at", "in", "near", "round") || !ANY(tokens, to + 1, "the", "one", "both"))
        return false;
    *part = to + 2;
    if (*part >= tokens->count || tokens->at[*part].kind != TOKEN_WORD) return false;
    while (tokens->at[*part].stop == STOP_NONE && *part + 1 < tokens->count && r->part[*part + 1]) ++*part;
    return r->part[*part] || *part + 1 >= tokens->count || tokens->at[*part + 1].stop != STOP_NONE;
}

// "The drawers run well bar the bottom one that sticks", "all keys play except two which jam": of the parts
// that were named before, the piece that the exception names. Its words are [*from, *to), without articles.
static bool excepted_piece(const struct fault_reader *r, size_t i, size_t *part, size_t *from, size_t *to) {
    static const char *const cues[] = {"except", "bar",  "but",  "from", "than",
                                       "for",    "only", "save", "minus"};
    static const char *const pieces[] = {"one",    "ones",  "two",   "three", "left",   "right",  "top",
                                         "bottom", "front", "back",  "first", "second", "third",  "last",
                                         "middle", "upper", "lower", "small", "big",    "little", "fourth"};
    enum { WORDS_MOST = 4, FAR = 14 };
    const struct tokens *tokens = &r->note->tokens;
    size_t end = i;
    if (end > 0 && ANY(tokens, end - 1, "that", "which", "as", "where", ",")) end--;
    if (end > 0 && ANY(tokens, end - 1, ",")) end--;
    size_t at = end;
    while (at > 0 && end - at < WORDS_MOST && token_among(tokens, at - 1, pieces, COUNT(pieces))) at--;
    if (at == end) return false;
    *from = at;
    *to = end;
    while (at > 0 && ANY(tokens, at - 1, "the", "just", "a", "maybe")) at--;
    if (at == 0 || !token_among(tokens, at - 1, cues, COUNT(cues))) return false;
    for (size_t back = 2; back < FAR && back <= at && tokens->at[at - back].stop < STOP_SENTENCE; back++)
        if (function_kind(r, at - back) && tokens->at[at - back].one != tokens->at[at - back].fold) {
            *part = at - back; // several of them
            return true;
        }
    return false;
}

// "Bottom drawer" of "the drawers … bar the bottom one".
static const char *piece_name(const struct fault_reader *r, size_t part, size_t from, size_t to) {
    const struct tokens *tokens = &r->note->tokens;
    const char *name = tokens->at[part].one;
    if (degrees_number(tokens, from) > 1) return tokens->at[part].fold;
    while (to > from && ANY(tokens, to - 1, "one", "ones")) to--;
    return to > from ? arena_format(r->note->arena, "%s %s", fault_place(r->note, from, to), name) : name;
}

// "Panel isn't cracked but it's loose", "shade not split but loose": of what was the subject before "but".
static bool loose_instead(const struct fault_reader *r, size_t i, size_t *part) {
    static const char *const between[] = {"it's",  "it",     "is",       "its",   "they're", "they",
                                          "are",   "a",      "bit",      "just",  "does",    "feel",
                                          "feels", "rather", "slightly", "quite", "little"};
    enum { FAR = 10 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i, start = scope_sentence_start(&r->scope, i);
    while (at > start && token_among(tokens, at - 1, between, COUNT(between))) at--;
    bool it = ANY(tokens, at, "it's", "they're", "it", "they",
                  "its") && // "is a later one, it's loose in the wires"
              at > start &&
              tokens->at[at - 1].stop == STOP_COMMA;
    if (at == start || (!it && !ANY(tokens, at - 1, "but", "though"))) return false;
    for (size_t k = start; k < at && k < start + FAR; k++) {
        if (!r->part[k] || r->note->taken[k] == TAKEN_TYPE || r->scope.fault[k]) continue;
        while (k + 1 < at && r->part[k + 1] && !r->scope.fault[k + 1]) k++;
        *part = k;
        return true;
    }
    return false;
}

// "The clasp still catches": as it should.
static bool closes_well(const struct tokens *tokens, size_t i, size_t part) {
    return ANY(tokens, i, "catches", "catch") &&
           ANY(tokens, part, "clasp", "clasps", "latch", "latches", "lock", "locks", "hook", "hooks", "bolt",
               "buckle", "fastener", "hasp", "snap", "snaps", "catch", "closure", "bail") &&
           (i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE ||
            ANY(tokens, i - 1, "still", "always") ||
            ANY(tokens, i + 1, "fine", "well", "nicely", "good", "tight", "properly", "right", "firm",
                "firmly", "every", "and", "ok", "okay", "securely", "as"));
}

static size_t ailment_at(const struct fault_reader *r, size_t i, size_t *part, enum ailment *ailment) {
    size_t n = predicate_at(&r->note->tokens, i, ailment);
    if (!n) n = asked_at(&r->note->tokens, i);
    if (n && *ailment == HANGS) {
        if (loose_part(r, i, part)) return n;
        if (ANY(&r->note->tokens, i + n, "in") && loose_instead(r, i, part)) return n;
        if (loose_place(r, i, i + n, part)) return n;
        if (loose_instead(r, i, part) || loose_besides(r, i, part)) return n;
        size_t behind = stuff_subject(r, i);
        *part = behind - 1;
        return behind && !ANY(&r->note->tokens, *part, "it's", "it", "they", "they're", "that") ? n : 0;
    }
    if (n && function_part(r, i, part)) return closes_well(&r->note->tokens, i, *part) ? 0 : n;
    n = dim_part(r, i, part, ailment);
    return n ? n : trouble_with(r, i, part, ailment);
}

static const struct flaw *kind_for(const struct fault_reader *r, size_t part, enum ailment ailment) {
    const struct ruleset *rules = r->note->rules;
    const struct flaw *kind = function_kind(r, part);
    bool stuck = kind && text_same(kind->rule.id, "seized");
    bool zip = kind && text_same(kind->rule.id, "zip-fault");
    if (ailment == HANGS) return ruleset_flaw(rules, "loose-part");
    if (ailment == STICKS) return zip ? kind : ruleset_flaw(rules, "seized");
    return stuck ? ruleset_flaw(rules, "partly-working") : kind;
}

// "It was loose, I tightened it": it is so no more.
static bool is_mended(const struct fault_reader *r, size_t i) {
    static const char *const were[] = {"was", "were", "had"};
    static const char *const mends[] = {"tightened", "fixed",  "oiled",    "replaced", "mended", "glued",
                                        "now",       "sorted", "cured",    "freed",    "eased",  "greased",
                                        "adjusted",  "new",    "repaired", "cleaned"};
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, i), end = scope_sentence_end(&r->scope, i);
    bool was = false;
    for (size_t at = i; at > start && at + 4 > i; at--) was |= token_among(tokens, at - 1, were, COUNT(were));
    for (size_t at = i; was && at < end; at++)
        if (token_among(tokens, at, mends, COUNT(mends))) return true;
    return false;
}

// "One lens loose and chipped": between the two words of another fault, which an "and" parts from the second.
static bool is_beside(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "loose", "wobbly", "stiff", "slack") || !token_is(tokens, i + 1, "and")) return false;
    for (size_t k = i > 2 ? i - 3 : 0; k < i; k++) // it has come off
        if (!strncmp(tokens->at[k].fold, "paint", strlen("paint")) ||
            ANY(tokens, k, "varnish", "finish", "gilding", "plating", "lacquer", "enamel"))
            return false;
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].near && r->hits[k].from < i && r->hits[k].to > i + 2 && r->hits[k].to <= i + 4)
            return true;
    return false;
}

// "A crack in the side that weeps", at "weeps": how bad the crack is.
static bool is_of_opening(const struct fault_reader *r, size_t i) {
    enum { BACK = 8 };
    static const char *const openings[] = {"crack", "crack-through", "hairline", "hole", "seam-split"};
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "weeps", "leaks", "drips", "seeps", "weeping", "leaking") ||
        !ANY(tokens, i - 1, "that", "which", "and"))
        return false;
    for (size_t k = 0; k < r->hit_count; k++)
        for (size_t n = 0; r->hits[k].to <= i && r->hits[k].to + BACK > i && n < COUNT(openings); n++)
            if (text_same(r->hits[k].kinds[0]->rule.id, openings[n])) return true;
    return false;
}

void read_ailing(struct fault_reader *r) {
    static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_WITHDRAWN |
                                STANCE_OTHER | STANCE_UNKNOWN | STANCE_PLANNED;
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        enum ailment ailment = STICKS;
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        size_t part = 0, piece = 0, piece_to = 0, n = predicate_at(tokens, i, &ailment);
        bool excepted = n && excepted_piece(r, i, &part, &piece, &piece_to);
        if (!excepted) n = ailment_at(r, i, &part, &ailment);
        if (!n || is_of_opening(r, i)) continue;
        size_t since = excepted || part > i ? i : part;
        for (size_t k = since; k < i; k++) // "panel isn't cracked but it's loose"
            if (ANY(tokens, k, "but", "though") ||
                (ailment == HANGS && (ANY(tokens, k, "and", "&") || tokens->at[k].stop == STOP_COMMA)))
                since = k;
        if ((fault_takes_any(r, since, i + n) && !is_beside(r, i)) || is_mended(r, i)) continue;
        bool can_not = token_is(tokens, i, "get"); // its "can't" is its own
        if (!can_not && (r->scope.stance[i] & off)) continue;
        const struct flaw *kind = kind_for(r, part, ailment);
        if (excepted && kind) {
            struct fault_hit hit = {.from = piece, .to = i + n, .kinds = {kind}, .kind_count = 1};
            fault_tell(r, &hit, kind, piece_name(r, part, piece, piece_to), NULL);
            i += n - 1;
            continue;
        }
        if (!kind ||
            (!note_free(r->note, part, part + 1) && r->note->taken[part] != TAKEN_PART && !is_beside(r, i) &&
             !(ailment == HANGS && part < i && r->note->taken[part] == TAKEN_FLAW)))
            continue;
        size_t from = part;
        while (from > 0 && r->part[from - 1]) from--;
        struct fault_hit hit = {.from = i, .to = i + n, .kinds = {kind}, .kind_count = 1};
        struct spot other = {0}; // "one handle is missing, the other one's loose"
        bool named = part < i && ANY(tokens, part, "one's", "other's") && spot_other(r, i, &other) &&
                     other.which && *other.which && other.part_to > other.part_from;
        const char *name =
            named ? arena_format(
                        r->note->arena, "%s %s", other.which,
                        say_singular(r->note->arena, fault_place(r->note, other.part_from, other.part_to)))
                  : fault_place(r->note, from, part + 1);
        if (!fault_is_of_use(r, &hit)) fault_tell(r, &hit, kind, name, NULL);
        i += n - 1;
    }
}
