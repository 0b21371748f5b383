// SPDX-License-Identifier: MIT
// Packs to rule set. A file is a list of rules; a rule's first word is its kind. Order is fixed: pack, file
// name, position, so nothing depends on the disk. A rule with a fault is reported and left out; the rest is
// loaded all the same.
#include <stdlib.h>
#include <string.h>

#include "format/read.h"
#include "rules/bind.h"
#include "rules/finish.h"
#include "rules/folder.h"
#include "text/hint.h"
#include "rules/ruleset.h"
#include "text/limits.h"
#include "text/order.h"

struct list {
    void **at;
    size_t count, room;
};

struct loader {
    struct arena *arena;
    struct arena *trees; // of one file at a time: what rules keep of them is copied
    struct diags *diags;
    struct list kinds[RULE_KIND_COUNT];
    const char *pack;                  // id of the pack being read
    size_t pack_from[RULE_KIND_COUNT]; // where its rules begin
    int held[RULE_KIND_COUNT];         // rules it holds, overriding ones included
};

static void push(struct loader *l, struct list *list, void *item) {
    list->at = arena_grow(l->arena, (void *)list->at, list->count, &list->room, sizeof *list->at);
    list->at[list->count++] = item;
}

// The same id again: in the same pack a fault, in a later one an override in the old place.
static void keep(struct loader *l, enum rule_kind kind, struct rule *rule) {
    struct list *list = &l->kinds[kind];
    l->held[kind]++;
    for (size_t i = 0; i < list->count; i++) {
        const struct rule *old = list->at[i];
        if (!text_same(old->id, rule->id)) continue;
        if (text_same(old->pack, rule->pack)) {
            struct line_column first = source_locate(old->at.source, old->at.from);
            diags_add(l->diags, CODE_RULE_SAME_ID, rule->at,
                      arena_format(l->arena, "the first stands in %s:%zu", old->at.source->name, first.line),
                      "the %s '%s' is there twice", schema_kind(kind)->name, rule->id);
        } else
            list->at[i] = rule;
        return;
    }
    push(l, list, rule);
}

static bool good_id(const char *id) {
    if (!*id) return false;
    for (const char *c = id; *c; c++)
        if (!((*c >= 'a' && *c <= 'z') || (*c >= '0' && *c <= '9') || *c == '-')) return false;
    return true;
}

static const struct kind_spec *kind_of(struct loader *l, const struct node *map, enum rule_kind *kind) {
    if (map->kind == NODE_MAP && map->count) {
        const struct kind_spec *spec = schema_kind_of_name(map->members[0].key, kind);
        if (spec) return spec;
        struct nearest nearest = nearest_start(map->members[0].key);
        for (int i = 0; i < RULE_KIND_COUNT; i++)
            nearest_offer(&nearest, schema_kind((enum rule_kind)i)->name);
        const char *hint = nearest_hint(l->arena, &nearest);
        diags_add(l->diags, CODE_RULE_KIND, map->members[0].key_at,
                  hint ? hint
                       : "a rule begins with its kind: pack, flaw, family, claim, bound, caution or group",
                  "there is no kind of rule '%s'", map->members[0].key);
    } else
        diags_add(l->diags, CODE_RULE_KIND, map->at, "write '- flaw: some-id'",
                  "a rule is a map that begins with its kind");
    return NULL;
}

static void load_rule(struct loader *l, const struct node *map) {
    enum rule_kind kind;
    const struct kind_spec *spec = kind_of(l, map, &kind);
    if (!spec) return;
    const struct node *id = map->members[0].value;
    if ((id->kind != NODE_TEXT && id->kind != NODE_NUMBER) || !good_id(id->text)) {
        diags_add(l->diags, CODE_RULE_VALUE, id->at, "ids are lower-case letters, digits and hyphens",
                  "'%s' wants an id", spec->name);
        return;
    }
    struct rule *rule = arena_alloc(l->arena, spec->size);
    rule->id = arena_string(l->arena, id->text);
    rule->at = id->at;
    if (kind == RULE_PACK) l->pack = rule->id;
    rule->pack = l->pack;
    bool fine = bind_keys(l->arena, spec->keys, map, spec->name, rule, l->diags);
    if (finish_rule(l->arena, kind, rule, l->diags) && fine) keep(l, kind, rule);
}

struct file {
    struct loader *loader;
    const struct source *source;
};

static void load_list(struct arena *trees, void *context) {
    const struct file *file = context;
    struct loader *l = file->loader;
    const struct node *list = yaml_read(trees, file->source, l->diags);
    if (!list) return;
    if (list->kind != NODE_LIST) {
        diags_add(l->diags, CODE_RULE_SYNTAX, list->at, "begin each rule with '- '",
                  "a rule file is a list of rules");
        return;
    }
    for (size_t i = 0; i < list->count; i++) load_rule(l, list->members[i].value);
}

