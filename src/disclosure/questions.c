// SPDX-License-Identifier: MIT
// What the family's buyers ask that the record leaves open, and which pictures would show what it tells.
#include <string.h>

#include "disclosure/disclosure.h"

static bool names_flaw(const struct record *record, const char *id) {
    for (size_t i = 0; i < record->flaw_count; i++)
        if (!strcmp(record->flaws[i].kind->rule.id, id)) return true;
    for (size_t i = 0; i < record->clear_count; i++)
        if (!strcmp(record->clear[i].kind->rule.id, id)) return true;
    for (size_t i = 0; i < record->unchecked.count; i++)
        if (!strcmp(record->unchecked.at[i], id)) return true;
    return false;
}

static bool gives_fact(const struct record *record, const char *fact) {
    for (size_t i = 0; i < record->measurement_count; i++)
        if (!strcmp(record->measurements[i].dimension, fact)) return true;
    for (size_t i = 0; i < record->attribute_count; i++)
        if (!strcmp(record->attributes[i].name, fact)) return true;
    const struct node *value = node_get(record->tree, fact);
    return value && value->kind != NODE_NULL && (value->kind != NODE_LIST || value->count);
}

static bool answered(const struct record *record, const struct check *check) {
    for (size_t i = 0; i < check->flaws.count; i++)
        if (names_flaw(record, check->flaws.at[i])) return true;
    for (size_t i = 0; i < check->facts.count; i++)
        if (gives_fact(record, check->facts.at[i])) return true;
    return false;
}

static void put(struct questions *q, const char *ask, const char *kind, const char *because) {
    for (size_t i = 0; i < q->count; i++)
        if (!strcmp(q->items[i].ask, ask)) return;
    if (q->count < QUESTIONS_MOST) q->items[q->count++] = (struct question){ask, kind, because};
}

// A flaw without degree, place or size asks first: the answer changes grade and wording at once.
static void ask_about_flaws(struct questions *q, struct arena *arena, const struct record *record) {
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        const struct flaw *kind = flaw->kind;
        bool open =
            flaw->severity == SEVERITY_UNKNOWN && kind->cap[SEVERITY_LIGHT] != kind->cap[SEVERITY_HEAVY];
        if (!open || !kind->ask.count) continue;
        size_t which = (flaw->where || flaw->part) && kind->ask.count > 1 ? 1 : 0;
        const char *place = flaw->part ? flaw->part : flaw->where;
        const char *thing = place ? arena_format(arena, "%s, %s", kind->print, place) : kind->print;
        put(q, arena_format(arena, "%s: %s", say_sentence_case(arena, thing), kind->ask.at[which]),
            kind->rule.id, "its degree sets the grade");
    }
}

struct questions questions_ask(struct arena *arena, const struct record *record) {
    struct questions q = {.items = arena_array(arena, QUESTIONS_MOST, sizeof *q.items)};
    const struct family *family = record->family;
    if (!record->type.value) put(&q, "What would a buyer call this thing?", "type", "a title needs its noun");
    ask_about_flaws(&q, arena, record);
    q.asked = family->check_count;
    for (size_t i = 0; i < family->check_count; i++) {
        const struct check *check = &family->checks[i];
        if (answered(record, check))
            q.answered++;
        else
            put(&q, check->ask, check->id, "buyers of this family ask it");
    }
    return q;
}

static bool shows(const struct photo *photo, const char *what) {
    return photo->shows && (strstr(photo->shows, what) || strstr(what, photo->shows));
}

static const char *file_for(const struct record *record, const char *print, const char *place) {
    for (size_t i = 0; i < record->photo_count; i++) {
        const struct photo *photo = &record->photos[i];
        if (shows(photo, print) || (place && shows(photo, place)))
            return photo->file ? photo->file : photo->shows;
    }
    return NULL;
}

struct photo_list photos_wish(struct arena *arena, const struct record *record) {
    const struct family *family = record->family;
    struct photo_list list = {
        arena_array(arena, record->flaw_count + family->photo_count + 1, sizeof *list.items), 0};
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        const char *place = flaw->part ? flaw->part : flaw->where;
        list.items[list.count++] =
            (struct photo_entry){flaw->kind->photo, arena_format(arena, "flaw %s", flaw->kind->rule.id),
                                 flaw->photo ? flaw->photo : file_for(record, flaw->kind->print, place)};
    }
    for (size_t i = 0; i < family->photo_count; i++)
        list.items[list.count++] = (struct photo_entry){family->photos[i].shows, "family",
                                                        file_for(record, family->photos[i].shows, NULL)};
    return list;
}
