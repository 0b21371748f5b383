// SPDX-License-Identifier: MIT
// The number that a note begins with: "six pressed glass goblets", and what further kinds it tells behind
// them: "7 plates 2 bowls 1 lid".
#include <string.h>

#include "notes/any.h"
#include "notes/counts.h"
#include "notes/dimension.h"
#include "notes/number.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { PHRASE_MOST = 6 };

static const uint32_t looks = (1u << USE_COLOR) | (1u << USE_MATERIAL) | (1u << USE_SHAPE) |
                              (1u << USE_PATTERN) | (1u << USE_STYLE) | (1u << USE_FINISH) |
                              (1u << USE_TECHNIQUE);

bool count_is_head(const struct note *note, size_t i) {
    if (note->tokens.at[i].starts && i < PHRASE_MOST) return true;
    bool numbered = i == 3 && token_is(&note->tokens, 2, ":") && note->tokens.at[1].kind == TOKEN_FIGURE;
    if (numbered &&
        ANY(&note->tokens, 0, "box", "lot", "crate", "bin", "shelf", "bag", "drawer", "tote", "tub"))
        return true;
    bool lot = i == 2 && token_is(&note->tokens, 1, ":") &&
               ANY(&note->tokens, 0, "lot", "selling", "group", "bundle", "set");
    static const char *const leads[] = {"i have",
                                        "i've got",
                                        "i have got",
                                        "we have",
                                        "we've got",
                                        "here are",
                                        "here's",
                                        "here is",
                                        "these are",
                                        "this is",
                                        "selling",
                                        "i'm selling",
                                        "for sale",
                                        "for sale :",
                                        "up for sale",
                                        "offering",
                                        "you get",
                                        "you are getting",
                                        "what you get is",
                                        "what you are getting is",
                                        "got",
                                        "have",
                                        "listing",
                                        "there you have",
                                        "offered are",
                                        "this lot is",
                                        "the lot is",
                                        "it is",
                                        "it's",
                                        "they are",
                                        "this one is",
                                        "up for grabs",
                                        "i am selling",
                                        "we are selling",
                                        "for sale are",
                                        "up for sale are",
                                        "here we have",
                                        "we are offering",
                                        "this is a lot of",
                                        "i am offering",
                                        "you will get",
                                        "you'll get",
                                        "you receive",
                                        "you will receive",
                                        "we've",
                                        "there you go"};
    if (i > 0 && i < PHRASE_MOST && token_longest(&note->tokens, 0, leads, COUNT(leads)) == i) return true;
    return i == 0 || lot;
}

// "lot", "box", "size" before a number: it numbers, not counts.
bool count_is_numbering(const struct note *note, size_t i) {
    return i > 0 && ANY(&note->tokens, i - 1, "box", "lot", "bin", "no", "number", "#", "size", "sz", "shelf",
                        "page", "model", "tape", "side", "level", "volume", "vol", "part", "step", "$", "bag",
                        "crate", "item", ".", "-", "/", "no.", "top", "disc");
}

static bool is_there(const struct note *note, size_t i) {
    if (i == 0) return false;
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i - 1, "there's", "theres")) return true;
    return i > 1 && ANY(tokens, i - 1, "are", "is", "were") && token_is(tokens, i - 2, "there");
}

size_t count_look(const struct note *note, size_t i) {
    static const char *const words[] = {
        "big",      "small",    "large",   "little",    "short",    "long",    "medium",  "different",
        "odd",      "tall",     "wide",    "narrow",    "plain",    "striped", "spotted", "assorted",
        "mixed",    "matching", "fancy",   "wooden",    "larger",   "smaller", "bigger",  "longer",
        "shorter",  "taller",   "various", "thick",     "thin",     "flat",    "curved",  "straight",
        "dark",     "light",    "pale",    "identical", "finished", "fluted",  "footed",  "checked",
        "flowered", "floral",   "printed", "painted",   "deep",     "shallow"};
    struct word_entry entry;
    if (i >= note->tokens.count || note->tokens.at[i].kind != TOKEN_WORD || note->fault_word[i]) return 0;
    size_t n = word_at(note, i, looks, &entry);
    return n ? n : token_among(&note->tokens, i, words, COUNT(words)) ? 1 : 0;
}

