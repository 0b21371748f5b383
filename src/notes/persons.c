// SPDX-License-Identifier: MIT
// Names of people in what a seller tells by the way: "Mrs Somebody's", "ring Harry on", "sold to me by",
// "Cyril built it". A name alone is taken for a maker's; who gave, owned or sells a thing is none, and is
// taken as an aside before any reader of names.
#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/number.h"
#include "notes/persons.h"
#include "notes/place.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { NAME_MOST = 5 };

static bool is_stop(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE;
}

bool person_capital(const struct note *note, size_t i) {
    if (i >= note->tokens.count || note->taken[i] != TAKEN_NOT) return false;
    const struct token *t = &note->tokens.at[i];
    return (t->kind == TOKEN_WORD || t->kind == TOKEN_CODE) && t->capital && !note->tokens.shouts &&
           !ANY(&note->tokens, i, "i", "i'm", "i've", "i'll", "i'd", "no", "the", "it", "it's");
}

// A capital that no sentence gives: "Harry", but not the "Lid" that opens one.
bool person_named(const struct note *note, size_t i) {
    struct noun_found noun;
    if (!person_capital(note, i) || note->fault_word[i]) return false;
    return !note->tokens.at[i].starts || (!english_at(note, i) && !noun_at(note, i, &noun));
}

// "A. J. Somebody", "Harry": where the run that begins at `i` ends.
size_t person_name_end(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t end = i;
    for (size_t n = 0; n < 2 * NAME_MOST; n++) {
        bool brief = end > i && (tokens->at[end - 1].to - tokens->at[end - 1].from <= 2 ||
                                 ANY(tokens, end - 1, "rev", "capt", "col", "sgt", "prof", "mrs", "cpl",
                                     "lieut", "thos", "chas", "wm", "jas", "jno", "geo", "robt", "edw",
                                     "benj", "saml", "jos", "fredk", "alexr"));
        bool dot =
            brief && token_is(tokens, end, ".") && tokens->at[end].joined && person_capital(note, end + 1);
        if (dot || person_capital(note, end) ||
            (end > i && ANY(tokens, end, "and", "&") && person_capital(note, end + 1)))
            end++;
        else
            break;
    }
    return end;
}

size_t person_keep_back(struct note *note, size_t from, size_t to) {
    if (to <= from || !note_free(note, from, to)) return 0;
    note_reading(note, from, to, "aside", "a name that is nobody's business");
    note_aside(note, from, to);
    words_hide(note, from, to);
    return to;
}

// Words that say what is written on the thing: then the name is a mark of it.
static bool is_mark(const struct tokens *tokens, size_t i) {
    for (size_t back = 1; back <= 3 && back <= i; back++) {
        if (tokens->at[i - back].stop >= STOP_SENTENCE) return false;
        if (ANY(tokens, i - back, "marked", "stamped", "signed", "reads", "embossed", "cast", "printed",
                "titled", "called", "maker", "made", "\"", "author", "published", "designed", "artist"))
            return true;
    }
    return false;
}

