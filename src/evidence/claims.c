// SPDX-License-Identifier: MIT
// A claim word stands only where the record holds the evidence that its rule asks for: a mark that was read, or (for age
// words) years. What the seller merely calls the thing is no evidence.
#include "evidence/claims.h"

#include <string.h>

#include "rules/trigger.h"

static const char *const verdict_words[] = {"allow", "qualify", "ask", "refuse"};

const char *verdict_name(enum verdict verdict) { return verdict_words[verdict]; }

struct weigher {
    struct arena *arena;
    struct scanner *scanner;
    const struct ruleset *rules;
    const struct record *record;
    struct claims *claims;
};

static const char *evidence_of(struct weigher *w, const struct claim *claim) {
    if (!claim->evidence.match.count) return NULL;
    for (size_t i = 0; i < w->record->mark_count; i++) {
        const char *mark = w->record->marks[i].text;
        struct span span;
        enum scan_result result = scanner_find(w->scanner, &claim->evidence, mark, strlen(mark), 0, &span);
        if (result == SCAN_FOUND) return mark;
        w->claims->slow |= result == SCAN_SLOW;
    }
    return NULL;
}

static void note(struct weigher *w, const struct claim *claim, const char *word) {
    for (size_t i = 0; i < w->claims->count; i++)
        if (w->claims->items[i].claim == claim && !strcmp(w->claims->items[i].word, word)) return;
    const char *evidence = evidence_of(w, claim);
    struct claims *c = w->claims;
    c->items = arena_grow(w->arena, c->items, c->count, &c->room, sizeof *c->items);
    c->items[c->count++] = (struct claim_found){claim, word, evidence ? VERDICT_ALLOW : claim->verdict, evidence};
}

static void weigh_text(struct weigher *w, const char *text) {
    if (!text) return;
    size_t size = strlen(text);
    bool *wanted = arena_array(w->arena, w->rules->finder_count + 1, sizeof *wanted);
    triggers_mark(w->rules->claim_triggers, text, wanted);
    for (size_t i = 0; i < w->rules->claim_count; i++) {
        const struct claim *claim = w->rules->claims[i];
        if (!wanted[claim->finder.number]) continue;
        struct span span;
        enum scan_result result = scanner_find(w->scanner, &claim->finder, text, size, 0, &span);
        if (result == SCAN_FOUND) note(w, claim, arena_copy(w->arena, text + span.from, span.to - span.from));
        w->claims->slow |= result == SCAN_SLOW;
    }
}

struct claims *claims_weigh(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                            const struct record *record) {
    struct claims *claims = arena_alloc(arena, sizeof *claims);
    struct weigher w = {arena, scanner, rules, record, claims};
    weigh_text(&w, record->type.value);
    for (size_t i = 0; i < record->others.count; i++) weigh_text(&w, record->others.at[i]);
    for (size_t i = 0; i < record->attribute_count; i++) weigh_text(&w, record->attributes[i].value);
    for (size_t i = 0; i < record->include_count; i++) weigh_text(&w, record->includes[i].what);
    return claims;
}

// Whole words: "ster" inside "sterling silver" bars nothing else.
static bool stands_in(const char *text, const char *word) {
    size_t n = strlen(word);
    for (const char *at = text; (at = strstr(at, word)); at++) {
        bool before = at == text || at[-1] == ' ' || at[-1] == '-', after = !at[n] || at[n] == ' ' || at[n] == '-';
        if (before && after) return true;
    }
    return false;
}

const struct claim_found *claims_bar(const struct claims *claims, const char *text) {
    for (size_t i = 0; i < claims->count; i++)
        if (claims->items[i].verdict != VERDICT_ALLOW && stands_in(text, claims->items[i].word)) return &claims->items[i];
    return NULL;
}
