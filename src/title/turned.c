// SPDX-License-Identifier: MIT
// A careful seller says a small word once. Where the chosen wordings say one again, the later of them takes
// its other form. Nothing is lost by that: the place, the part and the figure stay, only their small word
// goes.
#include "title/turned.h"

#include <string.h>

#include "say/say.h"
#include "title/plan.h"

static const char at_place[] = " {at}";

static size_t word_end(const char *text) {
    return strcspn(text, " ");
}

static bool is_one_of(const char *const *words, size_t count, const char *word, size_t size) {
    for (size_t i = 0; i < count; i++)
        if (strlen(words[i]) == size && !memcmp(words[i], word, size)) return true;
    return false;
}
#define AMONG(words, word, size) is_one_of(words, sizeof(words) / sizeof *(words), word, size)

// --- what a rule's words are ---

// "Corner Open Seam" is no English: what opens with a quality keeps its place behind it.
static bool is_quality(const char *word, size_t size) {
    static const char *const words[] = {"bad",  "bent",   "broken",  "dry",    "dull",    "fragile", "heavy",
                                        "lost", "loose",  "low",     "melted", "missing", "open",    "patchy",
                                        "poor", "short",  "slack",   "small",  "split",   "sticky",  "stiff",
                                        "soft", "stuck",  "thin",    "torn",   "uneven",  "weak",    "worn",
                                        "wet",  "cloudy", "brittle", "greasy", "rough",   "oily",    "out"};
    return AMONG(words, word, size) || (size > 4 && !memcmp(word + size - 2, "ed", 2)) ||
           (word[size] && size > 5 && !memcmp(word + size - 3, "ing", 3)); // but "writing" by itself
}

static const char *low(char out[static 40], const char *word) {
    size_t n = 0;
    for (; word[n] && n + 1 < 40; n++)
        out[n] = (char)(word[n] >= 'A' && word[n] <= 'Z' ? word[n] | 0x20 : word[n]);
    out[n] = '\0';
    return out;
}

static enum word_turn way_of_noun(const char *noun) {
    char plain[40];
    low(plain, noun);
    size_t first = word_end(plain);
    if (strstr(plain, " of ") || strstr(plain, " or ") || strstr(plain, " and ") || strchr(plain, '\''))
        return TURN_PLACE;
    if (is_quality(plain, first)) return plain[first] ? TURN_PLACE : TURN_QUALITY;
    return TURN_NOUN;
}

enum word_turn turned_way(const char *words, const char *noun) {
    static const char *const openings[] = {"{sev} ", "{adverb} "};
    size_t size = strlen(words), tail = sizeof at_place - 1;
    if (size <= tail || strcmp(words + size - tail, at_place) != 0) return TURN_NONE;
    for (size_t i = 0; i < sizeof openings / sizeof *openings; i++)
        if (!strncmp(words, openings[i], strlen(openings[i]))) words += strlen(openings[i]);
    size = strlen(words) - tail;
    if (size == 6 && !memcmp(words, "{noun}", 6)) return noun ? way_of_noun(noun) : TURN_NONE;
    if (size == 11 && !memcmp(words, "{adjective}", 11)) return TURN_QUALITY;
    if (memchr(words, '{', size)) return TURN_PLACE;
    char text[40];
    if (size >= sizeof text) return TURN_PLACE;
    memcpy(text, words, size);
    text[size] = '\0';
    return way_of_noun(text);
}

// --- the other form ---

// Where " on ", " in " or " at " stands; `*after` is what follows it.
static const char *place_of(const char *text, const char **after) {
    static const char *const small[] = {" on ", " in ", " at "};
    const char *first = NULL;
    for (size_t i = 0; i < sizeof small / sizeof *small; i++) {
        const char *found = strstr(text, small[i]);
        if (found && (!first || found < first)) first = found;
    }
    *after = first ? first + 4 : NULL;
    return first;
}

