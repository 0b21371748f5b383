// SPDX-License-Identifier: MIT
// What a note's faults come to together: what clashes with another is given back or left out.
#include <string.h>

#include "notes/any.h"
#include "notes/beside.h"
#include "notes/faults.h"
#include "notes/persons.h"
#include "notes/place.h"
#include "text/order.h"

static bool is_kind(const struct item_flaw *flaw, const char *id) {
    return text_same(flaw->kind->rule.id, id);
}

// Its words are not understood again.
static void give_back(struct note *note, struct note_span span) {
    for (size_t i = 0; i < note->tokens.count; i++)
        if (note->tokens.at[i].from >= span.from && note->tokens.at[i].from < span.to)
            note->taken[i] = TAKEN_OPEN;
}

static bool has_word(const struct note *note, struct note_span span, const char *word) {
    for (size_t i = 0; i < note->tokens.count; i++)
        if (note->tokens.at[i].from >= span.from && note->tokens.at[i].to <= span.to &&
            token_is(&note->tokens, i, word))
            return true;
    return false;
}

// "Powers on and plays well": more than that was seen, unless the words say that this is all.
static void settle_seen(struct note *note) {
    static const char *const ends[] = {"only",     "further", "all",  "far",  "just", "know", "tested",
                                       "untested", "but",     "else", "more", "then", "not",  "beyond"};
    struct record *record = note->record;
    bool works = false, fails = false;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        works |= !flaw->part && flaw->sure == SURE_STATED && is_kind(flaw, "working-tested");
        fails |= is_kind(flaw, "not-working") || is_kind(flaw, "partly-working") || is_kind(flaw, "untested");
    }
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        bool seen = works && !fails && is_kind(flaw, "powers-on-only");
        for (size_t k = 0; k < sizeof ends / sizeof *ends && seen; k++)
            seen = !has_word(note, flaw->span, ends[k]);
        if (!seen) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

static bool is_mere_sign(const struct note *note, const struct item_flaw *flaw) {
    static const char *const signs[] = {"hums",   "hummed",  "buzzes", "buzzed",
                                        "clicks", "clicked", "glows",  "glowed"};
    bool sign = false;
    for (size_t k = 0; k < sizeof signs / sizeof *signs && !sign; k++)
        sign = has_word(note, flaw->span, signs[k]);
    return sign;
}

// "It hums but the hands don't move": a sound is not the work, and where something then stands still there
// was none.
static void drop_signs(struct note *note) {
    struct record *record = note->record;
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        bool idle = false;
        for (size_t k = 0; k < record->flaw_count && !idle; k++)
            idle = record->flaws[k].span.from >= flaw->span.to && record->flaws[k].sure == SURE_STATED &&
                   (is_kind(&record->flaws[k], "not-working") || is_kind(&record->flaws[k], "seized"));
        bool works = is_kind(flaw, "working-tested") || is_kind(flaw, "partly-working");
        if (!idle || !works || !is_mere_sign(note, flaw)) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

// "It's stiff and it squeals": the noise of what is stiff, in the same breath.
static void drop_squeals(struct note *note) {
    enum { BYTES_MOST = 14 };
    struct record *record = note->record;
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        bool noise = is_kind(flaw, "partly-working") &&
                     (has_word(note, flaw->span, "squeals") || has_word(note, flaw->span, "squeaks") ||
                      has_word(note, flaw->span, "grinds") || has_word(note, flaw->span, "creaks"));
        bool stiff = false;
        for (size_t k = 0; noise && k < record->flaw_count; k++)
            stiff |= is_kind(&record->flaws[k], "seized") && record->flaws[k].span.to < flaw->span.from &&
                     record->flaws[k].span.to + BYTES_MOST >= flaw->span.from;
        if (!stiff) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

// "Lights up but no sound": a word of working beside one of not working promises nothing.
static void settle_working(struct note *note) {
    struct record *record = note->record;
    drop_signs(note);
    drop_squeals(note);
    bool dead = false; // "works fine" and "does not work": which of them holds is asked
    for (size_t i = 0; i < record->flaw_count; i++)
        dead |= !record->flaws[i].part && is_kind(&record->flaws[i], "not-working");
    static const char *const against[] = {"not-working", "partly-working", "powers-on-only"};
    bool fails = false;
    for (size_t i = 0; i < record->flaw_count; i++)
        for (size_t k = 0; k < sizeof against / sizeof *against; k++)
            fails |= !record->flaws[i].part && is_kind(&record->flaws[i], against[k]);
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++)
        if (!fails || record->flaws[i].part || !is_kind(&record->flaws[i], "working-tested"))
            record->flaws[kept++] = record->flaws[i];
        else if (dead)
            give_back(note, record->flaws[i].span);
    record->flaw_count = kept;
}

// "Not fully tested", "that's as far as I went": it says itself that no more was tried.
static bool says_no_more(const struct note *note, const struct item_flaw *flaw) {
    static const char *const ends[] = {"tested", "further", "far",  "stopped", "know",   "tried",
                                       "more",   "beyond",  "only", "all",     "checked"};
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++)
        if (has_word(note, flaw->span, ends[i])) return true;
    enum { FAR = 4 };
    size_t at = 0; // "comes on and hums, haven't tried adding with it"
    while (at < note->tokens.count && note->tokens.at[at].from < flaw->span.to) at++;
    for (size_t k = at; k < at + FAR && k < note->tokens.count && note->tokens.at[k].stop < STOP_SENTENCE;
         k++)
        if (ANY(&note->tokens, k, "haven't", "havent", "didn't", "didnt", "never", "untested", "untried"))
            return true;
    return false;
}

