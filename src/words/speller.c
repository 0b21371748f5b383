// SPDX-License-Identifier: MIT
// What is known: the lists first, being cheapest to ask; then the dictionary of the English asked for; then
// the other, which is opened only when a word is strange to the first.
#include "words/speller.h"

#include <string.h>

#include "words/parts.h"

#ifndef SPELLER_FOLDER
#define SPELLER_FOLDER "/usr/share/hunspell"
#endif

struct making {
    const struct speller_options *options;
    struct speller *speller;
};

static void make(struct arena *arena, void *context) {
    static const char *const names[] = {"en_US", "en_GB"},
                             *const packages[] = {"hunspell-en-us", "hunspell-en-gb"},
                             *const languages[] = {"US", "UK"};
    struct making *making = context;
    struct speller *speller = arena_alloc(arena, sizeof *speller);
    speller->arena = arena;
    speller->options = *making->options;
    speller->answers = arena_array(arena, PARTS_ANSWERS, sizeof *speller->answers);
    const char *folder = making->options->folder ? making->options->folder : SPELLER_FOLDER;
    for (int i = 0; i < 2; i++)
        speller->of[i] = (struct dictionary){.affix = arena_format(arena, "%s/%s.aff", folder, names[i]),
                                             .words = arena_format(arena, "%s/%s.dic", folder, names[i]),
                                             .package = packages[i],
                                             .language = languages[i]};
    making->speller = speller;
}

struct speller *speller_new(const struct arena_memory *memory, const struct speller_options *options) {
    struct arena *arena = arena_new(memory);
    if (!arena) return NULL;
    struct making making = {options, NULL};
    if (arena_try(arena, make, &making)) return making.speller;
    arena_free(arena);
    return NULL;
}

void speller_free(struct speller *speller) {
    if (!speller) return;
    for (int i = 0; i < 2; i++) dictionary_close(&speller->of[i]);
    arena_free(speller->arena);
}

bool speller_open(struct speller *speller, struct diags *diags) {
    return dictionary_open(&speller->of[speller->options.english], diags);
}

void parts_lower(char *word, size_t size) {
    for (size_t i = 0; i < size; i++)
        if (word[i] >= 'A' && word[i] <= 'Z') word[i] = (char)(word[i] + ('a' - 'A'));
}

size_t parts_plain(const char *word, size_t size, char plain[PARTS_WORD]) {
    size_t out = 0;
    for (size_t i = 0; i < size && out < PARTS_WORD - 1; i++) {
        bool curly =
            size - i >= 3 && (!memcmp(word + i, "\xE2\x80\x99", 3) || !memcmp(word + i, "\xE2\x80\x98", 3));
        plain[out++] = word[i];
        if (!curly) continue;
        plain[out - 1] = '\'';
        i += 2;
    }
    if (out == PARTS_WORD - 1) out = 0;
    plain[out] = '\0';
    return out;
}

size_t parts_trim(char *plain, size_t size) {
    size_t skip = 0;
    while (skip < size && plain[skip] == '\'') skip++;
    while (size > skip && plain[size - 1] == '\'') size--;
    memmove(plain, plain + skip, size - skip);
    plain[size - skip] = '\0';
    return size - skip;
}

static bool has_possessive(const char *word, size_t size) {
    return size > 3 && word[size - 2] == '\'' && (word[size - 1] == 's' || word[size - 1] == 'S');
}

bool parts_listed(const struct speller *speller, const char *word, size_t size) {
    const struct speller_options *o = &speller->options;
    char small[PARTS_WORD];
    if (!size || size >= PARTS_WORD || (!o->trade && !o->lists)) return false;
    size_t bare = has_possessive(word, size) ? size - 2 : size;
    memcpy(small, word, bare);
    small[bare] = '\0';
    parts_lower(small, bare);
    return (o->trade && trade_knows(o->trade, small, bare)) ||
           (o->lists && o->lists(o->lists_context, small, bare));
}

static bool is_in_dictionary(struct speller *speller, const char *word, struct diags *diags) {
    enum speller_english english = speller->options.english;
    if (dictionary_knows(&speller->of[english], word)) return true;
    if (!speller->options.both) return false;
    struct dictionary *other = &speller->of[english == SPELLER_US ? SPELLER_GB : SPELLER_US];
    return dictionary_open(other, diags) && dictionary_knows(other, word);
}

static uint64_t hash_of(const char *word, size_t size) {
    uint64_t h = 14695981039346656037u;
    for (size_t i = 0; i < size; i++) h = (h ^ (unsigned char)word[i]) * 1099511628211u;
    return h;
}

// hunspell takes microseconds a word, and the same words come again in every record.
static bool is_answered_known(struct speller *speller, char *plain, size_t size, struct diags *diags) {
    uint64_t hash = hash_of(plain, size), *answer = &speller->answers[(hash >> 1) % PARTS_ANSWERS];
    hash |= 3; // 0 marks what was not asked yet
    if ((*answer | 1) == hash) return *answer & 1;
    bool known = is_in_dictionary(speller, plain, diags);
    if (!known) {
        // Its apostrophes may be quotation marks, or part of it as in 'tis.
        size_t trimmed = parts_trim(plain, size);
        known = trimmed && trimmed < size &&
                (parts_listed(speller, plain, trimmed) || is_in_dictionary(speller, plain, diags));
    }
    *answer = known ? hash : hash - 1;
    return known;
}

bool speller_knows(struct speller *speller, const char *word, size_t size, struct diags *diags) {
    char plain[PARTS_WORD];
    size_t plain_size = parts_plain(word, size, plain);
    if (parts_listed(speller, plain, plain_size) || !speller_open(speller, diags)) return true;
    return plain_size && is_answered_known(speller, plain, plain_size, diags);
}
