// SPDX-License-Identifier: MIT
// "He said there were no cracks", "hopefully no worm", "no chips when I bought it": told by another, hoped,
// or so at another time. Whoever says so has not found it, so nothing that is denied there is told as not
// there.
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { AHEAD, BACK }; // governs the clause behind the words, or the statement before them

static const struct cue cues[] = {{"according to", AHEAD},
                                  {"advert said", AHEAD},
                                  {"allegedly", AHEAD},
                                  {"always claimed", AHEAD},
                                  {"always said", AHEAD},
                                  {"always swore", AHEAD},
                                  {"apparently", AHEAD},
                                  {"assured me", AHEAD},
                                  {"at the time", BACK},
                                  {"back then", BACK},
                                  {"box says", AHEAD},
                                  {"claimed", AHEAD},
                                  {"claims", AHEAD},
                                  {"don't believe", AHEAD},
                                  {"don't think", AHEAD},
                                  {"dont think", AHEAD},
                                  {"fingers crossed", AHEAD},
                                  {"he reckoned", AHEAD},
                                  {"he reckons", AHEAD},
                                  {"he said", AHEAD},
                                  {"he says", AHEAD},
                                  {"he swears", AHEAD},
                                  {"he swore", AHEAD},
                                  {"he told", AHEAD},
                                  {"here's hoping", AHEAD},
                                  {"hopefully", AHEAD},
                                  {"hoping", AHEAD},
                                  {"i assume", AHEAD},
                                  {"i doubt", AHEAD},
                                  {"i expect", AHEAD},
                                  {"i gather", AHEAD},
                                  {"i hope", AHEAD},
                                  {"i imagine", AHEAD},
                                  {"i presume", AHEAD},
                                  {"i suppose", AHEAD},
                                  {"i trust", AHEAD},
                                  {"i was told", AHEAD},
                                  {"i'd assume", AHEAD},
                                  {"i'd expect", AHEAD},
                                  {"i'd hope", AHEAD},
                                  {"i'm hoping", AHEAD},
                                  {"i'm told", AHEAD},
                                  {"im told", AHEAD},
                                  {"in theory", AHEAD},
                                  {"is said", AHEAD},
                                  {"label says", AHEAD},
                                  {"last autumn", BACK},
                                  {"last month", BACK},
                                  {"last spring", BACK},
                                  {"last summer", BACK},
                                  {"last time", BACK},
                                  {"last winter", BACK},
                                  {"last year", BACK},
                                  {"listing said", AHEAD},
                                  {"may not", AHEAD},
                                  {"maybe", AHEAD},
                                  {"meant to be", AHEAD},
                                  {"might not", AHEAD},
                                  {"must not", AHEAD},
                                  {"nobody said", AHEAD},
                                  {"ought not", AHEAD},
                                  {"ought to be", AHEAD},
                                  {"ought to have", AHEAD},
                                  {"oughtn't", AHEAD},
                                  {"perhaps", AHEAD},
                                  {"possibly", AHEAD},
                                  {"presumably", AHEAD},
                                  {"probably", AHEAD},
                                  {"reckoned", AHEAD},
                                  {"reportedly", AHEAD},
                                  {"said to be", AHEAD},
                                  {"said to have", AHEAD},
                                  {"says it has", AHEAD},
                                  {"says there", AHEAD},
                                  {"seller said", AHEAD},
                                  {"she reckoned", AHEAD},
                                  {"she reckons", AHEAD},
                                  {"she said", AHEAD},
                                  {"she says", AHEAD},
                                  {"she swears", AHEAD},
                                  {"she swore", AHEAD},
                                  {"should be", AHEAD},
                                  {"should have", AHEAD},
                                  {"should not", AHEAD},
                                  {"shouldn't", AHEAD},
                                  {"shouldn't be", AHEAD},
                                  {"shouldn't have", AHEAD},
                                  {"supposed to be", AHEAD},
                                  {"supposed to have", AHEAD},
                                  {"supposedly", AHEAD},
                                  {"swore", AHEAD},
                                  {"tag says", AHEAD},
                                  {"they reckon", AHEAD},
                                  {"they said", AHEAD},
                                  {"they say", AHEAD},
                                  {"they swore", AHEAD},
                                  {"they told", AHEAD},
                                  {"told me", AHEAD},
                                  {"told my", AHEAD},
                                  {"told us", AHEAD},
                                  {"was told", AHEAD},
                                  {"when bought", BACK},
                                  {"when i bought", BACK},
                                  {"when i got", BACK},
                                  {"when i had it", BACK},
                                  {"when it came", BACK},
                                  {"when it went", BACK},
                                  {"when new", BACK},
                                  {"when packed", BACK},
                                  {"when put away", BACK},
                                  {"when we bought", BACK},
                                  {"when we got", BACK},
                                  {"with any luck", AHEAD},
                                  {"with luck", AHEAD},
                                  {"years ago", BACK}};

// "No rust, should be stored dry", "my aunt said so, no cracks that I can see": a comma ends what another
// told, for what follows is the seller's own.
static size_t ahead_end(const struct scope *s, size_t i) {
    static const char *const own[] = {"but", "and i", "though", "so i"};
    const struct tokens *tokens = &s->note->tokens;
    size_t to = scope_clause_end(s, i);
    for (size_t at = i; at < to; at++)
        if (tokens->at[at].stop != STOP_NONE || (at > i && token_longest(tokens, at, own, COUNT(own))))
            return at;
    return to;
}

static size_t back_start(const struct scope *s, size_t i) {
    size_t from = scope_clause_start(s, i);
    for (size_t at = i; at > from; at--)
        if (s->note->tokens.at[at - 1].stop != STOP_NONE) return at;
    return from;
}

// "Said no cracks": who speaks stands before, whatever it is called.
static size_t said_at(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"said",     "says",    "reckoned", "reckons",
                                        "insisted", "insists", "promised", "told"};
    static const char *const links[] = {"it", "there", "there's", "that", "they", "no", "the"};
    return i > 0 && token_among(tokens, i, verbs, COUNT(verbs)) &&
           token_among(tokens, i + 1, links, COUNT(links));
}

void scope_heard(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n;
        const struct cue *cue = cue_at(s, cues, COUNT(cues), i, &n);
        if (!cue && !said_at(tokens, i)) continue;
        bool ahead = !cue || cue->kind == AHEAD;
        if (!cue) n = 1;
        size_t from = ahead ? i + n : back_start(s, i), to = ahead ? ahead_end(s, i + n) : i;
        if (ahead && to <= i + n + 1) { // "no worm, hopefully", "no cracks, he said"
            to = i;
            from = scope_sentence_start(s, i);
        }
        for (size_t at = from; at < to; at++) s->stance[at] |= STANCE_HEARD;
        i += n - 1;
    }
}
