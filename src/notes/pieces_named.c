// SPDX-License-Identifier: MIT
// Which one of several, by its number, its side or its size: "the sixth has", "left has", "the biggest has",
// "all but the smallest".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_most(const struct tokens *tokens, size_t i) {
    static const char *const others[] = {"rest",  "west", "chest", "vest",  "nest",
                                         "crest", "test", "best",  "honest"};
    const char *word = i < tokens->count ? tokens->at[i].fold : "";
    size_t size = strlen(word);
    return size > 4 && text_same(word + size - 3, "est") && !token_among(tokens, i, others, COUNT(others));
}

bool pieces_one_named(const struct fault_reader *r, size_t from, size_t to) {
    static const char *const which[] = {"first",   "second",  "third",  "fourth", "fifth",
                                        "sixth",   "seventh", "eighth", "ninth",  "tenth",
                                        "twelfth", "other",   "last",   "left",   "right"};
    static const char *const verbs[] = {"has", "is", "with", "got", "had", "shows", "lacks"};
    const struct tokens *tokens = &r->note->tokens;
    if (r->note->record->count < 2) return false;
    for (size_t i = from; i < to; i++) {
        bool most = is_most(tokens, i);
        if ((most || token_among(tokens, i, which, COUNT(which))) && tokens->at[i].stop == STOP_NONE &&
            (i + 1 == to || token_among(tokens, i + 1, verbs, COUNT(verbs))) &&
            (i == from || tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "the", "a")))
            return true;
    }
    return false;
}

size_t pieces_superlative(const struct tokens *tokens, size_t i, int *n) {
    size_t at = i + (token_is(tokens, i, "the") ? 1 : 0);
    if (at == i ||
        !(is_most(tokens, at) || ANY(tokens, at, "first", "last", "third", "second", "left", "right")))
        return 0;
    *n = 1;
    return at + 1 - i + (token_is(tokens, at + 1, "one") ? 1 : 0);
}

// "Dents: four", "dents I count four": the number behind the name of the fault, and nothing more.
int pieces_number_named(const struct tokens *tokens, size_t i) {
    static const char *const counts[] = {"i count",     "i counted",   "i make it",
                                         "i make them", "i can count", "i found"};
    size_t n = token_longest(tokens, i, counts, COUNT(counts));
    if (!n && (token_is(tokens, i, ":") || token_is(tokens, i, "-"))) n = 1;
    int number = n ? degrees_number(tokens, i + n) : 0;
    bool ends = i + n + 1 >= tokens->count || tokens->at[i + n + 1].stop != STOP_NONE;
    return number > 1 && ends ? number : 0;
}

// "Covers torn on a dozen", "backs chipped on four", of who knows how many.
int pieces_on_number(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (r->note->record->count || !hit->from || !ANY(tokens, hit->to, "on") || !r->part[hit->from - 1] ||
        tokens->at[hit->from - 1].one == tokens->at[hit->from - 1].fold || !degree_is_state(r, hit))
        return 0;
    size_t at = hit->to + 1 + (token_is(tokens, hit->to + 1, "a") ? 1 : 0);
    int n = token_is(tokens, at, "dozen") ? 12 : degrees_number(tokens, at);
    if (n < 2 || tokens->at[at].kind != TOKEN_WORD) return 0;
    return at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE ? n : 0;
}

// "Screws are missing, two of the three", "have been replaced with steel ones, two of the six": from behind
// the words of the fault at token `i`; how many, 0 where that is not said. `*of` is how many there are.
int pieces_told_apart(const struct tokens *tokens, size_t i, int *of) {
    enum { FAR = 7 };
    size_t at = i;
    while (at < tokens->count && at < i + FAR && tokens->at[at].stop == STOP_NONE) at++;
    if (at >= tokens->count || tokens->at[at].stop != STOP_COMMA) return 0;
    int n = degrees_number(tokens, at + 1);
    if (!n || !token_is(tokens, at + 2, "of")) return 0;
    size_t whole = at + 3 + (ANY(tokens, at + 3, "the", "its", "their") ? 1 : 0);
    int all = degrees_number(tokens, whole);
    if (all < n || (whole + 1 < tokens->count && tokens->at[whole + 1].stop == STOP_NONE)) return 0;
    *of = all;
    return n;
}

