// SPDX-License-Identifier: MIT
// "One of the rails is cracked and another is loose": the part that "another" leaves out is put behind it, as
// a word of no bytes, so that every reader has a part to tell it of.
#include <string.h>

#include "notes/any.h"
#include "notes/cut.h"
#include "notes/note.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_part(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    struct word_entry entry;
    enum { PART = 1u << USE_PART, THING = 1u << USE_THING };
    if (t->kind != TOKEN_WORD) return false;
    if (phrases_is_part(note->phrases, t->one) || phrases_is_part(note->phrases, t->fold)) return true;
    return wordbook_find(note->book, t->one, strlen(t->one), &entry) && (entry.uses & PART) &&
           !(entry.uses & THING);
}

// "One till has", "a baluster is": a noun that nobody lists, before its verb.
static bool names_unknown(const struct note *note, size_t i) {
    static const char *const others[] = {"them", "these", "those", "which", "mine",
                                         "who",  "it",    "that",  "this"};
    const struct token *t = &note->tokens.at[i];
    struct word_entry entry;
    return t->kind == TOKEN_WORD && strlen(t->fold) > 3 && ANY(&note->tokens, i + 1, "has", "is", "was") &&
           !token_among(&note->tokens, i, others, COUNT(others)) &&
           !(wordbook_find(note->book, t->one, strlen(t->one), &entry) && (entry.uses & (1u << USE_THING)));
}

// "One of the brass corners", "a rail", "two straps" at `i`: the token of the part; `i` where there is none.
static size_t counted_part(const struct note *note, size_t i, size_t end) {
    enum { BETWEEN = 3 };
    static const char *const joins[] = {"and", "but",  "is", "has", "on",   "in", "at", "with",
                                        "no",  "from", "to", "one", "near", "or", "by", "another"};
    const struct tokens *tokens = &note->tokens;
    size_t at = i + 1;
    if (token_is(tokens, at, "of")) at++;
    for (size_t n = 0; at < end && n < BETWEEN; n++, at++) {
        if (tokens->at[at].stop != STOP_NONE || token_among(tokens, at, joins, COUNT(joins))) return i;
        size_t last = at;
        if (names_unknown(note, at)) return at;
        while (last + 1 < end && is_part(note, last + 1)) last++;
        if (is_part(note, last)) return last;
    }
    return i;
}

// The part that was counted last in the sentence before token `i`; SIZE_MAX for none.
static size_t told_before(const struct note *note, size_t i) {
    static const char *const counts[] = {"one", "a", "an", "two", "three", "four", "some"};
    const struct tokens *tokens = &note->tokens;
    size_t start = note_clause_from(note, i, STOP_SENTENCE), found = SIZE_MAX;
    for (size_t at = start; at + 1 < i; at++) {
        bool opens = at == start || tokens->at[at - 1].stop != STOP_NONE || ANY(tokens, at - 1, "and", "but");
        if (!opens) continue; // "has a rim chip and another": of no rim
        size_t part = token_among(tokens, at, counts, COUNT(counts)) ? counted_part(note, at, i) : at;
        if (part == at) continue;
        found = part;
        at = part;
    }
    return found;
}

// "Another is", "another has lost", "another loose", and not "another crack".
static bool leaves_out(const struct tokens *tokens, size_t i) {
    static const char *const says[] = {"is",    "has",    "was",      "isn't", "hasn't",  "needs",
                                       "wants", "sticks", "wobbles",  "won't", "doesn't", "looks",
                                       "badly", "a",      "slightly", "very",  "just",    "nearly"};
    if (!token_is(tokens, i, "another") || i == 0 || i + 1 >= tokens->count ||
        tokens->at[i + 1].kind != TOKEN_WORD)
        return false;
    bool opens = tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "and", "but", "while");
    size_t size = strlen(tokens->at[i + 1].fold);
    const char *tail = size > 4 ? tokens->at[i + 1].fold + size - 2 : "";
    bool state = text_same(tail, "ed") || ANY(tokens, i + 1, "loose", "missing", "broken", "bent", "torn",
                                              "gone", "worn", "stiff", "split", "off", "short", "out");
    return opens && (token_among(tokens, i + 1, says, COUNT(says)) ||
                     (state && (i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE)));
}

