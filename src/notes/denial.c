// SPDX-License-Identifier: MIT
// "No chips, cracks or crazing on the rim": a denial reaches over the list behind it, as in the tradition of
// NegEx (Chapman and others, 2001) and ConText (Harkema and others, 2009): a trigger before or behind, and
// words that end its reach. Here it ends at a stop, "but" and its like, a new statement ("a little wear"), a
// verb of its own, and a part with a fault ("no chips, lid cracked"). It never reaches further than the words
// it was said of.
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/denial_list.h"
#include "notes/denial_words.h"
#include "text/order.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_end_word(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"but",    "just",    "only",  "however", "though",     "although",
                                        "except", "besides", "apart", "aside",   "other than", "save for",
                                        "bar",    "minus",   "with",  "yet",     "beyond"};
    return token_longest(tokens, i, words, COUNT(words)) > 0;
}

static bool is_place_word(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"on",    "in",     "at",   "under", "inside",
                                        "along", "around", "near", "by",    "across"};
    return token_among(tokens, i, words, COUNT(words));
}

// "No lid rust on handle", written without stops: the lid is not there, and the rust has a place of its own.
// In "no chips on the rim" and "no lid chips" the fault is what is denied.
static bool opens_own(const struct scope *s, size_t from, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if (i != from + 1 || !s->fault[i] || tokens->at[i].kind != TOKEN_WORD) return false;
    size_t end = i + 1;
    while (end < tokens->count && s->fault[end]) end++;
    // What comes off is missing, and one fault is told behind it: "no lid hairline". "No lid chips" has none.
    static const char *const loose[] = {"lid",     "cover", "stopper", "box",    "key",    "shade",
                                        "case",    "plug",  "cord",    "lead",   "manual", "instructions",
                                        "chimney", "glass", "strap",   "battery"};
    static const char *const one[] = {"hairline", "chip", "crack", "dent", "tear", "stain"};
    bool ends = end >= tokens->count || tokens->at[end].stop != STOP_NONE;
    if (ends && end == i + 1 && (tokens->flat || tokens->shouts) && token_is(tokens, from - 1, "no") &&
        token_among(tokens, from, loose, COUNT(loose)) && token_among(tokens, i, one, COUNT(one)))
        return true;
    size_t rim = token_is(tokens, end, "to") ? end + 1 : tokens->count; // "no lid chip to rim"
    if (token_is(tokens, rim, "the")) rim++;
    return denial_is_part(s, from) && (is_place_word(tokens, end) || denial_is_part(s, rim));
}

// "No stations aerial bent", "not included shade got torn", dictated without stops: behind what is denied a
// part has a verb or a state of its own. "No lid chips" is a fault of the lid.
static bool opens_state(const struct scope *s, size_t from, size_t i) {
    static const char *const verbs[] = {"is", "are", "was", "has", "got", "gets", "looks", "needs", "feels"};
    static const char *const states[] = {"bent",   "torn", "gone",  "missing", "worn",  "broken",
                                         "loose",  "off",  "rusty", "stuck",   "split", "dirty",
                                         "sticky", "tore", "came",  "lost",    "shot",  "perished"};
    const struct tokens *tokens = &s->note->tokens;
    bool plain = token_is(tokens, from - 1, "no") || token_is(tokens, from - 1, "not") ||
                 token_is(tokens, from - 1, "without");
    if (!plain || i <= from || !denial_is_part(s, i)) return false;
    size_t next = i + 1;
    if (next >= tokens->count || tokens->at[i].stop != STOP_NONE) return false;
    const char *word = tokens->at[next].fold;
    size_t size = strlen(word);
    bool done = s->fault[next] && size > 4 && text_same(word + size - 2, "ed");
    // "No glass panels cracked" in a note with stops: one name of two words, and what it is not.
    bool named = !tokens->flat && !tokens->shouts && i == from + 1 && token_is(tokens, from - 1, "no") &&
                 (next + 1 >= tokens->count || tokens->at[next + 1].stop != STOP_NONE ||
                  ANY(tokens, next + 1, "or", "and", "anywhere", "that", "at"));
    if (named && !token_among(tokens, next, verbs, COUNT(verbs))) return false;
    return done || token_among(tokens, next, verbs, COUNT(verbs)) ||
           token_among(tokens, next, states, COUNT(states));
}

