// SPDX-License-Identifier: MIT
// What a loaded rule set holds. Owner: the rule set's arena. Immutable after loading; shared by every draft.
#ifndef RULES_MODEL_H
#define RULES_MODEL_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "format/tree.h"
#include "text/source.h"

enum severity { SEVERITY_UNKNOWN, SEVERITY_LIGHT, SEVERITY_MODERATE, SEVERITY_HEAVY, SEVERITY_COUNT };
enum flaw_class {
    CLASS_FUNCTION,
    CLASS_DAMAGE,
    CLASS_MISSING,
    CLASS_REPAIR,
    CLASS_DIRT,
    CLASS_ODOR,
    CLASS_STATUS,
    CLASS_FEATURE
};
enum grade { GRADE_A, GRADE_B, GRADE_C, GRADE_D };
enum flaw_form { FAULT, ABSENCE, STATE };
enum title_duty { DUTY_NO, DUTY_IF_HEAVY, DUTY_SHOULD, DUTY_MUST };
enum rollup { ROLLUP_NONE, ROLLUP_REPAIR, ROLLUP_DAMAGED, ROLLUP_INCOMPLETE, ROLLUP_COUNT };
enum degree_words { DEGREE_SIZE, DEGREE_AMOUNT, DEGREE_EXTENT, DEGREE_STRENGTH, DEGREE_STIFF };

struct family;

struct texts {
    const char **at;
    size_t count;
};

// Words and patterns that find a rule's subject in a text. Compiled when first needed, by whoever scans
// (rules/scan.h).
struct finder {
    struct texts said;     // plain words and phrases, case-blind, whole words
    struct texts unless;   // phrases that hold such a word and mean something else
    struct texts match;    // PCRE2 patterns beside them
    struct texts match_on; // words without which none of them can match; none: they are tried on every text
    size_t number;         // dense, for the scanner's table
};

struct rule {
    const char *id;
    const char *pack; // id of the pack it came from
    struct place at;
    struct texts hits, misses, gaps;
    const char *why, *source;
};

struct flaw {
    struct rule rule;
    enum flaw_class class;
    enum flaw_form form;
    enum title_duty duty;
    enum degree_words degree;
    enum grade cap[SEVERITY_COUNT]; // best reachable grade; unknown takes the moderate cap
    const char *scale[SEVERITY_COUNT];
    double
        most_mm[SEVERITY_COUNT]; // largest size of that degree, as the scale gives it; 0 where it gives none
    struct texts tells[SEVERITY_COUNT]; // words beside the fault in a note that place it on the scale
    const char *print, *means;
    // FAULT: "a chip", "chips", "chipped"; a mass noun takes no article and no count.
    const char *noun, *plural, *adjective;
    const char *adjective_at[SEVERITY_COUNT]; // where a degree has a word of its own: stiff, seized
    bool adjective_own;                       // no other kind has that adjective, so that it may stand alone
    bool mass, many;                          // many: told in the plural where no number is given
    bool gathers; // several kinds of damage under one name: a denial of one is told as that one
    // ABSENCE: what is missing where the record names no part ("lid", "lids").
    const char *part, *part_plural;
    // STATE: predicates of the whole and of a part; they begin with {is}, {has} or {was}, which agree with
    // the subject. NULL for the part: the same.
    const char *says, *says_part;
    const char *sought;      // as in "No … seen"; NULL: made from noun or part
    struct texts title;      // title wordings for the whole thing, best first ("Untested")
    struct texts title_part; // with {part} {where} {count} ("{part} Untested")
    enum rollup rollup;      // the shared short wording that may stand in for it where space is short
    struct texts implied_by; // ids of kinds that tell it too, and more: it then needs no words of its own
    struct texts beside;     // ids of kinds that tell a part of it; what is left to say is `title_beside`
    struct texts title_beside;
    struct finder finder;
    struct texts spoken, spoken_on; // patterns of words in notes; the latter count only where `on` fits
    struct texts alone;             // words that name it where they are all that a clause says, and `on` fits
    struct texts off;               // materials and families that it never occurs on
    struct texts near;    // two groups of words each, parted by " / ": one of each in a clause is the flaw
    struct texts sound;   // phrases and pairs as in `near` that say that it is not there
    struct texts narrows; // ids of kinds that are this one where the material is under `on`
    struct texts within;  // parts: where given, `narrows` goes by the part instead ("torn" of a lining)
    struct texts parts, on, ask, confused; // `confused`: ids of flaws easily taken for this one
    const char *photo, *caution;
    // A kind of several damages under one name is told as the one that the seller named: each of these is the
    // kind once more, with words of its own; its finder's `said` are the words that call for it.
    struct flaw *tellings;
    size_t telling_count;
};

// Slots in the closed list of slots.def, in the order that a family gives them.
enum slot {
#define X(symbol, name, help) symbol,
#include "rules/slots.def"
#undef X
    SLOT_COUNT
};

const char *slot_name(enum slot slot);
bool slot_of_name(const char *name, enum slot *slot);

