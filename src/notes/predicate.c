// SPDX-License-Identifier: MIT
// Predicates of the disclosure: degree, noun, number and size in the order in which it puts them. Which kind
// is meant is settled by the longest wording that stands there; no two kinds are told in the same words but
// those that the round trip's test lists.
#include "notes/paragraph.h"
#include "text/order.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

// --- words ---

static bool is_letter(char c) {
    return isalpha((unsigned char)c) != 0;
}

// The rules are written in US spelling; "mould" and "odour" may stand for what they say.
static size_t other_spelling(const char *text, const char *word) {
    static const char *const pairs[][2] = {{"mold", "mould"}, {"odor", "odour"}};
    if (*word != 'm' && *word != 'o') return 0;
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        size_t us = strlen(pairs[i][0]), uk = strlen(pairs[i][1]);
        if (strncmp(word, pairs[i][0], us) == 0 && strncmp(text, pairs[i][1], uk) == 0) return uk;
    }
    return 0;
}

const char *words_after(const char *text, const char *words) {
    bool starts = true;
    while (*words) {
        size_t uk = starts ? other_spelling(text, words) : 0;
        if (uk) {
            text += uk;
            words += uk - 1;
            starts = false;
            continue;
        }
        if (*text != *words) return NULL;
        starts = !is_letter(*words);
        text++;
        words++;
    }
    return is_letter(*text) || isdigit((unsigned char)*text) || *text == '-' || *text == '\'' ? NULL : text;
}

// The same with the space behind; an empty text stands everywhere.
static const char *word_then(const char *text, const char *words) {
    if (!*words) return text;
    const char *rest = words_after(text, words);
    return rest && *rest == ' ' ? rest + 1 : NULL;
}

const char *number_after(const char *text, int *number) {
    enum { WORDS = 12, DIGITS_MOST = 7 };
    for (long n = 1; n <= WORDS; n++) {
        static const char *const names[] = {"zero",  "one",   "two",  "three", "four",   "five",  "six",
                                            "seven", "eight", "nine", "ten",   "eleven", "twelve"};
        const char *rest = word_then(text, names[n]);
        if (!rest) continue;
        *number = (int)n;
        return rest;
    }
    int value = 0;
    size_t i = 0;
    for (; i < DIGITS_MOST && (isdigit((unsigned char)text[i]) || (i && text[i] == ',')); i++)
        if (text[i] != ',') value = value * 10 + (text[i] - '0');
    if (!i || text[i] != ' ' || value <= WORDS) return NULL;
    *number = value;
    return text + i + 1;
}

const char *verb_after(struct told *told, const char *text, enum told_verb *verb) {
    static const struct {
        const char *words;
        enum told_verb verb;
        bool maybe;
    } verbs[] = {{"may be", TOLD_IS, true},    {"may have", TOLD_HAS, true},
                 {"may show", TOLD_HAS, true}, {"is", TOLD_IS, false},
                 {"are", TOLD_IS, false},      {"has", TOLD_HAS, false},
                 {"have", TOLD_HAS, false},    {"shows", TOLD_HAS, false},
                 {"show", TOLD_HAS, false},    {"was, it seems,", TOLD_WAS, true},
                 {"was", TOLD_WAS, false},     {"were", TOLD_WAS, false}};
    for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++) {
        const char *rest = word_then(text, verbs[i].words);
        if (!rest) continue;
        *verb = verbs[i].verb;
        told->maybe |= verbs[i].maybe;
        return rest;
    }
    return NULL;
}

const char *list_sign(const char *text, const char **behind) {
    static const char *const signs[] = {", and ", "; and ", ", ", "; ", " and "};
    for (; *text; text++) {
        for (size_t i = 0; i < sizeof signs / sizeof *signs; i++) {
            size_t n = strlen(signs[i]);
            if (strncmp(text, signs[i], n) != 0) continue;
            *behind = text + n;
            return text;
        }
    }
    return NULL;
}

// --- places ---

const char *place_bare(struct told *told, const char *place) {
    static const char *const heads[] = {"on the ", "in the ", "at the ", "to the ", "on ", "in ", "at "};
    for (size_t i = 0; i < sizeof heads / sizeof *heads; i++) {
        size_t n = strlen(heads[i]);
        if (strncmp(place, heads[i], n) != 0) continue;
        if (text_same(say_place(told->arena, place + n), place)) return place + n;
    }
    return place;
}

bool place_is_ours(struct told *told, const char *place) {
    return text_same(say_place(told->arena, place_bare(told, place)), place);
}

// --- sizes: "of about 3 mm (1/8 in)" ---

