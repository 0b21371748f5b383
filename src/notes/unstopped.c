// SPDX-License-Identifier: MIT
// Notes that were dictated or typed without any stops: where a clause begins is told by its words alone. A
// sign without bytes is put there, so that the readers see one kind of stop. Only stretches that no stop
// parts are looked at; in others a comma says more than a guess.
#include "notes/any.h"
#include "notes/cut.h"
#include "notes/note.h"
#include "text/order.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

enum { STRETCH_LEAST = 7, SIZED_LEAST = 4, GROUP_MOST = 3, OPENS_AFTER = 3, WORDS_A_STOP = 16 };

static const char *const articles[] = {"the", "a",       "an",    "this", "these", "that",  "those",
                                       "my",  "its",     "one",   "two",  "three", "four",  "five",
                                       "six", "both",    "each",  "some", "all",   "every", "several",
                                       "any", "another", "other", "her",  "his",   "their"};
static const char *const verbs[] = {
    "is",     "are",     "was",   "were",    "has",    "have",  "had",   "isn't", "aren't",  "wasn't",
    "hasn't", "haven't", "works", "work",    "turns",  "turn",  "runs",  "run",   "opens",   "open",
    "closes", "shuts",   "leaks", "leak",    "sticks", "stick", "looks", "look",  "feels",   "smells",
    "needs",  "wobbles", "shows", "doesn't", "don't",  "won't", "can't", "plays", "lights",  "rattles",
    "slides", "slips",   "moves", "fits",    "goes",   "comes", "holds", "locks", "latches", "screws",
    "seems",  "squeaks", "ticks", "could",   "will",   "would", "still", "do",    "does",    "sits",
    "folds",  "drips",   "hangs", "leans",   "spins",  "winds", "wants", "lacks", "rocks",   "sags",
    "creaks", "jams",    "lies",  "stays",   "keeps",  "rubs"};
static const char *const adverbs[] = {"all",  "both", "still",  "also", "just",
                                      "even", "only", "really", "each"};
static const char *const sides[] = {"left",    "right", "front",  "back",   "top",    "bottom", "inner",
                                    "outer",   "upper", "lower",  "main",   "other",  "glass",  "brass",
                                    "leather", "wood",  "metal",  "first",  "second", "top",    "rear",
                                    "whole",   "steel", "wooden", "rubber", "plastic"};
// What stands before a clause's first word only where that word goes on with what was begun.
static const char *const leads[] = {
    "the",       "a",     "an",      "this",    "that",    "these",    "those",    "my",     "its",
    "his",       "her",   "their",   "of",      "in",      "on",       "at",       "to",     "from",
    "by",        "with",  "without", "for",     "near",    "under",    "over",     "inside", "around",
    "round",     "along", "across",  "behind",  "below",   "above",    "into",     "onto",   "off",
    "up",        "down",  "if",      "whether", "because", "when",     "where",    "which",  "while",
    "until",     "as",    "like",    "than",    "think",   "believe",  "know",     "see",    "say",
    "said",      "hope",  "guess",   "reckon",  "sure",    "suppose",  "no",       "not",    "and",
    "or",        "but",   "so",      "is",      "are",     "was",      "were",     "has",    "have",
    "had",       "got",   "very",    "some",    "all",     "both",     "each",     "one",    "any",
    "every",     "only",  "just",    "then",    "though",  "although", "who",      "there",  "it",
    "i",         "they",  "we",      "you",     "can",     "could",    "will",     "would",  "between",
    "out",       "about", "except",  "apart",   "says",    "shows",    "show",     "see",    "feel",
    "tell",      "how",   "wait",    "uh",      "um",      "hmm",      "actually", "cast",   "wrought",
    "stainless", "sheet", "iron"};

