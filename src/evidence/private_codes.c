// SPDX-License-Identifier: MIT
// Numbers that stand for a person or for one single thing: accounts, cards, whole serial numbers, plates; and
// what a chemist wrote on a label; and addresses on the net.
#include "evidence/private_parts.h"

#include <string.h>

enum { CARD_LEAST = 14, CARD_MOST = 19, IBAN_LEAST = 15, IBAN_MOST = 34, RUN_MOST = 40 };

static bool is_sign(const struct private_text *t, size_t i, char sign) {
    const struct token *token = token_at(t, i);
    return token->kind == TOKEN_SIGN && t->text[token->from] == sign;
}

// "policy", "driver's license", "service number", "a/c": what follows must be a number. 0 when it is none.
static size_t account_cue(const struct private_text *t, size_t i, bool *weak) {
    *weak = token_has(t, i, WORD_WEAK_ACCOUNT);
    if (*weak || token_has(t, i, WORD_ACCOUNT)) return i + 1;
    static const char *const pairs[][2] = {{"social", "security"},
                                           {"national", "insurance"},
                                           {"sort", "code"},
                                           {"driver's", "license"},
                                           {"drivers", "license"},
                                           {"driving", "licence"},
                                           {"driver's", "licence"},
                                           {"service", "number"},
                                           {"service", "no"},
                                           {"army", "number"},
                                           {"army", "no"},
                                           {"identity", "card"},
                                           {"tax", "id"},
                                           {"ration", "book"},
                                           {"identity", "no"},
                                           {"id", "number"},
                                           {"id", "no"},
                                           {"ni", "no"}};
    for (size_t k = 0; k < sizeof pairs / sizeof *pairs; k++)
        if (piece_is(t, i, pairs[k][0]) && piece_is(t, i + 1, pairs[k][1])) return i + 2;
    if (piece_is(t, i, "a") && is_sign(t, i + 1, '/') && token_joined(t, i + 1) && piece_is(t, i + 2, "c")) {
        *weak = true;
        return i + 3;
    }
    if (piece_is(t, i, "d") && is_sign(t, i + 1, '.') && piece_is(t, i + 2, "o") && piece_is(t, i + 4, "b"))
        return i + 5;
    return 0;
}

void match_account(struct private_text *t, size_t i) {
    bool weak, told;
    size_t cue = account_cue(t, i, &weak);
    if (!cue || (weak && (t->place & PRIVATE_MAKERS))) return;
    if (token_has(t, cue, WORD_WEAK_ACCOUNT)) cue++; // library card, account card
    size_t at = skip_lead(t, cue, &told), digits, end = code_end(t, at, &digits);
    bool letters = token_is_word(t, at) && token_at(t, at)->letters > 1 && !token_at(t, at)->capital;
    if (end == at || letters || token_has(t, end, WORD_UNIT)) return;
    if (digits >= (weak && !told ? 6u : 3u)) private_add(t, PRIVATE_ACCOUNT, i, end);
}

static bool luhn(const char *digits, size_t count) {
    unsigned sum = 0;
    for (size_t i = 0; i < count; i++) {
        unsigned digit = (unsigned)(digits[count - 1 - i] - '0');
        if (i % 2) digit = digit * 2 > 9 ? digit * 2 - 9 : digit * 2;
        sum += digit;
    }
    return sum % 10 == 0;
}

// Remainder by 97 of the code with its first four characters moved behind, letters as 10 … 35.
static bool iban_holds(const char *code, size_t count) {
    unsigned rest = 0;
    for (size_t i = 0; i < count; i++) {
        char c = code[(i + 4) % count];
        rest =
            c <= '9' ? (rest * 10 + (unsigned)(c - '0')) % 97 : (rest * 100 + (unsigned)(c - 'A') + 10) % 97;
    }
    return rest == 1;
}

static void match_iban(struct private_text *t, size_t i) {
    const struct token *country = token_at(t, i);
    if (country->kind != TOKEN_WORD || country->letters != 2 || !country->capital) return;
    if (!token_joined(t, i + 1) || !token_digits(t, i + 1)) return;
    char code[IBAN_MOST];
    size_t count = 0, end = i;
    for (size_t at = i; at < i + RUN_MOST && at < t->count; at++) {
        const struct token *token = token_at(t, at);
        size_t size = token->to - token->from;
        bool good = token->kind == TOKEN_NUMBER ||
                    (token->kind == TOKEN_WORD && token->capital && size == token->letters);
        if (!good || count + size > IBAN_MOST) break;
        for (size_t k = 0; k < size; k++)
            if ((unsigned char)t->text[token->from + k] >= 0x80) return;
        memcpy(code + count, t->text + token->from, size);
        count += size;
        if (count >= IBAN_LEAST && iban_holds(code, count)) end = at + 1;
    }
    private_add(t, PRIVATE_ACCOUNT, i, end);
}

