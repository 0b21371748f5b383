// SPDX-License-Identifier: MIT
// Every text of the record is a piece of one subject, and each piece is judged alone: another piece, and so
// another fact, can only raise more.
#include "evidence/cautions.h"

#include <string.h>

#include "evidence/sense.h"
#include "evidence/signs.h"
#include "rules/trigger.h"
#include "text/order.h"
#include "text/utf8.h"

struct piece {
    struct span span;
    const char *field; // NULL: the notes
};

struct named {
    const char *text, *noun; // as written; singular and in small letters
};

struct raiser {
    struct arena *arena;
    struct scanner *scanner;
    const struct ruleset *rules;
    const struct record *record;
    const char *notes; // of the record, as far as they were read
    const char *own;   // the same with dots for what is not about the thing
    struct buf subject;
    size_t own_size; // of the subject: what stands before notes with what is not about the thing
    struct piece *pieces;
    size_t count, room;
    struct named *named; // what the record says it is, may be or holds
    size_t named_count;
    unsigned char *wanted; // finders whose words may stand in the subject, and why
    struct span *signs;    // where the signs of each caution stand in the notes
};

// --- the subject ---

static void add_text(struct raiser *r, const char *field, const char *text) {
    if (!text || !*text) return;
    r->pieces = arena_grow(r->arena, r->pieces, r->count, &r->room, sizeof *r->pieces);
    r->pieces[r->count++] = (struct piece){{r->subject.n, r->subject.n + strlen(text)}, field};
    buf_text(&r->subject, text);
    buf_text(&r->subject, "\n.\n"); // no phrase reaches over this
}

