// SPDX-License-Identifier: MIT
// The two files are read whole; a sense is a line of data.noun, found by its offset. Broader terms are
// followed to the top: what reaches "artifact" is a thing, what reaches a building, a way or an area is a
// place. The nearest of the given roots tells the family.
#include "tools/wordnet.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct text {
    char *at;
    size_t size;
};

struct wordnet {
    struct arena *arena;
    const char *folder;
    struct text index, data;
};

static bool read_file(struct arena *arena, const char *path, struct text *text) {
    FILE *file = fopen(path, "rb");
    if (!file) return false;
    size_t room = 20u << 20;
    text->at = arena_alloc(arena, room + 1);
    text->size = fread(text->at, 1, room, file);
    text->at[text->size] = '\0';
    fclose(file);
    return text->size > 0;
}

struct wordnet *wordnet_open(struct arena *arena, const char *folder) {
    struct wordnet *net = arena_alloc(arena, sizeof *net);
    net->arena = arena;
    net->folder = folder;
    bool read = read_file(arena, arena_format(arena, "%s/index.noun", folder), &net->index) &&
                read_file(arena, arena_format(arena, "%s/data.noun", folder), &net->data);
    return read ? net : NULL;
}

enum { BROADER_MOST = 6, DEPTH_MOST = 20, WORDS_MOST = 30 };

struct sense {
    int file; // lexicographer file: 06 is artifact
    char words[WORDS_MOST][64];
    size_t word_count;
    size_t broader[BROADER_MOST];
    size_t broader_count;
};

static bool read_sense(const struct wordnet *net, size_t offset, struct sense *sense) {
    *sense = (struct sense){.file = -1};
    if (offset >= net->data.size) return false;
    // A line of its own: sscanf measures all that it is given.
    char line[16000], *end;
    size_t size = strcspn(net->data.at + offset, "|\n");
    if (size >= sizeof line) return false;
    memcpy(line, net->data.at + offset, size);
    line[size] = '\0';
    if (strtoul(line, &end, 10) != offset) return false;
    sense->file = (int)strtol(end, &end, 10);
    end += 3; // " n "
    size_t words = strtoul(end, &end, 16);
    for (size_t i = 0; i < words; i++) {
        char word[64];
        int n = 0;
        if (sscanf(end, " %63s %*x%n", word, &n) != 1) return false;
        end += n;
        if (sense->word_count < WORDS_MOST) memcpy(sense->words[sense->word_count++], word, sizeof word);
    }
    size_t pointers = strtoul(end, &end, 10);
    for (size_t i = 0; i < pointers; i++) {
        char sign[8];
        unsigned long to;
        int n = 0;
        if (sscanf(end, " %7s %lu %*s %*s%n", sign, &to, &n) != 2) return false;
        end += n;
        if (sign[0] == '@' && sense->broader_count < BROADER_MOST)
            sense->broader[sense->broader_count++] = to;
    }
    return true;
}

static bool names(const struct sense *sense, const char *word) {
    for (size_t i = 0; i < sense->word_count; i++)
        if (!strcmp(sense->words[i], word)) return true;
    return false;
}

struct climb {
    const struct wordnet *net;
    const struct family_root *roots;
    size_t root_count;
    bool artifact, place;
    const char *family;
    int family_depth;
};

static void climb(struct climb *c, size_t offset, int depth) {
    static const char *const places[] = {"structure", "building", "facility", "way",
                                         "area",      "room",     "location", "creation_"};
    struct sense sense;
    if (depth > DEPTH_MOST || !read_sense(c->net, offset, &sense)) return;
    if (names(&sense, "artifact") || (depth == 0 && sense.file == 6)) c->artifact = true;
    for (size_t i = 0; i < sizeof places / sizeof *places; i++)
        if (depth > 0 && names(&sense, places[i]) && sense.file == 6) c->place = true;
    for (size_t i = 0; i < c->root_count; i++)
        if (names(&sense, c->roots[i].lemma) && depth < c->family_depth &&
            (sense.file == 6 || sense.file == 10)) {
            c->family = c->roots[i].family;
            c->family_depth = depth;
        }
    for (size_t i = 0; i < sense.broader_count; i++) climb(c, sense.broader[i], depth + 1);
}

// "Zurich" stands in the index without its capital.
static bool is_proper(const struct sense *sense, const char *lemma) {
    for (size_t i = 0; i < sense->word_count; i++) {
        const char *a = sense->words[i], *b = lemma;
        while (*a && (*a == *b || (isupper((unsigned char)*a) && *a + ('a' - 'A') == *b))) a++, b++;
        if (!*a && !*b) return strcmp(sense->words[i], lemma) != 0;
    }
    return false;
}

static bool is_common(const char *lemma) {
    size_t words = 1, n = strlen(lemma);
    for (const char *c = lemma; *c; c++) {
        if (*c == '_') words++;
        if (isupper((unsigned char)*c) || isdigit((unsigned char)*c) || strchr("./", *c)) return false;
    }
    return n > 2 && words <= 4;
}

