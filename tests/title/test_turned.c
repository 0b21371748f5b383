// SPDX-License-Identifier: MIT
// The other forms of wordings, and whole titles in which a small word would stand twice.
#include "../text/support.h"

#include <string.h>

#include "title/plan.h"

START_TEST(ways) {
    static const struct {
        const char *words, *noun;
        enum word_turn turn;
    } cases[] = {
        {"{noun} {at}", "chip", TURN_NOUN},
        {"{sev} {noun} {at}", "loss of trim", TURN_PLACE},
        {"{noun} {at}", "peeling paint", TURN_PLACE}, // no "Lid Peeling Paint"
        {"{noun} {at}", "writing", TURN_NOUN},        // a thing, and no quality
        {"{adjective} {at}", "chip", TURN_QUALITY},
        {"Cracked {at}", "crack", TURN_QUALITY},
        {"Cracked Leather {at}", "crack", TURN_PLACE},
        {"{sev} Burn Mark {at}", "burn", TURN_NOUN},
        {"{noun}", "chip", TURN_NONE},
        {"Cracked {part}", "crack", TURN_NONE},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_msg(turned_way(cases[i].words, cases[i].noun) == cases[i].turn, "%s of %s", cases[i].words,
                      cases[i].noun);
}
END_TEST

static void check_forms(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        const char *text;
        enum word_turn turn;
        uint8_t lead;
        const char *form;
    } cases[] = {
        {"Chip on Spout", TURN_NOUN, 0, "Spout Chip"},
        {"2 Small Dents on Back Panel", TURN_NOUN, 2, "2 Small Back Panel Dents"},
        {"Rust on Hinges", TURN_NOUN, 0, "Hinge Rust"},
        {"Gouge on One Leg", TURN_NOUN, 0, "Leg Gouge"},
        {"Soot on Neck of Flask", TURN_NOUN, 0, "Flask Neck Soot"},
        {"Scratches on Both Sides", TURN_NOUN, 0, NULL},
        {"Stain on Lid and Base", TURN_NOUN, 0, NULL},
        {"Stain on Left", TURN_NOUN, 0, NULL},
        {"Hairline From Rim", TURN_NOUN, 0, NULL},
        {"Stain Near Spout", TURN_NOUN, 0, NULL},
        {"Cloudy on Neck", TURN_QUALITY, 0, "Cloudy Neck"},
        {"Open Seam on Corner", TURN_PLACE, 0, "Open Seam at Corner"},
        {"Peeling Paint on Door", TURN_PLACE, 0, NULL},
        {"28 in Inseam", TURN_MEASURE, 0, "28 Inseam"},
        {"About 9 cm Across", TURN_MEASURE, 0, "About 9 Across"},
        {"9 cm", TURN_MEASURE, 0, NULL},
        {"No Bracket", TURN_ABSENCE, 0, "or Bracket"},
        {"Chip on Spout", TURN_NONE, 0, NULL},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct plan_spelling s = {.text = cases[i].text, .turn = cases[i].turn, .lead = cases[i].lead};
        const char *form = turned_form(arena, &s);
        bool right = cases[i].form ? form && !strcmp(form, cases[i].form) : !form;
        ck_assert_msg(right, "%s: %s", cases[i].text, form ? form : "-");
        ck_assert(!form || strlen(form) <= strlen(cases[i].text));
    }
}

START_TEST(forms) {
    within(check_forms, NULL);
}
END_TEST

enum { PIECES = 5 };

