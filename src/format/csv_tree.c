// SPDX-License-Identifier: MIT
// From a row to a tree along the paths of the header. While a row is built a list keeps its places as keys;
// at the end they are put in order and dropped, so that an empty place leaves no hole.
#include <stdint.h>
#include <string.h>

#include "format/check.h"
#include "format/csv.h"
#include "text/limits.h"

enum { PLACE_DIGITS = 4 }; // no record has ten thousand flaws

// Where a part of a path leads: found by a table, because a sheet may be wide and has many rows.
struct child {
    const struct node *into;
    const char *part;
    struct node *node;
};

struct build {
    struct arena *arena;
    struct diags *diags;
    struct child *children; // open addressing; never more than half full
    size_t room, count;
    bool failed;
};

static bool is_list_place(const char *part) {
    size_t size = strspn(part, "0123456789");
    return size && !part[size] && part[0] != '0' && size <= PLACE_DIGITS;
}

static void refuse(struct build *build, const struct csv_cell *name, const char *hint, const char *message) {
    build->failed = true;
    diags_add(build->diags, CODE_CSV_HEADER, name->at, hint, "%s", message);
}

// A cell's text without the blanks around it; an empty name for a column without one.
static char *trim_name(struct arena *arena, const struct csv_cell *name) {
    size_t from = 0, to = name->size;
    while (from < to && strchr(" \t\r\n", name->text[from])) from++;
    while (to > from && strchr(" \t\r\n", name->text[to - 1])) to--;
    return arena_copy(arena, name->text + from, to - from);
}

static size_t split_path(char *path, char **parts) {
    size_t count = 0;
    for (char *at = path; at; count++) {
        if (count == LIMIT_DEPTH) return 0;
        parts[count] = at;
        at = strchr(at, '.');
        if (at) *at++ = '\0';
        if (!*parts[count]) return 0;
    }
    return count;
}

static struct child *child_of(const struct build *build, const struct node *into, const char *part) {
    uint64_t h = (uintptr_t)into * UINT64_C(0x9E3779B97F4A7C15);
    for (const char *c = part; *c; c++) h = (h ^ (unsigned char)*c) * 1099511628211u;
    size_t at = (size_t)(h ^ (h >> 32)) & (build->room - 1);
    while (build->children[at].node &&
           (build->children[at].into != into || strcmp(build->children[at].part, part) != 0))
        at = (at + 1) & (build->room - 1);
    return &build->children[at];
}

static void put_child(struct build *build, const struct csv_cell *name, struct node *into, char *part,
                      struct node *node) {
    if (2 * (build->count + 1) > build->room) {
        struct child *old = build->children;
        size_t count = build->room;
        build->room = count ? 2 * count : 64;
        build->children = arena_array(build->arena, build->room, sizeof *build->children);
        for (size_t i = 0; i < count; i++)
            if (old[i].node) *child_of(build, old[i].into, old[i].part) = old[i];
    }
    *child_of(build, into, part) = (struct child){into, part, node};
    build->count++;
    node_put_at(build->arena, into, part, name->at, node);
}

static struct node *find_child(const struct build *build, const struct node *into, const char *part) {
    return build->count ? child_of(build, into, part)->node : NULL;
}

// The collection that `part` names, made when it is not there; `next` says whether it is a list.
static struct node *descend(struct build *build, struct node *into, char *part, const char *next,
                            const struct csv_cell *name, struct place at) {
    enum node_kind kind = is_list_place(next) ? NODE_LIST : NODE_MAP;
    struct node *child = find_child(build, into, part);
    if (!child) {
        child = arena_alloc(build->arena, sizeof *child);
        child->kind = kind;
        child->at = at;
        put_child(build, name, into, part, child);
    }
    if (child->kind == kind) return child;
    refuse(build, name, "a name is one of: a column, a list (name.1, name.2) or a map (name.part)",
           "this column contradicts another one");
    return NULL;
}

static void put_cell(struct build *build, struct node *root, const struct csv_cell *name,
                     const struct csv_cell *cell) {
    char *path = trim_name(build->arena, name), *parts[LIMIT_DEPTH] = {NULL};
    if (!*path) {
        struct csv_cell nameless = *cell;
        refuse(build, &nameless, "give the column a name, or empty it", "this cell's column has no name");
        return;
    }
    size_t count = split_path(path, parts);
    if (!count || is_list_place(parts[0])) {
        refuse(build, name, "names are joined by single dots, as in attributes.color or flaws.1.kind",
               "this column name is no path");
        return;
    }
    struct node *into = root;
    for (size_t i = 0; into && i + 1 < count; i++)
        into = descend(build, into, parts[i], parts[i + 1], name, cell->at);
    if (!into) return;
    if (find_child(build, into, parts[count - 1])) {
        refuse(build, name, "keep one of the two", "this column stands twice, or contradicts another one");
        return;
    }
    struct node *value = arena_alloc(build->arena, sizeof *value);
    value->kind = NODE_TEXT;
    value->plain = true;
    value->text = cell->text;
    value->size = cell->size;
    value->at = cell->at;
    put_child(build, name, into, parts[count - 1], value);
}

// Shorter digits are the smaller number: there are no leading zeros.
static bool stands_before(const char *left, const char *right) {
    size_t a = strlen(left), b = strlen(right);
    return a != b ? a < b : strcmp(left, right) < 0;
}

static void settle_lists(struct node *node) {
    if (node->kind != NODE_LIST && node->kind != NODE_MAP) return;
    for (size_t i = 0; i < node->count; i++) settle_lists(node->members[i].value);
    if (node->kind != NODE_LIST) return;
    for (size_t i = 1; i < node->count; i++) {
        struct member one = node->members[i];
        size_t k = i;
        for (; k > 0 && stands_before(one.key, node->members[k - 1].key); k--)
            node->members[k] = node->members[k - 1];
        node->members[k] = one;
    }
    for (size_t i = 0; i < node->count; i++) node->members[i].key = NULL;
}

static bool is_empty(const struct csv_cell *cell) {
    return strspn(cell->text, " \t\r\n") == cell->size;
}

static bool check_width(const struct csv_row *header, const struct csv_row *row, struct diags *diags) {
    if (row->count == header->count) return true;
    struct place at = row->cells[row->count - 1].at;
    if (row->count > header->count) at.from = row->cells[header->count].at.from;
    diags_add(diags, CODE_CSV_WIDTH, at,
              row->count > header->count ? "a cell with a delimiter in it needs quotes"
                                         : "an empty cell still needs its delimiter",
              "the row has %zu cells, the header %zu", row->count, header->count);
    return false;
}

struct node *csv_tree(struct arena *arena, const struct csv_row *header, const struct csv_row *row,
                      struct diags *diags) {
    if (!row->count || !check_width(header, row, diags)) return NULL;
    struct build build = {.arena = arena, .diags = diags};
    struct node *root = node_map(arena);
    root->at = row->cells[0].at;
    root->at.to = row->cells[row->count - 1].at.to;
    for (size_t i = 0; i < row->count; i++) {
        if (!is_empty(&row->cells[i])) put_cell(&build, root, &header->cells[i], &row->cells[i]);
    }
    if (build.failed) return NULL;
    settle_lists(root);
    return root;
}
