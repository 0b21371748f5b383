// SPDX-License-Identifier: MIT
// What is reported in a text and what is passed over, where it stands, and what is said when a dictionary is
// not there.
#include "support.h"

#include <sys/stat.h>
#include <unistd.h>

#include "words/affix.h"

static const char *found(struct speller *speller, const struct speller_text *what, struct diags *diags) {
    struct misspellings m = speller_check(speller, what, diags);
    struct buf out = buf_start(diags->arena);
    for (size_t i = 0; i < m.count; i++) {
        ck_assert_uint_lt(m.items[i].from, m.items[i].to);
        ck_assert_uint_le(m.items[i].to, what->size);
        if (i) ck_assert_uint_ge(m.items[i].from, m.items[i - 1].to);
        buf_format(&out, "%s%.*s%s", i ? " " : "", (int)(m.items[i].to - m.items[i].from),
                   what->text + m.items[i].from, m.items[i].name_like ? "?" : "");
    }
    return out.at;
}

// text -> the words reported; '?' after one that looks like a name
static const char *const cases[][2] = {
    {"The handel is craked.", "handel craked"},
    {"Enamelware jug with an escutcheon and two ferrules", ""},
    {"", ""},
    {" \n\t ", ""},
    // apostrophes
    {"The lid's knob, the lids' knobs, isn't there", ""},
    {"The teapot\xE2\x80\x99s lid isn\xE2\x80\x99t there", ""},
    {"The teappot's lid and the teappot\xE2\x80\x99s knob", "teappot teappot"},
    {"'handel' and \xE2\x80\x98handel\xE2\x80\x99", "handel handel"},
    {"And 'tis the spout o' the jug", ""},
    // digits, codes, sizes
    {"24in x 36in, 1950s, 3rd, no. 4711b, B17C, x100, 12.5cm", ""},
    {"12-inch-wide and 12-inch-wyde", "wyde"},
    {"AB-12-xyzq and xyzq-77 and mk2_zzqq", ""},
    {"9\" tall and 12\" wyde, 8\" deep", "wyde"},
    // capitals
    {"Marked QZXW and NSEW and EPNS's on the bsae", "bsae"},
    {"An iZqrk with a McQzk case", ""},
    {"Handlle of brass. Brass lid. Hanndle", "Handlle Hanndle"},
    {"It says Ostrellin below", "Ostrellin?"},
    {"Chipped lid: Ostrellin below\nOstrellin again", "Ostrellin Ostrellin"},
    {"Chipped. Ostrellin below! Ostrellin? Ostrellin", "Ostrellin Ostrellin Ostrellin"},
    // what was read off the item
    {"Marked \"Osgud Wrks\" on the bsae", "bsae"},
    {"Marked \xE2\x80\x9COsgud Wrks\xE2\x80\x9D on the bsae", "bsae"},
    {"(\"osgud\") [\"wrks\"], \"bsae", "bsae"},
    {"a \"quote that starts\nand stops on another lnie\"", "lnie"},
    {"the lid\"handel\"", "handel"},
    // addresses
    {"See www.qqzz.example, https://qqzz.example/xyzzq?a=b or qqzz@xyzzq.example, photo.jpeg", ""},
    {"The lid.The handel.A knbo", "handel knbo"},
    // hyphens, slashes, dashes
    {"re-wired, non-working, semi-gloss, pre-owned, hand-painted", ""},
    {"hand-paintd and craked/chiped, lid\xE2\x80\x94handel", "paintd craked chiped handel"},
    {"--- -lid- - lid-", ""},
    // letters and scripts
    {"caf\xC3\xA9 table, na\xC3\xAFve painting", ""},
    {"a b c x, y & z", ""},
    {"\xD0\xBB\xD0\xB0\xD0\xBC\xD0\xBF\xD0\xB0 \xE6\x97\xA5\xE6\x9C\xAC \xD8\xB4\xD9\x85\xD8\xB9 lamp "
     "\xF0\x9F\x99\x82",
     ""},
    {"lamp\xC2\xA0handel\xE2\x80\x89knbo", "handel knbo"},
};

