// SPDX-License-Identifier: MIT
// What was denied and is there all the same, said with a word that stands for it: "no chips, but there is one
// on the foot", "no chips well hang on a little one by the handle", "no rust inside, a fair bit outside".
// Such a word opens what it says, behind a comma or words of second thoughts, and is of the kind that was
// denied last.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/figure.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool drop_size(struct record *record, size_t byte) {
    size_t measures = 0, values = 0;
    for (size_t i = 0; i < record->measurement_count; i++)
        if (record->measurements[i].span.from != byte)
            record->measurements[measures++] = record->measurements[i];
    for (size_t i = 0; i < record->attribute_count; i++)
        if (!text_same(record->attributes[i].name, "size") || record->attributes[i].span.from != byte)
            record->attributes[values++] = record->attributes[i];
    bool dropped = measures < record->measurement_count || values < record->attribute_count;
    record->measurement_count = measures;
    record->attribute_count = values;
    return dropped;
}

// "One on the base, 4 mm": the figure behind it was taken for the thing's own.
static void move_size(struct fault_reader *r, struct item_flaw *flaw, size_t i) {
    enum { FAR = 9, MOST_MM = 60 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t k = i + 1; k < i + FAR && k < tokens->count && !flaw->has_size; k++) {
        struct figure figure;
        size_t taken;
        if (tokens->at[k].stop >= STOP_CLAUSE) return;
        if (r->note->taken[k] != TAKEN_MEASURE || !figure_at(r->note, k, &figure, &taken) || !figure.unit ||
            !figure.unit->kind || !text_same(figure.unit->kind, "mm") || figure.base > MOST_MM ||
            !drop_size(r->note->record, tokens->at[k].from))
            continue;
        flaw->has_size = true;
        flaw->size = figure;
        flaw->severity = degree_of_size(flaw->kind, figure.base);
    }
}

// "No chips, one in the set has a hairline": there "one" is one of the pieces.
static bool is_piece(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"has", "have",  "is",   "are",   "was",   "needs", "shows",
                                        "had", "looks", "does", "works", "isn't", "with"};
    return token_among(tokens, i, verbs, COUNT(verbs)) && tokens->at[i - 1].stop == STOP_NONE;
}

// "One", "two tiny ones", "a small one"; or as much of it as is said: "some", "a fair bit", "plenty". How
// many tokens; 0 if none stands at `i`.
static size_t standing_for(const struct tokens *tokens, size_t i, bool *some) {
    static const char *const much[] = {
        "some",        "plenty",       "lots",       "loads",         "a bit",          "a fair bit",
        "a little",    "a little bit", "a touch",    "a trace",       "a few",          "a couple",
        "quite a bit", "couple",       "few",        "quite a lot",   "a good bit",     "a good deal",
        "a wee bit",   "quite a few",  "a lot",      "a fair amount", "a small amount", "a tiny bit",
        "the odd one", "a fair few",   "just a bit", "just a little", "heaps"};
    static const char *const sizes[] = {
        "small", "little",  "tiny",     "wee",   "big",   "large",    "minor",    "slight", "faint",
        "short", "long",    "minute",   "bad",   "nasty", "smallish", "deep",     "teeny",  "titchy",
        "weeny", "biggish", "brown",    "dark",  "black", "pale",     "yellow",   "rusty",  "round",
        "old",   "shallow", "hairline", "light", "white", "pinhead",  "pinprick", "larger", "smaller"};
    enum { SIZES_MOST = 3 };
    size_t n = token_longest(tokens, i, much, COUNT(much));
    static const char *const specks[] = {"specks",  "speck",     "flecks", "freckles",
                                         "patches", "pinpricks", "traces"};
    if (n && token_among(tokens, i + n, specks, COUNT(specks)))
        return n + 1; // "no rust other than a few specks"
    *some = n > 0 && !ANY(tokens, i + n, "one", "ones");
    if (*some) return n;
    size_t at = i;
    bool counted =
        ANY(tokens, at, "one") && at + 1 < tokens->count && token_among(tokens, at + 1, sizes, COUNT(sizes));
    if (ANY(tokens, at, "a", "an", "the") || counted || degrees_number(tokens, at) > 1) at++;
    size_t from = at;
    while (at < from + SIZES_MOST && token_among(tokens, at, sizes, COUNT(sizes))) at++;
    return ANY(tokens, at, "one", "ones") ? at + 1 - i : 0;
}

