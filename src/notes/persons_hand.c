// SPDX-License-Identifier: MIT
// Names that a hand put on a thing or that stand in its papers: "W. Somebody burnt into the handle", "with
// name D. Somebody", "password is". Letters before a surname are a person's form; with "& Sons" or "Ltd"
// behind it the name is a firm's, and the same words name the maker.
#include "notes/persons.h"

#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/place.h"
#include "notes/things.h"
#include "text/order.h"
#include "text/utf8.h"

enum { NAME_TOKENS_MOST = 8, DIGITS_LEAST = 4 };

static bool is_firm(const struct tokens *tokens, size_t from, size_t to) {
    for (size_t i = from; i <= to + 1 && i < tokens->count; i++)
        if (firm_word(tokens, i) || token_is(tokens, i, "&")) return true;
    return false;
}

// "W. Somebody", "J HOLLOWAY", "A.L. Somebody": where a name that begins with letters ends; `i` if it is
// none.
size_t person_form_end(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i, letters = 0;
    while (at < tokens->count && at < i + NAME_TOKENS_MOST && tokens->at[at].kind == TOKEN_WORD &&
           tokens->at[at].capital && note->taken[at] == TAKEN_NOT &&
           (tokens->at[at].to - tokens->at[at].from == 1 || strchr(tokens->at[at].fold, '.'))) {
        letters++;
        at++;
        if (token_is(tokens, at, ".") && tokens->at[at].joined) at++;
    }
    if (!letters || token_is(tokens, i, "i")) return i;
    size_t surname = at;
    while (at < tokens->count && at < surname + 2 && tokens->at[at].capital &&
           tokens->at[at].kind == TOKEN_WORD && note->taken[at] == TAKEN_NOT &&
           tokens->at[at].to - tokens->at[at].from > 2 &&
           (!tokens->at[at].starts || tokens->at[at].joined)) // "J.HOLLOWAY"
        at++;
    return at > surname && !is_firm(tokens, i, at) ? at : i;
}

