// SPDX-License-Identifier: MIT
// Makers, models, names and marks are left alone, in the record and in what is made of it. Suggestions are
// made for words that are shown, and kept, so that a word that stands in every record is asked about once.
#include "listing/spelling.h"

#include <string.h>

enum {
    KNOWN_SLOTS = 1 << 14,
    KNOWN_MOST = KNOWN_SLOTS / 2,
    SUGGEST_MOST = 3,
    FINDINGS_MOST = 12,
    EXEMPT_MOST = 64
};

struct spelling {
    struct arena *arena;
    struct speller *speller;
    struct spelling_options options;
    struct diags *diags;
    uint64_t *known; // hashes of words found good
    size_t known_count;
    const char **usual;
    size_t usual_count, usual_room;
};

static void close_speller(void *thing) {
    struct spelling *s = thing;
    speller_free(s->speller);
}

// Words of faults and parts: of two suggestions as likely otherwise, they come first.
static void add_usual(struct spelling *s, const char *phrase) {
    if (!phrase || strchr(phrase, ' ')) return;
    s->usual = arena_grow(s->arena, (void *)s->usual, s->usual_count, &s->usual_room, sizeof *s->usual);
    s->usual[s->usual_count++] = phrase;
}

static void gather_usual(struct spelling *s) {
    const struct ruleset *rules = s->options.rules;
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct flaw *flaw = rules->flaws[i];
        add_usual(s, flaw->noun);
        add_usual(s, flaw->adjective);
        add_usual(s, flaw->part);
        for (size_t k = 0; k < flaw->parts.count; k++) add_usual(s, flaw->parts.at[k]);
    }
}

struct spelling *spelling_new(struct arena *arena, const struct spelling_options *options,
                              struct diags *diags) {
    struct spelling *s = arena_alloc(arena, sizeof *s);
    s->arena = arena;
    s->options = *options;
    s->diags = diags;
    s->known = arena_array(arena, KNOWN_SLOTS, sizeof *s->known);
    gather_usual(s);
    struct speller_options made = {.english = options->locale == LOCALE_GB ? SPELLER_GB : SPELLER_US,
                                   .both = true,
                                   .folder = options->dictionaries,
                                   .trade = options->trade,
                                   .usual = s->usual,
                                   .usual_count = s->usual_count};
    s->speller = speller_new(arena_source(arena), &made);
    if (!s->speller) arena_give_up(arena);
    arena_defer(arena, close_speller, s);
    return s;
}

static uint64_t hash_of(const char *word, size_t size) {
    uint64_t h = 14695981039346656037u;
    for (size_t i = 0; i < size; i++) h = (h ^ (unsigned char)word[i]) * 1099511628211u;
    return h | 1;
}

static bool was_met(struct spelling *s, uint64_t hash, bool keep) {
    size_t at = (size_t)(hash >> 1) & (KNOWN_SLOTS - 1);
    for (; s->known[at]; at = (at + 1) & (KNOWN_SLOTS - 1))
        if (s->known[at] == hash) return true;
    if (keep && s->known_count < KNOWN_MOST) {
        s->known[at] = hash;
        s->known_count++;
    }
    return false;
}

static bool is_letter(unsigned char c) {
    return (c | 32) >= 'a' && (c | 32) <= 'z';
}

// Known by the lists at hand, without a dictionary.
static bool is_listed(const struct spelling *s, const char *word, size_t size) {
    char small[40];
    struct word_entry entry;
    if (size >= sizeof small) return false;
    for (size_t i = 0; i < size; i++)
        small[i] = is_letter((unsigned char)word[i]) ? (char)(word[i] | 32) : word[i];
    small[size] = '\0';
    if (s->options.trade && trade_knows(s->options.trade, small, size)) return true;
    if (!s->options.book) return false;
    if (wordbook_find(s->options.book, small, size, &entry)) return true;
    static const struct {
        const char *end, *base;
    } endings[] = {{"s", ""},   {"es", ""},   {"ies", "y"}, {"ed", ""}, {"ed", "e"},
                   {"ing", ""}, {"ing", "e"}, {"ly", ""},   {"'s", ""}};
    for (size_t i = 0; i < sizeof endings / sizeof *endings; i++) {
        size_t n = strlen(endings[i].end);
        if (size < n + 3 || strcmp(small + size - n, endings[i].end) != 0) continue;
        char base[48];
        memcpy(base, small, size - n);
        strcpy(base + size - n, endings[i].base);
        if (wordbook_find(s->options.book, base, strlen(base), &entry)) return true;
    }
    return false;
}

