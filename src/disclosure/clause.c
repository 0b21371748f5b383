// SPDX-License-Identifier: MIT
// The form of a flaw's rule decides the predicate; number, place, size and degree come from the record as
// they were said, and nothing is softened or explained. Two wordings keep apart what two keys of a record
// keep apart: a part is the subject ("The rim is chipped"), a place follows ("a chip on the rim").
#include "disclosure/clause.h"

#include <string.h>

#include "item/told.h"
#include "item/wording.h"
#include "text/order.h"

struct maker {
    struct arena *arena;
    const struct item_flaw *flaw;
    const struct flaw *kind;
    enum address address;
    enum locale locale;
    struct clause *clause;
    bool placed; // its place is told already
};

static const char *text(struct maker *m, const char *a, const char *b) {
    return *a && *b ? arena_format(m->arena, "%s %s", a, b) : *a ? a : b;
}

// --- subject ---

static bool says_all(const struct item_flaw *flaw) {
    return flaw->of > 1 && flaw->count == flaw->of;
}

static bool says_some(const struct item_flaw *flaw) {
    return flaw->of > 1 && flaw->count > 0 && flaw->count != flaw->of;
}

// "two of the six", "both", "all six"; with a part "one of the four legs", "all four legs".
static const char *pieces(struct maker *m, const char *part) {
    const struct item_flaw *flaw = m->flaw;
    const char *many = part ? say_plural(m->arena, part) : "";
    if (says_all(flaw) && flaw->of == 2) return text(m, "both", many);
    const char *of = say_number(m->arena, flaw->of);
    if (says_all(flaw)) return text(m, arena_format(m->arena, "all %s", of), many);
    return text(m, arena_format(m->arena, "%s of the %s", say_number(m->arena, flaw->count), of), many);
}

// "The lid", but "one shoe", which has its own word for which.
static const char *the(struct maker *m, const char *part) {
    return strncmp(part, "one ", 4) ? arena_format(m->arena, "the %s", part) : part;
}

// "Most of the slats", but "the rest of" and "all the slats".
static const char *share_link(const char *share) {
    return !strcmp(share, "all") || !strcmp(share, "nearly all") || !strcmp(share, "almost all") ? "" : " of";
}

static void set_subject(struct maker *m) {
    static const char *const plain[] = {"it", "they", "there"};
    const char *part = m->flaw->part;
    bool some = says_all(m->flaw) || says_some(m->flaw);
    struct clause *c = m->clause;
    if (part && m->flaw->of_part) { // "two buttons", not the two only
        int count = m->flaw->count ? m->flaw->count : 1;
        c->many = count > 1;
        const char *number = say_number(m->arena, count);
        if (count == 1 && say_is_plural(part)) number = "one of the"; // "cards foxed, one torn"
        c->subject = text(m, number, part);
        return;
    }
    if (m->flaw->share) { // "most of the slats", "some have chips"
        c->many = true;
        c->subject =
            part ? arena_format(m->arena, "%s%s the %s", m->flaw->share, share_link(m->flaw->share), part)
                 : m->flaw->share;
        return;
    }
    c->many = part ? say_is_plural(part) : m->address == ADDRESS_THEY;
    c->subject = part ? the(m, part) : plain[m->address];
    if (!some || wording_names_one(m->flaw)) return;
    if (part && !m->flaw->of_named && (m->flaw->of_pieces || say_is_plural(part))) {
        c->subject = arena_format(m->arena, "on %s, the %s", pieces(m, NULL), part);
        return;
    }
    c->subject = pieces(m, part);
    c->many = m->flaw->count > 1;
}

// --- faults: "a small chip of 3 mm (1/8 in)" or "slightly chipped" ---

static const char *size_words(struct maker *m, bool mass) {
    if (!m->flaw->has_size) return "";
    const struct figure *size = &m->flaw->size;
    const char *joint = m->flaw->up_to ? (size->about ? " up to about " : " up to ")
                        : size->about  ? " about "
                                       : " ";
    bool cut = m->flaw->span.to && strstr(m->kind->says ? m->kind->says : "", "cut down"); // by 2 in
    return arena_format(m->arena, "%s%s%s",
                        cut    ? "by"
                        : mass ? "measuring"
                               : "of",
                        joint, say_both(m->arena, size->value, size->unit, m->locale));
}

