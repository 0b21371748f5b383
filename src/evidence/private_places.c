// SPDX-License-Identifier: MIT
// Addresses: house number and street, post boxes, rural routes, postal codes behind a town.
#include "evidence/private_parts.h"

#include <string.h>

enum { STREET_WORDS = 4, TOWN_WORDS = 3 };

static bool is_name_like(const struct private_text *t, size_t i) {
    return token_is_word(t, i) && token_at(t, i)->upper;
}

// Two capitals and five digits ("QX 55512"), or letters and digits of a British code; the token behind.
static size_t postal_end(const struct private_text *t, size_t i) {
    const struct token *one = token_at(t, i);
    if (one->kind == TOKEN_WORD && one->capital && one->letters == 2 && token_at(t, i + 1)->spaced &&
        token_digits(t, i + 1) == 5 && !token_has(t, i, WORD_UNIT)) {
        bool plus = piece_is(t, i + 2, "-") && token_digits(t, i + 3) == 4;
        return i + (plus ? 4 : 2);
    }
    if (token_digits(t, i) == 5) {
        bool plus = piece_is(t, i + 1, "-") && token_joined(t, i + 1) && token_digits(t, i + 2) == 4;
        return i + (plus ? 3 : 1);
    }
    return i;
}

static size_t british_end(const struct private_text *t, size_t i) {
    const struct token *area = token_at(t, i);
    if (area->kind != TOKEN_WORD || !area->capital || area->letters > 2 ||
        area->to - area->from != area->letters)
        return i;
    size_t at = i + 1;
    if (!token_joined(t, at) || !token_digits(t, at) || token_digits(t, at) > 2) return i;
    at++;
    if (token_joined(t, at) && token_at(t, at)->letters == 1 && token_at(t, at)->capital) at++;
    if (!token_at(t, at)->spaced || token_digits(t, at) != 1) return i;
    const struct token *unit = token_at(t, at + 1);
    if (!token_joined(t, at + 1) || unit->letters != 2 || !unit->capital || unit->to - unit->from != 2)
        return i;
    if (strchr("CIKMOV", t->text[unit->from]) || strchr("CIKMOV", t->text[unit->from + 1])) return i;
    return token_joined(t, at + 2) && token_at(t, at + 2)->kind != TOKEN_SIGN ? i : at + 2;
}

// ", Ostrow, QX 55512" behind a street or a box.
static size_t town_end(const struct private_text *t, size_t i) {
    size_t end = i, at = i;
    for (size_t n = 0; n < 3; n++) {
        if (piece_is(t, at, ",")) at++;
        size_t words = 0, code = postal_end(t, at), british = british_end(t, at);
        if (code > at || british > at) return code > at ? code : british;
        bool comma = at > end;
        while (words < TOWN_WORDS && is_name_like(t, at) && !token_has(t, at, WORD_PLAIN) &&
               british_end(t, at) == at && postal_end(t, at) == at) {
            at++;
            words++;
        }
        if (!words) return end;
        bool coded = postal_end(t, at) > at || british_end(t, at) > at || piece_is(t, at, ",");
        if (!comma && !coded) return end;
        end = at;
    }
    return end;
}

static bool is_measure(const struct private_text *t, size_t i) {
    return token_has(t, i, WORD_UNIT) || piece_is(t, i, "/") || piece_is(t, i, "\"") || piece_is(t, i, "%");
}

// Common words that small-letter names of streets begin with.
static bool is_street_adjective(const struct private_text *t, size_t i) {
    static const char *const words[] = {"old",   "new",   "long", "high", "low",    "green", "red",
                                        "north", "south", "east", "west", "church", "mill"};
    for (size_t k = 0; k < sizeof words / sizeof *words; k++)
        if (piece_is(t, i, words[k])) return true;
    return false;
}

// "Quay" of "Quay Court", "St" of "St Wenna's Terrace": the street word is still to come.
static bool more_street(const struct private_text *t, size_t k) {
    for (size_t next = k + 1; next < k + 3 && is_name_like(t, next); next++)
        if (token_has(t, next, WORD_STREET | WORD_WEAK_STREET)) return true;
    return false;
}

// What follows tells a street from "1958 County Road Map" and "12 Meadow Park Plates". Words that are streets
// by the way ("court", "drive") also want a name before them and nothing else behind.
static bool ends_street_name(const struct private_text *t, size_t k, bool strong, bool lower, bool common) {
    const struct token *next = token_at(t, k + 1);
    bool word = next->kind == TOKEN_WORD;
    bool thing = word && (next->upper ? token_has(t, k + 1, WORD_PLAIN)
                                      : !token_has(t, k + 1, WORD_PLAIN | WORD_PARTICLE));
    if (thing) return false;
    if (strong) return true;
    bool behind = next->kind == TOKEN_NUMBER || (word && next->upper && !next->capital);
    return token_at(t, k)->upper && !lower && !common && !behind;
}