static bool is_noun(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    struct word_entry entry;
    enum { THINGS = (1u << USE_THING) | (1u << USE_PART) | (1u << USE_GATED) };
    if (t->kind != TOKEN_WORD || AMONG(&note->tokens, i, verbs)) return false;
    return (wordbook_find(note->book, t->fold, strlen(t->fold), &entry) && (entry.uses & THINGS)) ||
           (wordbook_find(note->book, t->one, strlen(t->one), &entry) && (entry.uses & THINGS));
}

static bool is_stuff(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    struct word_entry entry;
    return t->kind == TOKEN_WORD && wordbook_find(note->book, t->fold, strlen(t->fold), &entry) &&
           entry.uses & (1u << USE_MATERIAL);
}

static bool is_verb(const struct tokens *tokens, size_t i) {
    if (AMONG(tokens, i, adverbs)) i++;
    return AMONG(tokens, i, verbs);
}

static bool is_finite(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "is", "are", "has", "have", "was", "were", "isn't", "aren't", "hasn't", "looks",
               "feels");
}

// "The needle's missing", "crystal's got a scratch": a noun with its verb, and nothing that it has.
static bool is_contracted(const struct note *note, size_t i) {
    static const char *const states[] = {
        "missing", "gone",      "broke",   "broken", "cracked", "loose",    "got",     "been",   "not",
        "good",    "fine",      "ok",      "okay",   "all",     "still",    "a",       "an",     "stuck",
        "bent",    "worn",      "torn",    "ripped", "clean",   "tight",    "chipped", "frayed", "dirty",
        "rusty",   "rusted",    "come",    "coming", "split",   "stiff",    "shot",    "dead",   "faded",
        "stained", "scratched", "dented",  "only",   "really",  "pretty",   "just",    "kind",   "kinda",
        "in",      "there",     "solid",   "whole",  "perfect", "starting", "peeling", "too",    "so",
        "very",    "quite",     "snapped", "never",  "also",    "probably"};
    const struct tokens *tokens = &note->tokens;
    const char *fold = i < tokens->count ? tokens->at[i].fold : "";
    size_t size = strlen(fold);
    struct word_entry entry;
    enum { THINGS = (1u << USE_THING) | (1u << USE_PART) | (1u << USE_GATED) };
    return size > 4 && text_same(fold + size - 2, "'s") && tokens->at[i].stop == STOP_NONE &&
           wordbook_find(note->book, fold, size - 2, &entry) && (entry.uses & THINGS) &&
           AMONG(tokens, i + 1, states);
}

// "One of the wheels is", "two of the little brass feet on the bottom are": the tokens before the verb.
static size_t some_of_at(const struct note *note, size_t i) {
    enum { MOST = 4 };
    const struct tokens *tokens = &note->tokens;
    if (!AMONG(tokens, i, articles) || !token_is(tokens, i + 1, "of") ||
        !ANY(tokens, i + 2, "the", "its", "my", "her", "his", "their", "these", "those"))
        return 0;
    size_t at = i + 3;
    while (at < i + 3 + MOST && at < tokens->count && tokens->at[at].stop == STOP_NONE &&
           !is_verb(tokens, at) && !AMONG(tokens, at, leads))
        at++;
    if (at > i + 3 && is_verb(tokens, at)) return at - i;
    if (at == i + 3 || !ANY(tokens, at, "on", "at", "in") || !ANY(tokens, at + 1, "the", "its")) return 0;
    at += 2;
    if (AMONG(tokens, at, sides)) at++;
    if (is_noun(note, at) || AMONG(tokens, at - 1, sides)) at += is_noun(note, at);
    return is_verb(tokens, at) ? at - i : 0;
}

