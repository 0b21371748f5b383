// SPDX-License-Identifier: MIT
// A list is one of things only when each of its entries begins with a thing's name and nothing else: people
// list facts of one thing in the same form ("- lid dented").
#include "notes/split.h"

#include <string.h>

#include "notes/any.h"

enum { NAME_WORDS_MOST = 6, CUE_WORDS_MOST = 4 };

// More than this is looked over a part at a time: cut as a whole, its words would take many times its size.
static const size_t PART_BYTES = (size_t)64 << 10;

struct cut {
    struct arena *arena;
    const struct ruleset *rules;
    struct tokens tokens;
    const char *text;
    size_t size;
    struct note_piece *pieces; // NULL: they are only counted
    size_t count, room, from;  // `from`: where the piece that is open began
};

// "next one", "okay next", "now the next": how many tokens speak of going on.
static size_t next_cue(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {
        "okay next one",   "ok next one", "alright next one", "and the next one", "now the next one",
        "the next one is", "next one is", "next one",         "okay next up",     "ok next up",
        "next up",         "okay next",   "ok next",          "next item is",     "next item",
        "next thing is",   "next thing",  "moving on to the", "moving on",        "on to the next one",
        "new item",        "another item"};
    for (size_t k = 0; k < sizeof cues / sizeof *cues; k++) {
        size_t taken = token_phrase(tokens, i, cues[k]);
        if (taken) return taken;
    }
    return 0;
}

static bool may_begin(const struct tokens *tokens, size_t i) {
    const struct token *token = &tokens->at[i];
    if (token->starts || (i && tokens->at[i - 1].stop >= STOP_COMMA)) return true;
    // A dictated run-on has no stops: "… okay next one um a clock".
    return ANY(tokens, i, "okay", "ok", "alright");
}

static void add(struct cut *c, size_t from, size_t to) {
    while (from < to && (c->text[from] == ' ' || c->text[from] == '\n')) from++;
    while (to > from && (c->text[to - 1] == ' ' || c->text[to - 1] == '\n')) to--;
    if (from == to) return;
    if (c->count < c->room) c->pieces[c->count] = (struct note_piece){from, to};
    c->count++;
}

// The tokens are those of the text from `base` on.
static void split_spoken(struct cut *c, size_t base) {
    for (size_t i = base ? 0 : 1; i < c->tokens.count; i++) {
        size_t cue = may_begin(&c->tokens, i) ? next_cue(&c->tokens, i) : 0;
        // "the next one over is chipped": nothing new begins there.
        if (!cue || i + cue >= c->tokens.count ||
            ANY(&c->tokens, i + cue, "over", "to", "down", "along", "has", "had", "was"))
            continue;
        size_t at = i + cue;
        while (ANY(&c->tokens, at, ",", ":", "-", "um", "uh", ".", "is")) at++;
        if (at >= c->tokens.count) break;
        add(c, c->from, base + c->tokens.at[i].from);
        c->from = base + c->tokens.at[at].from;
        i = at;
    }
}

// Up to a line end or a sentence's, so that no cue is cut in two.
static size_t part_end(const char *text, size_t from, size_t size) {
    if (size - from <= PART_BYTES) return size;
    size_t end = from + PART_BYTES, least = from + PART_BYTES / 2;
    for (size_t at = end; at > least; at--)
        if (text[at - 1] == '\n' || (text[at - 1] == ' ' && text[at - 2] == '.')) return at;
    while (((unsigned char)text[end] & 0xC0) == 0x80) end--;
    return end;
}

// What is cut for one part is given back before the next.
static void split_in_parts(struct cut *c) {
    c->count = c->from = 0;
    for (size_t from = 0, to; from < c->size; from = to) {
        struct arena_mark before = arena_mark(c->arena);
        to = part_end(c->text, from, c->size);
        c->tokens = tokens_cut(c->arena, c->text + from, to - from);
        split_spoken(c, from);
        arena_release(c->arena, &before);
    }
    add(c, c->from, c->size);
}

// --- lists ---

static bool is_bullet(const struct tokens *tokens, size_t i) {
    return i < tokens->count && tokens->at[i].stop == STOP_LINE && tokens->at[i].fold[0] != '\n' &&
           (!i || tokens->at[i - 1].fold[0] == '\n');
}

