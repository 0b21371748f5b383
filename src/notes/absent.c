// SPDX-License-Identifier: MIT
// Parts that are missing, said of any part: "no handle", "knob is gone", "missing two screws", "without its
// cord". "No lid chips" is no missing lid: the fault behind the part is what is denied.
#include <string.h>

#include "notes/faults.h"
#include "notes/any.h"
#include "notes/lacking.h"
#include "notes/lost_ways.h"
#include "notes/measures.h"
#include "notes/place.h"
#include "notes/stuff.h"
#include "notes/things.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool same_noun(struct arena *arena, const char *a, const char *b) {
    return *a == *b && text_same(say_singular(arena, a), say_singular(arena, b));
}

static bool is_place_only(const char *word) {
    static const char *const words[] = {
        "inside", "outside",   "bottom", "top",    "back",    "front",    "side",     "sides",
        "rim",    "edge",      "edges",  "corner", "corners", "middle",   "center",   "end",
        "ends",   "surface",   "seam",   "fold",   "finish",  "interior", "exterior", "base",
        "face",   "underside", "lip",    "tip",    "body",    "head",     "trim",     "glass"};
    for (size_t i = 0; i < COUNT(words); i++)
        if (text_same(word, words[i])) return true;
    return false;
}

// "Lost some of its pile", "lost four seconds a day": no part, whatever says that it is less.
static bool is_quality(const char *word) {
    static const char *const words[] = {
        "pile",      "nap",      "color",    "colour",      "shape",     "sheen",       "shine",
        "fluff",     "height",   "length",   "second",      "minute",    "hour",        "time",
        "bounce",    "stretch",  "gilding",  "paint",       "stiffness", "crispness",   "volume",
        "power",     "pressure", "air",      "water",       "oil",       "gas",         "sparkle",
        "charge",    "tension",  "grip",     "luster",      "lustre",    "bidding",     "thing",
        "photo",     "receipt",  "crest",    "monogram",    "engraving", "motif",       "gold",
        "plating",   "pattern",  "transfer", "inscription", "initials",  "iridescence", "hallmark",
        "hallmarks", "lacquer"};
    for (size_t i = 0; i < COUNT(words); i++)
        if (text_same(word, words[i])) return true;
    return false;
}

// Words of lists of parts that after "no" speak of the surface or of what is told, not of a part.
bool absent_is_no_part(const char *word) {
    static const char *const words[] = {
        "ring",     "line",    "hair",  "name",   "mark",      "label", "sign",   "number",   "writing",
        "grain",    "pattern", "stone", "weight", "light",     "print", "bubble", "pin",      "leg",
        "seam",     "pull",    "tape",  "glue",   "picture",   "photo", "stamp",  "key mark", "page",
        "work",     "works",   "play",  "set",    "pair",      "spot",  "bead",   "flower",   "record",
        "cassette", "figure",  "wire",  "date",   "signature", "pocket"};
    for (size_t i = 0; i < COUNT(words); i++)
        if (text_same(word, words[i])) return true;
    return false;
}

static bool is_material(const struct note *note, size_t i) {
    struct word_entry entry;
    return word_at(note, i, 1u << USE_MATERIAL, &entry) == 1;
}

// "Three of the feet", "two of the six knobs": before the part; else what any fault has for a number.
static int count_of_parts(const struct fault_reader *r, size_t from, size_t to, int *of) {
    static const char *const owners[] = {"the", "its", "their", "my", "original", "his", "her", "these"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = from;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           (r->note->taken[at - 1] == TAKEN_VALUE || is_material(r->note, at - 1)))
        at--; // "one of the brass knobs"
    int whole = at > 0 ? degrees_number(tokens, at - 1) : 0;
    if (whole) at--;
    while (at > 0 && token_among(tokens, at - 1, owners, COUNT(owners))) at--;
    int some = at > 1 && token_is(tokens, at - 1, "of") ? degrees_number(tokens, at - 2) : 0;
    if (some && (!whole || some <= whole)) {
        *of = whole;
        return some;
    }
    size_t first = absent_some_of(r, from, &some); // "two of the small weights"
    if (first < from) note_take(r->note, first, from, TAKEN_SCOPE);
    if (first < from && some) return some;
    const struct flaw *lack = ruleset_flaw(r->note->rules, "missing-accessory");
    struct fault_hit hit = {.from = from, .to = to, .kinds = {lack}, .kind_count = 1};
    return count_of_hit(r, &hit, of);
}

