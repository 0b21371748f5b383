// SPDX-License-Identifier: MIT
// "Used to smell", "no longer sticky", "the stain came out": it was so and is not so now.
#include "notes/any.h"
#include "notes/scope.h"

enum { AHEAD, BACK }; // governs what follows, or what stands before it in the clause

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {{"all gone now", BACK},
                                  {"any longer", BACK},
                                  {"any more", BACK},
                                  {"anymore", BACK},
                                  {"before i cleaned", BACK},
                                  {"before i fixed", BACK},
                                  {"came off", BACK},
                                  {"came off when cleaned", BACK},
                                  {"came off when i cleaned", BACK},
                                  {"came off when i washed", BACK},
                                  {"came off when washed", BACK},
                                  {"came off with a", BACK},
                                  {"came off with soap", BACK},
                                  {"came off with warm", BACK},
                                  {"came out after", BACK},
                                  {"came out fine", BACK},
                                  {"came out in the wash", BACK},
                                  {"came out when cleaned", BACK},
                                  {"came out when i cleaned", BACK},
                                  {"came out when i washed", BACK},
                                  {"came out when washed", BACK},
                                  {"came out with a", BACK},
                                  {"came out with soap", BACK},
                                  {"came out with warm", BACK},
                                  {"came right off", BACK},
                                  {"came right out", BACK},
                                  {"cleaned it off", BACK},
                                  {"cleaned it up", BACK},
                                  {"cleaned off", BACK},
                                  {"cleaned right off", BACK},
                                  {"cleaned up fine", BACK},
                                  {"fixed now", BACK},
                                  {"got it fixed", BACK},
                                  {"got it off", BACK},
                                  {"got it out", BACK},
                                  {"got rid of", AHEAD},
                                  {"had it fixed", BACK},
                                  {"had it mended", BACK},
                                  {"had it repaired", BACK},
                                  {"has come off now", BACK},
                                  {"has come out", BACK},
                                  {"has gone now", BACK},
                                  {"has since been fixed", BACK},
                                  {"have removed", AHEAD},
                                  {"i cleaned off", AHEAD},
                                  {"i cleaned up", AHEAD},
                                  {"i fixed", AHEAD},
                                  {"i glued", AHEAD},
                                  {"i removed", AHEAD},
                                  {"i scrubbed off", AHEAD},
                                  {"i tightened", AHEAD},
                                  {"i threw out", AHEAD},
                                  {"i took off", AHEAD},
                                  {"i tossed", AHEAD},
                                  {"i washed out", AHEAD},
                                  {"i wiped off", AHEAD},
                                  {"is fixed now", BACK},
                                  {"is gone now", BACK},
                                  {"it came out", BACK},
                                  {"it washed out", BACK},
                                  {"it's been cleaned off", BACK},
                                  {"it's been washed out", BACK},
                                  {"it's cleaned off", BACK},
                                  {"it's come off", BACK},
                                  {"it's come out", BACK},
                                  {"it's gone now", BACK},
                                  {"it's polished out", BACK},
                                  {"it's rubbed out", BACK},
                                  {"it's sponged off", BACK},
                                  {"it's washed off", BACK},
                                  {"it's washed out", BACK},
                                  {"it's wiped off", BACK},
                                  {"no longer", AHEAD},
                                  {"odor is all gone", BACK},
                                  {"odor is gone", BACK},
                                  {"odour is all gone", BACK},
                                  {"odour is gone", BACK},
                                  {"polished it out", BACK},
                                  {"polished off", BACK},
                                  {"polished out", BACK},
                                  {"rubbed it off", BACK},
                                  {"rubbed off", BACK},
                                  {"scrubbed it off", BACK},
                                  {"scrubbed off", BACK},
                                  {"scrubbed right off", BACK},
                                  {"since fixed", BACK},
                                  {"smell is all gone", BACK},
                                  {"smell is gone", BACK},
                                  {"smell's all gone", BACK},
                                  {"smell's gone", BACK},
                                  {"smells are gone", BACK},
                                  {"sorted now", BACK},
                                  {"stain is gone", BACK},
                                  {"stains are gone", BACK},
                                  {"used to", AHEAD},
                                  {"used to be", AHEAD},
                                  {"used to have", AHEAD},
                                  {"was but", BACK},
                                  {"washed it out", BACK},
                                  {"washed off", BACK},
                                  {"washed out fine", BACK},
                                  {"washed out in the", BACK},
                                  {"washed out when", BACK},
                                  {"washed out with", BACK},
                                  {"wiped it off", BACK},
                                  {"wiped off", BACK},
                                  {"wiped right off", BACK}};

