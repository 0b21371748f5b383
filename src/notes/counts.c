// SPDX-License-Identifier: MIT
// Pieces of the lot. A number counts things where the grammar says so: "set of 4", "lot of 10", or a number
// at the head of the note with a plural behind it. Parts, faults, makes ("2 piece dish") and numbered boxes
// are not pieces.
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "notes/any.h"
#include "notes/correct.h"
#include "notes/counts.h"
#include "notes/dimension.h"
#include "notes/number.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { COUNT_MOST = 100000, PHRASE_MOST = 6, SECOND_MOST = 18 };

// --- the number itself ---

// "half a dozen", "a dozen", "two dozen", "dozen".
static int dozens(const struct note *note, size_t i, size_t *taken) {
    const struct tokens *tokens = &note->tokens;
    if (!number_may_be(tokens, i) && !ANY(tokens, i, "half", "a", "dozen")) return 0;
    if ((*taken = token_phrase(tokens, i, "half a dozen")) ||
        (*taken = token_phrase(tokens, i, "half dozen")) ||
        (*taken = token_phrase(tokens, i, "a half dozen")))
        return 6;
    if ((*taken = token_phrase(tokens, i, "a dozen and a half")) ||
        (*taken = token_phrase(tokens, i, "dozen and a half")))
        return 18;
    if ((*taken = token_phrase(tokens, i, "a dozen")) || (*taken = token_phrase(tokens, i, "dozen")))
        return 12;
    size_t number = 0;
    int count = number_whole(tokens, i, &number);
    if (!count || !token_is(tokens, i + number, "dozen")) return 0;
    *taken = number + 1;
    return count * 12;
}

// "minus one", "less two", "so five", "no 7", ", I mean four,": what comes behind a number and changes it.
int count_changed(const struct note *note, size_t at, int count, size_t *taken) {
    const struct tokens *tokens = &note->tokens;
    size_t start = at, number = 0;
    if (ANY(tokens, at, "minus", "less") && number_whole(tokens, at + 1, &number)) {
        count -= number_whole(tokens, at + 1, &number);
        at += 1 + number;
        if (token_is(tokens, at, "so") && number_whole(tokens, at + 1, &number) == count) at += 1 + number;
        *taken = at - start;
        return count;
    }
    if (token_is(tokens, at, ",") || (token_is(tokens, at, "-") && !tokens->at[at].joined)) at++;
    size_t words = correction_at(note, at), more;
    if (!words) return 0;
    at += words;
    if (token_is(tokens, at, ",")) at++;
    while ((more = correction_at(note, at)) != 0) at += more;
    int corrected = number_whole(tokens, at, &number);
    if (!corrected) return 0;
    *taken = at + number - start;
    return corrected;
}

int count_number(const struct note *note, size_t i, size_t *taken) {
    int count = dozens(note, i, taken);
    if (!count) count = number_whole(&note->tokens, i, taken);
    if (count < 1 || count > COUNT_MOST) return 0;
    size_t more, again = i + *taken; // "four (4)"
    if (token_is(&note->tokens, again, "(") && number_whole(&note->tokens, again + 1, &more) == count &&
        token_is(&note->tokens, again + 1 + more, ")"))
        *taken += more + 2;
    int other = count_changed(note, i + *taken, count, &more);
    if (other < 1) return count;
    *taken += more;
    if (token_is(&note->tokens, i + *taken, ",")) ++*taken;
    return other;
}

// --- what is counted ---

bool count_is_stopper(const struct note *note, size_t i) {
    if (ANY(&note->tokens, i, "drawer", "tier", "burner", "slice", "branch", "strand") &&
        !ANY(&note->tokens, i + 1, "pulls", "knobs", "handles", "liners", "locks", "fronts", "slides", "rods",
             "covers", "trays"))
        return true; // "three drawer nightstands": of each
    return ANY(&note->tokens, i, "with", "and", "of", "for", "in", "on", "at", "has", "have", "is", "are",
               "but", "no", "one", "the", "to", "from", "by", "all", "each", "missing", "left", "or", "inch",
               "piece", "pc", "speed", "person", "string", "day", "year", "years", "hours", "hour", "minutes",
               "days", "weeks", "months", "times", "percent", "x", "other", "others", "sides", "ways");
}

