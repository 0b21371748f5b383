// SPDX-License-Identifier: MIT
// Makers, patterns with names, models, and what a part fits. A name is a run of words with capitals where
// none is due, or words that a cue announces ("by", "made by", "pattern is"). Where a capital is due, at the
// start of a sentence, only a word that is no English makes a name. In a note without capitals only cues
// count.
#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/festivals.h"
#include "notes/things.h"
#include "notes/unsure.h"
#include "notes/works.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_plain_word(const struct note *note, size_t i) {
    struct word_entry entry;
    struct noun_found noun;
    uint32_t any = (1u << USE_COUNT) - 1;
    return word_at(note, i, any, &entry) || noun_at(note, i, &noun) || (note->book && english_at(note, i));
}

static bool is_never(const struct note *note, size_t i) {
    static const char *const never[] = {
        "fourth",       "i",         "i'm",        "i've",       "it",         "it's",      "the",
        "no",           "not",       "two",        "three",      "four",       "one",       "japan",
        "germany",      "england",   "china",      "usa",        "u.s.a",      "france",    "italy",
        "mondays",      "tuesdays",  "wednesday",  "wednesdays", "thursday",   "thursdays", "fridays",
        "saturdays",    "sundays",   "made",       "monday",     "tuesday",    "sunday",    "saturday",
        "friday",       "january",   "march",      "april",      "june",       "july",      "august",
        "september",    "october",   "november",   "december",   "english",    "german",    "french",
        "japanese",     "chinese",   "american",   "i'll",       "i'd",        "ok",        "wednesday",
        "thursday",     "february",  "italian",    "british",    "uk",         "eu",        "us",
        "xl",           "xxl",       "xs",         "mk",         "asian",      "african",   "indian",
        "mexican",      "spanish",   "swedish",    "danish",     "irish",      "scottish",  "dutch",
        "christmas",    "easter",    "halloween",  "type",       "model",      "s&p",       "b&w",
        "euc",          "vguc",      "guc",        "nwt",        "nwot",       "nib",       "nos",
        "bnib",         "htf",       "oop",        "ooak",       "obo",        "fyi",       "lol",
        "omg",          "tlc",       "asap",       "imo",        "idk",        "tbh",       "arabic",
        "russian",      "persian",   "turkish",    "korean",     "hebrew",     "greek",     "latin",
        "polish",       "hungarian", "norwegian",  "finnish",    "welsh",      "canadian",  "australian",
        "scandinavian", "european",  "oriental",   "vol",        "vols",       "volume",    "volumes",
        "frontis",      "plate",     "joints",     "size",       "usb",        "led",       "diy",
        "ac",           "dc",        "as",         "vgc",        "gc",         "nm",        "fab",
        "in",           "to",        "from",       "for",        "on",         "at",        "with",
        "by",           "of",        "presented",  "memory",     "property",   "roman",     "belgian",
        "austrian",     "swiss",     "portuguese", "czech",      "bavarian",   "bohemian",  "venetian",
        "flemish",      "egyptian",  "moroccan",   "scotch",     "cornish",    "bristol",   "viennese",
        "reg",          "regd",      "pat",        "cat",        "ser",        "mod",       "ref",
        "regn",         "alpine",    "tyrolean",   "nordic",     "celtic",     "baltic",    "parisian",
        "arctic",       "tibetan",   "peruvian",   "januaries",  "februaries", "marches",   "aprils",
        "junes",        "julys",     "augusts",    "septembers", "octobers",   "novembers", "decembers",
        "christmases"};
    if (token_among(&note->tokens, i, never, COUNT(never))) return true;
    const char *word = note->tokens.at[i].fold;
    return word[0] && (!word[1] || word[1] == '\''); // a letter by itself: "key of C", "two X's"
}

// "Lampholder is cracked", "Escutcheonette bent": what a sentence begins with and calls damaged at once is a
// part.
static bool ails_at_once(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE) return false;
    size_t at = i + 1 + ANY(tokens, i + 1, "is", "are", "has", "was");
    while (at < i + 4 && at < tokens->count &&
           ANY(tokens, at, "a", "been", "slightly", "badly", "bit", "come"))
        at++;
    // "Underdish fine": nor is what it praises
    return at < tokens->count &&
           (note->fault_word[at] || ANY(tokens, at, "fine", "ok", "okay", "good", "sound", "perfect",
                                        "intact", "tight", "clean", "works"));
}