// "Handles rusty, one loose": the plural that opens the sentence; SIZE_MAX where it says something else.
static size_t opening_plural(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i < 3 || !ANY(tokens, i, "one", "two") || tokens->at[i - 1].stop != STOP_COMMA ||
        !ANY(tokens, i + 1, "loose", "stiff", "short", "off") ||
        (i + 2 < tokens->count && tokens->at[i + 2].stop == STOP_NONE))
        return SIZE_MAX;
    size_t start = note_clause_from(note, i, STOP_SENTENCE);
    while (start < i && ANY(tokens, start, "the", "its", "both")) start++;
    while (start + 1 < i && is_part(note, start) && is_part(note, start + 1)) start++;
    bool plural = is_part(note, start) && tokens->at[start].one != tokens->at[start].fold;
    return plural ? start : SIZE_MAX;
}

// "Her eyes", "its ears": of whatever has them, though no list has them as parts of goods.
static bool is_limb(const struct note *note, size_t i) {
    return i > 0 && ANY(&note->tokens, i - 1, "her", "his", "its", "glass", "sleep", "both", "two") &&
           ANY(&note->tokens, i, "eyes", "ears", "hands", "feet", "arms", "legs", "wings", "eyelids", "shoes",
               "boots", "paws", "horns");
}

// Does the note begin with several things, of which "the left one" may be one?
static bool heads_several(const struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (ANY(tokens, i, "with", "on", "in", "has")) break;
        if (ANY(tokens, i, "pair", "set", "lot", "two", "three", "four")) return true;
        if (tokens->at[i].kind == TOKEN_WORD && tokens->at[i].one != tokens->at[i].fold && !is_part(note, i))
            return true;
        if (tokens->at[i].stop != STOP_NONE) break;
    }
    return false;
}

// "Her eyes open but the right one sticks", "Three drawers. The bottom one has no pull.": the parts that were
// named last, in this sentence or the one before, of which token `i` is one; SIZE_MAX for none.
static size_t parts_before(const struct note *note, size_t i) {
    static const char *const sides[] = {"small",  "smaller", "large",  "larger", "big",    "bigger", "front",
                                        "back",   "left",    "right",  "top",    "bottom", "upper",  "lower",
                                        "inner",  "outer",   "middle", "first",  "second", "third",  "last",
                                        "main",   "rear",    "long",   "short",  "center", "end",    "side",
                                        "little", "shorter", "longer"};
    static const char *const says[] = {"is",      "has",     "are",    "have", "only",    "won't",  "doesn't",
                                       "sticks",  "isn't",   "just",   "jams", "was",     "gets",   "needs",
                                       "wobbles", "leaks",   "hasn't", "had",  "drags",   "binds",  "rattles",
                                       "squeaks", "came",    "comes",  "fell", "hangs",   "skips",  "lost",
                                       "broke",   "cracked", "don't",  "rubs", "catches", "popped", "slips"};
    const struct tokens *tokens = &note->tokens;
    if (i < 3 || !ANY(tokens, i, "one", "ones") || !token_among(tokens, i - 1, sides, COUNT(sides)) ||
        !token_among(tokens, i + 1, says, COUNT(says)) || tokens->at[i].stop != STOP_NONE)
        return SIZE_MAX;
    size_t start = note_clause_from(note, i, STOP_SENTENCE), article = i - 2;
    if (ANY(tokens, article, "two", "three", "four") || token_among(tokens, article, sides, COUNT(sides)))
        article--; // "the two lower ones"
    bool led = ANY(tokens, article, "the", "its", "her", "his", "and", "but") ||
               tokens->at[article].stop != STOP_NONE;
    if (!led || heads_several(note)) return SIZE_MAX;
    size_t first = start > 1 ? note_clause_from(note, start - 1, STOP_SENTENCE) : start;
    for (size_t at = i - 1; at-- > first;) {
        if (!is_part(note, at) && !is_limb(note, at)) continue;
        bool many = tokens->at[at].one != tokens->at[at].fold;
        if (!many && !(at > 0 && ANY(tokens, at - 1, "the", "a", "its", "one"))) continue; // "they slide"
        bool compound = at > 0 && tokens->at[at - 1].stop == STOP_NONE && is_part(note, at - 1);
        return many && at > 0 && !compound && !ANY(tokens, at - 1, "no", "any") ? at : SIZE_MAX;
    }
    return SIZE_MAX;
}

