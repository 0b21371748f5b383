// SPDX-License-Identifier: MIT
// Inputs that were or could be slow: with twice as much of it, the time of one draft must not come near to
// four times as much. Only the ratio of two times of processor is looked at, so a slow or busy machine
// changes nothing.
#include <check.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "asfound.h"

// Growth of n log n gives about 2.1, of n squared 4; caches that get too small cost something too.
static const double MOST = 3.2;
static const double LEAST_SECONDS = 0.03;
enum { RUNS = 5, TRIES = 3 };

struct text {
    char *at;
    size_t size, room;
};

static void add_bytes(struct text *text, const char *bytes, size_t size) {
    if (text->size + size + 1 > text->room) {
        text->room = 2 * (text->size + size + 1);
        text->at = realloc(text->at, text->room);
        if (!text->at) abort();
    }
    memcpy(text->at + text->size, bytes, size);
    text->at[text->size += size] = '\0';
}

__attribute__((format(printf, 2, 3))) static void add(struct text *text, const char *format, ...) {
    char line[512];
    va_list arguments;
    va_start(arguments, format);
    int size = vsnprintf(line, sizeof line, format, arguments);
    va_end(arguments);
    ck_assert_int_lt(size, (int)sizeof line);
    add_bytes(text, line, (size_t)size);
}

static void add_times(struct text *text, const char *bytes, size_t times) {
    for (size_t i = 0; i < times; i++) add_bytes(text, bytes, strlen(bytes));
}

// --- the inputs, each of a size ---

static void letters_in_notes(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"notes\":\"");
    add_times(t, "a", n);
    add(t, "\"}\n");
}

static void words_in_notes(struct text *t, size_t n) {
    add(t, "id: a\ntype: oil lamp\nnotes: >-\n");
    for (size_t i = 0; i < n; i++) add(t, "  sterling silver? not gold, no chip on the base %zu\n", i);
}

// A plain text with many words that begin a finding and never end it.
static void near_claims(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"attributes\":{\"name\":\"");
    add_times(t, "solid pure real gen ", n);
    add(t, "\"}}\n");
}

static void flaws(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"flaws\":[\"rust\"");
    for (size_t i = 1; i < n; i++)
        add(t, ",{\"kind\":\"chip\",\"part\":\"part %zu\",\"severity\":\"light\"}", i);
    add(t, "]}\n");
}

static void same_flaws(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"flaws\":[\"rust\"");
    for (size_t i = 1; i < n; i++) add(t, ",\"chip\"");
    add(t, "]}\n");
}

static void values(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"attributes\":{\"color\":[\"red\"");
    for (size_t i = 1; i < n; i++) add(t, ",\"shade %zu\"", i);
    add(t, "]}}\n");
}

// As many searches as a plan takes, with flaws and marks beside them.
static void values_everywhere(struct text *t, size_t n) {
    static const char *const names[] = {"brand", "model", "material", "color", "pattern", "technique",
                                        "shape", "style", "finish",   "theme", "size",    "name"};
    add(t, "{\"id\":\"a\",\"type\":\"oil "
           "lamp\",\"flaws\":[\"rust\",{\"kind\":\"chip\",\"part\":\"base\"},\"crack\"],"
           "\"marks\":[\"HOSKABY 4\"],\"attributes\":{");
    for (size_t k = 0; k < sizeof names / sizeof *names; k++) {
        add(t, "%s\"%s\":[\"%s\"", k ? "," : "", names[k], names[k]);
        for (size_t i = 1; i < n; i++) add(t, ",\"%c%zu %s\"", (int)('a' + k), i, names[k]);
        add(t, "]");
    }
    add(t, "}}\n");
}

static void unsure_values(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"attributes\":{\"material\":[\"brass\"");
    for (size_t i = 1; i < n; i++)
        add(t, ",\"alloy %zu\",{\"value\":\"metal %zu\",\"sure\":\"guess\"}", i, i);
    add(t, "]}}\n");
}

static void values_of_parts(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"attributes\":{\"color\":[\"red\"");
    for (size_t i = 1; i < n; i++) add(t, ",{\"value\":\"green\",\"of\":\"part %zu\"}", i);
    add(t, "]}}\n");
}

static void marks(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"marks\":[\"A\"");
    for (size_t i = 1; i < n; i++) add(t, ",{\"text\":\"MARK %zu\",\"where\":\"base\"}", i);
    add(t, "]}\n");
}

static void photos(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"flaws\":[\"rust\",\"chip\"],\"photos\":[\"a.jpg\"");
    for (size_t i = 1; i < n; i++) add(t, ",{\"file\":\"%zu.jpg\",\"shows\":\"rust\"}", i);
    add(t, "]}\n");
}

static void included(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"includes\":[\"box\"");
    for (size_t i = 1; i < n; i++) add(t, ",{\"what\":\"wick %zu\",\"count\":2}", i);
    add(t, "]}\n");
}

