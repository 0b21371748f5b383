// SPDX-License-Identifier: MIT
// The same fault told again without its word: "the lid's dented and so is the base", "handle loose, lid as
// well", "a stain in one corner and another in the middle", "big dent on the side, a small one on the cap",
// "the hinges aren't rusted but the clasp is".
#include "notes/any.h"
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { FAR = 16 };

static bool ends(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || token_is(tokens, i, "and") ||
           token_is(tokens, i, "but");
}

static bool article_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"the", "its", "both", "a", "my"};
    return token_among(tokens, i, words, COUNT(words));
}

// The part at `i`, behind articles; where it ends, 0 if none.
static size_t part_at(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const sides[] = {"left", "right", "upper", "lower", "front", "back",
                                        "rear", "top",   "other", "inner", "outer", "bottom"};
    static const char *const inners[] = {"text", "plates", "maps", "prints", "pages", "illustrations"};
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    while (article_at(tokens, i)) i++;
    size_t to = i;
    bool part = false, one = false;
    while (to < tokens->count && to < i + WORDS_MOST && tokens->at[to].stop == STOP_NONE &&
           !r->scope.fault[to] && !one) {
        one = to > i && token_is(tokens, to, "one");
        bool side = token_among(tokens, to, sides, COUNT(sides));
        bool inner = to == i && token_among(tokens, to, inners, COUNT(inners)); // "edges foxed, text isn't"
        if (!r->part[to] && !side && !one && !inner) break;
        part |= r->part[to] || one || inner;
        to++;
    }
    *from = i;
    return part ? to : 0;
}

// The last fault before token `i`, near and in the same sentence (the one before, where `far`); NULL if none.
static const struct fault_hit *last_fault(const struct fault_reader *r, size_t i, bool far) {
    // "Chips with rust showing, and a bigger one": no rust is one
    bool one = ANY(&r->note->tokens, i, "one", "another", "two", "three") ||
               ANY(&r->note->tokens, i + 1, "one", "ones") || ANY(&r->note->tokens, i + 2, "one", "ones");
    for (size_t h = r->hit_count; h-- > 0;) {
        const struct fault_hit *hit = &r->hits[h];
        if (hit->from >= i) continue;
        if (one && hit->kinds[0]->mass && h > 0 && hit->to <= i && !r->hits[h - 1].kinds[0]->mass &&
            r->hits[h - 1].from >= scope_sentence_start(&r->scope, i))
            continue;
        if (hit->to > i || i - hit->to > FAR || hit->kinds[0]->form != FAULT) return NULL;
        size_t start = scope_sentence_start(&r->scope, i);
        if (hit->from < start && !far) return NULL;
        if (hit->from < start && start > 1 && hit->from < scope_sentence_start(&r->scope, start - 1))
            return NULL;
        for (size_t k = hit->to; k < i; k++) // "the lid is missing, the key too": told by tails.c
            if (ANY(&r->note->tokens, k, "missing", "gone", "lost", "absent", "lacking", "there", "here",
                    "present"))
                return NULL;
        static const uint16_t gone =
            STANCE_WITHDRAWN | STANCE_OTHER | STANCE_PAST | STANCE_UNKNOWN | STANCE_PLANNED;
        return fault_stance(r, hit) & gone ? NULL : hit;
    }
    return NULL;
}

static bool is_denied(const struct fault_reader *r, const struct fault_hit *hit) {
    uint16_t stance = fault_stance(r, hit);
    return (stance & (STANCE_DENIED | STANCE_NONE_SEEN)) &&
           !(stance & (STANCE_EXCEPT | STANCE_DOUBLE | STANCE_LIMITED));
}

// The part [from, to) has the fault of `hit`, or is without it.
static void tell_part(struct fault_reader *r, const struct fault_hit *hit, size_t from, size_t to,
                      bool denied) {
    const char *part = fault_place(r->note, from, to);
    const struct flaw *kind = kind_of_hit(r, hit, part);
    if (denied) {
        clear_add(r, kind, part, NULL, false, from, to);
        return;
    }
    struct fault_hit again = *hit;
    again.from = from;
    again.to = to;
    fault_tell(r, &again, kind, part, NULL);
}

