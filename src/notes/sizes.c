// SPDX-License-Identifier: MIT
// Labelled sizes, kept as the seller wrote them: no system is turned into another, and a size is never a
// length.
#include <string.h>

#include "notes/any.h"
#include "notes/correct.h"
#include "notes/measures.h"
#include "text/order.h"

#define COUNT(list) (sizeof list / sizeof *list)

// The goods are named among the first words, however long the note.
enum { SAID_WITHIN = 200 };

static void keep(struct note *note, size_t from, size_t to, const char *text, size_t taken_from,
                 size_t taken_to) {
    struct value *value = note_attribute(note);
    value->name = "size";
    value->value = text;
    value->span = note_span_of(note, from, to);
    note_reading(note, taken_from, taken_to, "size", "word for a labelled size");
    note_take(note, taken_from, taken_to, TAKEN_VALUE);
}

// "Forty two", "seven and a half", as a label has them; else the seller's own letters.
static const char *size_text(const struct note *note, size_t from, size_t to) {
    struct number number;
    if (!number_at(&note->tokens, from, &number) || !number.said || number.taken > to - from || number.part)
        return note_meant(note, from, to);
    long whole = (long)number.value;
    double rest = number.value - (double)whole;
    if (whole < 1 || (rest > 0 && rest != 0.5)) return note_meant(note, from, to);
    const char *figure = arena_format(note->arena, rest > 0 ? "%ld 1/2" : "%ld", whole);
    size_t at = from + number.taken;
    return at < to ? arena_format(note->arena, "%s %s", figure, note_meant(note, at, to)) : figure;
}

static bool is_wearer(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "kids", "kid's", "kids'", "mens", "men's", "mens'", "mans", "man's",
               "womens", "women's", "ladies", "ladies'", "girls", "girls'", "boys", "boys'", "toddler",
               "youth", "adult", "misses", "juniors", "baby", "infant", "child", "child's", "childrens",
               "children's", "unisex");
}

static bool is_letter_size(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "xs", "s", "m", "l", "xl", "xxl", "xxxl", "2xl", "3xl", "4xl", "small",
               "medium", "large", "x-large", "x-small", "xx-large", "one", "os");
}

static bool is_country(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "us", "uk", "eu", "euro", "eur", "fr", "it", "aus", "u.s", "u.k");
}

static bool is_width(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "wide", "narrow", "regular", "tall", "petite", "long", "short", "d", "ee",
               "eee", "w", "c", "b", "2e", "4e", "half");
}

