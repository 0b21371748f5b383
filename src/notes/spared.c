// SPDX-License-Identifier: MIT
// "Usually the lid is missing on these", "12 inches tall without the handle", "it was missing but I've found
// it", "made without a lid": words for a lack that say nothing of a lack of this thing.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/scope.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static const char *const lacks[] = {"missing", "lost", "gone", "lacking", "absent", "without", "no", "lack"};

// One of `phrases` between the tokens [from, to); where it stands, `to` if none does.
static size_t find(const struct tokens *tokens, size_t from, size_t to, const char *const *phrases,
                   size_t count) {
    for (size_t i = from; i < to; i++)
        if (token_longest(tokens, i, phrases, count)) return i;
    return to;
}

// Up to the next comma or stop.
static size_t stretch_end(const struct tokens *tokens, size_t i) {
    while (i < tokens->count && tokens->at[i].stop == STOP_NONE) i++;
    return i;
}

static size_t stretch_start(const struct tokens *tokens, size_t i) {
    while (i > 0 && tokens->at[i - 1].stop == STOP_NONE) i--;
    return i;
}

// "The lid is nearly always missing": of things of its sort; "and it is here too" brings it back.
static bool read_habit(struct scope *s, size_t i) {
    static const char *const habits[] = {"usually",
                                         "generally",
                                         "normally",
                                         "often",
                                         "always",
                                         "commonly",
                                         "typically",
                                         "invariably",
                                         "frequently",
                                         "nine times out of ten",
                                         "more often than not",
                                         "most have",
                                         "most of them have",
                                         "most of these have",
                                         "so many have",
                                         "many have",
                                         "most are",
                                         "people often",
                                         "most people",
                                         "others have",
                                         "mostly come",
                                         "so often",
                                         "tend to be",
                                         "tend to get",
                                         "tends to be",
                                         "tends to get",
                                         "easily"};
    static const char *const same[] = {
        "here too",          "this one too",   "this one as well", "no exception",   "no different",
        "same here",         "same with this", "likewise",         "on this too",    "as here",
        "this is no",        "so is this",     "as with this",     "and it is here", "this included",
        "this one included", "and is here",    "on this one too",  "mine too"};
    static const char *const own[] = {"been", "had", "was", "were", "has", "i've", "it's"};
    const struct tokens *tokens = &s->note->tokens;
    static const char *const kinds[] = {"like this", "like these", "of this type", "of this age",
                                        "you see",   "i've seen",  "i see",        "nowadays",
                                        "this old",  "of its age", "that survive"};
    if (!token_may_open(tokens, i, habits, COUNT(habits), sizeof *habits) && !token_is(tokens, i, "most"))
        return false;
    if (token_is(tokens, i, "others") && i > 0 && ANY(tokens, i - 1, "the", "of", "some", "two", "few"))
        return false; // "some of the others have gone dark": of these
    size_t n = token_longest(tokens, i, habits, COUNT(habits));
    if (!n && token_is(tokens, i, "most") && !token_is(tokens, i + 1, "of") &&
        find(tokens, i, stretch_end(tokens, i), kinds, COUNT(kinds)) < stretch_end(tokens, i))
        n = 1;
    if (!n || (i > 0 && AMONG(tokens, i - 1, own) && !token_is(tokens, i + n, "missing")) ||
        (i > 0 && ANY(tokens, i - 1, "not", "has", "had", "been")) || AMONG(tokens, i + n, own))
        return true;
    size_t from = stretch_start(tokens, i), to = stretch_end(tokens, i), end = scope_sentence_end(s, i);
    size_t lack = find(tokens, i, to, lacks, COUNT(lacks));
    if (lack == to || find(tokens, i, end, same, COUNT(same)) < end) return true;
    for (size_t k = lack; k < to; k++)
        if (k > lack && ANY(tokens, k, "but", "here", "this")) to = k;
    scope_mark(s, from, to, STANCE_OTHER, i);
    return true;
}