// "The dial glass is", "right eyepiece is", "two of them stick": the tokens before the verb, 0 where no such
// group begins at `i`.
static size_t subject_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    bool article = AMONG(tokens, at, articles);
    if (token_is(tokens, i, "size")) return 0; // "3/4 size needs new hair"
    if (token_is(tokens, i, "that") && ANY(tokens, i + 1, "matter", "matters", "show", "bother")) return 0;
    at += article;
    if (article && token_is(tokens, at, "of") && token_is(tokens, at + 1, "them")) {
        at += 2;
        return is_verb(tokens, at) ? at - i : 0;
    }
    size_t some = article ? some_of_at(note, i) : 0;
    if (some) return some;
    if (AMONG(tokens, at, sides)) at++;
    for (size_t k = at; k < at + GROUP_MOST && k < tokens->count; k++) {
        if (is_contracted(note, k)) return k + 1 - i;
        if (!is_noun(note, k)) break;
    }
    size_t nouns = 0;
    while (nouns < GROUP_MOST && at < tokens->count && is_noun(note, at)) at++, nouns++;
    if (!nouns && !(article && is_verb(tokens, at))) return 0; // "one has a hole"
    if (is_verb(tokens, at)) return at - i;
    // "The latch on the lid is": with where it is.
    if (!article || !ANY(tokens, at, "on", "at", "in", "of") || !ANY(tokens, at + 1, "the", "its")) return 0;
    at += 2;
    if (AMONG(tokens, at, sides)) at++;
    size_t first = at;
    while (at < first + GROUP_MOST && at < tokens->count && is_noun(note, at)) at++;
    return at > first && is_finite(tokens, at) ? at - i : 0;
}

// "Focus is stiff", "chrome is pitted": one word that no list of things has, right before its verb.
static bool is_bare_subject(const struct note *note, size_t i) {
    static const char *const finite[] = {"is",    "are",   "has",    "have",   "was",
                                         "were",  "isn't", "aren't", "hasn't", "haven't",
                                         "looks", "feels", "wasn't", "weren't"};
    static const char *const no_nouns[] = {
        "which", "that",  "what", "who",   "rest", "others", "everything", "it's",   "there", "here", "where",
        "how",   "still", "also", "never", "now",  "always", "only",       "itself", "one",   "them"};
    const struct tokens *tokens = &note->tokens;
    const struct token *t = &tokens->at[i];
    size_t size = strlen(t->fold);
    bool turned = size > 4 && (!strcmp(t->fold + size - 2, "ed") || !strcmp(t->fold + size - 2, "ly"));
    // "Leather on the barrel is peeling": with where it is.
    bool placed = ANY(tokens, i + 1, "on", "in", "round") && ANY(tokens, i + 2, "the", "its") &&
                  i + 4 < tokens->count && is_noun(note, i + 3) && AMONG(tokens, i + 4, finite);
    if (t->kind != TOKEN_WORD || turned || (!placed && !AMONG(tokens, i + 1, finite)) ||
        AMONG(tokens, i, verbs))
        return false;
    return !AMONG(tokens, i, no_nouns) && !AMONG(tokens, i, leads) && !AMONG(tokens, i - 1, sides);
}

// "Scratches all over", "two small nicks on the foot", "slight wear to the base": a fault by its noun, and
// where it is.
static bool opens_fault(const struct tokens *tokens, size_t i) {
    static const char *const faults[] = {
        "scratch",  "scratches", "stain",     "stains",  "chip",      "chips",  "crack",   "cracks",
        "hairline", "dent",      "dents",     "tear",    "tears",     "hole",   "holes",   "rust",
        "pitting",  "foxing",    "crazing",   "wear",    "nick",      "nicks",  "split",   "splits",
        "mark",     "marks",     "burn",      "burns",   "gouge",     "gouges", "fraying", "pilling",
        "fading",   "dust",      "verdigris", "tarnish", "corrosion", "scuff",  "scuffs",  "scuffing",
        "crease",   "creases",   "rip",       "rips",    "ding",      "dings",  "spots",   "spot",
        "darn",     "patch",     "pinhole",   "bruise",  "flake",     "flakes"};
    static const char *const before[] = {
        "some",    "a",     "two",   "three", "four",   "slight", "light", "small",   "tiny", "minor", "few",
        "several", "big",   "deep",  "moth",  "worm",   "ring",   "ink",   "water",   "rust", "tea",   "burn",
        "paint",   "faint", "large", "heavy", "little", "bad",    "small", "surface", "edge", "old"};
    static const char *const places[] = {"on",     "in",    "to",    "at",     "along", "inside",
                                         "near",   "round", "all",   "around", "under", "by",
                                         "across", "from",  "about", "both",   "runs",  "goes"};
    enum { BEFORE_MOST = 4 };
    size_t at = i;
    if (i > 1 && AMONG(tokens, i - 2, articles) && !AMONG(tokens, i - 2, sides))
        return false; // "a black mark"
    while (at < i + BEFORE_MOST && AMONG(tokens, at, before) &&
           !(AMONG(tokens, at, faults) && AMONG(tokens, at + 1, places)))
        at++;
    return AMONG(tokens, at, faults) && AMONG(tokens, at + 1, places) &&
           !(i > 0 && AMONG(tokens, i - 1, before));
}

