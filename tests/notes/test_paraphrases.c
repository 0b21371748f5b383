// SPDX-License-Identifier: MIT
// Ways in which sellers speak of a thing, its figures and what is not of it: notes of our own in
// paraphrases.txt with the facts that are wanted. Those that are still read wrongly stand there as gaps; the
// share of the others is a floor, and a gap that is closed must lose its reason.
#include "support_book.h"

#include "format/tree.h"

enum { NOTES_LEAST = 520, SHARE_LEAST = 97, FIELDS = 4 };

static const char *doubt(enum sure sure) {
    return sure == SURE_STATED ? "" : sure == SURE_LIKELY ? "~" : "?";
}

static void tell_values(struct buf *out, const struct record *r) {
    if (r->type.value) buf_format(out, "\ntype%s %s", doubt(r->type.sure), r->type.value);
    for (size_t i = 0; i < r->others.count; i++) buf_format(out, "\nother %s", r->others.at[i]);
    if (r->family) buf_format(out, "\nfamily %s", r->family->rule.id);
    if (r->count) buf_format(out, "\ncount %d", r->count);
    if (r->year_from) buf_format(out, "\nyear %d", r->year_from);
    for (size_t i = 0; i < r->attribute_count; i++) {
        const struct value *v = &r->attributes[i];
        buf_format(out, "\n%s%s %s%s%s", v->name, doubt(v->sure), v->value, v->of ? "@" : "",
                   v->of ? v->of : "");
    }
    for (size_t i = 0; i < r->flaw_count; i++) buf_format(out, "\nflaw %s", r->flaws[i].kind->rule.id);
    for (size_t i = 0; i < r->mark_count; i++) buf_format(out, "\nmark %s", r->marks[i].text);
    for (size_t i = 0; i < r->include_count; i++) buf_format(out, "\ninclude %s", r->includes[i].what);
    for (size_t i = 0; i < r->fit_count; i++)
        buf_format(out, "\nfits %s", r->fits[i].brand ? r->fits[i].brand : r->fits[i].model);
}

static void tell_measures(struct buf *out, const struct record *r) {
    for (size_t i = 0; i < r->measurement_count; i++) {
        const struct measurement *m = &r->measurements[i];
        buf_format(out, "\nmeasure %s%s ", m->dimension, m->figure.about ? "~" : "");
        if (m->range)
            buf_format(out, "%g..%g", m->from * m->figure.base / m->figure.value,
                       m->to * m->figure.base / m->figure.value);
        else
            buf_format(out, "%g", m->figure.base);
        buf_format(out, "%s%s", m->of ? "@" : "", m->of ? m->of : "");
    }
}

static void tell_spans(struct buf *out, const struct record *r, const char *name, const struct node *spans) {
    for (size_t i = 0; spans && i < spans->count; i++) {
        const struct node *span = spans->members[i].value;
        double from, to;
        ck_assert(node_number(span->members[0].value, &from) && node_number(span->members[1].value, &to));
        buf_format(out, "\n%s %.*s", name, (int)(to - from), r->notes + (size_t)from);
    }
}

static const char *facts_of(struct arena *arena, const struct record *r) {
    struct buf out = buf_start(arena);
    buf_format(&out, "%s", "");
    tell_values(&out, r);
    tell_measures(&out, r);
    tell_spans(&out, r, "aside", r->asides);
    tell_spans(&out, r, "unread", r->unread);
    buf_format(&out, "\n");
    return out.at;
}

// "aside 200" is told by "aside goes for 200 online".
static bool holds(struct arena *arena, const char *facts, const char *fact) {
    size_t name = strcspn(fact, " ");
    bool within = !strncmp(fact, "aside ", 6) || !strncmp(fact, "mark ", 5);
    if (!within) return strstr(facts, arena_format(arena, "\n%s", fact)) != NULL;
    const char *head = arena_format(arena, "\n%.*s ", (int)name, fact);
    for (const char *at = strstr(facts, head); at; at = strstr(at + 1, head)) {
        const char *line = arena_copy(arena, at + 1, strcspn(at + 1, "\n"));
        if (strstr(line, fact + name + 1)) return true;
    }
    return false;
}

struct tally {
    size_t notes, gaps, wrong, closed;
};

static bool is_read(struct arena *arena, const char *note, char *wants, bool quiet) {
    const char *facts = facts_of(arena, support_read(arena, note));
    bool fine = true;
    char *rest;
    for (char *fact = strtok_r(wants, ";", &rest); fact; fact = strtok_r(NULL, ";", &rest)) {
        fact += strspn(fact, " ");
        bool wanted = *fact != '!';
        if (holds(arena, facts, wanted ? fact : fact + 1) == wanted) continue;
        if (!quiet) fprintf(stderr, "  %s\n    wanted: %s\n    got:%s", note, fact, facts);
        fine = false;
    }
    return fine;
}

// Splits at " | "; how many fields.
static size_t fields_of(char *line, char **fields) {
    size_t n = 0;
    for (char *at = line; at && n < FIELDS; n++) {
        fields[n] = at;
        at = strstr(at, " | ");
        if (at) *at = '\0', at += 3;
    }
    return n;
}

static void check_line(struct arena *arena, struct tally *tally, char *line) {
    char *fields[FIELDS];
    if (line[0] == '#' || !line[0]) return;
    size_t n = fields_of(line, fields);
    ck_assert_msg(n >= 3, "%s: a note has an id, itself and facts", line);
    bool gap = n == FIELDS, fine = is_read(arena, fields[1], fields[2], gap);
    tally->notes++;
    tally->gaps += gap;
    tally->wrong += !gap && !fine;
    if (!gap || !fine) return;
    fprintf(stderr, "  %s is read now and is no gap: %s\n", fields[0], fields[1]);
    tally->closed++;
}

static void check_file(struct arena *arena, void *context) {
    const char *source = getenv("ASFOUND_SOURCE");
    FILE *file = fopen(arena_format(arena, "%s/tests/notes/paraphrases.txt", source ? source : "."), "r");
    ck_assert_msg(file != NULL, "paraphrases.txt cannot be opened");
    char line[400];
    while (fgets(line, sizeof line, file)) {
        line[strcspn(line, "\n")] = '\0';
        check_line(arena, context, line);
    }
    fclose(file);
}

START_TEST(ways_of_speaking_are_read) {
    struct tally tally = {0};
    struct arena *arena = arena_new(NULL);
    bool fine = arena_try(arena, check_file, &tally);
    arena_free(arena);
    ck_assert(fine);
    printf("%zu of %zu ways of speaking are read\n", tally.notes - tally.gaps - tally.wrong, tally.notes);
    ck_assert_uint_ge(tally.notes, NOTES_LEAST);
    ck_assert_msg(!tally.wrong, "%zu notes were read otherwise", tally.wrong);
    ck_assert_msg(!tally.closed, "%zu gaps are closed: take their reason out", tally.closed);
    ck_assert_uint_ge(100 * (tally.notes - tally.gaps), (size_t)SHARE_LEAST * tally.notes);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: paraphrases");
    TCase *cases = tcase_create("paraphrases");
    tcase_set_timeout(cases, 120);
    tcase_add_test(cases, ways_of_speaking_are_read);
    suite_add_tcase(suite, cases);
    return support_main(suite);
}
