// SPDX-License-Identifier: MIT
#include "support_facts.h"

// Every fact of the record as a line of its own.
static const char *facts_of(struct arena *arena, const struct record *record) {
    struct buf out = buf_start(arena);
    buf_format(&out, "\n");
    if (record->type.value)
        buf_format(&out, "type%s %s\n", record->type.sure == SURE_STATED ? "" : "?", record->type.value);
    for (size_t i = 0; i < record->others.count; i++) buf_format(&out, "other %s\n", record->others.at[i]);
    if (record->family) buf_format(&out, "family %s\n", record->family->rule.id);
    for (size_t i = 0; i < record->attribute_count; i++) {
        const struct value *value = &record->attributes[i];
        buf_format(&out, "%s%s %s%s%s\n", value->name, value->sure == SURE_STATED ? "" : "?", value->value,
                   value->of ? "@" : "", value->of ? value->of : "");
    }
    for (size_t i = 0; i < record->include_count; i++)
        if (record->includes[i].count)
            buf_format(&out, "include %d %s\n", record->includes[i].count, record->includes[i].what);
        else
            buf_format(&out, "include %s\n", record->includes[i].what);
    for (size_t i = 0; i < record->mark_count; i++) buf_format(&out, "mark %s\n", record->marks[i].text);
    for (size_t i = 0; i < record->fit_count; i++)
        buf_format(&out, "fits %s\n", record->fits[i].brand ? record->fits[i].brand : "");
    if (record->count) buf_format(&out, "count %d\n", record->count);
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        buf_format(&out, "%s%s%s\n", flaw->kind->rule.id, flaw->part ? " " : "",
                   flaw->part ? flaw->part : "");
    }
    return out.at;
}

// "type shoe" is also told by "type leather shoe".
static bool holds(struct arena *arena, const char *facts, const char *fact) {
    if (strstr(facts, arena_format(arena, "\n%s\n", fact))) return true;
    if (strncmp(fact, "type ", 5) != 0) return false;
    const char *type = strstr(facts, "\ntype ");
    const char *end = strstr(facts, arena_format(arena, " %s\n", fact + 5));
    return type && end && strchr(type + 1, '\n') == end + strlen(fact) - 4;
}

struct group {
    const struct notes_case *cases;
    size_t count, wrong;
};

static void check_case(struct arena *arena, const struct notes_case *one, struct group *group) {
    const char *facts = facts_of(arena, support_read(arena, one->note));
    char *rest, *wants = arena_string(arena, one->wants);
    for (char *fact = strtok_r(wants, ";", &rest); fact; fact = strtok_r(NULL, ";", &rest)) {
        while (*fact == ' ') fact++;
        bool wanted = *fact != '!';
        if (holds(arena, facts, wanted ? fact : fact + 1) == wanted) continue;
        fprintf(stderr, "  %s\n    wanted: %s\n    got:%s", one->note, fact, facts);
        group->wrong++;
    }
}

static void check_group(struct arena *arena, void *context) {
    struct group *group = context;
    for (size_t i = 0; i < group->count; i++) check_case(arena, &group->cases[i], group);
}

void support_facts(const struct notes_case *cases, size_t count) {
    struct group group = {cases, count, 0};
    struct arena *arena = arena_new(NULL);
    bool fine = arena_try(arena, check_group, &group);
    arena_free(arena);
    ck_assert(fine);
    ck_assert_msg(!group.wrong, "%zu facts of %zu notes were read otherwise", group.wrong, count);
}