// "Slats rotten, two missing", "set of six, two missing": the number alone is of the parts that were spoken
// of just before, or else of the pieces.
static struct item_flaw *tell_number(struct fault_reader *r, size_t at, size_t first, size_t last) {
    enum { FAR = 5 };
    struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN | STANCE_WITHDRAWN | STANCE_OTHER;
    if (r->scope.stance[first] & off && !(r->scope.stance[first] & STANCE_EXCEPT)) return NULL;
    const char *part = NULL;
    for (size_t i = at; i > 0 && i + FAR > at && tokens->at[i - 1].stop < STOP_SENTENCE && !part; i--)
        if (r->part[i - 1] && tokens->at[i - 1].one != tokens->at[i - 1].fold &&
            note->taken[i - 1] != TAKEN_TYPE)
            part = arena_string(note->arena, tokens->at[i - 1].one);
    const struct flaw *kind =
        part ? absent_kind(note->arena, note->rules, part) : ruleset_flaw(note->rules, "missing-pieces");
    if (!kind) return NULL;
    bool usual = !part || (kind->form == ABSENCE && kind->part && same_noun(note->arena, kind->part, part));
    struct item_flaw *flaw = fault_add(r, kind, usual ? NULL : part, NULL, first, last);
    struct fault_hit hit = {.from = at, .to = at + 1, .kinds = {kind}, .kind_count = 1};
    int count = count_of_hit(r, &hit, &flaw->of);
    if (count < 2 && part) count = degrees_number(tokens, at);
    if (count > 1) flaw->count = count;
    return flaw;
}

// "Lead crystal? No": what it is made of, in two words.
static bool is_stuff(const struct note *note, size_t from, size_t to) {
    struct word_entry entry;
    return to > from + 1 && word_at(note, from, 1u << USE_MATERIAL, &entry) == to - from;
}

// "Some of the sockets", "a few pegs": several, with no number.
static bool some_of_them(const struct fault_reader *r, size_t from, size_t to) {
    enum { BACK = 5 };
    static const char *const words[] = {"some", "several", "few", "most", "odd", "many", "half"};
    const struct tokens *tokens = &r->note->tokens;
    if (tokens->at[to - 1].one == tokens->at[to - 1].fold) return false;
    for (size_t at = from; at > 0 && at + BACK > from && tokens->at[at - 1].stop == STOP_NONE; at--)
        if (token_among(tokens, at - 1, words, COUNT(words))) return true;
    return false;
}

// "Case missing its hook", "box missing two screws": the case is what lacks something.
static bool lacks_something(const struct tokens *tokens, size_t cue, size_t i) {
    static const char *const objects[] = {"its",  "a",       "an",   "the",   "one",  "two", "three",
                                          "four", "some",    "any",  "their", "both", "all", "five",
                                          "six",  "several", "most", "half",  "much"};
    bool some = ANY(tokens, i, "bits", "lumps", "pieces", "chunks", "strips", "slivers", "most", "parts");
    if (ANY(tokens, i + 1, "side", "sides")) return false; // "rail missing one side"
    return i < tokens->count && tokens->at[i - 1].stop == STOP_NONE &&
           (ANY(tokens, cue, "missing", "lost", "lacking", "lacks") ||
            ANY(tokens, i - 1, "missing", "lost", "lacking", "lacks")) &&
           ((some && token_is(tokens, i + 1, "of")) || token_among(tokens, i, objects, COUNT(objects)) ||
            tokens->at[i].kind == TOKEN_FIGURE);
}

// "No weights" of a balance, "no line" of a reel.
static bool is_weighed_with(const char *type, const char *head) {
    if (text_same(head, "weight"))
        return strstr(type, "scale") || strstr(type, "balance") || strstr(type, "clock");
    return text_same(head, "line") && (strstr(type, "reel") || strstr(type, "rod"));
}

