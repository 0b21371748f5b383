// SPDX-License-Identifier: MIT
// A claim word stands only where the record holds the evidence that its rule asks for: a mark that was read,
// or (for age words) years. What the seller merely calls the thing is no evidence.
#include "evidence/claims.h"

#include <string.h>

#include "evidence/qualify.h"
#include "rules/trigger.h"
#include "text/order.h"

static const char *const verdict_words[] = {"allow", "qualify", "ask", "refuse"};

const char *verdict_name(enum verdict verdict) {
    return verdict_words[verdict];
}

struct weigher {
    struct arena *arena;
    struct scanner *scanner;
    const struct ruleset *rules;
    const struct record *record;
    struct claims *claims;
    struct buf subject;  // every text to look through, one after another
    struct span *pieces; // where each of them stands in it
    size_t count, room;
    size_t colors_from, colors_to; // which of them are colors
    size_t marks_from;             // and from which on they are marks
};

static const char *mark_of(struct weigher *w, const struct finder *finder) {
    if (!finder->match.count) return NULL;
    for (size_t i = 0; i < w->record->mark_count; i++) {
        const char *mark = w->record->marks[i].text;
        struct span span;
        enum scan_result result = scanner_find(w->scanner, finder, mark, strlen(mark), 0, &span);
        if (result == SCAN_FOUND) return mark;
        w->claims->slow |= result == SCAN_SLOW;
    }
    return NULL;
}

static void note(struct weigher *w, const struct claim *claim, const char *word, bool color) {
    struct claims *c = w->claims;
    struct claim_found found = {.claim = claim, .word = word, .verdict = claim->verdict, .color = color};
    size_t at = 0;
    while (at < c->count && (c->items[at].claim != claim || !text_same(c->items[at].word, word))) at++;
    if (at < c->count && (!c->items[at].color || color)) return;
    found.evidence = mark_of(w, &claim->evidence);
    if (found.evidence)
        found.verdict = VERDICT_ALLOW;
    else
        qualify(w->arena, &found, mark_of(w, &claim->marked));
    if (at == c->count) c->items = arena_grow(w->arena, c->items, c->count++, &c->room, sizeof *c->items);
    c->items[at] = found;
}

// One text to look through: what a claim finds in its first `own` bytes is noted. A match that runs on beyond
// them counts as the part of it that lies there: of "gold ring" the color "gold", where the ring is the type.
static void weigh_part(struct weigher *w, const char *text, size_t own) {
    w->pieces = arena_grow(w->arena, w->pieces, w->count, &w->room, sizeof *w->pieces);
    w->pieces[w->count++] = (struct span){w->subject.n, w->subject.n + own};
    buf_text(&w->subject, text);
    buf_text(&w->subject, "\n.\n"); // no phrase and no look-around of a pattern reaches over this
}

// What no mark bears out, as "flawless": a mark that says so is quoted, and never told without its quotes.
static bool is_mere_praise(const struct claim *claim) {
    return claim->verdict == VERDICT_REFUSE && !claim->evidence.match.count && !claim->from_year &&
           !claim->to_year;
}

static void note_match(struct weigher *w, const struct claim *claim, struct span match) {
    for (size_t i = 0; i < w->count; i++) {
        const struct span *piece = &w->pieces[i];
        if (match.from < piece->from || match.from >= piece->to) continue;
        if (i >= w->marks_from && !is_mere_praise(claim)) continue;
        size_t to = match.to < piece->to ? match.to : piece->to;
        bool color = i >= w->colors_from && i < w->colors_to;
        note(w, claim, arena_copy(w->arena, w->subject.at + match.from, to - match.from), color);
    }
}

// The pattern ran out of steps somewhere: each text alone then, and of the one that is too slow nothing
// passes, since nobody knows what it holds.
static void weigh_apart(struct weigher *w, const struct claim *claim) {
    w->claims->slow = true;
    for (size_t i = 0; i < w->count; i++) {
        struct span piece = w->pieces[i], match = piece;
        const char *text = w->subject.at + piece.from;
        enum scan_result result =
            scanner_find(w->scanner, &claim->finder, text, piece.to - piece.from, 0, &match);
        if (result == SCAN_FOUND)
            note_match(w, claim, (struct span){piece.from + match.from, piece.from + match.to});
        if (result == SCAN_SLOW) note_match(w, claim, piece);
    }
}

