// SPDX-License-Identifier: MIT
// Of denials, the list of faults that one "no" reaches over. Private to the room.
#ifndef NOTES_DENIAL_LIST_H
#define NOTES_DENIAL_LIST_H

#include "notes/scope.h"

// Does token `i` open a predicate of its own, join items of a list, name a state ("chipped", "loose"), or a
// part?
bool denial_ends_list(const struct tokens *tokens, size_t i);
bool denial_joins(const struct tokens *tokens, size_t i);
bool denial_is_state(const struct token *token);
bool denial_is_part(const struct scope *scope, size_t i);

// Behind the joint before token `i`: is the list over that began at token `from`, by what is said there?
bool denial_list_ends(const struct scope *scope, size_t from, size_t i);
// Else: is it more of the list, fault words before anything that opens a new statement?
bool denial_list_goes_on(const struct scope *scope, size_t from, size_t i, bool comma);
// Is token `i` an article of a list under "no" that began at token `from`, and opens no statement?
bool denial_article(const struct scope *scope, size_t from, size_t i);
// "None torn", "none of them are cracked": the fault behind the "none" at token `i`; 0 if none follows.
size_t denial_none_are(const struct scope *scope, size_t i);

#endif
