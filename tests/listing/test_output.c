// SPDX-License-Identifier: MIT
// What comes out: every published key with its type (read by another JSON reader), pages that no value can
// break, the same bytes whenever and in whatever order records are drafted.
#include "../rules/records.h"

#include <jansson.h>
#include <sys/wait.h>

enum { RECORDS = 300 };

static const struct title_options usual = {80, COUNT_GRAPHEMES, LOCALE_US, NULL};

static const struct listing *draft_number(struct arena *arena, const struct drafter *drafter, size_t number) {
    struct dice dice = {0xA0761D6478BD642Fu * (number + 1) | 1};
    for (int i = 0; i < 8; i++) dice_roll(&dice, 2);
    const struct record *record =
        read_made(arena, drafter->rules, random_record(arena, &dice, drafter->rules, number));
    struct title_options options = usual;
    options.variants = drafter->variants;
    return listing_draft(arena, drafter, record, &options);
}

static const char *json_of(struct arena *arena, const struct listing *listing) {
    struct buf out = buf_start(arena);
    json_write(&out, listing_tree(arena, listing));
    return out.at;
}

// --- the published keys ---

// Type letters: s text, i whole number, b true or false, l list of maps with the keys that follow, t list of
// texts, m map.
static const struct {
    const char *path;
    char type;
} keys[] = {{"id", 's'},
            {"title", 's'},
            {"title_length", 'i'},
            {"limit", 'i'},
            {"unit", 's'},
            {"worth", 'i'},
            {"worth_bound", 'i'},
            {"optimal", 'b'},
            {"words", 'l'},
            {"left_out", 'l'},
            {"alternates", 't'},
            {"disclosure", 's'},
            {"description", 's'},
            {"condition", 'm'},
            {"condition.grade", 's'},
            {"condition.schema_org", 's'},
            {"condition.reasons", 't'},
            {"score", 'm'},
            {"score.title", 'm'},
            {"score.title.earned", 'i'},
            {"score.title.best", 'i'},
            {"score.record", 'm'},
            {"score.record.answered", 'i'},
            {"score.record.asked", 'i'},
            {"score.less", 't'},
            {"questions", 'l'},
            {"photos", 'l'},
            {"claims", 'l'},
            {"cautions", 'l'},
            {"withheld", 'l'},
            {"findings", 'l'}};

static const struct {
    const char *list, *key;
    char type;
    bool always;
} members[] = {{"words", "text", 's', true},        {"words", "slot", 's', true},
               {"words", "worth", 'i', true},       {"words", "because", 's', true},
               {"words", "span", 'l', false},       {"left_out", "text", 's', true},
               {"left_out", "worth", 'i', true},    {"left_out", "needs", 'i', true},
               {"questions", "ask", 's', true},     {"questions", "kind", 's', true},
               {"questions", "because", 's', true}, {"claims", "word", 's', true},
               {"claims", "verdict", 's', true},    {"claims", "instead", 's', false},
               {"claims", "written", 's', false},   {"claims", "source", 's', false},
               {"findings", "level", 's', true},    {"findings", "code", 's', true},
               {"findings", "message", 's', true},  {"findings", "span", 'l', false},
               {"photos", "shows", 's', true},      {"photos", "because", 's', true},
               {"photos", "file", 's', false}};

static bool is_type(const json_t *value, char type) {
    switch (type) {
    case 's':
        return json_is_string(value);
    case 'i':
        return json_is_integer(value);
    case 'b':
        return json_is_boolean(value);
    case 'm':
        return json_is_object(value);
    default:
        break;
    }
    if (!json_is_array(value)) return false;
    for (size_t i = 0; type == 't' && i < json_array_size(value); i++)
        if (!json_is_string(json_array_get(value, i))) return false;
    return true;
}

static const json_t *at_path(const json_t *root, const char *path) {
    char copy[64];
    snprintf(copy, sizeof copy, "%s", path);
    for (char *part = strtok(copy, "."); part && root; part = strtok(NULL, "."))
        root = json_object_get(root, part);
    return root;
}

static void check_keys(const json_t *root, const char *text) {
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        const json_t *value = at_path(root, keys[i].path);
        ck_assert_msg(value && is_type(value, keys[i].type), "%s is not there or of another type\n%s",
                      keys[i].path, text);
    }
    for (size_t i = 0; i < sizeof members / sizeof *members; i++) {
        const json_t *list = json_object_get(root, members[i].list);
        for (size_t k = 0; k < json_array_size(list); k++) {
            const json_t *value = json_object_get(json_array_get(list, k), members[i].key);
            ck_assert_msg(value ? is_type(value, members[i].type) : !members[i].always, "%s[%zu].%s\n%s",
                          members[i].list, k, members[i].key, text);
        }
    }
}

