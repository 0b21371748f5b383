// SPDX-License-Identifier: MIT
// Measures: an amount, or two or three with "x" between, with what names them before and behind. A figure
// that is a fault's own size is left where it stands; so is one without a unit whose dimension is not said.
//
// Units: the last one covers those before it ("30 x 40 cm"), the first those after it; in the same sentence
// the one before
// ("40 inches high, 28 wide"). Where none is said at all and a dimension is, a note in US English means
// inches.
#include "notes/any.h"
#include "notes/measures.h"
#include "notes/fault_size.h"

#include <string.h>

#include "notes/correct.h"
#include "notes/measure_group.h"
#include "notes/things.h"
#include "notes/unit.h"
#include "text/order.h"

#define COUNT(list) (sizeof list / sizeof *list)

enum { BARE_MOST = 400 };
// Behind a fault and a comma, what is longer is more likely the thing's, where the sentence speaks of it too.
enum { FAULT_MM_MOST = 30, FAULT_MM_ALONE = 200 };

// --- reading the group ---

static size_t by_sign(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "x", "by", "*") ? 1 : 0;
}

static bool side_at(const struct note *note, size_t i, struct side *side, size_t *taken) {
    memset(side, 0, sizeof *side);
    size_t hedge = hedge_at(note, i, false);
    if (!amount_at(note, i + hedge, &side->amount)) return false;
    if (hedge) side->amount.about = true;
    *taken = hedge + side->amount.taken;
    if (side->amount.letter) {
        side->dimension.name = side->amount.letter == 'h'   ? "height"
                               : side->amount.letter == 'w' ? "width"
                               : side->amount.letter == 'd' ? "depth"
                                                            : "length";
        return true;
    }
    const struct unit *unit = side->amount.unit; // "takes 2 quarts to the brim"
    bool length = !unit || (unit->kind && text_same(unit->kind, "mm"));
    if (length && dimension_behind(note, i + *taken, &side->dimension)) {
        *taken += side->dimension.taken;
        size_t behind = hedge_at(note, i + *taken, true);
        struct number next;
        if (behind && !number_at(&note->tokens, i + *taken + behind, &next)) {
            *taken += behind;
            side->amount.about = true;
        }
    } else {
        side->dimension = (struct dimension){0};
    }
    return true;
}

// "W 6", "width 6" inside a group: the letter stands before its figure.
static size_t letter_before(const struct note *note, size_t i, struct dimension *dimension) {
    const char *const names[] = {"h", "height", "w", "width", "d", "depth", "l", "length"};
    for (size_t k = 0; k < COUNT(names); k += 2)
        if (token_is(&note->tokens, i, names[k])) {
            *dimension = (struct dimension){names[k + 1], NULL, 1, true};
            return 1;
        }
    return 0;
}

static bool is_state(const char *of) {
    return text_same(of, "open") || text_same(of, "extended") || text_same(of, "closed") ||
           text_same(of, "folded") || text_same(of, "rolled") || !strncmp(of, "with", 4);
}

static void add_sides(const struct note *note, struct group *group) {
    while (group->count < SIDES_MOST) {
        size_t at = group->to, joint = by_sign(note, at), taken;
        if (!joint || !note_free(note, at, at + 1)) return;
        struct dimension before = {0};
        size_t letter = letter_before(note, at + joint, &before);
        struct side *side = &group->sides[group->count];
        if (!side_at(note, at + joint + letter, side, &taken)) return;
        if (letter) side->dimension = before;
        const char *of = side->dimension.of; // "6 ft 2 by 2 ft 2 opened out"
        if (of && text_same(side->dimension.name, "length") && is_state(of)) {
            group->of = of;
            side->dimension = (struct dimension){0};
        }
        group->count++;
        group->to = at + joint + letter + taken;
    }
}

