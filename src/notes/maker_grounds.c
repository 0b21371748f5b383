// SPDX-License-Identifier: MIT
// What lets a run of capitals be a maker's name. In the sentence that names the thing it is one by standing
// there, unless somebody acts in its clause ("it was the one Tabitha won"). Behind it, where sellers talk of
// people and of places, it needs a word that says so: who made it, where it is written, goods or a model
// behind it, or a sentence that is nothing but the name. Without such grounds a name stays unread, for it may
// be anybody's.
#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/mark_words.h"
#include "notes/place.h"
#include "notes/talk.h"
#include "notes/things.h"
#include "notes/works.h"

enum { NEAR = 6 };

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_actor(const struct tokens *tokens, size_t i) {
    static const char *const actors[] = {
        "he",      "she",     "we",      "they",      "you",       "me",      "him",    "us",      "his",
        "their",   "my",      "our",     "your",      "who",       "whom",    "whose",  "someone", "somebody",
        "anybody", "anyone",  "nobody",  "everybody", "everyone",  "he's",    "she's",  "we've",   "they're",
        "who's",   "thats",   "that's",  "mother",    "father",    "mum",     "mom",    "dad",     "gran",
        "grandma", "grandad", "grandpa", "uncle",     "aunt",      "auntie",  "sister", "brother", "cousin",
        "nephew",  "niece",   "wife",    "husband",   "neighbour", "neighbor"};
    return token_among(tokens, i, actors, COUNT(actors));
}

// Words that tell of making or of writing on the thing.
static bool is_cue(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {
        "by",       "maker",     "maker's",  "makers",     "make",       "brand",       "branded",
        "made",     "marked",    "mark",     "marks",      "stamped",    "stamp",       "signed",
        "printed",  "label",     "labels",   "labelled",   "labeled",    "badge",       "badged",
        "logo",     "says",      "reads",    "backstamp",  "cast",       "embossed",    "impressed",
        "etched",   "moulded",   "molded",   "plate",      "nameplate",  "decal",       "sticker",
        "tag",      "unmarked",  "maybe",    "possibly",   "probably",   "attributed",  "perhaps",
        "suspect",  "foundry",   "pottery",  "works",      "patent",     "model",       "pattern",
        "range",    "series",    "retailed", "factory",    "studio",     "designed",    "designer",
        "artist",   "publisher", "called",   "published",  "ltd",        "co",          "inc",
        "bros",     "limited",   "company",  "registered", "incised",    "transfer",    "dial",
        "movement", "signature", "engine",   "tuned",      "compatible", "manufacturer"};
    return token_among(tokens, i, cues, COUNT(cues));
}

// "On the base", "inside", "under both": where it is written.
static bool is_placed(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const char *where;
    if (!ANY(tokens, i, "on", "under", "in", "inside", "underneath", "across", "along", "round", "around"))
        return false;
    return place_at(note, i, &where) > 0 || i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE ||
           ANY(tokens, i + 1, "both", "each", "it", "gold", "script", "blue", "red", "green", "black",
               "capitals", "relief");
}

// "Tabitha won it": a verb of the past that no writing is told with, right behind the name.
static bool does_something(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD || tokens->at[i].capital) return false;
    return ANY(tokens, i, "was", "had", "did", "used", "won", "gave", "got", "took", "kept", "made", "bought",
               "left", "sat", "wore", "brought", "said", "swore", "sent", "found", "fell", "went", "came",
               "lived", "worked", "died", "wanted", "thought", "played", "drove", "built", "carried");
}

static bool said_in(const struct note *note, size_t from, size_t to,
                    bool (*is)(const struct tokens *, size_t)) {
    for (size_t i = from; i < to; i++)
        if (is(&note->tokens, i)) return true;
    return false;
}

// Nothing but the name stands between the stops, but for figures, dates and marks of quotation.
static bool is_alone(const struct note *note, size_t from, size_t to, size_t a, size_t b) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = a; i < b; i++)
        if ((i < from || i >= to) && tokens->at[i].kind == TOKEN_WORD && note->taken[i] != TAKEN_DATE &&
            !tokens->at[i].capital && !ANY(tokens, i, "a", "an", "and", "the", "all", "circa", "old", "by"))
            return false;
    return true;
}

