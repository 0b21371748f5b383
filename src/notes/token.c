// SPDX-License-Identifier: MIT
// One pass of the cutter into room that is found beforehand, so that no array is moved. What looks ahead
// looks a fixed few bytes ahead.
#include "notes/token.h"

#include <string.h>

#include "notes/cut.h"
#include "notes/speech.h"
#include "say/inflect.h"
#include "say/say.h"
#include "text/order.h"
#include "text/utf8.h"

// Letters that carry marks, by the plain ones that people leave them out for. Pairs of code point and letter.
static char plain_letter(uint32_t point) {
    static const char latin[] = "aaaaaa\0ceeeeiiii\0nooooo\0ouuuuy\0\0aaaaaa\0ceeeeiiii\0nooooo\0ouuuuy\0y";
    if (point >= 0xC0 && point <= 0xFF) return latin[point - 0xC0];
    static const struct {
        uint32_t from, to;
        char letter;
    } further[] = {{0x100, 0x105, 'a'}, {0x106, 0x10D, 'c'}, {0x10E, 0x111, 'd'}, {0x112, 0x11B, 'e'},
                   {0x11C, 0x123, 'g'}, {0x124, 0x127, 'h'}, {0x128, 0x131, 'i'}, {0x139, 0x142, 'l'},
                   {0x143, 0x148, 'n'}, {0x14C, 0x151, 'o'}, {0x154, 0x159, 'r'}, {0x15A, 0x161, 's'},
                   {0x162, 0x167, 't'}, {0x168, 0x173, 'u'}, {0x179, 0x17E, 'z'}};
    for (size_t i = 0; i < sizeof further / sizeof *further; i++)
        if (point >= further[i].from && point <= further[i].to) return further[i].letter;
    return '\0';
}

static char straight(uint32_t point) {
    switch (point) {
    case 0x2018:
    case 0x2019:
    case 0x02BC:
    case 0x2032:
    case 0x00B4:
    case '`':
        return '\'';
    case 0x201C:
    case 0x201D:
    case 0x201E:
    case 0x2033:
    case 0x00AB:
    case 0x00BB:
        return '"';
    case 0x2010:
    case 0x2011:
    case 0x2012:
    case 0x2013:
    case 0x2014:
    case 0x2015:
    case 0x2212:
        return '-';
    case 0x00D7:
        return 'x';
    case 0x2044:
        return '/';
    default:
        return '\0';
    }
}

uint32_t cut_straight(uint32_t point) {
    char plain = straight(point);
    return plain ? (uint32_t)plain : point;
}

static const char *fold_of(struct arena *arena, const char *text, size_t size) {
    char *to = arena_alloc(arena, size * 2 + 2); // a small letter may take a byte more than its capital
    size_t n = 0;
    for (size_t at = 0; at < size;) {
        uint32_t point = cut_straight(utf8_next(text, size, &at));
        if (point >= 0x300 && point <= 0x36F) continue; // a mark set apart from its letter
        char plain = plain_letter(point);
        n += plain ? utf8_put((uint32_t)plain, to + n) : utf8_put(utf8_lower(point), to + n);
    }
    return to;
}

// A sign's text without a copy: nearly all are one ASCII byte.
static const char *sign_fold(struct arena *arena, const char *text, size_t size) {
    static const char *const signs[] = {"!", "\"", "#", "$", "%", "&", "'", "(",
                                        ")", "*",  "+", ",", "-", ".", "/"};
    size_t at = 0;
    uint32_t point = cut_straight(utf8_next(text, size, &at));
    if (at == size && point >= '!' && point <= '/') return signs[point - '!'];
    if (at == size && point == '\n') return "\n";
    return fold_of(arena, text, size);
}

enum { SINGULAR_LONGEST = 40 };

