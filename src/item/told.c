// SPDX-License-Identifier: MIT
// "Bent" and "dented" are one kind with one scale, but nobody would say "dented or bent" of a tray that he
// saw bent. The notes say which it is; where they say both or neither, the kind's own words stand.
#include "item/told.h"

#include <string.h>

#include "item/several.h"
#include "item/told_share.h"
#include "item/told_tail.h"
#include "text/order.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (unsigned char)c >= 0x80;
}

static bool has_words(const char *text, const char *words) {
    size_t n = strlen(words);
    for (const char *at = strstr(text, words); at; at = strstr(at + 1, words))
        if ((at == text || !is_letter(at[-1])) && !is_letter(at[n])) return true;
    return false;
}

// "Wont close" is "won't close".
static bool has_bare_words(const char *text, const char *words) {
    const char *mark = strchr(words, '\'');
    if (!mark) return false;
    size_t n = (size_t)(mark - words);
    for (const char *at = text; (at = strstr(at, mark + 1)) != NULL; at++) {
        const char *start = at - n, *end = at + strlen(mark + 1);
        if (at >= text + n && !strncmp(start, words, n) && (start == text || !is_letter(start[-1])) &&
            !is_letter(*end))
            return true;
    }
    return false;
}

// The phrase of the most words that was said, of those the longest; NULL where there is none.
static const char *phrase_said(const struct flaw *telling, const char *said, size_t *words) {
    const char *best = NULL;
    *words = 0;
    for (size_t k = 0; k < telling->finder.said.count; k++) {
        const char *phrase = telling->finder.said.at[k];
        size_t n = 1;
        for (const char *c = phrase; *c; c++) n += *c == ' ';
        if (n < *words || !(has_words(said, phrase) || has_bare_words(said, phrase))) continue;
        if (n == *words && strlen(phrase) <= strlen(best)) continue;
        *words = n;
        best = phrase;
    }
    return best;
}

// The phrase of the most words decides; of two that have as many the one that holds the other, else neither.
static const struct flaw *telling_of(const struct flaw *kind, const char *said) {
    const struct flaw *best = NULL;
    const char *by = "";
    size_t most = 0;
    for (size_t i = 0; i < kind->telling_count; i++) {
        const struct flaw *telling = &kind->tellings[i];
        size_t words;
        const char *phrase = phrase_said(telling, said, &words);
        if (!phrase || words < most || (words == most && strstr(by, phrase))) continue;
        best = words == most && !strstr(phrase, by) ? NULL : telling;
        most = words;
        by = phrase;
    }
    return best;
}

static bool is_same(const char *a, const char *b) {
    return a && b && text_same(a, b);
}

// "Small dent in the body and the handle's been soldered": small is the dent. Where the words of the last
// fault of another part end, before `from`.
static size_t behind_others(const struct record *record, const struct item_flaw *flaw) {
    enum { BESIDE = 3 };
    size_t nth = (size_t)(flaw - record->flaws), end = 0;
    for (size_t i = nth > BESIDE ? nth - BESIDE : 0; i < record->flaw_count && i <= nth + BESIDE; i++) {
        const struct item_flaw *other = &record->flaws[i];
        bool before = i != nth && other->kind != flaw->kind && other->span.to <= flaw->span.from;
        if (before && flaw->part && !is_same(flaw->part, other->part) && other->span.to > end)
            end = other->span.to;
    }
    return end;
}

// The sentence around what was said, in small letters.
static const char *around(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    enum { NEAR = 70 };
    static const char ends[] = ".;!?\n";
    const char *notes = record->notes;
    size_t from = flaw->span.from, to = flaw->span.to, commas = 0, start = behind_others(record, flaw);
    while (from > start && flaw->span.from - from < NEAR && notes[from - 1] != ',' &&
           !strchr(ends, notes[from - 1]))
        from--;
    while (notes[to] && to - flaw->span.to < NEAR && !strchr(ends, notes[to]) && commas < 2)
        commas += notes[to++] == ','; // "chip on the rim, tiny"
    return utf8_fold(arena, arena_copy(arena, notes + from, to - from));
}

