// SPDX-License-Identifier: MIT
// From a piece of a stream to a tree, and what the pieces of one stream have to remember. Room-internal.
#ifndef FORMAT_PIECE_H
#define FORMAT_PIECE_H

#include "format/csv.h"
#include "format/cut.h"

struct piece {
    const struct source *source;
    enum cut_kind kind;
    bool last; // ended by the end of the input
};

struct pieces {
    struct arena *own; // the stream's, for what outlives a record
    struct csv_row header;
    bool has_header;
    bool told;   // a record or a fault has been handed out
    bool listed; // JSON: the list has had an entry
    bool over;   // nothing more is to be read
};

// True when there was a record: its tree, or NULL when it was broken. False for a piece that holds none.
bool pieces_read(struct pieces *pieces, struct cutter *cutter, struct arena *arena, const struct piece *piece,
                 struct diags *diags, struct node **record);
// Instead of pieces_read(), for a record that is too large to be kept.
void pieces_skip(struct pieces *pieces, const struct cutter *cutter);
// Does the input end inside a list, and has nobody said so yet?
bool pieces_open(const struct pieces *pieces, const struct cutter *cutter);

#endif
