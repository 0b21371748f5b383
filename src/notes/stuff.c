// SPDX-License-Identifier: MIT
// One word is a kind of its own on each stuff: a dull key of a flute is tarnished, a dull table top has lost
// its finish. Few notes say what a part is made of, but most parts are of one stuff on any goods, and the
// rest are of what the goods are.
#include "notes/stuff.h"

#include "notes/any.h"
#include "text/order.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct {
    enum stuff stuff;
    const char *parts;
} parts[] = {
    {STUFF_METAL,
     " jaw thread slot hinge pulley wheel screw blade spring chain buckle catch clasp bolt nail spoke bell "
     "wire rod bar "
     "chrome plating "
     "latch hasp rivet eyelet stud ferrule prong tine grate burner mudguard runner jaw clip hook nut "
     "castor bezel bracket fitting hardware fastener zipper zip slide iron steel brass tin spike "
     "ironwork metalwork grille escutcheon hubcap radiator "},
    {STUFF_WOOD,
     " slat rung tread drawer shelf stretcher plinth veneer soundboard stock shaft stile rail spindle "
     "carcass carcase panelling floorboard plank dowel fretboard fingerboard "},
    {STUFF_CLOTH,
     " border fringe backing pile lining cuff collar hem rope cord flysheet groundsheet pocket cushion "
     "curtain felt ribbon canvas net netting string thread stitching seam braid tassel elbow sleeve "
     "webbing upholstery piping baize velvet satin silk fabric cloth weave mesh "},
    {STUFF_PAPER, " page endpaper map mount label jacket slipcase card wrapper leaf paper "
                  "poster envelope pages leaves cardboard "},
    {STUFF_LEATHER,
     " grip strap thong flap gusset upper tongue vamp saddle leather insole sweatband hide suede "},
    {STUFF_RUBBER,
     " surround tire tyre seal gasket hose bellows washer foam sole rubber tube o-ring bladder belt "
     "elastic grommet platen roller eyecup squeegee plunger diaphragm drive-belt gaiter "},
    {STUFF_FIRED, " glaze glass lens mirror saucer chimney crystal stopper "},
    {STUFF_PLASTIC, " casing housing plastic bakelite keytop vinyl leatherette "},
};

static const struct {
    const char *family;
    enum stuff stuff;
} families[] = {{"furniture", STUFF_WOOD},      {"metalware", STUFF_METAL},  {"tools", STUFF_METAL},
                {"ceramics", STUFF_FIRED},      {"glassware", STUFF_FIRED},  {"linens", STUFF_CLOTH},
                {"clothing", STUFF_CLOTH},      {"books", STUFF_PAPER},      {"paper", STUFF_PAPER},
                {"bags", STUFF_LEATHER},        {"footwear", STUFF_LEATHER}, {"electrical", STUFF_PLASTIC},
                {"cameras", STUFF_PLASTIC},     {"jewelry", STUFF_METAL},    {"kitchenware", STUFF_METAL},
                {"clocks-watches", STUFF_METAL}};

static const struct {
    const char *material;
    enum stuff stuff;
} materials[] = {
    {"wood", STUFF_WOOD},     {"oak", STUFF_WOOD},       {"pine", STUFF_WOOD},       {"mahogany", STUFF_WOOD},
    {"walnut", STUFF_WOOD},   {"beech", STUFF_WOOD},     {"brass", STUFF_METAL},     {"silver", STUFF_METAL},
    {"copper", STUFF_METAL},  {"iron", STUFF_METAL},     {"cast iron", STUFF_METAL}, {"steel", STUFF_METAL},
    {"tin", STUFF_METAL},     {"pewter", STUFF_METAL},   {"leather", STUFF_LEATHER}, {"canvas", STUFF_CLOTH},
    {"wool", STUFF_CLOTH},    {"cotton", STUFF_CLOTH},   {"linen", STUFF_CLOTH},     {"silk", STUFF_CLOTH},
    {"rubber", STUFF_RUBBER}, {"paper", STUFF_PAPER},    {"cardboard", STUFF_PAPER}, {"glass", STUFF_FIRED},
    {"china", STUFF_FIRED},   {"plastic", STUFF_PLASTIC}};

