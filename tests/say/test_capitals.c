// SPDX-License-Identifier: MIT
// Title case.
#include "../text/support.h"

#include <ctype.h>
#include <string.h>

#include "say/say.h"

static const char *const titles[][2] = {
    {"green pressed glass goblets", "Green Pressed Glass Goblets"},
    {"lamp with shade", "Lamp With Shade"},
    {"the lamp", "The Lamp"},
    {"lamp on a stand", "Lamp on a Stand"},
    {"Lamp On A Stand", "Lamp on a Stand"},
    {"type A box", "Type A Box"},
    {"no lid", "No Lid"},
    {"radio powers on", "Radio Powers On"},
    {"string lights in box", "String Lights in Box"},
    {"tin of nails or screws", "Tin of Nails or Screws"},
    {"cast-iron pan", "Cast-Iron Pan"},
    {"ex-library book", "Ex-Library Book"},
    {"jack-in-the-box", "Jack-in-the-Box"},
    {"well-to-do", "Well-to-Do"},
    {"red/blue", "Red/Blue"},
    {"(with lid)", "(With Lid)"},
    {"\"old\" tin", "\"Old\" Tin"},
    {"type: on", "Type: On"},
    {"w/ lid", "w/ Lid"},
    {"shepherd's crook", "Shepherd's Crook"},
    {"o'clock", "O'clock"},
    {"\xC3\xA9tag\xC3\xA8re in oak", "\xC3\x89tag\xC3\xA8re in Oak"},
    // capitals and digits stay
    {"SLR camera", "SLR Camera"},
    {"Ostrey KR-9 radio", "Ostrey KR-9 Radio"},
    {"kr-9", "kr-9"},
    {"18V drill", "18V Drill"},
    {"18v drill", "18v Drill"},
    {"pH meter", "pH Meter"},
    {"1950s lamp", "1950s Lamp"},
    {"12-piece set", "12-Piece Set"},
    {"pre-1950 map", "Pre-1950 Map"},
    {"4 x 6 in", "4 x 6 in"},
    {"set of 4", "Set of 4"},
    // units behind a figure
    {"6.25 in tall", "6.25 in Tall"},
    {"6 1/4 in", "6 1/4 in"},
    {"36 mm", "36 mm"},
    {"12 qt pot", "12 Qt Pot"},
    {"5 gal can", "5 Gal Can"},
    {"2 l jug", "2 L Jug"},
    {"18 V drill", "18 V Drill"},
    {"9 fl oz jar", "9 fl oz Jar"},
    {"3 lb hammer", "3 lb Hammer"},
    {"2 cups and saucers", "2 Cups and Saucers"},
    {"cup", "Cup"},
    {"quart jar", "Quart Jar"},
    {"", ""},
    {"x", "X"},
    {"- -", "- -"},
};
enum { TITLES = sizeof titles / sizeof *titles };

static void tables(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < TITLES; i++) {
        ck_assert_str_eq(say_title_case(arena, titles[i][0]), titles[i][1]);
        ck_assert_str_eq(say_title_case(arena, titles[i][1]), titles[i][1]);
    }
}

START_TEST(titles_as_people_write_them) {
    within(tables, NULL);
}
END_TEST

static void only_case(struct arena *arena, void *context) {
    struct dice *dice = context;
    static const char letters[] = "abcxXAIn  -/'().,:19\"";
    char text[24];
    size_t size = dice_roll(dice, sizeof text - 1);
    for (size_t i = 0; i < size; i++) text[i] = letters[dice_roll(dice, sizeof letters - 1)];
    text[size] = '\0';
    const char *title = say_title_case(arena, text);
    ck_assert_uint_eq(strlen(title), size);
    for (size_t i = 0; i < size; i++)
        ck_assert_msg(tolower((unsigned char)title[i]) == tolower((unsigned char)text[i]), "'%s' became '%s'",
                      text, title);
    ck_assert_msg(!strcmp(say_title_case(arena, title), title), "'%s' of '%s' changes again", title, text);
}

START_TEST(nothing_but_case_changes) {
    struct dice dice = {31};
    for (int i = 0; i < 20000; i++) within(only_case, &dice);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("capitals");
    TCase *cases = tcase_create("capitals");
    tcase_set_timeout(cases, 120);
    tcase_add_test(cases, titles_as_people_write_them);
    tcase_add_test(cases, nothing_but_case_changes);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
