// SPDX-License-Identifier: MIT
// "The crackle is on purpose", "ripped at the knees from the factory", "that's how it was thrown": the look
// is meant, and no fault. What merely excuses a fault ("just patina", "from storage") takes nothing away.
#include <string.h>

#include "notes/any.h"
#include "notes/scope.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {
    {"are how it was made", 0},
    {"are how it's made", 0},
    {"are how they came", 0},
    {"are how they come", 0},
    {"are how they made it", 0},
    {"are meant to be", 0},
    {"are supposed to be", 0},
    {"are the design", 0},
    {"are the style", 0},
    {"are the way they came", 0},
    {"as designed", 0},
    {"as it ought", 0},
    {"as it ought to", 0},
    {"as it should", 0},
    {"as they ought", 0},
    {"as they should", 0},
    {"by design", 0},
    {"came on it new", 0},
    {"came on them new", 0},
    {"came so from new", 0},
    {"for effect", 0},
    {"for the look", 0},
    {"from new", 0},
    {"from the factory", 0},
    {"from the shop", 0},
    {"is how it came", 0},
    {"is how it comes", 0},
    {"is how it is made", 0},
    {"is how it was made", 0},
    {"is how it's made", 0},
    {"is how these came", 0},
    {"is how these come", 0},
    {"is how they came", 0},
    {"is how they come", 0},
    {"is how they made it", 0},
    {"is how they made them", 0},
    {"is how they were made", 0},
    {"is how they're made", 0},
    {"is how those come", 0},
    {"is meant to be", 0},
    {"is supposed to be", 0},
    {"is the design", 0},
    {"is the look", 0},
    {"is the style", 0},
    {"is the way it came", 0},
    {"is the way it comes", 0},
    {"is the way it was made", 0},
    {"is the way they came", 0},
    {"is the way they come", 0},
    {"is the way they were made", 0},
    {"like it ought to", 0},
    {"like it should", 0},
    {"like they ought to", 0},
    {"like they should", 0},
    {"made that way", 0},
    {"meant to look", 0},
    {"on purpose", 0},
    {"painted on", 0},
    {"part of the design", 0},
    {"printed on", 0},
    {"supposed to look", 0},
    {"that's how it came", 0},
    {"that's how it comes", 0},
    {"that's how it was made", 0},
    {"that's how it was thrown", 0},
    {"that's how these come", 0},
    {"that's how they came", 0},
    {"that's how they come", 0},
    {"that's how they made them", 0},
    {"that's how they were made", 0},
    {"that's the style", 0},
    {"that's the way it came", 0},
    {"that's the way they come", 0},
    {"the way it should", 0},
    {"the way they should", 0},
};

// What somebody meant to do to it, or a buyer might, has not been done.
static const struct cue plans[] = {{"could always be", 0},
                                   {"could be", 0},
                                   {"could do with being", 0},
                                   {"could get it", 0},
                                   {"didn't fit a new", 0},
                                   {"didn't put a new", 0},
                                   {"going to get it", 0},
                                   {"going to have it", 0},
                                   {"has to be", 0},
                                   {"have not had a new", 0},
                                   {"have to be", 0},
                                   {"haven't fitted a new", 0},
                                   {"haven't had a new", 0},
                                   {"haven't put a new", 0},
                                   {"i was going to", 0},
                                   {"intended to", 0},
                                   {"meaning to get it", 0},
                                   {"meaning to have it", 0},
                                   {"meant to get it", 0},
                                   {"meant to have it", 0},
                                   {"might get it", 0},
                                   {"must be", 0},
                                   {"needs to be", 0},
                                   {"never got around to", 0},
                                   {"never got round to", 0},
                                   {"never had a new", 0},
                                   {"ought to be", 0},
                                   {"ought to have", 0},
                                   {"planned on", 0},
                                   {"planned to", 0},
                                   {"should be", 0},
                                   {"thinking of having", 0},
                                   {"thought about having", 0},
                                   {"thought of having", 0},
                                   {"want to be", 0},
                                   {"wanted to get it", 0},
                                   {"wanted to have it", 0},
                                   {"wants to be", 0},
                                   {"would have to be", 0},
                                   {"would need to be", 0}};

// "Until it's changed", "until the cord has been replaced"; but "until it was glued" is done, and a till is a
// drawer.
static bool is_until(const struct tokens *tokens, size_t i) {
    enum { SUBJECT_MOST = 4 };
    if (!ANY(tokens, i, "until", "till") || (i > 0 && ANY(tokens, i - 1, "the", "left", "right", "a")))
        return false;
    for (size_t k = i + 1; k <= i + SUBJECT_MOST && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE;
         k++)
        if (ANY(tokens, k, "is", "it's", "are", "they're", "has", "have", "you've", "gets", "get"))
            return true;
    return false;
}

