// SPDX-License-Identifier: MIT
// Places that are told otherwise than beside the fault: by who lacks a part ("the lid has no knob"), by the
// noun that a fault stands before ("a bent corner"), by what the first of several verbs is said of ("clasp
// shuts, pops open"), at the head of a denial ("inside there's no stain, only rust") and by what one touches
// ("flickers if you move the plug").
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { WORDS_MOST = 4 };

static bool opens_clause(const struct tokens *tokens, size_t i) {
    return i == 0 || tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "and", "but", "so", "only");
}

// The parts that end before token `to` and open a clause, behind their article; false where none do.
static bool subject_ending(const struct fault_reader *r, size_t to, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    size_t start = to;
    while (start > 0 && to - start < WORDS_MOST && r->part[start - 1] && !r->scope.fault[start - 1] &&
           r->note->taken[start - 1] != TAKEN_TYPE && tokens->at[start - 1].stop == STOP_NONE)
        start--;
    if (start == to) return false;
    while (start > 0 && spot_side(tokens, start - 1) && tokens->at[start - 1].stop == STOP_NONE) start--;
    size_t first = start;
    if (first > 0 && spot_article(tokens, first - 1)) first--;
    if (!opens_clause(tokens, first) && tokens->at[first - 1].kind == TOKEN_WORD && first == start) {
        first--; // "coin battery door"
        if (first > 0 && spot_article(tokens, first - 1)) first--;
    }
    *from = start;
    return opens_clause(tokens, first);
}

// "Has two brass screws gone": the "has" before how many of them; `at` where there is none.
static size_t has_before(const struct note *note, size_t at) {
    enum { BACK = 5 };
    const struct tokens *tokens = &note->tokens;
    size_t i = at;
    while (i > 0 && at - i < BACK && tokens->at[i - 1].stop == STOP_NONE &&
           (ANY(tokens, i - 1, "a", "an", "its", "both", "of", "the", "some", "several") ||
            degrees_number(tokens, i - 1) > 0 || note->taken[i - 1] == TAKEN_VALUE))
        i--;
    return i > 0 && tokens->at[i - 1].stop == STOP_NONE && ANY(tokens, i - 1, "has", "have", "had") ? i - 1
                                                                                                    : at;
}

bool spot_owner(const struct fault_reader *r, size_t at, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    at = has_before(r->note, at);
    if (ANY(tokens, at, "no", "without", "lost", "missing", "lacking", "any", "short")) {
        if (at == 0 || !ANY(tokens, at - 1, "has", "have", "had", "got", "is", "are", "hasn't", "with"))
            return false;
        at--;
        if (at > 0 && token_is(tokens, at, "got")) at -= ANY(tokens, at - 1, "has", "have", "hasn't", "'s");
    } else if (!ANY(tokens, at, "has", "have", "had", "lacks", "lack", "hasn't", "lost", "got"))
        return false;
    if (at == 0 || tokens->at[at - 1].stop != STOP_NONE) return false;
    *to = at;
    return spot_piece(r, at, from, to) || (*to = at, subject_ending(r, at, from)) ||
           spot_plain_subject(r, at, from);
}

// "Enamel on the top scorched", "the gilding at the rim has rubbed": where it is of a stuff that is no part.
bool spot_of_stuff(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    enum { GAP = 4, WORDS = 3 };
    static const char *const between[] = {"is",    "are",    "has",  "have", "been",     "was",
                                          "all",   "bit",    "a",    "very", "slightly", "badly",
                                          "quite", "rather", "also", "gone", "well",     "little"};
    static const char *const stuffs[] = {
        "enamel",     "glaze",     "paint",   "gilding",  "gilt",    "gold",    "silver", "silvering",
        "plate",      "plating",   "nickel",  "chrome",   "varnish", "lacquer", "veneer", "finish",
        "decoration", "transfer",  "pattern", "design",   "print",   "leather", "velvet", "felt",
        "fabric",     "wood",      "metal",   "rubber",   "brass",   "copper",  "tin",    "color",
        "colour",     "lettering", "tinning", "japanning"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    while (at > 0 && i - at < GAP && tokens->at[at - 1].stop == STOP_NONE &&
           token_among(tokens, at - 1, between, COUNT(between)))
        at--;
    *to = at;
    while (at > 0 && *to - at < WORDS && r->part[at - 1] && !r->scope.fault[at - 1] &&
           tokens->at[at - 1].stop == STOP_NONE)
        at--;
    *from = at;
    if (at == *to) return false;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE && spot_article(tokens, at - 1)) at--;
    return at > 1 && spot_preposition(tokens, at - 1) && tokens->at[at - 2].stop == STOP_NONE &&
           token_among(tokens, at - 2, stuffs, COUNT(stuffs)) && r->note->taken[at - 2] != TAKEN_TYPE;
}

