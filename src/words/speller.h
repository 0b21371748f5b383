// SPDX-License-Identifier: MIT
// Spelling: which words of a text are unknown, and what may have been meant. hunspell and the list of trade
// words say what is known; suggestions are made here (words/suggest.h), since hunspell's own stop by the
// clock.
//
// Owner: whoever called speller_new() frees it. One speller a worker: it is not to be shared between threads.
// Nothing is opened before a word is met that is in no list, and the words for suggestions are laid out at
// the first suggestion, so that a run which needs neither pays for neither. Results live in the arena of the
// messages given with each call; when memory runs out, the arena_try() of that arena is left.
#ifndef WORDS_SPELLER_H
#define WORDS_SPELLER_H

#include <stdbool.h>
#include <stddef.h>

#include "text/diag.h"
#include "words/trade.h"

enum speller_english { SPELLER_US, SPELLER_GB };

struct speller_options {
    enum speller_english english; // suggestions prefer it
    bool both;                    // words of the other English are no mistakes either
    const char *folder;           // of en_US.aff, en_US.dic and so on; NULL: where Debian puts them
    const struct trade *trade;    // may be NULL; must live as long as the speller
    const char *const
        *usual;         // small-letter words that are often said of goods, as the rules have them: of two
    size_t usual_count; // suggestions as likely otherwise, these come first; the words live as long
    // May be NULL: further known words, asked for before any dictionary is opened. The word comes in small
    // letters, without a possessive ending.
    bool (*lists)(const void *context, const char *word, size_t size);
    const void *lists_context;
};

struct speller;

// NULL when memory ran out. `memory` may be NULL.
struct speller *speller_new(const struct arena_memory *memory, const struct speller_options *options);
void speller_free(struct speller *speller);

// Opens the dictionaries if that was not tried before; a dictionary that cannot be used is told once
// (CODE_DICT_MISSING). False when that of the English asked for cannot: then nothing is checked, and every
// word counts as known.
bool speller_open(struct speller *speller, struct diags *diags);

// One word as written, without the marks around it. Answers are kept, so that asking again costs a hash.
bool speller_knows(struct speller *speller, const char *word, size_t size, struct diags *diags);

struct speller_text {
    const char *text; // valid UTF-8
    size_t size;
    const char *const *exempt; // stated makers, marks, models: none of their words is looked at
    size_t exempt_count;
};

struct misspelling {
    size_t from, to; // bytes of the text
    bool name_like;  // has a capital where no sentence starts: perhaps a name that the record does not state
};

struct misspellings {
    struct misspelling *items; // in order of place
    size_t count;
};

// Passed over besides the exempt: words with digits, codes, sizes, all capitals, single letters, capitals
// inside a word, addresses of the web and of mail, what stands in double quotes (read off the item), other
// scripts than Latin.
struct misspellings speller_check(struct speller *speller, const struct speller_text *text,
                                  struct diags *diags);

enum { SPELLER_SUGGEST_MOST = 8 };

struct suggestions {
    const char *words[SPELLER_SUGGEST_MOST]; // best first; capitals as in the word asked about
    size_t count;
};

// At most `most`. None for a word with digits, of one letter or over 40 bytes, and none without a dictionary.
struct suggestions speller_suggest(struct speller *speller, const char *word, size_t size, size_t most,
                                   struct diags *diags);

#endif
