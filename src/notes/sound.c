// SPDX-License-Identifier: MIT
// What a seller found to be right denies the fault that it would have been: "rings clear" a hairline, "all
// buttons present" a missing button, "no smell" the common smells, "sits flat" a warp, "turns freely" a
// seized part. Praise
// ("perfect", "lovely") denies nothing.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool ends(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "and", "but",   "when", "if",    "so",         "at",      "though", "with",  "no",    "or",
        "nor", "smoke", "from", "thank", "thankfully", "luckily", "plus",   "which", "while", "including"};
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           token_among(tokens, i, words, COUNT(words));
}

static bool is_governed(const struct fault_reader *r, size_t i) {
    return r->scope.stance[i] &
           (STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_UNKNOWN | STANCE_WITHDRAWN |
            STANCE_OTHER | STANCE_PLANNED | STANCE_DOUBT | STANCE_HEARD);
}

static bool is_free(const struct fault_reader *r, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (r->note->taken[i] == TAKEN_FLAW || r->note->taken[i] == TAKEN_MARK ||
            r->note->taken[i] == TAKEN_ASIDE)
            return false;
    return true;
}

// The part that is the subject of what stands at `i`: "the lid sits flat".
static const char *subject(struct fault_reader *r, size_t i) {
    static const char *const links[] = {"still", "both", "all", "is", "are", "also"};
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    while (i > 0 && token_among(tokens, i - 1, links, COUNT(links))) i--;
    size_t from = i;
    while (from > 0 && i - from < WORDS_MOST && r->part[from - 1] && tokens->at[from - 1].stop == STOP_NONE &&
           r->note->taken[from - 1] != TAKEN_TYPE)
        from--;
    return from < i ? fault_place(r->note, from, i) : NULL;
}

static bool token_among_one(const struct tokens *tokens, size_t i, const char *const *words, size_t count) {
    for (size_t k = 0; k < count; k++)
        if (text_same(tokens->at[i].one, words[k])) return true;
    return false;
}

// "Studs: none missing": of the parts that stand before it.
static bool read_none_lost(struct fault_reader *r, size_t i, size_t to) {
    enum { WORDS_MOST = 3 };
    static const char *const pieces[] = {"piece", "part", "bit", "card", "tile"};
    const struct tokens *tokens = &r->note->tokens;
    size_t end = i;
    if (end > 0 && tokens->at[end - 1].kind == TOKEN_SIGN && tokens->at[end - 1].stop < STOP_SENTENCE) end--;
    size_t from = end;
    while (from > 0 && end - from < WORDS_MOST && r->part[from - 1] && tokens->at[from - 1].stop == STOP_NONE)
        from--;
    // "Maps torn along the fold, none missing": where they are torn, and no part of which none is
    if (from < end && from > 1 && tokens->at[end - 1].one == tokens->at[end - 1].fold &&
        ANY(tokens, from - 1, "the", "its", "one", "a") &&
        ANY(tokens, from - 2, "at", "along", "near", "on", "by", "in", "down", "across", "round", "around"))
        from = end;
    for (size_t k = end; from == end && k > 0 && k + 8 > end && tokens->at[k - 1].stop < STOP_SENTENCE; k--) {
        bool several = tokens->at[k - 1].one != tokens->at[k - 1].fold; // "buttons loose, none missing"
        several |= k > 1 && (token_is(tokens, k - 2, "one") || (k > 2 && token_is(tokens, k - 3, "one")));
        if (r->part[k - 1] && several && r->note->taken[k - 1] != TAKEN_TYPE) // "one cup handle is later"
            from = k - 1, end = k;
    }
    if (from == end || r->note->taken[end - 1] == TAKEN_TYPE ||
        token_among_one(tokens, end - 1, pieces, COUNT(pieces)))
        return false;
    const char *part = fault_words(r->note, from, end);
    const struct flaw *kind = absent_kind_here(r, part, 1);
    if (!kind || kind->form != ABSENCE) return false;
    bool usual = kind->part && text_same(say_singular(r->note->arena, kind->part), tokens->at[end - 1].one);
    clear_add(r, kind, usual ? NULL : part, NULL, false, from, to);
    return true;
}

