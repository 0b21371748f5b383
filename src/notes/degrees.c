// SPDX-License-Identifier: MIT
// How bad, in the seller's own words only: what is not said stays unknown.
#include "notes/any.h"
#include "notes/faults.h"

#include <stdlib.h>
#include <string.h>

#include "notes/figure.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { BEFORE_MOST = 5, BEHIND_MOST = 4, STILL_MOST = 6 };

static bool joins(const struct token *t) {
    return t->stop != STOP_NONE || text_same(t->fold, "&") || text_same(t->fold, "and") ||
           text_same(t->fold, "but") || text_same(t->fold, "or");
}

// "The small one has rust": what stands before the verb is said of the piece.
static bool is_link(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"has", "have", "had", "shows", "got", "one"};
    return token_among(tokens, i, verbs, COUNT(verbs));
}

// "Not too badly", "isn't all that deep": the word for much, taken back.
static bool is_damped(const struct tokens *tokens, size_t i) {
    static const char *const nots[] = {"not",  "isn't", "aren't", "nothing", "hardly",
                                       "isnt", "never", "wasn't", "neither", "none"};
    static const char *const between[] = {"too", "that",         "so",       "very",       "really",
                                          "all", "particularly", "terribly", "especially", "overly",
                                          "a",   "of",           "them"};
    while (i > 0 && token_among(tokens, i - 1, between, COUNT(between))) {
        i--;
        if (token_is(tokens, i, "too") && i == 0) break;
    }
    return i > 0 && token_among(tokens, i - 1, nots, COUNT(nots));
}

static enum severity damped(const struct tokens *tokens, size_t i, enum severity found) {
    if (found == SEVERITY_LIGHT && i > 0 && ANY(tokens, i - 1, "no", "isn't", "not", "hardly") &&
        !ANY(tokens, i, "too", "a", "even"))
        return SEVERITY_MODERATE; // "no small dent", "not inconsiderable"
    return found != SEVERITY_LIGHT && is_damped(tokens, i) ? SEVERITY_LIGHT : found;
}

// "Chip on the rim, handle badly worn": behind the comma another part is spoken of.
static bool opens_part(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (tokens->at[i].stop != STOP_COMMA) return false;
    do i++;
    while (spot_article(tokens, i));
    if (i > 0 && (spot_side(tokens, i) || token_is(tokens, i, "rest") || token_is(tokens, i, "others")) &&
        (token_is(tokens, i + 1, "not") || token_is(tokens, i + 1, "one") || token_is(tokens, i + 1, "is")))
        return true; // "left heel worn, right not so bad"
    bool part = i < tokens->count &&
                (r->part[i] || (ANY(tokens, i + 1, "is", "are", "has", "was") && degree_names_part(r, i)));
    return part && !spot_adverb(tokens, i) && !spot_preposition(tokens, i);
}

// "Wiped most of it off", "nearly all of it came away with a cloth".
static bool is_taken_off(const struct tokens *tokens, size_t from, size_t to) {
    static const char *const shares[] = {"most", "nearly", "almost", "all"};
    static const char *const offs[] = {"off", "out", "away", "up"};
    static const char *const ways[] = {"came", "wiped", "brushed", "rubbed", "cleaned", "washed", "scrubbed"};
    if (!token_among(tokens, from, shares, COUNT(shares))) return false;
    if (from > 1 && token_among(tokens, from - 1, offs, COUNT(offs)) &&
        token_among(tokens, from - 2, ways, COUNT(ways)))
        return true; // "wiped off most of it"
    return (token_among(tokens, to, offs, COUNT(offs)) && from > 0 &&
            token_among(tokens, from - 1, ways, COUNT(ways))) ||
           (token_among(tokens, to, ways, COUNT(ways)) && token_among(tokens, to + 1, offs, COUNT(offs)));
}