// "Mrs", "Uncle", "Rev.": and whoever follows. "Dr X's Tonic" is a name of goods.
static size_t read_titled(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    bool given = ANY(tokens, i, "mr", "mrs", "miss", "ms", "dr", "doctor", "rev", "reverend", "capt",
                     "captain", "major", "colonel", "col", "sgt", "sergeant", "pte", "private", "lieutenant",
                     "lt", "uncle", "pastor", "bishop", "aunt", "auntie", "aunty", "granny", "grandma",
                     "grandpa", "papa", "oma", "opa", "pappy", "nan", "nana", "dj", "sister", "professor",
                     "prof", "canon", "sir", "lady", "lord", "cousin", "corporal", "cpl", "nurse", "pfc",
                     "judge", "squire", "deacon", "commander", "cmdr", "admiral", "pfc.", "doc", "constable",
                     "pvt", "gnr", "tpr", "spr", "bdr", "gunner", "trooper", "sapper", "private", "mr.",
                     "mrs.", "dr.", "ms.", "rev.", "capt.", "col.", "sgt.", "lt.", "prof.");
    if (!given || note->taken[i] != TAKEN_NOT) return 0;
    bool number = i + 1 < tokens->count && tokens->at[i + 1].kind == TOKEN_FIGURE &&
                  tokens->at[i + 1].to - tokens->at[i + 1].from > 3; // "reads PTE 44120 Somebody"
    bool kin = ANY(tokens, i, "uncle", "aunt", "auntie", "aunty", "granny", "grandma", "grandpa", "nan",
                   "nana", "cousin");
    size_t great = kin && i > 0 && ANY(tokens, i - 1, "great", "grand") ? 1 : 0;
    bool ours = kin && i > great && token_is(tokens, i - great - 1, "by"); // "made by Great Aunt Somebody"
    if (is_mark(tokens, i) && !number && !ours) return 0;
    size_t from = i + 1;
    bool whole =
        ANY(tokens, i, "uncle", "aunt", "auntie", "aunty", "granny", "grandma", "grandpa", "nan", "nana",
            "sister", "doctor", "captain", "major", "colonel", "sergeant", "private", "lieutenant", "cousin",
            "lady", "lord", "nurse", "constable", "miss", "canon", "corporal", "professor");
    if (token_is(tokens, from, ".") && whole) return 0; // "it was my uncle's. Untested"
    if (token_is(tokens, from, ".")) from++;
    while (from < tokens->count && tokens->at[from].kind == TOKEN_FIGURE && from < i + 3)
        from++; // "Pte 40213 S"
    size_t to = person_name_end(note, from);
    if (to == from ||
        (!kin && i > 0 && token_is(tokens, i - 1, "by") &&
         !ANY(tokens, i - 2, "me", "given", "owned", "used", "left", "sold", "played", "worn", "caught",
              "shot", "killed", "ridden", "flown", "won", "taken", "landed", "bagged", "rowed")))
        return 0;
    if (person_in_title(note, i, to)) return 0;
    if (tokens->at[to - 1].stop == STOP_NONE &&
        ANY(tokens, to, "pattern", "patterns", "design", "rose", "range"))
        return 0; // "Lady Corvane pattern": what spoons or plates are called by
    const char *last = tokens->at[to - 1].fold;
    size_t size = strlen(last);
    bool owner = size > 2 && text_same(last + size - 2, "'s");
    struct noun_found noun;
    bool inner = false; // "Aunt Tilly's Jam jar", "Lady Marlin golf club": a name of goods
    for (size_t k = from; k + 1 < to; k++) inner |= strstr(tokens->at[k].fold, "'s") != NULL;
    if (inner || (!owner && tokens->at[i].starts && noun_at(note, to, &noun))) return 0;
    return person_keep_back(note, i - great, to);
}

// "Ring Harry on …", "ask for Brenda": the clause is an errand.
static size_t read_call(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    bool opens =
        i == 0 || is_stop(tokens, i - 1) || ANY(tokens, i - 1, "(", "please", "or", "to", "and", "then");
    bool verb = opens && ANY(tokens, i, "ring", "phone", "contact", "call", "text", "message", "email", "see",
                             "ask", "speak", "tel", "telephone", "mobile", "cell");
    if (!verb) return 0;
    size_t at = i + 1;
    while (ANY(tokens, at, "for", "to", "with", "me", ":", "us", "no", "on", ".", "number") && at < i + 4)
        at++;
    bool figure =
        at < tokens->count && tokens->at[at].kind == TOKEN_FIGURE && strlen(tokens->at[at].fold) > 2;
    size_t spelled = 0;
    while (ANY(tokens, at + spelled, "zero", "oh", "one", "two", "three", "four", "five", "six", "seven",
               "eight", "nine", "double") ||
           token_is(tokens, at + spelled, ","))
        spelled++;
    if (!person_named(note, at) && !figure && spelled < 4) return 0;
    if (ANY(tokens, i, "see", "ask") && figure) return 0; // "see 3 pictures"
    size_t to = i + 1;
    while (to < tokens->count && tokens->at[to].stop < STOP_SENTENCE && !note->fault_word[to] &&
           note->taken[to] == TAKEN_NOT && !token_is(tokens, to, ")"))
        to++;
    while (to > at + 1 && note->tokens.at[to - 1].stop == STOP_COMMA) to--;
    return person_keep_back(note, i, to);
}

