// SPDX-License-Identifier: MIT
// Every fault word of a note becomes a flaw, an entry of `clear` or of `unchecked`, or is left out for a
// reason that is kept. A statement that it is there outranks a denial of the whole; the same stands once.
#include <string.h>

#include "notes/any.h"
#include "notes/fault_size.h"
#include "notes/kind_goods.h"
#include "notes/share.h"
#include "notes/traces.h"
#include "text/order.h"

static bool same(const char *a, const char *b) {
    return (!a && !b) || (a && b && text_same(a, b));
}

// "Chipped. The chip is on the rim": the second says more of the first. But "blade pitted, some rust on the
// sole": a part and another place are two, where nothing points back.
static struct item_flaw *find_vague(const struct note *note, const struct flaw *kind, const char *part,
                                    const char *where, size_t from, size_t to) {
    static const char *const backs[] = {"the", "it", "that", "this", "its", "same", "is", "are"};
    struct record *record = note->record;
    bool back = from > 0 && token_among(&note->tokens, from - 1, backs, sizeof backs / sizeof *backs);
    bool other = record->count > 1 && from > 0 && ANY(&note->tokens, from - 1, "other", "another", "others");
    for (size_t i = 0; i < record->flaw_count && !other; i++) { // "one has a dent, the other leans"
        struct item_flaw *f = &record->flaws[i];
        bool apart = (f->part && !f->where && !part && where) || (!f->part && f->where && part && !where);
        bool own =
            part && (token_is(&note->tokens, from - 1, "is") || token_is(&note->tokens, from - 1, "are"));
        if (part && fault_is_more_of(note, f, kind, part, from, to)) return f;
        if (apart && (!back || own)) continue; // "dent in the bottom, the handle is bent"
        if (f->kind == kind && part && !f->part && !f->where &&
            ((!back && fault_is_another(note, f, from, to, false)) ||
             fault_in_next_clause(note, f, from, to)))
            continue;
        if (f->kind == kind && f->part && !part && !where && fault_is_apart(note, f, from, back)) continue;
        size_t start = from; // "Two are chipped. The tray has a chipped edge."
        while (start > 0 && note->tokens.at[start - 1].stop < STOP_SENTENCE) start--;
        if (f->kind == kind && part && !f->part && !f->where && (!back || own) && f->count && f->span.to &&
            f->span.to <= note->tokens.at[start].from)
            continue;
        if (!f->part != !part && text_same(kind->rule.id, "authenticity-unverified"))
            continue; // a mark that cannot be read, and an age that nobody proved
        if (f->kind == kind && text_same(kind->rule.id, "dent-bend") && f->part && !part && !where && !back &&
            fault_is_another(note, f, from, to, true))
            continue;                                           // "Nozzle bent. Plenty of dents."
        bool lost = kind->form == ABSENCE && part && f->part && // "only 7 saucers, so one saucer short"
                    same(say_singular(note->arena, f->part), say_singular(note->arena, part));
        if (f->kind == kind && (same(f->part, part) || lost || !f->part || !part) &&
            (same(f->where, where) || !f->where || !where))
            return f;
    }
    return NULL;
}

