// SPDX-License-Identifier: MIT
// Which phrases of a plan a text tells. Readings exclude each other as phrases of a title do, so the choice
// among them is a title problem too, whose words are the places in the text.
#include <string.h>

#include "title/given.h"

enum {
    PLACES_MOST = 12,       // of one spelling; no title says one thing more often
    TELLS_MOST = 200 * 1000 // keeps the weights of the steps below within 32 bits
};

struct given_place {
    size_t phrase, spelling; // phrase is that of the plan, or the count of them and more for a roll-up
    size_t at, count;        // words of the text
    bool exact;
};

struct reader {
    struct arena *arena;
    const struct title_plan *plan;
    struct given_reading *reading;
    struct given_place *places;
    size_t count, room;
    int32_t token; // what one word accounted for weighs: more than all that can be earned together
};

// --- words ---

static bool word_point(uint32_t point) {
    return utf8_is_letter(point) || utf8_is_digit(point);
}

static void add_word(struct arena *arena, struct given_reading *r, size_t *room, const char *fold,
                     size_t from, size_t to, bool letters) {
    r->words = arena_grow(arena, r->words, r->count, room, sizeof *r->words);
    r->words[r->count++] =
        (struct given_word){.fold = fold,
                            .from = from,
                            .to = to,
                            .stem = vocabulary_number(arena, &r->stems, say_stem(arena, fold)),
                            .phrase = -1,
                            .letters = letters};
}

// A run between two spaces: its words, or as one word what holds neither letter nor digit.
static void add_run(struct arena *arena, struct given_reading *r, size_t *room, size_t from, size_t to) {
    const char *run = arena_copy(arena, r->text + from, to - from);
    size_t at = 0, before = r->count;
    for (;;) {
        size_t start = at, after = at;
        while (after < to - from && !word_point(utf8_next(run, to - from, &after))) start = after;
        const char *word = word_next(arena, run, &at);
        if (!word) break;
        add_word(arena, r, room, word, from + start, from + at, true);
    }
    if (r->count > before) return;
    bool joins = !strcmp(run, "&") || !strcmp(run, "+");
    add_word(arena, r, room, joins ? "and" : run, from, to, false);
}

static void cut_words(struct arena *arena, struct given_reading *r) {
    size_t size = strlen(r->text), room = 0;
    for (size_t at = 0; at < size;) {
        size_t from = at, next = at;
        while (next < size && !utf8_is_space(utf8_next(r->text, size, &next))) at = next;
        if (at > from) add_run(arena, r, &room, from, at);
        at = next;
    }
    r->stem_count = r->stems.count;
}

struct given_reading given_split(struct arena *arena, const char *text) {
    struct given_reading r = {.text = text, .stems = vocabulary_start(arena)};
    cut_words(arena, &r);
    return r;
}

// --- places ---

static bool stands_at(const struct given_reading *r, const struct given_reading *phrase, size_t at) {
    if (!phrase->count || at + phrase->count > r->count) return false;
    for (size_t i = 0; i < phrase->count; i++)
        if (r->words[at + i].stem != phrase->words[i].stem) return false;
    return true;
}

// The text as a reading that shares the vocabulary: same stem, same number.
static struct given_reading words_of(struct arena *arena, struct given_reading *r, const char *text) {
    struct given_reading phrase = {.text = text, .stems = r->stems};
    cut_words(arena, &phrase);
    r->stems = phrase.stems;
    return phrase;
}

// Most phrases begin with a letter that no word of the text begins with; a stem begins as its word does.
static bool may_stand(const struct given_reading *r, const char *text) {
    char first = text[0];
    if (first >= 'A' && first <= 'Z') first = (char)(first | 0x20);
    if (!(first >= 'a' && first <= 'z') && !(first >= '0' && first <= '9')) return true;
    for (size_t i = 0; i < r->count; i++)
        if (r->words[i].fold[0] == first) return true;
    return false;
}

bool given_find(struct arena *arena, struct given_reading *r, const char *text, size_t *at, size_t *count) {
    if (!may_stand(r, text)) return false;
    struct given_reading phrase = words_of(arena, r, text);
    for (; *at < r->count; ++*at)
        if (stands_at(r, &phrase, *at)) {
            *count = phrase.count;
            return true;
        }
    return false;
}

// Letter for letter, in any case, points and quotes and all.
static bool is_exact(struct arena *arena, const struct given_reading *r, const char *text, size_t at,
                     size_t count) {
    size_t from = r->words[at].from, to = r->words[at + count - 1].to;
    while (from > 0 && r->text[from - 1] != ' ') from--;
    while (r->text[to] && r->text[to] != ' ') to++;
    return !strcmp(utf8_fold(arena, arena_copy(arena, r->text + from, to - from)), utf8_fold(arena, text));
}

static void find_places(struct reader *reader, size_t phrase, size_t spelling, const char *text) {
    struct arena *arena = reader->arena;
    struct given_reading *r = reader->reading;
    if (!may_stand(r, text)) return;
    struct given_reading words = words_of(arena, r, text);
    size_t found = 0;
    for (size_t at = 0; at < r->count && found < PLACES_MOST; at++) {
        if (!stands_at(r, &words, at)) continue;
        found++;
        reader->places =
            arena_grow(arena, reader->places, reader->count, &reader->room, sizeof *reader->places);
        reader->places[reader->count++] = (struct given_place){phrase, spelling, at, words.count,
                                                               is_exact(arena, r, text, at, words.count)};
    }
}

