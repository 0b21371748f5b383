// SPDX-License-Identifier: MIT
// Parts that no list has, and the nouns and sides that belong to one that a list has: what begins a sentence
// and goes on to be called broken is a part, whatever it may be.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/rest.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// A noun, or what does something.
static bool is_noun(const struct note *note, size_t i) {
    static const char *const others[] = {
        "found", "see",    "saw",     "note",   "notice", "check", "show",   "shows", "other",
        "over",  "under",  "near",    "after",  "never",  "ever",  "either", "got",   "has",
        "had",   "have",   "lost",    "lack",   "lacks",  "need",  "wear",   "good",  "clear",
        "fair",  "nice",   "left",    "right",  "spare",  "plus",  "pair",   "set",   "box",
        "no",    "not",    "one",     "better", "poor",   "per",   "for",    "or",    "her",
        "their", "proper", "another", "full",   "makes",  "make",  "made",   "gives", "give"};
    const struct token *token = &note->tokens.at[i];
    struct word_entry entry;
    size_t n = strlen(token->fold);
    if (token->kind != TOKEN_WORD || n < 4 || token_among(&note->tokens, i, others, COUNT(others)))
        return false;
    static const char *const doings[] = {"missing",  "lacking",   "including", "showing",  "using",
                                         "having",   "being",     "wanting",   "needing",  "excluding",
                                         "working",  "nothing",   "something", "matching", "original",
                                         "existing", "remaining", "losing",    "getting"};
    if (token_among(&note->tokens, i, doings, COUNT(doings))) return false;
    if (n > 5 && (text_same(token->fold + n - 2, "er") || text_same(token->fold + n - 3, "ive") ||
                  text_same(token->fold + n - 3, "ing")))
        return true; // "winder", "objective", "viewing"
    return word_at(note, i, (1u << USE_THING) | (1u << USE_GATED) | (1u << USE_PART), &entry) == 1;
}

bool spot_plain_noun(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    return i < tokens->count && tokens->at[i].stop == STOP_NONE && r->note->taken[i] != TAKEN_TYPE &&
           !r->scope.fault[i] && !spot_preposition(tokens, i) && is_noun(r->note, i);
}

// "Thermometer tube broken", "the winder knob is stiff": the noun before the part, which with it begins the
// clause, says which one it is.
void spot_widen(const struct fault_reader *r, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    if (spot->part_to <= spot->part_from || !spot->part_from) return;
    size_t noun = spot->part_from - 1, start = noun;
    if (r->scope.fault[noun] || r->note->taken[noun] || tokens->at[noun].stop != STOP_NONE) return;
    if (ANY(tokens, noun, "left", "right", "front", "back", "rear", "upper", "lower", "outer", "inner",
            "other", "first", "second", "third")) {
        spot->part_from = noun; // "the left eyepiece is hazy"
        return;
    }
    bool sided = noun > 0 && spot_side(tokens, noun - 1) && tokens->at[noun - 1].stop == STOP_NONE &&
                 tokens->at[noun].kind == TOKEN_WORD && !rest_is_small(r->note, noun) &&
                 !strchr(tokens->at[noun].fold, '\'');
    if (sided && noun > 1 && !spot_article(tokens, noun - 2) && tokens->at[noun - 2].stop == STOP_NONE)
        sided = false;
    if (sided) { // "the left billet strap"
        spot->part_from = noun - 1;
        return;
    }
    if (start > 0 && ANY(tokens, start - 1, "the", "its", "a", "an", "one")) start--;
    if ((start == 0 || tokens->at[start - 1].stop != STOP_NONE) && is_noun(r->note, noun))
        spot->part_from = noun;
}

