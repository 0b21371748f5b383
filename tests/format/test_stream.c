// SPDX-License-Identifier: MIT
// Streams. Every case is read with bytes arriving one by one, seven at a time and all at once; each way must
// tell the same records, messages and places. Expected lines are written by hand: "line:text" for each
// record, "!code@line:column" for each message.
#include "support.h"

#include "format/stream.h"
#include "format/write.h"
#include "text/limits.h"

struct feed {
    const char *text;
    size_t size, at, step;
    size_t fail_at; // reading fails from here on, unless 0
};

static size_t feed_read(void *context, char *to, size_t room) {
    struct feed *feed = context;
    if (feed->fail_at && feed->at >= feed->fail_at) return (size_t)-1;
    size_t size = feed->size - feed->at;
    if (size > feed->step) size = feed->step;
    if (size > room) size = room;
    memcpy(to, feed->text + feed->at, size);
    feed->at += size;
    return size;
}

static void tell_record(struct buf *out, struct node *record) {
    if (!record) {
        buf_text(out, "broken\n");
        return;
    }
    buf_format(out, "%zu:", source_locate(record->at.source, record->at.from).line);
    json_write(out, record);
    buf_byte(out, '\n');
}

struct step {
    struct stream *stream;
    bool more;
    char *told;
    size_t size, room;
};

static void take_step(struct arena *arena, void *context) {
    struct step *step = context;
    struct diags diags = diags_start(arena);
    struct node *record = NULL;
    struct buf out = buf_start(arena);
    stream_at_hand(step->stream); // asking changes nothing
    step->more = stream_next(step->stream, arena, &diags, &record);
    if (step->more) tell_record(&out, record);
    for (size_t i = 0; i < diags.count; i++) {
        const struct excerpt *shown = &diags.items[i].shown;
        buf_format(&out, "!%s@%zu:%zu\n", code_entry(diags.items[i].code)->name, shown->line, shown->column);
    }
    ck_assert_uint_lt(step->size + out.n, step->room);
    memcpy(step->told + step->size, out.at, out.n + 1);
    step->size += out.n;
}

static char *tell_all(const char *text, size_t size, size_t chunk, enum form form, size_t fail_at) {
    struct ledger ledger = {0};
    struct arena_memory memory = ledger_memory(&ledger);
    struct feed feed = {text, size, 0, chunk, fail_at};
    struct stream_source from = {"in", feed_read, &feed};
    struct step step = {stream_open(&from, form, &memory), true, calloc(1, 1 << 16), 0, 1 << 16};
    struct arena *arena = arena_new(&memory);
    while (step.more) {
        ck_assert(arena_try(arena, take_step, &step));
        arena_reset(arena);
    }
    arena_free(arena);
    stream_close(step.stream);
    ck_assert_uint_eq(ledger.live, 0);
    return step.told;
}

struct sample {
    enum form form;
    const char *text, *expected;
};

static void expect_told(const struct sample *sample) {
    static const size_t CHUNKS[] = {1, 7, 100000};
    for (size_t i = 0; i < 3; i++) {
        char *told = tell_all(sample->text, strlen(sample->text), CHUNKS[i], sample->form, 0);
        ck_assert_msg(strcmp(told, sample->expected) == 0, "chunks of %zu:\n%s\n-- told:\n%s-- expected:\n%s",
                      CHUNKS[i], sample->text, told, sample->expected);
        free(told);
    }
}

