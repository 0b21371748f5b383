// SPDX-License-Identifier: MIT
// The places of a note where a flaw's words stand, sorted into hits that do not overlap.
#include <string.h>

#include "notes/faults.h"

// "The edge has gilt wear": the second of the two words belongs to the name of another kind.
static bool is_taken_by_phrase(const struct fault_reader *r, size_t i) {
    const struct phrase_hits *hits = &r->note->hits;
    const struct phrase_hit *near = &hits->at[i];
    for (size_t k = i + 1; k < hits->count && hits->at[k].from < near->to; k++) {
        const struct phrase_hit *h = &hits->at[k];
        struct fault_hit phrase = {.from = h->from, .to = h->to};
        if (!h->near && h->from > near->from && h->to >= near->to && h->to > h->from + 1 &&
            kind_is_whole(r, h->flaw, &phrase))
            return true;
    }
    return false;
}

static struct fault_hit hit_of(const struct phrase_hit *hit) {
    return (struct fault_hit){.from = hit->from,
                              .to = hit->to,
                              .kinds = {hit->flaw},
                              .kind_count = 1,
                              .near = hit->near,
                              .denied = hit->denied};
}

// "Pads gone crumbly": words that speak of old paper say nothing of that of goods that are no paper, where
// the note names none. The kind's own name stays.
static bool is_alien(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const of_paper[] = {"album-residue", "binding-weak",  "brittle-paper", "ex-library",
                                           "jacket-damage", "pages-loose",   "price-clipped", "toning",
                                           "trimmed",       "writing-inside"};
    static const char *const hard[] = {"tools",    "kitchenware", "metalware",  "glassware", "ceramics",
                                       "footwear", "clothing",    "electrical", "lighting",  "cameras",
                                       "bags",     "sports",      "jewelry",    "music",     "furniture"};
    static const char *const sheets[] = {"paper", "book",    "books",    "page",   "pages", "music",
                                         "score", "hymnal",  "songbook", "card",   "map",   "print",
                                         "label", "leaves",  "sheet",    "sheets", "cover", "wrapper",
                                         "flap",  "booklet", "manual",   "album",  "photo", "photos"};
    const struct tokens *tokens = &r->note->tokens;
    const char *id = hit->flaw->rule.id,
               *family = r->note->record->family ? r->note->record->family->rule.id : "";
    bool paper = false, off = false;
    for (size_t i = 0; i < sizeof of_paper / sizeof *of_paper; i++) paper |= !strcmp(of_paper[i], id);
    for (size_t i = 0; i < sizeof hard / sizeof *hard; i++) off |= !strcmp(hard[i], family);
    for (size_t i = hit->from; i < hit->to; i++) // "torn out a plate": it is the fault that names it
        off &= r->note->taken[i] != TAKEN_TYPE;
    struct fault_hit own = hit_of(hit);
    static const char *const of_media[] = {"disc-scratches", "media-degraded"};
    static const char *const players[] = {"media", "cameras", "electrical", "other", "toys", "parts"};
    for (size_t i = 0; i < sizeof of_media / sizeof *of_media && *family; i++)
        if (!strcmp(of_media[i], id)) {
            off = true;
            for (size_t k = 0; k < sizeof players / sizeof *players; k++)
                off &= strcmp(players[k], family) != 0;
            if (!off || kind_is_whole(r, hit->flaw, &own)) return false;
            for (size_t k = 0; k < tokens->count; k++) {
                static const char *const reels[] = {"film",     "tape",   "record",   "records", "disc",
                                                    "negative", "reel",   "lp",       "cd",      "cassette",
                                                    "cylinder", "slides", "78",       "45",      "33",
                                                    "78s",      "45s",    "negatives"};
                if (token_among(tokens, k, reels, sizeof reels / sizeof *reels)) return false;
            }
            return true;
        }
    if (!paper || !off || (strcmp(id, "toning") != 0 && kind_is_whole(r, hit->flaw, &own))) return false;
    for (size_t i = 0; i < tokens->count; i++)
        if ((hit->near || i < hit->from || i >= hit->to) &&
            token_among(tokens, i, sheets, sizeof sheets / sizeof *sheets))
            return false;
    return true;
}

// "Tea bowl with a crack running down", "switch box split": the first word only names what sort of thing it
// is.
static bool is_of_name(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct note *note = r->note;
    if (!hit->near || note->taken[hit->from] != TAKEN_TYPE) return false;
    bool before = hit->from + 1 < hit->to && note->taken[hit->from + 1] == TAKEN_TYPE &&
                  note->tokens.at[hit->from].stop == STOP_NONE;
    static const char *const stuffs[] = {"stain",     "odor-food",    "odor-fuel",  "mineral-deposit",
                                         "tide-line", "water-damage", "heat-damage"}; // tea, oil, cigars
    bool stuff = false;
    for (size_t i = 0; i < sizeof stuffs / sizeof *stuffs; i++)
        stuff |= !strcmp(hit->flaw->rule.id, stuffs[i]);
    return (before && stuff) || !strcmp(hit->flaw->rule.id, "box-wear");
}

