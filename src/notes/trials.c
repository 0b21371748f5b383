// SPDX-License-Identifier: MIT
// "It leaked when I filled it", "I sat on it and it wobbled", "told it dripped": what a thing did when
// somebody tried it is what it does. The verb is read as that of today, so that each kind need be written
// once.
#include "notes/any.h"
#include "notes/note.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static const struct {
    const char *past, *now;
} deeds[] = {{"backfired", "backfires"}, {"bound", "binds"},        {"buzzed", "buzzes"},
             {"crackled", "crackles"},   {"creaked", "creaks"},     {"cut", "cuts"},
             {"dripped", "drips"},       {"flickered", "flickers"}, {"gained", "gains"},
             {"hissed", "hisses"},       {"hummed", "hums"},        {"leaked", "leaks"},
             {"leaned", "leans"},        {"lost", "loses"},         {"overheated", "overheats"},
             {"rattled", "rattles"},     {"rocked", "rocks"},       {"sagged", "sags"},
             {"scraped", "scrapes"},     {"seeped", "seeps"},       {"skipped", "skips"},
             {"slipped", "slips"},       {"smelled", "smells"},     {"smelt", "smells"},
             {"smoked", "smokes"},       {"sparked", "sparks"},     {"squeaked", "squeaks"},
             {"squealed", "squeals"},    {"stalled", "stalls"},     {"stopped", "stops"},
             {"tipped", "tips"},         {"tripped", "trips"},      {"vibrated", "vibrates"},
             {"wheezed", "wheezes"},     {"wobbled", "wobbles"}};

// It is not the thing that did it, or it was so once.
static bool is_state(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "was", "were",   "is",      "are",      "has",     "have",   "had",  "been", "being",
        "be",  "never",  "once",    "always",   "a",       "an",     "the",  "some", "any",
        "not", "hasn't", "haven't", "hadn't",   "isn't",   "aren't", "i",    "we",   "got",
        "he",  "she",    "no",      "wasn't",   "gets",    "or",     "of",   "to",   "who",
        "you", "badly",  "i've",    "somebody", "someone", "having", "when", "if"};
    return AMONG(tokens, i, words);
}

// What loses is told by what it loses, and what cuts by "out".
static bool takes_its_own(const struct tokens *tokens, size_t i) {
    if (token_is(tokens, i, "cut") && !token_is(tokens, i + 1, "out")) return false;
    if (ANY(tokens, i, "cut", "stopped", "slipped", "skipped", "tripped", "lost", "gained") &&
        (i == 0 || tokens->at[i - 1].stop != STOP_NONE))
        return false; // "Cut out a patch when I made it"
    if (ANY(tokens, i, "stopped") && !ANY(tokens, i - 1, "it", "and", "then", "just", "but")) return false;
    if (ANY(tokens, i, "lost", "gained"))
        return ANY(tokens, i + 1, "time", "pressure", "air", "steam", "heat", "water", "power", "minutes") ||
               ANY(tokens, i + 2, "minutes", "minute", "seconds", "hours") ||
               ANY(tokens, i + 3, "minutes", "minute", "seconds");
    return true;
}

// "When I filled it", "as soon as it was plugged in", "all over my table".
static bool tried_behind(const struct tokens *tokens, size_t i) {
    static const char *const whens[] = {"when", "once", "after", "while", "whenever", "until", "time"};
    static const char *const hands[] = {
        "i",        "we",      "you",    "it",  "full",  "filled", "lit",    "running", "poured",
        "switched", "plugged", "turned", "sat", "wound", "tried",  "opened", "soon",    "somebody",
        "i'd",      "a",       "my",     "ten", "five",  "two",    "an",     "hot",     "warm"};
    enum { FAR = 8 };
    for (size_t k = i + 1; k < i + FAR && k < tokens->count && tokens->at[k].stop < STOP_CLAUSE; k++) {
        if (AMONG(tokens, k, whens) && AMONG(tokens, k + 1, hands)) return true;
        if (ANY(tokens, k, "everywhere") || (ANY(tokens, k, "all") && ANY(tokens, k + 1, "over") &&
                                             ANY(tokens, k + 2, "my", "the", "me", "us", "our")))
            return true;
    }
    return false;
}

