// SPDX-License-Identifier: MIT
// Words that stay go back into a chosen title as whole runs, in the order of the old one, and never into the
// middle of a chosen phrase: "three leg" behind "Worm Holes on One" would tell another thing.
#include <string.h>

#include "say/say.h"
#include "shelf/propose.h"
#include "text/utf8.h"

enum { AVOIDED = 100000 }; // above what any title is worth

struct part {
    const char *text;
    struct folds folds;
    enum slot slot;
    bool flaw, kept;
};

struct joining {
    struct arena *arena;
    const struct kept_words *kept;
    struct part *parts;
    size_t count;
    bool *missing; // per item
};

// "w/ lid".
static bool is_with(const struct joining *j, size_t i) {
    const struct kept_word *w = &j->kept->items[i];
    const char *title = j->kept->title;
    return w->to == w->from + 1 && (title[w->from] | 0x20) == 'w' && title[w->to] == '/';
}

static bool is_small(const struct joining *j, size_t i) {
    struct folds own = kept_folds(j->arena, j->kept, i);
    bool free = true;
    for (size_t k = 0; k < own.count; k++)
        free = free && word_is_free(own.at[k]) && !fold_is_unit(own.at[k]) && strcmp(own.at[k], "size") != 0;
    bool with = is_with(j, i);
    return (free || with) && !j->kept->items[i].must;
}

// All its words but the small ones are among those, and it does not say more.
static bool is_within(const struct folds *part, const struct folds *all) {
    bool any = false;
    for (size_t i = 0; i < part->count; i++) {
        if (word_is_free(part->at[i]) && !fold_is_unit(part->at[i])) continue;
        if (!strcmp(part->at[i], "marked") && i + 1 < part->count) continue;
        if (!folds_hold(all, part->at[i])) return false;
        any = true;
    }
    return any;
}

static void remove_part(struct joining *j, size_t at) {
    memmove(&j->parts[at], &j->parts[at + 1], (j->count - at - 1) * sizeof *j->parts);
    j->count--;
}

static void insert_part(struct joining *j, size_t at, const char *text) {
    memmove(&j->parts[at + 1], &j->parts[at], (j->count - at) * sizeof *j->parts);
    j->parts[at] = (struct part){text, folds_of(j->arena, text), SLOT_COUNT, false, true};
    j->count++;
}

static struct folds told(const struct joining *j, bool flaws) {
    struct buf all = buf_start(j->arena);
    for (size_t i = 0; i < j->count; i++)
        if (flaws || !j->parts[i].flaw) buf_format(&all, "%s ", j->parts[i].text);
    return folds_of(j->arena, all.at);
}

// What no rule understood is not told by the words of a flaw that happen to be the same.
static void find_missing(struct joining *j) {
    struct folds all = told(j, true), facts = told(j, false);
    for (size_t i = 0; i < j->kept->count; i++)
        j->missing[i] = kept_is_missing(j->arena, j->kept, i, j->kept->items[i].read ? &all : &facts);
}

static bool in_part(const struct joining *j, size_t item, size_t *at) {
    if (is_small(j, item)) return false;
    struct folds own = kept_folds(j->arena, j->kept, item);
    for (size_t i = 0; own.count && i < j->count; i++) {
        if (j->parts[i].flaw) continue;
        *at = i;
        if (own.count > 1 ? folds_run(&j->parts[i].folds, &own) : folds_hold(&j->parts[i].folds, own.at[0]))
            return true;
    }
    return false;
}

struct run {
    size_t from, to; // items
    bool led;        // begins with small words: "of rivers"
};

// "Boat house Hurreline": behind a word that is told, what is no name ends the run before a name.
static bool is_parted(const struct joining *j, size_t from, size_t i) {
    size_t at;
    return from > 0 && !j->kept->items[from].name && j->kept->items[i].name && in_part(j, from - 1, &at);
}

