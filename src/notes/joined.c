// SPDX-License-Identifier: MIT
// Two faults told as one: a vague smell with what it is of, and words joined by "and" of which the first says
// what the second is a damage of ("leather dry and cracked", "batteries leaked and corroded").
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Stinks of camphor": of what it smells is told, and the stink by itself says no more.
static bool is_told_smell(const struct fault_reader *r, size_t i) {
    static const char *const vague[] = {"smells", "smell", "smelly", "stinks", "stink", "reeks", "reek",
                                        "pongs",  "pong",  "whiff",  "whiffs", "niff",  "niffs", "whiffy",
                                        "odor",   "odour", "stinky", "pongy",  "niffy", "hums",  "ponging"};
    const struct fault_hit *hit = &r->hits[i];
    const struct tokens *tokens = &r->note->tokens;
    enum { FAR = 8 };
    if (hit->near || hit->to != hit->from + 1 || !text_same(hit->kinds[0]->rule.id, "odor-musty") ||
        !token_among(tokens, hit->from, vague, sizeof vague / sizeof *vague) || i + 1 >= r->hit_count)
        return false;
    const struct fault_hit *next = &r->hits[i + 1];
    for (size_t k = hit->from; k < next->from; k++)
        if (tokens->at[k].stop != STOP_NONE || next->from > hit->from + FAR) return false;
    return !strncmp(next->kinds[0]->rule.id, "odor-", 5);
}

static void drop_vague_smells(struct fault_reader *r) {
    size_t kept = 0;
    for (size_t i = 0; i < r->hit_count; i++) {
        if (is_told_smell(r, i)) continue;
        r->hits[kept++] = r->hits[i];
    }
    r->hit_count = kept;
}

// "Dry and cracked": the crack is of the leather that is dry.
static void join_narrower(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i + 1 < r->hit_count; i++) {
        const struct fault_hit *a = &r->hits[i];
        struct fault_hit *b = &r->hits[i + 1];
        bool and = b->from == a->to + 1 && token_is(tokens, a->to, "and");
        if (!and || a->kind_count != 1 || b->near) continue;
        for (size_t k = 0; k < a->kinds[0]->narrows.count; k++)
            for (size_t m = 0; m < b->kind_count; m++)
                if (text_same(a->kinds[0]->narrows.at[k], b->kinds[m]->rule.id)) {
                    b->kinds[0] = a->kinds[0];
                    b->kind_count = 1;
                    break;
                }
    }
}

// "The chip on the lid has been filled": what was mended is told as the mend.
static bool is_mended(const struct fault_reader *r, size_t i) {
    static const char *const verbs[] = {"been", "was", "were", "is", "are"};
    const struct tokens *tokens = &r->note->tokens;
    enum { FAR = 7 };
    if (i + 1 >= r->hit_count) return false;
    const struct fault_hit *a = &r->hits[i], *b = &r->hits[i + 1];
    enum flaw_class class = a->kinds[0]->class;
    if (class != CLASS_DAMAGE || b->kinds[0]->class != CLASS_REPAIR || b->from <= a->to ||
        b->from > a->to + FAR)
        return false;
    for (size_t k = a->from; k < b->from; k++)
        if (tokens->at[k].stop != STOP_NONE || token_is(tokens, k, "and") || token_is(tokens, k, "&") ||
            token_is(tokens, k, "but"))
            return false;
    return token_among(tokens, b->from, verbs, COUNT(verbs)) ||
           (token_among(tokens, b->from - 1, verbs, COUNT(verbs)));
}

