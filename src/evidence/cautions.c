// SPDX-License-Identifier: MIT
// Every text of the record is a piece of one subject, and each piece is judged alone: another piece, and so
// another fact, can only raise more.
#include "evidence/cautions.h"

#include <string.h>

#include "rules/trigger.h"
#include "text/utf8.h"

struct piece {
    struct span span;
    const char *field; // NULL: the notes
    bool whole;        // notes with what is not about the thing
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
    struct buf subject;
    struct piece *pieces;
    size_t count, room;
    struct named *named; // what the record says it is, may be or holds
    size_t named_count;
    bool *wanted; // finders whose words may stand in the subject
};

// --- the subject ---

static void add_text(struct raiser *r, const char *field, const char *text) {
    if (!text || !*text) return;
    r->pieces = arena_grow(r->arena, r->pieces, r->count, &r->room, sizeof *r->pieces);
    r->pieces[r->count++] = (struct piece){{r->subject.n, r->subject.n + strlen(text)}, field, false};
    buf_text(&r->subject, text);
    buf_text(&r->subject, "\n.\n"); // no phrase reaches over this
}

// Names are no evidence of what a thing is: a maker may be called Mercury.
static bool is_name(const char *attribute) {
    static const char *const names[] = {"brand", "model",    "name", "author", "byArtist",
                                        "isbn",  "audience", "mpn",  "gtin",   "countryOfOrigin"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        if (!strcmp(attribute, names[i])) return true;
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
        if (!strcmp(value->name, "audience")) add_text(r, "attributes", value->value);
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

// The notes without what is not about the thing.
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
    const char *own = own_notes(r);
    add_text(r, NULL, own);
    if (own == r->notes || !*own) return;
    add_text(r, NULL, r->notes);
    r->pieces[r->count - 1].whole = true;
}

// --- what raises a caution ---

enum { WORD_MOST = 16 };

// The word that ends before `*at`, lower-case, its apostrophe plain; false at the start of a clause.
static bool word_before(const struct raiser *r, size_t *at, bool over_commas, char word[WORD_MOST + 1]) {
    const char *text = r->subject.at;
    size_t end = *at;
    while (end && (strchr(" -\"'(", text[end - 1]) || (over_commas && text[end - 1] == ','))) end--;
    size_t from = end, n = 0;
    while (from && !strchr(" -.,;:!?()/\"\n", text[from - 1])) from--;
    if (from == end || end - from > WORD_MOST) return false;
    *at = from;
    while (from < end) {
        bool curly = !strncmp(text + from, "\xE2\x80\x99", 3);
        word[n++] = curly ? '\'' : (char)utf8_lower((unsigned char)text[from]);
        from += curly ? 3 : 1;
    }
    word[n] = '\0';
    return true;
}

static bool is_one_of(const char *word, const char *const *words, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (!strcmp(words[i], word)) return true;
    return false;
}
#define IS_ONE_OF(word, words) is_one_of(word, words, sizeof(words) / sizeof *(words))

// "No" denies a noun; what is said with a verb it does not reach: "no scratches smelled like hot dust".
static bool is_verb(const struct raiser *r, size_t at) {
    static const char *const verbs[] = {"smell",   "smells", "smelled",   "got",    "gets",
                                        "popped",  "blew",   "blows",     "trips",  "tripped",
                                        "started", "it",     "overheats", "sparks", "runs"};
    const char *text = r->subject.at + at;
    for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++) {
        size_t n = strlen(verbs[i]);
        size_t k = 0;
        while (k < n && utf8_lower((unsigned char)text[k]) == (unsigned char)verbs[i][k]) k++;
        if (k == n && text[n] == ' ') return true;
    }
    return false;
}

static bool denies(const char *word, bool verb) {
    static const char *const noes[] = {"no", "without", "nor", "free"}, *const nots[] = {"not", "never",
                                                                                         "cannot"};
    size_t n = strlen(word);
    return (!verb && IS_ONE_OF(word, noes)) || IS_ONE_OF(word, nots) ||
           (n > 3 && !strcmp(word + n - 3, "n't"));
}

// "Spotted like a leopard" compares; "looks like ivory" wonders.
static bool compares(const struct raiser *r, size_t at) {
    static const char *const senses[] = {"look",  "looks", "looked", "smell",  "smells", "smelled", "feel",
                                         "feels", "felt",  "seems",  "sounds", "more",   "just"};
    char word[WORD_MOST + 1];
    return !word_before(r, &at, false, word) || !IS_ONE_OF(word, senses);
}