static bool is_plural(const struct token *token) {
    return token->kind == TOKEN_WORD && token->one != token->fold && !text_same(token->one, token->fold);
}

// "Nine blue and white tiles", "six oak and brass buckets": an "and" between two looks.
static bool joins_looks(const struct note *note, size_t i) {
    static const uint32_t looks = (1u << USE_COLOR) | (1u << USE_MATERIAL);
    struct word_entry entry;
    return word_at(note, i - 1, looks, &entry) > 0 && word_at(note, i + 1, looks, &entry) > 0;
}

// The plural that a number at `i` counts: adjectives may stand between. Its token, or 0.
size_t count_plural(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t last = 0;
    i += count_sized_by(tokens, i);
    for (size_t k = i; k < i + PHRASE_MOST && k < tokens->count; k++) {
        const struct token *token = &tokens->at[k];
        struct noun_found noun;
        if (token->kind == TOKEN_WORD && noun_at(note, k, &noun) && noun.to > k + 1 && noun.thing &&
            is_plural(&tokens->at[noun.to - 1]))
            return noun.to - 1; // "reel to reel tapes"
        if (k > i && k + 1 < tokens->count && ANY(tokens, k, "and", "&") && joins_looks(note, k)) continue;
        if (token->stop >= STOP_CLAUSE || token->kind == TOKEN_FIGURE || count_is_stopper(note, k)) break;
        if (token->stop == STOP_COMMA) break; // "Four dinner plates, Castlefenn"
        if (note->fault_word[k] == FAULT_WORD_SIZED) return last;
        if (is_plural(token)) {
            last = k;
            // "glass goblets": the head is the last noun, but a plural ends most phrases.
            break;
        }
    }
    return last;
}

// --- finders ---

// "set of 4", "lot of 10", "box of 14 knobs", "group of three".
static bool set_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    bool strong = ANY(tokens, i, "set", "lot", "group", "nest");
    bool holder = ANY(tokens, i, "box", "bag", "case", "jar", "tin", "crate", "tray", "bundle", "stack",
                      "bunch", "collection", "roll", "tub", "pile", "carton", "pack", "string", "drawer",
                      "card", "sheet", "ring");
    if ((!strong && !holder) || !token_is(tokens, i + 1, "of")) return false;
    if (i && ANY(tokens, i - 1, "and", "with", "plus", "w/", "&", "+", "includes", "including"))
        return false; // beside it
    if (i > 1 && token_is(tokens, i - 1, "a") && ANY(tokens, i - 2, "and", "with", "plus", "&", "+"))
        return false; // "scales with brass pans and a set of 6 weights"
    if (i > 1 && token_is(tokens, i - 1, ":") && !count_is_first_sentence(note, i))
        return false; // "Weights: set of 7"
    if (i && ANY(tokens, i - 1, "a") && i > 1 &&
        ANY(tokens, i - 2, "from", "off", "out", "not", "of", "missing"))
        return false;
    size_t at = i + 2, taken;
    at += ANY(tokens, at, "about", "around", "roughly", "maybe", "approx", "some", "over", "~") ? 1 : 0;
    int count = count_number(note, at, &taken);
    if (!count) return false;
    size_t noun = count_plural(note, at + taken);
    if (!noun && i > 1 && ANY(tokens, i - 1, "complete", "full", "whole", "part"))
        return false; // "album of cards, complete set of 50": of what is in it
    if (holder && (!noun || !count_is_first_sentence(note, i))) return false;
    if (token_is(tokens, i, "ring") && !ANY(tokens, noun, "keys")) return false; // "ring of five stones"
    if (count_is_of_other(note, i, noun)) return false; // "Picnic hamper. Set of 4 plates"
    // "lot of 3 inch nails": a measure.
    if (strong && !noun && at + taken < tokens->count && tokens->at[at + taken].kind == TOKEN_WORD &&
        ANY(tokens, at + taken, "inch", "in", "mm") &&
        !(token_is(tokens, at + taken, "in") && // "set of six in a rack"
          ANY(tokens, at + taken + 1, "a", "an", "the", "their", "its", "original", "fitted")))
        return false;
    size_t less = noun + (noun && token_is(tokens, noun + 1, ",") ? 2 : 1), words;
    if (noun && ANY(tokens, less, "minus", "less") && count_changed(note, less, count, &words) > 0)
        count = count_changed(note, less, count, &words); // "set of six tumblers minus one"
    *tally = (struct tally){count, at + taken - i, noun ? tokens->at[noun].one : NULL, false};
    return true;
}

