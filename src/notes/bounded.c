// SPDX-License-Identifier: MIT
// What a denial leaves open. "No major scratches" does not say that there is none, "no other stains" speaks
// of those beside the ones that were told, "two of the six aren't chipped" of two, "no cracks before the
// move" of another day, and "no promise about worm" of no fault at all. Asked of words that deny and of
// nothing else.
#include <string.h>

#include "notes/any.h"
#include "notes/denial_words.h"
#include "notes/faults.h"
#include "text/order.h"

static bool is_smell(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "smell", "smells", "odor", "odour", "odors", "odours", "whiff", "pong");
}

// "No major", "no other", "no new": of the rest nothing is said. "No bad smell" is no smell.
static bool is_some_only(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "fresh", "new") && ANY(tokens, i + 1, "dust", "frass", "powder", "sawdust"))
        return false; // by these the worm is looked for
    if (ANY(tokens, i, "other", "further", "additional", "more", "new", "newer", "fresh", "recent", "active"))
        return true;
    return ANY(tokens, i, "major", "big", "bad", "serious", "deep", "real", "significant", "large", "heavy",
               "great", "huge", "severe", "gross", "nasty", "long", "wide", "structural", "proper", "massive",
               "excessive", "undue", "extensive", "substantial", "considerable", "glaring", "horrible",
               "terrible", "awful", "dreadful", "drastic", "important", "worrying", "unusual", "unexpected",
               "outright", "full", "total", "complete", "conspicuous", "sizable", "sizeable", "large-scale",
               "bigger", "larger", "worse", "deeper", "badly") &&
           !is_smell(tokens, i + 1) && !is_smell(tokens, i + 2) && !token_is(tokens, i + 1, "deal");
}

// "Not deeply", "not all", "not as": less than all is denied; "not actually", "not the least bit" deny it.
static bool is_some_way(const struct tokens *tokens, size_t i) {
    static const char *const whole[] = {"actually",  "certainly",  "definitely", "absolutely", "currently",
                                        "presently", "remotely",   "physically", "simply",     "really",
                                        "honestly",  "apparently", "thankfully", "luckily",    "only"};
    if (token_is(tokens, i, "the")) return i > 0 && token_is(tokens, i - 1, "not");
    if (ANY(tokens, i, "all", "as", "so", "quite", "half", "altogether", "much")) return true;
    const struct token *t = &tokens->at[i];
    size_t size = strlen(t->fold);
    return t->kind == TOKEN_WORD && size > 4 && text_same(t->fold + size - 2, "ly") &&
           !token_among(tokens, i, whole, sizeof whole / sizeof *whole);
}

static size_t first_fault(const struct scope *s, size_t from, size_t to) {
    while (from < to && !s->fault[from]) from++;
    return from;
}

// "No promise about worm", "no point in hiding the dents": the "no" is of another noun, and the fault stands
// behind its preposition. "No problem with worm" and "no sign of it" are denials.
static size_t other_noun(const struct scope *s, size_t i, size_t from, size_t fault) {
    enum { FAR = 5 };
    const struct tokens *tokens = &s->note->tokens;
    if (!token_is(tokens, i, "no") || from != i + 1 || fault <= from + 1 || fault > from + FAR) return 0;
    for (size_t at = from; at < fault; at++) {
        if (tokens->at[at].stop != STOP_NONE || ANY(tokens, at, "or", "and", "nor", "of", "any", "other"))
            return 0;
        if (ANY(tokens, at, "sign", "signs", "trace", "traces", "evidence", "hint", "issue", "issues",
                "problem", "problems", "trouble", "troubles", "bother", "damage", "indication", "marks"))
            return 0;
        if (at > from && ANY(tokens, at, "about", "for", "on", "against", "in", "over", "from"))
            return at + 1;
    }
    return 0;
}

