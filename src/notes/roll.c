// SPDX-License-Identifier: MIT
// Lists of parts that lack: "no lid, strap or key", "minus its lid and key", "strap, key and lid missing",
// "missing: key, one drawer". One word says it of all of them.
#include <string.h>

#include "notes/any.h"
#include "notes/lacking.h"
#include "notes/traces.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

enum { ITEMS_MOST = 8 };

// Behind the last item: nothing more, or what adds nothing.
static bool closes(const struct tokens *tokens, size_t i) {
    static const char *const tails[] = {
        "with", "included", "present", "sadly",   "i'm", "unfortunately", "here", "there",  "on",
        "to",   "at",       "but",     "came",    "so",  "for",           "from", "though", "alas",
        "in",   "when",     "though",  "anymore", "any", "now",           "i",    "which"};
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || tokens->at[i].kind == TOKEN_SIGN ||
           AMONG(tokens, i, tails);
}

// A joint of the list at `i`: how many tokens, 0 if none; `*last` when it is the one before the last item.
static size_t joint_at(const struct tokens *tokens, size_t i, bool no, bool *last) {
    static const char *const ors[] = {"or", "nor", "/", "&/or"}, *const ands[] = {"and", "&", "+", "plus"};
    size_t n = i < tokens->count && tokens->at[i].stop == STOP_COMMA ? 1 : 0;
    *last = AMONG(tokens, i + n, ors) || (!no && AMONG(tokens, i + n, ands));
    return n + (*last ? 1 : 0);
}

// "No bow or cup in it" of a board: a fault, and no part.
static bool is_bent(const struct fault_reader *r, size_t i) {
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from <= i && i < r->hits[k].to && r->hits[k].kinds[0]->form != ABSENCE &&
            r->hits[k].denied)
            return true;
    return false;
}

static bool item_at(const struct fault_reader *r, size_t i, struct part_at *part) {
    if (ANY(&r->note->tokens, i, "no", "any", "even", "indeed")) i++;
    if (!part_named_at(r, i, part)) return false;
    for (size_t k = part->from; k < part->to; k++)
        if (r->scope.fault[k] && (!r->part[k] || is_bent(r, k))) return false;
    return true;
}

bool part_is_other_stuff(const struct tokens *tokens, size_t no) {
    enum { FAR = 5 };
    size_t at = no + 1;
    if (!ANY(tokens, no, "no", "nope", "not") || at >= tokens->count) return false;
    if (tokens->at[at].stop == STOP_COMMA) at++;
    if (ANY(tokens, at, "just", "only", "it's", "its", "it", "that's", "they're", "rather", "merely"))
        return tokens->at[at].stop == STOP_NONE;
    while (at < tokens->count && at < no + FAR && tokens->at[at].stop == STOP_NONE) at++;
    return ANY(tokens, at - 1, "ones");
}

// "Strap, battery cover: no".
static bool told_no(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, ":", "-", "=", "?") &&
           ANY(tokens, i + 1, "no", "nope", "missing", "gone", "none", "absent", "lost") &&
           (i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE) &&
           !part_is_other_stuff(tokens, i + 1);
}

// The items from `i` on; how many, 0 where it is no list: under no heading it has to be closed by "and",
// "or".
static size_t items_from(const struct fault_reader *r, size_t i, bool no, bool heading,
                         struct part_at *items) {
    const struct tokens *tokens = &r->note->tokens;
    size_t count = 0;
    bool ended = false;
    while (count < ITEMS_MOST && item_at(r, i, &items[count])) {
        i = items[count++].to;
        bool last = false;
        size_t n = joint_at(tokens, i, no, &last);
        if (heading && !n && token_is(tokens, i, ";")) n = 1;
        struct part_at next;
        if (!n || !item_at(r, i + n, &next)) break;
        if (last && !heading && ANY(tokens, i + n, "the", "its") && scope_states_own(tokens, i + n))
            break; // "its guard and the rest on the right has been bent"
        ended |= last;
        i += n;
    }
    if (heading || told_no(tokens, i)) return count;
    return count > 1 && ended ? count : 0;
}

