// SPDX-License-Identifier: MIT
// A pattern is walked place by place, the word before its absence. Only two words of it are spread out
// beforehand: a pattern of six places stands for thousands of phrases. They are the rarest that it has side
// by side: "lid" and "has" are in many notes, "parted company" in few, and so dozens of patterns that begin
// with any lid cost an ordinary note nothing. Of one that names groups it is a group's rarest place, which
// mostly has members of several words.
#include "notes/spoken.h"

#include <string.h>

#include "notes/word_groups.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum {
    GAP_MOST = 3,
    STOPS_ROOM = 40,
    SUBJECTS_ROOM = 8,
    SIEVE_CELLS = 8192,
    SEEN_BITS = 14,
    UNGROUPED = 1 << 20
};

#define STOP_PLACE (SIZE_MAX - 1) // of the words that end a gap
#define ANYWHERE SIZE_MAX

struct place_of_words {
    size_t from, to;             // in `hashes`
    size_t group_from, group_to; // in `group_numbers`
    bool optional, gap;
};

struct pattern {
    size_t from, to; // in `places`
    size_t flaw;
    bool gated, grouped;
};

// Small: thousands of them are asked in one note.
struct opening {
    uint32_t pattern, place;
    uint16_t back; // how many words stand before it at most
    bool grouped;  // its pattern is looked for from a group
};

struct spoken {
    struct arena *arena;
    uint64_t *hashes;
    struct place_of_words *places;
    struct pattern *patterns;
    struct opening *openings;
    struct spoken_gate *gates; // one an opening
    struct word_groups *groups;
    size_t *group_numbers;
    size_t group_count, group_room;
    size_t hash_count, hash_room, place_count, place_room, pattern_count, pattern_room, opening_count,
        opening_room, gate_room;
    size_t longest;
    uint64_t stops[STOPS_ROOM], subjects[SUBJECTS_ROOM], verbs[SUBJECTS_ROOM], and, so;
    uint64_t sieve[SIEVE_CELLS];   // a bit for each word of each place: most words are not
    uint32_t seen[1 << SEEN_BITS]; // how often each word stands in a place
};

static uint64_t key_at(size_t place, uint64_t hash) {
    return hash ^ (place + 1) * 0x9E3779B97F4A7C15u;
}

static void sieve_add(struct spoken *s, size_t place, uint64_t hash) {
    uint64_t key = key_at(place, hash);
    s->sieve[(key >> 20) % SIEVE_CELLS] |= (uint64_t)1 << (key >> 8) % 64;
}

static bool may_hold(const struct spoken *s, size_t place, uint64_t hash) {
    uint64_t key = key_at(place, hash);
    return s->sieve[(key >> 20) % SIEVE_CELLS] >> (key >> 8) % 64 & 1;
}

struct adding {
    struct spoken *spoken;
    size_t place;
};

static void add_first(void *context, uint64_t first) {
    const struct adding *adding = context;
    sieve_add(adding->spoken, adding->place, first);
}

static void add_group(struct spoken *s, const char *id, size_t size) {
    s->group_numbers =
        arena_grow(s->arena, s->group_numbers, s->group_count, &s->group_room, sizeof *s->group_numbers);
    size_t number = s->group_numbers[s->group_count++] = word_groups_number(s->groups, id, size);
    struct adding adding = {s, s->place_count};
    word_groups_tell_firsts(s->groups, number, add_first, &adding);
}

// "white|pale|-", "@closures"
static void add_place(struct spoken *s, const char *text, size_t size) {
    struct place_of_words place = {.from = s->hash_count, .group_from = s->group_count};
    for (size_t at = 0; at < size;) {
        size_t n = 0;
        while (at + n < size && text[at + n] != '|') n++;
        bool sign = n == 1 && (text[at] == '-' || text[at] == '~');
        if (sign) {
            place.optional |= text[at] == '-';
            place.gap |= text[at] == '~';
        } else if (text[at] == '@') {
            add_group(s, text + at + 1, n - 1);
        } else {
            s->hashes = arena_grow(s->arena, s->hashes, s->hash_count, &s->hash_room, sizeof *s->hashes);
            s->hashes[s->hash_count++] = word_groups_hash(text + at, n);
            sieve_add(s, s->place_count, s->hashes[s->hash_count - 1]);
        }
        at += n + 1;
    }
    place.to = s->hash_count;
    place.group_to = s->group_count;
    s->places = arena_grow(s->arena, s->places, s->place_count, &s->place_room, sizeof *s->places);
    s->places[s->place_count++] = place;
}