// "Broken off and stuck back", "snapped once, glued since": what was parted and is joined again is told as
// the mend, of the part that was parted.
static bool is_rejoined(const struct fault_reader *r, size_t i) {
    static const char *const parted[] = {"broken-part", "loose-part", "loose-joint"};
    static const char *const between[] = {
        "and",     "then", "but",    "since", "been",   "was",     "were",     "later",
        "now",     "well", "neatly", "i",     "i've",   "someone", "somebody", "at",
        "some",    "time", "point",  "has",   "have",   "once",    "it's",     "it",
        "its",     "off",  ",",      "in",    "the",    "past",    "long",     "ago",
        "before",  "my",   "we",     "they",  "badly",  "nicely",  "properly", "carefully",
        "roughly", "all",  "again",  "by",    "simply", "just",    "apart",    "previously"};
    static const char *const after[] = {"since", "now", "later", "then", "but", "and", "i", "i've"};
    const struct tokens *tokens = &r->note->tokens;
    if (i + 1 >= r->hit_count) return false;
    const struct fault_hit *a = &r->hits[i], *b = &r->hits[i + 1];
    bool parts = false, links = false;
    for (size_t k = 0; k < COUNT(parted); k++) parts |= text_same(a->kinds[0]->rule.id, parted[k]);
    if (!parts || b->kinds[0]->class != CLASS_REPAIR || b->from < a->to) return false;
    for (size_t k = a->to; k < b->from; k++) {
        if (!token_among(tokens, k, between, COUNT(between))) return false;
        bool since = token_is(tokens, k, ",") && token_among(tokens, k + 1, after, COUNT(after));
        links |=
            since || token_is(tokens, k, "and") || token_is(tokens, k, "then") || token_is(tokens, k, "but");
    }
    return links || token_is(tokens, b->from, "and") || token_is(tokens, b->from, "then");
}

// "Torn mended": of a word for a state the mend may be of another.
static bool is_state_word(const struct tokens *tokens, const struct fault_hit *hit) {
    const char *word = tokens->at[hit->to - 1].fold;
    size_t size = strlen(word);
    return size > 3 &&
           (text_same(word + size - 2, "ed") || text_same(word, "torn") || text_same(word, "loose"));
}

static bool is_done(const char *word) {
    size_t size = strlen(word);
    return size > 3 &&
           (text_same(word + size - 2, "ed") || text_same(word + size - 2, "wn") || text_same(word, "stuck"));
}

// "Filled a crack on the back", "a patch over a burn".
static bool is_under(const struct fault_reader *r, const struct fault_hit *mend,
                     const struct fault_hit *damage) {
    static const char *const between[] = {"a",       "an",    "the", "some",   "two",  "three",
                                          "several", "over",  "up",  "its",    "old",  "one",
                                          "small",   "large", "few", "little", "tiny", "where"};
    const struct tokens *tokens = &r->note->tokens;
    if (mend->kinds[0]->class != CLASS_REPAIR || damage->from < mend->to) return false;
    bool over = false;
    for (size_t k = mend->to; k < damage->from; k++) {
        if (!token_among(tokens, k, between, COUNT(between))) return false;
        over |= token_is(tokens, k, "over");
    }
    return over || token_is(tokens, mend->to - 1, "over") || is_done(tokens->at[mend->to - 1].fold);
}

