// SPDX-License-Identifier: MIT
// Laws of the title, on ten thousand records made at random: what it must hold, what it must not, how long it
// may be.
#include "../rules/records.h"

enum { RECORDS = 10000, CHUNKS = 25 };
static const size_t limits[] = {40, 60, 80, 120};
enum { LIMITS = 4 };

struct trial {
    struct arena *arena; // of this record; reset after it
    struct node *tree;
    struct record *record;
    struct drafter *drafter;
    enum count_unit unit;
    size_t number, limit;
    const struct listing *listing;
};

#define HOLDS(trial, condition, ...)                                                                         \
    ck_assert_msg(condition, "%s\nlimit %zu %s\ntitle: %s\n%s", arena_format((trial)->arena, __VA_ARGS__),   \
                  (trial)->limit, count_unit_name((trial)->unit), (trial)->listing->title,                   \
                  yaml_of((trial)->arena, (trial)->tree))

// --- words counted apart from the program: runs of ASCII letters, lower case ---

struct words {
    char at[200][40];
    size_t count;
};

static void add_words(struct words *words, const char *text) {
    for (const char *c = text; *c;) {
        size_t n = 0;
        while ((c[n] >= 'a' && c[n] <= 'z') || (c[n] >= 'A' && c[n] <= 'Z')) n++;
        if (n >= 2 && n < 40 && words->count < 200) {
            for (size_t i = 0; i < n; i++) words->at[words->count][i] = (char)(c[i] | 0x20);
            words->at[words->count++][n] = '\0';
        }
        c += n ? n : 1;
    }
}

static bool has_word(const struct words *words, const char *word) {
    for (size_t i = 0; i < words->count; i++)
        if (!strcmp(words->at[i], word)) return true;
    return false;
}

// Small words and units, which may come again; words of names and marks may too.
static void free_words(const struct record *record, struct words *words) {
    add_words(words, "a an and as at be but by for from if in into is it of on or per so the to with without "
                     "no not near under over off "
                     "out up each both some about only inch qt pt gal oz lb kg ft ml cm mm yd size");
    for (size_t i = 0; i < record->attribute_count; i++) {
        const char *name = record->attributes[i].name;
        if (!strcmp(name, "brand") || !strcmp(name, "model") || !strcmp(name, "name") || !strcmp(name, "mpn"))
            add_words(words, record->attributes[i].value);
    }
    for (size_t i = 0; i < record->mark_count; i++) add_words(words, record->marks[i].text);
    for (size_t i = 0; i < record->fit_count; i++) {
        if (record->fits[i].brand) add_words(words, record->fits[i].brand);
        if (record->fits[i].model) add_words(words, record->fits[i].model);
    }
}

static void no_word_twice(const struct trial *t) {
    struct words title = {.count = 0}, again = {.count = 0};
    add_words(&title, t->listing->title);
    free_words(t->record, &again);
    for (size_t i = 0; i < title.count; i++)
        for (size_t j = 0; j < i; j++)
            HOLDS(t, strcmp(title.at[i], title.at[j]) != 0 || has_word(&again, title.at[i]),
                  "'%s' stands twice", title.at[i]);
}

static const char *lower(struct arena *arena, const char *text) {
    char *copy = arena_copy(arena, text, strlen(text));
    for (char *c = copy; *c; c++)
        if (*c >= 'A' && *c <= 'Z') *c = (char)(*c | 0x20);
    return copy;
}

static void nothing_unsure(const struct trial *t) {
    const char *title = lower(t->arena, t->listing->title);
    for (size_t i = 0; i < sizeof UNSURE_WORDS / sizeof *UNSURE_WORDS; i++)
        HOLDS(t, !stands_unhedged(title, UNSURE_WORDS[i]), "'%s' is not certain and stands in the title",
              UNSURE_WORDS[i]);
    for (size_t i = 0; i < t->record->fit_count; i++)
        HOLDS(t, t->record->fits[i].sure == SURE_STATED || !strstr(title, "for pellander"),
              "an uncertain fit stands in the title");
    for (size_t i = 0; i < t->record->flaw_count; i++) {
        const struct item_flaw *flaw = &t->record->flaws[i];
        bool must = flaw->kind->duty == DUTY_MUST ||
                    (flaw->kind->duty == DUTY_IF_HEAVY && flaw->severity == SEVERITY_HEAVY);
        for (size_t k = 0; k < t->listing->word_count; k++)
            HOLDS(t,
                  flaw->sure == SURE_STATED || must ||
                      strncmp(t->listing->words[k].text, "Possible ", 9) != 0 ||
                      t->listing->words[k].slot == SLOT_FLAWS || t->listing->words[k].slot == SLOT_TYPE,
                  "a doubt is told where none has to be");
    }
}