// What may stand between the subject and what is said of it: "has a few small", "is slightly".
static bool is_between(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "is",     "are",     "was",     "were",   "has",     "have",   "had",      "a",      "an",
        "some",   "the",     "bit",     "been",   "very",    "quite",  "badly",    "little", "slightly",
        "rather", "small",   "tiny",    "few",    "two",     "three",  "four",     "gone",   "several",
        "light",  "lightly", "heavily", "not",    "isn't",   "no",     "never",    "of",     "lots",
        "looks",  "slight",  "minor",   "also",   "aren't",  "wasn't", "five",     "six",    "one",
        "both",   "all",     "about",   "pretty", "only",    "just",   "somewhat", "large",  "piece",
        "pieces", "chunk",   "lump",    "sliver", "section", "old",    "long",     "deep"};
    return token_among(tokens, i, words, COUNT(words));
}

// "The gallery's bent", "paddle's cracked": the noun with its verb.
static bool owns_verb(const struct tokens *tokens, size_t i) {
    static const char *const others[] = {"it's",    "that's",    "there's",   "theres",     "thats",
                                         "heres",   "what's",    "he's",      "she's",      "who's",
                                         "here's",  "let's",     "one's",     "where's",    "how's",
                                         "this's",  "which's",   "someone's", "somebody's", "everything's",
                                         "other's", "another's", "rest's",    "thing's",    "nothing's"};
    enum { LEAST = 5 };
    const char *word = tokens->at[i].fold;
    size_t n = strlen(word);
    return n > LEAST && text_same(word + n - 2, "'s") && !token_among(tokens, i, others, COUNT(others));
}

// "The ring to hang it by is broken": behind what it is for; `i` where nothing of the sort stands.
static size_t behind_purpose(const struct tokens *tokens, size_t i, size_t end) {
    enum { WORDS_MOST = 6 };
    static const char *const ends[] = {"by", "with", "on", "from", "up", "in", "down", "off", "it", "them"};
    if (!token_is(tokens, i, "to")) return i;
    for (size_t at = i + 2; at < end && at < i + WORDS_MOST; at++)
        if (token_among(tokens, at, ends, COUNT(ends)) &&
            ANY(tokens, at + 1, "is", "are", "has", "was", "have"))
            return at + 1;
    return i;
}

