// SPDX-License-Identifier: MIT
// The list of trade words: the shipped one is in order and tells hunspell something new; a broken one is
// told.
#include "support.h"

#include "words/dictionary.h"

static struct dictionary open_dictionary(struct arena *arena, const char *name, struct diags *diags) {
    struct dictionary d = {.affix = arena_format(arena, HUNSPELL_FOLDER "/%s.aff", name),
                           .words = arena_format(arena, HUNSPELL_FOLDER "/%s.dic", name),
                           .package = name,
                           .language = name};
    ck_assert_msg(dictionary_open(&d, diags), "%s: is hunspell-en-us and hunspell-en-gb installed?", name);
    return d;
}

static void lint(struct arena *arena, void *context) {
    (void)context;
    const struct trade *trade = shipped_trade(arena);
    struct diags diags = diags_start(arena);
    struct dictionary us = open_dictionary(arena, "en_US", &diags),
                      gb = open_dictionary(arena, "en_GB", &diags);
    size_t known = 0, new_to_both = 0;
    for (size_t i = 0; i < trade->count; i++) {
        const char *word = trade->words[i].word;
        bool in_us = dictionary_knows(&us, word), in_gb = dictionary_knows(&gb, word);
        if (in_us && in_gb) fprintf(stderr, "both dictionaries know '%s'\n", word), known++;
        if (!in_us && !in_gb) new_to_both++;
        // Nor may a plural stand there that follows from a word of the list.
        struct trade_word without = trade->words[i];
        struct trade rest = {trade->words, i};
        if (trade_knows(&rest, without.word, without.size))
            fprintf(stderr, "'%s' follows from another word\n", word), known++;
    }
    dictionary_close(&us);
    dictionary_close(&gb);
    printf("trade words: %zu, of them unknown to both dictionaries: %zu\n", trade->count, new_to_both);
    ck_assert_uint_eq(known, 0);
    ck_assert_uint_ge(trade->count, 600);
    ck_assert_uint_ge(new_to_both, 600);
}

START_TEST(shipped_words_are_new_to_a_dictionary) {
    within(lint, NULL);
}
END_TEST

static const struct trade *read_list(struct arena *arena, const char *text, struct diags *diags) {
    struct source *source = arena_alloc(arena, sizeof *source);
    *source = (struct source){.name = "list", .text = text, .size = strlen(text), .first_line = 1};
    return trade_read(arena, source, diags);
}

static void tell_faults(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        const char *text, *message;
        size_t kept;
    } cases[] = {
        {"ferrule\nescutcheon\n", "list:2:1: error: 'escutcheon' is out of order", 1},
        {"ferrule\nferrule\n", "list:2:1: error: 'ferrule' is out of order", 1},
        {"Ferrule\n", "list:1:1: error: 'Ferrule' is not one word in small letters", 0},
        {"two words\n", "list:1:1: error: 'two words' is not one word in small letters", 0},
        {"  caf\xC3\xA9\n", "list:1:3: error: 'caf\xC3\xA9' is not one word in small letters", 0},
        {"-ware\n", "list:1:1: error: '-ware' is not one word in small letters", 0},
        {"x\n", "list:1:1: error: 'x' is not one word in small letters", 0},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct diags diags = diags_start(arena);
        const struct trade *trade = read_list(arena, cases[i].text, &diags);
        struct buf out = buf_start(arena);
        diags_print(&diags, &out, false);
        ck_assert_uint_eq(diags.count, 1);
        ck_assert_int_eq(diags.status, 3);
        ck_assert_uint_eq(trade->count, cases[i].kept);
        ck_assert_msg(!strncmp(out.at, cases[i].message, strlen(cases[i].message)), "%s", out.at);
    }
}

START_TEST(faults_of_a_list_are_told) {
    within(tell_faults, NULL);
}
END_TEST

static void know_plurals(struct arena *arena, void *context) {
    (void)context;
    struct diags diags = diags_start(arena);
    const struct trade *trade =
        read_list(arena, "# goods\n\nkeypress\r\nlid-rest\npewbox\nteacaddy\ntolepot", &diags);
    ck_assert_uint_eq(diags.count, 0);
    ck_assert_uint_eq(trade->count, 5);
    static const char *const known[] = {"tolepot",    "tolepots",   "pewbox",   "pewboxes",
                                        "keypresses", "teacaddies", "lid-rest", "lid-rests"};
    static const char *const unknown[] = {"tolepo",   "tolepotes",  "pewboxs", "keypresss", "teacaddys",
                                          "teacaddi", "teacaddess", "s",       "",          "ies"};
    for (size_t i = 0; i < sizeof known / sizeof *known; i++)
        ck_assert_msg(trade_knows(trade, known[i], strlen(known[i])), "%s", known[i]);
    for (size_t i = 0; i < sizeof unknown / sizeof *unknown; i++)
        ck_assert_msg(!trade_knows(trade, unknown[i], strlen(unknown[i])), "%s", unknown[i]);
    char longest[200];
    memset(longest, 's', sizeof longest);
    ck_assert(!trade_knows(trade, longest, sizeof longest));
    ck_assert(!trade_knows(read_list(arena, "", &diags), "lamp", 4));
}

START_TEST(a_word_brings_its_plural) {
    within(know_plurals, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("words/trade");
    TCase *all = tcase_create("all");
    tcase_add_test(all, shipped_words_are_new_to_a_dictionary);
    tcase_add_test(all, faults_of_a_list_are_told);
    tcase_add_test(all, a_word_brings_its_plural);
    suite_add_tcase(suite, all);
    return run_suite(suite);
}
