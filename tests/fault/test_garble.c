// SPDX-License-Identifier: MIT
// Twenty thousand inputs that were records once: bytes turned over, pieces cut out, doubled, swapped between
// records, keys said twice. Whatever comes of it, the status is one of three, every listing is JSON that
// another reader takes, and a broken input is told with a place.
#include "support.h"

#include <jansson.h>
#include <stdint.h>

enum { ROUNDS = 20000, TEXT_MOST = 1 << 16 };

struct dice {
    uint64_t state;
};

// xorshift64*: the same on every machine.
static size_t roll(struct dice *dice, size_t sides) {
    uint64_t x = dice->state;
    x ^= x >> 12;
    x ^= x << 25;
    x ^= x >> 27;
    dice->state = x;
    return (size_t)((x * UINT64_C(2685821657736338717)) >> 33) % sides;
}

struct text {
    char at[TEXT_MOST];
    size_t size;
};

static void replace(struct text *text, size_t from, size_t to, const char *bytes, size_t size) {
    size_t rest = text->size - to;
    if (from + size + rest >= TEXT_MOST) return;
    memmove(text->at + from + size, text->at + to, rest);
    memcpy(text->at + from, bytes, size);
    text->size = from + size + rest;
}

// Behind the end of the line that holds `at`.
static size_t line_end(const struct text *text, size_t at) {
    while (at < text->size && text->at[at] != '\n') at++;
    return at < text->size ? at + 1 : at;
}

static size_t line_start(const struct text *text, size_t at) {
    while (at > 0 && text->at[at - 1] != '\n') at--;
    return at;
}

static void flip(struct dice *dice, struct text *text) {
    size_t times = 1 + roll(dice, 4);
    for (size_t i = 0; i < times && text->size; i++) {
        char *byte = &text->at[roll(dice, text->size)];
        *byte = (char)(*byte ^ (1 << roll(dice, 8)));
    }
}

static void put_odd(struct dice *dice, struct text *text) {
    static const struct {
        const char *bytes;
        size_t size;
    } odd[] = {{"\0", 1},
               {"\xFF", 1},
               {"\xED\xA0\x80", 3},
               {"\xE2\x80\xAE", 3},
               {"\x1B[", 2},
               {"\r", 1},
               {"\n", 1},
               {"\"", 1},
               {"[", 1},
               {"{", 1},
               {"}", 1},
               {"]", 1},
               {",", 1},
               {":", 1},
               {"---\n", 4},
               {"\n...\n", 5},
               {"&a ", 3},
               {"*a", 2},
               {"!!str ", 6},
               {"\\u0000", 6},
               {"\\ud800", 6},
               {"1e999", 5},
               {"-1", 2},
               {"null", 4},
               {"\xEF\xBB\xBF", 3},
               {"99999999", 8},
               {"\xCC\x81", 2},
               {"\t", 1},
               {"<<: ", 4},
               {"'", 1},
               {"#", 1},
               {"| ", 2},
               {"0", 1},
               {" ", 1},
               {"\xC2\xA0", 2},
               {"true", 4}};
    size_t which = roll(dice, sizeof odd / sizeof *odd), at = roll(dice, text->size + 1);
    size_t over = roll(dice, 3) ? 0 : roll(dice, 6);
    if (over > text->size - at) over = text->size - at;
    replace(text, at, at + over, odd[which].bytes, odd[which].size);
}

static void cut_end(struct dice *dice, struct text *text) {
    text->size = roll(dice, text->size + 1);
}

static void cut_out(struct dice *dice, struct text *text) {
    size_t from = roll(dice, text->size + 1), to = from + roll(dice, 40);
    replace(text, from, to < text->size ? to : text->size, "", 0);
}

static void double_line(struct dice *dice, struct text *text) {
    char copy[TEXT_MOST];
    size_t from = line_start(text, roll(dice, text->size + 1)), to = line_end(text, from);
    memcpy(copy, text->at + from, to - from);
    replace(text, from, from, copy, to - from);
}

// In JSON a key that stands twice is a piece between two commas.
static void double_piece(struct dice *dice, struct text *text) {
    char copy[TEXT_MOST];
    size_t from = roll(dice, text->size + 1);
    while (from < text->size && text->at[from] != ',') from++;
    size_t to = from + (from < text->size);
    while (to < text->size && text->at[to] != ',') to++;
    memcpy(copy, text->at + from, to - from);
    replace(text, from, from, copy, to - from);
}

