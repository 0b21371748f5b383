// SPDX-License-Identifier: MIT
// What is said about inputs that are broken as a whole, through the library as the command calls it: exact
// messages, the status, and how many records were drafted all the same.
#include "../rules/support.h"

#include "asfound.h"

struct taken {
    struct arena *arena;
    struct buf text;
};

static bool take(void *context, const char *bytes, size_t size) {
    buf_add(&((struct taken *)context)->text, bytes, size);
    return true;
}

struct given_input {
    const char *text;
    size_t size, at, most; // at most so many bytes a call
};

static size_t give(void *context, char *to, size_t room) {
    struct given_input *given = context;
    size_t n = given->size - given->at;
    if (n > room) n = room;
    if (n > given->most) n = given->most;
    memcpy(to, given->text + given->at, n);
    given->at += n;
    return n;
}

static const struct {
    const char *title, *text;
    size_t size; // 0: up to the NUL
    enum asfound_input form;
    int status;
    size_t drafted;
    const char *messages;
} inputs[] = {
    {"a NUL byte", "type: j\0g\n", 10, ASFOUND_YAML, 4, 0,
     "in:1:8: error: a NUL byte (U+0000) [text.nul]\n"
     "    1 |  type: j\xEF\xBF\xBDg\n"
     "      |         ^ hint: is this really a text file?\n"},
    {"a key that is a list", "? [a, b]\n: 1\n", 0, ASFOUND_YAML, 4, 0,
     "in:1:3: error: a list or map cannot be a key [input.key-form]\n"
     "    1 |  ? [a, b]\n      |    ^ hint: a key is one word or a short text\n"},
    {"the same id twice", "id: a\ntype: jug\nfamily: ceramics\n---\nid: a\ntype: bowl\nfamily: ceramics\n", 0,
     ASFOUND_YAML, 4, 1,
     "in:5:1: error: the id 'a' stands twice in this input [record.same-id]\n"
     "    5 |  id: a\n"
     "      |  ^^^^^\n"},
    {"a row that is too long", "id,type,family\na,jug,ceramics\nb,bowl,ceramics,blue\nc,cup,ceramics\n", 0,
     ASFOUND_CSV, 4, 2,
     "in:3:17: error: the row has 4 cells, the header 3 [csv.width]\n"
     "    3 |  b,bowl,ceramics,blue\n"
     "      |                  ^^^^ hint: a cell with a delimiter in it needs quotes\n"},
    {"a row that is too short", "id,type,family\na,jug\n", 0, ASFOUND_CSV, 4, 0,
     "in:2:3: error: the row has 2 cells, the header 3 [csv.width]\n"
     "    2 |  a,jug\n"
     "      |    ^^^ hint: an empty cell still needs its delimiter\n"},
    {"a quote that stays open", "id,type,family\na,\"jug,ceramics\n", 0, ASFOUND_CSV, 4, 0,
     "in:2:3: error: a cell that never ends [csv.syntax]\n"
     "    2 |  a,\"jug,ceramics\n"
     "      |    ^ hint: the closing quote is missing; a quote inside a cell is doubled\n"},
    {"letters behind a quote", "id,type,family\na,\"jug\"s,ceramics\n", 0, ASFOUND_CSV, 4, 0,
     "in:2:8: error: text after the closing quote [csv.syntax]\n"
     "    2 |  a,\"jug\"s,ceramics\n"
     "      |         ^ hint: a quote inside a quoted cell is doubled: \"\"\n"},
    {"a column name that is no path", "id,flaws..kind\na,chip\n", 0, ASFOUND_CSV, 4, 0,
     "in:1:4: error: this column name is no path [csv.header]\n"
     "    1 |  id,flaws..kind\n"
     "      |     ^^^^^^^^^^^ hint: names are joined by single dots, as in attributes.color or "
     "flaws.1.kind\n"},
    {"two columns that contradict each other", "id,type,type.value\na,jug,bowl\n", 0, ASFOUND_CSV, 4, 0,
     "in:1:9: error: this column contradicts another one [csv.header]\n"
     "    1 |  id,type,type.value\n"
     "      |          ^^^^^^^^^^ hint: a name is one of: a column, a list (name.1, name.2) or a map "
     "(name.part)\n"},
    {"an empty input", "", 0, ASFOUND_YAML, 0, 0,
     "in: warning: there is nothing in it to read [input.empty]\n"},
    {"an empty list", "[]", 0, ASFOUND_JSON, 0, 0,
     "in: warning: there is nothing in it to read [input.empty]\n"},
    {"a broken record between two good ones",
     "{\"id\":\"a\",\"type\":\"jug\"}\n{\"id\":\"b\",}\n{\"id\":\"c\",\"type\":\"bowl\"}\n", 0,
     ASFOUND_NDJSON, 4, 2,
     "in:2:10: error: a comma after the last entry [json.syntax]\n"
     "    2 |  {\"id\":\"b\",}\n"
     "      |           ^ hint: take this comma out\n"},
    {"notes alone", "a green jug, chipped at the rim\n---\na bowl\n", 0, ASFOUND_NOTES, 0, 2, ""},
    {"bidirectional overrides", "type: \"j\xE2\x80\xAEg\"\n", 0, ASFOUND_YAML, 4, 0,
     "in:1:9: error: character U+202E must not stand here [text.control]\n"
     "    1 |  type: \"j\xEF\xBF\xBDg\"\n"
     "      |          ^ hint: it changes the direction of writing and cannot be seen; take it out\n"},
    {"bytes that are no UTF-8", "type: caf\xE9\n", 0, ASFOUND_YAML, 4, 0,
     "in:1:10: error: byte 0xE9 is not valid UTF-8 here [text.utf8]\n"
     "    1 |  type: caf\xEF\xBF\xBD\n"
     "      |           ^ hint: save the file as UTF-8\n"},
};