// "8", "10 wide", "7 US", "UK 9 / EU 43", "M", "3-4", "12-14", "N½", "8 1/2": where the value that begins at
// `i` ends.
static size_t value_end(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    bool country = is_country(note, at) && at + 1 < tokens->count &&
                   (tokens->at[at + 1].kind == TOKEN_FIGURE || tokens->at[at + 1].kind == TOKEN_CODE);
    if (country) at++;
    if (at >= tokens->count) return i;
    struct number number;
    if (ANY(tokens, at, "extra", "x") && ANY(tokens, at + 1, "large", "small", "-") &&
        tokens->at[at].stop == STOP_NONE) {
        at += token_is(tokens, at + 1, "-") ? 3 : 2;
    } else if (token_is(tokens, at, "one") ||
               (is_letter_size(note, at) && tokens->at[at].kind == TOKEN_WORD)) {
        if (token_is(tokens, at, "one")) return i;
        at++;
        if (at + 1 < tokens->count && token_is(tokens, at, "/") && is_letter_size(note, at + 1)) at += 2;
    } else if (tokens->at[at].kind == TOKEN_FIGURE && number_at(tokens, at, &number)) {
        bool letter = strlen(number.tail) == 1 && strchr("wbcdstrlmh", *number.tail);
        letter |= text_same(number.tail, "x") && // "6X" of a child's; but "20x 16"
                  !(at + 1 < tokens->count && tokens->at[at + 1].kind == TOKEN_FIGURE);
        if (*number.tail && !letter && !text_same(number.tail, "t") && !is_letter_size(note, at)) return i;
        at += number.taken;
        bool range = at + 1 < tokens->count &&
                     (token_is(tokens, at, "-") || token_is(tokens, at, "/") || token_is(tokens, at, "x")) &&
                     tokens->at[at + 1].joined && tokens->at[at].joined &&
                     tokens->at[at + 1].kind == TOKEN_FIGURE;
        if (range) at += 2;
        if (token_is(tokens, at, "to") && at + 1 < tokens->count && tokens->at[at + 1].kind == TOKEN_FIGURE)
            at += 2;
    } else if (number_at(tokens, at, &number) && number.said) {
        at += number.taken;
    } else if (tokens->at[at].kind == TOKEN_WORD && tokens->at[at].to - tokens->at[at].from == 1 &&
               (tokens->at[at].capital || tokens->flat) && !token_is(tokens, at, "a")) {
        at++; // rings of the British system: "N½"
        if (at < tokens->count && tokens->at[at].joined && tokens->at[at].kind == TOKEN_FIGURE) at++;
    } else {
        return i;
    }
    if (is_width(note, at) && tokens->at[at - 1].stop == STOP_NONE) at++;
    if (!country && is_country(note, at) && !token_is(tokens, at, "it") &&
        (tokens->at[at].capitals || tokens->flat))
        at++;
    if (country && token_is(tokens, at, "/") && is_country(note, at + 1)) {
        size_t more = value_end(note, at + 1);
        if (more > at + 1) at = more;
    }
    return at;
}

// "Size small, well, medium": where the later one begins; 0 where none follows.
static size_t mended_size(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i + (token_is(tokens, i, ",") ? 1 : 0), words = correction_at(note, at);
    if (!words) return 0;
    at += words;
    if (token_is(tokens, at, ",")) at++;
    if (at >= tokens->count || at == i + words + 1) return 0;
    bool size = is_letter_size(note, at) || tokens->at[at].kind == TOKEN_FIGURE;
    return size && value_end(note, at) > at ? at : 0;
}

// "size 8", "sz. M", "size: 10 wide", "kids size 13".
static size_t size_word(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "size", "sz", "sizes")) return 0;
    size_t quarters = i > 1 ? i - 2 : i;
    if (quarters < i && token_is(tokens, i, "size") && ANY(tokens, quarters, "three") &&
        ANY(tokens, quarters + 1, "quarter", "quarters") && note_free(note, quarters, i + 1) &&
        tokens->at[quarters].stop == STOP_NONE && tokens->at[quarters + 1].stop == STOP_NONE) {
        keep(note, quarters, i, "3/4", quarters, i + 1);
        return 1;
    }
    if (i > 0 && token_is(tokens, i, "size") && ANY(tokens, i - 1, "half") && note_free(note, i - 1, i + 1) &&
        tokens->at[i - 1].stop == STOP_NONE) { // "student violin, half size"
        keep(note, i - 1, i, note_words(note, i - 1, i), i - 1, i + 1);
        return 1;
    }
    size_t at = i + 1;
    if (token_is(tokens, at, ".") && tokens->at[at].stop >= STOP_SENTENCE) return 0;
    if (token_is(tokens, at, ".") || token_is(tokens, at, ":")) at++;
    if (ANY(tokens, at, "is", "says", "a", "about", "marked", "of")) at++;
    if (at != i + 1 && ANY(tokens, i + 1, "of", "a")) return 0;
    size_t end = value_end(note, at);
    if (end == at || !note_free(note, i, end)) return 0;
    if (ANY(tokens, end, "x", "by")) return 0; // "rebate size 20 x 16": sides
    struct amount amount;
    if (amount_at(note, at, &amount) && amount.unit && amount.unit->kind) return 0; // a length after all
    size_t mended = mended_size(note, end), begins = i;
    if (mended) {
        note_take(note, i, mended, TAKEN_VALUE);
        at = i = mended;
        end = value_end(note, at);
    }
    keep(note, at, end, size_text(note, at, end), i, end);
    return end - begins;
}

