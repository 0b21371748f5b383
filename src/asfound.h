/* SPDX-License-Identifier: MIT */
/*
 * asfound: honest listings for one-off secondhand goods, from item records.
 *
 * Ownership: an engine is made by asfound_engine_new() and given back by asfound_engine_free(). Texts handed
 * to a callback are valid during the call only. Nothing is printed, no process state is touched, no clock or
 * locale is read. Threads: an engine does not change after it is made; any number of threads may draft with
 * one engine. Errors: functions return an enum asfound_status; messages about the user's texts go to the
 * `messages` callback, each with file, line, column, the line itself and a hint where there is one. Units:
 * lengths of titles are counted in the unit chosen; offsets and sizes are bytes.
 */
#ifndef ASFOUND_H
#define ASFOUND_H

#include <stdbool.h>
#include <stddef.h>

#if defined(__GNUC__)
#define ASFOUND_PUBLIC __attribute__((visibility("default")))
#else
#define ASFOUND_PUBLIC
#endif

#ifdef __cplusplus
extern "C" {
#endif

/* The exit statuses of the command; of several the highest is returned. */
enum asfound_status {
    ASFOUND_FINE = 0,         /* nothing to settle */
    ASFOUND_MUST = 1,         /* done, and at least one finding of level "must" */
    ASFOUND_USAGE = 2,        /* wrong options, or not there yet */
    ASFOUND_BROKEN_RULES = 3, /* a rule pack or word list is broken */
    ASFOUND_BROKEN_INPUT = 4, /* some input could not be read; the rest was done */
    ASFOUND_IO = 5            /* reading, writing or memory failed */
};

enum asfound_unit { ASFOUND_GRAPHEMES, ASFOUND_UTF16, ASFOUND_BYTES };
enum asfound_locale { ASFOUND_EN_US, ASFOUND_EN_GB };
enum asfound_input { ASFOUND_YAML, ASFOUND_JSON, ASFOUND_NDJSON, ASFOUND_CSV, ASFOUND_NOTES };
enum asfound_output { ASFOUND_TEXT, ASFOUND_YAML_OUT, ASFOUND_JSON_LINES, ASFOUND_HTML };

/* Takes `size` bytes; anything but true means that they could not be taken, and ends the call with
 * ASFOUND_IO. */
typedef bool asfound_put(void *context, const char *bytes, size_t size);
/* Gives up to `room` bytes: how many, 0 at the end, (size_t)-1 when reading failed. */
typedef size_t asfound_get(void *context, char *to, size_t room);

/* Where memory comes from; all NULL means malloc and free. */
struct asfound_memory {
    void *(*alloc)(void *context, size_t size);
    void (*free)(void *context, void *block);
    void *context;
};

struct asfound_engine_options {
    const char *data;         /* folder that holds rules/ and dict/ */
    const char *const *packs; /* further rule folders; later ones override by id */
    size_t pack_count;
    struct asfound_memory memory;
    const char
        *dictionaries;     /* folder of en_US.aff, en_US.dic and so on; NULL: where the system keeps them */
    asfound_put *messages; /* may be NULL */
    void *messages_context;
    bool color; /* color the word error, warning or note */
    bool quiet; /* errors only, neither warnings nor notes; as color, in all messages of the engine */
};

typedef struct asfound_engine asfound_engine;

/* Loads rules and words. `*engine` is NULL only when nothing can be done with what was found; a fault in one
 * rule is reported, gives ASFOUND_BROKEN_RULES, and leaves an engine without that rule. */
ASFOUND_PUBLIC enum asfound_status asfound_engine_new(const struct asfound_engine_options *options,
                                                      asfound_engine **engine);
ASFOUND_PUBLIC void asfound_engine_free(asfound_engine *engine);

struct asfound_draft_options {
    size_t limit; /* of the title; 0 means 80 */
    enum asfound_unit unit;
    enum asfound_locale locale;
    enum asfound_input input;
    enum asfound_output output;
    bool color;                 /* in ASFOUND_TEXT */
    bool read;                  /* notes to item records: records are written instead of listings */
    bool sheet;                 /* a disclosure sheet instead of the listing; wants `today`, text or HTML */
    bool explain;               /* why each word and sentence is there, instead of the listing */
    const char *const *answers; /* to its questions, for one record: "ID=yes", "ID=no" or "ID=not-looked" */
    size_t answer_count;
    const char *only; /* id of the one record wanted, or NULL */
    /* A title to score beside the drafted one, in place of the one that the record carries; NULL for none. It
     * goes with one record: where the input holds more (and `only` names none), nothing is written and the
     * status is ASFOUND_USAGE. */
    const char *given_title;
    const char *today; /* "YYYY-MM-DD", for words of age; NULL: they are not settled */
    bool no_frame;     /* ASFOUND_HTML: several inputs make one page; the caller frames it */
    asfound_put *out, *messages;
    void *out_context, *messages_context;
    /* Called after each record with the number done so far; may be NULL. */
    void (*progress)(void *context, size_t done);
    void *progress_context;
};

/* Reads one input record by record and writes a listing for each, in input order. Memory does not grow with
 * the number of records (but for eight bytes a record, to notice an id that stands twice). */
ASFOUND_PUBLIC enum asfound_status asfound_draft(const asfound_engine *engine,
                                                 const struct asfound_draft_options *options,
                                                 const char *name, asfound_get *get, void *get_context);

struct asfound_date_options {
    const char *const *marks; /* words and numbers found on one thing */
    size_t mark_count;
    const char *today;          /* "YYYY-MM-DD"; NULL: no mark is too young */
    enum asfound_output output; /* not ASFOUND_HTML */
    bool table;                 /* all that is known, instead of the years of marks */
    asfound_put *out, *messages;
    void *out_context, *messages_context;
};

/* Writes in which years such marks were used, and why. ASFOUND_MUST where no year fits all of them or one is
 * younger than today; ASFOUND_USAGE, with nothing written, for a mark that is no text. */
ASFOUND_PUBLIC enum asfound_status asfound_date(const asfound_engine *engine,
                                                const struct asfound_date_options *options);

/* Beginning and end of an HTML page of listings, for use with no_frame. */
ASFOUND_PUBLIC enum asfound_status asfound_page_frame(const asfound_engine *engine, bool end,
                                                      asfound_put *out, void *out_context);

/* Runs every rule's own examples. With `statistics`, counts and likeness are written to `out`. */
ASFOUND_PUBLIC enum asfound_status asfound_rules_check(const asfound_engine *engine, bool statistics,
                                                       asfound_put *out, void *out_context,
                                                       asfound_put *messages, void *messages_context);
/* One rule, by "kind id" or id alone, as it was loaded. ASFOUND_USAGE when there is none. */
ASFOUND_PUBLIC enum asfound_status asfound_rules_show(const asfound_engine *engine, const char *id,
                                                      asfound_put *out, void *out_context,
                                                      asfound_put *messages, void *messages_context);
/* The keys of every kind of rule, as text or as a JSON Schema for editors. Needs no engine. */
ASFOUND_PUBLIC enum asfound_status asfound_rules_describe(bool json_schema, asfound_put *out,
                                                          void *out_context);

/* --- stock files --- */

struct asfound_retitle_options {
    const char *map;      /* "title=Header,id=Header", or NULL */
    bool explain_columns; /* only what was taken for what, and why */
    size_t limit;         /* as in asfound_draft_options, as are the next three */
    enum asfound_unit unit;
    enum asfound_locale locale;
    const char *today;
    /* Which rows are stale; negative or NULL: all are. */
    long older_than;                /* days */
    long views_under, earned_under; /* earned_under in percent of the best */
    const char *category;
    double price_from, price_to;
    unsigned hold_back; /* hundredths of a percent of the proposed rows that are left as they are */
    const char *seed;   /* with the id it settles which; NULL: "" */
    size_t workers;     /* threads; 0 means 1. The result is the same. */
    asfound_put *out, *messages;
    void *out_context, *messages_context;
    void (*progress)(void *context, size_t rows);
    void *progress_context;
};

/* Reads one stock file of any header and writes proposals for its stale titles, as CSV, in the order of the
 * stock. A summary goes to the messages. The engine's memory functions must bear being called by several
 * threads where there are several workers. */
ASFOUND_PUBLIC enum asfound_status asfound_retitle(const asfound_engine *engine,
                                                   const struct asfound_retitle_options *options,
                                                   const char *name, asfound_get *get, void *get_context);

struct asfound_apply_options {
    const char *stock;     /* a file by name; never written to */
    const char *proposals; /* for asfound_apply() */
    long long entry;       /* for asfound_undo(): the ledger's entry */
    const char *write;     /* the new file, which must not be there; NULL: only say what would be done */
    const char *ledger;    /* the SQLite file of what was done */
    const char *when;      /* time as text, for the ledger; no clock is read */
    const char *rules;     /* for the ledger: asfound_rules_version(); NULL: asfound_version() */
    const char *map;       /* as above */
    bool quiet, color;
    asfound_put *out, *messages;
    void *out_context, *messages_context;
};

/* Writes a new stock file in which approved titles stand, or those before them again; whole or not at all.
 * What cannot be done is told and gives ASFOUND_BROKEN_INPUT; the rest is done. */
ASFOUND_PUBLIC enum asfound_status asfound_apply(const struct asfound_apply_options *options);
ASFOUND_PUBLIC enum asfound_status asfound_undo(const struct asfound_apply_options *options);
/* All entries, or with `id` the changes of one item: as text, or one JSON object a line. `color`: of
 * messages. */
ASFOUND_PUBLIC enum asfound_status asfound_history(const char *ledger, const char *id, bool json, bool color,
                                                   asfound_put *out, void *out_context, asfound_put *messages,
                                                   void *messages_context);

/* Which rules an engine with these options would have: the version and a fingerprint of their files,
 * "0.1.0 3f2a91c05e77". `data`, `packs` and the messages are looked at; no engine is needed. */
ASFOUND_PUBLIC enum asfound_status asfound_rules_version(const struct asfound_engine_options *options,
                                                         asfound_put *out, void *out_context);

/* Version of the library and the rule packs: "0.1.0". Static text. */
ASFOUND_PUBLIC const char *asfound_version(void);

#ifdef __cplusplus
}
#endif
#endif