// "Halden mixer", "Halden 40", "a Halden with a ratchet".
static bool is_with_goods(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    struct noun_found noun;
    bool coded =
        to < tokens->count && (tokens->at[to].kind == TOKEN_CODE || tokens->at[to].kind == TOKEN_FIGURE);
    if (coded && from == note_clause_from(note, from, STOP_SENTENCE)) return true; // but not "…, Hut 14"
    bool article = from > 0 && ANY(tokens, from - 1, "a", "an");
    if (article && from > 1 && ANY(tokens, from - 2, "is", "it's", "are", "be", "was")) return true;
    for (size_t i = to; i < to + 4 && i < tokens->count && tokens->at[i].stop == STOP_NONE; i++)
        if (noun_at(note, i, &noun) && noun.thing) return from == 0 || !ANY(tokens, from - 1, "from", "of");
    return false;
}

bool name_by_user(const struct note *note, size_t by) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, by, "by")) return false;
    for (size_t i = note_clause_from(note, by, STOP_SENTENCE); i < by; i++)
        if (ANY(tokens, i, "worn", "used", "owned", "ridden", "played", "given", "left", "sold", "won",
                "kept", "found", "carried", "driven", "read", "slept", "loved", "chewed", "presented",
                "bought", "brought", "repaired", "mended", "rewired", "restrung", "fixed", "inherited",
                "passed") &&
            !ANY(tokens, i + 1, "to"))
            return true;
    return false;
}

// A word of making before the name, in the same breath: but not "… called Smoky, and this is Harlan".
static bool is_told(const struct note *note, size_t a, size_t from) {
    for (size_t i = from; i > a && from - i < NEAR; i--) {
        if (ANY(&note->tokens, i - 1, "and", "but", "this", "that") && i < from) return false;
        if (is_cue(&note->tokens, i - 1)) return !name_by_user(note, i - 1);
    }
    return false;
}

// "A curly KVB engraved on top", "the initials": letters for a name.
static bool is_monogram(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "engraved", "engraving", "monogram", "monogrammed", "initials", "initial",
               "embroidered", "curly", "script", "sequined", "inscribed", "inscription", "bookplate",
               "dedicated", "ladies", "members", "pupils", "girls", "women", "boys", "men", "nuns", "monks",
               "staff", "workers", "children");
}

// "On Orla's piano": whose another thing is; but "Harland's tonic bottle".
static bool is_possession(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    const char *last = tokens->at[to - 1].fold;
    size_t size = strlen(last);
    if (size < 3 || strcmp(last + size - 2, "'s") != 0 || to >= tokens->count ||
        tokens->at[to].stop != STOP_NONE)
        return false;
    return from > 0 &&
           ANY(tokens, from - 1, "on", "in", "at", "from", "by", "under", "inside", "with", "to") &&
           tokens->at[from - 1].stop == STOP_NONE && !tokens->at[to].capital;
}

// "They say Flour, Sugar and Coffee", "marked Hot and Cold": what is kept in it or comes out of it.
static bool is_of_contents(const struct tokens *tokens, size_t from, size_t to) {
    static const char *const words[] = {
        "flour", "sugar",  "coffee",  "tea",      "salt",    "pepper",   "bread",    "rice",
        "oats",  "cereal", "cookies", "crackers", "spice",   "spices",   "milk",     "cream",
        "soup",  "butter", "honey",   "jam",      "oil",     "vinegar",  "hot",      "cold",
        "on",    "off",    "high",    "low",      "popcorn", "candy",    "biscuits", "letters",
        "cakes", "cake",   "cloves",  "ginger",   "nutmeg",  "cinnamon", "sage",     "thyme",
        "tools", "nails",  "matches", "ashes",    "and",     "&"};
    for (size_t i = from; i < to; i++)
        if (!token_among(tokens, i, words, COUNT(words))) return false;
    return to > from;
}

