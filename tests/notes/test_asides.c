// SPDX-License-Identifier: MIT
// What of a note is not about the thing; facts in the same sentence stay.
#include "support.h"

static const char *tell(const struct note *note) {
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->aside_count; i++) {
        buf_text(&out, out.n ? " | " : "");
        buf_add(&out, note->tokens.text + note->asides[i].from, note->asides[i].to - note->asides[i].from);
    }
    return out.at;
}

static void read(struct note *note) {
    read_arrivals(note);
    read_writing(note);
    read_asides(note);
}

static const struct notes_case money[] = {
    {"Lantern. Paid 6 bucks for it at a church sale.", "Paid 6 bucks for it at a church sale"},
    {"Lantern, worth about 300.", "worth about 300"},
    {"worth 300 online I looked", "worth 300 online I looked"},
    {"$4 flea mkt", "$4 flea mkt"},
    {"Lantern, asking 20.", "asking 20"},
    {"wife says list it at 45", "wife says list it at 45"},
    {"Came in a box lot, six dollars for everything.", "Came in a box lot | six dollars for everything"},
    {"Tin. \xC2\xA3"
     "3 at the fete.",
     "\xC2\xA3"
     "3 at the fete"},
    {"these sell for 40 each", "these sell for 40 each"},
    {"lantern three left at this price", "lantern three left at this price"},
    {"brass, or best offer", "or best offer"},
    {"chipped rim, priced for that", "priced for that"},
    {"price sticker on the lid", ""},
    {"it has one dollar size dent", ""},
    {"tin of coins, 20 pence coins mostly", ""},
};

static const struct notes_case found[] = {
    {"Found this in the bottom of a toolbox.", "Found this in the bottom of a toolbox"},
    {"found in the barn so a bit rusty", "found in the barn"},
    {"found in the barn, rusty", "found in the barn"},
    {"found in the bottom of the box lot", "found in the bottom of the box lot"},
    {"Lantern from a barn.", "from a barn"},
    {"rusty lantern from a barn", "from a barn"},
    {"Dug up behind the shed when we put in the fence.", "Dug up behind the shed when we put in the fence"},
    {"Picked up at a rummage sale with some ropes in it.",
     "Picked up at a rummage sale with some ropes in it"},
    {"I bought it from a neighbor, it was cheap", "I bought it from a neighbor"},
    {"Inherited, never used", "Inherited"},
    {"belonged to a sea captain they said", "belonged to a sea captain they said"},
    {"estate of a doctor", "estate of a doctor"},
    {"it turned up in a house clearance", "it turned up in a house clearance"},
    {"kept in a cedar chest 30 years", "kept in a cedar chest 30 years"},
    {"sat in a damp cellar", "sat in a damp cellar"},
    {"Brass lamp, got it at the boot sale, works", "got it at the boot sale"},
    {"came from the old school, two dents", "came from the old school"},
    {"comes from a boat house but the lid is cracked", "comes from a boat house"},
    {"We got it new in 1983.", ""},
    {"bought brand new in 1988", ""},
    {"came with a lid", ""},
    {"found a chip on the rim", ""},
};

static const struct notes_case arrivals[] = {
    {"Bowl. It came in with the Circle ladies' boxes.", "It came in with the Circle ladies' boxes"},
    {"Bell, small dent. It was in with the nativity props, under a camel.",
     "It was in with the nativity props, under a camel"},
    {"Hat. Was in amongst the Halloween things, on a scarecrow.",
     "Was in amongst the Halloween things, on a scarecrow"},
    {"Chair. It came to us through the hospital auxiliary.", "It came to us through the hospital auxiliary"},
    {"Rug, faded. It was donated by the Elks.", "It was donated by the Elks"},
    {"Spoon. Turned up with the Grange kitchen lot, on its stand.", "Turned up with the Grange kitchen lot"},
    {"Decanter. It came in with its stopper.", ""},
    {"Doll. She came in her box with a stand.", ""},
    {"Teapot. It came in with a hairline in the spout.", ""},
    {"Statue. It came in green and in blue.", ""},
    {"Jug. There is one in with the plates.", ""},
};

static const struct notes_case people[] = {
    {"Oak desk. The woman from the harbor board admired it.", "The woman from the harbor board admired it"},
    {"My uncle drank his cider from it every Sunday.", "My uncle drank his cider from it every Sunday"},
    {"My husband's brother Dunmar bought it to learn", "My husband's brother Dunmar bought it to learn"},
    {"my aunt used it every Sunday", "my aunt used it every Sunday"},
    {"It was my neighbor's and she used it for everything.",
     "It was my neighbor's and she used it for everything"},
    {"Grandson was not happy to see it go.", "Grandson was not happy to see it go"},
    {"the lady swore nobody ever lit it", "the lady swore nobody ever lit it"},
    {"My cousin wants to think it is worth a fortune, I would like it to go to someone who likes boats.",
     "My cousin wants to think it is worth a fortune, I would like it to go to someone who likes boats"},
    {"somebody told me it is a plumber's lamp", "somebody told me it is a plumber's lamp"},
    {"my sister says it smells", "my sister says it"},
    {"the crack was glued by my brother in law", "by my brother in law"},
    {"My husband kept bees, he never oiled it, the lid is rusty", "My husband kept bees, he never oiled it"},
    {"the hinge was repaired by my father", "by my father"},
    {"Kids played hard with it, paint worn", ""},
    {"the back of the lamp", ""},
    {"lady's saddle", ""},
    {"the man on the label", ""},
};

