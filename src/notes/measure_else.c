// SPDX-License-Identifier: MIT
// Figures with a unit that tell no dimension of the thing: what it is made for, what a lens does, what
// weights weigh, how tall somebody is.
#include "notes/measure_group.h"

#include <string.h>

#include "notes/any.h"
#include "notes/unit.h"
#include "text/order.h"

#define COUNT(list) (sizeof list / sizeof *list)

// "18V", "40 watt", "50mm lens": what a thing is made for; kept as its size.
bool measure_keep_rating(struct note *note, const struct group *group) {
    const struct amount *amount = &group->sides[0].amount;
    struct part part;
    size_t taken;
    bool plain = !amount->unit->kind;
    bool lens = group->count == 1 && text_same(amount->unit->name, "mm") &&
                ANY(&note->tokens, group->to, "film", "lens", "camera", "slide", "slides", "negatives",
                    "projector", "movie", "lenses", "slr");
    bool led = group->from > 1 && ANY(&note->tokens, group->from - 1, "is", ":", "s") &&
               token_is(&note->tokens, group->from - 2, "lens");
    lens |=
        led && group->count == 1 && text_same(amount->unit->name, "mm") && !group->sides[0].dimension.name;
    if (!plain && !lens) return false;
    struct value *value = note_attribute(note);
    value->name = "size";
    value->value =
        arena_format(note->arena, "%s%s", say_decimal(note->arena, amount->value), amount->unit->title);
    value->span = note_span_of(note, group->from, group->to);
    value->of = measure_part_behind(note, group->to, &part, &taken);
    note_reading(note, group->from, group->to, "size", "number before a unit");
    note_take(note, group->from, group->to, TAKEN_MEASURE);
    return true;
}

// "8x30 field glasses": power and width of the lens.
bool measure_keep_glasses(struct note *note, const struct group *group) {
    if (group->count != 2) return false;
    // "8x20 in case": no inches
    bool within =
        group->sides[1].amount.unit && token_is(&note->tokens, group->to - 1, "in") &&
        ANY(&note->tokens, group->to, "case", "a", "its", "the", "leather", "box", "pouch", "original");
    if (group->sides[1].amount.unit && !within) return false;
    enum { REACH = 24 };
    bool near = false;
    for (size_t k = group->from > REACH ? group->from - REACH : 0;
         k < group->to + REACH && k < note->tokens.count; k++)
        near |= ANY(&note->tokens, k, "binoculars", "binocular", "monocular", "scope", "telescope") ||
                token_phrase(&note->tokens, k, "field glasses") ||
                (token_is(&note->tokens, k, "camera") && !group->sides[0].amount.unit); // "6x9": its film
    if (!near) return false;
    struct value *value = note_attribute(note);
    value->name = "size";
    value->value = arena_format(note->arena, "%sx%s", say_decimal(note->arena, group->sides[0].amount.value),
                                say_decimal(note->arena, group->sides[1].amount.value));
    size_t to = group->to - (within ? 1 : 0);
    value->span = note_span_of(note, group->from, to);
    note_reading(note, group->from, to, "size", "power and lens of field glasses");
    note_take(note, group->from, to, TAKEN_MEASURE);
    return true;
}

// "… lb in half ounces": a smaller weight than one told before it.
static bool is_of_scale(const struct note *note, size_t from) {
    for (size_t k = note_clause_from(note, from, STOP_COMMA); k < from; k++)
        if (ANY(&note->tokens, k, "lb", "lbs", "pounds", "stone", "kg", "kilos")) return true;
    return false;
}

// "Weights: 2 lb, 1 lb, 8 oz", "with its 4 oz and 2 oz weights": what each of them weighs.
static bool is_of_weights(const struct note *note, const struct group *group) {
    enum { REACH = 8 };
    const struct unit *unit = group->sides[0].amount.unit;
    if (!unit->kind || text_same(unit->kind, "mm")) return false;
    size_t start = note_clause_from(note, group->from, STOP_SENTENCE);
    for (size_t k = start; k < group->from; k++)
        if (token_is(&note->tokens, k, "weights")) return true;
    for (size_t k = group->to; k < group->to + REACH && k < note->tokens.count; k++) {
        if (token_is(&note->tokens, k, "weights")) return true;
        if (note->tokens.at[k].stop >= STOP_CLAUSE) return false;
    }
    return false;
}

// "Weighs in at 3 pounds", "a heavy one at 12 pounds".
static bool speaks_of_weight(const struct note *note, size_t from) {
    for (size_t k = note_clause_from(note, from, STOP_COMMA); k < from; k++)
        if (ANY(&note->tokens, k, "weighs", "weighing", "weight", "weighed", "heavy", "light", "hefty",
                "solid"))
            return true;
    return false;
}

