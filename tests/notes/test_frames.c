// SPDX-License-Identifier: MIT
// Is the noun of a plain sentence the thing, whatever the noun? Every fifth noun of WordNet whose most usual
// sense is a thing made by people, places and buildings apart, stands in three frames among other nouns.
#include "support_book.h"

#include <ctype.h>

enum { NOUN_STEP = 5, DEPTH_MOST = 20, SHOWN_MOST = 40 };

struct net {
    char *index, *data;
    size_t data_size;
};

static char *read_all(struct arena *arena, const char *path, size_t *size) {
    FILE *file = fopen(path, "rb");
    ck_assert_msg(file != NULL, "%s is missing: package wordnet-base", path);
    enum { ROOM = 20 << 20 };
    char *text = arena_alloc(arena, ROOM + 1);
    *size = fread(text, 1, ROOM, file);
    text[*size] = '\0';
    fclose(file);
    return text;
}

static struct net open_net(struct arena *arena) {
    struct net net;
    size_t size;
    net.index = read_all(arena, "/usr/share/wordnet/index.noun", &size);
    net.data = read_all(arena, "/usr/share/wordnet/data.noun", &net.data_size);
    return net;
}

// The lexicographer's file of a sense: 6 holds what people made.
static long file_of(const struct net *net, unsigned long at) {
    return at + 12 < net->data_size ? strtol(net->data + at + 9, NULL, 10) : -1;
}

// One sense by itself: searching the whole file for a word would measure it each time.
static const char *line_of(const struct net *net, unsigned long at, char *line, size_t room) {
    size_t size = 0;
    for (const char *c = net->data + at; *c && *c != '\n' && *c != '|' && size + 1 < room; c++)
        line[size++] = *c;
    line[size] = '\0';
    return line;
}

enum { LINE_ROOM = 16000 };

static bool has_word(const char *line, const char *word) {
    size_t n = strlen(word);
    const char *end = line + strcspn(line, "@");
    for (const char *c = line; (c = strstr(c, word)) != NULL && c < end; c += n)
        if (c[-1] == ' ' && c[n] == ' ') return true;
    return false;
}

static bool is_place(const struct net *net, unsigned long at, int depth) {
    static const char *const places[] = {"structure", "building", "facility", "way",     "area",
                                         "room",      "creation", "layer",    "surface", "line"};
    char room[LINE_ROOM];
    const char *line = line_of(net, at, room, sizeof room);
    for (size_t i = 0; i < sizeof places / sizeof *places; i++)
        if (has_word(line, places[i])) return true;
    if (depth == DEPTH_MOST) return false;
    for (const char *c = line; (c = strstr(c, " @ ")) != NULL; c += 3)
        if (is_place(net, strtoul(c + 3, NULL, 10), depth + 1)) return true;
    return false;
}

// Does the sense print the lemma as it stands in the index, without a capital?
static bool is_small(const struct net *net, unsigned long at, const char *lemma) {
    char room[LINE_ROOM];
    return has_word(line_of(net, at, room, sizeof room), lemma);
}

// The lemma of an index line when its first sense is goods; NULL otherwise.
static const char *goods_of(const struct net *net, char *line) {
    char *rest, *fields[160];
    size_t count = 0;
    if (line[0] == ' ') return NULL;
    for (char *f = strtok_r(line, " ", &rest); f && count < 160; f = strtok_r(NULL, " ", &rest))
        fields[count++] = f;
    if (count < 6) return NULL;
    size_t senses = strtoul(fields[2], NULL, 10);
    for (const char *c = fields[0]; *c; c++)
        if (!islower((unsigned char)*c)) return NULL;
    if (strlen(fields[0]) < 3 || !senses || senses + 4 > count) return NULL;
    unsigned long at = strtoul(fields[count - senses], NULL, 10);
    bool goods = file_of(net, at) == 6 && is_small(net, at, fields[0]) && !is_place(net, at, 0);
    return goods ? fields[0] : NULL;
}

