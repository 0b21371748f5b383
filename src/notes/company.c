// SPDX-License-Identifier: MIT
// Faults that are told by what was said before them: mold "and the smell to go with it", a label that
// somebody "looked for and there isn't one", "9 tapes and I counted 9".
#include <string.h>

#include "notes/any.h"
#include "notes/counts.h"
#include "notes/faults.h"
#include "notes/lacking.h"
#include "notes/traces.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// What smells, and of what.
static const char *smell_of(const char *id) {
    static const struct {
        const char *sign, *smell;
    } all[] = {{"mold", "odor-mildew"},     {"water-damage", "odor-mildew"}, {"tide-line", "odor-mildew"},
               {"pet-hair", "odor-pet"},    {"heat-damage", "odor-smoke"},   {"smoke-residue", "odor-smoke"},
               {"dust-grime", "odor-musty"}};
    for (size_t i = 0; i < COUNT(all); i++)
        if (!strcmp(all[i].sign, id)) return all[i].smell;
    return NULL;
}

// What is named before "and you can smell it", though nothing of it is a fault by itself.
static const char *source_at(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "kerosene", "paraffin", "petrol", "gasoline", "diesel", "fuel", "oil", "naphtha",
            "turps", "turpentine", "thinner", "thinners", "creosote", "gas"))
        return "odor-fuel";
    if (ANY(tokens, i, "mothballs", "mothball", "camphor", "naphthalene")) return "odor-mothball";
    if (ANY(tokens, i, "smoked", "smoker", "smokers", "cigarettes", "cigars", "smoke", "ashes", "nicotine"))
        return "odor-smoke";
    if (ANY(tokens, i, "mildew", "mold", "mould")) return "odor-mildew";
    if (ANY(tokens, i, "damp", "cellar", "basement")) return "odor-musty";
    if (ANY(tokens, i, "dog", "dogs", "cat", "cats", "mice", "horse", "horses")) return "odor-pet";
    if (ANY(tokens, i, "onions", "garlic", "spices", "pickles", "curry", "fish", "vinegar", "coffee", "beer",
            "whiskey", "wine"))
        return "odor-food";
    if (ANY(tokens, i, "perfume", "cologne", "lavender", "sachet", "sachets")) return "odor-perfume";
    return NULL;
}

// "And you can smell it", "you can still smell them": of what stands before; how many tokens from "smell" on.
static size_t smelled_at(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "smell", "smells", "smelled", "smelt") || i < 2) return 0;
    size_t at = i, whose = i + 1 + (ANY(tokens, i + 1, "of", "like") ? 1 : 0);
    while (at > 0 && ANY(tokens, at - 1, "still", "really", "definitely", "certainly")) at--;
    if (!ANY(tokens, whose, "it", "them", "that", "this", "him", "her")) return 0;
    bool can = at > 1 && ANY(tokens, at - 1, "can", "could", "will", "to", "may", "might", "you'll");
    if (!can && whose == i + 1) return 0;
    bool ends = whose + 1 >= tokens->count || tokens->at[whose + 1].stop != STOP_NONE;
    return ends || ANY(tokens, whose + 1, "across", "when", "from", "on", "as", "the", "if", "too", "and",
                       "all", "through", "every", "still", "before", "right", "a", "some", "slightly",
                       "strongly", "faintly")
               ? whose + 1 - i
               : 0;
}

// "It has the smell to go with it", "and the smell to match", "and smells of it".
static bool is_company(const struct tokens *tokens, size_t i) {
    static const char *const tails[] = {"to go with",   "to match",   "to prove it",     "that goes with",
                                        "goes with it", "which goes", "that comes with", "as well",
                                        "too",          "to suit"};
    if (ANY(tokens, i, "smells"))
        return token_phrase(tokens, i, "smells of it") || token_phrase(tokens, i, "smells it");
    return i > 0 && ANY(tokens, i - 1, "the", "a", "that") && token_first(tokens, i + 1, tails, COUNT(tails));
}