// Made once, in the parent of all tests.
static asfound_engine *engine;

static void make_engine(void) {
    struct asfound_engine_options options = {.data = data_folder()};
    if (asfound_engine_new(&options, &engine) != ASFOUND_FINE) abort();
}

static void free_engine(void) {
    asfound_engine_free(engine);
}

static void draft(struct arena *arena, const struct given_input *from, enum asfound_input form,
                  struct taken *out, struct taken *messages, int *status) {
    *out = (struct taken){arena, buf_start(arena)};
    *messages = (struct taken){arena, buf_start(arena)};
    struct asfound_draft_options drafting = {.input = form,
                                             .output = ASFOUND_JSON_LINES,
                                             .out = take,
                                             .out_context = out,
                                             .messages = take,
                                             .messages_context = messages};
    struct given_input given = *from;
    *status = (int)asfound_draft(engine, &drafting, "in", give, &given);
}

static size_t lines_of(const char *text) {
    size_t lines = 0;
    for (; (text = strchr(text, '\n')); text++) lines++;
    return lines;
}

static void check_input(struct arena *arena, void *context) {
    size_t i = *(const size_t *)context;
    size_t size = inputs[i].size ? inputs[i].size : strlen(inputs[i].text);
    // All at once, and byte by byte: how the bytes arrive must not show.
    const size_t pace[] = {size + 1, 1};
    for (int p = 0; p < 2; p++) {
        struct taken out, messages;
        int status;
        struct given_input given = {inputs[i].text, size, 0, pace[p]};
        draft(arena, &given, inputs[i].form, &out, &messages, &status);
        struct buf wrong = buf_start(arena);
        const struct message_case one = {.title = inputs[i].title, .expected = inputs[i].messages};
        compare_messages(&one, messages.text.at, &wrong);
        ck_assert_msg(!wrong.n, "%s", wrong.at);
        ck_assert_msg(status == inputs[i].status, "%s: status %d", inputs[i].title, status);
        ck_assert_msg(lines_of(out.text.at) == inputs[i].drafted, "%s: %s", inputs[i].title, out.text.at);
    }
}

START_TEST(broken_inputs_are_told_exactly) {
    size_t number = (size_t)_i;
    within(check_input, &number);
}
END_TEST

// --- batches ---

// Records are read a batch at a time where they are at hand; nothing of that may show.
enum { MANY = 40, WORDS = 100 };

