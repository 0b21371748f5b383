// SPDX-License-Identifier: MIT
// Where a maker's name was read: "by Harrow & Dunn (stamped on the tang)", "Dunmore label under the seat",
// "Motoval brand per the plate", "Harkwell on the base", "Tarnbeck, name is on the foot". Such a name is
// written on the thing, and so it is a mark as well as the maker's.
#include "notes/mark_found.h"

#include <string.h>

#include "notes/any.h"
#include "notes/mark_words.h"
#include "notes/place.h"
#include "notes/things.h"

enum { QUOTE_MOST = 8 };

static bool is_bearer(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "label", "tag", "plate", "badge", "sticker", "decal", "nameplate", "stamp",
               "mark", "backstamp", "transfer", "plaque", "logo", "ticket", "stencil", "medallion");
}

// The tokens of "on the base", "under seat" at `i`, which begin with a preposition; 0 where none stands.
static size_t placed(const struct note *note, size_t i, const char **where) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i, "in") && ANY(tokens, i + 1, "the", "its") && is_bearer(note, i + 2)) return 0;
    if (ANY(tokens, i, "on") && ANY(tokens, i + 1, "the", "its", "a") && is_bearer(note, i + 2)) {
        *where = note_words(note, i + 2, i + 3);
        return 3;
    }
    if (!ANY(tokens, i, "on", "under", "inside", "in", "across", "at", "underneath", "round", "around",
             "into"))
        return 0;
    size_t n = place_at(note, i, where);
    bool noun =
        !n && ANY(tokens, i + 1, "the", "its", "both", "each", "all") && i + 2 < tokens->count &&
        tokens->at[i + 2].kind == TOKEN_WORD && !tokens->at[i + 2].capital && !note->fault_word[i + 2] &&
        (i + 3 >= tokens->count || tokens->at[i + 3].stop != STOP_NONE || token_is(tokens, i + 3, ")"));
    if (noun) *where = note_words(note, i + 2, i + 3); // "stamped on the fender": a part of no list
    return noun ? 3 : n;
}

// "Underneath", "under it", and the rest of a place: "on the foot of each", "by the pivot".
static size_t placed_too(const struct note *note, size_t i, const char **where) {
    const struct tokens *tokens = &note->tokens;
    size_t n = placed(note, i, where);
    if (!n && ANY(tokens, i, "by", "near", "beside", "below", "above", "beneath", "behind", "along"))
        n = place_at(note, i, where);
    if (!n && ANY(tokens, i, "by", "near", "beside", "below", "above", "along") &&
        ANY(tokens, i + 1, "the", "its") && i + 2 < tokens->count && tokens->at[i + 2].kind == TOKEN_WORD &&
        !note->fault_word[i + 2] && !mark_is_person(note, i + 2) &&
        !ANY(tokens, i + 2, "artist", "maker", "potter", "painter", "hand", "factory", "same", "firm")) {
        *where = note_words(note, i, i + 3); // "by the pivot": a part of no list
        n = 3;
    }
    if (!n && ANY(tokens, i, "under", "on", "inside", "into") && ANY(tokens, i + 1, "it", "them", "each")) {
        *where = note_words(note, i, i + 1);
        return 2;
    }
    if (!n && ANY(tokens, i, "underneath", "below", "beneath", "inside", "outside")) {
        *where = note_words(note, i, i + 1);
        n = 1;
    }
    if (n && ANY(tokens, i + n, "of")) {
        size_t each = i + n + 1;
        if (ANY(tokens, each, "each", "both", "all", "every", "one", "them")) {
            n += 2;
            if (ANY(tokens, each + 1, "one", "piece", "of")) n++;
            if (ANY(tokens, each + 1, "of") && ANY(tokens, each + 2, "them")) n++;
        }
    }
    return n;
}

