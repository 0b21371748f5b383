// SPDX-License-Identifier: MIT
// The count told again, which then is the one that holds: a sum of what was told in parts ("nine pieces all
// told"), what is left of a set ("one broke, so five left"), what the seller found when counting anew ("I
// said six but there's seven").
#include "notes/any.h"
#include "notes/counts.h"
#include "notes/number.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { BEFORE_MOST = 24, TOLD_MOST = 2000 };

static bool is_end(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

static bool is_start(const struct note *note, size_t i) {
    return i == 0 || note->tokens.at[i - 1].stop != STOP_NONE;
}

static size_t make_at(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "pieces", "pcs", "items", "piece", "things", "tools", "parts") ? 1 : 0;
}

static size_t whole_at(const struct note *note, size_t i) {
    static const char *const words[] = {"all told",     "in all", "in total",   "altogether",
                                        "all together", "total",  "in the lot", "all in",
                                        "in all told",  "all up", "in this lot"};
    return token_longest(&note->tokens, i, words, COUNT(words));
}

// Did the seller name several, by a plural, a collective or a row of things, and no game with its pieces?
static bool names_several(const struct note *note, size_t i) {
    enum { HEAD = 10 };
    bool several = false;
    for (size_t k = 0; k < HEAD && k < i; k++) {
        const struct token *token = &note->tokens.at[k];
        if (ANY(&note->tokens, k, "puzzle", "jigsaw", "chess", "checkers", "draughts", "game", "dominoes",
                "kit", "broken", "broke", "model", "mosaic", "puzzles", "jigsaws", "games", "holds", "takes"))
            return false;
        several |= token->kind == TOKEN_WORD && token->one != token->fold &&
                   !text_same(token->one, token->fold) && !note->fault_word[k];
        several |=
            ANY(&note->tokens, k, "set", "lot", "flatware", "silverware", "cutlery", "music", "china",
                "dinnerware", "glassware", "service") ||
            (k > 1 && ANY(&note->tokens, k, "and") && k + 1 < i && note->tokens.at[k + 1].kind == TOKEN_WORD);
    }
    return several;
}

// "That makes seven pieces", "nine in all", "eleven pieces all told": more than was counted so far.
static bool sum_at(const struct note *note, size_t i, int before, struct tally *tally) {
    static const char *const leads[] = {
        "that makes", "which makes",   "makes",    "making",         "that's",  "so",
        "so that's",  "so that makes", "total of", "a total of",     "total",   "in all",
        "altogether", "all told",      "in total", "for a total of", "that is", "so total of",
        "you get",    "so there are",  "total is", "total :"};
    const struct tokens *tokens = &note->tokens;
    size_t lead = token_longest(tokens, i, leads, COUNT(leads)), number;
    if (!is_start(note, i) && !(lead && ANY(tokens, i - 1, "and", "so", "-", "("))) return false;
    int count = count_number(note, i + lead, &number);
    if (count <= before || count < 2 || count > TOLD_MOST) return false;
    size_t at = i + lead + number, make = make_at(note, at), whole = whole_at(note, at + make);
    if (!before) { // "Six forks, six knives, twelve spoons. 24 pieces.": of several that were named
        bool told = whole || (make && !ANY(&note->tokens, at, "parts"));
        if (!told || note->tokens.at[i].stop != STOP_NONE || !names_several(note, i)) return false;
    }
    if (!make && !whole && !(lead && is_end(note, at) && !ANY(tokens, i, "so", "you"))) return false;
    if (!is_end(note, at + make + whole)) return false;
    if (!lead && !whole && !(tokens->at[i].starts || count_is_first_sentence(note, i))) return false;
    *tally = (struct tally){count, at + make + whole - i, NULL, false};
    return true;
}

// Are some of them told as lost, or as those that there were, in the clauses before token `i`?
static bool some_went(const struct note *note, size_t i) {
    for (size_t k = i, n = 0; k > 0 && n < BEFORE_MOST; k--, n++)
        if (ANY(&note->tokens, k - 1, "missing", "gone", "lost", "broke", "broken", "less", "minus", "was",
                "were", "short", "except", "smashed", "cracked", "kept", "keeping", "gave", "had",
                "originally"))
            return true;
    return false;
}

// Does the note begin with several, told by a plural in its first words?
static bool was_many(const struct note *note, size_t i) {
    enum { HEAD = 6 };
    for (size_t k = 0; k < HEAD && k < i; k++) {
        const struct token *token = &note->tokens.at[k];
        if (token->kind == TOKEN_WORD && token->one != token->fold && !text_same(token->one, token->fold) &&
            !note->fault_word[k] && !ANY(&note->tokens, k, "was", "is", "has"))
            return true;
    }
    return false;
}

