// SPDX-License-Identifier: MIT
// Marks are pictures as often as words, and sellers tell both in one breath: "an anchor and Dorrin", "44 and
// an arrow stamped on the cheek", "a D in a diamond". The picture has no letters to be kept; what stands
// beside it has.
#include "notes/any.h"
#include "notes/english.h"
#include "notes/mark_found.h"
#include "notes/mark_words.h"
#include "notes/note.h"
#include "notes/number.h"
#include "notes/persons.h"
#include "notes/place.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_figure(const struct tokens *tokens, size_t i) {
    return i < tokens->count && (tokens->at[i].kind == TOKEN_FIGURE || tokens->at[i].kind == TOKEN_CODE);
}

size_t mark_figures_end(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    enum { FIGURES_MOST = 4 };
    size_t end = i + 1;
    while (end < i + 2 * FIGURES_MOST && ANY(tokens, end, "x", "\xC3\x97", "-") &&
           is_figure(tokens, end + 1) && is_figure(tokens, end - 1))
        end += 2;
    return end;
}

static bool is_device(const struct tokens *tokens, size_t i) {
    static const char *const devices[] = {
        "anchor", "crown",  "star",   "lion",  "bird",     "arrow",   "bell",       "tree",    "ship",
        "eagle",  "castle", "shield", "wheel", "flower",   "leaf",    "sun",        "moon",    "hand",
        "key",    "heart",  "cross",  "horse", "elephant", "stag",    "swan",       "fish",    "windmill",
        "rose",   "harp",   "globe",  "crest", "beehive",  "thistle", "lighthouse", "dragon",  "diamond",
        "circle", "wreath", "cow",    "cock",  "rooster",  "hound",   "oak",        "acorn",   "trident",
        "sword",  "swords", "bull",   "ram",   "owl",      "bee",     "crescent",   "dolphin", "triangle",
        "device", "emblem", "arms",   "shell", "lamp",     "hammer",  "pickaxe",    "monogram"};
    return token_among(tokens, i, devices, COUNT(devices));
}

static bool is_joint(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "and", "&", "over", "above", "under", "below", "beside", "with", "plus");
}

size_t mark_device_before(const struct note *note, size_t i) {
    enum { ADJECTIVES_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    if (i < 2 || !is_joint(tokens, i - 1) || !is_device(tokens, i - 2)) return i;
    size_t from = i - 2;
    for (size_t n = 0; n < ADJECTIVES_MOST && from > 0 && tokens->at[from - 1].kind == TOKEN_WORD; n++) {
        if (ANY(tokens, from - 1, "a", "an", "the")) return from - 1;
        if (!ANY(tokens, from - 1, "small", "little", "big", "large", "flying", "crowned", "rampant",
                 "seated", "standing", "broad", "double", "blue", "red", "green", "gold", "black", "winged"))
            break;
        from--;
    }
    return from;
}

// "and an arrow stamped", "over a small crown impressed": the verb's token; 0 where that does not stand.
static size_t verb_behind_device(const struct note *note, size_t at) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    if (!is_joint(tokens, at) || !ANY(tokens, at + 1, "a", "an", "the", "some")) return 0;
    for (size_t k = at + 3; k <= at + 2 + WORDS_MOST && k < tokens->count; k++)
        if (mark_is_stamp(note, k)) return is_device(tokens, k - 1) ? k : 0;
    return 0;
}

// "And a broad arrow": the token behind it; 0 where that does not stand.
static size_t behind_device(const struct note *note, size_t at) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    if (!is_joint(tokens, at) || !ANY(tokens, at + 1, "a", "an", "the")) return 0;
    for (size_t k = at + 2; k < at + 2 + WORDS_MOST; k++)
        if (is_device(tokens, k)) return k + 1;
    return 0;
}

static size_t keep(struct note *note, size_t begin, size_t from, size_t to, size_t at) {
    const char *where = NULL;
    size_t place = place_at(note, at, &where);
    struct mark_found found = {from, to, place ? at + place : to, place ? where : NULL};
    return mark_keep(note, begin, &found) ? found.end - begin : 0;
}

