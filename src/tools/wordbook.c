// SPDX-License-Identifier: MIT
// Makes the word book when the program is built: wordbook WORDNET-FOLDER LIST-FOLDER OUTPUT. A line of a list
// that breaks its form stops the build and is named.
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "tools/wordnet.h"
#include "words/wordbook.h"
#include "words/wordbook_form.h"

static const struct {
    const char *file;
    enum word_use use;
} lists[] = {{"things", USE_THING},         {"materials", USE_MATERIAL}, {"colors", USE_COLOR},
             {"techniques", USE_TECHNIQUE}, {"patterns", USE_PATTERN},   {"styles", USE_STYLE},
             {"periods", USE_PERIOD},       {"shapes", USE_SHAPE},       {"finishes", USE_FINISH},
             {"themes", USE_THEME},         {"parts", USE_PART},         {"places", USE_PLACE},
             {"gated", USE_GATED},          {"filler", USE_FILLER}};

struct maker {
    struct arena *arena;
    struct wordbook_entry *entries;
    size_t count, room;
    uint32_t *slots; // while making: index + 1 by phrase
    size_t slot_count;
    char *texts;
    size_t text_size, text_room;
    uint32_t *text_slots;
    struct family_root *roots;
    size_t root_count, root_room;
    const char *lists, *wordnet, *output;
    int faults;
};

enum { SLOTS = 1 << 19, TEXT_ROOM = 16 << 20 };

static uint32_t text_of(struct maker *m, const char *text) {
    size_t n = strlen(text);
    if (!n) return 0;
    uint32_t at = (uint32_t)wordbook_hash(text, n) & (SLOTS - 1);
    for (; m->text_slots[at]; at = (at + 1) & (SLOTS - 1))
        if (!strcmp(m->texts + m->text_slots[at], text)) return m->text_slots[at];
    if (m->text_size + n + 1 > m->text_room) {
        fprintf(stderr, "wordbook: too many texts\n");
        exit(1);
    }
    m->text_slots[at] = (uint32_t)m->text_size;
    memcpy(m->texts + m->text_size, text, n + 1);
    m->text_size += n + 1;
    return m->text_slots[at];
}

static struct wordbook_entry *entry_of(struct maker *m, const char *phrase, bool *fresh) {
    uint32_t at = (uint32_t)wordbook_hash(phrase, strlen(phrase)) & (SLOTS - 1);
    for (; m->slots[at]; at = (at + 1) & (SLOTS - 1))
        if (!strcmp(m->texts + m->entries[m->slots[at] - 1].phrase, phrase)) {
            *fresh = false;
            return &m->entries[m->slots[at] - 1];
        }
    m->entries = arena_grow(m->arena, m->entries, m->count, &m->room, sizeof *m->entries);
    struct wordbook_entry *e = &m->entries[m->count++];
    *e = (struct wordbook_entry){.phrase = text_of(m, phrase), .print = text_of(m, phrase)};
    m->slots[at] = (uint32_t)m->count;
    *fresh = true;
    return e;
}

static bool good_phrase(const char *phrase) {
    if (!*phrase || *phrase == ' ' || phrase[strlen(phrase) - 1] == ' ' || strstr(phrase, "  ")) return false;
    for (const char *c = phrase; *c; c++)
        if (!((*c >= 'a' && *c <= 'z') || (*c >= '0' && *c <= '9') || *c == ' ' || *c == '\'' || *c == '&' ||
              *c == '/' || *c == '-' || (unsigned char)*c >= 0x80))
            return false;
    return true;
}

static void complain(struct maker *m, const char *file, size_t line, const char *what) {
    fprintf(stderr, "%s/%s.txt:%zu: error: %s\n", m->lists, file, line, what);
    m->faults++;
}

// Looked up without hyphens: "mother-of-pearl" is "mother of pearl".
static const char *plain(struct maker *m, const char *phrase) {
    char *copy = arena_string(m->arena, phrase);
    for (char *c = copy; *c; c++)
        if (*c == '-') *c = ' ';
    return copy;
}

static void add(struct maker *m, const char *phrase, const char *print, enum word_use use,
                const char *family) {
    bool fresh;
    struct wordbook_entry *e = entry_of(m, plain(m, phrase), &fresh);
    if (fresh || use == USE_THING) e->print = text_of(m, print);
    e->uses |= 1u << use;
    if (family) e->family = text_of(m, family);
}

