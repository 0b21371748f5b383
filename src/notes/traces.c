// SPDX-License-Identifier: MIT
// That a part is not there, told by what is left of it: that there was one ("had a burner once"), that nobody
// knows where it went, who has it, the place where it sat, or that all else is there. Such words deny, doubt
// and speak of the past, and still say one thing: read before the faults, whatever governs them.
#include <string.h>

#include "notes/any.h"
#include "notes/lacking.h"
#include "notes/things.h"
#include "notes/traces.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

enum { OVER = 1, LOOSE = 2 }; // the statement has to end behind the part; nothing is asked of what follows

bool part_ends(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"and",    "but",  "with",  "on",   "to",     "for", "in",
                                        "at",     "when", "then",  "once", "which",  "or",  "from",
                                        "though", "by",   "so",    "too",  "either", "now", "here",
                                        "anyway", "if",   "now's", "that"};
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || tokens->at[i].kind == TOKEN_SIGN ||
           AMONG(tokens, i, words);
}

bool part_named_at(const struct fault_reader *r, size_t i, struct part_at *part) {
    static const char *const leads[] = {
        "a",    "an",       "the",   "its",   "his",  "her",  "their",   "my",  "our",   "that", "any",
        "some", "original", "old",   "other", "both", "it's", "one",     "two", "three", "four", "five",
        "six",  "of",       "those", "these", "this", "new",  "another", "own", "proper"};
    const struct tokens *tokens = &r->note->tokens;
    enum { LEADS_MOST = 4 };
    size_t at = i;
    while (at < i + LEADS_MOST && at < tokens->count && AMONG(tokens, at, leads)) at++;
    size_t parts = absent_part(r, at);
    struct noun_found noun;
    *part = (struct part_at){i, at, at + parts};
    if (!parts && noun_at(r->note, at, &noun) && !r->scope.fault[at]) part->to = noun.to;
    for (size_t k = at; k < part->to; k++)
        if (r->note->taken[k] == TAKEN_TYPE || r->note->taken[k] == TAKEN_MARK ||
            r->note->taken[k] == TAKEN_ASIDE)
            return false;
    return part->to > at;
}

bool part_or_word_at(const struct fault_reader *r, size_t i, struct part_at *part) {
    static const char *const articles[] = {"a", "an", "the", "its", "his", "her", "their"};
    static const char *const no_things[] = {
        "time",  "energy", "patience", "heart",    "money",     "space",     "room",    "need",
        "use",   "will",   "strength", "skill",    "help",      "way",       "look",    "price",
        "value", "charm",  "shine",    "idea",     "reason",    "rest",      "others",  "seller",
        "owner", "person", "buyer",    "story",    "history",   "maker",     "name",    "date",
        "age",   "year",   "place",    "end",      "problem",   "trouble",   "wait",    "hassle",
        "fuss",  "effort", "nerve",    "best",     "originals", "same",      "one",     "ones",
        "other", "thing",  "things",   "stuff",    "sale",      "lot",       "bother",  "point",
        "fault", "damage", "wear",     "cause",    "source",    "answer",    "culprit", "smell",
        "home",  "wife",   "right",    "figure",   "number",    "signature", "mark",    "bidding",
        "post",  "photo",  "picture",  "pictures", "link",      "receipt",   "appeal",  "magic",
        "sound", "tone",   "person",   "man",      "woman"};
    if (part_named_at(r, i, part)) return true;
    const struct tokens *tokens = &r->note->tokens;
    if (!AMONG(tokens, i, articles)) return false;
    size_t from = i + 1, to = from;
    while (to < from + 2 && to < tokens->count && tokens->at[to].kind == TOKEN_WORD &&
           !part_ends(tokens, to) && r->note->taken[to] == TAKEN_NOT && !r->scope.fault[to] &&
           !AMONG(tokens, to, no_things))
        to++;
    *part = (struct part_at){i, from, to};
    return to > from && (to >= tokens->count || tokens->at[to].stop != STOP_NONE || part_ends(tokens, to) ||
                         ANY(tokens, to, "went", "got", "has", "turns"));
}