// "It must be slipping" is what somebody takes for true.
static bool is_guessed(const struct tokens *tokens, size_t i, size_t n) {
    const char *word = i + n < tokens->count ? tokens->at[i + n].fold : "";
    size_t size = strlen(word);
    return token_is(tokens, i, "must") && !(size > 2 && text_same(word + size - 2, "ed"));
}

// "They'd go another twenty years with a new handle", at "with": what would make it better is not on it.
static void read_better_with(struct scope *s, size_t i) {
    enum { BACK = 10 };
    const struct tokens *tokens = &s->note->tokens;
    if (!token_is(tokens, i, "with")) return;
    size_t at = i + 1;
    while (ANY(tokens, at, "a", "an", "some", "the", "just", "one")) at++;
    if (!ANY(tokens, at, "new", "fresh", "replacement", "different", "better", "proper")) return;
    for (size_t k = i; k > 0 && i - k < BACK && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (ANY(tokens, k - 1, "would", "could", "should", "might", "it'd", "they'd", "she'd", "he'd",
                "that'd", "you'd", "itd", "theyd")) {
            scope_mark(s, i + 1, scope_clause_end(s, i + 1), STANCE_PLANNED, i);
            return;
        }
}

// "I would have it rewired", "you'd want to get the lining mended": what was not yet done, and by whom it is
// to be. The token of what is to be done; 0 where there is none.
static size_t to_be_done(const struct tokens *tokens, size_t i) {
    static const char *const woulds[] = {"would",  "i'd",   "you'd", "we'd", "i'll", "you'll", "will",
                                         "should", "might", "could", "must", "id",   "youd",   "to"};
    static const char *const between[] = {"want",     "need", "like",  "love", "prefer",     "to",
                                          "probably", "have", "still", "just", "definitely", "always"};
    static const char *const deeds[] = {
        "rewired",  "reglued",  "glued",     "mended",     "repaired",  "replaced",      "refinished",
        "restored", "fixed",    "serviced",  "hemmed",     "recovered", "reupholstered", "rebound",
        "resoled",  "reheeled", "restrung",  "resized",    "repainted", "painted",       "replated",
        "recaned",  "relined",  "altered",   "patched",    "darned",    "stitched",      "sewn",
        "soldered", "welded",   "reframed",  "resilvered", "reset",     "rebuilt",       "overhauled",
        "regilded", "rewoven",  "rechromed", "tightened",  "shortened", "reseated",      "rebacked"};
    static const char *const had[] = {"have", "get", "want", "need", "see"};
    enum { OBJECT_MOST = 5 };
    if (!token_among(tokens, i, woulds, COUNT(woulds)) || tokens->at[i].stop != STOP_NONE) return 0;
    if (token_is(tokens, i, "to") && i > 0 && ANY(tokens, i - 1, "going", "meaning", "meant", "wanted"))
        return 0; // told by that
    size_t at = i + 1;
    while (token_among(tokens, at, between, COUNT(between)) && tokens->at[at].stop == STOP_NONE) at++;
    if (!token_among(tokens, at - 1, had, COUNT(had))) {
        if (!token_among(tokens, at, had, COUNT(had)) || tokens->at[at].stop != STOP_NONE) return 0;
        at++;
    }
    for (size_t k = at + 1; k <= at + OBJECT_MOST && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE;
         k++)
        if (token_among(tokens, k, deeds, COUNT(deeds))) return k;
    return 0;
}

static void read_plans(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        read_better_with(s, i);
        size_t n = 1, deed = to_be_done(tokens, i);
        if (deed) scope_mark(s, deed, deed + 1, STANCE_PLANNED, i);
        if (!is_until(tokens, i) && (!cue_at(s, plans, COUNT(plans), i, &n) || is_guessed(tokens, i, n)))
            continue;
        scope_mark(s, i + n, scope_clause_end(s, i + n), STANCE_PLANNED, i);
    }
}

// "My back cracked", "my eyes are gone": of the one who writes, not of the thing.
static void read_body(struct scope *s) {
    static const char *const limbs[] = {"back",   "hands",   "hand",  "knees",  "knee",       "eyes",
                                        "eye",    "fingers", "thumb", "thumbs", "wrist",      "wrists",
                                        "arm",    "arms",    "legs",  "feet",   "toe",        "toes",
                                        "teeth",  "hips",    "skin",  "ears",   "collarbone", "shoulders",
                                        "finger", "heart",   "voice", "nose",   "hip",        "shoulder"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i + 1 < tokens->count; i++) {
        if (!token_is(tokens, i, "my") || !token_among(tokens, i + 1, limbs, COUNT(limbs))) continue;
        size_t to = i + 2;
        while (to < tokens->count && tokens->at[to].stop == STOP_NONE && !token_is(tokens, to, "but") &&
               !token_is(tokens, to, "and"))
            to++;
        bool before = i > 0 && (token_is(tokens, i - 1, "in") || token_is(tokens, i - 1, "on") ||
                                token_is(tokens, i - 1, "off"));
        bool felt =
            ANY(tokens, i + 2, "round", "around", "along", "over", "across", "into", "in", "on", "down",
                "through", "inside", "under", "up", "to", "across"); // "ran my finger round the rim"
        if (!before && !felt) scope_mark(s, i, to, STANCE_OTHER, i);
    }
}

