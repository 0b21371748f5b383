// SPDX-License-Identifier: MIT
// One record with every key, in YAML, JSON and CSV: the same record each time. The plain forms that people
// write by hand.
#include "support.h"

#include "format/csv.h"
#include "format/stream.h"

static const char full_yaml[] =
    "id: full\n"
    "notes: green jug, chip on the rim, paid little for it\n"
    "type: {value: jug, sure: likely, because: the spout, span: [6, 9], others: [pitcher, ewer]}\n"
    "family: ceramics\n"
    "attributes:\n"
    "  color: [{value: green, sure: stated, span: [0, 5], because: daylight}, {value: white, of: lid, sure: "
    "guess}]\n"
    "  material: [{value: stoneware}]\n"
    "flaws:\n"
    "  - {kind: chip, where: rim, part: lid, count: 2, of: 6, size: {value: 0.25, unit: in, about: true}, "
    "severity: light,\n"
    "     sure: likely, photo: rim.jpg, span: [11, 26]}\n"
    "  - {kind: crazing, size: {mm: 12.5}}\n"
    "clear:\n"
    "  - {kind: hairline, where: inside, part: body, how: none-seen, span: [0, 5]}\n"
    "  - {kind: rust, how: denied}\n"
    "unchecked: [crack-through, the base]\n"
    "includes: [{what: lid, count: 2}]\n"
    "count: 6\n"
    "measurements:\n"
    "  - {dimension: height, value: 9.5, unit: in, about: true, of: body, span: [0, 5]}\n"
    "  - {dimension: weight, g: 850}\n"
    "  - {dimension: diameter, from: 3, to: 4, unit: in}\n"
    "  - {dimension: capacity, ml: 1000}\n"
    "marks: [{text: \"No 4\", where: base}]\n"
    "fits: [{brand: Pellander, model: C-6, sure: likely, span: [0, 5]}]\n"
    "dates: {from: 1950, to: 1959, because: the stamp}\n"
    "listing: {title: Jug, description: A jug, price: \"12.50\", currency: EUR, listed: \"2020-01-02\", "
    "where: market}\n"
    "photos: [{file: a.jpg, shows: the rim}]\n"
    "asides: [[33, 51]]\n"
    "unread: [[6, 9]]\n"
    "own: {bin: A4, cost: \"3\", deep: {er: \"1\"}}\n";

static const char full_json[] =
    "{\"id\":\"full\",\"notes\":\"green jug, chip on the rim, paid little for "
    "it\",\"type\":{\"value\":\"jug\",\"sure\":\"likely\","
    "\"because\":\"the "
    "spout\",\"span\":[6,9],\"others\":[\"pitcher\",\"ewer\"]},\"family\":\"ceramics\",\"attributes\":{"
    "\"color\":["
    "{\"value\":\"green\",\"sure\":\"stated\",\"span\":[0,5],\"because\":\"daylight\"},{\"value\":\"white\","
    "\"of\":\"lid\","
    "\"sure\":\"guess\"}],\"material\":[{\"value\":\"stoneware\"}]},\"flaws\":[{\"kind\":\"chip\",\"where\":"
    "\"rim\",\"part\":\"lid\","
    "\"count\":2,\"of\":6,\"size\":{\"value\":0.25,\"unit\":\"in\",\"about\":true},\"severity\":\"light\","
    "\"sure\":\"likely\","
    "\"photo\":\"rim.jpg\",\"span\":[11,26]},{\"kind\":\"crazing\",\"size\":{\"mm\":12.5}}],\"clear\":[{"
    "\"kind\":\"hairline\","
    "\"where\":\"inside\",\"part\":\"body\",\"how\":\"none-seen\",\"span\":[0,5]},{\"kind\":\"rust\",\"how\":"
    "\"denied\"}],"
    "\"unchecked\":[\"crack-through\",\"the "
    "base\"],\"includes\":[{\"what\":\"lid\",\"count\":2}],\"count\":6,\"measurements\":["
    "{\"dimension\":\"height\",\"value\":9.5,\"unit\":\"in\",\"about\":true,\"of\":\"body\",\"span\":[0,5]},{"
    "\"dimension\":\"weight\","
    "\"g\":850},{\"dimension\":\"diameter\",\"from\":3,\"to\":4,\"unit\":\"in\"},{\"dimension\":\"capacity\","
    "\"ml\":1000}],"
    "\"marks\":[{\"text\":\"No "
    "4\",\"where\":\"base\"}],\"fits\":[{\"brand\":\"Pellander\",\"model\":\"C-6\",\"sure\":\"likely\","
    "\"span\":[0,5]}],\"dates\":{\"from\":1950,\"to\":1959,\"because\":\"the "
    "stamp\"},\"listing\":{\"title\":\"Jug\","
    "\"description\":\"A "
    "jug\",\"price\":\"12.50\",\"currency\":\"EUR\",\"listed\":\"2020-01-02\",\"where\":\"market\"},"
    "\"photos\":[{\"file\":\"a.jpg\",\"shows\":\"the rim\"}],\"asides\":[[33,51]],\"unread\":[[6,9]],"
    "\"own\":{\"bin\":\"A4\",\"cost\":\"3\",\"deep\":{\"er\":\"1\"}}}\n";