// Words behind which a person's name stands.
static size_t lead_at(const struct tokens *tokens, size_t i) {
    static const char *const leads[] = {"sold to me by",
                                        "sold by",
                                        "sold me by",
                                        "given to me by",
                                        "given me by",
                                        "given by",
                                        "gift from",
                                        "gift of",
                                        "cash to",
                                        "previous owner",
                                        "prior owner",
                                        "former owner",
                                        "last owner",
                                        "first owner",
                                        "original owner",
                                        "owner was",
                                        "owner is",
                                        "owned by",
                                        "played by",
                                        "worn by",
                                        "used by",
                                        "carried by",
                                        "left by",
                                        "left to me by",
                                        "left me by",
                                        "present from",
                                        "presented to",
                                        "present to",
                                        "awarded to",
                                        "won by",
                                        "lent by",
                                        "inherited from",
                                        "collection of",
                                        "fellow called",
                                        "bloke called",
                                        "man called",
                                        "lady called",
                                        "woman called",
                                        "chap called",
                                        "guy called",
                                        "guy named",
                                        "man named",
                                        "woman named",
                                        "lady named",
                                        "lad called",
                                        "family called",
                                        "family named",
                                        "people called",
                                        "couple called",
                                        "widow of",
                                        "belonged to",
                                        "belonging to",
                                        "belongs to",
                                        "father in law",
                                        "mother in law",
                                        "hospital tag",
                                        "old owner",
                                        "off old",
                                        "from old",
                                        "courtesy of",
                                        "regards",
                                        "thanks",
                                        "cheers",
                                        "yours",
                                        "my address is",
                                        "address is",
                                        "i live at",
                                        "lives at",
                                        "collect from",
                                        "pick up from",
                                        "inscribed to",
                                        "dedicated to",
                                        "in memory of",
                                        "estate of",
                                        "house of",
                                        "bought off",
                                        "bought from",
                                        "got off",
                                        "got it off",
                                        "got it from",
                                        "had it off",
                                        "had it from",
                                        "had from",
                                        "sold me",
                                        "courting",
                                        "married to",
                                        "my handle",
                                        "my username",
                                        "listings under",
                                        "my page",
                                        "trading as",
                                        "find me at",
                                        "username",
                                        "user name",
                                        "i gave",
                                        "lent it to",
                                        "lent to",
                                        "gave it to",
                                        "invoice to",
                                        "addressed to",
                                        "sold to",
                                        "promised to",
                                        "ask",
                                        "asked",
                                        "told",
                                        "wanted by",
                                        "saved for",
                                        "kept for",
                                        "meant for",
                                        "writes to",
                                        "letter to",
                                        "card to",
                                        "letter from",
                                        "card from",
                                        "message from",
                                        "signed by my",
                                        "caught by",
                                        "shot by",
                                        "killed by",
                                        "ridden by",
                                        "flown by",
                                        "rowed by",
                                        "landed by",
                                        "in the name of",
                                        "made out to",
                                        "issued to",
                                        "registered to",
                                        "made for",
                                        "signed to",
                                        "for our",
                                        "to our",
                                        "retirement of",
                                        "signed over to",
                                        "passed down from",
                                        "handed down from",
                                        "engraved for",
                                        "given to",
                                        "handed to",
                                        "initials of",
                                        "left to",
                                        "sent to",
                                        "went to",
                                        "shed of",
                                        "barn of",
                                        "workshop of",
                                        "garage of",
                                        "attic of",
                                        "return to",
                                        "text me",
                                        "message me",
                                        "email me"};
    return token_longest(tokens, i, leads, sizeof leads / sizeof *leads);
}