// "The main zipper works, the one on the side pocket sticks": the part that its sentence begins with;
// SIZE_MAX where it begins otherwise.
static size_t subject_again(const struct note *note, size_t i) {
    static const char *const leads[] = {"the",   "one", "its",   "a",     "main",  "front", "back", "left",
                                        "right", "top", "large", "small", "first", "other", "big",  "upper"};
    const struct tokens *tokens = &note->tokens;
    if (i < 4 || !token_is(tokens, i, "one") || !token_is(tokens, i - 1, "the") ||
        tokens->at[i].stop != STOP_NONE ||
        !ANY(tokens, i + 1, "on", "in", "at", "by", "over", "under", "inside") ||
        !ANY(tokens, i + 2, "the", "its", "her", "his", "each"))
        return SIZE_MAX;
    bool opens = tokens->at[i - 2].stop != STOP_NONE || ANY(tokens, i - 2, "and", "but", "while");
    size_t at = note_clause_from(note, i, STOP_SENTENCE);
    while (token_among(tokens, at, leads, COUNT(leads))) at++;
    if (!opens || at + 2 >= i || !is_part(note, at)) return SIZE_MAX;
    while (at + 1 < i && tokens->at[at].stop == STOP_NONE && is_part(note, at + 1)) at++;
    return ANY(tokens, at + 1, "is", "works", "has", "was", "on", "in", "runs", "opens", "closes", "zips",
               "slides", "holds", "looks", "at")
               ? at
               : SIZE_MAX;
}

// "Small ring works, large one only gets warm": the part that stands behind a word like that before "one",
// which has a verb of its own; SIZE_MAX for none.
static size_t told_by_side(const struct note *note, size_t i) {
    static const char *const sides[] = {
        "small", "large", "big",    "front", "back",   "left",  "right", "top",    "bottom", "upper", "lower",
        "inner", "outer", "middle", "first", "second", "third", "fine",  "coarse", "rear",   "high",  "low"};
    static const char *const counts[] = {"two", "three", "four", "five", "six", "both", "several"};
    static const char *const says[] = {"is",    "has",  "only", "won't", "doesn't", "sticks",
                                       "isn't", "just", "jams", "was",   "gets",    "needs"};
    const struct tokens *tokens = &note->tokens;
    if (i < 3 || !token_is(tokens, i, "one") || !token_among(tokens, i - 1, sides, COUNT(sides)) ||
        !token_among(tokens, i + 1, says, COUNT(says)))
        return SIZE_MAX;
    for (size_t at = i - 2, start = note_clause_from(note, i, STOP_SENTENCE); at > start; at--) {
        if (!is_part(note, at) || !token_among(tokens, at - 1, sides, COUNT(sides))) continue;
        if (token_is(tokens, at - 1, tokens->at[i - 1].fold)) return SIZE_MAX;
        while (at + 1 < i && tokens->at[at].stop == STOP_NONE && is_part(note, at + 1)) at++; // "strap lug"
        return at;
    }
    size_t end = token_is(tokens, i - 2, "the") ? i - 2 : i - 1; // "three plates, the coarse one has rust"
    if (end > 0 && ANY(tokens, end - 1, ",", ";", "-", ".")) end--;
    bool several =
        end > 1 && end < i - 1 && (end < 3 || !ANY(tokens, end - 3, "with", "and")) &&
        ANY(tokens, i - 1, "middle", "rear", "coarse", "fine", "inner", "outer", "second", "third") &&
        tokens->at[end - 1].kind == TOKEN_WORD && tokens->at[end - 1].one != tokens->at[end - 1].fold &&
        token_among(tokens, end - 2, counts, COUNT(counts));
    return several ? end - 1 : SIZE_MAX;
}

