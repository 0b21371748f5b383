// SPDX-License-Identifier: MIT
// The one table that says what a rule may hold. The loader, the "did you mean" hints, `rules describe` and
// the editor schema all read it; nothing else knows a key's name.
#ifndef RULES_SCHEMA_H
#define RULES_SCHEMA_H

#include <stdbool.h>
#include <stddef.h>

enum key_type {
    KEY_TEXT,   // const char *
    KEY_TEXTS,  // struct texts; one text stands for a list of one
    KEY_WHOLE,  // int within 0..1000
    KEY_YEAR,   // int within 1000..2999
    KEY_YES_NO, // bool
    KEY_CHOICE, // an enum; `choices` lists its words from `first` on
    KEY_SLOTS,  // struct slots
    KEY_TELLS,  // int[SLOT_COUNT]: a map from slot to whole number
    KEY_GROUP,  // a map whose keys fill fields of the same struct
    KEY_ITEMS,  // a list of maps: pointer at `offset`, count at `count_offset`
    KEY_PAIRS,  // a map of text to text, into an array of two-pointer structs
    KEY_RECORD, // any tree: an item record
};

struct key_spec {
    const char *name;
    enum key_type type;
    bool required;
    size_t offset, count_offset;
    const char *const *choices;  // KEY_CHOICE: NULL-ended
    int first;                   // value of the first choice
    const struct key_spec *keys; // KEY_GROUP, KEY_ITEMS: NULL-named end
    size_t size;                 // KEY_ITEMS, KEY_PAIRS: bytes of one element
    const char *help;
};

enum rule_kind {
    RULE_PACK,
    RULE_FLAW,
    RULE_FAMILY,
    RULE_CLAIM,
    RULE_BOUND,
    RULE_CAUTION,
    RULE_GROUP,
    RULE_KIND_COUNT
};

struct kind_spec {
    const char *name; // also the key that gives the id
    size_t size;      // of its struct; every kind begins with struct rule
    bool finds_text;  // carries hits and misses
    const struct key_spec *keys;
    const char *help;
};

const struct kind_spec *schema_kind(enum rule_kind kind);
const struct kind_spec *schema_kind_of_name(const char *name, enum rule_kind *kind);

#endif
