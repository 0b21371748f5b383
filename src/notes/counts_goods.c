// SPDX-License-Identifier: MIT
// Counts that follow from what the goods are: yarn by the skein, magazines by the issue, postcards "of the
// same view", a set of so many, what is named one by one, and goods that are two by their name.
#include <string.h>

#include "notes/any.h"
#include "notes/counts.h"
#include "notes/dimension.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { HEAD_TOKENS = 10, GOODS_MOST = 500 };

static bool is_end(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

static bool opens_phrase(const struct note *note, size_t i) {
    return i > 0 && note->tokens.at[i - 1].stop >= STOP_COMMA;
}

// Is token `i` one of words that each have a space on both sides?
static bool is_in(const struct tokens *tokens, size_t i, const char *words) {
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD) return false;
    const char *word = tokens->at[i].fold;
    size_t size = strlen(word);
    for (const char *at = words; (at = strstr(at, word)) != NULL; at++)
        if (at > words && at[-1] == ' ' && at[size] == ' ') return true;
    return false;
}

// "Yarn, six skeins of worsted", "magazine lot, 12 issues of": what such goods are counted by.
static bool measured_at(const struct note *note, size_t i, struct tally *tally) {
    static const struct {
        const char *goods, *units;
    } kinds[] = {
        {" yarn wool cotton thread floss twine string cord ribbon ",
         " skeins hanks balls spools cones reels cards "},
        {" magazine magazines comics comic newspaper newspapers journal journals periodicals ",
         " issues copies numbers volumes "},
        {" wallpaper paper vinyl fabric cloth oilcloth ", " rolls sheets bolts lengths reams "},
        {" seed seeds ", " packets packs envelopes "},
        {" soap soaps ", " bars cakes "},
        {" cards ", " decks packs "},
        {" music scores ", " songs pieces sheets titles scores "},
    };
    const struct tokens *tokens = &note->tokens;
    size_t number;
    if (!opens_phrase(note, i) || !count_is_first_sentence(note, i)) return false;
    int count = count_number(note, i, &number);
    if (count < 2 || count > GOODS_MOST) return false;
    for (size_t k = 0; k < COUNT(kinds); k++) {
        bool goods = false;
        if (!is_in(tokens, i + number, kinds[k].units)) continue;
        for (size_t at = 0; at < i && at < HEAD_TOKENS; at++) goods |= is_in(tokens, at, kinds[k].goods);
        if (goods) *tally = (struct tally){count, number, tokens->at[i + number].one, false};
        return goods;
    }
    return false;
}

// "Postcards of a lake, 9 of the same view".
static bool same_at(const struct note *note, size_t i, struct tally *tally) {
    size_t number;
    if (!opens_phrase(note, i) || !count_is_first_sentence(note, i) || !count_begins_with_many(note, i))
        return false;
    int count = count_number(note, i, &number);
    if (count < 2 || count > GOODS_MOST || !token_phrase(&note->tokens, i + number, "of the same"))
        return false;
    *tally = (struct tally){count, number, NULL, false};
    return true;
}

// "Canister set, four aluminum, copper lids": what a set at the head of the note has.
static bool of_set_at(const struct note *note, size_t i, struct tally *tally) {
    const uint32_t looks = (1u << USE_COLOR) | (1u << USE_MATERIAL);
    struct word_entry entry;
    size_t number;
    if (i < 2 || i > HEAD_TOKENS || note->tokens.at[i - 1].stop < STOP_COMMA ||
        !count_is_first_sentence(note, i))
        return false;
    size_t set = token_is(&note->tokens, i - 1, ",") ? i - 2 : i - 1;
    int count = ANY(&note->tokens, set, "set", "lot") ? count_number(note, i, &number) : 0;
    if (count < 2 || count > GOODS_MOST) return false;
    size_t look = i + number, n = look < note->tokens.count ? word_at(note, look, looks, &entry) : 0;
    if (!n || !is_end(note, look + n)) return false;
    *tally = (struct tally){count, number, NULL, false};
    return true;
}

// Does a sentence before token `i` name in the plural what is named there?
static bool is_named_before(const struct note *note, size_t i) {
    for (size_t k = 0; k < i && k < HEAD_TOKENS; k++)
        if (text_same(note->tokens.at[k].fold, note->tokens.at[i].fold)) return true;
    return false;
}

// "Box of wooden blocks. 27 blocks, I don't know how many there should be."
static bool again_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number;
    if (i == 0 || tokens->at[i - 1].stop < STOP_SENTENCE) return false;
    int count = count_number(note, i, &number);
    size_t noun = i + number;
    struct part part;
    if (count < 2 || count > GOODS_MOST || noun >= tokens->count || tokens->at[noun].kind != TOKEN_WORD ||
        tokens->at[noun].one == tokens->at[noun].fold || !is_named_before(note, noun) ||
        part_at(note, noun, &part) || note->fault_word[noun] || !is_end(note, noun + 1))
        return false;
    if (noun + 2 < tokens->count && tokens->at[noun + 1].stop < STOP_SENTENCE) {
        size_t next = noun + 1 + (token_is(tokens, noun + 1, ",") ? 1 : 0);
        if (note->fault_word[next] ||
            !ANY(tokens, next, "i", "we", "don't", "no", "not", "by", "that's", "all"))
            return false; // "four plates, chipped" are four of them
    }
    *tally = (struct tally){count, number + 1, tokens->at[noun].one, false};
    return true;
}

