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
    {"type: ring\nfamily: jewelry\nattributes: {color: gold, material: gold}\ncount: 3\n", "gold", "ring"},
    {"type: ring\nfamily: jewelry\nattributes: {material: gold}\nmarks: [14K]\n", NULL, "gold ring"},
    {"family: jewelry\nattributes: {material: gold}\n", "gold", "jewelry"},
    {"type: frame\nfamily: decor\nattributes: {color: gold}\n", NULL, "gold"},
    // One of many, another case, inside other words.
    {"type: antique\nfamily: other\ncount: 3\n", "antique", "3"},
    {"type: Antique lamp\nfamily: lighting\n", "antique", "lamp"},
    {"type: guaranteed authentic lamp\nfamily: lighting\n", "authentic", "lamp"},
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

// What is told with its qualifier: record, the wording in title and description, and what neither may say.
static const struct {
    const char *record, *written, *absent;
} qualified[] = {
    {"type: tray\nfamily: metalware\nattributes: {material: silver}\nmarks: [EPNS]\n", "silver plated tray",
     "silver tray"},
    {"type: tray\nfamily: metalware\nattributes: {material: silver}\nmarks: ['E.P.N.S.']\n",
     "silver plated tray", "silver tray"},
    {"type: silver tray\nfamily: metalware\nmarks: [quadruple plate]\n", "silver plated tray", "silver tray"},
    {"type: tray\nfamily: metalware\nattributes: {material: silver}\n", "silver tone tray", "plated"},
    {"type: bowl\nfamily: metalware\nattributes: {material: German silver}\n", "nickel alloy bowl",
     "german silver"},
    {"type: ring\nfamily: jewelry\nattributes: {color: gold}\n", "gold tone ring", "gold ring"},
    {"type: ring\nfamily: jewelry\nattributes: {color: gold}\ncount: 3\n", "gold tone", "gold ring"},
    {"type: ring\nfamily: jewelry\nattributes: {color: white gold}\n", "white gold tone", "gold ring"},
    {"type: lamp\nfamily: lighting\nattributes: {style: art deco}\n", "art deco style lamp", "deco lamp"},
    {"type: frame\nfamily: decor\nattributes: {style: art nouveau}\n", "art nouveau style", "nouveau frame"},
    {"type: chair\nfamily: furniture\nattributes: {style: arts and crafts}\n", "arts and crafts style",
     "crafts chair"},
    {"type: Victorian chair\nfamily: furniture\n", "victorian style chair", "victorian chair"},
    {"type: desk\nfamily: furniture\nattributes: {style: Edwardian}\n", "edwardian style", "edwardian desk"},
    {"type: desk\nfamily: furniture\nattributes: {style: georgian}\n", "georgian style", "georgian desk"},
    {"type: desk\nfamily: furniture\nattributes: {style: Regency}\n", "regency style", "regency desk"},
    {"type: clock\nfamily: clocks-watches\nattributes: {style: MCM}\n", "mcm style", "mcm clock"},
    {"type: pin\nfamily: jewelry\nattributes: {material: faux ruby}\n", "imitation ruby pin", "faux"},
    {"type: earrings\nfamily: jewelry\nattributes: {material: faux pearl}\n", "imitation pearl", "faux"},
    {"type: fur coat\nfamily: clothing\n", "used fur coat", "real"},
    {"type: coat\nfamily: clothing\nincludes: [fur collar]\n", "used fur collar", "real"},
    {"type: coat\nfamily: clothing\nattributes: {material: real fur}\n", "used fur", "real fur"},
    {"type: robe\nfamily: clothing\nattributes: {material: bamboo}\nmarks: [100% rayon]\n",
     "rayon from bamboo robe", "bamboo robe,"},
};

static void check_qualified(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof qualified / sizeof *qualified; i++) {
        const char *yaml = qualified[i].record;
        const struct listing *listing = draft_of(arena, shipped_once(), yaml);
        const char *texts[] = {lower(arena, listing->title), lower(arena, listing->description)};
        for (size_t k = 0; k < 2; k++) {
            ck_assert_msg(strstr(texts[k], qualified[i].written) != NULL, "%s\n%s", yaml, texts[k]);
            ck_assert_msg(!strstr(texts[k], qualified[i].absent), "%s\n%s", yaml, texts[k]);
        }
        bool told = false;
        for (size_t k = 0; k < listing->finding_count; k++) {
            const struct finding *finding = &listing->findings[k];
            ck_assert_str_ne(finding->code, "claim.unproved");
            if (strcmp(finding->code, "claim.qualified") != 0) continue;
            told = true;
            ck_assert_str_eq(finding->level, "could");
            ck_assert_msg(strstr(lower(arena, finding->message), qualified[i].written) ||
                              strstr(qualified[i].written, lower(arena, listing->claims->items[0].written)),
                          "%s\n%s", yaml, finding->message);
        }
        ck_assert_msg(told, "%s", yaml);
    }
}

