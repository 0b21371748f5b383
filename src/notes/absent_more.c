// SPDX-License-Identifier: MIT
// Lacks that name no part of a list: "has lost its wooden grip", "no inkwell", "few of the pegs", "the 5/8 is
// missing".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/figure.h"
#include "notes/lacking.h"
#include "notes/things.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static const char *const sides[] = {"left",   "right", "upper",  "lower", "front",   "back",
                                    "rear",   "top",   "bottom", "inner", "outer",   "first",
                                    "second", "last",  "small",  "big",   "plastic", "metal"};

// "Missing 2 rhinestones", "minus 4 spoons", "lacks the inkwell": of any noun, with its number.
size_t absent_read_lost(struct fault_reader *r, size_t i) {
    static const char *const lost[] = {"missing", "minus", "lacks", "lacking", "short", "lost"};
    static const char *const skipped[] = {"of",      "the",   "its",   "a",    "an",   "some",
                                          "one",     "two",   "three", "four", "five", "six",
                                          "another", "other", "both",  "any",  "my",   "their"};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_among(tokens, i, lost, COUNT(lost)) || tokens->at[i].stop != STOP_NONE || r->scope.fault[i])
        return 0;
    size_t at = i + 1;
    while (at < i + 5 && at < tokens->count && tokens->at[at].stop == STOP_NONE &&
           (token_among(tokens, at, skipped, COUNT(skipped)) || tokens->at[at].kind == TOKEN_FIGURE ||
            token_among(tokens, at, sides, COUNT(sides))))
        at++;
    struct noun_found noun;
    if ((at == i + 1 && token_is(tokens, i, "short")) || tokens->at[at - 1].stop != STOP_NONE) return 0;
    size_t parts = absent_part(r, at), to = at + parts;
    if (!parts && !noun_at(r->note, at, &noun)) return 0;
    if (!parts || (tokens->at[to - 1].stop == STOP_NONE && r->note->tokens.count > to &&
                   tokens->at[to].stop == STOP_NONE && noun_at(r->note, at, &noun) && noun.to > to))
        to = noun.to;
    bool plural = parts && to < tokens->count && tokens->at[to - 1].stop == STOP_NONE &&
                  tokens->at[to].kind == TOKEN_WORD && tokens->at[to].one != tokens->at[to].fold &&
                  !r->scope.fault[to] && !absent_is_small(tokens, to);
    if (plural) to++; // "3 of its 12 glass drops"
    for (size_t k = at; k < to; k++)
        if ((r->scope.fault[k] && !r->part[k]) || (!parts && r->note->taken[k] == TAKEN_TYPE)) return 0;
    absent_tell(r, at, to, i, at);
    return to;
}

// What the word book knows and has for no goods and no part: "no splatters", "no lumps", "no buzzes".
static bool is_no_goods(const struct note *note, const char *one) {
    struct word_entry entry;
    if (!note->book || !wordbook_find(note->book, one, strlen(one), &entry)) return false;
    return !(entry.uses & (1u << USE_THING | 1u << USE_PART)) || entry.uses & 1u << USE_IDEA;
}

// "You'd need a drill": a tool for it, and no part.
static bool is_wish(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"you",     "you'll", "you'd", "need",  "have",     "supply", "bring",
                                        "wanting", "do",     "don't", "can't", "couldn't", "cannot", "not"};
    return token_among(tokens, i, words, COUNT(words));
}

