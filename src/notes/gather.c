// SPDX-License-Identifier: MIT
// The places of a note where a flaw's words stand, sorted into hits that do not overlap.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/place.h"
#include "text/order.h"

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

// "One key lost its cap", "one missing its hook": the part, or the one, is what lacks something.
static bool has_object(const struct tokens *tokens, const struct phrase_hit *hit) {
    static const char *const verbs[] = {"lost", "missing", "lacking"};
    static const char *const objects[] = {"its", "a", "an", "one", "two", "some", "their", "his", "three"};
    bool parts = ANY(tokens, hit->to - 1, "missing") && ANY(tokens, hit->to - 2, "is", "are") &&
                 hit->to < tokens->count && tokens->at[hit->to].kind == TOKEN_WORD &&
                 tokens->at[hit->to].one != tokens->at[hit->to].fold; // "both liners are missing lids"
    if (hit->flaw->form == ABSENCE && hit->to - hit->from > 2 && parts &&
        tokens->at[hit->to - 1].stop == STOP_NONE)
        return true;
    return hit->flaw->form == ABSENCE && hit->to - hit->from > 1 &&
           tokens->at[hit->to - 1].stop == STOP_NONE &&
           token_among(tokens, hit->to - 1, verbs, sizeof verbs / sizeof *verbs) &&
           token_among(tokens, hit->to, objects, sizeof objects / sizeof *objects) &&
           !token_is(tokens, hit->from, "is");
}

// "One rubber foot gone": the foot, and no rubber; the hair of a bow is no pet's; a lamp has no plug that
// stops it.
static bool is_of_part(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const rubbers[] = {"foot", "feet", "bung",    "stopper", "buffer",
                                          "tip",  "tips", "ferrule", "washer",  "seal",
                                          "grip", "stop", "cap",     "bumper",  "knob"};
    static const char *const wired[] = {"electrical", "lighting", "tools",
                                        "music",      "cameras",  "clocks-watches"};
    const struct tokens *tokens = &r->note->tokens;
    if (hit->near && text_same(hit->flaw->rule.id, "missing-pieces") && ANY(tokens, hit->to - 1, "short") &&
        ANY(tokens, hit->to - 2, "off", "cut", "broken", "snapped", "sawn", "bitten"))
        return true; // "two of the pegs broken off short"
    const char *id = hit->flaw->rule.id, *type = r->note->record->type.value,
               *family = r->note->record->family ? r->note->record->family->rule.id : "";
    if (has_object(tokens, hit)) return true;
    if (text_same(id, "zip-fault") && *family &&
        !kind_can_be(r, hit->flaw, NULL)) { // the hook of a plumb bob
        static const char *const zips[] = {"zip's",   "zipper's", "zip",     "zipper", "zips",
                                           "zippers", "popper",   "poppers", "snap",   "snaps",
                                           "zipped",  "teeth",    "slider",  "pull"};
        bool zip = false;
        for (size_t i = hit->from; i < hit->to; i++)
            zip |= token_among(tokens, i, zips, sizeof zips / sizeof *zips);
        if (!zip) return true;
    }
    if (text_same(id, "rubber-perished"))
        return hit->near && token_is(tokens, hit->from, "rubber") && token_is(tokens, hit->to - 1, "gone") &&
               token_among(tokens, hit->from + 1, rubbers, sizeof rubbers / sizeof *rubbers);
    if (text_same(id, "pet-hair"))
        return type && (strstr(type, "bow") || strstr(type, "brush")) && !strstr(type, "bowl");
    static const char *const worn[] = {"clothing", "linens", "furniture", "footwear", "bags"};
    if (text_same(id, "missing-button") && *family) { // the belt of a machine
        bool ours = false, belt = false;
        for (size_t i = 0; i < sizeof worn / sizeof *worn; i++) ours |= text_same(family, worn[i]);
        for (size_t i = hit->from; i < hit->to; i++)
            belt |= token_is(tokens, i, "belt") || token_is(tokens, i, "hook") ||
                    token_is(tokens, i, "tie") || token_is(tokens, i, "snap");
        static const char *const machines[] = {"lighting",  "clocks-watches", "electrical", "kitchenware",
                                               "metalware", "tools",          "cameras",    "media"};
        for (size_t i = 0; i < sizeof machines / sizeof *machines && !belt; i++)
            belt = text_same(family, machines[i]); // the button of a switch
        return belt && !ours;
    }
    bool plug = text_same(id, "missing-stopper");
    bool alien = false;
    for (size_t i = 0; i < sizeof wired / sizeof *wired; i++) alien |= text_same(family, wired[i]);
    for (size_t i = hit->from; plug && alien && i < hit->to; i++)
        if (token_is(tokens, i, "plug") || token_is(tokens, i, "cap")) return true;
    return false;
}

