// SPDX-License-Identifier: MIT
// One loop over bytes by their class; what would need a second look is left to the tokens.
#include "notes/phrase_words.h"

#include <string.h>

#include "notes/cut.h"

enum { PART_ROOM = 64 };

static bool is_hyphen(const struct token *token) {
    return token->kind == TOKEN_SIGN && token->fold[0] == '-' && !token->fold[1] && token->joined;
}

static uint64_t part_hash(const char *from, size_t size) {
    char plain[PART_ROOM];
    size_t n = 0;
    for (size_t i = 0; i < size && n < PART_ROOM; i++)
        if (from[i] != '\'') plain[n++] = from[i];
    return token_hash(plain, n) | 1;
}

static size_t parts_of(const struct token *token) {
    size_t count = 1;
    for (const char *c = token->fold; *c && token->kind != TOKEN_SIGN; c++)
        count += *c == '-' && c > token->fold;
    return count;
}

struct phrase_words phrase_words_of_tokens(struct arena *arena, const struct tokens *tokens) {
    size_t room = 1;
    for (size_t i = 0; i < tokens->count; i++) room += tokens->at[i].plain ? 1 : parts_of(&tokens->at[i]);
    struct phrase_words words = {arena_array(arena, room, sizeof *words.at), 0};
    for (size_t i = 0; i < tokens->count; i++) {
        const struct token *token = &tokens->at[i];
        const char *fold = token->fold;
        struct phrase_word word = {token->hash | 1, (uint32_t)token->from, (uint32_t)token->to, true, true};
        if (token->plain) {
            words.at[words.count++] = word;
            continue;
        }
        if (is_hyphen(token)) continue;
        for (bool more = true; more; word.starts = false) {
            size_t size = token->kind == TOKEN_SIGN ? strlen(fold) : strcspn(fold + 1, "-") + 1;
            word.hash = part_hash(fold, size);
            more = fold[size] && fold[size + 1];
            word.ends = !more;
            words.at[words.count++] = word;
            if (more) fold += size + 1;
        }
    }
    return words;
}

// --- from bytes ---

// What a byte is in a word: the small letter, the digit, or 0.
static const unsigned char wordy[256] = {
    ['a'] = 'a', ['A'] = 'a', ['b'] = 'b', ['B'] = 'b', ['c'] = 'c', ['C'] = 'c', ['d'] = 'd', ['D'] = 'd',
    ['e'] = 'e', ['E'] = 'e', ['f'] = 'f', ['F'] = 'f', ['g'] = 'g', ['G'] = 'g', ['h'] = 'h', ['H'] = 'h',
    ['i'] = 'i', ['I'] = 'i', ['j'] = 'j', ['J'] = 'j', ['k'] = 'k', ['K'] = 'k', ['l'] = 'l', ['L'] = 'l',
    ['m'] = 'm', ['M'] = 'm', ['n'] = 'n', ['N'] = 'n', ['o'] = 'o', ['O'] = 'o', ['p'] = 'p', ['P'] = 'p',
    ['q'] = 'q', ['Q'] = 'q', ['r'] = 'r', ['R'] = 'r', ['s'] = 's', ['S'] = 's', ['t'] = 't', ['T'] = 't',
    ['u'] = 'u', ['U'] = 'u', ['v'] = 'v', ['V'] = 'v', ['w'] = 'w', ['W'] = 'w', ['x'] = 'x', ['X'] = 'x',
    ['y'] = 'y', ['Y'] = 'y', ['z'] = 'z', ['Z'] = 'z', ['0'] = '0', ['1'] = '1', ['2'] = '2', ['3'] = '3',
    ['4'] = '4', ['5'] = '5', ['6'] = '6', ['7'] = '7', ['8'] = '8', ['9'] = '9',
};

enum byte_class { ODD, WORDY, SPACE, MARK };

static const unsigned char others[128] = {
    [' '] = SPACE, ['\n'] = MARK, ['.'] = MARK, [','] = MARK, [';'] = MARK,  [':'] = MARK, ['!'] = MARK,
    ['?'] = MARK,  ['('] = MARK,  [')'] = MARK, ['"'] = MARK, ['\''] = MARK, ['-'] = MARK};

struct bytes {
    const char *text;
    size_t size, at;
    struct phrase_word *next; // where the next word goes
};