// Does token `i` look like part of a name?
static bool is_name_word(const struct note *note, size_t i) {
    if (i >= note->tokens.count || note->taken[i] != TAKEN_NOT) return false;
    const struct token *t = &note->tokens.at[i];
    if (t->kind != TOKEN_WORD || !t->capital || note->tokens.shouts || note->fault_word[i]) return false;
    if (is_never(note, i)) return false;
    static const char *const likeness[] = {"style",   "looking",    "type",    "script",       "manner",
                                           "writing", "characters", "letters", "reproduction", "repro",
                                           "copy",    "replica",    "revival", "inspired",     "lookalike"};
    if (token_among(&note->tokens, i + 1, likeness, COUNT(likeness))) return false; // "Windsor style chairs"
    if (t->fold[0] && t->fold[1] == '-') return false;                              // "T-bar"
    const char *verb = strrchr(t->fold, '\'');
    if (verb && (!strcmp(verb, "'ve") || !strcmp(verb, "'ll") || !strcmp(verb, "'re") ||
                 !strcmp(verb, "'d") || !strcmp(verb, "'t")))
        return false; // "We've no"
    const char *last = strrchr(t->fold, '-');
    if (last && (!strcmp(last, "-type") || !strcmp(last, "-style") || !strcmp(last, "-like"))) return false;
    if (strchr(t->fold, '.') && strlen(t->fold) < 5) return false; // "J.H", by themselves
    if (t->starts &&
        (name_is_compound_part(note, i) || ANY(&note->tokens, i + 1, "needed", "required", "wanted")))
        return false; // "Retin needed"
    struct noun_found noun;
    size_t size = t->to - t->from;
    const char *raw = note->tokens.text + t->from;
    bool codes = size > 2 && raw[size - 1] == 's' && raw[1] >= 'A' && raw[1] <= 'Z'; // "LPs"
    if ((t->capitals || codes) && ((noun_at(note, i, &noun) && noun.to == i + 1) || is_plain_word(note, i)))
        return false; // "LP", "BOX"
    // "WALTERS ELEC CO": capitals that the sentence does not ask for
    bool run = t->starts && t->capitals && i + 1 < note->tokens.count && t->stop == STOP_NONE &&
               note->tokens.at[i + 1].capitals && !english_at(note, i + 1);
    return !t->starts || run || !(is_plain_word(note, i) || ails_at_once(note, i));
}

// "Halliwell & Sons", "ODDMORE & CO".
static bool is_kin(const struct note *note, size_t i) {
    static const char *const words[] = {"sons",     "son",       "co",     "company", "bros",
                                        "brothers", "daughters", "nephew", "partners"};
    return token_among(&note->tokens, i, words, COUNT(words)) && note->tokens.at[i].capital &&
           note->taken[i] == TAKEN_NOT;
}

static size_t name_end(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t end = i;
    if (festival_covers(tokens, i)) return i;
    while (end < tokens->count && end < i + 5) {
        bool more = end > i && tokens->at[end].capital && note->taken[end] == TAKEN_NOT &&
                    tokens->at[end].kind == TOKEN_WORD && !token_is(tokens, end, "no") &&
                    !(is_never(note, end) && tokens->at[end].fold[1]) && !token_is(tokens, end, "i");
        if (is_name_word(note, end) || more) {
            end++;
        } else if (end > i && (token_is(tokens, end, "&") || token_is(tokens, end, "and")) &&
                   (is_name_word(note, end + 1) || is_kin(note, end + 1))) {
            end += 2;
        } else if (end > i && tokens->at[end].capital && tokens->at[end].kind == TOKEN_WORD &&
                   tokens->at[end].stop == STOP_NONE && is_kin(note, end + 1)) {
            end += 2; // "Dunmore Plate Co", whatever they make
        } else
            break;
    }
    return end;
}

