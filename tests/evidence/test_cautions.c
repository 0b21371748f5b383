// SPDX-License-Identifier: MIT
// Safety and law: what raises a caution and what does not, that one more fact never takes one away, and that
// goods under one that stops get neither title nor description.
#include "../rules/records.h"
#include "../rules/phrases_once.h"
#include "caution_more.h"

#include "evidence/cautions.h"
#include "notes/read.h"

enum { GROWING_RECORDS = 10000, GROWING_AT_ONCE = 200 };

static const struct title_options usual = {80, COUNT_GRAPHEMES, LOCALE_US, NULL};

static const struct listing *draft_note(struct arena *arena, const struct drafter *drafter,
                                        const char *text) {
    struct note_reader reader = {
        .rules = drafter->rules, .phrases = phrases_once(), .scanner = drafter->scanner, .locale = LOCALE_US};
    struct record given = {.id = "a", .notes = text};
    struct notes notes = notes_open(arena, &reader, &given);
    const struct note_read *read = notes_read(arena, &reader, &notes, 0);
    return listing_draft(arena, drafter, &read->record, &usual);
}

static bool has(const struct cautions *cautions, const char *id) {
    for (size_t i = 0; i < cautions->count; i++)
        if (!strcmp(cautions->items[i].caution->rule.id, id)) return true;
    return false;
}

static const char *ids(struct arena *arena, const struct cautions *cautions) {
    struct buf out = buf_start(arena);
    for (size_t i = 0; i < cautions->count; i++)
        buf_format(&out, " %s (%s)", cautions->items[i].caution->rule.id, cautions->items[i].because);
    return out.at;
}

struct one_note {
    const char *notes, *id; // id NULL: nothing is to be raised
    size_t raised;
    bool stop;
};

static void check_note(struct arena *arena, void *context) {
    struct one_note *one = context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    const struct cautions *cautions = draft_note(arena, &drafter, one->notes)->cautions;
    one->raised = cautions->count;
    one->stop = cautions->stop;
    if (one->id)
        ck_assert_msg(has(cautions, one->id), "%s\n  not %s:%s", one->notes, one->id, ids(arena, cautions));
    else
        ck_assert_msg(!cautions->stop, "%s\n %s", one->notes, ids(arena, cautions));
}

START_TEST(each_subject_is_found_in_sellers_words) {
    const struct ruleset *rules = shipped_once()->rules;
    size_t count = sizeof CAUTION_NOTES / sizeof *CAUTION_NOTES;
    for (size_t i = 0; i < count; i++) {
        struct one_note one = {CAUTION_NOTES[i].notes, CAUTION_NOTES[i].id, 0, false};
        within(check_note, &one);
    }
    for (size_t i = 0; i < sizeof CAUTION_MORE / sizeof *CAUTION_MORE; i++) {
        struct one_note one = {CAUTION_MORE[i].notes, CAUTION_MORE[i].id, 0, false};
        within(check_note, &one);
    }
    for (size_t i = 0; i < rules->caution_count; i++) {
        size_t cases = 0;
        for (size_t k = 0; k < count; k++) cases += !strcmp(CAUTION_NOTES[k].id, rules->cautions[i]->rule.id);
        ck_assert_msg(cases >= 2, "%s has %zu cases", rules->cautions[i]->rule.id, cases);
    }
    ck_assert_uint_ge(rules->caution_count, 50);
}
END_TEST

START_TEST(harmless_words_raise_nothing) {
    size_t count = sizeof BENIGN_NOTES / sizeof *BENIGN_NOTES, raised = 0;
    for (size_t i = 0; i < count; i++) {
        struct one_note one = {BENIGN_NOTES[i], NULL, 0, false};
        within(check_note, &one);
        raised += one.raised > 0;
    }
    for (size_t i = 0; i < sizeof BENIGN_MORE / sizeof *BENIGN_MORE; i++, count++) {
        struct one_note one = {BENIGN_MORE[i], NULL, 0, false};
        within(check_note, &one);
        raised += one.raised > 0;
    }
    ck_assert_uint_ge(count, 60);
    ck_assert_msg(raised * 50 <= count, "%zu of %zu", raised, count);
}
END_TEST