// "One drop is gone from the gallery", "no stud on the lid": where the part was; how many tokens.
size_t absent_place(const struct note *note, size_t i, const char **where) {
    static const char *const from[] = {"from", "off"};
    const struct tokens *tokens = &note->tokens;
    bool some = token_is(tokens, i, "in") && ANY(tokens, i + 1, "places", "spots", "patches");
    size_t patch = some ? i + 2 : place_of_patch(tokens, i); // "gone in a patch along one side"
    if (patch) {
        size_t behind = tokens->at[patch - 1].stop == STOP_NONE ? absent_place(note, patch, where) : 0;
        return behind ? behind + patch - i : 0;
    }
    if (!token_among(tokens, i, from, COUNT(from)))
        return ANY(tokens, i, "on", "at", "along", "in", "near", "down", "around") ? place_at(note, i, where)
                                                                                   : 0;
    size_t at = i + 1;
    while (ANY(tokens, at, "the", "its", "one", "a")) at++;
    size_t n = place_at(note, at, where);
    return n ? at + n - i : 0;
}

struct item_flaw *absent_tell(struct fault_reader *r, size_t from, size_t to, size_t cue_from,
                              size_t cue_to) {
    struct note *note = r->note;
    static const char *const amounts[] = {"few", "several", "half", "most", "some", "its", "the", "of"};
    if (ANY(&note->tokens, from, "it's", "that's", "they're", "this"))
        return NULL;                       // "leather? no it's canvas"
    for (size_t k = from; k + 1 < to; k++) // "the stand leans because the screw is missing"
        if (ANY(&note->tokens, k, "because", "since", "cos", "where", "when")) {
            from = k + 1;
            while (from + 1 < to && ANY(&note->tokens, from, "the", "its", "a", "one")) from++;
            if (cue_from < from && cue_from <= k) cue_from = from;
        }
    while (from + 1 < to && ANY(&note->tokens, from, "of", "its", "their"))
        from++; // "one of its hinges is missing"
    bool some = from >= cue_to && note->tokens.at[to - 1].one != note->tokens.at[to - 1].fold;
    while (some && from + 1 < to &&
           token_among(&note->tokens, from, amounts, sizeof amounts / sizeof *amounts))
        from++; // "lacks half its beads"
    if (to == from + 1 && from > cue_from && cue_from > 0 && token_is(&note->tokens, from, "rest") &&
        token_is(&note->tokens, from - 1, "the")) { // "one pane missing the rest original"
        from = cue_from - 1;
        to = cue_from;
        cue_to = cue_from + 1;
        if (note->tokens.at[from].kind != TOKEN_WORD) return NULL;
    }
    if (to == from + 1 && ANY(&note->tokens, from, "rest") && from < cue_from)
        return NULL; // told by its number
    if (to == from + 1 && cue_from >= to && degrees_number(&note->tokens, from) > 0 &&
        note->tokens.at[from].kind == TOKEN_WORD && // "one is missing the last page" has lost that
        !lacks_something(&note->tokens, cue_to - 1, cue_to))
        return tell_number(r, from, from, cue_to);
    if (to == from + 1 && token_is(&note->tokens, from, "lead") &&
        ANY(&note->tokens, to, "solder", "paint", "glaze", "glass", "crystal", "weight", "weights", "pipe"))
        return NULL; // "no lead solder": the metal
    size_t first = from < cue_from ? from : cue_from, last = to > cue_to ? to : cue_to;
    const char *part = fault_words(note, from, to);
    const char *head = note->tokens.at[to - 1].one;
    bool only_no = token_is(&note->tokens, cue_to - 1, "no"); // "no", "with no"
    const struct family *family = note->record->family;
    const char *id = family ? family->rule.id : NULL;
    bool glazed = id && text_same(head, "glass") && // "no glass": of a frame, a lantern, a clock
                  (text_same(id, "decor") || text_same(id, "lighting") || text_same(id, "clocks-watches"));
    bool lidded = id && text_same(head, "top") && from > 0 && // "the top went astray"
                  (token_is(&note->tokens, from - 1, "the") || token_is(&note->tokens, from - 1, "its")) &&
                  (text_same(id, "kitchenware") || text_same(id, "ceramics") || text_same(id, "glassware") ||
                   text_same(id, "metalware"));
    const char *type = note->record->type.value ? note->record->type.value : "";
    bool topped = strstr(type, "lid") || strstr(type, "dome") || strstr(type, "cover") ||
                  strstr(type, "cloche") ||
                  (id && text_same(id, "lighting") &&
                   (strstr(type, "glass") || strstr(type, "shade") || strstr(type, "globe") ||
                    strstr(type, "lamp") || strstr(type, "chimney")));
    glazed |= text_same(head, "base") && (topped || !only_no); // "butter dish lid, no base"
    glazed |= text_same(note->tokens.at[to - 1].fold, "tips") || (to > from + 1 && text_same(head, "tip"));
    glazed |= text_same(note->tokens.at[to - 1].fold, "tops") && from > 0 &&
              ANY(&note->tokens, from - 1, "their", "its");
    glazed |= text_same(head, "glass") && !only_no && !(id && text_same(id, "glassware"));
    glazed |= text_same(head, "end") && from > 0 && from >= cue_to &&
              ANY(&note->tokens, from - 1, "an", "one", "its"); // "the roller has lost an end"
    bool ended = to >= note->tokens.count || note->tokens.at[to].stop != STOP_NONE || cue_from >= to;
    glazed |= id && ended && text_same(head, "back") && // "the back is missing": a panel that comes off
              (text_same(id, "electrical") || text_same(id, "clocks-watches") || text_same(id, "cameras") ||
               text_same(id, "furniture"));
    bool owned = ANY(&note->tokens, cue_from, "has", "have", "lacks") ||
                 (cue_from > 0 && ANY(&note->tokens, cue_from - 1, "has", "have", "with", "got"));
    glazed |=
        ended && owned && (text_same(head, "bottom") || text_same(head, "back") || text_same(head, "front"));
    bool made = to > from + 1 || (from > 0 && note->taken[from - 1] == TAKEN_VALUE); // "its wooden grip"
    if (is_quality(head) && !((made || (id && text_same(id, "sports"))) && text_same(head, "grip")))
        return NULL;
    if (only_no && absent_is_means(&note->tokens, cue_from, to)) return NULL;
    if (ANY(&note->tokens, to, "to") && // "never had the heart to start", "the tools to open it"
        ANY(&note->tokens, to - 1, "heart", "guts", "stomach", "occasion", "tools", "tool", "cause", "call"))
        return NULL;
    if (only_no && ANY(&note->tokens, to, "in", "inside", "left") &&
        ANY(&note->tokens, to - 1, "film", "fuel", "oil", "water", "ink", "paraffin", "petrol", "wax",
            "contents"))
        return NULL;                                       // "no film in it": it is empty
    if (sound_said_holds(r, from, to)) return NULL;        // "no bow or cup in it" of a board
    bool shod = from > 0 && !strncmp(head, "corner", 6) && // "the brass corners"
                (note->taken[from - 1] == TAKEN_VALUE || is_material(note, from - 1));
    bool pane = text_same(head, "glass") && to > 1 &&
                ANY(&note->tokens, to - 2, "red", "green", "blue", "clear", "amber", "yellow", "orange");
    if (!pane && !shod && (is_stuff(note, from, to) || (from > 0 && is_stuff(note, from - 1, to))))
        return NULL;
    bool tops = to > from + 1 && note->tokens.at[to - 1].one != note->tokens.at[to - 1].fold; // "key tops"
    bool pulled = fault_is_drawer_pull(r, to - 1, to);
    bool stood = text_same(head, "leg") && !(id && text_same(id, "glassware"));
    for (size_t i = 0; stood && i < r->hit_count; i++) // "a bruise, no legs"
        stood = !text_same(r->hits[i].kinds[0]->rule.id, "bruise-impact");
    bool within =
        to > from + 1 && r->part[to - 2] && ANY(&note->tokens, to - 1, "bottom", "base", "front", "back") &&
        ANY(&note->tokens, to - 2, "drawer", "tray", "box", "seat", "drawers"); // "one drawer bottom"
    if ((is_place_only(head) && !glazed && !lidded && !tops && !shod && !within) ||
        (only_no && !stood && !pulled && !is_weighed_with(type, head) && absent_is_no_part(head)))
        return NULL;
    static const char *const needs[] = {"needed", "required", "necessary"}; // "no battery needed"
    if (to == from + 2 && ANY(&note->tokens, from, "lower", "upper", "top", "bottom") &&
        ANY(&note->tokens, from + 1, "left", "right"))
        return NULL; // "corner missing lower left": where, and not what
    if ((only_no && token_among(&note->tokens, to, needs, COUNT(needs))) || lost_is_broken_off(r, from, last))
        return NULL;
    for (size_t i = from; i < to; i++)
        if (note->taken[i] == TAKEN_MARK || note->taken[i] == TAKEN_ASIDE || note->taken[i] == TAKEN_TYPE ||
            note->taken[i] == TAKEN_FLAW || note->taken[i] == TAKEN_INCLUDES ||
            note->taken[i] == TAKEN_MEASURE) // "12 inches tall without the handle"
            return NULL;
    for (size_t i = 0; i < r->hit_count; i++) // a rule has its words already
        if (r->hits[i].from < last && r->hits[i].to > first && r->hits[i].kinds[0]->form == ABSENCE)
            return NULL;
    for (size_t i = 0; i < r->hit_count; i++) // "one spindle is gone and another cracked": told already
        if (r->hits[i].from <= first && r->hits[i].to >= last && note->taken[last - 1] == TAKEN_FLAW)
            return NULL;
    for (size_t i = cue_from; i < cue_to; i++) // "one foot rotted away": told as rotten
        if (ANY(&note->tokens, i, "rotted", "corroded", "perished") && r->scope.fault[i]) return NULL;
    if (ANY(&note->tokens, last, "originally", "new") && cue_to > cue_from + 2 &&
        ANY(&note->tokens, cue_to - 1, "it", "them", "with"))
        return NULL; // "didn't come with it originally": another's
    uint16_t stance = r->scope.stance[first];
    if (r->scope.cue[first] >= cue_from && r->scope.cue[first] < cue_to) // "the lid isn't there"
        stance &= (uint16_t) ~(STANCE_DENIED | STANCE_NONE_SEEN);
    static const char *const nots[] = {"not", "isn't", "aren't", "wasn't", "weren't"};
    for (size_t i = cue_from; i < cue_to; i++) // "the lid is not missing"
        if (cue_to > cue_from + 1 && token_among(&note->tokens, i, nots, COUNT(nots)) &&
            token_is(&note->tokens, cue_to - 1, "missing"))
            stance |= STANCE_DENIED;
    int of = 0, count = count_of_parts(r, from, to, &of);
    const struct flaw *kind = absent_kind_here(r, part, count ? count : some_of_them(r, from, to) ? 2 : 0);
    bool cloth = id && (text_same(id, "linens") || text_same(id, "clothing"));
    if (cloth && token_is(&note->tokens, to - 1, "pulls")) return NULL; // threads, and no knobs
    if (!kind || stance & (STANCE_WITHDRAWN | STANCE_OTHER)) return NULL;
    if (stance & STANCE_UNKNOWN && !(stance & STANCE_EXCEPT)) { // "not checked for missing bits"
        note_unchecked(note, kind->rule.id);
        note_take(note, first, last, TAKEN_FLAW);
        return NULL;
    }
    bool usual = kind->form == ABSENCE && kind->part && same_noun(note->arena, kind->part, part);
    if (stance & STANCE_UNKNOWN && token_is(&note->tokens, first, "missing")) { // "not checked for missing …"
        note_unchecked(note, fault_words(note, first, last));
        note_take(note, first, last, TAKEN_SCOPE);
        return NULL;
    }
    if (stance & (STANCE_DENIED | STANCE_NONE_SEEN) && !(stance & STANCE_EXCEPT)) {
        clear_add(r, kind, usual ? NULL : part, NULL, stance & STANCE_NONE_SEEN, first, last);
        return NULL;
    }
    size_t lacks, end; // "the door has no screw"
    const char *where =
        spot_owner(r, first, &lacks, &end) && end <= first ? fault_place(note, lacks, end) : NULL;
    size_t place =
        where || note->tokens.at[last - 1].stop != STOP_NONE ? 0 : absent_place(note, last, &where);
    size_t whole = to + 1 + ANY(&note->tokens, to + 1, "the", "its"); // "strands of the fringe"
    if (text_same(kind->rule.id, "trim-loss") && token_is(&note->tokens, to, "of") &&
        whole < note->tokens.count && from < to)
        part = fault_words(note, from, whole + 1);
    struct item_flaw *flaw = fault_add(r, kind, usual ? NULL : part, where, first, last);
    if (place) note_take(note, last, last + place, TAKEN_PART);
    if (stance & STANCE_DOUBT) flaw->sure = SURE_LIKELY;
    bool one_of_them = count == 1 && note->tokens.at[to - 1].one != note->tokens.at[to - 1].fold;
    if (count > 1 || of || one_of_them) flaw->count = count;
    if (of) flaw->of = of;
    for (size_t i = to; i < last && !flaw->count; i++) // "badges both missing"
        if (token_is(&note->tokens, i, "both")) flaw->count = 2;
    return flaw;
}

