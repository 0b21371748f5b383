// SPDX-License-Identifier: MIT
// How bad and how many, in the seller's own words only: what is not said stays unknown.
#include "notes/faults.h"

#include <stdlib.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue words[] = {
    {"a bit", SEVERITY_LIGHT},
    {"a bit of", SEVERITY_LIGHT},
    {"a few", SEVERITY_UNKNOWN},
    {"a good deal of", SEVERITY_HEAVY},
    {"a hint of", SEVERITY_LIGHT},
    {"a little", SEVERITY_LIGHT},
    {"a little bit", SEVERITY_LIGHT},
    {"a lot of", SEVERITY_HEAVY},
    {"a touch of", SEVERITY_LIGHT},
    {"a trace of", SEVERITY_LIGHT},
    {"all over", SEVERITY_HEAVY},
    {"all the way", SEVERITY_HEAVY},
    {"awful", SEVERITY_HEAVY},
    {"awfully", SEVERITY_HEAVY},
    {"bad", SEVERITY_HEAVY},
    {"badly", SEVERITY_HEAVY},
    {"barely", SEVERITY_LIGHT},
    {"big", SEVERITY_HEAVY},
    {"bit", SEVERITY_LIGHT},
    {"clean through", SEVERITY_HEAVY},
    {"completely", SEVERITY_HEAVY},
    {"considerable", SEVERITY_HEAVY},
    {"couple of light", SEVERITY_LIGHT},
    {"covered in", SEVERITY_HEAVY},
    {"crumbling", SEVERITY_HEAVY},
    {"crumbly", SEVERITY_HEAVY},
    {"crushed", SEVERITY_MODERATE},
    {"deep", SEVERITY_HEAVY},
    {"deeply", SEVERITY_HEAVY},
    {"dusting of", SEVERITY_LIGHT},
    {"eaten", SEVERITY_HEAVY},
    {"even", SEVERITY_LIGHT},
    {"extensive", SEVERITY_HEAVY},
    {"faint", SEVERITY_LIGHT},
    {"faintly", SEVERITY_LIGHT},
    {"fair bit of", SEVERITY_MODERATE},
    {"fairly", SEVERITY_MODERATE},
    {"flaking", SEVERITY_MODERATE},
    {"flea bite", SEVERITY_LIGHT},
    {"freckles", SEVERITY_LIGHT},
    {"given way", SEVERITY_HEAVY},
    {"hairline", SEVERITY_LIGHT},
    {"hardly", SEVERITY_LIGHT},
    {"hardly any", SEVERITY_LIGHT},
    {"heavily", SEVERITY_HEAVY},
    {"heavy", SEVERITY_HEAVY},
    {"huge", SEVERITY_HEAVY},
    {"just a bit", SEVERITY_LIGHT},
    {"just a little", SEVERITY_LIGHT},
    {"large", SEVERITY_HEAVY},
    {"light", SEVERITY_LIGHT},
    {"lightly", SEVERITY_LIGHT},
    {"little", SEVERITY_LIGHT},
    {"loads of", SEVERITY_HEAVY},
    {"lots of", SEVERITY_HEAVY},
    {"major", SEVERITY_HEAVY},
    {"massive", SEVERITY_HEAVY},
    {"medium", SEVERITY_MODERATE},
    {"mild", SEVERITY_LIGHT},
    {"mildly", SEVERITY_LIGHT},
    {"minimal", SEVERITY_LIGHT},
    {"minor", SEVERITY_LIGHT},
    {"minuscule", SEVERITY_LIGHT},
    {"moderate", SEVERITY_MODERATE},
    {"moderately", SEVERITY_MODERATE},
    {"most of", SEVERITY_HEAVY},
    {"mostly", SEVERITY_HEAVY},
    {"nasty", SEVERITY_HEAVY},
    {"nice even", SEVERITY_LIGHT},
    {"noticeable", SEVERITY_MODERATE},
    {"noticeably", SEVERITY_MODERATE},
    {"obvious", SEVERITY_MODERATE},
    {"one or two", SEVERITY_LIGHT},
    {"pin sized", SEVERITY_LIGHT},
    {"pinhead", SEVERITY_LIGHT},
    {"pinprick", SEVERITY_LIGHT},
    {"pitted", SEVERITY_HEAVY},
    {"plenty of", SEVERITY_HEAVY},
    {"pretty bad", SEVERITY_HEAVY},
    {"pretty badly", SEVERITY_HEAVY},
    {"quite a bit of", SEVERITY_MODERATE},
    {"quite a few", SEVERITY_MODERATE},
    {"really bad", SEVERITY_HEAVY},
    {"right through", SEVERITY_HEAVY},
    {"rotten", SEVERITY_HEAVY},
    {"ruined", SEVERITY_HEAVY},
    {"serious", SEVERITY_HEAVY},
    {"seriously", SEVERITY_HEAVY},
    {"severe", SEVERITY_HEAVY},
    {"severely", SEVERITY_HEAVY},
    {"shallow", SEVERITY_LIGHT},
    {"shattered", SEVERITY_HEAVY},
    {"shredded", SEVERITY_HEAVY},
    {"sizable", SEVERITY_HEAVY},
    {"slight", SEVERITY_LIGHT},
    {"slightly", SEVERITY_LIGHT},
    {"small", SEVERITY_LIGHT},
    {"smaller", SEVERITY_LIGHT},
    {"smashed", SEVERITY_HEAVY},
    {"some", SEVERITY_UNKNOWN},
    {"speck", SEVERITY_LIGHT},
    {"specks", SEVERITY_LIGHT},
    {"strong", SEVERITY_HEAVY},
    {"strongly", SEVERITY_HEAVY},
    {"superficial", SEVERITY_LIGHT},
    {"surface", SEVERITY_LIGHT},
    {"teeny", SEVERITY_LIGHT},
    {"terrible", SEVERITY_HEAVY},
    {"terribly", SEVERITY_HEAVY},
    {"the odd", SEVERITY_LIGHT},
    {"thick", SEVERITY_HEAVY},
    {"thin", SEVERITY_LIGHT},
    {"tiny", SEVERITY_LIGHT},
    {"tons of", SEVERITY_HEAVY},
    {"totally", SEVERITY_HEAVY},
    {"touch of", SEVERITY_LIGHT},
    {"ugly", SEVERITY_HEAVY},
    {"very bad", SEVERITY_HEAVY},
    {"very light", SEVERITY_LIGHT},
    {"very little", SEVERITY_LIGHT},
    {"very small", SEVERITY_LIGHT},
    {"wee", SEVERITY_LIGHT},
    {"won't budge", SEVERITY_HEAVY},
    {"won't stay", SEVERITY_HEAVY},
    {"wont budge", SEVERITY_HEAVY},
    {"wont shut", SEVERITY_HEAVY},
    {"worst", SEVERITY_HEAVY},
};

