// SPDX-License-Identifier: MIT
// "Cleaned the rust off", "there was a stain but I got it all out", "sticker on the lid. It came off with
// oil": what can be taken off and was is no more. What only came off mostly, came back, or is still to be
// taken off stays.
#include <string.h>

#include "notes/any.h"
#include "notes/scope.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { SPAN_MOST = 8 }; // tokens from the verb to its "off"

static bool is_verb(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "cleaned",  "cleaning", "cleared", "washed",  "wiped",  "scrubbed", "polished", "brushed", "scraped",
        "soaked",   "dusted",   "rubbed",  "steamed", "boiled", "hoovered", "vacuumed", "peeled",  "picked",
        "sanded",   "buffed",   "got",     "took",    "taken",  "lifted",   "sponged",  "flushed", "rinsed",
        "bleached", "aired",    "came",    "come",    "hosed",  "shifted"};
    return tokens->at[i].kind == TOKEN_WORD && token_among(tokens, i, words, COUNT(words));
}

static bool is_particle(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"off", "out", "away"};
    return token_among(tokens, i, words, COUNT(words));
}

// Of what lies on the thing or smells; a chip that "came off" is none of it.
static bool is_removable(const struct flaw *kind) {
    static const char *const ids[] = {
        "stain",     "rust",          "tarnish",          "verdigris",    "yellowing",
        "ring-mark", "tide-line",     "storage-spots",    "cloudy-glass", "sweat-stain",
        "foxing",    "owner-name",    "writing-inside",   "patina",       "dye-bleed",
        "pilling",   "screen-damage", "battery-corrosion"};
    if (kind->class == CLASS_DIRT || kind->class == CLASS_ODOR) return true;
    for (size_t i = 0; i < COUNT(ids); i++)
        if (text_same(kind->rule.id, ids[i])) return true;
    return false;
}

static bool can_be_removed(const struct scope *s, size_t i) {
    const struct phrase_hits *hits = &s->note->hits;
    for (size_t k = 0; k < hits->count && hits->at[k].from <= i; k++)
        if (hits->at[k].to > i && is_removable(hits->at[k].flaw)) return true;
    return false;
}

static bool is_coming_back(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"came", "come", "comes", "coming", "grew", "creeping", "crept"};
    return token_is(tokens, i, "back") && i > 0 && token_among(tokens, i - 1, words, COUNT(words));
}

// "None has come back", "hasn't returned", "no trace left".
static bool is_denied(const struct tokens *tokens, size_t i) {
    static const char *const nots[] = {"no",    "none",    "not",     "never",   "hasn't",
                                       "hasnt", "haven't", "nothing", "without", "didn't"};
    enum { FAR = 4 };
    for (size_t at = i; at > 0 && i - at < FAR && tokens->at[at - 1].stop == STOP_NONE; at--)
        if (token_among(tokens, at - 1, nots, COUNT(nots))) return true;
    return false;
}

// "Needs the rust cleaned off", "tried to get it off", "most of it came out", "it came back".
bool scope_left(const struct scope *s, size_t from, size_t verb, size_t to) {
    static const char *const before[] = {
        "needs",  "need",  "wants",    "want",     "could",   "should", "would", "will",   "might", "may",
        "can",    "can't", "cannot",   "cant",     "didn't",  "didnt",  "not",   "never",  "won't", "wont",
        "hasn't", "tried", "wouldn't", "couldn't", "hoping",  "if",     "until", "unless", "try",   "hardly",
        "where",  "when",  "as",       "barely",   "haven't", "havent", "half",  "from"};
    static const char *const shares[] = {"most",   "some",   "half",   "part",   "much",
                                         "mostly", "partly", "nearly", "almost", "bit",
                                         "worst",  "what",   "little", "few",    "several"};
    static const char *const again[] = {"returned", "returns", "again", "still",  "left",  "ghost",
                                        "shadow",   "remains", "trace", "behind", "faint", "leaving"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = from; i < verb; i++)
        if (token_among(tokens, i, before, COUNT(before))) return true;
    if (verb > 0 && ANY(tokens, verb - 1, "doesn't", "doesnt", "don't", "dont") &&
        ANY(tokens, verb, "come", "wash", "rub", "wipe", "scrub", "lift", "polish", "clean", "brush", "soak"))
        return true; // "a crust that doesn't come off"
    for (size_t i = from; i < to; i++)
        if (token_among(tokens, i, shares, COUNT(shares))) return true;
    for (size_t i = to; i < to + 3 && i < tokens->count && tokens->at[i - 1].stop == STOP_NONE; i++)
        if (ANY(tokens, i, "most", "some", "half", "much")) return true; // "wiped off most of it"
    for (size_t i = to, end = scope_sentence_end(s, verb); i <= end && i < tokens->count; i++)
        if ((token_among(tokens, i, again, COUNT(again)) || is_coming_back(tokens, i)) &&
            !is_denied(tokens, i))
            return true;
    return false;
}

