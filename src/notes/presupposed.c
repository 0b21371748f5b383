// SPDX-License-Identifier: MIT
// "I didn't see the chip until I got home", "not sure how it got the dent": who speaks of the fault with an
// article, of seeing it or of how it came, does not say that it is not there.
#include "notes/any.h"
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Not sure when it got cracked": but "how to check for cracks" asks for a way, and "how it burns" for a
// degree.
static bool is_of_its_story(const struct tokens *tokens, size_t cue, size_t i) {
    static const char *const asks[] = {"how", "when", "why", "where", "who"};
    for (size_t at = cue + 1; at < i; at++)
        if (token_among(tokens, at, asks, COUNT(asks)))
            return !token_is(tokens, at + 1, "to") && !(at + 2 == i && token_is(tokens, at + 1, "it"));
    return false;
}

// "Nothing done about the scratches", "I don't like the rust", "perfect without the chips": a fault with its
// article, under a verb of another thing. "Doesn't have the crack" and "no sign of the stain" deny it.
static bool is_known(const struct scope *s, size_t cue, size_t i) {
    static const char *const articles[] = {"the", "that", "those", "these", "this"};
    enum { FAR = 7 };
    const struct tokens *tokens = &s->note->tokens;
    if (i < 2 || !token_among(tokens, i - 1, articles, COUNT(articles)) || i - cue > FAR) return false;
    if (ANY(tokens, i, "it", "they", "it's", "its")) return false; // "no promise that it works"
    if (ANY(tokens, cue, "without")) {
        bool would = false;
        for (size_t at = scope_sentence_start(s, cue);
             at < tokens->count && tokens->at[at].stop < STOP_SENTENCE; at++)
            would |= ANY(tokens, at, "would", "it'd", "i'd", "could", "it'll", "you'd");
        return would && cue + 2 == i;
    }
    bool verb = false;
    for (size_t at = cue + 1; at + 1 < i; at++) {
        if (tokens->at[at].stop != STOP_NONE || s->fault[at]) return false;
        if (ANY(tokens, at, "of", "have", "has", "show", "shows", "suffer", "from", "find", "found", "feel",
                "a", "any", "or", "and", "sign", "trace", "call", "called", "in", "on", "at", "with", "is",
                "are", "got"))
            return false;
        verb |= !ANY(tokens, at, "been", "be", "had", "really", "even", "quite", "all");
    }
    static const char *const seen[] = {"seen to",   "mended", "fixed",  "repaired",
                                       "looked at", "done",   "sorted", "treated"};
    bool had = token_is(tokens, i - 2, "had") && (token_longest(tokens, i + 1, seen, COUNT(seen)) > 0);
    return verb || had;
}

static bool is_spoken_of(const struct tokens *tokens, size_t cue, size_t i) {
    static const char *const articles[] = {"the", "that", "this"};
    if (is_of_its_story(tokens, cue, i)) return true;
    static const char *const verbs[] = {
        "mind",     "notice",   "noticed", "see",       "seen",    "spot",      "spotted", "hide",
        "how",      "when",     "why",     "know",      "got",     "came",      "miss",    "fix",
        "fixed",    "mend",     "mended",  "repair",    "glue",    "clean",     "cleaned", "remove",
        "removed",  "get",      "gets",    "shift",     "shifts",  "sort",      "sorted",  "replace",
        "replaced", "bother",   "bothers", "bothered",  "worried", "fussed",    "minded",  "hiding",
        "denying",  "brushing", "rubbing", "scrubbing", "washing", "polishing", "airing"};
    if (!token_among(tokens, i - 1, articles, COUNT(articles))) return false;
    bool under = i > 1 && ANY(tokens, i - 2, "under", "beneath", "through", "behind", "for", "with");
    for (size_t at = cue; !under && at + 1 < i; at++) // "can't see if the prisms are chipped"
        if (ANY(tokens, at, "if", "whether")) return false;
    for (size_t at = cue; at + 1 < i; at++)
        if (token_among(tokens, at, verbs, COUNT(verbs))) return true;
    return false;
}

// "Not going to pretend there isn't any", "nobody could deny": the second "no" takes back the first.
static bool is_undenied(const struct scope *s, size_t cue) {
    enum { FAR = 5 };
    const struct tokens *tokens = &s->note->tokens;
    for (size_t at = cue; at > 0 && cue - at < FAR && tokens->at[at - 1].stop == STOP_NONE; at--) {
        if (!ANY(tokens, at - 1, "pretend", "pretending", "deny", "denying", "claim", "claiming", "say",
                 "true", "case", "swear"))
            continue;
        if (ANY(tokens, at - 1, "true", "case") && !ANY(tokens, at, "that", "there", "there's", "it", "they"))
            continue; // "not cracked and the case has no chips"
        for (size_t k = at - 1; k > 0 && at - k < FAR + 1 && tokens->at[k - 1].stop == STOP_NONE; k--)
            if (ANY(tokens, k - 1, "not", "won't", "can't", "cannot", "couldn't", "don't", "never", "no",
                    "wouldn't", "wont", "cant"))
                return true;
    }
    return false;
}