enum { BEFORE_MOST = 5, BEHIND_MOST = 4 };

static bool joins(const struct token *t) {
    return t->stop != STOP_NONE || !strcmp(t->fold, "and") || !strcmp(t->fold, "but") ||
           !strcmp(t->fold, "or");
}

// "The small one has rust": what stands before the verb is said of the piece.
static bool is_link(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"has", "have", "had", "shows", "got", "one"};
    return token_among(tokens, i, verbs, COUNT(verbs));
}

static enum severity at_token(const struct fault_reader *r, size_t i, size_t *n) {
    const struct cue *cue = cue_at(&r->scope, words, COUNT(words), i, n);
    return cue ? (enum severity)cue->kind : SEVERITY_UNKNOWN;
}

// What the fault still lets it do, or no longer: "stiff but it turns", "stuck solid", "won't budge".
static const struct cue behind[] = {
    {"a hair", SEVERITY_LIGHT},
    {"about a pinhead", SEVERITY_LIGHT},
    {"all over", SEVERITY_HEAVY},
    {"and flaking", SEVERITY_HEAVY},
    {"and pitted", SEVERITY_HEAVY},
    {"and you can see", SEVERITY_HEAVY},
    {"but goes", SEVERITY_LIGHT},
    {"but holds", SEVERITY_LIGHT},
    {"but it closes", SEVERITY_LIGHT},
    {"but it does", SEVERITY_LIGHT},
    {"but it goes", SEVERITY_LIGHT},
    {"but it holds", SEVERITY_LIGHT},
    {"but it moves", SEVERITY_LIGHT},
    {"but it opens", SEVERITY_LIGHT},
    {"but it still", SEVERITY_LIGHT},
    {"but it turns", SEVERITY_LIGHT},
    {"but it works", SEVERITY_LIGHT},
    {"but moves", SEVERITY_LIGHT},
    {"but still", SEVERITY_LIGHT},
    {"but they hold", SEVERITY_LIGHT},
    {"but turns", SEVERITY_LIGHT},
    {"but works", SEVERITY_LIGHT},
    {"clean through", SEVERITY_HEAVY},
    {"flakes come", SEVERITY_HEAVY},
    {"freckles", SEVERITY_LIGHT},
    {"freckling", SEVERITY_LIGHT},
    {"hard to see", SEVERITY_LIGHT},
    {"here and there", SEVERITY_LIGHT},
    {"it still pushes", SEVERITY_LIGHT},
    {"it still works", SEVERITY_LIGHT},
    {"not bad", SEVERITY_LIGHT},
    {"not deep", SEVERITY_LIGHT},
    {"not much", SEVERITY_LIGHT},
    {"not strong", SEVERITY_LIGHT},
    {"pinhead", SEVERITY_LIGHT},
    {"pretty strong", SEVERITY_HEAVY},
    {"quite strong", SEVERITY_HEAVY},
    {"right through", SEVERITY_HEAVY},
    {"so it still works", SEVERITY_LIGHT},
    {"solid", SEVERITY_HEAVY},
    {"specks", SEVERITY_LIGHT},
    {"still holds", SEVERITY_LIGHT},
    {"still turns", SEVERITY_LIGHT},
    {"still works", SEVERITY_LIGHT},
    {"then goes", SEVERITY_LIGHT},
    {"through and through", SEVERITY_HEAVY},
    {"very strong", SEVERITY_HEAVY},
    {"won't budge", SEVERITY_HEAVY},
    {"you have to look", SEVERITY_LIGHT},
    {"you won't notice", SEVERITY_LIGHT},
};

