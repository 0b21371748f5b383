// SPDX-License-Identifier: MIT
// Private data is taken out of the record before anything is made of it. What is kept back is named by its
// kind and its place in the record, never by its words.
#include <string.h>

#include "evidence/private.h"
#include "listing/listing.h"
#include "text/order.h"

// Bytes of the notes around a span that may hold the cue of what is private; a note of some times that is
// looked over once and as a whole.
enum { NOTE_AROUND = 200, NOTE_WHOLE = 4 * NOTE_AROUND };

struct withholder {
    struct arena *arena;
    struct listing *listing;
    struct record *record;
    struct private_spans notes; // of the notes, once they were looked at
    bool looked;
};

// Where in the record: "flaws[2].where", "type".
struct path {
    const char *list, *key;
    bool indexed;
    size_t index;
};

void listing_withhold(struct arena *arena, struct listing *l, const char *what, const char *why,
                      const char *told) {
    l->withheld = arena_grow(arena, l->withheld, l->withheld_count, &l->withheld_room, sizeof *l->withheld);
    l->withheld[l->withheld_count++] = (struct withheld){what, why, told};
}

static const char *path_text(struct arena *arena, const struct path *path) {
    const char *place = path->indexed ? arena_format(arena, "%s[%zu]", path->list, path->index) : path->list;
    return path->key ? arena_format(arena, "%s.%s", place, path->key) : place;
}

// One entry a kind, whatever number of them a value holds. `told` says it in the description where it is
// given: what the thing is marked with, and where.
static void note_spans(struct withholder *w, const struct private_spans *spans, const struct path *path,
                       bool told, const char *where) {
    bool named[PRIVATE_KINDS] = {false};
    for (size_t i = 0; i < spans->count; i++) {
        enum private_kind kind = spans->items[i].kind;
        if (named[kind]) continue;
        named[kind] = true;
        const char *what =
            arena_format(w->arena, "%s in %s", private_phrase(kind), path_text(w->arena, path));
        const char *sentence = NULL;
        if (told)
            sentence = arena_format(w->arena, "Marked with %s%s%s; not given here.", private_phrase(kind),
                                    where ? " " : "", where ? say_place(w->arena, where) : "");
        listing_withhold(w->arena, w->listing, what, private_reason(kind), sentence);
    }
}

static const char *without(struct withholder *w, const char *text, unsigned place, enum private_style style,
                           struct path path) {
    if (!text) return NULL;
    struct private_spans spans;
    const char *left = private_redact(w->arena, text, place, style, &spans);
    note_spans(w, &spans, &path, false, NULL);
    return left;
}

static void *copied(struct arena *arena, const void *base, size_t count, size_t size) {
    void *copy = arena_array(arena, count + 1, size);
    if (count) memcpy(copy, base, count * size);
    return copy;
}

static bool one_of(const char *word, const char *const *list) {
    for (; *list; list++)
        if (text_same(word, *list)) return true;
    return false;
}

static unsigned attribute_place(const char *name) {
    static const char *const makers[] = {"brand", "author", "byArtist", "name", "theme", "pattern", NULL};
    static const char *const codes[] = {"model", "mpn", "gtin", "isbn", "size", "productionDate", NULL};
    if (one_of(name, codes)) return PRIVATE_MAKERS | PRIVATE_CODES;
    return one_of(name, makers) ? PRIVATE_MAKERS : PRIVATE_ANYWHERE;
}

static void clean_type(struct withholder *w) {
    struct record *r = w->record;
    r->type.value = without(w, r->type.value, PRIVATE_ANYWHERE, PRIVATE_VALUE, (struct path){.list = "type"});
    r->type.because = without(w, r->type.because, PRIVATE_ANYWHERE, PRIVATE_PHRASE,
                              (struct path){.list = "type", .key = "because"});
    const char **others = copied(w->arena, (const void *)r->others.at, r->others.count, sizeof *others);
    size_t kept = 0;
    for (size_t i = 0; i < r->others.count; i++) {
        others[kept] =
            without(w, others[i], PRIVATE_ANYWHERE, PRIVATE_VALUE, (struct path){"type", "others", false, 0});
        kept += others[kept] != NULL;
    }
    r->others.at = others;
    r->others.count = kept;
}

// A number alone says nothing of what it is; the notes have the word before it ("serial number"). NULL where
// it is nobody's.
static const struct private_span *told_in_notes(struct withholder *w, const char *text) {
    const char *notes = w->record->notes;
    enum { LEAST = 3 };
    if (!notes || !text || strlen(text) < LEAST || strnlen(notes, NOTE_WHOLE + 1) > NOTE_WHOLE) return NULL;
    if (!w->looked) w->notes = private_find(w->arena, notes, PRIVATE_ANYWHERE);
    w->looked = true;
    for (size_t i = 0; i < w->notes.count; i++) {
        const struct private_span *span = &w->notes.items[i];
        if (span->kind != PRIVATE_SERIAL && span->kind != PRIVATE_ACCOUNT && span->kind != PRIVATE_TELEPHONE)
            continue;
        const char *at = strstr(notes + span->from, text);
        if (at && at < notes + span->to) return span;
    }
    return NULL;
}

