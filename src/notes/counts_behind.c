// SPDX-License-Identifier: MIT
// How many there are, told behind what the note begins with by what holds them ("flags, a bundle of 14",
// "chisels, 12 in a box"), by the noun of which there is a set ("hand bell set, eight bells") or in volumes.
#include "notes/counts.h"

#include "notes/any.h"
#include "notes/number.h"
#include "text/order.h"

enum { HELD_MOST = 500, HEAD_MOST = 16 };

static bool is_end(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

static bool is_many(const struct token *token) {
    return token->kind == TOKEN_WORD && token->one != token->fold && !text_same(token->one, token->fold);
}

// "In a box", "in cardboard tubes", and no "12 in deep".
static bool is_held(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "in", "on") || i + 2 >= tokens->count || tokens->at[i].stop != STOP_NONE ||
        tokens->at[i + 1].kind != TOKEN_WORD)
        return false;
    // "Four on the cuffs" tells where some of them are
    if (ANY(tokens, i, "on") &&
        !ANY(tokens, i + 2, "card", "cards", "rack", "board", "string", "ring", "stand", "tray", "sheet",
             "roll", "wire", "rail", "chain", "hook", "wooden"))
        return false;
    if (ANY(tokens, i + 1, "graduated", "assorted", "various", "different", "mixed") &&
        ANY(tokens, i + 2, "sizes", "colors", "colours", "patterns", "shapes", "lengths", "widths", "shades"))
        return true;
    if (ANY(tokens, i + 1, "a", "an", "the", "its", "their", "one"))
        return !ANY(tokens, i + 2, "row", "set", "line", "side", "corner", "middle");
    return tokens->at[i + 1].stop == STOP_NONE && is_many(&tokens->at[i + 2]) &&
           ANY(tokens, i + 1, "cardboard", "paper", "wooden", "tin", "card", "cloth", "original", "plastic",
               "glass");
}

// ", 12 in a box".
static bool held_at(const struct note *note, size_t i, struct tally *tally) {
    size_t number = 0;
    if (!token_is(&note->tokens, i - 1, ",")) return false;
    int count = count_number(note, i, &number); // "a dozen in a tin"
    if (count < 2 || count > HELD_MOST || !is_held(note, i + number)) return false;
    *tally = (struct tally){count, number, NULL, false};
    return true;
}

// ", a bundle of 14,".
static bool bundle_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0, lead = ANY(tokens, i - 1, "a", "one") ? i - 1 : i;
    if (!ANY(tokens, i, "bundle", "box", "bag", "lot", "set", "stack", "pile", "bunch", "tin", "roll", "pack",
             "packet", "string", "group", "tray", "crate", "jar", "tub", "batch", "collection", "card",
             "sheet") ||
        !token_is(tokens, i + 1, "of") || lead == 0 || !token_is(tokens, lead - 1, ","))
        return false;
    int count = number_whole(tokens, i + 2, &number);
    if (count < 2 || count > HELD_MOST || !is_end(note, i + 2 + number)) return false;
    *tally = (struct tally){count, 2 + number, NULL, false};
    return true;
}

// "Signal flag set, 26 flags in a roll".
static bool of_set_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0, set = 1;
    if (!token_is(tokens, i - 1, ",")) return false;
    int count = number_whole(tokens, i, &number);
    size_t noun = count > 1 && count <= HELD_MOST ? count_plural(note, i + number) : 0;
    while (set < i && !token_is(tokens, set, "set")) set++;
    if (!noun || set >= i || note->fault_word[noun]) return false;
    for (size_t k = 0; k < set; k++)
        if (text_same(tokens->at[k].one, tokens->at[noun].one)) {
            *tally = (struct tally){count, number, tokens->at[noun].one, false};
            return true;
        }
    return false;
}

// ", I have four" behind the number of the whole: how many are left; 0 where that is not said.
static int had_behind(const struct note *note, size_t i, int whole) {
    static const char *const leads[] = {"i have",    "i've got", "i only have", "we have",  "i got",
                                        "there are", "only",     "here are",    "have only"};
    size_t at = i, number = 0;
    while (at < i + 2 && ANY(&note->tokens, at, ",", "-", "but", "of", "which", "and")) at++;
    size_t lead = at > i ? token_longest(&note->tokens, at, leads, sizeof leads / sizeof *leads) : 0;
    int count = lead ? number_whole(&note->tokens, at + lead, &number) : 0;
    size_t to = at + lead + number;
    if (count < 1 || count >= whole) return 0;
    return is_end(note, to) || ANY(&note->tokens, to, "of", "here", "left", "and") ? count : 0;
}

