// SPDX-License-Identifier: MIT
// A dictated note has hardly any written stop, and says them: there "period" is one. Where stops are written,
// it is a word for an age, and a comma has a shape.
#include "notes/speech.h"

#include "notes/period.h"

#include <string.h>

#include "notes/cut.h"
#include "text/order.h"

struct spoken {
    const char *words, *sign;
    enum token_stop stop;
    bool sole; // one word, with a meaning of its own
};

static const struct spoken spoken[] = {{"comma", ",", STOP_COMMA, true},
                                       {"period", ".", STOP_SENTENCE, true},
                                       {"semicolon", ";", STOP_CLAUSE, true},
                                       {"full stop", ".", STOP_SENTENCE, false},
                                       {"new line", "\n", STOP_LINE, false},
                                       {"newline", "\n", STOP_LINE, true},
                                       {"new paragraph", "\n", STOP_LINE, false},
                                       {"question mark", "?", STOP_SENTENCE, false},
                                       {"exclamation point", "!", STOP_SENTENCE, false},
                                       {"exclamation mark", "!", STOP_SENTENCE, false}};
enum { SPOKEN = sizeof spoken / sizeof *spoken };

// Words that make "period" and "comma" things that one speaks of.
static bool is_word_here(const struct tokens *tokens, size_t i, size_t taken, const struct spoken *what) {
    static const char *const articles[] = {"a",  "the",  "this", "that", "like",
                                           "of", "with", "some", "any",  NULL};
    static const char *const before_period[] = {"colonial", "same", "time", "art", "jazz", NULL};
    static const char *const after_period[] = {
        "lamp",    "piece", "pieces", "style",    "correct",     "furniture", "look",
        "costume", "dress", "drama",  "hardware", "appropriate", "item",      "home",
        "of",      "frame", "screws", "fittings", "glass",       "detail",    NULL};
    static const char *const after_comma[] = {"shaped", "shape", "butterfly", NULL};
    size_t next = i + taken;
    if (i && tokens->at[i - 1].stop == STOP_NONE && token_any(tokens, i - 1, articles)) return true;
    if (text_same(what->sign, ",")) return token_any(tokens, next, after_comma);
    if (text_same(what->words, "period"))
        return (i && (token_any(tokens, i - 1, before_period) || period_ends_era(tokens->at[i - 1].fold))) ||
               token_any(tokens, next, after_period);
    return false;
}

// Is the note dictated? Then written stops are few beside spoken ones.
static bool is_dictated(const struct tokens *tokens) {
    size_t written = 0, said = 0, lines = 0;
    for (size_t i = 0; i < tokens->count; i++) {
        written += token_is(tokens, i, ".") && tokens->at[i].stop >= STOP_SENTENCE;
        said += token_is(tokens, i, "comma") || token_is(tokens, i, "period") ||
                token_phrase(tokens, i, "full stop");
        lines += token_is(tokens, i, "newline") || token_phrase(tokens, i, "new line");
    }
    if (lines > 1) said += lines; // one alone may be a reel's
    return said > written || (said && !written);
}

static size_t spoken_at(const struct tokens *tokens, size_t i, const struct spoken **what) {
    if (tokens->at[i].kind != TOKEN_WORD || !strchr("cpsfnqe", tokens->at[i].fold[0])) return 0;
    if (!token_may_open(tokens, i, spoken, SPOKEN, sizeof *spoken)) return 0;
    for (size_t k = 0; k < SPOKEN; k++) {
        size_t taken = token_phrase(tokens, i, spoken[k].words);
        if (!taken || is_word_here(tokens, i, taken, &spoken[k])) continue;
        *what = &spoken[k];
        return taken;
    }
    return 0;
}

void speech_stops(struct tokens *tokens) {
    if (!is_dictated(tokens)) return;
    tokens->altered = true;
    size_t kept = 0;
    for (size_t i = 0; i < tokens->count;) {
        const struct spoken *what = NULL;
        size_t taken = spoken_at(tokens, i, &what);
        struct token token = tokens->at[i];
        if (taken) {
            token.to = tokens->at[i + taken - 1].to;
            token.kind = TOKEN_SIGN;
            token.stop = what->stop;
            token.fold = token.one = what->sign;
            token.hash = token_hash(what->sign, strlen(what->sign));
            token.capital = token.capitals = token.plain = false;
        }
        tokens->at[kept++] = token;
        i += taken ? taken : 1;
    }
    tokens->count = kept;
}
