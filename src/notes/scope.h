// SPDX-License-Identifier: MIT
// What governs a word of a note: is it denied, excepted, past, in doubt, not looked at? Each phenomenon has a
// file of its own, which marks the tokens that it governs and nothing else; faults.c then reads all marks
// together. Private to the room. Owner: the arena of the note.
#ifndef NOTES_SCOPE_H
#define NOTES_SCOPE_H

#include "notes/note.h"

enum stance {
    STANCE_DENIED = 1,      // "no chips": denied outright
    STANCE_NONE_SEEN = 2,   // "can't see any chips": looked for
    STANCE_EXCEPT = 4,      // "perfect except for": there, whatever was denied before
    STANCE_LIMITED = 8,     // "hardly any": there, light
    STANCE_DOUBLE = 16,     // "not without its": there
    STANCE_PAST = 32,       // "used to smell", "no longer": not so now
    STANCE_DOUBT = 64,      // "maybe", "looks like": there as far as the seller can tell
    STANCE_UNKNOWN = 128,   // "didn't check for": not looked at
    STANCE_WITHDRAWN = 256, // "no wait": said and taken back
    STANCE_PACKING = 512,   // said of the box
    STANCE_OTHER = 1024,    // said of another thing: "like the ones my aunt had"
    STANCE_PLANNED = 2048,  // "was going to have it refinished": not done
    STANCE_HEARD = 4096,    // "he said", "hopefully": no finding of the seller
    STANCE_BOUNDED = 8192   // "no major", "no other", "two aren't": denied, but not as a whole
};

enum phenomenon {
    SCOPE_DENIAL = 1,
    SCOPE_EXCEPTION = 2,
    SCOPE_LIMITED = 4,
    SCOPE_PAST = 8,
    SCOPE_DOUBT = 16,
    SCOPE_UNKNOWN = 32,
    SCOPE_CORRECTION = 64,
    SCOPE_PACKING = 128,
    SCOPE_INTENDED = 256,
    SCOPE_HEARD = 512
};

struct scope {
    struct note *note;
    uint16_t *stance; // one a token: bits of enum stance
    size_t *cue;      // one a token: the token whose words govern it last, or SIZE_MAX
    bool *fault;      // one a token: a word of some flaw's `said`
    bool *positive; // one a token: opens a new statement ("a", "some", "slight"), and so ends what was denied
};

struct cue {
    const char *phrase; // small letters, one space between words
    int kind;           // meaning is the file's own
};

// The cue whose phrase stands at token `i`, the longest one; NULL if none. `cues` are sorted by phrase
// (bytes) and `count` long; `*taken` is how many tokens.
const struct cue *cue_search(const struct scope *scope, const struct cue *cues, size_t count, size_t i,
                             size_t *taken);
static inline const struct cue *cue_at(const struct scope *scope, const struct cue *cues, size_t count,
                                       size_t i, size_t *taken) {
    *taken = 0;
    if (!token_may_open(&scope->note->tokens, i, cues, count, sizeof *cues)) return NULL;
    return cue_search(scope, cues, count, i, taken);
}
// Marks [from, to).
void scope_mark(struct scope *scope, size_t from, size_t to, enum stance stance, size_t cue);
// First token at or after `i` that ends a statement: a full stop, a line end, a clause sign, "but" and its
// like.
size_t scope_clause_end(const struct scope *scope, size_t i);
// First token at or after `i` that ends a sentence; the start of the one that `i` stands in.
size_t scope_sentence_end(const struct scope *scope, size_t i);
size_t scope_sentence_start(const struct scope *scope, size_t i);
size_t scope_clause_start(const struct scope *scope, size_t i);

// denial.c: does a statement with a verb of its own begin at token `i`, "the handle has been"?
size_t scope_nobody(struct scope *scope, size_t i); // nobody.c: "nobody marked a route on it" at token `i`
bool scope_states_own(const struct tokens *tokens, size_t i);
void scope_denial(struct scope *scope);
void scope_answered(struct scope *scope);    // answered.c: of the denials, those behind what they deny
void scope_presupposed(struct scope *scope); // presupposed.c: takes back what was neither denied nor unknown
void scope_exception(struct scope *scope);
// Is "one", or another number, before the "of" at token `i` the subject of a verb of its own, and no
// exception?
bool scope_opens_one(const struct scope *scope, size_t i);
void scope_limited(struct scope *scope);
void scope_past(struct scope *scope);
// The same file: is it left for all that is said in [from, to) of taking it off at `verb`?
bool scope_left(const struct scope *scope, size_t from, size_t verb, size_t to);
void scope_removed(struct scope *scope);   // removed.c: of what is past, what was taken off
void scope_other_one(struct scope *scope); // other_one.c: of another of its sort, or meant so
bool scope_past_is_own(const struct scope *scope, size_t from, size_t to); // it says what is so now
void scope_doubt(struct scope *scope);
void scope_unknown(struct scope *scope);
void scope_correction(struct scope *scope);
void scope_seeming(struct scope *scope); // seeming.c, with it: what turned out to be something else
void scope_packing(struct scope *scope);
void scope_intended(struct scope *scope);
void scope_heard(struct scope *scope);
void scope_topic(struct scope *scope);  // with what is intended
void scope_spared(struct scope *scope); // the same: words for a lack that is none of this thing

// unlooked.c: how many tokens from `i` say that one has not looked at what follows, or does not know it, or
// (left) that what stands before was not looked at; 0 if none.
size_t scope_unlooked(const struct tokens *tokens, size_t i);
size_t scope_unsure(const struct tokens *tokens, size_t i, size_t *head); // `*head` without "if", "how well"
size_t scope_left_unlooked(const struct tokens *tokens, size_t i);

// shrug.c: where what is not known ends, `to` at the latest; and the guess before "haven't looked" at `i`.
size_t scope_shrug_end(const struct scope *scope, size_t i, size_t to);
void scope_shrug_back(struct scope *scope, size_t i);
size_t scope_shrug(struct scope *scope, size_t i); // "…, can't tell": how many tokens

// All of them but those in `off` (bits of enum phenomenon).
void scope_read(struct scope *scope, unsigned off);

// repaired.c: the words for a side, a place or a part that are all that is said from token `i` on, "the right
// one"; `*from` and their end, 0 if none.
size_t repair_words(const struct note *note, const bool *fault, size_t i, size_t *from);

// packing.c: is the box at token `box` one of wood, metal or leather, by what an earlier or the same word
// says?
bool packing_is_made(const struct note *note, size_t box);

#endif
