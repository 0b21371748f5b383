// SPDX-License-Identifier: MIT
// Each mark is looked through once for the rules that its words announce; what was found is sorted, so that
// nothing depends on the order of the marks, and intersected.
#include "evidence/dating.h"

#include <stdlib.h>
#include <string.h>

#include "evidence/dating_read.h"
#include "rules/trigger.h"
#include "text/buf.h"
#include "text/order.h"

struct dater {
    struct arena *arena;
    struct scanner *scanner;
    const struct ruleset *rules;
    struct dating *dating;
    unsigned char *wanted;
};

static void find_bound(struct dater *d, const struct bound *bound, const char *mark, bool *known) {
    struct dating *dating = d->dating;
    struct span span = {0, 0};
    size_t size = strlen(mark);
    for (size_t from = 0; from < size; from = span.to) {
        enum scan_result result = scanner_find(d->scanner, &bound->finder, mark, size, from, &span);
        dating->slow |= result == SCAN_SLOW;
        if (result != SCAN_FOUND) return;
        *known = true;
        dating->marks =
            arena_grow(d->arena, dating->marks, dating->count, &dating->room, sizeof *dating->marks);
        struct dated_mark *now = &dating->marks[dating->count++];
        *now = (struct dated_mark){.bound = bound, .mark = mark};
        now->words = arena_copy(d->arena, mark + span.from, span.to - span.from);
        dating_read(d->arena, now);
    }
}

static bool find_mark(struct dater *d, const char *mark) {
    bool known = false;
    memset(d->wanted, 0, d->rules->finder_count);
    triggers_mark(d->rules->bound_triggers, mark, d->wanted);
    for (size_t i = 0; i < d->rules->bound_count; i++) {
        const struct bound *bound = d->rules->bounds[i];
        if (d->wanted[bound->finder.number]) find_bound(d, bound, mark, &known);
    }
    return known;
}

static int by_year(const void *a, const void *b) {
    const struct dated_mark *x = a, *y = b;
    if (x->not_before != y->not_before)
        return (x->not_before > y->not_before) - (x->not_before < y->not_before);
    if (x->not_after != y->not_after) return (x->not_after > y->not_after) - (x->not_after < y->not_after);
    int order = strcmp(x->bound->rule.id, y->bound->rule.id);
    if (!order) order = strcmp(x->words, y->words);
    return order ? order : strcmp(x->mark, y->mark);
}

