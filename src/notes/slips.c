// SPDX-License-Identifier: MIT
// A word that is no English and one slip away from exactly one word for goods is read as that word, as
// likely: "guage", "vaze", "tapastry". So is one that is a slip away from a word that faults are told with,
// or sounds like it: "crakced", "mising", "tarnisht". The first letter holds, as it nearly always does. Names
// are left alone: of the words with a capital only one that stands by itself at the start of a sentence is
// looked at.
#include "notes/any.h"
#include "notes/cut.h"
#include "notes/english.h"
#include "notes/read.h"
#include "notes/things.h"
#include "say/say.h"
#include "text/order.h"

#include <string.h>

enum { SLIP_LEAST = 4, SLIP_MOST = 20, CANDIDATE_LEAST = 5, WORD_ROOM = SLIP_MOST + 2 };

// How far a slip is from what was meant. Any other letter says little where a word is short.
enum {
    COST_NEAR = 2,
    COST_VOWEL = 4,
    COST_LETTER = 8,
    COST_MOST = 8,
    LETTER_LEAST = 6,
    NAME_LEAST = 6,
    APART_MOST = 3,
    STEM_LEAST = 5,  // of a word that is as good as spelled right
    TWICE_LEAST = 6, // of one in which two slips are looked for
    BAD_LEAST = 3    // words that are no English, of one who spells by ear
};

struct meant {
    char word[WORD_ROOM]; // of the curated lists, or of the candidates where those have none
    size_t words;         // how many different ones of that cost; only one is believed
    bool curated;
    int cost;
};

struct fault_meant {
    char word[WORD_ROOM];
    size_t words; // how many different ones of that cost
    int cost;
};

struct tries {
    const struct note *note;
    const struct slip_words *slips;
    const char *next; // the word behind, NULL at the end of a clause
    bool twice;       // a second cheap slip is on its way
    struct meant goods;
    struct fault_meant fault;
};

static const uint32_t of_goods = (1u << USE_THING) | (1u << USE_MATERIAL) | (1u << USE_COLOR) |
                                 (1u << USE_TECHNIQUE) | (1u << USE_PATTERN) | (1u << USE_THEME) |
                                 (1u << USE_SHAPE) | (1u << USE_FINISH) | (1u << USE_PART);

// "Cuckoo" before "clock", "answering" before "machine".
static bool is_compound(const struct note *note, const char *word, size_t size, const char *next) {
    char both[2 * WORD_ROOM + 2];
    struct word_entry entry;
    size_t n = next ? strlen(next) : 0;
    if (!n || size + n + 2 > sizeof both || wordbook_longest(note->book, word, size) < 2) return false;
    memcpy(both, word, size);
    both[size] = ' ';
    memcpy(both + size + 1, next, n + 1);
    return wordbook_find(note->book, both, size + 1 + n, &entry) && (entry.uses & of_goods);
}

static void weigh_goods(const struct note *note, const char *word, size_t size, int cost, const char *next,
                        struct meant *meant) {
    struct word_entry entry;
    size_t things = 0;
    bool ruled = ruleset_things(note->rules, word, &things) != NULL;
    bool listed = wordbook_find(note->book, word, size, &entry) && (entry.uses & of_goods);
    if (!ruled && !listed && is_compound(note, word, size, next)) {
        listed = true;
        entry.candidate = false;
    }
    if (!ruled && (!listed || (entry.candidate && size < CANDIDATE_LEAST))) return;
    bool curated = ruled || !entry.candidate;
    if (meant->curated && !curated) return;
    bool same = meant->words && meant->curated == curated;
    if (same && (cost > meant->cost || text_same(meant->word, word))) return;
    if (!same || cost < meant->cost) meant->words = 0;
    meant->curated = curated;
    meant->cost = cost;
    meant->words++;
    memcpy(meant->word, word, size + 1);
}

static void weigh_fault(struct tries *t, const char *word, size_t size, int cost) {
    struct fault_meant *meant = &t->fault;
    if (!t->slips || cost > COST_MOST || (meant->words && cost > meant->cost)) return;
    if (size < SLIP_LEAST && cost > COST_NEAR) return;
    if (cost == COST_LETTER && size < LETTER_LEAST) return;
    if (meant->words && cost == meant->cost && text_same(meant->word, word)) return;
    if (!slip_words_has(t->slips, word, size) || !english_word(t->note->book, word)) return;
    if (!meant->words || cost < meant->cost) meant->words = 0;
    meant->cost = cost;
    meant->words++;
    memcpy(meant->word, word, size + 1);
}