// "One slit sewn up", "a hole neatly darned": the mend right behind the damage.
static bool is_behind(const struct fault_reader *r, const struct fault_hit *damage,
                      const struct fault_hit *mend) {
    static const char *const well[] = {"neatly",  "well",    "badly",    "nicely",
                                       "roughly", "crudely", "carefully"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = damage->to;
    while (token_among(tokens, at, well, COUNT(well))) at++;
    return mend->kinds[0]->class == CLASS_REPAIR && at == mend->from &&
           is_done(tokens->at[mend->from].fold) && !is_state_word(tokens, damage);
}

// The damage at `i` is no more: the mend over it takes its place.
static bool is_covered(struct fault_reader *r, size_t i, size_t kept) {
    struct fault_hit *mend = NULL, *damage = &r->hits[i];
    if (damage->kinds[0]->class == CLASS_REPAIR || damage->kinds[0]->form == ABSENCE) return false;
    if (kept > 0 && is_under(r, &r->hits[kept - 1], damage)) mend = &r->hits[kept - 1];
    if (i + 1 < r->hit_count && is_behind(r, damage, &r->hits[i + 1])) mend = &r->hits[i + 1];
    if (!mend) return false;
    struct fault_hit *copy = arena_alloc(r->note->arena, sizeof *copy);
    *copy = *damage;
    mend->parted = copy;
    return true;
}

static void drop_mended(struct fault_reader *r) {
    size_t kept = 0;
    for (size_t i = 0; i < r->hit_count; i++) {
        bool rejoined = is_rejoined(r, i) || is_mended(r, i);
        if (rejoined) {
            struct fault_hit *parted = arena_alloc(r->note->arena, sizeof *parted);
            *parted = r->hits[i];
            r->hits[i + 1].parted = parted;
        }
        if (!rejoined && !is_covered(r, i, kept)) r->hits[kept++] = r->hits[i];
    }
    r->hit_count = kept;
}

// "Rust mark near the hem, doesn't come out", "hood perished, goes to bits": no fault more, but how bad the
// one before it is.
static bool is_result(const struct tokens *tokens, const struct fault_hit *hit, bool *washed) {
    static const char *const stays[] = {"out", "shift", "budge", "off"};
    static const char *const ends[] = {"bits", "pieces", "dust", "powder", "hand", "hands", "crumbs"};
    static const char *const nots[] = {"doesn't", "won't", "didn't", "wouldn't", "couldn't", "can't", "wont"};
    static const char *const goes[] = {"goes",   "falls", "comes", "fall", "falling",  "go",
                                       "coming", "drops", "turns", "come", "dropping", "bits"};
    *washed = token_among(tokens, hit->from, nots, COUNT(nots)) &&
              token_among(tokens, hit->to - 1, stays, COUNT(stays));
    if (*washed) return true;
    bool bits = false;
    for (size_t k = hit->from; k < hit->to; k++) bits |= token_among(tokens, k, ends, COUNT(ends));
    return token_among(tokens, hit->from, goes, COUNT(goes)) && bits;
}

static bool is_marking(const struct fault_hit *hit) {
    static const char *const ids[] = {
        "stain",           "storage-spots", "rust",         "ring-mark", "sweat-stain",     "mold",
        "mineral-deposit", "tarnish",       "dye-bleed",    "tide-line", "sticker-residue", "grease-film",
        "dust-grime",      "yellowing",     "cloudy-glass", "wear-rub",  "writing-inside",  "owner-name",
        "album-residue",   "foxing",        "heat-damage"};
    for (size_t i = 0; i < hit->kind_count; i++)
        for (size_t k = 0; k < COUNT(ids); k++)
            if (text_same(hit->kinds[i]->rule.id, ids[k])) return true;
    return !strncmp(hit->kinds[0]->rule.id, "odor-", 5);
}

// "A burn, gone black": a word of the burn's own scale, and no tarnish; "a moth hole, just the one".
static bool is_turn_of(const struct fault_reader *r, const struct fault_hit *a, const struct fault_hit *b) {
    static const char *const turned[] = {"gone", "turned", "going", "went"};
    const struct tokens *tokens = &r->note->tokens;
    enum severity degree;
    if (tokens->at[b->from - 1].stop != STOP_COMMA) return false;
    if (token_is(tokens, b->to - 1, "one") && token_is(tokens, b->to - 2, "the")) return true;
    return b->to == b->from + 2 && token_among(tokens, b->from, turned, COUNT(turned)) &&
           degree_tell_is(r, a, b->from + 1, 1, &degree);
}

// "Crazed all over and has gone brown in the lines", "a hairline that's stained": lines that took color are
// told worse, and the color is no second fault.
static bool is_color_of_lines(const struct fault_reader *r, const struct fault_hit *a,
                              const struct fault_hit *b) {
    static const char *const lines[] = {"crazing", "hairline", "crack-through"};
    static const char *const colors[] = {"stain", "fading", "yellowing", "toning", "dust-grime"};
    static const char *const turned[] = {"stained", "discolored", "discoloured", "gone",    "turned",
                                         "browned", "brown",      "dirty",       "darkened"};
    static const char *const links[] = {"and",  "has",  "have", "that", "which", "that's", "it's",
                                        "they", "have", "is",   "are",  "been",  "it",     "slightly"};
    const struct tokens *tokens = &r->note->tokens;
    bool line = false, color = false;
    for (size_t k = 0; k < COUNT(lines); k++) line |= text_same(a->kinds[0]->rule.id, lines[k]);
    for (size_t k = 0; line && k < COUNT(colors); k++) color |= text_same(b->kinds[0]->rule.id, colors[k]);
    if (!color || !token_among(tokens, b->from, turned, COUNT(turned))) return false;
    bool both = token_is(tokens, b->from - 1, "and") &&
                ANY(tokens, b->from, "stained", "discolored", "discoloured", "dirty", "browned", "darkened");
    if (both) return false; // "crazed and stained" are two
    bool linked = b->from == a->to || tokens->at[b->from - 1].stop == STOP_COMMA ||
                  token_among(tokens, b->from - 1, links, COUNT(links));
    for (size_t k = a->to; k < b->from; k++)
        if (tokens->at[k].stop > STOP_COMMA || ANY(tokens, k, "the", "lid", "inside", "base", "rim"))
            return false;
    return linked;
}

static bool is_doing(const struct tokens *tokens, size_t i) {
    size_t n = i < tokens->count ? strlen(tokens->at[i].fold) : 0;
    return n > 5 && text_same(tokens->at[i].fold + n - 3, "ing"); // "from standing", not "apart from"
}

// "Faded where it stood in the window", "scuffed from being dragged about": how the first came about.
static bool is_cause_of(const struct fault_reader *r, const struct fault_hit *a, const struct fault_hit *b) {
    const struct tokens *tokens = &r->note->tokens;
    if (a->kinds[0] != b->kinds[0]) return false;
    bool cause = token_is(tokens, a->to - 1, "where"); // "black patches where the enamel has come off"
    for (size_t k = a->to; k < b->from; k++) {
        if (tokens->at[k].stop != STOP_NONE) return false;
        cause |= (token_is(tokens, k, "where") && ANY(tokens, k + 1, "it", "they", "it's")) ||
                 token_is(tokens, k, "because") || (token_is(tokens, k, "from") && is_doing(tokens, k + 1));
    }
    return cause || (token_is(tokens, b->from, "where") && b->from > a->to);
}

// "Hairline from rim to base and it leaks": how bad it is. "Scratched up from wear": what it comes from.
static bool is_told_again(const struct fault_reader *r, const struct fault_hit *a,
                          const struct fault_hit *b) {
    static const char *const open[] = {"hairline", "crack-through", "crack", "seam-split", "hole", "rust"};
    const struct tokens *tokens = &r->note->tokens;
    bool leaks = false, lets = false;
    for (size_t k = b->from; k < b->to; k++) leaks |= ANY(tokens, k, "leaks", "leaking", "leak", "weeps");
    bool through = false; // "a rust hole and it leaks"
    for (size_t k = a->from; k < a->to; k++) through |= ANY(tokens, k, "hole", "holes", "through");
    leaks &= through || !text_same(a->kinds[0]->rule.id, "rust");
    for (size_t k = 0; leaks && k < COUNT(open); k++) lets |= text_same(a->kinds[0]->rule.id, open[k]);
    bool far = text_same(b->kinds[0]->rule.id, "crack-through") &&
               ANY(tokens, b->from, "from", "right", "all", "clean"); // "a hairline from rim to base"
    for (size_t k = 0; far && k + 1 < COUNT(open); k++) lets |= text_same(a->kinds[0]->rule.id, open[k]);
    bool cause = text_same(b->kinds[0]->rule.id, "wear-unspecified") && b->from > 0 &&
                 ANY(tokens, b->from - 1, "from", "through", "with", "by") &&
                 a->kinds[0]->class == CLASS_DAMAGE;
    for (size_t k = a->to; k < b->from; k++)
        if (tokens->at[k].stop >= STOP_CLAUSE || ANY(tokens, k, "doesn't", "don't", "not", "never", "no"))
            return false;
    bool dark = text_same(a->kinds[0]->rule.id, "stain") && b->from == a->to &&
                token_is(tokens, b->from, "dark"); // "stained dark from use"
    return cause || dark || (lets && !ANY(tokens, b->from, "no", "not", "never"));
}

// "Bent slightly out of round": bent, and so no longer round.
static bool is_shape_of(const struct fault_reader *r, const struct fault_hit *a, const struct fault_hit *b) {
    static const char *const degrees[] = {"slightly", "a",     "bit",  "little", "well",
                                          "badly",    "right", "just", "quite",  "and"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(a->kinds[0]->rule.id, "dent-bend") || !text_same(b->kinds[0]->rule.id, "warped"))
        return false;
    if (!token_is(tokens, b->from, "out") && !token_is(tokens, b->from + 1, "out")) return false;
    for (size_t k = a->to; k < b->from; k++)
        if (tokens->at[k].stop != STOP_NONE || !token_among(tokens, k, degrees, COUNT(degrees))) return false;
    return true;
}

// "Stuck, I soaked it overnight and it won't shift": what is stuck, and no stain.
static bool is_still_stuck(const struct fault_reader *r, size_t i) {
    static const char *const nots[] = {"won't", "wont", "doesn't", "wouldn't", "couldn't", "can't", "will"};
    static const char *const moves[] = {"shift", "budge", "move", "out", "off", "loosen"};
    const struct fault_hit *b = &r->hits[i];
    const struct tokens *tokens = &r->note->tokens;
    if (!token_among(tokens, b->from, nots, COUNT(nots)) ||
        !token_among(tokens, b->to - 1, moves, COUNT(moves)))
        return false;
    for (size_t k = i; k-- > 0;) {
        for (size_t at = r->hits[k].to; at < b->from; at++)
            if (tokens->at[at].stop >= STOP_SENTENCE) return false;
        if (text_same(r->hits[k].kinds[0]->rule.id, "seized")) return true;
        if (is_marking(&r->hits[k])) return false;
    }
    return false;
}

// "Soles are coming away, so they need gluing", "seam is open and wants a stitch": what would mend it.
static bool is_remedy(const struct fault_reader *r, const struct fault_hit *a, const struct fault_hit *b) {
    static const char *const leads[] = {"so",   "and",  "they", "it",    "that",  "which", "these",
                                        "both", "just", "only", "would", "will",  "all",   "really",
                                        "also", "does", "do",   "might", "could", "those", "probably"};
    static const char *const cures[] = {"gluing",  "glueing",  "regluing",    "stitch",     "stitching",
                                        "sewing",  "resewing", "soldering",   "tightening", "fixing",
                                        "mending", "stitches", "restitching", "glue"};
    const struct tokens *tokens = &r->note->tokens;
    if (a->kinds[0]->class != CLASS_DAMAGE || !ANY(tokens, b->from, "need", "needs", "want", "wants") ||
        !token_among(tokens, b->to - 1, cures, COUNT(cures)))
        return false;
    size_t at = b->from;
    while (at > a->to && tokens->at[at - 1].stop == STOP_NONE &&
           token_among(tokens, at - 1, leads, COUNT(leads)))
        at--;
    return at < b->from && (at == a->to || tokens->at[at - 1].stop == STOP_COMMA ||
                            ANY(tokens, at, "so", "and", "which", "that"));
}

// "The varnish has gone alligatored": one fault in two words of its kind.
static bool is_one_with(const struct fault_reader *r, const struct fault_hit *a, const struct fault_hit *b) {
    bool same = false;
    for (size_t k = 0; k < b->kind_count; k++)
        same |= a->kinds[0] == b->kinds[k] || (text_same(a->kinds[0]->rule.id, "finish-crackle") &&
                                               text_same(b->kinds[k]->rule.id, "crazing"));
    return b->from == a->to && same && a->kinds[0]->form == FAULT &&
           r->note->tokens.at[b->from - 1].stop == STOP_NONE &&
           ANY(&r->note->tokens, a->to - 1, "gone", "got", "turned");
}

// "It leans because the stem is bent": the stem is what is bent, and the fault is one.
static bool is_because(const struct fault_reader *r, const struct fault_hit *a, const struct fault_hit *b) {
    enum { FAR = 6 };
    const struct tokens *tokens = &r->note->tokens;
    if (a->kinds[0] != b->kinds[0] || b->from <= a->to || b->from > a->to + FAR ||
        !token_is(tokens, a->to, "because") || tokens->at[a->to - 1].stop != STOP_NONE)
        return false;
    for (size_t k = a->to; k < b->from; k++)
        if (tokens->at[k].stop != STOP_NONE) return false;
    return ANY(tokens, a->to + 1, "the", "its", "one", "a", "this") && b->from >= a->to + 3;
}

static bool is_more_of(const struct fault_reader *r, size_t i) {
    static const char *const subjects[] = {"it", "and", "but", "that", "which", "they", "just", "it's"};
    enum { FAR = 8 };
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0) return false;
    const struct fault_hit *a = &r->hits[i - 1], *b = &r->hits[i];
    bool washed;
    if (b->from >= a->to && b->from <= a->to + 2 * FAR && is_remedy(r, a, b)) return true;
    if (b->from < a->to || b->from > a->to + FAR || a->kinds[0]->form != FAULT) return false;
    if (is_shape_of(r, a, b) || is_cause_of(r, a, b) || is_color_of_lines(r, a, b)) return true;
    if (is_told_again(r, a, b) || is_still_stuck(r, i)) return true;
    if (b->from == a->to) return false;
    if (is_turn_of(r, a, b)) return true;
    if (!is_result(tokens, b, &washed) || a->kinds[0]->class == CLASS_FUNCTION) return false;
    if (washed ? !is_marking(a) : a->kinds[0]->class != CLASS_DAMAGE) return false;
    for (size_t k = 0; k < a->kind_count; k++)
        for (size_t m = 0; m < b->kind_count; m++)
            if (a->kinds[k] == b->kinds[m]) return false;
    for (size_t k = a->from; k < b->from; k++)
        if (tokens->at[k].stop >= STOP_SENTENCE) return false;
    return tokens->at[b->from - 1].stop != STOP_NONE ||
           token_among(tokens, b->from - 1, subjects, COUNT(subjects));
}

