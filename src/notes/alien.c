// SPDX-License-Identifier: MIT
// Forms are told by marks that no seller scribbles: tags that close, rows with the same number of separators.
// A language is told by its small words, which stand in every sentence of it and in no English one.
#include "notes/alien.h"

#include <string.h>

#include "notes/english.h"
#include "notes/rest.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { CLOSING_TAGS = 2, ROWS_LEAST = 3, ROWS_LOOKED_AT = 50, WORDS_LEAST = 4, WORDS_LOOKED_AT = 400 };

static bool is_page(const char *text) {
    size_t closing = 0;
    for (const char *at = strchr(text, '<'); at && closing < CLOSING_TAGS; at = strchr(at + 1, '<')) {
        if (!strncmp(at, "<html", 5) || !strncmp(at, "<!DOCTYPE", 9) || !strncmp(at, "<!doctype", 9))
            return true;
        char letter = at[1] == '/' ? (char)(at[2] | ' ') : ' ';
        closing += letter >= 'a' && letter <= 'z';
    }
    return closing >= CLOSING_TAGS;
}

// Separators of one row, none of which a space follows as it does in a sentence; 0: no row.
static size_t cells_of(const char *line, size_t size, char separator) {
    size_t count = 0;
    for (size_t i = 0; i < size; i++) {
        if (line[i] != separator) continue;
        if (separator != '\t' && i + 1 < size && line[i + 1] == ' ') return 0;
        count++;
    }
    return count;
}

static bool is_table(const char *text, char separator) {
    size_t rows = 0, cells = 0;
    for (const char *line = text; *line && rows < ROWS_LOOKED_AT;) {
        size_t size = strcspn(line, "\n");
        if (size) {
            size_t here = cells_of(line, size, separator);
            if (here < 2 || (rows && here != cells)) return false;
            cells = here;
            rows++;
        }
        line += size + (line[size] != '\0');
    }
    return rows >= ROWS_LEAST;
}

const char *alien_form(const char *text) {
    if (is_page(text)) return "page";
    return is_table(text, ',') || is_table(text, ';') || is_table(text, '\t') ? "table" : NULL;
}

// Sorted for a binary search.
static const char *const small_words[] = {
    "auf",   "aus", "avec", "bez",  "com",   "dans",  "das",  "de",  "del",  "della", "der", "des",  "di",
    "dla",   "du",  "een",  "ein",  "eine",  "einen", "el",   "er",  "es",   "est",   "et",  "ett",  "het",
    "ikke",  "il",  "inte", "ist",  "jest",  "la",    "las",  "le",  "les",  "los",   "ma",  "med",  "mit",
    "molto", "muy", "na",   "nao",  "nicht", "niet",  "noch", "och", "oder", "para",  "pas", "pero", "pour",
    "sehr",  "som", "sur",  "tres", "um",    "uma",   "una",  "und", "une",  "van",   "von", "voor", "zeer"};

bool alien_word(const char *fold) {
    return text_sorted_has(small_words, COUNT(small_words), fold);
}

static bool is_alien_word(const struct tokens *tokens, size_t i) {
    static const char key[] = "a word of another language";
    return token_passes(tokens, i, key, alien_word);
}

const char *alien_words(const struct note *note) {
    enum { GREEK = 0xCD }; // accents are off, so what lies behind is no Latin letter
    size_t words = 0, foreign = 0, small = 0, unknown = 0, strange = 0;
    for (size_t i = 0; i < note->tokens.count && words < WORDS_LOOKED_AT; i++) {
        const struct token *token = &note->tokens.at[i];
        if (token->kind != TOKEN_WORD) continue;
        words++;
        strange += (unsigned char)token->fold[0] >= GREEK;
        bool is = is_alien_word(&note->tokens, i);
        foreign += is;
        small += !is && rest_is_small(note, i);
        unknown += !english_at(note, i);
    }
    if (words >= 2 && 2 * strange > words) return "language";
    return words >= WORDS_LEAST && foreign >= 2 && foreign > 2 * small && 3 * unknown >= words ? "language"
                                                                                               : NULL;
}

static size_t sentence_end(const struct tokens *tokens, size_t i) {
    while (i < tokens->count && tokens->at[i].stop < STOP_SENTENCE) i++;
    return i;
}

// A sentence needs more than a text does: names of another language stand in English ones.
static bool is_alien(const struct note *note, size_t from, size_t to) {
    size_t words = 0, foreign = 0, small = 0, unknown = 0;
    for (size_t i = from; i < to; i++) {
        const struct token *token = &note->tokens.at[i];
        if (token_is(&note->tokens, i, "\"")) return false;
        if (token->kind != TOKEN_WORD) continue;
        words++;
        bool is = is_alien_word(&note->tokens, i);
        foreign += is;
        small += !is && rest_is_small(note, i);
        unknown += is || !english_at(note, i);
    }
    return words >= WORDS_LEAST && foreign >= 2 && foreign > 2 * small && 4 * unknown >= 3 * words;
}

void read_alien(struct note *note) {
    if (!note->book) return; // without it no word is known
    for (size_t from = 0, to; from < note->tokens.count; from = to + 1) {
        to = sentence_end(&note->tokens, from);
        if (!is_alien(note, from, to)) continue;
        for (size_t i = from; i < to; i++) note->taken[i] = TAKEN_OPEN;
        note_reading(note, from, to, "not in English", "its small words");
    }
}