// "Bought for 20 pounds", "cost me 40 pounds": what it cost.
bool measure_is_price(struct note *note, const struct group *group) {
    enum { REACH = 5 };
    const struct tokens *tokens = &note->tokens;
    if (group->count > 1 || !ANY(tokens, group->to - 1, "pounds", "pound", "quid")) return false;
    for (size_t k = group->from; k > 0 && k + REACH > group->from && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (ANY(tokens, k - 1, "paid", "cost", "bought", "gave", "spent", "asking", "price", "priced",
                "sold")) {
            note_aside(note, note->taken[k - 1] == TAKEN_NOT ? k - 1 : group->from, group->to);
            return true;
        }
    return false;
}

// Figures of people and of other things: "I'm 5 foot 6", "fits rods up to 3 in".
bool measure_is_other(const struct note *note, const struct group *group) {
    size_t from = group->from;
    if (from > 0 &&
        ANY(&note->tokens, from - 1, "i'm", "im", "he's", "she's", "$", "\xC2\xA3", "\xE2\x82\xAC"))
        return true;
    if (from > 1 && token_is(&note->tokens, from - 1, "by") && ANY(&note->tokens, from - 2, "off", "out"))
        return true;                                                  // "off by 2 oz"
    if (ANY(&note->tokens, group->to, "tpi", "threads")) return true; // "1 in x 8 tpi"
    if (from > 1 && token_is(&note->tokens, from - 1, "to") &&
        ANY(&note->tokens, from - 2, "weighs", "reads", "registers", "points", "goes", "sinks", "drops"))
        return true;
    size_t lost =
        group->to + (ANY(&note->tokens, group->to, "is", "one", "was") ? 1 : 0); // "the 14 mm is missing"
    if (ANY(&note->tokens, group->to, "socket", "spanner", "wrench", "bit", "key", "drill", "die", "tap"))
        lost = group->to + 1 + (ANY(&note->tokens, group->to + 1, "is", "was") ? 1 : 0);
    if (ANY(&note->tokens, lost, "missing", "gone", "lost", "absent")) return true;
    size_t verb = from; // "reads about half an ounce heavy"
    while (verb > 0 &&
           ANY(&note->tokens, verb - 1, "about", "roughly", "around", "nearly", "a", "maybe", "by"))
        verb--;
    if (verb > 0 &&
        ANY(&note->tokens, verb - 1, "reads", "weighs", "registers", "shows", "reading", "is", "sits",
            "rests", "points") &&
        ANY(&note->tokens, group->to, "light", "heavy", "over", "under", "out", "fast", "slow", "off"))
        return true;
    if (from > 2 && token_phrase(&note->tokens, from - 3, "weighs up to")) return true; // "weighs to 10 kg"
    if (from > 1 && token_is(&note->tokens, from - 1, "weigh") &&
        ANY(&note->tokens, from - 2, "to", "will", "can"))
        return true; // "to weigh 7 lb"
    const struct unit *unit = group->sides[0].amount.unit;
    // "25 gal an hr", "4 lb per acre": what it does in a time
    if (unit->kind && !text_same(unit->kind, "mm") && ANY(&note->tokens, group->to, "an", "per", "a", "/") &&
        ANY(&note->tokens, group->to + 1, "hr", "hour", "min", "minute", "day", "acre", "mile", "second"))
        return true;
    // "One yard down": of a mast
    if (group->count == 1 && group->sides[0].amount.spelled && !group->sides[0].dimension.name &&
        text_same(unit->name, "yd") &&
        !ANY(&note->tokens, group->to, "of", "square", "and", "by", "x", "wide", "long"))
        return true;
    // "Up to 25 lb in half ounces": what a scale weighs; but a jug holds "up to 2 pints"
    bool weight = unit->kind && text_same(unit->kind, "g");
    if (weight && from > 1 && token_phrase(&note->tokens, from - 2, "up to")) return true;
    if (from > 0 && ANY(&note->tokens, from - 1, "in", "by") && is_of_scale(note, from)) return true;
    bool heavy = unit->kind && text_same(unit->kind, "g");
    if (is_of_weights(note, group)) return true;
    // "0-200 lbs", "0 to 60 lb": a scale
    bool led = from > 1 && token_is(&note->tokens, from - 2, "0") && ANY(&note->tokens, from - 1, "-", "to");
    bool opens = token_is(&note->tokens, from, "0") && ANY(&note->tokens, from + 1, "-", "to");
    if (led || opens || !strncmp(note->tokens.at[from].fold, "0-", 2)) return true;
    // "The pointer sticks at 2 lb", "the 50g isn't there": what a scale shows, and what a weight is called
    if (heavy && from > 0 && ANY(&note->tokens, from - 1, "at", "past", "under", "below") &&
        !speaks_of_weight(note, from))
        return true;
    if (heavy && ANY(&note->tokens, group->to, "missing", "gone", "lost")) return true; // "1 oz missing"
    if (heavy && from > 0 && token_is(&note->tokens, from - 1, "the") &&
        ANY(&note->tokens, group->to, "isn't", "is", "isnt", "one", "weight", "has", "was", "missing",
            "piece", "and", "gone", "lost"))
        return true;
    if (from > 1 && token_is(&note->tokens, from - 1, "am") && token_is(&note->tokens, from - 2, "i"))
        return true;
    size_t start = note_clause_from(note, from, STOP_COMMA);
    if (from > start + 6) start = from - 6;
    for (size_t k = start; k < from; k++)
        if (ANY(&note->tokens, k, "takes", "fits", "accepts", "within") && !group->sides[0].dimension.name &&
            group->sides[0].amount.unit->kind && text_same(group->sides[0].amount.unit->kind, "mm"))
            return true;
    return token_is(&note->tokens, group->to, "away") || token_is(&note->tokens, group->to, "from");
}
