// SPDX-License-Identifier: MIT
// Denials that stand behind what they deny and apart from it: a question with its answer ("Any cracks? None
// that I can see."), a list with its entries ("chips - no, cracks - no"), a figure ("0 chips"), and a search
// with its outcome ("looked all over for holes and didn't find a one").
#include "notes/any.h"
#include "notes/denial_words.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { NO, SEEN_NONE };

static const struct cue answers[] = {
    {"0", NO},
    {"can't find any", SEEN_NONE},
    {"can't see any", SEEN_NONE},
    {"can't see it", SEEN_NONE},
    {"couldn't find any", SEEN_NONE},
    {"didn't see any", SEEN_NONE},
    {"don't see any", SEEN_NONE},
    {"don't think so", SEEN_NONE},
    {"haven't seen any", SEEN_NONE},
    {"i can't find any", SEEN_NONE},
    {"i can't see any", SEEN_NONE},
    {"i can't see it", SEEN_NONE},
    {"i couldn't find any", SEEN_NONE},
    {"i couldn't see any", SEEN_NONE},
    {"i didn't see any", SEEN_NONE},
    {"i don't see any", SEEN_NONE},
    {"i don't think so", SEEN_NONE},
    {"i see none", SEEN_NONE},
    {"it never had any", NO},
    {"it never had one", NO},
    {"nah", NO},
    {"never did", NO},
    {"never had any", NO},
    {"never had one", NO},
    {"nil", NO},
    {"no", NO},
    {"none", NO},
    {"none at all", NO},
    {"none found", SEEN_NONE},
    {"none i can find", SEEN_NONE},
    {"none i can see", SEEN_NONE},
    {"none i could find", SEEN_NONE},
    {"none i could see", SEEN_NONE},
    {"none seen", SEEN_NONE},
    {"none that i can find", SEEN_NONE},
    {"none that i can see", SEEN_NONE},
    {"none that i could find", SEEN_NONE},
    {"none that i could see", SEEN_NONE},
    {"none that i noticed", SEEN_NONE},
    {"none that i saw", SEEN_NONE},
    {"nope", NO},
    {"not a one", NO},
    {"not a single one", NO},
    {"not any", NO},
    {"not as far as i can see", SEEN_NONE},
    {"not as far as i can tell", SEEN_NONE},
    {"not one", NO},
    {"not that i can find", SEEN_NONE},
    {"not that i can see", SEEN_NONE},
    {"not that i can tell", SEEN_NONE},
    {"not that i could find", SEEN_NONE},
    {"not that i could see", SEEN_NONE},
    {"not that i noticed", SEEN_NONE},
    {"not that i saw", SEEN_NONE},
    {"not to my eye", SEEN_NONE},
    {"nothing", NO},
    {"zero", NO},
    {"zip", NO},
};

// What comes of a search, at its end.
static const char *const outcomes[] = {"didn't find any",
                                       "didn't find a one",
                                       "didn't find one",
                                       "didn't find anything",
                                       "did not find any",
                                       "couldn't find any",
                                       "couldn't find a one",
                                       "couldn't find one",
                                       "couldn't find anything",
                                       "could not find any",
                                       "can't find any",
                                       "can't find one",
                                       "can't find a one",
                                       "can't find anything",
                                       "didn't see any",
                                       "didn't see a one",
                                       "didn't see anything",
                                       "couldn't see any",
                                       "can't see any",
                                       "can't see anything",
                                       "found none",
                                       "found nothing",
                                       "saw none",
                                       "saw nothing",
                                       "didn't spot any",
                                       "came up empty",
                                       "came up with nothing",
                                       "didnt find any",
                                       "couldnt find any",
                                       "cant find any",
                                       "didn't find a single one",
                                       "didn't find a thing",
                                       "found not one",
                                       "there aren't any",
                                       "there are none",
                                       "didn't feel any",
                                       "couldn't feel any",
                                       "can't feel any",
                                       "there isn't any",
                                       "haven't found any",
                                       "haven't found one",
                                       "haven't seen any",
                                       "never found any",
                                       "never found one",
                                       "not found any"};