static enum severity told_behind(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + BEHIND_MOST; i++) {
        if (tokens->at[i].stop >= STOP_CLAUSE) break;
        const struct cue *cue = cue_at(&r->scope, behind, COUNT(behind), i, &n);
        if (cue) return (enum severity)cue->kind;
        if (r->scope.fault[i]) break;
    }
    return SEVERITY_UNKNOWN;
}

// "Rust inside, light": alone behind a comma.
static enum severity apart(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->to; i + 1 < tokens->count && i < hit->to + BEHIND_MOST; i++) {
        if (tokens->at[i].stop >= STOP_CLAUSE || (r->scope.fault[i] && !r->part[i])) break;
        size_t n;
        if (tokens->at[i].stop != STOP_COMMA) continue;
        enum severity found = at_token(r, i + 1, &n);
        bool ends = i + 1 + n >= tokens->count || tokens->at[i + 1 + n].stop != STOP_NONE;
        return found && ends ? found : SEVERITY_UNKNOWN;
    }
    return SEVERITY_UNKNOWN;
}

// "It has been trimmed (heavy)".
static enum severity in_brackets(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    for (; i + 2 < tokens->count && tokens->at[i].stop < STOP_SENTENCE && !r->scope.fault[i]; i++) {
        size_t n;
        if (token_is(tokens, i, "(") && token_is(tokens, i + 2, ")")) return at_token(r, i + 1, &n);
    }
    return SEVERITY_UNKNOWN;
}