static void measured(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"measurements\":[{\"dimension\":\"height\",\"mm\":20}");
    for (size_t i = 1; i < n; i++)
        add(t, ",{\"dimension\":\"width\",\"of\":\"part %zu\",\"value\":%zu,\"unit\":\"in\"}", i, i);
    add(t, "]}\n");
}

static void unlooked(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"unchecked\":[\"seized\"");
    for (size_t i = 1; i < n; i++) add(t, ",\"area %zu\"", i);
    add(t, "],\"clear\":[\"crack\"");
    for (size_t i = 1; i < n; i++) add(t, ",{\"kind\":\"chip\",\"part\":\"part %zu\",\"how\":\"denied\"}", i);
    add(t, "]}\n");
}

static void others(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":{\"value\":\"oil lamp\",\"others\":[\"lantern\"");
    for (size_t i = 1; i < n; i++) add(t, ",\"lantern %zu\"", i);
    add(t, "]},\"fits\":[\"R6\"");
    for (size_t i = 1; i < n; i++) add(t, ",{\"brand\":\"Hoskaby\",\"model\":\"R%zu\"}", i);
    add(t, "]}\n");
}

static void long_word(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"attributes\":{\"brand\":\"");
    add_times(t, "x", n);
    add(t, "\",\"color\":\"");
    add_times(t, "-", n);
    add(t, "\"},\"marks\":[\"");
    add_times(t, "\xC3\xA9", n);
    add(t, "\"]}\n");
}

static void long_type(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"");
    add_times(t, "lamp ", n);
    add(t, "stand\"}\n");
}

// One base letter and then nothing but accents: one character of a title, if anything is.
static void accents(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"oil lamp\",\"attributes\":{\"name\":\"e");
    add_times(t, "\xCC\x81\xCC\xA3", n);
    add(t, "\"}}\n");
}

static void brackets_json(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"lamp\",\"own\":{\"a\":");
    add_times(t, "[", n);
    add_times(t, "]", n);
    add(t, "}}\n");
}

static void brackets_yaml(struct text *t, size_t n) {
    add(t, "id: a\ntype: lamp\nown: {a: ");
    add_times(t, "[", n);
    add_times(t, "]", n);
    add(t, "}\n");
}

static void indents_yaml(struct text *t, size_t n) {
    add(t, "id: a\ntype: lamp\nown:\n a: ");
    add_times(t, "- ", n);
    add(t, "b\n");
}

static void keys(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"lamp\",\"own\":{\"k\":1");
    for (size_t i = 0; i < n; i++) add(t, ",\"k%zu\":%zu", i, i);
    add(t, "}}\n");
}

static void unknown_keys(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"lamp\"");
    for (size_t i = 0; i < n; i++) add(t, ",\"k%zu\":%zu", i, i);
    add(t, "}\n");
}

static void keys_yaml(struct text *t, size_t n) {
    add(t, "id: a\ntype: lamp\nown:\n");
    for (size_t i = 0; i < n; i++) add(t, "  k%zu: %zu\n", i, i);
}

static void sheet_of_quotes(struct text *t, size_t n) {
    add(t, "id,type,marks.1.text\n");
    for (size_t i = 0; i < n; i++) add(t, "a%zu,lamp,\"\"\"\"\"\"\n", i);
}

static void quote_never_closed(struct text *t, size_t n) {
    add(t, "id,type\na,\"lamp\n");
    add_times(t, "b,lamp\n", n);
}

static void only_quotes(struct text *t, size_t n) {
    add(t, "id,type\na,\"");
    add_times(t, "\"\"", n);
    add(t, "\"\n");
}

static void wide_sheet(struct text *t, size_t n) {
    add(t, "id,type");
    for (size_t i = 1; i <= n; i++) add(t, ",own.k%zu", i);
    add(t, "\na,lamp");
    add_times(t, ",x", n);
    add(t, "\n");
}

static void broken_lines(struct text *t, size_t n) {
    add_times(t, "{\"id\": nothing\n", n);
}

static void broken_elements(struct text *t, size_t n) {
    add(t, "[1");
    add_times(t, ",{]", n);
    add(t, "]");
}

static void broken_documents(struct text *t, size_t n) {
    add_times(t, "---\na: [\n", n);
}

static void same_ids(struct text *t, size_t n) {
    add_times(t, "{\"id\":\"a\",\"type\":\"lamp\"}\n", n);
}

static void line_ends(struct text *t, size_t n) {
    add(t, "id: a\ntype: lamp\n");
    add_times(t, "\n", n);
}

static void escapes(struct text *t, size_t n) {
    add(t, "{\"id\":\"a\",\"type\":\"lamp\",\"notes\":\"");
    add_times(t, "\\u00e9\\n", n);
    add(t, "\"}\n");
}

