// SPDX-License-Identifier: MIT
// Private data planted anywhere in a record reaches no output, that it was kept back is told, and a record
// without any is not touched.
#include "../rules/records.h"

enum { PLANTED_RECORDS = 3200, CLEAN_RECORDS = 1500, SECRETS_MOST = 12 };

static const struct title_options usual = {80, COUNT_GRAPHEMES, LOCALE_US, NULL};

// In a shape: F and G first names, S a surname, I and J initials, Y a year, 0 … 9 times that many digits.
struct shape {
    const char *shape;
    bool strong; // private in the fields of makers and codes too
};

static const struct shape shapes[] = {{"property of $F $S", true},
                                      {"ex libris $F $S", true},
                                      {"belonged to $F $S", true},
                                      {"$F $S, her book", false},
                                      {"Mrs $S", false},
                                      {"Pvt. $F $S", false},
                                      {"to $F from $G", false},
                                      {"for $F with love", false},
                                      {"owner's name $F $S", false},
                                      {"with love from $G", false},
                                      {"$I.$J. $Y", false},
                                      {"$I$J 12.5.$Y", false},
                                      {"$3 $S Street", false},
                                      {"$2 $S Lane, Ostermouth", false},
                                      {"P.O. Box $4", false},
                                      {"$S, QX $5", false},
                                      {"555-$3-$4", false},
                                      {"(555) $3-$4", false},
                                      {"tel. $6", true},
                                      {"01$3 $6", false},
                                      {"+99 $3 $7", false},
                                      {"GLenview $1-$4", false},
                                      {"acct no. $8", true},
                                      {"Rx $6", true},
                                      {"take one tablet twice daily", true},
                                      {"serial no. $7", true},
                                      {"S/N $I$6", true},
                                      {"$F@$S.example", true},
                                      {"policy no. $7", false},
                                      {"@$F$S", true},
                                      {"900-$2-$4", false}};

struct plant {
    const char *text;
    const char *secrets[SECRETS_MOST];
    size_t count;
};

static void add_secret(struct plant *plant, const char *secret) {
    ck_assert_uint_lt(plant->count, SECRETS_MOST);
    plant->secrets[plant->count++] = secret;
}

static const char *random_digits(struct arena *arena, struct dice *dice, size_t count) {
    char *digits = arena_alloc(arena, count + 1);
    for (size_t i = 0; i < count; i++)
        digits[i] = (char)('0' + (i ? dice_roll(dice, 10) : 1 + dice_roll(dice, 9)));
    return digits;
}

static const char *random_piece(struct arena *arena, struct dice *dice, char what) {
    static const char *const first[] = {"Wendeline", "Tamsel", "Hobart", "Quinella", "Osbert", "Velda"};
    static const char *const heads[] = {"Quor", "Vens", "Skel", "Tamb", "Farq", "Ombr"};
    static const char *const tails[] = {"wick", "orne", "aby", "ulow", "isk", "eld"};
    static const char *const initials[] = {"B", "F", "J", "Q", "T", "Z"};
    if (what == 'F' || what == 'G') return PICK(dice, first);
    if (what == 'S') return arena_format(arena, "%s%s", PICK(dice, heads), PICK(dice, tails));
    if (what == 'I' || what == 'J') return PICK(dice, initials);
    if (what == 'Y') return arena_format(arena, "%u", 1850 + dice_roll(dice, 110));
    return random_digits(arena, dice, (size_t)(what - '0'));
}

// The planted text, and the pieces of it that must not come out: names, numbers, and the whole.
static struct plant random_plant(struct arena *arena, struct dice *dice, bool strong) {
    const struct shape *shape;
    do shape = &shapes[dice_roll(dice, (uint32_t)(sizeof shapes / sizeof *shapes))];
    while (strong && !shape->strong);
    struct plant plant = {NULL, {NULL}, 0};
    struct buf out = buf_start(arena);
    for (const char *c = shape->shape; *c; c++) {
        if (*c != '$') {
            buf_byte(&out, *c);
            continue;
        }
        const char *piece = random_piece(arena, dice, *++c);
        buf_text(&out, piece);
        if (strlen(piece) >= 4 && *c != 'Y') add_secret(&plant, piece);
    }
    add_secret(&plant, out.at);
    plant.text = out.at;
    return plant;
}

