// SPDX-License-Identifier: MIT
// Names of former owners, and what is written with them: "property of …", a name tape, a name in pen, an
// engraved name with a day. That there is one is a fact of the thing; the words themselves are nobody's
// business and are taken as an aside, so that no reader after this one sees them.
#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/note.h"
#include "notes/persons.h"
#include "notes/place.h"
#include "notes/things.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { NAME_MOST = 6, BACK_MOST = 7 };

static bool is_quote(const struct tokens *tokens, size_t i) {
    return token_is(tokens, i, "\"") || token_is(tokens, i, "'");
}

static bool is_name_word(const struct tokens *tokens, size_t i) {
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD) return false;
    static const char *const joints[] = {"and", "to", "from", "de", "van", "von", "of"};
    return tokens->at[i].capital || token_among(tokens, i, joints, COUNT(joints));
}

// A run of names from `i`, with quotes round it, initials, dots and days: where it ends.
static size_t name_end(const struct tokens *tokens, size_t i) {
    size_t end = i;
    bool quoted = is_quote(tokens, i), any = false;
    if (quoted) end++;
    for (size_t n = 0; end < tokens->count && n < NAME_MOST; n++) {
        if (quoted && is_quote(tokens, end)) return end + 1;
        bool dot = any && token_is(tokens, end, ".") && tokens->at[end].joined && end + 1 < tokens->count &&
                   (tokens->at[end + 1].joined || tokens->at[end - 1].kind == TOKEN_WORD);
        bool day = any && tokens->at[end].kind == TOKEN_FIGURE;
        day |= any && tokens->at[end].joined && ANY(tokens, end, "-", "/") && end + 1 < tokens->count &&
               tokens->at[end + 1].joined && tokens->at[end + 1].kind == TOKEN_FIGURE; // "3-2-41"
        day |= any && tokens->at[end].joined && tokens->at[end].kind == TOKEN_CODE;
        bool inside = quoted && tokens->at[end].stop < STOP_SENTENCE;
        if (!is_name_word(tokens, end) && !dot && !day && !inside) break;
        any = true;
        end++;
    }
    return any ? end : i;
}

// "Name tape says …": the tape is read with its place by the rule that names it; only the words are kept
// back.
static bool names_itself(const struct tokens *tokens, size_t cue) {
    return token_is(tokens, cue, "name") && token_is(tokens, cue + 1, "tape");
}

// "Engraved To H. from the crew", "inscribed for Anna": a present.
static bool is_presented(const struct note *note, size_t cue, size_t to) {
    if (!ANY(&note->tokens, cue, "engraved", "inscribed", "engraving", "inscription")) return false;
    return to > cue + 1 || to <= cue; // "Anna is engraved on the lid"
}

