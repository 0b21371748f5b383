// SPDX-License-Identifier: MIT
// That there is one, where the seller says so: "just the one", "one jar only", "four parts but one jug", "a
// single lantern". Of a part or of a fault the same words count nothing.
#include "notes/any.h"
#include "notes/counts.h"
#include "notes/dimension.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { HEAD_TOKENS = 10, FAULT_NEAR = 8 };

static bool is_end(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

static bool is_start(const struct note *note, size_t i) {
    return i == 0 || note->tokens.at[i - 1].stop != STOP_NONE;
}

// Is a fault told in the clauses before token `i`, of which there may be just the one?
static bool is_of_fault(const struct note *note, size_t i) {
    for (size_t k = i, n = 0; k > 0 && n < FAULT_NEAR; k--, n++)
        if (note->fault_word[k - 1] == FAULT_WORD_SIZED ||
            ANY(&note->tokens, k - 1, "missing", "gone", "lost", "lacks", "off", "out"))
            return true; // "lone glove" is what the thing is
    return false;
}

// Do the first words of the note name the noun at token `i`, before they say what comes with it?
static bool is_of_head(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD) return false;
    for (size_t k = 0; k < HEAD_TOKENS && k < i && tokens->at[k].stop < STOP_SENTENCE; k++) {
        if (ANY(tokens, k, "with", "and", "has", "in", "on", "for", "of", "from", "missing", "no"))
            return false;
        if (text_same(tokens->at[k].one, tokens->at[i].one)) return true;
    }
    return false;
}

// "Just the one", "one only", "just this one" as a clause.
static bool bare_at(const struct note *note, size_t i, struct tally *tally) {
    static const char *const words[] = {"just the one",
                                        "just one",
                                        "only the one",
                                        "only one",
                                        "one only",
                                        "1 only",
                                        "only 1",
                                        "just 1",
                                        "just this one",
                                        "only this one",
                                        "just the single one",
                                        "just the 1",
                                        "one piece",
                                        "single piece",
                                        "a single piece",
                                        "1 piece",
                                        "just one of them",
                                        "there is only one",
                                        "there's only one",
                                        "there's just one",
                                        "i have one",
                                        "i have just one",
                                        "i only have one",
                                        "i have only one",
                                        "just a single one",
                                        "qty 1",
                                        "quantity 1",
                                        "quantity one",
                                        "one item",
                                        "1 item",
                                        "only have the one",
                                        "i only have the one",
                                        "there is just the one",
                                        "there's just the one",
                                        "it's just the one"};
    size_t n = token_longest(&note->tokens, i, words, COUNT(words));
    if (!n || !is_start(note, i)) return false;
    bool named = is_of_head(note, i + n) && is_end(note, i + n + 1); // "just this one book"
    if (named) n++;
    if (!named && is_of_fault(note, i)) return false;
    if (!is_end(note, i + n)) return false;
    bool sentence = i > 0 && note->tokens.at[i - 1].stop >= STOP_CLAUSE &&
                    (i + n >= note->tokens.count || note->tokens.at[i + n].stop >= STOP_CLAUSE);
    if (!count_is_first_sentence(note, i) && !sentence) return false;
    *tally = (struct tally){1, n, NULL, false};
    return true;
}

// "Teapot, one.", "teapot (1)": alone behind what the note begins with.
static bool alone_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    bool bracket = i > 0 && token_is(tokens, i - 1, "(") && token_is(tokens, i + 1, ")");
    if (i < 2 || i > HEAD_TOKENS || !(ANY(tokens, i, "one") || (bracket && ANY(tokens, i, "1"))) ||
        !(bracket || (token_is(tokens, i - 1, ",") && is_end(note, i + 1))) ||
        !count_is_first_sentence(note, i) || is_of_fault(note, i))
        return false;
    *tally = (struct tally){1, 1, NULL, false};
    return true;
}

