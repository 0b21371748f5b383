// SPDX-License-Identifier: MIT
// Words of a look, put together as people put them: "that I've found", "we could make out", "I happened to
// notice". Behind a denial they say that it was looked for, behind a question they answer it.
#include "notes/any.h"
#include "notes/denial_words.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const seeing[] = {
    "see",      "saw",         "seen",        "find",     "found",      "notice",      "noticed",
    "spot",     "spotted",     "feel",        "felt",     "detect",     "detected",    "make out",
    "made out", "come across", "came across", "pick out", "picked out", "discover",    "discovered",
    "identify", "identified",  "turned up",   "turn up",  "pick up",    "picked up",   "smell",
    "smelled",  "smelt",       "pick up on",  "observe",  "observed",   "lay eyes on", "put my finger on"};

size_t look_words(const struct tokens *tokens, size_t i) {
    static const char *const persons[] = {"i",  "i've", "we",  "we've", "you",   "anyone", "anybody", "ive",
                                          "he", "she",  "i'd", "we'd",  "you'd", "my eye", "my eyes"};
    static const char *const helps[] = {
        "can",    "could",  "have",       "did",      "ever", "would", "actually", "was",     "able", "to",
        "really", "myself", "personally", "happened", "yet",  "might", "manage",   "managed", "had",  "just"};
    static const char *const knowing[] = {"know", "know of", "know about", "tell"};
    enum { HELPS_MOST = 4 };
    size_t at = i;
    if (ANY(tokens, at, "that", "which")) at++;
    size_t n = token_longest(tokens, at, persons, COUNT(persons));
    if (!n) return 0;
    at += n;
    for (size_t from = at; at < from + HELPS_MOST && token_among(tokens, at, helps, COUNT(helps));) at++;
    n = token_longest(tokens, at, seeing, COUNT(seeing));
    if (!n) n = token_longest(tokens, at, knowing, COUNT(knowing));
    return n ? at + n - i : 0;
}

size_t look_denied(const struct tokens *tokens, size_t i) {
    static const char *const nots[] = {"can't",   "cannot",  "can not", "couldn't", "could not", "didn't",
                                       "did not", "don't",   "do not",  "haven't",  "have not",  "wasn't",
                                       "was not", "weren't", "not",     "never",    "unable",    "failed",
                                       "nobody",  "no one",  "cant",    "couldnt",  "didnt",     "dont",
                                       "havent",  "wasnt",   "isn't",   "i'm not",  "won't"};
    static const char *const helps[] = {"been",     "be",     "able", "to",        "managed", "manage",
                                        "actually", "really", "yet",  "ever",      "even",    "has",
                                        "could",    "can",    "once", "personally"};
    static const char *const through[] = {"through", "how", "why",     "where", "what",
                                          "that",    "if",  "whether", "it"};
    enum { HELPS_MOST = 4 };
    size_t n = token_longest(tokens, i, nots, COUNT(nots)), at = i + n;
    if (!n) return 0;
    for (; at < i + n + HELPS_MOST && token_among(tokens, at, helps, COUNT(helps));) at++;
    n = token_longest(tokens, at, seeing, COUNT(seeing));
    if (!n || at + n >= tokens->count || token_among(tokens, at + n, through, COUNT(through))) return 0;
    return at + n - i;
}