static const char *size_after(struct told *told, const char *text, struct item_flaw *flaw) {
    const char *rest = word_then(text, "about");
    flaw->size.about = rest != NULL;
    if (rest) text = rest;
    double value = 0, top, bottom;
    bool any = false;
    for (;; text++) { // "6", "1/4", "6 1/4", "0.5"
        size_t n = strspn(text, "0123456789.");
        if (!n || (any && text[n] != '/')) break;
        if (text[n] == '/') {
            char *end = NULL;
            top = strtod(text, NULL);
            bottom = strtod(text + n + 1, &end);
            if (bottom <= 0) return NULL;
            value += top / bottom;
            text = end;
        } else {
            value += strtod(text, NULL);
            text += n;
        }
        any = true;
        if (*text != ' ') return NULL;
    }
    const char *open = strstr(text, " (");
    const char *end = open ? strchr(open, ')') : NULL;
    if (!any || !end) return NULL;
    const char *name = arena_copy(told->arena, text, (size_t)(open - text));
    const struct unit *unit = say_unit(name, told->locale);
    if (!unit) return NULL;
    flaw->has_size = true;
    flaw->size.value = value;
    flaw->size.unit = unit;
    flaw->size.base = value * unit->factor;
    return end + 1;
}

static const char *maybe_size(struct told *told, const char *rest, bool mass, struct item_flaw *flaw) {
    const char *size = rest && *rest == ' ' ? word_then(rest + 1, mass ? "measuring" : "of") : NULL;
    if (!size) return rest;
    const char *end = size_after(told, size, flaw);
    if (!end) flaw->has_size = false;
    return end ? end : rest;
}

// --- faults ---

static const char *places_after(const char *rest, struct item_flaw *flaw) {
    int count;
    const char *at = rest && *rest == ' ' ? word_then(rest + 1, "in") : NULL;
    at = at ? number_after(at, &count) : NULL;
    const char *end = at ? words_after(at, count > 1 ? "places" : "place") : NULL;
    if (!end) return rest;
    flaw->count = count;
    return end;
}

// What may stand before degree and noun; the same for every kind, so it is read once.
struct head {
    const char *text;
    const char *one;  // behind "a" or "an"; NULL where none stands
    const char *many; // behind a number; NULL where none stands
    int count;
};

static struct head head_read(const char *text) {
    struct head head = {.text = text, .one = word_then(text, "a")};
    if (!head.one) head.one = word_then(text, "an");
    head.many = number_after(text, &head.count);
    return head;
}

// With the degree and noun at the head; the flaw's kind, part and degree are set.
static const char *noun_after(struct told *told, const struct head *head, struct item_flaw *flaw) {
    const struct flaw *kind = flaw->kind;
    const char *degree = wording_degree(flaw, true), *own = wording_rest(flaw);
    if (!own) own = kind->noun;
    const char *at, *rest = NULL;
    if (kind->mass) {
        at = word_then(head->text, degree);
        rest = maybe_size(told, at ? words_after(at, own) : NULL, true, flaw);
        return places_after(rest, flaw);
    }
    if (head->one) {
        at = word_then(head->one, degree);
        rest = at ? words_after(at, own) : NULL;
        return maybe_size(told, rest, false, flaw);
    }
    if (!head->many && !kind->many) return NULL;
    at = word_then(head->many ? head->many : head->text, degree);
    if (at && head->count != 1) own = kind->plural ? kind->plural : say_plural(told->arena, kind->noun);
    rest = at ? words_after(at, own) : NULL;
    flaw->count = head->count;
    return maybe_size(told, rest, false, flaw);
}

static const char *adjective_after(const char *text, const struct item_flaw *flaw) {
    if (!flaw->kind->adjective_own) return NULL;
    const char *at = word_then(text, wording_adverb(flaw, true)), *adjective = wording_adjective(flaw);
    return at && adjective ? words_after(at, adjective) : NULL;
}

// --- states ---

// A rule's predicate: its verb in braces, and others that agree with the subject.
static const char *says_after(const char *text, const char *says, enum told_verb verb) {
    static const struct {
        const char *name;
        enum told_verb verb;
        const char *one, *many;
    } verbs[] = {
        {"is", TOLD_IS, "is", "are"}, {"has", TOLD_HAS, "has", "have"}, {"was", TOLD_WAS, "was", "were"}};
    bool first = true;
    while (*says) {
        if (*says != '{') {
            size_t n = strcspn(says, "{");
            if (first && *says == ' ') says++, n--;
            if (strncmp(text, says, n) != 0) return NULL;
            text += n;
            says += n;
            first = false;
            continue;
        }
        const char *end = strchr(says, '}');
        for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++) {
            if (strncmp(says + 1, verbs[i].name, (size_t)(end - says - 1)) != 0) continue;
            if (first && verbs[i].verb != verb) return NULL;
            if (first) break;
            const char *rest = words_after(text, verbs[i].many);
            if (!rest) rest = words_after(text, verbs[i].one);
            if (!rest) return NULL;
            text = rest;
            break;
        }
        says = end + 1;
    }
    return is_letter(*text) ? NULL : text;
}