// "Has a wooden grip, split": what it has, where the word behind the comma is all that is said of it.
bool spot_of_object(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    enum { BACK = 4 };
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    if (i < 4 || tokens->at[i - 1].stop != STOP_COMMA || !degree_is_state(r, hit) || !r->part[i - 2] ||
        r->note->taken[i - 2] == TAKEN_TYPE ||
        (hit->to < tokens->count && tokens->at[hit->to].stop == STOP_NONE))
        return false;
    *to = i - 1;
    *from = i - 2;
    while (*from > 0 && r->part[*from - 1] && tokens->at[*from - 1].stop == STOP_NONE) --*from;
    for (size_t at = *from; at > 0 && at + BACK > *from && tokens->at[at - 1].stop == STOP_NONE; at--) {
        if (ANY(tokens, at - 1, "has", "have")) return true;
        if (r->scope.fault[at - 1] || spot_preposition(tokens, at - 1)) return false;
    }
    return false;
}

// "Foxed but only the margins", "rust, mostly the hinges": a part behind a word that narrows.
size_t spot_narrowed(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const words[] = {"only",    "just",    "mostly",    "mainly",
                                        "chiefly", "largely", "especially"};
    enum { PART_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    if (i < tokens->count && tokens->at[i].stop == STOP_COMMA) i++;
    if (token_is(tokens, i, "but")) i++;
    if (!token_among(tokens, i, words, COUNT(words)) || !token_is(tokens, i + 1, "the")) return 0;
    size_t at = i + 2;
    while (at < tokens->count && at < i + 2 + PART_MOST && r->part[at] && !r->scope.fault[at]) at++;
    if (at == i + 2) return 0;
    *from = i + 2;
    return at >= tokens->count || tokens->at[at].stop != STOP_NONE || token_is(tokens, at, "and") ? at : 0;
}

// "Let the hem down", "took the sleeves up": what was taken up is the part.
bool spot_let_out(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, hit->from, "let", "took", "taken", "take", "turned")) return false;
    for (size_t i = hit->from + 1; i < hit->to; i++) {
        if (!r->part[i] || !spot_article(tokens, i - 1)) continue;
        spot->part_from = i;
        spot->part_to = i + 1;
        return true;
    }
    return false;
}

// "A hairline", "the tape is taped": a word of the kind's own name is no part of the thing.
bool spot_names_kind(const struct fault_reader *r, const struct fault_hit *hit, size_t from, size_t to) {
    static const char *const words[] = {"tape", "line", "hair", "patch", "ring", "glue", "set"};
    static const char *const stuffs[] = {"ink", "oil",  "tea",    "coffee", "wine",
                                         "tar", "soot", "grease", "paint"};
    const struct tokens *tokens = &r->note->tokens;
    const char *noun = hit->kinds[0]->noun;
    if (to == from + 1 && !strcmp(hit->kinds[0]->rule.id, "warped") &&
        ANY(tokens, from, "bow", "twist", "kink"))
        return true; // "has a bow in it"
    if (to == from + 1 && ANY(tokens, from, "tooth", "teeth") && ANY(tokens, from + 1, "mark", "marks"))
        return true;
    if (to == from + 1 && to == hit->from && !strcmp(hit->kinds[0]->rule.id, "stain") &&
        token_among(tokens, from, stuffs, COUNT(stuffs)))
        return true; // "ink stained"
    return to == from + 1 && noun && token_among(tokens, from, words, COUNT(words)) &&
           strstr(noun, tokens->at[from].one);
}