// They open or join phrases and never stand within the name of a part.
bool absent_is_small(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "on",  "in",    "at",   "of",    "from",  "the",   "is",   "are", "and",  "or",    "with",
        "for", "but",   "to",   "that",  "it",    "i",     "so",   "has", "have", "which", "you",
        "no",  "was",   "a",    "an",    "came",  "comes", "they", "we",  "he",   "she",   "never",
        "had", "there", "this", "these", "those", "were",  "be",   "been"};
    return token_among(tokens, i, words, COUNT(words));
}

// "The button at the waist is missing": what is missing stands before its place.
static size_t before_place(const struct fault_reader *r, size_t i) {
    static const char *const prepositions[] = {"at", "on", "in", "of", "from", "inside", "near", "by"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    while (at > 0 && (token_is(tokens, at - 1, "the") || token_is(tokens, at - 1, "one") ||
                      token_is(tokens, at - 1, "left") || token_is(tokens, at - 1, "right")))
        at--;
    for (size_t k = 0; at > 1 && k < COUNT(prepositions); k++)
        if (token_is(tokens, at - 1, prepositions[k]) && r->part[at - 2]) return at - 2;
    return i;
}

// What holds a part and is named after it: "hinge screw", "handle rivets".
static bool is_fitting(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "screw", "screws", "bolt", "bolts", "nut", "nuts", "rivet", "rivets", "pin", "pins",
               "nail", "nails", "washer", "washers");
}