// The smell of the last fault whose words begin in [from, to) of the text.
static const char *smell_before(const struct fault_reader *r, size_t from, size_t to) {
    const struct record *record = r->note->record;
    const char *smell = NULL;
    for (size_t k = 0; k < record->flaw_count; k++) {
        const struct item_flaw *flaw = &record->flaws[k];
        const char *id = smell_of(flaw->kind->rule.id);
        if (id && flaw->span.from >= from && flaw->span.from < to) smell = id;
    }
    return smell;
}

static bool is_told(const struct record *record, const char *id) {
    for (size_t k = 0; k < record->flaw_count; k++)
        if (!strcmp(record->flaws[k].kind->rule.id, id)) return true;
    return false;
}

static void read_smell(struct fault_reader *r, size_t i) {
    const struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    size_t smelled = smelled_at(tokens, i);
    if (!ANY(tokens, i, "smell", "odor", "odour", "whiff", "pong", "smells", "smelled", "smelt") ||
        !(smelled || is_company(tokens, i)) || note->taken[i] == TAKEN_FLAW ||
        r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST))
        return;
    size_t start = tokens->at[scope_sentence_start(&r->scope, i)].from;
    const char *smell = smelled ? NULL : smell_before(r, start, tokens->at[i].from);
    // the nearest that smells: "cat hair, and stored in mothballs so it smells of them"
    for (size_t k = i; smelled && !smell && k > 0 && tokens->at[k - 1].from >= start; k--) {
        if (r->scope.stance[k - 1] & (STANCE_DENIED | STANCE_NONE_SEEN)) continue;
        smell = source_at(tokens, k - 1);
        if (!smell) smell = smell_before(r, tokens->at[k - 1].from, tokens->at[k - 1].to);
    }
    if (smell && smelled && is_told(note->record, smell)) return;
    const struct flaw *kind = smell ? ruleset_flaw(note->rules, smell) : NULL;
    if (kind) fault_add(r, kind, NULL, NULL, i, i + (smelled ? smelled : 1));
}

// "I looked for the fire label and there isn't one", "hunted for a date, there is none".
static void read_looked_for(struct fault_reader *r, size_t i) {
    static const char *const none[] = {
        "there isn't one", "there isnt one", "there is none",  "there's none",      "there wasn't one",
        "there was none",  "it isn't there", "it's not there", "couldn't find one", "isn't one"};
    static const char *const looks[] = {"look", "looked", "hunted", "searched", "looking", "hunt", "checked"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!token_is(tokens, i, "for") || i == 0 || !token_among(tokens, i - 1, looks, COUNT(looks)) ||
        !ANY(tokens, i + 1, "the", "a", "its", "any", "an") || !part_or_word_at(r, i + 1, &part))
        return;
    size_t end = scope_sentence_end(&r->scope, i), n = 0;
    for (size_t at = part.to; at < end && !n; at++)
        if ((n = token_first(tokens, at, none, COUNT(none))) != 0) part_tell_missing(r, &part, at, at + n);
}

// "And the label says 48", "with 48 on the lid": the number that whoever packed it gives; how many tokens.
static size_t label_says(const struct tokens *tokens, size_t i, int *number) {
    static const char *const who[] = {"label",   "box",    "lid",    "tin",   "bag",  "rules",
                                      "leaflet", "sheet",  "list",   "cover", "card", "tag",
                                      "booklet", "carton", "sleeve", "book"};
    static const char *const verbs[] = {"says",   "said",  "states", "lists",
                                        "claims", "calls", "wants",  "promises"};
    size_t at = i;
    while (at < tokens->count &&
           (tokens->at[at].stop == STOP_COMMA || ANY(tokens, at, "and", "but", "the", "its", "as", "what")))
        at++;
    if (!token_among(tokens, at, who, COUNT(who)) || tokens->at[at].stop != STOP_NONE) return 0;
    at++;
    if (!token_among(tokens, at, verbs, COUNT(verbs))) return 0;
    at++;
    at += ANY(tokens, at, "for", "there", "are", "exactly", "to");
    *number = degrees_number(tokens, at);
    return *number ? at + 1 - i : 0;
}

