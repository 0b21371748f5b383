// SPDX-License-Identifier: MIT
// The listing for a person at a terminal: what to paste first, then what to do about it. Color marks the
// headings only; nothing is said by color alone.
#include <string.h>

#include "listing/listing.h"
#include "text/utf8.h"

enum { WIDTH = 78 };

struct card {
    struct buf *out;
    bool color;
};

static void heading(struct card *c, const char *text) {
    buf_format(c->out, "\n%s%s%s\n", c->color ? "\x1b[1m" : "", text, c->color ? "\x1b[0m" : "");
}

// Breaks at spaces; a word longer than the line stands alone.
static void wrapped(struct card *c, const char *lead, const char *text) {
    size_t indent = utf8_width(lead, strlen(lead)), column = indent;
    buf_text(c->out, lead);
    bool first = true;
    for (const char *at = text; *at;) {
        size_t n = strcspn(at, " \n");
        size_t width = utf8_width(at, n);
        if (!first && column + 1 + width > WIDTH) {
            buf_format(c->out, "\n%*s", (int)indent, "");
            column = indent;
            first = true;
        }
        if (!first) buf_byte(c->out, ' ');
        column += width + !first;
        buf_add(c->out, at, n);
        first = false;
        at += n;
        if (*at == '\n') {
            buf_format(c->out, "\n%*s", (int)indent, "");
            column = indent;
            first = true;
        }
        if (*at) at++;
    }
    buf_byte(c->out, '\n');
}

static void title_part(struct card *c, struct arena *arena, const struct listing *l) {
    const char *unit = l->options.unit == COUNT_BYTES   ? "bytes"
                       : l->options.unit == COUNT_UTF16 ? "UTF-16 units"
                                                        : "characters";
    if (!*l->title) {
        wrapped(c, "  ", "(no title: see what must be settled below)");
        return;
    }
    wrapped(c, "  ", l->title);
    const char *proof = l->optimal ? "no honest title under this limit earns more"
                                   : arena_format(arena, "at most %lld can be earned", (long long)l->bound);
    buf_format(c->out, "  %zu of %zu %s; earned %lld of %lld, %s\n", l->title_length, l->options.limit, unit,
               (long long)l->worth, (long long)l->bound, proof);
    for (size_t i = 0; i < l->alternate_count; i++) wrapped(c, "  or: ", l->alternates[i]);
}

static void list_texts(struct card *c, const char *name, const char *const *items, size_t count) {
    if (!count) return;
    heading(c, name);
    for (size_t i = 0; i < count; i++) wrapped(c, "  - ", items[i]);
}

static void grade_part(struct card *c, struct arena *arena, const struct listing *l) {
    heading(c, "Grade");
    wrapped(c, "  ",
            arena_format(arena, "%s (%s), schema.org %s", grade_letter(l->grading.grade),
                         grade_word(l->grading.grade), l->grading.schema_org));
    for (size_t i = 0; i < l->grading.count; i++) wrapped(c, "  - ", l->grading.reasons[i]);
}

static void score_part(struct card *c, struct arena *arena, const struct listing *l) {
    heading(c, "Score");
    wrapped(c, "  ",
            arena_format(arena, "title earned %lld of %lld; the record answers %zu of %zu buyer questions",
                         (long long)l->worth, (long long)l->worth, l->questions.answered,
                         l->questions.asked));
    for (size_t i = 0; i < l->less_count; i++) wrapped(c, "  less: ", l->less[i]);
}

static void given_part(struct card *c, struct arena *arena, const struct listing *l) {
    if (!l->given) return;
    heading(c, "The title as given");
    wrapped(c, "  ", l->given->text);
    buf_format(c->out, "  %s\n", given_score_text(arena, l));
    const struct given_title *g = &l->given->score;
    for (size_t i = 0; i < g->miss_count; i++) {
        const char *text = given_miss_text(arena, &g->misses[i]);
        if (text) wrapped(c, "  misses: ", text);
    }
    for (size_t i = 0; i < l->given->less_count; i++) wrapped(c, "  less: ", l->given->less[i]);
}

static void findings_part(struct card *c, struct arena *arena, const struct listing *l) {
    if (!l->finding_count) return;
    heading(c, "To settle");
    for (size_t i = 0; i < l->finding_count; i++) {
        const struct finding *f = &l->findings[i];
        wrapped(c, arena_format(arena, "  %s: ", f->level),
                arena_format(arena, "%s [%s]", f->message, f->code));
    }
}

static void withheld_part(struct card *c, struct arena *arena, const struct listing *l) {
    if (l->withheld_count) heading(c, "Kept back");
    for (size_t i = 0; i < l->withheld_count; i++)
        wrapped(c, "  - ", arena_format(arena, "%s: %s", l->withheld[i].what, l->withheld[i].why));
}

static void cautions_part(struct card *c, struct arena *arena, const struct listing *l) {
    if (l->cautions->count) heading(c, "Take care");
    for (size_t i = 0; i < l->cautions->count; i++) {
        const struct caution *caution = l->cautions->items[i].caution;
        wrapped(c, l->cautions->items[i].stop ? "  not to be listed: " : "  - ",
                arena_format(arena, "%s [%s]", caution->text, caution->rule.id));
    }
}

static void photos_part(struct card *c, struct arena *arena, const struct listing *l) {
    heading(c, "Photos");
    for (size_t i = 0; i < l->photos.count; i++) {
        const struct photo_entry *p = &l->photos.items[i];
        const char *where = p->where ? arena_format(arena, ": %s", p->where) : "";
        const char *there = arena_format(arena, p->file ? "%s (%s)" : "%s", where, p->file);
        wrapped(c, p->file ? "  have: " : "  want: ", arena_format(arena, "%s%s", p->shows, there));
    }
}

void listing_card(struct arena *arena, const struct listing *l, struct buf *out, bool color) {
    struct card c = {out, color};
    buf_format(out, "%s%s%s\n", color ? "\x1b[1;4m" : "", l->record->id, color ? "\x1b[0m" : "");
    title_part(&c, arena, l);
    cautions_part(&c, arena, l);
    if (*l->description) {
        heading(&c, "Description");
        wrapped(&c, "  ", l->description);
    }
    grade_part(&c, arena, l);
    score_part(&c, arena, l);
    given_part(&c, arena, l);
    findings_part(&c, arena, l);
    withheld_part(&c, arena, l);
    if (l->questions.count) {
        const char *asks[QUESTIONS_MOST];
        for (size_t i = 0; i < l->questions.count; i++)
            asks[i] = arena_format(arena, "%s [%s] %s", l->questions.items[i].ask, l->questions.items[i].id,
                                   l->questions.items[i].because);
        list_texts(&c, "Look at before listing", asks, l->questions.count);
    }
    photos_part(&c, arena, l);
    buf_byte(out, '\n');
}
