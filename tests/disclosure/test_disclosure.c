// SPDX-License-Identifier: MIT
// The paragraph of faults, on ten thousand records made at random: every flaw in one sentence of its own,
// nothing lost, nothing said beside, and sentences that stand as sentences.
#include "../rules/records.h"

#include "disclosure/clause.h"
#include "item/wording.h"

#include <ctype.h>

enum { RECORDS = 10000, CHUNKS = 20 };

struct trial {
    struct arena *arena;
    struct node *tree;
    struct record *record;
    struct drafter *drafter;
    size_t number;
    enum locale locale;
};

#define HOLDS(trial, condition, ...)                                                                         \
    ck_assert_msg(condition, "%s\n%s", arena_format((trial)->arena, __VA_ARGS__),                            \
                  yaml_of((trial)->arena, (trial)->tree))

static struct disclosure write_of(const struct trial *t, const struct record *record) {
    return disclosure_write(t->arena, t->drafter->rules, record, t->locale, t->drafter->variants);
}

static const char *lower(struct arena *arena, const char *text) {
    char *copy = arena_copy(arena, text, strlen(text));
    for (char *c = copy; *c; c++) *c = (char)tolower((unsigned char)*c);
    return copy;
}

// --- law 2: take one flaw out and exactly its words go ---

// Words that join clauses and make subjects; what else is said belongs to some flaw.
static const char *const glue[] = {"it",     "they", "them",   "the",   "there", "is",    "are",  "has",
                                   "have",   "was",  "were",   "may",   "be",    "and",   "or",   "a",
                                   "an",     "on",   "shows",  "show",  "of",    "seems", "in",   "size",
                                   "degree", "not",  "stated", "where", "none",  "given", "other"};

struct bag {
    const char *words[2000];
    int counts[2000];
    size_t count;
};

static void bag_add(struct bag *bag, const char *word, int by) {
    for (size_t i = 0; i < sizeof glue / sizeof *glue; i++)
        if (!strcmp(word, glue[i])) return;
    for (size_t i = 0; i < bag->count; i++)
        if (!strcmp(bag->words[i], word)) {
            bag->counts[i] += by;
            return;
        }
    ck_assert(bag->count < 2000);
    bag->words[bag->count] = word;
    bag->counts[bag->count++] = by;
}

static void bag_text(const struct trial *t, struct bag *bag, const char *text, int by) {
    char *copy = arena_copy(t->arena, lower(t->arena, text), strlen(text));
    char *rest = NULL;
    for (char *word = strtok_r(copy, " ,;:.()", &rest); word; word = strtok_r(NULL, " ,;:.()", &rest))
        bag_add(bag, word, by);
}

static struct clause clause_in(const struct trial *t, const struct item_flaw *flaw) {
    const struct record *r = t->record;
    enum address address = r->count > 1                                    ? ADDRESS_THERE
                           : r->type.value && say_is_plural(r->type.value) ? ADDRESS_THEY
                                                                           : ADDRESS_IT;
    return clause_of(t->arena, flaw, address, t->locale);
}

static const char *own_words(const struct trial *t, const struct item_flaw *flaw) {
    struct clause c = clause_in(t, flaw);
    const char *text = arena_format(t->arena, "%s %s %s %s", c.subject, c.rest, c.place,
                                    flaw->kind->noun ? flaw->kind->noun : "");
    return say_spelling(t->arena, t->drafter->variants, text, t->locale);
}

static bool same_clause(const struct trial *t, const struct item_flaw *a, const struct item_flaw *b) {
    struct clause x = clause_in(t, a), y = clause_in(t, b);
    return x.verb == y.verb && x.maybe == y.maybe && !strcmp(x.subject, y.subject) &&
           !strcmp(x.rest, y.rest) && !strcmp(x.place, y.place);
}

static bool has_twin(const struct trial *t, size_t i) {
    for (size_t k = 0; k < t->record->flaw_count; k++)
        if (k != i && same_clause(t, &t->record->flaws[i], &t->record->flaws[k])) return true;
    return false;
}

static bool holds_words(const struct trial *t, const char *text, const char *words) {
    struct bag bag = {.count = 0};
    bag_text(t, &bag, text, 1);
    bag_text(t, &bag, words, -1);
    for (size_t i = 0; i < bag.count; i++)
        if (bag.counts[i] < 0) return false;
    return true;
}