// "Scuffs all over as you'd expect, none deep": far, and not much.
static bool is_eased(const struct fault_reader *r, const struct fault_hit *hit, size_t from) {
    struct around span = {from, from};
    while (span.to < r->note->tokens.count && r->note->tokens.at[span.to].stop < STOP_SENTENCE &&
           !(r->scope.fault[span.to] && !r->part[span.to]))
        span.to++;
    return degree_of_effect(r, hit, hit->kinds[0], &span) == SEVERITY_LIGHT ||
           degree_of_notice(r, &span, false) == SEVERITY_LIGHT || degree_said_later(r, hit) == SEVERITY_LIGHT;
}

// "Chip to the rim, hairline": another fault, and not how bad; "a split, hairline" is.
static bool is_other_fault(const struct tokens *tokens, const struct fault_hit *hit, size_t i) {
    return ANY(tokens, i, "hairline", "hairlines") &&
           !ANY(tokens, hit->to - 1, "crack", "cracks", "cracked", "split", "splits", "fracture", "fractures",
                "check", "checks");
}

bool degree_leads(const struct fault_reader *r, size_t end) {
    const struct tokens *tokens = &r->note->tokens;
    return end > 0 && end < tokens->count && r->scope.fault[end] && !r->part[end] &&
           tokens->at[end - 1].stop == STOP_NONE && degree_adverb(tokens, end - 1);
}

static enum severity told_behind(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n;
    size_t words = 0; // those of its place do not count: "scratches to the front you only see up close"
    for (size_t i = hit->to; i < tokens->count && words < BEHIND_MOST; i++) {
        if (tokens->at[i].stop >= STOP_CLAUSE || opens_part(r, i) || fault_told_again(r, i)) break;
        if (is_other_fault(tokens, hit, i)) break;
        enum severity found = degree_word_behind(r, i, &n);
        if (found && degree_is_of_goods(r, i, n)) found = SEVERITY_UNKNOWN;
        if (found && degree_leads(r, i + n)) break;
        static const char *const moves[] = {"goes", "turns", "moves", "slides", "runs", "travels", "winds"};
        if (found == SEVERITY_HEAVY && degree_is_whole(tokens, i, n) && i > hit->to &&
            token_among(tokens, i - 1, moves, COUNT(moves)) && !strcmp(hit->kinds[0]->rule.id, "seized"))
            return SEVERITY_LIGHT;                                // "stiff but turns all the way"
        bool apart = i > hit->to && token_is(tokens, i, "solid"); // "seized solid", but "rusty but solid"
        if (found && is_taken_off(tokens, i, i + n)) return SEVERITY_LIGHT;
        enum severity own;
        bool whole = found == SEVERITY_HEAVY && degree_is_whole(tokens, i, n);
        if (whole && degree_of_whole(hit->kinds[0]) < SEVERITY_HEAVY && degree_of_whole(hit->kinds[0]))
            return degree_of_whole(hit->kinds[0]); // crazing "top to bottom"
        if (whole && is_eased(r, hit, i + n)) return SEVERITY_MODERATE;
        if (found == SEVERITY_HEAVY && !apart && degree_tell_is(r, hit, i, n, &own) && own != found)
            return SEVERITY_UNKNOWN; // crazing "all over": left to its own scale
        if (found && !apart) return damped(tokens, i, found);
        words += !r->part[i] && !spot_preposition(tokens, i) && !spot_article(tokens, i);
        if (r->scope.fault[i] && !r->part[i]) break;
    }
    return SEVERITY_UNKNOWN;
}

// "Stiff but it still turns": for a kind whose scale does not say more.
enum severity degree_of_use(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + STILL_MOST; i++) {
        if (tokens->at[i].stop >= STOP_CLAUSE) break;
        enum severity found = degree_word_still(r, i, &n);
        if (found) return found;
        if (degree_is_easy(tokens, i)) return SEVERITY_LIGHT;
        if (r->scope.fault[i] && !r->part[i]) break;
    }
    return SEVERITY_UNKNOWN;
}

