// SPDX-License-Identifier: MIT
// Stuffs that no word of making tells: a label names them, a fault is said of them, or the seller will not
// stand for them.
#include <string.h>

#include "notes/any.h"
#include "notes/chunk.h"
#include "notes/standing.h"
#include "notes/value_keep.h"
#include "notes/value_of_other.h"
#include "text/order.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "It says sterling on the handle": what the mark stands on is of it, and the blade need not be.
static const char *marked_part(const struct note *note, size_t i) {
    static const char *const parts[] = {"handle", "handles", "lid",   "collar", "rim",
                                        "trim",   "stem",    "blade", "frame",  "cap",
                                        "clasp",  "catch",   "case",  "pin",    "mount"};
    size_t from = note->tokens.at[i].from;
    const char *word = note->tokens.text + from;
    for (size_t m = 0; m < note->record->mark_count; m++) {
        const struct mark *mark = &note->record->marks[m];
        if (!mark->where || !strstr(mark->text, arena_copy(note->arena, word, note->tokens.at[i].to - from)))
            continue;
        for (size_t k = 0; k < COUNT(parts); k++) {
            const char *at = strstr(mark->where, parts[k]);
            if (at && !at[strlen(parts[k])]) return parts[k];
        }
    }
    return NULL;
}

// Does a name go on at token `i` of a mark? "STEEL BLADE" and "OIL ON BOARD" are none.
static bool names_on(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    return i < tokens->count && note->taken[i] == TAKEN_MARK && tokens->at[i].kind == TOKEN_WORD &&
           tokens->at[i].capital && tokens->at[i].stop == STOP_NONE && !tokens->at[i].starts &&
           !word_at(note, i, (1u << USE_MATERIAL) | (1u << USE_PART) | (1u << USE_TECHNIQUE), &entry) &&
           !ANY(tokens, i, "lined", "made", "lining", "ware", "base", "core", "filled", "plated", "handle",
                "and");
}

// "R. Cork", "Marble & Co", "Ivory Bros": a firm or somebody is called so.
static bool is_persons(const struct note *note, size_t i, size_t to) {
    const struct tokens *tokens = &note->tokens;
    size_t before = i > 1 && token_is(tokens, i - 1, ".") ? i - 2 : i > 0 ? i - 1 : i;
    bool initial = before < i && note->taken[before] == TAKEN_MARK && tokens->at[before].kind == TOKEN_WORD &&
                   tokens->at[before].to - tokens->at[before].from == 1;
    return initial || (i > 0 && token_is(tokens, i - 1, "&")) ||
           ANY(tokens, to, "&", "co", "bros", "sons", "son", "ltd");
}

// "14K", "375" on jewelry: gold of that fineness; of "1/20 12K GF" the letters say that it is a coat only.
static bool read_carats(struct note *note, size_t i) {
    enum { FAR = 3 };
    static const struct {
        const char *letters, *print;
    } coats[] = {{"gf", "gold filled"}, {"filled", "gold filled"},    {"gp", "gold plate"},
                 {"hge", "gold plate"}, {"rgp", "rolled gold plate"}, {"plate", "gold plate"},
                 {"ep", "gold plate"},  {"gep", "gold plate"},        {"plated", "gold plate"}};
    const struct tokens *tokens = &note->tokens;
    const struct family *family = note->record->family;
    if (!family || !text_same(family->rule.id, "jewelry")) return false;
    const char *fold = tokens->at[i].fold, *carats = NULL;
    size_t digits = strspn(fold, "0123456789");
    if (ANY(tokens, i, "375", "417", "585", "750")) carats = fold; // parts in a thousand
    if ((digits == 1 || digits == 2) && ANY(tokens, i, "9k", "10k", "12k", "14k", "15k", "18k", "22k", "9kt",
                                            "10kt", "12kt", "14kt", "18kt", "9ct", "15ct", "18ct", "22ct"))
        carats = fold[digits] == 'c' ? arena_format(note->arena, "%.*sct", (int)digits, fold)
                                     : arena_format(note->arena, "%.*sk", (int)digits, fold);
    if (!carats) return false;
    const char *print = arena_format(note->arena, "%s gold", carats);
    for (size_t at = i + 1; at <= i + FAR && at < tokens->count && note->taken[at] == TAKEN_MARK; at++)
        for (size_t k = 0; k < COUNT(coats); k++)
            if (token_is(tokens, at, coats[k].letters))
                print = arena_format(note->arena, "%s %s", carats, coats[k].print);
    value_keep(note, "material", print, marked_part(note, i), i, i + 1, SURE_STATED);
    return true;
}

