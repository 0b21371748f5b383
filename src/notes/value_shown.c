// SPDX-License-Identifier: MIT
// What is pictured on the thing, whatever the words: "orange slices printed on them", "etched reeds", "horse
// collars on a green ground", "herons in the weave". The words that build the sentence tell it, so that no
// list of subjects is asked; what a list has is left to its reader.
#include <string.h>

#include "notes/any.h"
#include "notes/chunk.h"
#include "notes/english.h"
#include "notes/standing.h"
#include "notes/value_keep.h"
#include "say/say.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { WORDS_MOST = 2 };

static bool is_worked(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "printed", "painted", "etched", "engraved", "embroidered", "molded", "moulded",
               "stenciled", "stencilled", "carved", "embossed", "woven", "appliqued", "transferred",
               "stitched", "enameled", "enamelled", "frosted", "cut", "stamped", "tooled", "burned",
               "silkscreened", "screened", "decorated");
}

// Writing, lines and what a thing has of its own.
static bool is_no_subject(const struct note *note, size_t i) {
    static const char *const words[] = {
        "name",    "names",   "date",        "dates",   "number",   "numbers", "letters",  "initials",
        "words",   "writing", "logo",        "logos",   "label",    "labels",  "line",     "lines",
        "mark",    "marks",   "pattern",     "design",  "designs",  "border",  "rim",      "band",
        "bands",   "edge",    "edges",       "figures", "scale",    "dots",    "stripes",  "text",
        "title",   "maker",   "price",       "prices",  "one",      "ones",    "some",     "instructions",
        "side",    "sides",   "thing",       "things",  "inches",   "colors",  "colours",  "panels",
        "corners", "ends",    "pieces",      "holes",   "spots",    "others",  "it",       "them",
        "both",    "each",    "two",         "three",   "four",     "five",    "six",      "pages",
        "details", "details", "decorations", "crest",   "monogram", "picture", "pictures", "scene",
        "glass",   "glasses", "tops",        "backs",   "fronts",   "trim",    "coat",     "coats",
        "layer"};
    return token_among(&note->tokens, i, words, COUNT(words));
}

static bool is_plain(const struct note *note, size_t i) {
    const struct token *token = i < note->tokens.count ? &note->tokens.at[i] : NULL;
    return token && token->kind == TOKEN_WORD && note->taken[i] == TAKEN_NOT && !note->fault_word[i] &&
           (!token->capital || token->starts) && !chunk_breaks(note, i) && !is_no_subject(note, i) &&
           !is_worked(&note->tokens, i) && english_at(note, i);
}

static bool is_plural(const struct note *note, size_t i) {
    return note->tokens.at[i].one != note->tokens.at[i].fold;
}

// Is the last word one that a list has, a part or a stuff?
static bool is_listed(const struct note *note, size_t i) {
    struct word_entry entry;
    return word_at(note, i,
                   (1u << USE_THEME) | (1u << USE_PATTERN) | (1u << USE_PART) | (1u << USE_MATERIAL) |
                       (1u << USE_SHAPE) | (1u << USE_TECHNIQUE),
                   &entry) > 0;
}

// The subject that ends right before token `end`, of one or two words; its first token, `end` where there is
// none. Before it stands a stop, "with", "and", "of", an article or a word for size.
static size_t subject_before(const struct note *note, size_t end) {
    const struct tokens *tokens = &note->tokens;
    if (end == 0 || !is_plain(note, end - 1)) return end;
    size_t from = end - 1;
    struct word_entry entry;
    while (from > 0 && end - from < WORDS_MOST && tokens->at[from - 1].stop == STOP_NONE &&
           is_plain(note, from - 1) &&
           !ANY(tokens, from - 1, "little", "small", "tiny", "big", "large", "bright"))
        from--;
    if (from + 1 == end && is_listed(note, end - 1)) return end;
    size_t lead = from;
    while (lead > 0 && ANY(tokens, lead - 1, "little", "small", "tiny", "big", "large", "bright", "raised"))
        lead--;
    bool article = lead > 0 && ANY(tokens, lead - 1, "a", "an");
    if (!article && !is_plural(note, end - 1)) return end;
    if (article) lead--;
    bool led = lead == 0 || tokens->at[lead - 1].stop != STOP_NONE ||
               ANY(tokens, lead - 1, "with", "and", "of", "w/", "showing", "has", "have") ||
               word_at(note, lead - 1, 1u << USE_COLOR, &entry) > 0;
    return led ? from : end;
}