// The degree may stand inside the phrase itself ("badly rusted" in `said`), before it, or behind ("rust, not
// bad").
enum severity degree_of_hit(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n;
    if (r->scope.stance[hit->from] & STANCE_LIMITED) return SEVERITY_LIGHT;
    enum severity bracketed = in_brackets(r, hit->to);
    if (bracketed) return bracketed;
    bool own = false; // "paint flaking" is the name of the fault, "flaking badly" tells a degree
    for (size_t i = 0; i < hit->kind_count; i++) own |= kind_is_whole(r, hit->kinds[i], hit);
    for (size_t i = hit->from; i < hit->to && !own; i++) {
        enum severity found = at_token(r, i, &n);
        if (found) return found;
    }
    for (size_t back = 1; back <= BEFORE_MOST && back <= hit->from; back++) {
        size_t i = hit->from - back;
        if (joins(&tokens->at[i]) || r->scope.fault[i] || is_link(tokens, i)) break;
        if (token_is(tokens, i, "light") && i > 0 && token_is(tokens, i - 1, "the")) continue; // a part of it
        for (size_t k = 0; k < 3 && k <= i; k++) { // a longer cue that ends here
            enum severity found = at_token(r, i - k, &n);
            if (found && i - k + n == i + 1) {
                if (k == 0 && i > 0 && (token_is(tokens, i - 1, "not") || token_is(tokens, i - 1, "too")))
                    return SEVERITY_LIGHT;
                return found;
            }
        }
    }
    enum severity told = told_behind(r, hit);
    if (told) return told;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + BEHIND_MOST; i++) {
        if (tokens->at[i].stop >= STOP_CLAUSE || r->scope.fault[i]) break;
        if (token_phrase(tokens, i, "not bad") || token_phrase(tokens, i, "nothing major") ||
            token_phrase(tokens, i, "not deep") || token_phrase(tokens, i, "barely visible") ||
            token_phrase(tokens, i, "hard to see"))
            return SEVERITY_LIGHT;
        if (token_phrase(tokens, i, "pretty bad") || token_phrase(tokens, i, "really bad") ||
            token_is(tokens, i, "badly"))
            return SEVERITY_HEAVY;
        if (token_phrase(tokens, i, "a bit") || token_phrase(tokens, i, "a little") ||
            token_is(tokens, i, "slightly")) {
            bool ends = i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE ||
                        token_is(tokens, i, "slightly");
            if (ends) return SEVERITY_LIGHT;
        }
    }
    return apart(r, hit);
}

int degrees_number(const struct tokens *tokens, size_t i) {
    static const char *const names[] = {"zero",  "one",   "two",  "three", "four",   "five",  "six",
                                        "seven", "eight", "nine", "ten",   "eleven", "twelve"};
    if (i >= tokens->count) return 0;
    if (token_is(tokens, i, "dozen")) return i > 0 && token_is(tokens, i - 1, "half") ? 6 : 12;
    const struct token *t = &tokens->at[i];
    for (size_t k = 1; k < COUNT(names); k++)
        if (!strcmp(t->fold, names[k])) return (int)k;
    if (t->kind != TOKEN_FIGURE || strspn(t->fold, "0123456789") != strlen(t->fold) || strlen(t->fold) > 3)
        return 0;
    return (int)strtol(t->fold, NULL, 10);
}

// "One of the six", "2 of 4", "both", "all six"; the tokens before the fault up to its clause.
static int pieces_before(const struct fault_reader *r, size_t from, size_t to, int *of) {
    const struct tokens *tokens = &r->note->tokens;
    int pieces = r->note->record->count;
    for (size_t i = from; i < to; i++)
        if (tokens->at[i].stop == STOP_COMMA) from = i + 1; // "3 of 4 cups, lining stained"
    for (size_t i = from; i < to; i++) {
        int n = degrees_number(tokens, i);
        if (token_is(tokens, i, "both")) return *of = 2, 2;
        if (n && token_is(tokens, i + 1, "of")) {
            size_t k = i + 2;
            while (token_is(tokens, k, "the") || token_is(tokens, k, "them") || token_is(tokens, k, "these"))
                k++;
            int total = degrees_number(tokens, k);
            if (total >= n || (pieces >= n && pieces > 1)) return *of = total ? total : pieces, n;
        }
        bool verb = token_is(tokens, i + 1, "has") || token_is(tokens, i + 1, "have") ||
                    token_is(tokens, i + 1, "is") || token_is(tokens, i + 1, "are") ||
                    token_is(tokens, i + 1, "with");
        if (n && verb && (pieces > n || !pieces)) return *of = pieces, n;
        if (token_is(tokens, i, "all") && pieces > 1 && degrees_number(tokens, i + 1) == pieces)
            return *of = pieces, pieces;
    }
    return 0;
}

