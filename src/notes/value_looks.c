// SPDX-License-Identifier: MIT
// Looks and stuffs that a word tells only by what stands beside it: the flower that is a color of glass, the
// cloth that a picture is stitched on, the leather that is called patent.
#include <string.h>

#include "notes/any.h"
#include "notes/standing.h"
#include "notes/value_keep.h"
#include "say/say.h"
#include "text/order.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_family(const struct note *note, const char *id) {
    return note->record->family && text_same(note->record->family->rule.id, id);
}

// "Marigold iridescent glass", "bowl, carnival glass, marigold": no flower is shown.
bool value_read_flower_color(struct note *note, size_t i, size_t n) {
    const struct tokens *tokens = &note->tokens;
    if (n != 1 || !ANY(tokens, i, "marigold", "peach", "lemon", "lime", "tangerine", "pumpkin", "cranberry",
                       "plum", "honey", "blueberry", "raspberry"))
        return false;
    bool led = ANY(tokens, i + 1, "iridescent", "carnival", "glass", "luster", "lustre", "iridescence",
                   "glaze", "opalescent");
    bool alone = is_family(note, "glassware") && standing_is_stop(note, i + 1) && i > 0 &&
                 tokens->at[i - 1].stop != STOP_NONE;
    if (!led && !alone) return false;
    value_keep(note, "color", arena_string(note->arena, tokens->at[i].fold), NULL, i, i + 1,
               value_sure(note, i, i + 1));
    note_take(note, i, i + 1, TAKEN_VALUE);
    return true;
}

// "Oranges and green leaves": fruit and flowers in their plural are shown; but "in oranges and browns".
bool value_read_fruit(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry color;
    // "With palm leaves": no stuff; but "of woven palm leaves"
    if (ANY(tokens, i, "palm", "bamboo", "maple", "willow", "banana") &&
        ANY(tokens, i + 1, "leaves", "fronds") && note_free(note, i, i + 2) && i > 0 &&
        ANY(tokens, i - 1, "with", "and", "big", "large", "green", "painted", "printed")) {
        const char *leaf = ANY(tokens, i + 1, "fronds") ? "frond" : "leaf";
        value_keep(note, "theme", arena_format(note->arena, "%s %s", tokens->at[i].fold, leaf), NULL, i,
                   i + 2, value_sure(note, i, i + 2));
        note_take(note, i, i + 2, TAKEN_VALUE);
        return true;
    }
    if (!ANY(tokens, i, "oranges", "lemons", "limes", "peaches", "plums", "violets", "tangerines", "pumpkins",
             "chestnuts", "apricots", "cherries"))
        return false;
    bool shades = (i > 0 && ANY(tokens, i - 1, "in", "mostly", "soft", "bright", "burnt")) ||
                  (ANY(tokens, i + 1, "and", ",") &&
                   ANY(tokens, i + 2, "browns", "greens", "yellows", "reds", "blues", "pinks", "golds",
                       "creams", "rusts", "purples", "grays", "greys"));
    // "The lemons are wearing off": what was spoken of before
    if (i > 0 && ANY(tokens, i - 1, "the", "these", "those")) return false;
    if (shades || word_at(note, i, 1u << USE_COLOR, &color) != 1) return false;
    value_keep(note, "theme", arena_string(note->arena, tokens->at[i].one), NULL, i, i + 1,
               value_sure(note, i, i + 1));
    note_take(note, i, i + 1, TAKEN_VALUE);
    return true;
}

bool value_read_cloth_color(struct note *note, size_t i, size_t n) {
    const struct tokens *tokens = &note->tokens;
    if (n != 1 ||
        !ANY(tokens, i, "stone", "slate", "pewter", "mahogany", "bronze", "copper", "sand", "oyster",
             "chestnut", "walnut", "amber", "coral", "pearl", "charcoal", "clay", "brick"))
        return false;
    if (!is_family(note, "clothing") && !is_family(note, "footwear") && !is_family(note, "linens") &&
        !is_family(note, "bags"))
        return false;
    struct word_entry stuff;
    bool apart = (i == 0 || tokens->at[i - 1].stop != STOP_NONE) && standing_is_stop(note, i + 1);
    if (!apart && !standing_is_type(note, i + 1) && !word_at(note, i + 1, 1u << USE_MATERIAL, &stuff))
        return false;
    value_keep(note, "color", arena_string(note->arena, tokens->at[i].fold), NULL, i, i + 1,
               value_sure(note, i, i + 1));
    note_take(note, i, i + 1, TAKEN_VALUE);
    return true;
}

