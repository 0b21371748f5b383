// SPDX-License-Identifier: MIT
// Which bytes of a text are nobody's business: names of former owners, initials with a date, addresses,
// telephone, account and whole serial numbers, prescription words. Rules of shape and of cue words alone, so
// the same text always gives the same spans. Makers' names, patent, model and part numbers, bar codes, dates
// and sizes are evidence and are left alone. Owner: the arena.
#ifndef EVIDENCE_PRIVATE_H
#define EVIDENCE_PRIVATE_H

#include <stdbool.h>
#include <stddef.h>

#include "text/arena.h"

enum private_kind {
    PRIVATE_NAME,
    PRIVATE_INITIALS, // only with a date
    PRIVATE_ADDRESS,
    PRIVATE_TELEPHONE,
    PRIVATE_ACCOUNT,
    PRIVATE_PRESCRIPTION,
    PRIVATE_SERIAL,
    PRIVATE_EMAIL,
    PRIVATE_WEB,
    PRIVATE_PLATE,
    PRIVATE_KINDS
};

// Half-open byte range.
struct private_span {
    enum private_kind kind;
    size_t from, to;
};

struct private_spans {
    struct private_span *items; // in order of place, none overlapping
    size_t count, room;
};

// What is known of the place that a text stands in. May be added up.
enum private_place {
    PRIVATE_ANYWHERE = 0,
    PRIVATE_OWNERS = 1, // an owner put something on here: a bare name or undotted initials count too
    PRIVATE_MAKERS = 2, // names here are those of makers, authors and works
    PRIVATE_CODES = 4,  // numbers here are the product's own: only what a cue word calls private counts
    PRIVATE_MARK = 8    // words as they stand on the thing: "Mrs. X's Y" is the name of a product
};

struct private_spans private_find(struct arena *arena, const char *text, unsigned place);

// How a text is given without its private spans.
enum private_style {
    PRIVATE_DROP,   // as a mark: what is left of it
    PRIVATE_VALUE,  // as a value: dropped at its ends, named inside it ("letter from an owner to the mill")
    PRIVATE_PHRASE, // as prose: always named ("near an owner's name on the lid")
};

// The same pointer when nothing is private; NULL when nothing else is left. What comes back holds no private
// span. `spans` (may be NULL) is given what was found.
const char *private_redact(struct arena *arena, const char *text, unsigned place, enum private_style style,
                           struct private_spans *spans);
const char *private_kind_name(enum private_kind kind); // "telephone"
const char *private_phrase(enum private_kind kind);    // "a telephone number"
const char *private_reason(enum private_kind kind);    // "a person can be reached by it"

#endif