// Whose a thing was, by a word for one of the seller's own.
static const char *const owns[] = {
    "father's",  "mother's",   "dad's",        "mum's",     "mom's",         "son's",       "daughter's",
    "husband's", "wife's",     "brother's",    "sister's",  "friend's",      "mate's",      "nephew's",
    "cousin's",  "uncle's",    "aunt's",       "partner's", "neighbor's",    "neighbour's", "grandfather's",
    "grandad's", "granddad's", "grandpa's",    "grandma's", "grandmother's", "gran's",      "nan's",
    "granny's",  "nana's",     "boss's",       "teacher's", "landlord's",    "auntie's",    "mummy's",
    "daddy's",   "parents'",   "grandparents'"};

// "My uncle", "our late neighbor", "my father's,": whoever is named behind; 0 where nobody of the seller's
// stands.
static size_t kin_at(const struct tokens *tokens, size_t i) {
    static const char *const kin[] = {
        "father",   "mother",     "dad",           "mum",           "mom",           "son",
        "daughter", "husband",    "wife",          "brother",       "sister",        "friend",
        "mate",     "nephew",     "niece",         "cousin",        "uncle",         "aunt",
        "partner",  "neighbor",   "neighbour",     "grandfather",   "grandmother",   "grandad",
        "granddad", "grandpa",    "grandma",       "gran",          "nan",           "granny",
        "boss",     "teacher",    "landlord",      "landlady",      "ex-wife",       "ex-husband",
        "ex",       "great-aunt", "great-uncle",   "stepfather",    "godmother",     "godfather",
        "in-law",   "auntie",     "father-in-law", "mother-in-law", "brother-in-law"};
    bool lone = ANY(tokens, i, "neighbor", "neighbour", "neighbor's", "neighbour's");
    size_t at = i;
    if (!lone) {
        if (!ANY(tokens, i, "my", "our", "his", "her", "their", "the")) return 0;
        at++;
        while (ANY(tokens, at, "late", "old", "dear", "great", "elder", "-") && at < i + 4) at++;
    }
    if (token_among(tokens, at, kin, COUNT(kin))) return at + 1 - i;
    bool set_off = at + 1 < tokens->count && (token_is(tokens, at + 1, ",") || token_is(tokens, at + 1, "("));
    return set_off && token_among(tokens, at, owns, COUNT(owns)) ? at + 2 - i : 0;
}

static size_t read_led(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t n = kin_at(tokens, i), at;
    if (!n) n = lead_at(tokens, i);
    at = i + n;
    if (!n) return 0;
    size_t street = person_street(note, at);
    if (street) return street;
    while (ANY(tokens, at, "the", "late", "a", "is", "was", ",", ":", "dear", "one", "called", "named", "old",
               "@") ||
           (at < tokens->count && tokens->at[at].kind == TOKEN_FIGURE && at < i + n + 2))
        at++;
    bool handle = at < tokens->count && tokens->at[at].kind == TOKEN_CODE &&
                  ANY(tokens, i, "listings", "my", "username", "user", "find");
    if (handle) return person_keep_back(note, at, at + 1);
    // "Old owner put SALLOWAY on the strap"
    if (at == i + n && ANY(tokens, at - 1, "owner") &&
        ANY(tokens, at, "put", "wrote", "inked", "painted", "carved", "scratched", "stencilled", "stenciled",
            "burnt") &&
        at + 2 < tokens->count &&
        (tokens->at[at + 1].capitals || ANY(tokens, at + 2, "on", "in", "inside", "under")))
        at++;
    if (!person_named(note, at)) return 0;
    size_t to = person_name_end(note, at); // "collect from 3 The Maltings, Brackwater"
    bool firm = tokens->at[at].capitals && !tokens->shouts;
    for (size_t k = at; firm && k <= to && k < tokens->count; k++)
        if (k > at && tokens->at[k].capitals && firm_word(tokens, k))
            return 0; // stamped "RETURN TO HALVERTON DAIRY"
    bool home =
        ANY(tokens, i, "collect", "pick", "lives", "address") || ANY(tokens, i + 1, "live", "address");
    while (home && token_is(tokens, to, ",") && person_named(note, to + 1))
        to = person_name_end(note, to + 1);
    return person_keep_back(note, at, to);
}