static void splice(struct dice *dice, struct text *text, const char *other, size_t other_size) {
    size_t from = roll(dice, text->size + 1), to = from + roll(dice, 60), begin = roll(dice, other_size);
    size_t size = roll(dice, other_size - begin < 200 ? other_size - begin + 1 : 200);
    replace(text, from, to < text->size ? to : text->size, other + begin, size);
}

static void mutate(struct dice *dice, struct text *text, const char *other, size_t other_size) {
    size_t times = roll(dice, 2) ? 1 : 1 + roll(dice, 4);
    for (size_t i = 0; i < times; i++) switch (roll(dice, 7)) {
        case 0:
            flip(dice, text);
            break;
        case 1:
            put_odd(dice, text);
            break;
        case 2:
            cut_end(dice, text);
            break;
        case 3:
            cut_out(dice, text);
            break;
        case 4:
            double_line(dice, text);
            break;
        case 5:
            double_piece(dice, text);
            break;
        default:
            splice(dice, text, other, other_size);
            break;
        }
}

struct seed {
    enum asfound_input form;
    char *text;
    size_t size;
};

// Some documents of the demo stock, its sheet, and the record that is written in JSON, alone and twice on
// lines.
enum { SEEDS = 12 };

static char *copy_of(const char *text, size_t size) {
    char *copy = malloc(size + 1);
    if (!copy) abort();
    memcpy(copy, text, size);
    copy[size] = '\0';
    return copy;
}

static void seed_add(struct seed *seeds, size_t *count, enum asfound_input form, const char *text,
                     size_t size) {
    if (*count < SEEDS) seeds[(*count)++] = (struct seed){form, copy_of(text, size), size};
}

static size_t seeds_make(struct seed *seeds) {
    size_t count = 0, size;
    char *stock = file_text("demo/stock.yaml", &size);
    char *at = strstr(stock, "\nid: ");
    for (int i = 0; at && i < 5; i++) { // pairs of documents
        char *next = strstr(at + 1, "\n---\n");
        next = next ? strstr(next + 1, "\n---\n") : NULL;
        if (!next) break;
        seed_add(seeds, &count, ASFOUND_YAML, at + 1, (size_t)(next - at));
        at = next + 4;
    }
    free(stock);
    char *sheet = file_text("demo/stock.csv", &size);
    seed_add(seeds, &count, ASFOUND_CSV, sheet, size);
    free(sheet);
    char *one = file_text("demo/one.json", &size);
    seed_add(seeds, &count, ASFOUND_JSON, one, size);
    json_t *tree = json_loadb(one, size, 0, NULL);
    ck_assert_ptr_nonnull(tree);
    char *line = json_dumps(tree, JSON_COMPACT);
    char lines[8192];
    int n = snprintf(lines, sizeof lines,
                     "%s\n{\"id\":\"b\",\"type\":\"oar\",\"flaws\":[\"crack\"],\"count\":2}\n", line);
    seed_add(seeds, &count, ASFOUND_NDJSON, lines, (size_t)n);
    n = snprintf(lines, sizeof lines, "[%s,\n{\"id\":\"b\",\"type\":\"oar\",\"flaws\":[\"crack\"]}]", line);
    seed_add(seeds, &count, ASFOUND_JSON, lines, (size_t)n);
    free(line);
    json_decref(tree);
    free(one);
    return count;
}

// How many listings it holds; each line must be JSON by another reader's judgement too.
static size_t check_lines(const struct kept *out) {
    size_t lines = 0;
    for (const char *at = kept_text(out), *end; *at; at = end + 1, lines++) {
        end = strchr(at, '\n');
        ck_assert_msg(end != NULL, "half a line: %.80s", at);
        json_error_t error;
        json_t *tree = json_loadb(at, (size_t)(end - at), JSON_REJECT_DUPLICATES, &error);
        ck_assert_msg(json_is_object(tree), "%s: %.*s", error.text, (int)(end - at), at);
        json_t *title = json_object_get(tree, "title"), *length = json_object_get(tree, "title_length");
        ck_assert(json_is_string(title) && json_is_integer(length));
        ck_assert_int_le(json_integer_value(length), 80);
        json_decref(tree);
    }
    return lines;
}