// "Rust inside, light": alone behind a comma.
static enum severity apart(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->to; i + 1 < tokens->count && i < hit->to + BEHIND_MOST + 2; i++) {
        if (tokens->at[i].stop >= STOP_CLAUSE || (r->scope.fault[i] && !r->part[i]) ||
            fault_told_again(r, i + 1))
            break;
        size_t n;
        if (tokens->at[i].stop != STOP_COMMA) continue;
        size_t at = i + 1;
        while (token_is(tokens, at, "quite") || token_is(tokens, at, "pretty") ||
               token_is(tokens, at, "very") || token_is(tokens, at, "fairly") ||
               token_is(tokens, at, "only") || token_is(tokens, at, "just"))
            at++;
        if (is_other_fault(tokens, hit, at)) return SEVERITY_UNKNOWN;
        enum severity found = degree_word_behind(r, i + 1, &n), own;
        if (found && (degree_is_of_goods(r, i + 1, n) || degree_leads(r, i + 1 + n))) return SEVERITY_UNKNOWN;
        if (found == SEVERITY_HEAVY && degree_tell_is(r, hit, i + 1, n, &own) && own != found)
            return SEVERITY_UNKNOWN; // "glued, solid"
        if (found) return damped(tokens, i + 1, found);
        found = degree_word(r, at, &n);
        bool ends = at + n >= tokens->count || tokens->at[at + n].stop != STOP_NONE ||
                    token_is(tokens, at + n, "ones") || token_is(tokens, at + n, "one") ||
                    token_is(tokens, at + n, "though");
        if (found && ends) return damped(tokens, at, found);
        return SEVERITY_UNKNOWN;
    }
    return SEVERITY_UNKNOWN;
}

// "It has been trimmed (heavy)".
static enum severity in_brackets(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    for (; i + 2 < tokens->count && tokens->at[i].stop < STOP_SENTENCE && !r->scope.fault[i]; i++) {
        size_t n;
        if (token_is(tokens, i, "(") && token_is(tokens, i + 2, ")")) return degree_word(r, i + 1, &n);
    }
    return SEVERITY_UNKNOWN;
}

// "Quite a [bit of rust]": what is said begins before the fault's own words.
// "Rust light all over", "tarnish heavy on the back": the word of degree behind its noun, and where it is.
static enum severity right_behind(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->to + 1 >= tokens->count || tokens->at[hit->to - 1].stop != STOP_NONE) return SEVERITY_UNKNOWN;
    size_t n; // "Yellowed? Slightly, I suppose."
    if (token_is(tokens, hit->to, "?") && hit->to + 1 < tokens->count) {
        size_t at = hit->to + 1;
        while (ANY(tokens, at, "yes", "well", "only", "just", ",", "maybe")) at++;
        return at < tokens->count && !r->scope.fault[at] ? degree_word_behind(r, at, &n) : SEVERITY_UNKNOWN;
    }
    bool light = ANY(tokens, hit->to, "light", "slight", "faint", "mild", "minor"),
         heavy = ANY(tokens, hit->to, "heavy", "bad", "severe");
    if (!light && !heavy) return SEVERITY_UNKNOWN;
    if (!ANY(tokens, hit->to + 1, "all", "on", "in", "at", "round", "inside", "underneath", "along", "over",
             "only"))
        return SEVERITY_UNKNOWN;
    return light ? SEVERITY_LIGHT : SEVERITY_HEAVY;
}

static enum severity astride(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 3 };
    for (size_t back = FAR; back > 0; back--) {
        size_t n = 0;
        enum severity found = back <= hit->from ? degree_word(r, hit->from - back, &n) : SEVERITY_UNKNOWN;
        if (found && n > back && n < back + hit->to - hit->from) return found;
    }
    return SEVERITY_UNKNOWN;
}

