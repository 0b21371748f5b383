// SPDX-License-Identifier: MIT
// Cuts an input into one record after another, so that a million records need the memory of one.
//
// YAML is cut at document markers (a line starting with "---" or "..." followed by space or end can be
// nothing else), NDJSON at line ends, a JSON array between its elements, CSV after each row (RFC 4180
// quoting), plain notes at lines of only "---". A fault in one record therefore never hides the next.
#ifndef FORMAT_STREAM_H
#define FORMAT_STREAM_H

#include <stdbool.h>
#include <stddef.h>

#include "format/tree.h"
#include "text/diag.h"

enum form { FORM_YAML, FORM_JSON, FORM_NDJSON, FORM_CSV, FORM_NOTES };

// By the ending of a file name (.yaml .yml .json .ndjson .csv .txt); false when it has none of them.
bool form_of_name(const char *name, enum form *form);
bool form_of_word(const char *word, enum form *form); // "yaml", "json", "ndjson", "csv", "txt"/"notes"

// Where bytes come from: returns bytes read, 0 at the end, (size_t)-1 when reading failed.
struct stream_source {
    const char *name;
    size_t (*read)(void *context, char *to, size_t room);
    void *context;
};

struct stream;

// Owner: the caller closes the stream. Its own buffer grows to the largest single record, at most
// LIMIT_RECORD_BYTES (a larger record is skipped with a message). NULL when memory ran out.
struct stream *stream_open(const struct stream_source *from, enum form form,
                           const struct arena_memory *memory);
void stream_close(struct stream *stream);

// The next record into `arena` (the tree, its source text and places all live there). True when there was
// one: `*record` is its tree, or NULL where it was too broken to read and `diags` says why. False at the end
// or when reading failed. FORM_NOTES gives a map with the one key `notes`. CSV gives a map by the header's
// paths (see format/csv.h).
bool stream_next(struct stream *stream, struct arena *arena, struct diags *diags, struct node **record);

// Is a next record whole in what was read already? False says nothing: it is to be asked for.
bool stream_at_hand(struct stream *stream);

#endif