// "Didn't come off", "might have come out": then it is still there.
static bool is_turned(const struct scope *s, size_t i) {
    static const char *const words[] = {"didn't", "not",    "won't", "never", "wouldn't",
                                        "hasn't", "should", "might", "will",  "would",
                                        "could",  "may",    "hasnt", "didnt", "wont"};
    for (size_t back = 1; back <= 2 && back <= i; back++)
        if (token_among(&s->note->tokens, i - back, words, COUNT(words))) return true;
    return false;
}

// "Perked a pot and it came out hot": how what was made turned out, behind the cue's "out".
static bool is_made(const struct scope *s, size_t next) {
    const struct tokens *tokens = &s->note->tokens;
    return token_is(tokens, next - 1, "out") && tokens->at[next - 1].stop == STOP_NONE &&
           ANY(tokens, next, "hot", "strong", "golden", "brown", "crisp", "sharp", "even", "evenly", "smooth",
               "good", "great", "perfect", "perfectly", "lovely", "nice", "delicious", "light", "fluffy",
               "clear", "straight", "beautiful");
}

// "The lining was torn, I replaced it", "there was a rip that somebody mended": what was mended since is no
// more; the mending itself is told.
static const struct cue mends[] = {
    {"a new one in", 0},
    {"aren't now", 0},
    {"been cleaned", 0},
    {"been fixed", 0},
    {"been mended", 0},
    {"been repaired", 0},
    {"been replaced", 0},
    {"been straightened", 0},
    {"been washed", 0},
    {"cleaned", 0},
    {"cured", 0},
    {"darned", 0},
    {"dealt with", 0},
    {"eased", 0},
    {"filled", 0},
    {"fine now", 0},
    {"fitted a new", 0},
    {"fixed", 0},
    {"free now", 0},
    {"freed", 0},
    {"glued", 0},
    {"good now", 0},
    {"greased", 0},
    {"is not now", 0},
    {"isn't any more", 0},
    {"isn't anymore", 0},
    {"isn't now", 0},
    {"isn't rusty now", 0},
    {"it isn't any more", 0},
    {"lubricated", 0},
    {"made good", 0},
    {"mended", 0},
    {"not any more", 0},
    {"not anymore", 0},
    {"now fine", 0},
    {"now free", 0},
    {"now it slides", 0},
    {"now runs", 0},
    {"now turns", 0},
    {"now works", 0},
    {"oiled", 0},
    {"ok now", 0},
    {"okay now", 0},
    {"patched", 0},
    {"put a new", 0},
    {"put right", 0},
    {"repaired", 0},
    {"replaced", 0},
    {"resewn", 0},
    {"restitched", 0},
    {"seen to", 0},
    {"sewed", 0},
    {"sewn", 0},
    {"soldered", 0},
    {"sorted", 0},
    {"stitched", 0},
    {"straightened", 0},
    {"tightened", 0},
    {"washed it out", 0},
    {"waxed", 0},
    {"works now", 0},
};

// "I oiled it but it's still stiff", "to no avail": it was not mended by that.
static bool is_in_vain(const struct scope *s, size_t from, size_t end) {
    static const char *const vain[] = {"didn't help", "no better",  "to no avail", "made no difference",
                                       "no joy",      "didn't fix", "no luck",     "not much better"};
    for (size_t at = from; at < end; at++) {
        bool still = token_is(&s->note->tokens, at, "still") && at + 1 < end && s->fault[at + 1];
        if (still || token_longest(&s->note->tokens, at, vain, COUNT(vain))) return true;
    }
    return false;
}

