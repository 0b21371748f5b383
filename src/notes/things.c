// SPDX-License-Identifier: MIT
// The head noun is chosen by grammar, not by the nearest word. A noun that another noun follows at once only
// qualifies it
// ("milk glass vase"); one behind "for", "with", "in", "from", "like" is something else than the thing; "set
// of", "box of" only count it. Of those that are left, the first that is a subject is the thing. Nouns that
// in speech are mostly no goods (garage, side, thing) wait until nothing else is there.
#include "notes/things.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { NOUN_WORDS_MOST = 4 };

static const char *phrase_of(const struct note *note, size_t i, size_t n, bool singular) {
    struct buf out = buf_start(note->arena);
    for (size_t k = 0; k < n; k++) {
        const struct token *t = &note->tokens.at[i + k];
        const char *word = singular && k + 1 == n ? t->one : t->fold;
        buf_format(&out, "%s", k ? " " : "");
        for (const char *c = word; *c; c++) buf_byte(&out, *c == '-' ? ' ' : *c);
    }
    return out.at;
}

static bool are_words(const struct note *note, size_t i, size_t n) {
    if (i + n > note->tokens.count) return false;
    for (size_t k = 0; k < n; k++) {
        const struct token *t = &note->tokens.at[i + k];
        if (t->kind == TOKEN_SIGN || t->kind == TOKEN_FIGURE || (k && t->stop != STOP_NONE)) return false;
    }
    return true;
}

size_t word_at(const struct note *note, size_t i, uint32_t uses, struct word_entry *entry) {
    if (!note->book || i >= note->tokens.count) return 0;
    for (size_t n = NOUN_WORDS_MOST; n > 0; n--) {
        if (!are_words(note, i, n)) continue;
        for (int singular = 0; singular < 2; singular++) {
            const char *phrase = phrase_of(note, i, n, singular);
            if (wordbook_find(note->book, phrase, strlen(phrase), entry) && (entry->uses & uses)) return n;
        }
    }
    return 0;
}

static bool rule_noun(const struct note *note, const char *phrase, struct noun_found *found) {
    size_t count = 0;
    const struct thing *const *things = ruleset_things(note->rules, phrase, &count);
    if (!things) return false;
    found->thing = things[0];
    found->noun = phrase;
    found->family = count == 1 ? things[0]->family->rule.id : NULL;
    return true;
}

static bool book_noun(const struct note *note, const char *phrase, struct noun_found *found) {
    struct word_entry entry;
    if (!note->book || !wordbook_find(note->book, phrase, strlen(phrase), &entry)) return false;
    found->gated = entry.uses & (1u << USE_GATED);
    if (found->thing) {
        found->candidate = false;
        return true;
    }
    if (!(entry.uses & ((1u << USE_THING) | (1u << USE_PART)))) return false;
    found->part = !(entry.uses & (1u << USE_THING));
    found->noun = entry.print;
    found->family = entry.family;
    found->candidate = entry.candidate;
    return true;
}

bool noun_at(const struct note *note, size_t i, struct noun_found *found) {
    for (size_t n = NOUN_WORDS_MOST; n > 0; n--) {
        if (!are_words(note, i, n)) continue;
        for (int singular = 1; singular >= 0; singular--) {
            *found = (struct noun_found){.from = i, .to = i + n};
            const char *phrase = phrase_of(note, i, n, singular);
            bool rule = rule_noun(note, phrase, found);
            if (book_noun(note, phrase, found) || rule) return true;
        }
    }
    return false;
}

// --- roles ---

static bool is_one_of(const struct tokens *tokens, size_t i, const char *const *words, size_t count) {
    for (size_t k = 0; k < count; k++)
        if (token_is(tokens, i, words[k])) return true;
    return false;
}

enum role { ROLE_THING, ROLE_LATER, ROLE_WITH, ROLE_FOR, ROLE_PLACE, ROLE_LIKE, ROLE_COUNTS };

static bool is_sentence_end(const struct token *t) {
    return t->stop >= STOP_SENTENCE;
}