static void check_without(const struct trial *t, const struct disclosure *all, size_t i) {
    const struct item_flaw *out = &t->record->flaws[i];
    struct record less = *t->record;
    less.flaws = arena_array(t->arena, less.flaw_count, sizeof *less.flaws);
    less.flaw_count = 0;
    for (size_t k = 0; k < t->record->flaw_count; k++)
        if (k != i) less.flaws[less.flaw_count++] = t->record->flaws[k];
    const struct disclosure rest = write_of(t, &less);
    struct bag gone = {.count = 0};
    bag_text(t, &gone, all->text, 1);
    bag_text(t, &gone, rest.text, -1);
    struct bag own = {.count = 0};
    bag_text(t, &own, own_words(t, out), 1);
    bool some = false;
    // A subject or place that the flaw shared with others stands once more in either text; its own noun must
    // go.
    for (size_t w = 0; w < gone.count; w++) {
        if (!gone.counts[w]) continue;
        bool its = false;
        for (size_t k = 0; k < own.count; k++) its |= !strcmp(own.words[k], gone.words[w]);
        for (size_t k = 0; k < t->record->flaw_count;
             k++) // said again, or no longer shared, by another of its subject
            its |= gone.counts[w] < 0 && holds_words(t, own_words(t, &t->record->flaws[k]), gone.words[w]);
        HOLDS(t, its, "without '%s' the word '%s' changes:\n%s\n%s", own_words(t, out), gone.words[w],
              all->text, rest.text);
        some |= gone.counts[w] > 0;
    }
    HOLDS(t, some || has_twin(t, i), "'%s' went and no word with it:\n%s", own_words(t, out), all->text);
}

static void check_law_two(const struct trial *t) {
    const struct disclosure all = write_of(t, t->record);
    for (size_t i = 0; i < t->record->flaw_count; i++) {
        struct clause c = clause_in(t, &t->record->flaws[i]);
        const char *said = arena_format(t->arena, "%s %s", c.rest, c.place);
        said = say_spelling(t->arena, t->drafter->variants, said, t->locale);
        HOLDS(t, holds_words(t, all.text, said), "not told: %s\n%s", said, all.text);
        if (t->number % 4 == 0) check_without(t, &all, i);
    }
}

// --- what was said stands in it ---

static bool has_words(const struct trial *t, const char *sentence, const char *words) {
    char *copy = arena_copy(t->arena, lower(t->arena, words), strlen(words));
    const char *text = lower(t->arena, sentence);
    for (char *word = strtok(copy, " ,;()"); word; word = strtok(NULL, " ,;()"))
        if (!strstr(text, word)) return false;
    return true;
}

static const char *spelled(const struct trial *t, const char *text) {
    return say_spelling(t->arena, t->drafter->variants, text, t->locale);
}

static void check_content(const struct trial *t) {
    const struct disclosure all = write_of(t, t->record);
    size_t unsure = 0;
    for (size_t i = 0; i < t->record->flaw_count; i++) {
        const struct item_flaw *flaw = &t->record->flaws[i];
        HOLDS(t, !flaw->where || has_words(t, all.text, spelled(t, flaw->where)),
              "the place '%s' is not in: %s", flaw->where, all.text);
        HOLDS(t,
              !flaw->part || has_words(t, all.text, spelled(t, flaw->part)) ||
                  has_words(t, all.text, spelled(t, say_plural(t->arena, flaw->part))),
              "the part '%s' is not in: %s", flaw->part, all.text);
        unsure += flaw->sure != SURE_STATED;
    }
    bool doubt = strstr(all.text, " may ") || strstr(all.text, "it seems");
    HOLDS(t, doubt == (unsure > 0), "doubt: %s", all.text);
    for (size_t i = 0; i < t->record->unchecked.count; i++) {
        const struct flaw *flaw = ruleset_flaw(t->drafter->rules, t->record->unchecked.at[i]);
        const char *name = flaw ? wording_sought(t->arena, flaw, NULL) : t->record->unchecked.at[i];
        HOLDS(t, has_words(t, all.text, spelled(t, name)), "not told to be unchecked: %s\n%s", name,
              all.text);
    }
    for (size_t i = 0; i < t->record->clear_count; i++) {
        const struct item_clear *clear = &t->record->clear[i];
        bool told = false;
        for (size_t k = 0; k < all.count; k++)
            told |= strstr(lower(t->arena, all.sentences[k].text), "no ") &&
                    strstr(all.sentences[k].text, " seen") &&
                    (!clear->where || has_words(t, all.sentences[k].text, spelled(t, clear->where))) &&
                    has_words(t, all.sentences[k].text,
                              spelled(t, wording_sought(t->arena, clear->kind, clear->part)));
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
    t->locale = t->number % 2 ? LOCALE_GB : LOCALE_US;
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
            struct record record = {.flaws = &flaw, .flaw_count = 1, .count = at % 5 == 0 ? 6 : 0};
            t.record = &record;
            struct disclosure told = write_of(&t, &record);
            ck_assert_uint_ge(told.count, 1);
            for (size_t k = 0; k < told.count; k++) check_sentence(&t, told.sentences[k].text);
            const char *text = lower(arena, told.text);
            bool one = flaw.count == 1 && flaw.kind->form == ABSENCE; // "one handle is missing"
            const char *part = one && flaw.part ? say_singular(arena, flaw.part) : flaw.part;
            HOLDS(&t, !part || strstr(text, part), "%s: part: %s", flaw.kind->rule.id, text);
            HOLDS(&t, !flaw.where || strstr(text, flaw.where), "%s: place: %s", flaw.kind->rule.id, text);
        }
}

