// SPDX-License-Identifier: MIT
// The paragraph of faults, on five thousand records made at random: every flaw in one sentence of its own,
// nothing lost, nothing said beside, and sentences that stand as sentences.
#include "../rules/records.h"

#include <ctype.h>

enum { RECORDS = 5000, CHUNKS = 10 };

struct trial {
    struct arena *arena;
    struct node *tree;
    struct record *record;
    struct drafter *drafter;
    size_t number;
};

#define HOLDS(trial, condition, ...)                                                                         \
    ck_assert_msg(condition, "%s\n%s", arena_format((trial)->arena, __VA_ARGS__),                            \
                  yaml_of((trial)->arena, (trial)->tree))

static struct disclosure write_of(const struct trial *t, const struct record *record) {
    return disclosure_write(t->arena, t->drafter->rules, record, LOCALE_US, t->drafter->variants);
}

static bool holds_sentence(const struct disclosure *d, const char *text) {
    for (size_t i = 0; i < d->count; i++)
        if (!strcmp(d->sentences[i].text, text)) return true;
    return false;
}

// --- law 2: take one flaw out and exactly its words go ---

static void check_law_two(const struct trial *t) {
    const struct disclosure all = write_of(t, t->record);
    for (size_t i = 0; i < t->record->flaw_count; i++) {
        const char *own = flaw_sentence(t->arena, &t->record->flaws[i], LOCALE_US);
        own = say_spelling(t->arena, t->drafter->variants, own, LOCALE_US);
        HOLDS(t, holds_sentence(&all, own), "not told: %s", own);
        struct record less = *t->record;
        less.flaws = arena_array(t->arena, less.flaw_count, sizeof *less.flaws);
        less.flaw_count = 0;
        bool twin = false;
        for (size_t k = 0; k < t->record->flaw_count; k++) {
            if (k == i) continue;
            less.flaws[less.flaw_count++] = t->record->flaws[k];
            twin |= !strcmp(own, flaw_sentence(t->arena, &t->record->flaws[k], LOCALE_US));
        }
        const struct disclosure rest = write_of(t, &less);
        HOLDS(t, rest.count + (twin ? 0 : 1) == all.count, "without '%s' there are %zu sentences of %zu", own,
              rest.count, all.count);
        HOLDS(t, twin || !holds_sentence(&rest, own), "still told: %s", own);
        if (twin) continue; // the other flaw's sentence stands where that one comes
        size_t at = 0;
        for (size_t k = 0; k < all.count; k++)
            if (at < rest.count && !strcmp(all.sentences[k].text, rest.sentences[at].text)) at++;
        HOLDS(t, at == rest.count, "without '%s' other words change:\n%s\n%s", own, all.text, rest.text);
    }
}

// --- what was said stands in it ---

static const char *lower(struct arena *arena, const char *text) {
    char *copy = arena_copy(arena, text, strlen(text));
    for (char *c = copy; *c; c++) *c = (char)tolower((unsigned char)*c);
    return copy;
}

static bool has_words(const struct trial *t, const char *sentence, const char *words) {
    char *copy = arena_copy(t->arena, lower(t->arena, words), strlen(words));
    const char *text = lower(t->arena, sentence);
    for (char *word = strtok(copy, " ,;()"); word; word = strtok(NULL, " ,;()"))
        if (!strstr(text, word)) return false;
    return true;
}

static void check_content(const struct trial *t) {
    const struct disclosure all = write_of(t, t->record);
    for (size_t i = 0; i < t->record->flaw_count; i++) {
        const struct item_flaw *flaw = &t->record->flaws[i];
        const char *own = flaw_sentence(t->arena, flaw, LOCALE_US);
        HOLDS(t, !flaw->where || has_words(t, own, flaw->where), "the place '%s' is not in: %s", flaw->where,
              own);
        HOLDS(t, !flaw->part || has_words(t, own, flaw->part), "the part '%s' is not in: %s", flaw->part,
              own);
        bool doubt = strstr(own, "may ") || strstr(own, "May ") || strstr(own, "ot certain");
        HOLDS(t, doubt == (flaw->sure != SURE_STATED), "doubt: %s", own);
    }
    for (size_t i = 0; i < t->record->unchecked.count; i++) {
        const struct flaw *flaw = ruleset_flaw(t->drafter->rules, t->record->unchecked.at[i]);
        const char *name = flaw ? flaw->print : t->record->unchecked.at[i];
        HOLDS(t, has_words(t, all.text, name), "not told to be unchecked: %s\n%s", name, all.text);
    }
    for (size_t i = 0; i < t->record->clear_count; i++) {
        const struct item_clear *clear = &t->record->clear[i];
        bool told = false;
        for (size_t k = 0; k < all.count; k++)
            told |= !strncmp(all.sentences[k].text, "No ", 3) && strstr(all.sentences[k].text, " seen") &&
                    (!clear->where || has_words(t, all.sentences[k].text, clear->where)) &&
                    (has_words(t, all.sentences[k].text,
                               clear->kind->form == FAULT ? clear->kind->noun : clear->kind->print) ||
                     (clear->kind->plural && has_words(t, all.sentences[k].text, clear->kind->plural)) ||
                     (clear->kind->noun &&
                      has_words(t, all.sentences[k].text, say_plural(t->arena, clear->kind->noun))));
        HOLDS(t, told, "not told to be clear: %s\n%s", clear->kind->rule.id, all.text);
    }
}