struct item_flaw *fault_add(struct fault_reader *r, const struct flaw *kind, const char *part,
                            const char *where, size_t from, size_t to) {
    struct note *note = r->note;
    bool none = part && kind && // "missing by one handle", "nobody missing", "nobody chewed on it"
                ((kind->form == ABSENCE && !strncmp(part, "by ", 3)) || same(part, "nobody"));
    if (!kind || none)
        return arena_alloc(note->arena, sizeof(struct item_flaw)); // its file is broken: told to nobody
    kind = kind_pressed(r, kind);
    struct item_flaw *apart = fault_of_stranger(r, kind, from, to);
    if (apart) return apart;
    if (where &&
        ((kind->form == ABSENCE && absent_is_kept(note, where, to)) || fault_stands_there(kind, where)))
        where = NULL;
    if (where && (!strncmp(where, "your ", 5) || !strncmp(where, "my ", 3)))
        where = NULL;                             // "comes off on your hands"
    if (part && strpbrk(part, ",(")) part = NULL; // words of a list, and no part
    if (part && fault_is_doer(part)) part = NULL;
    bool both = part && !strncmp(part, "both ", strlen("both ")); // "the sides were tried and worked"
    if (both && text_same(kind->rule.id, "working-tested")) part += strlen("both ");
    if (where && (strpbrk(where, ",(") || !strncmp(where, "before ", strlen("before ")))) where = NULL;
    if (part && !strncmp(part, "in ", strlen("in ")))
        where = where ? where : part, part = NULL; // "in places"
    if (!part) where = place_of_loss(kind, where);
    if (text_same(kind->rule.id, "working-tested") || text_same(kind->rule.id, "powers-on-only") ||
        text_same(kind->rule.id, "complete-counted"))
        where = NULL; // "tried it on the hedge by the gate": where the trial was
    struct item_flaw *known = find_vague(note, kind, part, where, from, to);
    note_take(note, from, to, TAKEN_FLAW);
    if (known) {
        if (!known->part) known->part = part;
        if (!known->where) known->where = where;
        fault_join(note, known, from, to);
        return known;
    }
    struct item_flaw *flaw = note_flaw(note);
    *flaw =
        (struct item_flaw){.kind = kind, .part = part, .where = where, .span = note_span_of(note, from, to)};
    const char *place = part ? part : where;
    note_reading(note, from, to,
                 place ? arena_format(note->arena, "flaw %s, %s", kind->rule.id, place)
                       : arena_format(note->arena, "flaw %s", kind->rule.id),
                 arena_format(note->arena, "rule %s", kind->rule.id));
    return flaw;
}

// "A hairline that doesn't leak": a crack is there, and no more than its leaking is denied.
static bool is_dry_crack(const struct note *note, const struct flaw *kind, size_t from, size_t to) {
    bool leak = false;
    if (!text_same(kind->rule.id, "crack-through")) return false;
    for (size_t i = from; i < to; i++) leak |= !strncmp(note->tokens.at[i].fold, "leak", strlen("leak"));
    for (size_t i = 0; leak && i < note->record->flaw_count; i++) {
        const char *id = note->record->flaws[i].kind->rule.id;
        if (text_same(id, "hairline") || text_same(id, "crack-through") || text_same(id, "crack"))
            return true;
    }
    return false;
}

// "Joints tight": no loose joints, and not on the joints either.
static bool is_in_noun(struct note *note, const struct flaw *kind, const char *part) {
    const char *last = kind->noun ? strrchr(kind->noun, ' ') : NULL;
    if (!strncmp(part, "all ", 4)) part += 4;
    return last && !strchr(part, ' ') && text_same(last + 1, say_singular(note->arena, part));
}

void clear_add(struct fault_reader *r, const struct flaw *kind, const char *part, const char *where,
               bool none_seen, size_t from, size_t to) {
    struct note *note = r->note;
    struct record *record = note->record;
    note_take(note, from, to, TAKEN_FLAW);
    if (part && is_in_noun(note, kind, part)) part = NULL;
    if (is_dry_crack(note, kind, from, to) || fault_is_there_less(r, kind, part, where, from)) return;
    for (size_t i = 0; i < record->clear_count; i++)
        if (record->clear[i].kind == kind && same(record->clear[i].part, part) &&
            same(record->clear[i].where, where))
            return;
    struct item_clear *clear = note_clear(note);
    *clear = (struct item_clear){.kind = kind,
                                 .part = part,
                                 .where = where,
                                 .none_seen = none_seen,
                                 .span = note_span_of(note, from, to)};
    note_reading(note, from, to, arena_format(note->arena, "clear %s", kind->rule.id),
                 none_seen ? "looked for and not seen" : "denied");
}

static void tell_left(struct fault_reader *r, const struct fault_hit *hit, const char *why) {
    struct note *note = r->note;
    size_t cue = r->scope.cue[hit->from];
    note_reading(note, hit->from, hit->to, arena_format(note->arena, "no flaw: %s", hit->kinds[0]->print),
                 "not taken");
    if (note->reading_count)
        note->readings[note->reading_count - 1].stopped =
            cue < note->tokens.count
                ? arena_format(note->arena, "%s: '%s'", why, note_words(note, cue, cue + 1))
                : why;
}

static void leave(struct fault_reader *r, const struct fault_hit *hit, const char *why) {
    tell_left(r, hit, why);
    note_take(r->note, hit->from, hit->to, TAKEN_SCOPE);
}

// "Needs to be reglued": what is not done leaves a fault that nobody named, so the words stay not understood.
static bool is_needed(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const words[] = {"needs", "need", "wants", "could", "should", "would", "must",
                                        "can",   "want", "ought", "has",   "have",   "until", "till"};
    bool planned = r->scope.stance[hit->from] & STANCE_PLANNED;
    return token_among(&r->note->tokens, r->scope.cue[planned ? hit->from : hit->to - 1], words,
                       sizeof words / sizeof *words);
}

