// SPDX-License-Identifier: MIT
// How many faults, or how many of the pieces: "three chips", "two of the six", "half of them", "all but one",
// "on four of the ten napkins". What is not said stays unknown.
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/shorthand.h"
#include "text/order.h"
#include <stdlib.h>
#include <string.h>
#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { BEFORE_MOST = 5 };

struct share {
    int n, of; // of 0: not said
};

static bool joins(const struct tokens *tokens, size_t i) {
    return tokens->at[i].stop != STOP_NONE || ANY(tokens, i, "and", "but", "or");
}

static bool owner_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"the", "its", "these", "those", "my", "their", "his", "her", "our"};
    return token_among(tokens, i, words, COUNT(words));
}

// "Three", "12", "a couple", "half a dozen"; how many tokens, 0 if none.
static size_t amount_at(const struct tokens *tokens, size_t i, int *n) {
    static const struct {
        const char *phrase;
        int n;
    } phrases[] = {{"half a dozen", 6}, {"half dozen", 6}, {"a dozen", 12}, {"one dozen", 12},
                   {"dozen", 12},       {"a couple", 2},   {"couple", 2},   {"a pair", 2},
                   {"pair", 2},         {"two dozen", 24}, {"a single", 1}, {"single", 1}};
    bool may = token_may_open(tokens, i, phrases, COUNT(phrases), sizeof *phrases);
    for (size_t k = 0; may && k < COUNT(phrases); k++) {
        size_t size = token_phrase(tokens, i, phrases[k].phrase);
        if (!size) continue;
        *n = phrases[k].n;
        return size;
    }
    *n = degrees_number(tokens, i);
    return *n ? 1 : 0;
}

// "Two of the eight screws": the eight are the pieces there are, and not the faults.
static bool is_total(const struct tokens *tokens, size_t i) {
    while (i > 0 && owner_at(tokens, i - 1)) i--;
    return i > 0 && token_is(tokens, i - 1, "of");
}

// "The six", "them", "its 12", behind "of": the pieces there are.
static int total_at(const struct fault_reader *r, size_t i, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    int n = 0, pieces = r->note->record->count;
    bool them = token_is(tokens, i, "them");
    if (them || owner_at(tokens, i)) i++;
    size_t size = them ? 0 : amount_at(tokens, i, &n);
    *to = i + size;
    return n ? n : pieces > 1 ? pieces : 0;
}

// "All but one", "every one bar two".
static bool all_but(const struct fault_reader *r, size_t i, struct share *share, size_t *to) {
    static const char *const alls[] = {"all", "every one", "each one", "each", "all of them"};
    static const char *const buts[] = {"but", "bar", "except", "except for", "save", "apart from"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, alls, COUNT(alls));
    if (!n) return false;
    for (size_t k = COUNT(buts); k-- > 0;) {
        size_t size = token_phrase(tokens, i + n, buts[k]);
        int without;
        size_t taken = size ? amount_at(tokens, i + n + size, &without) : 0;
        if (size && !taken)
            taken = pieces_superlative(tokens, i + n + size, &without); // "all but the smallest"
        if (!taken) continue;
        *to = i + n + size + taken;
        int total = r->note->record->count;
        if (token_is(tokens, *to, "of")) total = total_at(r, *to + 1, to);
        if (total <= without) return false;
        *share = (struct share){total - without, total};
        return true;
    }
    return false;
}

// "Half of them", "half the plates", "all of the four legs", "each of the six", "all four".
static bool whole_or_half(const struct fault_reader *r, size_t i, struct share *share, size_t *to) {
    static const char *const wholes[] = {"all", "each", "every one", "both"};
    const struct tokens *tokens = &r->note->tokens;
    bool half = token_is(tokens, i, "half");
    size_t n = half ? 1 : 0;
    for (size_t k = 0; !half && k < COUNT(wholes); k++)
        if (token_phrase(tokens, i, wholes[k])) n = token_phrase(tokens, i, wholes[k]);
    if (!n) return false;
    if (token_is(tokens, i, "both")) {
        *share = (struct share){2, 2};
        *to = i + 1;
        return true;
    }
    bool of = token_is(tokens, i + n, "of");
    if (!of && half && !owner_at(tokens, i + n)) return false;
    int named = 0, total = 0;
    size_t size = of ? 0 : amount_at(tokens, i + n, &named);
    *to = i + n + size;
    if (of || half) total = total_at(r, i + n + (of ? 1 : 0), to);
    if (named > 1) total = named;
    if (total < 2 || (half && total % 2)) return false;
    *share = (struct share){half ? total / 2 : total, total};
    return true;
}