void part_close(struct fault_reader *r, size_t from, size_t to) {
    for (size_t i = 0; i < r->hit_count; i++) { // "is short of two knobs" begins with the verb
        const struct fault_hit *hit = &r->hits[i];
        if (hit->from + 1 == from && hit->to > from && hit->to <= to && hit->kinds[0]->form == ABSENCE &&
            ANY(&r->note->tokens, hit->from, "is", "are", "has", "have", "was"))
            scope_mark(&r->scope, hit->from, from, STANCE_OTHER, from);
    }
    scope_mark(&r->scope, from, to, STANCE_OTHER, from);
}

struct item_flaw *part_tell_missing(struct fault_reader *r, const struct part_at *part, size_t from,
                                    size_t to) {
    static const uint16_t around = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN | STANCE_PAST |
                                   STANCE_PLANNED | STANCE_EXCEPT | STANCE_DOUBT;
    if (r->scope.stance[part->from] & (STANCE_OTHER | STANCE_WITHDRAWN)) return NULL;
    for (size_t i = 0; i < r->hit_count; i++) // a rule says so itself
        if (r->hits[i].from < to && r->hits[i].to > from && r->hits[i].kinds[0]->form == ABSENCE) {
            for (size_t k = r->hits[i].from; k < r->hits[i].to; k++) r->scope.stance[k] &= (uint16_t)~around;
            return NULL;
        }
    for (size_t i = from; i < to; i++) r->scope.stance[i] &= (uint16_t)~around;
    struct item_flaw *flaw = absent_tell(r, part->from, part->to, from, from);
    if (!flaw) return NULL;
    note_take(r->note, from, to, TAKEN_FLAW);
    part_close(r, from, to);
    return flaw;
}

// --- it was there once ---

// "Had a knob, now has a cork": it was changed, and is not missing; "it still has".
static bool has_another(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"now has",    "has now",          "now with",    "replaced",
                                        "swapped",    "still has",        "still does",  "and does",
                                        "it does",    "has been changed", "turned up",   "found it",
                                        "found them", "here it is",       "which it has"};
    size_t end = scope_sentence_end(&r->scope, i);
    for (size_t at = i; at < end; at++)
        if (token_longest(&r->note->tokens, at, words, COUNT(words))) return true;
    return false;
}

static bool read_once(struct fault_reader *r, size_t i) {
    static const char *const once[] = {
        "used to have",      "once had",       "would have had",   "will have had",
        "must have had",     "originally had", "had originally",   "originally came with",
        "did have",          "did once have",  "there used to be", "would once have had",
        "used to come with", "at one time had"};
    static const char *const had[] = {"had", "there was", "there were", "there was once", "came with"};
    static const char *const then[] = {"once",
                                       "once upon a time",
                                       "originally",
                                       "at one time",
                                       "at some point",
                                       "in its day",
                                       "when new",
                                       "when it was new",
                                       "years ago",
                                       "at some time",
                                       "at one point",
                                       "at some stage",
                                       "one time",
                                       "in the past",
                                       "but i can't find",
                                       "but can't find",
                                       "but i lost",
                                       "but it's gone",
                                       "but they're gone",
                                       "but it got lost",
                                       "but it broke",
                                       "but it went",
                                       "but not any more",
                                       "but not now",
                                       "but it's lost",
                                       "but we lost",
                                       "but i can't lay",
                                       "but no longer",
                                       "but it has gone",
                                       "but it disappeared",
                                       "but it vanished",
                                       "but i've lost",
                                       "but that's gone",
                                       "but that went",
                                       "back when",
                                       "but i binned",
                                       "but i threw",
                                       "but it fell off",
                                       "but it came off"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!token_may_open(tokens, i, once, COUNT(once), sizeof *once) &&
        !token_may_open(tokens, i, had, COUNT(had), sizeof *had))
        return false;
    size_t n = token_longest(tokens, i, once, COUNT(once)),
           m = n ? 0 : token_longest(tokens, i, had, COUNT(had));
    if (!(n + m) || !part_named_at(r, i + n + m, &part)) return true;
    if (i > 0 && ANY(tokens, i - 1, "not", "never", "who", "i", "we")) return true; // "we had a lid once"
    if (ANY(tokens, part.to - 1, "worm", "woodworm", "moth", "moths", "beetle", "damp", "mold", "mould",
            "rust", "mice", "mouse", "rot", "smell", "crack", "leak"))
        return true; // a fault, and no part
    size_t behind = token_longest(tokens, part.to, then, COUNT(then));
    static const char *const strong[] = {"once upon a time", "originally", "at one time", "at some point",
                                         "in its day",       "when new",   "once"};
    bool place = ANY(tokens, part.to, "on", "in", "across", "over", "at", "under", "inside", "round",
                     "around", "for", "to");
    for (size_t k = part.to + 1;
         m && place && !behind && k < part.to + 7 && k < tokens->count && tokens->at[k].stop == STOP_NONE;
         k++) {
        if (r->scope.fault[k] && !r->part[k]) break;
        size_t late = token_longest(tokens, k, strong, COUNT(strong));
        if (late && (k + late >= tokens->count || tokens->at[k + late].stop != STOP_NONE))
            behind = k + late - part.to;
    }
    bool told = n ? part_ends(tokens, part.to) || behind : behind > 0;
    if (told && !has_another(r, part.to)) part_tell_missing(r, &part, i, part.to + behind);
    return true;
}