static void add(struct note *note, const char *name, size_t from, size_t to, enum sure sure) {
    struct value *value = note_attribute(note);
    *value = (struct value){.name = name,
                            .value = arena_string(note->arena, note_words(note, from, to)),
                            .sure = sure,
                            .span = note_span_of(note, from, to)};
    note_take(note, from, to, TAKEN_VALUE);
    note_reading(note, from, to, arena_format(note->arena, "%s %s", name, value->value),
                 "a name by its capitals and cues");
}

static bool has(const struct note *note, const char *name) {
    for (size_t i = 0; i < note->record->attribute_count; i++)
        if (text_same(note->record->attributes[i].name, name)) return true;
    return false;
}

// "Model RT-10 or RT-1O".
static bool is_either(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    bool next = token_is(tokens, to, "or") && to + 1 < tokens->count && tokens->at[to + 1].kind == TOKEN_CODE;
    bool last = from > 1 && token_is(tokens, from - 1, "or") && tokens->at[from - 2].kind == TOKEN_CODE;
    return next || last;
}

static bool in_doubt(const struct note *note, size_t from, size_t to) {
    bool refused;
    if (name_credit(note, from, to, &refused) != SURE_STATED) return true;
    if (is_either(note, from, to)) return true;
    size_t behind = to + ANY(&note->tokens, to, "\"", "'"); // "\"Louden\"-ish", "\"Enterprize\"-type"
    if (behind > to && ANY(&note->tokens, behind, "type", "style", "like", "looking", "pattern")) return true;
    if (token_is(&note->tokens, behind, "-") &&
        ANY(&note->tokens, behind + 1, "ish", "type", "style", "like", "looking", "esque"))
        return true;
    return unsure_before(note, from) || unsure_behind(note, to);
}

// Which attribute the words around a name make of it: "pattern is Fennel Gate", "the Brambleveil pattern",
// "color is called Heather Dusk". NULL: nothing said.
static const char *called(const struct note *note, size_t from, size_t to) {
    static const char *const keys[][2] = {{"pattern", "pattern"}, {"design", "pattern"}, {"color", "color"},
                                          {"colour", "color"},    {"colorway", "color"}, {"shade", "color"}};
    static const char *const lead[] = {"called", "named", "is", "the", ":", "name"};
    const struct tokens *tokens = &note->tokens;
    for (size_t k = 0; k < 2; k++)
        if (token_is(tokens, to, keys[k][0])) return keys[k][1];
    for (size_t back = 1; back <= 4 && back <= from; back++) {
        for (size_t k = 0; k < COUNT(keys); k++)
            if (token_is(tokens, from - back, keys[k][0])) return keys[k][1];
        if (!token_among(tokens, from - back, lead, COUNT(lead))) break;
    }
    // "Card game called Old Mariners": what it is called, and not who made it
    static const char *const titles[] = {"called", "titled", "entitled"};
    size_t led = from > 1 && ANY(tokens, from - 1, "the", "a") ? from - 1 : from;
    bool titled = led > 1 && token_among(tokens, led - 1, titles, COUNT(titles)) &&
                  tokens->at[led - 2].stop <= STOP_COMMA && !has(note, "name");
    return titled ? "name" : NULL;
}

static bool fits_before(const struct note *note, size_t from) {
    static const char *const words[] = {"fits", "fit", "for", "suits", "suit"};
    const struct tokens *tokens = &note->tokens;
    size_t at = from;
    if (at > 2 && tokens->at[at - 1].kind == TOKEN_FIGURE &&
        ANY(tokens, at - 2, "no", ".")) // "a No. 2 Harbord"
        at -= ANY(tokens, at - 2, ".") && ANY(tokens, at - 3, "no") ? 3 : ANY(tokens, at - 2, "no") ? 2 : 0;
    while (at > 0 && (token_is(tokens, at - 1, "a") || token_is(tokens, at - 1, "an") ||
                      token_is(tokens, at - 1, "the")))
        at--;
    bool one = at < from && !token_is(tokens, at, "the"); // "off a Torvane Eight": no place has an article
    if (one && at > 0 && ANY(tokens, at - 1, "off")) return true;
    if (one && at > 1 && ANY(tokens, at - 1, "of", "from") && ANY(tokens, at - 2, "out", "off")) return true;
    if (at > 1 && token_is(tokens, at - 1, "with") && token_is(tokens, at - 2, "compatible")) return true;
    return at > 0 && token_among(tokens, at - 1, words, COUNT(words));
}