// "3/6 chipped": of as many pieces as there are.
static bool fraction_at(const struct fault_reader *r, size_t i, struct share *share) {
    const struct token *token = &r->note->tokens.at[i];
    const char *slash = token->kind == TOKEN_FIGURE ? strchr(token->fold, '/') : NULL;
    if (!slash || slash == token->fold || strspn(slash + 1, "0123456789") != strlen(slash + 1)) return false;
    int n = atoi(token->fold), of = atoi(slash + 1), pieces = r->note->record->count;
    if (n < 1 || n > of || of < 2 || (pieces > 1 && pieces != of)) return false;
    if (pieces < 2 && (of & (of - 1)) == 0) return false; // "1/4 cracked" of who knows what
    *share = (struct share){n, of};
    return true;
}

// "Two of the eight", "one out of six", "3 of them".
static bool some_of(const struct fault_reader *r, size_t i, struct share *share, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    int n;
    size_t size = amount_at(tokens, i, &n);
    if (!size) return false;
    size_t at = i + size;
    bool noun = at + 1 < tokens->count && tokens->at[at].kind == TOKEN_WORD &&
                tokens->at[at].stop == STOP_NONE && !token_is(tokens, at, "of") &&
                token_is(tokens, at + 1, "of");
    if (noun && token_is(tokens, at + 2, "the") && degrees_number(tokens, at + 3))
        at++; // "three forks of the eight"
    if (token_is(tokens, at, "out")) at++;
    if (!token_is(tokens, at, "of")) return false;
    bool named = token_is(tokens, at + 1, "them") || owner_at(tokens, at + 1);
    int total = total_at(r, at + 1, to), whole;
    bool counted = amount_at(tokens, at + (named ? 2 : 1), &whole) > 0;
    if (total < n || (!named && !counted)) return false;
    *share = (struct share){n, total};
    return true;
}

static bool share_at(const struct fault_reader *r, size_t i, struct share *share, size_t *to) {
    return all_but(r, i, share, to) || some_of(r, i, share, to) || whole_or_half(r, i, share, to);
}

// Of the pieces, in the clause before the fault; "two have chips" where there are more.
static size_t parts_at(const struct fault_reader *r, size_t i, size_t to) {
    enum { WORDS_MOST = 3 };
    size_t at = i;
    while (at < to && at < i + WORDS_MOST && !r->part[at] && r->note->tokens.at[at].kind == TOKEN_WORD &&
           r->note->tokens.at[at].stop == STOP_NONE)
        at++;
    if (at < to && r->part[at])
        while (at < to && r->part[at]) i = ++at;
    else if (i < to && r->note->tokens.at[i].one != r->note->tokens.at[i].fold)
        at = ++i; // "two ribs are bent"
    return at == i ? i : 0;
}

// "Two ribs are bent and the tip is missing": the first statement has its fault already.
static bool ends_statement(const struct fault_reader *r, size_t from, size_t i, size_t to) {
    if (!token_is(&r->note->tokens, i, "and") || i + 1 == to) return false; // "two are chipped and stained"
    bool some = ANY(&r->note->tokens, i + 1, "several", "some", "most", "many", "one", "the",
                    "another"); // "two are missing and several …"
    for (size_t k = from; k < i; k++)
        if ((r->scope.fault[k] && !r->part[k]) ||
            (some && ANY(&r->note->tokens, k, "is", "are", "has", "have")))
            return true;
    return false;
}

// "Ten minutes": how long, not how many.

// "54x72": a side of what was measured.
static bool is_side(const struct tokens *tokens, size_t i) {
    return i > 1 && token_is(tokens, i - 1, "x") && tokens->at[i - 2].kind == TOKEN_FIGURE &&
           tokens->at[i].kind == TOKEN_FIGURE;
}