// How it was put there: "stamped in green", "etched very small", "cast deep".
static size_t past_manner(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry color;
    while (i < tokens->count && tokens->at[i].stop == STOP_NONE) {
        size_t letters = mark_in_letters(note, i);
        if (letters > i)
            i = letters;
        else if (ANY(tokens, i, "in") && word_at(note, i + 1, 1u << USE_COLOR, &color))
            i += 1 + word_at(note, i + 1, 1u << USE_COLOR, &color) +
                 (size_t)ANY(tokens, i + 2, "ink", "glaze", "paint", "letters", "script");
        else if (ANY(tokens, i, "very", "small", "faintly", "faint", "deep", "deeply", "lightly", "clearly",
                     "large", "big", "low", "tiny", "neatly", "boldly", "right", "twice", "plainly",
                     "crisply", "rather", "quite", "once"))
            i++;
        else
            break;
    }
    return i;
}

// What a clause begins with before it tells where the name is.
static size_t lead(const struct tokens *tokens, size_t i) {
    enum { WORDS_MOST = 4 };
    for (size_t n = 0; n < WORDS_MOST; n++, i++)
        if (!ANY(tokens, i, "it's", "its", "it", "is", "so", "that's", "which", "clearly", "still", "has",
                 "as", "and", "just", "there's", "with", "faintly", "brand", "make"))
            break;
    return i;
}

// "Stamped on the tang", "label under base", "per the plate", "says so on the dial", "name is on the foot" at
// token `i`: behind it, and where; `i` where it says nothing of the sort.
static size_t written_at(const struct note *note, size_t i, bool apart, const char **where) {
    const struct tokens *tokens = &note->tokens;
    size_t at = lead(tokens, i), n;
    bool put = mark_is_stamp(note, at) ||
               ANY(tokens, at, "carved", "burned", "burnt", "cut", "woven", "stitched", "sewn", "punched");
    size_t on = put ? past_manner(note, at + 1) : at;
    if (put && (n = placed_too(note, on, where)) != 0) return on + n;
    if (put && on > at + 1 && (on >= tokens->count || tokens->at[on].stop != STOP_NONE)) return on;
    if (put && (at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE) &&
        ANY(tokens, at, "stamped", "marked", "impressed", "branded", "incised", "engraved", "embossed",
            "cast"))
        return at + 1; // "Corvin stamped"
    if (ANY(tokens, at, "says", "reads") && (n = ANY(tokens, at + 1, "so", "that") ? 1 : 0, true)) {
        size_t to = placed(note, at + 1 + n, where);
        if (to && n) return at + 1 + n + to;
    }
    if (ANY(tokens, at, "the", "its", "their") && ANY(tokens, at + 1, "name", "maker's")) at++;
    if (ANY(tokens, at, "name", "maker's", "signature") && apart) {
        size_t verb = at + 1 + ANY(tokens, at + 1, "name", "mark");
        verb += ANY(tokens, verb, "is", "on");
        if (ANY(tokens, verb - 1, "on")) verb--;
        verb += mark_is_stamp(note, verb);
        if ((n = placed(note, verb, where)) != 0) return verb + n;
    }
    size_t to = at;
    if (ANY(tokens, at, "per", "from"))
        to = at + 1;
    else if (ANY(tokens, at, "according", "going") && ANY(tokens, at + 1, "to", "by"))
        to = at + 2;
    else if (at > i && ANY(tokens, at - 1, "says", "as", "so") && ANY(tokens, at, "says", "per"))
        to = at + 1;
    if (to > at) {
        to += ANY(tokens, to, "the", "its", "a", "an");
        to += ANY(tokens, to, "maker's", "makers", "brass", "paper", "metal", "cloth", "name");
        if (!is_bearer(note, to)) return i;
        *where = note_words(note, to, to + 1);
        return to + 1;
    }
    if (is_bearer(note, at)) {
        on = at + 1 + ANY(tokens, at + 1, "still", "is", "sewn", "stuck", "glued", "inside");
        if ((n = placed(note, on, where)) != 0) return on + n;
        *where = note_words(note, at, at + 1);
        bool ends = at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE;
        return !ends || ANY(tokens, at, "mark", "stamp", "plate", "transfer", "stencil") ? i : at + 1;
    }
    size_t lettered = mark_in_letters(note, at); // "in raised letters on the bottom"
    if (lettered > at && (n = placed_too(note, lettered, where)) != 0) return lettered + n;
    return (n = placed_too(note, at, where)) != 0 && ANY(tokens, at, "on", "under", "inside") ? at + n : i;
}

