// SPDX-License-Identifier: MIT
// Which column of a stock file is what: by the names that people give them, or as told. Owner: the arena.
#ifndef SHELF_COLUMNS_H
#define SHELF_COLUMNS_H

#include "shelf/cell.h"
#include "text/diag.h"

enum column {
    COLUMN_ID,
    COLUMN_TITLE,
    COLUMN_DESCRIPTION,
    COLUMN_LISTED,
    COLUMN_DAYS,
    COLUMN_VIEWS,
    COLUMN_PRICE,
    COLUMN_CATEGORY,
    COLUMN_PHOTOS,
    COLUMN_BRAND,
    COLUMN_MODEL,
    COLUMN_MATERIAL,
    COLUMN_COLOR,
    COLUMN_COUNT
};

struct columns {
    int at[COLUMN_COUNT]; // -1: there is none
    const char *why[COLUMN_COUNT];
    const char **headers; // as written, in UTF-8
    size_t count;
};

// `map` is "title=Header,id=Header" or NULL. False when id or title cannot be settled or the map names what
// is not there: told in `diags` at the header of `name`.
bool columns_find(struct arena *arena, const struct dialect *dialect, const struct sheet_row *header,
                  const char *map, const char *name, struct columns *columns, struct diags *diags);
const char *column_name(enum column column);
void columns_explain(struct buf *out, const struct dialect *dialect, const struct columns *columns);
// A message about a row.
void sheet_tell(struct diags *diags, enum code code, const char *name, const struct sheet_row *row,
                int column, const char *hint, const char *message);

#endif
