// SPDX-License-Identifier: MIT
// The YAML reader: places byte for byte, faults with their place and a way out, and the same tree as from
// JSON.
#include "support.h"

#include "format/write.h"

static const struct fault FAULTS[] = {
    {"a: 1\nb: 2\na: 3\n", 10, 11, CODE_DUPLICATE_KEY, "first in line 1"},
    {"a: {b: 1, 'b': 2}\n", 10, 13, CODE_DUPLICATE_KEY, "`b` stands twice"},
    {"a: &x 1\n", 3, 7, CODE_YAML_ALIAS, "anchors"},
    {"a: &x\n  b: 1\n", 3, 5, CODE_YAML_ALIAS, "anchors"},
    {"a: !size 1\n", 3, 10, CODE_YAML_TAG, "tags"},
    {"a: !!int 1\n", 3, 10, CODE_YAML_TAG, "tags"},
    {"? [a, b]\n: 1\n", 2, 3, CODE_KEY_FORM, "cannot be a key"},
    {"?\n: 1\n", 1, 1, CODE_KEY_FORM, "a key is missing"},
    {"a: 1\n---\nb: 2\n", 5, 8, CODE_YAML, "second document"},
    {"a:\n\tb: 1\n", 3, 4, CODE_YAML, "never with tabs"},
    {"note: one: two\n", 9, 10, CODE_YAML, "needs quotes"},
    {"a: \"open\nb: 2\n", 3, 4, CODE_YAML, "closing quote is missing"},
    {"a: 'caf\xC3\xA9\nb: 2\n", 3, 4, CODE_YAML, "closing quote is missing"},
    {"caf\xC3\xA9: 'x' y\n", 11, 12, CODE_YAML, "after a closing quote"},
    {"x: @home\n", 3, 4, CODE_YAML, "starts with this character"},
    {"a: [1, 2\nb: 3\n", 10, 11, CODE_YAML, "closing ]"},
    {"a: {b: 1\nc: 3\n", 10, 11, CODE_YAML, "closing }"},
    {"- a\nb: 1\n", 4, 5, CODE_YAML, "same column"},
    {"a: \"\\q\"\n", 4, 5, CODE_YAML, "backslash"},
    {"a: \"\\u202e\"\n", 3, 11, CODE_CONTROL, "U+202E"},
    {"a: \"\\0\"\n", 3, 7, CODE_NUL, "U+0000"},
    {"a: x\xE2\x80\x8By\n", 4, 7, CODE_CONTROL, "U+200B"},
    {"a: \xE9t\xE9\n", 3, 4, CODE_UTF8, "0xE9"},
    {"# \x1B[2J\na: 1\n", 2, 3, CODE_CONTROL, "U+001B"},
    {"[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]", 16, 17, CODE_DEEP, "too deep"},
};

static void expect_all(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof FAULTS / sizeof *FAULTS; i++) expect_fault(arena, yaml_read, &FAULTS[i]);
}

START_TEST(each_fault_has_its_place_and_a_way_out) {
    within(expect_all, NULL);
}
END_TEST

static void read_several(struct arena *arena, void *context) {
    (void)context;
    const char *text = "a: &x 1\nb: *x\na: 2\nc: !t 3\n";
    struct reading *reading = read_text_of(arena, yaml_read, text, strlen(text));
    ck_assert_ptr_null(reading->node);
    ck_assert_str_eq(print_of(arena, &reading->diags),
                     "in:1:4: error: anchors are not used here [yaml.alias]\n"
                     "    1 |  a: &x 1\n      |     ^^^^ hint: take the &name out\n"
                     "in:2:4: error: aliases are not used here [yaml.alias]\n"
                     "    2 |  b: *x\n      |     ^^ hint: a value that starts with * needs quotes\n"
                     "in:3:1: error: key `a` stands twice, first in line 1 [input.duplicate-key]\n"
                     "    3 |  a: 2\n      |  ^ hint: keep one of the two\n"
                     "in:4:4: error: tags are not used here [yaml.tag]\n"
                     "    4 |  c: !t 3\n      |     ^^^^ hint: take the !tag out\n");
}

