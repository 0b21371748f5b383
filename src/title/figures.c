// SPDX-License-Identifier: MIT
// Phrases with figures in them: how many pieces, labelled size, measures, years.
#include <stdio.h>
#include <string.h>

#include "text/order.h"
#include "text/utf8.h"
#include "title/plan.h"

// "Pair of boots", "cufflinks, pair, round": two of them are one pair, and no lot.
static bool is_one_pair(const struct phrase_maker *m) {
    if (m->record->count != 2 || !m->thing || !m->thing->pair || !m->record->notes) return false;
    const char *notes = utf8_fold(m->arena, m->record->notes);
    return !strncmp(notes, "pair of ", 8) || !strncmp(notes, "pr ", 3) || strstr(notes, " pair of ") ||
           strstr(notes, ", pair,") || strstr(notes, ", pair.") || strstr(notes, ", a pair");
}

static void make_count(struct phrase_maker *m) {
    int count = m->record->count;
    if (count < 2) return;
    const char *type = m->record->type.value ? m->record->type.value : "item";
    bool collective = noun_is_collective(type);
    bool one = is_one_pair(m);
    bool pair =
        count == 2 && !collective && strncmp(type, "pair ", 5) != 0 && (one || !(m->thing && m->thing->pair));
    struct plan_phrase *phrase = pair ? phrase_add(m, SLOT_PAIR, "count", (struct note_span){0, 0}) : NULL;
    if (phrase)
        spelling_add(m, phrase, "pair", m->tells[SLOT_PAIR], 0);
    else if (!one) {
        phrase = phrase_add(m, SLOT_COUNT_WORDS, "count", (struct note_span){0, 0});
        const char *number = arena_format(m->arena, "%d", count);
        if (collective)
            spelling_add(m, phrase, arena_format(m->arena, "%s pieces", number), m->tells[SLOT_COUNT_WORDS],
                         0);
        else
            spelling_add(m, phrase, arena_format(m->arena, "lot of %s", number), m->tells[SLOT_COUNT_WORDS],
                         0);
        if (phrase)
            spelling_add(m, phrase, arena_format(m->arena, "%s pcs", number), m->tells[SLOT_COUNT_WORDS] - 6,
                         0);
    }
    if (phrase) phrase->must = true;
}

// --- labelled size ---

static bool worn(const struct family *family) {
    static const char *const families[] = {"clothing", "footwear", "jewelry", "bags", "sports"};
    for (size_t i = 0; i < sizeof families / sizeof *families; i++)
        if (text_same(family->rule.id, families[i])) return true;
    return false;
}

static bool is_size_word(const char *text) {
    static const char *const words[] = {"small", "medium", "large", "extra", "x",  "s",
                                        "m",     "l",      "xs",    "xl",    "xxl"};
    size_t n = strcspn(text, " -");
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (strlen(words[i]) == n && !strncmp(words[i], text, n)) return true;
    return false;
}

// "Size 8.5" where a bare figure would say nothing; "3/8 Drive", "18V", "1:64", "2 Person" explain
// themselves.
static bool needs_size_word(const struct family *family, const char *text) {
    bool letters = false, digits = false;
    for (const char *c = text; *c; c++) {
        digits |= *c >= '0' && *c <= '9';
        letters |= (*c >= 'a' && *c <= 'z') || (*c >= 'A' && *c <= 'Z');
    }
    if (strchr(text, ':') || strchr(text, '"')) return false;
    size_t size = strlen(text);
    if (size > 3 && (text_same(text + size - 3, " in") || text_same(text + size - 3, " ft"))) return false;
    if (worn(family)) return digits ? !strstr(text, " person") : is_size_word(text);
    return (digits && !letters) || is_size_word(text);
}

// "10 in" beside "15 in Across": one of two lengths that nobody could tell apart.
static bool is_lost_beside(const struct record *record, const char *text) {
    const char *unit = strrchr(text, ' ');
    if (!unit || strstr(text, " x ") || strpbrk(text, "0123456789") == NULL) return false;
    for (size_t i = 0; i < record->measurement_count; i++) {
        const struct measurement *measure = &record->measurements[i];
        if (!measure->of && measure->figure.unit && text_same(measure->figure.unit->title, unit + 1))
            return true;
    }
    return false;
}

