// SPDX-License-Identifier: MIT
// The cutters know just enough of each form to find its record ends, and are forgiving where the readers are
// strict: a record that is broken inside must still end where its author thought it ends.
#include "format/cut.h"

#include <string.h>

enum { DEEPEST = 64 };

void cutter_restart(struct cutter *cutter) {
    struct cutter fresh = {.form = cutter->form, .delimiter = cutter->delimiter, .where = cutter->where};
    *cutter = fresh;
}

static bool cut_at(struct cut *cut, size_t length, size_t skip, enum cut_kind kind) {
    struct cut made = {length, skip, kind};
    *cut = made;
    return true;
}

static bool is_blank(char byte) {
    return byte == ' ' || byte == '\t' || byte == '\r' || byte == '\n';
}

// Keeps `marker` while the line is a run of up to three dashes or dots.
static void follow_marker(struct cutter *cutter, char byte) {
    if (cutter->column == 0)
        cutter->marker = byte == '-' || byte == '.' ? byte : '\0';
    else if (cutter->column < 3 && byte != cutter->marker)
        cutter->marker = '\0';
}

// A document's own marker stands first in it; directives and comments may stand before that.
static bool step_yaml(struct cutter *cutter, char byte, size_t at, struct cut *cut) {
    follow_marker(cutter, byte);
    bool marker = cutter->marker && cutter->column == 3 && is_blank(byte);
    if (marker && cutter->marker == '-') {
        if (cutter->content || cutter->opened) return cut_at(cut, cutter->line, 0, CUT_RECORD);
        cutter->opened = true;
    }
    if (marker && cutter->marker == '.') cutter->ending = true;
    if (cutter->column == 0) {
        cutter->comment = byte == '#' || (byte == '%' && !cutter->content);
        cutter->full = false;
    }
    cutter->full = !marker && (cutter->full || !is_blank(byte));
    if (byte != '\n') return false;
    cutter->content = cutter->content || (cutter->full && !cutter->comment);
    return cutter->ending && cut_at(cut, at + 1, 0, CUT_RECORD);
}

static bool step_notes(struct cutter *cutter, char byte, size_t at, struct cut *cut) {
    follow_marker(cutter, byte);
    if (cutter->column >= 3 && !is_blank(byte)) cutter->marker = '\0';
    if (byte != '\n' || cutter->marker != '-' || cutter->column < 3) return false;
    return cut_at(cut, cutter->line, at + 1 - cutter->line, CUT_RECORD);
}

static bool is_delimiter(const struct cutter *cutter, char byte) {
    return cutter->delimiter ? byte == cutter->delimiter : byte == ',' || byte == ';' || byte == '\t';
}

static bool step_csv(struct cutter *cutter, char byte, size_t at, struct cut *cut) {
    if (cutter->after_return) return cut_at(cut, at - 1, byte == '\n' ? 2 : 1, CUT_RECORD);
    if (cutter->quoted) {
        if (cutter->after_quote && byte == '"') {
            cutter->after_quote = false; // a doubled quote
            return false;
        }
        if (!cutter->after_quote) {
            cutter->after_quote = byte == '"';
            return false;
        }
        cutter->quoted = cutter->after_quote = false;
    }
    if (byte == '\n') return cut_at(cut, at, 1, CUT_RECORD);
    if (byte == '\r') cutter->after_return = true;
    if (byte == '"' && !cutter->cell_begun) cutter->quoted = true;
    cutter->cell_begun = !is_delimiter(cutter, byte);
    return false;
}

static void open_bracket(struct cutter *cutter, bool map) {
    if (cutter->depth < DEEPEST) cutter->brackets = cutter->brackets << 1 | map;
    cutter->depth++;
}

// A bracket that closes an outer level closes the forgotten inner ones too; one that fits no level is passed
// over.
static void close_bracket(struct cutter *cutter, bool map) {
    if (cutter->depth > DEEPEST) {
        cutter->depth--;
        return;
    }
    uint64_t brackets = cutter->brackets;
    for (unsigned depth = cutter->depth; depth > 0; depth--, brackets >>= 1) {
        if ((brackets & 1) != map) continue;
        cutter->depth = depth - 1;
        cutter->brackets = brackets >> 1;
        return;
    }
}

// True for a byte outside texts. A line end closes a text: a forgotten quote must not swallow the records
// after it.
static bool outside_text(struct cutter *cutter, char byte) {
    if (!cutter->quoted) {
        cutter->quoted = byte == '"';
        return !cutter->quoted;
    }
    if (cutter->escaped)
        cutter->escaped = false;
    else if (byte == '\\')
        cutter->escaped = true;
    else if (byte == '"')
        cutter->quoted = false;
    if (byte == '\n') cutter->quoted = cutter->escaped = false;
    return false;
}

static bool step_json(struct cutter *cutter, char byte, size_t at, struct cut *cut) {
    if (cutter->where == JSON_BEFORE && !is_blank(byte)) {
        cutter->where = byte == '[' ? JSON_LIST : JSON_SINGLE;
        if (byte == '[') return cut_at(cut, 0, at + 1, CUT_OPEN);
        cutter->content = byte == '{';
    }
    if (cutter->where == JSON_AFTER) {
        cutter->content = cutter->content || !is_blank(byte);
        return cutter->content && byte == '\n' && cut_at(cut, at, 0, CUT_RECORD);
    }
    bool looking = cutter->where == JSON_LIST || (cutter->where == JSON_SINGLE && cutter->content);
    if (!looking || !outside_text(cutter, byte)) return false;
    bool list = cutter->where == JSON_LIST && !cutter->depth;
    if (list && byte == ',') return cut_at(cut, at, 1, CUT_COMMA);
    if (list && byte == ']') {
        cutter->where = JSON_AFTER;
        return cut_at(cut, at, 1, CUT_CLOSE);
    }
    if (byte == '{' || byte == '[') open_bracket(cutter, byte == '{');
    if (byte != '}' && byte != ']') return false;
    close_bracket(cutter, byte == '}');
    if (cutter->depth || cutter->where != JSON_SINGLE) return false;
    cutter->where = JSON_AFTER;
    return cut_at(cut, at + 1, 0, CUT_RECORD);
}

static bool step_form(struct cutter *cutter, char byte, size_t at, struct cut *cut) {
    switch (cutter->form) {
    case FORM_YAML:
        return step_yaml(cutter, byte, at, cut);
    case FORM_JSON:
        return step_json(cutter, byte, at, cut);
    case FORM_NDJSON:
        return byte == '\n' && cut_at(cut, at + 1, 0, CUT_RECORD);
    case FORM_CSV:
        return step_csv(cutter, byte, at, cut);
    case FORM_NOTES:
        return step_notes(cutter, byte, at, cut);
    }
    return false;
}

bool cutter_step(struct cutter *cutter, char byte, struct cut *cut) {
    size_t at = cutter->seen++;
    if (step_form(cutter, byte, at, cut)) return true;
    if (byte == '\n') {
        cutter->line = at + 1;
        cutter->column = 0;
    } else {
        cutter->column++;
    }
    return false;
}