// Before it: "well", "hang on", "oh there's", "but I found". `*sure` where they say that it is there.
static size_t thoughts_before(const struct tokens *tokens, size_t i, size_t from, bool *sure) {
    static const char *const words[] = {
        "well",  "um",  "uh",   "er",    "oh",         "hmm", "ok",    "okay",  "just",  "only", "i",
        "maybe", "so",  "then", "that",  "can",        "and", "sorry", "i've",  "i'd",   "now",  "he",
        "she",   "we",  "did",  "do",    "you",        "it",  "looks", "like",  "ah",    "i'm",  "also",
        "my",    "bad", "said", "thing", "correction", "on",  "no",    "other", "apart", "aside"};
    static const char *const sures[] = {"wait",  "actually", "there's", "theres", "is",  "are",   "was",
                                        "found", "find",     "see",     "saw",    "has", "there", "except",
                                        "but",   "though",   "hang",    "hold",   "yes", "yeah",  "spotted",
                                        "than",  "for",      "from",    "lied",   "lie", "tell",  "see"};
    while (i > from) {
        if (tokens->at[i - 1].stop >= STOP_COMMA) {
            i--;
            continue;
        }
        bool strong = token_among(tokens, i - 1, sures, COUNT(sures));
        if (!strong && !token_among(tokens, i - 1, words, COUNT(words))) break;
        *sure |= strong;
        i--;
    }
    return i;
}

// "No chips wait there's one on the handle": the handle is where the one is, and not all that has no chips.
static void forget_there(struct record *record, const struct item_flaw *flaw) {
    size_t kept = 0;
    for (size_t i = 0; i < record->clear_count; i++) {
        const struct item_clear *clear = &record->clear[i];
        bool same =
            clear->kind == flaw->kind && clear->where && flaw->where && text_same(clear->where, flaw->where);
        if (!same) record->clear[kept++] = *clear;
    }
    record->clear_count = kept;
}

// The fault that was denied last before token `i`; NULL where something else was told since.
static const struct fault_hit *denied_last(const struct fault_reader *r, size_t i) {
    enum { FAR = 16 };
    for (size_t h = r->hit_count; h-- > 0;) {
        const struct fault_hit *hit = &r->hits[h];
        if (hit->to > i || i - hit->to > FAR || hit->kinds[0]->form != FAULT) continue;
        return fault_stance(r, hit) & (STANCE_DENIED | STANCE_NONE_SEEN) ? hit : NULL;
    }
    return NULL;
}

// "Plenty", "a fair bit", "a trace": some words for how much stand for the fault alone.
static enum severity how_much(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "plenty", "lots", "loads", "heaps")) return SEVERITY_HEAVY;
    if (ANY(tokens, i, "some")) return SEVERITY_UNKNOWN;
    if (ANY(tokens, i, "quite") || ANY(tokens, i + 1, "fair", "good", "lot"))
        return ANY(tokens, i + 1, "lot") || ANY(tokens, i + 2, "lot", "deal") ? SEVERITY_HEAVY
                                                                              : SEVERITY_MODERATE;
    return SEVERITY_LIGHT;
}

// "Well, six or seven off the bottom edge", "but two at the back": a number with its place, behind words of
// second thoughts. How many tokens; 0 if none stands at `i`.
static size_t number_standing(const struct tokens *tokens, size_t i) {
    size_t at = i;
    while (at > 0 && tokens->at[at - 1].stop == STOP_COMMA) at--;
    while (at > 0 && ANY(tokens, at - 1, "maybe", "about", "perhaps", "just", "only")) at--;
    if (at == 0 || !ANY(tokens, at - 1, "well", "except", "but", "bar", "actually") ||
        !degrees_number(tokens, i))
        return 0;
    size_t n = ANY(tokens, i + 1, "or", "to") && degrees_number(tokens, i + 2) ? 3 : 1;
    return spot_preposition(tokens, i + n) || ANY(tokens, i + n, "off", "from") ? n : 0;
}

static bool ends_there(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           ANY(tokens, i, "though", "actually", "now", "but", "and", "oh", "so");
}