size_t company_label_says(const struct tokens *tokens, size_t i, int number) {
    int said;
    size_t n = label_says(tokens, i, &said);
    return n && said == number ? n : 0;
}

// "I counted 24 and the lid says 25": not complete, whatever the word.
static void tell_short(struct fault_reader *r, size_t i, size_t to, int lacks) {
    const struct flaw *whole = ruleset_flaw(r->note->rules, "complete-counted");
    const struct flaw *kind = ruleset_flaw(r->note->rules, "missing-pieces");
    struct record *record = r->note->record;
    size_t kept = 0;
    bool told = false;
    for (size_t k = 0; k < record->flaw_count; k++) {
        told |= record->flaws[k].kind == kind;
        if (record->flaws[k].kind != whole) record->flaws[kept++] = record->flaws[k];
    }
    record->flaw_count = kept;
    if (!told && kind) fault_add(r, kind, NULL, NULL, i, to)->count = lacks;
}

// "12 tapes and I counted 12", "28 tiles, counted them, 28": the same number twice.
static void read_counted(struct fault_reader *r, size_t i) {
    enum { BACK = 6 };
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "counted", "count") || i < 3) return;
    size_t at = i + 1;
    while (tokens->count > at &&
           (tokens->at[at].stop == STOP_COMMA || ANY(tokens, at, "them", "all", "em", "twice")))
        at++;
    int number = degrees_number(tokens, at);
    bool ends = at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE;
    size_t noun = at + 1 + (!ends && tokens->at[at + 1].one != tokens->at[at + 1].fold); // "40 cards"
    int whole = 0;
    size_t said = number > 2 ? label_says(tokens, noun, &whole) : 0;
    const struct flaw *told =
        said && whole == number ? ruleset_flaw(r->note->rules, "complete-counted") : NULL;
    for (size_t k = 0; k < r->note->record->flaw_count; k++)
        if (r->note->record->flaws[k].kind == told) told = NULL;
    if (told) fault_add(r, told, NULL, NULL, i, noun + said);
    if (said && whole > number) tell_short(r, i, noun + said, whole - number);
    if (number < 3 || !ends || said) return;
    for (size_t back = 1; back <= BACK && back <= i; back++) {
        if (tokens->at[i - back].stop >= STOP_SENTENCE) return;
        if (degrees_number(tokens, i - back) != number) continue;
        const struct flaw *kind = ruleset_flaw(r->note->rules, "complete-counted");
        const struct record *record = r->note->record;
        for (size_t k = 0; k < record->flaw_count; k++)
            if (!strncmp(record->flaws[k].kind->rule.id, "missing-", strlen("missing-"))) return;
        if (kind) fault_add(r, kind, NULL, NULL, i, at + 1);
        return;
    }
}

