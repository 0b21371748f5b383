// SPDX-License-Identifier: MIT
// libyaml says what its grammar missed; people need to hear what they typed. The known mistakes are told
// apart by the bytes at the mark, because libyaml gives the same problem for several of them.
#include "format/yaml_error.h"

#include <string.h>

struct yaml_marks yaml_marks_start(const struct source *source) {
    struct yaml_marks marks = {.source = source};
    if (source->size >= 3 && memcmp(source->text, "\xEF\xBB\xBF", 3) == 0) marks.start = 3;
    marks.byte = marks.start;
    return marks;
}

static bool inside_point(const struct source *source, size_t byte) {
    return byte < source->size && ((unsigned char)source->text[byte] & 0xC0) == 0x80;
}

size_t yaml_marks_byte(struct yaml_marks *marks, size_t character) {
    const struct source *source = marks->source;
    while (marks->character < character && marks->byte < source->size) {
        do marks->byte++;
        while (inside_point(source, marks->byte));
        marks->character++;
    }
    while (marks->character > character && marks->byte > marks->start) {
        do marks->byte--;
        while (inside_point(source, marks->byte));
        marks->character--;
    }
    return marks->byte;
}

static bool says(const char *text, const char *part) {
    return text && strstr(text, part);
}

// Is there a tab among the blanks that the line of `at` starts with?
static bool tab_indents(const struct source *source, size_t at) {
    struct line_column line = source_locate(source, at);
    size_t i = line.line_from;
    while (i < line.line_to && source->text[i] == ' ') i++;
    return i < line.line_to && source->text[i] == '\t';
}

static const char *hint_of(const yaml_parser_t *parser, const struct source *source, size_t at) {
    const char *problem = parser->problem, *context = parser->context;
    char here = at < source->size ? source->text[at] : '\0';
    if (tab_indents(source, at) || says(problem, "tab character"))
        return "YAML indents with spaces, never with tabs";
    if (says(context, "quoted scalar") && says(problem, "unexpected")) return "the closing quote is missing";
    if (says(problem, "mapping values are not allowed")) {
        return "a value with a colon and a space in it needs quotes, and nested keys start on a line of "
               "their own";
    }
    if (says(problem, "cannot start any token")) {
        return here == '%' || here == '@' || here == '`'
                   ? "a value that starts with this character needs quotes"
                   : NULL;
    }
    if (says(problem, "could not find expected ':'")) return "every line of a map is `key: value`";
    if (says(problem, "expected key")) {
        return "keys of one map start in the same column; after a closing quote nothing else may follow";
    }
    if (says(problem, "expected '-' indicator"))
        return "entries of one list start in the same column, each with a dash";
    if (says(problem, "',' or ']'")) return "a comma or the closing ] is missing";
    if (says(problem, "',' or '}'")) return "a comma or the closing } is missing";
    if (says(problem, "unknown escape")) return "inside double quotes write \\\\ for a backslash";
    if (says(problem, "indentation")) return "indent the text under its key";
    return NULL;
}

void yaml_error_add(const yaml_parser_t *parser, struct yaml_marks *marks, struct diags *diags) {
    const struct source *source = marks->source;
    struct place at = {source, 0, 0};
    if (parser->error == YAML_READER_ERROR) {
        at.from = marks->start + parser->problem_offset;
    } else {
        at.from = yaml_marks_byte(marks, parser->problem_mark.index);
    }
    const char *hint = hint_of(parser, source, at.from);
    const char *problem = parser->problem ? parser->problem : "this cannot be read";
    // Where a quote is never closed, the end of the text is no help: show the quote.
    bool quote = says(parser->context, "quoted scalar") && says(problem, "unexpected");
    if (quote) at.from = yaml_marks_byte(marks, parser->context_mark.index);
    at.to = at.from + 1;
    if (!parser->context || quote) {
        diags_add(diags, CODE_YAML, at, hint, "%s", problem);
        return;
    }
    size_t began = yaml_marks_byte(marks, parser->context_mark.index);
    diags_add(diags, CODE_YAML, at, hint, "%s, %s that began in line %zu", problem, parser->context,
              source_locate(source, began).line);
}