static void report(struct arena *arena, void *context) {
    (void)context;
    struct speller_options options = {.both = true, .trade = shipped_trade(arena)};
    struct speller *speller = speller_new(NULL, &options);
    struct diags diags = diags_start(arena);
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct speller_text what = {cases[i][0], strlen(cases[i][0]), NULL, 0};
        const char *got = found(speller, &what, &diags);
        ck_assert_msg(!strcmp(got, cases[i][1]), "%s\n  expected: %s\n  reported: %s", cases[i][0],
                      cases[i][1], got);
    }
    ck_assert_uint_eq(diags.count, 0);
    speller_free(speller);
}

START_TEST(misspellings_are_reported_where_they_stand) {
    within(report, NULL);
}
END_TEST

static void exempt(struct arena *arena, void *context) {
    (void)context;
    static const char *const words[] = {"Ostrellin & Dauvey", "model Qvipper", ""};
    struct speller_options options = {0};
    struct speller *speller = speller_new(NULL, &options);
    struct diags diags = diags_start(arena);
    const char *text = "Ostrellin's lamp, dauvey, Qvipperr, qvipper, Dauv";
    struct speller_text what = {text, strlen(text), words, 3};
    ck_assert_str_eq(found(speller, &what, &diags), "Qvipperr? Dauv?");
    what.exempt_count = 0;
    ck_assert_str_eq(found(speller, &what, &diags), "Ostrellin dauvey Qvipperr? qvipper Dauv?");
    speller_free(speller);
}

START_TEST(stated_names_are_exempt) {
    within(exempt, NULL);
}
END_TEST

static void compare_english(struct arena *arena, void *context) {
    (void)context;
    static const char *const expected[2][2] = {{"colour", ""}, {"color", ""}};
    struct diags diags = diags_start(arena);
    for (int english = 0; english < 2; english++)
        for (int both = 0; both < 2; both++) {
            struct speller_options options = {.english = (enum speller_english)english, .both = both};
            struct speller *speller = speller_new(NULL, &options);
            struct speller_text what = {"color or colour", 15, NULL, 0};
            ck_assert_str_eq(found(speller, &what, &diags), expected[english][both]);
            speller_free(speller);
        }
}

START_TEST(the_other_english_counts_when_asked) {
    within(compare_english, NULL);
}
END_TEST

static void write_file(struct arena *arena, const char *folder, const char *name, const char *text) {
    FILE *file = fopen(arena_format(arena, "%s/%s", folder, name), "wb");
    ck_assert_ptr_nonnull(file);
    fputs(text, file);
    fclose(file);
}

struct broken {
    const char *affix, *words; // NULL: no such file
    const char *message;       // what must stand in it
};

static const struct broken broken[] = {
    {NULL, NULL, "en_US.aff cannot be read"},
    {"SET UTF-8\n", NULL, "en_US.dic cannot be read"},
    {"", "1\nthe\n", "en_US.aff cannot be read"},
    {"SET UTF-8\n", "", "en_US.dic cannot be read"},
    {"# no encoding\n", "1\nthe\n", "en_US.aff is written in ISO8859-1, and only UTF-8 is read"},
    {"#\nSET\tKOI8-R \r\n", "1\nthe\n", "en_US.aff is written in KOI8-R, and only UTF-8 is read"},
    {"SET UTF-8\n", "the\n", "en_US.dic does not start with the count of its words"},
    {"SET UTF-8\n", "1\nlamp\n", "en_US.dic does not know the word 'the'"},
};

