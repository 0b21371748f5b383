// SPDX-License-Identifier: MIT
// Tables of dimension words and parts. "Across" is a diameter on round things only.
#include "notes/dimension.h"

#include "notes/any.h"
#include "notes/number.h"

#include <string.h>

#include "text/buf.h"
#include "text/order.h"

#define COUNT(list) (sizeof list / sizeof *list)

struct row {
    const char *words, *name, *of;
    bool noun;
};

// Longer phrases before those that begin them.
static const struct row rows[] = {
    {"in height", "height", NULL, false},
    {"in width", "width", NULL, false},
    {"in depth", "depth", NULL, false},
    {"in length", "length", NULL, false},
    {"in diameter", "diameter", NULL, false},
    {"in circumference", "circumference", NULL, false},
    {"in thickness", "thickness", NULL, false},
    {"from end to end", "length", NULL, false},
    {"end to end", "length", NULL, true},
    {"from tip to tip", "length", NULL, false},
    {"tip to tip", "length", NULL, true},
    {"nose to tail", "length", NULL, true},
    {"heel to toe", "length", NULL, true},
    {"from handle to handle", "width", "handle to handle", false},
    {"handle to handle", "width", "handle to handle", true},
    {"armpit to armpit", "chest", "pit to pit", true},
    {"pit to pit", "chest", "pit to pit", true},
    {"ptp", "chest", "pit to pit", true},
    {"p2p", "chest", "pit to pit", true},
    {"across the bust", "chest", "across bust", true},
    {"across bust", "chest", "across bust", true},
    {"across the chest", "chest", "across chest", true},
    {"around the chest", "chest", NULL, false},
    {"round the chest", "chest", NULL, false},
    {"at the chest", "chest", NULL, false},
    {"in the chest", "chest", NULL, false},
    {"around the bust", "chest", NULL, false},
    {"at the bust", "chest", NULL, false},
    {"in the bust", "chest", NULL, false},
    {"around the waist", "waist", NULL, false},
    {"round the waist", "waist", NULL, false},
    {"at the waist", "waist", NULL, false},
    {"in the waist", "waist", NULL, false},
    {"shoulder to hem", "length", "shoulder to hem", true},
    {"collar to hem", "length", "collar to hem", true},
    {"nape to hem", "length", "nape to hem", true},
    {"strap drop", "drop", "strap", true},
    {"handle drop", "drop", "handle", true},
    {"inside diameter", "diameter", "inside", true},
    {"inner diameter", "diameter", "inside", true},
    {"inside dia", "diameter", "inside", true},
    {"outside diameter", "diameter", "outside", true},
    {"outer diameter", "diameter", "outside", true},
    {"across the top", "across", "top", false},
    {"across the rim", "across", "rim", false},
    {"across the mouth", "across", "mouth", false},
    {"across the base", "across", "base", false},
    {"across the bottom", "across", "bottom", false},
    {"across the front", "width", NULL, false},
    {"at the widest point", "width", NULL, false},
    {"at its widest point", "width", NULL, false},
    {"at the widest", "width", NULL, false},
    {"at its widest", "width", NULL, false},
    {"at the longest", "length", NULL, false},
    {"at the deepest", "depth", NULL, false},
    {"at the tallest", "height", NULL, false},
    {"at the highest", "height", NULL, false},
    {"off the ground", "height", NULL, false},
    {"off the floor", "height", NULL, false},
    {"to the top", "height", NULL, false},
    {"to top", "height", NULL, false},
    {"to the rim", "height", "to rim", false},
    {"to the shoulder", "height", "to shoulder", false},
    {"to the seat", "height", "seat", false},
    {"stood up", "height", NULL, false},
    {"stood on end", "height", NULL, false},
    {"end to end", "length", NULL, false},
    {"tip to tip", "length", NULL, false},
    {"top to bottom", "height", NULL, false},
    {"side to side", "width", NULL, false},
    {"front to back", "depth", NULL, false},
    {"longest", "length", "longest", true},
    {"tallest", "height", "tallest", true},
    {"widest", "width", "widest", true},
    {"deepest", "depth", "deepest", true},
    {"shortest", "length", "shortest", true},
    {"height", "height", NULL, true},
    {"high", "height", NULL, false},
    {"tall", "height", NULL, false},
    {"width", "width", NULL, true},
    {"wide", "width", NULL, false},
    {"across", "across", NULL, false},
    {"depth", "depth", NULL, true},
    {"deep", "depth", NULL, false},
    {"length", "length", NULL, true},
    {"long", "length", NULL, false},
    {"diameter", "diameter", NULL, true},
    {"dia .", "diameter", NULL, true},
    {"dia", "diameter", NULL, true},
    {"diam .", "diameter", NULL, true},
    {"diam", "diameter", NULL, true},
    {"\xC3\xB8", "diameter", NULL, true},
    {"round", "round", NULL, false},
    {"circumference", "circumference", NULL, true},
    {"around", "circumference", NULL, false},
    {"thickness", "thickness", NULL, true},
    {"thick", "thickness", NULL, false},
    {"square", "square", NULL, false},
    {"sq .", "square", NULL, false},
    {"sq", "square", NULL, false},
    {"chest", "chest", NULL, true},
    {"bust", "chest", NULL, true},
    {"inseam", "inseam", NULL, true},
    {"inside leg", "inseam", NULL, true},
    {"sleeve", "sleeve", NULL, true},
    {"sleeves", "sleeve", NULL, true},
    {"waist", "waist", NULL, true},
    {"drop", "drop", NULL, true},
    {"h .", "height", NULL, true},
    {"h", "height", NULL, true},
    {"w", "width", NULL, true},
    {"d", "depth", NULL, true},
    {"l", "length", NULL, true},
    {"ht", "height", NULL, true},
};

