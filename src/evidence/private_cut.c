// SPDX-License-Identifier: MIT
// A text into words, numbers and signs, and the runs of them that several matchers look for.
#include "evidence/private_parts.h"

#include <string.h>

#include "text/utf8.h"

enum { TOKENS_FIRST = 160, WORD_LONGEST = 15, NAME_WORDS = 4, CODE_TOKENS = 24, CODE_GROUPS = 5 };

static const struct {
    const char word[WORD_LONGEST + 1];
    uint32_t classes;
} known[] = {
#define W(word, classes) {word, classes},
#include "evidence/private_words.def"
#undef W
};

// The bytes of a word as two numbers that are in the order of the bytes.
struct letters {
    uint64_t high, low;
};

static uint64_t eight(const char *bytes) {
    uint64_t number;
    memcpy(&number, bytes, sizeof number);
    return __BYTE_ORDER__ == __ORDER_LITTLE_ENDIAN__ ? __builtin_bswap64(number) : number;
}

static struct letters letters_of(const char word[WORD_LONGEST + 1]) {
    return (struct letters){eight(word), eight(word + 8)};
}

uint32_t private_classes(const char *word, size_t size) {
    char small[WORD_LONGEST + 1] = {0};
    if (size > WORD_LONGEST) return 0;
    for (size_t i = 0; i < size; i++)
        small[i] = word[i] >= 'A' && word[i] <= 'Z' ? (char)(word[i] | 0x20) : word[i];
    const struct letters own = letters_of(small);
    size_t low = 0, high = sizeof known / sizeof *known;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        const struct letters other = letters_of(known[middle].word);
        if (own.high == other.high && own.low == other.low) return known[middle].classes;
        if (own.high < other.high || (own.high == other.high && own.low < other.low))
            high = middle;
        else
            low = middle + 1;
    }
    return 0;
}

// U+2019 is written for the apostrophe as often as the ASCII one.
static size_t apostrophe(const char *text) {
    if (*text == '\'') return 1;
    return *text == '\xE2' && !strncmp(text, "\xE2\x80\x99", 3) ? 3 : 0;
}

static bool letter_at(const char *text, size_t size, size_t at, size_t *next, uint32_t *point) {
    if (at >= size) return false;
    *next = at;
    *point = utf8_next(text, size, next);
    return utf8_is_letter(*point);
}

static void cut_word(const char *text, size_t size, struct token *token) {
    size_t at = token->from, next = at;
    uint32_t point = 0;
    token->kind = TOKEN_WORD;
    token->capital = true;
    for (bool first = true;; first = false) {
        char c = text[at];
        if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) { // most letters, without their tables
            bool small = c >= 'a';
            if (first) token->upper = !small;
            token->capital = token->capital && !small;
            token->letters++;
            at++;
            continue;
        }
        if (!letter_at(text, size, at, &next, &point)) {
            size_t mark = apostrophe(text + at);
            if (!mark || !letter_at(text, size, at + mark, &next, &point)) break;
        }
        bool upper = utf8_lower(point) != point;
        if (first) token->upper = upper;
        token->capital = token->capital && (upper || utf8_upper(point) == point);
        token->letters++;
        at = next;
    }
    token->to = at;
}

static struct token cut_token(const char *text, size_t size, size_t from) {
    struct token token = {.from = from, .to = from};
    size_t next = from;
    uint32_t point = utf8_next(text, size, &next);
    if (utf8_is_letter(point))
        cut_word(text, size, &token);
    else if (point >= '0' && point <= '9') {
        token.kind = TOKEN_NUMBER;
        for (next = from; next < size && text[next] >= '0' && text[next] <= '9';) next++;
        token.to = next;
    } else {
        token.kind = TOKEN_SIGN;
        token.to = next;
    }
    if (token.kind != TOKEN_WORD) return token;
    char small[WORD_LONGEST + 1];
    size_t n = 0;
    for (size_t i = token.from; i < token.to && n < WORD_LONGEST;) {
        size_t mark = apostrophe(text + i);
        small[n++] = mark ? '\'' : text[i];
        i += mark ? mark : 1;
        if (n == WORD_LONGEST && i < token.to) return token;
    }
    token.classes = private_classes(small, n);
    return token;
}