// Words that no other note has: what is kept of words is forgotten after some thousands.
static void put_words(struct buf *text, size_t i) {
    for (size_t k = 0; k < WORDS; k++) {
        size_t n = WORDS * i + k;
        buf_format(text, " the shelf of %c%c%c%c", (char)('k' + n / 676 % 8), (char)('a' + n / 26 % 26), 'i',
                   (char)('a' + n % 26));
    }
}

static void put_record(struct buf *text, size_t i) {
    static const char *const notes[] = {"Tin lamp, dented base, no burner.", "Oak stool, one leg is loose.",
                                        "enamel bowl 8 in wide, chipped rim. no cracks."};
    if (i % 5 == 4)
        buf_format(text, "{\"id\":\"i%zu\",\"type\":\"jug\",\"count\":%zu}\n", i, i);
    else if (i % 7 == 3)
        buf_text(text, "{\"id\":}\n");
    else {
        buf_format(text, "{\"id\":\"i%zu\",\"notes\":\"%s From", i, notes[i % 3]);
        put_words(text, i);
        buf_format(text, ". %s The lid is not cracked, the handle is worn.\"}\n", notes[(i + 1) % 3]);
    }
}

static size_t broken_of(const char *messages) {
    size_t told = 0;
    for (; (messages = strstr(messages, "[json.syntax]")) != NULL; messages++) told++;
    return told;
}

static void check_batches(struct arena *arena, void *context) {
    (void)context;
    struct buf text = buf_start(arena);
    for (size_t i = 0; i < MANY; i++) put_record(&text, i);
    struct taken out, messages, alone;
    int status;
    // A byte at a time no record is at hand when the one before it was read.
    struct given_input slow = {text.at, text.n, 0, 1};
    draft(arena, &slow, ASFOUND_NDJSON, &alone, &messages, &status);
    size_t broken = broken_of(messages.text.at);
    ck_assert_uint_ge(broken, 5);
    ck_assert_uint_eq(lines_of(alone.text.at), MANY - broken);
    static const size_t paces[] = {SIZE_MAX, 3000};
    for (size_t p = 0; p < 2; p++) {
        struct given_input all = {text.at, text.n, 0, paces[p]};
        draft(arena, &all, ASFOUND_NDJSON, &out, &messages, &status);
        ck_assert_msg(strcmp(out.text.at, alone.text.at) == 0, "not as each alone at pace %zu", paces[p]);
        ck_assert_int_eq(status, 4);
        ck_assert_uint_eq(broken_of(messages.text.at), broken);
    }
}

START_TEST(records_read_together_are_drafted_as_each_alone) {
    within(check_batches, NULL);
}
END_TEST

// One note of more things than a batch holds.
enum { LISTED = 75 };

static void check_long_list(struct arena *arena, void *context) {
    (void)context;
    struct buf text = buf_start(arena);
    for (size_t i = 0; i < LISTED; i++) buf_format(&text, "%zu. tin lamp, dent in the base\n", i + 1);
    struct taken out, messages;
    int status;
    struct given_input all = {text.at, text.n, 0, SIZE_MAX};
    draft(arena, &all, ASFOUND_NOTES, &out, &messages, &status);
    ck_assert_uint_eq(lines_of(out.text.at), LISTED);
    size_t dented = 0;
    for (const char *at = out.text.at; (at = strstr(at, "\"title\":\"Tin Lamp")) != NULL; at++) dented++;
    ck_assert_uint_eq(dented, LISTED);
}

START_TEST(a_list_longer_than_a_batch_is_drafted_whole) {
    within(check_long_list, NULL);
}
END_TEST

struct talk {
    const struct taken *out;
    size_t asked;
};

