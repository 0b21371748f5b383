// SPDX-License-Identifier: MIT
// Runs what the rules say of themselves: hits, misses and gaps of those that find text, example records of
// families, and how alike two families are. Everything that fails is reported with the place of its rule.
#include <string.h>

#include "listing/listing.h"
#include "notes/phrases.h"
#include "rules/trigger.h"
#include "text/limits.h"
#include "text/order.h"

struct prover {
    struct arena *arena;
    const struct drafter *drafter;
    struct proof_counts *counts;
    struct diags *diags;
    const struct phrases *phrases;
    const struct flaw *flaw; // whose rule is proved now, or NULL
    bool by_words;           // the rules proved now find plain words; bounds mostly find forms of numbers
};

// "[chip] on the rim": the text without brackets and where they stood. False when there are none.
static bool unbracket(struct arena *arena, const char *example, const char **text, struct span *span) {
    struct buf out = buf_start(arena);
    bool open = false, closed = false;
    for (const char *c = example; *c; c++) {
        if (*c == '[' && !open) {
            open = true;
            span->from = out.n;
        } else if (*c == ']' && open && !closed) {
            closed = true;
            span->to = out.n;
        } else
            buf_byte(&out, *c);
    }
    *text = out.at;
    return open && closed;
}

static void fail(struct prover *p, enum code code, const struct rule *rule, const char *hint,
                 const char *message) {
    diags_add(p->diags, code, rule->at, hint, "%s", message);
}

// Keeps the first match, or the one that is wanted; true when that is it.
static bool settle(const struct span *want, struct span *first, enum scan_result *result, struct span match) {
    bool wanted = want && match.from == want->from && match.to == want->to;
    if (*result == SCAN_NONE || wanted) *first = match;
    *result = SCAN_FOUND;
    return wanted;
}

// Every match in turn, so that a hit may stand behind another word of the rule.
static enum scan_result find_by_pattern(struct prover *p, const struct finder *finder, const char *text,
                                        const struct span *want, struct span *first,
                                        enum scan_result result) {
    size_t size = strlen(text);
    for (size_t from = 0; from < size;) {
        struct span match;
        enum scan_result now = scanner_find(p->drafter->scanner, finder, text, size, from, &match);
        if (now != SCAN_FOUND) return now == SCAN_NONE ? result : now;
        if (settle(want, first, &result, match)) return result;
        from = match.to;
    }
    return result;
}

// The words of a flaw are found as they are in notes; they are too many for one pattern.
static enum scan_result find(struct prover *p, const struct finder *finder, const char *text,
                             const struct span *want, struct span *first) {
    enum scan_result result = SCAN_NONE;
    if (!p->flaw) return find_by_pattern(p, finder, text, want, first, result);
    struct tokens tokens = tokens_cut(p->arena, text, strlen(text));
    struct phrase_hits hits = phrases_find(p->arena, p->phrases, &tokens);
    for (size_t i = 0; i < hits.count; i++) {
        const struct phrase_hit *hit = &hits.at[i];
        if (hit->flaw != p->flaw || hit->near) continue;
        struct span match = {tokens.at[hit->from].from, tokens.at[hit->to - 1].to};
        if (settle(want, first, &result, match)) return result;
    }
    if (!finder->match.count) return result;
    struct finder patterns = {.match = finder->match, .unless = finder->unless, .number = finder->number};
    return find_by_pattern(p, &patterns, text, want, first, result);
}

static void too_slow(struct prover *p, const struct rule *rule, const char *text) {
    fail(p, CODE_RULE_SLOW, rule,
         "nested repeats such as (a+)+ try every way to split a text; say it without",
         arena_format(p->arena, "'%s' takes more than %d steps on \"%.60s\"", rule->id, LIMIT_EXAMPLE_STEPS,
                      text));
}

// A hit that no word of the rule announces would be found here and never in a record.
static bool is_announced(struct prover *p, const struct finder *finder, const char *text) {
    struct triggers *triggers = triggers_new(p->arena);
    triggers_add(p->arena, triggers, finder);
    triggers_close(p->arena, triggers);
    unsigned char *wanted = arena_array(p->arena, finder->number + 1, sizeof *wanted);
    triggers_mark(triggers, text, wanted);
    return wanted[finder->number];
}

