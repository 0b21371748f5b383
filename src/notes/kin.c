// SPDX-License-Identifier: MIT
// A noun that several families know ("jar", "beads", "tray") is settled by what the note says of its
// material, then by the parts, areas and other goods that it names. The order of the families decides where
// nothing does.
#include "notes/kin.h"
#include "notes/any.h"
#include "text/order.h"
#include "text/utf8.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct {
    const char *words, *family;
    int weight;
} hints[] = {
    {" glass crystal glassware stemware ", "glassware", 5},
    {" porcelain stoneware earthenware ironstone china pottery terracotta ceramic redware majolica glaze "
     "glazed "
     "crazing backstamp crackle lustre luster lusterware ",
     "ceramics", 5},
    {" spongeware slipware creamware delft faience saltglaze stonechina transferware lustreware yellowware "
     "pearlware mochaware spatterware jasperware drabware caneware basaltware parian bisque saltware ",
     "ceramics", 5},
    {" stainless brass copper iron steel tin pewter silver bronze aluminum aluminium silverplate sterling "
     "chrome ",
     "metalware", 4},
    {" enamel enamelware skillet ", "kitchenware", 4},
    {" wood wooden treen sycamore ", "kitchenware", 4},
    {" page spine jacket novel author chapter binding bookplate endpaper ", "books", 4},
    {" sleeve record disc vinyl track mono stereo skip groove rpm projector transparency millimetre "
     "millimeter ",
     "media", 4},
    {" clasp necklace bracelet rhinestone earring knotted pendant karat ", "jewelry", 4},
    {" hem cuff collar zipper lining button sleeve waist bust inseam armhole ", "clothing", 3},
    {" sole heel insole lace toe ", "footwear", 3},
    {" plug cord volt motor amp watt ", "electrical", 3},
    {" bulb lampshade socket harp wick chimney ", "lighting", 3},
    {" toy windup clockwork doll litho play ", "toys", 4},
    {" lens shutter film aperture ", "cameras", 4},
    {" dial hands mainspring pendulum ticks ticking movement ", "clocks-watches", 3},
    {" string reed fret bridge tuner bow ", "music", 2},
    {" blade handle plane chisel saw ", "tools", 1},
    {" cordless corded electric ", "tools", 4},
    {" drawer leg veneer upholstery seat cushion ", "furniture", 2},
    {" yarn skein pattern needle sewing ", "crafts", 2},
    {" blanket tablecloth sheet quilt pillowcase fringe ", "linens", 3},
    {" postcard stamp postmark envelope letter ", "paper", 3},
    {" christmas santa easter halloween ", "holiday", 4},
    {" joker dice card jigsaw ", "games-puzzles", 3},
    {" golf tennis ski fishing skate ", "sports", 3},
};

static bool is_hint(const char *words, const char *word) {
    size_t n = strlen(word);
    const char *at = words;
    while ((at = strstr(at, word)) != NULL && !(at > words && at[-1] == ' ' && at[n] == ' ')) at += n;
    return at != NULL;
}

// By its singular; once for each word.
static bool hints_at(const struct tokens *tokens, size_t i, const char *words) {
    int told = tokens->at[i].slip ? -1 : token_told(tokens, i, words);
    if (told >= 0) return told;
    bool is = is_hint(words, tokens->at[i].one);
    if (!tokens->at[i].slip) token_tell(tokens, i, words, is);
    return is;
}

// "Blue glass liner", "brass knobs": what a part is made of tells little of the thing.
static bool is_of_part(const struct note *note, size_t i) {
    struct word_entry entry;
    struct noun_found noun;
    size_t next = i + 1;
    if (next >= note->tokens.count || note->tokens.at[next].stop != STOP_NONE ||
        !word_at(note, i, 1u << USE_MATERIAL, &entry) ||
        !(word_at(note, next, 1u << USE_PART, &entry) ||
          ANY(&note->tokens, next, "bottom", "top", "back", "front", "sides", "side", "inside", "corners",
              "ends")))
        return false;
    return !(noun_at(note, next, &noun) && (noun.thing || noun.to > next + 1));
}