// "Not checked for leaks" of a flask or bellows is no seam of a tin.
static bool asks_leaks(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    return denial_of_leak(r, hit, kind) || (!strncmp(r->note->tokens.at[hit->from].fold, "leak", 4) &&
                                            text_same(kind->rule.id, "seam-split"));
}

static void add_unchecked(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    note_unchecked(r->note, asks_leaks(r, hit, kind) ? "leaks" : kind->rule.id);
    note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
    note_reading(r->note, hit->from, hit->to, arena_format(r->note->arena, "unchecked %s", kind->rule.id),
                 "not looked at");
}

// What governs a fault: its first word, and of two words apart the second as well ("paint isn't flaking").
uint16_t fault_stance(const struct fault_reader *r, const struct fault_hit *hit) {
    if (hit->own_no) return r->scope.stance[hit->from] & (uint16_t) ~(STANCE_DENIED | STANCE_NONE_SEEN);
    static const char *const denying[] = {"no",    "not",     "without", "never",
                                          "isn't", "doesn't", "won't",   "nothing"};
    uint16_t stance = r->scope.stance[hit->from];
    if (hit->kinds[0]->class == CLASS_REPAIR) // "the cord must be replaced"
        stance |= r->scope.stance[hit->to - 1] & STANCE_PLANNED;
    size_t cue = r->scope.cue[hit->from]; // "two of the stones aren't there"
    static const char *const own[] = {"won't", "wont",   "doesn't",  "doesnt",
                                      "can't", "cannot", "couldn't", "wouldn't"};
    if (cue < hit->from && token_among(&r->note->tokens, hit->from, own, sizeof own / sizeof *own) &&
        (token_is(&r->note->tokens, cue, "no") || token_is(&r->note->tokens, cue, "without")))
        return stance & (uint16_t) ~(STANCE_DENIED | STANCE_NONE_SEEN); // "no pendulum and won't go"
    if (hit->kinds[0]->form == ABSENCE && cue >= hit->from && cue < hit->to)
        return stance & (uint16_t) ~(STANCE_DENIED | STANCE_NONE_SEEN);
    uint16_t second = r->scope.stance[hit->to - 1];
    size_t behind = r->scope.cue[hit->to - 1]; // "without its booklet"
    if (hit->near &&
        (denial_is_own(r, hit, behind) || (hit->kinds[0]->form == ABSENCE && behind == hit->from)))
        second &= (uint16_t) ~(STANCE_DENIED | STANCE_NONE_SEEN);
    if (hit->near && behind > hit->from && behind < hit->to && second & (STANCE_DENIED | STANCE_NONE_SEEN))
        stance &= (uint16_t)~STANCE_EXCEPT; // "smells, but the lining isn't torn": what "but" opens is denied
    if (!hit->near || hit->kinds[0]->form != STATE) return hit->near ? stance | second : stance;
    if (token_among(&r->note->tokens, hit->from, denying, sizeof denying / sizeof *denying))
        second &= (uint16_t) ~(STANCE_DENIED | STANCE_NONE_SEEN); // "no … to test it with": its own "no"
    return stance | second;
}

// "In two places" behind it: the number was taken.
static void take_places(struct fault_reader *r, size_t i) {
    enum { FAR = 6 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = i; at + 2 < tokens->count && at < i + FAR && tokens->at[at].stop == STOP_NONE; at++)
        if (token_is(tokens, at, "in") && degrees_number(tokens, at + 1) &&
            ANY(tokens, at + 2, "places", "spots"))
            note_take(r->note, at, at + 3, TAKEN_SCOPE);
}

