// SPDX-License-Identifier: MIT
// One hunspell dictionary that is known to work. Hunspell_create() never fails: handed files that are not
// there it prints to standard error and calls every word wrong. So the files are looked at first, and a
// common word is asked for before the handle is trusted. dictionary.c is the only includer of hunspell.
#ifndef WORDS_DICTIONARY_H
#define WORDS_DICTIONARY_H

#include <stdbool.h>
#include <stddef.h>

#include "text/diag.h"

enum dictionary_state { DICTIONARY_UNTRIED, DICTIONARY_OPEN, DICTIONARY_ABSENT };

struct dictionary {
    const char *affix, *words; // paths
    const char *package;       // of Debian, for the hint
    const char *language;      // as people call it
    enum dictionary_state state;
    void *handle;
};

// Opens it if that was not tried before. What is wrong is told once, at the first try.
bool dictionary_open(struct dictionary *dictionary, struct diags *diags);
void dictionary_close(struct dictionary *dictionary);
// `word` NUL-ended UTF-8; the dictionary must be open.
bool dictionary_knows(const struct dictionary *dictionary, const char *word);

#endif