// How many tokens from `i` are a part with its adjectives, up to its last part word; 0 if none.
size_t absent_part(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t last = 0;
    if (token_is(tokens, i, "point") && (token_is(tokens, i + 1, "in") || token_is(tokens, i + 1, "of")))
        return 0;                             // "no point in hiding it"
    if (ill_before_part(tokens, i)) return 0; // "no damaged seals"
    if (ANY(tokens, i, "patch", "row", "cluster", "group", "stretch", "bunch") && ANY(tokens, i + 1, "of"))
        return 0; // "a patch of beads is missing": beads
    for (size_t at = i; at < tokens->count && at < i + 4; at++) {
        if (tokens->at[at].stop != STOP_NONE || tokens->at[at].kind == TOKEN_SIGN ||
            absent_is_small(tokens, at) ||
            ANY(tokens, at, "couldn't", "couldnt", "can't", "didn't", "find", "found"))
            break;
        if (r->part[at]) last = at + 1;
        if (r->scope.fault[at] && !r->part[at]) break;
        if (!r->part[at] && last && r->note->taken[at] != TAKEN_VALUE && !is_fitting(tokens, at)) break;
        if (!r->part[at] && last && is_fitting(tokens, at)) last = at + 1; // "hinge screw"
    }
    return last ? last - i : 0;
}