// "Gazetteer in three volumes", "gazetteer, 3 vols", "in six volumes, I have five".
static bool volumes_at(const struct note *note, size_t i, struct tally *tally) {
    size_t number = 0, in = token_is(&note->tokens, i, "in");
    if (!in && !token_is(&note->tokens, i - 1, ",")) return false;
    int count = number_whole(&note->tokens, i + in, &number);
    if (count < 2 || count > HELD_MOST || !ANY(&note->tokens, i + in + number, "volumes", "vols"))
        return false;
    int had = had_behind(note, i + in + number + 1, count);
    *tally = (struct tally){had ? had : count, number + in, "volume", false};
    return true;
}

// "Napkin rings, six brass ones": of the plural that the note begins with.
static bool ones_at(const struct note *note, size_t i, struct tally *tally) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    if (!token_is(tokens, i - 1, ",")) return false;
    int count = number_whole(tokens, i, &number);
    if (count < 2 || count > HELD_MOST) return false;
    for (size_t at = i + number; at <= i + number + WORDS_MOST && at < tokens->count; at++) {
        if (token_is(tokens, at, "ones")) {
            *tally = (struct tally){count, number, NULL, false};
            return true;
        }
        if (tokens->at[at].stop != STOP_NONE || note->fault_word[at] ||
            ANY(tokens, at, "odd", "spare", "new"))
            return false;
    }
    return false;
}

// "Bound volumes of a parish paper, three."
static bool last_at(const struct note *note, size_t i, struct tally *tally) {
    enum { MOST = 60 };
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    if (!token_is(tokens, i - 1, ",")) return false;
    int count = number_whole(tokens, i, &number);
    size_t end = i + number;
    if (count < 2 || count > MOST || (end < tokens->count && tokens->at[end].stop < STOP_SENTENCE))
        return false;
    for (size_t k = 0; k + 1 < i; k++)
        if (tokens->at[k].stop != STOP_NONE || tokens->at[k].kind != TOKEN_WORD) return false;
    *tally = (struct tally){count, number, NULL, false};
    return true;
}

// "Box of 78s, 23 records", "paperback lot, 12 sci fi": by another word for them.
static bool others_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    if (i < 2 || !token_is(tokens, i - 1, ",")) return false;
    int count = number_whole(tokens, i, &number);
    size_t at = i + number;
    if (count < 2 || count > HELD_MOST || at >= tokens->count || tokens->at[at].kind != TOKEN_WORD)
        return false;
    bool lot =
        ANY(tokens, i - 2, "lot", "bundle", "collection") && !note->fault_word[at] &&
        !count_plural(note, at) &&
        !ANY(tokens, at, "inches", "in", "cm", "mm", "ft", "feet", "lbs", "lb", "oz", "of", "are", "have");
    bool same = ANY(tokens, at, "lps", "albums", "singles", "paperbacks", "hardbacks", "hardcovers", "novels",
                    "magazines", "skeins", "bottles", "photos", "vols", "records", "discs", "clubs", "books",
                    "pieces", "items", "volumes", "cards", "prints", "slides", "tapes", "sheets", "issues",
                    "copies") &&
                is_end(note, at + 1);
    bool kind =
        ANY(tokens, 0, "flatware", "silverware", "cutlery", "sheet", "music", "stainless", "silverplate") &&
        (same || ANY(tokens, at, "forks", "knives", "spoons", "teaspoons", "songs")) &&
        (is_end(note, at + 1) || ANY(tokens, at + 1, "only"));
    if (kind && !(at + 1 < tokens->count && token_is(tokens, at + 1, ",") && number_may_be(tokens, at + 2))) {
        *tally = (struct tally){count, number, NULL, false};
        return true;
    }
    if (!lot && !(count_begins_with_many(note, i) && same) &&
        !(same && ANY(tokens, 0, "box", "crate", "case", "bag", "stack") && token_is(tokens, 1, "of")))
        return false;
    *tally = (struct tally){count, number, NULL, false};
    return true;
}

bool count_behind_at(const struct note *note, size_t i, struct tally *tally) {
    if (i < 1 || i > HEAD_MOST || !count_is_first_sentence(note, i)) return false;
    if (of_set_at(note, i, tally) || volumes_at(note, i, tally) || others_at(note, i, tally)) return true;
    return count_begins_with_many(note, i) && (held_at(note, i, tally) || bundle_at(note, i, tally) ||
                                               ones_at(note, i, tally) || last_at(note, i, tally));
}