static void weigh_claim(struct weigher *w, const struct claim *claim) {
    for (size_t from = 0; from < w->subject.n;) {
        struct span match = {0, 0};
        enum scan_result result =
            scanner_find(w->scanner, &claim->finder, w->subject.at, w->subject.n, from, &match);
        if (result == SCAN_SLOW) weigh_apart(w, claim);
        if (result != SCAN_FOUND) return;
        note_match(w, claim, match);
        from = match.to;
    }
}

// All texts are looked through in one pass a claim: a call of PCRE2 costs more than the few words it reads.
static void weigh_all(struct weigher *w) {
    unsigned char *wanted = arena_array(w->arena, w->rules->finder_count + 1, sizeof *wanted);
    triggers_mark(w->rules->claim_triggers, w->subject.at, wanted);
    for (size_t i = 0; i < w->rules->claim_count; i++)
        if (wanted[w->rules->claims[i]->finder.number]) weigh_claim(w, w->rules->claims[i]);
}

static void weigh_text(struct weigher *w, const char *text) {
    if (text) weigh_part(w, text, strlen(text));
}

static void weigh_before(struct weigher *w, const char *text, const char *head) {
    if (head) weigh_part(w, arena_format(w->arena, "%s %s", text, head), strlen(text));
}

// An attribute stands in a title before the type, of one or of many, or before the family's own word, and may
// say there what neither says alone.
static void weigh_attribute(struct weigher *w, const struct value *value) {
    const struct record *record = w->record;
    weigh_text(w, value->value);
    weigh_text(w, value->of);
    if (value->sure != SURE_STATED) return; // never printed
    if (value->of) {
        weigh_before(w, value->value, value->of);
        return;
    }
    weigh_before(w, value->value, record->type.value);
    if (record->type.value) weigh_before(w, value->value, say_plural(w->arena, record->type.value));
    if (record->family) weigh_before(w, value->value, record->family->print);
}

// A part that the rule of the flaw names itself ("pearl" of a missing pearl) is told as its rule has it.
// So is the one crystal that is loose, scratched or gone: the glass of a watch, and no stuff.
bool claims_leave(const struct flaw *kind, const char *text) {
    bool glass = kind && text && text_same(text, "crystal");
    if (glass && (kind->form == ABSENCE || text_same(kind->rule.id, "loose-part") ||
                  text_same(kind->rule.id, "screen-damage")))
        return true;
    for (size_t i = 0; text && kind && i < kind->parts.count; i++)
        if (text_same(kind->parts.at[i], text)) return true;
    return false;
}

static void weigh_places(struct weigher *w) {
    const struct record *r = w->record;
    for (size_t i = 0; i < r->flaw_count; i++) {
        const struct item_flaw *flaw = &r->flaws[i];
        if (!claims_leave(flaw->kind, flaw->part)) weigh_text(w, flaw->part);
        if (!claims_leave(flaw->kind, flaw->where)) weigh_text(w, flaw->where);
    }
    for (size_t i = 0; i < r->clear_count; i++) {
        const struct item_clear *clear = &r->clear[i];
        if (!claims_leave(clear->kind, clear->part)) weigh_text(w, clear->part);
        if (!claims_leave(clear->kind, clear->where)) weigh_text(w, clear->where);
    }
    for (size_t i = 0; i < r->unchecked.count; i++)
        if (!ruleset_flaw(w->rules, r->unchecked.at[i])) weigh_text(w, r->unchecked.at[i]);
    for (size_t i = 0; i < r->measurement_count; i++) weigh_text(w, r->measurements[i].of);
    for (size_t i = 0; i < r->mark_count; i++) weigh_text(w, r->marks[i].where);
    for (size_t i = 0; i < r->photo_count; i++) weigh_text(w, r->photos[i].shows);
}

