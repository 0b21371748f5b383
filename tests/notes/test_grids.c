// SPDX-License-Identifier: MIT
// Plain sentences put together from their parts, so that what they must become is known without a list: how
// many of what lacks, one of several, the size of a fault, parts of which nothing bad is said, and statements
// that must be read in company as they are alone, what is guessed or seen, names of owners and of makers. The
// sentences are our own (from memory); each grid has the share that must hold.
#include "support_book.h"

#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// The frame with "%1" to "%4" filled in.
static const char *fill(struct arena *arena, const char *frame, const char *const *words) {
    struct buf out = buf_start(arena);
    for (; *frame; frame++) {
        if (*frame == '%')
            buf_text(&out, words[*++frame - '1']);
        else
            buf_byte(&out, *frame);
    }
    return out.at;
}

struct share {
    int asked, held;
};

static void hold(struct share *share, bool held, const char *note) {
    enum { SHOWN = 8 };
    share->asked++;
    share->held += held;
    if (!held && share->asked - share->held <= SHOWN) fprintf(stderr, "not so: %s\n", note);
}

static void need(const char *what, const struct share *share, int least) {
    printf("%s: %d of %d\n", what, share->held, share->asked);
    ck_assert_int_gt(share->asked, 0);
    ck_assert_msg(1000 * share->held >= least * share->asked, "%s: %d of %d, and %d in a thousand are needed",
                  what, share->held, share->asked, least);
}

// --- "missing a couple of screws" ---

static void lacks(struct arena *arena, void *context) {
    static const char *const cues[] = {"missing", "has lost", "short of", "minus", "lacks"};
    static const struct {
        const char *words;
        int count; // 0: nobody counted
    } amounts[] = {{"two", 2},        {"four", 4},     {"a couple of", 2}, {"a few", 0},
                   {"several", 0},    {"some", 0},     {"a pair of", 2},   {"one of its", 1},
                   {"two of its", 2}, {"half its", 0}, {"most of its", 0}, {"three of the six", 3}};
    static const char *const parts[] = {"screws", "knobs",  "castors", "hooks",   "handles",
                                        "pegs",   "hinges", "straps",  "runners", "catches"};
    struct share share = {0, 0};
    (void)context;
    for (size_t c = 0; c < COUNT(cues); c++)
        for (size_t a = 0; a < COUNT(amounts); a++)
            for (size_t p = 0; p < COUNT(parts); p++) {
                const char *note =
                    arena_format(arena, "Oak cabinet, %s %s %s.", cues[c], amounts[a].words, parts[p]);
                const struct record *record = support_read(arena, note);
                const struct item_flaw *flaw = record->flaws;
                bool one = record->flaw_count == 1 && record->count == 0 && flaw->kind->form == ABSENCE;
                bool named = one && flaw->part && !strncmp(flaw->part, parts[p], strlen(parts[p]) - 2);
                int count = !one ? 0 : flaw->count ? flaw->count : 1;
                hold(&share, named && (!amounts[a].count || count == amounts[a].count), note);
            }
    need("what lacks", &share, 970);
}

// --- "one of the mugs has a chip" ---