bool spot_of_verbs(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    if (spot_of_heading(r, hit, from, to)) return true;
    enum { VERBS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t behind = hit->from, n; // "folds, a bit stiff", "stitched, an old mend"
    while (behind > 0 && tokens->at[behind - 1].stop == STOP_NONE && hit->from - behind < VERBS_MOST &&
           (spot_article(tokens, behind - 1) ||
            ANY(tokens, behind - 1, "bit", "old", "neat", "very", "quite", "is", "are", "has", "but") ||
            (degree_word(r, behind - 1, &n) && n == 1)))
        behind--;
    if (behind < 3 || tokens->at[behind - 1].stop != STOP_COMMA) return false;
    size_t start = scope_clause_start(&r->scope, behind - 1), at = start;
    while (at < behind && tokens->at[at].stop != STOP_NONE) at++;
    if (spot_article(tokens, at)) at++;
    while (at < behind && spot_side(tokens, at)) at++;
    *from = start = at;
    while (at < behind && r->part[at] && r->note->taken[at] != TAKEN_TYPE && at < start + WORDS_MOST) at++;
    *to = at;
    if (at == start) return false;
    size_t verb = at;
    while (at < behind && tokens->at[at].stop == STOP_NONE && at < verb + VERBS_MOST && !r->part[at]) at++;
    const char *word = tokens->at[verb].fold;
    size_t size = strlen(word);
    bool does = size > 3 && word[size - 1] == 's' && word[size - 2] != 's'; // "clicks", "closes"
    bool mended = hit->kinds[0]->class == CLASS_REPAIR && ANY(tokens, verb, "is", "has", "are", "been") &&
                  behind < hit->from;
    if (!mended && !degree_is_state(r, hit) && hit->kinds[0]->class == CLASS_DAMAGE && fault_by_noun(r, hit))
        return false; // "lock works, some rust": on no lock
    return (does || mended) && at > verb && at + 1 == behind && tokens->at[at].stop == STOP_COMMA;
}

size_t spot_fronted(const struct fault_reader *r, size_t i, size_t *from) {
    enum { FAR = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, i), only = i;
    while (only > start && i - only < FAR && !ANY(tokens, only, "only", "just", "but", "though")) only--;
    if (only == start || !ANY(tokens, only, "only", "just", "but", "though")) return 0;
    bool alone = spot_adverb(tokens, start); // "underneath there's no"
    size_t to = alone ? start + 1 : spot_place_at(r, start, from);
    if (!to || to >= only) return 0;
    while (to < only && tokens->at[to].stop == STOP_COMMA) to++;
    if (!ANY(tokens, to, "there's", "theres", "there", "it's", "its", "it", "no", "nothing")) return 0;
    for (size_t k = to; k < only; k++)
        if (r->part[k] && !r->scope.fault[k]) return 0; // another place has been named since
    if (alone) *from = start;
    return alone ? start + 1 : spot_place_at(r, start, from);
}

size_t spot_touched(const struct fault_reader *r, const struct fault_hit *hit, size_t *from) {
    enum { VERB_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to;
    if (hit->kinds[0]->class != CLASS_FUNCTION) return 0;
    if (at < tokens->count && tokens->at[at].stop == STOP_COMMA) at++;
    if (ANY(tokens, at - 1, "if", "when", "unless", "whenever")) at--; // "drops out if" of its own words
    if (!ANY(tokens, at, "if", "when", "unless", "whenever", "until")) return 0;
    if (!ANY(tokens, at + 1, "you", "i", "one")) return 0;
    size_t verb = at + 2;
    for (at = verb; at < verb + VERB_MOST && at < tokens->count && !ANY(tokens, at, "the", "its");) at++;
    if (at == verb || !ANY(tokens, at, "the", "its")) return 0;
    at++;
    *from = at;
    while (at < tokens->count && at < *from + WORDS_MOST && r->part[at] && !r->scope.fault[at]) at++;
    return at > *from ? at : 0;
}

// "The other is rusty", "three turn, the fourth is stiff".
static bool is_rest(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "other", "others") || (i > 0 && token_is(tokens, i - 1, "the") &&
                                                 ANY(tokens, i, "third", "fourth", "fifth", "sixth", "last"));
}

bool spot_own_clause(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"is",   "are",   "has",    "have", "was",
                                        "were", "isn't", "aren't", "looks"};
    static const char *const same[] = {
        "it",    "they",   "one", "both",  "some",  "most",  "all",     "each",   "none",  "rest", "that",
        "which", "others", "two", "three", "other", "there", "neither", "either", "still", "also", "now"};
    if (!(ANY(tokens, i, "and", "but") || (i < tokens->count && tokens->at[i].stop == STOP_COMMA)))
        return false;
    size_t at = i + 1;
    if (ANY(tokens, at, "and", "but")) at++;
    while (spot_article(tokens, at)) at++;
    if (at > i + 1 && spot_side(tokens, at)) at++; // ", the left rocker has"
    return at + 1 < tokens->count && tokens->at[at].kind == TOKEN_WORD && tokens->at[at].stop == STOP_NONE &&
           token_among(tokens, at + 1, verbs, COUNT(verbs)) && !token_among(tokens, at, same, COUNT(same));
}

