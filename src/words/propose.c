// SPDX-License-Identifier: MIT
// From a misspelled word as written to words as they would be written in its place. The words that may be
// suggested are laid out at the first call, out of the same files that hunspell reads.
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "text/arena.h"
#include "words/parts.h"
#include "words/suggest.h"

// Above the cost of any edit that is likely: two words run together are told only where no one word is near.
enum { SPLIT_COST = 200, SPLIT_NONE = 100, TEXT_MOST = 64 << 20 };

struct file_text {
    const struct arena_memory *memory;
    char *bytes;
    size_t size;
};

// The dictionaries' texts are needed while the lexicon is built and not after: they are kept out of the
// arena. False when memory ran out; a file that cannot be read has no bytes.
static bool read_text(struct file_text *text, const char *path) {
    FILE *file = fopen(path, "rb");
    if (!file) return true;
    long size = fseek(file, 0, SEEK_END) == 0 ? ftell(file) : -1;
    rewind(file);
    bool wanted = size > 0 && size < TEXT_MOST;
    if (wanted) {
        text->bytes = text->memory->alloc(text->memory->context, (size_t)size);
        text->size = text->bytes ? fread(text->bytes, 1, (size_t)size, file) : 0;
    }
    fclose(file);
    return !wanted || text->bytes;
}

struct laying {
    struct speller *speller;
    struct file_text affix[2], words[2];
};

static void lay_out(struct arena *arena, void *context) {
    struct laying *l = context;
    struct lexicon_build *build = lexicon_start(arena);
    for (int i = 0; i < 2; i++) {
        if (!l->affix[i].bytes || !l->words[i].bytes) continue;
        const struct affixes *affixes = affixes_read(arena, l->affix[i].bytes, l->affix[i].size);
        lexicon_add_dictionary(build, affixes, l->words[i].bytes, l->words[i].size,
                               (int)l->speller->options.english == i ? LEXICON_MAIN : LEXICON_OTHER);
    }
    const struct speller_options *o = &l->speller->options;
    for (size_t i = 0; o->trade && i < o->trade->count; i++)
        lexicon_add_word(build, o->trade->words[i].word, o->trade->words[i].size, LEXICON_TRADE);
    for (size_t i = 0; i < o->usual_count; i++) lexicon_favor(build, o->usual[i], strlen(o->usual[i]));
    l->speller->lexicon = lexicon_finish(build);
}

static bool make_lexicon(struct speller *speller, struct diags *diags) {
    if (speller->lexicon) return true;
    const struct arena_memory *memory = arena_source(speller->arena);
    struct laying l = {.speller = speller};
    bool done = true, open[2];
    for (int i = 0; i < 2; i++) { // may leave for want of memory: nothing is held yet
        bool wanted = speller->options.both || (int)speller->options.english == i;
        open[i] = wanted && dictionary_open(&speller->of[i], diags);
    }
    for (int i = 0; i < 2; i++) {
        l.affix[i].memory = l.words[i].memory = memory;
        if (!open[i]) continue;
        done = done && read_text(&l.affix[i], speller->of[i].affix) &&
               read_text(&l.words[i], speller->of[i].words);
    }
    done = done && arena_try(speller->arena, lay_out, &l);
    for (int i = 0; i < 2; i++) {
        memory->free(memory->context, l.affix[i].bytes);
        memory->free(memory->context, l.words[i].bytes);
    }
    return done;
}

struct proposing {
    struct speller *speller;
    struct diags *diags;
    char small[PARTS_WORD]; // the word asked about, without a possessive ending
    size_t size;
    bool possessive, capital;
    struct suggestions out;
    size_t most;
};

static bool is_name(const struct lexicon_word *word) {
    return (word->traits & LEXICON_CAPITAL) != 0;
}

static void add(struct proposing *p, const char *word) {
    if (p->out.count == p->most) return;
    char *written = arena_format(p->diags->arena, "%s%s", word, p->possessive ? "'s" : "");
    if (p->capital && written[0] >= 'a' && written[0] <= 'z') written[0] = (char)(written[0] - ('a' - 'A'));
    for (size_t i = 0; i < p->out.count; i++)
        if (!strcmp(p->out.words[i], written)) return;
    p->out.words[p->out.count++] = written;
}

// How little a piece may stand beside another: 0 for a word of both dictionaries; SPLIT_NONE where it is no
// word, a name, or so short that it may be a stray abbreviation.
static unsigned piece_doubt(const struct proposing *p, size_t from, size_t to) {
    const struct lexicon_word *word = NULL;
    if (to - from >= 3) word = lexicon_find(p->speller->lexicon, p->small + from, to - from);
    if (!word || !(word->traits & (LEXICON_MAIN | LEXICON_TRADE)) || is_name(word)) return SPLIT_NONE;
    return (word->traits & LEXICON_MAIN && word->traits & LEXICON_OTHER) ? 0 : 1;
}

// Where two words run together fall apart with the least doubt, then most evenly; 0 where they do not.
static size_t split_at(const struct proposing *p) {
    size_t best = 0, best_odds = SIZE_MAX;
    for (size_t at = 3; at + 3 <= p->size; at++) {
        unsigned doubt = piece_doubt(p, 0, at) + piece_doubt(p, at, p->size);
        size_t odds = at * 2 > p->size ? at * 2 - p->size : p->size - at * 2;
        odds += doubt * LEXICON_LONGEST;
        if (doubt < SPLIT_NONE && odds < best_odds) best = at, best_odds = odds;
    }
    return best;
}

static void add_split(struct proposing *p, size_t at) {
    add(p, arena_format(p->diags->arena, "%.*s %.*s", (int)at, p->small, (int)(p->size - at), p->small + at));
}

static void propose(struct proposing *p) {
    const struct lexicon *l = p->speller->lexicon;
    struct ranked ranked[SUGGEST_MOST];
    size_t count = suggest_rank(l, &EDIT_WEIGHTS, &RANK_WEIGHTS, p->small, p->size, ranked, SUGGEST_MOST);
    size_t split = split_at(p);
    for (size_t i = 0; i < count; i++) {
        if (split && ranked[i].cost > SPLIT_COST) add_split(p, split), split = 0;
        const struct lexicon_word *word = &l->words[ranked[i].id];
        const char *written = arena_copy(p->diags->arena, l->letters + word->at, word->size);
        if (speller_knows(p->speller, written, word->size, p->diags)) add(p, written);
    }
    if (split) add_split(p, split);
}

static bool is_askable(const char *word, size_t size) {
    for (size_t i = 0; i < size; i++)
        if (word[i] >= '0' && word[i] <= '9') return false;
    return size > 1 && size <= LEXICON_LONGEST;
}

struct suggestions speller_suggest(struct speller *speller, const char *word, size_t size, size_t most,
                                   struct diags *diags) {
    struct proposing p = {.speller = speller, .diags = diags, .most = most};
    if (p.most > SPELLER_SUGGEST_MOST) p.most = SPELLER_SUGGEST_MOST;
    p.size = parts_trim(p.small, parts_plain(word, size, p.small));
    p.capital = p.small[0] >= 'A' && p.small[0] <= 'Z';
    parts_lower(p.small, p.size);
    if (p.size > 3 && !strcmp(p.small + p.size - 2, "'s")) {
        p.possessive = true;
        p.size -= 2;
        p.small[p.size] = '\0';
    }
    if (!is_askable(p.small, p.size) || !speller_open(speller, diags)) return p.out;
    if (!make_lexicon(speller, diags)) arena_give_up(diags->arena);
    propose(&p);
    return p.out;
}
