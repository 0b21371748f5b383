// SPDX-License-Identifier: MIT
// Phrases of the word book and nouns of the rules at a token. Called for nearly every token by several
// readers, so nothing is allocated before something is found: a phrase is laid out in a buffer of its own,
// and the word book tells beforehand how long a phrase beginning with that word can be.
#include <string.h>

#include "notes/things.h"
#include "notes/any.h"
#include "text/order.h"

enum { NOUN_WORDS_MOST = 5, PHRASE_BYTES = 96 };

struct laid {
    char text[PHRASE_BYTES];
    size_t size;
};

static bool lay(struct laid *out, const char *word) {
    char *to = out->text + out->size, *end = out->text + PHRASE_BYTES - 2;
    if (out->size) *to++ = ' ';
    for (; *word; word++) {
        if (to >= end) return false;
        *to++ = *word == '-' ? ' ' : *word;
    }
    *to = '\0';
    out->size = (size_t)(to - out->text);
    return true;
}

static bool lay_out(const struct note *note, size_t i, size_t n, bool singular, struct laid *out) {
    out->size = 0;
    for (size_t k = 0; k < n; k++) {
        const struct token *t = &note->tokens.at[i + k];
        if (!lay(out, singular && k + 1 == n ? t->one : t->fold)) return false;
    }
    return out->size > 0;
}

// Tokens from `i` on that may stand in one phrase.
static size_t words_from(const struct note *note, size_t i) {
    size_t n = 0;
    while (n < NOUN_WORDS_MOST && i + n < note->tokens.count) {
        const struct token *t = &note->tokens.at[i + n];
        if (t->kind == TOKEN_SIGN && !text_same(t->fold, "&")) break;
        if (t->stop != STOP_NONE) break;
        n++;
    }
    return n;
}

// What the book and the rules say of one word is the same in every note: it is kept in a cell beside the
// word, each part as 0 until it is asked.
enum {
    KEPT_RULED = 0, // words of the longest noun of the rules, and 1
    KEPT_RULED_BITS = 4,
    KEPT_LONGEST = 4, // of the longest phrase of the book, and 1
    KEPT_LONGEST_BITS = 4,
    KEPT_FOLD = 8, // number in the book, and 1
    KEPT_ONE = 34,
    KEPT_NUMBER_BITS = 25
};

static uint64_t *kept_of(const struct note *note, size_t i) {
    const struct token *token = &note->tokens.at[i];
    uint64_t *vain = token->vain;
    if (token->slip) return NULL; // its singular is what whoever mended it took for one
    if (!vain && (!note->tokens.asked || !(vain = token_learn(&note->tokens, i)))) return NULL;
    return vain + ASKED_KEPT;
}

static uint64_t kept(const uint64_t *cell, int at, int bits) {
    return cell ? *cell >> at & (((uint64_t)1 << bits) - 1) : 0;
}

static void keep(uint64_t *cell, int at, uint64_t value) {
    if (cell) *cell |= value << at;
}

// The number of the word in the book, or of its singular; 0 where it has none.
static uint32_t number_of(const struct note *note, size_t i, bool singular) {
    uint64_t *cell = kept_of(note, i);
    int at = singular ? KEPT_ONE : KEPT_FOLD;
    uint64_t told = kept(cell, at, KEPT_NUMBER_BITS);
    if (told) return (uint32_t)told - 1;
    struct laid laid = {.size = 0};
    uint32_t number = 0;
    if (lay(&laid, singular ? note->tokens.at[i].one : note->tokens.at[i].fold) && laid.size)
        number = wordbook_number(note->book, laid.text, laid.size);
    keep(cell, at, (uint64_t)number + 1);
    return number;
}

// Of how many words a phrase of the book may be that begins with the word or its singular.
static size_t longest_of(const struct note *note, size_t i) {
    uint64_t *cell = kept_of(note, i), told = kept(cell, KEPT_LONGEST, KEPT_LONGEST_BITS);
    if (told) return (size_t)told - 1;
    const char *word = note->tokens.at[i].fold;
    size_t a = wordbook_longest(note->book, word, strcspn(word, "-"));
    const char *one = note->tokens.at[i].one;
    size_t b = one == word ? 0 : wordbook_longest(note->book, one, strcspn(one, "-"));
    size_t longest = a > b ? a : b;
    if (longest > NOUN_WORDS_MOST) longest = NOUN_WORDS_MOST;
    keep(cell, KEPT_LONGEST, longest + 1);
    return longest;
}