static bool is_model(const struct token *t) {
    static const char *const fittings[] = {
        "pp3",   "pp6", "pp7", "pp9", "pp1", "lr6", "lr20", "cr2032", "b22",  "e27",   "e14",  "b15", "gu10",
        "ba15s", "am3", "u2",  "u7",  "u11", "ss6", "r20",  "r14",    "lr44", "ba15d", "b15d", "bc",  "es"};
    if (t->kind != TOKEN_CODE || strlen(t->fold) >= 16) return false;
    for (size_t k = 0; k < COUNT(fittings); k++)
        if (text_same(t->fold, fittings[k])) return false; // a battery or a bulb
    return t->fold[0] != 'x' || strspn(t->fold + 1, "0123456789") != strlen(t->fold) - 1; // "x1"
}

// "7-R", "808-C", "CB/12": the tokens of one code.
static size_t code_end(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i >= tokens->count || note->taken[i] != TAKEN_NOT) return i;
    const struct token *t = &tokens->at[i];
    if (t->kind != TOKEN_FIGURE && t->kind != TOKEN_CODE && !(t->kind == TOKEN_WORD && t->capitals)) return i;
    size_t end = i + 1;
    while (end + 1 < tokens->count && tokens->at[end].joined && tokens->at[end + 1].joined &&
           (token_is(tokens, end, "-") || token_is(tokens, end, "/")) && note->taken[end + 1] == TAKEN_NOT &&
           tokens->at[end + 1].stop == STOP_NONE)
        end += 2;
    return end;
}

// Behind "model", "model no.", "part no.": where those words begin, `i` where there are none.
static size_t led_from(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    bool number = false;
    while (at > 0 && ANY(tokens, at - 1, ".", "is", "#", "number", "no", ":")) {
        number |= ANY(tokens, at - 1, "#", "number", "no");
        at--;
    }
    // "Impressed shape 412"
    bool shaped = at == i && at > 1 && ANY(tokens, at - 1, "shape", "pattern", "mold", "mould") &&
                  tokens->at[i].kind == TOKEN_FIGURE && strlen(tokens->at[i].fold) > 1 &&
                  (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE);
    bool led = at > 0 && (shaped || ANY(tokens, at - 1, "model", "mod") ||
                          (number && ANY(tokens, at - 1, "part", "pattern", "ref", "catalog", "catalogue",
                                         "shape", "mold", "mould")));
    return led ? at - 1 : i;
}

static bool is_year(const char *figure) {
    return strlen(figure) == 4 && strspn(figure, "0123456789") == 4 && strcmp(figure, "1700") > 0 &&
           strcmp(figure, "2030") < 0;
}

static size_t behind_maker(const struct note *note, size_t i) { // where a model behind the maker would begin
    const struct tokens *tokens = &note->tokens;
    if (token_is(tokens, i, "no") || token_is(tokens, i, "model")) {
        i++;
        while (token_is(tokens, i, ".") || token_is(tokens, i, "no")) i++;
    } else if (token_is(tokens, i, "#"))
        i++;
    return i;
}

static void add_fit(struct note *note, size_t from, size_t to) {
    struct fit *fit = note_fit(note);
    fit->brand = arena_string(note->arena, note_words(note, from, to));
    const struct tokens *tokens = &note->tokens;
    size_t number = behind_maker(note, to), end = number < tokens->count ? code_end(note, number) : number;
    bool numbered =
        end == number + 1 && tokens->at[number].kind == TOKEN_FIGURE &&
        tokens->at[to - 1].stop == STOP_NONE && note->taken[number] == TAKEN_NOT &&
        (number > to || (strlen(tokens->at[number].fold) < 4 && tokens->at[number].stop == STOP_NONE));
    if (to < tokens->count && is_model(&tokens->at[to])) {
        fit->model = arena_string(note->arena, note_words(note, to, to + 1));
        to++;
    } else if (numbered) { // "the Larkmoor No. 6 mangle"
        fit->model = arena_string(note->arena, note_words(note, number, end));
        to = end;
    } else if (from > 1 && tokens->at[from - 1].kind == TOKEN_FIGURE && ANY(tokens, from - 2, ".", "no")) {
        fit->model = arena_string(note->arena, note_words(note, from - 1, from)); // "a No. 2 Harbord"
        from--;
    }
    fit->span = note_span_of(note, from, to);
    note_take(note, from, to, TAKEN_FITS);
}

