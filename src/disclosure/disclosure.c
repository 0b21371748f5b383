// SPDX-License-Identifier: MIT
// Order of the paragraph: function, structure, missing parts, repairs, dirt and smell, states; then what was not looked at;
// then what was looked for and not seen, as narrow as it was said.
#include "disclosure/disclosure.h"

#include <string.h>

static void add(struct disclosure *d, struct arena *arena, const char *text, const char *because, struct note_span span) {
    for (size_t i = 0; i < d->count; i++)
        if (!strcmp(d->sentences[i].text, text)) return; // the same fault said twice is told once
    d->sentences = arena_grow(arena, d->sentences, d->count, &d->room, sizeof *d->sentences);
    d->sentences[d->count++] = (struct sentence){text, because, span};
}

static void add_flaws(struct disclosure *d, struct arena *arena, const struct record *record, enum locale locale) {
    for (int class = CLASS_FUNCTION; class <= CLASS_FEATURE; class++)
        for (size_t i = 0; i < record->flaw_count; i++) {
            const struct item_flaw *flaw = &record->flaws[i];
            if ((int)flaw->kind->class != class) continue;
            add(d, arena, flaw_sentence(arena, flaw, locale), arena_format(arena, "flaw %s", flaw->kind->rule.id), flaw->span);
        }
}

static void add_unchecked(struct disclosure *d, struct arena *arena, const struct ruleset *rules,
                          const struct record *record, enum locale locale) {
    if (!record->unchecked.count) return;
    const char **names = arena_array(arena, record->unchecked.count, sizeof *names);
    for (size_t i = 0; i < record->unchecked.count; i++) {
        const struct flaw *flaw = ruleset_flaw(rules, record->unchecked.at[i]);
        names[i] = flaw ? flaw->print : record->unchecked.at[i];
    }
    const char *text = arena_format(arena, "Not checked: %s.", say_list(arena, names, record->unchecked.count, locale));
    add(d, arena, text, "unchecked", (struct note_span){0, 0});
}

static const char *clear_noun(struct arena *arena, const struct item_clear *clear) {
    const struct flaw *kind = clear->kind;
    if (kind->form != FAULT) return kind->print;
    if (kind->mass || say_is_plural(kind->noun)) return kind->noun;
    return kind->plural ? kind->plural : say_plural(arena, kind->noun);
}

static const char *clear_place(struct arena *arena, const struct item_clear *clear) {
    const char *place = clear->part ? arena_format(arena, "on the %s", clear->part) : NULL;
    const char *where = clear->where ? say_place(arena, clear->where) : NULL;
    if (place && where) return arena_format(arena, "%s %s", place, where);
    return place ? place : where ? where : "";
}

// Those at one place stand in one sentence: "No chips or cracks seen on the rim."
static void add_clear(struct disclosure *d, struct arena *arena, const struct record *record) {
    bool *done = arena_array(arena, record->clear_count + 1, sizeof *done);
    for (size_t i = 0; i < record->clear_count; i++) {
        if (done[i]) continue;
        const char *place = clear_place(arena, &record->clear[i]);
        struct buf out = buf_start(arena);
        buf_text(&out, "No ");
        size_t last = i;
        for (size_t j = i; j < record->clear_count; j++)
            if (!done[j] && !strcmp(place, clear_place(arena, &record->clear[j]))) last = j;
        for (size_t j = i; j < record->clear_count; j++) {
            if (done[j] || strcmp(place, clear_place(arena, &record->clear[j])) != 0) continue;
            done[j] = true;
            if (j > i) buf_text(&out, j == last ? " or " : ", ");
            buf_text(&out, clear_noun(arena, &record->clear[j]));
        }
        buf_format(&out, " seen%s%s.", *place ? " " : "", place);
        add(d, arena, out.at, "clear", record->clear[i].span);
    }
}

struct disclosure disclosure_write(struct arena *arena, const struct ruleset *rules, const struct record *record,
                                   enum locale locale, const struct variants *variants) {
    struct disclosure d = {NULL, 0, 0, ""};
    add_flaws(&d, arena, record, locale);
    add_unchecked(&d, arena, rules, record, locale);
    add_clear(&d, arena, record);
    struct buf all = buf_start(arena);
    for (size_t i = 0; i < d.count; i++) {
        d.sentences[i].text = say_spelling(arena, variants, d.sentences[i].text, locale);
        buf_format(&all, "%s%s", i ? " " : "", d.sentences[i].text);
    }
    d.text = all.at;
    return d;
}
