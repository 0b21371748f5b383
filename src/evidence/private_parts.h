// SPDX-License-Identifier: MIT
// A text as tokens with the classes of their words, and the matchers over them. Room-internal.
#ifndef EVIDENCE_PRIVATE_PARTS_H
#define EVIDENCE_PRIVATE_PARTS_H

#include <stdint.h>

#include "evidence/private.h"

// What a word is to the matchers; a word may be several things ("Dr": a title and a street).
enum private_class {
    WORD_TITLE = 1 << 0,         // Mr, Pvt
    WORD_LONG_TITLE = 1 << 1,    // Captain: wants two words of a name behind it
    WORD_BODY = 1 << 2,          // school, company: makes a name that of no person
    WORD_PLAIN = 1 << 3,         // never part of a name
    WORD_STREET = 1 << 4,        // street, lane
    WORD_WEAK_STREET = 1 << 5,   // place, drive: wants a capital and no measure before it
    WORD_UNIT = 1 << 6,          // inch, volts
    WORD_PHONE = 1 << 7,         // tel, phone
    WORD_CODE = 1 << 8,          // patent, part: the number behind it is the product's
    WORD_NUMBER = 1 << 9,        // no, number
    WORD_ACCOUNT = 1 << 10,      // acct, passport
    WORD_WEAK_ACCOUNT = 1 << 11, // card, policy: wants "no" or six digits
    WORD_SERIAL = 1 << 12,
    WORD_MONTH = 1 << 13,
    WORD_KIN = 1 << 14,
    WORD_FAREWELL = 1 << 15, // love, wishes
    WORD_DOSE = 1 << 16,     // tablet, capsule
    WORD_DOSING = 1 << 17,   // daily, twice
    WORD_CYPHER = 1 << 18,   // initials of a state or a standard, not of a person
    WORD_PARTICLE = 1 << 19, // van, de
    WORD_FILLER = 1 << 20,   // is, reads: between a cue and what it tells
    WORD_MAKER = 1 << 21,    // maker's, brand: the name behind it is no owner's
    WORD_OWNER = 1 << 22,    // owner's, child's
    WORD_CALL = 1 << 23,     // call, text: wants seven digits
    WORD_OWNING = 1 << 24    // begins a pair of words that leads to an owner
};

enum token_kind { TOKEN_WORD, TOKEN_NUMBER, TOKEN_SIGN, TOKEN_END };

struct token {
    enum token_kind kind;
    bool spaced;  // white space before it, or the text begins here
    bool upper;   // begins with a capital
    bool capital; // holds no small letter
    char first;   // its first byte, an ASCII capital as its small letter
    size_t from, to, letters;
    uint32_t classes;
};

struct private_text {
    struct arena *arena;
    const char *text;
    unsigned place;
    struct token *tokens; // the last is TOKEN_END
    size_t count;         // without it
    struct private_spans found;
};

// In the order in which they are asked.
enum private_matcher {
    MATCH_OWNER,
    MATCH_TITLE,
    MATCH_DEDICATION,
    MATCH_BARE_NAME,
    MATCH_INITIALS,
    MATCH_ADDRESS,
    MATCH_POSTAL,
    MATCH_TELEPHONE,
    MATCH_EXCHANGE,
    MATCH_ACCOUNT,
    MATCH_CARD,
    MATCH_SERIAL,
    MATCH_PRESCRIPTION,
    MATCH_MAIL,
    MATCH_WEB,
    MATCH_PLATE,
    PRIVATE_MATCHERS
};

extern void (*const private_matchers[PRIVATE_MATCHERS])(struct private_text *t, size_t i);

// A set of the matchers that could find something at token `i`.
unsigned private_starts(const struct private_text *t, size_t i);

void private_cut(struct private_text *t);
uint32_t private_classes(const char *word, size_t size);

// Token `i`, or the end when there is none: one before the first is far behind the last.
static inline const struct token *token_at(const struct private_text *t, size_t i) {
    return &t->tokens[i < t->count ? i : t->count];
}
bool piece_matches(const struct private_text *t, const struct token *token, const char *word);
// A small-letter word or a sign. Most pieces are another one already by their first byte.
static inline bool piece_is(const struct private_text *t, size_t i, const char *word) {
    const struct token *token = &t->tokens[i < t->count ? i : t->count];
    return token->first == word[0] && piece_matches(t, token, word);
}
static inline bool token_has(const struct private_text *t, size_t i, uint32_t classes) {
    return (token_at(t, i)->classes & classes) != 0;
}
// Digits of a number token, else 0.
static inline size_t token_digits(const struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    return token->kind == TOKEN_NUMBER ? token->to - token->from : 0;
}
int token_whole(const struct private_text *t, size_t i);          // its value up to six digits, else -1
bool token_is_possessive(const struct private_text *t, size_t i); // "Edna's"
static inline bool token_is_word(const struct private_text *t, size_t i) {
    return token_at(t, i)->kind == TOKEN_WORD;
}
// Does the token stand against the one before it, with no space?
static inline bool token_joined(const struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    return token->kind != TOKEN_END && !token->spaced;
}
// Adds the tokens [from, to) as one span.
void private_add(struct private_text *t, enum private_kind kind, size_t from, size_t to);

// A person's name from token `i`: the token behind it, or `i` when there is none. `*words` counts its words,
// `*plain` those that are more than a letter.
size_t name_end(const struct private_text *t, size_t i, size_t *words, size_t *plain);
// "1911", "12.5.1911", "12 May 1911", "'11": the token behind it, or `i`. `*full` when a day or month is
// told.
size_t date_end(const struct private_text *t, size_t i, bool *full);
// "12-34 567", "AB/1234": letters and digits run together, and groups of digits behind them.
size_t code_end(const struct private_text *t, size_t i, size_t *digits);
// Skips "no", "number", "#", ":", "is" …; `*told` when one of them says that a number follows.
size_t skip_lead(const struct private_text *t, size_t i, bool *told);

// Matchers: each looks at what begins at token `i` and adds what it finds. With which tokens it can begin at
// all is told in private_starts.c.
void match_owner(struct private_text *t, size_t i);
void match_title(struct private_text *t, size_t i);
void match_dedication(struct private_text *t, size_t i);
void match_bare_name(struct private_text *t, size_t i);
void match_initials(struct private_text *t, size_t i);
void match_address(struct private_text *t, size_t i);
void match_postal(struct private_text *t, size_t i);
void match_telephone(struct private_text *t, size_t i);
void match_exchange(struct private_text *t, size_t i);
void match_account(struct private_text *t, size_t i);
void match_card(struct private_text *t, size_t i);
void match_serial(struct private_text *t, size_t i);
void match_prescription(struct private_text *t, size_t i);
void match_mail(struct private_text *t, size_t i);
void match_web(struct private_text *t, size_t i);
void match_plate(struct private_text *t, size_t i);

#endif