// "No mercury", "could not find any mold", "no cracks, rust or mold", "a gasket for a boiler", "like a
// leopard", "the size of a knife": the goods are not that. But "not sure if it is ivory" denies nothing.
static bool is_not_it(const struct raiser *r, size_t at) {
    static const char *const open[] = {"sure", "idea",    "know", "certain", "only", "if",
                                       "but",  "whether", "tell", "say",     "and",  "doubt"};
    enum { WORDS_BACK = 3, WORDS_BACK_OF_LIST = 9 };
    char word[WORD_MOST + 1];
    bool list = false, verb = is_verb(r, at);
    for (int i = 0; i < (list ? WORDS_BACK_OF_LIST : WORDS_BACK); i++) {
        if (!word_before(r, &at, list, word)) return false;
        if (IS_ONE_OF(word, open)) return false;
        if (denies(word, verb) || (!list && !strcmp(word, "size"))) return true;
        if (i < 2 && !strcmp(word, "for")) return true;
        if (i < 2 && !strcmp(word, "like")) return compares(r, at);
        list |= !i && !strcmp(word, "or");
    }
    return false;
}

// "Asbestos free mat", "lead crystal? No, pressed glass".
static bool is_denied_behind(const struct raiser *r, size_t at) {
    const char *text = r->subject.at + at;
    if (!strncmp(text, " free", 5) || !strncmp(text, "-free", 5)) return true;
    return !strncmp(text, "? No", 4) || !strncmp(text, "? no", 4);
}

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

// A pattern that takes too long says nothing: then the caution is raised, since nobody knows. `flat`: a word
// counts whatever stands before it. `history`: so does what is told beside the thing.
static bool by_words(struct raiser *r, const struct finder *finder, bool flat, bool history,
                     struct caution_found *found) {
    for (size_t from = 0; from < r->subject.n;) {
        struct span match = {0, 0};
        enum scan_result result = scanner_find(r->scanner, finder, r->subject.at, r->subject.n, from, &match);
        if (result == SCAN_SLOW) {
            found->because = "a text that took too long to read";
            return true;
        }
        if (result != SCAN_FOUND) return false;
        const struct piece *piece = piece_at(r, match.from);
        if (piece && (!piece->whole || history) &&
            (flat || (!is_not_it(r, match.from) && !is_denied_behind(r, match.to)))) {
            note_words(r, piece, match, found);
            return true;
        }
        from = match.to;
    }
    return false;
}

static bool ends_with(const char *noun, const char *word) {
    size_t n = strlen(noun), m = strlen(word);
    return n >= m && !strcmp(noun + n - m, word) && (n == m || noun[n - m - 1] == ' ');
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

// Does the type stand inside a phrase that means something else: the lipstick of "lipstick mark"?
static bool is_benign_type(struct raiser *r, const struct caution *caution) {
    const struct value *type = &r->record->type;
    if (!is_from_notes(r, type->span) || !caution->benign.said.count) return false;
    size_t size = strlen(r->notes);
    for (size_t from = 0; from < size;) {
        struct span match;
        if (scanner_find(r->scanner, &caution->benign, r->notes, size, from, &match) != SCAN_FOUND)
            return false;
        if (match.from < type->span.to && match.to > type->span.from) return true;
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
    if (!found || is_benign_type(r, caution)) return NULL;
    return arena_format(r->arena, "the thing '%s'", found);
}

static const char *by_flaw(struct raiser *r, const struct caution *caution) {
    for (size_t i = 0; i < r->record->flaw_count; i++)
        for (size_t k = 0; k < caution->flaws.count; k++)
            if (!strcmp(r->record->flaws[i].kind->rule.id, caution->flaws.at[k]))
                return arena_format(r->arena, "the flaw '%s'", caution->flaws.at[k]);
    return NULL;
}

static bool holds(const struct texts *texts, const char *text) {
    for (size_t i = 0; i < texts->count; i++)
        if (!strcmp(texts->at[i], text)) return true;
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

static bool raised(struct raiser *r, const struct caution *caution, struct caution_found *found) {
    if (!in_family(r, &caution->on)) return false;
    if (caution->with.said.count && !r->wanted[caution->with.number]) return false;
    *found = (struct caution_found){.caution = caution, .because = by_thing(r, caution)};
    if (!found->because) found->because = by_flaw(r, caution);
    bool said = found->because || (r->wanted[caution->finder.number] &&
                                   by_words(r, &caution->finder, false, caution->history, found));
    struct caution_found beside;
    return said &&
           (!caution->with.said.count || by_words(r, &caution->with, true, caution->history, &beside));
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
    r.wanted = arena_array(arena, rules->finder_count + 1, sizeof *r.wanted);
    triggers_mark(rules->caution_triggers, r.subject.at, r.wanted);
    cautions->items = arena_array(arena, rules->caution_count + 1, sizeof *cautions->items);
    for (int stop = 1; stop >= least; stop--)
        for (size_t i = 0; i < rules->caution_count; i++) {
            const struct caution *caution = rules->cautions[i];
            if (caution->stop != stop || !raised(&r, caution, &cautions->items[cautions->count])) continue;
            cautions->count++;
            cautions->stop |= caution->stop;
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
