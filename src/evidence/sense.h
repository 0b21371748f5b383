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
// "Painting of a hunter with a rifle", where the note begins so; "asbestos catalog", "gas lamp style sconce".
bool sense_is_pictured(const char *text, size_t from, size_t to);

#endif
