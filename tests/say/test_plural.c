// SPDX-License-Identifier: MIT
// Number of nouns and phrases: what people would write, there and back, and laws for words at random.
#include "../text/support.h"

#include <string.h>

#include "goods.h"
#include "say/nouns.h"
#include "say/say.h"

struct both_forms {
    const char *one, *many;
};

static const struct both_forms irregular[] = {
    {"knife", "knives"},
    {"penknife", "penknives"},
    {"bookshelf", "bookshelves"},
    {"scarf", "scarves"},
    {"loaf", "loaves"},
    {"drop-leaf", "drop-leaves"},
    {"half", "halves"},
    {"hoof", "hooves"},
    {"calf", "calves"},
    {"wolf", "wolves"},
    {"roof", "roofs"},
    {"staff", "staffs"},
    {"handkerchief", "handkerchiefs"},
    {"belief", "beliefs"},
    {"proof", "proofs"},
    {"relief", "reliefs"},
    {"foot", "feet"},
    {"forefoot", "forefeet"},
    {"eyetooth", "eyeteeth"},
    {"goose", "geese"},
    {"mongoose", "mongooses"},
    {"mouse", "mice"},
    {"titmouse", "titmice"},
    {"blouse", "blouses"},
    {"house", "houses"},
    {"child", "children"},
    {"craftsman", "craftsmen"},
    {"woman", "women"},
    {"ottoman", "ottomans"},
    {"talisman", "talismans"},
    {"specimen", "specimens"},
    {"ox", "oxen"},
    {"box", "boxes"},
    {"die", "dice"},
    {"pie", "pies"},
    {"tie", "ties"},
    {"cookie", "cookies"},
    {"caddy", "caddies"},
    {"birdie", "birdies"},
    {"brush", "brushes"},
    {"dish", "dishes"},
    {"watch", "watches"},
    {"stomach", "stomachs"},
    {"cache", "caches"},
    {"cartouche", "cartouches"},
    {"glass", "glasses"},
    {"brass", "brasses"},
    {"demitasse", "demitasses"},
    {"lens", "lenses"},
    {"iris", "irises"},
    {"trellis", "trellises"},
    {"canvas", "canvases"},
    {"atlas", "atlases"},
    {"vase", "vases"},
    {"compass", "compasses"},
    {"bus", "buses"},
    {"fuse", "fuses"},
    {"cactus", "cacti"},
    {"octopus", "octopuses"},
    {"gas", "gases"},
    {"quiz", "quizzes"},
    {"fez", "fezzes"},
    {"topaz", "topazes"},
    {"waltz", "waltzes"},
    {"size", "sizes"},
    {"adze", "adzes"},
    {"axe", "axes"},
    {"pickaxe", "pickaxes"},
    {"potato", "potatoes"},
    {"tomato", "tomatoes"},
    {"domino", "dominoes"},
    {"photo", "photos"},
    {"radio", "radios"},
    {"piano", "pianos"},
    {"video", "videos"},
    {"studio", "studios"},
    {"banjo", "banjos"},
    {"shoe", "shoes"},
    {"canoe", "canoes"},
    {"hoe", "hoes"},
    {"cloth", "cloths"},
    {"month", "months"},
    {"tray", "trays"},
    {"key", "keys"},
    {"battery", "batteries"},
    {"penny", "pennies"},
    {"ski", "skis"},
    {"menu", "menus"},
    {"tableau", "tableaux"},
    {"bureau", "bureaus"},
    {"rose", "roses"},
    {"hose", "hoses"},
    {"valve", "valves"},
    {"sleeve", "sleeves"},
    {"glove", "gloves"},
    {"stave", "staves"},
    {"olive", "olives"},
    {"sheaf", "sheaves"},
    {"analysis", "analyses"},
    {"person", "people"},
    {"caf\xC3\xA9", "caf\xC3\xA9s"},
    {"yo-yo", "yo-yos"},
    {"close-up", "close-ups"},
};

