// SPDX-License-Identifier: MIT
// Spelling in a draft: words of the seller's that nobody knows are found, with what was meant; names and
// marks are left alone; what the rules print is spelled as dictionaries have it. The dictionaries are those
// of Debian (hunspell-en-us, -gb).
#include "../rules/records.h"

#include "listing/spelling.h"
#include "text/utf8.h"

enum { RECORDS = 10000 };

struct desk {
    struct drafter drafter;
    struct diags diags;
};

// The word book is made when the program is built, and lies beside it.
static const struct wordbook *built_book(struct arena *arena, struct diags *diags) {
    const char *command = getenv("ASFOUND_COMMAND");
    const char *program = command ? command : "build-tests/bin/asfound";
    const char *path = arena_format(arena, "%.*s../share/asfound/wordbook.bin",
                                    (int)(strrchr(program, '/') - program + 1), program);
    const struct wordbook *book = wordbook_open(arena, path, diags);
    ck_assert_msg(book != NULL, "%s is not there: build the target 'wordbook'", path);
    return book;
}

static void set_desk(struct arena *arena, struct desk *desk, enum locale locale, const char *dictionaries,
                     bool book) {
    desk->diags = diags_start(arena);
    desk->drafter = drafter_in(arena, shipped_once());
    const struct source *words = folder_read_file(arena, "dict/trade.txt", 1 << 20, &desk->diags);
    ck_assert_ptr_nonnull(words);
    const struct ruleset *rules = desk->drafter.rules;
    const struct spelling_lists *lists =
        spelling_lists_new(arena, rules, book ? built_book(arena, &desk->diags) : NULL);
    struct spelling_options options = {locale, dictionaries, trade_read(arena, words, &desk->diags), lists,
                                       rules};
    desk->drafter.spelling = spelling_new(arena, &options, &desk->diags);
}

static const struct record *made(struct arena *arena, const struct desk *desk, const char *yaml) {
    struct record *record = arena_alloc(arena, sizeof *record);
    struct diags diags = diags_start(arena);
    ck_assert_msg(record_of(arena, desk->drafter.rules, yaml, record, &diags), "%s", printed(arena, &diags));
    return record;
}

static const struct listing *draft(struct arena *arena, const struct desk *desk, const struct record *record,
                                   enum locale locale) {
    struct title_options options = {80, COUNT_GRAPHEMES, locale, desk->drafter.variants};
    return listing_draft(arena, &desk->drafter, record, &options);
}

static size_t count_findings(const struct listing *l, const char *code) {
    size_t n = 0;
    for (size_t i = 0; i < l->finding_count; i++) n += !strcmp(l->findings[i].code, code);
    return n;
}

static void check_outputs(struct arena *arena, void *context) {
    enum locale locale = *(const enum locale *)context;
    struct desk desk;
    set_desk(arena, &desk, locale, NULL, false);
    for (size_t number = 0; number < RECORDS; number++) {
        struct dice dice = {0x94D049BB133111EBu * (number + 1) | 1};
        for (int i = 0; i < 8; i++) dice_roll(&dice, 2);
        const struct record *record =
            read_made(arena, desk.drafter.rules, random_record(arena, &dice, desk.drafter.rules, number));
        const struct listing *l = draft(arena, &desk, record, locale);
        for (size_t i = 0; i < l->finding_count; i++)
            ck_assert_msg(strcmp(l->findings[i].code, "spelling.output") != 0, "%s\n%s\n%s",
                          l->findings[i].message, l->title, l->description);
    }
    ck_assert_uint_eq(desk.diags.count, 0);
}

START_TEST(outputs_are_spelled_in_us_english) {
    enum locale locale = LOCALE_US;
    within(check_outputs, &locale);
}
END_TEST

START_TEST(outputs_are_spelled_in_british_english) {
    enum locale locale = LOCALE_GB;
    within(check_outputs, &locale);
}
END_TEST