// "No shade rewired pat tested", without stops: what was done to the thing is no part of the "no".
static bool opens_deed(const struct scope *s, size_t from, size_t i) {
    static const char *const deeds[] = {"rewired", "tested",   "works",       "working",  "restored",
                                        "cleaned", "serviced", "refurbished", "polished", "untested"};
    return i > from && denial_is_part(s, from) && token_among(&s->note->tokens, i, deeds, COUNT(deeds));
}

// "No stains well one tiny spot": it opens an exception.
static bool is_well(const struct tokens *tokens, size_t i) {
    static const char *const opens[] = {"one",  "a",    "there", "theres", "there's", "except",  "maybe",
                                        "just", "only", "ok",    "okay",   "apart",   "actually"};
    return token_is(tokens, i, "well") && token_among(tokens, i + 1, opens, COUNT(opens));
}

// "Not tested rack missing": a part with a fault of its own begins another statement.
static bool opens_part(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    return !s->fault[i] && i + 1 < tokens->count && s->fault[i + 1] && denial_is_part(s, i);
}

// "Doesn't sit true as the rim's been knocked": the cause is there.
static bool gives_cause(const struct tokens *tokens, size_t i) {
    static const char *const joints[] = {"as", "because", "since", "cos", "cause", "where"};
    static const char *const subjects[] = {"the",     "its",      "it's",    "it", "one",
                                           "there's", "somebody", "someone", "my"};
    if (ANY(tokens, i, "because", "cos", "cause", "since") &&
        ANY(tokens, i + 1, "i", "we", "of", "a", "his", "her", "they", "they're", "he", "she", "this", "that",
            "i'm"))
        return true; // "not scrubbed because I was afraid for the paint"
    return token_among(tokens, i, joints, COUNT(joints)) &&
           token_among(tokens, i + 1, subjects, COUNT(subjects));
}

// "No patches have split", "no seams are open": what is denied is the verb's own subject.
static bool is_subjects_verb(const struct scope *s, size_t from, size_t i) {
    static const char *const verbs[] = {"have", "has", "are", "is", "were", "been"};
    const struct tokens *tokens = &s->note->tokens;
    enum { WORDS_MOST = 3 };
    if (!token_is(tokens, from - 1, "no") || i > from + WORDS_MOST ||
        !token_among(tokens, i, verbs, COUNT(verbs)))
        return false;
    size_t next = i + 1;
    while (token_is(tokens, next, "been") || token_is(tokens, next, "come")) next++;
    return next < tokens->count && tokens->at[next].stop == STOP_NONE && s->fault[next] &&
           (denial_is_state(&tokens->at[next]) || token_is(tokens, next, "open"));
}

// "Hasn't lost a tooth", "hasn't got a chip": what the verb takes.
static bool is_loss(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"lost",   "dropped",  "shed", "developed",
                                        "picked", "suffered", "taken"};
    static const char *const articles[] = {"a", "an", "one", "some"};
    return i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
           token_among(tokens, i, articles, COUNT(articles)) &&
           token_among(tokens, i - 1, verbs, COUNT(verbs));
}

// "No holes bigger than a dime": there are smaller ones.
static bool is_limited(const struct tokens *tokens, size_t from, size_t to) {
    static const char *const more[] = {"bigger", "larger", "worse", "wider", "longer", "deeper", "heavier"};
    for (size_t i = from; i < to; i++)
        if (token_among(tokens, i, more, COUNT(more)) && token_is(tokens, i + 1, "than")) return true;
    return false;
}

// "No moth lining torn under the arm", without stops: a part, and what has become of it.
static bool opens_broken(const struct scope *s, size_t i) {
    static const char *const states[] = {"lifting", "peeling", "flaking", "coming",  "hanging", "fraying",
                                         "sagging", "cut",     "bent",    "off",     "gone",    "worn",
                                         "split",   "tore",    "rotten",  "perished"};
    const struct tokens *tokens = &s->note->tokens;
    if (!denial_is_part(s, i) || i == 0 || denial_joins(tokens, i - 1)) return false;
    size_t next = i + 1;
    while (next < tokens->count &&
           ANY(tokens, next, "is", "are", "has", "s", "was", "all", "a", "bit", "badly"))
        next++;
    return next < tokens->count && s->fault[next] && !denial_joins(tokens, i) &&
           (denial_is_state(&tokens->at[next]) || token_among(tokens, next, states, COUNT(states)));
}