// How a thing stands that opens, folds or draws out: "34 inches pulled out, 11 closed".
static const struct {
    const char *words, *of;
} states[] = {{"fully out", "extended"},
              {"fully extended", "extended"},
              {"fully open", "open"},
              {"fully opened", "open"},
              {"all the way out", "extended"},
              {"extended", "extended"},
              {"pulled out", "extended"},
              {"drawn out", "extended"},
              {"stretched out", "extended"},
              {"opened out", "open"},
              {"opened up", "open"},
              {"opened", "open"},
              {"open", "open"},
              {"unfolded", "open"},
              {"closed up", "closed"},
              {"closed", "closed"},
              {"shut", "closed"},
              {"pushed in", "closed"},
              {"slid in", "closed"},
              {"collapsed", "closed"},
              {"retracted", "closed"},
              {"folded up", "folded"},
              {"folded down", "folded"},
              {"folded flat", "folded"},
              {"folded", "folded"},
              {"furled", "folded"},
              {"rolled up", "rolled"},
              {"with the leaf in", "with leaf"},
              {"with the leaf", "with leaf"},
              {"with leaf", "with leaf"},
              {"with the leaves up", "open"},
              {"with leaves up", "open"},
              {"leaves up", "open"},
              {"with the leaves down", "folded"},
              {"with leaves down", "folded"},
              {"leaves down", "folded"},
              {"with the leaves", "with leaves"},
              {"without the leaf", "without leaf"},
              {"without the leaves", "without leaves"},
              {"without leaf", "without leaf"}};

// "When", "if": what leads to a state.
static size_t state_at(const struct note *note, size_t i, const char **of) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i, longest = 0;
    while (ANY(tokens, at, "when", "if", "while", "once", "it's", "is") && at < i + 2) at++;
    if (!token_may_open(tokens, at, states, COUNT(states), sizeof *states)) return 0;
    for (size_t k = 0; k < COUNT(states); k++) {
        size_t n = token_phrase(tokens, at, states[k].words);
        if (n <= longest) continue;
        longest = n;
        *of = states[k].of;
    }
    size_t to = at + longest;
    bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                ANY(tokens, to, "and", "but", "with", "or", "so", "by", "x");
    return longest && ends && note_free(note, i, to) ? to - i : 0;
}