// "Was missing but I've found it", "I thought the key was lost, then it turned up".
static bool read_found(struct scope *s, size_t i) {
    static const char *const gone[] = {"missing", "lost", "gone", "mislaid", "absent", "adrift"};
    static const char *const were[] = {"afraid", "assumed", "feared", "worried", "believed", "said", "think",
                                       "was",    "were",    "been",   "went",    "thought",  "had",  "gone"};
    static const char *const found[] = {"found it",
                                        "found them",
                                        "found the",
                                        "turned up",
                                        "it was in",
                                        "they were in",
                                        "came to light",
                                        "got it back",
                                        "tracked it down",
                                        "tracked one down",
                                        "here it is",
                                        "found since",
                                        "has one now",
                                        "has got one now",
                                        "i've put one",
                                        "i've fitted one",
                                        "now has one",
                                        "got one now",
                                        "it has one now",
                                        "i fitted one",
                                        "i made one",
                                        "i found one",
                                        "has them now",
                                        "i bought one",
                                        "has now",
                                        "since found",
                                        "have it now",
                                        "it's turned up",
                                        "was found",
                                        "were found",
                                        "found in",
                                        "it was under",
                                        "it was behind",
                                        "it was inside",
                                        "i have it now",
                                        "now found",
                                        "now here",
                                        "it's here now",
                                        "has been found",
                                        "have been found",
                                        "it's back",
                                        "back where",
                                        "but it is inside",
                                        "but it's inside",
                                        "but they are inside",
                                        "but they're inside",
                                        "but it isn't",
                                        "but it's not",
                                        "but they aren't",
                                        "it isn't",
                                        "they aren't",
                                        "but it was just",
                                        "it's just tucked",
                                        "but it's there",
                                        "but it's here",
                                        "but they're here",
                                        "but they're there",
                                        "but they are there",
                                        "but they are here",
                                        "but it is there",
                                        "but it is here",
                                        "but there it is",
                                        "but it's in",
                                        "but it was",
                                        "found again",
                                        "been reunited",
                                        "is back",
                                        "are back"};
    static const char *const nots[] = {"never",  "not", "haven't", "hasn't", "can't", "couldn't",
                                       "didn't", "if",  "until",   "till",   "yet",   "nowhere"};
    enum { BACK = 5 };
    const struct tokens *tokens = &s->note->tokens;
    if (!AMONG(tokens, i, gone) && !token_is(tokens, i, "no")) return false;
    bool none = token_is(tokens, i, "no") && i > 0 && token_is(tokens, i - 1, "had");
    if (!AMONG(tokens, i, gone) && !none) return true;
    size_t start = scope_sentence_start(s, i), end = scope_sentence_end(s, i);
    bool past = false;
    for (size_t k = i > start + BACK ? i - BACK : start; k < i; k++) past |= AMONG(tokens, k, were);
    if (!past) return true;
    size_t at = find(tokens, i + 1, end, found, COUNT(found));
    if (at == end) return true;
    for (size_t k = at > i + 3 ? at - 3 : i + 1; k < at; k++)
        if (AMONG(tokens, k, nots) && !(ANY(tokens, k, "until", "till") && past)) return true;
    scope_mark(s, start, none ? at : i + 1, STANCE_OTHER, i);
    return true;
}