// "No dents on the tin scratches on the lid", without stops: a fault behind a place, with a place of its own.
static bool opens_flat(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if (i < 2 || !s->fault[i] || s->fault[i - 1] || denial_joins(tokens, i - 1)) return false;
    size_t end = i + 1;
    while (end < tokens->count && s->fault[end]) end++;
    bool placed = is_place_word(tokens, i - 2) || (i > 2 && is_place_word(tokens, i - 3));
    return placed && is_place_word(tokens, end);
}

// "No chips no cracks, gravy stain on the back too": where each has a "no" of its own, what has none is
// there. An "or" further on takes it into the list all the same.
static bool each_has_its_no(const struct scope *s, size_t from, size_t comma) {
    enum { AHEAD = 7 };
    const struct tokens *tokens = &s->note->tokens;
    if (from < 2 || !token_is(tokens, from - 1, "no") || tokens->at[comma].stop != STOP_COMMA) return false;
    size_t at = from - 1;
    while (at > 0 && (s->fault[at - 1] || tokens->at[at - 1].stop == STOP_COMMA)) at--;
    if (!at || at == from - 1 || !token_is(tokens, at - 1, "no")) return false;
    for (size_t i = comma + 1; i < tokens->count && i < comma + AHEAD; i++) {
        if (tokens->at[i].stop >= STOP_CLAUSE) break;
        if (ANY(tokens, i, "or", "nor", "no", "anywhere", "either")) return false;
    }
    return true;
}

// "Two have no handle and one is snapped": what the next one is.
static bool is_next_one(const struct tokens *tokens, size_t i) {
    static const char *const ones[] = {"one", "two", "three", "four", "some", "another", "most", "several"};
    static const char *const verbs[] = {"is", "are", "has", "have", "was", "were", "needs", "need", "wants"};
    return token_is(tokens, i, "and") && token_among(tokens, i + 1, ones, sizeof ones / sizeof *ones) &&
           token_among(tokens, i + 2, verbs, sizeof verbs / sizeof *verbs);
}

// "No damage, missing pieces or repairs": a word for all of it heads the list, which an "or" closes.
static bool is_whole_list(const struct scope *s, size_t comma) {
    static const char *const wholes[] = {"damage", "faults", "issues", "problems", "flaws", "defects",
                                         "fault",  "marks",  "wear",   "breaks",   "losses"};
    enum { AHEAD = 8 };
    const struct tokens *tokens = &s->note->tokens;
    if (comma == 0 || !token_among(tokens, comma - 1, wholes, COUNT(wholes))) return false;
    for (size_t i = comma + 1; i < tokens->count && i < comma + AHEAD; i++) {
        if (i > comma + 1 && ANY(tokens, i, "or", "nor")) return true;
        if (!s->fault[i] && tokens->at[i].stop != STOP_COMMA) return false;
    }
    return false;
}

// "It doesn't drip I put a washer in there is a dent", without stops: what there is is another statement.
static bool opens_there(const struct tokens *tokens, size_t i) {
    static const char *const thoughts[] = {"think", "believe", "know", "say",   "that", "if",  "sure",
                                           "mean",  "whether", "why",  "where", "how",  "and", "or"};
    bool there = ANY(tokens, i, "there's", "theres") ||
                 (token_is(tokens, i, "there") && ANY(tokens, i + 1, "is", "are"));
    return there && !token_among(tokens, i - 1, thoughts, COUNT(thoughts));
}