static bool stands_before_nouns(const char *place) {
    static const char *const never[] = {"Both",  "All",    "Each", "Two",   "Three", "Four",
                                        "Five",  "Some",   "Left", "Right", "Every", "Several",
                                        "Where", "Either", "Many", "Most"};
    size_t words = 1;
    for (const char *c = place; *c; c++) {
        if (*c == ' ') words++;
        if (*c == ',' || (*c >= '0' && *c <= '9') || (*c == ' ' && c[1] >= 'a' && c[1] <= 'z')) return false;
    }
    return words <= 2 && !AMONG(never, place, strlen(place)) &&
           (words == 1 || !AMONG(never, place, word_end(place)) || !strncmp(place, "Left ", 5) ||
            !strncmp(place, "Right ", 6));
}

// "Neck of Flask": "Flask Neck". NULL where it is more than two words joined by "of".
static const char *of_turned(struct arena *arena, const char *place) {
    const char *of = strstr(place, " of ");
    if (!of) return place;
    if (memchr(place, ' ', (size_t)(of - place)) || strchr(of + 4, ' ')) return NULL;
    return arena_format(arena, "%s %.*s", of + 4, (int)(of - place), place);
}

static const char *before_noun(struct arena *arena, const char *place) {
    if (!strncmp(place, "One ", 4)) place += 4;
    place = of_turned(arena, place);
    return place && stands_before_nouns(place) ? place : NULL;
}

static const char *noun_form(struct arena *arena, const char *text, size_t lead) {
    const char *after, *at = place_of(text, &after);
    const char *place = at ? before_noun(arena, after) : NULL;
    if (!place) return NULL;
    const char *noun = text;
    for (size_t i = 0; i < lead && noun < at; i++) noun += word_end(noun) + 1;
    if (noun >= at) return NULL;
    size_t size = strlen(place);
    if (say_is_plural(place) && place[size - 1] != 's') return NULL; // "Rust on Teeth"
    if (say_is_plural(place)) place = say_title_case(arena, say_singular(arena, utf8_fold(arena, place)));
    return arena_format(arena, "%.*s%s %.*s", (int)(noun - text), text, place, (int)(at - noun), noun);
}

static const char *quality_form(struct arena *arena, const char *text) {
    const char *after, *at = place_of(text, &after);
    const char *place = at ? before_noun(arena, after) : NULL;
    return place ? arena_format(arena, "%.*s %s", (int)(at - text), text, place) : NULL;
}

// Places that are points of a thing, at which something may be.
static const char *place_form(struct arena *arena, const char *text) {
    static const char *const points[] = {"Back",   "Base",  "Bottom", "Corner", "Corners",  "Edge", "Edges",
                                         "End",    "Ends",  "Foot",   "Front",  "Heel",     "Hem",  "Lip",
                                         "Neck",   "Rim",   "Seam",   "Seams",  "Shoulder", "Side", "Sides",
                                         "Spine",  "Tip",   "Toe",    "Toes",   "Heels",    "Top",  "Waist",
                                         "Collar", "Cuffs", "Knees",  "Elbows", "Hinge"};
    const char *after, *at = place_of(text, &after), *last = at ? strrchr(at, ' ') + 1 : NULL;
    if (!at || strncmp(at, " on ", 4) != 0 || !AMONG(points, last, strlen(last))) return NULL;
    return arena_format(arena, "%.*s at %s", (int)(at - text), text, after);
}

// The unit behind the figure goes where a word for the side follows it.
static const char *measure_form(struct arena *arena, const char *text) {
    size_t figure = !strncmp(text, "About ", 6) ? 6 : 0, end = figure + word_end(text + figure);
    if (!text[end]) return NULL;
    size_t unit = end + 1 + word_end(text + end + 1);
    return text[unit] ? arena_format(arena, "%.*s%s", (int)end, text, text + unit) : NULL;
}