static bool is_off(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"not",     "isn't",   "aren't", "never",   "hasn't", "wasn't",
                                        "nothing", "don't",   "if",     "whether", "when",   "doesn't",
                                        "didn't",  "haven't", "won't",  "isnt",    "cannot"};
    uint16_t stance = r->scope.stance[i];
    return (i > 0 && AMONG(&r->note->tokens, i - 1, words)) || (stance & (STANCE_OTHER | STANCE_WITHDRAWN)) ||
           ((stance & STANCE_UNKNOWN) && !(i > 0 && token_is(&r->note->tokens, i - 1, "where")));
}

// Does a rule tell that this part lacks?
static bool has_hit(const struct fault_reader *r, size_t from, size_t to) {
    for (size_t i = 0; i < r->hit_count; i++)
        if (r->hits[i].from < to && r->hits[i].to > from && r->hits[i].kinds[0]->form == ABSENCE) return true;
    return false;
}

static void tell_items(struct fault_reader *r, const struct part_at *items, size_t count, size_t cue_from,
                       size_t cue_to) {
    for (size_t k = 0; k < count; k++) {
        bool first = cue_to <= items[k].lead && k == 0, last = cue_from >= items[k].to && k + 1 == count;
        size_t from = first ? cue_from : items[k].lead, to = last ? cue_to : items[k].to;
        if (!has_hit(r, from, to)) part_tell_missing(r, &items[k], from, to);
    }
}

// "No lid, strap or key", "without its strap and key", "neither lid nor key".
static void read_before(struct fault_reader *r, size_t i) {
    static const char *const more[] = {"used to have",   "once had",          "neither",
                                       "everything but", "everything except", "everything bar",
                                       "all there bar",  "all but the",       "nothing missing but",
                                       "has neither",    "nothing but the",   "needs",
                                       "wants",          "i've lost",         "have lost",
                                       "i haven't got",  "i don't have",      "doesn't include",
                                       "excludes",       "not including",     "there's neither",
                                       "with neither",   "got neither"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n, m = token_longest(tokens, i, more, COUNT(more));
    if (!lacking_said_before(&r->scope, i, &n)) n = 0;
    if (m > n) n = m;
    while (n > 1 &&
           ANY(tokens, i + n - 1, "the", "its", "a", "an", "one", "two", "any", "their", "three", "both"))
        n--;
    bool no = token_is(tokens, i + n - 1, "no");
    struct part_at items[ITEMS_MOST];
    if (!n || tokens->at[i + n - 1].stop != STOP_NONE || is_off(r, i)) return;
    size_t count = items_from(r, i + n, no, false, items);
    if (count > 1 && closes(tokens, items[count - 1].to)) tell_items(r, items, count, i, i + n);
}

// "Missing: key, one small drawer", "Not here: strap".
static void read_heading(struct fault_reader *r, size_t i) {
    static const char *const heads[] = {"missing",
                                        "not with it",
                                        "not here",
                                        "lacks",
                                        "lacking",
                                        "absent",
                                        "gone",
                                        "lost",
                                        "wanting",
                                        "not included",
                                        "what's missing",
                                        "whats missing",
                                        "doesn't have",
                                        "without",
                                        "not there",
                                        "missing parts",
                                        "missing bits",
                                        "parts missing",
                                        "bits missing",
                                        "things missing",
                                        "missing pieces",
                                        "known missing",
                                        "not present",
                                        "not supplied",
                                        "minus",
                                        "needs",
                                        "wants",
                                        "still needs",
                                        "lost over the years",
                                        "no longer with it",
                                        "known to be missing"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, heads, COUNT(heads)), at = i + n;
    bool start =
        i == 0 || tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "is", "are", "-", "*", "•");
    if (!n || !start || !ANY(tokens, at, ":", "?", "-", "=", "–", "—") || is_off(r, i)) return;
    if (token_is(tokens, at, "-") && tokens->at[at].joined) return;
    at++;
    while (ANY(tokens, at, "only", "just", "yes", ",", "the", "well", "-")) at++;
    struct part_at items[ITEMS_MOST];
    size_t count = items_from(r, at, false, true, items);
    if (count) tell_items(r, items, count, i, i + n);
}