// "UK 9 / EU 43", "womens 8.5", "adult medium", "US 7".
static size_t wearer_size(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    bool country = ANY(tokens, i, "uk", "us", "eu", "u.k", "u.s") && (tokens->at[i].capitals || tokens->flat);
    if (!country && !is_wearer(note, i)) return 0;
    if (!country && is_country(note, i + 1)) return 0; // "ladies UK 5": who wears it is told apart
    size_t at = country ? i : i + 1;
    size_t end = value_end(note, at);
    if (end <= i + 1 || !note_free(note, i, end)) return 0;
    bool spelled = tokens->at[country ? i + 1 : at].kind == TOKEN_WORD;
    if (spelled && !is_letter_size(note, at)) return 0;
    if (spelled && end < tokens->count && tokens->at[end].stop == STOP_NONE &&
        !ANY(tokens, end, "size", "and", "with", "no", "never", "new", "worn", "slight", "some", "like", "in",
             "small", "but"))
        return 0;
    struct amount amount;
    if (amount_at(note, country ? i + 1 : at, &amount) && amount.unit) return 0;
    size_t from = country ? i : at; // who wears it is told apart
    keep(note, from, end, size_text(note, from, end), from, end);
    return end - i;
}

// "queen-size" in one token.
static size_t hyphened(const struct note *note, size_t i, const char *bed) {
    const char *fold = note->tokens.at[i].fold;
    size_t size = strlen(bed);
    return !strncmp(fold, bed, size) && (text_same(fold + size, "-size") || text_same(fold + size, "-sized"))
               ? 1
               : 0;
}

static bool is_bedding(const struct note *note) {
    for (size_t i = 0; i < note->tokens.count && note->tokens.at[i].stop < STOP_SENTENCE; i++)
        if (ANY(&note->tokens, i, "quilt", "bedspread", "blanket", "sheet", "sheets", "comforter", "mattress",
                "duvet", "coverlet", "bedskirt", "bed", "headboard", "afghan", "counterpane"))
            return true;
    return false;
}

// "twin size", "queen", "fits a double", "standard size", "3/4 size".
static size_t bed_size(struct note *note, size_t i) {
    static const char *const beds[] = {
        "california king", "cal king", "twin xl",  "twin", "full",       "queen",    "king",
        "double",          "single",   "standard", "crib", "super king", "kingsize", "full sized"};
    const struct tokens *tokens = &note->tokens;
    struct number number;
    if (tokens->at[i].kind == TOKEN_FIGURE && number_at(tokens, i, &number) && number.part && !*number.tail &&
        token_is(tokens, i + number.taken, "size")) {
        keep(note, i, i + number.taken, note_words(note, i, i + number.taken), i, i + number.taken + 1);
        return number.taken + 1;
    }
    if (tokens->at[i].kind == TOKEN_FIGURE && number_at(tokens, i, &number) && number.part && !*number.tail)
        for (size_t k = i + number.taken; k < i + number.taken + 3; k++) // "3/4 student violin"
            if (ANY(tokens, k, "violin", "cello", "viola", "guitar", "fiddle", "bass")) {
                keep(note, i, i + number.taken, note_words(note, i, i + number.taken), i, i + number.taken);
                return number.taken;
            }
    for (size_t k = 0; k < COUNT(beds); k++) {
        if (beds[k][0] != tokens->at[i].fold[0]) continue;
        size_t taken = token_phrase(tokens, i, beds[k]);
        if (!taken) taken = hyphened(note, i, beds[k]);
        if (!taken) continue;
        if (strchr(tokens->at[i].fold, '-')) {
            keep(note, i, i + 1, beds[k], i, i + 1);
            return 1;
        }
        size_t end = i + taken;
        size_t hyphen = token_is(tokens, end, "-") ? 1 : 0;
        if (!hyphen && ANY(tokens, end, "bed") && ANY(tokens, end + 1, "size", "sized"))
            end++; // "double bed size"
        bool size = ANY(tokens, end + hyphen, "size", "sized");
        bool fits = i > 0 && (ANY(tokens, i - 1, "fits") ||
                              (i > 1 && token_is(tokens, i - 1, "a") && ANY(tokens, i - 2, "fits", "fit")));
        // "Sheet set, queen.": between its stops, of what is laid on a bed
        bool alone = i > 0 && tokens->at[i - 1].stop >= STOP_COMMA && is_bedding(note) &&
                     (end >= tokens->count || tokens->at[end].stop != STOP_NONE);
        if (!size && !fits && !alone) return 0;
        keep(note, i, i + taken, note_meant(note, i, i + taken), i, size ? end + hyphen + 1 : end);
        return (size ? end + hyphen + 1 : end) - i;
    }
    return 0;
}

