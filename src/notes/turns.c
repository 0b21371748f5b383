// SPDX-License-Identifier: MIT
// Words of a fault in a turn of speech: "dead easy", "a cracking cup of tea", "a stiff breeze", "warts and
// all"; and what is only thought of: "so that it can't be lost", "if the string breaks", "some of these burn
// the bread, this doesn't".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool goes_on(const struct tokens *tokens, size_t i) {
    return i < tokens->count && tokens->at[i].stop == STOP_NONE && i + 1 < tokens->count &&
           tokens->at[i + 1].kind == TOKEN_WORD;
}

// "Dead straight", "dead on time": very.
static bool strengthens(const struct tokens *tokens, size_t i) {
    static const char *const more[] = {
        "even",     "wrong",    "right",   "straight",    "level",   "flat",   "easy",    "simple",
        "quiet",    "silent",   "slow",    "sharp",       "square",  "true",   "plumb",   "accurate",
        "cute",     "posh",     "handy",   "good",        "nice",    "heavy",  "light",   "chuffed",
        "tired",    "set",      "against", "certain",     "sure",    "keen",   "smart",   "cheap",
        "boring",   "calm",     "ahead",   "stop",        "heat",    "ringer", "weight",  "giveaway",
        "clever",   "pretty",   "comfy",   "comfortable", "lucky",   "happy",  "center",  "centre",
        "reliable", "smooth",   "steady",  "still",       "clean",   "useful", "strong",  "proud",
        "soft",     "dry",      "fast",    "precise",     "regular", "cold",   "jealous", "serious",
        "broke",    "opposite", "common",  "ordinary"};
    if (token_is(tokens, i, "darned") && goes_on(tokens, i))
        return ANY(tokens, i + 1, "tough", "good", "nice", "hard", "cold", "hot", "if", "thing", "near",
                   "fine", "handy");
    if (!ANY(tokens, i, "dead", "bone", "stone") || !goes_on(tokens, i)) return false;
    if (token_is(tokens, i, "dead") && token_is(tokens, i + 1, "on")) // "dead on arrival"
        return i + 2 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE ||
               tokens->at[i + 2].stop != STOP_NONE ||
               ANY(tokens, i + 2, "time", "target", "at", "with", "accurate", "straight", "center", "true",
                   "cue");
    if (!AMONG(tokens, i + 1, more)) return false;
    return !token_is(tokens, i + 1, "still") || i + 2 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE;
}

// "A cracking cup of tea", "cracking little saw"; not "cracking paint", "cracking to the glaze".
static bool praises(const struct tokens *tokens, size_t i) {
    static const char *const stuffs[] = {
        "paint",   "paintwork", "varnish", "glaze",   "leather", "lacquer", "finish", "enamel",  "plastic",
        "rubber",  "veneer",    "noise",   "noises",  "sound",   "sounds",  "and",    "or",      "to",
        "on",      "in",        "at",      "along",   "around",  "where",   "of",     "all",     "across",
        "through", "from",      "with",    "near",    "up",      "but",     "is",     "has",     "as",
        "inside",  "below",     "under",   "the",     "its",     "over",    "off",    "away",    "a",
        "down",    "by",        "visible", "present", "there",   "sole",    "soles",  "surface", "coating",
        "joint",   "cord",      "flex",    "seat",    "lining",  "skin"};
    if (!token_is(tokens, i, "cracking") || !goes_on(tokens, i)) return false;
    bool opens = i == 0 || tokens->at[i - 1].stop != STOP_NONE ||
                 ANY(tokens, i - 1, "a", "such", "what", "absolutely");
    return opens && !AMONG(tokens, i + 1, stuffs);
}

