// SPDX-License-Identifier: MIT
// Names of owners, by the words that lead to them: "property of …", "ex libris …", "presented to …", "name:
// …".
#include "evidence/private_parts.h"

enum { LOWER_WORDS = 2 };

// Cues of two words. `strong`: told so plainly that it counts where makers' names stand as well.
static const struct {
    const char *first, *second;
    bool strong, whole; // whole: wants a first name and another, or a title
} pairs[] = {
    {"property", "of", true, false},   {"prop", "of", true, false},       {"belongs", "to", true, false},
    {"belonged", "to", true, false},   {"belonging", "to", true, false},  {"owned", "by", true, false},
    {"libris", NULL, true, false},     {"estate", "of", false, false},    {"bequest", "of", false, false},
    {"library", "of", false, true},    {"collection", "of", false, true}, {"possession", "of", false, true},
    {"gift", "of", false, true},       {"gift", "from", false, false},    {"gift", "to", false, false},
    {"presented", "to", false, false}, {"awarded", "to", false, false},   {"given", "to", false, false},
    {"presented", "by", false, true},  {"given", "by", false, false},     {"donated", "by", false, true},
    {"inscribed", "to", false, false}, {"dedicated", "to", false, true},  {"named", "to", false, false},
    {"engraved", "to", false, false},  {"memory", "of", false, false},    {"signature", "of", false, true},
    {"addressed", "to", false, false}, {"worn", "by", false, true},       {"carried", "by", false, true},
    {"name", "of", false, true},       {"formerly", "of", false, true},   {"sent", "to", false, false},
    {"letter", "to", false, false},    {"letter", "from", false, false},  {"letters", "from", false, false},
    {"letters", "to", false, false},   {"bought", "from", false, true},   {"inherited", "from", false, true},
    {"issued", "to", false, false},    {"c", "/", false, false},          {"attn", NULL, false, false},
    {"attention", ":", false, false},  {"passenger", ":", false, false},  {"lives", "with", false, true},
    {"patient", ":", false, false},    {"for", ":", false, true},         {"label", "to", false, true},
    {"prize", "to", false, true},      {"card", "to", false, true},       {"card", "from", false, true},
    {"postcard", "to", false, true},   {"postcard", "from", false, true}, {"note", "to", false, true},
    {"note", "from", false, true},
};

// Two or three words in small letters with an end behind them: "property of edna quillow".
static size_t lower_name_end(const struct private_text *t, size_t i) {
    size_t end = i;
    while (end < i + LOWER_WORDS && token_is_word(t, end) && token_at(t, end)->letters > 1 &&
           !token_has(t, end, WORD_PLAIN | WORD_BODY | WORD_KIN | WORD_OWNER | WORD_UNIT | WORD_MAKER))
        end++;
    bool closed = !token_is_word(t, end) || token_has(t, end, WORD_PLAIN);
    return end == i + LOWER_WORDS && closed && !token_has(t, end, WORD_BODY) ? end : i;
}

// "Anna and Bert", "Anna & Bert Tarn".
static size_t names_end(const struct private_text *t, size_t i, size_t *words, size_t *plain) {
    size_t end = name_end(t, i, words, plain);
    if (end == i || !(piece_is(t, end, "and") || piece_is(t, end, "&"))) return end;
    size_t more, bare, next = name_end(t, end + 1, &more, &bare);
    *words += more;
    *plain += bare;
    return next == end + 1 ? end : next;
}

// "my grandmother Edna", "the late Edna".
static size_t skip_kin(const struct private_text *t, size_t i) {
    bool late = piece_is(t, i, "the") && (piece_is(t, i + 1, "late") || token_has(t, i + 1, WORD_KIN));
    if (piece_is(t, i, "my") || piece_is(t, i, "our") || late) i++;
    if (piece_is(t, i, "late")) i++;
    if (token_has(t, i, WORD_KIN) && !token_at(t, i)->upper) i++;
    if (piece_is(t, i, ",") || piece_is(t, i, ":")) i++;
    return i;
}

static size_t ex_before(const struct private_text *t, size_t i) {
    size_t ex = piece_is(t, i - 1, "-") ? i - 2 : i - 1;
    return piece_is(t, ex, "ex") ? ex : i;
}

static bool titled(const struct private_text *t, size_t i) {
    return token_has(t, i, WORD_TITLE | WORD_LONG_TITLE);
}

// The thing itself is told: of "letter from Edna" the letter stays.
static bool is_kept(const struct private_text *t, size_t i) {
    return piece_is(t, i, "letter") || piece_is(t, i, "letters") || piece_is(t, i, "addressed") ||
           piece_is(t, i, "bought") || piece_is(t, i, "inherited") || piece_is(t, i, "gift") ||
           piece_is(t, i, "label") || piece_is(t, i, "prize") || piece_is(t, i, "card") ||
           piece_is(t, i, "postcard") || piece_is(t, i, "note");
}