static void add_bits(void *context, uint64_t hash) {
    struct spoken_bits *bits = context;
    bits->one |= spoken_bit(hash);
    bits->other |= spoken_other_bit(hash);
}

static struct spoken_bits bits_of(const struct spoken *s, const struct place_of_words *place) {
    struct spoken_bits bits = {0};
    for (size_t h = place->from; h < place->to; h++) add_bits(&bits, s->hashes[h]);
    for (size_t g = place->group_from; g < place->group_to; g++)
        word_groups_tell_firsts(s->groups, s->group_numbers[g], add_bits, &bits);
    return bits;
}

// How many words may fill a place.
static size_t words_most(const struct spoken *s, const struct place_of_words *place) {
    size_t most = place->gap ? GAP_MOST : 1;
    for (size_t g = place->group_from; g < place->group_to; g++) {
        size_t longest = word_groups_longest(s->groups, s->group_numbers[g]);
        if (longest > most) most = longest;
    }
    return most;
}

// How likely a place is filled by chance: the more words can, and the more of them stand in any note.
static size_t chance_of(const struct spoken *s, const struct place_of_words *place) {
    enum { COMMON_WEIGHT = 200 };
    static const char *const common[] = {"the", "a",  "an", "of",  "is",  "are", "and",  "it", "its",
                                         "in",  "to", "on", "has", "was", "at",  "with", "i",  "that"};
    size_t weight = place->to - place->from;
    for (size_t h = place->from; h < place->to; h++)
        for (size_t k = 0; k < COUNT(common); k++)
            if (s->hashes[h] == word_groups_hash(common[k], strlen(common[k]))) weight += COMMON_WEIGHT;
    for (size_t g = place->group_from; g < place->group_to; g++)
        weight += word_groups_count(s->groups, s->group_numbers[g]);
    return weight;
}

struct chances {
    size_t at[SPOKEN_NEEDS];
};

static size_t words_least(const struct place_of_words *place) {
    return place->gap || place->optional ? 0 : 1;
}

// A place that is always filled, and the less likely by chance the better; the best come first.
static void keep_need(const struct spoken *s, const struct place_of_words *place, struct spoken_window window,
                      struct spoken_gate *gate, struct chances *chances) {
    if (place->gap || place->optional) return;
    size_t chance = chance_of(s, place) * window.count, at = SPOKEN_NEEDS;
    while (at && (!gate->windows[at - 1].count || chance < chances->at[at - 1])) at--;
    if (at == SPOKEN_NEEDS) return;
    for (size_t k = SPOKEN_NEEDS - 1; k > at; k--) {
        gate->needs[k] = gate->needs[k - 1];
        gate->windows[k] = gate->windows[k - 1];
        gate->places[k] = gate->places[k - 1];
        chances->at[k] = chances->at[k - 1];
    }
    gate->needs[at] = bits_of(s, place);
    gate->windows[at] = window;
    gate->places[at] = (uint32_t)(place - s->places);
    chances->at[at] = chance;
}

// Of the places around the opening one those that say most, near enough to be looked at.
static void find_needs(const struct spoken *s, const struct opening *opening, struct spoken_gate *gate) {
    const struct pattern *pattern = &s->patterns[opening->pattern];
    struct chances chances = {0};
    size_t own = words_most(s, &s->places[opening->place]), least = 1, most = own;
    for (size_t k = opening->place + 1; k < pattern->to && most <= SPOKEN_REACH; k++) {
        const struct place_of_words *place = &s->places[k];
        // Of a group the first words are known.
        keep_need(s, place, (struct spoken_window){(int8_t)least, (uint8_t)(most - least + 1)}, gate,
                  &chances);
        least += words_least(place);
        most += words_most(s, place);
    }
    least = 0;
    most = own - 1;
    for (size_t k = opening->place; k-- > pattern->from;) {
        const struct place_of_words *place = &s->places[k];
        least += words_least(place);
        most += words_most(s, place);
        if (most > SPOKEN_REACH) break;
        struct spoken_window window = {(int8_t) - (int)most, (uint8_t)(most - least + 1)};
        keep_need(s, place, window, gate, &chances);
    }
}