// "On the front engraved …", "lid is engraved …": the place before token `cue`.
const char *owner_place_before(const struct note *note, size_t cue) {
    enum { WORDS_MOST = 5 };
    const struct tokens *tokens = &note->tokens;
    size_t end = cue;
    while (end > 0 && ANY(tokens, end - 1, "is", "are", "was", "has", "been", "it's", ",")) end--;
    for (size_t k = end; k > 0 && k + WORDS_MOST > end && tokens->at[k - 1].stop < STOP_SENTENCE; k--) {
        const char *where = NULL;
        if (k - 1 + place_at(note, k - 1, &where) == end && where) return where;
    }
    enum { LED_MOST = 4 }; // "back of the clover charm is engraved"
    for (size_t k = end; k > 1 && k + LED_MOST > end && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (token_is(tokens, k - 1, "of") && place_noun(note, k - 2) &&
            ANY(tokens, k, "the", "a", "one", "its"))
            return note_words(note, k - 2, end);
    return end > 0 && place_noun(note, end - 1) ? note_words(note, end - 1, end) : NULL;
}

static void keep_back(struct note *note, size_t from, size_t to, size_t cue_from, size_t cue_to) {
    bool presented = is_presented(note, cue_from, to);
    const struct flaw *kind = ruleset_flaw(note->rules, presented ? "monogram" : "owner-name");
    if (to <= from || !note_free(note, from, to)) return;
    note_aside(note, from, to);
    words_hide(note, from, to);
    if (!kind || names_itself(&note->tokens, cue_from)) return;
    for (size_t i = 0; i < note->record->flaw_count; i++)
        if (note->record->flaws[i].kind == kind) return;
    struct item_flaw *flaw = note_flaw(note);
    *flaw = (struct item_flaw){.kind = kind, .span = note_span_of(note, cue_from, cue_to)};
    static const char *const inside[] = {"inside", "within"};
    for (size_t i = cue_from > 3 ? cue_from - 3 : 0; i < to + 4 && i < note->tokens.count; i++)
        if (token_among(&note->tokens, i, inside, COUNT(inside))) flaw->where = "inside";
    enum { PLACE_FAR = 3 }; // "is spelled out across the cuff"
    size_t behind = to > cue_to ? to : cue_to;
    for (size_t i = behind; i < behind + PLACE_FAR && i < note->tokens.count; i++) {
        if (place_at(note, i, &flaw->where) || note->tokens.at[i].stop >= STOP_COMMA) break;
    }
    for (size_t k = cue_to; presented && k < from && !flaw->where; k++) place_at(note, k, &flaw->where);
    if (presented && !flaw->where) flaw->where = owner_place_before(note, cue_from);
    if (presented && flaw->where) flaw->where = utf8_fold(note->arena, flaw->where);
    if (presented && from > cue_from) note_take(note, cue_from, from, TAKEN_ASIDE); // told
    note_reading(note, cue_from, cue_to, arena_format(note->arena, "flaw %s", kind->rule.id),
                 "a name that is nobody's business");
}

// "Property of M. Somebody", "name tape says …", "belonged to …".
static const char *const ahead[] = {
    "property of",     "name tape says",  "name tape reads", "name tag says",   "name tag reads",
    "name label says", "named to",        "this belongs to", "ex libris",       "belonging to",
    "with the name",   "owner's name is", "signed by owner", "owner stamped",   "owner stamp",
    "owner's stamp",   "owners stamp",    "owner mark",      "owner marked",    "owner's mark",
    "owners mark",     "owner's brand",   "owner branded",   "by a past owner", "by a previous owner",
    "made out to",     "written out to",  "filled out to",   "filled in for",   "by a former owner",
    "by an old owner", "by an owner",     "by its owner",    "by the owner"};
static const char *const writing[] = {"biro",   "pen",       "pencil", "ink",
                                      "marker", "ballpoint", "felt",   "crayon"};

// "Ida Somebody": the first name before the last, also where a sentence begins with it.
static bool is_whole_name(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    return t->kind == TOKEN_WORD && t->capital && note->taken[i] == TAKEN_NOT && !note->fault_word[i] &&
           (!t->starts || person_first_name(note, i) || !english_at(note, i));
}

// "Sole says TORWELL 2 in blue ink": a make and its size, and nobody's name.
static bool is_sized_make(const struct note *note, size_t from, size_t to) {
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &note->tokens;
    if (tokens->shouts || to < from + 2 || tokens->at[to - 1].kind != TOKEN_FIGURE ||
        tokens->at[to - 1].to - tokens->at[to - 1].from > 2 || !tokens->at[from].capitals ||
        person_first_name(note, from) || !ANY(tokens, from - 1, "says", "reads", "marked", "stamped"))
        return false;
    for (size_t k = from; k > 0 && k + WORDS_MOST > from; k--)
        if (ANY(tokens, k - 1, "name", "names", "owner", "owner's", "tape")) return false;
    return true;
}

static void read_written(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!token_is(tokens, i, "in") || i == 0) return;
    size_t ink =
        i + 1 + ANY(tokens, i + 1, "blue", "black", "red", "green", "faint", "faded", "old", "purple");
    if (!token_among(tokens, ink, writing, COUNT(writing))) return;
    for (size_t back = 1; back <= BACK_MOST && back <= i; back++) {
        size_t from = i - back;
        bool opens = is_quote(tokens, from) ||
                     (tokens->at[from].capital && !tokens->at[from].starts && !tokens->shouts);
        if (tokens->at[from].stop >= STOP_SENTENCE) return;
        if (from > 0 && ANY(tokens, from - 1, "signed", "titled")) return; // whoever drew it
        if (opens && name_end(tokens, from) == i) {
            while (from > 0 && !is_quote(tokens, from) && is_whole_name(note, from - 1) &&
                   name_end(tokens, from - 1) == i)
                from--;
            if (from > 0 && ANY(tokens, from - 1, "signed", "titled", "by")) return;
            if (from > 0 && is_sized_make(note, from, i)) return;
            keep_back(note, from, i, i, ink + 1);
            if (ink > i + 1) note_take(note, i, ink + 1, TAKEN_ASIDE); // "in blue ink" is no blot
            return;
        }
    }
}