// "Pads gone crumbly": words that speak of old paper say nothing of that of goods that are no paper, where
// the note names none. The kind's own name stays.
static bool is_alien(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const of_paper[] = {"album-residue", "binding-weak",  "brittle-paper", "ex-library",
                                           "jacket-damage", "pages-loose",   "price-clipped", "toning",
                                           "trimmed",       "writing-inside"};
    static const char *const hard[] = {"tools",    "kitchenware", "metalware", "glassware",
                                       "ceramics", "footwear",    "clothing",  "electrical",
                                       "lighting", "cameras",     "bags",      "sports",
                                       "jewelry",  "music",       "furniture", "clocks-watches"};
    static const char *const sheets[] = {"paper", "book",    "books",    "page",   "pages", "music",
                                         "score", "hymnal",  "songbook", "card",   "map",   "print",
                                         "label", "leaves",  "sheet",    "sheets", "cover", "wrapper",
                                         "flap",  "booklet", "manual",   "album",  "photo", "photos"};
    const struct tokens *tokens = &r->note->tokens;
    const char *id = hit->flaw->rule.id,
               *family = r->note->record->family ? r->note->record->family->rule.id : "";
    bool paper = false, off = false;
    for (size_t i = 0; i < sizeof of_paper / sizeof *of_paper; i++) paper |= text_same(of_paper[i], id);
    for (size_t i = 0; i < sizeof hard / sizeof *hard; i++) off |= text_same(hard[i], family);
    off |= text_same(id, "brittle-paper") && text_same(family, "linens"); // the backing of a rug
    for (size_t i = hit->from; i < hit->to; i++) // "torn out a plate": it is the fault that names it
        off &= r->note->taken[i] != TAKEN_TYPE;
    struct fault_hit own = hit_of(hit);
    static const char *const of_media[] = {"disc-scratches", "media-degraded"};
    static const char *const players[] = {"media", "cameras", "electrical", "other", "toys", "parts"};
    for (size_t i = 0; i < sizeof of_media / sizeof *of_media && *family; i++)
        if (text_same(of_media[i], id)) {
            off = true;
            for (size_t k = 0; k < sizeof players / sizeof *players; k++)
                off &= !text_same(players[k], family);
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
    if (!paper || !off || (!text_same(id, "toning") && kind_is_whole(r, hit->flaw, &own))) return false;
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
        stuff |= text_same(hit->flaw->rule.id, stuffs[i]);
    return (before && stuff) || text_same(hit->flaw->rule.id, "box-wear");
}

// "One lid's hinge has gone": the hinge, and not the lid.
static bool is_owner_of_part(const struct fault_reader *r, const struct phrase_hit *hit) {
    const char *word = r->note->tokens.at[hit->from].fold;
    size_t size = strlen(word);
    return hit->near && hit->from + 2 < hit->to && size > 2 && text_same(word + size - 2, "'s") &&
           place_noun(r->note, hit->from + 1);
}

// "The lid has a corner missing": the corner is what lacks, and the lid is there.
static bool is_of_owned(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const verbs[] = {"has", "have", "had", "got", "shows"};
    static const char *const articles[] = {"a",     "an",  "one",   "two",     "three",  "its",
                                           "some",  "bit", "small", "several", "little", "the",
                                           "their", "big", "tiny",  "couple"};
    const struct tokens *tokens = &r->note->tokens;
    if (hit->flaw->form != ABSENCE) return false;
    for (size_t i = hit->from + 1; i + 3 < hit->to; i++)
        if (token_among(tokens, i, verbs, sizeof verbs / sizeof *verbs) &&
            token_among(tokens, i + 1, articles, sizeof articles / sizeof *articles))
            return true;
    return false;
}

// "The page isn't loose": not that it is not there.
static bool is_not_so(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const nots[] = {"isn't", "aren't", "isnt", "arent"};
    static const char *const places[] = {"there", "here",   "present",  "with", "included", "in",   "on",
                                         "any",   "around", "anywhere", "to",   "among",    "mine", "all"};
    const struct tokens *tokens = &r->note->tokens;
    return hit->near && token_among(tokens, hit->to - 1, nots, sizeof nots / sizeof *nots) &&
           hit->to < tokens->count && tokens->at[hit->to].stop == STOP_NONE &&
           !token_among(tokens, hit->to, places, sizeof places / sizeof *places);
}

// "Lid stitching gone": the stitching, which is a fault of its own, and not the lid.
static bool is_of_compound(const struct fault_reader *r, size_t i) {
    const struct phrase_hits *hits = &r->note->hits;
    const struct phrase_hit *hit = &hits->at[i];
    if (!hit->near || hit->flaw->form != ABSENCE || r->note->tokens.at[hit->from].stop != STOP_NONE)
        return false;
    for (size_t k = i + 1; k < hits->count && hits->at[k].from <= hit->from + 1; k++)
        if (hits->at[k].from == hit->from + 1 && hits->at[k].to >= hit->to && hit->to > hit->from + 2)
            return true;
    return false;
}

// "No charger so": none is there, told by a rule's phrase of its own, and the last word tells that nothing
// was tried. How many hits they are.
static size_t leave_part(const struct fault_reader *r, struct fault_hit *hit) {
    const struct phrase_hits *hits = &r->note->hits;
    const struct tokens *tokens = &r->note->tokens;
    if (hit->near || hit->to != hit->from + 3 || !text_same(hit->kinds[0]->rule.id, "untested") ||
        !token_is(tokens, hit->from, "no") || !ANY(tokens, hit->to - 1, "so", "to"))
        return 1;
    for (size_t i = 0; i < hits->count; i++) {
        if (hits->at[i].from != hit->from || hits->at[i].to != hit->to - 1 ||
            hits->at[i].flaw->form != ABSENCE)
            continue;
        hit[1] = *hit;
        hit[1].from = hit->to - 1;
        hit[1].own_no = true;
        *hit = hit_of(&hits->at[i]);
        return 2;
    }
    return 1;
}

// "In a fitted wooden box, box has a split": the split of a thing, and no wear of its packing.
static bool is_of_made_box(const struct fault_reader *r, const struct phrase_hit *hit) {
    if (!text_same(hit->flaw->rule.id, "box-wear")) return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(&r->note->tokens, i, "box", "box's", "boxes")) return packing_is_made(r->note, i);
    return false;
}

