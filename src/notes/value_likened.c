// SPDX-License-Identifier: MIT
// Looks that no list has, told by a likeness or by a word for looks: "butter coloured", "the colour of weak
// tea", "a coaching scene", "50 inches square".
#include <string.h>

#include "notes/any.h"
#include "notes/chunk.h"
#include "notes/standing.h"
#include "notes/standing_parts.h"
#include "notes/value_keep.h"
#include "say/say.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_word(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    return t->kind == TOKEN_WORD && note->taken[i] == TAKEN_NOT && !note->fault_word[i] &&
           !chunk_breaks(note, i);
}

static void keep(struct note *note, const char *name, size_t from, size_t to, const char *form, size_t end) {
    const char *of = NULL;
    if (standing_of(note, from, end, &of) == STANDING_NONE) of = NULL;
    const char *words = utf8_fold(note->arena, note_words(note, from, to));
    value_keep(note, name, arena_format(note->arena, "%s%s", words, form), of, from, to,
               value_sure(note, from, end));
    note_take(note, from, end, TAKEN_VALUE);
}

// "Butter coloured jug", "straw-coloured": whatever it is the color of.
static void read_colored(struct note *note, size_t i) {
    static const char *const vain[] = {
        "hand",   "well",     "nicely",  "richly",    "brightly", "highly", "lightly", "light",
        "dark",   "same",     "self",    "two",       "three",    "single", "one",     "many",
        "multi",  "fast",     "later",   "once",      "not",      "was",    "full",    "original",
        "deep",   "strongly", "softly",  "different", "bright",   "big",    "large",   "small",
        "little", "natural",  "various", "all",       "odd",      "plain",  "some"};
    const struct tokens *tokens = &note->tokens;
    if (i == 0) return;
    size_t word = token_is(tokens, i - 1, "-") && i > 1 ? i - 2 : i - 1;
    if (!is_word(note, word) || tokens->at[word].stop != STOP_NONE ||
        token_among(tokens, word, vain, COUNT(vain)))
        return;
    struct word_entry entry; // what has a name of its own is read by it
    if (word_at(note, word, (1u << USE_COLOR) | (1u << USE_MATERIAL), &entry)) return;
    size_t n = strlen(tokens->at[word].fold);
    if (n > 4 && !strcmp(tokens->at[word].fold + n - 2, "ly")) return;
    keep(note, "color", word, word + 1, "-colored", i + 1);
}

// "The colour of weak tea", but "the colour of the glaze".
static void read_color_of(struct note *note, size_t i) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    size_t from = i + 2;
    if (ANY(tokens, from, "the", "its", "this", "it", "these")) return;
    while (ANY(tokens, from, "a", "an", "old", "good", "some")) from++;
    size_t to = from;
    while (to < tokens->count && to < from + WORDS_MOST && tokens->at[to].kind == TOKEN_WORD &&
           note->taken[to] == TAKEN_NOT && !chunk_breaks(note, to))
        to++;
    if (i > 1 && ANY(tokens, i - 2, "gone", "turned", "stained", "went", "faded", "now", "going"))
        return; // a fault
    struct word_entry entry;
    if (to == from || !(standing_is_stop(note, to) ||
                        ANY(tokens, to, "with", "and", "but", "inside", "outside", "in", "on")))
        return;
    if (word_at(note, to - 1, 1u << USE_PART, &entry) == 1 && ANY(tokens, to, "is", "has", "was")) return;
    size_t lead = i > 0 && token_is(tokens, i - 1, "the") ? i - 1 : i;
    const char *words = utf8_fold(note->arena, note_words(note, from, to));
    const char *of = ANY(tokens, to, "inside") ? "inside" : NULL;
    value_keep(note, "color", arena_format(note->arena, "%s-colored", words), of, from, to,
               value_sure(note, i, to));
    note_take(note, lead, to, TAKEN_VALUE);
}

