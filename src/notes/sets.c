// SPDX-License-Identifier: MIT
// A set that is short, where no piece is named: "we've lost one", "complete but for two", "almost all there",
// "part service", "I make it 23 and the box says 24".
#include <string.h>

#include "notes/any.h"
#include "notes/lacking.h"
#include "notes/number.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool is_over(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || tokens->at[i].kind == TOKEN_SIGN ||
           ANY(tokens, i, "but", "and", "so", "though", "i", "over", "from", "at", "in", "when", "somewhere",
               "of", "years", "along", "now", "or");
}

bool sets_has_pieces(const struct note *note) {
    static const char *const ids[] = {"games-puzzles"};
    static const char *const sets[] = {
        "set",      "service", "puzzle",   "jigsaw",   "cutlery",    "flatware", "dominoes",
        "deck",     "pack",    "kit",      "canteen",  "weights",    "lot",      "instruments",
        "railway",  "cards",   "draughts", "chessmen", "marbles",    "pieces",   "glasses",
        "chairs",   "plates",  "spoons",   "napkins",  "collection", "box",      "outfit",
        "soldiers", "ark",     "farm",     "stamps",   "type",       "tools",    "spanners",
        "chisels",  "sockets", "bits",     "blocks",   "bricks",     "pegs",     "forks",
        "knives",   "dishes",  "mugs",     "cups",     "saucers",    "goblets",  "tumblers"};
    const struct record *record = note->record;
    const char *type = record->type.value ? record->type.value : "";
    for (size_t k = 0; record->family && k < COUNT(ids); k++)
        if (text_same(record->family->rule.id, ids[k])) return true;
    for (const char *at = type; *at;) {
        size_t n = strcspn(at, " ");
        for (size_t k = 0; k < COUNT(sets); k++)
            if (strlen(sets[k]) == n && !strncmp(at, sets[k], n)) return true;
        at += n + (at[n] == ' ');
    }
    static const char *const heads[] = {"set",  "kit",  "canteen", "box",  "service",
                                        "case", "roll", "tin",     "pack", "lot"};
    for (size_t i = 0; i + 1 < note->tokens.count && note->tokens.at[i].stop < STOP_SENTENCE; i++)
        if (AMONG(&note->tokens, i, heads) && token_is(&note->tokens, i + 1, "of"))
            return true; // "box of tools"
    return record->count > 1;
}

// "One", "a few", "at least two", "one or two": how many tokens; `*count` is 0 where no number is said.
static size_t some_at(const struct tokens *tokens, size_t i, int *count) {
    static const char *const some[] = {"some",         "a few",       "several",    "a handful",
                                       "a good few",   "the odd one", "one or two", "two or three",
                                       "a few pieces", "a few bits",  "an odd one", "three or four",
                                       "quite a few",  "a number",    "a bit",      "a bit or two"};
    static const char *const leads[] = {"at least", "about",   "only",     "just",
                                        "maybe",    "perhaps", "probably", "possibly"};
    static const char *const pieces[] = {"pieces", "piece",   "pcs",           "parts", "part",
                                         "bits",   "bit",     "cards",         "card",  "tiles",
                                         "tile",   "of them", "of the pieces", "item",  "items"};
    size_t lead = token_longest(tokens, i, leads, COUNT(leads)), at = i + lead, n;
    *count = 0;
    n = token_longest(tokens, at, some, COUNT(some));
    if (!n && token_phrase(tokens, at, "a couple")) n = 2, *count = 2;
    size_t taken = 0;
    if (!n && (*count = number_whole(tokens, at, &taken)) > 0 && *count < 100) n = taken;
    if (!n) return *count = 0, 0;
    static const char *const colors[] = {"black", "white",  "red",   "blue",
                                         "green", "yellow", "brown", "ivory"};
    if (token_among(tokens, at + n, colors, COUNT(colors)) &&
        token_among(tokens, at + n + 1, pieces, COUNT(pieces)))
        n++; // "one black piece"
    size_t more = token_longest(tokens, at + n, pieces, COUNT(pieces));
    return lead + n + more;
}

