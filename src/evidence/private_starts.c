// SPDX-License-Identifier: MIT
// Which matchers are worth asking at a token: by its kind, its classes and its first letter nearly all words
// fall to none or one of the sixteen. Each set is as wide as what the matcher looks at first, never narrower:
// a word added to a matcher wants its letter here, and tests/evidence/test_private.c asks all matchers at all
// tokens to see that nothing is lost.
#include "evidence/private_parts.h"

#define ONE(matcher) (1u << MATCH_##matcher)

// By words that they begin with.
static unsigned by_letter(char first) {
    switch (first) {
    case 'a': // army, apply, at
        return ONE(ACCOUNT) | ONE(PRESCRIPTION) | ONE(MAIL);
    case 'b': // best
        return ONE(DEDICATION);
    case 'c': // chew, cyl
        return ONE(PRESCRIPTION);
    case 'd': // dear, driver's, dispensed
        return ONE(DEDICATION) | ONE(ACCOUNT) | ONE(PRESCRIPTION);
    case 'e': // engine
        return ONE(SERIAL);
    case 'f': // family, for, frame
        return ONE(OWNER) | ONE(DEDICATION) | ONE(SERIAL);
    case 'h': // her, his
        return ONE(OWNER);
    case 'i': // identity, inhale
        return ONE(ACCOUNT) | ONE(PRESCRIPTION);
    case 'k': // kind
        return ONE(DEDICATION);
    case 'l': // love, license
        return ONE(DEDICATION) | ONE(PLATE);
    case 'n': // name, national, number
        return ONE(OWNER) | ONE(ACCOUNT) | ONE(SERIAL) | ONE(PLATE);
    case 'o': // owner, one
        return ONE(OWNER) | ONE(PRESCRIPTION);
    case 'p': // post, prescription
        return ONE(ADDRESS) | ONE(PRESCRIPTION);
    case 'r': // rural, ration, refill, registration
        return ONE(ADDRESS) | ONE(ACCOUNT) | ONE(PRESCRIPTION) | ONE(PLATE);
    case 's': // star, social, serial, swallow
        return ONE(ADDRESS) | ONE(ACCOUNT) | ONE(SERIAL) | ONE(PRESCRIPTION);
    case 't': // to, tax, take
        return ONE(DEDICATION) | ONE(ACCOUNT) | ONE(PRESCRIPTION);
    case 'w': // with
        return ONE(DEDICATION);
    default:
        return 0;
    }
}

static unsigned by_class(uint32_t classes) {
    unsigned set = 0;
    if (!classes) return 0;
    if (classes & (WORD_OWNING | WORD_KIN)) set |= ONE(OWNER);
    if (classes & (WORD_TITLE | WORD_LONG_TITLE)) set |= ONE(TITLE);
    if (classes & (WORD_CALL | WORD_PHONE)) set |= ONE(TELEPHONE);
    if (classes & (WORD_ACCOUNT | WORD_WEAK_ACCOUNT)) set |= ONE(ACCOUNT);
    if (classes & (WORD_SERIAL | WORD_NUMBER)) set |= ONE(SERIAL);
    return set;
}

static char sign_at(const struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    return token->kind == TOKEN_SIGN ? t->text[token->from] : '\0';
}

// A name of a street in one word: "Tarnstrasse", "Tarngasse", "Tarnstraat", "Tarnstra\303\237e".
static bool may_be_street(const struct private_text *t, const struct token *token) {
    if (token->to - token->from < 6) return false;
    const char *end = t->text + token->to;
    return (end[-1] == 'e' && (end[-2] == 's' || (unsigned char)end[-2] >= 0x80)) ||
           (end[-1] == 't' && end[-2] == 'a');
}

static unsigned of_word(const struct private_text *t, size_t i, const struct token *token) {
    unsigned set = by_letter(token->first) | by_class(token->classes);
    char next = sign_at(t, i + 1);
    if ((unsigned char)token->first >= 0x80) set |= ONE(PRESCRIPTION);
    if (t->place & PRIVATE_OWNERS) set |= ONE(BARE_NAME);
    if (next == ',' || may_be_street(t, token)) set |= ONE(ADDRESS);
    if (next == '.' || next == ':') set |= ONE(WEB);
    if (i && sign_at(t, i - 1) == ',') set |= ONE(POSTAL);
    if (token->upper) set |= ONE(EXCHANGE);
    if (token->upper && token->letters <= 3) set |= ONE(INITIALS);
    if (token->capital && token->letters <= 2) set |= ONE(POSTAL) | ONE(CARD);
    return set;
}

unsigned private_starts(const struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    if (token->kind == TOKEN_WORD) return of_word(t, i, token);
    if (token->kind == TOKEN_NUMBER) return ONE(ADDRESS) | ONE(TELEPHONE) | ONE(CARD) | ONE(PRESCRIPTION);
    char sign = t->text[token->from];
    if (sign == '@') return ONE(MAIL);
    if (sign == '+' || sign == '(') return ONE(TELEPHONE);
    return (unsigned char)sign >= 0x80 ? ONE(PRESCRIPTION) : 0; // the sign of a prescription
}