// "A coaching scene", "scenes of village life": what the thing shows.
static void read_scene(struct note *note, size_t i) {
    static const char *const vain[] = {"the",       "a",      "same",  "whole",  "painted", "printed",
                                       "different", "each",   "every", "other",  "raised",  "molded",
                                       "moulded",   "etched", "good",  "lovely", "pretty",  "nice",
                                       "carved",    "little", "small"};
    const struct tokens *tokens = &note->tokens;
    size_t from = i;
    while (from > 0 && i - from < 2 && is_word(note, from - 1) &&
           !token_among(tokens, from - 1, vain, COUNT(vain)))
        from--;
    if (from == i) return;
    bool led = from == 0 || standing_is_stop(note, from - 1) ||
               token_among(tokens, from - 1, vain, COUNT(vain)) ||
               ANY(tokens, from - 1, "with", "of", "an", "showing") || note->taken[from - 1] == TAKEN_VALUE ||
               note->taken[from - 1] == TAKEN_TYPE;
    if (!led) return;
    const char *words = utf8_fold(note->arena, note_words(note, from, i));
    value_keep(note, "theme", arena_format(note->arena, "%s scene", words), NULL, from, i + 1,
               value_sure(note, from, i + 1));
    note_take(note, from, i + 1, TAKEN_VALUE);
}

// "White lattice pattern", "brass chain pattern", "jug willow pattern": no word of the pattern's name.
static bool is_said_of_looks(const struct note *note, size_t i) {
    struct word_entry entry;
    struct noun_found noun;
    return word_at(note, i, (1u << USE_COLOR) | (1u << USE_MATERIAL) | (1u << USE_FINISH), &entry) > 0 ||
           (noun_at(note, i, &noun) && noun.thing) ||
           ANY(&note->tokens, i, "raised", "moulded", "molded", "carved", "woven", "allover", "repeating",
               "faint", "bold", "deep", "simple", "fine", "classic", "traditional", "typical", "lots", "has",
               "think", "called", "say", "stamped", "cut", "pressed", "cast", "engraved", "embroidered",
               "stitched", "knitted", "hand", "some", "sort", "kind");
}

// "Fiddle pattern", "king's pattern", "flying geese pattern": how the trade calls it, whatever the words.
static void read_patterned(struct note *note, size_t i) {
    static const char *const vain[] = {
        "the",  "a",     "same",   "no",      "nice", "whole",   "printed",  "different",
        "each", "every", "other",  "raised",  "this", "etched",  "good",     "lovely",
        "its",  "own",   "usual",  "repeat",  "odd",  "weaving", "knitting", "sewing",
        "old",  "in",    "pretty", "overall", "test", "paper",   "small",    "large"};
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || !is_word(note, i - 1) || token_among(tokens, i - 1, vain, COUNT(vain)) ||
        !(standing_is_stop(note, i + 1) || ANY(tokens, i + 1, "with", "in", "on", "and") ||
          standing_is_type(note, i + 1)))
        return;
    size_t from = i - 1;
    while (from > 0 && i - from < 3 && is_word(note, from - 1) && tokens->at[from - 1].stop == STOP_NONE &&
           !token_among(tokens, from - 1, vain, COUNT(vain)) && !is_said_of_looks(note, from - 1))
        from--;
    keep(note, "pattern", from, i, "", i + 1);
}

// "50 inches square": what it measures and its shape.
static void read_square(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || note->taken[i] != TAKEN_MEASURE || note->taken[i - 1] != TAKEN_MEASURE) return;
    if (ANY(tokens, i + 1, "inch", "inches", "in", "feet", "ft", "foot", "cm", "yards", "on", "at")) return;
    value_keep(note, "shape", "square", NULL, i, i + 1, SURE_STATED);
}

// "Vesta case, white metal": an alloy; but a white metal bed is painted.
static void read_white_metal(struct note *note, size_t i) {
    static const char *const families[] = {"jewelry", "metalware",      "other",
                                           "decor",   "clocks-watches", "music"};
    const struct family *family = note->record->family;
    bool may = false;
    for (size_t k = 0; family && k < COUNT(families); k++) may |= !strcmp(family->rule.id, families[k]);
    if (!may || !token_is(&note->tokens, i + 1, "metal") || note->tokens.at[i].stop != STOP_NONE ||
        !note_free(note, i, i + 2) || note->fault_word[i + 1] ||
        (i > 1 && ANY(&note->tokens, i - 1, "the") && ANY(&note->tokens, i - 2, "to"))) // worn to it
        return;
    keep(note, "material", i, i + 2, "", i + 2);
}

