// SPDX-License-Identifier: MIT
// Numbers and short codes that are told as what they are: "serial no. K 218", "there's a number, 4417, under
// it", "maker's plate KR-9".
#include "notes/mark_found.h"

#include "notes/any.h"
#include "notes/figure.h"
#include "notes/place.h"

#include <string.h>

// "4417", "KR-9", "K 218", "A4417/2": where a code that begins at `i` ends; `i` where none does.
static size_t code_end(const struct note *note, size_t i) {
    enum { LETTERS_MOST = 4 };
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    if (at + 1 < tokens->count && tokens->at[at].kind == TOKEN_WORD && !tokens->shouts &&
        (tokens->at[at].capitals ||
         (tokens->at[at].capital && tokens->at[at].to - tokens->at[at].from == 1)) &&
        tokens->at[at].to - tokens->at[at].from <= LETTERS_MOST)
        at += token_is(tokens, at + 1, ".") && tokens->at[at + 1].joined ? 2 : 1;
    if (at >= tokens->count || note->taken[at] != TAKEN_NOT ||
        (tokens->at[at].kind != TOKEN_FIGURE && tokens->at[at].kind != TOKEN_CODE))
        return i;
    struct amount amount; // "label, 40 watts": a measure
    if (at == i && amount_at(note, at, &amount) && amount.unit) return i;
    for (at++; at + 1 < tokens->count && tokens->at[at].joined && tokens->at[at + 1].joined &&
               (token_is(tokens, at, "-") || token_is(tokens, at, "/")) &&
               tokens->at[at + 1].stop == STOP_NONE;)
        at += 2;
    return at;
}

static bool ends(const struct note *note, size_t at) {
    const char *where;
    return at >= note->tokens.count || note->tokens.at[at].stop != STOP_NONE || place_at(note, at, &where);
}

static bool keep(struct note *note, size_t i, size_t from, size_t to, struct mark_found *found) {
    const char *where = NULL;
    size_t at = to + (token_is(&note->tokens, to, ",") ? 1 : 0), place = place_at(note, at, &where);
    *found = (struct mark_found){from, to, place ? at + place : to, place ? where : NULL};
    return mark_keep(note, i, found);
}

// "Serial number 4417", "ser. no. K 218", "s/n KR-9".
static size_t serial_end(const struct tokens *tokens, size_t i) {
    size_t at = i + 1;
    if (token_is(tokens, i, "s") && token_is(tokens, at, "/") && token_is(tokens, i + 2, "n"))
        at = i + 3;
    else if (!ANY(tokens, i, "serial", "ser"))
        return i;
    bool brief = token_is(tokens, i, "ser") && token_is(tokens, at, ".");
    if (brief) at++;
    size_t number = at;
    while (ANY(tokens, at, "no", "number", "num", "nr", "#", ".", ":", "is", "reads") && at < i + 6) at++;
    return at > number || brief || token_is(tokens, i, "s") || token_is(tokens, i, "serial") ? at : i;
}

// A word for what bears writing, or for writing, and the code set off behind it.
static size_t set_off(const struct tokens *tokens, size_t i) {
    bool bears = ANY(tokens, i, "stamp", "label", "plate", "nameplate", "sticker", "tag", "mark", "backstamp",
                     "tally", "ticket");
    bool number = ANY(tokens, i, "number") && i > 0 && ANY(tokens, i - 1, "a", "one", "another", "the");
    if (!bears && !number) return i;
    size_t at = i + 1;
    if (token_is(tokens, at, ",") || token_is(tokens, at, ":")) return at + 1;
    if (ANY(tokens, at, "reads", "says")) return at + 1;
    return bears && i > 0 &&
                   ANY(tokens, i - 1, "maker's", "makers", "printed", "impressed", "incised", "stamped",
                       "rating", "serial", "number")
               ? at
               : i;
}

size_t mark_find_number(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t from = serial_end(tokens, i);
    if (from == i) from = set_off(tokens, i);
    if (from == i || from >= tokens->count) return 0;
    size_t to = code_end(note, from);
    struct mark_found found;
    if (to == from || !(ends(note, to) || token_is(tokens, to, ","))) return 0;
    return keep(note, i, from, to, &found) ? found.end - i : 0;
}

