// SPDX-License-Identifier: MIT
// The listing as a tree by its published keys; YAML and JSON are both written from it.
#include <string.h>

#include "listing/dates.h"
#include "listing/listing.h"

static void put_text(struct arena *arena, struct node *map, const char *key, const char *text) {
    if (text) node_put(arena, map, key, node_text(arena, text));
}

static void put_whole(struct arena *arena, struct node *map, const char *key, long long value) {
    node_put(arena, map, key, node_whole(arena, value));
}

static void put_span(struct arena *arena, struct node *map, struct note_span span) {
    if (!span.to) return;
    struct node *list = node_list(arena);
    node_push(arena, list, node_whole(arena, (long long)span.from));
    node_push(arena, list, node_whole(arena, (long long)span.to));
    node_put(arena, map, "span", list);
}

static struct node *texts(struct arena *arena, const char *const *items, size_t count) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < count; i++) node_push(arena, list, node_text(arena, items[i]));
    return list;
}

static struct node *words(struct arena *arena, const struct listing *l, bool answers) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < l->word_count; i++) {
        const struct title_word *word = &l->words[i];
        struct node *map = node_map(arena);
        put_text(arena, map, "text", word->text);
        put_text(arena, map, "slot", slot_name(word->slot));
        put_whole(arena, map, "worth", word->worth);
        put_text(arena, map, "because", word->because);
        put_span(arena, map, word->span);
        if (answers) node_put(arena, map, "answers", texts(arena, word->answers.at, word->answers.count));
        node_push(arena, list, map);
    }
    return list;
}

static struct node *left_out(struct arena *arena, const struct listing *l) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < l->left_count; i++) {
        struct node *map = node_map(arena);
        put_text(arena, map, "text", l->left_out[i].text);
        put_whole(arena, map, "worth", l->left_out[i].worth);
        put_whole(arena, map, "needs", (long long)l->left_out[i].needs);
        put_text(arena, map, "why", l->left_out[i].why);
        node_push(arena, list, map);
    }
    return list;
}

static struct node *condition(struct arena *arena, const struct listing *l) {
    struct node *map = node_map(arena);
    put_text(arena, map, "grade", grade_letter(l->grading.grade));
    put_text(arena, map, "schema_org", l->grading.schema_org);
    node_put(arena, map, "reasons", texts(arena, l->grading.reasons, l->grading.count));
    return map;
}

static struct node *given_score(struct arena *arena, const struct given *given) {
    struct node *map = node_map(arena), *misses = node_list(arena);
    const struct given_title *g = &given->score;
    put_text(arena, map, "title", given->text);
    put_whole(arena, map, "title_length", (long long)g->length);
    put_whole(arena, map, "earned", g->earned);
    put_whole(arena, map, "best", g->best);
    for (size_t i = 0; i < g->miss_count; i++) {
        struct node *miss = node_map(arena);
        put_text(arena, miss, "kind", miss_kind_name(g->misses[i].kind));
        put_text(arena, miss, "text", g->misses[i].text);
        put_text(arena, miss, "want", g->misses[i].want);
        put_whole(arena, miss, "worth", g->misses[i].worth);
        node_push(arena, misses, miss);
    }
    node_put(arena, map, "misses", misses);
    node_put(arena, map, "less", texts(arena, given->less, given->less_count));
    return map;
}

static struct node *score(struct arena *arena, const struct listing *l) {
    struct node *map = node_map(arena), *title = node_map(arena), *record = node_map(arena);
    put_whole(arena, title, "earned", l->worth);
    put_whole(arena, title, "best", l->worth);
    put_whole(arena, record, "answered", (long long)l->questions.answered);
    put_whole(arena, record, "asked", (long long)l->questions.asked);
    node_put(arena, map, "title", title);
    node_put(arena, map, "record", record);
    if (l->given) node_put(arena, map, "given", given_score(arena, l->given));
    node_put(arena, map, "less", texts(arena, l->less, l->less_count));
    return map;
}

static struct node *questions(struct arena *arena, const struct listing *l) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < l->questions.count; i++) {
        struct node *map = node_map(arena);
        put_text(arena, map, "id", l->questions.items[i].id);
        put_text(arena, map, "ask", l->questions.items[i].ask);
        put_text(arena, map, "kind", l->questions.items[i].kind);
        put_text(arena, map, "because", l->questions.items[i].because);
        node_push(arena, list, map);
    }
    return list;
}

static struct node *photos(struct arena *arena, const struct listing *l) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < l->photos.count; i++) {
        struct node *map = node_map(arena);
        put_text(arena, map, "shows", l->photos.items[i].shows);
        put_text(arena, map, "because", l->photos.items[i].because);
        put_text(arena, map, "where", l->photos.items[i].where);
        put_text(arena, map, "file", l->photos.items[i].file);
        node_push(arena, list, map);
    }
    return list;
}