// "10 inches across", "not film tested", "untested", "made of".
static bool opens_fact(const struct tokens *tokens, size_t i) {
    static const char *const ways[] = {"across", "wide", "tall", "long", "high", "deep"};
    static const char *const units[] = {"inches", "inch", "in", "cm", "mm", "feet", "ft"};
    static const char *const done[] = {"tested", "checked", "tried", "opened", "used", "eaten"};
    static const char *const of[] = {"of", "by", "in", "from"};
    if (tokens->at[i].kind == TOKEN_FIGURE) return AMONG(tokens, i + 1, units) && AMONG(tokens, i + 2, ways);
    if (token_is(tokens, i, "not")) return AMONG(tokens, i + 1, done) || AMONG(tokens, i + 2, done);
    return token_is(tokens, i, "untested") || (token_is(tokens, i, "made") && AMONG(tokens, i + 1, of));
}

static bool opens_statement(const struct note *note, size_t i) {
    static const char *const it[] = {"it", "they", "there", "this"};
    static const char *const is[] = {"is",  "are",  "was",     "has",   "have", "had",   "runs", "works",
                                     "ran", "does", "doesn't", "isn't", "will", "won't", "been"};
    static const char *const both[] = {"theres", "there's", "it's", "they're", "its"};
    static const char *const own[] = {"have",    "haven't",  "had",   "wound",  "tried",   "tested",
                                      "think",   "can't",    "don't", "didn't", "cleaned", "washed",
                                      "plugged", "couldn't", "ran",   "left",   "would"};
    static const char *const none[] = {"no", "never", "otherwise", "comes", "smells", "nothing"};
    const struct tokens *tokens = &note->tokens;
    if (AMONG(tokens, i, it) && AMONG(tokens, i + 1, is)) return true;
    const char *next = i + 1 < tokens->count ? tokens->at[i + 1].fold : "";
    size_t size = strlen(next); // "it wobbles a bit"
    if (token_is(tokens, i, "it") && size > 3 && next[size - 1] == 's' && next[size - 2] != 's') return true;
    if (token_is(tokens, i, "its")) return AMONG(tokens, i + 1, adverbs) || token_is(tokens, i + 1, "been");
    if (AMONG(tokens, i, both)) return true;
    if (token_is(tokens, i, "i")) return AMONG(tokens, i + 1, own);
    if (token_is(tokens, i, "never") && (is_noun(note, i - 1) || (i > 1 && AMONG(tokens, i - 2, articles))))
        return false; // "the screws never came back"
    return AMONG(tokens, i, none) || opens_fact(tokens, i) || opens_fault(tokens, i) ||
           subject_at(note, i) > 0 || is_bare_subject(note, i);
}

