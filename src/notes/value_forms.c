// SPDX-License-Identifier: MIT
// Who goods were made for, what they are shaped like and what they show, in the seller's own words.
#include <string.h>

#include "notes/any.h"
#include "notes/chunk.h"
#include "notes/standing.h"
#include "notes/value_keep.h"
#include "text/order.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Who it is made for, before the type or as its own statement.
// "Kids played hard with it": who had it, and not for whom it is.
static bool does_things(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "kids", "girls", "boys", "ladies", "gents", "youth", "toddler") &&
           ANY(tokens, i + 1, "played", "used", "loved", "had", "have", "did", "were", "was", "are", "rode",
               "wore", "drew", "wrote", "got", "broke", "chewed", "colored", "scribbled", "outgrew", "grew",
               "put", "would", "could", "never", "always", "only", "all", "took", "left", "made", "climbed",
               "sat", "ate", "is", "enjoyed", "pulled", "banged", "stuck", "and", "who", "love", "like",
               "liked");
}

void value_read_audience(struct note *note) {
    static const char *const people[][2] = {
        {"women's", "women's"},      {"womens", "women's"},        {"ladies", "women's"},
        {"ladies'", "women's"},      {"lady's", "women's"},        {"men's", "men's"},
        {"mans", "men's"},           {"man's", "men's"},           {"mens", "men's"},
        {"gents", "men's"},          {"gent's", "men's"},          {"gents'", "men's"},
        {"gentleman's", "men's"},    {"gentlemans", "men's"},      {"gentlemen's", "men's"},
        {"girls", "girls'"},         {"girl's", "girls'"},         {"girls'", "girls'"},
        {"boys", "boys'"},           {"boy's", "boys'"},           {"boys'", "boys'"},
        {"child's", "children's"},   {"childs", "children's"},     {"children's", "children's"},
        {"kids", "kids'"},           {"kid's", "kids'"},           {"kids'", "kids'"},
        {"childrens", "children's"}, {"childrens'", "children's"}, {"youth", "youth"},
        {"toddler", "toddler"},      {"toddler's", "toddler"},     {"toddlers", "toddler"},
        {"baby's", "baby"},          {"unisex", "unisex"}};
    const char *of;
    for (size_t i = 0; i < note->tokens.count; i++) {
        if (note->taken[i] != TAKEN_NOT) continue;
        for (size_t k = 0; k < COUNT(people); k++) {
            if (!token_is(&note->tokens, i, people[k][0])) continue;
            if (does_things(&note->tokens, i)) {
                note_take(note, i, i + 1, TAKEN_FILLER);
                break;
            }
            enum standing standing = standing_of(note, i, i + 1, &of);
            size_t next = i + 1;
            bool size = next < note->tokens.count && note->taken[next] == TAKEN_VALUE;
            if (standing != STANDING_THING && !size) break;
            value_keep(note, "audience", people[k][1], NULL, i, i + 1, SURE_STATED);
            note_take(note, i, i + 1, TAKEN_VALUE);
            break;
        }
    }
}

// "Picture of a lifeboat on the lid": what bears it, where that need not be the thing.
static const char *bearer_of(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "on") || !ANY(tokens, i + 1, "the", "its", "a")) return NULL;
    if (!ANY(tokens, i + 2, "lid", "tin", "box", "label", "packet", "sleeve", "tag", "case", "bag"))
        return NULL;
    if (i + 2 < tokens->count && note->taken[i + 2] == TAKEN_TYPE) return NULL;
    return arena_string(note->arena, tokens->at[i + 2].fold);
}

// "Helmet shape", "shield-shaped": whatever it is the shape of.
static void read_shaped(struct note *note) {
    static const char *const vain[] = {
        "good", "great",     "bad",   "fair",    "any",       "in",      "of",         "out",
        "odd",  "same",      "nice",  "the",     "a",         "its",     "this",       "that",
        "poor", "lovely",    "funny", "unusual", "rough",     "decent",  "fine",       "better",
        "best", "what",      "is",    "are",     "new",       "perfect", "reasonable", "okay",
        "ok",   "excellent", "tidy",  "sound",   "wonderful", "terrible"};
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i + 1 < tokens->count; i++) {
        size_t word = token_is(tokens, i + 1, "-") && tokens->at[i + 1].joined ? i + 2 : i + 1;
        bool many = ANY(tokens, word, "shapes"); // on the thing, which has another
        if ((!many && !ANY(tokens, word, "shape", "shaped")) || !note_free(note, i, word + 1) ||
            chunk_breaks(note, i) || token_among(tokens, i, vain, COUNT(vain)) ||
            tokens->at[i].kind != TOKEN_WORD || note->fault_word[i])
            continue;
        bool ends = word + 1 >= tokens->count || tokens->at[word + 1].stop != STOP_NONE ||
                    note->taken[word + 1] == TAKEN_TYPE ||
                    ANY(tokens, word + 1, "with", "and", "in", "on", "but", "one");
        struct word_entry shown;
        if (many) ends = word_at(note, i, 1u << USE_THEME, &shown) == 1;
        if (!ends) continue;
        const char *text = utf8_fold(note->arena, note_words(note, i, i + 1));
        struct word_entry subject; // "rooster shape" shows a rooster
        if (word_at(note, i, 1u << USE_THEME, &subject) == 1 &&
            !ANY(tokens, i, "heart", "star", "shield", "cross", "moon", "sun"))
            value_keep(note, "theme", text, NULL, i, i + 1, value_sure(note, i, word + 1));
        if (!many)
            value_keep(note, "shape", arena_format(note->arena, "%s shaped", text), NULL, i, word + 1,
                       value_sure(note, i, word + 1));
        note_take(note, i, word + 1, TAKEN_VALUE);
    }
}

