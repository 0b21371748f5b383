// SPDX-License-Identifier: MIT
// Capitals in a sentence that speaks of writing: "cast on one cheek PAT. JULY 9 1889, on the other TALLIS
// CO", "a woven label sewn in the corner VALLEN MILLS", "B.HALE punched on the toe". What no closer reader
// took is written there too, unless a seller shouts.
#include "notes/mark_found.h"

#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/figure.h"
#include "notes/mark_words.h"
#include "notes/persons.h"
#include "notes/place.h"
#include "notes/things.h"
#include "notes/unit.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { BEFORE_MOST = 24, BEHIND_MOST = 6 };

static bool tells_writing(const struct note *note, size_t i) {
    static const char *const words[] = {
        "letters",    "lettering",   "letter",    "label",    "labels",   "plate",  "plates",  "nameplate",
        "tag",        "tags",        "sticker",   "badge",    "transfer", "decal",  "stamp",   "stamps",
        "mark",       "marks",       "legend",    "wording",  "writing",  "print",  "logo",    "stencil",
        "backstamp",  "inscription", "hallmarks", "name",     "plaque",   "title",  "motto",   "text",
        "words",      "word",        "reads",     "says",     "script",   "burnt",  "burned",  "punched",
        "stencils",   "numbered",    "maker's",   "markings", "brand",    "names",  "crest",   "carved",
        "tooled",     "maker",       "initials",  "ticket",   "seal",     "raised", "written", "wording's",
        "nameplates", "badges",      "stickers",  "decals",   "plaques"};
    return token_among(&note->tokens, i, words, COUNT(words)) || mark_is_stamp(note, i);
}

// "Raised letters round it", "in an oval", "punched on the toe": behind what is written.
static bool tells_behind(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (token_is(tokens, i, "in") && ANY(tokens, i + 1, "a", "an") &&
        ANY(tokens, i + 2, "circle", "oval", "diamond", "shield", "wreath", "ring", "box", "lozenge",
            "square", "rectangle", "scroll", "ribbon", "garter", "star", "triangle", "frame", "cartouche",
            "banner", "arc", "band", "panel", "garland", "roundel"))
        return true;
    struct word_entry entry;
    if (token_is(tokens, i, "on") && ANY(tokens, i + 1, "it", "them")) return true;
    if (token_is(tokens, i, "cut") && ANY(tokens, i + 1, "into", "in", "on"))
        return true; // "1911 cut into it"
    if (token_is(tokens, i, "in") && word_at(note, i + 1, 1u << USE_COLOR, &entry)) return true;
    return ANY(tokens, i, "stamp", "mark", "label", "tag", "sticker", "badge", "punched", "burnt", "burned",
               "letters", "lettering", "capitals", "stencil", "carved") ||
           (mark_is_stamp(note, i) && !ANY(tokens, i, "cast", "pressed", "painted", "scratched"));
}

static const char *place_ahead(const struct note *note, size_t i);

static bool speaks(const struct note *note, size_t from, size_t to) {
    size_t start = note_clause_from(note, from, STOP_SENTENCE);
    if (start + BEFORE_MOST < from) start = from - BEFORE_MOST;
    for (size_t k = from; k > start; k--)
        if (tells_writing(note, k - 1) && !mark_is_denied(note, k - 1)) return true;
    for (size_t k = to; k < to + BEHIND_MOST && k < note->tokens.count; k++) {
        if (note->tokens.at[k].starts || note->tokens.at[k].stop >= STOP_CLAUSE) return false;
        if (tells_behind(note, k)) return true;
    }
    return false;
}

// The place that ends right before token `i`.
static const char *place_ahead(const struct note *note, size_t i) {
    enum { WORDS_MOST = 6 };
    size_t end = i > 0 && note->tokens.at[i - 1].kind == TOKEN_SIGN ? i - 1 : i;
    for (size_t k = end; k > 0 && k + WORDS_MOST > end && note->tokens.at[k - 1].stop < STOP_CLAUSE; k--) {
        const char *where;
        size_t taken = place_at(note, k - 1, &where);
        if (taken && k - 1 + taken == end &&
            ANY(&note->tokens, k - 1, "on", "in", "inside", "under", "at", "around", "round", "across",
                "along", "down", "into"))
            return where;
    }
    return NULL;
}