// Which words may stand two behind the opening one, where no gap and no end comes before.
static uint64_t third_of(const struct spoken *s, const struct opening *opening) {
    size_t to = s->patterns[opening->pattern].to;
    uint64_t bits = 0;
    for (size_t second = opening->place + 1; second < to; second++) {
        if (s->places[second].gap) return UINT64_MAX;
        size_t third = second + 1;
        for (bool more = true; more; third++) {
            if (third == to || s->places[third].gap) return UINT64_MAX;
            bits |= bits_of(s, &s->places[third]).one;
            more = s->places[third].optional;
        }
        if (!s->places[second].optional) return bits;
    }
    return UINT64_MAX;
}

// In hundredths, how much of what may fill a place is single words, each of which would lead to the pattern.
static size_t lone_share(const struct spoken *s, const struct place_of_words *place) {
    size_t lone = place->to - place->from, all = lone;
    for (size_t g = place->group_from; g < place->group_to; g++) {
        lone += word_groups_lone(s->groups, s->group_numbers[g]);
        all += word_groups_count(s->groups, s->group_numbers[g]);
    }
    return all ? 100 * lone / all : 100;
}

static struct spoken_gate *add_opening(struct spoken *s, const struct opening *opening) {
    s->openings = arena_grow(s->arena, s->openings, s->opening_count, &s->opening_room, sizeof *s->openings);
    s->gates = arena_grow(s->arena, s->gates, s->opening_count, &s->gate_room, sizeof *s->gates);
    struct spoken_gate *gate = &s->gates[s->opening_count];
    const struct spoken_bits any = {UINT64_MAX, UINT64_MAX};
    *gate = (struct spoken_gate){.third = UINT64_MAX, .needs = {any, any}};
    s->openings[s->opening_count++] = *opening;
    return gate;
}

static void add_rarest_opening(struct spoken *s, size_t number) {
    const struct pattern *pattern = &s->patterns[number];
    struct opening rarest = {.pattern = (uint32_t)number, .grouped = true};
    size_t least = SIZE_MAX, before = 0;
    for (size_t k = pattern->from; k < pattern->to; k++) {
        const struct place_of_words *place = &s->places[k];
        size_t lone = lone_share(s, place) + (place->group_from < place->group_to ? 0 : UNGROUPED);
        if (lone < least && !place->optional && !place->gap) {
            least = lone;
            rarest.place = (uint32_t)k;
            rarest.back = (uint16_t)before;
        }
        before += words_most(s, place);
    }
    if (least == SIZE_MAX) return; // each of its places may be skipped
    struct spoken_gate *gate = add_opening(s, &rarest);
    find_needs(s, &rarest, gate);
}

// How many patterns have the word in one of their places: what many have stands in many notes.
static size_t weight_of(const struct spoken *s, uint64_t hash) {
    return 1 + s->seen[hash >> (64 - SEEN_BITS)];
}

static double share_of(const struct spoken *s, const struct place_of_words *place) {
    double sum = 0;
    for (size_t h = place->from; h < place->to; h++) sum += (double)weight_of(s, s->hashes[h]);
    return sum / (double)s->hash_count;
}

// A pattern without groups is looked for by the place, and the one behind it, that are rarest in notes. One
// of which each place may be skipped is not looked for.
static void add_opening_of(struct spoken *s, size_t number) {
    const struct pattern *pattern = &s->patterns[number];
    struct opening rarest = {.pattern = (uint32_t)number};
    double least = -1;
    size_t before = 0;
    for (size_t k = pattern->from; k < pattern->to; k++) {
        const struct place_of_words *place = &s->places[k];
        if (!place->optional && !place->gap) {
            bool paired = k + 1 < pattern->to && !place[1].gap && !place[1].optional;
            double share = share_of(s, place) * (paired ? share_of(s, place + 1) : 1);
            if (least < 0 || share < least) {
                least = share;
                rarest.place = (uint32_t)k;
                rarest.back = (uint16_t)before;
            }
        }
        before += words_most(s, place);
    }
    if (least < 0) return;
    struct spoken_gate *gate = add_opening(s, &rarest);
    gate->third = third_of(s, &rarest);
    find_needs(s, &rarest, gate);
}

