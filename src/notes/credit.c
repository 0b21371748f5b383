// SPDX-License-Identifier: MIT
// What the words around a name leave of it. "Not by Harkwidge", "copy of a Harkwidge", "no Harkwidge mark"
// name no maker; "attributed to", "he said Harkwidge" guess at one; and a word of age or of a country by
// itself is no name at all.
#include "notes/any.h"
#include "notes/english.h"
#include "notes/things.h"
#include "notes/works.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_refused(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    while (from > 0 && ANY(tokens, from - 1, "a", "an", "the", "any", "my", "'", "\"")) from--;
    if (from == 0 || tokens->at[from - 1].stop >= STOP_COMMA) return false;
    if (ANY(tokens, from - 1, "like", "unlike", "after", "than", "copying", "imitating", "resembling",
            "echoing", "rivals", "man's", "resembles", "beats", "outdoes"))
        return true;
    if (from > 1 && tokens->at[from - 2].stop == STOP_NONE &&
        ((ANY(tokens, from - 1, "of", "from") &&
          ANY(tokens, from - 2, "spit", "knock-off", "reminds", "me", "reminiscent", "taken", "borrowed",
              "copied", "style", "off")) ||
         (token_is(tokens, from - 1, "with") && ANY(tokens, from - 2, "goes", "used", "confused", "go")) ||
         (token_is(tokens, from - 1, "to") &&
          ANY(tokens, from - 2, "next", "similar", "compared", "close", "equal")) ||
         (token_is(tokens, from - 1, "for") && ANY(tokens, from - 2, "mistaken", "taken", "pass"))))
        return true;
    // "From the old boathouse at Wren's Hythe", "the man down Pellow Rd": where it was
    if (ANY(tokens, from - 1, "at", "near", "outside", "down", "along")) return true;
    if (token_is(tokens, from - 1, "no"))
        return ANY(tokens, to, "mark", "marks", "stamp", "label", "name", "logo", "badge", "signature",
                   "plate");
    return from > 1 && token_is(tokens, from - 1, "of") && tokens->at[from - 2].stop == STOP_NONE &&
           ANY(tokens, from - 2, "style", "manner", "taste", "way", "spirit", "school", "follower", "circle");
}

enum sure name_credit(const struct note *note, size_t from, size_t to, bool *refused) {
    enum { REACH = 5 };
    const struct tokens *tokens = &note->tokens;
    *refused = is_refused(note, from, to);
    for (size_t k = from; !*refused && k > 0 && from - k < REACH; k--) {
        if (tokens->at[k - 1].stop >= STOP_COMMA || note->fault_word[k - 1]) break;
        if (ANY(tokens, k - 1, "but", "and", "only", "just")) break;
        if (ANY(tokens, k - 1, "not", "isn't", "isnt", "wasn't", "never", "neither", "doubt", "copy",
                "copies", "copied", "imitation", "replica", "reproduction", "fake", "similar", "lookalike",
                "unlike")) {
            *refused = !ANY(tokens, k, "sure", "certain");
            return SURE_GUESS;
        }
        if (ANY(tokens, k - 1, "attributed", "said", "says", "told", "reckons", "reckoned", "swore", "swears",
                "claimed", "claims", "believed", "thought", "assume", "assumed", "suspect", "hope", "hoped",
                "if", "whether", "unmarked", "unsigned", "catalogued", "cataloged", "bought", "listed",
                "described", "advertised", "may", "supposed", "wonder", "idea", "guessed", "unsure",
                "promise"))
            return SURE_GUESS;
    }
    return SURE_STATED;
}

// "Off the Pellow garage", "used in Medlow school": where it was, and nobody who made it.
static bool is_of_a_place(const struct tokens *tokens, size_t from, size_t to) {
    size_t at = from;
    while (at > 0 && ANY(tokens, at - 1, "the", "old", "former")) at--;
    bool led = at > 0 && ANY(tokens, at - 1, "from", "off", "in", "at", "of", "inside", "outside", "near");
    return led && tokens->at[to - 1].stop == STOP_NONE && !(to < tokens->count && tokens->at[to].capital) &&
           ANY(tokens, to, "place", "farm", "mill", "garage", "school", "station", "chapel", "church",
               "estate", "house", "hall", "barn", "shop", "store", "stores", "family", "hotel", "hospital",
               "library", "club", "lifeboat", "village", "yard", "forge", "sale", "auction", "cottage", "pub",
               "quarry", "harbor", "harbour", "dairy", "bakery", "hut", "depot");
}

bool name_is_no_name(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    // "Foxing's light": what begins a sentence with its verb
    size_t size = strlen(tokens->at[from].fold);
    if (from > 0 && to == from + 1 && tokens->at[from].starts && size > 5 &&
        text_same(tokens->at[from].fold + size - 5, "ing's"))
        return true;
    if (is_of_a_place(tokens, from, to)) return true;
    // "Pellow Rd", "Quarry Street": an address, whoever lives there
    if (to > from + 1 &&
        ANY(tokens, to - 1, "rd", "road", "street", "ave", "avenue", "crescent", "cres", "blvd"))
        return true;
    // "Somewhere Chess Club": a body, and no maker
    if (to > from + 1 && ANY(tokens, to - 1, "club", "chapel", "church", "college", "hospital", "society",
                             "association", "institute", "regiment", "battalion", "choir", "parish", "asylum",
                             "orphanage", "academy", "scouts", "guides", "institution"))
        return true;
    // "HW & Co": the end of a name
    if (to == from + 1 && ANY(tokens, from, "co", "sons", "son", "bros", "ltd", "company", "inc"))
        return true;
    // "Instrument Makers", "High Street": a trade or an address
    if (ANY(tokens, to - 1, "makers", "manufacturers", "merchants", "dealers", "street", "road", "lane",
            "avenue", "square", "terrace", "suppliers", "engineers", "opticians", "ironmongers", "saddlers",
            "chemists", "jewellers", "jewelers", "stationers", "printers", "cutlers")) {
        bool plain = true;
        for (size_t i = from; i < to; i++) plain &= english_at(note, i);
        if (plain) return true;
    }
    if (to > from + 2 || (to == from + 2 && !token_is(tokens, from + 1, "i"))) return false;
    return ANY(tokens, from, "victorian", "edwardian", "georgian", "regency", "elizabethan", "jacobean",
               "tudor", "sweden", "norway", "denmark", "spain", "portugal", "holland", "belgium", "austria",
               "switzerland", "poland", "hungary", "russia", "ireland", "scotland", "wales", "canada",
               "australia", "europe", "africa", "india", "mexico", "brazil", "egypt", "turkey", "greece",
               "finland", "america", "korea", "pacific", "atlantic", "arctic", "antarctic", "mediterranean",
               "asia", "greenland", "iceland", "baltic", "equator", "bible");
}

// "Stool, Mahogany. Seat worn", "bell, Rope pull rotten": a stuff or a part with a capital behind a comma.
// Who made a thing may be called so too, but then a name of more words or a word of making says it.
bool name_is_stuff(const struct note *note, size_t from, size_t to) {
    struct word_entry entry;
    const struct tokens *tokens = &note->tokens;
    if (to != from + 1 || !from || tokens->at[from - 1].stop == STOP_NONE) return false;
    if (word_at(note, from,
                (1u << USE_MATERIAL) | (1u << USE_PART) | (1u << USE_TECHNIQUE) | (1u << USE_FINISH),
                &entry) != 1)
        return false;
    return to >= tokens->count || tokens->at[to].stop != STOP_NONE || !tokens->at[to].capital;
}