// "Pattern is Silver Fern": a name of two words, and no stuff.
static bool is_of_name(const struct tokens *tokens, size_t i) {
    const struct token *token = &tokens->at[i];
    return token->capital && !token->capitals && !token->starts && i > 0 && i + 1 < tokens->count &&
           token->stop == STOP_NONE && tokens->at[i + 1].capital && tokens->at[i + 1].stop == STOP_NONE &&
           tokens->at[i - 1].stop == STOP_NONE && tokens->at[i - 1].kind == TOKEN_WORD &&
           !tokens->at[i - 1].capital;
}

static int hint(const struct note *note, const char *family) {
    int sum = 0;
    for (size_t k = 0; k < COUNT(hints); k++) {
        if (!text_same(hints[k].family, family)) continue;
        for (size_t i = 0; i < note->tokens.count; i++)
            if (note->tokens.at[i].kind == TOKEN_WORD && note->taken[i] != TAKEN_ASIDE &&
                hints_at(&note->tokens, i, hints[k].words) && !is_of_name(&note->tokens, i))
                sum += is_of_part(note, i) ? 1 : hints[k].weight;
    }
    return sum;
}

static const struct family *by_noun(const struct note *note, const struct noun_found *found) {
    size_t count = 0;
    struct word_entry entry;
    const struct thing *const *things = ruleset_things(note->rules, found->noun, &count);
    const char *key = found->noun;
    if (!things) { // printed with capitals, looked up without
        struct buf small = buf_start(note->arena);
        for (const char *c = found->noun; *c; c++)
            buf_byte(&small, *c >= 'A' && *c <= 'Z' ? (char)(*c + 32) : *c);
        key = small.at;
        things = ruleset_things(note->rules, key, &count);
    }
    if (!things) return found->thing ? found->thing->family : NULL;
    const struct family *best = things[0]->family;
    int most = -1;
    for (size_t i = 0; i < count; i++) {
        int value = hint(note, things[i]->family->rule.id);
        if (note->book && wordbook_find(note->book, key, strlen(key), &entry) && entry.family &&
            !entry.candidate && text_same(entry.family, things[i]->family->rule.id))
            value += 2;
        if (value <= most) continue;
        most = value;
        best = things[i]->family;
    }
    return best;
}

static const struct family *strongest(const struct note *note, int least) {
    const char *best = NULL;
    int most = least - 1;
    for (size_t k = 0; k < COUNT(hints); k++) {
        if (!strncmp(hints[k].words, " wood ", strlen(" wood "))) continue; // what is of wood may be anything
        int value = hint(note, hints[k].family);
        if (value <= most) continue;
        most = value;
        best = hints[k].family;
    }
    return best ? ruleset_family(note->rules, best) : NULL;
}

// "Tea caddy, rosewood with brass stringing": the first stuff that is told, and of no part; or the count of
// tokens.
static size_t first_stuff(const struct note *note) {
    struct word_entry entry;
    size_t i = 0;
    for (; i < note->tokens.count; i++)
        if (note->taken[i] != TAKEN_ASIDE && word_at(note, i, 1u << USE_MATERIAL, &entry) &&
            !is_of_part(note, i))
            break;
    return i;
}

static bool is_of_wood(const struct note *note) {
    return ANY(&note->tokens, first_stuff(note), "rosewood", "mahogany", "walnut", "oak", "elm", "beech",
               "pine", "maple", "satinwood", "ebony", "fruitwood", "yew", "teak", "ash", "birch", "boxwood",
               "olivewood", "camphor", "cedar", "sycamore", "wooden", "wood", "bamboo", "burr", "poplar",
               "lime");
}

// What is neither metal nor of the kitchen: a snuff box of papier mache.
static bool is_of_fancy(const struct note *note) {
    return ANY(&note->tokens, first_stuff(note), "papier", "horn", "bone", "tortoiseshell", "leather",
               "shagreen", "lacquer", "bakelite", "amber", "onyx", "marble", "alabaster") &&
           !ANY(&note->tokens, first_stuff(note) + 1, "handled", "handle", "handles", "mounted", "tipped",
                "grip", "grips", "hafted");
}

// "Brass jug", "silver plate jug": what the word before the noun says that it is made of.
static bool is_of_metal(const struct note *note, const struct noun_found *found) {
    const struct tokens *tokens = &note->tokens;
    size_t at = found->from;
    if (at > 1 && ANY(tokens, at - 1, "plate", "plated")) at--;
    if (!at || tokens->at[at - 1].stop != STOP_NONE) return false;
    for (size_t k = 0; k < COUNT(hints); k++)
        if (text_same(hints[k].family, "metalware") && hints_at(tokens, at - 1, hints[k].words)) return true;
    return false;
}

