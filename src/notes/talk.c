// SPDX-License-Identifier: MIT
#include "notes/talk.h"

#include "notes/any.h"
#include "notes/standing.h"
#include "notes/things.h"

// "Stood on the desk of", "He is called", "Came off": a sentence that begins so names no goods.
static bool is_talk(const struct tokens *tokens, size_t i) {
    // "The farm it came off, Somewhere, was sold"
    if (ANY(tokens, i, "the", "an", "a") &&
        ANY(tokens, i + 1, "farm", "house", "man", "woman", "lady", "family", "fellow", "people", "chap",
            "couple", "school", "church", "estate", "widow", "owner", "old"))
        return !ANY(tokens, i + 1, "old", "school", "church", "lady") ||
               ANY(tokens, i + 2, "man", "lady", "woman", "owner", "it", "who", "that", "was", "had", "down",
                   "up", "next", "gave", "sold", "let");
    return ANY(tokens, i, "he", "she", "they", "we", "stood", "came", "sold", "belonged", "was", "used",
               "lived", "from", "my", "our", "his", "her", "got", "found", "bought", "had", "saw", "out",
               "off", "i", "this", "it", "sat", "hung", "kept", "ok", "okay");
}

// Is there a second sentence?
static bool is_followed(const struct tokens *tokens) {
    enum { WITHIN = 200 };
    for (size_t i = 0; i + 1 < tokens->count && i < WITHIN; i++)
        if (tokens->at[i].stop >= STOP_SENTENCE && tokens->at[i + 1].kind == TOKEN_WORD) return true;
    return false;
}

bool talk_heading(const struct note *note, size_t first) {
    const struct tokens *tokens = &note->tokens;
    enum { SIGNS_MOST = 6 };
    for (size_t n = 0; n < SIGNS_MOST && first > 0 && tokens->at[first - 1].kind == TOKEN_SIGN; n++) first--;
    if (first == 0) return !is_talk(tokens, 0) || !is_followed(tokens);
    size_t before = note_clause_from(note, first - 1, STOP_SENTENCE);
    return before == 0 && is_talk(tokens, 0) && !is_talk(tokens, first);
}

static bool is_teller(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "i", "we", "my", "our", "us", "me", "he", "she", "his", "her", "him", "i've",
               "we've", "i'm", "i'd", "we'd", "we're", "you", "your", "everybody", "nobody", "somebody",
               "someone", "who", "whoever");
}

bool talk_value(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    if (talk_heading(note, note_clause_from(note, from, STOP_SENTENCE))) return false;
    size_t a = note_clause_from(note, from, STOP_COMMA), b = note_clause_to(note, to - 1, STOP_COMMA);
    for (size_t i = to; i < b && i < to + 3; i++)
        if (standing_is_type(note, i)) return false;
    // "I painted it and it is green now"
    if (from > a &&
        (ANY(tokens, from - 1, "it's", "they're") || (from > a + 1 && ANY(tokens, from - 1, "is", "are") &&
                                                      ANY(tokens, from - 2, "it", "they", "this", "these"))))
        return false;
    // "Any tan sandal", "on a velvet board": the word stands before other goods
    struct noun_found noun;
    if (tokens->at[to - 1].stop == STOP_NONE && noun_at(note, to, &noun) && !noun.part && noun.thing &&
        to > a && from > a && ANY(tokens, from - 1, "a", "an", "any", "some", "the", "with"))
        return true;
    // "Lovely with navy", "goes with tan"
    if (from > a + 1 && ANY(tokens, from - 1, "with") &&
        ANY(tokens, from - 2, "lovely", "goes", "go", "nice", "well", "good", "pretty"))
        return true;
    // "Big enough for a dozen ears of corn"
    for (size_t i = a; i < from; i++)
        if (ANY(tokens, i, "enough", "room") && ANY(tokens, i + 1, "for", "to") && from < i + 8) return true;
    // "Gold is good on all of them": its gilding
    if (from == a && ANY(tokens, from, "gold", "gilt") && ANY(tokens, to, "is") &&
        ANY(tokens, to + 1, "good", "bright", "strong", "all", "perfect", "intact", "fine", "still"))
        return true;
    // "Swapped for brass ones": of those parts
    if (ANY(tokens, to, "one", "ones") && tokens->at[to - 1].stop == STOP_NONE &&
        ANY(tokens, from - 1, "for", "with", "by", "had", "newer", "new", "later"))
        return true;
    bool told = false;
    for (size_t i = a; i < b && !told; i++) told = is_teller(tokens, i);
    return told;
}