static void match_digits(struct private_text *t, size_t i) {
    if (!token_digits(t, i) || (i && token_joined(t, i) && token_at(t, i - 1)->kind != TOKEN_SIGN)) return;
    char digits[CARD_MOST + 1];
    size_t count = 0, groups = 0, at = i, first = token_digits(t, i);
    for (;; groups++) {
        size_t size = token_digits(t, at);
        if (!size || count + size > CARD_MOST) break;
        memcpy(digits + count, t->text + token_at(t, at)->from, size);
        count += size;
        at++;
        if (is_sign(t, at, '-') && token_joined(t, at) && token_digits(t, at + 1)) at++;
    }
    bool bare = groups == 1 && (count == 15 || count == 16 || count == 19);
    bool grouped = groups >= 3 && groups <= 5 && first == 4 && count >= CARD_LEAST;
    if ((bare || grouped) && digits[0] >= '2' && digits[0] <= '6' && luhn(digits, count))
        private_add(t, PRIVATE_ACCOUNT, i, at);
    // 123-45-6789
    bool code = token_has(t, i - 1, WORD_CODE | WORD_NUMBER | WORD_SERIAL) || is_sign(t, i - 1, '#') ||
                (is_sign(t, i - 1, '.') && token_has(t, i - 2, WORD_CODE | WORD_NUMBER));
    if (first == 3 && is_sign(t, i + 1, '-') && token_digits(t, i + 2) == 2 && is_sign(t, i + 3, '-') &&
        token_digits(t, i + 4) == 4 && !token_joined(t, i + 5) && !code)
        private_add(t, PRIVATE_ACCOUNT, i, i + 5);
}

void match_card(struct private_text *t, size_t i) {
    if (t->place & PRIVATE_CODES) return;
    match_iban(t, i);
    match_digits(t, i);
}

// "No. 48219 (serial)"
static void match_serial_behind(struct private_text *t, size_t i) {
    size_t at = is_sign(t, i - 1, '(') ? i - 2 : i - 1;
    bool lead = is_sign(t, at - 1, '#') || is_sign(t, at - 1, '.') || token_has(t, at - 1, WORD_NUMBER);
    if (piece_is(t, i, "serial") && token_digits(t, at) >= 4 && lead)
        private_add(t, PRIVATE_SERIAL, at, i + 1);
}

// "Number KTRE 33/2", "no. BWXT 4471": three letters or more and figures are one single thing's, unless the
// word before says that they are a pattern's or a patent's.
static void match_registered(struct private_text *t, size_t i) {
    enum { LETTERS_LEAST = 3, LETTERS_MOST = 5, DIGITS_LEAST = 2 };
    size_t at = i + 1, digits;
    if (i && (token_has(t, i - 1, WORD_CODE | WORD_MAKER) || piece_is(t, i - 1, "style") ||
              (is_sign(t, i - 1, '.') && token_has(t, i - 2, WORD_CODE | WORD_MAKER))))
        return;
    if (is_sign(t, at, '.') || is_sign(t, at, ':')) at++;
    const struct token *letters = token_at(t, at);
    bool all = letters->kind == TOKEN_WORD && letters->capital &&
               letters->letters == letters->to - letters->from && letters->letters >= LETTERS_LEAST &&
               letters->letters <= LETTERS_MOST && !token_has(t, at, WORD_CODE | WORD_CYPHER | WORD_BODY);
    if (!all || !token_digits(t, at + 1)) return;
    size_t end = code_end(t, at + 1, &digits);
    if (end > at + 1 && digits >= DIGITS_LEAST && !token_has(t, end, WORD_UNIT))
        private_add(t, PRIVATE_SERIAL, i, end);
}

// "Serial on the plate is", "serial no. under the base:": to where the number stands.
static size_t skip_place(struct private_text *t, size_t i) {
    enum { WORDS_MOST = 2 };
    size_t at = i + (token_has(t, i, WORD_NUMBER) ? 1 : 0);
    if (is_sign(t, at, '.')) at++;
    bool placed = piece_is(t, at, "on") || piece_is(t, at, "under") || piece_is(t, at, "inside") ||
                  piece_is(t, at, "at") || piece_is(t, at, "below");
    if (!placed) return i;
    at++;
    if (piece_is(t, at, "the") || piece_is(t, at, "its")) at++;
    for (size_t n = 0; n < WORDS_MOST && token_is_word(t, at) && !token_at(t, at)->capital; n++) {
        bool verb = piece_is(t, at, "is") || piece_is(t, at, "reads") || piece_is(t, at, "says");
        if (verb) break;
        at++;
    }
    if (is_sign(t, at, ':') || is_sign(t, at, ',') || piece_is(t, at, "is") || piece_is(t, at, "reads") ||
        piece_is(t, at, "says"))
        at++;
    return at;
}