// The title without the claims that stand in it with their qualifier ("Art Deco Style").
static const char *without_written(const struct trial *t) {
    char *title = arena_copy(t->arena, t->listing->title, strlen(t->listing->title));
    const char *low = lower(t->arena, title);
    const struct claims *claims = t->listing->claims;
    for (size_t i = 0; claims && i < claims->count; i++) {
        if (!claims->items[i].written) continue;
        const char *words = lower(t->arena, claims->items[i].written);
        for (const char *at = low; (at = strstr(at, words)); at += strlen(words))
            memset(title + (at - low), '.', strlen(words));
    }
    return title;
}

// The finished title, whatever its phrases were: no claim in it but with its evidence, with its qualifier, or
// inside a mark that is quoted.
static void no_claim(const struct trial *t) {
    const struct ruleset *rules = t->drafter->rules;
    const char *title = without_written(t);
    for (size_t i = 0; i < rules->claim_count; i++) {
        struct span found, mark;
        if (scanner_find(t->drafter->scanner, &rules->claims[i]->finder, title, strlen(title), 0, &found) !=
            SCAN_FOUND)
            continue;
        bool shown = false; // by its years ("Space Age" of 1950 to 1962), or by a mark
        for (size_t k = 0; t->listing->claims && k < t->listing->claims->count; k++) {
            const struct claim_found *told = &t->listing->claims->items[k];
            shown |=
                told->claim == rules->claims[i] && told->verdict == VERDICT_ALLOW && t->record->year_from > 0;
        }
        for (size_t k = 0; k < t->record->mark_count; k++) {
            const char *text = t->record->marks[k].text;
            shown |= scanner_find(t->drafter->scanner, &rules->claims[i]->evidence, text, strlen(text), 0,
                                  &mark) == SCAN_FOUND;
            const char *quoted = strstr(title, text);
            shown |= quoted && found.from >= (size_t)(quoted - title) &&
                     found.to <= (size_t)(quoted - title) + strlen(text);
        }
        HOLDS(t, shown, "'%.*s' is a claim (%s)", (int)(found.to - found.from), title + found.from,
              rules->claims[i]->rule.id);
    }
}

// "Not Working" of the whole thing or of that part tells what works only partly; nothing uncertain does.
static bool told_by_wider(const struct trial *t, const struct item_flaw *flaw) {
    for (size_t i = 0; i < t->record->flaw_count; i++) {
        const struct item_flaw *wider = &t->record->flaws[i];
        bool reaches = !flaw->part || !wider->part || !strcmp(flaw->part, wider->part);
        const char *because = arena_format(t->arena, "flaw %s", wider->kind->rule.id);
        for (size_t k = 0; k < flaw->kind->implied_by.count; k++) {
            if (strcmp(flaw->kind->implied_by.at[k], wider->kind->rule.id) != 0) continue;
            for (size_t w = 0; reaches && wider->sure == SURE_STATED && w < t->listing->word_count; w++)
                if (!strcmp(t->listing->words[w].because, because)) return true;
        }
    }
    return false;
}

static void musts_are_told(const struct trial *t) {
    const struct listing *l = t->listing;
    bool rolled = false;
    for (size_t k = 0; k < l->word_count; k++)
        rolled |= !strcmp(l->words[k].because, "one short word for several faults");
    for (size_t i = 0; i < t->record->flaw_count; i++) {
        const struct item_flaw *flaw = &t->record->flaws[i];
        if (flaw->kind->duty != DUTY_MUST &&
            !(flaw->kind->duty == DUTY_IF_HEAVY && flaw->severity == SEVERITY_HEAVY))
            continue;
        const char *because = arena_format(t->arena, "flaw %s", flaw->kind->rule.id);
        bool told = (rolled && flaw->kind->rollup != ROLLUP_NONE) || told_by_wider(t, flaw);
        for (size_t k = 0; k < l->word_count; k++) told |= !strcmp(l->words[k].because, because);
        HOLDS(t, told, "%s has to be told", flaw->kind->rule.id);
    }
    for (size_t k = 0; k < l->word_count; k++) {
        bool there = strstr(lower(t->arena, l->title), lower(t->arena, l->words[k].text)) != NULL;
        HOLDS(t, there, "'%s' is said to stand in the title", l->words[k].text);
    }
}

