// SPDX-License-Identifier: MIT
// Phrases for what the thing is: its type and other name, maker, attributes, parts, what it fits, what comes
// with it. Only stated values become phrases; the rest is barred with its reason, so that `explain` can say
// so.
#include <stdlib.h>
#include <string.h>

#include "item/narrower.h"
#include "item/parts.h"
#include "item/several.h"
#include "item/told.h"
#include "text/order.h"
#include "title/plan.h"

// More of one kind than any title holds, so that an absurd record costs no more than a rich one; the
// description tells all.
enum { EACH_MOST = 12 };

struct attribute_slot {
    const char *attribute;
    enum slot slot;
    bool name; // letters are kept as they stand
};

static const struct attribute_slot attribute_slots[] = {
    {"productionDate", SLOT_AGE, false},
    {"brand", SLOT_BRAND, true},
    {"author", SLOT_BRAND, true},
    {"byArtist", SLOT_BRAND, true},
    {"name", SLOT_NAME, true},
    {"model", SLOT_MODEL, true},
    {"mpn", SLOT_MODEL, true},
    {"technique", SLOT_TECHNIQUE, false},
    {"material", SLOT_MATERIAL, false},
    {"color", SLOT_COLOR, false},
    {"pattern", SLOT_PATTERN, false},
    {"theme", SLOT_THEME, false},
    {"shape", SLOT_SHAPE, false},
    {"style", SLOT_STYLE, false},
    {"finish", SLOT_FINISH, false},
    {"audience", SLOT_AUDIENCE, false},
    {"itemCondition", SLOT_CONDITION, false},
};
enum { ATTRIBUTE_SLOTS = sizeof attribute_slots / sizeof *attribute_slots };

// Nouns that stand for many pieces already; their count is told in pieces.
bool noun_is_collective(const char *noun) {
    static const char *const heads[] = {"set",        "flatware",   "jewelry",    "jewellery", "service",
                                        "cutlery",    "kit",        "dominoes",   "hardware",  "glassware",
                                        "collection", "assortment", "silverware", "yarn",      "lights",
                                        "dinnerware", "crockery",   "checkers",   "chessmen",  "music"};
    const char *head = strrchr(noun, ' ');
    head = head ? head + 1 : noun;
    for (size_t i = 0; i < sizeof heads / sizeof *heads; i++)
        if (text_same(head, heads[i])) return true;
    return false;
}

static const char *noun_for_count(struct phrase_maker *m, const char *noun) {
    if (noun_is_collective(noun)) return noun;
    if (m->thing && m->thing->pair) return say_plural(m->arena, noun);
    if (!record_is_several(m->arena, m->record)) return noun;
    if (m->thing && m->thing->plural && text_same(m->thing->noun, noun)) return m->thing->plural;
    return say_plural(m->arena, noun);
}

static bool unsure(struct phrase_maker *m, const struct value *value) {
    if (value->sure == SURE_STATED) return false;
    phrase_bar(m, value->value, value->sure == SURE_LIKELY ? "the seller is not certain" : "it is a guess");
    return true;
}

// "Photos Photographs" would say one word twice.
static bool same_word(const char *a, const char *b) {
    size_t n = strlen(a), m = strlen(b);
    return !strncmp(a, b, n < m ? n : m);
}

// A guess is told as one.
static const char *hedged_type(struct phrase_maker *m) {
    const struct value *type = &m->record->type;
    if (!type->value || strstr(type->value, " or ")) return say_item_of(m->arena, m->record->family->print);
    return arena_format(m->arena, "%s %s", type->sure == SURE_LIKELY ? "probable" : "possible", type->value);
}