// "Three of the cups": the place says of how many, and the fault need not.
static bool place_counts(const struct item_flaw *flaw) {
    static const char *const numbers[] = {"two of ",   "three of ", "four of ", "five of ", "six of ",
                                          "seven of ", "eight of ", "nine of ", "ten of "};
    for (size_t i = 0; flaw->where && i < sizeof numbers / sizeof *numbers; i++)
        if (!strncmp(flaw->where, numbers[i], strlen(numbers[i]))) return true;
    return false;
}

// How many faults, where the count is not one of pieces.
static int fault_count(const struct item_flaw *flaw) {
    if (place_counts(flaw)) return 0;
    return flaw->of > 1 || says_some(flaw) || flaw->of_part ? 0 : flaw->count;
}

static const char *plural_noun(struct maker *m) {
    const struct flaw *kind = m->kind;
    return kind->plural ? kind->plural : say_plural(m->arena, kind->noun);
}

// Of a part that the noun names already, the noun says the rest: the sole has "wear".
static const char *own_noun(struct maker *m) {
    const char *rest = wording_rest(m->flaw), *before = wording_before(m->arena, m->flaw);
    return rest ? rest : before && !strcmp(before, "split") ? before : m->kind->noun;
}

static const char *noun_phrase(struct maker *m) {
    const char *degree = wording_degree(m->flaw, true), *noun = own_noun(m);
    int count = fault_count(m->flaw);
    bool mass = m->kind->mass;
    const char *size = size_words(m, mass);
    bool several = !says_some(m->flaw) && !says_all(m->flaw) && m->flaw->several;
    m->clause->many_rest = mass ? say_is_plural(noun)
                                : (count > 1 || (!count && ((m->kind->many && !m->flaw->lone) || several)));
    if (mass) {
        const char *places =
            count ? arena_format(m->arena, "in %s place%s", say_number(m->arena, count), count > 1 ? "s" : "")
                  : "";
        return text(m, text(m, text(m, degree, noun), size), places);
    }
    if (m->clause->many_rest) {
        const char *number = count ? say_number(m->arena, count) : "";
        return text(m, text(m, number, text(m, degree, plural_noun(m))), size);
    }
    const char *phrase = text(m, degree, noun);
    return text(m, text(m, count ? "one" : say_article(phrase), phrase), size);
}

// "Tongs, a bit stiff": they are stiff, and no part of them was named.
static bool is_of_all(struct maker *m) {
    const struct item_flaw *flaw = m->flaw;
    const char *noun = m->kind->noun;
    size_t n = strlen(noun);
    bool of_part = n > 5 && !strcmp(noun + n - 5, " part") && m->kind->adjective_own;
    return of_part && !flaw->part && !flaw->where && !flaw->count && !flaw->of && !flaw->has_size &&
           !flaw->several && flaw->span.to && m->address != ADDRESS_THERE && wording_adjective(flaw);
}

// "The veneer has lifting veneer", "the wicker has broken wicker": the noun would say the part again. What it
// says beside that, NULL where it does not.
static const char *beside_part(struct maker *m) {
    const struct item_flaw *flaw = m->flaw;
    if (!flaw->part || !m->kind->mass) return NULL;
    const char *noun = strrchr(m->kind->noun, ' '), *part = strrchr(flaw->part, ' ');
    if (!noun || !text_same(noun + 1, part ? part + 1 : flaw->part)) return NULL;
    const char *adjective = wording_adjective(flaw);
    return adjective ? adjective : arena_copy(m->arena, m->kind->noun, (size_t)(noun - m->kind->noun));
}