// "Quite worn", "old repair", "everything chipped": no subject that could be a part.
static bool is_no_subject(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "plus",       "this",      "that",     "these",     "those",     "there",    "here",      "they",
        "them",       "some",      "most",     "much",      "many",      "several",  "other",     "others",
        "everything", "nothing",   "anything", "something", "what",      "which",    "only",      "just",
        "still",      "also",      "again",    "once",      "twice",     "never",    "always",    "often",
        "quite",      "rather",    "very",     "pretty",    "fairly",    "well",     "little",    "lots",
        "overall",    "otherwise", "more",     "less",      "slight",    "small",    "large",     "heavy",
        "light",      "nice",      "good",     "clean",     "original",  "minor",    "major",     "usual",
        "general",    "except",    "apart",    "with",      "without",   "needs",    "wants",     "looks",
        "seems",      "shows",     "showing",  "has",       "have",      "having",   "been",      "being",
        "paint",      "finish",    "polish",   "surface",   "color",     "colour",   "condition", "wear",
        "where",      "when",      "then",     "than",      "maybe",     "perhaps",  "probably",  "possibly",
        "almost",     "nearly",    "about",    "after",     "before",    "under",    "over",      "rest",
        "same",       "thing",     "things",   "item",      "piece",     "pieces",   "both",      "each",
        "full",       "every",     "another",  "either",    "neither",   "none",     "first",     "second",
        "third",      "fourth",    "fifth",    "sixth",     "seventh",   "eighth",   "ninth",     "tenth",
        "twelfth",    "last",      "early",    "late",      "whole",     "half",     "couple",    "please",
        "note",       "sorry",     "sadly",    "however",   "though",    "although", "because",   "since",
        "while",      "until",     "sold",     "selling",   "found",     "came",     "comes",     "bought",
        "used",       "working",   "works",    "worked",    "tested",    "checked",  "signs",     "traces",
        "marks",      "hint",      "touch",    "evidence",  "dead",      "dark",     "dull",      "deep",
        "long",       "short",     "wide",     "thick",     "thin",      "fine",     "hard",      "soft",
        "wood",       "wooden",    "metal",    "brass",     "not",       "but",      "yet",       "too",
        "now",        "any",       "all",      "few",       "one",       "two",      "had",       "was",
        "are",        "bit",       "top",      "old",       "new",       "odd",      "can",       "may",
        "might",      "its",       "his",      "her",       "she",       "you",      "who",       "how",
        "why",        "out",       "off",      "per",       "for",       "and",      "the",       "nor",
        "yes",        "bad",       "big",      "low",       "red",       "dry",      "wet",       "due",
        "got",        "saw",       "see",      "lot",       "sort",      "kind",     "gives",     "makes",
        "takes",      "smells",    "feels",    "reads",     "sits",      "stands",   "leans",     "rocks",
        "rattles",    "goes",      "runs",     "turns",     "three",     "four",     "home",      "hand",
        "pair",       "like",      "somebody", "someone",   "anybody",   "anyone",   "nobody",    "people",
        "everybody",  "everyone",  "your",     "mine",      "must",      "might",    "water",     "smoke",
        "damp",       "rust",      "dust",     "dirt",      "even",      "ever",     "dozens",    "hundreds",
        "loads",      "masses",    "heaps",    "tons",      "thousands", "plenty",   "scores",    "umpteen",
        "left",       "theres",    "thats",    "heres",     "whats",     "theyre",   "does",      "did",
        "will",       "would",     "could",    "should",    "doing",     "done"};
    static const char *const pronouns[] = {
        "it's",    "maker's",   "owner's", "seller's", "that's", "there's", "what's",       "he's",
        "she's",   "who's",     "here's",  "where's",  "let's",  "one's",   "everything's", "this's",
        "other's", "another's", "how's",   "which's",  "that'd", "rest's"};
    const char *word = tokens->at[i].fold;
    size_t n = strlen(word);
    bool owner = n > 5 && text_same(word + n - 2, "'s") && strchr(word, '\'') == word + n - 2 &&
                 !token_among(tokens, i, pronouns, COUNT(pronouns)); // "trough's rusted"
    if (tokens->at[i].kind != TOKEN_WORD || n < 3 ||
        (strchr(word, '\'') && !owner && !owns_verb(tokens, i)) ||
        token_among(tokens, i, words, COUNT(words)))
        return true;
    static const char *const ends[] = {"ly", "ed", "ish", "ful", "able", "less", "ous", "'t", "est"};
    for (size_t k = 0; k < COUNT(ends); k++)
        if (n > strlen(ends[k]) && text_same(word + n - strlen(ends[k]), ends[k])) return true;
    return false;
}

static bool says_state(const char *word) {
    static const char *const irregular[] = {"bent",   "torn",  "worn",  "split",
                                            "broken", "loose", "stuck", "stiff"};
    size_t n = strlen(word);
    for (size_t k = 0; k < COUNT(irregular); k++)
        if (text_same(word, irregular[k])) return true;
    return n > 3 && !text_same(word + n - 2, "ly") &&
           (text_same(word + n - 2, "ed") || text_same(word + n - 2, "en") || word[n - 1] == 'y');
}

// "Flap dry and cracked", "tyre flat and perished": before token `i` another state of the same part.
bool spot_states_both(const struct fault_reader *r, size_t i) {
    static const char *const others[] = {"there", "fine", "good",    "ok",   "okay",  "present", "here",
                                         "sound", "both", "missing", "gone", "tight", "perfect", "clean"};
    const struct tokens *tokens = &r->note->tokens;
    return i > 2 && token_is(tokens, i - 1, "and") && says_state(tokens->at[i].fold) &&
           tokens->at[i - 2].kind == TOKEN_WORD && tokens->at[i - 2].stop == STOP_NONE && r->part[i - 3] &&
           !r->scope.fault[i - 3] && tokens->at[i - 3].stop == STOP_NONE && !r->part[i - 2] &&
           !spot_preposition(tokens, i - 2) && !token_among(tokens, i - 2, others, COUNT(others)) &&
           !spot_article(tokens, i - 2);
}