const char *dimension_state_before(const struct note *note, size_t i, size_t *taken) {
    static const char *const outs[] = {"opens",    "open",      "opened",    "unfolds",    "extends",
                                       "extended", "stretches", "stretched", "telescopes", "expands"};
    static const char *const ins[] = {"folds",     "folded",    "closes", "closed",
                                      "collapses", "collapsed", "shut",   "shuts"};
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    for (int n = 0; n < 4 && at > 0 &&
                    ANY(tokens, at - 1, "to", "it", "is", "it's", "measures", "up", "out", "down", "about",
                        "at", ":", "flat", "just", "only", "length");
         n++)
        at--;
    if (at == 0) return NULL;
    size_t verb = at - 1;
    const char *of = token_among(tokens, verb, ins, COUNT(ins))                ? "folded"
                     : !token_among(tokens, verb, outs, COUNT(outs))           ? NULL
                     : ANY(tokens, verb, "opens", "open", "opened", "unfolds") ? "open"
                                                                               : "extended";
    if (of && ANY(tokens, verb, "closed", "shut", "closes", "shuts", "collapses", "collapsed")) of = "closed";
    bool opens = verb == 0 || tokens->at[verb - 1].stop != STOP_NONE ||
                 ANY(tokens, verb - 1, "and", "but", "when", "it", "which", "that", "then", "fully", "length",
                     "arm", "lamp");
    bool verbal = strlen(tokens->at[verb].fold) > 4 && ANY(tokens, at, "to", "out", "up", "down");
    if (!of || !(opens || verbal) || note->fault_word[verb]) return NULL;
    if (opens && at == i && tokens->at[i].kind != TOKEN_FIGURE) return NULL;
    *taken = i - verb;
    return note_free(note, verb, i) ? of : NULL;
}

static bool is_round(const struct note *note, size_t i) {
    static const char *const words[] = {
        "round",     "plate",     "bowl",      "saucer",    "lid",         "circular",  "dia",
        "knob",      "drum",      "basin",     "clock",     "dial",        "platter",   "wheel",
        "disc",      "disk",      "button",    "charger",   "vase",        "pot",       "crock",
        "doily",     "coaster",   "mug",       "jar",       "tablecloth",  "compass",   "barometer",
        "skillet",   "kettle",    "bucket",    "pail",      "tub",         "barrel",    "goblet",
        "tumbler",   "cup",       "colander",  "lampshade", "churn",       "cauldron",  "gong",
        "bell",      "sieve",     "riddle",    "strainer",  "globe",       "ball",      "hoop",
        "pulley",    "gear",      "cog",       "millstone", "grindstone",  "medallion", "medal",
        "coin",      "target",    "dartboard", "cymbal",    "tambourine",  "quoit",     "porthole",
        "lifebelt",  "lifebuoy",  "puck",      "roundel",   "paperweight", "decanter",  "carafe",
        "demijohn",  "carboy",    "urn",       "flowerpot", "wreath",      "casserole", "ramekin",
        "magnifier", "turntable", "roller",    "bangle",    "sundial",     "hat",       "boater",
        "ashtray",   "cask",      "keg",       "float",     "buoy",        "compote",   "comport",
        "tazza",     "spittoon",  "cauldron",  "griddle",   "cake",        "pie",       "ewer"};
    enum { REACH = 40 };
    for (size_t k = i > REACH ? i - REACH : 0; k < i + REACH && k < note->tokens.count; k++)
        for (size_t w = 0; w < COUNT(words); w++)
            if (text_same(note->tokens.at[k].one, words[w])) return true;
    return false;
}

static bool is_oblong(const struct note *note, size_t i) {
    enum { REACH = 40 };
    for (size_t k = i > REACH ? i - REACH : 0; k < i + REACH && k < note->tokens.count; k++)
        if (token_is(&note->tokens, k, "oval") || token_is(&note->tokens, k, "square") ||
            token_is(&note->tokens, k, "oblong") || token_is(&note->tokens, k, "rectangular"))
            return true;
    return false;
}

