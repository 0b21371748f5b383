// SPDX-License-Identifier: MIT
// "Pair of lamps" are two, "pair of pliers" is one thing, and a pair of a thing's parts counts none.
#include <string.h>

#include "notes/any.h"
#include "notes/counts.h"
#include "notes/dimension.h"
#include "notes/number.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { PHRASE_MOST = 6 };

bool count_is_first_sentence(const struct note *note, size_t i) {
    return note_clause_from(note, i, STOP_SENTENCE) == 0;
}

static bool is_one_thing(const char *one) {
    static const char *const pairs[] = {
        "trouser",   "scissor",  "plier",   "tong",       "shear",   "spectacle", "jean",       "pant",
        "binocular", "tweezer",  "snip",    "clipper",    "glass",   "glasses",   "trousers",   "scissors",
        "pliers",    "tongs",    "shears",  "spectacles", "jeans",   "pants",     "binoculars", "tweezers",
        "snips",     "shorts",   "overall", "overalls",   "pincer",  "pincers",   "bellows",    "compasses",
        "dividers",  "calipers", "goggle",  "goggles",    "nippers", "forceps",   "eyeglasses"};
    for (size_t k = 0; k < sizeof pairs / sizeof *pairs; k++)
        if (text_same(one, pairs[k])) return true;
    return false;
}

// "Pair of cut glass vases", "pair of wine glasses": two things, and no spectacles.
static bool is_stuff(const struct note *note, size_t i, size_t noun) {
    const struct tokens *tokens = &note->tokens;
    static const char *const worn[] = {"opera", "field", "reading", "eye", "sun", "old", "of", "safety"};
    if (token_is(tokens, i, "glass")) return noun > i;
    return ANY(tokens, i, "glasses") && i > 0 && !token_among(tokens, i - 1, worn, COUNT(worn));
}

// Is it what the thing is called?
static bool names_type(const struct note *note, size_t i) {
    const char *type = note->record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    return type && text_same(head ? head + 1 : type, note->tokens.at[i].one);
}

bool count_is_of_other(const struct note *note, size_t i, size_t noun) {
    enum { OPENS_MOST = 5 };
    const struct tokens *tokens = &note->tokens;
    if (!noun || count_is_first_sentence(note, i)) return false;
    for (size_t k = 0; k < OPENS_MOST && k < i && tokens->at[k].stop < STOP_SENTENCE; k++) {
        struct noun_found found;
        if (!noun_at(note, k, &found) || !(found.thing || found.uses & (1u << USE_THING))) continue;
        if (ANY(tokens, found.to - 1, "box", "case", "bag", "tin", "crate", "drawer", "shelf")) continue;
        const struct token *head = &tokens->at[found.to - 1];
        return head->one == head->fold && !text_same(head->one, tokens->at[noun].one) &&
               !ANY(tokens, found.to - 1, "lot", "set", "collection", "bundle", "tableware", "glassware",
                    "china");
    }
    return false;
}

