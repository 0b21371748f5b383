// SPDX-License-Identifier: MIT
// A mend that is told behind the break that it mended, each in words of its own: "the handle came off in the
// wash and I stuck it back", "lid in two halves once, joined now". The mend is where the break was, and the
// break is no more.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_parting(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "off",   "broke",  "broken", "snapped", "halves",  "two",   "three", "cracked", "fell",
        "loose", "pieces", "apart",  "parted",  "dropped", "break", "split", "half",    "bits",
        "open",  "opened", "undone", "ripped",  "torn",    "tore",  "down",  "popped",  "burst"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool is_link(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"and", "then", "but", "since", "so", "now"};
    return tokens->at[i].stop == STOP_COMMA || token_among(tokens, i, words, COUNT(words));
}

// The part that was parted, before the mend `hit` in its sentence.
bool spot_mended(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    enum { BACK = 14 };
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    bool linked = is_link(tokens, hit->from), parted = false;
    for (size_t at = hit->from; at > start && hit->from - at < BACK; at--) {
        if (tokens->at[at - 1].stop > STOP_COMMA) return false;
        linked |= is_link(tokens, at - 1);
        parted |= linked && is_parting(tokens, at - 1);
        if (!parted || !r->part[at - 1] || is_parting(tokens, at - 1)) continue;
        *to = at;
        *from = at - 1;
        while (*from > start && r->part[*from - 1]) --*from;
        bool thing =
            *to - *from == 1 && r->note->taken[*from] == TAKEN_TYPE && !spot_usual(&tokens->at[*from]);
        return !thing && !(*from > start && spot_preposition(tokens, *from - 1));
    }
    return false;
}

static bool same_part(const struct item_flaw *a, const struct item_flaw *b) {
    return a->part && b->part && text_same(a->part, b->part);
}

// "Broken in two and riveted": the whole of it, where the mend follows in so many words.
static bool of_whole(const struct note *note, const struct item_flaw *a, const struct item_flaw *b) {
    enum { BYTES_MOST = 24 };
    if (a->part || b->part || b->span.from < a->span.from || b->span.from > a->span.to + BYTES_MOST)
        return false;
    for (size_t i = 0; i < note->tokens.count; i++) {
        const struct token *token = &note->tokens.at[i];
        if (token->from < a->span.from || token->from > b->span.to) continue;
        if (ANY(&note->tokens, i, "and", "then", "but", "now")) return true;
    }
    return false;
}

static bool same_sentence(const struct note *note, size_t from, size_t to) {
    for (size_t i = from; i < to && i < note->tokens.size; i++)
        if (note->tokens.text[i] == '.' || note->tokens.text[i] == '\n' || note->tokens.text[i] == ';')
            return false;
    return true;
}

// "The lid in two halves".
static bool in_pieces(const struct note *note, const struct item_flaw *flaw) {
    for (size_t i = 0; i < note->tokens.count; i++)
        if (note->tokens.at[i].from >= flaw->span.from && note->tokens.at[i].to <= flaw->span.to &&
            (token_is(&note->tokens, i, "halves") || token_is(&note->tokens, i, "pieces") ||
             token_is(&note->tokens, i, "two") || token_is(&note->tokens, i, "half")))
            return true;
    return false;
}

bool mends_with(const struct fault_hit *hit, const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"rivet",   "rivets",   "staple", "staples",
                                        "bracket", "brackets", "bolts",  "screws"};
    static const char *const articles[] = {"a", "some", "old", "an", "metal", "brass"};
    if (hit->kinds[0]->class != CLASS_REPAIR || i < hit->from || i >= hit->to) return false;
    static const char *const held[] = {"plate",  "plates", "batten", "battens", "block",
                                       "splint", "strip",  "board",  "strap"};
    static const char *const ways[] = {"screwed", "bolted", "nailed", "riveted", "tacked"};
    for (size_t k = hit->from; k < hit->to; k++) // "someone screwed a plate underneath"
        if (token_among(tokens, k, ways, COUNT(ways)) && token_among(tokens, i, held, COUNT(held)))
            return true;
    size_t at = i;
    while (at > hit->from && token_among(tokens, at - 1, articles, COUNT(articles))) at--;
    bool with = at > 0 && ANY(tokens, at - 1, "with", "by"); // "bound with string"
    return with || token_among(tokens, i, words, COUNT(words));
}