// A column, a cell.
static const char *const full_csv[][2] = {{"id", "full"},
                                          {"notes", "\"green jug, chip on the rim, paid little for it\""},
                                          {"type.value", "jug"},
                                          {"type.sure", "likely"},
                                          {"type.because", "the spout"},
                                          {"type.span.1", "6"},
                                          {"type.span.2", "9"},
                                          {"type.others.1", "pitcher"},
                                          {"type.others.2", "ewer"},
                                          {"family", "ceramics"},
                                          {"attributes.color.1.value", "green"},
                                          {"attributes.color.1.sure", "stated"},
                                          {"attributes.color.1.span.1", "0"},
                                          {"attributes.color.1.span.2", "5"},
                                          {"attributes.color.1.because", "daylight"},
                                          {"attributes.color.2.value", "white"},
                                          {"attributes.color.2.of", "lid"},
                                          {"attributes.color.2.sure", "guess"},
                                          {"attributes.material", "stoneware"},
                                          {"flaws.1.kind", "chip"},
                                          {"flaws.1.where", "rim"},
                                          {"flaws.1.part", "lid"},
                                          {"flaws.1.count", "2"},
                                          {"flaws.1.of", "6"},
                                          {"flaws.1.size.value", "0.25"},
                                          {"flaws.1.size.unit", "in"},
                                          {"flaws.1.size.about", "yes"},
                                          {"flaws.1.severity", "light"},
                                          {"flaws.1.sure", "likely"},
                                          {"flaws.1.photo", "rim.jpg"},
                                          {"flaws.1.span.1", "11"},
                                          {"flaws.1.span.2", "26"},
                                          {"flaws.2.kind", "crazing"},
                                          {"flaws.2.size.mm", "12.5"},
                                          {"clear.1.kind", "hairline"},
                                          {"clear.1.where", "inside"},
                                          {"clear.1.part", "body"},
                                          {"clear.1.how", "none-seen"},
                                          {"clear.1.span.1", "0"},
                                          {"clear.1.span.2", "5"},
                                          {"clear.2.kind", "rust"},
                                          {"clear.2.how", "denied"},
                                          {"unchecked.1", "crack-through"},
                                          {"unchecked.2", "the base"},
                                          {"includes.1.what", "lid"},
                                          {"includes.1.count", "2"},
                                          {"count", "6"},
                                          {"measurements.1.dimension", "height"},
                                          {"measurements.1.value", "9.5"},
                                          {"measurements.1.unit", "in"},
                                          {"measurements.1.about", "true"},
                                          {"measurements.1.of", "body"},
                                          {"measurements.1.span.1", "0"},
                                          {"measurements.1.span.2", "5"},
                                          {"measurements.2.dimension", "weight"},
                                          {"measurements.2.g", "850"},
                                          {"measurements.3.dimension", "diameter"},
                                          {"measurements.3.from", "3"},
                                          {"measurements.3.to", "4"},
                                          {"measurements.3.unit", "in"},
                                          {"measurements.4.dimension", "capacity"},
                                          {"measurements.4.ml", "1000"},
                                          {"marks.1.text", "No 4"},
                                          {"marks.1.where", "base"},
                                          {"fits.1.brand", "Pellander"},
                                          {"fits.1.model", "C-6"},
                                          {"fits.1.sure", "likely"},
                                          {"fits.1.span.1", "0"},
                                          {"fits.1.span.2", "5"},
                                          {"dates.from", "1950"},
                                          {"dates.to", "1959"},
                                          {"dates.because", "the stamp"},
                                          {"listing.title", "Jug"},
                                          {"listing.description", "A jug"},
                                          {"listing.price", "12.50"},
                                          {"listing.currency", "EUR"},
                                          {"listing.listed", "2020-01-02"},
                                          {"listing.where", "market"},
                                          {"photos.1.file", "a.jpg"},
                                          {"photos.1.shows", "the rim"},
                                          {"asides.1.1", "33"},
                                          {"asides.1.2", "51"},
                                          {"unread.1.1", "6"},
                                          {"unread.1.2", "9"},
                                          {"own.bin", "A4"},
                                          {"own.cost", "3"},
                                          {"own.deep.er", "1"}};
