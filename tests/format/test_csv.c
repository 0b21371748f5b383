// SPDX-License-Identifier: MIT
// CSV. The cases of splitting follow the seven rules of RFC 4180, section 2; writing is checked by reading
// back.
#include "support.h"

#include "format/csv.h"

static struct csv_row split_text(struct arena *arena, const char *text, char delimiter, struct diags *diags) {
    struct source *source = arena_alloc(arena, sizeof *source);
    source->name = "in.csv";
    source->text = text;
    source->size = strlen(text);
    source->first_line = 1;
    *diags = diags_start(arena);
    return csv_split(arena, source, delimiter, diags);
}

static const struct {
    const char *text;
    char delimiter;
    const char *cells; // joined by "|"
} SPLITS[] = {
    {"aaa,bbb,ccc", ',', "aaa|bbb|ccc"},
    {"\"aaa\",\"bbb\",\"ccc\"", ',', "aaa|bbb|ccc"},
    {"\"aaa\",\"b\r\nbb\",\"ccc\"", ',', "aaa|b\r\nbb|ccc"},
    {"\"aaa\",\"b\"\"bb\",\"ccc\"", ',', "aaa|b\"bb|ccc"},
    {"a, b ,c", ',', "a| b |c"}, // spaces belong to the cell
    {"a,,c,", ',', "a||c|"},
    {"\"\",\"\"\"\"", ',', "|\""},
    {"a;b,c;\"d;e\"", ';', "a|b,c|d;e"},
    {"a\tb\t\"c\td\"", '\t', "a|b|c\td"},
    {"caf\xC3\xA9,\"\xF0\x9F\x99\x82\"", ',', "caf\xC3\xA9|\xF0\x9F\x99\x82"},
    {"", ',', ""},
};

static void split_all(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof SPLITS / sizeof *SPLITS; i++) {
        struct diags diags;
        struct csv_row row = split_text(arena, SPLITS[i].text, SPLITS[i].delimiter, &diags);
        struct buf joined = buf_start(arena), raw = buf_start(arena);
        for (size_t k = 0; k < row.count; k++) {
            const struct place at = row.cells[k].at;
            if (k) buf_byte(&joined, '|');
            if (k) buf_byte(&raw, SPLITS[i].delimiter);
            buf_text(&joined, row.cells[k].text);
            buf_add(&raw, SPLITS[i].text + at.from, at.to - at.from);
            ck_assert_uint_eq(row.cells[k].size, strlen(row.cells[k].text));
        }
        ck_assert_str_eq(joined.at, SPLITS[i].cells);
        ck_assert_str_eq(raw.at, SPLITS[i].text); // places are the raw bytes, quotes included
        ck_assert_uint_eq(diags.count, 0);
    }
}

START_TEST(rows_split_by_the_rfc) {
    within(split_all, NULL);
}
END_TEST

static const struct fault FAULTS[] = {
    {"a,5\" wide,c", 3, 4, CODE_CSV, "double this one"},
    {"a,\"b\"c,d", 5, 6, CODE_CSV, "after the closing quote"},
    {"a,\"bcd", 2, 3, CODE_CSV, "closing quote is missing"},
};

static void split_faults(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof FAULTS / sizeof *FAULTS; i++) {
        struct diags diags;
        split_text(arena, FAULTS[i].text, ',', &diags);
        ck_assert_uint_eq(diags.count, 1);
        ck_assert_int_eq(diags.items[0].code, FAULTS[i].code);
        ck_assert_uint_eq(diags.items[0].at.from, FAULTS[i].from);
        ck_assert_uint_eq(diags.items[0].at.to, FAULTS[i].to);
        ck_assert_ptr_nonnull(strstr(print_of(arena, &diags), FAULTS[i].says));
    }
}

START_TEST(stray_quotes_have_a_place) {
    within(split_faults, NULL);
}
END_TEST

START_TEST(delimiters_are_found) {
    static const struct {
        const char *line;
        char delimiter;
    } LINES[] = {{"id,type,notes", ','},
                 {"id;type;notes", ';'},
                 {"id\ttype\tnotes", '\t'},
                 {"id", ','},
                 {"\"a,b,c\";type", ';'},
                 {"a,b;c,d", ','},
                 {"", ','}};
    for (size_t i = 0; i < sizeof LINES / sizeof *LINES; i++) {
        ck_assert_int_eq(csv_find_delimiter(LINES[i].line, strlen(LINES[i].line)), LINES[i].delimiter);
    }
}
END_TEST

static struct node *tree_of(struct arena *arena, const char *header, const char *row, struct diags *diags) {
    struct diags none;
    struct csv_row names = split_text(arena, header, ',', &none), cells = split_text(arena, row, ',', diags);
    return csv_tree(arena, &names, &cells, diags);
}

