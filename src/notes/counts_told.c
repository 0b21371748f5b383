// SPDX-License-Identifier: MIT
// How many there are, said behind the plural that the note begins with ("stair rods, 13 altogether", "tiles.
// Nine.") or in a statement of its own ("I make it nine", "qty 6", "a trio of jugs"). A number that says no
// more than that counts the thing only where nothing but the thing can be meant.
#include "notes/counts.h"

#include "notes/any.h"
#include "notes/dimension.h"
#include "notes/number.h"
#include "notes/things.h"
#include "text/order.h"

enum { HEAD_TOKENS = 10, TOLD_MOST = 2000 };

static bool is_end(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

static bool is_many(const struct token *token) {
    return token->kind == TOKEN_WORD && token->one != token->fold && !text_same(token->one, token->fold);
}

// Does the note begin with a plural, before token `i`?
bool count_begins_with_many(const struct note *note, size_t i) {
    for (size_t k = 0; k < i && k < HEAD_TOKENS; k++)
        if (is_many(&note->tokens.at[k]) && note->taken[k] == TAKEN_NOT && !note->fault_word[k] &&
            !(ANY(&note->tokens, k + 1, "and", "&") && k + 2 < i && is_many(&note->tokens.at[k + 2])))
            return is_end(note, k + 1) || ANY(&note->tokens, k + 1, "in", "of", "from", "for", "with", "-");
    return false;
}

// Is token `i` the plural that the note begins with, and nothing before it but what it looks like?
static bool is_opening_plural(const struct note *note, size_t i) {
    if (i >= HEAD_TOKENS || !is_many(&note->tokens.at[i]) || note->taken[i] != TAKEN_NOT ||
        note->fault_word[i])
        return false;
    for (size_t k = 0; k < i; k++)
        if (note->tokens.at[k].stop != STOP_NONE || note->tokens.at[k].kind != TOKEN_WORD ||
            is_many(&note->tokens.at[k]) || ANY(&note->tokens, k, "with", "for", "has", "and", "in", "on"))
            return false;
    return true;
}

// "Eight in all", "13 altogether", "5 off", "2 no": what makes of a number a count.
static size_t total_behind(const struct note *note, size_t i) {
    static const char *const words[] = {"in all",     "in total",  "all told",    "all together",
                                        "altogether", "total",     "in the lot",  "off",
                                        "no",         "pcs",       "items",       "in number",
                                        "matching",   "identical", "by my count", "or so i count"};
    size_t n = token_first(&note->tokens, i, words, sizeof words / sizeof *words);
    if (n && token_is(&note->tokens, i + n, ".") && note->tokens.at[i + n].stop == STOP_NONE) n++;
    return n && is_end(note, i + n) ? n : 0;
}

// ", eight in all", ". Nine.", "- nine", "(2)": set off behind the plural.
static bool set_off_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    if (i == 0 || i > HEAD_TOKENS + 4) return false;
    bool exact = i > 1 && ANY(tokens, i - 1, "exactly", "precisely"); // "buttons, exactly 50"
    if (exact && tokens->at[i - 2].stop >= STOP_COMMA && is_many(&tokens->at[i > 2 ? i - 3 : 0])) {
        int whole = count_number(note, i, &number);
        if (whole > 1 && is_end(note, i + number)) {
            *tally = (struct tally){whole, number, NULL, false};
            return true;
        }
    }
    bool bracket = token_is(tokens, i - 1, "(");
    bool dash = token_is(tokens, i - 1, "-") && !tokens->at[i - 1].joined && !tokens->at[i].joined;
    bool on = is_opening_plural(note, i - 1);        // "forks 4 off"
    size_t times = token_is(tokens, i, "x") ? 1 : 0; // "plates, brown, x 7,"
    int count = count_number(note, i + times, &number);
    number += times;
    size_t end = i + number;
    bool mixed = ANY(tokens, i - 1, "assorted", "mixed", "various") && total_behind(note, end);
    if (!bracket && !dash && !on && !mixed && tokens->at[i - 1].stop < STOP_COMMA) return false;
    if (count < 2 || count > TOLD_MOST || (!on && !count_begins_with_many(note, i))) return false;
    size_t more = total_behind(note, end);
    if (on && !more) return false;
    if (!more && bracket && !token_is(tokens, end, ")")) return false;
    if (!more && !bracket && !is_end(note, end)) return false;
    // Behind a comma a bare number is a count in the first words alone.
    bool near = is_many(&tokens->at[i - (i > 1 ? 2 : 1)]);
    if (!more && !near && !times) return false;
    *tally = (struct tally){count, number + more, NULL, false};
    return true;
}