static void find_all(struct reader *reader) {
    const struct title_plan *plan = reader->plan;
    for (size_t i = 0; i < plan->count; i++)
        for (size_t k = 0; k < plan->phrases[i].count; k++)
            find_places(reader, i, k, plan->phrases[i].spellings[k].text);
    for (int r = 0; r < ROLLUP_COUNT; r++)
        if (plan->rollup_index[r] >= 0)
            find_places(reader, plan->count + (size_t)plan->rollup_index[r], 0, plan->rollup_text[r]);
}

// --- the choice among them ---

static const struct title_spelling *numbered(const struct reader *reader, const struct given_place *place) {
    const struct title_problem *p = &reader->plan->problem;
    return place->phrase < p->phrase_count ? &p->phrases[place->phrase].spellings[place->spelling]
                                           : &p->rollups[place->phrase - p->phrase_count];
}

static void weigh_token(struct reader *reader) {
    int64_t sum = 1;
    for (size_t i = 0; i < reader->count; i++) {
        const struct title_spelling *s = numbered(reader, &reader->places[i]);
        int64_t worth = (int64_t)s->tells - s->cost;
        sum += worth < 0 ? -worth : worth;
    }
    reader->token = (int32_t)(sum < TELLS_MOST ? sum : TELLS_MOST);
}

static struct title_spelling as_spelling(const struct reader *reader, const struct given_place *place) {
    const struct title_spelling *s = numbered(reader, place);
    struct title_spelling out = {.length = 1, .stem_count = 1, .cost = s->cost};
    uint16_t *words = arena_array(reader->arena, place->count + s->word_count, sizeof *words);
    uint16_t *stem = arena_alloc(reader->arena, sizeof *stem);
    for (size_t i = 0; i < place->count; i++) words[out.word_count++] = (uint16_t)(place->at + i);
    for (size_t i = 0; i < s->word_count; i++)
        words[out.word_count++] = (uint16_t)(reader->reading->count + s->words[i]);
    *stem = (uint16_t)place->phrase; // answers the want that this phrase be told
    out.words = words;
    out.stems = stem;
    out.tells = s->tells + reader->token * (int32_t)place->count * (place->exact ? 2 : 1);
    return out;
}

// One want for each must: told by itself or by its roll-up.
static void want_musts(const struct reader *reader, struct title_problem *problem) {
    const struct title_problem *plan = &reader->plan->problem;
    struct title_want *wants = arena_array(reader->arena, plan->phrase_count + 1, sizeof *wants);
    int32_t weight = reader->token * (int32_t)(2 * reader->reading->count + 1);
    for (size_t i = 0; i < plan->phrase_count; i++) {
        if (!plan->phrases[i].must) continue;
        struct title_wording *wordings = arena_array(reader->arena, 2, sizeof *wordings);
        uint16_t *stems = arena_array(reader->arena, 2, sizeof *stems);
        int rollup = plan->phrases[i].rollup;
        stems[0] = (uint16_t)i;
        wordings[0] = (struct title_wording){stems, 1, weight};
        if (rollup >= 0) {
            stems[1] = (uint16_t)(plan->phrase_count + (size_t)rollup);
            wordings[1] = (struct title_wording){stems + 1, 1, weight};
        }
        wants[problem->want_count++] = (struct title_want){wordings, rollup >= 0 ? 2 : 1};
    }
    problem->wants = wants;
}

static struct title_problem as_problem(const struct reader *reader) {
    const struct title_problem *plan = &reader->plan->problem;
    struct title_problem problem = {0};
    struct title_phrase *phrases = arena_array(reader->arena, reader->count + 1, sizeof *phrases);
    struct title_spelling *spellings = arena_array(reader->arena, reader->count + 1, sizeof *spellings);
    for (size_t i = 0; i < reader->count; i++) {
        spellings[i] = as_spelling(reader, &reader->places[i]);
        if (i && reader->places[i].phrase == reader->places[i - 1].phrase)
            phrases[problem.phrase_count - 1].count++;
        else
            phrases[problem.phrase_count++] =
                (struct title_phrase){.spellings = &spellings[i], .count = 1, .rollup = -1};
    }
    problem.phrases = phrases;
    want_musts(reader, &problem);
    problem.word_count = reader->reading->count + plan->word_count;
    problem.stem_count = plan->phrase_count + plan->rollup_count;
    problem.limit = 2 * problem.phrase_count + 1;
    return problem;
}

static void take_place(const struct reader *reader, const struct given_place *place) {
    struct given_reading *r = reader->reading;
    bool phrase = place->phrase < reader->plan->count;
    if (phrase)
        r->spelling[place->phrase] = (int)place->spelling;
    else
        r->rollup[place->phrase - reader->plan->count] = true;
    for (size_t i = 0; i < place->count; i++) {
        r->words[place->at + i].told = true;
        if (phrase) r->words[place->at + i].phrase = (int)place->phrase;
    }
}

struct given_reading given_read(struct arena *arena, const struct title_plan *plan, const char *text) {
    struct given_reading r = given_split(arena, text);
    r.spelling = arena_array(arena, plan->count + 1, sizeof *r.spelling);
    r.rollup = arena_array(arena, plan->problem.rollup_count + 1, sizeof *r.rollup);
    for (size_t i = 0; i < plan->count; i++) r.spelling[i] = -1;
    struct reader reader = {.arena = arena, .plan = plan, .reading = &r};
    find_all(&reader);
    if (!reader.count) return r;
    weigh_token(&reader);
    struct title_problem problem = as_problem(&reader);
    struct title_choice choice = title_solve(arena, &problem);
    for (size_t i = 0; i < problem.phrase_count; i++)
        if (choice.spelling[i] >= 0)
            take_place(&reader,
                       &reader.places[(size_t)(problem.phrases[i].spellings - problem.phrases[0].spellings) +
                                      (size_t)choice.spelling[i]]);
    return r;
}
