// SPDX-License-Identifier: MIT
// Sentences in which somebody or something else is said to be broken, tired or lost: "she broke the record",
// "his health weakened", "the dirty old man". They hold no word for the thing, for a part of it or in its
// place, and what the fault's word is said of is a person, a thought, or something of the land and the sky.
#include <string.h>

#include "notes/any.h"
#include "notes/persons.h"
#include "notes/rest.h"
#include "notes/strangers.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool is_of_figures(const struct note *note, size_t before) {
    static const char *const ids[] = {"toys", "decor", "holiday", "paper", "games-puzzles"};
    static const char *const forms[] = {"figurine", "figure",   "figures", "statue",   "statuette",
                                        "bust",     "group",    "doll",    "puppet",   "angel",
                                        "nativity", "jug",      "soldier", "soldiers", "print",
                                        "picture",  "painting", "tapestry"};
    const struct record *record = note->record;
    for (size_t i = 0; record->family && i < COUNT(ids); i++)
        if (text_same(record->family->rule.id, ids[i])) return true;
    const char *type = record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    head = head ? head + 1 : type;
    for (size_t i = 0; head && i < COUNT(forms); i++)
        if (text_same(head, forms[i])) return !text_same(head, "jug");
    for (size_t i = 0; i < record->attribute_count; i++)
        if (text_same(record->attributes[i].name, "theme") && record->attributes[i].span.to <= before)
            return true;
    return false;
}

bool stranger_stops(const struct telling *t, size_t i) {
    return t->tokens->at[i].stop != STOP_NONE;
}

// "His neck", "my finger": of a body, where the thing has none.
bool stranger_possessed(const struct telling *t, size_t i) {
    enum { BACK = 3 };
    for (size_t n = 0; n < BACK && i > t->start && !stranger_stops(t, i - 1); n++) {
        i--;
        if (ANY(t->tokens, i, "my", "your", "our")) return true;
        if (ANY(t->tokens, i, "his", "her")) return !t->figures;
        size_t size = strlen(t->tokens->at[i].fold);
        if (size > 3 && text_same(t->tokens->at[i].fold + size - 2, "'s") && (stranger_at(t, i) & SOMEBODY))
            return true;
        if (ANY(t->tokens, i, "the", "a", "an", "its", "their", "of", "in", "on")) return false;
    }
    return false;
}

static bool is_auxiliary(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "is",     "are",   "was",   "were",   "be",       "been",  "being",  "am",     "has",   "have",
        "had",    "get",   "gets",  "got",    "did",      "do",    "does",   "would",  "could", "should",
        "will",   "can",   "must",  "may",    "might",    "just",  "never",  "almost", "once",  "often",
        "always", "soon",  "still", "again",  "also",     "even",  "too",    "so",     "very",  "quite",
        "now",    "then",  "seems", "seemed", "became",   "grew",  "felt",   "feels",  "looks", "looked",
        "keeps",  "kept",  "went",  "all",    "not",      "more",  "rather", "ever",   "both",  "half",
        "yet",    "stood", "lay",   "been",   "becoming", "turned"};
    const struct token *token = &tokens->at[i];
    size_t n = strlen(token->fold);
    return AMONG(tokens, i, words) ||
           (token->kind == TOKEN_WORD && n > 4 && text_same(token->fold + n - 2, "ly"));
}