static void tell(struct fault_reader *r, int count, int of, size_t from, size_t to) {
    const struct flaw *kind = ruleset_flaw(r->note->rules, "missing-pieces");
    static const uint16_t off =
        STANCE_OTHER | STANCE_WITHDRAWN | STANCE_UNKNOWN | STANCE_DENIED | STANCE_NONE_SEEN;
    if (!kind) return;
    for (size_t i = from; i < to; i++)
        if (r->note->taken[i] == TAKEN_FLAW || r->note->taken[i] == TAKEN_ASIDE ||
            r->note->taken[i] == TAKEN_MARK)
            return;
    size_t cue = r->scope.cue[from];
    if ((r->scope.stance[from] & off) && !(cue >= from && cue < to)) return;
    struct item_flaw *flaw = fault_add(r, kind, NULL, NULL, from, to);
    if (count && !flaw->count) flaw->count = count;
    if (of) flaw->of = of;
}

// "A couple have gone astray", "some have been lost", "there are a couple missing", "one's gone".
static void read_some(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    bool start = i == 0 || tokens->at[i - 1].stop != STOP_NONE ||
                 ANY(tokens, i - 1, "are", "is", "there's", "and", "but", "only", "that", "think", "know",
                     "so", "with", "there're", "be");
    if (!start) return;
    if (ANY(tokens, i, "one's") && ANY(tokens, i + 1, "gone", "missing", "lost") && is_over(tokens, i + 2)) {
        tell(r, 1, 0, i, i + 2);
        return;
    }
    int count;
    size_t n = some_at(tokens, i, &count), m;
    if (!n || !lacking_said_behind(&r->scope, i + n, &m) || absent_turns_into(r, i + n + m)) return;
    if (is_over(tokens, i + n + m)) tell(r, count, 0, i, i + n + m);
}

// "We lost one", "it's missing at least one", "short of a few", "minus a couple".
static void read_lost(struct fault_reader *r, size_t i) {
    static const char *const lost[] = {"lost",    "missing", "short of", "minus", "lacks",
                                       "lacking", "less",    "short by", "down",  "mislaid",
                                       "broke",   "shy of",  "want",     "wants"};
    static const char *const who[] = {"we",   "i",    "they", "we've", "i've",     "it's",
                                      "has",  "have", "is",   "kids",  "been",     "they've",
                                      "only", "just", "set",  "about", "probably", "think"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, lost, COUNT(lost));
    int count;
    if (!n || tokens->at[i + n - 1].stop != STOP_NONE) return;
    if (ANY(tokens, i, "broke", "down", "less", "want", "wants", "lost") &&
        !(i > 0 && AMONG(tokens, i - 1, who)))
        return;
    size_t m = some_at(tokens, i + n, &count);
    if (m && is_over(tokens, i + n + m) && !token_phrase(tokens, i + n + m, "of the best"))
        tell(r, count, 0, i, i + n + m);
}

// "Service for 8 less one fork", "a dozen minus two spoons": the pieces that the set lacks.
static void read_less(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t taken = 0;
    if (!ANY(tokens, i, "less", "minus") || i == 0 || tokens->at[i].stop != STOP_NONE) return;
    const struct token *before = &tokens->at[i - 1];
    bool many =
        before->kind == TOKEN_WORD && before->one != before->fold && !text_same(before->one, before->fold);
    if (!many && !number_may_be(tokens, i - 1) && !ANY(tokens, i - 1, "set", "service", "dozen")) return;
    int count = number_whole(tokens, i + 1, &taken);
    size_t noun = i + 1 + taken, end = noun;
    if (count < 1 || count > 40) return;
    while (end < noun + 2 && !is_over(tokens, end) && tokens->at[end].kind == TOKEN_WORD) end++;
    if (end == noun || !is_over(tokens, end)) return;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "missing-pieces");
    if (!kind || r->note->taken[i] == TAKEN_FLAW || r->note->taken[i] == TAKEN_ASIDE) return;
    struct item_flaw *flaw = fault_add(r, kind, fault_words(r->note, noun, end), NULL, i, end);
    flaw->count = count;
}