// "Clear cylinder vase", "bowl, clear, 8 in": one can see through it.
static bool is_clear(const struct note *note, const struct noun_found *found) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++)
        if (ANY(tokens, i, "plastic", "acrylic", "lucite", "perspex", "resin", "melamine")) return false;
    for (size_t i = found->from; i > 0 && tokens->at[i - 1].stop == STOP_NONE; i--)
        if (ANY(tokens, i - 1, "clear", "frosted")) return true;
    return found->to < tokens->count && tokens->at[found->to].stop == STOP_COMMA &&
           ANY(tokens, found->to + 1, "clear") &&
           (found->to + 2 >= tokens->count || tokens->at[found->to + 2].stop != STOP_NONE ||
            ANY(tokens, found->to + 2, "with", "and"));
}

// A dish, bowl or figure of glass or metal that only the ceramics know by name.
static const struct family *of_no_clay(const struct note *note, const struct noun_found *found,
                                       const struct family *family) {
    if (!family || !text_same(family->rule.id, "ceramics") || hint(note, "ceramics")) return family;
    bool enamel = found->from > 0 && note->tokens.at[found->from - 1].stop == STOP_NONE &&
                  ANY(&note->tokens, found->from - 1, "enamel", "enamelware", "graniteware", "agateware");
    const char *stuff = is_of_metal(note, found)      ? "metalware"
                        : enamel                      ? "kitchenware" // "enamel coffee pot"
                        : hint(note, "glassware") > 0 ? "glassware"
                        : hint(note, "metalware") > 3 ? "metalware"
                        : is_of_wood(note)            ? "kitchenware"
                        : is_clear(note, found)       ? "glassware"
                                                      : NULL;
    const struct family *other = stuff ? ruleset_family(note->rules, stuff) : NULL;
    return other ? other : family;
}

// A bowl of wood or china that only the metalware know by name.
static const struct family *of_no_metal(const struct note *note, const struct noun_found *found,
                                        const struct family *family) {
    static const char *const others[] = {"glassware", "ceramics", "kitchenware"};
    static const char *const breaks[] = {"chip",    "chips",   "chipped",  "hairline", "hairlines", "crazed",
                                         "crazing", "nibbled", "nibbles",  "kiln",     "glaze",     "firing",
                                         "riveted", "flea",    "fleabite", "pontil"};
    enum { LEAST = 4 };
    if (!family || !text_same(family->rule.id, "metalware")) return family;
    const char *best = NULL;
    int metal = hint(note, "metalware"), most = metal ? metal + LEAST : LEAST - 1, brittle = 0;
    for (size_t i = 0; i < note->tokens.count; i++)
        if (token_among(&note->tokens, i, breaks, COUNT(breaks)) &&
            !(i > 1 && (ANY(&note->tokens, i - 1, "paint", "varnish") ||
                        ANY(&note->tokens, i - 2, "paint", "varnish")))) // "paint is crazed": of tin, too
            brittle = LEAST;
    for (size_t i = 0; i < note->tokens.count; i++) // these chip too
        if (ANY(&note->tokens, i, "mache", "lacquer", "lacquered", "japanned", "bakelite", "plastic",
                "melamine", "slate", "marble", "toleware", "tole", "wooden", "oak", "mahogany", "composition",
                "plaster", "metal", "galvanized", "galvanised", "bone", "horn", "antler", "ivory"))
            brittle = 0;
    if (is_of_fancy(note)) return ruleset_family(note->rules, "decor");
    int wooden = is_of_wood(note) ? most + 1 : 0;
    for (size_t i = 0; i < COUNT(others); i++) {
        int value = hint(note, others[i]) + (text_same(others[i], "ceramics") ? brittle : 0) +
                    (text_same(others[i], "kitchenware") ? wooden : 0);
        if (value > most) best = others[i];
        if (value > most) most = value;
    }
    if (!best && !metal && text_same(found->noun, "bowl")) best = "ceramics"; // where nobody says of what
    const struct family *other = best ? ruleset_family(note->rules, best) : NULL;
    return other ? other : family;
}