static void make_sizes(struct phrase_maker *m) {
    size_t nth = 0;
    for (size_t i = 0; i < m->record->attribute_count; i++) {
        const struct value *value = &m->record->attributes[i];
        if (!text_same(value->name, "size") || value->of) continue;
        if (value->sure != SURE_STATED) {
            phrase_bar(m, value->value, "the size is not certain");
            continue;
        }
        int tells = m->tells[SLOT_SIZE] - (int)nth++ * 3;
        struct buf text = buf_start(m->arena); // "No. 10" -> "No 10": titles carry no stops
        for (const char *c = value->value; *c; c++)
            if (!(*c == '.' && (c[1] == ' ' || !c[1]))) buf_byte(&text, *c);
        const char *plain = utf8_fold(m->arena, text.at);
        if (is_lost_beside(m->record, text.at)) {
            phrase_bar(m, text.at, "a length without its side, beside one that has it");
            continue;
        }
        if (!worn(m->record->family) && is_size_word(plain)) {
            phrase_bar(m, text.at, "a word of size says little; measures tell it");
            continue;
        }
        bool bare = !needs_size_word(m->record->family, plain) || !strncmp(plain, "size", 4);
        struct plan_phrase *phrase = phrase_add(m, SLOT_SIZE, "attribute size", value->span);
        spelling_add(m, phrase, bare ? text.at : arena_format(m->arena, "size %s", text.at), tells, 1);
        // "300 Pieces" would keep "Missing 2 Pieces" out, or the other way about.
        const char *end = strstr(plain, " pieces");
        if (end && !end[7] && plain[0] >= '1' && plain[0] <= '9')
            spelling_add(m, phrase, arena_format(m->arena, "%.*s piece", (int)(end - plain), plain),
                         tells - 1, 1);
    }
}

// --- measures ---

static const char *dimension_word(const char *dimension) {
    static const struct {
        const char *dimension, *word;
    } words[] = {{"height", "tall"},     {"width", "wide"},  {"length", "long"},         {"depth", "deep"},
                 {"diameter", "across"}, {"chest", "chest"}, {"drop", "drop"},           {"inseam", "inseam"},
                 {"sleeve", "sleeve"},   {"waist", "waist"}, {"circumference", "around"}};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (text_same(words[i].dimension, dimension)) return words[i].word;
    return NULL;
}

