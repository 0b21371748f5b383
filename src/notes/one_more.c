// SPDX-License-Identifier: MIT
// "There should be a twelfth" of eleven, "the sixth got broken years ago" of five: the one that would come
// next is not here. Of as many as it counts, or of more, a word of order names one that is.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Which one a word of order names: 12 of "twelfth" and "12th"; 0 for other words.
static int order_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"second", "third", "fourth", "fifth",    "sixth",  "seventh",
                                        "eighth", "ninth", "tenth",  "eleventh", "twelfth"};
    if (i >= tokens->count) return 0;
    for (size_t k = 0; k < COUNT(words); k++)
        if (token_is(tokens, i, words[k])) return (int)k + 2;
    const char *word = tokens->at[i].fold;
    size_t digits = strspn(word, "0123456789");
    const char *end = word + digits;
    if (!digits || digits > 3 ||
        !(text_same(end, "th") || text_same(end, "st") || text_same(end, "nd") || text_same(end, "rd")))
        return 0;
    int value = 0;
    for (size_t k = 0; k < digits; k++) value = value * 10 + (word[k] - '0');
    return value;
}

// Behind "the twelfth": "is gone", "got broken years ago", "went missing"; the token after it, or 0.
static size_t gone_behind(const struct tokens *tokens, size_t at) {
    enum { WORDS_MOST = 4 };
    for (size_t k = at; k < at + WORDS_MOST && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE;
         k++) {
        if (ANY(tokens, k, "gone", "missing", "lost", "broke", "disappeared", "vanished", "absent", "died",
                "stolen", "walked"))
            return k + 1;
        if (ANY(tokens, k, "broken", "smashed", "dropped", "stepped") &&
            ANY(tokens, k - 1, "got", "been", "was", "long", "were"))
            return k + 1;
        if (!ANY(tokens, k, "is", "was", "has", "had", "got", "been", "went", "long", "one", "is", "must",
                 "have", "gets", "since"))
            return 0;
    }
    return 0;
}

// Before "a twelfth": "there should be", "I never had", "can't find"; where it begins, or SIZE_MAX.
static size_t short_before(const struct tokens *tokens, size_t at) {
    static const char *const before[] = {"should be",      "ought to be",    "should have been",
                                         "must have been", "supposed to be", "meant to be",
                                         "used to be",     "once was",       "was once",
                                         "never had",      "never found",    "can't find",
                                         "couldn't find",  "could not find", "cannot find",
                                         "don't have",     "do not have",    "didn't get",
                                         "never got",      "there was",      "haven't got",
                                         "missing",        "minus",          "without",
                                         "lacking",        "lacks",          "lost",
                                         "broke",          "wants",          "needs",
                                         "need",           "lost track of",  "want",
                                         "short"};
    enum { WORDS_MOST = 3 };
    for (size_t n = 1; n <= WORDS_MOST && n <= at; n++) {
        bool whole =
            tokens->at[at - 1].stop == STOP_NONE && token_longest(tokens, at - n, before, COUNT(before)) == n;
        if (whole) return at - n;
    }
    return SIZE_MAX;
}

static void tell(struct fault_reader *r, int order, size_t from, size_t to) {
    const char *id = order == 2 ? "missing-mate" : "missing-pieces";
    const struct flaw *kind = ruleset_flaw(r->note->rules, id);
    if (!kind) return;
    struct item_flaw *flaw = fault_add(r, kind, NULL, NULL, from, to);
    if (flaw && order > 2) flaw->count = 1;
    part_close(r, from, to);
}

void read_one_more(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    int here = r->note->record->count;
    for (size_t i = 1; i < tokens->count; i++) {
        int order = order_at(tokens, i);
        if (order < 2 || order != here + 1 || (order == 2 && here < 1) || r->note->taken[i] == TAKEN_ASIDE)
            continue;
        size_t at = i;
        if (ANY(tokens, at - 1, "a", "an", "the", "its", "no") && tokens->at[at - 1].stop == STOP_NONE) at--;
        size_t to = i + 1 + (token_is(tokens, i + 1, "one") && tokens->at[i].stop == STOP_NONE);
        bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                    ANY(tokens, to, "but", "and", "to", "somewhere", "with", "in", "though", "once",
                        "originally", "so", "which", "that", "i", "it");
        size_t from = at > 0 ? short_before(tokens, at) : SIZE_MAX;
        size_t gone = at < i ? gone_behind(tokens, i + 1) : 0;
        if (gone)
            tell(r, order, from == SIZE_MAX ? at : from, gone);
        else if (ends && from != SIZE_MAX)
            tell(r, order, from, to);
        else if (ends && token_is(tokens, at, "no") && at < i)
            tell(r, order, at, to);
    }
}
