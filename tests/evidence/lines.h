// SPDX-License-Identifier: MIT
// Cases kept as lines of a file, their fields parted by "|"; "#" begins a remark.
#ifndef TEST_EVIDENCE_LINES_H
#define TEST_EVIDENCE_LINES_H

#include "../rules/support.h"

// The next field, without the blanks around it; `rest` goes behind it.
static inline char *line_field(char **rest) {
    char *field = *rest, *bar = strstr(field, " |");
    if (bar) *bar = '\0';
    *rest = bar ? bar + 2 : field + strlen(field);
    while (*field == ' ') field++;
    for (size_t n = strlen(field); n && field[n - 1] == ' ';) field[--n] = '\0';
    return field;
}

// Each line of the file that is no remark; `path` is below the source folder.
static inline void lines_each(struct arena *arena, const char *path, void (*read)(struct arena *, char *)) {
    struct diags diags = diags_start(arena);
    const struct source *source = folder_read_file(arena, arena_format(arena, "%s/%s", source_folder(), path),
                                                   LIMIT_RULE_FILE_BYTES, &diags);
    ck_assert_msg(source != NULL, "%s", path);
    char *rest, *text = arena_copy(arena, source->text, source->size);
    for (char *at = strtok_r(text, "\n", &rest); at; at = strtok_r(NULL, "\n", &rest))
        if (*at != '#') read(arena, at);
}

// The list without one of its entries.
static inline struct texts texts_without(struct arena *arena, const struct texts *texts, size_t i) {
    struct texts left = {arena_array(arena, texts->count + 1, sizeof *left.at), 0};
    for (size_t k = 0; k < texts->count; k++)
        if (k != i) left.at[left.count++] = texts->at[k];
    return left;
}

static inline struct short_form *forms_without(struct arena *arena, const struct short_form *forms,
                                               size_t count, size_t i) {
    struct short_form *left = arena_array(arena, count, sizeof *left);
    for (size_t k = 0, n = 0; k < count; k++)
        if (k != i) left[n++] = forms[k];
    return left;
}

#endif