// "No machine", "no belt": any thing by its own name, where the clause ends behind it.
// "No charts.", "no feeders with it": several of what nobody has a list of, and all that the clause says.
static bool is_lone_plural(const struct fault_reader *r, size_t i) {
    static const char *const nots[] = {
        "returns",    "offers",       "refunds",   "swaps",     "problems",   "issues",   "worries",
        "complaints", "bids",         "questions", "promises",  "guarantees", "smokers",  "pets",
        "animals",    "children",     "dogs",      "cats",      "mice",       "faults",   "defects",
        "flaws",      "troubles",     "regrets",   "excuses",   "ideas",      "clues",    "traces",
        "signs",      "smells",       "words",     "letters",   "numbers",    "names",    "makers",
        "signatures", "initials",     "colors",    "colours",   "sides",      "edges",    "corners",
        "details",    "photos",       "pictures",  "surprises", "repairs",    "extras",   "doubts",
        "reserves",   "insects",      "bugs",      "moths",     "spiders",    "worms",    "droppings",
        "nests",      "knots",        "gaps",      "ends",      "hairs",      "wobbles",  "rattles",
        "creaks",     "squeaks",      "drafts",    "draughts",  "noises",     "markings", "stamps",
        "hallmarks",  "inscriptions", "logos",     "dates",     "titles",     "captions", "tears",
        "leaks",      "breaks",       "others",    "ridges",    "shakes",     "waves"};
    const struct tokens *tokens = &r->note->tokens;
    const struct token *t = &tokens->at[i];
    if (t->kind != TOKEN_WORD || t->one == t->fold || r->scope.fault[i] || r->note->taken[i] != TAKEN_NOT ||
        token_among(tokens, i, nots, COUNT(nots)) || absent_is_no_part(t->one) || !r->note->record->family ||
        is_no_goods(r->note, t->one))
        return false;
    size_t end = i + 1 + (ANY(tokens, i + 1, "with") && ANY(tokens, i + 2, "it", "them") ? 2 : 0);
    bool opens = i == 1 || tokens->at[i - 2].stop != STOP_NONE;
    bool ends = end >= tokens->count || tokens->at[end].stop != STOP_NONE || ANY(tokens, end, "or", "and");
    size_t size = strlen(t->fold);
    return opens && ends && size > 4 && !text_same(t->fold + size - 2, "ss");
}

// "I have no workshop", "we've got no room": whose want it is; what belongs to the thing is a part or said to
// go with it.
static bool is_sellers_want(const struct tokens *tokens, size_t i, const struct noun_found *noun) {
    if (i < 2 || !ANY(tokens, i - 1, "have", "had", "got", "'ve") || tokens->at[i - 1].stop != STOP_NONE)
        return false;
    size_t who = i - 2 - (i > 2 && ANY(tokens, i - 2, "have", "still", "just", "really"));
    if (!ANY(tokens, who, "i", "we", "i've", "we've", "you", "she", "he")) return false;
    return !noun->part && !lacking_extra(tokens->at[noun->to - 1].one) &&
           !ANY(tokens, noun->to, "for", "with", "that", "to");
}

size_t absent_read_no_thing(struct fault_reader *r, size_t i) {
    static const char *const cues[] = {"no", "without", "minus"};
    static const char *const articles[] = {"the", "its", "a", "an", "his", "their"};
    static const char *const ends[] = {"with", "and", "or",   "but",    "for",  "to",
                                       "in",   "so",  "just", "either", "that", "which"};
    const struct tokens *tokens = &r->note->tokens;
    struct noun_found noun;
    size_t n = 1, said = 0;
    bool bare = token_among(tokens, i, cues, COUNT(cues));
    if (lacking_said_before(&r->scope, i, &said) && said > 2) // "no sign of the trailer"
        n = said;
    else if (!bare)
        n = said;
    bool wish = token_is(tokens, i, "needs") || is_wish(tokens, i);
    bool owned = n > 1 && token_among(tokens, i + n - 1, articles, COUNT(articles));
    if (!n || (n > 1 ? wish || !owned : !bare)) return 0;
    if (tokens->at[i + n - 1].stop != STOP_NONE) return 0;
    struct part_at word;
    bool owner = n > 1 && (token_is(tokens, i + n - 1, "its") || token_is(tokens, i + n - 1, "the"));
    if (owner && !noun_at(r->note, i + n, &noun) && part_or_word_at(r, i + n - 1, &word)) {
        absent_tell(r, word.from, word.to, i, word.from); // "no sign of the trailer"
        return word.to;
    }
    if (n == 1 && token_is(tokens, i, "no") && is_lone_plural(r, i + 1)) {
        absent_tell(r, i + 1, i + 2, i, i + 1);
        return i + 2;
    }
    size_t on = i + n + 1,
           behind = on + (ANY(tokens, on + 1, "the", "its") ? 2 : 1); // "no leather on the plunger"
    if (bare && n == 1 && behind < tokens->count && tokens->at[on - 1].stop == STOP_NONE && r->part[behind] &&
        ANY(tokens, i + n, "leather", "felt", "glass", "rubber", "baize", "cloth", "string", "rope", "cane",
            "webbing", "velvet", "foam", "wire", "cork") &&
        ANY(tokens, on, "on", "in", "round", "under", "left") && !r->scope.fault[behind]) {
        absent_tell(r, i + n, on, i, i + n);
        return on;
    }
    if (!noun_at(r->note, i + n, &noun)) return 0;
    if (n > 1 && (r->note->taken[i + n] == TAKEN_TYPE || absent_is_another(tokens, i, noun.to))) return 0;
    if (n == 1 && is_sellers_want(tokens, i, &noun)) return noun.to;
    if (token_is(tokens, i, "no") && tokens->at[i + n].kind == TOKEN_FIGURE) return 0; // "No 8 lamp"
    static const char *const players[] = {"machine", "player", "deck", "projector", "turntable"};
    bool media = r->note->record->family && text_same(r->note->record->family->rule.id, "media");
    if (media && token_among(tokens, noun.to - 1, players, COUNT(players))) return noun.to; // to play it on
    bool thing = (noun.uses & (1u << USE_THING)) &&
                 (!noun.gated || n > 1 || lacking_extra(tokens->at[noun.to - 1].one)) &&
                 !(noun.uses & (1u << USE_COLOR));
    bool ended = noun.to >= tokens->count || tokens->at[noun.to].stop != STOP_NONE ||
                 token_among(tokens, noun.to, ends, COUNT(ends));
    if (!thing || !ended || absent_is_no_part(tokens->at[noun.to - 1].one)) return 0;
    for (size_t k = i + n; k < noun.to; k++)
        if (r->scope.fault[k]) return 0;
    absent_tell(r, i + n, noun.to, i, i + n);
    return noun.to;
}