// "Basket of flowers", "wreath of ivy": all of it is shown.
static void read_group_of(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry shown;
    if (!token_is(tokens, i + 1, "of") || tokens->at[i].stop != STOP_NONE || note->fault_word[i]) return;
    bool led = i == 0 || tokens->at[i - 1].stop != STOP_NONE ||
               ANY(tokens, i - 1, "a", "an", "with", "painted", "carved", "showing");
    size_t n = led ? word_at(note, i + 2, 1u << USE_THEME, &shown) : 0;
    if (!n || !note_free(note, i, i + 2 + n) || !is_depicted(note, i + 2, i + 2 + n)) return;
    const char *words = utf8_fold(note->arena, note_words(note, i, i + 2 + n));
    value_keep(note, "theme", words, NULL, i, i + 2 + n, value_sure(note, i, i + 2 + n));
    note_take(note, i, i + 2 + n, TAKEN_VALUE);
}

// "To look like", "like", "in imitation of": how many tokens say so at `i`.
static size_t like_at(const struct tokens *tokens, size_t i) {
    static const char *const likes[] = {
        "to look just like", "to look like",    "to resemble", "to imitate", "to pass for",    "like",
        "up like",           "in imitation of", "to simulate", "to mimic",   "up to look like"};
    return token_longest(tokens, i, likes, COUNT(likes));
}

// "Like crocodile" of a finish is no fault where it is made so.
static void drop_hits(struct note *note, size_t from, size_t to) {
    size_t kept = 0;
    for (size_t i = 0; i < note->hits.count; i++)
        if (note->hits.at[i].to <= from || note->hits.at[i].from >= to)
            note->hits.at[kept++] = note->hits.at[i];
    note->hits.count = kept;
}

// "Guide to orchids", "book about a lighthouse", "textbook on soil": what a book tells of, whatever the
// words. A figure, a thing of the seller's or what it is printed on is none: "about 90 pages", "on its side",
// "on cloth".
static void read_subject(struct note *note, size_t i) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    const struct family *family = note->record->family;
    struct word_entry entry;
    bool to_it =
        token_is(tokens, i + 1, "to") && ANY(tokens, i, "guide", "guides", "handbook", "introduction", "key",
                                             "companion", "guidebook", "primer");
    bool on_it = token_is(tokens, i + 1, "on") && !note->fault_word[i];
    bool game = family && !strcmp(family->rule.id, "games-puzzles") && token_is(tokens, i + 1, "about");
    if (!family || (strcmp(family->rule.id, "books") != 0 && !game) || tokens->at[i].stop != STOP_NONE ||
        !(to_it || on_it || token_is(tokens, i + 1, "about")))
        return;
    size_t from = i + 2;
    while (ANY(tokens, from, "a", "an", "some", "old", "two", "three")) from++;
    if (ANY(tokens, from, "the", "my", "our", "its", "it", "this", "that", "them", "half", "all", "use",
            "top", "sale", "tape", "hand", "offer", "one", "both", "each", "size", "display", "loan"))
        return;
    size_t to = from;
    while (to < tokens->count && to < from + WORDS_MOST && tokens->at[to].kind == TOKEN_WORD &&
           note->taken[to] == TAKEN_NOT && !chunk_breaks(note, to) &&
           !(tokens->at[to].stop == STOP_NONE && ANY(tokens, to, "is", "was", "has", "soft", "hard", "that")))
        to++;
    while (to > from && ANY(tokens, to - 1, "and", "or", "&")) to--;
    if (to == from || (on_it && word_at(note, from, 1u << USE_MATERIAL, &entry)) ||
        word_at(note, from, 1u << USE_PLACE, &entry))
        return;
    const char *words = utf8_fold(note->arena, note_words(note, from, to));
    value_keep(note, "theme", say_singular(note->arena, words), NULL, from, to, value_sure(note, from, to));
    note_take(note, i + 1, to, TAKEN_VALUE);
    drop_hits(note, from, to); // a guide to molds has none
    for (size_t k = from; k < to; k++) note->fault_word[k] = FAULT_WORD_NOT;
}

