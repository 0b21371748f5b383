// SPDX-License-Identifier: MIT
// Linked into every test program in place of listing_draft(), which it calls: whatever listing any test
// makes, none of its texts may hold a word that no rule may print. What a seller wrote is told in quotes, and
// is not looked at.
#define _GNU_SOURCE
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "forbidden.h"
#include "listing/listing.h"

struct listing *__real_listing_draft(struct arena *arena, const struct drafter *drafter,
                                     const struct record *record, const struct title_options *options);
struct listing *__wrap_listing_draft(struct arena *arena, const struct drafter *drafter,
                                     const struct record *record, const struct title_options *options);

static void put(struct buf *out, const char *text) {
    if (text) buf_format(out, "%s\n", text);
}

static const char *texts_of(struct arena *arena, const struct listing *l) {
    struct buf out = buf_start(arena);
    put(&out, l->title);
    put(&out, l->description);
    put(&out, l->disclosure.text);
    for (size_t i = 0; i < l->disclosure.count; i++) put(&out, l->disclosure.sentences[i].text);
    for (size_t i = 0; i < l->alternate_count; i++) put(&out, l->alternates[i]);
    for (size_t i = 0; i < l->word_count; i++) put(&out, l->words[i].because);
    for (size_t i = 0; i < l->left_count; i++) put(&out, l->left_out[i].why);
    for (size_t i = 0; i < l->less_count; i++) put(&out, l->less[i]);
    for (size_t i = 0; l->given && i < l->given->less_count; i++) put(&out, l->given->less[i]);
    for (size_t i = 0; i < l->grading.count; i++) put(&out, l->grading.reasons[i]);
    for (size_t i = 0; i < l->questions.count; i++) {
        put(&out, l->questions.items[i].ask);
        put(&out, l->questions.items[i].because);
    }
    for (size_t i = 0; i < l->photos.count; i++) put(&out, l->photos.items[i].shows);
    for (size_t i = 0; i < l->finding_count; i++) put(&out, l->findings[i].message);
    for (size_t i = 0; i < l->cautions->count; i++) put(&out, l->cautions->items[i].caution->text);
    for (size_t i = 0; i < l->claims->count; i++) {
        put(&out, l->claims->items[i].claim->instead);
        put(&out, l->claims->items[i].written);
    }
    for (size_t i = 0; i < l->withheld_count; i++) {
        put(&out, l->withheld[i].why);
        put(&out, l->withheld[i].told);
    }
    return out.at;
}

// A mark is read off the thing: it stands in titles as it was found.
static const char *without_marks(struct arena *arena, const struct record *record, const char *text) {
    char *copy = arena_copy(arena, text, strlen(text));
    for (size_t i = 0; i < record->mark_count; i++) {
        const char *mark = record->marks[i].text;
        for (char *at = copy; *mark && (at = strcasestr(at, mark));) memset(at, '.', strlen(mark));
    }
    return copy;
}

struct listing *__wrap_listing_draft(struct arena *arena, const struct drafter *drafter,
                                     const struct record *record, const struct title_options *options) {
    struct listing *l = __real_listing_draft(arena, drafter, record, options);
    const char *shown = unquoted(arena, without_marks(arena, record, texts_of(arena, l))),
               *word = forbidden_in(arena, shown);
    if (!word) return l;
    fprintf(stderr, "'%s' is printed of the record '%s':\n%s\n", word, record->id ? record->id : "", shown);
    abort();
}
