// SPDX-License-Identifier: MIT
// The words that tell of faults, as what a misspelt word may have been meant for: by their letters and by
// their sound. Private to the room. Owner: the arena given; built once a rule set.
#ifndef NOTES_SLIP_WORDS_H
#define NOTES_SLIP_WORDS_H

#include "rules/ruleset.h"

enum { SOUND_ROOM = 24 };

struct slip_words;

struct slip_words *slip_words_new(struct arena *arena, const struct ruleset *rules);
bool slip_words_has(const struct slip_words *words, const char *word, size_t size);

// How a word of small letters sounds, roughly: vowels are all one, what is silent or doubled is left out, and
// "ripped" ends as "ript" does. Empty where it does not fit.
void slip_sound(const char *word, char sound[SOUND_ROOM]);
// The words that sound so: `*count` of them.
const char *const *slip_words_alike(const struct slip_words *words, const char *sound, size_t *count);

#endif