// "Dry leather", "lifting veneer": the stuff is what it is of, and the rest is how it is.
static const char *stuff_of(struct maker *m) {
    const struct item_flaw *flaw = m->flaw;
    const char *adjective = wording_adjective(flaw), *noun = m->kind->noun;
    bool whole = !flaw->part && !flaw->count && !flaw->of && !flaw->share && !flaw->has_size;
    if (!whole || !m->kind->mass || m->kind == flaw->kind || !adjective) return NULL;
    size_t n = strlen(adjective);
    return !strncmp(noun, adjective, n) && noun[n] == ' ' && !strchr(noun + n + 1, ' ') ? noun + n + 1 : NULL;
}

static void tell_fault(struct maker *m) {
    const struct item_flaw *flaw = m->flaw;
    struct clause *c = m->clause;
    bool piece = says_some(flaw) || says_all(flaw) || flaw->share;
    const char *stuff = stuff_of(m);
    if (stuff) {
        c->subject = the(m, stuff);
        c->many = say_is_plural(stuff);
        c->verb = VERB_IS;
        const char *adjective = wording_adjective(flaw), *adverb = wording_adverb(flaw, true);
        size_t size = strlen(adjective);
        bool done = size > 2 && !strcmp(adjective + size - 2, "ed"); // "lightly worn", but "slightly dry"
        if (!done && !strcmp(adverb, "lightly")) adverb = "slightly";
        if (!done && !strcmp(adverb, "heavily")) adverb = "very";
        c->rest = text(m, adverb, adjective);
        return;
    }
    const char *before = wording_before(m->arena, flaw);
    if (before && !flaw->has_size && !fault_count(flaw)) {
        c->verb = VERB_IS;
        c->rest = text(m, wording_adverb(flaw, true), before);
        return;
    }
    bool adjective = (m->kind->adjective_own || flaw->adjective_said) && wording_adjective(flaw) &&
                     !flaw->has_size && !flaw->several && !fault_count(flaw) &&
                     (flaw->part || (piece && !flaw->where) || (flaw->share && !m->kind->mass));
    adjective |= is_of_all(m);
    const char *beside = adjective ? NULL : beside_part(m);
    if (adjective || beside) {
        c->verb = VERB_IS;
        c->rest = text(m, wording_adverb(flaw, true), beside ? beside : wording_adjective(flaw));
        if (flaw->has_size) c->rest = arena_format(m->arena, "%s, %s", c->rest, size_words(m, true));
        return;
    }
    c->verb = VERB_HAS;
    c->rest = noun_phrase(m);
}

// --- absences and states ---

// A degree that the predicate has no word for stands behind it.
static const char *with_degree(struct maker *m, const char *rest) {
    rest = text(m, rest, size_words(m, true));
    if (m->flaw->severity == SEVERITY_UNKNOWN || m->flaw->unsaid) return rest;
    return arena_format(m->arena, "%s (%s)", rest, severity_name(m->flaw->severity));
}

static void put_agreed(struct maker *m, struct buf *out, const char *name, size_t n) {
    bool many = m->clause->many;
    if (n == 2 && !strncmp(name, "is", n))
        buf_text(out, many ? "are" : "is");
    else if (n == 3 && !strncmp(name, "has", n))
        buf_text(out, many ? "have" : "has");
    else if (n == 3 && !strncmp(name, "was", n))
        buf_text(out, many ? "were" : "was");
}

// "Two of the drawers": what has it, where the notes count it. False where it is told as a noun of its own.
static bool set_counted(struct maker *m) {
    const struct item_flaw *flaw = m->flaw;
    struct clause *c = m->clause;
    bool places = flaw->span.to && flaw->where && say_is_plural(flaw->where) && !strchr(flaw->where, ' ');
    if (!flaw->part && !places && m->kind->noun) {
        c->verb = VERB_HAS;
        c->rest = noun_phrase(m);
        return false;
    }
    const char *of = flaw->part ? say_plural(m->arena, flaw->part) : places ? flaw->where : "pieces";
    m->placed = places && !flaw->part; // "one of the handles is a replacement"
    c->subject = arena_format(m->arena, "%s of the %s", say_number(m->arena, flaw->count), of);
    c->many = flaw->count > 1;
    return true;
}