// "And the mouth is worn": what follows speaks of another part.
static bool opens_clause(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "and", "but", "though", "while", "&", "because", "since", "cos") &&
           i + 2 < tokens->count &&
           (ANY(tokens, i + 1, "the", "its", "one", "another") || is_between(tokens, i + 2));
}

// "Stopper is stuck", "mouth is worn wide": the noun stands among the words of the fault.
static bool take_own_noun(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *kind = hit->kinds[0];
    size_t i = hit->from;
    static const char *const verbs[] = {"is", "are", "has", "have", "was", "were", "gone", "going"};
    const char *head = kind->noun ? strrchr(kind->noun, ' ') : NULL;
    if (!head || (strcmp(head, " part") != 0 && strcmp(head, " piece") != 0))
        return false; // of any part at all
    if (kind->form != FAULT || hit->near || hit->to < i + 3 ||
        !token_among(tokens, i + 1, verbs, COUNT(verbs)))
        return false;
    if (r->note->taken[i] || is_no_subject(tokens, i) || !is_noun(r->note, i)) return false;
    spot->part_from = i;
    spot->part_to = i + 1;
    return true;
}

static bool has_subject(const struct fault_hit *hit) {
    const struct flaw *kind = hit->kinds[0];
    bool done = kind->class == CLASS_REPAIR && kind->says_part; // "one becket has been replaced"
    for (size_t i = 1; i < hit->kind_count && kind->class == CLASS_REPAIR; i++) // "repainted"
        done |= hit->kinds[i]->class == CLASS_REPAIR && hit->kinds[i]->form == FAULT;
    return kind->form == FAULT || (kind->form == STATE && (kind->class == CLASS_FUNCTION || done));
}

// "Mouth chipped", "the column is rusty", "splines not worn": a noun that no list has is the part, where the
// sentence begins with it and goes on to say what is wrong.
void spot_take_subject(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    enum { WORDS_MOST = 7, OF_DAMAGE = 2 };
    const struct tokens *tokens = &r->note->tokens;
    const bool mend =
        hit->kinds[0]->class == CLASS_REPAIR; // "left rocker has an old split that's been glued"
    static const char *const away[] = {"missing", "gone", "lost", "absent"};
    static const char *const shares[] = {"several of the",
                                         "some of the",
                                         "a few of the",
                                         "most of the",
                                         "of the",
                                         "all the",
                                         "all of the",
                                         "half the",
                                         "several",
                                         "some",
                                         "a few",
                                         "most",
                                         "a piece of the",
                                         "a bit of the",
                                         "part of the",
                                         "a part of the",
                                         "a section of the",
                                         "a small piece of the",
                                         "a chunk of the",
                                         "a lump of the",
                                         "a strip of the",
                                         "a big piece of the"};
    size_t start = hit->from;
    if (hit->kinds[0]->form == ABSENCE && hit->to == start + 2 &&
        token_among(tokens, start + 1, away, COUNT(away)) && !is_no_subject(tokens, start) &&
        !is_between(tokens, start)) { // "rose missing"
        spot->part_from = start;
        spot->part_to = start + 1;
        return;
    }
    if (take_own_noun(r, hit, spot)) return;
    const size_t most = WORDS_MOST + (mend ? OF_DAMAGE : 0);
    while (start > 0 && hit->from - start < most && tokens->at[start - 1].stop == STOP_NONE &&
           !opens_clause(tokens, start - 1))
        start--;
    if (start == 0 || (tokens->at[start - 1].stop == STOP_NONE && !opens_clause(tokens, start - 1)) ||
        (hit->near && start + 1 != hit->from && hit->kinds[0]->form == FAULT) || !has_subject(hit))
        return;
    bool article = ANY(tokens, start, "the", "its", "his", "her"); // of a figure
    if (article || ANY(tokens, start, "both", "one", "another", "two", "three") ||
        (hit->kinds[0]->class == CLASS_REPAIR && ANY(tokens, start, "a", "an", "four", "some")))
        start++;
    size_t some = token_longest(tokens, start, shares, COUNT(shares)); // "several of the uprights"
    if (some && start + some < hit->from) start += some;
    while (start < hit->from && r->note->taken[start] == TAKEN_VALUE) start++; // "ceramic holders"
    size_t which = start;                                                      // "the left rocker"
    if (spot_side(tokens, start) && start + 1 < hit->from && tokens->at[start].stop == STOP_NONE) start++;
    size_t to = start;
    while (to < hit->from && to < start + 2 && !r->note->taken[to] && !r->scope.fault[to] && !r->part[to] &&
           !is_between(tokens, to) &&
           (!is_no_subject(tokens, to) || (article && ANY(tokens, to, "light", "lights"))))
        to++;
    if (to == start ||
        (ANY(tokens, to - 1, "salt", "sweat", "tar", "mud", "soot") && ANY(tokens, to, "stained", "marked")))
        return; // "salt stained"
    size_t stuff = to < hit->from && ANY(tokens, to, "wood", "leather", "paper", "papers", "glass", "metal",
                                         "cloth", "rubber", "brass", "iron"); // "paddle wood is split"
    for (size_t k = behind_purpose(tokens, to + stuff, hit->from); k < hit->from; k++) {
        bool of_damage = mend && ANY(tokens, k, "that's", "that", "which", "somebody", "someone", "split",
                                     "crack", "break", "chip", "cracks", "splits", "snapped", "broken",
                                     "cracked", "off", "away", "clean", "once", "come", "in", "half");
        if (!of_damage && (!is_between(tokens, k) || r->scope.fault[k])) return;
    }
    bool verb = to < hit->from || owns_verb(tokens, to - 1);
    bool repaired = hit->kinds[0]->class == CLASS_REPAIR && !hit->near && start > 0 &&
                    (tokens->at[start - 1].stop == STOP_NONE || // behind an article or a number
                     (to == hit->from && says_state(tokens->at[hit->from].fold))); // "hat overpainted"
    if (hit->kinds[0]->form == STATE && !repaired && !(article && to == hit->from))
        return; // "the click only works"
    if (hit->kinds[0]->form == FAULT && !verb && !says_state(tokens->at[hit->from].fold) &&
        !says_state(tokens->at[hit->to - 1].fold))
        return;
    spot->part_from = which;
    spot->part_to = to;
}