static void read_mended(struct scope *s, size_t i) {
    static const char *const were[] = {"was", "were", "had"};
    static const char *const then[] = {"when i got",   "when i found",  "when i bought", "when we got",
                                       "when it came", "when we found", "when she came"};
    const struct tokens *tokens = &s->note->tokens;
    bool came = false;
    if (token_longest(tokens, i, then, COUNT(then))) {
        size_t start = scope_clause_start(s, i);
        came = i > start && s->fault[start];
    }
    if (!came && !token_among(tokens, i, were, COUNT(were))) return;
    if (i > 0 && token_is(tokens, i - 1, "never")) return; // "there never was any and there isn't now"
    size_t end = scope_sentence_end(s, i), n;
    bool fault = came; // "seized up when I got it, I oiled it"
    for (size_t at = i; at < end; at++) {
        if (fault && token_is(tokens, at, "never")) return;
        if (fault && cue_at(s, mends, COUNT(mends), at, &n)) {
            if (is_in_vain(s, at, end)) return;
            size_t to = at;
            while (to > i && s->fault[to] && s->fault[to - 1]) to--; // the mending's own words
            bool before = false;
            for (size_t k = i; k < to; k++) before |= s->fault[k];
            if (!before) continue;
            while (to > i && tokens->at[to - 1].stop == STOP_NONE && !s->fault[to - 1]) to--;
            size_t start =
                i; // "one has a crack and one has had its rim chipped and filled": of the second alone
            for (size_t first = scope_clause_start(s, i); start > first; start--)
                if (token_is(tokens, start - 1, "and") &&
                    ANY(tokens, start, "one", "two", "the", "its", "another", "some", "it"))
                    break;
            scope_mark(s, start, to > i ? to : at, STANCE_PAST, i);
            return;
        }
        fault |= s->fault[at];
    }
}

// "It has dents and the gold has rubbed off", at the "and": what has its own verb before is not of the other.
static bool is_other_clause(const struct scope *s, size_t from, size_t and) {
    const struct tokens *tokens = &s->note->tokens;
    bool verb = false;
    if (!token_is(tokens, and, "and") || !ANY(tokens, and+1, "the", "its", "some", "most", "all"))
        return false;
    for (size_t k = from; k < and&&!verb; k++)
        verb = ANY(tokens, k, "has", "have", "is", "are", "with", "got");
    return verb;
}

// "Split, so it doesn't puff anymore": what is no more stands behind the denial, and what is before it is so.
static size_t denial_before(const struct scope *s, size_t from, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if (!ANY(tokens, i, "any", "anymore")) return from;
    for (size_t k = i; k > from + 1; k--)
        if (ANY(tokens, k - 1, "doesn't", "doesnt", "don't", "won't", "wont", "isn't", "can't", "cannot",
                "didn't", "wouldn't", "aren't"))
            return k < i && ANY(tokens, k - 2, "it", "so", "they", "and", "that", "which") ? k - 1 : from;
    return from;
}

// "There was a stain but it came out": behind "but" stands nothing but the pronoun, so it speaks of what is
// before.
static size_t back_from(const struct scope *s, size_t i) {
    static const char *const words[] = {"but",  "it",  "it's",  "its", "that",
                                        "they", "has", "since", "now", "all"};
    size_t from = scope_clause_start(s, i), denied = denial_before(s, from, i);
    if (denied > from) return denied;
    for (size_t k = i; k > from; k--) { // "gummy where the label came off": only the label is off
        if (token_is(&s->note->tokens, k - 1, "where")) return k;
        if (is_other_clause(s, from, k - 1)) return k;
    }
    bool bare = from > 0 && token_is(&s->note->tokens, from - 1, "but");
    for (size_t k = from; k < i; k++) bare &= token_among(&s->note->tokens, k, words, COUNT(words));
    if (!bare) return from;
    for (size_t k = from - 1; k-- > scope_sentence_start(s, from - 1);)
        if (s->note->tokens.at[k].stop == STOP_COMMA && k + 2 < from) return k + 1;
    return scope_sentence_start(s, from - 1);
}