static const struct {
    const char *record, *raised, *not_raised; // ids; NULL: any
} records[] = {
    {"type: blouse\nattributes: {color: ivory}\n", NULL, "ivory"},
    {"type: box\nattributes: {material: ivory}\n", "ivory", NULL},
    {"type: fork\nattributes: {material: [{value: ivory, of: handle}]}\n", "ivory", NULL},
    {"type: lamp\nattributes: {brand: Mercury}\n", NULL, "mercury"},
    {"type: tin\nmarks: [RADIUM OINTMENT]\n", "radium", NULL},
    {"type: lamp\nflaws: [cord-frayed]\n", "mains-cord", NULL},
    {"type: lamp\nclear: [{kind: cord-frayed}]\n", NULL, "mains-cord"},
    {"type: {value: case, others: [pocket knife]}\n", "knife", NULL},
    {"type: hamper\nincludes: [paring knife]\n", "knife", NULL},
    {"type: knife rest\n", NULL, "knife"},
    {"type: steak knives\n", "knife", NULL},
    {"type: coat\nattributes: {audience: children}\nincludes: [hood drawstring]\n", "drawstring", NULL},
    {"type: coat\nattributes: {audience: men}\nincludes: [hood drawstring]\n", NULL, "drawstring"},
    {"type: lamp\nfamily: lighting\nflaws: [water-damage]\n", "damp-electrics", NULL},
    {"type: book\nfamily: books\nflaws: [water-damage]\n", NULL, "damp-electrics"},
    {"type: tin\nnotes: bought by a man with an ivory tusk at the door\nasides: [[0, 46]]\n", NULL, "ivory"},
    {"type: tin\nnotes: bought by a man with an ivory tusk at the door\n", "ivory", NULL},
    {"type: tin\nasides: [[0, 4], [900, 2000], [5, 1]]\nnotes: it holds gunpowder\n", "ammunition", NULL},
    {"type: tray\nnotes: it is not asbestos, nor is there any lead crystal\n", NULL, "asbestos"},
    {"type: tray\nnotes: not sure if it is asbestos\n", "asbestos", NULL},
    {"type: tray\nnotes: spotted like a leopard skin\n", NULL, "protected-species"},
    {"type: tray\nnotes: looks like asbestos to me\n", "asbestos", NULL},
    {"type: box\nnotes: a box for live ammunition\n", NULL, "ammunition"},
};

static void check_records(struct arena *arena, void *context) {
    (void)context;
    const struct ruleset *rules = shipped_once()->rules;
    for (size_t i = 0; i < sizeof records / sizeof *records; i++) {
        struct diags diags = diags_start(arena);
        struct record record;
        ck_assert_msg(record_of(arena, rules, records[i].record, &record, &diags), "%s",
                      printed(arena, &diags));
        const struct cautions *cautions =
            cautions_raise(arena, scanner_new(arena, rules->finder_count), rules, &record);
        ck_assert_msg(!records[i].raised || has(cautions, records[i].raised), "%s\n%s", records[i].record,
                      ids(arena, cautions));
        ck_assert_msg(!records[i].not_raised || !has(cautions, records[i].not_raised), "%s\n%s",
                      records[i].record, ids(arena, cautions));
    }
}

START_TEST(a_record_raises_by_what_it_says) {
    within(check_records, NULL);
}
END_TEST

// --- one more fact ---

static const char *caution_word(struct dice *dice, const struct ruleset *rules) {
    const struct caution *caution = rules->cautions[dice_roll(dice, (uint32_t)rules->caution_count)];
    const struct texts *words = dice_roll(dice, 3)         ? &caution->finder.said
                                : caution->with.said.count ? &caution->with.said
                                                           : &caution->finder.unless;
    if (!words->count) words = &caution->finder.said;
    return words->at[dice_roll(dice, (uint32_t)words->count)];
}

static struct node *list_in(struct arena *arena, struct node *record, const char *key) {
    struct node *list = (struct node *)(uintptr_t)node_get(record, key);
    if (list) return list;
    list = node_list(arena);
    node_put(arena, record, key, list);
    return list;
}

static struct node *with_word(struct arena *arena, const char *key, const char *word) {
    struct node *map = node_map(arena);
    put_word(arena, map, key, word);
    return map;
}

static void add_attribute(struct arena *arena, struct node *record, const char *word, uint32_t which) {
    static const char *const names[] = {"material", "color", "style", "theme", "finish", "technique"};
    struct node *attributes = (struct node *)(uintptr_t)node_get(record, "attributes");
    if (!attributes) {
        attributes = node_map(arena);
        node_put(arena, record, "attributes", attributes);
    }
    const char *name = names[which % (sizeof names / sizeof *names)];
    struct node *old = (struct node *)(uintptr_t)node_get(attributes, name);
    if (!old || old->kind == NODE_LIST)
        node_push(arena, list_in(arena, attributes, name), with_word(arena, "value", word));
}