// "Two of the smaller", "a few of its wooden", "some of the": an amount of what stands at `noun`, of which
// some are left. Its first token, or `noun`; `*count` is 0 where no number is said.
size_t absent_some_of(const struct fault_reader *r, size_t noun, int *count) {
    enum { WORDS_MOST = 2 };
    static const char *const owners[] = {"the", "its", "these", "their", "my"};
    static const char *const amounts[] = {"some", "several", "few", "most", "many", "couple"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = noun;
    while (at > 0 && noun - at < WORDS_MOST && tokens->at[at - 1].kind == TOKEN_WORD &&
           tokens->at[at - 1].stop == STOP_NONE && !r->scope.fault[at - 1] &&
           !degrees_number(tokens, at - 1) && !token_among(tokens, at - 1, owners, COUNT(owners)) &&
           !absent_is_small(tokens, at - 1))
        at--;
    if (at < 3 || !token_among(tokens, at - 1, owners, COUNT(owners)) || !token_is(tokens, at - 2, "of") ||
        tokens->at[at - 1].stop != STOP_NONE || tokens->at[at - 2].stop != STOP_NONE ||
        tokens->at[at - 3].stop != STOP_NONE)
        return noun;
    *count = degrees_number(tokens, at - 3);
    if (!*count && token_is(tokens, at - 3, "couple")) *count = 2;
    if (!*count && !token_among(tokens, at - 3, amounts, COUNT(amounts))) return noun;
    return at - 3;
}

// "Some of the larger sizes are missing": pieces that no list has, where the noun stands at `i`.
static size_t read_some_of(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    const uint16_t off =
        STANCE_DENIED | STANCE_NONE_SEEN | STANCE_OTHER | STANCE_WITHDRAWN | STANCE_UNKNOWN | STANCE_PAST;
    int count = 0;
    if (tokens->at[i].kind != TOKEN_WORD || tokens->at[i].one == tokens->at[i].fold || r->part[i] ||
        tokens->at[i].stop != STOP_NONE || r->scope.fault[i] || r->note->taken[i] == TAKEN_PART ||
        r->note->taken[i] == TAKEN_FLAW)
        return 0;
    struct noun_found noun;
    size_t n = lacking_behind(tokens, i + 1);
    if (n && !ANY(tokens, i, "sizes", "ones") && r->note->taken[i] == TAKEN_NOT && noun_at(r->note, i, &noun))
        return 0; // it has a name
    size_t from = n ? absent_some_of(r, i, &count) : i;
    if (from == i || absent_turns_into(r, i + 1 + n) || r->scope.stance[i] & off) return 0;
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from < i + 1 + n && r->hits[k].to > from) return 0;
    const struct flaw *pieces = ruleset_flaw(r->note->rules, "missing-pieces");
    if (!pieces) return 0;
    struct item_flaw *flaw = fault_add(r, pieces, NULL, NULL, from, i + 1 + n);
    if (count > 1) flaw->count = count;
    return i + 1 + n;
}

