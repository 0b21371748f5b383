// SPDX-License-Identifier: MIT
// Telephone numbers: by cue word, by the shape of their groups, by the exchange names of old.
#include "evidence/private_parts.h"

#include <string.h>

enum { GROUPS_MOST = 6, DIGITS_MOST = 15, BACK_MOST = 5 };

struct groups {
    size_t sizes[GROUPS_MOST];
    char signs[GROUPS_MOST]; // before each group; ' ' for a space
    size_t count, total, end;
    bool plus, bracket;
};

static char sign_of(const struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    return token->kind == TOKEN_SIGN && token->to - token->from == 1 ? t->text[token->from] : '\0';
}

static bool is_link(char sign) {
    return sign == '-' || sign == '.' || sign == '/' || sign == ')' || sign == '(';
}

// Digit groups with what stands between them. Two signs may follow each other only as ") ".
static struct groups read_groups(const struct private_text *t, size_t i) {
    struct groups g = {.end = i};
    size_t at = i;
    if (sign_of(t, at) == '+') {
        g.plus = true;
        at++;
    }
    if (sign_of(t, at) == '(') {
        g.bracket = true;
        at++;
    }
    char sign = ' ';
    while (g.count < GROUPS_MOST && token_digits(t, at) && g.total + token_digits(t, at) <= DIGITS_MOST) {
        g.signs[g.count] = sign;
        g.sizes[g.count++] = token_digits(t, at);
        g.total += token_digits(t, at);
        g.end = ++at;
        sign = ' ';
        while (is_link(sign_of(t, at)) && (at == g.end || sign_of(t, at - 1) == ')' || sign_of(t, at) == '('))
            sign = sign_of(t, at++);
    }
    return g;
}

static bool has_shape(const struct groups *g, size_t count, const size_t *sizes) {
    return g->count == count && !memcmp(g->sizes, sizes, count * sizeof *sizes);
}

static bool national(const struct private_text *t, size_t first, const struct groups *g) {
    bool zero = t->text[token_at(t, first)->from] == '0';
    size_t head = g->sizes[0];
    if (!zero) return false;
    if (g->count == 1) return head == 11 && t->text[token_at(t, first)->from + 1] == '7';
    bool few = g->count <= 4 && head >= 3 && head <= 5;
    bool slash = g->count == 2 && g->signs[1] == '/' && g->sizes[1] >= 5;
    if (slash) return g->total >= 8 && g->total <= 12;
    return few && (g->total == 10 || g->total == 11) && g->sizes[g->count - 1] >= 3;
}

static bool is_shape(const struct private_text *t, size_t i, const struct groups *g) {
    static const size_t ten[] = {3, 3, 4}, eleven[] = {1, 3, 3, 4}, seven[] = {3, 4};
    size_t first = i + g->plus + g->bracket;
    if (g->plus) return g->total >= 8 && (g->count > 1 || g->total >= 9);
    if (has_shape(g, 3, ten)) return true;
    if (has_shape(g, 4, eleven) && t->text[token_at(t, first)->from] == '1') return true;
    if (has_shape(g, 2, seven) && (g->signs[1] == '-')) return true;
    return national(t, first, g);
}

// The product's own numbers: "Pat. No.", "part", "#", prices.
static bool is_coded(const struct private_text *t, size_t i) {
    bool number = false;
    for (size_t n = 1; n <= BACK_MOST && n <= i; n++) {
        size_t at = i - n;
        if (token_has(t, at, WORD_CODE | WORD_UNIT)) return true;
        char sign = sign_of(t, at);
        if (sign == '#' || sign == '$' || sign == '=') return true;
        if (token_has(t, at, WORD_PHONE)) return false;
        bool go_on = sign == '.' || sign == ':' || sign == '-' || token_has(t, at, WORD_NUMBER) ||
                     (token_at(t, at)->letters > 0 && token_at(t, at)->letters <= 2);
        if (token_at(t, at)->to - token_at(t, at)->from > 1 && token_at(t, at)->kind == TOKEN_SIGN)
            return true;
        if (!go_on) return number;
        number = number || token_has(t, at, WORD_NUMBER);
    }
    return number;
}

// `linked`: groups that hyphens hold together are no measures.
static bool stands_alone(const struct private_text *t, size_t i, size_t end, bool linked) {
    if (i && token_joined(t, i)) {
        char before = sign_of(t, i - 1);
        if (token_at(t, i - 1)->kind != TOKEN_SIGN || !before || !strchr("(\"':;,[", before)) return false;
        if (before == ',' && token_digits(t, i - 2)) return false;
    }
    if ((token_has(t, end, WORD_UNIT) && !linked) || sign_of(t, end) == '"' || sign_of(t, end) == '%')
        return false;
    if (!token_joined(t, end)) return true;
    if (token_at(t, end)->kind != TOKEN_SIGN) return false;
    return !(token_joined(t, end + 1) && token_at(t, end + 1)->kind == TOKEN_NUMBER) &&
           sign_of(t, end) != 'x';
}

