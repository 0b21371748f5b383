// SPDX-License-Identifier: MIT
// Which of several pieces has the fault: "the yellow one", "the pink cup", "the biggest of the three", "sugar
// is chipped" of a sugar bowl and creamer.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool preposition_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"on",     "in",   "at",     "near",  "by",    "under",
                                        "inside", "of",   "behind", "below", "above", "between",
                                        "to",     "from", "around", "over"};
    return token_among(tokens, i, words, COUNT(words));
}

bool spot_tells_which(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"big",   "small",  "large",   "little", "bigger", "smaller", "tall",
                                        "short", "first",  "second",  "third",  "last",   "other",   "left",
                                        "right", "taller", "shorter", "larger", "fourth", "middle",  "older",
                                        "newer", "top",    "bottom",  "long",   "longer", "round",   "square",
                                        "upper", "lower",  "front",   "back",   "outer",  "inner",   "thin"};
    const char *word = i < tokens->count ? tokens->at[i].fold : "";
    size_t size = strlen(word);
    return token_among(tokens, i, words, COUNT(words)) || (size > 5 && text_same(word + size - 3, "est"));
}

size_t spot_one_of(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    if (i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE || !spot_tells_which(tokens, i)) return 0;
    if (token_is(tokens, i + 1, "one")) return i + 2;
    last = last ? last + 1 : type; // of "boots"
    const struct token *noun = &tokens->at[i + 1];
    bool same = last && noun->one == noun->fold && strlen(noun->fold) > 2 &&
                !strncmp(last, noun->fold, strlen(noun->fold));
    return same && !r->part[i + 1] ? i + 2 : 0;
}

// "The [clear] one", "the [tea] one", of several.
static bool is_any_piece(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    return r->note->record->count > 1 && token_is(tokens, i + 1, "one") && tokens->at[i].kind == TOKEN_WORD &&
           !ANY(tokens, i, "only", "same", "odd");
}

// "The pink cup", "the smaller one", at `start`.
static bool piece_named(const struct fault_reader *r, size_t start, size_t i, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    struct word_entry entry;
    struct noun_found found;
    if (!token_is(tokens, start, "the")) return false;
    size_t n = word_at(r->note, start + 1, 1u << USE_COLOR, &entry), noun = start + 1 + n;
    if (!n && spot_tells_which(tokens, start + 1)) noun = start + 2;
    if (noun == start + 1 && is_any_piece(r, start + 1)) noun = start + 2;
    if (noun == start + 1 || noun >= i) return false;
    bool one = token_is(tokens, noun, "one");
    if (!one && !noun_at(r->note, noun, &found)) return false;
    *from = start + 1;
    *to = one ? noun + 1 : found.to;
    return *to <= i;
}

static bool opens_verb(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "is", "has", "was", "had", "wants", "needs", "lacks", "leans", "won't", "doesn't",
               "shows", "wobbles", "rattles", "leaks", "came", "lost", "got", "rocks");
}

// "… the right one is bent", "the biggest of the three", further on in the sentence.
static bool piece_of_many(const struct fault_reader *r, size_t start, size_t i, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = i; at > start + 1; at--) {
        size_t which = at - 1;
        if ((r->scope.fault[which] && !r->part[which]) || (r->scope.stance[which] & STANCE_WITHDRAWN))
            return false;
        bool opens = token_is(tokens, which - 1, "the");
        if (!opens || !(spot_tells_which(tokens, which) || is_any_piece(r, which))) continue;
        bool one = token_is(tokens, which + 1, "one"), of = token_is(tokens, which + 1, "of");
        size_t size = strlen(tokens->at[which].fold);
        bool most = size > 5 && text_same(tokens->at[which].fold + size - 3, "est");
        bool alone = most && opens_verb(tokens, which + 1); // "the tallest has lost its pan"
        if ((which + 1 >= i || (!one && !(of && most))) && !alone) continue;
        if (which > 2 && preposition_at(tokens, which - 2) && r->part[which - 3])
            return false; // "the handle on the lower one wobbles"
        *from = which;
        *to = which + (one ? 2 : 1);
        return true;
    }
    return false;
}