static void several(struct arena *arena, void *context) {
    static const struct {
        const char *words; // with the plural, the noun, the fault and what is said of it
        int count;         // 0: all or some
    } frames[] = {{"One has a %3.", 1},
                  {"One of the %1 has a %3.", 1},
                  {"Two of them have %3s.", 2},
                  {"One %2 has a %3.", 1},
                  {"A %3 in one %2.", 1},
                  {"Only one has a %3.", 1},
                  {"One with a %3, the rest are fine.", 1},
                  {"The others are fine but one has a %3.", 1},
                  {"A couple of them have %3s.", 2},
                  {"One of them is %4.", 1},
                  {"Two are %4.", 2},
                  {"Two of the %1 are %4.", 2},
                  {"One %2 %4.", 1},
                  {"One's %4, the others are ok.", 1},
                  {"The odd one is %4.", 1},
                  {"one is %4 the others perfect", 1}};
    static const struct {
        const char *thing, *plural, *noun;
        int count;
        const char *faults[3][2];
    } sets[] = {
        {"Six glass tumblers",
         "tumblers",
         "tumbler",
         6,
         {{"chip", "chipped"}, {"scratch", "scratched"}, {"crack", "cracked"}}},
        {"Set of 8 enamel mugs",
         "mugs",
         "mug",
         8,
         {{"chip", "chipped"}, {"dent", "dented"}, {"stain", "stained"}}},
        {"Four oak chairs",
         "chairs",
         "chair",
         4,
         {{"scratch", "scratched"}, {"split", "split"}, {"stain", "stained"}}},
        {"Five books", "books", "book", 5, {{"tear", "torn"}, {"stain", "stained"}, {"crease", "creased"}}}};
    struct share share = {0, 0};
    (void)context;
    for (size_t s = 0; s < COUNT(sets); s++)
        for (size_t k = 0; k < 3; k++)
            for (size_t f = 0; f < COUNT(frames); f++) {
                const char *const *fault = sets[s].faults[k];
                const char *words[] = {sets[s].plural, sets[s].noun, fault[0], fault[1]};
                const char *said = fill(arena, frames[f].words, words);
                const char *note = arena_format(arena, "%s. %s", sets[s].thing, said);
                const struct record *record = support_read(arena, note);
                bool one = record->flaw_count == 1 && record->count == sets[s].count;
                hold(&share, one && record->flaws[0].count == frames[f].count, note);
            }
    need("one of several", &share, 980);
}

// --- "a dent on the side (2 in)" ---

static void sizes(struct arena *arena, void *context) {
    static const char *const frames[] = {"%1 on the %2 (%3).",
                                         "%1 (%3) on the %2.",
                                         "%1 on the %2 - %3.",
                                         "%1 %3 long on the %2.",
                                         "There is a %1 on the %2 about %3 long.",
                                         "%1 on the %2 measuring %3.",
                                         "The %2 has a %1 %3 across.",
                                         "A %1 runs %3 along the %2.",
                                         "%1 of %3 on the %2.",
                                         "The %1 on the %2 is %3 long."};
    static const char *const faults[][3] = {
        {"Stoneware jug", "crack", "base"}, {"Copper kettle", "dent", "side"},
        {"Oak desk", "scratch", "top"},     {"Wool blanket", "tear", "hem"},
        {"Iron trivet", "crack", "leg"},    {"Leather satchel", "scuff", "flap"}};
    static const struct {
        const char *words;
        double mm;
    } figures[] = {{"5 mm", 5},          {"3 cm", 30},      {"half an inch", 12.7},    {"two inches", 50.8},
                   {"1 1/2 in", 38.1},   {"an inch", 25.4}, {"3/4 of an inch", 19.05}, {"10mm", 10},
                   {"six inches", 152.4}};
    struct share share = {0, 0};
    (void)context;
    for (size_t f = 0; f < COUNT(faults); f++)
        for (size_t w = 0; w < COUNT(frames); w++)
            for (size_t k = 0; k < COUNT(figures); k++) {
                const char *words[] = {faults[f][1], faults[f][2], figures[k].words};
                const char *said = fill(arena, frames[w], words);
                const char *note = arena_format(arena, "%s. %s", faults[f][0], said);
                const struct record *record = support_read(arena, note);
                const struct item_flaw *flaw = record->flaws;
                bool one = record->flaw_count == 1 && record->measurement_count == 0 && flaw->has_size;
                double apart = one ? flaw->size.base - figures[k].mm : 1;
                hold(&share, one && (flaw->where || flaw->part) && apart < 0.1 && apart > -0.1, note);
            }
    need("the size of a fault", &share, 970);
}

// --- nothing bad is said ---

