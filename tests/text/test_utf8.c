// SPDX-License-Identifier: MIT
// UTF-8. Outside checks: NormalizationTest.txt of Unicode 15.0.0 (package unicode-data), and iconv of the C
// library for what is and is not UTF-8.
#include "support.h"
#include "unicode_file.h"

#include <iconv.h>

static void normalize_all(struct arena *arena, void *context) {
    FILE *file = context;
    char row[4096], field[5][1024];
    size_t cases = 0, wrong = 0, size = 0;
    while (fgets(row, sizeof row, file)) {
        if (row[0] == '#' || row[0] == '@') {
            if (cases == 0 && strstr(row, "NormalizationTest-")) ck_assert_ptr_nonnull(strstr(row, "15.0.0"));
            continue;
        }
        const char *at = row;
        for (size_t i = 0; i < 5; i++) at = unicode_field(at, ';', field[i], &size);
        cases++;
        // NFC: c2 = toNFC(c1) = toNFC(c2) = toNFC(c3); c4 = toNFC(c4) = toNFC(c5)
        bool fine = true;
        for (size_t i = 0; i < 5; i++)
            fine = fine && !strcmp(utf8_nfc(arena, field[i]), field[i < 3 ? 1 : 3]);
        fine = fine && utf8_nfc(arena, field[1]) == field[1]; // already in NFC: the same pointer
        if (!fine) fprintf(stderr, "NFC mismatch: %s", row);
        wrong += !fine;
    }
    fprintf(stderr, "NormalizationTest: %zu lines\n", cases);
    unicode_require(cases, "NormalizationTest.txt");
    ck_assert_uint_eq(wrong, 0);
}

START_TEST(normal_form_is_as_unicode_says) {
    FILE *file = unicode_open("NormalizationTest.txt");
    ck_assert_ptr_nonnull(file);
    within(normalize_all, file);
    pclose(file);
}
END_TEST

// A long text is normalized in segments; the seams must not show.
static void normalize_long(struct arena *arena, void *context) {
    (void)context;
    for (size_t filler = 4080; filler < 4110; filler++) {
        size_t marks = 700, n = 0;
        char *text = arena_alloc(arena, filler + marks * 2 + 16);
        memset(text, 'x', filler);
        n = filler;
        text[n++] = 'e';
        memcpy(text + n, "\xCC\x81", 2); // acute: composes with the e
        n += 2;
        for (size_t i = 1; i < marks; i++, n += 2)
            memcpy(text + n, "\xCC\xA3", 2); // dot below: sorts before the acute
        const char *made = utf8_nfc(arena, text);
        ck_assert_uint_eq(strspn(made, "x"), filler);
        ck_assert_int_eq(strncmp(made + filler, "\xE1\xBA\xB9", 3), 0); // e with dot below
        ck_assert_uint_eq(strlen(made), filler + 3 + (marks - 2) * 2 + 2);
        ck_assert_str_eq(made + strlen(made) - 2, "\xCC\x81");
    }
}

START_TEST(long_texts_have_no_seams) {
    within(normalize_long, NULL);
}
END_TEST

START_TEST(every_code_point_survives_writing_and_reading) {
    for (uint32_t point = 0; point < 0x110000; point++) {
        char bytes[4];
        size_t size = utf8_put(point, bytes), at = 0;
        bool surrogate = point >= 0xD800 && point < 0xE000;
        if (utf8_check(bytes, size) != (surrogate ? 0 : size))
            ck_abort_msg("check is wrong at U+%04X", (unsigned)point);
        if (surrogate) continue;
        if (utf8_next(bytes, size, &at) != point || at != size)
            ck_abort_msg("U+%04X comes back changed", (unsigned)point);
        if (utf8_check(bytes, size - 1) != 0 && size > 1)
            ck_abort_msg("half of U+%04X passes", (unsigned)point);
    }
}
END_TEST

START_TEST(validity_agrees_with_the_c_library) {
    struct dice dice = {20240811};
    iconv_t reader = iconv_open("UTF-32LE", "UTF-8");
    ck_assert(reader != (iconv_t)-1);
    static const unsigned char LIKELY[] = {0x00, 0x41, 0x7F, 0x80, 0x8F, 0x90, 0x9F, 0xA0, 0xBF,
                                           0xC0, 0xC1, 0xC2, 0xDF, 0xE0, 0xE1, 0xEC, 0xED, 0xEE,
                                           0xEF, 0xF0, 0xF1, 0xF3, 0xF4, 0xF5, 0xFF};
    size_t good = 0;
    for (int round = 0; round < 200000; round++) {
        char bytes[6];
        size_t size = 1 + dice_roll(&dice, 6);
        for (size_t i = 0; i < size; i++) bytes[i] = (char)LIKELY[dice_roll(&dice, sizeof LIKELY)];
        char wide[64], *from = bytes, *to = wide;
        size_t left = size, room = sizeof wide;
        iconv(reader, NULL, NULL, NULL, NULL);
        size_t result = iconv(reader, &from, &left, &to, &room);
        size_t valid = result == (size_t)-1 ? (size_t)(from - bytes) : size;
        if (utf8_check(bytes, size) != valid) ck_abort_msg("round %d", round);
        good += valid == size;
    }
    iconv_close(reader);
    ck_assert_uint_gt(good, 1000);
}
END_TEST

