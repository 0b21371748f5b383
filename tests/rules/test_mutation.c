// SPDX-License-Identifier: MIT
// Every rule that finds text is spoiled, one at a time, and the pack's own examples or its own count must
// notice.
#include "support.h"

#include "rules/schema.h"

enum spoiling { BLIND, GREEDY, WITHOUT_UNLESS };

struct tally {
    size_t rules, noticed, with_unless, unless_noticed;
};

// A rule set that holds one flaw, claim, bound or caution of the shipped one, with its finder replaced.
static bool notices(struct arena *arena, const struct finder *finder, const struct rule *rule,
                    enum rule_kind kind, enum spoiling spoiling, enum code code) {
    struct flaw flaw = {.rule = *rule, .finder = *finder};
    struct claim claim = {.rule = *rule, .finder = *finder, .evidence = {.number = 1}};
    struct caution caution = {.rule = *rule, .finder = *finder, .with = {.number = 1}};
    struct bound bound = {.rule = *rule, .finder = *finder};
    struct finder *spoiled = kind == RULE_CLAIM     ? &claim.finder
                             : kind == RULE_CAUTION ? &caution.finder
                             : kind == RULE_BOUND   ? &bound.finder
                                                    : &flaw.finder;
    static const char *nothing[] = {"qqzzxq"}, *anything[] = {"\\w+"};
    spoiled->number = 0;
    if (spoiling != WITHOUT_UNLESS) spoiled->said = (struct texts){nothing, 1};
    if (spoiling == BLIND) spoiled->match = (struct texts){NULL, 0};
    if (spoiling == GREEDY) spoiled->match = (struct texts){anything, 1};
    if (spoiling != BLIND) spoiled->unless = (struct texts){NULL, 0};
    const struct flaw *flaws[] = {&flaw};
    const struct claim *claims[] = {&claim};
    const struct caution *cautions[] = {&caution};
    const struct bound *bounds[] = {&bound};
    struct ruleset rules = {.flaws = flaws,
                            .flaw_count = kind == RULE_FLAW,
                            .claims = claims,
                            .claim_count = kind == RULE_CLAIM,
                            .cautions = cautions,
                            .caution_count = kind == RULE_CAUTION,
                            .bounds = bounds,
                            .bound_count = kind == RULE_BOUND,
                            .finder_count = 2};
    struct drafter drafter = {&rules, NULL, scanner_new(arena, 2), NULL, NULL};
    struct diags diags = diags_start(arena);
    struct proof_counts counts;
    proof_run(arena, &drafter, &counts, &diags);
    for (size_t i = 0; i < diags.count; i++)
        if (diags.items[i].code == code && diags.status == 3) return true;
    return false;
}

static void spoil(struct arena *arena, const struct finder *finder, const struct rule *rule,
                  enum rule_kind kind, struct tally *tally) {
    bool blind = notices(arena, finder, rule, kind, BLIND, CODE_RULE_HIT);
    bool greedy = notices(arena, finder, rule, kind, GREEDY, CODE_RULE_MISS);
    ck_assert_msg(blind, "%s finds nothing and nobody notices", rule->id);
    ck_assert_msg(greedy, "%s finds everything and nobody notices", rule->id);
    tally->rules++;
    tally->noticed += blind && greedy;
    if (!finder->unless.count) return;
    tally->with_unless++;
    tally->unless_noticed += notices(arena, finder, rule, kind, WITHOUT_UNLESS, CODE_RULE_MISS);
}

static void spoil_all(struct arena *arena, void *context) {
    (void)context;
    struct shipped shipped = shipped_load(arena);
    struct tally tally = {0};
    const struct ruleset *rules = shipped.rules;
    for (size_t i = 0; i < rules->flaw_count; i++)
        spoil(arena, &rules->flaws[i]->finder, &rules->flaws[i]->rule, RULE_FLAW, &tally);
    for (size_t i = 0; i < rules->claim_count; i++)
        spoil(arena, &rules->claims[i]->finder, &rules->claims[i]->rule, RULE_CLAIM, &tally);
    for (size_t i = 0; i < rules->caution_count; i++)
        spoil(arena, &rules->cautions[i]->finder, &rules->cautions[i]->rule, RULE_CAUTION, &tally);
    for (size_t i = 0; i < rules->bound_count; i++)
        spoil(arena, &rules->bounds[i]->finder, &rules->bounds[i]->rule, RULE_BOUND, &tally);
    ck_assert_uint_eq(tally.rules,
                      rules->flaw_count + rules->claim_count + rules->caution_count + rules->bound_count);
    ck_assert_uint_ge(tally.rules, 400);
    ck_assert_uint_eq(tally.noticed, tally.rules);
    // A rule whose `unless` is lost shows it where a miss holds one of its phrases.
    ck_assert_msg(tally.unless_noticed * 100 >= tally.with_unless * 90,
                  "only %zu of %zu notice that their `unless` is lost", tally.unless_noticed,
                  tally.with_unless);
}