// "Chipped and painted over", "the crack has been painted": it hides damage, and is no new finish.
bool mends_hide_damage(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const ids[] = {"chip",          "crack",    "hairline",
                                      "crack-through", "fleabite", "broken-part"};
    enum { FAR = 4 };
    for (size_t k = 0; hit->parted && k < COUNT(ids); k++) // "a chip that's been painted"
        if (text_same(hit->parted->kinds[0]->rule.id, ids[k])) return true;
    for (size_t i = 0; i < r->hit_count && r->hits[i].to <= hit->from; i++) {
        if (r->hits[i].to + FAR < hit->from || r->note->tokens.at[r->hits[i].to - 1].stop >= STOP_CLAUSE)
            continue;
        for (size_t k = 0; k < COUNT(ids); k++)
            if (text_same(r->hits[i].kinds[0]->rule.id, ids[k])) return true;
    }
    return false;
}

// "The lining came loose and I sewed it back": the mend says itself what was done to what came before.
static bool is_sewn_again(const struct note *note, const struct item_flaw *a, const struct item_flaw *b) {
    static const char *const gaps[] = {
        "seam-open", "seam-split", "lining-damage",   "tear",       "hole",        "broken-part",
        "trim-loss", "fraying",    "upholstery-wear", "loose-part", "hem-altered", "missing-button"};
    bool gap = false, sewn = false;
    for (size_t k = 0; k < COUNT(gaps); k++) gap |= text_same(a->kind->rule.id, gaps[k]);
    if (!gap || !text_same(b->kind->rule.id, "darned-patched") || b->span.from < a->span.to) return false;
    for (size_t i = 1; i < note->tokens.count; i++)
        if (note->tokens.at[i].from >= a->span.to && note->tokens.at[i].to <= b->span.to &&
            ANY(&note->tokens, i, "it", "them", "her", "him", "that"))
            sewn |= ANY(&note->tokens, i - 1, "sewed", "sewn", "stitched", "tacked", "closed", "caught",
                        "mended", "fixed", "darned", "patched");
    for (size_t i = 1; i < note->tokens.count; i++) // "an ear came off and was sewn back on"
        if (note->tokens.at[i].from >= a->span.to && note->tokens.at[i].from <= b->span.from &&
            ANY(&note->tokens, i, "sewn", "stitched", "mended", "darned"))
            sewn |= ANY(&note->tokens, i - 1, "was", "were", "been", "got", "since", "now");
    return sewn && same_sentence(note, a->span.to, b->span.from);
}

// "A button was loose, I sewed it back on": what is sewn on by its nature, and sits again.
static bool is_sewn_on(const struct note *note, const struct item_flaw *b) {
    if (!text_same(b->kind->rule.id, "darned-patched")) return false;
    bool button = false, sewn = false;
    for (size_t i = 0; i < note->tokens.count && note->tokens.at[i].to <= b->span.to; i++) {
        if (i > 0 && note->tokens.at[i - 1].stop >= STOP_SENTENCE) button = false;
        button |=
            ANY(&note->tokens, i, "button", "buttons", "snap", "snaps", "hook", "hooks", "toggle", "sequins");
        if (note->tokens.at[i].from < b->span.from) continue;
        sewn |= button && i > 0 && ANY(&note->tokens, i, "it", "them", "back") &&
                ANY(&note->tokens, i - 1, "sewed", "sewn", "stitched");
    }
    return sewn;
}