// "Two of the six aren't chipped", "one has no cracks": so of those that are counted.
static bool is_of_some(const struct scope *s, size_t i) {
    enum { FAR = 7 };
    const struct tokens *tokens = &s->note->tokens;
    if (token_is(tokens, i, "neither")) // "neither of the small plates"
        return token_is(tokens, i + 1, "of") &&
               ANY(tokens, i + 3, "small", "large", "big", "little", "blue", "red", "green", "old", "bigger",
                   "smaller", "outer", "inner", "end");
    if (!ANY(tokens, i, "aren't", "arent", "isn't", "isnt", "not", "no", "hasn't", "haven't", "have", "has",
             "without", "free", "don't", "doesn't"))
        return false;
    for (size_t at = i; at > 0 && i - at < FAR && tokens->at[at - 1].stop == STOP_NONE; at--) {
        if (ANY(tokens, at - 1, "none", "all", "both", "every", "each", "it", "i", "any", "nothing"))
            return false;
        bool number = ANY(tokens, at - 1, "one", "two", "three", "four", "five", "six", "seven", "eight",
                          "some", "half", "most", "few", "several", "couple", "many");
        if (!number) continue;
        bool which =
            at > 2 && token_is(tokens, at - 1, "one") && token_is(tokens, at - 3, "the"); // "the red one"
        bool opens = which || at < 2 || tokens->at[at - 2].stop != STOP_NONE ||
                     ANY(tokens, at - 2, "a", "only", "just", "about", "least", "left", "right", "and", "but",
                         "at", "the", "first", "big", "small", "last", "other");
        bool verb = at == i || (token_is(tokens, i, "not") && i - at < 3) ||
                    ANY(tokens, i, "aren't", "arent", "isn't", "isnt", "hasn't", "haven't", "have", "has",
                        "don't", "doesn't") ||
                    ANY(tokens, i - 1, "is", "are", "has", "have", "show", "shows", "with");
        return opens && verb;
    }
    return false;
}

// Words of the list behind the last fault, or behind a comma where they speak of it again: the end of them, 0
// if there are none.
static size_t goes_on(const struct scope *s, size_t from, size_t to, const char *const *cues, size_t count) {
    enum { FAR = 8 };
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = from; i < to + FAR && i < tokens->count && tokens->at[i].stop < STOP_CLAUSE; i++) {
        bool none = i >= to && tokens->at[i].stop == STOP_COMMA &&
                    ANY(tokens, i + 1, "none", "or", "not", "at", "i", "one", "well", "hardly");
        if (i >= to && ((tokens->at[i].stop != STOP_NONE && !none) || s->fault[i])) break;
        size_t n = token_longest(tokens, i, cues, count);
        if (n && !(i + n < tokens->count && s->fault[i + n]))
            return i + n; // "not pitted, hardly any rust on it"
    }
    return 0;
}

// "No dents to speak of", "no rust, or hardly any": next to none.
static bool is_next_to_none(const struct scope *s, size_t from, size_t to, bool *excepted) {
    static const char *const cues[] = {
        "to speak of",          "to mention",      "to worry about",      "to write home about",
        "worth mentioning",     "worth noting",    "worth the name",      "worth calling one",
        "worth the mention",    "worth a mention", "worth talking about", "worth speaking of",
        "worth worrying about", "of note",         "of any note",         "not many",
        "hardly any",           "well hardly",     "none to speak",       "or not many",
        "or not much",          "or hardly any",   "or very few"};
    static const char *const excepts[] = {
        "except",  "besides", "apart from", "aside from",  "other than", "save",    "but for", "bar",
        "barring", "beyond",  "outside of", "in addition", "but one",    "but the", "only",    "well"};
    size_t end = goes_on(s, from, to, cues, sizeof cues / sizeof *cues);
    const struct tokens *tokens = &s->note->tokens;
    while (end && end < tokens->count && tokens->at[end].stop != STOP_NONE && // "… well, two on the lid"
           (tokens->at[end].stop == STOP_COMMA || ANY(tokens, end + 1, "well", "except", ".")))
        end++;
    *excepted = end && token_longest(tokens, end, excepts, sizeof excepts / sizeof *excepts);
    return end > 0;
}