// "One sheep missing", "two soldiers gone": of several, whatever they are.
size_t absent_read_few(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t some = read_some_of(r, i);
    if (some) return some;
    int count = degrees_number(tokens, i);
    if (count < 1 || count > 20 || i + 2 >= tokens->count || tokens->at[i].stop != STOP_NONE) return 0;
    if (tokens->at[i].kind == TOKEN_FIGURE &&
        ANY(tokens, i + 1, "oz", "lb", "g", "kg", "mm", "cm", "in", "inch", "ml", "ft", "pint", "gallon"))
        return 0; // "the 2 oz is missing": which one
    bool noun = tokens->at[i + 1].kind == TOKEN_WORD && tokens->at[i + 1].stop == STOP_NONE &&
                (r->note->taken[i + 1] == TAKEN_NOT || r->note->taken[i + 1] == TAKEN_VALUE) &&
                !r->part[i + 1] && !r->scope.fault[i + 1] && !absent_is_small(tokens, i + 1);
    size_t n = noun ? lacking_behind(tokens, i + 2) : 0;
    uint16_t off =
        STANCE_DENIED | STANCE_NONE_SEEN | STANCE_OTHER | STANCE_WITHDRAWN | STANCE_UNKNOWN | STANCE_PAST;
    if (!n || absent_turns_into(r, i + 2 + n) || r->scope.stance[i] & off) return 0;
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from < i + 2 + n && r->hits[k].to > i) return 0;
    const char *part = r->note->record->count < 2 && !sets_has_pieces(r->note) // "one ivory is gone"
                           ? say_singular(r->note->arena, fault_words(r->note, i + 1, i + 2))
                           : NULL;
    const struct flaw *pieces =
        part ? absent_kind_here(r, part, count) : ruleset_flaw(r->note->rules, "missing-pieces");
    if (!pieces) return 0;
    struct item_flaw *flaw = fault_add(r, pieces, part, NULL, i, i + 2 + n);
    int lost = i > 2 && ANY(tokens, i - 1, "the", "its") && token_is(tokens, i - 2, "of")
                   ? degrees_number(tokens, i - 3) // "one of the two dogs"
                   : 0;
    if (lost && lost < count) flaw->of = count;
    if (count > 1) flaw->count = lost && lost < count ? lost : count;
    return i + 2 + n;
}

// "The 5/8 is missing", "3/8 gone": one of a set, by its size.
size_t absent_read_size_lost(struct fault_reader *r, size_t i) {
    static const char *const before[] = {"the", "only", "just", "but", "and", "its", "no"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    struct amount amount;
    if (tokens->at[i].kind != TOKEN_FIGURE || !amount_at(r->note, i, &amount)) return 0;
    bool opens =
        i == 0 || tokens->at[i - 1].stop != STOP_NONE || token_among(tokens, i - 1, before, COUNT(before));
    static const char *const never[] = {"books", "paper", "media", "music", "clothing", "linens"};
    bool sets = true;
    for (size_t k = 0; family && k < COUNT(never); k++) sets &= !text_same(family->rule.id, never[k]);
    size_t to = i + amount.taken, n = opens && sets ? lacking_behind(tokens, to) : 0;
    uint16_t off =
        STANCE_DENIED | STANCE_NONE_SEEN | STANCE_OTHER | STANCE_WITHDRAWN | STANCE_UNKNOWN | STANCE_PAST;
    if (!n || tokens->at[to - 1].stop != STOP_NONE || absent_turns_into(r, to + n) ||
        r->scope.stance[i] & off)
        return 0;
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from < to + n && r->hits[k].to > i) return 0;
    const struct flaw *pieces = ruleset_flaw(r->note->rules, "missing-pieces");
    if (pieces) fault_add(r, pieces, NULL, NULL, i, to + n);
    return pieces ? to + n : 0;
}

