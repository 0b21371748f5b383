// SPDX-License-Identifier: MIT
// Places as they end "There is a stain …", and in a title.
#include "../text/support.h"

#include <string.h>

#include "say/say.h"

static const struct {
    const char *where, *text, *title;
} places[] = {
    // parts
    {"rim", "on the rim", "on Rim"},
    {"down low on the heel", "low down on the heel", "Low Down on Heel"},
    {"bottom", "on the bottom", "on Bottom"},
    {"corner", "on the corner", "on Corner"},
    {"top", "on the top", "on Top"},
    {"front edge", "on the front edge", "on Front Edge"},
    {"folds", "on the folds", "on Folds"},
    {"left underarm", "on the left underarm", "on Left Underarm"},
    {"left", "on the left", "on Left"},
    {"upper right", "on the upper right", "on Upper Right"},
    {"outside", "on the outside", "on Outside"},
    {"outside rim", "on the outside rim", "on Outside Rim"},
    {"inside rim", "on the inside rim", "on Inside Rim"},
    {"underside", "on the underside", "on Underside"},
    {"round base", "on the round base", "on Round Base"},
    {"opposite side", "on the opposite side", "on Opposite Side"},
    {"heel tips", "on the heel tips", "on Heel Tips"},
    {"2nd page", "on the 2nd page", "on 2nd Page"},
    {"shepherd's crook", "on the shepherd's crook", "on Shepherd's Crook"},
    // in and at
    {"middle", "in the middle", "in Middle"},
    {"center of blade", "in the center of the blade", "in Center of Blade"},
    {"crazing", "in the crazing", "in Crazing"},
    {"several places", "in several places", "in Several Places"},
    {"one spot", "in one spot", "in One Spot"},
    {"bare spot", "on the bare spot", "on Bare Spot"},
    {"end", "at the end", "at End"},
    {"both ends", "at both ends", "at Both Ends"},
    // determiners and numbers take no article
    {"both sides", "on both sides", "on Both Sides"},
    {"a corner", "on a corner", "on Corner"},
    {"two corners", "on two corners", "on Two Corners"},
    {"2 corners", "on 2 corners", "on 2 Corners"},
    {"each handle", "on each handle", "on Each Handle"},
    {"all four legs", "on all four legs", "on All Four Legs"},
    {"its lid", "on its lid", "on Its Lid"},
    {"part of rim", "on part of the rim", "on Part of Rim"},
    {"page 12", "on page 12", "on Page 12"},
    {"pages 3-8", "on pages 3-8", "on Pages 3-8"},
    {"plate IV", "on plate IV", "on Plate IV"},
    {"Ostrey's stamp", "on Ostrey's stamp", "on Ostrey's Stamp"},
    // adverbs
    {"inside", "inside", "Inside"},
    {"underneath", "underneath", "Underneath"},
    {"all over", "all over", "All Over"},
    {"throughout", "throughout", "Throughout"},
    {"here and there", "here and there", "Here and There"},
    {"in places", "in places", "in Places"},
    {"on top", "on top", "on Top"},
    {"inside and out", "inside and out", "Inside and Out"},
    {"mostly inside", "mostly inside", "Mostly Inside"},
    {"mostly back", "mostly on the back", "Mostly on Back"},
    // prepositions
    {"near the base", "near the base", "Near Base"},
    {"near base", "near the base", "Near Base"},
    {"under the spout", "under the spout", "Under Spout"},
    {"in the crazing", "in the crazing", "in Crazing"},
    {"in a chip", "in a chip", "in Chip"},
    {"along one side", "along one side", "Along One Side"},
    {"inside lid", "inside the lid", "Inside Lid"},
    {"inside the rim", "inside the rim", "Inside Rim"},
    {"inside of lid", "on the inside of the lid", "on Inside of Lid"},
    {"all over the lid", "all over the lid", "All Over Lid"},
    {"all along edge", "all along the edge", "All Along Edge"},
    {"right under spout", "right under the spout", "Right Under Spout"},
    {"halfway down side", "halfway down the side", "Halfway Down Side"},
    {"next to handle", "next to the handle", "Next to Handle"},
    {"round the rim", "round the rim", "Round Rim"},
    {"opposite the handle", "opposite the handle", "Opposite Handle"},
    {"by handle", "by the handle", "by Handle"},
    {"at base", "at the base", "at Base"},
    {"on rim", "on the rim", "on Rim"},
    {"between seat and back", "between the seat and back", "Between Seat and Back"},
    {"near rim and base", "near the rim and base", "Near Rim and Base"},
    // more than one noun
    {"bottom of handle", "on the bottom of the handle", "on Bottom of Handle"},
    {"edge of page 12", "on the edge of page 12", "on Edge of Page 12"},
    {"side near handle", "on the side near the handle", "on Side Near Handle"},
    {"left of handle", "to the left of the handle", "to Left of Handle"},
    {"top to bottom", "from top to bottom", "From Top to Bottom"},
    {"from rim to base", "from rim to base", "From Rim to Base"},
    // lists
    {"stamps, pocket and cover film", "on the stamps, pocket and cover film",
     "on Stamps, Pocket and Cover Film"},
    {"rim and base", "on the rim and base", "on Rim and Base"},
    {"rim, lid, and base", "on the rim, lid, and base", "on Rim, Lid, and Base"},
    {"front and back cover", "on the front and back cover", "on Front and Back Cover"},
    {"rim and inside", "on the rim and inside", "on Rim and Inside"},
    {"inside and rim", "inside and on the rim", "Inside and on Rim"},
    {"middle and rim", "in the middle and on the rim", "in Middle and on Rim"},
    {"both sides and rim", "on both sides and the rim", "on Both Sides and Rim"},
    {"rim and both sides", "on the rim and both sides", "on Rim and Both Sides"},
    {"edge & rim", "on the edge & rim", "on Edge & Rim"},
    // as notes are written
    {"Rim", "on the rim", "on Rim"},
    {"Near Base", "near the Base", "Near Base"},
    {"Ostrey label", "on the Ostrey label", "on Ostrey Label"},
    {"  the rim. ", "on the rim", "on Rim"},
    {"", "", ""},
    {"  ", "", ""},
};
enum { PLACES = sizeof places / sizeof *places };