static void read_sound(struct fault_reader *r, size_t i) {
    static const struct {
        const char *phrase, *kind;
    } sounds[] = {{"none missing", "missing-pieces"},
                  {"none are missing", "missing-pieces"},
                  {"not one missing", "missing-pieces"},
                  {"none of them missing", "missing-pieces"},
                  {"no pieces missing", "missing-pieces"},
                  {"no flaking", "paint-flaking"},
                  {"rings clear", "hairline"},
                  {"rings true", "hairline"},
                  {"and it sings", "hairline"},
                  {"sings when tapped", "hairline"},
                  {"pings clear", "hairline"},
                  {"ring clear", "hairline"},
                  {"ring true", "hairline"},
                  {"rings like a bell", "hairline"},
                  {"rings clean", "hairline"},
                  {"rings nicely", "hairline"},
                  {"rings when tapped", "hairline"},
                  {"a clear ring", "hairline"},
                  {"clean ring", "hairline"},
                  {"sits flat", "warped"},
                  {"lies flat", "warped"},
                  {"lays flat", "warped"},
                  {"sit flat", "warped"},
                  {"lie flat", "warped"},
                  {"sits level", "warped"},
                  {"dead flat", "warped"},
                  {"perfectly flat", "warped"},
                  {"sits without rocking", "warped"},
                  {"sit without rocking", "warped"},
                  {"stands without rocking", "warped"},
                  {"stand without rocking", "warped"},
                  {"stack without rocking", "warped"},
                  {"stacks without rocking", "warped"},
                  {"lies without rocking", "warped"},
                  {"lie without rocking", "warped"},
                  {"turns freely", "seized"},
                  {"turn freely", "seized"},
                  {"moves freely", "seized"},
                  {"move freely", "seized"},
                  {"spins freely", "seized"},
                  {"spin freely", "seized"},
                  {"runs freely", "seized"},
                  {"slides freely", "seized"},
                  {"turns smoothly", "seized"},
                  {"moves smoothly", "seized"},
                  {"slides smoothly", "seized"},
                  {"slide smoothly", "seized"},
                  {"open smoothly", "seized"},
                  {"opens smoothly", "seized"},
                  {"run smoothly", "seized"},
                  {"runs smoothly", "seized"},
                  {"slide freely", "seized"},
                  {"slides fine", "seized"},
                  {"slide fine", "seized"},
                  {"opens and closes smoothly", "seized"},
                  {"open and close smoothly", "seized"},
                  {"rock solid joints", "loose-joint"},
                  {"joints are tight", "loose-joint"},
                  {"joints all tight", "loose-joint"},
                  {"joints tight", "loose-joint"},
                  {"tight binding", "binding-weak"},
                  {"contacts are clean", "battery-corrosion"},
                  {"contacts clean", "battery-corrosion"},
                  {"clean contacts", "battery-corrosion"},
                  {"clean battery compartment", "battery-corrosion"},
                  {"battery compartment is clean", "battery-corrosion"},
                  {"battery compartment clean", "battery-corrosion"},
                  {"clean terminals", "battery-corrosion"}};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_may_open(tokens, i, sounds, COUNT(sounds), sizeof *sounds)) return;
    for (size_t k = 0; k < COUNT(sounds); k++) {
        size_t n = token_phrase(tokens, i, sounds[k].phrase);
        if (!n || is_governed(r, i) || !is_free(r, i, i + n)) continue;
        const struct flaw *kind = ruleset_flaw(r->note->rules, sounds[k].kind);
        bool own = text_same(sounds[k].kind, "seized") || text_same(sounds[k].kind, "warped");
        if (kind && text_same(sounds[k].kind, "missing-pieces") && read_none_lost(r, i, i + n)) return;
        if (kind) clear_add(r, kind, own ? subject(r, i) : NULL, NULL, false, i, i + n);
        return;
    }
}

// "No stains or odors", "free of holes and odors": the last of what is denied.
static size_t listed_smell(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"odor", "odors", "odour", "odours", "smell", "smells"};
    const struct tokens *tokens = &r->note->tokens;
    static const char *const joints[] = {"or", "nor", "and", ","};
    bool joined = i > 1 && token_among(tokens, i - 1, joints, COUNT(joints));
    return joined && token_among(tokens, i, words, COUNT(words)) && r->scope.fault[i - 2] &&
                   (r->scope.stance[i - 2] & (STANCE_DENIED | STANCE_NONE_SEEN))
               ? 1
               : 0;
}

