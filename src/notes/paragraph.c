// SPDX-License-Identifier: MIT
// Sentences of the disclosure: who is spoken of, then what. A note is read so only as a whole: one sentence
// that is not ours makes it the seller's own words.
#include "notes/paragraph.h"

#include <string.h>

#include "text/order.h"

enum { SENTENCE_MOST = 2000 }; // bytes; a longer one is none of ours

static const char *after(const char *text, const char *head) {
    size_t n = strlen(head);
    return strncmp(text, head, n) ? NULL : text + n;
}

static void forget(struct told *told) {
    told->flaw_count = 0;
    told->part = told->side = NULL;
    told->count = told->of = 0;
    told->maybe = told->pieces = false;
}

// --- "on the rim it has a chip", "a chip shows on the rim" ---

static bool fronted_read(struct told *told, const char *text) {
    static const char *const joints[] = {" it has ",   " it may have ", " they have ",   " they may have ",
                                         " there is ", " there are ",   " there may be "};
    for (size_t i = 0; i < sizeof joints / sizeof *joints; i++) {
        const char *at = strstr(text, joints[i]);
        if (!at) continue;
        const char *place = arena_copy(told->arena, text, (size_t)(at - text));
        if (!place_is_ours(told, place)) continue;
        forget(told);
        told->maybe = strstr(joints[i], " may ") != NULL;
        told->side = place_bare(told, place);
        if (predicate_read(told, at + strlen(joints[i]), TOLD_HAS, true)) return true;
    }
    forget(told);
    return false;
}

static bool seen_read(struct told *told, const char *text) {
    if (!strstr(text, " show")) return false; // before all kinds are tried for the head
    struct item_flaw flaw = {.kind = NULL};
    const char *end = predicate_one(told, text, TOLD_HAS, &flaw), *place;
    if (!end) return false;
    place = after(end, " shows ");
    if (!place) place = after(end, " show ");
    if (!place && (place = after(end, " may show ")) != NULL) told->maybe = true;
    if (!place || !*place || !place_is_ours(told, place)) return false;
    flaw.where = place_bare(told, place);
    told->flaws[told->flaw_count++] = flaw;
    return true;
}

// --- subjects ---

static bool same_letters(const char *a, const char *b) {
    for (; *a && *b; a++, b++) {
        char x = *a >= 'A' && *a <= 'Z' ? (char)(*a + 32) : *a,
             y = *b >= 'A' && *b <= 'Z' ? (char)(*b + 32) : *b;
        if (x != y) return false;
    }
    return !*a && !*b;
}

// "two of the six", "both", "all four", with the part's plural behind it.
static bool pieces_read(struct told *told, const char *text) {
    const char *rest = after(text, "both"), *at;
    if (rest) {
        told->count = told->of = 2;
    } else if ((at = after(text, "all ")) != NULL) {
        rest = number_after(arena_format(told->arena, "%s ", at), &told->count);
        told->of = told->count;
    } else if ((at = number_after(text, &told->count)) != NULL && (at = after(at, "of ")) != NULL) {
        const char *the = after(at, "the ");
        told->pieces = true;
        if (!the) return after(at, "them") && !at[strlen("them")];
        rest = number_after(arena_format(told->arena, "%s ", the), &told->of);
        if (!rest) { // "two of the lids", "one of the pieces"
            told->of = 0;
            if (!text_same(the, "pieces")) told->part = say_singular(told->arena, the);
            return *the != '\0';
        }
        told->pieces = false;
    }
    if (!rest) return false;
    while (*rest == ' ') rest++;
    size_t n = strlen(rest);
    while (n && rest[n - 1] == ' ') n--;
    if (n) told->part = say_singular(told->arena, arena_copy(told->arena, rest, n));
    return true;
}

// "The wiring was frayed and has been replaced", "the lid sticks, the plug has been replaced" are a seller's
// sentences; no part of ours holds a verb or another subject.
static bool holds_verb(const char *part) {
    static const char *const verbs[] = {
        " is ",      " are ",     " was ",     " were ",    " has ",     " have ", " had ",     " sticks ",
        " slips ",   " jams ",    " sticks, ", " slips, ",  " jams, ",   ", the ", " but the ", ", its ",
        " and one ", " and its ", " leaks ",   " rattles ", " wobbles ", " hums ", " works ",   " turns "};
    for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++)
        if (strstr(part, verbs[i])) return true;
    return false;
}