START_TEST(every_kind_makes_a_sentence) {
    within(check_every_kind, NULL);
}
END_TEST

// With the type "jug" where none is given.
static const struct {
    const char *record, *text;
} sentences[] = {
    {"flaws: [{kind: chip, where: rim, severity: light, size: {value: 3, unit: mm}}]",
     "A small chip of 3 mm (1/8 in) shows on the rim."},
    {"flaws: [{kind: chip, count: 3, severity: light}]", "It has three small chips."},
    {"flaws: [{kind: chip, part: handle}]", "The handle is chipped. Size or degree not stated: chip."},
    {"flaws: [{kind: chip, part: handle, sure: likely, severity: heavy}]",
     "The handle may be badly chipped."},
    {"flaws: [missing-lid]", "The lid is missing."},
    {"flaws: [missing-lid, {kind: missing-accessory, part: rack}, missing-instructions]",
     "The lid, the rack, and the instructions are missing."},
    {"flaws: [{kind: missing-lid, count: 2, of: 6}]", "Two of the six lids are missing."},
    {"flaws: [{kind: missing-hardware, part: screw, where: hinge}]", "The screw is missing from the hinge."},
    {"flaws: [{kind: missing-instructions, where: in the box}]",
     "The instructions are missing from the box."},
    {"flaws: [untested]", "It has not been tested."},
    {"flaws: [untested]\ncount: 4", "They have not been tested."},
    {"flaws: [untested]\ntype: pliers", "They have not been tested."},
    {"flaws: [{kind: untested, count: 1}]\ncount: 4", "One of them has not been tested."},
    {"flaws: [{kind: untested, part: switches}]", "The switches have not been tested."},
    {"flaws: [{kind: rust, where: inside, severity: heavy}]", "Heavy rust shows inside."},
    {"flaws: [{kind: chip, count: 1, of: 6, where: rim, severity: light}]\ncount: 6",
     "One of the six has a small chip on the rim."},
    {"flaws: [{kind: crack, part: leg, count: 1, of: 4, severity: light}]",
     "One of the four legs has a small crack."},
    {"flaws: [{kind: rust, count: 2, of: 2, severity: light}]\ncount: 2", "Both are lightly rusty."},
    {"flaws: [{kind: chip, where: rim, severity: light}, {kind: wear-rub, where: rim, severity: light},"
     " {kind: rust, severity: light}]",
     "On the rim it has a small chip and light scuffing. It has light rust."},
    {"flaws: [{kind: crack, where: rim, severity: light}, {kind: chip, where: rim, severity: light}]",
     "On the rim it has a small crack and a small chip."},
    {"flaws: [{kind: rust, part: handle, severity: light}, {kind: loose-part, part: handle, severity: "
     "heavy}]",
     "The handle is lightly rusty and badly loose."},
    {"flaws: [pages-loose]\ntype: atlas", "It has loose or missing pages."},
    {"flaws: [{kind: pages-loose, count: 2}]\ntype: atlas", "It has two loose or missing pages."},
    {"flaws: [{kind: rust, count: 3, severity: light}]", "It has light rust in three places."},
    {"flaws: [{kind: scratches, severity: light}]", "It has light scratches."},
    {"flaws: [{kind: authenticity-unverified, part: signature, where: bottom}]",
     "The signature on the bottom is unread or unverified."},
    {"flaws: [{kind: chip, where: rim, severity: light}]\nclear: [chip]",
     "A small chip shows on the rim. No other chips seen."},
    {"flaws: [{kind: writing-inside, where: in pencil, severity: light}]", "Light writing shows in pencil."},
    {"unchecked: [chip, missing-lid, not-working, the works]",
     "Not checked for chips, missing lids or faults in working. Not checked: the works."},
    {"clear: [chip, crack, {kind: chip, where: rim}, {kind: seized, part: lid}, {kind: missing-accessory, "
     "part: knobs}]",
     "No chips, cracks or missing knobs seen. No chips seen on the rim. No stuck or stiff lid seen."},
    {"clear: [{kind: loose-part, part: handle}, {kind: strap-damage, part: straps}, {kind: lining-damage, "
     "part: "
     "lining}, {kind: zip-fault, part: zip}]\ntype: satchel",
     "No loose handle, strap damage or lining damage seen. On the zip, no faults seen."},
};

static void check_sentences(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof sentences / sizeof *sentences; i++) {
        const char *type = strstr(sentences[i].record, "type:") ? "" : "type: jug\n";
        const char *yaml = arena_format(arena, "%s%s\n", type, sentences[i].record);
        ck_assert_str_eq(draft_of(arena, shipped_once(), yaml)->disclosure.text, sentences[i].text);
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