static bool find(const struct note *note, size_t i, size_t n, bool singular, uint32_t uses,
                 struct word_entry *entry) {
    struct laid laid;
    if (singular && note->tokens.at[i + n - 1].one == note->tokens.at[i + n - 1].fold) return false;
    if (n == 1) {
        uint32_t number = number_of(note, i, singular);
        if (!number || !(wordbook_uses(note->book, number) & uses)) return false;
        wordbook_entry(note->book, number, entry);
        return true;
    }
    return lay_out(note, i, n, singular, &laid) && wordbook_find(note->book, laid.text, laid.size, entry) &&
           (entry->uses & uses);
}

// Of how many words a phrase of the book from token `i` on may be.
static size_t phrase_most(const struct note *note, size_t i) {
    size_t n = words_from(note, i), most = n ? longest_of(note, i) : 0;
    return n < most ? n : most;
}

// What the phrases from token `i` on are used for, all together.
static uint32_t uses_at(const struct note *note, size_t i) {
    struct word_memo *memo = &note->words[i];
    if (memo->asked) return memo->uses;
    memo->asked = true;
    struct word_entry entry;
    size_t most = phrase_most(note, i);
    for (size_t n = most; n > 1; n--)
        for (int singular = 0; singular < 2; singular++)
            if (find(note, i, n, singular, UINT32_MAX, &entry)) memo->uses |= entry.uses;
    const struct token *token = &note->tokens.at[i];
    for (int singular = 0; most && singular < 1 + (token->one != token->fold); singular++) {
        uint32_t number = number_of(note, i, singular);
        if (number) memo->uses |= wordbook_uses(note->book, number);
    }
    return memo->uses;
}

size_t word_at(const struct note *note, size_t i, uint32_t uses, struct word_entry *entry) {
    if (!note->book || i >= note->tokens.count || !(uses_at(note, i) & uses)) return 0;
    for (size_t n = phrase_most(note, i); n > 0; n--)
        if (find(note, i, n, false, uses, entry) || find(note, i, n, true, uses, entry)) return n;
    return 0;
}

// The seller's own name of a thing is kept where it is English; a misspelling or another way to write the
// same letters is printed as the list has it.
// Does any word of `own` begin like one of `print`?
static bool is_akin(const char *own, const char *print) {
    enum { STEM = 4 };
    for (const char *a = own; *a; a += strcspn(a, " -"), a += strspn(a, " -"))
        for (const char *b = print; *b; b += strcspn(b, " -"), b += strspn(b, " -"))
            if (strcspn(a, " -") >= STEM && !strncmp(a, b, STEM)) return true;
    return false;
}

const char *word_trade_name(const struct word_entry *entry) {
    enum { LEAST = 6 }; // shorter ones are short forms: "mop", "galv"
    return strlen(entry->phrase) >= LEAST && !is_akin(entry->phrase, entry->print) ? entry->phrase
                                                                                   : entry->print;
}

const char *word_own_name(const struct note *note, const struct word_entry *entry) {
    const char *a = entry->phrase, *b = entry->print;
    while (*a || *b) {
        while (*a == ' ' || *a == '-') a++;
        while (*b == ' ' || *b == '-') b++;
        if (*a != *b) break;
        if (*a) a++, b++;
    }
    if (!*a && !*b) return entry->print;
    for (const char *word = entry->phrase; *word;) {
        size_t n = strcspn(word, " ");
        struct word_entry english;
        if (!wordbook_find(note->book, word, n, &english) || !(english.uses & (1u << USE_WORD)))
            return entry->print;
        word += n + (word[n] == ' ');
    }
    return entry->phrase;
}

// Are these the same but for capitals? `folded` is small.
static bool is_folded(const char *noun, const char *folded) {
    for (; *noun && *folded; noun++, folded++)
        if (*noun != *folded && (*noun < 'A' || *noun > 'Z' || *noun + ('a' - 'A') != *folded)) return false;
    return *noun == *folded;
}

// "LP", "VHS": with the capitals that the rules have.
static const char *as_printed(const struct thing *thing, const char *folded) {
    if (is_folded(thing->noun, folded)) return thing->noun;
    for (size_t i = 0; i < thing->also.count; i++)
        if (is_folded(thing->also.at[i], folded)) return thing->also.at[i];
    return NULL;
}

static bool rule_noun(const struct note *note, const char *phrase, struct noun_found *found) {
    size_t count = 0;
    const struct thing *const *things = ruleset_things(note->rules, phrase, &count);
    if (!things) return false;
    found->thing = things[0];
    found->families = count;
    found->family = count == 1 ? things[0]->family->rule.id : NULL;
    for (size_t i = 0; i < count && !found->noun; i++) found->noun = as_printed(things[i], phrase);
    if (!found->noun) found->noun = arena_string(note->arena, phrase);
    return true;
}