// "Powers up, beyond that untested": one state. "Lights up and hums but no stations", "the turntable spins
// but it runs slow": more than that was tried.
static void settle_powers(struct note *note) {
    struct record *record = note->record;
    bool powers = false, fails = false, part_fails = false;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        powers |= !flaw->part && is_kind(flaw, "powers-on-only");
        fails |= !flaw->part && flaw->sure == SURE_STATED &&
                 (is_kind(flaw, "partly-working") || is_kind(flaw, "not-working"));
        part_fails |= flaw->part && flaw->sure == SURE_STATED && is_kind(flaw, "partly-working");
    }
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        bool more = powers && !flaw->part && is_kind(flaw, "untested");
        bool less = is_kind(flaw, "powers-on-only") && (fails || (part_fails && !says_no_more(note, flaw)));
        if (!more && !less) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

// "No rules, all 96 counters counted": what was counted is whole all the same.
static bool is_paper(const struct item_flaw *flaw) {
    static const char *const ids[] = {"missing-instructions", "missing-box",      "missing-tag",
                                      "missing-jacket",       "missing-hardware", "missing-key"};
    bool found = false;
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++) found |= is_kind(flaw, ids[i]);
    return found;
}

// "All 32 there, box lid missing": what they came in, or a facing of some, is none of what was counted.
static bool is_of_box(const struct item_flaw *flaw) {
    return is_kind(flaw, "missing-box") ||
           (flaw->part && (text_same(flaw->part, "box lid") || text_same(flaw->part, "felt") ||
                           text_same(flaw->part, "board") || text_same(flaw->part, "bag") ||
                           text_same(flaw->part, "tray") || text_same(flaw->part, "rack")));
}

// "All 32 pieces": so many that somebody must have counted them.
static bool has_figure(const struct note *note, struct note_span span) {
    for (size_t i = 0; i < note->tokens.count; i++)
        if (note->tokens.at[i].from >= span.from && note->tokens.at[i].to <= span.to &&
            note->tokens.at[i].kind == TOKEN_FIGURE)
            return true;
    return false;
}

// "All there but for a key": beside what is missing nothing is complete.
static void settle_whole(struct note *note) {
    struct record *record = note->record;
    bool lacks = false, papers = false;
    for (size_t i = 0; i < record->flaw_count; i++) {
        bool absent = record->flaws[i].kind->form == ABSENCE;
        lacks |= absent && !is_paper(&record->flaws[i]) && !is_of_box(&record->flaws[i]);
        papers |= absent;
    }
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        bool whole = is_kind(flaw, "complete-counted");
        bool counted = whole && !lacks &&
                       (has_word(note, flaw->span, "counted") || has_word(note, flaw->span, "laid") ||
                        has_word(note, flaw->span, "ticked") || has_figure(note, flaw->span));
        if (!whole || counted || !(lacks || papers)) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

// "Drawer works, but stiffly": that it works denies nothing.
static bool is_motion(const struct flaw *kind) {
    static const char *const ids[] = {"seized", "clasp-fault", "zip-fault"};
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++)
        if (text_same(kind->rule.id, ids[i])) return true;
    return false;
}