// "Cyril built it", "the Somebodies had it in their front room", "Ida's chair, we called it", "Ned next
// door".
static size_t read_doing(struct note *note, size_t i) {
    static const char *const deeds[] = {
        "had it",      "had this",    "had them",     "built it",     "made it",        "used it",
        "used this",   "gave it",     "gave me",      "gave us",      "played it",      "owned it",
        "owned this",  "bought it",   "sold me",      "sold it",      "told me",        "told us",
        "said it",     "said there",  "said they",    "reckoned",     "reckons",        "swore",
        "left it",     "left me",     "wore it",      "carried it",   "who lives",      "who lived",
        "who had",     "who owned",   "lived",        "died",         "next door",      "down the",
        "over the",    "up the",      "across the",   "the grocer",   "the baker",      "the butcher",
        "the milkman", "the plumber", "the vicar",    "the farmer",   "the postman",    "the dealer",
        "from the",    "played with", "wants it",     "wants shot",   "thinks it",      "says it",
        "says there",  "at number",   "fixed it",     "mended it",    "repaired it",    "cleaned it",
        "loved it",    "adored it",   "loved this",   "drove it",     "rode it",        "learnt on",
        "learned on",  "swore by",    "kept it",      "always said",  "always had",     "at the",
        "will answer", "can show",    "is selling",   "keeps it",     "found it",       "rewired it",
        "knitted it",  "carved it",   "wove it",      "turned it",    "painted it",     "sewed it",
        "stitched it", "restored it", "varnished it", "crocheted it", "embroidered it", "framed it",
        "bound it"};
    static const char *const places[] = {
        "room",       "kitchen",    "garage", "attic",  "shop",      "surgery",   "house",    "estate",
        "farm",       "shed",       "loft",   "barn",   "workshop",  "studio",    "study",    "office",
        "desk",       "collection", "widow",  "family", "sale",      "auction",   "yard",     "cottage",
        "cellar",     "parlour",    "parlor", "mother", "father",    "wife",      "husband",  "son",
        "daughter",   "boat",       "place",  "stall",  "old",       "van",       "bedroom",  "garden",
        "allotment",  "chair",      "things", "stuff",  "clearance", "clear-out", "clearout", "clear",
        "retirement", "jumble",     "bag",    "box",    "lot",       "pile",      "brother",  "sister",
        "mum",        "mom",        "dad",    "nan",    "children",  "mate",      "friend",   "front",
        "back",       "side"};
    const struct tokens *tokens = &note->tokens;
    struct noun_found noun;
    const char *quote = strchr(tokens->at[i].fold, '\'');
    bool verb = quote && !text_same(quote, "'s"); // "Haven't had it running"
    if (verb ||
        ANY(tokens, i, "never", "not", "nobody", "somebody", "someone", "we", "they", "he", "she", "you",
            "only", "ever", "always", "just", "also", "then", "who", "once", "that", "this", "which", "and",
            "but", "so", "people", "others", "both", "all", "nothing", "something", "whoever", "one"))
        return 0;
    bool opens =
        person_capital(note, i) && tokens->at[i].starts && !noun_at(note, i, &noun) && !note->fault_word[i];
    if (!(person_named(note, i) || opens) || is_mark(tokens, i)) return 0;
    size_t to = person_name_end(note, i), size = strlen(tokens->at[to - 1].fold);
    bool owner = size > 2 && strstr(tokens->at[to - 1].fold + size - 2, "'") != NULL;
    bool whose = owner && i > 0 && is_stop(tokens, to) &&
                 ANY(tokens, i - 1, "it's", "was", "is", "were", "its", "they're", "once"); // "it's Sam's"
    // "It was Dad's and he never left it off": nobody's brand, however it goes on
    whose |= to == i + 1 && token_among(tokens, i, owns, COUNT(owns));
    if (whose) return person_keep_back(note, i, to);
    bool place = token_among(tokens, to, places, sizeof places / sizeof *places) &&
                 (owner || ANY(tokens, to, "estate", "family", "collection", "household", "clearance"));
    bool deed = token_longest(tokens, to, deeds, sizeof deeds / sizeof *deeds) > 0;
    const char *where; // "Somebody across the dial": no neighbor, but what is written there
    if (deed && ANY(tokens, to, "across", "down", "over", "up") && place_at(note, to, &where)) deed = false;
    bool maker = deed && ANY(tokens, to, "made", "at", "from", "down", "up", "over") && english_at(note, i);
    if (!place && (!deed || maker)) return 0;
    bool own = ANY(tokens, to + 1, "it", "this", "them", "me", "us"); // "Cyril built it"
    if (opens && english_at(note, i) && !(deed && own)) return 0;
    if (deed && ANY(tokens, to, "at", "from") && !(i > 0 && ANY(tokens, i - 1, "by", "old", "from", "off")))
        return 0;
    return person_keep_back(note, i, to);
}