// "An old and dirty chip", "stained crack": the adjective of another fault.
static bool is_adjective_of_next(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"dirty",      "grubby",      "stained",
                                        "discolored", "discoloured", "darkened"};
    static const char *const ids[] = {"chip",          "hairline", "crack",
                                      "crack-through", "fleabite", "enamel-chip"};
    if (i + 1 >= r->hit_count) return false;
    const struct fault_hit *a = &r->hits[i], *b = &r->hits[i + 1];
    bool damage = false;
    for (size_t k = 0; k < COUNT(ids); k++) damage |= text_same(b->kinds[0]->rule.id, ids[k]);
    return damage && a->to == b->from && a->to == a->from + 1 &&
           token_among(&r->note->tokens, a->from, words, COUNT(words));
}

// "The paint is worn thin on the seat": how it is worn, and no wear of the seat besides.
static bool is_thin_of_worn(const struct fault_reader *r, size_t i) {
    const struct fault_hit *b = &r->hits[i];
    return i > 0 && r->hits[i - 1].to == b->from &&
           ANY(&r->note->tokens, b->from, "thin", "smooth", "through") &&
           ANY(&r->note->tokens, b->from - 1, "worn", "rubbed", "wearing") &&
           r->note->tokens.at[b->from - 1].stop == STOP_NONE;
}