static const struct sample SAMPLES[] = {
    {FORM_YAML, "a: 1\n---\nb: 2\n---\nc: 3", "1:{\"a\":\"1\"}\n3:{\"b\":\"2\"}\n5:{\"c\":\"3\"}\n"},
    {FORM_YAML, "\xEF\xBB\xBF---\r\na: 1\r\n---\r\nb: 2\r\n", "2:{\"a\":\"1\"}\n4:{\"b\":\"2\"}\n"},
    {FORM_YAML, "# head\n---\na: 1\n...\n\n# between\n---\n\n---\nb: 2\n---\n# end\n---",
     "3:{\"a\":\"1\"}\n10:{\"b\":\"2\"}\n"},
    {FORM_YAML, "%YAML 1.1\n---\na: 1\n---\nb: 2\n", "3:{\"a\":\"1\"}\n5:{\"b\":\"2\"}\n"},
    {FORM_YAML, "--- {a: 1}\n--- # why\nb: |\n  ---\n  -- x\n---x: 1\n",
     "1:{\"a\":\"1\"}\n3:{\"b\":\"---\\n-- x\\n\",\"---x\":\"1\"}\n"},
    {FORM_YAML, "- a\n-\n--- \n- b\n", "1:[\"a\",null]\n4:[\"b\"]\n"},
    {FORM_YAML, "a: 1\n---\nb: [1\n---\nc: 3\n---\nd: 4\nd: 5\n---\ne: 6\n",
     "1:{\"a\":\"1\"}\nbroken\n!yaml.syntax@4:1\n5:{\"c\":\"3\"}\nbroken\n!input.duplicate-key@8:1\n10:{"
     "\"e\":\"6\"}\n"},
    {FORM_YAML, "a: \"x\n---\nb: 2\n", "broken\n!yaml.syntax@1:4\n3:{\"b\":\"2\"}\n"},
    {FORM_YAML, "a: x\xE2\x80\xAEy\n---\nb: \xFF\n---\nc: 3\n",
     "broken\n!text.control@1:5\nbroken\n!text.utf8@3:4\n5:{\"c\":\"3\"}\n"},
    {FORM_YAML, "", "!input.empty@0:0\n"},
    {FORM_YAML, "\n# nothing\n\n", "!input.empty@0:0\n"},

    {FORM_NDJSON, "{\"a\":1}\n{\"b\":2}\r\n\n  \n{\"c\":3}", "1:{\"a\":1}\n2:{\"b\":2}\n5:{\"c\":3}\n"},
    {FORM_NDJSON, "\xEF\xBB\xBF{\"a\":1}\n{\"b\":}\n{\"c\":3} {\"d\":4}\n{\"e\":5}\n",
     "1:{\"a\":1}\nbroken\n!json.syntax@2:6\nbroken\n!json.syntax@3:9\n4:{\"e\":5}\n"},
    {FORM_NDJSON, "{\"a\":\n1}\n", "broken\n!json.syntax@2:1\nbroken\n!json.syntax@2:2\n"},

    {FORM_JSON, "{\"a\": [1, {\"b\": \"}\"}]}\n", "1:{\"a\":[1,{\"b\":\"}\"}]}\n"},
    {FORM_JSON, "\n\n {\"a\":1}", "3:{\"a\":1}\n"},
    {FORM_JSON, "[{\"a\":1},{\"b\":\"x,]\\\"\"},\n {\"c\":[2,3]}]\n",
     "1:{\"a\":1}\n1:{\"b\":\"x,]\\\"\"}\n2:{\"c\":[2,3]}\n"},
    {FORM_JSON, "[]", "!input.empty@0:0\n"},
    {FORM_JSON, " \n", "!input.empty@0:0\n"},
    {FORM_JSON, "{\"a\":1}\n{\"b\":2}\n{\"c\":3}\n", "1:{\"a\":1}\nbroken\n!json.syntax@2:1\n"},
    {FORM_JSON, "{\"a\":1} {\"b\":2}", "1:{\"a\":1}\nbroken\n!json.syntax@1:9\n"},
    {FORM_JSON, "[{\"a\":1},]", "1:{\"a\":1}\n!json.syntax@1:10\n"},
    {FORM_JSON, "[{\"a\":1},,{\"b\":2}]", "1:{\"a\":1}\nbroken\n!json.syntax@1:10\n1:{\"b\":2}\n"},
    {FORM_JSON, "[{\"a\":1}\n", "1:{\"a\":1}\n!json.syntax@2:1\n"},
    {FORM_JSON, "[{\"a\":1}, {\"b\":", "1:{\"a\":1}\nbroken\n!json.syntax@1:16\n"},
    {FORM_JSON, "[", "!json.syntax@1:2\n"},
    {FORM_JSON, "[{\"a\":1}] x", "1:{\"a\":1}\nbroken\n!json.syntax@1:11\n"},
    // A fault inside one entry does not hide the next: a forgotten bracket, a forgotten quote, a stray
    // bracket.
    {FORM_JSON, "[{\"a\":[1},\n{\"b\":2},\n{\"c\":\"x},\n{\"d\":4},\n{\"e\":5}},\n{\"f\":6}]",
     "broken\n!json.syntax@1:9\n2:{\"b\":2}\nbroken\n!json.syntax@3:10\n6:{\"f\":6}\n"},
    {FORM_JSON, "[{\"a\":1 \"x\":2},\n\xC3\xA9,{\"caf\xC3\xA9\":1,},{\"b\":tru}]",
     "broken\n!json.syntax@1:9\nbroken\n!json.syntax@2:1\nbroken\n!json.syntax@2:12\nbroken\n!json.syntax@2:"
     "20\n"},
    {FORM_JSON, "12", "1:12\n"},

    {FORM_CSV, "id,flaws.1.kind\na,crack\n\nb,\"two\nlines\"\nc,\n",
     "2:{\"id\":\"a\",\"flaws\":[{\"kind\":\"crack\"}]}\n4:{\"id\":\"b\",\"flaws\":[{\"kind\":"
     "\"two\\nlines\"}]}\n6:{\"id\":\"c\"}\n"},
    {FORM_CSV, "\xEF\xBB\xBFid;type\r\na;\"x;\"\"y\"\"\"\r\nb;z",
     "2:{\"id\":\"a\",\"type\":\"x;\\\"y\\\"\"}\n3:{\"id\":\"b\",\"type\":\"z\"}\n"},
    {FORM_CSV, "id\ttype\ra\tx\rb\ty\r",
     "2:{\"id\":\"a\",\"type\":\"x\"}\n3:{\"id\":\"b\",\"type\":\"y\"}\n"},
    {FORM_CSV, "id,type\na,b,c\nd\ne,5\" f\ng,h\n",
     "broken\n!csv.width@2:5\nbroken\n!csv.width@3:1\nbroken\n!csv.syntax@4:4\n5:{\"id\":\"g\",\"type\":"
     "\"h\"}\n"},
    {FORM_CSV, "id,type\na,\"never closed\nb,c\nd,e\n",
     "broken\n!csv.syntax@2:3\n3:{\"id\":\"b\",\"type\":\"c\"}\n4:{\"id\":\"d\",\"type\":\"e\"}\n"},
    {FORM_CSV, "id,id\na,b\n", "broken\n!csv.header@1:4\n"},
    {FORM_CSV, ",\na,b\n", "broken\n!csv.header@1:1\n"},
    {FORM_CSV, "id,type\n", "!input.empty@0:0\n"},
    {FORM_CSV, "id,type\na,b\x07\nc,d\n", "broken\n!text.control@2:4\n3:{\"id\":\"c\",\"type\":\"d\"}\n"},

    {FORM_NOTES, "brass lamp\nno cracks\n---\n\n  tin, dented\n\n--- \t\r\n\n---\nlast -- one\n---x\n---",
     "1:{\"notes\":\"brass lamp\\nno cracks\"}\n5:{\"notes\":\"  tin, dented\"}\n10:{\"notes\":\"last -- "
     "one\\n---x\"}\n"},
    {FORM_NOTES, "\xEF\xBB\xBFone\r\ntwo\r\n", "1:{\"notes\":\"one\\r\\ntwo\"}\n"},
    {FORM_NOTES, "one \xE2\x80\xAE\n---\ntwo\n----\n",
     "broken\n!text.control@1:5\n3:{\"notes\":\"two\\n----\"}\n"},
    {FORM_NOTES, "---\n---\n", "!input.empty@0:0\n"},
};

