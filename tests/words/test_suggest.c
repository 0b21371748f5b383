// SPDX-License-Identifier: MIT
// Suggestions: the search against a plain table of distances, the ranking against a public list of
// misspellings, the words laid out against hunspell, and what the answer looks like.
#include "support.h"

#include <time.h>

#include "words/parts.h"
#include "words/suggest.h"

static struct speller *new_speller(enum speller_english english, const struct trade *trade) {
    struct speller_options options = {.english = english, .both = true, .trade = trade};
    struct speller *speller = speller_new(NULL, &options);
    ck_assert_ptr_nonnull(speller);
    return speller;
}

static const char *joined(struct speller *speller, const char *word, size_t most, struct diags *diags) {
    struct suggestions s = speller_suggest(speller, word, strlen(word), most, diags);
    struct buf out = buf_start(diags->arena);
    for (size_t i = 0; i < s.count; i++) buf_format(&out, "%s%s", i ? ", " : "", s.words[i]);
    return out.at;
}

// Optimal string alignment distance by its definition, without regard to case.
static unsigned plain_distance(const char *a, size_t n, const char *b, size_t m) {
    unsigned d[64][64];
    for (size_t i = 0; i <= n; i++) d[i][0] = (unsigned)i;
    for (size_t j = 0; j <= m; j++) d[0][j] = (unsigned)j;
    for (size_t i = 1; i <= n; i++)
        for (size_t j = 1; j <= m; j++) {
            unsigned best = d[i - 1][j - 1] + (a[i - 1] != b[j - 1]);
            if (d[i - 1][j] + 1 < best) best = d[i - 1][j] + 1;
            if (d[i][j - 1] + 1 < best) best = d[i][j - 1] + 1;
            bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped && d[i - 2][j - 2] + 1 < best) best = d[i - 2][j - 2] + 1;
            d[i][j] = best;
        }
    return d[n][m];
}

// With as many answers as there are words near, none within two edits may be missing and none farther may be
// there.
static void find_all(struct arena *arena, void *context) {
    (void)context;
    struct lexicon_build *build = lexicon_start(arena);
    struct dice dice = {20240607};
    for (int i = 0; i < 6000; i++) {
        char word[16];
        size_t size = 2 + dice_roll(&dice, 7);
        for (size_t k = 0; k < size; k++) word[k] = (char)('a' + dice_roll(&dice, 4));
        lexicon_add_word(build, word, size, LEXICON_MAIN);
    }
    const struct lexicon *l = lexicon_finish(build);
    size_t total = 0, most_near = 0;
    for (int round = 0; round < 4000; round++) {
        char typed[24];
        size_t size = 4 + dice_roll(&dice, 9), near = 0;
        // Longer words with letters that few words have come near few of them.
        for (size_t k = 0; k < size; k++) typed[k] = (char)('a' + dice_roll(&dice, 6));
        struct ranked out[SUGGEST_MOST];
        size_t count = suggest_rank(l, &EDIT_WEIGHTS, &RANK_WEIGHTS, typed, size, out, SUGGEST_MOST);
        unsigned reach = 2;
        for (size_t i = 0; i < l->count; i++)
            near += plain_distance(typed, size, l->letters + l->words[i].at, l->words[i].size) <= reach;
        for (size_t i = 0; i < l->count && !near && size >= 7; i++)
            if (plain_distance(typed, size, l->letters + l->words[i].at, l->words[i].size) <= 3) reach = 3;
        if (reach == 3)
            for (size_t i = 0; i < l->count; i++)
                near += plain_distance(typed, size, l->letters + l->words[i].at, l->words[i].size) <= reach;
        ck_assert_uint_eq(count, near < SUGGEST_MOST ? near : SUGGEST_MOST);
        for (size_t i = 0; i < count; i++) {
            const struct lexicon_word *word = &l->words[out[i].id];
            ck_assert_uint_le(plain_distance(typed, size, l->letters + word->at, word->size), reach);
            if (i) ck_assert_int_le(out[i - 1].cost, out[i].cost);
        }
        total += near;
        if (near > most_near) most_near = near;
    }
    ck_assert_uint_gt(total, 10000);
    ck_assert_uint_gt(most_near, SUGGEST_MOST);
}