// A label or stamp that names what the thing is made of; "925" is how silver is marked.
static void read_marked_materials(struct note *note) {
    static const uint32_t material = 1u << USE_MATERIAL;
    struct word_entry entry;
    for (size_t i = 0; i < note->tokens.count; i++) {
        if (note->taken[i] != TAKEN_MARK || read_carats(note, i)) continue;
        size_t n = word_at(note, i, material, &entry);
        if (ANY(&note->tokens, i, "garnet", "ruby", "pearl", "amber", "ivory", "jade", "coral", "opal",
                "amethyst", "diamond", "emerald", "sapphire", "crystal", "jet", "turquoise", "ebony", "stone",
                "iron", "ash", "pottery", "quill", "reed", "horn", "cork", "lead", "chalk", "willow"))
            continue; // "Garnet Toffee": a name
        if (n && is_persons(note, i, i + n)) continue;
        if (n && names_on(note, i + n)) continue; // "PINE RIDGE DAIRY"
        if (token_is(&note->tokens, i, "925") || token_is(&note->tokens, i, "sterling") ||
            (token_is(&note->tokens, i, "ster") && note->tokens.at[i].capitals)) {
            value_keep(note, "material", "sterling silver", marked_part(note, i), i, i + 1, SURE_STATED);
        } else if (n && !(entry.uses & (1u << USE_COLOR)) && note->taken[i + n - 1] == TAKEN_MARK)
            value_keep(note, "material", entry.print, marked_part(note, i), i, i + n,
                       value_sure(note, i, i + n));
        if (n) i += n - 1;
    }
}

// "Pewter flagon, I think pewter anyway": what was said of it before is a guess.
static void read_second_thoughts(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        if (!ANY(tokens, i, "think", "reckon", "guess", "believe", "suppose", "assume", "suspect") ||
            !ANY(tokens, i - 1, "i", "i'd", "we", "i'm"))
            continue;
        size_t at = i + 1;
        while (at < i + 4 && ANY(tokens, at, "it's", "its", "it", "is", "they're", "that's", "this")) at++;
        bool ends = at < tokens->count && (at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE ||
                                           ANY(tokens, at + 1, "anyway", "but", "though", "at"));
        for (size_t a = 0; ends && a < note->record->attribute_count; a++) {
            struct value *value = &note->record->attributes[a];
            if (!value->of && text_same(value->value, tokens->at[at].fold)) value->sure = SURE_GUESS;
        }
    }
}

// "I am not going to promise cashmere": what the seller will not stand for is a guess, wherever it was said.
static void read_reserves(struct note *note) {
    static const char *const words[] = {"promise", "promising", "claim", "claiming",
                                        "swear",   "guarantee", "vouch", "bet"};
    static const char *const sure[] = {"sure", "certain", "positive", "know"};
    static const char *const nots[] = {"not",   "don't",  "dont",     "never",
                                       "can't", "cannot", "couldn't", "isn't"};
    for (size_t i = 0; i < note->tokens.count; i++) {
        bool unsure =
            i > 0 && token_among(&note->tokens, i, sure, COUNT(sure)) &&
            (token_among(&note->tokens, i - 1, nots, COUNT(nots)) || token_is(&note->tokens, i - 1, "be")) &&
            (token_is(&note->tokens, i + 1, "if") || token_is(&note->tokens, i + 1, "whether") ||
             token_is(&note->tokens, i + 1, "it's") || token_is(&note->tokens, i + 1, "its"));
        if (!unsure && !token_among(&note->tokens, i, words, COUNT(words))) continue;
        for (size_t k = i + 1; k < note->tokens.count && k < i + 6 && note->tokens.at[k].stop < STOP_SENTENCE;
             k++)
            for (size_t a = 0; a < note->record->attribute_count; a++)
                if (text_same(note->record->attributes[a].value, note->tokens.at[k].fold))
                    note->record->attributes[a].sure = SURE_GUESS;
    }
}