void match_serial(struct private_text *t, size_t i) {
    if (token_has(t, i, WORD_NUMBER)) match_registered(t, i);
    size_t at = i + 1;
    bool told, cue = token_has(t, i, WORD_SERIAL);
    bool short_cue = piece_is(t, i, "s") && (is_sign(t, i + 1, '/') || is_sign(t, i + 1, '.')) &&
                     token_joined(t, i + 1) && piece_is(t, i + 2, "n");
    bool frame = (piece_is(t, i, "frame") || piece_is(t, i, "engine")) && token_has(t, i + 1, WORD_NUMBER);
    match_serial_behind(t, i);
    if (short_cue) at = i + 3;
    if (!cue && !short_cue && !frame) return;
    at = skip_place(t, at);
    at = skip_lead(t, at, &told);
    size_t digits, end = code_end(t, at, &digits);
    bool word = token_is_word(t, at) && !token_at(t, at)->capital &&
                !(token_joined(t, at + 1) && token_digits(t, at + 1));
    bool part = piece_is(t, end, "of") || token_has(t, end, WORD_UNIT) || piece_is(t, end, "to");
    size_t least = told || short_cue ? 3 : 4;
    if (end > at && !word && !part && digits >= least) private_add(t, PRIVATE_SERIAL, i, end);
}

// "take one tablet twice daily with food", "Rx 48213", "refills: 2", "OD -2.25".
static void match_dose(struct private_text *t, size_t i) {
    bool verb = piece_is(t, i, "take") || piece_is(t, i, "apply") || piece_is(t, i, "inhale") ||
                piece_is(t, i, "instill") || piece_is(t, i, "swallow") || piece_is(t, i, "chew");
    if (!verb && !token_digits(t, i) && !piece_is(t, i, "one") && !piece_is(t, i, "two")) return;
    size_t end = i + 1, doses = 0, times = 0;
    for (size_t n = 0; n < 2 * RUN_MOST; n++, end++) {
        bool vocabulary = token_has(t, end, WORD_DOSE | WORD_DOSING) || token_digits(t, end) ||
                          is_sign(t, end, ',') || is_sign(t, end, '-') || is_sign(t, end, '(') ||
                          is_sign(t, end, ')');
        if (!vocabulary) break;
        doses += token_has(t, end, WORD_DOSE);
        times += piece_is(t, end, "daily") || piece_is(t, end, "twice") || piece_is(t, end, "times") ||
                 piece_is(t, end, "hours") || piece_is(t, end, "bedtime") || piece_is(t, end, "every") ||
                 piece_is(t, end, "meals") || piece_is(t, end, "morning") || piece_is(t, end, "night");
    }
    while (end > i + 1 && token_at(t, end - 1)->kind == TOKEN_SIGN) end--;
    if (verb ? doses || times > 1 : doses && times) private_add(t, PRIVATE_PRESCRIPTION, i, end);
}

static void match_lens(struct private_text *t, size_t i) {
    bool eye = piece_is(t, i, "od") || piece_is(t, i, "os") || piece_is(t, i, "sph") || piece_is(t, i, "cyl");
    size_t at = i + 1;
    if (is_sign(t, at, ':')) at++;
    if (!eye || !(is_sign(t, at, '-') || is_sign(t, at, '+')) || !token_digits(t, at + 1)) return;
    at += 2;
    if (is_sign(t, at, '.') && token_digits(t, at + 1) == 2) private_add(t, PRIVATE_PRESCRIPTION, i, at + 2);
}

void match_prescription(struct private_text *t, size_t i) {
    bool told, rx = piece_is(t, i, "rx") || piece_is(t, i, "\xE2\x84\x9E");
    bool word = piece_is(t, i, "prescription") || piece_is(t, i, "prescribed") || piece_is(t, i, "refills") ||
                piece_is(t, i, "dispensed") || piece_is(t, i, "refill");
    if (rx || word) {
        size_t words, plain, at = i + 1;
        bool to = piece_is(t, at, "to") || piece_is(t, at, "for") || piece_is(t, at, "by");
        if (to) at++;
        at = skip_lead(t, at, &told);
        size_t digits, end = code_end(t, at, &digits), name = to ? name_end(t, at, &words, &plain) : at;
        bool refill = (piece_is(t, i, "refills") || piece_is(t, i, "refill")) && digits && told;
        bool few = rx || told ? digits >= 3 : digits >= 5;
        if (name > at)
            private_add(t, PRIVATE_PRESCRIPTION, i, name);
        else if (end > at && (few || refill) && (!token_is_word(t, at) || token_at(t, at)->capital))
            private_add(t, PRIVATE_PRESCRIPTION, i, end);
    }
    match_dose(t, i);
    match_lens(t, i);
}

