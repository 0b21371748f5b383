// SPDX-License-Identifier: MIT
// How bad a fault is, by the words that the notes have for it. Private to the room.
#ifndef NOTES_DEGREES_H
#define NOTES_DEGREES_H

#include "notes/token.h"
#include "rules/ruleset.h"

struct fault_reader;
struct fault_hit;
struct item_flaw;

// degrees.c
enum severity degree_of_hit(const struct fault_reader *reader, const struct fault_hit *hit);
enum severity degree_of_use(const struct fault_reader *reader, const struct fault_hit *hit);
// The same by what stands before the fault, or right behind it and apart by a comma.
enum severity degree_before(const struct fault_reader *reader, const struct fault_hit *hit);
enum severity degree_after(const struct fault_reader *reader, const struct fault_hit *hit);
// manner.c: by words that only strengthen: "very rusty", "scratched up pretty good".
bool degree_is_state(const struct fault_reader *reader, const struct fault_hit *hit); // "cracked", no noun
enum severity degree_of_manner(const struct fault_reader *reader, const struct fault_hit *hit);
// later.c: by a statement of its own behind it: "but it's tiny", "Nothing major."
enum severity degree_said_later(const struct fault_reader *reader, const struct fault_hit *hit);
// A statement of degree alone that begins at token `i`; `*end` behind it.
enum severity degree_of_statement(const struct fault_reader *reader, size_t i, size_t *end);
// overall.c: "All very minor."
void read_overall(struct fault_reader *reader);
// grades.c: by a length, by the words [from, to) of what it is compared with, by a number, and by a likeness.
enum severity degree_of_size(const struct flaw *kind, double mm);
enum severity degree_of_ruler(const struct fault_reader *reader, const struct flaw *kind, size_t from,
                              size_t to);
enum severity degree_of_count(const struct flaw *kind, int count);
enum severity degree_of_number(const struct flaw *kind, int count);
bool degree_goes_by_number(const struct flaw *kind);
enum severity degree_of_likeness(const struct flaw *kind, double mm);
// objects.c: the size in mm of what the fault is compared with ("fist sized"); 0 where it is with nothing.
double size_of_object(const struct fault_reader *reader, const struct fault_hit *hit);
// share.c: by how much of it is gone or left: "paint 90% gone".
enum severity degree_of_share(const struct fault_reader *reader, const struct fault_hit *hit);
// shared.c: by the list that it stands in: "light scratches and dents".
enum severity degree_shared(const struct fault_reader *reader, const struct fault_hit *hit);

// degree_words.c: the degree that the words at token `i` tell, before a fault or behind it or by what still
// works, and how many tokens they take.
enum severity degree_word(const struct fault_reader *reader, size_t i, size_t *n);
// "Doesn't go right through": the far end at token `i` is denied; then the kind's own scale tells.
bool degree_is_short(const struct tokens *tokens, size_t i);
enum severity degree_word_behind(const struct fault_reader *reader, size_t i, size_t *n);
enum severity degree_word_effect(const struct fault_reader *reader, size_t i, size_t *n);
enum severity degree_word_still(const struct fault_reader *reader, size_t i, size_t *n);
// degree_words.c: the degree of the one word `word`, `size` long, as it stands there.
enum severity degree_word_alone(const char *word, size_t size);
// degree_stems.c: of an adjective or adverb of degree at token `i`; of an adverb alone.
enum severity degree_stem(const struct tokens *tokens, size_t i);
enum severity degree_adverb(const struct tokens *tokens, size_t i);
// scales.c: by the words that the kind's rule has for the degrees of its scale; unknown where none stands
// beside.
enum severity degree_on_scale(const struct fault_reader *reader, const struct fault_hit *hit,
                              const struct flaw *kind);

// The same: by what is denied of it, "not dark", "hasn't gone through".
enum severity degree_short_of(const struct fault_reader *reader, const struct fault_hit *hit,
                              const struct flaw *kind);
enum severity degree_on_scale_in(const struct fault_reader *reader, const struct flaw *kind, size_t from,
                                 size_t to); // in a sentence behind that goes on about the fault
// Are the `n` tokens at `i` a word of the scale of the hit's first kind, and of which degree?
bool degree_tell_is(const struct fault_reader *reader, const struct fault_hit *hit, size_t i, size_t n,
                    enum severity *degree);
size_t degree_tell_at(const struct fault_reader *reader, const struct flaw *kind, size_t i);

// around.c: the tokens that speak of a fault, before it, behind it, and in the next sentence.
struct around {
    size_t from, to;
};
enum { AROUND_BEFORE, AROUND_BEHIND, AROUND_NEXT, AROUND_COUNT };
size_t degree_cut(const struct tokens *tokens, size_t from, size_t at); // "glued and has [a faint] hairline"
bool degree_leads(const struct fault_reader *r, size_t end); // "dented and badly [rusted]": to another
void degree_around(const struct fault_reader *reader, const struct fault_hit *hit, const struct flaw *kind,
                   struct around out[AROUND_COUNT]);
// noticed.c: by how it is noticed: "you have to look for it"; and that it is merely seen.
enum severity degree_of_notice(const struct fault_reader *reader, const struct around *span, bool before);
enum severity degree_of_sight(const struct fault_reader *reader, const struct around *span);
// effects.c: by what comes of it: "enough to clear the shed", "won't wash out".
enum severity degree_of_effect(const struct fault_reader *reader, const struct fault_hit *hit,
                               const struct flaw *kind, const struct around *span);
// degree_extent.c: by how far it reaches or how many there are; what "all over" amounts to for a kind,
// unknown where its scale does not say; do the `n` tokens at `i` tell that all of it is meant?
enum severity degree_of_extent(const struct fault_reader *reader, const struct flaw *kind,
                               const struct around *span);
enum severity degree_of_whole(const struct flaw *kind);
enum severity degree_of_tell(const struct flaw *kind, const char *word); // what one word of its scale says
bool degree_is_whole(const struct tokens *tokens, size_t i, size_t n);
// degree_use.c: by what it does to the use: "no longer shuts"; "so faint you can't read it", whatever else.
enum severity degree_of_failing(const struct fault_reader *reader, const struct flaw *kind,
                                const struct around *span);
enum severity degree_of_too_much(const struct fault_reader *reader, const struct fault_hit *hit);
bool degree_is_bound(const struct tokens *tokens, const struct around *span); // "unless you press hard"
enum severity degree_of_stopping(const struct fault_reader *reader, const struct fault_hit *hit);
bool degree_is_tied(const struct tokens *tokens, size_t i); // the same: "held on with string"
bool degree_is_easy(const struct tokens *tokens, size_t i); // "easy to bend back"
// degree_lengths.c: a length in words that nobody measured, in mm; 0 where none is told.
double degree_loose_length(const struct tokens *tokens, const struct around *span);
// weigh.c: the degree of a flaw of the record by all of these; and where it still does what it is for.
enum severity degree_still_good(const struct flaw *kind);

#endif
