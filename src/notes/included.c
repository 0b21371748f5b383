// SPDX-License-Identifier: MIT
// What comes with the thing: "comes with the manual and two keys", "in its original box", "box included". A
// part that simply is there ("with a lid") is no extra.
#include <stdlib.h>
#include <string.h>

#include "notes/any.h"
#include "notes/standing.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const cues[] = {"comes with",
                                   "come with",
                                   "came with",
                                   "comes w/",
                                   "come w/",
                                   "comes w",
                                   "complete with",
                                   "includes",
                                   "include",
                                   "including",
                                   "included is",
                                   "together with",
                                   "along with",
                                   "goes with it is a",
                                   "goes with it is an",
                                   "goes with it is the",
                                   "also has the original",
                                   "has the original",
                                   "have the original",
                                   "in the original",
                                   "in its original",
                                   "with the original",
                                   "with its original",
                                   "still has its original",
                                   "still in its",
                                   "still in the"};

static bool ends(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    static const char *const words[] = {"but",      "that",    "which",   "is",   "are",     "has",
                                        "from",     "so",      "not",     "no",   "without", "though",
                                        "although", "however", "because", "where"};
    if (tokens->at[i].stop >= STOP_CLAUSE || note->fault_word[i] || note->taken[i] != TAKEN_NOT) return true;
    return token_among(tokens, i, words, COUNT(words));
}

static int number_of(const struct token *t) {
    static const char *const names[] = {"",      "one",   "two",  "three", "four",   "five",  "six",
                                        "seven", "eight", "nine", "ten",   "eleven", "twelve"};
    for (int k = 1; k <= 12; k++)
        if (text_same(t->fold, names[k])) return k;
    return t->kind == TOKEN_FIGURE && strlen(t->fold) < 4 ? (int)strtol(t->fold, NULL, 10) : 0;
}

static bool is_article(const struct token *t) {
    return text_same(t->fold, "a") || text_same(t->fold, "an") || text_same(t->fold, "the") ||
           text_same(t->fold, "its") || text_same(t->fold, "original") || text_same(t->fold, "some");
}

// "… and no, those are not included": said behind, in the same sentence or the next, of what was named.
static bool is_kept_back(const struct note *note, size_t i) {
    static const char *const said[] = {
        "not included",      "aren't included", "isn't included",  "not part of",       "not for sale",
        "don't come with",   "don't go with",   "doesn't go with", "doesn't come with", "not coming with",
        "not going with",    "stay here",       "stays here",      "are staying",       "is staying",
        "stay with",         "stays with",      "which i kept",    "which we kept",     "which i sold",
        "which i gave",      "which i lost",    "which are gone",  "i kept those",      "i kept them",
        "we kept those",     "we kept them",    "i sold those",    "i sold them",       "i gave those",
        "i'm keeping those", "that we burned",  "that we sold",    "that we kept",      "that i kept",
        "that i sold",       "that we threw",   "that we gave"};
    const struct tokens *tokens = &note->tokens;
    size_t to = note_clause_to(note, i, STOP_SENTENCE);
    if (ANY(tokens, to + 1, "those", "these", "they", "that", "it", "the", "no"))
        to = note_clause_to(note, to + 1, STOP_SENTENCE);
    for (; i < to; i++)
        if (token_longest(tokens, i, said, COUNT(said))) return true;
    return false;
}

static void add(struct note *note, size_t from, size_t to, int count) {
    if (is_kept_back(note, from) || ANY(&note->tokens, from, "both", "all", "neither", "everything")) return;
    while (from < to && is_article(&note->tokens.at[from])) from++;
    if (from == to ||
        (to == from + 1 && ANY(&note->tokens, from, "bottom", "top", "back", "front", "inside", "middle")))
        return;
    struct item_included *included = note_included(note);
    const char *what = note_words(note, from, to);
    included->what = arena_string(note->arena, count > 1 ? say_singular(note->arena, what) : what);
    included->count = count;
    note_take(note, from, to, TAKEN_INCLUDES);
    note_reading(note, from, to, arena_format(note->arena, "included %s", included->what), "comes with it");
}

