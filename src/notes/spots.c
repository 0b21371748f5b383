// SPDX-License-Identifier: MIT
// "Chip on the rim", "on the rim there is a chip", "the handle is cracked", "lid chipped", "inside is rusty".
// A preposition makes a place; a part that is the subject of the fault is the part.
#include "notes/faults.h"

#include <string.h>

#include "notes/things.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { PLACE_WORDS_MOST = 6, PART_WORDS_MOST = 4, GAP_MOST = 6 };

static bool is_preposition(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "on",     "in",      "at",       "near",    "by",     "under",   "along",      "around",
        "inside", "round",   "across",   "over",    "behind", "beside",  "underneath", "between",
        "below",  "above",   "down",     "up",      "to",     "through", "throughout", "of",
        "from",   "next to", "close to", "towards", "toward", "against", "beneath"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool is_adverb(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"inside",     "outside",    "underneath",
                                        "throughout", "everywhere", "overall"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool is_article(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"the",  "a",    "an",  "its", "one",   "both", "this",
                                        "that", "each", "all", "my",  "their", "it's"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool ends_place(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"is",      "are",   "was",  "has",   "have", "but",    "and",
                                        "with",    "where", "that", "which", "so",   "you",    "i",
                                        "it",      "there", "can",  "shows", "from", "about",  "maybe",
                                        "just",    "only",  "not",  "no",    "like", "when",   "if",
                                        "because", "or",    "we",   "they",  "due",  "nothing"};
    const struct tokens *tokens = &r->note->tokens;
    return tokens->at[i].stop != STOP_NONE || tokens->at[i].kind == TOKEN_FIGURE ||
           token_among(tokens, i, words, COUNT(words)) || (r->scope.fault[i] && !r->part[i]);
}

// "Cracked where it bends", "worn where the arm rests": the place told by what happens there.
static size_t place_clause(const struct tokens *tokens, size_t i) {
    static const char *const subjects[] = {"it", "they", "the", "you", "your", "its", "one", "two"};
    static const char *const others[] = {"someone", "somebody", "i",   "we",  "he",   "she", "was",
                                         "were",    "should",   "has", "had", "been", "is",  "are"};
    static const char *const ends[] = {"and", "but", "so", "which", "though", "because"};
    enum { LEAST = 3, MOST = 7 };
    if (!token_is(tokens, i, "where") || !token_among(tokens, i + 1, subjects, COUNT(subjects))) return 0;
    size_t to = i + 1;
    while (to < tokens->count && to < i + MOST && tokens->at[to].stop == STOP_NONE &&
           tokens->at[to].kind == TOKEN_WORD && !token_among(tokens, to, ends, COUNT(ends)) &&
           !token_among(tokens, to, others, COUNT(others)))
        to++;
    bool ended =
        to >= tokens->count || tokens->at[to].stop != STOP_NONE || token_among(tokens, to, ends, COUNT(ends));
    for (size_t k = i + 1; k < to || (k == to && to < tokens->count); k++)
        if (token_among(tokens, k, others, COUNT(others))) return 0; // what was done there, not where
    return ended && to >= i + LEAST ? to : 0;
}

bool spot_in_clause(const struct tokens *tokens, size_t i) {
    static const char *const uses[] = {"bends",  "bend", "folds",   "fold",   "rubs",  "rub",
                                       "flexes", "flex", "creases", "sticks", "rests", "buckles"};
    enum { BACK = 6 };
    if (!token_among(tokens, i, uses, COUNT(uses))) return false;
    for (size_t at = i; at > 0 && at + BACK > i; at--)
        if (place_clause(tokens, at - 1) > i) return true;
    return false;
}

// A place phrase behind `i`: "on the inside rim", "near the base", "inside". Its words without the first
// preposition.
static size_t place_behind(const struct fault_reader *r, size_t i, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    if (i >= tokens->count) return 0;
    size_t clause = place_clause(tokens, i);
    if (clause) {
        *from = i;
        return clause;
    }
    if (is_adverb(tokens, i) && (i + 1 >= tokens->count || ends_place(r, i + 1))) {
        *from = i;
        return i + 1;
    }
    if (token_phrase(tokens, i, "all over") || token_phrase(tokens, i, "all around")) {
        *from = i;
        return i + 2;
    }
    if (!is_preposition(tokens, i)) return 0;
    if (token_phrase(tokens, i, "by hand") || token_phrase(tokens, i, "by eye")) return 0;
    if (token_is(tokens, i, "from") && i > 0 &&
        (token_is(tokens, i - 1, "apart") || token_is(tokens, i - 1, "aside")))
        return 0;
    size_t at = i + 1, last = 0;
    bool near = !token_is(tokens, i, "on") && !token_is(tokens, i, "in") && !token_is(tokens, i, "at") &&
                !token_is(tokens, i, "of") && !token_is(tokens, i, "to");
    while (at < tokens->count && is_article(tokens, at)) at++;
    size_t start = at;
    for (; at < tokens->count && at < start + PLACE_WORDS_MOST; at++) {
        if (is_preposition(tokens, at) && last && at + 1 < tokens->count) {
            size_t next = at + 1;
            while (next < tokens->count && is_article(tokens, next)) next++;
            if (!r->part[next < tokens->count ? next : at]) break;
            continue;
        }
        if (token_is(tokens, at, "and") && last && r->part[at + 1 < tokens->count ? at + 1 : at] &&
            !(at + 2 < tokens->count && r->scope.fault[at + 2]))
            continue;
        if (is_article(tokens, at) && last) continue;
        if (ends_place(r, at)) break;
        if (r->part[at]) last = at + 1;
    }
    if (!last) return 0;
    *from = near ? i : start;
    return last;
}

// "No lid rust on the handle": the lid is what is missing, and not what is rusty.
static bool in_other(const struct fault_reader *r, size_t part, size_t fault) {
    for (size_t i = 0; i < r->hit_count; i++)
        if (r->hits[i].from <= part && part < r->hits[i].to) return r->hits[i].to <= fault;
    return false;
}

// The part that is the subject: "the handle is cracked", "lid has a chip", "spout chipped". Between the two
// stand verbs, degrees and articles, no other fault; behind a preposition it is no subject.
// "The yellow one", "the pink cup" of several: which of them, where no part is named.
static bool piece_before(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value;
    const char *and = type ? strstr(type, " and ") : NULL;
    if (r->note->record->count < 2 && !and) return false;
    struct word_entry entry;
    size_t start = scope_sentence_start(&r->scope, i);
    while (start < i && (is_preposition(tokens, start) || tokens->at[start].stop != STOP_NONE)) start++;
    size_t named = token_is(tokens, start, "the") ? start + 1 : start;
    if (and&&named < i && tokens->at[named].kind == TOKEN_WORD && strlen(tokens->at[named].one) > 2 &&
        (!strncmp(type, tokens->at[named].one, strlen(tokens->at[named].one)) ||
         !strcmp(and+5, tokens->at[named].one))) { // "sugar bowl and creamer. Sugar is chipped"
        *from = named;
        *to = named + 1;
        return true;
    }
    if (!token_is(tokens, start, "the")) return false;
    size_t n = word_at(r->note, start + 1, 1u << USE_COLOR, &entry), noun = start + 1 + n;
    if (!n && token_among(tokens, start + 1,
                          (const char *const[]){"big", "small", "large", "little", "bigger", "smaller",
                                                "tall", "short", "first", "second", "third", "last", "other"},
                          13))
        noun = start + 2;
    if (noun == start + 1 || noun >= i) return false;
    struct noun_found found;
    bool one = token_is(tokens, noun, "one");
    if (!one && !noun_at(r->note, noun, &found)) return false;
    *from = start + 1;
    *to = one ? noun + 1 : found.to;
    return *to <= i;
}

static bool subject_before(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    static const char *const sides[] = {"left",  "right", "upper",  "lower",  "front",   "back",   "rear",
                                        "inner", "outer", "top",    "bottom", "battery", "inside", "outside",
                                        "big",   "small", "second", "first",  "one"};
    static const char *const joints[] = {"and", "so", "because", "since", "which", "where", "when", "if"};
    static const char *const particles[] = {"up", "down", "over"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    for (size_t gap = 0; at > 0 && gap <= GAP_MOST; gap++) {
        bool with = tokens->at[at - 1].stop == STOP_COMMA && at < i && token_is(tokens, at, "with");
        if (with && at > 1 && r->part[at - 2]) { // "has its jacket, with a tear"
            at--;
            continue;
        }
        if (tokens->at[at - 1].stop != STOP_NONE || token_is(tokens, at - 1, "but")) return false;
        if (r->part[at - 1] && r->scope.fault[at - 1] && in_other(r, at - 1, i)) return false;
        if (r->part[at - 1]) {
            *to = at;
            size_t start = at - 1;
            while (start > 0 && *to - start < PART_WORDS_MOST && r->part[start - 1]) start--;
            while (start > 0 && *to - start < PART_WORDS_MOST &&
                   token_among(tokens, start - 1, sides, COUNT(sides)))
                start--;
            size_t behind = start;
            while (behind > 0 && is_article(tokens, behind - 1)) behind--;
            *from = start;
            bool bare =
                behind == start && behind > 0 && token_among(tokens, behind - 1, particles, COUNT(particles));
            return bare || !(behind > 0 && is_preposition(tokens, behind - 1)); // "the take up key"
        }
        if (r->scope.fault[at - 1] || token_among(tokens, at - 1, joints, COUNT(joints))) return false;
        at--;
    }
    return false;
}

// "Name on the lid", "rust inside": within the phrase of the fault a place, not a part.
static bool is_place_in_phrase(const struct fault_reader *r, const struct fault_hit *hit, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (is_adverb(tokens, i)) return true;
    size_t at = i;
    while (at > hit->from && is_article(tokens, at - 1)) at--;
    return at > hit->from && is_preposition(tokens, at - 1);
}

static bool is_whole(const struct fault_reader *r, const struct fault_hit *hit) {
    for (size_t i = 0; i < hit->kind_count; i++)
        if (kind_is_whole(r, hit->kinds[i], hit)) return true;
    return false;
}

static bool place_inside(const struct fault_reader *r, const struct fault_hit *hit, size_t *from,
                         size_t *to) {
    if (is_whole(r, hit)) return false;
    for (size_t i = hit->from + 1; i < hit->to; i++) {
        if (!r->part[i] || !is_place_in_phrase(r, hit, i)) continue;
        *from = i;
        *to = i + 1;
        return true;
    }
    return false;
}

// A part word inside the phrase of the fault itself: "lid sticks".
static bool part_inside(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    if (hit->to - hit->from < 2 || hit->kinds[0]->form == STATE || is_whole(r, hit)) return false;
    for (size_t i = hit->from; i < hit->to; i++) {
        if (!r->part[i] || is_place_in_phrase(r, hit, i)) continue;
        *from = i;
        for (*to = i + 1; *to < hit->to && r->part[*to];) ++*to;
        return true;
    }
    return false;
}

// "The chain isn't broken, it's tarnished": the part that the clause before speaks of.
static bool part_of_pronoun(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    static const char *const pronouns[] = {"it", "it's", "its", "they", "they're", "that"};
    const struct tokens *tokens = &r->note->tokens;
    size_t start = i;
    while (start > 0 && tokens->at[start - 1].stop == STOP_NONE && i - start < GAP_MOST) start--;
    while (token_is(tokens, start, "and") || token_is(tokens, start, "but")) start++;
    if (start == 0 || !token_among(tokens, start, pronouns, COUNT(pronouns))) return false;
    if (tokens->at[start - 1].stop >= STOP_SENTENCE) return false;
    size_t sentence = scope_sentence_start(&r->scope, i);
    for (size_t at = sentence; at < start && at < sentence + 4; at++) {
        if (!r->part[at]) continue;
        *from = at;
        *to = at + 1;
        while (*to < start && r->part[*to]) ++*to;
        return true;
    }
    return false;
}

// "On the bottom there's a chip", "inside: rust", "underneath, two chips".
static bool place_before(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_clause_start(&r->scope, i);
    for (size_t at = start; at < i; at++)
        if (r->scope.stance[at] & STANCE_WITHDRAWN) start = at + 1;
    if (start > 0 && tokens->at[start - 1].stop == STOP_CLAUSE && token_is(tokens, start - 1, ":") &&
        start >= 2 && r->part[start - 2]) { // "rim: two chips"
        *to = start - 1;
        *from = start - 2;
        while (*from > 0 && r->part[*from - 1]) --*from;
        return true;
    }
    static const char *const stays[] = {"stood",     "sat",     "kept", "hung",  "lived", "stored",
                                        "displayed", "sitting", "left", "spent", "found", "bought",
                                        "standing",  "hanging", "came", "from"};
    for (size_t at = start; at < i; at++)
        if (token_among(tokens, at, stays, COUNT(stays)))
            return false;   // where it stood, not where the fault is
    size_t segment = start; // behind the last comma or "and"
    for (size_t at = start; at < i; at++)
        if (tokens->at[at].stop == STOP_COMMA || token_is(tokens, at, "and")) segment = at + 1;
    while (segment < i && is_article(tokens, segment)) segment++;
    size_t n = place_behind(r, segment, from);
    if (!n && segment > start) { // "underneath, two chips": a segment that is a place and nothing else
        n = place_behind(r, start, from);
        if (n && n + 1 < segment) n = 0;
    }
    if (!n || n > i) return false;
    for (size_t k = n; k < i; k++) // another fault in between has the place
        if (r->scope.fault[k] && !r->part[k]) return false;
    *to = n;
    return true;
}

static size_t behind_hit(const struct fault_reader *r, size_t i) {
    static const char *const skipped[] = {"right",   "mostly",  "mainly",   "especially", "maybe", "just",
                                          "only",    "also",    "marks",    "mark",       "or",    "two",
                                          "spots",   "spot",    "all",      "about",      "here",  "there",
                                          "visible", "showing", "starting", "you",        "can",   "see"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    for (size_t n = 0; n < 4 && at < tokens->count && token_among(tokens, at, skipped, COUNT(skipped)); n++)
        at++;
    return at;
}

// Places behind the next faults of the same list belong to all of it only where nothing else stands between:
// "no chips or cracks on the rim".
static size_t place_of_list(const struct fault_reader *r, size_t i, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    bool joined = false;
    for (size_t n = 0; n < 8 && at < tokens->count; n++, at++) {
        if (token_is(tokens, at, "or") || token_is(tokens, at, "and") || tokens->at[at].stop == STOP_COMMA) {
            joined = true;
            continue;
        }
        if (r->scope.fault[at] && joined) continue;
        break;
    }
    return joined ? place_behind(r, at, from) : 0;
}

// "Engraved with a big M in the middle": a place further on in the clause, before any other fault.
static size_t place_further(const struct fault_reader *r, size_t i, size_t *from) {
    enum { FURTHER = 7 };
    static const char *const others[] = {"and",   "but",  "apart", "aside",  "except",
                                         "other", "just", "only",  "besides"};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = i; at < tokens->count && at < i + FURTHER; at++) {
        if (tokens->at[at].stop != STOP_NONE || r->scope.fault[at] ||
            token_among(tokens, at, others, COUNT(others)))
            return 0;
        size_t to = place_behind(r, at, from);
        if (to) return to;
    }
    return 0;
}

size_t spot_place_at(const struct fault_reader *r, size_t i, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    while (i < tokens->count && tokens->at[i].stop == STOP_COMMA) i++;
    return place_behind(r, i, from);
}

// "It has not been tested (motor)".
static size_t place_in_brackets(const struct fault_reader *r, size_t i, size_t *from) {
    enum { WORDS_MOST = 5 };
    static const char *const degrees[] = {"light", "moderate", "heavy"};
    const struct tokens *tokens = &r->note->tokens;
    while (i < tokens->count && !token_is(tokens, i, "(") && tokens->at[i].stop < STOP_SENTENCE &&
           !r->scope.fault[i])
        i++;
    if (!token_is(tokens, i, "(")) return 0;
    *from = i + 1;
    while (is_article(tokens, *from)) ++*from;
    size_t to = *from;
    while (to < tokens->count && to < *from + WORDS_MOST && !token_is(tokens, to, ")")) to++;
    bool degree = to == *from + 1 && token_among(tokens, *from, degrees, COUNT(degrees));
    if (degree) return place_in_brackets(r, to + 1, from);
    return token_is(tokens, to, ")") && to > *from ? to : 0;
}

static bool is_noun_of(const struct flaw *kind, const char *word) {
    return (kind->noun && strstr(kind->noun, word)) || (kind->plural && strstr(kind->plural, word));
}

// "A wobbly leg": what the adjective stands before.
static bool part_behind(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->near || hit->to != hit->from + 1 || hit->to >= tokens->count || !r->part[hit->to] ||
        is_adverb(tokens, hit->to) || is_preposition(tokens, hit->to) || r->scope.fault[hit->to] ||
        token_is(tokens, hit->to, "all") || is_noun_of(hit->kinds[0], tokens->at[hit->from].fold))
        return false;
    *from = hit->to;
    for (*to = hit->to; *to < tokens->count && r->part[*to] && *to < hit->to + PART_WORDS_MOST;) ++*to;
    return true;
}

// "Wear in two places on the lid": the number is told by itself.
static size_t behind_places(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    bool places = token_is(tokens, i + 2, "places") || token_is(tokens, i + 2, "spots");
    return token_is(tokens, i, "in") && places ? i + 3 : i;
}

// "The base has a small crack and coating wear": one subject for all that the sentence says.
static bool subject_of_sentence(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    static const char *const verbs[] = {"is", "are", "has", "have", "shows", "show", "was", "were", "had"};
    static const char *const others[] = {"it",   "there",   "they", "which", "but",
                                         "it's", "there's", "i",    "you",   "while"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = scope_sentence_start(&r->scope, i);
    while (at < i && is_article(tokens, at)) at++;
    *from = at;
    while (at < i && r->part[at]) at++;
    *to = at;
    if (*to == *from || !token_among(tokens, at, verbs, COUNT(verbs)) || in_other(r, *from, i)) return false;
    bool joined = false;
    for (; at < i; at++) {
        if (tokens->at[at].stop >= STOP_CLAUSE || token_among(tokens, at, others, COUNT(others)))
            return false;
        joined |= token_is(tokens, at, "and") || tokens->at[at].stop == STOP_COMMA;
    }
    return joined;
}

// "Brown stain top left": a corner without its preposition.
static size_t bare_place(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"top",  "bottom", "upper",  "lower",  "left",   "right",  "front",
                                        "back", "rear",   "center", "centre", "middle", "corner", "edge"};
    const struct tokens *tokens = &r->note->tokens;
    size_t to = i;
    while (to < tokens->count && to < i + 3 && token_among(tokens, to, words, COUNT(words))) to++;
    bool side = to > i;
    while (side && to < tokens->count && to < i + 3 && r->part[to] && !r->scope.fault[to]) to++;
    bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE;
    return side && ends ? to : 0;
}

// "A small tear, bottom right": the same in a clause of its own.
static size_t bare_clause(const struct fault_reader *r, size_t i, size_t *from) {
    if (i >= r->note->tokens.count || r->note->tokens.at[i].stop != STOP_COMMA) return 0;
    *from = i + 1;
    return bare_place(r, i + 1);
}

// "Scratched and flaking in the middle": one place for both.
static size_t place_of_both(const struct fault_reader *r, size_t i, size_t *from) {
    enum { LEAST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, i, "and") || i + 2 >= tokens->count || r->part[i + 1]) return 0;
    const char *word = tokens->at[i + 1].fold;
    size_t size = strlen(word);
    bool participle = size > LEAST && (!strcmp(word + size - 2, "ed") || !strcmp(word + size - 3, "ing"));
    return participle ? place_behind(r, i + 2, from) : 0;
}

// "A rip at the elbow that somebody mended": the repair is where the damage was.
static void move_to_damage(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    size_t start = scope_sentence_start(&r->scope, hit->from);
    for (size_t k = r->hit_count; k-- > 0;) {
        const struct fault_hit *damage = &r->hits[k];
        if (damage->from >= hit->from) continue;
        if (damage->from < start) return;
        if (!(r->scope.stance[damage->from] & STANCE_PAST) || damage->kinds[0]->class == CLASS_REPAIR)
            continue;
        *spot = spot_of_hit(r, damage);
        return;
    }
}

// "A hairline", "the tape is taped": a word of the kind's own name is no part of the thing.
static bool names_kind(const struct fault_reader *r, const struct fault_hit *hit, size_t from, size_t to) {
    static const char *const words[] = {"tape", "line", "hair", "patch", "ring", "glue"};
    const struct tokens *tokens = &r->note->tokens;
    const char *noun = hit->kinds[0]->noun;
    return to == from + 1 && noun && token_among(tokens, from, words, COUNT(words)) &&
           strstr(noun, tokens->at[from].one);
}

static struct spot any_spot_of(const struct fault_reader *r, const struct fault_hit *hit);

struct spot spot_of_hit(const struct fault_reader *r, const struct fault_hit *hit) {
    struct spot spot = any_spot_of(r, hit);
    if (spot.part_to > spot.part_from && names_kind(r, hit, spot.part_from, spot.part_to))
        spot.part_from = spot.part_to = 0;
    return spot;
}

static struct spot any_spot_of(const struct fault_reader *r, const struct fault_hit *hit) {
    struct spot spot = {0, 0, 0, 0};
    if (hit->own_no || (hit->near && hit->kinds[0]->form == STATE))
        return spot; // "well out of date": no well
    size_t from = 0, next = behind_places(r, hit->to), to = place_behind(r, behind_hit(r, next), &from);
    if (!to) to = place_further(r, next, &from);
    if (!to && (r->scope.stance[hit->from] & (STANCE_DENIED | STANCE_NONE_SEEN)))
        to = place_of_list(r, hit->to, &from);
    for (size_t k = hit->from + 1; !to && hit->near && k + 1 < hit->to; k++) { // "fungus … in the lens"
        to = place_behind(r, k, &from);
        if (to && to < hit->to) to = 0;
    }
    if (!to && (to = bare_place(r, hit->to)) != 0) from = hit->to;
    if (!to) to = bare_clause(r, hit->to, &from);
    if (!to) to = place_of_both(r, hit->to, &from);
    if (!to) to = place_in_brackets(r, hit->to, &from);
    if (to || place_inside(r, hit, &from, &to)) {
        spot.where_from = from;
        spot.where_to = to;
    }
    bool absence = hit->kinds[0]->form == ABSENCE; // the part is what lacks, not what lacks it
    if (absence && part_inside(r, hit, &from, &to)) {
        spot.part_from = from;
        spot.part_to = to;
    } else if ((!absence && piece_before(r, hit->from, &from, &to)) ||
               subject_before(r, hit->from, &from, &to)) {
        spot.part_from = from;
        spot.part_to = to;
    } else if (hit->near && r->part[hit->from]) { // "the clasp won't stay shut"
        spot.part_from = hit->from;
        spot.part_to = hit->from + 1;
    } else if (part_inside(r, hit, &from, &to) || part_of_pronoun(r, hit->from, &from, &to)) {
        spot.part_from = from;
        spot.part_to = to;
    } else if (part_behind(r, hit, &from, &to) || subject_of_sentence(r, hit->from, &from, &to)) {
        spot.part_from = from;
        spot.part_to = to;
    } else if (!spot.where_to && place_before(r, hit->from, &from, &to)) {
        spot.where_from = from;
        spot.where_to = to;
    }
    bool nowhere = spot.where_to == spot.where_from && spot.part_to == spot.part_from;
    if (nowhere && hit->kinds[0]->class == CLASS_REPAIR) move_to_damage(r, hit, &spot);
    return spot;
}