static size_t reach(const struct scope *s, size_t from, bool *looked) {
    const struct tokens *tokens = &s->note->tokens;
    bool held = false; // a fault word was met
    for (size_t i = from; i < tokens->count; i++) {
        size_t n;
        const struct token *token = &tokens->at[i];
        if (token->stop >= STOP_CLAUSE) return i;
        if (!s->fault[i] && denial_look(s, i, &n)) {
            *looked = true;
            i += n - 1;
            continue;
        }
        if (i > from && (is_end_word(tokens, i) || token_is(tokens, i, "no") || opens_own(s, from, i) ||
                         is_well(tokens, i) || opens_state(s, from, i) || opens_deed(s, from, i)))
            return i;
        if (gives_cause(tokens, i) || (i > from && is_next_one(tokens, i))) return i;
        // "No chimney, smells of paraffin": the "no" belongs to what is missing, and no list of faults goes
        // on.
        if (held && from > 0 && s->fault[from - 1] &&
            (tokens->at[i].stop == STOP_COMMA || token_is(tokens, i, "and")))
            return i;
        // "Hasn't been checked and the chrome is pitted": nothing was denied yet.
        if (!held && i > from && token_is(tokens, i, "and") && i + 1 < tokens->count &&
            (scope_states_own(tokens, i + 1) || s->positive[i + 1] ||
             ANY(tokens, i + 1, "it", "it's", "the", "i")))
            return i;
        if (!held && i > from + 2 && opens_there(tokens, i)) return i;
        if (held && each_has_its_no(s, from, i)) return i;
        if (held && denial_joins(tokens, i)) {
            size_t next = i + 1;
            while (next < tokens->count && denial_joins(tokens, next)) next++;
            bool comma = next == i + 1 && tokens->at[i].stop == STOP_COMMA;
            if (denial_list_ends(s, from, next) || !denial_list_goes_on(s, from, next, comma)) return i;
            i = next - 1;
            continue;
        }
        if (!held && i > from && token->stop == STOP_COMMA && !is_whole_list(s, i)) return i;
        if (held && from > 0 && (is_subjects_verb(s, from, i) || is_loss(tokens, i))) continue;
        bool opens = s->positive[i] && !denial_article(s, from, i);
        if (held && (opens || denial_ends_list(tokens, i) || opens_part(s, i))) return i;
        if (held && tokens->flat && (opens_flat(s, i) || opens_broken(s, i))) return i;
        held |= s->fault[i];
    }
    return tokens->count;
}

static size_t behind_start(const struct scope *s, size_t i) {
    size_t from = scope_clause_start(s, i);
    for (size_t at = i; at > from; at--)
        if (denial_ends_list(&s->note->tokens, at - 1) && at < i) return at - 1;
    return from;
}

// "Rust on the base, none on the lid", "one has a tear, none elsewhere": so of another place than the one
// before.
static bool is_of_elsewhere(const struct scope *s, size_t i, size_t end) {
    static const char *const heres[] = {"on",     "in",         "at",     "inside",  "elsewhere", "anywhere",
                                        "under",  "outside",    "to",     "round",   "along",     "else",
                                        "around", "underneath", "higher", "further", "near"};
    static const char *const places[] = {"on",    "in",     "at", "inside", "along", "near", "round",
                                         "under", "around", "to", "of",     "has",   "have", "one"};
    const struct tokens *tokens = &s->note->tokens;
    bool apart = i > 0 && (tokens->at[i - 1].stop >= STOP_COMMA || ANY(tokens, i - 1, "and", "but"));
    if (!apart || !token_among(tokens, end, heres, COUNT(heres))) return false;
    bool placed = false, fault = false;
    for (size_t at = i - 1; at > 0 && tokens->at[at - 1].stop < STOP_CLAUSE; at--) {
        placed |= token_among(tokens, at - 1, places, COUNT(places));
        fault |= s->fault[at - 1];
    }
    return placed && fault;
}

// "A crack in the back, the front has none": what has none stands before it, behind the fault.
static bool is_of_its_subject(const struct scope *s, size_t i) {
    static const char *const verbs[] = {"has", "have", "had", "shows", "show", "got"};
    static const char *const backs[] = {"it",   "they",  "these", "those", "this",
                                        "that", "there", "i",     "we",    "which"};
    const struct tokens *tokens = &s->note->tokens;
    if (!token_is(tokens, i, "none") || i < 2 || !token_among(tokens, i - 1, verbs, COUNT(verbs)))
        return false;
    size_t from = i - 1;
    while (from > 0 && tokens->at[from - 1].stop == STOP_NONE && !s->fault[from - 1] &&
           !ANY(tokens, from - 1, "but", "and"))
        from--;
    return from > 0 && from < i - 1 && !s->fault[from - 1] &&
           !token_among(tokens, i - 2, backs, COUNT(backs));
}