// "Chalk ledge missing.", ", ash lip lost": what no list has a name for, where it and the word are all that
// the clause says. Token `i` is that word.
bool absent_read_plain(struct fault_reader *r, size_t i) {
    enum { WORDS_MOST = 3 };
    static const char *const never[] = {
        "some",   "few",     "most",      "much",     "nothing",    "none",    "all",     "many",
        "bits",   "parts",   "pieces",    "one",      "ones",       "thing",   "things",  "rest",
        "other",  "others",  "they",      "this",     "still",      "also",    "been",    "was",
        "is",     "are",     "something", "anything", "everything", "price",   "date",    "sizes",
        "time",   "several", "somewhere", "sadly",    "obviously",  "always",  "often",   "never",
        "likely", "maybe",   "perhaps",   "possibly", "got",        "went",    "gone",    "not",
        "only",   "now",     "get",       "them",     "photo",      "picture", "postage", "shine",
        "detail", "heat",    "bit",       "lot",      "piece",      "both",    "half"};
    const struct tokens *tokens = &r->note->tokens;
    const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_OTHER | STANCE_WITHDRAWN | STANCE_UNKNOWN |
                         STANCE_PAST | STANCE_PLANNED | STANCE_HEARD;
    size_t end = i + 1, from = i;
    if (!ANY(tokens, i, "missing", "lost", "absent") || r->note->taken[i] != TAKEN_NOT ||
        tokens->at[i].stop != STOP_NONE || (end < tokens->count && tokens->at[end].stop == STOP_NONE) ||
        token_is(tokens, end, "?") || r->scope.stance[i] & off)
        return false;
    while (from > 0 && i - from < WORDS_MOST && tokens->at[from - 1].stop == STOP_NONE &&
           tokens->at[from - 1].kind == TOKEN_WORD && !r->scope.fault[from - 1] &&
           (r->note->taken[from - 1] == TAKEN_NOT || r->note->taken[from - 1] == TAKEN_VALUE) &&
           !absent_is_small(tokens, from - 1) && !token_among(tokens, from - 1, never, COUNT(never)) &&
           !degrees_number(tokens, from - 1))
        from--;
    if (from == i || from == 0 || tokens->at[from - 1].stop == STOP_NONE ||
        r->note->taken[i - 1] != TAKEN_NOT || strlen(tokens->at[i - 1].fold) < 3 ||
        r->scope.stance[from] & off)
        return false;
    size_t size = strlen(tokens->at[i - 1].fold);
    if (size > 2 && !strcmp(tokens->at[i - 1].fold + size - 2, "ly")) return false;
    absent_tell(r, from, i, i, i + 1);
    return true;
}

// "Gone to toffee", "gone the color of tea", "gone from clear to yellow", "gone a bit soft", "gone all
// stiff".
static bool turns_to(const struct tokens *tokens, size_t i) {
    static const char *const owners[] = {"the",      "my",      "his",     "her",     "our",
                                         "a",        "someone", "another", "charity", "school",
                                         "landfill", "auction", "ground"};
    static const char *const shades[] = {"color",  "colour", "same",  "sort",  "kind", "bit",
                                         "little", "touch",  "shade", "funny", "dull", "dark",
                                         "deep",   "pale",   "dirty", "nasty"};
    static const char *const ends[] = {"of", "but", "the", "and", "over", "with", "in", "on"};
    if (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE) return false;
    if (token_is(tokens, i, "to")) return !token_among(tokens, i + 1, owners, COUNT(owners));
    if (token_is(tokens, i, "from"))
        return token_is(tokens, i + 2, "to") || token_is(tokens, i + 2, "through");
    if (token_is(tokens, i, "all")) return !token_among(tokens, i + 1, ends, COUNT(ends));
    return (token_is(tokens, i, "the") || token_is(tokens, i, "a")) &&
           token_among(tokens, i + 1, shades, COUNT(shades));
}

