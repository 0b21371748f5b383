// SPDX-License-Identifier: MIT
// From a text to a number: filled once, then only asked, by any number of readers at a time. Most texts that
// are asked for are not there, and one look at a hash tells. Owner: the arena given; the texts stay the
// caller's.
#ifndef TEXT_INDEX_H
#define TEXT_INDEX_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "text/arena.h"

struct index;

enum { INDEX_NONE = INT32_MAX };

// Room for `most` texts.
struct index *index_new(struct arena *arena, size_t most);
// Keeps the number of a text that is there already.
void index_add(struct index *index, const char *text, size_t size, size_t number);
// INDEX_NONE when it is not there, and of an index that is NULL.
uint32_t index_find(const struct index *index, const char *text, size_t size);

// The same in two steps, where one text is asked of several.
uint64_t index_hash(const char *text, size_t size);
uint32_t index_find_hash(const struct index *index, uint64_t hash, const char *text, size_t size);

#endif