// "NO LID", "AS IS", "VERY", "CHIP": said loudly, and written nowhere.
static bool is_loud(const struct note *note, size_t from, size_t to) {
    size_t words = 0, loud = 0, english = 0;
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    if (token_is(tokens, from, "no") && to > from + 1 && tokens->at[from + 1].kind == TOKEN_FIGURE)
        return false; // "NO 41"
    if (to == from + 2 && tokens->at[from].kind == TOKEN_FIGURE &&
        ANY(tokens, from + 1, "in", "ft", "oz", "lb", "lbs", "gal", "pt", "qt", "cm", "mm", "cwt", "v", "w"))
        return false; // "10 IN"
    for (size_t k = from; k < to; k++) {
        if (tokens->at[k].kind != TOKEN_WORD) continue;
        words++;
        loud +=
            note->fault_word[k] || mark_is_breaker(note, k) ||
            ANY(tokens, k, "very", "never", "ok", "as", "is", "please", "nb", "note", "must", "always", "any",
                "none", "ps", "am", "fm", "tv", "led", "usb", "pvc", "diy", "ac", "dc", "uk", "us");
        english += word_at(note, k, 1u << USE_WORD, &entry) > 0;
    }
    bool begun = from > 0 && (tells_writing(note, from - 1) || token_is(tokens, from - 1, ":") ||
                              (tokens->at[from - 1].stop == STOP_NONE && place_ahead(note, from)));
    if (begun && (loud < words || words > 2)) return false;
    if (loud == words ||
        ANY(tokens, from, "no", "not", "as", "very", "never", "only", "must", "please", "all"))
        return to - from == words || loud == words; // a figure makes it a text
    if (english < words || from == 0 || (words > 1 && !loud)) return false;
    return tokens->at[from - 1].stop == STOP_NONE && !tells_writing(note, from - 1) &&
           !place_noun(note, from - 1) &&
           !ANY(tokens, from - 1, "like", "other", "one", "reading", "it", ":", "in", "and", "with");
}

static bool is_bearer(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "label", "plaque", "badge", "nameplate", "sticker", "transfer", "decal",
               "tag", "stamp", "backstamp", "mark", "lettering", "inscription", "stencil", "brand");
}

// '"WAY OUT" 24 x 6': capitals within quotes are read off something.
static bool quoted_capitals(const struct note *note, size_t from, size_t to) {
    size_t words = 0;
    if (note->tokens.shouts || note->tokens.flat) return false;
    for (size_t k = from; k < to; k++) {
        if (note->tokens.at[k].kind != TOKEN_WORD) continue;
        words += note->tokens.at[k].capitals;
        if (!note->tokens.at[k].capitals && !ANY(&note->tokens, k, "of", "the", "and", "no")) return false;
    }
    return words > 0;
}

bool mark_is_labeled(const struct note *note, size_t quote, struct mark_found *found) {
    enum { BACK = 4 };
    const struct tokens *tokens = &note->tokens;
    if (quote > 1 && (token_is(tokens, quote - 1, ":") || ANY(tokens, quote - 1, "is", "like", "reading"))) {
        found->where = place_ahead(note, token_is(tokens, quote - 1, ":") ? quote : quote - 1);
        return (found->where && token_is(tokens, quote - 1, ":")) || speaks(note, quote, found->to);
    }
    bool spoken = quote > 0 && ANY(tokens, quote - 1, "said", "called", "says", "say", "wrote", "asked");
    if (!spoken && quoted_capitals(note, quote + 1, found->to)) return true;
    for (size_t k = quote; k > 0 && k + BACK > quote && tokens->at[k - 1].stop < STOP_CLAUSE; k--) {
        if (note->fault_word[k - 1]) return false;
        if (!is_bearer(note, k - 1)) continue;
        found->where = ANY(tokens, k - 1, "label", "plaque", "badge", "nameplate", "sticker", "tag")
                           ? note_words(note, k - 1, k)
                           : NULL;
        return true;
    }
    bool name = found->to > quote + 2 && tokens->at[quote + 1].capital && !spoken &&
                !ANY(tokens, quote ? quote - 1 : quote, "as", "the", "pattern", "style", "so", "a");
    return name && speaks(note, quote, found->to);
}