// What has it: "has", "with", "there's"; or a noun and a comma before it, or nothing.
static bool is_borne(const struct tokens *tokens, size_t i) {
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE) return true;
    if (i > 1 &&
        ANY(tokens, i - 2, "engraved", "embroidered", "etched", "stitched", "monogrammed", "decorated"))
        return false; // "engraved with an M": somebody's
    return ANY(tokens, i - 1, "has", "have", "had", "with", "bears", "carries", "shows", "there's", "is",
               "and", "got", "see", "find", "only", "just", "also", "but", "reads", "w/", "it's");
}

// "Has an 8 on the back", "with a small K under the base": a figure or a letter with an article before it and
// a place behind it. An article never stands before a count, and a unit makes a measure of it.
size_t mark_find_borne(struct note *note, size_t i) {
    enum { DIGITS_MOST = 4, WORDS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "a", "an", "the") || tokens->shouts || !is_borne(tokens, i)) return 0;
    size_t at = i + 1;
    while (at < i + 1 + WORDS_MOST && tokens->at[at - 1].stop == STOP_NONE &&
           ANY(tokens, at, "small", "big", "large", "little", "tiny", "raised", "faint", "single", "plain",
               "fancy", "curly", "script", "capital", "old", "english", "gothic", "number", "letter", "gold",
               "gilt", "black", "white", "red", "blue", "green", "molded", "moulded", "incised", "impressed",
               "cast"))
        at++;
    if (at + 1 >= tokens->count || note->taken[at] != TAKEN_NOT) return 0;
    const struct token *text = &tokens->at[at];
    size_t bytes = text->to - text->from;
    bool figure = text->kind == TOKEN_FIGURE && bytes <= DIGITS_MOST &&
                  strspn(text->fold, "0123456789") == strlen(text->fold);
    bool letter = text->kind == TOKEN_WORD && text->capital && bytes == 1 && !tokens->flat;
    struct amount amount;
    if (!(figure || letter) || text->stop != STOP_NONE) return 0;
    if (figure && amount_at(note, at, &amount) && (amount.unit || amount.taken > 1)) return 0;
    size_t from = at;
    if (ANY(tokens, at + 1, "in", "inside", "within") && ANY(tokens, at + 2, "a", "an") &&
        ANY(tokens, at + 3, "circle", "diamond", "square", "shield", "triangle", "ring", "box", "star",
            "oval", "wreath", "heart"))
        at += 3;
    if (ANY(tokens, at + 1, "cast", "stamped", "pressed", "molded", "moulded", "impressed", "incised",
            "punched", "engraved", "painted", "printed", "embossed"))
        at++;
    const char *where = NULL;
    size_t place = ANY(tokens, at + 1, "on", "in", "at", "under", "inside", "underneath", "beneath", "near")
                       ? place_at(note, at + 1, &where)
                       : 0;
    if (!place) return 0;
    struct mark_found found = {from, from + 1, at + 1 + place, where};
    return mark_keep(note, i, &found) ? found.end - i : 0;
}

bool mark_is_edition(const char *fold) {
    unsigned long of = 0;
    const char *stroke = strchr(fold, '/');
    if (!stroke || stroke == fold) return false;
    for (const char *c = fold; *c; c++) {
        if (c == stroke) continue;
        if (*c < '0' || *c > '9') return false;
        if (c > stroke) of = of * 10 + (unsigned long)(*c - '0');
    }
    return of >= 10 && of < 10000 && (of & (of - 1)) != 0;
}

bool mark_is_day(const char *fold) {
    int parts = 0;
    for (const char *c = fold; *c; c++) {
        if (*c == '/' || *c == '.')
            parts++;
        else if (*c < '0' || *c > '9')
            return false;
    }
    return parts == 2;
}

bool mark_is_year(const struct tokens *tokens, size_t i) {
    return i < tokens->count && tokens->at[i].kind == TOKEN_FIGURE && strlen(tokens->at[i].fold) == 4 &&
           strspn(tokens->at[i].fold, "0123456789") == 4;
}
