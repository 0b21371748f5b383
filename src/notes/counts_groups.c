// SPDX-License-Identifier: MIT
// Behind the plural that the note begins with: how many there are of each look ("eight round and six
// square", "one black one white"), or by what they show ("rag dolls, two sisters").
#include "notes/any.h"
#include "notes/counts.h"
#include "notes/dimension.h"
#include "notes/number.h"
#include "notes/things.h"
#include "text/order.h"

enum { HEAD_TOKENS = 14, EACH_MOST = 200 };

static bool is_end(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

static bool is_many(const struct token *token) {
    return token->kind == TOKEN_WORD && token->one != token->fold && !text_same(token->one, token->fold);
}

// "Round", "dark blue ones", "in red", "with arms": what tells one group from the others; how many tokens.
static size_t look_at(const struct note *note, size_t i) {
    enum { LOOKS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    size_t at = i, n;
    if (ANY(tokens, at, "in", "is", "are")) at++;
    for (size_t k = 0; k < LOOKS_MOST && (n = count_look(note, at)) != 0; k++) {
        at += n;
        if (at < tokens->count && tokens->at[at - 1].stop != STOP_NONE) break;
    }
    if (at == i || (at == i + 1 && ANY(tokens, i, "in", "is", "are"))) return 0;
    if (ANY(tokens, at, "ones") || (ANY(tokens, at, "one") && is_end(note, at + 1))) at++;
    return at - i;
}

// "Eight round and six square", "one black one white", "14 assorted".
static bool looks_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i, number, groups = 0;
    int sum = 0;
    for (;;) {
        int count = number_whole(tokens, at, &number);
        size_t look = count > 0 && count <= EACH_MOST ? look_at(note, at + number) : 0;
        if (!look) break;
        sum += count;
        groups++;
        at += number + look;
        size_t next = at;
        while (next < at + 2 && ANY(tokens, next, ",", "and", "&", "+", "plus")) next++;
        if (!number_whole(tokens, next, &number) || !look_at(note, next + number)) break;
        at = next;
    }
    if (sum < 2 || !is_end(note, at)) return false;
    *tally = (struct tally){sum, at - i, NULL, false};
    return true;
}

// "Rag dolls, two sisters", "planters, three swans": by what they show, and by nothing that is on them.
static bool shown_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    static const uint32_t shown = (1u << USE_THEME) | (1u << USE_PERSON) | (1u << USE_NATURE);
    size_t number = 0;
    int count = number_whole(tokens, i, &number);
    size_t noun = i + number;
    struct word_entry entry;
    struct part part;
    if (count < 2 || count > EACH_MOST || noun >= tokens->count || !is_many(&tokens->at[noun]) ||
        note->fault_word[noun] || note->taken[noun] != TAKEN_NOT || part_at(note, noun, &part) ||
        !word_at(note, noun, shown, &entry) || word_at(note, noun, 1u << USE_PART, &entry) ||
        ANY(tokens, noun, "owners", "people", "persons", "hands", "kids", "children", "legs", "feet", "arms",
            "heads", "men", "eyes", "players", "flowers", "buds", "leaves", "roses", "generations"))
        return false;
    if (!is_end(note, noun + 1)) return false;
    *tally = (struct tally){count, number, NULL, false};
    return true;
}

// "Bowls, nested, 3", "napkins, linen, eight, hemmed": a number alone behind looks.
static bool alone_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    int count = number_whole(tokens, i, &number);
    if (count < 2 || count > EACH_MOST || !is_end(note, i + number) || i + number >= tokens->count)
        return false;
    if (tokens->at[i].kind == TOKEN_FIGURE && (count == 45 || count == 78 || count == 33)) return false;
    struct noun_found goods;
    for (size_t k = 0; k + 1 < i; k++) {
        if (tokens->at[k].kind == TOKEN_FIGURE || ANY(tokens, k, "size", "age", "no", "number", "grade"))
            return false;
        bool worn = (noun_at(note, k, &goods) && goods.family && text_same(goods.family, "footwear")) ||
                    ANY(tokens, k, "gloves", "hats", "rings", "ring", "hat", "trousers", "pants", "jeans",
                        "dress", "shirt", "skirt", "shorts", "leggings", "tights", "slacks", "overalls");
        if (worn && tokens->at[i].kind == TOKEN_FIGURE) return false; // "gloves, leather, 8"
    }
    *tally = (struct tally){count, number, NULL, false};
    return true;
}

// "Chisels, a handful, seven with beech handles".
static bool vague_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    if (i < 4 || !token_is(tokens, i - 1, ",") ||
        !ANY(tokens, i - 2, "handful", "bunch", "few", "several", "group", "pile", "heap", "assortment",
             "lot", "bundle", "batch", "collection", "stack") ||
        !(ANY(tokens, i - 3, "a", "small", "good", "little") || ANY(tokens, i - 3, ",")))
        return false;
    int count = number_whole(tokens, i, &number);
    if (count < 2 || count > EACH_MOST ||
        !(is_end(note, i + number) || ANY(tokens, i + number, "with", "in", "by", "all", "of", "or")))
        return false;
    *tally = (struct tally){count, number, NULL, false};
    return true;
}

// "Cups and saucers, four of each": as many of each plural that the note begins with.
static bool each_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0, kinds = 0;
    int count = number_whole(tokens, i, &number);
    if (count < 2 || count > EACH_MOST || !token_phrase(tokens, i + number, "of each") ||
        !is_end(note, i + number + 2))
        return false;
    for (size_t k = 0; k + 1 < i; k++)
        kinds += is_many(&tokens->at[k]) && !note->fault_word[k] &&
                 (is_end(note, k + 1) || ANY(tokens, k + 1, "and", "&"));
    *tally = (struct tally){count * (int)(kinds ? kinds : 1), number + 2, NULL, false};
    return true;
}

// "Volumes 1 and 2", "issues 1 through 20".
static bool range_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t first, last;
    if (!ANY(tokens, i, "vols", "volumes", "issues", "vol", "books")) return false;
    size_t at = i + 1 + (token_is(tokens, i + 1, ".") ? 1 : 0);
    int from = number_whole(tokens, at, &first), to;
    if (from < 1 || !ANY(tokens, at + first, "and", "&", "to", "through", "thru", "-")) return false;
    to = number_whole(tokens, at + first + 1, &last);
    if (to <= from || to - from >= EACH_MOST || !is_end(note, at + first + 1 + last)) return false;
    bool two = ANY(tokens, at + first, "and", "&");
    *tally = (struct tally){two ? 2 : to - from + 1, at + first + 1 + last - i, NULL, false};
    return true;
}

bool count_groups_at(const struct note *note, size_t i, struct tally *tally) {
    if (i > 0 && i < HEAD_TOKENS && count_is_first_sentence(note, i) && range_at(note, i, tally)) return true;
    if (i < 2 || i > HEAD_TOKENS || note->tokens.at[i - 1].stop < STOP_COMMA ||
        !number_may_be(&note->tokens, i) || !count_is_first_sentence(note, i) ||
        !count_begins_with_many(note, i))
        return false;
    return each_at(note, i, tally) || looks_at(note, i, tally) || shown_at(note, i, tally) ||
           vague_at(note, i, tally) || alone_at(note, i, tally);
}