// A bracket, a comma before item `i`.
static bool has_stop(const struct joining *j, size_t i) {
    for (size_t at = j->kept->items[i - 1].to; at < j->kept->items[i].from; at++)
        if (strchr(",;:()[]|", j->kept->title[at])) return true;
    return false;
}

static bool begins_with_article(const struct joining *j) {
    struct folds own = kept_folds(j->arena, j->kept, 0);
    return !own.count || !strcmp(own.at[0], "the") || !strcmp(own.at[0], "a") || !strcmp(own.at[0], "an");
}

static bool next_run(const struct joining *j, size_t at, struct run *run) {
    while (at < j->kept->count && !j->missing[at]) at++;
    if (at == j->kept->count) return false;
    *run = (struct run){at, at, false};
    for (size_t i = at + 1; i < j->kept->count && (j->missing[i] || is_small(j, i)); i++) {
        if (is_parted(j, at, i) || has_stop(j, i)) break;
        if (j->missing[i]) run->to = i;
    }
    while (run->from > 0 && is_small(j, run->from - 1)) run->from--;
    // An article that a title begins with has nothing to lean on.
    if (run->from == 0 && begins_with_article(j)) run->from = at;
    run->led = run->from < at;
    return true;
}

static const char *run_text(const struct joining *j, const struct run *run) {
    struct buf out = buf_start(j->arena);
    for (size_t i = run->from; i <= run->to; i++) {
        const struct kept_word *w = &j->kept->items[i];
        if (is_with(j, i))
            buf_format(&out, "%swith", out.n ? " " : "");
        else
            buf_format(&out, "%s%.*s", out.n ? " " : "", (int)(w->to - w->from), j->kept->title + w->from);
    }
    // No small word of it begins the title.
    const char *cased = say_title_case(j->arena, arena_format(j->arena, "A %s", out.at)) + 2;
    return strncmp(cased, "With ", 5) ? cased : arena_format(j->arena, "w%s", cased + 1);
}

static bool is_stuff_part(const struct part *part) {
    return part->slot == SLOT_MATERIAL || part->slot == SLOT_COLOR;
}

// Where a run goes: in the place of what it says better, before the phrase with the word that it stood
// before, or behind that with the word that it stood behind. A name that stood first goes on to stand first.
static size_t place_of(struct joining *j, const struct run *run) {
    size_t at, end = 0;
    while (end < j->count && !j->parts[end].flaw) end++;
    for (size_t i = run->from; i <= run->to; i++) {
        struct folds own = kept_folds(j->arena, j->kept, i);
        if (own.count < 2) continue;
        bool removed = false;
        for (size_t k = j->count; k-- > 0;)
            if (!j->parts[k].flaw && !j->parts[k].kept && is_within(&j->parts[k].folds, &own)) {
                remove_part(j, k);
                at = k;
                removed = true;
            }
        if (removed) return at;
    }
    size_t before = run->from, behind = run->to + 1;
    while (before > 0 && is_small(j, before - 1)) before--;
    while (behind < j->kept->count && is_small(j, behind)) behind++;
    bool first = true;
    for (size_t i = 0; i < run->from; i++) first = first && !in_part(j, i, &at);
    if (first && j->kept->items[run->from].name) return 0;
    bool after = before > 0 && in_part(j, before - 1, &at);
    size_t next;
    // "Boat house" before a name is said of the boat, not of the name.
    bool of_before =
        after && !j->kept->items[run->from].name && behind < j->kept->count && j->kept->items[behind].name;
    // "Iron crown": a stuff and what it is said of stay together.
    of_before = of_before || (after && is_stuff_part(&j->parts[at]) && !j->kept->items[run->from].name &&
                              j->kept->items[before - 1].to + 1 == j->kept->items[run->from].from);
    of_before |= j->kept->items[run->from].leans;
    if (!((run->led || of_before) && after) && behind < j->kept->count && in_part(j, behind, &next))
        return next;
    // "With tray" says what the thing has, so the thing comes first.
    bool of_thing = run->led || j->kept->items[run->from].denies;
    for (size_t i = 0; of_thing && after && i < j->count; i++)
        if (j->parts[i].slot == SLOT_TYPE && i > at) at = i;
    if (after) return at + 1;
    return first ? 0 : end;
}