static void add_pattern(struct spoken *s, const char *text, size_t flaw, bool gated) {
    struct pattern pattern = {.from = s->place_count, .flaw = flaw, .gated = gated};
    size_t words = 0;
    bool grouped = false; // a place of it names a group
    for (const char *at = text; *at; at += strspn(at, " \n")) {
        size_t n = strcspn(at, " \n");
        add_place(s, at, n);
        const struct place_of_words *place = &s->places[s->place_count - 1];
        words += words_most(s, place);
        grouped |= place->group_from < place->group_to;
        at += n;
    }
    pattern.to = s->place_count;
    if (words > s->longest) s->longest = words;
    s->patterns = arena_grow(s->arena, s->patterns, s->pattern_count, &s->pattern_room, sizeof *s->patterns);
    s->patterns[s->pattern_count++] = pattern;
    s->patterns[s->pattern_count - 1].grouped = grouped;
}

// When all of them are known.
static void add_openings(struct spoken *s) {
    for (size_t i = 0; i < s->hash_count; i++) s->seen[s->hashes[i] >> (64 - SEEN_BITS)]++;
    for (size_t i = 0; i < s->pattern_count; i++)
        if (s->patterns[i].grouped)
            add_rarest_opening(s, i);
        else
            add_opening_of(s, i);
}

static const char *const stops[] = {",",       ".",      ";",       ":",       "!",     "?",       "(",
                                    ")",       "\"",     "\n",      "/",       "no",    "not",     "isn't",
                                    "aren't",  "never",  "without", "doesn't", "don't", "won't",   "hasn't",
                                    "haven't", "wasn't", "weren't", "but",     "nor",   "nothing", "didn't",
                                    "can't",   "unless", "if",      "until"};

// What opens a statement of its own behind "and" or "so", and what one thing alone does there.
static const char *const subjects[] = {"the", "its", "a", "an", "one", "it", "you"};
static const char *const verbs[] = {"has", "is", "was", "needs", "comes", "came"};

struct spoken *spoken_new(struct arena *arena, const struct ruleset *rules) {
    struct spoken *s = arena_alloc(arena, sizeof *s);
    s->arena = arena;
    s->groups = word_groups_new(arena, rules);
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct texts *any = &rules->flaws[i]->spoken, *gated = &rules->flaws[i]->spoken_on;
        for (size_t k = 0; k < any->count; k++) add_pattern(s, any->at[k], i, false);
        for (size_t k = 0; k < gated->count; k++) add_pattern(s, gated->at[k], i, true);
    }
    add_openings(s);
    for (size_t i = 0; i < COUNT(stops); i++) {
        s->stops[i] = word_groups_hash(stops[i], strlen(stops[i]));
        sieve_add(s, STOP_PLACE, s->stops[i]);
    }
    s->and = word_groups_hash("and", strlen("and"));
    s->so = word_groups_hash("so", strlen("so"));
    sieve_add(s, STOP_PLACE, s->and);
    sieve_add(s, STOP_PLACE, s->so);
    for (size_t i = 0; i < COUNT(subjects); i++)
        s->subjects[i] = word_groups_hash(subjects[i], strlen(subjects[i]));
    for (size_t i = 0; i < COUNT(verbs); i++) s->verbs[i] = word_groups_hash(verbs[i], strlen(verbs[i]));
    return s;
}

size_t spoken_longest(const struct spoken *s) {
    return s->longest;
}

const struct spoken_gate *spoken_gates(const struct spoken *s) {
    return s->gates;
}

struct telling {
    spoken_told *tell;
    void *context;
    size_t opening;
};

static void tell_pair(void *context, uint64_t first, uint64_t second) {
    const struct telling *telling = context;
    telling->tell(telling->context, first, second, telling->opening);
}

// By two words of each member, and by one that stands alone.
static void tell_members(const struct spoken *s, size_t number, spoken_told *tell, void *context) {
    const struct place_of_words *place = &s->places[s->openings[number].place];
    struct telling telling = {tell, context, number};
    for (size_t g = place->group_from; g < place->group_to; g++)
        word_groups_tell(s->groups, s->group_numbers[g], tell_pair, &telling);
    for (size_t a = place->from; a < place->to; a++) tell(context, s->hashes[a], 0, number);
}

// By each word that may stand first, and each that may stand next.
static void tell_opening(const struct spoken *s, size_t number, spoken_told *tell, void *context) {
    const struct opening *opening = &s->openings[number];
    const struct place_of_words *first = &s->places[opening->place];
    bool any = true; // what has to stand next is not known
    for (size_t k = opening->place + 1; any && k < s->patterns[opening->pattern].to; k++) {
        const struct place_of_words *next = &s->places[k];
        if (next->gap) break;
        for (size_t a = first->from; a < first->to; a++)
            for (size_t b = next->from; b < next->to; b++) tell(context, s->hashes[a], s->hashes[b], number);
        any = next->optional;
    }
    for (size_t a = first->from; any && a < first->to; a++) tell(context, s->hashes[a], 0, number);
}

