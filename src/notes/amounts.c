// SPDX-License-Identifier: MIT
// How many of what lacks, behind the word for it: "missing a couple of screws", "has lost three of its six
// hooks", "short of a pair of castors", "minus several knobs".
#include "notes/any.h"
#include "notes/number.h"
#include "notes/place.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static const char *const owners[] = {"its", "the", "their", "these", "his", "her", "original"};

struct amount {
    int n, of; // 0: nobody counted
    size_t to;
};

// "Missing", "has lost", "short of": how many tokens.
static size_t lacks_at(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {"missing",  "lacking", "lacks", "minus", "lost",
                                       "short of", "wanting", "less",  "shy"};
    return token_longest(tokens, i, cues, COUNT(cues));
}

// "A couple of", "several of its", "three of the six", "both", "half its"; where a `bare` owner will do,
// "its".
static bool amount_read(const struct tokens *tokens, size_t i, bool bare, struct amount *amount) {
    static const struct {
        const char *phrase;
        int n;
    } words[] = {{"half a dozen", 6}, {"a couple", 2}, {"couple", 2},  {"a pair", 2}, {"pair", 2},
                 {"a few", 0},        {"few", 0},      {"several", 0}, {"some", 0},   {"quite a few", 0},
                 {"a number", 0},     {"many", 0},     {"most", 0},    {"half", 0},   {"both", 2},
                 {"about half", 0},   {"loads", 0},    {"lots", 0},    {"both of", 2}};
    static const char *const loose[] = {"about", "maybe", "at least", "just", "only", "perhaps", "roughly"};
    *amount = (struct amount){0, 0, i};
    i += token_longest(tokens, i, loose, COUNT(loose));
    size_t longest = 0;
    bool may = token_may_open(tokens, i, words, COUNT(words), sizeof *words);
    for (size_t k = 0; may && k < COUNT(words); k++) {
        size_t size = token_phrase(tokens, i, words[k].phrase);
        if (size <= longest) continue;
        longest = size;
        amount->n = words[k].n;
    }
    bool any = longest > 0;
    i += longest;
    if (!any && (amount->n = degrees_number(tokens, i)) > 0) any = true, i++;
    if (any && token_is(tokens, i, "of")) i++;
    while (AMONG(tokens, i, owners)) i++;
    int whole = any ? degrees_number(tokens, i) : 0;
    if (whole > amount->n) amount->of = amount->n ? whole : 0, i++;
    while (AMONG(tokens, i, owners)) i++;
    any |= i > amount->to && bare;
    amount->to = i;
    return any;
}

// Shreds of a stuff, and measures: what is lost of them is no part.
static bool is_shred(const struct tokens *tokens, size_t i) {
    static const char *const shreds[] = {"flake", "patch", "bit",   "chip",   "chunk", "speck", "sliver",
                                         "spot",  "area",  "inch",  "mm",     "cm",    "fleck", "splinter",
                                         "piece", "half",  "third", "minute", "hour",  "day",   "place",
                                         "thing", "page",  "leaf",  "sheet",  "plate"};
    return i < tokens->count && token_among(tokens, i, shreds, COUNT(shreds));
}

// What a rule says of these words is no more than that something lacks.
static bool is_general(const struct flaw *kind) {
    static const char *const kinds[] = {"missing-pieces", "missing-mate", "missing-accessory",
                                        "missing-hardware"};
    for (size_t k = 0; k < COUNT(kinds); k++)
        if (text_same(kind->rule.id, kinds[k])) return true;
    return false;
}

static bool is_told_by_rule(const struct fault_reader *r, size_t from, size_t to, size_t part) {
    for (size_t i = 0; i < r->hit_count; i++) {
        const struct fault_hit *hit = &r->hits[i];
        if (hit->from >= to || hit->to <= from) continue;
        bool of_part = hit->to > part || hit->kinds[0]->form != ABSENCE;
        bool whole = hit->from >= from && hit->to <= to && hit->to > part; // "lost one of its knobs"
        if (whole && text_same(hit->kinds[0]->rule.id, "broken-part") &&
            ANY(&r->note->tokens, from + 2, "of"))
            continue;
        if (of_part && !is_general(hit->kinds[0])) return true;
    }
    return false;
}

static const char *place_of(const struct note *note, size_t i) {
    static const char *const before[] = {"in", "on", "at", "from", "off", "along", "inside", "under"};
    const char *where = NULL;
    if (!AMONG(&note->tokens, i, before) || (i > 0 && note->tokens.at[i - 1].stop != STOP_NONE)) return NULL;
    return place_at(note, i, &where) ? where : NULL;
}

// "No missing straps", "without any lost pegs": what lacks is denied by its own words.
static size_t none_lacks(struct fault_reader *r, size_t i) {
    struct note *note = r->note;
    static const uint16_t nots = STANCE_DENIED | STANCE_NONE_SEEN;
    uint16_t stance = r->scope.stance[i];
    struct part_at part;
    if (!(stance & nots) || stance & (STANCE_EXCEPT | STANCE_DOUBLE | STANCE_OTHER) || r->scope.cue[i] >= i)
        return 0;
    if (!ANY(&note->tokens, i, "missing", "lost", "absent") || !part_named_at(r, i + 1, &part) ||
        part.lead != part.from || is_told_by_rule(r, i, part.to, part.from))
        return 0;
    const char *name = fault_words(note, part.from, part.to);
    bool plural = note->tokens.at[part.to - 1].one != note->tokens.at[part.to - 1].fold;
    const struct flaw *kind = absent_kind_here(r, name, plural ? 2 : 1);
    if (!kind) return 0;
    bool own = kind->part && text_same(say_singular(note->arena, name), kind->part);
    clear_add(r, kind, own ? NULL : name, NULL, stance & STANCE_NONE_SEEN, i, part.to);
    note_take(note, part.from, part.to, TAKEN_PART);
    for (size_t k = r->scope.cue[i]; k < i; k++)
        if (note->taken[k] == TAKEN_NOT && note->tokens.at[k].stop == STOP_NONE)
            note_take(note, k, k + 1, TAKEN_SCOPE);
    part_close(r, i, part.to);
    return part.to;
}