// "Lens cracked, burner isn't there": of a clause that names no fault a part lacks, and nothing before it is
// denied.
static bool lacks_a_part(const struct scope *s, size_t i) {
    static const char *const cues[] = {"not", "isn't", "aren't", "is", "are"};
    const struct tokens *tokens = &s->note->tokens;
    if (!token_among(tokens, i, cues, COUNT(cues))) return false;
    size_t from = i;
    while (from > 0 && tokens->at[from - 1].stop == STOP_NONE && tokens->at[from - 1].kind != TOKEN_SIGN &&
           !s->fault[from - 1] && !ANY(tokens, from - 1, "and"))
        from--;
    bool joined = from > 0 && token_is(tokens, from - 1, "and") &&
                  from + 1 < i && // "lid dented and the key isn't there"
                  (spot_article(tokens, from) || ANY(tokens, from, "one", "two", "both", "its", "some"));
    if (joined) return true;
    static const char *const backs[] = {"it", "they", "these", "those", "any", "such", "that", "this"};
    bool back = from < i && token_among(tokens, from, backs, COUNT(backs));
    return from > 0 && from < i && tokens->at[from - 1].stop == STOP_COMMA && !back;
}

// "Chips on the rim, none go far", "cracks, none out": of those that there are.
static bool is_of_some(const struct tokens *tokens, size_t i) {
    return token_is(tokens, i, "none") && i > 0 && tokens->at[i - 1].stop == STOP_COMMA &&
           ANY(tokens, i + 1, "go", "goes", "out", "run", "runs", "through", "show", "shows", "lost",
               "serious", "reach", "reaches", "of", "come", "comes", "big", "large", "long", "moving",
               "open");
}

// "Chip free", "smoke-free": the word before alone; "chips: none" the clause before.
static void read_behind(struct scope *s, size_t i, size_t n, enum stance stance) {
    const struct tokens *tokens = &s->note->tokens;
    if (token_is(tokens, i, "free")) {
        size_t from = i;
        while (from > 0 && s->fault[from - 1]) from--;
        if (token_is(tokens, i + n, "of") || token_is(tokens, i + n, "from")) return;
        scope_mark(s, from, i, stance, i);
        return;
    }
    size_t from = i;
    if (is_of_elsewhere(s, i, i + n) || is_of_its_subject(s, i) || is_of_some(tokens, i)) return;
    if (i > 0 && tokens->at[i - 1].stop == STOP_CLAUSE) from = i - 1; // "cracks: none"
    if (lacks_a_part(s, i)) return;
    if (tokens->flat && token_is(tokens, i, "none")) { // "one pocket unstitched zip none": of the word before
        while (from > 0 && (s->fault[from - 1] || denial_is_part(s, from - 1)) &&
               tokens->at[from - 1].stop == STOP_NONE)
            from--;
        scope_mark(s, from, i, stance, i);
        return;
    }
    scope_mark(s, behind_start(s, from ? from : 0), i, stance, i);
}

// "No bigger than a grain of salt", "no more than an inch": how much, and no denial.
// "Doesn't zero", "stuck at zero", "zero adjuster stripped": where a scale begins, and no denial.
static bool is_set_to_zero(const struct tokens *tokens, size_t i) {
    static const char *const marks[] = {
        "adjuster", "adjustment", "adjust", "setting", "point", "mark",  "screw", "line",     "knob", "reset",
        "stop",     "error",      "button", "lever",   "key",   "wheel", "catch", "position", "end",  "pin"};
    static const char *const set[] = {"doesn't",  "doesnt", "won't", "wont",   "to",    "can't", "at",
                                      "you",      "on",     "past",  "over",   "under", "don't", "cannot",
                                      "off",      "from",   "the",   "not",    "below", "above", "its",
                                      "couldn't", "quite",  "near",  "didn't", "i"};
    if (!token_is(tokens, i, "zero")) return false;
    return token_among(tokens, i + 1, marks, sizeof marks / sizeof *marks) ||
           (i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
            token_among(tokens, i - 1, set, sizeof set / sizeof *set));
}