// Adds one fact to the tree of a record, often in words that a caution looks for.
static void add_fact(struct arena *arena, struct dice *dice, const struct ruleset *rules,
                     struct node *record) {
    const char *word = caution_word(dice, rules);
    uint32_t which = dice_roll(dice, 9);
    if (which == 0) node_push(arena, list_in(arena, record, "flaws"), random_flaw(arena, dice, rules, 1));
    if (which == 1) node_push(arena, list_in(arena, record, "includes"), node_text(arena, word));
    if (which == 2) node_push(arena, list_in(arena, record, "marks"), node_text(arena, word));
    if (which == 3 && !node_get(record, "type")) put_word(arena, record, "type", word);
    if (which == 4 && !node_get(record, "family"))
        put_word(arena, record, "family",
                 rules->families[dice_roll(dice, (uint32_t)rules->family_count)]->rule.id);
    if (which == 5 && !node_get(record, "notes")) put_word(arena, record, "notes", word);
    if (which == 6) {
        struct node *fit = with_word(arena, "brand", "Pellander");
        put_word(arena, fit, "model", word);
        node_push(arena, list_in(arena, record, "fits"), fit);
    }
    if (which >= 7) add_attribute(arena, record, word, dice_roll(dice, 6));
}

struct growing {
    struct dice dice;
    struct scanner *scanner;
    size_t number, grown, held;
};

static const struct cautions *cautions_of(struct arena *arena, const struct growing *growing,
                                          const struct node *tree) {
    const struct ruleset *rules = shipped_once()->rules;
    return cautions_raise(arena, growing->scanner, rules, read_made(arena, rules, tree));
}

static void check_one(struct arena *arena, struct growing *growing) {
    const struct ruleset *rules = shipped_once()->rules;
    struct node *tree = random_record(arena, &growing->dice, rules, growing->number);
    add_fact(arena, &growing->dice, rules, tree);
    const char *before_tree = yaml_of(arena, tree);
    const struct cautions *before = cautions_of(arena, growing, tree);
    add_fact(arena, &growing->dice, rules, tree);
    const struct cautions *after = cautions_of(arena, growing, tree);
    for (size_t i = 0; i < before->count; i++)
        ck_assert_msg(has(after, before->items[i].caution->rule.id), "%s is gone\n%s\n->\n%s",
                      before->items[i].caution->rule.id, before_tree, yaml_of(arena, tree));
    growing->grown += after->count > before->count;
    growing->held += before->count > 0;
}

// A scanner compiles what it meets once, for this many records.
static void check_growing(struct arena *arena, void *context) {
    struct growing *growing = context;
    growing->scanner = scanner_new(arena, shipped_once()->rules->finder_count);
    for (size_t i = 0; i < GROWING_AT_ONCE; i++, growing->number++) check_one(arena, growing);
}

START_TEST(one_more_fact_takes_no_caution_away) {
    struct growing growing = {.dice = {0x5EED0FCA}};
    while (growing.number < GROWING_RECORDS) {
        struct arena *arena = arena_new(NULL);
        ck_assert(arena_try(arena, check_growing, &growing));
        arena_free(arena);
    }
    ck_assert_uint_ge(growing.grown, 600);
    ck_assert_uint_ge(growing.held, 1000);
}
END_TEST

// --- what stops ---

static bool says(struct arena *arena, const char *text, const char *word) {
    return text && strstr(utf8_fold(arena, text), word) != NULL;
}

static void check_held(struct arena *arena, const struct listing *l, const char *what) {
    ck_assert_msg(l->cautions->stop, "%s stops nothing", what);
    ck_assert_str_eq(l->title, "");
    ck_assert_str_eq(l->description, "");
    ck_assert_uint_eq(l->title_length + l->word_count + l->alternate_count + l->left_count, 0);
    ck_assert_int_eq(l->worth, 0);
    ck_assert(listing_has_must(l));
    bool told = false;
    for (size_t i = 0; i < l->withheld_count; i++) told |= !strcmp(l->withheld[i].what, "the whole listing");
    ck_assert_msg(told, "%s", what);
    struct buf card = buf_start(arena), page = buf_start(arena);
    listing_card(arena, l, &card, false);
    listing_page(arena, l, &page);
    ck_assert(strstr(card.at, "\nTake care\n  not to be listed: ") && !strstr(card.at, "\nDescription\n"));
    ck_assert(strstr(page.at, "<h3>Take care</h3>") && strstr(page.at, "<li>Not to be listed: "));
    ck_assert(!says(arena, card.at, "for display") && !says(arena, card.at, "for parts"));
}