static void tell_missing(struct arena *arena, void *context) {
    (void)context;
    const char *temporary = getenv("TMPDIR");
    char *folder = arena_format(arena, "%s/speller-XXXXXX", temporary ? temporary : "/tmp");
    ck_assert_ptr_nonnull(mkdtemp(folder));
    for (size_t i = 0; i < sizeof broken / sizeof *broken; i++) {
        if (broken[i].affix) write_file(arena, folder, "en_US.aff", broken[i].affix);
        if (broken[i].words) write_file(arena, folder, "en_US.dic", broken[i].words);
        struct speller_options options = {.folder = folder};
        struct speller *speller = speller_new(NULL, &options);
        struct diags diags = diags_start(arena);
        ck_assert_uint_eq(check_text(speller, "The handel", &diags).count, 0);
        ck_assert_uint_eq(check_text(speller, "The handel", &diags).count, 0);
        ck_assert_uint_eq(speller_suggest(speller, "handel", 6, 5, &diags).count, 0);
        ck_assert(speller_knows(speller, "handel", 6, &diags));
        ck_assert(!speller_open(speller, &diags));
        // Told once, with the way out and the exit class of a broken installation.
        ck_assert_uint_eq(diags.count, 1);
        ck_assert_int_eq(diags.items[0].code, CODE_DICT_MISSING);
        ck_assert_int_eq(diags.status, 3);
        ck_assert_str_eq(diags.items[0].hint, "install the package hunspell-en-us");
        ck_assert_msg(strstr(diags.items[0].message, broken[i].message) != NULL, "%s",
                      diags.items[0].message);
        struct buf printed = buf_start(arena);
        diags_print(&diags, &printed, false);
        ck_assert_msg(strstr(printed.at, "[dict.missing]") != NULL, "%s", printed.at);
        speller_free(speller);
        (void)remove(arena_format(arena, "%s/en_US.aff", folder));
        (void)remove(arena_format(arena, "%s/en_US.dic", folder));
    }
    // A whole dictionary beside: the one that is there still checks, the other is told when it is first
    // needed.
    write_file(arena, folder, "en_US.aff", "SET UTF-8\n");
    write_file(arena, folder, "en_US.dic", "3\nthe\nlamp\nhandle\n");
    struct speller_options options = {.folder = folder, .both = true};
    struct speller *speller = speller_new(NULL, &options);
    struct diags diags = diags_start(arena);
    ck_assert_uint_eq(check_text(speller, "the lamp", &diags).count, 0);
    ck_assert_uint_eq(diags.count, 0);
    ck_assert_uint_eq(check_text(speller, "the handel", &diags).count, 1);
    ck_assert_uint_eq(diags.count, 1);
    ck_assert_str_eq(diags.items[0].hint, "install the package hunspell-en-gb");
    ck_assert_str_eq(speller_suggest(speller, "handel", 6, 5, &diags).words[0], "handle");
    speller_free(speller);
    (void)remove(arena_format(arena, "%s/en_US.aff", folder));
    (void)remove(arena_format(arena, "%s/en_US.dic", folder));
    ck_assert_int_eq(rmdir(folder), 0);
}

START_TEST(a_dictionary_that_is_not_there_is_told_once) {
    within(tell_missing, NULL);
}
END_TEST

static void stay_silent(struct arena *arena, void *context) {
    (void)context;
    struct speller_options options = {.folder = "no-such-folder", .both = true};
    struct speller *speller = speller_new(NULL, &options);
    ck_assert_ptr_nonnull(speller);
    speller_free(speller);
    speller_free(NULL);
    (void)arena;
}

START_TEST(an_unused_speller_opens_nothing) {
    within(stay_silent, NULL);
}
END_TEST