static void weigh(struct tries *t, const char *word, size_t size, int cost) {
    weigh_goods(t->note, word, size, cost, t->next, &t->goods);
    weigh_fault(t, word, size, cost);
}

static void try_less(struct tries *t, const char *word, size_t n, int before);
static void try_letters(struct tries *t, const char *word, size_t n, int before);

// What one slip of the ear makes of it, and a second one of that: "hobnale", "stonewear".
static void weigh_more(struct tries *t, const char *word, size_t size, int cost, int before) {
    weigh(t, word, size, cost + before);
    if (!t->twice || before || cost > COST_VOWEL || size >= SLIP_MOST) return;
    char other[WORD_ROOM];
    memcpy(other, word, size + 1);
    try_less(t, other, size, cost);
    try_letters(t, other, size, cost);
}

static bool is_vowel(char c) {
    return strchr("aeiouy", c) != NULL && c;
}

static void try_swaps(struct tries *t, const char *word, size_t n) {
    char other[WORD_ROOM];
    memcpy(other, word, n + 1);
    for (size_t i = 1; i + 1 < n; i++) {
        other[i] = word[i + 1], other[i + 1] = word[i];
        weigh(t, other, n, COST_NEAR);
        other[i] = word[i], other[i + 1] = word[i + 1];
    }
}

static void try_less(struct tries *t, const char *word, size_t n, int before) {
    char other[WORD_ROOM];
    for (size_t i = 1; i < n; i++) {
        bool twice = word[i] == word[i - 1] || word[i] == word[i + 1];
        memcpy(other, word, i);
        memcpy(other + i, word + i + 1, n - i);
        int cost = twice ? COST_NEAR : is_vowel(word[i]) ? COST_VOWEL : COST_LETTER;
        other[n - 1] = '\0';
        if (!t->twice || cost < COST_LETTER) weigh_more(t, other, n - 1, cost, before);
    }
}

// Another letter at each place, and one more before it.
static void try_letters(struct tries *t, const char *word, size_t n, int before) {
    char other[WORD_ROOM], more[WORD_ROOM];
    memcpy(other, word, n + 1);
    for (size_t i = 1; i <= n; i++) {
        memcpy(more, word, i);
        memcpy(more + i + 1, word + i, n - i + 1);
        for (const char *letter = "abcdefghijklmnopqrstuvwxyz"; *letter; letter++) {
            char c = *letter;
            bool twice = c == word[i - 1] || c == word[i];
            more[i] = c;
            int cost = twice ? COST_NEAR : is_vowel(c) ? COST_VOWEL : COST_LETTER;
            if (!t->twice || cost < COST_LETTER) weigh_more(t, more, n + 1, cost, before);
            if (i == n || c == word[i]) continue;
            other[i] = c;
            cost = is_vowel(c) && is_vowel(word[i]) ? COST_VOWEL : COST_LETTER;
            if (!t->twice || cost < COST_LETTER) weigh_more(t, other, n, cost, before);
        }
        other[i] = word[i];
    }
}

static size_t least(size_t a, size_t b) {
    return a < b ? a : b;
}

// Letters put in, left out or changed.
static size_t letters_apart(const char *a, const char *b) {
    size_t n = strlen(a), m = strlen(b), row[WORD_ROOM + 2];
    for (size_t k = 0; k <= m; k++) row[k] = k;
    for (size_t i = 1; i <= n; i++) {
        size_t diagonal = row[0];
        row[0] = i;
        for (size_t k = 1; k <= m; k++) {
            size_t same = diagonal + (a[i - 1] != b[k - 1]);
            diagonal = row[k];
            row[k] = least(same, least(row[k], row[k - 1]) + 1);
        }
    }
    return row[m];
}

static char first_vowel(const char *word) {
    while (*word && !is_vowel(*word)) word++;
    return *word;
}

