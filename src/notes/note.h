// SPDX-License-Identifier: MIT
// One note being read: its tokens, what was understood of them, and why. Private to the room. Owner: the
// arena of the reading.
//
// Each reader (measures.c, counts.c, marks.c, asides.c, things.c, values.c …) walks the tokens once, takes
// those it understands, and adds to the record. A token is taken by one reader only, but for shared words;
// the order of readers in read.c settles who comes first. What nobody took is sorted into filler or `unread`
// at the end.
#ifndef NOTES_NOTE_H
#define NOTES_NOTE_H

#include "item/record.h"
#include "notes/phrases.h"
#include "notes/token.h"
#include "rules/ruleset.h"
#include "rules/scan.h"
#include "words/wordbook.h"

enum taken {
    TAKEN_NOT,
    TAKEN_FILLER, // says nothing about the thing: "the", "really", "I guess"
    TAKEN_TYPE,
    TAKEN_VALUE, // attribute
    TAKEN_MEASURE,
    TAKEN_COUNT,
    TAKEN_MARK,
    TAKEN_DATE,
    TAKEN_INCLUDES,
    TAKEN_FITS,
    TAKEN_ASIDE,
    TAKEN_FLAW,
    TAKEN_OPEN,  // stays unread: another language, or two claims that clash
    TAKEN_SCOPE, // a word that governs others: "no", "but", "maybe"
    TAKEN_PART   // a part or place word that a fact above names
};

// Why something is in the record: for explain and for the marked page.
struct reading {
    size_t from, to;     // bytes of the note
    const char *what;    // "type vase", "flaw chip, rim", "aside"
    const char *because; // rule or word list: "dict materials", "flaw chip", "number before a unit"
    const char *stopped; // for a fault word not taken: "denied by 'no'", "past", "about the box"; else NULL
};

// What stands at a token of a rule's words for a flaw.
enum fault_word {
    FAULT_WORD_NOT,
    FAULT_WORD,      // any flaw's word
    FAULT_WORD_SIZED // of a flaw that has a size of its own: damage, dirt, repair
};

struct noun_memo; // lookup.c

struct word_memo {
    bool asked;
    uint16_t lacks; // of how many tokens the words are that say what is missing, as lacking_said_before() has
                    // it, + 1
    uint32_t uses;  // of all phrases of the word book that begin at the token
};

struct note {
    struct arena *arena;
    const struct ruleset *rules;
    const struct phrases *phrases; // of the flaws of `rules`
    const struct wordbook *book;
    struct scanner *scanner;
    struct asked *asked; // as in struct note_reader
    enum locale locale;
    unsigned off; // as in struct note_reader
    struct tokens tokens;
    unsigned char *taken;      // enum taken, one a token
    struct noun_memo *nouns;   // what noun_at() found at each token; filled when first asked
    struct word_memo *words;   // the same of word_at()
    struct phrase_hits hits;   // every place where a flaw's words stand, in the order of the note
    unsigned char *fault_word; // enum fault_word, one a token
    struct record *record;
    bool one; // the seller says that there is one; the record has it when the faults are read
    struct reading *readings;
    size_t reading_count, reading_room;
    // rooms of the record's growing lists
    size_t attribute_room, flaw_room, clear_room, include_room, measurement_room, mark_room, fit_room,
        unchecked_room;
    struct note_span *asides, *unread;
    size_t aside_count, aside_room, unread_count, unread_room;
};

// A note cut into tokens, its flaw words looked up, nothing taken yet. `note` holds arena, rules, phrases,
// book, scanner, locale and record; `text` is NFC and valid UTF-8.
void note_start(struct note *note, const char *text, size_t size);
// Fills `hits` and `fault_word`; part of note_start().
void note_mark_fault_words(struct note *note);

// unstopped.c: signs without bytes where clauses begin that no stop parts; before anything else is made of
// the tokens.
void note_part_clauses(struct note *note);
// named_again.c: puts the part behind "another" that stands before it, as a word of no bytes.
void note_name_again(struct note *note);
// conversion.c: drops what says a figure again in another unit; of that nothing is unread.
void note_write_out(struct note *note); // shorthand.c: "repl. stopper", "chips x2"
void note_drop_conversions(struct note *note);
// confused.c: English words that stand for others which sound the same.
void note_mend_confused(struct note *note);
// slips.c: words one slip away from a word for goods are read as that; was any of these tokens?
void note_mend_slips(struct note *note);
// Token `i` is `word` from now on, in the singular `one`; both are kept.
void note_mend(struct note *note, size_t i, const char *word, const char *one, const char *because);
// The same of what is no slip.
void note_reword(struct note *note, size_t i, const char *word, const char *one);
// trials.c: "it leaked when I filled it" is "leaks".
void note_mend_trials(struct note *note);
bool note_slipped(const struct note *note, size_t from, size_t to);
bool note_guessed(const struct note *note, size_t from, size_t to); // one of those slips may be another word

