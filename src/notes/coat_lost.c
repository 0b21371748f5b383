// SPDX-License-Identifier: MIT
// What covered a thing and has left it: "the blue has popped off", "three cups have let go of their dark
// lining", "rode down to the white plastic". The coat or what shows under it is named, and a verb says that
// it went; which fault that is follows from the coat and from the goods. Read behind the rules, whose words
// it leaves alone.
#include <string.h>

#include "notes/any.h"
#include "notes/stuff.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

enum coat { NO_COAT, PAINT, SHADE, COLOR, GOLD, SILVER, CHROME, ENAMEL, PAN, SKIN, VARNISH, PRINT };

static bool is_of(const struct fault_reader *r, const char *ids) {
    const struct family *family = r->note->record->family;
    const char *at = family ? strstr(ids, family->rule.id) : NULL;
    return at && (at == ids || at[-1] == ' ');
}

static bool cooks(const struct fault_reader *r) {
    return is_of(r, "kitchenware electrical metalware other") &&
           kind_note_has(
               r, "pan skillet griddle cooker waffle waffles press wok saucepan teflon nonstick muffin "
                  "bakeware grill pot roaster");
}

static bool is_enameled(const struct fault_reader *r) {
    return kind_note_has(
        r, "enamel enameled enamelled enamelware graniteware porcelain roaster oven camping kettle "
           "basin saucepan");
}

static bool is_shade_word(const struct tokens *tokens, size_t i) {
    static const char *const shades[] = {"red",   "blue", "green",  "white", "black", "yellow", "orange",
                                         "brown", "pink", "purple", "cream", "gray",  "grey",   "silver"};
    return AMONG(tokens, i, shades);
}

// "The blue", "all that nice black": a color that stands for what has it, and no adjective.
static bool is_shade(const struct fault_reader *r, size_t i) {
    static const char *const leads[] = {"the", "its", "his", "her", "their", "nice", "there", "that"};
    static const char *const ends[] = {"has",    "have",   "is",      "was",     "of",     "came",
                                       "comes",  "coming", "popped",  "bubbled", "lifted", "let",
                                       "flaked", "peeled", "fell",    "dropped", "left",   "gone",
                                       "wore",   "rubbed", "peeling", "lifting", "had",    "washed"};
    const struct tokens *tokens = &r->note->tokens;
    return i > 0 && is_shade_word(tokens, i) && AMONG(tokens, i - 1, leads) &&
           tokens->at[i - 1].stop == STOP_NONE &&
           (i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE || AMONG(tokens, i + 1, ends));
}

static enum coat coat_at(const struct fault_reader *r, size_t i, size_t *n) {
    static const struct {
        const char *words;
        enum coat coat;
    } coats[] = {
        {"clear coat", VARNISH}, {"top coat", VARNISH},      {"varnish", VARNISH}, {"lacquer", VARNISH},
        {"paint", PAINT},        {"paintwork", PAINT},       {"enamel", ENAMEL},   {"chrome", CHROME},
        {"plating", CHROME},     {"silver plate", CHROME},   {"gold", GOLD},       {"gilding", GOLD},
        {"silver", SILVER},      {"color", COLOR},           {"colour", COLOR},    {"black stuff", PAN},
        {"dark lining", PAN},    {"black lining", PAN},      {"nonstick", PAN},    {"non-stick", PAN},
        {"non stick", PAN},      {"black coating", PAN},     {"teflon", PAN},      {"top skin", SKIN},
        {"black skin", SKIN},    {"waterproof layer", SKIN}, {"outer skin", SKIN}, {"plastic skin", SKIN},
        {"outer layer", SKIN},   {"picture", PRINT},         {"lettering", PRINT}, {"letters", PRINT},
        {"numbers", PRINT},      {"numerals", PRINT},        {"symbols", PRINT},   {"logo", PRINT},
        {"words", PRINT},        {"markings", PRINT},        {"design", PRINT},    {"printing", PRINT},
        {"his face", PRINT},     {"her face", PRINT},        {"the face", PRINT},  {"his eyes", PRINT},
        {"her cheeks", PRINT}};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t k = 0; k < COUNT(coats); k++)
        if ((*n = token_phrase(tokens, i, coats[k].words)) != 0) return coats[k].coat;
    *n = 1;
    return is_shade(r, i) ? SHADE : NO_COAT;
}

