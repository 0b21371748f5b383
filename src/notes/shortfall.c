// SPDX-License-Identifier: MIT
// How many should be there and how many are: "should be seven weights, there's six", "two knobs, should be
// three", "27 of the 28 are here", "nine pegs and the bag says ten". What lacks is missing, with its number.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/number.h"
#include "notes/things.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Before the number that belongs to the whole.
static const char *const wholes[] = {"should be",
                                     "supposed to be",
                                     "meant to be",
                                     "ought to be",
                                     "should have been",
                                     "should have",
                                     "meant to have",
                                     "supposed to have",
                                     "used to be",
                                     "box says",
                                     "bag says",
                                     "label says",
                                     "lid says",
                                     "list says",
                                     "list calls for",
                                     "calls for",
                                     "catalogue says",
                                     "leaflet says",
                                     "sheet says",
                                     "it says",
                                     "says there should be",
                                     "originally",
                                     "made for",
                                     "was",
                                     "were",
                                     "holds"};

struct amount {
    size_t at; // token of the number
    int value;
};

// The next number from `i` on, before `end`; its value is 0 if there is none.
static struct amount number_from(const struct fault_reader *r, size_t i, size_t end) {
    const struct tokens *tokens = &r->note->tokens;
    for (; i < end && i < tokens->count; i++) {
        int value = degrees_number(tokens, i);
        if (!value && (token_is(tokens, i, "pair") || token_is(tokens, i, "couple"))) value = 2;
        bool other = (token_is(tokens, i + 1, "of") && !token_is(tokens, i + 2, "them")) ||
                     r->note->taken[i] == TAKEN_MEASURE || r->note->taken[i] == TAKEN_MARK ||
                     r->note->taken[i] == TAKEN_ASIDE;
        if (value && !other) return (struct amount){i, value};
    }
    return (struct amount){end, 0};
}

// The noun behind a number: "six blue plates" to behind "plates"; empty where none stands there.
static size_t noun_behind(const struct fault_reader *r, size_t i, size_t *from) {
    enum { ADJECTIVES_MOST = 2 };
    const struct tokens *tokens = &r->note->tokens;
    struct noun_found noun;
    for (size_t at = i + 1; at < tokens->count && at <= i + 1 + ADJECTIVES_MOST; at++) {
        if (tokens->at[at].stop != STOP_NONE || r->scope.fault[at]) return 0;
        if (ANY(tokens, at, "left", "here", "there", "remain", "remaining", "present")) return 0;
        if (degrees_number(tokens, at)) continue; // "two of the four knobs": not the four knobs
        size_t parts = absent_part(r, at);
        *from = at;
        if (parts) return at + parts;
        if (noun_at(r->note, at, &noun)) return noun.to;
    }
    return 0;
}

// "Three of the four castors" may have been read by the words of its kind: then it only learns of how many.
static bool is_told(struct fault_reader *r, const struct flaw *kind, const char *part, int lacks, int of) {
    struct record *record = r->note->record;
    for (size_t i = 0; part && i < record->flaw_count; i++) {
        struct item_flaw *flaw = &record->flaws[i];
        if (flaw->kind != kind || !flaw->part || (flaw->count && flaw->count != lacks)) continue;
        if (!text_same(say_singular(r->note->arena, flaw->part), say_singular(r->note->arena, part)))
            continue;
        flaw->part = part;
        flaw->count = lacks;
        flaw->of = of;
        return true;
    }
    return false;
}