// "Medium one is rusted, large one's perfect": which of the pieces; but "a chip, a small one".
static bool is_of_piece(const char *text, const char *from, const char *to) {
    return !strncmp(to, " one", 4) && (!is_letter(to[4]) || to[4] == 's') &&
           !(from > text + 1 && !strncmp(from - 2, "a ", 2));
}

// Each begins with a letter, so that they are looked for where a word of the text begins.
static bool has_one(const char *text, const char *const *words, size_t count) {
    for (const char *at = text; *at; at++) {
        if (!is_letter(*at) || (at > text && is_letter(at[-1]))) continue;
        for (size_t i = 0; i < count; i++) {
            const char *a = at, *w = words[i];
            while (*w && *w == *a) w++, a++;
            if (!*w && !is_letter(*a) && !is_of_piece(text, at, a)) return true;
        }
    }
    return false;
}

// "Small chip" where no word of the notes makes it small would soften it: a chip underneath is a chip.
static bool is_called_light(const char *text) {
    static const char *const words[] = {
        "small",      "smallish",   "tiny",      "little",     "minor",       "slight",      "slightly",
        "light",      "lightly",    "faint",     "faintly",    "fine",        "thin",        "shallow",
        "mild",       "mildly",     "bit",       "tad",        "touch",       "hint",        "trace",
        "traces",     "speck",      "specks",    "fleck",      "flecks",      "pin",         "pinhead",
        "pinprick",   "nibble",     "nibbles",   "nibbled",    "nick",        "nicks",       "fleabite",
        "fleabites",  "flea",       "few",       "odd",        "couple",      "hardly",      "barely",
        "scarcely",   "only",       "just",      "minimal",    "surface",     "superficial", "wee",
        "teeny",      "mini",       "petite",    "soft",       "beginning",   "starting",    "start",
        "started",    "hair",       "whisker",   "spot of",    "dusting",     "wipe",        "wipes",
        "brushes",    "polish",     "rinse",     "flake",      "grain",       "mm",          "weak",
        "subtle",     "negligible", "not bad",   "not much",   "not badly",   "not deep",    "nothing",
        "can't feel", "cosmetic",   "loosening", "baby",       "mark or two", "one or two",  "whiff",
        "smidge",     "smidgen",    "fraction",  "occasional", "still",       "stiffish",    "somewhat",
        "rather",     "sort of",    "pinholes",  "pinhole",    "film"};
    return has_one(text, words, COUNT(words));
}

static bool is_called_heavy(const char *text) {
    static const char *const words[] = {
        "bad",        "badly",   "heavy",    "heavily",   "severe",     "severely", "large",    "big",
        "huge",       "deep",    "deeply",   "major",     "serious",    "strong",   "strongly", "terrible",
        "terribly",   "very",    "really",   "proper",    "properly",   "awful",    "nasty",    "massive",
        "completely", "totally", "entirely", "extensive", "horrible",   "horrid",   "shocking", "dreadful",
        "lots",       "lot of",  "thick",    "loads",     "nearly all", "solid",    "covered",  "all over"};
    return has_one(text, words, COUNT(words));
}

// Words of degree only where they stand beside what was said: "half", "that" and "whole" have other uses.
static bool is_called_much(const char *text) {
    static const char *const words[] = {"so bad", "so badly", "so worn", "so stiff", "so rusty", "so deep",
                                        "that",   "quite",    "much",    "great",    "whole",    "mostly",
                                        "most",   "half",     "too",     "wide",     "well"};
    return has_one(text, words, COUNT(words));
}

// What stands between the commas around what was said.
static const char *beside(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    const char *text = around(arena, record, flaw);
    size_t end = strcspn(text, ",");
    const char *said =
        utf8_fold(arena, arena_copy(arena, record->notes + flaw->span.from, flaw->span.to - flaw->span.from));
    const char *at = strstr(text, said);
    if (at) end = (size_t)(at - text) + strlen(said) + strcspn(at + strlen(said), ",");
    if (!strncmp(text + end, ", all over", 10)) end += 10; // "rust, all over", but not "dent, green all over"
    return arena_copy(arena, text, end);
}

