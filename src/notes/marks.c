// SPDX-License-Identifier: MIT
// What is written on the thing, letter by letter. A mark begins behind a verb of writing ("stamped"), behind
// a word for writing ("the letters"), or is a run of capitals with a place behind it; it ends at a stop, a
// place or a verb.
#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/figure.h"
#include "notes/mark_found.h"
#include "notes/mark_words.h"
#include "notes/note.h"
#include "notes/number.h"
#include "notes/persons.h"
#include "notes/place.h"
#include "notes/things.h"
#include "text/buf.h"
#include "text/order.h"
#include "text/utf8.h"

enum { MARK_BYTES_MOST = 80, FLAT_WORDS_MOST = 4 };

// --- what a mark is made of ---

bool mark_is_text(const struct note *note, size_t i) {
    const struct token *token = &note->tokens.at[i];
    if (token->kind == TOKEN_FIGURE || token->kind == TOKEN_CODE) return true;
    return token->kind == TOKEN_WORD && token->capital && !note->tokens.flat;
}

// Small words and signs inside a name: "Made in Italy", "Quorrick & Dunnel", "No. 5".
static bool is_inner(const struct note *note, size_t i) {
    const struct token *token = &note->tokens.at[i];
    bool next = i + 1 < note->tokens.count &&
                (mark_is_text(note, i + 1) || (note->tokens.flat && !mark_is_breaker(note, i + 1)));
    if (!next) return false;
    if (token->kind == TOKEN_SIGN)
        return token->stop == STOP_NONE && strchr("&.-/'#%", token->fold[0]) && token->fold[0];
    if (ANY(&note->tokens, i, "in") && i && ANY(&note->tokens, i - 1, "made", "printed", "woven"))
        return true;
    return !note->tokens.flat &&
           ANY(&note->tokens, i, "of", "in", "the", "and", "de", "et", "by", "for", "est");
}

static bool ends_mark(const struct note *note, size_t from, size_t i) {
    const struct token *token = &note->tokens.at[i];
    if (i > from && token->starts) return true;
    // "Initials J.M. Dent near the base": a fault, with which the next sentence begins
    if (i > from + 1 && note->fault_word[i] && token->capital && !token->capitals &&
        token_is(&note->tokens, i - 1, ".") && i + 1 < note->tokens.count && !note->tokens.at[i + 1].capital)
        return true;
    if (token->stop >= STOP_COMMA || token->fold[0] == '\n') return true;
    if (note->fault_word[i] && !token->capital) return true;
    return false;
}

// A postal code or a telephone number, which was found before.
static bool is_kept_back(const struct note *note, size_t i) {
    enum token_kind kind = note->tokens.at[i].kind;
    return note->taken[i] == TAKEN_ASIDE && (kind == TOKEN_CODE || kind == TOKEN_FIGURE);
}

// Behind words and a figure of theirs stands its unit, and no more.
static bool is_sized(const struct note *note, size_t from, size_t at) {
    const struct tokens *tokens = &note->tokens;
    const char *where;
    return at > from + 1 && tokens->at[from].kind == TOKEN_WORD && tokens->at[at - 1].kind == TOKEN_FIGURE &&
           ANY(tokens, at, "ton", "tons", "cwt", "lb", "lbs", "oz", "pint", "pints", "pt", "quart", "gallon",
               "gal", "volt", "volts", "watt", "watts", "hp", "amp", "inch", "ft", "mm", "ml") &&
           (at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE ||
            place_at(note, at + 1, &where));
}