// "So I put on a new one", "so Dad had new glass cut", "she had them redone": what was wrong was put right.
static bool is_renewal(const struct tokens *tokens, size_t at, size_t end) {
    static const char *const verbs[] = {"had",       "got",  "put", "fitted", "bought",
                                        "installed", "have", "get", "gave"};
    static const char *const done[] = {"redone",   "replated", "resilvered", "recovered",  "reupholstered",
                                       "replaced", "resoled",  "reheeled",   "refinished", "restrung",
                                       "rebuilt",  "rewoven",  "recaned",    "relined"};
    static const char *const other[] = {"battery", "batteries", "bulb", "bulbs", "film",     "paper", "cells",
                                        "coat",    "owner",     "home", "price", "pictures", "photos"};
    enum { NEAR = 5 };
    if (ANY(tokens, at, "took", "stripped") && ANY(tokens, at + 1, "it", "them", "that") &&
        token_is(tokens, at + 2, "off"))
        return true;
    if (!token_among(tokens, at, verbs, COUNT(verbs))) return false;
    for (size_t k = at + 1; k < at + NEAR && k < end && tokens->at[k - 1].stop == STOP_NONE; k++) {
        if (token_among(tokens, k, done, COUNT(done))) return true;
        if (ANY(tokens, k, "new", "another") && k + 1 < end && tokens->at[k].stop == STOP_NONE)
            return !token_among(tokens, k + 1, other, COUNT(other)) &&
                   !token_among(tokens, k + 2, other, COUNT(other));
    }
    return false;
}

// "The seat was torn so I had it recovered", at "was": up to the "so" it is told of what is no more.
static void read_put_right(struct scope *s, size_t i) {
    enum { FAR = 24, SUBJECT = 6 };
    const struct tokens *tokens = &s->note->tokens;
    if (!ANY(tokens, i, "was", "were", "had") || (i > 0 && ANY(tokens, i - 1, "never"))) return;
    size_t end = scope_sentence_end(s, i);
    bool fault = false;
    for (size_t at = i + 1; at < end && at < i + FAR; at++) {
        bool so = token_is(tokens, at, "so") && !ANY(tokens, at + 1, "bad", "badly", "much", "that", "far");
        bool comma =
            tokens->at[at - 1].stop == STOP_COMMA && ANY(tokens, at, "i", "we", "she", "he", "dad", "then");
        if (fault && (so || comma))
            for (size_t k = at + 1; k < at + SUBJECT && k < end; k++) {
                if (tokens->at[k - 1].stop >= STOP_COMMA && k > at + 1) break;
                if (!is_renewal(tokens, k, end)) continue;
                scope_mark(s, scope_sentence_start(s, i), at, STANCE_PAST, i);
                return;
            }
        fault |= s->fault[at];
    }
}

// "The joints weren't loose": of now it says nothing.
static void read_was_not(struct scope *s, size_t i) {
    static const char *const nots[] = {"wasn't", "weren't"};
    static const char *const functions[] = {"working", "running", "tested",  "tried", "checked",
                                            "looked",  "opened",  "cleaned", "there", "any"};
    const struct tokens *tokens = &s->note->tokens;
    size_t to = i + 1;
    if (!token_among(tokens, i, nots, COUNT(nots)) || token_among(tokens, to, functions, COUNT(functions)))
        return;
    while (to < tokens->count && s->fault[to]) to++;
    for (size_t end = scope_sentence_end(s, i), at = to; at < end; at++)
        if (token_is(tokens, at, "now")) return; // "but it is now"
    scope_mark(s, i + 1, to, STANCE_PAST, i);
}