static const struct notes_case feelings[] = {
    {"it was my favorite", "it was my favorite"},
    {"I almost kept it", "I almost kept it"},
    {"hate to see it go", "hate to see it go"},
    {"great gift for grandma", "great gift for grandma"},
    {"would make a nice lamp", "would make a nice lamp"},
    {"must see", "must see"},
    {"my back hurts from carrying it", "my back hurts from carrying it"},
    {"I was going to restore it, never did, the seat is torn", "I was going to restore it, never did"},
    {"moving so it has to go", "moving so it has to go"},
    {"Brass. We're downsizing.", "We're downsizing"},
    {"I love this one but the lid is cracked", "I love this one"},
    {"needs the space heater", ""},
};

static const struct notes_case errands[] = {
    {"tell Dana to bring the tape", "tell Dana to bring the tape"},
    {"remind me to look at the wick", "remind me to look at the wick"},
    {"check later if the key fits", "check later if the key fits"},
    {"Lamp, note to self, find the wick", "note to self"},
    {"ask Orrin about the key", "ask Orrin about the key"},
    {"Oak. Don't forget the lid.", "Don't forget the lid"},
    {"see last note for measurements", "see last note for measurements"},
    {"hold on phone rang okay so the plate", "hold on phone rang okay so the plate"},
    {"Serial on the sticker, don't print that.", "don't print that"},
    {"came with a keyboard I already sold", "came with a keyboard I already sold"},
    {"strike the part about the box", "strike the part about the box"},
    {"I can't tell if it is oak", ""},
    {"hard to tell with the pattern", ""},
    {"makes a call when wound", ""},
};

static const struct notes_case post[] = {
    {"Oak desk. I'm selling it because we bought a bigger one.",
     "I'm selling it because we bought a bigger one"},
    {"Oak desk. Selling because one drawer is missing.", ""},
    {"first floor pickup", "first floor pickup"},
    {"local pickup only please", "local pickup only please"},
    {"Heavy so think about the postage.", "Heavy so think about the postage"},
    {"will ship anywhere", "will ship anywhere"},
    {"cash only, no returns", "cash only | no returns"},
    {"message me with questions", "message me with questions"},
    {"Oak. Look before posting.", "Look before posting"},
    {"postage stamp case", "postage stamp case"},
    {"postcard with a stamp", ""},
};

static const struct notes_case market[] = {
    {"these don't sell any more", "these don't sell any more"},
    {"super rare find", "super rare find"},
    {"collectors want these", "collectors want these"},
    {"hard to find with the lid", "hard to find with the lid"},
    {"saw one online for more", "saw one online for more"},
    {"people said it was worth a lot, the rim is chipped", "people said it was worth a lot"},
    {"you don't see many of these but it is cracked", "you don't see many of these"},
};

static const struct notes_case facts[] = {
    {"8 inches tall, bought it in May", "bought it in May"},
    {"brass lamp, marked Orrindel, paid 5 dollars", "paid 5 dollars"},
    {"No chips, my aunt kept it on the shelf", "my aunt kept it on the shelf"},
    {"lid is cracked, got it for 2 bucks", "got it for 2 bucks"},
    {"two chips and paid four dollars", "and paid four dollars"},
    {"Rust on the sole, otherwise fine", ""},
    {"works, tested on all speeds", ""},
    {"I checked it with a loupe, no cracks", ""},
    {"smoke free home", ""},
    {"I measured 9 inches", ""},
};

#define CASES(name)                                                                                          \
    START_TEST(asides_##name) {                                                                              \
        support_cases(name, sizeof name / sizeof *name, LOCALE_US, read, tell);                              \
    }                                                                                                        \
    END_TEST
CASES(money)
CASES(found)
CASES(arrivals)
CASES(people)
CASES(feelings)
CASES(errands)
CASES(post)
CASES(market)
CASES(facts)

static void untouched(struct arena *arena, void *context) {
    (void)context;
    static const char *const notes[] = {"found in the barn so a bit rusty and the lid is cracked",
                                        "My uncle dropped it and chipped the rim",
                                        "paid 2 dollars, rim chipped, smells of smoke",
                                        "my sister says it smells musty but she says that of everything"};
    for (size_t i = 0; i < sizeof notes / sizeof *notes; i++) {
        struct note *note = support_note(arena, notes[i], LOCALE_US);
        read_asides(note);
        size_t faults = 0;
        for (size_t k = 0; k < note->tokens.count; k++) {
            faults += note->fault_word[k] != FAULT_WORD_NOT;
            ck_assert_msg(!note->fault_word[k] || note->taken[k] == TAKEN_NOT, "%s: '%s' is lost", notes[i],
                          note->tokens.at[k].fold);
        }
        ck_assert_uint_ge(faults, 1);
        ck_assert_uint_ge(note->aside_count, 1);
    }
}

// No word of a fault is ever inside an aside.
START_TEST(asides_leave_faults) {
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, untouched, NULL));
    arena_free(arena);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: asides");
    TCase *tests = tcase_create("asides");
    tcase_add_test(tests, asides_money);
    tcase_add_test(tests, asides_found);
    tcase_add_test(tests, asides_arrivals);
    tcase_add_test(tests, asides_people);
    tcase_add_test(tests, asides_feelings);
    tcase_add_test(tests, asides_errands);
    tcase_add_test(tests, asides_post);
    tcase_add_test(tests, asides_market);
    tcase_add_test(tests, asides_facts);
    tcase_add_test(tests, asides_leave_faults);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