// "Ought to have a shade", "there should be a key with it": of which nobody says that it is.
static bool read_due(struct fault_reader *r, size_t i) {
    static const char *const due[] = {"ought to have",
                                      "should have",
                                      "supposed to have",
                                      "meant to have",
                                      "there should be",
                                      "there ought to be",
                                      "should come with",
                                      "should have come with",
                                      "should've had",
                                      "should be",
                                      "ought to be",
                                      "should have had",
                                      "there should have been",
                                      "could do with",
                                      "could use",
                                      "it wants",
                                      "want to find it",
                                      "need to find it",
                                      "needs to find it",
                                      "have to find it",
                                      "need to source",
                                      "have to source",
                                      "need to get",
                                      "need to track down",
                                      "need to supply",
                                      "have to track down",
                                      "have to supply",
                                      "have to get",
                                      "have to provide",
                                      "need to provide",
                                      "have to add",
                                      "need to buy",
                                      "have to buy",
                                      "crying out for"};
    static const char *const tails[] = {"with it",       "to it",   "on it", "in it",     "inside",
                                        "to go with it", "as well", "too",   "somewhere", "for it"};
    static const char *const off[] = {"not",  "if",    "whether", "never",  "as",      "sure",
                                      "know", "isn't", "aren't",  "wasn't", "weren't", "shouldn't"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!token_may_open(tokens, i, due, COUNT(due), sizeof *due)) return false;
    size_t n = token_longest(tokens, i, due, COUNT(due));
    static const char *const outs[] = {"there aren't",
                                       "there isn't",
                                       "there are none",
                                       "there's none",
                                       "there is none",
                                       "none",
                                       "they aren't there",
                                       "they aren't",
                                       "it isn't there",
                                       "they're not there",
                                       "it's not there",
                                       "they're gone",
                                       "they aren't here",
                                       "there aren't any",
                                       "there isn't one",
                                       "there isn't any",
                                       "isn't"};
    if (n && part_named_at(r, i + n, &part)) { // "there should be lids, there aren't"
        size_t at = part.to + (part.to < tokens->count && tokens->at[part.to].stop >= STOP_COMMA);
        while (ANY(tokens, at, "but", "and", "sadly", "only")) at++;
        size_t out = at > part.to ? token_longest(tokens, at, outs, COUNT(outs)) : 0;
        if (out && (at + out >= tokens->count || tokens->at[at + out].stop != STOP_NONE)) {
            part_tell_missing(r, &part, i, at + out);
            return true;
        }
    }
    if (!n || !ANY(tokens, i + n, "a", "an", "its", "the", "another") ||
        ANY(tokens, i + n + 1, "new", "better", "fresh", "good", "replacement") ||
        !part_named_at(r, i + n, &part))
        return true; // "could do with a new mount": the old one is there
    size_t start = scope_sentence_start(&r->scope, i);
    for (size_t at = i > start + 5 ? i - 5 : start; at < i; at++)
        if (AMONG(tokens, at, off)) return true;
    size_t tail = token_longest(tokens, part.to, tails, COUNT(tails)), to = part.to + tail;
    bool over = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                ANY(tokens, to, "but", "and", "before", "if", "first", "which");
    if (over && !has_another(r, to)) part_tell_missing(r, &part, i, to);
    return true;
}

// --- nobody knows where it is ---