// Slips as people make them (from memory): the word written, the word meant.
static const char *const slips[][2] = {
    {"handel", "handle"},        {"hinje", "hinge"},    {"spowt", "spout"},      {"knobb", "knob"},
    {"bottem", "bottom"},        {"cornner", "corner"}, {"leathr", "leather"},   {"buckel", "buckle"},
    {"zippper", "zipper"},       {"colar", "collar"},   {"swich", "switch"},     {"bateries", "batteries"},
    {"antena", "antenna"},       {"latern", "lantern"}, {"drawr", "drawer"},     {"surfase", "surface"},
    {"underneth", "underneath"}, {"edgge", "edge"},     {"sholder", "shoulder"}, {"plateform", "platform"},
    {"strapp", "strap"},         {"scew", "screw"},     {"labell", "label"},     {"stoper", "stopper"},
    {"pedestle", "pedestal"},
};

static const char *message_on(const struct listing *l, const char *word) {
    for (size_t i = 0; i < l->finding_count; i++)
        if (!strcmp(l->findings[i].code, "spelling.word") &&
            !strncmp(l->findings[i].message + 1, word, strlen(word)))
            return l->findings[i].message;
    return NULL;
}

static void check_slips(struct arena *arena, void *context) {
    (void)context;
    static const char *const places[] = {"type: jug\nflaws: [{kind: stain, where: near the %s}]\n",
                                         "type: jug\nflaws: [{kind: stain, part: %s}]\n", "type: jug %s\n",
                                         "type: jug\nattributes: {material: {value: tin, of: %s}}\n",
                                         "type: jug\nunchecked: [the %s]\n"};
    struct desk desk;
    set_desk(arena, &desk, LOCALE_US, NULL, true);
    size_t first = 0, count = sizeof slips / sizeof *slips, of = sizeof places / sizeof *places;
    for (size_t i = 0; i < count * of; i++) {
        const char *const *slip = slips[i / of];
        struct buf yaml = buf_start(arena);
        const char *place = places[i % of], *blank = strstr(place, "%s");
        buf_format(&yaml, "%.*s%s%s", (int)(blank - place), place, slip[0], blank + 2);
        const struct listing *l = draft(arena, &desk, made(arena, &desk, yaml.at), LOCALE_US);
        const char *message = message_on(l, slip[0]);
        ck_assert_msg(message != NULL, "'%s' was not noticed: %s", slip[0], yaml.at);
        ck_assert_uint_eq(count_findings(l, "spelling.output"),
                          0); // it is the seller's, wherever it comes out
        first += strstr(message, arena_format(arena, "meant: '%s'", slip[1])) != NULL;
    }
    printf("meant words that come first: %zu of %zu\n", first, count * of);
    ck_assert_msg(first * 10 >= count * of * 8, "%zu of %zu meant words come first", first, count * of);
    ck_assert_uint_eq(desk.diags.count, 0);
}

START_TEST(slips_are_found_and_what_was_meant) {
    within(check_slips, NULL);
}
END_TEST

static void check_names(struct arena *arena, void *context) {
    (void)context;
    struct desk desk;
    set_desk(arena, &desk, LOCALE_US, NULL, true);
    const struct record *record =
        made(arena, &desk,
             "type: radio\nfamily: electrical\nattributes: {brand: [Naskerby], model: [R-6x], pattern: "
             "[Quillbrand Vane]}\n"
             "marks: [{text: NASKRBY PATNT 2311}]\nfits: [{brand: Zandiver, model: C-20}]\n"
             "flaws: [{kind: crack, part: dial, where: by the Naskerby plate}]\n"
             "includes: [an Ostrellin box]\n"
             "listing: {title: Naskerby Radio by Ostrellin}\n");
    const struct listing *l = draft(arena, &desk, record, LOCALE_US);
    ck_assert_uint_eq(count_findings(l, "spelling.word") + count_findings(l, "spelling.output"), 0);
    // A name covers whole words only, and its own record only.
    l = draft(arena, &desk,
              made(arena, &desk,
                   "type: jug\nattributes: {brand: Handelson}\nflaws: [{kind: chip, part: handel}]\n"),
              LOCALE_US);
    ck_assert_ptr_nonnull(message_on(l, "handel"));
    l = draft(
        arena, &desk,
        made(arena, &desk, "type: jug\nattributes: {brand: Knobb}\nflaws: [{kind: chip, part: knobb}]\n"),
        LOCALE_US);
    ck_assert_uint_eq(count_findings(l, "spelling.word"), 0);
    l = draft(arena, &desk, made(arena, &desk, "type: Knobb\n"), LOCALE_US);
    ck_assert_ptr_nonnull(message_on(l, "Knobb"));
}