// Does a "no" in the same sentence reach token `i`, through a list at most?
static bool is_under_no(const struct tokens *tokens, size_t i) {
    enum { FAR = 9 };
    for (size_t k = i; k > 0 && i - k < FAR && tokens->at[k - 1].stop < STOP_CLAUSE; k--) {
        if (ANY(tokens, k - 1, "no", "without", "any", "zero")) return true;
        if (ANY(tokens, k - 1, "is", "are", "has", "but", "with", "it's", "one")) return false;
    }
    return false;
}

void amounts_mark(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 1; i + 1 < tokens->count; i++) {
        if (tokens->at[i].stop != STOP_NONE || tokens->at[i + 1].kind != TOKEN_WORD) continue;
        if (ANY(tokens, i, "missing", "absent") && is_under_no(tokens, i)) r->scope.fault[i] = true;
    }
}

// "… and a fork", ", one spoon": more of what lacks, where nothing else is said of it. Returns the token
// behind.
static size_t more_lacks(struct fault_reader *r, size_t i) {
    struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    for (;;) {
        size_t at = i;
        if (at < tokens->count && tokens->at[at].stop == STOP_COMMA) at++;
        if (ANY(tokens, at, "and", "&")) at++;
        struct amount amount = {1, 0, at + 1};
        struct part_at part;
        if (at == i || (!ANY(tokens, at, "a", "an") && !amount_read(tokens, at, false, &amount))) return i;
        if (!part_named_at(r, amount.to, &part) || is_shred(tokens, part.to - 1)) return i;
        bool over = part.to >= tokens->count || tokens->at[part.to].stop != STOP_NONE ||
                    ANY(tokens, part.to, "and", "&");
        const char *name = fault_words(note, part.from, part.to);
        const struct flaw *kind = over ? absent_kind_here(r, name, amount.n) : NULL;
        if (!kind || is_told_by_rule(r, at, part.to, part.from)) return i;
        struct item_flaw *flaw = fault_add(r, kind, name, NULL, at, part.to);
        if (amount.n > 1) flaw->count = amount.n;
        note_take(note, part.from, part.to, TAKEN_PART);
        part_close(r, at, part.to);
        i = part.to;
    }
}

size_t amount_lacks(struct fault_reader *r, size_t i) {
    static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN | STANCE_PAST |
                                STANCE_PLANNED | STANCE_OTHER | STANCE_WITHDRAWN;
    struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    size_t none = none_lacks(r, i), n = none ? 0 : lacks_at(tokens, i);
    if (none) return none;
    struct amount amount;
    if (!n || tokens->at[i + n - 1].stop != STOP_NONE || r->scope.stance[i] & off) return 0;
    if (i > 0 && tokens->at[i - 1].stop == STOP_NONE && r->part[i - 1]) return 0; // "the lid lacks its knob"
    // "Three are missing covers": of three pieces
    bool some = n == 1 && i > 1 && ANY(tokens, i - 1, "are", "is") && degrees_number(tokens, i - 2) &&
                i + 1 < tokens->count && r->part[i + 1];
    if (some)
        amount = (struct amount){degrees_number(tokens, i - 2), note->record->count, i + 1};
    else if (!amount_read(tokens, i + n, n > 1, &amount))
        return 0;
    if (some) i -= 2;
    struct part_at part;
    if (!part_named_at(r, amount.to, &part) || is_shred(tokens, part.to - 1)) return 0;
    if (!r->part[part.to - 1] && ANY(tokens, i, "lost", "less", "shy")) return 0; // "lost two days"
    bool plural = tokens->at[part.to - 1].one != tokens->at[part.to - 1].fold;
    if (!plural && amount.n != 1) return 0;
    if (r->scope.fault[part.to] && part.to < tokens->count && tokens->at[part.to - 1].stop == STOP_NONE)
        return 0; // "some handle wear"
    if (!some && is_told_by_rule(r, i, part.to, part.from)) return 0;
    const char *name = fault_words(note, part.from, part.to);
    const struct flaw *kind = absent_kind_here(r, name, plural && !amount.n ? 2 : amount.n);
    if (!kind) return 0;
    bool own = kind->part && text_same(say_singular(note->arena, name), kind->part);
    const char *where = place_of(note, part.to);
    size_t owner, end; // "the base has lost two of its screws"
    if (!where && spot_owner(r, i, &owner, &end) && end < part.from && r->part[end - 1]) {
        where = fault_words(note, owner, end);
        note_take(note, owner, end, TAKEN_PART);
    }
    struct item_flaw *flaw = fault_add(r, kind, own ? NULL : name, where, i, part.to);
    if (amount.n > 1 || amount.of) flaw->count = amount.n, flaw->of = amount.of;
    note_take(note, part.from, part.to, TAKEN_PART);
    part_close(r, i, part.to);
    return more_lacks(r, part.to);
}