// What came of it is as good as a word of degree: nobody would call "eaten through" slight.
static bool is_called_ruined(const char *text) {
    static const char *const words[] = {
        "caked",   "eaten",   "rotted",  "rotten", "riddled", "crumbling", "crumbled", "falling", "fallen",
        "fell",    "in bits", "to bits", "pieces", "beyond",  "ruined",    "shot",     "black",   "gone",
        "smashed", "could",   "can't",   "cannot", "won't",   "thumb",     "fist",     "finger",  "through",
        "peeling", "flakes",  "sheets",  "shreds", "useless", "unusable",  "reeks",    "stinks",  "all the"};
    return has_one(text, words, COUNT(words));
}

// What is printed tells the degree already: a figure, "perished", "across the corner".
static bool is_shown(const struct item_flaw *flaw) {
    static const char *const places[] = {"across", "all ", "through", "right ", "over "};
    if (flaw->has_size || flaw->told != flaw->kind) return true;
    for (size_t i = 0; flaw->where && i < COUNT(places); i++)
        if (!strncmp(flaw->where, places[i], strlen(places[i]))) return true;
    return false;
}

// The words of the place are printed as they stand: "all over" is told by them.
static void blank_place(char *text, const char *where) {
    char *at = where ? strstr(text, where) : NULL;
    if (at) memset(at, '.', strlen(where));
}

// "Cracked right through": a word of degree, but of where a size is told it is the way ("doesn't go right
// through").
static bool is_called_whole(const struct item_flaw *flaw, const char *text) {
    static const char *const words[] = {"right"};
    return !flaw->has_size && has_one(text, words, COUNT(words));
}

static bool is_uncalled(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    char *text = arena_string(arena, around(arena, record, flaw));
    blank_place(text, flaw->where);
    if (flaw->share) blank_place(text, flaw->share);
    if (flaw->severity == SEVERITY_LIGHT) return !is_called_light(text);
    char *near = arena_string(arena, beside(arena, record, flaw));
    blank_place(near, flaw->where);
    if (flaw->share) blank_place(near, flaw->share);
    if (is_called_heavy(text) || is_called_much(near) || is_called_whole(flaw, text)) return false;
    // "Moth eaten", "rusted through" are no size.
    return is_shown(flaw) || flaw->kind->degree == DEGREE_SIZE || !is_called_ruined(text);
}

// "Torn" is graded as moderate, but nobody called it that. Small and heavy are other words for what was said.
static bool is_unsaid(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    static const char *const words[] = {"moderate", "medium", "fairly"};
    enum { NEAR = 60 };
    if (!flaw->span.to || !record->notes || flaw->severity == SEVERITY_UNKNOWN) return false;
    if (flaw->severity != SEVERITY_MODERATE)
        return flaw->kind->form != FAULT || is_uncalled(arena, record, flaw);
    size_t from = flaw->span.from > NEAR ? flaw->span.from - NEAR : 0;
    for (size_t i = from; record->notes[i] && i < flaw->span.to + NEAR; i++)
        for (size_t k = 0; k < sizeof words / sizeof *words; k++)
            if (record->notes[i] == words[k][0] && !strncmp(record->notes + i, words[k], strlen(words[k])) &&
                strncmp(record->notes + i + strlen(words[k]), " one", 4) != 0)
                return false;
    return true;
}

static bool is_said(const struct flaw *kind, const char *word) {
    const char *last = kind->noun ? strrchr(kind->noun, ' ') : NULL;
    if (kind->noun && text_same(last ? last + 1 : kind->noun, word)) return true;
    for (size_t i = 0; i < kind->finder.said.count; i++)
        if (text_same(kind->finder.said.at[i], word)) return true;
    return false;
}