// "Case lid split and strap missing": the strap is what is missing, for of the lid something was said.
static bool is_of_next_part(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!hit->near || hit->flaw->form != ABSENCE || hit->to < hit->from + 4 ||
        !ANY(tokens, hit->to - 1, "missing", "gone", "lost"))
        return false;
    size_t last = hit->to - 2; // the part before "missing", "are missing"
    while (last > hit->from + 2 &&
           ANY(tokens, last, "is", "are", "both", "also", "now", "all", "has", "have"))
        last--;
    if (last < hit->from + 2 || !ANY(tokens, last - 1, "and", "&") || tokens->at[last].kind != TOKEN_WORD ||
        ANY(tokens, last, "long", "is", "are", "now", "also"))
        return false;
    if (last == hit->from + 2) return true; // "lid and key missing": two, which a list tells
    for (size_t i = hit->from + 1; i < last - 1; i++)
        if (ANY(tokens, i, "split", "cracked", "chipped", "bent", "loose", "broken", "torn", "worn", "dented",
                "rusty", "scratched", "stained", "stiff", "is", "has", "are", "snapped", "warped", "stuck"))
            return true;
    return false;
}

// "Ring at the top is bent": of a ring, and not of a mark.
static bool is_of_bent_ring(const struct fault_reader *r, size_t i) {
    const struct phrase_hits *hits = &r->note->hits;
    const struct phrase_hit *hit = &hits->at[i];
    if (!text_same(hit->flaw->rule.id, "ring-mark") ||
        !ANY(&r->note->tokens, hit->to, "is", "are", "has", "have"))
        return false;
    for (size_t k = i + 1; k < hits->count && hits->at[k].from <= hit->to + 2; k++)
        if (hits->at[k].from > hit->to && hits->at[k].flaw != hit->flaw) return true;
    return false;
}

