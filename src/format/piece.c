// SPDX-License-Identifier: MIT
// Each form's way from one piece to one record. Blank pieces are no records; a fault always counts as one, so
// that the caller's numbering does not move.
#include "format/piece.h"

#include <string.h>

#include "format/check.h"
#include "format/read.h"

static size_t faults(const struct diags *diags) {
    return diags->count + diags->dropped;
}

static bool is_blank(const struct source *source) {
    for (size_t i = 0; i < source->size; i++) {
        if (!source->text[i] || !strchr(" \t\r\n", source->text[i])) return false;
    }
    return true;
}

static void add_at(const struct source *source, size_t from, enum code code, struct diags *diags,
                   const char *hint, const char *message) {
    struct place at = {source, from, from + 1};
    diags_add(diags, code, at, hint, "%s", message);
}

static bool read_notes(struct arena *arena, const struct source *source, struct diags *diags,
                       struct node **record) {
    if (!check_source(source, diags)) return true;
    size_t from = 0, to = source->size;
    while (strchr(" \t\r\n", source->text[to - 1])) to--;
    for (size_t i = 0; strchr(" \t\r\n", source->text[i]); i++) {
        if (source->text[i] == '\n') from = i + 1; // blanks that indent the first line stay
    }
    // A slice as it stands, so that an offset in the notes is an offset in the file.
    struct node *notes = arena_alloc(arena, sizeof *notes);
    notes->kind = NODE_TEXT;
    notes->text = arena_copy(arena, source->text + from, to - from);
    notes->size = to - from;
    struct place at = {source, from, to};
    notes->at = at;
    *record = node_map(arena);
    (*record)->at = at;
    struct place nowhere = {source, from, from};
    node_put_at(arena, *record, "notes", nowhere, notes);
    return true;
}

struct header_copy {
    struct pieces *pieces;
    const struct csv_row *row;
    const struct source *source;
};

static void header_keep(struct arena *own, void *context) {
    struct header_copy *copy = context;
    struct source *source = arena_alloc(own, sizeof *source);
    *source = *copy->source;
    source->name = arena_string(own, source->name);
    source->text = arena_copy(own, source->text, source->size);
    struct csv_row *header = &copy->pieces->header;
    header->count = copy->row->count;
    header->cells = arena_array(own, header->count, sizeof *header->cells);
    for (size_t i = 0; i < header->count; i++) {
        header->cells[i] = copy->row->cells[i];
        header->cells[i].text = arena_copy(own, header->cells[i].text, header->cells[i].size);
        header->cells[i].at.source = source;
    }
}

// The paths are tried on a row with every cell filled: a header that contradicts itself shows at once, and
// once only.
static bool header_fits(struct arena *arena, const struct csv_row *header, struct diags *diags) {
    struct csv_row full = {arena_array(arena, header->count, sizeof *full.cells), header->count};
    bool any = false;
    for (size_t i = 0; i < header->count; i++) {
        full.cells[i] = header->cells[i]; // an empty name stays an empty cell
        any = any || header->cells[i].size;
    }
    size_t before = faults(diags);
    csv_tree(arena, header, &full, diags);
    if (!any && header->count && faults(diags) == before) {
        add_at(header->cells[0].at.source, 0, CODE_CSV_HEADER, diags, NULL, "the header names no column");
    }
    return faults(diags) == before;
}

static bool read_header(struct pieces *pieces, struct cutter *cutter, struct arena *arena,
                        const struct source *source, struct diags *diags) {
    cutter->delimiter = csv_find_delimiter(source->text, source->size);
    size_t before = faults(diags);
    pieces->has_header = true;
    struct csv_row row = {0};
    if (check_source(source, diags)) row = csv_split(arena, source, cutter->delimiter, diags);
    pieces->over = faults(diags) != before || !header_fits(arena, &row, diags);
    struct header_copy copy = {pieces, &row, source};
    if (!pieces->over && !arena_try(pieces->own, header_keep, &copy)) arena_give_up(arena);
    return pieces->over; // a header that cannot be used is told like a record; without it there is nothing
                         // more to read
}

