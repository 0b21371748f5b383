// SPDX-License-Identifier: MIT
// False alarms and slips caught on sentences of the trade: those of sentences.txt and as many out of frames
// as make two thousand.
#include "support.h"

enum { SENTENCES = 2000, HAND_WRITTEN_LEAST = 300 };

static const char *const goods[] = {
    "oil lamp",
    "storm lantern",
    "biscuit tin",
    "enamelware pitcher",
    "graniteware kettle",
    "wool blanket",
    "smoothing plane",
    "drawknife",
    "spokeshave",
    "bench vise",
    "brace and bit",
    "billhook",
    "field glasses",
    "brass telescope",
    "marine compass",
    "aneroid barometer",
    "wicker hamper",
    "canteen",
    "cornet",
    "concertina",
    "banjolele",
    "metronome",
    "mantel clock",
    "pocket watch",
    "valve radio",
    "voltmeter",
    "multimeter",
    "headphones",
    "school desk",
    "chifforobe",
    "washstand",
    "blanket chest",
    "wall map",
    "sea chart",
    "pocket atlas",
    "hymnbook",
    "stoneware crock",
    "redware jug",
    "creamware plate",
    "yellowware bowl",
    "transferware tureen",
    "majolica jardiniere",
    "decanter",
    "claret jug",
    "milk can",
    "butter churn",
    "coal scuttle",
    "trivet",
    "flatiron",
    "sadiron stand",
    "typewriter",
    "letter rack",
    "inkstand",
    "deed box",
    "boat hook",
    "rowlock",
    "anchor light",
    "deck prism",
    "cork float",
    "lobster pot",
    "fishing creel",
    "centerpin reel",
    "landing net",
    "horse collar",
    "bridle",
    "hay knife",
    "seed drill",
    "cloche",
    "watering can",
    "chimney pot",
    "leaded window",
    "door knocker",
    "escutcheon",
    "coat rack",
    "hat box",
    "kit bag",
    "haversack",
    "mess tin",
};
static const char *const parts[] = {
    "rim",    "lid",     "foot",       "base",       "spout",     "handle",  "finial",     "ferrule",
    "hasp",   "hinge",   "bezel",      "gasket",     "wick",      "burner",  "backplate",  "drawer",
    "caster", "veneer",  "escutcheon", "stretcher",  "selvage",   "binding", "lining",     "strap",
    "buckle", "eyelet",  "gusset",     "spine",      "pastedown", "flyleaf", "tote",       "blade",
    "tang",   "jaw",     "screw",      "spindle",    "knob",      "dial",    "needle",     "eyepiece",
    "prism",  "bellows", "shutter",    "mainspring", "pendulum",  "bridge",  "tuning peg", "mouthpiece",
    "valve",  "reed",
};
static const char *const faults[] = {
    "a hairline",
    "a flea bite",
    "crazing",
    "foxing",
    "verdigris",
    "pitting",
    "a dent",
    "a ding",
    "woodworm holes",
    "a replaced screw",
    "an old solder repair",
    "a glued break",
    "flaking paint",
    "worn gilding",
    "lifting veneer",
    "a split seam",
    "moth damage",
    "a tide line",
    "a faded patch",
    "surface rust",
    "a missing pin",
    "a stripped thread",
    "a seized joint",
    "cloudiness",
    "a starcrack",
    "delamination",
    "oxidation",
    "a frayed edge",
    "dry rot",
    "a chewed corner",
    "a burnmark",
    "ringmarks",
    "fretwear",
    "plate wear",
    "mildew",
    "a musty smell",
    "an amateur repaint",
    "tape residue",
    "loose riveting",
    "a cracked molding",
    "a cupped board",
    "alligatoring",
};
static const char *const frames[] = {
    "%1$s with %3$s to the %2$s.",
    "There is %3$s at the %2$s of the %1$s.",
    "I found %3$s on the %2$s, shown in the fourth picture.",
    "The %2$s has %3$s; otherwise the %1$s is as it left the shed.",
    "This %1$s is missing its %2$s and shows %3$s.",
    "Please note %3$s near the %2$s.",
    "No %2$s came with the %1$s, and it has %3$s.",
    "The %2$s was replaced at some time, and there is %3$s besides.",
    "%1$s, untested, the %2$s with %3$s and some grime.",
    "Seen in daylight the %1$s has %3$s and a scuffed %2$s.",
    "Both the %2$s and its fixing show %3$s.",
    "Its %2$s is sound, although %3$s runs along one side of the %1$s.",
};

// Frames name their words by place so that each may order them as it likes; printf's own way is not standard
// C.
static const char *fill(struct arena *arena, const char *frame, const char *const words[3]) {
    struct buf out = buf_start(arena);
    for (const char *at = frame; *at; at++) {
        if (at[0] != '%') {
            buf_byte(&out, *at);
            continue;
        }
        buf_text(&out, words[at[1] - '1']);
        at += 3;
    }
    return out.at;
}

#define PICK(dice, list) list[dice_roll(dice, sizeof list / sizeof *list)]