// First names that are words of English too.
bool person_first_name(const struct note *note, size_t i) {
    static const char *const names[] = {
        "amber",     "april",     "basil",     "ben",       "bert",      "bill",      "bob",      "chase",
        "clay",      "cliff",     "colin",     "daisy",     "dale",      "dan",       "dawn",     "dean",
        "dick",      "dolly",     "don",       "ed",        "faith",     "fern",      "frank",    "gene",
        "george",    "glen",      "grace",     "grant",     "guy",       "harry",     "hazel",    "heath",
        "heather",   "herb",      "holly",     "hope",      "iris",      "ivy",       "jack",     "jay",
        "jean",      "jenny",     "jerry",     "jim",       "jimmy",     "joe",       "john",     "josh",
        "joy",       "june",      "kit",       "lance",     "lily",      "mark",      "martin",   "max",
        "may",       "mike",      "miles",     "molly",     "ned",       "nick",      "olive",    "pat",
        "peg",       "penny",     "pete",      "pearl",     "poppy",     "ray",       "rob",      "robin",
        "rod",       "rose",      "ruby",      "sam",       "sandy",     "sue",       "ted",      "terry",
        "tim",       "toby",      "tom",       "tommy",     "tony",      "vic",       "victor",   "violet",
        "wade",      "wally",     "will",      "albert",    "alfred",    "arthur",    "charles",  "charlie",
        "david",     "doris",     "edith",     "edward",    "elsie",     "emily",     "eric",     "ernest",
        "ethel",     "florence",  "francis",   "fred",      "gladys",    "gordon",    "gwen",     "harold",
        "helen",     "henry",     "herbert",   "hilda",     "ida",       "irene",     "james",    "jane",
        "janet",     "kate",      "keith",     "leonard",   "leslie",    "mabel",     "margaret", "mary",
        "maud",      "nora",      "norman",    "paul",      "percy",     "peter",     "philip",   "ralph",
        "reg",       "richard",   "robert",    "ronald",    "roy",       "ruth",      "samuel",   "sarah",
        "sidney",    "stanley",   "thomas",    "vera",      "walter",    "wilfred",   "william",  "anna",
        "annie",     "alice",     "agnes",     "ada",       "amelia",    "bertha",    "betty",    "beatrice",
        "clara",     "catherine", "charlotte", "cora",      "della",     "dora",      "dorothy",  "edna",
        "eleanor",   "eliza",     "elizabeth", "ella",      "ellen",     "elmer",     "emma",     "esther",
        "etta",      "eva",       "evelyn",    "frances",   "frederick", "gertrude",  "hannah",   "harriet",
        "hattie",    "herman",    "homer",     "ira",       "isaac",     "jacob",     "jessie",   "josephine",
        "julia",     "katherine", "laura",     "lena",      "leo",       "lewis",     "lillian",  "lizzie",
        "louis",     "louise",    "lucy",      "lydia",     "lloyd",     "maggie",    "marie",    "martha",
        "matilda",   "mattie",    "mildred",   "minnie",    "myrtle",    "nancy",     "nathan",   "nellie",
        "nettie",    "oscar",     "otto",      "pauline",   "phoebe",    "rachel",    "rebecca",  "rufus",
        "rudolph",   "sadie",     "sallie",    "sophia",    "susan",     "sylvia",    "theodore", "theresa",
        "virginia",  "winifred",  "wilbur",    "wesley",    "warren",    "vernon",    "alan",     "alfie",
        "andrew",    "barbara",   "benjamin",  "bernard",   "bessie",    "brian",     "cecil",    "chester",
        "christine", "clarence",  "claude",    "clifford",  "daniel",    "deborah",   "dennis",   "derek",
        "diana",     "donald",    "douglas",   "earl",      "edgar",     "edmund",    "edwin",    "elaine",
        "elsa",      "enid",      "ernie",     "eugene",    "eunice",    "felix",     "fiona",    "freda",
        "geoffrey",  "gerald",    "gilbert",   "graham",    "gregory",   "gwendolyn", "hans",     "harvey",
        "hector",    "heinrich",  "horace",    "howard",    "hugh",      "ian",       "isabel",   "ivan",
        "jason",     "jeffrey",   "jennifer",  "jeremy",    "jessica",   "joan",      "joanna",   "joel",
        "johanna",   "jonathan",  "joseph",    "joshua",    "joyce",     "judith",    "karen",    "karl",
        "kathleen",  "kenneth",   "kevin",     "larry",     "lawrence",  "leonora",   "linda",    "lionel",
        "lois",      "lorna",     "lucas",     "luke",      "luther",    "madeleine", "malcolm",  "marcus",
        "marian",    "marion",    "marjorie",  "matthew",   "maureen",   "maurice",   "melvin",   "michael",
        "mona",      "monica",    "moses",     "muriel",    "nathaniel", "neil",      "nigel",    "noel",
        "norah",     "oliver",    "olivia",    "oswald",    "patricia",  "patrick",   "percival", "phyllis",
        "priscilla", "raymond",   "reginald",  "reuben",    "roger",     "roland",    "rosemary", "rowland",
        "russell",   "sally",     "samantha",  "scott",     "sheila",    "shirley",   "simon",    "solomon",
        "stephen",   "steven",    "stuart",    "sybil",     "tabitha",   "timothy",   "ursula",   "valerie",
        "veronica",  "vincent",   "vivian",    "walt",      "wendy",     "winston",   "zachary",  "bobby",
        "billy",     "johnny",    "willie",    "eddie",     "freddie",   "jackie",    "sammy",    "danny",
        "kenny",     "ronnie",    "betsy",     "becky",     "polly",     "susie",     "archie",   "davy",
        "teddy",     "hetty",     "kitty",     "milly",     "rosie",     "tilly",     "winnie",   "judy",
        "marge",     "stu",       "delbert",   "dottie",    "lorraine",  "marilyn",   "beverly",  "carol",
        "donna",     "sharon",    "debbie",    "darlene",   "arlene",    "eileen",    "kathy",    "cathy",
        "diane",     "joanne",    "joann",     "janice",    "norma",     "thelma",    "velma",    "wilma",
        "alma",      "beulah",    "maxine",    "geraldine", "bernice",   "rita",      "stella",   "wanda",
        "yvonne",    "roberta",   "peggy",     "patsy",     "patty",     "pamela",    "audrey",   "carolyn",
        "cheryl",    "cindy",     "connie",    "doreen",    "gail",      "gloria",    "jeanette", "jennie",
        "jill",      "loretta",   "lucille",   "mae",       "marcia",    "marla",     "myra",     "nadine",
        "nell",      "nina",      "paula",     "ramona",    "rhoda",     "tammy",     "trudy",    "verna",
        "vicki",     "winona",    "alvin",     "arnold",    "barney",    "burt",      "calvin",   "carl",
        "clyde",     "curtis",    "darrell",   "dewey",     "doug",      "duane",     "dwight",   "elwood",
        "emil",      "everett",   "floyd",     "gary",      "glenn",     "greg",      "gus",      "harlan",
        "hubert",    "irvin",     "irwin",     "joey",      "ken",       "kurt",      "leland",   "leon",
        "leroy",     "lester",    "lonnie",    "lyle",      "marvin",    "merle",     "milton",   "mitch",
        "nelson",    "orville",   "owen",      "phil",      "randy",     "rick",      "rodney",   "ron",
        "roscoe",    "rudy",      "sherman",   "sid",       "steve",     "todd",      "travis",   "vern",
        "virgil",    "wayne",     "wendell",   "willard",   "willis",    "bobbie",    "dave",     "jeff"};
    return token_among(&note->tokens, i, names, sizeof names / sizeof *names);
}

