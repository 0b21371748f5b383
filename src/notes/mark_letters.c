// SPDX-License-Identifier: MIT
// Initials on the thing, on which of several pieces a mark is, and marks whose place is told before them.
#include "notes/mark_found.h"

#include <string.h>

#include "notes/any.h"
#include "notes/mark_words.h"
#include "notes/persons.h"
#include "notes/place.h"
#include "text/order.h"
#include "notes/things.h"
#include "rules/ruleset.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Worked into the thing, not written on it by hand.
static bool is_cut(const struct note *note, size_t from, size_t to) {
    for (size_t i = from > 2 ? from - 2 : 0; i < to + 3 && i < note->tokens.count; i++)
        if (ANY(&note->tokens, i, "engraved", "etched", "embroidered", "stitched", "monogrammed", "inscribed",
                "stamped", "chased", "woven", "tooled",
                "punched")) // what somebody carved in a desk has its own rule
            return true;
    return false;
}

// "Gold initials on the flap": decoration too.
static bool is_gilt(const struct note *note, size_t from, size_t to) {
    for (size_t i = from > 1 ? from - 1 : 0; i < to + 2 && i < note->tokens.count; i++)
        if (ANY(&note->tokens, i, "gold", "gilt", "silver", "gilded")) return true;
    return false;
}

// "Potter's initials", "initials of the maker".
static bool is_makers(const struct note *note, size_t from) {
    for (size_t i = note_clause_from(note, from, STOP_COMMA); i < note_clause_to(note, from, STOP_COMMA); i++)
        if (ANY(&note->tokens, i, "maker's", "makers", "maker", "potter's", "potter", "artist's", "artist",
                "carver's", "decorator's", "smith's", "turner's", "painter's", "engraver's", "assayer's"))
            return true;
    return false;
}

// Initials: worked into the thing, or put on it later by somebody.
void mark_add_letters(struct note *note, size_t from, size_t to, const char *where) {
    bool later = false;
    for (size_t i = from; i < to; i++)
        later |= ANY(&note->tokens, i, "scratched", "burnt", "burned", "inked", "written", "painted", "biro",
                     "penciled", "pencilled", "marker", "cut", "carved", "gouged", "whittled");
    bool cut = is_cut(note, from, to) || is_gilt(note, from, to);
    if (!later && !cut && is_makers(note, from)) return;
    const char *id = later || !cut ? "owner-name" : "monogram";
    const struct flaw *kind = ruleset_flaw(note->rules, id);
    if (!kind || (!later && !cut && !where)) return;
    struct item_flaw *flaw = note_flaw(note);
    *flaw = (struct item_flaw){.kind = kind, .where = where, .span = note_span_of(note, from, to)};
    note_reading(note, from, to, arena_format(note->arena, "flaw %s", id),
                 "initials that are cut, sewn or scratched");
    if (later && note->record->mark_count) note->record->mark_count--; // an owner's, and no maker's mark
}

// Where makers put their names.
static bool is_signed_part(const char *where) {
    static const char *const parts[] = {"dial",   "face",  "movement", "back plate", "backplate",
                                        "barrel", "blade", "bridge",   "badge",      "top plate",
                                        "lens",   "scale", "tuning",   "bezel",      "nameplate"};
    for (size_t k = 0; k < sizeof parts / sizeof *parts; k++)
        if (text_same(where, parts[k])) return true;
    return false;
}

// "R.T.", "JRW", "A & M": how many letters, each a name's; 0 where there is more.
static size_t initials_of(const struct note *note, size_t from, size_t to) {
    static const char *const others[] = {"us", "usa", "uk", "ep",  "epns", "ns", "ss",  "gf",
                                         "gp", "ltd", "co", "pat", "raf",  "rn", "usn", "no"};
    const struct tokens *tokens = &note->tokens;
    size_t letters = 0;
    for (size_t i = from; i < to; i++) {
        const struct token *t = &tokens->at[i];
        if (ANY(tokens, i, ".", "&", "and")) continue;
        if (t->kind != TOKEN_WORD || !t->capital || token_among(tokens, i, others, COUNT(others))) return 0;
        const char *at = t->fold;
        size_t size = strlen(at), alone = 0;
        for (size_t k = 0; k < size; k++) alone += at[k] >= 'a' && at[k] <= 'z';
        if (!alone || (alone > 1 && !t->capitals && !strchr(at, '.'))) return 0;
        letters += alone;
    }
    return letters;
}