// "Lantern won't light": of two words apart that praise, no word between may deny.
static bool is_crossed(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const words[] = {
        "no",     "not",      "never",   "won't",    "wont",    "doesn't", "doesnt", "don't",  "dont",
        "can't",  "cant",     "cannot",  "isn't",    "isnt",    "didn't",  "didnt",  "hasn't", "wouldn't",
        "wasn't", "couldn't", "nothing", "neither",  "stopped", "quit",    "nor",    "hardly", "barely",
        "except", "unless",   "until",   "untested", "if",      "should",  "used"};
    if (!hit->near || !fault_is_virtue(hit->flaw)) return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (token_among(&r->note->tokens, i, words, sizeof words / sizeof *words)) return true;
    return false;
}

// The note's hits by phrase: all kinds of one span together, none inside a longer one. Two words apart that
// name a fault outrank a phrase of one of them ("paint … worn").
static void gather(struct fault_reader *r) {
    const struct phrase_hits *hits = &r->note->hits;
    struct fault_hit *const kept = arena_array(r->note->arena, hits->count + 1, sizeof *kept);
    r->hits = kept;
    if (!kept) return; // never so, which readers of code by machine do not know
    size_t reach = 0;
    for (size_t i = 0; i < hits->count; i++) {
        const struct phrase_hit *hit = &hits->at[i];
        if ((hit->near && is_taken_by_phrase(r, i)) || is_crossed(r, hit) || is_alien(r, hit)) continue;
        if (hit->near && r->note->taken[hit->from] == TAKEN_TYPE && r->note->taken[hit->to - 1] == TAKEN_TYPE)
            continue; // "candle cups": the name of the thing
        if (is_of_name(r, hit)) continue;
        if (hit->gated && hit->near && !kind_can_be(r, hit->flaw, note_words(r->note, hit->from, hit->to)))
            continue;
        if (hit->gated && !hit->near && !kind_fits_words(r, hit->flaw, hit->from, hit->to)) continue;
        if (hit->flaw->off.count && kind_is_off(r, hit)) continue;
        struct fault_hit *last = r->hit_count ? &kept[r->hit_count - 1] : NULL;
        if (last && hit->from == last->from && hit->to == last->to && (hit->near == last->near)) {
            last->denied &= hit->denied;
            if (last->kind_count < FAULT_KINDS_MOST) last->kinds[last->kind_count++] = hit->flaw;
            continue;
        }
        if (last && hit->from == last->from && hit->to > last->to &&
            (!hit->near || last->to - last->from < 2)) {
            *last = hit_of(hit); // longer from the same word: it alone counts
            reach = hit->to;
            continue;
        }
        bool absence = last && hit->near && hit->from == last->from && last->kinds[0]->form == ABSENCE &&
                       hit->flaw->form == STATE;
        if (absence) { // "no bulb to try it with": no bulb, and not tried
            struct fault_hit second = hit_of(hit);
            second.from = hit->to - 1;
            second.near = false;
            second.own_no = true;
            kept[r->hit_count++] = second;
            reach = hit->to;
            continue;
        }
        if (hit->from < reach) continue;
        kept[r->hit_count++] = hit_of(hit);
        reach = hit->to;
    }
}

static void add_kind(struct fault_hit *hit, const struct flaw *kind) {
    for (size_t i = 0; i < hit->kind_count; i++)
        if (hit->kinds[i] == kind) return;
    if (hit->kind_count < FAULT_KINDS_MOST) hit->kinds[hit->kind_count++] = kind;
}

// "The lid … split": where the word by itself may name the same kind, it may name its others as well, and
// the material decides.
static void widen(struct fault_reader *r, struct fault_hit *hit) {
    const struct phrase_hits *hits = &r->note->hits;
    for (size_t pass = 0; pass < 2; pass++) {
        bool same = pass > 0;
        for (size_t i = 0; i < hits->count; i++) {
            const struct phrase_hit *word = &hits->at[i];
            bool end = (word->from == hit->from || word->to == hit->to) && word->to == word->from + 1;
            if (word->near || !end) continue;
            if (!pass) same |= word->flaw == hit->kinds[0];
            if (pass) add_kind(hit, word->flaw);
        }
        if (!same) return;
    }
}

// "Not a marriage": the article belongs to the denial, and a fault is governed by its own first word.
static void drop_article(const struct fault_reader *r, struct fault_hit *hit) {
    static const char *const articles[] = {"a", "an", "the"};
    if (!hit->near && hit->to > hit->from + 1 &&
        token_among(&r->note->tokens, hit->from, articles, sizeof articles / sizeof *articles))
        hit->from++;
}

void faults_gather(struct fault_reader *r) {
    gather(r);
    faults_join(r);
    for (size_t i = 0; i < r->hit_count; i++) drop_article(r, &r->hits[i]);
    for (size_t i = 0; i < r->hit_count; i++)
        if (r->hits[i].near) widen(r, &r->hits[i]);
}
