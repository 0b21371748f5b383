// SPDX-License-Identifier: MIT
// Groups of words in a pack of its own: what their patterns find of a note, word for word, and what they
// leave.
#include "../rules/support.h"

#include "notes/phrases.h"
#include "notes/token.h"

static const char pack[] =
    "- group: closures\n"
    "  means: What shuts a vessel.\n"
    "  are: [lid, screw top, \"bung|cork\"]\n"
    "- group: parts\n"
    "  means: Any part.\n"
    "  are: [handle]\n"
    "  with: [closures]\n"
    "- group: goes-off\n"
    "  means: It is not there.\n"
    "  are: [\"gone|went its -|own merry way\", \"on the run\", \"not|isn't -|quite here\", \"absconded\"]\n"
    "- flaw: runaway\n"
    "  class: missing\n"
    "  form: fault\n"
    "  print: runaway\n"
    "  means: A part that is not there.\n"
    "  noun: runaway\n"
    "  scale: {light: one, moderate: two, heavy: many}\n"
    "  cap: {light: B, moderate: C, heavy: D}\n"
    "  title: {duty: must}\n"
    "  said: [runaway]\n"
    "  spoken: [\"@parts ~ @goes-off\", \"@goes-off|fled says|-|said @closures\", \"tin|@closures of "
    "mystery\"]\n"
    "  spoken_on: [\"-|small @closures|- marked\"]\n"
    "  ask: [Which?]\n"
    "  photo: the place\n";

static const struct {
    const char *note, *found; // NULL: nothing
} cases[] = {
    {"The lid has gone its own merry way", "gone its own merry way"},
    {"The screw top has long since gone its merry way", "gone its merry way"},
    {"A cork, and a handle that went its merry way", "went its merry way"},
    {"The bung's absconded", NULL}, // "bungs" is no member
    {"Bung absconded", "absconded"},
    {"The lid is on the run", "the run"}, // from its rarest two words on
    {"The lid isn't quite here", "isn't quite here"},
    {"It has absconded says lid", "absconded says lid"},
    {"It has fled lid", "fled lid"},
    {"A cork of mystery", "cork of mystery"},
    {"An old tin of mystery", "tin of mystery"},
    {"Small lid marked", "marked"},
    {"Handle marked", "marked"},
    {"The lid has gone its own way", NULL},
    {"The lid. Gone its own merry way", NULL},
    {"The cat has gone its own merry way", NULL},
    {"The lid and never again one that absconded", NULL}, // a denial between
    {"The lid of a tin in that box absconded", NULL},     // too far
    {"Merry way", NULL},
    {"gone its own merry", NULL},
    {"absconded", NULL},
    {"half-lid absconded", NULL}, // the part of a word
};

static void find_all(struct arena *arena, void *context) {
    (void)context;
    enter_new_folder();
    write_file("pack/x.yaml", pack, sizeof pack - 1);
    const char *folder = "pack";
    struct diags diags = diags_start(arena);
    const struct ruleset *rules = ruleset_load(arena, &folder, 1, &diags);
    leave_folder();
    ck_assert_msg(!diags.count, "%s", printed(arena, &diags));
    ck_assert_uint_eq(rules->group_count, 3);
    const struct phrases *phrases = phrases_new(arena, rules);
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const char *note = cases[i].note;
        struct tokens tokens = tokens_cut(arena, note, strlen(note));
        struct phrase_hits hits = phrases_find(arena, phrases, &tokens);
        if (!cases[i].found) {
            ck_assert_msg(!hits.count, "'%s' is found", note);
            continue;
        }
        ck_assert_msg(hits.count > 0, "'%s' is not found", note);
        size_t from = tokens.at[hits.at[0].from].from, to = tokens.at[hits.at[0].to - 1].to;
        ck_assert_str_eq(arena_copy(arena, note + from, to - from), cases[i].found);
    }
}

START_TEST(groups_are_found_word_for_word) {
    within(find_all, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes.word_groups");
    TCase *tests = tcase_create("groups");
    tcase_add_test(tests, groups_are_found_word_for_word);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