// Where no wording is known the word is kept out, qualify or not; and what bears a word out leaves it alone.
static void check_plain(struct arena *arena, void *context) {
    (void)context;
    static const char *const kept[][3] = {
        {"type: robe\nfamily: clothing\nattributes: {material: bamboo}\n", "bamboo", "robe"},
        {"type: pin\nfamily: jewelry\nattributes: {material: synthetic ruby}\n", "ruby", "pin"},
        {"type: novel\nfamily: books\nattributes: {itemCondition: very good}\n", "very good", "novel"},
        {"type: chair\nfamily: furniture\nattributes: {style: Victorian}\ndates: {from: 1880, to: 1889}\n",
         "style", "victorian"},
        {"type: chair\nfamily: furniture\nattributes: {style: Victorian}\ndates: {from: 1880, to: 1909}\n",
         "chair victorian\n", "victorian style"},
        {"type: tray\nfamily: metalware\nattributes: {material: silver}\nmarks: ['800']\n", "tone",
         "silver tray"},
        {"type: jug\nfamily: ceramics\nattributes: {brand: Victorian}\n", "victorian", "jug"},
    };
    for (size_t i = 0; i < sizeof kept / sizeof *kept; i++) {
        const struct listing *listing = draft_of(arena, shipped_once(), kept[i][0]);
        const char *title = lower(arena, arena_format(arena, "%s\n", listing->title));
        ck_assert_msg(!strstr(title, kept[i][1]), "%s\n%s", kept[i][0], title);
        ck_assert_msg(strstr(title, kept[i][2]) != NULL, "%s\n%s", kept[i][0], title);
    }
}

START_TEST(words_stand_with_their_qualifier) {
    within(check_qualified, NULL);
    within(check_plain, NULL);
}
END_TEST

// Each claim of the shipped pack, in its own words, as the style of a lamp that carries no mark.
static void check_each(struct arena *arena, void *context) {
    (void)context;
    const struct ruleset *rules = shipped_once()->rules;
    size_t tried = 0, with_qualifier = 0;
    for (size_t i = 0; i < rules->claim_count; i++)
        for (size_t k = 0; k < rules->claims[i]->finder.said.count; k++) {
            const char *word = rules->claims[i]->finder.said.at[k];
            const char *yaml =
                arena_format(arena, "type: lamp\nfamily: lighting\nattributes: {style: \"%s\"}\n", word);
            const struct listing *listing = draft_of(arena, shipped_once(), yaml);
            const struct claim_found *found = NULL;
            for (size_t c = 0; c < listing->claims->count; c++)
                if (listing->claims->items[c].verdict != VERDICT_ALLOW) found = &listing->claims->items[c];
            ck_assert_msg(found != NULL, "'%s' passes for no claim", word);
            char *title = arena_copy(arena, lower(arena, listing->title), strlen(listing->title));
            for (size_t c = 0; c < listing->claims->count; c++) {
                const char *written = listing->claims->items[c].written;
                if (!written) continue;
                char *at = strstr(title, lower(arena, written));
                if (at) memset(at, '.', strlen(written));
                with_qualifier += at != NULL;
            }
            ck_assert_msg(!strstr(title, lower(arena, word)), "%s: %s", word, listing->title);
            tried++;
        }
    ck_assert_uint_ge(tried, 150);
    ck_assert_uint_ge(with_qualifier, 20);
}

START_TEST(every_word_of_every_claim_is_kept_out_or_qualified) {
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
    tcase_add_test(tests, every_word_of_every_claim_is_kept_out_or_qualified);
    tcase_add_test(tests, words_stand_with_their_qualifier);
    tcase_add_test(tests, a_slow_pattern_lets_nothing_pass);
    tcase_add_test(tests, the_grade_is_the_lowest_cap);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