static void name_by_letters(const struct note *note, struct group *group) {
    const char *names[SIDES_MOST];
    size_t taken, skip = token_is(&note->tokens, group->to, "(") ? 1 : 0;
    if (dimension_letters(note, group->from, true, names, &taken) == group->count)
        group->from -= taken;
    else if (dimension_letters(note, group->to + skip, false, names, &taken) == group->count)
        group->to += taken + skip;
    else
        return;
    for (size_t i = 0; i < group->count; i++) group->sides[i].dimension.name = names[i];
}

// "Green chest 9 in high", "chest: 36 by 18": what is high or has two sides is no part of the body.
static bool names_thing(const struct note *note, const struct group *group, const struct dimension *before) {
    const struct dimension *behind = &group->sides[0].dimension;
    if (group->count > 1 && ANY(&note->tokens, group->from - before->taken, "chest")) return true;
    return group->count == 1 && behind->name && !behind->noun && strcmp(behind->name, before->name) != 0 &&
           ANY(&note->tokens, group->from - before->taken, "chest", "bust", "drop");
}

// "Seat height 14 in, 28 overall"
static bool follows_height(const struct note *note, const struct group *group) {
    const struct record *record = note->record;
    const struct measurement *last =
        record->measurement_count ? &record->measurements[record->measurement_count - 1] : NULL;
    size_t start = note_clause_from(note, group->from, STOP_SENTENCE);
    return last && text_same(last->dimension, "height") && last->span.from >= note->tokens.at[start].from;
}

// "Folds to 26 in", "closed it is 11 inches": how it stood.
static void stands_so(const struct note *note, struct group *group) {
    struct side *first = &group->sides[0];
    const struct unit *unit = first->amount.unit;
    size_t words;
    if (first->dimension.of || group->of || (unit && !(unit->kind && text_same(unit->kind, "mm")))) return;
    const char *state = dimension_state_before(note, group->from, &words);
    for (size_t k = note_clause_from(note, group->from, STOP_SENTENCE); state && k < group->from; k++)
        if (ANY(&note->tokens, k, "jaw", "jaws")) return; // "jaw 3 1/2 in, opens to 4": how far it takes
    if (!state) return;
    group->from -= words;
    group->of = state;
    if (!first->dimension.name && group->count == 1)
        first->dimension = (struct dimension){"length", state, 0, false};
}

static bool group_at(const struct note *note, size_t i, struct group *group) {
    size_t taken;
    memset(group, 0, sizeof *group);
    if (hedge_at(note, i, false)) return false; // the figure behind it will take it along
    group->from = i;
    if (!side_at(note, i, &group->sides[0], &taken)) return false;
    group->count = 1;
    group->to = i + taken;
    add_sides(note, group);
    size_t hedge = hedge_before(note, group->from);
    if (hedge) group->about = true;
    group->from -= hedge;
    if (group->count > 1) name_by_letters(note, group);
    struct dimension before;
    struct side *first = &group->sides[0];
    if (dimension_before(note, group->from, &before) && !names_thing(note, group, &before) &&
        (!first->dimension.name || !first->dimension.noun || group->count > 1)) {
        bool adjective =
            first->dimension.name && !first->dimension.noun && text_same(before.name, first->dimension.name);
        // "height 9 width 6": what stands behind names the next figure.
        if (first->dimension.name && !adjective && group->count == 1) group->to -= first->dimension.taken;
        first->dimension = before;
        group->from -= before.taken;
    } else if (first->dimension.name && first->dimension.noun && group->count == 1 &&
               dimension_before(note, group->from, &before)) {
        group->to -= first->dimension.taken;
        first->dimension = before;
        group->from -= before.taken;
    }
    size_t more = hedge_before(note, group->from);
    group->from -= more;
    group->about |= more > 0;
    group->to = conversion_behind(note, group->to);
    stands_so(note, group);
    if (group->count == 1 && !first->dimension.name && token_is(&note->tokens, group->to, "overall") &&
        note->tokens.at[group->to].stop == STOP_NONE) { // "5 1/4 in overall"
        first->dimension =
            (struct dimension){follows_height(note, group) ? "height" : "length", NULL, 1, false};
        group->to++;
    }
    return true;
}