static bool is_asked(const struct tokens *tokens, size_t i) {
    static const char *const leads[] = {"sure",    "idea",   "know",      "knows",    "say",    "clue",
                                        "dunno",   "wonder", "recall",    "remember", "think",  "telling",
                                        "certain", "unsure", "ask",       "tell",     "you",    "mystery",
                                        "kno",     "known",  "wondering", "guess",    "anyone", "anybody's"};
    return i > 0 && AMONG(tokens, i - 1, leads);
}

static bool read_asked(struct fault_reader *r, size_t i) {
    static const char *const fates[] = {"what happened to",
                                        "what became of",
                                        "what's become of",
                                        "what's happened to",
                                        "whatever happened to",
                                        "whatever became of",
                                        "what has become of",
                                        "what has happened to",
                                        "who has",
                                        "who took",
                                        "who had",
                                        "what i did with",
                                        "what we did with",
                                        "what they did with",
                                        "where i put",
                                        "where we put",
                                        "where i've put",
                                        "where they put"};
    static const char *const went[] = {"went",
                                       "has gone",
                                       "have gone",
                                       "got to",
                                       "has got to",
                                       "went to",
                                       "have got to",
                                       "ended up",
                                       "disappeared to",
                                       "has ended up",
                                       "got off to",
                                       "walked to",
                                       "wandered off to",
                                       "vanished to",
                                       "'s gone",
                                       "is",
                                       "are",
                                       "is now",
                                       "are now",
                                       "might be",
                                       "could be",
                                       "will be",
                                       "may be",
                                       "has gone to",
                                       "have gone to",
                                       "ended up at",
                                       "has disappeared to"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!token_may_open(tokens, i, fates, COUNT(fates), sizeof *fates) && !token_is(tokens, i, "where"))
        return false;
    size_t n = token_longest(tokens, i, fates, COUNT(fates)), where = token_is(tokens, i, "where") ? 1 : 0;
    bool asked = is_asked(tokens, i);
    if (n && !asked && !ANY(tokens, i + 1, "happened", "became", "has") && !token_is(tokens, i, "whatever"))
        return true;
    if (n && !asked && token_is(tokens, i, "who")) return true;
    if (!(n + where) || !part_or_word_at(r, i + (n ? n : where), &part)) return true;
    size_t behind = n ? 0 : token_longest(tokens, part.to, went, COUNT(went));
    if (n ? !part_ends(tokens, part.to) : !behind || !asked || !part_ends(tokens, part.to + behind))
        return true;
    size_t from = i;
    while (from > 0 && from + 4 > i && tokens->at[from - 1].stop == STOP_NONE) from--;
    part_tell_missing(r, &part, from, part.to + behind);
    return true;
}

// "Still hunting for the key", "if I find the strap I'll send it on", "nobody has found".
static bool read_hunted(struct fault_reader *r, size_t i) {
    static const char *const hunts[] = {"hunting for",
                                        "searched everywhere for",
                                        "looked everywhere for",
                                        "searched high and low for",
                                        "looked high and low for",
                                        "hunted high and low for",
                                        "turned the house upside down for",
                                        "still looking for",
                                        "searched all over for",
                                        "looked all over for",
                                        "searched the house for",
                                        "been looking for",
                                        "if i find",
                                        "if i ever find",
                                        "if i come across",
                                        "if we find",
                                        "if i turn up",
                                        "when i find",
                                        "if you find",
                                        "can't lay hands on",
                                        "can't lay my hands on",
                                        "can't put my hands on",
                                        "can't put my hand on",
                                        "couldn't lay hands on",
                                        "couldn't lay my hands on",
                                        "can't locate",
                                        "couldn't locate",
                                        "can't trace",
                                        "yet to find",
                                        "haven't found",
                                        "have not found",
                                        "never found",
                                        "still haven't found",
                                        "hunted for",
                                        "hunted everywhere for",
                                        "lost track of",
                                        "mislaid",
                                        "misplaced",
                                        "lost sight of"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!token_may_open(tokens, i, hunts, COUNT(hunts), sizeof *hunts)) return false;
    size_t n = token_longest(tokens, i, hunts, COUNT(hunts));
    if (!n || !ANY(tokens, i + n, "a", "its", "the", "their", "that", "my", "both", "his", "her") ||
        !part_or_word_at(r, i + n, &part))
        return true;
    bool over =
        part_ends(tokens, part.to) || ANY(tokens, part.to, "i'll", "i", "yet", "it", "we'll", "again");
    if (over && !has_another(r, part.to)) part_tell_missing(r, &part, i, part.to);
    return true;
}