static bool is_make(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "piece", "pc", "pce", "pcs", "pieces", "pack", "pk") ||
           (ANY(&note->tokens, i, "volume", "vol") && count_set_behind(note, i + 1));
}

static bool is_puzzle(const struct note *note, size_t i) { // "jigsaw, wooden, 200 pieces"
    if (i && token_is(&note->tokens, i - 1, "of")) return false;
    for (size_t k = 0; k < i && k < PHRASE_MOST; k++)
        if (ANY(&note->tokens, k, "puzzle", "jigsaw")) return true;
    return false;
}

// "Three piece tea set with a tray", "luggage, a three piece set"; but "2 piece set butter dish" is one dish.
static bool is_set_at_end(const struct note *note, size_t i, bool least) {
    enum { MOST = 4 };
    const struct tokens *tokens = &note->tokens;
    for (size_t k = i; k < i + MOST && k < tokens->count && tokens->at[k].kind == TOKEN_WORD; k++)
        if (token_is(tokens, k, "set"))
            return (k > i || least) && (k + 1 >= tokens->count || tokens->at[k + 1].stop != STOP_NONE ||
                                        ANY(tokens, k + 1, "with", "in", "by", "and"));
    return false;
}

// "Seven pieces all told": a sum in a statement of its own, and not of what one game or one break has.
static bool is_all_told(const struct note *note, size_t i, size_t end) {
    const struct tokens *tokens = &note->tokens;
    if (!token_phrase(tokens, end, "all told") && !token_phrase(tokens, end, "in all") &&
        !token_phrase(tokens, end, "in total") && !ANY(tokens, end, "altogether", "total"))
        return false;
    if (i && tokens->at[i - 1].stop == STOP_NONE &&
        !ANY(tokens, i - 1, "to", "makes", "is", "are", "that's", "it's", "have", "get", "all"))
        return false;
    for (size_t k = 0; k < i; k++)
        if (ANY(tokens, k, "puzzle", "jigsaw", "chess", "checkers", "draughts", "game", "dominoes", "kit",
                "broken", "broke", "smashed", "came", "mosaic"))
            return false;
    return true;
}

// "4pc", "10pcs": the number, 0 where it is none.
static int joined_pieces(const struct token *token) {
    char *end;
    if (token->fold[0] < '1' || token->fold[0] > '9') return 0;
    long count = strtol(token->fold, &end, 10);
    bool pieces =
        text_same(end, "pc") || text_same(end, "pcs") || text_same(end, "pce") || text_same(end, "piece");
    return pieces && count > 0 && count < COUNT_MOST ? (int)count : 0;
}

// "44 piece flatware", "10 pcs", "= 10 pc"; but "2 piece butter dish" is one dish, and a puzzle's pieces are
// its size.
static bool pieces_at(struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    int joined = joined_pieces(&tokens->at[i]), count = joined ? joined : count_number(note, i, &number);
    size_t at = i + number;
    if (!count) return false;
    if (token_is(tokens, at, "-")) at++;
    if ((!joined && !is_make(note, at)) || (count_is_numbering(note, i) && !is_all_told(note, i, at + 1)))
        return false;
    size_t end = at + 1;
    if (token_is(tokens, end, ".") && tokens->at[end].stop == STOP_NONE) end++;
    if (ANY(tokens, end, "puzzle", "jigsaw", "puzzles", "jigsaws") ||
        (i && ANY(tokens, i - 1, "puzzle", "jigsaw")) || (count > 20 && is_puzzle(note, i))) {
        count_keep_pieces(note, i, end, count);
        note_take(note, i, end, TAKEN_VALUE);
        return false;
    }
    bool sum = i && ANY(tokens, i - 1, "=", "total", "all", "equals", "makes", "making", "so", "that's");
    sum |= count > 1 && is_all_told(note, i, end);
    bool ends = end >= tokens->count || tokens->at[end].stop != STOP_NONE ||
                ANY(tokens, end, "total", "in", "lot", "altogether", "of", "all", "less", "minus", "out");
    bool set =
        (count > 1 && (count > 3 ? count_set_behind(note, end) : is_set_at_end(note, end, count > 2))) ||
        (count > 3 && ANY(tokens, end, "flatware", "silverware", "cutlery", "service", "lot", "collection",
                          "tool", "canteen", "socket", "canister", "nesting", "dinner", "tea"));
    set |= count > 1 && ends && i > 1 && tokens->at[i - 1].stop == STOP_COMMA && // "dresser set, three piece"
           ANY(tokens, i - 2, "set", "service", "garniture", "suite");
    if (ANY(tokens, end, "missing", "gone", "lost", "short") ||
        (i && ANY(tokens, i - 1, "missing", "says", "of", "lost", "least")))
        return false;
    struct noun_found goods;
    if (!sum && !set && !ends && count < 4 && i == 0 && noun_at(note, end, &goods))
        note_take(note, i, end, TAKEN_FILLER); // "2 piece mold, iron"
    if (!sum && !set && !(ends && count > 3 && (count_is_head(note, i) || count_is_first_sentence(note, i))))
        return false;
    *tally = (struct tally){count, end - i, NULL, false};
    return true;
}