static void show(const struct text *text, size_t round) {
    fprintf(stderr, "round %zu: %.*s\n", round, (int)text->size, text->at);
}

struct tally {
    size_t statuses[6], listings;
};

static void draft_one(const asfound_engine *engine, const struct seed *seed, const struct text *text,
                      size_t round, struct kept *out, struct kept *messages, struct tally *tally) {
    struct given given = {.text = text->at, .size = text->size, .step = round % 3 ? 0 : 7};
    struct asfound_draft_options options = {
        .input = seed->form,
        .output = round % 5 ? ASFOUND_JSON_LINES : (enum asfound_output)(round / 5 % 4),
        .explain = round % 7 == 0,
        .locale = round % 2 ? ASFOUND_EN_US : ASFOUND_EN_GB,
        .out = kept_put,
        .out_context = out,
        .messages = kept_put,
        .messages_context = messages,
    };
    kept_clear(out);
    kept_clear(messages);
    enum asfound_status status = asfound_draft(engine, &options, "garbled", given_get, &given);
    bool fine = status == ASFOUND_FINE || status == ASFOUND_MUST || status == ASFOUND_BROKEN_INPUT;
    bool told = (status == ASFOUND_BROKEN_INPUT) == (strstr(kept_text(messages), " error: ") != NULL);
    if (!fine || !told) show(text, round);
    ck_assert_msg(fine, "status %d: %s", (int)status, kept_text(messages));
    ck_assert_msg(told, "status %d with the messages: %s", (int)status, kept_text(messages));
    if (status == ASFOUND_BROKEN_INPUT) ck_assert_ptr_nonnull(strstr(kept_text(messages), "garbled:"));
    tally->statuses[status]++;
    if (options.output == ASFOUND_JSON_LINES && !options.explain) tally->listings += check_lines(out);
}

enum { SLICES = 4 };

START_TEST(garbled_records_do_no_harm) {
    struct memory memory = {0};
    struct kept messages = {0}, out = {0};
    asfound_engine *engine = NULL;
    ck_assert_int_eq(engine_open(&memory, &messages, &engine), ASFOUND_FINE);
    struct seed seeds[SEEDS] = {0};
    size_t count = seeds_make(seeds), live = memory.live;
    ck_assert_uint_ge(count, 8);
    struct tally tally = {0};
    static struct text text;
    for (size_t round = (size_t)_i; round < ROUNDS; round += SLICES) {
        struct dice dice = {UINT64_C(88172645463325252) + round * UINT64_C(0x9E3779B97F4A7C15)};
        const struct seed *seed = &seeds[roll(&dice, count)], *other = &seeds[roll(&dice, count)];
        memcpy(text.at, seed->text, seed->size);
        text.size = seed->size;
        mutate(&dice, &text, other->text, other->size);
        draft_one(engine, seed, &text, round, &out, &messages, &tally);
        ck_assert_uint_eq(memory.live, live);
    }
    printf("%zu fine, %zu with a must, %zu broken; %zu listings\n", tally.statuses[ASFOUND_FINE],
           tally.statuses[ASFOUND_MUST], tally.statuses[ASFOUND_BROKEN_INPUT], tally.listings);
    fflush(stdout);
    // Neither so gentle that all is accepted nor so rough that nothing is.
    ck_assert_uint_ge(tally.statuses[ASFOUND_BROKEN_INPUT], ROUNDS / SLICES / 4);
    ck_assert_uint_ge(tally.listings, ROUNDS / SLICES / 4);
    for (size_t i = 0; i < count; i++) free(seeds[i].text);
    asfound_engine_free(engine);
    ck_assert_uint_eq(memory.live, 0);
    kept_free(&out);
    kept_free(&messages);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("garbled records");
    TCase *tests = tcase_create("all");
    tcase_set_timeout(tests, 300);
    tcase_add_loop_test(tests, garbled_records_do_no_harm, 0, SLICES);
    suite_add_tcase(suite, tests);
    SRunner *runner = srunner_create(suite);
    dictionaries_make();
    srunner_run_all(runner, CK_NORMAL);
    dictionaries_remove();
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