static bool ends(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || token_is(tokens, i, "and") ||
           token_is(tokens, i, "but");
}

static bool is_parting(const struct tokens *tokens, size_t i) {
    return token_is(tokens, i, "?") || token_is(tokens, i, ":") || token_is(tokens, i, "-") ||
           token_is(tokens, i, "=") || token_is(tokens, i, "\u2013") || token_is(tokens, i, "\u2014");
}

// "Globe missing, tank leaks?": the comma at `i` ends a statement, which is not asked. Of a list each is a
// word by itself: "cracks, chips?".
static bool is_told_before(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if (tokens->at[i].stop != STOP_COMMA || i < 2 || !s->fault[i - 1]) return false;
    bool opens = tokens->at[i - 2].stop != STOP_NONE ||
                 ANY(tokens, i - 2, "any", "no", "or", "and", "nor", "/", "&", "for", "the");
    return !opens;
}

// The faults right before token `i`, with what lists them; where they begin.
static size_t listed_before(const struct scope *s, size_t i) {
    static const char *const words[] = {"or", "and", "nor", "/", "&", ","};
    static const char *const skipped[] = {"any", "is",   "it",  "are",      "there", "does",
                                          "has", "have", "got", "they",     "the",   "at",
                                          "all", "on",   "in",  "anywhere", "smell"};
    const struct tokens *tokens = &s->note->tokens;
    size_t from = i, at = i;
    while (at > 0 && !is_told_before(s, at - 1) &&
           (s->fault[at - 1] || token_among(tokens, at - 1, skipped, COUNT(skipped)) ||
            (from < i && token_among(tokens, at - 1, words, COUNT(words)))))
        if (s->fault[--at]) from = at;
    return from;
}

// "Not that I've come across", "none I know of", "didn't find any".
static const struct cue *answer_at(const struct scope *s, size_t i, size_t *n) {
    static const char *const opens[] = {"not", "none", "nothing", "no", "nope", "not any", "no not"};
    static const struct cue seen = {"not that", SEEN_NONE};
    const struct tokens *tokens = &s->note->tokens;
    const struct cue *cue = cue_at(s, answers, COUNT(answers), i, n);
    size_t open = token_longest(tokens, i, opens, COUNT(opens)), look = 0;
    bool looked = open && denial_look(s, i + open, &look) && open + look > *n;
    size_t out = looked ? 0 : token_longest(tokens, i + token_is(tokens, i, "i"), outcomes, COUNT(outcomes));
    if (out) out += token_is(tokens, i, "i");
    if (!looked && out <= *n) return cue;
    *n = looked ? open + look : out;
    return &seen;
}

// "Any chips? I went all round it and found none.", "Is it soft? I poked it and it was hard.": the sentence
// behind the question at `i` tells of a look and how it came out; `*n` words.
static const struct cue *search_after(const struct tokens *tokens, size_t i, size_t *n) {
    static const struct cue seen = {"looked", SEEN_NONE};
    static const char *const looks[] = {"looked",   "checked", "searched", "went",    "examined", "inspected",
                                        "felt",     "poked",   "prodded",  "tapped",  "tried",    "held",
                                        "ran",      "been",    "gone",     "hunted",  "turned",   "shone",
                                        "pulled",   "pushed",  "shook",    "sniffed", "emptied",  "had",
                                        "squeezed", "pressed", "rapped",   "rang",    "filled",   "lit"};
    static const char *const found[] = {"it's", "it", "its", "they're",    "they",  "all",  "was",
                                        "were", "is", "are", "everything", "feels", "felt", "came"};
    static const char *const sound[] = {"hard", "sound", "solid", "clean", "clear", "firm",  "dry",
                                        "fine", "tight", "good",  "ok",    "okay",  "smooth"};
    size_t at = i + 1;
    bool looked = false;
    for (; at < tokens->count && tokens->at[at].stop < STOP_SENTENCE; at++) {
        size_t out = looked ? token_longest(tokens, at, outcomes, COUNT(outcomes)) : 0;
        bool told = looked && token_among(tokens, at, sound, COUNT(sound)) &&
                    token_among(tokens, at - 1, found, COUNT(found));
        if ((out && ends(tokens, at + out)) || (told && ends(tokens, at + 1))) {
            *n = at + (out ? out : 1) - (i + 1);
            return &seen;
        }
        looked |= token_among(tokens, at, looks, COUNT(looks));
    }
    return NULL;
}