static void tell_lack(struct fault_reader *r, const struct amount *whole, const struct amount *here,
                      size_t cue_from, size_t cue_to) {
    struct note *note = r->note;
    size_t from = 0, to = noun_behind(r, here->at, &from);
    if (!to) to = noun_behind(r, whole->at, &from);
    size_t head = here->at > 1 && note->tokens.at[here->at - 1].stop != STOP_NONE ? here->at - 2 : 0;
    if (!to && head && note->tokens.at[head + 1].stop < STOP_SENTENCE && r->part[head] &&
        note->tokens.at[head].one != note->tokens.at[head].fold) { // "studs, three out of four left"
        from = head;
        to = head + 1;
    }
    const char *part = to ? fault_words(note, from, to) : NULL;
    int lacks = whole->value - here->value;
    if (to && note->taken[to - 1] == TAKEN_TYPE) part = NULL; // "one candlestick that used to be two"
    const struct flaw *pieces = ruleset_flaw(note->rules, "missing-pieces"),
                      *kind = part ? absent_kind_here(r, part, lacks) : pieces;
    if (kind && lacks == 1 && kind == ruleset_flaw(note->rules, "missing-accessory") &&
        absent_kind_here(r, part, 2) == pieces)
        kind = pieces;
    if (!kind || is_told(r, kind, part, lacks, whole->value)) return;
    size_t said = note->tokens.at[cue_from].from, ends = note->tokens.at[cue_to - 1].to;
    struct item_flaw *flaw = NULL;
    for (size_t i = 0; i < note->record->flaw_count && !flaw; i++) { // "should be ten" by the words of a rule
        struct item_flaw *known = &note->record->flaws[i];
        bool same = known->kind == pieces && !known->count && !known->part;
        if (same && known->span.from <= said && known->span.to >= ends) flaw = known;
    }
    bool named =
        part && to == from + 1 && !ANY(&note->tokens, from, "piece", "pieces", "pcs", "parts", "bits");
    if (flaw) {
        flaw->kind = kind;
        flaw->part = kind == pieces && !named ? NULL : part;
    } else
        flaw = fault_add(r, kind, kind == pieces && !named ? NULL : part, NULL, cue_from, cue_to);
    flaw->count = lacks;
    flaw->of = flaw->part ? whole->value : 0;
    note_take(note, here->at, here->at + 1, TAKEN_FLAW);
    note_take(note, whole->at, whole->at + 1, TAKEN_FLAW);
    if (to) note_take(note, from, to, TAKEN_PART);
}

static bool is_number_said(const struct tokens *tokens, size_t i) {
    static const char *const articles[] = {"a", "an", "the", "there"};
    size_t skip = token_among(tokens, i, articles, COUNT(articles)) ? 1 : 0;
    return degrees_number(tokens, i + skip) > 0 || (skip && token_is(tokens, i + skip, "pair"));
}

// "There should be nine pegs and three are missing": how many lack, and not how many are there.
static bool is_number_lost(const struct tokens *tokens, size_t i) {
    enum { WORDS_MOST = 5 };
    for (size_t k = i + 1; k <= i + WORDS_MOST && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++) {
        if (ANY(tokens, k, "missing", "gone", "lost", "short", "absent", "lacking")) return true;
        if (ANY(tokens, k, "here", "left", "there", "and", "but", "not", "with")) return false;
    }
    return false;
}

// "Should be seven weights, there's six", "two knobs, should be three".
static void read_should(struct fault_reader *r, size_t i) {
    enum { FAR = 9 };
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_first(tokens, i, wholes, COUNT(wholes));
    bool ends = tokens->count > i + n + 1 && tokens->at[i + n + 1].kind == TOKEN_SIGN;
    bool were = token_is(tokens, i, "was") || token_is(tokens, i, "were"); // "eleven, was a dozen"
    if (were && i > 0 &&
        ANY(tokens, i - 1, "she", "he", "i", "we", "they", "you", "it", "child", "boy", "girl"))
        return; // "till she was twelve": somebody's age
    ends |= were && ANY(tokens, i + n + 1, "once", "originally", "before");
    if (!n || !is_number_said(tokens, i + n) || (were && !ends && !token_is(tokens, i + n + 1, "dozen")))
        return;
    struct amount whole = number_from(r, i + n, i + n + 2), here = {0, 0};
    size_t start = i > FAR ? i - FAR : 0, sentence = scope_sentence_start(&r->scope, i);
    if (sentence && i < sentence + 3)
        sentence = scope_sentence_start(&r->scope, sentence - 1); // "11 in it. Should be 12."
    for (size_t at = start > sentence ? start : sentence; at < i; at++) {
        struct amount before = number_from(r, at, i); // "seven slats, three rotten, should be nine"
        if (before.value && (before.value > here.value || here.value >= whole.value)) here = before;
    }
    for (size_t at = whole.at + 1; at < whole.at + FAR && at + 1 < tokens->count; at++) {
        if (tokens->at[at].stop >= STOP_SENTENCE) break;
        int count = degrees_number(tokens, at + 1); // "should be six but I count five"
        if (count && count < whole.value &&
            ANY(tokens, at, "count", "counted", "counts", "find", "see", "only"))
            here = (struct amount){at + 1, count};
    }
    int all = r->note->record->count; // "the other two have chips. Should be five."
    if (here.value && all > here.value && all < whole.value) here.value = all;
    if (!here.value || here.value >= whole.value) {
        struct amount behind = number_from(r, whole.at + 1, whole.at + FAR);
        if (behind.value) here = behind;
    }
    if (here.value < whole.value && is_number_lost(tokens, here.at)) here.value = whole.value - here.value;
    if (whole.value && here.value && here.value < whole.value) tell_lack(r, &whole, &here, i, i + n);
}