// A word for the thing, for a part of it, or in its place.
static bool is_link(const struct telling *t, size_t i) {
    static const char *const pronouns[] = {
        "it",   "its",  "it's",   "itself",  "this",    "these",   "those",     "them",  "ones",
        "both", "each", "either", "neither", "none",    "one's",   "others",    "other", "another",
        "rest", "here", "it'll",  "it'd",    "they're", "they've", "everything"};
    static const char *const goods[] = {
        "set",     "piece",     "pieces",   "item",   "items",     "lot",        "thing",    "things",
        "package", "packet",    "wrapper",  "seal",   "unit",      "machine",    "garment",  "pair",
        "copy",    "works",     "parts",    "part",   "inside",    "outside",    "interior", "exterior",
        "surface", "finish",    "paint",    "print",  "label",     "sticker",    "cord",     "plug",
        "lead",    "mechanism", "wrapping", "carton", "packaging", "instrument", "varnish",  "glaze",
        "gilding", "plating",   "cloth",    "fabric", "material"};
    const struct tokens *tokens = t->tokens;
    if (tokens->at[i].kind == TOKEN_SIGN) return false;
    unsigned char taken = t->r->note->taken[i];
    if (taken == TAKEN_TYPE || taken == TAKEN_INCLUDES) return true;
    // "this remark", where "this" alone is the thing
    if (ANY(tokens, i, "this", "these", "those"))
        return i + 1 >= t->end || stranger_stops(t, i) || is_auxiliary(tokens, i + 1) ||
               spot_preposition(tokens, i + 1);
    if (AMONG(tokens, i, pronouns) || AMONG(tokens, i, goods)) return true;
    if (ANY(tokens, i, "one")) return !(i > 0 && ANY(tokens, i - 1, "no", "any", "some", "every"));
    return t->r->part[i] && !stranger_possessed(t, i);
}

// "Two have lost most of the print", "some are cracked": so many of the goods.
static bool counts_goods(const struct telling *t) {
    const struct tokens *tokens = t->tokens;
    if (t->start + 1 >= t->end) return false;
    bool some =
        degrees_number(tokens, t->start) > 0 ||
        ANY(tokens, t->start, "some", "most", "all", "several", "many", "few", "another", "half", "others");
    return some &&
           ANY(tokens, t->start + 1, "has", "have", "is", "are", "had", "were", "of", "with", "show", "got");
}

static bool is_linked(const struct telling *t) {
    if (counts_goods(t)) return true;
    for (size_t i = t->start; i < t->end; i++) {
        bool first = i == t->from; // the fault's own word, unless it names a part: "strap is torn"
        if (first ? t->to > i + 1 && t->r->part[i] && !stranger_possessed(t, i) : is_link(t, i)) return true;
    }
    return false;
}

// Thoughts, people and places of the word book that goods have all the same.
static bool is_of_goods(const struct telling *t, size_t i) {
    static const char *const words[] = {
        "cart",      "trolley",    "wagon",       "caddy",     "barrow",   "support",   "supports", "cloth",
        "sound",     "tone",       "color",       "colour",    "colors",   "colours",   "speed",    "signal",
        "reception", "title",      "number",      "numbers",   "date",     "name",      "names",    "writing",
        "lettering", "spelling",   "inscription", "condition", "state",    "smell",     "odor",     "odour",
        "repair",    "repairs",    "wear",        "age",       "damage",   "loss",      "losses",   "mark",
        "marks",     "spot",       "spots",       "text",      "motion",   "fit",       "size",     "shape",
        "music",     "song",       "tune",        "melody",    "alarm",    "focus",     "shine",    "luster",
        "lustre",    "sparkle",    "contrast",    "quality",   "suction",  "pressure",  "heat",     "balance",
        "alignment", "adjustment", "tension",     "history",   "edition",  "chapter",   "maker",    "use",
        "time",      "years",      "handling",    "storage",   "play",     "place",     "places",   "area",
        "areas",     "patch",      "patches",     "flowers",   "flower",   "leaf",      "leaves",   "bird",
        "birds",     "light",      "lights",      "shade",     "shades",   "table",     "chair",    "room",
        "drawing",   "poem",       "words",       "word",      "letter",   "letters",   "winder",   "runner",
        "sides",     "way",        "work",        "fade",      "stain",    "stains",    "spill",    "spills",
        "residue",   "decoration", "design",      "pattern",   "detail",   "details",   "section",  "line",
        "lines",     "gap",        "opening",     "joint",     "joints",   "fold",      "folds",    "image",
        "picture",   "pictures",   "volume",      "timing",    "bulb",     "effect",    "issue",    "issues",
        "problem",   "problems",   "fault",       "faults",    "defect",   "defects",   "flaw",     "flaws",
        "moth",      "moths",      "mouse",       "mice",      "worm",     "worms",     "beetle",   "beetles",
        "insect",    "insects",    "bug",         "bugs",      "dog",      "dogs",      "cat",      "cats",
        "rat",       "rats",       "puppy",       "rodents",   "bone",     "bones",     "reed",     "reeds",
        "note",      "notes",      "crystal",     "crystals",  "chart",    "charts",    "men",      "weights",
        "rocker",    "rockers",    "striker",     "follower",  "traveler", "traveller", "keeper",   "carrier",
        "feeder",    "sleeper",    "sleepers",    "rider",     "bump",     "bumps",     "dimple",   "dimples",
        "lump",      "lumps",      "bubble",      "bubbles",   "speck",    "specks",    "ridge",    "ridges",
        "pit",       "pits",       "blemish",     "blemishes", "streak",   "streaks",   "run",      "drip",
        "drips",     "seam",       "armour",      "armor",     "grip",     "wood",      "metal",    "plastic",
        "rubber",    "foam",       "trim",        "look",      "feel",     "low",       "high",     "medium",
        "setting",   "settings"};
    return t->r->scope.fault[i] || AMONG(t->tokens, i, words);
}