static bool is_color(const struct value *value) {
    return text_same(value->name, "color");
}

struct claims *claims_weigh(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                            const struct record *record) {
    struct claims *claims = arena_alloc(arena, sizeof *claims);
    struct weigher w = {
        .arena = arena, .scanner = scanner, .rules = rules, .record = record, .claims = claims};
    w.subject = buf_start(arena);
    weigh_text(&w, record->type.value);
    for (size_t i = 0; i < record->others.count; i++) weigh_text(&w, record->others.at[i]);
    for (size_t i = 0; i < record->attribute_count; i++)
        if (!is_color(&record->attributes[i])) weigh_attribute(&w, &record->attributes[i]);
    w.colors_from = w.count;
    for (size_t i = 0; i < record->attribute_count; i++)
        if (is_color(&record->attributes[i])) weigh_attribute(&w, &record->attributes[i]);
    w.colors_to = w.count;
    for (size_t i = 0; i < record->include_count; i++) weigh_text(&w, record->includes[i].what);
    weigh_places(&w);
    w.marks_from = w.count;
    for (size_t i = 0; i < record->mark_count; i++) weigh_text(&w, record->marks[i].text);
    weigh_all(&w);
    return claims;
}

struct claims *claims_weigh_text(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                                 const struct record *record, const char *text) {
    struct claims *claims = arena_alloc(arena, sizeof *claims);
    struct weigher w = {
        .arena = arena, .scanner = scanner, .rules = rules, .record = record, .claims = claims};
    w.subject = buf_start(arena);
    weigh_text(&w, text);
    w.marks_from = w.count;
    weigh_all(&w);
    return claims;
}

static bool bars(const struct claim_found *found, const char *text, struct span *at) {
    for (size_t from = 0; qualify_stands_at(text, from, found->word, at); from = at->to)
        if (!qualify_is_written(text, *at, found->written)) return true;
    return false;
}

static const struct claim_found *bar_at(const struct claims *claims, const char *text, struct span *at) {
    for (size_t i = 0; i < claims->count; i++)
        if (claims->items[i].verdict != VERDICT_ALLOW && bars(&claims->items[i], text, at))
            return &claims->items[i];
    return NULL;
}

const struct claim_found *claims_bar(const struct claims *claims, const char *text) {
    struct span at;
    return bar_at(claims, text, &at);
}

// "band of sterling silver" is a band; "the genuine leather" is nothing.
static bool trim_small(char *text) {
    static const char *const small[] = {"of", "in", "with", "from", "on",   "the",
                                        "a",  "an", "and",  "at",   "near", "by"};
    for (bool again = true; again && *text;) {
        again = false;
        char *last = strrchr(text, ' ');
        char *word = last ? last + 1 : text;
        for (size_t i = 0; i < sizeof small / sizeof *small; i++) again |= text_same(word, small[i]);
        again |= !*word;
        if (again) *(last ? last : text) = '\0';
    }
    return *text != '\0';
}

// Of "guaranteed authentic" the whole, or "authentic" would be left, which nobody weighed alone.
static bool longest_bar(const struct claims *claims, const char *text, struct span *at) {
    struct span found;
    *at = (struct span){0, 0};
    for (size_t i = 0; i < claims->count; i++)
        if (claims->items[i].verdict != VERDICT_ALLOW && bars(&claims->items[i], text, &found) &&
            found.to - found.from > at->to - at->from)
            *at = found;
    return at->to != 0;
}

const char *claims_cut(struct arena *arena, const struct claims *claims, const char *text) {
    struct span at;
    if (!text || !bar_at(claims, text, &at)) return text;
    char *left = arena_copy(arena, text, strlen(text));
    while (longest_bar(claims, left, &at)) {
        const char *rest = left + at.to + strspn(left + at.to, " ,-");
        memmove(left + at.from, rest, strlen(rest) + 1);
    }
    return trim_small(left) ? left : NULL;
}
