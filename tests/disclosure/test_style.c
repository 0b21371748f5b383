// SPDX-License-Identifier: MIT
// How the paragraph reads: short sentences, verbs that agree, its own words beside the seller's, the same
// whenever it is written again. Grammar checked here are common practice, no source; figures are counted over
// generated records.
#include "../rules/records.h"

#include <ctype.h>

enum { RECORDS = 10000, MEAN_WORDS_MOST = 18, SENTENCE_WORDS_MOST = 40 };

struct work {
    struct drafter *drafter;
    size_t number, sentences, words, longest;
};

static struct record *made_record(struct arena *arena, const struct drafter *drafter, size_t number) {
    struct dice dice = {0x8BB84B93962EACC9u * (number + 1) | 1};
    for (int i = 0; i < 8; i++) dice_roll(&dice, 2);
    return read_made(arena, drafter->rules, random_record(arena, &dice, drafter->rules, number));
}

static size_t count_words(const char *text) {
    size_t n = 0;
    for (bool inside = false; *text; text++) {
        bool word = isalnum((unsigned char)*text) || (inside && strchr("'-./", *text));
        n += word && !inside;
        inside = word;
    }
    return n;
}

// Never in a sentence that stands as it should; each with what it would be a sign of.
static const char *const wrong[] = {"It have",
                                    "They has",
                                    "it are",
                                    "they is",
                                    " 1 ",
                                    "One of the two have",
                                    "Both has",
                                    "All six has",
                                    "no no ",
                                    " the the ",
                                    "a an ",
                                    " a a ",
                                    "has have",
                                    "is are",
                                    "were was",
                                    "One chips",
                                    "one chips",
                                    "two chip ",
                                    "three chip ",
                                    "a scratches",
                                    "a rust",
                                    "an rust",
                                    "missings",
                                    "has not tested",
                                    "have is",
                                    "has is",
                                    "shows is",
                                    " , ",
                                    " ;",
                                    "..",
                                    ",.",
                                    "only minor",
                                    "just a",
                                    "typical of",
                                    "will wash",
                                    "minor wear",
                                    "for its age",
                                    "easily",
                                    "should clean",
                                    "guaranteed",
                                    "no damage",
                                    "perfect",
                                    "There is two",
                                    "There is three",
                                    "There are one ",
                                    "there is two",
                                    "There are a ",
                                    "show on",
                                    NULL};

static bool plural_shows(const char *text) { // "scratches show on" is right, "a scratch show on" is not
    const char *at = strstr(text, " show on");
    return at && at > text && (at[-1] == 's' || at[-1] == ')');
}

static void check_grammar(const char *text) {
    for (size_t i = 0; wrong[i]; i++) {
        if (!strcmp(wrong[i], "show on") &&
            (!strstr(text, "show on") || plural_shows(text) || strstr(text, " may show")))
            continue;
        if (!strcmp(wrong[i], " 1 ") && strchr(text, '(')) continue; // a figure with a fraction
        ck_assert_msg(!strstr(text, wrong[i]), "'%s' in: %s", wrong[i], text);
    }
}

static void check_one(struct arena *arena, void *context) {
    struct work *work = context;
    const struct record *record = made_record(arena, work->drafter, work->number);
    enum locale locale = work->number % 2 ? LOCALE_GB : LOCALE_US;
    struct disclosure d =
        disclosure_write(arena, work->drafter->rules, record, locale, work->drafter->variants);
    for (size_t i = 0; i < d.count; i++) {
        size_t n = count_words(d.sentences[i].text);
        work->sentences++;
        work->words += n;
        work->longest = n > work->longest ? n : work->longest;
        check_grammar(d.sentences[i].text);
    }
    struct record again = *record; // its own paragraph as the text of a listing changes nothing
    again.has_listing = true;
    again.listing.description = d.text;
    struct disclosure second =
        disclosure_write(arena, work->drafter->rules, &again, locale, work->drafter->variants);
    ck_assert_str_eq(d.text, second.text);
}

static void check_all(struct arena *arena, void *context) {
    (void)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    struct work work = {.drafter = &drafter};
    struct arena *records = arena_new(NULL);
    for (; work.number < RECORDS; work.number++) {
        ck_assert(arena_try(records, check_one, &work));
        arena_reset(records);
    }
    arena_free(records);
    ck_assert_uint_gt(work.sentences, RECORDS);
    ck_assert_msg(work.words <= MEAN_WORDS_MOST * work.sentences, "%zu words in %zu sentences", work.words,
                  work.sentences);
    ck_assert_uint_le(work.longest, SENTENCE_WORDS_MOST);
}

