// SPDX-License-Identifier: MIT
// "You can see copper" makes a frayed cord a bad one, "only when tilted" a scratch a light one: each kind has
// a scale of its own, and its rule has the words that place a fault on it. They stand in the same sentence,
// with no other fault between. Where words of two degrees stand there the heavier counts: a buyer is never
// told less.
#include "notes/any.h"
#include "notes/faults.h"

#include <string.h>

#include "notes/figure.h"
#include "text/order.h"

enum { REACH_BEFORE = 8, REACH_BEHIND = 14 };

struct window {
    size_t from, to; // tokens
};

// A word of another fault; but "gone yellow" of old tape tells how bad the tape is.
static bool is_other(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                     size_t i) {
    static const char *const runs[] = {"runs", "goes", "running", "going"};
    if (i >= hit->to && token_among(&r->note->tokens, i, runs, sizeof runs / sizeof *runs)) return false;
    return (i < hit->from || i >= hit->to) && r->scope.fault[i] && !r->part[i] &&
           !(kind && degree_tell_at(r, kind, i));
}

// "…, arms rubbed": another part with a fault of its own, though the word stands on this scale too.
static bool opens_part_fault(const struct fault_reader *r, size_t i) {
    enum { FAR = 4 };
    const struct tokens *tokens = &r->note->tokens;
    while (spot_article(tokens, i)) i++;
    if (i >= tokens->count || !r->part[i] || r->scope.fault[i] || spot_adverb(tokens, i) ||
        spot_preposition(tokens, i))
        return false;
    for (size_t k = i + 1; k < i + FAR && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE; k++)
        if (r->scope.fault[k] && !r->part[k]) return true;
    return false;
}

static struct window window_of(const struct fault_reader *r, const struct fault_hit *hit,
                               const struct flaw *kind) {
    const struct tokens *tokens = &r->note->tokens;
    struct window w = {hit->from, hit->to};
    while (w.from > 0 && hit->from - w.from < REACH_BEFORE && tokens->at[w.from - 1].stop < STOP_CLAUSE &&
           !is_other(r, hit, NULL, w.from - 1))
        w.from--;
    bool other =
        w.from > 0 && tokens->at[w.from - 1].stop < STOP_CLAUSE && is_other(r, hit, NULL, w.from - 1);
    for (size_t i = hit->from; other && i > w.from; i--)
        if (ANY(tokens, i - 1, "and", "but")) w.from = i; // "stains [all over] and initials": of the stains
    while (w.to < tokens->count && w.to - hit->to < REACH_BEHIND && tokens->at[w.to].stop < STOP_SENTENCE &&
           !is_other(r, hit, kind, w.to) &&
           !(tokens->at[w.to].stop != STOP_NONE &&
             (degree_opens_praise(r, w.to + 1) || opens_part_fault(r, w.to + 1))))
        w.to++;
    if (w.to < tokens->count && is_other(r, hit, kind, w.to)) w.to = degree_cut(tokens, hit->to, w.to);
    return w;
}

// "Black box, dusty": one word before a comma, or one of the thing's own, is not said of the fault.
static bool is_of_thing(const struct fault_reader *r, const struct fault_hit *hit, size_t i, size_t n) {
    if (r->note->taken[i] == TAKEN_TYPE) return true;
    if (i >= hit->to && n == 1 && (degree_names_place(r, i) || degree_is_of_goods(r, i, 1))) return true;
    if (i >= hit->from || n > 1) return false;
    if (r->note->taken[i] == TAKEN_VALUE) return true;
    static const char *const links[] = {"with",   "has",   "have",    "had", "shows", "but",  "and",
                                        "except", "apart", "besides", "bar", "save",  "aside"};
    for (size_t k = i; k < hit->from; k++)
        if (r->note->tokens.at[k].stop != STOP_NONE ||
            (k > i && token_among(&r->note->tokens, k, links, sizeof links / sizeof *links)))
            return true;
    return false;
}

// "No powder coming out": a word that is denied tells nothing.
static bool is_denied(const struct fault_reader *r, size_t i) {
    return r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST);
}