static bool is_marked(const struct note *note, const char *name) {
    for (size_t i = 0; i < note->record->mark_count; i++)
        if (strstr(note->record->marks[i].text, name)) return true;
    return false;
}

static bool over(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    if (token_is(tokens, i, "in") && word_at(note, i + 1, 1u << USE_COLOR, &entry)) return true;
    if (token_is(tokens, i, "in") && ANY(tokens, i + 1, "script", "relief", "capitals", "pencil"))
        return true;
    // "On the backs of the clips": over, where nothing but the part is said
    if (token_is(tokens, i, "of") && ANY(tokens, i + 1, "the", "its", "each") && i + 3 <= tokens->count &&
        (i + 3 == tokens->count || tokens->at[i + 3].stop != STOP_NONE))
        return true;
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || ANY(tokens, i, ")", "and", "but");
}

// "Maker's name Cressfield embossed on the tank": a mark that is told to be the maker's.
void read_told_maker(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    if (!note->record->mark_count) return;
    for (size_t k = 0; k < note->record->attribute_count; k++)
        if (!strcmp(note->record->attributes[k].name, "brand")) return;
    for (size_t i = 2; i < tokens->count; i++) {
        if (note->taken[i] != TAKEN_MARK || !mark_is_text(note, i) || tokens->at[i].kind != TOKEN_WORD)
            continue;
        size_t at = i;
        while (at > 2 && ANY(tokens, at - 1, "is", "reads", "says", ":", "'", "\"", "of")) at--;
        bool told = ANY(tokens, at - 1, "name", "mark", "label", "plate", "stamp") &&
                    ANY(tokens, at - 2, "maker's", "makers", "manufacturer's");
        told |= ANY(tokens, at - 1, "maker", "manufacturer", "brand");
        size_t end = i;
        while (end < tokens->count && note->taken[end] == TAKEN_MARK && tokens->at[end].stop == STOP_NONE &&
               tokens->at[end].kind == TOKEN_WORD && (mark_is_text(note, end) || ANY(tokens, end, "and"))) {
            bool initial = tokens->at[end].to == tokens->at[end].from + 1;
            end += token_is(tokens, end + 1, "&") || (initial && token_is(tokens, end + 1, ".")) ? 2 : 1;
        }
        if (!told || end == i || tokens->at[end - 1].to < tokens->at[i].from + 3) {
            i = end > i ? end - 1 : i;
            continue;
        }
        struct value *value = note_attribute(note);
        *value = (struct value){.name = "brand",
                                .value = arena_string(note->arena, note_words(note, i, end)),
                                .span = note_span_of(note, i, end)};
        note_reading(note, i, end, arena_format(note->arena, "brand %s", value->value), "the maker's name");
        return;
    }
}

// "Label inside from Torwell Saddlers": what the name before token `i` stands on; NULL where none does.
static const char *bearer_before(const struct note *note, size_t i) {
    enum { BACK = 5 };
    const struct tokens *tokens = &note->tokens;
    if (i < 2 || !ANY(tokens, i - 1, "from", "of", "by")) return NULL;
    for (size_t k = i - 1; k > 0 && k + BACK > i && tokens->at[k - 1].stop == STOP_NONE; k--) {
        if (ANY(tokens, k - 1, "label", "tag", "plate", "badge", "decal", "nameplate"))
            return note_words(note, k - 1, k);
        if (!ANY(tokens, k - 1, "inside", "sewn", "in", "on", "the", "back", "lid", "it", "is", "side",
                 "glued"))
            break;
    }
    return NULL;
}

