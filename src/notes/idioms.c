// SPDX-License-Identifier: MIT
#include "notes/idioms.h"

#include "notes/any.h"
#include "notes/standing.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Mint condition", "crystal clear", "pewter color", "china cabinet": none says what its first word says
// alone.
bool value_is_idiom(const struct note *note, size_t i, size_t n, enum word_use use) {
    static const char *const states[] = {"condition", "state", "shape", "order"};
    static const char *const tones[] = {"color",   "colour",   "colored", "coloured",
                                        "colours", "colorway", "tone",    "toned"};
    static const char *const holders[] = {"cabinet", "hutch", "closet", "cupboard"};
    const struct tokens *tokens = &note->tokens;
    if (token_is(tokens, i, "mint") && n == 1) // a color only before what has it
        return token_among(tokens, i + 1, states, COUNT(states)) ||
               (i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
                ANY(tokens, i - 1, "near", "absolutely", "almost")) ||
               i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE;
    bool other = i >= 2 && token_is(tokens, i + n, "one") && token_is(tokens, i - 1, "a");
    if (other && ANY(tokens, i - 2, "with", "by", "w/", "w", "for", "and", "&", "plus"))
        return true;         // its knob's
    struct word_entry stuff; // "solid oak", but "otherwise solid", "a solid old bench"
    if (n == 1 && token_is(tokens, i, "solid") && !word_at(note, i + n, 1u << USE_MATERIAL, &stuff))
        return true;
    if (n == 1 && token_is(tokens, i, "short") && i > 1 && tokens->at[i - 1].stop == STOP_NONE &&
        tokens->at[i - 1].kind == TOKEN_WORD && tokens->at[i - 1].one != tokens->at[i - 1].fold &&
        (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE))
        return true; // "two sizes short"
    if (n == 1 && token_is(tokens, i, "paint") && token_phrase(tokens, i + 1, "all over")) return true;
    if (n == 1 && ANY(tokens, i, "thread", "threads") &&
        (ANY(tokens, i + 1, "stripped", "is", "has", "crossed") ||
         (i > 0 && token_is(tokens, i - 1, "screw"))))
        return true; // of a screw
    if (n == 1 && token_is(tokens, i, "straight") && i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
        (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE ||
         ANY(tokens, i + 1, "and", "no", "with", "but", "enough", "as")))
        return true; // "cue straight": not bent
    if (n == 1 && token_is(tokens, i, "paint") && i > 1 && token_is(tokens, i - 1, "with") &&
        ANY(tokens, i - 2, "filled", "clogged", "covered", "splashed", "spattered", "splattered", "spotted"))
        return true; // "letters filled with paint"
    if (n == 1 && ANY(tokens, i, "rubber", "cork") && i > 0 && i + 1 < tokens->count &&
        tokens->at[i].stop == STOP_NONE && tokens->at[i - 1].stop == STOP_NONE && note->fault_word[i + 1] &&
        word_at(note, i - 1, 1u << USE_PART, &stuff) == 1 &&
        (i == 1 || tokens->at[i - 2].stop != STOP_NONE || ANY(tokens, i - 2, "the", "its", "one", "and")))
        return true; // "handle rubber perished"
    if (n == 1 && i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
        ((use == USE_SHAPE &&
          ANY(tokens, i - 1, "worn", "sprung", "opened", "pulled", "rubbed", "rusted", "wearing")) ||
         (token_is(tokens, i, "spotted") && ANY(tokens, i - 1, "flat", "rust", "ink", "damp"))))
        return true; // "mouth worn wide"
    if (token_is(tokens, i, "bubble") && token_is(tokens, i + n, "in")) return true;
    if (token_is(tokens, i, "paints")) return true; // goods
    if (n == 1 && use == USE_THEME && theme_is_idle(note, i)) return true;
    if (n == 1 && use == USE_COLOR && ANY(tokens, i, "oranges", "limes", "peaches", "plums"))
        return true; // fruit
    if (n == 1 && use == USE_SHAPE && ANY(tokens, i, "thick", "thin") && i > 1 &&
        ANY(tokens, i - 1, "is", "are") && ANY(tokens, i - 2, "paint", "varnish", "glaze", "finish", "dust"))
        return true; // "paint is thick"
    const struct family *family = note->record->family;
    if (n == 1 && use == USE_THEME && token_is(tokens, i, "bow") && family &&
        (text_same(family->rule.id, "music") || text_same(family->rule.id, "sports")))
        return true;
    if (n == 1 && use == USE_THEME && note->record->type.value && strstr(note->record->type.value, "chess") &&
        ANY(tokens, i, "king", "kings", "queen", "queens", "knight", "knights", "bishop", "bishops", "castle",
            "castles"))
        return true; // its men
    if (n == 1 && use == USE_MATERIAL && token_is(tokens, i, "mop") &&
        ANY(tokens, i + 1, "wringer", "bucket", "head", "handle", "sink", "pail", "stick"))
        return true;
    if (n == 1 && use == USE_COLOR && ANY(tokens, i, "browns", "blacks", "yellows", "greens") &&
        ANY(tokens, i + 1, "both", "the", "it", "evenly", "bread", "nicely", "toast", "well", "one"))
        return true; // "browns both sides"
    if (use == USE_THEME && ANY(tokens, i, "number", "numbers", "letter", "letters"))
        return !ANY(tokens, i + n, "blocks", "cards", "design", "print", "pattern",
                    "puzzle"); // "lume numbers"
    struct word_entry part;
    if (n == 1 && token_is(tokens, i, "open") && i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
        word_at(note, i - 1, 1u << USE_PART, &part))
        return true; // "one corner open"
    // "Glass has a scratch", "glass ok": the one of the watch or the frame.
    static const char *const verbs[] = {"has",   "is",       "ok",    "okay",     "fine",    "good",
                                        "clear", "intact",   "foxed", "clean",    "present", "missing",
                                        "was",   "had",      "wavy",  "perfect",  "sound",   "whole",
                                        "great", "unbroken", "all",   "uncracked"};
    bool begins = i == 0 || tokens->at[i - 1].stop != STOP_NONE;
    if (n == 1 && begins && token_is(tokens, i, "glass") && token_among(tokens, i + 1, verbs, COUNT(verbs)))
        return true;
    // "Iron pitted" of a plane, "cone torn" of a speaker, "foxed round the edge"
    bool faulty = i + n < tokens->count && note->fault_word[i + n] && tokens->at[i + n].stop == STOP_NONE;
    bool speckled = use == USE_COLOR &&
                    ANY(tokens, i + n, "speckled", "mottled", "spotted", "flecked", "streaked") &&
                    i + n + 1 < tokens->count &&
                    (tokens->at[i + n + 1].stop != STOP_NONE ||
                     ANY(tokens, i + n + 1, "enamel", "enamelware", "graniteware", "glaze", "stoneware",
                         "pottery", "wool", "tweed", "glass"));
    // "Square cut glass"
    speckled |= ANY(tokens, i + n, "cut") && ANY(tokens, i + n + 1, "glass", "crystal", "steel");
    if (n == 1 && begins && i > 0 && faulty && !standing_is_paint(note, i + n) && !speckled &&
        (use == USE_SHAPE || use == USE_PATTERN || use == USE_STYLE || use == USE_COLOR || use == USE_THEME))
        return true;
    // "Check works one way": of a reel
    if (n == 1 && begins && i > 0 && (use == USE_SHAPE || use == USE_PATTERN || use == USE_STYLE) &&
        ANY(tokens, i + 1, "works", "sticks", "slips", "holds", "is", "has", "doesn't", "does", "moves",
            "runs", "turns", "clicks", "seems", "needs", "goes", "still", "only"))
        return true;
    if (n == 1 && begins && i > 0 && faulty && token_is(tokens, i, "iron")) return true;
    if (n == 1 && token_is(tokens, i, "round") && i > 0 &&
        (note->fault_word[i - 1] ||
         (tokens->at[i - 1].stop == STOP_NONE &&
          ANY(tokens, i - 1, "all", "way", "goes", "turns", "right", "run", "runs"))))
        return true;
    // "Scene round the sides", but "round, 9 inches"
    if (n == 1 && token_is(tokens, i, "round") && ANY(tokens, i + 1, "the", "its", "each", "both", "their"))
        return true;
    // "The line is cut", "cord has been cut"
    if (n == 1 && token_is(tokens, i, "cut") && i > 0 && !ANY(tokens, i + 1, "glass", "crystal", "steel") &&
        ANY(tokens, i - 1, "is", "was", "been", "are", "were", "has", "someone", "somebody", "cord", "line",
            "cable", "rope", "wire", "flex", "wiring", "string", "lead"))
        return true;
    static const char *const blots[] = {"on",    "specks", "spots",     "splashes", "splash", "splatter",
                                        "marks", "flecks", "splatters", "drips",    "smears", "splodges"};
    if (n == 1 && token_is(tokens, i, "paint") && token_among(tokens, i + 1, blots, COUNT(blots)))
        return true;
    static const char *const removers[] = {"remover",   "proof",     "proofing",
                                           "converter", "treatment", "inhibitor"};
    if (token_is(tokens, i, "rust") && token_among(tokens, i + n, removers, COUNT(removers))) return true;
    if (token_is(tokens, i, "crystal") && token_is(tokens, i + n, "clear")) return true;
    if (n == 1 && token_is(tokens, i, "clear") && i > 0 && token_is(tokens, i - 1, "crystal") &&
        (i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE || tokens->at[i + 1].stop != STOP_NONE))
        return true;
    if (token_is(tokens, i, "china") && token_among(tokens, i + n, holders, COUNT(holders))) return true;
    return use == USE_MATERIAL && token_among(tokens, i + n, tones, COUNT(tones));
}