// "So is the base", "same on the handle", "ditto the knob".
static size_t so_is(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    static const char *const openers[] = {
        "so is",         "so are",        "so has",          "so have",    "as is",         "as are",
        "same on",       "same with",     "same for",        "same at",    "same thing on", "same thing with",
        "same again on", "ditto",         "ditto for",       "ditto on",   "likewise",      "ditto with",
        "same goes for", "same story on", "same story with", "neither is", "nor is",        "nor are",
        "neither are",   "nor has",       "nor have",        "nor does",   "neither does",  "likewise on"};
    size_t n = token_longest(&r->note->tokens, i, openers, COUNT(openers));
    *to = n ? part_at(r, i + n, from) : 0;
    bool owns =
        n == 2 && ANY(&r->note->tokens, i + 1, "has", "have") && ANY(&r->note->tokens, i, "neither", "nor");
    if (owns && !ANY(&r->note->tokens, i + n, "the", "its")) return 0; // "neither has lens caps"
    return *to && ends(&r->note->tokens, *to) ? *to : 0;
}

// "Lid as well", "the base too", "and the handle is the same".
static size_t as_well(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    static const char *const closers[] = {"as well",     "too",        "also",        "likewise",
                                          "the same",    "is as well", "is too",      "is also",
                                          "are as well", "are too",    "is the same", "are the same",
                                          "has it too",  "same again", "ditto"};
    const struct tokens *tokens = &r->note->tokens;
    bool opens = i == 0 || tokens->at[i - 1].stop != STOP_NONE || token_is(tokens, i - 1, "and");
    *to = opens ? part_at(r, i, from) : 0;
    if (!*to) return 0;
    for (size_t k = 0; k < COUNT(closers); k++) {
        size_t size = token_phrase(tokens, *to, closers[k]);
        if (size && ends(tokens, *to + size)) return *to + size;
    }
    return 0;
}

// "But the clasp is", "the base isn't": the verb alone; `*denied` as it says.
static size_t verb_alone(const struct fault_reader *r, size_t i, size_t *from, size_t *to, bool *denied) {
    static const char *const verbs[] = {"is", "are", "has", "have", "does", "do"};
    static const char *const nots[] = {"isn't", "aren't", "hasn't", "haven't", "doesn't", "isnt", "arent"};
    const struct tokens *tokens = &r->note->tokens;
    bool opens = i > 0 && (tokens->at[i - 1].stop != STOP_NONE || token_is(tokens, i - 1, "but") ||
                           token_is(tokens, i - 1, "and") || token_is(tokens, i - 1, "though"));
    *to = opens ? part_at(r, i, from) : 0;
    if (!*to) return 0;
    *denied = token_among(tokens, *to, nots, COUNT(nots));
    size_t n = *denied || token_among(tokens, *to, verbs, COUNT(verbs)) ? 1 : 0;
    if (n && !*denied && token_is(tokens, *to + n, "not")) {
        n++;
        *denied = true;
    }
    return n && ends(tokens, *to + n) ? *to + n : 0;
}

static size_t read_part(struct fault_reader *r, size_t i) {
    size_t from = i, to = 0, end = so_is(r, i, &from, &to);
    if (!end) end = as_well(r, i, &from, &to);
    const struct fault_hit *hit = end ? last_fault(r, i, true) : NULL;
    if (hit) {
        tell_part(r, hit, from, to, is_denied(r, hit));
        return end;
    }
    bool denied = false;
    end = verb_alone(r, i, &from, &to, &denied);
    hit = end ? last_fault(r, i, false) : NULL;
    if (!hit || is_denied(r, hit) == denied) return i + 1;
    tell_part(r, hit, from, to, denied);
    note_take(r->note, to, end, TAKEN_SCOPE);
    return end;
}

// "Another", "a small one", "two more", "a few": stands for the fault; where it ends, 0 if none.
static size_t stands_for(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"another one", "another", "one or two",   "one",      "ones",
                                        "two",         "three",   "four",         "a few",    "a couple",
                                        "some more",   "more",    "one more",     "two more", "three more",
                                        "a few more",  "others",  "a couple more"};
    if (i >= r->note->tokens.count || r->note->taken[i] != TAKEN_NOT || r->scope.fault[i]) return 0;
    size_t n = token_longest(&r->note->tokens, i, words, COUNT(words));
    static const char *const sorts[] = {"smaller", "bigger",  "small",     "tiny",    "larger",  "large",
                                        "little",  "lighter", "deeper",    "more",    "further", "ones",
                                        "shorter", "longer",  "shallower", "fainter", "one",     "similar",
                                        "big",     "deep",    "long",      "bad",     "short",   "nasty"};
    static const char *const few[] = {"a",       "an",   "two", "three",   "four",
                                      "several", "some", "few", "another", "a couple of"};
    static const char *const pro[] = {"one", "ones"};
    if (!n) { // "a shallower one", "several lighter ones"
        size_t many = token_longest(&r->note->tokens, i, few, COUNT(few)), at = i + many;
        while (many && at < i + many + 2 && token_among(&r->note->tokens, at, sorts, COUNT(sorts)) &&
               !token_among(&r->note->tokens, at, pro, COUNT(pro)))
            at++;
        if (many && at > i + many && token_among(&r->note->tokens, at, pro, COUNT(pro))) return at + 1;
    }
    while (n && token_among(&r->note->tokens, i + n, sorts, COUNT(sorts))) n++;
    return n ? i + n : 0;
}

