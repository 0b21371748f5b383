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

static inline struct phrase_word word_of(uint64_t hash, size_t from, size_t to, bool starts, bool ends) {
    return (struct phrase_word){hash | 1, (uint32_t)from, (unsigned)to & 0x3FFFFFFF, starts, ends};
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
    room += PHRASE_WORDS_BEFORE + PHRASE_WORDS_BEHIND;
    struct phrase_word *all = arena_array(arena, room, sizeof *all);
    struct phrase_words words = {all + PHRASE_WORDS_BEFORE, 0};
    for (size_t i = 0; i < tokens->count; i++) {
        const struct token *token = &tokens->at[i];
        const char *fold = token->fold;
        struct phrase_word word = word_of(token->hash, token->from, token->to, true, true);
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

enum { WINDOW = 64 }; // bytes, a bit each

struct bytes {
    const char *text;
    size_t size, at;
    struct phrase_word *next; // where the next word goes
    // The bytes of which `others` tells: a bit for each that is no letter.
    const char *window;
    size_t from; // in the text
    uint64_t others;
    char last[WINDOW + HASH_BYTES]; // the window at the end
};

static void push(struct bytes *b, uint64_t hash, size_t from, size_t to, bool starts, bool ends) {
    *b->next++ = word_of(hash, from, to, starts, ends);
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

// A word byte by byte.
struct word {
    uint64_t hash, last;
    unsigned bits; // of `last`
};

static void word_add(struct word *word, unsigned char c) {
    word->last |= (uint64_t)c << word->bits;
    word->bits += 8;
    if (word->bits < 8 * HASH_BYTES) return;
    word->hash = hash_on(word->hash, word->last);
    word->last = word->bits = 0;
}

static uint64_t word_end(const struct word *word) {
    return hash_on(word->hash, word->last);
}

// --- eight bytes in one number, the first lowest ---

static const uint64_t ONES = 0x0101010101010101u;

static uint64_t small_letters(uint64_t eight) {
    return eight | 0x20 * ONES;
}

// A bit for each of eight bytes that is a letter, the lowest for the first.
static inline uint64_t letter_bits(uint64_t eight) {
    uint64_t capital = eight & 0x5F * ONES, from_a = capital + (0x80 - 'A') * ONES,
             over_z = capital + (0x80 - 'Z' - 1) * ONES;
    // No two of the products of this number's bits and one of each byte fall on one place.
    return ((from_a ^ over_z) & ~eight & 0x80 * ONES) * 0x0002040810204081u >> 56;
}

static uint64_t letters_of_window(const char *text) {
    uint64_t letters = 0;
    for (unsigned i = 0; i < WINDOW; i += HASH_BYTES) letters |= letter_bits(hash_eight(text + i)) << i;
    return letters;
}

// The first bytes of eight, as many as the place in the list.
static const uint64_t first_bytes[HASH_BYTES] = {0,          0xFF,         0xFFFF,         0xFFFFFF,
                                                 0xFFFFFFFF, 0xFFFFFFFFFF, 0xFFFFFFFFFFFF, 0xFFFFFFFFFFFFFF};

// As token_hash of small letters; seven bytes behind them can be read.
SELDOM static uint64_t hash_of_many(const char *text, unsigned size) {
    uint64_t hash = HASH_START;
    for (; size >= HASH_BYTES; size -= HASH_BYTES, text += HASH_BYTES)
        hash = hash_on(hash, small_letters(hash_eight(text)));
    return hash_on(hash, small_letters(hash_eight(text)) & first_bytes[size]);
}

// Most words are short.
static inline uint64_t hash_of_letters(const char *text, unsigned size) {
    if (size >= HASH_BYTES) return hash_of_many(text, size);
    return hash_on(HASH_START, small_letters(hash_eight(text)) & first_bytes[size]);
}

// A window from here on; behind the end of the text are zeros.
static void look_on(struct bytes *b) {
    b->from = b->at;
    b->window = b->text + b->at;
    if (b->size - b->at < sizeof b->last) {
        memset(b->last, 0, sizeof b->last);
        memcpy(b->last, b->window, b->size - b->at);
        b->window = b->last;
    }
    b->others = ~letters_of_window(b->window);
}

// Words of letters alone, and the spaces, commas and full stops between them: nearly all there are. Up to
// what is none of these, and to a word that no window holds.
static void take_plain_words(struct bytes *b) {
    struct phrase_word *next = b->next;
    for (size_t looked = b->size; b->at != looked;) { // no window has begun here yet
        if (b->at - b->from >= WINDOW || !(b->others >> (b->at - b->from))) {
            looked = b->at;
            look_on(b);
        }
        const char *word = b->window + (b->at - b->from);
        size_t from = b->at;
        bool stop = false;
        for (uint64_t ends = b->others >> (from - b->from); ends;) {
            unsigned size = (unsigned)__builtin_ctzll(ends);
            unsigned char c = (unsigned char)word[size];
            if (c != ' ') {
                stop = (c != ',' && c != '.') || word[size + 1] != ' ';
                if (stop) break;
                if (size) *next++ = word_of(hash_of_letters(word, size), from, from + size, true, true);
                *next++ = word_of(hash_on(HASH_START, c), from + size, from + size + 1, true, true);
                size++; // of both
            } else if (size)
                *next++ = word_of(hash_of_letters(word, size), from, from + size, true, true);
            word += size + 1;
            from += size + 1;
            ends = ends >> size >> 1;
        }
        b->at = from;
        if (stop) break;
    }
    b->next = next;
}

// From a letter on: inner apostrophes and hyphens belong to it. False where a full stop, an odd byte or too
// many letters make it another thing.
static bool take_word(struct bytes *b) {
    size_t from = b->at, at = from;
    bool starts = true;
    struct word word = {.hash = HASH_START};
    if (wordy[byte_at(b, at)] == 'x' && is_digit(byte_at(b, at + 1))) return false;
    for (;;) {
        unsigned char c;
        while (at < b->size && (c = wordy[(unsigned char)b->text[at]]) != 0) {
            word_add(&word, c);
            at++;
        }
        c = byte_at(b, at);
        if (at - from > PART_ROOM) return false;
        if (c == '\'' && is_letter(byte_at(b, at + 1))) {
            at++;
            continue;
        }
        bool hyphen = c == '-' && wordy[byte_at(b, at + 1)];
        push(b, word_end(&word), from, at, starts, !hyphen);
        if (!hyphen) break;
        word = (struct word){.hash = HASH_START};
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
    struct word word = {.hash = HASH_START};
    bool letters = false;
    for (unsigned char c; (c = wordy[byte_at(b, at)]) != 0; at++) {
        if (c == 'x' || (letters && is_digit(c))) return false;
        letters |= is_letter(c);
        word_add(&word, c);
    }
    unsigned char c = byte_at(b, at), next = byte_at(b, at + 1);
    if (class_of(c) == ODD || at - from > PART_ROOM) return false;
    bool goes_on = c == '.' || c == ',' || c == '\'' || c == '-' || c == ')';
    if (goes_on && (wordy[next] || (c == '.' && class_of(next) == MARK))) return false;
    // "3." and "3)" at the start of a line count its entries.
    if (c == '.' || c == ')') {
        size_t before = from;
        while (before && b->text[before - 1] == ' ') before--;
        if (!before || b->text[before - 1] == '\n') return false;
    }
    push(b, word_end(&word), from, at, true, true);
    b->at = at;
    return true;
}

static bool take_mark(struct bytes *b) {
    size_t at = b->at++;
    unsigned char c = byte_at(b, at), next = byte_at(b, at + 1);
    bool joined = at && b->text[at - 1] != ' ';
    if (c == '.' && (is_digit(next) || next == '.')) return false;
    if (c == '-' && joined) return true;
    uint64_t hash = hash_on(HASH_START, c == '\'' ? 0 : c);
    push(b, hash, at, at + 1, true, true);
    return true;
}

struct phrase_words phrase_words_of_text(struct arena *arena, const char *text, size_t size) {
    // Each has a byte of its own.
    size_t room = PHRASE_WORDS_BEFORE + size + 1 + PHRASE_WORDS_BEHIND;
    struct phrase_word *all = arena_room(arena, room * sizeof *all), *words = all + PHRASE_WORDS_BEFORE;
    struct bytes b; // of which `last` is filled only at the end
    b.text = text;
    b.size = size;
    b.at = b.from = 0;
    b.others = 0;
    b.next = words;
    while (b.at < size) {
        take_plain_words(&b);
        if (b.at == size) break;
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
    memset(all, 0, PHRASE_WORDS_BEFORE * sizeof *all);
    memset(b.next, 0, PHRASE_WORDS_BEHIND * sizeof *words);
    return (struct phrase_words){words, (size_t)(b.next - words)};
}