static void keep_words(struct spelling *s, const char *text) {
    for (const char *at = text; *at;) {
        size_t n = 0;
        while (is_letter((unsigned char)at[n]) || at[n] == '\'') n++;
        size_t bare = n;
        while (bare && at[bare - 1] == '\'') bare--;
        if (bare > 2) was_met(s, hash_of(at, bare), true);
        at += n ? n : 1;
    }
}

struct looker {
    struct arena *arena;
    struct spelling *spelling;
    struct listing *listing;
    const char *exempt[EXEMPT_MOST];
    size_t exempt_count;
    const char *told[FINDINGS_MOST]; // words of findings
    size_t told_count;
};

static void exempt(struct looker *c, const char *text) {
    if (text && c->exempt_count < EXEMPT_MOST) c->exempt[c->exempt_count++] = text;
}

static bool is_name(const char *attribute) {
    static const char *const names[] = {"brand", "model", "name", "author", "byArtist",
                                        "mpn",   "gtin",  "isbn", "size",   "countryOfOrigin"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        if (!strcmp(attribute, names[i])) return true;
    return false;
}

// "Meadow Gate": a pattern or theme that is written as a name is one.
static bool has_capital(const char *text) {
    for (; *text; text++)
        if (*text >= 'A' && *text <= 'Z') return true;
    return false;
}

static void gather_exempt(struct looker *c) {
    const struct record *r = c->listing->record;
    for (size_t i = 0; i < r->attribute_count; i++)
        if (is_name(r->attributes[i].name) || has_capital(r->attributes[i].value))
            exempt(c, r->attributes[i].value);
    for (size_t i = 0; i < r->mark_count; i++) exempt(c, r->marks[i].text);
    for (size_t i = 0; i < r->fit_count; i++) {
        exempt(c, r->fits[i].brand);
        exempt(c, r->fits[i].model);
    }
    for (size_t i = 0; r->family && i < r->family->short_count; i++) exempt(c, r->family->shorts[i].text);
}

static bool is_exempt(const struct looker *c, const char *word, size_t size) {
    for (size_t i = 0; i < c->exempt_count; i++)
        for (const char *at = c->exempt[i]; *at; at++) {
            size_t n = 0;
            while (n < size && at[n] && (at[n] | 32) == (word[n] | 32)) n++;
            if (n == size) return true;
        }
    return false;
}

// Is every word of plain letters in `text` known already? Then nobody has to open a dictionary for it.
static bool all_known(struct looker *c, const char *text) {
    struct spelling *s = c->spelling;
    for (const char *at = text; *at;) {
        if (!is_letter((unsigned char)*at)) {
            if ((unsigned char)*at >= 0x80) return false;
            at++;
            continue;
        }
        size_t n = 0;
        while (is_letter((unsigned char)at[n]) || at[n] == '\'') n++;
        size_t bare = n;
        while (bare && at[bare - 1] == '\'') bare--;
        if (bare > 2 && !was_met(s, hash_of(at, bare), false) && !is_exempt(c, at, bare)) {
            if (!is_listed(s, at, bare)) return false;
            was_met(s, hash_of(at, bare), true);
        }
        at += n;
    }
    return true;
}

static bool was_told(struct looker *c, const char *word) {
    for (size_t i = 0; i < c->told_count; i++)
        if (!strcmp(c->told[i], word)) return true;
    return false;
}

static const char *meant(struct looker *c, const char *word) {
    struct spelling *s = c->spelling;
    struct diags own = diags_start(c->arena);
    struct suggestions found = speller_suggest(s->speller, word, strlen(word), SUGGEST_MOST, &own);
    if (!found.count) return "";
    struct buf out = buf_start(c->arena);
    buf_text(&out, "; meant: ");
    for (size_t i = 0; i < found.count; i++) buf_format(&out, "%s'%s'", i ? ", " : "", found.words[i]);
    buf_byte(&out, '?');
    return out.at;
}

static bool is_open(struct looker *c) {
    return speller_open(c->spelling->speller, c->spelling->diags);
}

// The words of `text` that nobody knows; none when no dictionary can be had.
static struct misspellings look_over(struct looker *c, const char *text) {
    struct misspellings none = {NULL, 0};
    if (!text || !*text || all_known(c, text) || !is_open(c)) return none;
    struct diags own = diags_start(c->arena);
    struct speller_text what = {text, strlen(text), c->exempt, c->exempt_count};
    struct misspellings found = speller_check(c->spelling->speller, &what, &own);
    if (!found.count) keep_words(c->spelling, text);
    return found;
}

static void look_at_seller(struct looker *c, const char *text, struct note_span span) {
    struct misspellings found = look_over(c, text);
    for (size_t i = 0; i < found.count && c->told_count < FINDINGS_MOST; i++) {
        if (found.items[i].name_like) continue;
        const char *word =
            arena_copy(c->arena, text + found.items[i].from, found.items[i].to - found.items[i].from);
        if (was_told(c, word)) continue;
        c->told[c->told_count++] = word;
        listing_find(c->arena, c->listing, "could", "spelling.word",
                     arena_format(c->arena, "'%s' is not a word known here%s", word, meant(c, word)), span);
    }
}

static bool wrote(struct looker *c, const char *word) {
    if (was_told(c, word)) return true;
    const struct record *r = c->listing->record;
    const char *folded = say_singular(c->arena, utf8_fold(c->arena, word));
    for (size_t i = 0; i < r->attribute_count; i++)
        if (strstr(utf8_fold(c->arena, r->attributes[i].value), folded)) return true;
    if (r->type.value && strstr(utf8_fold(c->arena, r->type.value), folded)) return true;
    for (size_t i = 0; i < r->mark_count; i++)
        if (strstr(utf8_fold(c->arena, r->marks[i].text), folded)) return true;
    return c->told_count == FINDINGS_MOST;
}

static void look_at_output(struct looker *c, const char *text) {
    struct misspellings found = look_over(c, text);
    for (size_t i = 0; i < found.count && c->told_count < FINDINGS_MOST; i++) {
        const char *word =
            arena_copy(c->arena, text + found.items[i].from, found.items[i].to - found.items[i].from);
        if (found.items[i].name_like || wrote(c, utf8_fold(c->arena, word)) || wrote(c, word)) continue;
        c->told[c->told_count++] = word;
        listing_find(c->arena, c->listing, "should", "spelling.output",
                     arena_format(c->arena, "'%s' came out of a rule and is not a word known here", word),
                     (struct note_span){0, 0});
    }
}

static void look_at_condition(struct looker *c) {
    const struct record *r = c->listing->record;
    struct note_span none = {0, 0};
    for (size_t i = 0; i < r->flaw_count; i++) {
        look_at_seller(c, r->flaws[i].part, r->flaws[i].span);
        look_at_seller(c, r->flaws[i].where, r->flaws[i].span);
    }
    for (size_t i = 0; i < r->clear_count; i++) {
        look_at_seller(c, r->clear[i].part, r->clear[i].span);
        look_at_seller(c, r->clear[i].where, r->clear[i].span);
    }
    for (size_t i = 0; i < r->unchecked.count; i++)
        if (!ruleset_flaw(c->spelling->options.rules, r->unchecked.at[i]))
            look_at_seller(c, r->unchecked.at[i], none);
}

void listing_spell(struct arena *arena, struct listing *l, struct spelling *spelling) {
    struct looker c = {.arena = arena, .spelling = spelling, .listing = l};
    const struct record *r = l->record;
    struct note_span none = {0, 0};
    gather_exempt(&c);
    look_at_seller(&c, r->type.value, r->type.span);
    for (size_t i = 0; i < r->others.count; i++) look_at_seller(&c, r->others.at[i], none);
    for (size_t i = 0; i < r->attribute_count; i++)
        if (!is_name(r->attributes[i].name))
            look_at_seller(&c, r->attributes[i].value, r->attributes[i].span);
    look_at_condition(&c);
    for (size_t i = 0; i < r->include_count; i++) look_at_seller(&c, r->includes[i].what, none);
    for (size_t i = 0; i < r->measurement_count; i++)
        look_at_seller(&c, r->measurements[i].of, r->measurements[i].span);
    for (size_t i = 0; i < r->photo_count; i++) look_at_seller(&c, r->photos[i].shows, none);
    look_at_output(&c, l->title);
    look_at_output(&c, l->disclosure.text);
    look_at_output(&c, l->description);
}