// "One is gone so 11", "one broke, five left", "now eleven": fewer than were counted.
static bool left_at(const struct note *note, size_t i, int before, struct tally *tally) {
    static const char *const leads[] = {"so",
                                        "now",
                                        "leaving",
                                        "leaves",
                                        "so now",
                                        "so there's",
                                        "so only",
                                        "now only",
                                        "down to",
                                        "which leaves",
                                        "that leaves",
                                        "so just",
                                        "so i have",
                                        "so this is",
                                        "so that is",
                                        "so it's",
                                        "so there are",
                                        "but now",
                                        "now there's",
                                        "now there are",
                                        "now down to",
                                        "so that leaves",
                                        "so that's",
                                        "but only",
                                        "but just",
                                        "only",
                                        "just",
                                        "but there are only",
                                        "but there's only",
                                        "but i have only",
                                        "but i only have"};
    static const char *const behind[] = {
        "left",       "remain",   "remaining",  "remaining now", "left now",   "of them left",
        "still here", "here",     "survive",    "are left",      "in the lot", "in all",
        "pieces",     "total",    "for sale",   "here now",      "present",    "are here",
        "in it",      "in there", "in the box", "inside"};
    const struct tokens *tokens = &note->tokens;
    size_t lead = token_longest(tokens, i, leads, COUNT(leads)), number;
    if (!is_start(note, i) && !(lead && i > 0)) return false;
    int count = count_number(note, i + lead, &number);
    if (!before && lead && count > 1 && !token_is(tokens, i, "but") && some_went(note, i) &&
        was_many(note, i))
        before = count + 1; // "a dozen minus the one I dropped, so eleven"
    bool kept = !before && lead && count > 1 && token_is(tokens, i, "but") && was_many(note, i) &&
                token_longest(tokens, i + lead + number, behind, COUNT(behind)) > 0;
    if (kept) before = count + 1; // "box says six but only five in it"
    if (count < 1 || count >= before || before - count > (before + 1) / 2) return false;
    size_t tail = token_longest(tokens, i + lead + number, behind, COUNT(behind));
    if ((!lead && !tail) || !is_end(note, i + lead + number + tail)) return false;
    bool here = lead && tail && ANY(tokens, i, "but", "only", "just"); // "but only five here"
    if (!here && !some_went(note, i)) return false;
    *tally = (struct tally){count, lead + number + tail, NULL, false};
    return true;
}

// "I said six but I counted again and there's seven": the number before the change of mind, the change, and
// the number that holds, in one sentence.
static bool found_at(const struct note *note, size_t i, struct tally *tally) {
    static const char *const said[] = {"i said",   "i wrote",    "i thought", "i put",          "i told",
                                       "i listed", "said",       "thought",   "i counted",      "i first",
                                       "at first", "says",       "i typed",   "supposed to be", "listed as",
                                       "listed",   "advertised", "pictured"};
    static const char *const changes[] = {"but",     "no",     "actually", "again",      "recounted", "wait",
                                          "sorry",   "really", "turns",    "correction", "recount",   "oops",
                                          "instead", "make",   "it's",     "nope"};
    const struct tokens *tokens = &note->tokens;
    size_t number = 0, k = i, n = 0;
    if (!number_may_be(tokens, i) || i < 3 || i > 2 * BEFORE_MOST) return false;
    int count = count_number(note, i, &number);
    size_t end = i + number;
    if (token_is(tokens, end, "of") && ANY(tokens, end + 1, "them", "em", "these")) end += 2;
    if (count < 2 || count > TOLD_MOST || !is_end(note, end)) return false;
    if (!count_begins_with_many(note, i) ||
        !ANY(tokens, i - 1, "there's", "theres", "it's", "are", "is", "its", "counted", "got", "have", "get",
             "actually", "it", "that", "really", "make", "no", "now", "to", ":", ",", "find", "count"))
        return false;
    bool changed = false;
    for (; k > 0 && n < BEFORE_MOST; k--, n++) {
        if (n && tokens->at[k - 1].stop >= STOP_SENTENCE) return false;
        changed |= token_among(tokens, k - 1, changes, COUNT(changes));
        if (!token_longest(tokens, k - 1, said, COUNT(said))) continue;
        for (size_t m = k; changed && m < i; m++) {
            size_t more;
            int first = number_whole(tokens, m, &more);
            if (first > 1 && first != count) {
                *tally = (struct tally){count, end - i, NULL, false};
                return true;
            }
        }
    }
    return false;
}

bool count_again_at(const struct note *note, size_t i, int before, struct tally *tally) {
    bool number = number_may_be(&note->tokens, i);
    if (note->fault_word[i] && !number) return false;
    if (!number && !is_start(note, i) &&
        !ANY(&note->tokens, i, "so", "now", "leaving", "leaves", "that", "that's", "but", "making", "makes",
             "which", "down", "only", "just", "total", "a", "for"))
        return false; // most words
    return sum_at(note, i, before, tally) || left_at(note, i, before, tally) || found_at(note, i, tally);
}