// "I filled it and it", "he told me it": by who tried it, or who says so.
static bool tried_before(const struct tokens *tokens, size_t i) {
    static const char *const trials[] = {
        "filled", "tried",  "plugged", "lit",    "ran",     "switched", "turned", "sat",  "tested",
        "wound",  "opened", "pulled",  "poured", "boiled",  "washed",   "used",   "put",  "pushed",
        "leaned", "said",   "says",    "told",   "claimed", "reckoned", "warned", "swore"};
    enum { FAR = 8 };
    if (i == 0 || !ANY(tokens, i - 1, "it", "they", "that", "and", "then", "just", "still", "also"))
        return false;
    for (size_t k = i - 1; k > 0 && k + FAR > i && tokens->at[k - 1].stop < STOP_CLAUSE; k--)
        if (AMONG(tokens, k - 1, trials)) return true;
    return false;
}

// "It does rock a bit", "the seat does sag": said with force.
static void mend_does(struct note *note, size_t i) {
    static const struct {
        const char *verb, *now;
    } does[] = {{"bind", "binds"},       {"bow", "bows"},       {"buzz", "buzzes"},    {"catch", "catches"},
                {"crackle", "crackles"}, {"creak", "creaks"},   {"drag", "drags"},     {"drip", "drips"},
                {"droop", "droops"},     {"gape", "gapes"},     {"hum", "hums"},       {"jam", "jams"},
                {"lean", "leans"},       {"list", "lists"},     {"rattle", "rattles"}, {"rock", "rocks"},
                {"sag", "sags"},         {"scrape", "scrapes"}, {"shed", "sheds"},     {"skip", "skips"},
                {"slip", "slips"},       {"squeak", "squeaks"}, {"sway", "sways"},     {"tilt", "tilts"},
                {"tip", "tips"},         {"weep", "weeps"},     {"wobble", "wobbles"}};
    const struct tokens *tokens = &note->tokens;
    if (!token_may_open(tokens, i + 1, does, COUNT(does), sizeof *does)) return;
    if (i > 0 && ANY(tokens, i - 1, "nor", "what", "never", "how", "only")) return;
    for (size_t k = 0; k < COUNT(does); k++)
        if (token_is(tokens, i + 1, does[k].verb)) {
            note_reword(note, i + 1, does[k].now, does[k].now);
            return;
        }
}

// "Foxing's light", "rust's only on the face": the fault with its verb.
static void mend_noun(struct note *note, size_t i) {
    static const struct {
        const char *said, *noun;
    } nouns[] = {{"crazing's", "crazing"},   {"fading's", "fading"},      {"foxing's", "foxing"},
                 {"pitting's", "pitting"},   {"rust's", "rust"},          {"silvering's", "silvering"},
                 {"staining's", "staining"}, {"tarnish's", "tarnish"},    {"toning's", "toning"},
                 {"wear's", "wear"},         {"yellowing's", "yellowing"}};
    static const char *const goes_on[] = {"light", "heavy", "only",   "mostly", "bad", "slight",
                                          "faint", "mild",  "minor",  "just",   "not", "all",
                                          "on",    "in",    "mainly", "worst"};
    const struct tokens *tokens = &note->tokens;
    if (!token_may_open(tokens, i, nouns, COUNT(nouns), sizeof *nouns) || !AMONG(tokens, i + 1, goes_on))
        return;
    for (size_t k = 0; k < COUNT(nouns); k++)
        if (token_is(tokens, i, nouns[k].said)) note_reword(note, i, nouns[k].noun, nouns[k].noun);
}

void note_mend_trials(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        mend_noun(note, i);
        if (i + 1 < tokens->count && ANY(tokens, i, "does") && tokens->at[i].stop == STOP_NONE)
            mend_does(note, i);
        if (!token_may_open(tokens, i, deeds, COUNT(deeds), sizeof *deeds)) continue;
        if (i > 0 && is_state(tokens, i - 1)) continue;
        bool timed =
            ANY(tokens, i, "lost", "gained") &&
            (ANY(tokens, i + 2, "minutes", "minute", "seconds") || ANY(tokens, i + 3, "minutes", "minute"));
        if (!takes_its_own(tokens, i) || !(timed || tried_behind(tokens, i) || tried_before(tokens, i)))
            continue;
        for (size_t k = 0; k < COUNT(deeds); k++)
            if (token_is(tokens, i, deeds[k].past)) {
                note_reword(note, i, deeds[k].now, deeds[k].now);
                break;
            }
    }
}