// The predicate's first word is its verb in braces; agreement may be needed further on too.
static void tell_state(struct maker *m) {
    const struct item_flaw *flaw = m->flaw;
    struct clause *c = m->clause;
    const char *says = flaw->part && m->kind->says_part ? m->kind->says_part : m->kind->says;
    if (m->address == ADDRESS_THERE && text_same(c->subject, "there")) {
        c->subject =
            flaw->count ? arena_format(m->arena, "%s of them", say_number(m->arena, flaw->count)) : "they";
        c->many = flaw->count != 1;
    } else if (flaw->count && !says_some(flaw) && !says_all(flaw) && !flaw->of_part && !set_counted(m))
        return;
    c->verb = !strncmp(says, "{is}", 4) ? VERB_IS : !strncmp(says, "{was}", 5) ? VERB_WAS : VERB_HAS;
    struct buf out = buf_start(m->arena);
    for (const char *at = strchr(says, '}') + 1; *at; at++) {
        const char *end = *at == '{' ? strchr(at, '}') : NULL;
        if (!end)
            buf_byte(&out, *at);
        else {
            put_agreed(m, &out, at + 1, (size_t)(end - at - 1));
            at = end;
        }
    }
    const char *rest = out.at;
    while (*rest == ' ') rest++;
    c->rest = with_degree(m, rest);
}

// "from the hinge" is what is missing there; any other place stays as it is said.
static const char *missing_place(struct maker *m, const char *place) {
    const char *where = m->flaw->where;
    static const char *const holders[] = {"box",    "case",     "tin",    "bag",
                                          "packet", "envelope", "folder", "sleeve"};
    bool added = !strncmp(place, "on ", 3) && strncmp(where, "on ", 3) != 0;
    for (size_t i = 0; !added && !strncmp(place, "in the ", 7) && i < sizeof holders / sizeof *holders; i++)
        added = text_same(place + 7, holders[i]); // "no rules in the box"
    return added ? arena_format(m->arena, "from %s", place + 3) : place;
}

static void tell_absence(struct maker *m) {
    const struct item_flaw *flaw = m->flaw;
    struct clause *c = m->clause;
    const char *part = flaw->part ? flaw->part : m->kind->part;
    int count = flaw->single && !flaw->count ? 1 : flaw->count;
    if (m->kind->says && !flaw->part && !count) {
        tell_state(m);
        return;
    }
    const char *irregular = flaw->part ? NULL : m->kind->part_plural;
    const char *plural = irregular ? irregular : say_plural(m->arena, part);
    c->verb = VERB_IS;
    c->rest = with_degree(m, "missing");
    c->many = count > 1 || (!count && say_is_plural(part));
    c->missing = !count;
    if (!count && flaw->share) {
        c->many = true;
        c->missing = false;
    } else if (!count)
        c->subject = the(m, part);
    else if (flaw->of > 1 && flaw->of >= count)
        c->subject =
            count == flaw->of
                ? text(m, count == 2 ? "both" : arena_format(m->arena, "all %s", say_number(m->arena, count)),
                       plural)
                : arena_format(m->arena, "%s of the %s %s", say_number(m->arena, count),
                               say_number(m->arena, flaw->of), plural);
    else
        c->subject = text(m, say_number(m->arena, count), count > 1 ? plural : say_singular(m->arena, part));
}

// --- the whole ---

static enum band band_of(const struct flaw *kind) {
    if (text_same(kind->rule.id, "working-tested")) return BAND_FUNCTION; // that it works comes first too
    switch (kind->class) {
    case CLASS_FUNCTION:
        return BAND_FUNCTION;
    case CLASS_DAMAGE:
        return kind->cap[SEVERITY_LIGHT] == GRADE_A ? BAND_SURFACE : BAND_STRUCTURE;
    case CLASS_MISSING:
        return BAND_MISSING;
    case CLASS_REPAIR:
        return BAND_REPAIR;
    case CLASS_DIRT:
        return BAND_DIRT;
    case CLASS_ODOR:
        return BAND_ODOR;
    default:
        return BAND_REST;
    }
}

static bool has_joint(const char *text) {
    return strchr(text, ',') || strstr(text, " and ") || strstr(text, " or ") || strstr(text, " & ") ||
           strchr(text, ';');
}

