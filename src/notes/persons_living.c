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
