// SPDX-License-Identifier: MIT
// That a part is not there, said in a clause of its own behind it: "came with a slipcase, there isn't one
// now", "room for a key but none", "the globe is missing and so is the nut".
#include <string.h>

#include "notes/any.h"
#include "notes/traces.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool is_over(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           ANY(tokens, i, "but", "and", "so", "now", "any", "with", "when", "i");
}

// The last part before token `i` in its sentence that stands with "a" or "its"; not the thing itself.
static bool part_before(const struct fault_reader *r, size_t i, struct part_at *part) {
    enum { FAR = 14 };
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, i);
    for (size_t at = i; at > start && at + FAR > i; at--) {
        if (!ANY(tokens, at - 1, "a", "an", "its", "some", "original", "his", "their")) continue;
        if (part_or_word_at(r, at - 1, part) && part->to <= i &&
            (r->part[part->to - 1] || part->to > part->from))
            return true;
    }
    return false;
}

// "There isn't one now", "but none", ", long gone".
static void read_one(struct fault_reader *r, size_t i) {
    static const char *const none[] = {"there isn't one",
                                       "there is none",
                                       "there's none",
                                       "there is not one",
                                       "hasn't one",
                                       "hasn't got one",
                                       "hasn't got any",
                                       "doesn't have one",
                                       "doesn't have one now",
                                       "but none",
                                       "has none",
                                       "had none",
                                       "but no longer",
                                       "hasn't now",
                                       "but hasn't now",
                                       "but it isn't there",
                                       "but i never found it",
                                       "but i never had it",
                                       "but it never turned up",
                                       "but i couldn't find it",
                                       "but it's not there",
                                       "but there's no such",
                                       "but it hasn't got one",
                                       "there isn't one now",
                                       "not got one",
                                       "haven't got one",
                                       "i don't have one",
                                       "but not one with it",
                                       "i haven't one",
                                       "but without one",
                                       "none now",
                                       "but i have none",
                                       "there isn't any now",
                                       "isn't there now",
                                       "isn't there any more",
                                       "it isn't there now",
                                       "it's not there now",
                                       "nothing in it now"};
    static const char *const gone[] = {
        "long gone",      "now gone",   "since gone",     "long since gone", "now lost",
        "long lost",      "since lost", "gone now",       "alas no more",    "no more",
        "now missing",    "lost now",   "since departed", "long since lost", "gone years ago",
        "lost years ago", "not now",    "not any more",   "not anymore",     "no longer"};
    static const char *const were[] = {"had",   "been", "was",      "were",  "once",
                                       "used",  "came", "has",      "with",  "originally",
                                       "would", "for",  "supposed", "meant", "should"};
    static const char *const off[] = {"if",      "no",      "not",   "never",  "without", "n't",
                                      "whether", "doesn't", "isn't", "didn't", "needs"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, none, COUNT(none));
    bool comma = i > 0 && tokens->at[i - 1].stop == STOP_COMMA;
    size_t m = !n && comma ? token_longest(tokens, i, gone, COUNT(gone)) : 0;
    struct part_at part;
    if (!(n + m) || !is_over(tokens, i + n + m) || !part_before(r, i, &part)) return;
    if (n && i > 0 && ANY(tokens, i - 1, "other", "others", "rest", "two", "three", "one"))
        return; // "one has a loop, the others had none"
    bool past = false;
    for (size_t k = scope_sentence_start(&r->scope, i); k < part.lead; k++) {
        past |= AMONG(tokens, k, were);
        if (AMONG(tokens, k, off)) return;
    }
    if (m && !past) return;
    for (size_t k = part.to; k < i; k++)
        if (r->scope.fault[k] && !r->part[k]) return;
    part_tell_missing(r, &part, part.lead, i + n + m);
}

// "The handle was a screw-in one and it's gone": the subject of the sentence.
static void read_pronoun(struct fault_reader *r, size_t i) {
    static const char *const gone[] = {
        "and it's gone",          "and it is gone",      "and it's missing",     "but it's missing",
        "but it's gone",          "and they're gone",    "but they're gone",     "and it's lost",
        "but it's lost",          "and that's gone",     "but that's gone",      "and it has gone",
        "but it has gone",        "but it isn't here",   "but it's not here",    "and it isn't here",
        "but it isn't with it",   "but they're missing", "and they're missing",  "but they aren't here",
        "but it isn't there",     "and it's not here",   "but i haven't got it", "and i haven't got it",
        "but i don't have it",    "and i don't have it", "but i've lost it",     "but it got lost",
        "and it got lost",        "and it was lost",     "but it was lost",      "but it never came with it",
        "but i can't find it",    "and i can't find it", "but it's not with it", "but it's not in the box",
        "but it isn't in the box"};
    enum { FAR = 14 };
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, gone, COUNT(gone)), start = scope_sentence_start(&r->scope, i);
    struct part_at part;
    if (!n || i - start > FAR || !is_over(tokens, i + n) || !part_named_at(r, start, &part) ||
        !r->part[part.to - 1])
        return;
    static const char *const off[] = {"off", "broken", "broke", "snapped", "no"};
    for (size_t k = part.to; k < i; k++)
        if ((r->scope.fault[k] && !r->part[k]) || AMONG(tokens, k, off))
            return; // "came off but I have it" and its like are told elsewhere
    part_tell_missing(r, &part, start, i + n);
}

