// SPDX-License-Identifier: MIT
#include "support_cases.h"

enum { MOST_WORDS = 3 };

struct making {
    struct arena *arena;
    const struct case_shape *shape;
    struct case_random random;
    struct title_problem *problem;
    // Words of each phrase before spellings shorten them.
    uint16_t (*words)[MOST_WORDS];
    size_t *word_counts;
    size_t *letters; // per word
    uint16_t *stem;  // per word
};

uint64_t case_next(struct case_random *random) {
    uint64_t z = random->state += 0x9e3779b97f4a7c15u;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    return z ^ (z >> 31);
}

size_t case_below(struct case_random *random, size_t below) {
    return (size_t)(case_next(random) >> 16) % below;
}

struct case_shape case_full_size(void) {
    return (struct case_shape){
        .phrases = 24, .wordings = 100, .wants = 12, .limit = 80, .musts = 3, .rollups = 1, .sharing = 15};
}

static bool chance(struct making *making, unsigned of_hundred) {
    return case_below(&making->random, 100) < of_hundred;
}

// A new word; now and then another form of a word that is there, which searches see as the same stem.
static uint16_t new_word(struct making *making, size_t phrase) {
    struct title_problem *problem = making->problem;
    uint16_t word = (uint16_t)problem->word_count++;
    making->letters[word] = making->shape->flat ? 4 : 3 + case_below(&making->random, 6);
    if (phrase > 0 && word > 0 && chance(making, making->shape->sharing / 2))
        making->stem[word] = making->stem[case_below(&making->random, word)];
    else
        making->stem[word] = (uint16_t)problem->stem_count++;
    return word;
}

static void draw_words(struct making *making, size_t phrase) {
    size_t count = 1 + case_below(&making->random, making->shape->flat ? 2 : MOST_WORDS);
    for (size_t i = 0; i < count; i++) {
        uint16_t word;
        if (phrase > 0 && chance(making, making->shape->sharing)) {
            size_t back = 1 + case_below(&making->random, phrase < 4 ? phrase : 4);
            size_t other = phrase - back;
            word = making->words[other][case_below(&making->random, making->word_counts[other])];
        } else {
            word = new_word(making, phrase);
        }
        bool known = false;
        for (size_t j = 0; j < making->word_counts[phrase]; j++) known |= making->words[phrase][j] == word;
        if (!known) making->words[phrase][making->word_counts[phrase]++] = word;
    }
}

// The phrase with its first words left off; the last spelling of a single word is cut to three letters.
static struct title_spelling spell(struct making *making, size_t phrase, size_t left_off, int32_t tells) {
    size_t count = making->word_counts[phrase] - left_off;
    uint16_t *words = arena_array(making->arena, count, sizeof *words);
    uint16_t *stems = arena_array(making->arena, count, sizeof *stems);
    struct title_spelling text = {.words = words, .stems = stems, .tells = tells};
    text.cost = (int32_t)case_below(&making->random, making->shape->flat ? 1 : 4);
    for (size_t i = 0; i < count; i++) {
        uint16_t word = making->words[phrase][left_off + i];
        words[text.word_count++] = word;
        bool known = false;
        for (size_t j = 0; j < text.stem_count; j++) known |= stems[j] == making->stem[word];
        if (!known) stems[text.stem_count++] = making->stem[word];
        text.length += making->letters[word] + (i > 0 ? 1 : 0);
    }
    if (text.length > 20) text.length = 20;
    return text;
}

static void make_phrase(struct making *making, struct title_phrase *phrase, size_t index) {
    draw_words(making, index);
    size_t most = 1 + case_below(&making->random, 3);
    struct title_spelling *spellings = arena_array(making->arena, most, sizeof *spellings);
    int32_t tells = making->shape->flat ? 2 : (int32_t)case_below(&making->random, 16);
    for (size_t i = 0; i < most; i++) {
        bool shorter = i < making->word_counts[index];
        if (shorter)
            spellings[i] = spell(making, index, i, tells);
        else {
            if (spellings[i - 1].length <= 3) break;
            spellings[i] = spellings[i - 1];
            spellings[i].length -= 1 + case_below(&making->random, spellings[i].length - 3);
            spellings[i].tells = tells;
            if (chance(making, 50)) spellings[i].stem_count = 0; // a short form that searches do not know
        }
        phrase->count++;
        tells = making->shape->flat ? tells : tells - (int32_t)case_below(&making->random, 3);
    }
    phrase->spellings = spellings;
    phrase->rollup = -1;
}

