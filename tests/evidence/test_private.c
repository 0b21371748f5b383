// SPDX-License-Identifier: MIT
// Private data by its shape and cue words: what is seen, as which kind, what is left of the text, and what is
// evidence and stays.
#include "../text/support.h"

#include <string.h>

#include "evidence/private_parts.h"
#include "private_cases.h"
#include "text/buf.h"
#include "text/utf8.h"

static const char *spans_text(struct arena *arena, const char *text, const struct private_spans *spans) {
    struct buf out = buf_start(arena);
    buf_format(&out, "'%s':", text);
    for (size_t i = 0; i < spans->count; i++)
        buf_format(&out, " %s '%.*s'", private_kind_name(spans->items[i].kind),
                   (int)(spans->items[i].to - spans->items[i].from), text + spans->items[i].from);
    return out.at;
}

static void check_positive(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < PRIVATE_TEXT_COUNT; i++) {
        const struct private_case *c = &PRIVATE_TEXTS[i];
        struct private_spans spans = private_find(arena, c->text, c->place);
        const char *told = spans_text(arena, c->text, &spans);
        bool kind = false;
        for (size_t k = 0; k < spans.count; k++) kind |= spans.items[k].kind == c->kind;
        ck_assert_msg(kind, "no %s in %s", private_kind_name(c->kind), told);
        for (int style = PRIVATE_DROP; style <= PRIVATE_PHRASE; style++) {
            const char *left = private_redact(arena, c->text, c->place, (enum private_style)style, NULL);
            ck_assert_msg(!left || !strstr(left, c->secret), "'%s' is left of %s", left, told);
            if (style != PRIVATE_VALUE || !c->left) continue;
            ck_assert_msg(!strcmp(left ? left : "", c->left), "'%s' is left of %s", left ? left : "", told);
        }
    }
    ck_assert_uint_ge(PRIVATE_TEXT_COUNT, 150);
}

START_TEST(private_data_is_seen_as_what_it_is) {
    within(check_positive, NULL);
}
END_TEST

// What private_starts() leaves out finds nothing there.
static void check_starts(struct arena *arena, const char *text, unsigned place) {
    struct private_text t = {.arena = arena, .text = text, .place = place};
    private_cut(&t);
    for (size_t i = 0; i < t.count; i++) {
        unsigned starts = private_starts(&t, i);
        for (unsigned matcher = 0; matcher < PRIVATE_MATCHERS; matcher++) {
            if (starts >> matcher & 1) continue;
            private_matchers[matcher](&t, i);
            ck_assert_msg(!t.found.count, "matcher %u is not asked at token %zu of '%s'", matcher, i, text);
        }
    }
}

static void check_all_starts(struct arena *arena, void *context) {
    (void)context;
    for (unsigned place = 0; place <= PRIVATE_MARK; place = place ? place * 2 : 1) {
        for (size_t i = 0; i < PRIVATE_TEXT_COUNT; i++) check_starts(arena, PRIVATE_TEXTS[i].text, place);
        for (size_t i = 0; i < PUBLIC_TEXT_COUNT; i++) check_starts(arena, PUBLIC_TEXTS[i].text, place);
    }
}

START_TEST(no_matcher_is_left_out_where_it_finds_something) {
    within(check_all_starts, NULL);
}
END_TEST

static void check_negative(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < PUBLIC_TEXT_COUNT; i++) {
        const struct public_case *c = &PUBLIC_TEXTS[i];
        struct private_spans spans = private_find(arena, c->text, c->place);
        ck_assert_msg(!spans.count, "%s", spans_text(arena, c->text, &spans));
        ck_assert_ptr_eq(private_redact(arena, c->text, c->place, PRIVATE_VALUE, NULL), c->text);
    }
    ck_assert_uint_ge(PUBLIC_TEXT_COUNT, 150);
}

START_TEST(evidence_is_left_alone) {
    within(check_negative, NULL);
}
END_TEST

// A matcher that is left out makes a case fail: for each there is a text that no other one sees.
static const struct {
    void (*match)(struct private_text *t, size_t i);
    const char *name;
} matchers[] = {{match_owner, "owner"},
                {match_title, "title"},
                {match_dedication, "dedication"},
                {match_bare_name, "bare name"},
                {match_initials, "initials"},
                {match_address, "address"},
                {match_postal, "postal"},
                {match_telephone, "telephone"},
                {match_exchange, "exchange"},
                {match_account, "account"},
                {match_card, "card"},
                {match_serial, "serial"},
                {match_prescription, "prescription"},
                {match_mail, "mail"},
                {match_web, "web"},
                {match_plate, "plate"}};