static size_t read_answer(struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    size_t n;
    const struct cue *cue = answer_at(s, i + 1, &n);
    if (!cue && token_is(tokens, i, "?")) {
        cue = search_after(tokens, i, &n);
        for (size_t at = i + 1; cue && at < i + 1 + n;
             at++) // "Cracked? I checked the rim, chips but no cracks"
            if (s->fault[at] && !ANY(tokens, at, "poked", "hard")) cue = NULL;
    }
    if (!cue || !ends(tokens, i + 1 + n)) return 0;
    size_t from = listed_before(s, i);
    for (size_t k = 1; k <= 2 && k < i && from == i && token_is(tokens, i, "?");
         k++) { // "taped pages? Not one."
        if (tokens->at[i - k].kind != TOKEN_WORD || !s->fault[i - k - 1]) continue;
        from = listed_before(s, i - k);
        if (from == i - k) from = i;
    }
    if (from == i || !s->fault[i - 1]) {
        enum { FAR = 5 };
        bool asked = token_is(tokens, i, "?"); // "any cracks in it?", "verdigris in the letters?"
        size_t start = scope_sentence_start(s, i);
        if (from == i && asked &&
            ANY(tokens, i - 1, "missing", "gone", "lost")) { // "hood missing? never had one"
            scope_mark(s, start, i, cue->kind == NO ? STANCE_DENIED : STANCE_NONE_SEEN, i + 1);
            return n + 1;
        }
        if (from == i)
            while (asked && from > start && i - from < FAR && !s->fault[from]) from--;
        if (!asked || from == i || !s->fault[from]) return 0;
    }
    scope_mark(s, from, i, cue->kind == NO ? STANCE_DENIED : STANCE_NONE_SEEN, i + 1);
    return n + 1;
}

// "0 chips", "0 cracks or chips".
static void read_zero(struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    size_t to = i + 1;
    while (to < tokens->count &&
           (s->fault[to] || (to > i + 1 && (token_is(tokens, to, "or") || token_is(tokens, to, "and")))))
        to++;
    if (to > i + 1) scope_mark(s, i + 1, to, STANCE_DENIED, i);
}

// "Went over it for cracks, couldn't find any": all that was looked for.
static void read_search(struct scope *s, size_t i, size_t n) {
    const struct tokens *tokens = &s->note->tokens;
    static const char *const aims[] = {"for", "about", "expected", "expecting"}; // "worried about moth"
    size_t start = scope_sentence_start(s, i);
    for (size_t k = 0; k < COUNT(aims); k++) {
        size_t from = i;
        while (from > start && !token_is(tokens, from, aims[k])) from--;
        if (!token_is(tokens, from, aims[k])) continue;
        scope_mark(s, from + 1, i, STANCE_NONE_SEEN, i + n - 1);
        return;
    }
}