void spoken_tell_openings(const struct spoken *s, bool grouped, spoken_told *tell, void *context) {
    for (size_t i = s->opening_count; i-- > 0;)
        if (s->openings[i].grouped && grouped)
            tell_members(s, i, tell, context);
        else if (!s->openings[i].grouped && !grouped)
            tell_opening(s, i, tell, context);
}

struct places {
    const struct spoken *spoken;
    const struct phrase_word *words;
    size_t count, to; // `to`: end of the places that are walked
    size_t end;       // the word at which they have to end, or ANYWHERE
};

static bool is_one_of(const struct spoken *s, const struct place_of_words *place, uint64_t hash) {
    for (size_t h = place->from; h < place->to; h++)
        if (s->hashes[h] == hash) return true;
    return false;
}

static bool is_any(const uint64_t *hashes, size_t count, uint64_t hash) {
    for (size_t i = 0; i < count; i++)
        if (hashes[i] == hash) return true;
    return false;
}

// "A crack in the lid and the strap has gone", "the hinge broken so the glass lifts off": what follows is
// said of the strap, of the glass. "The lid and the strap gone" is said of both.
static bool opens_own(const struct places *w, size_t i) {
    enum { SUBJECT_MOST = 3 };
    const struct spoken *s = w->spoken;
    bool and = w->words[i].hash == s->and;
    if ((!and&&w->words[i].hash != s->so) || !is_any(s->subjects, COUNT(subjects), w->words[i + 1].hash))
        return false;
    for (size_t k = i + 2; and&&k <= i + 1 + SUBJECT_MOST; k++)
        if (is_any(s->verbs, COUNT(verbs), w->words[k].hash)) return true;
    return !and;
}

// A sign, and a word that denies or turns, ends what any word may fill.
static bool is_stop(const struct places *w, size_t i) {
    const struct spoken *s = w->spoken;
    return may_hold(s, STOP_PLACE, w->words[i].hash) &&
           (is_any(s->stops, COUNT(stops), w->words[i].hash) || opens_own(w, i));
}

static size_t walk_from(const struct places *w, size_t place, size_t i);

static size_t walk_groups(const struct places *w, size_t place, size_t i) {
    const struct spoken *s = w->spoken;
    for (size_t g = s->places[place].group_from; g < s->places[place].group_to && i < w->count; g++)
        for (const struct group_member *member =
                 word_groups_find(s->groups, s->group_numbers[g], w->words[i].hash);
             member; member = word_groups_next(member)) {
            size_t after = word_groups_end(member, w->words, w->count, i);
            size_t end = after ? walk_from(w, place + 1, after) : 0;
            if (end) return end;
        }
    return 0;
}

// Up to three words of any kind, then the places from `place` on.
static size_t walk_gap(const struct places *w, size_t place, size_t i) {
    const struct place_of_words *next = &w->spoken->places[place];
    bool needed = place < w->to && !next->gap && !next->optional;
    for (size_t n = 0; n <= GAP_MOST && i + n <= w->count; n++) {
        bool may = !needed || may_hold(w->spoken, place, w->words[i + n].hash);
        size_t end = may ? walk_from(w, place, i + n) : 0;
        if (end) return end;
        if (i + n < w->count && is_stop(w, i + n)) return 0;
    }
    return 0;
}

// Where the places from `place` on end if they stand at word `i`; 0 if they do not.
static size_t walk_from(const struct places *w, size_t place, size_t i) {
    for (; place < w->to; place++) {
        const struct place_of_words *here = &w->spoken->places[place];
        if (here->gap) return walk_gap(w, place + 1, i);
        bool may = i < w->count && may_hold(w->spoken, place, w->words[i].hash);
        if (may && here->group_from < here->group_to) {
            size_t end = walk_groups(w, place, i);
            if (end) return end;
        }
        bool held = may && is_one_of(w->spoken, here, w->words[i].hash);
        if (held && here->optional) {
            size_t end = walk_from(w, place + 1, i + 1);
            if (end) return end;
        } else if (held) {
            i++;
        } else if (!here->optional)
            return 0;
    }
    return (w->end == ANYWHERE ? w->words[i - 1].ends : i == w->end) ? i : 0;
}

static bool may_be_skipped(const struct spoken *s, size_t from, size_t to) {
    for (; from < to; from++)
        if (!s->places[from].gap && !s->places[from].optional) return false;
    return true;
}