// "7 of em", "6 of them", "I have 6 of these".
static bool of_them_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    int count = count_number(note, i, &number);
    size_t at = i + number;
    if (count < 2 || !token_is(tokens, at, "of")) return false;
    bool bare = at + 1 >= tokens->count || tokens->at[at + 1].stop >= STOP_COMMA; // "mugs, 7 of,"
    if (!bare && !ANY(tokens, at + 1, "em", "'em", "them", "these", "those")) return false;
    size_t next = bare ? at + 1 : at + 2;
    bool ends = next >= tokens->count || tokens->at[next].stop != STOP_NONE ||
                ANY(tokens, next, "in", "total", "all", "altogether", "here") ||
                (tokens->at[i].starts && ANY(tokens, next, "and"));
    bool have = i && ANY(tokens, i - 1, "are", "is", "there's", "theres", "have", "got");
    if (i && tokens->at[i - 1].stop == STOP_NONE && ANY(tokens, i - 1, "on", "in", "inside", "under", "with"))
        return false; // "bands still on five of them"
    struct part part;
    if (i > 1 && part_at(note, i - 1, &part) && number_may_be(tokens, i - 2))
        return false; // "4 feet, 3 of them worn"
    size_t noun = i > 1 && tokens->at[i - 1].stop == STOP_COMMA ? i - 2 : i;
    struct word_entry held; // "lamp, leaded panels, 6 of them", "chest with drawers, 4 of them"
    bool held_by = false;
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < noun && noun < i; k++)
        held_by |= tokens->at[k].stop == STOP_COMMA || ANY(tokens, k, "with");
    size_t first = 0; // "Photographs, cabinet cards, 13 of them" begins with a plural
    while (first + 1 < i && tokens->at[first].stop == STOP_NONE && !token_is(tokens, first + 1, ",")) first++;
    if (first < PHRASE_MOST && is_plural(&tokens->at[first]) && !note->fault_word[first]) held_by = false;
    if (held_by && !have && is_plural(&tokens->at[noun]) && word_at(note, noun, 1u << USE_PART, &held) == 1)
        return false;
    if (!ends && !have && !(i && is_plural(&tokens->at[i - 1]) && !note->fault_word[i - 1]))
        return false; // "rods 13 of them brass"
    // "Doilies. Fourteen of them."
    bool second = i > 1 && i < SECOND_MOST && tokens->at[i].starts && count_begins_with_many(note, i) &&
                  (next >= tokens->count || tokens->at[next].stop != STOP_NONE || ANY(tokens, next, "and"));
    if (!count_is_first_sentence(note, i) && !have && !second) return false;
    *tally = (struct tally){count, next - i, NULL, false};
    return true;
}