uint32_t stranger_at(const struct telling *t, size_t i) {
    struct word_entry entry;
    if (i >= t->end || t->tokens->at[i].kind != TOKEN_WORD || is_of_goods(t, i)) return 0;
    if (i > 0 && token_is(t->tokens, i, "couple") && token_is(t->tokens, i - 1, "a") &&
        ANY(t->tokens, i + 1, "have", "are", "of", "were", "look", "need", "show", "with"))
        return 0; // "a couple have gone dark": two of them
    uint32_t uses = SOMEBODY | THOUGHT | NATURE;
    if (word_at(t->r->note, i, uses, &entry) != 1) return 0;
    uses &= entry.uses;
    return t->figures ? uses & THOUGHT : uses;
}

enum who stranger_pronoun(const struct telling *t, size_t i) {
    static const char *const own[] = {"i",   "we",    "you",   "i'm",    "i've",
                                      "i'd", "we're", "we've", "you're", "you've"};
    static const char *const others[] = {"he",      "she",    "who",      "someone",   "somebody", "anyone",
                                         "anybody", "nobody", "everyone", "everybody", "he's",     "she's",
                                         "he'd",    "she'd",  "people",   "whoever"};
    if (i >= t->end) return NOBODY;
    if (AMONG(t->tokens, i, own)) return TELLER;
    if (AMONG(t->tokens, i, others)) return t->figures && ANY(t->tokens, i, "he", "she") ? NOBODY : OTHERS;
    return token_is(t->tokens, i, "they") ? MANY : NOBODY;
}

enum who stranger_person(const struct telling *t, size_t i) {
    enum who who = stranger_pronoun(t, i);
    if (who || i >= t->end) return who;
    if (stranger_at(t, i) & SOMEBODY) return OTHERS;
    return t->tokens->at[i].capital && person_first_name(t->r->note, i) ? OTHERS : NOBODY;
}

// Where the predicate begins that ends in the fault's words: behind its subject.
size_t stranger_predicate(const struct telling *t, bool *passive) {
    size_t i = t->from;
    while (i > t->start && !stranger_stops(t, i - 1) && is_auxiliary(t->tokens, i - 1)) {
        i--;
        *passive |= ANY(t->tokens, i, "is", "are", "was", "were", "am", "been", "be", "being", "got", "felt");
    }
    return i;
}

static bool has_object(const struct telling *t) {
    if (ANY(t->tokens, t->to, "a") &&
        ANY(t->tokens, t->to + 1, "bit", "little", "lot", "touch", "tad", "shade"))
        return false; // "they have faded a bit"
    size_t next = t->to + 1;
    if (ANY(t->tokens, t->to, "some") && (next >= t->end || stranger_stops(t, t->to) ||
                                          ANY(t->tokens, next, "in", "at", "on", "over", "with", "but", "and",
                                              "from", "along", "near", "around")))
        return false; // "they have yellowed some"
    return t->to < t->end && !stranger_stops(t, t->to - 1) &&
           ANY(t->tokens, t->to, "the", "a", "an", "my", "his", "her", "our", "their", "your", "some", "us",
               "me", "him", "two", "three", "many", "all", "everyone", "somebody");
}