// "If the lid turns up I'll post it".
static bool read_turns_up(struct fault_reader *r, size_t i) {
    static const char *const turns[] = {"turns up",       "turn up",       "ever turns up", "ever turn up",
                                        "comes to light", "come to light", "shows up",      "show up",
                                        "ever shows up",  "appears",       "reappears",     "surfaces",
                                        "ever surfaces",  "turned up"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!ANY(tokens, i, "if", "should", "when", "in")) return false;
    if (!ANY(tokens, i + 1, "the", "its", "that", "case")) return true;
    size_t at = i + (token_phrase(tokens, i, "in case") ? 2 : 1);
    if (!part_or_word_at(r, at, &part)) return true;
    size_t n = token_longest(tokens, part.to, turns, COUNT(turns));
    if (n) part_tell_missing(r, &part, i, part.to + n);
    return true;
}

// --- all else is there ---

static bool read_all_else(struct fault_reader *r, size_t i) {
    static const char *const things[] = {"nothing missing",   "nothing else missing", "nothing lacking",
                                         "nothing's missing", "nothing is missing",   "nothing gone",
                                         "everything",        "everything's there",   "everything there",
                                         "everything here",   "everything is there",  "all there",
                                         "all here",          "all present",          "everything is here",
                                         "nothing lost",      "it's all there",       "got everything",
                                         "has everything",    "every part",           "all of it"};
    static const char *const but[] = {
        "but",     "except",     "except for", "bar",        "apart from",
        "but for", "save",       "save for",   "other than", "minus",
        "barring", "aside from", "excepting",  "less",       "with the exception of"};
    static const char *const only[] = {"all it lacks is",
                                       "all that's missing is",
                                       "all that is missing is",
                                       "all it needs is",
                                       "only thing missing is",
                                       "only thing lacking is",
                                       "only thing absent is",
                                       "only thing it lacks is",
                                       "only thing it needs is",
                                       "only thing gone is",
                                       "only thing it hasn't got is",
                                       "only thing it doesn't have is",
                                       "only thing not here is",
                                       "only thing not there is",
                                       "only thing not with it is",
                                       "only thing it's missing is",
                                       "only thing i don't have is",
                                       "only thing i haven't got is",
                                       "all that's lacking is",
                                       "all that's gone is",
                                       "only thing that's missing is",
                                       "only thing lost is",
                                       "only missing thing is",
                                       "only missing part is",
                                       "only part missing is",
                                       "only bit missing is",
                                       "only piece missing is",
                                       "all you need is",
                                       "all it wants is",
                                       "all you'd need is",
                                       "all you'll need is",
                                       "all that wants is",
                                       "only thing you'd need is",
                                       "only thing you'll need is",
                                       "only thing you need is",
                                       "just wants",
                                       "just needs"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!token_may_open(tokens, i, only, COUNT(only), sizeof *only) &&
        !token_may_open(tokens, i, things, COUNT(things), sizeof *things))
        return false;
    size_t n = token_longest(tokens, i, only, COUNT(only)),
           m = n ? 0 : token_longest(tokens, i, things, COUNT(things));
    if (m) {
        size_t at = i + m + (i + m < tokens->count && tokens->at[i + m].stop == STOP_COMMA ? 1 : 0);
        size_t k = token_longest(tokens, at, but, COUNT(but));
        n = k ? at + k - i : 0;
    }
    if (!n || !part_or_word_at(r, i + n, &part) || !part_ends(tokens, part.to)) return true;
    if (token_is(tokens, part.to, "to") || ANY(tokens, part.from, "light", "clean", "slack")) return true;
    if (ANY(tokens, i + n + 1, "new", "fresh", "good") && ANY(tokens, i + n, "a", "some")) return true;
    part_tell_missing(r, &part, i, part.to);
    return true;
}

// --- where it sat ---