// "I counted the men, 24, so they're all there", "counted twice, nothing missing": that it was counted, and
// what came of it, in one sentence.
static void read_counted_whole(struct fault_reader *r, size_t i) {
    static const char *const wholes[] = {
        "all there",       "all here",         "all present",     "is complete",       "it's complete",
        "are complete",    "they're complete", "nothing missing", "none missing",      "nothing is missing",
        "none is missing", "none are missing", "not one missing", "not a one missing", "not a piece missing",
        "it is all here",  "all in there",     "all accounted"};
    static const char *const doubts[] = {"should", "think", "hope",     "guess",    "not",
                                         "aren't", "isn't", "seems",    "supposed", "nearly",
                                         "almost", "if",    "probably", "believe",  "maybe"};
    enum { NOUN_MOST = 3, BACK = 3 };
    const struct tokens *tokens = &r->note->tokens;
    const struct record *record = r->note->record;
    const uint16_t off = STANCE_DENIED | STANCE_UNKNOWN | STANCE_PLANNED | STANCE_OTHER;
    if (!ANY(tokens, i, "counted", "counting") || (r->scope.stance[i] & off) ||
        r->note->taken[i] == TAKEN_ASIDE)
        return;
    for (size_t back = 1; back <= BACK && back <= i; back++) {
        if (tokens->at[i - back].stop >= STOP_SENTENCE) break;
        if (ANY(tokens, i - back, "not", "never", "nobody", "haven't", "if", "didn't", "hasn't", "without",
                "been"))
            return;
    }
    size_t end = scope_sentence_end(&r->scope, i), to = 0;
    for (size_t at = i + 1; at < end && !to; at++) {
        if (token_among(tokens, at, doubts, COUNT(doubts))) return;
        size_t n = token_first(tokens, at, wholes, COUNT(wholes));
        if (n) to = at + n;
        if (n || !ANY(tokens, at, "all", "every")) continue;
        size_t verb = at + 1; // "and all sixty are here"
        while (verb < end && verb < at + 2 + NOUN_MOST && !ANY(tokens, verb, "is", "are", "were", "was"))
            verb++;
        if (verb + 1 < end && ANY(tokens, verb, "is", "are", "were", "was") &&
            ANY(tokens, verb + 1, "here", "there", "present"))
            to = verb + 2;
    }
    if (!to) return;
    for (size_t k = 0; k < record->flaw_count; k++) {
        const char *id = record->flaws[k].kind->rule.id;
        if (!strcmp(id, "missing-pieces") || !strcmp(id, "missing-mate") ||
            !strncmp(id, "complete", strlen("complete")))
            return; // "no box" takes nothing from what was counted
    }
    const struct flaw *kind = ruleset_flaw(r->note->rules, "complete-counted");
    if (kind) fault_add(r, kind, NULL, NULL, i, to);
}

// "All 24 pieces", "all of the 60 tiles in the box": nobody gives the number who has not counted.
static void read_all_of(struct fault_reader *r, size_t i) {
    static const char *const pieces[] = {"pieces", "pcs",    "cards",   "tiles",    "checkers", "counters",
                                         "men",    "stones", "marbles", "dominoes", "blocks",   "pegs",
                                         "tokens", "discs",  "disks",   "dominos",  "draughts", "chessmen"};
    const struct tokens *tokens = &r->note->tokens;
    const struct record *record = r->note->record;
    if (!ANY(tokens, i, "all") || r->note->taken[i] == TAKEN_FLAW ||
        (i > 0 && ANY(tokens, i - 1, "not", "nearly", "almost", "if", "are", "supposedly", "should")))
        return;
    size_t at = i + 1;
    while (ANY(tokens, at, "of", "the")) at++;
    bool ends = at + 2 >= tokens->count || tokens->at[at + 2].stop != STOP_NONE ||
                (ANY(tokens, at + 2, "in") && ANY(tokens, at + 3, "the", "its", "a", "their"));
    if (degrees_number(tokens, at) < 3 || !token_among(tokens, at + 1, pieces, COUNT(pieces)) || !ends)
        return;
    for (size_t k = 0; k < record->flaw_count; k++) {
        const char *id = record->flaws[k].kind->rule.id;
        if (!strcmp(id, "missing-pieces") || !strncmp(id, "complete", strlen("complete"))) return;
    }
    const struct flaw *kind = ruleset_flaw(r->note->rules, "complete-counted");
    if (kind) fault_add(r, kind, NULL, NULL, i, at + 2);
}

void read_sought_parts(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) read_looked_for(r, i);
}

void read_company(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        read_smell(r, i);
        read_counted(r, i);
        read_counted_whole(r, i);
        read_all_of(r, i);
    }
}
