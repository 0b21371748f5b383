// SPDX-License-Identifier: MIT
// The old title is the first sentence of the note, so that everything said in it is read as the seller's own
// word: what the thing is called, and no evidence for a claim.
#include "shelf/propose.h"

#include <string.h>

#include "shelf/cell.h"
#include "text/utf8.h"

enum { TRIES_MOST = 8, NAMED_MOST = 4 };

static const char *const WEAK_NAMES[WEAK_COUNT] = {
    "length wasted",  "key words missing",      "misspelt",
    "words repeated", "claim without evidence", "a flaw told in the description, not in the title"};

const char *weakness_name(enum weakness weakness) {
    return WEAK_NAMES[weakness];
}

static void put_text(struct arena *arena, struct node *map, const char *key, const char *text) {
    if (text && *text && utf8_unwanted(text, strlen(text), false) == strlen(text))
        node_put(arena, map, key, node_text(arena, text));
}

// Each word once, spaces for the others so that places stay: of "brass oil lamp lamp" the lamp is an oil
// lamp.
static const char *each_word_once(struct arena *arena, const char *title) {
    enum { LEAST = 3 };
    char *copy = arena_string(arena, title);
    const char **seen = arena_array(arena, strlen(title) / LEAST + 1, sizeof *seen);
    size_t count = 0;
    for (size_t at = 0; copy[at];) {
        at += strspn(copy + at, " ");
        size_t size = strcspn(copy + at, " ");
        bool lettered = strcspn(copy + at, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ") < size;
        if (size >= LEAST && lettered) {
            const char *word = utf8_fold(arena, arena_copy(arena, copy + at, size));
            size_t k = 0;
            while (k < count && strcmp(seen[k], word) != 0) k++;
            if (k < count)
                memset(copy + at, ' ', size);
            else
                seen[count++] = word;
        }
        at += size;
    }
    return copy;
}

static struct node *row_tree(struct arena *arena, const struct proposer *proposer,
                             const struct shelf_row *row, const char *title) {
    struct node *tree = node_map(arena), *attributes = node_map(arena), *listing = node_map(arena);
    struct buf notes = buf_start(arena);
    buf_format(&notes, "%s.\n", each_word_once(arena, title));
    if (row->description &&
        utf8_unwanted(row->description, strlen(row->description), true) == strlen(row->description))
        buf_text(&notes, calm_description(arena, proposer, row->description));
    node_put(arena, tree, "id", node_text(arena, "row"));
    node_put(arena, tree, "notes", node_text(arena, notes.at));
    put_text(arena, attributes, "brand", row->brand);
    put_text(arena, attributes, "model", row->model);
    put_text(arena, attributes, "material", row->material);
    put_text(arena, attributes, "color", row->color);
    if (attributes->count) node_put(arena, tree, "attributes", attributes);
    put_text(arena, listing, "title", row->title);
    node_put(arena, tree, "listing", listing);
    return tree;
}

struct proposing {
    struct arena *arena;
    const struct proposer *proposer;
    const struct shelf_row *row;
    struct proposal *proposal;
    struct buf attention;
    const struct listing *listing;
    struct kept_words kept;
    const char *calm; // the old title
    bool capitals;    // had it everywhere
};

static void attend(struct proposing *p, const char *text) {
    buf_format(&p->attention, "%s%s", p->attention.n ? "; " : "", text);
}

// --- what is weak in the old title ---

static void find_weakness(struct proposing *p) {
    const struct listing *l = p->listing;
    const struct given_title *g = &l->given->score;
    unsigned *weak = &p->proposal->weak;
    bool search = false;
    for (size_t i = 0; i < g->miss_count; i++) {
        const struct given_miss *m = &g->misses[i];
        bool flaw = m->kind != MISS_SEARCH && l->plan->phrases[m->phrase].slot == SLOT_FLAWS;
        search |= m->kind != MISS_PHRASE && !flaw;
        if (flaw) *weak |= 1u << WEAK_FLAW;
    }
    if (search) *weak |= 1u << WEAK_SEARCH;
    if (g->miss_count && g->length * 3 < l->options.limit * 2) *weak |= 1u << WEAK_LENGTH;
    for (size_t i = 0; i < l->given->less_count; i++) {
        if (strstr(l->given->less[i], "is a claim without evidence")) *weak |= 1u << WEAK_CLAIM;
        if (!strncmp(l->given->less[i], "said twice", 10)) *weak |= 1u << WEAK_REPEATED;
    }
    size_t size = strlen(p->row->title);
    for (size_t i = 0; i < l->finding_count; i++)
        if (!strcmp(l->findings[i].code, "spelling.word") && l->findings[i].span.to &&
            l->findings[i].span.to <= size)
            *weak |= 1u << WEAK_SPELLING;
}

static void say_why(struct proposing *p) {
    struct arena *arena = p->arena;
    const struct given *g = p->listing->given;
    struct buf why = buf_start(arena);
    size_t named = 0;
    for (size_t i = 0; i < g->score.miss_count && named < NAMED_MOST; i++, named++) {
        const char *miss = given_miss_text(arena, &g->score.misses[i]);
        if (!miss) continue;
        buf_format(&why, "%smisses %s", why.n ? "; " : "", miss);
    }
    for (size_t i = 0; i < g->less_count; i++) buf_format(&why, "%s%s", why.n ? "; " : "", g->less[i]);
    if (p->proposal->weak & (1u << WEAK_SPELLING)) buf_format(&why, "%smisspelt", why.n ? "; " : "");
    if (p->proposal->weak & (1u << WEAK_LENGTH))
        buf_format(&why, "%s%zu of %zu used", why.n ? "; " : "", g->score.length, p->listing->options.limit);
    p->proposal->why = why.at;
}

// What else may sell it, where words cannot.
static void say_levers(struct proposing *p) {
    const struct shelf_row *row = p->row;
    const struct record *r = p->listing->record;
    struct buf out = buf_start(p->arena);
    buf_text(&out, "no other title earns more; other ways:");
    if (row->photos >= 0 && row->photos < 4) buf_format(&out, " more photos (%ld now),", row->photos);
    if (row->days >= 90) buf_format(&out, " a lower price after %ld days,", row->days);
    if (row->price >= 0 && row->price < 10) buf_text(&out, " a lot with others of its kind,");
    if (r->count > 1) buf_format(&out, " the %d pieces one by one,", r->count);
    for (size_t i = 0; i < r->flaw_count; i++)
        if (r->flaws[i].kind->class == CLASS_FUNCTION) {
            buf_text(&out, " its parts by themselves,");
            break;
        }
    if (!row->description || strlen(row->description) < 120) buf_text(&out, " a fuller description,");
    buf_text(&out, " another way of selling");
    p->proposal->why = out.at;
}

// --- a title that tries other searches ---

static bool *stems_of_old(struct proposing *p) {
    const struct title_plan *plan = p->listing->plan;
    const struct given_reading *r = &p->listing->given->score.reading;
    bool *held = arena_array(p->arena, plan->stems.count + plan->problem.stem_count + 1, sizeof *held);
    for (size_t i = 0; i < plan->stems.count; i++)
        for (size_t k = 0; k < r->count && !held[i]; k++)
            held[i] = !strcmp(plan->stems.names[i], r->stems.names[r->words[k].stem]);
    return held;
}

static const struct title_want *fade_wants(struct proposing *p) {
    const struct title_problem *problem = &p->listing->plan->problem;
    const bool *held = stems_of_old(p);
    struct title_want *wants = arena_array(p->arena, problem->want_count + 1, sizeof *wants);
    long days = p->row->days > 0 ? p->row->days : 0;
    for (size_t i = 0; i < problem->want_count; i++) {
        const struct title_want *want = &problem->wants[i];
        struct title_wording *wordings = arena_array(p->arena, want->count + 1, sizeof *wordings);
        for (size_t j = 0; j < want->count; j++) {
            wordings[j] = want->wordings[j];
            bool answered = true;
            for (size_t k = 0; k < want->wordings[j].count; k++) answered &= held[want->wordings[j].stems[k]];
            if (answered)
                wordings[j].weight = (int32_t)((int64_t)wordings[j].weight * FADE_DAYS / (FADE_DAYS + days));
            if (wordings[j].weight < 1) wordings[j].weight = 1;
        }
        wants[i] = (struct title_want){wordings, want->count};
    }
    return wants;
}

// The best of `problem` with the words that stay; NULL when they find no room.
static const char *fit(struct proposing *p, struct title_problem problem) {
    const struct title_options *o = &p->listing->options;
    for (int i = 0; i < TRIES_MOST; i++) {
        struct title_choice choice = title_solve(p->arena, &problem);
        if (!choice.feasible) return NULL;
        struct title_piece *pieces;
        size_t count = listing_pieces(p->arena, p->listing->plan, &choice, &pieces);
        const char *title = keep_join(p->arena, &p->kept, pieces, count);
        size_t length = count_text(title, strlen(title), o->unit);
        if (length <= o->limit) return keep_holds(p->arena, &p->kept, title) ? title : NULL;
        size_t over = length - o->limit;
        if (over + 1 >= choice.length) return NULL;
        problem.limit = choice.length - over;
    }
    return NULL;
}

// It earns more, or as much without a word twice or a claim that nothing shows.
static bool is_fine(struct proposing *p, const char *title, int64_t *earned) {
    const struct listing *l = p->listing;
    bool unlawful = p->proposal->weak & (1u << WEAK_REPEATED | 1u << WEAK_CLAIM);
    *earned = title_given(p->arena, l->plan, &l->choice, &l->options, title).earned;
    if (!strcmp(title, p->row->title) || cell_is_formula(title)) return false;
    return *earned > l->given->score.earned || (unlawful && *earned == l->given->score.earned);
}

// The best title that earns more: with the weights faded, or else with them as they are. `*any`: some title
// found room.
static const char *best_of(struct proposing *p, int64_t *earned, bool *any) {
    struct title_problem problem = p->listing->plan->problem;
    problem.phrases = keep_steer(p->arena, &p->kept, p->listing->record, p->listing->plan);
    struct title_problem faded = problem;
    faded.wants = fade_wants(p);
    const char *title = fit(p, faded);
    *any |= title != NULL;
    if (title && is_fine(p, title, earned)) return title;
    title = fit(p, problem);
    *any |= title != NULL;
    return title && is_fine(p, title, earned) ? title : NULL;
}

static void choose(struct proposing *p) {
    struct proposal *out = p->proposal;
    int64_t earned = 0;
    bool unlawful = p->proposal->weak & (1u << WEAK_REPEATED | 1u << WEAK_CLAIM);
    if (out->old_earned >= out->best && !unlawful) { // nothing earns more than the best
        say_levers(p);
        return;
    }
    bool any = false;
    const char *title = best_of(p, &earned, &any);
    // What says least stands last.
    for (size_t i = p->kept.count; i-- > 0 && !title;) {
        p->kept.gives_way++;
        if (p->kept.items[i].must && p->kept.items[i].soft) title = best_of(p, &earned, &any);
    }
    if (!any) {
        attend(p, "unknown word: what no rule understood and what must be told do not fit together");
        return;
    }
    if (!title) {
        say_levers(p);
        return;
    }
    out->new_title = title;
    out->new_earned = earned;
    out->adds = words_beyond(p->arena, title, p->row->title);
    out->drops = words_beyond(p->arena, p->row->title, title);
    struct buf words = buf_start(p->arena);
    for (size_t i = 0; i < p->kept.count; i++)
        if (p->kept.items[i].unknown) {
            const char *word = arena_copy(p->arena, p->kept.title + p->kept.items[i].from,
                                          p->kept.items[i].to - p->kept.items[i].from);
            if (!strstr(words.at, arena_format(p->arena, " %s", word))) buf_format(&words, " %s", word);
        }
    if (words.n) attend(p, arena_format(p->arena, "kept, for no rule knows them:%s", words.at));
}

// Of what nobody understood that sounds like a fault, no title tells.
static void tell_unread(struct proposing *p) {
    const struct listing *l = p->listing;
    size_t told = 0;
    for (size_t i = 0; i < l->finding_count; i++)
        if (!strcmp(l->findings[i].code, "notes.long"))
            attend(p, "the description was too long to be read to its end");
    for (size_t i = 0; i < l->finding_count && told < NAMED_MOST; i++) {
        const struct finding *f = &l->findings[i];
        if (strcmp(f->code, "notes.unread") != 0 || strcmp(f->level, "must") != 0) continue;
        if (f->span.from <= strlen(p->row->title)) continue; // that stays
        attend(p, arena_format(p->arena, "not understood: '%s'", listing_note(p->arena, l, f->span)));
        told++;
    }
}

static void weigh(struct proposing *p, const struct note_read *read) {
    const struct listing *l = p->listing;
    struct proposal *out = p->proposal;
    if (l->cautions && l->cautions->stop) {
        attend(p, "goods of this kind are not to be listed: see what 'asfound draft' says of it");
        return;
    }
    if (!l->given) {
        attend(p, "the old title could not be scored");
        return;
    }
    out->scored = true;
    out->old_earned = l->given->score.earned;
    out->best = l->given->score.best;
    find_weakness(p);
    say_why(p);
    tell_unread(p);
    if (!l->record->type.value || l->record->type.sure != SURE_STATED) {
        attend(p, "unknown word: what the thing is was not understood");
    } else if (!l->choice.feasible || !*l->title) {
        attend(p, "what must be told does not fit a title");
    } else if (strcmp(l->given->text, p->row->title) != 0) {
        attend(p, "the old title holds something private: write a new one by hand");
    } else {
        p->kept = keep_words(p->arena, p->proposer, l, read, p->calm, p->capitals);
        if (p->kept.doubtful)
            attend(p, arena_format(p->arena, "'%s' may be a claim or part of a name: write a new one by hand",
                                   p->kept.doubtful));
        else
            choose(p);
    }
}

static bool read_row(struct proposing *p, const char *title, struct note_read *read) {
    struct arena *arena = p->arena;
    const struct proposer *proposer = p->proposer;
    struct diags faults = diags_start(arena);
    struct record *record = arena_alloc(arena, sizeof *record);
    if (!record_read(arena, proposer->rules, row_tree(arena, proposer, p->row, title),
                     proposer->options.locale, 1, record, &faults)) {
        attend(p, faults.count ? faults.items[0].message : "the row cannot be read");
        return false;
    }
    struct note_reader reader = {.rules = proposer->rules,
                                 .phrases = proposer->phrases,
                                 .book = proposer->book,
                                 .scanner = proposer->drafter.scanner,
                                 .asked = proposer->asked,
                                 .locale = proposer->options.locale};
    struct notes notes = notes_open(arena, &reader, record);
    if (notes.count != 1) {
        attend(p, "the row speaks of several things");
        return false;
    }
    *read = *notes_read(arena, &reader, &notes, 0);
    return true;
}

// "Copper ketle": where only a slip away from it is the thing, the title is read again as it was meant. NULL
// where nothing is to be mended.
static const char *mended(struct proposing *p, const struct note_read *read) {
    static const char KIND[] = "spelling ";
    const struct note_span *type = &read->record.type.span;
    size_t size = strlen(p->calm), done = 0;
    struct buf out = buf_start(p->arena);
    for (size_t i = 0; i < read->reading_count; i++) {
        const struct reading *r = &read->readings[i];
        if (strncmp(r->what, KIND, sizeof KIND - 1) != 0 || r->to > size || r->from < done) continue;
        if (r->from >= type->to || r->to <= type->from) continue;
        const char *meant = r->what + sizeof KIND - 1;
        buf_add(&out, p->calm + done, r->from - done);
        buf_text(&out, meant);
        attend(p, arena_format(p->arena, "'%s' was read as '%s'",
                               arena_copy(p->arena, p->calm + r->from, r->to - r->from), meant));
        done = r->to;
    }
    if (!done) return NULL;
    buf_text(&out, p->calm + done);
    p->proposal->weak |= 1u << WEAK_SPELLING;
    return out.at;
}

void propose(struct arena *arena, const struct proposer *proposer, const struct shelf_row *row,
             struct proposal *proposal) {
    *proposal = (struct proposal){.adds = "", .drops = "", .why = "", .attention = ""};
    struct proposing p = {.arena = arena,
                          .proposer = proposer,
                          .row = row,
                          .proposal = proposal,
                          .attention = buf_start(arena)};
    p.calm = calm_title(arena, proposer, row->title, &p.capitals);
    struct note_read read;
    bool fine = read_row(&p, p.calm, &read);
    const char *meant = fine ? mended(&p, &read) : NULL;
    if (meant) {
        p.calm = meant;
        fine = read_row(&p, meant, &read);
    }
    if (fine) {
        p.listing = listing_draft_title(arena, &proposer->drafter, &read.record, &proposer->options);
        weigh(&p, &read);
    }
    proposal->attention = p.attention.at;
}
