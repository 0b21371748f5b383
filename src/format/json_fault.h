// SPDX-License-Identifier: MIT
// What is said about broken JSON. Each adds one message, marks the reading as failed and returns false.
// Room-internal.
#ifndef FORMAT_JSON_FAULT_H
#define FORMAT_JSON_FAULT_H

#include "format/json.h"
#include "format/tree.h"

struct place json_place(const struct json *json, size_t from, size_t to);
// Bytes of the run of letters, digits and the like at `at`.
size_t json_word_length(const struct json *json, size_t at);

bool json_fault(struct json *json, size_t from, size_t to, const char *hint, const char *message);
bool json_fault_here(struct json *json, const char *hint, const char *message);
// A word or number that JSON does not have.
bool json_fault_word(struct json *json, size_t at);
// Where a key, a value, or a comma or closing bracket should stand, and after the whole value.
bool json_fault_key(struct json *json);
bool json_fault_value(struct json *json);
bool json_fault_between(struct json *json, const struct node *into);
bool json_fault_after(struct json *json);

#endif
