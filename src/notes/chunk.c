// SPDX-License-Identifier: MIT
#include "notes/chunk.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "notes/any.h"
#include "text/order.h"

// Sorted by bytes.
static const char *const breakers[] = {
    "a",      "about",    "above",    "across",   "after",   "against",  "ain't",   "aint",     "along",
    "also",   "although", "am",       "an",       "and",     "any",      "are",     "aren't",   "arent",
    "around", "as",       "at",       "be",       "because", "been",     "before",  "behind",   "being",
    "below",  "beneath",  "beside",   "besides",  "between", "but",      "by",      "came",     "can",
    "can't",  "cant",     "come",     "comes",    "could",   "couldn't", "did",     "didn't",   "didnt",
    "do",     "does",     "doesn't",  "doesnt",   "don't",   "dont",     "down",    "during",   "each",
    "either", "every",    "except",   "feels",    "fits",    "for",      "found",   "from",     "gave",
    "get",    "gets",     "given",    "goes",     "gone",    "got",      "had",     "hadn't",   "has",
    "hasn't", "hasnt",    "have",     "haven't",  "havent",  "he",       "her",     "here",     "here's",
    "heres",  "him",      "his",      "how",      "i",       "i'd",      "i'll",    "i'm",      "i've",
    "if",     "im",       "in",       "includes", "inside",  "into",     "is",      "isn't",    "isnt",
    "it",     "it's",     "its",      "itself",   "just",    "keeps",    "kept",    "lacking",  "lacks",
    "less",   "like",     "listing",  "looks",    "may",     "maybe",    "me",      "measures", "might",
    "mine",   "minus",    "missing",  "must",     "my",      "near",     "needs",   "neither",  "no",
    "nor",    "not",      "of",       "off",      "on",      "once",     "onto",    "or",       "our",
    "out",    "outside",  "over",     "per",      "perhaps", "picked",   "plus",    "reads",    "said",
    "sans",   "says",     "seems",    "selling",  "she",     "should",   "since",   "so",       "some",
    "still",  "than",     "that",     "that's",   "thats",   "the",      "their",   "them",     "then",
    "there",  "there's",  "theres",   "these",    "they",    "they're",  "theyre",  "this",     "those",
    "though", "through",  "thru",     "to",       "too",     "toward",   "towards", "under",    "underneath",
    "unless", "until",    "up",       "upon",     "us",      "w",        "w/",      "w/o",      "was",
    "wasn't", "wasnt",    "we",       "weighs",   "were",    "what",     "when",    "where",    "whether",
    "which",  "while",    "who",      "whose",    "will",    "with",     "within",  "without",  "won't",
    "wont",   "would",    "wouldn't", "yet",      "you",     "your"};

// Verbs where they stand behind a noun, nouns elsewhere.
static const char *const after_noun[] = {
    "blows",  "buzzes",   "catches", "cleans",  "clicks", "closes", "covers", "cuts",    "drips",  "drops",
    "feels",  "flickers", "folds",   "hangs",   "hits",   "holds",  "hums",   "leaks",   "leans",  "lifts",
    "lights", "locks",    "looks",   "moves",   "opens",  "plays",  "pulls",  "reels",   "rings",  "rocks",
    "rolls",  "runs",     "screws",  "shakes",  "shows",  "shuts",  "sits",   "slides",  "slips",  "smells",
    "snaps",  "sounds",   "spins",   "springs", "stands", "starts", "sticks", "stops",   "swings", "ticks",
    "tips",   "tracks",   "turns",   "watches", "wears",  "weighs", "winds",  "wobbles", "works",  "zips"};

static const char *const before_particle[] = {
    "built", "button", "carry", "clip", "drop", "fold", "hang", "lace",  "lift", "light", "lock",
    "pin",   "plug",   "pop",   "pull", "push", "ride", "roll", "screw", "sew",  "sit",   "slip",
    "snap",  "stand",  "step",  "tie",  "walk", "wind", "zip",  "wrap",  "iron", "stick", "over"};
static const char *const particles[] = {"up", "on", "down", "in", "off", "out", "over", "along"};