// "Made without a lid", "these never had a key", "I can post it without the stand", "works without the cover
// too", "12 inches tall without the handle".
static bool is_of_use(const struct scope *s, size_t i) {
    static const char *const made[] = {"made", "designed", "built",        "issued",   "born",
                                       "cast", "intended", "manufactured", "produced", "meant"};
    static const char *const able[] = {"can",  "could", "may",     "might", "if",
                                       "able", "happy", "whether", "tried", "even"};
    static const char *const too[] = {"too",       "as well",   "if you",  "if preferred", "if need be",
                                      "if needed", "as easily", "equally", "just as"};
    static const char *const sizes[] = {"tall",     "high",   "wide",   "long",     "across", "deep",
                                        "measures", "stands", "weighs", "diameter", "height", "length",
                                        "width",    "heavy",  "weight", "capacity"};
    const struct tokens *tokens = &s->note->tokens;
    size_t from = stretch_start(tokens, i), to = stretch_end(tokens, i);
    static const char *const so[] = {"never issued with",
                                     "as they never had",
                                     "never had any",
                                     "never had one",
                                     "never had them",
                                     "as made",
                                     "as issued",
                                     "as designed",
                                     "as built",
                                     "as it's a",
                                     "as they were",
                                     "as is usual",
                                     "as usual with",
                                     "as usual for",
                                     "as normal",
                                     "by design",
                                     "made that way",
                                     "as they come",
                                     "as was usual",
                                     "as they all",
                                     "as always with",
                                     "as intended",
                                     "ever fitted",
                                     "ever made for it",
                                     "ever supplied",
                                     "goes over your head",
                                     "goes over the head",
                                     "slips over your head",
                                     "slips over the head",
                                     "slips on over",
                                     "goes on over",
                                     "just goes over",
                                     "slip over your head",
                                     "pulls on over",
                                     "fits over your head",
                                     "fits over the head"};
    if (i > 0 && AMONG(tokens, i - 1, made)) return true;
    for (size_t k = 0; k < s->note->hits.count; k++) // "no dog smell, we never had one"
        if (s->note->hits.at[k].from > i && s->note->hits.at[k].from < i + 3 &&
            s->note->hits.at[k].flaw->form != ABSENCE)
            return false;
    size_t end = scope_sentence_end(s, i);
    if (find(tokens, i + 1, i + 9 < end ? i + 9 : end, so, COUNT(so)) < (i + 9 < end ? i + 9 : end))
        return true;
    if (token_is(tokens, i, "no")) return false;
    for (size_t k = from; k < i; k++)
        if (ANY(tokens, k, "photo", "photos", "picture", "pictures") &&
            ANY(tokens, k + 1, "shows", "show", "is", "are"))
            return true;
    for (size_t k = from; k < i; k++)
        if (AMONG(tokens, k, able)) return true;
    size_t behind = find(tokens, i + 1, to < tokens->count ? to + 1 : to, too, COUNT(too));
    if (behind < to && !ANY(tokens, from, "sold", "selling")) return true;
    if (i > 0 && ANY(tokens, i - 1, "comes", "come", "came", "sold", "selling", "sells", "is", "are", "it's",
                     "offered", "going", "goes", "and", "but"))
        return false; // "9 inches tall and comes without the lid"
    bool size = false, figure = false;
    for (size_t k = from; k < to; k++) {
        size |= AMONG(tokens, k, sizes);
        figure |= s->note->taken[k] == TAKEN_MEASURE || tokens->at[k].kind == TOKEN_FIGURE;
        if (k < i && s->note->taken[k] == TAKEN_TYPE) size = false;
    }
    return size && figure;
}

// "6 in without the handle": right behind a figure with its unit.
static bool is_behind_measure(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    return i > 1 && tokens->at[i - 1].stop == STOP_NONE && !token_is(tokens, i, "no") &&
           ANY(tokens, i - 1, "in", "inch", "inches", "cm", "mm", "\"", "ft", "feet", "high", "tall", "long",
               "wide", "across", "lb", "lbs", "oz", "pounds") &&
           (tokens->at[i - 2].kind == TOKEN_FIGURE || degrees_number(tokens, i - 2) > 0 ||
            s->note->taken[i - 2] == TAKEN_MEASURE);
}

static bool read_use(struct scope *s, size_t i) {
    static const char *const cues[] = {"without", "w/o", "minus", "excluding", "less", "no"};
    const struct tokens *tokens = &s->note->tokens;
    if (!AMONG(tokens, i, cues)) return false;
    size_t from =
        i > 0 && token_is(tokens, i, "no") && ANY(tokens, i - 1, "there's", "theres", "has") ? i - 1 : i;
    if (is_behind_measure(s, i) || is_of_use(s, i))
        scope_mark(s, from, stretch_end(tokens, i), STANCE_OTHER, i);
    return true;
}