// "One moth hole" tells a number of holes; "fringe gone at one end" does not.
static bool is_number(const char *word) {
    static const char *const words[] = {"one", "two",   "three", "four", "five",
                                        "six", "seven", "a",     "few",  "couple"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (text_same(words[i], word)) return true;
    return word[0] >= '0' && word[0] <= '9' && !word[1];
}

// Most words of a note stand on no scale.
static bool may_tell(const struct tokens *tokens, size_t i, const struct texts *words) {
    static const char *const numbers[] = {"couple", "few",    "2",        "3",       "4", "a",
                                          "quite",  "uneven", "unevenly", "blotchy", "in"};
    if (!words->count) return false;
    return token_may_open(tokens, i, (const void *)words->at, words->count, sizeof *words->at) ||
           token_is(tokens, i + 1, "not") || token_is(tokens, i, "cannot") ||
           token_among(tokens, i, numbers, sizeof numbers / sizeof *numbers);
}

// "Would not sit" where the scale has "wouldn't sit".
static size_t tell_full_at(const struct tokens *tokens, size_t i, const char *word) {
    const char *tail = strstr(word, "n't");
    if (!tail || tail == word || (tail[3] && tail[3] != ' ')) return 0;
    size_t size = (size_t)(tail - word), n = token_is(tokens, i, "cannot") ? 1 : 2;
    if (n == 2 && !token_is(tokens, i + 1, "not")) return 0;
    const char *verb = tokens->at[i].fold;
    bool same = !strncmp(verb, word, size) && (!verb[size] || (verb[size] == 'n' && size == 2));
    if (text_same(verb, "will")) same = size == 2 && !strncmp(word, "wo", 2);
    if (text_same(verb, "can") || n == 1) same = size == 2 && !strncmp(word, "ca", 2);
    if (!same) return 0;
    if (!tail[3]) return n;
    size_t rest = token_phrase(tokens, i + n, tail + 4);
    return rest ? n + rest : 0;
}

// A word of the scale at token `i`; "rim" is "rims" too, "two" a couple and a 2.
static size_t tell_at(const struct tokens *tokens, size_t i, const char *word) {
    static const struct {
        const char *word, *other;
    } same[] = {{"two", "couple"},
                {"two", "2"},
                {"a few", "few"},
                {"three", "3"},
                {"four", "4"},
                {"patchy", "uneven"},
                {"patchy", "unevenly"},
                {"patchy", "blotchy"},
                {"patchy", "in blotches"},
                {"several", "a number of"},
                {"several", "quite a few"}};
    size_t n = token_phrase(tokens, i, word);
    if (n) return n;
    if (tokens->at[i].kind == TOKEN_WORD && text_same(tokens->at[i].one, word)) return 1;
    if ((n = tell_full_at(tokens, i, word)) != 0) return n;
    if (word[0] != 'a' && word[0] != 't' && word[0] != 'f' && word[0] != 's') return 0; // of `same`
    for (size_t k = 0; k < sizeof same / sizeof *same && !n; k++)
        if (text_same(same[k].word, word)) n = token_phrase(tokens, i, same[k].other);
    return n;
}

// "Won't shut", "no dust": the denial is of the scale itself.
static bool has_no(const struct tokens *tokens, size_t from, size_t to) {
    static const char *const words[] = {"no",     "not",     "never", "hardly",
                                        "barely", "nothing", "can't", "cannot"};
    for (size_t i = from; i < to; i++)
        if (token_among(tokens, i, words, sizeof words / sizeof *words) || strstr(tokens->at[i].fold, "n't"))
            return true;
    return false;
}

// "Skin deep" is not deep: a longer phrase of the same scale holds this one.
static bool is_within_longer(const struct fault_reader *r, const struct flaw *kind, size_t i, size_t n) {
    enum { WORDS_MOST = 3 };
    for (size_t back = 0; back < WORDS_MOST && back <= i; back++)
        for (int d = SEVERITY_HEAVY; d > SEVERITY_UNKNOWN; d--)
            for (size_t k = 0; k < kind->tells[d].count; k++) {
                const char *tell = kind->tells[d].at[k];
                if (!strchr(tell, ' ')) continue;
                size_t size = token_phrase(&r->note->tokens, i - back, tell);
                if (size > n && size >= back + n) return true;
            }
    return false;
}

// "40 mm long": the figure says how long, and "long" nothing more.
static bool is_of_figure(const struct note *note, size_t i) {
    enum { FAR = 4 };
    if (!ANY(&note->tokens, i, "long", "deep", "wide", "across", "high")) return false;
    for (size_t back = 1; back <= FAR && back <= i && note->tokens.at[i - back].stop == STOP_NONE; back++) {
        struct figure figure;
        size_t taken;
        if (figure_at(note, i - back, &figure, &taken) && figure.unit && taken == back) return true;
    }
    return false;
}

// "Not seen from the top": whence one looks is not how far it goes.
static bool is_viewpoint(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "from", "on", "at", "across") || i == 0) return false;
    size_t at = i - 1;
    while (at > 0 && ANY(tokens, at, "it", "them", "that", "much", "at", "all", "looking", "up", "there"))
        at--;
    return ANY(tokens, at, "see", "seen", "visible", "show", "shows", "showing", "notice", "noticed",
               "noticeable", "looking", "spot", "look", "viewed", "invisible", "hidden");
}