static bool book_noun(const struct note *note, const struct laid *laid, struct noun_found *found) {
    struct word_entry entry;
    if (!note->book || !wordbook_find(note->book, laid->text, laid->size, &entry)) return false;
    found->uses = entry.uses;
    found->gated = entry.uses & (1u << USE_GATED);
    if (found->thing) return true;
    if (!(entry.uses & ((1u << USE_THING) | (1u << USE_PART)))) return false;
    found->part = !(entry.uses & (1u << USE_THING));
    found->noun = word_own_name(note, &entry);
    found->family = entry.family;
    found->candidate = entry.candidate;
    return true;
}

// Of how many words a noun of the rules may be that begins with the word or its singular; 0: none begins so.
static size_t ruled_of(const struct note *note, size_t i) {
    uint64_t *cell = kept_of(note, i), told = kept(cell, KEPT_RULED, KEPT_RULED_BITS);
    if (told) return (size_t)told - 1;
    const struct token *token = &note->tokens.at[i];
    size_t a = ruleset_longest_thing(note->rules, token->fold, strcspn(token->fold, "-")), b = 0;
    if (token->one != token->fold)
        b = ruleset_longest_thing(note->rules, token->one, strcspn(token->one, "-"));
    size_t longest = a > b ? a : b;
    if (longest > NOUN_WORDS_MOST) longest = NOUN_WORDS_MOST;
    keep(cell, KEPT_RULED, longest + 1);
    return longest;
}

// Both forms of the rules before those of the word book: "beads" is a necklace there, a bead here.
static bool noun_of(const struct note *note, size_t i, size_t n, bool ruled, struct noun_found *found) {
    const struct token *last = &note->tokens.at[i + n - 1];
    struct laid one, many;
    bool both = last->one != last->fold;
    if (n == 1 && !ruled && note->book && !number_of(note, i, true) && !(both && number_of(note, i, false)))
        return false;
    if (!lay_out(note, i, n, true, &one) || (both && !lay_out(note, i, n, false, &many))) return false;
    *found = (struct noun_found){.from = i, .to = i + n};
    bool rule = ruled && ((both && rule_noun(note, many.text, found)) || rule_noun(note, one.text, found));
    return book_noun(note, &one, found) || rule || (both && book_noun(note, &many, found));
}

// Few tokens begin a noun, so that one byte a token says whether there is one, and only those found are kept.
struct noun_memo {
    const struct noun_found **found; // one a token; NULL before it is asked for and where there is none
    bool *asked;
};

struct noun_memo *noun_memos(struct arena *arena, size_t count) {
    struct noun_memo *memo = arena_alloc(arena, sizeof *memo);
    memo->found = arena_array(arena, count + 1, sizeof *memo->found);
    memo->asked = arena_array(arena, count + 1, sizeof *memo->asked);
    return memo;
}

void words_hide(struct note *note, size_t from, size_t to) {
    for (size_t i = from; i < to; i++) {
        note->words[i] = (struct word_memo){.asked = true, .lacks = note->words[i].lacks};
        note->nouns->asked[i] = true;
        note->nouns->found[i] = NULL;
    }
}

static bool noun_by_ear(const struct note *note, size_t i, struct noun_found *found) {
    size_t taken;
    const char *meant = sound_alike(note, i, &taken);
    struct laid laid = {.size = 0};
    if (!meant || !lay(&laid, say_singular(note->arena, meant))) return false;
    *found = (struct noun_found){.from = i, .to = i + taken};
    bool ruled = rule_noun(note, laid.text, found);
    return book_noun(note, &laid, found) || ruled;
}