// "Ida Somebody": two or three words with capitals that no firm's words stand about; the first is a name, or
// one of them is no English.
static size_t full_end(const struct note *note, size_t i) {
    enum { LEAST = 2, MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    if (!person_capital(note, i)) return i;
    bool strange = person_first_name(note, i);
    while (at < i + MOST && (person_named(note, at) || (at == i && strange && person_capital(note, at))) &&
           tokens->at[at].kind == TOKEN_WORD && !(at > i && tokens->at[at].starts)) {
        strange |= !english_at(note, at);
        at++;
    }
    bool goods =
        ANY(tokens, at, "pattern", "design", "ware", "range", "series", "brand", "make", "model", "lamp");
    return at >= i + LEAST && strange && !goods && !is_firm(tokens, i, at) ? at : i;
}

// "Mr Somebody", "Miss Somebody": on a thing they are whoever owned it.
static size_t titled_end(const struct note *note, size_t i) {
    if (!ANY(&note->tokens, i, "mr", "mrs", "miss", "ms", "dr", "rev", "capt", "captain") ||
        note->taken[i] != TAKEN_NOT)
        return i;
    size_t name = i + 1 + (token_is(&note->tokens, i + 1, ".") ? 1 : 0), end = person_name_end(note, name);
    return end > name ? end : i;
}

static size_t person_end(const struct note *note, size_t i) {
    size_t end = person_form_end(note, i);
    if (end == i) end = titled_end(note, i);
    return end > i ? end : full_end(note, i);
}

// A number of a soldier or of a form stands behind the name.
static size_t with_number(const struct note *note, size_t to) {
    const struct tokens *tokens = &note->tokens;
    while (to < tokens->count && note->taken[to] == TAKEN_NOT &&
           (tokens->at[to].kind == TOKEN_FIGURE || tokens->at[to].kind == TOKEN_CODE) &&
           strlen(tokens->at[to].fold) >= DIGITS_LEAST)
        to++;
    return to;
}

static void tell_owner(struct note *note, size_t from, size_t to) {
    const struct flaw *kind = ruleset_flaw(note->rules, "owner-name");
    if (!kind) return;
    for (size_t k = 0; k < note->record->flaw_count; k++)
        if (note->record->flaws[k].kind == kind) return;
    for (size_t k = from; k < to; k++)
        if (note->fault_word[k]) return; // its rule tells it, with the place
    struct item_flaw *flaw = note_flaw(note);
    *flaw = (struct item_flaw){.kind = kind, .span = note_span_of(note, from, to)};
    note_reading(note, from, to, "flaw owner-name", "a name that is nobody's business");
}

void person_tell_owner(struct note *note, size_t from, size_t to, size_t at) {
    enum { FAR = 4 };
    size_t told = note->record->flaw_count;
    tell_owner(note, from, to);
    if (note->record->flaw_count == told) return;
    const char *where = NULL;
    for (size_t k = at; !where && k < at + FAR && k < note->tokens.count; k++)
        if (!place_at(note, k, &where) && note->tokens.at[k].stop >= STOP_COMMA) break;
    if (!where) where = owner_place_before(note, from);
    if (where) note->record->flaws[told].where = utf8_fold(note->arena, where);
}

static bool is_hand(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "painted", "burnt", "burned", "scratched", "inked", "written", "carved",
               "chalked", "biroed", "scrawled", "pencilled", "penciled", "whittled", "crayoned", "stencilled",
               "stenciled", "wrote");
}