// "A mallard", "fork": one thing by its name; how many tokens.
static size_t one_named(const struct note *note, size_t i, bool *article) {
    const struct tokens *tokens = &note->tokens;
    struct noun_found noun;
    size_t at = i;
    *article = ANY(tokens, at, "a", "an", "one");
    if (*article) at++;
    if (at >= tokens->count || note->taken[at] != TAKEN_NOT || note->fault_word[at] ||
        tokens->at[at].kind != TOKEN_WORD || tokens->at[at].one != tokens->at[at].fold)
        return 0;
    if (*article) {
        size_t to = at + 1;
        if (!is_end(note, to) && !ANY(tokens, to, "and") && tokens->at[to].kind == TOKEN_WORD) to++;
        return to - i;
    }
    return noun_at(note, at, &noun) && noun.thing && !noun.part ? noun.to - i : 0;
}

// "Garden tools, trowel and fork": two that the plural before them stands for.
static bool two_named_at(const struct note *note, size_t i, struct tally *tally) {
    bool first, second;
    if (!opens_phrase(note, i) || i > HEAD_TOKENS || !count_is_first_sentence(note, i) ||
        !count_begins_with_many(note, i))
        return false;
    size_t n = one_named(note, i, &first);
    if (!n || !token_is(&note->tokens, i + n, "and") || note->tokens.at[i + n - 1].stop != STOP_NONE)
        return false;
    size_t m = one_named(note, i + n + 1, &second);
    if (!m || first != second || !is_end(note, i + n + 1 + m)) return false;
    *tally = (struct tally){2, n + 1 + m, NULL, false};
    return true;
}

// "Double six dominoes, bone. All 28 there."
static bool all_there_at(const struct note *note, size_t i, struct tally *tally) {
    size_t number;
    if (!opens_phrase(note, i) || !token_is(&note->tokens, i, "all") || !count_begins_with_many(note, i))
        return false;
    int count = count_number(note, i + 1, &number);
    if (count < 2 || count > GOODS_MOST || !ANY(&note->tokens, i + 1 + number, "there", "here", "present"))
        return false;
    *tally = (struct tally){count, 1 + number, NULL, false};
    return true;
}

// "Wooden train, an engine and four cars", "salad set, one big bowl and six small": the one and the others.
static bool one_and_others_at(const struct note *note, size_t i, struct tally *tally) {
    enum { NAME_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    size_t number, at = i + 1, set = i > 1 && token_is(tokens, i - 1, ",") ? i - 2 : i - 1;
    if (!opens_phrase(note, i) || i > HEAD_TOKENS || !count_is_first_sentence(note, i) ||
        !ANY(tokens, i, "a", "an", "one") || !ANY(tokens, set, "train", "set", "service", "lot", "outfit"))
        return false;
    while (at <= i + NAME_MOST && at < tokens->count && tokens->at[at].stop == STOP_NONE &&
           tokens->at[at].kind == TOKEN_WORD && !note->fault_word[at] &&
           !ANY(tokens, at, "and", "with", "of"))
        at++;
    if (at == i + 1 || !ANY(tokens, at, "and", "&")) return false;
    int count = count_number(note, at + 1, &number);
    size_t noun = at + 1 + number;
    if (count < 2 || count > GOODS_MOST || noun >= tokens->count || tokens->at[noun].kind != TOKEN_WORD)
        return false;
    bool many =
        tokens->at[noun].one != tokens->at[noun].fold || ANY(tokens, noun, "small", "large", "little");
    if (!many || note->fault_word[noun] || !is_end(note, noun + 1)) return false;
    *tally = (struct tally){1 + count, at + 1 + number - i, NULL, false};
    return true;
}

bool count_goods_at(const struct note *note, size_t i, struct tally *tally) {
    return measured_at(note, i, tally) || same_at(note, i, tally) || of_set_at(note, i, tally) ||
           again_at(note, i, tally) || two_named_at(note, i, tally) || all_there_at(note, i, tally) ||
           one_and_others_at(note, i, tally);
}

size_t count_two_by_name(const struct note *note) {
    static const char *const names[] = {"salt and pepper", "salt & pepper", "pepper and salt"};
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < HEAD_TOKENS && i < tokens->count && tokens->at[i].stop < STOP_SENTENCE; i++) {
        size_t n = token_longest(tokens, i, names, COUNT(names));
        if (!n ||
            ANY(tokens, i + n, "mill", "tray", "stand", "caddy", "holder", "rack", "lid", "color", "tweed"))
            continue;
        for (size_t k = 0; k < i; k++)
            if (ANY(tokens, k, "for", "sets", "with", "no", "without", "from", "in")) return 0;
        return i + n;
    }
    return 0;
}