// "A stiff breeze", "my bald uncle", "a broken night": of what stands behind the word.
static bool is_of_noun(const struct fault_reader *r, size_t i) {
    static const char *const looks[] = {"stiff",  "dull",    "hard",      "bald",   "broken", "cracked",
                                        "rusty",  "worn",    "bent",      "torn",   "faded",  "chipped",
                                        "burnt",  "burned",  "dead",      "loose",  "sticky", "cloudy",
                                        "foggy",  "stained", "scratched", "wobbly", "stuck",  "weak",
                                        "dented", "warped",  "split",     "dirty",  "grubby", "leaky"};
    static const char *const nouns[] = {
        "wind",   "breeze",   "drink",     "neck",     "climb",   "penalty",  "competition", "test",
        "day",    "days",     "night",     "nights",   "morning", "week",     "year",        "years",
        "life",   "luck",     "work",      "water",    "winter",  "frost",    "sell",        "bargain",
        "hearts", "promises", "promise",   "sleep",    "home",    "marriage", "English",     "english",
        "record", "voice",    "change",    "talk",     "tongue",  "sermon",   "company",     "weather",
        "sky",    "skies",    "afternoon", "summer",   "weekend", "weekends", "fingers",     "buns",
        "toddy",  "tea",      "excuse",    "joke",     "jokes",   "moment",   "ground",      "soil",
        "earth",  "bread",    "toast",     "toe",      "nail",    "nails",    "tooth",       "rib",
        "ankle",  "wrist",    "hip",       "nose",     "arm's",   "arms",     "trees",       "tree",
        "bird",   "mouse",    "battery's", "language", "uncle",   "man",      "heel's",      "loyalties",
        "tube",   "mailer",   "graft"};
    const struct tokens *tokens = &r->note->tokens;
    if (!AMONG(tokens, i, looks) || !goes_on(tokens, i) || !AMONG(tokens, i + 1, nouns)) return false;
    if (r->part[i + 1] || r->scope.fault[i + 1] || r->note->taken[i + 1] == TAKEN_TYPE) return false;
    return i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
           ANY(tokens, i - 1, "a", "the", "my", "our", "good", "his", "her", "in", "like", "through", "with",
               "for", "on", "every", "of", "and", "some", "one", "nice", "proper", "right", "very", "an",
               "any", "at", "that");
}

static size_t idiom_at(const struct tokens *tokens, size_t i) {
    static const char *const phrases[] = {"warts and all",
                                          "loose ends",
                                          "loose end or two",
                                          "flat broke",
                                          "stone broke",
                                          "house broke",
                                          "house broken",
                                          "broke even",
                                          "broke the ice",
                                          "broken english",
                                          "go for broke",
                                          "cut and dried",
                                          "cut and run",
                                          "worn out with",
                                          "worn out from",
                                          "worn out by",
                                          "bent double",
                                          "hell bent",
                                          "the worse for drink",
                                          "torn between",
                                          "crack of dawn",
                                          "crack at it",
                                          "a crack shot",
                                          "cracked a smile",
                                          "cracked a joke",
                                          "crack on with",
                                          "hole up",
                                          "holed up",
                                          "watering hole",
                                          "burning question",
                                          "money to burn",
                                          "burn the midnight",
                                          "slow burn",
                                          "scratch the surface",
                                          "from scratch",
                                          "up to scratch",
                                          "back scratch",
                                          "split the bill",
                                          "split the cost",
                                          "split the money",
                                          "split the difference",
                                          "split up with",
                                          "lost count",
                                          "lost track",
                                          "lost my mind",
                                          "lost his mind",
                                          "lost her mind",
                                          "lost the plot",
                                          "lost for words",
                                          "soft spot for",
                                          "weak spot for",
                                          "hit the spot",
                                          "rub along",
                                          "rubs along",
                                          "dropped by",
                                          "dropped in on",
                                          "drop in on",
                                          "run ragged",
                                          "stuck at home",
                                          "stuck inside",
                                          "stuck indoors",
                                          "stuck in traffic",
                                          "stuck in my",
                                          "stuck in bed",
                                          "never looked back"};
    size_t n = token_longest(tokens, i, phrases, COUNT(phrases));
    // "Broke in the way you want": a boot, a glove, a saddle.
    if (!n && ANY(tokens, i, "broke", "broken") && token_is(tokens, i + 1, "in") && i > 0 &&
        ANY(tokens, i - 1, "are", "is", "was", "were", "well", "nicely", "already", "it's", "they're", "been",
            "all", "fully", "just", "me", "them", "you") &&
        !ANY(tokens, i + 2, "two", "half", "three", "pieces", "transit", "several", "places", "one", "the",
             "a", "four", "bits", "shipping", "my", "post", "at", "many", "so", "on", "its", "here", "and"))
        n = 2;
    if (!n && ANY(tokens, i, "broke", "broken") && token_phrase(tokens, i + 1, "in the way you")) n = 2;
    if (!n && ANY(tokens, i, "odd") && i > 0 && token_is(tokens, i - 1, "of") &&
        ANY(tokens, i + 1, "buttons", "screws", "keys", "bits", "pieces", "socks", "cups"))
        n = 2; // "a drawer of odd buttons"
    if (!n && token_phrase(tokens, i, "spot on") &&
        i > 0 && // "keeps time spot on", and not "a spot on the lid"
        (i + 2 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE ||
         tokens->at[i + 2].stop != STOP_NONE ||
         ANY(tokens, i - 1, "is", "are", "was", "were", "still", "it's", "they're", "time")))
        n = 2;
    return n;
}