// Behind it: "… until it was dropped", "… that would bother anyone", "… in the photos".
static bool is_taken_back(const struct scope *s, size_t from, size_t to) {
    static const char *const cues[] = {"of any size",    "of any consequence",
                                       "of consequence", "of any depth",
                                       "of importance",  "that matter",
                                       "that matters",   "that would matter",
                                       "that bother me", "that would bother",
                                       "before the",     "before it",
                                       "before i",       "before we",
                                       "before that",    "until it",
                                       "until the",      "until i",
                                       "until last",     "till it",
                                       "till the",       "till i",
                                       "once cleaned",   "once it's cleaned",
                                       "after a clean",  "i hope",
                                       "or none that",   "none that matter",
                                       "in the photos",  "in the pictures",
                                       "till now",       "until now",
                                       "till today",     "until today",
                                       "until recently", "till recently",
                                       "one hopes",      "as such"};
    static const char *const shown[] = {"in the photo", "in the picture"};
    if (goes_on(s, from, to, cues, sizeof cues / sizeof *cues)) return true;
    // of a photograph it is the thing itself
    const char *type = s->note->record->type.value;
    bool itself = type && (strstr(type, "photo") || strstr(type, "picture") || strstr(type, "print"));
    return !itself && goes_on(s, from, to, shown, sizeof shown / sizeof *shown);
}

// "When held to the light", "from what I see", "in daylight", "on a quick look": how it was looked at.
static bool is_trial(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "when", "if"))
        return ANY(tokens, i + 1, "i", "held", "tapped", "tilted", "viewed", "looked", "turned", "rung",
                   "wet", "dry", "lit", "you");
    if (ANY(tokens, i, "from")) return ANY(tokens, i + 1, "what", "the", "new");
    if (!ANY(tokens, i, "in", "at", "on", "under", "by", "after", "with")) return false;
    size_t at = i + 1;
    while (ANY(tokens, at, "a", "the", "my", "an", "first", "quick", "good", "bright", "strong", "close",
               "brief", "quick", "casual", "this"))
        at++;
    return ANY(tokens, at, "look", "glance", "daylight", "light", "inspection", "torch", "lamp", "lamplight",
               "sunlight", "viewing", "sight", "examination", "check");
}

// "Hope for no rust", "wish it had no cracks", "better ones have no chips": no finding of this one.
static bool is_wished(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t at = i; at > 0 && tokens->at[at - 1].stop == STOP_NONE && !s->fault[at - 1]; at--) {
        if (ANY(tokens, at - 1, "hope", "hoping", "hoped", "wish", "wished", "ideally", "rather", "prefer",
                "ones", "bought", "unless"))
            return true;
        if (token_is(tokens, at - 1, "if")) return true;
        if (ANY(tokens, at - 1, "want", "would") && at + 4 > i)
            return !ANY(tokens, at, "say", "call", "think") && !ANY(tokens, at, "you");
    }
    return false;
}