const char *degree_behind(struct told *told, const char *rest, struct item_flaw *flaw) {
    rest = maybe_size(told, rest, true, flaw);
    for (int s = SEVERITY_LIGHT; rest && s <= SEVERITY_HEAVY; s++) {
        const char *words = arena_format(told->arena, " (%s)", severity_name((enum severity)s));
        if (strncmp(rest, words, strlen(words)) != 0) continue;
        flaw->severity = (enum severity)s;
        return rest + strlen(words);
    }
    return rest;
}

static const char *state_after(struct told *told, const char *text, enum told_verb verb,
                               struct item_flaw *flaw) {
    const struct flaw *kind = flaw->kind;
    const char *says = told->part && kind->says_part ? kind->says_part : kind->says;
    if (!says) return NULL;
    return degree_behind(told, says_after(text, says, verb), flaw);
}

// --- one fault ---

static void try_kind(struct told *told, const struct head *head, enum told_verb verb, const struct flaw *kind,
                     struct item_flaw *best, const char **end) {
    const char *text = head->text;
    for (int s = SEVERITY_UNKNOWN; s < SEVERITY_COUNT; s++) {
        struct item_flaw flaw = {.kind = kind, .part = told->part, .severity = (enum severity)s};
        const char *rest = NULL;
        bool named = kind->noun && (kind->form == FAULT || (kind->form == STATE && !told->part));
        if (verb == TOLD_HAS && named) rest = noun_after(told, head, &flaw);
        if (kind->form == STATE && !flaw.count) rest = NULL; // told by its noun where there are several
        if (!rest && verb == TOLD_IS && kind->form == FAULT) rest = adjective_after(text, &flaw);
        if (!rest && kind->form != FAULT && s == SEVERITY_UNKNOWN)
            rest = state_after(told, text, verb, &flaw);
        bool own = kind->form == FAULT && wording_rest(&flaw);
        if (!rest || rest < *end || (rest == *end && !own)) continue;
        *best = flaw;
        *end = rest;
    }
}

const char *predicate_one(struct told *told, const char *text, enum told_verb verb, struct item_flaw *flaw) {
    const struct head head = head_read(text);
    const char *end = text;
    for (size_t i = 0; i < told->rules->flaw_count; i++)
        try_kind(told, &head, verb, told->rules->flaws[i], flaw, &end);
    return end > text ? end : NULL;
}

static bool is_state(const struct item_flaw *flaw) {
    return flaw->kind->form == STATE && !(flaw->kind->noun && flaw->count);
}

static bool keep(struct told *told, struct item_flaw flaw, const char *place) {
    if (told->flaw_count == TOLD_MOST) return false;
    if (*place == ' ') place++;
    size_t n = strlen(place);
    if (told->side)
        flaw.where = told->side;
    else if (is_state(&flaw) && *place == '(' && place[n - 1] == ')')
        flaw.where = arena_copy(told->arena, place + 1, n - 2);
    else if (*place && !place_is_ours(told, place))
        return false;
    else if (*place)
        flaw.where = place_bare(told, place);
    if (told->of || told->pieces) {
        flaw.count = told->count;
        flaw.of = told->of;
    }
    told->flaws[told->flaw_count++] = flaw;
    return true;
}

bool predicate_read(struct told *told, const char *text, enum told_verb verb, bool placed) {
    const char *rest = verb_after(told, text, &verb);
    if (rest) text = rest;
    struct item_flaw flaw = {.kind = NULL};
    const char *end = predicate_one(told, text, verb, &flaw), *sign = end, *behind;
    if (!end) return false;
    size_t before = told->flaw_count;
    for (; (sign = list_sign(sign, &behind)) != NULL; sign = behind) {
        const char *place = arena_copy(told->arena, end, (size_t)(sign - end));
        if (sign != end && (placed || *end != ' ')) continue;
        told->flaw_count = before;
        if (keep(told, flaw, place) && predicate_read(told, behind, verb, placed)) return true;
        told->flaw_count = before;
    }
    if (*end && (*end != ' ' || placed)) return false;
    return keep(told, flaw, end);
}
