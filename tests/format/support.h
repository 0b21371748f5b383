// SPDX-License-Identifier: MIT
// Reading a text and looking at what came of it; trees at random and whether two are the same.
#ifndef TEST_FORMAT_SUPPORT_H
#define TEST_FORMAT_SUPPORT_H

#include "../text/support.h"

#include <stdio.h>
#include <string.h>

#include "format/read.h"

typedef struct node *(*reader)(struct arena *arena, const struct source *source, struct diags *diags);

struct reading {
    struct source source;
    struct diags diags;
    struct node *node;
};

static inline struct reading *read_text_of(struct arena *arena, reader read, const char *text, size_t size) {
    struct reading *reading = arena_alloc(arena, sizeof *reading);
    reading->source.name = "in";
    reading->source.text = arena_copy(arena, text, size);
    reading->source.size = size;
    reading->source.first_line = 1;
    reading->diags = diags_start(arena);
    reading->node = read(arena, &reading->source, &reading->diags);
    return reading;
}

static inline const char *print_of(struct arena *arena, struct diags *diags) {
    struct buf out = buf_start(arena);
    diags_print(diags, &out, false);
    return out.at;
}

// What `node` covers in its source.
static inline const char *slice_of(struct arena *arena, const struct node *node) {
    ck_assert_uint_le(node->at.to, node->at.source->size);
    return arena_copy(arena, node->at.source->text + node->at.from, node->at.to - node->at.from);
}

// One fault of one reading: where it is, which code, and a part of what is said.
struct fault {
    const char *text;
    size_t from, to;
    enum code code;
    const char *says; // in the message or the hint
};

static inline void expect_fault(struct arena *arena, reader read, const struct fault *fault) {
    struct reading *reading = read_text_of(arena, read, fault->text, strlen(fault->text));
    const struct diag *first = reading->diags.items;
    ck_assert_msg(!reading->node && reading->diags.count > 0, "read without a fault: %s", fault->text);
    ck_assert_msg(first->code == fault->code && first->at.from == fault->from && first->at.to == fault->to,
                  "%s\n  expected %s [%zu, %zu), found [%zu, %zu)\n%s", fault->text,
                  code_entry(fault->code)->name, fault->from, fault->to, first->at.from, first->at.to,
                  print_of(arena, &reading->diags));
    bool said = strstr(first->message, fault->says) || (first->hint && strstr(first->hint, fault->says));
    ck_assert_msg(said, "%s\n  does not say: %s\n%s", fault->text, fault->says,
                  print_of(arena, &reading->diags));
}

// YAML does not tell numbers and yes/no from text without a schema: a plain text with the same digits is the
// same value.
static inline bool same_tree(const struct node *left, const struct node *right) {
    double a = 0, b = 0;
    bool yes = false, no = false;
    if (left->kind == NODE_NUMBER && right->kind == NODE_TEXT) {
        return strcmp(left->text, right->text) == 0 && node_number(left, &a) == node_number(right, &b) &&
               !(a < b || b < a);
    }
    if (left->kind == NODE_BOOL && right->kind == NODE_TEXT) {
        return node_bool(left, &yes) && node_bool(right, &no) && yes == no;
    }
    if (left->kind != right->kind || left->count != right->count) return false;
    // A text must not turn into something that a schema would take for a number or a yes.
    if (left->kind == NODE_TEXT && !left->plain && (node_number(right, &a) || node_bool(right, &no)))
        return false;
    if (left->kind == NODE_TEXT || left->kind == NODE_NUMBER) {
        return left->size == right->size && memcmp(left->text, right->text, left->size) == 0;
    }
    if (left->kind == NODE_BOOL) return strcmp(left->text, right->text) == 0;
    for (size_t i = 0; i < left->count; i++) {
        const struct member *one = &left->members[i], *two = &right->members[i];
        if (left->kind == NODE_MAP && strcmp(one->key, two->key) != 0) return false;
        if (!same_tree(one->value, two->value)) return false;
    }
    return true;
}

static inline const char *random_text(struct arena *arena, struct dice *dice) {
    static const char *const PARTS[] = {"lamp",
                                        "tin",
                                        " ",
                                        "  ",
                                        ": ",
                                        "#",
                                        " #",
                                        "- ",
                                        "'",
                                        "\"",
                                        "\\",
                                        "\n",
                                        "\n\n",
                                        "\t",
                                        "\xC3\xA9",
                                        "e\xCC\x81",
                                        "\xF0\x9F\x99\x82",
                                        "\xE6\xBC\xA2",
                                        "{",
                                        "}",
                                        "[",
                                        "]",
                                        ",",
                                        "true",
                                        "no",
                                        "null",
                                        "~",
                                        "12",
                                        "-0.5",
                                        "1e3",
                                        "%",
                                        "@",
                                        "`",
                                        "&a",
                                        "*a",
                                        "!t",
                                        "|",
                                        ">",
                                        "?",
                                        "---",
                                        "...",
                                        "\r\n",
                                        "=",
                                        "<<",
                                        "0x1F",
                                        "2020-01-01",
                                        "\xC2\xA0",
                                        ":",
                                        "."};
    struct buf out = buf_start(arena);
    for (uint32_t i = dice_roll(dice, 6); i > 0; i--)
        buf_text(&out, PARTS[dice_roll(dice, sizeof PARTS / sizeof *PARTS)]);
    return out.at;
}

static inline struct node *random_tree(struct arena *arena, struct dice *dice, int depth) {
    uint32_t kind = dice_roll(dice, depth > 0 ? 9 : 6);
    if (kind == 0) return node_bool_new(arena, dice_roll(dice, 2));
    if (kind == 1) return node_whole(arena, (long long)dice_roll(dice, 2000) - 1000);
    if (kind == 2) return node_real(arena, (double)dice_roll(dice, 100000) / 7.0 - 5000);
    if (kind < 6) return node_text(arena, random_text(arena, dice));
    struct node *into = kind < 8 ? node_map(arena) : node_list(arena);
    for (uint32_t i = dice_roll(dice, 5); i > 0; i--) {
        struct node *value = random_tree(arena, dice, depth - 1);
        const char *key = random_text(arena, dice);
        if (into->kind == NODE_LIST)
            node_push(arena, into, value);
        else if (*key && !strpbrk(key, "\n\t\r"))
            node_put(arena, into, key, value); // keys are one line
    }
    return into;
}

#endif