// The token behind the street word, or 0. `strong` when small letters will do.
static size_t street_end(const struct private_text *t, size_t at) {
    size_t words = 0;
    bool lower = false, common = false;
    for (size_t k = at; k < at + STREET_WORDS + 1; k++) {
        if (piece_is(t, k, ".") && k > at && token_joined(t, k)) continue;
        const struct token *token = token_at(t, k);
        if (token->kind == TOKEN_NUMBER && k == at && token_joined(t, k + 1) && token_is_word(t, k + 1) &&
            token_at(t, k + 1)->letters == 2) {
            k++; // 5th Avenue
            words++;
            continue;
        }
        if (token->kind != TOKEN_WORD) return 0;
        bool strong = token_has(t, k, WORD_STREET), weak = token_has(t, k, WORD_WEAK_STREET);
        if (words && (strong || weak) && !more_street(t, k) && ends_street_name(t, k, strong, lower, common))
            return k + 1 + (piece_is(t, k + 1, ".") && token_joined(t, k + 1));
        common = common || token_has(t, k, WORD_PLAIN);
        lower = lower || !token->upper;
        bool number = is_measure(t, k) && k == at;
        if (number || (token_has(t, k, WORD_PLAIN) && !token->upper && !is_street_adjective(t, k)) ||
            token_has(t, k, WORD_MONTH))
            return 0;
        words++;
    }
    return 0;
}

static size_t flat_before(const struct private_text *t, size_t i) {
    size_t from = i;
    if (piece_is(t, from - 1, ",")) from--;
    bool flat = from >= 2 && (piece_is(t, from - 2, "flat") || piece_is(t, from - 2, "apt") ||
                              piece_is(t, from - 2, "unit") || piece_is(t, from - 2, "apartment"));
    return flat && token_digits(t, from - 1) ? from - 2 : i;
}

static size_t unit_end(const struct private_text *t, size_t i) {
    size_t at = i;
    if (piece_is(t, at, ",")) at++;
    bool unit = piece_is(t, at, "apt") || piece_is(t, at, "flat") || piece_is(t, at, "apartment") ||
                piece_is(t, at, "suite") || piece_is(t, at, "unit") || piece_is(t, at, "#");
    if (!unit) return i;
    at++;
    if (piece_is(t, at, ".") || piece_is(t, at, "#")) at++;
    if (!token_digits(t, at) && token_at(t, at)->letters != 1) return i;
    at++;
    return token_joined(t, at) && token_at(t, at)->letters == 1 ? at + 1 : at;
}

static void match_street(struct private_text *t, size_t i) {
    size_t digits = token_digits(t, i), at = i + 1;
    if (!digits || digits > 5 || piece_is(t, i - 1, "/")) return;
    if (i && token_joined(t, i) && !piece_is(t, i - 1, "#") && !piece_is(t, i - 1, "(") &&
        !piece_is(t, i - 1, "\"") && !piece_is(t, i - 1, ",") && !piece_is(t, i - 1, ".") &&
        !piece_is(t, i - 1, ":"))
        return;
    if (token_joined(t, at) && token_at(t, at)->letters == 1) at++; // 14b
    if (token_joined(t, at) && piece_is(t, at, "-") && token_digits(t, at + 1)) at += 2;
    if (piece_is(t, at, ",")) at++;
    if (token_joined(t, at) && !piece_is(t, at - 1, ",")) return;
    size_t end = street_end(t, at);
    if (end) private_add(t, PRIVATE_ADDRESS, flat_before(t, i), town_end(t, unit_end(t, end)));
}

static size_t dotted_end(const struct private_text *t, size_t i, const char *letters) {
    size_t at = i;
    if (piece_is(t, at, letters)) return at + 1;
    for (const char *c = letters; *c; c++) {
        const char one[2] = {*c, '\0'};
        if (!piece_is(t, at, one)) return i;
        at++;
        if (piece_is(t, at, ".")) at++;
    }
    return at;
}

static size_t box_end(const struct private_text *t, size_t i) {
    size_t at = i;
    if (!piece_is(t, at, "box")) return i;
    at++;
    if (piece_is(t, at, "no")) at++;
    if (piece_is(t, at, ".") || piece_is(t, at, "#") || piece_is(t, at, ":")) at++;
    if (!token_digits(t, at)) return i;
    at++;
    return token_joined(t, at) && token_at(t, at)->letters == 1 ? at + 1 : at;
}