static bool find(const struct note *note, size_t i, bool nouns, struct dimension *dimension) {
    if (i >= note->tokens.count || note->tokens.at[i].kind != TOKEN_WORD) {
        if (i >= note->tokens.count || note->tokens.at[i].kind != TOKEN_CODE) return false;
    }
    char first = note->tokens.at[i].fold[0];
    if (!token_may_open(&note->tokens, i, rows, COUNT(rows), sizeof *rows)) return false;
    for (size_t k = 0; k < COUNT(rows); k++) {
        if (rows[k].words[0] != first || (nouns && !rows[k].noun)) continue;
        size_t taken = token_phrase(&note->tokens, i, rows[k].words);
        if (!taken) continue;
        *dimension = (struct dimension){rows[k].name, rows[k].of, taken, rows[k].noun};
        if (text_same(dimension->name, "round")) { // "3 in round and 1 deep"; but "12 in round table"
            size_t end = i + taken;
            if (end < note->tokens.count && note->tokens.at[end].stop == STOP_NONE &&
                !ANY(&note->tokens, end, "and", "by", "x", "with"))
                return false;
            dimension->name = "diameter";
            dimension->taken = 0; // its shape too
        }
        if (text_same(dimension->name, "across"))
            dimension->name = is_round(note, i) && !is_oblong(note, i) ? "diameter" : "width";
        return true;
    }
    return false;
}

// "at the top", "at its base": where it was measured.
static size_t place_behind(const struct note *note, size_t i, const char **of) {
    static const char *const places[] = {"top",      "base", "rim",    "mouth", "neck",
                                         "shoulder", "foot", "bottom", "back",  "front"};
    if (!token_is(&note->tokens, i, "at")) return 0;
    if (!token_is(&note->tokens, i + 1, "the") && !token_is(&note->tokens, i + 1, "its")) return 0;
    for (size_t k = 0; k < COUNT(places); k++)
        if (token_is(&note->tokens, i + 2, places[k])) {
            *of = places[k];
            return 3;
        }
    return token_is(&note->tokens, i + 2, "widest") ? 3 : 0;
}

// "8 inches at the mouth", "7 in. at the base": how wide it is there, where no fault is measured.
static size_t wide_at(const struct note *note, size_t i, struct dimension *dimension) {
    enum { BACK = 6 };
    const char *of = NULL;
    size_t taken = token_is(&note->tokens, i, "at") ? place_behind(note, i, &of) : 0;
    if (!taken || !of || ANY(&note->tokens, i + 2, "back", "front")) return 0;
    for (size_t k = i; k > 0 && k + BACK > i && (k == i || note->tokens.at[k - 1].stop < STOP_COMMA); k--)
        if (note->fault_word[k - 1]) return 0;
    const char *name = is_round(note, i) && !is_oblong(note, i) ? "diameter" : "width";
    *dimension = (struct dimension){name, of, taken, false};
    return taken;
}

// Ends that things are measured between.
static bool place_end(const struct note *note, size_t i) {
    struct part part;
    return ANY(&note->tokens, i, "top", "bottom", "base", "floor", "tip", "end", "point", "toe", "heel",
               "butt", "nose", "rim", "edge", "hook", "ring", "handle", "knob", "finial", "lip", "collar",
               "bail", "loop", "side", "front", "back", "center", "centre", "middle", "eye", "hole", "pivot",
               "mouth", "pommel", "tail") ||
           part_at(note, i, &part);
}

