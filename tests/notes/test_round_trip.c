// SPDX-License-Identifier: MIT
// The round trip: the type and the drafted disclosure, read as a note, give back the flaws, what is clear and
// what is unchecked of the record that they were drafted from. First every kind with and without part, place,
// number and degree; then whole records at random. What differs is counted by cause.
#include "../rules/records.h"

#include "item/wording.h"
#include "notes/read.h"

enum { RECORDS = 6000, CHUNKS = 10, SHOWN = 12 };

struct fact { // as it has to come back
    const char *kind, *part, *where;
    int count, of, severity, sure;
    const char *size;
};

struct trial {
    struct arena *arena;
    const struct drafter *drafter;
    const struct note_reader *reader;
    const struct record *record;
    enum locale locale;
    size_t number;
    const char *difference; // empty when it came back whole
};

enum cause { MISSED, EXTRA, WHERE, PART, COUNT, OF, SIZE, SEVERITY, SURE, CLEAR, UNCHECKED, ITEMS, CAUSES };
static const char *const cause_names[] = {"kind missed", "kind extra", "where",     "part",
                                          "count",       "of",         "size",      "severity",
                                          "sure",        "clear",      "unchecked", "items"};

struct tally {
    size_t records, whole, causes[CAUSES];
    int shown;
};

static bool same(const char *a, const char *b) {
    return (!a && !b) || (a && b && !strcmp(a, b));
}

static const char *spelled(const struct trial *t, const char *text) {
    return text ? say_spelling(t->arena, t->drafter->variants, text, t->locale) : NULL;
}

// --- the facts of a record as one phrase can hold them ---

// What is missing, where it is told by its part: "the hinge is missing" is all that is said of any kind of
// absence.
static const char *missing_part(const struct trial *t, const struct item_flaw *flaw) {
    const struct flaw *kind = flaw->kind;
    if (kind->form != ABSENCE) return NULL;
    const char *part = flaw->part ? flaw->part : !kind->says || flaw->count ? kind->part : NULL;
    return part ? spelled(t, say_singular(t->arena, part)) : NULL;
}

// "The sole has wear" is sole wear: beside a part with which the noun of another kind begins, the noun alone
// is that kind's.
static const struct flaw *class_of(const struct trial *t, const struct flaw *kind, const char *part) {
    if (kind->form != FAULT || !part || !kind->noun) return kind;
    const char *head = strrchr(part, ' ');
    const char *noun = arena_format(t->arena, "%s %s", head ? head + 1 : part, kind->noun);
    for (size_t i = 0; i < t->drafter->rules->flaw_count; i++) {
        const struct flaw *other = t->drafter->rules->flaws[i];
        if (other->form == FAULT && !strcmp(other->noun, noun)) return other;
    }
    return kind;
}

static struct fact fact_of(const struct trial *t, const struct item_flaw *flaw) {
    bool many = flaw->of > 1, state = flaw->kind->form == STATE && flaw->count;
    const char *missing = missing_part(t, flaw);
    bool itself = flaw->part && flaw->where && !strcmp(flaw->part, flaw->where);
    struct fact fact = {.kind = missing ? "absence" : class_of(t, flaw->kind, flaw->part)->rule.id,
                        .part = missing ? missing : spelled(t, flaw->part),
                        .where = flaw->where && !itself ? spelled(t, say_place(t->arena, flaw->where)) : NULL,
                        .count = flaw->count,
                        .of = many ? flaw->of : 0,
                        .severity = (int)flaw->severity,
                        .sure = flaw->sure != SURE_STATED};
    const char *type = t->record->type.value;
    if (type && fact.part && !missing && !strcmp(type, say_singular(t->arena, fact.part)))
        fact.part = NULL;                                                          // the knob of a knob
    if ((many || state) && fact.part) fact.part = say_plural(t->arena, fact.part); // "one of the handles"
    if (flaw->has_size)
        fact.size = arena_format(t->arena, "%s%s", flaw->size.about ? "about " : "",
                                 say_both(t->arena, flaw->size.value, flaw->size.unit, t->locale));
    return fact;
}

static bool same_fact(const struct fact *a, const struct fact *b) {
    return !strcmp(a->kind, b->kind) && same(a->part, b->part) && same(a->where, b->where) &&
           a->count == b->count && a->of == b->of && a->severity == b->severity && a->sure == b->sure &&
           same(a->size, b->size);
}

struct facts {
    struct fact at[64];
    size_t count;
};

static void add_fact(struct facts *facts, struct fact fact) {
    for (size_t i = 0; i < facts->count; i++)
        if (same_fact(&facts->at[i], &fact)) return; // said twice, told once
    ck_assert_uint_lt(facts->count, 64);
    facts->at[facts->count++] = fact;
}