// "One of the rockers, the right one, has a split": a side names one of two, though nothing was counted.
static bool side_named(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    static const char *const sides[] = {"left",   "right", "front", "back", "top",
                                        "bottom", "upper", "lower", "rear"};
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, i);
    bool opens = start + 1 < i && token_among(tokens, start, sides, COUNT(sides)) &&
                 token_is(tokens, start + 1, "one"); // "Left one has a chip."
    for (size_t k = start + 2; opens && k < i; k++)
        opens = !r->part[k] && !r->scope.fault[k] && tokens->at[k].stop == STOP_NONE &&
                !token_is(tokens, k, "and");
    if (opens) return *from = start, *to = start + 2, true;
    if (!piece_of_many(r, start, i, from, to)) return false;
    size_t lead = *from - (*from > start && spot_article(tokens, *from - 1) ? 1 : 0);
    bool place =
        lead > start && ANY(tokens, lead - 1, "on", "in", "at", "from") && !token_is(tokens, *to, "of");
    for (size_t k = *to; place && k < i;
         k++) // "a scuff on the left one, and the heels are worn": of the heels
        if (token_is(tokens, k, "and") || tokens->at[k].stop != STOP_NONE) return false;
    return token_is(tokens, *to, "of") ||
           (token_among(tokens, *from, sides, COUNT(sides)) && *to == *from + 2);
}

// "Both handles work but the left one is bent": a side of the parts that the sentence has named.
bool spot_side_of_parts(const struct fault_reader *r, size_t i, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    size_t side, end, start = scope_sentence_start(&r->scope, i);
    if (r->note->record->count > 1 || !side_named(r, i, &side, &end) || token_is(tokens, end, "of"))
        return false;
    for (size_t at = side; at > start; at--) {
        const struct token *token = &tokens->at[at - 1];
        if (!r->part[at - 1] || r->scope.fault[at - 1] || token->one == token->fold ||
            spot_adverb(tokens, at - 1) || r->note->taken[at - 1] == TAKEN_TYPE)
            continue;
        size_t first = at - 1;
        while (first > start && r->part[first - 1] && tokens->at[first - 1].stop == STOP_NONE &&
               !spot_article(tokens, first - 1))
            first--;
        spot->part_from = first;
        spot->part_to = at;
        spot->which = tokens->at[side].fold;
        return true;
    }
    return false;
}

// "Ribs, two are bent", "the pages are fine but three are torn": the number stands for what the sentence
// began with.
static bool spot_named_before(const struct fault_reader *r, size_t number, size_t *from, size_t *to) {
    static const char *const links[] = {"are", "were", "is", "all"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = scope_sentence_start(&r->scope, number);
    while (spot_article(tokens, at)) at++;
    if (at + 1 >= number || tokens->at[at].kind != TOKEN_WORD || tokens->at[at].one == tokens->at[at].fold ||
        r->scope.fault[at] || r->note->taken[at] == TAKEN_TYPE)
        return false;
    struct noun_found noun;
    bool stands = tokens->at[at + 1].stop == STOP_COMMA || token_among(tokens, at + 1, links, COUNT(links));
    if (!stands || !(r->part[at] || noun_at(r->note, at, &noun))) return false;
    for (size_t i = at + 1; i < number; i++)
        if (r->scope.fault[i] || r->part[i]) return false;
    *from = at;
    *to = at + 1;
    return true;
}

// "Two ribs are bent", "2 of the 24 drops are chipped": a noun that is counted, and is not the thing.
bool spot_counted(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    static const char *const verbs[] = {"is",   "are", "has", "have",     "all",
                                        "both", "a",   "bit", "slightly", "badly"};
    static const char *const amounts[] = {"couple", "several", "few", "some", "both", "all", "half", "dozen"};
    static const char *const between[] = {"of",  "the",   "its",   "these", "small",
                                          "big", "outer", "inner", "other"};
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    struct noun_found many;
    if (i > 1 && ANY(tokens, i, "one", "two", "three") && ANY(tokens, i - 1, "but", ",") &&
        tokens->at[i - 2].one != tokens->at[i - 2].fold && !r->scope.fault[i - 2] &&
        r->note->taken[i - 2] != TAKEN_TYPE && (r->part[i - 2] || noun_at(r->note, i - 2, &many)))
        return *from = i - 2, *to = i - 1, true; // "brass handles but one is odd"
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE && token_among(tokens, at - 1, verbs, COUNT(verbs)))
        at--;
    bool number = at > 2 && degrees_number(tokens, at - 1) > 0 &&
                  (token_is(tokens, at - 2, "but") || tokens->at[at - 2].stop == STOP_COMMA);
    if (number) return spot_named_before(r, at - 1, from, to);
    if (at < 2 || tokens->at[at - 1].kind != TOKEN_WORD || r->scope.fault[at - 1] ||
        tokens->at[at - 1].one == tokens->at[at - 1].fold || r->note->taken[at - 1] == TAKEN_TYPE ||
        r->note->taken[at - 1] == TAKEN_MEASURE)
        return false;
    static const char *const spans[] = {"mins",  "minutes", "secs",   "seconds", "hours", "hrs",   "days",
                                        "weeks", "months",  "years",  "times",   "goes",  "tries", "inches",
                                        "feet",  "yards",   "pieces", "places",  "bits",  "parts"};
    if (token_among(tokens, at - 1, spans, COUNT(spans))) return false; // "ticks for ten mins then stops"
    size_t back = at - 1, size = strlen(tokens->at[at - 1].fold);
    if (size > 3 && text_same(tokens->at[at - 1].fold + size - 3, "ous"))
        return false; // "two enormous holes"
    for (size_t n = 0; n < WORDS_MOST && back > 0 && token_among(tokens, back - 1, between, COUNT(between));
         n++)
        back--;
    bool counted =
        back > 0 && tokens->at[back - 1].stop == STOP_NONE &&
        (degrees_number(tokens, back - 1) > 1 || token_among(tokens, back - 1, amounts, COUNT(amounts)));
    const char *type = r->note->record->type.value;
    struct noun_found found;
    counted |= back == at - 1 && at < i + 1 && (back == 0 || tokens->at[back - 1].stop != STOP_NONE) &&
               noun_at(r->note, back, &found); // "Runners rusted", "rungs are loose"
    if (!counted || (type && strstr(type, tokens->at[at - 1].one))) return false;
    *from = at - 1;
    *to = at;
    return true;
}

