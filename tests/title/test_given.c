// SPDX-License-Identifier: MIT
// What a given title earns, on records made at random: the drafted title earns its own worth, titles of
// lawful phrases in any order never more than the best, and a reading is the best by trying every other.
#include "../rules/records.h"

#include "title/given.h"

enum { RECORDS = 3000, CHUNKS = 12, SHUFFLES = 4, TRIED_WORDS = 10, PARTS = 60 };
static const size_t limits[] = {40, 80, 120};

struct trial {
    struct arena *arena; // of this record; reset after it
    struct dice dice;
    struct drafter *drafter;
    size_t number;
    struct title_options options;
    const struct node *tree;
    struct record *record;
    const struct listing *listing;
    const struct title_plan *plan;
    struct title_choice choice;
};

#define HOLDS(trial, condition, ...)                                                                         \
    ck_assert_msg(condition, "%s\nrecord %zu, limit %zu\ntitle: %s\n%s",                                     \
                  arena_format((trial)->arena, __VA_ARGS__), (trial)->number, (trial)->options.limit,        \
                  (trial)->listing->title, yaml_of((trial)->arena, (trial)->tree))

static struct given_title given(struct trial *t, const char *title) {
    return title_given(t->arena, t->plan, &t->choice, &t->options, title);
}

// --- titles of the record's own phrases ---

struct parts {
    const char *at[PARTS];
    size_t count;
};

static void shuffle(struct dice *dice, struct parts *parts) {
    for (size_t i = parts->count; i > 1; i--) {
        size_t j = dice_roll(dice, (uint32_t)i);
        const char *held = parts->at[i - 1];
        parts->at[i - 1] = parts->at[j];
        parts->at[j] = held;
    }
}

static const char *joined(struct arena *arena, const struct parts *parts) {
    struct buf out = buf_start(arena);
    for (size_t i = 0; i < parts->count; i++) buf_format(&out, "%s%s", i ? " " : "", parts->at[i]);
    return out.at;
}

static struct parts parts_of(const struct trial *t, const int *spelling, const bool *rollup) {
    struct parts parts = {.count = 0};
    for (size_t i = 0; i < t->plan->count && parts.count < PARTS; i++)
        if (spelling[i] >= 0) parts.at[parts.count++] = t->plan->phrases[i].spellings[spelling[i]].text;
    for (int r = 0; r < ROLLUP_COUNT && parts.count < PARTS; r++)
        if (t->plan->rollup_index[r] >= 0 && rollup[t->plan->rollup_index[r]])
            parts.at[parts.count++] = t->plan->rollup_text[r];
    return parts;
}

// A lawful choice that nothing but the dice prefers: the best one with phrases taken away, exchanged and
// added wherever the evaluator that shares nothing with the program allows it.
static void random_choice(struct trial *t, int *spelling, bool *rollup) {
    const struct title_problem *p = &t->plan->problem;
    memcpy(spelling, t->choice.spelling, p->phrase_count * sizeof *spelling);
    memcpy(rollup, t->choice.rollup, p->rollup_count * sizeof *rollup);
    for (size_t tries = 0; tries < 6 * p->phrase_count; tries++) {
        size_t i = dice_roll(&t->dice, (uint32_t)p->phrase_count);
        int before = spelling[i];
        spelling[i] = (int)dice_roll(&t->dice, (uint32_t)p->phrases[i].count + 1) - 1;
        int64_t worth;
        size_t length;
        if (!title_worth(p, spelling, rollup, &worth, &length)) spelling[i] = before;
    }
}

static size_t searches_missed(const struct given_title *g) {
    size_t count = 0;
    for (size_t i = 0; i < g->miss_count; i++) count += g->misses[i].kind == MISS_SEARCH;
    return count;
}

static void check_drafted(struct trial *t) {
    if (t->listing->cautions->stop) return; // kept back: there is no drafted title
    struct given_title g = given(t, t->listing->title);
    HOLDS(t, g.earned == t->listing->worth && g.best == t->listing->worth, "it earns %lld of %lld, not %lld",
          (long long)g.earned, (long long)g.best, (long long)t->listing->worth);
    HOLDS(t, !g.miss_count, "it is said to miss '%s'", g.misses[0].text);
    HOLDS(t, !g.cut && g.length == t->listing->title_length && !strcmp(g.at, t->listing->title), "it is cut");
    struct record *record = arena_alloc(t->arena, sizeof *record);
    *record = *t->record;
    record->listing.title = t->listing->title;
    const struct listing *again = listing_draft(t->arena, t->drafter, record, &t->options);
    HOLDS(t, again->given && again->given->score.earned == again->worth, "as the record's own it earns else");
    HOLDS(t, !again->given->less_count, "against it: %s", again->given->less[0]);
}