void private_cut(struct private_text *t) {
    size_t size = strlen(t->text), room = size < TOKENS_FIRST ? size + 1 : TOKENS_FIRST;
    bool spaced = true;
    t->tokens = arena_room(t->arena, room * sizeof *t->tokens);
    for (size_t at = 0; at < size;) {
        size_t next = at;
        if (utf8_is_space(utf8_next(t->text, size, &next))) {
            spaced = true;
            at = next;
            continue;
        }
        if (t->count == room) t->tokens = arena_grow(t->arena, t->tokens, t->count, &room, sizeof *t->tokens);
        struct token *token = &t->tokens[t->count++];
        *token = cut_token(t->text, size, at);
        token->spaced = spaced;
        char c = t->text[at];
        token->first = c >= 'A' && c <= 'Z' ? (char)(c | 0x20) : c;
        spaced = false;
        at = token->to;
    }
    t->tokens = arena_grow(t->arena, t->tokens, t->count, &room, sizeof *t->tokens);
    t->tokens[t->count] = (struct token){.kind = TOKEN_END, .spaced = true, .from = size, .to = size};
}

bool piece_matches(const struct private_text *t, const struct token *token, const char *word) {
    size_t size = strlen(word);
    if (token->to - token->from != size) return false;
    for (size_t k = 0; k < size; k++) {
        char c = t->text[token->from + k];
        if ((c >= 'A' && c <= 'Z' ? (char)(c | 0x20) : c) != word[k]) return false;
    }
    return true;
}

int token_whole(const struct private_text *t, size_t i) {
    size_t digits = token_digits(t, i);
    if (!digits || digits > 6) return -1;
    int value = 0;
    for (size_t k = token_at(t, i)->from; k < token_at(t, i)->to; k++)
        value = 10 * value + (t->text[k] - '0');
    return value;
}

void private_add(struct private_text *t, enum private_kind kind, size_t from, size_t to) {
    if (to <= from) return;
    t->found.items =
        arena_grow(t->arena, t->found.items, t->found.count, &t->found.room, sizeof *t->found.items);
    t->found.items[t->found.count++] =
        (struct private_span){kind, token_at(t, from)->from, token_at(t, to - 1)->to};
}

bool token_is_possessive(const struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    size_t size = token->to - token->from;
    const char *end = t->text + token->to;
    return token->kind == TOKEN_WORD && size > 3 && end[-1] == 's' &&
           (end[-2] == '\'' || (unsigned char)end[-2] == 0x99);
}

// One word of a name: "Edna", "E.", "Quillow-Tarn". The token behind it, or `i`.
static size_t name_word_end(const struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    if (token->kind != TOKEN_WORD || !token->upper) return i;
    if (token->letters > 1 && token_has(t, i, WORD_PLAIN | WORD_BODY)) return i;
    size_t end = i + 1;
    if (token_joined(t, end) && token_at(t, end)->kind == TOKEN_NUMBER) return i; // "CB12"
    bool titled = token_has(t, i, WORD_TITLE | WORD_LONG_TITLE);
    if ((token->letters == 1 || titled) && piece_is(t, end, ".") && token_joined(t, end)) end++;
    while (piece_is(t, end, "-") && token_joined(t, end) && token_joined(t, end + 1) &&
           token_is_word(t, end + 1))
        end += 2;
    return end;
}

// "& Sons", "Mill", "Ltd": what was read as a person's name is that of a body.
static bool is_body(const struct private_text *t, size_t end) {
    bool joint = piece_is(t, end, "&") || piece_is(t, end, "and") || piece_is(t, end, ",") ||
                 piece_is(t, end, "'") || piece_is(t, end, "+");
    return token_has(t, end, WORD_BODY) || (joint && token_has(t, end + 1, WORD_BODY));
}

size_t name_end(const struct private_text *t, size_t i, size_t *words, size_t *plain) {
    *words = *plain = 0;
    size_t end = i;
    for (size_t n = 0; n < NAME_WORDS + 1 && *words < NAME_WORDS; n++) {
        size_t next = name_word_end(t, end);
        if (next == end && *words && token_has(t, end, WORD_PARTICLE)) {
            size_t after = end + 1;
            if (token_has(t, after, WORD_PARTICLE)) after++;
            next = name_word_end(t, after);
            if (next == after) break;
        }
        if (next == end) break;
        bool title = token_has(t, end, WORD_TITLE | WORD_LONG_TITLE) && !*words;
        *words += !title;
        *plain += !title && token_at(t, end)->letters > 1;
        end = next;
        if (token_is_possessive(t, end - 1)) break;
    }
    bool person = token_has(t, i, WORD_TITLE) && token_is_possessive(t, end - 1);
    if (!*words || (is_body(t, end) && !person)) return i;
    return end;
}