// A number that was read as something else: "2 gallon bird design hairline", "size 14 missing button".
// "12 to 14 torn lining": so many would be told in the plural.
static bool is_one(const struct fault_reader *r, const struct fault_hit *hit, int n) {
    enum { MANY = 12 };
    const struct tokens *tokens = &r->note->tokens;
    size_t noun = hit->to < tokens->count && r->part[hit->to] && tokens->at[hit->to - 1].stop == STOP_NONE
                      ? hit->to
                      : hit->to - 1;
    return n > MANY && tokens->at[noun].one == tokens->at[noun].fold;
}

static bool is_other(const struct fault_reader *r, size_t i) {
    enum taken taken = (enum taken)r->note->taken[i];
    return taken == TAKEN_MEASURE || taken == TAKEN_VALUE || taken == TAKEN_DATE ||
           is_side(&r->note->tokens, i);
}

// "Every one", "more than two", "all but two": the number is not that of the faults.
static bool is_no_count(const struct tokens *tokens, size_t i) {
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE) return false;
    if (ANY(tokens, i - 1, "every", "each", "than", "over", "neither", "nor")) return true;
    return i > 1 && ANY(tokens, i - 1, "but", "bar", "except", "save") &&
           ANY(tokens, i - 2, "all", "one", "each", "them");
}

// "Two are": a number and its verb, behind a fault that is told.
static bool opens_count(const struct fault_reader *r, size_t from, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (!degrees_number(tokens, i) || !ANY(tokens, i + 1, "has", "have", "is", "are", "with")) return false;
    for (size_t k = from; k < i; k++)
        if (r->scope.fault[k] && !r->part[k]) return true;
    return false;
}

// "One mug", of mugs: the noun of the thing itself, which is several.
static bool is_piece(const struct fault_reader *r, size_t i) {
    const char *type = r->note->record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    if (!type || r->note->record->count < 2 || i >= r->note->tokens.count) return false;
    return text_same(r->note->tokens.at[i].one, head ? head + 1 : type);
}

static bool share_before(const struct fault_reader *r, size_t from, size_t to, struct share *share) {
    static const char *const verbs[] = {"has", "have", "is", "are", "with", "show", "shows", "got"};
    const struct tokens *tokens = &r->note->tokens;
    int pieces = r->note->record->count;
    for (size_t i = from; i < to; i++)
        if (tokens->at[i].stop == STOP_COMMA || ends_statement(r, from, i, to))
            from = i + 1; // "3 of 4 cups, lining stained"
        else if (opens_count(r, from, i))
            from = i; // "one has a chip two are crazed"
    for (size_t i = from; i < to; i++) {
        size_t end;
        int n;
        if (fraction_at(r, i, share)) return true;
        if (is_other(r, i)) continue;
        bool every = token_is(tokens, i, "one") && i > from && token_is(tokens, i - 1, "every");
        if (is_no_count(tokens, i) && !every) continue;
        bool verb = i + 1 == to || token_among(tokens, i + 1, verbs, COUNT(verbs));
        bool all = every || token_is(tokens, i, "all") || token_is(tokens, i, "each");
        if (i + 1 < to && verb && token_is(tokens, i, "another") && pieces > 1)
            return *share = (struct share){1, pieces}, true;
        if (verb && all && pieces > 1) return *share = (struct share){pieces, pieces}, true;
        if (verb && token_is(tokens, i, "half") && pieces > 1 && pieces % 2 == 0 && i + 1 < to)
            return *share = (struct share){pieces / 2, pieces}, true;
        bool apart = false; // "lost both its catches and the felt is eaten"
        if (share_at(r, i, share, &end) && end <= to) {
            for (size_t k = end; k + 1 < to; k++)
                apart |= token_is(tokens, k, "and") && ANY(tokens, k + 1, "the", "its");
            if (!apart) return true;
            continue;
        }
        size_t size = amount_at(tokens, i, &n);
        size += size && ANY(tokens, i + size, "more", "others"); // "two more have"
        bool ones = token_is(tokens, i, "one's") && pieces > 1;  // "one's torn"
        bool piece = size && pieces > n && is_piece(r, i + size) && r->note->taken[i + size] != TAKEN_TYPE;
        if (ones || piece) return *share = (struct share){ones ? 1 : n, pieces}, true;
        if (size && !is_total(tokens, i) && token_among(tokens, i + size, verbs, COUNT(verbs)) &&
            (pieces > n || !pieces)) {
            *share = (struct share){n, pieces};
            return true;
        }
        // "Set of 4 cups, one cup with a chip"
        if (size && pieces > n && r->note->taken[i + size] == TAKEN_TYPE &&
            token_among(tokens, i + size + 1, verbs, COUNT(verbs)))
            return *share = (struct share){n, pieces}, true;
        size_t behind =
            size && token_is(tokens, i + size, "of") ? i + size + 1 : i + size; // "a couple of hooks"
        while (behind > i + size && owner_at(tokens, behind)) behind++;         // "three of the spanners"
        size_t parts = size && n > 1 && !is_total(tokens, i) && !pieces_is_extent(tokens, behind)
                           ? parts_at(r, behind, to)
                           : 0;
        size_t of_place, place = parts && parts < to ? spot_place_at(r, parts, &of_place) : 0;
        if (place && place <= to) parts = place; // "two of the canes at the back are"
        if (parts && (parts == to || token_among(tokens, parts, verbs, COUNT(verbs))))
            return *share = (struct share){n, 0}, true;
    }
    return false;
}

