// SPDX-License-Identifier: MIT
// Sorted by sound, so that those which sound alike stand together, and by letters.
#include "notes/slip_words.h"

#include <stdlib.h>
#include <string.h>

#include "text/index.h"
#include "text/order.h"

enum { LEAST = 3, MOST = 20, BIT_CELLS = 1024 };

struct sounding {
    const char *sound, *word;
};

struct slip_words {
    struct sounding *all; // by sound
    const char **words;   // of the same, in that order
    const char **spelled; // by their letters
    size_t count;
    uint64_t bits[BIT_CELLS]; // one for the hash of each word: most that are asked for are none
};

// --- sound ---

static bool is_vowel(char c) {
    return c == 'a' || c == 'e' || c == 'i' || c == 'o' || c == 'u' || c == 'y';
}

static bool is_soft(char c) {
    return c == 'e' || c == 'i' || c == 'y';
}

// Letters at `at` that stand for one sound: how many, and the sound; 0 for a letter that sounds as itself.
static size_t sound_of_some(const char *at, bool first, char *sound) {
    static const struct {
        const char *letters;
        char sound;
        bool only_first;
    } some[] = {{"tch", 'C', false}, {"dge", 'j', false},  {"ch", 'C', false},  {"sh", 'S', false},
                {"th", 'T', false},  {"ph", 'f', false},   {"ck", 'k', false},  {"qu", 'k', false},
                {"kn", 'n', true},   {"gn", 'n', true},    {"wr", 'r', true},   {"wh", 'w', true},
                {"ght", 't', false}, {"tion", 'N', false}, {"sion", 'N', false}};
    for (size_t i = 0; i < sizeof some / sizeof *some; i++) {
        size_t n = strlen(some[i].letters);
        if ((some[i].only_first && !first) || strncmp(at, some[i].letters, n) != 0) continue;
        *sound = some[i].sound;
        return n;
    }
    return 0;
}

static char sound_of_one(const char *at) {
    switch (*at) {
    case 'c':
        return is_soft(at[1]) ? 's' : 'k';
    case 'q':
        return 'k';
    case 'z':
        return 's';
    default:
        return *at;
    }
}

// "Ed" and "es" behind a consonant, "e" at the end, the vowel of "handle" and "handel".
static bool is_silent(const char *word, size_t i, size_t size) {
    char before = i > 0 ? word[i - 1] : '\0', after = word[i + 1];
    if (is_vowel(before) || i == 0) return false;
    if (i + 2 == size && after == 'l' && size > 4) return true;
    if (word[i] != 'e') return false;
    if (i + 1 == size) return true;
    if (i + 2 == size && after == 'd') return before != 't' && before != 'd';
    return i + 2 == size && after == 's' && !strchr("szxh", before);
}

void slip_sound(const char *word, char sound[SOUND_ROOM]) {
    size_t size = strlen(word), n = 0;
    sound[0] = '\0';
    if (size >= SOUND_ROOM) return;
    for (size_t i = 0; i < size;) {
        char c;
        size_t taken = sound_of_some(word + i, i == 0, &c);
        if (!taken) {
            taken = 1;
            c = sound_of_one(word + i);
            bool vowel = is_vowel(word[i]) && !(i == 0 && word[i] == 'y');
            if (vowel && is_silent(word, i, size)) {
                i++;
                continue;
            }
            if (vowel) {
                while (is_vowel(word[i + taken]) && !is_silent(word, i + taken, size)) taken++;
                if (word[i + taken] == 'w' && !is_vowel(word[i + taken + 1])) taken++; // "fraw", "clowdy"
                c = 'A';
            }
        }
        i += taken;
        if (i == size && c == 'd') c = 't';
        if (c == 'h' && n) continue;
        if (!n || sound[n - 1] != c) sound[n++] = c;
    }
    sound[n] = '\0';
}

// --- the words ---

// Words that turn a note around where they are misread, and those that faults are told with.
static const char *const others[] = {
    "along",        "around",     "badly",    "bottom",      "broken",    "checked",    "closes",
    "complete",     "corner",     "couple",   "heavily",     "inside",    "missing",    "never",
    "nothing",      "opens",      "original", "outside",     "plays",     "replaced",   "several",
    "shuts",        "slightly",   "somebody", "someone",     "something", "tested",     "through",
    "turns",        "underneath", "untested", "without",     "works",     "working",    "handle",
    "handles",      "buttons",    "button",   "lining",      "corners",   "hinge",      "idea",
    "properly",     "sitting",    "screws",   "scratches",   "hinges",    "spout",      "stopper",
    "zipper",       "buckle",     "buckles",  "strings",     "drawer",    "drawers",    "stitching",
    "leather",      "plaster",    "varnish",  "color",       "colors",    "pickles",    "inches",
    "collar",       "sleeve",     "sleeves",  "seat",        "board",     "cloudiness", "veneer",
    "surface",      "condition",  "sturdy",   "about",       "almost",    "enough",     "except",
    "because",      "center",     "cushion",  "pendulum",    "cabinet",   "medium",     "directions",
    "instructions", "wheel",      "wheels",   "pieces",      "picture",   "pictures",   "machine",
    "separate",     "crayon",     "ribbon",   "embroidered", "crocheted", "knitted",    "figurine",
    "feathers",     "bracket",    "buckled",  "button",      "quarter",   "half",       "shaped",
    "would",        "could",      "should",   "believe",     "sharpened", "receipt"};

