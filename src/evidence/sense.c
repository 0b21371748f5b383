// SPDX-License-Identifier: MIT
#include "evidence/sense.h"

#include <string.h>

#include "text/order.h"
#include "text/utf8.h"

enum { WORD_MOST = 16 };

// The word that ends before `*at`, lower-case, its apostrophe plain; false at the start of a clause.
static bool word_before(const char *text, size_t *at, bool over_commas, char word[WORD_MOST + 1]) {
    size_t end = *at;
    // A dash between words parts clauses as a comma does: "a ship? No - a bottle of rum".
    if (end > 2 && !strncmp(text + end - 3, " - ", 3)) return false;
    while (end && (strchr(" -\"'(", text[end - 1]) || (over_commas && text[end - 1] == ','))) end--;
    size_t from = end, n = 0;
    while (from && !strchr(" -.,;:!?()/\"\n", text[from - 1])) from--;
    if (from == end || end - from > WORD_MOST) return false;
    *at = from;
    while (from < end) {
        bool curly = !strncmp(text + from, "\xE2\x80\x99", 3);
        word[n++] = curly ? '\'' : (char)utf8_lower((unsigned char)text[from]);
        from += curly ? 3 : 1;
    }
    word[n] = '\0';
    return true;
}

static bool is_one_of(const char *word, const char *const *words, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (text_same(words[i], word)) return true;
    return false;
}
#define IS_ONE_OF(word, words) is_one_of(word, words, sizeof(words) / sizeof *(words))

// "No" denies a noun; what is said with a verb it does not reach: "no scratches smelled like hot dust".
static bool is_verb(const char *text, size_t at) {
    static const char *const verbs[] = {"smell",   "smells", "smelled",   "got",    "gets",
                                        "popped",  "blew",   "blows",     "trips",  "tripped",
                                        "started", "it",     "overheats", "sparks", "runs"};
    text += at;
    for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++) {
        size_t n = strlen(verbs[i]);
        size_t k = 0;
        while (k < n && utf8_lower((unsigned char)text[k]) == (unsigned char)verbs[i][k]) k++;
        if (k == n && text[n] == ' ') return true;
    }
    return false;
}

static bool denies(const char *word, bool verb) {
    static const char *const noes[] = {"no", "without", "nor", "free", "nothing"}, *const nots[] = {"not",
                                                                                                    "never",
                                                                                                    "cannot"};
    size_t n = strlen(word);
    return (!verb && IS_ONE_OF(word, noes)) || IS_ONE_OF(word, nots) ||
           (n > 3 && text_same(word + n - 3, "n't"));
}

// "Spotted like a leopard" compares; "looks like ivory" wonders.
static bool compares(const char *text, size_t at) {
    static const char *const senses[] = {"look",  "looks", "looked", "smell",  "smells", "smelled", "feel",
                                         "feels", "felt",  "seems",  "sounds", "more",   "just"};
    char word[WORD_MOST + 1];
    return !word_before(text, &at, false, word) || !IS_ONE_OF(word, senses);
}

// "No mercury", "could not find any mold", "no cracks, rust or mold", "a gasket for a boiler", "like a
// leopard", "the size of a knife": the goods are not that. But "not sure if it is ivory" denies nothing.
static bool is_not_it(const char *text, size_t at, bool for_counts) {
    static const char *const open[] = {"sure", "idea",    "know", "certain", "only", "if",
                                       "but",  "whether", "tell", "say",     "and",  "doubt"};
    enum { WORDS_BACK = 3, WORDS_BACK_OF_LIST = 9 };
    char word[WORD_MOST + 1];
    bool list = false, verb = is_verb(text, at);
    for (int i = 0; i < (list ? WORDS_BACK_OF_LIST : WORDS_BACK); i++) {
        if (!word_before(text, &at, list, word)) return false;
        if (IS_ONE_OF(word, open)) return false;
        if (denies(word, verb)) return true;
        list |= !i && text_same(word, "or");
        if (!list && text_same(word, "size")) return true;
        if (i < 2 && for_counts && text_same(word, "for")) return true;
        if (i < 2 && text_same(word, "like")) return compares(text, at);
    }
    return false;
}

// The word behind `*at` in the same clause, lower-case.
static bool next_word(const char *text, size_t *at, char word[WORD_MOST + 1]) {
    if (text[*at] != ' ' && text[*at] != '-') return false;
    size_t n = strcspn(text + ++*at, " -,.;:!?()\n");
    if (n > WORD_MOST) return false;
    for (size_t k = 0; k < n; k++) word[k] = (char)utf8_lower((unsigned char)text[*at + k]);
    word[n] = '\0';
    *at += n;
    return n > 0;
}

