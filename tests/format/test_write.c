// SPDX-License-Identifier: MIT
// What is written is read back as the same tree; pages hold nothing but text. Outside check: jansson reads
// our JSON.
#include "support.h"

#include <jansson.h>

#include "format/write.h"

static void round_trip(struct arena *arena, void *context) {
    struct dice *dice = context;
    for (int i = 0; i < 5000; i++) {
        struct node *tree = random_tree(arena, dice, 4);
        struct buf line = buf_start(arena), pretty = buf_start(arena), yaml = buf_start(arena);
        json_write(&line, tree);
        ck_assert_ptr_null(strchr(line.at, '\n'));
        struct reading *back = read_text_of(arena, json_read, line.at, line.n);
        ck_assert_msg(back->node && same_tree(tree, back->node), "%s\n%s", line.at,
                      print_of(arena, &back->diags));
        json_write_pretty(&pretty, tree);
        back = read_text_of(arena, json_read, pretty.at, pretty.n);
        ck_assert_msg(back->node && same_tree(tree, back->node), "%s", pretty.at);
        json_t *theirs = json_loadb(line.at, line.n, JSON_DECODE_ANY | JSON_REJECT_DUPLICATES, NULL);
        ck_assert_msg(theirs != NULL, "%s", line.at);
        json_decref(theirs);
        yaml_write(arena, &yaml, tree);
        back = read_text_of(arena, yaml_read, yaml.at, yaml.n);
        ck_assert_msg(back->node && same_tree(tree, back->node), "%s\n%s", yaml.at,
                      print_of(arena, &back->diags));
    }
}

START_TEST(five_thousand_trees_come_back) {
    struct dice dice = {5};
    within(round_trip, &dice);
}
END_TEST

static struct node *sample(struct arena *arena) {
    struct node *map = node_map(arena), *flaws = node_list(arena), *flaw = node_map(arena);
    node_put(arena, map, "title", node_text(arena, "Brass lamp </script> \"5\xE2\x80\xA8\" \x7F"));
    node_put(arena, flaw, "kind", node_text(arena, "crack"));
    node_put(arena, flaw, "count", node_whole(arena, 2));
    node_push(arena, flaws, flaw);
    node_put(arena, map, "flaws", flaws);
    node_put(arena, map, "worth", node_real(arena, 0.1));
    node_put(arena, map, "optimal", node_bool_new(arena, true));
    node_put(arena, map, "none", node_list(arena));
    node_put(arena, map, "worth", node_real(arena, 12.5)); // a key again: the value is replaced
    return map;
}

static void write_sample(struct arena *arena, void *context) {
    (void)context;
    struct node *map = sample(arena);
    struct buf out = buf_start(arena);
    json_write(&out, map);
    ck_assert_str_eq(
        out.at, "{\"title\":\"Brass lamp </script> \\\"5\\u2028\\\" \\u007f\",\"flaws\":[{\"kind\":\"crack\","
                "\"count\":2}],\"worth\":12.5,\"optimal\":true,\"none\":[]}");
    buf_clear(&out);
    json_write_pretty(&out, node_get(map, "flaws"));
    ck_assert_str_eq(out.at, "[\n  {\n    \"kind\": \"crack\",\n    \"count\": 2\n  }\n]");
    buf_clear(&out);
    struct html html = {&out};
    html_json(&html, map);
    ck_assert_ptr_eq(strstr(out.at, "</script>"), out.at + out.n - strlen("</script>\n"));
    ck_assert_ptr_nonnull(strstr(out.at, "\\u003c/script>"));
}

START_TEST(json_and_json_in_a_page) {
    within(write_sample, NULL);
}
END_TEST

static void write_words(struct arena *arena, void *context) {
    (void)context;
    struct node *map = node_map(arena);
    node_put(arena, map, "yes", node_text(arena, "no"));
    node_put(arena, map, "size", node_text(arena, "12"));
    node_put(arena, map, "count", node_whole(arena, 12));
    node_put(arena, map, "empty", node_text(arena, ""));
    node_put(arena, map, "date", node_text(arena, "1970-01-01"));
    node_put(arena, map, "notes", node_text(arena, "one\ntwo: three\n"));
    node_put(arena, map, "name", node_text(arena, "Brass lamp"));
    node_put(arena, map, "list", node_list(arena));
    struct buf out = buf_start(arena);
    yaml_write(arena, &out, map);
    ck_assert_str_eq(out.at, "'yes': 'no'\nsize: '12'\ncount: 12\nempty: ''\ndate: '1970-01-01'\n"
                             "notes: |\n  one\n  two: three\nname: Brass lamp\nlist: []\n");
}

START_TEST(yaml_quotes_what_others_would_misread) {
    within(write_words, NULL);
}
END_TEST

static void write_page(struct arena *arena, void *context) {
    (void)context;
    struct buf out = buf_start(arena);
    struct html html = {&out};
    html_open(&html, "p", "title", "\"><script>'&");
    html_text(&html, "<b>caf\xC3\xA9 & \x01\xFFtin</b>");
    html_close(&html, "p");
    html_line(&html, "h1", "a < b");
    html_open(&html, "br", NULL, NULL);
    // Runs from right to left are isolated, what stands between their words with them, what is behind not.
    html_line(&html, "b", "a \xD7\x90 (2) \xD7\x91: c < \xD8\xB4\n\xD8\xB5\xFF");
    ck_assert_str_eq(
        out.at,
        "<p title=\"&quot;&gt;&lt;script&gt;&#39;&amp;\">&lt;b&gt;caf\xC3\xA9 &amp; \xEF\xBF\xBD\xEF\xBF\xBD"
        "tin&lt;/b&gt;</p><h1>a &lt; b</h1>\n<br>"
        "<b>a <bdi>\xD7\x90 (2) \xD7\x91</bdi>: c &lt; "
        "<bdi>\xD8\xB4</bdi>\n<bdi>\xD8\xB5</bdi>\xEF\xBF\xBD</b>\n");
}

START_TEST(pages_hold_text_as_text) {
    within(write_page, NULL);
}
END_TEST

static void write_invalid(struct arena *arena, void *context) {
    (void)context;
    struct buf out = buf_start(arena);
    json_write(&out, node_text(arena, "a\xFF\xC3z\xED\xA0\x80"));
    ck_assert_str_eq(out.at, "\"a\xEF\xBF\xBD\xEF\xBF\xBDz\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\"");
    ck_assert_uint_eq(out.n, strlen(out.at));
}

START_TEST(json_is_valid_whatever_it_is_given) {
    within(write_invalid, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("write");
    TCase *cases = tcase_create("write");
    tcase_set_timeout(cases, 120);
    tcase_add_test(cases, five_thousand_trees_come_back);
    tcase_add_test(cases, json_and_json_in_a_page);
    tcase_add_test(cases, yaml_quotes_what_others_would_misread);
    tcase_add_test(cases, pages_hold_text_as_text);
    tcase_add_test(cases, json_is_valid_whatever_it_is_given);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