// The noun before `i` may be the head of what opens here: "the dial | glass is" parts nothing.
static bool is_inside(const struct note *note, size_t i) {
    static const char *const ends[] = {"top",   "bottom", "end",  "base",   "rim",    "edge",    "middle",
                                       "front", "back",   "side", "inside", "corner", "corners", "center"};
    const struct tokens *tokens = &note->tokens;
    size_t subject = AMONG(tokens, i, articles) ? 0 : subject_at(note, i);
    if (!subject) return false;
    enum { HEAD = 4 }; // "brass gong on oak frame | gong has a dent": the thing by its name again
    for (size_t k = 0; k < HEAD && k + 2 < i; k++)
        if (tokens->at[k].stop == STOP_NONE && tokens->at[k].one == tokens->at[i].one && is_noun(note, i))
            return false;
    // "Has a candle holder | tops are rusty": of one "a" says no "are".
    bool many = subject == 1 && tokens->at[i].one != tokens->at[i].fold &&
                ANY(tokens, i + 1, "are", "were", "have", "aren't");
    for (size_t back = 1; many && back <= GROUP_MOST && back < i; back++)
        if (ANY(tokens, i - back, "a", "an", "one", "each")) return false;
    // "With two handles | tap drips": nor do many of a thing name one of another.
    bool one = tokens->at[i].one == tokens->at[i].fold && is_noun(note, i - 1) &&
               tokens->at[i - 1].one != tokens->at[i - 1].fold;
    if (one && i > 1 && ANY(tokens, i - 2, "two", "three", "four", "five", "six", "both", "several", "all"))
        return false;
    for (size_t back = 1; back <= GROUP_MOST && back < i; back++) {
        if (AMONG(tokens, i - back, articles)) {
            // "At the top wick is": the group before is closed by its own preposition.
            bool bound =
                i - back > 0 && AMONG(tokens, i - back - 1, leads) && !token_is(tokens, i - back - 1, "and");
            return !bound || back == 1 || !AMONG(tokens, i - 1, ends);
        }
        if (!is_noun(note, i - back) && !AMONG(tokens, i - back, sides)) return false;
    }
    return false;
}

static bool is_start(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    // "In the left one the strap is gone": a piece, and no number of what comes.
    bool piece = i > 1 && token_is(tokens, i - 1, "one") &&
                 (AMONG(tokens, i - 2, sides) || AMONG(tokens, i - 2, articles));
    piece |=
        token_is(tokens, i - 1, "there") && (token_is(tokens, i, "theres") || token_is(tokens, i, "there's"));
    static const char *const units[] = {"inches", "inch", "cm", "mm", "feet", "ft"};
    static const char *const ways[] = {"across", "round"};
    piece |= i > 2 && AMONG(tokens, i - 1, ways) && AMONG(tokens, i - 2, units); // "10 inches across rust on"
    piece |=
        i > 3 && token_is(tokens, i - 1, "of") && token_is(tokens, i - 2, "speak"); // "no rust to speak of"
    piece |= i > 3 && ANY(tokens, i - 1, "it", "them") &&
             is_finite(tokens, i + 1) && // "haven't filled it | hoops are"
             tokens->at[i].kind == TOKEN_WORD && !AMONG(tokens, i - 2, leads) &&
             tokens->at[i - 2].stop == STOP_NONE;
    static const char *const particles[] = {"down", "off", "up", "out"};
    static const char *const taken[] = {"cut",  "come",  "worn",  "gone",   "coming", "comes",
                                        "goes", "going", "taken", "broken", "came",   "fallen"};
    piece |= i > 2 && AMONG(tokens, i - 1, particles) &&
             AMONG(tokens, i - 2, taken); // "have been cut down a split in"
    piece |= i > 2 && AMONG(tokens, i - 1, particles) && ANY(tokens, i - 2, "it", "them"); // "pull it up the"
    if ((AMONG(tokens, i - 1, leads) && !piece) || !opens_statement(note, i)) return false;
    return !is_inside(note, i);
}

// "And the clapper is missing": before the joint.
static bool is_joint(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    return token_is(tokens, i, "and") && opens_statement(note, i + 1) && !token_is(tokens, i + 1, "no") &&
           !token_is(tokens, i + 1, "nothing");
}

