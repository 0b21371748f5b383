// SPDX-License-Identifier: MIT
// Names told by what only the living do: "because Biscuit sleeps where he likes", "Rollo's favorite spot";
// and those of two who gave and got: "Maud from Ellery" where something is engraved.
#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/persons.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// What a thing does as well ("sits flat") tells of the living only behind these.
static bool is_reason(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "because", "where", "when", "until", "till", "while", "after", "before", "cos",
               "as", "that", "if", "since", "and", "but");
}

static bool lives(const struct tokens *tokens, size_t i, bool led) {
    static const char *const only[] = {
        "sleeps",          "slept",        "likes",      "liked",       "chewed",
        "chews",           "gnawed",       "sharpened",  "sharpens",    "clawed",
        "licked",          "jumped",       "climbed",    "napped",      "naps",
        "outgrew",         "decided",      "wouldn't",   "peed",        "weed",
        "was sick",        "was small",    "was little", "was born",    "was teething",
        "was a puppy",     "was a kitten", "was a baby", "had kittens", "had puppies",
        "had an accident", "had a go",     "got at",     "got hold",    "got into",
        "curled up",       "ate",          "thinks",     "thought",     "loves",
        "hated",           "hates",        "wanted",     "wants"};
    static const char *const also[] = {"sits",    "sat",     "lies",    "lay",   "scratched", "scratches",
                                       "knocked", "dropped", "spilled", "spilt", "bit",       "bites",
                                       "tried",   "hid",     "dug",     "died",  "moved",     "was",
                                       "put",     "threw",   "kicked",  "grew",  "passed"};
    return token_longest(tokens, i, only, COUNT(only)) ||
           (led && token_longest(tokens, i, also, COUNT(also)));
}

size_t person_living(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct noun_found noun;
    bool led = i > 0 && is_reason(tokens, i - 1);
    bool opens = person_capital(note, i) && tokens->at[i].starts && !noun_at(note, i, &noun);
    if (!(person_named(note, i) || opens) || note->fault_word[i]) return 0;
    size_t to = i + 1;
    const char *fold = tokens->at[i].fold;
    size_t size = strlen(fold);
    bool owns = size > 3 && (text_same(fold + size - 2, "'s") || text_same(fold + size - 2, "s'"));
    if (owns &&
        ANY(tokens, to, "favourite", "favorite", "spot", "bed", "claws", "paws", "paw", "doing", "fault",
            "teeth", "perch", "tail", "handiwork", "christening", "birthday", "wedding", "first"))
        return person_keep_back(note, i, to);
    // "Torwell wants oil" is the maker's at the start of what is said; a word of English may be anything
    // there
    if (owns || (!led && english_at(note, i)) || tokens->at[i].stop != STOP_NONE) return 0;
    return lives(tokens, to, led) ? person_keep_back(note, i, to) : 0;
}

size_t person_dedicated(struct note *note, size_t i) {
    static const char *const joints[] = {"from", "love", "loves", "love from", "with love from", "to", "for"};
    const struct tokens *tokens = &note->tokens;
    if (!person_named(note, i) || tokens->at[i].capitals) return 0;
    bool written = false;
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < i; k++)
        written |= ANY(tokens, k, "engraved", "inscribed", "inscription", "engraving", "dedication",
                       "dedicated", "etched", "scratched");
    size_t n = written ? token_longest(tokens, i + 1, joints, COUNT(joints)) : 0;
    if (!n || !person_named(note, i + 1 + n) || tokens->at[i + 1 + n].capitals) return 0;
    size_t to = person_name_end(note, i + 1 + n);
    while (to < tokens->count && // the day that goes with it
           ((ANY(tokens, to, "-", "/") && tokens->at[to].joined) || tokens->at[to].kind == TOKEN_FIGURE ||
            tokens->at[to].kind == TOKEN_CODE))
        to++;
    return person_keep_back(note, i, to);
}