bool absent_has_object(const struct tokens *tokens, const struct fault_hit *hit) {
    return hit->to > hit->from + 1 && token_is(tokens, hit->to - 1, "missing") &&
           lacks_something(tokens, hit->to - 1, hit->to);
}

// "No pieces are chipped": where the fault of those that are denied one begins.
static size_t behind_verb(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"is", "are", "was", "were", "has", "have", "been", "look", "seem"};
    while (i > 0 && tokens->at[i - 1].stop == STOP_NONE && token_among(tokens, i, verbs, COUNT(verbs))) i++;
    return i;
}

// "No lid chips": the "no" reaches the fault behind the part.
static bool denied_too(const struct fault_reader *r, size_t i) {
    return r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN);
}

// "No strap or handle damage": the part begins the name of a fault; "no creases": it is one.
static bool names_fault(const struct fault_reader *r, size_t i) {
    for (size_t k = 0; k < r->hit_count; k++) {
        const struct fault_hit *hit = &r->hits[k];
        bool alone = !hit->near && hit->kinds[0]->form == FAULT && hit->kinds[0]->class == CLASS_DAMAGE;
        if (hit->from == i && (hit->to > i + 1 || alone)) return true;
    }
    return false;
}

// "A chip on the lid and the handle has gone": the lid is where the chip is.
static bool is_place(const struct tokens *tokens, size_t i) {
    while (i > 0 && ANY(tokens, i - 1, "the", "its", "one", "each", "both")) i--;
    return i > 1 && ANY(tokens, i - 1, "in", "on", "at", "of", "to", "round", "around", "near", "by",
                        "across", "down", "along", "under", "behind", "inside", "below", "above");
}

