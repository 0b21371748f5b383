// SPDX-License-Identifier: MIT
// The words that speak of one fault: those before it in its clause, those behind it in its sentence, and the
// sentence that follows where that goes on about it ("Crack in the blade. It goes right through.").
#include "notes/any.h"
#include "notes/faults.h"

#include <string.h>

enum { BEFORE_MOST = 12, BEHIND_MOST = 24, NEXT_MOST = 20 };

// A word of another fault, but for one that tells a degree of this kind: "loose, it wobbles".
static bool is_other(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                     size_t i) {
    if (i >= hit->from && i < hit->to) return false;
    if (!r->scope.fault[i] || r->part[i]) return false;
    if (ANY(&r->note->tokens, i, "runs", "goes", "running", "going"))
        return false; // "crack, runs right across"
    if (i > hit->to && r->note->tokens.at[i - 1].stop == STOP_COMMA && hit->kinds[0]->class == CLASS_DAMAGE &&
        ANY(&r->note->tokens, i, "hanging", "dangling", "flapping", "dropping", "gaping"))
        return false; // "cracked, hanging by a sliver": what becomes of it
    for (size_t back = 1; kind && back < 4 && back <= i; back++) // inside of a word of the scale
        if (degree_tell_at(r, kind, i - back) > back) return false;
    return !kind || !degree_tell_at(r, kind, i);
}

// A part by its use in the language: "lid", also where the thing has none.
bool degree_names_part(const struct fault_reader *r, size_t i) {
    const struct token *token = &r->note->tokens.at[i];
    struct word_entry entry;
    return r->part[i] || (token->kind == TOKEN_WORD && r->note->book &&
                          wordbook_find(r->note->book, token->one, strlen(token->one), &entry) &&
                          (entry.uses & (1u << USE_PART)));
}

// "On the fine tuner", "at the light end", "on bellows folds": an adjective of the place, and no degree.
bool degree_names_place(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0 || i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE ||
        tokens->at[i + 1].kind != TOKEN_WORD || spot_preposition(tokens, i + 1) || r->scope.fault[i + 1] ||
        ANY(tokens, i + 1, "area", "areas", "patch", "patches", "spot", "spots", "and", "or", "but", "part",
            "parts", "places", "place", "section", "stretch", "portion", "way", "extent", "amount", "bit",
            "one", "ones"))
        return false;
    size_t at = i;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           ANY(tokens, at - 1, "the", "its", "both", "each", "this"))
        at--;
    return at > 0 && tokens->at[at - 1].stop == STOP_NONE && spot_preposition(tokens, at - 1) &&
           !(at == i && ANY(tokens, at - 1, "with", "in", "of", "to", "for"));
}