// "The biggest of the three", "the left one of the pair": one of them.
static bool one_named(const struct fault_reader *r, size_t from, size_t to, struct share *share) {
    const struct tokens *tokens = &r->note->tokens;
    if (pieces_one_named(r, from, to)) return *share = (struct share){1, r->note->record->count}, true;
    for (size_t i = from; i + 3 < to; i++) {
        size_t size = strlen(tokens->at[i + 1].fold), end;
        bool most = size > 4 && text_same(tokens->at[i + 1].fold + size - 3, "est");
        if (!token_is(tokens, i, "the") || !most || !token_is(tokens, i + 2, "of")) continue;
        int total = total_at(r, i + 3, &end);
        if (total < 2) continue;
        *share = (struct share){1, total};
        return true;
    }
    return false;
}

// "A stain on four of the ten napkins", "flea bites to both", "a chip in each".
static bool share_behind(const struct fault_reader *r, size_t i, struct share *share) {
    static const char *const words[] = {"on", "in", "to", "at", "for"};
    const struct tokens *tokens = &r->note->tokens;
    size_t to;
    int n;
    if (i > 0 && ANY(tokens, i - 1, "off", "from", "on", "in") && amount_at(tokens, i, &n))
        i--; // "paint worn off two of them"
    else if (ANY(tokens, i, "from", "off") && ANY(tokens, i + 1, "all", "both", "each"))
        i += 0; // "corks lost from all"
    else if (!token_among(tokens, i, words, COUNT(words)))
        return false;
    int many = r->note->record->count;
    size_t size = amount_at(tokens, i + 1, &n), end = i + 1 + size;
    if (size && is_piece(r, end)) end++; // "a chip in one mug"
    bool ends = end >= tokens->count || tokens->at[end].stop != STOP_NONE || token_is(tokens, end, "and");
    if (size && many > n && (ends || (token_is(tokens, end, "of") && token_is(tokens, end + 1, "them"))))
        return *share = (struct share){n, many}, true;
    if (all_but(r, i + 1, share, &to) || some_of(r, i + 1, share, &to)) return true;
    bool bare =
        (token_is(tokens, i + 1, "each") || token_is(tokens, i + 1, "both") ||
         token_is(tokens, i + 1, "all")) &&
        (i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE || token_is(tokens, i + 2, "of"));
    int pieces = r->note->record->count;
    if (bare && token_is(tokens, i + 1, "both")) return *share = (struct share){2, 2}, true;
    if (bare && pieces > 1) return *share = (struct share){pieces, pieces}, true;
    return false;
}