// A run of capitals and figures from `i` on.
size_t mark_proper_run(const struct note *note, size_t i) {
    size_t at = i, good = i;
    bool dot = false;
    while (at < note->tokens.count && at - i < MARK_WORDS_MOST && (dot || !ends_mark(note, i, at))) {
        bool text = mark_is_text(note, at);
        const char *where;
        if (at > i && is_kept_back(note, at)) break;
        // A place that begins with a capital ends it all the same, but "Torwell Rod Works".
        if (!text && !(at > i && is_inner(note, at))) break;
        if (at > i && token_is(&note->tokens, at, "i") && at + 1 < note->tokens.count &&
            ANY(&note->tokens, at + 1, "think", "guess", "believe", "can", "can't", "could", "couldn't",
                "suppose"))
            break; // "with A. P. I think"
        if (at > i && note->tokens.at[at].kind == TOKEN_WORD && place_at(note, at, &where) &&
            !note->tokens.at[at].capitals && !firm_word(&note->tokens, at + 1))
            break;
        if (note->tokens.at[at].kind == TOKEN_FIGURE) at = mark_figures_end(note, at) - 1;
        at++;
        if (is_sized(note, i, at)) return at + 1; // "Liftwell 2 ton"
        // "TINCT. MYRRH": capitals go on behind the dot of a short form
        const struct token *last = &note->tokens.at[at - 1];
        bool initial = last->to - last->from == 1 && last->kind == TOKEN_WORD; // "F.DUNNICK"
        dot = text && token_is(&note->tokens, at, ".") && note->tokens.at[at].joined &&
              (initial || note->tokens.at[at - 1].capitals) && at + 1 < note->tokens.count &&
              note->tokens.at[at + 1].capitals;
        if (text) good = at;
        if (text && strchr(last->fold, '.') && last->kind == TOKEN_WORD && token_is(&note->tokens, at, ".") &&
            note->tokens.at[at].joined && note->tokens.at[at].stop == STOP_NONE) {
            good = ++at; // "J.M. on the lid": the last dot of letters
            continue;
        }
        if (dot) at++;
        // "PAT." and the like keep their dot.
        bool figure = at + 1 < note->tokens.count && note->tokens.at[at + 1].kind == TOKEN_FIGURE;
        if (initial && figure && token_is(&note->tokens, at, ".")) break; // "letter K. 10 in at the top"
        if (text && at < note->tokens.count && token_is(&note->tokens, at, ".") &&
            note->tokens.at[at].stop == STOP_NONE && note->tokens.at[at].joined && is_inner(note, at))
            at++;
    }
    return mark_past_comma(note, i, good);
}

// Small letters behind "says": up to a stop, a place or a breaking word.
static size_t plain_run(const struct note *note, size_t i, size_t most) {
    size_t at = i;
    while (at < note->tokens.count && at - i < most && !ends_mark(note, i, at) && !is_kept_back(note, at)) {
        const char *where;
        bool made =
            at > i && token_is(&note->tokens, at, "in") && ANY(&note->tokens, at - 1, "made", "printed");
        bool medium = token_is(&note->tokens, at, "on") && at > i && !place_at(note, at, &where) &&
                      at + 1 < note->tokens.count && !mark_is_breaker(note, at + 1); // "oil on board"
        if (!made && !medium && (mark_is_breaker(note, at) || (at > i && place_at(note, at, &where)))) break;
        if (note->tokens.at[at].kind == TOKEN_SIGN && !strchr("&.-/'#%", note->tokens.at[at].fold[0])) break;
        at++;
    }
    while (at > i && note->tokens.at[at - 1].kind == TOKEN_SIGN && !token_is(&note->tokens, at - 1, "%"))
        at--;
    return at;
}

static bool has_figure(const struct note *note, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (note->tokens.at[i].kind == TOKEN_FIGURE || note->tokens.at[i].kind == TOKEN_CODE) return true;
    return false;
}

static bool quoted(const struct note *note, size_t i, struct mark_found *found) {
    const struct tokens *tokens = &note->tokens;
    bool mark = token_is(tokens, i, "\"") ||
                (token_is(tokens, i, "'") && i + 1 < tokens->count && tokens->at[i + 1].joined);
    if (!mark || (tokens->at[i].joined && i && tokens->at[i - 1].kind == TOKEN_FIGURE)) return false;
    const char *sign = tokens->at[i].fold;
    for (size_t k = i + 1; k < tokens->count && k < i + MARK_WORDS_MOST * 2; k++) {
        if (tokens->at[k].fold[0] == '\n') return false;
        if (!token_is(tokens, k, sign)) continue;
        *found = (struct mark_found){i + 1, k, k + 1, NULL};
        return k > i + 1;
    }
    return false;
}

static const char *exact(const struct note *note, size_t from, size_t to) {
    size_t first = note->tokens.at[from].from, last = note->tokens.at[to - 1].to;
    const char *text = arena_copy(note->arena, note->tokens.text + first, last - first);
    for (char *c = (char *)text; *c; c++)
        if (*c == '\n' || *c == '\t') *c = ' ';
    return text;
}