// "Navy with small white dots": how cloth is patterned, where its own color stands before.
static void read_dots(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry ground, dot;
    for (size_t i = 3; i < tokens->count; i++) {
        if (!ANY(tokens, i, "dots") || note->taken[i] != TAKEN_NOT ||
            ANY(tokens, i - 1, "brown", "tan", "rust", "orange", "black") ||
            word_at(note, i - 1, 1u << USE_COLOR, &dot) != 1 || note->taken[i - 1] != TAKEN_NOT)
            continue;
        size_t at = i - 2;
        while (at > 1 && ANY(tokens, at, "small", "tiny", "little", "big", "large", "pin")) at--;
        if (!ANY(tokens, at, "with", "and", "w/") || word_at(note, at - 1, 1u << USE_COLOR, &ground) != 1)
            continue;
        value_keep(note, "pattern", "dotted", NULL, i, i + 1, value_sure(note, i, i + 1));
        value_keep(note, "color", dot.print, NULL, i - 1, i, value_sure(note, i - 1, i + 1));
        note_take(note, i - 1, i + 1, TAKEN_VALUE);
    }
}

// "Bronze colored finish": how its face was made to look, and no bronze.
static void read_finish_like(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry look;
    for (size_t i = 1; i + 1 < tokens->count; i++) {
        if (!ANY(tokens, i, "colored", "coloured", "tone", "toned", "look", "effect") ||
            !ANY(tokens, i + 1, "finish") || !note_free(note, i - 1, i + 2) ||
            tokens->at[i - 1].stop != STOP_NONE ||
            !word_at(note, i - 1, 1u << USE_COLOR | 1u << USE_MATERIAL, &look))
            continue;
        const char *words = utf8_fold(note->arena, note_words(note, i - 1, i + 1));
        value_keep(note, "finish", words, NULL, i - 1, i + 2, value_sure(note, i - 1, i + 2));
        note_take(note, i - 1, i + 2, TAKEN_VALUE);
    }
}

// "Photo of a man with a bicycle", "of a girl holding a cat": who is in the picture has something with them.
static void read_shown_with(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "with", "holding", "riding", "beside", "feeding", "leading", "driving", "and") ||
        !ANY(tokens, i + 1, "a", "an", "his", "her", "their", "two", "three"))
        return;
    size_t from = i + 2;
    struct noun_found noun;
    struct word_entry shown;
    if (from >= tokens->count || note->taken[from] != TAKEN_NOT || note->fault_word[from] ||
        tokens->at[from].kind != TOKEN_WORD)
        return;
    size_t to = from + 1, last = from; // "with a high wheel bicycle"
    while (to < tokens->count && to < from + 3 && tokens->at[to - 1].stop == STOP_NONE &&
           note->taken[to] == TAKEN_NOT && !note->fault_word[to] && tokens->at[to].kind == TOKEN_WORD &&
           !chunk_breaks(note, to))
        last = to++;
    bool known = noun_at(note, last, &noun) || word_at(note, last, 1u << USE_THEME, &shown) ||
                 word_at(note, last, 1u << USE_NAMER, &shown);
    if (!known || (to < tokens->count && !chunk_breaks(note, to))) return;
    value_keep(note, "theme", arena_string(note->arena, note_words(note, from, to)), NULL, from, to,
               value_sure(note, from, to));
    note_take(note, from, to, TAKEN_VALUE);
}

// "Color lithograph on the front": how the picture was printed, told by its noun.
static void read_printed_as(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        bool led = i > 0 && note_free(note, i - 1, i) && tokens->at[i - 1].stop == STOP_NONE &&
                   ANY(tokens, i - 1, "color", "colour", "stone", "colored", "coloured", "wood", "steel",
                       "copper", "line");
        bool cut = led && ANY(tokens, i, "engraving", "engravings");
        if ((!cut && !ANY(tokens, i, "lithograph", "lithographs", "chromolithograph", "woodcut", "linocut",
                          "litho", "lithos")) ||
            note->taken[i] != TAKEN_NOT ||
            !(i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE ||
              tokens->at[i + 1].stop != STOP_NONE || ANY(tokens, i + 1, "on", "of")))
            continue;
        size_t from = i - (led ? 1 : 0);
        const char *text = say_singular(note->arena, utf8_fold(note->arena, note_words(note, from, i + 1)));
        value_keep(note, "technique", text, NULL, from, i + 1, value_sure(note, from, i + 1));
        note_take(note, from, i + 1, TAKEN_VALUE);
    }
}