// "Somebody called Colin", "my girl called her Biddy": what stands before the name; how many tokens.
static size_t called_at(const struct tokens *tokens, size_t i) {
    static const char *const people[] = {"somebody",  "someone", "boy",    "girl",   "man",  "woman",
                                         "lady",      "fellow",  "chap",   "lad",    "kid",  "child",
                                         "aunt",      "uncle",   "bloke",  "guy",    "lass", "neighbor",
                                         "neighbour", "friend",  "cousin", "nephew", "niece"};
    if (token_among(tokens, i, people, COUNT(people))) {
        size_t at = i + 1 + (token_is(tokens, i + 1, "else") ? 1 : 0);
        if (ANY(tokens, at, "called", "named")) return at + 1 - i;
        return token_phrase(tokens, at, "by the name of") ? at + 4 - i : 0;
    }
    // "He is called Mr. Somebody", of a bear
    if (ANY(tokens, i, "he", "she") && ANY(tokens, i + 1, "is", "was") &&
        ANY(tokens, i + 2, "called", "named", "known"))
        return 3 + ANY(tokens, i + 3, "as");
    if (!ANY(tokens, i, "called", "named", "call", "calls") ||
        !ANY(tokens, i + 1, "him", "her", "it", "them"))
        return 0;
    return 2;
}

static bool is_own_name(const struct tokens *tokens, size_t i) {
    static const char *const whose[] = {"his",   "her",    "their",      "owner's",   "owners", "child's",
                                        "boy's", "girl's", "somebody's", "someone's", "kid's",  "previous"};
    return ANY(tokens, i, "name", "names") && i > 0 && token_among(tokens, i - 1, whose, COUNT(whose));
}

// "Name in the front", of a book: whose it was.
static bool is_name_in_book(const struct tokens *tokens, size_t i) {
    static const char *const leaves[] = {"front", "flyleaf", "endpaper", "endpapers",
                                         "cover", "inside",  "page"};
    if (!ANY(tokens, i, "name", "names") || !ANY(tokens, i + 1, "in", "on", "inside")) return false;
    size_t at = i + 2;
    while (ANY(tokens, at, "the", "front", "first", "inside") && !token_among(tokens, at, leaves, 3)) at++;
    return token_among(tokens, at, leaves, COUNT(leaves)) ||
           token_among(tokens, i + 1, leaves, COUNT(leaves));
}

// From behind "his name inside the lid" to the name behind the comma or the colon; 0 where none is told.
static size_t name_told(const struct note *note, size_t i) {
    enum { FAR = 6 };
    const struct tokens *tokens = &note->tokens;
    for (size_t at = i; at < tokens->count && at < i + FAR; at++) {
        if (tokens->at[at].stop >= STOP_SENTENCE) return 0;
        bool parts =
            tokens->at[at].stop == STOP_COMMA || token_is(tokens, at, ":") || token_is(tokens, at, "-");
        if (parts) return person_capital(note, at + 1) ? at + 1 : 0;
    }
    return 0;
}

size_t person_called(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t n = called_at(tokens, i);
    if (n && person_capital(note, i + n) && !token_is(tokens, i + n, "the"))
        return person_keep_back(note, i + n, person_name_end(note, i + n));
    if (!is_own_name(tokens, i) && !is_name_in_book(tokens, i)) return 0;
    size_t at = name_told(note, i + 1);
    return at ? person_keep_back(note, at, person_name_end(note, at)) : 0;
}

// "Births and deaths written in the middle, Hostetler-Vane": a family in its own records.
size_t person_recorded(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!person_named(note, i) || tokens->at[i].capitals) return 0;
    bool record = false;
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < i; k++)
        record |= ANY(tokens, k, "births", "deaths", "marriages", "baptisms", "genealogy") ||
                  (ANY(tokens, k, "family") &&
                   ANY(tokens, k + 1, "record", "records", "register", "tree", "history"));
    return record ? person_keep_back(note, i, person_name_end(note, i)) : 0;
}
