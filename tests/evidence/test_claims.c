// SPDX-License-Identifier: MIT
// Words that promise something: what lets them stand, and every way in which they might reach a title without
// it.
#include "../rules/support.h"

#include "evidence/claims.h"

static const struct {
    const char *record;
    const char *absent, *present; // in the title, whatever the case
} titles[] = {
    {"type: spoon\nfamily: metalware\nattributes: {material: sterling silver}\n", "sterling", "spoon"},
    {"type: spoon\nfamily: metalware\nattributes: {material: sterling silver}\nmarks: [Sterling]\n", NULL,
     "sterling silver spoon"},
    {"type: spoon\nfamily: metalware\nattributes: {material: sterling silver}\nmarks: [EP Sterling "
     "pattern]\n",
     "sterling silver", "spoon"},
    // Two values that say together what neither says alone.
    {"type: ring\nfamily: jewelry\nattributes: {material: gold}\n", "gold", "ring"},
    {"type: ring\nfamily: jewelry\nattributes: {color: gold}\ncount: 3\n", "gold", "ring"},
    {"type: ring\nfamily: jewelry\nattributes: {material: gold}\nmarks: [14K]\n", NULL, "gold ring"},
    {"family: jewelry\nattributes: {color: gold}\n", "gold", "jewelry"},
    {"type: frame\nfamily: decor\nattributes: {color: gold}\n", NULL, "gold"},
    // One of many, another case, inside other words.
    {"type: antique\nfamily: other\ncount: 3\n", "antique", "3"},
    {"type: Antique lamp\nfamily: lighting\n", "antique", "item"},
    {"type: lamp\nfamily: lighting\nattributes: {style: [Antique-looking]}\n", "antique-looking", "lamp"},
    // Parts, places of flaws, what comes with it.
    {"type: box\nfamily: other\nattributes: {material: [{value: sterling silver, of: lid}]}\n", "sterling",
     "box"},
    {"type: box\nfamily: other\nflaws: [{kind: chip, part: sterling silver rim}]\n", "sterling", "chip"},
    {"type: box\nfamily: other\nflaws: [{kind: chip, where: near the sterling silver band}]\n", "sterling",
     "chip"},
    {"type: box\nfamily: other\nincludes: [sterling silver spoon]\n", "sterling", "box"},
};

// In the description: record, what it may not say, what it still says.
static const char *const descriptions[][3] = {
    {"type: box\nfamily: other\nincludes: [sterling silver spoon, sterling silver]\n", "sterling",
     "included: spoon."},
    {"type: box\nfamily: other\nflaws: [{kind: chip, part: sterling silver rim}]\n", "sterling",
     "the rim is chipped"},
    {"type: box\nfamily: other\nflaws: [{kind: chip, where: on the band of sterling silver}]\n", "sterling",
     "on the band"},
    {"type: box\nfamily: other\nclear: [{kind: chip, part: solid gold hinge}]\n", "gold", "hinge"},
    {"type: box\nfamily: other\nunchecked: [genuine leather strap, rust]\n", "genuine", "strap"},
    {"type: box\nfamily: other\nmarks: [{text: No 4, where: on the sterling base}]\n", "sterling", "base"},
    {"type: box\nfamily: other\nmeasurements: [{dimension: height, value: 2, unit: in, of: antique lid}]\n",
     "antique", "lid"},
    {"type: watch\nfamily: clocks-watches\nflaws: [{kind: scratches, where: crystal}]\n", NULL, "scratches"},
    {"type: ring\nfamily: jewelry\nflaws: [{kind: stone-missing, part: pearl}]\n", "pearl", "stone"},
};

static const char *lower(struct arena *arena, const char *text) {
    char *copy = arena_copy(arena, text, strlen(text));
    for (char *c = copy; *c; c++)
        if (*c >= 'A' && *c <= 'Z') *c = (char)(*c | 0x20);
    return copy;
}

static void check_titles(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof titles / sizeof *titles; i++) {
        const struct listing *listing = draft_of(arena, shipped_once(), titles[i].record);
        const char *title = lower(arena, listing->title);
        ck_assert_msg(!titles[i].absent || !strstr(title, titles[i].absent), "%s\n%s", titles[i].record,
                      listing->title);
        ck_assert_msg(strstr(title, titles[i].present) != NULL, "%s\n%s", titles[i].record, listing->title);
        bool barred = false, told = false;
        for (size_t k = 0; k < listing->claims->count; k++)
            barred |= listing->claims->items[k].verdict != VERDICT_ALLOW;
        for (size_t k = 0; k < listing->finding_count; k++)
            told |= !strcmp(listing->findings[k].code, "claim.unproved");
        ck_assert_msg(barred == told && barred == (titles[i].absent != NULL), "%s", titles[i].record);
    }
}

static void check_told(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof descriptions / sizeof *descriptions; i++) {
        const struct listing *listing = draft_of(arena, shipped_once(), descriptions[i][0]);
        const char *text = lower(arena, listing->description);
        ck_assert_msg(!descriptions[i][1] || !strstr(text, descriptions[i][1]), "%s\n%s", descriptions[i][0],
                      text);
        ck_assert_msg(strstr(text, descriptions[i][2]) != NULL, "%s\n%s", descriptions[i][0], text);
    }
}

START_TEST(no_claim_stands_without_its_evidence) {
    within(check_titles, NULL);
    within(check_told, NULL);
}
END_TEST