// "only two left"; "all 12 signed".
static bool rest_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    if (token_is(tokens, i, "only")) {
        int count = number_whole(tokens, i + 1, &number);
        size_t at = i + 1 + number;
        if (count < 2 || !token_is(tokens, at, "left")) return false;
        if (at + 1 < tokens->count && tokens->at[at + 1].stop == STOP_NONE &&
            !ANY(tokens, at + 1, "now", "of"))
            return false;
        *tally = (struct tally){count, at + 1 - i, NULL, false};
        return true;
    }
    bool the = token_is(tokens, i, "the"); // "sugar bowl and creamer, the two match"
    if (!the && !token_is(tokens, i, "all")) return false;
    int count = number_whole(tokens, i + 1, &number);
    if (the && !ANY(tokens, i + 1 + number, "match", "belong", "matching")) return false;
    if (count < 2) return false;
    size_t noun = !the && count_is_head(note, i) ? count_plural(note, i + 1 + number) : 0;
    struct part part;
    if (noun && (part_at(note, noun, &part) || note->fault_word[noun])) return false; // "all 4 legs"
    if (!noun && !ANY(tokens, i + 1 + number, "signed", "marked", "match", "matching", "are", "have",
                      "stamped", "alike", "belong", "sold", "together", "included", "here", "go"))
        return false;
    *tally = (struct tally){count, 1 + number, noun ? tokens->at[noun].one : NULL, false};
    return true;
}

// "Bentwood chairs x4", "lanterns (x 3)", "4x lanterns".
static bool times_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    const struct token *t = &tokens->at[i];
    size_t number = 0;
    if (!count_is_first_sentence(note, i)) return false;
    if (i && t->kind == TOKEN_CODE && t->fold[0] == 'x' && is_plural(&tokens->at[i - 1])) {
        char *end;
        long count = strtol(t->fold + 1, &end, 10);
        struct part part;
        bool first = note_clause_from(note, i, STOP_COMMA) == 0;
        if (!first && part_at(note, i - 1, &part)) return false; // "rack, 3 shelves, hooks x8"
        bool same = first;                                       // "ink stand, glass wells x2"
        for (size_t k = 0; !same && k + 1 < i && tokens->at[k].stop == STOP_NONE; k++)
            same = text_same(tokens->at[k].one, tokens->at[i - 1].one) || is_plural(&tokens->at[k]);
        if (!same) return false;
        bool whole = t->fold[1] >= '1' && t->fold[1] <= '9' && !*end && count > 1 && count < 1000;
        if (whole) *tally = (struct tally){(int)count, 1, tokens->at[i - 1].one, false};
        return whole;
    }
    size_t noun = i && token_is(tokens, i - 1, "(") ? i - 1 : i;
    if (noun && token_is(tokens, i, "x") && is_plural(&tokens->at[noun - 1])) {
        int count = number_whole(tokens, i + 1, &number);
        size_t end = i + 1 + number;
        struct word_entry look; // "ink wells x 11 china"
        if (count < 2 || (end < tokens->count && tokens->at[end].stop == STOP_NONE &&
                          !ANY(tokens, end, ")", "on", "in", "with", "all") &&
                          !word_at(note, end, (1u << USE_MATERIAL) | (1u << USE_COLOR), &look)))
            return false;
        *tally = (struct tally){count, 1 + number, tokens->at[noun - 1].one, false};
        return true;
    }
    struct number times;
    if (!count_is_head(note, i) || !number_at(tokens, i, &times) || !times.whole || times.value < 2)
        return false;
    bool joined = text_same(times.tail, "x");
    if (!joined && !(token_is(tokens, i + times.taken, "x") && !*times.tail)) return false;
    size_t at = i + times.taken + (joined ? 0 : 1);
    noun = at < tokens->count && tokens->at[at].kind == TOKEN_WORD ? count_plural(note, at) : 0;
    if (!noun) return false;
    *tally = (struct tally){(int)times.value, at - i, tokens->at[noun].one, false};
    return true;
}

// "Ski poles, pairs: 2", "pairs of oars, 3": each pair is two.
static bool pairs_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    if (!token_is(tokens, i, "pairs") || !count_is_first_sentence(note, i)) return false;
    size_t at = i + 1;
    if (token_is(tokens, at, "of") && is_plural(&tokens->at[at + 1 < tokens->count ? at + 1 : at])) at += 2;
    if (!ANY(tokens, at, ":", ",", "x")) return false; // "pairs 3": of what?
    at++;
    int count = number_whole(tokens, at, &number);
    size_t end = at + number;
    if (!count || count > 50 || (end < tokens->count && tokens->at[end].stop == STOP_NONE)) return false;
    *tally = (struct tally){2 * count, 1, NULL, false};
    return true;
}