static void clean_attributes(struct withholder *w) {
    struct record *r = w->record;
    r->attributes = copied(w->arena, r->attributes, r->attribute_count, sizeof *r->attributes);
    size_t kept = 0;
    for (size_t i = 0; i < r->attribute_count; i++) {
        struct value value = r->attributes[i];
        struct path path = {"attributes", value.name, false, 0};
        value.value = without(w, value.value, attribute_place(value.name), PRIVATE_VALUE, path);
        const struct private_span *told =
            attribute_place(value.name) == PRIVATE_ANYWHERE ? NULL : told_in_notes(w, value.value);
        if (told) {
            note_spans(w, &(struct private_spans){(struct private_span *)told, 1, 1}, &path, false, NULL);
            continue;
        }
        value.of = without(w, value.of, PRIVATE_ANYWHERE, PRIVATE_PHRASE, path);
        value.because = without(w, value.because, PRIVATE_ANYWHERE, PRIVATE_PHRASE, path);
        if (value.value) r->attributes[kept++] = value;
    }
    r->attribute_count = kept;
}

static bool is_owners(const struct flaw *kind) {
    static const char *const ids[] = {"owner-name", "monogram", "writing-inside", NULL};
    return one_of(kind->rule.id, ids);
}

// Words of the places where owners write.
static unsigned owners_place(const char *where) {
    static const char *const places[] = {
        "flyleaf",       "endpaper", "bookplate",    "name tag",           "nametag",
        "luggage label", "owner",    "inside cover", "inside front cover", NULL};
    for (const char *const *place = places; where && *place; place++)
        if (strstr(where, *place)) return PRIVATE_OWNERS;
    return PRIVATE_ANYWHERE;
}

// Where owners write, and where the record tells of an owner's name.
static bool owners_wrote(const struct record *r, const char *where) {
    if (!where) return false;
    for (size_t i = 0; i < r->flaw_count; i++)
        if (is_owners(r->flaws[i].kind) && r->flaws[i].where && text_same(r->flaws[i].where, where))
            return true;
    return owners_place(where) != PRIVATE_ANYWHERE;
}

// The place itself is often more than its name ("lid, scratched Edna 1932"): what is left of it is told.
static void clean_condition(struct withholder *w) {
    struct record *r = w->record;
    r->flaws = copied(w->arena, r->flaws, r->flaw_count, sizeof *r->flaws);
    r->clear = copied(w->arena, r->clear, r->clear_count, sizeof *r->clear);
    for (size_t i = 0; i < r->flaw_count; i++) {
        struct item_flaw *flaw = &r->flaws[i];
        bool owners = is_owners(flaw->kind);
        unsigned place = owners ? PRIVATE_OWNERS : owners_place(flaw->where);
        // That there is an owner's name is the flaw itself and not said again.
        enum private_style style = owners ? PRIVATE_DROP : PRIVATE_PHRASE;
        flaw->where = without(w, flaw->where, place, style, (struct path){"flaws", "where", true, i});
        flaw->part = without(w, flaw->part, place, PRIVATE_VALUE, (struct path){"flaws", "part", true, i});
    }
    for (size_t i = 0; i < r->clear_count; i++) {
        struct item_clear *clear = &r->clear[i];
        clear->where = without(w, clear->where, PRIVATE_ANYWHERE, PRIVATE_PHRASE,
                               (struct path){"clear", "where", true, i});
        clear->part = without(w, clear->part, PRIVATE_ANYWHERE, PRIVATE_PHRASE,
                              (struct path){"clear", "part", true, i});
    }
    const char **areas = copied(w->arena, (const void *)r->unchecked.at, r->unchecked.count, sizeof *areas);
    size_t kept = 0;
    for (size_t i = 0; i < r->unchecked.count; i++) {
        areas[kept] =
            without(w, areas[i], PRIVATE_ANYWHERE, PRIVATE_PHRASE, (struct path){"unchecked", NULL, true, i});
        kept += areas[kept] != NULL;
    }
    r->unchecked.at = areas;
    r->unchecked.count = kept;
}

static void clean_marks(struct withholder *w) {
    struct record *r = w->record;
    r->marks = copied(w->arena, r->marks, r->mark_count, sizeof *r->marks);
    size_t kept = 0;
    for (size_t i = 0; i < r->mark_count; i++) {
        struct mark mark = r->marks[i];
        unsigned place = PRIVATE_MARK | (owners_wrote(r, mark.where) ? PRIVATE_OWNERS : 0);
        mark.where = without(w, mark.where, PRIVATE_ANYWHERE, PRIVATE_PHRASE,
                             (struct path){"marks", "where", true, i});
        struct private_spans spans;
        mark.text = private_redact(w->arena, mark.text, place, PRIVATE_DROP, &spans);
        note_spans(w, &spans, &(struct path){"marks", NULL, true, i}, true, mark.where);
        const struct private_span *told = told_in_notes(w, mark.text);
        if (told) {
            note_spans(w, &(struct private_spans){(struct private_span *)told, 1, 1},
                       &(struct path){"marks", NULL, true, i}, true, mark.where);
            continue;
        }
        if (mark.text) r->marks[kept++] = mark;
    }
    r->mark_count = kept;
}

