// SPDX-License-Identifier: MIT
// How likely a slip of spelling or typing is: the least sum of edit costs that makes the word of the text out
// of the word meant. Costs are hundredths of about one plain edit.
#ifndef WORDS_WEIGH_H
#define WORDS_WEIGH_H

#include <stddef.h>

enum { WEIGH_LONGEST = 48, WEIGH_TOO_FAR = 1000 };

struct edit_weights {
    int substitute, vowel, sound, neighbor;                     // another letter
    int missing, missing_double, missing_vowel, missing_silent; // a letter left out
    int extra, extra_double, extra_vowel, extra_neighbor;       // a letter too many
    int swap, swap_vowels, swap_far; // two letters the wrong way round; with one between them
    int sounds_alike;                // f for ph and the like
    int first, last;                 // on top, where the first letter changes, or the last
};

extern const struct edit_weights EDIT_WEIGHTS;

// Both in small letters, at most WEIGH_LONGEST bytes. WEIGH_TOO_FAR where either is longer.
int weigh_edits(const struct edit_weights *weights, const char *typed, size_t typed_size, const char *meant,
                size_t meant_size);

#endif