// Only what may be a plural is asked for its singular: most words are none.
static const char *singular_of(struct arena *arena, const struct token *token) {
    static const char *const odd[] = {"feet",  "teeth",    "men",  "women",   "mice",
                                      "geese", "children", "dice", "brethren"};
    size_t size = strlen(token->fold);
    if (token->kind != TOKEN_WORD || size < 3 || size > SINGULAR_LONGEST) return token->fold;
    bool ask = token->fold[size - 1] == 's' && token->fold[size - 2] != 's' && token->fold[size - 2] != '\'';
    for (size_t i = 0; !ask && i < sizeof odd / sizeof *odd; i++) ask = text_same(odd[i], token->fold);
    if (!ask) return token->fold;
    return token->plain ? inflect_singular(arena, token->fold, size) : say_singular(arena, token->fold);
}

static void set_capitals(struct token *token, const char *text) {
    size_t letters = 0, upper = 0;
    for (size_t at = token->from; at < token->to;) {
        bool first = at == token->from;
        uint32_t point = utf8_next(text, token->to, &at);
        if (!utf8_is_letter(point)) continue;
        letters++;
        bool capital = utf8_lower(point) != point;
        upper += capital;
        if (first) token->capital = capital;
    }
    token->capitals = letters > 1 && upper == letters;
}

static void set_case(struct tokens *tokens) {
    size_t letters = 0, upper = 0;
    for (size_t at = 0; at < tokens->size;) {
        uint32_t point = utf8_next(tokens->text, tokens->size, &at);
        if (!utf8_is_letter(point)) continue;
        letters++;
        upper += utf8_lower(point) != point;
    }
    tokens->flat = letters && !upper;
    tokens->shouts = letters >= 12 && upper * 10 >= letters * 8;
}

// Letters and digits of ASCII are folded, hashed and looked over in one pass, into the room that the note's
// own bytes would take. False for all others.
static bool fill_plain(struct token *token, const char *text, char **pool) {
    char *to = *pool;
    size_t upper = 0, letters = 0;
    for (size_t at = token->from; at < token->to; at++) {
        unsigned char c = (unsigned char)text[at], small = c | 0x20;
        if (small >= 'a' && small <= 'z') {
            letters++;
            upper += c < 'a';
            c = small;
        } else if (c < '0' || c > '9')
            return false;
        *to++ = (char)c;
    }
    token->fold = *pool;
    token->hash = token_hash(token->fold, token->to - token->from);
    token->plain = true;
    *to = '\0';
    *pool = to + 1;
    if (token->kind == TOKEN_FIGURE) return true;
    unsigned char first = (unsigned char)text[token->from];
    token->capital = first >= 'A' && first <= 'Z';
    token->capitals = letters > 1 && upper == letters;
    return true;
}

// "Isnt", "hasnt": the apostrophe that people leave out, put back once and for all readers. "Cant" is a hook
// and a slope too, and "wont" a habit, but hardly in notes.
static bool put_apostrophe(struct token *token) {
    static const struct {
        const char *said, *meant;
    } words[] = {
        {"aint", "ain't"},      {"arent", "aren't"},   {"cant", "can't"},     {"couldnt", "couldn't"},
        {"didnt", "didn't"},    {"doesnt", "doesn't"}, {"dont", "don't"},     {"does'nt", "doesn't"},
        {"did'nt", "didn't"},   {"do'nt", "don't"},    {"is'nt", "isn't"},    {"has'nt", "hasn't"},
        {"have'nt", "haven't"}, {"wo'nt", "won't"},    {"was'nt", "wasn't"},  {"ca'nt", "can't"},
        {"hadnt", "hadn't"},    {"hasnt", "hasn't"},   {"havent", "haven't"}, {"isnt", "isn't"},
        {"mustnt", "mustn't"},  {"neednt", "needn't"}, {"shant", "shan't"},   {"shouldnt", "shouldn't"},
        {"wasnt", "wasn't"},    {"werent", "weren't"}, {"wont", "won't"},     {"wouldnt", "wouldn't"},
    };
    size_t size = strlen(token->fold);
    if (size < 4 || token->fold[size - 1] != 't' || !strchr("n'e", token->fold[size - 2])) return false;
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (text_same(token->fold, words[i].said)) {
            token->fold = words[i].meant;
            token->hash = token_hash(token->fold, strlen(token->fold));
            token->plain = false;
            return true;
        }
    return false;
}