START_TEST(all_words_within_two_edits_are_found) {
    within(find_all, NULL);
}
END_TEST

static void know_all(struct arena *arena, void *context) {
    (void)context;
    struct diags diags = diags_start(arena);
    struct speller *speller = new_speller(SPELLER_US, NULL);
    (void)joined(speller, "lampp", 1, &diags);
    const struct lexicon *l = speller->lexicon;
    ck_assert_uint_gt(l->count, 200000);
    size_t strange = 0, step = 3;
    for (size_t i = 0; i < l->count; i += step) {
        char word[LEXICON_LONGEST + 1] = "";
        memcpy(word, l->letters + l->words[i].at, l->words[i].size);
        if (speller_knows(speller, word, l->words[i].size, &diags)) continue;
        if (strange++ < 5) fprintf(stderr, "hunspell does not know '%s'\n", word);
    }
    ck_assert_uint_eq(strange, 0);
    static const char *const there[] = {"teapots", "chipped",  "unhappily", "re-engage", "colour",
                                        "color",   "cabinets", "isn't",     "tarnished", "Monday"};
    for (size_t i = 0; i < sizeof there / sizeof *there; i++)
        ck_assert_msg(lexicon_find(l, there[i], strlen(there[i])) != NULL, "%s", there[i]);
    speller_free(speller);
}

START_TEST(hunspell_knows_every_word_laid_out) {
    within(know_all, NULL);
}
END_TEST

struct pair {
    const char *wrong, *right;
};

static bool is_letters(const char *word) {
    for (; *word; word++)
        if ((*word < 'a' || *word > 'z') && *word != '\'') return false;
    return true;
}

// Entries of one correction that hunspell knows, of a word that it does not, with nothing in common with
// dict/.
static size_t usable_pairs(struct arena *arena, struct speller *speller, const struct trade *trade,
                           struct pair *pairs, size_t room, struct diags *diags) {
    const struct source *list = read_source(arena, CODESPELL_LIST, "codespell");
    const struct source *variants = read_source(arena, project_path(arena, "dict/us-gb.txt"), "none");
    const char *line;
    size_t count = 0;
    for (size_t at = 0; next_line(arena, list, &at, &line);) {
        char *arrow = strstr(line, "->");
        if (!arrow || strchr(arrow, ',') || count == room) continue;
        *arrow = '\0';
        struct pair pair = {line, arrow + 2};
        if (!is_letters(pair.wrong) || strchr(pair.right, ' ')) continue;
        if (trade_knows(trade, pair.wrong, strlen(pair.wrong)) ||
            trade_knows(trade, pair.right, strlen(pair.right)))
            continue;
        if (strstr(variants->text, arena_format(arena, "\n%s %s\n", pair.wrong, pair.right))) continue;
        if (!speller_knows(speller, pair.right, strlen(pair.right), diags)) continue;
        if (!speller_knows(speller, pair.wrong, strlen(pair.wrong), diags)) pairs[count++] = pair;
    }
    return count;
}

enum { PAIRS = 40000, SAMPLE = 4000 };

// The ranking was fitted on the words whose first five letters hash to an even number; these are the others.
static bool is_held_out(const char *right) {
    uint32_t hash = 2166136261u;
    for (int i = 0; i < 5 && right[i]; i++) hash = (hash ^ (unsigned char)right[i]) * 16777619u;
    return ((hash ^ (hash >> 15)) & 1) != 0;
}