// "Sugar is missing its lid", "the reservoir has no cap": one word that no list has, where the clause begins
// with it and ends before token `to`.
bool spot_plain_subject(const struct fault_reader *r, size_t to, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    if (!to || is_no_subject(tokens, to - 1) ||
        ANY(tokens, to - 1, "enamel", "varnish", "glaze", "lacquer") || r->note->taken[to - 1] ||
        r->scope.fault[to - 1])
        return false;
    size_t first = to - 1;
    while (first > 0 && tokens->at[first - 1].stop == STOP_NONE && r->note->taken[first - 1] == TAKEN_VALUE)
        first--; // "the red window"
    if (first > 0 && tokens->at[first - 1].stop == STOP_NONE &&
        ANY(tokens, first - 1, "red", "green", "blue", "black", "white", "yellow", "brown", "small", "large",
            "big", "little", "wooden", "brass", "iron", "front", "back", "left", "right"))
        first--;
    if (first > 0 && tokens->at[first - 1].stop == STOP_NONE && ANY(tokens, first - 1, "the", "its")) first--;
    if (first > 0 && tokens->at[first - 1].stop == STOP_NONE && !opens_clause(tokens, first - 1))
        return false;
    *from = to - 1;
    return first > 0;
}

bool spot_of_contrast(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    enum { BACK = 8 };
    static const char *const degrees[] = {"a",     "bit",      "very", "also", "rather",
                                          "quite", "slightly", "is",   "are"};
    static const char *const verbs[] = {"is",    "are",   "works",  "work",   "moves",    "turns",  "runs",
                                        "holds", "has",   "looks",  "goes",   "closes",   "opens",  "plays",
                                        "fits",  "folds", "slides", "lifts",  "locks",    "swings", "shuts",
                                        "rolls", "spins", "winds",  "screws", "unscrews", "comes",  "lights"};
    static const char *const others[] = {"it", "it's", "they", "they're", "there", "there's", "one", "i"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i, start;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           token_among(tokens, at - 1, degrees, COUNT(degrees)))
        at--;
    if (at == 0 || !token_is(tokens, at - 1, "but")) return false;
    for (start = at - 1; start > 0 && at - start < BACK && tokens->at[start - 1].stop < STOP_COMMA; start--) {
    }
    if (start + 1 < at && tokens->at[at - 2].stop == STOP_COMMA) // "the handle is fine, but loose"
        for (start = at - 2; start > 0 && at - start < BACK && tokens->at[start - 1].stop < STOP_COMMA;
             start--) {
        }
    if (start > 0 && tokens->at[start - 1].stop < STOP_COMMA) return false;
    while (start < at && spot_article(tokens, start)) start++;
    *from = start;
    while (start < at && r->part[start] && r->note->taken[start] != TAKEN_TYPE) start++;
    bool plain = start == *from && start + 1 < at && ANY(tokens, start + 1, "is", "are") &&
                 r->note->taken[start] != TAKEN_TYPE && !r->scope.fault[start] &&
                 !is_no_subject(tokens, start) &&
                 !ANY(tokens, start, "colors", "colours", "condition", "shape");
    if (plain) start++; // "splint is sound but dirty": a word of no list
    *to = start;
    static const char *const right[] = {"clear", "solid", "fine",  "good",     "sound",  "whole",    "ok",
                                        "okay",  "tight", "clean", "straight", "intact", "complete", "there"};
    bool bare = token_among(tokens, start, right, COUNT(right)) && start + 1 < at; // "lenses clear but dusty"
    if (*to == *from || (!bare && !token_among(tokens, start, verbs, COUNT(verbs)))) return false;
    for (; start < i; start++)
        if (token_among(tokens, start, others, COUNT(others)) || (r->part[start] && !r->scope.fault[start]))
            return false;
    return true;
}

