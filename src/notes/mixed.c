// SPDX-License-Identifier: MIT
// A lot of unlike goods: "box of bits: 6 brass cleats, 2 pulley blocks and a coil of rope". The first of them
// is the thing, because a title begins with one; the others are told as what comes with it, each with its
// number. An entry is a number or an article, and a noun with nothing but its own words before it; what is
// said of an entry ("with a cracked vial") is passed over. Without a word for a lot the entries have to stand
// as a list with "and" at its end.
#include <string.h>

#include "notes/any.h"
#include "notes/chunk.h"
#include "notes/number.h"

enum { ENTRIES_MOST = 8, ENTRY_WORDS_MOST = 7, LOT_WORDS_MOST = 14 };

struct entry {
    size_t lead, from, to; // from its number or article; its own words
    size_t end;            // of what is said of it
    int count;             // 0: not said
    bool joined, bare;     // "and", "plus" before it; no number, no article
};

struct mixed {
    struct entry entries[ENTRIES_MOST];
    size_t count;
    int own; // pieces of the thing itself; 0: not said
};

// "2", "two", "a", "some": how many tokens lead an entry.
static size_t lead_at(const struct note *note, size_t i, int *count) {
    const struct tokens *tokens = &note->tokens;
    size_t taken;
    *count = 0;
    if (i >= tokens->count || note->taken[i] == TAKEN_MEASURE || note->taken[i] == TAKEN_MARK) return 0;
    if (ANY(tokens, i, "a", "an", "some", "one") &&
        !ANY(tokens, i + 1, "bit", "little", "few", "lot", "touch"))
        return 1;
    int number = number_whole(tokens, i, &taken);
    if (number < 1 || number > 200) return 0;
    *count = number;
    return token_is(tokens, i + taken, "x") ? taken + 1 : taken;
}

static bool is_holder(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "pair", "pairs", "coil", "box", "tin", "bag", "jar", "set", "roll", "length",
               "bundle", "tub", "packet", "bunch", "lengths", "sets", "boxes", "tins", "reel", "ball", "hank",
               "stack");
}

static bool is_goods(const struct noun_found *noun, bool counted) {
    if (noun->part && !counted) return false;
    return noun->thing || (!noun->gated && noun->uses & (1u << USE_THING)) || counted;
}

// The entry's own words from `i` on: a run that its noun ends, or "coil of" and such a run.
static bool words_at(const struct note *note, size_t i, bool counted, struct entry *entry) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i, end = i;
    bool held = false;
    struct noun_found noun = {0};
    while (at < tokens->count && at < i + ENTRY_WORDS_MOST && !note->fault_word[at]) {
        bool of = token_is(tokens, at, "of") && !held && at > i && is_holder(tokens, at - 1);
        if (!of && chunk_breaks(note, at)) break;
        held |= of;
        struct noun_found here;
        if (noun_at(note, at, &here)) {
            noun = here;
            at = end = here.to;
        } else {
            at++;
        }
    }
    if (end == i || end != at || !is_goods(&noun, counted || held)) return false;
    // "A handle is off", "a bracket missing": no goods, but what is wrong
    struct word_entry color;
    if (end < tokens->count && tokens->at[end].stop == STOP_NONE &&
        !(counted && word_at(note, end, 1u << USE_COLOR, &color)) &&
        !ANY(tokens, end, "and", "plus", "&", "with", "w/", "from", "for", "in", "that", "(", "seized",
             "missing", "all", "both"))
        return false;
    if (end + 1 < tokens->count && ANY(tokens, end, "missing") && tokens->at[end + 1].stop != STOP_NONE)
        return false; // "one spoon missing", but "a plane missing its blade"
    if (end + 1 >= tokens->count && ANY(tokens, end, "missing")) return false;
    entry->from = i;
    entry->to = end;
    return note_free(note, i, end);
}