static bool is_measure(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"bigger",  "larger", "more",    "longer",   "wider",     "worse",
                                        "deeper",  "less",   "smaller", "thicker",  "doubt",     "wonder",
                                        "problem", "idea",   "fewer",   "surprise", "surprises", "secret"};
    if (token_is(tokens, i, "no") && token_is(tokens, i + 2, "of") &&
        (token_is(tokens, i + 1, "end") || token_is(tokens, i + 1, "shortage") ||
         token_is(tokens, i + 1, "lack")))
        return true; // "no end of scratches"
    if (is_set_to_zero(tokens, i)) return true;
    bool no = token_is(tokens, i, "no"), not = token_is(tokens, i, "not");
    if (not &&(ANY(tokens, i + 1, "just", "surprised", "surprising", "surprisingly", "forgetting") ||
               token_phrase(tokens, i + 1, "to mention")))
        return true; // "not just scratches"
    bool alone =
        no || token_is(tokens, i, "nothing"); // "is it clean? No, scratches", "burnt to nothing, cracks"
    if (alone && i + 1 < tokens->count && tokens->at[i + 1].stop != STOP_NONE &&
        !token_is(tokens, i + 1, ":"))
        return true;
    return no && token_among(tokens, i + 1, words, COUNT(words));
}

// "Never seen one without", "none come without", "far from free of": there, as on all of them.
static bool is_always(const struct tokens *tokens, size_t i) {
    enum { FAR = 5 };
    if (!ANY(tokens, i, "without", "free")) return false;
    for (size_t at = i; at > 0 && i - at < FAR && tokens->at[at - 1].stop == STOP_NONE; at--)
        if (ANY(tokens, at - 1, "never", "none", "nobody", "rarely", "seldom", "hardly", "far") ||
            (ANY(tokens, at - 1, "not", "won't", "don't", "can't", "cannot", "no", "wouldn't") && at < i &&
             ANY(tokens, i - 1, "one", "them", "these", "any", "come", "comes", "are", "is", "those")))
            return true;
    return false;
}

// "No chips I don't think little scratch inside": of what was denied before. "I don't think there's a chip"
// denies.
static bool is_thought(const struct scope *s, size_t i) {
    static const char *const there[] = {"there", "there's", "theres", "a", "an"};
    const struct tokens *tokens = &s->note->tokens;
    return token_is(tokens, i, "don't") && token_is(tokens, i + 1, "think") && i + 2 < tokens->count &&
           s->positive[i + 2] && !token_among(tokens, i + 2, there, COUNT(there));
}

static bool is_nil_behind(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if ((!token_is(tokens, i, "nil") && !token_is(tokens, i, "zero")) || is_set_to_zero(tokens, i))
        return false;
    return s->fault[i - 1] && (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE);
}

static void mark_denied(struct scope *s, size_t cue, size_t from, size_t to, enum stance plain) {
    unsigned stance = denial_bound(s, cue, from, to, plain);
    if (stance) scope_mark(s, from, to, (enum stance)stance, cue);
}

bool denial_is_own(const struct fault_reader *r, const struct fault_hit *hit, size_t cue) {
    static const char *const own[] = {"won't",  "wont",     "doesn't",  "doesnt", "can't",
                                      "cannot", "couldn't", "wouldn't", "didn't"};
    static const char *const uses[] = {"close", "closes", "shut", "shuts", "fasten", "latch",
                                       "hold",  "stay",   "work", "works", "play",   "fire"};
    const struct tokens *tokens = &r->note->tokens;
    if (cue == hit->from) return token_among(tokens, cue, own, COUNT(own));
    return cue > hit->from && cue < hit->to && token_among(tokens, hit->to - 1, uses, COUNT(uses));
}

// "Never been repaired", "never had a crack": what was not so in the past is no finding of today. "Never
// leaks" and "never saw a chip" are.
bool denial_is_history(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const done[] = {"been", "had", "torn", "broken", "split", "bent", "cut", "worn"};
    const struct tokens *tokens = &r->note->tokens;
    size_t cue = r->scope.cue[hit->from], next = cue;
    while (next < tokens->count && next < cue + 2 && !token_is(tokens, next, "never")) next++;
    if (next >= tokens->count || !token_is(tokens, next, "never") || ++next >= tokens->count) return false;
    size_t size = strlen(tokens->at[next].fold);
    return token_among(tokens, next, done, COUNT(done)) ||
           (r->scope.fault[next] && size > 4 && text_same(tokens->at[next].fold + size - 2, "ed"));
}