// "Chips on the rim" are more than one: a word in the plural whose singular names the kind too.
static bool are_several(struct arena *arena, const struct item_flaw *flaw, const struct flaw *telling,
                        const char *said) {
    if (flaw->count || flaw->kind->form != FAULT || flaw->kind->class == CLASS_FUNCTION) return false;
    for (size_t at = 0; said[at];) {
        while (said[at] && !is_letter(said[at])) at++;
        size_t size = 0;
        while (is_letter(said[at + size])) size++;
        if (!size) continue;
        const char *word = arena_copy(arena, said + at, size), *one = say_singular(arena, word);
        static const char *const verbs[] = {"wobbles", "sticks", "leaks",   "drips", "rattles", "slips",
                                            "rocks",   "drags",  "squeaks", "leans", "smells"};
        if (has_one(word, verbs, COUNT(verbs))) one = word;
        if (!text_same(one, word) && (is_said(flaw->kind, one) || (telling && is_said(telling, one))))
            return true;
        at += size;
    }
    return false;
}

// "Scratch on the lid": one, though scratches are mostly many.
static bool is_lone(const struct item_flaw *flaw, const char *said) {
    const char *noun = flaw->kind->noun, *last = noun ? strrchr(noun, ' ') : NULL;
    return flaw->kind->many && !flaw->count && noun && !say_is_plural(noun) &&
           has_words(said, last ? last + 1 : noun);
}

// "One lid missing" of three pans: not the only one there was.
static bool is_single(const struct record *record, const struct item_flaw *flaw, const char *said) {
    enum { BETWEEN = 3 };
    static const char *const ones[] = {"one ", "1 ", "a single ", "another "};
    if (flaw->count || flaw->kind->form != ABSENCE) return false;
    for (size_t i = 0; i < sizeof ones / sizeof *ones; i++) {
        size_t n = strlen(ones[i]), from = flaw->span.from;
        if (!strncmp(said, ones[i], n)) return true;
        const char *notes = record->notes;
        for (size_t words = 0; from > 1 && words < BETWEEN; words++) { // "one jaw plate screw missing"
            bool before = from >= n && !strncmp(notes + from - n + 1, ones[i] + 1, n - 1) &&
                          (notes[from - n] | 0x20) == (ones[i][0] | 0x20);
            if (before && (from == n || notes[from - n - 1] == ' ')) return true;
            if (notes[from - 1] != ' ' || !is_letter(notes[from - 2])) break;
            from--;
            while (from > 0 && is_letter(notes[from - 1])) from--;
        }
    }
    return false;
}

// The word before `at`, whose length goes to `*size`; NULL at the beginning and behind a mark.
static const char *word_before(const char *text, const char *at, size_t *size) {
    while (at > text && at[-1] == ' ') at--;
    const char *end = at;
    while (at > text && (is_letter(at[-1]) || (at[-1] >= '0' && at[-1] <= '9'))) at--;
    *size = (size_t)(end - at);
    return *size ? at : NULL;
}

static bool is_number(struct arena *arena, const char *word, size_t size, int number) {
    const char *said = say_number(arena, number), *figures = arena_format(arena, "%d", number);
    bool couple = number == 2 &&
                  ((size == 6 && !strncmp(word, "couple", 6)) || (size == 4 && !strncmp(word, "pair", 4)));
    return couple || (strlen(said) == size && !strncmp(word, said, size)) ||
           (strlen(figures) == size && !strncmp(word, figures, size));
}

// Whether the word that ends at `end` says what something is, and is no noun.
static bool is_state(const char *end) {
    static const char *const others[] = {"torn",  "worn",  "bent", "split",  "stuck",
                                         "loose", "stiff", "gone", "missing"};
    for (size_t i = 0; i < COUNT(others); i++)
        if (!strncmp(end - strlen(others[i]), others[i], strlen(others[i]))) return true;
    return !strncmp(end - 2, "ed", 2) || !strncmp(end - 2, "en", 2) || end[-1] == 'y';
}