static size_t maker_end(const struct note *note, size_t from, size_t to);

// "By Corran & Pike, the Dunmore no 2": what the maker calls it.
static bool read_model_called(struct note *note, size_t to, enum sure sure) {
    const struct tokens *tokens = &note->tokens;
    size_t at = token_is(tokens, to, ",") ? to + 1 : to;
    if (at == to || at >= tokens->count || !ANY(tokens, at, "the", "their", "its")) return false;
    size_t from = at + (ANY(tokens, at + 1, "\"", "'") ? 2 : 1), end = name_end(note, from);
    if (end == from || tokens->at[end - 1].stop != STOP_NONE) return false;
    size_t number = behind_maker(note, end), code = code_end(note, number);
    if (number > end && code > number) end = code;
    bool over = end >= tokens->count || tokens->at[end].stop != STOP_NONE ||
                note->taken[end] == TAKEN_MEASURE ||
                ANY(tokens, end, "model", "pattern", "type", "in", "with", "\"", "'");
    if (over && !has(note, "model")) add(note, "model", from, end, sure);
    return over;
}

// "II", "A": what tells one of a row from the next.
static bool is_issue(const struct token *t) {
    return t->kind == TOKEN_WORD && t->capital &&
           (t->to - t->from == 1 || (t->capitals && strspn(t->fold, "ivx") == t->to - t->from));
}

// "Mk II", "Mark 3", "Series B" behind a maker's name: where it ends, or `i`.
static size_t issue_end(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "mk", "mark", "series", "type") || tokens->at[i].stop != STOP_NONE) return i;
    if (i + 1 >= tokens->count || !note_free(note, i, i + 2)) return i;
    return is_issue(&tokens->at[i + 1]) || tokens->at[i + 1].kind != TOKEN_WORD ? i + 2 : i;
}

static void read_model_behind(struct note *note, size_t to, enum sure sure) {
    if (read_model_called(note, to, sure)) return;
    size_t issue = issue_end(note, to);
    if (issue > to && !has(note, "model")) {
        add(note, "model", to, issue, sure);
        return;
    }
    if (to + 1 < note->tokens.count && note->tokens.at[to].kind == TOKEN_WORD &&
        note->tokens.at[to].capital && note_free(note, to, to + 2) && !has(note, "model") &&
        (note->tokens.at[to + 1].kind == TOKEN_FIGURE ? maker_end(note, to - 1, to + 1) == to
                                                      : maker_end(note, to - 1, to + 2) == to)) {
        add(note, "model", to, to + 2, sure);
        return;
    }
    bool numbered = token_is(&note->tokens, to, ",") && ANY(&note->tokens, to + 1, "no", "model", "#");
    size_t from = behind_maker(note, to + (numbered ? 1 : 0)), end = code_end(note, from);
    if (numbered && end > from && end < note->tokens.count && note->tokens.at[end].stop == STOP_NONE) return;
    if (end == from || has(note, "model") || note->tokens.at[from].kind == TOKEN_WORD) return;
    bool unit = end < note->tokens.count && note->taken[end] == TAKEN_MEASURE;
    if (from == to && end == from + 1 && is_year(note->tokens.at[from].fold)) return; // "B. Tarling 1950"
    if (!unit) add(note, "model", from, end, sure);
}