static int compare_times(const void *a, const void *b) {
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static double milliseconds(void) {
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

static void measure(struct arena *arena, void *context) {
    (void)context;
    struct diags diags = diags_start(arena);
    const struct trade *trade = shipped_trade(arena);
    struct speller *speller = new_speller(SPELLER_US, trade);
    struct pair *pairs = arena_array(arena, PAIRS, sizeof *pairs);
    size_t count = usable_pairs(arena, speller, trade, pairs, PAIRS, &diags);
    ck_assert_uint_gt(count, 25000);
    (void)joined(speller, "lampp", 1, &diags);
    struct dice dice = {4};
    double *times = arena_array(arena, SAMPLE, sizeof *times);
    size_t first = 0, five = 0, held = 0, held_first = 0, held_five = 0;
    for (size_t i = 0; i < SAMPLE; i++) {
        // A card from those not drawn yet.
        size_t drawn = i + dice_roll(&dice, (uint32_t)(count - i));
        struct pair pair = pairs[drawn];
        pairs[drawn] = pairs[i];
        pairs[i] = pair;
        double start = milliseconds();
        struct suggestions s = speller_suggest(speller, pair.wrong, strlen(pair.wrong), 5, &diags);
        times[i] = milliseconds() - start;
        bool top = s.count && !strcmp(s.words[0], pair.right), among = false;
        for (size_t k = 0; k < s.count; k++) among = among || !strcmp(s.words[k], pair.right);
        first += top;
        five += among;
        if (!is_held_out(pair.right)) continue;
        held++;
        held_first += top;
        held_five += among;
    }
    qsort(times, SAMPLE, sizeof *times, compare_times);
    printf("suggestions on %d of %zu pairs: first %.1f %%, among five %.1f %%; held out (%zu): %.1f %%, %.1f "
           "%%; median "
           "%.2f ms\n",
           SAMPLE, count, 100.0 * (double)first / SAMPLE, 100.0 * (double)five / SAMPLE, held,
           100.0 * (double)held_first / (double)held, 100.0 * (double)held_five / (double)held,
           times[SAMPLE / 2]);
    ck_assert_uint_ge(held, 1500);
    ck_assert_uint_ge(first * 100, SAMPLE * 82);
    ck_assert_uint_ge(five * 100, SAMPLE * 89);
    ck_assert_uint_ge(held_first * 100, held * 82);
    ck_assert_uint_ge(held_five * 100, held * 89);
    speller_free(speller);
}

START_TEST(public_misspellings_are_put_right) {
    within(measure, NULL);
}
END_TEST

static void answer(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        const char *typed, *first;
    } cases[] = {
        {"handel", "handle"},
        {"Handel's", ""},
        {"craked", "cracked"},
        {"Teh", "The"},
        {"isnt", "isn't"},
        {"teapotlid", "teapot lid"},
        {"wich", "which"},
        {"recieve", "receive"},
        {"tea-pott", "teapot"},
        {"enamelwear", "enamelware"},
        {"eschutcheon", "escutcheon"},
        {"ferrul", "ferrule"},
        {"drawnife", "drawknife"},
        {"fotograph", "photograph"},
        {"laquered", "lacquered"},
        {"gage\xE2\x80\x99z", ""},
        {"barometr's", "barometer's"},
        {"rythm", "rhythm"},
        {"nife", "knife"},
        {"varnishd", "varnished"},
    };
    const struct trade *trade = shipped_trade(arena);
    static const char *const usual[] = {"cracked", "chipped", "handle", "lid", "zzz"};
    struct speller_options options = {.both = true, .trade = trade, .usual = usual, .usual_count = 5};
    struct speller *speller = speller_new(NULL, &options);
    struct diags diags = diags_start(arena);
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const char *all = joined(speller, cases[i].typed, 5, &diags);
        size_t size = strlen(cases[i].first);
        if (!size) continue; // asked only to see that nothing breaks
        ck_assert_msg(!strncmp(all, cases[i].first, size) && (!all[size] || all[size] == ','), "%s: %s",
                      cases[i].typed, all);
        ck_assert_str_eq(all, joined(speller, cases[i].typed, 5, &diags));
    }
    static const char *const none[] = {"", "x", "AB-12", "q7", "'", "xqzzkvjwqpzz"};
    for (size_t i = 0; i < sizeof none / sizeof *none; i++)
        ck_assert_str_eq(joined(speller, none[i], 5, &diags), "");
    char longest[300];
    memset(longest, 'a', sizeof longest);
    for (size_t size = 30; size < sizeof longest; size += 7)
        ck_assert_uint_eq(speller_suggest(speller, longest, size, 5, &diags).count, 0);
    ck_assert_uint_eq(speller_suggest(speller, "handel", 6, 0, &diags).count, 0);
    ck_assert_uint_eq(speller_suggest(speller, "handel", 6, 2, &diags).count, 2);
    ck_assert_uint_le(speller_suggest(speller, "handel", 6, 99, &diags).count, SPELLER_SUGGEST_MOST);
    ck_assert_uint_eq(diags.count, 0);
    speller_free(speller);
}