// "Dial marked …": its capital is the sentence's.
static const char *mark_place(const struct note *note, const char *where) {
    bool lone = where && where[0] >= 'A' && where[0] <= 'Z' && where[1] >= 'a';
    return lone ? utf8_fold(note->arena, where) : where;
}

bool mark_keep(struct note *note, size_t begin, const struct mark_found *found) {
    const struct tokens *tokens = &note->tokens;
    size_t bytes = tokens->at[found->to - 1].to - tokens->at[found->from].from;
    if (!note_free(note, found->from, found->to) && found->from > 0 &&
        ANY(tokens, found->from - 1, "'",
            "\"")) { // a person's name is in it: no maker's, whatever else it says
        for (size_t i = found->from; i < found->to; i++)
            if (note->taken[i] == TAKEN_NOT) note->taken[i] = TAKEN_OPEN;
        return false;
    }
    if (mark_is_sort(note, found->from, found->to) || mark_is_measure(note, found->from)) return false;
    bool me = bytes == 1 && ANY(tokens, found->from, "i") && ANY(tokens, found->to, "can", "could", "found");
    if (bytes > MARK_BYTES_MOST || me || !note_free(note, found->from, found->to)) return false;
    if (mark_is_withheld(note, begin, found)) return true;
    struct mark *mark = note_mark(note);
    mark->text =
        exact(note, found->from, mark_model_end(note, found->to)); // the model is read for itself too
    mark->where = mark_place(note, found->where);
    note_reading(note, begin, found->end, "mark", "behind a word for writing");
    for (size_t i = begin; i < found->end; i++)
        if (note->taken[i] == TAKEN_NOT) note->taken[i] = TAKEN_MARK;
    mark_add_initials(note, begin, found);
    return true;
}

// The place behind the mark: "… on the base", "… is on the base", "in pencil under the picture".
static void add_where(const struct note *note, struct mark_found *found) {
    size_t at = found->end;
    if (token_is(&note->tokens, at, "is")) at++;
    if (mark_is_stamp(note, at) ||
        ANY(&note->tokens, at, "cut", "carved", "chiseled", "chiselled", "punched"))
        at++;
    if (token_is(&note->tokens, at, "in") &&
        ANY(&note->tokens, at + 1, "pencil", "pen", "ink", "biro", "marker", "gold", "red", "blue", "black"))
        at += 2;
    const char *where = NULL;
    size_t taken = place_at(note, at, &where);
    if (!taken) return;
    // A bare noun is the place only where nothing more is said of it: "stamped 925 clasp", not "… handle
    // wiggles".
    bool bare = place_noun(note, at) && !ANY(&note->tokens, at, "inside");
    if (bare && at + taken < note->tokens.count && note->tokens.at[at + taken].stop == STOP_NONE) return;
    if (!found->where) found->where = where;
    found->end = at + taken;
}

// --- finders: each looks at token `i` and tells what it took ---

// The noun before "says" or "stamped": where the writing is.
static const char *place_before(const struct note *note, size_t i, size_t *from) {
    const struct tokens *tokens = &note->tokens;
    *from = i;
    if (i == 0 || tokens->at[i - 1].stop >= STOP_COMMA) return NULL;
    size_t noun = i - 1;
    if (ANY(tokens, noun, "is", "just", "even", "still") && noun > 0) noun--;
    if (ANY(tokens, noun, "inside", "underneath") && noun > 0 && place_noun(note, noun - 1)) noun--;
    // "the bottom of the jug says": the noun before "of"
    for (size_t k = noun; k > 0 && k + 5 > noun && tokens->at[k].stop == STOP_NONE; k--)
        if (token_is(tokens, k, "of") && place_noun(note, k - 1)) {
            *from = k - 1;
            return note_words(note, k - 1, k);
        } else if ((token_is(tokens, k, "on") || token_is(tokens, k, "in")) && place_noun(note, k - 1)) {
            *from = k - 1;
            return note_words(note, k - 1, k);
        }
    if (!place_noun(note, noun)) return NULL;
    *from = noun;
    return note_words(note, noun, noun + 1);
}

