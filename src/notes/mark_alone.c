// SPDX-License-Identifier: MIT
// Sellers often set the writing down and say no word about it: "On the dial: HALLIWELL & SONS.", "6 in dial,
// hand bent. DENBY VALVE CO." Capitals alone are no mark, for sellers shout; the name of a firm is, and so is
// what stands behind a place and a colon. And a firm that a mark names made the thing, as far as the thing
// tells.
#include "notes/mark_found.h"
#include "notes/mark_words.h"
#include "notes/persons.h"

#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/place.h"
#include "notes/unsure.h"
#include "notes/works.h"
#include "text/order.h"

static bool is_firm(const struct note *note, size_t i) {
    static const char *const words[] = {
        "sons",    "son",       "co",  "ltd", "bros",  "brothers", "company", "cie",    "limited",  "works",
        "pottery", "potteries", "mfg", "inc", "mills", "foundry",  "makers",  "nephew", "daughters"};
    return token_among(&note->tokens, i, words, sizeof words / sizeof *words);
}

// "On the dial:", "base:", "label inside:"; NULL where no place is named.
static const char *place_before_colon(const struct note *note, size_t colon) {
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &note->tokens;
    for (size_t k = colon; k > 0 && k + WORDS_MOST > colon && tokens->at[k - 1].stop < STOP_CLAUSE; k--) {
        const char *where;
        if (place_at(note, k - 1, &where) && (k == 1 || tokens->at[k - 2].stop != STOP_NONE)) return where;
        bool opens = k == 1 || tokens->at[k - 2].stop != STOP_NONE;
        if (place_at(note, k - 1, &where) && k > 1 &&
            ANY(tokens, k - 2, "mark", "marks", "stamp", "stamps", "written", "writing", "name", "label",
                "is", "stamped", "engraved", "cast", "printed", "forged", "cut", "moulded", "molded",
                "carved", "etched", "embossed", "burned", "burnt", "impressed", "punched", "incised",
                "pressed"))
            return where;
        if (opens && ANY(tokens, k - 1, "label", "stamp", "mark", "marks", "badge", "plate", "base", "lid",
                         "back", "dial", "blade", "spine", "sticker", "tag", "plaque", "case"))
            return note_words(note, k - 1, k);
    }
    return NULL;
}

size_t mark_find_alone(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->flat || tokens->shouts || !mark_is_text(note, i) || note->fault_word[i]) return 0;
    if (i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
        !ANY(tokens, i - 1, ":", "label", "badge", "nameplate", "sticker", "logo", "plate", "plaque", "tag",
             "stencil", "transfer", "tally"))
        return 0;
    size_t end = mark_proper_run(note, i), words = 0;
    if (end == i) return 0;
    size_t stop = token_is(tokens, end, ".") && tokens->at[end].stop == STOP_NONE ? end + 1 : end; // "CO."
    if (stop < tokens->count && tokens->at[stop].stop < STOP_COMMA && !tokens->at[stop].starts) return 0;
    bool firm = false, capitals = true;
    for (size_t k = i; k < end; k++) {
        firm |= k > i && is_firm(note, k);
        if (tokens->at[k].kind != TOKEN_WORD) continue;
        words++;
        capitals &= tokens->at[k].capitals || !mark_is_text(note, k);
    }
    const char *where = i > 1 && token_is(tokens, i - 1, ":") ? place_before_colon(note, i - 1) : NULL;
    // "Brand label BRACKEN."
    bool labeled = i > 0 && capitals && words > 0 && tokens->at[i - 1].stop == STOP_NONE &&
                   ANY(tokens, i - 1, "label", "badge", "nameplate", "sticker", "logo", "plate", "plaque",
                       "tag", "stencil", "transfer", "tally");
    bool sign = i > 1 && capitals && words > 0 && tokens->at[i - 1].stop == STOP_COMMA &&
                ANY(tokens, i - 2, "sign", "plaque", "nameplate", "placard", "signboard", "notice");
    // "Enamel sign, white on blue, PARCELS TAKEN IN": words of a sign further on in its sentence
    bool more = i > 1 && capitals && words > 1 && tokens->at[i - 1].stop >= STOP_COMMA;
    for (size_t k = more ? note_clause_from(note, i, STOP_SENTENCE) : i; k < i; k++)
        sign |= ANY(tokens, k, "sign", "signs", "plaque", "nameplate", "placard", "signboard", "notice",
                    "poster");
    if (where && tokens->at[i].kind == TOKEN_FIGURE && ANY(tokens, i + 1, "of", "/"))
        return 0; // "feet: 3 of 4"
    if (!where && tokens->at[i].kind == TOKEN_FIGURE && ANY(tokens, i + 1, "by", "x"))
        return 0; // "sign, 24 by 18"
    if (!where && !sign && !labeled && !(firm && capitals && words > 1)) return 0;
    if (where && end + 1 < tokens->count && !mark_is_sloppy(note, end + 1)) end = mark_goes_on(note, i, end);
    struct mark_found found = {i, end, end, where};
    return mark_keep(note, i, &found) ? end - i : 0;
}