enum { MATCHERS = sizeof matchers / sizeof *matchers };

static void check_matchers(struct arena *arena, void *context) {
    (void)context;
    size_t alone[MATCHERS] = {0};
    for (size_t i = 0; i < PRIVATE_TEXT_COUNT; i++) {
        struct private_text t = {
            .arena = arena, .text = PRIVATE_TEXTS[i].text, .place = PRIVATE_TEXTS[i].place};
        private_cut(&t);
        size_t seen = 0, last = 0;
        for (size_t m = 0; m < MATCHERS; m++) {
            t.found.count = 0;
            for (size_t k = 0; k < t.count; k++) matchers[m].match(&t, k);
            if (!t.found.count) continue;
            seen++;
            last = m;
        }
        if (seen == 1) alone[last]++;
    }
    for (size_t m = 0; m < MATCHERS; m++)
        ck_assert_msg(alone[m] >= 3, "%s: only %zu texts need it", matchers[m].name, alone[m]);
}

START_TEST(every_matcher_is_needed) {
    within(check_matchers, NULL);
}
END_TEST

// The table of words is looked up by halving: a word out of order would never be found.
START_TEST(every_known_word_is_found) {
    static const char *const words[] = {
#define W(word, classes) word,
#include "evidence/private_words.def"
#undef W
    };
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        ck_assert_msg(private_classes(words[i], strlen(words[i])) != 0, "%s", words[i]);
    ck_assert_uint_eq(private_classes("quorbish", 8), 0);
    ck_assert_uint_eq(private_classes("averyveryverylongword", 21), 0);
}
END_TEST

// Any bytes that are valid UTF-8: spans stand in order inside the text, and nothing private is left of them.
static void check_any(struct arena *arena, void *context) {
    (void)context;
    static const char *const pieces[] = {
        "Mrs ", "Edna ", "14 ",    "Street",  "J.B. ",   "1911 ",        "555-",   "0134 ",    "@",     "a.b",
        "Rx ",  "take ", "one ",   "tablet ", "serial ", "no. ",         "48213 ", "to ",      "from ", "(",
        ")",    "+",     "é",      "🙂 ",   ", ",      "property of ", "phone ", "\"",       "4000 ", "'",
        "QX",   "Box ",  "plate ", "AB12 ",   "4TH ",    "with love ",   "name ",  "her book "};
    uint64_t state = 0x9E3779B97F4A7C15u;
    for (size_t round = 0; round < 1500; round++) {
        struct arena_mark mark = arena_mark(arena);
        struct buf text = buf_start(arena);
        for (size_t n = 0; n < 1 + round % 14; n++) {
            state = state * 6364136223846793005u + 1442695040888963407u;
            buf_text(&text, pieces[(state >> 33) % (sizeof pieces / sizeof *pieces)]);
        }
        for (unsigned place = 0; place < 16; place++) {
            struct private_spans spans = private_find(arena, text.at, place);
            size_t done = 0;
            for (size_t i = 0; i < spans.count; i++) {
                ck_assert_msg(spans.items[i].from >= done && spans.items[i].to > spans.items[i].from &&
                                  spans.items[i].to <= text.n,
                              "%s", spans_text(arena, text.at, &spans));
                done = spans.items[i].to;
            }
            for (int style = PRIVATE_DROP; style <= PRIVATE_PHRASE; style++) {
                const char *left = private_redact(arena, text.at, place, (enum private_style)style, NULL);
                if (!left) continue;
                ck_assert_uint_eq(utf8_check(left, strlen(left)), strlen(left));
                struct private_spans again = private_find(arena, left, place);
                ck_assert_msg(!again.count, "%s gives %s", text.at, spans_text(arena, left, &again));
            }
        }
        arena_release(arena, &mark);
    }
}

START_TEST(what_is_left_holds_nothing_private) {
    within(check_any, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("evidence.private");
    TCase *tests = tcase_create("texts");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, private_data_is_seen_as_what_it_is);
    tcase_add_test(tests, no_matcher_is_left_out_where_it_finds_something);
    tcase_add_test(tests, evidence_is_left_alone);
    tcase_add_test(tests, every_matcher_is_needed);
    tcase_add_test(tests, every_known_word_is_found);
    tcase_add_test(tests, what_is_left_holds_nothing_private);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