// "Flaking badly" tells a degree; "paint flaking" is the name of the fault.
static enum severity in_phrase(const struct fault_reader *r, const struct fault_hit *hit) {
    size_t n;
    for (size_t i = 0; i < hit->kind_count; i++)
        if (kind_is_whole(r, hit->kinds[i], hit)) return SEVERITY_UNKNOWN;
    static const char *const whole[] = {"all",      "mostly",     "nearly",  "almost",    "practically",
                                        "entirely", "completely", "totally", "virtually", "wholly"};
    static const char *const lost[] = {"gone", "off", "away", "lost", "missing", "worn", "vanished"};
    for (size_t i = hit->from + 1; hit->near && i + 1 < hit->to; i++) // "paint is pretty much all gone"
        if (token_among(&r->note->tokens, i, whole, COUNT(whole)) &&
            token_among(&r->note->tokens, i + 1, lost, COUNT(lost)))
            return SEVERITY_HEAVY;
    for (size_t i = hit->from; i < hit->to; i++) {
        enum severity found = SEVERITY_UNKNOWN;
        static const char *const hardly[] = {"barely", "hardly", "scarcely"};
        if (token_among(&r->note->tokens, i, hardly, COUNT(hardly))) // "barely legible", but "hardly worn"
            return ANY(&r->note->tokens, i + 1, "worn", "rubbed", "faded", "scratched", "marked", "touched",
                       "tarnished", "pitted", "frayed", "chipped", "dulled", "scuffed", "rubbing", "wearing")
                       ? SEVERITY_LIGHT
                       : SEVERITY_HEAVY;
        static const char *const worn[] = {"worn", "rubbed", "washed", "gone", "wearing"};
        if (i > hit->from && token_is(&r->note->tokens, i, "thin") &&
            token_among(&r->note->tokens, i - 1, worn, COUNT(worn)) && !degree_tell_is(r, hit, i, 1, &found))
            return SEVERITY_HEAVY;
        if (i > hit->from && token_is(&r->note->tokens, i, "thin") &&
            token_among(&r->note->tokens, i - 1, worn, COUNT(worn)))
            continue; // "gone thin" tells no degree, and its scale may
        enum severity own;
        found = degree_word(r, i, &n);
        if (found && degree_tell_is(r, hit, i, n, &own))
            found = own;                         // "crushed" of a box is the worst there is
        if (found && hit->to == hit->from + 1) { // "pitted inside, lightly"
            enum severity behind = apart(r, hit);
            return behind ? behind : found;
        }
        if (found) return found;
    }
    return SEVERITY_UNKNOWN;
}

// The longest cue that ends at token `i`; where it begins.
static enum severity ends_at(const struct fault_reader *r, size_t i, size_t *from) {
    enum { CUE_MOST = 5 };
    enum severity longest = SEVERITY_UNKNOWN;
    for (size_t k = 0; k < CUE_MOST && k <= i && r->note->tokens.at[i - k].stop == STOP_NONE; k++) {
        size_t n;
        enum severity found = degree_word(r, i - k, &n);
        if (!found || n != k + 1) continue;
        longest = found;
        *from = i - k;
    }
    return longest;
}

// "The small drawer is cracked", "light seals gone gooey": said of the part that stands between.
static bool is_of_part(const struct fault_reader *r, const struct fault_hit *hit, size_t i) {
    static const char *const words[] = {"small", "big",     "large",    "little", "light",  "heavy",
                                        "thin",  "thick",   "smaller",  "bigger", "larger", "long",
                                        "deep",  "biggest", "smallest", "largest"};
    const struct tokens *tokens = &r->note->tokens;
    if (token_is(tokens, i, "surface"))
        return degree_is_state(r, hit); // "surface scuffed" is no surface rust
    if (!token_among(tokens, i, words, COUNT(words)) &&
        !(degree_stem(tokens, i) && !degree_adverb(tokens, i))) // "the vast seat is cracked"
        return false;
    bool inside = r->part[hit->from] && i + 1 == hit->from && hit->to > hit->from + 1;
    bool before = i + 1 < hit->from && r->part[i + 1];
    for (size_t k = i + 2; k < hit->from; k++) // "the big chisels are rusty"
        before |= ANY(tokens, k, "is", "are", "was", "were") && !r->scope.fault[i + 1];
    return degree_is_state(r, hit) && (inside || before);
}