START_TEST(names_and_marks_are_left_alone) {
    within(check_names, NULL);
}
END_TEST

// Random records with a maker and a mark that no dictionary has.
static void check_makers(struct arena *arena, void *context) {
    (void)context;
    static const char *const fore[] = {"Ostr", "Quenn", "Vand", "Wreb", "Ibbl", "Zorr", "Thrup", "Murd"};
    static const char *const rest[] = {"elvy",   "oskit", "andrel", "umbry",
                                       "ittern", "axley", "ocket",  "enfry"};
    struct desk desk;
    set_desk(arena, &desk, LOCALE_US, NULL, true);
    for (size_t number = 0; number < 400; number++) {
        struct dice dice = {0xBF58476D1CE4E5B9u * (number + 1) | 1};
        struct node *tree = random_record(arena, &dice, desk.drafter.rules, number),
                    *marks = node_list(arena);
        struct node *attributes = node_map(arena), *copy = node_map(arena);
        const char *maker = arena_format(arena, "%s%s", PICK(&dice, fore), PICK(&dice, rest));
        const char *mark = arena_format(arena, "%s%s wrks", PICK(&dice, fore), PICK(&dice, rest));
        put_word(arena, attributes, number % 2 ? "brand" : "author", maker);
        node_push(arena, marks, node_text(arena, mark));
        for (size_t i = 0; i < tree->count; i++)
            if (strcmp(tree->members[i].key, "attributes") != 0 && strcmp(tree->members[i].key, "marks") != 0)
                node_put(arena, copy, tree->members[i].key, tree->members[i].value);
        node_put(arena, copy, "attributes", attributes);
        node_put(arena, copy, "marks", marks);
        const struct listing *l = draft(arena, &desk, read_made(arena, desk.drafter.rules, copy), LOCALE_US);
        ck_assert(strstr(l->description, maker) && strstr(l->description, mark));
        for (size_t i = 0; i < l->finding_count; i++)
            ck_assert_msg(
                strncmp(l->findings[i].code, "spelling", 8) != 0 ||
                    (!strstr(l->findings[i].message, maker) && !strstr(mark, l->findings[i].message)),
                "%s", l->findings[i].message);
    }
}

START_TEST(makers_are_never_reported) {
    within(check_makers, NULL);
}
END_TEST

static void check_given(struct arena *arena, void *context) {
    (void)context;
    struct desk desk;
    set_desk(arena, &desk, LOCALE_US, NULL, true);
    const struct listing *l = draft(
        arena, &desk,
        made(arena, &desk,
             "type: {value: Oil Latern, others: [knoble]}\nattributes: {color: Dark Gren, pattern: Meddow "
             "Gate}\n"
             "marks: [{text: ABC, where: under the bottem}]\nphotos: [{file: a.jpg, shows: the hinje}]\n"
             "listing: {title: Old Ostrellin Lantrn, description: A lamp with a craked shade.}\n"),
        LOCALE_US);
    static const char *const wants[] = {"Latern", "knoble", "Gren", "bottem", "hinje", "Lantrn", "craked"};
    for (size_t i = 0; i < sizeof wants / sizeof *wants; i++)
        ck_assert_msg(message_on(l, wants[i]) != NULL, "'%s' was not noticed", wants[i]);
    ck_assert_uint_eq(count_findings(l, "spelling.word"), sizeof wants / sizeof *wants);
    ck_assert_uint_eq(count_findings(l, "spelling.output"), 0);
    ck_assert_str_eq(message_on(l, "hinje"),
                     "'hinje' is not a word known here; meant: 'hinge', 'hinged', 'hinges'?");
}