static void build_tree(struct arena *arena, void *context) {
    (void)context;
    struct diags diags;
    struct node *tree = tree_of(
        arena,
        "id, type ,flaws.2.kind,flaws.10.kind,flaws.1.kind,flaws.1.where,own.bin,attributes.color,empty",
        "a1,lamp,chip,dent,crack,\"rim, top\",B 7,red, ", &diags);
    ck_assert_msg(tree != NULL, "%s", print_of(arena, &diags));
    ck_assert_uint_eq(tree->count, 5); // the blank cell is left out
    ck_assert_str_eq(node_get(tree, "type")->text, "lamp");
    ck_assert(node_get(tree, "type")->plain);
    const struct node *flaws = node_get(tree, "flaws");
    ck_assert_int_eq(flaws->kind, NODE_LIST);
    ck_assert_uint_eq(flaws->count, 3);
    static const char *const KINDS[] = {"crack", "chip", "dent"};
    for (size_t i = 0; i < 3; i++) {
        ck_assert_ptr_null(flaws->members[i].key);
        ck_assert_str_eq(node_get(flaws->members[i].value, "kind")->text, KINDS[i]);
    }
    ck_assert_str_eq(node_get(flaws->members[0].value, "where")->text, "rim, top");
    ck_assert_str_eq(slice_of(arena, node_get(flaws->members[0].value, "where")), "\"rim, top\"");
    ck_assert_str_eq(node_get(node_get(tree, "own"), "bin")->text, "B 7");
    ck_assert_uint_eq(tree->members[1].key_at.from, 3);
    ck_assert_uint_eq(tree->members[1].key_at.to, 9);
    tree = tree_of(arena, "flaws.1,flaws.2,flaws.3", "crack,,chip", &diags); // an empty place leaves no hole
    ck_assert_uint_eq(node_get(tree, "flaws")->count, 2);
    ck_assert_str_eq(node_get(tree, "flaws")->members[1].value->text, "chip");
}

START_TEST(headers_are_paths) {
    within(build_tree, NULL);
}
END_TEST

static const struct {
    const char *header, *row;
    enum code code;
    size_t from;
    const char *says;
} TREES[] = {
    {"a,b", "1,2,3,4", CODE_CSV_WIDTH, 4, "the row has 4 cells, the header 2"},
    {"a,b,c", "1,2", CODE_CSV_WIDTH, 2, "the row has 2 cells, the header 3"},
    {"a,a", "1,2", CODE_CSV_HEADER, 2, "stands twice"},
    {"a,a.b", "1,2", CODE_CSV_HEADER, 2, "contradicts"},
    {"a.b,a", "1,2", CODE_CSV_HEADER, 4, "contradicts"},
    {"a.1,a.b", "1,2", CODE_CSV_HEADER, 4, "contradicts"},
    {"a..b,c", "1,2", CODE_CSV_HEADER, 0, "no path"},
    {".a,c", "1,2", CODE_CSV_HEADER, 0, "no path"},
    {"a.,c", "1,2", CODE_CSV_HEADER, 0, "no path"},
    {"1.a,c", "1,2", CODE_CSV_HEADER, 0, "no path"},
    {",c", "1,2", CODE_CSV_HEADER, 0, "no name"},
    {"a.b.c.d.e.f.g.h.i.j.k.l.m.n.o.p.q,c", "1,2", CODE_CSV_HEADER, 0, "no path"},
};

static void refuse_trees(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof TREES / sizeof *TREES; i++) {
        struct diags diags;
        ck_assert_msg(!tree_of(arena, TREES[i].header, TREES[i].row, &diags), "row %zu is taken", i);
        ck_assert_uint_eq(diags.count, 1);
        ck_assert_int_eq(diags.items[0].code, TREES[i].code);
        ck_assert_msg(diags.items[0].at.from == TREES[i].from, "row %zu: %zu", i, diags.items[0].at.from);
        ck_assert_msg(strstr(print_of(arena, &diags), TREES[i].says) != NULL, "%s", print_of(arena, &diags));
    }
}

START_TEST(rows_and_headers_that_do_not_fit_are_faults) {
    within(refuse_trees, NULL);
}
END_TEST

static void write_and_read(struct arena *arena, void *context) {
    struct dice *dice = context;
    static const char DELIMITERS[] = ",;\t";
    size_t refused = 0;
    for (int round = 0; round < 5000; round++) {
        char delimiter = DELIMITERS[dice_roll(dice, 3)];
        struct buf line = buf_start(arena);
        const char *cells[4];
        for (size_t i = 0; i < 4; i++) {
            cells[i] = random_text(arena, dice);
            if (i) buf_byte(&line, delimiter);
            size_t before = line.n;
            bool formula = *cells[i] && strchr("=+-@\t\r", *cells[i]);
            ck_assert_int_eq(csv_write_cell(&line, cells[i], delimiter), !formula);
            if (!formula) continue;
            ck_assert_uint_eq(line.n, before); // refused: nothing is written
            cells[i] = "";
            refused++;
        }
        struct diags diags;
        struct csv_row row = split_text(arena, line.at, delimiter, &diags);
        ck_assert_msg(diags.count == 0 && row.count == 4, "%s", line.at);
        for (size_t i = 0; i < 4; i++) ck_assert_str_eq(row.cells[i].text, cells[i]);
    }
    ck_assert_uint_gt(refused, 500);
}

START_TEST(cells_come_back_and_formulas_are_refused) {
    struct dice dice = {3};
    within(write_and_read, &dice);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("csv");
    TCase *cases = tcase_create("csv");
    tcase_set_timeout(cases, 60);
    tcase_add_test(cases, rows_split_by_the_rfc);
    tcase_add_test(cases, stray_quotes_have_a_place);
    tcase_add_test(cases, delimiters_are_found);
    tcase_add_test(cases, headers_are_paths);
    tcase_add_test(cases, rows_and_headers_that_do_not_fit_are_faults);
    tcase_add_test(cases, cells_come_back_and_formulas_are_refused);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