START_TEST(one_fault_does_not_hide_the_next) {
    within(read_several, NULL);
}
END_TEST

struct expected {
    const char *key, *slice, *text;
    enum node_kind kind;
    bool plain;
};

static const char PLACES[] = "\xEF\xBB\xBF# caf\xC3\xA9 \xF0\x9F\x99\x82\r\n"
                             "plain: caf\xC3\xA9 tin   # why\r\n"
                             "\xC3\xA9t\xC3\xA9: 'it''s \xF0\x9F\x99\x82'\r\n"
                             "double: \"x\\u00e9\\n\xF0\x9F\x99\x82\"\r\n"
                             "over: two\r\n  lines\r\n"
                             "block: |\r\n  one \xF0\x9F\x99\x82\r\n  two\r\n\r\n"
                             "folded: >-\r\n  one\r\n  two\r\n"
                             "flow: [a, \"b\"]\r\n"
                             "map: {x: 1}\r\n"
                             "list:\r\n- first\r\n- second\r\n"
                             "nested:\r\n  deep: end\r\n"
                             "none:\r\n"
                             "tilde: ~\r\n"
                             "quoted: 'null'\r\n"
                             "number: 12\r\n"
                             "tagged: !!str 12\r\n"
                             "yes: yes\r\n"
                             "last: \xF0\x9F\x99\x82";

static const struct expected EXPECTED[] = {
    {"plain", "caf\xC3\xA9 tin", "caf\xC3\xA9 tin", NODE_TEXT, true},
    {"\xC3\xA9t\xC3\xA9", "'it''s \xF0\x9F\x99\x82'", "it's \xF0\x9F\x99\x82", NODE_TEXT, false},
    {"double", "\"x\\u00e9\\n\xF0\x9F\x99\x82\"", "x\xC3\xA9\n\xF0\x9F\x99\x82", NODE_TEXT, false},
    {"over", "two\r\n  lines", "two lines", NODE_TEXT, true},
    {"block", "|\r\n  one \xF0\x9F\x99\x82\r\n  two", "one \xF0\x9F\x99\x82\ntwo\n", NODE_TEXT, false},
    {"folded", ">-\r\n  one\r\n  two", "one two", NODE_TEXT, false},
    {"flow", "[a, \"b\"]", NULL, NODE_LIST, false},
    {"map", "{x: 1}", NULL, NODE_MAP, false},
    {"list", "- first\r\n- second", NULL, NODE_LIST, false},
    {"nested", "deep: end", NULL, NODE_MAP, false},
    {"none", "", "", NODE_NULL, true},
    {"tilde", "~", "~", NODE_NULL, true},
    {"quoted", "'null'", "null", NODE_TEXT, false},
    {"number", "12", "12", NODE_TEXT, true},
    {"tagged", "!!str 12", "12", NODE_TEXT, false},
    {"yes", "yes", "yes", NODE_TEXT, true},
    {"last", "\xF0\x9F\x99\x82", "\xF0\x9F\x99\x82", NODE_TEXT, true},
};

static void read_places(struct arena *arena, void *context) {
    (void)context;
    struct reading *reading = read_text_of(arena, yaml_read, PLACES, strlen(PLACES));
    ck_assert_msg(reading->node != NULL, "%s", print_of(arena, &reading->diags));
    size_t count = sizeof EXPECTED / sizeof *EXPECTED;
    ck_assert_uint_eq(reading->node->count, count);
    for (size_t i = 0; i < count; i++) {
        const struct expected *expected = &EXPECTED[i];
        const struct member *member = &reading->node->members[i];
        ck_assert_str_eq(member->key, expected->key);
        ck_assert_uint_eq(member->key_at.to - member->key_at.from, strlen(expected->key));
        ck_assert_int_eq(strncmp(PLACES + member->key_at.from, expected->key, strlen(expected->key)), 0);
        ck_assert_str_eq(slice_of(arena, member->value), expected->slice);
        ck_assert_int_eq(member->value->kind, expected->kind);
        ck_assert_int_eq(member->value->plain, expected->plain);
        if (expected->text) ck_assert_str_eq(member->value->text, expected->text);
    }
    double number = 0;
    bool yes = false;
    ck_assert(node_number(node_get(reading->node, "number"), &number) && number > 11.9 && number < 12.1);
    ck_assert(!node_number(node_get(reading->node, "tagged"), &number));
    ck_assert(node_bool(node_get(reading->node, "yes"), &yes) && yes);
    ck_assert_str_eq(node_kind_name(node_get(reading->node, "flow")), "a list");
}

