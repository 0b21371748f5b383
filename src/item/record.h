// SPDX-License-Identifier: MIT
// The item record: what the seller says of one thing. Owner: the arena it was read into; texts are NFC and
// free of control characters. NULL or a count of 0 means that the record does not say.
#ifndef ITEM_RECORD_H
#define ITEM_RECORD_H

#include <stdbool.h>
#include <stddef.h>

#include "rules/ruleset.h"
#include "say/say.h"
#include "text/diag.h"

enum sure { SURE_STATED, SURE_LIKELY, SURE_GUESS };

// Half-open byte range of `notes`; none when `to` is 0.
struct note_span {
    size_t from, to;
};

struct value {
    const char *name; // attribute name; NULL elsewhere
    const char *value;
    enum sure sure;
    const char *of;      // the part it belongs to
    const char *because; // what it rests on
    struct note_span span;
    struct place at;
};

struct figure {
    double value;
    const struct unit *unit;
    double base; // mm, g or ml
    bool about;
};

struct item_flaw {
    const struct flaw *kind;
    const struct flaw *told; // its kind, with the words for what the notes call it (item/told.h)
    const char *where, *part, *photo;
    int count, of; // 0: not said
    bool has_size;
    struct figure size;
    enum severity severity;
    bool single;         // the notes say "one" of what is missing
    bool several;        // the notes have it in the plural and give no number
    bool lone;           // they have it in the singular, where its kind is mostly told in the plural
    bool of_part;        // the number that they give, or "one", counts the part and not the damage
    bool of_named;       // the notes have the number that there are before the part: "one of the three lugs"
    bool up_to;          // of several the size is that of the largest
    const char *share;   // "most", "some": how many of the pieces have it; NULL where the notes do not say so
    bool of_pieces;      // `of` counts the pieces of the record, and not its parts
    bool placed_part;    // the place is the part's: "two scrolls on the back"
    const char *with;    // "with a copper strip": what the part was mended with
    const char *link;    // "in the", "on a": the notes' own words before the place
    bool adjective_said; // they have the adjective of its kind as it stands
    bool unsaid; // the degree follows from what the notes say, and no word of them is one of that degree
    enum sure sure;
    struct note_span span;
    struct place at;
};

struct item_clear {
    const struct flaw *kind;
    const struct flaw *told; // its words as the notes deny it; NULL: the kind's own
    const char *where, *part;
    bool none_seen; // looked for and not seen; else denied outright
    struct note_span span;
    struct place at;
};

struct item_included {
    const char *what;
    int count;
    struct place at;
};

struct measurement {
    const char *dimension;
    struct figure figure;
    bool range; // `from` and `to` hold instead of the value
    double from, to;
    const char *of; // the part measured
    struct note_span span;
    struct place at;
};

struct mark {
    const char *text, *where;
    struct place at;
};

struct fit {
    const char *brand, *model;
    enum sure sure;
    struct note_span span;
    struct place at;
};

struct photo {
    const char *file, *shows;
};

struct present_listing {
    const char *title, *description, *price, *currency, *listed, *where;
};

// `year_because` where the years are those of an era that was named, and nothing else says them.
#define YEARS_OF_ERA "the name of an era alone"

struct record {
    const char *id, *notes;
    size_t notes_read; // bytes of the notes that were read, where they are too long to be read whole; else 0
    const char *notes_are; // "page", "table", "language": no note in English, and not read as one; else NULL
    struct value type;     // value NULL when unknown
    struct texts others;
    const struct family *family;
    struct value *attributes;
    size_t attribute_count;
    struct item_flaw *flaws;
    size_t flaw_count;
    struct item_clear *clear;
    size_t clear_count;
    struct texts unchecked; // flaw ids or areas in words
    struct item_included *includes;
    size_t include_count;
    int count; // pieces; 0: not said
    struct measurement *measurements;
    size_t measurement_count;
    struct mark *marks;
    size_t mark_count;
    struct fit *fits;
    size_t fit_count;
    int year_from, year_to; // 0: not said
    const char *year_because;
    bool has_listing;
    struct present_listing listing;
    struct photo *photos;
    size_t photo_count;
    const struct node *asides, *unread, *own; // carried through as they came
    const struct node *tree;                  // the record as it was read
    struct place at;
};

// Reads a record out of a tree. Every fault is reported with its place; false when one was found, and then
// the record is not to be drafted. `number` names records that have no id ("item-3").
bool record_read(struct arena *arena, const struct ruleset *rules, const struct node *tree,
                 enum locale locale, size_t number, struct record *record, struct diags *diags);

// The first attribute of that name that belongs to the whole thing and is stated; NULL when there is none.
const struct value *record_stated(const struct record *record, const char *name);

const char *sure_name(enum sure sure);
const char *severity_name(enum severity severity);

// Are its years those of an era that was named, and nothing else? They bear out nothing, least of all that
// name, and are not told.
bool record_years_are_era(const struct record *record);

#endif