// "Handle bent and it jams": between two words apart a damage by itself, which an "and" parts from the
// second.
static bool is_within(const struct fault_reader *r, const struct fault_hit *last,
                      const struct phrase_hit *hit) {
    if (!last->near || hit->near || hit->to != hit->from + 1 || hit->from <= last->from ||
        hit->to >= last->to)
        return false;
    return hit->flaw->class == CLASS_DAMAGE && hit->flaw->form == FAULT && last->kinds[0] != hit->flaw &&
           ANY(&r->note->tokens, hit->to, "and", "so");
}

// "Plate worn to brass on the high points": one fault, and how far it goes.
static bool is_continued(const struct fault_reader *r, const struct fault_hit *last,
                         const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return hit->from == last->to + 1 && last->kinds[0] == hit->flaw &&
           tokens->at[last->to].stop == STOP_NONE && ANY(tokens, last->to, "to", "through", "into");
}

// What the last word says by itself, which the "no" before the others reaches.
static struct fault_hit last_word(const struct phrase_hit *hit) {
    struct fault_hit last = hit_of(hit);
    last.from = hit->to - 1;
    last.near = false;
    last.own_no = true;
    return last;
}

// "No measuring cup or manual": the cup is told by itself.
static bool is_last_of_two(const struct fault_reader *r, const struct phrase_hit *hit) {
    return hit->near && hit->flaw->form == ABSENCE && hit->to > hit->from + 3 &&
           ANY(&r->note->tokens, hit->from, "no", "without") &&
           ANY(&r->note->tokens, hit->to - 2, "or", "nor");
}

