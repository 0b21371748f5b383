// SPDX-License-Identifier: MIT
// Letters or a figure that a hand put on a thing: "somebody carved RB in the corner", "some lad has painted
// 14 on the lid", "JT scratched into the base". Who did it says that they are no mark of a maker; so does the
// verb, where no maker works like that. Read before the faults, for paint is no new finish then.
#include <string.h>

#include "notes/any.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// No maker signs like that.
static const char *const crude[] = {"carved",   "scratched", "gouged",  "chalked",  "scrawled",
                                    "whittled", "burnt",     "burned",  "biroed",   "scribbled",
                                    "scored",   "inked",     "scraped", "crayoned", "punched"};
// A maker may.
static const char *const neat[] = {"painted", "stencilled", "stenciled", "cut",   "punched",
                                   "stamped", "wrote",      "written",   "filed", "put"};

static bool leads_place(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i - 1].stop != STOP_NONE ||
           ANY(tokens, i, "on", "in", "into", "across", "inside", "under", "underneath", "along", "over",
               "onto", "all", "at", "by", "near");
}

// "RB", "14", "J 7": where the letters end; `i` where none stand.
static size_t letters_end(const struct note *note, size_t i, bool somebody) {
    enum { FEW = 3, MANY = 5, DIGITS_MOST = 4, LETTERS_MOST = 4, NAME_MOST = 14 };
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    while (at < tokens->count && at < i + (somebody ? MANY : FEW)) {
        const struct token *t = &tokens->at[at];
        size_t n = t->to - t->from;
        if (strchr(t->fold, '.')) n -= n / 2; // "J.M"
        bool letters = t->kind == TOKEN_WORD && n <= (somebody && t->capitals ? NAME_MOST : LETTERS_MOST) &&
                       !token_is(tokens, at, "i") && (t->capitals || (n == 1 && t->capital));
        bool figure = t->kind == TOKEN_FIGURE && n <= DIGITS_MOST && strspn(t->fold, "0123456789") == n;
        bool kept_back = note->taken[at] == TAKEN_ASIDE && t->capital;   // a name
        bool signed_so = somebody && t->capital && strchr(t->fold, '.'); // "J.VELDER"
        if (!letters && !figure && !kept_back && !signed_so) break;
        at++;
        if (t->stop != STOP_NONE) break;
        bool dot = strchr(t->fold, '.') && token_is(tokens, at, ".") && tokens->at[at].joined;
        if (dot && tokens->at[at].stop == STOP_NONE) at++;
    }
    return at;
}

// "J.M. is": up to the verb at token `i`.
static bool letters_reach(const struct note *note, size_t from, size_t i) {
    size_t end = letters_end(note, from, false);
    while (end > from && end < i && ANY(&note->tokens, end, "is", "are", "was", "been")) end++;
    return end > from && end >= i;
}

// "Somebody", "some lad has", "the last owner's".
static bool by_somebody(const struct tokens *tokens, size_t i, size_t *from) {
    enum { BACK = 5 };
    static const char *const people[] = {"somebody", "someone",  "somebody's", "someone's", "owner", "owners",
                                         "lad",      "lads",     "boy",        "boys",      "kid",   "kids",
                                         "child",    "children", "pupil",      "pupils",    "chap",  "bloke",
                                         "fool",     "idiot",    "he",         "she",       "they",  "man",
                                         "guy",      "fellow",   "owner's"};
    for (size_t at = i; at > 0 && at + BACK > i && tokens->at[at - 1].stop == STOP_NONE; at--)
        if (token_among(tokens, at - 1, people, COUNT(people))) {
            *from = at - 1;
            return true;
        }
    return false;
}