enum { COLUMNS = sizeof full_csv / sizeof *full_csv };

static const char full_dump[] =
    " id=<full> notes=<green jug, chip on the rim, paid little for it> family=ceramics count=6\n"
    "type likely value=<jug> because=<the spout> span=6..9\n"
    "other <pitcher>\n"
    "other <ewer>\n"
    "attribute stated name=<color> value=<green> because=<daylight> span=0..5\n"
    "attribute guess name=<color> value=<white> of=<lid>\n"
    "attribute stated name=<material> value=<stoneware>\n"
    "flaw chip light likely 2/6 where=<rim> part=<lid> photo=<rim.jpg> 0.25 in base=6.35 about span=11..26\n"
    "flaw crazing unknown stated 0/0 12.5 mm base=12.5\n"
    "clear hairline none-seen where=<inside> part=<body> span=0..5\n"
    "clear rust denied\n"
    "unchecked <crack-through>\n"
    "unchecked <the base>\n"
    "includes 2 <lid>\n"
    "measure <height> 9.5 in base=241.3 about of=<body> span=0..5\n"
    "measure <weight> 850 g base=850\n"
    "measure <diameter> 3..4 in\n"
    "measure <capacity> 1000 ml base=1000\n"
    "mark text=<No 4> where=<base>\n"
    "fits likely brand=<Pellander> model=<C-6> span=0..5\n"
    "photo file=<a.jpg> shows=<the rim>\n"
    "years 1950..1959 because=<the stamp>\n"
    "listing title=<Jug> description=<A jug> price=<12.50> currency=<EUR> listed=<2020-01-02> "
    "where=<market>\n"
    "tree 0 [[<33><51>]]\n"
    "tree 1 [[<6><9>]]\n"
    "tree 2 {bin:<A4>cost:<3>deep:{er:<1>}}";

struct text_in {
    const char *text;
    size_t at;
};

static size_t give(void *context, char *to, size_t room) {
    struct text_in *in = context;
    size_t left = strlen(in->text + in->at), n = left < room ? left : room;
    memcpy(to, in->text + in->at, n);
    in->at += n;
    return n;
}

// The one record of an input, read as the command reads it.
static const char *dump_of(struct arena *arena, const char *text, enum form form) {
    struct text_in in = {text, 0};
    struct stream_source from = {"in", give, &in};
    struct diags diags = diags_start(arena);
    struct stream *stream = stream_open(&from, form, NULL);
    struct node *tree = NULL;
    bool had = stream_next(stream, arena, &diags, &tree);
    struct record record = {0};
    bool fine = had && tree && record_read(arena, shipped_once()->rules, tree, LOCALE_US, 1, &record, &diags);
    const char *dump = fine ? dump_record(arena, &record) : NULL;
    stream_close(stream);
    ck_assert_msg(dump != NULL, "%s\n%s", text, printed(arena, &diags));
    return dump;
}

static void same_in_all_forms(struct arena *arena, void *context) {
    (void)context;
    ck_assert_str_eq(dump_of(arena, full_yaml, FORM_YAML), full_dump);
    ck_assert_str_eq(dump_of(arena, full_json, FORM_JSON), full_dump);
    ck_assert_str_eq(dump_of(arena, full_json, FORM_NDJSON), full_dump);
    struct buf csv = buf_start(arena);
    for (size_t i = 0; i < COLUMNS; i++) buf_format(&csv, "%s%s", i ? "," : "", full_csv[i][0]);
    for (size_t i = 0; i < COLUMNS; i++) buf_format(&csv, "%s%s", i ? "," : "\r\n", full_csv[i][1]);
    buf_text(&csv, "\r\n");
    ck_assert_str_eq(dump_of(arena, csv.at, FORM_CSV), full_dump);
}