bool firm_word(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "sons",          "son",           "co",         "ltd",       "bros",        "brothers",
        "company",       "works",         "inc",        "limited",   "makers",      "pottery",
        "mill",          "mills",         "foundry",    "corp",      "railway",     "railroad",
        "dairy",         "dairies",       "creamery",   "bakery",    "brewery",     "brewers",
        "chemical",      "chemicals",     "union",      "fruit",     "fruits",      "growers",
        "packers",       "packing",       "orchard",    "orchards",  "farm",        "farms",
        "seed",          "seeds",         "stores",     "produce",   "nursery",     "nurseries",
        "lumber",        "timber",        "quarry",     "quarries",  "mining",      "mines",
        "collieries",    "colliery",      "coal",       "mineral",   "oils",        "soap",
        "cement",        "ice",           "cider",      "tobacco",   "biscuits",    "flour",
        "cannery",       "fisheries",     "supply",     "supplies",  "hardware",    "mercantile",
        "transport",     "haulage",       "express",    "freight",   "lines",       "line",
        "garage",        "hotel",         "laundry",    "school",    "college",     "academy",
        "institute",     "club",          "lodge",      "society",   "league",      "church",
        "chapel",        "parish",        "hospital",   "council",   "county",      "brigade",
        "station",       "depot",         "regatta",    "mfg",       "growers'",    "wks",
        "mfrs",          "manufacturing", "ironworks",  "tannery",   "distillery",  "distillers",
        "printers",      "stationers",    "potteries",  "toys",      "wares",       "hatters",
        "knitwear",      "glassworks",    "cutlery",    "furniture", "instruments", "publishing",
        "publishers",    "studios",       "studio",     "optical",   "clothiers",   "outfitters",
        "tailors",       "saddlers",      "opticians",  "jewelers",  "jewellers",   "woodcraft",
        "woodworks",     "choir",         "orchestra",  "library",   "museum",      "theatre",
        "theater",       "cinema",        "department", "dept",      "university",  "ballroom",
        "dance",         "airlines",      "band",       "airways",   "shipping",    "steamship",
        "photographers", "novelty",       "novelties",  "electric"};
    return token_among(tokens, i, words, COUNT(words));
}

// "Engraved Dunwell School 1931", "S.S. ORIEL 1931", a bell with "ORIEL 1931": of a house or a ship, not of
// somebody.
static bool is_institution(const struct note *note, size_t from, size_t to) {
    static const char *const words[] = {"ss",       "s.s",     "hms",   "h.m.s",  "rms",      "r.m.s",
                                        "mv",       "m.v",     "yacht", "fire",   "band",     "regt",
                                        "regiment", "ward",    "cup",   "shield", "champion", "champions",
                                        "winner",   "winners", "prize", "patent", "show",     "fair"};
    const struct tokens *tokens = &note->tokens;
    for (size_t k = from; k < to; k++)
        if (token_among(tokens, k, words, COUNT(words)) || firm_word(tokens, k) || token_is(tokens, k, "&"))
            return true;
    if (!tokens->at[from].capitals || tokens->shouts) return false;
    for (size_t k = 0; k < from; k++)
        if (ANY(tokens, k, "bell", "lifebuoy", "lifebelt", "lifering", "dinghy", "buoy", "oar", "oars"))
            return true;
    return false;
}