// "Has popped off", "is half washed away", "let go", "comes away on your hand": how many tokens; 0 for none.
static size_t leaves_at(const struct tokens *tokens, size_t i) {
    static const char *const aux[] = {"has",     "have", "had",   "is",     "are",   "was",    "were",
                                      "got",     "been", "half",  "mostly", "all",   "nearly", "almost",
                                      "pretty",  "much", "just",  "partly", "since", "slowly", "really",
                                      "now",     "also", "both",  "kind",   "sort",  "of",     "quite",
                                      "already", "long", "gotten"};
    static const char *const verbs[] = {"come",    "came",   "comes",  "coming",   "popped",   "popping",
                                        "dropped", "fell",   "fallen", "falling",  "jumped",   "worn",
                                        "wore",    "rubbed", "washed", "scrubbed", "wiped",    "walked",
                                        "kissed",  "flaked", "flown",  "peeled",   "sloughed", "gone"};
    static const char *const ways[] = {"off", "away", "out"};
    static const char *const alone[] = {"let go",   "letting go", "left",        "has left", "shed",
                                        "given up", "gave up",    "disappeared", "vanished", "snowing off",
                                        "crumbled", "flaked",     "worn through"};
    size_t at = i;
    while (AMONG(tokens, at, aux) && tokens->at[at].stop == STOP_NONE && at < i + 5) at++;
    size_t n = token_longest(tokens, at, alone, COUNT(alone));
    bool ends = at + n >= tokens->count || tokens->at[at + n - (n > 0)].stop != STOP_NONE ||
                ANY(tokens, at + n, "on", "in", "inside", "at", "between", "by", "from", "where", "around",
                    "and", "so");
    if (n && at > i && ends) return at + n - i;
    if (n && ends && ANY(tokens, at, "let", "vanished", "disappeared", "crumbled")) return at + n - i;
    if (!AMONG(tokens, at, verbs) || tokens->at[at].stop != STOP_NONE || !AMONG(tokens, at + 1, ways))
        return 0;
    bool habit = ANY(tokens, at, "comes", "come") && at == i; // "the color comes off with the lid"
    if (habit && !ANY(tokens, at + 2, "on", "in", "when", "if", "like", "every")) return 0;
    if (ANY(tokens, at + 1, "out") && ANY(tokens, at + 2, "of")) return 0; // "came out of its frame"
    return at + 2 - i;
}

static const char *kind_of_coat(const struct fault_reader *r, enum coat coat, size_t i) {
    bool mirror = r->note->record->type.value && strstr(r->note->record->type.value, "mirror");
    switch (coat) {
    case PAINT:
        return "paint-flaking";
    case ENAMEL:
        return "enamel-chip";
    case CHROME:
        return "plate-wear";
    case PAN:
        return cooks(r) ? "coating-worn" : "peeling-coating";
    case SKIN:
        return "peeling-coating";
    case VARNISH:
        return "finish-crackle";
    case PRINT:
        return "decoration-wear";
    case SILVER:
        return mirror || kind_note_has(r, "mirror glass") ? "mirror-silvering" : "plate-wear";
    case GOLD:
        return is_of(r, "jewelry clocks-watches metalware") ? "plate-wear" : "gilt-wear";
    case COLOR:
        if (is_of(r, "linens clothing")) return "fading";
        return is_of(r, "bags footwear") ? "wear-rub" : is_of(r, "furniture") ? NULL : "paint-flaking";
    case SHADE:
        if (is_of(r, "bags footwear clothing")) return "wear-rub";
        if (is_of(r, "linens")) return "fading";
        if (is_of(r, "jewelry")) return "enamel-chip";
        if (cooks(r) && ANY(&r->note->tokens, i, "black")) return "coating-worn";
        if (is_of(r, "kitchenware metalware ceramics") && is_enameled(r)) return "enamel-chip";
        return is_of(r, "ceramics glassware") ? "decoration-wear" : "paint-flaking";
    default:
        return NULL;
    }
}