// "Name in marker on the label inside": where nobody sees it, what it is written with counts for nothing.
static bool is_tool_of_hidden(const struct tokens *tokens, const struct window *w, const struct flaw *kind,
                              size_t i) {
    if (!text_same(kind->rule.id, "owner-name") || !ANY(tokens, i, "ink", "pen", "biro", "marker"))
        return false;
    for (size_t k = w->from; k < w->to; k++)
        if (ANY(tokens, k, "label", "tag", "inside", "underneath", "underside", "flyleaf", "endpaper"))
            return true;
    return false;
}

// "Worn off in places": of what is rubbed off, the word for much is said of those places alone.
static bool is_in_places(const struct tokens *tokens, const struct flaw *kind, size_t end) {
    static const char *const ids[] = {"gilt-wear",     "decoration-wear", "plate-wear",     "coating-worn",
                                      "paint-flaking", "wear-rub",        "finish-crackle", "fading"};
    static const char *const places[] = {"in places",      "in spots", "in a few places", "in a few spots",
                                         "here and there", "in parts", "in some places",  "in patches"};
    if (!token_longest(tokens, end, places, sizeof places / sizeof *places)) return false;
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++)
        if (text_same(kind->rule.id, ids[i])) return true;
    return false;
}

static bool stands(const struct fault_reader *r, const struct window *w, const struct fault_hit *hit,
                   bool whole, bool places, const struct flaw *kind, int degree) {
    const struct texts *words = &kind->tells[degree];
    for (size_t i = w->from; i < w->to; i++) {
        if (whole && i >= hit->from && i < hit->to) continue;
        if (!may_tell(&r->note->tokens, i, words)) continue;
        for (size_t k = 0; k < words->count; k++) {
            size_t n = tell_at(&r->note->tokens, i, words->at[k]);
            bool own_no = n && has_no(&r->note->tokens, i, i + n);
            bool denied = n && (is_denied(r, i + n - 1) || degree_is_short(&r->note->tokens, i));
            if (!n || (!own_no && (i + n > w->to || denied))) continue; // "no dust" of worm holes
            if (!places && n == 1 && r->part[i]) continue;
            if (is_of_thing(r, hit, i, n) || is_within_longer(r, kind, i, n)) continue;
            if (is_viewpoint(&r->note->tokens, i) || is_tool_of_hidden(&r->note->tokens, w, kind, i))
                continue;
            if (degree == SEVERITY_HEAVY && is_in_places(&r->note->tokens, kind, i + n)) continue;
            if (n == 1 && is_of_figure(r->note, i)) continue;
            if (i > 0 && token_is(&r->note->tokens, i - 1, "nowhere")) continue; // "rusty but nowhere deep"
            static const char *const verbs[] = {"has", "have", "had", "with", "shows", "is", "are"};
            if (is_number(words->at[k]) && token_among(&r->note->tokens, i + n, verbs, 7))
                continue;                                   // "the grey one has"
            bool opens = i == hit->from && i + n < hit->to; // "couple of pulls"
            if (!is_number(words->at[k]) || opens || (i + n <= hit->from && hit->from - (i + n) <= 1))
                return true;
        }
    }
    return false;
}

// "A few threads at the hem": where it is says less than how much, but of glass and enamel.
static bool is_by_place(const struct flaw *kind) {
    static const char *const ids[] = {"chip", "enamel-chip", "fleabite", "hairline"};
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++)
        if (text_same(kind->rule.id, ids[i])) return true;
    return false;
}

static enum severity heaviest(const struct fault_reader *r, const struct window *w,
                              const struct fault_hit *hit, bool whole, const struct flaw *kind) {
    for (int places = is_by_place(kind) ? 1 : 0; places < 2; places++)
        for (int degree = SEVERITY_HEAVY; degree > SEVERITY_UNKNOWN; degree--)
            if (stands(r, w, hit, whole, places == 1, kind, degree)) return (enum severity)degree;
    return SEVERITY_UNKNOWN;
}

// "Stiff" of what may be stuck.
static enum severity by_name(const struct fault_reader *r, const struct fault_hit *hit,
                             const struct flaw *kind) {
    for (int degree = SEVERITY_HEAVY; degree > SEVERITY_UNKNOWN; degree--) {
        const char *word = kind->adjective_at[degree];
        bool own = word && (!kind->adjective || !text_same(word, kind->adjective));
        if (own && token_phrase(&r->note->tokens, hit->from, word) == hit->to - hit->from)
            return (enum severity)degree;
    }
    return SEVERITY_UNKNOWN;
}

// Where "but", "still" and their like begin to take something back; 0 if nowhere.
static size_t taken_back(const struct fault_reader *r, size_t from, size_t to) {
    static const char *const words[] = {"but", "though", "although", "still", "yet", "eventually"};
    for (size_t i = from; i < to; i++)
        if (token_among(&r->note->tokens, i, words, sizeof words / sizeof *words)) return i;
    return 0;
}