// "Complete but for two", "all there bar one", "all but one here".
static void read_but(struct fault_reader *r, size_t i) {
    static const char *const whole[] = {"complete",
                                        "all there",
                                        "all here",
                                        "all present",
                                        "everything there",
                                        "full set",
                                        "all in place",
                                        "everything is there",
                                        "all accounted for",
                                        "everything",
                                        "all",
                                        "the lot",
                                        "intact",
                                        "full",
                                        "complete set",
                                        "whole set",
                                        "is there",
                                        "are there"};
    static const char *const but[] = {"but for",    "but",       "except",     "except for", "bar",
                                      "apart from", "minus",     "less",       "save",       "save for",
                                      "aside from", "excepting", "other than", "barring"};
    static const char *const here[] = {"there",       "here",      "present",  "accounted for",
                                       "is there",    "are there", "are here", "left",
                                       "are present", "in place",  "remain",   "survive"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, whole, COUNT(whole)), at = i + n, m = 0;
    if (!n) return;
    if (at < tokens->count && tokens->at[at].stop == STOP_COMMA) at++;
    size_t k = token_longest(tokens, at, but, COUNT(but));
    int count;
    if (k) m = some_at(tokens, at + k, &count);
    if (!k || !m) return;
    size_t end = at + k + m, seen = token_longest(tokens, end, here, COUNT(here));
    bool bare = ANY(tokens, i, "all", "everything", "full") && n == 1 && !seen; // "all but one chipped"
    if (!bare && is_over(tokens, end + seen)) tell(r, count, 0, i, end + seen);
}

// "Almost complete", "not quite all there", "95% complete".
static void read_nearly(struct fault_reader *r, size_t i) {
    static const char *const nearly[] = {"not quite",   "almost",      "nearly",        "just about",
                                         "virtually",   "practically", "close to",      "mostly",
                                         "very nearly", "isn't quite", "not entirely",  "near",
                                         "not fully",   "far from",    "less than",     "about",
                                         "%",           "percent",     "per cent",      "largely",
                                         "never quite", "not 100%",    "not completely"};
    static const char *const whole[] = {
        "complete",      "all there", "all here",     "the full set", "a full set", "a complete set",
        "the whole set", "full set",  "complete set", "all present",  "a set",      "the complete set"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, nearly, COUNT(nearly)),
           m = n ? token_longest(tokens, i + n, whole, COUNT(whole)) : 0;
    if (!m || ANY(tokens, i + n + m, "with", "in") || !is_over(tokens, i + n + m)) return;
    if (ANY(tokens, i, "%", "percent", "per") && i > 0 &&
        (token_is(tokens, i - 1, "100") || text_same(tokens->at[i - 1].fold, "100%")))
        return;
    if (token_is(tokens, i, "about") && !token_is(tokens, i + n, "all")) return;
    if (sets_has_pieces(r->note)) tell(r, 0, 0, i, i + n + m);
}

// "Part service", "part set", "what's left of a set", "remains of a set".
static void read_part_set(struct fault_reader *r, size_t i) {
    static const char *const left[] = {
        "what's left of a", "what is left of a", "the remains of a",   "remains of a",
        "remnants of a",    "what remains of a", "the remnants of a",  "odds and ends of a",
        "part of a",        "half of a",         "some of a",          "the rest of a",
        "odds from a",      "bits of a",         "bits from a",        "pieces from a",
        "oddments from a",  "leftovers from a",  "what survives of a", "survivors of a"};
    static const char *const sets[] = {"set", "service", "canteen", "kit", "suite", "pack", "deck"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, left, COUNT(left)), at = i + n;
    if (!n && token_is(tokens, i, "part") && tokens->at[i].stop == STOP_NONE) n = 1, at = i + 1;
    if (!n) return;
    for (size_t k = at; k < at + 3 && k < tokens->count; k++) {
        if (AMONG(tokens, k, sets)) {
            if (n > 1 || k > at || is_over(tokens, k + 1)) tell(r, 0, 0, i, i + n);
            return;
        }
        if (tokens->at[k].kind != TOKEN_WORD || tokens->at[k].stop != STOP_NONE ||
            ANY(tokens, k, "of", "in", "is"))
            return;
    }
}