struct input {
    const char *name;
    enum asfound_input form;
    void (*make)(struct text *text, size_t n);
    size_t first, most; // sizes; the larger of a pair is never above `most`
};

// The most is what a record may hold (16 MiB), or as much as the task of this file names.
static const struct input inputs[] = {
    {"one letter in notes", ASFOUND_NDJSON, letters_in_notes, 1 << 18, 12 << 20},
    {"words in notes", ASFOUND_YAML, words_in_notes, 1 << 10, 1 << 17},
    {"beginnings of claims", ASFOUND_NDJSON, near_claims, 1 << 8, 1 << 13},
    {"flaws", ASFOUND_NDJSON, flaws, 100, 50000},
    {"the same flaw", ASFOUND_NDJSON, same_flaws, 100, 50000},
    {"values", ASFOUND_NDJSON, values, 100, 50000},
    {"values everywhere", ASFOUND_NDJSON, values_everywhere, 2, 4096},
    {"unsure values", ASFOUND_NDJSON, unsure_values, 100, 30000},
    {"values of parts", ASFOUND_NDJSON, values_of_parts, 100, 50000},
    {"marks", ASFOUND_NDJSON, marks, 50, 50000},
    {"photos", ASFOUND_NDJSON, photos, 100, 50000},
    {"things that come with it", ASFOUND_NDJSON, included, 100, 50000},
    {"measurements", ASFOUND_NDJSON, measured, 100, 50000},
    {"unchecked and clear", ASFOUND_NDJSON, unlooked, 100, 50000},
    {"others and fits", ASFOUND_NDJSON, others, 100, 50000},
    {"long words", ASFOUND_NDJSON, long_word, 1 << 10, 1 << 21},
    {"a long type", ASFOUND_NDJSON, long_type, 1 << 6, 1 << 16},
    {"accents", ASFOUND_NDJSON, accents, 1 << 8, 1 << 18},
    {"brackets in JSON", ASFOUND_NDJSON, brackets_json, 1 << 14, 7 << 20},
    {"brackets in YAML", ASFOUND_YAML, brackets_yaml, 1 << 8, 7 << 20},
    {"indents in YAML", ASFOUND_YAML, indents_yaml, 1 << 8, 7 << 20},
    {"keys in JSON", ASFOUND_NDJSON, keys, 1 << 10, 1 << 19},
    {"keys in YAML", ASFOUND_YAML, keys_yaml, 1 << 10, 1 << 19},
    {"unknown keys", ASFOUND_NDJSON, unknown_keys, 1 << 8, 1 << 17},
    {"a sheet of quotes", ASFOUND_CSV, sheet_of_quotes, 50, 100000},
    {"a quote never closed", ASFOUND_CSV, quote_never_closed, 1 << 10, 1 << 20},
    {"quotes in a quote", ASFOUND_CSV, only_quotes, 1 << 16, 7 << 20},
    {"a wide sheet", ASFOUND_CSV, wide_sheet, 1 << 9, 1 << 18},
    {"broken lines", ASFOUND_NDJSON, broken_lines, 1 << 10, 1 << 20},
    {"broken elements", ASFOUND_JSON, broken_elements, 1 << 10, 1 << 21},
    {"broken documents", ASFOUND_YAML, broken_documents, 1 << 8, 1 << 18},
    {"the same id", ASFOUND_NDJSON, same_ids, 1 << 8, 1 << 16},
    {"line ends", ASFOUND_YAML, line_ends, 1 << 16, 14 << 20},
    {"escapes", ASFOUND_NDJSON, escapes, 1 << 14, 1 << 20},
};

enum { INPUTS = sizeof inputs / sizeof *inputs };

static asfound_engine *engine;

static bool put(void *context, const char *bytes, size_t size) {
    (void)bytes;
    *(size_t *)context += size;
    return true;
}

struct given {
    const struct text *text;
    size_t at;
};

static size_t get(void *context, char *to, size_t room) {
    struct given *given = context;
    size_t n = given->text->size - given->at;
    if (n > room) n = room;
    memcpy(to, given->text->at + given->at, n);
    given->at += n;
    return n;
}

static double now(void) {
    struct timespec at;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
    return (double)at.tv_sec + (double)at.tv_nsec * 1e-9;
}

static double draft(const struct input *input, const struct text *text) {
    size_t written = 0;
    struct given given = {text, 0};
    struct asfound_draft_options options = {
        .input = input->form,
        .output = ASFOUND_JSON_LINES,
        .out = put,
        .out_context = &written,
        .messages = put,
        .messages_context = &written,
    };
    double begun = now();
    enum asfound_status status = asfound_draft(engine, &options, "input", get, &given);
    double took = now() - begun;
    ck_assert_msg(status == ASFOUND_FINE || status == ASFOUND_MUST || status == ASFOUND_BROKEN_INPUT,
                  "%s: status %d", input->name, (int)status);
    ck_assert_msg(written > 0, "%s: neither a listing nor a message", input->name);
    return took;
}