static bool one_of(const json_t *value, const char *words) {
    char word[40];
    snprintf(word, sizeof word, " %s ", json_string_value(value));
    return strstr(words, word) != NULL;
}

static void check_values(const json_t *root, const char *text) {
    ck_assert_msg(one_of(json_object_get(root, "unit"), " graphemes utf16 bytes "), "%s", text);
    ck_assert_msg(one_of(at_path(root, "condition.grade"), " A B C D "), "%s", text);
    ck_assert_msg(one_of(at_path(root, "condition.schema_org"),
                         " UsedCondition DamagedCondition NewCondition RefurbishedCondition "),
                  "%s", text);
    const json_t *list = json_object_get(root, "findings");
    for (size_t i = 0; i < json_array_size(list); i++)
        ck_assert_msg(one_of(json_object_get(json_array_get(list, i), "level"), " must should could "), "%s",
                      text);
    list = json_object_get(root, "claims");
    for (size_t i = 0; i < json_array_size(list); i++)
        ck_assert_msg(
            one_of(json_object_get(json_array_get(list, i), "verdict"), " allow qualify ask refuse "), "%s",
            text);
    ck_assert_msg(json_integer_value(json_object_get(root, "title_length")) <=
                      json_integer_value(json_object_get(root, "limit")),
                  "%s", text);
    ck_assert_msg(json_integer_value(at_path(root, "score.title.earned")) <=
                          json_integer_value(at_path(root, "score.title.best")) &&
                      json_integer_value(at_path(root, "score.record.answered")) <=
                          json_integer_value(at_path(root, "score.record.asked")),
                  "%s", text);
    ck_assert_msg(json_array_size(json_object_get(root, "alternates")) <= 3, "%s", text);
    const char *title = json_string_value(json_object_get(root, "title"));
    list = json_object_get(root, "alternates");
    for (size_t i = 0; i < json_array_size(list); i++) {
        const char *other = json_string_value(json_array_get(list, i));
        ck_assert_msg(strcmp(other, title) != 0 && count_text(other, strlen(other), COUNT_GRAPHEMES) <= 80,
                      "%s", text);
    }
    const char *disclosure = json_string_value(json_object_get(root, "disclosure"));
    const char *description = json_string_value(json_object_get(root, "description"));
    bool held = json_is_true(json_object_get(json_array_get(json_object_get(root, "cautions"), 0), "stop"));
    ck_assert_msg(held ? !*title && !*description : strstr(description, disclosure) != NULL, "%s", text);
}

static void check_json(struct arena *arena, void *context) {
    (void)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    for (size_t i = 0; i < RECORDS; i++) {
        const char *text = json_of(arena, draft_number(arena, &drafter, i));
        ck_assert_msg(!strchr(text, '\n'), "more than one line: %s", text);
        json_error_t error;
        json_t *root = json_loads(text, JSON_REJECT_DUPLICATES, &error);
        ck_assert_msg(root != NULL, "%s\n%s", error.text, text);
        check_keys(root, text);
        check_values(root, text);
        json_decref(root);
    }
}

START_TEST(every_published_key_is_there) {
    within(check_json, NULL);
}
END_TEST

// --- the same bytes ---

static uint64_t hash_text(const char *text) {
    uint64_t hash = 14695981039346656037u;
    for (; *text; text++) hash = (hash ^ (unsigned char)*text) * 1099511628211u;
    return hash;
}

struct hashes {
    uint64_t at[RECORDS];
    bool backwards, load_again;
};

static void hash_all(struct arena *arena, void *context) {
    struct hashes *hashes = context;
    struct drafter drafter =
        hashes->load_again ? shipped_load(arena).drafter : drafter_in(arena, shipped_once());
    for (size_t i = 0; i < RECORDS; i++) {
        size_t number = hashes->backwards ? RECORDS - 1 - i : i;
        hashes->at[number] = hash_text(json_of(arena, draft_number(arena, &drafter, number)));
    }
}