// "Cross stitch tulips on cream linen": what the work was done on is the stuff of the thing.
bool value_is_ground(const struct note *note, size_t i) {
    enum { BACK = 8 };
    const struct tokens *tokens = &note->tokens;
    struct word_entry color;
    if (!ANY(tokens, i, "linen", "canvas", "cotton", "silk", "velvet", "felt", "wool", "satin", "burlap",
             "muslin", "organdy", "denim") ||
        !standing_is_stop(note, i + 1) || i < 2)
        return false;
    size_t on = i - 1;
    while (on > 0 && (word_at(note, on, 1u << USE_COLOR, &color) == 1 ||
                      ANY(tokens, on, "fine", "heavy", "coarse", "natural", "unbleached", "plain")))
        on--;
    if (!ANY(tokens, on, "on")) return false;
    for (size_t k = on; k > 0 && k + BACK > on && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (ANY(tokens, k - 1, "stitch", "stitched", "cross-stitch", "embroidered", "embroidery",
                "needlework", "crewel", "crewelwork", "applique", "appliqued", "printed", "painted", "beaded",
                "worked", "needlepoint", "cutwork", "quilted"))
            return true;
    return false;
}

// "Black patent clutch"; but "patent no. 41".
void value_read_patent(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry color;
    if (!is_family(note, "bags") && !is_family(note, "footwear") && !is_family(note, "clothing")) return;
    for (size_t i = 0; i + 1 < tokens->count; i++) {
        if (!token_is(tokens, i, "patent") || note->taken[i] != TAKEN_NOT) continue;
        if (!standing_is_type(note, i + 1) && !standing_is_stop(note, i + 1) &&
            !word_at(note, i + 1, 1u << USE_COLOR, &color) &&
            !ANY(tokens, i + 1, "finish", "leather", "upper", "uppers"))
            continue;
        size_t to = i + 1 + ANY(tokens, i + 1, "leather");
        value_keep(note, "material", "patent leather", NULL, i, to, value_sure(note, i, to));
        note_take(note, i, i + 1, TAKEN_VALUE);
        return;
    }
}

// Does the name of the thing end at token `end` in something that shows or is formed like something, so that
// the word `i` before it tells what? But "tree ornament", "cake plaque".
static bool is_borne_by(const struct note *note, size_t i, size_t end) {
    static const char *const bearers[] = {
        "poster",       "posters", "bookend", "bookends",   "brooch",      "brooches", "pin",
        "pins",         "charm",   "charms",  "pendant",    "earrings",    "figurine", "figurines",
        "blocks",       "trivet",  "trivets", "doorstop",   "cutter",      "cutters",  "planter",
        "bank",         "decoy",   "decoys",  "creamer",    "shaker",      "shakers",  "plaque",
        "plaques",      "statue",  "magnet",  "magnets",    "bust",        "sticker",  "paperweight",
        "stickers",     "puppet",  "puppets", "garland",    "puzzle",      "puzzles",  "cufflinks",
        "paperweights", "figure",  "figures", "candelabra", "weathervane", "print",    "prints",
        "playset"};
    const struct tokens *tokens = &note->tokens;
    if (!token_among(tokens, end - 1, bearers, COUNT(bearers))) return false;
    return !ANY(tokens, i, "glass", "tree", "christmas", "hat", "piano", "bridge", "coffee", "tea", "beer",
                "wine", "cake", "cookie", "play", "school", "travel", "cheese", "bread", "bow", "cocktail") ||
           ANY(tokens, end - 1, "poster", "posters", "print", "prints");
}

// "Circus poster", "barn playset": what the first words of a thing's name show; how many tokens at `i` that
// are in the name, 0 where none does.
size_t value_read_shown_by_name(struct note *note, size_t i) {
    enum { NAME_MOST = 4 };
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    size_t end = i;
    while (end < tokens->count && end < i + NAME_MOST && note->taken[end] == TAKEN_TYPE) end++;
    if (end < i + 2 || !is_borne_by(note, i, end)) return 0;
    size_t n = word_at(note, i, 1u << USE_THEME, &entry);
    bool toy = !n && ANY(tokens, end - 1, "playset") && end == i + 2 &&
               !ANY(tokens, i, "toy", "doll", "kids", "baby");
    if (!toy && (!n || i + n >= end)) return 0;
    const char *name = toy ? utf8_fold(note->arena, note_words(note, i, i + 1))
                           : say_singular(note->arena, word_own_name(note, &entry));
    n = toy ? 1 : n;
    value_keep(note, "theme", name, NULL, i, i + n, value_sure(note, i, i + n));
    return n;
}

// "Chess set, wooden men": the men are most of it.
void value_read_men(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    const char *type = note->record->type.value;
    struct word_entry stuff;
    if (!type || !(strstr(type, "chess") || strstr(type, "checkers") || strstr(type, "draughts"))) return;
    for (size_t i = 1; i < tokens->count; i++) {
        if (!ANY(tokens, i, "men", "pieces") || note->taken[i] != TAKEN_NOT || !note_free(note, i - 1, i) ||
            tokens->at[i - 1].stop != STOP_NONE || note->fault_word[i - 1] ||
            word_at(note, i - 1, 1u << USE_MATERIAL, &stuff) != 1)
            continue;
        value_keep(note, "material", word_trade_name(&stuff), NULL, i - 1, i, value_sure(note, i - 1, i));
        note_take(note, i - 1, i, TAKEN_VALUE);
    }
}