// "R.T. engraved on the back": letters for a name, of whoever had it; a maker's stand on the dial or are
// stamped.
void mark_add_initials(struct note *note, size_t begin, const struct mark_found *found) {
    static const char *const worked[] = {"engraved", "monogrammed", "embroidered", "etched", "inscribed"};
    enum { LETTERS_LEAST = 2, LETTERS_MOST = 4, NEAR = 2 };
    const struct tokens *tokens = &note->tokens;
    size_t letters = initials_of(note, found->from, found->to);
    bool gilt = letters == 1 && found->from > 0 && ANY(tokens, found->from - 1, "gold", "gilt"); // a gold B
    if ((letters < LETTERS_LEAST && !gilt) || letters > LETTERS_MOST || is_makers(note, found->from)) return;
    if (found->where && is_signed_part(found->where)) return;
    bool is_worked = gilt;
    for (size_t i = begin; i < found->end + NEAR && i < tokens->count; i++) {
        if (i >= found->to && tokens->at[i - 1].stop >= STOP_COMMA && !token_is(tokens, i - 1, ".")) break;
        if (ANY(tokens, i, "initials", "initial", "monogram")) return; // told by the word
        is_worked |= token_among(tokens, i, worked, COUNT(worked));
    }
    if (is_worked) mark_add_letters(note, begin, found->end, found->where);
}

// "CRAYLE & SON on the biggest", "HOLDEN on two of them", "QUARREL on the iron": a piece, or a part that no
// list of places has; the token behind it, 0 where none is. Capitals that are one English word may be
// shouted.
size_t mark_on_piece(const struct note *note, size_t from, size_t at) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, at, "on", "inside", "under") || at + 2 >= tokens->count) return 0;
    if (!ANY(tokens, at + 1, "the", "each", "one", "both", "all", "two", "three", "most", "its")) return 0;
    struct word_entry entry;
    bool shouted = true;
    for (size_t i = from; i < at && shouted; i++) shouted = word_at(note, i, 1u << USE_WORD, &entry) > 0;
    size_t to = at + 2;
    if (ANY(tokens, at + 1, "the", "its")) {
        const struct token *word = &tokens->at[to];
        if (word->kind != TOKEN_WORD || word->capital || note->fault_word[to]) return 0;
        size_t size = strlen(word->fold);
        bool which =
            (size > 4 && !strcmp(word->fold + size - 3, "est")) ||
            ANY(tokens, to, "other", "others", "first", "second", "big", "small", "larger", "smaller");
        if (!which && (shouted || !word_at(note, to, UINT32_MAX, &entry))) return 0;
        to++;
        if (which && ANY(tokens, to, "one", "ones", "piece")) to++;
    } else if (ANY(tokens, to, "of") && ANY(tokens, to + 1, "them", "the", "these", "em")) {
        to += 2;
    } else if (shouted || tokens->at[to].stop == STOP_NONE) {
        return 0;
    }
    return to >= tokens->count || tokens->at[to].stop != STOP_NONE || ANY(tokens, to, "and", "but", "with")
               ? to
               : 0;
}