static void match_box(struct private_text *t, size_t i) {
    size_t po = dotted_end(t, i, "po");
    if (po == i && piece_is(t, i, "post") && piece_is(t, i + 1, "office")) po = i + 2;
    if (po > i) {
        size_t end = box_end(t, po);
        if (end > po) private_add(t, PRIVATE_ADDRESS, i, town_end(t, end));
        return;
    }
    size_t route = dotted_end(t, i, "rfd"), rr = dotted_end(t, i, "rr");
    bool spelled = (piece_is(t, i, "rural") || piece_is(t, i, "star")) && piece_is(t, i + 1, "route");
    if (spelled) route = i + 2;
    if (route == i && rr == i) return;
    size_t at = route > i ? route : rr;
    if (piece_is(t, at, "no")) at++;
    if (piece_is(t, at, ".") || piece_is(t, at, "#")) at++;
    if (!token_digits(t, at) || token_digits(t, at) > 3) return;
    size_t after = at + 1;
    if (piece_is(t, after, ",")) after++;
    size_t end = box_end(t, after);
    if (end > after)
        private_add(t, PRIVATE_ADDRESS, i, town_end(t, end));
    else if (route > i)
        private_add(t, PRIVATE_ADDRESS, i, town_end(t, at + 1));
}

// "12 rue de la Tarn", "Tarnstrasse 12".
static void match_foreign(struct private_text *t, size_t i) {
    const struct token *token = token_at(t, i);
    size_t size = token->to - token->from;
    static const char *const tails[] = {"strasse", "stra\303\237e", "gasse", "straat"};
    for (size_t k = 0; token->kind == TOKEN_WORD && k < sizeof tails / sizeof *tails; k++) {
        size_t tail = strlen(tails[k]);
        if (size <= tail + 1 || strncmp(t->text + token->to - tail, tails[k], tail) != 0) continue;
        if (token_digits(t, i + 1) && token_digits(t, i + 1) < 4)
            private_add(t, PRIVATE_ADDRESS, i, town_end(t, i + 2));
    }
    if (!(token_digits(t, i) && token_digits(t, i) < 4)) return;
    size_t at = i + 1;
    if (piece_is(t, at, ",")) at++;
    if (!piece_is(t, at, "rue") && !piece_is(t, at, "calle")) return;
    at++;
    while (token_has(t, at, WORD_PARTICLE) && !token_at(t, at)->upper) at++;
    if (is_name_like(t, at)) private_add(t, PRIVATE_ADDRESS, i, town_end(t, at + 1));
}

// "Rose Cottage, Chapel Lane, Ostermouth": a house that has a name for its number.
static void match_house(struct private_text *t, size_t i) {
    static const char *const houses[] = {"cottage", "house",    "farm",    "lodge",       "villa",
                                         "manor",   "vicarage", "rectory", "schoolhouse", "hall"};
    bool house = false;
    for (size_t k = 0; k < sizeof houses / sizeof *houses; k++) house = house || piece_is(t, i, houses[k]);
    if (!house || !piece_is(t, i + 1, ",") || !is_name_like(t, i) || !is_name_like(t, i - 1)) return;
    size_t end = street_end(t, i + 2), from = i - 1;
    if (is_name_like(t, from - 1) && !token_has(t, from - 1, WORD_CODE)) from--;
    if (end && is_name_like(t, i + 2)) private_add(t, PRIVATE_ADDRESS, from, town_end(t, end));
}

void match_address(struct private_text *t, size_t i) {
    if (t->place & PRIVATE_CODES) return;
    match_street(t, i);
    match_box(t, i);
    match_house(t, i);
    match_foreign(t, i);
}

// A town with its postal code, without a street before it.
void match_postal(struct private_text *t, size_t i) {
    if ((t->place & PRIVATE_CODES) || i == 0) return;
    size_t end = british_end(t, i), before = piece_is(t, i - 1, ",") ? i - 2 : i - 1;
    bool town = is_name_like(t, before) && token_at(t, before)->letters > 2 &&
                !token_has(t, before, WORD_CODE | WORD_NUMBER | WORD_PLAIN | WORD_SERIAL);
    if (end > i && town) private_add(t, PRIVATE_ADDRESS, before, end);
    if (!token_is_word(t, i) || !piece_is(t, i - 1, ",") || !town) return;
    if (token_has(t, i, WORD_CYPHER | WORD_NUMBER | WORD_CODE)) return;
    end = postal_end(t, i);
    if (end > i) private_add(t, PRIVATE_ADDRESS, before, end);
}