static struct token stop_before(const struct token *next) {
    static const char sign[] = ";";
    return (struct token){.from = next->from,
                          .to = next->from,
                          .fold = sign,
                          .one = sign,
                          .hash = token_hash(sign, 1),
                          .kind = TOKEN_SIGN,
                          .stop = STOP_SENTENCE,
                          .joined = true};
}

// "No woodworm dusty inside", "it holds water stained inside": a state with its place, behind a statement
// that has its verb already.
static bool opens_state(const struct tokens *tokens, size_t last, size_t i) {
    static const char *const states[] = {"dusty",   "rusty",  "stained",  "faded",  "worn",   "dirty",
                                         "scuffed", "warped", "greasy",   "grubby", "dented", "chipped",
                                         "cracked", "torn",   "marked",   "pitted", "foxed",  "musty",
                                         "sticky",  "frayed", "scratched"};
    static const char *const places[] = {"inside", "outside", "underneath", "along", "on",
                                         "in",     "at",      "round",      "all"};
    static const char *const before[] = {"is",     "are",      "been",    "a",    "the",     "bit",
                                         "badly",  "slightly", "very",    "was",  "looks",   "gone",
                                         "little", "quite",    "lightly", "it's", "heavily", "got"};
    if (!AMONG(tokens, i, states) || !AMONG(tokens, i + 1, places)) return false;
    if (AMONG(tokens, i - 1, before) || AMONG(tokens, i - 1, leads)) return false;
    bool said = false;
    for (size_t k = last; k + 1 < i; k++) said |= AMONG(tokens, k, verbs) || token_is(tokens, k, "no");
    return said;
}

// "No cracks that I could see handle tight inside rusty bottom thin", dictated: a part and what it is like.
static bool opens_plain(const struct note *note, size_t i) {
    static const char *const places[] = {"inside", "outside", "underneath", "bottom", "top", "rim", "base"};
    static const char *const states[] = {
        "tight",    "loose",      "rusty",   "clear",     "fine",     "good",   "solid",    "sound",
        "bent",     "cracked",    "gone",    "worn",      "split",    "clean",  "stiff",    "dented",
        "chipped",  "intact",     "wobbly",  "scratched", "torn",     "frayed", "missing",  "perfect",
        "straight", "firm",       "stained", "faded",     "dirty",    "ok",     "okay",     "broken",
        "stuck",    "smooth",     "dull",    "peeling",   "grubby",   "pitted", "complete", "there",
        "perished", "shot",       "sloppy",  "slack",     "floppy",   "blunt",  "rotten",   "rusted",
        "seized",   "warped",     "flaking", "rotted",    "crazed",   "nicked", "fraying",  "dead",
        "broke",    "snapped",    "burnt",   "burned",    "scorched", "sprung", "twisted",  "stripped",
        "blocked",  "clogged",    "foxed",   "jammed",    "bowed",    "dinged", "gritty",   "leaking",
        "soldered", "resoldered", "wormy",   "wobbles",   "mended",   "glued",  "patched",  "dusty"};
    static const char *const goes_on[] = {"of", "enough", "for", "to", "one", "ones"};
    static const char *const numbers[] = {"one", "two", "three", "four", "five", "six"};
    static const char *const hold[] = {"in",      "on",   "to",      "of",    "at",     "round",   "inside",
                                       "under",   "near", "along",   "by",    "across", "from",    "behind",
                                       "missing", "lost", "without", "needs", "lacks",  "through", "over"};
    static const char *const parted[] = {"snapped", "broken", "broke", "torn", "worn",   "rusted", "fallen",
                                         "come",    "came",   "gone",  "bent", "rotted", "rubbed", "peeled"};
    static const char *const offs[] = {"off", "out", "through", "away", "back", "down", "up"};
    enum { WORDS_MOST = 2 };
    const struct tokens *tokens = &note->tokens;
    bool there =
        token_is(tokens, i - 1, "there") && i > 1 && is_noun(note, i - 2); // "hands there | key gone"
    there |=
        i > 2 && AMONG(tokens, i - 1, offs) && AMONG(tokens, i - 2, parted); // "snapped off | clamp good"
    if (AMONG(tokens, i - 1, leads) && !there) return false;
    if (AMONG(tokens, i, numbers) && is_noun(note, i + 1)) return AMONG(tokens, i + 2, states);
    size_t head = i; // "wood rim split", "hanging wire broke"
    while (head < i + WORDS_MOST && head + 2 < tokens->count &&
           (AMONG(tokens, head, sides) || is_noun(note, head) || is_stuff(note, head)) &&
           is_noun(note, head + 1) && !AMONG(tokens, head + 1, states) && !AMONG(tokens, head, states))
        head++;
    if (!AMONG(tokens, head + 1, states) || AMONG(tokens, head + 2, goes_on)) return false;
    bool bound =
        i > 2 && (token_is(tokens, i - 2, "no") || // "no key | handle bent", "in the neck | frets worn"
                  (AMONG(tokens, i - 2, articles) && AMONG(tokens, i - 3, hold)));
    if ((AMONG(tokens, i - 1, sides) || is_noun(note, i - 1) || is_stuff(note, i - 1)) && !bound)
        return false; // it began before
    return AMONG(tokens, i, places) || is_noun(note, i) || head > i;
}