// Does token `i` name one of the two things of `type`: "sugar" or "creamer" of "sugar bowl and creamer"?
static bool is_of_two(const struct tokens *tokens, const char *type, size_t i) {
    enum { WORD_MOST = 40 };
    if (tokens->at[i].kind != TOKEN_WORD) return false;
    char word[WORD_MOST];
    const char *one = tokens->at[i].one, *apostrophe = strchr(one, '\'');
    size_t size = apostrophe ? (size_t)(apostrophe - one) : strlen(one); // "the saucer's cracked"
    if (size < 3 || size >= sizeof word) return false;
    memcpy(word, one, size);
    word[size] = '\0';
    const char *second = strstr(type, " and ") + strlen(" and ");
    return !strncmp(type, word, size) || !strncmp(second, word, size);
}

// "Sugar bowl and creamer. Sugar is chipped", "cup chipped and the saucer has a hairline": the nearest one
// that opens the sentence or what follows a comma or an "and" of it.
static bool piece_of_two(const struct fault_reader *r, const char *type, size_t start, size_t i,
                         size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = i; at-- > start;) {
        if (!is_of_two(tokens, type, at)) continue;
        size_t first = at > start && ANY(tokens, at - 1, "the", "its") ? at - 1 : at;
        bool opens = first == start || tokens->at[first - 1].stop != STOP_NONE ||
                     ANY(tokens, first - 1, "and", "but", "while");
        if (!opens) continue;
        *from = at;
        return true;
    }
    return false;
}

// "The yellow one", "the pink cup" of several: which of them, where no part is named.
bool spot_piece(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value;
    const char *and = type ? strstr(type, " and ") : NULL;
    if (r->note->record->count < 2 && !and) return side_named(r, i, from, to);
    size_t start = scope_sentence_start(&r->scope, i);
    while (start < i && (preposition_at(tokens, start) || tokens->at[start].stop != STOP_NONE)) start++;
    const struct note_span named = r->note->record->type.span; // "cup and saucer, the handle is cracked"
    while (and&&start < i && named.to && tokens->at[start].from < named.to) start++;
    if (and&&piece_of_two(r, type, start, i, from)) {
        const char *words = note_words(r->note, *from, *from + 2);                 // "sugar bowl"
        bool more = *from + 2 <= i && (strstr(type, words) || r->part[*from + 1]); // "the sugar lid"
        *to = *from + (more ? 2 : 1);
        return true;
    }
    return piece_of_many(r, start, i, from, to) || piece_named(r, start, i, from, to);
}

bool spot_agrees(const struct fault_reader *r, const struct fault_hit *hit, size_t noun) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = scope_clause_start(&r->scope, hit->from);
    if (at <= noun) return true;
    while (at < hit->from && tokens->at[at].kind != TOKEN_WORD) at++;
    if (ANY(tokens, at, "but", "and", "though", "although", "yet")) at++;
    bool many = tokens->at[noun].one != tokens->at[noun].fold;
    if (many || at >= hit->from) return true;
    return !ANY(tokens, at, "they're", "they", "they've", "theyre");
}