START_TEST(sentences_are_short_and_agree) {
    within(check_all, NULL);
}
END_TEST

// --- its own words ---

static bool copies_run(struct arena *arena, const char *notes, const char *text) {
    const char *words[400], *said[400];
    size_t n = 0, m = 0;
    char *rest, *copy = arena_string(arena, notes);
    for (char *c = copy; *c; c++) *c = (char)tolower((unsigned char)*c);
    for (char *w = strtok_r(copy, " .,;()", &rest); w && n < 400; w = strtok_r(NULL, " .,;()", &rest))
        words[n++] = w;
    copy = arena_string(arena, text);
    for (char *c = copy; *c; c++) *c = (char)tolower((unsigned char)*c);
    for (char *w = strtok_r(copy, " .,;()", &rest); w && m < 400; w = strtok_r(NULL, " .,;()", &rest))
        said[m++] = w;
    for (size_t i = 0; i + 5 <= n; i++)
        for (size_t k = 0; k + 5 <= m; k++) {
            bool same = true;
            for (size_t j = 0; j < 5; j++) same &= !strcmp(words[i + j], said[k + j]);
            if (same) return true;
        }
    return false;
}

// Notes that say a flaw as the paragraph would say it first; then it has to say it another way.
static void check_own_words(struct arena *arena, void *context) {
    (void)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    static const char *const frames[] = {"it has %s on the left side", "there is %s on the left side",
                                         "%s shows on the left side of it", "on the left side it has %s"};
    size_t tried = 0;
    for (size_t i = 0; i < drafter.rules->flaw_count; i++) {
        const struct flaw *kind = drafter.rules->flaws[i];
        // A name of four words is nearly a run by itself.
        if (kind->form != FAULT || count_words(kind->noun) > 3 || strchr(kind->noun, '-')) continue;
        for (size_t f = 0; f < sizeof frames / sizeof *frames; f++) {
            const char *noun = kind->mass || kind->many
                                   ? kind->noun
                                   : arena_format(arena, "%s %s", say_article(kind->noun), kind->noun);
            const char *head = strstr(frames[f], "%s");
            const char *notes =
                arena_format(arena, "%.*s%s%s", (int)(head - frames[f]), frames[f], noun, head + 2);
            struct item_flaw flaw = {.kind = kind, .where = "left side"};
            struct record record = {.flaws = &flaw, .flaw_count = 1, .notes = notes};
            struct disclosure d =
                disclosure_write(arena, drafter.rules, &record, LOCALE_US, drafter.variants);
            ck_assert_msg(!copies_run(arena, notes, d.text), "notes: %s\nparagraph: %s", notes, d.text);
            tried++;
        }
    }
    ck_assert_uint_gt(tried, 300);
}

START_TEST(the_notes_are_not_said_over) {
    within(check_own_words, NULL);
}
END_TEST

// --- a long list ---

static void check_long(struct arena *arena, void *context) {
    (void)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    enum { FLAWS = 40 };
    struct item_flaw flaws[FLAWS];
    static const char *const parts[] = {"handle", "lid", NULL, NULL, "base"}, *const places[] = {
                                                                                  "rim", "inside", NULL};
    for (size_t i = 0; i < FLAWS; i++)
        flaws[i] = (struct item_flaw){.kind = drafter.rules->flaws[i * 3 % drafter.rules->flaw_count],
                                      .part = parts[i % 5],
                                      .where = places[i % 3],
                                      .count = i % 4 == 0 ? 3 : 0,
                                      .of = i % 8 == 0 ? 12 : 0,
                                      .severity = (enum severity)(i % 4)};
    struct record record = {.flaws = flaws, .flaw_count = FLAWS, .count = 12};
    struct disclosure d = disclosure_write(arena, drafter.rules, &record, LOCALE_US, drafter.variants);
    ck_assert_msg(d.count < FLAWS, "%zu sentences for %d faults", d.count,
                  FLAWS); // grouped, not listed one by one
    size_t words = 0;
    for (size_t i = 0; i < d.count; i++) words += count_words(d.sentences[i].text);
    ck_assert_msg(words <= MEAN_WORDS_MOST * d.count, "%zu words in %zu sentences:\n%s", words, d.count,
                  d.text);
}

START_TEST(forty_faults_on_twelve_pieces_stay_readable) {
    within(check_long, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("style");
    TCase *tests = tcase_create("style");
    tcase_set_timeout(tests, 300);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, sentences_are_short_and_agree);
    tcase_add_test(tests, the_notes_are_not_said_over);
    tcase_add_test(tests, forty_faults_on_twelve_pieces_stay_readable);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