START_TEST(records_are_cut_and_told_alike_however_bytes_arrive) {
    expect_told(&SAMPLES[_i]);
}
END_TEST

struct paced {
    struct stream *stream;
    bool more;
};

static void next_of(struct arena *arena, void *context) {
    struct paced *paced = context;
    struct diags diags = diags_start(arena);
    struct node *record = NULL;
    paced->more = stream_next(paced->stream, arena, &diags, &record);
}

// A record is at hand once its end was read, and taking it then reads nothing.
START_TEST(a_record_at_hand_is_not_asked_for) {
    static const char text[] = "{\"a\":1}\n{\"b\":2}\n{\"c\":3}\n{\"d\":4}";
    struct feed feed = {text, sizeof text - 1, 0, 20, 0}; // two records and a part of the third
    struct stream_source from = {"in", feed_read, &feed};
    struct paced paced = {stream_open(&from, FORM_NDJSON, NULL), true};
    struct arena *arena = arena_new(NULL);
    static const bool at_hand[] = {true, false, false, false};
    static const size_t read[] = {20, 20, sizeof text - 1, sizeof text - 1};
    ck_assert(!stream_at_hand(paced.stream)); // before anything was read
    for (size_t i = 0; i < 4; i++) {
        ck_assert(arena_try(arena, next_of, &paced));
        ck_assert(paced.more);
        ck_assert_uint_eq(feed.at, read[i]);
        ck_assert_msg(stream_at_hand(paced.stream) == at_hand[i], "after record %zu", i);
    }
    ck_assert(arena_try(arena, next_of, &paced));
    ck_assert(!paced.more);
    ck_assert(!stream_at_hand(paced.stream));
    arena_free(arena);
    stream_close(paced.stream);
}
END_TEST