// "Lost their paint", "losing its black skin", "let go of their dark lining", "shed its blue": how many
// tokens stand before the coat.
static size_t loses_at(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"lost", "losing", "shed", "shedding", "loses", "let go of", "sheds"};
    static const char *const owners[] = {"its",          "their",       "there",       "his",
                                         "her",          "the",         "some of its", "most of its",
                                         "half its",     "some of the", "most of the", "some of their",
                                         "most of their"};
    enum { BACK = 4 };
    size_t n = token_longest(tokens, i, verbs, COUNT(verbs));
    for (size_t k = i; n && k > 0 && i - k < BACK && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (ANY(tokens, k - 1, "my", "our", "other", "not", "never", "without")) return 0; // of another one
    if (!n || tokens->at[i + n - 1].stop != STOP_NONE) return 0;
    size_t m = token_longest(tokens, i + n, owners, COUNT(owners));
    return m ? n + m : 0;
}

// What shows where it has worn down to it.
static const char *kind_under(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    bool card = ANY(tokens, i, "cardboard", "pasteboard", "board", "boards", "paper", "card", "chipboard");
    bool metal = ANY(tokens, i, "metal", "steel", "iron", "tin", "aluminum", "aluminium");
    bool base = ANY(tokens, i, "brass", "copper", "nickel");
    bool wood = ANY(tokens, i, "wood", "timber");
    bool other = ANY(tokens, i, "plastic", "canvas", "primer", "backing", "nail", "nails", "cork", "foam");
    if (!(card || metal || base || wood || other)) return NULL;
    if (ANY(tokens, i, "nail", "nails")) return is_of(r, "footwear") ? "sole-wear" : NULL;
    if (is_of(r, "footwear")) return card || ANY(tokens, i, "cork", "canvas") ? "insole-wear" : NULL;
    if (is_of(r, "toys")) return "play-wear";
    if (is_of(r, "books paper media games-puzzles")) return card ? "edge-wear" : NULL;
    if (is_of(r, "bags")) return card ? "edge-wear" : "wear-rub";
    if (card) return NULL;
    if (base && !is_of(r, "furniture")) return "plate-wear";
    if (metal && cooks(r)) return is_enameled(r) ? "enamel-chip" : "coating-worn";
    if (wood) return is_of(r, "furniture music") ? "finish-crackle" : "paint-flaking";
    return metal || ANY(tokens, i, "primer") ? "paint-flaking" : "wear-rub";
}

// "Knocked down to bare metal", "it's down to the pasteboard": the token of what shows; 0 for none.
static size_t down_to(const struct tokens *tokens, size_t i) {
    static const char *const lead[] = {"worn", "rubbed",  "knocked", "rode", "ridden", "ground", "scuffed",
                                       "it's", "they're", "is",      "are",  "been",   "gone",   "cut",
                                       "much", "wore",    "scraped", "used", "chewed", "its",    "scratched"};
    enum { WORDS_MOST = 4, STRIPPED = 12 };
    for (size_t k = i; k > 0 && i - k < STRIPPED && tokens->at[k - 1].stop < STOP_SENTENCE; k--)
        if (ANY(tokens, k - 1, "stripped", "sanded", "planed", "dipped")) return 0; // by whoever did it up
    if (!ANY(tokens, i, "down", "through", "off") || !token_is(tokens, i + 1, "to") || i == 0 ||
        !AMONG(tokens, i - 1, lead) || tokens->at[i - 1].stop != STOP_NONE || tokens->at[i].stop != STOP_NONE)
        return 0;
    for (size_t k = i + 2; k < i + 2 + WORDS_MOST && k < tokens->count; k++) {
        if (ANY(tokens, k, "metal", "steel", "iron", "tin", "aluminum", "aluminium", "brass", "copper",
                "nickel", "wood", "timber", "cardboard", "pasteboard", "board", "paper", "card", "plastic",
                "canvas", "primer", "backing", "nail", "nails", "cork", "foam", "chipboard"))
            return k;
        if (tokens->at[k].stop != STOP_NONE || tokens->at[k].kind != TOKEN_WORD) return 0;
    }
    return 0;
}

static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_WITHDRAWN | STANCE_OTHER |
                            STANCE_UNKNOWN | STANCE_PLANNED | STANCE_HEARD;

// A picture that somebody's words are about may stand in what was taken for a story.
static bool is_free(const struct fault_reader *r, size_t from, size_t to, bool pictured) {
    for (size_t k = from; k < to && k < r->note->tokens.count; k++) {
        uint16_t against = r->scope.stance[k] & off;
        if (r->scope.cue[k] >= from && r->scope.cue[k] < to)
            against &= (uint16_t)~STANCE_PAST; // "scrubbed off" is what happened to the coat
        if (pictured) against &= (uint16_t)~STANCE_OTHER;
        if (r->note->taken[k] == TAKEN_FLAW || (r->note->taken[k] == TAKEN_ASIDE && !pictured) || against)
            return false;
    }
    return true;
}

