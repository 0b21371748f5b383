// SPDX-License-Identifier: MIT
// What is behind the opaque engine; for the files of the public library alone. Never written to after it is
// made.
#ifndef ENGINE_H
#define ENGINE_H

#include "asfound.h"
#include "listing/spelling.h"

struct asfound_engine {
    struct arena *arena;
    struct asfound_memory memory;
    const struct ruleset *rules;
    const struct variants *variants;
    const struct wordbook *book;
    const struct trade *trade;
    const struct spelling_lists *lists;
    const char *dictionaries;
    bool color, quiet; // of all its messages
};

#endif