void fault_tell(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                const char *part, const char *where) {
    if (!kind) return; // its file is broken
    kind = kind_else(r, hit, kind, part);
    uint16_t stance = fault_stance(r, hit);
    size_t from, to;
    int parts, some = parts_shared(r, hit, &parts, &from, &to);
    if (some && !parts && (part || where || r->note->record->count > 1)) some = 0; // of the pieces
    enum { STEM = 3 };
    const char *shared = some ? fault_place(r->note, from, to) : NULL;
    if (some && (!part || !strncmp(shared, part, STEM))) // but "six mallets, two have loose heads"
        part = say_singular(r->note->arena, shared);
    bool of_one = !some && part && say_is_plural(part) && spot_is_of_one(r, hit);
    if (of_one) part = say_singular(r->note->arena, part);
    bool lips = text_same(kind->rule.id, "gilt-wear") && (!part || text_same(part, "gilt")) &&
                fault_is_where_one_drinks(r, hit);
    if (lips) where = "rim", part = NULL;
    struct item_flaw *flaw = fault_add(r, kind, part, where, hit->from, hit->to);
    bool heard = stance & STANCE_HEARD && text_same(kind->rule.id, "authenticity-unverified");
    if (stance & STANCE_DOUBT && !heard && !unknown_is_own(kind)) flaw->sure = SURE_LIKELY;
    enum severity told = flaw->severity, degree = degree_of_hit(r, hit);
    int of, count = count_of_hit(r, hit, &of);
    if (ANY(&r->note->tokens, hit->from + 1, "blank")) count = 0; // of dominoes the three blank
    size_t one = hit->from;                                       // "one is odd", "another doesn't match"
    if (one > 0 && !ANY(&r->note->tokens, one, "one", "another")) one--;
    if (count < 2 && !of && !part && r->note->record->count > 1 &&
        ANY(&r->note->tokens, one, "one", "another") && text_same(kind->rule.id, "married-set")) {
        count = 1;
        of = r->note->record->count;
    }
    if (part && !strncmp(part, "other ", strlen("other ")) && say_is_plural(part))
        count = 0; // all of the others
    if (!count && !of && kind->form == ABSENCE && !part && hit->to > hit->from + 1 &&
        ANY(&r->note->tokens, hit->to - 1, "missing", "gone", "lost", "off")) { // "two pearl buttons missing"
        size_t number = hit->from;
        while (number + 1 < hit->to && ANY(&r->note->tokens, number, "of", "the")) number++;
        if (number >= 2 && !degrees_number(&r->note->tokens, number) &&
            ANY(&r->note->tokens, number - 1, "the"))
            number -= ANY(&r->note->tokens, number - 2, "of") ? 3 : 0;
        count = number < hit->to ? degrees_number(&r->note->tokens, number) : 0;
        if (count < 2) count = 0;
    }
    // "3 pearl buttons one gone": the number beside what has happened to them
    int lost = kind->form == ABSENCE && hit->near && hit->to > hit->from + 2
                   ? degrees_number(&r->note->tokens, hit->to - 2)
                   : 0;
    if (lost && lost < count) count = lost;
    if (some && parts) {
        count = some;
        of = parts;
    }
    if (count > 1) take_places(r, hit->to);
    bool uncounted = kind->form == STATE && kind->class == CLASS_REPAIR && !kind->noun && !part &&
                     r->note->record->count < 2;
    uncounted |= kind->class == CLASS_FEATURE && part &&
                 !strncmp(part, "both ", strlen("both "));                 // "both sides" says how many
    uncounted |= !part && where && of == 2 && !strncmp(where, "both ", 5); // "on both handles showing rust"
    if (uncounted) of = count = 0;                                         // "two screw holes": no pieces
    bool fewer = flaw->count > count && flaw->span.from < r->note->tokens.at[hit->from].from &&
                 token_phrase(&r->note->tokens, hit->from > 3 ? hit->from - 3 : 0, "one of them") > 0;
    if (of_one && !of) {
        flaw->count = 1;
    } else if (count && !(count == 1 && !of) && !fewer) { // "two have loose rungs, one of them very loose"
        flaw->count = count;
        flaw->of = of;
    }
    if (!flaw->count && !of) flaw->count = fault_on_several(r, hit);
    if (lips && !flaw->of && flaw->count && flaw->count < r->note->record->count)
        flaw->of = r->note->record->count; // "thin on four of the cups where people drank"
    size_t the = hit->from;                // "one of the back buttons is missing"
    for (size_t n = 0; n < 3 && the > 2 && !ANY(&r->note->tokens, the - 1, "the", "its", "their"); n++) the--;
    if (kind->form == ABSENCE && part && !flaw->count && the > 2 &&
        ANY(&r->note->tokens, the - 1, "the", "its", "their") && ANY(&r->note->tokens, the - 2, "of") &&
        ANY(&r->note->tokens, the - 3, "one"))
        flaw->count = 1;
    if (kind->class == CLASS_DAMAGE || kind->class == CLASS_DIRT || kind->class == CLASS_REPAIR)
        fault_measure(r, hit, flaw, degree);
    bool ruled = flaw->severity > told; // "no bigger than a grain of rice": the scale names it
    enum severity sized =
        flaw->has_size && !ruled ? degree_of_size(kind, fault_extent(r, hit, flaw)) : SEVERITY_UNKNOWN;
    if (degree == SEVERITY_LIGHT && sized == SEVERITY_HEAVY &&
        degree_of_size(kind, flaw->size.base / 2) < SEVERITY_HEAVY)
        sized = SEVERITY_MODERATE; // "faint stain the size of a coin": large, and faint
    if (sized || degree) flaw->severity = sized ? sized : degree;
    if (told > flaw->severity && !sized) flaw->severity = told; // "very rusty inside, light rust out"
    if (degree == SEVERITY_LIGHT && !sized && degree_goes_by_number(kind) &&
        degree_of_number(kind, flaw->count) > degree)
        flaw->severity = degree_of_number(kind, flaw->count); // "two small moth holes"
    const struct token *at = r->note->tokens.at;
    bool again = flaw->span.from >= at[scope_sentence_start(&r->scope, hit->from)].from &&
                 flaw->span.from < at[hit->from].from;
    enum severity weighed =
        !flaw->severity || (again && !degree) ? degree_weigh(r, hit, flaw) : SEVERITY_UNKNOWN;
    if (weighed > flaw->severity) flaw->severity = weighed; // "stiff, needs a wrench" told in two
}