// What the rules make of "the red has popped off", where they do not know the coat.
static bool is_weak(const struct fault_hit *hit) {
    static const char *const ids[] = {"loose-part",        "broken-part",  "dent-bend", "wear-rub",
                                      "dust-grime",        "cloudy-glass", "chip",      "missing-button",
                                      "drilled-converted", "mold"};
    if (hit->kinds[0]->form == ABSENCE) return true;
    for (size_t k = 0; k < COUNT(ids); k++)
        if (text_same(hit->kinds[0]->rule.id, ids[k])) return true;
    return false;
}

static void tell(struct fault_reader *r, const char *id, size_t from, size_t to, size_t part_from,
                 size_t part_to, bool pictured) {
    const struct flaw *kind = ruleset_flaw(r->note->rules, id);
    if (!kind || !is_free(r, from, to, pictured)) return;
    for (size_t i = 0; i < r->hit_count; i++) {
        const struct fault_hit *hit = &r->hits[i];
        if (hit->from >= to || hit->to <= from) continue;
        for (size_t k = 0; k < hit->kind_count; k++)
            if (hit->kinds[k] == kind) return;
        if (!is_weak(hit)) return;
    }
    size_t kept = 0;
    for (size_t i = 0; i < r->hit_count; i++)
        if (r->hits[i].from >= to || r->hits[i].to <= from) r->hits[kept++] = r->hits[i];
    r->hit_count = kept;
    struct fault_hit hit = {.from = from, .to = to, .kinds = {kind}, .kind_count = 1};
    const char *part = part_to > part_from ? fault_place(r->note, part_from, part_to) : NULL;
    fault_tell(r, &hit, kind, part, stuff_where(r, &hit));
}

void read_coats_lost(struct fault_reader *r) {
    enum { OWNED = 4 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        size_t under = down_to(tokens, i), n = 0;
        if (under) {
            const char *id = kind_under(r, under);
            size_t behind = stuff_subject(r, i > 1 ? i - 1 : i), from = behind;
            while (from > 0 && r->part[from - 1] && behind - from < OWNED) from--;
            if (id) tell(r, id, i - 1, under + 1, from, behind, false);
            i = under;
            continue;
        }
        size_t lost = loses_at(tokens, i);
        if (lost) {
            size_t at = i + lost;
            enum coat coat = NO_COAT;
            for (; at < i + lost + 2 && at < tokens->count && coat == NO_COAT; at++)
                coat = coat_at(r, at, &n);
            if (coat == NO_COAT && is_shade_word(tokens, i + lost) &&
                (i + lost + 1 >= tokens->count || tokens->at[i + lost].stop != STOP_NONE ||
                 ANY(tokens, i + lost + 1, "and", "at", "on", "in", "along", "where", "around")))
                coat = SHADE, at = i + lost + 1, n = 1;
            if (coat == NO_COAT) continue;
            at += n - 1;
            const char *id = coat == PRINT ? NULL : kind_of_coat(r, coat, at - 1);
            size_t behind = i > 0 ? stuff_subject(r, i) : 0, from = behind;
            while (from > 0 && r->part[from - 1] && behind - from < OWNED) from--;
            if (id) tell(r, id, i, at, from, behind, false);
            continue;
        }
        enum coat coat = coat_at(r, i, &n);
        if (coat == NO_COAT || tokens->at[i + n - 1].stop != STOP_NONE) continue;
        size_t at = i + n, part_from = 0, part_to = 0;
        if (token_is(tokens, at, "of") &&
            ANY(tokens, at + 1, "his", "her", "its", "the", "one")) { // "of his hat"
            part_from = at + 2;
            part_to = at + 3;
            at = part_to;
            if (at >= tokens->count || tokens->at[at - 1].stop != STOP_NONE) continue;
        }
        size_t gone = leaves_at(tokens, at);
        const char *id = gone ? kind_of_coat(r, coat, i) : NULL;
        if (id) tell(r, id, i, at + gone, part_from, part_to, coat == PRINT);
        if (gone) i = at + gone - 1;
    }
}