static void harmless(struct arena *arena, void *context) {
    static const char *const frames[] = {"The %1 is painted green.",
                                         "It has a carved %1.",
                                         "The %1 is 4 inches across.",
                                         "Comes with the %1.",
                                         "You can see the %1 in the photo.",
                                         "The %1 has a number on it.",
                                         "The %1 is original.",
                                         "The %1 has a maker's stamp.",
                                         "The %1 is on the left.",
                                         "The %1 comes off for cleaning.",
                                         "A %1 like this is hard to find.",
                                         "The %1 is hand made.",
                                         "The %1 is the same on both sides."};
    static const char *const things[] = {"Stoneware jug",  "Iron brace", "Oak desk",
                                         "Canvas satchel", "Old atlas",  "Valve radio",
                                         "Mantel clock",   "Brass lamp", "Wicker hamper"};
    static const char *const parts[] = {
        "lid",   "base",  "handle", "spout", "foot",  "knob",  "hinge", "hook",   "strap",  "buckle",
        "clasp", "key",   "drawer", "shelf", "door",  "leg",   "arm",   "seat",   "side",   "corner",
        "label", "cord",  "dial",   "bulb",  "shade", "wick",  "bell",  "button", "pocket", "lining",
        "sole",  "spine", "cover",  "map",   "joint", "frame", "chain", "stem",   "tray",   "blade"};
    struct share share = {0, 0};
    (void)context;
    for (size_t t = 0; t < COUNT(things); t++)
        for (size_t p = 0; p < COUNT(parts); p++)
            for (size_t f = 0; f < COUNT(frames); f++) {
                const char *said = fill(arena, frames[f], &parts[p]);
                const char *note = arena_format(arena, "%s. %s", things[t], said);
                hold(&share, support_read(arena, note)->flaw_count == 0, note);
            }
    need("no fault where none is said", &share, 990);
}

// --- in company as alone ---

static bool same_text(const char *a, const char *b) {
    return (!a && !b) || (a && b && !strcmp(a, b));
}

static bool has_flaw(const struct record *record, const struct item_flaw *flaw) {
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *f = &record->flaws[i];
        if (f->kind == flaw->kind && same_text(f->part, flaw->part) && same_text(f->where, flaw->where) &&
            f->count == flaw->count)
            return true;
    }
    return false;
}

static bool all_in(const struct record *a, const struct record *b, const struct record *c) {
    for (size_t i = 0; i < a->flaw_count; i++)
        if (!has_flaw(b, &a->flaws[i]) && !(c && has_flaw(c, &a->flaws[i]))) return false;
    return true;
}

static void company(struct arena *arena, void *context) {
    static const char *const statements[][13] = {
        {"Stoneware jug", "There's a chip on the rim.", "It holds water.", "Some crazing inside.",
         "It came from a farm sale.", "The base has a number on it.", "A hairline runs down from the lip.",
         "Stained inside from tea or something.", "The glaze is worn on the handle.",
         "Two small nicks on the foot.", "It's about 9 inches tall.", "I washed it and the marks stayed.",
         "Not checked for leaks."},
        {"Valve radio", "The back is missing.", "Untested.", "One knob is cracked.",
         "Cloth on the front has a tear.", "The case has scratches on top.", "Cord looks frayed.",
         "Smells a bit musty.", "No woodworm.", "Veneer is lifting at one corner.",
         "It belonged to my uncle.", "15 inches wide.", "Dusty inside."},
        {"Wool blanket", "Two moth holes near the edge.", "Binding is frayed at one end.",
         "It has been washed.", "Faded along the fold.", "A small darn in the middle.",
         "Smells of mothballs.", "60 by 80 inches.", "Pilling on one side.", "The label is missing.",
         "One corner is stained.", "It's from a boat.", "Tear about two inches by the hem."},
        {"Cast iron pan", "Rust on the bottom.", "The handle has a crack.", "Some pitting inside.",
         "Carbon build up on the outside.", "Number 8 on the handle.", "I cleaned it with salt.",
         "Scratches from a fork inside.", "10 inches across.", "A dent on the rim.", "Lid is missing.",
         "The wooden grip is loose.", "Warped slightly."}};
    static const char *const joints[] = {"%1. %2 %3", "%1\n%2\n%3"};
    struct share share = {0, 0};
    (void)context;
    for (size_t t = 0; t < COUNT(statements); t++)
        for (size_t a = 1; a < COUNT(statements[t]); a++)
            for (size_t b = 1; b < COUNT(statements[t]); b++) {
                const char *thing = statements[t][0], *first = statements[t][a], *second = statements[t][b];
                if (a == b) continue;
                const struct record *x = support_read(arena, arena_format(arena, "%s. %s", thing, first)),
                                    *y = support_read(arena, arena_format(arena, "%s. %s", thing, second));
                const char *words[] = {thing, first, second};
                const char *note = fill(arena, joints[(a + b) % COUNT(joints)], words);
                const struct record *both = support_read(arena, note);
                hold(&share, all_in(x, both, NULL) && all_in(y, both, NULL) && all_in(both, x, y), note);
            }
    need("read in company as alone", &share, 960);
}