static bool is_thing(const struct ruleset *rules, const char *name) {
    size_t count;
    return ruleset_things(rules, name, &count) != NULL && count > 0;
}

// Does the entry that begins at `i` open with a thing's name, and a stop or "with" behind it? Its last word
// is looked up alone and with the word before it.
static const char *entry_name(const struct cut *c, size_t i) {
    const struct tokens *tokens = &c->tokens;
    size_t at = i;
    while (
        at < tokens->count && at - i < NAME_WORDS_MOST && tokens->at[at].stop == STOP_NONE &&
        tokens->at[at].kind != TOKEN_SIGN &&
        !ANY(tokens, at, "with", "w/", "without", "no", "is", "has", "in", "for", "from", "and", "missing"))
        at++;
    bool ends = at >= tokens->count || tokens->at[at].stop != STOP_NONE ||
                ANY(tokens, at, "with", "w/", "without", "no", "missing");
    if (!ends || at == i || at - i >= NAME_WORDS_MOST) return NULL;
    const char *last = tokens->at[at - 1].one;
    if (is_thing(c->rules, last)) return last;
    if (at - i < 2) return NULL;
    const char *two = arena_format(c->arena, "%s %s", tokens->at[at - 2].fold, last);
    return is_thing(c->rules, two) ? two : NULL;
}

static size_t list_entries(const struct cut *c) {
    size_t entries = 0;
    for (size_t i = 0; i < c->tokens.count; i++) {
        if (!is_bullet(&c->tokens, i)) {
            // Text before the first bullet is a heading; a line without one among them is no list.
            bool line = i && c->tokens.at[i - 1].fold[0] == '\n';
            if (entries && line && c->tokens.at[i].fold[0] != '\n') return 0;
            continue;
        }
        if (!entry_name(c, i + 1)) return 0;
        entries++;
    }
    return entries;
}

static void split_list(struct cut *c) {
    bool open = false;
    c->count = 0;
    for (size_t i = 0; i < c->tokens.count; i++) {
        if (!is_bullet(&c->tokens, i)) continue;
        if (open) add(c, c->from, c->tokens.at[i].from);
        c->from = c->tokens.at[i].to;
        open = true;
    }
    add(c, c->from, c->size);
}

// A text of many parts is no list of things, whatever it is.
static void split(struct cut *c) {
    if (c->size <= PART_BYTES) c->tokens = tokens_cut(c->arena, c->text, c->size);
    if (c->size <= PART_BYTES && list_entries(c) > 1)
        split_list(c);
    else
        split_in_parts(c);
}

// Most notes speak of one thing, on one line, and never say "next": their words need not be cut for that.
static bool may_hold_several(const char *text, size_t size) {
    static const char *const signs[] = {"next", "item", "moving"};
    for (size_t i = 0; i < size; i++) {
        if (text[i] == '\n' || text[i] == '\r') return true;
        char first = text[i] >= 'A' && text[i] <= 'Z' ? (char)(text[i] | 0x20) : text[i];
        for (size_t k = 0; k < sizeof signs / sizeof *signs; k++) {
            size_t n = 0;
            if (first != signs[k][0]) continue;
            while (signs[k][n] && i + n < size && (text[i + n] | 0x20) == signs[k][n]) n++;
            if (!signs[k][n]) return true;
        }
    }
    return false;
}

// Counted first: what is cut on the way is then given back before there is room for the pieces.
struct note_piece *note_split(struct arena *arena, const struct ruleset *rules, const char *text, size_t size,
                              size_t *count) {
    struct cut c = {.arena = arena, .rules = rules, .text = text, .size = size};
    if (may_hold_several(text, size)) {
        struct arena_mark before = arena_mark(arena);
        split(&c);
        arena_release(arena, &before);
        c.tokens = (struct tokens){0};
    }
    c.room = c.count ? c.count : 1;
    c.pieces = arena_array(arena, c.room, sizeof *c.pieces);
    *count = c.room;
    c.pieces[0] = (struct note_piece){0, size};
    if (c.count > 1) {
        struct arena_mark before = arena_mark(arena);
        split(&c);
        arena_release(arena, &before);
    }
    return c.pieces;
}