// "On the backs of five", "at the toes on both": the number at the end of the clause.
static bool share_at_end(const struct fault_reader *r, size_t i, struct share *share) {
    enum { FAR = 7 };
    const struct tokens *tokens = &r->note->tokens;
    int n = 0, pieces = r->note->record->count;
    bool now = i + 1 < tokens->count && tokens->at[i].stop == STOP_COMMA && token_is(tokens, i + 1, "both");
    if (now && (i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE ||
                token_phrase(tokens, i + 2, "of them")))
        return *share = (struct share){2, 2}, true;
    for (size_t at = i; at + 1 < tokens->count && at < i + FAR && tokens->at[at].stop == STOP_NONE; at++) {
        if (r->scope.fault[at] && !r->part[at]) return false;
        bool of = token_is(tokens, at, "of"), on = token_is(tokens, at, "on");
        size_t size = of || on ? amount_at(tokens, at + 1, &n) : 0, end = at + 1 + size;
        bool ends = end >= tokens->count || tokens->at[end].stop != STOP_NONE ||
                    token_phrase(tokens, end, "of them") || (on && token_is(tokens, end, "and"));
        if (size && ends && pieces > n) return *share = (struct share){n, pieces}, true;
        bool many = of && at > i && r->part[at - 1] && tokens->at[at - 1].one != tokens->at[at - 1].fold;
        if (size && ends && many && n > 1)
            return *share = (struct share){n, 0}, true; // "on the backs of four"
        bool comma = at + 2 < tokens->count && tokens->at[at + 1].stop == STOP_COMMA &&
                     token_is(tokens, at + 2, "both");
        if (comma && (at + 3 >= tokens->count || tokens->at[at + 3].stop != STOP_NONE ||
                      token_phrase(tokens, at + 3, "of them")))
            return *share = (struct share){2, 2}, true; // "handles frayed a bit, both"
        size_t all = on && token_is(tokens, at + 1, "all") ? amount_at(tokens, at + 2, &n) : 0;
        bool whole = all && (at + 2 + all >= tokens->count || tokens->at[at + 2 + all].stop != STOP_NONE);
        if (whole) return *share = (struct share){n, n}, true; // "crazing on all six"
        size_t two = on && token_is(tokens, at + 1, "the") ? amount_at(tokens, at + 2, &n) : 0;
        if (two && token_phrase(tokens, at + 2 + two, "of them") && pieces >= n)
            return *share = (struct share){n, pieces}, true; // "dull on the two of them"
        bool alone = at + 2 >= tokens->count || tokens->at[at + 2].stop != STOP_NONE;
        if (on && alone && token_is(tokens, at + 1, "both")) return *share = (struct share){2, 2}, true;
        if (on && alone && token_is(tokens, at + 1, "each") && pieces > 1)
            return *share = (struct share){pieces, pieces}, true;
    }
    return false;
}