// "set of", "box of", "bag of": what follows "of" is the thing.
static bool is_measure_noun(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "set",    "pair",   "lot",    "box",        "bag",        "tin",     "jar",    "bunch",
        "pile",   "stack",  "group",  "collection", "dozen",      "couple",  "piece",  "pieces",
        "part",   "roll",   "bundle", "tray",       "case",       "handful", "sort",   "kind",
        "type",   "number", "packet", "pack",       "assortment", "load",    "carton", "tub",
        "drawer", "bucket", "hank",   "skein",      "sets",       "pairs",   "style",  "reel",
        "length", "row",    "nest",   "quantity",   "selection",  "crate",   "some",   "most"};
    return is_one_of(tokens, i, words, COUNT(words));
}

static enum role role_of(const struct note *note, const struct noun_found *found) {
    static const char *const place[] = {"from",  "in",     "on",      "at",      "by",      "near",
                                        "under", "inside", "behind",  "into",    "onto",    "over",
                                        "off",   "around", "through", "between", "against", "above",
                                        "below", "up",     "down",    "beside",  "during"};
    static const char *const with[] = {"with",     "w",         "w/",    "has", "have",    "had",
                                       "includes", "including", "plus",  "and", "without", "w/o",
                                       "no",       "missing",   "needs", "got"};
    static const char *const fits[] = {"for", "fits", "fit", "suits", "to", "off"};
    static const char *const like[] = {"like", "than", "as", "resembles", "imitating", "unlike", "not"};
    static const char *const intro[] = {
        "is",      "its",    "it's",   "this",    "that's", "these",  "they're", "are",    "found",
        "selling", "bought", "picked", "listing", "here",   "here's", "there's", "theres", "be",
        "called",  "was",    "have",   "got",     "next",   "item",   "another", "found:", "have:"};
    const struct tokens *tokens = &note->tokens;
    size_t i = found->from;
    bool first = true; // first sentence of the note
    for (size_t k = 0; k < i; k++) first &= !is_sentence_end(&tokens->at[k]);
    for (size_t back = 0; i > 0 && back < 9; back++) {
        const struct token *t = &tokens->at[i - 1];
        if (t->stop >= STOP_CLAUSE) break;
        if (t->stop == STOP_COMMA) break;
        if (token_is(tokens, i - 1, "of")) {
            if (i >= 2 && is_measure_noun(tokens, i - 2)) return first ? ROLE_THING : ROLE_LATER;
            return i >= 2 && token_is(tokens, i - 2, "made") ? ROLE_LIKE : ROLE_FOR;
        }
        if (is_one_of(tokens, i - 1, intro, COUNT(intro)) && !is_one_of(tokens, i - 1, with, COUNT(with)))
            return first ? ROLE_THING : ROLE_LATER;
        bool opens =
            i - 1 == 0 || is_sentence_end(&tokens->at[i - 2]) ||
            (i >= 2 && is_one_of(tokens, i - 2, (const char *const[]){"i", "we", "i've", "just"}, 4));
        if (is_one_of(tokens, i - 1, with, COUNT(with))) {
            bool mine = opens && (token_is(tokens, i - 1, "have") || token_is(tokens, i - 1, "got") ||
                                  token_is(tokens, i - 1, "had"));
            return mine ? (first ? ROLE_THING : ROLE_LATER) : ROLE_WITH;
        }
        if (is_one_of(tokens, i - 1, fits, COUNT(fits))) return ROLE_FOR;
        if (is_one_of(tokens, i - 1, like, COUNT(like))) return ROLE_LIKE;
        if (is_one_of(tokens, i - 1, place, COUNT(place))) return ROLE_PLACE;
        i--;
    }
    bool comma = i > 0 && tokens->at[i - 1].stop == STOP_COMMA;
    return first && !comma ? ROLE_THING : ROLE_LATER;
}

static int score(const struct note *note, const struct noun_found *found, size_t order) {
    static const int by_role[] = {[ROLE_THING] = 100, [ROLE_LATER] = 55, [ROLE_WITH] = 22, [ROLE_FOR] = 16,
                                  [ROLE_PLACE] = 12,  [ROLE_LIKE] = 4,   [ROLE_COUNTS] = 2};
    int value = by_role[role_of(note, found)] - (int)(order < 12 ? order : 12) * 2;
    if (found->thing) value += 12;
    if (found->candidate) value -= 6;
    if (found->gated) value -= found->thing ? 25 : 45;
    if (found->part) value -= 15;
    return value + 2 * (int)(found->to - found->from);
}