const char *turned_form(struct arena *arena, const struct plan_spelling *spelling) {
    const char *text = spelling->text;
    switch (spelling->turn) {
    case TURN_NOUN:
        return noun_form(arena, text, spelling->lead);
    case TURN_QUALITY:
        return quality_form(arena, text);
    case TURN_PLACE:
        return place_form(arena, text);
    case TURN_MEASURE:
        return measure_form(arena, text);
    case TURN_ABSENCE:
        return strncmp(text, "No ", 3) ? NULL : arena_format(arena, "or %s", text + 3);
    default:
        return NULL;
    }
}

// --- a title ---

enum { SMALL_AND = 1, SMALL_OR = 2 };

// The small words of a text, a bit each.
static unsigned small_words(const char *text) {
    static const char *const words[] = {"and", "or", "on", "in", "at", "no", "of", "with", "for", "from"};
    unsigned found = 0;
    char plain[40];
    for (size_t size; *text; text += size + (text[size] == ' ')) {
        size = word_end(text);
        if (size < 2 || size > 4) continue;
        memcpy(plain, text, size);
        plain[0] = (char)(plain[0] | 0x20);
        for (size_t i = 0; i < sizeof words / sizeof *words; i++)
            if (strlen(words[i]) == size && !memcmp(words[i], plain, size)) found |= 1u << i;
    }
    return found;
}

static const char *unit_of(const char *text, bool sides, size_t *size) {
    const char *last = strrchr(text, ' ');
    if (sides && last) {
        *size = strlen(last + 1);
        return last + 1;
    }
    const char *figure = !strncmp(text, "About ", 6) ? text + 6 : text, *unit = figure + word_end(figure);
    if (*unit) unit++;
    *size = word_end(unit);
    return unit;
}

static bool is_figure(const struct plan_spelling *s) {
    return s && (s->turn == TURN_MEASURE || s->turn == TURN_SIDES);
}

// The unit once, behind the first figure: "7 in Tall 5 Across". Another unit says itself.
static void turn_measures(struct arena *arena, const struct plan_spelling *const *chosen, const char **texts,
                          size_t count) {
    const char *first = NULL;
    size_t first_size = 0;
    for (size_t i = 0; i < count; i++) {
        if (!is_figure(chosen[i])) continue;
        size_t size;
        const char *unit = unit_of(texts[i], chosen[i]->turn == TURN_SIDES, &size);
        if (!first) {
            // "11 in 12 Across" would be read as one figure.
            if (chosen[i]->turn == TURN_MEASURE && !unit[size]) continue;
            first = unit;
            first_size = size;
        } else if (size == first_size && !memcmp(unit, first, size)) {
            const char *turned = turned_form(arena, chosen[i]);
            if (turned) texts[i] = turned;
        } else { // "1 Gal 7 in Tall 5 Across"
            first = unit;
            first_size = size;
        }
    }
}

static bool is_absence(const struct plan_spelling *s) {
    return s && s->turn == TURN_ABSENCE;
}

// "&" for a second "and"; searches and readers take the one for the other.
static const char *and_sign(struct arena *arena, const char *text) {
    const char *and = strstr(text, " and ");
    return and? arena_format(arena, "%.*s & %s", (int)(and-text), text, and+5) : NULL;
}

static bool repeats(struct arena *arena, const char **texts, size_t count) {
    struct buf all = buf_start(arena);
    for (size_t i = 0; i < count; i++) buf_format(&all, "%s%s", i ? " " : "", texts[i]);
    return words_repeat(arena, all.at);
}

// A place in its singular may be a word that the title has already.
static const char *turn_one(struct arena *arena, const struct plan_spelling *spelling, const char **texts,
                            size_t count, size_t i, unsigned seen) {
    const char *plain = texts[i];
    bool before = repeats(arena, texts, count),
         noun = spelling->turn == TURN_NOUN || spelling->turn == TURN_QUALITY;
    for (int k = 0; k < (noun ? 2 : 1); k++) { // else as of a place: "Scuffing at Both Toes"
        const char *turned = k ? place_form(arena, spelling->text) : turned_form(arena, spelling);
        if (!turned || (small_words(turned) & seen)) continue;
        texts[i] = turned;
        bool lawful = before || !repeats(arena, texts, count);
        texts[i] = plain;
        if (lawful) return turned;
    }
    return NULL;
}