// "Mark on blade F. DUNNICK & SONS": the place stands between.
size_t mark_find_placed(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const char *where = NULL;
    // "Plate on front VULMER & CO", "stencil on the head PELL'S": what bears it
    bool bearer = ANY(tokens, i, "plate", "label", "badge", "transfer", "plaque", "tag", "decal", "sticker",
                      "nameplate", "stencil", "tally");
    if ((!bearer && !ANY(tokens, i, "mark", "stamp", "marking", "inscription", "legend", "name", "lettering",
                         "maker", "signature", "backstamp", "trademark")) ||
        mark_is_denied(note, i))
        return 0;
    size_t at = i + 1;
    bool trade = i > 0 && person_of_trade(tokens, i - 1); // "the printer's name is on the back, A. Torwell"
    if (trade && ANY(tokens, at, "is")) at++;
    bool cast = mark_is_stamp(note, at); // "name cast in the treadle: BRAITHE"
    size_t place = place_at(note, at + (cast ? 1 : 0), &where);
    bool makers = trade || (where && is_signed_part(where)); // a name elsewhere may be an owner's
    if (!cast && !makers && ANY(tokens, i, "name", "lettering", "maker")) return 0;
    if (cast) at++;
    if ((cast || bearer) && !place && ANY(tokens, at, "in", "on", "into", "under", "inside") &&
        ANY(tokens, at + 1, "the", "its") && at + 3 < tokens->count &&
        (tokens->at[at + 3].stop >= STOP_COMMA || tokens->at[at + 3].capitals)) { // a part that no list has
        where = note_words(note, at + 2, at + 3);
        place = 3;
    }
    if (!place || tokens->flat || tokens->shouts) return 0;
    at += place;
    if (ANY(tokens, at, ":", ",", "is", "reads")) at++;
    bool capitals = at < tokens->count && (tokens->at[at].capitals || tokens->at[at].kind == TOKEN_CODE ||
                                           (tokens->at[at].capital && !tokens->at[at].starts));
    size_t end = capitals ? mark_proper_run(note, at) : at;
    if (end == at || (end == at + 1 && mark_is_sloppy(note, at))) return 0;
    if (tokens->at[at].capitals || trade) end = mark_goes_on(note, at, end);
    struct mark_found found = {at, end, end, where};
    return mark_keep(note, i, &found) ? found.end - i : 0;
}

// "Engraved on the eyepiece rim TORWELL": a place that no list has, right before capitals; 0 for none.
size_t mark_place_unlisted(const struct note *note, size_t at, const char **where) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    if (tokens->flat || tokens->shouts || !ANY(tokens, at, "on", "in", "inside", "under", "round", "around"))
        return 0;
    size_t from = at + (ANY(tokens, at + 1, "the", "its", "one", "each") ? 2 : 1), to = from;
    while (to < tokens->count && to < from + WORDS_MOST && tokens->at[to].kind == TOKEN_WORD &&
           !tokens->at[to].capital && !note->fault_word[to] && !mark_is_breaker(note, to))
        to++;
    size_t letters = to > from ? mark_in_letters(note, to) : to; // "on the butt in ink TORWELL"
    const size_t place = to;
    if (letters > to) to = letters;
    while (letters == place && ANY(tokens, to, "back", "base", "lid", "handle", "side", "front", "bottom") &&
           to < from + WORDS_MOST)
        to++;
    size_t behind = to; // "embroidered on each foot is Ida 1941"
    if (to > from && to == place && ANY(tokens, to, "is", "are", "reads") && to + 1 < tokens->count &&
        mark_is_text(note, to + 1) && !tokens->at[to + 1].starts)
        behind = ++to;
    if (to == from || to >= tokens->count || !mark_is_text(note, to)) return 0;
    if (behind > place && letters == place) {
        *where = note_words(note, from, place);
        return to;
    }
    bool ends = to + 1 >= tokens->count || tokens->at[to + 1].stop != STOP_NONE;
    if (tokens->at[to].kind != TOKEN_WORD && !ends) return 0; // "stamped under the keeper 1943."
    *where = note_words(note, from, letters > place ? place : to);
    return to;
}

size_t mark_find_cast(struct note *note, size_t from, size_t to, size_t verb) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, verb + 1, "in", "on", "into") || !ANY(tokens, verb + 2, "it", "them")) return 0;
    size_t at = from > 0 && ANY(tokens, from - 1, "a", "an", "the") ? from - 1 : from;
    bool has = at > 1 && ANY(tokens, at - 1, "has", "with") && place_noun(note, at - 2);
    struct mark_found found = {from, to, verb + 3, has ? note_words(note, at - 2, at - 1) : NULL};
    return mark_keep(note, from, &found) ? found.end - from : 0;
}