START_TEST(the_same_bytes_whatever_came_before) {
    struct hashes here = {.backwards = false}, there = {.backwards = true, .load_again = true};
    within(hash_all, &here);
    int ends[2];
    ck_assert_int_eq(pipe(ends), 0);
    pid_t child = fork();
    ck_assert_int_ge(child, 0);
    if (!child) {
        setenv("LC_ALL", "tr_TR.UTF-8", 1);
        setenv("TZ", "Pacific/Kiritimati", 1);
        within(hash_all, &there);
        bool sent = write(ends[1], there.at, sizeof there.at) == (ssize_t)sizeof there.at;
        _exit(sent ? 0 : 1);
    }
    close(ends[1]);
    size_t got = 0;
    for (ssize_t n;
         got < sizeof there.at && (n = read(ends[0], (char *)there.at + got, sizeof there.at - got)) > 0;)
        got += (size_t)n;
    int status;
    ck_assert_int_eq(waitpid(child, &status, 0), child);
    ck_assert(WIFEXITED(status) && WEXITSTATUS(status) == 0 && got == sizeof there.at);
    for (size_t i = 0; i < RECORDS; i++) ck_assert_msg(here.at[i] == there.at[i], "record %zu", i);
}
END_TEST

// --- hostile values ---

static const char *const hostile[] = {"<script>alert(1)</script>",
                                      "\"quoted\" 'twice'",
                                      "a]]>b",
                                      "--><!--",
                                      "&amp; & &lt;",
                                      "</article>",
                                      "</style><b>",
                                      "javascript:x",
                                      "<img src=x onerror=y>",
                                      "${x} {{y}} %s %n"};

// Every "<" opens a tag of ours, every "&" an entity of ours, and no attribute has a quote too many.
static void check_page(const char *page, const char *value) {
    static const char *const tags[] = {"<!DOCTYPE html>",
                                       "<html lang=\"en\">",
                                       "</html>",
                                       "<head>",
                                       "</head>",
                                       "<meta ",
                                       "<title>",
                                       "</title>",
                                       "<style>",
                                       "</style>",
                                       "<body>",
                                       "</body>",
                                       "<article id=\"",
                                       "</article>",
                                       "<h2>",
                                       "</h2>",
                                       "<h3>",
                                       "</h3>",
                                       "<p ",
                                       "</p>",
                                       "<pre>",
                                       "</pre>",
                                       "<ul>",
                                       "</ul>",
                                       "<li>",
                                       "</li>",
                                       "<script type=\"application/ld+json\">{",
                                       "</script>"};
    for (const char *at = page; (at = strchr(at, '<')); at++) {
        bool ours = false;
        for (size_t i = 0; i < sizeof tags / sizeof *tags; i++)
            ours |= !strncmp(at, tags[i], strlen(tags[i]));
        ck_assert_msg(ours, "%s gave %.40s", value, at);
        const char *end = strchr(at, '>');
        size_t quotes = 0;
        for (const char *c = at; c < end; c++) quotes += *c == '"';
        ck_assert_msg(quotes % 2 == 0, "%s gave %.60s", value, at);
    }
    for (const char *at = page; (at = strchr(at, '&')); at++) {
        // In the linked data a value is JSON, not markup; another reader parses it (tests/house/pages.py).
        const char *script = strstr(at, "</script>"), *open = strstr(at, "<script");
        if (script && (!open || script < open)) continue;
        bool ours = !strncmp(at, "&amp;", 5) || !strncmp(at, "&lt;", 4) || !strncmp(at, "&gt;", 4) ||
                    !strncmp(at, "&quot;", 6) || !strncmp(at, "&#39;", 5);
        ck_assert_msg(ours, "%s gave %.40s", value, at);
    }
    const char *last = strstr(page, "</article>");
    ck_assert_msg(last && !strstr(last + 1, "</article>"), "%s ended the article", value);
}

static struct node *hostile_record(struct arena *arena, const char *value) {
    struct node *record = node_map(arena), *attributes = node_map(arena), *flaws = node_list(arena),
                *flaw = node_map(arena);
    struct node *own = node_map(arena), *marks = node_list(arena), *photos = node_list(arena);
    put_word(arena, record, "id", value);
    put_word(arena, record, "type", value);
    node_put(arena, record, "count", node_whole(arena, 3));
    static const char *const names[] = {"color", "material", "brand", "model", "pattern",
                                        "size",  "style",    "theme", "name"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) put_word(arena, attributes, names[i], value);
    node_put(arena, record, "attributes", attributes);
    put_word(arena, flaw, "kind", "chip");
    put_word(arena, flaw, "where", value);
    put_word(arena, flaw, "photo", value);
    node_push(arena, flaws, flaw);
    node_put(arena, record, "flaws", flaws);
    put_word(arena, record, "clear", "rust");
    put_word(arena, record, "unchecked", value);
    put_word(arena, record, "includes", value);
    node_push(arena, marks, node_text(arena, value));
    node_put(arena, record, "marks", marks);
    node_push(arena, photos, node_text(arena, value));
    node_put(arena, record, "photos", photos);
    put_word(arena, record, "fits", value);
    put_word(arena, own, "bin", value);
    node_put(arena, record, "own", own);
    return record;
}

