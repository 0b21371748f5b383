// SPDX-License-Identifier: MIT
// "Perfect except for a hairline", "nothing wrong but the clock", "not without its flaws": what stands behind
// is there, whatever was denied or praised before it.
#include "notes/scope.h"

enum { EXCEPTS, DOUBLES };

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {
    {"all but", EXCEPTS},
    {"apart from", EXCEPTS},
    {"aside from", EXCEPTS},
    {"bar", EXCEPTS},
    {"barring", EXCEPTS},
    {"besides", EXCEPTS},
    {"but", EXCEPTS},
    {"but for", EXCEPTS},
    {"but it does have", EXCEPTS},
    {"can't say it doesn't have", DOUBLES},
    {"can't say there aren't", DOUBLES},
    {"can't say there's no", DOUBLES},
    {"do not count", EXCEPTS},
    {"except", EXCEPTS},
    {"except for", EXCEPTS},
    {"except that", EXCEPTS},
    {"excepting", EXCEPTS},
    {"if you don't count", EXCEPTS},
    {"it's not like there's no", DOUBLES},
    {"minus", EXCEPTS},
    {"never not", DOUBLES},
    {"no worse than", EXCEPTS},
    {"not counting", EXCEPTS},
    {"not that there's no", DOUBLES},
    {"not without", DOUBLES},
    {"nothing but", EXCEPTS},
    {"nothing more than", EXCEPTS},
    {"nothing other than", EXCEPTS},
    {"nothing serious", EXCEPTS},
    {"nothing worse than", EXCEPTS},
    {"only", EXCEPTS},
    {"only has", EXCEPTS},
    {"other than", EXCEPTS},
    {"outside of", EXCEPTS},
    {"save for", EXCEPTS},
    {"unless you count", EXCEPTS},
    {"unless you hold", EXCEPTS},
    {"unless you look", EXCEPTS},
    {"wouldn't call it free of", DOUBLES},
    {"wouldn't say no", DOUBLES},
    {"wouldn't say there is no", DOUBLES},
    {"wouldn't say there's no", DOUBLES},
};

// "… but no cracks": an exception may deny in its turn.
static bool denies_again(const struct scope *s, size_t i) {
    static const char *const words[] = {"no",      "not",   "none",    "without", "never",
                                        "nothing", "isn't", "doesn't", "zero"};
    for (size_t k = 0; k < COUNT(words); k++)
        if (token_is(&s->note->tokens, i, words[k])) return true;
    return false;
}

static size_t reach(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t at = i; at < tokens->count; at++)
        if (tokens->at[at].stop >= STOP_CLAUSE || denies_again(s, at)) return at;
    return tokens->count;
}

void scope_exception(struct scope *s) {
    for (size_t i = 0; i < s->note->tokens.count; i++) {
        size_t n;
        const struct cue *cue = cue_at(s, cues, COUNT(cues), i, &n);
        if (!cue) continue;
        if (denies_again(s, i + n)) {
            i += n - 1;
            continue;
        }
        scope_mark(s, i + n, reach(s, i + n), cue->kind == DOUBLES ? STANCE_DOUBLE : STANCE_EXCEPT, i);
        i += n - 1;
    }
}