size_t mark_up_to_place(const struct note *note, size_t i) {
    enum { MOST = 8 };
    const struct tokens *tokens = &note->tokens;
    for (size_t k = i; k < tokens->count && k < i + MOST; k++) {
        const char *where;
        if (k > i && ANY(tokens, k, "on", "inside", "under", "underneath", "in") && place_at(note, k, &where))
            return k;
        bool joint = k > i && ANY(tokens, k, "and", "&", "of", "by");
        if (tokens->at[k].stop != STOP_NONE || note->fault_word[k] || (!joint && mark_is_breaker(note, k)))
            return i;
    }
    return i;
}

size_t mark_in_letters(const struct note *note, size_t at) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    if (!token_is(tokens, at, "in")) return at;
    size_t to = at + 1;
    while (to < at + 4 && (ANY(tokens, to, "raised", "block", "script", "small", "large", "big", "gold",
                               "gilt", "old", "capital", "fancy", "bold", "red", "white") ||
                           word_at(note, to, 1u << USE_COLOR, &entry) == 1))
        to++;
    if (ANY(tokens, to, "letters", "lettering", "capitals", "paint", "pencil", "ink", "pen", "chalk", "biro",
            "marker", "relief", "script", "enamel", "transfer"))
        return to + 1;
    const char *where; // "in black on the top DOVECOTE", "in gold KENDRY"
    bool placed = to > at + 1 && ANY(tokens, to, "on", "under", "inside", "round", "around") &&
                  place_at(note, to, &where);
    return placed || (to > at + 1 && to < tokens->count && mark_is_text(note, to)) ? to : at;
}

bool mark_is_no_figure(const struct note *note, size_t i) {
    size_t at = i + (token_is(&note->tokens, i + 1, ".") ? 2 : 1);
    return token_is(&note->tokens, i, "no") && at < note->tokens.count &&
           note->tokens.at[at].kind == TOKEN_FIGURE;
}

bool mark_is_one_letter(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const char *where;
    return i < tokens->count && tokens->at[i].kind == TOKEN_WORD &&
           tokens->at[i].to - tokens->at[i].from == 1 &&
           (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE || token_is(tokens, i + 1, "and") ||
            place_at(note, i + 1, &where));
}

bool mark_is_told_number(const struct note *note, size_t i, size_t to) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry color;
    bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                (token_is(tokens, to, "in") &&
                 (word_at(note, to + 1, 1u << USE_COLOR, &color) || ANY(tokens, to + 1, "a", "an")));
    if (!ends || !ANY(tokens, i, "number", "no")) return false;
    if (token_is(tokens, to, "in") && ANY(tokens, to + 1, "a", "an")) return true; // "number 2 in a circle"
    if (token_is(tokens, i, "no") && i > 0 && mark_is_text(note, i - 1)) return false; // "DUCKMOOR No 2"
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < i;
         k++) // "label on the back, number 20-4418"
        if ((is_bearer(note, k) || ANY(tokens, k, "ticket", "tally", "disc", "printed", "stamped")) &&
            (!note->fault_word[k] || to > i + 2) && !mark_is_denied(note, k))
            return true;
    return i > 1 && ANY(tokens, i - 1, "the", "a") &&
           ANY(tokens, i - 2, "gives", "bears", "carries", "shows", "has", "bearing", "giving", "carrying",
               "with", "and");
}

bool mark_is_hearsay(const struct note *note, size_t says, size_t text, size_t to) {
    const struct tokens *tokens = &note->tokens;
    if (says == 0 || tokens->at[says - 1].stop != STOP_COMMA || tokens->flat || tokens->at[text].capital ||
        ANY(tokens, to, "on", "inside", "underneath"))
        return false;
    for (size_t k = note_clause_from(note, says, STOP_SENTENCE); k < says; k++)
        if (tells_writing(note, k) || tokens->at[k].kind == TOKEN_FIGURE) return false;
    return true;
}

