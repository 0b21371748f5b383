// SPDX-License-Identifier: MIT
// How many pieces a lot has, and what only looks like a count.
#include "support.h"

static const char *tell(const struct note *note) {
    struct buf out = buf_start(note->arena);
    if (note->record->count) buf_format(&out, "%d", note->record->count);
    for (size_t i = 0; i < note->record->attribute_count; i++)
        buf_format(&out, "%s%s=%s", out.n ? "; " : "", note->record->attributes[i].name,
                   note->record->attributes[i].value);
    return out.at;
}

static void read(struct note *note) {
    read_measures(note);
    read_counts(note);
}

static const struct notes_case counted[] = {
    {"Three piece tea set, silver plate", "3"},
    {"Sauce boat, its stand and two ladles. Four pieces all told, none chipped.", "4"},
    {"Patio suite in green iron, a three piece set", "3"},
    {"Signal flags, a bundle of 14", "14"},
    {"Carving chisels, 12 in a box", "12"},
    {"Wax cylinders, 11 in cardboard tubes", "11"},
    {"Hand bell set, eight bells in a case", "8"},
    {"Gazetteer in three volumes", "3"},
    {"Gazetteer, 6 vols, green cloth", "6"},
    {"Encyclopedia in six volumes, I have five", "5"},
    {"Encyclopedia in six volumes, I have two cats", "6"},
    {"Wrench set. Supposed to be 18 pieces and I count 16, two are not there.", "16"},
    {"Wrench set. Two handles and I count 16.", ""},
    {"Bound volumes of a parish paper, three. Foxed", "3"},
    {"Dresser set, three piece", "3"},
    {"Ten 16 inch serving plates", "10"},
    {"Five 5-inch saucers, white", "5"},
    {"Two 1950s wall lamps", "2"},
    {"Twelve inch ruler, boxwood", ""},
    {"Board game. All 24 pieces are here.", "size=24 pieces"},
    {"Checkers set, all 24 pieces here", "24"},
    {"Six by 9 foot rug", ""},
    {"Six storm jars, 5 inches, green", "6"},
    {"Boat hooks, seven left of eight", "7"},
    {"Spice tins, set of six in a rack", "6"},
    {"Lot: 6 brass hooks", "6"},
    {"Switch plates, brown, x 7, square", "7"},
    {"Six piece sweep rod set", "6"},
    {"Brass cleats. Count: 8. All alike", "8"},
    {"Plates, 3 of a set of 4, chips to two", "3"},
    {"Set of canisters 3 of 4", "3"},
    {"Canisters, five of the original six", "5"},
    {"2 sets of 4 hooks", "8"},
    {"Four big forks and two small", "6"},
    {"Eleven chairs, one odd", "11"},
    {"Both oak chairs for one price", "2"},
    {"Garden forks 4 off", "4"},
    {"Crates numbering sixteen", "16"},
    {"Hooks, you get all 8", "8"},
    {"set of 4 tin mugs", "4"},
    {"set of four", "4"},
    {"Door knobs, brass, eight in all", "8"},
    {"Tiles. Nine. One cracked.", "9"},
    {"Hinges, qty 6", "6"},
    {"Iron keys, 23 of em on a ring", "23"},
    {"Trio of graduated jugs", "3"},
    {"Mugs, enamel, I make it 9", "9"},
    {"Bowls, 4 big 2 small", "6"},
    {"6 brass stair rods and 11 eyes for them", "6"},
    {"2 enamel mugs, 1 enamel jug", "3"},
    {"Set of 4 but one has a chip", "4"},
    {"lot of 10", "10"},
    {"Lot of 9 maps, three without cases", "9"},
    {"group of three lanterns", "3"},
    {"4 lanterns, 2 good 2 rusty", "4"},
    {"4 tin plates", "4"},
    {"Six pressed glass goblets, amber", "6"},
    {"Four school maps, linen backed", "4"},
    {"8 hardback atlases, all with maps but two", "8"},
    {"14 seed tins, every one empty", "14"},
    {"Three paraffin lamps, one with no wick", "3"},
    {"half a dozen pulleys", "6"},
    {"half dozen pulleys", "6"},
    {"a dozen jam jars", "12"},
    {"a dozen or so", ""},
    {"two dozen hooks", "24"},
    {"half a dozen knobs minus one", "5"},
    {"half a dozen minus one so five knobs", "5"},
    {"there's 8 no 7 plates", "7"},
    {"there's 7 plates", "7"},
    {"there are 6 plates in the crate", "6"},
    {"three, I mean four, lanterns", "4"},
    {"There's 11, no, 12 tokens in the tin", "12"},
    {"7 plates 2 bowls 1 lid = 10 pc", "10"},
    {"7 plates 2 bowls 1 lid", "10"},
    {"5 cups 6 saucers", "11"},
    {"5 cups, 6 saucers", "11"},
    {"5 cups and 6 saucers", "11"},
    {"Pair of binocular cases, canvas", "2"},
    {"pair of lamps one shade", "2"},
    {"Pair of brass candlesticks", "2"},
    {"pr bookends, 1 rpr", "2"},
    {"pr. bookends", "2"},
    {"a pair of oars", "2"},
    {"matched pair of oars", "2"},
    {"brass candlesticks, a pair", "2"},
    {"four pair of oars", "8"},
    {"3 pairs of oars", "6"},
    {"44 piece flatware, silver plate", "44"},
    {"40 pc socket set", "40"},
    {"10 pcs", "10"},
    {"box of 14 brass knobs", "14"},
    {"Box of 14 glass knobs off old dressers", "14"},
    {"Bentwood chairs x4, one seat broken", "4"},
    {"lanterns (x 3)", "3"},
    {"4x lanterns", "4"},
    {"14 reel to reel tapes", "14"},
    {"All 8 tins marked the same", "8"},
    {"box 4: 5 books, 1 with no jacket", "5"},
    {"Half a dozen hooks, minus one", "5"},
    {"Ski poles, pairs: 2", "4"},
    {"pairs of oars, 3", "6"},
    {"20 map lot, mixed", "20"},
    {"canning jars, 7 of em", "7"},
    {"pint jars 7 of em, blue glass", "7"},
    {"enamel mugs, six of them", "6"},
    {"There are 5 of these", "5"},
    {"only two left", "2"},
    {"all 12 signed on the bottom", "12"},
    {"Golf irons, three through nine so seven clubs, scratch that, one is gone, six clubs", "6"},
    {"Twelve enamel signs", "12"},
    {"2 vases one blue one clear the blue is chipped", "2"},
    {"1,200 nails", "1200"},
    {"two field telephones with leads", "2"},
    {"Lanterns, 3 brass ones", "3"},
    {"Box of 78s, 23 records, dance bands", "23"},
    {"Paperback lot, 12 sci fi", "12"},
};