// "The lid and the box are missing": those before it in the list.
static void add_listed(struct fault_reader *r, size_t i, size_t cue_from, size_t cue_to) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    if (ANY(tokens, cue_from, "is", "was") && !ANY(tokens, i - (i > 0), "and", "&"))
        return; // "made from a bolt and the rope is missing": of one
    for (bool first = true;; first = false) {
        while (at > 0 && (token_is(tokens, at - 1, "the") || token_is(tokens, at - 1, "its"))) at--;
        bool and = at > 1 && token_is(tokens, at - 1, "and"); // "in its case, strap missing" is no list
        if (at < 2 || !(and || (!first && tokens->at[at - 1].stop == STOP_COMMA))) return;
        at--;
        if (at > 0 && tokens->at[at - 1].stop == STOP_COMMA) at--;
        size_t to = at;
        while (at > 0 && r->part[at - 1] && to - at < 3) at--;
        if (at == to || is_place(tokens, at)) return;
        struct item_flaw *flaw = absent_tell(r, at, to, cue_from, cue_to);
        if (flaw) flaw->span = note_span_of(r->note, at, to); // its own words: else the next one is the same
    }
}

// "A bit the size of a coin gone": what it is measured by.
static bool is_measure(const struct tokens *tokens, size_t i) {
    return i > 2 && token_is(tokens, i - 2, "of") && token_is(tokens, i - 3, "size");
}