static void read_line(struct maker *m, size_t list, char *line, size_t number) {
    char *others = strchr(line, ':');
    if (others) *others++ = '\0';
    const char *family = NULL, *phrase = line;
    if (lists[list].use == USE_THING) {
        char *slash = strchr(line, '/');
        if (!slash) {
            complain(m, lists[list].file, number, "a thing is written family/noun");
            return;
        }
        *slash = '\0';
        family = line;
        phrase = slash + 1;
    }
    if (!good_phrase(phrase)) {
        complain(m, lists[list].file, number, "a phrase is small letters and single spaces");
        return;
    }
    add(m, phrase, phrase, lists[list].use, family);
    char *rest;
    for (char *other = others ? strtok_r(others, ",", &rest) : NULL; other;
         other = strtok_r(NULL, ",", &rest)) {
        while (*other == ' ') other++;
        size_t n = strlen(other);
        while (n && other[n - 1] == ' ') other[--n] = '\0';
        if (good_phrase(other))
            add(m, other, phrase, lists[list].use, family);
        else
            complain(m, lists[list].file, number, "another spelling is small letters and single spaces");
    }
}

static void read_list(struct maker *m, size_t list) {
    const char *path = arena_format(m->arena, "%s/%s.txt", m->lists, lists[list].file);
    FILE *file = fopen(path, "r");
    if (!file) {
        fprintf(stderr, "%s: error: cannot be opened\n", path);
        m->faults++;
        return;
    }
    char line[1000], last[1000] = "";
    for (size_t number = 1; fgets(line, sizeof line, file); number++) {
        line[strcspn(line, "\n")] = '\0';
        if (!line[0] || line[0] == '#') continue;
        if (strcmp(line, last) <= 0)
            complain(m, lists[list].file, number, "lines are sorted by bytes, each once");
        memcpy(last, line, strlen(line) + 1);
        read_line(m, list, line, number);
    }
    fclose(file);
}

static void read_roots(struct maker *m) {
    FILE *file = fopen(arena_format(m->arena, "%s/families.txt", m->lists), "r");
    char line[300];
    if (!file) {
        complain(m, "families", 1, "cannot be opened");
        return;
    }
    while (fgets(line, sizeof line, file)) {
        line[strcspn(line, "\n")] = '\0';
        char *family = strchr(line, ':');
        if (line[0] == '#' || !family) continue;
        *family++ = '\0';
        while (*family == ' ') family++;
        for (char *c = line; *c; c++)
            if (*c == ' ') *c = '_';
        m->roots = arena_grow(m->arena, m->roots, m->root_count, &m->root_room, sizeof *m->roots);
        m->roots[m->root_count++] =
            (struct family_root){arena_string(m->arena, line), arena_string(m->arena, family)};
    }
    fclose(file);
}

static void take(void *context, const struct wordnet_noun *noun) {
    struct maker *m = context;
    bool fresh;
    struct wordbook_entry *e = entry_of(m, plain(m, noun->lemma), &fresh);
    bool curated = e->uses & ~(1u << USE_FILLER);
    if (noun->broader) e->broader = text_of(m, noun->broader);
    if (curated && (e->uses & ((1u << USE_THING) | (1u << USE_GATED)))) {
        if (!e->family && noun->family) e->family = text_of(m, noun->family);
        if (!(e->uses & (1u << USE_THING))) { // gated by hand, still goods
            e->uses |= 1u << USE_THING;
        }
        return;
    }
    e->uses |= 1u << USE_THING;
    e->candidate = 1;
    if (noun->gated || (e->uses & (1u << USE_FILLER))) e->uses |= 1u << USE_GATED;
    if (noun->family) e->family = text_of(m, noun->family);
}

static void take_word(void *context, const char *word) {
    struct maker *m = context;
    bool fresh;
    entry_of(m, plain(m, word), &fresh)->uses |= 1u << USE_WORD;
}

static void take_namer(void *context, const char *word) {
    struct maker *m = context;
    bool fresh;
    entry_of(m, plain(m, word), &fresh)->uses |= 1u << USE_NAMER;
}

// What a list of ours has is of the goods, whatever else it is.
static void take_stranger(void *context, const char *word, enum wordnet_stranger kind) {
    static const enum word_use uses[] = {
        [WORDNET_PERSON] = USE_PERSON, [WORDNET_IDEA] = USE_IDEA, [WORDNET_NATURE] = USE_NATURE};
    enum {
        OURS = 1u << USE_MATERIAL | 1u << USE_PART | 1u << USE_PLACE | 1u << USE_PATTERN | 1u << USE_FINISH
    };
    struct maker *m = context;
    bool fresh;
    struct wordbook_entry *e = entry_of(m, plain(m, word), &fresh);
    bool sold = (e->uses & (1u << USE_THING)) && !e->candidate && !(e->uses & (1u << USE_GATED));
    if (!(e->uses & OURS) && !sold) e->uses |= 1u << uses[kind];
}