// What a walk over the rules' words does with each.
struct walk {
    struct index *seen;
    size_t count, bytes;    // of the different words, each with its zero
    struct slip_words *to;  // NULL: only count
    char *letters, *sounds; // room for `bytes`: no word sounds longer than it is
};

static void set_bit(struct slip_words *w, const char *word, size_t size) {
    uint64_t hash = index_hash(word, size);
    w->bits[(hash >> 6) % BIT_CELLS] |= (uint64_t)1 << hash % 64;
}

static void take(struct walk *walk, const char *word, size_t size) {
    struct slip_words *w = walk->to;
    char *own = walk->letters + walk->bytes, sound[SOUND_ROOM];
    memcpy(own, word, size);
    own[size] = '\0';
    slip_sound(own, sound);
    char *heard = walk->sounds + walk->bytes;
    memcpy(heard, sound, strlen(sound) + 1);
    w->all[walk->count] = (struct sounding){heard, own};
    w->spelled[walk->count] = own;
    set_bit(w, word, size);
}

static void add(struct walk *walk, const char *word, size_t size) {
    if (size < LEAST || size > MOST) return;
    for (size_t i = 0; i < size; i++)
        if (word[i] < 'a' || word[i] > 'z') return;
    if (index_find(walk->seen, word, size) != INDEX_NONE) return;
    index_add(walk->seen, word, size, walk->count);
    if (walk->to) take(walk, word, size);
    walk->count++;
    walk->bytes += size + 1;
}

static void add_each(struct walk *walk, const struct texts *texts) {
    for (size_t i = 0; i < texts->count; i++)
        for (const char *at = texts->at[i]; *at;) {
            size_t n = strcspn(at, " -/{}");
            add(walk, at, n);
            at += n + (at[n] != '\0');
        }
}

static void add_all(struct walk *walk, const struct ruleset *rules) {
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) add(walk, others[i], strlen(others[i]));
    for (size_t i = 0; i < rules->flaw_count; i++) {
        add_each(walk, &rules->flaws[i]->finder.said);
        add_each(walk, &rules->flaws[i]->near);
        add_each(walk, &rules->flaws[i]->parts);
    }
}

static size_t count_parts(const struct texts *texts) {
    size_t count = texts->count;
    for (size_t i = 0; i < texts->count; i++)
        for (const char *at = texts->at[i]; (at = strpbrk(at, " -/{}")) != NULL; at++) count++;
    return count;
}

static int sound_order(const void *a, const void *b) {
    const struct sounding *x = a, *y = b;
    int order = strcmp(x->sound, y->sound);
    return order ? order : strcmp(x->word, y->word);
}

static int word_order(const void *a, const void *b) {
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static size_t count_all(const struct ruleset *rules) {
    size_t most = sizeof others / sizeof *others;
    for (size_t i = 0; i < rules->flaw_count; i++)
        most += count_parts(&rules->flaws[i]->finder.said) + count_parts(&rules->flaws[i]->near) +
                count_parts(&rules->flaws[i]->parts);
    return most;
}

// The rules repeat most of their words: these are counted first, and what tells them apart is given back.
struct slip_words *slip_words_new(struct arena *arena, const struct ruleset *rules) {
    struct slip_words *w = arena_alloc(arena, sizeof *w);
    size_t most = count_all(rules);
    struct arena_mark before = arena_mark(arena);
    struct walk counted = {.seen = index_new(arena, most)};
    add_all(&counted, rules);
    arena_release(arena, &before);
    w->all = arena_array(arena, counted.count + 1, sizeof *w->all);
    w->words = arena_array(arena, counted.count + 1, sizeof *w->words);
    w->spelled = arena_array(arena, counted.count + 1, sizeof *w->spelled);
    struct walk walk = {.to = w,
                        .letters = arena_alloc(arena, counted.bytes + 1),
                        .sounds = arena_alloc(arena, counted.bytes + 1)};
    before = arena_mark(arena);
    walk.seen = index_new(arena, most);
    add_all(&walk, rules);
    arena_release(arena, &before);
    w->count = walk.count;
    if (w->count) {
        qsort(w->all, w->count, sizeof *w->all, sound_order);
        qsort(w->spelled, w->count, sizeof *w->spelled, word_order);
    }
    for (size_t i = 0; i < w->count; i++) w->words[i] = w->all[i].word;
    return w;
}

bool slip_words_has(const struct slip_words *w, const char *word, size_t size) {
    uint64_t hash = index_hash(word, size);
    if (!(w->bits[(hash >> 6) % BIT_CELLS] >> hash % 64 & 1)) return false;
    return w->count && bsearch(&word, w->spelled, w->count, sizeof *w->spelled, word_order);
}

const char *const *slip_words_alike(const struct slip_words *w, const char *sound, size_t *count) {
    size_t from = 0, to = w->count;
    while (from < to) {
        size_t middle = from + (to - from) / 2;
        if (strcmp(w->all[middle].sound, sound) < 0)
            from = middle + 1;
        else
            to = middle;
    }
    for (*count = 0; from + *count < w->count && text_same(w->all[from + *count].sound, sound);) ++*count;
    return w->words + from;
}