void mends_settle(struct note *note) {
    static const char *const breaks[] = {"broken-part", "missing-accessory", "missing-lid"};
    struct record *record = note->record;
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        struct item_flaw *a = &record->flaws[i];
        if (!a->kind) continue;
        bool parted = false, mended = false;
        for (size_t k = 0; k < COUNT(breaks); k++) parted |= text_same(a->kind->rule.id, breaks[k]);
        parted |= text_same(a->kind->rule.id, "crack-through") && in_pieces(note, a);
        for (size_t k = 0; parted && a->span.to && k < record->flaw_count; k++) {
            struct item_flaw *b = &record->flaws[k];
            if (!b->kind || !text_same(b->kind->rule.id, "glued-repair")) continue;
            mended |= of_whole(note, a, b) || (same_part(a, b) && b->span.from >= a->span.to &&
                                               same_sentence(note, a->span.to, b->span.from));
        }
        for (size_t k = 0; !mended && a->span.to && k < record->flaw_count; k++) {
            struct item_flaw *b = &record->flaws[k];
            if (!b->kind || !is_sewn_again(note, a, b)) continue;
            mended = true;
            if (text_same(a->kind->rule.id, "missing-button"))
                b->kind = NULL; // it is on again, and nothing is wrong
            if (!b->part) b->part = a->part;
            if (!b->where) b->where = a->where;
        }
        if (!mended) record->flaws[kept++] = *a;
    }
    size_t left = 0;
    for (size_t i = 0; i < kept; i++)
        if (record->flaws[i].kind && !is_sewn_on(note, &record->flaws[i]))
            record->flaws[left++] = record->flaws[i];
    record->flaw_count = left;
}

// "The finial on the lid was knocked off at some point and glued back on": what came off is what was mended,
// whatever stands between.
bool spot_of_mended(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    static const char *const breaks[] = {"broken", "knocked", "snapped", "broke",   "came",  "come",
                                         "fell",   "popped",  "pulled",  "chipped", "split", "fallen"};
    static const char *const between[] = {"was", "were", "had", "has",  "have",
                                          "got", "been", "is",  "once", "must"};
    enum { FAR = 8, WORDS_MOST = 7 };
    const struct tokens *tokens = &r->note->tokens;
    size_t and = hit->from;
    if (!token_is(tokens, and, "and") && and > 0) and--;
    if (!token_is(tokens, and, "and") || !text_same(hit->kinds[0]->rule.id, "glued-repair")) return false;
    size_t verb = and, start = scope_sentence_start(&r->scope, and);
    while (verb > start && and-verb < FAR && !token_among(tokens, verb, breaks, COUNT(breaks))) verb--;
    if (!token_among(tokens, verb, breaks, COUNT(breaks)) ||
        !ANY(tokens, verb + 1, "off", "away", "loose", "out"))
        return false;
    size_t end = verb, first = start;
    while (end > start && token_among(tokens, end - 1, between, COUNT(between))) end--;
    for (size_t i = start; i < end; i++)
        if (tokens->at[i].stop != STOP_NONE || ANY(tokens, i, "and", "but")) first = i + 1;
    while (first < end && ANY(tokens, first, "the", "its", "his", "her", "a", "an", "one", "my", "their"))
        first++;
    if (first >= end || end - first > WORDS_MOST ||
        ANY(tokens, first, "it", "they", "i", "we", "this", "that"))
        return false;
    size_t to = first;
    while (to < end && (!spot_preposition(tokens, to) || (to > first && token_is(tokens, to, "of")))) {
        if (r->scope.fault[to] && !r->part[to]) return false;
        to++;
    }
    if (to == first || r->note->taken[to - 1] == TAKEN_TYPE) return false;
    *spot = (struct spot){.part_from = first, .part_to = to};
    size_t from, place = to < end ? spot_place_at(r, to, &from) : 0;
    if (place && place <= end) spot->where_from = from, spot->where_to = place;
    return true;
}