static void make_type(struct phrase_maker *m) {
    const struct record *r = m->record;
    bool stated = r->type.value && r->type.sure == SURE_STATED;
    if (r->type.value && !stated) unsure(m, &r->type);
    struct plan_phrase *phrase = phrase_add(m, SLOT_TYPE, stated ? "type" : "family", r->type.span);
    phrase->must = true;
    spelling_add(m, phrase, noun_for_count(m, stated ? r->type.value : hedged_type(m)), m->tells[SLOT_TYPE],
                 0);
    // "Reel to reel recorder" would say a word twice: another name of it.
    for (size_t i = 0; stated && m->thing && i < m->thing->also.count && !phrase->count; i++)
        spelling_add(m, phrase, noun_for_count(m, m->thing->also.at[i]), m->tells[SLOT_TYPE], 0);
    // A type that needs evidence it does not have leaves the plain word of its family.
    if (!phrase->count)
        spelling_add(m, phrase, say_item_of(m->arena, r->family->print), m->tells[SLOT_TYPE], 0);
    if (!stated) return;
    struct plan_phrase *synonym = phrase_add(m, SLOT_SYNONYM, "type, others", r->type.span);
    for (size_t i = 0; i < r->others.count && synonym; i++)
        if (!same_word(r->type.value, r->others.at[i]))
            spelling_add(m, synonym, noun_for_count(m, r->others.at[i]), m->tells[SLOT_SYNONYM], 2);
    for (size_t i = 0; m->thing && i < m->thing->also.count; i++)
        if (!same_word(r->type.value, m->thing->also.at[i]))
            spelling_add(m, synonym, noun_for_count(m, m->thing->also.at[i]), m->tells[SLOT_SYNONYM], 12);
}

static bool has_capital(const char *text) {
    for (; *text; text++)
        if (*text >= 'A' && *text <= 'Z') return true;
    return false;
}

// "Wooden train": the word that the seller has is the one that buyers type.
static bool says_wooden(struct phrase_maker *m, const struct value *value) {
    static const char word[] = "wooden";
    const char *notes = m->record->notes;
    if (!text_same(value->name, "material") || !text_same(value->value, "wood") || !notes ||
        value->span.to > strlen(notes) || value->span.to - value->span.from != sizeof word - 1)
        return false;
    return !strncmp(utf8_fold(m->arena, arena_copy(m->arena, notes + value->span.from, sizeof word - 1)),
                    word, sizeof word - 1);
}

static void add_value(struct phrase_maker *m, const struct attribute_slot *to, const struct value *value,
                      size_t nth) {
    if (nth >= EACH_MOST) {
        phrase_bar(m, value->value, "a title has no room for so many of its kind");
        return;
    }
    const char *because = arena_format(m->arena, "attribute %s", value->name);
    struct plan_phrase *phrase = phrase_add(m, to->slot, because, value->span);
    int tells = m->tells[to->slot] - (int)nth * 2;
    // A named pattern leads ("Meadow Gate Plate"); a described one follows the noun ("Pitcher Vertical
    // Panels").
    if (phrase && to->slot == SLOT_PATTERN && strchr(value->value, ' ') && !has_capital(value->value))
        phrase->after_type = true;
    // "Leather School Satchel", "Oak Swivel Chair"; where it may stand is told behind the rest.
    bool door = text_same(value->value, "outdoor") || text_same(value->value, "indoor");
    if (phrase && to->slot == SLOT_STYLE && !strchr(value->value, ' ') && !door) phrase->before_type = true;
    if (says_wooden(m, value)) spelling_add(m, phrase, "wooden", tells, 1);
    bool numbered = !strncmp(value->value, "no. ", 4);
    if (numbered)
        spelling_keep(m, phrase, arena_format(m->arena, "No. %s", value->value + 4), tells, 1);
    else if (to->name)
        spelling_keep(m, phrase, value->value, tells, 1);
    else
        spelling_add(m, phrase, value->value, tells, 1);
}