static void clean_lists(struct withholder *w) {
    struct record *r = w->record;
    r->includes = copied(w->arena, r->includes, r->include_count, sizeof *r->includes);
    r->fits = copied(w->arena, r->fits, r->fit_count, sizeof *r->fits);
    r->measurements = copied(w->arena, r->measurements, r->measurement_count, sizeof *r->measurements);
    r->photos = copied(w->arena, r->photos, r->photo_count, sizeof *r->photos);
    size_t kept = 0;
    for (size_t i = 0; i < r->include_count; i++) {
        struct item_included included = r->includes[i];
        included.what = without(w, included.what, owners_place(included.what), PRIVATE_VALUE,
                                (struct path){"includes", NULL, true, i});
        if (included.what) r->includes[kept++] = included;
    }
    r->include_count = kept;
    kept = 0;
    for (size_t i = 0; i < r->fit_count; i++) {
        struct fit fit = r->fits[i];
        fit.brand =
            without(w, fit.brand, PRIVATE_MAKERS, PRIVATE_VALUE, (struct path){"fits", "brand", true, i});
        fit.model = without(w, fit.model, PRIVATE_MAKERS | PRIVATE_CODES, PRIVATE_VALUE,
                            (struct path){"fits", "model", true, i});
        if (fit.brand || fit.model) r->fits[kept++] = fit;
    }
    r->fit_count = kept;
    for (size_t i = 0; i < r->measurement_count; i++)
        r->measurements[i].of = without(w, r->measurements[i].of, PRIVATE_ANYWHERE, PRIVATE_PHRASE,
                                        (struct path){"measurements", "of", true, i});
    for (size_t i = 0; i < r->photo_count; i++)
        r->photos[i].shows = without(w, r->photos[i].shows, owners_place(r->photos[i].shows), PRIVATE_PHRASE,
                                     (struct path){"photos", "shows", true, i});
}

static void clean_present(struct withholder *w) {
    struct present_listing *p = &w->record->listing;
    p->title = NULL; // given.c takes it apart, when it is known which of its words the record backs
    p->description = without(w, p->description, PRIVATE_ANYWHERE, PRIVATE_PHRASE,
                             (struct path){.list = "listing", .key = "description"});
    w->record->year_because = without(w, w->record->year_because, PRIVATE_ANYWHERE, PRIVATE_PHRASE,
                                      (struct path){.list = "dates", .key = "because"});
}

void listing_withhold_private(struct arena *arena, struct listing *listing, struct record *record) {
    struct withholder w = {.arena = arena, .listing = listing, .record = record};
    clean_type(&w);
    clean_attributes(&w);
    clean_marks(&w); // looks at places of flaws as they were given
    clean_condition(&w);
    clean_lists(&w);
    clean_present(&w);
}

static size_t on_boundary(const char *text, size_t at) {
    while (at && ((unsigned char)text[at] & 0xC0) == 0x80) at--;
    return at;
}

// Neighboring spans of a short note are looked at with the same words around them.
struct note_window {
    size_t from, to;
    const char *text; // NULL: nothing was looked at yet
    struct private_spans spans;
};

struct note_window *listing_window(struct arena *arena) {
    return arena_alloc(arena, sizeof(struct note_window));
}

const char *listing_note(struct arena *arena, const struct listing *listing, struct note_span span) {
    const char *notes = listing->record->notes;
    size_t from = on_boundary(notes, span.from > NOTE_AROUND ? span.from - NOTE_AROUND : 0);
    size_t rest = strnlen(notes + span.to, NOTE_AROUND + 1);
    size_t to = rest > NOTE_AROUND ? on_boundary(notes, span.to + NOTE_AROUND) : span.to + rest;
    size_t size = strnlen(notes, NOTE_WHOLE + 1);
    if (size <= NOTE_WHOLE) {
        from = 0;
        to = size;
    }
    struct note_window first = {0, 0, NULL, {0}}, *window = listing->window ? listing->window : &first;
    if (!window->text || window->from != from || window->to != to) {
        const char *copy = arena_copy(arena, notes + from, to - from);
        *window = (struct note_window){from, to, copy, private_find(arena, copy, PRIVATE_ANYWHERE)};
    }
    const char *around = window->text;
    struct private_spans spans = window->spans;
    struct buf out = buf_start(arena);
    size_t at = span.from - from, end = span.to - from;
    for (size_t i = 0; i < spans.count && spans.items[i].from < end; i++) {
        if (spans.items[i].to <= at) continue;
        if (spans.items[i].from > at) buf_add(&out, around + at, spans.items[i].from - at);
        buf_text(&out, private_phrase(spans.items[i].kind));
        at = spans.items[i].to < end ? spans.items[i].to : end;
    }
    if (at < end) buf_add(&out, around + at, end - at);
    return out.at;
}