// "Cord perished, battery rusted but cleaned": what is told of the cord stands by itself.
static bool is_state_before(const struct scope *s, size_t comma) {
    if (!comma || !s->fault[comma - 1]) return false;
    const char *word = s->note->tokens.at[comma - 1].fold;
    size_t n = strlen(word);
    return n > 4 && !strcmp(word + n - 2, "ed");
}

// The run of faults that ends at token `i`, with what lists them.
static size_t run_start(const struct scope *s, size_t i) {
    static const char *const joins[] = {"and", "or", "&", ","};
    size_t from = i;
    for (size_t at = i; at > 0; at--) {
        if (token_is(&s->note->tokens, at - 1, ",") && is_state_before(s, at - 1)) break;
        if (s->fault[at - 1])
            from = at - 1;
        else if (!token_among(&s->note->tokens, at - 1, joins, COUNT(joins)))
            break;
    }
    return from;
}

// "Cleaned the rust off the hinge": the fault stands between.
static bool read_between(struct scope *s, size_t verb) {
    const struct tokens *tokens = &s->note->tokens;
    size_t last = 0;
    for (size_t i = verb + 1; i < tokens->count && i <= verb + SPAN_MOST; i++) {
        if (tokens->at[i - 1].stop != STOP_NONE) return false;
        if (s->fault[i] && !is_particle(tokens, i)) last = i;
        if (!is_particle(tokens, i)) continue;
        if (!last || !can_be_removed(s, last)) return false;
        if (scope_left(s, scope_clause_start(s, verb), verb, i + 1)) return false;
        scope_mark(s, verb, i + 1, STANCE_PAST, verb);
        return true;
    }
    return false;
}

// "Got it all off", "it has all come out": between the verb and "off" stand only words for what is spoken of.
static size_t particle_behind(const struct tokens *tokens, size_t verb) {
    static const char *const words[] = {"it",   "them",     "that",   "those", "all",        "the",
                                        "lot",  "em",       "'em",    "right", "clean",      "every",
                                        "bit",  "straight", "easily", "both",  "everything", "completely",
                                        "well", "pretty",   "of"};
    size_t i = verb + 1;
    while (i < tokens->count && tokens->at[i - 1].stop == STOP_NONE &&
           token_among(tokens, i, words, COUNT(words)))
        i++;
    return i < tokens->count && tokens->at[i - 1].stop == STOP_NONE && is_particle(tokens, i) ? i : 0;
}

// The last fault before the verb in its sentence, or in the one before where that holds none; its end.
static size_t fault_before(const struct scope *s, size_t verb) {
    size_t start = scope_sentence_start(s, verb);
    for (size_t i = verb; i > start; i--)
        if (s->fault[i - 1]) return i;
    if (!start) return 0;
    for (size_t i = start, first = scope_sentence_start(s, start - 1); i > first; i--)
        if (s->fault[i - 1]) return i;
    return 0;
}

// "Came out of the loft" tells where the thing is from.
static bool is_end(const struct tokens *tokens, size_t particle) {
    static const char *const words[] = {"with", "in",         "when", "after", "easily", "fine",   "nicely",
                                        "and",  "but",        "now",  "last",  "ok",     "okay",   "using",
                                        "by",   "completely", "well", "so",    "no",     "without"};
    return particle + 1 >= tokens->count || tokens->at[particle + 1].stop != STOP_NONE ||
           token_among(tokens, particle + 1, words, COUNT(words));
}

// "Lock rusty. The handle has come off": of the handle, which the sentence names before the verb.
static bool names_its_own(const struct scope *s, size_t verb) {
    static const char *const words[] = {
        "it",    "it's", "that",     "they",    "them",   "this",    "these",      "those", "all",
        "has",   "have", "had",      "since",   "now",    "which",   "and",        "but",   "so",
        "both",  "just", "also",     "then",    "easily", "even",    "everything", "he",    "she",
        "i",     "we",   "somebody", "someone", "can",    "would",   "will",       "did",   "the",
        "whole", "lot",  "it'd",     "it'll",   "been",   "luckily", "thankfully", "soon"};
    const struct tokens *tokens = &s->note->tokens;
    if (!ANY(tokens, verb, "came", "come")) return false;
    for (size_t i = scope_sentence_start(s, verb); i < verb; i++)
        if (tokens->at[i].kind == TOKEN_WORD && !token_among(tokens, i, words, COUNT(words))) return true;
    return false;
}