// "Crate painted HOLBECK MARSH": what carries goods bears the name of who sold them, unless letters or a
// first name begin it.
static bool is_lettered(const struct note *note, size_t verb, size_t at) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, verb, "painted", "stencilled", "stenciled", "burnt", "burned") ||
        person_first_name(note, at) || !tokens->at[at].capitals || person_form_end(note, at) > at ||
        titled_end(note, at) > at)
        return false;
    for (size_t k = 0; k < verb; k++)
        if (ANY(tokens, k, "crate", "crates", "barrel", "keg", "cask", "sack", "sacks", "churn", "firkin",
                "drum", "cart", "wagon", "sign", "hamper", "bushel", "tub", "pallet", "packing", "milk",
                "sled"))
            return true;
    return false;
}

// "Fire bucket, gold lettering, J. SOMEBODY NO. 2": what a person keeps by them is lettered for its owner.
static size_t by_lettering(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i + 1 + (ANY(tokens, i + 1, ",", ":", "with", "says", "reads") ? 1 : 0);
    size_t to = person_form_end(note, at);
    bool kept = false;
    for (size_t k = 0; to > at && k < i; k++)
        kept |= ANY(tokens, k, "bucket", "trunk", "chest", "box", "bag", "case", "locker", "footlocker",
                    "sled", "paddle", "oar", "canteen", "helmet", "hat", "valise", "suitcase", "toolbox",
                    "kit", "buckets");
    if (!kept) return 0;
    tell_owner(note, i, i + 1);
    while (to < tokens->count && (tokens->at[to].kind == TOKEN_FIGURE || ANY(tokens, to, "no", ".")) &&
           tokens->at[to].stop == STOP_NONE && note->taken[to] == TAKEN_NOT)
        to++; // "NO. 2 1803"
    return person_keep_back(note, at, to);
}

// "Earl stitched on the pocket", "Marge Somebody on the plate" of a trophy: whose it was.
static size_t by_needle(struct note *note, size_t i) {
    enum { MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    if (!person_first_name(note, i) || !person_capital(note, i) || tokens->at[i].starts) return 0;
    size_t to = i + 1;
    while (to < i + MOST && person_capital(note, to) && tokens->at[to].kind == TOKEN_WORD &&
           !tokens->at[to].starts)
        to++;
    if (is_firm(tokens, i, to)) return 0;
    size_t at = to + ANY(tokens, to, "is", "was");
    bool worked = ANY(tokens, at, "stitched", "embroidered", "engraved", "sewn", "etched", "inscribed",
                      "monogrammed") &&
                  ANY(tokens, at + 1, "on", "in", "across", "inside", "over");
    bool won = false;
    for (size_t k = 0; k < i && !worked; k++)
        won |= ANY(tokens, k, "trophy", "plaque", "award", "medal", "trophies", "cup");
    bool plate = won && ANY(tokens, to, "on") && ANY(tokens, to + 1, "the", "it", "its", "a");
    if (!worked && !plate) return 0;
    tell_owner(note, worked ? at : to, worked ? at + 1 : to + 1);
    return person_keep_back(note, i, to);
}

// "Painted F. Somebody on the front", "W. Somebody burnt into it".
static size_t by_hand(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i, "lettering", "lettered", "letters")) return by_lettering(note, i);
    size_t needle = by_needle(note, i);
    if (needle) return needle;
    if (is_hand(note, i)) {
        size_t at = i + 1;
        while (ANY(tokens, at, "with", "on", "in", "it", "the", "a", "name", ":", "says", "white", "black",
                   "inside") &&
               at < i + 5)
            at++;
        const char *where;
        size_t place = place_at(note, at, &where); // "painted on the front J. SOMEBODY"
        if (place && person_form_end(note, at + place) > at + place) at += place;
        size_t to =
            i > 0 && token_is(tokens, i - 1, "hand") ? person_form_end(note, at) : person_end(note, at);
        if (to > at && is_lettered(note, i, at)) return 0;
        // "Painted the name Somebody on it"
        bool named = at > i + 1 && token_is(tokens, at - 1, "name") && !tokens->flat && !tokens->shouts;
        while (named && to < tokens->count && to < at + 3 && tokens->at[to].capital &&
               tokens->at[to].kind == TOKEN_WORD && note->taken[to] == TAKEN_NOT && !is_firm(tokens, at, to))
            to++;
        // "Carved with KEV 4 TRACE": whatever letters a knife left
        bool cut = ANY(tokens, i, "carved", "scratched", "whittled") && token_is(tokens, i + 1, "with");
        while (cut && to < tokens->count && to < at + NAME_TOKENS_MOST && note->taken[to] == TAKEN_NOT &&
               tokens->at[to].stop == STOP_NONE &&
               (tokens->at[to].capitals || (to > at && tokens->at[to].kind == TOKEN_FIGURE)))
            to++;
        if (to == at) return 0;
        to = with_number(note, to);
        tell_owner(note, i, i + 1);
        return person_keep_back(note, at, to);
    }
    size_t to = person_end(note, i);
    if (to == i && person_first_name(note, i) && person_capital(note, i) && is_hand(note, i + 1) &&
        !ANY(tokens, i + 1, "painted", "stencilled", "stenciled"))
        to = i + 1; // "Gwen scratched in the paint"
    if (to == i) return 0;
    to = with_number(note, to);
    size_t at = to;
    while (ANY(tokens, at, "is", "was", "has", "been", "neatly", "roughly", "all", "twice") && at < to + 3)
        at++;
    if (!is_hand(note, at) || token_is(tokens, at + 1, "by")) return 0;
    tell_owner(note, at, at + 1);
    return person_keep_back(note, i, to);
}