// The teller tries, looks and lacks: that is told of the thing though nothing stands for it.
static bool is_of_teller(const struct telling *t) {
    static const char *const kinds[] = {"untested",
                                        "working-tested",
                                        "powers-on-only",
                                        "completeness-unknown",
                                        "inside-not-inspected",
                                        "authenticity-unverified",
                                        "timekeeping-unverified",
                                        "impact-history-unknown",
                                        "complete-counted"};
    for (size_t i = 0; i < COUNT(kinds); i++)
        if (text_same(t->kind->rule.id, kinds[i])) return true;
    return ANY(t->tokens, t->from, "missing", "short", "lacking", "without", "lack", "need", "needs", "no");
}

// "She broke the record", "he was tired", "the teacher ripped it up and lost the match".
static bool is_of_person(const struct telling *t) {
    bool passive = false;
    size_t at = stranger_predicate(t, &passive);
    if (at == t->start || stranger_stops(t, at - 1)) return false;
    enum who who = stranger_person(t, at - 1);
    passive |= ANY(t->tokens, at - 1, "i'm", "we're", "you're", "he's", "she's");
    if (!who && ANY(t->tokens, at - 1, "and", "but", "then", "or", "who", "that")) {
        who = stranger_person(t, t->start);
        if (!who && ANY(t->tokens, t->start, "the", "a", "an", "my", "his", "her", "our", "their"))
            who = stranger_person(t, t->start + 1) ? stranger_person(t, t->start + 1)
                                                   : stranger_person(t, t->start + 2);
        passive = false;
    }
    if (who && text_same(t->kind->rule.id, "complete-counted")) return false;
    bool written = text_same(t->kind->rule.id, "writing-inside") || text_same(t->kind->rule.id, "owner-name");
    if (who == OTHERS && (written ? !has_object(t) : t->figures && has_object(t)))
        return false; // "someone has underlined in pencil", "someone has overpainted the sky"
    if (who == OTHERS) return true;
    if (who == MANY) return !passive && has_object(t);
    if (who == TELLER) return !is_of_teller(t) && (passive || has_object(t));
    return false;
}

// "He had a nasty spill", "the boy got a splinter": the sentence tells of somebody, and not of what he did to
// the thing, or found on it.
static bool is_had_by_person(const struct telling *t) {
    static const char *const had[] = {"had",    "has",    "got",    "gets",  "gave",    "took",  "suffered",
                                      "felt",   "heard",  "took",   "made",  "limited", "wears", "keeps",
                                      "enjoys", "needs",  "wanted", "wants", "likes",   "spoke", "lost",
                                      "wept",   "played", "won",    "sat",   "stood",   "lay",   "walked",
                                      "ran",    "went",   "came",   "was"};
    enum { FAR = 5 };
    size_t i = t->start;
    while (i < t->from && i < t->start + FAR && stranger_person(t, i) != OTHERS) i++;
    bool passive = false;
    if (i >= t->from || stranger_person(t, i) != OTHERS || stranger_predicate(t, &passive) == i + 1)
        return false;
    for (i++; i < t->from && i < t->start + FAR + 3; i++)
        if (AMONG(t->tokens, i, had)) return !(ANY(t->tokens, i, "made") && t->kind->class != CLASS_STATUS);
    return false;
}

// Is the noun at `head` the subject of its clause: "the flat plain", "the body of the car", "prices"?
static bool opens_clause(const struct telling *t, size_t head) {
    static const char *const articles[] = {"the",  "a",    "an",   "his",   "her",   "my",  "our", "their",
                                           "your", "this", "that", "these", "those", "all", "no",  "such"};
    static const char *const leads[] = {"and",     "but",   "that",   "when",   "as",   "while",
                                        "because", "if",    "after",  "before", "so",   "until",
                                        "where",   "which", "though", "since",  "once", "whether",
                                        "how",     "why",   "then",   "or",     "than"};
    enum { FAR = 4 };
    size_t at = head;
    for (size_t n = 0; n < FAR && at > t->start && !stranger_stops(t, at - 1); n++) {
        if (AMONG(t->tokens, at, articles)) break;
        if (is_auxiliary(t->tokens, at) || t->tokens->at[at].kind != TOKEN_WORD) return false;
        at--;
    }
    bool plural = t->tokens->at[head].one != t->tokens->at[head].fold;
    bool opens = at == t->start || stranger_stops(t, at - 1) || AMONG(t->tokens, at - 1, leads);
    if (AMONG(t->tokens, at, articles))
        return opens || (token_is(t->tokens, at - 1, "of") && at > t->start + 1 && opens_clause(t, at - 2));
    return opens && at == head && (plural || stranger_at(t, head) & THOUGHT);
}