bool stuff_among(const char *list, const struct token *token) {
    const char *words[] = {token->one, token->fold};
    for (size_t w = 0; w < COUNT(words); w++) {
        char padded[32];
        size_t size = words[w] ? strlen(words[w]) : 0;
        if (size > 2 && !strcmp(words[w] + size - 2, "'s")) size -= 2; // "the hem's come down"
        if (!size || size + 3 > sizeof padded) continue;
        padded[0] = ' ';
        memcpy(padded + 1, words[w], size);
        memcpy(padded + size + 1, " ", 2);
        if (strstr(list, padded)) return true;
    }
    return false;
}

enum stuff stuff_of_part(const struct fault_reader *r, size_t i) {
    const struct token *token = &r->note->tokens.at[i];
    if (i > 0 && token[-1].stop == STOP_NONE) { // "the rubber feet", of a stool made of wood
        for (size_t k = 0; k < COUNT(materials); k++)
            if (text_same(materials[k].material, token[-1].fold)) return materials[k].stuff;
    }
    for (size_t k = 0; k < COUNT(parts); k++)
        if (stuff_among(parts[k].parts, token)) return parts[k].stuff;
    for (size_t m = 0; m < r->material_count; m++)
        for (size_t k = 0; !r->materials[m]->of && k < COUNT(materials); k++)
            if (!strcmp(materials[k].material, r->materials[m]->value)) return materials[k].stuff;
    const struct family *family = r->note->record->family;
    for (size_t k = 0; family && k < COUNT(families); k++)
        if (!strcmp(families[k].family, family->rule.id)) return families[k].stuff;
    return STUFF_ANY;
}

// No part of a thing: what it is called by itself, who has it, what is on it, and what is meant to be taken
// off.
static bool is_no_part(const struct note *note, size_t i) {
    static const char *const words[] = {
        "it",      "it's",       "they're",  "that's", "there's", "theres",  "thats",   "what's", "these're",
        "we're",   "you're",     "he's",     "she's",  "this",    "that",    "they",    "these",  "those",
        "i",       "you",        "we",       "he",     "she",     "who",     "which",   "all",    "there",
        "nothing", "everything", "anything", "none",   "one",     "thing",   "whole",   "rest",   "label",
        "labels",  "sticker",    "stickers", "price",  "tag",     "tags",    "stain",   "stains", "mark",
        "marks",   "dirt",       "dust",     "grime",  "rust",    "polish",  "tape",    "lid",    "lids",
        "cover",   "covers",     "top",      "smell",  "paint",   "tarnish", "residue", "mold",   "color",
        "colour",  "grease",     "bottom",   "cap",    "caps",    "back",    "front",   "seller", "wax",
        "didn't",  "might",      "may",      "can",    "will",    "won't",   "would",   "could",  "should",
        "must",    "soot",       "ink",      "mud",    "varnish", "glue",    "postage", "box",    "deal",
        "sale",    "post"};
    const struct token *token = &note->tokens.at[i];
    const char *type = note->record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    if (type && (!strcmp(token->one ? token->one : token->fold, head ? head + 1 : type) ||
                 !strcmp(token->fold, head ? head + 1 : type)))
        return true;
    return token->kind != TOKEN_WORD || token_among(&note->tokens, i, words, COUNT(words));
}

