// SPDX-License-Identifier: MIT
// US and UK spelling: the list that is shipped, and what is refused in a list.
#include "../text/support.h"

#include <stdio.h>
#include <string.h>

#include "say/say.h"
#include "text/diag.h"

static const char small_list[] = "# a comment\n\ncolor colour\r\n  gray\tgrey  \njewelry jewellery";

static struct variants *small_variants(struct arena *arena) {
    struct diags diags = diags_start(arena);
    struct variants *variants = variants_load(arena, "list", small_list, strlen(small_list), &diags);
    ck_assert_uint_eq(diags.count, 0);
    return variants;
}

static void whole_words(struct arena *arena, void *context) {
    (void)context;
    struct variants *variants = small_variants(arena);
    static const char *const pairs[][2] = {
        {"color", "colour"},          {"Gray tin, gray lid.", "Grey tin, grey lid."},
        {"COLOR", "COLOUR"},          {"Jewelry-box color", "Jewellery-box colour"},
        {"gray-green", "grey-green"}, {"the color's depth", "the colour's depth"},
        {"(gray)", "(grey)"},         {"gray", "grey"},
    };
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        ck_assert_str_eq(say_spelling(arena, variants, pairs[i][0], LOCALE_GB), pairs[i][1]);
        ck_assert_str_eq(say_spelling(arena, variants, pairs[i][1], LOCALE_US), pairs[i][0]);
        ck_assert_ptr_eq(say_spelling(arena, variants, pairs[i][0], LOCALE_US), pairs[i][0]);
        ck_assert_ptr_eq(say_spelling(arena, variants, pairs[i][1], LOCALE_GB), pairs[i][1]);
    }
    static const char *const stay[] = {"",       "colors", "colorant", "gray2",        "2gray",
                                       "gray_1", "GrAy",   "gra",      "\xC3\xA9gray", " ,.- "};
    for (size_t i = 0; i < sizeof stay / sizeof *stay; i++)
        ck_assert_ptr_eq(say_spelling(arena, variants, stay[i], LOCALE_GB), stay[i]);
    ck_assert_ptr_eq(say_spelling(arena, NULL, stay[1], LOCALE_GB), stay[1]);
}

START_TEST(whole_words_keep_their_capitals) {
    within(whole_words, NULL);
}
END_TEST

static void broken(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        const char *text;
        size_t faults;
        size_t line;
    } cases[] = {
        {"color\n", 1, 1},
        {"color colour extra\n", 1, 1},
        {"# fine\nColor colour\n", 1, 2},
        {"color c0lour\n", 1, 1},
        {"color color\n", 1, 1},
        {"gray grey\ncolor colour\n", 1, 2},
        {"gray grey\ngray greige\n", 1, 2},
        {"ax axe\naxis axe\n", 1, 0},
        {"gray grey\ngrey gris\n", 1, 0},
        {"averyveryveryverylongwordthatnobodywrites b\n", 1, 1},
        {"b\nc\nd e\n", 2, 1},
        {"", 0, 0},
        {"#\n# color colour\n\n", 0, 0},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct diags diags = diags_start(arena);
        struct variants *variants =
            variants_load(arena, "list", cases[i].text, strlen(cases[i].text), &diags);
        ck_assert_ptr_nonnull(variants);
        ck_assert_msg(diags.count == cases[i].faults, "%zu faults in '%s'", diags.count, cases[i].text);
        if (!diags.count) continue;
        ck_assert_int_eq(diags.items[0].code, CODE_DICT);
        ck_assert_int_eq(diags.status, 3);
        ck_assert_str_eq(diags.items[0].at.source->name, "list");
        ck_assert_ptr_nonnull(diags.items[0].hint);
        if (cases[i].line)
            ck_assert_uint_eq(source_locate(diags.items[0].at.source, diags.items[0].at.from).line,
                              cases[i].line);
    }
}

START_TEST(broken_lists_are_told) {
    within(broken, NULL);
}
END_TEST

static char *read_list(struct arena *arena, size_t *size) {
    const char *folder = getenv("ASFOUND_SOURCE");
    FILE *file = fopen(arena_format(arena, "%s/dict/us-gb.txt", folder ? folder : "."), "rb");
    ck_assert_msg(file != NULL, "dict/us-gb.txt: run in the source folder or set ASFOUND_SOURCE");
    char *text = arena_alloc(arena, 1 << 16);
    *size = fread(text, 1, 1 << 16, file);
    fclose(file);
    ck_assert_uint_lt(*size, 1 << 16);
    return text;
}

static void shipped(struct arena *arena, void *context) {
    (void)context;
    size_t size, pairs = 0;
    char *text = read_list(arena, &size);
    struct diags diags = diags_start(arena);
    struct variants *variants = variants_load(arena, "us-gb.txt", text, size, &diags);
    ck_assert_msg(diags.count == 0, "%s", diags.count ? diags.items[0].message : "");
    for (char *line = strtok(text, "\n"); line; line = strtok(NULL, "\n")) {
        char us[64], gb[64];
        if (*line == '#') continue;
        ck_assert_int_eq(sscanf(line, "%63s %63s", us, gb), 2);
        ck_assert_str_eq(say_spelling(arena, variants, us, LOCALE_GB), gb);
        ck_assert_str_eq(say_spelling(arena, variants, gb, LOCALE_US), us);
        pairs++;
    }
    ck_assert_uint_ge(pairs, 150);
    static const char *const prose[][2] = {
        {"Gray enameled pan, aluminum lid, odor of mold inside.",
         "Grey enamelled pan, aluminium lid, odour of mould inside."},
        {"Jeweler's loupe; discolored near the center.", "Jeweller's loupe; discoloured near the centre."},
        {"PLOW PART, GALVANIZED", "PLOUGH PART, GALVANISED"},
    };
    for (size_t i = 0; i < sizeof prose / sizeof *prose; i++) {
        ck_assert_str_eq(say_spelling(arena, variants, prose[i][0], LOCALE_GB), prose[i][1]);
        ck_assert_str_eq(say_spelling(arena, variants, prose[i][1], LOCALE_US), prose[i][0]);
    }
    // words that mean other things on one of the two sides stay out of the list
    static const char *const apart[] = {"meter",   "check",   "draft", "vise", "disk",
                                        "program", "license", "story", "curb", "axe"};
    for (size_t i = 0; i < sizeof apart / sizeof *apart; i++) {
        ck_assert_ptr_eq(say_spelling(arena, variants, apart[i], LOCALE_GB), apart[i]);
        ck_assert_ptr_eq(say_spelling(arena, variants, apart[i], LOCALE_US), apart[i]);
    }
}

START_TEST(the_shipped_list_goes_both_ways) {
    within(shipped, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("variants");
    TCase *cases = tcase_create("variants");
    tcase_add_test(cases, whole_words_keep_their_capitals);
    tcase_add_test(cases, broken_lists_are_told);
    tcase_add_test(cases, the_shipped_list_goes_both_ways);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
