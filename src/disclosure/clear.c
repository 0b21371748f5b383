// SPDX-License-Identifier: MIT
// What was not looked at, and what was looked for and not seen: never wider than it was said. A part stands
// before what was looked for ("On the lens, no cracks seen"), a place behind it.
#include <string.h>

#include "disclosure/clause.h"
#include "item/wording.h"
#include "text/buf.h"
#include "text/order.h"
#include "text/utf8.h"

enum { SOUGHT_MOST = 6, AHEAD = 100 }; // in one sentence; how far others are looked for that may join

// What a person wrote may hold commas and an "and" of its own.
static const char *areas_list(struct arena *arena, const char *const *items, size_t count) {
    struct buf out = buf_start(arena);
    for (size_t i = 0; i < count; i++) buf_format(&out, "%s%s", i ? "; " : "", items[i]);
    return out.at;
}

static const char *or_list(struct arena *arena, const char *const *items, size_t count) {
    struct buf out = buf_start(arena);
    for (size_t i = 0; i < count; i++)
        buf_format(&out, "%s%s", !i ? "" : i + 1 == count ? " or " : ", ", items[i]);
    return out.at;
}

void tell_unchecked(struct disclosure_maker *maker, const struct record *record) {
    struct arena *arena = maker->arena;
    const char **kinds = arena_array(arena, record->unchecked.count + 1, sizeof *kinds);
    const char **areas = arena_array(arena, record->unchecked.count + 1, sizeof *areas);
    size_t kind_count = 0, area_count = 0;
    for (size_t i = 0; i < record->unchecked.count; i++) {
        bool known = false; // said twice, told once
        for (size_t k = i > AHEAD ? i - AHEAD : 0; k < i; k++)
            known |= text_same(record->unchecked.at[k], record->unchecked.at[i]);
        if (known) continue;
        const struct flaw *flaw = ruleset_flaw(maker->rules, record->unchecked.at[i]);
        if (flaw)
            kinds[kind_count++] = wording_sought(arena, flaw, NULL);
        else
            areas[area_count++] = record->unchecked.at[i];
    }
    struct note_span none = {0, 0};
    for (size_t i = 0; i < kind_count; i += SOUGHT_MOST) {
        size_t n = kind_count - i < SOUGHT_MOST ? kind_count - i : SOUGHT_MOST;
        disclosure_add(maker, arena_format(arena, "not checked for %s", or_list(arena, kinds + i, n)),
                       "unchecked", none);
    }
    for (size_t i = 0; i < area_count; i += SOUGHT_MOST) {
        size_t n = area_count - i < SOUGHT_MOST ? area_count - i : SOUGHT_MOST;
        disclosure_add(maker, arena_format(arena, "not checked: %s", areas_list(arena, areas + i, n)),
                       "unchecked", none);
    }
}

static bool same(const char *a, const char *b) {
    return (!a && !b) || (a && b && text_same(a, b));
}

// An absence names its part in what is sought ("missing knobs"), and so does a loose part; any other kind
// before it.
static const char *part_before(const struct item_clear *clear) {
    return wording_sought_holds_part(clear->told ? clear->told : clear->kind, clear->part) ? NULL
                                                                                           : clear->part;
}

static const char *place_of(struct arena *arena, const struct item_clear *clear) {
    return clear->where && strcmp(clear->where, "all over") != 0
               ? arena_format(arena, " %s", say_place(arena, clear->where))
               : "";
}

// Looked for all over, and found at one place: then it is of others that none were seen.
static const char *sought(struct arena *arena, const struct record *record, const struct item_clear *clear) {
    const char *what = wording_sought(arena, clear->told ? clear->told : clear->kind, clear->part);
    if (clear->where || clear->part) return what;
    for (size_t i = 0; i < record->flaw_count; i++)
        if (record->flaws[i].kind == clear->kind) return arena_format(arena, "other %s", what);
    return what;
}