// "Gone sticky", "gone brown": turned into, not missing.
bool absent_turns_into(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0 || !token_is(tokens, i - 1, "gone") || i >= tokens->count) return false;
    static const char *const ends[] = {
        "and",      "but",       "so",        "now",       "too",     "though", "from",       "since",
        "on",       "in",        "at",        "off",       "one",     "i",      "it",         "you",
        "or",       "astray",    "missing",   "walkabout", "awol",    "west",   "years",      "long",
        "ages",     "before",    "when",      "with",      "by",      "for",    "altogether", "completely",
        "entirely", "somewhere", "already",   "a",         "the",     "sadly",  "to",         "of",
        "as",       "because",   "elsewhere", "again",     "forever", "absent", "along",      "near",
        "inside",   "behind",    "beneath",   "under",     "round",   "around", "just",       "only",
        "both",     "all",       "which",     "that"};
    if (tokens->at[i].stop != STOP_NONE) return false;
    bool out = token_is(tokens, i, "out") && token_is(tokens, i + 1, "of");
    if (out && (degrees_number(tokens, i + 2) || ANY(tokens, i + 2, "it", "them", "the", "its", "this")))
        return false; // "two gone out of eleven", "the wick is gone out of it", but "gone out of square"
    if (turns_to(tokens, i)) return true;
    for (size_t k = 0; k < COUNT(ends); k++)
        if (token_is(tokens, i, ends[k])) return false;
    return true;
}

// A clause begins at token `i`: behind a stop, or behind what sets it against the one before.
static bool opens_clause(const struct tokens *tokens, size_t i) {
    return i > 0 && (tokens->at[i - 1].stop != STOP_NONE ||
                     ANY(tokens, i - 1, "but", "though", "although", "however"));
}

// "The fine plate and the stomper are missing", at the first "the": a clause that says nothing else, whatever
// its things are called. Where one of them is a part by any list, "gone" will do for "missing". The token
// behind it, 0 where it is none.
size_t absent_read_stated(struct fault_reader *r, size_t i) {
    enum { THINGS_MOST = 4, WORDS_MOST = 3 };
    static const char *const never[] = {
        "only",       "thing",  "things", "bit",     "bits",    "rest",   "one",     "ones",      "other",
        "others",     "same",   "price",  "photo",   "date",    "shine",  "detail",  "charm",     "point",
        "piece",      "pieces", "last",   "first",   "part",    "parts",  "odd",     "few",       "two",
        "three",      "four",   "five",   "picture", "sizes",   "number", "nothing", "none",      "all",
        "everything", "some",   "it",     "they",    "this",    "both",   "neither", "something", "what",
        "mine",       "these",  "those",  "there",   "several", "most",   "many"};
    const struct tokens *tokens = &r->note->tokens;
    const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_OTHER | STANCE_WITHDRAWN | STANCE_UNKNOWN |
                         STANCE_PAST | STANCE_PLANNED | STANCE_HEARD;
    size_t from[THINGS_MOST], to[THINGS_MOST], count = 0, at = i;
    bool known = false, unknown = false;
    bool bare =
        i > 0 && tokens->at[i - 1].stop >= STOP_SENTENCE && tokens->at[i].capital; // "Plate and stomper are"
    if ((!bare && !ANY(tokens, i, "the", "its")) || !opens_clause(tokens, i) || r->scope.stance[i] & off)
        return 0;
    for (;;) {
        if (ANY(tokens, at, "the", "its", "one", "a")) at++;
        size_t first = at;
        while (at < tokens->count && at - first < WORDS_MOST && tokens->at[at].kind == TOKEN_WORD &&
               (r->part[at] || r->note->taken[at] == TAKEN_NOT || r->note->taken[at] == TAKEN_VALUE) &&
               !r->scope.fault[at] && !absent_is_small(tokens, at) && !AMONG(tokens, at, never) &&
               !ANY(tokens, at, "and", "is", "are", "has", "have", "went", "of", "or")) {
            known |= r->part[at++];
        }
        if (at == first || count == THINGS_MOST) return 0;
        unknown |= !r->part[at - 1];
        from[count] = first;
        to[count++] = at;
        bool comma = at < tokens->count && tokens->at[at].stop == STOP_COMMA;
        at += comma;
        if (ANY(tokens, at, "and"))
            at++;
        else if (!comma)
            break;
    }
    if ((!unknown && count < 2) || !ANY(tokens, at, "is", "are", "went", "both", "have", "has")) return 0;
    size_t n = lacking_behind(tokens, at), end = at + n;
    if (!n || (!known && !ANY(tokens, end - 1, "missing", "absent")) || absent_turns_into(r, end)) return 0;
    if (end < tokens->count && tokens->at[end].stop == STOP_NONE &&
        !ANY(tokens, end, "and", "but", "so", "which"))
        return 0;
    while (count-- > 0) { // from the last: each takes the words up to the cue
        struct item_flaw *flaw = absent_tell(r, from[count], to[count], at, end);
        if (flaw) flaw->span = note_span_of(r->note, from[count], to[count]);
    }
    return end;
}

