// SPDX-License-Identifier: MIT
// Reading single fields of a record, with messages. Private to item/.
#ifndef ITEM_FIELDS_H
#define ITEM_FIELDS_H

#include "item/record.h"

struct reader {
    struct arena *arena;
    const struct ruleset *rules;
    enum locale locale;
    struct diags *diags;
    const char *notes; // for checking spans
    bool fine;
};

struct field {
    const char *name;
    void (*read)(struct reader *reader, const struct node *node, void *to);
};

// Reads every member of `map` through the table (NULL-named end); an unknown key is a fault with a hint.
void fields_read(struct reader *r, const struct field *fields, const struct node *map, void *to);

void reader_fault(struct reader *r, enum code code, struct place at, const char *hint, const char *format,
                  ...) TEXT_PRINTF(5, 6);
// NFC text without control characters; NULL (with a message) when it is not text, or empty.
const char *read_text(struct reader *r, const struct node *node, const char *what);
// A whole number from `least` to a million; 0 with a message otherwise.
int read_whole(struct reader *r, const struct node *node, const char *what, int least);
bool read_number(struct reader *r, const struct node *node, const char *what, double *value);
bool read_yes_no(struct reader *r, const struct node *node, const char *what);
struct note_span read_span(struct reader *r, const struct node *node);
enum sure read_sure(struct reader *r, const struct node *node);
// A value with its unit: `{value, unit, mm|g|ml, about}` or one of mm, g, ml alone. `map` gives the place of
// messages.
bool read_figure(struct reader *r, const struct node *map, const char *what, struct figure *figure);
const struct flaw *read_flaw_id(struct reader *r, const struct node *node);
// One value or a list of them: calls `each` with the item and its number. A lone value stands for a list of
// one.
const struct node *read_item(const struct node *node, size_t index);
size_t read_items(const struct node *node);

#endif
