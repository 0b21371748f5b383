// SPDX-License-Identifier: MIT
// Where people live and the numbers that stand for them: streets, postcodes, numbers of papers and accounts.
#include <string.h>

#include "notes/any.h"
#include "notes/persons.h"

static bool is_street(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "street", "st", "road", "rd", "lane", "ln", "avenue", "ave", "drive", "terrace",
               "close", "row", "court", "gardens", "crescent", "square", "way", "boulevard", "mews", "grove",
               "cottages", "cottage", "villas", "villa", "wharf", "walk", "buildings", "parade", "rise",
               "hill", "place", "yard");
}

// "14 Gorse Lane", "Unit 7, Barley Wharf", "on the Holt road", and the town behind a comma.
size_t person_street(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t from = i, at = i;
    if (i >= tokens->count || note->taken[i] != TAKEN_NOT) return 0;
    bool number = tokens->at[i].kind == TOKEN_FIGURE && strlen(tokens->at[i].fold) < 6;
    if (token_is(tokens, i, "unit") && i + 1 < tokens->count && tokens->at[i + 1].kind == TOKEN_FIGURE) {
        number = true;
        at = i + 1;
    }
    if (number) at++;
    if (number && token_is(tokens, at, ",")) at++;
    if (number && token_is(tokens, at, "the")) at++;
    size_t first = at;
    while (at < first + 3 && person_capital(note, at) && !is_street(tokens, at)) at++;
    bool named = at > first;
    if (!is_street(tokens, at) || !(named || (number && person_capital(note, at)))) return 0;
    bool lowered = !tokens->at[at].capital;
    bool led =
        i > 0 && (ANY(tokens, i - 1, "at", "on", "in", "from", "near", "off") ||
                  (token_is(tokens, i - 1, "the") && i > 1 && ANY(tokens, i - 2, "on", "off", "in", "from")));
    led |= i > 1 && token_is(tokens, i - 1, ",") && note->taken[i - 2] == TAKEN_ASIDE;
    if (!number && !led) return 0;
    if (!number && lowered && !ANY(tokens, at, "road", "street", "lane", "avenue")) return 0;
    at++;
    while (token_is(tokens, at, ",") && person_named(note, at + 1)) at = person_name_end(note, at + 1);
    return person_keep_back(note, from, at);
}

static bool is_postcode(const char *text, size_t size) { // "PE99", "W1A"
    size_t letters = 0, i;
    while (letters < size && text[letters] >= 'A' && text[letters] <= 'Z') letters++;
    if (letters < 1 || letters > 2 || size < letters + 1 || size > letters + 2) return false;
    for (i = letters; i < size && text[i] >= '0' && text[i] <= '9'; i++) {
    }
    return i > letters && (i == size || (i + 1 == size && text[i] >= 'A' && text[i] <= 'Z'));
}

// "PE99 9ZZ"; "QQ123456C", "account no 33219", "born 03/04/1951": what papers with it say of a person.
size_t person_number(struct note *note, size_t i) {
    static const char *const leads[] = {"dob",
                                        "date of birth",
                                        "ni number",
                                        "national insurance",
                                        "passport no",
                                        "account no",
                                        "account number",
                                        "sort code",
                                        "service no",
                                        "service number",
                                        "social security",
                                        "ssn",
                                        "passport number",
                                        "nhs number",
                                        "membership no",
                                        "member no",
                                        "ext",
                                        "extension",
                                        "card number",
                                        "licence no",
                                        "license no",
                                        "national insurance number",
                                        "postcode",
                                        "zip code"};
    const struct tokens *tokens = &note->tokens;
    const struct token *t = &tokens->at[i];
    size_t n = token_longest(tokens, i, leads, sizeof leads / sizeof *leads), at = i + n;
    while (n && ANY(tokens, at, ":", "no", ".", "is", "number", "of")) at++;
    if (n && at < tokens->count &&
        (tokens->at[at].kind == TOKEN_FIGURE || tokens->at[at].kind == TOKEN_CODE)) {
        at++;
        while (at < tokens->count &&
               (tokens->at[at].kind == TOKEN_FIGURE || tokens->at[at].kind == TOKEN_CODE ||
                (ANY(tokens, at, "/", "-") && tokens->at[at].joined)))
            at++;
        return person_keep_back(note, i, at);
    }
    if (t->kind != TOKEN_CODE || note->taken[i] != TAKEN_NOT) return 0;
    const char *text = tokens->text + t->from;
    size_t size = t->to - t->from;
    const struct token *next = i + 1 < tokens->count ? &tokens->at[i + 1] : NULL;
    bool inward = next && next->to - next->from == 3 && tokens->text[next->from] >= '0' &&
                  tokens->text[next->from] <= '9' && tokens->text[next->from + 1] >= 'A' &&
                  tokens->text[next->from + 1] <= 'Z' && tokens->text[next->from + 2] >= 'A' &&
                  tokens->text[next->from + 2] <= 'Z';
    return is_postcode(text, size) && inward ? person_keep_back(note, i, i + 2) : 0;
}