// "One of a pair of candlesticks", "one from a set": what the note begins with.
static bool of_others_at(const struct note *note, size_t i, struct tally *tally) {
    static const char *const words[] = {
        "one of a pair",          "one from a pair",    "one of a set",
        "one from a set",         "half of a pair",     "half a pair",
        "one half of a pair",     "1 of a pair",        "one of an original pair",
        "one of what was a pair", "only one of a pair", "just one of a pair",
        "one of the pair",        "one out of a set"};
    size_t n = i == 0 ? token_longest(&note->tokens, 0, words, COUNT(words)) : 0;
    if (n) *tally = (struct tally){1, n, NULL, false};
    return n > 0;
}

// "One percolator", "1 jar only", "a single left shoe": by the noun that the note begins with.
static bool noun_again_at(const struct note *note, size_t i, struct tally *tally) {
    enum { LOOKS_MOST = 2 };
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    if (ANY(tokens, at, "just", "only")) at++;
    if (ANY(tokens, at, "the", "a", "this")) at++;
    bool single = ANY(tokens, at, "single"), one = ANY(tokens, at, "one", "1");
    if (i == 0 || (!single && !one) || (at > i && token_is(tokens, at - 1, "a") && !single)) return false;
    bool led =
        ANY(tokens, i - 1, "so", "but", "is", "it's", "its", "as", "that's", "still", "makes", "and") &&
        (i < 2 || !tokens->at[i - 2].capitals);
    if (!is_start(note, i) && !led) return false;
    size_t noun = at + 1;
    while (noun <= at + LOOKS_MOST && !is_of_head(note, noun) && noun < tokens->count &&
           !is_end(note, noun) && (single || !note->fault_word[noun]))
        noun++;
    while (is_of_head(note, noun) && is_of_head(note, noun + 1)) noun++; // "one cake stand"
    if (!is_of_head(note, noun)) return false;
    size_t end = noun + 1;
    if (ANY(tokens, end, "only")) end++;
    bool many = (led && ANY(tokens, end, "two", "three", "four", "five", "six")) || // "so one hat two bands"
                single;
    if (!is_end(note, end) && !many) return false;
    *tally = (struct tally){1, end - i, tokens->at[noun].one, false};
    return true;
}

// "One brass bell", "1 lantern, red", "a single sconce": what the note begins with.
static bool opening_at(const struct note *note, size_t i, struct tally *tally) {
    enum { LOOKS_MOST = 6 };
    const struct tokens *tokens = &note->tokens;
    if (!count_is_head(note, i)) return false;
    size_t at = i + (ANY(tokens, i, "a", "just", "only") && ANY(tokens, i + 1, "single", "one") ? 1 : 0);
    if (!ANY(tokens, at, "one", "1", "single")) return false;
    struct noun_found goods;
    for (size_t k = at + 1; k < at + LOOKS_MOST && k < tokens->count; k++) {
        if (ANY(tokens, k, "of", "pair", "set", "lot", "dozen", "box", "bag", "bundle", "with", "and", "or",
                "more", "for") ||
            note->fault_word[k] == FAULT_WORD_SIZED || note->tokens.at[k].kind != TOKEN_WORD ||
            note->taken[k] == TAKEN_MEASURE)
            return false;
        if (noun_at(note, k, &goods) && (goods.thing || goods.uses & (1u << USE_THING)) && !goods.part &&
            (is_end(note, goods.to) ||
             (ANY(tokens, goods.to, "and") && ANY(tokens, goods.to + 1, "that's", "nothing", "no")) ||
             ANY(tokens, goods.to, "with", "in", "only", "by", "from", "for", "here"))) {
            const struct token *last = &tokens->at[goods.to - 1];
            bool plural = last->one != last->fold && !text_same(last->one, last->fold);
            if (plural) return false;
            *tally = (struct tally){1, at + 1 - i, last->one, false};
            return true;
        }
        if (tokens->at[k].stop != STOP_NONE) return false;
    }
    return false;
}

bool count_one_at(const struct note *note, size_t i, struct tally *tally) {
    if (!ANY(&note->tokens, i, "half", "one", "1", "single", "a", "just", "only", "there", "there's", "i",
             "qty", "quantity", "the", "this", "it's"))
        return false;
    return opening_at(note, i, tally) || alone_at(note, i, tally) || of_others_at(note, i, tally) ||
           noun_again_at(note, i, tally) || bare_at(note, i, tally);
}