static struct facts flaws_of(const struct trial *t, const struct record *record) {
    struct facts facts = {.count = 0};
    for (size_t i = 0; i < record->flaw_count; i++) add_fact(&facts, fact_of(t, &record->flaws[i]));
    return facts;
}

static struct facts clear_of(const struct trial *t, const struct record *record) {
    struct facts facts = {.count = 0};
    for (size_t i = 0; i < record->clear_count; i++) {
        const struct flaw *kind = record->clear[i].kind;
        struct item_flaw flaw = {
            .kind = kind, .part = record->clear[i].part, .where = record->clear[i].where};
        size_t n = flaw.part ? strlen(flaw.part) : 0;
        bool held = n && kind->form == FAULT && wording_sought_holds_part(kind, flaw.part);
        if (held && kind->mass) flaw.part = say_singular(t->arena, flaw.part); // "strap damage"
        if (held && !strncmp(kind->noun, flaw.part, n) && kind->noun[n] == ' ' && !strstr(kind->noun, " or "))
            flaw.part = NULL; // the lining of "lining damage"
        add_fact(&facts, fact_of(t, &flaw));
    }
    return facts;
}

static struct facts unchecked_of(const struct trial *t, const struct record *record) {
    struct facts facts = {.count = 0};
    for (size_t i = 0; i < record->unchecked.count; i++)
        add_fact(&facts, (struct fact){.kind = spelled(t, record->unchecked.at[i])});
    return facts;
}

// --- comparing ---

static void note_cause(struct trial *t, struct tally *tally, enum cause cause, const char *what) {
    tally->causes[cause]++;
    t->difference = arena_format(t->arena, "%s  %s: %s\n", t->difference, cause_names[cause], what);
}

static void compare_fields(struct trial *t, struct tally *tally, const struct fact *want,
                           const struct fact *got) {
    if (!same(want->where, got->where)) note_cause(t, tally, WHERE, want->kind);
    if (!same(want->part, got->part)) note_cause(t, tally, PART, want->kind);
    if (want->count != got->count) note_cause(t, tally, COUNT, want->kind);
    if (want->of != got->of) note_cause(t, tally, OF, want->kind);
    if (!same(want->size, got->size)) note_cause(t, tally, SIZE, want->kind);
    if (want->severity != got->severity) note_cause(t, tally, SEVERITY, want->kind);
    if (want->sure != got->sure) note_cause(t, tally, SURE, want->kind);
}

static void drop(struct facts *facts, size_t i) {
    facts->at[i] = facts->at[--facts->count];
}

static void drop_equal(struct facts *a, struct facts *b) {
    for (size_t i = a->count; i-- > 0;)
        for (size_t k = 0; k < b->count; k++) {
            if (!same_fact(&a->at[i], &b->at[k])) continue;
            drop(a, i);
            drop(b, k);
            break;
        }
}

static void compare_flaws(struct trial *t, struct tally *tally, const struct record *read) {
    struct facts want = flaws_of(t, t->record), got = flaws_of(t, read);
    drop_equal(&want, &got);
    for (size_t i = want.count; i-- > 0;)
        for (size_t k = 0; k < got.count; k++) {
            if (strcmp(want.at[i].kind, got.at[k].kind) != 0) continue;
            compare_fields(t, tally, &want.at[i], &got.at[k]);
            drop(&want, i);
            drop(&got, k);
            break;
        }
    for (size_t i = 0; i < want.count; i++) note_cause(t, tally, MISSED, want.at[i].kind);
    for (size_t i = 0; i < got.count; i++) note_cause(t, tally, EXTRA, got.at[i].kind);
}

static void compare_lists(struct trial *t, struct tally *tally, struct facts want, struct facts got,
                          enum cause cause) {
    drop_equal(&want, &got);
    for (size_t i = 0; i < want.count; i++)
        note_cause(t, tally, cause, arena_format(t->arena, "%s missed", want.at[i].kind));
    for (size_t i = 0; i < got.count; i++)
        note_cause(t, tally, cause, arena_format(t->arena, "%s extra", got.at[i].kind));
}

static void round_trip(struct trial *t, struct tally *tally) {
    struct disclosure told =
        disclosure_write(t->arena, t->drafter->rules, t->record, t->locale, t->drafter->variants);
    const char *type = t->record->type.value ? arena_format(t->arena, "%s. ", t->record->type.value) : "";
    const char *text = arena_format(t->arena, "%s%s", type, told.text);
    struct note_reader reader = *t->reader;
    reader.locale = t->locale;
    struct record given = {.id = "a", .notes = text};
    struct notes notes = notes_open(t->arena, &reader, &given);
    struct note_read read = *notes_read(t->arena, &reader, &notes, 0);
    t->difference = "";
    if (notes.count != 1) note_cause(t, tally, ITEMS, arena_format(t->arena, "%zu", notes.count));
    const struct record *back = &read.record;
    compare_flaws(t, tally, back);
    compare_lists(t, tally, clear_of(t, t->record), clear_of(t, back), CLEAR);
    compare_lists(t, tally, unchecked_of(t, t->record), unchecked_of(t, back), UNCHECKED);
    tally->records++;
    if (!*t->difference) {
        tally->whole++;
    } else if (tally->shown++ < SHOWN) {
        fprintf(stderr, "%s\n%s", text, t->difference);
    }
}