static bool is_firm_name(const struct note *note, size_t from, size_t to) {
    for (size_t k = from; k < to; k++)
        if (firm_word(&note->tokens, k)) return true;
    return false;
}

// What its maker engraves.
static bool is_makers_work(const struct note *note, size_t cue, size_t from) {
    static const char *const goods[] = {
        "clock",      "watch", "barometer",  "telescope", "sextant", "compass",     "level",   "theodolite",
        "microscope", "gun",   "lock",       "saw",       "scales",  "scale",       "rule",    "instrument",
        "plane",      "flute", "octant",     "dial",      "sundial", "chronometer", "balance", "protractor",
        "movement",   "blade", "barrel",     "arc",       "print",   "map",         "chart",   "plan",
        "knife",      "razor", "binoculars", "glasses",   "horn",    "bugle",       "trumpet", "cornet"};
    for (size_t k = 0; k < cue; k++)
        if (token_among(&note->tokens, k, goods, COUNT(goods))) return true;
    return ANY(&note->tokens, from > 0 ? from - 1 : 0, "by");
}

// "Lid engraved Arthur", "plate engraved M. Somebody": whose it was, where no maker engraves.
static bool is_somebodys(const struct note *note, size_t cue, size_t from, size_t *to) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->shouts || tokens->flat || tokens->at[from].starts || is_makers_work(note, cue, from))
        return false;
    size_t form = person_form_end(note, from);
    if (form > from && !tokens->at[form - 1].capitals) {
        *to = form;
        return true;
    }
    bool ends = *to >= tokens->count || !ANY(tokens, *to, "&", "bros", "ware", "pattern");
    return ends && *to <= from + 2 && person_first_name(note, from);
}

static bool is_year(const struct tokens *tokens, size_t i) {
    return tokens->at[i].kind == TOKEN_FIGURE && strlen(tokens->at[i].fold) == 4 &&
           strspn(tokens->at[i].fold, "0123456789") == 4;
}

// "Engraved Anna 3.9.41": a name with a day.
static void read_engraved(struct note *note, size_t i) {
    static const char *const cues[] = {"engraved", "inscribed", "engraving"};
    const struct tokens *tokens = &note->tokens;
    if (!token_among(tokens, i, cues, COUNT(cues))) return;
    size_t from = i + 1;
    static const char *const small[] = {"with", "to", "for", "says", "reads", ":"};
    while (token_among(tokens, from, small, COUNT(small))) from++;
    const char *where;
    from += place_at(note, from, &where); // "engraved on the rim Anna 1931"
    if (from >= tokens->count || !(tokens->at[from].capital || is_quote(tokens, from))) return;
    size_t to = name_end(tokens, from);
    static const char *const occasions[] = {"xmas",      "christmas",  "easter",    "jubilee",
                                            "new",       "exhibition", "armistice", "coronation",
                                            "centenary", "midsummer"};
    if (token_among(tokens, from, occasions, COUNT(occasions))) return; // a day, and nobody's name
    if (ANY(tokens, from, "no", "number", "reg", "pat", "patent", "model", "type")) return;
    if (is_institution(note, from, to)) return;
    bool led = from > i + 1 && ANY(tokens, from - 1, "to", "for");
    bool title =
        !tokens->at[from].capitals && // "to Coach Ed", "to Dad"
        ANY(tokens, from, "coach", "dad", "mom", "mum", "mother", "father", "grandma", "grandpa", "teacher",
            "nurse", "uncle", "aunt", "sister", "brother", "daddy", "mommy", "nana", "papa", "pop");
    bool day = led && title;
    if (led && !title && english_at(note, from) && tokens->at[from].to - tokens->at[from].from > 1 &&
        !person_first_name(note, from) && person_form_end(note, from) == from)
        return; // "engraved TO WEIGH 25 LBS"
    for (size_t k = from; k < to; k++)
        day |= tokens->at[k].kind == TOKEN_FIGURE && strlen(tokens->at[k].fold) != 3;
    bool year = to > from && is_year(tokens, to - 1) && !led && !person_first_name(note, from);
    if (year && is_makers_work(note, i, from)) return; // "clock, engraved Torwell 1831"
    if (!day && (is_firm_name(note, from, to) || !is_somebodys(note, i, from, &to))) return;
    keep_back(note, from, to, i, i + 1);
}