// --- "sold to me as silver" ---

static const struct {
    const char *words, *value, *before;
} claims[] = {
    {"Victorian", "victorian", "Brass lamp. "},      {"1920s", "1920s", "Brass lamp. "},
    {"from the 1930s", "1930s", "Tin box. "},        {"about 1900", "1900", "Iron pot. "},
    {"silver", "silver", "Small spoon. "},           {"mahogany", "mahogany", "Small table. "},
    {"leather", "leather", "Strap with a buckle. "}, {"hand painted", "hand painted", "China bowl. "}};

static bool is_stated(struct arena *arena, const struct record *record, size_t claim) {
    for (size_t i = 0; i < record->attribute_count; i++) {
        const struct value *value = &record->attributes[i];
        if (value->sure == SURE_STATED && strstr(utf8_fold(arena, value->value), claims[claim].value))
            return true;
    }
    return false;
}

// Each claim in each frame; the first letter of a sentence is a capital.
static void claim_all(struct arena *arena, const char *const *frames, size_t count, bool stated,
                      struct share *share) {
    for (size_t f = 0; f < count; f++)
        for (size_t c = 0; c < COUNT(claims); c++) {
            const char *const words[] = {claims[c].words};
            char *said = arena_string(arena, fill(arena, frames[f], words));
            if (*said >= 'a' && *said <= 'z') *said = (char)(*said - 32);
            const char *note = arena_format(arena, "%s%s", claims[c].before, said);
            hold(share, is_stated(arena, support_read(arena, note), c) == stated, note);
        }
}

static void guesses(struct arena *arena, void *context) {
    static const char *const frames[] = {"Supposed to be %1.",
                                         "It is supposed to be %1.",
                                         "Said to be %1.",
                                         "I was told it's %1.",
                                         "He told me it was %1.",
                                         "My neighbor reckons it's %1.",
                                         "She swore it was %1.",
                                         "Apparently %1.",
                                         "I think it's %1.",
                                         "My guess is %1.",
                                         "I'd say %1.",
                                         "Maybe %1.",
                                         "Could be %1.",
                                         "Appears to be %1.",
                                         "Not sure if it's %1.",
                                         "I'm not sure it's %1.",
                                         "Is it %1?",
                                         "%1, I think.",
                                         "%1 I believe.",
                                         "%1, supposedly.",
                                         "No idea if it's %1.",
                                         "Sold to me as %1.",
                                         "I assume %1.",
                                         "If I had to guess, %1.",
                                         "The auction called it %1.",
                                         "Thought to be %1.",
                                         "According to the old owner it's %1.",
                                         "Hopefully %1.",
                                         "I can't prove it's %1.",
                                         "Someone suggested it was %1.",
                                         "It has the feel of %1.",
                                         "%1 would be my guess.",
                                         "It was described as %1.",
                                         "It isn't %1.",
                                         "Not %1."};
    struct share share = {0, 0};
    (void)context;
    claim_all(arena, frames, COUNT(frames), false, &share);
    need("what is guessed is not claimed", &share, 1000);
}