// Behind the last fault: "… that go through", "… over an inch", "… deep enough to feel" say which ones are
// not there.
static bool says_which(const struct scope *s, size_t fault, size_t to, bool looked) {
    const struct tokens *tokens = &s->note->tokens;
    // "No rust through", "not cracked right through": on the face there may be some. "No holes right through"
    // and "the plate hasn't gone through" leave nothing open.
    size_t last = fault;
    bool face = ANY(tokens, fault, "rust", "rusted", "crack", "cracks", "cracked", "corrosion", "corroded",
                    "split", "splits", "rot", "rotted", "burned", "burnt", "worn");
    while (last < to && s->fault[last] && !token_is(tokens, last, "through")) last++;
    if (ANY(tokens, last, "right", "clean", "all", "fully")) last++;
    if (face && token_is(tokens, last, "through") && tokens->at[last - 1].stop == STOP_NONE) return true;
    for (size_t at = fault + 1; at < to && tokens->at[at].stop == STOP_NONE; at++) // "no cracks for its age"
        if (token_is(tokens, at, "for") && ANY(tokens, at + 1, "its", "the", "their", "that", "such") &&
            ANY(tokens, at + 2, "age", "ages", "years", "year"))
            return true;
    size_t i = to;
    while (i > fault + 1 && !s->fault[i - 1]) i--;
    if (i >= tokens->count || tokens->at[i].stop != STOP_NONE) return false;
    bool all = token_phrase(tokens, i, "any where") ||
               (token_is(tokens, i, "any") && spot_preposition(tokens, i - 1));
    if (ANY(tokens, i, "over", "above", "beyond", "more", "bigger", "larger", "deeper", "longer", "wider",
            "worse", "deep", "big", "large", "enough", "much", "badly", "deeply", "greatly", "heavily",
            "any"))
        return !all && !ANY(tokens, i + 1, "kind", "sort"); // "no worm in any of them" leaves none
    if (ANY(tokens, i, "of") && ANY(tokens, i + 1, "the", "that", "this", "those")) return true;
    if (ANY(tokens, i, "mentioned", "listed", "recorded", "reported", "declared", "stated", "once"))
        return true;
    bool others = ANY(tokens, i, "like", "as") && ANY(tokens, i + 1, "they", "these", "those", "most", "some",
                                                      "others", "many", "so"); // "as most are"
    if (others) return false;
    if (ANY(tokens, i, "like", "compared", "for", "considering", "past", "unless", "until", "till", "if",
            "when", "from"))
        return !looked && !is_trial(tokens, i);
    bool relative = ANY(tokens, i, "that", "which", "who", "you", "i");
    bool seller = token_is(tokens, i, "i") || ANY(tokens, i + 1, "i", "we", "i've", "we've"); // "that I felt"
    return relative && !looked && !ANY(tokens, i + 1, "the", "a", "is", "are", "was") &&
           (!seller || ANY(tokens, i + 1, "would", "could", "call", "count", "mind", "worry") ||
            ANY(tokens, i + 2, "would", "could", "call", "count", "mind", "worry"));
}

// "No scratches except on the lid": what is excepted has no name of its own, so it is of the same kind.
static bool has_exception(const struct scope *s, size_t fault, size_t to) {
    static const char *const cues[] = {
        "except",  "besides", "apart from", "aside from",  "other than", "save for", "but for",    "bar",
        "barring", "beyond",  "except for", "in addition", "outside of", "but one",  "but the one"};
    enum { FAR = 9 };
    const struct tokens *tokens = &s->note->tokens;
    size_t n = token_longest(tokens, to, cues, sizeof cues / sizeof *cues);
    if (!n || scope_opens_one(s, to + n)) return false;
    bool placed = false; // "no cracks in the lid but one in the base": of the lid it is denied as a whole
    for (size_t i = fault; token_is(tokens, to, "but") && i + 1 < to; i++)
        placed |= ANY(tokens, i, "in", "on", "to", "inside") && ANY(tokens, i + 1, "the", "its", "either");
    if (placed && ANY(tokens, to + n, "in", "on", "to", "inside") &&
        !ANY(tokens, to + n + 2, "corner", "edge", "end", "tip", "side"))
        return false;
    if (ANY(tokens, to + n, "in", "on", "at", "inside", "where", "near", "under", "round", "around", "by"))
        return true; // "no rust except in the chips"
    for (size_t i = to + n; i < to + n + FAR && i < tokens->count && tokens->at[i].stop < STOP_CLAUSE; i++)
        if (s->fault[i]) return false;
    return true;
}

// "I think no worm", "pretty sure no cracks".
static bool is_guess(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {"i think",         "i believe",      "i reckon",      "pretty sure",
                                       "fairly sure",     "almost certain", "think there's", "think there is",
                                       "think there are", "i'd say"};
    for (size_t back = 2; back < 5 && back <= i; back++)
        if (token_longest(tokens, i - back, cues, sizeof cues / sizeof *cues) >= 2) return true;
    return false;
}

static bool is_look_word(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "visibly", "obviously", "noticeably", "evidently", "noticeable", "apparent",
               "evident", "detectable", "discernible", "discernable", "perceptible", "obvious", "visible",
               "outward");
}

