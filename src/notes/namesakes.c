// SPDX-License-Identifier: MIT
// "Biscuits for Rusty", "our dog Chip": who is called by a word of a fault. Such a word has a capital that
// its place in the sentence does not give it, and stands where a name is due.
#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Worm holes in the back, I can't say how old": the age of the holes, and not of the thing.
static bool is_age_of_fault(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool old = false;
    for (size_t i = hit->from + 1; i < hit->to; i++)
        old |= ANY(tokens, i, "old") && ANY(tokens, i - 1, "how");
    if (!old || !text_same(hit->kinds[0]->rule.id, "authenticity-unverified")) return false;
    for (size_t h = 0; h < r->hit_count && r->hits[h].to <= hit->from; h++)
        if (r->hits[h].from >= scope_sentence_start(&r->scope, hit->from) &&
            r->hits[h].kinds[0]->class != CLASS_STATUS && r->hits[h].kinds[0]->class != CLASS_FEATURE)
            return true;
    return false;
}

// "In the Faded Orchard pattern", "the Cracked Ice line": what a make calls it.
static bool is_of_pattern(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { NAME_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    if (tokens->shouts || tokens->flat || tokens->at[hit->from].starts || hit->from == 0 ||
        !ANY(tokens, hit->from - 1, "the", "in", "called", "a"))
        return false;
    size_t at = hit->from;
    while (at < tokens->count && at < hit->from + NAME_MOST && tokens->at[at].capital &&
           tokens->at[at].stop == STOP_NONE)
        at++;
    return at > hit->from &&
           ANY(tokens, at, "pattern", "design", "line", "series", "range", "collection", "model");
}

// "Painting of a barn with peeling siding and a broken gate": what is wrong in the picture, unless a part of
// the picture is named.
static bool is_pictured(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { BACK = 14, AHEAD = 4 };
    static const char *const own[] = {"frame",   "frames",    "corner",    "corners", "canvas",  "edge",
                                      "edges",   "mat",       "mount",     "glass",   "back",    "margin",
                                      "margins", "border",    "paper",     "backing", "surface", "paint",
                                      "varnish", "signature", "stretcher", "sleeve",  "box",     "fold",
                                      "folds",   "crease",    "lower",     "upper"};
    static const char *const pictures[] = {"painting",   "print",      "picture",     "photo",   "photograph",
                                           "drawing",    "watercolor", "watercolour", "etching", "engraving",
                                           "lithograph", "poster",     "tapestry",    "sketch",  "snapshot"};
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from, with = 0;
    if (hit->to >= tokens->count || tokens->at[hit->to - 1].stop != STOP_NONE || // "with a scratch across it"
        tokens->at[hit->to].kind != TOKEN_WORD ||
        ANY(tokens, hit->to, "on", "in", "at", "across", "near", "along", "through", "by", "down", "over",
            "to", "from", "and", "but", "or", "about", "of"))
        return false;
    for (size_t n = 0; i > 1 && n < BACK; i--, n++) {
        if (tokens->at[i - 1].stop != STOP_NONE) return false;
        if (ANY(tokens, i - 1, "with", "and")) with = i;
        if (with && token_is(tokens, i - 1, "of") && token_among(tokens, i - 2, pictures, COUNT(pictures)))
            break;
        if (token_among(tokens, i - 1, own, COUNT(own))) return false;
    }
    if (!with || i < 2 || !token_is(tokens, i - 1, "of") || !ANY(tokens, i, "a", "an", "two", "some", "the"))
        return false;
    for (size_t k = hit->from; k < hit->to + AHEAD && k < tokens->count; k++) {
        if (token_among(tokens, k, own, COUNT(own))) return false;
        if (k + 1 > hit->to && tokens->at[k].stop != STOP_NONE) break;
        if (ANY(tokens, k, "foxing", "foxed", "stain", "stained", "faded", "yellowed", "crease", "creased",
                "tear", "toning"))
            return false;
    }
    return hit->kinds[0]->class == CLASS_DAMAGE || hit->kinds[0]->form == ABSENCE;
}

bool fault_is_called_so(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct note *note = r->note;
    if (is_age_of_fault(r, hit) || is_of_pattern(r, hit) || is_pictured(r, hit)) return true;
    const struct tokens *tokens = &note->tokens;
    const struct token *word = &tokens->at[hit->from];
    if (hit->to != hit->from + 1 || !word->capital || word->capitals || word->starts || tokens->shouts ||
        tokens->flat || hit->from == 0)
        return false;
    const struct token *before = word - 1;
    if (before->stop != STOP_NONE || (before->capital && !before->starts)) return false;
    bool owns =
        ANY(tokens, hit->to, "and", "slept", "loved", "chewed", "liked", "was", "had", "used", "came") &&
        ANY(tokens, hit->from - 1, "old", "our", "my", "when", "where", "because", "since", "that");
    return owns || ANY(tokens, hit->from - 1, "for", "to", "by", "called", "named", "from", "dog", "cat",
                       "pony", "horse", "mare", "parrot", "brother", "uncle", "aunt", "cousin", "nephew",
                       "with", "friend", "mr", "mrs", "miss", "puppy", "kitten", "hound", "terrier");
}