START_TEST(a_nul_byte_spoils_one_record_only) {
    static const char TEXT[] = "{\"a\":1}\n{\"b\":\0}\n{\"c\":3}\n";
    char *told = tell_all(TEXT, sizeof TEXT - 1, 1, FORM_NDJSON, 0);
    ck_assert_str_eq(told, "1:{\"a\":1}\nbroken\n!text.nul@2:6\n3:{\"c\":3}\n");
    free(told);
}
END_TEST

START_TEST(a_reading_failure_is_told) {
    static const char TEXT[] = "{\"a\":1}\n{\"b\":2}\n{\"c\":3}\n";
    char *told = tell_all(TEXT, sizeof TEXT - 1, 4, FORM_NDJSON, 18);
    ck_assert_str_eq(told, "1:{\"a\":1}\n2:{\"b\":2}\n!file.read@0:0\n");
    free(told);
}
END_TEST

START_TEST(forms_have_names) {
    enum form form = FORM_YAML;
    static const struct {
        const char *name;
        enum form form;
    } NAMES[] = {{"a.yaml", FORM_YAML},          {"b/c.YML", FORM_YAML},  {"x.json", FORM_JSON},
                 {"x.json.ndjson", FORM_NDJSON}, {"shelf.CSV", FORM_CSV}, {"notes.txt", FORM_NOTES}};
    for (size_t i = 0; i < sizeof NAMES / sizeof *NAMES; i++) {
        ck_assert(form_of_name(NAMES[i].name, &form));
        ck_assert_int_eq(form, NAMES[i].form);
    }
    static const char *const NONE[] = {"-", "", "yaml", "a.doc", "dir.yaml/file", "a.yaml2", "a.notes", "a."};
    for (size_t i = 0; i < sizeof NONE / sizeof *NONE; i++)
        ck_assert_msg(!form_of_name(NONE[i], &form), "%s", NONE[i]);
    ck_assert(form_of_word("notes", &form) && form == FORM_NOTES);
    ck_assert(form_of_word("ndjson", &form) && form == FORM_NDJSON);
    ck_assert(!form_of_word("xml", &form));
}
END_TEST

