// SPDX-License-Identifier: MIT
// Messages about a text. All of a run are collected, put in order of place and printed in one form:
//   file:line:col: error: what is wrong [code]
//      41 |  the user's own line
//         |  ^^^ hint: a way out
// Owner: everything lives in the arena given to diags_start(). At most DIAGS_MOST are kept; the rest are
// counted.
#ifndef TEXT_DIAG_H
#define TEXT_DIAG_H

#include <stdbool.h>
#include <stddef.h>

#include "text/arena.h"
#include "text/buf.h"
#include "text/codes.h"
#include "text/source.h"

enum { DIAGS_MOST = 50 };

// What is shown of the user's text, worked out at once: the text may be gone when the message is printed.
struct excerpt {
    const char *name; // NULL: the program itself
    bool placed;      // false: the name alone, with no line
    size_t line, column;
    const char *text;     // the line, cut to a window where it is long
    size_t indent, width; // terminal columns before the caret, and of the caret
};

struct diag {
    enum code code;
    struct place at; // as given: valid only as long as its source
    struct excerpt shown;
    const char *message;
    const char *hint; // NULL when there is none
};

struct diags {
    struct arena *arena;
    struct diag *items;
    size_t count, room, dropped;
    int status; // highest exit class seen, from the code table: 0, 2, 3, 4 or 5
};

struct diags diags_start(struct arena *arena);
// `hint` may be NULL; it is copied.
void diags_add(struct diags *diags, enum code code, struct place at, const char *hint, const char *format,
               ...) TEXT_PRINTF(5, 6);
// Sorts by source name and place (stable), then prints. `color` wraps the level word in SGR codes.
void diags_print(struct diags *diags, struct buf *out, bool color);

#endif