void spot_of_relative(const struct fault_reader *r, size_t *from, size_t *to) {
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    static const char *const vague[] = {"part", "bit", "piece", "thing", "section", "panel"};
    size_t behind = *from;
    while (behind > 0 && spot_article(tokens, behind - 1)) behind--;
    for (size_t n = 0; n < WORDS_MOST && behind > 1; n++, behind--) {
        size_t noun = behind - 2;
        if (tokens->at[behind - 1].stop != STOP_NONE || (r->scope.fault[behind - 1] && !r->part[behind - 1]))
            return;
        if (!ANY(tokens, behind - 1, "that", "which")) continue;
        if (n == 0 || tokens->at[noun].stop != STOP_NONE || tokens->at[noun].kind != TOKEN_WORD ||
            r->note->taken[noun] == TAKEN_TYPE || (r->scope.fault[noun] && !r->part[noun]))
            return;
        if (token_among(tokens, noun, vague, COUNT(vague))) {
            *from = noun; // "the bit that holds the lamp"
            return;
        }
        if (!r->part[noun] && !is_noun(r->note, noun)) return;
        *from = noun;
        *to = noun + 1;
        while (*from > 0 && r->part[*from - 1] && tokens->at[*from - 1].stop == STOP_NONE) --*from;
        return;
    }
}

bool spot_opens_with_part(const struct fault_reader *r, const struct fault_hit *hit, size_t *from,
                          size_t *to) {
    static const char *const leads[] = {"the", "its", "one", "and", "but", "left", "right"};
    const struct tokens *tokens = &r->note->tokens;
    size_t start = hit->from;
    if (hit->kinds[0]->class != CLASS_FUNCTION || hit->to < hit->from + 2 || !r->part[hit->from] ||
        r->note->taken[hit->from] == TAKEN_TYPE)
        return false;
    while (start > 0 && tokens->at[start - 1].stop == STOP_NONE &&
           (token_among(tokens, start - 1, leads, COUNT(leads)) || r->part[start - 1]))
        start--;
    if (start > 0 && tokens->at[start - 1].stop == STOP_NONE) return false;
    *from = hit->from;
    while (*from > start && r->part[*from - 1]) --*from;
    for (*to = hit->from + 1; *to + 1 < hit->to && r->part[*to] && !r->scope.fault[*to];) ++*to;
    for (size_t i = *to; i + 2 < hit->to; i++) // "motor runs but governor squeals"
        if (ANY(tokens, i, "but", "and") && r->part[i + 1]) {
            *from = i + 1;
            *to = i + 2;
        }
    return true;
}