// --- units ---

static const struct unit *unit_of_group(const struct group *group) {
    for (size_t i = group->count; i > 0; i--)
        if (group->sides[i - 1].amount.unit) return group->sides[i - 1].amount.unit;
    return NULL;
}

// Words after which a bare figure is a number, not a measure.
static bool is_numbering(const struct note *note, size_t from, bool bare) {
    if (from > 1 && token_is(&note->tokens, from - 1, ".") && token_is(&note->tokens, from - 2, "no")) from--;
    if (from > 0 &&
        ANY(&note->tokens, from - 1, "no", "number", "#", "model", "$", "\xC2\xA3", "\xE2\x82\xAC", "no."))
        return true;
    return bare && from > 0 &&
           ANY(&note->tokens, from - 1, "no", "number", "#", "model", "size", "sz", "page", "lot", "box", "$",
               "\xC2\xA3", "\xE2\x82\xAC", "no.", "pattern", "scale", "bin", "shelf", "grade", "top", "age",
               "ages");
}

static bool ends_phrase(const struct note *note, const struct group *group) {
    const struct tokens *tokens = &note->tokens;
    size_t i = group->to;
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || tokens->at[i].kind == TOKEN_FIGURE ||
           ANY(tokens, i, "and", "with", "no", "on", "at", "but", "to", "has", "in", "not", "flat", "when",
               "including", "without", "across", "overall", "each", "it", "for", "open", "total", "by", "or",
               "from", "counting", "lid", "laid", "off", "plus", "w", "w/", "shut", "closed", "folded",
               "standing", "all");
}

// "2x4" and the like are as often lumber or a count.
static bool is_lumber(const struct group *group) {
    const struct amount *a = &group->sides[0].amount, *b = &group->sides[1].amount;
    return group->count == 2 && a->whole && b->whole && a->value < 4.5 && b->value < 6.5;
}

static bool may_be_bare(const struct note *note, const struct group *group) {
    const struct side *first = &group->sides[0];
    for (size_t i = 0; i < group->count; i++)
        if (group->sides[i].amount.value > BARE_MOST) return false;
    if (is_numbering(note, group->from, group->count == 1)) return false;
    if (group->count > 1) return !is_lumber(group);
    if (!first->dimension.name || (first->amount.spelled && first->amount.value < 1)) // "half shut"
        return false;
    if (first->dimension.noun) return !first->amount.spelled || first->dimension.taken > 1;
    return (ends_phrase(note, group) || (group->follows && first->amount.value > 6)) &&
           (!first->amount.spelled || !first->amount.whole || first->amount.value > 4);
}

// "Rug, 9 x 12", "carpet nine by twelve": nobody means inches. Common practice, no source.
static bool is_floor_cloth(const struct note *note, const struct group *group) {
    enum { FEET_MOST = 20, FEET_LEAST = 5 };
    if (group->count != 2 || group->sides[0].amount.value > FEET_MOST ||
        group->sides[1].amount.value > FEET_MOST ||
        (group->sides[0].amount.value < FEET_LEAST && group->sides[1].amount.value < FEET_LEAST))
        return false;
    for (size_t i = 0; i < group->from; i++)
        if (ANY(&note->tokens, i, "rug", "rugs", "carpet", "carpets", "kilim", "dhurrie")) return true;
    return false;
}

// Where no unit is near: the small one that the note has used ("40 cm high. 28 wide."), else inches.
static const struct unit *unit_assumed(const struct note *note, const struct carry *carry,
                                       struct group *group) {
    static const char *const small[] = {"cm", "mm", "in"};
    group->assumed = true;
    for (size_t k = 0; carry->unit && k < COUNT(small); k++)
        if (text_same(carry->unit->name, small[k])) return carry->unit;
    if (note->locale == LOCALE_US) return say_unit(is_floor_cloth(note, group) ? "ft" : "in", LOCALE_US);
    group->assumed = false;
    return NULL;
}