// "Supposed to be 24 pieces and I count 21": what should be there was counted before token `i`.
static bool is_short_of(const struct note *note, size_t i, int count) {
    static const char *const wholes[] = {"supposed to be", "should be",        "meant to be",
                                         "ought to be",    "supposed to have", "should have"};
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < i; k++) {
        size_t number, n = token_first(&note->tokens, k, wholes, sizeof wholes / sizeof *wholes);
        if (!n) continue;
        n += ANY(&note->tokens, k + n, "a", "about", "all") ? 1 : 0;
        if (count_number(note, k + n, &number) > count &&
            (k + n + number >= i || is_end(note, k + n + number) ||
             ANY(&note->tokens, k + n + number, "piece", "pieces", "pcs", "and", "but", "of", "in")))
            return true;
    }
    return false;
}

// "I make it 9", "I count 14 tiles", "counted them twice, 31", "there's eight", "qty 6".
static bool stated_at(const struct note *note, size_t i, struct tally *tally) {
    static const char *const leads[] = {"i make it",
                                        "i count",
                                        "i counted",
                                        "we counted",
                                        "counted them twice",
                                        "counted twice",
                                        "counted",
                                        "qty",
                                        "quantity",
                                        "there's",
                                        "there are",
                                        "there is",
                                        "makes",
                                        "numbering",
                                        "total of",
                                        "count is",
                                        "i've got",
                                        "i have",
                                        "we have",
                                        "we've got",
                                        "i counted twice",
                                        "i counted them",
                                        "we counted them",
                                        "i counted them twice",
                                        "amounts to",
                                        "count",
                                        "you get",
                                        "you get all"};
    const struct tokens *tokens = &note->tokens;
    size_t lead = token_first(tokens, i, leads, sizeof leads / sizeof *leads), number;
    bool on = token_is(tokens, i, "numbering") && i > 0 && is_opening_plural(note, i - 1);
    if (!lead || (i > 0 && tokens->at[i - 1].stop == STOP_NONE && !on &&
                  !(token_is(tokens, i, "count") && is_opening_plural(note, i - 1)) &&
                  !ANY(tokens, i - 1, "-", "(", ".", "so", "and", "but")))
        return false;
    size_t at = i + lead;
    if (token_is(tokens, i, "you") && token_is(tokens, at, "all")) at++;
    if (ANY(tokens, at, ":", ",", ".", "=", "of", "up", "to") && at + 1 < tokens->count) at++;
    int count = count_number(note, at, &number);
    size_t end = at + number;
    if (count < 2 || count > TOLD_MOST) return false;
    size_t noun = is_end(note, end) ? 0 : count_plural(note, end);
    struct part part;
    bool loose = ANY(tokens, i, "there's", "there", "makes", "you", "count");
    if (noun && (loose || part_at(note, noun, &part) || note->fault_word[noun])) return false;
    size_t more = total_behind(note, end);
    bool said = company_label_says(tokens, noun ? noun + 1 : end, count) > 0; // "and the label says 48"
    if (!noun && !more && !said && !is_end(note, end) && !ANY(tokens, end, "of", "but", "though", "in"))
        return false;
    bool ours = !noun; // "punch bowl with cups: I count eleven cups" counts no bowls
    for (size_t k = 0; noun && k < i && tokens->at[k].stop == STOP_NONE; k++)
        ours |= !strcmp(tokens->at[k].one, tokens->at[noun].one) &&
                !(k > 0 && ANY(tokens, k - 1, "with", "and", "twelve"));
    if (!ours && ANY(tokens, i, "i", "we")) return false;
    bool linked = i > 0 && ANY(tokens, i - 1, "and", "but") && tokens->at[i - 1].stop == STOP_NONE;
    bool left = is_short_of(note, i, count);
    if (linked && !left) return false;
    if (!noun && !on && !left && !count_begins_with_many(note, i) && !is_opening_plural(note, i - 1))
        return false;
    *tally = (struct tally){count, end + more - i, noun ? tokens->at[noun].one : NULL, false};
    return true;
}