// Makes records one after another without ever holding more than one.
struct maker {
    enum form form;
    size_t made, count, at, size;
    size_t large; // number of a record that is made too large, 0 for none
    size_t filler;
    char line[256];
};

static void make_line(struct maker *maker) {
    size_t n = ++maker->made;
    int size = 0;
    switch (maker->form) {
    case FORM_YAML:
        size = snprintf(maker->line, sizeof maker->line, "---\nid: n%zu\nnotes: brass lamp\n", n);
        break;
    case FORM_JSON:
        size = snprintf(maker->line, sizeof maker->line, "%s{\"id\":\"n%zu\",\"notes\":\"brass lamp\"}%s",
                        n == 1 ? "[" : ",\n", n, n == maker->count ? "]" : "");
        break;
    case FORM_NDJSON:
        size = snprintf(maker->line, sizeof maker->line, "{\"id\":\"n%zu\",\"notes\":\"brass lamp\"}\n", n);
        break;
    case FORM_CSV:
        size = snprintf(maker->line, sizeof maker->line, "%sn%zu,\"brass, lamp\"\n",
                        n == 1 ? "id,notes\n" : "", n);
        break;
    case FORM_NOTES:
        size = snprintf(maker->line, sizeof maker->line, "n%zu brass lamp\n---\n", n);
        break;
    }
    maker->size = (size_t)size;
    maker->at = 0;
    maker->filler = n == maker->large ? LIMIT_RECORD_BYTES + 100 : 0;
}

static size_t maker_read(void *context, char *to, size_t room) {
    struct maker *maker = context;
    if (maker->at == maker->size && maker->made == maker->count) return 0;
    if (maker->at == maker->size) make_line(maker);
    // The filler stands before "lamp", so that it is inside a text in every form.
    size_t stop = (size_t)(strstr(maker->line, "lamp") - maker->line);
    if (maker->at == stop && maker->filler) {
        size_t size = maker->filler < room ? maker->filler : room;
        memset(to, 'x', size);
        maker->filler -= size;
        return size;
    }
    size_t end = maker->filler && maker->at < stop ? stop : maker->size;
    size_t size = end - maker->at < room ? end - maker->at : room;
    memcpy(to, maker->line + maker->at, size);
    maker->at += size;
    return size;
}

struct count {
    struct stream *stream;
    bool more;
    size_t records, broken, large, first_bad_line, worst;
};

static void count_step(struct arena *arena, void *context) {
    struct count *count = context;
    struct diags diags = diags_start(arena);
    struct node *record = NULL;
    count->more = stream_next(count->stream, arena, &diags, &record);
    if (count->more && record) count->records++;
    if (count->more && !record) count->broken++;
    for (size_t i = 0; i < diags.count; i++) {
        count->large += diags.items[i].code == CODE_TOO_LARGE;
        if (!count->first_bad_line) count->first_bad_line = diags.items[i].shown.line;
    }
    if (arena_used(arena) > count->worst) count->worst = arena_used(arena);
}

struct bytes {
    size_t live, most; // sizes are kept in front of each block
};

static void *bytes_alloc(void *context, size_t size) {
    struct bytes *bytes = context;
    max_align_t *block = malloc(size + sizeof *block);
    if (!block) return NULL;
    memcpy(block, &size, sizeof size);
    bytes->live += size;
    if (bytes->live > bytes->most) bytes->most = bytes->live;
    return block + 1;
}

static void bytes_free(void *context, void *at) {
    struct bytes *bytes = context;
    size_t size = 0;
    max_align_t *block = (max_align_t *)at - 1;
    memcpy(&size, block, sizeof size);
    bytes->live -= size;
    free(block);
}