static bool settle_units(const struct note *note, const struct carry *carry, struct group *group) {
    const struct unit *unit = unit_of_group(group);
    if (!unit && carry->unit && group->from < carry->until && may_be_bare(note, group)) unit = carry->unit;
    // "4 ft long, 16 deep, 33 high", "4 foot wide, 11 deep": nobody means feet
    enum { FEET_MOST = 12 };
    const char *as = group->sides[0].dimension.of; // but "8 ft closed, 14 extended"
    bool drawn = as && (text_same(as, "extended") || text_same(as, "open"));
    if (!unit_of_group(group) && unit && text_same(unit->name, "ft") && !drawn &&
        (group->sides[0].amount.value >= FEET_MOST || group->sides[0].amount.value > carry->last))
        unit = say_unit("in", note->locale);
    if (!unit && may_be_bare(note, group)) unit = unit_assumed(note, carry, group);
    if (!unit) return false;
    const struct unit *before = NULL;
    for (size_t i = 0; i < group->count; i++) {
        struct amount *amount = &group->sides[i].amount;
        const struct unit *next = i + 1 < group->count ? group->sides[i + 1].amount.unit : NULL;
        // "Two foot square by 10 deep", "6 ft x 10 x 17 in": no feet either
        bool less = !amount->unit && before && text_same(before->name, "ft") &&
                    amount->value > group->sides[0].amount.value &&
                    (group->sides[i].dimension.name || (next && text_same(next->name, "in")));
        if (less) amount->unit = say_unit("in", note->locale);
        if (!amount->unit) amount->unit = before ? before : unit;
        before = amount->unit;
        if (group->count > 1 && (!before->kind || !text_same(before->kind, "mm"))) return false;
    }
    return true;
}

// Is there a fault here that the figure measures?
static bool fault_behind(const struct note *note, const struct group *group) {
    const char *first = group->sides[0].dimension.name;
    if (first && text_same(first, "height")) return false;                // no chip is told by its height
    const size_t reach = group->count > 2 ? 1 : group->count > 1 ? 2 : 4; // few faults have two sides told
    for (size_t k = group->to; k < group->to + reach && k < note->tokens.count; k++) {
        if (note->tokens.at[k].stop != STOP_NONE || note->tokens.at[k].starts) return false;
        if (k > 0 && token_is(&note->tokens, k - 1, ".") && note->tokens.at[k].capital)
            return false; // "29 H. Ring"
        if (note->fault_word[k] == FAULT_WORD_SIZED) {
            // "6 inch chipped bowl": the bowl is measured.
            size_t size = strlen(note->tokens.at[k].fold);
            bool adjective = size > 2 && text_same(note->tokens.at[k].fold + size - 2, "ed");
            bool noun =
                k + 1 < note->tokens.count && note->tokens.at[k + 1].kind == TOKEN_WORD &&
                !ANY(&note->tokens, k + 1, "on", "in", "at", "near", "by", "along", "and", "with", "area",
                     "spot", "edge", "section", "place", "patch", "inside", "to", "from", "across", "down");
            return !(adjective && noun);
        }
        if (ANY(&note->tokens, k, "with", "and", "no", "but", "has", "have", "not", "is", "one", "it", "on",
                "at", "tall", "high"))
            return false;
    }
    return false;
}