static void check_lawful(struct trial *t) {
    const struct title_problem *p = &t->plan->problem;
    int *spelling = arena_array(t->arena, p->phrase_count + 1, sizeof *spelling);
    bool *rollup = arena_array(t->arena, p->rollup_count + 1, sizeof *rollup);
    random_choice(t, spelling, rollup);
    int64_t worth;
    size_t length, missed = SIZE_MAX;
    ck_assert(title_worth(p, spelling, rollup, &worth, &length));
    struct parts parts = parts_of(t, spelling, rollup);
    for (int i = 0; i < SHUFFLES; i++) {
        shuffle(&t->dice, &parts);
        const char *title = joined(t->arena, &parts);
        struct given_title g = given(t, title);
        HOLDS(t, g.earned <= g.best, "'%s' earns %lld of %lld", title, (long long)g.earned,
              (long long)g.best);
        HOLDS(t, g.earned >= worth, "'%s' earns %lld, its choice %lld", title, (long long)g.earned,
              (long long)worth);
        HOLDS(t, !g.miss_count || g.misses[0].kind != MISS_MUST, "'%s' is said not to tell '%s'", title,
              g.misses[0].text);
        HOLDS(t, missed == SIZE_MAX || missed == searches_missed(&g),
              "the order of '%s' changes its searches", title);
        missed = searches_missed(&g);
        struct given_title more = given(t, arena_format(t->arena, "%s Zquoxx", title)),
                           before = given(t, arena_format(t->arena, "Zquoxx %s", title));
        HOLDS(t, more.earned == g.earned, "an idle word behind '%s' changes what it earns", title);
        HOLDS(t, before.cut || before.earned <= g.earned, "an idle word before '%s' raises what it earns",
              title);
    }
}

// --- every reading tried ---

struct spot {
    size_t phrase, spelling, at, count; // phrase behind the plan's: a roll-up
    bool exact;
};

struct tried {
    struct trial *t;
    const char *words[TRIED_WORDS], *stems[TRIED_WORDS];
    size_t count;
    struct spot spots[200];
    size_t spot_count;
    int spelling[200];
    bool rollup[ROLLUP_COUNT];
    bool taken[TRIED_WORDS];
    int64_t accounted;
    bool any;
    int64_t best[3]; // musts told, words accounted for, worth of what is told
};

static size_t split(struct arena *arena, const char *text, const char **words, size_t room) {
    size_t count = 0;
    for (const char *c = text; *c;) {
        size_t n = strcspn(c, " ");
        if (n) {
            if (count == room) return room + 1;
            words[count++] = arena_copy(arena, c, n);
        }
        c += n + (c[n] == ' ');
    }
    return count;
}

static bool plain(const char *text) {
    for (; *text; text++)
        if (*text != ' ' && !(*text >= 'a' && *text <= 'z') && !(*text >= 'A' && *text <= 'Z')) return false;
    return true;
}

static void add_spots(struct tried *x, size_t phrase, size_t spelling, const char *text) {
    const char *words[TRIED_WORDS];
    size_t n = split(x->t->arena, text, words, TRIED_WORDS);
    for (size_t at = 0; n <= TRIED_WORDS && at + n <= x->count; at++) {
        bool same = true, exact = true;
        for (size_t i = 0; i < n; i++) {
            const char *fold = utf8_fold(x->t->arena, words[i]);
            same = same && !strcmp(say_stem(x->t->arena, fold), x->stems[at + i]);
            exact = exact && !strcmp(fold, utf8_fold(x->t->arena, x->words[at + i]));
        }
        if (same && x->spot_count < 200)
            x->spots[x->spot_count++] = (struct spot){phrase, spelling, at, n, exact};
    }
}

static const struct title_spelling *spelling_of(const struct tried *x, const struct spot *spot) {
    const struct title_problem *p = &x->t->plan->problem;
    return spot->phrase < p->phrase_count ? &p->phrases[spot->phrase].spellings[spot->spelling]
                                          : &p->rollups[spot->phrase - p->phrase_count];
}