// "From base to top of handle", "top ring to hook tip", "to the collar": from where to where it was measured.
static size_t between_ends(const struct note *note, size_t i, const char **name) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i, words = 0;
    bool from = token_is(tokens, at, "from");
    if (from) at++;
    if (!token_is(tokens, at, "to")) {
        if (ANY(tokens, at, "the", "its")) at++;
        bool foot =
            ANY(tokens, at, "base", "bottom", "floor", "foot", "feet", "ground", "underside", "table");
        bool side = ANY(tokens, at, "side", "arm", "left"), front = ANY(tokens, at, "front");
        size_t first = at;
        while (words < 5 && at < tokens->count && !token_is(tokens, at, "to") &&
               (from || place_end(note, at) || words > 0)) {
            if (tokens->at[at].kind != TOKEN_WORD || tokens->at[at].stop != STOP_NONE) return 0;
            at++;
            words++;
        }
        if (at == first || !token_is(tokens, at, "to")) return 0;
        *name = foot ? "height" : side ? "width" : front ? "depth" : "length";
        at++;
        if (ANY(tokens, at, "the", "its")) at++;
        if (ANY(tokens, at - 1, "to") && !from && !place_end(note, at) && !place_end(note, at + 1)) return 0;
        if (number_may_be(tokens, at)) return 0;
    } else {
        if (from || !ANY(tokens, at + 1, "the", "its")) return 0;
        at += 2;
        if (!ANY(tokens, at, "collar", "lip", "neck", "lid", "bail", "handle", "handles", "loop", "crown",
                 "peak", "finial", "burner", "gallery", "hook", "ring", "spout", "brim", "cap", "knob",
                 "arms", "ridge", "ceiling", "saddle", "shelf", "seat", "socket"))
            return 0;
        *name = "height";
    }
    size_t begin = at;
    for (words = 0; words < 5 && at < tokens->count && tokens->at[at].stop == STOP_NONE; words++, at++)
        if (tokens->at[at].kind != TOKEN_WORD ||
            (!place_end(note, at) && !ANY(tokens, at, "of", "the", "its", "very") && at > begin))
            break;
    return at > begin ? at - i : 0;
}

// "10 in top dia": where it was measured, before the word for the dimension.
static size_t place_led(const struct note *note, size_t i, struct dimension *dimension) {
    const struct tokens *tokens = &note->tokens;
    struct number next;
    if (!ANY(tokens, i, "top", "base", "rim", "mouth", "bottom", "shade", "bowl", "face", "dial", "head",
             "wheel", "drum", "lid", "overall", "outer", "inner", "opening", "seat", "total", "max", "foot",
             "shoulder", "outside", "inside") ||
        !find(note, i + 1, true, dimension) || strlen(tokens->at[i + 1].fold) < 3 ||
        number_at(tokens, i + 1 + dimension->taken, &next))
        return 0;
    if (!ANY(tokens, i, "overall", "total", "max")) dimension->of = note_words(note, i, i + 1);
    dimension->taken++;
    return dimension->taken;
}

bool dimension_behind(const struct note *note, size_t i, struct dimension *dimension) {
    size_t span = 0;
    const char *name = NULL;
    if (i < note->tokens.count && note->tokens.at[i].kind == TOKEN_WORD && note->fault_word[i] == 0 &&
        !find(note, i, false, dimension) && (span = between_ends(note, i, &name)) != 0 &&
        note_free(note, i, i + span)) {
        *dimension = (struct dimension){name, NULL, span, false};
        return true;
    }
    if ((place_led(note, i, dimension) || wide_at(note, i, dimension)) &&
        note_free(note, i, i + dimension->taken))
        return true;
    const char *as = NULL; // "34 inches extended, 11 closed"
    if ((span = state_at(note, i, &as)) != 0) {
        *dimension = (struct dimension){"length", as, span, false};
        return true;
    }
    // A hyphen: "6-inch-long".
    size_t skip =
        token_is(&note->tokens, i, "-") && i < note->tokens.count && note->tokens.at[i].joined ? 1 : 0;
    if (!find(note, i + skip, false, dimension) || !note_free(note, i + skip, i + skip + dimension->taken))
        return false;
    dimension->taken += skip;
    // "around the rim" goes on to say where something else is.
    if (text_same(dimension->name, "circumference") && token_is(&note->tokens, i + dimension->taken, "the"))
        return false;
    struct part part;
    bool across = token_is(&note->tokens, i + skip, "across");
    if (across && token_is(&note->tokens, i + dimension->taken, "the") &&
        part_at(note, i + dimension->taken + 1, &part)) {
        dimension->of = part.name;
        dimension->taken += 2;
    }
    dimension->taken += place_behind(note, i + dimension->taken, &dimension->of);
    const char *state = NULL; // "44 across when open"
    size_t more = text_same(dimension->name, "square") ? 0 : state_at(note, i + dimension->taken, &state);
    if (more && !dimension->of) dimension->of = state;
    if (dimension->of == state) dimension->taken += more;
    bool top = token_is(&note->tokens, i + dimension->taken - 1, "top"); // "to the top of the ring"
    if (top && token_is(&note->tokens, i + dimension->taken, "of") &&
        ANY(&note->tokens, i + dimension->taken + 1, "the", "its") &&
        i + dimension->taken + 2 < note->tokens.count &&
        note->tokens.at[i + dimension->taken + 2].kind == TOKEN_WORD)
        dimension->taken += 3;
    return true;
}