static void check_stops(struct arena *arena, void *context) {
    size_t *stops = context;
    const struct ruleset *rules = shipped_once()->rules;
    struct drafter drafter = drafter_in(arena, shipped_once());
    for (size_t i = 0; i < rules->caution_count; i++) {
        const struct caution *caution = rules->cautions[i];
        if (!caution->stop) continue;
        ++*stops;
        ck_assert_ptr_nonnull(caution->rule.source);
        for (size_t k = 0; k < caution->finder.said.count; k++) {
            struct item_included beside = {.what =
                                               caution->with.said.count ? caution->with.said.at[0] : "lid"};
            const struct record record = {.id = "a",
                                          .type = {.value = "box"},
                                          .notes = caution->finder.said.at[k],
                                          .includes = &beside,
                                          .include_count = 1,
                                          .listing = {.title = "Old box for display"}};
            const struct listing *l = listing_draft(arena, &drafter, &record, &usual);
            ck_assert_msg(has(l->cautions, caution->rule.id), "%s: %s", caution->rule.id,
                          caution->finder.said.at[k]);
            check_held(arena, l, caution->finder.said.at[k]);
            ck_assert_ptr_null(l->given);
        }
    }
}

START_TEST(what_stops_gets_no_title_and_no_description) {
    size_t stops = 0;
    within(check_stops, &stops);
    ck_assert_uint_ge(stops, 12);
}
END_TEST

static void check_tree(struct arena *arena, void *context) {
    (void)context;
    const struct listing *l =
        draft_of(arena, shipped_once(),
                 "type: crib\nfamily: furniture\nnotes: a drop side crib\nflaws: [scratches]\n");
    const struct node *list = node_get(listing_tree(arena, l), "cautions");
    ck_assert_uint_eq(list->count, l->cautions->count);
    const struct node *first = list->members[0].value;
    bool stop = false;
    ck_assert_str_eq(node_get(first, "id")->text, "drop-side-crib");
    ck_assert(node_bool(node_get(first, "stop"), &stop) && stop);
    ck_assert_str_eq(node_get(first, "source")->text, l->cautions->items[0].caution->rule.source);
    ck_assert_str_eq(node_get(first, "text")->text, l->cautions->items[0].caution->text);
    ck_assert_ptr_nonnull(node_get(first, "span"));
    ck_assert_ptr_nonnull(strstr(l->disclosure.text, "scratches"));
}

START_TEST(the_tree_holds_them_stops_first) {
    within(check_tree, NULL);
}
END_TEST

static bool ends_with(const char *text, const char *end) {
    size_t n = strlen(text), m = strlen(end);
    return n >= m && !strcmp(text + n - m, end);
}

static void check_texts(struct arena *arena, void *context) {
    (void)context;
    static const char *const never[] = {" safe ",    " safe.",    " safe,",      "guarantee", "authentic",
                                        "certainly", " harmless", "for display", "for parts"};
    const struct ruleset *rules = shipped_once()->rules;
    for (size_t i = 0; i < rules->caution_count; i++) {
        const struct caution *caution = rules->cautions[i];
        bool defers = ends_with(caution->text, "ollow local rules.") ||
                      (strstr(caution->text, "have a licensed ") && ends_with(caution->text, " look at it."));
        ck_assert_msg(defers, "%s: %s", caution->rule.id, caution->text);
        for (size_t k = 0; k < sizeof never / sizeof *never; k++)
            ck_assert_msg(!says(arena, caution->text, never[k]), "%s: %s", caution->rule.id, never[k]);
        ck_assert_ptr_nonnull(caution->rule.source);
        ck_assert_uint_ge(caution->rule.hits.count, 2);
        ck_assert_uint_ge(caution->rule.misses.count, 2);
    }
}

START_TEST(every_text_ends_by_deferring) {
    within(check_texts, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("evidence.cautions");
    TCase *tests = tcase_create("cautions");
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_set_timeout(tests, 300);
    tcase_add_test(tests, each_subject_is_found_in_sellers_words);
    tcase_add_test(tests, harmless_words_raise_nothing);
    tcase_add_test(tests, a_record_raises_by_what_it_says);
    tcase_add_test(tests, one_more_fact_takes_no_caution_away);
    tcase_add_test(tests, what_stops_gets_no_title_and_no_description);
    tcase_add_test(tests, the_tree_holds_them_stops_first);
    tcase_add_test(tests, every_text_ends_by_deferring);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