// Two and more colors of one thing are one phrase, so that they stand together and are joined as people join
// them.
static void make_colors(struct phrase_maker *m) {
    const char *colors[4];
    size_t count = 0;
    struct note_span span = {0, 0};
    for (size_t i = 0; i < m->record->attribute_count && count < 4; i++) {
        const struct value *value = &m->record->attributes[i];
        if (!text_same(value->name, "color") || value->of || unsure(m, value)) continue;
        if (!count) span = value->span;
        colors[count++] = value->value;
    }
    if (!count) return;
    struct plan_phrase *phrase = phrase_add(m, SLOT_COLOR, "attribute color", span);
    int tells = m->tells[SLOT_COLOR];
    if (count == 2)
        spelling_add(m, phrase, arena_format(m->arena, "%s and %s", colors[0], colors[1]), tells + 4, 1);
    struct buf all = buf_start(m->arena);
    for (size_t i = 0; i < count; i++) buf_format(&all, "%s%s", i ? " " : "", colors[i]);
    spelling_add(m, phrase, all.at, tells + (count > 1 ? 3 : 0), 1);
    spelling_add(m, phrase, colors[0], tells, 1);
}

// "Ivy border": what is depicted and the form it has, one behind the other in the notes, are said together.
static bool stand_together(const struct value *theme, const struct value *pattern) {
    return text_same(theme->name, "theme") && text_same(pattern->name, "pattern") &&
           theme->sure == SURE_STATED && !theme->of && theme->span.to &&
           theme->span.to + 1 == pattern->span.from;
}

static struct value with_theme(struct phrase_maker *m, const struct value *pattern) {
    struct value out = *pattern;
    for (size_t i = 0; i < m->record->attribute_count; i++)
        if (stand_together(&m->record->attributes[i], pattern)) {
            out.value = arena_format(m->arena, "%s %s", m->record->attributes[i].value, pattern->value);
            out.span.from = m->record->attributes[i].span.from;
        }
    return out;
}

static bool is_in_pattern(const struct record *record, const struct value *theme) {
    for (size_t i = 0; i < record->attribute_count; i++) {
        const struct value *pattern = &record->attributes[i];
        if (pattern->sure == SURE_STATED && !pattern->of && stand_together(theme, pattern)) return true;
    }
    return false;
}

static void make_attributes(struct phrase_maker *m) {
    make_colors(m);
    for (size_t s = 0; s < ATTRIBUTE_SLOTS; s++) {
        if (attribute_slots[s].slot == SLOT_COLOR) continue;
        size_t nth = 0;
        for (size_t i = 0; i < m->record->attribute_count; i++) {
            const struct value *value = &m->record->attributes[i];
            if (!text_same(value->name, attribute_slots[s].attribute) || value->of || unsure(m, value))
                continue;
            if (value_said_narrower(m->record, value)) {
                phrase_bar(m, value->value, "another word says it, and more closely");
                continue;
            }
            if (is_in_pattern(m->record, value)) continue;
            const struct value whole = with_theme(m, value);
            add_value(m, &attribute_slots[s], &whole, nth++);
        }
    }
}

// --- a part with its own color, material or finish: one bound phrase ---

// What several are kept in together is one: "six forks in a leather case".
static bool is_container(const char *part) {
    static const char *const words[] = {"box",   "case", "roll",  "bag",  "tin",
                                        "chest", "rack", "crate", "pouch"};
    const char *last = strrchr(part, ' ');
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (text_same(last ? last + 1 : part, words[i])) return true;
    return false;
}

static const char *part_noun(struct phrase_maker *m, const char *part) {
    const char *type = m->record->type.value ? m->record->type.value : "";
    return m->record->count > 1 && !is_container(part) && !noun_is_collective(type)
               ? say_plural(m->arena, part)
               : part;
}

// "Ring on Bottom": a feature stands on a side of the thing, where a band or a lid has it ("Stretch Band").
static bool is_side_of(const char *part) {
    static const char *const sides[] = {"bottom", "base",  "top",    "side",
                                        "back",   "front", "inside", "outside"};
    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++)
        if (text_same(part, sides[i])) return true;
    return false;
}

static bool has_style(const struct part_words *part) {
    for (size_t i = 0; i < part->count; i++)
        if (text_same(part->words[i]->name, "style")) return true;
    return false;
}