// "And it's rusting where it's chipped": the damage that was told before, and no other.
static bool is_where_told(const struct fault_reader *r, size_t i) {
    enum { BACK = 4, STEM = 4 };
    const struct tokens *tokens = &r->note->tokens;
    const struct fault_hit *b = &r->hits[i];
    size_t at = b->from;
    while (at > 0 && b->from - at < BACK && tokens->at[at - 1].stop == STOP_NONE &&
           !token_is(tokens, at, "where"))
        at--;
    if (i == 0 || !token_is(tokens, at, "where") ||
        !ANY(tokens, at + 1, "it's", "it", "its", "they're", "they", "the"))
        return false;
    for (size_t k = i, n = 0; k > 0 && n < BACK; k--, n++) {
        const struct fault_hit *a = &r->hits[k - 1];
        for (size_t w = a->from; w < a->to; w++)
            if (strlen(tokens->at[w].fold) > STEM &&
                !strncmp(tokens->at[w].fold, tokens->at[b->to - 1].fold, STEM))
                return true;
        if (tokens->at[a->to - 1].stop >= STOP_SENTENCE) break;
    }
    return false;
}

static void drop_results(struct fault_reader *r) {
    size_t kept = 0;
    for (size_t i = 0; i < r->hit_count; i++) {
        if (kept > 0 && (is_one_with(r, &r->hits[kept - 1], &r->hits[i]) ||
                         is_because(r, &r->hits[kept - 1], &r->hits[i]))) {
            r->hits[kept - 1].to = r->hits[i].to;
            continue;
        }
        if (!is_more_of(r, i) && !is_thin_of_worn(r, i) && !is_where_told(r, i) &&
            !is_adjective_of_next(r, i) && !lost_is_broken_off(r, r->hits[i].from, r->hits[i].to))
            r->hits[kept++] = r->hits[i];
    }
    r->hit_count = kept;
}

void faults_join(struct fault_reader *r) {
    drop_mended(r);
    drop_results(r);
    drop_vague_smells(r);
    join_narrower(r);
}