static void check_hostile(struct arena *arena, void *context) {
    (void)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    for (size_t i = 0; i < sizeof hostile / sizeof *hostile; i++) {
        const struct record *record = read_made(arena, drafter.rules, hostile_record(arena, hostile[i]));
        const struct listing *listing = listing_draft(arena, &drafter, record, &usual);
        struct buf page = buf_start(arena);
        page_begin(&page);
        listing_page(arena, listing, &page);
        page_end(&page);
        check_page(page.at, hostile[i]);
        json_t *root = json_loads(json_of(arena, listing), JSON_REJECT_DUPLICATES, NULL);
        ck_assert_msg(root != NULL, "%s", hostile[i]);
        ck_assert_str_eq(json_string_value(at_path(root, "own.bin")), hostile[i]);
        ck_assert_str_eq(json_string_value(json_object_get(root, "id")), hostile[i]);
        json_decref(root);
        struct buf yaml = buf_start(arena);
        yaml_write(arena, &yaml, listing_tree(arena, listing));
        struct diags diags = diags_start(arena);
        const struct node *back = yaml_read(arena, source_of(arena, "back", yaml.at), &diags);
        ck_assert_msg(back != NULL, "%s", printed(arena, &diags));
        ck_assert_str_eq(node_get(back, "id")->text, hostile[i]);
        struct buf card = buf_start(arena);
        listing_card(arena, listing, &card, false);
        ck_assert_msg(!strchr(card.at, '\033'), "the card is colored");
    }
}

START_TEST(no_value_breaks_an_output) {
    within(check_hostile, NULL);
}
END_TEST

// --- findings ---

static const struct {
    const char *record;
    size_t limit;
    const char *level, *code, *message;
} findings[] = {
    {"type: jug\nfamily: ceramics\nflaws: [chip]\n", 5, "must", "title.no-room",
     "what must stand in the title does not fit 5 graphemes; the shortest that would is 8"},
    {"type: jug\nfamily: ceramics\nflaws: [{kind: chip, where: rim}]\nclear: [{kind: chip, where: rim}]\n",
     80, "must", "record.conflict", "'chip' is told both there and not there"},
    {"type: jug\nfamily: ceramics\ncount: 2\nflaws: [{kind: chip, count: 1, of: 6}]\n", 80, "should",
     "record.count", "'chip' speaks of 6 pieces, the record of 2"},
    {"family: ceramics\n", 80, "must", "record.type",
     "say what the thing is: the title has only its family's word"},
    {"type: gribble\n", 80, "should", "record.family", "no family was given; 'other' was taken"},
    {"type: spoon\nfamily: metalware\nattributes: {material: sterling}\n", 80, "should", "claim.unproved",
     "'sterling' is kept out: write instead: as its mark says (silver plated for EP letters, the number for "
     "a number); without one, silver-colored metal"},
};

static void check_findings(struct arena *arena, void *context) {
    (void)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    for (size_t i = 0; i < sizeof findings / sizeof *findings; i++) {
        struct diags diags = diags_start(arena);
        struct record record;
        ck_assert(record_of(arena, drafter.rules, findings[i].record, &record, &diags));
        struct title_options options = usual;
        options.limit = findings[i].limit;
        const struct listing *listing = listing_draft(arena, &drafter, &record, &options);
        bool found = false;
        for (size_t k = 0; k < listing->finding_count; k++)
            found |= !strcmp(listing->findings[k].code, findings[i].code) &&
                     !strcmp(listing->findings[k].level, findings[i].level) &&
                     !strcmp(listing->findings[k].message, findings[i].message);
        ck_assert_msg(found, "%s is not told: %s", findings[i].code, json_of(arena, listing));
        ck_assert(listing_has_must(listing) == !strcmp(findings[i].level, "must"));
        ck_assert((*listing->title == '\0') == !strcmp(findings[i].code, "title.no-room"));
    }
}

START_TEST(findings_say_what_to_settle) {
    within(check_findings, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("listing.output");
    TCase *tests = tcase_create("outputs");
    tcase_set_timeout(tests, 120);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, every_published_key_is_there);
    tcase_add_test(tests, the_same_bytes_whatever_came_before);
    tcase_add_test(tests, no_value_breaks_an_output);
    tcase_add_test(tests, findings_say_what_to_settle);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