static const char declared[] =
    "one phrase tells apart no two of these:\n"
    "  kinds of absence, where the same part is named: 'The hinge is missing'\n"
    "  how it is clear (denied, none-seen): 'No chips seen'\n"
    "  a place with and without the preposition it takes by itself: 'rim', 'on the rim'\n"
    "  one and several of a part that is counted: 'two of the six handles'\n"
    "  a part with the name of the thing itself, and the thing; one piece of one, and one\n"
    "  a place that is the part itself, and none\n"
    "  of what was not seen: a part that its noun begins with, and none; one and several straps of 'strap "
    "damage'\n"
    "  the same fault said twice, and once; US and UK spelling\n";

static void print_tally(const char *name, const struct tally *tally) {
    fprintf(stderr, "%s: %zu of %zu came back whole (%.2f %%)", name, tally->whole, tally->records,
            100.0 * (double)tally->whole / (double)tally->records);
    for (int i = 0; i < CAUSES; i++)
        if (tally->causes[i]) fprintf(stderr, "; %s %zu", cause_names[i], tally->causes[i]);
    fprintf(stderr, "\n");
}

// --- the reader ---

static const char *book_path(struct arena *arena) {
    const char *built = getenv("ASFOUND_BUILT");
    return arena_format(arena, "%s/wordbook.bin", built ? built : "build-tests/share/asfound");
}

static struct note_reader reader_in(struct arena *arena, const struct drafter *drafter) {
    struct diags diags = diags_start(arena);
    struct note_reader reader = {.rules = drafter->rules,
                                 .phrases = phrases_new(arena, drafter->rules),
                                 .book = wordbook_open(arena, book_path(arena), &diags),
                                 .scanner = drafter->scanner,
                                 .locale = LOCALE_US};
    ck_assert_msg(reader.book != NULL, "the word book of the build cannot be opened");
    return reader;
}

struct run {
    struct trial trial;
    struct tally *tally;
};

// --- every kind ---

static const char *first_word(struct arena *arena, const struct flaw *kind) {
    const char *words = kind->noun ? kind->noun : kind->part ? kind->part : "rim";
    return arena_copy(arena, words, strcspn(words, " '"));
}

// The pairs that class_of() takes for one, as they stand in the rules.
static void print_classes(struct arena *arena, const struct ruleset *rules) {
    struct drafter drafter = drafter_in(arena, shipped_once());
    struct trial t = {.arena = arena, .drafter = &drafter};
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const char *part = first_word(arena, rules->flaws[i]);
        for (size_t k = 0; k < rules->flaw_count; k++)
            if (class_of(&t, rules->flaws[k], part) == rules->flaws[i] && i != k)
                fprintf(stderr, "  %s and %s of the %s\n", rules->flaws[i]->rule.id, rules->flaws[k]->rule.id,
                        part);
    }
}

static void one_kind(struct arena *arena, void *context) {
    struct run *run = context;
    struct trial *t = &run->trial;
    static const char *const parts[] = {NULL, "lid", "rear handles"};
    static const char *const places[] = {NULL, "rim", "inside", "near the left hinge"};
    static const int counts[][2] = {{0, 0}, {1, 0}, {3, 0}, {1, 6}, {4, 4}, {2, 2}};
    const struct ruleset *rules = t->drafter->rules;
    size_t kind = t->number % rules->flaw_count, at = t->number / rules->flaw_count;
    struct item_flaw flaw = {.kind = rules->flaws[kind],
                             .part = parts[at % 3],
                             .where = places[at / 3 % 4],
                             .count = counts[at / 12 % 6][0],
                             .of = counts[at / 12 % 6][1],
                             .severity = (enum severity)(at / 72 % 4)};
    if (at % 3 == 1 && at % 2 && flaw.kind->parts.count)
        flaw.part = flaw.kind->parts.at[at % flaw.kind->parts.count];
    if (at % 12 == 2 && flaw.kind->noun) flaw.part = first_word(arena, flaw.kind);
    if (at % 12 == 4) // the first word of another kind's noun
        flaw.part = first_word(arena, rules->flaws[at * 31 % rules->flaw_count]);
    const char *last = flaw.kind->noun ? strrchr(flaw.kind->noun, ' ') : NULL;
    if (last && flaw.part && !strcmp(last + 1, flaw.part)) flaw.part = NULL; // the chip of an enamel chip
    const struct family *family = rules->families[t->number * 7 % rules->family_count];
    struct record record = {.family = family, .flaws = &flaw, .flaw_count = 1, .count = at % 5 == 0 ? 6 : 0};
    record.type.value = family->things[at % family->thing_count].noun;
    t->arena = arena;
    t->record = &record;
    t->locale = t->number / 3 % 2 ? LOCALE_GB : LOCALE_US;
    round_trip(t, run->tally);
}