static void keep(struct note *note, size_t from, size_t to) {
    const char *words = utf8_fold(note->arena, note_words(note, from, to));
    value_keep(note, "theme", say_singular(note->arena, words), NULL, from, to, value_sure(note, from, to));
    note_take(note, from, to, TAKEN_VALUE);
}

// "… printed on them", "… molded around the bowl".
static void read_worked(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i + 1, "on", "around", "round", "in", "into", "over", "across", "all", "along", "inside",
             "onto"))
        return;
    size_t from = subject_before(note, i);
    if (from < i) keep(note, from, i);
}

// "Etched reeds, thin stems", "stenciled plums on the rail".
static void read_behind(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t from = i + 1 + (token_is(tokens, i + 1, "with") ? 1 : 0), to = from;
    if (tokens->at[i].stop != STOP_NONE || ANY(tokens, i, "cut", "stamped", "burned", "frosted")) return;
    while (to < from + WORDS_MOST && is_plain(note, to)) {
        to++;
        if (tokens->at[to - 1].stop != STOP_NONE) break;
    }
    if (to == from || !is_plural(note, to - 1) || (to == from + 1 && is_listed(note, from))) return;
    if (standing_is_stop(note, to) || ANY(tokens, to, "on", "and", "all", "around", "round", "across"))
        keep(note, from, to);
}

// "… on black", "… on a green ground".
static void read_ground(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry color;
    size_t at = i + 1 + (ANY(tokens, i + 1, "a", "an") ? 1 : 0);
    while (ANY(tokens, at, "plain", "very", "soft", "pale", "dark", "light", "deep", "bright")) at++;
    size_t n = word_at(note, at, 1u << USE_COLOR, &color);
    if (!n) return;
    bool ground = ANY(tokens, at + n, "ground", "background", "field");
    if (!ground && !standing_is_stop(note, at + n) && !ANY(tokens, at + n, "with", "and")) return;
    size_t from = subject_before(note, i);
    if (from < i && is_plural(note, i - 1)) keep(note, from, i);
    if (ground && note->taken[at + n] == TAKEN_NOT) note_take(note, at + n, at + n + 1, TAKEN_FILLER);
}

// "… in the weave".
static void read_woven(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!token_is(tokens, i + 1, "the") ||
        !ANY(tokens, i + 2, "weave", "weaving", "embroidery", "stitching", "print"))
        return;
    size_t from = subject_before(note, i);
    if (from < i) keep(note, from, i);
}

// "With painted roses": how they came there.
static void read_painted(struct note *note, size_t i) {
    struct word_entry shown;
    if (!ANY(&note->tokens, i, "painted") || note->taken[i] != TAKEN_NOT || note->fault_word[i] ||
        note->tokens.at[i].stop != STOP_NONE || ANY(&note->tokens, i - 1, "hand", "-"))
        return; // "hand painted pears" is of the book
    size_t n = word_at(note, i + 1, 1u << USE_THEME, &shown);
    if (!n || !is_plural(note, i + n) || note->taken[i + n] != TAKEN_NOT) return;
    value_keep(note, "technique", "painted", NULL, i, i + 1, value_sure(note, i, i + 1));
    note_take(note, i, i + 1, TAKEN_VALUE);
}

void value_read_shown(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        if (is_worked(tokens, i)) {
            read_painted(note, i);
            read_worked(note, i);
            if (note->taken[i] == TAKEN_NOT) read_behind(note, i);
        }
        if (note->taken[i] != TAKEN_NOT) continue;
        if (token_is(tokens, i, "on")) read_ground(note, i);
        if (token_is(tokens, i, "in")) read_woven(note, i);
    }
}