// "Shaped like a beehive", "rope style links", "view of a pier": the words themselves are the value.
void value_read_forms(struct note *note) {
    static const char *const shapes[] = {
        "shaped like", "in the shape of", "in the form of", "shape of", "carved as", "shaped as", "formed as",
        "modelled as", "modeled as",      "made as",        "cast as",  "molded as", "moulded as"};
    static const char *const views[] = {
        "view of",       "picture of",  "scene of",      "photo of",    "painting of",    "drawing of",
        "print of",      "portrait of", "pictures of",   "puzzle of",   "jigsaw of",      "etching of",
        "engraving of",  "postcard of", "photograph of", "tapestry of", "watercolour of", "watercolor of",
        "lithograph of", "sketch of",   "statue of",     "figure of",   "bust of",        "carving of",
        "oil of",        "poster of",   "snapshot of",   "poster for",  "snapshots of",   "photographs of",
        "photos of",     "snaps of",    "views of",      "scenes of",   "drawings of"};
    // An article has to follow: "picture is a barge", not "picture is crooked"
    static const char *const shows[] = {"picture is",     "picture shows", "scene is",     "scene shows",
                                        "image is",       "image shows",   "photo shows",  "print shows",
                                        "painting shows", "design is",     "design shows", "it shows",
                                        "depicts",        "depicting",     "lid shows",    "front shows",
                                        "cover shows",    "pictured is",   "drawing shows"};
    for (size_t i = 0; i < note->tokens.count; i++) {
        bool typed = note->taken[i] == TAKEN_TYPE; // "sepia photograph of a mill"
        if (note->taken[i] != TAKEN_NOT && !typed) continue;
        const char *name = "shape";
        size_t n = typed ? 0 : token_first(&note->tokens, i, shapes, COUNT(shapes));
        if (!n) {
            n = token_first(&note->tokens, i, views, COUNT(views));
            name = "theme";
        }
        if (typed && !n) continue;
        if (!n && (n = token_first(&note->tokens, i, shows, COUNT(shows))) != 0 &&
            !ANY(&note->tokens, i + n, "a", "an", "two", "three", "some"))
            n = 0;
        if (!n) continue;
        size_t from = i + n;
        static const char *const articles[] = {"a", "an", "the", "some", "two", "three"};
        while (token_among(&note->tokens, from, articles, COUNT(articles))) from++;
        size_t to = from;
        if (to < note->tokens.count && note->tokens.at[to].kind == TOKEN_FIGURE) continue; // "of 500 pieces"
        while (to < from + 3 && !chunk_breaks(note, to) && note->taken[to] == TAKEN_NOT &&
               !note->fault_word[to])
            to++;
        if (to > from + 1 && name[0] == 't' &&
            ANY(&note->tokens, to - 1, "holding", "riding", "wearing", "feeding"))
            to--;
        if (to == from) continue;
        const char *of = bearer_of(note, to);
        struct word_entry shown; // "the shape of a sitting hound" shows a dog
        for (size_t k = to; name[0] == 's' && k > from; k--)
            if (word_at(note, k - 1, 1u << USE_THEME, &shown) == 1) {
                value_keep(note, "theme", shown.print, of, k - 1, k, value_sure(note, i, to));
                break;
            }
        value_keep(note, name, arena_string(note->arena, note_words(note, from, to)), of, from, to,
                   value_sure(note, i, to));
        note_take(note, from, to, TAKEN_VALUE);
        if (name[0] == 't' && !of) read_shown_with(note, to);
    }
    read_printed_as(note);
    read_shaped(note);
    read_dots(note);
    read_finish_like(note);
    for (size_t i = 0; i + 1 < note->tokens.count; i++) {
        static const char *const vain[] = {"this", "that", "the", "old",  "a",   "in",
                                           "same", "of",   "my",  "nice", "its", "any"};
        if (!token_is(&note->tokens, i + 1, "style") || !note_free(note, i, i + 2) || chunk_breaks(note, i) ||
            token_among(&note->tokens, i, vain, COUNT(vain)) || note->tokens.at[i].kind != TOKEN_WORD)
            continue;
        // As it is spelt, its accents too: it may be a maker's name.
        const struct token *t = &note->tokens.at[i];
        const char *word = t->slip ? t->fold : utf8_fold(note->arena, note_words(note, i, i + 1));
        struct word_entry first; // "bear paw style"
        bool two = i > 0 && note->tokens.at[i - 1].stop == STOP_NONE && note_free(note, i - 1, i) &&
                   (word_at(note, i - 1, 1u << USE_THEME, &first) == 1 ||
                    (token_is(&note->tokens, i - 1, "art") && ANY(&note->tokens, i, "deco", "nouveau")));
        if (two)
            word =
                arena_format(note->arena, "%s %s", utf8_fold(note->arena, note_words(note, i - 1, i)), word);
        size_t from = i - (two ? 1 : 0);
        value_keep(note, "style", arena_format(note->arena, "%s style", word), NULL, from, i + 2,
                   value_sure(note, from, i + 2));
        note_take(note, from, i + 2, TAKEN_VALUE);
    }
}
