// SPDX-License-Identifier: MIT
// A paragraph in the words and the order that the disclosure itself has is read by that grammar, so that what
// was drafted reads back as what it was drafted from. Private to the room. Owner: the arena of the note.
#ifndef NOTES_PARAGRAPH_H
#define NOTES_PARAGRAPH_H

#include "item/wording.h"
#include "notes/note.h"
#include "text/buf.h"

enum { TOLD_MOST = 12 }; // of one sentence; the disclosure tells fewer

enum told_verb { TOLD_IS, TOLD_HAS, TOLD_WAS };

// What one sentence tells. Flaws are in its order.
struct told {
    struct arena *arena;
    const struct ruleset *rules;
    enum locale locale;
    const char *type; // first sentence of the note, or NULL
    // the subject
    const char *part;
    const char *side; // place of the part, of which a state is told
    int count, of;
    bool maybe, pieces; // pieces: `count` of them, and no total was said
    struct item_flaw flaws[TOLD_MOST];
    size_t flaw_count;
    struct item_clear clear[TOLD_MOST];
    size_t clear_count;
    bool unsized; // "size or degree not stated: …"
    const char *unchecked[TOLD_MOST];
    size_t unchecked_count;
};

// predicate.c: "is loose, has a crack near the tip": all of `text`, which begins behind the verb.
bool predicate_read(struct told *told, const char *text, enum told_verb verb, bool placed);
// One fault without its place at the head of `text`; where it ends, NULL if there is none.
const char *predicate_one(struct told *told, const char *text, enum told_verb verb, struct item_flaw *flaw);
// The words `words` at the head of `text`, US or UK spelling: what comes behind them, NULL if they are not
// there.
const char *words_after(const char *text, const char *words);
// "two", "14": what comes behind it and its space.
const char *number_after(const char *text, int *number);
// The longest verb at the head of `text`, with the space behind it.
const char *verb_after(struct told *told, const char *text, enum told_verb *verb);
// What a place is in the record: "on the rim" is the rim.
const char *place_bare(struct told *told, const char *place);
// Is it put as the disclosure puts a place?
bool place_is_ours(struct told *told, const char *place);
// Where the next sign of a list is: its start, or NULL; `*behind` is what comes after it.
const char *list_sign(const char *text, const char **behind);

// " (light)" and a size behind a state or an absence: where they end.
const char *degree_behind(struct told *told, const char *rest, struct item_flaw *flaw);

// sought.c: "no chips or cracks seen on the rim", "not checked for …". False where it is no such sentence.
bool sought_read(struct told *told, const char *text);

// absence.c: "the lid and two keys are missing".
bool absence_read(struct told *told, const char *text);

struct paragraph {
    struct told *sentences;
    struct note_span *spans;
    size_t count;
};

// The note's paragraph, if every sentence behind the first (the type) reads as one of ours; else empty. What
// it holds is then out of sight of the readers that follow, until paragraph_keep() puts its facts into the
// record.
struct paragraph paragraph_read(struct note *note);
void paragraph_keep(struct note *note, const struct paragraph *paragraph);

#endif