static void weigh_reading(struct tried *x, const bool *used) {
    const struct title_problem *p = &x->t->plan->problem;
    int64_t value[3] = {0, x->accounted, 0};
    for (size_t i = 0; i < p->phrase_count; i++) {
        int rollup = p->phrases[i].rollup;
        value[0] += p->phrases[i].must && (x->spelling[i] >= 0 || (rollup >= 0 && x->rollup[rollup]));
    }
    for (size_t i = 0; i < x->spot_count; i++)
        if (used[i]) value[2] += spelling_of(x, &x->spots[i])->tells - spelling_of(x, &x->spots[i])->cost;
    int order = 0;
    for (int k = 0; k < 3 && !order; k++) order = (value[k] > x->best[k]) - (value[k] < x->best[k]);
    if (x->any && order <= 0) return;
    x->any = true;
    memcpy(x->best, value, sizeof value);
}

static bool clashes(const struct tried *x, const bool *used, size_t next) {
    const struct title_spelling *s = spelling_of(x, &x->spots[next]);
    for (size_t i = 0; i < x->spot_count; i++) {
        if (!used[i]) continue;
        if (x->spots[i].phrase == x->spots[next].phrase) return true;
        const struct title_spelling *o = spelling_of(x, &x->spots[i]);
        for (size_t a = 0; a < s->word_count; a++)
            for (size_t b = 0; b < o->word_count; b++)
                if (s->words[a] == o->words[b]) return true;
    }
    for (size_t k = 0; k < x->spots[next].count; k++)
        if (x->taken[x->spots[next].at + k]) return true;
    return false;
}

static void set_spot(struct tried *x, const struct spot *spot, bool on) {
    size_t phrases = x->t->plan->problem.phrase_count;
    if (spot->phrase < phrases)
        x->spelling[spot->phrase] = on ? (int)spot->spelling : -1;
    else
        x->rollup[spot->phrase - phrases] = on;
    for (size_t k = 0; k < spot->count; k++) x->taken[spot->at + k] = on;
    int64_t weight = (int64_t)spot->count * (spot->exact ? 2 : 1);
    x->accounted += on ? weight : -weight;
}

// Word by word: one of the phrases that begin here, or none.
static void try_from(struct tried *x, bool *used, size_t at) {
    if (at == x->count) {
        weigh_reading(x, used);
        return;
    }
    try_from(x, used, at + 1);
    for (size_t i = 0; i < x->spot_count; i++) {
        if (x->spots[i].at != at || clashes(x, used, i)) continue;
        used[i] = true;
        set_spot(x, &x->spots[i], true);
        try_from(x, used, at + x->spots[i].count);
        set_spot(x, &x->spots[i], false);
        used[i] = false;
    }
}

static void value_of_reading(const struct trial *t, const struct given_reading *r, int64_t value[3]) {
    const struct title_problem *p = &t->plan->problem;
    memset(value, 0, 3 * sizeof *value);
    for (size_t i = 0; i < p->phrase_count; i++) {
        int rollup = p->phrases[i].rollup;
        value[0] += p->phrases[i].must && (r->spelling[i] >= 0 || (rollup >= 0 && r->rollup[rollup]));
        if (r->spelling[i] >= 0)
            value[2] +=
                p->phrases[i].spellings[r->spelling[i]].tells - p->phrases[i].spellings[r->spelling[i]].cost;
    }
    for (size_t i = 0; i < p->rollup_count; i++)
        if (r->rollup[i]) value[2] += p->rollups[i].tells - p->rollups[i].cost;
    for (size_t i = 0; i < r->count; i++) value[1] += r->words[i].told;
}

// Fewer words than the best reading has are accounted for in no other way that tells as many musts.
static void check_reading(struct trial *t, const char *title) {
    struct tried x = {.t = t};
    x.count = split(t->arena, title, x.words, TRIED_WORDS);
    if (x.count > TRIED_WORDS || t->plan->count > 200) return;
    for (size_t i = 0; i < x.count; i++) x.stems[i] = say_stem(t->arena, utf8_fold(t->arena, x.words[i]));
    memset(x.spelling, -1, sizeof x.spelling);
    for (size_t i = 0; i < t->plan->count; i++)
        for (size_t k = 0; k < t->plan->phrases[i].count; k++)
            if (plain(t->plan->phrases[i].spellings[k].text))
                add_spots(&x, i, k, t->plan->phrases[i].spellings[k].text);
    for (int r = 0; r < ROLLUP_COUNT; r++)
        if (t->plan->rollup_index[r] >= 0)
            add_spots(&x, t->plan->count + (size_t)t->plan->rollup_index[r], 0, t->plan->rollup_text[r]);
    bool used[200] = {false};
    try_from(&x, used, 0);
    struct given_reading reading = given_read(t->arena, t->plan, title);
    int64_t value[3], exact = 0;
    value_of_reading(t, &reading, value);
    for (size_t i = 0; i < x.spot_count; i++) exact += x.spots[i].exact ? 0 : 1;
    HOLDS(t, value[0] == x.best[0], "'%s': %lld musts told, %lld could be", title, (long long)value[0],
          (long long)x.best[0]);
    // Where nothing stands in another inflection, two a word.
    HOLDS(t, exact || 2 * value[1] == x.best[1], "'%s': %lld words, %lld could be", title,
          (long long)value[1], (long long)x.best[1] / 2);
    HOLDS(t, exact || value[2] == x.best[2], "'%s': worth %lld, %lld could be", title, (long long)value[2],
          (long long)x.best[2]);
}