unsigned denial_bound(const struct scope *s, size_t i, size_t from, size_t to, unsigned plain) {
    const struct tokens *tokens = &s->note->tokens;
    size_t fault = first_fault(s, from, to);
    bool offer = ANY(tokens, from, "guarantee", "guarantees", "warranty", "refund", "refunds", "returns");
    while (offer && fault < to && s->fault[fault] && !token_is(tokens, fault - 1, "for")) fault++;
    if (offer) fault = first_fault(s, fault, to);
    if (fault >= to) return plain;
    size_t behind = other_noun(s, i, from, fault);
    if (behind) {
        bool known = ANY(tokens, fault - 1, "the", "that", "those", "its", "this", "these");
        return known ? 0 : plain | STANCE_BOUNDED;
    }
    for (size_t at = i + 1; at <= fault && at < to; at++) {
        if (at == fault && !(at + 1 < to && s->fault[at + 1])) break;
        bool look = is_look_word(tokens, at);
        if (look) plain = STANCE_NONE_SEEN;
        if (!look && (is_some_only(tokens, at) || (at >= from && at < fault && is_some_way(tokens, at))))
            return plain | STANCE_BOUNDED;
    }
    if (token_is(tokens, i, "nothing") &&
        ANY(tokens, from, "you", "i", "that", "anyone", "as")) // "nothing you'd call"
        return plain | STANCE_BOUNDED;
    if (token_is(tokens, i, "no") && is_wished(s, i)) return plain | STANCE_BOUNDED;
    bool asked = token_is(tokens, to, "?") && token_is(tokens, i, "no");
    bool excepted;
    bool next_to_none = is_next_to_none(s, fault, to, &excepted);
    if (!asked && next_to_none && !excepted) return STANCE_LIMITED | STANCE_DOUBT;
    if (asked || next_to_none || is_of_some(s, i) || is_taken_back(s, fault, to) ||
        says_which(s, fault, to, plain == STANCE_NONE_SEEN) || has_exception(s, fault, to))
        return plain | STANCE_BOUNDED;
    size_t n, behind_it = to;
    while (behind_it > fault + 1 && !s->fault[behind_it - 1]) behind_it--;
    bool felt =
        ANY(tokens, behind_it, "that", "which") && ANY(tokens, behind_it + 1, "i", "we", "i've", "we've");
    bool aside = token_is(tokens, to, "(") && denial_look(s, to + 1, &n);
    for (size_t at = i; at > 0 && i - at < 6 && tokens->at[at - 1].stop == STOP_NONE; at--)
        felt |= is_trial(tokens, at - 1); // "on a quick look no rust"
    felt |= is_trial(tokens, behind_it);
    return felt || aside || is_guess(tokens, i) ? STANCE_NONE_SEEN : plain;
}

// "No scratches on the bigger one", "no tears on the half I unrolled": a place that has no name among the
// parts.
bool spot_unread(const struct fault_reader *r, size_t i) {
    enum { SAID_MOST = 5 };
    const struct tokens *tokens = &r->note->tokens;
    size_t said = i; // "no scratches you'd hear on the ones I played"
    while (said < i + SAID_MOST && ANY(tokens, said, "you'd", "you", "that", "would", "could", "can", "hear",
                                       "see", "notice", "feel", "i"))
        said++;
    if (ANY(tokens, said, "on", "in")) i = said;
    if (i >= tokens->count || tokens->at[i - 1].stop != STOP_NONE ||
        !ANY(tokens, i, "on", "in", "at", "inside", "along"))
        return false;
    size_t at = i + 1;
    if (!ANY(tokens, at, "the", "this", "that", "my", "one", "his", "either", "these", "those")) return false;
    if (token_is(tokens, at, "either") && ANY(tokens, at + 1, "one", "of")) return false; // both of them
    at++;
    return at < tokens->count && tokens->at[at].kind == TOKEN_WORD && r->note->taken[at] != TAKEN_TYPE &&
           !ANY(tokens, at, "set", "lot", "piece", "thing", "item", "whole", "least", "slightest", "world",
                "outside") &&
           (ANY(tokens, at + 1, "one", "ones", "half", "i", "side", "bit") ||
            ANY(tokens, at, "one", "half", "other", "others", "ones", "bits", "pieces", "rest"));
}
