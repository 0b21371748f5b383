// SPDX-License-Identifier: MIT
// A title is a run of words with capitals, small ones between them allowed, in a note that speaks of a book,
// a record or a film; who made it stands behind "by" or "with".
#include "notes/works.h"

#include <string.h>

#include "notes/any.h"
#include "notes/things.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// WORK_SHOWN: a poster may as well name a firm or a place, so that its title has to look like one. WORK_GAME:
// one word behind a game may as well be its maker.
enum work { WORK_NONE, WORK_BOOK, WORK_RECORD, WORK_SHOWN, WORK_GAME };

static enum work work_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t no = i > 1 && token_is(tokens, i - 1, ".") ? i - 2 : i - 1;
    if (i > 0 && tokens->at[i].kind == TOKEN_FIGURE && ANY(tokens, no, "no", "number", "model", "type"))
        return WORK_NONE; // "Torwell No. 78 plane"
    static const char *const books[] = {"novel",      "paperback", "hardcover", "hardback",  "book",
                                        "cookbook",   "textbook",  "atlas",     "memoir",    "biography",
                                        "softcover",  "comic",     "thriller",  "anthology", "magazine",
                                        "paperbacks", "annual",    "poetry",    "hymnal",    "guidebook"};
    static const char *const records[] = {"lp",  "record", "album", "45",  "45s",   "cd",         "cassette",
                                          "vhs", "dvd",    "78",    "lps", "vinyl", "soundtrack", "ep"};
    if (ANY(tokens, i, "book", "annual", "atlas", "anthology") && i > 0 && i < 4 && tokens->at[i].capital &&
        tokens->at[i - 1].capital && tokens->at[i - 1].stop == STOP_NONE && ANY(tokens, i + 1, "of", "for") &&
        i + 2 < tokens->count && tokens->at[i + 2].capital)
        return WORK_NONE; // "A Child's Book of Knots": of the title
    if (ANY(tokens, i, "book", "books") && tokens->at[i].stop == STOP_NONE &&
        ANY(tokens, i + 1, "press", "rack", "ends", "stand", "trolley", "rest", "slide", "cradle", "shelf",
            "trough", "case", "block", "safe", "plough", "plow"))
        return WORK_NONE; // what books are kept or made in
    static const char *const machines[] = {
        "player",  "players", "deck",  "decks",   "recorder", "recorders", "changer",
        "cabinet", "rack",    "stand", "holder",  "storage",  "crate",     "case",
        "cases",   "cleaner", "brush", "carrier", "shelf",    "tape",      "adapter",
        "adaptor", "needle",  "box",   "radio",   "rewinder", "tower",     "walkman"};
    if (tokens->at[i].stop == STOP_NONE && AMONG(tokens, i, records) && AMONG(tokens, i + 1, machines))
        return WORK_NONE; // what records are played on or kept in
    if (ANY(tokens, i, "volumes", "vols", "hymnal") || AMONG(tokens, i, books)) return WORK_BOOK;
    if (ANY(tokens, i, "guide") && i > 0 &&
        ANY(tokens, i - 1, "field", "travel", "pocket", "walking", "bird"))
        return WORK_BOOK;
    if (ANY(tokens, i, "game") && tokens->at[i].capital == tokens->at[i].starts &&
        !ANY(tokens, i + 1, "table", "board", "box", "bag", "console", "cartridge", "system", "controller",
             "bird", "pie", "call", "camera", "room", "boy", "gear"))
        return WORK_GAME;
    if (AMONG(tokens, i, records)) return WORK_RECORD;
    if (token_phrase(tokens, i, "sheet music") && !ANY(tokens, i + 2, "stand", "cabinet", "holder", "case"))
        return WORK_BOOK;
    if (ANY(tokens, i, "poster", "posters", "playbill", "songbook", "libretto") &&
        !(tokens->at[i].stop == STOP_NONE && ANY(tokens, i + 1, "bed", "paint", "board", "tube", "frame")))
        return WORK_SHOWN;
    if (token_phrase(&note->tokens, i, "copy of")) return WORK_BOOK;
    return WORK_NONE;
}