// "2214086 SOMEBODY T.", "40213 R. SOMEBODY": a soldier's number, and whose it is.
static size_t by_service(struct note *note, size_t i) {
    enum { LEAST = 5 };
    const struct tokens *tokens = &note->tokens;
    const char *fold = tokens->at[i].fold;
    if (tokens->at[i].kind != TOKEN_FIGURE || note->taken[i] != TAKEN_NOT || strlen(fold) < LEAST ||
        strspn(fold, "0123456789") != strlen(fold) || tokens->shouts)
        return 0;
    size_t to = person_form_end(note, i + 1), name = i + 1;
    if (to == name && name + 1 < tokens->count && tokens->at[name].kind == TOKEN_WORD &&
        tokens->at[name].capital && tokens->at[name].to - tokens->at[name].from > 2) {
        while (name + 1 < tokens->count && tokens->at[name + 1].capital &&
               tokens->at[name + 1].kind == TOKEN_WORD && note->taken[name + 1] == TAKEN_NOT &&
               (tokens->at[name + 1].to - tokens->at[name + 1].from == 1 ||
                strchr(tokens->at[name + 1].fold, '.')))
            to = ++name + 1;
        if (to > i + 1 && is_firm(tokens, i + 1, to)) return 0;
    }
    if (to <= i + 1) return 0;
    tell_owner(note, i, to);
    return person_keep_back(note, i, to);
}

// "Box with name D. Somebody", "in the name of L. Somebody".
static size_t by_name(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!token_is(tokens, i, "name") ||
        ANY(tokens, i - (i ? 1 : 0), "maker's", "makers", "brand", "trade", "pattern", "studio", "firm",
            "firm's", "shop", "store", "company", "company's", "business", "mill", "brewery", "dairy",
            "printer's", "publisher's", "photographer's", "studio's", "manufacturer's"))
        return 0;
    size_t at = i + 1;
    while (ANY(tokens, at, ":", "is", "was", "of", "says", "on", "in", "it", "inside", "reads", "the", "its",
               "case", "lid", "back", "front", "box", "bag", "side", "base", "strap", "cover", "flap") &&
           at < i + 7)
        at++;
    size_t to = person_end(note, at);
    // "The man's name was Somebody"
    bool whose = i > 0 && (strchr(tokens->at[i - 1].fold, '\'') || ANY(tokens, i - 1, "his", "her", "their"));
    if (to == at && whose && ANY(tokens, at - 1, "was", "is", ":") && person_named(note, at))
        to = person_name_end(note, at);
    if (to == at) return 0;
    tell_owner(note, i, i + 1);
    return person_keep_back(note, at, with_number(note, to));
}