bool denial_is_of_rest(const struct note *note, size_t i) {
    return i > 0 && note->tokens.at[i - 1].stop == STOP_NONE &&
           (ANY(&note->tokens, i, "elsewhere", "otherwise") ||
            token_phrase(&note->tokens, i, "anywhere else"));
}

// "No chips on the others", "no stains on the rest of them": of which ones, where that is no part.
const char *denial_rest(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (denial_is_of_rest(note, i)) return "elsewhere";
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE || !ANY(tokens, i, "on", "in", "to")) return NULL;
    size_t at = i + 1;
    while (ANY(tokens, at, "any", "either", "of", "the", "all")) at++;
    bool rest = token_is(tokens, at, "rest") || token_is(tokens, at, "others");
    bool counted =
        token_is(tokens, at, "other") && ANY(tokens, at + 1, "two", "three", "four", "five", "six", "seven",
                                             "ones", "one", "eleven", "ten", "nine", "eight");
    return rest || counted ? token_is(tokens, at + 1, "one") ? "the other one" : "the others" : NULL;
}

// "Scratches on the lid, none deep", "worm holes, none of them fresh": some are there, and none are so bad.
static bool is_none_so(struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    static const char *const between[] = {"of",         "them", "are",   "is",   "too",
                                          "very",       "that", "these", "look", "particularly",
                                          "especially", "all",  "really"};
    static const char *const degrees[] = {
        "deep",       "big",   "bad",     "large",    "sharp",  "fresh",  "through", "long",
        "serious",    "wide",  "major",   "heavy",    "severe", "active", "live",    "significant",
        "structural", "new",   "huge",    "terrible", "badly",  "deeply", "obvious", "massive",
        "recent",     "open",  "bigger",  "worse",    "larger", "longer", "over",    "more",
        "important",  "awful", "running", "growing"};
    size_t at = i + 1;
    while (token_among(tokens, at, between, COUNT(between))) at++;
    if (!token_among(tokens, at, degrees, COUNT(degrees))) return false;
    if (!s->fault[at]) scope_mark(s, at, at + 1, STANCE_DENIED, i);
    return true;
}

// "The colors didn't run", "I dropped it and it did not chip or crack": what was tried and did not come
// about. "I didn't crack it" is of who did it, and "didn't get the stain out" has a verb of its own.
static bool read_did_not(struct scope *s, size_t i) {
    static const char *const hands[] = {"i", "we", "he", "she", "they", "you"};
    static const char *const objects[] = {"it", "them", "that", "the", "this", "any", "either", "anything"};
    const struct tokens *tokens = &s->note->tokens;
    bool apart = token_is(tokens, i, "did") && token_is(tokens, i + 1, "not");
    if (!apart && !token_is(tokens, i, "didn't")) return false;
    size_t verb = i + (apart ? 2 : 1);
    while (ANY(tokens, verb, "even", "ever", "really", "actually", "seem", "to")) verb++;
    size_t next = verb + 1; // "didn't shrink, fade or fray"
    while (next < tokens->count && denial_joins(tokens, next)) next++;
    bool listed =
        next > verb + 1 && next < tokens->count && s->fault[next] && !s->fault[verb] &&
        !ANY(tokens, verb, "see", "find", "notice", "look", "work", "test", "check", "clean", "fix", "try");
    if (listed) verb = next;
    if (verb >= tokens->count || !s->fault[verb] || (!listed && tokens->at[verb - 1].stop != STOP_NONE))
        return false;
    if (i > 0 && token_among(tokens, i - 1, hands, COUNT(hands)) &&
        token_among(tokens, verb + 1, objects, COUNT(objects)))
        return false;
    bool looked = false;
    mark_denied(s, i, verb, reach(s, verb, &looked), STANCE_DENIED);
    return true;
}

// "A nibble on the flange, not visible": it was told where it is, and only does not show.
static bool is_told_before(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if (i < 2 || !ANY(tokens, i + 1, "visible", "seen") ||
        (tokens->at[i - 1].stop != STOP_COMMA && !ANY(tokens, i - 1, "but", "and", "though")))
        return false;
    bool fault = false, told = false;
    for (size_t at = scope_sentence_start(s, i); at + 1 < i; at++) {
        if (ANY(tokens, at, "no", "any", "not", "without")) return false;
        told |= ANY(tokens, at, "a", "an", "one", "two", "three", "some", "has", "have", "there's", "small",
                    "tiny", "slight") ||
                (fault && spot_preposition(tokens, at));
        fault |= s->fault[at];
    }
    return fault && told;
}