// "Knobs: three of the four.": behind the name of the parts, and nothing else said of them.
static bool read_headed(struct fault_reader *r, const struct amount *whole, const struct amount *here) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = here->at, end = whole->at + 1;
    bool parted = i > 1 && tokens->at[i - 1].stop != STOP_NONE && tokens->at[i - 1].stop < STOP_SENTENCE;
    if (!parted || !r->part[i - 2] || tokens->at[i - 2].one == tokens->at[i - 2].fold ||
        r->note->taken[i - 2] == TAKEN_TYPE || (end < tokens->count && tokens->at[end].stop == STOP_NONE))
        return false;
    int lacks = whole->value - here->value;
    const char *part = tokens->at[i - 2].one;
    const struct flaw *kind = absent_kind_here(r, part, lacks);
    if (!kind) return false;
    struct item_flaw *flaw = fault_add(r, kind, part, NULL, i, end);
    if (flaw) flaw->count = lacks;
    note_take(r->note, i, end, TAKEN_FLAW);
    return true;
}

// "Only 27 of the 28 are here", "five of six left".
static void read_of(struct fault_reader *r, size_t i) {
    static const char *const stays[] = {"here",      "left",    "present", "remain",
                                        "remaining", "survive", "there",   "surviving"};
    static const char *const determiners[] = {"the", "its", "original", "a"};
    enum { FAR = 5 };
    const struct tokens *tokens = &r->note->tokens;
    int value = degrees_number(tokens, i);
    bool left =
        ANY(tokens, i + 1, "left", "remaining") && token_is(tokens, i + 2, "of"); // "seven left of eight"
    if (value && token_is(tokens, i + 2, "of") && (i == 0 || tokens->at[i - 1].stop != STOP_NONE) &&
        degrees_number(tokens, i + 3) > value && !r->scope.fault[i + 1] &&
        !ANY(tokens, i + 1, "racks", "rows", "boxes", "packs", "trays", "sets", "pairs", "tins", "bags",
             "rolls", "stacks", "tiers", "banks", "strings", "bundles", "lots",
             "cases") &&                                                   // "two racks of four"
        (i + 4 >= tokens->count || tokens->at[i + 4].stop != STOP_NONE)) { // "five weights of six."
        struct amount some = {i, value}, all = {i + 3, degrees_number(tokens, i + 3)};
        tell_lack(r, &all, &some, i, i + 3);
        return;
    }
    if (!value || !token_is(tokens, i + 1 + left, "of")) return;
    size_t at = i + 2 + left;
    while (at < i + 6 && token_among(tokens, at, determiners, COUNT(determiners))) at++;
    struct amount here = {i, value}, whole = {at, degrees_number(tokens, at)};
    if (whole.value <= value || read_headed(r, &whole, &here)) return;
    bool stayed = i > 0 && ANY(tokens, i - 1, "only", "just", "counted", "find", "found");
    size_t cue = i - (stayed ? 1 : 0);
    stayed |= left;
    for (size_t k = at + 1; k < at + FAR && k < tokens->count && !stayed; k++) {
        if (tokens->at[k].stop != STOP_NONE || r->scope.fault[k]) break;
        stayed = token_among(tokens, k, stays, COUNT(stays));
    }
    for (size_t k = at + 1; k < at + FAR && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
        if (r->scope.fault[k] || r->note->taken[k] == TAKEN_FLAW)
            return; // "only two of the six are chipped", "only one of the two turns"
    if (stayed) tell_lack(r, &whole, &here, cue, i + 2);
}

// "Two rubber feet left out of four", "three hooks here out of the six".
static void read_out_of(struct fault_reader *r, size_t i) {
    static const char *const stays[] = {"left", "here", "remain", "remaining", "there", "present", "survive"};
    enum { BACK = 6 };
    const struct tokens *tokens = &r->note->tokens;
    size_t number = i + (token_is(tokens, i + 2, "the") ? 3 : 2);
    if (!i || !token_is(tokens, i, "out") || !token_is(tokens, i + 1, "of")) return;
    struct amount whole = {number, degrees_number(tokens, number)}, here = {0, 0};
    bool stayed = token_among(tokens, i - 1, stays, COUNT(stays)) ||
                  token_among(tokens, number + 1, stays, COUNT(stays));
    for (size_t at = i; whole.value && at-- > 0 && at + BACK > i;) {
        if (at + 1 < i && tokens->at[at].stop != STOP_NONE) break;
        if (r->scope.fault[at] && !r->part[at] && !token_among(tokens, at, stays, COUNT(stays))) return;
        stayed |= ANY(tokens, at, "only", "just");
        if (!degrees_number(tokens, at)) continue;
        here = (struct amount){at, degrees_number(tokens, at)};
        stayed |= at > 0 && ANY(tokens, at - 1, "only", "just");
        break;
    }
    bool opens = here.value && (here.at == 0 || tokens->at[here.at - 1].stop != STOP_NONE);
    stayed |= opens && here.at + 3 > i &&
              (number + 1 >= tokens->count || // "Nine balls out of ten."
               tokens->at[number + 1].stop != STOP_NONE);
    if (stayed && here.value && whole.value > here.value) tell_lack(r, &whole, &here, i, number + 1);
}

// --- of a thing that is known by its pieces: "748 of 750 pieces", "27 of 28", ", 2 missing" ---

static bool is_of_pieces(const struct note *note) { // a thing that is known by its pieces
    const struct record *r = note->record;
    if (r->family && text_same(r->family->rule.id, "games-puzzles")) return true;
    static const char *const sets[] = {"set", "service", "puzzle", "cutlery", "flatware", "dominoes", "deck"};
    const char *type = r->type.value ? r->type.value : "", *last = strrchr(type, ' ');
    for (size_t k = 0; k < sizeof sets / sizeof *sets; k++)
        if (text_same(last ? last + 1 : type, sets[k])) return true;
    return false;
}

// "Set of weights", "spoons": goods of which some may lack.
static bool is_several(const struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count && tokens->at[i].stop < STOP_SENTENCE; i++) {
        if (token_phrase(tokens, i, "set of")) return true;
        if (note->taken[i] == TAKEN_TYPE && tokens->at[i].one != tokens->at[i].fold) return true;
    }
    return false;
}