// "Password is Sunflower22", "PIN 4471", "the code is 9930".
static size_t by_secret(struct note *note, size_t i) {
    static const char *const cues[] = {"password is",    "password",   "passcode is",    "passcode",
                                       "pin is",         "pin number", "pin code",       "login is",
                                       "log in is",      "code is",    "combination is", "unlock code",
                                       "account number", "sort code",  "safe code"};
    const struct tokens *tokens = &note->tokens;
    size_t n = token_longest(tokens, i, cues, sizeof cues / sizeof *cues), at = i + n;
    if (!n) return 0;
    while (ANY(tokens, at, ":", "is", "=") && at < i + n + 2) at++;
    if (at >= tokens->count || tokens->at[at].stop != STOP_NONE) return 0;
    bool word = tokens->at[at].kind == TOKEN_WORD;
    if (word && (!tokens->at[at].capital || ANY(tokens, at, "I", "i")) &&
        !token_phrase(tokens, i, "password is"))
        return 0;
    if (ANY(tokens, at, "not", "unknown", "gone", "lost", "missing", "protected", "locked", "needed", "on",
            "still"))
        return 0;
    size_t to = at + 1;
    while (to < tokens->count && (tokens->at[to].kind == TOKEN_FIGURE || token_is(tokens, to, "-")) &&
           tokens->at[to].stop == STOP_NONE)
        to++;
    return person_keep_back(note, at, to);
}

// "Tel: Marden 214", "phone Ambrey 37": an exchange and its number.
static size_t by_exchange(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "tel", "telephone", "phone", "telegrams")) return 0;
    size_t at = i + 1;
    while (ANY(tokens, at, ".", ":", "no", "number", "is") && at < i + 4) at++;
    if (at + 1 >= tokens->count || at == i || tokens->at[at].kind != TOKEN_WORD || !tokens->at[at].capital ||
        tokens->at[at + 1].kind != TOKEN_FIGURE || tokens->at[at].stop != STOP_NONE ||
        strspn(tokens->at[at + 1].fold, "0123456789") != strlen(tokens->at[at + 1].fold) ||
        strlen(tokens->at[at + 1].fold) < 2)
        return 0;
    return person_keep_back(note, at, at + 2);
}

// "A picture of our Keith at the farm", "my Arthur used it".
static size_t by_ours(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct noun_found noun;
    if (!ANY(tokens, i, "our", "my") || !person_named(note, i + 1) || noun_at(note, i + 1, &noun)) return 0;
    size_t to = person_name_end(note, i + 1);
    bool ends =
        to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
        ANY(tokens, to, "at", "in", "on", "when", "with", "and", "had", "is", "was", "used", "loved", "as",
            "outside", "said", "says", "made", "built", "from", "who", "would", "never", "always");
    return ends ? person_keep_back(note, i + 1, to) : 0;
}

// "Tools ex Jack Somebody, joiner": who had it before.
static size_t by_former(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "ex", "late") || !person_named(note, i + 1) || tokens->at[i].stop != STOP_NONE)
        return 0;
    size_t to = person_name_end(note, i + 1);
    if (to < i + 3) return 0;
    return is_firm(tokens, i + 1, to) ? 0 : person_keep_back(note, i + 1, to);
}

// "Ida Somebody on the flyleaf", "Ida Somebody, 12 Quarry Lane": in a book or with a street a name is an
// owner's.
static size_t by_full_name(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t to = full_end(note, i), brief = to;
    if (to == i) brief = person_form_end(note, i);
    if (brief == i && person_first_name(note, i) && person_capital(note, i)) brief = i + 1;
    if (to == i && brief > i && token_is(tokens, brief, ",") && brief + 1 < tokens->count &&
        tokens->at[brief + 1].kind == TOKEN_FIGURE) { // "E. Somebody, 12 Quarry Lane"
        size_t home = person_street(note, brief + 1);
        return home && person_keep_back(note, i, brief) ? home : 0;
    }
    static const char *const honors[] = {"for long service",  "for his service",   "in recognition",
                                         "on his retirement", "on her retirement", "for services",
                                         "on retirement",     "from his friends"};
    if (brief > i && token_longest(tokens, brief, honors, sizeof honors / sizeof *honors)) {
        tell_owner(note, i, brief);
        return person_keep_back(note, i, brief);
    }
    if (to == i) return 0;
    static const char *const leaves[] = {"flyleaf",        "fly leaf",   "endpaper",     "end paper",
                                         "front endpaper", "bookplate",  "title page",   "first page",
                                         "front page",     "half title", "inside cover", "name tag",
                                         "luggage label",  "luggage tag"};
    size_t at = to + 1;
    while (ANY(tokens, at, "the", "its", "a", "front", "back") && at < to + 3) at++;
    bool leaf = ANY(tokens, to, "on", "in", "inside") &&
                token_longest(tokens, at, leaves, sizeof leaves / sizeof *leaves);
    if (leaf) tell_owner(note, to, at);
    if (leaf) return person_keep_back(note, i, to);
    if (!token_is(tokens, to, ",") || to + 1 >= tokens->count || tokens->at[to + 1].kind != TOKEN_FIGURE)
        return 0;
    size_t street = person_street(note, to + 1);
    if (!street) return 0;
    person_keep_back(note, i, to);
    return street;
}