// "No chips that I can see | lid fits": behind what a look is told by.
static bool is_behind_look(const struct tokens *tokens, size_t i) {
    static const char *const looks[] = {"see", "find", "tell", "feel", "notice"};
    static const char *const ables[] = {"can", "could"};
    static const char *const goes_on[] = {"on",     "in",  "at",    "any",  "and",  "or",   "but",
                                          "inside", "the", "under", "it",   "no",   "a",    "anyway",
                                          "though", "by",  "from",  "with", "its",  "nor",  "for",
                                          "where",  "if",  "what",  "how",  "that", "light"};
    return i > 3 && AMONG(tokens, i - 1, looks) && AMONG(tokens, i - 2, ables) &&
           token_is(tokens, i - 3, "i") && !AMONG(tokens, i, goes_on) && tokens->at[i].kind == TOKEN_WORD;
}

// "Spout clear | haven't boiled it", and who has not is left out.
static bool opens_not_done(const struct note *note, size_t i) {
    static const char *const nots[] = {"haven't", "havent", "didn't", "didnt", "hasn't", "hasnt"};
    const struct tokens *tokens = &note->tokens;
    if (!AMONG(tokens, i, nots) || is_noun(note, i - 1) || AMONG(tokens, i - 1, leads)) return false;
    const char *next = i + 1 < tokens->count ? tokens->at[i + 1].fold : "";
    size_t size = strlen(next);
    return (size > 4 && !strcmp(next + size - 2, "ed")) ||
           ANY(tokens, i + 1, "had", "lit", "run", "got", "been", "put");
}

// "No chips inside couple outside near the feet": how many at another place.
static bool is_of_other_place(const struct tokens *tokens, size_t i) {
    static const char *const numbers[] = {"couple", "few",  "one",    "two",    "three",
                                          "some",   "lots", "plenty", "several"};
    static const char *const places[] = {"inside", "outside", "underneath", "of",   "on",
                                         "near",   "round",   "under",      "along"};
    static const char *const ends[] = {"inside", "outside", "underneath", "top",
                                       "bottom", "lid",     "rim",        "base"};
    return AMONG(tokens, i, numbers) && AMONG(tokens, i + 1, places) && AMONG(tokens, i - 1, ends);
}