static size_t keep(struct note *note, size_t from, size_t to) {
    const char *where = NULL;
    if (token_is(&note->tokens, to, ",") && to + 1 < note->tokens.count &&
        (!mark_is_sloppy(note, to + 1) || firm_word(&note->tokens, to + 1) ||
         ANY(&note->tokens, to + 1, "maker")))
        to = mark_goes_on(note, from, to);
    size_t place = place_at(note, to, &where);
    struct mark_found found = {from, to, to + place, place ? where : place_ahead(note, from)};
    return mark_keep(note, from, &found) ? found.end - from : 0;
}

// What a name stands behind: "woven label", "transfer mark", "punched"; not what is as often sold itself.
static bool governs(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (note->fault_word[i] && !ANY(tokens, i, "burnt", "burned", "written")) return false;
    if (token_is(tokens, i, "brand") || (i > 0 && ANY(tokens, i - 1, "price", "swing", "hang")))
        return false; // a maker, and what it cost
    if (token_is(tokens, i, "name") || token_is(tokens, i, "plate"))
        return i > 0 && ANY(tokens, i - 1, "maker's", "makers", "the", "trade", "firm's", "brass", "metal",
                            "studio", "studio's", "photographer's", "publisher's", "printer's", "company",
                            "company's", "shop", "store", "dealer's");
    return is_bearer(note, i) ||
           ANY(tokens, i, "labels", "letters", "legend", "tally", "ticket", "hallmark", "hallmarks", "marks",
               "punched", "written", "burnt", "burned", "logo", "motto", "wording");
}

// Does a text at token `i` stand behind such a word, with no more between than a place and a colon?
static bool is_governed(const struct note *note, size_t i) {
    enum { STEPS = 4, WORDS_MOST = 6 };
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    size_t k = i;
    for (int step = 0; step < STEPS && k > 0; step++) {
        if (governs(note, k - 1)) return !mark_is_denied(note, k - 1);
        if (token_is(tokens, k - 1, ":") || tokens->at[k - 1].stop == STOP_COMMA ||
            ANY(tokens, k - 1, "is", "reads", "says", "reading", "with", "like", "in", "out", "make", "can",
                "of", "sewn", "riveted", "glued", "stuck", "pasted", "pinned", "tied", "you", "but",
                "rubbed")) {
            k--;
            continue;
        }
        if (k > 1 && token_is(tokens, k - 2, "in") && word_at(note, k - 1, 1u << USE_COLOR, &entry)) {
            k -= 2;
            continue;
        }
        size_t device = mark_device_before(note, k);
        if (device < k) {
            k = device;
            continue;
        }
        size_t place = 0;
        const char *where;
        for (size_t p = k; p > 0 && p + WORDS_MOST > k && tokens->at[p - 1].stop == STOP_NONE; p--)
            if (p - 1 + place_at(note, p - 1, &where) == k) place = p;
        if (!place) return false;
        k = place - 1;
    }
    return k > 0 && governs(note, k - 1) && !mark_is_denied(note, k - 1);
}

bool mark_is_sloppy(const struct note *note, size_t i) {
    const struct token *token = &note->tokens.at[i];
    return token->kind == TOKEN_WORD && !token->capitals && i > 0 && english_at(note, i) &&
           (note->tokens.at[i - 1].stop == STOP_COMMA || mark_is_doing(note, i) || mark_is_breaker(note, i) ||
            ANY(&note->tokens, i, "gone", "looks", "bought", "lost", "torn", "worn", "feels", "seems"));
}

static bool joins_names(const struct note *note, size_t from, size_t to) {
    for (size_t k = from + 1; k + 1 < to; k++)
        if (token_is(&note->tokens, k, "&")) return true;
    return false;
}