// "Including down the sides": no thing follows.
static bool is_way(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"down", "in",     "on",     "at",      "under",    "inside",
                                        "up",   "where",  "when",   "postage", "shipping", "me",
                                        "my",   "around", "behind", "over"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool holds_noun(const struct note *note, size_t from, size_t to) {
    struct noun_found noun;
    struct word_entry entry;
    for (size_t i = from; i < to; i++)
        if (noun_at(note, i, &noun) || word_at(note, i, 1u << USE_PART, &entry)) return true;
    return false;
}

// "It took up the closet along with his skis", "we kept it along with a doll": what stood beside it once.
// Its own case and box belong to it all the same.
static bool is_story(const struct note *note, size_t i) {
    if (ANY(&note->tokens, i, "came", "come") &&
        ANY(&note->tokens, i + 1, "with")) { // "came with a desk we bought"
        enum { FAR = 6 };
        size_t at = i + 2;
        while (at < note->tokens.count && at < i + FAR && note->tokens.at[at - 1].stop == STOP_NONE &&
               !ANY(&note->tokens, at, "i", "we", "he", "she", "they", "my", "mom", "dad"))
            at++;
        if (at < i + FAR && note->tokens.at[at - 1].stop == STOP_NONE &&
            ANY(&note->tokens, at + 1, "bought", "got", "had", "won", "picked", "inherited", "purchased",
                "found"))
            return true;
    }
    enum { AHEAD = 8 };
    for (size_t k = i + 1; token_is(&note->tokens, i, "came") && k + 1 < note->tokens.count &&
                           k < i + AHEAD && note->tokens.at[k].stop < STOP_COMMA;
         k++) // "they came with a sideboard we bought", "it came with the house"
        if ((ANY(&note->tokens, k, "we", "i", "he", "she", "they", "mom", "dad") &&
             ANY(&note->tokens, k + 1, "bought", "got", "inherited", "had", "purchased", "picked", "won",
                 "found", "took", "sold", "cleared")) ||
            (ANY(&note->tokens, k, "the", "a", "an", "our", "my", "this") &&
             ANY(&note->tokens, k + 1, "house", "farm", "place", "apartment", "sideboard", "estate", "boat",
                 "barn", "cottage", "cabin", "job", "trailer", "camper", "dresser", "property", "dining",
                 "piano", "bed", "bedroom", "truck", "stove", "wardrobe", "furniture", "office", "shop")))
            return true;
    for (size_t k = note_clause_from(note, i, STOP_CLAUSE); k + 1 < i;
         k++) // "the last buyer came with a van"
        if (ANY(&note->tokens, k, "last", "previous", "other", "next") &&
            ANY(&note->tokens, k + 1, "pair", "one", "ones", "buyer", "buyers", "people", "man", "couple",
                "customer", "lot", "fellow", "lady", "chap", "owner"))
            return true;
    bool told = ANY(&note->tokens, i, "including"); // "she made all of them on it, including the cabin's"
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < i; k++)
        if (ANY(&note->tokens, k, "sell", "selling", "sold", "have", "got", "giving", "offering", "include"))
            told = false;
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); told && k < i; k++)
        if (note->taken[k] == TAKEN_ASIDE || ANY(&note->tokens, k, "i", "we", "he", "she", "they"))
            return true;
    // "From the shed of my late neighbor, along with nine pots"
    size_t first = note_clause_from(note, i, STOP_SENTENCE);
    for (size_t k = first;
         ANY(&note->tokens, i, "along") && ANY(&note->tokens, first, "from", "out") && k < i; k++)
        if (ANY(&note->tokens, k, "neighbor", "neighbour", "estate", "house", "shed", "late", "aunt", "uncle",
                "grandmother", "grandfather", "widow", "cousin"))
            return true;
    if (!ANY(&note->tokens, i, "along", "together") ||
        ANY(&note->tokens, i + 2, "its", "it's", "their", "the", "all", "both", "matching", "original"))
        return false;
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < i; k++)
        if (ANY(&note->tokens, k, "took", "takes", "shared", "sat", "stood", "lay", "lived", "kept", "stored",
                "found", "hung", "bought", "got", "came", "inherited", "went", "traveled", "travelled",
                "used", "we", "he", "she", "they"))
            return true;
    return false;
}