// "His resistance was broken", "the clouds broke", "our basement flooded".
static bool is_of_stranger_subject(const struct telling *t) {
    bool passive = false;
    size_t at = stranger_predicate(t, &passive);
    if (at == t->start || stranger_stops(t, at - 1)) return false;
    size_t head = at - 1;
    if (t->tokens->at[head].kind != TOKEN_WORD || stranger_pronoun(t, head) || is_of_goods(t, head) ||
        !opens_clause(t, head))
        return false;
    if (stranger_possessed(t, head)) return true;
    uint32_t what = stranger_at(t, head);
    if (t->kind->class == CLASS_FUNCTION || is_of_teller(t)) what &= ~(uint32_t)THOUGHT;
    if (t->kind->class == CLASS_REPAIR) what &= ~(uint32_t)NATURE; // "the sky is retouched"
    return what != 0;
}

static bool is_of_looks(const struct telling *t) {
    static const char *const looks[] = {
        "broken",   "torn",       "bent",      "worn",          "burnt",     "stuck",    "lost",
        "missing",  "dead",       "stiff",     "loose",         "stale",     "dull",     "bald",
        "partial",  "incomplete", "defective", "shot",          "split",     "frozen",   "rotten",
        "swollen",  "stretched",  "slow",      "dim",           "fragile",   "sunken",   "musty",
        "damp",     "immovable",  "reluctant", "temperamental", "makeshift", "modified", "defunct",
        "lifeless", "brown",      "jagged",    "misshapen",     "tired",     "slit"};
    size_t last = t->to - 1, n = strlen(t->tokens->at[last].fold);
    const char *end = t->tokens->at[last].fold + n;
    if (t->tokens->at[last].kind != TOKEN_WORD) return false;
    return AMONG(t->tokens, last, looks) ||
           (n > 4 && (text_same(end - 2, "ed") || text_same(end - 1, "y") || text_same(end - 3, "ing")));
}

// "Broken promises", "a dirty old man", "my torn coat".
static bool is_before_stranger(const struct telling *t) {
    if (t->to >= t->end || stranger_stops(t, t->to - 1) || stranger_stops(t, t->to) || !is_of_looks(t))
        return false;
    size_t at = t->to;
    if (t->tokens->at[at].kind != TOKEN_WORD || is_auxiliary(t->tokens, at) ||
        spot_preposition(t->tokens, at))
        return false;
    bool own = t->from > t->start && ANY(t->tokens, t->from - 1, "my", "your", "our", "his", "her") &&
               !(t->figures && ANY(t->tokens, t->from - 1, "his", "her"));
    if (own && !is_of_goods(t, at)) return true;
    uint32_t what = stranger_at(t, at);
    size_t next = at + 1;
    bool more = next < t->end && t->tokens->at[next].kind == TOKEN_WORD && !is_auxiliary(t->tokens, next) &&
                !spot_preposition(t->tokens, next) && strlen(t->tokens->at[next].fold) > 2;
    struct word_entry entry;
    if (more && stranger_at(t, next) && !ANY(t->tokens, at, "and", "or", "the", "with")) return true;
    if (more && word_at(t->r->note, next, 1u << USE_NAMER | 1u << USE_PART, &entry) == 1) return false;
    return what != 0;
}