// "Says TORWELL on one side and on the handle 10", "and a number under that, 771": one more text, behind a
// mark of the sentence and its own place or the word for it.
static bool follows_mark(const struct note *note, size_t i) {
    enum { BACK = 6 };
    const struct tokens *tokens = &note->tokens;
    bool named = token_is(tokens, i, "no"), marked = false;
    for (size_t k = i; k > 0 && k + BACK > i && tokens->at[k - 1].stop <= STOP_COMMA; k--)
        named |= ANY(tokens, k - 1, "number", "numbers", "no") && note->taken[k - 1] != TAKEN_MARK;
    size_t start = note_clause_from(note, i, STOP_SENTENCE);
    for (size_t k = start; k < i; k++)
        marked |= note->taken[k] == TAKEN_MARK || (named && k + BACK > i && mark_is_stamp(note, k)) ||
                  (named && is_bearer(note, k));
    bool joined = i > 0 && (token_is(tokens, i - 1, "and") || tokens->at[i - 1].stop == STOP_COMMA);
    const char *where; // "and 3 on one handle"
    return marked &&
           (named || place_ahead(note, i) ||
            (joined && ANY(tokens, i + 1, "on", "inside", "under") && place_at(note, i + 1, &where)));
}

// "Torwell & Dace", "T & D", "No. 12", "4471": no capitals, so that more has to speak for them.
static size_t find_name(struct note *note, size_t i, size_t *to) {
    const struct tokens *tokens = &note->tokens;
    const struct token *token = &tokens->at[i];
    bool figure = token->kind == TOKEN_FIGURE || token->kind == TOKEN_CODE;
    *to = i + 1;
    if (figure) {
        while (*to + 1 < tokens->count && (token_is(tokens, *to, "-") || token_is(tokens, *to, "/")) &&
               tokens->at[*to].joined && tokens->at[*to + 1].joined && tokens->at[*to].stop == STOP_NONE)
            *to += 2;
        if (i > 0 && token_is(tokens, i - 1, "-") && tokens->at[i].joined) return 0;
        size_t end = *to;
        const char *where;
        struct amount amount;
        bool ends =
            i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE || place_at(note, i + 1, &where);
        if (!ends || (amount_at(note, i, &amount) && amount.unit)) return 0;
        if (!note_free(note, i, end)) return 0;
        if (follows_mark(note, i)) return keep(note, i, end);
        return tokens->at[end - 1].to - token->from > 1 && is_governed(note, i) ? keep(note, i, end) : 0;
    }
    if (token->kind != TOKEN_WORD || !token->capital || ANY(tokens, i, "i", "i'm", "i've", "i'd", "i'll"))
        return 0;
    *to = mark_proper_run(note, i);
    if (*to <= i || !note_free(note, i, *to)) return 0;
    bool number = token_is(tokens, i, "no") && *to > i + 1; // "and a smaller one, No 9123"
    if (number && follows_mark(note, i)) return keep(note, i, *to);
    bool letter = token->to - token->from == 1 && mark_is_one_letter(note, i); // "a smaller mark N."
    if (letter && i > 0 && is_bearer(note, i - 1) && !mark_is_denied(note, i - 1))
        return keep(note, i, i + 1);
    bool joined = joins_names(note, i, *to);
    if (token->starts && !joined) return 0;
    if (note->fault_word[i] || (*to == i + 1 && mark_is_sloppy(note, i)) ||
        (*to == i + 1 && token->to - token->from == 1))
        return 0;
    if (is_governed(note, i) || (joined && (tells_behind(note, *to) || speaks(note, i, *to))))
        return keep(note, i, *to);
    return 0;
}

static bool opens_capitals(const struct note *note, size_t i) {
    const struct token *token = &note->tokens.at[i];
    if (token->kind == TOKEN_FIGURE && i + 1 < note->tokens.count) // "8 PAT PEND", "240 LB"
        return note->tokens.at[i + 1].capitals && token->stop == STOP_NONE &&
               note->tokens.at[i + 1].kind == TOKEN_WORD;
    if (token->kind != TOKEN_WORD || !token->capital) return false;
    if (token->capitals) return true;
    const struct tokens *tokens = &note->tokens;
    if (token->to - token->from != 1) return false;
    size_t next = i + 1 + (token_is(tokens, i + 1, ".") && tokens->at[i + 1].joined ? 1 : 0);
    return next < tokens->count && tokens->at[next].capitals;
}

// "On one side TORWELL, on the other nothing": what a clause says of a place, and no English.
static bool is_alone_at_place(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    bool english = true;
    for (size_t k = from; k < to && english; k++)
        english = tokens->at[k].kind == TOKEN_WORD && word_at(note, k, UINT32_MAX, &entry) > 0;
    if (english || (to < tokens->count && tokens->at[to].stop == STOP_NONE) || !place_ahead(note, from))
        return false;
    size_t start = note_clause_from(note, from - 1, STOP_COMMA);
    return start + 6 > from &&
           ANY(tokens, start, "on", "inside", "under", "underneath", "and", "at", "around");
}