// The note's hits by phrase: all kinds of one span together, none inside a longer one. Two words apart that
// name a fault outrank a phrase of one of them ("paint … worn").
static void gather(struct fault_reader *r) {
    const struct phrase_hits *hits = &r->note->hits;
    struct fault_hit *const kept = arena_array(r->note->arena, 2 * hits->count + 2, sizeof *kept);
    r->hits = kept;
    if (!kept) return; // never so, which readers of code by machine do not know
    size_t reach = 0;
    for (size_t i = 0; i < hits->count; i++) {
        const struct phrase_hit *hit = &hits->at[i];
        if ((hit->near && is_taken_by_phrase(r, i)) || is_alien(r, hit) || is_of_part(r, hit)) continue;
        if (hit->near && r->note->taken[hit->from] == TAKEN_TYPE && r->note->taken[hit->to - 1] == TAKEN_TYPE)
            continue; // "candle cups": the name of the thing
        if (is_of_name(r, hit) || is_owner_of_part(r, hit) || is_of_compound(r, i) || is_not_so(r, hit) ||
            is_of_owned(r, hit))
            continue;
        if (sound_said_holds(r, hit->from, hit->to)) continue;
        if (hit->gated && hit->near && !kind_can_be(r, hit->flaw, note_words(r->note, hit->from, hit->to)))
            continue;
        if (hit->gated && !hit->near && !kind_fits_words(r, hit->flaw, hit->from, hit->to)) continue;
        if (hit->flaw->off.count && kind_is_off(r, hit)) continue;
        bool pull = hit->flaw->form == FAULT && hit->to == hit->from + 2 &&
                    ANY(&r->note->tokens, hit->from, "no", "without");
        if ((pull || text_same(hit->flaw->rule.id, "snag")) && fault_is_drawer_pull(r, hit->from, hit->to))
            continue;
        if (is_of_made_box(r, hit) || is_of_bent_ring(r, i) || is_of_next_part(r, hit)) continue;
        if (fault_is_named_for_limb(r, hit) || fault_is_beside_limb(r, hit) || gather_means_other(r, hit) ||
            fault_is_symptom(r, hit))
            continue;
        if (!hit->near && hit->to <= hit->from + 2 && spot_made_hole(&r->note->tokens, hit->to - 1)) continue;
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
        if (hit->from >= reach && is_last_of_two(r, hit)) {
            kept[r->hit_count++] = last_word(hit);
            reach = hit->to;
            continue;
        }
        bool absence = last && hit->near && hit->from == last->from && last->kinds[0]->form == ABSENCE &&
                       hit->flaw->form == STATE;
        if (absence) { // "no bulb to try it with": no bulb, and not tried
            kept[r->hit_count++] = last_word(hit);
            reach = hit->to;
            continue;
        }
        if (last && hit->near == false && is_continued(r, last, hit)) {
            last->to = reach = hit->to;
            continue;
        }
        if (last && is_within(r, last, hit)) kept[r->hit_count++] = hit_of(hit);
        bool tail = last && !last->near && !hit->near && hit->from < last->to && hit->to > last->to;
        if (tail && hit->flaw == last->kinds[0] && hit->flaw->noun &&
            strstr(hit->flaw->noun, r->note->tokens.at[hit->to - 1].one))
            last->to = reach = hit->to; // "old worm holes"
        if (hit->from < reach) continue;
        if (last && !last->near && !hit->near && hit->from == last->to && last->kinds[0] == hit->flaw &&
            last->kind_count == 1 && ANY(&r->note->tokens, hit->from, "out", "off", "from", "gone")) {
            last->to = reach = hit->to; // "a chip out of the edge": one, and where it is
            continue;
        }
        kept[r->hit_count] = hit_of(hit);
        r->hit_count += leave_part(r, &kept[r->hit_count]);
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

// "Touched up the paint on the hat": the paint is what it was done to, and behind it stands where.
static void take_coat(const struct fault_reader *r, struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to + ANY(tokens, hit->to, "the", "its", "some", "her", "his");
    if (hit->kinds[0] && hit->kinds[0]->class == CLASS_REPAIR && at > hit->to && at + 1 < tokens->count &&
        tokens->at[hit->to - 1].stop == STOP_NONE &&
        ANY(tokens, at, "paint", "gold", "gilt", "gilding", "glaze", "varnish", "finish", "color", "lacquer",
            "enamel") &&
        tokens->at[at].stop == STOP_NONE &&
        ANY(tokens, at + 1, "on", "around", "along", "at", "over", "near", "under", "inside"))
        hit->to = at + 1;
}

// "Torn in two places": torn, and not in two.
static void drop_places(const struct fault_reader *r, struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool places = token_is(tokens, hit->to, "places") || token_is(tokens, hit->to, "spots");
    if (places && hit->to > hit->from + 2 && token_is(tokens, hit->to - 2, "in")) hit->to -= 2;
}

// "Two reeds don't | sound": what it does not do is a word of it.
static void take_verb(const struct fault_reader *r, struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t end = hit->to; // "runs for ten minutes | and stops"
    while (end < tokens->count && tokens->at[end - 1].stop == STOP_NONE && ANY(tokens, end, "and", "then"))
        end++;
    if (hit->kinds[0]->class == CLASS_FUNCTION && end > hit->to && ANY(tokens, end, "stops", "quits", "dies"))
        hit->to = end + 1;
    if (hit->near && hit->kinds[0]->class == CLASS_FUNCTION && hit->to < tokens->count &&
        tokens->at[hit->to - 1].stop == STOP_NONE && tokens->at[hit->to].kind == TOKEN_WORD &&
        ANY(tokens, hit->to - 1, "don't", "doesn't", "won't") &&
        ANY(tokens, hit->to, "sound", "work", "ring", "strike", "chime", "play", "speak", "light", "turn"))
        hit->to++;
}

void faults_gather(struct fault_reader *r) {
    sound_said_find(r);
    gather(r);
    worn_pictures_gather(r);
    faults_drop_likeness(r);
    faults_join(r);
    for (size_t i = 0; i < r->hit_count; i++) {
        drop_article(r, &r->hits[i]);
        drop_places(r, &r->hits[i]);
        take_coat(r, &r->hits[i]);
        take_verb(r, &r->hits[i]);
    }
    for (size_t i = 0; i < r->hit_count; i++)
        if (r->hits[i].near) widen(r, &r->hits[i]);
}
