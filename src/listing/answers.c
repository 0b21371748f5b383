// SPDX-License-Identifier: MIT
// A yes to a fault is a flaw, a no is "looked for and not seen", and what was not looked at is not checked.
// Earlier entries of the same kind without a place give way; one at a place stays, since the answer speaks of
// the whole.
#include "listing/answers.h"

#include <string.h>

#include "text/hint.h"
#include "text/order.h"

struct answerer {
    struct arena *arena;
    const struct ruleset *rules;
    struct record *record;
    struct diags *diags;
};

static bool complain(struct answerer *a, const char *hint, const char *message) {
    diags_add(a->diags, CODE_USAGE, a->record->at, hint, "%s", message);
    return false;
}

static void forget(struct answerer *a, const struct flaw *kind) {
    struct record *r = a->record;
    size_t kept = 0;
    for (size_t i = 0; i < r->flaw_count; i++)
        if (r->flaws[i].kind != kind || r->flaws[i].part || r->flaws[i].where) r->flaws[kept++] = r->flaws[i];
    r->flaw_count = kept;
    kept = 0;
    for (size_t i = 0; i < r->clear_count; i++)
        if (r->clear[i].kind != kind || r->clear[i].part || r->clear[i].where) r->clear[kept++] = r->clear[i];
    r->clear_count = kept;
    const char **left = arena_array(a->arena, r->unchecked.count + 1, sizeof *left);
    kept = 0;
    for (size_t i = 0; i < r->unchecked.count; i++)
        if (!text_same(r->unchecked.at[i], kind->rule.id)) left[kept++] = r->unchecked.at[i];
    r->unchecked = (struct texts){left, kept};
}

static void *grown(struct arena *arena, const void *old, size_t count, size_t size) {
    void *list = arena_array(arena, count + 1, size);
    if (count) memcpy(list, old, count * size);
    return list;
}

static void set_fault(struct answerer *a, const struct flaw *kind) {
    struct record *r = a->record;
    for (size_t i = 0; i < r->flaw_count; i++)
        if (r->flaws[i].kind == kind) return; // told already, and better
    forget(a, kind);
    r->flaws = grown(a->arena, r->flaws, r->flaw_count, sizeof *r->flaws);
    r->flaws[r->flaw_count++] = (struct item_flaw){.kind = kind};
}

static void set_clear(struct answerer *a, const struct flaw *kind) {
    struct record *r = a->record;
    forget(a, kind);
    r->clear = grown(a->arena, r->clear, r->clear_count, sizeof *r->clear);
    r->clear[r->clear_count++] = (struct item_clear){.kind = kind, .none_seen = true};
}

static void set_unchecked(struct answerer *a, const struct flaw *kind) {
    struct record *r = a->record;
    forget(a, kind);
    const char **list = grown(a->arena, r->unchecked.at, r->unchecked.count, sizeof *list);
    list[r->unchecked.count] = kind->rule.id;
    r->unchecked = (struct texts){list, r->unchecked.count + 1};
}

enum answer { ANSWER_YES, ANSWER_NO, ANSWER_NOT_LOOKED, ANSWER_NONE };

static enum answer answer_of(const char *word) {
    static const char *const words[] = {"yes", "no", "not-looked"};
    for (int i = 0; i < ANSWER_NONE; i++)
        if (text_same(word, words[i])) return (enum answer)i;
    return ANSWER_NONE;
}

static bool apply_check(struct answerer *a, const struct check *check, enum answer answer) {
    if (!check->flaws.count || (check->yes == YES_OPEN && answer != ANSWER_NOT_LOOKED))
        return complain(
            a, "write what you found into the record",
            arena_format(a->arena, "--answer: '%s' is not answered by yes or no: %s", check->id, check->ask));
    bool fault = answer == (check->yes == YES_FAULT ? ANSWER_YES : ANSWER_NO);
    if (answer != ANSWER_NOT_LOOKED && fault && check->flaws.count > 1) {
        struct buf kinds = buf_start(a->arena);
        for (size_t i = 0; i < check->flaws.count; i++)
            buf_format(&kinds, "%s%s=yes", i ? " or " : "", check->flaws.at[i]);
        return complain(a, arena_format(a->arena, "say which: %s", kinds.at),
                        arena_format(a->arena, "--answer: '%s' asks for several faults", check->id));
    }
    for (size_t i = 0; i < check->flaws.count; i++) {
        const struct flaw *kind = ruleset_flaw(a->rules, check->flaws.at[i]);
        if (!kind) continue;
        if (answer == ANSWER_NOT_LOOKED)
            set_unchecked(a, kind);
        else if (fault)
            set_fault(a, kind);
        else
            set_clear(a, kind);
    }
    return true;
}

static bool apply_flaw(struct answerer *a, const struct flaw *kind, enum answer answer) {
    if (answer == ANSWER_YES)
        set_fault(a, kind);
    else if (answer == ANSWER_NO)
        set_clear(a, kind);
    else
        set_unchecked(a, kind);
    return true;
}

static bool apply(struct answerer *a, const char *id, const char *word) {
    enum answer answer = answer_of(word);
    if (answer == ANSWER_NONE)
        return complain(a, "yes, no or not-looked",
                        arena_format(a->arena, "--answer: '%s' answers nothing", word));
    const struct family *family = a->record->family;
    struct nearest nearest = nearest_start(id);
    for (size_t i = 0; family && i < family->check_count; i++) {
        if (text_same(family->checks[i].id, id)) return apply_check(a, &family->checks[i], answer);
        nearest_offer(&nearest, family->checks[i].id);
    }
    const struct flaw *kind = ruleset_flaw(a->rules, id);
    if (kind) return apply_flaw(a, kind, answer);
    const char *hint = nearest_hint(a->arena, &nearest);
    return complain(a, hint ? hint : ruleset_flaw_hint(a->arena, a->rules, id),
                    arena_format(a->arena, "--answer: there is no question '%s' about this thing", id));
}

bool answers_apply(struct arena *arena, const struct ruleset *rules, struct record *record,
                   const char *const *answers, size_t count, struct diags *diags) {
    struct answerer a = {arena, rules, record, diags};
    bool fine = true;
    size_t known;
    if (count && !record->family) record->family = listing_family(arena, rules, record, &known);
    for (size_t i = 0; i < count; i++) {
        const char *equals = strchr(answers[i], '=');
        const char *id = equals ? arena_copy(arena, answers[i], (size_t)(equals - answers[i])) : answers[i];
        bool twice = false;
        for (size_t k = 0; equals && k < i; k++)
            twice |= !strncmp(answers[k], answers[i], (size_t)(equals - answers[i]) + 1);
        if (!equals)
            fine = complain(&a, "write ID=yes, ID=no or ID=not-looked",
                            arena_format(arena, "--answer: '%s' has no answer", id));
        else if (twice)
            fine = complain(&a, NULL, arena_format(arena, "--answer: '%s' is answered twice", id));
        else
            fine &= apply(&a, id, equals + 1);
    }
    return fine;
}