// Any valid text is walked to its end, with its places in order.
static void walk_anything(struct arena *arena, void *context) {
    (void)context;
    static const char *const pieces[] = {"handel",
                                         "lid",
                                         " ",
                                         "\n",
                                         "\"",
                                         "'",
                                         "\xE2\x80\x99",
                                         "\xE2\x80\x9C",
                                         "\xE2\x80\x9D",
                                         "-",
                                         ".",
                                         "12",
                                         "@",
                                         ":/",
                                         "_",
                                         "Q",
                                         "\xC3\xA9",
                                         "\xCC\x81",
                                         "\xF0\x9F\x99\x82",
                                         "/",
                                         "www.",
                                         "s",
                                         "\xD8\xB4",
                                         "(",
                                         "\t",
                                         "#",
                                         "\xC2\xA0",
                                         "e",
                                         "/a"};
    struct speller_options options = {.both = true};
    struct speller *speller = speller_new(NULL, &options);
    struct dice dice = {99};
    for (int round = 0; round < 6000; round++) {
        struct diags diags = diags_start(arena);
        struct buf text = buf_start(arena);
        for (uint32_t n = dice_roll(&dice, 24); n > 0; n--)
            buf_text(&text, pieces[dice_roll(&dice, sizeof pieces / sizeof *pieces)]);
        // Handed over without the NUL behind it, so that reading one byte too far is caught.
        char *exact = arena_alloc(arena, text.n);
        memcpy(exact, text.at, text.n);
        struct speller_text what = {exact, text.n, NULL, 0};
        (void)found(speller, &what, &diags);
    }
    speller_free(speller);
}

START_TEST(any_text_is_walked_to_its_end) {
    within(walk_anything, NULL);
}
END_TEST

static void take(void *context, const struct affix_form *form) {
    struct buf *out = context;
    buf_format(out, "%.*s%s%s ", (int)form->size, form->word, form->stem ? "*" : "",
               form->prefixed ? "+" : "");
}

static void expand(struct arena *arena, void *context) {
    (void)context;
    static const char affix[] =
        "\xEF\xBB\xBFSET UTF-8\nNOSUGGEST !\nPFX U Y 1\nPFX U 0 un .\n\nSFX D Y 3\nSFX D 0 d e\n"
        "SFX D y ied [^aeiou]y\nSFX D 0 ed [^ey]\nSFX M N 1\nSFX M 0 's .\nSFX L N 1\nSFX L 0 ly [aeiou]d\n";
    static const char words[] =
        "9\nseal/UDM\nglaze/D\ncarry/D\r\nrude/D!\nA4/D\nload/L\nacid/L\tpo:noun\nmild/L\nx/D\n";
    struct affixes *affixes = affixes_read(arena, affix, sizeof affix - 1);
    struct buf out = buf_start(arena);
    affixes_expand(affixes, words, sizeof words - 1, take, &out);
    ck_assert_str_eq(
        out.at,
        "seal* unseal+ sealed unsealed+ glaze* glazed carry* carried load* loadly acid* acidly mild* ");
    // Flags of more than one byte are not read, and nothing is made up.
    static const char wide[] = "FLAG long\nSFX Dd Y 1\nSFX Dd 0 d .\n";
    buf_clear(&out);
    affixes_expand(affixes_read(arena, wide, sizeof wide - 1), words, sizeof words - 1, take, &out);
    ck_assert_str_eq(out.at, "");
    // Cut anywhere, the files are still read without a slip.
    for (size_t i = 0; i < sizeof affix; i++) {
        char *part = arena_copy(arena, affix, i);
        affixes_expand(affixes_read(arena, part, i), words, i < sizeof words ? i : sizeof words - 1, take,
                       &out);
    }
}

START_TEST(forms_follow_the_rules_of_the_affix_file) {
    within(expand, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("words/check");
    TCase *all = tcase_create("all");
    tcase_add_test(all, misspellings_are_reported_where_they_stand);
    tcase_add_test(all, stated_names_are_exempt);
    tcase_add_test(all, the_other_english_counts_when_asked);
    tcase_add_test(all, a_dictionary_that_is_not_there_is_told_once);
    tcase_add_test(all, an_unused_speller_opens_nothing);
    tcase_add_test(all, any_text_is_walked_to_its_end);
    tcase_add_test(all, forms_follow_the_rules_of_the_affix_file);
    suite_add_tcase(suite, all);
    return run_suite(suite);
}