// "Hundreds of tiny scratches": each is little, and they are many.
static bool is_crowd(const struct tokens *tokens, size_t i) {
    if (tokens->at[i].stop != STOP_NONE) return false;
    if (token_is(tokens, i, "of") && i > 0) i--;
    return ANY(tokens, i, "hundreds", "dozens", "lots", "loads", "masses", "plenty", "countless", "many",
               "thousands", "heaps", "tons", "lot", "load", "mass", "numerous", "umpteen");
}

static enum severity told_before(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t back = 1; back <= BEFORE_MOST && back <= hit->from; back++) {
        size_t i = hit->from - back;
        bool short_one = token_is(tokens, i, "short"); // "one short pull"
        bool other = r->scope.fault[i] && !r->part[i] && !short_one;
        if (joins(&tokens->at[i]) || other || is_link(tokens, i)) break;
        if (r->note->taken[i] == TAKEN_TYPE && !r->part[i]) break; // "small vase, chip"
        size_t cue;
        if (token_is(tokens, i, "with") && !ends_at(r, i, &cue)) break; // "large vase with a chip"
        if (token_is(tokens, i, "light") && i > 0 && token_is(tokens, i - 1, "the")) continue; // a part of it
        size_t from = i;
        enum severity found = ends_at(r, i, &from);
        if (found && is_of_part(r, hit, i)) continue;
        bool piece = found == SEVERITY_LIGHT && token_is(tokens, i, "of") &&
                     ANY(tokens, i + 1, "the", "its") && text_same(hit->kinds[0]->rule.id, "cord-frayed");
        if (piece) continue; // "a bit of the cord is taped": which part of it
        if (found == SEVERITY_LIGHT && from > 0 && is_crowd(tokens, from - 1)) return SEVERITY_MODERATE;
        if (found) return damped(tokens, from, found);
    }
    return SEVERITY_UNKNOWN;
}

// "Bent a bit", "cracked slightly": at the end of what is said.
static enum severity at_end(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n;
    enum severity next = degree_word(r, hit->to, &n), own; // "foxing minor"
    if (next == SEVERITY_HEAVY && degree_tell_is(r, hit, hit->to, n, &own) && own != next)
        return SEVERITY_UNKNOWN;
    size_t end = hit->to + n;
    bool placed = spot_preposition(tokens, end) && !token_is(tokens, end, "for") &&
                  !token_is(tokens, end, "of"); // "rust heavy on the lid"
    if (next && (end >= tokens->count || tokens->at[end].stop != STOP_NONE || placed)) return next;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + BEHIND_MOST + 1; i++) {
        if (tokens->at[i].stop >= STOP_CLAUSE || r->scope.fault[i]) break;
        bool bit =
            token_phrase(tokens, i, "a bit") || token_phrase(tokens, i, "a little") ||
            (token_is(tokens, i, "a") && ANY(tokens, i + 1, "shade", "touch", "tad", "fraction", "mite",
                                             "smidge", "smidgen", "whisker", "hair", "trifle"));
        bool ends = i + 2 >= tokens->count || joins(&tokens->at[i + 2]) ||
                    (spot_preposition(tokens, i + 2) && !token_is(tokens, i + 2, "of")) ||
                    token_is(tokens, i + 2, "onto") || token_is(tokens, i + 2, "into");
        ends |= ANY(tokens, i + 2, "yellow", "brown", "gray", "grey", "green", "dark", "black", "pink") &&
                (i + 3 >= tokens->count || joins(&tokens->at[i + 3])); // "stained a bit yellow"
        if (bit && ends) return SEVERITY_LIGHT;
        bool just = ANY(tokens, i, "barely", "hardly", "scarcely") &&
                    (i + 1 >= tokens->count || joins(&tokens->at[i + 1])); // "rusty just barely"
        if (just) return SEVERITY_LIGHT;
        if (token_is(tokens, i, "some") && (i + 1 >= tokens->count || tokens->at[i + 1].stop >= STOP_CLAUSE))
            return SEVERITY_LIGHT; // "smells of fuel some"
        bool bad = token_is(tokens, i, "bad") && (i + 1 >= tokens->count || joins(&tokens->at[i + 1]));
        if (bad && !is_damped(tokens, i)) return SEVERITY_HEAVY; // "dented on one corner bad"
    }
    return SEVERITY_UNKNOWN;
}