static bool is_known(const struct record *record, const struct flaw *kind) {
    for (size_t i = 0; i < record->flaw_count; i++)
        if (record->flaws[i].kind == kind) return true;
    return false;
}

static bool ends(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

// "748 of 750 pieces": how many are short; 0 where none is said to be.
static int short_at(const struct note *note, size_t i, int *of, size_t *to) {
    const struct tokens *tokens = &note->tokens;
    size_t a, b;
    int have = number_whole(tokens, i, &a);
    if (!have) return 0;
    size_t at = i + a;
    if (ends(note, i + a + 1) && ANY(tokens, at, "missing", "short", "lost", "gone")) {
        bool apart = i > 0 && tokens->at[i - 1].stop != STOP_NONE;
        *of = 0;
        *to = at + 1;
        return apart && have < 50 ? have : 0;
    }
    // "3 balls of 4"
    bool named = at + 1 < tokens->count && tokens->at[at].kind == TOKEN_WORD &&
                 tokens->at[at].one != tokens->at[at].fold && token_is(tokens, at + 1, "of") &&
                 !ANY(tokens, at, "tins", "boxes", "packs", "packets", "rolls", "bags", "cases", "trays",
                      "sets", "pairs", "rows", "racks", "tiers"); // those hold so many
    if (named) at++;
    if (!token_is(tokens, at, "of")) return 0;
    if (token_is(tokens, at + 1, "the")) at++;
    *of = number_whole(tokens, at + 1, &b);
    bool known = is_of_pieces(note);
    if (*of <= have || *of < (named || !known ? 4 : 8) || *of - have > *of / 2) return 0;
    at += 1 + b;
    if (ANY(tokens, at, "pieces", "pcs", "cards", "tiles", "men", "counters", "dominoes")) at++;
    if (ANY(tokens, at, "there", "here", "present", "left", "counted", "in", "total")) at++;
    *to = at;
    bool apart = i > 0 && note->tokens.at[i - 1].stop != STOP_NONE; // "weights, 7 of 8"
    return ends(note, at) && (known || apart) ? *of - have : 0;
}

static void read_short(struct note *note) {
    const struct flaw *kind = ruleset_flaw(note->rules, "missing-pieces");
    if (!kind || (!is_of_pieces(note) && !is_several(note)) || is_known(note->record, kind)) return;
    for (size_t i = 0; i < note->tokens.count; i++) {
        int of;
        size_t to;
        if (note->taken[i] != TAKEN_NOT || (i && ANY(&note->tokens, i - 1, "of", "page", "side"))) continue;
        int count = short_at(note, i, &of, &to);
        if (!count || !note_free(note, i, to)) continue;
        struct item_flaw *flaw = note_flaw(note);
        *flaw = (struct item_flaw){.kind = kind, .count = count, .of = of, .span = note_span_of(note, i, to)};
        note_take(note, i, to, TAKEN_FLAW);
        note_reading(note, i, to, "flaw missing-pieces", "fewer pieces than belong to it");
        return;
    }
}

// "Numbers in a box. Few numbers short": a noun of no list that the note has named before.
static void read_short_again(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    int count = degrees_number(tokens, i);
    bool couple = token_is(tokens, i, "couple") && token_is(tokens, i + 1, "of");
    if (count < 1 && !couple && !ANY(tokens, i, "few", "some", "several")) return;
    size_t noun = i + (couple ? 2 : 1);
    if (noun + 1 >= tokens->count || !ANY(tokens, noun + 1, "short", "shy")) return;
    if (r->part[noun] && count < 1 && (ends(r->note, noun + 2) || ANY(tokens, noun + 2, "in", "on", "at"))) {
        const char *name = fault_words(r->note, noun, noun + 1); // "few teeth short in the middle"
        const struct flaw *lack = absent_kind_here(r, name, 2);
        if (lack) fault_add(r, lack, name, NULL, i, noun + 2)->count = couple ? 2 : 0;
        if (lack) part_close(r, i, noun + 2);
        return;
    }
    if (!ends(r->note, noun + 2) || r->part[noun]) return;
    bool before = false, whole = r->note->taken[noun] == TAKEN_TYPE;
    for (size_t k = 0; k < i; k++) {
        if (!text_same(tokens->at[k].one, tokens->at[noun].one)) continue;
        before = true;
        whole |= k > 0 && token_is(tokens, k - 1, "of"); // "set of drills, two drills short"
    }
    const struct flaw *pieces = before ? ruleset_flaw(r->note->rules, "missing-pieces") : NULL;
    if (!pieces) return;
    struct item_flaw *flaw =
        fault_add(r, pieces, whole ? NULL : fault_words(r->note, noun, noun + 1), NULL, i, noun + 2);
    flaw->count = couple ? 2 : count;
    part_close(r, i, noun + 2);
}

// "One handle only", "only the one hinge": of what comes in pairs or more the rest lacks.
static void read_only_one(struct fault_reader *r, size_t i) {
    static const char *const parts[] = {"handle",  "hinge", "catch",  "clasp", "castor", "caster",
                                        "bracket", "strap", "buckle", "foot",  "lug",    "rowlock"};
    static const char *const held[] = {
        "trunk",  "chest", "case",     "tray",   "basket", "bath",   "tub", "crate",  "box",      "trough",
        "boiler", "pot",   "cauldron", "coffer", "hamper", "drawer", "urn", "tureen", "casserole"};
    enum { WORDS_MOST = 2 };
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, i, "one") || tokens->at[i].stop != STOP_NONE) return;
    bool lead = i > 0 && (ANY(tokens, i - 1, "only", "just") ||
                          (i > 1 && token_is(tokens, i - 1, "the") && ANY(tokens, i - 2, "only", "just")));
    size_t at = i + 1;
    while (at < i + WORDS_MOST && at < tokens->count && !token_among(tokens, at, parts, COUNT(parts))) at++;
    size_t to = at + 1;
    if (!token_among(tokens, at, parts, COUNT(parts)) || r->note->taken[at] == TAKEN_TYPE) return;
    if (!lead && !ANY(tokens, to, "only", "left", "remaining")) return;
    to += !lead;
    const char *type = r->note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    bool pair = !token_is(tokens, at, "handle");
    for (size_t k = 0; type && !pair && k < COUNT(held); k++)
        pair = text_same(last ? last + 1 : type, held[k]);
    if (!pair || !ends(r->note, to)) return;
    const char *name = fault_words(r->note, at, at + 1);
    const struct flaw *kind = absent_kind_here(r, name, 1);
    if (!kind) return;
    fault_add(r, kind, name, NULL, lead ? i - 1 : i, to);
    part_close(r, i, to);
}

void read_shortfall(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        read_should(r, i);
        read_short_again(r, i);
        read_only_one(r, i);
        read_of(r, i);
        read_out_of(r, i);
    }
    read_short(r->note);
}