static void try_sounds(struct tries *t, const char *word) {
    char sound[SOUND_ROOM];
    size_t count;
    slip_sound(word, sound);
    if (!sound[0]) return;
    const char *const *alike = slip_words_alike(t->slips, sound, &count);
    for (size_t i = 0; i < count; i++) {
        size_t apart = letters_apart(word, alike[i]);
        int vowel = first_vowel(word) != first_vowel(alike[i]);
        bool done = strlen(alike[i]) > 2 && text_same(alike[i] + strlen(alike[i]) - 2, "ed"); // "crakt"
        if (apart < APART_MOST || (apart == APART_MOST && done))
            weigh_fault(t, alike[i], strlen(alike[i]),
                        (int)(2 * apart) + vowel + (strlen(alike[i]) != strlen(word))); // "spowt" is no spot
    }
}

static bool is_plain(const char *word, size_t n) {
    return n >= SLIP_LEAST && n <= SLIP_MOST && strspn(word, "abcdefghijklmnopqrstuvwxyz") == n;
}

// A slip of two letters changed places is likelier than the others, so it is asked for first.
static void find_meant(struct tries *t, const char *word) {
    size_t n = strlen(word);
    if (!is_plain(word, n)) return;
    try_swaps(t, word, n);
    if (t->goods.words == 1) return;
    try_less(t, word, n, 0);
    try_letters(t, word, n, 0);
    if (t->slips) try_sounds(t, word);
    if (t->goods.words || t->fault.words || n < TWICE_LEAST) return;
    t->twice = true;
    try_less(t, word, n, 0);
    try_letters(t, word, n, 0);
}

// "Papier mache": known with others, though no word by itself.
static bool begins_name(const struct note *note, size_t i) {
    const char *word = note->tokens.at[i].fold;
    return wordbook_longest(note->book, word, strlen(word)) > 1 && !english_at(note, i);
}

static bool may_slip(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    if (t->kind != TOKEN_WORD || t->stop != STOP_NONE || note->fault_word[i]) return false;
    if (note->tokens.shouts ? !t->capitals : t->capitals) return false;
    if (t->capital && !t->starts && !note->tokens.shouts) return false;
    if (i > 0 && ANY(&note->tokens, i - 1, "nick", "knick")) return false; // "nick nack"
    return !english_at(note, i) && !begins_name(note, i) && !(i > 0 && begins_name(note, i - 1));
}

static bool is_alone(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    return !t->capital || i + 1 == note->tokens.count || note->tokens.at[i + 1].stop != STOP_NONE;
}

// "Made by tarnel", "marked chipen": a name, whatever it is like.
static bool is_named(const struct note *note, size_t i) {
    static const char *const leads[] = {"by",    "marked", "stamped", "signed", "called",
                                        "named", "says",   "reads",   "maker",  "model",
                                        "from",  "mr",     "mrs",     "\"",     "'"};
    return i > 0 && token_among(&note->tokens, i - 1, leads, sizeof leads / sizeof *leads);
}

void note_reword(struct note *note, size_t i, const char *word, const char *one) {
    struct token *t = &note->tokens.at[i];
    t->fold = word;
    t->one = one;
    t->hash = token_hash(t->fold, strlen(t->fold));
    t->vain = NULL;
    t->plain = false;
    note->tokens.altered = true;
}

void note_mend(struct note *note, size_t i, const char *word, const char *one, const char *because) {
    struct token *t = &note->tokens.at[i];
    note_reword(note, i, word, one);
    t->slip = true;
    note_reading(note, i, i + 1, arena_format(note->arena, "spelling %s", t->fold), because);
}

static bool is_strange(const struct note *note, size_t i) {
    return i < note->tokens.count && note->tokens.at[i].kind == TOKEN_WORD && !note->fault_word[i] &&
           !english_at(note, i);
}

// "Tiene una grieta": among words of another language it is one of theirs.
static bool is_among_strangers(const struct note *note, size_t i) {
    bool before = i > 0 && is_strange(note, i - 1), behind = is_strange(note, i + 1);
    return (before && behind) || (before && i > 1 && is_strange(note, i - 2)) ||
           (behind && is_strange(note, i + 2));
}