enum severity degree_before(const struct fault_reader *r, const struct fault_hit *hit) {
    enum severity found = degree_of_manner(r, hit);
    return found ? found : told_before(r, hit);
}

enum severity degree_after(const struct fault_reader *r, const struct fault_hit *hit) {
    enum severity found = in_brackets(r, hit->to);
    if (!found) found = told_behind(r, hit);
    return found ? found : apart(r, hit);
}

// "Surface rust all over", "rust all over, light", "tarnished dark brown all over": how far it reaches makes
// no film deep, and what color it has tells more than where.
static enum severity of_film(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const deep[] = {"pitted",  "pitting", "pits",  "holes",    "hole",  "flaking",
                                       "deep",    "through", "heavy", "bad",      "thick", "badly",
                                       "serious", "flakes",  "black", "blackened"};
    static const char *const denied[] = {"no",    "not",    "nothing", "without",
                                         "isn't", "aren't", "never",   "none"};
    enum { BEHIND = 9 };
    const struct tokens *tokens = &r->note->tokens;
    bool rust = text_same(hit->kinds[0]->rule.id, "rust"), brown = false;
    if (!rust && !text_same(hit->kinds[0]->rule.id, "tarnish")) return SEVERITY_UNKNOWN;
    size_t from = hit->from > 1 ? hit->from - 2 : 0;
    bool film = false;
    for (size_t i = from; rust && i < hit->to; i++)
        if (i >= hit->from || tokens->at[i].stop == STOP_NONE) film |= ANY(tokens, i, "surface", "flash");
    for (size_t i = from; i < tokens->count && i < hit->to + BEHIND; i++) {
        bool no = i > 0 && token_among(tokens, i - 1, denied, COUNT(denied));
        if (!no && token_among(tokens, i, deep, COUNT(deep))) return SEVERITY_UNKNOWN;
        if (i < hit->to) continue;
        bool only = ANY(tokens, i, "only", "just") || ANY(tokens, i + 1, "only");
        film |=
            rust && token_is(tokens, only && !token_is(tokens, i, "surface") ? i + 1 : i, "surface") && only;
        bool ends = i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE ||
                    (tokens->at[i].stop == STOP_NONE && ANY(tokens, i + 1, "though", "only"));
        film |= ends && tokens->at[i - 1].stop == STOP_COMMA && ANY(tokens, i, "light", "slight", "lightly");
        brown |= !rust && ANY(tokens, i, "brown", "brownish");
        if (tokens->at[i].stop >= STOP_CLAUSE || (r->scope.fault[i] && !r->part[i])) break;
    }
    return film ? SEVERITY_LIGHT : brown ? SEVERITY_MODERATE : SEVERITY_UNKNOWN;
}