// Do the toys know it by name? A wind-up gramophone is none.
static bool is_toys(const struct note *note, const struct noun_found *found) {
    size_t count = 0;
    const struct thing *const *things = ruleset_things(note->rules, found->noun, &count);
    for (size_t i = 0; things && i < count; i++)
        if (text_same(things[i]->family->rule.id, "toys")) return true;
    return false;
}

static const struct family *family_of(const struct note *note, const struct noun_found *found, bool toy) {
    if (toy && !found->thing && found->family && !found->candidate &&
        (text_same(found->family, "electrical") || text_same(found->family, "music") ||
         text_same(found->family, "clocks-watches") || text_same(found->family, "kitchenware") ||
         text_same(found->family, "tools")))
        toy = false; // "wind-up gramophone"
    if (toy && (!found->thing || (found->families > 1 && is_toys(note, found))))
        return ruleset_family(note->rules, "toys");
    if (found->thing) return by_noun(note, found);
    // "Ceramic tobacco jar": what is of the others is rather of its stuff
    const struct family *stuff_of =
        found->family && text_same(found->family, "other") ? strongest(note, 5) : NULL;
    if (stuff_of && (text_same(stuff_of->rule.id, "ceramics") || text_same(stuff_of->rule.id, "glassware")))
        return stuff_of;
    if (found->family && !found->candidate) return ruleset_family(note->rules, found->family);
    const struct family *told = strongest(note, found->family ? 9 : 4);
    if (told) return told;
    return found->family ? ruleset_family(note->rules, found->family) : NULL;
}

// "Rudder", "lid": what is a part of other goods, alone, is of the parts; what nobody places is of the
// others. Told when the faults are read, for a part says nothing of which faults may be.
void kin_last(struct note *note) {
    struct record *record = note->record;
    struct word_entry entry;
    if (record->family || !record->type.value || !note->book) return;
    const char *type = utf8_fold(note->arena, record->type.value), *last = strrchr(type, ' ');
    last = last ? last + 1 : type;
    bool part = wordbook_find(note->book, last, strlen(last), &entry) && (entry.uses & (1u << USE_PART));
    // "Concrete frog": a figure of it, but a "bow frog" is a part
    bool shown = wordbook_find(note->book, last, strlen(last), &entry) && (entry.uses & (1u << USE_THEME));
    if (shown && part) shown = last == type || !strncmp(type, "garden ", strlen("garden "));
    record->family = ruleset_family(note->rules, shown ? "decor" : part ? "parts" : "other");
}

// "Apothecary jar, porcelain": what the glassware knows by name, of clay.
static const struct family *of_no_glass(const struct note *note, const struct noun_found *found,
                                        const struct family *family) {
    if (family && text_same(family->rule.id, "glassware") && is_of_metal(note, found))
        return ruleset_family(note->rules, "metalware"); // "silver plated butter dish with a glass insert"
    if (!family || !text_same(family->rule.id, "glassware") || hint(note, "glassware")) return family;
    const char *stuff = hint(note, "ceramics") > 3    ? "ceramics"
                        : is_of_wood(note)            ? "kitchenware"
                        : is_of_fancy(note)           ? "decor"
                        : hint(note, "metalware") > 3 ? "metalware"
                                                      : NULL;
    const struct family *other = stuff ? ruleset_family(note->rules, stuff) : NULL;
    return other ? other : family;
}

// "Panel, carved oak": what the linens know by name, and no cloth.
static const struct family *of_no_cloth(const struct note *note, const struct family *family) {
    if (!family || !text_same(family->rule.id, "linens")) return family;
    bool hard = is_of_wood(note) || (hint(note, "glassware") > 4 && !hint(note, "linens")) ||
                ANY(&note->tokens, first_stuff(note), "slate", "marble", "glass", "plaster", "stone");
    const struct family *other = hard ? ruleset_family(note->rules, "decor") : NULL;
    return other ? other : family;
}

const struct family *kin_family(const struct note *note, const struct noun_found *found, bool toy) {
    const struct family *family =
        of_no_metal(note, found, of_no_glass(note, found, of_no_cloth(note, family_of(note, found, toy))));
    return of_no_clay(note, found, family);
}