// "Evenly toned and not dark", "hasn't gone right through": what is denied of it is the far end of its scale.
static bool is_short_of(const struct fault_reader *r, const struct window *w, const struct fault_hit *hit,
                        const struct flaw *kind) {
    enum { NEAR = 4 };
    const struct tokens *tokens = &r->note->tokens;
    const struct texts *words = &kind->tells[SEVERITY_HEAVY];
    for (size_t i = hit->to; i < w->to; i++) {
        bool no = false;
        for (size_t k = i; k > hit->to && i - k < NEAR && !no; k--)
            no = ANY(tokens, k - 1, "not", "isn't", "aren't", "hasn't", "haven't", "doesn't", "don't",
                     "never", "no", "nowhere", "can't", "without", "didn't", "none");
        for (size_t k = 0; no && k < words->count; k++) {
            size_t n = tell_at(tokens, i, words->at[k]);
            if (n && !has_no(tokens, i, i + n) && !r->part[i] && !is_number(words->at[k])) return true;
        }
    }
    return false;
}

enum severity degree_short_of(const struct fault_reader *r, const struct fault_hit *hit,
                              const struct flaw *kind) {
    struct window w = window_of(r, hit, kind);
    return is_short_of(r, &w, hit, kind) ? SEVERITY_LIGHT : SEVERITY_UNKNOWN;
}

enum severity degree_on_scale(const struct fault_reader *r, const struct fault_hit *hit,
                              const struct flaw *kind) {
    struct window w = window_of(r, hit, kind);
    enum severity beside = heaviest(r, &w, hit, true, kind);
    size_t back = taken_back(r, hit->to, w.to);
    if (beside && back) { // "stuck, but turns with force"
        struct window behind = {back, w.to};
        enum severity last = heaviest(r, &behind, hit, true, kind);
        return last ? last : beside;
    }
    enum severity named = by_name(r, hit, kind);
    if (named) return named > beside ? named : beside;
    enum severity own = kind_is_whole(r, kind, hit) ? SEVERITY_UNKNOWN : heaviest(r, &w, hit, false, kind);
    return own > beside ? own : beside;
}

size_t degree_tell_at(const struct fault_reader *r, const struct flaw *kind, size_t i) {
    if (i >= r->note->tokens.count) return 0;
    for (int degree = SEVERITY_HEAVY; degree > SEVERITY_UNKNOWN; degree--) {
        const struct texts *words = &kind->tells[degree];
        if (!may_tell(&r->note->tokens, i, words)) continue;
        for (size_t k = 0; k < words->count; k++) {
            size_t n = tell_at(&r->note->tokens, i, words->at[k]);
            if (n && !is_number(words->at[k])) return n;
        }
    }
    return 0;
}

bool degree_tell_is(const struct fault_reader *r, const struct fault_hit *hit, size_t i, size_t n,
                    enum severity *degree) {
    const struct flaw *kind = hit->kinds[0];
    for (int d = SEVERITY_HEAVY; d > SEVERITY_UNKNOWN; d--)
        for (size_t k = 0; k < kind->tells[d].count; k++)
            if (token_phrase(&r->note->tokens, i, kind->tells[d].at[k]) == n) {
                *degree = (enum severity)d;
                return true;
            }
    return false;
}

// Alone these are said of the thing as often as of its fault.
static bool is_plain(const char *tell) {
    static const char *const words[] = {
        "creased", "growing", "spreading", "moves",        "rattles",  "wobbles",    "useless",
        "unsafe",  "skips",   "leaks",     "unplayable",   "deep",     "shallow",    "stable",
        "reeks",   "stinks",  "faint",     "overpowering", "crumbles", "gooey",      "wipes",
        "spins",   "sticks",  "jumps",     "powder",       "flakes",   "throughout", "crumbling",
        "stained", "browned", "lifting",   "peeling",      "pliers",   "flexes"};
    if (strchr(tell, ' ')) return true;
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (text_same(words[i], tell)) return true;
    return false;
}

enum severity degree_on_scale_in(const struct fault_reader *r, const struct flaw *kind, size_t from,
                                 size_t to) {
    for (int degree = SEVERITY_HEAVY; degree > SEVERITY_UNKNOWN; degree--) {
        const struct texts *words = &kind->tells[degree];
        for (size_t i = from; i < to; i++) {
            if (!may_tell(&r->note->tokens, i, words)) continue;
            for (size_t k = 0; k < words->count; k++) {
                size_t n = tell_at(&r->note->tokens, i, words->at[k]);
                if (!n || i + n > to || !is_plain(words->at[k])) continue;
                bool no = has_no(&r->note->tokens, i, i + n);
                if (no || !(is_denied(r, i + n - 1) || degree_is_short(&r->note->tokens, i)))
                    return (enum severity)degree;
            }
        }
    }
    return SEVERITY_UNKNOWN;
}