static bool text_behind(const struct note *note, size_t at, bool says, struct mark_found *found) {
    const struct tokens *tokens = &note->tokens;
    if (quoted(note, at, found)) return true;
    if (at >= tokens->count || ends_mark(note, at, at)) return false;
    bool caseless = tokens->flat || tokens->shouts;
    size_t end = caseless ? at : mark_proper_run(note, at);
    if (says && !caseless) { // small words may follow on the capital: "Brellindon est. 1890"
        size_t longer = plain_run(note, at, MARK_WORDS_MOST);
        if (longer > end) end = longer;
    }
    if (end == at && tokens->flat && !says) end = mark_up_to_place(note, at);
    if (end == at) end = plain_run(note, at, says ? MARK_WORDS_MOST / 2 : FLAT_WORDS_MOST - 1);
    if (end == at) return false;
    if (!caseless && end == at + 1 && mark_is_breaker(note, at) && tokens->at[at].kind == TOKEN_WORD) {
        // "Not to exceed the rate": words of a sentence, up to its end
        while (says && end < tokens->count && end - at < MARK_WORDS_MOST && !ends_mark(note, at, end)) end++;
        if (end == at + 1) return false;
    }
    if (!caseless) end = mark_goes_on(note, at, end);
    *found = (struct mark_found){at, end, end, NULL};
    return true;
}

// Behind "with a brewery name", "with the legend"; `at` where there is none.
static size_t named_by(const struct note *note, size_t at) {
    enum { WORDS_MOST = 8 };
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, at, "with", "by") || !ANY(tokens, at + 1, "a", "an", "the")) return at;
    for (size_t k = at + 2; k < at + WORDS_MOST && k + 1 < tokens->count; k++) {
        if (tokens->at[k].stop != STOP_NONE || note->fault_word[k]) return at;
        if (ANY(tokens, k, "name", "legend", "words", "word", "motto", "number", "address", "and", "over",
                "above", "&") &&
            mark_is_text(note, k + 1)) // "with a crown and 214"
            return k + 1;
    }
    return at;
}

static bool is_letter(const struct note *note, size_t i) {
    const struct token *token = i < note->tokens.count ? &note->tokens.at[i] : NULL;
    return token && token->kind == TOKEN_WORD && token->capital && token->to - token->from == 1 &&
           !note->tokens.flat;
}

static size_t skip_to_text(const struct note *note, size_t at, const char **where) {
    const struct tokens *tokens = &note->tokens;
    for (int step = 0; step < 3; step++) {
        size_t place = ANY(tokens, at, "top") && ANY(tokens, at + 1, "grain", "quality", "hat")
                           ? 0
                           : place_at(note, at, where);
        if (place) {
            at += place;
            if (token_is(tokens, at, ",")) at++;
        } else if (ANY(tokens, at, "with", "by") && ANY(tokens, at + 1, "a", "an", "the") &&
                   is_letter(note, at + 2) &&
                   ANY(tokens, at - 1, "stamped", "marked", "impressed", "cast", "branded", "incised",
                       "molded", "moulded")) {
            at += 2; // "stamped with a K"
        } else if (named_by(note, at) > at) {
            at = named_by(note, at);
        } else if (ANY(tokens, at, ":", "with", "as", "by") ||
                   (token_is(tokens, at, "-") && tokens->at[at].stop == STOP_CLAUSE)) {
            at++;
        } else if (step > 0 && ANY(tokens, at, "is", "are") && at + 1 < tokens->count &&
                   mark_is_text(note, at + 1)) {
            at++; // "embroidered on the foot is Ida 1941"
        } else if (mark_in_letters(note, at) > at) {
            at = mark_in_letters(note, at);
        } else if (ANY(tokens, at, "only", "simply", "just", "clearly", "faintly", "lower", "upper")) {
            at++;
            if (ANY(tokens, at, "right", "left")) {
                *where = note_words(note, at - 1, at + 1);
                at++;
            }
        } else if (ANY(tokens, at, "the", "a") && ANY(tokens, at + 1, "word", "words", "letters", "letter",
                                                      "number", "numbers", "name", "initials", "date")) {
            at += 2;
        } else if (ANY(tokens, at, "word", "words", "letters", "letter", "initials", "date") ||
                   (token_is(tokens, at, "name") && at + 1 < tokens->count && mark_is_text(note, at + 1)) ||
                   (ANY(tokens, at, "number", "no") && !token_is(tokens, at + 1, "."))) {
            at++;
        } else {
            size_t behind = mark_place_unlisted(note, at, where);
            if (!behind) break;
            at = behind;
        }
    }
    return at;
}