// A word for a lot in the sentence, no farther before the thing than such words stand.
static bool is_lot(const struct note *note, size_t type) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = type > LOT_WORDS_MOST ? type - LOT_WORDS_MOST : 0; i < type; i++) {
        if (tokens->at[i].stop >= STOP_SENTENCE) return false;
        if (ANY(tokens, i, "lot", "bundle", "job", "assortment", "mixed", "oddments", "boxful", "bucketful",
                "bits", "clear-out", "clearance"))
            return true;
        if (ANY(tokens, i, "box", "tray", "tin", "bag", "drawer", "bucket", "basket") &&
            ANY(tokens, i + 1, "of", "full", "with") && ANY(tokens, type - 1, ":", "-", "a", "an"))
            return true;
    }
    return false;
}

static size_t type_from(const struct note *note) {
    size_t i = 0;
    while (i < note->tokens.count && note->taken[i] != TAKEN_TYPE) i++;
    return i;
}

static size_t type_to(const struct note *note, size_t type) {
    while (type < note->tokens.count && note->taken[type] == TAKEN_TYPE) type++;
    return type;
}

// Where the words before the thing begin: its own number, if one leads them.
static size_t run_from(const struct note *note, size_t type) {
    size_t from = type;
    while (from > 0 && !chunk_breaks(note, from - 1)) from--;
    return from;
}

static bool is_many(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    for (; i < tokens->count && !chunk_breaks(note, i) && !note->fault_word[i]; i++)
        if (tokens->at[i].one != tokens->at[i].fold) return true;
    return false;
}

// "Jug and basin", "desk & attached seat": one noun directly behind the thing's own.
static bool is_bare(const struct note *note, size_t type, size_t joint, size_t at) {
    const struct tokens *tokens = &note->tokens;
    if (joint != type_to(note, type)) return false;
    bool own = ANY(tokens, at, "attached", "matching", "separate");
    if (own) at++;
    struct noun_found noun;
    return noun_at(note, at, &noun) &&
           (own || ((noun.thing || (noun.uses & (1u << USE_THING) && !noun.gated)) && !noun.part &&
                    !(noun.uses & (1u << USE_PART)))) &&
           note->taken[at] == TAKEN_NOT &&
           (noun.to >= tokens->count || tokens->at[noun.to].stop != STOP_NONE ||
            ANY(tokens, noun.to, "with", "w/", "both", "no"));
}

static size_t read_entries(const struct note *note, size_t type, struct entry *entries) {
    const struct tokens *tokens = &note->tokens;
    size_t count = 0;
    for (size_t i = type; i + 1 < tokens->count && count < ENTRIES_MOST; i++) {
        if (tokens->at[i].stop >= STOP_SENTENCE) break;
        bool joint = ANY(tokens, i, "and", "plus", "&", "also");
        if (!joint && tokens->at[i].stop != STOP_COMMA && !token_is(tokens, i, ";")) continue;
        size_t at = i + 1;
        if (!joint && ANY(tokens, at, "and", "plus", "&", "also")) {
            joint = true;
            at++;
        }
        struct entry entry = {.lead = at, .joined = joint};
        size_t lead = lead_at(note, at, &entry.count);
        bool bare = !lead && joint && is_bare(note, type, i, at);
        if (entry.count > 1 && !is_many(note, at + lead)) continue; // "20 button"
        if ((!lead && !bare) || !words_at(note, at + lead, bare || entry.count > 1, &entry)) continue;
        entry.bare = bare;
        entries[count++] = entry;
        i = entry.to - 1;
    }
    return count;
}

static void keep(struct note *note, const struct entry *entry) {
    struct item_included *included = note_included(note);
    const char *what = note_words(note, entry->from, entry->to);
    bool many = entry->count > 1;
    included->what = arena_string(note->arena, many ? say_singular(note->arena, what) : what);
    included->count = entry->count;
    note_take(note, entry->lead, entry->to, TAKEN_INCLUDES);
    note_reading(note, entry->lead, entry->to, arena_format(note->arena, "included %s", included->what),
                 "one of a lot");
}