// "From Frank at the garage", "gave Jerry ten for it": who is told by a first name.
static size_t by_dealing(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    bool paid = ANY(tokens, i, "gave", "paid", "owed", "owe", "thank", "helped", "phoned");
    if (!paid && !ANY(tokens, i, "from", "off", "via")) return 0;
    if (tokens->at[i].stop != STOP_NONE || !person_capital(note, i + 1) || !person_first_name(note, i + 1))
        return 0;
    size_t to = person_name_end(note, i + 1);
    if (is_firm(tokens, i + 1, to)) return 0;
    bool ends =
        to >= tokens->count || tokens->at[to].stop != STOP_NONE || tokens->at[to].kind == TOKEN_FIGURE ||
        ANY(tokens, to, "at", "in", "on", "next", "down", "up", "over", "across", "who", "when", "by", "and",
            "the", "my", "our", "his", "for", "ten", "five", "twenty", "back", "years", "last", "as");
    return paid || ends ? person_keep_back(note, i + 1, to) : 0;
}

// "Martha's initials", "Bobby's name in it"; but "maker's name".
static size_t by_possession(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const char *fold = tokens->at[i].fold;
    size_t size = strlen(fold);
    if (size < 4 || strcmp(fold + size - 2, "'s") != 0 || !tokens->at[i].capital ||
        note->taken[i] != TAKEN_NOT || !ANY(tokens, i + 1, "initials", "name", "signature", "monogram") ||
        ANY(tokens, i, "maker's", "owner's", "somebody's", "someone's", "artist's", "potter's", "carver's",
            "firm's", "company's", "kid's", "child's", "pupil's", "family's", "seller's", "shop's",
            "school's", "boy's", "girl's", "lady's", "man's", "woman's", "soldier's", "sailor's", "farmer's",
            "there's", "it's", "engraver's", "author's", "printer's", "smith's", "here's", "what's", "that's",
            "who's"))
        return 0;
    return person_keep_back(note, i, i + 1);
}

// '"To Helen, love Frank, 1938"': a dedication, all of it.
static size_t by_dedication(struct note *note, size_t i) {
    enum { MOST = 24 };
    const struct tokens *tokens = &note->tokens;
    if (!token_is(tokens, i, "\"") ||
        !ANY(tokens, i + 1, "to", "dear", "for", "from", "with", "love", "happy", "in"))
        return 0;
    bool named = false;
    for (size_t k = i + 1; k < tokens->count && k < i + MOST; k++) {
        if (token_is(tokens, k, "\"")) {
            if (!named || !note_free(note, i + 1, k)) return 0;
            tell_owner(note, i, i + 1);
            return person_keep_back(note, i + 1, k);
        }
        named |= person_capital(note, k) && person_first_name(note, k);
    }
    return 0;
}

size_t person_by_hand(struct note *note, size_t i) {
    size_t to = by_hand(note, i);
    if (!to) to = by_dedication(note, i);
    if (!to) to = by_dealing(note, i);
    if (!to && note->tokens.at[i].capital) to = by_possession(note, i);
    if (!to) to = by_service(note, i);
    if (!to && note->tokens.at[i].capital) to = by_full_name(note, i);
    if (!to) to = by_name(note, i);
    if (!to) to = by_secret(note, i);
    if (!to) to = by_exchange(note, i);
    if (!to) to = by_former(note, i);
    return to ? to : by_ours(note, i);
}