// "Cigarette cards? no, woven bookmarks": what the note begins with is called something else.
bool absent_is_renamed(const struct fault_reader *r, size_t i) {
    enum { HEAD = 6, NAME = 4 };
    const struct tokens *tokens = &r->note->tokens;
    struct noun_found noun;
    bool called = ANY(tokens, i + 2, ",", "-", "it's", "its", "a", "an"); // "frame? No - an easel"
    if (i > HEAD || !token_is(tokens, i, "?") || !ANY(tokens, i + 1, "no", "nope") || !called) return false;
    for (size_t k = i + 3; k < i + 3 + NAME && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
        if (noun_at(r->note, k, &noun)) return true;
    return false;
}

bool absent_is_sort(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    return type && i < tokens->count && tokens->at[i - 1].stop == STOP_NONE &&
           text_same(tokens->at[i].one, say_singular(r->note->arena, head ? head + 1 : type));
}

// "I have no speakers", "I've no bulb that fits": what the seller has not got to try it with.
bool absent_is_means(const struct tokens *tokens, size_t cue, size_t to) {
    static const char *const means[] = {"speaker", "bulb",      "battery", "film",    "tape",    "record",
                                        "amp",     "socket",    "charger", "lead",    "plug",    "disc",
                                        "cable",   "amplifier", "adapter", "adaptor", "console", "needle",
                                        "fuel",    "paraffin",  "gas",     "string",  "reel",    "player"};
    while (cue > 0 && ANY(tokens, cue - 1, "got", "had", "have")) cue--;
    bool seller = ANY(tokens, cue, "i've", "ive", "we've") ||
                  (cue > 0 && ANY(tokens, cue - 1, "i", "we", "i've", "ive", "we've"));
    for (size_t k = 0; seller && k < COUNT(means); k++)
        if (text_same(tokens->at[to - 1].one, means[k])) return true;
    // "We've no landline so no way of testing it"
    enum { AHEAD = 6 };
    for (size_t i = to; seller && i < to + AHEAD && i < tokens->count; i++) {
        if (ANY(tokens, i, "test", "testing", "try", "trying", "untested")) return true;
        if (tokens->at[i].stop >= STOP_SENTENCE) break;
    }
    return false;
}

// "I don't have a turntable": what the seller would try it with, and none of its parts. "Solid oak, no
// veneer": what it is not made of.
bool absent_is_another(const struct tokens *tokens, size_t i, size_t end) {
    if (token_is(tokens, i, "no") && end == i + 2 &&
        ANY(tokens, end - 1, "veneer", "veneers", "plywood", "chipboard", "laminate", "fiberboard",
            "hardboard") &&
        !ANY(tokens, end, "left", "on", "at", "along", "round", "around"))
        return true;
    bool home =
        i > 0 && ANY(tokens, i - 1, "i", "we", "just", "really", "simply") &&
        ANY(tokens, i, "don't", "dont", "haven't", "havent", "never") &&
        ANY(tokens, end - 1, "wall", "walls", "room", "space", "house", "yard", "garden", "garage", "place",
            "kitchen", "floor", "porch", "fireplace", "heart", "time", "strength", "patience", "money",
            "energy", "truck", "ceiling", "ceilings", "skill", "skills", "shop", "barn", "kids");
    if (home) return true; // "we don't have the wall for it anymore"
    return i > 0 && ANY(tokens, i - 1, "i", "we", "but", "and") &&
           ANY(tokens, i, "don't", "dont", "haven't", "havent", "have", "got", "without", "lack") &&
           ANY(tokens, end - 1, "turntable", "player", "deck", "gramophone", "phonograph", "projector",
               "viewer", "tester", "meter", "multimeter", "gauge", "scales", "loupe", "magnifier",
               "blacklight", "stereo", "hi-fi", "hifi", "computer", "pc", "console");
}

bool absent_is_of_deeds(const struct fault_reader *r, size_t i) {
    static const char *const gifts[] = {"heat", "light", "lights", "power",  "sound",
                                        "hum",  "spin",  "spark",  "picture"};
    static const char *const movers[] = {"fan",     "motor",  "blower", "lamp",  "bulb",
                                         "display", "screen", "light",  "lights"};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, i, "no") || !token_among(tokens, i + 1, movers, COUNT(movers))) return false;
    bool before = i > 2 && token_is(tokens, i - 1, ",") && token_among(tokens, i - 2, gifts, COUNT(gifts)) &&
                  token_is(tokens, i - 3, "no");
    bool behind = token_is(tokens, i + 2, ",") &&
                  ((token_is(tokens, i + 3, "no") && token_among(tokens, i + 4, gifts, COUNT(gifts))) ||
                   token_is(tokens, i + 3, "nothing"));
    return before || behind;
}