static bool subject_read(struct told *told, const char *text) {
    if (text_same(text, "it") || text_same(text, "they") || text_same(text, "there")) return true;
    const char *part = after(text, "the "), *on = after(text, "on ");
    if (part && told->type &&
        (same_letters(part, told->type) || same_letters(part, say_plural(told->arena, told->type))))
        return true;
    if (part) {
        told->part = part;
        return *part && !holds_verb(part);
    }
    const char *comma = on ? strstr(on, ", the ") : NULL;
    if (comma) {
        if (!pieces_read(told, arena_copy(told->arena, on, (size_t)(comma - on)))) return false;
        told->part = comma + strlen(", the ");
        return true;
    }
    return pieces_read(told, text);
}

// Of a state the place stands with the part: "the signature on the bottom is unread".
static void part_place(struct told *told) {
    for (size_t i = 0; i < told->flaw_count; i++)
        if (told->flaws[i].kind->form != STATE) return;
    for (const char *at = told->part ? strchr(told->part, ' ') : NULL; at; at = strchr(at + 1, ' ')) {
        const char *bare = place_bare(told, at + 1);
        if (!text_same(say_place(told->arena, bare), at + 1)) continue;
        const char *part = arena_copy(told->arena, told->part, (size_t)(at - told->part));
        for (size_t i = 0; i < told->flaw_count; i++) {
            told->flaws[i].part = part;
            told->flaws[i].where = bare;
        }
        return;
    }
}

static bool plain_read(struct told *told, const char *text) {
    for (const char *at = strchr(text, ' '); at; at = strchr(at + 1, ' ')) {
        enum told_verb verb = TOLD_IS;
        forget(told);
        const char *rest = verb_after(told, at + 1, &verb);
        if (!rest) continue;
        if (!subject_read(told, arena_copy(told->arena, text, (size_t)(at - text)))) continue;
        if (after(text, "there ") && at == text + strlen("there")) verb = TOLD_HAS;
        if (!predicate_read(told, rest, verb, false)) continue;
        part_place(told);
        return true;
    }
    forget(told);
    return false;
}

// --- the whole ---

static bool sentence_read(struct told *told, const char *text) {
    told->unsized = after(text, "size or degree not stated") != NULL;
    if (told->unsized) return true;
    return sought_read(told, text) || fronted_read(told, text) || seen_read(told, text) ||
           plain_read(told, text) || absence_read(told, text);
}

// Tokens [from, to) of a sentence without its stop, in small letters where only the sentence made the
// capital.
static const char *words_of(struct note *note, size_t from, size_t to) {
    const char *text = note->tokens.text + note->tokens.at[from].from;
    char *copy = arena_copy(note->arena, text, note->tokens.at[to - 1].to - note->tokens.at[from].from);
    if (copy[0] >= 'A' && copy[0] <= 'Z' && !(copy[1] >= 'A' && copy[1] <= 'Z'))
        copy[0] = (char)(copy[0] + 32);
    return copy;
}

// Where the sentence at token `i` stops: its full stop, or the end.
static size_t stop_of(const struct tokens *tokens, size_t i) {
    while (i < tokens->count && tokens->at[i].stop < STOP_SENTENCE) i++;
    return i;
}

// A fault without its degree is said to have none, once, in every paragraph of ours.
static bool lacks_degree(const struct paragraph *p) {
    bool lacks = false, said = false;
    for (size_t i = 0; i < p->count; i++) {
        said |= p->sentences[i].unsized;
        for (size_t k = 0; k < p->sentences[i].flaw_count; k++)
            lacks |= wording_unsized(&p->sentences[i].flaws[k]);
    }
    return lacks && !said;
}

static bool tells(const struct told *told) {
    return told->flaw_count || told->clear_count || told->unchecked_count;
}

// A thing that the rules know by such a name has no fault for it: a gouge, a replacement lid.
static bool names_thing(const struct note *note, const char *type) {
    size_t count;
    return type && (ruleset_things(note->rules, type, &count) ||
                    ruleset_things(note->rules, say_singular(note->arena, type), &count));
}

// Every sentence of ours but the first, which may name the thing, begins with a capital or a figure, and none
// begins so.
static bool may_be_ours(const struct tokens *tokens) {
    static const char *const others[] = {
        "i",   "i've", "i'm",  "my",   "it's",   "its",    "there's", "you",  "we",  "he",    "she", "but",
        "and", "so",   "very", "nice", "lovely", "please", "was",     "have", "has", "comes", "from"};
    for (size_t i = 1; i < tokens->count; i++) {
        const struct token *t = &tokens->at[i];
        if (tokens->at[i - 1].stop < STOP_SENTENCE) continue;
        bool starts = t->capital || t->kind != TOKEN_WORD;
        if (!starts || token_among(tokens, i, others, sizeof others / sizeof *others)) return false;
    }
    return true;
}