// "Spanners" of the old title, where a piece says "Spanner": what there are several of is looked for so.
static const char *with_plurals(struct joining *j, const char *text) {
    struct buf out = buf_start(j->arena);
    for (size_t at = 0; text[at];) {
        size_t gap = strspn(text + at, " "), size = strcspn(text + at + gap, " ");
        const char *word = arena_copy(j->arena, text + at + gap, size), *fold = utf8_fold(j->arena, word);
        bool several = false, one = false;
        for (size_t i = 0; i < j->kept->count; i++) {
            struct folds own = kept_folds(j->arena, j->kept, i);
            for (size_t k = 0; k < own.count; k++) {
                one |= !strcmp(own.at[k], fold);
                several |= own.at[k][0] == fold[0] && strlen(own.at[k]) > size &&
                           !strcmp(own.at[k], say_plural(j->arena, fold));
            }
        }
        bool changes = several && !one && size > 2;
        buf_format(&out, "%.*s%s", (int)gap, text + at, changes ? say_plural(j->arena, word) : word);
        at += gap + size;
    }
    return out.at;
}

static bool has_plurals(enum slot slot) {
    return slot == SLOT_TYPE || slot == SLOT_SYNONYM;
}

// Is every word of the part one that stays anyway?
static bool is_all_kept(const struct joining *j, const struct folds *part) {
    for (size_t k = 0; k < part->count; k++) {
        bool kept = word_is_free(part->at[k]);
        for (size_t i = 0; i < j->kept->count && !kept; i++) {
            struct folds own = kept_folds(j->arena, j->kept, i);
            kept = j->kept->items[i].must && folds_hold(&own, part->at[k]);
        }
        if (!kept) return false;
    }
    return part->count > 0;
}

// "Brobble Beskar" of "Brobble Beskar & Co": a name that was cut where it does not end goes, and comes back
// whole.
static void drop_cut_names(struct joining *j) {
    for (size_t i = 0; i < j->kept->count; i++) {
        struct folds own = kept_folds(j->arena, j->kept, i);
        if (!j->missing[i] || !j->kept->items[i].several || !j->kept->items[i].name) continue;
        for (size_t k = j->count; k-- > 0;) {
            const struct part *part = &j->parts[k];
            bool shares = false;
            for (size_t n = 0; n < own.count; n++)
                shares |= !word_is_free(own.at[n]) && folds_hold(&part->folds, own.at[n]);
            if (!shares || part->flaw || part->slot == SLOT_TYPE || !is_all_kept(j, &part->folds)) continue;
            remove_part(j, k);
            find_missing(j);
        }
    }
}

// A number without what says that it is one: "no.3", 0 of "No.3/0" is 3, 0.
static const char *bare_number(const struct joining *j, const struct folds *folds) {
    struct buf out = buf_start(j->arena);
    for (size_t i = 0; i < folds->count; i++) {
        const char *fold = folds->at[i];
        size_t lead = !strncmp(fold, "no", 2) ? 2 + strspn(fold + 2, ".") : 0;
        if (i || fold[lead] || !lead) buf_format(&out, "%s ", i ? fold : fold + lead);
    }
    return out.at[0] >= '0' && out.at[0] <= '9' ? out.at : "";
}

// "5" alone, where "No. 5" stays.
static void number_parts(struct joining *j) {
    for (size_t i = 0; i < j->kept->count; i++) {
        struct folds own = kept_folds(j->arena, j->kept, i);
        if (!j->missing[i] || !own.count || strncmp(own.at[0], "no", 2) != 0) continue;
        const char *number = bare_number(j, &own);
        for (size_t k = 0; *number && j->missing[i] && k < j->count; k++) {
            const struct part *part = &j->parts[k];
            if (part->flaw || part->kept || strcmp(bare_number(j, &part->folds), number) != 0) continue;
            struct run one = {i, i, false};
            remove_part(j, k);
            insert_part(j, k, run_text(j, &one));
            find_missing(j);
        }
    }
}