// "A trio of jugs", "nest of three tables", "a baker's dozen of rods".
static bool named_at(const struct note *note, size_t i, struct tally *tally) {
    static const struct {
        const char *words;
        int count;
    } names[] = {{"trio of", 3},          {"quartet of", 4}, {"quintet of", 5}, {"foursome of", 4},
                 {"threesome of", 3},     {"brace of", 2},   {"couple of", 2},  {"baker's dozen of", 13},
                 {"bakers dozen of", 13}, {"score of", 20}};
    const struct tokens *tokens = &note->tokens;
    if (i > 3 || (i && !ANY(tokens, i - 1, "a", "the", "this", "lovely", "nice"))) return false;
    for (size_t k = 0; k < sizeof names / sizeof *names; k++) {
        size_t taken = token_phrase(tokens, i, names[k].words);
        size_t noun = taken ? count_plural(note, i + taken) : 0;
        struct part part;
        if (!noun || note->fault_word[noun] || part_at(note, noun, &part)) continue;
        *tally = (struct tally){names[k].count, taken, tokens->at[noun].one, false};
        return true;
    }
    size_t number = 0;
    if (!token_phrase(tokens, i, "nest of")) return false;
    int count = count_number(note, i + 2, &number);
    size_t noun = count > 1 ? count_plural(note, i + 2 + number) : 0;
    if (noun) *tally = (struct tally){count, 2 + number, tokens->at[noun].one, false};
    return noun > 0;
}

// "Three of these stools", "23 of em on a ring".
static bool of_these_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    int count = count_number(note, i, &number);
    size_t at = i + number;
    if (count < 2 || !token_is(tokens, at, "of") ||
        !ANY(tokens, at + 1, "these", "those", "em", "'em", "them"))
        return false;
    size_t noun = ANY(tokens, at + 1, "these", "those") ? count_plural(note, at + 2) : 0;
    bool head = i == 0 && noun;
    bool placed = ANY(tokens, at + 2, "on", "in", "from", "tied", "strung") && i > 0 &&
                  tokens->at[i - 1].stop != STOP_NONE && count_begins_with_many(note, i);
    if (!head && !placed) return false;
    *tally = (struct tally){count, at + 2 - i, noun ? tokens->at[noun].one : NULL, false};
    return true;
}

// "Bowls, 4 big 2 small": those of each size together.
static bool sizes_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i, sizes = 0;
    int sum = 0;
    if (i == 0 || tokens->at[i - 1].stop < STOP_COMMA || !count_begins_with_many(note, i)) return false;
    for (;;) {
        size_t number;
        int count = number_whole(tokens, at, &number);
        if (!count || !ANY(tokens, at + number, "big", "large", "small", "little", "medium", "tall", "short",
                           "long", "bigger", "smaller", "larger"))
            break;
        sum += count;
        sizes++;
        at += number + 1;
        size_t joint = ANY(tokens, at, ",", "and", "&") ? 1 : 0;
        if (!number_whole(tokens, at + joint, &number)) break;
        at += joint;
    }
    if (sizes < 2 || !is_end(note, at)) return false;
    *tally = (struct tally){sum, at - i, NULL, false};
    return true;
}

// "Linen pillowcases, four, drawn thread work": a number alone behind the plural that begins the note.
static bool alone_at(const struct note *note, size_t i, struct tally *tally) {
    enum { HEAD = 7, MOST = 60 };
    const struct tokens *tokens = &note->tokens;
    size_t number, noun = i < 2 ? 0 : i - 2;
    while (noun > 1 && (note->taken[noun] == TAKEN_MEASURE || note->taken[noun] == TAKEN_VALUE ||
                        (token_is(tokens, noun, ",") && note->taken[noun - 1] != TAKEN_NOT)))
        noun--; // "Plates, 10 inch, six"
    if (noun > 0 && noun < i - 2 && token_is(tokens, noun, ",")) noun--;
    if (i < 2 || i > HEAD || !token_is(tokens, i - 1, ",") || !is_many(&tokens->at[noun]) ||
        note->fault_word[noun])
        return false;
    bool dozen = ANY(tokens, i, "a") && ANY(tokens, i + 1, "dozen"); // "paperbacks, a dozen, crime"
    int count = dozen ? 12 : number_whole(tokens, i, &number);
    if (dozen) number = 2;
    if (count < 2 || count > MOST || i + number >= tokens->count || tokens->at[i + number].stop == STOP_NONE)
        return false;
    for (size_t k = 0; k <= noun; k++)
        if (tokens->at[k].stop != STOP_NONE || tokens->at[k].kind == TOKEN_FIGURE) return false;
    *tally = (struct tally){count, number, tokens->at[noun].one, false};
    return true;
}