// "23 out of 24", "down to 23 from 24", "I make it 23 and the box says 24".
static void read_numbers(struct fault_reader *r, size_t i) {
    static const char *const joints[] = {"out of",
                                         "from",
                                         "and the box says",
                                         "but the box says",
                                         "box says",
                                         "the box says",
                                         "and it should be",
                                         "but it should be",
                                         "should be",
                                         "and there should be",
                                         "but there should be",
                                         "when there should be",
                                         "and the lid says",
                                         "and the list says",
                                         "against",
                                         "and the label says",
                                         "where there should be",
                                         "instead of",
                                         "not",
                                         "of a possible",
                                         "of the original",
                                         "and it says",
                                         "but it says"};
    static const char *const pieces[] = {"pieces", "pcs",      "cards", "tiles",
                                         "men",    "counters", "items", "parts"};
    const struct tokens *tokens = &r->note->tokens;
    size_t a, b;
    int have = number_whole(tokens, i, &a);
    if (have < 2 || (i > 0 && (ANY(tokens, i - 1, "of", "no", "size", "page", "$", "£") ||
                               r->note->taken[i] == TAKEN_MEASURE || r->note->taken[i] == TAKEN_DATE)))
        return;
    size_t at = i + a + token_longest(tokens, i + a, pieces, COUNT(pieces));
    if (at < tokens->count && tokens->at[at].stop == STOP_COMMA) at++;
    size_t n = token_longest(tokens, at, joints, COUNT(joints));
    if (!n) return;
    int all = number_whole(tokens, at + n, &b);
    size_t end = at + n + (all ? b : 0);
    end += token_longest(tokens, end, pieces, COUNT(pieces));
    bool down = i > 1 && token_phrase(tokens, i - 2, "down to"), out = token_phrase(tokens, at, "out of");
    if (token_is(tokens, at, "from") && !down) return;
    if (out && !down && (all < 6 || all - have > all / 3)) return; // "3 out of 5 stars"
    if (all > have && all < 5000 && (is_over(tokens, end) || ANY(tokens, end, "there", "here", "present")) &&
        (sets_has_pieces(r->note) || !out))
        tell(r, all - have, all, down ? i - 2 : i, end);
}

// "Roll has eight pockets and holds seven tools", "ten slots, nine chisels".
static void read_slots(struct fault_reader *r, size_t i) {
    static const char *const slots[] = {"slots",        "pockets", "loops",    "spaces", "places",
                                        "compartments", "holes",   "recesses", "clips",  "hooks",
                                        "wells",        "sockets", "hollows",  "cells",  "pegs",
                                        "bays",         "slips",   "sleeves",  "rings",  "dividers"};
    static const char *const skips[] = {"and", "but",        "only",     "just", "holds", "holding",
                                        "has", "with",       "there",    "are",  "is",    "there's",
                                        "for", "containing", "contains", "now",  "it",    ",",
                                        "i",   "count",      "have",     "got",  "we've"};
    enum { FAR = 7 };
    const struct tokens *tokens = &r->note->tokens;
    size_t a, b = 0;
    int all = number_whole(tokens, i, &a);
    if (all < 2 || all > 99 || !AMONG(tokens, i + a, slots)) return;
    for (size_t k = i + a + 1; k < i + a + 1 + FAR && k < tokens->count; k++) {
        int have = number_whole(tokens, k, &b);
        if (have > 0) {
            bool noun =
                k + b < tokens->count && tokens->at[k + b].kind == TOKEN_WORD &&
                tokens->at[k + b].stop == STOP_NONE &&
                !ANY(tokens, k + b, "inches", "in", "cm", "mm", "are", "is", "have", "has", "with", "of");
            noun &= !r->part[k + b] && !AMONG(tokens, k + b, slots) && r->note->taken[k] != TAKEN_MEASURE;
            bool of_them = ANY(tokens, k + b, "filled", "full", "used", "occupied");
            if (have < all && (noun || of_them) && is_over(tokens, k + b + 1)) {
                struct record *record = r->note->record;
                size_t before = record->flaw_count;
                tell(r, all - have, 0, i, k + b + 1);
                if (noun && record->flaw_count > before)
                    record->flaws[before].part = arena_string(r->note->arena, tokens->at[k + b].one);
            }
            return;
        }
        bool place = ANY(tokens, k, "in", "the", "its") ||
                     (ANY(tokens, k - 1, "the", "its") && tokens->at[k].kind == TOKEN_WORD);
        if (!place && !AMONG(tokens, k, skips)) return;
    }
}