// "? No, pressed glass", "? They don't"; but "? No idea", "? Don't know".
static bool is_answered_no(const char *text) {
    static const char *const open[] = {"idea",   "clue", "way",    "sure", "know",  "certain",
                                       "tested", "yet",  "looked", "tell", "think", "checked"};
    enum { WORDS_ON = 3 };
    size_t at = strspn(text, "?");
    char word[WORD_MOST + 1];
    if (!at) return false;
    for (int i = 0; i < WORDS_ON && next_word(text, &at, word); i++) {
        if (!denies(word, false)) continue;
        return !next_word(text, &at, word) || !IS_ONE_OF(word, open);
    }
    return false;
}

// "Asbestos free mat", "lead crystal? No, pressed glass", "ivory pegs?? no, plastic".
static bool is_denied_behind(const char *text, size_t at) {
    text += at;
    if (!strncmp(text, " free", 5) || !strncmp(text, "-free", 5)) return true;
    const char *more = text;
    enum { MORE_WORDS = 2 }; // of the same thing: "a bit of mercury looking stuff? no"
    for (int i = 0; i < MORE_WORDS && *more == ' '; i++) more += 1 + strcspn(more + 1, " .,;:!?\n");
    if (*more == '?') text = more;
    return is_answered_no(text);
}

bool sense_is_denied(const char *text, size_t from, size_t to) {
    return is_not_it(text, from, false) || is_denied_behind(text, to);
}

bool sense_is_meant(const char *text, size_t from, size_t to) {
    return !is_not_it(text, from, true) && !is_denied_behind(text, to);
}

// How many words stand before `at` in its sentence, at most one more than `most`.
static int words_before(const char *text, size_t at, int most) {
    char word[WORD_MOST + 1];
    int n = 0;
    while (n <= most && word_before(text, &at, true, word)) n++;
    return n;
}

// "With a picture of a fox": one that the thing bears, where "a photo of the fox" is the seller's own.
static bool is_introduced(const char *text, size_t at, const char *shown) {
    char word[WORD_MOST + 1];
    return !text_same(shown, "the") && word_before(text, &at, false, word) &&
           (text_same(word, "a") || text_same(word, "an"));
}

static bool is_about(const char *text, size_t at) {
    static const char *const pictures[] = {
        "picture",    "painting",    "print",   "photo",     "photograph", "postcard",
        "poster",     "drawing",     "sketch",  "etching",   "engraving",  "lithograph",
        "watercolor", "watercolour", "book",    "booklet",   "magazine",   "pamphlet",
        "leaflet",    "brochure",    "catalog", "catalogue", "manual",     "advert",
        "ad",         "map",         "stamp",   "calendar",  "annual",     "guide",
        "paperback",  "hardback",    "novel",   "comic",     "cd",         "photographs"};
    static const char *const links[] = {"of", "about", "showing", "depicting", "shows", "for"};
    enum { WORDS_BACK = 10, LEAD_MOST = 5 };
    char word[WORD_MOST + 1], behind[WORD_MOST + 1] = "", shown[WORD_MOST + 1] = "";
    for (int i = 0; i < WORDS_BACK; i++) {
        if (!word_before(text, &at, false, word)) return false;
        bool linked = IS_ONE_OF(behind, links) || (text_same(behind, "on") && text_same(word, "book"));
        if (linked && IS_ONE_OF(word, pictures))
            return is_introduced(text, at, shown) || words_before(text, at, LEAD_MOST) <= LEAD_MOST;
        memcpy(shown, behind, sizeof shown);
        memcpy(behind, word, sizeof behind);
    }
    return false;
}

// "Asbestos company catalog": the words that follow, up to a stop.
static bool is_paper_on(const char *text, size_t at) {
    static const char *const papers[] = {"poster",   "posters",   "postcard",   "postcards", "catalog",
                                         "catalogs", "catalogue", "catalogues", "manual",    "manuals",
                                         "brochure", "leaflet",   "magazine",   "magazines", "pamphlet",
                                         "calendar", "handbook",  "badge",      "badges"};
    enum { WORDS_ON = 3 };
    char word[WORD_MOST + 1];
    for (int i = 0; i < WORDS_ON && next_word(text, &at, word); i++)
        if (IS_ONE_OF(word, papers)) return true;
    return false;
}