// "One rung is cracked and another is missing": one more of the part that the sentence begins with.
static void read_another_gone(struct fault_reader *r, size_t i) {
    static const char *const gone[] = {"missing", "gone", "lost"};
    static const char *const between[] = {"is",      "has",  "has been", "one is",
                                          "one has", "been", "is also",  "one"};
    const struct tokens *tokens = &r->note->tokens;
    bool opens = i > 0 && (tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "and", "but"));
    if (!opens || !token_is(tokens, i, "another")) return;
    size_t at = i + 1 + token_longest(tokens, i + 1, between, COUNT(between));
    size_t start = scope_sentence_start(&r->scope, i);
    struct part_at part;
    if (!AMONG(tokens, at, gone) || !is_over(tokens, at + 1) || !token_is(tokens, start, "one") ||
        !part_named_at(r, start, &part) || !r->part[part.to - 1] || part.to >= i)
        return;
    part.from = part.to - 1;
    while (part.from > start + 1 && r->part[part.from - 1]) part.from--;
    struct record *record = r->note->record;
    for (size_t k = 0; k < record->flaw_count; k++) // "another missing" was told with that word
        if (record->flaws[k].part && !strcmp(record->flaws[k].part, "another")) {
            record->flaws[k].part = say_singular(r->note->arena, fault_place(r->note, part.from, part.to));
            return;
        }
    part_tell_missing(r, &part, i, at + 1);
}

// Is the last thing told before token `i`, in its sentence, a part that lacks?
static bool lacked_before(const struct fault_reader *r, size_t i) {
    const struct note *note = r->note;
    size_t start = note->tokens.at[scope_sentence_start(&r->scope, i)].from, end = note->tokens.at[i].from,
           last = 0;
    bool lacks = false;
    for (size_t k = 0; k < note->record->flaw_count; k++) {
        const struct item_flaw *flaw = &note->record->flaws[k];
        if (flaw->span.from < start || flaw->span.from >= end || flaw->span.from < last) continue;
        last = flaw->span.from;
        lacks = flaw->kind->class == CLASS_MISSING;
    }
    return lacks;
}

// Where the clause that token `i` stands in begins: behind a stop or an "and".
static size_t clause_before(const struct tokens *tokens, size_t i) {
    enum { WORDS_MOST = 5 };
    size_t at = i;
    while (at > 0 && i - at < WORDS_MOST && tokens->at[at - 1].stop == STOP_NONE &&
           !token_is(tokens, at - 1, "and"))
        at--;
    return at;
}

// "… is missing, rope too", "the hasp has gone, both handles as well".
static void read_too(struct fault_reader *r, size_t i) {
    static const char *const closers[] = {"too", "as well", "also", "likewise", "ditto", "the same"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    size_t start = scope_sentence_start(&r->scope, i);
    if (i == 0 || (tokens->at[i - 1].stop == STOP_NONE && !token_is(tokens, i - 1, "and")) ||
        !part_named_at(r, i, &part) || tokens->at[part.to - 1].stop != STOP_NONE)
        return;
    size_t n = token_longest(tokens, part.to, closers, COUNT(closers));
    if (!n || !is_over(tokens, part.to + n) || !lacked_before(r, start == i ? i - 1 : i)) return;
    part_tell_missing(r, &part, i, part.to + n);
}

// "… is missing and so are two of the nuts", "likewise the strap".
static void read_so(struct fault_reader *r, size_t i) {
    static const char *const ways[] = {"so is",         "so are",     "so has",      "so have",
                                       "as is",         "as are",     "likewise",    "ditto",
                                       "same goes for", "as has",     "same with",   "nor is",
                                       "nor are",       "so was",     "and with it", "along with",
                                       "together with", "as well as", "nor has it",  "nor does it have",
                                       "same for"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    size_t n = token_longest(tokens, i, ways, COUNT(ways));
    bool but = !n && i > 0 &&
               token_phrase(tokens, i, "but not") && // "the holder is there but not the bottle"
               ANY(tokens, i - 1, "there", "here", "present", "included");
    if (but) n = 2;
    if (!n || !part_named_at(r, i + n, &part) || part.lead == part.from || !is_over(tokens, part.to)) return;
    if (but || lacked_before(r, i)) part_tell_missing(r, &part, i, part.to);
}

void read_tails(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++)
        if (r->note->tokens.at[i].kind == TOKEN_WORD) read_one(r, i), read_pronoun(r, i);
}

void read_so_too(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        if (r->note->tokens.at[i].kind != TOKEN_WORD) continue;
        if (ANY(&r->note->tokens, i, "too", "well", "also", "likewise", "ditto", "same"))
            read_too(r, clause_before(&r->note->tokens, i));
        read_so(r, i), read_another_gone(r, i);
    }
}