// "Clara 1931 is engraved on the handle": the name stands before; but "a rose is engraved on the lid".
static void read_named_before(struct note *note, size_t i) {
    enum { MOST = 5 };
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "engraved", "inscribed", "embroidered", "stitched", "etched", "sewn", "scratched") ||
        !ANY(tokens, i + 1, "on", "in", "inside", "across", "around", "along", "at", "under", "underneath",
             "down"))
        return;
    size_t to = i > 0 && ANY(tokens, i - 1, "is", "was") ? i - 1 : i, from = to;
    while (from > 0 && to - from < MOST && tokens->at[from - 1].stop == STOP_NONE &&
           (tokens->at[from - 1].capital || tokens->at[from - 1].kind == TOKEN_FIGURE ||
            ANY(tokens, from - 1, "and", "&")))
        from--;
    struct word_entry entry;
    if (from == to || !tokens->at[from].capital || !person_first_name(note, from) ||
        is_firm_name(note, from, to) || (to == from + 1 && word_at(note, from, 1u << USE_THEME, &entry)))
        return;
    keep_back(note, from, to, i, i + 1);
}

// A quotation that holds a house number and a street.
static void read_address(struct note *note, size_t i) {
    static const char *const streets[] = {"street",    "st",      "road",     "rd",     "lane", "avenue",
                                          "ave",       "drive",   "terrace",  "close",  "row",  "place",
                                          "court",     "gardens", "crescent", "square", "hill", "way",
                                          "boulevard", "mews",    "grove"};
    const struct tokens *tokens = &note->tokens;
    if (!is_quote(tokens, i)) return;
    bool number = false, street = false;
    for (size_t to = i + 1; to < tokens->count && to < i + 16; to++) {
        number |= tokens->at[to].kind == TOKEN_FIGURE;
        street |= number && token_among(tokens, to, streets, COUNT(streets));
        if (!is_quote(tokens, to)) continue;
        if (street) keep_back(note, i, to + 1, i, i + 1);
        return;
    }
}

// "“Anna” is spelled across the cuff": put there by hand, so no maker's.
static void read_spelled(struct note *note, size_t i) {
    static const char *const ways[] = {"spelled", "spelt",  "stitched",  "sewn",
                                       "inked",   "beaded", "scratched", "carved"};
    const struct tokens *tokens = &note->tokens;
    if (!is_quote(tokens, i) || i + 1 >= tokens->count || !tokens->at[i + 1].capital) return;
    size_t to = name_end(tokens, i);
    if (to <= i || to > i + 4) return;
    size_t at = to;
    while (ANY(tokens, at, "is", "was", "has", "been", "in")) at++;
    bool first = to == i + 3 && person_first_name(note, i + 1) && // '"Bobby" painted on the deck'
                 ANY(tokens, at, "painted", "stenciled", "stencilled", "written", "burned", "burnt",
                     "lettered", "embroidered", "engraved");
    if (first || token_among(tokens, at, ways, COUNT(ways))) keep_back(note, i, to, at, at + 1);
}

