// SPDX-License-Identifier: MIT
// How many of the parts lack: "brass knobs, two missing", "missing two feet", "down to four knobs out of
// six", "five hooks instead of six", "all but one of the feet are there", "two feet short", "none of its
// knobs".
#include <string.h>

#include "notes/any.h"
#include "notes/lacking.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool is_over(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           ANY(tokens, i, "but", "and", "so", "though");
}

static bool governed(const struct fault_reader *r, size_t i) {
    return r->scope.stance[i] & (STANCE_OTHER | STANCE_WITHDRAWN);
}

static bool is_plural(const struct tokens *tokens, size_t i) {
    return tokens->at[i].one != tokens->at[i].fold;
}

// Parts that lack, with their number; a rule's hit for pieces inside [from, to) is told by this.
static void tell_lack(struct fault_reader *r, const struct part_at *part, int count, int of, bool each,
                      size_t from, size_t to) {
    struct note *note = r->note;
    if (governed(r, from)) return;
    for (size_t i = 0; i < r->hit_count; i++) {
        const struct fault_hit *hit = &r->hits[i];
        if (hit->from < to && hit->to > from && hit->kinds[0]->form == ABSENCE &&
            !text_same(hit->kinds[0]->rule.id, "missing-pieces"))
            return;
    }
    const char *name = fault_words(note, part->from, part->to);
    if (count == 1 && of <= 1) name = say_singular(note->arena, name); // "7 of 8 weights": one weight
    const struct flaw *kind = absent_kind_here(r, name, each ? 1 : count > 1 ? count : of > 1 ? 2 : count);
    if (!kind) return;
    bool own = kind->part && text_same(say_singular(note->arena, name), kind->part);
    size_t owner, end; // "the base has lost two of its screws"
    const char *where = spot_owner(r, from, &owner, &end) && end < part->from && !r->note->taken[owner]
                            ? fault_words(note, owner, end)
                            : NULL;
    bool owned = where != NULL;
    if (!owned) where = lacking_place_behind(r, to > part->to ? to : part->to);
    struct item_flaw *flaw = fault_add(r, kind, own ? NULL : name, where, from, to);
    if (owned) note_take(note, owner, end, TAKEN_PART);
    if (count > 1 || of > count || is_plural(&note->tokens, part->to - 1)) flaw->count = count;
    if (of > count) flaw->of = of;
    note_take(note, part->from, part->to, TAKEN_PART);
    part_close(r, from, to);
}

void part_tell_lack(struct fault_reader *r, const struct part_at *part, int count, int of, size_t from,
                    size_t to) {
    tell_lack(r, part, count, of, false, from, to);
}

void part_tell_lack_each(struct fault_reader *r, const struct part_at *part, int count, int of, size_t from,
                         size_t to) {
    tell_lack(r, part, count, of, true, from, to);
}

// The parts that a bare number speaks of: the last that stand before it in the sentence.
static bool parts_before(const struct fault_reader *r, size_t i, struct part_at *part) {
    enum { FAR = 9 };
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, i);
    for (size_t at = i; at > start && at + FAR > i; at--) {
        size_t to = at, from = at - 1;
        size_t lead = from; // "one brass knob dented, one missing"
        while (lead > start && from - lead < 3 && tokens->at[lead - 1].stop == STOP_NONE &&
               !token_is(tokens, lead, "one"))
            lead--;
        bool one = lead < from && token_is(tokens, lead, "one") && to < i && token_is(tokens, i, "one") &&
                   tokens->at[i - 1].stop != STOP_NONE;
        if (!r->part[from] || !(one || is_plural(tokens, from)) || r->note->taken[from] == TAKEN_TYPE)
            continue;
        while (from > start && r->part[from - 1] && tokens->at[from - 1].stop == STOP_NONE) from--;
        *part = (struct part_at){from, from, to};
        return true;
    }
    return false;
}