static const char *around(struct arena *arena, struct dice *dice, const char *text) {
    static const char *const frames[] = {
        "%s", "%s", "green, %s", "near %s on the side", "Harbor mill, %s", "%s at the back"};
    const char *frame = PICK(dice, frames), *at = strstr(frame, "%s");
    return arena_format(arena, "%.*s%s%s", (int)(at - frame), frame, text, at + 2);
}

static struct node *list_of(struct arena *arena, struct node *record, const char *key) {
    const struct node *old = node_get(record, key);
    if (old) return (struct node *)(uintptr_t)old;
    struct node *list = node_list(arena);
    node_put(arena, record, key, list);
    return list;
}

static void plant_flaw(struct arena *arena, struct dice *dice, struct node *record, const char *text) {
    static const char *const kinds[] = {"owner-name", "chip", "stain", "rust", "monogram"};
    struct node *flaw = node_map(arena);
    put_word(arena, flaw, "kind", PICK(dice, kinds));
    put_word(arena, flaw, dice_roll(dice, 3) ? "where" : "part", text);
    node_push(arena, list_of(arena, record, "flaws"), flaw);
}

static void plant_pair(struct arena *arena, struct node *list, const char *key, const char *text,
                       const char *other, const char *with) {
    struct node *map = node_map(arena);
    put_word(arena, map, key, text);
    if (other) put_word(arena, map, other, with);
    node_push(arena, list, map);
}

static void plant_attribute(struct arena *arena, struct node *record, const char *name, const char *text) {
    struct node *attributes = (struct node *)(uintptr_t)node_get(record, "attributes");
    if (!attributes) {
        attributes = node_map(arena);
        node_put(arena, record, "attributes", attributes);
    }
    if (!node_get(attributes, name)) put_word(arena, attributes, name, text);
}

// Puts the text into one field of the record; those below STRONG_FIELDS take only what a cue word names.
enum { STRONG_FIELDS = 3, FIELDS = 15 };

static void plant_field(struct arena *arena, struct dice *dice, struct node *record, uint32_t field,
                        const char *text) {
    static const char *const plain[] = {"color", "material", "finish", "technique", "shape"};
    switch (field) {
    case 0:
        plant_attribute(arena, record, "brand", text);
        break;
    case 1:
        plant_attribute(arena, record, "mpn", text);
        break;
    case 2:
        plant_pair(arena, list_of(arena, record, "fits"), "model", text, "brand", "Pellander");
        break;
    case 3:
        plant_attribute(arena, record, PICK(dice, plain), text);
        break;
    case 4:
        node_push(arena, list_of(arena, record, "marks"), node_text(arena, text));
        break;
    case 5:
        plant_pair(arena, list_of(arena, record, "marks"), "text", text, "where", "base");
        break;
    case 6:
        plant_pair(arena, list_of(arena, record, "marks"), "text", "HARBOR MILL", "where", text);
        break;
    case 7:
    case 8:
        plant_flaw(arena, dice, record, text);
        break;
    case 9:
        plant_pair(arena, list_of(arena, record, "clear"), "kind", "dent-bend", "where", text);
        break;
    case 10:
        node_push(arena, list_of(arena, record, "unchecked"), node_text(arena, text));
        break;
    case 11:
        node_push(arena, list_of(arena, record, "includes"), node_text(arena, text));
        break;
    case 12:
        plant_pair(arena, list_of(arena, record, "photos"), "file", "a.jpg", "shows", text);
        break;
    case 13:
        if (!node_get(record, "listing")) {
            struct node *listing = node_map(arena);
            put_word(arena, listing, "title", text);
            put_word(arena, listing, "description", text);
            node_put(arena, record, "listing", listing);
        }
        break;
    default:
        if (!node_get(record, "type")) put_word(arena, record, "type", arena_format(arena, "lamp, %s", text));
        break;
    }
}