#define COUNT(list) (sizeof(list) / sizeof *(list))

static int by_word(const void *key, const void *entry) {
    return text_order(key, *(const char *const *)entry);
}

static bool is_in(const char *word, const char *const *list, size_t count) {
    return bsearch(word, list, count, sizeof *list, by_word) != NULL;
}

static bool is_any(const struct note *note, size_t i, const char *const *list, size_t count) {
    for (size_t k = 0; k < count; k++)
        if (token_is(&note->tokens, i, list[k])) return true;
    return false;
}

static bool is_joiner(const struct note *note, size_t i) {
    return token_is(&note->tokens, i, "-") || token_is(&note->tokens, i, "&") ||
           token_is(&note->tokens, i, "'") || token_is(&note->tokens, i, "\"");
}

// "Steel can, dented": no verb follows, and nobody who can.
static bool is_vessel(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!i || !token_is(tokens, i, "can") || tokens->at[i - 1].stop != STOP_NONE ||
        ANY(tokens, i - 1, "you", "i", "it", "we", "they", "that", "which", "who", "one", "this", "he",
            "she"))
        return false;
    const struct token *next = i + 1 < tokens->count ? &tokens->at[i + 1] : NULL;
    if (!next || next->stop != STOP_NONE || next->kind == TOKEN_FIGURE) return true;
    size_t size = strlen(next->fold);
    return (size > 3 && !strcmp(next->fold + size - 2, "ed")) ||
           ANY(tokens, i + 1, "with", "has", "is", "was", "and", "in", "on", "for", "from", "marked", "no");
}

// "Brooch set with marcasites": a brooch.
static bool is_set_with(const struct note *note, size_t i) {
    struct word_entry stuff;
    // "Rhinestones set in silver colored metal"
    if (i > 0 && ANY(&note->tokens, i, "set") && ANY(&note->tokens, i + 1, "in", "into") &&
        ANY(&note->tokens, i - 1, "rhinestones", "rhinestone", "stones", "stone", "pearls", "pearl",
            "crystals", "garnets", "garnet", "marcasites", "brilliants", "diamonds", "diamond", "opal",
            "opals", "paste"))
        return true;
    return ANY(&note->tokens, i, "set") && note->tokens.at[i].stop == STOP_NONE &&
           ANY(&note->tokens, i + 1, "with", "in") && word_at(note, i + 2, 1u << USE_MATERIAL, &stuff) > 0;
}

bool chunk_breaks(const struct note *note, size_t i) {
    if (i >= note->tokens.count) return true;
    const struct token *t = &note->tokens.at[i];
    if (t->stop != STOP_NONE || note->taken[i] == TAKEN_ASIDE || note->taken[i] == TAKEN_MARK ||
        note->taken[i] == TAKEN_FITS)
        return true;
    if (t->kind == TOKEN_SIGN) return !is_joiner(note, i);
    if (ANY(&note->tokens, i, "serial") && ANY(&note->tokens, i + 1, "no", "number", "num", "nr", "#"))
        return true;
    if (is_set_with(note, i)) return true;
    if (i > 0 && ANY(&note->tokens, i, "cut") && ANY(&note->tokens, i + 1, "out", "down", "from", "into"))
        return true; // "breadboard cut out like a pig"
    return is_in(t->fold, breakers, COUNT(breakers)) && !is_vessel(note, i);
}

// "wind up", "clip on" before a noun: how many tokens.
static size_t particle_word(const struct note *note, size_t i) {
    if (!is_any(note, i, before_particle, COUNT(before_particle))) return 0;
    size_t at = i + 1;
    if (token_is(&note->tokens, at, "-")) at++;
    if (!is_any(note, at, particles, COUNT(particles))) return 0;
    at++;
    if (at >= note->tokens.count || note->tokens.at[at].kind != TOKEN_WORD) return 0;
    return chunk_breaks(note, at) || note->fault_word[at] ? 0 : at - i;
}