// "54 inches | varnish is", "rope 60 ft | ends frayed": the size of the thing, and a part behind it; but "a 2
// inch seam split".
static bool is_behind_size(const struct note *note, size_t from, size_t i) {
    static const char *const units[] = {"inches", "in",    "ins", "\"",    "cm",     "mm",
                                        "feet",   "ft",    "'",   "yards", "yds",    "gallons",
                                        "gal",    "pints", "lbs", "kg",    "litres", "liters"};
    enum { HEAD = 7 };
    const struct tokens *tokens = &note->tokens;
    if (i - from > HEAD || i < from + 2 || !is_noun(note, i) || !is_noun(note, from)) return false;
    size_t number = i - 1;
    if (AMONG(tokens, number, units) && number > from + 1) number--;
    const struct token *figure = &tokens->at[number];
    size_t size = strlen(figure->fold);
    bool unit =
        number < i - 1 ||
        (size > 2 && (!strcmp(figure->fold + size - 2, "in") || !strcmp(figure->fold + size - 2, "ft") ||
                      !strcmp(figure->fold + size - 2, "cm") || !strcmp(figure->fold + size - 2, "mm")));
    if (ANY(tokens, i - 1, "foot") &&
        !ANY(tokens, i, "cord", "lead", "cable", "flex", "hose", "chain", "handle", "blade", "rope", "pole",
             "shaft", "drawer")) // "a 5 foot handle"
        number = i - 2, figure = &tokens->at[number], unit = true;
    if (figure->kind != TOKEN_FIGURE || !unit || !is_noun(note, number - 1)) return false;
    for (size_t k = from; k < number; k++)
        if (AMONG(tokens, k, leads) || AMONG(tokens, k, verbs)) return false;
    return true;
}

// "54 | inches handle is split": a unit names no part.
static bool is_unit_of(const struct tokens *tokens, size_t i) {
    return tokens->at[i - 1].kind == TOKEN_FIGURE && ANY(tokens, i, "inches", "inch", "feet", "foot", "ft",
                                                         "cm", "mm", "pounds", "pints", "gallons", "yards");
}

// Marks where clauses begin in [from, to); true when there are any.
static bool find_starts(const struct note *note, size_t from, size_t to, bool *starts) {
    bool any = false;
    size_t last = from;
    for (size_t i = from + 2; i + 1 < to; i++) {
        bool start = i >= from + OPENS_AFTER &&
                     (is_joint(note, i) || is_start(note, i) || opens_state(&note->tokens, last, i) ||
                      opens_plain(note, i) || is_behind_look(&note->tokens, i) ||
                      is_of_other_place(&note->tokens, i) || opens_not_done(note, i));
        start = (start && !is_unit_of(&note->tokens, i)) || is_behind_size(note, from, i);
        if (i < last + 2 || !start) continue;
        starts[i] = any = true;
        last = i;
    }
    return any;
}

// Who puts stops leaves them out where a sentence needs none.
static bool is_stopped(const struct tokens *tokens) {
    size_t stops = 0;
    for (size_t i = 0; i < tokens->count; i++) stops += tokens->at[i].stop != STOP_NONE;
    return stops && (stops + 1) * WORDS_A_STOP > tokens->count;
}

void note_part_clauses(struct note *note) {
    struct tokens *tokens = &note->tokens;
    if (!note->book || tokens->count < SIZED_LEAST || is_stopped(tokens)) return;
    bool *starts = arena_array(note->arena, tokens->count + 1, sizeof *starts), any = false;
    for (size_t from = 0, to; from < tokens->count; from = to + 1) {
        for (to = from; to < tokens->count && tokens->at[to].stop == STOP_NONE;) to++;
        if (to - from >= SIZED_LEAST) any |= find_starts(note, from, to, starts);
    }
    if (!any) return;
    size_t more = 0;
    for (size_t i = 0; i < tokens->count; i++) more += starts[i];
    struct token *at = arena_array(note->arena, tokens->count + more + 1, sizeof *at);
    size_t count = 0;
    for (size_t i = 0; i < tokens->count; i++) {
        if (starts[i]) at[count++] = stop_before(&tokens->at[i]);
        at[count++] = tokens->at[i];
    }
    tokens->at = at;
    tokens->count = count;
    tokens->altered = true;
}