// "Bent & loose", but "Tarrow & Sons".
static bool is_and(const struct tokens *tokens, const struct token *token) {
    const char *text = tokens->text;
    size_t next = token->to + 1;
    return token->kind == TOKEN_SIGN && token->to == token->from + 1 && text[token->from] == '&' &&
           token->from > 1 && text[token->from - 1] == ' ' && text[token->from - 2] != 's' &&
           next < tokens->size && text[token->to] == ' ' &&
           ((text[next] >= 'a' && text[next] <= 'z') || (text[next] >= '0' && text[next] <= '9'));
}

static void fill(struct arena *arena, struct tokens *tokens, struct token *token, char **pool) {
    const char *text = tokens->text + token->from;
    size_t size = token->to - token->from;
    if (is_and(tokens, token)) { // a word like any other, and no part of a maker's name
        token->kind = TOKEN_WORD;
        token->fold = token->one = "and";
        token->hash = token_hash(token->fold, 3);
        return;
    }
    bool sign = token->kind == TOKEN_SIGN;
    if (sign || !fill_plain(token, tokens->text, pool)) {
        token->fold = sign ? sign_fold(arena, text, size) : fold_of(arena, text, size);
        token->hash = token_hash(token->fold, strlen(token->fold));
        if (token->kind == TOKEN_WORD || token->kind == TOKEN_CODE) set_capitals(token, tokens->text);
    }
    if (token->kind == TOKEN_WORD && put_apostrophe(token))
        token->one = token->fold;
    else
        token->one = sign ? token->fold : singular_of(arena, token);
}

static void set_starts(struct tokens *tokens) {
    bool fresh = true;
    for (size_t i = 0; i < tokens->count; i++) {
        struct token *token = &tokens->at[i];
        token->starts = fresh && token->stop < STOP_SENTENCE;
        bool quote = token->kind == TOKEN_SIGN && token->stop == STOP_NONE;
        fresh = token->stop >= STOP_SENTENCE || (fresh && quote);
    }
}

// What a byte opens: runs of these are at most one token each, all others are one token each.
static int class_of(unsigned char c) {
    unsigned char small = c | 0x20;
    if (small >= 'a' && small <= 'z') return small == 'x' ? 0 : 1; // "11x7", "10mmx5": an x may stand alone
    if (c >= '0' && c <= '9') return 2;
    return c == ' ' || (c & 0xC0) == 0x80 ? 3 : 0;
}

// No fewer than there are, found without cutting.
static size_t tokens_at_most(const char *text, size_t size) {
    size_t count = 1;
    int before = 3;
    for (size_t i = 0; i < size; i++) {
        int now = class_of((unsigned char)text[i]);
        count += now != 3 && (now != before || !now);
        before = now;
    }
    return count;
}

struct tokens tokens_cut(struct arena *arena, const char *text, size_t size) {
    struct tokens tokens = {.text = text, .size = size};
    set_case(&tokens);
    size_t room = tokens_at_most(text, size);
    tokens.at = arena_array(arena, room + 1, sizeof *tokens.at);
    char *pool = arena_alloc(arena, size + room + 1); // each token's letters and the zero behind them
    struct cutter cutter = {text, size, 0, tokens.flat || tokens.shouts, true, 0, 0};
    struct token token;
    while (cut_next(&cutter, &token)) {
        tokens.at = arena_grow(arena, tokens.at, tokens.count, &room, sizeof *tokens.at);
        tokens.at[tokens.count] = token;
        fill(arena, &tokens, &tokens.at[tokens.count++], &pool);
    }
    speech_stops(&tokens);
    set_starts(&tokens);
    return tokens;
}