struct tally {
    size_t all, right, none, other, shown;
};

static void tell(struct tally *tally, const char *note, const char *noun, const char *got) {
    tally->all++;
    if (got && !strcmp(got, noun)) {
        tally->right++;
        return;
    }
    if (got)
        tally->other++;
    else
        tally->none++;
    if (tally->shown++ < SHOWN_MOST) fprintf(stderr, "  %s: %s\n", note, got ? got : "no type");
}

struct reading_of {
    const char *note;
    char type[64]; // small letters; empty when the note has none
};

static void read_type(struct arena *arena, void *context) {
    struct reading_of *of = context;
    const struct record *record = support_read(arena, of->note);
    const char *type = record->type.value ? record->type.value : "";
    size_t n = 0;
    for (; type[n] && n + 1 < sizeof of->type; n++) of->type[n] = (char)tolower((unsigned char)type[n]);
    of->type[n] = '\0';
}

static const char *type_of(struct reading_of *of) {
    struct arena *own = arena_new(NULL);
    ck_assert(arena_try(own, read_type, of));
    arena_free(own);
    return of->type[0] ? of->type : NULL;
}

struct frame {
    const char *before, *behind;
    const char *const *others; // stand after `behind`, in turn; NULL: none
    const char *end;
    double least;
};

static void read_frame(struct arena *arena, const struct frame *frame) {
    struct net net = open_net(arena);
    struct tally tally = {0, 0, 0, 0, 0};
    size_t number = 0;
    char *rest;
    for (char *line = strtok_r(net.index, "\n", &rest); line; line = strtok_r(NULL, "\n", &rest)) {
        const char *noun = goods_of(&net, line);
        if (!noun || number++ % NOUN_STEP) continue;
        const char *other = frame->others ? frame->others[number % 6] : "";
        struct reading_of of = {.note = arena_format(arena, "%s %s%s%s%s", frame->before, noun, frame->behind,
                                                     other, frame->end)};
        tell(&tally, of.note, noun, type_of(&of));
    }
    fprintf(stderr, "%zu of %zu nouns were the thing; another noun %zu, none %zu\n", tally.right, tally.all,
            tally.other, tally.none);
    ck_assert_uint_gt(tally.all, 800);
    ck_assert_double_ge((double)tally.right / (double)tally.all, frame->least);
}

static const char *const holders[] = {"hat", "cigar", "bread", "tool", "shoe", "candy"};
static const char *const mates[] = {"kettle", "lantern", "barometer", "stool", "banjo", "compass"};

static void chipped(struct arena *arena, void *context) {
    (void)context;
    read_frame(arena, &(struct frame){"old", " with a chip on the rim", NULL, "", 0.95});
}

static void found_in_a_box(struct arena *arena, void *context) {
    (void)context;
    read_frame(arena, &(struct frame){"found the", " in a ", holders, " box", 0.90});
}

static void with_a_mate(struct arena *arena, void *context) {
    (void)context;
    read_frame(arena, &(struct frame){"", ", goes with a ", mates, "", 0.90});
}

#define RUN(name)                                                                                            \
    START_TEST(reads_##name) {                                                                               \
        struct arena *arena = arena_new(NULL);                                                               \
        ck_assert(arena_try(arena, name, NULL));                                                             \
        arena_free(arena);                                                                                   \
    }                                                                                                        \
    END_TEST
RUN(chipped)
RUN(found_in_a_box)
RUN(with_a_mate)

int main(void) {
    Suite *suite = suite_create("notes: frames");
    TCase *tcase = tcase_create("frames");
    tcase_set_timeout(tcase, 300);
    tcase_add_test(tcase, reads_chipped);
    tcase_add_test(tcase, reads_found_in_a_box);
    tcase_add_test(tcase, reads_with_a_mate);
    suite_add_tcase(suite, tcase);
    return support_main(suite);
}