// --- sentences ---

static bool vowel(char c) {
    return strchr("aeiouAEIOU", c) != NULL;
}

// Exceptions of sound that stand in records and rules; anything else goes by its letter.
static bool article_is_right(const char *article, const char *word) {
    static const char *const an[] = {"hour", "honest", "8", "11", "18"}, *const a[] = {"one", "uni", "use",
                                                                                       "usa", "euro"};
    bool wants_an = vowel(*word);
    for (size_t i = 0; i < sizeof an / sizeof *an; i++) wants_an |= !strncmp(word, an[i], strlen(an[i]));
    for (size_t i = 0; i < sizeof a / sizeof *a; i++) wants_an &= strncmp(word, a[i], strlen(a[i])) != 0;
    return wants_an == !strcmp(article, "an");
}

static void check_sentence(const struct trial *t, const char *text) {
    size_t n = strlen(text);
    HOLDS(t, n > 4 && text[n - 1] == '.' && text[n - 2] != '.' && text[n - 2] != ' ', "its end: %s", text);
    HOLDS(t, (text[0] >= 'A' && text[0] <= 'Z') || (text[0] >= '0' && text[0] <= '9'), "its beginning: %s",
          text);
    HOLDS(t, !strstr(text, "  ") && !strstr(text, " .") && !strstr(text, " ,") && !strpbrk(text, "{}[]<>|"),
          "litter: %s", text);
    HOLDS(t, !strstr(text, ". "), "two sentences in one: %s", text);
    const char *words = arena_copy(t->arena, text, n), *last = "";
    size_t count = 0;
    for (char *word = strtok((char *)(uintptr_t)words, " "); word; word = strtok(NULL, " "), count++) {
        HOLDS(t, strcmp(last, word) != 0, "'%s' twice: %s", word, text);
        if (!strcmp(last, "a") || !strcmp(last, "an") || !strcmp(last, "A") || !strcmp(last, "An"))
            HOLDS(t, article_is_right(lower(t->arena, last), word), "'%s %s': %s", last, word, text);
        last = word;
    }
    HOLDS(t, count <= 40, "%zu words: %s", count, text);
}

static void check_text(const struct trial *t) {
    const struct disclosure all = write_of(t, t->record);
    struct buf joined = buf_start(t->arena);
    for (size_t i = 0; i < all.count; i++) {
        check_sentence(t, all.sentences[i].text);
        buf_format(&joined, "%s%s", i ? " " : "", all.sentences[i].text);
        for (size_t k = 0; k < i; k++)
            HOLDS(t, strcmp(all.sentences[i].text, all.sentences[k].text) != 0, "told twice");
    }
    HOLDS(t, !strcmp(joined.at, all.text), "the sentences are not the text");
    bool silent = !t->record->flaw_count && !t->record->clear_count && !t->record->unchecked.count;
    HOLDS(t, silent == !all.count, "%zu sentences", all.count);
}

// --- grade: never better than the lowest cap, counted apart ---

static void check_grade(const struct trial *t) {
    struct grading grading = grade_record(t->arena, t->record);
    int worst = GRADE_A;
    for (size_t i = 0; i < t->record->flaw_count; i++) {
        const struct item_flaw *flaw = &t->record->flaws[i];
        if (flaw->kind->class == CLASS_STATUS || flaw->kind->class == CLASS_FEATURE) continue;
        int degree = flaw->severity == SEVERITY_UNKNOWN ? SEVERITY_MODERATE : (int)flaw->severity;
        if ((int)flaw->kind->cap[degree] > worst) worst = (int)flaw->kind->cap[degree];
    }
    HOLDS(t, (int)grading.grade >= worst, "grade %s is better than its flaws allow",
          grade_letter(grading.grade));
    HOLDS(t, grading.grade == GRADE_A || grading.count > 0, "a grade without its reasons");
    HOLDS(t, (int)grading.grade <= (worst > GRADE_B ? worst : GRADE_B), "grade %s is worse than its flaws",
          grade_letter(grading.grade));
}