size_t mark_goes_on(const struct note *note, size_t from, size_t end) {
    const struct tokens *tokens = &note->tokens;
    if (!mark_is_text(note, end - 1) || tokens->at[from].kind == TOKEN_FIGURE) return end;
    while (end - from < MARK_WORDS_MOST && end + 1 < tokens->count && token_is(tokens, end, ",")) {
        size_t at = end + 1, to = at;
        if (ANY(tokens, at, "no", "number")) {
            at += token_is(tokens, at + 1, ".") ? 2 : 1;
            to = at < tokens->count &&
                         (tokens->at[at].kind == TOKEN_FIGURE || tokens->at[at].kind == TOKEN_CODE)
                     ? at + 1
                     : at;
        } else if (tokens->at[at].kind == TOKEN_WORD && !note->fault_word[at]) {
            to = mark_proper_run(note, at);
        }
        const char *where;
        bool stops = to >= tokens->count || tokens->at[to].stop != STOP_NONE || place_at(note, to, &where) ||
                     (ANY(tokens, to, "and", "but") &&
                      ANY(tokens, to + 1, "one", "the", "two", "others", "another", "some"));
        if (to == at || !stops) break;
        end = to;
    }
    return end;
}

size_t mark_model_end(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i + 1;
    if (i == 0 || !ANY(tokens, i, "model", "type") || tokens->at[i].stop != STOP_NONE ||
        !mark_is_text(note, i - 1))
        return i;
    if (ANY(tokens, at, "no", "number") && token_is(tokens, at + 1, ".")) at++;
    if (ANY(tokens, at, "no", "number", ".")) at++;
    bool code =
        at < tokens->count && (tokens->at[at].kind == TOKEN_FIGURE || tokens->at[at].kind == TOKEN_CODE ||
                               (tokens->at[at].capitals && tokens->at[at].kind == TOKEN_WORD));
    return code ? at + 1 : i;
}

bool mark_is_on_bearer(const struct note *note, size_t i) {
    const char *where;
    return ANY(&note->tokens, i, "plate", "tag", "label", "badge", "nameplate", "decal", "sticker", "plaque",
               "transfer", "stamp", "mark", "backstamp", "hallmark") &&
           place_at(note, i + 1, &where) && !place_noun(note, i + 1);
}

// "Nameplates read VELTONE JR and MARVOX 6": what bears them is several, and so are they; the tokens, or 0.
size_t mark_keep_each(struct note *note, size_t says, const struct mark_found *found) {
    enum { EACH_MOST = 6 };
    const struct tokens *tokens = &note->tokens;
    const struct token *bearer = says > 0 ? &tokens->at[says - 1] : NULL;
    if (!bearer || bearer->kind != TOKEN_WORD || bearer->stop != STOP_NONE || bearer->one == bearer->fold ||
        !tokens->at[found->from].capitals)
        return 0;
    struct mark_found each[EACH_MOST] = {{found->from, found->from, found->from, found->where}};
    size_t count = 1, joints = 0;
    for (size_t k = found->from; k < found->to; k++) {
        bool joint = ANY(tokens, k, ",", "and") && k > found->from && k + 1 < found->to &&
                     mark_is_text(note, k - 1) && tokens->at[k + 1].capitals;
        if (joint && count == EACH_MOST) return 0;
        joints += joint;
        if (joint) each[count++] = (struct mark_found){k + 1, k + 1, k + 1, found->where};
        if (!joint) each[count - 1].to = each[count - 1].end = k + 1;
    }
    if (!joints) return 0;
    each[count - 1].end = found->end;
    size_t kept = 0;
    for (size_t k = 0; k < count; k++) {
        bool again = false; // the same words twice are one mark
        for (size_t m = 0; m < k; m++)
            again |= each[m].to - each[m].from == each[k].to - each[k].from &&
                     text_same(tokens->at[each[m].from].fold, tokens->at[each[k].from].fold);
        if (!again) kept += mark_keep(note, kept ? each[k].from : says, &each[k]);
        if (again) note_take(note, each[k].from, each[k].end, TAKEN_MARK);
    }
    return kept ? found->end - says : 0;
}

size_t mark_find_worn(struct note *note, size_t i, size_t end) {
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || !ANY(tokens, i - 1, "have", "has", "a", "with", "bear", "carry", "bears") ||
        tokens->at[end - 1].stop != STOP_NONE ||
        !ANY(tokens, end, "label", "labels", "tag", "tags", "stamp", "stamps", "sticker", "stickers",
             "backstamp", "backstamps") ||
        (end + 1 < tokens->count && tokens->at[end + 1].stop == STOP_NONE))
        return 0;
    struct mark_found worn = {i, end, end + 1, NULL};
    return mark_keep(note, i, &worn) ? worn.end - i : 0;
}