static bool is_capital(const struct note *note, size_t i) {
    if (i >= note->tokens.count || note->taken[i] != TAKEN_NOT) return false;
    const struct token *t = &note->tokens.at[i];
    if (i > 0 && !t->fold[1] && ANY(&note->tokens, i - 1, "no", "missing", "lacks", "without"))
        return false; // "19 of 20 volumes, no M."
    return t->kind == TOKEN_WORD && t->capital && !note->tokens.shouts && work_at(note, i) == WORK_NONE &&
           !(t->fold[0] == 'i' && (!t->fold[1] || t->fold[1] == '\''));
}

// The run of capitals from `i`, with small words and initials inside.
static size_t run_end(const struct note *note, size_t i) {
    static const char *const inner[] = {"of", "the", "a",  "an",  "on", "in",   "from", "and",
                                        "&",  "at",  "to", "for", ".",  "over", "under"};
    const struct tokens *tokens = &note->tokens;
    size_t end = i, at = i;
    while (at < tokens->count && at < i + 9) {
        if (is_capital(note, at) && (at == i || !tokens->at[at].starts))
            end = ++at;
        else if (at > i && token_among(tokens, at, inner, COUNT(inner)) && tokens->at[at].stop < STOP_COMMA)
            at++;
        else
            break;
    }
    return end;
}

static void add(struct note *note, const char *name, size_t from, size_t to) {
    struct value *value = note_attribute(note);
    *value = (struct value){.name = name,
                            .value = arena_string(note->arena, note_words(note, from, to)),
                            .span = note_span_of(note, from, to)};
    note_take(note, from, to, TAKEN_VALUE);
    note_reading(note, from, to, arena_format(note->arena, "%s %s", name, value->value), "title of a work");
}

static size_t maker_from(const struct note *note, size_t i, enum work work) {
    const struct tokens *tokens = &note->tokens;
    if (!token_is(tokens, i, "by") && !(work == WORK_RECORD && token_is(tokens, i, "with")))
        return tokens->count;
    i++;
    while (ANY(tokens, i, "the", "an") || (token_is(tokens, i, "a") && !tokens->at[i].capital))
        i++; // but "by A. Corrigan"
    return i;
}

static enum work first_work(const struct note *note, size_t *at) {
    for (size_t i = 0; i < note->tokens.count && note->tokens.at[i].stop < STOP_SENTENCE; i++) {
        enum work work =
            note->taken[i] == TAKEN_NOT || note->taken[i] == TAKEN_COUNT ? work_at(note, i) : WORK_NONE;
        if (work == WORK_NONE) continue;
        *at = i;
        return work;
    }
    return WORK_NONE;
}

// Does the note name what only a book has?
static bool has_book_parts(const struct note *note, bool *bound) {
    static const char *const parts[] = {
        "endpaper",    "endpapers",   "flyleaf",     "flyleaves",      "frontispiece",    "half-title",
        "dustjacket",  "dustwrapper", "title page",  "dust jacket",    "dust wrapper",    "front board",
        "back board",  "rear board",  "boards",      "bookplate",      "pastedown",       "first edition",
        "2nd edition", "1st edition", "3rd edition", "second edition", "revised edition", "spine",
        "half title",  "page",        "covers",      "pages",          "pastedowns"};
    bool found = false;
    *bound = false;
    for (size_t i = 0; i < note->tokens.count; i++) {
        bool work = work_at(note, i) == WORK_BOOK;
        *bound |= work;
        found |= work || token_longest(&note->tokens, i, parts, COUNT(parts)) > 0;
    }
    return found;
}