// "No smell", "doesn't smell of anything", "odor free": the smells that are asked for most.
static void read_odorless(struct fault_reader *r, size_t i) {
    static const char *const phrases[] = {"no smell",
                                          "no smells",
                                          "no odor",
                                          "no odors",
                                          "no odour",
                                          "no odours",
                                          "doesn't smell",
                                          "does not smell",
                                          "don't smell",
                                          "doesnt smell",
                                          "odor free",
                                          "odour free",
                                          "smell free",
                                          "odourless",
                                          "odorless",
                                          "smells of nothing",
                                          "smell of nothing",
                                          "smells of nothing at all",
                                          "smells sweet",
                                          "smells all right",
                                          "smells alright",
                                          "nothing to smell",
                                          "smells good",
                                          "fresh smelling",
                                          "smell ok",
                                          "smell fine",
                                          "smell okay",
                                          "smell is fine",
                                          "smell fresh",
                                          "smell clean",
                                          "clean smelling",
                                          "smells nice and fresh",
                                          "smells fine",
                                          "smells ok",
                                          "smells okay",
                                          "smells fresh",
                                          "smells clean",
                                          "no bad smell",
                                          "no bad smells",
                                          "no funny smell",
                                          "no funny smells",
                                          "no strange smells",
                                          "no nasty smells",
                                          "free of smells",
                                          "free of odors",
                                          "free from smells",
                                          "free of smell",
                                          "free of odour",
                                          "isn't smelly",
                                          "not smelly",
                                          "can't smell anything",
                                          "no detectable smell",
                                          "no noticeable smell",
                                          "without any smell"};
    static const char *const wholes[] = {
        "in them",           "in it",        "on it",       "on them",    "about it",
        "to them",           "at all to it", "of anything", "at all",     "that i can tell",
        "that i can detect", "whatsoever",   "to it",       "inside",     "or odors",
        "or stains",         "either",       "to speak of", "of any kind"};
    static const char *const kinds[] = {"odor-musty", "odor-smoke"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, phrases, COUNT(phrases));
    if (!n) n = listed_smell(r, i);
    if (!n || !is_free(r, i, i + n)) return;
    size_t whole = token_longest(tokens, i + n, wholes, COUNT(wholes));
    if (!whole && !ends(tokens, i + n)) return;
    const struct record *record = r->note->record;
    for (size_t k = 0; k < record->flaw_count; k++)
        if (record->flaws[k].kind->class == CLASS_ODOR) return;
    for (size_t k = 0; k < COUNT(kinds); k++) {
        const struct flaw *kind = ruleset_flaw(r->note->rules, kinds[k]);
        if (kind) clear_add(r, kind, NULL, NULL, false, i, i + n);
    }
}

static size_t skip(const struct tokens *tokens, size_t i, const char *const *words, size_t count) {
    while (token_among(tokens, i, words, count)) i++;
    return i;
}

// "Brass strips all present": a plural of no list that opens its clause before "all"; how many tokens behind
// its first word it ends.
static size_t named_many(const struct fault_reader *r, size_t last) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    const struct token *t = &tokens->at[last];
    if (t->kind != TOKEN_WORD || t->one == t->fold || t->stop != STOP_NONE ||
        !token_is(tokens, last + 1, "all") || r->note->taken[last] == TAKEN_TYPE ||
        ANY(tokens, last, "pieces", "parts", "bits", "they", "these", "those", "cards", "tiles", "contents"))
        return 0;
    size_t from = last;
    while (from > 0 && last - from < WORDS_MOST && tokens->at[from - 1].stop == STOP_NONE &&
           tokens->at[from - 1].kind == TOKEN_WORD)
        from--;
    return from > 0 && tokens->at[from - 1].stop != STOP_NONE ? last + 1 - from : 0;
}

// "Bars all present": of the parts, and no count of all pieces.
bool count_is_of_part(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const pieces[] = {"piece", "part", "bit", "card", "tile", "domino", "peg", "counter"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "complete-counted") || hit->from == 0) return false;
    size_t i = hit->from - 1;
    return tokens->at[i].stop == STOP_NONE && (r->part[i] || named_many(r, i) > 0) && !r->scope.fault[i] &&
           r->note->taken[i] != TAKEN_TYPE && token_is(tokens, hit->from, "all") &&
           !token_among_one(tokens, i, pieces, COUNT(pieces));
}

// What is asked for by itself, as it gets lost.
static bool is_loose_part(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"key", "winder"};
    return token_among_one(tokens, i, words, COUNT(words));
}

// "Green and red lenses", "upper and lower trays": two looks of one noun, all of which is meant.
static bool joins_looks(const struct note *note, size_t from, size_t to) {
    static const char *const sides[] = {"upper", "lower", "front", "back",   "rear",  "inner", "outer",
                                        "left",  "right", "top",   "bottom", "large", "small", "big"};
    const struct tokens *tokens = &note->tokens;
    struct word_entry look;
    uint32_t looks = (1u << USE_COLOR) | (1u << USE_MATERIAL);
    if (to < from + 2 || from < 2 || !ANY(tokens, from - 1, "and", "&")) return false;
    if (token_among(tokens, from - 2, sides, COUNT(sides)))
        return token_among(tokens, from, sides, COUNT(sides));
    return word_at(note, from - 2, looks, &look) == 1 && word_at(note, from, looks & look.uses, &look) > 0;
}