// What is there somewhere is not told as nowhere.
static void settle(struct arena *arena, struct record *record) {
    size_t kept = 0;
    for (size_t i = 0; i < record->clear_count; i++) {
        const struct item_clear *clear = &record->clear[i];
        bool there = false;
        for (size_t k = 0; k < record->flaw_count; k++)
            there |=
                record->flaws[k].kind == clear->kind && !clear->where &&
                (!clear->part || text_same(clear->part, "veneer") ||
                 (is_motion(clear->kind) && record->flaws[k].part &&
                  text_same(say_singular(arena, record->flaws[k].part), say_singular(arena, clear->part))));
        bool worn = text_same(clear->kind->rule.id, "wear-unspecified") && !clear->part;
        for (size_t k = 0; k < record->flaw_count && worn; k++) // "thin, but I would not call it worn"
            there |= strstr(record->flaws[k].kind->rule.id, "wear") != NULL;
        if (!there) record->clear[kept++] = *clear;
    }
    record->clear_count = kept;
}

static bool same_text(const char *a, const char *b) {
    return (!a && !b) || (a && b && text_same(a, b));
}

// "Light scratches on side one but no skips": how it plays denies none of them.
static bool plays_all_the_same(const struct item_flaw *flaw, const struct item_clear *clear) {
    return flaw->kind == clear->kind && text_same(flaw->kind->rule.id, "disc-scratches") &&
           same_text(flaw->where ? flaw->where : flaw->part, clear->where ? clear->where : clear->part);
}

// "Battery compartment is clean, no corrosion in there": of the compartment, told once.
static bool is_told_of_whole(const struct record *record, const struct item_clear *clear) {
    size_t size = clear->part ? strlen(clear->part) : 0;
    for (size_t k = 0; size && k < record->clear_count; k++) {
        const struct item_clear *other = &record->clear[k];
        size_t more = other->part ? strlen(other->part) : 0;
        if (other != clear && other->kind == clear->kind && same_text(other->where, clear->where) &&
            more > size + 1 && other->part[more - size - 1] == ' ' &&
            text_same(other->part + more - size, clear->part))
            return true;
    }
    return false;
}

// "Split at the seam and taped": words of what is there deny nothing.
static void settle_denied(struct record *record) {
    size_t kept = 0;
    for (size_t i = 0; i < record->clear_count; i++) {
        const struct item_clear *clear = &record->clear[i];
        bool there = false;
        for (size_t k = 0; k < record->flaw_count && !there; k++) {
            const struct item_flaw *flaw = &record->flaws[k];
            there = flaw->kind == clear->kind && flaw->span.from < clear->span.to &&
                    clear->span.from < flaw->span.to;
            there |= plays_all_the_same(flaw, clear);
        }
        if (!there && !is_told_of_whole(record, clear)) record->clear[kept++] = *clear;
    }
    record->clear_count = kept;
}

static bool is_part_of(const struct item_flaw *flaw, const struct item_flaw *other) {
    size_t size = flaw->span.to - flaw->span.from;
    return other->kind->form == ABSENCE && other->part && other->span.from <= flaw->span.from &&
           other->span.to >= flaw->span.to && other->span.to - other->span.from > size;
}