// "Gas lamp style sconce", "rifle club cup", "jockey print": it looks so, is named so, or shows one.
bool sense_is_else(const char *text, size_t at) {
    static const char *const heads[] = {
        "style", "styled",  "shaped", "shape",   "pattern",  "patterned", "effect", "motif",   "themed",
        "theme", "print",   "prints", "printed", "look",     "colored",   "colour", "color",   "coloured",
        "club",  "company", "museum", "factory", "merchant", "merchants", "dealer", "dealers", "shop"};
    char word[WORD_MOST + 1];
    return next_word(text, &at, word) && IS_ONE_OF(word, heads);
}

// "It stood next to the boiler".
static bool is_neighbor(const char *text, size_t at) {
    static const char *const articles[] = {"the", "my", "our", "a"};
    char word[WORD_MOST + 1];
    if (!word_before(text, &at, false, word) || !IS_ONE_OF(word, articles)) return false;
    if (!word_before(text, &at, false, word)) return false;
    if (text_same(word, "beside") || text_same(word, "behind")) return true;
    return text_same(word, "to") && word_before(text, &at, false, word) && text_same(word, "next");
}

bool sense_is_pictured(const char *text, size_t from, size_t to) {
    return is_about(text, from) || is_paper_on(text, to) || is_neighbor(text, from);
}

// "It" of "in it", which the thing is; or nothing behind "inside".
static bool is_within(const char *text, size_t at) {
    enum { WORDS_ON = 8 };
    char word[WORD_MOST + 1];
    bool in = false;
    for (int i = 0; i < WORDS_ON && next_word(text, &at, word); i++) {
        if (text_same(word, "inside") || (in && (text_same(word, "it") || text_same(word, "this") ||
                                                 text_same(word, "here") || text_same(word, "them"))))
            return true;
        in = text_same(word, "in");
    }
    return false;
}

bool sense_was_inside(const char *text, size_t from, size_t to) {
    static const char *const kept[] = {"kept", "stored", "carried", "housed", "had"}, *const held[] = {
                                                                                          "held", "hold",
                                                                                          "store", "keep",
                                                                                          "contained"};
    enum { WORDS_BACK = 5 };
    char word[WORD_MOST + 1];
    for (int i = 0; i < WORDS_BACK; i++) {
        if (!word_before(text, &from, false, word)) return false;
        bool was = IS_ONE_OF(word, held), is_kept = IS_ONE_OF(word, kept);
        if (!was && !is_kept) continue;
        if (is_kept) return is_within(text, to);
        static const char *const before[] = {"once", "has", "had", "that", "it", "to", "which", "previously"};
        return word_before(text, &from, false, word) && IS_ONE_OF(word, before);
    }
    return false;
}

bool sense_is_gone(const char *text, size_t at) {
    static const char *const gone[] = {"missing", "removed", "gone"};
    char word[WORD_MOST + 1];
    return next_word(text, &at, word) && IS_ONE_OF(word, gone) && (!text[at] || strchr(",.;!)\n", text[at]));
}

bool sense_is_casting(const char *text, size_t from, size_t to) {
    static const char *const molds[] = {"mold", "mould", "molds", "moulds"};
    static const char *const traces[] = {"line",  "lines",  "seam", "seams",  "ridge", "ridges", "edge",
                                         "edges", "join",   "lip",  "halves", "bump",  "bumps",  "bubbles",
                                         "flash", "bubble", "nub",  "pimple", "nubs",  "ripple", "ripples"};
    enum { WORDS_BACK = 9 };
    char word[WORD_MOST + 1];
    if (to - from > WORD_MOST) return false;
    for (size_t k = 0; k < to - from; k++) word[k] = (char)utf8_lower((unsigned char)text[from + k]);
    word[to - from] = '\0';
    if (!IS_ONE_OF(word, molds) || !word_before(text, &from, false, word) || strcmp(word, "the") != 0)
        return false;
    for (int i = 0; i < WORDS_BACK && word_before(text, &from, false, word); i++)
        if (IS_ONE_OF(word, traces)) { // but "the stain on the seam": a place
            static const char *const places[] = {"on", "in", "along", "at", "near", "inside"};
            if (!word_before(text, &from, false, word)) return true;
            if (!strcmp(word, "the") && !word_before(text, &from, false, word)) return true;
            return !IS_ONE_OF(word, places);
        }
    return false;
}