// Each claim of the shipped pack, in its own words, as the style of a lamp that carries no mark.
static void check_each(struct arena *arena, void *context) {
    (void)context;
    const struct ruleset *rules = shipped_once()->rules;
    size_t tried = 0;
    for (size_t i = 0; i < rules->claim_count; i++)
        for (size_t k = 0; k < rules->claims[i]->finder.said.count; k++) {
            const char *word = rules->claims[i]->finder.said.at[k];
            const char *yaml =
                arena_format(arena, "type: lamp\nfamily: lighting\nattributes: {style: \"%s\"}\n", word);
            const struct listing *listing = draft_of(arena, shipped_once(), yaml);
            bool found = false;
            for (size_t c = 0; c < listing->claims->count; c++)
                found |= listing->claims->items[c].verdict != VERDICT_ALLOW;
            ck_assert_msg(found, "'%s' passes for no claim", word);
            ck_assert_msg(!strstr(lower(arena, listing->title), lower(arena, word)), "%s: %s", word,
                          listing->title);
            tried++;
        }
    ck_assert_uint_ge(tried, 150);
}

START_TEST(every_word_of_every_claim_is_kept_out) {
    within(check_each, NULL);
}
END_TEST

// A pattern that takes too long says nothing of the value, so the value does not pass, and a finding names
// it.
static void check_slow(struct arena *arena, void *context) {
    (void)context;
    static const char pack[] =
        "- claim: slow\n  verdict: refuse\n  said: [aa]\n  match: ['^(a+)+$']\n"
        "- family: lamps\n  print: lamps\n  order: [style, type, count, flaws]\n"
        "  wants: [{want: look, wordings: [{words: [style, type], weight: 20}]}]\n"
        "  things: [{noun: lamp}]\n  checks: [{check: shade, ask: Is the shade whole?}]\n"
        "  photos: [{shows: the lamp}]\n  measures: [height]\n";
    enter_new_folder();
    write_file("pack/x.yaml", pack, sizeof pack - 1);
    const char *folders[] = {"pack"};
    struct diags diags = diags_start(arena);
    const struct ruleset *rules = ruleset_load(arena, folders, 1, &diags);
    leave_folder();
    struct drafter drafter = {rules, NULL, scanner_new(arena, rules->finder_count), NULL, NULL};
    struct record record;
    static const char yaml[] =
        "type: lamp\nattributes: {style: aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa!}\n";
    ck_assert_msg(record_of(arena, rules, yaml, &record, &diags), "%s", printed(arena, &diags));
    struct title_options options = {80, COUNT_GRAPHEMES, LOCALE_US, NULL};
    const struct listing *listing = listing_draft(arena, &drafter, &record, &options);
    ck_assert(listing->claims->slow);
    ck_assert_str_eq(listing->title, "Lamp");
    bool told = false;
    for (size_t i = 0; i < listing->finding_count; i++)
        told |= !strcmp(listing->findings[i].code, "rule.slow");
    ck_assert(told);
}

START_TEST(a_slow_pattern_lets_nothing_pass) {
    within(check_slow, NULL);
}
END_TEST

// --- grade ---

static const struct {
    const char *record, *grade, *schema, *reason;
} grades[] = {
    {"type: jug\n", "B", "UsedCondition", "nothing was said to be looked for: B"},
    {"type: jug\nclear: [chip]\n", "A", "UsedCondition", NULL},
    {"type: jug\nflaws: [{kind: chip, where: rim, severity: light}]\n", "B", "UsedCondition",
     "chip, rim (light): B"},
    {"type: jug\nflaws: [chip]\n", "C", "UsedCondition", "chip (degree not stated): C"},
    {"type: jug\nflaws: [{kind: chip, severity: heavy}]\n", "D", "DamagedCondition", "chip (heavy): D"},
    {"type: jug\nflaws: [{kind: chip, severity: light}, {kind: hairline, part: handle}]\nclear: [rust]\n",
     "C", "UsedCondition", "chip (light): B"},
    {"type: radio\nflaws: [untested]\nclear: [rust]\n", "C", "UsedCondition",
     "untested (degree not stated): C"},
    {"type: radio\nflaws: [not-working]\n", "D", "DamagedCondition", NULL},
    {"type: radio\nflaws: [for-parts]\n", "D", "DamagedCondition", NULL},
    {"type: box\nflaws: [patina]\nclear: [rust]\n", "A", "UsedCondition", NULL},
    {"type: box\nflaws: [{kind: as-is, severity: heavy}]\nclear: [rust]\n", "A", "UsedCondition", NULL},
};

static void check_grades(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof grades / sizeof *grades; i++) {
        const struct listing *listing = draft_of(arena, shipped_once(), grades[i].record);
        ck_assert_msg(!strcmp(grade_letter(listing->grading.grade), grades[i].grade), "%s: %s",
                      grades[i].record, grade_letter(listing->grading.grade));
        ck_assert_msg(!strcmp(listing->grading.schema_org, grades[i].schema), "%s: %s", grades[i].record,
                      listing->grading.schema_org);
        if (!grades[i].reason) continue;
        ck_assert_uint_ge(listing->grading.count, 1);
        ck_assert_str_eq(listing->grading.reasons[0], grades[i].reason);
    }
}

START_TEST(the_grade_is_the_lowest_cap) {
    within(check_grades, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("evidence");
    TCase *tests = tcase_create("claims and grade");
    tcase_set_timeout(tests, 120);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, no_claim_stands_without_its_evidence);
    tcase_add_test(tests, every_word_of_every_claim_is_kept_out);
    tcase_add_test(tests, a_slow_pattern_lets_nothing_pass);
    tcase_add_test(tests, the_grade_is_the_lowest_cap);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