static unsigned small_words_of(const char **texts, size_t count, size_t but) {
    unsigned all = 0;
    for (size_t i = 0; i < count; i++)
        if (i != but) all |= small_words(texts[i]);
    return all;
}

static bool opens_with(const char *text, const char *word) {
    size_t size = strlen(word);
    return !strncmp(text, word, size) && text[size];
}

// "Bridge or String": "Bridge, String".
static const char *listed(struct arena *arena, const char *text) {
    for (const char *at; (at = strstr(text, " or ")) != NULL;)
        text = arena_format(arena, "%.*s, %s", (int)(at - text), text, at + 4);
    return text;
}

// What is not there, of phrases that stand together: "No Knob, Strap or Key".
static void turn_absences(struct arena *arena, const struct plan_spelling *const *chosen, const char **texts,
                          size_t count) {
    for (size_t i = 0, end; i + 1 < count; i = end) {
        for (end = i; end < count && is_absence(chosen[end]) && opens_with(texts[end], "No ");) end++;
        if (end == i) end++;
        if (end < i + 2) continue;
        bool other = false;
        for (size_t k = 0; k < count; k++) other |= (k < i || k >= end) && (small_words(texts[k]) & SMALL_OR);
        const char *last = texts[end - 1] + 3;
        bool joined = !other && strstr(last, " or ") != NULL;
        for (size_t k = i; k + 1 < end; k++)
            texts[k] = arena_format(arena, "%s%s", listed(arena, texts[k] + (k > i ? 3 : 0)),
                                    k + 2 < end || joined ? "," : "");
        // "No Cap & Shutter", where an "or" stands elsewhere
        texts[end - 1] =
            joined ? last : arena_format(arena, "%s %s", other ? "&" : "or", listed(arena, last));
    }
}

// "Marked 204 & 205".
static void turn_marked(struct arena *arena, const char **texts, size_t count) {
    static const char word[] = "Marked ";
    size_t last = count;
    for (size_t i = 0; i < count; i++) {
        if (!opens_with(texts[i], word)) continue;
        const char *mark = texts[i] + sizeof word - 1;
        if (last < count) texts[i] = i == last + 1 ? arena_format(arena, "& %s", mark) : mark;
        last = i;
    }
}

// "Not Working or Fully Tested"; but what does not work is not put behind an "or", which would soften it:
// "Not Tested for Time Nonworking".
static void turn_nots(struct arena *arena, const struct plan_spelling *const *chosen, const char **texts,
                      size_t count) {
    bool seen = false;
    for (size_t i = 0; i < count; i++) {
        if (!chosen[i]) continue;
        bool begins = opens_with(texts[i], "Not "), has = begins || strstr(texts[i], " Not ") != NULL;
        if (seen && begins && !strcmp(texts[i] + 4, "Working"))
            texts[i] = "Nonworking";
        else if (begins && i > 0 && chosen[i - 1] && opens_with(texts[i - 1], "Not "))
            texts[i] = arena_format(arena, "or %s", texts[i] + 4);
        seen |= has;
    }
}

static bool names_in(const char *name) {
    for (const char *at = name; *at; at += *at == ' ') {
        size_t size = word_end(at);
        if (size == 2 && (at[0] | 0x20) == 'i' && (at[1] | 0x20) == 'n') return true;
        at += size;
    }
    return false;
}

// Beside "MADE IN USA", and beside a place whose "in" no other form takes away, the figure has the sign for
// its inches.
static void turn_inches(struct arena *arena, const struct plan_spelling *const *chosen, const char **texts,
                        size_t count, bool places) {
    bool named = false;
    for (size_t i = 0; i < count; i++)
        named |= !(places ? is_figure(chosen[i]) : !!chosen[i]) && names_in(texts[i]);
    if (!named) return;
    for (size_t i = 0; i < count; i++) {
        const char *in = is_figure(chosen[i]) ? strstr(texts[i], " in") : NULL;
        if (in && (!in[3] || in[3] == ' '))
            texts[i] = arena_format(arena, "%.*s\"%s", (int)(in - texts[i]), texts[i], in + 3);
    }
}