// "Walt is stitched over the pocket", "has Walt embroidered on it": a name without quotes. What also grows or
// flies may be a picture.
static void read_stitched(struct note *note, size_t i) {
    static const char *const ways[] = {"stitched",  "embroidered", "sewn",    "sewed",    "inked",  "written",
                                       "scratched", "carved",      "spelled", "lettered", "burned", "burnt",
                                       "painted",   "stenciled",   "penned",  "penciled", "marked"};
    static const char *const pictures[] = {
        "rose",  "ivy",   "holly",  "heather", "lily",   "daisy",   "iris", "poppy", "fern",  "hazel",
        "olive", "robin", "violet", "myrtle",  "clover", "jasmine", "wren", "jay",   "martin"};
    const struct tokens *tokens = &note->tokens;
    if (!tokens->at[i].capital || tokens->shouts || token_among(tokens, i, pictures, COUNT(pictures)) ||
        !person_first_name(note, i) || note->taken[i] != TAKEN_NOT)
        return;
    size_t to = name_end(tokens, i), at = to;
    if (to <= i || to > i + 3 || tokens->at[to - 1].stop != STOP_NONE) return;
    at += ANY(tokens, at, "is", "was");
    bool led =
        i > 0 && tokens->at[i - 1].stop == STOP_NONE && ANY(tokens, i - 1, "has", "had", "with", "name");
    if (at == to && !led) return;
    if (!token_among(tokens, at, ways, COUNT(ways)) || token_is(tokens, at + 1, "by")) return;
    keep_back(note, i, to, at, at + 1);
}

// "A name, DORIS, is scratched on the back": put there by somebody, and no maker's.
static void read_named(struct note *note, size_t i) {
    static const char *const ways[] = {"inked",  "written", "scratched", "penned",   "penciled", "pencilled",
                                       "carved", "sewn",    "stitched",  "burned",   "burnt",    "scrawled",
                                       "in",     "painted", "lettered",  "scribbled"};
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || !token_is(tokens, i, "name") || tokens->shouts ||
        !ANY(tokens, i - 1, "a", "somebody's", "someone's", "child's", "kid's", "boy's", "girl's", "owner's",
             "old"))
        return;
    size_t from = i + 1;
    if (!ANY(tokens, from, ",", "(", ":", "-")) return;
    from++;
    size_t to = from;
    while (to < from + 3 && to < tokens->count && tokens->at[to].kind == TOKEN_WORD &&
           tokens->at[to].capital && !firm_word(tokens, to))
        to++;
    if (to == from || firm_word(tokens, to) || token_is(tokens, to, "&")) return;
    size_t at = to + ANY(tokens, to, ",", ")", "-");
    at += ANY(tokens, at, "is", "was", "has");
    at += ANY(tokens, at, "been", "neatly");
    if (token_among(tokens, at, ways, COUNT(ways))) {
        keep_back(note, from, to, at, at + 1);
        note_take(note, at, at + 1, TAKEN_ASIDE); // told: no scratch of its own
    }
}

// "A family's name I'll leave off (the Trundles)": whatever capital follows in that sentence.
static void read_surname(struct note *note, size_t i) {
    static const char *const cues[] = {"family's name", "family name", "surname", "somebody's name",
                                       "someone's name"};
    const struct tokens *tokens = &note->tokens;
    size_t n = token_first(tokens, i, cues, COUNT(cues));
    for (size_t at = i + n; n && at < tokens->count && at < i + n + 10; at++) {
        if (tokens->at[at].stop >= STOP_SENTENCE) return;
        bool me = token_is(tokens, at, "i") || token_is(tokens, at, "i'll") || token_is(tokens, at, "i've");
        if (tokens->at[at].kind != TOKEN_WORD || !tokens->at[at].capital || me) continue;
        note_aside(note, at, name_end(tokens, at)); // whose it is, a maker's or an owner's, is not said
        return;
    }
}

// "Property of H. Somebody, Route 2": within quotes all that follows says whose, and where they live.
static size_t owned_end(const struct tokens *tokens, size_t cue, size_t from) {
    enum { MOST = 16 };
    size_t to = name_end(tokens, from);
    if (cue == 0 || to == from || !is_quote(tokens, cue - 1)) return to;
    for (size_t k = to; k < from + MOST && k < tokens->count && tokens->at[k].stop < STOP_LINE; k++)
        if (text_same(tokens->at[k].fold, tokens->at[cue - 1].fold)) return k;
    return to;
}

