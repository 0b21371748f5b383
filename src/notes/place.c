// SPDX-License-Identifier: MIT
// A preposition, an article, then at most four words that are places or say which of them.
#include "notes/any.h"
#include "notes/place.h"

#include <string.h>

#include "notes/dimension.h"
#include "text/order.h"

bool place_noun(const struct note *note, size_t i) {
    struct part part;
    if (part_at(note, i, &part)) return true;
    static const char *const nouns[] = {
        "bottom",  "underside", "top",       "inside",   "side",   "edge",      "corner",    "label",
        "tag",     "insole",    "clasp",     "spine",    "cover",  "page",      "plate",     "body",
        "reverse", "tang",      "ferrule",   "cap",      "rear",   "end",       "mount",     "hinge",
        "belly",   "buckle",    "door",      "plug",     "cuff",   "hem",       "center",    "middle",
        "centre",  "front",     "headstock", "scroll",   "badge",  "sticker",   "housing",   "panel",
        "flap",    "pocket",    "lining",    "catch",    "latch",  "lock",      "margin",    "flyleaf",
        "jacket",  "sleeve",    "toe",       "shoulder", "glaze",  "movement",  "key",       "tine",
        "bowl",    "interior",  "exterior",  "outside",  "button", "waistband", "zip",       "zipper",
        "selvage", "backplate", "caseback",  "bridge",   "gauge",  "tank",      "tin",       "bezel",
        "post",    "pin",       "bail",      "yoke",     "title",  "tender",    "tailboard", "tailgate",
        "boiler",  "footplate", "smokebox",  "bonnet",   "cab",    "mudguard",  "bumper",    "prow",
        "stern",   "transom",   "bow",       "saddle",   "bodice", "neckline",  "waist",     "underarm",
        "armhole", "vent",      "brim",      "bustle",   "crotch", "gusset",    "yoke",      "placket"};
    if (i >= note->tokens.count || note->tokens.at[i].kind != TOKEN_WORD) return false;
    for (size_t k = 0; k < sizeof nouns / sizeof *nouns; k++)
        if (text_same(note->tokens.at[i].one, nouns[k])) return true;
    return false;
}

static bool is_which(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "lower", "upper", "left", "right", "inner", "outer", "back", "front", "top",
               "bottom", "rear", "hand", "title", "first", "last", "far", "very", "metal", "paper", "brass",
               "other", "glass", "maker's");
}

// How many words from `i` on name a place.
static size_t place_words(const struct note *note, size_t i) {
    enum { WORDS_MOST = 4 };
    size_t n = 0, last = 0;
    while (n < WORDS_MOST && i + n < note->tokens.count && note->tokens.at[i + n].stop == STOP_NONE) {
        bool noun = place_noun(note, i + n);
        bool side = ANY(&note->tokens, i + n, "left", "right", "back", "front");
        if (!noun && !is_which(note, i + n)) break;
        n++;
        if (noun || side) last = n;
    }
    // "the bottom of the lid", "the back of the label"
    if (last && token_is(&note->tokens, i + last, "of")) {
        size_t article = ANY(&note->tokens, i + last + 1, "the", "its", "each", "one", "every") ? 1 : 0;
        size_t more = i + last + 1 + article;
        if (place_noun(note, more)) last += 2 + article;
    }
    return last;
}

size_t place_at(const struct note *note, size_t i, const char **where) {
    const struct tokens *tokens = &note->tokens;
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD) return 0;
    bool plain = ANY(tokens, i, "on", "in", "at", "to", "into", "onto", "down", "along", "across", "around",
                     "round", "up");
    bool kept = ANY(tokens, i, "inside", "under", "underneath", "near", "behind", "beneath", "below", "above",
                    "by", "beside");
    size_t at = i + (plain || kept ? 1 : 0);
    if (plain && ANY(tokens, at, "inside", "underneath")) {
        kept = true;
        i = at++;
    }
    if ((plain || kept) && ANY(tokens, at, "of")) at++;
    size_t start = at;
    if ((plain || kept) && ANY(tokens, at, "the", "its", "each", "both", "one", "every", "a", "his", "their"))
        at++;
    size_t words = place_words(note, at);
    // "Cast into the gear wheel": a noun of no list before what it is a kind of.
    if (!words && plain && ANY(tokens, at - 1, "the", "its") && at + 1 < tokens->count &&
        tokens->at[at].kind == TOKEN_WORD && !tokens->at[at].capital && tokens->at[at].stop == STOP_NONE &&
        !note->fault_word[at]) {
        words = place_words(note, at + 1);
        words += words ? 1 : 0;
    }
    if (!words) {
        if (!ANY(tokens, i, "inside", "underneath", "beneath") || (plain && !kept)) return 0;
        *where = note_meant(note, i, i + 1);
        return start - i;
    }
    bool counts = ANY(tokens, start, "each", "both", "one", "every");
    *where = kept ? note_meant(note, i, at + words) : note_meant(note, counts ? start : at, at + words);
    return at + words - i;
}