struct slots {
    enum slot at[SLOT_COUNT];
    size_t count;
};

struct wording_shape {
    struct slots words;
    int weight;
};

struct want_shape {
    const char *id;
    struct wording_shape *shapes;
    size_t count;
};

// What "yes" says of a check's flaws.
enum check_yes { YES_OPEN, YES_FAULT, YES_CLEAR };

struct check {
    const char *id, *ask;
    enum check_yes yes;
    struct texts flaws; // flaw ids that answer it when present in flaws, clear or unchecked
    struct texts facts; // attribute, measurement or record keys that answer it
    struct texts about; // words: asked only where the record holds one
    struct texts never; // words: not asked where the record holds one
};

struct photo_wish {
    const char *shows;
    struct texts flaws;
    struct texts about, never; // as those of a check
};

struct short_form {
    const char *text, *means;
};

struct thing {
    const char *noun;   // singular, as a buyer types it
    const char *plural; // NULL: by rule
    struct texts also;  // other names buyers type for the same thing
    const struct family *family;
    bool pair; // one item although plural in form (trousers, scissors)
};

struct index;
struct family {
    struct rule rule;
    const char *print;
    struct slots order;
    int tells[SLOT_COUNT];
    struct want_shape *wants;
    size_t want_count;
    struct thing *things;
    size_t thing_count;
    const struct index *heads; // the last words of their nouns
    struct check *checks;
    size_t check_count;
    struct photo_wish *photos;
    size_t photo_count;
    struct texts measures; // dimensions to give, most asked first
    struct texts areas;    // where buyers want to know how it is: told as not described where nothing is said
    struct short_form *shorts;
    size_t short_count;
    struct short_form *flaw_words; // a flaw's title words in this family: "Not Played" for an untested disc
    size_t flaw_word_count;
    const char *default_dimension; // what a bare height/length means for this family; NULL when none
    struct texts avoid;            // words read in notes but never printed for this family
    const struct node *example;    // record
    const char *example_title;     // the title that record must get
};

enum verdict { VERDICT_ALLOW, VERDICT_QUALIFY, VERDICT_ASK, VERDICT_REFUSE };

// A word that promises something. It may stand only where the record holds the evidence.
struct claim {
    struct rule rule;
    struct finder finder;
    enum verdict verdict; // without the evidence
    const char *instead;  // honest wording to offer
    struct finder
        evidence; // patterns tried on the record's marks; none: nothing a record holds can allow the word
    int at_least, more_than;   // whole years of age that allow the word; 0: none do
    int from_year, to_year;    // an era: years within it allow the word; 0: none do
    struct short_form *writes; // the words with their qualifier, which may be told: {fur: used fur}
    size_t write_count;
    struct finder marked; // patterns on marks; where one is found, these words are told
    struct short_form *marked_writes;
    size_t marked_count;
    struct short_form *color_writes; // where the word is a color: {gold: gold tone}
    size_t color_count;
};

// How sure the years of a bound are; what is only remembered is told and narrows nothing.
enum bound_sure { BOUND_FIRM, BOUND_USUAL, BOUND_MEMORY };
// What of a bound is read out of the words found, instead of standing in the rule.
enum bound_reads {
    READS_NOTHING,
    READS_YEAR,
    READS_NUMBER,
    READS_BOOK_NUMBER,
    READS_BAR_CODE,
    READS_DIAMOND
};

// A mark, address form, law or technique, and the years in which it was used. 0: open to that side.
struct bound {
    struct rule rule;
    struct finder finder;
    int not_before, not_after;
    enum bound_sure sure;
    enum bound_reads reads;
    struct short_form *steps; // READS_NUMBER: the first number of a year, and that year; ascending
    size_t step_count;
    const char *text; // how it is told
};

// What safety or law asks of a seller of such goods. `stop`: they are not listed at all.
struct caution {
    struct rule rule;
    struct finder finder;
    struct finder benign; // finds what `unless` holds
    struct finder with;   // words of which one must stand in the record too
    struct texts signs;   // words that raise it together, as signs.h reads them
    struct texts things;  // nouns of goods that raise it by what they are
    struct texts flaws;   // flaw ids that raise it
    struct texts on;      // family ids; none: all
    size_t number;        // among the cautions of the set
    const char *text;
    bool stop;
    bool shown;   // a picture, or a book, of it raises it as the thing itself does
    bool history; // what befell the goods raises it: what a seller tells beside the thing counts too
    bool residue; // so does what was once kept in it
};

// Words that mean the same, or things of one sort, for the places of patterns that name it: "@closures".
struct word_group {
    struct rule rule;
    const char *means;
    struct texts are;  // members: words, some of which may be one of several ("a|b") or skipped ("-")
    struct texts with; // ids of groups whose members are members too; those have no `with` of their own
};

struct pack {
    struct rule rule;
    const char *version;
    int flaws, families, claims, bounds, cautions,
        groups; // how many the pack holds: a lost file or rule is noticed
};

#endif
