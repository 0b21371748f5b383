// SPDX-License-Identifier: MIT
// Every rule of claims is lost, cut by a word or a piece of evidence, and changed in its verdict, its years,
// its qualifier or what it offers, one change at a time: claims.txt must notice each.
#include "lines.h"

#include "evidence/claims.h"
#include "rules/trigger.h"

enum { LINES_MOST = 700, WORDS_MOST = 900, RULES_LEAST = 80, CHANGES_LEAST = 900 };

struct line {
    const char *claim, *record, *word, *verdict, *says;
};

struct words_line {
    const char *claim, *text, *word; // the word is the text, or stands in it between brackets
};

static struct lines {
    struct line at[LINES_MOST];
    struct words_line words[WORDS_MOST];
    size_t count, word_count;
} lines;

static struct words_line words_in(struct arena *arena, const char *claim, const char *text) {
    const char *opens = strchr(text, '['), *closes = strchr(text, ']');
    if (!opens || !closes) return (struct words_line){claim, text, text};
    const char *word = arena_copy(arena, opens + 1, (size_t)(closes - opens - 1));
    const char *plain = arena_format(arena, "%.*s%s%s", (int)(opens - text), text, word, closes + 1);
    return (struct words_line){claim, plain, word};
}

static void read_words(struct arena *arena, char *text) {
    char *rest = text;
    const char *claim = line_field(&rest);
    for (char *end; *rest; rest = end) {
        while (*rest == ' ') rest++;
        end = rest + strcspn(rest, ";");
        if (*end) *end++ = '\0';
        ck_assert_uint_lt(lines.word_count, WORDS_MOST);
        lines.words[lines.word_count++] = words_in(arena, claim, rest);
    }
}

static void read_line(struct arena *arena, char *text) {
    if (!strncmp(text, "words ", 6)) {
        read_words(arena, text + 6);
        return;
    }
    ck_assert_uint_lt(lines.count, LINES_MOST);
    char *rest = text;
    struct line *line = &lines.at[lines.count++];
    line->claim = line_field(&rest);
    line->record = arena_format(arena, "%s\n", line_field(&rest));
    line->word = line_field(&rest);
    line->verdict = line_field(&rest);
    line->says = line_field(&rest);
    ck_assert_msg(*line->says, "%s: what is written, offered, or '-'", line->record);
}

static void read_lines(struct arena *arena) {
    lines.count = lines.word_count = 0;
    lines_each(arena, "tests/evidence/claims.txt", read_line);
}

// The rules with these claims in place of theirs.
static struct ruleset with_claims(struct arena *arena, const struct claim *const *claims, size_t count) {
    struct ruleset rules = *shipped_once()->rules;
    struct triggers *triggers = triggers_new(arena);
    for (size_t i = 0; i < count; i++) triggers_add(arena, triggers, &claims[i]->finder);
    triggers_close(arena, triggers);
    rules.claims = (const struct claim **)(uintptr_t)claims;
    rules.claim_count = count;
    rules.claim_triggers = triggers;
    return rules;
}

static bool word_holds(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                       const struct words_line *line) {
    const struct record nothing = {.id = "a"};
    const struct claims *found = claims_weigh_text(arena, scanner, rules, &nothing, line->text);
    for (size_t i = 0; i < found->count; i++)
        if (!strcmp(found->items[i].claim->rule.id, line->claim) && !strcmp(found->items[i].word, line->word))
            return true;
    return false;
}

// The rules are spoiled on purpose here, so what they make is not watched (tests/listing/watch.c).
struct listing *__real_listing_draft(struct arena *arena, const struct drafter *drafter,
                                     const struct record *record, const struct title_options *options);

static bool line_holds(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                       const struct line *line) {
    static const struct day today = {2025, 11, 25};
    static const struct title_options usual = {80, COUNT_GRAPHEMES, LOCALE_US, NULL};
    struct diags diags = diags_start(arena);
    struct record *record = arena_alloc(arena, sizeof *record);
    ck_assert_msg(record_of(arena, rules, line->record, record, &diags), "%s\n%s", line->record,
                  printed(arena, &diags));
    struct drafter drafter = {rules, NULL, scanner, NULL, NULL};
    drafter.today = &today;
    const struct claims *claims = __real_listing_draft(arena, &drafter, record, &usual)->claims;
    for (size_t i = 0; i < claims->count; i++) {
        const struct claim_found *found = &claims->items[i];
        if (strcmp(found->claim->rule.id, line->claim) != 0 || strcmp(found->word, line->word) != 0) continue;
        if (strcmp(verdict_name(found->verdict), line->verdict) != 0) return false;
        if (found->verdict == VERDICT_ALLOW) return !strcmp(line->says, "-");
        return found->written
                   ? !strncmp(line->says, "written as ", 11) && !strcmp(found->written, line->says + 11)
                   : !strncmp(line->says, "offers ", 7) && strstr(found->claim->instead, line->says + 7);
    }
    return false;
}

struct look {
    const struct claim *changed; // NULL: the rule is lost
    const char *id;
    bool noticed, of_words;
    const char *off;
};

static void look_at(struct arena *arena, void *context) {
    struct look *look = context;
    struct ruleset rules = with_claims(arena, &look->changed, look->changed != NULL);
    struct scanner *scanner = scanner_new(arena, rules.finder_count);
    for (size_t i = 0; i < lines.word_count && look->of_words; i++)
        if (!strcmp(lines.words[i].claim, look->id) && !word_holds(arena, scanner, &rules, &lines.words[i])) {
            look->noticed = true;
            look->off = lines.words[i].word;
            return;
        }
    for (size_t i = 0; i < lines.count; i++)
        if (!strcmp(lines.at[i].claim, look->id) && !line_holds(arena, scanner, &rules, &lines.at[i])) {
            look->noticed = true;
            look->off = lines.at[i].record;
            return;
        }
}