START_TEST(every_text_of_the_seller_is_looked_over) {
    within(check_given, NULL);
}
END_TEST

// A slip in a rule of another pack than the shipped one, which is trusted less.
static void check_rule_slip(struct arena *arena, void *context) {
    (void)context;
    struct desk desk;
    set_desk(arena, &desk, LOCALE_US, NULL, true);
    struct ruleset rules = *desk.drafter.rules;
    struct flaw stain = *ruleset_flaw(&rules, "stain");
    const struct flaw **flaws = arena_array(arena, rules.flaw_count, sizeof *flaws);
    memcpy(flaws, rules.flaws, rules.flaw_count * sizeof *flaws);
    stain.rule.pack = "other-pack";
    stain.noun = "staine";
    stain.plural = "staines";
    stain.adjective = "stayned";
    for (size_t i = 0; i < rules.flaw_count; i++)
        if (!strcmp(flaws[i]->rule.id, "stain")) flaws[i] = &stain;
    rules.flaws = flaws;
    struct record record = *made(arena, &desk, "type: jug\nflaws: [{kind: stain, where: rim}]\n");
    record.flaws[0].kind = &stain;
    record.flaws[0].told = NULL;
    desk.drafter.rules = &rules;
    const struct listing *l = draft(arena, &desk, &record, LOCALE_US);
    ck_assert_uint_ge(count_findings(l, "spelling.output"), 1);
    ck_assert_uint_eq(count_findings(l, "spelling.word"), 0);
}

START_TEST(a_slip_in_a_rule_is_the_rules_fault) {
    within(check_rule_slip, NULL);
}
END_TEST

struct rule_words {
    struct speller *speller;
    struct diags diags;
    size_t asked, wrong;
};

static void ask_word(void *context, const char *word, size_t size) {
    // Short for pieces, in titles; and other names of things as buyers type them.
    static const char *const printed[] = {"pcs", "pc", "childrens", "tele", "seamans", "rpg", "doilie", "rc"};
    struct rule_words *w = context;
    w->asked++;
    for (size_t i = 0; i < sizeof printed / sizeof *printed; i++)
        if (size == strlen(printed[i]) && !memcmp(word, printed[i], size)) return;
    if (speller_knows(w->speller, word, size, &w->diags)) return;
    char *name = arena_copy(w->diags.arena, word, size); // a name of a style or place: French, Morse
    name[0] = (char)(name[0] - ('a' - 'A'));
    if (speller_knows(w->speller, name, size, &w->diags)) return;
    fprintf(stderr, "in a rule: '%.*s'\n", (int)size, word);
    w->wrong++;
}

static void ask_last(struct arena *arena, struct rule_words *w, const char *phrase) {
    const char *space = strrchr(phrase, ' '), *last = space ? space + 1 : phrase;
    if (last[0] < 'a' && last[1] < 'a') return; // TVs, LPs
    const char *word = utf8_fold(arena, last);
    ask_word(w, word, strlen(word));
}

static void check_rule_words(struct arena *arena, void *context) {
    (void)context;
    struct diags diags = diags_start(arena);
    const struct source *words = folder_read_file(arena, "dict/trade.txt", 1 << 20, &diags);
    struct speller_options options = {.both = true, .trade = trade_read(arena, words, &diags)};
    struct rule_words asked = {speller_new(NULL, &options), diags_start(arena), 0, 0};
    spelling_rule_words(shipped_once()->rules, ask_word, &asked);
    // Several of a thing are told too, by any of its names.
    const struct ruleset *rules = shipped_once()->rules;
    for (size_t i = 0; i < rules->family_count; i++)
        for (size_t k = 0; k < rules->families[i]->thing_count; k++) {
            const struct thing *thing = &rules->families[i]->things[k];
            if (!thing->plural) ask_last(arena, &asked, say_plural(arena, thing->noun));
            for (size_t n = 0; n < thing->also.count; n++)
                ask_last(arena, &asked, say_plural(arena, thing->also.at[n]));
        }
    speller_free(asked.speller);
    ck_assert_uint_gt(asked.asked, 2000);
    ck_assert_uint_eq(asked.wrong, 0);
    ck_assert_uint_eq(asked.diags.count, 0);
}

