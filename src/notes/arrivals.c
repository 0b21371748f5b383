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

// "Full of", "had", "came with": before what was in it; how many tokens.
static size_t filled_at(const struct tokens *tokens, size_t i) {
    static const char *const full[] = {"was full of",      "were full of",      "was filled with",
                                       "was stuffed with", "were stuffed with", "was packed with",
                                       "was crammed with", "were filled with",  "were packed with",
                                       "was loaded with",  "were crammed with", "was half full of"};
    static const char *const held[] = {"had", "held", "contained", "came with", "there was", "there were"};
    size_t n = token_longest(tokens, i, full, sizeof full / sizeof *full);
    if (n) return n;
    n = token_longest(tokens, i, held, sizeof held / sizeof *held);
    if (!n) return 0;
    for (size_t k = i + n; k + 1 < tokens->count && tokens->at[k].stop < STOP_CLAUSE; k++)
        if ((ANY(tokens, k, "in", "inside") && ANY(tokens, k + 1, "it", "them", "this", "there", "when")) ||
            (ANY(tokens, k, "inside") && ANY(tokens, k + 1, "when")) || token_is(tokens, i, "held"))
            return n;
    return 0;
}

// "When I got it", "the day we found it": the token behind; 0 if none.
static size_t when_got(const struct tokens *tokens, size_t i) {
    static const char *const whens[] = {"when", "the day", "the night", "at the time", "back when"};
    static const char *const got[] = {"got",    "bought",    "found",    "brought", "picked",
                                      "opened", "inherited", "took",     "bid",     "won",
                                      "came",   "arrived",   "unpacked", "acquired"};
    size_t n = token_longest(tokens, i, whens, sizeof whens / sizeof *whens);
    size_t at = i + n;
    if (!n || !ANY(tokens, at, "i", "we", "he", "she", "they", "mom", "dad", "it")) return 0;
    return token_among(tokens, at + 1, got, sizeof got / sizeof *got) ? at + 2 : 0;
}

// "It was full of corks when I got it, and two buttons": what is in it no more. A fault there is one still.
static size_t contents_from(struct note *note, size_t i) {
    enum { REST_MOST = 5 };
    const struct tokens *tokens = &note->tokens;
    size_t taken = filled_at(tokens, i), from = i;
    if (!taken) return i + 1;
    while (from > 0 && tokens->at[from - 1].stop == STOP_NONE && !ANY(tokens, from - 1, "and", "but")) from--;
    size_t to = i + taken, when = 0;
    while (to < tokens->count && tokens->at[to].stop < STOP_SENTENCE && !when) when = when_got(tokens, to++);
    if (!when) return i + 1;
    to = note_clause_to(note, when, STOP_COMMA);
    size_t rest =
        to < tokens->count && tokens->at[to].stop == STOP_COMMA && ANY(tokens, to + 1, "and", "plus")
            ? note_clause_to(note, to + 1, STOP_COMMA)
            : to;
    if (rest <= to + 1 + REST_MOST && rest > to && !has_fault(note, to + 1, rest) &&
        (rest >= tokens->count || tokens->at[rest].stop >= STOP_SENTENCE))
        to = rest;
    for (size_t k = i; k < to; k++)
        if (note->fault_word[k] || note->taken[k] == TAKEN_TYPE) return i + 1;
    for (size_t k = from; k < i; k++)
        if (note->taken[k] == TAKEN_TYPE) from = k + 1; // "the vase was full of"
    note_reading(note, from, to, "aside", "what was in it once");
    note_aside(note, from, to);
    return to;
}

void read_arrivals(struct note *note) {
    for (size_t i = 0; i < note->tokens.count;)
        i = note->taken[i] == TAKEN_NOT ? contents_from(note, i) : i + 1;
    for (size_t i = 0; i < note->tokens.count;)
        i = note->taken[i] == TAKEN_NOT ? arrival_from(note, i) : i + 1;
}
