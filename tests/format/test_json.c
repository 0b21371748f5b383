// SPDX-License-Identifier: MIT
// The JSON reader. Outside check: jansson, on texts made and broken at random. Differences that are meant,
// and why: jansson must be told to take any value at top level (we take any), to refuse duplicate keys (we
// do), and takes U+0000 only when asked (we never do). Ours refuses besides: numbers are not limited (jansson
// refuses what overflows), more than LIMIT_DEPTH levels, control and invisible characters written as escapes.
#include "support.h"

#include <jansson.h>

static const struct fault FAULTS[] = {
    {"", 0, 0, CODE_JSON, "ends too early"},
    {"{\"a\": 1,}", 7, 8, CODE_JSON, "take this comma out"},
    {"[1, 2,\n]", 5, 6, CODE_JSON, "after the last entry"},
    {"{'a': 1}", 1, 2, CODE_JSON, "double quotes"},
    {"['a']", 1, 2, CODE_JSON, "double quotes"},
    {"{kind: 1}", 1, 5, CODE_JSON, "without quotes"},
    {"{\"a\" 1}", 5, 6, CODE_JSON, "colon"},
    {"{\"a\": 1 \"b\": 2}", 8, 9, CODE_JSON, "comma is missing"},
    {"[1 {}]", 3, 4, CODE_JSON, "comma is missing"},
    {"{\"a\": }", 6, 7, CODE_JSON, "a value should stand here"},
    {"[,1]", 1, 2, CODE_JSON, "take this comma out"},
    {"{\"a\": tru}", 6, 9, CODE_JSON, "a text stands in double quotes"},
    {"{\"a\": True}", 6, 10, CODE_JSON, "small letters"},
    {"[None]", 1, 5, CODE_JSON, "null for nothing"},
    {"[yes]", 1, 4, CODE_JSON, "true or false"},
    {"[NaN]", 1, 4, CODE_JSON, "finite"},
    {"[-Infinity]", 1, 10, CODE_JSON, "finite"},
    {"[007]", 1, 4, CODE_JSON, "no zeros"},
    {"[1.]", 1, 3, CODE_JSON, "12, -0.5"},
    {"[.5]", 1, 3, CODE_JSON, "12, -0.5"},
    {"[+1]", 1, 3, CODE_JSON, "12, -0.5"},
    {"[12in]", 1, 5, CODE_JSON, "needs quotes"},
    {"[1 // one\n]", 3, 4, CODE_JSON, "no comments"},
    {"{\"a\": \"x\ny\"}", 8, 9, CODE_JSON, "new line"},
    {"[\"a\tb\"]", 3, 4, CODE_JSON, "\\t"},
    {"[\"\\q\"]", 2, 4, CODE_JSON, "backslash"},
    {"[\"\\u12g4\"]", 2, 4, CODE_JSON, "four digits"},
    {"[\"\\ud83d\"]", 2, 8, CODE_JSON, "half of a surrogate"},
    {"[\"\\ude42\"]", 2, 8, CODE_JSON, "half of a surrogate"},
    {"[\"\\ud83dx\"]", 2, 8, CODE_JSON, "half of a surrogate"},
    {"[\"abc", 1, 2, CODE_JSON, "closing quote"},
    {"{\"a\": [1, 2", 6, 7, CODE_JSON, "closing ]"},
    {"{\"a\": 1", 0, 1, CODE_JSON, "closing }"},
    {"{\"a\": 1]", 7, 8, CODE_JSON, "comma or the closing }"},
    {"[\"a\": 1]", 4, 5, CODE_JSON, "not in [ ]"},
    {"{} {}", 3, 4, CODE_JSON, "ndjson"},
    {"1 2", 2, 3, CODE_JSON, "goes on"},
    {"{\"a\": 1,\n \"b\": 2,\n \"a\": 3}", 19, 22, CODE_DUPLICATE_KEY, "first in line 1"},
    {"{\"\\u0061\": 1, \"a\": 2}", 14, 17, CODE_DUPLICATE_KEY, "`a` stands twice"},
    {"[\"\\u0000\"]", 2, 8, CODE_NUL, "U+0000"},
    {"[\"\\u202e\"]", 2, 8, CODE_CONTROL, "U+202E"},
    {"[\"\\u0007\"]", 2, 8, CODE_CONTROL, "U+0007"},
    {"{\"a\\nb\": 1}", 1, 7, CODE_CONTROL, "U+000A must not stand in a key"},
    {"[\"x\xE2\x80\xAEy\"]", 3, 6, CODE_CONTROL, "direction of writing"},
    {"[\"x\xFFy\"]", 3, 4, CODE_UTF8, "0xFF"},
    {"\xFF\xFE[", 0, 1, CODE_UTF8, "UTF-16"},
    {"[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]", 16, 17, CODE_DEEP, "too deep"},
};

static void expect_all(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof FAULTS / sizeof *FAULTS; i++) expect_fault(arena, json_read, &FAULTS[i]);
}

