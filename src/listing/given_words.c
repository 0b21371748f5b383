// SPDX-License-Identifier: MIT
// Word by word: a title is short, its record may be long, so the record is read past the title's words.
#include <string.h>

#include "listing/given.h"
#include "text/order.h"

enum {
    READ_MOST = 100000, // bytes of one text; what accounts for a title stands near the start
    RUN_MOST = 200,     // bytes without a space that are read as one run of words
    SHOUT_LETTERS = 4   // shorter words in capitals are abbreviations more often than not
};

struct list {
    struct given_words *words;
    struct texts texts;
    size_t room;
};

// The stem; of a figure with its unit written close, the figure.
static const char *stem_for_record(struct arena *arena, const struct given_reading *r, size_t i) {
    const char *fold = r->words[i].fold;
    size_t figure = strspn(fold, "0123456789./");
    if (figure && fold[figure] && word_is_free(fold + figure)) return arena_copy(arena, fold, figure);
    return r->stems.names[r->words[i].stem];
}

struct given_words given_words_start(struct arena *arena, const struct listing *l, struct given *given) {
    struct given_words w = {.arena = arena, .listing = l, .given = given, .reading = &given->score.reading};
    w.shown = given_split(arena, given->text);
    w.known = arena_array(arena, w.reading->count + 1, sizeof *w.known);
    w.stems = arena_array(arena, w.reading->count + 1, sizeof *w.stems);
    for (size_t i = 0; i < w.reading->count; i++) w.stems[i] = stem_for_record(arena, w.reading, i);
    return w;
}

bool given_may_print(struct given_words *w, const char *text) {
    size_t at = 0, count;
    return given_find(w->arena, &w->shown, text, &at, &count);
}

static const char *word_text(const struct given_words *w, size_t i) {
    const struct given_word *word = &w->reading->words[i];
    return arena_copy(w->arena, w->reading->text + word->from, word->to - word->from);
}

static void put(struct list *list, const char *text) {
    for (size_t i = 0; i < list->texts.count; i++)
        if (text_same(list->texts.at[i], text)) return;
    if (!given_may_print(list->words, text)) return;
    list->texts.at = arena_grow(list->words->arena, (void *)list->texts.at, list->texts.count, &list->room,
                                sizeof *list->texts.at);
    list->texts.at[list->texts.count++] = text;
}

// Words of a name or mark may stand again and in any letters.
static bool is_name(const struct given_words *w, size_t i) {
    int phrase = w->reading->words[i].phrase;
    return phrase >= 0 && w->listing->plan->phrases[phrase].name;
}

// --- what is not certain ---

static bool is_doubt(const char *fold) {
    static const char *const doubts[] = {"possible", "possibly", "maybe", "perhaps", "probably", "likely"};
    for (size_t i = 0; i < sizeof doubts / sizeof *doubts; i++)
        if (text_same(fold, doubts[i])) return true;
    return false;
}

static bool is_doubted(const struct given_words *w, size_t at, size_t count) {
    const struct given_reading *r = w->reading;
    return (at > 0 && is_doubt(r->words[at - 1].fold)) || r->text[r->words[at + count - 1].to] == '?';
}

static bool is_loose(const struct given_reading *r, size_t at, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (!r->words[at + i].told) return true;
    return false;
}

bool given_stands_loose(struct given_words *w, const char *text) {
    size_t count;
    for (size_t at = 0; given_find(w->arena, w->reading, text, &at, &count); at++)
        if (is_loose(w->reading, at, count)) return true;
    return false;
}

static void put_unsure(struct list *list, const char *text) {
    struct given_words *w = list->words;
    size_t count;
    for (size_t at = 0; text && given_find(w->arena, w->reading, text, &at, &count); at++)
        if (is_loose(w->reading, at, count) && !is_doubted(w, at, count)) put(list, text);
}

