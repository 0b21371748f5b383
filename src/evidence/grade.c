// SPDX-License-Identifier: MIT
// Severity unknown takes the moderate cap, never the light one. Status and feature flaws are told but lower
// nothing, unless their rule caps below A all the same (function not tried is C whatever the looks).
#include "evidence/grade.h"

#include <string.h>

#include "text/order.h"

static const char *const letters[] = {"A", "B", "C", "D"};
static const char *const words[] = {"very good", "good", "fair", "poor"};

const char *grade_letter(enum grade grade) {
    return letters[grade];
}
const char *grade_word(enum grade grade) {
    return words[grade];
}

static bool lowers(const struct item_flaw *flaw) {
    return flaw->kind->class != CLASS_FEATURE && flaw->kind->class != CLASS_STATUS;
}

static const char *reason(struct arena *arena, const struct item_flaw *flaw, enum grade cap) {
    const char *place = flaw->part ? flaw->part : flaw->where;
    const char *degree =
        flaw->severity == SEVERITY_UNKNOWN ? "degree not stated" : severity_name(flaw->severity);
    return arena_format(arena, "%s%s%s (%s): %s", flaw->kind->print, place ? ", " : "", place ? place : "",
                        degree, letters[cap]);
}

// schema.org: an item that does not work or is sold for parts is DamagedCondition, everything else here is
// used goods. New and refurbished are claims that no record of this kind proves.
static const char *schema_condition(const struct record *record, enum grade grade) {
    for (size_t i = 0; i < record->flaw_count; i++) {
        const char *id = record->flaws[i].kind->rule.id;
        if (text_same(id, "not-working") || text_same(id, "for-parts")) return "DamagedCondition";
    }
    return grade == GRADE_D ? "DamagedCondition" : "UsedCondition";
}

struct grading grade_record(struct arena *arena, const struct record *record) {
    struct grading g = {.grade = GRADE_A};
    g.reasons = arena_array(arena, record->flaw_count + 1, sizeof *g.reasons);
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        enum grade cap = flaw->kind->cap[flaw->severity];
        if (!lowers(flaw) || cap == GRADE_A) continue;
        if (cap > g.grade) g.grade = cap;
        g.reasons[g.count++] = reason(arena, flaw, cap);
    }
    // A is said only of what was looked over: with nothing told clear and flaws unknown, B is the most that
    // can be said.
    if (g.grade == GRADE_A && !record->clear_count) {
        g.grade = GRADE_B;
        g.reasons[g.count++] = "nothing was said to be looked for: B";
    }
    g.schema_org = schema_condition(record, g.grade);
    return g;
}