void scope_denial(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        bool number = token_is(tokens, i + 1, ".") && tokens->at[i + 1].stop == STOP_NONE && // "No. 3"
                      i + 2 < tokens->count && tokens->at[i + 2].kind == TOKEN_FIGURE;
        number &= i == 0 || !token_is(tokens, i - 1, "?");
        if (tokens->at[i].capital && (s->note->taken[i] == TAKEN_MARK || number)) continue;
        if (read_did_not(s, i) || scope_nobody(s, i)) continue;
        size_t n, m;
        const struct cue *cue = denial_behind(s, i, &n);
        const struct cue *first = denial_before(s, i, &m);
        if (!cue && i > 0 && is_nil_behind(s, i)) { // "cracks nil"
            read_behind(s, i, 1, STANCE_DENIED);
            continue;
        }
        if (cue && token_is(tokens, i, "none") &&
            (ANY(tokens, i + 1, "missing", "lost", "gone", "short", "lacking") || is_none_so(s, i))) {
            if (i + 1 < tokens->count && s->fault[i + 1]) scope_mark(s, i + 1, i + 2, STANCE_DENIED, i);
            continue; // "two buttons loose, none missing"
        }
        bool of_before = tokens->flat && i > 0 && s->fault[i - 1] && i + 2 < tokens->count && // "rust none
                         s->fault[i + 1] && s->fault[i + 2] &&
                         !denial_is_state(&tokens->at[i + 1]); // paint gone"
        size_t none = cue && token_is(tokens, i, "none") && !of_before ? denial_none_are(s, i) : 0;
        if (none) { // "no pages missing, none torn"
            bool looked = false;
            scope_mark(s, i + 1, reach(s, none, &looked), STANCE_DENIED, i);
            continue;
        }
        if (cue && ANY(tokens, i, "nowhere") && i > 0 &&
            ANY(tokens, i - 1, "goes", "leads", "going", "went", "go", "gets"))
            continue; // "a crack that goes nowhere"
        bool then = cue && ANY(tokens, i, "not") && is_told_before(s, i);
        then = then || (cue && ANY(tokens, i, "not") &&
                        ANY(tokens, i + n, "when", "once", "if", "unless", "until", "with", "from"));
        if (then) { // "a chip on the peg, not seen when it's in"
            i += n - 1;
            continue;
        }
        if (cue && n >= m) {
            read_behind(s, i, n, cue->kind == DENIES ? STANCE_DENIED : STANCE_NONE_SEEN);
            i += n - 1;
            continue;
        }
        static const char *const later[] = {"till", "until", "til"}; // "didn't notice till I got it home"
        bool through = first && ANY(tokens, i + m, "through") && ANY(tokens, i + m - 1, "see"); // "for dust"
        if (!first || through || is_measure(tokens, i) || is_thought(s, i) ||
            token_among(tokens, i + m, later, 3))
            continue;
        if (m == 1 && tokens->at[i + m < tokens->count ? i + m : i].stop == STOP_COMMA &&
            ANY(tokens, i, "doesn't", "don't", "didn't", "isn't", "aren't", "won't", "hasn't", "doesnt",
                "isnt"))
            continue; // "runs but strike doesn't, brass tarnished": its verb stood before
        bool looked = first->kind == LOOKED_FOR;
        size_t to = reach(s, i + m, &looked), from = i + m;
        static const char *const small[] = {"no", "not", "any", "a", "have", "has", "got", "find", "see"};
        while (from > i + 1 && s->fault[from - 1] && !token_among(tokens, from - 1, small, COUNT(small)))
            from--; // "not the ghost of a crack"
        if (is_limited(tokens, from, to))
            scope_mark(s, from, to, STANCE_LIMITED, i);
        else if (is_always(tokens, i))
            scope_mark(s, from, to, STANCE_DOUBLE, i);
        else
            mark_denied(s, i, from, to, looked ? STANCE_NONE_SEEN : STANCE_DENIED);
        i += m - 1;
    }
    scope_answered(s);
    scope_vain(s);
    scope_presupposed(s); // what is not known was read before
}