// "“Capt. E. Vallance” on the lid": somebody by title, whose name was put on it; but "Dr. Marl's Salts".
static void read_titled(struct note *note, size_t i) {
    static const char *const titles[] = {
        "capt", "captain", "major", "maj",  "col", "colonel", "lt",  "lieut", "sgt",  "cpl",   "pte",  "gnr",
        "revd", "mr",      "mrs",   "miss", "sir", "lady",    "rev", "cdr",   "adml", "comdr", "nurse"};
    const struct tokens *tokens = &note->tokens;
    if (!is_quote(tokens, i) || !token_among(tokens, i + 1, titles, COUNT(titles))) return;
    enum { TITLED_MOST = 12 };
    size_t to = i + 2;
    while (to < tokens->count && to < i + TITLED_MOST && !is_quote(tokens, to)) to++;
    if (!is_quote(tokens, to++) || to < i + 5) return;
    for (size_t k = i + 1; k < to; k++)
        if (strstr(tokens->at[k].fold, "'s") || firm_word(tokens, k) || token_is(tokens, k, "&")) return;
    keep_back(note, i, to, i + 1, i + 2);
}

// Initials from token `i` on, with the surname in capitals that may follow: "H.M.B.", "L. PELWICK".
static size_t initials_end(const struct tokens *tokens, size_t i) {
    enum { DOTTED_MOST = 6 };
    size_t at = i, letters = 0;
    while (at < tokens->count && tokens->at[at].kind == TOKEN_WORD && tokens->at[at].capital) {
        bool dotted = strchr(tokens->at[at].fold, '.') && strlen(tokens->at[at].fold) <= DOTTED_MOST;
        if (!dotted && tokens->at[at].to - tokens->at[at].from != 1) break;
        letters += dotted ? 2 : 1;
        at++;
        if (token_is(tokens, at, ".") && tokens->at[at].joined) at++;
    }
    if (letters == 0) return i;
    bool surname = at < tokens->count && tokens->at[at].kind == TOKEN_WORD && tokens->at[at].capitals &&
                   tokens->at[at].to - tokens->at[at].from > 2 && !firm_word(tokens, at) &&
                   !ANY(tokens, at + 1, "&", "and", "co", "ltd", "bros");
    if (surname) return at + 1;
    return letters > 1 && at > i + 1 ? at : letters > 1 ? i + 1 : i;
}

// What somebody packs what is theirs into.
static bool is_luggage(const struct note *note) {
    static const char *const goods[] = {"trunk",  "locker", "suitcase", "footlocker", "kitbag",  "satchel",
                                        "valise", "chest",  "hamper",   "rucksack",   "holdall", "knapsack",
                                        "duffel", "case",   "toolbox",  "haversack"};
    for (size_t i = 0; i < note->tokens.count; i++)
        if (token_among(&note->tokens, i, goods, COUNT(goods))) return true;
    return false;
}

// "Stenciled on the front: L. PELWICK", "H.M.B. painted on one end" of a trunk: whose it was.
static void read_lettered(struct note *note, size_t i) {
    static const char *const ways[] = {"stenciled", "stencilled", "painted", "lettered", "burned", "burnt"};
    static const char *const skips[] = {"in", "white", "black", "red", "yellow", "gold", "is", "with", ":"};
    const struct tokens *tokens = &note->tokens;
    if (note->tokens.shouts || !token_among(tokens, i, ways, COUNT(ways)) || !is_luggage(note)) return;
    size_t from = i + 1, before = i;
    const char *where = NULL;
    while (token_among(tokens, from, skips, COUNT(skips))) from++;
    from += place_at(note, from, &where);
    while (token_among(tokens, from, skips, COUNT(skips))) from++;
    size_t to = from < tokens->count ? initials_end(tokens, from) : from;
    if (to > from) {
        size_t told = note->record->flaw_count;
        keep_back(note, from, to, i, i + 1);
        if (note->record->flaw_count > told && where && !note->record->flaws[told].where)
            note->record->flaws[told].where = utf8_fold(note->arena, where);
        note_take(note, i, from, TAKEN_ASIDE); // told
        return;
    }
    for (size_t k = i > 6 ? i - 6 : 0; k < before; k++)
        if (initials_end(tokens, k) == before) {
            keep_back(note, k, before, i, i + 1);
            return;
        }
}