// "XL" alone, "tag says medium", "label: L".
static size_t tag_size(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const struct token *token = &tokens->at[i];
    bool plain = ANY(tokens, i, "xs", "xl", "xxl", "xxxl", "2xl", "3xl", "4xl") &&
                 (token->capitals || tokens->flat || token->kind == TOKEN_FIGURE);
    bool after_tag = i > 1 && ANY(tokens, i - 1, "says", "reads", ":", "is", "marked", "tagged", "labeled") &&
                     ANY(tokens, i - 2, "tag", "label", "tags", "sticker", "it");
    after_tag |= i > 0 && ANY(tokens, i - 1, "tag", "tagged");
    if (!plain && !(after_tag && is_letter_size(note, i) && !token_is(tokens, i, "one"))) return 0;
    if (plain && !after_tag && i + 1 < tokens->count && token->stop == STOP_NONE &&
        tokens->at[i + 1].joined && tokens->at[i + 1].stop == STOP_NONE)
        return 0; // part of a code
    size_t end = value_end(note, i);
    if (end == i) end = i + 1;
    keep(note, i, end, note_words(note, i, end), i, end);
    return end - i;
}

// "42 reg", "38 short", "44 long" of a coat: chest and build.
static size_t build_size(struct note *note, size_t i) {
    enum { LEAST = 30, MOST = 60 };
    const struct tokens *tokens = &note->tokens;
    size_t taken;
    if (tokens->at[i].kind != TOKEN_FIGURE || tokens->at[i].stop != STOP_NONE) return 0;
    const char *fold = tokens->at[i].fold;
    bool build = strlen(fold) == 3 && fold[0] >= '3' && fold[0] <= '5' && strchr("rsl", fold[2]); // "40R"
    int number = build ? LEAST : number_whole(tokens, i, &taken);
    if (number < LEAST || number > MOST) return 0;
    if (!build && !ANY(tokens, i + 1, "reg", "regular", "short", "long", "tall")) return 0;
    size_t end = i + (build ? 1 : 2);
    bool ends =
        end >= tokens->count || tokens->at[end - 1].stop != STOP_NONE || tokens->at[end].stop != STOP_NONE;
    ends |= build;
    bool coat = false;
    for (size_t k = 0; ends && k < tokens->count && k < SAID_WITHIN && !coat; k++)
        coat = ANY(tokens, k, "jacket", "coat", "blazer", "suit", "waistcoat", "overcoat", "tuxedo",
                   "tailcoat", "raincoat", "dinner");
    if (!coat) return 0;
    keep(note, i, end, note_words(note, i, end), i, end);
    return end - i;
}