static size_t find_verb(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    bool says = mark_is_says(note, i), stamp = mark_is_stamp(note, i);
    if ((!says && !stamp) || mark_is_denied(note, i) || (stamp && mark_is_making(note, i))) return 0;
    size_t begin;
    const char *where = place_before(note, i, &begin);
    if (stamp && note_clause_from(note, begin, STOP_COMMA) == 0)
        where = NULL; // "ring marked 925": the thing itself
    if (says) {
        if (i && tokens->at[i - 1].stop == STOP_NONE && mark_is_person(note, i - 1)) return 0;
        bool capitals = i + 1 < tokens->count && tokens->at[i + 1].capitals && !tokens->shouts;
        if (ANY(tokens, i, "say", "read", "reading", "saying") && !where && !capitals) return 0;
        if (mark_is_other_reading(note, i + 1)) return 0;
        if (ANY(tokens, i + 1, "the", "my", "it", "it's", "its", "that", "they", "he", "she", "to", "so", "a",
                "nothing", "no", "who", "something", "there") &&
            !ANY(tokens, i + 2, "word", "words", "letters", "number", "name") &&
            !mark_is_no_figure(note, i + 1))
            return 0;
    }
    const char *behind = NULL;
    size_t at = skip_to_text(note, i + 1, &behind);
    while (stamp && ANY(tokens, at, "low", "high", "deep", "deeply", "lightly", "crisply", "small", "tiny")) {
        at++; // "stamped low on the side 12"
        at = skip_to_text(note, at, &behind);
    }
    if (ANY(tokens, at, "up", "down", "off", "for", "out", "but", "and", "with", "all", "patina", "through",
            "away") ||
        at >= tokens->count)
        return 0;
    if (token_is(tokens, at, "a") && !says && !is_letter(note, at)) return 0;
    if (stamp && token_is(tokens, at - 1, ",") && !mark_is_text(note, at))
        return 0; // "stenciled on side, small hole"
    if (stamp && ANY(tokens, at - 1, "with", "by") && tokens->at[at].kind == TOKEN_WORD &&
        (note->fault_word[at] ||
         ANY(tokens, at, "damp", "water", "heat", "light", "time", "fire", "use", "age") ||
         (at + 1 < tokens->count && note->fault_word[at + 1])))
        return 0; // "marked with faint rust"
    struct mark_found found;
    if (!text_behind(note, at, says, &found)) return 0;
    bool subject = says && i && tokens->at[i - 1].stop == STOP_NONE && !where &&
                   !ANY(tokens, i - 1, "it", "and", "also", "which", "but", "that", "just", "only", "still",
                        "even", "one", "then", "or");
    struct mark_found placed = found;
    add_where(note, &placed);
    if (subject && !tokens->flat && !tokens->at[found.from].capital && placed.end == found.to)
        return 0; // "the list says 14 things"
    if (says && !where && placed.end == found.to && mark_is_hearsay(note, i, found.from, found.to)) return 0;
    if (stamp && mark_is_weak(note, i) && !tokens->flat && !mark_is_text(note, found.from) &&
        found.end == found.to)
        return 0;
    if (stamp && mark_is_process(note, i) && found.end == found.to &&
        !has_figure(note, found.from, found.to) && !tokens->at[found.from].capitals)
        return 0;
    bool owned = placed.end > found.to && ANY(tokens, i, "branded", "labeled", "labelled");
    if (stamp && mark_is_weak(note, i) && (tokens->flat || tokens->shouts) && !owned &&
        !has_figure(note, found.from, found.to) && at == i + 1)
        return 0;
    struct number number;
    if (ANY(tokens, i, "marked", "numbered") && number_at(tokens, at, &number) &&
        ANY(tokens, at + number.taken, "to", "-"))
        return 0;
    found.where = behind ? behind : where;
    add_where(note, &found);
    bool device = stamp && ANY(tokens, found.from - 1, "and", "&", "over", "above", "words", "word", "legend",
                               "motto"); // "embossed with a cow and 40"
    size_t each = says ? mark_keep_each(note, i, &found) : 0;
    if (each) return each;
    if (!mark_keep(note, says && where ? begin : device ? found.from : i, &found)) return 0;
    for (size_t k = i + 1; k < found.from; k++)
        if (ANY(tokens, k, "initials", "initial")) mark_add_letters(note, i, found.end, found.where);
    return found.end - i;
}