// "3 of a set of 4", "five of the original six", "3 of 4": so many are left of those of the set.
static bool share_at(const struct note *note, size_t i, struct tally *tally) {
    static const char *const joints[] = {
        "of a set of",     "out of a set of", "of the original", "out of an original",
        "of an original",  "out of",          "of the set of",   "of",
        "left of",         "left of the",     "left out of",     "remaining of",
        "left of a set of"};
    const struct tokens *tokens = &note->tokens;
    size_t number, whole;
    if (i == 0 || i > HEAD_TOKENS + 4 || note_clause_from(note, i, STOP_SENTENCE) > 0) return false;
    size_t start = ANY(tokens, 0, "set", "part") ? (token_is(tokens, 1, "set") ? 3 : 2) : 0;
    bool set = start && start < i && is_many(&tokens->at[i - 1]); // "set of mugs 3 of 4"
    bool set_off = tokens->at[i - 1].stop >= STOP_COMMA || ANY(tokens, i - 1, "(", "-", "only", "just");
    if (!set && !(set_off && count_begins_with_many(note, i)) && !is_opening_plural(note, i - 1))
        return false;
    int count = number_whole(tokens, i, &number);
    size_t joint = count ? token_longest(tokens, i + number, joints, sizeof joints / sizeof *joints) : 0;
    int all = joint ? number_whole(tokens, i + number + joint, &whole) : 0;
    if (all <= count || all > 60 || !is_end(note, i + number + joint + whole)) return false;
    *tally = (struct tally){count, number + joint + whole, NULL, false};
    return true;
}

bool count_set_behind(const struct note *note, size_t i) {
    enum { MOST = 4 };
    const struct tokens *tokens = &note->tokens;
    for (size_t k = i; k < i + MOST && k < tokens->count && tokens->at[k].kind == TOKEN_WORD; k++) {
        if (token_is(tokens, k, "set")) return true;
        if (tokens->at[k].stop != STOP_NONE ||
            ANY(tokens, k, "with", "and", "of", "for", "in", "on", "no", "is"))
            return false;
    }
    return false;
}

bool count_is_share(const struct note *note, size_t i) {
    size_t number, whole;
    int count = number_whole(&note->tokens, i, &number);
    if (!count) return false;
    size_t at = i + number + (token_is(&note->tokens, i + number, "out") ? 1 : 0);
    return token_is(&note->tokens, at, "of") && number_whole(&note->tokens, at + 1, &whole) > count;
}

// "Butter pats 2 wooden": behind the plural that the note begins with, before what they look like.
static bool looked_at(const struct note *note, size_t i, struct tally *tally) {
    static const uint32_t looks = (1u << USE_COLOR) | (1u << USE_MATERIAL);
    size_t number = 0;
    struct word_entry entry;
    if (i == 0 || !is_opening_plural(note, i - 1)) return false;
    int count = number_whole(&note->tokens, i, &number);
    size_t look = i + number;
    if (count < 2 || count > TOLD_MOST || look >= note->tokens.count || note->fault_word[look] ||
        note->taken[look] != TAKEN_NOT || count_plural(note, look) == look ||
        !(word_at(note, look, looks, &entry) ||
          ANY(&note->tokens, look, "wooden", "matching", "old", "small", "large")))
        return false;
    *tally = (struct tally){count, number, note->tokens.at[i - 1].one, false};
    return true;
}