bool spot_is_of_all(const struct fault_reader *r, const struct fault_hit *hit) {
    return hit->kinds[0]->class == CLASS_ODOR || hit->kinds[0]->class == CLASS_FEATURE ||
           (hit->kinds[0]->class == CLASS_FUNCTION &&
            ANY(&r->note->tokens, hit->to - 1, "play", "start", "record", "print", "charge", "heat"));
}

// "The second one", "the small one": the token that says which one, where "one" stands at `i`; 0 for a
// number.
size_t spot_which_one(const struct tokens *tokens, size_t i) {
    if (i < 2 || !ANY(tokens, i, "one", "one's") || tokens->at[i - 1].stop != STOP_NONE) return 0;
    return token_is(tokens, i - 2, "the") && spot_tells_which(tokens, i - 1) ? i - 1 : 0;
}

// "Teeth are dull and one is": the noun at `i` opens the sentence at `start`, though words of a fault hold
// it.
static bool opens_sentence(const struct tokens *tokens, size_t start, size_t i) {
    while (start < i && (spot_article(tokens, start) || spot_side(tokens, start))) start++;
    return start == i;
}

// "Legs lock but one", "draws slide well and the second one": a word that could be a part, behind the parts
// that open the sentence at `start`, is what they do.
static bool is_verb_of_parts(const struct fault_reader *r, size_t start, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    while (start + 1 < i && (spot_article(tokens, start) || spot_side(tokens, start))) start++;
    while (start + 1 < i && r->part[start] && r->part[start + 1] && start + 2 <= i) start++;
    return start + 1 == i && r->part[i - 1] && tokens->at[i - 1].stop == STOP_NONE &&
           tokens->at[i - 1].one != tokens->at[i - 1].fold;
}