static const struct {
    const char *text;
    size_t lines, word; // offset with and without line ends allowed
} UNWANTED[] = {
    {"brass lamp", 10, 10},
    {"tab\tand\nline", 12, 3},
    {"win\r\ndows", 9, 3},
    {"lone\rreturn", 4, 4},
    {"bell\a", 4, 4},
    {"\x7F", 0, 0},
    {"nel\xC2\x85", 3, 3},
    {"soft\xC2\xADhyphen", 4, 4},
    {"no-break\xC2\xA0space", 15, 15},
    {"rlo \xE2\x80\xAE", 4, 4},
    {"isolate \xE2\x81\xA6", 8, 8},
    {"mark\xE2\x80\x8E", 4, 4},
    {"zero\xE2\x80\x8Bwidth", 4, 4},
    {"bom\xEF\xBB\xBF", 3, 3},
    {"line\xE2\x80\xA8sep", 4, 4},
    {"joiner \xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x91\xA7", 18, 18},
    {"heart \xE2\x9D\xA4\xEF\xB8\x8F", 12, 12},
    {"flag \xF0\x9F\x8F\xB4\xF3\xA0\x81\xA7\xF3\xA0\x81\xBF", 17, 17},
    {"tag \xF3\xA0\x81\xA7", 4, 4},
    {"nonchar \xEF\xBF\xBF", 8, 8},
    {"nonchar \xF0\x9F\xBF\xBE", 8, 8},
};

START_TEST(invisible_characters_are_found) {
    for (size_t i = 0; i < sizeof UNWANTED / sizeof *UNWANTED; i++) {
        size_t size = strlen(UNWANTED[i].text);
        ck_assert_msg(utf8_unwanted(UNWANTED[i].text, size, true) == UNWANTED[i].lines, "row %zu, lines", i);
        ck_assert_msg(utf8_unwanted(UNWANTED[i].text, size, false) == UNWANTED[i].word, "row %zu, word", i);
    }
}
END_TEST

static void fold_some(struct arena *arena, void *context) {
    (void)context;
    ck_assert_str_eq(utf8_fold(arena, "Brass LAMP 12\""), "brass lamp 12\"");
    ck_assert_str_eq(utf8_fold(arena, "CAF\xC3\x89"), "caf\xC3\xA9");
    ck_assert_str_eq(utf8_fold(arena, "CAFE\xCC\x81"), "caf\xC3\xA9"); // decomposed meets composed
    ck_assert_str_eq(utf8_fold(arena, "STRA\xC3\x9F"
                                      "E"),
                     "strasse");
    ck_assert_str_eq(utf8_fold(arena, "STRA\xE1\xBA\x9E"
                                      "E"),
                     "strasse");
    ck_assert_str_eq(utf8_fold(arena, "\xCE\xA3\xCE\x91\xCE\xA3"),
                     "\xCF\x83\xCE\xB1\xCF\x83"); // final sigma too
    ck_assert_str_eq(utf8_fold(arena, ""), "");
}

START_TEST(folding_is_full) {
    within(fold_some, NULL);
}
END_TEST

START_TEST(classes_and_case) {
    ck_assert(utf8_is_letter('a') && utf8_is_letter(0xC9) && utf8_is_letter(0x6F22));
    ck_assert(!utf8_is_letter('1') && !utf8_is_letter('-') && !utf8_is_letter(0x301));
    ck_assert(utf8_is_digit('7') && utf8_is_digit(0x664) && !utf8_is_digit(0xBD) && !utf8_is_digit('x'));
    ck_assert(utf8_is_space(' ') && utf8_is_space('\t') && utf8_is_space(0xA0) && utf8_is_space(0x3000));
    ck_assert(utf8_is_space(0x2028) && !utf8_is_space('_') && !utf8_is_space(0x200B));
    ck_assert_uint_eq(utf8_upper(0xE9), 0xC9);
    ck_assert_uint_eq(utf8_lower(0xC9), 0xE9);
    ck_assert_uint_eq(utf8_upper('7'), '7');
    ck_assert_uint_eq(utf8_lower('I'), 'i'); // whatever the locale says
}
END_TEST

int main(void) {
    Suite *suite = suite_create("utf8");
    TCase *cases = tcase_create("utf8");
    tcase_set_timeout(cases, 60);
    tcase_add_test(cases, normal_form_is_as_unicode_says);
    tcase_add_test(cases, long_texts_have_no_seams);
    tcase_add_test(cases, every_code_point_survives_writing_and_reading);
    tcase_add_test(cases, validity_agrees_with_the_c_library);
    tcase_add_test(cases, invisible_characters_are_found);
    tcase_add_test(cases, folding_is_full);
    tcase_add_test(cases, classes_and_case);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