// "Except one bottom right corner", "apart from one lower left": a side or a part without a preposition.
static size_t place_bare(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const sides[] = {"left", "right", "upper", "lower", "top", "bottom", "front", "back"};
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    size_t to = i;
    while (to < tokens->count && to < i + WORDS_MOST && tokens->at[to].kind == TOKEN_WORD &&
           (r->part[to] || token_among(tokens, to, sides, COUNT(sides))) && !r->scope.fault[to])
        to++;
    bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE || ends_there(tokens, to) ||
                ANY(tokens, to, "about", "roughly", "maybe", "under", "nearly", "where", "which") ||
                tokens->at[to].kind == TOKEN_FIGURE;
    *from = i;
    return to > i && ends ? to : 0;
}

static void read_standing(struct fault_reader *r, size_t i, size_t n, bool some) {
    const struct tokens *tokens = &r->note->tokens;
    size_t last = i + n - 1, from = 0;
    bool mine = r->note->taken[last] == TAKEN_NOT || r->note->taken[last] == TAKEN_PART ||
                (some && r->note->taken[last] == TAKEN_FILLER);
    const struct fault_hit *hit = mine ? denied_last(r, i) : NULL;
    bool anew = token_is(tokens, i + n, "of") && i > 0 && tokens->at[i - 1].stop >= STOP_SENTENCE;
    if (!hit || anew || scope_opens_one(&r->scope, i + n)) return; // "but one of the screws is gone"
    bool sure = false;
    size_t start = thoughts_before(tokens, i, hit->to, &sure);
    bool opens = start == hit->to || tokens->at[start].stop >= STOP_COMMA;
    if (!opens && (!sure || some)) return;
    size_t place = spot_place_at(r, i + n + ANY(tokens, i + n, "off", "from"), &from);
    if (!place && ANY(tokens, i + n, "off", "from"))
        place = place_bare(r, i + n + 2, &from); // "off the edge"
    if (!place && spot_adverb(tokens, i + n))
        place = spot_place_at(r, i + n + 1, &from); // "outside by the handle"
    bool bare_from =
        i > 0 && token_is(tokens, i - 1, "from") && !(i > 1 && ANY(tokens, i - 2, "apart", "aside"));
    if (!place && sure && !some && !bare_from) place = place_bare(r, i + n, &from);
    bool bare = !place && sure && !some && start == hit->to && ends_there(tokens, i + n);
    if (!place && !bare) return;
    if (place && !sure && is_piece(tokens, place)) return;
    if (place && ANY(tokens, i + n, "of", "in", "from") &&
        ANY(tokens, place - 1, "set", "pair", "service", "suite"))
        return; // "no crack. One of a set"
    if (some && !ends_there(tokens, place) && !spot_preposition(tokens, place))
        return; // "a bit on the heavy side for a child"
    struct fault_hit one = *hit;
    one.from = some ? i : last;
    one.to = i + n;
    const char *where = place ? fault_place(r->note, from, place) : NULL;
    size_t told = r->note->record->flaw_count;
    fault_tell(r, &one, kind_of_hit(r, hit, where), NULL, where);
    if (r->note->record->flaw_count == told) return;
    for (size_t k = hit->from; k < i; k++) // "no dents anywhere except one on the base"
        if (r->note->taken[k] == TAKEN_NOT) note_take(r->note, k, k + 1, TAKEN_SCOPE);
    struct item_flaw *flaw = &r->note->record->flaws[told];
    int number = n < 3 ? degrees_number(tokens, i) : 0;
    if (number > 1 && !flaw->count) flaw->count = number;
    if (some)
        flaw->severity = how_much(tokens, i);
    else
        move_size(r, flaw, last);
    forget_there(r->note->record, flaw);
}

void read_some_still(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    size_t first = tokens->count; // behind the first fault that is denied: most notes have none
    for (size_t h = 0; h < r->hit_count && first == tokens->count; h++)
        if (r->hits[h].kinds[0]->form == FAULT &&
            fault_stance(r, &r->hits[h]) & (STANCE_DENIED | STANCE_NONE_SEEN))
            first = r->hits[h].to;
    for (size_t i = first, n; i < tokens->count; i += n) {
        bool some = false;
        n = standing_for(tokens, i, &some);
        if (!n) n = number_standing(tokens, i);
        if (n) read_standing(r, i, n, some);
        n = n ? n : 1;
    }
}