// "Crack on Rim" where the record has only "Possible Crack on Rim" to tell.
static void put_unsure_must(struct list *list, const struct plan_phrase *phrase) {
    struct given_words *w = list->words;
    for (size_t k = 0; k < phrase->count; k++) {
        const char *text = phrase->spellings[k].text, *rest = strchr(text, ' ');
        if (!rest || !is_doubt(utf8_fold(w->arena, arena_copy(w->arena, text, (size_t)(rest - text)))))
            return;
        size_t before = list->texts.count;
        put_unsure(list, rest + 1);
        if (list->texts.count > before) return; // the fuller wording holds the shorter ones
    }
}

struct texts given_unsure(struct given_words *w) {
    const struct record *r = w->listing->record;
    struct list list = {.words = w};
    if (r->type.sure != SURE_STATED) put_unsure(&list, r->type.value);
    for (size_t i = 0; i < r->attribute_count; i++)
        if (r->attributes[i].sure != SURE_STATED) put_unsure(&list, r->attributes[i].value);
    for (size_t i = 0; i < r->fit_count; i++) {
        if (r->fits[i].sure == SURE_STATED) continue;
        put_unsure(&list, r->fits[i].brand);
        put_unsure(&list, r->fits[i].model);
    }
    for (size_t i = 0; i < w->given->score.miss_count; i++) {
        const struct given_miss *miss = &w->given->score.misses[i];
        if (miss->kind == MISS_MUST) put_unsure_must(&list, &w->listing->plan->phrases[miss->phrase]);
    }
    return list.texts;
}

// --- said twice ---

struct texts given_twice(struct given_words *w) {
    struct list list = {.words = w};
    struct vocabulary seen = vocabulary_start(w->arena);
    for (size_t i = 0; i < w->reading->count; i++) {
        if (is_name(w, i) || word_is_free(w->reading->words[i].fold)) continue;
        size_t at = 0;
        for (const char *word; (word = letters_next(w->arena, w->reading->words[i].fold, &at));) {
            size_t before = seen.count;
            if (word_is_free(word) || vocabulary_number(w->arena, &seen, word) == before) continue;
            put(&list, word);
        }
    }
    return list.texts;
}

// --- not accounted for ---

static bool inside_point(char byte) {
    return ((unsigned char)byte & 0xC0) == 0x80;
}

// At the next space, or behind so much that no word is as long.
static size_t run_end(const char *text, size_t from, size_t size) {
    size_t to = from + 1;
    while (to < size && text[to] != ' ' && (to - from < RUN_MOST || inside_point(text[to]))) to++;
    return to;
}

// No plural begins with another letter than its singular, so most words need no stem.
static void account_word(struct given_words *w, const char *word) {
    const char *stem = NULL;
    for (size_t i = 0; i < w->reading->count; i++) {
        if (w->known[i] || w->reading->words[i].told || w->stems[i][0] != word[0]) continue;
        if (!stem) stem = say_stem(w->arena, word);
        w->known[i] = text_same(w->stems[i], stem);
    }
}

static bool all_accounted(const struct given_words *w) {
    for (size_t i = 0; i < w->reading->count; i++)
        if (!w->known[i] && !w->reading->words[i].told) return false;
    return true;
}

void given_account(struct given_words *w, const char *text) {
    if (!text || all_accounted(w)) return;
    size_t size = strnlen(text, READ_MOST);
    while (size > 0 && inside_point(text[size])) size--;
    for (size_t from = 0; from < size;) {
        size_t to = run_end(text, from, size);
        struct arena_mark mark = arena_mark(w->arena);
        const char *run = arena_copy(w->arena, text + from, to - from);
        size_t at = 0;
        for (const char *word; (word = word_next(w->arena, run, &at));) account_word(w, word);
        arena_release(w->arena, &mark);
        from = to + (to < size && text[to] == ' ');
    }
}

static void account_texts(struct given_words *w, const struct texts *texts) {
    for (size_t i = 0; i < texts->count; i++) given_account(w, texts->at[i]);
}

static void account_plan(struct given_words *w) {
    const struct title_plan *plan = w->listing->plan;
    for (size_t i = 0; i < plan->count; i++)
        for (size_t k = 0; k < plan->phrases[i].count; k++)
            given_account(w, plan->phrases[i].spellings[k].text);
    for (size_t i = 0; i < plan->barred_count; i++) given_account(w, plan->barred[i].text);
    for (int i = 0; i < ROLLUP_COUNT; i++)
        if (plan->rollup_index[i] >= 0) given_account(w, plan->rollup_text[i]);
}