void turn_pass_over(struct fault_reader *r, size_t from, size_t to, size_t cue) {
    scope_mark(&r->scope, from, to, STANCE_OTHER, cue);
    for (size_t k = 0; k < r->hit_count; k++) // "lid … lost", of which the second word is passed over
        if (r->hits[k].from < from && r->hits[k].to > from && r->hits[k].to <= to)
            scope_mark(&r->scope, r->hits[k].from, from, STANCE_OTHER, cue);
}

// "Dead flat" is flat: the word that only strengthens is no fault's, and what it strengthens may yet be told.
static void take_back(struct fault_reader *r, size_t i) {
    size_t kept = 0;
    for (size_t k = 0; k < r->hit_count; k++) {
        const struct fault_hit *hit = &r->hits[k];
        bool own = hit->from <= i && hit->to == i + 1 && hit->to <= hit->from + 2;
        if (!own) r->hits[kept++] = *hit;
        for (size_t at = hit->from; own && at < hit->to; at++) r->scope.fault[at] = false;
    }
    r->hit_count = kept;
}

static bool says_lack(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "no", "not", "missing", "without", "lost", "gone", "never", "haven't", "hasn't",
               "isn't", "doesn't", "don't", "won't", "can't", "couldn't", "didn't", "old", "off", "flat",
               "only", "needs", "need", "out", "too", "bad", "badly", "poor");
}

// "On a string so it can't be lost", "the shoulders are so it won't spin": against what could happen. Behind
// a fault it is what came of it, "bent so it won't turn".
static void read_purpose(struct fault_reader *r, size_t i) {
    static const char *const nots[] = {"can't",  "cant",  "won't",    "wont",    "doesn't",  "doesnt",
                                       "don't",  "dont",  "wouldn't", "wouldnt", "couldn't", "cannot",
                                       "didn't", "never", "not",      "couldnt"};
    static const char *const mishaps[] = {
        "lost",   "lose",   "fall",    "tip",    "slip",  "slide",  "spill",  "break",   "scratch", "chip",
        "rattle", "wobble", "spin",    "roll",   "rock",  "catch",  "snag",   "burn",    "stick",   "mark",
        "fade",   "rust",   "leak",    "drip",   "drop",  "dry",    "tear",   "bend",    "crack",   "dent",
        "rub",    "wear",   "flop",    "tangle", "fray",  "jam",    "scorch", "stain",   "warp",    "shrink",
        "pull",   "slam",   "scuff",   "boil",   "bleed", "clump",  "wander", "shift",   "move",    "come",
        "go",     "blow",   "unravel", "droop",  "sag",   "topple", "clog",   "stretch", "squash",  "get"};
    enum { SUBJECT_MOST = 4, VERB_FAR = 3 };
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, i, "so") || i == 0) return;
    size_t at = i + 1 + token_is(tokens, i + 1, "that"), no = at;
    while (no < tokens->count && no < at + SUBJECT_MOST && tokens->at[no].stop == STOP_NONE &&
           !AMONG(tokens, no, nots))
        no++;
    bool nobody = ANY(tokens, at, "nobody", "nothing");
    if (nobody) no = at;
    if ((no == at && !nobody) || !(nobody || AMONG(tokens, no, nots))) return;
    size_t verb = no + 1;
    while (verb < tokens->count && verb < no + VERB_FAR &&
           ANY(tokens, verb, "be", "get", "ever", "all", "just"))
        verb++;
    if (!AMONG(tokens, verb, mishaps)) return;
    if (ANY(tokens, verb, "go", "come", "get", "move", "pull") &&
        !ANY(tokens, verb + 1, "off", "astray", "missing", "loose", "hard", "through", "walkabout", "wet",
             "undone", "dull", "lost", "damp", "moldy", "dusty", "scratched", "broken", "bent"))
        return;
    size_t start = scope_sentence_start(&r->scope, i);
    for (size_t k = start; k < i; k++)
        if (says_lack(tokens, k)) return;
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from >= start && r->hits[k].to <= i &&
            !(r->scope.stance[r->hits[k].from] & STANCE_OTHER))
            return;
    size_t to = verb + 1;
    while (to < tokens->count && tokens->at[to - 1].stop == STOP_NONE && !ANY(tokens, to, "but", "and")) to++;
    turn_pass_over(r, i, to, i);
}