static bool in_address(const struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    if (token->kind == TOKEN_END) return false;
    return token->kind != TOKEN_SIGN || strchr("._-+~/?=&%:#@", t->text[token->from]) != NULL;
}

static size_t address_end(const struct private_text *t, size_t i, bool paths) {
    size_t end = i;
    while (end < i + RUN_MOST && in_address(t, end) && (end == i || token_joined(t, end))) {
        if (!paths && token_at(t, end)->kind == TOKEN_SIGN && !is_sign(t, end, '.') && !is_sign(t, end, '-'))
            break;
        end++;
    }
    while (end > i && token_at(t, end - 1)->kind == TOKEN_SIGN && !is_sign(t, end - 1, '/')) end--;
    return end;
}

void match_mail(struct private_text *t, size_t i) {
    size_t from = i, end;
    if (piece_is(t, i, "at") && token_is_word(t, i - 1) && token_is_word(t, i + 1) &&
        piece_is(t, i + 2, "dot")) {
        if (token_is_word(t, i + 3)) private_add(t, PRIVATE_EMAIL, i - 1, i + 4);
        return;
    }
    if (!is_sign(t, i, '@') || !token_joined(t, i + 1)) return;
    while (from > 0 && i - from < RUN_MOST && token_joined(t, from) && in_address(t, from - 1) &&
           !is_sign(t, from - 1, '@') && !is_sign(t, from - 1, '/') && !is_sign(t, from - 1, ':'))
        from--;
    end = address_end(t, i + 1, false);
    bool dot = false;
    for (size_t k = i + 1; k < end; k++) dot = dot || is_sign(t, k, '.');
    if (from < i && dot)
        private_add(t, PRIVATE_EMAIL, from, end);
    else if (from == i && token_at(t, i + 1)->kind == TOKEN_WORD && token_at(t, i + 1)->letters >= 3)
        private_add(t, PRIVATE_WEB, i, i + 2 + (token_joined(t, i + 2) && token_digits(t, i + 2) > 0));
}

// A path that leads to one person: "/~edna", "/user/edna", "/@edna".
void match_web(struct private_text *t, size_t i) {
    bool scheme = (piece_is(t, i, "http") || piece_is(t, i, "https")) && is_sign(t, i + 1, ':');
    bool bare = token_is_word(t, i) && !token_joined(t, i) && is_sign(t, i + 1, '.') &&
                token_joined(t, i + 1) && token_joined(t, i + 2) && token_is_word(t, i + 2);
    if (!scheme && !bare) return;
    size_t end = address_end(t, i, true);
    static const char *const paths[] = {"user",   "users",  "u",       "profile", "profiles",
                                        "people", "member", "members", "seller"};
    for (size_t k = i; k < end; k++) {
        if (!is_sign(t, k, '/')) continue;
        bool person = is_sign(t, k + 1, '~') || is_sign(t, k + 1, '@');
        for (size_t p = 0; p < sizeof paths / sizeof *paths; p++)
            person = person || (piece_is(t, k + 1, paths[p]) && is_sign(t, k + 2, '/'));
        if (person && k + 2 < end) {
            private_add(t, PRIVATE_WEB, i, end);
            return;
        }
    }
}

// "number plate AB12 CDE" of a vehicle, never a year or a size.
void match_plate(struct private_text *t, size_t i) {
    bool cue = (piece_is(t, i, "license") || piece_is(t, i, "licence") || piece_is(t, i, "number") ||
                piece_is(t, i, "registration")) &&
               piece_is(t, i + 1, "plate");
    if (!cue || token_has(t, i - 1, WORD_SERIAL | WORD_MAKER)) return;
    bool told, full;
    size_t at = skip_lead(t, i + 2, &told), digits, end = code_end(t, at, &digits);
    bool mixed = token_is_word(t, at) && token_at(t, at)->capital && token_at(t, at)->letters <= 4;
    if (end > at && date_end(t, at, &full) == at && digits && (mixed || (digits >= 5 && told))) {
        bool tail = token_is_word(t, end) && token_at(t, end)->capital && token_at(t, end)->letters <= 3;
        private_add(t, PRIVATE_PLATE, at, end + tail);
    }
}