// "Key present", "the lid is there": said of a part that is there, and not of what does not lack.
static bool is_there(struct arena *arena, const struct record *record, const struct item_clear *clear) {
    static const char *const denials[] = {"missing", "no ", "not ",  "none",   "lost",
                                          "lack",    "n't", "never", "without"};
    const char *part = clear->part ? clear->part : clear->kind->part;
    if (clear->kind->form != ABSENCE || clear->where || !clear->span.to || !record->notes || !part)
        return false;
    const char *said = utf8_fold(
        arena, arena_copy(arena, record->notes + clear->span.from, clear->span.to - clear->span.from));
    for (size_t i = 0; i < sizeof denials / sizeof *denials; i++)
        if (strstr(said, denials[i])) return false;
    return strstr(said, say_singular(arena, utf8_fold(arena, part))) != NULL;
}

// "All 40 pieces present": the kind's own noun, in the number that the notes have it in.
static const char *part_there(struct arena *arena, const struct record *record,
                              const struct item_clear *clear) {
    if (clear->part) return clear->part;
    const char *many = say_plural(arena, clear->kind->part);
    const char *said = utf8_fold(
        arena, arena_copy(arena, record->notes + clear->span.from, clear->span.to - clear->span.from));
    bool each = !strncmp(said, "every ", 6) || !strncmp(said, "each ", 5); // "every button is on it"
    return each || strstr(said, many) ? many : clear->kind->part;
}

// That nothing lacks was told where the pieces were counted.
static bool is_counted(const struct record *record, const struct item_clear *clear) {
    bool counted = false;
    for (size_t i = 0; i < record->flaw_count; i++)
        counted |= text_same(record->flaws[i].kind->rule.id, "complete-counted");
    return counted && !clear->part && text_same(clear->kind->rule.id, "missing-pieces");
}

static void tell_present(struct disclosure_maker *maker, const struct record *record, bool *told) {
    struct arena *arena = maker->arena;
    const char *items[SOUGHT_MOST];
    size_t count = 0, first = 0;
    bool many = false;
    for (size_t i = 0; i < record->clear_count && count < SOUGHT_MOST; i++) {
        const struct item_clear *clear = &record->clear[i];
        if (!is_there(arena, record, clear)) continue;
        const char *part = part_there(arena, record, clear);
        bool known = false;
        told[i] = true;
        if (is_counted(record, clear)) continue;
        for (size_t k = 0; k < count; k++) known |= !strcmp(items[k] + 4, part);
        if (known) continue;
        if (!count) first = i;
        many |= say_is_plural(part);
        items[count++] = arena_format(arena, "the %s", part);
    }
    if (!count) return;
    disclosure_add(maker,
                   arena_format(arena, "%s %s present", say_list(arena, items, count, maker->locale),
                                count > 1 || many ? "are" : "is"),
                   "clear", record->clear[first].span);
}

void tell_clear(struct disclosure_maker *maker, const struct record *record) {
    struct arena *arena = maker->arena;
    bool *told = arena_array(arena, record->clear_count + 1, sizeof *told);
    tell_present(maker, record, told);
    const char *items[SOUGHT_MOST];
    for (size_t i = 0; i < record->clear_count; i++) {
        if (told[i]) continue;
        const struct item_clear *head = &record->clear[i];
        size_t count = 0;
        for (size_t j = i; j < record->clear_count && j < i + AHEAD && count < SOUGHT_MOST; j++) {
            const struct item_clear *clear = &record->clear[j];
            if (told[j] || !same(head->where, clear->where) || !same(part_before(head), part_before(clear)))
                continue;
            const char *what = sought(arena, record, clear);
            bool alone = wording_sought_holds_part(clear->kind, clear->part) && strstr(what, " or ");
            if (alone && count) continue; // "no stuck or stiff lid or loose handle"
            told[j] = true;
            items[count++] = what;
            if (alone) break;
        }
        const char *part = part_before(head);
        const char *front = part ? arena_format(arena, "on the %s, ", part) : "";
        disclosure_add(
            maker,
            arena_format(arena, "%sno %s seen%s", front, or_list(arena, items, count), place_of(arena, head)),
            "clear", head->span);
    }
}