// "If the string breaks you lose one": of what could be. "Rattles if you shake it", "if it's chipped" are
// not.
static void read_if(struct fault_reader *r, size_t i) {
    static const char *const asks[] = {"know",    "sure",  "tell",    "say",  "idea",  "see",
                                       "wonder",  "check", "checked", "as",   "asked", "what",
                                       "certain", "test",  "out",     "only", "even",  "not"};
    enum { SUBJECT_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "if", "whenever") ||
        (i > 0 && tokens->at[i - 1].stop == STOP_NONE && AMONG(tokens, i - 1, asks)))
        return;
    for (size_t k = i + 2; k < tokens->count && k <= i + SUBJECT_MOST && tokens->at[k - 1].stop == STOP_NONE;
         k++) {
        const char *word = tokens->at[k].fold;
        size_t size = strlen(word);
        bool verb = r->scope.fault[k] && size > 3 && word[size - 1] == 's' && word[size - 2] != 's';
        if (verb && !r->scope.fault[k - 1] &&
            !ANY(tokens, k - 1, "the", "a", "any", "these", "those", "no", "some", "has")) {
            size_t to = k + 1;
            while (to < tokens->count && tokens->at[to - 1].stop == STOP_NONE &&
                   tokens->at[to].kind == TOKEN_WORD)
                to++;
            turn_pass_over(r, i, to, i);
            return;
        }
    }
}

// "Some of these burn the bread, this doesn't", "they usually crack at the neck but this one hasn't".
static void read_contrast(struct fault_reader *r, size_t i) {
    static const char *const others[] = {
        "some of these",  "most of these", "some of those",   "most of them",  "many of these",
        "a lot of these", "lots of these", "these often",     "these usually", "these always",
        "these tend",     "they often",    "they usually",    "they always",   "they tend",
        "they all",       "these all",     "most are",        "most have",     "a lot of them",
        "other ones",     "the new ones",  "the cheap ones",  "cheap ones",    "the newer ones",
        "the later ones", "modern ones",   "the modern ones", "the ones",      "plenty of these",
        "half of them",   "half of these", "most of those",   "some of them",  "you see these"};
    static const char *const ours[] = {
        "this doesn't",    "this one doesn't", "this isn't",     "this one isn't",   "this hasn't",
        "this one hasn't", "mine doesn't",     "mine hasn't",    "mine isn't",       "this one is not",
        "not this",        "not this one",     "but not here",   "this one has not", "this has not",
        "this one never",  "this never",       "this one won't", "this won't",       "not mine",
        "it doesn't like", "these don't",      "these haven't",  "these aren't",     "this one didn't",
        "this didn't",     "this one's not",   "it hasn't",      "this has stayed",  "this one has stayed"};
    const struct tokens *tokens = &r->note->tokens;
    if (r->note->record->count > 1 || !token_longest(tokens, i, others, COUNT(others))) return;
    size_t end = scope_sentence_end(&r->scope, i);
    bool habit =
        token_is(tokens, i, "these") && ANY(tokens, i + 1, "always", "usually", "often", "tend", "all");
    if (habit && r->note->record->type.value && !ANY(tokens, i + 2, "have", "are")) {
        turn_pass_over(r, i, scope_clause_end(&r->scope, i), i); // "these always split at the dowels"
        return;
    }
    for (size_t k = i + 1; k < end; k++)
        if (token_longest(tokens, k, ours, COUNT(ours))) {
            turn_pass_over(r, i, k, i);
            return;
        }
}

void read_turns(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    if (r->note->off & SCOPE_INTENDED) return;
    for (size_t i = 0; i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        size_t n = idiom_at(tokens, i);
        if (!n && strengthens(tokens, i)) take_back(r, i);
        if (!n && (praises(tokens, i) || is_of_noun(r, i))) n = 1;
        if (n) turn_pass_over(r, i, i + n, i);
        read_purpose(r, i);
        read_if(r, i);
        read_contrast(r, i);
    }
}