static void push(struct bytes *b, uint64_t hash, size_t from, size_t to, bool starts, bool ends) {
    *b->next++ = (struct phrase_word){hash | 1, (uint32_t)from, (uint32_t)to, starts, ends};
}

static unsigned char byte_at(const struct bytes *b, size_t at) {
    return at < b->size ? (unsigned char)b->text[at] : ' ';
}

static enum byte_class class_of(unsigned char c) {
    if (wordy[c]) return WORDY;
    return c < 128 ? (enum byte_class)others[c] : ODD;
}

static bool is_digit(unsigned char c) {
    return c >= '0' && c <= '9';
}

static bool is_letter(unsigned char c) {
    return wordy[c] >= 'a';
}

static const uint64_t NO_BYTES = 14695981039346656037u; // token_hash("", 0)

static uint64_t step(uint64_t hash, unsigned char c) {
    return (hash ^ c) * 1099511628211u;
}

// From a letter on: inner apostrophes and hyphens belong to it. False where a full stop, an odd byte or too
// many letters make it another thing.
static bool take_word(struct bytes *b) {
    size_t from = b->at, at = from;
    bool starts = true;
    uint64_t hash = NO_BYTES;
    if (wordy[byte_at(b, at)] == 'x' && is_digit(byte_at(b, at + 1))) return false;
    for (;;) {
        unsigned char c;
        while (at < b->size && (c = wordy[(unsigned char)b->text[at]]) != 0) {
            hash = step(hash, c);
            at++;
        }
        c = byte_at(b, at);
        if (at - from > PART_ROOM) return false;
        if (c == '\'' && is_letter(byte_at(b, at + 1))) {
            at++;
            continue;
        }
        bool hyphen = c == '-' && wordy[byte_at(b, at + 1)];
        push(b, hash, from, at, starts, !hyphen);
        if (!hyphen) break;
        hash = NO_BYTES;
        starts = false;
        from = ++at;
    }
    b->at = at;
    unsigned char c = byte_at(b, at);
    return c == ' ' || (class_of(c) != ODD && !(c == '.' && is_letter(byte_at(b, at + 1))));
}

// Digits alone, or with letters behind them: "14", "1920s", "18v".
static bool take_figure(struct bytes *b) {
    size_t from = b->at, at = from;
    uint64_t hash = NO_BYTES;
    bool letters = false;
    for (unsigned char c; (c = wordy[byte_at(b, at)]) != 0; at++) {
        if (c == 'x' || (letters && is_digit(c))) return false;
        letters |= is_letter(c);
        hash = step(hash, c);
    }
    unsigned char c = byte_at(b, at), next = byte_at(b, at + 1);
    if (class_of(c) == ODD || at - from > PART_ROOM) return false;
    bool goes_on = c == '.' || c == ',' || c == '\'' || c == '-' || c == ')';
    if (goes_on && (wordy[next] || (c == '.' && class_of(next) == MARK))) return false;
    // "3." and "3)" at the start of a line count its entries.
    size_t before = from;
    while (before && b->text[before - 1] == ' ') before--;
    if ((c == '.' || c == ')') && (!before || b->text[before - 1] == '\n')) return false;
    push(b, hash, from, at, true, true);
    b->at = at;
    return true;
}

static bool take_mark(struct bytes *b) {
    size_t at = b->at++;
    unsigned char c = byte_at(b, at), next = byte_at(b, at + 1);
    bool joined = at && b->text[at - 1] != ' ';
    if (c == '.' && (is_digit(next) || next == '.')) return false;
    if (c == '-' && joined) return true;
    uint64_t hash = c == '\'' ? NO_BYTES : step(NO_BYTES, c);
    push(b, hash, at, at + 1, true, true);
    return true;
}

struct phrase_words phrase_words_of_text(struct arena *arena, const char *text, size_t size) {
    struct phrase_word *words = arena_room(arena, (size + 1) * sizeof *words); // each has a byte of its own
    struct bytes b = {text, size, 0, words};
    while (b.at < size) {
        unsigned char c = (unsigned char)text[b.at];
        bool fine = true;
        if (is_letter(c))
            fine = take_word(&b);
        else if (c == ' ')
            b.at++;
        else if (is_digit(c))
            fine = take_figure(&b);
        else
            fine = class_of(c) == MARK && take_mark(&b);
        if (!fine) return (struct phrase_words){NULL, 0};
    }
    return (struct phrase_words){words, (size_t)(b.next - words)};
}
