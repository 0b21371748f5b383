// SPDX-License-Identifier: MIT
// Which texts of the rules come out in listings. What rules only look for is left out: it holds slips on
// purpose.
#include "listing/spelling_lists.h"

#include <string.h>

#include "text/order.h"

enum { WORD_LONGEST = 40 };

struct walker {
    rule_word_taker *take;
    void *context;
};

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// Blanks such as {part} hold no words; DVD and LPs are passed over wherever they stand.
static void take_text(const struct walker *w, const char *text) {
    char word[WORD_LONGEST];
    for (const char *at = text ? text : ""; *at;) {
        size_t n = *at == '{' ? strcspn(at, "}") : 0, size = 0;
        while (!n && (is_letter(at[size]) || (size && at[size] == '\''))) size++;
        for (size_t i = 0; i < size && i < WORD_LONGEST; i++)
            word[i] = is_letter(at[i]) ? (char)(at[i] | 32) : at[i];
        bool letters = size > 1 && at[0] < 'a' && at[1] < 'a' && at[1] != '\'';
        if (size > 1 && size < WORD_LONGEST && !letters) w->take(w->context, word, size);
        n += size;
        at += n ? n : 1;
    }
}

static void take_texts(const struct walker *w, const struct texts *texts) {
    for (size_t i = 0; i < texts->count; i++) take_text(w, texts->at[i]);
}

static void take_flaw(const struct walker *w, const struct flaw *flaw) {
    const char *const texts[] = {flaw->print,       flaw->noun, flaw->plural,    flaw->adjective, flaw->part,
                                 flaw->part_plural, flaw->says, flaw->says_part, flaw->sought};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) take_text(w, texts[i]);
    for (size_t i = 0; i < SEVERITY_COUNT; i++) {
        take_text(w, flaw->scale[i]);
        take_text(w, flaw->adjective_at[i]);
    }
    take_texts(w, &flaw->title);
    take_texts(w, &flaw->title_part);
    take_texts(w, &flaw->title_beside);
    take_texts(w, &flaw->parts);
    for (size_t i = 0; i < flaw->telling_count; i++) take_flaw(w, &flaw->tellings[i]);
}

static void take_family(const struct walker *w, const struct family *family) {
    take_text(w, family->print);
    take_texts(w, &family->areas);
    for (size_t i = 0; i < family->flaw_word_count; i++) take_text(w, family->flaw_words[i].means);
    for (size_t i = 0; i < family->thing_count; i++) {
        take_text(w, family->things[i].noun);
        take_text(w, family->things[i].plural);
        take_texts(w, &family->things[i].also);
    }
}

// Words of the program's own sentences and titles that no other list has.
static const char own_words[] =
    "both could feet ft into kg lb looked measures none not nothing of oz pc pcs qt "
    "seen seller shows st that this was were what where whether which with would";

void spelling_rule_words(const struct ruleset *rules, rule_word_taker *take, void *context) {
    struct walker w = {take, context};
    take_text(&w, own_words);
    const char *pack = rules->pack_count ? rules->packs[0]->rule.id : "";
    for (size_t i = 0; i < rules->flaw_count; i++)
        if (text_same(rules->flaws[i]->rule.pack, pack)) take_flaw(&w, rules->flaws[i]);
    for (size_t i = 0; i < rules->family_count; i++)
        if (text_same(rules->families[i]->rule.pack, pack)) take_family(&w, rules->families[i]);
}

struct spelling_lists {
    const struct wordbook *book;
    uint64_t *words; // hash table of hashes
    size_t slots;
    const char **usual;
    size_t usual_count, usual_room;
};

uint64_t spelling_hash(const char *word, size_t size) {
    uint64_t h = 14695981039346656037u;
    for (size_t i = 0; i < size; i++) h = (h ^ (unsigned char)word[i]) * 1099511628211u;
    return h | 1; // 0 marks an empty slot
}