// The degree may stand inside the phrase itself ("badly rusted" in `said`), before it, or behind ("rust, not
// bad").
enum severity degree_of_hit(const struct fault_reader *r, const struct fault_hit *hit) {
    static enum severity (*const ways[])(const struct fault_reader *, const struct fault_hit *) = {
        right_behind,    of_film,           degree_of_too_much, degree_of_stopping, astride,
        degree_of_share, degree_before,     told_behind,        in_phrase,          at_end,
        apart,           degree_said_later, degree_shared};
    const uint16_t *stance = r->scope.stance;
    if (hit->to > hit->from + 1 && ANY(&r->note->tokens, hit->to - 1, "heavy", "light") &&
        !ANY(&r->note->tokens, hit->to - 2, "bit", "little", "touch", "slightly", "very", "reads") &&
        ANY(&r->note->tokens, hit->from, "reads", "weighs", "shows", "registers"))
        return SEVERITY_UNKNOWN; // "reads two ounces heavy"
    bool none = hit->to > hit->from + 1 && token_is(&r->note->tokens, hit->to - 1, "left") &&
                ANY(&r->note->tokens, hit->from, "no", "hardly", "barely"); // "no paint left to speak of"
    if (none) return SEVERITY_HEAVY;
    if (stance[hit->from] & STANCE_LIMITED) return SEVERITY_LIGHT;
    bool last =
        hit->near && r->scope.cue[hit->to - 1] > hit->from; // "chrome hardly pitted", not "barely legible"
    if (last && (stance[hit->to - 1] & STANCE_LIMITED) && r->scope.cue[hit->to - 1] < hit->to)
        return SEVERITY_LIGHT;
    enum severity found = in_brackets(r, hit->to);
    if (unknown_is_own(hit->kinds[0])) return found; // "didn't light it"
    for (size_t i = 0; !found && i < COUNT(ways); i++) found = ways[i](r, hit);
    if (found == SEVERITY_HEAVY && hit->kinds[0]->class == CLASS_REPAIR &&
        token_phrase(&r->note->tokens, hit->to + 1, "a good one"))
        return SEVERITY_LIGHT; // "a repair, a good one"
    return found;
}

// "Pages 33 to 36", "volumes 2 and 3", "chairs 1 to 4": those of such numbers, and not so many.
static bool is_in_series(const struct tokens *tokens, size_t i) {
    enum { FAR = 24 };
    size_t first = i;
    bool to = ANY(tokens, i + 1, "to", "-", "through");
    while (first > 1 && first + FAR > i &&
           ANY(tokens, first - 1, "to", "-", "through", "and", "&", ",", "or") &&
           tokens->at[first - 2].kind == TOKEN_FIGURE) {
        to |= ANY(tokens, first - 1, "to", "-", "through");
        first -= 2;
    }
    if (first == 0 || tokens->at[first].kind != TOKEN_FIGURE || tokens->at[first - 1].stop != STOP_NONE)
        return false;
    bool range = to && (first < i || tokens->at[i + 2 < tokens->count ? i + 2 : i].kind == TOKEN_FIGURE);
    return ANY(tokens, first - 1, "pages", "pp", "volumes", "vols", "chapters", "folios", "numbers", "nos",
               "issues", "parts") ||
           (range && tokens->at[first - 1].kind == TOKEN_WORD &&
            tokens->at[first - 1].one != tokens->at[first - 1].fold &&
            !ANY(tokens, first - 1, "is", "was", "has", "sizes", "measures", "ages"));
}

// "Page 31 torn": which one, not how many.
static bool is_name_of_one(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"page",  "plate", "vol",  "volume", "chapter", "track",
                                        "folio", "leaf",  "disc", "sheet",  "number",  "issue"};
    if (i > 0 && token_is(tokens, i - 1, "number") && !(i > 1 && token_is(tokens, i - 2, "a")))
        return true; // "number three has a cracked strap"
    if (i > 1 && tokens->at[i].kind == TOKEN_FIGURE && token_is(tokens, i - 1, "the") &&
        ANY(tokens, i - 2, "on", "in", "from"))
        return true; // "the shaft on the 5 is bent"
    if (i > 0 && ANY(tokens, i - 1, "volume", "vol", "part") && tokens->at[i - 1].stop == STOP_NONE)
        return true; // "volume two has a torn page"
    if (i > 0 && tokens->at[i].kind == TOKEN_FIGURE && ANY(tokens, i - 1, "the", "its") &&
        ANY(tokens, i + 1, "g", "oz", "lb", "mm", "cm", "kg", "ml", "inch", "in", "volt", "v", "gram",
            "ounce"))
        return true; // "the 2 g weight is missing"
    if (i > 0 && tokens->at[i].kind == TOKEN_FIGURE && ANY(tokens, i - 1, "the", "its") &&
        tokens->at[i].stop == STOP_NONE && i + 2 < tokens->count && tokens->at[i + 1].kind == TOKEN_WORD &&
        !say_is_plural(tokens->at[i + 1].fold) &&
        ANY(tokens, i + 2, "is", "has", "was", "doesn't", "won't", "sticks", "needs", "isn't", "can't"))
        return true; // "the 7 key doesn't come up"
    return i > 0 && tokens->at[i].kind == TOKEN_FIGURE && tokens->at[i - 1].stop == STOP_NONE &&
           token_among(tokens, i - 1, words, COUNT(words));
}