static bool is_toy_word(const struct note *note, size_t i) {
    static const char *const words[] = {"toy",   "clockwork", "friction", "windup",   "wind-up",
                                        "plush", "stuffed",   "diecast",  "die-cast", "playset"};
    return is_any(note, i, words, COUNT(words)) || token_phrase(&note->tokens, i, "wind up") ||
           token_phrase(&note->tokens, i, "battery operated") ||
           token_phrase(&note->tokens, i, "battery powered") ||
           token_phrase(&note->tokens, i, "battery toy") || token_phrase(&note->tokens, i, "pull along") ||
           token_phrase(&note->tokens, i, "die cast");
}

static void keep(struct chunk *chunk, const struct noun_found *noun) {
    if (chunk->count == CHUNK_NOUNS_MOST) {
        memmove(chunk->nouns, chunk->nouns + 1, (CHUNK_NOUNS_MOST - 1) * sizeof *chunk->nouns);
        chunk->count--;
    }
    chunk->nouns[chunk->count++] = *noun;
}

static const uint32_t value_uses = (1u << USE_MATERIAL) | (1u << USE_COLOR) | (1u << USE_TECHNIQUE) |
                                   (1u << USE_PATTERN) | (1u << USE_FINISH) | (1u << USE_SHAPE) |
                                   (1u << USE_STYLE);

static const char *const likes[] = {"type", "style"};
static const char *const tells[] = {"advertising", "promoting", "commemorating", "depicting", "showing"};

// "Hurricane lantern green paint", "desk lift lid": a color or a lift stands before the whole of a name and
// not inside it, so behind goods it tells of a part of them.
static bool opens_feature(const struct note *note, const struct chunk *chunk, size_t at) {
    static const char *const lifts[] = {"lid", "lids", "top", "tops", "up", "off", "out"};
    static const char *const coats[] = {"paint",  "enamel", "varnish", "lacquer",
                                        "finish", "cord",   "flex",    "lining"};
    const struct noun_found *last = chunk->count ? &chunk->nouns[chunk->count - 1] : NULL;
    if (!last || last->to != at || last->part || at + 1 >= note->tokens.count) return false;
    if (token_is(&note->tokens, at, "lift")) return is_any(note, at + 1, lifts, COUNT(lifts));
    struct word_entry entry;
    struct noun_found next;
    return note->tokens.at[at].stop == STOP_NONE && word_at(note, at, 1u << USE_COLOR, &entry) == 1 &&
           !(entry.uses & (1u << USE_MATERIAL)) && noun_at(note, at + 1, &next) &&
           (!next.thing || is_any(note, at + 1, coats, COUNT(coats)));
}