// "Hole where the handle was", "where the lid should be there's a gap".
static bool read_where(struct fault_reader *r, size_t i) {
    static const char *const was[] = {"screwed in",
                                      "screwed on",
                                      "screwed into",
                                      "hooked on",
                                      "clipped on",
                                      "bolted on",
                                      "plugged in",
                                      "sat",
                                      "stood",
                                      "fitted",
                                      "was bolted",
                                      "was riveted",
                                      "hung",
                                      "was",
                                      "were",
                                      "should be",
                                      "should have been",
                                      "ought to be",
                                      "used to be",
                                      "used to go",
                                      "used to sit",
                                      "used to hang",
                                      "once was",
                                      "used to fit",
                                      "once were",
                                      "had been",
                                      "has been",
                                      "would have been",
                                      "would be",
                                      "should've been",
                                      "'s been",
                                      "used to live",
                                      "would go",
                                      "should sit",
                                      "should go",
                                      "would have gone",
                                      "belongs",
                                      "must have been",
                                      "came off",
                                      "fell off",
                                      "broke off",
                                      "has come off",
                                      "has broken off",
                                      "snapped off",
                                      "used to screw on",
                                      "was fixed",
                                      "was attached",
                                      "was screwed on",
                                      "were fixed",
                                      "were attached"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!token_is(tokens, i, "where")) return false;
    if (!ANY(tokens, i + 1, "the", "its", "a", "an", "one", "two", "their", "his", "her")) return true;
    if (!part_named_at(r, i + 1, &part)) return true;
    if (ANY(tokens, part.to - 1, "label", "labels", "sticker", "stickers", "tape", "tag", "patch", "stamp",
            "hem", "pocket", "price", "plaster", "ring", "fold", "folds", "crease", "seam"))
        return true;
    for (size_t k = part.from; k < part.to; k++)
        if (!r->part[k]) return true;
    size_t n = token_longest(tokens, part.to, was, COUNT(was)), to = part.to + n;
    if (!n || is_asked(tokens, i)) return true;
    bool over = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                ANY(tokens, to, "and", "but", "there's", "there", "is", "on", "once", "originally", "now");
    if (!over) return true;
    static const char *const gaps[] = {"hole",   "holes",  "gap",   "space",   "gaps",
                                       "spaces", "socket", "stump", "nothing", "empty"};
    size_t from = i, start = scope_sentence_start(&r->scope, i);
    while (from > start && from + 5 > i && tokens->at[from - 1].stop == STOP_NONE) from--;
    static const char *const marks[] = {
        "hole",  "holes",  "gap",     "gaps",    "space",  "spaces", "socket",  "stump", "nothing",
        "empty", "screw",  "screws",  "nail",    "nails",  "rivets", "outline", "ghost", "shadow",
        "patch", "glue",   "peg",     "sockets", "slot",   "slots",  "bare",    "just",  "stub",
        "blank", "recess", "bracket", "plugged", "filled", "rust",   "rivet"};
    static const char *const due[] = {"should",    "ought", "used", "once",  "would",   "belongs",
                                      "should've", "came",  "fell", "broke", "snapped", "must"};
    bool gap = AMONG(tokens, part.to, due);
    for (size_t at = from; at < i; at++) gap |= AMONG(tokens, at, marks);
    for (size_t at = to; at < to + 6 && at < tokens->count && tokens->at[at].stop < STOP_SENTENCE; at++)
        gap |= AMONG(tokens, at, marks);
    if (!gap) return true; // "brown where the mount was"
    bool told = part_tell_missing(r, &part, i, to) != NULL;
    for (size_t at = from; told && at < i; at++)
        if (AMONG(tokens, at, gaps)) part_close(r, at, at + 1);
    for (size_t at = to; told && at < to + 5 && at < tokens->count && tokens->at[at].stop == STOP_NONE; at++)
        if (AMONG(tokens, at, gaps)) part_close(r, at, at + 1);
    return true;
}

// Each reader says whether it knows the word at all; what none of them knows is not shown to them again.
void read_traces(struct fault_reader *r) {
    static const char key[] = "opens a trace";
    static bool (*const readers[])(struct fault_reader *, size_t) = {
        read_once, read_due, read_asked, read_hunted, read_turns_up, read_all_else, read_where};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        const struct token *t = &tokens->at[i];
        bool known = false;
        if (t->kind != TOKEN_WORD || !strchr("wotshmcirlynejabud", t->fold[0]) || !token_told(tokens, i, key))
            continue;
        for (size_t k = 0; k < COUNT(readers); k++) known |= readers[k](r, i);
        if (!known) token_tell(tokens, i, key, false);
    }
}