static void account_kind(struct given_words *w, const struct flaw *kind) {
    if (!kind) return;
    given_account(w, kind->print);
    given_account(w, kind->noun);
    given_account(w, kind->adjective);
    account_texts(w, &kind->finder.said);
    account_texts(w, &kind->title);
}

// Asides are not about the thing, so a title cannot rest on them.
static void account_notes(struct given_words *w) {
    const struct record *r = w->listing->record;
    if (!r->notes) return;
    size_t size = strnlen(r->notes, READ_MOST);
    char *notes = arena_copy(w->arena, r->notes, size);
    for (size_t i = 0; r->asides && i < r->asides->count; i++) {
        const struct node *span = r->asides->members[i].value;
        double from, to;
        if (span->count != 2 || !node_number(span->members[0].value, &from) ||
            !node_number(span->members[1].value, &to))
            continue;
        for (size_t at = 0; at < size; at++)
            if ((double)at >= from && (double)at < to) notes[at] = ' ';
    }
    given_account(w, notes);
}

static void account_tree(struct given_words *w, const struct node *node, bool top) {
    static const char *const not_said[] = {"id", "notes", "listing", "asides", "unread", "own"};
    if (!node->members) {
        given_account(w, node->text);
        return;
    }
    for (size_t i = 0; i < node->count; i++) {
        bool said = true;
        for (size_t k = 0; top && k < sizeof not_said / sizeof *not_said; k++)
            said = said && !text_same(node->members[i].key, not_said[k]);
        if (said) account_tree(w, node->members[i].value, false);
    }
}

static void account_record(struct given_words *w) {
    const struct record *r = w->listing->record;
    account_notes(w); // mostly these account for all
    account_plan(w);
    account_tree(w, r->tree, true);
    for (size_t i = 0; i < r->flaw_count; i++) account_kind(w, r->flaws[i].kind);
    for (size_t i = 0; i < r->clear_count; i++) account_kind(w, r->clear[i].kind);
    if (r->measurement_count)
        given_account(w, "inch inches mm cm ml g kg oz lb ft x tall wide high deep long across diameter");
    if (r->count > 1) given_account(w, "lot set pair pieces");
}

struct texts given_foreign(struct given_words *w) {
    struct list list = {.words = w};
    account_record(w);
    for (size_t i = 0; i < w->reading->count; i++) {
        const struct given_word *word = &w->reading->words[i];
        // One letter or digit says too little to be held against anybody.
        bool says = word->letters && word->fold[0] && word->fold[1];
        if (!says || word->told || w->known[i] || word_is_free(word->fold) || is_doubt(word->fold)) continue;
        put(&list, word_text(w, i));
    }
    return list.texts;
}

// --- whole capitals ---

static bool is_shouted(const char *word) {
    size_t letters = 0, size = strlen(word);
    for (size_t at = 0; at < size;) {
        uint32_t point = utf8_next(word, size, &at);
        if (utf8_is_digit(point) || utf8_lower(point) == point) return false;
        letters += utf8_is_letter(point);
    }
    return letters >= SHOUT_LETTERS;
}

static bool record_writes(const struct given_words *w, const char *word) {
    const struct title_plan *plan = w->listing->plan;
    const struct record *r = w->listing->record;
    for (size_t i = 0; i < plan->count; i++)
        for (size_t k = 0; k < plan->phrases[i].count; k++)
            if (strstr(plan->phrases[i].spellings[k].text, word)) return true;
    for (size_t i = 0; i < r->mark_count; i++)
        if (strstr(r->marks[i].text, word)) return true;
    for (size_t i = 0; i < r->attribute_count; i++)
        if (strstr(r->attributes[i].value, word)) return true;
    return false;
}

struct texts given_shouted(struct given_words *w) {
    struct list list = {.words = w};
    for (size_t i = 0; i < w->reading->count; i++) {
        const char *word = word_text(w, i);
        if (is_shouted(word) && !is_name(w, i) && !record_writes(w, word)) put(&list, word);
    }
    return list.texts;
}