// "Genuine leather stamped inside", "sterling on the clasp", "sterling marked on the bar": what makers mark
// their goods with, in small letters or large; it is read as a stuff too.
static size_t find_stuff(struct note *note, size_t i) {
    static const char *const stuffs[] = {
        "sterling silver", "sterling",     "genuine leather", "real leather",    "all leather",
        "solid leather",   "solid brass",  "solid copper",    "stainless steel", "stainless",
        "silver plate",    "bone china",   "gold filled",     "pure wool",       "all wool",
        "genuine cowhide", "real cowhide", "pure linen",      "pewter"};
    const struct tokens *tokens = &note->tokens;
    size_t n = token_longest(tokens, i, stuffs, sizeof stuffs / sizeof *stuffs), end = i + n;
    if (!n || tokens->at[end - 1].stop != STOP_NONE || tokens->at[end - 1].capital ||
        (i > 0 && tokens->at[i - 1].stop == STOP_NONE && !ANY(tokens, i - 1, "has", "with", "and")))
        return 0;
    bool stamped =
        mark_is_stamp(note, end) && ANY(tokens, end + 1, "on", "in", "inside", "under", "underneath", "at");
    bool worn = ANY(tokens, i, "sterling") && ANY(tokens, end, "on") && ANY(tokens, end + 1, "the", "its") &&
                ANY(tokens, end + 2, "clasp", "catch", "tag", "label", "clip", "bail", "hinge", "back", "bar",
                    "shank", "post", "band");
    if (!stamped && !worn) return 0;
    size_t first = tokens->at[i].from, last = tokens->at[end - 1].to;
    *note_mark(note) = (struct mark){.text = arena_copy(note->arena, tokens->text + first, last - first)};
    note_reading(note, i, end, "mark", "a stuff as makers mark it");
    return n;
}

size_t mark_find_origin(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t stuff = find_stuff(note, i);
    if (stuff) return stuff;
    if (!ANY(tokens, i, "made", "printed", "handmade", "woven", "assembled") || !tokens->at[i].capital ||
        !token_is(tokens, i + 1, "in") || i + 2 >= tokens->count || !tokens->at[i + 2].capital ||
        tokens->flat || tokens->shouts)
        return 0;
    bool led = i == 0 || tokens->at[i - 1].stop != STOP_NONE ||
               ANY(tokens, i - 1, "has", "label", "sticker", "tag", "mark", "stamp", "with");
    size_t end = mark_proper_run(note, i), at = end;
    if (!led || end < i + 3) return 0;
    if (ANY(tokens, at, ",", "is")) at++;
    bool stamped = mark_is_stamp(note, at);
    const char *where = NULL;
    size_t place = place_at(note, at + (stamped ? 1 : 0), &where);
    if (!place && !stamped) return 0; // it may be the seller who says so
    struct mark_found found = {i, end, at + (stamped ? 1 : 0) + place, where};
    return mark_keep(note, i, &found) ? found.end - i : 0;
}

size_t mark_find_framed(struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    if (!token_is(tokens, to, "in") ||
        !ANY(tokens, to + 1, "a", "an", "raised", "gold", "black", "white", "script"))
        return 0;
    const char *where;
    size_t frame = to + (ANY(tokens, to + 2, "on", "across", "under", "inside") ? 2 : 3);
    size_t place = place_at(note, frame, &where);
    struct mark_found found = {from, to, frame + place, where};
    return place && mark_keep(note, from, &found) ? found.end - from : 0;
}