struct tally {
    size_t changes, noticed;
};

static void expect_notice(const struct claim *changed, const char *id, const char *what, bool of_words,
                          struct tally *tally) {
    struct look look = {.changed = changed, .id = id, .of_words = of_words};
    within(look_at, &look);
    tally->changes++;
    tally->noticed += look.noticed;
    if (!look.noticed) fprintf(stderr, "  %s: %s, and no line of claims.txt notices\n", id, what);
}

static void shift(const struct claim *claim, size_t offset, const char *what, struct tally *tally) {
    for (int by = -1; by <= 1; by += 2) {
        struct claim changed = *claim;
        int *year = (int *)(void *)((char *)&changed + offset);
        if (!*year) return;
        *year += by;
        expect_notice(&changed, claim->rule.id, what, false, tally);
    }
}

static void change_words(struct arena *arena, const struct claim *claim, struct tally *tally) {
    const char *id = claim->rule.id;
    for (size_t i = 0; i < claim->finder.said.count; i++) {
        struct claim changed = *claim;
        changed.finder.said = texts_without(arena, &claim->finder.said, i);
        expect_notice(&changed, id, claim->finder.said.at[i], true, tally);
    }
    for (size_t i = 0; i < claim->finder.match.count; i++) {
        struct claim changed = *claim;
        changed.finder.match = texts_without(arena, &claim->finder.match, i);
        expect_notice(&changed, id, claim->finder.match.at[i], true, tally);
    }
}

static void change_evidence(struct arena *arena, const struct claim *claim, struct tally *tally) {
    static const char *anything[] = {"."};
    const char *id = claim->rule.id;
    struct claim changed = *claim;
    changed.evidence.match = (struct texts){anything, 1};
    changed.evidence.number = changed.finder.number == 1 ? 2 : 1;
    expect_notice(&changed, id, "any mark is evidence", false, tally);
    for (size_t i = 0; i < claim->evidence.match.count; i++) {
        changed = *claim;
        changed.evidence.match = texts_without(arena, &claim->evidence.match, i);
        expect_notice(&changed, id, claim->evidence.match.at[i], false, tally);
    }
    for (size_t i = 0; i < claim->marked.match.count; i++) {
        changed = *claim;
        changed.marked.match = texts_without(arena, &claim->marked.match, i);
        expect_notice(&changed, id, claim->marked.match.at[i], false, tally);
    }
}

static void change_wording(struct arena *arena, const struct claim *claim, struct tally *tally) {
    const char *id = claim->rule.id;
    struct claim changed = *claim;
    changed.instead = "";
    bool offers = claim->instead && !claim->write_count;
    if (offers) expect_notice(&changed, id, "nothing is offered instead", false, tally);
    struct {
        size_t forms, count;
    } tables[] = {{offsetof(struct claim, writes), offsetof(struct claim, write_count)},
                  {offsetof(struct claim, marked_writes), offsetof(struct claim, marked_count)},
                  {offsetof(struct claim, color_writes), offsetof(struct claim, color_count)}};
    for (size_t k = 0; k < sizeof tables / sizeof *tables; k++) {
        changed = *claim;
        struct short_form **forms = (void *)((char *)&changed + tables[k].forms), *all = *forms;
        size_t *count = (void *)((char *)&changed + tables[k].count), whole = *count;
        for (size_t i = 0; i < whole; i++) {
            *forms = forms_without(arena, all, whole, i);
            *count = whole - 1;
            expect_notice(&changed, id, all[i].text, false, tally);
        }
    }
}

static void change_all(struct arena *arena, void *context) {
    (void)context;
    struct tally tally = {0};
    const struct ruleset *rules = shipped_once()->rules;
    read_lines(arena);
    for (size_t i = 0; i < rules->claim_count; i++) {
        const struct claim *claim = rules->claims[i];
        struct look look = {.changed = claim, .id = claim->rule.id, .of_words = true};
        within(look_at, &look);
        ck_assert_msg(!look.noticed, "%s: '%s' does not hold", claim->rule.id, look.off);
        expect_notice(NULL, claim->rule.id, "lost", true, &tally);
        for (int verdict = VERDICT_ALLOW; verdict <= VERDICT_REFUSE; verdict++) {
            struct claim changed = *claim;
            changed.verdict = (enum verdict)verdict;
            if (changed.verdict != claim->verdict)
                expect_notice(&changed, claim->rule.id, "another verdict", false, &tally);
        }
        shift(claim, offsetof(struct claim, at_least), "other years of age", &tally);
        shift(claim, offsetof(struct claim, more_than), "other years of age", &tally);
        shift(claim, offsetof(struct claim, from_year), "another first year", &tally);
        shift(claim, offsetof(struct claim, to_year), "another last year", &tally);
        change_words(arena, claim, &tally);
        change_evidence(arena, claim, &tally);
        change_wording(arena, claim, &tally);
    }
    printf("%zu of %zu changes of %zu rules of claims are noticed by %zu lines\n", tally.noticed,
           tally.changes, rules->claim_count, lines.count + lines.word_count);
    ck_assert_uint_ge(rules->claim_count, RULES_LEAST);
    ck_assert_uint_ge(tally.changes, CHANGES_LEAST);
    ck_assert_uint_eq(tally.noticed, tally.changes);
}

START_TEST(every_change_of_a_rule_of_claims_is_noticed) {
    within(change_all, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("evidence.claim mutation");
    TCase *tests = tcase_create("changed rules");
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_set_timeout(tests, 600);
    tcase_add_test(tests, every_change_of_a_rule_of_claims_is_noticed);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