static void make_part(struct phrase_maker *m, const struct part_words *part) {
    const char *because = arena_format(m->arena, "attributes of the %s", part->part);
    struct plan_phrase *phrase = phrase_add(m, SLOT_PARTS, because, part->span);
    int tells = m->tells[SLOT_PARTS];
    if (part->count == 1 && is_side_of(part->part) && has_style(part)) {
        const char *place = say_place_title(m->arena, part->part);
        spelling_add(m, phrase, arena_format(m->arena, "%s %s", part->words[0]->value, place), tells, 1);
        return;
    }
    const char *noun = part_noun(m, part->part);
    struct buf all = buf_start(m->arena);
    for (size_t i = 0; i < part->count; i++) buf_format(&all, "%s ", part->words[i]->value);
    buf_text(&all, noun);
    spelling_add(m, phrase, all.at, tells + (int)part->count, 1);
    for (size_t i = 0; part->count > 1 && i < part->count; i++)
        spelling_add(m, phrase, arena_format(m->arena, "%s %s", part->words[i]->value, noun), tells, 1);
}

static void make_parts(struct phrase_maker *m) {
    size_t at = 0, made = 0;
    for (struct part_words part; made < EACH_MOST && parts_next(m->record, &at, &part); made++)
        make_part(m, &part);
}

// --- marks ---

static bool only_digits(const char *text) {
    for (; *text; text++)
        if (*text < '0' || *text > '9') return false;
    return true;
}

// "Dated 1931": a mark that is the date, which the title has already.
static bool is_year_told(const struct record *record, const char *mark) {
    return only_digits(mark) && record->year_from == record->year_to && record->year_from > 0 &&
           atoi(mark) == record->year_from && !record_years_are_era(record);
}

// "Harkby est. 1902": since when the firm is says nothing of the thing, and would be read as its age.
static const char *without_founding(struct arena *arena, const char *text) {
    static const char *const cues[] = {" est. ", " est ", " established ", " since ", " founded "};
    const char *low = utf8_fold(arena, text);
    for (size_t i = 0; strlen(low) == strlen(text) && i < sizeof cues / sizeof *cues; i++) {
        const char *found = strstr(low, cues[i]);
        const char *year = found ? found + strlen(cues[i]) : NULL;
        if (!found || found == low || strspn(year, "0123456789") != 4) continue;
        size_t size = (size_t)(found - low);
        while (size > 0 && text[size - 1] == ',') size--;
        return arena_copy(arena, text, size);
    }
    return text;
}

// "Tag says pure alpaca", and the seller does not believe it.
static bool says_doubted(const struct phrase_maker *m, const char *text) {
    const char *low = utf8_fold(m->arena, text);
    for (size_t i = 0; i < m->record->attribute_count; i++) {
        const struct value *value = &m->record->attributes[i];
        bool told = !strcmp(value->name, "material") || !strcmp(value->name, "brand");
        if (told && value->sure != SURE_STATED && strstr(low, utf8_fold(m->arena, value->value))) return true;
    }
    return false;
}

// "Stamped size 9" of a thing of size 9.
static bool is_size_told(struct phrase_maker *m, const char *mark) {
    const struct value *size = record_stated(m->record, "size");
    const char *low = utf8_fold(m->arena, mark);
    if (!strncmp(low, "size ", 5)) low += 5;
    return size && text_same(low, size->value);
}

// "14K" of a ring of 14k gold.
static bool is_fineness_told(struct phrase_maker *m, const char *mark) {
    const char *low = utf8_fold(m->arena, mark);
    size_t size = strlen(low);
    for (size_t i = 0; i < m->record->attribute_count; i++) {
        const struct value *value = &m->record->attributes[i];
        if (!value->of && value->sure == SURE_STATED && text_same(value->name, "material") &&
            !strncmp(utf8_fold(m->arena, value->value), low, size) && text_same(value->value + size, " gold"))
            return true;
    }
    return false;
}