// "Nineteen thirty six", "twenty two": a word of a longer number is none by itself.
static bool is_of_longer(const struct tokens *tokens, size_t i) {
    static const char *const tens[] = {"twenty",  "thirty", "forty",  "fifty",  "sixty",
                                       "seventy", "eighty", "ninety", "hundred"};
    if (tokens->at[i].kind != TOKEN_WORD) return false;
    bool before =
        i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
        (token_among(tokens, i - 1, tens, COUNT(tens)) || ANY(tokens, i - 1, "nineteen", "eighteen"));
    bool behind =
        ANY(tokens, i, "nineteen", "eighteen") && tokens->at[i].stop == STOP_NONE &&
        (token_among(tokens, i + 1, tens, COUNT(tens)) || ANY(tokens, i + 1, "ten", "twelve", "oh"));
    return before || behind;
}

int degrees_number(const struct tokens *tokens, size_t i) {
    static const char *const names[] = {"zero",     "one",      "two",      "three",   "four",    "five",
                                        "six",      "seven",    "eight",    "nine",    "ten",     "eleven",
                                        "twelve",   "thirteen", "fourteen", "fifteen", "sixteen", "seventeen",
                                        "eighteen", "nineteen", "twenty"};
    // Most tokens are no number, as one look tells.
    if (i >= tokens->count || (tokens->at[i].kind != TOKEN_FIGURE && !token_is(tokens, i, "dozen") &&
                               !token_among(tokens, i, names, COUNT(names))))
        return 0;
    if (is_name_of_one(tokens, i) || is_of_longer(tokens, i)) return 0;
    if (tokens->at[i].kind == TOKEN_FIGURE && is_in_series(tokens, i)) return 0;
    if (ANY(tokens, i + 1, "thirds", "quarters", "fifths", "eighths", "tenths"))
        return 0; // "two thirds of it"
    if (token_is(tokens, i + 1, "of") && ANY(tokens, i + 2, "clubs", "hearts", "spades", "diamonds"))
        return 0; // "the four of clubs" is one card
    if (token_is(tokens, i, "dozen")) return i > 0 && token_is(tokens, i - 1, "half") ? 6 : 12;
    const struct token *t = &tokens->at[i];
    for (size_t k = 1; k < COUNT(names); k++)
        if (text_same(t->fold, names[k])) return (int)k;
    if (t->kind != TOKEN_FIGURE || strspn(t->fold, "0123456789") != strlen(t->fold) || strlen(t->fold) > 3)
        return 0;
    return (int)strtol(t->fold, NULL, 10);
}

// "2 inch crack": the number is of the size.
static bool is_unit(const struct note *note, size_t i) {
    struct figure figure;
    size_t taken;
    return figure_at(note, i, &figure, &taken) && figure.unit;
}

void degrees_take(struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->from; i > 0 && hit->from - i < BEFORE_MOST; i--) {
        size_t n;
        if (tokens->at[i - 1].stop != STOP_NONE || r->note->taken[i - 1] != TAKEN_NOT) return;
        bool length = degrees_number(tokens, i - 1) && i < hit->from && is_unit(r->note, i - 1);
        if (!length && (degree_word(r, i - 1, &n) || degrees_number(tokens, i - 1)))
            note_take(r->note, i - 1, i, TAKEN_SCOPE);
    }
}