// "Brass hooks, 11 in it", "a box of tiles, there's 40 in there": behind a plural of the first sentence.
static bool held_at(const struct note *note, size_t i, struct tally *tally) {
    static const char *const holds[] = {"in it",       "in there",      "in all",      "in total",
                                        "altogether",  "in the box",    "in the lot",  "in the tin",
                                        "in the bag",  "in the set",    "to the set",  "in this set",
                                        "in this lot", "in the bundle", "in the group"};
    enum { HEAD = 14 };
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    bool opens = i > 1 && (tokens->at[i - 1].stop != STOP_NONE ||
                           ANY(tokens, i - 1, "there's", "theres", "are", "got", "is", "with", "and"));
    int count = opens && i < HEAD ? number_whole(tokens, i, &number) : 0;
    if (count < 2) return false;
    size_t tail = token_longest(tokens, i + number, holds, sizeof holds / sizeof *holds);
    if (!tail || (i + number + tail < tokens->count && tokens->at[i + number + tail].stop == STOP_NONE))
        return false;
    for (size_t k = 0; k < i; k++) {
        if (tokens->at[k].kind == TOKEN_FIGURE) return false;
        if (!is_plural(&tokens->at[k]) || note->fault_word[k]) continue;
        *tally = (struct tally){count, number + tail, tokens->at[k].one, false};
        return true;
    }
    return false;
}

static bool is_loose(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "about", "around", "roughly", "approx", "approximately", "maybe", "some",
               "~", "over", "nearly", "almost", "perhaps", "probably", "like", "circa");
}

// "About thirty" between stops behind the thing, "maybe 500 of them".
static bool loose_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    if (!is_loose(note, i) || ANY(tokens, i, "like", "some", "over")) return false;
    int count = count_number(note, i + 1, &number);
    size_t end = i + 1 + number;
    if (count < 3 || count > 9999) return false;
    if (token_is(tokens, end, "of") && ANY(tokens, end + 1, "them", "em", "these")) end += 2;
    if (ANY(tokens, end, "total", "altogether", "all", "here", "in")) end++;
    if (end < tokens->count && tokens->at[end].stop == STOP_NONE) return false;
    bool many = false, free = i > 0 && tokens->at[i - 1].stop != STOP_NONE;
    for (size_t k = 0; k < i && k < 12; k++) many |= is_plural(&tokens->at[k]) && note->taken[k] == TAKEN_NOT;
    if (!many || (!free && !ANY(tokens, i - 1, "empty", "there's", "theres", "are", "have", "got") &&
                  !is_plural(&tokens->at[i - 1])))
        return false;
    *tally = (struct tally){count, end - i, NULL, true};
    return true;
}

// A number with the noun counted before, behind words of correction: "so seven clubs, scratch that, … six
// clubs".
static bool recount_at(const struct note *note, size_t i, const struct tally *before, struct tally *tally) {
    if (!before->noun) return false;
    size_t number = 0;
    int count = number_whole(&note->tokens, i, &number);
    if (!count || i + number >= note->tokens.count ||
        !text_same(note->tokens.at[i + number].one, before->noun))
        return false;
    enum { REACH = 10 };
    for (size_t k = i, n = 0; k > 0 && n < REACH && note->tokens.at[k - 1].stop < STOP_SENTENCE; k--, n++)
        if (token_phrase(&note->tokens, k - 1, "scratch that") ||
            token_phrase(&note->tokens, k - 1, "no wait") || token_phrase(&note->tokens, k - 1, "i mean") ||
            token_phrase(&note->tokens, k - 1, "make that")) {
            *tally = (struct tally){count, number, before->noun, false};
            return true;
        }
    return false;
}

static bool so_many_at(const struct note *note, size_t i, struct tally *tally) {
    size_t number = 0;
    if (!token_is(&note->tokens, i, "so") || !count_is_first_sentence(note, i)) return false;
    int count = number_whole(&note->tokens, i + 1, &number);
    size_t noun = count > 1 ? count_plural(note, i + 1 + number) : 0;
    if (!noun || noun > i + 2 + number || note->fault_word[noun]) return false;
    *tally = (struct tally){count, 1 + number, note->tokens.at[noun].one, false};
    return true;
}