static uint32_t power_above(size_t n) {
    uint32_t p = 16;
    while (p < n) p *= 2;
    return p;
}

static size_t words_in(const char *phrase) {
    size_t n = 1;
    for (; *phrase; phrase++) n += *phrase == ' ';
    return n;
}

static bool put(FILE *file, const void *bytes, size_t size) {
    return fwrite(bytes, 1, size, file) == size;
}

static bool write_book(struct maker *m) {
    struct wordbook_head head = {WORDBOOK_MAGIC,
                                 WORDBOOK_VERSION,
                                 (uint32_t)m->count,
                                 power_above(2 * m->count),
                                 power_above(2 * m->count),
                                 0};
    uint32_t *slots = arena_array(m->arena, head.slots, sizeof *slots);
    struct wordbook_first *firsts = arena_array(m->arena, head.firsts, sizeof *firsts);
    for (size_t i = 0; i < m->count; i++) {
        const char *phrase = m->texts + m->entries[i].phrase;
        uint64_t hash = wordbook_hash(phrase, strlen(phrase));
        uint32_t at = (uint32_t)hash & (head.slots - 1);
        while (slots[at]) at = (at + 1) & (head.slots - 1);
        slots[at] = ((uint32_t)i + 1) | wordbook_tag(hash);
        size_t n = strcspn(phrase, " ");
        const char *word = arena_copy(m->arena, phrase, n);
        uint32_t offset = text_of(m, word);
        hash = wordbook_hash(word, n);
        at = (uint32_t)hash & (head.firsts - 1);
        while (firsts[at].word && firsts[at].word != offset) at = (at + 1) & (head.firsts - 1);
        firsts[at].word = offset;
        uint32_t words = (uint32_t)words_in(phrase);
        if (words > (firsts[at].longest & WORDBOOK_SLOT_MASK))
            firsts[at].longest = words | wordbook_tag(hash);
    }
    head.texts = (uint32_t)m->text_size;
    FILE *file = fopen(m->output, "wb");
    if (!file) return false;
    bool fine = put(file, &head, sizeof head) && put(file, m->entries, m->count * sizeof *m->entries) &&
                put(file, slots, head.slots * sizeof *slots) &&
                put(file, firsts, head.firsts * sizeof *firsts) && put(file, m->texts, m->text_size);
    return !fclose(file) && fine;
}

static void make(struct arena *arena, void *context) {
    struct maker *m = context;
    m->arena = arena;
    m->slots = arena_array(arena, SLOTS, sizeof *m->slots);
    m->text_slots = arena_array(arena, SLOTS, sizeof *m->text_slots);
    m->text_room = TEXT_ROOM;
    m->texts = arena_alloc(arena, TEXT_ROOM);
    m->text_size = 1; // offset 0 is the empty text
    for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) read_list(m, i);
    read_roots(m);
    struct wordnet *net = wordnet_open(arena, m->wordnet);
    if (!net) {
        fprintf(stderr, "%s: error: index.noun and data.noun cannot be read (package wordnet-base)\n",
                m->wordnet);
        m->faults++;
        return;
    }
    wordnet_each(net, m->roots, m->root_count, take, m);
    if (!wordnet_words(net, take_word, m) || !wordnet_namers(net, take_namer, m) ||
        !wordnet_strangers(net, take_stranger, m)) {
        fprintf(stderr, "%s: error: the lists of verbs, adjectives and adverbs cannot be read\n", m->wordnet);
        m->faults++;
    }
    if (!m->faults && !write_book(m)) {
        fprintf(stderr, "%s: error: cannot be written\n", m->output);
        m->faults++;
    }
}

int main(int argc, char **argv) {
    if (argc != 4) {
        fprintf(stderr, "usage: wordbook WORDNET-FOLDER LIST-FOLDER OUTPUT\n");
        return 2;
    }
    struct maker maker = {.wordnet = argv[1], .lists = argv[2], .output = argv[3]};
    struct arena *arena = arena_new(NULL);
    bool finished = arena && arena_try(arena, make, &maker);
    arena_free(arena);
    return finished && !maker.faults ? 0 : 1;
}
