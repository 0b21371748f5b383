// SPDX-License-Identifier: MIT
// Is the thing that a word names there, or denied, compared with, or only pictured? Judged by the words
// around it.
#ifndef EVIDENCE_SENSE_H
#define EVIDENCE_SENSE_H

#include <stdbool.h>
#include <stddef.h>

// `from`, `to`: the words in `text`.
bool sense_is_meant(const char *text, size_t from, size_t to);
// Only whether they are denied or compared with: "no mercury", "asbestos free", "fat like a pillow".
bool sense_is_denied(const char *text, size_t from, size_t to);
// "Painting of a hunter with a rifle", where the note begins so; "asbestos catalog"; "next to the boiler".
bool sense_is_pictured(const char *text, size_t from, size_t to);
// By the word behind them, which begins at `at`: "gas lamp style sconce", "jockey print".
bool sense_is_else(const char *text, size_t at);
// "We kept our life jackets in it", "once held pills": goods that are in it no more, as far as is told.
bool sense_was_inside(const char *text, size_t from, size_t to);
// "The ridge down the front is just from the mold": what a thing was cast in, which left its line.
bool sense_is_casting(const char *text, size_t from, size_t to);
// "Feathers missing," at the end of its clause.
bool sense_is_gone(const char *text, size_t at);

#endif