bool spot_of_one(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    enum { BACK_MOST = 5, FURTHER_MOST = 9 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from, *from = &spot->part_from, *to = &spot->part_to;
    if (hit->kinds[0]->form == ABSENCE) return false;
    bool some = false; // "pages are loose and some have stains"
    for (size_t n = 0; n < BACK_MOST; n++, at--) {
        if (at == 0 || tokens->at[at - 1].stop != STOP_NONE || r->part[at - 1]) return false;
        some = at < hit->from && ANY(tokens, at - 1, "some", "several", "most") &&
               ANY(tokens, at, "are", "have");
        if (some || degrees_number(tokens, at - 1) || ANY(tokens, at - 1, "one's") ||
            (is_rest(tokens, at - 1) && at > 1))
            break;
        if (!ANY(tokens, at - 1, "is", "are", "has", "have", "a", "an", "of", "them", "been", "gone", "got",
                 "slightly", "bit", "won't", "wont", "which", "with", "was", "badly", "more"))
            return false;
    }
    if (at == 0 ||
        !(some || degrees_number(tokens, at - 1) || is_rest(tokens, at - 1) || ANY(tokens, at - 1, "one's")))
        return false;
    spot->which = ANY(tokens, at - 1, "other")                 ? "other"
                  : some || degrees_number(tokens, at - 1) > 1 ? NULL
                                                               : "";
    bool at_once = at == hit->from; // no verb between the number and the fault
    size_t start = scope_sentence_start(&r->scope, hit->from), number = at - 1;
    bool rest = is_rest(tokens, number); // "two are missing, the other two rusty"
    if (!rest && number > start && (rest = token_is(tokens, number - 1, "other"))) number--;
    size_t which = rest ? 0 : spot_which_one(tokens, number);
    if (which) spot->which = tokens->at[which].fold, number = which;
    if (number > start && spot_article(tokens, number - 1)) number--;
    size_t link = number; // "and", "but" or a comma parts it from what it is one of
    while (link > start && (tokens->at[link - 1].stop == STOP_COMMA || ANY(tokens, link - 1, "but", "and")))
        link--;
    if (link == number || link == start) return false;
    bool told = false; // another fault stands between
    bool joined = ANY(tokens, link, "and", "but") || ANY(tokens, number - 1, "and", "but");
    for (at = link; at > start && link - at < FURTHER_MOST; at--) {
        const struct token *token = &tokens->at[at - 1];
        bool other = r->scope.fault[at - 1] && !r->part[at - 1]; // "grips are hard and two have split"
        if (token->stop >= STOP_CLAUSE) return false;
        told |= other && !rest && (!joined || r->note->record->count > 1);
        bool named = token->one != token->fold && joined && opens_sentence(tokens, start, at - 1);
        if (!r->part[at - 1] || (r->scope.fault[at - 1] && !named)) continue;
        if (is_verb_of_parts(r, start, at - 1)) continue;
        if (token->one == token->fold && at > 1 && ANY(tokens, at - 2, "still", "all", "both", "just"))
            continue; // "trays still slide but one"
        if (token->one == token->fold || r->note->taken[at - 1] == TAKEN_TYPE || spot_adverb(tokens, at - 1))
            return false;
        size_t many = at - 1; // "two handles are chewed, one's split": one of the handles
        while (many > start && r->part[many - 1]) many--;
        if (told && !(many > start && degrees_number(tokens, many - 1) > 1)) return false;
        *to = at;
        *from = at - 1;
        while (*from > start && r->part[*from - 1] && !spot_adverb(tokens, *from - 1) &&
               !degrees_number(tokens, *from - 1))
            --*from;
        // the parts have to be what the sentence is about: "brass pans, one", "the straps are on, but one"
        size_t first = *from;
        while (first > start && link - first < FURTHER_MOST &&
               !(tokens->at[first - 1].stop != STOP_NONE || spot_preposition(tokens, first - 1) ||
                 ANY(tokens, first - 1, "with", "has", "have")))
            first--;
        bool own = at_once && fault_by_noun(r, hit);
        size_t next = hit->to + (ANY(tokens, hit->to, "is", "are") ? 1 : 0);
        if (own && joined && (r->scope.fault[*to - 1] || spot_preposition(tokens, next)))
            return *from = *to = 0, false; // "corners are rubbed and one hole is in the base"
        own &= !joined;
        for (size_t k = first; own && k < *to; k++)
            if (!r->part[k] || ANY(tokens, k, "both", "each", "all"))
                return false; // "fringe both ends, one moth hole"
        return first == start || degrees_number(tokens, first) > 0 ||
               tokens->at[first - 1].stop != STOP_NONE || ANY(tokens, first - 1, "of");
    }
    return false;
}

// "One of the handles is loose", "both straps are there but one is torn", "the other one is frayed": said of
// one of the parts.
bool spot_is_of_one(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { BACK_MOST = 8 };
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    if (hit->kinds[0]->form == ABSENCE) return false;
    for (size_t i = hit->from; i > start && hit->from - i < BACK_MOST; i--) {
        if (tokens->at[i - 1].stop != STOP_NONE || (r->scope.fault[i - 1] && !r->part[i - 1])) return false;
        bool one = ANY(tokens, i - 1, "one", "1", "one's"),
             other = is_rest(tokens, i - 1) && !token_is(tokens, i - 1, "others");
        if (!one && !other) continue;
        bool many = i > 1 && (spot_side(tokens, i - 2) ||
                              ANY(tokens, i - 2, "every", "each", "no", "than", "any", "number", "per"));
        if (many || r->note->taken[i - 1] == TAKEN_MEASURE) return false;
        if (one && token_is(tokens, i, "of"))
            return ANY(tokens, i + 1, "the", "its", "my", "their", "these", "them", "those");
        return i == hit->from || token_is(tokens, i - 1, "one's") ||
               ANY(tokens, i, "is", "has", "was", "had", "got", "looks", "with", "slightly", "badly", "a",
                   "just", "won't", "doesn't", "missing");
    }
    return false;
}

// May token `i` stand between the faults of a list: what joins them, an article, a number, what says how big?
static bool joins_faults(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {
        "and", "&",     "a",      "an",      "some", "small", "slight",  "tiny", "light", "minor", "little",
        "big", "large", "long",   "few",     "odd",  "also",  "faint",   "deep", "fine",  "heavy", "short",
        "bit", "of",    "couple", "several", "bad",  "wee",   "general", "one",  "two",   "three", "four"};
    const struct token *t = &r->note->tokens.at[i];
    return t->stop == STOP_COMMA || token_among(&r->note->tokens, i, words, sizeof words / sizeof *words);
}

// "A split and a stain", "fraying and some fading": nouns, though the word may say a state.
static bool is_state_here(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const char *word = tokens->at[hit->to - 1].fold;
    size_t n = strlen(word);
    bool noun = hit->from > 0 && tokens->at[hit->from - 1].stop == STOP_NONE &&
                ANY(tokens, hit->from - 1, "a", "an", "some", "one", "small", "slight", "little");
    return degree_is_state(r, hit) && !noun && !(n > 4 && text_same(word + n - 3, "ing"));
}

const struct fault_hit *spot_listed_before(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 5, LIST_LONGEST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    const struct fault_hit *last = hit;
    bool joined = false;
    for (size_t n = 0; n < LIST_LONGEST; n++) {
        const struct fault_hit *next = NULL;
        for (size_t k = 0; k < r->hit_count && !next; k++)
            if (r->hits[k].from >= last->to && r->hits[k].from <= last->to + FAR) next = &r->hits[k];
        if (!next || next->near || next->kinds[0]->form != FAULT || r->part[next->from] ||
            is_state_here(r, next) != is_state_here(r, hit) ||
            (r->scope.stance[next->from] ^ r->scope.stance[hit->from]) & (STANCE_DENIED | STANCE_NONE_SEEN))
            break;
        bool and = false, list = true;
        for (size_t i = last->to; i < next->from; i++) {
            and |= token_is(tokens, i, "and") || token_is(tokens, i, "&");
            list &= joins_faults(r, i);
        }
        if (!list || next->from == last->to || joined) break; // behind "and" the list is over
        last = next;
        joined = and;
    }
    return joined ? last : NULL;
}

bool spot_numbered(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from;
    if (hit->kinds[0]->form == ABSENCE) return false;                       // "missing 2 legs"
    bool own = at + 1 < hit->to && tokens->at[at + 1].kind == TOKEN_FIGURE; // "tape 7 squeals" is the fault's
    if (!own) {
        while (at > 0 &&
               ANY(tokens, at - 1, "a", "an", "is", "has", "won't", "are", "just", "still", "small"))
            at--;
        if (at < 2 || tokens->at[at - 1].kind != TOKEN_FIGURE) return false;
        at -= 2;
    }
    if (token_is(tokens, at + 2, "%") || pieces_is_extent(tokens, at + 2)) return false;
    const char *figure = tokens->at[at + 1].fold;
    bool opens = at == 0 || tokens->at[at - 1].stop != STOP_NONE;
    if (!opens || tokens->at[at].kind != TOKEN_WORD || tokens->at[at].one != tokens->at[at].fold ||
        tokens->at[at].stop != STOP_NONE || strlen(figure) > 2 || r->note->taken[at + 1] == TAKEN_MEASURE ||
        degrees_number(tokens, at) ||
        ANY(tokens, at, "about", "all", "of", "no", "size", "the", "age", "only"))
        return false;
    *from = at;
    *to = at + 2;
    return true;
}

bool spot_of_where(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    enum { WORDS_BETWEEN = 6 };
    size_t at = i;
    while (at > 0 && i - at < WORDS_BETWEEN && tokens->at[at - 1].stop == STOP_NONE &&
           ANY(tokens, at - 1, "it's", "it", "its", "is", "has", "have", "they", "they're", "are", "been",
               "a", "bit", "there's", "there", "some", "little", "the", "paint", "slightly", "badly", "got",
               "starting", "to", "he's", "all", "just", "gone", "finish", "varnish", "enamel"))
        at--;
    bool which = at > 1 && token_is(tokens, at - 1, "which") &&
                 tokens->at[at - 2].stop == STOP_COMMA; // "the lock, which is stiff"
    if (at == 0 || (!which && !token_is(tokens, at - 1, "where"))) return false;
    size_t end = at - 1;
    if (end > 0 && tokens->at[end - 1].stop == STOP_COMMA) end--;
    size_t start = end;
    while (start > 0 && end - start < WORDS_MOST && r->part[start - 1] && !r->scope.fault[start - 1] &&
           tokens->at[start - 1].stop == STOP_NONE && r->note->taken[start - 1] != TAKEN_TYPE)
        start--;
    while (start < end && start > 0 && spot_side(tokens, start - 1) &&
           tokens->at[start - 1].stop == STOP_NONE)
        start--;
    *from = start;
    *to = end;
    return start < end;
}

// "Lid, no splits in it": the part that opens the sentence, and what it has not.
bool spot_topic(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    enum { TOPIC_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    if (!(r->scope.stance[hit->from] & (STANCE_DENIED | STANCE_NONE_SEEN))) return false;
    size_t start = scope_sentence_start(&r->scope, hit->from), comma = start, cue = r->scope.cue[hit->from];
    while (comma < hit->from && tokens->at[comma].stop == STOP_NONE) comma++;
    if (comma >= hit->from || tokens->at[comma].stop != STOP_COMMA || cue != comma + 1) return false;
    bool it =
        ANY(tokens, hit->to, "in", "on", "to", "at") && ANY(tokens, hit->to + 1, "it", "them", "either");
    if (!it) return false; // "brass handles, no worm" lists what is to be said of the chest
    *from = start;
    while (ANY(tokens, *from, "the", "its", "both")) ++*from;
    *to = comma;
    if (*to == *from || *to - *from > TOPIC_MOST || !r->part[*to - 1]) return false;
    for (size_t i = *from; i < *to; i++)
        if (tokens->at[i].kind != TOKEN_WORD || r->scope.fault[i] || r->note->taken[i] == TAKEN_TYPE ||
            r->note->taken[i] == TAKEN_INCLUDES)
            return false;
    return true;
}

// May token `i` stand between the heading and what is said of it: another fault, what joins them, a degree?
static bool says_more(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n;
    return (r->scope.fault[i] && !r->part[i]) || tokens->at[i].stop == STOP_COMMA ||
           ANY(tokens, i, "and", "&", "but", "a", "bit", "too", "very", "now", "rather", "quite", "little",
               "also", "still", "some", "just", "both", "all") ||
           (degree_word(r, i, &n) && n == 1) || degree_adverb(tokens, i) != SEVERITY_UNKNOWN;
}

// Is all from the preposition at `i` up to the comma a place?
static bool placed(const struct fault_reader *r, size_t i, size_t comma) {
    const struct tokens *tokens = &r->note->tokens;
    size_t from;
    for (size_t k = i; k < comma; k++)
        if ((r->scope.fault[k] && !r->part[k]) || r->note->taken[k] == TAKEN_TYPE) return false;
    return ANY(tokens, i, "on", "onto", "in", "at", "inside", "under", "underneath", "behind", "round",
               "near") &&
           spot_place_at(r, i, &from) == comma;
}

// "Leather handles, dry and cracked", "black frame, chipped on one corner": a sentence without a verb that
// begins with a part.
bool spot_of_heading(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    enum { HEADING_MOST = 5 };
    static const char *const verbs[] = {"is",  "are", "has", "have", "was", "with",
                                        "and", "no",  "not", "but",  "or"};
    static const char *const coated[] = {"painted",  "repainted", "varnished", "lacquered", "gilded",
                                         "japanned", "covered",   "wrapped",   "bound"};
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, hit->from), comma = start;
    if (hit->kinds[0]->form == ABSENCE || (!degree_is_state(r, hit) && fault_by_noun(r, hit))) return false;
    if (fault_stance(r, hit) & (STANCE_DENIED | STANCE_NONE_SEEN)) return false;
    for (size_t i = hit->from; i < hit->to; i++) // "sun's not touched them": its own denial
        if (ANY(tokens, i, "not", "never", "nobody", "nobody's", "nothing", "no") ||
            strstr(tokens->at[i].fold, "n't"))
            return false;
    while (comma < hit->from && tokens->at[comma].stop == STOP_NONE) comma++;
    if (comma >= hit->from || tokens->at[comma].stop != STOP_COMMA || comma > start + HEADING_MOST + 2)
        return false;
    while (start < comma && (spot_article(tokens, start) || degrees_number(tokens, start) > 0)) start++;
    size_t end = comma, behind = comma; // "hoops painted red, flaking": the hoops
    for (size_t i = start + 1; i < comma && end == comma; i++)
        if (token_among(tokens, i, coated, sizeof coated / sizeof *coated))
            end = ANY(tokens, i - 1, "is", "are") ? i - 1 : i;
    for (size_t i = start; i + 1 < comma; i++) // "red paint on the hoops, flaking"
        if (ANY(tokens, i, "paint", "varnish", "gilding", "lacquer", "finish") && ANY(tokens, i + 1, "on")) {
            start = i + 2;
            while (start < comma && spot_article(tokens, start)) start++;
        }
    for (size_t i = start + 1; i + 1 < comma && end == behind; i++) // "drawer on the left, stuck"
        if (r->part[i - 1] && spot_preposition(tokens, i) && !ANY(tokens, i, "of", "to", "from") &&
            !spot_adverb(tokens, i - 1))
            end = placed(r, i, comma) ? i : end;
    if (end == behind && comma > start + HEADING_MOST) return false;
    comma = end;
    if (start >= comma || (!r->part[comma - 1] && end == behind)) return false;
    for (size_t i = start; i < comma; i++)
        if (tokens->at[i].kind != TOKEN_WORD || (r->scope.fault[i] && !r->part[i]) ||
            r->note->taken[i] == TAKEN_TYPE || r->note->taken[i] == TAKEN_MARK ||
            spot_preposition(tokens, i) || token_among(tokens, i, verbs, sizeof verbs / sizeof *verbs))
            return false;
    for (size_t i = behind + 1; i < hit->from; i++)
        if (!says_more(r, i)) return false;
    *to = comma;
    *from = comma - 1;
    while (*from > start && r->part[*from - 1] && r->note->taken[*from - 1] == TAKEN_NOT) --*from;
    return true;
}

// "The head is slack and has a small tear".
static bool has_too(const struct tokens *tokens, size_t i) {
    while (i > 1 && tokens->at[i - 1].stop == STOP_NONE &&
           (spot_article(tokens, i - 1) || degree_stem(tokens, i - 1) ||
            ANY(tokens, i - 1, "small", "little", "few", "some", "long", "big", "very", "rather", "quite")))
        i--;
    return i > 1 && ANY(tokens, i - 1, "has", "have") && ANY(tokens, i - 2, "and", "but");
}

// "The handle has been glued and a hairline runs down", "one corner is stained and pilling on one side":
// behind "is" a noun is said of something else, as is one with a verb of its own.
bool spot_said_apart(const struct fault_reader *r, const struct fault_hit *hit, size_t verb) {
    static const char *const is[] = {"is", "are", "was", "were"};
    static const char *const own[] = {"runs", "goes", "is", "are", "has", "shows", "starts", "comes"};
    const struct tokens *tokens = &r->note->tokens;
    uint16_t denied = r->scope.stance[hit->from] & (STANCE_DENIED | STANCE_NONE_SEEN);
    if (has_too(tokens, hit->from)) return false;
    if (hit->kinds[0]->class == CLASS_ODOR) return true; // "… and smells a bit musty"
    if (r->part[hit->from] && hit->to > hit->from + 1 && !hit->near) return true; // "… and cord looks frayed"
    if (denied || tokens->at[hit->to - 1].stop >= STOP_CLAUSE) return false;
    bool been = ANY(tokens, verb, "has", "have") && ANY(tokens, verb + 1, "been");
    if (token_among(tokens, hit->to, own, sizeof own / sizeof *own) &&
        tokens->at[hit->to - 1].stop == STOP_NONE)
        return true;
    bool does = ANY(tokens, hit->from, "leaks", "drips", "weeps", "rattles", "sticks", "slips", "squeaks",
                    "jams", "binds", "wobbles"); // "the spout has been mended and leaks"
    bool state = degree_is_state(r, hit) || does ||
                 (ANY(tokens, hit->from, "worn", "rubbed") &&
                  ANY(tokens, hit->from + 1, "to", "through", "down")); // the brass
    return (been || token_among(tokens, verb, is, sizeof is / sizeof *is)) && !state;
}