START_TEST(each_fault_has_its_place_and_a_way_out) {
    within(expect_all, NULL);
}
END_TEST

static void read_nul(struct arena *arena, void *context) {
    (void)context;
    struct reading *reading = read_text_of(arena, json_read, "[1,\0 2]", 7);
    ck_assert_ptr_null(reading->node);
    ck_assert_int_eq(reading->diags.items[0].code, CODE_NUL);
    ck_assert_uint_eq(reading->diags.items[0].at.from, 3);
}

START_TEST(a_nul_byte_is_told_by_name) {
    within(read_nul, NULL);
}
END_TEST

static void read_places(struct arena *arena, void *context) {
    (void)context;
    const char *text = "\xEF\xBB\xBF { \"caf\xC3\xA9\" : \"\xF0\x9F\x99\x82 x\\u00e9\\ud83d\\ude42\" ,\r\n "
                       "\"n\": [ -1.5e3, true,null , {} ] }\n";
    struct reading *reading = read_text_of(arena, json_read, text, strlen(text));
    const struct node *map = reading->node;
    ck_assert_ptr_nonnull(map);
    ck_assert_uint_eq(map->at.from, 4);
    ck_assert_uint_eq(map->at.to, strlen(text) - 1);
    const struct place key = map->members[0].key_at;
    ck_assert_int_eq(strncmp(text + key.from, "\"caf\xC3\xA9\"", key.to - key.from), 0);
    ck_assert_uint_eq(key.to - key.from, 7);
    const struct node *value = node_get(map, "caf\xC3\xA9");
    ck_assert_str_eq(slice_of(arena, value), "\"\xF0\x9F\x99\x82 x\\u00e9\\ud83d\\ude42\"");
    ck_assert_str_eq(value->text, "\xF0\x9F\x99\x82 x\xC3\xA9\xF0\x9F\x99\x82");
    ck_assert_uint_eq(value->size, strlen(value->text));
    static const char *const SLICES[] = {"-1.5e3", "true", "null", "{}"};
    static const enum node_kind KINDS[] = {NODE_NUMBER, NODE_BOOL, NODE_NULL, NODE_MAP};
    const struct node *list = node_get(map, "n");
    ck_assert_uint_eq(list->count, 4);
    ck_assert_str_eq(slice_of(arena, list), "[ -1.5e3, true,null , {} ]");
    for (size_t i = 0; i < 4; i++) {
        ck_assert_str_eq(slice_of(arena, list->members[i].value), SLICES[i]);
        ck_assert_int_eq(list->members[i].value->kind, KINDS[i]);
        ck_assert_ptr_null(list->members[i].key);
    }
    ck_assert_ptr_null(node_get(map, "absent"));
    ck_assert_ptr_null(node_get(list, "n"));
}

START_TEST(places_are_exact) {
    within(read_places, NULL);
}
END_TEST

static void read_many_keys(struct arena *arena, void *context) {
    (void)context;
    struct buf text = buf_start(arena);
    buf_byte(&text, '{');
    for (int i = 0; i < 20000; i++) buf_format(&text, "\"key%d\":%d,\n", i, i);
    buf_text(&text, "\"last\":0}");
    struct reading *reading = read_text_of(arena, json_read, text.at, text.n);
    ck_assert_ptr_nonnull(reading->node);
    ck_assert_uint_eq(reading->node->count, 20001);
    ck_assert_str_eq(node_get(reading->node, "key19999")->text, "19999");
    text.n--;
    buf_text(&text, ",\"key12345\":1}");
    reading = read_text_of(arena, json_read, text.at, text.n);
    ck_assert_ptr_null(reading->node);
    ck_assert_int_eq(reading->diags.items[0].code, CODE_DUPLICATE_KEY);
    ck_assert_ptr_nonnull(strstr(reading->diags.items[0].message, "first in line 12346"));
}

START_TEST(twenty_thousand_keys_are_told_apart) {
    within(read_many_keys, NULL);
}
END_TEST

static void add_random_json(struct buf *out, struct dice *dice, int depth) {
    static const char *const SCALARS[] = {
        "true",      "false",        "null",           "0",       "-1",          "12.5",
        "1e5",       "2E-3",         "\"\"",           "\"tin\"", "\"\\u00e9\"", "\"\\ud83d\\ude42\"",
        "\"a\\nb\"", "\"\xC3\xA9\"", "\"\\\\\\/\\\"\""};
    static const char *const SPACES[] = {"", "", " ", "\n", "\t", "\r\n"};
    uint32_t kind = dice_roll(dice, depth > 0 ? 4 : 1);
    buf_text(out, SPACES[dice_roll(dice, 6)]);
    if (kind < 2) {
        buf_text(out, SCALARS[dice_roll(dice, sizeof SCALARS / sizeof *SCALARS)]);
    } else {
        buf_byte(out, kind == 2 ? '[' : '{');
        for (uint32_t i = 0, n = dice_roll(dice, 4); i < n; i++) {
            if (i) buf_byte(out, ',');
            if (kind == 3) buf_format(out, "\"k%u\":", (unsigned)(dice_roll(dice, 8) ? i : 0));
            add_random_json(out, dice, depth - 1);
        }
        buf_byte(out, kind == 2 ? ']' : '}');
    }
    buf_text(out, SPACES[dice_roll(dice, 6)]);
}

