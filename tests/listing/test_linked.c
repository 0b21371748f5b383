// SPDX-License-Identifier: MIT
// The linked data of a page: every name is one of schema.org's for its type, as the typings of npm package
// schema-dts 2.1.0 give them (ThingBase, ProductBase, QuantitativeValueBase, PropertyValueBase, OfferBase),
// looked up when this test was written; and nothing is said that the record does not state.
#include "../rules/records.h"

#include <jansson.h>

enum { LINKED_RECORDS = 400 };

static const struct title_options usual = {80, COUNT_GRAPHEMES, LOCALE_US, NULL};

static const struct {
    const char *type, *names;
} types[] = {
    {"Product",
     " @context @type sku name description brand model mpn gtin material color pattern size height width "
     "depth weight additionalProperty itemCondition isAccessoryOrSparePartFor offers "},
    {"Brand", " @type name "},
    {"QuantitativeValue", " @type value minValue maxValue unitCode unitText description "},
    {"PropertyValue", " @type name value minValue maxValue unitCode unitText description "},
    {"Offer", " @type price priceCurrency itemCondition "},
};

static void check_names(const json_t *value, const char *text) {
    if (json_is_array(value)) {
        for (size_t i = 0; i < json_array_size(value); i++) check_names(json_array_get(value, i), text);
        return;
    }
    if (!json_is_object(value)) return;
    const char *type = json_string_value(json_object_get(value, "@type")), *names = NULL;
    for (size_t i = 0; type && i < sizeof types / sizeof *types; i++)
        if (!strcmp(types[i].type, type)) names = types[i].names;
    ck_assert_msg(names != NULL, "the type %s\n%s", type ? type : "(none)", text);
    for (void *at = json_object_iter((json_t *)(uintptr_t)value); at;
         at = json_object_iter_next((json_t *)(uintptr_t)value, at)) {
        char word[60];
        snprintf(word, sizeof word, " %s ", json_object_iter_key(at));
        ck_assert_msg(strstr(names, word) != NULL, "%s has no%s\n%s", type, word, text);
        check_names(json_object_iter_value(at), text);
    }
}

static void check_units(const json_t *value, const char *text) {
    const char *code = json_string_value(json_object_get(value, "unitCode"));
    if (!code) return;
    char word[20];
    snprintf(word, sizeof word, " %s ", code);
    ck_assert_msg(strstr(" INH CMT MMT GRM KGM LBR ONZ ", word) != NULL, "%s\n%s", code, text);
}

static const char *linked_of(struct arena *arena, const struct listing *listing) {
    struct buf out = buf_start(arena);
    const struct node *node = listing_linked_data(arena, listing);
    if (node) json_write(&out, node);
    return out.at;
}

static void check_random(struct arena *arena, void *context) {
    (void)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    size_t seen = 0;
    for (size_t i = 0; i < LINKED_RECORDS; i++) {
        struct dice dice = {0xA0761D6478BD642Fu * (i + 1) | 1};
        for (int k = 0; k < 8; k++) dice_roll(&dice, 2);
        const struct record *record =
            read_made(arena, drafter.rules, random_record(arena, &dice, drafter.rules, i));
        const struct listing *listing = listing_draft(arena, &drafter, record, &usual);
        const char *text = linked_of(arena, listing);
        ck_assert_msg(!*text == (!*listing->title || !*listing->description), "%s", text);
        if (!*text) continue;
        json_t *root = json_loads(text, JSON_REJECT_DUPLICATES, NULL);
        ck_assert_msg(root != NULL, "%s", text);
        check_names(root, text);
        static const char *const figures[] = {"height", "width", "depth", "weight"};
        for (size_t k = 0; k < sizeof figures / sizeof *figures; k++)
            check_units(json_object_get(root, figures[k]), text);
        for (size_t k = 0; k < sizeof UNSURE_WORDS / sizeof *UNSURE_WORDS; k++)
            ck_assert_msg(!stands_unhedged(text, UNSURE_WORDS[k]), "%s is not stated\n%s", UNSURE_WORDS[k],
                          text);
        ck_assert_str_eq(json_string_value(json_object_get(root, "name")), listing->title);
        ck_assert_msg(!json_object_get(root, "offers"), "no price was given\n%s", text);
        json_decref(root);
        seen++;
    }
    ck_assert_uint_ge(seen, LINKED_RECORDS * 9 / 10);
}

START_TEST(every_name_is_schema_orgs) {
    within(check_random, NULL);
}
END_TEST