// "204 on the back of one and 205 on the other": the second of two numbers.
static bool is_second_number(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!i || !(ANY(tokens, i - 1, "and", "&") || tokens->at[i - 1].stop == STOP_COMMA) ||
        !(token_phrase(tokens, i + 1, "on the other") || token_phrase(tokens, i + 1, "on another") ||
          token_phrase(tokens, i + 1, "on the second")))
        return false;
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < i; k++)
        if (note->taken[k] == TAKEN_MARK) return true;
    return false;
}

// "A spring motor, and 27 on the side": painted or cast there, where nothing that could be counted stands
// before it.
static bool is_running_number(const struct note *note, size_t i) {
    enum { BACK = 6 };
    const struct tokens *tokens = &note->tokens;
    const char *fold = tokens->at[i].fold, *where;
    size_t n = strlen(fold), place = place_at(note, i + 1, &where);
    bool code = n > 3 && n < 12 && strcspn(fold, "0123456789") < n && // "4T-118"
                strspn(fold, "0123456789-") < n && strspn(fold, "0123456789./\"'") < n &&
                (tokens->at[i].kind == TOKEN_CODE || strchr(fold, '-'));
    if (i == 0 || (!code && (n < 2 || n > 5 || strspn(fold, "0123456789") != n)) ||
        !ANY(tokens, i + 1, "on") || !place || !ANY(tokens, i + 2, "the", "its", "each", "both"))
        return false;
    size_t end = i + 1 + place;
    if (!ANY(tokens, i - 1, ",", "and", "with", "a") ||
        (end < tokens->count && tokens->at[end].stop == STOP_NONE && !ANY(tokens, end, "and", "in")))
        return false;
    size_t from = note_clause_from(note, i, STOP_SENTENCE);
    for (size_t k = from; k < end; k++)
        if (note->fault_word[k] || note->taken[k] == TAKEN_MEASURE) return false;
    for (size_t k = i - 1; k > from && k + BACK > i; k--)
        if (tokens->at[k].kind == TOKEN_WORD && tokens->at[k].one != tokens->at[k].fold) return false;
    return true;
}

// "Torwell on the dial, 21 JEWELS under it": its place is told by the mark before it.
static bool is_under_mark(const struct note *note, size_t from, size_t to) {
    if (!ANY(&note->tokens, to, "under", "below", "above", "beneath", "beside", "over") ||
        !ANY(&note->tokens, to + 1, "it", "that", "this", "them"))
        return false;
    if (place_ahead(note, from)) return true;
    for (size_t k = note_clause_from(note, from, STOP_SENTENCE); k < from; k++)
        if (note->taken[k] == TAKEN_MARK) return true;
    return false;
}

void mark_read_written(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->flat || tokens->shouts) return;
    for (size_t i = 0; i < tokens->count;) {
        size_t taken = 0;
        if (note->taken[i] != TAKEN_NOT) {
            i++;
            continue;
        }
        if (opens_capitals(note, i)) {
            size_t end = mark_proper_run(note, i);
            if (tokens->at[i].kind == TOKEN_FIGURE && end < i + 2) end = i;
            if (end > i && note_free(note, i, end) && !is_loud(note, i, end) &&
                (speaks(note, i, end) || is_alone_at_place(note, i, end) || is_under_mark(note, i, end)))
                taken = keep(note, i, end);
            if (!taken) taken = end > i ? end - i : 1;
        } else if ((tokens->at[i].kind == TOKEN_FIGURE || tokens->at[i].kind == TOKEN_CODE) &&
                   (is_second_number(note, i) || is_running_number(note, i) || unit_is_painted(tokens, i))) {
            taken = keep(note, i, i + 1);
        } else if (tokens->at[i].capital || tokens->at[i].kind == TOKEN_FIGURE ||
                   tokens->at[i].kind == TOKEN_CODE) {
            size_t to;
            taken = find_name(note, i, &to);
            if (!taken && !tokens->at[i].starts) taken = to - i;
        }
        i += taken ? taken : 1;
    }
}