// "Moth holes, maybe a dozen", "chips, three or so": the number alone behind a comma.
static int number_apart(const struct fault_reader *r, size_t i) {
    static const char *const about[] = {"count",  "counted",  "maybe",     "about",    "perhaps",
                                        "around", "roughly",  "say",       "at least", "i count",
                                        "some",   "probably", "i counted", "i'd say"};
    static const char *const closers[] = {"or so", "of them", "in all", "in total", "altogether", "or more"};
    enum { FAR = 6 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    while (at < tokens->count && at < i + FAR && tokens->at[at].stop == STOP_NONE) {
        if (r->scope.fault[at] && !r->part[at]) return 0;
        at++;
    }
    if (at >= tokens->count || (tokens->at[at].stop != STOP_COMMA && !ANY(tokens, at, "-", ":"))) return 0;
    at++;
    size_t first = at;
    for (size_t k = 0; k < COUNT(about); k++) at += token_phrase(tokens, at, about[k]);
    int n = 0;
    bool all = ANY(tokens, at, "all"); // "handles yellowed, all six"
    if (all) at++;
    size_t size = amount_at(tokens, at, &n), closed = 0;
    if (all) return size && (at + size >= tokens->count || tokens->at[at + size].stop != STOP_NONE) ? n : 0;
    for (size_t k = 0; size && k < COUNT(closers) && !closed; k++)
        closed = token_phrase(tokens, at + size, closers[k]);
    size_t end = at + size + closed;
    size_t word;
    while (size && degree_word(r, end, &word)) end += word; // "dents, three small ones near the spout"
    bool worst =
        end + 2 < tokens->count && tokens->at[end].stop == STOP_COMMA && ANY(tokens, end + 1, "the") &&
        ANY(tokens, end + 2, "biggest", "largest", "worst", "longest"); // "chips, three, the biggest …"
    bool ends = worst || end >= tokens->count || tokens->at[end].stop >= STOP_CLAUSE ||
                ANY(tokens, end, "ones") ||
                (closed + at > first && tokens->at[end].stop != STOP_NONE); // "holes, I count 3, all near …"
    return size && ends ? n : 0;
}

// "Cracked where it bends, two places": the number in a clause of its own.
static int places_behind(const struct tokens *tokens, size_t i) {
    enum { FAR = 8 };
    for (size_t at = i; at < tokens->count && at < i + FAR; at++) {
        if (tokens->at[at].stop >= STOP_CLAUSE) return 0;
        bool places = token_is(tokens, at + 2, "places") || token_is(tokens, at + 2, "spots");
        if (tokens->at[at].stop == STOP_COMMA && places) return degrees_number(tokens, at + 1);
    }
    return 0;
}

// "Wear in two places".
static int places_in(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t last = i + 3; // "chipped on the lip in three places": a place may stand between
    while (last < i + 9 && last - 3 < tokens->count &&
           (r->part[last - 3] || spot_article(tokens, last - 3) || spot_preposition(tokens, last - 3)))
        last++;
    for (size_t at = i > 0 && token_is(tokens, i - 1, "in") ? i - 1 : i; at + 2 < tokens->count && at < last;
         at++) {
        if (tokens->at[at].stop != STOP_NONE || (at >= i && r->scope.fault[at] && !r->part[at])) return 0;
        static const char *const about[] = {"about", "maybe", "roughly", "perhaps"};
        int n;
        size_t first = at + 1 + (token_among(tokens, at + 1, about, COUNT(about)) ? 1 : 0);
        size_t size = amount_at(tokens, first, &n), end = first + size;
        if (token_is(tokens, end, "of")) end++;
        bool places = token_is(tokens, end, "places") || token_is(tokens, end, "spots");
        if (token_is(tokens, at, "in") && size && places) return n;
    }
    return pieces_of_parts(r, i);
}

// Nothing but adjectives between the number and the fault: "two small chips", not "size 8 with chips".
static bool counts_fault(const struct fault_reader *r, size_t from, size_t to) {
    static const char *const others[] = {"of", "has", "have", "is",     "are", "inch", "in",
                                         "mm", "cm",  "with", "inches", "the", "its"};
    for (size_t k = from; k < to; k++)
        if (r->note->tokens.at[k].kind != TOKEN_WORD || r->part[k] ||
            token_among(&r->note->tokens, k, others, COUNT(others)))
            return false;
    return true;
}

// "Dents", but not the "broken" of "broken piece".
static bool is_noun(const struct flaw *kind, const char *word) {
    const char *space = kind->noun ? strrchr(kind->noun, ' ') : NULL, *head = space ? space : kind->noun;
    return (head && strstr(head, word)) || (kind->plural && strstr(kind->plural, word));
}

// "Page 31 is torn", "side 2 skips": which one, not how many.
static bool is_ordinal(const struct tokens *tokens, size_t i) {
    static const char *const kinds[] = {"page", "pages", "plate",  "side", "track", "no",      "number",
                                        "map",  "sheet", "volume", "vol",  "key",   "chapter", "size"};
    return i > 0 && tokens->at[i].kind == TOKEN_FIGURE && token_among(tokens, i - 1, kinds, COUNT(kinds));
}

static int number_before(const struct fault_reader *r, const struct fault_hit *hit, int *of) {
    static const char *const irregular[] = {"bent",  "torn",  "worn", "split", "broken", "loose",
                                            "stuck", "stiff", "dull", "dead",  "burst",  "thin",
                                            "leans", "leaks", "jams", "drips", "sticks", "rocks"};
    enum { LEAST = 3, LONGEST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t back = 1; back <= BEFORE_MOST && back <= hit->from; back++) {
        size_t i = hit->from - back, at = i;
        int n = 0;
        size_t size = 0;
        for (size_t k = 0; k < LONGEST && k <= i; k++) { // the longest that ends here: "half a dozen"
            int found;
            size_t taken = amount_at(tokens, i - k, &found);
            if (taken != k + 1) continue;
            n = found;
            size = taken;
            at = i - k;
        }
        if (ANY(tokens, i, "so") && i > 0 && ANY(tokens, i - 1, "or") && back < BEFORE_MOST) {
            back++; // "a dozen or so dents"
            continue;
        }
        if (joins(tokens, i) || (r->scope.fault[i] && !r->part[i])) break;
        if (size && (is_other(r, at) || is_one(r, hit, n) || is_no_count(tokens, at))) break;
        if (!size || is_ordinal(tokens, at) || pieces_is_time(tokens, at + size) ||
            (token_is(tokens, at + size, "of") && pieces_is_time(tokens, at + size + 1)))
            continue;
        if (is_total(tokens, at) || ANY(tokens, at + size, "cornered", "corner", "sided", "pronged", "way"))
            break;                                                         // "a three cornered tear"
        bool piece = is_piece(r, at + size) && at + size + 1 == hit->from; // "one mug chipped"
        if (piece && r->note->record->count > n) return *of = r->note->record->count, n;
        bool single = tokens->flat && n > 1 && at + size < hit->from && r->part[at + size] &&
                      tokens->at[at + size].one == tokens->at[at + size].fold;
        if (single) break; // "should be twelve handle has a split", without stops
        size_t behind = at + size + token_is(tokens, at + size, "of");
        bool pair = token_is(tokens, at, "couple") || token_is(tokens, i, "couple") ||
                    token_is(tokens, i, "pair") || token_is(tokens, i, "dozen");
        if (!counts_fault(r, pair ? behind : at + size, hit->from)) break;
        const char *word = tokens->at[hit->from].fold;
        size_t length = strlen(word);
        bool done = length > LEAST && (text_same(word + length - 2, "ed") || word[length - 1] == 'y');
        done |= token_among(tokens, hit->from, irregular, COUNT(irregular));
        bool said_of_them = at + size == hit->from && done && !is_noun(hit->kinds[0], word);
        if (said_of_them && r->note->record->count > n) *of = r->note->record->count; // "two chipped"
        return n;
    }
    return 0;
}

// "Loose at two corners", "patched at both knees": of a word for a state one at each.
static int places_named(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const words[] = {"at", "on", "in", "round", "along", "off", "across", "near"};
    const struct tokens *tokens = &r->note->tokens;
    int n = 0;
    size_t i = hit->to - 1, size;
    if (!token_among(tokens, i, words, COUNT(words))) i++;
    if (!token_among(tokens, i, words, COUNT(words)) || !degree_is_state(r, hit)) return 0;
    bool both = token_is(tokens, i + 1, "both");
    if (token_is(tokens, i + 1, "all") && amount_at(tokens, i + 2, &n)) i++; // "loose at all four corners"
    size = both ? 1 : amount_at(tokens, i + 1, &n);
    size_t part = i + 1 + size;
    if (token_is(tokens, part, "of") && ANY(tokens, part + 1, "the", "its"))
        part += 2;                                                       // "at two of the folds"
    while (size && spot_side(tokens, part) && r->part[part + 1]) part++; // "at both back corners"
    if (!size || part >= tokens->count || !r->part[part] || tokens->at[part].one == tokens->at[part].fold)
        return 0;
    return both ? 2 : n;
}

// "Missing two stones", "lost a couple of screws": the number stands in the words of the fault.
static int number_within(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    static const char *const lack[] = {"missing", "lost", "lacks", "lacking", "minus", "short"};
    bool lacks = hit->kinds[0]->form == ABSENCE || token_among(tokens, hit->from, lack, COUNT(lack));
    int less = 0; // "a dozen less two"
    if (ANY(tokens, hit->from, "less", "minus") && amount_at(tokens, hit->from + 1, &less)) return less;
    if (!lacks || hit->to < hit->from + 3) return 0;
    size_t last = hit->to - 1;
    int n;
    for (size_t k = hit->from + 1; k < last; k++) {
        size_t size = amount_at(tokens, k, &n);
        size_t noun = k + size + (token_is(tokens, k + size, "of") ? 1 : 0);
        bool part = noun == last || (noun < last && r->part[noun]); // "lost two fingers on the left hand"
        bool total = is_total(tokens, k) && !(k > 1 && token_is(tokens, k - 2, "short"));
        if (size && part && !total) return n;
    }
    return 0;
}

int count_of_hit(const struct fault_reader *r, const struct fault_hit *hit, int *of) {
    const struct tokens *tokens = &r->note->tokens;
    struct share share = {0, 0};
    *of = 0;
    if (!hit->kinds[0] || mends_with(hit, tokens, hit->from)) return 0; // "three rivets" is one mend
    if (hit->to > hit->from + 1 && ANY(tokens, hit->from, "reads", "weighs", "shows", "registers"))
        return 0; // "reads 5 psi over"
    if (hit->from > 1 && ANY(tokens, hit->from - 1, "one's", "ones") &&
        ANY(tokens, hit->from - 2, "and", ",", "but")) {
        *of = r->note->record->count > 1 ? r->note->record->count : 0;
        return 1; // "three are missing a hat and one's broken"
    }
    size_t at = token_is(tokens, hit->from, "one") ? hit->from : hit->from > 1 ? hit->from - 2 : 0;
    bool one = at > 0 && ANY(tokens, at + 1, "is", "was") && token_is(tokens, at, "one") &&
               token_is(tokens, at - 1, "and");
    if (one) { // "two have no handle and one is snapped"
        *of = r->note->record->count > 1 ? r->note->record->count : 0;
        return 1;
    }
    size_t which, behind;
    if (spot_numbered(r, hit, &which, &behind)) return 0; // "reel 3 squeaks" is the third
    int n = shorthand_times(tokens, hit->to);
    if (!n && !(n = pieces_told_apart(tokens, hit->to, of))) n = count_said_again(r, hit);
    if (!n && hit->kinds[0]->form == FAULT) n = pieces_number_named(tokens, hit->to);
    if (!n && !(n = places_behind(tokens, hit->to))) n = places_in(r, hit->to);
    if (!n && hit->kinds[0]->form == FAULT && ANY(tokens, hit->to, "twice")) n = 2; // "chipped twice"
    for (size_t k = hit->from + 1; !n && hit->kinds[0]->form == ABSENCE && k + 1 < hit->to; k++)
        if (ANY(tokens, k, "both") && r->part[k - 1]) n = 2; // "badges both missing"
    bool both = hit->kinds[0]->form == ABSENCE && token_is(tokens, hit->to, "both");
    if (!n && both && ANY(tokens, hit->to + 1, "missing", "gone", "lost", "absent")) n = 2;
    size_t start = scope_clause_start(&r->scope, hit->from), end;
    for (size_t i = start > 0 && token_is(tokens, start - 1, "but") ? start - 1 : start; !n && i < hit->from;
         i++)
        if (all_but(r, i > 0 ? i - 1 : i, &share, &end) && end <= hit->from) return *of = share.of, share.n;
    if (!n) n = number_within(r, hit);
    if (!n) n = pieces_places_within(r, hit);
    if (!n) n = pieces_number_opens(r, hit, of);
    if (!n) n = number_before(r, hit, of);
    if (!n && hit->kinds[0]->form == FAULT && !share_behind(r, hit->to, &share)) n = number_apart(r, hit->to);
    bool jacket = text_same(hit->kinds[0]->rule.id, "jacket-damage"); // one jacket, wherever
    if (!n && !jacket) n = places_named(r, hit);
    if (n && !*of) *of = pieces_some_of(r, hit);
    if (n) return n;
    if ((n = pieces_number_opening(r, hit, of)) != 0 || (n = pieces_on_number(r, hit)) != 0) return n;
    bool phrase = hit->to > hit->from + 1 && r->part[hit->from];
    size_t before = phrase ? hit->from + 1 : hit->from; // "two of the heels worn"
    if (share_before(r, start, before, &share) || one_named(r, start, hit->from, &share) ||
        share_behind(r, hit->to, &share) || share_at_end(r, hit->to, &share))
        return *of = share.of, share.n;
    return 0;
}