// "Cast iron pan no 8,": a number of the goods themselves, where a noun stands before it and a stop behind.
static void read_numbered(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 1; i + 1 < tokens->count; i++) {
        if (!token_is(tokens, i, "no") && !token_is(tokens, i, "number")) continue;
        if (has(note, "model")) return;
        size_t at = token_is(tokens, i + 1, ".") && tokens->at[i + 1].joined ? i + 2 : i + 1;
        struct noun_found noun;
        if (at >= tokens->count || tokens->at[at].kind != TOKEN_FIGURE || note->taken[at] != TAKEN_NOT)
            continue;
        bool ends = at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE;
        bool serial = strlen(tokens->at[at].fold) > 4; // a long one is of that piece alone
        if (ends && !serial && tokens->at[i - 1].stop == STOP_NONE && noun_at(note, i - 1, &noun) &&
            !noun.part)
            add(note, "model", i, at + 1, SURE_STATED);
    }
}

// The letters before a figure: "K 218", "RT 10".
static bool is_series(const struct note *note, size_t i) {
    enum { LETTERS_MOST = 3 };
    const struct token *token = &note->tokens.at[i];
    size_t size = token->to - token->from;
    return i + 1 < note->tokens.count && token->kind == TOKEN_WORD && token->capital &&
           token->stop == STOP_NONE && (token->capitals || size == 1) && size <= LETTERS_MOST;
}

static void read_models(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (note->taken[i] != TAKEN_NOT) continue;
        size_t lead = led_from(note, i);
        bool led = lead < i;
        size_t end = code_end(note, i);
        bool spaced = led && is_series(note, i) && tokens->at[i + 1].kind == TOKEN_FIGURE &&
                      tokens->at[i + 1].stop == STOP_NONE && !is_year(tokens->at[i + 1].fold);
        bool figure = spaced || (end > i && led && (tokens->at[i].kind != TOKEN_WORD || end > i + 1));
        if (!is_model(&tokens->at[i]) && !figure) continue;
        if (end == i) end = i + 1;
        if (!led && !code_has_grounds(note, i)) continue;
        if (spaced) end = code_end(note, i + 1); // "Model K 218", but "Model T 1927"
        if (fits_before(note, i)) {
            struct fit *fit = note_fit(note);
            fit->model = arena_string(note->arena, note_words(note, i, end));
            fit->span = note_span_of(note, i, end);
            note_take(note, i, end, TAKEN_FITS);
        } else
            add(note, "model", i, end, in_doubt(note, i, end) ? SURE_GUESS : SURE_STATED);
        if (led && note_free(note, lead, i)) note_take(note, lead, i, TAKEN_FILLER);
        i = end - 1;
    }
}

// In a note without capitals a word that is no English is a name behind "by" or before a bare figure.
static bool is_flat_name(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const struct token *t = &tokens->at[i];
    if (!(tokens->flat || tokens->shouts) || t->kind != TOKEN_WORD || note->taken[i] != TAKEN_NOT)
        return false;
    if (!note->book || strlen(t->fold) < 4 || is_never(note, i) || is_plain_word(note, i) ||
        note->fault_word[i])
        return false;
    if (i > 0 && token_is(tokens, i - 1, "by")) return true;
    size_t next = behind_maker(note, i + 1);
    return next < tokens->count && note->taken[next] == TAKEN_NOT &&
           (tokens->at[next].kind == TOKEN_FIGURE || tokens->at[next].kind == TOKEN_CODE);
}

static bool is_strange(const struct note *note, size_t from, size_t to) { // holds a word that is no English
    for (size_t i = from; i < to; i++)
        if (note->tokens.at[i].kind == TOKEN_WORD && !english_at(note, i)) return true;
    return false;
}

// "J. Carvell & Son", "R.T. Oddmore": the letters before the name.
static size_t initials_from(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    while (i > 0) {
        size_t dot = token_is(tokens, i - 1, ".") && tokens->at[i - 1].joined ? 1 : 0;
        if (i < 1 + dot) break;
        const struct token *t = &tokens->at[i - 1 - dot];
        bool letter = t->kind == TOKEN_WORD && t->capital &&
                      (t->to - t->from == 1 || (t->capitals && strchr(t->fold, '.')));
        if (!letter || note->taken[i - 1 - dot] != TAKEN_NOT || token_is(tokens, i - 1 - dot, "i") ||
            token_is(tokens, i - 1 - dot, "a"))
            break;
        i -= 1 + dot;
    }
    return i;
}