static uint64_t *slot_of(const struct spelling_lists *lists, uint64_t hash) {
    size_t at = (size_t)(hash >> 1) & (lists->slots - 1);
    while (lists->words[at] && lists->words[at] != hash) at = (at + 1) & (lists->slots - 1);
    return &lists->words[at];
}

static void count_word(void *context, const char *word, size_t size) {
    size_t *count = context;
    (void)word;
    (void)size;
    ++*count;
}

static void put_word(void *context, const char *word, size_t size) {
    struct spelling_lists *lists = context;
    uint64_t hash = spelling_hash(word, size);
    *slot_of(lists, hash) = hash;
}

static void add_usual(struct arena *arena, struct spelling_lists *lists, const char *phrase) {
    if (!phrase || strchr(phrase, ' ')) return;
    lists->usual =
        arena_grow(arena, (void *)lists->usual, lists->usual_count, &lists->usual_room, sizeof *lists->usual);
    lists->usual[lists->usual_count++] = phrase;
}

static void gather_usual(struct arena *arena, struct spelling_lists *lists, const struct ruleset *rules) {
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct flaw *flaw = rules->flaws[i];
        add_usual(arena, lists, flaw->noun);
        add_usual(arena, lists, flaw->adjective);
        add_usual(arena, lists, flaw->part);
        for (size_t k = 0; k < flaw->parts.count; k++) add_usual(arena, lists, flaw->parts.at[k]);
        for (size_t k = 0; k < flaw->finder.said.count; k++) add_usual(arena, lists, flaw->finder.said.at[k]);
    }
    for (size_t i = 0; i < rules->family_count; i++)
        for (size_t k = 0; k < rules->families[i]->thing_count; k++)
            add_usual(arena, lists, rules->families[i]->things[k].noun);
}

const struct spelling_lists *spelling_lists_new(struct arena *arena, const struct ruleset *rules,
                                                const struct wordbook *book) {
    struct spelling_lists *lists = arena_alloc(arena, sizeof *lists);
    size_t words = 0;
    spelling_rule_words(rules, count_word, &words);
    *lists = (struct spelling_lists){.book = book, .slots = 16};
    while (lists->slots < words + words / 2) lists->slots *= 2;
    lists->words = arena_array(arena, lists->slots, sizeof *lists->words);
    spelling_rule_words(rules, put_word, lists);
    gather_usual(arena, lists, rules);
    return lists;
}

struct texts spelling_usual(const struct spelling_lists *lists) {
    return (struct texts){lists->usual, lists->usual_count};
}

bool spelling_is_rule_word(const struct spelling_lists *lists, const char *word, size_t size) {
    return *slot_of(lists, spelling_hash(word, size)) != 0;
}

// The book also holds what people write for a word ("handel" for "handle"), with the word to print.
static bool is_in_book(const struct spelling_lists *lists, const char *word, size_t size) {
    struct word_entry entry;
    return wordbook_find(lists->book, word, size, &entry) && text_same(entry.print, entry.phrase) &&
           (entry.uses & ~(1u << USE_FILLER));
}

// Of the endings only that of the plural is tried: "craked" is no word, though "crake" is one.
bool spelling_lists_know(const void *context, const char *word, size_t size) {
    const struct spelling_lists *lists = context;
    static const char *const plurals[][2] = {{"s", ""}, {"es", ""}, {"ies", "y"}};
    char base[WORD_LONGEST + 2];
    if (spelling_is_rule_word(lists, word, size)) return true;
    if (!lists->book || size > WORD_LONGEST) return false;
    if (is_in_book(lists, word, size)) return true;
    for (size_t i = 0; i < sizeof plurals / sizeof *plurals; i++) {
        size_t n = strlen(plurals[i][0]);
        if (size < n + 3 || memcmp(word + size - n, plurals[i][0], n) != 0) continue;
        memcpy(base, word, size - n);
        size_t end = strlen(plurals[i][1]);
        memcpy(base + size - n, plurals[i][1], end);
        if (is_in_book(lists, base, size - n + end)) return true;
    }
    return false;
}