// A hedge before the number, or "or so" behind it.
static size_t hedged(const struct note *note, size_t i, const struct tally *tally, bool *about) {
    static const char *const behind[] = {"or so", "or thereabouts", "give or take", "or more"};
    *about = tally->about;
    for (size_t k = i; k < i + tally->taken; k++) *about |= is_loose(note, k);
    if (i && is_loose(note, i - 1)) *about = true;
    for (size_t k = 0; k < sizeof behind / sizeof *behind; k++) {
        size_t more = token_phrase(&note->tokens, i + tally->taken, behind[k]);
        if (more) *about = true;
        if (more) return more;
    }
    return 0;
}

// What nobody counted is no count: it is told in words.
static void keep_loose(struct note *note, size_t i, size_t to, int count) {
    struct value *value = note_attribute(note);
    value->name = "size";
    value->value = arena_format(note->arena, "about %d pieces", count);
    value->sure = SURE_LIKELY;
    value->span = note_span_of(note, i, to);
    note_reading(note, i, to, "size", "a number of pieces that is not sure");
}

// "= 12", "so 12 pieces", "making 14 pieces": what was told before in parts.
static bool is_total(const struct note *note, size_t i, const struct tally *tally) {
    if (i && token_is(&note->tokens, i - 1, "=")) return true;
    bool so = ANY(&note->tokens, i, "so") || (i && ANY(&note->tokens, i - 1, "so", "making", "makes"));
    return so && (is_make(note, i + tally->taken) || is_make(note, i + tally->taken - 1));
}

// Where no number of pieces stands: that there is one.
static void read_one(struct note *note) {
    struct tally tally;
    for (size_t i = 0; i < note->tokens.count && !note->record->count && !note->one; i++) {
        if (note->taken[i] != TAKEN_NOT || !count_one_at(note, i, &tally) ||
            !note_free(note, i, i + tally.taken))
            continue;
        note->one = true;
        note_reading(note, i, i + tally.taken, "count", "one is said");
    }
}

// Where nobody counted.
static void read_two_by_name(struct note *note) {
    size_t end = count_two_by_name(note);
    for (size_t i = 0; i < note->record->flaw_count; i++) // "only the salt"
        if (text_same(note->record->flaws[i].kind->rule.id, "missing-mate")) return;
    if (!end) return;
    note->record->count = 2;
    note_reading(note, 0, end, "count", "two by their name");
}

void read_counts(struct note *note) {
    bool given = note->record->count > 0;
    struct tally last = {0}, tally;
    for (size_t i = 0; i < note->tokens.count && !given;) {
        bool found =
            note->taken[i] == TAKEN_NOT &&
            (count_pair_at(note, i, &tally) || set_at(note, i, &tally) || pieces_at(note, i, &tally) ||
             of_them_at(note, i, &tally) || times_at(note, i, &tally) || count_head_at(note, i, &tally) ||
             rest_at(note, i, &tally) || so_many_at(note, i, &tally) || pairs_at(note, i, &tally) ||
             held_at(note, i, &tally) || loose_at(note, i, &tally) ||
             (!note->record->count && (count_told_at(note, i, &tally) || count_groups_at(note, i, &tally) ||
                                       count_goods_at(note, i, &tally))));
        bool again =
            note->taken[i] == TAKEN_NOT &&
            ((!found && recount_at(note, i, &last, &tally)) ||
             (!(found && is_total(note, i, &tally)) && count_again_at(note, i, note->record->count, &tally)));
        bool total = found && is_total(note, i, &tally);
        if ((!found && !again) || !note_free(note, i, i + tally.taken)) {
            i++;
            continue;
        }
        bool about;
        tally.taken += hedged(note, i, &tally, &about);
        if (about && !note->record->count) {
            keep_loose(note, i, i + tally.taken, tally.count);
        } else if (!about && (!note->record->count || again || total) &&
                   !count_is_in_box(note, i, i + tally.taken, tally.count)) {
            note->record->count = tally.count;
            last = tally;
            note_reading(note, i, i + tally.taken, "count", "number of pieces");
        }
        if (!count_is_share(note, i)) note_take(note, i, i + tally.taken, TAKEN_COUNT);
        i += tally.taken;
    }
    if (!given) read_one(note);
    if (!given && !note->record->count && !note->one) read_two_by_name(note);
}