// "Checked for cracks, clear", "went over it for worm and it's clean": how a search came out, in one word.
static size_t read_verdict(struct scope *s, size_t i) {
    static const char *const verdicts[] = {"clear",         "clean",       "all clear",     "it's clear",
                                           "it's clean",    "its clear",   "its clean",     "is clear",
                                           "is clean",      "it is clear", "it is clean",   "came up clean",
                                           "came up clear", "it's fine",   "they're clear", "they're clean",
                                           "none",          "nothing",     "nope",          "nil"};
    static const char *const verbs[] = {"checked", "looked",  "searched", "examined", "inspected", "hunted",
                                        "over",    "through", "felt",     "tested",   "looking",   "check"};
    static const char *const nots[] = {"not",     "haven't", "didn't", "never", "couldn't", "can't",
                                       "without", "havent",  "didnt",  "need",  "wants",    "needs"};
    const struct tokens *tokens = &s->note->tokens;
    size_t n = token_longest(tokens, i, verdicts, COUNT(verdicts)), start = scope_sentence_start(s, i),
           from = i;
    bool parted = i > start && (tokens->at[i - 1].stop != STOP_NONE || token_is(tokens, i - 1, "and"));
    if (!n || !parted || !ends(tokens, i + n)) return 0;
    while (from > start && !token_is(tokens, from, "for")) from--;
    if (!token_is(tokens, from, "for")) return 0;
    bool sought = false;
    for (size_t at = start; at < from; at++) {
        sought |= token_among(tokens, at, verbs, COUNT(verbs));
        if (token_among(tokens, at, nots, COUNT(nots))) return 0;
    }
    if (sought) scope_mark(s, from + 1, i, STANCE_NONE_SEEN, i);
    return sought ? n : 0;
}

// "I'd have seen a chip, and there isn't one": the one just named.
static void read_pronoun(struct scope *s, size_t i) {
    static const char *const outs[] = {"there isn't one", "there isn't any", "there aren't any",
                                       "there is none",   "there are none",  "there's none",
                                       "it hasn't one",   "there isn't"};
    enum { FAR = 5 };
    const struct tokens *tokens = &s->note->tokens;
    size_t n = token_longest(tokens, i, outs, COUNT(outs));
    if (!n || i == 0 || !ends(tokens, i + n) ||
        (i + n < tokens->count && tokens->at[i + n].stop == STOP_NONE))
        return;
    size_t to = i, start = scope_sentence_start(s, i);
    while (to > start && i - to < FAR && !s->fault[to - 1]) to--;
    size_t from = to;
    while (from > start && s->fault[from - 1]) from--;
    if (from < to) scope_mark(s, from, to, STANCE_DENIED, i);
}

// "Comb teeth? Didn't look.": what is asked for was not looked at.
static size_t read_shrug(struct scope *s, size_t i) {
    static const char *const shrugs[] = {"didn't look",
                                         "didn't check",
                                         "no idea",
                                         "not sure",
                                         "don't know",
                                         "dunno",
                                         "never looked",
                                         "not checked",
                                         "haven't looked",
                                         "haven't checked",
                                         "couldn't say",
                                         "can't say",
                                         "couldn't tell",
                                         "can't tell",
                                         "who knows",
                                         "no clue",
                                         "not tried",
                                         "haven't tried",
                                         "didn't try",
                                         "not tested",
                                         "untested",
                                         "couldn't tell you",
                                         "can't tell you",
                                         "wouldn't know",
                                         "i wouldn't know",
                                         "i couldn't tell you",
                                         "i couldn't say",
                                         "haven't a clue",
                                         "not a clue",
                                         "no way to know",
                                         "never looked to see",
                                         "ask me another",
                                         "i don't know",
                                         "i didn't look",
                                         "i didn't check",
                                         "i haven't tried",
                                         "i haven't checked",
                                         "i never tried",
                                         "i can't say",
                                         "i've no idea",
                                         "beats me",
                                         "search me",
                                         "never tried",
                                         "unknown",
                                         "who can say",
                                         "your guess"};
    const struct tokens *tokens = &s->note->tokens;
    bool asked = token_is(tokens, i, "?") ||
                 (token_is(tokens, i, ":") && i > 0 && s->fault[i - 1]); // "Chips: unknown"
    size_t n = asked ? token_longest(tokens, i + 1, shrugs, COUNT(shrugs)) : 0;
    if (!n || !(i + 1 + n >= tokens->count || tokens->at[i + 1 + n].stop != STOP_NONE)) return 0;
    enum { WORDS_MOST = 5 };
    size_t from = i;
    while (from > 0 && tokens->at[from - 1].stop == STOP_NONE && i - from < WORDS_MOST) from--;
    scope_mark(s, from, i, STANCE_UNKNOWN, i + 1);
    return n + 1;
}

