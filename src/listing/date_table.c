// SPDX-License-Identifier: MIT
// One line a mark or a word of age: years, how sure, what it is, whose custom or source.
#include "listing/date_table.h"

#include "evidence/dating.h"
#include "notes/age.h"

static const char *years_of(struct arena *arena, const struct bound *bound) {
    return bound->reads == READS_NOTHING || bound->not_before || bound->not_after
               ? dating_years(arena, bound->not_before, bound->not_after)
               : "read in it";
}

void date_table_text(struct buf *out, const struct ruleset *rules) {
    buf_text(out, "Marks\n");
    for (size_t i = 0; i < rules->bound_count; i++) {
        const struct bound *bound = rules->bounds[i];
        buf_format(out, "  %s: %s (%s): %s [%s]\n", bound->rule.id, years_of(out->arena, bound),
                   bound_sure_name(bound->sure), bound->text, bound->rule.source);
    }
    buf_text(out, "\nWords of age\n");
    for (size_t i = 0; i < AGE_ROWS; i++) {
        const struct age_row *row = &age_table[i];
        const char *years = row->from || row->to ? dating_years(out->arena, row->from, row->to) : "no years";
        buf_format(out, "  %s: %s [%s]\n", row->words, years, row->custom);
    }
}

static void put_text(struct arena *arena, struct node *map, const char *key, const char *text) {
    if (text) node_put(arena, map, key, node_text(arena, text));
}

static void put_years(struct arena *arena, struct node *map, int from, int to) {
    if (from) node_put(arena, map, "not_before", node_whole(arena, from));
    if (to) node_put(arena, map, "not_after", node_whole(arena, to));
}

struct node *date_table_tree(struct arena *arena, const struct ruleset *rules) {
    struct node *map = node_map(arena), *marks = node_list(arena), *words = node_list(arena);
    for (size_t i = 0; i < rules->bound_count; i++) {
        const struct bound *bound = rules->bounds[i];
        struct node *row = node_map(arena);
        put_text(arena, row, "bound", bound->rule.id);
        put_years(arena, row, bound->not_before, bound->not_after);
        put_text(arena, row, "sure", bound_sure_name(bound->sure));
        put_text(arena, row, "text", bound->text);
        put_text(arena, row, "source", bound->rule.source);
        node_push(arena, marks, row);
    }
    for (size_t i = 0; i < AGE_ROWS; i++) {
        struct node *row = node_map(arena);
        put_text(arena, row, "words", age_table[i].words);
        put_years(arena, row, age_table[i].from, age_table[i].to);
        put_text(arena, row, "source", age_table[i].custom);
        node_push(arena, words, row);
    }
    node_put(arena, map, "marks", marks);
    node_put(arena, map, "words", words);
    return map;
}