bool name_has_grounds(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    if (is_of_contents(tokens, from, to)) return false;
    size_t a = note_clause_from(note, from, STOP_COMMA), b = note_clause_to(note, to - 1, STOP_COMMA);
    size_t first = note_clause_from(note, from, STOP_SENTENCE),
           end = note_clause_to(note, to - 1, STOP_SENTENCE);
    bool heading = talk_heading(note, first);
    if (said_in(note, a, from, is_monogram) || is_possession(note, from, to)) return false;
    size_t sewn =
        to + (ANY(tokens, to, "chain") ? 1 : 0); // "has Somebody Somebody chain stitched round the lid"
    if (to > from + 1 && ANY(tokens, sewn, "stitched", "embroidered", "sewn", "chain-stitched") &&
        tokens->at[to - 1].stop == STOP_NONE)
        return false;
    enum { BACK = 12 };
    for (size_t i = from; i > 0 && i + BACK > from; i--) // "bookplate of Col. Somebody, Long House"
        if (ANY(tokens, i - 1, "bookplate")) return false;
    if (ANY(tokens, from, "pastor", "bishop", "reverend", "papa", "deacon", "grandma", "grandpa", "granny",
            "oma", "opa", "pappy", "gramps", "nonna"))
        return false;
    if (from > 1 && ANY(tokens, from - 1, "by") && ANY(tokens, from - 2, "up", "down", "over", "out"))
        return false; // "a camp up by Somewhere Slough"
    if (from > 1 && token_is(tokens, from - 1, ",") && tokens->at[from - 2].starts &&
        ANY(tokens, from - 2, "no", "nope", "sorry", "wait"))
        return true; // "Tarl something? No, Torl 40": put right
    if (from > a && !heading && tokens->at[from - 1].kind == TOKEN_FIGURE) return false; // "5 Tanner's Steps"
    if (is_told(note, a, from) || (to < b && said_in(note, to, to + 3 < b ? to + 3 : b, is_cue))) return true;
    if (to < b && (is_placed(note, to) || (to + 1 < b && is_placed(note, to + 1)))) return true;
    // What is dictated without stops is one clause throughout.
    size_t near = from > a + NEAR ? from - NEAR : a, behind = to + NEAR < b ? to + NEAR : b;
    bool acts = said_in(note, near, behind, is_actor) || does_something(note, to);
    if (heading) return !acts;
    if (is_alone(note, from, to, first, end)) return true;
    if (acts) return false;
    if (is_with_goods(note, from, to)) return true;
    if (from > 0 && name_by_user(note, from - 1)) return false;
    return is_alone(note, from, to, a, b) && said_in(note, first, end, is_cue);
}

bool fit_has_grounds(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    if (from == 0 || !ANY(tokens, from - 1, "for")) return true; // "fits Halden", "for a Halden"
    size_t a = note_clause_from(note, from, STOP_COMMA), b = note_clause_to(note, to - 1, STOP_COMMA);
    size_t near = from > a + NEAR ? from - NEAR : a, behind = to + NEAR < b ? to + NEAR : b;
    if (said_in(note, a, from, is_monogram) || is_possession(note, from, to)) return false;
    bool coded =
        to < tokens->count && (tokens->at[to].kind == TOKEN_CODE || tokens->at[to].kind == TOKEN_FIGURE);
    if (coded || is_with_goods(note, from, to)) return true;
    if (said_in(note, near, behind, is_actor) || does_something(note, to)) return false;
    bool placed = to < b && ANY(tokens, to, "from", "on", "at", "in");
    return talk_heading(note, note_clause_from(note, from, STOP_SENTENCE)) && !placed;
}

bool code_has_grounds(const struct note *note, size_t i) {
    size_t first = note_clause_from(note, i, STOP_SENTENCE), end = note_clause_to(note, i, STOP_SENTENCE);
    if (talk_heading(note, first) || said_in(note, note_clause_from(note, i, STOP_COMMA), i, is_cue))
        return true;
    bool named = false; // "the number of the Somewhere mill, LT-906"
    for (size_t k = first; k < i && !named; k++) {
        const struct token *token = &note->tokens.at[k];
        named =
            token->kind == TOKEN_WORD && token->capital && !token->starts &&
            (note->taken[k] == TAKEN_NOT || note->taken[k] == TAKEN_OPEN || note->taken[k] == TAKEN_ASIDE);
    }
    return !named && !said_in(note, first, end, is_actor);
}