// The part nearest before token `i` in its sentence, of which "the top one" is one.
static bool part_before_one(const struct fault_reader *r, size_t i, struct part_at *part) {
    enum { FAR = 9 };
    size_t start = scope_sentence_start(&r->scope, i);
    if (start == i && i > 1) start = scope_sentence_start(&r->scope, i - 1); // "Two handles. The left one is"
    for (size_t at = i; at > start && at + FAR > i; at--) {
        if (!r->part[at - 1] || r->note->taken[at - 1] == TAKEN_TYPE || r->scope.fault[at - 1] ||
            ANY(&r->note->tokens, at - 1, "set", "box", "lot", "case", "roll", "one", "ones") ||
            spot_side(&r->note->tokens, at - 1))
            continue;
        *part = (struct part_at){at - 1, at - 1, at};
        return true;
    }
    return false;
}

// "The tea one is missing", ", top one lost", "the flour one's gone": one of the pieces or of the parts, by
// what tells it from the others.
static bool read_which_one(struct fault_reader *r, size_t i) {
    enum { WORDS_MOST = 2 };
    static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_UNKNOWN;
    const struct tokens *tokens = &r->note->tokens;
    size_t n, at = i;
    if (i < 2 || !ANY(tokens, i, "one", "one's") || tokens->at[i].stop != STOP_NONE ||
        r->scope.stance[i] & off || !lacking_said_behind(&r->scope, i + 1, &n) ||
        absent_turns_into(r, i + 1 + n))
        return false;
    while (at > 0 && i - at < WORDS_MOST && tokens->at[at - 1].stop == STOP_NONE &&
           tokens->at[at - 1].kind != TOKEN_SIGN && (!r->scope.fault[at - 1] || spot_side(tokens, at - 1)) &&
           !absent_is_small(tokens, at - 1) &&
           !ANY(tokens, at - 1, "other", "another", "only", "just", "first", "last", "any", "not", "second"))
        at--;
    size_t lead = at > 0 && token_is(tokens, at - 1, "the") ? at - 1 : at;
    if (at == i || (lead > 0 && tokens->at[lead - 1].stop == STOP_NONE && lead == at)) return false;
    size_t end = i + 1 + n;
    if (end < tokens->count && tokens->at[end - 1].stop == STOP_NONE &&
        (r->part[end] || degrees_number(tokens, end) > 0 ||
         ANY(tokens, end, "its", "the", "a", "an", "both", "some", "all", "most", "several", "any", "of")))
        return false; // "the big one is missing its lid"
    struct part_at part;
    struct note *note = r->note;
    bool of_part = part_before_one(r, lead, &part), side = spot_side(tokens, i - 1);
    if (!of_part && note->record->count < 2 && !sets_has_pieces(note)) return false;
    if (of_part && !side && note->record->count < 2 && !is_plural(tokens, part.to - 1)) return false;
    if (!of_part || (note->record->count > 1 && !side)) {
        const struct flaw *pieces = ruleset_flaw(note->rules, "missing-pieces");
        for (size_t k = 0; k < r->hit_count; k++)
            if (r->hits[k].from < end && r->hits[k].to > i && r->hits[k].kinds[0]->form != ABSENCE)
                return false;
        if (!pieces) return false;
        fault_add(r, pieces, NULL, NULL, lead, end);
    } else {
        const char *one = say_singular(note->arena, fault_words(note, part.from, part.to)),
                   *name = side ? arena_format(note->arena, "%s %s", fault_words(note, at, i), one) : one;
        const struct flaw *kind = absent_kind_here(r, one, 1);
        if (!kind) return false;
        fault_add(r, kind, name, NULL, lead, end);
    }
    note_take(note, lead, end, TAKEN_FLAW);
    part_close(r, lead, end);
    return true;
}