// "The strap is new, the old one was perished", at "the": what is told of a part that is there no more.
static void read_old_one(struct scope *s, size_t i) {
    static const char *const olds[] = {"old one",      "old ones",  "original", "originals",
                                       "original one", "first one", "last one", "old"};
    const struct tokens *tokens = &s->note->tokens;
    size_t n = 0;
    if (!ANY(tokens, i, "old", "original", "originals", "first", "last") ||
        !(n = token_longest(tokens, i, olds, COUNT(olds))) ||
        !ANY(tokens, i + n, "was", "were", "had", "being"))
        return;
    for (size_t k = scope_sentence_start(s, i); k < i; k++)
        if (ANY(tokens, k, "new", "newer", "fresh", "replaced", "renewed", "replacement", "replacements",
                "refitted"))
            scope_mark(s, i + n, scope_clause_end(s, i + n), STANCE_PAST, i);
}

// "It used to stick, I oiled it, runs well now": behind the comma begins what was done, or what is so now;
// what "there is" is of now in any case.
static size_t past_end(const struct scope *s, size_t i) {
    static const char *const anew[] = {
        "i",    "i've",  "we", "my",  "it",  "it's",  "now",  "he",  "she", "they", "then",   "works", "runs",
        "fine", "until", "so", "but", "not", "since", "goes", "new", "all", "put",  "fitted", "you"};
    size_t end = scope_clause_end(s, i);
    bool fault = false; // "no longer wanted, scratches": what is past is told in full
    for (size_t at = i; at + 1 < end; at++) {
        if (ANY(&s->note->tokens, at, "there's", "theres") ||
            (token_is(&s->note->tokens, at, "there") && ANY(&s->note->tokens, at + 1, "is", "are")))
            return at;
        if (s->note->tokens.at[at].stop == STOP_COMMA &&
            (!fault || token_among(&s->note->tokens, at + 1, anew, COUNT(anew))))
            return at;
        fault |= s->fault[at];
    }
    return end;
}

void scope_past(struct scope *s) {
    for (size_t i = 0; i < s->note->tokens.count; i++) {
        read_mended(s, i);
        read_put_right(s, i);
        read_was_not(s, i);
        read_old_one(s, i);
    }
    for (size_t i = 0; i < s->note->tokens.count; i++) {
        size_t n;
        const struct cue *cue = cue_at(s, cues, COUNT(cues), i, &n);
        if (!cue) continue;
        if (cue->kind == AHEAD)
            scope_mark(s, i + n, past_end(s, i + n), STANCE_PAST, i);
        else if (!is_turned(s, i) && !token_is(&s->note->tokens, i + n, "of") && !is_made(s, i + n) &&
                 !token_is(&s->note->tokens, i + n, "hard") && // "rusted, it came off hard"
                 !scope_left(s, scope_clause_start(s, i), i, i + n))
            scope_mark(s, back_from(s, i), i + n, STANCE_PAST, i);
        i += n - 1;
    }
    scope_removed(s);
    scope_other_one(s);
}

// "The gilding has rubbed off": the cue is a word of the fault. "It won't lie flat any more": what is no more
// is that it did.
bool scope_past_is_own(const struct scope *s, size_t from, size_t to) {
    static const char *const nots[] = {"won't",  "wont", "doesn't", "doesnt", "don't",  "dont",
                                       "isn't",  "isnt", "aren't",  "arent",  "can't",  "cant",
                                       "cannot", "not",  "nothing", "never",  "hasn't", "no"};
    static const char *const own[] = {"rubbed"}, *const more[] = {"any", "anymore"};
    const struct tokens *tokens = &s->note->tokens;
    size_t cue = s->cue[from];
    if (cue > from && cue < to && token_among(tokens, cue, own, COUNT(own))) return true;
    bool no_more = cue > from && token_among(tokens, cue, more, COUNT(more));
    for (size_t i = from; no_more && i < to; i++)
        if (token_among(tokens, i, nots, COUNT(nots))) return true;
    return false;
}