// Hand-written ones first, then others, all different.
static size_t gather(struct arena *arena, const char **sentences) {
    const struct source *source =
        read_source(arena, project_path(arena, "tests/words/sentences.txt"), "none");
    size_t count = 0;
    for (size_t at = 0; count < SENTENCES && next_line(arena, source, &at, &sentences[count]);) count++;
    ck_assert_uint_ge(count, HAND_WRITTEN_LEAST);
    struct dice dice = {31};
    while (count < SENTENCES) {
        const char *const words[3] = {PICK(&dice, goods), PICK(&dice, parts), PICK(&dice, faults)};
        const char *fresh = fill(arena, PICK(&dice, frames), words);
        bool twice = false;
        for (size_t i = 0; i < count && !twice; i++) twice = !strcmp(sentences[i], fresh);
        if (!twice) sentences[count++] = fresh;
    }
    return count;
}

struct task {
    const char **sentences;
    size_t count;
    struct speller *speller;
    struct diags diags;
};

static struct task start(struct arena *arena) {
    struct speller_options options = {.both = true, .trade = shipped_trade(arena)};
    struct task task = {.sentences = arena_array(arena, SENTENCES, sizeof *task.sentences),
                        .speller = speller_new(NULL, &options),
                        .diags = diags_start(arena)};
    task.count = gather(arena, task.sentences);
    return task;
}

static void count_alarms(struct arena *arena, void *context) {
    (void)context;
    struct task task = start(arena);
    size_t alarms = 0;
    for (size_t i = 0; i < task.count; i++) {
        struct misspellings m = check_text(task.speller, task.sentences[i], &task.diags);
        if (!m.count) continue;
        alarms++;
        fprintf(stderr, "false alarm at '%.*s': %s\n", (int)(m.items[0].to - m.items[0].from),
                task.sentences[i] + m.items[0].from, task.sentences[i]);
    }
    printf("false alarms: %zu of %zu sentences\n", alarms, task.count);
    ck_assert_uint_eq(task.count, SENTENCES);
    ck_assert_uint_le(alarms * 1000, task.count * 5);
    speller_free(task.speller);
}

START_TEST(sentences_of_the_trade_raise_no_alarm) {
    within(count_alarms, NULL);
}
END_TEST

static bool is_small(char c) {
    return c >= 'a' && c <= 'z';
}

// Where a word of five small letters or more starts, looked for from a place at random; false when there is
// none.
static bool find_word(const char *text, struct dice *dice, size_t *from, size_t *size) {
    size_t length = strlen(text), turn = dice_roll(dice, (uint32_t)length);
    for (size_t i = 0; i < length; i++) {
        size_t at = (turn + i) % length;
        if (!is_small(text[at]) || (at && text[at - 1] != ' ')) continue;
        size_t n = 0;
        while (is_small(text[at + n])) n++;
        if (n < 5 || (text[at + n] && !strchr(" .,;", text[at + n]))) continue;
        *from = at;
        *size = n;
        return true;
    }
    return false;
}

// One slip inside a word: a letter left out, doubled, changed, or two swapped.
static char *slip(struct arena *arena, const char *text, size_t from, size_t size, struct dice *dice) {
    struct buf out = buf_start(arena);
    size_t at = from + 1 + dice_roll(dice, (uint32_t)size - 2);
    buf_add(&out, text, at);
    switch (dice_roll(dice, 4)) {
    case 0:
        break;
    case 1:
        buf_format(&out, "%c%c", text[at], text[at]);
        break;
    case 2:
        buf_byte(&out, (char)('a' + (text[at] - 'a' + 1 + (int)dice_roll(dice, 25)) % 26));
        break;
    default:
        buf_format(&out, "%c%c", text[at + 1], text[at]);
        at++;
        break;
    }
    buf_text(&out, text + at + 1);
    return out.at;
}

static void count_caught(struct arena *arena, void *context) {
    (void)context;
    struct task task = start(arena);
    struct dice dice = {7};
    size_t slips = 0, caught = 0, in_place = 0, put_right = 0;
    for (size_t i = 0; i < task.count; i++) {
        const char *text = task.sentences[i];
        size_t from, size;
        if (!find_word(text, &dice, &from, &size)) continue;
        char *wrong = slip(arena, text, from, size, &dice);
        size_t wrong_size = size + strlen(wrong) - strlen(text);
        if (!strcmp(wrong, text) || speller_knows(task.speller, wrong + from, wrong_size, &task.diags))
            continue;
        slips++;
        struct misspellings m = check_text(task.speller, wrong, &task.diags);
        bool hit = false;
        for (size_t k = 0; k < m.count; k++)
            hit = hit || (m.items[k].from == from && m.items[k].to == from + wrong_size);
        caught += m.count > 0;
        in_place += hit;
        struct suggestions s = speller_suggest(task.speller, wrong + from, wrong_size, 1, &task.diags);
        put_right += s.count && strlen(s.words[0]) == size && !strncmp(s.words[0], text + from, size);
    }
    printf("slips that make no word: %zu, caught %zu, in place %zu, first suggestion right %zu\n", slips,
           caught, in_place, put_right);
    ck_assert_uint_ge(slips, 1500);
    ck_assert_uint_eq(in_place, slips);
    ck_assert_uint_ge(put_right * 100, slips * 75);
    speller_free(task.speller);
}

START_TEST(a_slip_in_any_of_them_is_caught) {
    within(count_caught, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("words/sentences");
    TCase *all = tcase_create("all");
    tcase_add_test(all, sentences_of_the_trade_raise_no_alarm);
    tcase_add_test(all, a_slip_in_any_of_them_is_caught);
    suite_add_tcase(suite, all);
    return run_suite(suite);
}