static void match_shape(struct private_text *t, size_t i) {
    bool starts = token_digits(t, i) || sign_of(t, i) == '+' || sign_of(t, i) == '(';
    if (!starts || (t->place & PRIVATE_CODES)) return;
    if (token_digits(t, i) && (sign_of(t, i - 1) == '(' || sign_of(t, i - 1) == '+') && token_joined(t, i))
        return;
    struct groups g = read_groups(t, i);
    // A longer run may hold a number and something behind it.
    while (g.count && !is_shape(t, i, &g)) {
        size_t size = g.sizes[--g.count];
        g.total -= size;
        g.end--;
        while (g.end > i && g.end - 1 > i && token_at(t, g.end - 1)->kind == TOKEN_SIGN) g.end--;
        if (g.signs[g.count] != ' ') return;
    }
    bool linked = g.total >= 10 && (g.signs[g.count ? g.count - 1 : 0] != ' ' || g.bracket || g.plus);
    if (!g.count || !stands_alone(t, i, g.end, linked || piece_is(t, g.end, "in")) || is_coded(t, i)) return;
    if (token_digits(t, i - 1) && token_at(t, i)->spaced && !g.plus && !g.bracket) return;
    private_add(t, PRIVATE_TELEPHONE, i, g.end);
}

// "GLenview 4-1212", "GL 4-1212".
static bool is_exchange(const struct private_text *t, size_t i, bool cued) {
    const struct token *token = token_at(t, i);
    if (token->kind != TOKEN_WORD || token->letters != token->to - token->from || token->letters < 2)
        return false;
    const char *at = t->text + token->from;
    bool two = at[0] >= 'A' && at[0] <= 'Z' && at[1] >= 'A' && at[1] <= 'Z';
    if (token->letters == 2) return two;
    if (cued) return token->upper;
    size_t third = token->letters > 3 && at[2] >= 'A' && at[2] <= 'Z' ? 3 : 2;
    for (size_t k = third; k < token->letters; k++)
        if (at[k] < 'a' || at[k] > 'z') return false;
    return two && token->letters > 3;
}

static size_t exchange_end(const struct private_text *t, size_t i, bool cued) {
    if (!is_exchange(t, i, cued) || !token_at(t, i + 1)->spaced) return i;
    size_t at = i + 1;
    if (token_digits(t, at) == 1 && sign_of(t, at + 1) == '-' && token_digits(t, at + 2) == 4) return at + 3;
    bool old = token_digits(t, at) == 4 || token_digits(t, at) == 5;
    bool named = token_at(t, i)->letters > 2 || cued;
    return old && named ? at + 1 : i;
}

// "Number card still reads Wexcombe 214": an exchange and a short number, where a card or a dial shows it.
static bool is_shown(const struct private_text *t, size_t i) {
    size_t at = i - 1;
    if (!piece_is(t, at, "reads") && !piece_is(t, at, "says") && !piece_is(t, at, "shows") &&
        !piece_is(t, at, "is"))
        return false;
    for (size_t n = 0; n < BACK_MOST && at-- > 0; n++) {
        if (token_at(t, at)->kind == TOKEN_SIGN) return false;
        if (piece_is(t, at, "number") || piece_is(t, at, "exchange"))
            return piece_is(t, at + 1, "card") || piece_is(t, at + 1, "disc") ||
                   piece_is(t, at + 1, "label") || piece_is(t, at + 1, "on");
    }
    return false;
}

static void match_shown(struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    size_t digits = token_digits(t, i + 1);
    bool name = token->kind == TOKEN_WORD && token->upper && token->letters > 2;
    if (i && name && digits >= 2 && digits <= 4 && is_shown(t, i))
        private_add(t, PRIVATE_TELEPHONE, i, i + 2);
}

void match_exchange(struct private_text *t, size_t i) {
    if (!(t->place & PRIVATE_CODES)) match_shown(t, i);
    if ((t->place & PRIVATE_CODES) || token_has(t, i, WORD_CODE | WORD_NUMBER | WORD_UNIT)) return;
    size_t end = exchange_end(t, i, false);
    if (end > i && stands_alone(t, i, end, true) && !is_coded(t, i))
        private_add(t, PRIVATE_TELEPHONE, i, end);
}

// "Tel. 47", "phone: GLenview 4-1212", "call 555-0134".
static void match_cue(struct private_text *t, size_t i) {
    bool strict = token_has(t, i, WORD_CALL);
    if (!strict && !token_has(t, i, WORD_PHONE)) return;
    bool told;
    size_t at = i + 1;
    bool stop = piece_is(t, at, ".");
    while (piece_is(t, at, "me") || piece_is(t, at, "us") || piece_is(t, at, "at") || piece_is(t, at, "&") ||
           token_has(t, at, WORD_PHONE) || piece_is(t, at, "/"))
        at++;
    at = skip_lead(t, at, &told);
    if (piece_is(t, at, "at")) at++;
    size_t end = exchange_end(t, at, true);
    if (end > at) {
        private_add(t, PRIVATE_TELEPHONE, i, end);
        return;
    }
    if (!token_digits(t, at) && sign_of(t, at) != '+' && sign_of(t, at) != '(') return;
    struct groups g = read_groups(t, at);
    if (token_has(t, g.end, WORD_UNIT) || token_joined(t, at)) {
        if (token_has(t, g.end, WORD_UNIT)) return;
        if (token_is_word(t, at - 1)) return;
    }
    bool enough = g.total >= (strict ? 7u : 5u);
    bool short_one =
        !strict && g.total >= 2 && (told || stop || piece_is(t, i, "tel") || piece_is(t, i, "ph"));
    if (enough || short_one) private_add(t, PRIVATE_TELEPHONE, i, g.end);
}

void match_telephone(struct private_text *t, size_t i) {
    match_shape(t, i);
    match_cue(t, i);
}