// "Ochre Lid" is one phrase: the color of a part stands before its part and nowhere else.
static void part_colors_stay(const struct trial *t) {
    const char *title = lower(t->arena, t->listing->title);
    for (size_t c = 0; c < sizeof PART_COLORS / sizeof *PART_COLORS; c++) {
        const char *at = strstr(title, PART_COLORS[c]);
        if (!at) continue;
        bool bound = false;
        for (size_t i = 0; i < t->record->attribute_count; i++) {
            const struct value *value = &t->record->attributes[i];
            if (!value->of || strcmp(value->value, PART_COLORS[c]) != 0) continue;
            bound |= !strncmp(at + strlen(PART_COLORS[c]), arena_format(t->arena, " %s", value->of),
                              strlen(value->of) + 1);
        }
        HOLDS(t, bound, "'%s' has left its part", PART_COLORS[c]);
    }
}

static void tidy(const struct trial *t) {
    const char *title = t->listing->title;
    HOLDS(t, !strstr(title, "  ") && title[0] != ' ' && title[strlen(title) - 1] != ' ', "spaces");
    HOLDS(t, !strpbrk(title, "{}[]|<>;") && !strstr(title, " ,"), "litter");
    HOLDS(t, !(title[0] >= 'a' && title[0] <= 'z'), "it begins small");
}

// --- one record at four limits ---

static void check_title(struct trial *t, int64_t *last) {
    struct title_options options = {t->limit, t->unit, LOCALE_US, t->drafter->variants};
    t->listing = listing_draft(t->arena, t->drafter, t->record, &options);
    const struct listing *l = t->listing;
    if (!*l->title) {
        HOLDS(t, listing_has_must(l) && !l->title_length && !l->word_count, "no title and nobody is told");
        HOLDS(t, *last < 0, "a title went when the limit grew");
        return;
    }
    HOLDS(t, count_text(l->title, strlen(l->title), t->unit) == l->title_length, "length %zu",
          l->title_length);
    HOLDS(t, l->title_length <= t->limit, "too long: %zu", l->title_length);
    HOLDS(t, l->optimal && l->worth == l->bound, "not proved: %lld of %lld", (long long)l->worth,
          (long long)l->bound);
    HOLDS(t, l->worth >= *last, "worth fell from %lld to %lld", (long long)*last, (long long)l->worth);
    *last = l->worth;
    no_word_twice(t);
    nothing_unsure(t);
    no_claim(t);
    musts_are_told(t);
    part_colors_stay(t);
    tidy(t);
}

// The choice is weighed again by the evaluator that shares nothing with the solver.
static void check_choice(const struct trial *t) {
    if (t->listing->cautions->stop) { // goods that may not be listed have no title at all
        HOLDS(t, !*t->listing->title, "a title in spite of a ban");
        return;
    }
    struct title_options options = {t->limit, t->unit, LOCALE_US, t->drafter->variants};
    // With the claims as the years of the record settled them.
    const struct title_plan *plan = title_plan(t->arena, t->listing->record, t->listing->claims, &options);
    struct title_choice choice = title_solve(t->arena, &plan->problem);
    HOLDS(t, choice.feasible == (*t->listing->title != '\0'), "solved twice and not the same");
    if (!choice.feasible) {
        HOLDS(t, choice.shortest > t->limit, "no title although %zu would do", choice.shortest);
        HOLDS(t, choice.shortest != SIZE_MAX, "what must be told excludes each other");
        return;
    }
    int64_t worth;
    size_t length;
    HOLDS(t, title_worth(&plan->problem, choice.spelling, choice.rollup, &worth, &length),
          "the choice breaks a law");
    // A wording that was turned, for a small word said twice, is shorter than the one chosen.
    HOLDS(t, worth == t->listing->worth && length >= t->listing->title_length, "worth %lld, length %zu",
          (long long)worth, length);
}

static void check_record(struct arena *arena, void *context) {
    struct trial *t = context;
    struct dice dice = {0x9E3779B97F4A7C15u * (t->number + 1) | 1};
    for (int i = 0; i < 8; i++) dice_roll(&dice, 2);
    t->arena = arena;
    t->tree = random_record(arena, &dice, t->drafter->rules, t->number);
    t->record = read_made(arena, t->drafter->rules, t->tree);
    t->unit = (enum count_unit)(t->number % 3);
    int64_t last = -1;
    for (size_t i = 0; i < LIMITS; i++) {
        t->limit = limits[i];
        check_title(t, &last);
        if (limits[i] == 80) check_choice(t);
    }
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

START_TEST(titles_keep_the_laws) {
    size_t chunk = (size_t)_i;
    within(check_chunk, &chunk);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("title.plan");
    TCase *tests = tcase_create("laws");
    tcase_set_timeout(tests, 300);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_loop_test(tests, titles_keep_the_laws, 0, CHUNKS);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
