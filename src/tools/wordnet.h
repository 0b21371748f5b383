// SPDX-License-Identifier: MIT
// The nouns of WordNet 3.0 as far as they may be goods. Private to the tool.
#ifndef TOOLS_WORDNET_H
#define TOOLS_WORDNET_H

#include <stdbool.h>
#include <stddef.h>

#include "text/arena.h"

struct wordnet;

// Reads index.noun and data.noun of `folder`; NULL when they cannot be read.
struct wordnet *wordnet_open(struct arena *arena, const char *folder);

struct wordnet_noun {
    const char *lemma; // small letters, spaces between words
    bool thing;        // some sense is an artifact that can be sold
    bool gated;        // its first sense is something else, or it is a place or building
    const char *family;
    const char *broader;
};

struct family_root {
    const char *lemma, *family;
};

// Calls `take` for every noun that may be goods, in the order of the file.
void wordnet_each(struct wordnet *net, const struct family_root *roots, size_t root_count,
                  void (*take)(void *context, const struct wordnet_noun *noun), void *context);

// Calls `take` for every single word of small letters, of any part of speech.
bool wordnet_words(struct wordnet *net, void (*take)(void *context, const char *word), void *context);

// Calls `take` for every single word of small letters whose first sense as a noun is an animal, a plant,
// food, a substance or another thing that can be touched, and which is no adjective.
bool wordnet_namers(struct wordnet *net, void (*take)(void *context, const char *word), void *context);

enum wordnet_stranger { WORDNET_PERSON, WORDNET_IDEA, WORDNET_NATURE };

// Calls `take` for every single word of small letters that as a noun is, in the sense that stands first,
// somebody, nothing that can be touched, or a thing that nobody sells second hand by the piece,
// and which is neither an adjective nor an adverb.
bool wordnet_strangers(struct wordnet *net,
                       void (*take)(void *context, const char *word, enum wordnet_stranger kind),
                       void *context);

#endif