START_TEST(one_record_in_every_form) {
    within(same_in_all_forms, NULL);
}
END_TEST

static const struct {
    const char *plain, *full;
} shorthands[] = {
    {"type: jug\n", "type: {value: jug, sure: stated}\n"},
    {"attributes: {color: green}\n", "attributes: {color: [{value: green, sure: stated}]}\n"},
    {"attributes: {color: [green, white]}\n", "attributes: {color: [{value: green}, {value: white}]}\n"},
    {"attributes: {size: 8}\n", "attributes: {size: [{value: \"8\"}]}\n"},
    {"flaws: chip\n", "flaws: [{kind: chip}]\n"},
    {"flaws: [chip, rust]\n", "flaws: [{kind: chip}, {kind: rust}]\n"},
    {"flaws: {kind: chip, where: rim}\n", "flaws: [{kind: chip, where: rim}]\n"},
    {"flaws: [{kind: chip, severity: }]\n", "flaws: [{kind: chip}]\n"},
    {"clear: chip\n", "clear: [{kind: chip, how: denied}]\n"},
    {"unchecked: the base\n", "unchecked: [the base]\n"},
    {"includes: lid\n", "includes: [{what: lid}]\n"},
    {"marks: No 4\n", "marks: [{text: No 4}]\n"},
    {"marks: [17]\n", "marks: [{text: \"17\"}]\n"},
    {"fits: C-6\n", "fits: [{model: C-6}]\n"},
    {"photos: a.jpg\n", "photos: [{file: a.jpg}]\n"},
    {"measurements: {dimension: height, mm: 90}\n",
     "measurements: [{dimension: height, value: 90, unit: mm}]\n"},
    {"measurements: [{dimension: weight, g: 90}]\n",
     "measurements: [{dimension: weight, value: 90, unit: g}]\n"},
    {"measurements: [{dimension: capacity, ml: 90}]\n",
     "measurements: [{dimension: capacity, value: 90, unit: ml}]\n"},
    {"measurements: [{dimension: height, value: 9, unit: inches}]\n",
     "measurements: [{dimension: height, value: 9, unit: in}]\n"},
    {"flaws:\ncount:\ntype: jug\n", "type: jug\n"},
    {"type: cafe\xCC\x81 cup\n", "type: caf\xC3\xA9 cup\n"}};

static void same_as_written_out(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof shorthands / sizeof *shorthands; i++)
        ck_assert_str_eq(dump_of(arena, shorthands[i].plain, FORM_YAML),
                         dump_of(arena, shorthands[i].full, FORM_YAML));
}

START_TEST(plain_forms_stand_for_full_ones) {
    within(same_as_written_out, NULL);
}
END_TEST

// The seller's own words stay byte for byte, and spans count their bytes.
static void notes_stay(struct arena *arena, void *context) {
    (void)context;
    const char *dump =
        dump_of(arena, "{\"notes\":\"cafe\xCC\x81  jug\\t!\",\"type\":{\"value\":\"jug\",\"span\":[8,11]}}",
                FORM_JSON);
    ck_assert_str_eq(dump, " id=<item-1> notes=<cafe\xCC\x81  jug\t!> family=none count=0\ntype stated "
                           "value=<jug> span=8..11\n");
}

START_TEST(notes_are_not_rewritten) {
    within(notes_stay, NULL);
}
END_TEST

static void own_comes_through(struct arena *arena, void *context) {
    (void)context;
    const struct listing *listing =
        draft_of(arena, shipped_once(),
                 "type: jug\nown: {bin: \"007\", list: [1, {a: b}], yes: true, text: 'it''s <b>'}\n");
    struct buf out = buf_start(arena);
    json_write(&out, node_get(listing_tree(arena, listing), "own"));
    ck_assert_str_eq(
        out.at, "{\"bin\":\"007\",\"list\":[\"1\",{\"a\":\"b\"}],\"yes\":\"true\",\"text\":\"it's <b>\"}");
}

START_TEST(own_keys_are_carried_through) {
    within(own_comes_through, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("item.forms");
    TCase *tests = tcase_create("records");
    tcase_set_timeout(tests, 60);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, one_record_in_every_form);
    tcase_add_test(tests, plain_forms_stand_for_full_ones);
    tcase_add_test(tests, notes_are_not_rewritten);
    tcase_add_test(tests, own_keys_are_carried_through);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