// "With 1931 and an arrow stamped inside the mouth".
static size_t beside_device(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->shouts || (tokens->flat && !is_figure(tokens, i)) || !mark_is_text(note, i)) return 0;
    if (i > 0 && mark_is_text(note, i - 1) && tokens->at[i - 1].stop == STOP_NONE) return 0;
    size_t end = is_figure(tokens, i) ? i + 1 : mark_proper_run(note, i), verb = 0;
    if (end == i) return 0;
    if (!tokens->at[i].starts) verb = verb_behind_device(note, end);
    if (verb) return keep(note, i, i, end, verb + 1);
    // "3 and a broad arrow on one side", "1884 on the back of each"
    size_t at = is_figure(tokens, i) ? behind_device(note, end) : 0;
    const char *where;
    bool each = is_figure(tokens, i) && tokens->at[i].starts && token_is(tokens, end, "on") &&
                place_at(note, end, &where) && ANY(tokens, end + place_at(note, end, &where), "of") &&
                ANY(tokens, end + place_at(note, end, &where) + 1, "each", "both", "one", "every", "it");
    if (at && !place_at(note, at, &where)) at = 0;
    return at || each ? keep(note, i, i, end, at ? at : end) : 0;
}

// "A raised 12 on the base", "a 7 pressed into the clay underneath".
static size_t worked_figure(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const char *where;
    if (!is_figure(tokens, i) || i == 0) return 0;
    size_t end = mark_figures_end(note, i);
    bool ends = end >= tokens->count || tokens->at[end].stop != STOP_NONE || place_at(note, end, &where) ||
                behind_device(note, end);
    if (ends && ANY(tokens, i - 1, "inked", "chalked", "pencilled", "penciled"))
        return keep(note, i, i, end, end);
    // "12 lb stamped on the shank"
    if (tokens->at[end].kind == TOKEN_WORD &&
        ANY(tokens, end, "lb", "lbs", "oz", "cwt", "ton", "pint", "gal", "volts", "watts") &&
        ANY(tokens, end + 1, "stamped", "cast", "embossed", "engraved", "marked") &&
        (place_at(note, end + 2, &where) || ANY(tokens, end + 2, "on", "in", "into", "inside")))
        return keep(note, i, i, end + 1, end + 2);
    // "With a number 6 under it"
    if (ANY(tokens, i - 1, "number", "no") && ANY(tokens, end, "under", "below", "above", "beside", "over") &&
        ANY(tokens, end + 1, "it", "that", "this", "them"))
        return keep(note, i, i, end, end + 2);
    if (ANY(tokens, i - 1, "raised", "pencil", "chalk", "penned") && place_at(note, end, &where))
        return keep(note, i, i, end, end);
    if (!ANY(tokens, i - 1, "a", "an", "the", "with", "number", "and", ",")) return 0;
    if (!ANY(tokens, end, "pressed", "pushed", "cut", "scratched", "worked", "sunk", "punched", "burnt",
             "burned", "cast", "moulded", "molded", "stamped") ||
        !ANY(tokens, end + 1, "into", "in", "deep", "through"))
        return 0;
    size_t at = end + 2 + (ANY(tokens, end + 2, "in", "into") ? 1 : 0);
    if (ANY(tokens, at, "the", "its")) at++;
    if (!ANY(tokens, at, "clay", "glaze", "paste", "metal", "iron", "brass", "wood", "leather", "lead", "wax",
             "stone", "body", "slip", "enamel", "glass", "pewter", "copper", "tin", "steel"))
        return 0;
    return keep(note, i, i, end, at + 1);
}