void note_take(struct note *note, size_t from, size_t to, enum taken how); // tokens [from, to)
bool note_free(const struct note *note, size_t from, size_t to);           // is none of them taken?
struct note_span note_span_of(const struct note *note, size_t from, size_t to);
// The seller's own letters of tokens [from, to), line ends and runs of spaces as one space.
const char *note_words(const struct note *note, size_t from, size_t to);
// The same with each slip as it was meant: of what is no name and no writing.
const char *note_meant(const struct note *note, size_t from, size_t to);
// `what` and `because` are kept, not copied.
void note_reading(struct note *note, size_t from, size_t to, const char *what, const char *because);

// Where the clause, or the sentence, that holds token `i` begins, and the token after its end.
size_t note_clause_from(const struct note *note, size_t i, enum token_stop least);
size_t note_clause_to(const struct note *note, size_t i, enum token_stop least);

// Lists of the record grow through these; each returns the new entry, zeroed.
struct value *note_attribute(struct note *note);
struct item_flaw *note_flaw(struct note *note);
struct item_clear *note_clear(struct note *note);
struct item_included *note_included(struct note *note);
struct measurement *note_measurement(struct note *note);
struct mark *note_mark(struct note *note);
struct fit *note_fit(struct note *note);
void note_aside(struct note *note, size_t from, size_t to);
void note_unchecked(struct note *note, const char *what);

// The readers, in the order in which they come (read.c says why).
void read_writing(
    struct note *note); // marks.c: "marked X", "stamped X on the base", quoted text, signatures, labels
void read_owners(struct note *note);    // owners.c: names of people, which nobody after it sees
void read_persons(struct note *note);   // persons.c: who gave, owned or sells it, and where they live
void read_names_put(struct note *note); // names_put.c: that what was kept back is written on the thing
void read_arrivals(struct note *note);  // arrivals.c: with what and through whom it came
void read_asides(
    struct note *note); // asides.c: prices, where it was found, errands, praise of the shop, stories
void read_asides_beside(struct note *note); // asides_beside.c: the last of them
void read_dates(struct note *note); // dates.c: years, decades, eras -> attribute `age` and dates; "c. 1890"
void read_measures(struct note *note); // measures.c: figures with units, pairs and triples, ranges, "about"
void read_counts(struct note *note);   // counts.c: pieces of the lot, "set of 4", "3 of 4"
void read_names(struct note *note);    // names.c: makers, models, part numbers, what it fits
bool name_is_compound_part(const struct note *note, size_t i); // maker_marks.c: "Seatboard", a part
void read_told_maker(struct note *note);  // maker_marks.c: the maker that a mark is told to name
void read_maker_marks(struct note *note); // maker_marks.c: the maker's name where it was read; the same
void read_mark_firm(struct note *note);   // mark_alone.c: the firm that a mark names; part of read_names()
void read_thing(struct note *note);       // things.c: the type by grammar, its family, `others`
void read_type_whole(struct note *note);  // type_whole.c: what goods of a strand or a deck make
void read_credits(struct note *note);     // credits.c: author, artist, firm, once the thing is known
void read_model_named(struct note *note); // name_model.c: "Tamberlane Student", once the thing is known
void read_said_of(struct note *note);     // painted.c
void read_values(
    struct note *note); // values.c: color, material, technique, pattern, style, shape, finish, theme, size
struct mixed;
// mixed.c: the other goods of a lot of unlike ones, NULL where it is none; then, faults read, whose they are
const struct mixed *read_mixed(struct note *note);
void settle_mixed(struct note *note, const struct mixed *mixed);
void read_included(struct note *note); // included.c: what comes with it
// fault_readers.c: flaws, clear, unchecked, by readers that are called one after the other, from 0.
struct fault_reader;
extern const size_t fault_reader_count;
struct fault_reader *faults_begin(struct note *note);
void faults_read(struct fault_reader *r, size_t reader);

#endif