// "pair of lamps", "pr bookends", "a pair"; "pair of pliers" is one thing.
bool count_pair_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    int pairs = number_whole(tokens, i, &number);
    size_t at = i + number;
    if (!pairs && token_is(tokens, i, "a")) at = i + 1;
    if (ANY(tokens, at, "matched", "matching", "nice", "good", "old") && ANY(tokens, at + 1, "pair", "pr"))
        at++;
    if (!ANY(tokens, at, "pair", "pairs", "pr", "prs")) return false;
    size_t before = at > 0 && token_is(tokens, at - 1, "a") ? at - 1 : at;
    if (before && (ANY(tokens, before - 1, "missing", "lost", "minus", "lacks", "lacking", "wants") ||
                   (before > 1 && token_phrase(tokens, before - 2, "short of"))))
        return false; // "missing a pair of castors"
    if (before > 1 && ANY(tokens, before - 1, "of", "from") &&
        ANY(tokens, before - 2, "one", "half", "single", "odd", "left"))
        return false; // "one of a pair"
    if (ANY(tokens, at, "pairs", "prs") && !pairs) return false;
    size_t end = at + 1;
    if (token_is(tokens, end, ".") && tokens->at[end].stop == STOP_NONE) end++;
    bool of = token_is(tokens, end, "of");
    size_t noun = count_plural(note, end + (of ? 1 : 0));
    for (size_t k = end + (of ? 1 : 0), n = 0; n < 3 && k < tokens->count && tokens->at[k].stop == STOP_NONE;
         k++, n++)
        if (is_one_thing(tokens->at[k].one) && !is_stuff(note, k, noun) &&
            !ANY(tokens, k + 1, "cases", "boxes", "bags", "stands", "racks", "pouches", "holders", "hooks",
                 "rests", "presses", "frames", "clips")) // "pair of binocular cases"
            return false;
    if (noun && noun > 0 && token_phrase(tokens, noun - 1, "field glasses")) return false;
    struct part part;
    if (noun && i && ANY(tokens, i - 1, "and", "with", "plus", "&") && part_at(note, noun, &part))
        return false; // "desk with a shelf and a pair of doors"
    struct word_entry entry;
    bool later = !count_is_first_sentence(note, i) || (i && ANY(tokens, i - 1, "with", "and", "has", "&"));
    for (size_t k = end + 1; of && later && k < end + 4 && k < tokens->count; k++)
        if (word_at(note, k, 1u << USE_PART, &entry) && !names_type(note, k))
            return false;                                     // "Hamper. A pair of broken slats"
    if (of && count_is_of_other(note, i, noun)) return false; // "Desk. Pair of inkwells"
    bool alone = end >= tokens->count || tokens->at[end].stop != STOP_NONE;
    if (!noun && !of && !alone) return false;
    for (size_t k = 0; !noun && !of && k < i && k < PHRASE_MOST; k++)
        if (is_one_thing(tokens->at[k].one) && !token_is(tokens, k, "glass"))
            return false; // "Field glasses, pair"
    if (i &&
        !ANY(tokens, i - 1, "a", "one", "this", "is", "got", "have", "has", "of", "matched", "and", "the",
             "these", "as") &&
        tokens->at[i - 1].stop == STOP_NONE && !alone)
        return false;
    if (!count_is_first_sentence(note, i) && !alone && !tokens->at[i].starts) return false;
    *tally = (struct tally){2 * (pairs ? pairs : 1), end - i, noun ? tokens->at[noun].one : NULL, false};
    return true;
}

// "Ten 16 inch plates", "two 1950s lamps", behind the number: how many tokens of a size or an age; 0 for
// none.
size_t count_sized_by(const struct tokens *tokens, size_t i) {
    static const char *const units[] = {
        "inch", "in",     "oz",     "ounce", "rpm",   "volt", "watt",  "mm",      "cm",
        "foot", "ft",     "lb",     "pound", "quart", "qt",   "pint",  "gallon",  "cup",
        "ply",  "gram",   "gauge",  "amp",   "light", "hole", "yard",  "century", "v",
        "w",    "string", "drawer", "piece", "page",  "key",  "liter", "litre",   "ml"};
    if (i == 0 || i + 2 >= tokens->count || tokens->at[i].kind != TOKEN_FIGURE ||
        tokens->at[i].stop != STOP_NONE || tokens->at[i - 1].kind != TOKEN_WORD)
        return 0;
    const char *fold = tokens->at[i].fold;
    if (strlen(fold) == 5 && fold[4] == 's') return 1;
    size_t at = i + 1 + (token_is(tokens, i + 1, "-") ? 1 : 0);
    return token_among(tokens, at, units, COUNT(units)) && tokens->at[at].stop == STOP_NONE ? at + 1 - i : 0;
}

// The size of a puzzle or game by its pieces, once.
void count_keep_pieces(struct note *note, size_t i, size_t to, int count) {
    for (size_t k = 0; k < note->record->attribute_count; k++)
        if (text_same(note->record->attributes[k].name, "size")) return;
    struct value *value = note_attribute(note);
    value->name = "size";
    value->value = arena_format(note->arena, "%d pieces", count);
    value->span = note_span_of(note, i, to);
    note_reading(note, i, to, "size", "pieces of one game");
}

// "Board game. All 24 pieces are here": what is in one box, and no lot of games. Kept as its size, where none
// is told yet.
bool count_is_in_box(struct note *note, size_t i, size_t to, int count) {
    enum { PIECES_LEAST = 10 };
    const struct tokens *tokens = &note->tokens;
    bool boxed = false;
    for (size_t k = 0; k < i && k < PHRASE_MOST; k++) {
        if (number_may_be(tokens, k)) return false; // "two games"
        boxed |= ANY(tokens, k, "game", "jigsaw", "puzzle") && tokens->at[k].one == tokens->at[k].fold;
    }
    if (!boxed || count < PIECES_LEAST) return false;
    count_keep_pieces(note, i, to, count);
    return true;
}