static bool is_joint(const struct note *note, size_t i) {
    static const char *const joints[] = {"is", "of", ":", "=", "-", "measures", "measured", "at", "are", "s"};
    return token_among(&note->tokens, i, joints, COUNT(joints));
}

// "Diameter at the mouth 7 in", "width across the base is 5": where it was measured, before the figure.
static size_t place_between(const struct note *note, size_t end, const char **of) {
    static const char *const places[] = {"top",   "base",   "rim",  "mouth", "neck", "shoulder",
                                         "foot",  "bottom", "back", "seat",  "arms", "front",
                                         "waist", "hem",    "brim", "crown"};
    for (size_t k = 0; k < COUNT(places); k++)
        if (end > 2 && token_is(&note->tokens, end - 1, places[k]) &&
            ANY(&note->tokens, end - 2, "the", "its") && ANY(&note->tokens, end - 3, "at", "across", "of")) {
            *of = places[k];
            return 3;
        }
    return 0;
}

bool dimension_before(const struct note *note, size_t i, struct dimension *dimension) {
    enum { WORDS_MOST = 4 };
    size_t end = i;
    for (int joints = 0; joints < 2 && end > 0 && is_joint(note, end - 1); joints++) end--;
    const char *place = NULL;
    end -= place_between(note, end, &place);
    for (size_t back = WORDS_MOST; back > 0; back--) {
        if (back > end || !note_free(note, end - back, end)) continue;
        if (!find(note, end - back, true, dimension) || dimension->taken != back) continue;
        if (token_is(&note->tokens, end - 1, "chest") && token_is(&note->tokens, end, "of"))
            continue; // "chest of three drawers"
        if (strlen(note->tokens.at[end - back].fold) == 1 && end == i && !note->tokens.at[i].joined &&
            note->tokens.at[i].kind != TOKEN_FIGURE)
            continue;
        if (token_is(&note->tokens, end - back, "chest") && token_is(&note->tokens, end, "of")) continue;
        if (place) dimension->of = place;
        dimension->taken = i - (end - back);
        return true;
    }
    static const char *const verbs[] = {"stands", "standing", "stand"};
    // "They stand 9 in", but "green stand 9 in high"
    bool several = i > 1 && note->tokens.at[i - 2].stop == STOP_NONE &&
                   (note->tokens.at[i - 2].one != note->tokens.at[i - 2].fold ||
                    ANY(&note->tokens, i - 2, "they", "these", "both", "all", "which", "that"));
    for (size_t k = 0; k < COUNT(verbs); k++)
        if (i > 0 && token_is(&note->tokens, i - 1, verbs[k]) && (several || !text_same(verbs[k], "stand"))) {
            *dimension = (struct dimension){"height", NULL, 1, true};
            return true;
        }
    return false;
}

static const char *letter_name(char letter) {
    switch (letter) {
    case 'h':
        return "height";
    case 'w':
        return "width";
    case 'd':
        return "depth";
    case 'l':
        return "length";
    default:
        return NULL;
    }
}

// "hxwxd" in one token.
static size_t letters_in(const char *fold, const char *names[3]) {
    size_t count = 0;
    if (strlen(fold) == 3 && strspn(fold, "hwdl") == 3 && fold[0] != fold[1] && fold[1] != fold[2] &&
        fold[0] != fold[2]) { // "HWD"
        for (; count < 3; count++) names[count] = letter_name(fold[count]);
        return count;
    }
    for (; count < 3; fold += 2) {
        names[count] = letter_name(*fold);
        if (!names[count]) return 0;
        count++;
        if (!fold[1]) return count;
        if (fold[1] != 'x') return 0;
    }
    return 0;
}