// "Light to carry", "small enough to post", "little used", "fine stitching": a degree of the thing, or of
// another.
bool degree_is_of_goods(const struct fault_reader *r, size_t i, size_t n) {
    static const char *const uses[] = {"used", "worn",   "played", "handled",
                                       "read", "driven", "ridden", "opened"};
    static const char *const shapes[] = {
        "ones",    "one",     "lumps",    "lines",    "line",      "marks",   "mark",       "spots",
        "spot",    "patches", "patch",    "bits",     "bit",       "streaks", "flakes",     "specks",
        "dots",    "rings",   "smears",   "blobs",    "runs",      "film",    "bloom",      "layer",
        "coat",    "crust",   "dusting",  "haze",     "area",      "areas",   "strip",      "strands",
        "threads", "gaps",    "splits",   "places",   "amount",    "amounts", "surface",    "wear",
        "thing",   "stuff",   "cluster",  "freckles", "freckling", "scatter", "scattering", "coating",
        "traces",  "trace",   "rash",     "clumps",   "clouds",    "bands",   "whiff",      "whiffs",
        "smell",   "job",     "stitches", "ripple",   "ripples",   "waves",   "dent",       "dents",
        "pits",    "pit",     "chunks"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i + n;
    if (at >= tokens->count || tokens->at[at].stop != STOP_NONE) return false;
    if (token_is(tokens, at, "enough"))
        return !ANY(tokens, at - 1, "deep", "bad", "long", "wide", "strong", "big", "large", "badly") &&
               !ANY(tokens, at + 1, "that", "though", "but", "and", "not") &&
               !ANY(tokens, at + 2, "ignore", "miss", "overlook", "cover", "hide", "polish", "live");
    if (token_is(tokens, at, "to"))
        return ANY(tokens, at + 1, "carry", "post", "lift", "move", "send", "ship", "hold", "handle", "use",
                   "store", "fit");
    if (token_among(tokens, at, uses, sizeof uses / sizeof *uses)) return true;
    if (ANY(tokens, at, "thing", "item", "piece", "size", "sized", "object", "weight", "gauge", "model",
            "lump of"))
        return at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE; // "large size"
    size_t last = at; // the noun of a phrase that ends at a stop: "a light wipe given", "minor parts spare"
    while (last + 1 < tokens->count && tokens->at[last + 1].stop == STOP_NONE && last < at + 4) {
        if (token_among(tokens, last, shapes, sizeof shapes / sizeof *shapes) ||
            spot_preposition(tokens, last))
            return false;
        last++;
    }
    return !token_among(tokens, last, shapes, sizeof shapes / sizeof *shapes) &&
           tokens->at[at].kind == TOKEN_WORD && !r->scope.fault[at] && !spot_preposition(tokens, at) &&
           ANY(tokens, i, "light", "fine", "small", "minor", "little", "a", "slight", "slightly", "tiny",
               "short", "faint", "mild", "soft", "lightly") &&
           !ANY(tokens, at, "and", "or", "but", "though", "really", "only", "now", "all", "just", "i", "so",
                "as", "yet");
}

// "…, lid fine", "…, the hinges are sound": a part that has a good word of its own.
bool degree_opens_praise(const struct fault_reader *r, size_t i) {
    enum { FAR = 4 };
    const struct tokens *tokens = &r->note->tokens;
    if (ANY(tokens, i, "otherwise", "rest", "inside", "outside", "elsewhere")) i++;
    while (ANY(tokens, i, "and", "but", "the", "its", "my", "both", "all", "other", "rest", "of", "two")) i++;
    bool part = false;
    for (size_t at = i; at < i + FAR && at < tokens->count; at++) {
        bool good = ANY(tokens, at, "fine", "sound", "good", "ok", "okay", "alright", "perfect", "tight",
                        "solid", "clean", "firm", "intact", "works", "work", "closes", "shuts", "holds",
                        "hold", "turns", "opens", "fits", "straight", "clear", "free", "smooth", "great",
                        "nice", "lovely", "strong", "undamaged", "whole", "complete", "crisp", "bright");
        bool opens =
            at == i && i > 0 && ANY(tokens, i - 1, "otherwise", "rest", "inside", "outside", "elsewhere");
        if (good && (part || opens)) return true;
        part |= degree_names_part(r, at) && !spot_preposition(tokens, at);
        if (!part && !ANY(tokens, at, "left", "right", "small", "large", "big", "little", "top", "bottom",
                          "front", "back"))
            return false;
        if (tokens->at[at].stop != STOP_NONE) return false;
    }
    return false;
}

// "And the lid is bent", "the other one …": another part is the subject from here on.
static bool opens_other(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    while (ANY(tokens, i, "and", "but", "also", "then", "though", "so")) i++;
    if (ANY(tokens, i, "otherwise", "apart", "other", "rest", "inside", "outside")) return true;
    while (ANY(tokens, i, "the", "its", "my", "a", "one", "both")) i++;
    if (ANY(tokens, i, "other", "rest", "others") || degree_opens_praise(r, i)) return true;
    if (ANY(tokens, i + 1, "only") && (i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE))
        return false; // "one scratch, base only, can't be felt": where it is
    if (ANY(tokens, i, "catches") && ANY(tokens, i + 1, "on", "your", "the", "a", "my")) return false;
    return i < tokens->count && r->part[i] && !spot_adverb(tokens, i) && !spot_preposition(tokens, i);
}

// Does a sentence that begins at `i` go on about what was told before it?
static bool goes_on(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    return ANY(tokens, i, "it", "it's", "its", "it'll", "it'd", "they", "they're", "they'll", "that",
               "that's", "this", "these", "those", "you", "you'd", "you'll", "you've", "i", "i'd", "i've",
               "nothing", "none", "but", "though", "only", "just", "still", "not", "hardly", "barely",
               "scarcely", "can", "can't", "cant", "won't", "wont", "doesn't", "doesnt", "don't", "dont",
               "could", "couldn't", "should", "would", "wouldn't", "will", "goes", "runs", "comes", "came",
               "shows", "wipes", "wiped", "needs", "wants", "never", "quite", "pretty", "really", "very",
               "easy", "hard", "first", "no", "nobody", "if", "unless", "when", "had", "have", "looks",
               "feels", "takes", "stops", "makes", "enough", "impossible", "does", "do", "right", "all",
               "about", "at", "moves", "might", "tried", "scrubbed", "washed", "holds", "stays", "gets",
               "more", "less", "so", "see", "fills", "hits", "knocks", "catches", "most", "bad", "worse",
               "wouldnt", "couldnt", "cleans", "rubs", "brushes", "brushed", "rubbed", "leaks", "falls",
               "fell", "one");
}

size_t degree_cut(const struct tokens *tokens, size_t from, size_t at) {
    while (at > from && tokens->at[at - 1].stop == STOP_NONE &&
           (degree_stem(tokens, at - 1) || spot_article(tokens, at - 1) ||
            ANY(tokens, at - 1, "very", "quite", "rather")))
        at--;
    return at;
}

void degree_around(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                   struct around out[AROUND_COUNT]) {
    const struct tokens *tokens = &r->note->tokens;
    struct around before = {hit->from, hit->from}, behind = {hit->to, hit->to}, next = {0, 0};
    while (before.from > 0 && hit->from - before.from < BEFORE_MOST &&
           tokens->at[before.from - 1].stop == STOP_NONE && !is_other(r, hit, NULL, before.from - 1))
        before.from--;
    bool open = true; // nothing else was spoken of
    while (behind.to < tokens->count && tokens->at[behind.to].stop < STOP_SENTENCE) {
        size_t i = behind.to;
        open = !is_other(r, hit, kind, i) && !(tokens->at[i].stop != STOP_NONE && opens_other(r, i + 1)) &&
               !(i > hit->to && fault_told_again(r, i));
        if (!open || i - hit->to >= BEHIND_MOST) break;
        behind.to++;
    }
    size_t start = behind.to;
    if (!open && start < tokens->count && is_other(r, hit, kind, start))
        behind.to = degree_cut(tokens, hit->to, start);
    while (start < tokens->count && tokens->at[start].stop >= STOP_SENTENCE) start++;
    bool asked = token_is(tokens, behind.to, "?"); // "scratches? a few hairline ones"
    if (open && start > behind.to && start < tokens->count && (asked || goes_on(r, start))) {
        next.from = next.to = start;
        while (next.to < tokens->count && tokens->at[next.to].stop < STOP_SENTENCE &&
               next.to - start < NEXT_MOST && !is_other(r, hit, kind, next.to) &&
               !(tokens->at[next.to].stop != STOP_NONE && opens_other(r, next.to + 1)))
            next.to++;
    }
    for (size_t i = next.from; i < next.to; i++) // "you can hear it right across the yard"
        if (ANY(tokens, i, "hear", "heard", "sounds", "fits", "measures", "seats")) next.to = i;
    out[AROUND_BEFORE] = before;
    out[AROUND_BEHIND] = behind;
    out[AROUND_NEXT] = next;
}
