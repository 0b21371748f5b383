// SPDX-License-Identifier: MIT
// The rule set: loaded once, never changed, shared by every draft and every thread. Owner: the arena it was
// loaded into.
#ifndef RULES_RULESET_H
#define RULES_RULESET_H

#include "rules/model.h"
#include "text/diag.h"

struct triggers;
struct signs;
struct index;

struct ruleset {
    const struct pack **packs;
    size_t pack_count;
    const struct flaw *
        *flaws; // in the order of the packs' files; an override stands where the first one stood
    size_t flaw_count;
    const struct family **families;
    size_t family_count;
    const struct claim **claims;
    size_t claim_count;
    const struct bound **bounds;
    size_t bound_count;
    const struct caution **cautions;
    size_t caution_count;
    const struct word_group **groups;
    size_t group_count;
    size_t finder_count; // numbers in use by finders
    const struct triggers *claim_triggers, *bound_triggers, *caution_triggers;
    const struct signs *signs;     // of the cautions
    const struct flaw **narrowing; // the flaws that narrow others, in their order
    size_t narrowing_count;

    // For finding by name; private to ruleset.c.
    const struct flaw **flaws_by_id;
    const struct index *flaw_index; // an id to its place in flaws_by_id
    const struct family **families_by_id;
    const struct thing **things_by_noun;
    size_t thing_count;
    const char *
        *thing_names; // what each entry of things_by_noun is found by: noun or other name, case-folded
    const struct index *thing_index;  // a name to the first entry of that name
    const struct index *thing_firsts; // the first words of all names, each with the first name of them
    unsigned char *thing_words;       // of such a name: the most words of a name that begins so
};

// Loads every folder as one pack; later packs override rules of the same kind and id. Every fault of every
// file is reported; a rule with a fault is left out. NULL only when no folder could be read at all.
struct ruleset *ruleset_load(struct arena *arena, const char *const *folders, size_t count,
                             struct diags *diags);

// NULL when there is none of that id.
const struct flaw *ruleset_flaw(const struct ruleset *rules, const char *id);
const struct family *ruleset_family(const struct ruleset *rules, const char *id);
const struct word_group *ruleset_group(const struct ruleset *rules, const char *id, size_t size);
// The things of that name (case-folded, singular), in the order of the families: first of `*count`, NULL when
// none.
const struct thing *const *ruleset_things(const struct ruleset *rules, const char *name, size_t *count);
// Of how many words is the longest name of a thing that begins with that word? Most words begin none: 0.
size_t ruleset_longest_thing(const struct ruleset *rules, const char *word, size_t size);
// "did you mean …?" among the ids.
const char *ruleset_flaw_hint(struct arena *arena, const struct ruleset *rules, const char *id);
const char *ruleset_family_hint(struct arena *arena, const struct ruleset *rules, const char *id);

#endif