// Goods that are worn, by any noun of the note.
static bool is_worn(const struct note *note) {
    static const char *const goods[] = {
        "coat",      "jacket",   "blazer",    "waistcoat",  "overcoat",   "raincoat",  "greatcoat",
        "smock",     "jerkin",   "boots",     "boot",       "shoes",      "shoe",      "clogs",
        "wellies",   "gloves",   "hat",       "cap",        "gauntlet",   "gauntlets", "skates",
        "waders",    "tunic",    "oilskin",   "oilskins",   "parka",      "anorak",    "cape",
        "cagoule",   "duffel",   "brogues",   "slippers",   "sandals",    "breeches",  "apron",
        "helmet",    "robe",     "bathrobe",  "cardigan",   "sweater",    "shirt",     "blouse",
        "dress",     "skirt",    "trousers",  "pants",      "jeans",      "shorts",    "vest",
        "pajamas",   "pyjamas",  "nightgown", "gown",       "sweatshirt", "hoodie",    "overalls",
        "coveralls", "pullover", "jersey",    "uniform",    "kimono",     "housecoat", "swimsuit",
        "leotard",   "snowsuit", "slicker",   "mackintosh", "dungarees",  "onesie",    "romper",
        "sleepsuit", "bodysuit", "playsuit",  "bonnet",     "mittens",    "suit",      "nightshirt",
        "smoking"};
    for (size_t i = 0; i < note->tokens.count && i < SAID_WITHIN; i++)
        if (token_among(&note->tokens, i, goods, COUNT(goods))) return true;
    return false;
}

// "Fits about a 40", "I'd call it a medium", ", large.": of what is worn, by how it fits or by the word
// alone.
static size_t worn_size(struct note *note, size_t i) {
    static const char *const leads[] = {"fits",      "fit",         "call it",    "say",         "about",
                                        "more like", "probably",    "fits about", "fits like",   "fit about",
                                        "nearer",    "fits around", "fit like",   "comes up as", "roughly"};
    enum { LEAST = 2, MOST = 62 };
    const struct tokens *tokens = &note->tokens;
    size_t n = token_longest(tokens, i, leads, COUNT(leads)), at = i + n;
    bool alone = !n && i > 0 && tokens->at[i - 1].stop == STOP_COMMA &&
                 (ANY(tokens, i, "small", "medium", "large", "extra") ||
                  (ANY(tokens, i, "s", "m", "l") && tokens->at[i].capital && !tokens->flat));
    if (!n && !alone) return 0;
    if (n && !ANY(tokens, at, "a", "an")) return 0;
    at += n ? 1 : 0;
    size_t end = value_end(note, at), taken;
    bool number = at < tokens->count && tokens->at[at].kind == TOKEN_FIGURE;
    if (end == at || (!number && !is_letter_size(note, at) && !token_is(tokens, at, "extra"))) return 0;
    bool over =
        end >= tokens->count || tokens->at[end].stop != STOP_NONE || tokens->at[end - 1].stop != STOP_NONE;
    over |= n && ANY(tokens, end, "or", "but", "and", "i", "so");
    if (!over ||
        (number && (number_whole(tokens, at, &taken) < LEAST || number_whole(tokens, at, &taken) > MOST)))
        return 0;
    if (!note_free(note, at, end) || !is_worn(note)) return 0;
    bool labelled =
        false; // "size 12 on the label but fits more like a 10": what it fits is a guess beside it
    for (size_t k = 0; k < note->record->attribute_count; k++)
        labelled |= text_same(note->record->attributes[k].name, "size");
    for (size_t k = 0; k < i && !labelled; k++)
        labelled = ANY(tokens, k, "marked", "tagged", "labeled", "labelled", "label", "tag") &&
                   tokens->at[k].stop < STOP_SENTENCE;
    keep(note, at, end, note_words(note, at, end), at, end);
    if (labelled && n) note->record->attributes[note->record->attribute_count - 1].sure = SURE_LIKELY;
    return end - i;
}