static void prove_hits(struct prover *p, const struct rule *rule, const struct finder *finder) {
    for (size_t i = 0; i < rule->hits.count; i++) {
        p->counts->hits++;
        const char *text;
        struct span want = {0, 0}, got = {0, 0};
        if (!unbracket(p->arena, rule->hits.at[i], &text, &want)) {
            fail(p, CODE_RULE_HIT, rule, "put the words to be found in [ ]",
                 arena_format(p->arena, "the hit \"%s\" of '%s' marks nothing", rule->hits.at[i], rule->id));
            continue;
        }
        enum scan_result result = find(p, finder, text, &want, &got);
        if (result == SCAN_FOUND && !is_announced(p, finder, text))
            fail(p, CODE_RULE_HIT, rule, "name one of its words under 'match_on'",
                 arena_format(p->arena, "no word of 'said' or 'match_on' of '%s' stands in its hit \"%s\"",
                              rule->id, rule->hits.at[i]));
        else if (result == SCAN_SLOW)
            too_slow(p, rule, text);
        else if (result == SCAN_NONE)
            fail(p, CODE_RULE_HIT, rule, NULL,
                 arena_format(p->arena, "'%s' finds nothing in its hit \"%s\"", rule->id, rule->hits.at[i]));
        else if (result == SCAN_FOUND && (got.from != want.from || got.to != want.to))
            fail(p, CODE_RULE_HIT, rule, NULL,
                 arena_format(p->arena, "'%s' finds \"%.*s\" in its hit \"%s\"", rule->id,
                              (int)(got.to - got.from), text + got.from, rule->hits.at[i]));
        else if (!is_announced(p, finder, text))
            fail(p, CODE_RULE_HIT, rule, "name one of its words under 'match_on'",
                 arena_format(p->arena, "no word of 'said' or 'match_on' of '%s' stands in its hit \"%s\"",
                              rule->id, rule->hits.at[i]));
    }
}

static bool holds_word(struct prover *p, const struct finder *finder, const char *text) {
    struct finder bare = {.said = finder->said};
    struct scanner *scanner = scanner_new(p->arena, 1);
    struct span match;
    return scanner_find(scanner, &bare, text, strlen(text), 0, &match) == SCAN_FOUND;
}

static void prove_misses(struct prover *p, const struct rule *rule, const struct finder *finder) {
    for (size_t i = 0; i < rule->misses.count; i++) {
        const char *text = rule->misses.at[i];
        struct span got = {0, 0};
        p->counts->misses++;
        if (p->by_words) {
            p->counts->misses_weighed++;
            p->counts->misses_with_word += holds_word(p, finder, text);
        }
        enum scan_result result = find(p, finder, text, NULL, &got);
        if (result == SCAN_SLOW) too_slow(p, rule, text);
        if (result == SCAN_FOUND)
            fail(p, CODE_RULE_MISS, rule, "name the phrase under 'unless', or narrow 'said'",
                 arena_format(p->arena, "'%s' finds \"%.*s\" in its miss \"%s\"", rule->id,
                              (int)(got.to - got.from), text + got.from, text));
    }
}

// A gap that comes out right is no gap any more: it has to become a hit or a miss, or it would rot.
static void prove_gaps(struct prover *p, const struct rule *rule, const struct finder *finder) {
    for (size_t i = 0; i < rule->gaps.count; i++) {
        p->counts->gaps++;
        const char *text;
        struct span want = {0, 0}, got = {0, 0};
        bool marked = unbracket(p->arena, rule->gaps.at[i], &text, &want);
        enum scan_result result = find(p, finder, text, marked ? &want : NULL, &got);
        if (result == SCAN_SLOW) too_slow(p, rule, text);
        bool right =
            marked ? result == SCAN_FOUND && got.from == want.from && got.to == want.to : result == SCAN_NONE;
        if (right)
            fail(
                p, CODE_RULE_GAP, rule, "make it a hit or a miss",
                arena_format(p->arena, "the gap \"%s\" of '%s' comes out right", rule->gaps.at[i], rule->id));
    }
}

// `whole`: PCRE2 finds its words too.
static void prove_finder(struct prover *p, const struct rule *rule, const struct finder *finder, bool whole) {
    if (!finder_check(p->arena, finder, rule, whole, p->diags)) return;
    if (!rule->hits.count || !rule->misses.count)
        fail(p, CODE_RULE_EXAMPLE, rule, "hits: [\"[chip] on the rim\"], misses: [\"chip and dip set\"]",
             arena_format(p->arena, "'%s' has no %s", rule->id, rule->hits.count ? "misses" : "hits"));
    prove_hits(p, rule, finder);
    prove_misses(p, rule, finder);
    prove_gaps(p, rule, finder);
}

// --- families ---