static bool read_csv(struct pieces *pieces, struct cutter *cutter, struct arena *arena,
                     const struct source *source, struct diags *diags, struct node **record) {
    if (!pieces->has_header) return read_header(pieces, cutter, arena, source, diags);
    if (!check_source(source, diags)) return true;
    size_t before = faults(diags);
    struct csv_row row = csv_split(arena, source, cutter->delimiter, diags);
    if (faults(diags) == before) *record = csv_tree(arena, &pieces->header, &row, diags);
    return true;
}

static bool read_entry(struct pieces *pieces, struct arena *arena, const struct piece *piece,
                       struct diags *diags, struct node **record) {
    const struct source *source = piece->source;
    if (piece->kind == CUT_OPEN) return false;
    if (is_blank(source)) {
        size_t end = source->size;
        if (piece->kind == CUT_COMMA) {
            add_at(source, end, CODE_JSON, diags, "take one comma out", "an entry of the list is missing");
        } else if (piece->kind == CUT_CLOSE && pieces->listed) {
            add_at(source, end, CODE_JSON, diags, "take the comma before it out",
                   "a comma after the last entry");
        }
        pieces->told = pieces->told || piece->kind == CUT_COMMA || pieces->listed;
        pieces->listed = true;
        return piece->kind == CUT_COMMA;
    }
    pieces->listed = true;
    *record = json_read(arena, source, diags);
    pieces->over = piece->last && !*record; // the fault is most likely the missing end
    return true;
}

static bool read_json(struct pieces *pieces, struct cutter *cutter, struct arena *arena,
                      const struct piece *piece, struct diags *diags, struct node **record) {
    bool entry = piece->kind != CUT_RECORD || (cutter->where == JSON_LIST && piece->last);
    if (entry) return read_entry(pieces, arena, piece, diags, record);
    if (is_blank(piece->source)) return false;
    if (!pieces->listed) {
        pieces->listed = true;
        *record = json_read(arena, piece->source, diags);
        return true;
    }
    size_t at = 0;
    while (strchr(" \t\r\n", piece->source->text[at])) at++;
    add_at(piece->source, at, CODE_JSON, diags,
           "several records: one a line in an .ndjson file, or in [ ] with commas",
           "the text goes on after its value");
    pieces->over = true;
    return true;
}

bool pieces_read(struct pieces *pieces, struct cutter *cutter, struct arena *arena, const struct piece *piece,
                 struct diags *diags, struct node **record) {
    const struct source *source = piece->source;
    if (cutter->form != FORM_JSON && is_blank(source)) return false;
    size_t before = faults(diags);
    bool found = true;
    switch (cutter->form) {
    case FORM_YAML:
        *record = yaml_read(arena, source, diags);
        found = *record || faults(diags) != before; // a document of comments alone is none
        break;
    case FORM_NDJSON:
        *record = json_read(arena, source, diags);
        break;
    case FORM_JSON:
        found = read_json(pieces, cutter, arena, piece, diags, record);
        break;
    case FORM_CSV:
        found = read_csv(pieces, cutter, arena, source, diags, record);
        break;
    case FORM_NOTES:
        found = read_notes(arena, source, diags, record);
        break;
    }
    if (faults(diags) != before) *record = NULL;
    pieces->told = pieces->told || found;
    return found;
}

void pieces_skip(struct pieces *pieces, const struct cutter *cutter) {
    pieces->told = pieces->listed = true;
    // Rows without their header would be read under wrong names.
    pieces->over = cutter->form == FORM_CSV && !pieces->has_header;
}

bool pieces_open(const struct pieces *pieces, const struct cutter *cutter) {
    return cutter->form == FORM_JSON && cutter->where == JSON_LIST && !pieces->over;
}