// Takes out, doubles, or replaces some bytes.
static void break_json(struct buf *text, struct dice *dice) {
    static const char BYTES[] = "{}[]:,\"\\'0123eE+-.truefalsn \n\t/u\x01\x80\xC3\xFF";
    for (uint32_t i = 1 + dice_roll(dice, 2); i > 0 && text->n > 1; i--) {
        size_t at = dice_roll(dice, (uint32_t)text->n);
        uint32_t how = dice_roll(dice, 3);
        if (how == 0) {
            memmove(text->at + at, text->at + at + 1, text->n - at);
            text->n--;
        } else if (how == 1) {
            text->at[at] = BYTES[dice_roll(dice, sizeof BYTES - 1)];
        } else {
            buf_byte(text, ' ');
            memmove(text->at + at + 1, text->at + at, text->n - 1 - at);
        }
    }
}

static bool same_value(const struct node *node, json_t *value) {
    double number = 0;
    switch (node->kind) {
    case NODE_NULL:
        return json_is_null(value);
    case NODE_BOOL:
        return json_is_boolean(value) && json_is_true(value) == (node->text[0] == 't');
    case NODE_NUMBER:
        return node_number(node, &number) && json_is_number(value) && !(number < json_number_value(value)) &&
               !(number > json_number_value(value));
    case NODE_TEXT:
        return json_is_string(value) && json_string_length(value) == node->size &&
               memcmp(json_string_value(value), node->text, node->size) == 0;
    case NODE_LIST:
        if (!json_is_array(value) || json_array_size(value) != node->count) return false;
        for (size_t i = 0; i < node->count; i++) {
            if (!same_value(node->members[i].value, json_array_get(value, i))) return false;
        }
        return true;
    case NODE_MAP:
        if (!json_is_object(value) || json_object_size(value) != node->count) return false;
        for (size_t i = 0; i < node->count; i++) {
            if (!same_value(node->members[i].value, json_object_get(value, node->members[i].key)))
                return false;
        }
        return true;
    }
    return false;
}

// Ours alone refuses these, by design.
static bool is_our_own(const struct diags *diags) {
    enum code code = diags->items[0].code;
    return code == CODE_CONTROL || code == CODE_DEEP;
}

struct tally {
    size_t accepted, refused, own, overflow;
};

static void compare_one(struct arena *arena, struct dice *dice, struct tally *tally) {
    struct buf text = buf_start(arena);
    add_random_json(&text, dice, 4);
    if (dice_roll(dice, 10) < 6) break_json(&text, dice);
    json_error_t error;
    json_t *theirs = json_loadb(text.at, text.n, JSON_DECODE_ANY | JSON_REJECT_DUPLICATES, &error);
    struct reading *ours = read_text_of(arena, json_read, text.at, text.n);
    if (ours->node && theirs) {
        ck_assert_msg(same_value(ours->node, theirs), "other value: %s", text.at);
        tally->accepted++;
    } else if (!ours->node && !theirs) {
        ck_assert_uint_gt(ours->diags.count, 0);
        tally->refused++;
    } else if (!ours->node && is_our_own(&ours->diags)) {
        tally->own++;
    } else {
        bool overflow = ours->node && strstr(error.text, "overflow");
        ck_assert_msg(overflow, "we %s, jansson %s (%s): %s", ours->node ? "take it" : "refuse it",
                      theirs ? "takes it" : "refuses it", theirs ? print_of(arena, &ours->diags) : error.text,
                      text.at);
        tally->overflow++;
    }
    json_decref(theirs);
}

static void compare_many(struct arena *arena, void *context) {
    struct dice *dice = context;
    struct tally tally = {0};
    for (int i = 0; i < 20000; i++) compare_one(arena, dice, &tally);
    fprintf(stderr,
            "jansson %s: %zu accepted alike, %zu refused alike, %zu refused by design, %zu overflow\n",
            JANSSON_VERSION, tally.accepted, tally.refused, tally.own, tally.overflow);
    ck_assert_uint_gt(tally.accepted, 5000);
    ck_assert_uint_gt(tally.refused, 5000);
    ck_assert_uint_lt(tally.own + tally.overflow, 500);
}

START_TEST(twenty_thousand_texts_agree_with_jansson) {
    struct dice dice = {42};
    within(compare_many, &dice);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("json");
    TCase *cases = tcase_create("json");
    tcase_set_timeout(cases, 120);
    tcase_add_test(cases, each_fault_has_its_place_and_a_way_out);
    tcase_add_test(cases, a_nul_byte_is_told_by_name);
    tcase_add_test(cases, places_are_exact);
    tcase_add_test(cases, twenty_thousand_keys_are_told_apart);
    tcase_add_test(cases, twenty_thousand_texts_agree_with_jansson);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