// A piece that must stand in the data, or must not.
static const struct {
    const char *record, *there, *absent;
} pieces[] = {
    {"type: jug\n",
     "\"@context\":\"https://schema.org\",\"@type\":\"Product\",\"sku\":\"item-1\",\"name\":\"Jug\"",
     "offers"},
    {"type: jug\n", "\"itemCondition\":\"https://schema.org/UsedCondition\"", "brand"},
    {"type: jug\nfamily: ceramics\nflaws: [{kind: crack-through, severity: heavy}]\n",
     "\"itemCondition\":\"https://schema.org/DamagedCondition\"", "UsedCondition"},
    {"type: jug\nattributes: {brand: Vellacomb}\n", "\"brand\":{\"@type\":\"Brand\",\"name\":\"Vellacomb\"}",
     NULL},
    {"type: jug\nattributes: {color: [red, cream]}\n", "\"color\":[\"red\",\"cream\"]", NULL},
    {"type: jug\nattributes: {color: [{value: red, sure: guess}]}\n", "\"name\"", "\"color\""},
    {"type: jug\nattributes: {color: [{value: red, of: lid}]}\n", "\"name\"", "\"color\""},
    {"type: spoon\nfamily: metalware\nattributes: {material: sterling silver}\n", "\"name\"", "sterling"},
    {"type: jug\nmeasurements: [{dimension: height, value: 9.5, unit: in}]\n",
     "\"height\":{\"@type\":\"QuantitativeValue\",\"value\":9.5,\"unitCode\":\"INH\"}", "additionalProperty"},
    {"type: jug\nmeasurements: [{dimension: weight, value: 450, unit: g, about: true}]\n",
     "\"weight\":{\"@type\":\"QuantitativeValue\",\"value\":450,\"unitCode\":\"GRM\",\"description\":"
     "\"about\"}",
     NULL},
    {"type: jug\nmeasurements: [{dimension: width, value: 3, unit: cm}, {dimension: depth, value: 40, unit: "
     "mm}]\n",
     "\"unitCode\":\"CMT\"},\"depth\":{\"@type\":\"QuantitativeValue\",\"value\":40,\"unitCode\":\"MMT\"}",
     NULL},
    {"type: jug\nmeasurements: [{dimension: height, value: 2, unit: in, of: lid}]\n",
     "\"additionalProperty\":[{\"@type\":\"PropertyValue\",\"name\":\"height of "
     "lid\",\"value\":2,\"unitCode\":\"INH\"}]",
     "\"height\":"},
    {"type: rope\nmeasurements: [{dimension: length, value: 12, unit: ft}]\n",
     "{\"@type\":\"PropertyValue\",\"name\":\"length\",\"value\":12,\"unitText\":\"ft\"}", "unitCode"},
    {"type: knob\nfamily: parts\nfits: [{brand: Pellander, model: C-6}]\n",
     "\"isAccessoryOrSparePartFor\":{\"@type\":\"Product\",\"name\":\"Pellander "
     "C-6\",\"brand\":{\"@type\":\"Brand\","
     "\"name\":\"Pellander\"},\"model\":\"C-6\"}",
     NULL},
    {"type: knob\nfamily: parts\nfits: [{brand: Pellander, model: C-6, sure: guess}]\n", "\"name\"",
     "isAccessoryOrSparePartFor"},
    {"type: jug\nlisting: {title: Jug, price: '12.50', currency: USD}\n",
     "\"offers\":{\"@type\":\"Offer\",\"price\":\"12.50\",\"priceCurrency\":\"USD\",\"itemCondition\":"
     "\"https://schema.org/UsedCondition\"}",
     NULL},
    {"type: jug\nlisting: {title: Jug, price: make an offer}\n", "\"name\"", "offers"},
    {"type: jug\nlisting: {title: Jug, price: '-3'}\n", "\"name\"", "offers"},
    {"type: jug\nlisting: {title: Jug, currency: USD}\n", "\"name\"", "offers"},
    {"type: jug\nmarks: [TEL 555-0134]\nattributes: {color: [red, property of Edna Quillow]}\n",
     "\"color\":\"red\"", "0134"},
};

static void check_pieces(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof pieces / sizeof *pieces; i++) {
        const char *text = linked_of(arena, draft_of(arena, shipped_once(), pieces[i].record));
        ck_assert_msg(strstr(text, pieces[i].there) != NULL, "%s\n%s", pieces[i].record, text);
        ck_assert_msg(!pieces[i].absent || !strstr(text, pieces[i].absent), "%s\n%s", pieces[i].record, text);
    }
}

START_TEST(what_the_record_states_is_there) {
    within(check_pieces, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("listing.linked");
    TCase *tests = tcase_create("linked data");
    tcase_set_timeout(tests, 120);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, every_name_is_schema_orgs);
    tcase_add_test(tests, what_the_record_states_is_there);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