// "Set of 4 glasses. There were six": more than there are.
static void read_were(struct fault_reader *r, size_t i) {
    static const char *const were[] = {"there were",
                                       "started with",
                                       "started out with",
                                       "began with",
                                       "bought as a set of",
                                       "came as a set of",
                                       "there used to be",
                                       "started life as a set of",
                                       "it was a set of",
                                       "were a set of",
                                       "was a set of",
                                       "we had",
                                       "there were originally",
                                       "originally there were",
                                       "started as"};
    const struct tokens *tokens = &r->note->tokens;
    int have = r->note->record->count;
    size_t n = token_longest(tokens, i, were, COUNT(were)), k = 0;
    int all = n && have > 1 ? number_whole(tokens, i + n, &k) : 0;
    if (all <= have || all > 3 * have) return;
    bool over = is_over(tokens, i + n + k) ||
                ANY(tokens, i + n + k, "originally", "once", "to", "when", "of", "before");
    if (over) tell(r, all - have, 0, i, i + n + k);
}

// "Volumes 1-12 less vol 7", "missing no. 4".
static void read_volume(struct fault_reader *r, size_t i) {
    static const char *const less[] = {"less",   "minus", "without", "lacking", "lacks", "missing",
                                       "except", "bar",   "but not", "wanting", "no",    "but no"};
    static const char *const units[] = {"volume", "vol",    "vol.",  "volumes", "vols",  "part",
                                        "number", "issue",  "no",    "no.",     "nos",   "book",
                                        "sheet",  "issues", "parts", "numbers", "plate", "chapter",
                                        "month",  "side",   "disc",  "record",  "reel"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, less, COUNT(less)), at = i + n, k;
    if (!n || tokens->at[i].stop != STOP_NONE ||
        (i > 0 && ANY(tokens, i - 1, "not", "isn't", "never", "nothing")))
        return;
    if (token_is(tokens, at, "the")) at++;
    if (!AMONG(tokens, at, units)) return;
    if (token_is(tokens, at + 1, ".")) at++;
    int which = number_whole(tokens, at + 1, &k), other = 0;
    if (!which) return;
    size_t end = at + 1 + k, more;
    if (ANY(tokens, end, "and", "&") && (other = number_whole(tokens, end + 1, &more)) > 0) end += 1 + more;
    for (size_t t = i; t < end; t++)
        if (r->note->taken[t] == TAKEN_MEASURE || r->note->taken[t] == TAKEN_COUNT)
            r->note->taken[t] = TAKEN_NOT;
    tell(r, other ? 2 : 1, 0, i, end);
}

// "I counted 25 so one is gone": whoever counts them knows of several.
static bool is_counted(const struct fault_reader *r, size_t i) {
    enum { BACK = 6 };
    const struct tokens *tokens = &r->note->tokens;
    if (i < 3 || !ANY(tokens, i - 1, "so", "and")) return false;
    for (size_t k = i - 1; k > 0 && k + BACK > i && tokens->at[k - 1].stop < STOP_SENTENCE; k--)
        if (ANY(tokens, k - 1, "counted", "count")) return true;
    return false;
}

void read_sets(struct fault_reader *r) {
    bool pieces = sets_has_pieces(r->note);
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        if (r->note->taken[i] == TAKEN_FLAW || r->scope.stance[i] & (STANCE_OTHER | STANCE_WITHDRAWN))
            continue;
        if (pieces) {
            read_some(r, i);
            read_lost(r, i);
            read_but(r, i);
            read_numbers(r, i);
        }
        if (!pieces && is_counted(r, i)) read_some(r, i);
        read_less(r, i);
        read_slots(r, i);
        read_were(r, i);
        read_volume(r, i);
        read_nearly(r, i);
        read_part_set(r, i);
    }
}
