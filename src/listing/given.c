// SPDX-License-Identifier: MIT
// A title that somebody wrote, on the scale of the drafted one, with what stands against it by name. Nothing
// is taken off for these: what is wrong in a title earns nothing by itself, and a buyer's search finds the
// rest.
#include <string.h>

#include "evidence/private.h"
#include "listing/given.h"
#include "listing/dated.h"
#include "listing/listing.h"

static void less(struct arena *arena, struct given *given, const char *text) {
    given->less =
        arena_grow(arena, (void *)given->less, given->less_count, &given->less_room, sizeof *given->less);
    given->less[given->less_count++] = text;
}

static const char *unit_words(enum count_unit unit, size_t count) {
    if (unit == COUNT_BYTES) return count == 1 ? "byte" : "bytes";
    if (unit == COUNT_UTF16) return count == 1 ? "UTF-16 unit" : "UTF-16 units";
    return count == 1 ? "character" : "characters";
}

const char *given_score_text(struct arena *arena, const struct listing *l) {
    const struct given_title *g = &l->given->score;
    return arena_format(arena, "%zu of %zu %s; earned %lld of %lld", g->length, l->options.limit,
                        unit_words(l->options.unit, 2), (long long)g->earned, (long long)g->best);
}

const char *given_miss_text(struct arena *arena, const struct given_miss *m) {
    if (m->kind == MISS_MUST) return NULL;
    if (m->kind == MISS_SEARCH)
        return arena_format(arena, "the search %s (%s, %lld)", m->text, m->want, (long long)m->worth);
    return arena_format(arena, "%s (%lld)", m->text, (long long)m->worth);
}

// --- deductions ---

static void find_length(struct arena *arena, const struct listing *l, struct given *given) {
    const struct given_title *g = &given->score;
    if (g->length > l->options.limit) {
        size_t over = g->length - l->options.limit;
        less(arena, given,
             arena_format(arena, "%zu %s over the limit: %s", over, unit_words(l->options.unit, over),
                          *g->at ? arena_format(arena, "only its first %zu count",
                                                count_text(g->at, strlen(g->at), l->options.unit))
                                 : "its first word alone does not fit"));
    } else if (g->cut)
        less(arena, given, arena_format(arena, "only its first %zu bytes count", strlen(g->at)));
    if (g->earned <= g->best || !l->choice.feasible) return;
    bool untold = g->miss_count && g->misses[0].kind == MISS_MUST;
    less(arena, given,
         untold ? "earns more than the best honest title, but only by leaving out what has to be told"
                : "earns more than the best honest title, but only in words shorter than the rules write");
}

static void find_musts(struct arena *arena, struct given *given) {
    struct buf list = buf_start(arena);
    for (size_t i = 0; i < given->score.miss_count; i++)
        if (given->score.misses[i].kind == MISS_MUST)
            buf_format(&list, "%s%s", list.n ? ", " : "", given->score.misses[i].text);
    if (list.n) less(arena, given, arena_format(arena, "does not tell what has to be told: %s", list.at));
}

// Words of claims that the plan could say are lawful where they stand in its own phrases: quoted marks,
// names.
static void find_claims(struct arena *arena, const struct drafter *drafter, struct given_words *w) {
    const struct claims *claims = claims_weigh_text(arena, drafter->scanner, drafter->rules,
                                                    w->listing->record, w->given->score.reading.text);
    listing_allow_ages(arena, drafter, w->listing, claims);
    for (size_t i = 0; i < claims->count; i++) {
        const struct claim_found *found = &claims->items[i];
        given_account(w, found->word); // named once, as a claim
        if (found->verdict == VERDICT_ALLOW || !given_stands_loose(w, found->word) ||
            !given_may_print(w, found->word))
            continue;
        less(arena, w->given,
             found->claim->instead
                 ? arena_format(arena, "'%s' is a claim without evidence; write instead: %s", found->word,
                                found->claim->instead)
                 : arena_format(arena, "'%s' is a claim without evidence", found->word));
    }
}

// The words of a title are somebody's own, so they are told in quotes.
static void find_list(struct arena *arena, struct given *given, const char *lead, const struct texts *words) {
    if (!words->count) return;
    struct buf list = buf_start(arena);
    for (size_t i = 0; i < words->count && i < GIVEN_NAMED_MOST; i++)
        buf_format(&list, "%s'%s'", i ? ", " : "", words->at[i]);
    if (words->count > GIVEN_NAMED_MOST) buf_format(&list, " and %zu more", words->count - GIVEN_NAMED_MOST);
    less(arena, given, arena_format(arena, "%s: %s", lead, list.at));
}

// Phrases that the record backs hold nothing private any more, whatever they look like side by side.
static bool is_backed(const struct given_reading *r, const struct private_span *span) {
    for (size_t i = 0; i < r->count; i++)
        if (r->words[i].from < span->to && r->words[i].to > span->from && !r->words[i].told) return false;
    return true;
}

static const char *without_private(struct arena *arena, struct listing *l, struct given *given) {
    const struct given_reading *r = &given->score.reading;
    struct private_spans spans = private_find(arena, r->text, PRIVATE_MARK);
    struct buf out = buf_start(arena);
    size_t at = 0;
    bool named[PRIVATE_KINDS] = {false};
    for (size_t i = 0; i < spans.count; i++) {
        const struct private_span *span = &spans.items[i];
        if (is_backed(r, span)) continue;
        const char *phrase = private_phrase(span->kind);
        buf_add(&out, r->text + at, span->from - at);
        buf_text(&out, phrase);
        at = span->to;
        if (named[span->kind]) continue;
        named[span->kind] = true;
        listing_withhold(arena, l, arena_format(arena, "%s in the title given", phrase),
                         private_reason(span->kind), NULL);
        less(arena, given, arena_format(arena, "holds %s", phrase));
    }
    buf_text(&out, r->text + at);
    return out.at;
}

void listing_score_given(struct arena *arena, const struct drafter *drafter, struct listing *l,
                         const char *raw) {
    struct given *given = arena_alloc(arena, sizeof *given);
    given->score = title_given(arena, l->plan, &l->choice, &l->options, raw);
    given->text = without_private(arena, l, given);
    struct given_words words = given_words_start(arena, l, given);
    find_length(arena, l, given);
    find_musts(arena, given);
    find_claims(arena, drafter, &words);
    struct texts unsure = given_unsure(&words), twice = given_twice(&words), foreign = given_foreign(&words),
                 shouted = given_shouted(&words);
    find_list(arena, given, "stated as a fact, and not certain", &unsure);
    find_list(arena, given, "said twice", &twice);
    find_list(arena, given, "nothing in the record accounts for", &foreign);
    find_list(arena, given, "whole capitals", &shouted);
    l->given = given;
}