static void load_file(struct loader *l, const char *path) {
    struct file file = {l, folder_read_file(l->arena, path, LIMIT_RULE_FILE_BYTES, l->diags)};
    if (!file.source) return;
    if (!arena_try(l->trees, load_list, &file)) arena_give_up(l->arena);
    arena_reset(l->trees);
}

static void check_counts(struct loader *l) {
    struct list *packs = &l->kinds[RULE_PACK];
    if (!packs->count) return;
    const struct pack *pack = packs->at[packs->count - 1];
    if (!text_same(pack->rule.id, l->pack)) return;
    const struct {
        enum rule_kind kind;
        int said;
    } counts[] = {{RULE_FLAW, pack->flaws},   {RULE_FAMILY, pack->families},  {RULE_CLAIM, pack->claims},
                  {RULE_BOUND, pack->bounds}, {RULE_CAUTION, pack->cautions}, {RULE_GROUP, pack->groups}};
    for (size_t i = 0; i < sizeof counts / sizeof *counts; i++)
        if (counts[i].said && counts[i].said != l->held[counts[i].kind])
            diags_add(l->diags, CODE_RULE_COUNT, pack->rule.at,
                      "a file or a rule is lost, or the count in pack.yaml is old",
                      "pack '%s' should hold %d %s rules and holds %d", pack->rule.id, counts[i].said,
                      schema_kind(counts[i].kind)->name, l->held[counts[i].kind]);
}

static bool load_pack(struct loader *l, const char *folder) {
    size_t count;
    const char **paths = folder_list(l->arena, folder, ".yaml", &count, l->diags);
    if (!paths) {
        diags_add(l->diags, CODE_RULE_NONE, (struct place){NULL, 0, 0}, NULL, "no rules found in %s", folder);
        return false;
    }
    const char *slash = strrchr(folder, '/');
    l->pack = arena_format(l->arena, "%s", slash && slash[1] ? slash + 1 : folder);
    memset(l->held, 0, sizeof l->held);
    // pack.yaml first: it names the pack that the other files belong to.
    for (int rest = 0; rest < 2; rest++)
        for (size_t i = 0; i < count; i++) {
            size_t n = strlen(paths[i]);
            bool manifest = n >= 10 && text_same(paths[i] + n - 10, "/pack.yaml");
            if (manifest == !rest) load_file(l, paths[i]);
        }
    check_counts(l);
    return true;
}

static void free_trees(void *held) {
    struct arena **trees = held;
    arena_free(*trees);
    *trees = NULL;
}

struct ruleset *ruleset_load(struct arena *arena, const char *const *folders, size_t count,
                             struct diags *diags) {
    struct loader l = {.arena = arena, .diags = diags};
    size_t before = diags->count, loaded = 0;
    struct arena **trees = arena_alloc(arena, sizeof(struct arena *));
    arena_defer(arena, free_trees, trees); // where loading is left half way
    *trees = arena_new(arena_source(arena));
    if (!*trees) arena_give_up(arena);
    l.trees = *trees;
    int status = diags->status;
    diags->status = 0;
    for (size_t i = 0; i < count; i++) loaded += load_pack(&l, folders[i]);
    free_trees(trees);
    struct ruleset *rules = arena_alloc(arena, sizeof *rules);
    *rules = (struct ruleset){
        .packs = (const struct pack **)(void *)l.kinds[RULE_PACK].at,
        .pack_count = l.kinds[RULE_PACK].count,
        .flaws = (const struct flaw **)(void *)l.kinds[RULE_FLAW].at,
        .flaw_count = l.kinds[RULE_FLAW].count,
        .families = (const struct family **)(void *)l.kinds[RULE_FAMILY].at,
        .family_count = l.kinds[RULE_FAMILY].count,
        .claims = (const struct claim **)(void *)l.kinds[RULE_CLAIM].at,
        .claim_count = l.kinds[RULE_CLAIM].count,
        .bounds = (const struct bound **)(void *)l.kinds[RULE_BOUND].at,
        .bound_count = l.kinds[RULE_BOUND].count,
        .cautions = (const struct caution **)(void *)l.kinds[RULE_CAUTION].at,
        .caution_count = l.kinds[RULE_CAUTION].count,
        .groups = (const struct word_group **)(void *)l.kinds[RULE_GROUP].at,
        .group_count = l.kinds[RULE_GROUP].count,
    };
    if (loaded) finish_set(arena, rules, diags);
    // A fault of syntax in a rule file is a broken rule pack, whatever it would be in a record.
    if (diags->status == 4 && diags->count > before) diags->status = 3;
    if (status > diags->status) diags->status = status;
    return loaded ? rules : NULL;
}