void mark_past_bearer(const struct note *note, struct mark_found *found) {
    const char *where;
    size_t at = found->end;
    if (!ANY(&note->tokens, at, "label", "sticker", "decal", "tag", "badge", "transfer", "stamp")) return;
    at += 1 + ANY(&note->tokens, at + 1, "is", "still", "stuck", "sewn");
    at += ANY(&note->tokens, at, "still", "there");
    size_t end = place_at(note, at, &where) ? at + place_at(note, at, &where) : at;
    if (end >= note->tokens.count || note->tokens.at[end].stop != STOP_NONE) found->end = at;
}

bool mark_is_put(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "is", "was", "has")) i++;
    if (ANY(tokens, i, "been")) i++;
    return ANY(tokens, i, "stamped", "impressed", "punched", "cast", "sewn", "painted", "burnt", "burned",
               "cut", "carved", "scratched", "stencilled", "stenciled", "embossed", "printed", "molded",
               "moulded", "engraved", "incised", "etched");
}

// "Tolland & Co on the case": a firm, or a name that is no English, at the head of its sentence.
static bool is_firm(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    if (!tokens->at[from].starts || tokens->flat) return false;
    bool named = true;
    for (size_t k = from; k < to; k++) {
        if (k > from &&
            ANY(tokens, k, "&", "co", "bros", "sons", "son", "ltd", "works", "foundry", "company"))
            return true;
        named &= tokens->at[k].kind == TOKEN_WORD && tokens->at[k].capital && !english_at(note, k) &&
                 !note->fault_word[k] && !strchr(tokens->at[k].fold, '\'');
    }
    return named;
}

bool mark_on_label(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    const char *where;
    if (!ANY(tokens, to, "on") || !ANY(tokens, to + 1, "the", "a", "its")) return false;
    if (ANY(tokens, to + 2, "label", "badge", "tag", "plate", "nameplate", "sticker", "transfer", "decal"))
        return true;
    size_t place = is_firm(note, from, to) ? place_at(note, to, &where) : 0;
    return place && (to + place >= tokens->count || tokens->at[to + place].stop != STOP_NONE);
}

// "Torwell mark burned in the lid", "Torwell sticker on the base": a name that is no English, what bears it
// and, it may be, how it was put there.
size_t mark_find_bearer(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->shouts || tokens->flat || !mark_is_text(note, i)) return 0;
    size_t end = mark_proper_run(note, i);
    if (end == i || end >= tokens->count || tokens->at[end].stop != STOP_NONE ||
        !ANY(tokens, end, "mark", "name", "brand", "logo", "trademark", "marking", "stamp", "sticker"))
        return 0;
    for (size_t k = i; k < end; k++)
        if (tokens->at[k].kind != TOKEN_WORD || !tokens->at[k].capital || english_at(note, k) ||
            note->fault_word[k] || strchr(tokens->at[k].fold, '\''))
            return 0;
    size_t at = end + 1;
    if (ANY(tokens, at, "is", "was")) at++;
    if (mark_is_put(tokens, at) || ANY(tokens, at, "pressed", "branded", "stuck")) at++;
    const char *where = NULL;
    size_t place = place_at(note, at, &where);
    if (!place && !ANY(tokens, at, "in", "on", "inside", "under", "underneath")) return 0;
    struct mark_found found = {i, end, at + place, where};
    return mark_keep(note, i, &found) ? found.end - i : 0;
}

size_t mark_past_comma(const struct note *note, size_t from, size_t to) {
    enum { WORD_LEAST = 4, MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    bool firm = false;
    for (size_t k = from + 1; k < to; k++) firm |= ANY(tokens, k, "&", "co", "bros", "sons", "son", "ltd");
    if (!firm || tokens->shouts || !tokens->at[from].capitals || !token_is(tokens, to, ",")) return to;
    size_t at = to + 1;
    while (at < tokens->count && at < to + 1 + MOST && tokens->at[at].capitals && !note->fault_word[at] &&
           strlen(tokens->at[at].fold) >= WORD_LEAST)
        at++;
    return at > to + 1 ? at : to;
}