static int by_text(const void *a, const void *b) {
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static bool is_better(const struct dated_mark *now, const struct dated_mark *best, int year, int best_year) {
    if (!best) return true;
    return year == best_year && now->bound->sure < best->bound->sure;
}

// A mark said twice, and what one rule found twice with the same years in one mark, is told once.
static void drop_repeats(struct dating *d) {
    size_t kept = 0;
    for (size_t i = 0; i < d->count; i++)
        if (!kept || by_year(&d->marks[kept - 1], &d->marks[i]) != 0) d->marks[kept++] = d->marks[i];
    d->count = kept;
    kept = 0;
    for (size_t i = 0; i < d->silent_count; i++)
        if (!kept || !text_same(d->silent[kept - 1], d->silent[i])) d->silent[kept++] = d->silent[i];
    d->silent_count = kept;
}

static void intersect(struct dating *d) {
    for (size_t i = 0; i < d->count; i++) {
        const struct dated_mark *m = &d->marks[i];
        if (!m->counts) continue;
        if (m->not_before && (m->not_before > d->from || is_better(m, d->from_by, m->not_before, d->from))) {
            d->from = m->not_before;
            d->from_by = m;
        }
        if (m->not_after && (!d->to || m->not_after < d->to || is_better(m, d->to_by, m->not_after, d->to))) {
            d->to = m->not_after;
            d->to_by = m;
        }
    }
    d->fits = !d->from || !d->to || d->from <= d->to;
}

// Against the latest first year every mark that ended before it, and the earliest last year against every
// mark that began after it: both sides of each, and linear in the marks.
static void find_conflicts(struct arena *arena, struct dating *d) {
    if (d->fits) return;
    d->conflicts = arena_array(arena, 2 * d->count, sizeof *d->conflicts);
    for (size_t i = 0; i < d->count; i++) {
        const struct dated_mark *m = &d->marks[i];
        if (!m->counts) continue;
        if (m->not_after && m->not_after < d->from)
            d->conflicts[d->conflict_count++] = (struct date_conflict){d->from_by, m};
        if (m->not_before > d->to && m != d->from_by)
            d->conflicts[d->conflict_count++] = (struct date_conflict){m, d->to_by};
    }
}

static void find_future(struct arena *arena, struct dating *d, const struct day *today) {
    if (!today || !today->year) return;
    d->future = arena_array(arena, d->count + 1, sizeof *d->future);
    for (size_t i = 0; i < d->count; i++)
        if (d->marks[i].counts && d->marks[i].not_before > today->year)
            d->future[d->future_count++] = &d->marks[i];
}

struct dating *dating_of_marks(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                               const char *const *marks, size_t count, const struct day *today) {
    struct dating *d = arena_alloc(arena, sizeof *d);
    struct dater dater = {arena, scanner, rules, d,
                          arena_array(arena, rules->finder_count + 1, sizeof(bool))};
    d->silent = arena_array(arena, count + 1, sizeof *d->silent);
    for (size_t i = 0; i < count; i++)
        if (!find_mark(&dater, marks[i])) d->silent[d->silent_count++] = marks[i];
    if (d->count) qsort(d->marks, d->count, sizeof *d->marks, by_year);
    if (d->silent_count) qsort((void *)d->silent, d->silent_count, sizeof *d->silent, by_text);
    drop_repeats(d);
    intersect(d);
    find_conflicts(arena, d);
    find_future(arena, d, today);
    return d;
}

// --- words ---

const char *bound_sure_name(enum bound_sure sure) {
    static const char *const names[] = {"firm", "usual", "memory"};
    return names[sure];
}

const char *dating_years(struct arena *arena, int from, int to) {
    if (!from && !to) return "any year";
    if (!to) return arena_format(arena, "%d or later", from);
    if (!from) return arena_format(arena, "%d or earlier", to);
    return from == to ? arena_format(arena, "%d", from) : arena_format(arena, "%d-%d", from, to);
}

const char *dating_summary(struct arena *arena, const struct dating *d) {
    if (!d->fits) return "no year fits all these marks";
    if (!d->from && !d->to) return "these marks say nothing of a year";
    struct buf out = buf_start(arena);
    buf_format(&out, "such marks were used %s; narrowed by ", dating_years(arena, d->from, d->to));
    if (d->from_by) buf_format(&out, "'%s' (not before %d", d->from_by->words, d->from);
    if (d->from_by && d->to_by && d->from_by != d->to_by) buf_text(&out, ") and ");
    if (d->from_by && d->from_by == d->to_by)
        buf_format(&out, ", not after %d", d->to);
    else if (d->to_by)
        buf_format(&out, "'%s' (not after %d", d->to_by->words, d->to);
    buf_byte(&out, ')');
    return out.at;
}

const char *dating_conflict_text(struct arena *arena, const struct date_conflict *c) {
    return arena_format(arena, "'%s' (%s) was not used before %d, and '%s' (%s) not after %d", c->late->words,
                        c->late->bound->rule.id, c->late->not_before, c->early->words,
                        c->early->bound->rule.id, c->early->not_after);
}

bool day_read(const char *text, struct day *day) {
    if (strlen(text) != 10 || text[4] != '-' || text[7] != '-') return false;
    for (size_t i = 0; i < 10; i++)
        if (i != 4 && i != 7 && (text[i] < '0' || text[i] > '9')) return false;
    *day = (struct day){atoi(text), atoi(text + 5), atoi(text + 8)};
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    if (!day->year || day->month < 1 || day->month > 12) return false;
    bool leap = (day->year % 4 == 0 && day->year % 100 != 0) || day->year % 400 == 0;
    return day->day >= 1 && day->day <= days[day->month - 1] + (leap && day->month == 2);
}