// "Blade stamped", "the lock is marked".
static bool is_marked_part(const struct note *note, size_t i) {
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &note->tokens;
    for (size_t k = i; k < i + WORDS_MOST && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
        if (k > i && ANY(tokens, k, "stamped", "marked", "engraved", "embossed", "signed", "says", "reads",
                         "impressed", "cast"))
            return true;
    return false;
}

// "A name tape: J HOLLOWAY", "old label inside: Miss D. Somebody", "in biro: P Somebody 5C".
static size_t read_tape(struct note *note, size_t i) {
    static const char *const cues[] = {"name tape",
                                       "name tag",
                                       "name label",
                                       "luggage tag",
                                       "luggage label",
                                       "address label",
                                       "child's name",
                                       "kid's name",
                                       "boy's name",
                                       "girl's name",
                                       "in biro",
                                       "in pencil",
                                       "in pen",
                                       "in marker",
                                       "name inside",
                                       "laundry name",
                                       "hospital tag",
                                       "school name",
                                       "hospital label",
                                       "name of its owner",
                                       "name in the lid",
                                       "you can read",
                                       "name on the flyleaf",
                                       "in felt tip",
                                       "postcode",
                                       "name burned",
                                       "name burnt",
                                       "name :",
                                       "name is",
                                       "names :",
                                       "id card",
                                       "identity card",
                                       "ration book",
                                       "school report",
                                       "births of",
                                       "seller's name",
                                       "engraved to",
                                       "engraved winners",
                                       "winners :",
                                       "name carved",
                                       "name cut",
                                       "name scratched",
                                       "name painted",
                                       "name stencilled",
                                       "name stenciled",
                                       "name inked",
                                       "name written",
                                       "name in pencil",
                                       "name in ink",
                                       "name and address",
                                       "names of",
                                       "names on the front",
                                       "names on the cover",
                                       "names on the covers",
                                       "names inside",
                                       "have names",
                                       "has names",
                                       "pupil's name",
                                       "pupils names",
                                       "names in the front"};
    enum { FAR = 12 };
    const struct tokens *tokens = &note->tokens;
    size_t n = token_longest(tokens, i, cues, sizeof cues / sizeof *cues), end = 0;
    if (!n && ANY(tokens, i, "owner's", "owners", "owner", "owners'") &&
        ANY(tokens, i + 1, "name", "names", "stamp", "stamps", "mark", "marks", "label", "labels", "brand",
            "brands", "tag", "plate", "initials"))
        n = 2;
    for (size_t k = i; n && token_is(tokens, i, "you") && k > 0 && k + FAR > i;
         k--) // "label half there, you can read"
        if (ANY(tokens, k - 1, "label", "badge", "transfer", "decal", "plate", "sticker", "lettering",
                "maker's"))
            return 0;
    if (n && token_is(tokens, i, "in") && i > 0 &&
        ANY(tokens, i - 1, "signed", "titled", "numbered", "dated"))
        return 0; // whoever drew it
    for (size_t at = i + n; n && at < tokens->count && at < i + n + FAR; at++) {
        if (tokens->at[at].stop >= STOP_SENTENCE) break;
        // "Owner's initials on the handle, blade stamped …": the maker's
        if (n == 2 && tokens->at[at].stop == STOP_COMMA && is_marked_part(note, at + 1)) break;
        if (!person_named(note, at) || token_is(tokens, at, "\"") || number_may_be(tokens, at)) continue;
        if (at == i + n && ANY(tokens, i, "engraved") && english_at(note, at) &&
            !person_first_name(note, at) && person_form_end(note, at) == at &&
            strlen(tokens->at[at].fold) > 1)
            return 0; // "engraved TO WEIGH 25 LBS"
        size_t to = person_name_end(note, at);
        // "You can read SALTER ESTATE YARD": capitals without a letter before them are nobody's
        if (token_is(tokens, i, "you") && to > at + 1 && tokens->at[at].capitals &&
            tokens->at[at + 1].capitals && !strchr(tokens->at[at].fold, '.'))
            return 0;
        while (to < tokens->count &&
               (tokens->at[to].kind == TOKEN_CODE || tokens->at[to].kind == TOKEN_FIGURE) &&
               tokens->at[to].to - tokens->at[to].from < 4 && note->taken[to] == TAKEN_NOT)
            to++;
        if (!person_keep_back(note, at, to)) continue;
        end = to;
        at = to - 1;
    }
    bool present = ANY(tokens, i, "engraved");
    const struct flaw *kind = end ? ruleset_flaw(note->rules, present ? "monogram" : "owner-name") : NULL;
    bool known = !kind;
    for (size_t k = 0; k < note->record->flaw_count; k++) known |= note->record->flaws[k].kind == kind;
    if (end && !known && (present || (!note->fault_word[i] && !note->fault_word[i + n - 1]))) {
        struct item_flaw *flaw = note_flaw(note);
        *flaw = (struct item_flaw){.kind = kind, .span = note_span_of(note, i, i + n)};
        if (present && token_is(tokens, end, ".") && tokens->at[end].stop == STOP_NONE) end++; // "J.R."
        size_t place = present ? place_at(note, end, &flaw->where) : 0;
        note_reading(note, i, i + n, arena_format(note->arena, "flaw %s", kind->rule.id),
                     "a name that is nobody's business");
        if (present && note_free(note, i, i + n)) note_take(note, i, i + n, TAKEN_ASIDE); // told
        if (place && note_free(note, end, end + place)) note_take(note, end, end + place, TAKEN_FLAW);
    }
    return end;
}

// Where someone was named, the place behind "of", "in", "at" is theirs: "in Somewhere".
static size_t read_home(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "of", "in", "at", "near", "from") || !person_named(note, i + 1)) return 0;
    return person_keep_back(note, i + 1, person_name_end(note, i + 1));
}