static void read_list(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    static const char *const vague[] = {"it", "them", "this", "that", "these", "those"};
    if (is_way(tokens, i) || token_among(tokens, i, vague, COUNT(vague))) return;
    if (ANY(tokens, i, "the", "some") && ANY(tokens, i + 1, "ones", "one", "rest", "others", "time", "times"))
        return; // "including the ones in the attic"
    while (i < tokens->count && !ends(note, i)) {
        int count = 0;
        size_t from = i;
        while (i < tokens->count && !ends(note, i) && tokens->at[i].stop != STOP_COMMA &&
               !token_is(tokens, i, "and") && !token_is(tokens, i, "plus") && !token_is(tokens, i, "&")) {
            int n = number_of(&tokens->at[i]);
            if (n && i == from) {
                count = n;
                from++;
            }
            i++;
        }
        bool listed =
            from > 0 && i > from && !holds_noun(note, from, i) && tokens->at[from - 1].stop == STOP_COMMA;
        if (listed) return; // "complete with rails, full"
        if (i > from && i - from <= 5) add(note, from, i, count);
        if (i < tokens->count && !ends(note, i)) i++;
    }
}

static bool is_extra(const struct note *note, size_t i) { // goods of their own, no part and no picture
    static const uint32_t other = (1u << USE_PART) | (1u << USE_THEME) | (1u << USE_PATTERN);
    static const char *const fixed[] = {
        "drawers", "doors",   "cupboards",    "shelves",  "pockets", "panes",  "sides", "legs",
        "wheels",  "handles", "compartments", "sections", "windows", "panels", "hooks", "feet",
        "arms",    "burners", "rings",        "bells",    "speeds",  "trays"};
    struct noun_found noun;
    if (!noun_at(note, i, &noun) || token_among(&note->tokens, noun.to - 1, fixed, COUNT(fixed)))
        return false;
    return noun.thing && !noun.part && !noun.gated && !(noun.uses & other);
}

// "Tablecloth with 6 napkins", "plus 2 chairs", "brace and 6 bits": counted goods beside the thing.
static void read_beside(struct note *note, size_t i) {
    static const char *const joints[] = {"with", "w/", "plus", "and", "&", "+"};
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || !token_among(tokens, i, joints, COUNT(joints)) || i + 2 >= tokens->count) return;
    int count = number_of(&tokens->at[i + 1]);
    if (count < 2 || note->taken[i + 1] != TAKEN_NOT) return;
    for (size_t at = i + 2;
         at < i + 5 && at < tokens->count && !ends(note, at) && tokens->at[at].kind == TOKEN_WORD; at++) {
        struct noun_found noun;
        if (ANY(tokens, at, "keys") && at == i + 2 && note_free(note, at, at + 1) &&
            (at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE ||
             ANY(tokens, at + 1, "and", "but"))) {
            add(note, at, at + 1, count); // "trunk with 2 keys"
            note_take(note, i + 1, i + 2, TAKEN_INCLUDES);
            return;
        }
        if (!is_extra(note, at)) continue;
        noun_at(note, at, &noun);
        bool many = tokens->at[noun.to - 1].one != tokens->at[noun.to - 1].fold;
        if (many && note_free(note, i + 2, noun.to)) add(note, i + 2, noun.to, count);
        if (many) note_take(note, i + 1, i + 2, TAKEN_INCLUDES);
        return;
    }
}

static size_t skip_articles(const struct tokens *tokens, size_t i) {
    while (ANY(tokens, i, "a", "an", "the", "its", "original", "old", "maker's", "makers", "it's")) i++;
    return i;
}