static const char *spaced(struct arena *arena, const char *lemma) {
    char *copy = arena_string(arena, lemma);
    for (char *c = copy; *c; c++)
        if (*c == '_') *c = ' ';
    return copy;
}

// "vase n 1 2 @ ~ 1 1 04522168": the offsets stand last, most frequent sense first. The count of senses that
// were met in tagged texts stands before them.
static void read_line(struct wordnet *net, char *line, const struct family_root *roots, size_t root_count,
                      void (*take)(void *, const struct wordnet_noun *), void *context) {
    char *fields[160], *rest;
    size_t count = 0;
    for (char *f = strtok_r(line, " ", &rest); f && count < 160; f = strtok_r(NULL, " ", &rest))
        fields[count++] = f;
    if (count < 6 || !is_common(fields[0])) return;
    size_t senses = strtoul(fields[2], NULL, 10);
    if (!senses || senses + 4 > count) return;
    struct wordnet_noun noun = {.gated = false};
    size_t first_thing = senses;
    for (size_t s = 0; s < senses; s++) {
        struct climb c = {net, roots, root_count, false, false, NULL, DEPTH_MOST};
        size_t offset = strtoul(fields[count - senses + s], NULL, 10);
        struct sense named;
        if (read_sense(net, offset, &named) && is_proper(&named, fields[0])) continue;
        climb(&c, offset, 0);
        if (!c.artifact && !c.family) continue;
        if (!noun.thing) {
            struct sense sense;
            first_thing = s;
            noun.thing = true;
            noun.gated = c.place && !c.family;
            noun.family = c.family;
            if (read_sense(net, offset, &sense) && sense.broader_count &&
                read_sense(net, sense.broader[0], &sense) && sense.word_count)
                noun.broader = spaced(net->arena, sense.words[0]);
        }
        break;
    }
    if (!noun.thing) return;
    noun.gated |= first_thing > 0;
    noun.lemma = spaced(net->arena, fields[0]);
    take(context, &noun);
}

void wordnet_each(struct wordnet *net, const struct family_root *roots, size_t root_count,
                  void (*take)(void *, const struct wordnet_noun *), void *context) {
    char *rest;
    for (char *line = strtok_r(net->index.at, "\n", &rest); line; line = strtok_r(NULL, "\n", &rest))
        if (line[0] != ' ') read_line(net, line, roots, root_count, take, context);
}

static bool is_plain(const char *lemma) {
    for (; *lemma; lemma++)
        if (!((*lemma >= 'a' && *lemma <= 'z') || *lemma == '-' || *lemma == '\'')) return false;
    return true;
}

static bool take_words(struct wordnet *net, const char *name, void (*take)(void *, const char *),
                       void *context) {
    struct text text;
    if (!read_file(net->arena, arena_format(net->arena, "%s/%s", net->folder, name), &text)) return false;
    char *rest;
    for (char *line = strtok_r(text.at, "\n", &rest); line; line = strtok_r(NULL, "\n", &rest)) {
        if (line[0] == ' ') continue;
        line[strcspn(line, " ")] = '\0';
        if (strlen(line) > 2 && is_plain(line)) take(context, line);
    }
    return true;
}

bool wordnet_words(struct wordnet *net, void (*take)(void *, const char *), void *context) {
    static const char *const files[] = {"index.noun", "index.verb", "index.adj", "index.adv",
                                        "noun.exc",   "verb.exc",   "adj.exc",   "adv.exc"};
    for (size_t i = 0; i < sizeof files / sizeof *files; i++)
        if (!take_words(net, files[i], take, context)) return false;
    return true;
}