// "The mark on the base is a D in a diamond", "base mark D over 14".
static size_t told_letter(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->flat || tokens->shouts || !ANY(tokens, i, "mark", "stamp", "backstamp", "trademark") ||
        mark_is_denied(note, i))
        return 0;
    const char *where = NULL;
    size_t at = i + 1 + place_at(note, i + 1, &where);
    if (ANY(tokens, at, "is", "was", ":", ",", "looks", "reads")) at++;
    if (ANY(tokens, at, "like", "just", "only")) at++;
    if (ANY(tokens, at, "a", "an", "the")) at++;
    if (at >= tokens->count || tokens->at[at].kind != TOKEN_WORD || tokens->at[at].starts) return 0;
    const struct token *letter = &tokens->at[at];
    if (!letter->capitals && !(letter->capital && letter->to - letter->from == 1)) return 0;
    size_t end = at + 1;
    bool framed =
        token_is(tokens, end, "in") && ANY(tokens, end + 1, "a", "an") && is_device(tokens, end + 2);
    bool stacked = ANY(tokens, end, "over", "above", "under") && mark_is_text(note, end + 1);
    if (!framed && !stacked) return 0;
    struct mark_found found = {at, end, end, where};
    if (!mark_keep(note, i, &found)) return 0;
    if (stacked && note_free(note, end + 1, end + 2)) {
        found = (struct mark_found){end + 1, end + 2, end + 2, where};
        if (mark_keep(note, end, &found)) return found.end - i;
    }
    return end - i;
}

// "Anvil, weight marks 0 3 21 on the side": hundredweights, quarters and pounds, as anvils have them.
static size_t weight_figures(struct note *note, size_t i) {
    enum { LEAST = 3 };
    const struct tokens *tokens = &note->tokens;
    const char *where;
    size_t end = i;
    if (i == 0 || !ANY(tokens, i - 1, "marks", "mark", "with", "figures", "numbers", "weight", "has"))
        return 0;
    while (end < tokens->count && tokens->at[end].kind == TOKEN_FIGURE && strlen(tokens->at[end].fold) < 3)
        end++;
    bool told = ANY(tokens, i - 1, "marks", "mark", "figures", "numbers");
    if (end < i + LEAST || !(told || place_at(note, end, &where))) return 0;
    return keep(note, i, i, end, end);
}

// "Radio with Melvane across the dial", "has Dorrin on the bottom": nobody writes such a name about a thing.
static size_t name_at_place(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->flat || tokens->shouts || i == 0 || tokens->at[i].kind != TOKEN_WORD ||
        !tokens->at[i].capital || tokens->at[i].starts || note->fault_word[i] ||
        !ANY(tokens, i - 1, "with", "has", "have", "bears", "carries", "shows", "showing", "bearing"))
        return 0;
    size_t end = mark_proper_run(note, i);
    const char *where;
    // "Dial with Orrindel printed on it"
    if (end > i && !person_first_name(note, i) && mark_is_stamp(note, end) &&
        ANY(tokens, end + 1, "on", "in", "into", "across", "round", "around") &&
        ANY(tokens, end + 2, "it", "them"))
        return keep(note, i, i, end, end + 3);
    if (end == i || (end == i + 1 && english_at(note, i)) || person_first_name(note, i) ||
        !ANY(tokens, end, "on", "across", "along", "under", "inside", "round", "around", "underneath") ||
        !place_at(note, end, &where))
        return 0;
    return keep(note, i, i, end, end);
}

// "A number four punched on the lid".
static size_t spelled_number(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t taken = 0;
    if (!token_is(tokens, i, "number") || is_figure(tokens, i + 1) || !number_whole(tokens, i + 1, &taken) ||
        !mark_is_stamp(note, i + 1 + taken))
        return 0;
    return keep(note, i, i + 1, i + 1 + taken, i + 2 + taken);
}

size_t mark_find_device(struct note *note, size_t i) {
    if (!mark_is_text(note, i) && !ANY(&note->tokens, i, "mark", "stamp", "backstamp", "trademark", "number"))
        return 0;
    size_t taken = beside_device(note, i);
    if (!taken) taken = spelled_number(note, i);
    if (!taken) taken = worked_figure(note, i);
    if (!taken) taken = told_letter(note, i);
    if (!taken) taken = weight_figures(note, i);
    return taken ? taken : name_at_place(note, i);
}
