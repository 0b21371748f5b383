// SPDX-License-Identifier: MIT
// Which risky words a record's values hold, and whether its evidence allows them. Owner: the arena.
#ifndef EVIDENCE_CLAIMS_H
#define EVIDENCE_CLAIMS_H

#include "item/record.h"
#include "rules/scan.h"

struct claim_found {
    const struct claim *claim;
    const char *word; // as it stands in the record
    enum verdict verdict;
    const char *evidence; // the mark that allows it, or NULL
    const char *written;  // the word with its qualifier, as which it may be told, or NULL
    const char *shown_by; // the mark that calls for this wording, or NULL
    bool color;           // found only where the record has colors
    bool by_years;        // the evidence is years, and no mark
};

struct claims {
    struct claim_found *items;
    size_t count, room;
    bool slow; // a pattern ran into its step limit: the word counts as not allowed
};

// Looks through the type, the attributes (each before what it belongs to), what is included, parts and places
// of flaws. Marks are evidence: they are quoted, and of them only
// praise that no mark bears out is noted, for where no quotes stand.
struct claims *claims_weigh(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                            const struct record *record);
// The same for a text that is not of the record, before the record's evidence: a title that somebody wrote.
struct claims *claims_weigh_text(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                                 const struct record *record, const char *text);
// The text with each word that asks for a qualifier written with it: "fur collar" is a used fur collar.
const char *claims_qualify(struct arena *arena, const struct claims *claims, const char *text);
// The claim that keeps a text out of a title, or NULL when all its words may stand.
const struct claim_found *claims_bar(const struct claims *claims, const char *text);
// The text without the words that are barred: "sterling silver rim" is a rim. The text itself where none is;
// NULL where nothing is left.
const char *claims_cut(struct arena *arena, const struct claims *claims, const char *text);
// Does the flaw's own rule name this part, so that it is no claim?
bool claims_leave(const struct flaw *kind, const char *text);
const char *verdict_name(enum verdict verdict);

#endif