// "the letters BQ", "number 316 on back", "No. 5 on the base", "a crown over the word ELDRITHE".
static size_t find_noun(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    bool letters =
        ANY(tokens, i, "letters", "initials", "word", "words", "lettering", "backstamp", "hallmark",
            "hallmarks", "signature", "letter") ||
        (token_is(tokens, i, "date") && i && token_is(tokens, i - 1, "the") && mark_is_year(tokens, i + 1));
    bool number = ANY(tokens, i, "number", "no", "nr", "#");
    if (!letters && !number) return mark_find_placed(note, i);
    if (i && !(number && mark_is_put(tokens, i + 2)) &&
        ANY(tokens, i - 1, "part", "model", "serial", "phone", "telephone", "catalog", "order", "account",
            "case", "movement", "stock", "item", "a", "any", "lot", "style"))
        return 0;
    size_t at = i + 1;
    if (number && token_is(tokens, at, ".")) at++;
    if (ANY(tokens, at, "is", "reads", "says", ":", "are")) at++;
    struct mark_found found;
    bool quote = quoted(note, at, &found);
    if (!quote) {
        size_t end = at < tokens->count && !tokens->shouts ? mark_proper_run(note, at) : at;
        if (end == at && number && has_figure(note, at, at + 1)) end = at + 1;
        if (end == at + 1 && ANY(tokens, end, "to", "through", "-")) return 0; // "letters A to Z"
        if (token_is(tokens, i, "letter") && end <= at + 1) end = mark_is_one_letter(note, at) ? at + 1 : at;
        if (end == at && token_is(tokens, i, "signature")) return mark_find_placed(note, i);
        if (end == at || (number && !has_figure(note, at, end) && !mark_is_roman(note, at))) return 0;
        bool whole = number && tokens->at[i].capital &&
                     (at > i + 1 || (token_is(tokens, i, "no") && i && !tokens->at[i].starts));
        found = (struct mark_found){whole ? i : at, end, end, NULL};
    }
    size_t before = found.end;
    add_where(note, &found);
    if (found.end == before && token_is(tokens, found.end, "on") && token_is(tokens, found.end + 1, "it"))
        found.end += 2;
    bool beside = found.end != before || ANY(tokens, found.end, "and") || mark_is_put(tokens, found.end);
    beside |= i && ANY(tokens, i - 1, "engine", "locomotive", "fleet"); // else it may be a model
    if (number && !beside && !mark_is_told_number(note, i, found.to)) return 0;
    if (!mark_keep(note, i, &found)) return 0;
    if (token_is(tokens, i, "initials")) mark_add_letters(note, i, found.end, found.where);
    return found.end - i;
}

