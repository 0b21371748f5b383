// SPDX-License-Identifier: MIT
// Counting, against GraphemeBreakTest.txt of Unicode 15.0.0 (package unicode-data): every line, no
// exceptions. The breaks themselves are checked, not only their number: each prefix of a line up to a break
// must count one less.
#include "support.h"
#include "unicode_file.h"

struct line {
    char text[256];
    size_t size, ends[64], clusters; // where each cluster ends
};

// "÷ 0020 × 0308 ÷ 0020 ÷ # comment"; ÷ is C3 B7, × is C3 97.
static bool read_line(const char *at, struct line *line) {
    line->size = line->clusters = 0;
    bool first = true;
    for (; *at && *at != '#';) {
        if (strncmp(at, "\xC3\xB7", 2) == 0) {
            if (!first) line->ends[line->clusters++] = line->size;
            first = false;
            at += 2;
        } else if (strncmp(at, "\xC3\x97", 2) == 0) {
            at += 2;
        } else if (*at == ' ' || *at == '\t' || *at == '\n') {
            at++;
        } else {
            char *next = NULL;
            unsigned long point = strtoul(at, &next, 16);
            if (next == at) return false;
            line->size += utf8_put((uint32_t)point, line->text + line->size);
            at = next;
        }
    }
    return line->size > 0;
}

START_TEST(graphemes_break_as_unicode_says) {
    FILE *file = unicode_open("auxiliary/GraphemeBreakTest.txt");
    ck_assert_ptr_nonnull(file);
    char row[2048] = "";
    ck_assert_ptr_nonnull(fgets(row, sizeof row, file));
    ck_assert_msg(strstr(row, "GraphemeBreakTest-15.0.0"), "another version of the test file: %s", row);
    size_t cases = 0, wrong = 0;
    while (fgets(row, sizeof row, file)) {
        struct line line;
        if (row[0] == '#' || !read_line(row, &line)) continue;
        cases++;
        bool fine = count_text(line.text, line.size, COUNT_GRAPHEMES) == line.clusters;
        for (size_t i = 0; i < line.clusters; i++) {
            fine = fine && count_text(line.text, line.ends[i], COUNT_GRAPHEMES) == i + 1;
        }
        if (!fine) fprintf(stderr, "grapheme mismatch: %s", row);
        wrong += !fine;
    }
    pclose(file);
    ck_assert_uint_eq(cases, 602);
    ck_assert_uint_eq(wrong, 0);
}
END_TEST

static const struct {
    const char *text;
    size_t graphemes, utf16, bytes;
} COUNTS[] = {
    {"", 0, 0, 0},
    {"brass lamp", 10, 10, 10},
    {"caf\xC3\xA9", 4, 4, 5},
    {"cafe\xCC\x81", 4, 5, 6},
    {"\xF0\x9F\x99\x82", 1, 2, 4},
    {"\xF0\x9F\x91\xA8\xE2\x80\x8D\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x91\xA7", 1, 8,
     18},                                                                           // a family of three
    {"\xF0\x9F\x87\xB3\xF0\x9F\x87\xB4\xF0\x9F\x87\xB3\xF0\x9F\x87\xB4", 2, 8, 16}, // two flags
    {"a\r\nb", 3, 4, 4},
    {"\r\r\n\n", 3, 4, 4},
};

START_TEST(units_differ_as_they_should) {
    for (size_t i = 0; i < sizeof COUNTS / sizeof *COUNTS; i++) {
        const char *text = COUNTS[i].text;
        size_t size = strlen(text);
        ck_assert_uint_eq(count_text(text, size, COUNT_GRAPHEMES), COUNTS[i].graphemes);
        ck_assert_uint_eq(count_text(text, size, COUNT_UTF16), COUNTS[i].utf16);
        ck_assert_uint_eq(count_text(text, size, COUNT_BYTES), COUNTS[i].bytes);
    }
    ck_assert_str_eq(count_unit_name(COUNT_GRAPHEMES), "graphemes");
    ck_assert_str_eq(count_unit_name(COUNT_UTF16), "utf16");
    ck_assert_str_eq(count_unit_name(COUNT_BYTES), "bytes");
}
END_TEST

static const struct {
    const char *text;
    size_t width;
} WIDTHS[] = {{"", 0},
              {"lamp", 4},
              {"cafe\xCC\x81", 4},
              {"\xE6\xBC\xA2\xE5\xAD\x97", 4}, // two wide letters
              {"\xF0\x9F\x99\x82", 2},         // a face
              {"\xE2\x9D\xA4\xEF\xB8\x8F", 2}, // a heart made an emoji by its selector
              {"\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x91\xA7", 2}};

START_TEST(width_is_in_columns) {
    for (size_t i = 0; i < sizeof WIDTHS / sizeof *WIDTHS; i++) {
        ck_assert_uint_eq(utf8_width(WIDTHS[i].text, strlen(WIDTHS[i].text)), WIDTHS[i].width);
    }
}
END_TEST

int main(void) {
    Suite *suite = suite_create("count");
    TCase *cases = tcase_create("count");
    tcase_add_test(cases, graphemes_break_as_unicode_says);
    tcase_add_test(cases, units_differ_as_they_should);
    tcase_add_test(cases, width_is_in_columns);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