// What a part measures belongs to a title only where buyers ask for it by that name.
static bool body_measure(const char *dimension) {
    static const char *const names[] = {"chest", "drop", "inseam", "sleeve", "waist"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        if (text_same(names[i], dimension)) return true;
    return false;
}

static bool whole_thing(const struct measurement *measure) {
    return !measure->of || text_same(measure->of, "open") || body_measure(measure->dimension);
}

static const char *figure_text(struct phrase_maker *m, const struct measurement *measure) {
    const char *value = measure->range ? arena_format(m->arena, "%s-%s", say_decimal(m->arena, measure->from),
                                                      say_decimal(m->arena, measure->to))
                                       : say_decimal(m->arena, measure->figure.value);
    return arena_format(m->arena, "%s%s %s", measure->figure.about ? "about " : "", value,
                        measure->figure.unit->title);
}

static bool is_side(const char *dimension) {
    return text_same(dimension, "height") || text_same(dimension, "width") ||
           text_same(dimension, "length") || text_same(dimension, "depth");
}

// "6 ft x 10 in" is one size, "6 ft x 10 cm" none that people write.
static bool may_stand_together(const struct unit *a, const struct unit *b) {
    static const char *const groups[2][3] = {{"yd", "ft", "in"}, {"m", "cm", "mm"}};
    for (size_t g = 0; g < 2; g++) {
        int found = 0;
        for (size_t k = 0; k < 3; k++)
            found |= (text_same(a->name, groups[g][k]) ? 1 : 0) | (text_same(b->name, groups[g][k]) ? 2 : 0);
        if (found == 3) return true;
    }
    return a == b;
}

// The sides of the whole, each once and the largest ("rebate 11 x 14, outside 16 x 19"); 0 where they are no
// one size, as the heights of a tall and a short jug.
static size_t gather_sides(const struct phrase_maker *m, const struct measurement *sides[3], bool *about) {
    size_t count = 0, again = 0;
    *about = false;
    for (size_t i = 0; i < m->record->measurement_count; i++) {
        const struct measurement *measure = &m->record->measurements[i];
        if (!is_side(measure->dimension) || !whole_thing(measure) || measure->range) continue;
        if (count && !may_stand_together(sides[0]->figure.unit, measure->figure.unit)) return 0;
        size_t k = 0;
        while (k < count && !text_same(sides[k]->dimension, measure->dimension)) k++;
        if (k < count) {
            again++;
            if (measure->figure.base > sides[k]->figure.base) sides[k] = measure;
        } else if (count < 3)
            sides[count++] = measure;
        *about |= measure->figure.about;
    }
    return count < 2 || (again && again < count) ? 0 : count;
}

// Sides stand together as people write them: "16 x 12 in", "6 ft x 10 x 17 in".
static bool make_sides(struct phrase_maker *m) {
    const struct measurement *sides[3];
    bool about;
    size_t count = gather_sides(m, sides, &about);
    if (!count) return false;
    struct buf text = buf_start(m->arena);
    if (about) buf_text(&text, "about ");
    const struct measurement *longest = sides[0];
    for (size_t i = 1; i < count; i++)
        if (sides[i]->figure.base > longest->figure.base) longest = sides[i];
    // "66 x 48 in", not "66 in x 4 ft": feet only where the longest side is in feet
    bool inches = text_same(longest->figure.unit->title, "in");
    for (size_t i = 0; i < count; i++) {
        const struct figure *figure = &sides[i]->figure;
        bool turned = inches && text_same(figure->unit->title, "ft");
        const struct unit *unit = turned ? longest->figure.unit : figure->unit;
        bool last = i + 1 == count || (sides[i + 1]->figure.unit != unit &&
                                       !(inches && text_same(sides[i + 1]->figure.unit->title, "ft")));
        buf_format(&text, "%s%s", i ? " x " : "",
                   say_decimal(m->arena, turned ? 12 * figure->value : figure->value));
        if (last) buf_format(&text, " %s", unit->title);
    }
    struct plan_phrase *phrase = phrase_add(m, SLOT_MEASURE, "measurements", sides[0]->span);
    spelling_add(m, phrase, text.at, m->tells[SLOT_MEASURE] + 3, 1);
    if (phrase && phrase->count) phrase->spellings[0].turn = TURN_SIDES;
    return true;
}

static int measure_tells(const struct phrase_maker *m, const char *dimension, size_t nth) {
    const struct texts *order = &m->record->family->measures;
    for (size_t i = 0; i < order->count; i++)
        if (text_same(order->at[i], dimension))
            return m->tells[SLOT_MEASURE] - (int)(i < 3 ? i : 3) - (int)nth;
    return m->tells[SLOT_MEASURE] - 4;
}

static void make_measures(struct phrase_maker *m) {
    bool sides = make_sides(m);
    size_t nth = 0, all = 0;
    for (size_t i = 0; i < m->record->measurement_count; i++)
        all += whole_thing(&m->record->measurements[i]) &&
               !(sides && is_side(m->record->measurements[i].dimension));
    for (size_t i = 0; i < m->record->measurement_count; i++) {
        const struct measurement *measure = &m->record->measurements[i];
        if (!whole_thing(measure) || (sides && is_side(measure->dimension))) continue;
        struct plan_phrase *phrase = phrase_add(
            m, SLOT_MEASURE, arena_format(m->arena, "measurement %s", measure->dimension), measure->span);
        const char *figure = figure_text(m, measure), *word = dimension_word(measure->dimension);
        int tells = measure_tells(m, measure->dimension, nth++);
        if (word && body_measure(measure->dimension) && measure->of) {
            bool named = strstr(measure->of, word) || strchr(measure->of, ' ');
            spelling_add(m, phrase,
                         arena_format(m->arena, named ? "%s %s" : "%s %s %s", figure, measure->of, word),
                         tells, 1);
        } else {
            if (word) spelling_add(m, phrase, arena_format(m->arena, "%s %s", figure, word), tells + 1, 1);
            // A second bare figure would read as the first one's other side, and one of a waist as anything.
            if (!word || (all == 1 && !body_measure(measure->dimension)))
                spelling_add(m, phrase, figure, tells, 1);
        }
        for (size_t k = 0; phrase && k < phrase->count; k++) phrase->spellings[k].turn = TURN_MEASURE;
    }
}

// --- years ---

static void make_years(struct phrase_maker *m) {
    int from = m->record->year_from, to = m->record->year_to;
    if (!from || !to || record_years_are_era(m->record)) return; // an open bound is no date for a title
    struct plan_phrase *phrase = phrase_add(m, SLOT_AGE, "dates", (struct note_span){0, 0});
    int tells = m->tells[SLOT_AGE];
    if (from == to)
        spelling_add(m, phrase, arena_format(m->arena, "%d", from), tells, 1);
    else if (from % 10 == 0 && to == from + 9)
        spelling_add(m, phrase, arena_format(m->arena, "%ds", from), tells, 1);
    else if (to - from <= 30)
        spelling_add(m, phrase, arena_format(m->arena, "%d-%d", from, to), tells, 1);
}

void make_figures(struct phrase_maker *m) {
    make_years(m);
    make_count(m);
    make_sizes(m);
    make_measures(m);
}