// Where the places before the opening begin that fill the words up to `start`, the farthest; SIZE_MAX where
// they do not fill them.
static size_t begin_of(const struct spoken *s, const struct opening *opening, const struct phrase_word *words,
                       size_t start) {
    struct places before = {s, words, start, opening->place, start};
    size_t first = s->patterns[opening->pattern].from;
    if (first == opening->place) return words[start].starts ? start : SIZE_MAX;
    const struct place_of_words *place = &s->places[first];
    bool open = place->gap || place->optional; // any word may stand where it begins
    bool none = may_be_skipped(s, first, opening->place) && words[start].starts;
    if (!start) return none ? 0 : SIZE_MAX; // a walk's 0 is no word
    for (size_t k = opening->back < start ? opening->back : start; k > 0; k--) {
        const struct phrase_word *word = &words[start - k];
        if (!word->starts || (!open && !may_hold(s, first, word->hash))) continue;
        if (walk_from(&before, first, start - k)) return start - k;
    }
    return none ? start : SIZE_MAX;
}

// The places before the member that begins at `start` and ends at `after`, and those behind it.
static bool stands_around(const struct places *w, const struct opening *opening, size_t start, size_t after,
                          struct spoken_hit *hit) {
    size_t end = walk_from(w, opening->place + 1, after);
    if (!end) return false;
    hit->from = begin_of(w->spoken, opening, w->words, start);
    hit->to = end;
    return hit->from != SIZE_MAX;
}

// The members of a group whose rarest word is word `i`.
static void find_members(const struct spoken *s, size_t group, const struct phrase_word *words, size_t count,
                         size_t i, struct spoken_found *found) {
    found->group = group + 1;
    found->word = i;
    found->count = 0;
    for (const struct group_member *member = word_groups_find_rare(s->groups, group, words[i].hash);
         member && found->count < SPOKEN_FOUND_MOST; member = word_groups_next(member)) {
        size_t start, end = word_groups_around(member, words, count, i, &start);
        if (end) found->at[found->count++] = (struct spoken_member){(uint32_t)start, (uint32_t)end};
    }
}

static bool group_stands(const struct spoken *s, const struct opening *opening,
                         const struct phrase_word *words, size_t count, size_t i, struct spoken_found *found,
                         struct spoken_hit *hit) {
    const struct pattern *pattern = &s->patterns[opening->pattern];
    const struct place_of_words *place = &s->places[opening->place];
    struct places places = {s, words, count, pattern->to, ANYWHERE};
    bool stands = is_one_of(s, place, words[i].hash) && stands_around(&places, opening, i, i + 1, hit);
    for (size_t g = place->group_from; !stands && g < place->group_to; g++) {
        size_t group = s->group_numbers[g];
        if (found->group != group + 1 || found->word != i) find_members(s, group, words, count, i, found);
        for (size_t k = 0; k < found->count && !stands; k++)
            stands = stands_around(&places, opening, found->at[k].start, found->at[k].end, hit);
    }
    hit->from = i;
    hit->flaw = pattern->flaw;
    hit->gated = pattern->gated;
    return stands;
}

// Of long lists of words a gate lets most words through. `i` is the word that it is looked for by.
static bool are_needs_met(const struct spoken *s, const struct spoken_gate *gate,
                          const struct phrase_word *words, size_t i) {
    for (size_t n = 0; n < SPOKEN_NEEDS; n++) {
        const struct phrase_word *word = words + i + gate->windows[n].from;
        const struct phrase_word *end = word + gate->windows[n].count;
        bool met = word == end;
        for (; !met && word < end; word++) met = may_hold(s, gate->places[n], word->hash);
        if (!met) return false;
    }
    return true;
}

bool spoken_stands(const struct spoken *s, size_t number, const struct phrase_word *words, size_t count,
                   size_t i, struct spoken_found *found, struct spoken_hit *hit) {
    const struct opening *opening = &s->openings[number];
    if (opening->grouped) return group_stands(s, opening, words, count, i, found, hit);
    if (!are_needs_met(s, &s->gates[number], words, i)) return false;
    const struct pattern *pattern = &s->patterns[opening->pattern];
    struct places places = {s, words, count, pattern->to, ANYWHERE};
    hit->flaw = pattern->flaw;
    hit->gated = pattern->gated;
    return stands_around(&places, opening, i, i + 1, hit);
}