// What has a case for a body: "clock in an oak case".
static bool is_cased(const struct note *note) {
    const struct family *family = note->record->family;
    const char *type = note->record->type.value;
    static const char *const bodies[] = {"thermometer", "barometer", "radio",     "gramophone", "compass",
                                         "meter",       "gauge",     "barograph", "watch",      "clock",
                                         "scale",       "balance",   "organ",     "piano",      "camera",
                                         "telephone",   "switch",    "detector"};
    if (family && text_same(family->rule.id, "clocks-watches")) return true;
    for (size_t i = 0; type && i < COUNT(bodies); i++)
        if (strstr(type, bodies[i]) && !strstr(type, "mouth")) return true;
    return false;
}

static bool is_carried(const struct tokens *tokens, size_t from, size_t to) {
    if (from > 0 && ANY(tokens, from - 1, "original", "maker's", "makers")) return true;
    for (size_t i = from; i < to; i++)
        if (ANY(tokens, i, "leather", "fitted", "carry", "carrying", "travel", "travelling", "canvas",
                "presentation", "leatherette", "velvet", "outer", "card", "cardboard"))
            return true;
    return false;
}

// "In its fitted case", "comes in a leather pouch": what the thing lies in, unless that is the thing itself.
static void read_holder(struct note *note, size_t i) {
    enum { WORDS_MOST = 4 };
    static const char *const holders[] = {"case",    "box",    "bag",      "pouch", "sleeve",
                                          "sheath",  "wallet", "slipcase", "roll",  "scabbard",
                                          "holster", "folder", "chest"};
    static const char *const led[] = {"comes", "come",  "housed", "kept", "all",
                                      "still", "cased", "lives",  "sits"};
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    bool bare = i > 0 && (tokens->at[i - 1].stop != STOP_NONE || note->taken[i - 1] == TAKEN_TYPE) &&
                word_at(note, i + 1, 1u << USE_MATERIAL, &entry);
    if (!bare && !ANY(tokens, i + 1, "a", "an", "its", "original", "it's")) return; // "In cloth bag."
    bool opens = i > 0 && (tokens->at[i - 1].stop != STOP_NONE || note->taken[i - 1] == TAKEN_TYPE ||
                           token_among(tokens, i - 1, led, COUNT(led)));
    size_t from = skip_articles(tokens, i + 1), to = from;
    while (opens && to < tokens->count && to < from + WORDS_MOST && tokens->at[to].stop == STOP_NONE &&
           note->taken[to] == TAKEN_NOT && !note->fault_word[to]) {
        if (token_among(tokens, to, holders, COUNT(holders))) {
            if (is_cased(note) && !token_is(tokens, to, "bag") && !is_carried(tokens, from, to)) return;
            bool over = to + 1 >= tokens->count || tokens->at[to + 1].stop != STOP_NONE ||
                        ANY(tokens, to + 1, "with", "w/", "and", "but", "which", "that", "lined", "no",
                            "marked", "that's", "stitched", "has", "is", "missing");
            if (over) add(note, from, to + 1, 0);
            if (over) note_take(note, from, to, TAKEN_NOT); // what the case is of is read as of any part
            return;
        }
        to++;
    }
}

// "With its key", "and a spare wick", "has the manual": what is loose by its nature.
static void read_loose(struct note *note, size_t i) {
    static const char *const loose[] = {"key",       "keys",        "manual",   "instructions", "booklet",
                                        "receipt",   "certificate", "papers",   "paperwork",    "charger",
                                        "dustcover", "leaflet",     "handbook", "winder",       "instruction",
                                        "case",      "box"};
    const struct tokens *tokens = &note->tokens;
    size_t from = skip_articles(tokens, i + 1), to = from;
    bool joined = ANY(tokens, i, "and", "plus"); // "pendulum missing, and the key"
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < i; k++)
        if (ANY(tokens, k, "missing", "lost", "gone", "without", "no", "used", "lacks", "needs", "minus",
                "not", "wants", "lacking", "had", "none", "neither"))
            return;
    if (joined && !ANY(tokens, from, "spare", "extra")) return;
    if (ANY(tokens, from, "spare", "extra") && from + 1 < tokens->count) {
        to = from + 2;
        if (to < tokens->count && tokens->at[to - 1].stop == STOP_NONE && holds_noun(note, to, to + 1) &&
            note->taken[to] == TAKEN_NOT && !note->fault_word[to])
            to++;
        if (!holds_noun(note, from + 1, to)) return;
    } else if (token_among(tokens, from, loose, COUNT(loose)))
        to = from + 1;
    else if (ANY(tokens, from, "winding", "crank", "operating", "owner's", "owners", "user", "leather",
                 "fitted", "carrying", "instruction") &&
             token_among(tokens, from + 1, loose, COUNT(loose)))
        to = from + 2;
    bool over = to > from && (to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                              ANY(tokens, to, "with", "and", "but", "in", "for", "too", "present"));
    if (!over || !note_free(note, from, to)) return;
    for (size_t k = from; k < to; k++)
        if (note->fault_word[k] || tokens->at[k].stop != STOP_NONE) return;
    add(note, from, to, 0);
}