static bool read_never(struct scope *s, size_t i) {
    static const char *const sorts[] = {"these never had",
                                        "they never had",
                                        "this model never had",
                                        "this type never had",
                                        "this sort never had",
                                        "these don't have",
                                        "these models never had",
                                        "this model had no",
                                        "these had no",
                                        "this kind never had",
                                        "these never came with",
                                        "they never came with",
                                        "this pattern never had",
                                        "this type had no",
                                        "this sort has no",
                                        "this type has no",
                                        "they were sold without",
                                        "these were sold without",
                                        "they came without",
                                        "no call for",
                                        "no need for",
                                        "no need of",
                                        "doesn't need",
                                        "does not need",
                                        "don't need",
                                        "has no need of",
                                        "needs no",
                                        "need no",
                                        "doesn't take a",
                                        "doesn't want a",
                                        "doesn't use a",
                                        "doesn't require",
                                        "never needed",
                                        "never took a",
                                        "never meant to have",
                                        "not meant to have",
                                        "not supposed to have",
                                        "isn't meant to have",
                                        "isn't supposed to have",
                                        "meant to have no",
                                        "shouldn't have",
                                        "not designed to have"};
    const struct tokens *tokens = &s->note->tokens;
    static const char *const own[] = {"never had a", "never had an", "never had any", "never took a"};
    if (!token_may_open(tokens, i, sorts, COUNT(sorts), sizeof *sorts) &&
        !token_may_open(tokens, i, own, COUNT(own), sizeof *own) && !token_is(tokens, i, "no"))
        return false;
    bool mine_too = false;
    for (size_t k = stretch_start(tokens, i); k < i; k++)
        mine_too |= ANY(tokens, k, "i", "we", "i've", "we've", "me");
    static const char *const needed[] = {"needed", "required", "necessary", "wanted", "need"};
    static const char *const mine[] = {
        "when i", "when it came", "when we", "when they came", "with me",         "in my time", "since i",
        "that i", "as long as",   "while i", "in the time",    "to my knowledge", "for it"};
    size_t n = token_longest(tokens, i, sorts, COUNT(sorts)), to = stretch_end(tokens, i);
    if (!n && !mine_too) n = token_longest(tokens, i, own, COUNT(own)); // made so, as far as anyone says
    if (n && find(tokens, i, to, mine, COUNT(mine)) == to) scope_mark(s, i, to, STANCE_OTHER, i);
    if (!token_is(tokens, i, "no")) return true; // "no lid, strap or key needed": the whole list
    size_t end = scope_clause_end(s, i);
    for (size_t k = i + 1; k < end && k < i + 9; k++)
        if (AMONG(tokens, k, needed) && !ANY(tokens, k - 1, "is", "are", "but", "you", "i", "we", "they"))
            scope_mark(s, i, k + 1, STANCE_OTHER, i);
    return true;
}

// "Needs a screw tightening": the rules know it as a fault of another kind.
static bool names_fault(const struct note *note, size_t from, size_t to) {
    for (size_t i = 0; i < note->hits.count; i++)
        if (note->hits.at[i].from < to && note->hits.at[i].to > from &&
            note->hits.at[i].flaw->form != ABSENCE)
            return true;
    return false;
}