// "Satchel, hard leather, black", "lamp, dented brass": between its stops in the sentence that opens the
// note.
static bool is_sort_of(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const struct family *family = note->record->family;
    if (i < 3 || !standing_is_stop(note, i + 1) || !standing_is_stop(note, i - 2) ||
        tokens->at[i - 1].stop != STOP_NONE || note_clause_from(note, i, STOP_SENTENCE) != 0)
        return false;
    bool soft = ANY(tokens, i, "leather", "canvas", "suede", "vinyl", "cotton", "linen", "wool"); // of an oar
    bool bag = family && (text_same(family->rule.id, "bags") || text_same(family->rule.id, "footwear"));
    if (family && text_same(family->rule.id, "furniture")) return false; // the top of a desk
    return ANY(tokens, i - 1, "hard", "stiff") || ((bag || !soft) && note->fault_word[i - 1]);
}

// "A tear in the canvas near the strap", "no cracks in the leather".
static bool is_place_of_fault(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const struct family *family = note->record->family;
    if (i < 3 || !ANY(tokens, i - 2, "in", "on", "to") || !note->fault_word[i - 3] ||
        (family && (text_same(family->rule.id, "furniture") || text_same(family->rule.id, "jewelry"))))
        return false;
    return standing_is_stop(note, i + 1) ||
           ANY(tokens, i + 1, "near", "by", "at", "along", "around", "round", "but", "though", "and");
}

// "Leather stiff and cracked", "the brass has gone dull": what is wrong is said of the stuff, which no other
// word has told. A glass, a rubber or a paper may be a part only.
static void read_spoken_stuff(struct note *note) {
    static const char *const whole[] = {
        "leather",   "brass",    "copper", "iron",       "steel",     "tin",     "pewter", "bronze",
        "wicker",    "canvas",   "oak",    "pine",       "elm",       "beech",   "ash",    "teak",
        "walnut",    "mahogany", "wood",   "wool",       "cotton",    "linen",   "silk",   "tweed",
        "suede",     "marble",   "slate",  "stone",      "plastic",   "bamboo",  "vinyl",  "nylon",
        "aluminium", "aluminum", "zinc",   "terracotta", "stoneware", "plywood", "rattan"};
    static const char *const links[] = {"is",    "has", "has gone", "was",   "looks", "feels", "gone", "all",
                                        "needs", "dry", "still",    "could", "got",   "a bit", "very", "in"};
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    for (size_t i = 0; i < note->record->attribute_count; i++)
        if (text_same(note->record->attributes[i].name, "material") && !note->record->attributes[i].of)
            return;
    for (size_t i = 0; i < tokens->count; i++) {
        bool of_part = false; // "leather case, a scuff on the leather"
        for (size_t k = 0; k < note->record->attribute_count; k++)
            of_part |= token_is(tokens, i, note->record->attributes[k].value);
        if (of_part) continue;
        if (!token_among(tokens, i, whole, COUNT(whole)) || note->taken[i] != TAKEN_NOT) continue;
        size_t from = i > 0 && ANY(tokens, i - 1, "the", "its") ? i - 1 : i;
        bool opens = from == 0 || tokens->at[from - 1].stop >= STOP_CLAUSE;
        bool said = !standing_is_stop(note, i + 1) &&
                    (note->fault_word[i + 1] || token_among(tokens, i + 1, links, COUNT(links)));
        if (!((opens && said) || is_sort_of(note, i) || (from < i && is_place_of_fault(note, i))) ||
            word_at(note, i, 1u << USE_MATERIAL, &entry) != 1)
            continue;
        value_keep(note, "material", entry.print, NULL, i, i + 1, SURE_STATED);
        return;
    }
}