// Names are no evidence of what a thing is: a maker may be called Mercury.
static bool is_name(const char *attribute) {
    static const char *const names[] = {"brand", "model",    "name", "author", "byArtist",
                                        "isbn",  "audience", "mpn",  "gtin",   "countryOfOrigin"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        if (text_same(attribute, names[i])) return true;
    return false;
}

// What was read out of the notes is judged there, where its words have the others around them.
static bool is_from_notes(const struct raiser *r, struct note_span span) {
    return r->notes && span.to;
}

// "material ivory" tells what "color ivory" does not; "ivory handle" reads as it would in the seller's words.
static void add_attribute(struct raiser *r, const struct value *value) {
    if (is_from_notes(r, value->span)) return;
    if (is_name(value->name)) {
        if (text_same(value->name, "audience")) add_text(r, "attributes", value->value);
        return;
    }
    const char *text = arena_format(r->arena, "%s %s", value->name, value->value);
    add_text(r, "attributes", text);
    const char *head = value->of ? value->of : r->record->type.value;
    if (head) add_text(r, "attributes", arena_format(r->arena, "%s %s", text, head));
}

static size_t border(const char *text, size_t at, bool on) {
    while (at && ((unsigned char)text[at] & 0xC0) == 0x80) at = on ? at + 1 : at - 1;
    return at;
}

// The notes without what is not about the thing; what names it is.
static const char *own_notes(struct raiser *r) {
    const char *notes = r->notes;
    if (!notes || !r->record->asides) return notes;
    size_t size = strlen(notes);
    char *copy = arena_copy(r->arena, notes, size);
    for (size_t i = 0; i < r->record->asides->count; i++) {
        const struct node *span = r->record->asides->members[i].value;
        double from, to;
        if (span->kind != NODE_LIST || span->count != 2 || !node_number(span->members[0].value, &from) ||
            !node_number(span->members[1].value, &to))
            continue;
        if (!(from >= 0 && from < to && to <= (double)size)) continue;
        struct note_span type = r->record->type.span;
        if (type.to && from <= (double)type.from && (double)type.to <= to) continue;
        size_t first = border(notes, (size_t)from, false), last = border(notes, (size_t)to, true);
        memset(copy + first, '.', last - first);
    }
    return copy;
}

static void add_record(struct raiser *r) {
    const struct record *record = r->record;
    bool from_notes = is_from_notes(r, record->type.span);
    if (!from_notes) add_text(r, "type", record->type.value);
    for (size_t i = 0; i < record->others.count && !from_notes; i++)
        add_text(r, "type", record->others.at[i]);
    for (size_t i = 0; i < record->attribute_count; i++) add_attribute(r, &record->attributes[i]);
    for (size_t i = 0; i < record->include_count; i++) add_text(r, "includes", record->includes[i].what);
    for (size_t i = 0; i < record->flaw_count; i++) {
        if (is_from_notes(r, record->flaws[i].span)) continue;
        add_text(r, "flaws", record->flaws[i].part);
        add_text(r, "flaws", record->flaws[i].where);
    }
    for (size_t i = 0; i < record->mark_count; i++) add_text(r, "marks", record->marks[i].text);
    for (size_t i = 0; i < record->measurement_count; i++)
        add_text(r, "measurements", record->measurements[i].of);
    for (size_t i = 0; i < record->fit_count; i++) {
        add_text(r, "fits", record->fits[i].brand);
        add_text(r, "fits", record->fits[i].model);
    }
    r->own = own_notes(r);
    add_text(r, NULL, r->own);
    r->own_size = r->subject.n;
    if (r->own != r->notes && *r->own) add_text(r, NULL, r->notes);
}

// --- what raises a caution ---

static const struct piece *piece_at(const struct raiser *r, size_t at) {
    for (size_t i = 0; i < r->count; i++)
        if (at >= r->pieces[i].span.from && at < r->pieces[i].span.to) return &r->pieces[i];
    return NULL;
}

// Notes are not quoted, since they may hold what is private: their span is given.
static void note_words(struct raiser *r, const struct piece *piece, struct span match,
                       struct caution_found *found) {
    if (piece->field) {
        found->because = arena_format(r->arena, "'%.*s' in %s", (int)(match.to - match.from),
                                      r->subject.at + match.from, piece->field);
        return;
    }
    found->because = "the notes";
    found->span = (struct note_span){match.from - piece->span.from, match.to - piece->span.from};
}

// What stops, and what befell the thing, is not let go for a word beside it.
static bool is_meant(const struct caution *caution, const char *text, size_t from, size_t to) {
    if (!sense_is_meant(text, from, to)) return false;
    if (caution->shown || caution->history || caution->stop) return true;
    if (sense_is_else(text, to) || sense_is_casting(text, from, to)) return false;
    return caution_is_state(caution) || (!sense_is_pictured(text, from, to) && !sense_is_gone(text, to) &&
                                         (caution->residue || !sense_was_inside(text, from, to)));
}

// "Paper mould": a state is none where it is what the thing is called.
static bool is_its_name(const struct raiser *r, const struct caution *caution, const struct piece *piece,
                        struct span match) {
    if (!caution_is_state(caution)) return false;
    if (piece->field) return text_same(piece->field, "type");
    struct note_span type = r->record->type.span;
    size_t from = match.from - piece->span.from, to = match.to - piece->span.from;
    return is_from_notes(r, type) && from >= type.from && to <= type.to;
}

// "Pull-along duck. Paint sound": what a pattern ends on may be part of a phrase that means something else.
static bool ends_benign(struct raiser *r, const struct caution *caution, struct span match) {
    if (!caution->benign.said.count) return false;
    for (size_t from = match.from + 1; from < match.to;) {
        struct span benign;
        if (scanner_find(r->scanner, &caution->benign, r->subject.at, r->subject.n, from, &benign) !=
                SCAN_FOUND ||
            benign.from >= match.to)
            return false;
        if (benign.to > match.to) return true;
        from = benign.to;
    }
    return false;
}

// A pattern that takes too long says nothing: then the caution is raised, since nobody knows. `flat`: a word
// counts whatever stands around it. Where what befell the thing counts, so does what is told beside it.
static bool by_words(struct raiser *r, const struct finder *finder, const struct caution *caution, bool flat,
                     struct caution_found *found) {
    unsigned why = r->wanted[finder->number];
    size_t size = caution->history ? r->subject.n : r->own_size;
    if (!why || (!(why & TRIGGER_SAID) && !scanner_may_match(r->scanner, finder, r->subject.at, size)))
        return false;
    for (size_t from = 0; from < size;) {
        struct span match = {0, 0};
        enum scan_result result = scanner_find(r->scanner, finder, r->subject.at, size, from, &match);
        if (result == SCAN_SLOW) {
            found->because = "a text that took too long to read";
            return true;
        }
        if (result != SCAN_FOUND) return false;
        const struct piece *piece = piece_at(r, match.from);
        if (piece && !is_its_name(r, caution, piece, match) &&
            (flat || is_meant(caution, r->subject.at, match.from, match.to)) &&
            (flat || !ends_benign(r, caution, match))) {
            note_words(r, piece, match, found);
            return true;
        }
        from = match.to;
    }
    return false;
}

static bool ends_with(const char *noun, const char *word) {
    size_t n = strlen(noun), m = strlen(word);
    return n >= m && text_same(noun + n - m, word) && (n == m || noun[n - m - 1] == ' ');
}

// `noun`: singular and in small letters.
static bool names_thing(const struct caution *caution, const char *noun) {
    bool named = false;
    for (size_t i = 0; i < caution->things.count && !named; i++)
        named = ends_with(noun, caution->things.at[i]);
    for (size_t i = 0; i < caution->finder.unless.count && named; i++)
        named = !ends_with(noun, caution->finder.unless.at[i]);
    return named;
}

// Do the words stand inside a phrase that means something else: the lipstick of "lipstick mark"?
static bool is_benign(struct raiser *r, const struct caution *caution, struct note_span words) {
    if (!is_from_notes(r, words) || !caution->benign.said.count) return false;
    size_t size = strlen(r->notes);
    for (size_t from = 0; from < size;) {
        struct span match;
        if (scanner_find(r->scanner, &caution->benign, r->notes, size, from, &match) != SCAN_FOUND)
            return false;
        if (match.from < words.to && match.to > words.from) return true;
        from = match.to;
    }
    return false;
}

static void add_named(struct raiser *r, const char *text) {
    if (!text) return;
    r->named[r->named_count++] = (struct named){text, utf8_fold(r->arena, say_singular(r->arena, text))};
}

// Once for all rules.
static void name_things(struct raiser *r) {
    const struct record *record = r->record;
    r->named = arena_array(r->arena, 1 + record->others.count + record->include_count, sizeof *r->named);
    add_named(r, record->type.value);
    for (size_t i = 0; i < record->others.count; i++) add_named(r, record->others.at[i]);
    for (size_t i = 0; i < record->include_count; i++) add_named(r, record->includes[i].what);
}

static const char *by_thing(struct raiser *r, const struct caution *caution) {
    const char *found = NULL;
    for (size_t i = 0; i < r->named_count && caution->things.count && !found; i++)
        if (names_thing(caution, r->named[i].noun)) found = r->named[i].text;
    if (!found || is_benign(r, caution, r->record->type.span)) return NULL;
    return arena_format(r->arena, "the thing '%s'", found);
}

// A flaw that was read out of words about another thing: "we kept our life jackets in it".
static bool is_elsewhere(struct raiser *r, const struct caution *caution, struct note_span words) {
    if (!is_from_notes(r, words)) return false;
    return is_benign(r, caution, words) || (words.to <= strlen(r->notes) && !caution_is_state(caution) &&
                                            !is_meant(caution, r->notes, words.from, words.to));
}

static const char *by_flaw(struct raiser *r, const struct caution *caution) {
    for (size_t i = 0; i < r->record->flaw_count; i++)
        for (size_t k = 0; k < caution->flaws.count; k++)
            if (text_same(r->record->flaws[i].kind->rule.id, caution->flaws.at[k]) &&
                !is_elsewhere(r, caution, r->record->flaws[i].span))
                return arena_format(r->arena, "the flaw '%s'", caution->flaws.at[k]);
    return NULL;
}

static bool holds(const struct texts *texts, const char *text) {
    for (size_t i = 0; i < texts->count; i++)
        if (text_same(texts->at[i], text)) return true;
    return false;
}

// The families of the record: the one it names and those that know its noun.
static bool in_family(struct raiser *r, const struct texts *on) {
    if (!on->count) return true;
    if (r->record->family && holds(on, r->record->family->rule.id)) return true;
    if (!r->record->type.value) return false;
    size_t count;
    const char *noun = r->named[0].noun;
    const struct thing *const *things = ruleset_things(r->rules, noun, &count);
    for (const char *at = noun; !things && (at = strchr(at, ' ')) != NULL;)
        things = ruleset_things(r->rules, ++at, &count);
    for (size_t i = 0; things && i < count; i++)
        if (holds(on, things[i]->family->rule.id)) return true;
    return false;
}

// What stands together is looked for in the notes alone, where words have others around them.
static void find_signs(struct raiser *r) {
    r->signs = arena_array(r->arena, r->rules->signs->rule_count + 1, sizeof *r->signs);
    if (r->notes) signs_find(r->arena, r->rules->signs, r->notes, r->own, strlen(r->notes), r->signs);
}

static bool by_signs(const struct raiser *r, const struct caution *caution, struct caution_found *found) {
    struct span span = r->signs[caution->number];
    found->stop = false;
    if (!span.to) return false;
    found->because = "the notes";
    found->span = (struct note_span){span.from, span.to};
    return true;
}

static bool raised(struct raiser *r, const struct caution *caution, struct caution_found *found) {
    if (!in_family(r, &caution->on)) return false;
    *found = (struct caution_found){.caution = caution};
    if (caution->with.said.count && !r->wanted[caution->with.number]) return by_signs(r, caution, found);
    found->because = by_thing(r, caution);
    if (!found->because) found->because = by_flaw(r, caution);
    found->stop = caution->stop;
    bool said = found->because || by_words(r, &caution->finder, caution, false, found);
    struct caution_found beside;
    if (said) said = !caution->with.said.count || by_words(r, &caution->with, caution, true, &beside);
    return said || by_signs(r, caution, found);
}

static struct cautions *raise_all(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                                  const struct record *record, int least) {
    struct cautions *cautions = arena_alloc(arena, sizeof *cautions);
    struct raiser r = {.arena = arena, .scanner = scanner, .rules = rules, .record = record};
    // Of notes that are too long nothing is listed until they are cut.
    r.notes = record->notes_read ? arena_copy(arena, record->notes, record->notes_read) : record->notes;
    r.subject = buf_start(arena);
    add_record(&r);
    name_things(&r);
    find_signs(&r);
    r.wanted = arena_array(arena, rules->finder_count + 1, sizeof *r.wanted);
    triggers_mark(rules->caution_triggers, r.subject.at, r.wanted);
    cautions->items = arena_array(arena, rules->caution_count + 1, sizeof *cautions->items);
    for (int stop = 1; stop >= least; stop--) // signs alone keep nothing from being listed
        for (size_t i = 0; i < rules->caution_count; i++) {
            const struct caution *caution = rules->cautions[i];
            struct caution_found *found = &cautions->items[cautions->count];
            if ((stop && !caution->stop) || !raised(&r, caution, found) || found->stop != stop) continue;
            cautions->count++;
            cautions->stop |= found->stop;
        }
    return cautions;
}

struct cautions *cautions_raise(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                                const struct record *record) {
    return raise_all(arena, scanner, rules, record, 0);
}

struct cautions *cautions_raise_stops(struct arena *arena, struct scanner *scanner,
                                      const struct ruleset *rules, const struct record *record) {
    return raise_all(arena, scanner, rules, record, 1);
}