// "2 sets of 4", "three lots of six": so many times.
static bool sets_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0, each = 0;
    int sets = number_whole(tokens, i, &number);
    if (sets < 2 || sets > 40 || !ANY(tokens, i + number, "sets", "lots", "packs", "bundles") ||
        !token_is(tokens, i + number + 1, "of"))
        return false;
    int count = count_number(note, i + number + 2, &each);
    size_t end = i + number + 2 + each;
    if (count < 2 || count > TOLD_MOST || !(is_end(note, end) || count_plural(note, end))) return false;
    if (i > 0 && !count_begins_with_many(note, i) && !is_opening_plural(note, i - 1) &&
        !(token_is(tokens, 0, "sets") && is_many(&tokens->at[i > 1 ? i - 2 : 0])))
        return false;
    *tally = (struct tally){sets * count, end - i, NULL, false};
    return true;
}

// "The two hooks", "both chairs": what a note begins with.
static bool both_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    bool both = token_is(tokens, i, "both");
    if (i > 0 || (!both && !ANY(tokens, i, "the", "these", "my", "our"))) return false;
    int count = both ? 2 : number_whole(tokens, 1, &number);
    size_t noun = count > 1 ? count_plural(note, 1 + number) : 0;
    struct noun_found goods;
    struct part part;
    struct word_entry entry; // "both hinges are tight and the lid sits flat": of what is not sold
    bool said = noun && ANY(tokens, noun + 1, "are", "have", "work", "were") &&
                word_at(note, noun, 1u << USE_PART, &entry) > 0;
    if (!noun || said || part_at(note, noun, &part) || !noun_at(note, noun, &goods) || !goods.thing)
        return false;
    *tally = (struct tally){count, 1 + number, tokens->at[noun].one, false};
    return true;
}

// "Three volume history" at the start of a note: so many books.
static bool volumes_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    int count = i == 0 ? count_number(note, i, &number) : 0;
    if (count < 2 || !ANY(tokens, number, "volume", "vol") ||
        !ANY(tokens, number + 1, "history", "edition", "work", "works", "biography", "life", "novel", "poems",
             "encyclopedia", "dictionary", "guide", "bible", "atlas", "memoir", "letters", "collection"))
        return false;
    *tally = (struct tally){count, number + 1, "book", false};
    return true;
}

// "Curtains, cotton, two panels": the pieces that they are.
static bool panels_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    int count = i > 0 && tokens->at[i - 1].stop == STOP_COMMA ? count_number(note, i, &number) : 0;
    if (count < 2 || !ANY(tokens, i + number, "panels", "lengths") ||
        (i + number + 1 < tokens->count && tokens->at[i + number + 1].stop == STOP_NONE))
        return false;
    bool hung = false;
    for (size_t k = 0; k < i && tokens->at[k].stop < STOP_SENTENCE && !hung; k++)
        hung = ANY(tokens, k, "curtains", "curtain", "drapes", "draperies", "sheers", "nets");
    if (hung) *tally = (struct tally){count, number + 1, "curtain", false};
    return hung;
}

// "Only six here": of goods that the note began with in the plural.
static bool only_here_at(const struct note *note, size_t i, struct tally *tally) {
    const struct tokens *tokens = &note->tokens;
    size_t number = 0;
    int count = i > 0 && ANY(tokens, i - 1, "only", "just") ? count_number(note, i, &number) : 0;
    size_t end = i + number;
    if (count < 2 || !ANY(tokens, end, "here", "left", "remain", "remaining", "survive", "survived") ||
        !count_begins_with_many(note, i))
        return false;
    if (end + 1 < tokens->count && tokens->at[end + 1].stop == STOP_NONE) return false;
    *tally = (struct tally){count, number + 1, NULL, false};
    return true;
}

bool count_told_at(const struct note *note, size_t i, struct tally *tally) {
    return volumes_at(note, i, tally) || panels_at(note, i, tally) || only_here_at(note, i, tally) ||
           both_at(note, i, tally) || share_at(note, i, tally) || sets_at(note, i, tally) ||
           looked_at(note, i, tally) || alone_at(note, i, tally) || named_at(note, i, tally) ||
           of_these_at(note, i, tally) || stated_at(note, i, tally) || set_off_at(note, i, tally) ||
           sizes_at(note, i, tally) || count_behind_at(note, i, tally);
}