// "The left arm has a split along the grain, 4 inches long": in a sentence that is not the first, and is
// about a part, what follows the fault is no size of the thing.
static bool is_of_a_part(const struct note *note, size_t fault) {
    size_t from = note_clause_from(note, fault, STOP_SENTENCE);
    struct word_entry entry;
    if (from == 0 || ANY(&note->tokens, from, "it", "this", "they", "it's", "these")) return false;
    bool verb = false, part = false;
    for (size_t k = from; k < fault && !verb; k++) {
        verb = ANY(&note->tokens, k, "has", "have", "is", "are", "shows", "got");
        part |= !verb && (word_at(note, k, 1u << USE_PART, &entry) > 0 ||
                          ANY(&note->tokens, k, "left", "right", "front", "back", "upper", "lower"));
    }
    return verb && part;
}

// "Beads are missing along the seam, a strip about 1 inch long".
static bool is_strip(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    while (i > 0 && ANY(tokens, i - 1, "about", "maybe", "around", "some", "roughly", "of", "only")) i--;
    if (i < 3 ||
        !ANY(tokens, i - 1, "strip", "stretch", "section", "patch", "gap", "run", "line", "spot", "area") ||
        !ANY(tokens, i - 2, "a", "one") || tokens->at[i - 3].stop != STOP_COMMA)
        return false;
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < i; k++)
        if (note->fault_word[k]) return true;
    return false;
}

static bool fault_before(const struct note *note, const struct group *group) {
    enum { REACH = 16 };
    if (group->count == 1 && is_strip(note, group->from)) return true;
    const char *dimension = group->sides[0].dimension.name;
    bool of_thing = group->count > 1 ||
                    (dimension && (text_same(dimension, "height") || text_same(dimension, "diameter") ||
                                   group->sides[0].dimension.noun));
    enum { ACROSS_MOST = 50 }; // mm: "chip on the foot, 2 mm across"; no bowl is that small
    const struct amount *first = &group->sides[0].amount;
    bool across = group->to > group->from && ANY(&note->tokens, group->to - 1, "across");
    if (group->count == 1 && across && first->value * first->unit->factor <= ACROSS_MOST) of_thing = false;
    int commas = 0;
    for (size_t k = group->from, n = 0; k > 0 && n < REACH; k--, n++) {
        enum token_stop stop = note->tokens.at[k - 1].stop;
        bool anew = dimension && ANY(&note->tokens, k - 1, "and") && // "a stain and it's 48 inches long"
                    (k == group->from || ANY(&note->tokens, k, "it's", "its", "it"));
        if (stop >= STOP_SENTENCE || anew) return false;
        if (stop >= STOP_COMMA && ++commas > 2) return false;
        if (stop >= STOP_COMMA && !fault_size_only(note, k, group->from)) return false;
        bool owns =
            note->fault_word[k - 1] == FAULT_WORD_SIZED || (!dimension && fault_comes_off(note, k - 1));
        struct word_entry stuff;
        if (!owns || word_at(note, k - 1, 1u << USE_MATERIAL, &stuff) > 1) continue; // "split cane, 9 foot"
        if (fault_is_denied(note, k - 1)) return false;
        if (group->count > 2 || (commas && group->count > 1)) return false;
        double mm = group->sides[0].amount.value * group->sides[0].amount.unit->factor;
        bool alone = fault_opens_sentence(note, k - 1) || is_of_a_part(note, k - 1);
        if (commas && dimension && mm > (alone ? FAULT_MM_ALONE : FAULT_MM_MOST)) return false;
        return !of_thing || group->from - k < 2;
    }
    return false;
}

static bool is_faults(const struct note *note, const struct group *group) {
    const struct unit *unit = group->sides[0].amount.unit;
    if (!unit->kind || !text_same(unit->kind, "mm")) return false;
    return fault_behind(note, group) || fault_before(note, group);
}

// --- keeping ---