START_TEST(a_rule_that_finds_nothing_or_everything_is_noticed) {
    within(spoil_all, NULL);
}
END_TEST

// --- rules that are lost: the files as they are, less one rule ---

struct cut_list {
    struct {
        const char *path; // below the pack
        size_t from, to;
    } at[400];
    size_t count;
};

// A rule begins with "- KIND: " at the margin and ends where the next one does.
static void list_rules(const struct source *source, const char *path, struct cut_list *list) {
    size_t from = SIZE_MAX;
    for (size_t line = 0; line <= source->size;) {
        bool begins = line < source->size && !strncmp(source->text + line, "- ", 2);
        if ((begins || line >= source->size) && from != SIZE_MAX) {
            ck_assert_uint_lt(list->count, sizeof list->at / sizeof *list->at);
            list->at[list->count].path = path;
            list->at[list->count].from = from;
            list->at[list->count++].to = line;
        }
        if (begins) from = line;
        const char *end = line < source->size ? memchr(source->text + line, '\n', source->size - line) : NULL;
        line = end ? (size_t)(end - source->text) + 1 : source->size + 1;
    }
}

struct loss {
    const char *kind;
    size_t held, left;
    bool noticed;
};

static void load_short(struct arena *arena, void *context) {
    struct loss *loss = context;
    const char *folders[] = {"pack"};
    struct diags diags = diags_start(arena);
    ruleset_load(arena, folders, 1, &diags);
    const char *expected = arena_format(arena, "pack 'core' should hold %zu %s rules and holds %zu",
                                        loss->held, loss->kind, loss->left);
    for (size_t i = 0; i < diags.count; i++)
        loss->noticed |= diags.items[i].code == CODE_RULE_COUNT && !strcmp(diags.items[i].message, expected);
}

struct part_of_pack {
    const char **paths; // of the files in their own place
    struct source **sources;
    size_t count, skip; // `skip` bytes of a path stand before the pack's own part
    struct cut_list *rules;
};

static struct part_of_pack copy_part(struct arena *arena, const char *folder) {
    struct diags diags = diags_start(arena);
    const char *core = arena_format(arena, "%s/rules/core", source_folder());
    struct part_of_pack part = {.skip = strlen(core) + 1, .rules = arena_alloc(arena, sizeof *part.rules)};
    part.paths = folder_list(arena, arena_format(arena, "%s/%s", core, folder), ".yaml", &part.count, &diags);
    part.sources = arena_array(arena, part.count, sizeof *part.sources);
    const struct source *pack =
        folder_read_file(arena, arena_format(arena, "%s/pack.yaml", core), LIMIT_RULE_FILE_BYTES, &diags);
    for (size_t i = 0; i < part.count; i++) {
        part.sources[i] = folder_read_file(arena, part.paths[i], LIMIT_RULE_FILE_BYTES, &diags);
        list_rules(part.sources[i], part.paths[i], part.rules);
    }
    enter_new_folder();
    write_file("pack/pack.yaml", pack->text, pack->size);
    for (size_t i = 0; i < part.count; i++)
        write_file(arena_format(arena, "pack/%s", part.paths[i] + part.skip), part.sources[i]->text,
                   part.sources[i]->size);
    return part;
}

static void lose_each(struct arena *arena, void *context) {
    static const char *const folders[] = {"flaws", "claims", "families", "cautions", "dates"};
    static const char *const kinds[] = {"flaw", "claim", "family", "caution", "bound"};
    static const size_t least[] = {149, 60, 27, 50, 100};
    int which = *(const int *)context;
    struct part_of_pack part = copy_part(arena, folders[which]);
    size_t noticed = 0;
    for (size_t i = 0; i < part.rules->count; i++) {
        size_t at = 0, from = part.rules->at[i].from, to = part.rules->at[i].to;
        while (strcmp(part.paths[at], part.rules->at[i].path) != 0) at++;
        const struct source *whole = part.sources[at];
        char *less = arena_copy(arena, whole->text, whole->size);
        memmove(less + from, less + to, whole->size - to);
        const char *path = arena_format(arena, "pack/%s", part.paths[at] + part.skip);
        write_file(path, less, whole->size - (to - from));
        struct loss loss = {kinds[which], part.rules->count, part.rules->count - 1, false};
        within(load_short, &loss);
        noticed += loss.noticed;
        write_file(path, whole->text, whole->size);
    }
    leave_folder();
    ck_assert_uint_ge(part.rules->count, least[which]);
    ck_assert_uint_eq(noticed, part.rules->count);
}

START_TEST(a_rule_that_is_lost_is_noticed) {
    int which = _i;
    within(lose_each, &which);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("rules.mutation");
    TCase *tests = tcase_create("spoiled rules");
    tcase_set_timeout(tests, 300);
    tcase_add_test(tests, a_rule_that_finds_nothing_or_everything_is_noticed);
    tcase_add_loop_test(tests, a_rule_that_is_lost_is_noticed, 0, 5);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