static void read_behind(struct scope *s, size_t verb) {
    static const char *const shares[] = {"every", "bit"};
    const struct tokens *tokens = &s->note->tokens;
    size_t particle = particle_behind(tokens, verb);
    if (!particle || !is_end(tokens, particle) || (s->fault[verb] && s->fault[particle])) return;
    size_t to = fault_before(s, verb);
    if (!to || !can_be_removed(s, to - 1)) return;
    if (to <= scope_sentence_start(s, verb) && names_its_own(s, verb)) return;
    bool joined = verb > 2 && ANY(tokens, verb, "come", "came") &&
                  ANY(tokens, verb - 1, "has", "have", "and") &&
                  (token_is(tokens, verb - 1, "and") || token_is(tokens, verb - 2, "and"));
    if (joined && to > 1 && ANY(tokens, to - 2, "is", "are", "was", "bit", "very", "all", "badly"))
        return; // "mesh is rusty and has come away"
    size_t from = scope_clause_start(s, verb);
    bool every = token_among(tokens, verb + 1, shares, 1); // "every bit of it"
    if (scope_left(s, from, verb, every ? verb : particle + 1)) return;
    scope_mark(s, run_start(s, to), to, STANCE_PAST, verb);
    scope_mark(s, verb, particle + 1, STANCE_PAST, verb); // no part came off
}

// "I scraped it with a spoon and it came up clean", "gave it a rub": what whoever sells did to see or to
// clean, and not what the thing suffered. "I scratched it moving house" is damage.
static void read_cleaning(struct scope *s, size_t verb) {
    static const char *const acts[] = {"scraped", "rubbed",  "buffed",    "polished", "brushed", "wiped",
                                       "picked",  "chipped", "scratched", "sanded",   "scoured", "washed",
                                       "soaked",  "steamed", "boiled",    "oiled",    "greased", "tapped"};
    static const char *const rough[] = {"chipped", "scratched", "sanded"};
    static const char *const persons[] = {"i", "i've", "i'd", "we", "we've", "ive"};
    static const char *const between[] = {"have", "had",  "just",   "even",    "only",
                                          "also", "wire", "gently", "lightly", "hand"};
    static const char *const tools[] = {"brush", "wool",  "spoon", "cloth", "knife",  "nail", "thumbnail",
                                        "coin",  "blade", "rag",   "pad",   "sponge", "off",  "away"};
    enum { FAR = 8 };
    const struct tokens *tokens = &s->note->tokens;
    if (!s->fault[verb] || !token_among(tokens, verb, acts, COUNT(acts))) return;
    const struct phrase_hits *hits = &s->note->hits;
    for (size_t i = 0; i < hits->count; i++) // "I've soaked the head and it still moves"
        if (hits->at[i].from == verb && hits->at[i].near) return;
    size_t at = verb;
    while (at > 0 && token_among(tokens, at - 1, between, COUNT(between))) at--;
    if (!at || !token_among(tokens, at - 1, persons, COUNT(persons))) return;
    bool tool = !token_among(tokens, verb, rough, COUNT(rough));
    for (size_t i = verb + 1; i < tokens->count && i < verb + FAR && !tool; i++) {
        if (tokens->at[i - 1].stop >= STOP_CLAUSE) break;
        tool = token_among(tokens, i, tools, COUNT(tools));
    }
    if (tool) scope_mark(s, verb, verb + 1, STANCE_OTHER, at - 1);
}

// "Emptied the crumbs", "swept out the dust".
static void read_emptied(struct scope *s, size_t verb) {
    static const char *const acts[] = {"emptied", "swept", "hoovered", "vacuumed", "shook",
                                       "tipped",  "blew",  "cleared",  "rinsed",   "dusted"};
    static const char *const between[] = {"out", "off", "away", "all", "of",
                                          "the", "any", "its",  "old", "some"};
    const struct tokens *tokens = &s->note->tokens;
    if (!token_among(tokens, verb, acts, COUNT(acts))) return;
    size_t at = verb + 1;
    while (tokens->at[at - 1].stop == STOP_NONE && token_among(tokens, at, between, COUNT(between))) at++;
    if (at == verb + 1 || at >= tokens->count || !s->fault[at] || !can_be_removed(s, at)) return;
    if (!scope_left(s, scope_clause_start(s, verb), verb, at + 1))
        scope_mark(s, verb, at + 1, STANCE_PAST, verb);
}

void scope_removed(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i + 1 < tokens->count; i++) {
        if (is_verb(tokens, i) && !read_between(s, i)) read_behind(s, i);
        read_cleaning(s, i);
        read_emptied(s, i);
    }
}