static struct count count_made(struct maker *maker, struct bytes *bytes) {
    struct arena_memory memory = {bytes_alloc, bytes_free, bytes};
    struct stream_source from = {"in", maker_read, maker};
    struct count count = {.stream = stream_open(&from, maker->form, &memory), .more = true};
    struct arena *arena = arena_new(&memory);
    while (count.more) {
        ck_assert(arena_try(arena, count_step, &count));
        arena_reset(arena);
    }
    arena_free(arena);
    stream_close(count.stream);
    ck_assert_uint_eq(bytes->live, 0);
    return count;
}

START_TEST(a_hundred_thousand_records_need_the_memory_of_one) {
    struct maker few = {.form = (enum form)_i, .count = 1000},
                 many = {.form = (enum form)_i, .count = 100000};
    struct bytes small = {0}, big = {0};
    struct count one = count_made(&few, &small), two = count_made(&many, &big);
    ck_assert_uint_eq(one.records, 1000);
    ck_assert_uint_eq(two.records, 100000);
    ck_assert_uint_eq(two.broken, 0);
    ck_assert_msg(big.most <= small.most + 4096, "%zu bytes for many, %zu for few", big.most, small.most);
    ck_assert_uint_lt(two.worst, 40000);
}
END_TEST

START_TEST(a_record_that_is_too_large_is_skipped) {
    struct maker maker = {.form = (enum form)_i, .count = 50, .large = 20};
    struct bytes bytes = {0};
    struct count count = count_made(&maker, &bytes);
    ck_assert_uint_eq(count.records, 49);
    ck_assert_uint_eq(count.broken, 1);
    ck_assert_uint_eq(count.large, 1);
    static const size_t LINES[] = {
        [FORM_YAML] = 58, [FORM_JSON] = 19, [FORM_NDJSON] = 20, [FORM_CSV] = 21, [FORM_NOTES] = 39};
    ck_assert_uint_eq(count.first_bad_line, LINES[_i]);
    ck_assert_uint_lt(bytes.most, LIMIT_RECORD_BYTES * 4);
}
END_TEST

static size_t endless_read(void *context, char *to, size_t room) {
    size_t *left = context, size = *left < room ? *left : room;
    memset(to, '[', size);
    *left -= size;
    return size;
}

START_TEST(sixty_megabytes_of_one_byte_end) {
    size_t left = (size_t)60 << 20;
    struct stream_source from = {"in", endless_read, &left};
    struct count count = {.stream = stream_open(&from, (enum form)_i, NULL), .more = true};
    struct arena *arena = arena_new(NULL);
    while (count.more) {
        ck_assert(arena_try(arena, count_step, &count));
        arena_reset(arena);
    }
    ck_assert_uint_eq(count.records, 0);
    ck_assert_uint_eq(count.large, 1);
    arena_free(arena);
    stream_close(count.stream);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("stream");
    TCase *cases = tcase_create("stream");
    tcase_set_timeout(cases, 300);
    tcase_add_loop_test(cases, records_are_cut_and_told_alike_however_bytes_arrive, 0,
                        (int)(sizeof SAMPLES / sizeof *SAMPLES));
    tcase_add_test(cases, a_record_at_hand_is_not_asked_for);
    tcase_add_test(cases, a_nul_byte_spoils_one_record_only);
    tcase_add_test(cases, a_reading_failure_is_told);
    tcase_add_test(cases, forms_have_names);
    tcase_add_loop_test(cases, a_hundred_thousand_records_need_the_memory_of_one, FORM_YAML, FORM_NOTES + 1);
    tcase_add_loop_test(cases, a_record_that_is_too_large_is_skipped, FORM_YAML, FORM_NOTES + 1);
    tcase_add_loop_test(cases, sixty_megabytes_of_one_byte_end, FORM_YAML, FORM_NOTES + 1);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