void read_maker_marks(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    struct record *record = note->record;
    for (size_t k = 0; k < record->attribute_count; k++) {
        const struct value *value = &record->attributes[k];
        if (strcmp(value->name, "brand") != 0 || value->of || value->sure != SURE_STATED || !value->span.to ||
            is_marked(note, value->value))
            continue;
        size_t from = 0, to;
        while (from < tokens->count && tokens->at[from].from < value->span.from) from++;
        for (to = from; to < tokens->count && tokens->at[to].to <= value->span.to;) to++;
        if (from > 0 && token_is(tokens, from - 1, "\"")) { // "wringer \"Horse Shoe Brand\"": read off it
            size_t close = to;
            while (close < tokens->count && close < from + QUOTE_MOST && !token_is(tokens, close, "\"") &&
                   tokens->at[close].stop == STOP_NONE)
                close++;
            if (token_is(tokens, close, "\"") &&
                !ANY(tokens, close + 1, "?", "-", "style", "type", "pattern")) {
                struct mark *mark = note_mark(note);
                mark->text = arena_string(note->arena, note_words(note, from, close));
                note_reading(note, from, close, "mark", "a maker's name in quotes");
                continue;
            }
        }
        size_t at = to;
        while (at < tokens->count && note->taken[at] == TAKEN_VALUE && tokens->at[at].stop == STOP_NONE)
            at++; // its model
        size_t named = at;
        bool dot = at == to && token_is(tokens, at, ".") && tokens->at[at].joined && at + 1 < tokens->count &&
                   !tokens->at[at + 1].capital &&
                   ANY(tokens, at - 1, "co", "bros", "ltd", "inc", "corp", "mfg");
        if (dot) at++; // "Torwell & Co. on the backs"
        const char *bearer = bearer_before(note, from);
        if (bearer) {
            struct mark *mark = note_mark(note);
            mark->text = arena_string(note->arena, note_words(note, from, to));
            mark->where = bearer;
            note_reading(note, from, to, "mark", "what a label is from");
            continue;
        }
        bool apart = ANY(tokens, at, "(", ",", "-", ":");
        bool closed = token_is(tokens, at, "(");
        const char *where = NULL;
        size_t end = written_at(note, at + (apart ? 1 : 0), apart, &where);
        if (end == at + (apart ? 1 : 0) || (!where && (apart || !mark_is_stamp(note, at)))) continue;
        if (end < tokens->count && tokens->at[end].stop == STOP_NONE &&
            ANY(tokens, end, "under", "of", "on", "in") &&
            ANY(tokens, end + 1, "each", "both", "all", "every", "them", "it"))
            end += 2 + ANY(tokens, end + 2, "one", "piece");
        bool ends = over(note, end) && (!closed || token_is(tokens, end, ")"));
        bool bare = ANY(tokens, at + (apart ? 1 : 0), "on", "under", "inside");
        bool device = ANY(tokens, end, "with") && ANY(tokens, end + 1, "a", "an", "the", "its") &&
                      ANY(tokens, end + 2, "crown", "star", "lion", "anchor", "number", "date", "mark",
                          "eagle", "shield", "ship", "wreath", "castle", "bell", "tree", "globe", "pattern");
        if (bare && !ends && !device) continue; // "by Harkwell, on the rim is a chip"
        struct mark *mark = note_mark(note);
        bool model = named > to && !apart &&
                     strcspn(note_words(note, to, named), "0123456789") < strlen(note_words(note, to, named));
        mark->text = model ? arena_string(note->arena, note_words(note, from, named)) : value->value;
        mark->where = where;
        note_reading(note, from, end, "mark", "where a maker's name was read");
        struct word_entry stuff; // "on the paper label": the label has a stuff of its own
        for (size_t i = at; ends && i < end && !word_at(note, i, 1u << USE_MATERIAL, &stuff); i++)
            if (note->taken[i] == TAKEN_NOT && tokens->at[i].kind == TOKEN_WORD)
                note_take(note, i, i + 1, TAKEN_MARK);
    }
}

// "Seatboard with it": words of one piece that end in a part are no names, though no book has them.
bool name_is_compound_part(const struct note *note, size_t i) {
    static const char *const ends[] = {"board", "case", "work",  "plate", "rail", "piece", "band",  "pin",
                                       "wheel", "box",  "block", "rod",   "bar",  "ring",  "cover", "frame"};
    const struct tokens *tokens = &note->tokens;
    const char *word = tokens->at[i].fold;
    size_t size = strlen(word);
    if (i + 1 < tokens->count && tokens->at[i + 1].capital) return false;
    for (size_t k = 0; k < sizeof ends / sizeof *ends; k++) {
        size_t n = strlen(ends[k]);
        struct word_entry entry;
        if (size > n + 2 && !strcmp(word + size - n, ends[k]) &&
            wordbook_find(note->book, word, size - n, &entry) &&
            entry.uses & ((1u << USE_WORD) | (1u << USE_PART)))
            return true;
    }
    return false;
}
