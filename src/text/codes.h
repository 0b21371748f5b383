// SPDX-License-Identifier: MIT
// Every message code, once: its name in brackets, its level and the exit status it leads to.
// A test fails when a code has no case that shows its message.
#ifndef TEXT_CODES_H
#define TEXT_CODES_H

enum code_level { LEVEL_ERROR, LEVEL_WARNING, LEVEL_NOTE };

//  X(symbol, "name", level, exit status)
#define CODES(X)                                                                                             \
    /* text and format */                                                                                    \
    X(CODE_UTF8, "text.utf8", LEVEL_ERROR, 4)                                                                \
    X(CODE_NUL, "text.nul", LEVEL_ERROR, 4)                                                                  \
    X(CODE_CONTROL, "text.control", LEVEL_ERROR, 4)                                                          \
    X(CODE_TOO_LARGE, "input.too-large", LEVEL_ERROR, 4)                                                     \
    X(CODE_EMPTY, "input.empty", LEVEL_WARNING, 0)                                                           \
    X(CODE_YAML, "yaml.syntax", LEVEL_ERROR, 4)                                                              \
    X(CODE_YAML_ALIAS, "yaml.alias", LEVEL_ERROR, 4)                                                         \
    X(CODE_YAML_TAG, "yaml.tag", LEVEL_ERROR, 4)                                                             \
    X(CODE_DEEP, "input.too-deep", LEVEL_ERROR, 4)                                                           \
    X(CODE_DUPLICATE_KEY, "input.duplicate-key", LEVEL_ERROR, 4)                                             \
    X(CODE_KEY_FORM, "input.key-form", LEVEL_ERROR, 4)                                                       \
    X(CODE_JSON, "json.syntax", LEVEL_ERROR, 4)                                                              \
    X(CODE_CSV, "csv.syntax", LEVEL_ERROR, 4)                                                                \
    X(CODE_CSV_WIDTH, "csv.width", LEVEL_ERROR, 4)                                                           \
    X(CODE_CSV_HEADER, "csv.header", LEVEL_ERROR, 4)                                                         \
    /* records */                                                                                            \
    X(CODE_UNKNOWN_KEY, "record.unknown-key", LEVEL_ERROR, 4)                                                \
    X(CODE_TYPE, "record.type", LEVEL_ERROR, 4)                                                              \
    X(CODE_VALUE, "record.value", LEVEL_ERROR, 4)                                                            \
    X(CODE_REQUIRED, "record.required", LEVEL_ERROR, 4)                                                      \
    X(CODE_UNKNOWN_FLAW, "record.unknown-flaw", LEVEL_ERROR, 4)                                              \
    X(CODE_UNKNOWN_FAMILY, "record.unknown-family", LEVEL_ERROR, 4)                                          \
    X(CODE_SAME_ID, "record.same-id", LEVEL_ERROR, 4)                                                        \
    /* rules */                                                                                              \
    X(CODE_RULE_SYNTAX, "rule.syntax", LEVEL_ERROR, 3)                                                       \
    X(CODE_RULE_KEY, "rule.unknown-key", LEVEL_ERROR, 3)                                                     \
    X(CODE_RULE_TYPE, "rule.type", LEVEL_ERROR, 3)                                                           \
    X(CODE_RULE_VALUE, "rule.value", LEVEL_ERROR, 3)                                                         \
    X(CODE_RULE_REQUIRED, "rule.required", LEVEL_ERROR, 3)                                                   \
    X(CODE_RULE_KIND, "rule.kind", LEVEL_ERROR, 3)                                                           \
    X(CODE_RULE_SAME_ID, "rule.same-id", LEVEL_ERROR, 3)                                                     \
    X(CODE_RULE_UNKNOWN_ID, "rule.unknown-id", LEVEL_ERROR, 3)                                               \
    X(CODE_RULE_PATTERN, "rule.pattern", LEVEL_ERROR, 3)                                                     \
    X(CODE_RULE_SLOW, "rule.slow-pattern", LEVEL_ERROR, 3)                                                   \
    X(CODE_RULE_HIT, "rule.hit", LEVEL_ERROR, 3)                                                             \
    X(CODE_RULE_MISS, "rule.miss", LEVEL_ERROR, 3)                                                           \
    X(CODE_RULE_GAP, "rule.gap", LEVEL_ERROR, 3)                                                             \
    X(CODE_RULE_EXAMPLE, "rule.example", LEVEL_ERROR, 3)                                                     \
    X(CODE_RULE_COUNT, "rule.count", LEVEL_ERROR, 3)                                                         \
    X(CODE_RULE_ALIKE, "rule.alike", LEVEL_ERROR, 3)                                                         \
    X(CODE_RULE_NONE, "rule.none", LEVEL_ERROR, 3)                                                           \
    X(CODE_DICT, "dict.broken", LEVEL_ERROR, 3)                                                              \
    X(CODE_DICT_MISSING, "dict.missing", LEVEL_ERROR, 3)                                                     \
    /* the world outside */                                                                                  \
    X(CODE_OPEN, "file.open", LEVEL_ERROR, 5)                                                                \
    X(CODE_READ, "file.read", LEVEL_ERROR, 5)                                                                \
    X(CODE_WRITE, "file.write", LEVEL_ERROR, 5)                                                              \
    X(CODE_MEMORY, "memory", LEVEL_ERROR, 5)                                                                 \
    X(CODE_USAGE, "usage", LEVEL_ERROR, 2)                                                                   \
    X(CODE_NOT_YET, "not-yet", LEVEL_ERROR, 2)

enum code {
#define X(symbol, name, level, status) symbol,
    CODES(X)
#undef X
        CODE_COUNT
};

struct code_entry {
    const char *name;
    enum code_level level;
    int status;
};

const struct code_entry *code_entry(enum code code);

#endif