// "Two buttons stick", "one pane cracked", "one brass knob is bent": it is the buttons that are two. One word
// may stand between.
static bool counts_part(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    enum { BEFORE = 50, BEHIND = 30, BETWEEN = 3 };
    if (!flaw->part || flaw->of > 1 || flaw->kind->form == ABSENCE || flaw->count > 20) return false;
    int number = flaw->count ? flaw->count : 1;
    bool one = flaw->count == 1 && !say_is_plural(flaw->part); // "the straps are there, one is torn"
    if (one && has_words(utf8_fold(arena, record->notes), say_plural(arena, utf8_fold(arena, flaw->part))))
        return true;
    size_t said;
    const char *before = word_before(record->notes, record->notes + flaw->span.from, &said);
    bool apart =
        before && before > record->notes + 4 && (before[-2] == ',' || !strncmp(before - 4, "and ", 4));
    if (apart && is_number(arena, before, said, number) && is_state(record->notes + flaw->span.to))
        return true; // "cards foxed, one torn", but "one nick"
    if ((number > 1) != say_is_plural(flaw->part)) return false;
    size_t all = strlen(record->notes), to = flaw->span.to + BEHIND < all ? flaw->span.to + BEHIND : all;
    size_t from = flaw->span.from > BEFORE ? flaw->span.from - BEFORE : 0;
    const char *text = utf8_fold(arena, arena_copy(arena, record->notes + from, to - from));
    const char *part = utf8_fold(arena, flaw->part);
    if (text_same(part, "pieces") && !strstr(text, part)) part = "ones"; // "two bone ones cracked"
    for (const char *at = strstr(text, part); at; at = strstr(at + 1, part)) {
        const char *word = at;
        size_t size;
        for (size_t n = 0; n < BETWEEN && (word = word_before(text, word, &size)) != NULL; n++)
            if (is_number(arena, word, size, number) ||
                (number == 1 && size == 7 && !strncmp(word, "another", 7)))
                return true;
    }
    return false;
}

// "One of the three fixing lugs": three is the number of the lugs.
static bool has_number(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    enum { BETWEEN = 2, BEFORE = 80, BEHIND = 40 };
    size_t from = flaw->span.from > BEFORE ? flaw->span.from - BEFORE : 0;
    size_t size_of_all = flaw->span.to - from + strnlen(record->notes + flaw->span.to, BEHIND);
    const char *text = utf8_fold(arena, arena_copy(arena, record->notes + from, size_of_all));
    const char *part = utf8_fold(arena, flaw->part);
    for (const char *at = strstr(text, part); at; at = strstr(at + 1, part)) {
        const char *word = at;
        size_t size;
        for (size_t n = 0; n < BETWEEN && (word = word_before(text, word, &size)) != NULL; n++)
            if (is_number(arena, word, size, flaw->of) ||
                (flaw->of == 2 && size == 4 && !strncmp(word, "both", 4)))
                return true;
    }
    return false;
}

// Of the adjectives of the kind that of the degree at hand.
static bool says_adjective(const struct item_flaw *flaw, const char *said) {
    const char *own = flaw->kind->adjective_at[flaw->severity];
    const char *adjective = own ? own : flaw->kind->adjective;
    return flaw->kind->form == FAULT && adjective && has_words(said, adjective);
}

// "No cracks", "not bent": nothing but that was denied. Beside a fault of a like name ("hairline crack") the
// kind's own words say which of the two is not there.
static bool is_like_one(const struct record *record, const struct flaw *telling) {
    const char *last = strrchr(telling->noun, ' ');
    for (size_t i = 0; i < record->flaw_count; i++) {
        const char *noun = record->flaws[i].kind->noun;
        if (noun && has_words(noun, last ? last + 1 : telling->noun)) return true;
    }
    return false;
}

static void set_denied(struct arena *arena, const struct record *record, struct item_clear *clear) {
    clear->told = NULL;
    if (!clear->span.to || !record->notes || clear->kind->form != FAULT) return;
    const char *said = utf8_fold(
        arena, arena_copy(arena, record->notes + clear->span.from, clear->span.to - clear->span.from));
    const struct flaw *telling = telling_of(clear->kind, said);
    if (telling && telling->noun && !is_like_one(record, telling)) clear->told = telling;
}