// A noun that another follows at once qualifies it.
static bool qualifies(const struct note *note, const struct noun_found *found) {
    struct noun_found next;
    const struct token *t = &note->tokens.at[found->to < note->tokens.count ? found->to : 0];
    if (found->to >= note->tokens.count || t->stop != STOP_NONE) return false;
    size_t at = found->to;
    while (at < note->tokens.count && token_is(&note->tokens, at, "-") &&
           note->tokens.at[at].stop == STOP_NONE)
        at++;
    return noun_at(note, at, &next) && note->taken[at] != TAKEN_FLAW && !note->fault_word[at] && !next.gated;
}

static const char *const material_families[][3] = {
    // words of the material, family for tableware and vessels, family of small decor
    {" glass crystal ", "glassware", "glassware"},
    {" porcelain stoneware earthenware ironstone china pottery terracotta ceramic redware majolica ",
     "ceramics", "ceramics"},
    {" brass copper iron steel tin pewter silver bronze aluminum silverplate enamel enamelware galvanized "
     "chrome ",
     "metalware", "metalware"},
};

static bool knows_family(const struct note *note, const char *noun, const char *id) {
    size_t count = 0;
    const struct thing *const *things = ruleset_things(note->rules, noun, &count);
    for (size_t i = 0; i < count; i++)
        if (!strcmp(things[i]->family->rule.id, id)) return true;
    return false;
}

static const struct family *family_of(const struct note *note, const struct noun_found *found) {
    if (found->family) return ruleset_family(note->rules, found->family);
    if (!found->thing) return NULL;
    for (size_t i = 0; i < note->tokens.count; i++)
        for (size_t k = 0; k < COUNT(material_families); k++) {
            const char *word = arena_format(note->arena, " %s ", note->tokens.at[i].one);
            if (!strstr(material_families[k][0], word)) continue;
            if (knows_family(note, found->noun, material_families[k][1]))
                return ruleset_family(note->rules, material_families[k][1]);
        }
    return found->thing->family;
}

static bool in_doubt(const struct note *note, const struct noun_found *found) {
    static const char *const words[] = {"maybe", "possibly", "perhaps",  "might", "think",
                                        "guess", "looks",    "probably", "sure",  "either"};
    const struct tokens *tokens = &note->tokens;
    for (size_t back = 1; back <= 6 && back <= found->from; back++) {
        if (tokens->at[found->from - back].stop >= STOP_COMMA) return false;
        if (is_one_of(tokens, found->from - back, words, COUNT(words))) return true;
    }
    return false;
}

static void set_type(struct note *note, const struct noun_found *found) {
    struct record *record = note->record;
    if (!record->type.value) {
        record->type.value = found->noun;
        record->type.sure = in_doubt(note, found) ? SURE_GUESS : SURE_STATED;
        record->type.span = note_span_of(note, found->from, found->to);
        note_take(note, found->from, found->to, TAKEN_TYPE);
        note_reading(note, found->from, found->to, arena_format(note->arena, "type %s", found->noun),
                     found->thing ? arena_format(note->arena, "family %s", found->thing->family->rule.id)
                                  : "word book");
    }
    if (!record->family) record->family = family_of(note, found);
}

void read_thing(struct note *note) {
    struct noun_found best = {0}, found;
    int most = 0;
    size_t order = 0;
    for (size_t i = 0; i < note->tokens.count; i++) {
        if (note->taken[i] != TAKEN_NOT || !noun_at(note, i, &found)) continue;
        if (!note_free(note, found.from, found.to)) continue;
        if (qualifies(note, &found)) {
            i = found.to - 1;
            continue;
        }
        int value = score(note, &found, order++);
        if (value > most) {
            most = value;
            best = found;
        }
        i = found.to - 1;
    }
    if (most > 0) set_type(note, &best);
    // The same noun again is the same thing.
    for (size_t i = 0; i < note->tokens.count && best.noun; i++)
        if (note->taken[i] == TAKEN_NOT && noun_at(note, i, &found) && !strcmp(found.noun, best.noun))
            note_take(note, found.from, found.to, TAKEN_TYPE);
}