// Glassware whose note speaks of "the glass" is of glass.
static void read_glass(struct note *note) {
    if (!note->record->family || !text_same(note->record->family->rule.id, "glassware")) return;
    for (size_t i = 0; i < note->record->attribute_count; i++)
        if (text_same(note->record->attributes[i].name, "material")) return;
    for (size_t i = 0; i < note->tokens.count; i++)
        if (ANY(&note->tokens, i, "glass", "glasses") && note->taken[i] != TAKEN_ASIDE) {
            value_keep(note, "material", "glass", NULL, i, i + 1, SURE_STATED);
            return;
        }
}

void value_read_stuffs(struct note *note) {
    read_marked_materials(note);
    read_spoken_stuff(note);
    read_reserves(note);
    read_second_thoughts(note);
    read_glass(note);
}

// "Apple handle", "cherry scales": the wood of the tree, and no picture of its fruit.
bool value_read_fruitwood(struct note *note, size_t i, size_t n) {
    static const char *const trees[] = {"apple", "pear",  "cherry", "plum",
                                        "olive", "lemon", "holly",  "hawthorn"};
    static const char *const parts[] = {
        "handle", "handles", "handled", "grip",  "grips", "scales", "stock",    "body",  "knob", "knobs",
        "shaft",  "stem",    "tote",    "haft",  "bowl",  "box",    "case",     "frame", "top",  "legs",
        "posts",  "drawer",  "drawers", "door",  "doors", "panels", "sides",    "seat",  "arms", "rails",
        "boards", "veneer",  "base",    "slats", "feet",  "head",   "spindles", "turned"};
    const struct tokens *tokens = &note->tokens;
    if (n != 1 || !token_among(tokens, i, trees, COUNT(trees))) return false;
    const struct family *family = note->record->family;
    bool wooden = family && strstr("furniture clocks-watches", family->rule.id);
    for (size_t k = 0; k < tokens->count && !wooden; k++)
        wooden = ANY(tokens, k, "turned", "dovetailed", "treen", "hewn", "whittled");
    bool timber = wooden && // "table, cherry, two drawers"
                  standing_is_stop(note, i + 1) && i > 0 && tokens->at[i - 1].stop != STOP_NONE;
    // "Cherry drop leaf table"
    timber |= wooden && standing_is_type(note, i + 1) && (i == 0 || tokens->at[i - 1].stop != STOP_NONE);
    bool part = token_among(tokens, i + 1, parts, COUNT(parts));
    if (!part && !timber) return false;
    const char *of = ANY(tokens, i + 1, "handled")                           ? "handle"
                     : timber || ANY(tokens, i + 1, "box", "body", "turned") ? NULL
                                                                             : tokens->at[i + 1].fold;
    value_keep(
        note, "material",
        arena_format(note->arena, ANY(tokens, i, "apple", "pear") ? "%swood" : "%s wood", tokens->at[i].fold),
        of ? arena_string(note->arena, of) : NULL, i, i + 1, value_sure(note, i, i + 1));
    note_take(note, i, i + 1, TAKEN_VALUE);
    return true;
}

// "Mahogany with brass plates", "a copper plate on the toe": a part, and nothing that was plated.
bool value_read_plates(struct note *note, size_t i, size_t n) {
    static const char *const leads[] = {"a",      "an",   "the",   "one",  "small",
                                        "little", "oval", "round", "with", "shaped"};
    const struct tokens *tokens = &note->tokens;
    if (n != 2 || !ANY(tokens, i + 1, "plate", "plates", "bands") ||
        !ANY(tokens, i, "brass", "copper", "steel", "iron", "zinc", "lead", "bronze", "nickel", "tin"))
        return false;
    bool many = ANY(tokens, i + 1, "plates", "bands");
    bool one = i > 0 && token_among(tokens, i - 1, leads, COUNT(leads)) && !ANY(tokens, i, "nickel") &&
               (i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE ||
                ANY(tokens, i + 2, "on", "at", "to", "in", "with", "engraved", "stamped", "screwed", "says",
                    "reads", "over", "under", "marked", "and"));
    if ((!many && !one) || value_is_of_other(note, i, n, USE_MATERIAL)) return false;
    value_keep(note, "material", arena_string(note->arena, tokens->at[i].fold), tokens->at[i + 1].fold, i,
               i + 1, value_sure(note, i, i + 1));
    note_take(note, i, i + 1, TAKEN_VALUE);
    return true;
}