// "Rusted", "chipped": one word that is no noun.
static bool is_participle(const char *said) {
    size_t n = strlen(said);
    return n > 4 && !strchr(said, ' ') && said[n - 1] == 'd' && said[n - 2] == 'e';
}

// "Most rusty" of one knife is a degree.
static void set_share(struct arena *arena, const struct record *record, struct item_flaw *flaw,
                      const char *said) {
    struct item_flaw asked = *flaw;
    const char *own = flaw->told->adjective_at[flaw->severity],
               *adjective = own ? own : flaw->told->adjective;
    asked.adjective_said |= (adjective && has_words(said, adjective)) || is_participle(said);
    bool several = flaw->part || record_is_several(arena, record) ||
                   (record->type.value && say_is_plural(record->type.value));
    flaw->share = several ? told_share(arena, record, &asked) : NULL;
}

// "A dent on the lid and one on the side": one is what the last of its kind was.
static const struct flaw *telling_before(const struct record *record, size_t i, const char *said) {
    static const char *const ones[] = {"one", "another", "another one", "one more", "others", "more"};
    bool one = false;
    for (size_t k = 0; k < COUNT(ones); k++) one |= text_same(said, ones[k]);
    const struct item_flaw *before = one && i ? &record->flaws[i - 1] : NULL;
    return before && before->kind == record->flaws[i].kind && before->told != before->kind ? before->told
                                                                                           : NULL;
}

void told_set(struct arena *arena, struct record *record) {
    for (size_t i = 0; i < record->clear_count; i++) set_denied(arena, record, &record->clear[i]);
    for (size_t i = 0; i < record->flaw_count; i++) {
        struct item_flaw *flaw = &record->flaws[i];
        flaw->told = flaw->kind;
        flaw->unsaid = false;
        flaw->of_pieces = flaw->of > 1 && flaw->of == record->count;
        if (!flaw->span.to || !record->notes) continue;
        const char *said = utf8_fold(
            arena, arena_copy(arena, record->notes + flaw->span.from, flaw->span.to - flaw->span.from));
        flaw->single = is_single(record, flaw, said);
        flaw->of_part = counts_part(arena, record, flaw);
        flaw->adjective_said = says_adjective(flaw, said);
        const struct flaw *telling = telling_of(flaw->kind, said);
        flaw->several = are_several(arena, flaw, telling, said);
        flaw->lone = is_lone(flaw, said);
        if (!telling) telling = telling_before(record, i, said);
        if (telling) flaw->told = telling;
        set_share(arena, record, flaw, said);
        flaw->with = told_with(arena, record, flaw);
        flaw->link = told_link(arena, record, flaw);
        flaw->placed_part = told_of_part(arena, record, flaw);
        flaw->of_named = flaw->part && flaw->of > 1 && has_number(arena, record, flaw);
        flaw->up_to = flaw->has_size && told_largest(arena, record, flaw);
        flaw->unsaid = is_unsaid(arena, record, flaw);
    }
}

// "Scratched initials J.P.": nobody looks for a thing by its former owner, nor needs the letters.
bool told_is_owners(const struct record *record, const char *mark) {
    // Letters of a plate, a king, a country: common practice, no source.
    static const char *const others[] = {"EPNS", "EPBM", "EPC", "EP", "NS", "VR", "GR", "ER", "WD", "USA"};
    for (size_t i = 0; i < COUNT(others); i++)
        if (!strcmp(mark, others[i])) return false;
    size_t letters = 0;
    for (const char *c = mark; *c; c++) {
        bool letter = *c >= 'A' && *c <= 'Z';
        letters += letter;
        if (!letter && *c != '.' && *c != ' ' && *c != '&' && *c != '\'') return false;
    }
    bool owned = false;
    for (size_t i = 0; i < record->flaw_count; i++)
        owned |= text_same(record->flaws[i].kind->rule.id, "owner-name") ||
                 text_same(record->flaws[i].kind->rule.id, "monogram");
    return owned && letters <= 4;
}