struct paragraph paragraph_read(struct note *note) {
    struct paragraph none = {NULL, NULL, 0}, p = none;
    struct tokens *tokens = &note->tokens;
    const char *type = NULL;
    size_t first = 0, room = 0, span_room = 0;
    bool any = false;
    if (!may_be_ours(tokens)) return none;
    for (size_t i = 0; i < tokens->count;) {
        size_t stop = stop_of(tokens, i);
        if (stop == i) return none; // a stop without a sentence
        if (tokens->at[stop - 1].to - tokens->at[i].from > SENTENCE_MOST) return none;
        struct told told = {.arena = note->arena, .rules = note->rules, .locale = note->locale, .type = type};
        bool read = sentence_read(&told, words_of(note, i, stop));
        if (!read && i > 0) return none;
        if (!read) {
            type = words_of(note, i, stop);
            first = stop + (stop < tokens->count);
        } else {
            p.sentences = arena_grow(note->arena, p.sentences, p.count, &room, sizeof *p.sentences);
            p.spans = arena_grow(note->arena, p.spans, p.count, &span_room, sizeof *p.spans);
            p.spans[p.count] = note_span_of(note, i, stop);
            p.sentences[p.count++] = told;
            any |= tells(&told);
        }
        i = stop + 1;
    }
    if (!any || lacks_degree(&p)) return none;
    tokens->count = first;
    if (names_thing(note, type)) note->hits.count = 0;
    while (note->hits.count && note->hits.at[note->hits.count - 1].to > first) note->hits.count--;
    return p;
}

static bool same(const char *a, const char *b) {
    return (!a && !b) || (a && b && text_same(a, b));
}

static bool is_known(const struct record *record, const struct item_clear *clear) {
    for (size_t i = 0; i < record->clear_count; i++)
        if (record->clear[i].kind == clear->kind && same(record->clear[i].part, clear->part) &&
            same(record->clear[i].where, clear->where))
            return true;
    return false;
}

enum { TWINS_LOOKED_AT = 1000 }; // further back a repeat stands twice

// The same fault said again is one flaw.
static bool is_twin(const struct record *record, const struct item_flaw *flaw) {
    size_t from = record->flaw_count > TWINS_LOOKED_AT ? record->flaw_count - TWINS_LOOKED_AT : 0;
    for (size_t i = from; i < record->flaw_count; i++) {
        const struct item_flaw *f = &record->flaws[i];
        if (f->kind == flaw->kind && same(f->part, flaw->part) && same(f->where, flaw->where) &&
            f->count == flaw->count && f->of == flaw->of && f->severity == flaw->severity &&
            f->sure == flaw->sure && f->has_size == flaw->has_size && f->size.unit == flaw->size.unit &&
            f->size.base >= flaw->size.base && f->size.base <= flaw->size.base)
            return true;
    }
    return false;
}

static void tell(struct note *note, struct note_span span, const char *what) {
    note->readings = arena_grow(note->arena, note->readings, note->reading_count, &note->reading_room,
                                sizeof *note->readings);
    note->readings[note->reading_count++] =
        (struct reading){span.from, span.to, what, "a sentence of a disclosure", NULL};
}

void paragraph_keep(struct note *note, const struct paragraph *paragraph) {
    for (size_t i = 0; i < paragraph->count; i++) {
        const struct told *told = &paragraph->sentences[i];
        struct note_span span = paragraph->spans[i];
        for (size_t k = 0; k < told->flaw_count; k++) {
            struct item_flaw flaw = told->flaws[k];
            flaw.span = span;
            flaw.sure = told->maybe ? SURE_LIKELY : SURE_STATED;
            if (!is_twin(note->record, &flaw)) *note_flaw(note) = flaw;
            tell(note, span, arena_format(note->arena, "flaw %s", flaw.kind->rule.id));
        }
        for (size_t k = 0; k < told->clear_count; k++) {
            struct item_clear clear = told->clear[k];
            clear.span = span;
            if (!is_known(note->record, &clear)) *note_clear(note) = clear;
            tell(note, span, arena_format(note->arena, "clear %s", clear.kind->rule.id));
        }
        for (size_t k = 0; k < told->unchecked_count; k++) {
            note_unchecked(note, told->unchecked[k]);
            tell(note, span, arena_format(note->arena, "unchecked %s", told->unchecked[k]));
        }
    }
}