// Drafts count them as known and open no dictionary for them.
START_TEST(words_of_the_rules_stand_in_the_dictionaries) {
    within(check_rule_words, NULL);
}
END_TEST

static void check_missing(struct arena *arena, void *context) {
    (void)context;
    struct desk desk;
    set_desk(arena, &desk, LOCALE_US, "no-such-folder", true);
    const struct record *record = made(arena, &desk, "type: jugg\nflaws: [chip]\n");
    const struct listing *l = draft(arena, &desk, record, LOCALE_US);
    ck_assert_str_ne(l->title, "");
    ck_assert_uint_eq(count_findings(l, "spelling.word"), 0);
    ck_assert_uint_eq(desk.diags.count, 1); // told, and once
    ck_assert_int_eq(desk.diags.items[0].code, CODE_DICT_MISSING);
    draft(arena, &desk, record, LOCALE_US);
    ck_assert_uint_eq(desk.diags.count, 1);
    // Words that the lists know need none.
    set_desk(arena, &desk, LOCALE_US, "no-such-folder", true);
    draft(arena, &desk, made(arena, &desk, "type: jug\nflaws: [{kind: chip, where: rim}]\n"), LOCALE_US);
    ck_assert_uint_eq(desk.diags.count, 0);
}

// Only that of the other English is missing: told once too, and slips are found all the same.
static void check_other_missing(struct arena *arena, void *context) {
    (void)context;
    enter_new_folder();
    static const char affix[] = "SET UTF-8\n", words[] = "4\nthe\njug\nhandle\nlamp\n";
    write_file("en_US.aff", affix, sizeof affix - 1);
    write_file("en_US.dic", words, sizeof words - 1);
    char *folder = getcwd(NULL, 0);
    ck_assert_int_eq(chdir(source_folder()), 0);
    struct desk desk;
    set_desk(arena, &desk, LOCALE_US, folder, true);
    const struct record *record = made(arena, &desk, "type: jug\nflaws: [{kind: chip, part: handel}]\n");
    for (int i = 0; i < 2; i++) {
        const struct listing *l = draft(arena, &desk, record, LOCALE_US);
        ck_assert_str_eq(message_on(l, "handel"),
                         "'handel' is not a word known here; meant: 'handle', 'handbell'?");
        ck_assert_uint_eq(desk.diags.count, 1);
        ck_assert_int_eq(desk.diags.items[0].code, CODE_DICT_MISSING);
        ck_assert_str_eq(desk.diags.items[0].hint, "install the package hunspell-en-gb");
    }
    (void)remove(arena_format(arena, "%s/en_US.aff", folder));
    (void)remove(arena_format(arena, "%s/en_US.dic", folder));
    ck_assert_int_eq(rmdir(folder), 0);
    free(folder);
}

START_TEST(the_other_english_missing_is_told_once) {
    within(check_other_missing, NULL);
}
END_TEST

START_TEST(a_missing_dictionary_is_told_once_and_the_listing_is_made) {
    within(check_missing, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("listing.spelling");
    TCase *tests = tcase_create("spelling");
    tcase_set_timeout(tests, 300);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, outputs_are_spelled_in_us_english);
    tcase_add_test(tests, outputs_are_spelled_in_british_english);
    tcase_add_test(tests, slips_are_found_and_what_was_meant);
    tcase_add_test(tests, names_and_marks_are_left_alone);
    tcase_add_test(tests, makers_are_never_reported);
    tcase_add_test(tests, every_text_of_the_seller_is_looked_over);
    tcase_add_test(tests, a_slip_in_a_rule_is_the_rules_fault);
    tcase_add_test(tests, words_of_the_rules_stand_in_the_dictionaries);
    tcase_add_test(tests, the_other_english_missing_is_told_once);
    tcase_add_test(tests, a_missing_dictionary_is_told_once_and_the_listing_is_made);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
