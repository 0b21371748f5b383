// SPDX-License-Identifier: MIT
// Places and messages out of libyaml's marks. Room-internal.
#ifndef FORMAT_YAML_ERROR_H
#define FORMAT_YAML_ERROR_H

#include <yaml.h>

#include "text/diag.h"

// libyaml counts characters from after the byte-order mark. Marks mostly rise, so the last answer is where we
// go on from.
struct yaml_marks {
    const struct source *source;
    size_t start;           // bytes of the byte-order mark
    size_t character, byte; // a pair that belongs together
};

struct yaml_marks yaml_marks_start(const struct source *source);
size_t yaml_marks_byte(struct yaml_marks *marks, size_t character);
// The parser's error as a message with its place and, for the common mistakes, a way out.
void yaml_error_add(const yaml_parser_t *parser, struct yaml_marks *marks, struct diags *diags);

#endif