static void seen(struct arena *arena, void *context) {
    static const char *const frames[] = {
        "It's %1.",           "It is %1.",     "%1.",           "This one is %1.", "%1, with a small dent.",
        "%1, in good order.", "%1 and heavy.", "Definitely %1."};
    struct share share = {0, 0};
    (void)context;
    claim_all(arena, frames, COUNT(frames), true, &share);
    need("what is seen is stated", &share, 1000);
}

// --- "Ledger, Ida Somebody on the flyleaf" ---

static bool is_told(struct arena *arena, const struct record *record, const char *name) {
    bool told = false;
    for (size_t i = 0; i < record->attribute_count; i++)
        told |= strstr(utf8_fold(arena, record->attributes[i].value), name) != NULL;
    for (size_t i = 0; i < record->mark_count; i++)
        told |= strstr(utf8_fold(arena, record->marks[i].text), name) != NULL;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const char *const at[] = {record->flaws[i].where, record->flaws[i].part};
        for (size_t k = 0; k < COUNT(at); k++) told |= at[k] && strstr(utf8_fold(arena, at[k]), name);
    }
    return told;
}

static void names(struct arena *arena, void *context) {
    static const char *const frames[] = {
        "Oak tool chest. Belonged to %1.",
        "Tin box with %1 painted on the lid.",
        "Leather case, %1 written inside in ink.",
        "Field glasses, name on the case is %1.",
        "School desk, carved with %1 under the lid.",
        "Ledger, %1 on the flyleaf.",
        "Hamper, luggage label says %1.",
        "Canvas bag stencilled %1, strap gone.",
        "Sextant given to %1 in 1931 when he retired.",
        "Blanket. %1 knitted it.",
        "Map of the county, owner's stamp %1 in one corner.",
        "Kettle, %1, 12 Quarry Lane, wants to see it first.",
        "Engraved to %1 from the lifeboat crew, silver plated tray.",
    };
    static const struct {
        const char *name, *word;
    } people[] = {{"Aldous Penhallow", "penhallow"}, {"Joan Ketterley", "ketterley"},
                  {"Wilf Tarrant", "tarrant"},       {"Tom Wood", "wood"},
                  {"Jack Cooper", "jack"},           {"Mrs Trevane", "trevane"}};
    struct share share = {0, 0};
    (void)context;
    for (size_t f = 0; f < COUNT(frames); f++)
        for (size_t p = 0; p < COUNT(people); p++) {
            const char *const words[] = {people[p].name};
            const char *note = fill(arena, frames[f], words);
            hold(&share, !is_told(arena, support_read(arena, note), people[p].word), note);
        }
    need("whose it was is not told", &share, 1000);
}

static void makers(struct arena *arena, void *context) {
    static const struct {
        const char *note, *word;
    } told[] = {{"Smoothing plane by Ezra Marchbank, sole worn.", "marchbank"},
                {"Iron vice, Threlby & Sons painted on the side.", "threlby"},
                {"Tin, Harkwidge Mustard printed on the lid.", "harkwidge"},
                {"Ledger, Cobbery Works stamped on the cover.", "cobbery"},
                {"Lathe, number plate reads KR 4417.", "4417"}};
    struct share share = {0, 0};
    (void)context;
    for (size_t i = 0; i < COUNT(told); i++)
        hold(&share, is_told(arena, support_read(arena, told[i].note), told[i].word), told[i].note);
    need("who made it is told", &share, 1000);
}

// --- "somebody told me so, but I wouldn't know" ---