// "Name BOBBY is painted on the bottom", "initials JK are cut in the lid": where that begins.
static bool named_before(const struct tokens *tokens, size_t i, size_t *from) {
    enum { BACK = 5 };
    size_t at = i;
    bool figures = !ANY(tokens, i, "stamped", "cut", "punched", "filed"); // as a maker numbers it
    if (i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE || !leads_place(tokens, i + 1))
        return false;
    while (at > 0 && i - at < BACK && tokens->at[at - 1].stop == STOP_NONE &&
           (tokens->at[at - 1].capital || (figures && tokens->at[at - 1].kind == TOKEN_FIGURE) ||
            ANY(tokens, at - 1, "is", "are", "was", "has", "been", "'s", "."))) {
        at--;
        if (!ANY(tokens, at, "name", "names", "initials", "number")) continue;
        *from = at;
        return at + 1 < i;
    }
    if (at == 0 || at == i || !ANY(tokens, at - 1, "name", "names", "initials", "number")) return false;
    *from = at - 1;
    return tokens->at[at - 1].stop == STOP_NONE &&
           (tokens->at[at].capital || (figures && tokens->at[at].kind == TOKEN_FIGURE));
}

// "47 painted on the side": who paints a figure or initials on a pail owns it; of fired goods, of paper and
// of a dial it is how they were made.
static bool is_painted_on(const struct fault_reader *r, size_t i) {
    static const char *const makers[] = {"ceramics", "glassware", "paper", "books",          "jewelry",
                                         "media",    "toys",      "decor", "clocks-watches", "games-puzzles"};
    const struct family *family = r->note->record->family;
    for (size_t k = 0; family && k < COUNT(makers); k++)
        if (text_same(family->rule.id, makers[k])) return false;
    return family && ANY(&r->note->tokens, i, "painted", "stencilled", "stenciled") &&
           ANY(&r->note->tokens, i + 1, "on", "in", "across", "along", "inside", "under");
}

static void tell(struct fault_reader *r, size_t from, size_t to) {
    const struct flaw *kind = ruleset_flaw(r->note->rules, "owner-name");
    static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_WITHDRAWN |
                                STANCE_OTHER | STANCE_UNKNOWN | STANCE_PLANNED;
    if (!kind || r->scope.stance[from] & off) return;
    struct fault_hit hit = {.from = from, .to = to, .kinds = {kind}, .kind_count = 1};
    struct spot spot = spot_of_hit(r, &hit);
    if (spot.part_from >= from && spot.part_to <= to)
        spot.part_from = spot.part_to = 0; // "wrote NAILS on the lid"
    const char *where = fault_place(r->note, spot.where_from, spot.where_to);
    fault_tell(r, &hit, kind, fault_part(r, &hit, kind, &spot, where), where);
    part_close(r, from, to);
}

void read_inscribed(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value;
    if (type && (strstr(type, "sign") || strstr(type, "plaque") || strstr(type, "board"))) return;
    for (size_t i = 0; i < tokens->count; i++) {
        bool rough = token_among(tokens, i, crude, COUNT(crude));
        if (!rough && !token_among(tokens, i, neat, COUNT(neat))) continue;
        size_t who = i;
        bool somebody = by_somebody(tokens, i, &who);
        size_t to = tokens->at[i].stop == STOP_NONE ? letters_end(r->note, i + 1, somebody) : i + 1;
        if (to > i + 1) {
            if (leads_place(tokens, to) && (rough || somebody)) tell(r, who, to);
            continue;
        }
        if (named_before(tokens, i, &to)) {
            tell(r, to, i + 1);
            continue;
        }
        bool painted = !rough && is_painted_on(r, i);
        size_t from = i;
        while (from > 0 && i - from < 3 && tokens->at[from - 1].stop == STOP_NONE &&
               (letters_reach(r->note, from - 1, i) || token_is(tokens, from - 1, ".") ||
                ANY(tokens, from - 1, "is", "are", "was", "been")))
            from--;
        while (from < i && !letters_reach(r->note, from, i)) from++;
        bool numbered = tokens->at[from].kind == TOKEN_FIGURE && // as a maker numbers it
                        ANY(tokens, i, "stamped", "cut", "punched", "filed");
        if (numbered) continue;
        painted &= tokens->at[from].kind == TOKEN_FIGURE || strlen(tokens->at[from].fold) < 4; // but "FIRE"
        if (from < i && (rough || painted) && i + 1 < tokens->count && tokens->at[i].stop == STOP_NONE &&
            leads_place(tokens, i + 1))
            tell(r, from, i + 1);
    }
}