static int by_text(const void *a, const void *b) {
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

struct words {
    struct arena *arena;
    const char **at;
    size_t count, room;
};

static void keep_word(void *context, const char *word) {
    struct words *words = context;
    words->at = arena_grow(words->arena, words->at, words->count, &words->room, sizeof *words->at);
    words->at[words->count++] = arena_string(words->arena, word);
}

enum {
    FIELDS_MOST = 160,
    ANIMAL = 5,
    ARTIFACT = 6,
    BODY = 8,
    FOOD = 13,
    LOCATION = 15,
    OBJECT = 17,
    PERSON = 18,
    PHENOMENON = 19,
    PLANT = 20,
    SUBSTANCE = 27
};

// The fields of a line of index.noun; the offsets of its senses are the last `*senses` of them.
static size_t split_line(char *line, char *fields[FIELDS_MOST], size_t *senses) {
    char *rest;
    size_t count = 0;
    for (char *f = strtok_r(line, " ", &rest); f && count < FIELDS_MOST; f = strtok_r(NULL, " ", &rest))
        fields[count++] = f;
    *senses = count > 2 ? strtoul(fields[2], NULL, 10) : 0;
    if (*senses + 4 > count) *senses = 0;
    return count;
}

static bool is_touched(const struct wordnet *net, char *line) {
    char *fields[FIELDS_MOST];
    size_t senses, count = split_line(line, fields, &senses);
    struct sense first;
    if (!senses || !read_sense(net, strtoul(fields[count - senses], NULL, 10), &first) ||
        is_proper(&first, fields[0]))
        return false;
    switch (first.file) {
    case ANIMAL:
    case ARTIFACT:
    case BODY:
    case FOOD:
    case OBJECT:
    case PLANT:
    case SUBSTANCE:
        return true;
    default:
        return false;
    }
}

// Is it a building, a way, a place or a vehicle?
static bool is_site(const struct wordnet *net, size_t offset, int depth) {
    static const char *const sites[] = {"structure", "building", "facility",   "way",      "area",
                                        "vehicle",   "vessel",   "conveyance", "aircraft", "ship"};
    struct sense sense;
    if (depth > DEPTH_MOST || !read_sense(net, offset, &sense) || sense.file != ARTIFACT) return false;
    for (size_t i = 0; i < sizeof sites / sizeof *sites; i++)
        if (depth > 0 && names(&sense, sites[i])) return !names(&sense, "container");
    for (size_t i = 0; i < sense.broader_count; i++)
        if (is_site(net, sense.broader[i], depth + 1)) return true;
    return false;
}

static bool stranger_kind(const struct wordnet *net, char *line, enum wordnet_stranger *kind) {
    char *fields[FIELDS_MOST];
    size_t senses, count = split_line(line, fields, &senses);
    bool touched = false, made = false;
    int first = -1;
    size_t first_at = 0, met = senses ? strtoul(fields[count - senses - 1], NULL, 10) : 0;
    for (size_t s = 0; s < senses; s++) {
        struct sense sense;
        if (s > 0 && s >= met) break; // a sense that no text was found to have
        size_t offset = strtoul(fields[count - senses + s], NULL, 10);
        if (!read_sense(net, offset, &sense) || is_proper(&sense, fields[0])) continue;
        if (first < 0) first = sense.file, first_at = offset;
        made |= sense.file == ARTIFACT || sense.file == SUBSTANCE;
        touched |= sense.file == ANIMAL || sense.file == BODY || sense.file == FOOD || sense.file == OBJECT ||
                   sense.file == PLANT || sense.file == PERSON;
    }
    if (first < 0) return false;
    if (first == PERSON && !made)
        *kind = WORDNET_PERSON;
    else if (!touched && !made && first != LOCATION && first != PHENOMENON)
        *kind = WORDNET_IDEA;
    else if (first == ANIMAL || first == BODY || first == FOOD || first == OBJECT || first == PLANT ||
             first == LOCATION || first == PHENOMENON || (first == ARTIFACT && is_site(net, first_at, 0)))
        *kind = WORDNET_NATURE;
    else
        return false;
    return true;
}

bool wordnet_strangers(struct wordnet *net, void (*take)(void *, const char *, enum wordnet_stranger),
                       void *context) {
    struct words looks = {.arena = net->arena};
    struct text nouns;
    if (!take_words(net, "index.adj", keep_word, &looks) ||
        !take_words(net, "index.adv", keep_word, &looks) ||
        !read_file(net->arena, arena_format(net->arena, "%s/index.noun", net->folder), &nouns))
        return false;
    qsort(looks.at, looks.count, sizeof *looks.at, by_text);
    char *rest;
    for (char *line = strtok_r(nouns.at, "\n", &rest); line; line = strtok_r(NULL, "\n", &rest)) {
        if (line[0] == ' ') continue;
        const char *word = arena_copy(net->arena, line, strcspn(line, " "));
        enum wordnet_stranger kind;
        if (strlen(word) > 2 && is_plain(word) && stranger_kind(net, line, &kind) &&
            !bsearch(&word, looks.at, looks.count, sizeof *looks.at, by_text))
            take(context, word, kind);
    }
    return true;
}

bool wordnet_namers(struct wordnet *net, void (*take)(void *, const char *), void *context) {
    struct words looks = {.arena = net->arena};
    struct text nouns;
    if (!take_words(net, "index.adj", keep_word, &looks) ||
        !read_file(net->arena, arena_format(net->arena, "%s/index.noun", net->folder), &nouns))
        return false;
    if (!looks.count) return false;
    qsort(looks.at, looks.count, sizeof *looks.at, by_text);
    char *rest;
    for (char *line = strtok_r(nouns.at, "\n", &rest); line; line = strtok_r(NULL, "\n", &rest)) {
        if (line[0] == ' ') continue;
        const char *word = arena_copy(net->arena, line, strcspn(line, " "));
        if (strlen(word) > 1 && is_plain(word) && is_touched(net, line) &&
            !bsearch(&word, looks.at, looks.count, sizeof *looks.at, by_text))
            take(context, word);
    }
    return true;
}