// "7 of 8 weights": what is missing has a name, and no piece is missing besides.
static void settle_pieces(struct record *record) {
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        bool loose = text_same(flaw->kind->rule.id, "missing-pieces") ||
                     text_same(flaw->kind->rule.id, "missing-accessory"),
             named = false;
        for (size_t k = 0; loose && k < record->flaw_count; k++) named |= is_part_of(flaw, &record->flaws[k]);
        if (!named) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

// "Two bone ones cracked": what is said of them is said of the pieces.
static void drop_ones(struct record *record) {
    for (size_t i = 0; i < record->flaw_count; i++) {
        struct item_flaw *flaw = &record->flaws[i];
        if (!flaw->part || !(text_same(flaw->part, "ones") || text_same(flaw->part, "one"))) continue;
        bool known = flaw->count && record->count > flaw->count && !flaw->of;
        if (known) flaw->of = record->count;
        flaw->part = flaw->of || !flaw->count ? NULL : flaw->count > 1 ? "pieces" : "piece";
    }
}

// "Doesn't strike right": how, and not where.
static void drop_manner(struct note *note) {
    for (size_t i = 0; i < note->record->flaw_count; i++) {
        struct item_flaw *flaw = &note->record->flaws[i];
        if (flaw->kind->class == CLASS_FUNCTION && !flaw->part && flaw->where &&
            text_same(flaw->where, "right") && !strstr(note->tokens.text, "the right"))
            flaw->where = NULL;
    }
}

// "Scratched initials J.P. on one leg": an owner's, and not a monogram beside them.
static void drop_owners_monogram(struct record *record) {
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        bool told = false;
        for (size_t k = 0; is_kind(flaw, "monogram") && k < record->flaw_count; k++)
            told |= is_kind(&record->flaws[k], "owner-name") &&
                    record->flaws[k].span.from <= flaw->span.from &&
                    record->flaws[k].span.to >= flaw->span.to;
        if (!told) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

// "Crate stencilled ORRINDEL & SON", "the printer's name": a firm's, which nobody owned it by.
static bool is_firms(const struct note *note, const struct item_flaw *flaw) {
    enum { BEHIND = 9 };
    const struct tokens *tokens = &note->tokens;
    size_t behind = 0;
    for (size_t k = 0; k < tokens->count && behind < BEHIND; k++) {
        const struct token *token = &tokens->at[k];
        if (token->to <= flaw->span.from) continue;
        if (token->from >= flaw->span.to) {
            // "Burned into the seat, TORWELL CHAIR CO"
            bool goes_on = ANY(tokens, k, ",", ":") && k + 1 < tokens->count && tokens->at[k + 1].capitals;
            if (token->stop >= STOP_COMMA && !goes_on) return false;
            behind++;
        }
        bool stamp = ANY(tokens, k + 1, "stamp", "stamps"); // "a school stamp": who had it
        if ((firm_word(tokens, k) && !stamp) || token_is(tokens, k, "&")) return true;
        if (token_is(tokens, k, "name") && k > 0 &&
            ANY(tokens, k - 1, "printer's", "publisher's", "maker's", "firm's", "shop's", "retailer's",
                "dealer's", "dairy's", "company's", "photographer's", "studio's", "artist's", "author's",
                "store's", "factory's", "brewery's", "bookseller's", "jeweler's", "framer's"))
            return true;
    }
    return false;
}

// "Box key missing": the key, and the box is where it lacks.
static void move_key_owner(struct record *record) {
    for (size_t i = 0; i < record->flaw_count; i++) {
        struct item_flaw *flaw = &record->flaws[i];
        if (!is_kind(flaw, "missing-key") || !flaw->part || flaw->where || strstr(flaw->part, "key") ||
            strstr(flaw->part, "crank") || strstr(flaw->part, "wind")) // the winder itself
            continue;
        flaw->where = flaw->part;
        flaw->part = NULL;
    }
}

// "Locked and I haven't got the key": by no password.
static void drop_locked(const struct note *note) {
    struct record *record = note->record;
    struct item_flaw *key = NULL;
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++)
        if (is_kind(&record->flaws[i], "missing-key")) key = &record->flaws[i];
    for (size_t i = 0; key && i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        enum { BARE = 9 }; // "locked up"
        if (is_kind(flaw, "locked-device") && flaw->span.to - flaw->span.from <= BARE)
            key->severity = SEVERITY_HEAVY;
        else
            record->flaws[kept++] = *flaw;
    }
    if (key) record->flaw_count = kept;
}

// "Small crack at the crown, doesn't ring true": why it does not, and no second crack.
static void drop_rung(const struct note *note) {
    struct record *record = note->record;
    const struct tokens *tokens = &note->tokens;
    size_t kept = 0;
    bool cracked = false;
    for (size_t i = 0; i < record->flaw_count; i++)
        cracked |= is_kind(&record->flaws[i], "crack") || is_kind(&record->flaws[i], "crack-through");
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        bool rung = false;
        for (size_t k = 0; cracked && is_kind(flaw, "hairline") && k < tokens->count; k++)
            rung |= tokens->at[k].from >= flaw->span.from && tokens->at[k].to <= flaw->span.to &&
                    ANY(tokens, k, "ring", "rings", "ringing", "rang");
        if (!rung) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

static void drop_firms(const struct note *note) {
    struct record *record = note->record;
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++)
        if (!is_kind(&record->flaws[i], "owner-name") || !is_firms(note, &record->flaws[i]))
            record->flaws[kept++] = record->flaws[i];
    record->flaw_count = kept;
}

// What stands before the words of a flaw.
static size_t token_before(const struct note *note, struct note_span span) {
    size_t i = 0;
    while (i < note->tokens.count && note->tokens.at[i].from < span.from) i++;
    return i > 0 ? i - 1 : note->tokens.count;
}

// "Tension cord is frayed", "back cover missing" of what the mains runs: a string, and no battery's cover.
static void settle_strings(struct note *note) {
    const char *type = note->record->type.value;
    const struct flaw *frayed = ruleset_flaw(note->rules, "fraying"),
                      *perished = ruleset_flaw(note->rules, "rubber-perished"),
                      *accessory = ruleset_flaw(note->rules, "missing-accessory");
    bool mains = type && (strstr(type, "valve") || strstr(type, "wireless") || strstr(type, "television"));
    for (size_t i = 0; frayed && accessory && i < note->record->flaw_count; i++) {
        struct item_flaw *flaw = &note->record->flaws[i];
        size_t before = token_before(note, flaw->span);
        if (is_kind(flaw, "cord-frayed") && has_word(note, flaw->span, "cord") &&
            ANY(&note->tokens, before, "tension", "pull", "starter", "neck", "carrying", "hanging", "sash",
                "recoil", "draw", "picture")) {
            flaw->kind = frayed;
            flaw->part = arena_format(note->arena, "%s cord", note->tokens.at[before].fold);
            note_take(note, before, before + 1, TAKEN_FLAW);
        }
        const struct family *family = note->record->family;
        if (perished && is_kind(flaw, "cord-frayed") && has_word(note, flaw->span, "cords") && family &&
            (text_same(family->rule.id, "music") || text_same(family->rule.id, "furniture")))
            flaw->kind = perished; // "cords perished" of a vibraphone
        bool bound = family && (text_same(family->rule.id, "books") || text_same(family->rule.id, "media") ||
                                text_same(family->rule.id, "paper") || text_same(family->rule.id, "music"));
        bool machine =
            family && (text_same(family->rule.id, "tools") || text_same(family->rule.id, "parts") ||
                       text_same(family->rule.id, "electrical"));
        bool dusty = family && !bound && is_kind(flaw, "missing-jacket") &&
                     ((flaw->part && strstr(flaw->part, "dust")) || has_word(note, flaw->span, "dust") ||
                      has_word(note, flaw->span, "dustcover"));
        if (dusty) { // of a machine, and no book
            flaw->kind = accessory;
            flaw->part = "dust cover";
        }
        bool cover = flaw->part && text_same(flaw->part, "cover") &&
                     ((is_kind(flaw, "missing-jacket") && family && !bound) ||
                      (is_kind(flaw, "missing-lid") && machine));
        if (cover) flaw->kind = accessory; // "magneto cover is missing": of an engine
        if (cover && before < note->tokens.count && note->tokens.at[before].kind == TOKEN_WORD &&
            note->tokens.at[before].stop == STOP_NONE &&
            !ANY(&note->tokens, before, "the", "its", "a", "no", "one", "and", "but", "with", "missing",
                 "of")) {
            flaw->part = arena_format(note->arena, "%s cover", note->tokens.at[before].fold);
            note_take(note, before, before + 1, TAKEN_FLAW);
        }
        if (mains && is_kind(flaw, "missing-battery-cover") && !has_word(note, flaw->span, "battery") &&
            flaw->part)
            flaw->kind = accessory;
    }
}

// "Monocular, cord missing": of goods that no current runs, it is what they hang by.
static void settle_cords(struct note *note) {
    static const char *const optical[] = {"monocular", "binocular", "glasses",   "telescope", "magnifier",
                                          "loupe",     "compass",   "barometer", "whistle",   "lorgnette"};
    const char *type = note->record->type.value;
    bool hangs = false;
    for (size_t i = 0; type && i < sizeof optical / sizeof *optical; i++)
        hangs |= strstr(type, optical[i]) != NULL;
    const struct flaw *accessory = hangs ? ruleset_flaw(note->rules, "missing-accessory") : NULL;
    for (size_t i = 0; accessory && i < note->record->flaw_count; i++) {
        struct item_flaw *flaw = &note->record->flaws[i];
        if (!is_kind(flaw, "missing-cord") || !has_word(note, flaw->span, "cord")) continue;
        flaw->kind = accessory;
        flaw->part = "cord";
    }
}

// "Engraved on one side", "stamped in the toe": the place behind what was done to write it, from `i` up to
// the end of the sentence; NULL if none is told.
static const char *inscribed_at(struct note *note, size_t i) {
    enum { FAR = 12 };
    const struct tokens *tokens = &note->tokens;
    for (size_t at = i; at + 1 < tokens->count && at < i + FAR && tokens->at[at].stop < STOP_SENTENCE; at++) {
        if (!spot_inscribes(tokens, at)) continue;
        size_t next = at + 1; // "somebody penciled a name and a number on the underside"
        bool writer = at > 0 && ANY(tokens, at - 1, "somebody", "someone", "he", "she", "they");
        while (writer && next < at + FAR && next + 1 < tokens->count &&
               tokens->at[next].stop < STOP_SENTENCE && !ANY(tokens, next, "on", "in", "inside", "under"))
            next++;
        bool over = token_is(tokens, next, "over");
        size_t place = next + (over ? (ANY(tokens, next + 1, "the", "one", "each", "its") ? 2 : 1) : 0);
        const char *where = NULL;
        size_t n = place_at(note, place, &where);
        if (!n || !where || (!over && place_noun(note, place))) return NULL;
        if (over) where = note_meant(note, next, place + n); // "stitched over the pocket"
        if (note_free(note, next, place + n)) note_take(note, next, place + n, TAKEN_FLAW);
        return where;
    }
    return NULL;
}

// "The initials are engraved on the face", "DEAN stamped in the handle, whoever that was": a name that has no
// place yet is where the words say that it was put.
static void place_inscribed(struct note *note) {
    enum { BACK = 8 };
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < note->record->flaw_count; i++) {
        struct item_flaw *flaw = &note->record->flaws[i];
        if (flaw->where || flaw->part || !(is_kind(flaw, "monogram") || is_kind(flaw, "owner-name")))
            continue;
        size_t at = 0;
        while (at < tokens->count && tokens->at[at].from < flaw->span.from) at++;
        flaw->where = inscribed_at(note, at);
        size_t first = at;
        while (first > 0 && at - first < BACK && tokens->at[first - 1].stop < STOP_SENTENCE) first--;
        if (!flaw->where && first < at) flaw->where = inscribed_at(note, first);
    }
}

void faults_settle(struct note *note) {
    outcome_name(note);
    settle_cords(note);
    settle_strings(note);
    drop_firms(note);
    drop_rung(note);
    drop_locked(note);
    move_key_owner(note->record);
    drop_ones(note->record);
    place_inscribed(note);
    drop_owners_monogram(note->record);
    drop_manner(note);
    settle_pieces(note->record);
    mends_settle(note);
    settle(note->arena, note->record);
    settle_gone_anyway(note);
    settle_short_lived(note);
    settle_unfed(note);
    settle_seen(note);
    settle_working(note);
    settle_powers(note);
    settle_whole(note);
    settle_denied(note->record);
}