static int by_value(const void *a, const void *b) {
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static double median_draft(const struct input *input, size_t n) {
    struct text text = {0};
    double took[RUNS];
    input->make(&text, n);
    for (int i = 0; i < RUNS; i++) took[i] = draft(input, &text);
    free(text.at);
    qsort(took, RUNS, sizeof *took, by_value);
    return took[RUNS / 2];
}

// The first size at which a draft takes long enough to be measured, or half of the most.
static size_t measurable(const struct input *input) {
    size_t n = input->first;
    for (; n * 2 < input->most; n *= 2) {
        struct text text = {0};
        input->make(&text, n);
        double took = draft(input, &text);
        free(text.at);
        if (took >= LEAST_SECONDS) return n;
    }
    return input->most / 2;
}

static void open_engine(void) {
    const char *folder = getenv("ASFOUND_BUILT");
    struct asfound_engine_options options = {.data = folder ? folder : "build-tests/share/asfound"};
    ck_assert_int_eq(asfound_engine_new(&options, &engine), ASFOUND_FINE);
}

static void close_engine(void) {
    asfound_engine_free(engine);
}

START_TEST(twice_as_much_is_not_four_times_as_slow) {
    const struct input *input = &inputs[_i];
    double ratio = 0, small = 0;
    size_t n = measurable(input);
    // Noise only makes a ratio worse: one good pair is proof enough.
    for (int i = 0; i < TRIES; i++) {
        small = median_draft(input, n);
        ratio = median_draft(input, 2 * n) / small;
        if (ratio < MOST) break;
    }
    printf("%-26s %8zu: %7.1f ms, ratio %.2f\n", input->name, n, small * 1e3, ratio);
    fflush(stdout);
    ck_assert_msg(ratio < MOST, "%s: %.2f times as long for %zu instead of %zu", input->name, ratio, 2 * n,
                  n);
}
END_TEST

// The most of everything has an end too.
START_TEST(the_most_ends) {
    const struct input *input = &inputs[_i];
    struct text text = {0};
    input->make(&text, input->most);
    double took = draft(input, &text);
    printf("%-26s %8zu: %7.1f ms\n", input->name, input->most, took * 1e3);
    fflush(stdout);
    free(text.at);
}
END_TEST

static enum asfound_status status_of(const struct text *text, enum asfound_input form, size_t *written) {
    size_t told = 0;
    struct given given = {text, 0};
    struct asfound_draft_options options = {.input = form,
                                            .output = ASFOUND_JSON_LINES,
                                            .out = put,
                                            .out_context = written,
                                            .messages = put,
                                            .messages_context = &told};
    return asfound_draft(engine, &options, "input", get, &given);
}

START_TEST(ten_megabytes_of_notes_are_drafted) {
    static const char *const begins[] = {
        [ASFOUND_YAML] = "id: a\ntype: oil lamp\nnotes: ",
        [ASFOUND_JSON] = "{\"id\":\"a\",\"type\":\"oil lamp\",\"notes\":\"",
        [ASFOUND_NDJSON] = "{\"id\":\"a\",\"type\":\"oil lamp\",\"notes\":\"",
        [ASFOUND_CSV] = "id,type,notes\na,oil lamp,\"",
    };
    static const char *const ends[] = {"\n", "\"}", "\"}\n", "\"\n"};
    for (enum asfound_input form = ASFOUND_YAML; form <= ASFOUND_CSV; form++) {
        struct text text = {0};
        size_t written = 0;
        add_bytes(&text, begins[form], strlen(begins[form]));
        add_times(&text, "a chip here and there; ", ((size_t)10 << 20) / 23);
        add_times(&text, ends[form], 1);
        enum asfound_status status = status_of(&text, form, &written);
        ck_assert_msg(status <= ASFOUND_MUST && written > 0, "form %d: status %d", (int)form, (int)status);
        free(text.at);
    }
}
END_TEST

int main(void) {
    Suite *suite = suite_create("growth");
    TCase *growth = tcase_create("ratios"), *most = tcase_create("most");
    tcase_set_timeout(growth, 300);
    tcase_set_timeout(most, 120);
    tcase_add_unchecked_fixture(growth, open_engine, close_engine);
    tcase_add_unchecked_fixture(most, open_engine, close_engine);
    tcase_add_loop_test(growth, twice_as_much_is_not_four_times_as_slow, 0, INPUTS);
    tcase_add_loop_test(most, the_most_ends, 0, INPUTS);
    tcase_add_test(most, ten_megabytes_of_notes_are_drafted);
    suite_add_tcase(suite, growth);
    suite_add_tcase(suite, most);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
