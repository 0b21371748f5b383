// SPDX-License-Identifier: MIT
// Whoever guesses, hopes or passes on what another said has not seen it.
#include "notes/unsure.h"

#include "notes/any.h"
#include "notes/things.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { REACH = 7, WORD_REACH = 5 }; // words from the hedge to what it is of; a single one governs less

static bool is_word(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "allegedly", "apparently", "appears", "assume", "assumed", "believe", "believed",
               "believes", "bet", "claim", "claimed", "claiming", "claims", "could", "doubt", "doubtful",
               "feels", "guess", "guessed", "guesses", "guessing", "hope", "hoped", "hopefully", "hoping",
               "if", "likely", "look", "looks", "maybe", "might", "perhaps", "possibly", "presumably",
               "presume", "presumed", "probably", "promise", "purportedly", "reckon", "reckoned", "reckons",
               "reputedly", "rumored", "rumoured", "say", "seems", "should", "sounds", "supposed",
               "supposedly", "suppose", "suspect", "suspected", "suspects", "swears", "swore", "think",
               "thinks", "thought", "told", "might've", "could've", "may've", "must've", "unsure", "whether",
               "wish", "wished", "wonder", "wondering");
}

static bool is_phrase(const struct tokens *tokens, size_t i) {
    static const char *const phrases[] = {
        "according to",  "advertised as", "bought as",    "called it",   "catalogued as", "described as",
        "feel of",       "look of",       "listed as",    "may be",      "may have been", "may well be",
        "can't prove",   "can't swear",   "don't know",   "meant to be", "no idea",       "not certain",
        "not sure",      "passed off as", "said it was",  "said to be",  "says it's",     "sold as",
        "sold to me as", "story says",    "suggested it", "taken for",   "took it for",   "i read it as",
        "looks to say"};
    return token_first(tokens, i, phrases, COUNT(phrases)) != 0;
}

// "If I had to guess, it's oak", "as far as I can tell, oak".
static bool ends_hedged(const struct tokens *tokens, size_t comma) {
    static const char *const openings[] = {
        "if i had to guess", "if i were to guess",   "at a guess",         "my guess",
        "my best guess",     "i'm guessing",         "from what i'm told", "so i'm told",
        "so i was told",     "from what i was told", "as far as i know",   "as far as i can tell"};
    for (size_t k = comma; k > 0 && comma - k < REACH; k--) {
        if (k < comma && tokens->at[k].stop >= STOP_COMMA) return false;
        size_t taken = token_first(tokens, k - 1, openings, COUNT(openings));
        if (taken && k - 1 + taken == comma) return true;
    }
    return false;
}

bool unsure_before(const struct note *note, size_t from) {
    const struct tokens *tokens = &note->tokens;
    for (size_t back = 1; back <= REACH && back <= from; back++) {
        size_t at = from - back;
        if (tokens->at[at].stop >= STOP_COMMA)
            return tokens->at[at].stop == STOP_COMMA && token_is(tokens, at, ",") && ends_hedged(tokens, at);
        if ((back <= WORD_REACH && is_word(tokens, at)) || is_phrase(tokens, at)) return true;
    }
    return false;
}

bool unsure_behind(const struct note *note, size_t to) {
    static const char *const phrases[] = {"?",
                                          "allegedly",
                                          "but don't quote me",
                                          "don't quote me",
                                          "but that may not be",
                                          "but it may not be",
                                          "but that might not be",
                                          "but it might not be",
                                          "fairly sure",
                                          "i'm almost sure",
                                          "i'm fairly sure",
                                          "i'm pretty sure",
                                          "i'm sure",
                                          "pretty sure",
                                          "apparently",
                                          "at a guess",
                                          "at a push",
                                          "by its look",
                                          "by its looks",
                                          "by the look",
                                          "by the looks",
                                          "from the look",
                                          "i assume",
                                          "i believe",
                                          "i guess",
                                          "i presume",
                                          "i reckon",
                                          "i suppose",
                                          "i suspect",
                                          "i think",
                                          "i was told",
                                          "i'd guess",
                                          "i'd say",
                                          "i'd have thought",
                                          "i'd think",
                                          "i fancy",
                                          "i imagine",
                                          "i should say",
                                          "i should think",
                                          "i would say",
                                          "i would think",
                                          "by all accounts",
                                          "he reckons",
                                          "she reckons",
                                          "they reckon",
                                          "so he said",
                                          "so she said",
                                          "i'm guessing",
                                          "i'm told",
                                          "im told",
                                          "is my guess",
                                          "maybe",
                                          "or so i",
                                          "or so they",
                                          "perhaps",
                                          "possibly",
                                          "presumably",
                                          "probably",
                                          "reputedly",
                                          "so i am told",
                                          "so i was told",
                                          "so i'm told",
                                          "so they said",
                                          "supposedly",
                                          "they said",
                                          "to look at",
                                          "would be my guess"};
    const struct tokens *tokens = &note->tokens;
    bool comma = token_is(tokens, to, ",");
    size_t taken = token_first(tokens, to + comma, phrases, COUNT(phrases));
    if (!taken) return false;
    if (!comma) return true;
    // Behind a comma it may open what comes next: "Victorian, maybe a new handle".
    size_t end = to + 1 + taken;
    return end >= tokens->count || tokens->at[end].stop >= STOP_COMMA ||
           tokens->at[end - 1].stop >= STOP_COMMA;
}

// "Wool in browns and reds I think": of all that the run tells.
bool unsure_in_all(const struct note *note, size_t to) {
    enum { RUN = 6 };
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    size_t at = to;
    while (at < to + RUN && at < tokens->count && tokens->at[at].stop == STOP_NONE &&
           (ANY(tokens, at, "in", "and", "of") || word_at(note, at, 1u << USE_COLOR, &entry)))
        at++;
    return at > to + 1 && unsure_behind(note, at);
}

// "Silver tray?", "silk and linen shawl?": nothing but the thing's name, and a question.
bool unsure_is_asked(const struct note *note, size_t at) {
    enum { FAR = 5 };
    const struct tokens *tokens = &note->tokens;
    for (size_t n = 0; n < FAR && at < tokens->count && tokens->at[at].stop == STOP_NONE; n++) {
        if (note->taken[at] != TAKEN_TYPE && note->taken[at] != TAKEN_VALUE &&
            !ANY(tokens, at, "and", "or", "&"))
            break;
        at++;
    }
    return token_is(tokens, at, "?") && note->taken[at - 1] == TAKEN_TYPE;
}