// "Box of spanners" is no box spanner: before the word that it is of, the "of" goes with it.
static void take_of(const struct joining *j, struct run *run, size_t place) {
    size_t next = run->to + 1, at;
    if (next + 1 >= j->kept->count || place == j->count || !in_part(j, next + 1, &at) || at != place) return;
    struct folds own = kept_folds(j->arena, j->kept, next);
    if (own.count == 1 && (!strcmp(own.at[0], "of") || !strcmp(own.at[0], "for"))) run->to = next;
}

// "9 1/2 in", where "9.5 in Tall" stands too.
static void drop_figures_told(struct joining *j) {
    for (size_t i = j->count; i-- > 0;) {
        const struct folds *own = &j->parts[i].folds;
        if (own->count < 2 || !fold_is_figure(own->at[0])) continue;
        bool told = false;
        for (size_t k = 0; k < j->count; k++)
            told |= k != i && !j->parts[k].flaw && folds_run(&j->parts[k].folds, own);
        if (told) remove_part(j, i);
    }
}

// "Moon", where "Paper Moon" is a name that stands: it was read out of the name.
static void drop_read_out_of_names(struct joining *j) {
    for (size_t i = j->count; i-- > 0;) {
        bool out = false;
        for (size_t k = 0; k < j->kept->count && j->parts[i].slot == SLOT_TYPE; k++) {
            struct folds own = kept_folds(j->arena, j->kept, k);
            bool whole = j->kept->items[k].name && j->kept->items[k].several && !j->missing[k];
            out |= whole && own.count > j->parts[i].folds.count && is_within(&j->parts[i].folds, &own);
        }
        if (out) remove_part(j, i);
    }
}

const char *keep_join(struct arena *arena, const struct kept_words *kept, const struct title_piece *pieces,
                      size_t count) {
    struct joining j = {arena, kept, arena_array(arena, count + kept->count + 1, sizeof *j.parts), 0,
                        arena_array(arena, kept->count + 1, sizeof *j.missing)};
    for (size_t i = 0; i < count; i++) {
        const char *text = has_plurals(pieces[i].slot) ? with_plurals(&j, pieces[i].text) : pieces[i].text;
        j.parts[j.count++] =
            (struct part){text, folds_of(arena, text), pieces[i].slot, pieces[i].slot == SLOT_FLAWS, false};
    }
    drop_figures_told(&j);
    find_missing(&j);
    drop_read_out_of_names(&j);
    number_parts(&j);
    drop_cut_names(&j);
    struct run run;
    for (size_t at = 0; next_run(&j, at, &run); at = run.to + 1) {
        size_t place = place_of(&j, &run);
        take_of(&j, &run, place);
        insert_part(&j, place, run_text(&j, &run));
    }
    struct buf out = buf_start(arena);
    for (size_t i = 0; i < j.count; i++) buf_format(&out, "%s%s", i ? " " : "", j.parts[i].text);
    return say_sentence_case(arena, out.at);
}

// --- before the choice ---

// Does the text say a word again that stays for its own sake, or one that a turned word makes untrue?
static bool is_avoided(struct arena *arena, const struct kept_words *kept, const char *text, bool flaw) {
    struct folds folds = folds_of(arena, text);
    for (size_t i = 0; i < kept->count; i++) {
        const struct kept_word *w = &kept->items[i];
        if (!(w->turns || (flaw && w->unknown && !w->read))) continue;
        struct folds own = kept_folds(arena, kept, i);
        if (folds_run(&folds, &own)) continue; // it tells all of it
        for (size_t k = 0; k < own.count; k++)
            if (!word_is_free(own.at[k]) && folds_hold(&folds, own.at[k])) return true;
    }
    return false;
}

