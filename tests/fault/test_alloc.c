// SPDX-License-Identifier: MIT
// Memory that runs out at the first call, at the second, and so on until a task is done: each time the status
// and the one plain message, what was written before stands whole, and every block is given back.
#include "support.h"

static const char no_memory[] = "asfound: error: memory ran out [memory]\n";

// Twice the same thing, the second with every key that a record may have: what was drafted first must stand.
static const char in_yaml[] =
    "id: plain\ntype: oil lamp\nflaws: [rust]\n---\n"
    "id: all\nnotes: brass lamp from the boat house, chip on the base. cost me 3\n"
    "type: {value: oil lamp, sure: stated, span: [6, 10], others: [lantern]}\nfamily: lighting\n"
    "attributes:\n  brand: [{value: Lunsetter, because: a plate}]\n  material: [brass, {value: glass, of: "
    "chimney}]\n"
    "  color: {value: green, sure: likely}\n  age: old\n  model: No. 4\n"
    "flaws:\n  - {kind: chip, part: base, where: at the handel, count: 2, of: 3, severity: light, size: {mm: "
    "4, "
    "about: true},"
    " sure: likely, photo: base.jpg, span: [38, 42]}\n  - untested\n"
    "clear:\n  - {kind: crack, part: chimney, how: none-seen, where: inside}\n"
    "unchecked: [seized, 'the wick']\nincludes: [{what: spare wick, count: 2}, box]\ncount: 2\n"
    "measurements:\n  - {dimension: height, value: 14, unit: in}\n  - {dimension: width, of: base, from: 4, "
    "to: 5, unit: in}\n"
    "  - {dimension: weight, g: 900, about: true}\n"
    "marks: [{text: 'LUNSETTER 4', where: base}, 'PAT 12']\nfits: [{brand: Hoskaby, model: R6, sure: "
    "likely}]\n"
    "dates: {from: 1950, to: 1959, because: the plate}\n"
    "listing: {title: Old lamp, description: A lamp., price: '12', currency: USD, listed: '2024-01-02', "
    "where: here}\n"
    "photos: [{file: a.jpg, shows: base}, b.jpg]\nasides: [[53, 62]]\nunread: [[0, 5]]\nown: {bin: A1}\n";

#define JSON_RECORDS                                                                                         \
    "{\"id\":\"plain\",\"type\":\"oil lamp\",\"flaws\":[\"rust\"]}",                                         \
        "{\"id\":\"all\",\"notes\":\"a chip on the base\","                                                  \
        "\"type\":{\"value\":\"oil "                                                                         \
        "lamp\",\"others\":[\"lantern\"]},\"family\":\"lighting\",\"attributes\":{\"brand\":"                \
        "\"Lunsetter\",\"material\":[\"brass\",{\"value\":\"glass\",\"of\":\"chimney\"}]},\"flaws\":[{"      \
        "\"kind\":\"chip\","                                                                                 \
        "\"part\":\"base\",\"count\":2,\"of\":3,\"size\":{\"mm\":4},\"span\":[2,6]},\"untested\"],"          \
        "\"clear\":[{\"kind\":"                                                                              \
        "\"crack\",\"how\":\"denied\"}],\"unchecked\":[\"seized\"],\"includes\":[\"box\"],\"count\":2,"      \
        "\"measurements\":"                                                                                  \
        "[{\"dimension\":\"height\",\"value\":14,\"unit\":\"in\"}],\"marks\":[\"PAT "                        \
        "12\"],\"fits\":[\"R6\"],\"dates\":"                                                                 \
        "{\"from\":1950},\"listing\":{\"title\":\"Old "                                                      \
        "lamp\"},\"photos\":[\"a.jpg\"],\"own\":{\"bin\":[1,null,true]}}"

static const char *const json_records[] = {JSON_RECORDS};

static const char in_csv[] =
    "id,type,family,attributes.brand,attributes.material.1.value,attributes.material.1.of,flaws.1.kind,flaws."
    "1.part,"
    "flaws.2.kind,measurements.1.dimension,measurements.1.value,measurements.1.unit,marks.1.text,own.bin\n"
    "plain,oil lamp,,,,,rust,,,,,,,\n"
    "all,oil lamp,lighting,Lunsetter,glass,chimney,chip,base,untested,height,14,in,\"PAT \"\"12\"\"\",A1\n";