// "The lens isn't cracked" denies a crack of the lens and no other damage: of two words apart, what the
// second says by itself.
static const struct flaw *narrower(const struct fault_reader *r, const struct fault_hit *hit,
                                   const struct flaw *kind, const char *place) {
    if (!hit->near || !kind->gathers) return kind;
    struct fault_hit alone = {.from = hit->from, .to = hit->to};
    const struct phrase_hits *hits = &r->note->hits;
    for (size_t i = 0; i < hits->count; i++)
        if (!hits->at[i].near && hits->at[i].to == hits->at[i].from + 1 && !hits->at[i].flaw->gathers &&
            (hits->at[i].from == hit->from || hits->at[i].to == hit->to) &&
            alone.kind_count < FAULT_KINDS_MOST)
            alone.kinds[alone.kind_count++] = hits->at[i].flaw;
    return alone.kind_count ? kind_of_hit(r, &alone, place) : kind;
}

// "Size or degree not stated: stain": what was told before, and that its degree is not known.
static bool is_of_unsized(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    static const char said[] = "size or degree not stated";
    struct record *record = r->note->record;
    size_t n = 0;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->from && !n; i++)
        n = token_phrase(&r->note->tokens, i, said);
    if (!n) return false;
    for (size_t i = 0; i < record->flaw_count; i++)
        if (record->flaws[i].kind == kind) record->flaws[i].severity = SEVERITY_UNKNOWN;
    note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
    return true;
}

// The words that govern a fault are in the record with it: "haven't checked for", "can't see any".
static void take_cue(struct fault_reader *r, const struct fault_hit *hit) {
    enum { REACH = 5, BEHIND = 4 };
    size_t cue = r->scope.cue[hit->from];
    bool none = cue >= hit->to && cue < hit->to + BEHIND && // "rust: none", "chips? none"
                token_is(&r->note->tokens, cue, "none") && r->note->taken[cue] == TAKEN_NOT;
    if (none) note_take(r->note, cue, cue + 1, TAKEN_SCOPE);
    if (cue >= hit->from || hit->from - cue > REACH) return;
    for (size_t i = cue; i < hit->from; i++)
        if (r->note->taken[i] == TAKEN_NOT && r->note->tokens.at[i].kind == TOKEN_WORD)
            note_take(r->note, i, i + 1, TAKEN_SCOPE);
}

// Another part of a list: its kind may be that of its own material.
static const struct flaw *listed_kind(struct fault_reader *r, const struct fault_hit *hit,
                                      const struct spot *spot, const char **part, const char **where) {
    *part = fault_place(r->note, spot->part_from, spot->part_to);
    *where = fault_place(r->note, spot->where_from, spot->where_to);
    return kind_of_hit(r, hit, *part ? *part : *where);
}

static void tell_listed(struct fault_reader *r, const struct fault_hit *hit, const struct spot *spot) {
    const char *part, *where;
    const struct flaw *kind = listed_kind(r, hit, spot, &part, &where);
    fault_tell(r, hit, kind, part, where);
}