// "Strap, key and lid missing", "the strap and the key have both gone".
static void read_behind(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    struct part_at items[ITEMS_MOST];
    bool start =
        i == 0 || tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "but", "where", "though", "and");
    if (!start) return;
    if (!r->part[i] && !ANY(tokens, i, "the", "its", "both", "two", "one", "three") &&
        !(i + 2 < tokens->count && r->part[i + 1] && tokens->at[i + 2].stop == STOP_COMMA))
        return;
    size_t count = items_from(r, i, false, false, items), n;
    if (!count) return;
    size_t at = items[count - 1].to;
    if (ANY(tokens, at, "both", "all")) at++;
    bool asked = i > 0 && token_is(tokens, i - 1, "where") &&
                 ANY(tokens, at, "went", "are", "is", "got", "have", "ended");
    if (told_no(tokens, at))
        n = 2;
    else if (!lacking_said_behind(&r->scope, at, &n)) {
        if (!asked || !closes(tokens, at + (ANY(tokens, at, "got", "ended", "have") ? 2 : 1))) return;
        n = ANY(tokens, at, "got", "ended", "have") ? 2 : 1;
    }
    if (absent_turns_into(r, at + n) || (i > 0 && ANY(tokens, i - 1, "with", "no", "has", "of", "or")) ||
        is_off(r, i))
        return;
    for (size_t k = at; k < at + n; k++)
        if (ANY(tokens, k, "not", "isn't", "aren't") && token_is(tokens, at + n - 1, "missing")) return;
    for (size_t k = 0; k < r->hit_count; k++) { // "strap … gone" as damage of the strap alone
        const struct fault_hit *hit = &r->hits[k];
        if (hit->from >= i && hit->from < at + n && hit->kinds[0]->form != ABSENCE && hit->to > at)
            part_close(r, hit->to - 1, hit->to);
    }
    tell_items(r, items, count, at, at + n);
}

// "Handles (2) missing", "one weight (the 1 oz) is gone", "the pan (see picture) is lost".
static void read_bracketed(struct fault_reader *r, size_t i) {
    enum { WORDS_MOST = 5 };
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    size_t n, at = i + 1;
    if (i == 0 || tokens->at[i - 1].kind != TOKEN_WORD) return;
    while (at < tokens->count && at <= i + WORDS_MOST && !token_is(tokens, at, ")") &&
           tokens->at[at].stop < STOP_SENTENCE)
        at++;
    if (!token_is(tokens, at, ")") || !lacking_said_behind(&r->scope, at + 1, &n) ||
        absent_turns_into(r, at + 1 + n))
        return;
    size_t from = i;
    while (from > 0 && i - from < 3 && tokens->at[from - 1].stop == STOP_NONE &&
           (r->part[from - 1] || r->note->taken[from - 1] == TAKEN_VALUE))
        from--;
    if (from == i) from--;
    if (!part_named_at(r, from, &part) || part.to != i) return;
    int count = at == i + 2 ? degrees_number(tokens, i + 1) : 0;
    struct item_flaw *flaw = part_tell_missing(r, &part, from, at + 1 + n);
    if (flaw && count) flaw->count = count;
}

void read_roll(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        if (token_is(&r->note->tokens, i, "(")) read_bracketed(r, i);
        if (r->note->tokens.at[i].kind != TOKEN_WORD) continue;
        read_before(r, i);
        read_heading(r, i);
        read_behind(r, i);
    }
}