static const char in_notes[] =
    "brass oil lamp, chip on the base\n---\ntwo old oars, one split at the blade\n";
// Faults of every stage: their messages need memory too.
static const char in_faults[] = "id: a\ntype: [lamp\n---\nid: b\ntipe: lamp\nflaws: [chipp]\nfamily: "
                                "lightning\n---\nid: c\ntype: lamp\nid: c\n---\n"
                                "id: d\ntype: lamp\ncount: many\nspan: *x\n";

struct text {
    const char *name, *bytes;
    enum asfound_input form;
};

static struct text input_of(size_t which) {
    static char json[4096], lines[4096];
    snprintf(json, sizeof json, "[%s,%s]\n", json_records[0], json_records[1]);
    snprintf(lines, sizeof lines, "%s\n%s\n", json_records[0], json_records[1]);
    const struct text all[] = {
        {"all.yaml", in_yaml, ASFOUND_YAML},   {"all.json", json, ASFOUND_JSON},
        {"all.ndjson", lines, ASFOUND_NDJSON}, {"all.csv", in_csv, ASFOUND_CSV},
        {"all.txt", in_notes, ASFOUND_NOTES},  {"faults.yaml", in_faults, ASFOUND_YAML}};
    return all[which];
}

enum { INPUTS = 6 };

struct world {
    struct memory memory;
    struct kept messages, out;
    asfound_engine *engine;
};

static void world_open(struct world *world) {
    *world = (struct world){0};
    enum asfound_status status = engine_open(&world->memory, &world->messages, &world->engine);
    ck_assert_msg(status == ASFOUND_FINE, "status %d: %s", (int)status, kept_text(&world->messages));
}

static void world_close(struct world *world) {
    asfound_engine_free(world->engine);
    ck_assert_msg(world->memory.live == 0, "%zu blocks are left", world->memory.live);
    kept_free(&world->messages);
    kept_free(&world->out);
}

typedef enum asfound_status task(struct world *world, const void *what);

// Runs `run` with the first, second … call for memory failing; returns how many of them there are. The result
// of the undisturbed run is what the last one must give, and a beginning of it is all that others may have
// written.
static size_t exhaust(struct world *world, task *run, const void *what, const char *name, bool once,
                      size_t stride_from) {
    size_t live = world->memory.live;
    world->memory = (struct memory){.live = live};
    kept_clear(&world->out);
    kept_clear(&world->messages);
    enum asfound_status expected = run(world, what);
    ck_assert_msg(expected <= ASFOUND_BROKEN_INPUT, "%s: status %d undisturbed", name, (int)expected);
    size_t calls = world->memory.calls;
    ck_assert_msg(calls > 0, "%s: asks for no memory", name);
    char *whole = strdup(kept_text(&world->out)), *told = strdup(kept_text(&world->messages));
    size_t done = 0;
    for (size_t n = 1; n <= calls + 1; n += n < stride_from || n == calls ? 1 : 1 + n / 16, done++) {
        if (n > calls + 1) n = calls + 1;
        world->memory = (struct memory){.live = live, .fail_at = n, .once = once};
        kept_clear(&world->out);
        kept_clear(&world->messages);
        enum asfound_status status = run(world, what);
        ck_assert_msg(world->memory.live == live, "%s: %zu blocks lost at call %zu", name,
                      world->memory.live - live, n);
        if (n > calls) {
            ck_assert_int_eq(status, expected);
            ck_assert_str_eq(kept_text(&world->out), whole);
            ck_assert_str_eq(kept_text(&world->messages), told);
            break;
        }
        ck_assert_msg(status == ASFOUND_IO, "%s: status %d at call %zu of %zu", name, (int)status, n, calls);
        ck_assert_msg(strcmp(kept_text(&world->messages), no_memory) == 0, "%s: at call %zu: %s", name, n,
                      kept_text(&world->messages));
        ck_assert_msg(strncmp(kept_text(&world->out), whole, world->out.size) == 0,
                      "%s: other output at call %zu", name, n);
        // A line ends here, or in HTML an element does.
        ck_assert_msg(!world->out.size || strchr("\n>", whole[world->out.size - 1]),
                      "%s: half a line at call %zu", name, n);
    }
    world->memory = (struct memory){.live = live};
    free(whole);
    free(told);
    return calls;
}