// How many tokens the word at `at` takes; its noun, if it is one, is kept.
static size_t step(const struct note *note, size_t at, struct chunk *chunk) {
    struct noun_found noun;
    struct word_entry entry;
    bool is_noun = noun_at(note, at, &noun), breaks = chunk_breaks(note, at);
    if (breaks && !is_noun) return 0;
    size_t value = word_at(note, at, value_uses, &entry);
    if (value > 1 && (!is_noun || noun.to - at < value)) return value; // "milk glass" before "glass compote"
    struct noun_found next;
    bool longer = is_noun && noun.to - at > 1 && noun_at(note, at + 1, &next) && next.to > noun.to;
    if (longer && !noun.thing && next.thing) return 1; // "glass door" before "door knob"
    if (longer && note->tokens.at[noun.to - 1].stop == STOP_NONE && !next.part && !next.candidate &&
        !next.gated && next.uses & (1u << USE_THING))
        return 1; // "radio valve" before "valve tester"
    static const char *const holders[] = {"crate", "crates", "rack", "carrier", "stand", "holder", "basket"};
    bool known = longer && is_any(note, next.to - 1, holders, COUNT(holders)) &&
                 (next.thing || (next.uses & (1u << USE_THING) && !next.candidate && !next.gated));
    if (known && word_at(note, at, 1u << USE_MATERIAL, &entry) == 1)
        return 1; // "glass bottle" before "bottle crate"
    if (is_noun && noun.to - at > 1) {
        // "Wax cylinder type": what it is like
        if (!chunk->count || !is_any(note, noun.to, likes, COUNT(likes))) keep(chunk, &noun);
        return noun.to - at;
    }
    size_t particle = particle_word(note, at);
    if (particle) return particle;
    if (breaks || note->fault_word[at]) return 0;
    if (at > chunk->from && chunk->count && chunk->nouns[chunk->count - 1].to == at &&
        is_any(note, at, after_noun, COUNT(after_noun)) &&
        !(is_noun && (token_is(&note->tokens, at + 1, "x") || // "projector slides x 200"
                      (at + 1 < note->tokens.count && note->taken[at + 1] == TAKEN_COUNT))))
        return 0;
    if (opens_feature(note, chunk, at)) return 0;
    if (chunk->count && chunk->nouns[chunk->count - 1].to == at && is_any(note, at, tells, COUNT(tells)))
        return 0; // "ashtray advertising Pennard Tyres"
    static const char *const likeness[] = {"style", "type", "colored", "coloured"};
    bool form = chunk->count && token_is(&note->tokens, at + 1, "shape"); // "barometer banjo shape"
    bool vain = form || is_any(note, at, likeness, 2) || is_any(note, at + 1, likeness, COUNT(likeness));
    vain |=
        token_is(&note->tokens, at, "key") && (token_is(&note->tokens, at + 1, "wound") ||
                                               token_is(&note->tokens, at + 1, "wind")); // "clock, key wound"
    if (is_noun && !vain) keep(chunk, &noun);
    return 1;
}

// Scribbled notes put what they say behind the noun, without a stop: "pea coat navy tag size 40". There the
// run ends behind goods of the rules that a look, a figure or a name follows.
static bool is_closed(const struct note *note, const struct chunk *chunk, size_t at) {
    struct word_entry entry;
    struct noun_found next;
    if (!chunk->count || at >= note->tokens.count) return false;
    const struct noun_found *last = &chunk->nouns[chunk->count - 1];
    if (note->taken[at] == TAKEN_COUNT && last->to == at) return true; // "hymn books x12 black cloth"
    if (note->tokens.flat && note->tokens.at[at].kind == TOKEN_FIGURE && note->taken[at] == TAKEN_NOT)
        return true;
    bool known = last->thing || (last->uses & (1u << USE_THING) && !last->candidate && !last->gated);
    if (!known || last->uses & value_uses || last->part || last->to != at) return false;
    // Kettle "Harbor Pilot"
    if (token_is(&note->tokens, at, "\"") && at + 1 < note->tokens.count &&
        note->taken[at + 1] == TAKEN_VALUE)
        return true;
    if (note->taken[at] == TAKEN_VALUE || note->tokens.at[at].kind == TOKEN_FIGURE) return true;
    bool is_noun = noun_at(note, at, &next);
    if (is_noun && next.to > at + 1 && !next.part && !next.candidate) return false;
    uint32_t more = 1u << USE_THEME;
    if (note->tokens.flat && is_noun && !next.thing && (next.part || next.uses & (1u << USE_PART)))
        return true;
    if (note->tokens.flat && word_at(note, at, more, &entry) && !(is_noun && next.thing)) return true;
    return word_at(note, at, value_uses, &entry) > 0 && !(entry.uses & (1u << USE_THING) && next.thing);
}

bool chunk_at(const struct note *note, size_t i, struct chunk *chunk) {
    *chunk = (struct chunk){.from = i, .to = i, .subject = SIZE_MAX};
    size_t last = i, at = i;
    while (at < note->tokens.count) {
        chunk->cut = is_closed(note, chunk, at);
        size_t n = chunk->cut ? 0 : step(note, at, chunk);
        if (!n) break;
        for (size_t k = at; k < at + n; k++) chunk->toy |= is_toy_word(note, k);
        last = at;
        at += n;
    }
    chunk->to = at;
    if (at == i) return false;
    size_t n = word_at(note, last, 1u << USE_THEME, &chunk->theme);
    if (n && last + n == at) chunk->subject = last;
    return true;
}
