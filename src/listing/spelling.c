// SPDX-License-Identifier: MIT
// Makers, models, names and marks are left alone, in the record and in what is made of it. Suggestions are
// made for words that are shown, and kept, so that a word that stands in every record is asked about once.
#include "listing/spelling.h"

#include <stdint.h>
#include <string.h>

#include "text/order.h"

enum { SUGGEST_MOST = 3, FINDINGS_MOST = 12, KEPT_MOST = 256, KEPT_TEXT = 112 };

struct word_list {
    const char **at;
    size_t count, room;
};

struct kept_suggestion {
    uint64_t hash; // of the word asked about; 0: none yet
    bool usual;    // the first one is a word of the rules
    char text[KEPT_TEXT];
};

struct spelling {
    struct arena *arena;
    struct speller *speller;
    struct spelling_options options;
    struct diags *diags;
    struct kept_suggestion *kept; // NULL before the first suggestion
};

static void add_word(struct arena *arena, struct word_list *list, const char *word) {
    list->at = arena_grow(arena, (void *)list->at, list->count, &list->room, sizeof *list->at);
    list->at[list->count++] = word;
}

static bool holds(const struct word_list *list, const char *word) {
    for (size_t i = 0; i < list->count; i++)
        if (text_same(list->at[i], word)) return true;
    return false;
}

// --- making one ---

static void close_speller(void *thing) {
    struct spelling *s = thing;
    speller_free(s->speller);
}

struct spelling *spelling_new(struct arena *arena, const struct spelling_options *options,
                              struct diags *diags) {
    struct spelling *s = arena_alloc(arena, sizeof *s);
    s->arena = arena;
    s->options = *options;
    s->diags = diags;
    struct texts usual = spelling_usual(options->lists);
    struct speller_options made = {.english = options->locale == LOCALE_GB ? SPELLER_GB : SPELLER_US,
                                   .both = true,
                                   .folder = options->dictionaries,
                                   .trade = options->trade,
                                   .usual = usual.at,
                                   .usual_count = usual.count,
                                   .lists = spelling_lists_know,
                                   .lists_context = options->lists};
    s->speller = speller_new(arena_source(arena), &made);
    if (!s->speller) arena_give_up(arena);
    arena_defer(arena, close_speller, s);
    return s;
}

// --- one listing ---

struct looker {
    struct arena *arena;
    struct spelling *spelling;
    struct listing *listing;
    struct word_list exempt;
    struct word_list strange; // the seller's unknown words, folded, also as singulars
    size_t told;
};

static bool one_of(const char *name, const char *const *list) {
    for (; *list; list++)
        if (text_same(name, *list)) return true;
    return false;
}

static bool is_name(const char *attribute) {
    static const char *const names[] = {"brand", "model", "name", "author",          "byArtist", "mpn",
                                        "gtin",  "isbn",  "size", "countryOfOrigin", NULL};
    return one_of(attribute, names);
}

// What these say is never a name, however it is written.
static bool is_plain(const char *attribute) {
    static const char *const plain[] = {"color", "material", "finish", "technique", "shape", NULL};
    return one_of(attribute, plain);
}

static bool has_capital(const char *text) {
    for (; *text; text++)
        if (*text >= 'A' && *text <= 'Z') return true;
    return false;
}

static void exempt(struct looker *c, const char *text) {
    if (text) add_word(c->arena, &c->exempt, text);
}

// "Meadow Gate": a pattern or theme that is written as a name is one.
static void gather_exempt(struct looker *c) {
    const struct record *r = c->listing->record;
    for (size_t i = 0; i < r->attribute_count; i++) {
        const struct value *v = &r->attributes[i];
        if (is_name(v->name) || (!is_plain(v->name) && has_capital(v->value))) exempt(c, v->value);
    }
    for (size_t i = 0; i < r->mark_count; i++) exempt(c, r->marks[i].text);
    for (size_t i = 0; i < r->fit_count; i++) {
        exempt(c, r->fits[i].brand);
        exempt(c, r->fits[i].model);
    }
    for (size_t i = 0; r->family && i < r->family->short_count; i++) exempt(c, r->family->shorts[i].text);
}