static void shrugs(struct arena *arena, void *context) {
    static const char *const frames[] = {"Brass lamp. The man said it came off a trawler, %1.",
                                         "Brass lamp, somebody told me it was Victorian but I %1."};
    static const char *const ends[] = {"can't say", "wouldn't know", "couldn't tell you", "have no idea",
                                       "don't know"};
    struct share share = {0, 0};
    (void)context;
    for (size_t f = 0; f < COUNT(frames); f++)
        for (size_t e = 0; e < COUNT(ends); e++) {
            const char *note = fill(arena, frames[f], &ends[e]);
            hold(&share, !support_read(arena, note)->unread, note);
        }
    // But of a fault it is a doubt, and stays.
    static const char doubt[] = "Jug. Might be a crack, can't say.";
    hold(&share, support_read(arena, doubt)->unread != NULL, doubt);
    need("who knows nothing of a story says nothing", &share, 1000);
}

// --- "loose, so it rocks a little" ---

static void leftovers(struct arena *arena, void *context) {
    static const char *const notes[] = {"Stool. One leg is cracked so it rocks a little.",
                                        "Cart. One wheel is cracked so it wobbles.",
                                        "Ink jug. Firing crack under the base that doesn't go through.",
                                        "Bench. Split at the back, doesn't move.",
                                        "Bench. Stain from a leaky bottle.",
                                        "Bucket. Lid bent, sits but doesn't seal.",
                                        "Dial has rust spots."};
    struct share share = {0, 0};
    (void)context;
    for (size_t i = 0; i < COUNT(notes); i++) hold(&share, !support_read(arena, notes[i])->unread, notes[i]);
    static const char alone[] = "Bench. Green, so it gleams a little.";
    hold(&share, support_read(arena, alone)->unread != NULL, alone);
    need("what a fault does leaves nothing", &share, 1000);
}

START_TEST(what_a_fault_does_leaves_nothing) {
    ck_assert(arena_try(support.arena, leftovers, NULL));
}
END_TEST
START_TEST(what_lacks_is_counted) {
    ck_assert(arena_try(support.arena, lacks, NULL));
}
END_TEST
START_TEST(what_is_guessed_is_not_claimed) {
    ck_assert(arena_try(support.arena, guesses, NULL));
}
END_TEST

START_TEST(what_is_seen_is_stated) {
    ck_assert(arena_try(support.arena, seen, NULL));
}
END_TEST

START_TEST(whose_it_was_is_not_told) {
    ck_assert(arena_try(support.arena, names, NULL));
}
END_TEST

START_TEST(who_made_it_is_told) {
    ck_assert(arena_try(support.arena, makers, NULL));
}
END_TEST

START_TEST(who_knows_nothing_says_nothing) {
    ck_assert(arena_try(support.arena, shrugs, NULL));
}
END_TEST

START_TEST(one_of_several_is_one) {
    ck_assert(arena_try(support.arena, several, NULL));
}
END_TEST
START_TEST(a_fault_keeps_its_size) {
    ck_assert(arena_try(support.arena, sizes, NULL));
}
END_TEST
START_TEST(nothing_is_made_of_nothing) {
    ck_assert(arena_try(support.arena, harmless, NULL));
}
END_TEST
START_TEST(statements_keep_to_themselves) {
    ck_assert(arena_try(support.arena, company, NULL));
}
END_TEST

int main(void) {
    Suite *suite = suite_create("grids");
    TCase *tests = tcase_create("sentences");
    tcase_set_timeout(tests, 240);
    tcase_add_test(tests, what_lacks_is_counted);
    tcase_add_test(tests, what_is_guessed_is_not_claimed);
    tcase_add_test(tests, what_is_seen_is_stated);
    tcase_add_test(tests, whose_it_was_is_not_told);
    tcase_add_test(tests, who_made_it_is_told);
    tcase_add_test(tests, who_knows_nothing_says_nothing);
    tcase_add_test(tests, what_a_fault_does_leaves_nothing);
    tcase_add_test(tests, one_of_several_is_one);
    tcase_add_test(tests, a_fault_keeps_its_size);
    tcase_add_test(tests, nothing_is_made_of_nothing);
    tcase_add_test(tests, statements_keep_to_themselves);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