// A fault's word is tried as it was written; goods by their singular.
static bool mend_fault(struct note *note, size_t i, struct tries *t) {
    const struct token *token = &note->tokens.at[i];
    bool apart = token->capital && !note->tokens.shouts && !is_alone(note, i);
    if (t->fault.words != 1 || is_named(note, i) || is_among_strangers(note, i)) return false;
    if (apart && (strlen(token->fold) < NAME_LEAST || t->fault.cost > COST_VOWEL)) return false;
    if (t->goods.words == 1 && t->goods.cost <= t->fault.cost) return false;
    const char *word = arena_string(note->arena, t->fault.word);
    note_mend(note, i, word, say_singular(note->arena, word),
              "sounds as a word for a fault, or is one slip from it");
    note->tokens.at[i].guessed = t->fault.cost >= COST_LETTER || strlen(word) < STEM_LEAST;
    return true;
}

// A note in which other words are no English: a word at its start is none of a name then, but one more of
// them.
static bool spells_by_ear(const struct note *note) {
    size_t bad = 0;
    for (size_t i = 0; i < note->tokens.count; i++) {
        const struct token *t = &note->tokens.at[i];
        bool word = t->kind == TOKEN_WORD && (t->slip || (!t->capital && is_plain(t->fold, strlen(t->fold)) &&
                                                          !english_at(note, i) && !begins_name(note, i)));
        bad += word;
    }
    return bad >= BAD_LEAST;
}

// The word behind, as far as it may be of the same name.
static const char *word_behind(const struct note *note, size_t i) {
    const struct token *next = i + 1 < note->tokens.count ? &note->tokens.at[i + 1] : NULL;
    return next && next->kind == TOKEN_WORD && strlen(next->one) < WORD_ROOM ? next->one : NULL;
}

static bool is_sure(const struct meant *goods) {
    return goods->words == 1 && goods->curated && goods->cost <= COST_NEAR;
}

void note_mend_slips(struct note *note) {
    if (!note->book || !note->rules) return;
    bool any = false, by_ear = spells_by_ear(note);
    for (size_t i = 0; i < note->tokens.count; i++) {
        if (!may_slip(note, i)) continue;
        const struct token *token = &note->tokens.at[i];
        bool plural = token->one != token->fold;
        struct tries t = {.note = note, .slips = phrases_slips(note->phrases), .next = word_behind(note, i)};
        find_meant(&t, token->fold);
        if (mend_fault(note, i, &t)) {
            any = true;
            continue;
        }
        bool whole = is_sure(&t.goods); // "Curtians"
        if (plural) {
            t = (struct tries){.note = note, .next = t.next};
            find_meant(&t, token->one);
        }
        bool sure = (whole || is_sure(&t.goods)) && strlen(token->fold) >= NAME_LEAST && !is_named(note, i) &&
                    (i + 1 == note->tokens.count || !note->tokens.at[i + 1].capital);
        sure |= by_ear && t.goods.words == 1 && t.goods.curated &&
                strlen(token->fold) >= (t.goods.cost < COST_LETTER ? STEM_LEAST : NAME_LEAST) &&
                !is_named(note, i) && word_behind(note, i) &&
                !note->tokens.at[i + 1].capital; // "Pewtr vase", among others
        bool clear = t.goods.curated && t.goods.cost < COST_LETTER && strlen(token->fold) >= STEM_LEAST;
        if (t.goods.words != 1 || !(is_alone(note, i) || sure)) continue;
        any = true;
        const char *one = arena_string(note->arena, t.goods.word);
        note_mend(note, i, plural ? arena_format(note->arena, "%ss", one) : one, one,
                  "one slip from a word for goods");
        note->tokens.at[i].guessed = !clear;
    }
    if (!any) return;
    memset(note->fault_word, 0, note->tokens.count);
    note_mark_fault_words(note);
}

bool note_slipped(const struct note *note, size_t from, size_t to) {
    for (size_t i = from; i < to && i < note->tokens.count; i++)
        if (note->tokens.at[i].slip) return true;
    return false;
}

bool note_guessed(const struct note *note, size_t from, size_t to) {
    for (size_t i = from; i < to && i < note->tokens.count; i++)
        if (note->tokens.at[i].guessed) return true;
    return false;
}