static bool is_year(const struct private_text *t, size_t i) {
    int value = token_whole(t, i);
    if (token_digits(t, i) != 4 || value < 1600 || value > 2099) return false;
    if (!token_joined(t, i + 1)) return true;
    // "1911-12A", "1911/3" and "1911.5" are no years.
    return token_at(t, i + 1)->kind == TOKEN_SIGN &&
           !(token_joined(t, i + 2) && token_at(t, i + 2)->kind != TOKEN_SIGN);
}

static size_t figures_end(const struct private_text *t, size_t i) {
    if (!token_digits(t, i) || !token_digits(t, i + 2) || !token_digits(t, i + 4)) return i;
    static const char *const signs[] = {".", "/", "-"};
    for (size_t k = 0; k < 3; k++) {
        if (!piece_is(t, i + 1, signs[k]) || !piece_is(t, i + 3, signs[k])) continue;
        bool small = token_digits(t, i) <= 2 && token_digits(t, i + 2) <= 2;
        bool year = token_digits(t, i + 4) == 2 || token_digits(t, i + 4) == 4;
        bool turned = token_digits(t, i) == 4 && token_digits(t, i + 2) <= 2 && token_digits(t, i + 4) <= 2;
        if ((small && year) || turned) return i + 5;
    }
    return i;
}

size_t date_end(const struct private_text *t, size_t i, bool *full) {
    *full = true;
    size_t end = figures_end(t, i), at = i;
    if (end != i) return end;
    if (token_digits(t, at) == 1 || token_digits(t, at) == 2) {
        at++;
        if (token_joined(t, at) && token_is_word(t, at) && token_at(t, at)->letters == 2) at++; // 12th
    }
    if (token_has(t, at, WORD_MONTH)) {
        at++;
        if (piece_is(t, at, ".")) at++;
        if (token_digits(t, at) && token_digits(t, at) <= 2) at++; // June 12, 1932
        if (piece_is(t, at, ",")) at++;
        if (is_year(t, at)) return at + 1;
    }
    *full = false;
    if (is_year(t, i)) return i + 1;
    bool mark = piece_is(t, i, "'") || piece_is(t, i, "\xE2\x80\x99");
    return mark && token_joined(t, i + 1) && token_digits(t, i + 1) == 2 ? i + 2 : i;
}

size_t code_end(const struct private_text *t, size_t i, size_t *digits) {
    *digits = 0;
    if (token_at(t, i)->kind != TOKEN_WORD && token_at(t, i)->kind != TOKEN_NUMBER) return i;
    size_t end = i;
    for (size_t groups = 0; end < i + CODE_TOKENS; groups++) {
        do {
            *digits += token_digits(t, end);
            end++;
            bool sign = piece_is(t, end, "-") || piece_is(t, end, "/") || piece_is(t, end, ".") ||
                        piece_is(t, end, "_");
            if (sign && token_joined(t, end) && token_joined(t, end + 1) &&
                token_at(t, end + 1)->kind != TOKEN_SIGN)
                end++;
        } while (token_joined(t, end) && token_at(t, end)->kind != TOKEN_SIGN && end < i + CODE_TOKENS);
        // Groups behind a space belong to it while they are digits and no measure or year follows.
        bool more = groups < CODE_GROUPS && token_digits(t, end) >= 2 && !is_year(t, end) &&
                    !token_has(t, end + 1, WORD_UNIT);
        bool letters = groups == 0 && token_at(t, end)->kind == TOKEN_WORD && token_at(t, end)->capital &&
                       token_at(t, end)->letters <= 3 && token_joined(t, end + 1) && token_digits(t, end + 1);
        bool prefix = groups == 0 && !*digits && token_at(t, end)->spaced && token_digits(t, end) >= 3;
        if (!more && !letters && !prefix) break;
    }
    return end;
}

size_t skip_lead(const struct private_text *t, size_t i, bool *told) {
    *told = false;
    for (size_t n = 0; n < 6; n++, i++) {
        bool sign = piece_is(t, i, "#") || piece_is(t, i, ":") || piece_is(t, i, "=");
        bool filler = token_has(t, i, WORD_NUMBER | WORD_FILLER);
        bool dot = piece_is(t, i, ".") || piece_is(t, i, "-") || piece_is(t, i, "/") ||
                   piece_is(t, i, "\"") || piece_is(t, i, "'");
        if (!sign && !filler && !dot) break;
        *told = *told || sign || token_has(t, i, WORD_NUMBER);
    }
    return i;
}
