// SPDX-License-Identifier: MIT
// How it came to the seller: "it came in with the ladies' boxes", "was in among the costumes, on a
// mannequin", "donated by the Lodge". Whoever and whatever is named there is no maker and no subject of the
// thing, so all of it is an aside. "Came with a lid" and "came in a fitted box" tell what goes with it, and
// stay.
#include "notes/any.h"
#include "notes/note.h"

// "in with", "over from", "through": the words that say that something else was there; how many tokens.
static size_t along_at(const struct tokens *tokens, size_t i) {
    static const char *const plain[] = {
        "in along with", "in with",      "in among",       "in amongst",      "in from",
        "in off",        "in through",   "in via",         "in on the",       "in a load",
        "in a batch",    "in a carload", "in a truckload", "in a donation",   "in a bag with",
        "in a box with", "in a bag of",  "in a box of",    "in a crate with", "in a crate of",
        "in one of the", "over with",    "over from",      "down with",       "down from",
        "along with",    "up from",      "across from",    "back with",       "back from",
        "through",       "via",          "by way of",      "among",           "amongst",
        "from",          "out of",       "with a load",    "with a carload",  "with a truckload",
        "with a batch"};
    return token_longest(tokens, i, plain, sizeof plain / sizeof *plain);
}

static size_t to_us(const struct tokens *tokens, size_t i) {
    static const char *const us[] = {"to us",       "to me",        "to our shop", "to the shop",
                                     "to the sale", "to the store", "my way",      "our way",
                                     "here",        "this week",    "yesterday",   "last week"};
    return token_longest(tokens, i, us, sizeof us / sizeof *us);
}

// "It came in with", "arrived among", "were in with", "was donated by": how many tokens from the verb on.
static size_t arrival_at(const struct tokens *tokens, size_t i) {
    static const char *const came[] = {"came", "come", "has come", "had come", "arrived", "landed"};
    static const char *const lay[] = {"was", "were", "had been", "has been", "have been"};
    static const char *const given[] = {"donated",    "given",      "given in",   "dropped off", "left",
                                        "brought in", "brought by", "handed in",  "turned in",   "sent in",
                                        "sent over",  "passed on",  "passed over"};
    static const char *const put[] = {"packed", "boxed",   "mixed",  "stored", "stashed",
                                      "tucked", "bundled", "thrown", "put",    "lumped"};
    size_t verb = token_longest(tokens, i, came, sizeof came / sizeof *came), along;
    if (!verb && ANY(tokens, i, "turned", "showed") && token_is(tokens, i + 1, "up")) {
        verb = 2;
        along = to_us(tokens, i + verb);
        if (ANY(tokens, i + verb + along, "with", "among", "amongst", "behind", "under"))
            return verb + along + 1;
    }
    if (verb) {
        verb += to_us(tokens, i + verb);
        along = along_at(tokens, i + verb);
        return along ? verb + along : 0;
    }
    verb = token_longest(tokens, i, lay, sizeof lay / sizeof *lay);
    size_t gift = token_longest(tokens, i + verb, given, sizeof given / sizeof *given);
    if (gift && (verb || ANY(tokens, i, "donated"))) {
        size_t at = i + verb + gift;
        at += to_us(tokens, at);
        if (ANY(tokens, at, "by", "from") || ANY(tokens, at - 1, "by")) return at + 1 - i;
        return 0;
    }
    if (!verb) return 0;
    size_t at = i + verb;
    if (token_among(tokens, at, put, sizeof put / sizeof *put)) at++;
    static const char *const with[] = {"in with", "in among", "in amongst", "among", "amongst", "up with"};
    along = token_longest(tokens, at, with, sizeof with / sizeof *with);
    if (token_is(tokens, at, "up") && at == i + verb) along = 0; // "was up with"
    return along ? at + along - i : 0;
}

// What came is the thing: "it", "these", "all of it", or nobody is named and the sentence begins.
static bool is_of_thing(const struct tokens *tokens, size_t i, size_t *from) {
    *from = i;
    if (tokens->at[i].starts || (i && tokens->at[i - 1].stop >= STOP_SENTENCE)) return true;
    if (i && tokens->at[i - 1].stop == STOP_COMMA) return true;
    if (!ANY(tokens, i - 1, "it", "they", "this", "these", "those", "she", "he", "which", "that", "all",
             "both"))
        return false;
    *from = i - 1;
    return true;
}

static bool has_fault(const struct note *note, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (note->fault_word[i] || note->taken[i] != TAKEN_NOT) return true;
    return false;
}

// "…, on a mannequin", "…, under a heap of coats": where it lay there. Its own box or stand is none of it.
static size_t and_where(const struct note *note, size_t to) {
    const struct tokens *tokens = &note->tokens;
    if (to >= tokens->count || tokens->at[to].stop != STOP_COMMA) return to;
    if (!ANY(tokens, to + 1, "on", "in", "under", "behind", "inside", "beside", "beneath", "between", "among",
             "at", "by", "below", "next"))
        return to;
    size_t end = note_clause_to(note, to + 1, STOP_COMMA);
    for (size_t i = to + 1; i < end; i++)
        if (ANY(tokens, i, "its", "their", "original", "fitted", "stand", "base", "plinth", "case", "box",
                "chain", "hanger", "mount", "card", "tray", "good", "fair", "great", "working", "nice",
                "poor", "rough", "bad"))
            return to;
    return has_fault(note, to + 1, end) ? to : end;
}

static size_t arrival_from(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t from, taken = arrival_at(tokens, i);
    if (!taken || !is_of_thing(tokens, i, &from) || !note_free(note, from, i + taken)) return i + 1;
    if (ANY(tokens, i + taken, "its", "their", "all", "everything", "no", "every", "both", "only", "just") ||
        (ANY(tokens, i + taken, "the") && ANY(tokens, i + taken + 1, "original", "matching")))
        return i + 1; // "came in with its lid"
    size_t to = note_clause_to(note, i + taken - 1, STOP_COMMA);
    for (size_t k = i + taken; k < to; k++)
        if (ANY(tokens, k, "but", "so", "except", "because", "though")) to = k;
    if (to <= i + taken || has_fault(note, i, to)) return i + 1;
    to = and_where(note, to);
    note_reading(note, from, to, "aside", "how it came to the seller");
    note_aside(note, from, to);
    return to;
}

void read_arrivals(struct note *note) {
    for (size_t i = 0; i < note->tokens.count;)
        i = note->taken[i] == TAKEN_NOT ? arrival_from(note, i) : i + 1;
}
