// SPDX-License-Identifier: MIT
// How things are put in words: number, articles, lists, capitals, figures with units, US and UK spelling.
// Everything is deterministic and free of the system's locale. Results live in the arena given.
#ifndef SAY_SAY_H
#define SAY_SAY_H

#include <stdbool.h>
#include <stddef.h>

#include "text/arena.h"

enum locale { LOCALE_US, LOCALE_GB };

// --- number (plural.c, number.c) ---

// A plain noun for one thing of which only the family is known: "spare part", "furniture item"; of a family
// of several sorts ("cameras and optics") "household item". Owner: the arena.
const char *say_item_of(struct arena *arena, const char *family);

// Plural of an English noun phrase's head: "dinner plate" -> "dinner plates", "knife" -> "knives",
// "pair of pliers" -> "pairs of pliers" by its head, "cup and saucer" -> "cups and saucers". A phrase that is
// plural already
// ("string lights", "trousers") and stuff without a number ("glassware") stay.
const char *say_plural(struct arena *arena, const char *noun);
// Singular of the same, for folding. Idempotent.
const char *say_singular(struct arena *arena, const char *noun);
bool say_is_plural(const char *noun);
// Fold for comparing words of a search: case-folded, plural taken off, hyphens as they are. "Goblets" ->
// "goblet".
const char *say_stem(struct arena *arena, const char *word);
// "zero", "one" … "twelve", then digits with thousands separators ("1,200").
const char *say_number(struct arena *arena, long count);
// The same with a capital.
const char *say_number_title(struct arena *arena, long count);

// --- articles and lists (phrase.c, place.c) ---

// "a" or "an" by sound, from documented exceptions ("an hour", "a unicorn", "an 8", "an LP"). "an herb", as
// in the US.
const char *say_article(const char *phrase);
// "a", "a and b", "a, b, and c" (US) / "a, b and c" (GB). Items with commas of their own are kept apart by
// semicolons, and GB takes the last comma too where an item has an "and" of its own.
const char *say_list(struct arena *arena, const char *const *items, size_t count, enum locale locale);
// First letter up; a word with its capital inside ("pH") keeps its small start. Same pointer when nothing
// changes.
const char *say_sentence_case(struct arena *arena, const char *text);
// Place words as a phrase that ends "There is a stain …": "rim" -> "on the rim", "bottom" -> "on
// the bottom", "corner" -> "on the corner", "both sides" -> "on both sides", "middle" -> "in the middle",
// "end" -> "at the end", "outside" -> "on the outside", but "inside", "underneath" and "all over" stay; "near
// base" -> "near the base". Members of a list share their preposition: "on the rim and base", "inside and on
// the rim". No word is taken away or exchanged: only prepositions and articles are added, and the capital
// that starts a note goes. Empty -> "".
const char *say_place(struct arena *arena, const char *where);
// The same for a title, without articles: "on Rim", "Inside", "Near Base".
const char *say_place_title(struct arena *arena, const char *where);

// --- capitals (capitals.c) ---

// Title case: every word capital but the small ones ("on of in to and by for the at or a an x") that do
// not begin the phrase; words with a capital inside or digits stay as they are ("KR-9", "18V", "SLR"); a unit
// behind a figure takes its title form ("6.25 in", "36 mm", "12 Qt"). Hyphened words: both halves
// ("Ex-Library", "12-Piece"). A name or mark that must not be touched at all is not passed through here.
const char *say_title_case(struct arena *arena, const char *text);

// --- figures and units (units.c, figures.c) ---

enum unit_system { SYSTEM_US, SYSTEM_METRIC };
struct unit {
    // As records write it: "in", "cm", "oz", "lb", "g", "fl oz", "qt", "imperial qt", "ml", "l" …
    const char *name;
    // "mm", "g" or "ml": the base it converts to; NULL for V, W, A, Hz …, which are told as they are.
    const char *kind;
    double factor;     // base units in one of it; 1 without a kind
    const char *title; // in titles: "in", "Qt"
    const char *text;  // in sentences: "in", "qt"
    enum unit_system system;
};
// NULL when unknown. Takes the spellings people use: inch, inches, ", in., centimetres, lbs …; `fl oz`,
// `cup`, `pt`, `qt` and `gal` are US or imperial by locale unless they say which ("US pint", "imp gal"). `oz`
// is always a weight.
const struct unit *say_unit(const char *name, enum locale locale);
const struct unit *say_units(size_t *count);
// Shortest honest figure: at most 2 decimals, no trailing zeros: 6.25, 9, 0.13. What is less
// than 0.01 is told to its first digit: 0.004.
const char *say_decimal(struct arena *arena, double value);
// With a vulgar fraction where the value is a sixteenth as written with two decimals or more (0.13 and 0.125
// are 1/8, but 6.3 is not 6 5/16): "6 1/4", "1/8", else decimal.
const char *say_fraction(struct arena *arena, double value);
// "6 1/4 in (15.9 cm)", "15.9 cm (6 1/4 in)": the value in its own unit first, the other system in brackets,
// rounded as the table at the head of figures.c says. A unit without a kind, nothing and less than nothing
// have no brackets.
const char *say_both(struct arena *arena, double value, const struct unit *unit, enum locale locale);

// --- spelling (variants.c, from dict/us-gb.txt) ---

// The list of pairs "color colour",
// sorted by the US word. Immutable after load; owner: the arena. Lines that break the form are left out and
// told in `diags`; never NULL.
struct variants;
struct diags;
struct variants *variants_load(struct arena *arena, const char *name, const char *text, size_t size,
                               struct diags *diags);
// Every whole word of `text` in the locale's spelling, capitals kept. Same pointer when nothing changes or
// `variants` is NULL. A name or mark is not passed through here.
const char *say_spelling(struct arena *arena, const struct variants *variants, const char *text,
                         enum locale locale);

#endif