// "Hobbinfold stamped on the belly", "2108 pressed into the base", "MK II on the back plate".
static size_t find_run(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const struct token *token = &tokens->at[i];
    if (tokens->shouts || (tokens->flat && token->kind == TOKEN_WORD) || !mark_is_text(note, i) ||
        (i && mark_is_text(note, i - 1) && tokens->at[i].stop == STOP_NONE && !token->starts))
        return 0;
    size_t end = mark_proper_run(note, i);
    if (end > i && token->capitals && token_is(tokens, end, ",")) end = mark_goes_on(note, i, end);
    if (end == i || end >= tokens->count) return 0;
    size_t verb = end + (token_is(tokens, end, "is") ? 1 : 0);
    bool stamped = ANY(tokens, verb, "stamped", "printed", "embossed", "engraved", "pressed", "impressed",
                       "incised", "written", "painted", "molded", "moulded", "cast", "scratched", "stenciled",
                       "stencilled", "etched");
    bool set = (token_is(tokens, i + 1, "of") && ANY(tokens, i, "set", "lot", "pair", "box")) || // no text
               (i > 0 && token_is(tokens, i - 1, "of")) || ANY(tokens, verb, "written", "scratched") ||
               (stamped && token_is(tokens, verb + 1, "by"));
    struct word_entry stuff; // "4 pressed tin tiles": how they were made
    if (stamped && !token->capitals && word_at(note, verb + 1, 1u << USE_MATERIAL, &stuff)) return 0;
    bool caps = false;
    for (size_t k = i; k < end; k++)
        caps |= tokens->at[k].capitals || (tokens->at[k].kind == TOKEN_CODE && !stamped);
    caps |= mark_is_carat(note, i) && end == i + 1;
    struct noun_found goods; // "Watch engraved on the back": the thing
    bool thing = token->starts && !token->capitals && noun_at(note, i, &goods) && goods.to == end &&
                 (goods.thing || (goods.uses & (1u << USE_THING) && !goods.candidate));
    if (thing || set) return 0;
    // "Tear on the label", "Peeling on the badge": a fault, and no name, whose capital begins a sentence.
    bool plain = token->starts && !token->capitals && end == i + 1 &&
                 ((!stamped && (note->fault_word[i] || mark_is_doing(note, i))) ||
                  token->one != token->fold || strchr(token->fold, '\'') || place_noun(note, i) ||
                  mark_is_breaker(note, i) || (i == 0 && noun_at(note, i, &goods)) ||
                  ANY(tokens, i, "hand", "loose", "worn", "torn", "bent", "name", "number", "date",
                      "something", "serial", "stamp", "mark", "label", "maker", "initials", "lettering",
                      "writing", "text", "address"));
    bool label = mark_on_label(note, i, end) || mark_is_on_bearer(note, end);
    bool shouted =
        !stamped && caps && end == i + 1 && note->fault_word[i] && token->kind == TOKEN_WORD; // "CHIP on rim"
    if (plain || shouted || (!stamped && !caps && !(label && token->kind != TOKEN_FIGURE))) return 0;
    if (mark_is_on_bearer(note, end) && caps) { // "TORWELL K-7 plate on the heel"
        struct mark_found borne = {i, end, end + 1, NULL};
        add_where(note, &borne);
        if (i == 0 || !ANY(tokens, i - 1, "model", "type"))
            return mark_keep(note, i, &borne) ? borne.end - i : 0;
        struct mark *mark = note_mark(note); // the model is read for itself too
        *mark = (struct mark){.text = exact(note, i, end), .where = mark_place(note, borne.where)};
        return end - i;
    }
    size_t worn = caps ? mark_find_worn(note, i, end) : 0;
    if (worn) return worn;
    const char *where;
    size_t framed = caps ? mark_find_framed(note, i, end) : 0;
    if (framed) return framed;
    size_t place = place_at(note, stamped ? verb + 1 : end, &where);
    if (!stamped && place_noun(note, end)) place = 0; // "BOX lid": no place without its "on"
    size_t cast = stamped && token->kind == TOKEN_FIGURE && !place ? mark_find_cast(note, i, end, verb) : 0;
    if (cast) return cast;
    size_t piece = !place && caps ? mark_on_piece(note, i, stamped ? verb + 1 : end) : 0;
    bool named = stamped && token->kind == TOKEN_WORD && !english_at(note, i) &&
                 ANY(tokens, verb + 1, "in", "on") && ANY(tokens, verb + 2, "the", "its");
    if (!place && !piece && !named && !(stamped && caps)) return 0;
    if (ANY(tokens, i, "I", "i", "AM", "am") && end == i + 1) return 0;
    struct mark_found found = {i, end, end, NULL};
    if (stamped) found.end = verb;
    add_where(note, &found);
    if (piece) {
        size_t on = stamped ? verb + 1 : end;
        found.where = note_words(note, on + (ANY(tokens, on + 1, "the", "its") ? 2 : 1), piece);
        found.end = piece;
    }
    return mark_keep(note, i, &found) ? found.end - i : 0;
}