static const char *why_no_title(struct phrase_maker *m, const char *mark) {
    if (strlen(mark) > 40) return "a long inscription is quoted in the description";
    if (says_doubted(m, mark)) return "the mark says what is not certain";
    if (is_year_told(m->record, mark)) return "the same year stands in the title as the date";
    if (told_is_owners(m->record, mark)) return "initials of an owner are told in the disclosure";
    if (is_fineness_told(m, mark)) return "the same fineness stands in the title as the material";
    return is_size_told(m, mark) ? "the size stands in the title as the size" : NULL;
}

static void make_marks(struct phrase_maker *m) {
    for (size_t i = 0; i < m->record->mark_count && i < EACH_MOST; i++) {
        const struct mark *mark = &m->record->marks[i];
        const char *why = why_no_title(m, mark->text);
        if (why) {
            phrase_bar(m, mark->text, why);
            continue;
        }
        struct plan_phrase *phrase = phrase_add(m, SLOT_MARK, "marks", (struct note_span){0, 0});
        int tells = m->tells[SLOT_MARK] - (int)i * 2;
        bool lower = true;
        for (const char *c = mark->text; *c; c++) lower &= !(*c >= 'A' && *c <= 'Z') || c != mark->text;
        const char *text = without_founding(m->arena, mark->text);
        if (lower) text = say_title_case(m->arena, text);
        // A bare number could be a size or a price, a letter anything: it is told to be a mark, behind the
        // type.
        bool told = only_digits(mark->text) || lower || strlen(mark->text) <= 2;
        if (phrase) phrase->after_type = told;
        spelling_keep(m, phrase, told ? arena_format(m->arena, "Marked %s", text) : text, tells, 1);
    }
}

// --- fits and includes ---

static void make_fits(struct phrase_maker *m) {
    bool told = false;
    for (size_t i = 0; i < m->record->fit_count && i < EACH_MOST; i++) {
        const struct fit *fit = &m->record->fits[i];
        const char *brand = fit->brand ? fit->brand : "", *model = fit->model ? fit->model : "";
        const char *both = arena_format(m->arena, "%s%s%s", brand, *brand && *model ? " " : "", model);
        if (fit->sure != SURE_STATED) {
            phrase_bar(m, both, "what it fits is not certain");
            continue;
        }
        if (told) {
            phrase_bar(m, both, "one machine stands in the title, the description names all");
            continue;
        }
        told = true;
        struct plan_phrase *phrase = phrase_add(m, SLOT_FITS, "fits", fit->span);
        int tells = m->tells[SLOT_FITS];
        // "for" keeps the other maker's name from reading as this part's own.
        spelling_keep(m, phrase, arena_format(m->arena, "for %s", both), tells, 1);
        if (*model && *brand) spelling_keep(m, phrase, arena_format(m->arena, "for %s", model), tells - 6, 1);
        if (phrase && text_same(m->record->family->rule.id, "parts")) phrase->must = true;
    }
}

static const char *included_words(struct phrase_maker *m, size_t nth) {
    const struct item_included *included = &m->record->includes[nth];
    if (included->count < 2) return included->what;
    return arena_format(m->arena, "%d %s", included->count, say_plural(m->arena, included->what));
}

static void make_includes(struct phrase_maker *m) {
    const struct record *r = m->record;
    if (!r->include_count) return;
    struct plan_phrase *phrase = phrase_add(m, SLOT_INCLUDES, "includes", (struct note_span){0, 0});
    int tells = m->tells[SLOT_INCLUDES];
    if (r->include_count > 1)
        spelling_add(m, phrase,
                     arena_format(m->arena, "with %s and %s", included_words(m, 0), included_words(m, 1)),
                     tells + 2, 1);
    for (size_t i = 0; i < r->include_count && i < 3; i++)
        spelling_add(m, phrase, arena_format(m->arena, "with %s", included_words(m, i)), tells - (int)i, 1);
}

void make_facts(struct phrase_maker *m) {
    make_type(m);
    make_attributes(m);
    make_parts(m);
    make_marks(m);
    make_fits(m);
    make_includes(m);
}