// The words of a firm in a mark: "KINNAIRD & SHAW" of "Kinnaird & Shaw, Port Easdale 1943"; 0 where none is.
static size_t firm_of(const struct note *note, size_t from, size_t to, size_t *begin) {
    const struct tokens *tokens = &note->tokens;
    while (from < to && ANY(tokens, from, "says", "reads", "marked", "stamped", "'", "\"")) from++;
    if (ANY(tokens, from, "made", "mfd", "manufactured") && token_is(tokens, from + 1, "by")) from += 2;
    if (token_is(tokens, from, "by")) from++;
    if (ANY(tokens, from, "return", "property") && ANY(tokens, from + 1, "to", "of")) from += 2;
    *begin = from;
    size_t end = from, last = 0;
    bool firm = false;
    for (; end < to; end++) {
        if (tokens->at[end].stop != STOP_NONE || tokens->at[end].kind == TOKEN_FIGURE ||
            ANY(tokens, end, "no", "of", "on", "in", "inside", "under", "underneath"))
            break;
        if (ANY(tokens, end, "&", "and") && end > from && end + 1 < to && mark_is_text(note, end + 1)) {
            if (tokens->at[end + 1].kind != TOKEN_WORD) break; // "L.T. and 1834"
            firm = true;
        }
        if (end > from && is_firm(note, end)) {
            firm = true;
            last = end + 1;
        }
    }
    bool word = false; // "A & M": letters, and of two people
    for (size_t i = from; i < end; i++) word |= tokens->at[i].to - tokens->at[i].from > 2;
    return firm && word && end > from + 1 ? (last ? last : end) : 0;
}

// "Torwell stamped on the blade": one to three words with capitals, of which the first is no English, are a
// maker's name; where they end, 0 where they are none.
static size_t maker_of(const struct note *note, size_t from, size_t to) {
    enum { WORDS_MOST = 3, LETTERS_LEAST = 4 };
    const struct tokens *tokens = &note->tokens;
    while (from < to && ANY(tokens, from, "\"", "'")) from++;
    while (to > from && ANY(tokens, to - 1, "\"", "'")) to--;
    bool firms = from > 1 && ANY(tokens, from - 2, "studio", "studio's", "maker's", "company",
                                 "photographer's", "trade", "firm's", "publisher's", "printer's");
    if (from > 0 && !firms && ANY(tokens, from - 1, "name", "names")) return 0; // whose, nobody says
    if (to == from || to > from + WORDS_MOST || tokens->flat || tokens->shouts) return 0;
    for (size_t i = from; i < to; i++) {
        const struct token *token = &tokens->at[i];
        if (token->kind != TOKEN_WORD || !token->capital || strchr(token->fold, '.')) return 0;
        if (token->to - token->from < LETTERS_LEAST) return 0;
    }
    return name_is_no_name(note, from, to) || english_at(note, from) || person_first_name(note, from) ? 0
                                                                                                      : to;
}

// The end of the mark that begins at token `i`; `i` where none does.
static size_t mark_end(const struct note *note, size_t i) {
    const char *text = note->tokens.text + note->tokens.at[i].from;
    size_t longest = 0;
    for (size_t k = 0; k < note->record->mark_count; k++) {
        size_t n = strlen(note->record->marks[k].text);
        if (n > longest && !strncmp(text, note->record->marks[k].text, n)) longest = n;
    }
    size_t end = i;
    while (end < note->tokens.count && note->tokens.at[end].from < note->tokens.at[i].from + longest) end++;
    return end;
}

void read_mark_firm(struct note *note) {
    struct record *record = note->record;
    for (size_t i = 0; i < record->attribute_count; i++)
        if (text_same(record->attributes[i].name, "brand")) return;
    for (size_t i = 0; i < note->tokens.count; i++) {
        if (note->taken[i] != TAKEN_MARK || !mark_is_text(note, i)) continue;
        size_t to = mark_end(note, i), begin;
        if (to == i) continue; // "Label says", "on the side": taken with the mark, and not in it
        size_t end = firm_of(note, i, to, &begin);
        if (!end && note->book) end = maker_of(note, begin = i, to);
        if (end) {
            struct value *value = note_attribute(note);
            *value = (struct value){.name = "brand",
                                    .value = arena_string(note->arena, note_words(note, begin, end)),
                                    .sure = unsure_behind(note, to) ? SURE_GUESS : SURE_STATED,
                                    .span = note_span_of(note, begin, end)};
            note_reading(note, begin, end, arena_format(note->arena, "brand %s", value->value),
                         "a maker's name in a mark");
            return;
        }
        i = to - 1;
    }
}