// "Two missing", "one has gone", "two of them lost", "one short": no noun of its own.
static void read_bare(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    int count = degrees_number(tokens, i);
    if (ANY(tokens, i, "other", "second", "third", "fourth") && i > 0 && token_is(tokens, i - 1, "the"))
        count = 1;
    if (count < 1 || count > 40 || i == 0) return;
    size_t at = i + 1, n = 0;
    if (token_is(tokens, i, "other") && token_is(tokens, at, "one")) at++;
    if (token_phrase(tokens, at, "of them") || token_phrase(tokens, at, "of those")) at += 2;
    if (!lacking_said_behind(&r->scope, at, &n))
        n = ANY(tokens, at, "short", "down", "shy") && is_over(tokens, at + 1) ? 1 : 0;
    struct part_at part;
    bool object =
        n && at + n < tokens->count && tokens->at[at + n - 1].stop == STOP_NONE &&
        (r->part[at + n] || ANY(tokens, at + n, "the", "its", "a", "an", "one", "two", "some", "both")) &&
        ANY(tokens, at + n - 1, "missing", "lost"); // "three are missing covers", "a page"
    if (object) return;
    if (!n || absent_turns_into(r, at + n) || !parts_before(r, i, &part) || ANY(tokens, i - 1, "of", "than"))
        return;
    if (part.to == i && tokens->at[i - 1].stop == STOP_NONE && !token_is(tokens, part.to, "two") &&
        count == 0)
        return;
    if (r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN) && r->scope.cue[i] < i) return;
    part_tell_lack(r, &part, count, 0, i, at + n);
}

// "Two of the four bolts are still in it, the rest are gone", at "rest".
static bool read_rest(struct fault_reader *r, size_t i) {
    enum { FAR = 14 };
    const struct tokens *tokens = &r->note->tokens;
    size_t n, at = i, start = scope_sentence_start(&r->scope, i);
    if (!ANY(tokens, i, "rest", "others") || !lacking_said_behind(&r->scope, i + 1, &n)) return false;
    while (at > start && i - at < FAR) {
        at--;
        int some = degrees_number(tokens, at), all;
        size_t whole = at + 2 + (ANY(tokens, at + 2, "the", "its") ? 1 : 0);
        struct part_at part;
        if (!some || !token_is(tokens, at + 1, "of") || (all = degrees_number(tokens, whole)) <= some ||
            !part_named_at(r, whole + 1, &part))
            continue;
        part_tell_lack(r, &part, all - some, all, i, i + 1 + n);
        for (size_t k = at; k < part.from; k++) r->scope.stance[k] |= STANCE_OTHER; // those are there
        return true;
    }
    return false;
}