static const struct both_forms phrases[] = {
    {"dinner plate", "dinner plates"},
    {"set of keys", "sets of keys"},
    {"pair of pliers", "pairs of pliers"},
    {"chest of drawers", "chests of drawers"},
    {"coat of arms", "coats of arms"},
    {"box with lid", "boxes with lid"},
    {"clip on earring", "clip on earrings"},
    {"bird on branch", "birds on branch"},
    {"lamp for parts", "lamps for parts"},
    {"lamp w/ shade", "lamps w/ shade"},
    {"cup and saucer", "cups and saucers"},
    {"cup & saucer", "cups & saucers"},
    {"tea cup and saucer", "tea cups and saucers"},
    {"cup and saucer set", "cup and saucer sets"},
    {"mortar and pestle", "mortars and pestles"},
    {"lock and key", "locks and keys"},
    {"block and tackle", "blocks and tackle"},
    {"knife, fork and spoon", "knives, forks and spoons"},
    {"salt and pepper shaker", "salt and pepper shakers"},
    {"black and white print", "black and white prints"},
    {"plate, blue and white", "plates, blue and white"},
    {"plate, dinner", "plates, dinner"},
    {"plate (dinner)", "plates (dinner)"},
    {"bowl 10 in", "bowls 10 in"},
    {"tray 12 x 8 in", "trays 12 x 8 in"},
    {"6 in plate", "6 in plates"},
    {"35 mm camera", "35 mm cameras"},
    {"jack-in-the-box", "jack-in-the-boxes"},
    {"merry-go-round", "merry-go-rounds"},
    {"man-of-war", "men-of-war"},
    {"son-in-law", "sons-in-law"},
    {"passer-by", "passers-by"},
    {"fleur-de-lis", "fleurs-de-lis"},
    {"lily of the valley", "lilies of the valley"},
    {"string light", "string lights"},
    {"wine glass", "wine glasses"},
    {"fish knife", "fish knives"},
    {"school bus", "school buses"},
    {"Ostrey Lens", "Ostrey Lenses"},
    {"Ostrey KR-9", "Ostrey KR-9s"},
    {"KR-9 radio", "KR-9 radios"},
    {"men's hat", "men's hats"},
    {"1920s lamp", "1920s lamps"},
    {"Knife", "Knives"},
    {"Foot", "Feet"},
    {"Ox", "Oxen"},
    {"GLASS JAR", "GLASS JARS"},
    {"KNIFE", "KNIVES"},
    {"BOX", "BOXES"},
    {"DVD", "DVDs"},
    {"LP", "LPs"},
    {"TV", "TVs"},
    {"LED", "LEDs"},
    {"LED bulb", "LED bulbs"},
    {"boxed LP", "boxed LPs"},
};

// Both forms alike, or only one form.
static const char *const unchanging[] = {
    "pliers",        "scissors",      "tongs",          "shears",    "binoculars",     "trousers",
    "field glasses", "opera glasses", "series",         "chassis",   "sheep",          "glassware",
    "hardware",      "news",          "jewelry",        "jewellery", "china",          "bellows",
    "data",          "aircraft",      "fishing tackle", "1920s",     "silver cutlery", "",
};

static void there_and_back(struct arena *arena, const struct both_forms *forms, size_t count) {
    for (size_t i = 0; i < count; i++) {
        const char *one = forms[i].one, *many = forms[i].many;
        ck_assert_str_eq(say_plural(arena, one), many);
        ck_assert_str_eq(say_singular(arena, many), one);
        ck_assert_str_eq(say_plural(arena, many), many);
        ck_assert_str_eq(say_singular(arena, one), one);
        ck_assert_msg(say_is_plural(many) && !say_is_plural(one), "%s", one);
    }
}

static void tables(struct arena *arena, void *context) {
    (void)context;
    there_and_back(arena, irregular, sizeof irregular / sizeof *irregular);
    there_and_back(arena, phrases, sizeof phrases / sizeof *phrases);
    for (size_t i = 0; i < sizeof unchanging / sizeof *unchanging; i++) {
        ck_assert_str_eq(say_plural(arena, unchanging[i]), unchanging[i]);
        ck_assert_str_eq(say_singular(arena, unchanging[i]), unchanging[i]);
    }
}

static void families(struct arena *arena, void *context) {
    (void)context;
    ck_assert_str_eq(say_item_of(arena, "spare parts"), "spare part");
    ck_assert_str_eq(say_item_of(arena, "musical instruments"), "musical instrument");
    ck_assert_str_eq(say_item_of(arena, "furniture"), "furniture item");
    ck_assert_str_eq(say_item_of(arena, "cameras and optics"), "household item");
}

START_TEST(what_only_the_family_is_known_of_has_a_plain_noun) {
    within(families, NULL);
}
END_TEST

START_TEST(forms_are_those_people_write) {
    within(tables, NULL);
}
END_TEST

static void noun_returns(struct arena *arena, const char *one) {
    const char *many = say_plural(arena, one);
    ck_assert_str_eq(say_singular(arena, many), one);
    ck_assert_str_eq(say_singular(arena, one), one);
    ck_assert_str_eq(say_plural(arena, many), many);
    const char *phrase = arena_format(arena, "small %s with case", one);
    ck_assert_str_eq(say_singular(arena, say_plural(arena, phrase)), phrase);
}

static void nouns_return(struct arena *arena, void *context) {
    size_t *count = context;
    for (size_t i = 0; i < GOODS_LINES; i++)
        for (char *one = strtok(arena_string(arena, goods[i]), " "); one; one = strtok(NULL, " ")) {
            noun_returns(arena, one);
            ++*count;
        }
}

START_TEST(every_noun_returns) {
    size_t count = 0;
    within(nouns_return, &count);
    ck_assert_uint_ge(count, 900);
}
END_TEST