// --- the engine ---

START_TEST(engine_needs_every_block) {
    struct memory memory = {0};
    struct kept messages = {0};
    asfound_engine *engine = NULL;
    ck_assert_int_eq(engine_open(&memory, &messages, &engine), ASFOUND_FINE);
    asfound_engine_free(engine);
    size_t calls = memory.calls;
    ck_assert_uint_eq(memory.live, 0);
    ck_assert_uint_gt(calls, 5);
    for (size_t n = 1; n <= calls; n += n < 300 ? 1 : 1 + n / 8) {
        memory = (struct memory){.fail_at = n, .once = _i != 0};
        kept_clear(&messages);
        enum asfound_status status = engine_open(&memory, &messages, &engine);
        ck_assert_msg(status == ASFOUND_IO, "status %d at call %zu of %zu", (int)status, n, calls);
        ck_assert_ptr_null(engine);
        ck_assert_str_eq(kept_text(&messages), no_memory);
        ck_assert_msg(memory.live == 0, "%zu blocks lost at call %zu", memory.live, n);
    }
    kept_free(&messages);
}
END_TEST

// --- drafting ---

struct drafting {
    struct text input;
    enum asfound_output output;
    bool explain;
};

static enum asfound_status draft(struct world *world, const void *what) {
    const struct drafting *drafting = what;
    struct given given = {.text = drafting->input.bytes, .size = strlen(drafting->input.bytes)};
    struct asfound_draft_options options = {
        .input = drafting->input.form,
        .output = drafting->output,
        .explain = drafting->explain,
        .out = kept_put,
        .out_context = &world->out,
        .messages = kept_put,
        .messages_context = &world->messages,
    };
    return asfound_draft(world->engine, &options, drafting->input.name, given_get, &given);
}

static void exhaust_drafts(struct world *world, const struct drafting *drafting, const char *name) {
    exhaust(world, draft, drafting, name, false, 300);
    exhaust(world, draft, drafting, name, true, 300);
}

START_TEST(drafts_need_every_block) {
    struct world world;
    world_open(&world);
    for (enum asfound_output output = ASFOUND_TEXT; output <= ASFOUND_HTML; output++)
        for (int explain = 0; explain < 2; explain++) {
            struct drafting drafting = {input_of((size_t)_i), output, explain};
            char name[80];
            snprintf(name, sizeof name, "%s, output %d%s", drafting.input.name, (int)output,
                     explain ? ", explained" : "");
            exhaust_drafts(&world, &drafting, name);
        }
    world_close(&world);
}
END_TEST

// So many records, of which every tenth is broken, that the list of ids and the messages grow beyond their
// first blocks.
START_TEST(long_inputs_need_every_block) {
    struct kept lines = {0};
    char line[120];
    for (int i = 0; i < 1500; i++) {
        int n =
            snprintf(line, sizeof line, "{\"id\":\"t-%d\",\"%s\":\"oar\"}\n", i, i % 10 ? "type" : "tipe");
        kept_put(&lines, line, (size_t)n);
    }
    struct world world;
    world_open(&world);
    struct drafting drafting = {
        {"long.ndjson", kept_text(&lines), ASFOUND_NDJSON}, ASFOUND_JSON_LINES, false};
    exhaust(&world, draft, &drafting, "long", false, 8);
    world_close(&world);
    kept_free(&lines);
}
END_TEST