// What stands before it in its segment are degrees and small words alone.
static bool opens_segment(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {
        "a",        "the",     "and",     "with",   "plus", "also",   "there's", "there",
        "is",       "just",    "only",    "then",   "but",  "has",    "another", "much",
        "are",      "smaller", "bigger",  "small",  "tiny", "large",  "big",     "second",
        "slightly", "longer",  "shorter", "little", "very", "theres", "maybe"};
    const struct tokens *tokens = &r->note->tokens;
    while (i > 0 && tokens->at[i - 1].stop == STOP_NONE && !token_is(tokens, i - 1, "and")) {
        size_t n;
        if (!token_among(tokens, i - 1, words, COUNT(words)) && !degree_word(r, i - 1, &n)) return false;
        i--;
    }
    return i > 0;
}

// "No chips on the lid, two on the rim": a number of what was denied, behind a stop.
static bool is_counted_apart(const struct fault_reader *r, const struct fault_hit *hit, size_t i) {
    static const char *const vague[] = {"more", "others", "some more", "ones"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    while (at > hit->to && tokens->at[at - 1].stop == STOP_NONE && i - at < 4) at--;
    return at > 0 && tokens->at[at - 1].stop != STOP_NONE && !token_among(tokens, i, vague, COUNT(vague));
}

// "Rust on the blade and a bit on the socket": more of what has no number; where its words end, 0 if none.
static size_t more_of_it(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"a bit",      "a little",      "some",   "a touch",
                                        "a trace",    "lots",          "plenty", "a lot",
                                        "a bit more", "a little more", "more"};
    const struct tokens *tokens = &r->note->tokens;
    if (i >= tokens->count || r->note->taken[i] != TAKEN_NOT || r->scope.fault[i]) return 0;
    size_t n = token_longest(tokens, i, words, COUNT(words));
    if (!n ||
        !ANY(tokens, i + n, "on", "in", "at", "round", "around", "inside", "under", "underneath", "along"))
        return 0;
    const struct fault_hit *hit = last_fault(r, i, false);
    return hit && hit->kinds[0]->mass && !is_denied(r, hit) ? i + n : 0;
}

// "One the size of a coin on the base", "one as big as a pea by the lip": behind what it is likened to or
// measures; `i` where it is told nothing of its size.
static size_t behind_likeness(const struct fault_reader *r, size_t i) {
    static const char *const leads[] = {"the size of",     "about the size of", "size of",     "as big as",
                                        "about as big as", "as long as",        "as large as", "about",
                                        "maybe",           "roughly",           "nearly",      "almost"};
    enum { WORDS_MOST = 7 };
    const struct tokens *tokens = &r->note->tokens;
    bool figure = i < tokens->count && tokens->at[i].kind == TOKEN_FIGURE;
    size_t n = token_longest(tokens, i, leads, COUNT(leads)), from = 0;
    if (!n && !figure) return i;
    for (size_t at = i + n + 1; at < tokens->count && at < i + n + WORDS_MOST; at++) {
        if (tokens->at[at - 1].stop != STOP_NONE || r->scope.fault[at - 1]) return i;
        if (spot_preposition(tokens, at) && spot_place_at(r, at, &from)) return at;
    }
    return i;
}

// "Beside it", "next to them", "nearby": a place that is told by the one before it.
static size_t beside_it(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "beside it",  "by it",         "next to it", "near it",  "beside them",   "next to them",
        "near them",  "nearby",        "alongside",  "close by", "further on",    "alongside it",
        "just by it", "just below it", "below it",   "above it", "just above it", "behind it"};
    return token_longest(tokens, i, words, COUNT(words));
}