// "A flood of requests", "a splash of color".
static bool is_of_thought(const struct telling *t) {
    if (t->kind->class == CLASS_ODOR || t->to + 1 >= t->end || stranger_stops(t, t->to - 1) ||
        !token_is(t->tokens, t->to, "of"))
        return false;
    size_t at = t->to + 1;
    if (ANY(t->tokens, at, "the", "a", "an", "his", "her", "their", "our", "my", "your")) at++;
    uint32_t what = stranger_at(t, at);
    if (!what && at + 1 < t->end && !stranger_stops(t, at) && t->tokens->at[at].kind == TOKEN_WORD &&
        !spot_preposition(t->tokens, at + 1))
        what = stranger_at(t, at + 1) & ~(uint32_t)NATURE;
    return what & (SOMEBODY | THOUGHT);
}

// "You can break a tooth", "to break the bank": what may be done, and not what is.
static bool is_only_possible(const struct telling *t) {
    static const char *const bases[] = {
        "break",    "tear", "wear",  "crack",  "chip",  "stain", "burn",    "scratch",
        "dent",     "bend", "fade",  "rust",   "rip",   "split", "snag",    "shrink",
        "crease",   "mark", "smear", "spill",  "flood", "warp",  "wrinkle", "repair",
        "splinter", "peel", "stick", "scrape", "mend",  "patch", "speak",   "work"};
    static const char *const might[] = {"can",  "could", "would", "may",   "might",
                                        "must", "let's", "shall", "should"};
    static const char *const begun[] = {"starting", "started",   "start",  "starts", "beginning", "begun",
                                        "began",    "begins",    "going",  "about",  "tends",     "tend",
                                        "prone",    "apt",       "liable", "likely", "seems",     "seem",
                                        "appears",  "continues", "used",   "needs",  "need",      "wants",
                                        "due",      "ready",     "has",    "have"};
    if (t->to != t->from + 1 || !AMONG(t->tokens, t->from, bases) || t->from < t->start + 1 ||
        stranger_stops(t, t->from - 1))
        return false;
    size_t at = t->from;
    while (at > t->start + 1 && !stranger_stops(t, at - 1) &&
           ANY(t->tokens, at - 1, "easily", "either", "even", "not", "i", "you", "we"))
        at--;
    if (AMONG(t->tokens, at - 1, might)) return true;
    return token_is(t->tokens, at - 1, "to") && at > t->start + 1 && !AMONG(t->tokens, at - 2, begun);
}

static bool is_of_stranger(const struct fault_reader *r, const struct flaw *kind, size_t from, size_t to) {
    struct note *note = r->note;
    if (!note->book || !note->record->type.value || from >= to || to > note->tokens.count || !r->part)
        return false;
    struct telling t = {r, &note->tokens, kind, 0, 0, from, to, false};
    t.start = scope_sentence_start(&r->scope, from);
    t.end = scope_sentence_end(&r->scope, to - 1);
    t.figures = is_of_figures(note, note->tokens.at[t.start].from);
    if (t.start == 0) return false;
    if (stranger_is_told_to(&t)) return true;
    bool spilt =
        to > from + 1 && ANY(t.tokens, from, "spilled", "spilt") && text_same(kind->rule.id, "stain");
    if (spilt || is_linked(&t)) return false; // "a guest spilled wine"
    if (kind->class == CLASS_ODOR || text_same(kind->rule.id, "pet-hair")) return is_of_stranger_subject(&t);
    return is_of_person(&t) || is_had_by_person(&t) || is_of_stranger_subject(&t) || is_before_stranger(&t) ||
           is_of_thought(&t) || is_only_possible(&t) || stranger_is_weak(&t);
}

struct item_flaw *fault_of_stranger(struct fault_reader *r, const struct flaw *kind, size_t from, size_t to) {
    struct note *note = r->note;
    bool idle = from < to && fault_is_told_idly(r, kind, from, to);
    if (!idle && !is_of_stranger(r, kind, from, to)) return NULL;
    note_reading(note, from, to, arena_format(note->arena, "no flaw: %s", kind->print), "not taken");
    if (note->reading_count)
        note->readings[note->reading_count - 1].stopped =
            idle ? "as it should, or told" : "of somebody or something else";
    note_take(note, from, to, TAKEN_SCOPE);
    struct item_flaw *apart = arena_alloc(note->arena, sizeof *apart);
    *apart = (struct item_flaw){.kind = kind, .span = note_span_of(note, from, to)};
    return apart;
}
