// SPDX-License-Identifier: MIT
// A later pack takes the place of a rule, in the same place of the order; a broken one takes nobody's place.
#include "support.h"

static const char *claim_text(struct arena *arena, const char *id, const char *verdict) {
    return arena_format(arena,
                        "- claim: %s\n  verdict: %s\n  said: [%s]\n  hits: [\"[%s]\"]\n  misses: [x]\n", id,
                        verdict, id, id);
}

static void put(struct arena *arena, const char *path, const char *const *parts, size_t count) {
    struct buf all = buf_start(arena);
    for (size_t i = 0; i < count; i++) buf_text(&all, parts[i]);
    write_file(path, all.at, all.n);
}

static void override(struct arena *arena, void *context) {
    (void)context;
    enter_new_folder();
    const char *one[] = {claim_text(arena, "a", "ask"), claim_text(arena, "b", "ask"),
                         claim_text(arena, "c", "ask")};
    const char *two[] = {claim_text(arena, "d", "refuse"), claim_text(arena, "b", "refuse")};
    const char *three[] = {claim_text(arena, "c", "perhaps")};
    put(arena, "one/x.yaml", one, 3);
    put(arena, "two/x.yaml", two, 2);
    put(arena, "three/x.yaml", three, 1);
    const char *folders[] = {"one", "two", "three"};
    struct diags diags = diags_start(arena);
    const struct ruleset *rules = ruleset_load(arena, folders, 3, &diags);
    leave_folder();
    ck_assert_str_eq(printed(arena, &diags),
                     "three/x.yaml:2:12: error: 'verdict' cannot be 'perhaps' [rule.value]\n"
                     "    2 |    verdict: perhaps\n"
                     "      |             ^^^^^^^ hint: it takes one of: allow, qualify, ask, refuse\n");
    ck_assert_int_eq(diags.status, 3);
    static const struct {
        const char *id, *pack;
        enum verdict verdict;
    } expected[] = {{"a", "one", VERDICT_ASK},
                    {"b", "two", VERDICT_REFUSE},
                    {"c", "one", VERDICT_ASK},
                    {"d", "two", VERDICT_REFUSE}};
    ck_assert_uint_eq(rules->claim_count, 4);
    for (size_t i = 0; i < 4; i++) {
        ck_assert_str_eq(rules->claims[i]->rule.id, expected[i].id);
        ck_assert_str_eq(rules->claims[i]->rule.pack, expected[i].pack);
        ck_assert_int_eq(rules->claims[i]->verdict, expected[i].verdict);
    }
}

START_TEST(a_later_pack_overrides_in_place) {
    within(override, NULL);
}
END_TEST

// The same files give the same rule set, whatever the order in which the disk lists them.
static void order(struct arena *arena, void *context) {
    (void)context;
    static const char *const names[2][3] = {{"p/a.yaml", "p/b.yaml", "p/c/a.yaml"},
                                            {"p/c/a.yaml", "p/b.yaml", "p/a.yaml"}};
    for (int way = 0; way < 2; way++) {
        enter_new_folder();
        for (int i = 0; i < 3; i++) {
            const char *text = claim_text(
                arena, arena_format(arena, "%zu", strlen(names[way][i]) + (size_t)names[way][i][2]), "ask");
            write_file(names[way][i], text, strlen(text));
        }
        const char *folders[] = {"p"};
        struct diags diags = diags_start(arena);
        const struct ruleset *rules = ruleset_load(arena, folders, 1, &diags);
        leave_folder();
        ck_assert_msg(!diags.count, "%s", printed(arena, &diags));
        ck_assert_uint_eq(rules->claim_count, 3);
        ck_assert_str_eq(rules->claims[0]->rule.id, "105");
        ck_assert_str_eq(rules->claims[1]->rule.id, "106");
        ck_assert_str_eq(rules->claims[2]->rule.id, "109");
    }
}

START_TEST(the_order_is_that_of_the_names) {
    within(order, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("rules.override");
    TCase *tests = tcase_create("packs");
    tcase_add_test(tests, a_later_pack_overrides_in_place);
    tcase_add_test(tests, the_order_is_that_of_the_names);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