// A line a call; when the next is asked for, the listing of the one before must have come.
static size_t give_a_line(void *context, char *to, size_t room) {
    static const char *const lines[] = {"{\"id\":\"a\",\"type\":\"jug\"}\n",
                                        "{\"id\":\"b\",\"type\":\"bowl\"}\n",
                                        "{\"id\":\"c\",\"notes\":\"tin lamp\"}\n"};
    struct talk *talk = context;
    ck_assert_uint_eq(lines_of(talk->out->text.n ? talk->out->text.at : ""), talk->asked);
    if (talk->asked == sizeof lines / sizeof *lines) return 0;
    const char *line = lines[talk->asked++];
    ck_assert_uint_lt(strlen(line), room);
    memcpy(to, line, strlen(line));
    return strlen(line);
}

static void check_talk(struct arena *arena, void *context) {
    (void)context;
    struct taken out = {arena, buf_start(arena)};
    struct talk talk = {&out, 0};
    struct asfound_draft_options drafting = {
        .input = ASFOUND_NDJSON, .output = ASFOUND_JSON_LINES, .out = take, .out_context = &out};
    asfound_draft(engine, &drafting, "in", give_a_line, &talk);
    ck_assert_uint_eq(lines_of(out.text.at), 3);
}

START_TEST(who_feeds_a_record_at_a_time_is_answered_at_once) {
    within(check_talk, NULL);
}
END_TEST

// --- large ---

static void check_large(struct arena *arena, void *context) {
    (void)context;
    struct buf text = buf_start(arena);
    buf_text(&text, "id: a\ntype: jug\nfamily: ceramics\nnotes: ");
    for (size_t i = 0; i < (size_t)10 << 20; i += 16) buf_text(&text, "sixteen letters ");
    buf_text(&text, "\n---\nid: b\ntype: jug\nnotes: ");
    for (size_t i = 0; i < (size_t)17 << 20; i += 16) buf_text(&text, "sixteen letters ");
    buf_text(&text, "\n---\nid: c\ntype: bowl\nfamily: ceramics\n");
    struct taken out, messages;
    int status;
    struct given_input given = {text.at, text.n, 0, 65536};
    draft(arena, &given, ASFOUND_YAML, &out, &messages, &status);
    ck_assert_int_eq(status, 4);
    ck_assert_uint_eq(lines_of(out.text.at), 2);
    ck_assert_str_eq(messages.text.at, "in:5:1: error: this record is larger than 16 MiB [input.too-large]\n"
                                       "    5 |  ---\n"
                                       "      |  ^ hint: the other records are still read\n");
}

START_TEST(a_record_that_is_too_large_hides_no_other) {
    within(check_large, NULL);
}
END_TEST

// --- the word list ---

static void check_words(struct arena *arena, void *context) {
    (void)context;
    static const char text[] = "color colour\ncenter\ngray  grey\ncolor colour\n";
    struct diags diags = diags_start(arena);
    const struct source *source = source_of(arena, "us-gb.txt", text);
    ck_assert_ptr_nonnull(variants_load(arena, source->name, source->text, source->size, &diags));
    ck_assert_int_eq(diags.status, 3);
    ck_assert_str_eq(printed(arena, &diags),
                     "us-gb.txt:2:1: error: 'center' does not stand on a line of two words [dict.broken]\n"
                     "    2 |  center\n"
                     "      |  ^^^^^^ hint: the US spelling, a space, the UK spelling\n"
                     "us-gb.txt:4:1: error: 'color' is out of order [dict.broken]\n"
                     "    4 |  color colour\n"
                     "      |  ^^^^^ hint: sort the list by the US word, each once\n");
}

START_TEST(broken_word_lists_are_told_exactly) {
    within(check_words, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("errors.inputs");
    TCase *tests = tcase_create("inputs");
    tcase_set_timeout(tests, 120);
    tcase_add_unchecked_fixture(tests, make_engine, free_engine);
    tcase_add_loop_test(tests, broken_inputs_are_told_exactly, 0, sizeof inputs / sizeof *inputs);
    tcase_add_test(tests, records_read_together_are_drafted_as_each_alone);
    tcase_add_test(tests, a_list_longer_than_a_batch_is_drafted_whole);
    tcase_add_test(tests, who_feeds_a_record_at_a_time_is_answered_at_once);
    tcase_add_test(tests, a_record_that_is_too_large_hides_no_other);
    tcase_add_test(tests, broken_word_lists_are_told_exactly);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