// The earlier ones are turned: "Rim Chip Stain on Base" and not "Chip on Rim Base Stain".
static void turn_rest(struct arena *arena, const struct plan_spelling *const *chosen, const char **texts,
                      size_t count) {
    for (size_t i = 0; i < count; i++) {
        if (!chosen[i] || is_figure(chosen[i]) || chosen[i]->turn == TURN_ABSENCE) continue;
        unsigned others = small_words_of(texts, count, i);
        if (!(small_words(texts[i]) & others)) continue;
        const char *turned = turn_one(arena, chosen[i], texts, count, i, others);
        if (!turned && (others & SMALL_AND)) turned = and_sign(arena, texts[i]);
        if (turned) texts[i] = turned;
    }
}

void turned_title(struct arena *arena, const struct plan_spelling *const *chosen, const char **texts,
                  size_t count) {
    unsigned all = 0, twice = 0;
    for (size_t i = 0; i < count; i++) {
        unsigned own = small_words(texts[i]);
        twice |= all & own;
        all |= own;
    }
    turn_measures(arena, chosen, texts, count);
    turn_marked(arena, texts, count);
    turn_nots(arena, chosen, texts, count);
    turn_inches(arena, chosen, texts, count, false);
    if (!twice) return;
    turn_absences(arena, chosen, texts, count);
    turn_rest(arena, chosen, texts, count);
    turn_inches(arena, chosen, texts, count, true);
}

// A roll-up stands at the first phrase that it covers.
size_t turned_texts(struct arena *arena, const struct title_plan *plan, const struct title_choice *choice,
                    const char ***texts, size_t **phrases) {
    bool done[ROLLUP_COUNT] = {false};
    size_t count = 0;
    *texts = arena_array(arena, plan->count + 1, sizeof **texts);
    *phrases = arena_array(arena, plan->count + 1, sizeof **phrases);
    for (size_t i = 0; i < plan->count; i++) {
        int spelling = choice->spelling[i];
        enum rollup rollup = plan->phrases[i].rollup;
        if (spelling == -1 || (spelling == -2 && done[rollup])) continue;
        if (spelling == -2) done[rollup] = true;
        (*phrases)[count] = i;
        (*texts)[count++] =
            spelling == -2 ? plan->rollup_text[rollup] : plan->phrases[i].spellings[spelling].text;
    }
    return count;
}

size_t turned_chosen(struct arena *arena, const struct title_plan *plan, const struct title_choice *choice,
                     const char ***texts, size_t **phrases) {
    size_t count = turned_texts(arena, plan, choice, texts, phrases);
    const struct plan_spelling **chosen = arena_array(arena, count + 1, sizeof *chosen);
    for (size_t k = 0; k < count; k++) {
        const struct plan_phrase *phrase = &plan->phrases[(*phrases)[k]];
        int spelling = choice->spelling[(*phrases)[k]];
        chosen[k] = spelling >= 0 && !phrase->name ? &phrase->spellings[spelling] : NULL;
    }
    turned_title(arena, chosen, *texts, count);
    return count;
}

static const char *joined(struct arena *arena, const char *const *texts, size_t count) {
    struct buf out = buf_start(arena);
    for (size_t i = 0; i < count; i++) buf_format(&out, "%s%s", i ? " " : "", texts[i]);
    return say_sentence_case(arena, out.at);
}

const char *turned_back(struct arena *arena, const struct title_plan *plan, const struct title_choice *choice,
                        const char *text) {
    const char **texts;
    size_t *phrases;
    if (!choice->feasible) return text;
    size_t count = turned_chosen(arena, plan, choice, &texts, &phrases);
    if (strcmp(joined(arena, texts, count), text) != 0) return text;
    count = turned_texts(arena, plan, choice, &texts, &phrases);
    return joined(arena, texts, count);
}
