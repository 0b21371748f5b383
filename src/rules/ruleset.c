// SPDX-License-Identifier: MIT
// Finding rules by name: in arrays sorted once at load, things through an index of their names.
#include "rules/ruleset.h"

#include <string.h>

#include "text/hint.h"
#include "text/index.h"
#include "text/order.h"

const struct flaw *ruleset_flaw(const struct ruleset *rules, const char *id) {
    uint32_t at = index_find(rules->flaw_index, id, strlen(id));
    return at == INDEX_NONE ? NULL : rules->flaws_by_id[at];
}

const struct family *ruleset_family(const struct ruleset *rules, const char *id) {
    for (size_t i = 0; i < rules->family_count; i++)
        if (text_same(rules->families_by_id[i]->rule.id, id)) return rules->families_by_id[i];
    return NULL;
}

const struct word_group *ruleset_group(const struct ruleset *rules, const char *id, size_t size) {
    for (size_t i = 0; i < rules->group_count; i++) {
        const char *own = rules->groups[i]->rule.id;
        if (!strncmp(own, id, size) && !own[size]) return rules->groups[i];
    }
    return NULL;
}

const struct thing *const *ruleset_things(const struct ruleset *rules, const char *name, size_t *count) {
    uint32_t from = index_find(rules->thing_index, name, strlen(name));
    *count = 0;
    if (from == INDEX_NONE) return NULL;
    size_t end = from;
    while (end < rules->thing_count && text_same(rules->thing_names[end], name)) end++;
    *count = end - from;
    return &rules->things_by_noun[from];
}

size_t ruleset_longest_thing(const struct ruleset *rules, const char *word, size_t size) {
    uint32_t first = index_find(rules->thing_firsts, word, size);
    return first == INDEX_NONE ? 0 : rules->thing_words[first];
}

const char *ruleset_flaw_hint(struct arena *arena, const struct ruleset *rules, const char *id) {
    struct nearest nearest = nearest_start(id);
    for (size_t i = 0; i < rules->flaw_count; i++) nearest_offer(&nearest, rules->flaws_by_id[i]->rule.id);
    return nearest_hint(arena, &nearest);
}

const char *ruleset_family_hint(struct arena *arena, const struct ruleset *rules, const char *id) {
    struct nearest nearest = nearest_start(id);
    for (size_t i = 0; i < rules->family_count; i++)
        nearest_offer(&nearest, rules->families_by_id[i]->rule.id);
    return nearest_hint(arena, &nearest);
}