static void check_record(struct arena *arena, void *context) {
    struct trial *t = context;
    struct dice dice = {0xD1B54A32D192ED03u * (t->number + 1) | 1};
    for (int i = 0; i < 8; i++) dice_roll(&dice, 2);
    t->arena = arena;
    t->tree = random_record(arena, &dice, t->drafter->rules, t->number);
    t->record = read_made(arena, t->drafter->rules, t->tree);
    check_text(t);
    check_content(t);
    check_law_two(t);
    check_grade(t);
}

static void check_chunk(struct arena *arena, void *context) {
    size_t chunk = *(const size_t *)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    struct arena *records = arena_new(NULL);
    for (size_t i = 0; i < RECORDS / CHUNKS; i++) {
        struct trial trial = {.drafter = &drafter, .number = chunk * (RECORDS / CHUNKS) + i};
        ck_assert(arena_try(records, check_record, &trial));
        arena_reset(records);
    }
    arena_free(records);
}

START_TEST(disclosures_keep_the_laws) {
    size_t chunk = (size_t)_i;
    within(check_chunk, &chunk);
}
END_TEST

// --- every kind, with and without part, place, number and degree ---

static void check_every_kind(struct arena *arena, void *context) {
    (void)context;
    const struct shipped *shipped = shipped_once();
    struct drafter drafter = drafter_in(arena, shipped);
    static const char *const parts[] = {NULL, "lid", "handles"}, *const places[] = {NULL, "rim", "inside"};
    static const int counts[][2] = {{0, 0}, {1, 0}, {3, 0}, {1, 6}, {6, 6}, {1, 1}};
    struct trial t = {.arena = arena, .drafter = &drafter, .tree = node_map(arena)};
    for (size_t i = 0; i < shipped->rules->flaw_count; i++)
        for (int at = 0; at < 3 * 3 * 6 * 4 * 2; at++) {
            struct item_flaw flaw = {.kind = shipped->rules->flaws[i],
                                     .part = parts[at % 3],
                                     .where = places[at / 3 % 3],
                                     .count = counts[at / 9 % 6][0],
                                     .of = counts[at / 9 % 6][1],
                                     .severity = (enum severity)(at / 54 % 4),
                                     .sure = at / 216 ? SURE_LIKELY : SURE_STATED};
            const char *text = flaw_sentence(arena, &flaw, LOCALE_US);
            check_sentence(&t, text);
            HOLDS(&t, !flaw.part || strstr(lower(arena, text), flaw.part), "%s: part: %s", flaw.kind->rule.id,
                  text);
            HOLDS(&t, !flaw.where || strstr(text, flaw.where), "%s: place: %s", flaw.kind->rule.id, text);
        }
}

START_TEST(every_kind_makes_a_sentence) {
    within(check_every_kind, NULL);
}
END_TEST

static const struct {
    const char *flaw, *sentence;
} sentences[] = {
    {"{kind: chip, where: rim, severity: light, size: {value: 3, unit: mm}}",
     "There is a small chip on the rim, 3 mm (1/8 in)."},
    {"{kind: chip, count: 3}", "There are three chips."},
    {"{kind: chip, part: handle}", "The handle is chipped."},
    {"{kind: chip, part: handle, sure: likely}", "The handle may be chipped."},
    {"{kind: missing-lid}", "The lid is missing."},
    {"{kind: missing-lid, count: 2, of: 6}", "Two of six lids are missing."},
    {"{kind: untested}", "It has not been tested."},
    {"{kind: untested, part: switches}", "The switches have not been tested."},
    {"{kind: rust, where: inside, severity: heavy}", "There is heavy rust inside."},
    {"{kind: chip, count: 1, of: 6, where: rim}", "On one of the six, there is a chip on the rim."},
};

static void check_sentences(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof sentences / sizeof *sentences; i++) {
        const char *yaml = arena_format(arena, "type: jug\nflaws: [%s]\n", sentences[i].flaw);
        ck_assert_str_eq(draft_of(arena, shipped_once(), yaml)->disclosure.text, sentences[i].sentence);
    }
}

START_TEST(sentences_read_as_people_write_them) {
    within(check_sentences, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("disclosure");
    TCase *tests = tcase_create("laws");
    tcase_set_timeout(tests, 300);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, sentences_read_as_people_write_them);
    tcase_add_test(tests, every_kind_makes_a_sentence);
    tcase_add_loop_test(tests, disclosures_keep_the_laws, 0, CHUNKS);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