// "All buttons present", "both keys are there", "pages all there", "lid and stopper both present".
static void read_present(struct fault_reader *r, size_t i) {
    static const char *const wholes[] = {"all", "both", "every", "each"};
    static const char *const small[] = {"the", "its",   "of",  "original", "four",
                                        "two", "three", "six", "five",     "eight"};
    static const char *const links[] = {"is", "are", "were", "all", "both", "still", "also"};
    static const char *const there[] = {"present",     "there",         "accounted for",
                                        "in place",    "still on",      "present and correct",
                                        "intact",      "here",          "on",
                                        "still there", "still present", "still in place",
                                        "on it",       "on them",       "in it",
                                        "with it",     "in there",      "all there",
                                        "all present", "complete",      "all complete",
                                        "in"};
    static const char *const sure[] = {"present", "accounted for", "present and correct", "complete"};
    const struct tokens *tokens = &r->note->tokens;
    if (i > 0 && tokens->at[i - 1].stop == STOP_NONE && !token_is(tokens, i - 1, "and") &&
        !token_is(tokens, i - 1, "has") && !token_is(tokens, i - 1, "but") &&
        !token_is(tokens, i - 1, "with"))
        return;
    bool all = token_among(tokens, i, wholes, COUNT(wholes));
    size_t from = i;
    if (all) from++;
    from = skip(tokens, from, small, COUNT(small));
    if (from < tokens->count && tokens->at[from].kind == TOKEN_FIGURE) from++;
    size_t size = absent_part(r, from), last = from;
    while (!size && last + 1 < tokens->count && last < from + 3 && !token_is(tokens, last + 1, "all")) last++;
    if (!size && last < tokens->count && last < from + 3 && named_many(r, last) == last + 1 - from &&
        !r->scope.fault[last])
        size = last + 1 - from;
    size_t to = from + size;
    if (!size) return;
    size_t at = skip(tokens, to, links, COUNT(links));
    for (size_t k = to; k < at; k++) all |= token_among(tokens, k, wholes, COUNT(wholes));
    size_t n = token_longest(tokens, at, there, COUNT(there));
    static const char *const haves[] = {"has", "have", "with", "got"};
    static const char *const fixed[] = {"button", "knob", "hinge", "strap",  "tag",
                                        "label",  "stud", "foot",  "buckle", "rivet"};
    bool has =
        i > 0 && token_among(tokens, i - 1, haves, COUNT(haves)) && all && from > i + 1 && ends(tokens, to);
    if (token_is(tokens, at, "on") && !token_among_one(tokens, to - 1, fixed, COUNT(fixed))) return;
    bool intact = token_is(tokens, at, "intact") || token_is(tokens, at, "here");
    bool said = all || (token_longest(tokens, at, sure, COUNT(sure)) == n && n);
    static const char *const bare[] = {"there",   "still there", "with it", "here", // "Key there."
                                       "present", "in it",       "in there"};
    said |= n && token_longest(tokens, at, bare, COUNT(bare)) == n && is_loose_part(tokens, to - 1) &&
            (i == 0 || tokens->at[i - 1].stop != STOP_NONE);
    if (has) { // "has all its buttons"
        at = to;
        n = 0;
    }
    if ((!has && (!n || !said)) || (intact && !all) || !ends(tokens, at + n) || is_governed(r, at) ||
        !is_free(r, from, at + n))
        return;
    if (joins_looks(r->note, from, to)) from = to - 1;
    const char *part = fault_words(r->note, from, to);
    if (ANY(tokens, i, "every", "each")) part = say_plural(r->note->arena, part);
    const char *head = tokens->at[to - 1].one;
    const struct family *family = r->note->record->family;
    bool book = family && (strstr(family->rule.id, "book") || text_same(family->rule.id, "paper"));
    bool page = text_same(head, "page") || text_same(head, "leaf") ||
                (book && (text_same(head, "plate") || text_same(head, "map")));
    const struct flaw *kind =
        page ? ruleset_flaw(r->note->rules, "pages-loose") : absent_kind_here(r, part, 1);
    if (kind && kind->form != ABSENCE && !page) // "all the ears there": broken where they lack
        kind = absent_kind(r->note->arena, r->note->rules, part);
    if (!kind || (has && kind == ruleset_flaw(r->note->rules, "missing-accessory"))) return;
    bool usual = page || (kind->part && text_same(say_singular(r->note->arena, kind->part),
                                                  say_singular(r->note->arena, part)));
    clear_add(r, kind, usual ? NULL : part, NULL, false, i, at + n);
}

void read_right(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        read_sound(r, i);
        read_odorless(r, i);
        read_present(r, i);
    }
}