// What is carried by one person, on which letters by themselves are hers.
static bool is_carried(const struct note *note, size_t before) {
    static const char *const goods[] = {
        "bag",       "handbag", "purse", "briefcase", "wallet", "billfold",  "portfolio", "satchel",
        "suitcase",  "valise",  "trunk", "luggage",   "bible",  "diary",     "attache",   "backpack",
        "overnight", "hatbox",  "tote",  "case",      "clutch", "briefcase", "holster",   "belt"};
    for (size_t i = 0; i < before; i++)
        if (token_among(&note->tokens, i, goods, COUNT(goods))) return true;
    return false;
}

// "E.P. stamped in gold on the flap", "embossed E.P. on the lid" of a bag: nobody's business but that they
// are there. A base and a lining bear the letters of a maker.
static void read_stamped(struct note *note, size_t i) {
    enum { BACK = 7, AHEAD = 8 };
    const struct tokens *tokens = &note->tokens;
    const struct flaw *kind = ruleset_flaw(note->rules, "monogram");
    if (!kind || tokens->shouts || !ANY(tokens, i, "stamped", "embossed", "tooled", "monogrammed", "gilt") ||
        !is_carried(note, i))
        return;
    size_t from = i + 1, to = initials_end(tokens, from), end = i;
    while (end > 0 && ANY(tokens, end - 1, "is", "are", "was")) end--;
    for (size_t k = i > BACK ? i - BACK : 0; to <= from && k < end; k++)
        if (initials_end(tokens, k) == end) {
            from = k;
            to = end;
        }
    if (to <= from || !note_free(note, from, to)) return;
    for (size_t k = from; k < to; k++)
        if (tokens->at[k].to - tokens->at[k].from > 2 && !strchr(tokens->at[k].fold, '.'))
            return; // a surname
    const char *where = NULL;
    for (size_t k = to > i ? to : i + 1; k < i + AHEAD && k < tokens->count && !where; k++) {
        if (tokens->at[k].stop >= STOP_COMMA ||
            ANY(tokens, k, "base", "bottom", "inside", "underside", "buckle", "lining", "sole"))
            break;
        place_at(note, k, &where);
    }
    if (where && (strstr(where, "inside") || strstr(where, "bottom") || strstr(where, "base"))) return;
    bool gold = ANY(tokens, i + 1, "in") && ANY(tokens, i + 2, "gold", "gilt", "silver");
    if (!where && !gold) return;
    note_aside(note, from, to);
    words_hide(note, from, to);
    for (size_t k = i; k <= i + 2 * gold; k++) note_take(note, k, k + 1, TAKEN_ASIDE); // told
    struct item_flaw *flaw = note_flaw(note);
    *flaw = (struct item_flaw){.kind = kind, .span = note_span_of(note, i, i + 1)};
    if (where) flaw->where = utf8_fold(note->arena, where);
    note_reading(note, i, i + 1, "flaw monogram", "letters that are nobody's business");
}

void read_owners(struct note *note) {
    for (size_t i = 0; i < note->tokens.count; i++) {
        bool may = token_may_open(&note->tokens, i, (const void *)ahead, COUNT(ahead), sizeof *ahead);
        for (size_t k = 0; may && k < COUNT(ahead); k++) {
            size_t n = token_phrase(&note->tokens, i, ahead[k]);
            size_t end = n ? name_end(&note->tokens, i + n) : 0;
            // "PROPERTY OF TORWELL CHEMICAL CO.": a firm's
            if (n && token_is(&note->tokens, i, "property") && is_institution(note, i + n, end)) continue;
            if (n) keep_back(note, i + n, owned_end(&note->tokens, i, i + n), i, i + n);
        }
        read_written(note, i);
        read_engraved(note, i);
        read_named_before(note, i);
        read_address(note, i);
        read_spelled(note, i);
        read_stitched(note, i);
        read_named(note, i);
        read_surname(note, i);
        read_titled(note, i);
        read_lettered(note, i);
        read_stamped(note, i);
    }
}