static bool is_over(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

// What holds goods, or comes beside them, is none of them: "six spoons and a box".
static bool is_holder(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "box", "case", "bag", "tin", "crate", "chest", "rack", "basket", "folder",
               "book", "pouch", "lid", "manual", "key", "cord", "charger", "booklet", "sleeve", "album",
               "binder", "roll", "card", "leaflet", "receipt", "slipcase", "trunk", "holder");
}

// "1 lid", "one bolster cover", "a bowl" at token `i` behind the number: the token behind the noun; or 0.
static size_t one_kind(const struct note *note, size_t i, size_t noun, bool article) {
    enum { LOOKS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    struct part part;
    struct noun_found goods;
    if (!article && part_at(note, i, &part)) return i + 1;
    for (size_t k = i; k < i + LOOKS_MOST && k < tokens->count; k++) {
        if (noun_at(note, k, &goods) && (goods.thing || goods.uses & (1u << USE_THING)) && !goods.gated) {
            size_t last = goods.to - 1;
            bool same = text_same(tokens->at[last].one, tokens->at[noun].one) && goods.to == k + 1 && k == i;
            bool bound = is_over(note, goods.to) ||
                         ANY(tokens, goods.to, "and", "&", "in", "all", "with", "to", "that", "for", "of");
            struct noun_found first;
            bool kin = !article || (noun_at(note, noun, &first) && first.family && goods.family &&
                                    text_same(first.family, goods.family));
            if (same || goods.part || is_holder(note, last) || note->fault_word[k] || !bound || !kin ||
                tokens->at[last].one != tokens->at[last].fold)
                return 0;
            return goods.to;
        }
        if (tokens->at[k].stop != STOP_NONE || note->fault_word[k] || tokens->at[k].kind != TOKEN_WORD) break;
    }
    return 0;
}

// Further kinds behind the noun: "2 bowls 1 lid", ", 6 saucers", "and six square ones". Subsets ("2 good 2
// chipped") have no noun. How many they are.
static int further_kinds(const struct note *note, size_t from, size_t noun) {
    const struct tokens *tokens = &note->tokens;
    int sum = 0;
    struct part part;
    for (size_t k = noun + 1; k < tokens->count && k < noun + 4 * PHRASE_MOST;) {
        size_t start = k;
        if (ANY(tokens, k, ",", "and", "&", "+", "plus")) k++;
        if (k > start && ANY(tokens, k, "and", "plus")) k++;
        bool only = k > start && ANY(tokens, k, "only", "just") && ++k;
        size_t more;
        bool joined = k > start && ANY(tokens, k - 1, "and", "&", "+", "plus");
        bool article = joined && ANY(tokens, k, "a", "an");
        int next = article ? 1 : number_whole(tokens, k, &more);
        if (article) more = 1;
        if (!next || k + more >= tokens->count || note->taken[k] == TAKEN_MEASURE) break; // "9 inches tall"
        if (ANY(tokens, k + more, "inches", "feet", "foot", "inch", "pounds", "ounces", "pints", "gallons",
                "yards"))
            break;
        size_t look = count_look(note, k + more);
        if (joined && look && is_over(note, k + more + look)) return sum + next; // "and two small"
        if (joined && look && ANY(tokens, k + more + look, "ones", "one") &&
            is_over(note, k + more + look + 1))
            return sum + next; // "and six square ones"
        if (next == 1) {
            size_t end = one_kind(note, k + more, noun, article);
            if (!end) break;
            sum += next;
            k = end;
            continue;
        }
        size_t other = count_plural(note, k + more);
        if (!other || tokens->at[other].kind != TOKEN_WORD || note->fault_word[other] ||
            count_is_stopper(note, other) || ANY(tokens, other, "ones"))
            break;
        bool same = text_same(tokens->at[other].one, tokens->at[noun].one);
        // "Two wooden planes, three iron planes", and no "six plates, two plates chipped"
        if (same && !(look && count_look(note, from) && is_over(note, other + 1))) break;
        if (!same && part_at(note, other, &part) && !text_same(part.name, "lid")) break;
        if (ANY(tokens, other + 1, "for", "to") &&
            ANY(tokens, other + 2, "them", "these", "it", "go", "fit", "match"))
            break; // "6 stair rods and 11 eyes for them"
        if ((only && !is_over(note, other + 1)) || ANY(tokens, other + 1, "that", "which", "not", "i'm"))
            break; // "plus two spoons that I keep"
        sum += next;
        k = other + 1;
    }
    return sum;
}

// "Eight round (and six square doilies)": how many the first kind are, where the second has the noun.
static int first_kind(const struct note *note, size_t i, size_t *taken) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0, more = 0;
    int first = number_whole(tokens, i, &number);
    size_t look = first > 1 ? count_look(note, i + number) : 0;
    size_t at = i + number + look;
    if (!look || !ANY(tokens, at, "and", "&", "plus", "+")) return 0;
    int second = number_whole(tokens, at + 1, &more);
    if (second < 1 || !count_look(note, at + 1 + more)) return 0;
    *taken = at + 1 - i;
    return first;
}