// "Two feet short", "a hook short", "wants two knobs", "needs two feet".
static void read_short(struct fault_reader *r, size_t i) {
    static const char *const wants[] = {"wants", "needs", "could do with", "would want", "requires"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, wants, COUNT(wants)), at = i + n;
    int count = degrees_number(tokens, at);
    if (!n && token_is(tokens, at, "a")) count = 1;
    struct part_at part;
    if (count < 1 || count > 40 || r->note->taken[at] == TAKEN_MEASURE) return;
    bool size = token_is(tokens, at + 2, "down") && ANY(tokens, at + 1, "handle", "bail", "lid", "flap");
    if (size && r->note->tokens.at[at].kind == TOKEN_FIGURE) return; // "11 in high, 9 handle down"
    if (!n && degrees_number(tokens, at) > 0 && at + 1 < tokens->count &&
        r->note->taken[at + 1] == TAKEN_TYPE && token_is(tokens, at + 2, "short") &&
        is_over(tokens, at + 3)) { // "two chisels short"
        const struct flaw *pieces = ruleset_flaw(r->note->rules, "missing-pieces");
        if (pieces) fault_add(r, pieces, NULL, NULL, i, at + 3)->count = count;
        part_close(r, i, at + 3);
        return;
    }
    if (!part_named_at(r, at + 1, &part) || tokens->at[part.from].kind == TOKEN_FIGURE) return;
    bool apart = at > 0 && ANY(tokens, at - 1, "is", "are") && // "the pipe is one section short"
                 !ANY(tokens, part.to - 1, "inch", "inches", "foot", "feet", "minute", "minutes", "hour",
                      "day", "bit", "little", "touch", "tad", "cm", "mm", "year", "hair", "shade");
    if (!r->part[part.to - 1] && !apart &&
        (n || r->note->taken[part.to - 1] == TAKEN_MEASURE ||
         !lacking_kind(tokens->at[part.to - 1].one, NULL)))
        return; // "two forks short", and not "two days short"
    if (ANY(tokens, part.to - 1, "battery", "batteries", "cells", "inch", "inches", "hands", "side", "sides",
            "page", "top", "bit", "end"))
        return;
    bool is_short = !n && ANY(tokens, part.to, "short", "shy", "down") && is_over(tokens, part.to + 1) &&
                    !token_is(tokens, part.to + 1, "so"); // "one leg short so it wobbles"
    bool wanted = n && is_over(tokens, part.to) && !(i > 0 && ANY(tokens, i - 1, "only", "not", "just"));
    if (token_is(tokens, at, "a") && ANY(tokens, part.from, "foot")) return;
    if (is_short && !token_phrase(tokens, part.to, "short on"))
        part_tell_lack(r, &part, count, 0, i, part.to + 1);
    else if (wanted)
        part_tell_lack(r, &part, count, 0, i, part.to);
}

// "All but one of the feet are there", "all the knobs but one".
static void read_all_but(struct fault_reader *r, size_t i) {
    static const char *const heads[] = {"all but", "all bar", "all except"};
    static const char *const here[] = {"are there",
                                       "are here",
                                       "are present",
                                       "are with it",
                                       "are left",
                                       "there",
                                       "here",
                                       "present",
                                       "remain",
                                       "survive",
                                       "are in place",
                                       "are still there",
                                       "are still on",
                                       "are on",
                                       "accounted for",
                                       "left",
                                       "is there",
                                       "is here",
                                       "are original and there",
                                       "made it",
                                       "still there",
                                       "still here"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, heads, COUNT(heads));
    int count = n ? degrees_number(tokens, i + n) : 0;
    struct part_at part;
    if (!count || !token_is(tokens, i + n + 1, "of") || !part_named_at(r, i + n + 2, &part)) return;
    size_t m = token_longest(tokens, part.to, here, COUNT(here));
    if (m && r->part[part.to - 1]) part_tell_lack(r, &part, count, 0, i, part.to + m);
}

// "All buttons bar the top one", "every knob but one": where nothing else is said of them.
static void read_all_bar(struct fault_reader *r, size_t i) {
    static const char *const but[] = {"bar",  "but",     "except", "except for", "apart from",
                                      "save", "but for", "minus",  "less"};
    static const char *const here[] = {"are there", "there",    "is there",    "present", "are present",
                                       "here",      "are here", "in place",    "intact",  "are intact",
                                       "are on",    "with it",  "are with it", "left",    "survive"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!ANY(tokens, i, "all", "every") || !part_named_at(r, i + 1, &part) || !r->part[part.to - 1]) return;
    size_t at = part.to + token_longest(tokens, part.to, here, COUNT(here));
    if (at < tokens->count && tokens->at[at].stop == STOP_COMMA) at++;
    size_t n = token_longest(tokens, at, but, COUNT(but));
    if (!n) return;
    at += n;
    int count = degrees_number(tokens, at);
    if (count)
        at++;
    else if (ANY(tokens, at, "the", "a")) { // "the top one"
        size_t one = at + 1;
        while (one < at + 4 && one < tokens->count && !token_is(tokens, one, "one") &&
               tokens->at[one].stop == STOP_NONE)
            one++;
        if (!token_is(tokens, one, "one")) return;
        count = 1;
        at = one + 1;
    }
    if (!count) return;
    size_t m = token_longest(tokens, at, here, COUNT(here));
    if (m || is_over(tokens, at)) part_tell_lack(r, &part, count, 0, i, at + m);
}