START_TEST(answers_look_like_the_word_asked_about) {
    within(answer, NULL);
}
END_TEST

static void prefer(struct arena *arena, void *context) {
    (void)context;
    struct diags diags = diags_start(arena);
    struct speller *us = new_speller(SPELLER_US, NULL), *gb = new_speller(SPELLER_GB, NULL);
    static const char *const cases[][3] = {{"aluminim", "aluminum", "aluminium"},
                                           {"calibr", "caliber", "calibre"}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        ck_assert_str_eq(joined(us, cases[i][0], 1, &diags), cases[i][1]);
        ck_assert_str_eq(joined(gb, cases[i][0], 1, &diags), cases[i][2]);
    }
    speller_free(us);
    speller_free(gb);
}

START_TEST(each_english_has_its_own) {
    within(prefer, NULL);
}
END_TEST

struct starving {
    struct arena *arena;
    struct speller *speller;
    size_t count;
};

static void ask(struct arena *arena, void *context) {
    struct starving *s = context;
    struct diags diags = diags_start(arena);
    s->count = speller_suggest(s->speller, "handel", 6, 3, &diags).count;
}

// Memory that runs out at each call in turn while the words are laid out: the caller's try is left, nothing
// leaks, and the same speller answers once there is memory.
START_TEST(memory_may_run_out) {
    struct speller_options options = {0};
    size_t failures = 0;
    for (size_t at = 2; at < 40; at++) {
        struct ledger ledger = {0};
        struct arena_memory memory = ledger_memory(&ledger);
        struct starving s = {arena_new(NULL), speller_new(&memory, &options), 0};
        ck_assert_ptr_nonnull(s.speller);
        ledger.fail_at = ledger.calls + at - 1;
        bool finished = arena_try(s.arena, ask, &s);
        failures += !finished;
        ledger.fail_at = 0;
        ck_assert(arena_try(s.arena, ask, &s));
        ck_assert_uint_eq(s.count, 3);
        speller_free(s.speller);
        arena_free(s.arena);
        ck_assert_uint_eq(ledger.live, 0);
        if (finished) break;
    }
    ck_assert_uint_gt(failures, 5);
    struct ledger ledger = {.fail_at = 1};
    struct arena_memory memory = ledger_memory(&ledger);
    ck_assert_ptr_null(speller_new(&memory, &options));
}
END_TEST

int main(void) {
    Suite *suite = suite_create("words/suggest");
    TCase *all = tcase_create("all");
    tcase_add_test(all, all_words_within_two_edits_are_found);
    tcase_add_test(all, hunspell_knows_every_word_laid_out);
    tcase_add_test(all, public_misspellings_are_put_right);
    tcase_add_test(all, answers_look_like_the_word_asked_about);
    tcase_add_test(all, each_english_has_its_own);
    tcase_add_test(all, memory_may_run_out);
    suite_add_tcase(suite, all);
    return run_suite(suite);
}