// What is said of an entry ends where the next begins, at the sentence's end, where all are spoken of, or
// behind a comma or "and" with which something else begins.
static size_t end_of(const struct note *note, const struct entry *entry, size_t next) {
    const struct tokens *tokens = &note->tokens;
    size_t at = entry->to;
    bool last = next == tokens->count; // "lamp and chain, rusty": both may be
    if (entry->bare) return at;
    while (at < next && at < tokens->count && tokens->at[at].stop < STOP_SENTENCE &&
           !ANY(tokens, at, "all", "both", "everything", "every", "each", "they", "these", "lot")) {
        bool joint = tokens->at[at].stop == STOP_COMMA || ANY(tokens, at, "and", "plus");
        if (joint && (last || at + 1 >= tokens->count || !note->fault_word[at + 1])) break;
        at++;
    }
    return at;
}

const struct mixed *read_mixed(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    size_t type = type_from(note), listed = 0;
    if (type >= tokens->count || note->record->type.sure == SURE_GUESS) return NULL;
    struct mixed mixed = {0};
    mixed.count = read_entries(note, type, mixed.entries);
    for (size_t i = 0; i < mixed.count; i++) listed += mixed.entries[i].count > 1 || mixed.entries[i].joined;
    bool lot = mixed.count && is_lot(note, type);
    bool two = mixed.count == 1 && mixed.entries[0].joined &&
               mixed.entries[0].lead <= type_to(note, type) + 1; // "jug and a basin"
    if (!lot && !two && (mixed.count < 2 || !listed)) return NULL;
    size_t from = run_from(note, type), lead = from;
    while (lead > 0 && lead + 2 > from && !lead_at(note, lead, &mixed.own)) lead--;
    int all = mixed.own; // "lot of 5 planes: 3 of wood, 1 block plane, 1 spokeshave"
    for (size_t i = 0; i < mixed.count; i++) all += mixed.entries[i].count;
    if (lot && mixed.own && note->record->count && note->record->count == all) note->record->count = 0;
    if (lot && mixed.own > 1) note_take(note, lead, lead + 1, TAKEN_COUNT);
    for (size_t i = 0; i < mixed.count; i++) {
        size_t next = i + 1 < mixed.count ? mixed.entries[i + 1].lead : tokens->count;
        mixed.entries[i].end = end_of(note, &mixed.entries[i], next);
        keep(note, &mixed.entries[i]);
    }
    struct mixed *kept = arena_alloc(note->arena, sizeof *kept);
    *kept = mixed;
    return kept;
}

static const struct entry *entry_of(const struct note *note, const struct mixed *mixed, size_t byte) {
    for (size_t i = 0; i < mixed->count; i++) {
        const struct entry *entry = &mixed->entries[i];
        if (byte >= note->tokens.at[entry->from].from && byte < note->tokens.at[entry->end - 1].to)
            return entry;
    }
    return NULL;
}

// "2 pulley blocks (one with split cheek)": one pulley block.
static const char *one_of(const struct note *note, const struct entry *entry, const struct item_flaw *flaw) {
    const char *own = arena_string(note->arena, note_words(note, entry->from, entry->to));
    if (entry->count < 2) return own;
    for (size_t i = entry->to; i < entry->end && note->tokens.at[i].from < flaw->span.from; i++)
        if (token_is(&note->tokens, i, "one"))
            return arena_format(note->arena, "one %s", say_singular(note->arena, own));
    return own;
}

// "A sieve with a hole in it", "a spirit level with cracked vial": of that one, and of no other of the lot.
void settle_mixed(struct note *note, const struct mixed *mixed) {
    struct record *record = note->record;
    if (!mixed) return;
    for (size_t i = 0; i < record->flaw_count; i++) {
        struct item_flaw *flaw = &record->flaws[i];
        const struct entry *entry = flaw->span.to ? entry_of(note, mixed, flaw->span.from) : NULL;
        if (!entry) continue;
        const char *own = one_of(note, entry, flaw);
        if (!flaw->part || strstr(own, flaw->part))
            flaw->part = own;
        else
            flaw->part = arena_format(note->arena, strncmp(own, "one ", 4) ? "%s of the %s" : "%s of %s",
                                      flaw->part, own);
    }
    if (mixed->own > 1 && !record->count) record->count = mixed->own;
}
