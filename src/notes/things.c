// SPDX-License-Identifier: MIT
// The head noun is chosen by grammar, not by the nearest word. The note is cut into runs of words (chunk.h),
// whose last noun names them; one behind "for", "with", "in", "from", "like" is something else than the
// thing; "set of", "box of" only count it. Of those that are left, the first that is a subject is the thing.
// Nouns that in speech are mostly no goods (garage, side, thing) wait until nothing else is there.
#include "notes/things.h"

#include <stdint.h>
#include <string.h>

#include "notes/any.h"
#include "notes/chunk.h"
#include "notes/kin.h"
#include "notes/number.h"
#include "text/order.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum role { ROLE_THING, ROLE_LATER, ROLE_WITH, ROLE_FOR, ROLE_PLACE, ROLE_LIKE, ROLE_COUNTS };

static bool is_sentence_end(const struct token *t) {
    return t->stop >= STOP_SENTENCE;
}

// "set of", "box of", "bag of": what follows "of" is the thing.
static bool is_measure_noun(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "set",    "pair",   "lot",     "box",        "bag",        "tin",     "jar",     "bunch",  "pr",
        "pile",   "stack",  "group",   "collection", "dozen",      "couple",  "piece",   "pieces", "bottom",
        "part",   "roll",   "bundle",  "tray",       "case",       "handful", "sort",    "kind",   "copy",
        "type",   "number", "packet",  "pack",       "assortment", "load",    "carton",  "tub",    "copies",
        "drawer", "bucket", "hank",    "skein",      "sets",       "pairs",   "style",   "reel",   "top",
        "length", "row",    "nest",    "quantity",   "selection",  "crate",   "some",    "most",   "inside",
        "bit",    "boxful", "trio",    "half",       "one",        "shoebox", "four",    "two",    "three",
        "back",   "base",   "front",   "side",       "underside",  "edition", "mess",    "sack",   "basket",
        "reels",  "rolls",  "bundles", "packets",    "coils",      "coil",    "lengths", "bags",   "tins",
        "jars",   "crates", "bunches", "full",       "bowlful",    "six",     "remains", "yards",  "yard",
        "feet",   "boxes",  "volume"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool is_opening(const struct tokens *tokens, size_t i) { // does the sentence, or "I", stand before?
    static const char *const words[] = {"i", "we", "i've", "just", "also", "only"};
    return i == 0 || is_sentence_end(&tokens->at[i - 1]) || token_among(tokens, i - 1, words, COUNT(words));
}

enum turn { TURN_ON, TURN_THING, TURN_WITH, TURN_FOR, TURN_PLACE, TURN_LIKE };

// What the word before a noun, at `i`, makes of it; TURN_ON: nothing yet.
static enum turn turn_of(const struct tokens *tokens, size_t i) {
    static const char *const place[] = {
        "from", "in",     "on",     "at",     "by",      "near",    "under",   "inside", "behind", "into",
        "onto", "over",   "off",    "around", "through", "between", "against", "above",  "below",  "up",
        "down", "beside", "during", "across", "along",   "past",    "until",   "after",  "before"};
    static const char *const with[] = {
        "with",    "w",       "w/",   "has",   "have",  "had",     "includes", "including", "plus",
        "without", "w/o",     "no",   "needs", "got",   "missing", "lacks",    "get",       "gets",
        "nor",     "neither", "want", "wants", "minus", "holds",   "holding"};
    static const char *const fits[] = {"for", "fits", "fit", "suits", "to"};
    static const char *const like[] = {"like", "than", "as", "resembles", "imitating", "unlike", "not"};
    static const char *const intro[] = {
        "is",      "its",    "it's",   "this",    "that's",  "these",  "they're",   "are",    "found",
        "selling", "bought", "picked", "listing", "here",    "here's", "there's",   "theres", "be",
        "called",  "was",    "next",   "item",    "another", "heres",  "inherited", "thats"};
    if (token_among(tokens, i, intro, COUNT(intro))) return TURN_THING;
    bool numbers =
        token_is(tokens, i + 1, ".") || (i + 1 < tokens->count && tokens->at[i + 1].kind == TOKEN_FIGURE);
    if (token_is(tokens, i, "no") && numbers) return TURN_ON; // "No. 5 bench plane"
    static const char *const mends[] = {"a", "an", "it's", "its"};
    if (token_is(tokens, i, "no") && token_among(tokens, i + 1, mends, COUNT(mends))) return TURN_THING;
    if (token_among(tokens, i, with, COUNT(with))) {
        bool mine = token_is(tokens, i, "have") || token_is(tokens, i, "got") || token_is(tokens, i, "had");
        return mine && is_opening(tokens, i) ? TURN_THING : TURN_WITH;
    }
    if (token_among(tokens, i, fits, COUNT(fits))) return TURN_FOR;
    if (token_is(tokens, i, "like") && i > 0 && token_is(tokens, i - 1, "more")) return TURN_THING;
    bool looks = token_is(tokens, i, "like") && i > 0 && ANY(tokens, i - 1, "looks", "look", "seems");
    if (looks && (is_opening(tokens, i - 1) ||
                  (ANY(tokens, i - 2, "it", "this", "that") && is_opening(tokens, i - 2))))
        return TURN_THING; // "Looks like a fish kettle"
    if (token_among(tokens, i, like, COUNT(like))) return TURN_LIKE;
    if (token_among(tokens, i, place, COUNT(place))) return TURN_PLACE;
    return TURN_ON;
}

// "Dressing table set in blue glass: tray": a set is told before its pieces; but "box lot: 6 brass cleats".
static bool is_of_several(const struct note *note, size_t colon) {
    for (size_t k = 0; k < colon; k++)
        if (ANY(&note->tokens, k, "set", "service", "suite", "kit", "outfit", "canteen", "garniture"))
            return true;
    return false;
}

static enum role role_of(const struct note *note, size_t i) {
    static const enum role roles[] = {
        [TURN_WITH] = ROLE_WITH, [TURN_FOR] = ROLE_FOR, [TURN_PLACE] = ROLE_PLACE, [TURN_LIKE] = ROLE_LIKE};
    const struct tokens *tokens = &note->tokens;
    bool first = true; // first sentence of the note, or first entry of a list
    for (size_t k = tokens->at[0].kind == TOKEN_SIGN; k < i && first; k++)
        first = !is_sentence_end(&tokens->at[k]);
    enum role thing = first ? ROLE_THING : ROLE_LATER;
    for (size_t back = 0; i > 0 && back < 9; back++, i--) {
        if (tokens->at[i - 1].stop >= STOP_COMMA) break;
        if (note->taken[i - 1] == TAKEN_ASIDE) return thing;
        if (token_is(tokens, i - 1, "of")) {
            if (i >= 2 && note->taken[i - 2] == TAKEN_ASIDE)
                return thing; // "see last note for … of the bench"
            if (i >= 2 && is_measure_noun(tokens, i - 2)) return thing;
            return i >= 2 && token_is(tokens, i - 2, "made") ? ROLE_LIKE : ROLE_FOR;
        }
        struct word_entry entry;
        bool stuffs =
            token_is(tokens, i - 1, "and") && i > 1 &&
            word_at(note, i - 2, 1u << USE_MATERIAL, &entry) == 1 && // "canvas and leather gun case"
            (i == 2 || word_at(note, i, 1u << USE_MATERIAL, &entry) == 1);
        if (!stuffs && (token_is(tokens, i - 1, "and") || token_is(tokens, i - 1, "or")))
            return back < 8 ? ROLE_WITH : thing;
        // "there's 9 no 8 saucers": that "no" mends the number
        enum turn turn = note->taken[i - 1] == TAKEN_COUNT ? TURN_ON : turn_of(tokens, i - 1);
        if (turn == TURN_THING) return thing;
        if (turn != TURN_ON) return roles[turn];
    }
    bool comma = i > 0 && tokens->at[i - 1].stop == STOP_COMMA && note->taken[i - 1] != TAKEN_FILLER;
    // "Dressing table set in blue glass: tray, two candlesticks": what it consists of
    bool colon = i > 2 && token_is(&note->tokens, i - 1, ":") && first && is_of_several(note, i - 1);
    return comma || colon ? ROLE_LATER : thing;
}

// "Piece of printed cloth": the stuff is the thing.
static bool is_piece_of(const struct note *note, size_t from) {
    static const char *const pieces[] = {"piece",   "length", "bolt",  "roll", "offcut",
                                         "remnant", "yard",   "yards", "sheet"};
    return from > 1 && token_is(&note->tokens, from - 1, "of") &&
           token_among(&note->tokens, from - 2, pieces, sizeof pieces / sizeof *pieces);
}

// "Board game called Harbor Tithe": what is called so is a name, whatever the word means.
static bool is_named(const struct note *note, size_t i) {
    static const char *const cues[] = {"called", "named", "titled", "entitled"};
    const struct token *at = note->tokens.at;
    if (!at[i].capital || note->tokens.flat) return false;
    while (i > 0 && at[i - 1].capital && at[i - 1].stop == STOP_NONE) i--; // "called Harrow Lane"
    return i > 0 && token_among(&note->tokens, i - 1, cues, sizeof cues / sizeof *cues);
}

static const uint32_t stuff = (1u << USE_MATERIAL) | (1u << USE_COLOR) | (1u << USE_TECHNIQUE) |
                              (1u << USE_PATTERN) | (1u << USE_FINISH);

static int score(const struct note *note, const struct noun_found *found, size_t from, size_t order) {
    static const int by_role[] = {[ROLE_THING] = 100, [ROLE_LATER] = 55, [ROLE_WITH] = 22, [ROLE_FOR] = 16,
                                  [ROLE_PLACE] = 12,  [ROLE_LIKE] = 4,   [ROLE_COUNTS] = 2};
    int value = by_role[role_of(note, from)] - (int)(order < 12 ? order : 12) * 2;
    if (token_is(&note->tokens, found->to, "of") && is_measure_noun(&note->tokens, found->to - 1))
        value -= 60;
    if (found->thing) value += 12;
    if (!found->thing && (found->uses & stuff) && !is_piece_of(note, from)) value -= 40;
    static const char *const numbers[] = {"one", "two",   "three", "four", "five",
                                          "six", "seven", "eight", "nine", "ten"};
    if (token_among(&note->tokens, found->to - 1, numbers, COUNT(numbers))) value -= 100; // "three holed"
    if (is_named(note, found->from)) value -= 70;
    if (found->candidate) value -= 6;
    struct word_entry beside; // "a canvas and leather rucksack"
    if (found->uses & (1u << USE_MATERIAL) && ANY(&note->tokens, found->to, "and", "&") &&
        word_at(note, found->to + 1, 1u << USE_MATERIAL, &beside) == 1 &&
        found->to + 2 < note->tokens.count && note->tokens.at[found->to + 1].stop == STOP_NONE)
        value -= 60;
    struct word_entry made; // "set of copper measures"
    bool of_stuff = found->gated && found->from > 0 && note->tokens.at[found->from - 1].stop == STOP_NONE &&
                    word_at(note, found->from - 1, 1u << USE_MATERIAL, &made) == 1 &&
                    note->tokens.at[found->to - 1].one != note->tokens.at[found->to - 1].fold;
    if (found->gated) value -= found->thing ? 12 : found->candidate || of_stuff ? 20 : 45;
    bool its =
        from > 0 && (token_is(&note->tokens, from - 1, "the") || token_is(&note->tokens, from - 1, "its"));
    if (found->part || (its && found->uses & (1u << USE_PART))) value -= its ? 45 : 15; // "the lid is tin"
    return value + 2 * (int)(found->to - found->from);
}

// "Desk & attached seat", "compass & protractor": two goods, of which the first is the thing; but "hat & coat
// stand", "salt & pepper pots".
static bool is_pair_of(const struct note *note, const struct chunk *chunk) {
    const struct noun_found *a = &chunk->nouns[chunk->count - 2], *b = a + 1;
    bool many = note->tokens.at[a->to - 1].one != note->tokens.at[a->to - 1].fold; // "rulers & set squares"
    if (!token_is(&note->tokens, a->to, "&") || b->to != chunk->to || (b->to > b->from + 1 && !many))
        return false;
    if (a->uses & stuff || b->uses & stuff || !a->noun || !b->noun) return false;
    bool own =
        b->from > a->to + 1 && ANY(&note->tokens, a->to + 1, "attached", "matching", "separate", "its");
    bool led = a->from > chunk->from || (a->thing && a->to > a->from + 1);
    return own || (led && b->from == a->to + 1);
}

// "Cane box", "horn beaker stand", "farmhouse bench": a stuff or a style that is goods as well, before goods
// that mostly are none.
static bool is_made_of(const struct note *note, const struct noun_found *stuff_of,
                       const struct noun_found *goods) {
    static const char *const holders[] = {
        "box",   "bag",    "case",     "can",   "stand", "bench",  "bin",  "cart",   "crate",  "desk",
        "shelf", "table",  "trunk",    "bell",  "belt",  "button", "hook", "key",    "plane",  "ring",
        "rod",   "rope",   "scale",    "sign",  "boat",  "ball",   "bed",  "cross",  "switch", "wheel",
        "chain", "drawer", "cupboard", "boxes", "bags",  "cases",  "cans", "stands", "benches"};
    return token_among(&note->tokens, goods->from, holders, COUNT(holders)) && goods->to == goods->from + 1 &&
           stuff_of->to == goods->from && stuff_of->uses & ((1u << USE_MATERIAL) | (1u << USE_STYLE)) &&
           note->tokens.at[stuff_of->to - 1].one == note->tokens.at[stuff_of->to - 1].fold;
}

// The noun that names the run: the last, unless it is one that says nothing ("lamp condition").
static const struct noun_found *head_of(const struct note *note, const struct chunk *chunk) {
    const struct noun_found *last = chunk->count > 1 ? &chunk->nouns[chunk->count - 1] : NULL;
    // Without capitals notes run on: goods of the rules before a word that few would sell.
    if (last && note->tokens.flat && !last->thing && last[-1].thing && !last[-1].part &&
        !(last[-1].uses & stuff))
        return last - 1;
    // "Ice skates ladies white", "sheet music bundle": the goods before a color or a word of number
    bool vague = last && last->to == last->from + 1 &&
                 (last->uses & (1u << USE_COLOR) || (last->uses & (1u << USE_MATERIAL) && !last->thing) ||
                  ANY(&note->tokens, last->from, "bundle", "collection", "stack", "pile", "bunch",
                      "assortment", "lot", "clockwork"));
    // "Cream separator hand crank": how it is driven
    vague |= last && ANY(&note->tokens, last->to - 1, "crank", "cranked", "treadle") && !last[-1].part &&
             last->from > chunk->from && chunk->nouns[chunk->count - 2].to == last->from;
    if (vague && (last[-1].thing || (last[-1].uses & (1u << USE_THING) && !last[-1].gated)) &&
        !(last[-1].uses & stuff))
        return last - 1;
    if (last && is_pair_of(note, chunk)) return last - 1;
    size_t number; // "paraffin stove one burner"
    if (last && last->from == last[-1].to + 1 &&
        (last[-1].thing || (last[-1].uses & (1u << USE_THING) && !last[-1].gated)) &&
        note->tokens.at[last->to - 1].one == note->tokens.at[last->to - 1].fold &&
        number_whole(&note->tokens, last->from - 1, &number) > 0)
        return last - 1;
    for (size_t i = chunk->count; i > 0; i--) {
        const struct noun_found *noun = &chunk->nouns[i - 1];
        if (i > 1 && is_named(note, noun->from)) continue;
        const struct noun_found *before = noun - (i > 1);
        enum taken lead = (enum taken)note->taken[before->from]; // "four glasses"
        if (!noun->gated || noun->thing || noun->candidate || i == 1 || lead == TAKEN_VALUE ||
            lead == TAKEN_COUNT || (before->uses & stuff && !before->thing) ||
            is_made_of(note, before, noun)) // "brass thing"
            return noun;
    }
    return NULL;
}

// "tin frog", "wind up car": a picture word that names the run is a figure of it.
static bool figure_of(struct note *note, const struct chunk *chunk, struct noun_found *found) {
    struct word_entry entry;
    if (chunk->subject == SIZE_MAX || !note->book) return false;
    bool made = chunk->toy;
    for (size_t i = chunk->from; i < chunk->subject; i++)
        made |= word_at(note, i, (1u << USE_MATERIAL) | (1u << USE_TECHNIQUE), &entry) > 0;
    if (chunk->count && chunk->nouns[chunk->count - 1].from >= chunk->subject &&
        (chunk->nouns[chunk->count - 1].thing ||
         (!chunk->nouns[chunk->count - 1].gated && !chunk->nouns[chunk->count - 1].part)))
        return false; // goods of their own: "lamp", "anchor"
    if (!made) return false;
    size_t to = chunk->subject + word_at(note, chunk->subject, 1u << USE_THEME, &entry);
    *found = (struct noun_found){.from = chunk->subject,
                                 .to = to,
                                 .noun = arena_string(note->arena, note->tokens.at[to - 1].one),
                                 .uses = chunk->theme.uses};
    if (to - chunk->subject > 1) found->noun = chunk->theme.phrase;
    return true;
}

static bool in_doubt(const struct note *note, const struct noun_found *found) {
    static const char *const words[] = {"maybe", "possibly", "perhaps",  "might", "think",
                                        "guess", "looks",    "probably", "sure",  "either",
                                        "could", "whether",  "seems",    "idea",  "whatever"};
    const struct tokens *tokens = &note->tokens;
    if (token_is(tokens, found->to, "?")) return true;
    for (size_t back = 1; back <= 6 && back <= found->from; back++) {
        if (tokens->at[found->from - back].stop >= STOP_COMMA) return false;
        if (token_among(tokens, found->from - back, words, COUNT(words))) return true;
    }
    return false;
}

struct pick {
    struct noun_found best;
    int most;
    size_t order;
    bool toy, behind; // behind a noun in the same run-on statement
};

static void offer(struct pick *pick, const struct noun_found *noun, int value, bool toy) {
    if (value <= pick->most) return;
    pick->most = value;
    pick->best = *noun;
    pick->toy = toy;
}

static bool is_vehicle(const struct note *note, size_t i) {
    static const char *const words[] = {"car",        "truck",     "bus",   "train",   "locomotive",
                                        "airplane",   "aeroplane", "plane", "tractor", "robot",
                                        "soldier",    "soldiers",  "tank",  "rocket",  "motorcycle",
                                        "helicopter", "van",       "lorry", "cars",    "trucks"};
    return token_among(&note->tokens, i, words, COUNT(words));
}

// "Old lamp. Brass oil lamp": the same thing by its fuller name.
static bool is_fuller(const struct noun_found *noun, const struct noun_found *best) {
    if (!noun->noun || !best->noun || noun->part || noun->candidate || (noun->gated && !noun->thing))
        return false;
    size_t size = strlen(noun->noun), less = strlen(best->noun);
    return size > less + 1 && noun->noun[size - less - 1] == ' ' &&
           text_same(noun->noun + size - less, best->noun);
}

// "Handle a bit loose. Saucepan.": a part with what is wrong with it, and the thing is told behind.
static bool is_faulty_part(const struct note *note, const struct chunk *chunk,
                           const struct noun_found *head) {
    static const char *const parts[] = {
        "handle", "handles", "lid",    "knob",  "strap",  "spout",  "rim",   "hinge",   "hinges",  "spine",
        "drawer", "drawers", "leg",    "legs",  "foot",   "feet",   "seat",  "back",    "clasp",   "buckle",
        "sole",   "soles",   "heel",   "heels", "zip",    "cuff",   "cuffs", "collar",  "pocket",  "stem",
        "blade",  "dial",    "hands",  "cord",  "flex",   "lead",   "plug",  "switch",  "bellows", "neck",
        "bridge", "strings", "pedal",  "wheel", "wheels", "wick",   "shade", "base",    "top",     "stopper",
        "stone",  "stones",  "cover",  "pages", "door",   "front",  "panel", "catch",   "corner",  "corners",
        "edge",   "edges",   "lining", "hem",   "sleeve", "fringe", "grip",  "rung",    "slat",    "screw",
        "screws", "aerial",  "motor",  "valve", "tip",    "point",  "frame", "sleeves", "latch"};
    enum { NEAR = 4 };
    const struct tokens *tokens = &note->tokens;
    if (!token_among(tokens, head->to - 1, parts, COUNT(parts)) || head->to != chunk->to ||
        !(chunk->from == 0 || tokens->at[chunk->from - 1].stop >= STOP_COMMA))
        return false;
    bool more = chunk->from > 0; // a sentence behind it, or one before
    for (size_t i = head->to; !more && i + 1 < tokens->count; i++) more = tokens->at[i].stop >= STOP_CLAUSE;
    for (size_t i = head->to; i < tokens->count && i < head->to + NEAR && tokens->at[i].stop == STOP_NONE;
         i++)
        if (note->fault_word[i]) return more;
    return chunk->from > 0 && // "box, hinges good"
           ANY(tokens, head->to, "good", "fine", "ok", "okay", "sound", "tight", "firm", "work", "works");
}

static bool answered_by(const struct note *note, size_t i, struct noun_found *noun) {
    struct chunk next;
    if (!chunk_at(note, i, &next)) return false;
    const struct noun_found *head = head_of(note, &next);
    if (!head || !head->thing || head->part) return false;
    *noun = *head;
    return true;
}

// "A bit worn", "a touch rusty": how much, and no bit of a bridle.
static bool is_degree(const struct note *note, const struct noun_found *noun) {
    return noun->from > 0 && token_is(&note->tokens, noun->from - 1, "a") &&
           ANY(&note->tokens, noun->to - 1, "bit", "touch", "tad", "hair", "trace", "shade", "hint") &&
           noun->to < note->tokens.count && note->tokens.at[noun->to].stop == STOP_NONE &&
           !ANY(&note->tokens, noun->to, "for", "with", "and", "in", "by", "from");
}

// "5 hymn boards?? no just the one board": the number is mended, and not the name.
static bool is_named_again(const struct note *note, const struct noun_found *head, size_t at) {
    enum { REACH = 7 };
    if (ANY(&note->tokens, at + 1, ",", "a", "an")) return false; // "rifle case? no, a telescope case"
    for (size_t k = at; k < at + REACH && k < note->tokens.count && note->tokens.at[k].stop < STOP_SENTENCE;
         k++)
        if (text_same(note->tokens.at[k].one, note->tokens.at[head->to - 1].one)) return true;
    return false;
}

static void weigh_chunk(struct note *note, const struct chunk *chunk, struct pick *pick) {
    struct noun_found figure;
    if (figure_of(note, chunk, &figure)) {
        offer(pick, &figure,
              score(note, &(struct noun_found){.from = figure.from, .to = figure.to}, chunk->from,
                    pick->order++),
              chunk->toy || is_vehicle(note, figure.to - 1));
        return;
    }
    struct noun_found holder;
    const struct noun_found *head = purpose_holder(note, chunk, &holder) ? &holder : head_of(note, chunk);
    if (!head) return;
    for (size_t i = head->from; i < head->to; i++)
        if (note->taken[i] != TAKEN_NOT && note->taken[i] != TAKEN_PART && note->taken[i] != TAKEN_SCOPE &&
            !(head->thing && (note->taken[i] == TAKEN_COUNT || note->taken[i] == TAKEN_MEASURE)) &&
            !((head->thing || head->uses & (1u << USE_THING)) &&
              note->taken[head->to - 1] == TAKEN_NOT)) // "500 piece puzzle"
            return;
    if (ANY(&note->tokens, head->to - 1, "job", "lot", "lots")) return; // "job lot of rulers"
    if (is_degree(note, head)) return;
    if (chunk->from > 0 && token_is(&note->tokens, chunk->from - 1, "you"))
        return; // "the thing you hang pots on"
    static const char *const rulers[] = {"size", "sized"};
    size_t number, behind = head->to + 1;
    bool sized = behind < note->tokens.count && (note->tokens.at[behind].kind == TOKEN_FIGURE ||
                                                 number_whole(&note->tokens, behind, &number) > 0);
    if (token_among(&note->tokens, head->to, rulers, COUNT(rulers)) && chunk->from > 0 && !sized)
        return; // "the sheet is letter size"; but "pair of boots size 9"
    if (token_is(&note->tokens, head->to - 1, "pounder") && head->from > 0 &&
        number_whole(&note->tokens, head->from - 1, &number))
        return; // "it's a 5 pounder"
    int value = score(note, head, chunk->from, pick->order++);
    if (thing_is_lacked(note, chunk->from, head->to)) value -= 90;
    static const char *const links[] = {"is", "are", "looks", "feels", "was"};
    bool said = chunk->from > 0 && token_among(&note->tokens, chunk->from - 1, links, COUNT(links));
    if (pick->behind) value -= 45;
    size_t after = chunk->to + 2; // but "recorder? no name on it"
    bool flat_no = after >= note->tokens.count || note->tokens.at[after].stop != STOP_NONE ||
                   ANY(&note->tokens, after, "it's", "its", "it", "a", "an", "just", "actually", "not",
                       "this", "sorry", "wait");
    size_t asked = chunk->to; // "dolls house?? nope, an insect house"
    while (token_is(&note->tokens, asked, "?")) asked++;
    bool rather = asked > chunk->to && ANY(&note->tokens, asked, "more", "it's", "its") &&
                  ANY(&note->tokens, asked + 1, "like", "of", "a", "an");
    if (rather) value -= 90; // "churn? more like a crock"
    if (asked > chunk->to && (token_phrase(&note->tokens, asked, "scratch that") ||
                              (ANY(&note->tokens, asked, "sorry", "wait", "actually", "anyway") &&
                               ANY(&note->tokens, asked + 1, "a", "an", "it's", "its", "no"))))
        value -= 90; // "gramophone? scratch that, a music box"
    if (asked > chunk->to && ANY(&note->tokens, asked, "no", "nope", "nah", "not") &&
        !is_named_again(note, head, asked) &&
        !(token_is(&note->tokens, asked, "not") &&
          ANY(&note->tokens, asked + 1, "sure", "certain", "positive")) &&
        (flat_no || asked > chunk->to + 1 || !token_is(&note->tokens, asked, "no")))
        value -= 90; // "tin sign? no, cardboard"
    // "A linen sheet? embroidered tablecloth": asked, and answered with another
    struct noun_found answer;
    if (token_is(&note->tokens, chunk->to, "?") && answered_by(note, chunk->to + 1, &answer)) value -= 50;
    if (said && head->uses & (1u << USE_MATERIAL)) value -= 70;          // "the lid is tin"
    if (pick->order > 1 && purpose_is_capacity(note, head)) value -= 70; // "pop crate, 24 bottle"
    // "It is light": a noun without an article behind "it is" tells how it is
    bool it = said && chunk->from > 1 && token_is(&note->tokens, chunk->from - 2, "it");
    if (it && head->to == head->from + 1 &&
        note->tokens.at[head->from].one == note->tokens.at[head->from].fold && head->from == chunk->from)
        value -= 70;
    static const char *const labels[] = {"stamp", "label", "sticker", "tag", "decal", "badge", "transfer"};
    static const char *const places[] = {"on", "inside", "under", "underneath"};
    if (pick->order > 1 && token_among(&note->tokens, head->to - 1, labels, COUNT(labels)) &&
        token_among(&note->tokens, head->to, places, COUNT(places)))
        value -= 70; // "there's a bird stamp on the blade"
    // "Cloth, plates all present": ticked off, and no goods
    size_t ticked = head->to + (ANY(&note->tokens, head->to, "all", "is", "are") ? 1 : 0);
    if (pick->order > 1 && ANY(&note->tokens, ticked, "present", "there", "intact", "complete", "accounted"))
        value -= ANY(&note->tokens, head->to - 1, "plates", "pages", "leaves", "maps") ? 90 : 60; // of a book
    size_t held = chunk->from; // "tent, two poles and a bag of pegs"
    if (held > 3 && token_is(&note->tokens, held - 1, "of") &&
        ANY(&note->tokens, held - 2, "bag", "box", "tin", "jar", "packet", "roll") &&
        token_is(&note->tokens, held - 3, "a") && ANY(&note->tokens, held - 4, "and", "with", "plus"))
        value -= 60;
    if (thing_is_taken_back(note, chunk->to)) value -= 90;
    if (is_faulty_part(note, chunk, head)) value -= chunk->from == 0 ? 55 : 40;
    if (chunk->subject != SIZE_MAX && head->to <= chunk->subject) value -= 5;
    enum { OF_ITS_OWN = 60 };
    if (pick->most >= value && value >= OF_ITS_OWN && is_fuller(head, &pick->best)) value = pick->most + 1;
    offer(pick, head, value, chunk->toy);
}

static void set_others(struct note *note, const struct noun_found *best);

// "Mandolin case only", "just the box for a sextant": what the thing would be in; NULL if the thing is there.
static const char *holder_of(const struct note *note, const struct noun_found *found) {
    static const char *const holders[] = {"case", "box",   "lid",    "stand",   "frame",
                                          "base", "cover", "sheath", "cabinet", "bag"};
    static const char *const articles[] = {"a", "an", "the", "old", "its"};
    const struct tokens *tokens = &note->tokens;
    if (token_among(tokens, found->to, holders, COUNT(holders)) && token_is(tokens, found->to + 1, "only") &&
        (found->to + 2 >= tokens->count || tokens->at[found->to + 2].stop != STOP_NONE))
        return tokens->at[found->to].fold;
    if (token_among(tokens, found->to, holders, COUNT(holders)) && token_is(tokens, found->to + 1, ",") &&
        ANY(tokens, found->to + 2, "only", "just") && token_is(tokens, found->to + 3, "the") &&
        found->to + 4 < tokens->count &&
        text_same(tokens->at[found->to + 4].fold, tokens->at[found->to].fold))
        return tokens->at[found->to].fold; // "a telescope case, only the case"
    size_t at = found->from;
    while (at > 0 && token_among(tokens, at - 1, articles, COUNT(articles))) at--;
    if (at < 4 || !ANY(tokens, at - 1, "for", "of", "to") ||
        !token_among(tokens, at - 2, holders, COUNT(holders)))
        return NULL;
    bool only = ANY(tokens, at - 3, "the", "a") && ANY(tokens, at - 4, "just", "only");
    return only ? tokens->at[at - 2].fold : NULL;
}

// "Box of clock parts", "bike spares": parts, and no clock.
static bool is_for_spares(const struct note *note, const struct noun_found *found) {
    const struct tokens *tokens = &note->tokens;
    if (found->part || !ANY(tokens, found->to, "parts", "spares", "bits")) return false;
    return found->to + 1 >= tokens->count || tokens->at[found->to + 1].stop != STOP_NONE ||
           ANY(tokens, found->to + 1, "and", "in", "for", "from", "with", "all");
}

// "A Spirit stove": a word of what it is, with a capital, is no maker.
static void drop_own_brand(struct record *record) {
    size_t kept = 0;
    for (size_t i = 0; i < record->attribute_count; i++) {
        const struct value *value = &record->attributes[i];
        const struct note_span *type = &record->type.span;
        bool within = value->span.from >= type->from && value->span.to <= type->to && type->to > type->from;
        if (strcmp(value->name, "brand") != 0 || !within) record->attributes[kept++] = *value;
    }
    record->attribute_count = kept;
}

static void set_type(struct note *note, const struct pick *pick) {
    const struct noun_found *found = &pick->best;
    struct record *record = note->record;
    if (!record->type.value) {
        size_t from = purpose_from(note, found->from);
        record->type.value = found->noun;
        if (from < found->from)
            record->type.value =
                arena_format(note->arena, "%s %s",
                             utf8_fold(note->arena, note_words(note, from, found->from)), found->noun);
        if (is_for_spares(note, found)) {
            record->type.value = arena_format(note->arena, "%s parts", record->type.value);
            record->family = ruleset_family(note->rules, "parts");
            note_take(note, found->to, found->to + 1, TAKEN_TYPE);
        }
        const char *holder = holder_of(note, found);
        if (holder) record->type.value = arena_format(note->arena, "%s %s", record->type.value, holder);
        enum sure spelled = note_guessed(note, found->from, found->to) ? SURE_LIKELY : SURE_STATED;
        record->type.sure = in_doubt(note, found) ? SURE_GUESS : spelled;
        record->type.span = note_span_of(note, from, found->to);
        note_take(note, from, found->to, TAKEN_TYPE);
        note_reading(note, from, found->to, arena_format(note->arena, "type %s", record->type.value),
                     found->thing ? arena_format(note->arena, "family %s", found->thing->family->rule.id)
                                  : "word book");
        set_others(note, found);
    }
    drop_own_brand(record);
    if (!record->family) record->family = kin_family(note, found, pick->toy);
}

// "A vase or a lamp base": the other one is a candidate.
static void set_others(struct note *note, const struct noun_found *best) {
    struct noun_found found;
    const char **others = arena_array(note->arena, 4, sizeof *others);
    size_t count = 0;
    for (size_t i = 0; i < note->tokens.count && count < 3; i++) {
        if (note->taken[i] != TAKEN_NOT || !noun_at(note, i, &found)) continue;
        bool alternative =
            i > 0 && (token_is(&note->tokens, i - 1, "a") || token_is(&note->tokens, i - 1, "an"));
        alternative =
            alternative && ((i > 1 && token_is(&note->tokens, i - 2, "or")) || in_doubt(note, &found));
        if (alternative && found.noun && !text_same(found.noun, best->noun) && !found.part && !found.gated &&
            note->record->type.sure == SURE_GUESS) {
            others[count++] = found.noun;
            note_take(note, found.from, found.to, TAKEN_TYPE);
        }
        i = found.to - 1;
    }
    if (!note->record->others.count) note->record->others = (struct texts){others, count};
}

// "Bottom of the vase says": the writing's place names the thing.
static void weigh_marked(struct note *note, struct pick *pick) {
    struct noun_found found;
    for (size_t i = 2; i < note->tokens.count; i++) {
        if (note->taken[i] != TAKEN_MARK || !token_is(&note->tokens, i - 2, "of")) continue;
        if (!token_is(&note->tokens, i - 1, "the") && !token_is(&note->tokens, i - 1, "this")) continue;
        if (noun_at(note, i, &found) && found.thing && !found.part) offer(pick, &found, 92, false);
    }
}

// Where nothing else names the thing: "old helmet" is a worry as well as the thing, and the story of where
// it was found may hold the only noun.
static void weigh_left(struct note *note, struct pick *pick) {
    struct noun_found found;
    for (size_t i = 0; i < note->tokens.count; i++) {
        bool left = note->taken[i] == TAKEN_ASIDE || (note->fault_word[i] && note->taken[i] == TAKEN_NOT);
        if (!left || !noun_at(note, i, &found)) continue;
        if (found.thing || !(found.gated || found.part))
            offer(pick, &found, score(note, &found, i, pick->order++), false);
        i = found.to - 1;
    }
}

// "Right, miner's lamp": a word to begin with, and no thing.
static void pass_opener(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->count > 2 && tokens->at[1].stop == STOP_COMMA && note_free(note, 0, 1) &&
        ANY(tokens, 0, "right", "ok", "okay", "so", "well", "now", "anyway", "yes", "yeah", "oh", "hi",
            "hello", "alright", "next", "also", "um", "er", "sorry", "hey", "ah", "lastly", "finally"))
        note_take(note, 0, 2, TAKEN_FILLER);
}

void read_thing(struct note *note) {
    struct pick pick = {.most = 0};
    pass_opener(note);
    struct chunk chunk;
    struct noun_found found;
    for (size_t i = 0; i < note->tokens.count;) {
        if (!chunk_at(note, i, &chunk)) {
            pick.behind = false;
            i++;
            continue;
        }
        weigh_chunk(note, &chunk, &pick);
        pick.behind = chunk.cut;
        i = chunk.to;
    }
    weigh_marked(note, &pick);
    if (pick.most <= 0) weigh_left(note, &pick);
    if (pick.most > 0) set_type(note, &pick);
    // The same noun again is the same thing.
    for (size_t i = 0; i < note->tokens.count && pick.best.noun; i++)
        if (note->taken[i] == TAKEN_NOT && noun_at(note, i, &found) && text_same(found.noun, pick.best.noun))
            note_take(note, found.from, found.to, TAKEN_TYPE);
}
