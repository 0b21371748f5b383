// SPDX-License-Identifier: MIT
// Words that are known without a dictionary: those that the shipped rules print, and those of the word book.
// Made once for an engine and shared by its workers. Owner: the arena given; rules and book must live as
// long.
#ifndef LISTING_SPELLING_LISTS_H
#define LISTING_SPELLING_LISTS_H

#include <stdint.h>

#include "rules/ruleset.h"
#include "words/wordbook.h"

struct spelling_lists;

// `book` may be NULL.
const struct spelling_lists *spelling_lists_new(struct arena *arena, const struct ruleset *rules,
                                                const struct wordbook *book);
// `lists` is a struct spelling_lists; the word is in small letters.
bool spelling_lists_know(const void *lists, const char *word, size_t size);
bool spelling_is_rule_word(const struct spelling_lists *lists, const char *word, size_t size);
// Words that are often said of goods: of two suggestions as likely otherwise, they come first.
struct texts spelling_usual(const struct spelling_lists *lists);
uint64_t spelling_hash(const char *word, size_t size); // never 0

// Every word, in small letters, that the rules of the first pack (the shipped one) may put into an output. A
// test asks the dictionaries for each.
typedef void rule_word_taker(void *context, const char *word, size_t size);
void spelling_rule_words(const struct ruleset *rules, rule_word_taker *take, void *context);

#endif