// "Haven't seen the back", "never saw the other side": a side of it.
static size_t unseen_side(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {"haven't seen", "have not seen", "havent seen", "not seen",
                                       "never saw",    "never seen",    "didn't see",  "not looked at"};
    static const char *const sides[] = {"the back",       "the underside",  "the bottom",   "the inside",
                                        "the other side", "the base",       "the top",      "the rear",
                                        "the far side",   "the far end",    "the rest",     "the roof",
                                        "the other end",  "the underneath", "its back",     "its underside",
                                        "its inside",     "the insides",    "the workings", "the works"};
    size_t n = token_longest(tokens, i, cues, COUNT(cues)), side;
    if (!n || !(side = token_longest(tokens, i + n, sides, COUNT(sides)))) return 0;
    return ends(tokens, i + n + side) || ANY(tokens, i + n + side, "of", "yet", "so", "because") ? n : 0;
}

// "Can't see the fitting", "couldn't get to the back": no fault that was sought, but a place out of reach.
static size_t read_unreached(struct scope *s, size_t i) {
    static const char *const cues[] = {"can't see",        "couldn't see", "cannot see",     "can't get to",
                                       "couldn't get to",  "can't reach",  "couldn't reach", "can't get at",
                                       "couldn't get at",  "cant see",     "couldnt see",    "can't get into",
                                       "couldn't get into"};
    static const char *const opens[] = {"the", "its", "inside", "underneath", "behind", "into", "under"};
    const struct tokens *tokens = &s->note->tokens;
    size_t n = token_longest(tokens, i, cues, COUNT(cues)), side = unseen_side(tokens, i);
    if (side) n = side;
    if (!n || !token_among(tokens, i + n, opens, COUNT(opens))) return 0;
    size_t end = i + n;
    while (end < tokens->count && tokens->at[end].stop == STOP_NONE && !token_is(tokens, end, "but") &&
           !token_is(tokens, end, "so"))
        if (s->fault[end++]) return 0;
    scope_mark(s, i + n, end, STANCE_UNKNOWN, i);
    return n;
}

// "Rust no - it's copper", "worm no, cracks yes": the answer right behind what opens the sentence.
static size_t read_bare(struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if (!token_is(tokens, i, "no") || !s->fault[i - 1] || tokens->at[i - 1].stop != STOP_NONE) return 0;
    bool parted = i + 1 < tokens->count && (is_parting(tokens, i + 1) || tokens->at[i + 1].stop != STOP_NONE);
    size_t from = listed_before(s, i);
    if (!parted || from == i || (from > 0 && tokens->at[from - 1].stop == STOP_NONE)) return 0;
    scope_mark(s, from, i, STANCE_DENIED, i);
    return 1;
}

void scope_answered(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        size_t n = is_parting(tokens, i) ? read_answer(s, i) : 0;
        if (!n) n = read_bare(s, i);
        if (!n) n = read_shrug(s, i);
        if (!n) n = read_unreached(s, i);
        if (!n) n = read_verdict(s, i);
        if (n) {
            i += n - 1;
            continue;
        }
        if (token_is(tokens, i, "0") || token_is(tokens, i, "nil")) read_zero(s, i);
        if (token_is(tokens, i, "there") || token_is(tokens, i, "there's") || token_is(tokens, i, "it"))
            read_pronoun(s, i);
        n = token_longest(tokens, i, outcomes, COUNT(outcomes));
        if (n && ends(tokens, i + n)) read_search(s, i, n);
    }
}