// "Foam on the headphones", "rubber around the wheel": what is on a part and opens the clause, where its
// preposition stands at `i`.
static bool is_stuff_on(const struct fault_reader *r, size_t i) {
    static const char *const preps[] = {"on",   "of",    "in",     "around", "round",
                                        "over", "under", "inside", "along"};
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0 || !token_among(tokens, i, preps, COUNT(preps)) || tokens->at[i - 1].stop != STOP_NONE ||
        r->scope.fault[i - 1])
        return false;
    bool stuff = false;
    for (size_t k = 0; k < COUNT(parts) && !stuff; k++)
        stuff = parts[k].stuff != STUFF_METAL && stuff_among(parts[k].parts, &tokens->at[i - 1]);
    size_t first = i - 1;
    while (first > 0 && tokens->at[first - 1].stop == STOP_NONE && spot_article(tokens, first - 1)) first--;
    return stuff &&
           (first == 0 || tokens->at[first - 1].stop != STOP_NONE || ANY(tokens, first - 1, "and", "but"));
}

size_t stuff_subject(const struct fault_reader *r, size_t i) {
    enum { WORDS = 3 };
    static const char *const verbs[] = {"has",   "have", "is",    "are", "also", "just", "both", "recently",
                                        "since", "had",  "being", "be",  "must", "may",  "might"};
    static const char *const opens[] = {"the",  "its",     "a",   "an",     "one", "two",     "three", "four",
                                        "some", "several", "few", "couple", "of",  "another", "their"};
    static const char *const joins[] = {"and", "but", "though", "only", "except", "note"};
    const struct tokens *tokens = &r->note->tokens;
    size_t verb = i;
    while (i > 0 && token_among(tokens, i - 1, verbs, COUNT(verbs))) i--;
    bool said =
        i < verb && i > 0 && // "birdcage block is loose"
        !ANY(tokens, i - 1, "paint", "varnish", "finish", "lacquer", "gilding", "plating", "enamel", "glaze");
    if (i == 0 || is_no_part(r->note, i - 1) || token_among(tokens, i - 1, opens, COUNT(opens)) ||
        token_among(tokens, i - 1, joins, COUNT(joins)))
        return 0;
    bool opened = false;
    for (size_t at = i - 1, n = 0; n <= WORDS || opened; n++, at--) {
        if (at == 0) return opened || r->part[i - 1] ? i : 0;
        const struct token *before = &tokens->at[at - 1];
        if (before->stop != STOP_NONE || token_among(tokens, at - 1, joins, COUNT(joins)))
            return opened || r->part[i - 1] || n == 0 || (said && n == 1) ? i : 0;
        if (before->kind != TOKEN_WORD) return 0;
        bool opening =
            token_among(tokens, at - 1, opens, COUNT(opens)) || // "a bit of the collar has come off"
            ANY(tokens, at - 1, "bit", "piece", "part", "section", "strip", "chunk", "lump");
        if (opened && !opening) return is_stuff_on(r, at - 1) ? at - 1 : 0;
        opened |= opening;
    }
    return 0;
}

const char *stuff_where(const struct fault_reader *r, const struct fault_hit *hit) {
    size_t from = 0, to = spot_place_of(r, hit, &from);
    bool near = to > from && from >= hit->to && from <= hit->to + 2;
    for (size_t i = hit->to; near && i < from; i++) near = r->note->tokens.at[i].stop == STOP_NONE;
    return near && r->note->tokens.at[hit->to - 1].stop == STOP_NONE ? fault_place(r->note, from, to) : NULL;
}

size_t stuff_head(const struct fault_reader *r, size_t behind) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = behind;
    while (at > 0 && behind - at < WORDS_MOST && r->part[at - 1]) at--;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE && spot_article(tokens, at - 1)) at--;
    if (at > 1 && at < behind && is_stuff_on(r, at - 1)) return at - 1;
    if (at < 2 || at == behind ||
        !ANY(tokens, at - 1, "of", "on", "in", "at", "for", "inside", "under", "by"))
        return behind;
    bool part = r->part[at - 2] && !r->scope.fault[at - 2] && tokens->at[at - 2].stop == STOP_NONE &&
                !spot_side(tokens, at - 2) && r->note->taken[at - 2] != TAKEN_TYPE &&
                !ANY(tokens, at - 2, "paint", "varnish", "finish", "lacquer", "gilding", "plating", "enamel");
    return part ? at - 1 : behind;
}