// What stands for a fault once more at `i`, with a place of its own: where the words for it end, and its
// place in [`*where`, `*where_to`). 0 if none.
static size_t again_at(const struct fault_reader *r, size_t i, size_t *where, size_t *where_to) {
    size_t end = stands_for(r, i), to = 0;
    const struct tokens *tokens = &r->note->tokens;
    if (!end) end = more_of_it(r, i);
    if (!end || end >= tokens->count || tokens->at[end].stop != STOP_NONE || token_is(tokens, end, "of") ||
        !opens_segment(r, i))
        return 0; // "two of the three turn": pieces, no fault
    size_t at = behind_likeness(r, end), beside = beside_it(tokens, at);
    if (beside) *where = at, to = at + beside;
    if (!to) to = spot_place_at(r, at, where);
    if (!to && (to = spot_bare_place(r, at)) != 0) *where = at;
    if (!to || !ends(tokens, to)) return 0;
    for (size_t k = end; k < to; k++) // "one is missing its ferrule"
        if (ANY(tokens, k, "missing", "lost", "gone", "lacks", "lacking", "without")) return 0;
    *where_to = to;
    return end;
}

bool fault_told_again(const struct fault_reader *r, size_t i) {
    static const char *const opens[] = {"one", "another", "a", "two", "three", "four", "several", "some"};
    const struct tokens *tokens = &r->note->tokens;
    size_t from, to;
    if (ANY(tokens, i, "and", "plus", "also", "then")) i++;
    return i > 0 &&
           (tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "and", "plus", "also", "then")) &&
           token_among(tokens, i, opens, COUNT(opens)) && again_at(r, i, &from, &to) > 0;
}

static size_t read_another(struct fault_reader *r, size_t i) {
    size_t from = 0, to = 0, end = again_at(r, i, &from, &to);
    if (!end) return i + 1;
    const struct fault_hit *hit = last_fault(r, i, true);
    if (!hit || (is_denied(r, hit) && !is_counted_apart(r, hit, i))) return i + 1; // again.c
    struct fault_hit again = *hit;
    again.from = i;
    again.to = end;
    const char *where = fault_place(r->note, from, to);
    struct record *record = r->note->record;
    const struct flaw *kind = kind_of_hit(r, hit, where);
    for (size_t k = 0; k < record->flaw_count; k++) // of the kind that it was told as
        if (record->flaws[k].span.from == r->note->tokens.at[hit->from].from) kind = record->flaws[k].kind;
    size_t known = record->flaw_count;
    fault_tell(r, &again, kind, NULL, where);
    int count = degrees_number(&r->note->tokens, i); // "two smaller along the edge"
    struct item_flaw *last = record->flaw_count > known ? &record->flaws[known] : NULL;
    if (last) last->of = 0, last->count = count > 1 ? count : 0;
    return to;
}

// "Rim has no chips, the foot has one", "the outside has three": the number stands for the fault.
static size_t read_has(struct fault_reader *r, size_t i) {
    static const char *const verbs[] = {"has", "have", "had", "got", "shows"};
    static const char *const numbers[] = {"one",      "two",     "three", "four", "five",   "six", "a few",
                                          "a couple", "several", "some",  "lots", "plenty", "many"};
    static const char *const sides[] = {"outside", "inside", "other",  "left",      "right", "back",
                                        "front",   "top",    "bottom", "underside", "rest",  "others"};
    const struct tokens *tokens = &r->note->tokens;
    bool opens = i > 0 && (tokens->at[i - 1].stop != STOP_NONE || token_is(tokens, i - 1, "but") ||
                           token_is(tokens, i - 1, "and") || token_is(tokens, i - 1, "though"));
    size_t from = i, to = opens ? part_at(r, i, &from) : 0;
    if (opens && !to) {
        while (article_at(tokens, from)) from++;
        to = token_among(tokens, from, sides, COUNT(sides)) ? from + 1 : 0;
    }
    if (!to || !token_among(tokens, to, verbs, COUNT(verbs))) return i + 1;
    size_t n = token_longest(tokens, to + 1, numbers, COUNT(numbers)), end = to + 1 + n, place = 0;
    size_t place_to = n && !ends(tokens, end) ? spot_place_at(r, end, &place) : 0;
    if (!n || !(ends(tokens, end) || place_to) || token_is(tokens, end, "of"))
        return i + 1; // "has plenty of spring left"
    const struct fault_hit *hit = last_fault(r, i, true);
    if (!hit) return i + 1;
    struct fault_hit again = *hit;
    again.from = to + 1;
    again.to = end;
    const char *part = fault_place(r->note, from, to),
               *where = place_to ? fault_place(r->note, place, place_to) : NULL;
    fault_tell(r, &again, kind_of_hit(r, hit, part), part, where);
    return end;
}

void read_repeats(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count;) {
        size_t next = read_part(r, i);
        if (next <= i + 1) next = read_has(r, i);
        i = next > i + 1 ? next : read_another(r, i);
    }
}