static void make_suggestion(struct looker *c, const char *word, struct kept_suggestion *made) {
    struct diags own = diags_start(c->arena);
    struct suggestions found = speller_suggest(c->spelling->speller, word, strlen(word), SUGGEST_MOST, &own);
    struct buf out = buf_start(c->arena);
    for (size_t i = 0; i < found.count; i++)
        buf_format(&out, "%s'%s'", i ? ", " : "; meant: ", found.words[i]);
    if (found.count) buf_byte(&out, '?');
    const char *first = found.count ? utf8_fold(c->arena, found.words[0]) : "";
    made->usual = spelling_is_rule_word(c->spelling->options.lists, first, strlen(first));
    // Three words of at most 40 bytes with their marks may be longer than what is kept.
    if (out.n < KEPT_TEXT) memcpy(made->text, out.at, out.n);
    made->text[out.n < KEPT_TEXT ? out.n : 0] = '\0';
}

// "; meant: 'knob', 'knot'?", or nothing.
static const struct kept_suggestion *suggestion(struct looker *c, const char *word) {
    struct spelling *s = c->spelling;
    if (!s->kept) s->kept = arena_array(s->arena, KEPT_MOST, sizeof *s->kept);
    uint64_t hash = spelling_hash(word, strlen(word));
    struct kept_suggestion *kept = &s->kept[(hash >> 1) % KEPT_MOST];
    if (kept->hash != hash) {
        make_suggestion(c, word, kept);
        kept->hash = hash;
    }
    return kept;
}

static struct misspellings look_over(struct looker *c, const char *text) {
    struct misspellings none = {NULL, 0};
    if (!text || !*text) return none;
    struct diags own = diags_start(c->arena);
    struct speller_text what = {text, strlen(text), c->exempt.at, c->exempt.count};
    struct misspellings found = speller_check(c->spelling->speller, &what, &own);
    struct place nowhere = {NULL, 0, 0};
    for (size_t i = 0; i < own.count; i++) // of dictionaries that are missing; told at the end of the run
        diags_add(c->spelling->diags, own.items[i].code, nowhere, own.items[i].hint, "%s",
                  own.items[i].message);
    return found;
}

// How to take a capital where no sentence starts.
enum capitals {
    CAPITALS_NAME,  // as a name
    CAPITALS_PLAIN, // as nothing
    CAPITALS_TITLE  // all words have it: a name unless a word of the rules may be meant
};

static void look_at_seller(struct looker *c, const char *text, struct note_span span,
                           enum capitals capitals) {
    struct misspellings found = look_over(c, text);
    for (size_t i = 0; i < found.count; i++) {
        const struct misspelling *m = &found.items[i];
        const char *word = arena_copy(c->arena, text + m->from, m->to - m->from);
        const char *folded = utf8_fold(c->arena, word), *one = say_singular(c->arena, folded);
        bool told = holds(&c->strange, folded);
        if (!told) add_word(c->arena, &c->strange, folded);
        if (!holds(&c->strange, one)) add_word(c->arena, &c->strange, one);
        if (told || c->told == FINDINGS_MOST || (m->name_like && capitals == CAPITALS_NAME)) continue;
        const struct kept_suggestion *meant = suggestion(c, word);
        if (m->name_like && capitals == CAPITALS_TITLE && !meant->usual) continue;
        c->told++;
        listing_find(c->arena, c->listing, "could", "spelling.word",
                     arena_format(c->arena, "'%s' is not a word known here%s", word, meant->text), span);
    }
}

static bool names(struct arena *arena, const char *text, const char *word) {
    size_t n = strlen(word);
    const char *folded = text ? utf8_fold(arena, text) : "";
    for (const char *at = folded; (at = strstr(at, word)) != NULL; at += n)
        if ((at == folded || strchr(" -", at[-1])) && (!at[n] || strchr(" -,", at[n]))) return true;
    return false;
}

