// SPDX-License-Identifier: MIT
// Names without a cue of owning: behind a title, in a dedication, alone where an owner wrote; and initials
// with a date.
#include "evidence/private_parts.h"

#include <string.h>

enum { DEDICATION_TOKENS = 12, INITIALS_MOST = 4, LETTERS_MOST = 2 * INITIALS_MOST };

// "Dr" at the end of "14 Tarn Dr" is a street.
static bool ends_street(const struct private_text *t, size_t i) {
    return token_has(t, i, WORD_WEAK_STREET | WORD_STREET) && i >= 2 && token_at(t, i - 1)->upper &&
           (token_digits(t, i - 2) || (i >= 3 && token_digits(t, i - 3)));
}

void match_title(struct private_text *t, size_t i) {
    if (!token_has(t, i, WORD_TITLE | WORD_LONG_TITLE) || !token_at(t, i)->upper) return;
    if ((t->place & PRIVATE_MAKERS) || ends_street(t, i)) return;
    if (token_has(t, i - 1, WORD_TITLE | WORD_LONG_TITLE)) return;
    size_t at = i, words, plain, end;
    if (piece_is(t, i + 1, "&") || piece_is(t, i + 1, "and")) at = i + 2; // Mr & Mrs
    end = name_end(t, at, &words, &plain);
    if (end == at || !plain || !token_has(t, at, WORD_TITLE | WORD_LONG_TITLE)) return;
    bool only_long = !token_has(t, at, WORD_TITLE);
    if (only_long && words < 2) return;
    bool product = token_is_possessive(t, end - 1) && token_is_word(t, end) && !token_has(t, end, WORD_PLAIN);
    if (product && ((t->place & PRIVATE_MARK) || piece_is(t, at, "dr"))) return;
    private_add(t, PRIVATE_NAME, i, end);
}

static bool farewell_end(const struct private_text *t, size_t i, size_t *end) {
    // "with (much|best|kind) love", "love from", "best wishes"
    size_t at = i;
    if (piece_is(t, at, "with") || piece_is(t, at, "all")) at++;
    for (size_t n = 0; n < 3 && !token_has(t, at, WORD_FAREWELL) && token_is_word(t, at); n++) at++;
    if (!token_has(t, at, WORD_FAREWELL) ||
        (at == i && !piece_is(t, at + 1, "from") && !piece_is(t, at + 1, ",")))
        return false;
    *end = at + 1;
    return true;
}

// Behind the farewell or alone: "love from Bert", "with love, Auntie Vi".
static size_t sender_end(const struct private_text *t, size_t i) {
    size_t at = i, words, plain;
    if (piece_is(t, at, ",")) at++;
    if (piece_is(t, at, "from")) at++;
    if (piece_is(t, at, "your")) at++;
    size_t end = name_end(t, at, &words, &plain);
    return plain ? end : i;
}

static void match_farewell(struct private_text *t, size_t i) {
    size_t end;
    bool leads = piece_is(t, i, "with") || piece_is(t, i, "love") || piece_is(t, i, "best") ||
                 piece_is(t, i, "kind") || piece_is(t, i, "warm");
    if (!leads || !farewell_end(t, i, &end)) return;
    size_t sender = sender_end(t, end);
    if (sender > end) private_add(t, PRIVATE_NAME, i, sender);
}

// "To Anna from Bert", "for Edith with love". A route has its "from" first.
void match_dedication(struct private_text *t, size_t i) {
    if (t->place & PRIVATE_MAKERS) return;
    match_farewell(t, i);
    bool to =
        piece_is(t, i, "to") || piece_is(t, i, "for") || piece_is(t, i, "dear") || piece_is(t, i, "darling");
    if (!to) return;
    size_t at = i + 1, words, plain;
    if (piece_is(t, at, "my") || piece_is(t, at, "our") || piece_is(t, at, "dear") ||
        piece_is(t, at, "darling"))
        at++;
    size_t end = name_end(t, at, &words, &plain);
    if (end == at || !plain) return;
    if (piece_is(t, i, "dear") || piece_is(t, i, "darling")) {
        if (token_at(t, i)->upper || !token_is_word(t, end)) private_add(t, PRIVATE_NAME, i, end);
        return;
    }
    size_t day = end + piece_is(t, end, ",");
    if (piece_is(t, day, "christmas") || piece_is(t, day, "xmas") || piece_is(t, day, "birthday")) {
        private_add(t, PRIVATE_NAME, i, end);
        return;
    }
    for (size_t k = end; k < end + DEDICATION_TOKENS && k < t->count; k++) {
        size_t last;
        bool from = piece_is(t, k, "from") || piece_is(t, k, "by");
        if (piece_is(t, k, "with") && farewell_end(t, k, &last)) {
            size_t sender = sender_end(t, last);
            private_add(t, PRIVATE_NAME, i, sender);
            return;
        }
        if (from && (last = sender_end(t, k)) > k) {
            private_add(t, PRIVATE_NAME, i, last);
            return;
        }
    }
}