// ", 9 1/2.", ", 44,": of what is worn, by itself among the first words; "wing tips 11 C" right behind its
// name.
static size_t bare_size(struct note *note, size_t i) {
    static const char *const shod[] = {"shoes", "shoe",      "boots",   "loafers",  "flats",
                                       "pumps", "oxfords",   "sandals", "slippers", "sneakers",
                                       "heels", "wingtips",  "tips",    "brogues",  "skates",
                                       "clogs", "moccasins", "mules",   "galoshes", "waders"};
    static const char *const coats[] = {"jacket", "coat", "blazer", "suit",   "overcoat", "topcoat", "tuxedo",
                                        "dress",  "gown", "skirt",  "blouse", "parka",    "vest"};
    enum { FIRST = 12, SHOE_MOST = 16, SHOE_LEAST = 3, COAT_LEAST = 32, COAT_MOST = 60, DRESS_MOST = 26 };
    const struct tokens *tokens = &note->tokens;
    struct number number;
    if (i == 0 || i > FIRST || tokens->at[i].kind != TOKEN_FIGURE || !number_at(tokens, i, &number)) return 0;
    bool shoes = false, coat = false, dress = false;
    for (size_t k = 0; k < i; k++) {
        if (tokens->at[k].stop >= STOP_SENTENCE) return 0;
        shoes |= token_among(tokens, k, shod, COUNT(shod));
        coat |= token_among(tokens, k, coats, COUNT(coats));
        dress |= ANY(tokens, k, "dress", "gown", "skirt", "blouse");
    }
    bool apart = tokens->at[i - 1].stop == STOP_COMMA, behind = token_among(tokens, i - 1, shod, COUNT(shod));
    if (!apart && !behind) return 0;
    size_t end = value_end(note, i);
    bool letter = end < tokens->count && tokens->at[end].kind == TOKEN_WORD && tokens->at[end].capital &&
                  ANY(tokens, end, "a.", "b.", "c.", "d.", "e.", "ee.", "c", "d", "e", "ee");
    if (letter) end++;
    bool over = end >= tokens->count || tokens->at[end].stop != STOP_NONE || letter;
    if (end == i || !over || !note_free(note, i, end)) return 0;
    bool fits = (shoes && number.value >= SHOE_LEAST && number.value <= SHOE_MOST) ||
                (coat && apart && number.value >= (dress ? 2 : COAT_LEAST) &&
                 number.value <= (dress ? DRESS_MOST : COAT_MOST));
    if (!fits) return 0;
    keep(note, i, end, note_words(note, i, end), i, end);
    return end - i;
}

// "Inside band says 7 1/8" of a hat: its size.
static size_t hat_size(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct number number;
    bool hat = false;
    for (size_t k = 0; k < tokens->count && k < SAID_WITHIN && !hat; k++)
        hat = ANY(tokens, k, "hat", "cap", "fedora", "derby", "bowler", "homburg", "stetson", "boater");
    if (!hat || tokens->at[i].kind != TOKEN_FIGURE || !number_at(tokens, i, &number)) return 0;
    if (number.value < 6.25 || number.value > 8.25 || number.taken < 2) return 0;
    if (ANY(tokens, i + number.taken, "inches", "in", "inch", "\"")) return 0;
    keep(note, i, i + number.taken, note_words(note, i, i + number.taken), i, i + number.taken);
    return number.taken;
}

bool sizes_of_trousers(const struct note *note) {
    for (size_t i = 0; i < note->tokens.count && i < SAID_WITHIN; i++)
        if (ANY(&note->tokens, i, "jeans", "pants", "trousers", "slacks", "khakis", "chinos", "overalls",
                "corduroys", "cords", "dungarees", "coveralls"))
            return true;
    return false;
}

// "34 x 30", "36/32" of jeans: waist and leg as the label has them.
static size_t waist_and_leg(struct note *note, size_t i) {
    enum { LEAST = 22, MOST = 60, LONGEST = 40 };
    const struct tokens *tokens = &note->tokens;
    size_t taken = 0, leg = 0;
    if (i + 2 >= tokens->count || !ANY(tokens, i + 1, "x", "/", "by") || !sizes_of_trousers(note)) return 0;
    int waist = number_whole(tokens, i, &taken), length = number_whole(tokens, i + 2, &leg);
    if (taken != 1 || leg != 1 || waist < LEAST || waist > MOST || length < LEAST || length > LONGEST)
        return 0;
    if (ANY(tokens, i + 3, "inches", "in", "\"", "cm") || note->taken[i] != note->taken[i + 2]) return 0;
    keep(note, i, i + 3, note_words(note, i, i + 3), i, i + 3);
    return 3;
}