// A plural that no dictionary has, of a noun that the seller wrote.
static bool is_plural_of_sellers(const struct looker *c, const char *one) {
    const struct record *r = c->listing->record;
    bool found = names(c->arena, r->type.value, one);
    for (size_t i = 0; i < r->others.count && !found; i++) found = names(c->arena, r->others.at[i], one);
    for (size_t i = 0; i < r->include_count && !found; i++) found = names(c->arena, r->includes[i].what, one);
    return found;
}

static void look_at_output(struct looker *c, const char *text) {
    struct misspellings found = look_over(c, text);
    for (size_t i = 0; i < found.count && c->told < FINDINGS_MOST; i++) {
        const struct misspelling *m = &found.items[i];
        const char *word = arena_copy(c->arena, text + m->from, m->to - m->from);
        const char *folded = utf8_fold(c->arena, word), *one = say_singular(c->arena, folded);
        if (holds(&c->strange, folded) || holds(&c->strange, one) || is_plural_of_sellers(c, one)) continue;
        add_word(c->arena, &c->strange, folded);
        c->told++;
        listing_find(c->arena, c->listing, "should", "spelling.output",
                     arena_format(c->arena, "'%s' came out of a rule and is not a word known here", word),
                     (struct note_span){0, 0});
    }
}

static void look_at_thing(struct looker *c) {
    const struct record *r = c->listing->record;
    struct note_span none = {0, 0};
    look_at_seller(c, r->type.value, r->type.span, CAPITALS_PLAIN);
    for (size_t i = 0; i < r->others.count; i++) look_at_seller(c, r->others.at[i], none, CAPITALS_PLAIN);
    for (size_t i = 0; i < r->attribute_count; i++) {
        const struct value *v = &r->attributes[i];
        if (!is_name(v->name))
            look_at_seller(c, v->value, v->span, is_plain(v->name) ? CAPITALS_PLAIN : CAPITALS_NAME);
        look_at_seller(c, v->of, v->span, CAPITALS_NAME);
    }
    for (size_t i = 0; i < r->mark_count; i++) look_at_seller(c, r->marks[i].where, none, CAPITALS_NAME);
    for (size_t i = 0; i < r->include_count; i++) look_at_seller(c, r->includes[i].what, none, CAPITALS_NAME);
    for (size_t i = 0; i < r->measurement_count; i++)
        look_at_seller(c, r->measurements[i].of, r->measurements[i].span, CAPITALS_NAME);
    for (size_t i = 0; i < r->photo_count; i++) look_at_seller(c, r->photos[i].shows, none, CAPITALS_NAME);
}

static void look_at_condition(struct looker *c) {
    const struct record *r = c->listing->record;
    struct note_span none = {0, 0};
    for (size_t i = 0; i < r->flaw_count; i++) {
        look_at_seller(c, r->flaws[i].part, r->flaws[i].span, CAPITALS_NAME);
        look_at_seller(c, r->flaws[i].where, r->flaws[i].span, CAPITALS_NAME);
    }
    for (size_t i = 0; i < r->clear_count; i++) {
        look_at_seller(c, r->clear[i].part, r->clear[i].span, CAPITALS_NAME);
        look_at_seller(c, r->clear[i].where, r->clear[i].span, CAPITALS_NAME);
    }
    for (size_t i = 0; i < r->unchecked.count; i++)
        if (!ruleset_flaw(c->spelling->options.rules, r->unchecked.at[i]))
            look_at_seller(c, r->unchecked.at[i], none, CAPITALS_NAME);
}

void listing_spell(struct arena *arena, struct listing *l, struct spelling *spelling) {
    struct looker c = {.arena = arena, .spelling = spelling, .listing = l};
    struct note_span none = {0, 0};
    gather_exempt(&c);
    look_at_thing(&c);
    look_at_condition(&c);
    if (!l->title_only) {
        look_at_output(&c, l->title);
        for (size_t i = 0; i < l->alternate_count; i++) look_at_output(&c, l->alternates[i]);
        look_at_output(&c, l->description);
        if (!strstr(l->description, l->disclosure.text)) look_at_output(&c, l->disclosure.text);
    }
    if (l->given) look_at_seller(&c, l->given->text, none, CAPITALS_TITLE);
    look_at_seller(&c, l->record->listing.description, none, CAPITALS_NAME);
}