// "2 balls of 5 missing", "three hooks out of the eight gone".
static bool read_lost_of(struct fault_reader *r, size_t i, int lost) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i + 2, n = 0;
    if (!is_plural(tokens, i + 1)) return false;
    if (token_is(tokens, at, "out")) at++;
    if (!token_is(tokens, at, "of")) return false;
    at++;
    if (ANY(tokens, at, "the", "its")) at++;
    int all = degrees_number(tokens, at);
    if (ANY(tokens, at + 1, "is", "are")) at++;
    if (all <= lost || !lacking_said_behind(&r->scope, at + 1, &n) || absent_turns_into(r, at + 1 + n))
        return false;
    struct part_at part = {i + 1, i + 1, i + 2};
    part_tell_lack(r, &part, lost, 0, i, at + 1 + n);
    return true;
}

// "Down to four knobs out of six", "five hooks instead of six", "six feet originally, four now", "four of its
// six knobs".
static void read_of_whole(struct fault_reader *r, size_t i) {
    static const char *const whole[] = {"out of",
                                        "instead of",
                                        "rather than",
                                        "not",
                                        "where there should be",
                                        "and should be",
                                        "and it should be",
                                        "and there should be",
                                        "where it should be",
                                        "but should be",
                                        "out of a possible",
                                        "of what should be",
                                        "when it should be",
                                        "against"};
    static const char *const then[] = {"originally",    "once",        "when new", "to start with",
                                       "to begin with", "at one time", "from new"};
    static const char *const now[] = {"now",     "left",      "here",    "remain", "remaining",
                                      "present", "there now", "with it", "today",  "survive"};
    const struct tokens *tokens = &r->note->tokens;
    int a = degrees_number(tokens, i);
    struct part_at part;
    if (a < 1 || a > 60 ||
        (i > 0 && (degrees_number(tokens, i - 1) || ANY(tokens, i - 1, "of", "page", "no", "size", "side"))))
        return;
    if (read_lost_of(r, i, a)) return;
    if (token_is(tokens, i + 1, "of") && degrees_number(tokens, i + 2) > a &&
        part_named_at(r, i + 3, &part) && part.lead == part.from && r->part[part.to - 1] &&
        is_plural(tokens, part.to - 1)) { // "two of three springs."
        bool over = part.to >= tokens->count || tokens->at[part.to].stop != STOP_NONE ||
                    ANY(tokens, part.to, "left", "remain", "only", "here", "there", "present");
        if (over) part_tell_lack(r, &part, degrees_number(tokens, i + 2) - a, 0, i, part.to);
        return;
    }
    if (token_is(tokens, i + 1, "of") &&
        ANY(tokens, i + 2, "its", "the", "their")) { // "four of its six knobs."
        int b = degrees_number(tokens, i + 3);
        bool bare =
            i == 0 || tokens->at[i - 1].stop != STOP_NONE ||
            ANY(tokens, i - 1, "with", "has", "only", "just", "still", "got", "retains", "keeps", "have");
        if (b > a && bare && part_named_at(r, i + 4, &part) && is_plural(tokens, part.to - 1) &&
            (part.to >= tokens->count || tokens->at[part.to].stop != STOP_NONE ||
             ANY(tokens, part.to, "left", "remain", "only", "remaining", "present", "here", "survive")))
            part_tell_lack(r, &part, b - a, 0, i, part.to);
        return;
    }
    if (!part_named_at(r, i + 1, &part) || part.lead != part.from || !is_plural(tokens, part.to - 1)) return;
    static const char *const from[] = {
        "of the original",     "of the",    "of its", "of its original", "from the original",
        "out of the original", "out of the"};
    size_t f = token_longest(tokens, part.to, from, COUNT(from)), left = part.to + f;
    int all = f ? degrees_number(tokens, left) : 0; // "two jars of the original six remain"
    if (all > a &&
        (token_is(tokens, left - 1, "original") ||
         ANY(tokens, left + 1, "remain", "left", "survive", "remaining", "here", "present", "are"))) {
        if (token_is(tokens, left + 1, "are") && !ANY(tokens, left + 2, "here", "left", "there", "present"))
            return;
        part_tell_lack(r, &part, all - a, 0, i, left + 1);
        return;
    }
    int every = token_is(tokens, part.to, "of") ? degrees_number(tokens, part.to + 1) : 0;
    const char *name = every > a ? fault_words(r->note, part.from, part.to) : NULL;
    const struct flaw *kind = name ? absent_kind_here(r, name, 2) : NULL;
    if (kind && every <= 60 && is_over(tokens, part.to + 2) && !text_same(kind->rule.id, "missing-pieces")) {
        part_tell_lack(r, &part, every - a, every, i, part.to + 2); // "nine drops of ten"
        return;
    }
    if (!r->part[part.to - 1]) return;
    size_t n = token_longest(tokens, part.to, whole, COUNT(whole)), at = part.to + n;
    if (token_is(tokens, at, "of")) at++;
    int b = n ? degrees_number(tokens, at) : 0;
    if (b > a && is_over(tokens, at + 1)) {
        bool down = i > 1 && token_phrase(tokens, i - 2, "down to");
        part_tell_lack(r, &part, b - a, 0, down ? i - 2 : i, at + 1);
        return;
    }
    n = token_longest(tokens, part.to, then, COUNT(then));
    at = part.to + n;
    if (n && at < tokens->count && (tokens->at[at].stop == STOP_COMMA || ANY(tokens, at, "but", "and"))) at++;
    if (ANY(tokens, at, "only", "just")) at++;
    b = n ? degrees_number(tokens, at) : 0;
    size_t m = b && b < a ? token_longest(tokens, at + 1, now, COUNT(now)) : 0;
    if (m) part_tell_lack(r, &part, a - b, 0, i, at + 1 + m);
}