static void match_pair(struct private_text *t, size_t i) {
    if (!token_has(t, i, WORD_OWNING)) return;
    for (size_t k = 0; k < sizeof pairs / sizeof *pairs; k++) {
        if (!piece_is(t, i, pairs[k].first)) continue;
        size_t at = i + 1;
        if (pairs[k].second && !piece_is(t, at++, pairs[k].second)) continue;
        if (piece_is(t, i, "c") && !(token_joined(t, at - 1) && piece_is(t, at++, "o"))) continue;
        bool small = piece_is(t, i, "property") || piece_is(t, i, "libris");
        if ((t->place & PRIVATE_MAKERS) && !pairs[k].strong) continue;
        if (piece_is(t, at, ":") || piece_is(t, at, ".") || piece_is(t, at, ",") || piece_is(t, at, "-"))
            at++;
        size_t start = piece_is(t, i, "libris") ? ex_before(t, i) : i;
        size_t words, plain, from = skip_kin(t, at), end = names_end(t, from, &words, &plain);
        bool enough = !pairs[k].whole || words > 1 || titled(t, from) || from > at;
        if (end > from && plain && enough)
            private_add(t, PRIVATE_NAME, is_kept(t, i) ? at : start, end);
        else if (small && (end = lower_name_end(t, at)) > at)
            private_add(t, PRIVATE_NAME, start, end);
    }
}

// "owner's name: Edna", "name Edna Quillow in ink", "owner: Edna", "previous owner Edna Quillow".
static void match_name_word(struct private_text *t, size_t i) {
    bool name = piece_is(t, i, "name") || piece_is(t, i, "names") || piece_is(t, i, "nametag");
    bool owner = piece_is(t, i, "owner") || piece_is(t, i, "owners");
    if ((!name && !owner) || (t->place & PRIVATE_MAKERS) || token_has(t, i - 1, WORD_MAKER)) return;
    bool before = token_has(t, i - 1, WORD_OWNER) || (t->place & PRIVATE_OWNERS) || piece_is(t, i, "nametag");
    size_t at = i + 1, words, plain;
    bool tag = piece_is(t, at, "tag") || piece_is(t, at, "label") || piece_is(t, at, "plate");
    if (tag || piece_is(t, at, "written") || piece_is(t, at, "inside")) at++;
    bool told, quoted = piece_is(t, at, "\"") || piece_is(t, at, "'");
    at = skip_lead(t, at, &told);
    if (piece_is(t, at, ",") || piece_is(t, at, "(")) at++;
    quoted =
        quoted || piece_is(t, at, "\"") || piece_is(t, at, "\xE2\x80\x9C") || piece_is(t, at, "\xE2\x80\x98");
    if (quoted && token_at(t, at)->kind == TOKEN_SIGN) at++;
    size_t end = names_end(t, at, &words, &plain);
    bool one = before || told || tag;
    if (end > at && plain && (one || (words > 1 && (name || before)))) private_add(t, PRIVATE_NAME, at, end);
}

// "Edna Quillow, her book".
static void match_her_book(struct private_text *t, size_t i) {
    if (!(piece_is(t, i, "her") || piece_is(t, i, "his")) || !piece_is(t, i + 1, "book")) return;
    size_t from = i;
    if (piece_is(t, from - 1, ",")) from--;
    size_t end = from;
    for (size_t n = 0; n < 3 && from > 0; n++) {
        const struct token *token = token_at(t, from - 1);
        if (token->kind != TOKEN_WORD || !token->upper || token_has(t, from - 1, WORD_PLAIN)) break;
        from--;
    }
    if (from < end) private_add(t, PRIVATE_NAME, from, i + 2);
}

// "the Quillow family", "aunt Edna", "my Uncle Bert Tarn's".
static void match_kin(struct private_text *t, size_t i) {
    bool family = piece_is(t, i, "family") && piece_is(t, i - 2, "the") && token_at(t, i - 1)->upper &&
                  token_is_word(t, i - 1) && !token_has(t, i - 1, WORD_PLAIN | WORD_BODY);
    if (family && !(t->place & PRIVATE_MAKERS)) private_add(t, PRIVATE_NAME, i - 2, i + 1);
    if (!token_has(t, i, WORD_KIN) || (t->place & PRIVATE_MAKERS)) return;
    bool mine = piece_is(t, i - 1, "my") || piece_is(t, i - 1, "our") || piece_is(t, i - 1, "her") ||
                piece_is(t, i - 1, "his");
    if (token_at(t, i)->upper && !mine) return;
    size_t words, plain, end = name_end(t, i + 1, &words, &plain);
    if (plain) private_add(t, PRIVATE_NAME, i, end);
}

void match_owner(struct private_text *t, size_t i) {
    if (!token_is_word(t, i)) return;
    match_pair(t, i);
    match_name_word(t, i);
    match_her_book(t, i);
    match_kin(t, i);
}