// Where an owner wrote: two words with capitals, an initial and a word, or one in quotes.
void match_bare_name(struct private_text *t, size_t i) {
    if (!(t->place & PRIVATE_OWNERS) || !token_is_word(t, i)) return;
    if (i && token_at(t, i - 1)->upper && !token_has(t, i - 1, WORD_PLAIN)) return;
    size_t words, plain, end = name_end(t, i, &words, &plain);
    bool quoted = piece_is(t, i - 1, "\"") || piece_is(t, i - 1, "'") || piece_is(t, i - 1, "\xE2\x80\x9C") ||
                  piece_is(t, i - 1, "\xE2\x80\x98") || token_has(t, i - 1, WORD_FILLER) ||
                  piece_is(t, i - 1, ":") || token_is_possessive(t, end - 1);
    if (!plain || (words < 2 && !quoted)) return;
    // "reads Edna Quillow, 1932" goes whole: the year alone would be nothing.
    bool full;
    size_t from = token_has(t, i - 1, WORD_FILLER) ? i - 1 : i;
    size_t date = date_end(t, end + piece_is(t, end, ","), &full);
    private_add(t, PRIVATE_NAME, from, date > end + 1 || token_digits(t, end) ? date : end);
}

struct initials {
    char letters[LETTERS_MOST + 1];
    size_t count, end;
    bool dotted, compact;
};

static bool is_initial(const struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    return token->kind == TOKEN_WORD && token->letters == 1 && token->upper && token->to - token->from == 1;
}

static bool read_initials(const struct private_text *t, size_t i, struct initials *in) {
    *in = (struct initials){.end = i};
    const struct token *first = token_at(t, i);
    in->compact = first->kind == TOKEN_WORD && first->letters >= 2 && first->letters <= 3 && first->capital &&
                  first->upper && first->to - first->from == first->letters;
    if (in->compact) {
        in->count = first->letters;
        memcpy(in->letters, t->text + first->from, in->count);
        in->end = i + 1;
        return !token_joined(t, in->end) || token_at(t, in->end)->kind == TOKEN_SIGN;
    }
    for (size_t at = i; is_initial(t, at) && in->count < LETTERS_MOST;) {
        in->letters[in->count++] = t->text[token_at(t, at)->from];
        at++;
        if (piece_is(t, at, ".")) {
            in->dotted = true;
            at++;
        }
        in->end = at;
        bool joint = piece_is(t, at, "&") || piece_is(t, at, "+") || piece_is(t, at, "and") ||
                     (piece_is(t, at, "-") && token_joined(t, at));
        if (joint && is_initial(t, at + 1)) at++;
    }
    return in->count >= 2;
}

void match_initials(struct private_text *t, size_t i) {
    if (t->place & (PRIVATE_MAKERS | PRIVATE_CODES)) return;
    struct initials in;
    bool full, led = false;
    const struct token *before = token_at(t, i - 1);
    if (i && before->kind == TOKEN_SIGN && !token_at(t, i)->spaced && !strchr("\"'([", t->text[before->from]))
        return;
    if (is_initial(t, i - 1) || (piece_is(t, i - 1, ".") && is_initial(t, i - 2))) return;
    if (!read_initials(t, i, &in)) return;
    if ((private_classes(in.letters, in.count) & WORD_CYPHER) && !(t->place & PRIVATE_OWNERS)) return;
    // Behind a name in capitals they are its legal form; behind "engraved" they are somebody's.
    if (before->upper && before->kind == TOKEN_WORD && !token_has(t, i - 1, WORD_PLAIN | WORD_OWNER)) return;
    size_t at = in.end;
    while (piece_is(t, at, ",") || piece_is(t, at, "-") || piece_is(t, at, "/") || piece_is(t, at, ":") ||
           piece_is(t, at, "(") || piece_is(t, at, "dated") || piece_is(t, at, "and") ||
           piece_is(t, at, "&") || piece_is(t, at, "\xE2\x80\x93"))
        at++;
    size_t end = date_end(t, at, &full);
    bool told = piece_is(t, i - 1, "initials") || piece_is(t, i - 1, "monogram");
    bool loose = !in.compact || told || (t->place & PRIVATE_OWNERS);
    if (end > at && (loose || full)) private_add(t, PRIVATE_INITIALS, i, end);
    if (end > at || !in.dotted) return;
    // "1911 J.B."
    size_t from = i;
    if (piece_is(t, from - 1, ",") || piece_is(t, from - 1, "-")) from--;
    size_t year = from - 1;
    led = token_digits(t, year) == 4 && date_end(t, year, &full) == year + 1;
    if (led && !token_at(t, in.end)->upper) private_add(t, PRIVATE_INITIALS, year, in.end);
}