// "Unlike Hoskaby Works": no word of the name says anything else.
static void leave_open(struct note *note, size_t from, size_t to) {
    if (to > from + 1 && note_free(note, from, to)) note_take(note, from, to, TAKEN_OPEN);
}

// "Velmar Courier 6", "Velmar Super A": a maker's made-up name, then an English word and a figure or a letter
// are what it is called.
static size_t maker_end(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    bool issue = to == from + 3 && is_issue(&tokens->at[to - 1]) && tokens->at[to - 1].fold[0] < 'k';
    if (!issue && (to != from + 2 || to >= tokens->count || tokens->at[to].kind != TOKEN_FIGURE ||
                   strlen(tokens->at[to].fold) > 3 || note->taken[to] != TAKEN_NOT))
        return to;
    if (!note->book || english_at(note, from) || !english_at(note, from + 1)) return to;
    bool firm = is_kin(note, from + 1) || ANY(tokens, from + 1, "works", "foundry", "pottery", "mills", "ltd",
                                              "limited", "street", "road", "ware");
    return firm || has(note, "model") ? to : from + 1;
}

// "Prado something? no, Pravo 300": the next name takes its place.
static bool is_mended_name(const struct note *note, size_t at) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, at, "something", "somebody", "or")) at++;
    if (at < tokens->count && tokens->at[at].kind == TOKEN_FIGURE) at++;
    if (!token_is(tokens, at, "?") || !ANY(tokens, at + 1, "no", "nope", "sorry", "wait")) return false;
    at += token_is(tokens, at + 2, ",") ? 3 : 2;
    if (ANY(tokens, at, "it's", "its", "its", "that's")) at++;
    return name_end(note, at) > at;
}

// "Carved as a Turk's head": whose head it shows.
static bool is_of_a_figure(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    const char *word = tokens->at[to - 1].fold;
    size_t n = strlen(word);
    return to == from + 1 && from > 0 && ANY(tokens, from - 1, "a", "an") && n > 2 && word[n - 1] == 's' &&
           !(word[n - 2] >= 'a' && word[n - 2] <= 'z') && to < tokens->count &&
           ANY(tokens, to, "head", "heads", "face", "mask", "bust", "hat", "cap", "helmet", "foot", "hand",
               "knot");
}

// "School map of Ostermark": what it shows, and nobody who made it.
static bool is_shown(const struct note *note, size_t i) {
    if (i > 0 && ANY(&note->tokens, i - 1, "the")) i--;
    size_t end = name_end(note, i); // "Alps views"
    if (end == i + 1 && ANY(&note->tokens, end, "views", "view", "scenes", "scene", "scenery", "landscapes"))
        return true;
    if (i > 0 && ANY(&note->tokens, i - 1, "shows", "showing", "depicts", "depicting")) return true;
    return i > 1 && ANY(&note->tokens, i - 1, "of") &&
           ANY(&note->tokens, i - 2, "map", "maps", "chart", "charts", "plan", "view", "views", "panorama");
}