// "Two chips on the rim. No, make that three."
static int recount(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 16 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + FAR; i++) {
        if (r->scope.fault[i] && !r->part[i]) return 0;
        if (!token_phrase(tokens, i, "make that")) continue;
        int n = degrees_number(tokens, i + 2);
        bool ends =
            i + 3 >= tokens->count || tokens->at[i + 3].stop != STOP_NONE || token_is(tokens, i + 3, "of");
        return ends ? n : 0;
    }
    return 0;
}

// "Cracked where it bends, two places": the number in a clause of its own.
static int places_behind(const struct tokens *tokens, size_t i) {
    enum { FAR = 8 };
    for (size_t at = i; at < tokens->count && at < i + FAR; at++) {
        if (tokens->at[at].stop >= STOP_CLAUSE) return 0;
        bool places = token_is(tokens, at + 2, "places") || token_is(tokens, at + 2, "spots");
        if (tokens->at[at].stop == STOP_COMMA && places) return degrees_number(tokens, at + 1);
    }
    return 0;
}

// "Page 31 is torn", "side 2 skips": which one, not how many.
static bool is_ordinal(const struct tokens *tokens, size_t i) {
    static const char *const kinds[] = {"page", "pages", "plate",  "side", "track", "no",      "number",
                                        "map",  "sheet", "volume", "vol",  "key",   "chapter", "size"};
    return i > 0 && tokens->at[i].kind == TOKEN_FIGURE && token_among(tokens, i - 1, kinds, COUNT(kinds));
}

int count_of_hit(const struct fault_reader *r, const struct fault_hit *hit, int *of) {
    const struct tokens *tokens = &r->note->tokens;
    *of = 0;
    int again = recount(r, hit);
    if (again) return again;
    int apart = places_behind(tokens, hit->to);
    if (apart) return apart;
    for (size_t i = hit->to; i + 2 < tokens->count && i < hit->to + 3; i++) { // "wear in two places"
        if (tokens->at[i].stop != STOP_NONE || r->scope.fault[i]) break;
        bool places = token_is(tokens, i + 2, "places") || token_is(tokens, i + 2, "spots");
        if (token_is(tokens, i, "in") && places && degrees_number(tokens, i + 1))
            return degrees_number(tokens, i + 1);
    }
    for (size_t back = 1; back <= BEFORE_MOST && back <= hit->from; back++) {
        size_t i = hit->from - back;
        int n = is_ordinal(tokens, i) ? 0 : degrees_number(tokens, i);
        if (joins(&tokens->at[i]) || (r->scope.fault[i] && !r->part[i])) break;
        if (token_is(tokens, i, "couple")) return 2;
        if (token_is(tokens, i, "pair")) return 2;
        if (!n) continue;
        bool clear = true; // nothing but adjectives between: "two small chips", not "size 8 with chips"
        for (size_t k = i + 1; k < hit->from; k++)
            clear &= tokens->at[k].kind == TOKEN_WORD && !r->part[k] && !token_is(tokens, k, "of") &&
                     !token_is(tokens, k, "has") && !token_is(tokens, k, "have") &&
                     !token_is(tokens, k, "is") && !token_is(tokens, k, "are") &&
                     !token_is(tokens, k, "inch") && !token_is(tokens, k, "in") &&
                     !token_is(tokens, k, "mm") && !token_is(tokens, k, "cm") &&
                     !token_is(tokens, k, "with") && !token_is(tokens, k, "inches");
        const struct flaw *kind = hit->kinds[0];
        const char *word = tokens->at[hit->from].fold;
        bool noun = (kind->noun && strstr(kind->noun, word)) || (kind->plural && strstr(kind->plural, word));
        size_t size = strlen(word);
        bool said_of_them = i + 1 == hit->from && size > 3 && !strcmp(word + size - 2, "ed") && !noun;
        if (clear && said_of_them && r->note->record->count > n)
            *of = r->note->record->count; // "two chipped"
        if (clear) return n;
        break;
    }
    return pieces_before(r, scope_clause_start(&r->scope, hit->from), hit->from, of);
}

void degrees_take(struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->from; i > 0 && hit->from - i < BEFORE_MOST; i--) {
        size_t n;
        if (tokens->at[i - 1].stop != STOP_NONE || r->note->taken[i - 1] != TAKEN_NOT) return;
        if (at_token(r, i - 1, &n) || degrees_number(tokens, i - 1))
            note_take(r->note, i - 1, i, TAKEN_SCOPE);
    }
}