// "Vinyl made to look like lizard", "plaster painted like bronze": it is of the first, and an imitation of
// the second.
static void read_made_like(struct note *note, size_t i) {
    static const char *const skins[] = {"lizard",  "crocodile", "croc",  "alligator", "snakeskin", "snake",
                                        "ostrich", "wood",      "stone", "wicker",    "basketwork"};
    const struct tokens *tokens = &note->tokens;
    struct word_entry stuff;
    size_t n = tokens->at[i].stop == STOP_NONE ? like_at(tokens, i + 1) : 0, from = i + 1 + n;
    if (!n) return;
    while (ANY(tokens, from, "a", "an", "the", "real", "old", "polished")) from++;
    size_t size = word_at(note, from, 1u << USE_MATERIAL, &stuff);
    if (!size && token_among(tokens, from, skins, COUNT(skins))) size = 1;
    if (!size || !note_free(note, from, from + size)) return;
    size_t before = i > 0 && tokens->at[i - 1].stop == STOP_NONE && note_free(note, i - 1, i)
                        ? word_at(note, i - 1, 1u << USE_MATERIAL, &stuff)
                        : 0;
    size_t behind = i - before; // of what it is said
    if (behind > 0 && ANY(tokens, behind - 1, "is", "are")) behind--;
    const char *of = behind > 0 ? standing_part_before(note, behind) : NULL;
    if (before == 1) {
        value_keep(note, "material", stuff.print, of, i - 1, i, value_sure(note, i - 1, i));
        note_take(note, i - 1, i, TAKEN_VALUE);
    }
    const char *words = utf8_fold(note->arena, note_words(note, from, from + size));
    value_keep(note, "finish", arena_format(note->arena, "imitation %s", words), of, from, from + size,
               SURE_STATED);
    note_take(note, i, from + size, TAKEN_VALUE);
    drop_hits(note, i, from + size);
}

// "Brooch set with marcasites", "studded with small garnets".
static void read_set_with(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry stuff;
    if (!token_is(tokens, i + 1, "with") || i == 0 || tokens->at[i].stop != STOP_NONE) return;
    size_t from = i + 2;
    while (
        ANY(tokens, from, "a", "an", "small", "tiny", "large", "three", "two", "four", "five", "six", "one"))
        from++;
    size_t n = word_at(note, from, 1u << USE_MATERIAL, &stuff);
    const char *one = from < tokens->count ? tokens->at[from].one : NULL;
    if (!n && one && note->book && wordbook_find(note->book, one, strlen(one), &stuff) &&
        stuff.uses & (1u << USE_MATERIAL))
        n = 1; // "garnets"
    if (!n || note->fault_word[from] || !note_free(note, i, from + n)) return;
    value_keep(note, "material", stuff.print, standing_part_before(note, i), from, from + n,
               value_sure(note, i, from + n));
    note_take(note, i, from + n, TAKEN_VALUE);
}

void value_read_likened(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (note->taken[i] == TAKEN_TYPE) read_subject(note, i);
        if (ANY(tokens, i, "made", "painted", "grained", "printed", "finished", "done", "moulded", "molded",
                "embossed", "dressed", "stamped", "pressed"))
            read_made_like(note, i);
        if (ANY(tokens, i, "square")) read_square(note, i);
        if (note->taken[i] != TAKEN_NOT) continue;
        if (ANY(tokens, i, "set", "studded", "inset")) read_set_with(note, i);
        if (ANY(tokens, i, "white", "yellow")) read_white_metal(note, i);
        if (ANY(tokens, i, "colored", "coloured")) read_colored(note, i);
        if (ANY(tokens, i, "color", "colour", "colors", "colours") && token_is(tokens, i + 1, "of"))
            read_color_of(note, i);
        if (ANY(tokens, i, "scene", "scenes")) read_scene(note, i);
        if (ANY(tokens, i, "pattern")) read_patterned(note, i);
        if (ANY(tokens, i, "basket", "bowl", "vase", "bunch", "spray", "sheaf", "wreath", "garland",
                "bouquet", "urn", "cornucopia", "swag", "pot"))
            read_group_of(note, i);
    }
}