// "Three (out of an original set of four)" canisters: how many tokens of the whole stand behind the number.
static size_t of_whole(const struct note *note, size_t i, int count) {
    static const char *const joints[] = {"out of",      "of",           "from",           "left of",
                                         "left out of", "remaining of", "remaining from", "left from"};
    const struct tokens *tokens = &note->tokens;
    size_t at = i + token_longest(tokens, i, joints, COUNT(joints)), number;
    if (at == i) return 0;
    if (ANY(tokens, at, "a", "an", "the", "what")) at++;
    if (token_phrase(tokens, at, "was a")) at += 2;
    size_t all = 0;
    int of = number_whole(tokens, at, &all); // "11 of 12 juice glasses", "four of the five original goblets"
    bool original = ANY(tokens, at + all, "original");
    size_t noun = of > count ? count_plural(note, at + all + original) : 0;
    struct part part;
    if (noun && !part_at(note, noun, &part) && (original || (at == i + 1 && token_is(tokens, i, "of"))) &&
        !note->fault_word[noun] &&
        !ANY(tokens, noun + 1, "are", "have", "is", "has", "were", "need", "work", "missing"))
        return at + all + original - i;
    if (ANY(tokens, at, "original", "larger", "bigger", "full", "complete")) at++;
    if (!ANY(tokens, at, "set", "service", "lot", "suite", "series") || !token_is(tokens, at + 1, "of"))
        return 0;
    int whole = number_whole(tokens, at + 2, &number);
    return whole > count ? at + 2 + number - i : 0;
}

// "Six pressed glass goblets", "7 plates 2 bowls 1 lid", "there's 8 no 7 plates".
bool count_head_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t lead = i;
    if (ANY(tokens, i, "about", "around", "roughly", "approx", "approximately", "maybe", "over", "some", "~"))
        i++;
    size_t number = 0;
    bool there = is_there(note, lead);
    if (!count_is_head(note, lead) && !(there && !note->record->count)) return false;
    int count = count_number(note, i, &number);
    size_t opening = 0;
    int first = count > 1 ? first_kind(note, i, &opening) : 0;
    if (first) i += opening, count = count_number(note, i, &number);
    size_t whole = count > 1 ? of_whole(note, i + number, count) : 0;
    if (whole) number += whole;
    if (!count || count_is_numbering(note, lead) || token_phrase(tokens, i + number, "sets of")) return false;
    struct part part;
    bool about = token_phrase(tokens, i + number, "or so") > 0;
    if (about) number += 2;
    size_t noun = count_plural(note, i + number);
    bool lot = token_is(tokens, i + number + 1, "lot") || token_is(tokens, i + number + 2, "lot");
    if (!noun && !(count == 1) && !lot) return false;
    if (there && noun && (part_at(note, noun, &part) || note->fault_word[noun])) return false;
    bool within = there && lead > 1 && ANY(tokens, lead - 2, "inside", "it", "within", "lid", "drawer");
    if (within || (there && !count_is_head(note, lead) && count_is_of_other(note, lead, noun)))
        return false; // "picnic hamper. Inside there's four plates"
    if (first && !noun) return false;
    if (count == 1 && !first) return false;
    count += first;
    *tally = (struct tally){count, i + number - lead, noun ? tokens->at[noun].one : NULL, about};
    size_t less = noun && token_is(tokens, noun + 1, ",") ? noun + 2 : noun + 1;
    if (noun && ANY(tokens, less, "minus", "less")) {
        size_t words;
        int left = count_changed(note, less, count, &words);
        if (left > 0) tally->count = left;
    }
    if (noun) tally->count += further_kinds(note, i + number, noun);
    return true;
}