START_TEST(places_are_exact_to_the_byte) {
    within(read_places, NULL);
}
END_TEST

static void read_nothing(struct arena *arena, void *context) {
    (void)context;
    static const char *const EMPTY[] = {"",      "\n\n",       "# only a comment\n",
                                        "---\n", "---\n...\n", "\xEF\xBB\xBF"};
    for (size_t i = 0; i < sizeof EMPTY / sizeof *EMPTY; i++) {
        struct reading *reading = read_text_of(arena, yaml_read, EMPTY[i], strlen(EMPTY[i]));
        ck_assert_uint_eq(reading->diags.count, 0);
        ck_assert_msg(!reading->node, "row %zu", i);
    }
}

START_TEST(an_empty_document_is_no_fault) {
    within(read_nothing, NULL);
}
END_TEST

// Every fault costs a walk to its line; more faults than are kept must not.
static void read_many_faults(struct arena *arena, void *context) {
    (void)context;
    struct buf text = buf_start(arena);
    buf_text(&text, "filler: |\n");
    for (int i = 0; i < 100000; i++) buf_text(&text, "  brass lamp\n");
    for (int i = 0; i < 100000; i++) buf_text(&text, "k: 1\n");
    struct reading *reading = read_text_of(arena, yaml_read, text.at, text.n);
    ck_assert_ptr_null(reading->node);
    ck_assert_uint_eq(reading->diags.count, DIAGS_MOST);
    ck_assert_uint_eq(reading->diags.dropped, 99999 - DIAGS_MOST);
    ck_assert_ptr_nonnull(strstr(reading->diags.items[0].message, "first in line 100002"));
}

START_TEST(a_hundred_thousand_faults_are_counted_fast) {
    within(read_many_faults, NULL);
}
END_TEST

// The same tree written as JSON is YAML too, and both readers must see the same.
static void compare_forms(struct arena *arena, void *context) {
    struct dice *dice = context;
    size_t compared = 0;
    for (int i = 0; i < 3000; i++) {
        struct node *tree = random_tree(arena, dice, 4);
        struct buf json = buf_start(arena), yaml = buf_start(arena);
        json_write_pretty(&json, tree);
        yaml_write(arena, &yaml, tree);
        struct reading *one = read_text_of(arena, json_read, json.at, json.n);
        struct reading *two = read_text_of(arena, yaml_read, yaml.at, yaml.n);
        ck_assert_msg(one->node && two->node, "%s%s\n%s\n%s", print_of(arena, &one->diags),
                      print_of(arena, &two->diags), json.at, yaml.at);
        ck_assert_msg(same_tree(one->node, two->node), "%s\n%s", json.at, yaml.at);
        compared++;
    }
    ck_assert_uint_eq(compared, 3000);
}

START_TEST(yaml_and_json_give_the_same_tree) {
    struct dice dice = {99};
    within(compare_forms, &dice);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("yaml");
    TCase *cases = tcase_create("yaml");
    tcase_set_timeout(cases, 20);
    tcase_add_test(cases, each_fault_has_its_place_and_a_way_out);
    tcase_add_test(cases, one_fault_does_not_hide_the_next);
    tcase_add_test(cases, places_are_exact_to_the_byte);
    tcase_add_test(cases, an_empty_document_is_no_fault);
    tcase_add_test(cases, a_hundred_thousand_faults_are_counted_fast);
    tcase_add_test(cases, yaml_and_json_give_the_same_tree);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