static struct node *claims(struct arena *arena, const struct listing *l) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < l->claims->count; i++) {
        const struct claim_found *found = &l->claims->items[i];
        struct node *map = node_map(arena);
        put_text(arena, map, "word", found->word);
        put_text(arena, map, "verdict", verdict_name(found->verdict));
        put_text(arena, map, "instead", found->claim->instead);
        put_text(arena, map, "written", found->written);
        put_text(arena, map, "source", found->claim->rule.source);
        put_text(arena, map, "evidence", found->evidence);
        node_push(arena, list, map);
    }
    return list;
}

static struct node *cautions(struct arena *arena, const struct listing *l) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < l->cautions->count; i++) {
        const struct caution_found *found = &l->cautions->items[i];
        struct node *map = node_map(arena);
        put_text(arena, map, "id", found->caution->rule.id);
        put_text(arena, map, "text", found->caution->text);
        put_text(arena, map, "source", found->caution->rule.source);
        node_put(arena, map, "stop", node_bool_new(arena, found->stop));
        put_text(arena, map, "because", found->because);
        put_span(arena, map, found->span);
        node_push(arena, list, map);
    }
    return list;
}

static struct node *withheld(struct arena *arena, const struct listing *l) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < l->withheld_count; i++) {
        struct node *map = node_map(arena);
        put_text(arena, map, "what", l->withheld[i].what);
        put_text(arena, map, "why", l->withheld[i].why);
        node_push(arena, list, map);
    }
    return list;
}

static struct node *findings(struct arena *arena, const struct listing *l) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < l->finding_count; i++) {
        struct node *map = node_map(arena);
        put_text(arena, map, "level", l->findings[i].level);
        put_text(arena, map, "code", l->findings[i].code);
        put_text(arena, map, "message", l->findings[i].message);
        put_span(arena, map, l->findings[i].span);
        node_push(arena, list, map);
    }
    return list;
}

struct node *listing_tree(struct arena *arena, const struct listing *l) {
    struct node *map = node_map(arena);
    put_text(arena, map, "id", l->record->id);
    put_text(arena, map, "title", l->title);
    put_whole(arena, map, "title_length", (long long)l->title_length);
    put_whole(arena, map, "limit", (long long)l->options.limit);
    put_text(arena, map, "unit", count_unit_name(l->options.unit));
    put_whole(arena, map, "worth", l->worth);
    put_whole(arena, map, "worth_bound", l->bound);
    node_put(arena, map, "optimal", node_bool_new(arena, l->optimal));
    node_put(arena, map, "words", words(arena, l, false));
    node_put(arena, map, "left_out", left_out(arena, l));
    node_put(arena, map, "alternates", texts(arena, l->alternates, l->alternate_count));
    put_text(arena, map, "disclosure", l->disclosure.text);
    put_text(arena, map, "description", l->description);
    node_put(arena, map, "condition", condition(arena, l));
    node_put(arena, map, "score", score(arena, l));
    node_put(arena, map, "questions", questions(arena, l));
    node_put(arena, map, "photos", photos(arena, l));
    node_put(arena, map, "claims", claims(arena, l));
    if (l->dating->count) node_put(arena, map, "dating", dates_tree(arena, l->dating, false));
    node_put(arena, map, "cautions", cautions(arena, l));
    node_put(arena, map, "withheld", withheld(arena, l));
    node_put(arena, map, "findings", findings(arena, l));
    if (l->record->own) node_put(arena, map, "own", (struct node *)(uintptr_t)l->record->own);
    return map;
}

struct node *listing_explain_tree(struct arena *arena, const struct listing *l) {
    struct node *map = node_map(arena), *sentences = node_list(arena);
    put_text(arena, map, "id", l->record->id);
    put_text(arena, map, "title", l->title);
    node_put(arena, map, "words", words(arena, l, true));
    node_put(arena, map, "left_out", left_out(arena, l));
    for (size_t i = 0; i < l->disclosure.count; i++) {
        struct node *sentence = node_map(arena);
        put_text(arena, sentence, "text", l->disclosure.sentences[i].text);
        put_text(arena, sentence, "because", l->disclosure.sentences[i].because);
        put_span(arena, sentence, l->disclosure.sentences[i].span);
        node_push(arena, sentences, sentence);
    }
    node_put(arena, map, "sentences", sentences);
    node_put(arena, map, "condition", condition(arena, l));
    node_put(arena, map, "claims", claims(arena, l));
    node_put(arena, map, "withheld", withheld(arena, l));
    return map;
}