static void tables(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < PLACES; i++) {
        ck_assert_str_eq(say_place(arena, places[i].where), places[i].text);
        ck_assert_str_eq(say_place_title(arena, places[i].where), places[i].title);
    }
}

START_TEST(places_as_people_say_them) {
    within(tables, NULL);
}
END_TEST

// Whether the words of `part` stand in `whole` in their order, capitals apart.
static bool keeps_words(struct arena *arena, const char *part, const char *whole) {
    const char *at = whole;
    for (const char *from = part + strspn(part, " "); *from; from += strspn(from, " ")) {
        size_t size = strcspn(from, " ");
        size_t core = size;
        while (core && strchr(".,", from[core - 1])) core--;
        const char *word = arena_copy(arena, from, core);
        for (;;) {
            at += strspn(at, " ");
            if (!*at) return false;
            bool same = !strncmp(at + 1, word + 1, core ? core - 1 : 0) && (at[0] | 0x20) == (word[0] | 0x20);
            at += strcspn(at, " ");
            if (same || !core) break;
        }
        from += size;
    }
    return true;
}

static void words_stay(struct arena *arena, void *context) {
    struct dice *dice = context;
    static const char *const words[] = {
        "rim",    "lid",    "the",   "a",       "near", "inside", "of",  "and",  "both", "left",
        "sides",  "to",     "from",  "on",      "12",   "mostly", "all", "over", "end",  "rim,",
        "Ostrey", "middle", "under", "outside", "next", "round",  "&",   ",",    "."};
    const char *where = "";
    for (uint32_t i = 1 + dice_roll(dice, 6); i > 0; i--)
        where = arena_format(arena, "%s%s%s", where, *where ? " " : "",
                             words[dice_roll(dice, sizeof words / sizeof *words)]);
    const char *said = say_place(arena, where);
    ck_assert_msg(keeps_words(arena, where, said), "'%s' became '%s'", where, said);
    ck_assert_msg(!strstr(said, "  ") && (strstr(said, " the the ") == NULL || strstr(where, "the the")),
                  "'%s' of '%s'", said, where);
    const char *title = say_place_title(arena, where);
    ck_assert_msg(!strstr(title, " the ") && !strstr(title, "  "), "'%s' of '%s'", title, where);
}

START_TEST(no_word_is_lost) {
    struct dice dice = {77};
    for (int i = 0; i < 20000; i++) within(words_stay, &dice);
}
END_TEST

static void said_again(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < PLACES; i++) {
        const char *once = say_place(arena, places[i].where);
        if (strchr(once, ',') || strstr(once, " and ") || strstr(once, "mostly") ||
            strstr(once, "to the left"))
            continue;
        ck_assert_str_eq(say_place(arena, once), once);
    }
}

START_TEST(a_phrase_stays_when_said_again) {
    within(said_again, NULL);
}
END_TEST

static void long_where(struct arena *arena, void *context) {
    (void)context;
    struct dice dice = {5};
    const char *where = "rim";
    for (int i = 0; i < 60; i++)
        where = arena_format(arena, "%s %s", where, dice_roll(&dice, 2) ? "lid" : "and");
    ck_assert_str_eq(say_place(arena, where), where);
}

START_TEST(a_sentence_is_left_alone) {
    within(long_where, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("place");
    TCase *cases = tcase_create("place");
    tcase_set_timeout(cases, 120);
    tcase_add_test(cases, places_as_people_say_them);
    tcase_add_test(cases, no_word_is_lost);
    tcase_add_test(cases, a_phrase_stays_when_said_again);
    tcase_add_test(cases, a_sentence_is_left_alone);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