bool pieces_is_time(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"mins", "minutes", "minute", "secs",   "seconds", "hours", "hrs",
                                        "hour", "days",    "weeks",  "months", "years",   "times"};
    return token_among(tokens, i, words, COUNT(words));
}

bool pieces_is_extent(const struct tokens *tokens, size_t i) {
    return pieces_is_time(tokens, i) ||
           ANY(tokens, i, "inch", "inches", "in", "ft", "cm", "mm", "oz", "lb", "lbs");
}

// "Some cracked, maybe six": six of as many as there are.
int pieces_some_of(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool some = hit->from > 0 && tokens->at[hit->from - 1].stop == STOP_NONE &&
                ANY(tokens, hit->from - 1, "some", "few", "several", "most", "others");
    return some && r->note->record->count > 1 && degree_is_state(r, hit) ? r->note->record->count : 0;
}

// "Two pulls", "two have gone cloudy" as words of one rule: the number that they begin with.
int pieces_number_opening(const struct fault_reader *r, const struct fault_hit *hit, int *of) {
    static const char *const not [] = {"halves", "pieces", "bits",   "sides", "ends",   "places", "parts",
                                       "tones",  "times",  "inches", "feet",  "thirds", "hands",  "years"};
    static const char *const verbs[] = {"have", "are", "were", "has", "is", "look", "got"};
    const struct tokens *tokens = &r->note->tokens;
    size_t noun = hit->from + 1;
    enum taken taken = (enum taken)r->note->taken[hit->from];
    bool other = taken == TAKEN_MEASURE || taken == TAKEN_VALUE || taken == TAKEN_DATE;
    if (hit->kinds[0]->form == STATE || noun >= hit->to || hit->near || other) return 0;
    int n = degrees_number(tokens, hit->from), whole = r->note->record->count;
    if (n > 0 && n <= whole && whole > 1 && token_among(tokens, noun, verbs, COUNT(verbs)))
        return *of = whole, n;
    if (tokens->at[noun].one == tokens->at[noun].fold || token_among(tokens, noun, not, COUNT(not )))
        return 0;
    return n;
}

int pieces_of_parts(const struct fault_reader *r, size_t i) {
    enum { FAR = 5 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = i; at + 2 < tokens->count && at < i + FAR; at++) {
        if (tokens->at[at].stop != STOP_NONE || r->scope.fault[at]) return 0;
        int n = token_is(tokens, at, "of") ? degrees_number(tokens, at + 1) : 0;
        size_t part = at + 2;
        if (n > 0 && part < tokens->count && r->part[part] && tokens->at[part].one != tokens->at[part].fold)
            return n;
    }
    return 0;
}

// "Crayon scribbles on two pages": how many have it, within the words of the fault.
int pieces_places_within(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t last = hit->to - 1;
    if (hit->to < hit->from + 4 || tokens->at[last].one == tokens->at[last].fold) return 0;
    return ANY(tokens, last - 2, "on", "in", "across", "to", "at") ? degrees_number(tokens, last - 1) : 0;
}

// "Two of them have gone cloudy": the number begins the words of the fault; of how many.
int pieces_number_opens(const struct fault_reader *r, const struct fault_hit *hit, int *of) {
    int n = degrees_number(&r->note->tokens, hit->from);
    if (!n || hit->kinds[0]->form == ABSENCE ||
        !ANY(&r->note->tokens, hit->from + 1, "of", "started", "begun", "opened", "partial"))
        return 0;
    if (r->note->record->count > n) *of = r->note->record->count;
    return n;
}