// "Can't promise there's no worm", "wouldn't guarantee it's free of hairlines": nobody says either way.
static bool is_unpromised(const struct scope *s, size_t cue) {
    enum { FAR = 6 };
    const struct tokens *tokens = &s->note->tokens;
    for (size_t at = cue; at > 1 && cue - at < FAR && tokens->at[at - 1].stop == STOP_NONE; at--) {
        if (!ANY(tokens, at - 1, "promise", "guarantee", "swear", "vouch", "certify", "warrant", "say",
                 "claim", "bet", "rule", "sure", "certain"))
            continue;
        size_t k = at - 1;
        while (k > 0 && ANY(tokens, k - 1, "be", "to", "like", "really", "honestly", "want", "you",
                            "absolutely", "100", "%", "out"))
            k--;
        bool own = ANY(tokens, at - 1, "say", "claim");
        if (k > 0 &&
            ANY(tokens, k - 1, "can't", "cannot", "couldn't", "cant", "wouldn't", "won't", "couldnt"))
            return true;
        if (!own && k > 0 && ANY(tokens, k - 1, "not", "don't", "no")) return true;
    }
    return false;
}

// "I thought there was no rust but there is": the denial was an error.
static bool is_mistaken(const struct scope *s, size_t cue, size_t i) {
    static const char *const outs[] = {"there is", "there are", "there's one",  "there was",    "there were",
                                       "it has",   "it does",   "it is",        "they are",     "i was wrong",
                                       "it had",   "they do",   "there is one", "there is some"};
    enum { FAR = 8 };
    const struct tokens *tokens = &s->note->tokens;
    bool thought = false;
    for (size_t at = scope_sentence_start(s, cue); at < cue; at++)
        thought |=
            ANY(tokens, at, "thought", "hoped", "assumed", "said", "swore", "told", "expected", "believed");
    for (size_t at = i + 1;
         thought && at < i + FAR && at < tokens->count && tokens->at[at].stop < STOP_SENTENCE; at++) {
        size_t n =
            ANY(tokens, at, "but", "though", "and") ? token_longest(tokens, at + 1, outs, COUNT(outs)) : 0;
        if (n && (at + 1 + n >= tokens->count || tokens->at[at + 1 + n].stop != STOP_NONE)) return true;
    }
    return false;
}

// "If there's a fault it's the zip, which sticks": the fault is there.
static bool is_conceded(const struct tokens *tokens, size_t cue, size_t i) {
    if (!token_is(tokens, cue, "if")) return false;
    bool named = false;
    for (size_t k = cue + 1; k < i && tokens->at[k].stop < STOP_CLAUSE; k++) {
        if (named && ANY(tokens, k, "it's", "it'd", "it", "that's", "they're")) return true;
        named |= ANY(tokens, k, "fault", "complaint", "criticism", "weakness", "flaw", "problem", "niggle",
                     "quibble");
    }
    return false;
}

void scope_presupposed(struct scope *s) {
    static const uint16_t denied = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN;
    static const char *const verbal[] = {"don't",   "didn't",  "never", "can't", "couldn't", "cannot",
                                         "won't",   "haven't", "not",   "no",    "wouldn't", "dunno",
                                         "nothing", "doesn't", "did",   "do",    "does",     "could"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        size_t cue = s->cue[i];
        if (!s->fault[i] || s->fault[i - 1] || !(s->stance[i] & denied) || cue >= i) continue;
        if (is_unpromised(s, cue)) {
            for (size_t k = i; k < tokens->count && s->cue[k] == cue; k++)
                s->stance[k] =
                    (uint16_t)((s->stance[k] & ~(STANCE_DENIED | STANCE_NONE_SEEN)) | STANCE_UNKNOWN);
            continue;
        }
        bool mind = i > 0 && ANY(tokens, i - 1, "mind", "minding") && cue + 3 > i; // "if you don't mind rust"
        bool spoken =
            mind || (token_among(tokens, cue, verbal, COUNT(verbal)) && is_spoken_of(tokens, cue, i));
        spoken = spoken || is_conceded(tokens, cue, i);
        spoken = spoken || (!(s->stance[i] & STANCE_UNKNOWN) && is_known(s, cue, i));
        if (!spoken && (s->stance[i] & STANCE_UNKNOWN || !is_undenied(s, cue)) && !is_mistaken(s, cue, i))
            continue;
        for (size_t k = i; k < tokens->count && s->cue[k] == cue; k++)
            s->stance[k] = (uint16_t)(spoken ? s->stance[k] & ~denied : s->stance[k] | STANCE_DOUBLE);
    }
}