static const struct notes_case uncounted[] = {
    {"Jacket, ten buttons, 4 on the cuffs", ""},
    {"Plate broken into three pieces in all", ""},
    {"Slates, 12 in deep", ""},
    {"Chest of drawers, 12 in a row of pegs", ""},
    {"Croquet set, 4 mallets, 4 balls", ""},
    {"Saw, broken in two pieces", ""},
    {"Picnic hamper. Set of 4 plates inside", ""},
    {"Picnic hamper. Inside there's four plates, four cups", ""},
    {"Desk, oak. Pair of inkwells", ""},
    {"One of a pair of vases", ""},
    {"2 piece butter dish", ""},
    {"Both handles loose on this pail", ""},
    {"Tall dresser. Knobs: 5 of 6.", ""},
    {"Stand with 4 feet 3 of them worn", ""},
    {"Chest of drawers, 3 of 4 run well", ""},
    {"Chairs, 3 of 4 seats split", ""},
    {"2 piece butter dish", ""},
    {"2 piece set butter dish", ""},
    {"box 3: lantern", ""},
    {"lot 12 lantern", ""},
    {"a lot of wear", ""},
    {"a lot of scratches on the lid", ""},
    {"couple of forks", ""},
    {"jar of about 120 tokens", "size=about 120 pieces"},
    {"about 40 glass slides", "size=about 40 pieces"},
    {"A dozen or so keys", "size=about 12 pieces"},
    {"box of radio tubes, untested, about thirty", "size=about 30 pieces"},
    {"Tin of beads, maybe 500 of them", "size=about 500 pieces"},
    {"all 4 legs are loose", ""},
    {"Receiver x3", ""},
    {"2nd one is worse", ""},
    {"service for 8", ""},
    {"1000 pc puzzle 1 missing", "size=1000 pieces"},
    {"500 piece jigsaw, mill pond", "size=500 pieces"},
    {"999 of 1000", ""},
    {"one left boot", ""},
    {"two chips on the rim", ""},
    {"Two dents in the lid", ""},
    {"lamp with two handles", ""},
    {"Chest with 3 drawers", ""},
    {"pair of pliers", ""},
    {"pair of scissors, rusty", ""},
    {"pair of field glasses", ""},
    {"5 string banjo", ""},
    {"3 speed fan, 2 settings work", ""},
    {"2 person tent", "size=2 person"},
    {"12 volt lamp", "size=12V"},
    {"some have chips", ""},
    {"holds 2 cups", ""},
    {"number 8 lantern", ""},
    {"No. 8 lanterns", ""},
    {"10 inch plates", ""},
    {"missing 4 screws", ""},
    {"lantern, four panes", ""},
    {"lantern. Three panes are cracked.", ""},
    {"one lamp", ""},
    {"part of a set of 6", ""},
    {"It is 40 years old", ""},
    {"3 of 4 pegs", ""},
    {"pairs 3", ""},
    {"each one has a sticker", ""},
    {"most of the pegs are there", ""},
    {"the other one's fine", ""},
};

static void read_given(struct note *note) {
    note->record->count = 3;
    read(note);
}

static const struct notes_case given[] = {{"set of 4", "3"}, {"Six goblets", "3"}};

#define CASES(name, how)                                                                                     \
    START_TEST(counts_##name) {                                                                              \
        support_cases(name, sizeof name / sizeof *name, LOCALE_US, how, tell);                               \
    }                                                                                                        \
    END_TEST
CASES(counted, read)
CASES(uncounted, read)
CASES(given, read_given)

int main(void) {
    Suite *suite = suite_create("notes: counts");
    TCase *tests = tcase_create("counts");
    tcase_add_test(tests, counts_counted);
    tcase_add_test(tests, counts_uncounted);
    tcase_add_test(tests, counts_given);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