// "Songs of the Weir, 1902. Boards rubbed.": a title heads the note, and what it speaks of is a book's.
static bool is_headed(struct note *note, size_t *to) {
    const struct tokens *tokens = &note->tokens;
    size_t end = run_end(note, 0);
    int words = 0;
    struct noun_found noun;
    bool bound, ends = end >= tokens->count || tokens->at[end].stop != STOP_NONE ||
                       tokens->at[end].kind == TOKEN_FIGURE || token_is(tokens, end, "by");
    for (size_t i = 0; i < end; i++) words += tokens->at[i].kind == TOKEN_WORD && tokens->at[i].capital;
    bool article = ANY(tokens, 0, "the", "a", "an");
    if (words < 2 + (article ? 1 : 0) || !ends || tokens->shouts || note->record->type.value) return false;
    if (noun_at(note, end - 1, &noun) && noun.thing) return false; // "Black Leather Album"
    if (!has_book_parts(note, &bound)) return false;
    *to = end;
    if (!bound) {
        struct record *record = note->record;
        record->type =
            (struct value){.value = "book", .sure = SURE_LIKELY, .span = note_span_of(note, 0, end)};
        record->family = ruleset_family(note->rules, "books");
    }
    return true;
}

// "Race to the Weir", "Lantern Hill": two words with capitals at least, and no firm that brings games out.
static bool is_game(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    int words = 0;
    for (size_t i = from; i < to; i++) words += tokens->at[i].kind == TOKEN_WORD && tokens->at[i].capital;
    return words >= 2 && from > 0 &&
           !ANY(tokens, to - 1, "games", "toys", "puzzles", "works", "bros", "sons", "mfg") &&
           !ANY(tokens, from - 1, "by", "from", "in", "at", "marked", "says", "made");
}

// "Merrowgate Press": who brought it out, and no title.
static bool is_publisher(const struct note *note, size_t to) {
    return to > 0 && ANY(&note->tokens, to - 1, "press", "publishing", "publishers", "publications", "ltd",
                         "inc", "bros", "brothers", "sons", "co", "company");
}

// "The Keeper's Daughter", "Ferry at Dusk": an article, or a small word inside.
static bool is_like_title(const struct note *note, size_t from, size_t to) {
    static const char *const small[] = {"of", "the", "a", "an", "on", "in", "from", "at", "to"};
    const struct tokens *tokens = &note->tokens;
    if (from > 0 && ANY(tokens, from - 1, "the", "a", "an") && tokens->at[from - 1].capital) return true;
    if (ANY(tokens, from, "the", "a", "an")) return true;
    for (size_t i = from + 1; i + 1 < to; i++)
        if (AMONG(tokens, i, small)) return true;
    return false;
}

void read_works(struct note *note) {
    size_t at = 0;
    enum work work = first_work(note, &at);
    if (work == WORK_NONE) {
        size_t end = 0;
        if (!note->tokens.count || !is_headed(note, &end)) return;
        work = WORK_BOOK;
        at = end;
    }
    bool named = false, made = false;
    for (size_t i = 0; i < note->tokens.count && note->tokens.at[i].stop < STOP_SENTENCE; i++) {
        size_t maker = maker_from(note, i, work), end = i;
        if (!made && work != WORK_GAME && maker < note->tokens.count &&
            (end = run_end(note, maker)) > maker) {
            add(note, work == WORK_BOOK ? "author" : "byArtist", maker, end);
            made = true;
            i = end - 1;
            continue;
        }
        if (named || !is_capital(note, i) || (note->tokens.at[i].starts && i <= at && i > 0)) continue;
        if (i == 0 && (end = run_end(note, i)) < 2) continue; // a capital that only begins the note
        if (i == 0 && end <= at && token_is(&note->tokens, end, "copy")) continue;
        end = run_end(note, i);
        if (i == 0 && end - i < 2) continue;
        if (is_publisher(note, end) || (work == WORK_SHOWN && !is_like_title(note, i, end)) ||
            (work == WORK_GAME && (i <= at || !is_game(note, i, end)))) {
            i = end - 1;
            continue;
        }
        add(note, "name", i, end);
        named = true;
        i = end - 1;
    }
}