// Output and input that fail are told by the status; half of a line is never followed by anything.
START_TEST(output_and_input_may_fail) {
    struct world world;
    world_open(&world);
    size_t live = world.memory.live;
    struct drafting drafting = {input_of(0), ASFOUND_JSON_LINES, false};
    for (enum asfound_output output = ASFOUND_TEXT; output <= ASFOUND_HTML; output++) {
        drafting.output = output;
        kept_clear(&world.out);
        ck_assert_int_le(draft(&world, &drafting), ASFOUND_MUST);
        size_t puts = world.out.taken;
        ck_assert_uint_ge(puts, 2);
        for (size_t n = 1; n < puts; n++) {
            kept_clear(&world.out);
            world.out.takes = n;
            ck_assert_int_eq(draft(&world, &drafting), ASFOUND_IO);
            ck_assert_uint_eq(world.out.taken, n);
            ck_assert_uint_eq(world.memory.live, live);
        }
        world.out.takes = 0;
    }
    struct asfound_draft_options options = {.output = ASFOUND_JSON_LINES,
                                            .out = kept_put,
                                            .out_context = &world.out,
                                            .messages = kept_put,
                                            .messages_context = &world.messages};
    for (size_t which = 0; which < INPUTS; which++) {
        struct text input = input_of(which);
        options.input = input.form;
        size_t size = strlen(input.bytes);
        for (size_t n = 1; n <= size; n += n < 40 ? 1 : 37) {
            struct given given = {.text = input.bytes, .size = size, .step = 1, .breaks_at = n};
            kept_clear(&world.messages);
            enum asfound_status status = asfound_draft(world.engine, &options, input.name, given_get, &given);
            ck_assert_msg(status == ASFOUND_IO, "%s: status %d after %zu bytes", input.name, (int)status, n);
            ck_assert_msg(strstr(kept_text(&world.messages), "[file.read]") != NULL, "%s: %s", input.name,
                          kept_text(&world.messages));
        }
    }
    world_close(&world);
}
END_TEST

// --- rules ---

static enum asfound_status check_rules(struct world *world, const void *what) {
    (void)what;
    return asfound_rules_check(world->engine, true, kept_put, &world->out, kept_put, &world->messages);
}

static enum asfound_status show_rule(struct world *world, const void *what) {
    return asfound_rules_show(world->engine, what, kept_put, &world->out, kept_put, &world->messages);
}

static enum asfound_status date_marks(struct world *world, const void *what) {
    const char *marks[] = {"Made in West Germany", "ISBN 0-306-40615-3", "CC41", what};
    struct asfound_date_options options = {
        .marks = marks,
        .mark_count = sizeof marks / sizeof *marks,
        .today = "2025-11-25",
        .output = ASFOUND_JSON_LINES,
        .out = kept_put,
        .messages = kept_put,
        .out_context = &world->out,
        .messages_context = &world->messages,
    };
    return asfound_date(world->engine, &options);
}

static enum asfound_status frame_page(struct world *world, const void *what) {
    enum asfound_status status = asfound_page_frame(world->engine, what != NULL, kept_put, &world->out);
    // This call has no place for messages.
    if (status == ASFOUND_IO) kept_put(&world->messages, no_memory, sizeof no_memory - 1);
    return status;
}

START_TEST(rule_texts_need_every_block) {
    struct world world;
    world_open(&world);
    exhaust(&world, show_rule, "chip", "show chip", false, 300);
    exhaust(&world, show_rule, "family lighting", "show lighting", false, 300);
    exhaust(&world, show_rule, "chipp", "show what is not there", false, 300);
    exhaust(&world, date_marks, "Rd No 141273", "date", false, 300);
    exhaust(&world, date_marks, "", "date an empty mark", false, 300);
    exhaust(&world, frame_page, NULL, "page begins", false, 300);
    exhaust(&world, frame_page, "end", "page ends", false, 300);
    world_close(&world);
}
END_TEST

START_TEST(rules_check_needs_every_block) {
    struct world world;
    world_open(&world);
    exhaust(&world, check_rules, NULL, "check", false, 8);
    world_close(&world);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("memory that runs out");
    TCase *tests = tcase_create("all");
    tcase_set_timeout(tests, 600);
    tcase_add_loop_test(tests, engine_needs_every_block, 0, 2);
    tcase_add_loop_test(tests, drafts_need_every_block, 0, INPUTS);
    tcase_add_test(tests, long_inputs_need_every_block);
    tcase_add_test(tests, output_and_input_may_fail);
    tcase_add_test(tests, rule_texts_need_every_block);
    tcase_add_test(tests, rules_check_needs_every_block);
    suite_add_tcase(suite, tests);
    SRunner *runner = srunner_create(suite);
    dictionaries_make();
    srunner_run_all(runner, CK_NORMAL);
    dictionaries_remove();
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
