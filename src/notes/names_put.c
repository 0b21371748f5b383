// SPDX-License-Identifier: MIT
// How a name came to be on the thing, said behind the name or a little before it: "W. SOMEBODY and a number
// are stenciled down the side", "SOMEBODY is written on the lid in marker", "on the back in ink, Aunt
// Somebody". The readers before this one took who it is; that the thing bears it is told here.
#include "notes/any.h"
#include "notes/english.h"
#include "notes/note.h"
#include "notes/persons.h"
#include "notes/place.h"
#include "notes/things.h"

enum { NAME_MOST = 4, WORDS_MOST = 7 };

static bool is_hand(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "written", "penciled", "pencilled", "inked", "penned", "scrawled", "scribbled",
               "scratched", "carved", "stenciled", "stencilled", "painted", "burned", "burnt", "lettered",
               "printed", "sewn", "stitched", "chalked", "crayoned", "stamped", "engraved", "embroidered");
}

// "In laundry marker", "in blue ink", "with a felt pen": where it ends, 0 where nothing is written with it.
static size_t pen_end(const struct tokens *tokens, size_t i) {
    enum { ADJECTIVES_MOST = 4 };
    if (!ANY(tokens, i, "in", "with")) return 0;
    for (size_t k = i + 1; k < tokens->count && k <= i + ADJECTIVES_MOST; k++) {
        if (ANY(tokens, k, "marker", "pen", "ballpoint", "biro", "pencil", "ink", "crayon", "felt-tip",
                "sharpie", "chalk"))
            return k + 1;
        if (tokens->at[k].stop != STOP_NONE || tokens->at[k].capital) return 0;
    }
    return 0;
}

static size_t linked(const struct tokens *tokens, size_t i) {
    size_t at = i;
    while (at < i + 3 && ANY(tokens, at, "is", "are", "was", "were", "has", "have", "been", "all", "neatly"))
        at++;
    return at;
}

// Behind what was kept back: "and a service number …", as far as the verb; `i` if there is no verb.
static size_t hand_behind(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    while (at < tokens->count && at < i + WORDS_MOST &&
           (note->taken[at] == TAKEN_ASIDE || ANY(tokens, at, "and", "a", "an", "the", "his", "her", "their",
                                                  "service", "army", "number", "no", ".", "date", "unit")))
        at++;
    size_t verb = linked(tokens, at);
    return verb > at && is_hand(tokens, verb) && !ANY(tokens, verb + 1, "by") ? verb : i;
}

// "On the back in ink, …": written on it, in words that end before token `i`.
static bool is_penned(const struct tokens *tokens, size_t i) {
    size_t end = i;
    while (end > 0 && ANY(tokens, end - 1, ",", ":", "-", "it", "is", "says", "reads", "\"")) end--;
    for (size_t k = end; k > 0 && k + WORDS_MOST > end && tokens->at[k - 1].stop < STOP_SENTENCE; k--)
        if (pen_end(tokens, k - 1) == end) return true;
    return false;
}

// "… on the lid in marker", from token `i` on.
static bool penned_behind(const struct tokens *tokens, size_t i) {
    bool placed = is_hand(tokens, i) || ANY(tokens, i, "on", "inside", "across");
    for (size_t k = i; placed && k < tokens->count && k < i + WORDS_MOST; k++) {
        if (pen_end(tokens, k)) return true;
        if (tokens->at[k].stop >= STOP_CLAUSE) return false;
    }
    return false;
}

// A run of capitals that no reader has taken and that is no English, or begins with a first name: where it
// ends. "HANDLE WITH CARE" is nobody.
static size_t plain_name(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t to = i;
    while (to < tokens->count && to < i + NAME_MOST && tokens->at[to].kind == TOKEN_WORD &&
           tokens->at[to].capital && note->taken[to] == TAKEN_NOT && !firm_word(tokens, to)) {
        to++;
        if (tokens->at[to - 1].stop != STOP_NONE) break;
    }
    if (to == i || ANY(tokens, to, "&", "and", "bros", "co")) return i;
    return person_first_name(note, i) || !(english_at(note, i) || english_at(note, to - 1)) ? to : i;
}

// "SOMEBODY is written on the cloth in marker": no maker writes with that.
static size_t by_marker(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t to = tokens->shouts ? i : plain_name(note, i);
    if (to == i || (i > 0 && ANY(tokens, i - 1, "titled", "by", "signed"))) return 0;
    size_t verb = linked(tokens, to);
    if (verb > to && !is_hand(tokens, verb)) return 0;
    if (!penned_behind(tokens, verb)) return 0;
    person_tell_owner(note, i, to, verb > to ? verb + 1 : to);
    return person_keep_back(note, i, to);
}

void read_names_put(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (note->taken[i] == TAKEN_NOT && tokens->at[i].capital) by_marker(note, i);
        if (note->taken[i] != TAKEN_ASIDE || (i > 0 && note->taken[i - 1] == TAKEN_ASIDE)) continue;
        size_t to = i + 1;
        while (to < tokens->count && note->taken[to] == TAKEN_ASIDE && tokens->at[to].stop == STOP_NONE) to++;
        size_t verb = hand_behind(note, to);
        if (verb > to && ANY(tokens, verb, "engraved", "inscribed")) continue; // told as an engraving
        if (verb > to || penned_behind(tokens, to))
            person_tell_owner(note, i, to, verb > to ? verb + 1 : to);
        else if (is_penned(tokens, i))
            person_tell_owner(note, i, to, to);
    }
}