// "patent 1913", "pat. pending", "1/250 in pencil", "postmarked Aug 3 1911".
static size_t find_dated(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct mark_found found = {i, i, i, NULL};
    size_t at = i + 1;
    if (ANY(tokens, i, "patent", "pat", "patented", "copyright", "\xC2\xA9", "registered", "reg")) {
        if (token_is(tokens, at, ".")) at++;
        if (ANY(tokens, at, "pending", "pend", "applied", "no", "number", "des", "design", "date")) at++;
        if (token_is(tokens, at, "for") && ANY(tokens, at - 1, "applied")) at++;
        if (token_is(tokens, at, ".")) at++;
        bool figure = at < tokens->count && tokens->at[at].kind == TOKEN_FIGURE;
        if (figure) at++;
        if (!figure && !ANY(tokens, i + 1, "pending", "pend", "applied") &&
            !ANY(tokens, i + 2, "pending", "pend"))
            return 0;
        if (ANY(tokens, i, "reg", "registered") && !figure) return 0;
    } else if (tokens->at[i].kind == TOKEN_FIGURE && strchr(tokens->at[i].fold, '/') &&
               strlen(tokens->at[i].fold) > 3 && token_is(tokens, at, "in") &&
               ANY(tokens, at + 1, "pencil", "ink", "pen")) {
        // an edition number
    } else if (ANY(tokens, i, "exp", "expires", "expiry")) {
        if (ANY(tokens, at, ".", ":", "date")) at++;
        if (at >= tokens->count || tokens->at[at].kind != TOKEN_FIGURE) return 0;
        at++;
    } else if (tokens->at[i].kind == TOKEN_FIGURE && mark_is_edition(tokens->at[i].fold)) {
        const char *where;
        if (!place_at(note, at, &where) && !ANY(tokens, at, "bottom", "lower", "left", "right")) return 0;
    } else if (mark_is_day(tokens->at[i].fold)) {
        const char *where;
        if (!place_at(note, at, &where)) return 0;
    } else if (ANY(tokens, i, "postmarked", "postmark")) {
        if (ANY(tokens, at, "is", "reads", "of")) at++;
        size_t end = at < tokens->count ? plain_run(note, at, 4) : at;
        if (!has_figure(note, at, end)) return 0;
        while (!has_figure(note, end - 1, end)) end--;
        found = (struct mark_found){at, end, end, "postmark"};
        return mark_keep(note, i, &found) ? end - i : 0;
    } else if (tokens->at[i].kind == TOKEN_FIGURE && token_is(tokens, at, "postmark")) {
        found = (struct mark_found){i, at, at + 1, "postmark"};
        return mark_keep(note, i, &found) ? 2 : 0;
    } else {
        return 0;
    }
    found.to = found.end = at;
    add_where(note, &found);
    return mark_keep(note, i, &found) ? found.end - i : 0;
}

// A quotation with a place behind it that nobody wrote there as an owner.
static size_t find_quote(struct note *note, size_t i) {
    struct mark_found found;
    if (!quoted(note, i, &found)) return 0;
    const struct tokens *tokens = &note->tokens;
    size_t at = found.end + (token_is(tokens, found.end, "is") ? 1 : 0);
    if (ANY(tokens, at, "written", "penciled", "pencilled", "inked", "spelled", "scribbled", "scrawled",
            "biroed"))
        return 0;
    if (token_is(tokens, at, "in") &&
        ANY(tokens, at + 1, "biro", "pen", "ink", "marker", "glitter", "felt", "crayon"))
        return 0;
    const char *where;
    bool stamped = mark_is_stamp(note, at) || (mark_is_put(tokens, at) && place_at(note, at + 1, &where));
    if (!stamped && !place_at(note, at, &where) && !mark_is_labeled(note, i, &found)) return 0;
    mark_past_bearer(note, &found);
    add_where(note, &found);
    return mark_keep(note, i, &found) ? found.end - i : 0;
}

void read_writing(struct note *note) {
    static size_t (*const finders[])(struct note *, size_t) = {
        find_verb,        mark_find_origin, mark_find_number, find_noun,        find_dated,     find_quote,
        mark_find_bearer, find_run,         mark_find_alone,  mark_find_device, mark_find_borne};
    for (size_t i = 0; i < note->tokens.count;) {
        size_t taken = 0;
        for (size_t k = 0; k < sizeof finders / sizeof *finders && !taken && note->taken[i] == TAKEN_NOT; k++)
            taken = finders[k](note, i);
        i += taken ? taken : 1;
    }
    mark_read_written(note);
}