// "The bottle's gone misty", "my hat's got a dark band": the thing with the verb that is joined to it. What
// somebody owns ("doctor's bag") has its noun behind it.
static bool noun_with_verb(const struct note *note, size_t i, struct noun_found *found) {
    static const char *const verbs[] = {"got",  "gone",  "been",  "a",       "an",   "the",   "not",
                                        "had",  "lost",  "in",    "missing", "no",   "fine",  "lovely",
                                        "good", "dead",  "open",  "broken",  "very", "quite", "a bit",
                                        "all",  "never", "still", "just",    "only", "left"};
    static const char *const others[] = {"it's",      "that's",      "there's",      "he's",     "she's",
                                         "who's",     "what's",      "here's",       "where's",  "one's",
                                         "let's",     "how's",       "there's",      "this's",   "somebody's",
                                         "someone's", "something's", "everything's", "nobody's", "nothing's",
                                         "maker's",   "owner's",     "everybody's",  "body's"};
    const struct tokens *tokens = &note->tokens;
    const char *word = tokens->at[i].fold;
    size_t size = strlen(word);
    if (size < 5 || !text_same(word + size - 2, "'s") ||
        token_among(tokens, i, others, sizeof others / sizeof *others))
        return false;
    if (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE) return false;
    if (!token_among(tokens, i + 1, verbs, sizeof verbs / sizeof *verbs) && !note->fault_word[i + 1])
        return false;
    struct laid laid = {.size = 0};
    if (!lay(&laid, say_singular(note->arena, arena_copy(note->arena, word, size - 2)))) return false;
    *found = (struct noun_found){.from = i, .to = i + 1};
    bool ruled = rule_noun(note, laid.text, found);
    return book_noun(note, &laid, found) || ruled;
}

// "Candle sticks", "note book": two words for one that the rules have.
static bool noun_apart(const struct note *note, size_t i, struct noun_found *found) {
    static const char *const heads[] = {"stick",  "sticks",  "pot",   "pots",  "bag",    "bags",    "board",
                                        "weight", "spread",  "book",  "books", "holder", "holders", "bowl",
                                        "bowls",  "cup",     "cups",  "dish",  "knife",  "basket",  "coat",
                                        "coats",  "case",    "cases", "light", "lights", "stool",   "cloth",
                                        "cloths", "ware",    "press", "rack",  "hooks",  "hook",    "pin",
                                        "pins",   "glasses", "boots", "boxes", "plate",  "plates",  "stand"};
    const struct tokens *tokens = &note->tokens;
    if (i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE || tokens->at[i].kind != TOKEN_WORD ||
        !token_among(tokens, i + 1, heads, sizeof heads / sizeof *heads))
        return false;
    struct laid laid = {.size = 0};
    const char *joined = arena_format(note->arena, "%s%s", tokens->at[i].fold, tokens->at[i + 1].one);
    if (strlen(joined) < 7 || !lay(&laid, joined)) return false;
    *found = (struct noun_found){.from = i, .to = i + 2};
    bool ruled = rule_noun(note, laid.text, found);
    return ruled && (book_noun(note, &laid, found) || ruled);
}

bool noun_excepts(const struct tokens *tokens, size_t i) {
    return token_is(tokens, i, "bar") && tokens->at[i].stop == STOP_NONE && i > 0 &&
           tokens->at[i - 1].stop == STOP_NONE &&
           ANY(tokens, i + 1, "a", "an", "the", "one", "two", "three", "four", "some", "that", "those",
               "its") &&
           !ANY(tokens, i - 1, "the", "a", "an", "this", "cross", "side", "tow", "towel", "iron", "steel",
                "brass", "handle", "end", "front", "back", "top", "bottom", "wooden", "metal");
}

static bool look_up(const struct note *note, size_t i, struct noun_found *found) {
    const struct token *first = &note->tokens.at[i];
    if (first->kind == TOKEN_SIGN) return false;
    if (ANY(&note->tokens, i, "bullet", "dart", "shot", "cigarette") &&
        ANY(&note->tokens, i + 1, "hole", "holes", "mark", "marks", "burn", "burns"))
        return false; // "a bullet hole"
    if (noun_by_ear(note, i, found)) return true;
    size_t ruled = ruled_of(note, i), n = words_from(note, i),
           most = n && note->book ? longest_of(note, i) : 0;
    if (most < ruled) most = ruled;
    if (n > most) n = most;
    for (; n > 0; n--) {
        if (noun_excepts(&note->tokens, i + n - 1)) continue; // "all sound bar one"
        if (n == 1 && noun_apart(note, i, found)) return true;
        if (noun_of(note, i, n, n <= ruled, found)) return true;
    }
    return noun_with_verb(note, i, found);
}

bool noun_at(const struct note *note, size_t i, struct noun_found *found) {
    if (i >= note->tokens.count) return false;
    struct noun_memo *memo = note->nouns;
    if (!memo->asked[i]) {
        memo->asked[i] = true;
        struct noun_found now = {.from = i};
        if (look_up(note, i, &now)) {
            struct noun_found *kept = arena_alloc(note->arena, sizeof *kept);
            *kept = now;
            memo->found[i] = kept;
        }
    }
    if (memo->found[i]) *found = *memo->found[i];
    return memo->found[i] != NULL;
}