static void check_titles(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        struct plan_spelling at[PIECES]; // a text of TURN_NONE with a lead of 9 is a name
        const char *title;
    } cases[] = {
        {{{"Iron Trivet", 0, 0, TURN_NONE, 0},
          {"Rust on Legs", 0, 0, TURN_NOUN, 0},
          {"Chip on Edge", 0, 0, TURN_NOUN, 0}},
         "Iron Trivet Leg Rust Chip on Edge"},
        {{{"Iron Trivet", 0, 0, TURN_NONE, 0}, {"Rust on Legs", 0, 0, TURN_NOUN, 0}},
         "Iron Trivet Rust on Legs"},
        {{{"16 x 12 in", 0, 0, TURN_SIDES, 0},
          {"Tray", 0, 0, TURN_NONE, 0},
          {"Crest in Middle", 0, 0, TURN_NOUN, 0}},
         "16 x 12 in Tray Middle Crest"},
        {{{"18 in Tall", 0, 0, TURN_MEASURE, 0}, {"10 in Across", 0, 0, TURN_MEASURE, 0}},
         "18 in Tall 10 Across"},
        {{{"11 in", 0, 0, TURN_MEASURE, 0}, {"12 in Across", 0, 0, TURN_MEASURE, 0}}, "11 in 12 in Across"},
        {{{"18 in Tall", 0, 0, TURN_MEASURE, 0}, {"10 cm Across", 0, 0, TURN_MEASURE, 0}},
         "18 in Tall 10 cm Across"},
        {{{"Projector", 0, 0, TURN_NONE, 0},
          {"No Reel", 0, 0, TURN_ABSENCE, 0},
          {"No Cord", 0, 0, TURN_ABSENCE, 0}},
         "Projector No Reel or Cord"},
        {{{"Projector", 0, 0, TURN_NONE, 0},
          {"No Reel", 0, 0, TURN_ABSENCE, 0},
          {"Dusty", 0, 0, TURN_NONE, 0},
          {"No Cord", 0, 0, TURN_ABSENCE, 0}},
         "Projector No Reel Dusty No Cord"},
        {{{"Projector", 0, 0, TURN_NONE, 0},
          {"No Reel or Lens", 0, 0, TURN_ABSENCE, 0},
          {"No Lid", 0, 0, TURN_ABSENCE, 0},
          {"No Cord", 0, 0, TURN_ABSENCE, 0}},
         "Projector No Reel, Lens, Lid or Cord"},
        {{{"Projector", 0, 0, TURN_NONE, 0},
          {"No Lid", 0, 0, TURN_ABSENCE, 0},
          {"No Reel or Lens", 0, 0, TURN_ABSENCE, 0}},
         "Projector No Lid, Reel or Lens"},
        {{{"Telescope", 0, 0, TURN_NONE, 0},
          {"Stuck or Stiff Draw", 0, 0, TURN_NONE, 0},
          {"No Cap", 0, 0, TURN_ABSENCE, 0},
          {"No Shutter", 0, 0, TURN_ABSENCE, 0}},
         "Telescope Stuck or Stiff Draw No Cap & Shutter"},
        {{{"Andirons", 0, 0, TURN_NONE, 0},
          {"Marked 204", 0, 0, TURN_NONE, 9},
          {"Marked 205", 0, 0, TURN_NONE, 9},
          {"Pitted", 0, 0, TURN_NONE, 0}},
         "Andirons Marked 204 & 205 Pitted"},
        {{{"Skillet Marked 8", 0, 0, TURN_NONE, 0}, {"Marked K", 0, 0, TURN_NONE, 9}},
         "Skillet Marked 8 Marked K"},
        {{{"Radio", 0, 0, TURN_NONE, 0},
          {"Not Working", 0, 0, TURN_NONE, 0},
          {"Not Fully Tested", 0, 0, TURN_NONE, 0}},
         "Radio Not Working or Fully Tested"},
        {{{"Clock", 0, 0, TURN_NONE, 0},
          {"Not Tested for Time", 0, 0, TURN_NONE, 0},
          {"Not Working", 0, 0, TURN_NONE, 0}},
         "Clock Not Tested for Time Nonworking"},
        {{{"17 in Tall", 0, 0, TURN_MEASURE, 0}, {"MADE IN KELDER", 0, 0, TURN_NONE, 9}},
         "17\" Tall MADE IN KELDER"},
        {{{"17 in Tall", 0, 0, TURN_MEASURE, 0}, {"INNES & LIN", 0, 0, TURN_NONE, 9}},
         "17 in Tall INNES & LIN"},
        {{{"12 in Across", 0, 0, TURN_MEASURE, 0}, {"Dull Lining in Both Cups", 0, 0, TURN_PLACE, 0}},
         "12\" Across Dull Lining in Both Cups"},
        {{{"12 in Across", 0, 0, TURN_MEASURE, 0}, {"Chip on Lip", 0, 0, TURN_NOUN, 0}},
         "12 in Across Chip on Lip"},
        {{{"Rust on Both Eyelets", 0, 0, TURN_NOUN, 0}, {"Scuffing on Both Toes", 0, 0, TURN_NOUN, 0}},
         "Rust on Both Eyelets Scuffing at Both Toes"},
        {{{"1 gal", 0, 0, TURN_MEASURE, 0},
          {"11 in Tall", 0, 0, TURN_MEASURE, 0},
          {"8 in Across", 0, 0, TURN_MEASURE, 0}},
         "1 gal 11 in Tall 8 Across"},
        {{{"Black and White", 0, 0, TURN_NONE, 0}, {"Cup and Saucer", 0, 0, TURN_NONE, 0}},
         "Black & White Cup and Saucer"},
        // a name stays whole; and a place in the singular that the title has already stays too
        {{{"Storm on the Weir", 0, 0, TURN_NONE, 9}, {"Tear on Spine", 0, 0, TURN_NOUN, 0}},
         "Storm on the Weir Spine Tear"},
        {{{"Hinge", 0, 0, TURN_NONE, 0},
          {"Rust on Hinges", 0, 0, TURN_NOUN, 0},
          {"Open Weld on Plate", 0, 0, TURN_PLACE, 0}},
         "Hinge Rust on Hinges Open Weld on Plate"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const struct plan_spelling *chosen[PIECES];
        const char *texts[PIECES];
        size_t count = 0;
        for (; count < PIECES && cases[i].at[count].text; count++) {
            texts[count] = cases[i].at[count].text;
            chosen[count] = cases[i].at[count].lead == 9 ? NULL : &cases[i].at[count];
        }
        turned_title(arena, chosen, texts, count);
        struct buf out = buf_start(arena);
        for (size_t k = 0; k < count; k++) buf_format(&out, "%s%s", k ? " " : "", texts[k]);
        ck_assert_str_eq(out.at, cases[i].title);
    }
}

START_TEST(titles) {
    within(check_titles, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("title.turned");
    TCase *tests = tcase_create("forms");
    tcase_add_test(tests, ways);
    tcase_add_test(tests, forms);
    tcase_add_test(tests, titles);
    suite_add_tcase(suite, tests);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