void read_persons(struct note *note) {
    size_t told = SIZE_MAX; // a name was met in this sentence
    bool trade = false;
    for (size_t i = 0; i < note->tokens.count;) {
        const struct token *token = &note->tokens.at[i];
        if (token->stop >= STOP_SENTENCE) told = SIZE_MAX, trade = false;
        trade |= person_of_trade(&note->tokens, i);
        size_t to = 0;
        if (note->taken[i] == TAKEN_NOT && token->stop == STOP_NONE && !trade) {
            to = person_on_paper(note, i);
            if (!to) to = read_titled(note, i);
            if (!to) to = read_call(note, i);
            if (!to) to = read_led(note, i);
            if (!to) to = person_street(note, i);
            if (!to) to = read_tape(note, i);
            if (!to) to = person_by_hand(note, i);
            if (!to) to = person_number(note, i);
            if (!to) to = person_called(note, i);
            if (!to && token->capital) to = person_recorded(note, i);
            if (!to && token->capital) to = person_dedicated(note, i);
            if (!to && token->capital) to = read_doing(note, i);
            if (!to && token->capital) to = person_living(note, i);
            if (!to && told != SIZE_MAX) to = read_home(note, i);
        }
        if (to) told = i;
        i = to > i ? to : i + 1;
    }
}