// "Fine focus is stiff, coarse works", "left speaker dead, right is fine": the part that was named behind the
// other side; SIZE_MAX for none.
static size_t other_side(const struct note *note, size_t i) {
    static const char *const pairs[][2] = {{"fine", "coarse"}, {"left", "right"},  {"front", "back"},
                                           {"front", "rear"},  {"upper", "lower"}, {"top", "bottom"},
                                           {"inner", "outer"}, {"high", "low"},    {"near", "far"}};
    static const char *const says[] = {"works", "is",   "has",   "won't", "doesn't", "sticks",
                                       "isn't", "was",  "works", "gets",  "needs",   "turns",
                                       "moves", "runs", "holds", "jams"};
    const struct tokens *tokens = &note->tokens;
    if (!token_among(tokens, i + 1, says, COUNT(says))) return SIZE_MAX;
    for (size_t k = 0; k < COUNT(pairs); k++) {
        bool first = token_is(tokens, i, pairs[k][0]);
        if (!first && !token_is(tokens, i, pairs[k][1])) continue;
        for (size_t at = i - 1, start = note_clause_from(note, i, STOP_SENTENCE); at > start; at--)
            if (token_is(tokens, at - 1, pairs[k][first]) && tokens->at[at - 1].stop == STOP_NONE &&
                (is_part(note, at) ||
                 ANY(tokens, at, "focus", "side", "channel", "works", "barrel", "adjustment")))
                return at;
    }
    return SIZE_MAX;
}

// "No slats missing, one cracked along the side": the plural of which none lacks; SIZE_MAX for none.
static size_t denied_plural(const struct note *note, size_t i) {
    static const char *const states[] = {"loose", "broken", "bent", "torn",  "worn",
                                         "stiff", "split",  "off",  "short", "rotten"};
    const struct tokens *tokens = &note->tokens;
    if (i < 3 || i + 1 >= tokens->count || !ANY(tokens, i, "one", "two", "three") ||
        (tokens->at[i - 1].stop != STOP_COMMA && !token_is(tokens, i - 1, "but")))
        return SIZE_MAX;
    const char *next = tokens->at[i + 1].fold;
    size_t size = strlen(next), start = i - 1, at;
    if (!token_among(tokens, i + 1, states, COUNT(states)) && !(size > 4 && text_same(next + size - 2, "ed")))
        return SIZE_MAX;
    while (start > 0 && tokens->at[start - 1].stop == STOP_NONE) start--;
    if (!ANY(tokens, start, "no")) return SIZE_MAX;
    for (at = start + 1; at < i && at < start + 4; at++)
        if (tokens->at[at].one != tokens->at[at].fold &&
            (is_part(note, at) ||
             ANY(tokens, at + 1, "missing", "gone", "lost", "broken", "split", "cracked")))
            return at;
    return SIZE_MAX;
}

// "The straps inside are dry and one has snapped": the plural of which one has it; SIZE_MAX for none.
static size_t said_and_one(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i - 1, "and", "but") || !ANY(tokens, i, "one", "two") ||
        !ANY(tokens, i + 1, "has", "is", "have", "are") || ANY(tokens, i + 2, "of", "the", "in", "on"))
        return SIZE_MAX;
    size_t start = note_clause_from(note, i, STOP_COMMA);
    while (ANY(tokens, start, "the", "its", "both")) start++;
    for (size_t at = start; at + 3 < i && at < start + 4; at++)
        if (tokens->at[at].one != tokens->at[at].fold && tokens->at[at].kind == TOKEN_WORD &&
            is_part(note, at) && ANY(tokens, at + 2, "are", "have", "were"))
            return at;
    return SIZE_MAX;
}