// Said twice is told once.
static bool is_told(const struct record *record, const char *dimension, const char *of,
                    const struct amount *amount) {
    enum { LOOK_BACK = 16 };
    size_t from = record->measurement_count > LOOK_BACK ? record->measurement_count - LOOK_BACK : 0;
    for (size_t i = from; i < record->measurement_count; i++) {
        const struct measurement *m = &record->measurements[i];
        bool same_part = (!m->of && !of) || (m->of && of && text_same(m->of, of));
        double less = m->figure.base - amount->value * amount->unit->factor;
        if (same_part && !m->range && text_same(m->dimension, dimension) && less < 0.01 && less > -0.01)
            return true;
    }
    return false;
}

static void keep_side(struct note *note, const struct group *group, const struct side *side,
                      const char *dimension) {
    const struct amount *amount = &side->amount;
    const char *of = side->dimension.of ? side->dimension.of : group->of;
    if (is_told(note->record, dimension, of, amount)) return;
    struct measurement *measure = note_measurement(note);
    measure->dimension = dimension;
    measure->figure = figure_of(amount->value, amount->unit, amount->about || group->about);
    measure->of = of;
    measure->span = note_span_of(note, group->from, group->to);
    if (amount->to <= 0) return;
    measure->range = true;
    measure->from = amount->value;
    measure->to = amount->to;
}

static const char *unnamed(const struct group *group, size_t i) {
    static const char *const sides[] = {"length", "width", "height"};
    static const char *const upright[] = {"width", "length", "height"};
    if (group->count == 1) return "size";
    // People give the longer side of a thing that lies first; of cloth and pictures the width.
    const struct amount *a = &group->sides[0].amount, *b = &group->sides[1].amount;
    return a->value * a->unit->factor < b->value * b->unit->factor ? upright[i] : sides[i];
}

static bool names_side(const struct group *group, const char *name) {
    for (size_t k = 0; k < group->count; k++)
        if (group->sides[k].dimension.name && text_same(group->sides[k].dimension.name, name)) return true;
    return false;
}

// A pair with one named side gives the other name to the other side.
static const char *name_of_side(const struct group *group, size_t i) {
    const struct side *side = &group->sides[i];
    if (side->dimension.name) return side->dimension.name;
    const char *kind = side->amount.unit->kind;
    if (kind && text_same(kind, "g")) return "weight";
    if (kind && text_same(kind, "ml")) return "capacity";
    const char *name = unnamed(group, i);
    if (text_same(name, "height") && names_side(group, "height") && names_side(group, "width"))
        return "depth";
    for (size_t k = 0; k < group->count; k++) {
        const char *other = group->sides[k].dimension.name;
        if (k == i || !other || !text_same(other, name)) continue;
        bool three = group->count == SIDES_MOST && names_side(group, "height");
        return text_same(other, "width") ? (three ? "depth" : "length") : "width";
    }
    return name;
}

// "18 wide 14 across": what goes through, beside a width.
static bool is_through(const struct note *note, const struct group *group) {
    const struct record *record = note->record;
    size_t start = note_clause_from(note, group->from, STOP_SENTENCE);
    if (group->count > 1) return false;
    bool across = false;
    for (size_t k = group->from; k < group->to; k++) across |= token_is(&note->tokens, k, "across");
    for (size_t i = 0; across && i < record->measurement_count; i++)
        if (text_same(record->measurements[i].dimension, "width") && !record->measurements[i].of &&
            record->measurements[i].span.from >= note->tokens.at[start].from)
            return true;
    return false;
}

// "Holds 25 lbs", "good for 2 cwt": what goes into it or on it, and not what it weighs.
static bool is_load(const struct note *note, const struct group *group) {
    enum { BACK = 5 };
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, group->to, "capacity", "load", "limit")) return true;
    for (size_t k = group->from; k > 0 && k + BACK > group->from && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (ANY(tokens, k - 1, "holds", "hold", "holding", "carries", "rated", "capacity", "supports",
                "takes", "contains", "contained", "lifts"))
            return true;
    return false;
}