// --- records at random ---

// What sellers write besides: places and parts of two, areas with commas, a kind that is there at one place
// and nowhere else.
static void season(struct arena *arena, struct dice *dice, struct record *record) {
    static const char *const wheres[] = {"rim and base",   "left side, near the spout",
                                         "Inside the lid", "both ends",
                                         "page 12",        "back, top left"};
    static const char *const areas[] = {"the clock, the lock and the keys", "back", "works",
                                        "inside the base"};
    static const char *const parts[] = {"lid", "left handle", "rear feet", "lock and key"};
    for (size_t i = 0; i < record->flaw_count; i++) {
        if (dice_roll(dice, 6) == 0) record->flaws[i].where = PICK(dice, wheres);
        if (dice_roll(dice, 6) == 0) record->flaws[i].part = PICK(dice, parts);
    }
    for (size_t i = 0; i < record->clear_count; i++) {
        if (dice_roll(dice, 4) == 0) record->clear[i].where = PICK(dice, wheres);
        if (dice_roll(dice, 4) == 0) record->clear[i].part = PICK(dice, parts);
        if (dice_roll(dice, 4) == 0 && record->flaw_count) record->clear[i].kind = record->flaws[0].kind;
    }
    if (dice_roll(dice, 3) != 0) return;
    struct texts list = {arena_array(arena, 2, sizeof *list.at), 2};
    list.at[0] = PICK(dice, areas);
    list.at[1] = PICK(dice, areas);
    record->unchecked = list;
}

static void one_record(struct arena *arena, void *context) {
    struct run *run = context;
    struct trial *t = &run->trial;
    struct dice dice = {0x9E3779B97F4A7C15u * (t->number + 1) | 1};
    for (int i = 0; i < 8; i++) dice_roll(&dice, 2);
    t->arena = arena;
    t->locale = t->number % 2 ? LOCALE_GB : LOCALE_US;
    const struct ruleset *rules = t->drafter->rules;
    struct record *record = read_made(arena, rules, random_record(arena, &dice, rules, t->number));
    size_t count;
    if (record->type.value && !ruleset_things(rules, record->type.value, &count)) {
        // "still works fine skillet" says more than what it is
        const struct family *family = rules->families[dice_roll(&dice, (uint32_t)rules->family_count)];
        record->type.value = family->things[0].noun;
    }
    season(arena, &dice, record);
    t->record = record;
    // A seller who wrote that very paragraph gets another: every wording is to come back.
    if (t->number % 3 == 0)
        record->notes = disclosure_write(arena, rules, record, t->locale, t->drafter->variants).text;
    round_trip(t, run->tally);
}

static void run_all(struct arena *arena, const char *name, size_t from, size_t to, size_t step,
                    void (*one)(struct arena *arena, void *context)) {
    struct drafter drafter = drafter_in(arena, shipped_once());
    struct note_reader reader = reader_in(arena, &drafter);
    struct tally tally = {.records = 0};
    struct arena *records = arena_new(NULL);
    for (size_t i = from; i < to; i += step) {
        struct run run = {{.drafter = &drafter, .reader = &reader, .number = i}, &tally};
        ck_assert(arena_try(records, one, &run));
        arena_reset(records);
    }
    arena_free(records);
    print_tally(name, &tally);
    ck_assert_uint_gt(tally.records, 0);
    ck_assert_uint_eq(tally.whole, tally.records);
}

static void check_kinds(struct arena *arena, void *context) {
    size_t kinds = shipped_once()->rules->flaw_count, all = kinds * 3 * 4 * 6 * 4;
    (void)context;
    fprintf(stderr, "%s", declared);
    print_classes(arena, shipped_once()->rules);
    run_all(arena, "every kind", 0, all, 7, one_kind);
}

static void check_records(struct arena *arena, void *context) {
    size_t chunk = *(const size_t *)context, size = RECORDS / CHUNKS;
    run_all(arena, "records at random", chunk * size, (chunk + 1) * size, 1, one_record);
}

START_TEST(every_kind_comes_back) {
    within(check_kinds, NULL);
}
END_TEST

START_TEST(records_come_back) {
    size_t chunk = (size_t)_i;
    within(check_records, &chunk);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("round trip");
    TCase *tests = tcase_create("law");
    tcase_set_timeout(tests, 300);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, every_kind_comes_back);
    tcase_add_loop_test(tests, records_come_back, 0, CHUNKS);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
