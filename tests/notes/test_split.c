// SPDX-License-Identifier: MIT
// One note of several things, and what no reader took of a note.
#include "support.h"

#include "format/tree.h"
#include "notes/rest.h"
#include "notes/split.h"

static const char *tell_pieces(const struct note *note) {
    size_t count;
    struct note_piece *pieces =
        note_split(note->arena, note->rules, note->tokens.text, note->tokens.size, &count);
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < count; i++) {
        buf_text(&out, i ? " | " : "");
        buf_add(&out, note->tokens.text + pieces[i].from, pieces[i].to - pieces[i].from);
    }
    return out.at;
}

static void nothing(struct note *note) {
    (void)note;
}

static const struct notes_case pieces[] = {
    {"", ""},
    {"Oil lamp, brass.", "Oil lamp, brass."},
    {"oil lamp dented okay next one um a clock no key", "oil lamp dented | a clock no key"},
    {"Oil lamp. Next one: clock, no key.", "Oil lamp. | clock, no key."},
    {"Oil lamp. Okay, next one, a clock.", "Oil lamp. Okay, | a clock."},
    {"Lamp.\nNext item\nClock.", "Lamp. | Clock."},
    {"lamp ok next up basket ok next up radio", "lamp | basket | radio"},
    {"Lamp, the next one over is chipped.", "Lamp, the next one over is chipped."},
    {"Lamp. Next one over is chipped.", "Lamp. Next one over is chipped."},
    {"- lamp, brass\n- basket, no lid\n- radio", "lamp, brass | basket, no lid | radio"},
    {"1. lamp, brass\n2. basket with a lid", "lamp, brass | basket with a lid"},
    {"1) lamp\n2) clock", "lamp | clock"},
    {"- lamp, brass\n- lid dented\n- works", "- lamp, brass\n- lid dented\n- works"},
    {"Lamp\n- brass\n- no wick", "Lamp\n- brass\n- no wick"},
    {"- lamp, brass", "- lamp, brass"},
    {"- lamp is brass\n- clock is oak", "- lamp is brass\n- clock is oak"},
    {"- lamp\nand a basket\n- clock", "- lamp\nand a basket\n- clock"},
};

START_TEST(notes_are_split) {
    support_cases(pieces, sizeof pieces / sizeof *pieces, LOCALE_US, nothing, tell_pieces);
}
END_TEST

// --- what nobody took ---

static void read(struct note *note) {
    read_writing(note);
    read_asides(note);
    read_dates(note);
    read_measures(note);
    read_counts(note);
    note_rest(note, rest_is_small);
}

static const char *tell_unread(const struct note *note) {
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->unread_count; i++) {
        buf_text(&out, i ? " | " : "");
        buf_add(&out, note->tokens.text + note->unread[i].from, note->unread[i].to - note->unread[i].from);
    }
    return out.at;
}

static const struct notes_case unread[] = {
    {"", ""},
    {"8 inches tall", ""},
    {"It is 8 inches tall, really.", ""},
    {"It is about 8 inches tall and 5 wide", ""},
    {"lamp 8 inches tall, dented", "lamp | dented"},
    {"The lamp is very dented", "lamp is very dented"},
    {"brass lamp. paid 5 bucks.", "brass lamp"},
    {"height 81/2\" or so I wrote", "height 81/2\" or so I wrote"},
    {"1947 or 1974", "1947 or 1974"},
    {"? on mark", "? | mark"},
    {"no lid", "no lid"},
};

START_TEST(what_is_left_is_unread) {
    support_cases(unread, sizeof unread / sizeof *unread, LOCALE_US, read, tell_unread);
}
END_TEST

static void check_all_told(struct arena *arena, void *context) {
    (void)context;
    static const char *const notes[] = {
        "Brass lamp, 8 inches tall, marked ORRIN 4 on the base. Paid 5 bucks. Lid dented, smells of oil?",
        "set of 4 tins circa 1890 the lids are rusty my uncle kept nails in them comma two have holes "
        "period"};
    for (size_t n = 0; n < sizeof notes / sizeof *notes; n++) {
        struct note *note = support_note(arena, notes[n], LOCALE_US);
        read(note);
        for (size_t i = 0; i < note->tokens.count; i++) {
            bool spanned = false;
            for (size_t k = 0; k < note->unread_count; k++)
                spanned |= note->unread[k].from <= note->tokens.at[i].from &&
                           note->tokens.at[i].to <= note->unread[k].to;
            ck_assert_msg(note->taken[i] != TAKEN_NOT || spanned, "'%s' is lost", note->tokens.at[i].fold);
        }
        const struct node *tree = note_spans_tree(note, note->unread, note->unread_count);
        ck_assert_uint_eq(tree->count, note->unread_count);
        double from;
        ck_assert(node_number(tree->members[0].value->members[0].value, &from));
        ck_assert_uint_eq((size_t)from, note->unread[0].from);
        ck_assert_ptr_null(note_spans_tree(note, NULL, 0));
    }
}

// Each token is a fact, an aside, a small word or unread.
START_TEST(nothing_is_dropped) {
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, check_all_told, NULL));
    arena_free(arena);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: splitting and rest");
    TCase *tests = tcase_create("split");
    tcase_add_test(tests, notes_are_split);
    tcase_add_test(tests, what_is_left_is_unread);
    tcase_add_test(tests, nothing_is_dropped);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