static void keep_group(struct note *note, const struct group *group) {
    for (size_t i = 0; i < group->count; i++) {
        const char *name = name_of_side(group, i);
        if (text_same(name, "width") && is_through(note, group)) name = "diameter";
        if (text_same(name, "weight") && is_load(note, group)) name = "capacity";
        if (text_same(name, "square")) {
            keep_side(note, group, &group->sides[i], "width");
            name = "length";
        }
        keep_side(note, group, &group->sides[i], name);
    }
    note_reading(note, group->from, group->to, "measure",
                 group->assumed ? "a bare figure is taken as inches" : "number before a unit");
    note_take(note, group->from, group->to, TAKEN_MEASURE);
}

// "Inside diameter 4 in, outside 5 1/2".
static void other_diameter(const struct note *note, const struct carry *carry, struct group *group) {
    size_t from = group->from;
    if (!carry->dimension || !text_same(carry->dimension, "diameter") || from < 2 || group->count > 1) return;
    bool outer = ANY(&note->tokens, from - 1, "outside", "outer"),
         inner = ANY(&note->tokens, from - 1, "inside", "inner");
    if ((!outer && !inner) || note->tokens.at[from - 2].stop >= STOP_SENTENCE ||
        group->sides[0].dimension.name)
        return;
    group->sides[0].dimension = (struct dimension){"diameter", outer ? "outside" : "inside", 1, true};
    group->from--;
}

static size_t read_at(struct note *note, size_t i, struct carry *carry) {
    struct group group;
    if (!group_at(note, i, &group) || !note_free(note, i, group.to)) return i + 1;
    if (measure_keep_glasses(note, &group) || measure_is_price(note, &group)) return group.to;
    if (group.count == 1 && ANY(&note->tokens, group.to, "one", "ones"))
        return group.to; // "the 4 oz one": which of them
    // "About 18 in tall and 13 wide"
    bool joined = carry->about && carry->end + 1 == group.from && ANY(&note->tokens, carry->end, "and", "&");
    group.about |= joined;
    carry->about = joined || (group.about && hedge_at(note, group.from, false));
    group.follows = carry->end && carry->end < group.from && carry->end + 1 >= group.from;
    carry->end = group.to;
    other_diameter(note, carry, &group);
    carry_into(carry, i, &group.sides[0].amount, &group.sides[0].dimension);
    if (!settle_units(note, carry, &group)) return i + 1;
    if (!group.sides[0].amount.unit || is_numbering(note, group.from, false)) return i + 1;
    if (is_faults(note, &group) || measure_is_other(note, &group)) return group.to;
    if (ANY(&note->tokens, group.to, "longer", "shorter", "taller", "wider", "narrower", "higher", "lower",
            "bigger", "smaller", "larger", "thicker", "thinner", "heavier", "lighter", "deeper"))
        return group.to; // "one's three inches longer": than the other
    if (measure_keep_rating(note, &group)) return group.to;
    measure_find_part(note, &group);
    carry_keep(note, carry, &group.sides[0].amount, &group.sides[0].dimension, group.to);
    const struct unit *last = group.sides[group.count - 1].amount.unit; // "6 ft by 10 in, 17 high"
    if (carry->unit && last->kind && text_same(last->kind, "mm")) carry->unit = last;
    if (correction_behind(note, group.to, &carry->corrected)) { // withdrawn before it was kept
        note_take(note, group.from, group.to, TAKEN_MEASURE);
        return group.to;
    }
    keep_group(note, &group);
    return group.to;
}

void read_measures(struct note *note) {
    read_sizes(note);
    read_lettered(note);
    struct carry carry = {0};
    for (size_t i = 0; i < note->tokens.count;) {
        const struct token *token = &note->tokens.at[i];
        bool may = note->taken[i] == TAKEN_NOT && token->kind != TOKEN_SIGN && token->kind != TOKEN_CODE;
        i = may ? read_at(note, i, &carry) : i + 1;
    }
    read_named_volumes(note);
}