// "4 in", with no word of what it measures; `sides`: "3 x 5 ft" neither.
static bool is_bare(struct arena *arena, const char *notes, const struct note_span *span, bool sides) {
    struct folds said = folds_of(arena, arena_copy(arena, notes + span->from, span->to - span->from));
    for (size_t i = 0; i < said.count; i++) {
        bool side = sides && (!strcmp(said.at[i], "x") || !strcmp(said.at[i], "by") ||
                              (said.at[i][0] >= '0' && said.at[i][0] <= '9'));
        if (!side && !fold_is_figure(said.at[i]) && !fold_is_unit(said.at[i])) return false;
    }
    return true;
}

static bool has_unit(struct arena *arena, const char *notes, const struct note_span *span) {
    struct folds said = folds_of(arena, arena_copy(arena, notes + span->from, span->to - span->from));
    for (size_t i = 0; i < said.count; i++)
        if (fold_is_unit(said.at[i])) return true;
    return false;
}

// "4 in Long", where the row says "4 in": the family's way to measure, and no word of the seller's.
static bool is_assumed(struct arena *arena, const char *notes, const struct plan_phrase *phrase,
                       const char *text) {
    if (phrase->span.to <= phrase->span.from || !is_bare(arena, notes, &phrase->span, true)) return false;
    struct folds tells = folds_of(arena, text);
    const char *last = tells.count ? tells.at[tells.count - 1] : "";
    return *last && !fold_is_figure(last) && !fold_is_unit(last);
}

// "9 x 9 in" of a `9"` and a "9 in wide": nobody said that they are two sides.
static bool has_assumed_side(struct arena *arena, const struct kept_words *kept,
                             const struct record *record) {
    for (size_t i = 0; i < record->measurement_count; i++) {
        const struct note_span *span = &record->measurements[i].span;
        if (span->to <= span->from || record->measurements[i].of) continue;
        if (is_bare(arena, record->notes, span, false)) return true;
        bool titled = span->to <= strlen(kept->title);
        if (titled && is_bare(arena, record->notes, span, true) && !has_unit(arena, record->notes, span))
            return true; // "8x30"
    }
    return false;
}

static bool is_sides(struct arena *arena, const char *text) {
    struct folds folds = folds_of(arena, text);
    return folds_hold(&folds, "x");
}

const struct title_phrase *keep_steer(struct arena *arena, const struct kept_words *kept,
                                      const struct record *record, const struct title_plan *plan) {
    const struct title_problem *problem = &plan->problem;
    struct title_phrase *phrases = arena_array(arena, problem->phrase_count + 1, sizeof *phrases);
    bool side = has_assumed_side(arena, kept, record);
    size_t titled = strlen(kept->title);
    for (size_t i = 0; i < problem->phrase_count; i++) {
        phrases[i] = problem->phrases[i];
        const struct plan_phrase *planned = &plan->phrases[i];
        // A fault that the old title told is told by the new one, however short it is.
        if (planned->slot == SLOT_FLAWS && planned->span.to > planned->span.from &&
            planned->span.to <= titled)
            phrases[i].must = true, phrases[i].rollup = -1;
        struct title_spelling *own = NULL;
        for (size_t s = 0; s < phrases[i].count; s++) {
            const char *text = planned->spellings[s].text;
            bool measure = planned->slot == SLOT_MEASURE;
            bool assumed = measure && (is_assumed(arena, record->notes, planned, text) ||
                                       (side && is_sides(arena, text)));
            if (!assumed && !is_avoided(arena, kept, text, planned->slot == SLOT_FLAWS)) continue;
            if (!own) {
                own = arena_array(arena, phrases[i].count, sizeof *own);
                memcpy(own, phrases[i].spellings, phrases[i].count * sizeof *own);
                phrases[i].spellings = own;
            }
            own[s].cost += AVOIDED;
        }
    }
    return phrases;
}