// "Scale 1 inch to the mile": of a map, and no length of it.
static size_t map_scale(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->at[i].kind != TOKEN_FIGURE && !ANY(tokens, i, "one", "two", "six", "half")) return 0;
    size_t at = i + 1 + (ANY(tokens, i + 1, "an") ? 1 : 0);
    at += ANY(tokens, at, "inch", "inches", "in", "ins", "mile", "miles") ? 1 : 0;
    if (!ANY(tokens, at, "to")) return 0;
    size_t the = at + 1 + (ANY(tokens, at + 1, "the", "a", "an", "1", "one") ? 1 : 0);
    if (!ANY(tokens, the, "mile", "inch") || !note_free(note, i, the + 1)) return 0;
    size_t from = i && token_is(tokens, i - 1, "scale") ? i - 1 : i;
    keep(note, i, the + 1, note_words(note, i, the + 1), from, the + 1);
    return the + 1 - i;
}

// "2T" of what is worn.
static bool is_years_size(const struct note *note, size_t i) {
    const char *fold = note->tokens.at[i].fold;
    return strlen(fold) == 2 && fold[0] >= '2' && fold[0] <= '7' && fold[1] == 't' && is_worn(note) &&
           note_free(note, i, i + 1);
}

// "Overalls, 2T", "rain jacket 4T", "XL on the tag": a child's size and a tag's.
static size_t short_size(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const struct token *token = &tokens->at[i];
    struct number number;
    if (i == 0) return 0;
    bool child = is_years_size(note, i) && !ANY(tokens, i - 1, "model", "type", "no", "number", "part");
    if (tokens->at[i - 1].stop == STOP_NONE && !child) return 0;
    if (token->kind == TOKEN_FIGURE && number_at(tokens, i, &number) && !*number.tail) { // "fedora, 7 1/4"
        size_t end = i + number.taken;
        bool over = end >= tokens->count || tokens->at[end].stop != STOP_NONE;
        return over && tokens->at[i - 1].stop == STOP_COMMA ? hat_size(note, i) : 0;
    }
    bool tagged = is_letter_size(note, i) && token->kind == TOKEN_WORD && ANY(tokens, i + 1, "on") &&
                  ANY(tokens, i + 2, "the", "its") && ANY(tokens, i + 3, "tag", "label");
    if (!child && (!tagged || !is_worn(note) || !note_free(note, i, i + 1))) return 0;
    keep(note, i, i + 1, note_words(note, i, i + 1), i, i + 1);
    return 1;
}

// "Snowsuit, 18-24 months", "romper, 12 months": of whom it fits, where months or years stand behind.
static size_t month_size(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->at[i].kind != TOKEN_FIGURE || i == 0 || tokens->at[i - 1].stop == STOP_NONE || !is_worn(note))
        return 0;
    if (ANY(tokens, i + 1, "months", "mos", "mths", "m") && tokens->at[i - 1].stop == STOP_COMMA &&
        tokens->at[i].fold[1] != '\0' && tokens->at[i + 1].stop != STOP_NONE) {
        keep(note, i, i + 2, note_words(note, i, i + 2), i, i + 2);
        return 2;
    }
    if (!ANY(tokens, i + 1, "-", "to") || i + 3 >= tokens->count || tokens->at[i + 2].kind != TOKEN_FIGURE ||
        !ANY(tokens, i + 3, "months", "month", "mos", "mths", "years", "yrs") ||
        (i + 4 < tokens->count && tokens->at[i + 4].stop == STOP_NONE))
        return 0;
    keep(note, i, i + 4, note_words(note, i, i + 4), i, i + 4);
    return 4;
}