// "Needs a strap replacing": the strap is there. "A string", "a lining" are no such word.
static bool read_work(struct scope *s, size_t i) {
    static const char *const needs[] = {"needs", "need", "wants", "want", "could do with", "requires"};
    static const char *const things[] = {
        "string",  "spring",  "ring",     "wing",     "lining",   "bearing",   "casing",
        "housing", "fitting", "opening",  "mounting", "bushing",  "awning",    "covering",
        "coating", "earring", "king",     "herring",  "cutting",  "something", "anything",
        "bring",   "going",   "coupling", "webbing",  "moulding", "molding",   "padding",
        "rigging", "setting", "backing",  "binding",  "edging",   "piping"};
    const struct tokens *tokens = &s->note->tokens;
    if (!token_may_open(tokens, i, needs, COUNT(needs), sizeof *needs)) return false;
    size_t n = token_longest(tokens, i, needs, COUNT(needs));
    if (!n || !ANY(tokens, i + n, "a", "an", "the", "its", "one", "two", "some", "new")) return true;
    for (size_t k = i + n + 2; k < i + n + 5 && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE;
         k++) {
        size_t size = strlen(tokens->at[k].fold);
        bool done = ANY(tokens, k, "cleaned", "fixed", "replaced", "sewn", "glued", "tightened", "oiled",
                        "mended", "resewn");
        if (!done &&
            (size < 6 || !text_same(tokens->at[k].fold + size - 3, "ing") || AMONG(tokens, k, things)))
            continue;
        if (!names_fault(s->note, i, k)) scope_mark(s, i, k, STANCE_OTHER, i);
        return true;
    }
    return true;
}

// "Everything but the cord is metal": what is said of the rest is no lack.
static bool read_rest(struct scope *s, size_t i) {
    static const char *const rests[] = {"everything but",       "everything except", "everything bar",
                                        "all but the",          "all except the",    "everything apart from",
                                        "everything except for"};
    const struct tokens *tokens = &s->note->tokens;
    if (!token_may_open(tokens, i, rests, COUNT(rests), sizeof *rests)) return false;
    size_t n = token_longest(tokens, i, rests, COUNT(rests)), to = stretch_end(tokens, i);
    for (size_t k = i + n + 1; n && k < to && k < i + n + 6; k++)
        if (ANY(tokens, k, "is", "are", "was", "were", "works", "has", "have", "looks", "moves")) {
            if (!ANY(tokens, k + 1, "there", "here", "present", "included", "with"))
                scope_mark(s, i, k, STANCE_OTHER, i);
            return true;
        }
    return true;
}

// "If the key is lost you can force it".
static bool read_if(struct scope *s, size_t i) {
    static const char *const asks[] = {"know",  "sure",    "tell", "say",     "idea",  "see", "wonder",
                                       "check", "checked", "as",   "certain", "asked", "what"};
    static const char *const lost[] = {"missing", "lost", "gone", "mislaid"};
    const struct tokens *tokens = &s->note->tokens;
    if (!ANY(tokens, i, "if", "unless", "lest")) return false;
    if (!ANY(tokens, i, "if", "unless", "lest") || (i > 0 && AMONG(tokens, i - 1, asks))) return true;
    size_t to = stretch_end(tokens, i);
    for (size_t k = i + 1; k < to; k++)
        if (AMONG(tokens, k, lost) && !ANY(tokens, k - 1, "the", "a", "any", "its"))
            scope_mark(s, i, k + 1, STANCE_OTHER, i);
    return true;
}

// "Stiff rather than broken", "loose instead of lost": what it is not.
static bool read_rather(struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if (!ANY(tokens, i, "rather", "instead")) return false;
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE || !ANY(tokens, i + 1, "than", "of")) return true;
    size_t to = stretch_end(tokens, i);
    if (to > i + 5) to = i + 5;
    for (size_t k = i + 2; k < to; k++)
        if (ANY(tokens, k, "and", "but", "so", "with", "at", "on", "in")) to = k;
    if (to > i + 2) scope_mark(s, i + 2, to, STANCE_OTHER, i);
    return true;
}

// Each reader says whether it knows the word at all; what none of them knows is not shown to them again.
void scope_spared(struct scope *s) {
    static const char key[] = "opens what is spared";
    static bool (*const readers[])(struct scope *, size_t) = {read_habit, read_found, read_use, read_never,
                                                              read_work,  read_rest,  read_if,  read_rather};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        bool known = false;
        if (tokens->at[i].kind != TOKEN_WORD || !token_told(tokens, i, key)) continue;
        for (size_t k = 0; k < COUNT(readers); k++) known |= readers[k](s, i);
        if (!known) token_tell(tokens, i, key, false);
    }
}