static void prove_example(struct prover *p, const struct family *family) {
    if (!family->example) {
        fail(p, CODE_RULE_EXAMPLE, &family->rule, "example: {record: {...}, title: ...}",
             arena_format(p->arena, "'%s' has no example", family->rule.id));
        return;
    }
    p->counts->examples++;
    struct record record;
    if (!record_read(p->arena, p->drafter->rules, family->example, LOCALE_US, 1, &record, p->diags)) return;
    record.family = family;
    struct title_options options = {80, COUNT_GRAPHEMES, LOCALE_US, p->drafter->variants};
    const struct listing *listing = listing_draft(p->arena, p->drafter, &record, &options);
    if (!text_same(listing->title, family->example_title))
        diags_add(p->diags, CODE_RULE_EXAMPLE, family->rule.at,
                  arena_format(p->arena, "it is: %s", listing->title),
                  "the example of '%s' should have the title: %s", family->rule.id, family->example_title);
}

// Two checks are the same when most of their words are: ids alone would let copies pass as two.
static bool same_check(struct arena *arena, const struct check *a, const struct check *b) {
    struct vocabulary words = vocabulary_start(arena);
    struct numbers x = vocabulary_stems(arena, &words, a->ask), y = vocabulary_stems(arena, &words, b->ask);
    size_t shared = 0;
    for (size_t i = 0; i < x.count; i++)
        for (size_t j = 0; j < y.count; j++) shared += x.at[i] == y.at[j];
    return 10 * shared >= 6 * (x.count + y.count - shared);
}

static double likeness(struct arena *arena, const struct family *a, const struct family *b) {
    size_t shared = 0, fewer = a->check_count < b->check_count ? a->check_count : b->check_count;
    for (size_t i = 0; i < a->check_count; i++)
        for (size_t j = 0; j < b->check_count; j++)
            if (same_check(arena, &a->checks[i], &b->checks[j])) {
                shared++;
                break;
            }
    return fewer ? (double)shared / (double)fewer : 0;
}

static void compare_families(struct prover *p) {
    const struct ruleset *rules = p->drafter->rules;
    for (size_t i = 0; i < rules->family_count; i++)
        for (size_t j = i + 1; j < rules->family_count; j++) {
            double alike = likeness(p->arena, rules->families[i], rules->families[j]);
            if (alike > p->counts->likeness) {
                p->counts->likeness = alike;
                p->counts->alike[0] = rules->families[i]->rule.id;
                p->counts->alike[1] = rules->families[j]->rule.id;
            }
            if (alike > 0.5)
                fail(p, CODE_RULE_ALIKE, &rules->families[j]->rule, "give it checks of its own",
                     arena_format(p->arena, "more than half of the checks of '%s' stand in '%s' too",
                                  rules->families[j]->rule.id, rules->families[i]->rule.id));
        }
}

void proof_run(struct arena *arena, const struct drafter *drafter, struct proof_counts *counts,
               struct diags *diags) {
    *counts = (struct proof_counts){0};
    const struct ruleset *rules = drafter->rules;
    struct prover p = {.arena = arena,
                       .drafter = drafter,
                       .counts = counts,
                       .diags = diags,
                       .phrases = phrases_new(arena, rules),
                       .by_words = true};
    counts->flaws = rules->flaw_count;
    counts->families = rules->family_count;
    counts->claims = rules->claim_count;
    counts->bounds = rules->bound_count;
    scanner_limit(drafter->scanner, LIMIT_EXAMPLE_STEPS);
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct flaw *flaw = rules->flaws[i];
        p.flaw = flaw;
        prove_finder(&p, &flaw->rule, &flaw->finder, false);
    }
    p.flaw = NULL;
    for (size_t i = 0; i < rules->claim_count; i++) {
        prove_finder(&p, &rules->claims[i]->rule, &rules->claims[i]->finder, true);
        finder_check(arena, &rules->claims[i]->evidence, &rules->claims[i]->rule, true, diags);
    }
    counts->cautions = rules->caution_count;
    for (size_t i = 0; i < rules->caution_count; i++)
        prove_finder(&p, &rules->cautions[i]->rule, &rules->cautions[i]->finder, true);
    p.by_words = false;
    for (size_t i = 0; i < rules->bound_count; i++)
        prove_finder(&p, &rules->bounds[i]->rule, &rules->bounds[i]->finder, true);
    scanner_limit(drafter->scanner, LIMIT_PATTERN_STEPS);
    for (size_t i = 0; i < rules->family_count; i++) {
        counts->things += rules->families[i]->thing_count;
        counts->checks += rules->families[i]->check_count;
        prove_example(&p, rules->families[i]);
    }
    compare_families(&p);
}