static bool is_of_cards(const struct note *note) {
    for (size_t i = 0; i < note->tokens.count && i < SAID_WITHIN; i++)
        if (ANY(&note->tokens, i, "cards", "card", "deck", "decks")) return true;
    return false;
}

// "1:64", "1/64 scale", "age 3-4", "2 person tent", "one size".
static size_t other_size(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->at[i].kind == TOKEN_FIGURE && token_is(tokens, i, "1") && token_is(tokens, i + 1, ":") &&
        i + 2 < tokens->count && tokens->at[i + 2].joined && tokens->at[i + 2].kind == TOKEN_FIGURE) {
        size_t from = i && token_is(tokens, i - 1, "scale") ? i - 1 : i;
        size_t to = i + 3 + (token_is(tokens, i + 3, "scale") ? 1 : 0);
        keep(note, i, i + 3, note_words(note, i, i + 3), from, to);
        return to - i;
    }
    if (tokens->at[i].kind == TOKEN_FIGURE && !strncmp(tokens->at[i].fold, "1/", 2) &&
        token_is(tokens, i + 1, "scale")) {
        keep(note, i, i + 1, note_words(note, i, i + 1), i, i + 2);
        return 2;
    }
    size_t taken = map_scale(note, i);
    if (taken) return taken;
    // "Bridge size playing cards"
    if (ANY(tokens, i, "bridge", "poker", "jumbo", "pinochle", "patience", "miniature") &&
        ANY(tokens, i + 1, "size", "sized") && tokens->at[i].stop == STOP_NONE && is_of_cards(note)) {
        keep(note, i, i + 1, note_words(note, i, i + 1), i, i + 2);
        return 2;
    }
    if (ANY(tokens, i, "age", "ages", "aged") && i + 1 < tokens->count &&
        tokens->at[i + 1].kind == TOKEN_FIGURE && token_is(tokens, i + 2, "-") && i + 3 < tokens->count &&
        tokens->at[i + 3].kind == TOKEN_FIGURE) {
        keep(note, i, i + 4, note_words(note, i, i + 4), i, i + 4);
        return 4;
    }
    if (ANY(tokens, i, "age") && i + 1 < tokens->count && tokens->at[i + 1].kind == TOKEN_FIGURE &&
        strlen(tokens->at[i + 1].fold) <= 2 && is_worn(note)) { // "school blazer, age 12"
        keep(note, i, i + 2, note_words(note, i, i + 2), i, i + 2);
        return 2;
    }
    if (number_whole(tokens, i, &taken) > 0) {
        size_t at = i + taken + (token_is(tokens, i + taken, "-") ? 1 : 0);
        if (ANY(tokens, at, "person", "man") &&
            !ANY(tokens, at + 1, "said", "told", "owned", "who", "from", "lift", "job", "carry", "show")) {
            keep(note, i, at + 1, note_words(note, i, at + 1), i, at + 1);
            return at + 1 - i;
        }
    }
    if (!token_is(tokens, i, "one")) return 0;
    taken = token_phrase(tokens, i, "one size fits all");
    if (!taken) taken = token_phrase(tokens, i, "one size fits most");
    if (!taken) taken = token_phrase(tokens, i, "one size");
    if (taken) keep(note, i, i + taken, note_words(note, i, i + taken), i, i + taken);
    return taken;
}

void read_sizes(struct note *note) {
    static size_t (*const kinds[])(struct note *, size_t) = {
        size_word,     wearer_size, bed_size,   tag_size,  build_size, worn_size,
        waist_and_leg, month_size,  short_size, bare_size, other_size};
    for (size_t i = 0; i < note->tokens.count;) {
        size_t taken = 0;
        for (size_t k = 0; k < COUNT(kinds) && !taken && note->taken[i] == TAKEN_NOT; k++)
            taken = kinds[k](note, i);
        if (note->taken[i] == TAKEN_MARK) { // "the tag says"
            taken = waist_and_leg(note, i);
            if (!taken) taken = hat_size(note, i);
        }
        i += taken ? taken : 1;
    }
}