static void clear_listed(struct fault_reader *r, const struct fault_hit *hit, const struct spot *spot) {
    const char *part, *where;
    const struct flaw *kind = listed_kind(r, hit, spot, &part, &where);
    kind = narrower(r, hit, kind, part);
    clear_add(r, kind, part, where, fault_stance(r, hit) & STANCE_NONE_SEEN, hit->from, hit->to);
}

// "Sound, but I haven't checked for worm": what was not looked at stands within the exception, not before it.
static bool unknown_in_exception(const struct fault_reader *r, const struct fault_hit *hit) {
    size_t i = hit->to - 1;
    if (!(r->scope.stance[i] & STANCE_UNKNOWN)) return false;
    while (i > 0 && (r->scope.stance[i] & STANCE_UNKNOWN)) i--;
    return r->scope.stance[i] & STANCE_EXCEPT;
}

// "Had the back off": only where it is denied was the inside not looked at.
static bool was_looked_at(const struct fault_reader *r, const struct fault_hit *hit, uint16_t stance) {
    static const char *const negative[] = {"not",    "never",  "no",       "un",          "without",
                                           "sealed", "cannot", "unopened", "uninspected", "only",
                                           "locked", "yet",    "closed",   "nobody",      "stays"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "inside-not-inspected")) return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (token_among(tokens, i, negative, sizeof negative / sizeof *negative) ||
            strstr(tokens->at[i].fold, "n't") || strstr(tokens->at[i].fold, "nt"))
            return false;
    return !(stance & (STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN));
}

// "Haven't tried the heater": of that part alone.
static void tell_unknown(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                         const char *part, const char *where) {
    struct spot parts[LIST_MOST];
    size_t n = text_same(kind->rule.id, "untested") ? untried_parts(r, hit, parts) : 0;
    static const char *const whole[] = {"pieces", "bits", "contents", "parts",
                                        "set",    "lot",  "all",      "everything"};
    for (size_t i = 0; part && i < sizeof whole / sizeof *whole; i++)
        if (text_same(kind->rule.id, "completeness-unknown") && text_same(part, whole[i])) part = NULL;
    if (where && kind->says && strstr(kind->says, where)) where = NULL;
    for (size_t i = 0; i < n; i++)
        fault_tell(r, hit, kind, fault_place(r->note, parts[i].part_from, parts[i].part_to), NULL);
    // "Needs a battery so can't say", "nothing to hook it up to": no part of it was left untried.
    bool untested = text_same(kind->rule.id, "untested");
    if (part && untested && untried_is_means(r, hit, part)) part = NULL;
    if (where && untested && untried_is_means(r, hit, where)) where = NULL;
    if (!n) fault_tell(r, hit, kind, part, where);
}

// What is denied and yet not told as not there; `elsewhere`: of a place that nobody understood.
static bool denial_stops(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                         uint16_t stance, bool elsewhere) {
    const char *idle = denial_idle(r, hit, kind);
    if (idle)
        leave(r, hit, idle);
    else if (fault_is_silent(kind)) // that it works, is whole or was tried is not looked for as a fault is
        leave(r, hit, "denied");
    else if (stance & STANCE_HEARD)
        leave(r, hit, "only heard or hoped");
    else if (denial_is_history(r, hit))
        leave(r, hit, "never so, of today nothing is said");
    else if (stance & STANCE_BOUNDED || elsewhere)
        tell_left(r, hit, "denied in part only");
    else
        return false;
    return true;
}

// "The other plays fine", "one works": of several things not all.
static bool is_of_some(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    return r->note->record->count > 1 && i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
           (ANY(tokens, i - 1, "other", "one", "others", "rest") || degrees_number(tokens, i - 1)) &&
           !(i > 1 && ANY(tokens, i - 2, "all", "every", "each", "both"));
}