// "The farmer that goes with it is missing": which one it is, between it and its verb; how many tokens.
size_t absent_that_goes(const struct tokens *tokens, size_t i) {
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE || !ANY(tokens, i, "that", "which", "who")) return 0;
    size_t at =
        i + 1 + ANY(tokens, i + 1, "should", "would", "originally", "once", "always", "usually", "used");
    at += ANY(tokens, at, "to", "originally");
    if (!ANY(tokens, at, "goes", "go", "went", "comes", "come", "came", "belongs", "belong", "belonged",
             "rides", "sits", "fits", "sat", "stands", "stood", "lives", "lived"))
        return 0;
    at++;
    at += ANY(tokens, at, "along", "together", "originally");
    if (!ANY(tokens, at, "with", "to", "in", "on", "inside", "under", "beside")) return 0;
    at++;
    at += ANY(tokens, at, "the", "this", "each");
    return ANY(tokens, at, "it", "them", "these", "this", "set", "top", "back", "front", "side", "kit",
               "game", "toy") ||
                   (at < tokens->count && ANY(tokens, at - 1, "the", "this", "each") &&
                    tokens->at[at].kind == TOKEN_WORD)
               ? at + 1 - i
               : 0;
}

// "Buckle missing its prong": the buckle is there, and the buckle's prong is what lacks.
const char *absent_object(struct fault_reader *r, const struct fault_hit *hit, const char *part) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to + 1;
    bool one = at < tokens->count && tokens->at[at].kind == TOKEN_WORD && !r->scope.fault[at] &&
               (at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE);
    if (!one || !(token_is(tokens, hit->to, "the") || token_is(tokens, hit->to, "its"))) return part;
    note_take(r->note, at, at + 1, TAKEN_FLAW);
    return arena_format(r->note->arena, "%s %s", part, fault_words(r->note, at, at + 1));
}

// "Pig absent" of a farm set, "the farmer is gone" of a barn: what a picture word names is a piece of it.
bool absent_is_figure(const struct fault_reader *r, size_t i) {
    const char *type = r->note->record->type.value;
    const struct family *family = r->note->record->family;
    if ((r->note->taken[i] != TAKEN_VALUE && r->note->taken[i] != TAKEN_NOT) || !type || !family)
        return false;
    static const char *const sets[] = {"set",    "ark",     "farm",    "barn",  "stable", "castle", "fort",
                                       "circus", "village", "station", "house", "ship",   "zoo"};
    bool set = false;
    for (size_t k = 0; k < COUNT(sets); k++) set |= strstr(type, sets[k]) != NULL;
    struct word_entry entry;
    return set && (text_same(family->rule.id, "toys") || text_same(family->rule.id, "games-puzzles")) &&
           (r->note->taken[i] == TAKEN_VALUE || word_at(r->note, i, 1u << USE_THEME, &entry) == 1);
}
