// SPDX-License-Identifier: MIT
// Names that claim to be schema.org's are: compared with the typings of schema.org as the npm package
// schema-dts 2.1.0 gives them (interfaces ProductBase, ThingBase, CreativeWorkBase, BookBase,
// MusicRecordingBase; type OfferItemCondition), looked up when this test was written.
#include "support.h"

static const struct {
    const char *name, *owner; // owner NULL: ours
} attributes[] = {{"color", "Product"},
                  {"material", "Product"},
                  {"brand", "Product"},
                  {"model", "Product"},
                  {"pattern", "Product"},
                  {"size", "Product"},
                  {"mpn", "Product"},
                  {"gtin", "Product"},
                  {"countryOfOrigin", "Product"},
                  {"audience", "Product"},
                  {"productionDate", "Product"},
                  {"itemCondition", "Product"},
                  {"name", "Thing"},
                  {"author", "CreativeWork"},
                  {"isbn", "Book"},
                  {"byArtist", "MusicRecording"},
                  {"technique", NULL},
                  {"theme", NULL},
                  {"shape", NULL},
                  {"style", NULL},
                  {"finish", NULL},
                  {"age", NULL}};
enum { ATTRIBUTES = sizeof attributes / sizeof *attributes };

static bool is_listed(const char *name) {
    for (size_t i = 0; i < ATTRIBUTES; i++)
        if (!strcmp(attributes[i].name, name)) return true;
    return false;
}

static void check_accepted(struct arena *arena, void *context) {
    (void)context;
    size_t foreign = 0;
    for (size_t i = 0; i < ATTRIBUTES; i++) {
        struct diags diags = diags_start(arena);
        struct record record;
        const char *yaml = arena_format(arena, "type: jug\nattributes: {%s: x}\n", attributes[i].name);
        ck_assert_msg(record_of(arena, shipped_once()->rules, yaml, &record, &diags), "%s",
                      printed(arena, &diags));
        ck_assert_uint_eq(record.attribute_count, 1);
        ck_assert_str_eq(record.attributes[0].name, attributes[i].name);
        foreign += attributes[i].owner != NULL;
    }
    ck_assert_uint_eq(foreign, 16);
}

START_TEST(all_names_are_accepted) {
    within(check_accepted, NULL);
}
END_TEST

// The reader's own table holds no name that is not listed above.
static void check_table(struct arena *arena, void *context) {
    (void)context;
    struct diags diags = diags_start(arena);
    const char *path = arena_format(arena, "%s/src/item/read.c", source_folder());
    const struct source *source = folder_read_file(arena, path, LIMIT_RULE_FILE_BYTES, &diags);
    ck_assert_ptr_nonnull(source);
    const char *at = strstr(source->text, "attribute_names[] = {");
    ck_assert_ptr_nonnull(at);
    size_t count = 0;
    for (const char *end = strchr(at, '}'); (at = strchr(at, '"')) && at < end;) {
        const char *close = strchr(at + 1, '"');
        const char *name = arena_copy(arena, at + 1, (size_t)(close - at - 1));
        ck_assert_msg(is_listed(name), "'%s' is accepted and stands nowhere", name);
        count++;
        at = close + 1;
    }
    ck_assert_uint_eq(count, ATTRIBUTES);
}

START_TEST(no_other_name_is_accepted) {
    within(check_table, NULL);
}
END_TEST

static void check_condition(struct arena *arena, void *context) {
    (void)context;
    static const char *const names[] = {"DamagedCondition", "NewCondition", "RefurbishedCondition",
                                        "UsedCondition"};
    static const char *const records[] = {
        "type: jug\n", "type: jug\nflaws: [chip]\n", "type: radio\nflaws: [for-parts]\n",
        "type: jug\nattributes: {itemCondition: new}\n", "type: jug\nflaws: [mold, crack-through]\n"};
    for (size_t i = 0; i < sizeof records / sizeof *records; i++) {
        const char *given = draft_of(arena, shipped_once(), records[i])->grading.schema_org;
        bool known = false;
        for (size_t k = 0; k < 4; k++) known |= !strcmp(names[k], given);
        ck_assert_msg(known, "%s is no OfferItemCondition", given);
        ck_assert_msg(strcmp(given, "NewCondition") != 0, "nothing of the kind can be known to be new");
    }
}

START_TEST(conditions_are_members_of_the_list) {
    within(check_condition, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("item.schema_org");
    TCase *tests = tcase_create("names");
    tcase_set_timeout(tests, 60);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, all_names_are_accepted);
    tcase_add_test(tests, no_other_name_is_accepted);
    tcase_add_test(tests, conditions_are_members_of_the_list);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