// One word of a phrase against what is left of a token: an apostrophe may be missing on either side.
static bool same_word(const char **token, const char **phrase) {
    const char *t = *token, *p = *phrase;
    for (;;) {
        while (*t == '\'') t++;
        while (*p == '\'') p++;
        if (!*p || *p == ' ' || *p == '-' || *p == '|') break;
        if (*t != *p) return false;
        t++, p++;
    }
    if (*t && *t != '-') return false;
    *token = t, *phrase = p;
    return true;
}

uint64_t *token_learn(const struct tokens *tokens, size_t i) {
    struct token *token = &tokens->at[i];
    token->vain = asked_word(tokens->asked, token->hash, token->fold);
    return token->vain;
}

bool token_listed(const struct tokens *tokens, size_t i, const char *const *words, size_t count) {
    for (size_t k = 0; k < count; k++)
        if (token_is(tokens, i, words[k])) return true;
    return false;
}

bool token_any(const struct tokens *tokens, size_t i, const char *const *words) {
    for (; *words; words++)
        if (token_is(tokens, i, *words)) return true;
    return false;
}

void token_tell(const struct tokens *tokens, size_t i, const char *key, bool holds) {
    uint64_t bit, *vain = token_vain(tokens, i, key, 0, TOKEN_AMONG, &bit);
    if (vain) *(holds ? vain + ASKED_CELLS : vain) |= bit;
}

static bool may_open(const char *fold, const char *phrase) {
    return same_word(&fold, &phrase);
}

// "Binding's": the word and a verb in one.
static bool may_own(const char *fold, const char *phrase) {
    size_t size = strlen(fold), word = strcspn(phrase, " -|");
    return size == word + 2 && !memcmp(fold, phrase, word) && text_same(fold + word, "'s");
}

bool token_opens(const struct tokens *tokens, size_t i, const void *list, size_t count, size_t size) {
    const struct token *token = &tokens->at[i];
    for (size_t k = 0; k < count; k++) {
        const char *phrase;
        memcpy(&phrase, (const char *)list + k * size, sizeof phrase);
        if (may_open(token->fold, phrase) || (token->one != token->fold && may_open(token->one, phrase)))
            return true;
    }
    return false;
}

bool token_may_open_one(const struct tokens *tokens, size_t i, const char *barred) {
    if (i >= tokens->count) return false;
    uint64_t bit, *vain = token_vain(tokens, i, barred, 0, TOKEN_OPENS, &bit);
    if (!vain) return true;
    if (*vain & bit) return false;
    uint64_t *found = vain + ASKED_CELLS;
    for (const char *phrase = barred; phrase && !(*found & bit); phrase = strchr(phrase, '|')) {
        phrase += *phrase == '|';
        if (may_open(tokens->at[i].fold, phrase) || may_own(tokens->at[i].fold, phrase)) *found |= bit;
    }
    if (!(*found & bit)) *vain |= bit;
    return *found & bit;
}

size_t token_phrase_words(const struct tokens *tokens, size_t i, const char *phrase) {
    size_t at = i;
    const char *left = at < tokens->count ? tokens->at[at].fold : "";
    while (*left && *left == *phrase) left++, phrase++; // as most of it is
    if (*left != *phrase && *left >= 'a' && *phrase >= 'a') return 0;
    for (;;) {
        if (at >= tokens->count) return 0;
        if (!same_word(&left, &phrase)) return 0;
        if (!*phrase) return *left ? 0 : at + 1 - i;
        phrase++; // the space or hyphen
        if (*left) {
            left++;
            continue;
        }
        at++;
        if (token_is(tokens, at, "-") && tokens->at[at].joined) at++;
        left = at < tokens->count ? tokens->at[at].fold : "";
    }
}
