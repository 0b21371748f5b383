// SPDX-License-Identifier: MIT
// Which pictures the flaws and the family call for, and which of the record's show them. A picture shows a
// flaw where its words name the flaw's kind or its place.
#include <string.h>

#include "disclosure/concerns.h"
#include "disclosure/disclosure.h"
#include "text/order.h"
#include "text/utf8.h"

// With more than these nobody would look through them either.
enum { PHOTOS_MOST = 60, FLAWS_MOST = 60, PLACES_MOST = 6 };

static bool is_small_word(const char *word) {
    static const char *const small[] = {"the",  "a",    "an",   "of",   "on",  "in",    "at",  "and",
                                        "or",   "with", "from", "its",  "to",  "by",    "one", "both",
                                        "near", "part", "mark", "side", "all", "close", "up"};
    for (size_t i = 0; i < sizeof small / sizeof *small; i++)
        if (text_same(word, small[i])) return true;
    return strlen(word) < 3;
}

// The next word of `*at`, folded and singular; NULL at the end.
static const char *next_word(struct arena *arena, const char **at) {
    static const char signs[] = " ,.;:()/'\"-";
    *at += strspn(*at, signs);
    size_t n = strcspn(*at, signs);
    if (!n) return NULL;
    const char *word = utf8_fold(arena, arena_copy(arena, *at, n));
    *at += n;
    return say_singular(arena, word);
}

static bool holds(struct arena *arena, const char *text, const char *word) {
    for (const char *one; (one = next_word(arena, &text));)
        if (text_same(one, word)) return true;
    return false;
}

// Do the two share a word that says something?
static bool share_word(struct arena *arena, const char *a, const char *b) {
    if (!a || !b) return false;
    for (const char *word; (word = next_word(arena, &a));)
        if (!is_small_word(word) && holds(arena, b, word)) return true;
    return false;
}

static const char *name_of(const struct photo *photo) {
    return photo->file ? photo->file : photo->shows;
}

static const char *file_for_flaw(struct arena *arena, const struct record *record,
                                 const struct item_flaw *flaw) {
    if (flaw->photo) return flaw->photo;
    const struct flaw *kind = flaw->kind;
    for (size_t i = 0; i < record->photo_count && i < PHOTOS_MOST; i++) {
        const struct photo *photo = &record->photos[i];
        bool place =
            share_word(arena, flaw->part, photo->shows) || share_word(arena, flaw->where, photo->shows);
        bool named = share_word(arena, kind->noun ? kind->noun : kind->print, photo->shows) ||
                     share_word(arena, kind->adjective, photo->shows);
        bool anywhere = !flaw->part && !flaw->where;
        if (place || (named && anywhere)) return name_of(photo);
    }
    return NULL;
}

static const char *file_for_wish(struct arena *arena, const struct record *record, const char *wish) {
    for (size_t i = 0; i < record->photo_count && i < PHOTOS_MOST; i++)
        if (share_word(arena, record->photos[i].shows, wish)) return name_of(&record->photos[i]);
    return NULL;
}

static struct photo_entry *same_wish(struct photo_list *list, const char *shows, const char *file) {
    for (size_t i = 0; i < list->count; i++) {
        const char *other = list->items[i].file;
        if (text_same(list->items[i].shows, shows) &&
            ((!file && !other) || (file && other && text_same(file, other))))
            return &list->items[i];
    }
    return NULL;
}

// One wish for all flaws that one picture would show, with their places behind it.
static void wish_for_flaw(struct arena *arena, const struct item_flaw *flaw, const char *file,
                          struct photo_list *list, size_t *places) {
    const char *place = flaw->part ? flaw->part : flaw->where;
    const char *because = arena_format(arena, "flaw %s", flaw->kind->rule.id);
    struct photo_entry *known = same_wish(list, flaw->kind->photo, file);
    if (!known) {
        places[list->count] = 1;
        list->items[list->count++] = (struct photo_entry){flaw->kind->photo, because, file, place};
        return;
    }
    size_t *told = &places[known - list->items];
    if (!place || *told == PLACES_MOST || (known->where && strstr(known->where, place))) return;
    ++*told;
    known->where = known->where ? arena_format(arena, "%s; %s", known->where, place) : place;
}

struct photo_list photos_wish(struct arena *arena, const struct record *record, const char *words) {
    const struct family *family = record->family;
    struct photo_list list = {
        arena_array(arena, record->flaw_count + family->photo_count + 1, sizeof *list.items), 0, 0};
    size_t *places = arena_array(arena, record->flaw_count + 1, sizeof *places);
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        if (strstr(flaw->kind->photo, "plug") && concerns_flame(words)) continue;
        const char *file = i < FLAWS_MOST ? file_for_flaw(arena, record, flaw) : flaw->photo;
        list.unshown += !file;
        wish_for_flaw(arena, flaw, file, &list, places);
    }
    for (size_t i = 0; i < family->photo_count; i++) {
        const struct photo_wish *wish = &family->photos[i];
        bool had = false; // a flaw calls for that picture already
        for (size_t k = 0; k < record->flaw_count; k++)
            for (size_t w = 0; w < wish->flaws.count; w++)
                had |= text_same(wish->flaws.at[w], record->flaws[k].kind->rule.id);
        if (had || !concerns(words, &wish->about, &wish->never)) continue;
        const char *file = file_for_wish(arena, record, wish->shows);
        list.items[list.count++] = (struct photo_entry){wish->shows, "family", file, NULL};
    }
    return list;
}