static const char *all_outputs(struct arena *arena, const struct listing *listing) {
    struct buf out = buf_start(arena);
    listing_card(arena, listing, &out, false);
    listing_explain(arena, listing, &out, false);
    page_begin(&out);
    listing_page(arena, listing, &out);
    page_end(&out);
    json_write(&out, listing_tree(arena, listing));
    json_write(&out, listing_explain_tree(arena, listing));
    yaml_write(arena, &out, listing_tree(arena, listing));
    return out.at;
}

// The place in the output, for a message of bearable length.
static const char *found_around(struct arena *arena, const char *output, const char *secret) {
    const char *at = strstr(output, secret);
    if (!at) return "";
    const char *from = at - output > 60 ? at - 60 : output;
    return arena_copy(arena, from, strnlen(from, 160));
}

static void check_planted(struct arena *arena, void *context) {
    (void)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    size_t told = 0;
    for (size_t i = 0; i < PLANTED_RECORDS; i++) {
        struct arena_mark mark = arena_mark(arena);
        struct dice dice = {0x9FB21C651E98DF25u * (i + 1) | 1};
        for (int k = 0; k < 8; k++) dice_roll(&dice, 2);
        drafter.scanner = scanner_new(arena, drafter.rules->finder_count);
        struct node *tree = random_record(arena, &dice, drafter.rules, i);
        struct plant plants[3];
        size_t count = 1 + dice_roll(&dice, 3);
        for (size_t p = 0; p < count; p++) {
            uint32_t field = dice_roll(&dice, FIELDS);
            plants[p] = random_plant(arena, &dice, field < STRONG_FIELDS);
            plant_field(arena, &dice, tree, field, around(arena, &dice, plants[p].text));
        }
        const struct listing *listing =
            listing_draft(arena, &drafter, read_made(arena, drafter.rules, tree), &usual);
        const char *output = all_outputs(arena, listing);
        for (size_t p = 0; p < count; p++)
            for (size_t s = 0; s < plants[p].count; s++)
                ck_assert_msg(!strstr(output, plants[p].secrets[s]), "record %zu: '%s' of '%s' came out\n%s",
                              i, plants[p].secrets[s], plants[p].text,
                              found_around(arena, output, plants[p].secrets[s]));
        told += listing->withheld_count > 0;
        arena_release(arena, &mark);
    }
    // A field that the record had already is not planted again.
    ck_assert_uint_ge(told, PLANTED_RECORDS * 85 / 100);
}

START_TEST(what_is_planted_never_comes_out) {
    within(check_planted, NULL);
}
END_TEST

static void check_clean(struct arena *arena, void *context) {
    (void)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    for (size_t i = 0; i < CLEAN_RECORDS; i++) {
        struct arena_mark mark = arena_mark(arena);
        struct dice dice = {0xD6E8FEB86659FD93u * (i + 1) | 1};
        drafter.scanner = scanner_new(arena, drafter.rules->finder_count);
        const struct record *record =
            read_made(arena, drafter.rules, random_record(arena, &dice, drafter.rules, i));
        const struct listing *listing = listing_draft(arena, &drafter, record, &usual);
        bool held = listing->cautions->stop; // told with the caution that keeps it back
        ck_assert_msg(listing->withheld_count == (held ? 1 : 0), "record %zu: %s", i,
                      listing->withheld[0].what);
        ck_assert_uint_eq(listing->record->mark_count, record->mark_count);
        ck_assert_uint_eq(listing->record->attribute_count, record->attribute_count);
        arena_release(arena, &mark);
    }
}