// "Pendulum and key with it", "chimney, globe and spare wick included": those of the list before the last.
static void read_list_before(struct note *note, size_t last) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    bool joined = last > 1 && ANY(tokens, last - 1, "and", "&", "plus");
    while (joined) {
        size_t to = last - 1, from = to;
        while (from > 0 && to - from < WORDS_MOST && tokens->at[from - 1].stop == STOP_NONE &&
               tokens->at[from - 1].kind == TOKEN_WORD && note->taken[from - 1] == TAKEN_NOT &&
               !note->fault_word[from - 1] && !ANY(tokens, from - 1, "and", "&", "with", "no", "not", "of"))
            from--;
        bool opens = from == 0 || tokens->at[from - 1].stop >= STOP_COMMA || tokens->at[from].starts;
        if (from == to || !opens || !holds_noun(note, to - 1, to)) return;
        int count = number_of(&tokens->at[from]);
        add(note, from + (count > 0), to, count > 1 ? count : 0);
        bool listed = from > 1 && tokens->at[from - 1].stop == STOP_COMMA;
        size_t start = note_clause_from(note, from, STOP_SENTENCE);
        for (size_t k = start; k < from; k++) // "lens cracked, strap and case with it"
            listed &= start > 0 && note->taken[k] == TAKEN_NOT && !note->fault_word[k];
        joined = listed;
        last = from;
    }
}

// "Pressed two shirts with it", "I cut planks with it": what was done, and nothing that comes along.
static bool is_deed(const struct tokens *tokens, size_t from, size_t to) {
    for (size_t k = from; k < to; k++) {
        if (ANY(tokens, k, "i", "we", "you", "he", "she", "they", "my", "our", "i've", "we've")) return true;
        bool counted = ANY(tokens, k, "a", "an", "the", "some") || number_of(&tokens->at[k]) > 0;
        if (k > from && counted && !token_is(tokens, k - 1, "of")) return true;
    }
    return false;
}

// "A spare wick with it": what goes with the thing, told by its last words.
static void read_with_it(struct note *note, size_t i) {
    enum { BACK = 6 };
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i + 1, "it", "them") ||
        !(standing_is_stop(note, i + 2) || token_is(tokens, i + 2, "(") || token_is(tokens, i + 2, "too")))
        return;
    if (i > 0 && ANY(tokens, i - 1, "goes", "go", "comes", "come")) i--; // "four weights go with it"
    size_t from = i;
    while (from > 0 && i - from < BACK && tokens->at[from - 1].stop == STOP_NONE &&
           note->taken[from - 1] == TAKEN_NOT && !note->fault_word[from - 1] &&
           tokens->at[from - 1].kind != TOKEN_SIGN &&
           !ANY(tokens, from - 1, "there's", "theres", "is", "are", "and", "plus", "has", "have", "got",
                "also", "wrong", "done", "comes", "goes", "went"))
        from--;
    if (ANY(tokens, from, "no", "not", "nothing", "none", "any", "never", "what", "something", "anything"))
        return;
    for (size_t k = note_clause_from(note, from, STOP_CLAUSE); k < from;
         k++) // "neither has a chimney with it"
        if (ANY(tokens, k, "neither", "none", "nor")) return;
    bool led = from == 0 || tokens->at[from - 1].stop != STOP_NONE ||
               ANY(tokens, from - 1, "there's", "theres", "is", "are", "and", "plus", "got", "also", "has");
    if (from > 0 && note->taken[from - 1] == TAKEN_COUNT && tokens->at[from - 1].stop == STOP_NONE) {
        led = true; // "two spoons come with them"
        from--;
    }
    int count = from < i ? number_of(&tokens->at[from]) : 0;
    if (count) from++;
    if (!led || from >= i || !holds_noun(note, i - 1, i) || is_deed(tokens, from, i)) return;
    size_t first = from - (count > 0);
    add(note, from, i, count > 1 ? count : 0);
    read_list_before(note, first);
}

