// SPDX-License-Identifier: MIT
// "The lid and two of the six knobs are missing from the left side."
#include <string.h>

#include "notes/faults.h"
#include "notes/lacking.h"
#include "notes/paragraph.h"
#include "text/order.h"

static const char *after(const char *text, const char *head) {
    size_t n = strlen(head);
    return strncmp(text, head, n) ? NULL : text + n;
}

static bool is_part_of(struct arena *arena, const struct flaw *kind, const char *part) {
    return kind->part && (text_same(kind->part, part) || text_same(say_plural(arena, kind->part), part) ||
                          (kind->part_plural && text_same(kind->part_plural, part)));
}

// "the lid", "two knobs", "both handles", "all four legs", "two of the six screws".
static bool subject_read(struct told *told, const char *text) {
    struct item_flaw flaw = {.kind = NULL};
    const char *part = after(text, "the "), *rest;
    if (!part && (part = after(text, "both ")) != NULL)
        flaw.count = flaw.of = 2;
    else if (!part && (rest = after(text, "all ")) != NULL) {
        part = number_after(rest, &flaw.count);
        flaw.of = flaw.count;
    } else if (!part && (part = number_after(text, &flaw.count)) != NULL &&
               (rest = after(part, "of the ")) != NULL) {
        if ((part = number_after(rest, &flaw.of)) == NULL) return false;
    }
    if (!part || !*part || told->flaw_count == TOLD_MOST) return false;
    // Another statement, or a part with its place: not as the disclosure words it.
    static const char *const words[] = {
        " is ",      " are ",     " has ",     " have ",   " that ",   " which ", " goes ",  " over ",
        " at the ",  " on the ",  " for the ", " for it",  " sticks ", " slips ", " jams ",  " leaks ",
        " rattles ", " wobbles ", " because ", " of its ", " leans ",  " hums ",  " works ", " turns ",
        " none ",    " I ",       " i ",       " we ",     " no ",     " not "};
    const char *alone =
        arena_format(told->arena, " %s ", part); // "one has perished, the other's lid is missing"
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (strstr(alone, words[i])) return false;
    size_t size = strlen(part);
    if (size > 3 && text_same(part + size - 4, " one")) return false; // "the big one": of what is told before
    if (flaw.count > 1) part = say_singular(told->arena, part);
    flaw.kind = absent_kind(told->arena, told->rules, part);
    if (!flaw.kind) return false; // its file is broken
    const char *other = lacking_kind(say_singular(told->arena, part), "*");
    if ((other || absent_is_trim(say_singular(told->arena, part))) &&
        text_same(flaw.kind->rule.id, "missing-accessory"))
        return false; // "the label", "the seed pearls": the goods decide
    if (text_same(flaw.kind->rule.id, "missing-jacket") && strstr(part, "cover")) return false; // a machine's
    bool own = is_part_of(told->arena, flaw.kind, part);
    if (!own || (flaw.kind->says && !flaw.count)) flaw.part = part;
    told->flaws[told->flaw_count++] = flaw;
    return true;
}

// Subjects of a list; one that is none belongs to the part before it ("the lock and key").
static bool subjects_read(struct told *told, const char *text) {
    const char *sign = text, *behind;
    while ((sign = list_sign(sign, &behind)) != NULL) {
        size_t before = told->flaw_count;
        const char *head = arena_copy(told->arena, text, (size_t)(sign - text));
        if (subject_read(told, head) && subjects_read(told, behind)) return true;
        told->flaw_count = before;
        sign = behind;
    }
    return subject_read(told, text);
}

// "from the hinge" is the hinge.
static const char *missing_from(struct told *told, const char *place) {
    const char *from = after(place, "from ");
    if (!from) return place_bare(told, place);
    const char *on = arena_format(told->arena, "on %s", from), *bare = place_bare(told, on);
    return bare == on ? place : bare;
}

static bool missing_is_ours(struct told *told, const char *place) {
    const char *from = after(place, "from ");
    return place_is_ours(told, place) ||
           (from && place_is_ours(told, arena_format(told->arena, "on %s", from)));
}

static bool tell(struct told *told, const char *subjects, const char *rest) {
    struct item_flaw common = {.kind = NULL};
    told->flaw_count = 0;
    if (!subjects_read(told, subjects)) return false;
    rest = degree_behind(told, rest, &common);
    if (*rest && (*rest != ' ' || !missing_is_ours(told, rest + 1))) return false;
    for (size_t i = 0; i < told->flaw_count; i++) {
        struct item_flaw *flaw = &told->flaws[i];
        flaw->severity = common.severity;
        flaw->has_size = common.has_size;
        flaw->size = common.size;
        if (*rest) flaw->where = missing_from(told, rest + 1);
    }
    return true;
}

bool absence_read(struct told *told, const char *text) {
    static const char *const verbs[] = {" is missing", " are missing", " may be missing"};
    for (const char *at = text; *at; at++) {
        if (*at != ' ') continue;
        for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++) {
            const char *rest = after(at, verbs[i]);
            if (!rest || (*rest && *rest != ' ')) continue;
            told->maybe = i == 2;
            const char *subjects = arena_copy(told->arena, text, (size_t)(at - text));
            bool several = strstr(subjects, ", ") != NULL;
            if ((several && i == 0) || strchr(subjects, '(')) continue; // a seller's: "five hooks, one hook"
            if (tell(told, subjects, rest)) return true;
        }
    }
    told->flaw_count = 0;
    told->maybe = false;
    return false;
}