// "Three tines broken and two bent": the plural that was counted before the "and"; SIZE_MAX for none.
static size_t counted_again(const struct note *note, size_t i) {
    static const char *const states[] = {"loose", "broken", "bent", "torn", "worn", "stiff", "split"};
    static const char *const counts[] = {"two", "three", "four", "five", "six", "some", "several", "a few"};
    const struct tokens *tokens = &note->tokens;
    size_t few = i > 4 && token_is(tokens, i, "few") && token_is(tokens, i - 1, "a") ? 1 : 0;
    if (i < 4 || i + 1 >= tokens->count || !token_is(tokens, i - 1 - few, "and") ||
        tokens->at[i - 2 - few].stop != STOP_NONE ||
        !ANY(tokens, i, "one", "two", "three", "few", "several") ||
        !token_among(tokens, i + 1, states, COUNT(states)))
        return said_and_one(note, i);
    bool ends = i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE;
    size_t start = note_clause_from(note, i, STOP_COMMA),
           n = token_longest(tokens, start, counts, COUNT(counts));
    for (size_t at = start + n; ends && n && at + 1 < i && at < start + n + 3; at++)
        if (tokens->at[at].one != tokens->at[at].fold && tokens->at[at].kind == TOKEN_WORD) return at;
    return SIZE_MAX;
}

// "Old red paint, mostly gone", "varnish, most of it gone": the surface before the comma at `i`, and where it
// is meant behind it; SIZE_MAX for none.
static size_t surface_of_it(const struct tokens *tokens, size_t i, size_t *at) {
    static const char *const surfaces[] = {
        "paint",  "paintwork", "varnish", "gilding", "plating", "lacquer", "tinning", "silvering",
        "enamel", "japanning", "polish",  "finish",  "nickel",  "chrome",  "gilt",    "gold"};
    static const char *const shares[] = {"most", "half", "much", "all", "some", "lots", "plenty", "nearly"};
    static const char *const degrees[] = {"mostly", "nearly", "almost", "largely", "partly", "half", "all"};
    if (i == 0 || tokens->at[i].stop != STOP_COMMA || !token_among(tokens, i - 1, surfaces, COUNT(surfaces)))
        return SIZE_MAX;
    *at = i;
    if (token_among(tokens, i + 1, degrees, COUNT(degrees)) &&
        ANY(tokens, i + 2, "gone", "worn", "off", "rubbed", "missing", "flaked"))
        return i - 1;
    if (!token_among(tokens, i + 1, shares, COUNT(shares)) || !token_is(tokens, i + 2, "of") ||
        !token_is(tokens, i + 3, "it"))
        return SIZE_MAX;
    *at = i + 3;
    return i - 1;
}

static struct token named(const struct tokens *tokens, size_t behind, size_t part) {
    const struct token *before = &tokens->at[behind];
    const char *one = tokens->at[part].one;
    return (struct token){.from = before->to,
                          .to = before->to,
                          .fold = one,
                          .one = one,
                          .hash = token_hash(one, strlen(one)),
                          .kind = TOKEN_WORD,
                          .slip = true};
}

// "Two leak", "both stick": what several do is what one does.
static void say_of_one(struct note *note) {
    static const char *const many[] = {"two",  "three", "four",    "five", "six",
                                       "both", "some",  "several", "most", "all"};
    static const struct {
        const char *said, *of_one;
    } verbs[] = {{"leak", "leaks"},   {"drip", "drips"}, {"lean", "leans"},
                 {"stick", "sticks"}, {"rock", "rocks"}, {"wobble", "wobbles"}};
    struct tokens *tokens = &note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        static const char firsts[] = "ldsrw"; // of the verbs
        if (!strchr(firsts, tokens->at[i].fold[0]) || !token_among(tokens, i - 1, many, COUNT(many)) ||
            (i > 1 && tokens->at[i - 2].stop == STOP_NONE) ||
            (i + 1 < tokens->count && tokens->at[i + 1].stop == STOP_NONE))
            continue;
        for (size_t k = 0; k < COUNT(verbs); k++) {
            if (!token_is(tokens, i, verbs[k].said)) continue;
            struct token *t = &tokens->at[i];
            t->fold = t->one = verbs[k].of_one;
            t->hash = token_hash(t->fold, strlen(t->fold));
            t->vain = NULL;
            t->slip = tokens->altered = true;
        }
    }
}