static void all_listed(struct arena *arena, void *context) {
    (void)context;
    for (enum noun_kind kind = 0; kind < NOUNS_COUNT; kind++) {
        const struct noun_list *list = nouns_list(kind);
        ck_assert_uint_gt(list->count, 0);
        for (size_t i = 0; i < list->count; i++) {
            ck_assert_msg(nouns_has(kind, list->words[i]), "%s is not found: out of order", list->words[i]);
            ck_assert_msg(!i || strcmp(list->words[i - 1], list->words[i]) < 0, "%s", list->words[i]);
        }
    }
    struct noun_pairs pairs = nouns_by_singular();
    ck_assert_uint_eq(pairs.count, nouns_by_plural().count);
    for (size_t i = 0; i < pairs.count; i++) {
        ck_assert_ptr_eq(nouns_of_singular(pairs.at[i].singular), &pairs.at[i]);
        const struct noun_pair *back = nouns_of_plural(pairs.at[i].plural);
        ck_assert_ptr_nonnull(back);
        ck_assert_str_eq(back->singular, pairs.at[i].singular);
        ck_assert_str_eq(say_plural(arena, pairs.at[i].singular), pairs.at[i].plural);
    }
}

START_TEST(lists_are_sorted_and_agree) {
    within(all_listed, NULL);
}
END_TEST

static void stems(struct arena *arena, void *context) {
    (void)context;
    static const struct both_forms words[] = {
        {"goblet", "Goblets"},
        {"knife", "KNIVES"},
        {"glass", "Glass"},
        {"glass", "glasses"},
        {"dvd", "DVDs"},
        {"dvd", "DVDS"},
        {"lp", "LPs"},
        {"lp", "lps"},
        {"vhs", "VHS"},
        {"lb", "lbs"},
        {"gas", "Gas"},
        {"lens", "Lenses"},
        {"this", "This"},
        {"has", "has"},
        {"was", "was"},
        {"its", "its"},
        {"yes", "Yes"},
        {"ex-libris", "Ex-Libris"},
        {"tin", "tins"},
        {"radio", "Radios"},
        {"1950s", "1950s"},
        {"kr-9", "KR-9"},
        {"\xC3\xA9tag\xC3\xA8re", "\xC3\x89tag\xC3\xA8res"},
        {"christmas", "Christmas"},
        {"towards", "towards"},
        {"men's", "Men's"},
        {"", ""},
    };
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        ck_assert_str_eq(say_stem(arena, words[i].many), words[i].one);
}

START_TEST(stems_meet) {
    within(stems, NULL);
}
END_TEST

// Words made of the pieces that rules look for, so that endings meet in ways nobody lists.
static const char *made_up(struct arena *arena, struct dice *dice) {
    static const char *const pieces[] = {
        "s",      "es",      "ies", "ves", "is", "us", "ss", "men",      "man",  "eaux", "x",   "z",
        "zes",    "ches",    "oes", "f",   "fe", "y",  "a",  "o",        "gl",   "tr",   "-gl", " gl",
        " of gl", " and gl", "S",   "KR",  "9",  "'",  "n",  "\xC3\xA9", "-of-", ",",    "(",   " in gl"};
    const char *text = "gl"; // two letters may be no noun: "it", "its"
    for (uint32_t i = dice_roll(dice, 8); i > 0; i--)
        text = arena_format(arena, "%s%s", text, pieces[dice_roll(dice, sizeof pieces / sizeof *pieces)]);
    return text;
}

static void laws(struct arena *arena, void *context) {
    struct dice *dice = context;
    const char *word = made_up(arena, dice), *one = say_singular(arena, word),
               *many = say_plural(arena, word);
    ck_assert_msg(!strcmp(say_singular(arena, one), one), "singular of '%s' is '%s', and not its own", word,
                  one);
    ck_assert_msg(!strcmp(say_plural(arena, many), many), "plural of '%s' is '%s', and not its own", word,
                  many);
    ck_assert_msg(strlen(many) <= strlen(word) + 20, "'%s' grew to '%s'", word, many);
}

START_TEST(forms_settle_for_any_word) {
    struct dice dice = {20240607};
    for (int i = 0; i < 20000; i++) within(laws, &dice);
}
END_TEST

static void long_words(struct arena *arena, void *context) {
    (void)context;
    char word[4000];
    memset(word, 'o', sizeof word - 1);
    word[sizeof word - 1] = '\0';
    ck_assert_uint_eq(strlen(say_plural(arena, word)), sizeof word);
    ck_assert_str_eq(say_singular(arena, word), word);
    for (size_t i = 5; i < sizeof word - 1; i += 6) word[i] = ' ';
    ck_assert_str_eq(say_plural(arena, word), word); // a sentence has no number
}

START_TEST(length_is_no_danger) {
    within(long_words, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("plural");
    TCase *cases = tcase_create("plural");
    tcase_set_timeout(cases, 120);
    tcase_add_test(cases, forms_are_those_people_write);
    tcase_add_test(cases, every_noun_returns);
    tcase_add_test(cases, lists_are_sorted_and_agree);
    tcase_add_test(cases, what_only_the_family_is_known_of_has_a_plain_noun);
    tcase_add_test(cases, stems_meet);
    tcase_add_test(cases, forms_settle_for_any_word);
    tcase_add_test(cases, length_is_no_danger);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