void read_absent(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n, parts;
        size_t behind_lost = absent_read_lost(r, i);
        if (behind_lost) {
            i = behind_lost - 1;
            continue;
        }
        if (absent_is_of_deeds(r, i)) continue;
        if (token_is(tokens, i, "no") && token_is(tokens, i + 1, "matter")) continue; // "no matter what bulb"
        if (lacking_said_before(&r->scope, i, &n) && (parts = absent_part(r, i + n)) != 0) {
            size_t end = i + n + parts, gone;
            // "Leather lined? No, it's canvas", "on the arms? No arms, on the rails": taken back, and no lack
            size_t asked = i > 0 && token_is(tokens, i - 1, "?") ? i - 1 : 0;
            bool back = ANY(tokens, i + n, "it's", "its", "that's", "they're") && token_is(tokens, i, "no");
            back |= asked > 1 && end == i + n + 1 &&
                    text_same(tokens->at[asked - 1].one, tokens->at[end - 1].one) &&
                    ANY(tokens, end + 1, "on", "in", "it's", "just", "at", "but");
            if (back) continue;
            bool cell =
                token_is(tokens, i + n - 1, "new") && ANY(tokens, end - 1, "battery", "batteries", "cells");
            if (cell || absent_is_another(tokens, i, end)) {
                i = end - 1;
                continue;
            }
            if (token_is(tokens, i, "no") && n == 1 &&
                lacking_said_behind(&r->scope, end, &gone)) { // "no screws missing": all are there
                absent_tell(r, i + n, end, end, end + gone);
                i = end + gone - 1;
                continue;
            }
            size_t said = token_is(tokens, i, "no") ? behind_verb(tokens, end) : end;
            bool fault_follows = said < tokens->count && r->scope.fault[said] && denied_too(r, said) &&
                                 (tokens->at[end].stop == STOP_NONE || said > end);
            bool aid = token_is(tokens, end, "to") &&
                       (token_is(tokens, end + 1, "see") || token_is(tokens, end + 1, "find") ||
                        token_is(tokens, end + 1, "spot")); // "you'd need a glass to see it"
            static const char *const moved[] = {"off", "out", "apart", "open", "down", "up"};
            static const char *const proud[] = {"sticking", "poking", "standing", "protruding", "jutting"};
            aid |= token_among(tokens, end, proud, COUNT(proud)); // "no nails sticking up"
            aid |= n > 1 && !lost_ways_before(tokens, i) &&
                   token_among(tokens, end, moved, COUNT(moved)); // "never had the doors off"
            if (!fault_follows && !aid && !names_fault(r, i + n)) absent_tell(r, i + n, end, i, i + n);
            i = end - 1;
            continue;
        }
        size_t few = absent_read_few(r, i);
        if (!few) few = absent_read_size_lost(r, i);
        if (few) {
            i = few - 1;
            continue;
        }
        size_t thing = absent_read_no_thing(r, i);
        if (thing) {
            i = thing - 1;
            continue;
        }
        struct noun_found noun;
        size_t stated = absent_read_stated(r, i);
        if (stated) {
            i = stated - 1;
            continue;
        }
        if (!r->part[i]) {
            if (absent_read_plain(r, i)) continue;
            // Any other noun that is said to be missing: "the inkwell is missing".
            bool figure = absent_is_figure(r, i), named = noun_at(r->note, i, &noun);
            if (!named) noun.to = i + 1;
            if (!figure && !(named && r->note->taken[i] == TAKEN_NOT)) continue;
            size_t at = noun.to + absent_that_goes(tokens, noun.to);
            if (lacking_said_behind(&r->scope, at, &n) && !is_measure(tokens, i) &&
                !absent_turns_into(r, at + n) && !lacks_something(tokens, at + n - 1, at + n))
                absent_tell(r, i, noun.to, at, at + n);
            continue;
        }
        parts = absent_part(r, i);
        if (parts && lacking_said_behind(&r->scope, i + parts, &n) && !absent_turns_into(r, i + parts + n) &&
            !lacks_something(tokens, i + parts + n - 1, i + parts + n)) {
            size_t owner = before_place(r, i);
            if (owner < i)
                absent_tell(r, owner, owner + 1, i + parts, i + parts + n);
            else {
                absent_tell(r, absent_with_side(r, i), i + parts, i + parts, i + parts + n);
                add_listed(r, i, i + parts, i + parts + n);
            }
        }
        if (parts) i += parts - 1;
    }
}

bool absent_is_of_part(const struct fault_reader *r, size_t i) {
    const struct fault_hit *hit = &r->hits[i];
    const struct tokens *tokens = &r->note->tokens;
    if (hit->kinds[0]->form == ABSENCE && absent_is_sort(r, hit->to)) return true;
    size_t to = token_is(tokens, hit->from, "no") ? behind_verb(tokens, hit->to) : hit->to;
    bool next = i + 1 < r->hit_count && r->hits[i + 1].from == to &&
                tokens->at[hit->to - 1].stop == STOP_NONE &&
                (r->scope.stance[to] & (STANCE_DENIED | STANCE_NONE_SEEN));
    return hit->kinds[0]->form == ABSENCE && next &&
           hit->to - hit->from < 4 && // not "no door on the battery"
           (token_is(tokens, hit->to - 2, "no") || token_is(tokens, hit->from, "no") ||
            token_is(tokens, hit->from, "without"));
}