static void read_brand(struct note *note, bool strange) {
    static const char *const letters[] = {"monogrammed", "initialed", "monogram", "initials", "mono"};
    bool named = has(note, "brand");
    for (size_t i = 0; i < note->tokens.count && !named; i++) {
        // "Monogram W. Cloth has a spot": a letter, and the next sentence
        size_t first = initials_from(note, i);
        if (first > 0 && token_among(&note->tokens, first - 1, letters, COUNT(letters))) continue;
        size_t end = name_end(note, i);
        if (end == i && is_flat_name(note, i)) end = i + 1;
        if (end == i) continue;
        if (is_shown(note, i)) {
            if (!has(note, "theme")) add(note, "theme", i, end, SURE_STATED);
            i = end - 1;
            continue;
        }
        bool refused;
        name_credit(note, initials_from(note, i), end, &refused); // "after J. Harkwell"
        if (refused) leave_open(note, i, end);
        refused |= name_is_stuff(note, i, end);
        refused |= is_mended_name(note, end) || is_of_a_figure(note, i, end);
        refused |= i > 1 && end == i + 1 && token_is(&note->tokens, i - 1, ",") &&
                   note->taken[i - 2] == TAKEN_MARK; // "Label: Fennimore & Co, Wexcombe": where they were
        refused |= i > 1 && ANY(&note->tokens, i - 1, "in") &&
                   ANY(&note->tokens, i - 2, "made", "printed", "woven", "built", "cast", "bottled");
        // "Size R. Band worn": the letter was a size, and a sentence begins
        refused |= i > 1 && token_is(&note->tokens, i - 1, ".") && note->taken[i - 2] == TAKEN_VALUE &&
                   note->tokens.at[i - 2].to - note->tokens.at[i - 2].from == 1;
        if (!refused && !name_has_grounds(note, i, end)) {
            refused = true;
            leave_open(note, i, end);
        }
        if (!refused && !name_is_no_name(note, i, end) && (!strange || is_strange(note, i, end))) {
            enum sure sure = in_doubt(note, i, end) ? SURE_GUESS : SURE_STATED;
            end = maker_end(note, i, end);
            add(note, "brand", initials_from(note, i), end, sure);
            read_model_behind(note, end, sure);
            named = has(note, "brand");
        }
        i = end - 1;
    }
}

// "By Penrose Clock Co": where the maker is told, no other capital is asked.
static void read_said_maker(struct note *note) {
    static const char *const leads[] = {"made by",  "by",    "maker is",       "maker",
                                        "brand is", "brand", "manufactured by"};
    const struct tokens *tokens = &note->tokens;
    if (has(note, "brand") || tokens->flat) return;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n = token_longest(tokens, i, leads, COUNT(leads));
        if (!n || (n == 1 && name_by_user(note, i)) ||
            (i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
             !ANY(tokens, i - 1, "is", "was", "it's", "made", "and")))
            continue;
        size_t at = i + n + (token_is(tokens, i + n, ":") ? 1 : 0);
        size_t first = at; // "by W. Tredgold"
        while (at < tokens->count && at < first + 6 && tokens->at[at].capital &&
               tokens->at[at].kind == TOKEN_WORD && tokens->at[at].to - tokens->at[at].from == 1)
            at += token_is(tokens, at + 1, ".") ? 2 : 1;
        size_t end = name_end(note, at);
        bool refused = true;
        if (end > at) name_credit(note, at, end, &refused);
        if (refused || name_is_no_name(note, at, end)) continue;
        enum sure sure = in_doubt(note, at, end) ? SURE_GUESS : SURE_STATED;
        add(note, "brand", initials_from(note, at), end, sure);
        read_model_behind(note, end, sure);
        return;
    }
}

// "From the jukebox at the Blue Heron": what nothing makes a maker's is somebody's or somewhere, and none of
// its words is a look of the thing.
static void leave_names_open(struct note *note) {
    for (size_t i = 0; i < note->tokens.count; i++) {
        size_t end = name_end(note, i);
        if (end == i) continue;
        if (!name_has_grounds(note, i, end)) leave_open(note, i, end);
        i = end - 1;
    }
}

void read_names(struct note *note) {
    read_works(note);
    for (size_t i = 0; i < note->tokens.count; i++) {
        size_t end = name_end(note, i);
        if (end == i) continue;
        const char *key = called(note, i, end);
        if (fits_before(note, i)) {
            if (fit_has_grounds(note, i, end))
                add_fit(note, i, end);
            else
                leave_open(note, i, end);
        } else if (key)
            add(note, key, i, end,
                in_doubt(note, i, end) || unsure_behind(note, end + 1) ? SURE_GUESS : SURE_STATED);
        i = end - 1;
    }
    read_told_maker(note);
    read_said_maker(note);
    read_brand(note, note->book != NULL); // words that are no English first: "Rose, by Harkwidge"
    read_brand(note, false);
    leave_names_open(note);
    read_maker_marks(note);
    read_mark_firm(note);
    read_numbered(note);
    read_models(note);
}