static bool is_over(const struct scope *s, size_t i) {
    return i >= s->note->tokens.count || s->note->tokens.at[i].stop != STOP_NONE ||
           token_is(&s->note->tokens, i, "and") || token_is(&s->note->tokens, i, "not");
}

// From the comma before; where the cue stands alone behind one, from the comma before that.
static size_t intended_from(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    size_t start = scope_clause_start(s, i), from = i;
    while (from > start && tokens->at[from - 1].stop != STOP_COMMA && !token_is(tokens, from - 1, "and"))
        from--;
    bool alone = true;
    for (size_t k = from; k < i; k++) alone &= !s->fault[k];
    if (!alone || from <= start) return from;
    from--;
    while (from > start && tokens->at[from - 1].stop != STOP_COMMA) from--;
    return from;
}

// "The ridge down the front is just from the mold": what it was cast or pressed in, which leaves its seam.
static void read_casting(struct scope *s) {
    static const char *const molds[] = {"mold", "mould", "molds", "moulds"};
    static const char *const traces[] = {"line",    "lines", "seam", "seams",  "ridge",   "ridges",
                                         "edge",    "edges", "join", "halves", "bubbles", "bubble",
                                         "bump",    "bumps", "lip",  "pimple", "flash",   "ripple",
                                         "ripples", "nub",   "nubs", "parting"};
    static const char *const before[] = {"only", "just", "from", "off",   "of",
                                         "by",   "is",   "it's", "where", "in"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 2; i < tokens->count; i++) {
        if (!token_among(tokens, i, molds, COUNT(molds)) || !token_is(tokens, i - 1, "the") ||
            !token_among(tokens, i - 2, before, COUNT(before)))
            continue;
        size_t from = scope_clause_start(s, i), at = i;
        while (at > from && !token_among(tokens, at - 1, traces, COUNT(traces))) at--;
        if (at == from) continue;
        static const char *const places[] = {"on", "in", "along", "at", "near", "inside"};
        size_t lead = at - 1 - (at > from + 1 && token_is(tokens, at - 2, "the"));
        if (lead > from && token_among(tokens, lead - 1, places, COUNT(places))) continue; // "on the seam"
        scope_mark(s, at - 1, i + 1, STANCE_OTHER, i);
    }
}

// "Rocks like it should" is praise; "doesn't shut like it should" and "not as tight as it should be" are
// none.
static bool is_short_of(const struct scope *s, size_t from, size_t i, size_t n) {
    const struct tokens *tokens = &s->note->tokens;
    bool should = false;
    for (size_t k = i; k < i + n; k++) should |= ANY(tokens, k, "should", "ought");
    if (!should) return false;
    bool moves = false; // it is made to do so, and the word is a fault's where the thing should stand still
    for (size_t k = from; k < i; k++)
        moves |=
            ANY(tokens, k, "rocks", "rock", "swings", "swing", "tilts", "sways", "spins", "bends", "flexes",
                "stretches", "folds", "leans", "rattles", "bounces", "wobbles", "moves", "slides", "gives",
                "jingles", "tinkles", "crackles", "creaks", "nods", "swivels", "hangs");
    if (!moves) return true;
    if (ANY(tokens, i + n, "be", "have", "do", "not")) return true;
    for (size_t k = scope_clause_start(s, i); k < i; k++)
        if (ANY(tokens, k, "not", "no", "never", "nothing", "hardly", "won't", "can't", "less", "more",
                "isn't", "doesn't", "don't", "aren't", "hasn't", "barely", "cannot", "wouldn't", "nor",
                "neither", "without", "quite", "but", "though", "wont", "doesnt", "dont", "isnt"))
            return true;
    return from >= i;
}

void scope_intended(struct scope *s) {
    read_plans(s);
    read_casting(s);
    read_body(s);
    scope_topic(s);
    scope_spared(s);
    for (size_t i = 0; i < s->note->tokens.count; i++) {
        size_t n;
        if (!cue_at(s, cues, COUNT(cues), i, &n)) continue;
        if (token_is(&s->note->tokens, i + 1, "on") && !is_over(s, i + n))
            continue; // "initials painted on the lid"
        static const char *const making[] = {"firing",        "kiln", "glaze", "casting",
                                             "manufacturing", "mold", "mould"};
        size_t from = intended_from(s, i);
        if (is_short_of(s, from, i, n)) continue;
        bool made = false; // "a firing crack in the foot from new" is there
        for (size_t k = from; k < i && token_is(&s->note->tokens, i, "from"); k++)
            made |= token_among(&s->note->tokens, k, making, COUNT(making));
        if (!made) scope_mark(s, from, i + n, STANCE_OTHER, i);
        i += n - 1;
    }
}