static void choose_musts(struct making *making, struct title_phrase *phrases) {
    const struct case_shape *shape = making->shape;
    size_t musts = case_below(&making->random, shape->musts + 1);
    size_t rollups = case_below(&making->random, shape->rollups + 1);
    for (size_t i = 0; i < musts; i++) {
        struct title_phrase *phrase = &phrases[case_below(&making->random, shape->phrases)];
        phrase->must = true;
        if (rollups > 0 && chance(making, 70)) phrase->rollup = (int)case_below(&making->random, rollups);
    }
    struct title_spelling *texts = arena_array(making->arena, rollups, sizeof *texts);
    for (size_t r = 0; r < rollups; r++) {
        uint16_t *words = arena_array(making->arena, 2, sizeof *words);
        uint16_t *stems = arena_array(making->arena, 2, sizeof *stems);
        words[0] = new_word(making, 1);
        size_t other = case_below(&making->random, shape->phrases);
        words[1] = chance(making, 2 * shape->sharing) ? making->words[other][0] : new_word(making, 1);
        stems[0] = making->stem[words[0]];
        stems[1] = making->stem[words[1]];
        texts[r] =
            (struct title_spelling){.length = 5 + case_below(&making->random, 12), .cost = 1, .words = words};
        texts[r].word_count = 2;
        texts[r].stems = stems;
        texts[r].stem_count = stems[0] == stems[1] ? 1 : 2;
        texts[r].tells = (int32_t)case_below(&making->random, 4);
    }
    making->problem->rollups = texts;
    making->problem->rollup_count = rollups;
}

static void draw_wording(struct making *making, struct title_wording *wording, size_t centre) {
    size_t phrases = making->shape->phrases, most = 1 + case_below(&making->random, 4);
    uint16_t *stems = arena_array(making->arena, most, sizeof *stems);
    for (size_t i = 0; i < most; i++) {
        size_t near = (centre + case_below(&making->random, 7) + phrases - 3) % phrases;
        if (i == 0 && chance(making, 50)) near = phrases / 3; // the type
        uint16_t stem =
            making->stem[making->words[near][case_below(&making->random, making->word_counts[near])]];
        bool known = false;
        for (size_t j = 0; j < wording->count; j++) known |= stems[j] == stem;
        if (!known) stems[wording->count++] = stem;
    }
    if (chance(making, 3)) stems[0] = (uint16_t)making->problem->stem_count; // nobody offers it
    if (making->shape->flat && chance(making, 6)) wording->count = 0;        // answered by any title
    wording->stems = stems;
    // A longer search is a surer buyer: every stem adds.
    wording->weight = 4;
    for (size_t i = 0; i < wording->count; i++)
        wording->weight += making->shape->flat ? 8 : 1 + (int32_t)case_below(&making->random, 19);
}

static void make_wants(struct making *making) {
    const struct case_shape *shape = making->shape;
    struct title_want *wants = arena_array(making->arena, shape->wants, sizeof *wants);
    size_t left = shape->wordings;
    for (size_t k = 0; k < shape->wants; k++) {
        size_t count = left / (shape->wants - k);
        struct title_wording *wordings = arena_array(making->arena, count, sizeof *wordings);
        size_t centre = case_below(&making->random, shape->phrases);
        for (size_t i = 0; i < count; i++) draw_wording(making, &wordings[i], centre);
        wants[k] = (struct title_want){.wordings = wordings, .count = count};
        left -= count;
    }
    making->problem->stem_count++;
    making->problem->wants = wants;
    making->problem->want_count = shape->wants;
}

struct title_problem *case_make(struct arena *arena, const struct case_shape *shape, uint64_t seed) {
    size_t most = shape->phrases * MOST_WORDS + 2 * shape->rollups + 1;
    struct making making = {.arena = arena, .shape = shape, .random = {seed * 0x9e3779b97f4a7c15u + 1}};
    struct title_phrase *phrases = arena_array(arena, shape->phrases, sizeof *phrases);
    making.problem = arena_alloc(arena, sizeof *making.problem);
    making.words = arena_array(arena, shape->phrases, sizeof *making.words);
    making.word_counts = arena_array(arena, shape->phrases, sizeof *making.word_counts);
    making.letters = arena_array(arena, most, sizeof *making.letters);
    making.stem = arena_array(arena, most, sizeof *making.stem);
    for (size_t p = 0; p < shape->phrases; p++) make_phrase(&making, &phrases[p], p);
    choose_musts(&making, phrases);
    make_wants(&making);
    making.problem->phrases = phrases;
    making.problem->phrase_count = shape->phrases;
    making.problem->limit = shape->limit;
    return making.problem;
}