static size_t letters_from(const struct note *note, size_t i, const char *names[3], size_t *taken) {
    const struct tokens *tokens = &note->tokens;
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD) return 0;
    size_t count = letters_in(tokens->at[i].fold, names);
    *taken = 1;
    if (count > 1) return count;
    while (count && count < 3 && token_is(tokens, i + *taken, "x") && i + *taken + 1 < tokens->count) {
        const char *more[3];
        if (letters_in(tokens->at[i + *taken + 1].fold, more) != 1) break;
        names[count++] = more[0];
        *taken += 2;
    }
    return count > 1 ? count : 0;
}

size_t dimension_letters(const struct note *note, size_t i, bool before, const char *names[3],
                         size_t *taken) {
    enum { MOST = 8 };
    if (!before) return letters_from(note, i, names, taken);
    for (size_t back = MOST; back > 0; back--) {
        if (back > i) continue;
        size_t count = letters_from(note, i - back, names, taken);
        if (!count) continue;
        size_t end = i - back + *taken;
        while (end < i && (token_is(&note->tokens, end, ":") || token_is(&note->tokens, end, ")") ||
                           token_is(&note->tokens, end, "is") || token_is(&note->tokens, end, "=")))
            end++;
        if (end != i) continue;
        *taken = back;
        return count;
    }
    return 0;
}

// --- parts ---

static const struct part parts[] = {
    {"cord", "length"},    {"cable", "length"},   {"flex", "length"},      {"lead", "length"},
    {"chain", "length"},   {"strap", "length"},   {"handle", "length"},    {"blade", "length"},
    {"hose", "length"},    {"pole", "length"},    {"shaft", "length"},     {"spout", "length"},
    {"stem", "length"},    {"neck", "length"},    {"fringe", "length"},    {"leg", "length"},
    {"heel", "height"},    {"base", "width"},     {"lid", "width"},        {"mouth", "width"},
    {"rim", "width"},      {"dial", "diameter"},  {"face", "diameter"},    {"shade", "width"},
    {"screen", "width"},   {"brim", "width"},     {"crown", "height"},     {"seat", "height"},
    {"back", "height"},    {"arm", "height"},     {"drawer", "width"},     {"shelf", "width"},
    {"wheel", "diameter"}, {"lens", "diameter"},  {"barrel", "length"},    {"chimney", "height"},
    {"mat", "width"},      {"opening", "width"},  {"jaw", "width"},        {"bail", "length"},
    {"frame", "width"},    {"hook", "length"},    {"needle", "length"},    {"rod", "length"},
    {"cuff", "width"},     {"border", "width"},   {"pendulum", "length"},  {"box", "size"},
    {"case", "size"},      {"collar", "width"},   {"tray", "width"},       {"knob", "diameter"},
    {"drive", "size"},     {"foot", "width"},     {"ring", "diameter"},    {"antenna", "length"},
    {"aerial", "length"},  {"bed", "length"},     {"sole", "length"},      {"band", "width"},
    {"bulb", "size"},      {"reel", "length"},    {"speaker", "diameter"}, {"horn", "diameter"},
    {"head", "diameter"},  {"bellows", "length"}, {"stand", "height"},     {"sign", "size"},
    {"pipe", "length"},    {"spring", "length"},  {"fitter", "diameter"},  {"letter", "height"},
    {"numeral", "height"}};

bool part_at(const struct note *note, size_t i, struct part *part) {
    if (i >= note->tokens.count || note->tokens.at[i].kind != TOKEN_WORD) return false;
    const char *word = note->tokens.at[i].one;
    size_t size = strlen(word);
    if (size > 2 && text_same(word + size - 2, "'s")) size -= 2; // "the cord's about 4 ft"
    for (size_t k = 0; k < COUNT(parts); k++)
        if (parts[k].name[0] == word[0] && !strncmp(parts[k].name, word, size) && !parts[k].name[size]) {
            *part = parts[k];
            return true;
        }
    return false;
}