static void read_hit(struct fault_reader *r, const struct fault_hit *hit) {
    struct note *note = r->note;
    if (fault_is_called_so(r, hit) || fault_is_in_name(r, hit) || fault_is_in_maker(note, hit) ||
        note->taken[hit->from] == TAKEN_INCLUDES)
        return;
    if (count_is_of_part(r, hit)) return;
    bool lost = hit->kinds[0]->form == ABSENCE || text_same(hit->kinds[0]->rule.id, "broken-part");
    if ((lost && absent_turns_into(r, hit->to)) || kind_is_turned_hinge(r, hit))
        return; // "stoppers gone hard", "slats gone soft"
    uint16_t stance = fault_stance(r, hit);
    if (hit->denied && !(stance & (STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN))) return;
    if (spot_in_clause(&note->tokens, hit->from) || fault_means_other(r, hit)) return;
    if (stance & STANCE_PLANNED && hit->kinds[0]->class == CLASS_REPAIR && is_needed(r, hit)) {
        tell_left(r, hit, "not done");
        return;
    }
    if (text_same(hit->kinds[0]->rule.id, "missing-mate") && read_other_gone(r, hit->to - 1)) return;
    degrees_take(r, hit);
    take_cue(r, hit);
    struct fault_hit second; // "initials TKW engraved": the letters are a mark, that they are there is told
    if (hit->near && note->taken[hit->from] == TAKEN_MARK && note->taken[hit->to - 1] == TAKEN_NOT) {
        second = *hit;
        second.from = hit->to - 1;
        second.near = false;
        hit = &second;
    }
    if (text_same(hit->kinds[0]->rule.id, "owner-name") && note->taken[hit->from] == TAKEN_ASIDE) {
        second = *hit; // "Dad's initials are on the handle": whose is left out, that they are there is told
        while (second.from + 1 < second.to && note->taken[second.from] == TAKEN_ASIDE) second.from++;
        hit = &second;
    }
    bool posted =
        text_same(hit->kinds[0]->rule.id, "postally-used"); // the postmark is a mark, and tells more
    bool origin = text_same(hit->kinds[0]->rule.id, "authenticity-unverified");
    size_t doubt = origin && note->taken[hit->from] == TAKEN_ASIDE ? heard_doubt(note, hit->to) : 0;
    if (note->taken[hit->from] == TAKEN_MARK ? !posted : note->taken[hit->from] == TAKEN_ASIDE && !doubt)
        return;
    if (doubt) note_take(note, hit->to, doubt, TAKEN_SCOPE);
    struct spot spot = spot_of_hit(r, hit);
    if (fault_is_of_housed(r, hit, &spot)) spot.part_from = spot.part_to = 0;
    if (!(stance & STANCE_DENIED)) fault_drop_itself(hit, &spot);
    fault_take_own_part(r, hit, &spot);
    fault_take_part_of_thing(r, hit, &spot);
    const char *place = NULL;
    const struct flaw *kind = running_partly(r, hit, kind_at_spot(r, hit, &spot, &place));
    if (!kind) return; // its file is broken
    bool seat = text_same(kind->rule.id, "lining-damage") && note->record->family &&
                text_same(note->record->family->rule.id, "furniture") &&
                ANY(&note->tokens, hit->from, "velvet", "velvet's");
    if (seat) kind = ruleset_flaw(note->rules, "upholstery-wear"); // of a chair the velvet is no lining
    if (!kind || is_of_unsized(r, hit, kind)) return;
    bool moves = text_same(kind->rule.id, "seized") || text_same(kind->rule.id, "partly-working");
    bool crack = moves && function_of_crack(r, hit->to - 1, hit->to);
    if (crack || fault_of_new_part(r, hit, kind)) {
        leave(r, hit, crack ? "of a crack" : "of the new part");
        return;
    }
    if (stance & STANCE_WITHDRAWN && fault_tell_moved(r, hit, kind, &spot)) return;
    if (stance & (STANCE_WITHDRAWN | STANCE_OTHER) && !fault_is_as_made(r, hit, kind)) {
        size_t cue = r->scope.cue[hit->from];
        leave(r, hit,
              stance & STANCE_WITHDRAWN            ? "taken back"
              : token_is(&note->tokens, cue, "my") ? "of a person"
                                                   : "meant so, or of another thing");
        return;
    }
    if (stance & STANCE_DENIED && text_same(kind->rule.id, "powers-on-only"))
        return; // "the light never comes on"
    struct spot more[LIST_MOST];
    size_t listed = kind->form == FAULT ? spots_listed(r, hit, &spot, more) : 0;
    bool there = stance & (STANCE_EXCEPT | STANCE_DOUBLE | STANCE_LIMITED);
    if (unknown_in_exception(r, hit)) there = false;
    if (kind->class == CLASS_FUNCTION && ANY(&note->tokens, hit->from, "unless", "until"))
        there = true; // "won't start unless you push it": with help it does
    if (stance & STANCE_PLANNED && kind->class == CLASS_REPAIR) {
        leave(r, hit, "not done");
        return;
    }
    bool since = kind->class == CLASS_REPAIR && hit->from > 0 && // "was broken once and glued"
                 ANY(&note->tokens, hit->from - 1, "and", "then", "since", "&");
    for (size_t i = hit->from; i < hit->to && kind->class == CLASS_REPAIR; i++)
        since |= ANY(&note->tokens, i, "and", "then", "since");
    since |= text_same(kind->rule.id, "woodworm"); // "there was worm, treated": its holes are there
    if (!there && !since && (stance & STANCE_PAST) && !scope_past_is_own(&r->scope, hit->from, hit->to)) {
        leave(r, hit, "past");
        return;
    }
    const struct flaw *open = !there && (stance & STANCE_UNKNOWN) ? unknown_kind(r, hit, kind) : NULL;
    if (!there && !open && (stance & STANCE_UNKNOWN)) { // "not looked at by anybody who knows"
        if (fault_is_silent(kind) && !text_same(kind->rule.id, "authenticity-unverified"))
            tell_left(r, hit, "not known");
        else
            add_unchecked(r, hit, kind);
        return;
    }
    fault_take_course(r, hit, &spot);
    const char *where = fault_place(note, spot.where_from, spot_course_end(r, &spot)),
               *part = fault_part(r, hit, kind, &spot, where);
    fault_place_of_part(&where, &part);          // "haze in the left lens"
    bool owned = kind->form == ABSENCE && where; // "box has no lid": of the box a lid lacks
    if (stance & STANCE_PACKING && !part && !owned && !strstr(note_words(note, hit->from, hit->to), "box"))
        part = fault_packing(r, hit);
    if (was_looked_at(r, hit, stance)) {
        leave(r, hit, "looked at");
        return;
    }
    if (open || unknown_is_own(kind)) { // "I have not opened the case": its own words say no
        tell_unknown(r, hit, open ? open : kind, part, where);
        return;
    }
    if (!there && (stance & (STANCE_DENIED | STANCE_NONE_SEEN))) {
        kind = kind_beside(r, hit, kind_of_rusted(r, hit, narrower(r, hit, kind, place)), part);
        bool elsewhere = !part && !where && spot.part_to == spot.part_from && spot_unread(r, hit->to);
        if (!where && !part && (where = denial_rest(note, hit->to))) elsewhere = false;
        if (!denial_stops(r, hit, kind, stance, elsewhere)) {
            clear_add(r, kind, part, where, stance & STANCE_NONE_SEEN, hit->from, hit->to);
            for (size_t i = 0; i < listed; i++) clear_listed(r, hit, &more[i]);
        }
        return;
    }
    if (text_same(kind->rule.id, "working-tested") && is_of_some(r, hit)) {
        tell_left(r, hit, "of one of them");
        return;
    }
    if (fault_is_virtue(kind) && !there && (stance & STANCE_HEARD)) {
        leave(r, hit, "only heard or hoped");
        return;
    }
    if (fault_is_virtue(kind) && function_of_part(r, hit, kind, part ? spot.part_to : 0, part)) return;
    if (function_moves(r, hit, kind) || running_is_sound(r, hit, kind)) return;
    bool dead = token_is(&note->tokens, hit->from, "dead") && note->record->family && !running_can(note);
    if (fault_is_dead_worm(r, hit) || fault_is_taken_off(r, hit) || fault_is_old_cord(r, hit) ||
        fault_is_its_effect(r, hit))
        return;
    if (dead && !part && text_same(kind->rule.id, "not-working")) return; // "worm, treated so dead"
    bool his = token_is(&note->tokens, hit->to + 1, "his") || token_is(&note->tokens, hit->to + 1, "her");
    bool near = ANY(&note->tokens, hit->to, "along", "near", "by", "around", "round", "across", "at");
    size_t from, to = where || (part && !his && !near)
                          ? 0
                          : spot_unnamed(r, hit, &from); // "one has a chip on his hat"
    if (to) where = fault_place(note, from, to);         // no part that would make it another kind
    fault_tell(r, hit, kind, part, where);
    for (size_t i = 0; i < listed; i++) tell_listed(r, hit, &more[i]);
}

void fault_read_hits(struct fault_reader *r) {
    for (size_t i = 0; i < r->hit_count; i++)
        if (!absent_is_of_part(r, i)) read_hit(r, &r->hits[i]);
}