// Words of the plan in any order, some twice, some in capitals, some that nobody knows.
static const char *random_title(struct trial *t) {
    static const char *const strange[] = {"Zquoxx", "for", "of", "and", "WOW", "old", "with"};
    struct parts parts = {.count = 0};
    size_t wanted = 1 + dice_roll(&t->dice, TRIED_WORDS - 1);
    for (size_t tries = 0; parts.count < wanted && tries < 40; tries++) {
        if (dice_roll(&t->dice, 4) == 0) {
            parts.at[parts.count++] = PICK(&t->dice, strange);
            continue;
        }
        const struct plan_phrase *phrase = &t->plan->phrases[dice_roll(&t->dice, (uint32_t)t->plan->count)];
        const char *text = phrase->spellings[dice_roll(&t->dice, (uint32_t)phrase->count)].text;
        const char *words[TRIED_WORDS];
        size_t n = split(t->arena, text, words, TRIED_WORDS);
        if (!plain(text) || n > TRIED_WORDS) continue;
        size_t only = dice_roll(&t->dice, 3) ? n : dice_roll(&t->dice, (uint32_t)n);
        for (size_t i = 0; i < n && parts.count < wanted; i++)
            if (only == n || only == i) parts.at[parts.count++] = words[i];
    }
    return joined(t->arena, &parts);
}

static void check_random(struct trial *t) {
    for (int i = 0; i < SHUFFLES; i++) {
        const char *title = random_title(t);
        struct given_title g = given(t, title);
        HOLDS(t, g.earned >= 0 && g.best == (t->choice.feasible ? t->choice.worth : 0),
              "'%s' earns %lld of %lld", title, (long long)g.earned, (long long)g.best);
        HOLDS(t, count_text(g.at, strlen(g.at), t->options.unit) <= t->options.limit, "'%s' counts too long",
              g.at);
        HOLDS(t, g.cut == (strcmp(g.at, title) != 0) && !strncmp(title, g.at, strlen(g.at)),
              "'%s' is no beginning", g.at);
        if (g.cut)
            HOLDS(t, given(t, g.at).earned == g.earned, "'%s' earns more than what counts of it", title);
        HOLDS(t, g.miss_count || !t->choice.feasible || g.earned >= g.best,
              "'%s' misses nothing and earns less", title);
        check_reading(t, title);
    }
}

// --- records ---

static void check_record(struct arena *arena, void *context) {
    struct trial *t = context;
    t->arena = arena;
    t->dice = (struct dice){0xD1B54A32D192ED03u * (t->number + 1) | 1};
    for (int i = 0; i < 8; i++) dice_roll(&t->dice, 2);
    t->tree = random_record(arena, &t->dice, t->drafter->rules, t->number);
    t->record = read_made(arena, t->drafter->rules, t->tree);
    t->options = (struct title_options){limits[t->number % 3], (enum count_unit)(t->number / 3 % 3),
                                        LOCALE_US, t->drafter->variants};
    t->listing = listing_draft(arena, t->drafter, t->record, &t->options);
    t->plan = t->listing->plan;
    t->choice = t->listing->choice;
    if (t->choice.feasible) {
        check_drafted(t);
        check_lawful(t);
    }
    check_random(t);
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

START_TEST(given_titles_keep_the_laws) {
    size_t chunk = (size_t)_i;
    within(check_chunk, &chunk);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("title.given");
    TCase *tests = tcase_create("laws");
    tcase_set_timeout(tests, 300);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_loop_test(tests, given_titles_keep_the_laws, 0, CHUNKS);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