// "Doesn't include the lid".
static bool is_denied(const struct tokens *tokens, size_t i) {
    static const char *const nots[] = {"doesn't", "not",    "don't", "didn't",
                                       "won't",   "doesnt", "dont",  "never"};
    return token_among(tokens, i, nots, COUNT(nots));
}

// "Came with a grate, there isn't one now".
static bool is_past(const struct tokens *tokens, size_t i) {
    static const char *const gone[] = {
        "there isn't one", "there's none",     "there is none",    "long gone",     "but it's gone",
        "but it's lost",   "but it's missing", "now gone",         "but not now",   "not any more",
        "hasn't got one",  "but i can't find", "but i don't have", "but i've lost", "but that's gone",
        "since lost",      "now lost",         "no longer"};
    if (!token_is(tokens, i, "came") && !token_is(tokens, i, "come")) return false;
    for (size_t at = i; at < tokens->count && tokens->at[at].stop < STOP_SENTENCE; at++)
        if (token_longest(tokens, at, gone, COUNT(gone))) return true;
    return false;
}

void read_included(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        bool may = token_may_open(tokens, i, (const void *)cues, COUNT(cues), sizeof *cues);
        for (size_t k = 0; may && k < COUNT(cues); k++) {
            size_t n = token_phrase(tokens, i, cues[k]);
            if (!n || (i > 0 && is_denied(tokens, i - 1)) || is_past(tokens, i) || is_story(note, i))
                continue;
            note_take(note, i, i + n, TAKEN_SCOPE);
            read_list(note, i + n);
            i += n - 1;
            break;
        }
        if (i > 0 && ANY(tokens, i, "with") && ANY(tokens, i - 1, "along", "together") &&
            is_story(note, i - 1))
            continue;
        if (i > 2 && ANY(tokens, i, "with") && ANY(tokens, i - 1, "them", "it", "these") &&
            ANY(tokens, i - 2, "got", "bought", "had", "took", "inherited", "won") &&
            ANY(tokens, i - 3, "i", "we", "he", "she", "they"))
            continue; // "I got them with two suits from his widow"
        read_beside(note, i);
        if (note->taken[i] == TAKEN_NOT && ANY(tokens, i, "in")) read_holder(note, i);
        if (note->taken[i] == TAKEN_NOT && ANY(tokens, i, "with", "w/", "has", "and", "plus"))
            read_loose(note, i);
        if (note->taken[i] == TAKEN_NOT && ANY(tokens, i, "with")) read_with_it(note, i);
        if (token_is(tokens, i, "included") && i > 0 && !token_is(tokens, i - 1, "not") &&
            note->taken[i - 1] == TAKEN_NOT) {
            size_t from = i;
            if (from > 0 && token_is(tokens, from - 1, "is")) from--;
            struct word_entry entry;
            struct noun_found noun;
            bool none =
                from > 1 && (token_is(tokens, from - 2, "no") || token_is(tokens, from - 2, "without"));
            if (from > 0 && !none &&
                (word_at(note, from - 1, 1u << USE_PART, &entry) || noun_at(note, from - 1, &noun))) {
                size_t to = from--;
                if (from > 0 && ANY(tokens, from - 1, "spare", "extra", "original", "matching")) from--;
                add(note, from, to, 0);
                read_list_before(note, from);
            }
        }
    }
}