// "Finials: 2 of 3", "feet 3/4": an entry of a list.
static void read_entry(struct fault_reader *r, size_t i) {
    static const char *const of[] = {"of", "out of", "/", "from"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!r->part[i] || !is_plural(tokens, i) || r->note->taken[i] == TAKEN_TYPE) return;
    size_t from = i, at = i + 1;
    while (from > 0 && r->part[from - 1] && tokens->at[from - 1].stop == STOP_NONE) from--;
    part = (struct part_at){from, from, i + 1};
    if (ANY(tokens, at, ":", "-", "x", "=", "(")) at++;
    int a = degrees_number(tokens, at), b = 0;
    if (a && ANY(tokens, at + 1, "left", "here", "remaining", "present")) at++;
    size_t n = token_longest(tokens, at + 1, of, COUNT(of));
    if (a && n) b = degrees_number(tokens, at + 1 + n);
    size_t to = at + 2 + n;
    if (token_is(tokens, to, ")") && at > i + 1) to++;
    if (b > a && is_over(tokens, to)) part_tell_lack(r, &part, b - a, 0, from, to);
}

// "The studs are mostly there", "most of its screws are there": some lack, nobody says how many.
static void read_most(struct fault_reader *r, size_t i) {
    static const char *const most[] = {
        "mostly there",         "nearly all there",     "almost all there",
        "mostly present",       "nearly all present",   "mostly here",
        "mostly all there",     "largely there",        "are mostly there",
        "are nearly all there", "are almost all there", "are mostly present",
        "are mostly here",      "mostly still there",   "are mostly still there",
        "mostly in place",      "are mostly in place",  "are mostly on",
        "nearly all here",      "most of them there",   "most of them",
        "most there",           "are largely there",    "are for the most part there"};
    static const char *const leads[] = {"most of the",    "most of its",          "nearly all the",
                                        "almost all the", "nearly all of the",    "almost all of the",
                                        "nearly all its", "the best part of its", "the majority of the"};
    static const char *const there[] = {"are there",    "there",   "are present",     "present",
                                        "are here",     "here",    "are still there", "still there",
                                        "are in place", "remain",  "are left",        "survive",
                                        "are still on", "still on"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    size_t n = token_longest(tokens, i, leads, COUNT(leads));
    if (n) {
        if (!part_named_at(r, i + n, &part) || !r->part[part.to - 1] || !is_plural(tokens, part.to - 1))
            return;
        size_t m = token_longest(tokens, part.to, there, COUNT(there));
        if (m && is_over(tokens, part.to + m)) part_tell_lack(r, &part, 0, 0, i, part.to + m);
        return;
    }
    if (!r->part[i] || !is_plural(tokens, i) || r->note->taken[i] == TAKEN_TYPE) return;
    size_t m = token_longest(tokens, i + 1, most, COUNT(most));
    part = (struct part_at){i, i, i + 1};
    if (m && is_over(tokens, i + 1 + m)) part_tell_lack(r, &part, 0, 0, i, i + 1 + m);
}

// "Of the nine laths there are eight".
static void read_of_the(struct fault_reader *r, size_t i) {
    static const char *const have[] = {"there are", "there is",       "i have",   "we have",
                                       "only",      "there are only", "there's",  "just",
                                       "i've got",  "you get",        "we've got"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!token_is(tokens, i, "of") || !ANY(tokens, i + 1, "the", "its") ||
        (i > 0 && tokens->at[i - 1].stop == STOP_NONE))
        return;
    int all = degrees_number(tokens, i + 2);
    if (all < 2 || !part_named_at(r, i + 3, &part) || !is_plural(tokens, part.to - 1)) return;
    size_t at = part.to + (part.to < tokens->count && tokens->at[part.to].stop == STOP_COMMA ? 1 : 0);
    size_t n = token_longest(tokens, at, have, COUNT(have));
    int a = n ? degrees_number(tokens, at + n) : 0;
    size_t to = at + n + 1;
    bool left = ANY(tokens, to, "left", "remain", "here", "present");
    if (a && a < all && (left || is_over(tokens, to))) part_tell_lack(r, &part, all - a, 0, i, to);
}

// "Two of the plates, I'm told there were four", "one inkwell, space for another".
static void read_told(struct fault_reader *r, size_t i) {
    static const char *const were[] = {"there were",
                                       "there was",
                                       "it had",
                                       "it came with",
                                       "came with",
                                       "there used to be",
                                       "there should be",
                                       "sold with",
                                       "supplied with",
                                       "there would have been",
                                       "there ought to be",
                                       "they made",
                                       "it needs",
                                       "takes",
                                       "it takes",
                                       "it should have",
                                       "should have",
                                       "meant to have",
                                       "supposed to be",
                                       "it once had",
                                       "once had",
                                       "originally had",
                                       "there must have been"};
    static const char *const room[] = {"space for",  "room for",  "place for",    "places for",
                                       "slot for",   "slots for", "spaces for",   "a hole for",
                                       "holder for", "gap for",   "fittings for", "hooks for"};
    enum { FAR = 8 };
    const struct tokens *tokens = &r->note->tokens;
    int a = degrees_number(tokens, i), b = 0;
    if (a < 1 || a > 40 || r->note->taken[i] == TAKEN_MEASURE) return;
    size_t at = i + 1, end = 0;
    if (token_is(tokens, at, "of")) at++;
    struct part_at part;
    if (!part_named_at(r, at, &part) || (a > 1 && !is_plural(tokens, part.to - 1))) return;
    if (part.to < tokens->count && !(tokens->at[part.to].stop == STOP_COMMA ||
                                     ANY(tokens, part.to, "but", "and", "(", "-", "with", "when", "where")))
        return;
    for (size_t k = part.to; k < part.to + FAR && k < tokens->count && tokens->at[k].stop < STOP_SENTENCE;
         k++) {
        if (r->scope.fault[k] && !r->part[k]) return;
        size_t n = token_longest(tokens, k, were, COUNT(were)),
               m = n ? 0 : token_longest(tokens, k, room, COUNT(room));
        if (n && (b = degrees_number(tokens, k + n)) > a && is_over(tokens, k + n + 1)) end = k + n + 1;
        if (m && ANY(tokens, k + m, "another", "one", "a", "the") &&
            (is_over(tokens, k + m + 1) ||
             (ANY(tokens, k + m + 1, "second", "other", "third", "fourth", "more") &&
              is_over(tokens, k + m + 2))))
            b = a + 1, end = k + m + 1;
        int more = m ? degrees_number(tokens, k + m) : 0;
        if (more > 1) {
            bool extra = token_is(tokens, k + m + 1, "more") || token_is(tokens, k + m + 1, "others");
            if (extra || (more > a && is_over(tokens, k + m + 1)))
                b = extra ? a + more : more, end = k + m + 1;
        }
        if (end) {
            part_tell_lack(r, &part, b - a, 0, i, end);
            return;
        }
    }
}

// "None of its feet", "not one of the knobs": where nothing more is said of them.
static void read_none(struct fault_reader *r, size_t i) {
    static const char *const none[] = {"none of its",
                                       "none of the",
                                       "not one of its",
                                       "not one of the",
                                       "none of their",
                                       "not a single one of its",
                                       "not one of the original",
                                       "none of the original"};
    static const char *const here[] = {
        "left",          "here",         "present",   "included",    "remain",       "survive", "remaining",
        "with it",       "came with it", "are here",  "are present", "are included", "is here", "are with it",
        "have survived", "survived",     "are there", "is there",    "are left",     "is left"};
    const struct tokens *tokens = &r->note->tokens;
    bool neither = token_is(tokens, i, "neither"); // "neither handle is there"
    size_t n = neither ? 1 : token_longest(tokens, i, none, COUNT(none));
    struct part_at part;
    if (!n || !part_named_at(r, i + n, &part) || !r->part[part.to - 1] ||
        is_plural(tokens, part.to - 1) == neither)
        return;
    size_t m = token_longest(tokens, part.to, here, COUNT(here)), to = part.to + m;
    bool start = i == 0 || tokens->at[i - 1].stop != STOP_NONE ||
                 ANY(tokens, i - 1, "but", "with", "and", "has", "have", "got");
    if ((m || (start && !neither)) && is_over(tokens, to) &&
        !(to < tokens->count && token_is(tokens, to, "?")))
        part_tell_lack(r, &part, neither ? 2 : 0, 0, i, to);
}

void read_tally(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        const struct token *t = &r->note->tokens.at[i];
        if (t->kind == TOKEN_SIGN || governed(r, i)) continue;
        if (t->kind == TOKEN_WORD && strchr("mlswa", t->fold[0]) && amount_lacks(r, i)) continue;
        if (r->part[i] && t->one != t->fold) read_entry(r, i);
        if (t->kind == TOKEN_WORD) read_most(r, i);
        if (!(t->kind == TOKEN_FIGURE || strchr("aotfsnwecrdlih", t->fold[0]))) continue;
        read_all_but(r, i);
        read_all_bar(r, i);
        read_none(r, i);
        if (read_which_one(r, i) || read_rest(r, i)) continue;
        if (!governed(r, i)) read_short(r, i);
        if (!governed(r, i)) read_of_whole(r, i);
        if (!governed(r, i)) read_told(r, i);
        if (!governed(r, i)) read_of_the(r, i);
        if (!governed(r, i)) read_bare(r, i);
    }
    read_some_have(r);
}