// Does "does not" stand at token `i`, and a word behind it? Its contraction; else NULL.
static const char *contracted(const struct tokens *tokens, size_t i) {
    if (!token_is(tokens, i + 1, "not") || i + 2 >= tokens->count || tokens->at[i].stop != STOP_NONE ||
        tokens->at[i + 1].stop != STOP_NONE || tokens->at[i + 2].kind != TOKEN_WORD)
        return NULL;
    return ANY(tokens, i, "does") ? "doesn't" : ANY(tokens, i, "will") ? "won't" : NULL;
}

// "Does not fit", "will not stay lit": one word, as it is said, so that every reader knows it.
static void contract(struct note *note) {
    struct tokens *tokens = &note->tokens;
    size_t kept = 0;
    while (kept < tokens->count && !contracted(tokens, kept)) kept++;
    if (kept == tokens->count) return;
    for (size_t i = kept; i < tokens->count; i++) {
        const char *word = contracted(tokens, i);
        struct token *t = &tokens->at[kept++];
        *t = tokens->at[i];
        if (!word) continue;
        t->to = tokens->at[++i].to;
        t->fold = t->one = word;
        t->hash = token_hash(word, strlen(word));
        t->vain = NULL;
        t->plain = false;
    }
    tokens->count = kept;
    tokens->altered = true;
}

void note_name_again(struct note *note) {
    struct tokens *tokens = &note->tokens;
    if (!note->book) return;
    contract(note);
    say_of_one(note);
    size_t more = 0, *parts = NULL;
    for (size_t i = 1; i < tokens->count; i++) {
        const char first = tokens->at[i].fold[0];
        size_t side = tokens->at[i - 1].stop == STOP_COMMA ? other_side(note, i) : SIZE_MAX;
        if (side != SIZE_MAX) {
            if (!parts) parts = arena_array(note->arena, tokens->count, sizeof *parts);
            parts[i] = side + 1;
            more++;
            continue;
        }
        if (first != 'a' && first != 'o' && first != 't' && first != 'f' && tokens->at[i].stop != STOP_COMMA)
            continue;
        size_t part = leaves_out(tokens, i) ? told_before(note, i) : opening_plural(note, i);
        size_t at = i;
        if (part == SIZE_MAX && (first == 'o' || first == 't')) part = denied_plural(note, i);
        if (part == SIZE_MAX && (first == 'o' || first == 't' || first == 'f')) part = counted_again(note, i);
        if (part == SIZE_MAX) part = surface_of_it(tokens, i, &at);
        bool instead = part == SIZE_MAX && (part = told_by_side(note, i)) != SIZE_MAX;
        if (part == SIZE_MAX) instead = (part = parts_before(note, i)) != SIZE_MAX;
        if (part == SIZE_MAX) instead = (part = subject_again(note, i)) != SIZE_MAX;
        if (part == SIZE_MAX) continue;
        if (at > i || instead) { // "most of it", "the back one": the word itself
            bool single = instead && !token_is(tokens, i, "ones");
            const char *word = single ? tokens->at[part].one : tokens->at[part].fold;
            tokens->at[at].fold = tokens->at[at].one = word;
            tokens->at[at].hash = token_hash(word, strlen(word));
            tokens->at[at].vain = NULL;
            tokens->at[at].plain = false;
            tokens->at[at].slip = tokens->altered = true;
            continue;
        }
        if (!parts) parts = arena_array(note->arena, tokens->count, sizeof *parts);
        parts[i] = part + 1;
        more++;
    }
    if (!more) return;
    struct token *at = arena_array(note->arena, tokens->count + more + 1, sizeof *at);
    size_t count = 0;
    for (size_t i = 0; i < tokens->count; i++) {
        at[count++] = tokens->at[i];
        if (parts[i]) at[count++] = named(tokens, i, parts[i] - 1);
    }
    tokens->at = at;
    tokens->count = count;
    tokens->altered = true;
}