// "Somebody has glued the left side", "sun has rotted the linings": what it was done to.
bool spot_object_behind(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    static const char *const states[] = {"is", "are", "was", "were", "isn't", "aren't", "looks", "it's"};
    static const char *const articles[] = {"the", "its", "both"};
    const struct tokens *tokens = &r->note->tokens;
    static const char *const acts[] = {"ground", "cut", "bent",  "torn",  "burnt",
                                       "split",  "dug", "eaten", "bitten"};
    const char *word = tokens->at[hit->to - 1].fold;
    size_t size = strlen(word), at = hit->to + 1;
    bool act = size > 3 && text_same(word + size - 2, "ed");
    if ((!act && !token_among(tokens, hit->to - 1, acts, COUNT(acts))) ||
        !token_among(tokens, hit->to, articles, COUNT(articles)) ||
        (hit->from > 0 && token_among(tokens, hit->from - 1, states, COUNT(states))))
        return false;
    *from = at;
    while (at < tokens->count && spot_side(tokens, at) && at < hit->to + 3) at++;
    size_t first = at;
    while (at < tokens->count && r->part[at] && !r->scope.fault[at] && tokens->at[at].stop == STOP_NONE) at++;
    *to = at;
    bool ends = at >= tokens->count || tokens->at[at].stop != STOP_NONE || !r->scope.fault[at];
    return at > first && ends;
}

// "The lid is fine, the drawer comes out but it won't go back": where the clause begins that the "but" goes
// on with, if it opens on a part.
static size_t clause_of_but(const struct fault_reader *r, size_t sentence, size_t start) {
    const struct tokens *tokens = &r->note->tokens;
    if (start < sentence + 2 || !token_is(tokens, start - 1, "but")) return sentence;
    size_t at = start - 2;
    while (at > sentence && tokens->at[at - 1].stop == STOP_NONE && !token_is(tokens, at - 1, "and")) at--;
    size_t opens = at;
    while (opens < start && spot_article(tokens, opens)) opens++;
    return r->part[opens] ? at : sentence;
}

// "The chain isn't broken, it's tarnished": the part that the clause before speaks of.
bool spot_part_of_pronoun(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    enum { GAP_MOST = 6 };
    static const char *const pronouns[] = {"it", "it's", "its", "they", "they're", "that"};
    const struct tokens *tokens = &r->note->tokens;
    size_t start = i;
    while (start > 0 && tokens->at[start - 1].stop == STOP_NONE && i - start < GAP_MOST &&
           !token_is(tokens, start - 1, "and") && !token_is(tokens, start - 1, "but"))
        start--;
    while (token_is(tokens, start, "and") || token_is(tokens, start, "but")) start++;
    // "One handle is cracked and the same one turns in your hand"
    bool same = ANY(tokens, start, "the", "that") && ANY(tokens, start + 1, "same", "very") &&
                ANY(tokens, start + 2, "one", "ones");
    if (start == 0 || !(same || token_among(tokens, start, pronouns, COUNT(pronouns)))) return false;
    if (tokens->at[start - 1].stop >= STOP_SENTENCE) return false;
    size_t sentence = clause_of_but(r, scope_sentence_start(&r->scope, i), start);
    for (size_t at = sentence; at < start && at < sentence + 4; at++) {
        if (!r->part[at]) continue;
        *from = at;
        *to = at + 1;
        while (*to < start && r->part[*to]) ++*to;
        return true;
    }
    return false;
}