START_TEST(what_is_not_private_is_not_touched) {
    within(check_clean, NULL);
}
END_TEST

// What stands in its place.
static const struct {
    const char *record, *description, *what, *why;
} places[] = {
    {"type: lamp\nmarks: [TEL 555-0134]\n", "Marked with a telephone number; not given here.",
     "a telephone number in marks[0]", "a person can be reached by it"},
    {"type: lamp\nmarks: [{text: BRASSENDELL J.B. 12.5.1911, where: base}]\n", "Marked \"BRASSENDELL", NULL,
     NULL},
    {"type: lamp\nmarks: [{text: 'BRASSENDELL, SERIAL NO. 48219', where: base}]\n",
     "Marked with a serial number on the base; not given here.", "a serial number in marks[0]",
     "a whole serial number can be misused"},
    {"type: lamp\nfamily: lighting\nflaws: [{kind: chip, where: near Mrs Quillow's label}]\n",
     "near an owner's label", "an owner's name in flaws[0].where", "it names a person"},
    {"type: book\nfamily: books\nflaws: [{kind: owner-name, where: 'flyleaf, reads Edna Quillow, 1932'}]\n",
     "flyleaf", "an owner's name in flaws[0].where", "it names a person"},
    {"type: book\nfamily: books\nmarks: [{text: Edna Quillow, where: flyleaf}]\n",
     "Marked with an owner's name on the flyleaf; not given here.", "an owner's name in marks[0]",
     "it names a person"},
    {"type: chest\nunchecked: [inside of Mr Venn's box]\n", "inside of an owner's box",
     "an owner's name in unchecked[0]", "it names a person"},
    {"type: chest\nincludes: [letter from Edna Quillow]\n", "Included: letter.",
     "an owner's name in includes[0]", "it names a person"},
    {"type: book\nattributes: {author: Mrs Elowen Marsh}\n", "Mrs Elowen Marsh", NULL, NULL},
};

static void check_places(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
        const struct listing *listing = draft_of(arena, shipped_once(), places[i].record);
        ck_assert_msg(strstr(listing->description, places[i].description) != NULL, "%s\n%s", places[i].record,
                      listing->description);
        if (!places[i].what) continue;
        ck_assert_uint_eq(listing->withheld_count, 1);
        ck_assert_str_eq(listing->withheld[0].what, places[i].what);
        ck_assert_str_eq(listing->withheld[0].why, places[i].why);
    }
}

START_TEST(its_place_says_what_was_there) {
    within(check_places, NULL);
}
END_TEST

static void check_notes(struct arena *arena, void *context) {
    (void)context;
    static const char yaml[] = "notes: 'Chest of Mrs Quillow, chip by the tel. 555-0134 tag'\n"
                               "type: {value: chest, span: [0, 20]}\nflaws: [{kind: chip, span: [22, 51]}]\n";
    const struct listing *listing = draft_of(arena, shipped_once(), yaml);
    const struct {
        size_t from, to;
        const char *text;
    } spans[] = {{0, 20, "Chest of an owner's name"}, {0, 8, "Chest of"},
                 {12, 20, "an owner's name"},         {22, 51, "chip by the a telephone number tag"},
                 {45, 51, "a telephone number tag"},  {0, 5, "Chest"}};
    for (size_t i = 0; i < sizeof spans / sizeof *spans; i++)
        ck_assert_str_eq(listing_note(arena, listing, (struct note_span){spans[i].from, spans[i].to}),
                         spans[i].text);
}

START_TEST(notes_are_quoted_without_it) {
    within(check_notes, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("listing.withheld");
    TCase *tests = tcase_create("withheld");
    tcase_set_timeout(tests, 300);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, what_is_planted_never_comes_out);
    tcase_add_test(tests, what_is_not_private_is_not_touched);
    tcase_add_test(tests, its_place_says_what_was_there);
    tcase_add_test(tests, notes_are_quoted_without_it);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