// "(light)" is a degree, "(on the light)" a place.
static bool is_degree(const char *where) {
    for (int s = SEVERITY_LIGHT; s < SEVERITY_COUNT; s++)
        if (text_same(where, severity_name((enum severity)s))) return true;
    return false;
}

// "In the lock" where the notes say so, and not on it.
static const char *own_link(struct maker *m, const char *place) {
    if (!m->flaw->link || strncmp(place, "on ", 3) != 0) return place;
    size_t n = !strncmp(place, "on the ", 7) ? 7 : 3;
    return arena_format(m->arena, "%s %s", m->flaw->link, place + n);
}

// A state is not somewhere: its place belongs to the part ("The signature on the bottom is unread") or stands
// aside.
static void set_place(struct maker *m) {
    struct clause *c = m->clause;
    const char *place = own_link(m, say_place(m->arena, m->flaw->where));
    if (m->flaw->with && strstr(m->flaw->with, m->flaw->where)) return; // "replaced with a nut on a wire"
    if (!strncmp(m->flaw->where, "by ", 3) && m->flaw->kind->class == CLASS_REPAIR) return; // who did it
    if (m->flaw->span.to && m->flaw->kind->class == CLASS_FUNCTION && m->kind->form == STATE && c->rest &&
        strstr(c->rest, m->flaw->where))
        return;                                                            // "out of focus"
    if (m->flaw->part && text_same(m->flaw->part, m->flaw->where)) return; // "the corner is chipped"
    const char *noun = m->kind->noun, *last = noun ? strrchr(noun, ' ') : NULL;
    if (m->flaw->span.to && last && text_same(last + 1, m->flaw->where)) return; // "an open seam on the seam"
    bool state =
        m->kind->form == STATE && c->rest && !(m->kind->noun && c->verb == VERB_HAS && m->flaw->count);
    if (m->kind->form == ABSENCE && c->missing) {
        c->place = missing_place(m, place);
    } else if (!state && m->flaw->placed_part)
        c->subject = text(m, c->subject, place);
    else if (!state)
        c->place = place;
    else if (text_same(m->flaw->where, "in places"))
        c->place = place;
    else if (m->flaw->part && m->flaw->span.to && m->kind->class == CLASS_FUNCTION)
        c->place = place; // "the spout is leaking at the base"
    else if (m->flaw->part && (!m->flaw->link || m->kind->class == CLASS_STATUS))
        c->subject = text(m, c->subject, place);
    else if (m->flaw->link)
        c->place = place;
    else
        c->place = arena_format(m->arena, "(%s)", is_degree(m->flaw->where) ? place : m->flaw->where);
}

struct clause clause_of(struct arena *arena, const struct item_flaw *flaw, enum address address,
                        enum locale locale) {
    struct clause clause = {
        .flaw = flaw, .band = band_of(flaw->kind), .maybe = flaw->sure != SURE_STATED, .place = ""};
    flaw = wording_shown(arena, flaw);
    struct maker m = {arena, flaw, flaw_told(flaw), address, locale, &clause, false};
    set_subject(&m);
    if (flaw->kind->form == FAULT)
        tell_fault(&m);
    else if (flaw->kind->form == ABSENCE)
        tell_absence(&m);
    else
        tell_state(&m);
    if (flaw->where && !m.placed) set_place(&m);
    if (flaw->with) clause.rest = text(&m, clause.rest, flaw->with);
    // "One of the two" twice need not be the same one, and of "one handle" another fault may be of the other.
    clause.alone = flaw->of_part || flaw->share || says_some(flaw) ||
                   (flaw->where && has_joint(flaw->where)) || (flaw->part && has_joint(flaw->part)) ||
                   strchr(clause.rest, ',') || strstr(clause.rest, " and ") || strchr(clause.subject, ',');
    return clause;
}

const char *clause_verb_words(enum clause_verb verb, bool many, bool maybe) {
    static const char *const words[][3] = {
        {"is", "are", "may be"}, {"has", "have", "may have"}, {"was", "were", "was, it seems,"}};
    return words[verb][maybe ? 2 : many];
}
