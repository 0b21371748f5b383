// SPDX-License-Identifier: MIT
// Words of age and the years that they stand for.
#include "support.h"

#include "notes/age.h"

static const char *tell(const struct note *note) {
    static const char *const sure[] = {"", " (likely)", " (guess)"};
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->record->attribute_count; i++) {
        const struct value *v = &note->record->attributes[i];
        buf_format(&out, "%s%s=%s%s", out.n ? "; " : "", v->name, v->value, sure[v->sure]);
    }
    if (note->record->year_from || note->record->year_to)
        buf_format(&out, " %d-%d", note->record->year_from, note->record->year_to);
    return out.at;
}

static void read(struct note *note) {
    read_writing(note);
    read_dates(note);
}

static const struct notes_case decades[] = {
    {"1950s", "age=1950s 1950-1959"},
    {"1950's", "age=1950's 1950-1959"},
    {"lantern from the 1950s", "age=1950s 1950-1959"},
    {"lantern, 1950s, brass", "age=1950s 1950-1959"},
    {"50s lantern", "age=50s 1950-1959"},
    {"'50s lantern", "age='50s 1950-1959"},
    {"a lantern of the fifties", "age=fifties 1950-1959"},
    {"nineteen thirties lantern", "age=nineteen thirties 1930-1939"},
    {"early 1950s", "age=early 1950s 1950-1953"},
    {"mid 1950s", "age=mid 1950s 1954-1956"},
    {"mid-1950s", "age=mid-1950s 1954-1956"},
    {"late 1950s", "age=late 1950s 1957-1959"},
    {"early 2000s", "age=early 2000s 2000-2003"},
    {"2000s", "age=2000s 2000-2009"},
    {"1920s-30s", "age=1920s-30s 1920-1939"},
    {"1920s to 1930s", "age=1920s to 1930s 1920-1939"},
    {"1920s or 30s", "age=1920s or 30s 1920-1939"},
    {"twenties or thirties", "age=twenties or thirties 1920-1939"},
    {"mid to late 1960s", "age=mid to late 1960s 1964-1969"},
    {"1800s", "age=1800s 1800-1899"},
    {"early 1800s", "age=early 1800s 1800-1832"},
    {"late 1800s", "age=late 1800s 1866-1899"},
    {"early 1900s", "age=early 1900s 1900-1932"},
};

static const struct notes_case centuries[] = {
    {"19th century", "age=19th century 1801-1900"},
    {"nineteenth century", "age=nineteenth century 1801-1900"},
    {"19th-century lantern", "age=19th-century 1801-1900"},
    {"19th c. lantern", "age=19th c. 1801-1900"},
    {"early 19th century", "age=early 19th century 1801-1833"},
    {"mid 19th century", "age=mid 19th century 1834-1866"},
    {"mid-19th century", "age=mid-19th century 1834-1866"},
    {"late 19th century", "age=late 19th century 1867-1900"},
    {"late nineteenth century", "age=late nineteenth century 1867-1900"},
    {"18th century", "age=18th century 1701-1800"},
    {"second quarter of the 20th century", "age=second quarter of the 20th century 1926-1950"},
    {"last quarter of the 19th century", "age=last quarter of the 19th century 1876-1900"},
    {"first half of the 19th century", "age=first half of the 19th century 1801-1850"},
    {"second half of the 1800s", "age=second half of the 1800s 1850-1899"},
    {"mid 20th century lamp", "age=mid 20th century 1934-1966"},
    {"second quarter 19th century", "age=second quarter 19th century 1826-1850"},
    {"18th-19th century lamp", "age=18th-19th century 1701-1900"},
    {"late 19th to early 20th century", "age=late 19th to early 20th century 1867-1933"},
    {"late 19th/early 20th century", "age=late 19th/early 20th century 1867-1933"},
};

static const struct notes_case years[] = {
    {"c. 1890", "age=c. 1890 1880-1900"},
    {"circa 1890", "age=circa 1890 1880-1900"},
    {"ca. 1890", "age=ca. 1890 1880-1900"},
    {"ca 1890", "age=ca 1890 1880-1900"},
    {"c1890", "age=c1890 1880-1900"},
    {"about 1890", "age=about 1890 1880-1900"},
    {"around 1910", "age=around 1910 1900-1920"},
    {"atlas, 1961", "age=1961 1961-1961"},
    {"hardcover 1974 no jacket", "age=1974 1974-1974"},
    {"road map county 1958 splits at the folds", "age=1958 1958-1958"},
    {"made in 1961", "age=1961 1961-1961"},
    {"printed in 1936", "age=1936 1936-1936"},
    {"from 1961", "age=1961 1961-1961"},
    {"1914-1918", "age=1914-1918 1914-1918"},
    {"lamp from before 1900", "age=before 1900 0-1899"},
    {"after 1950", "age=after 1950 1950-0"},
    {"bought after 1950", ""},
    {"copyright 1978 inside", "age=1978 1978-0"},
    {"bought in 1988 brand new", "age=1988 (likely)"},
    {"we got it new in 1983", "age=1983 (likely)"},
};

static const struct notes_case unsure[] = {
    {"maybe 1930s?", "age=1930s (guess)"},
    {"looks like it could be from the 50s", "age=50s (guess)"},
    {"I think it's from the 90s", "age=90s (guess)"},
    {"probably 1920s", "age=1920s (guess)"},
    {"somebody told me it was from the 1840s", "age=1840s (guess)"},
    {"1970s I think", "age=1970s (guess)"},
    {"circa 1890 I guess", "age=circa 1890 (guess)"},
    {"early 2000s I remember having one", "age=early 2000s (guess)"},
    {"turn of the century", "age=turn of the century (likely) 1890-1910"},
    {"pre war", "age=pre war (likely) 0-1939"},
    {"pre-war radio", "age=pre-war (likely) 0-1939"},
    {"prewar radio", "age=prewar (likely) 0-1939"},
    {"from between the wars", "age=between the wars (likely) 1918-1939"},
    {"'62", "age='62 (likely)"},
    {"radio, '62 model", "age='62 (likely)"},
    {"it's over 100 years old says the lady", "age=over 100 years old (guess)"},
    {"forty years old", "age=forty years old (likely)"},
    {"vintage lantern", "age=vintage (likely)"},
    {"vtg lantern", "age=vintage (likely)"},
    {"antique for sure", "age=antique (likely)"},
    {"WWII radio", "age=WWII (likely) 1939-1945"},
    {"so 1842 if I did that right", "age=1842 (guess)"},
};

static const struct notes_case styles[] = {
    {"1950s style lamp", "style=1950s style"},
    {"kinda seventies style", "style=seventies style"},
    {"1930s look", "style=1930s look"},
    {"1920s-style shade", "style=1920s-style"},
    {"MCM looking", ""},
    {"mid-century style", ""},
};

static const struct notes_case no_ages[] = {
    {"dated 1952 on the base", " 1952-1952"},
    {"engraved Xmas 1931", ""},
    {"says County Show 1936", ""},
    {"from my grandmother who was born in 1920", ""},
    {"bought in 1988", ""},
    {"1947 or 1974 can't read it", ""},
    {"expired in 2015", ""},
    {"2/3/64 on the back", ""},
    {"model 1900", ""},
    {"Optrel 2000 radio", ""},
    {"No. 1842", ""},
    {"paid $1950 for it", ""},
    {"1000 pieces", ""},
    {"1500 watt heater", ""},
    {"serial 1923", ""},
    {"1800 x 900 mm", ""},
    {"20 tins", ""},
    {"up to 2000 watts", ""},
    {"before 1800 hours", ""},
    {"after the war he used it for nails", ""},
    {"empire waist, queen anne legs", ""},
    {"since 1998 it sat in the shed", ""},
    {"C19 connector", ""},
    {"XIX on the dial", ""},
    {"30 mm", ""},
    {"we moved here in 1999", ""},
    {"rewired in 1972", ""},
    {"2108 pressed into the base", ""},
    {"5 years", ""},
    {"refinished in the 1970s", ""},
};

#define CASES(name)                                                                                          \
    START_TEST(dates_##name) {                                                                               \
        support_cases(name, sizeof name / sizeof *name, LOCALE_US, read, tell);                              \
    }                                                                                                        \
    END_TEST
CASES(decades)
CASES(centuries)
CASES(years)
CASES(unsure)
CASES(styles)
CASES(no_ages)

static void given(struct arena *arena, void *context) {
    (void)context;
    struct note *note = support_note(arena, "1950s lantern", LOCALE_US);
    note->record->year_from = 1931;
    note->record->year_to = 1932;
    read_dates(note);
    ck_assert_int_eq(note->record->year_from, 1931);
    ck_assert_int_eq(note->record->year_to, 1932);
    ck_assert_ptr_null(note->record->year_because);
    note = support_note(arena, "lantern of the late 19th century", LOCALE_US);
    read_dates(note);
    ck_assert_str_eq(note->record->year_because, "thirds of a century");
    ck_assert_uint_eq(note->record->attributes[0].span.from, 15);
    ck_assert_uint_eq(note->record->attributes[0].span.to, 32);
}

// Years that a person wrote stand.
START_TEST(years_given) {
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, given, NULL));
    arena_free(arena);
}
END_TEST

static void check_words(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        const char *text;
        int from, to;
        bool found;
    } texts[] = {
        {"c. 1890", 1880, 1900, true},
        {"late 19th century", 1867, 1900, true},
        {"second quarter of the 20th century", 1926, 1950, true},
        {"1920s-30s", 1920, 1939, true},
        {"mid-century style", 0, 0, true},
        {"mid century", 0, 0, true},
        {"1950s style", 0, 0, true},
        {"before 1900", 0, 1899, true},
        {"after 1950", 1950, 0, true},
        {"1923, printed 1951", 1951, 1951, true},
        {"designed 1934, made 1950s", 1950, 1959, true},
        {"late Edo period, mid-19th century", 1834, 1866, true},
        {"Qing dynasty, Kangxi period", 1662, 1722, true},
        {"patent date 1888", 1888, 0, true},
        {"1843 (inscribed)", 1843, 1843, true},
        {"C19", 0, 0, false},
        {"war of words", 0, 0, false},
        {"song book", 0, 0, false},
        {"Alder Press", 0, 0, false},
        {"", 0, 0, false},
        {"7", 0, 0, false},
    };
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        struct date_words words = {0, 0, NULL};
        ck_assert_msg(date_words(arena, texts[i].text, &words) == texts[i].found, "%s", texts[i].text);
        ck_assert_msg(words.from == texts[i].from && words.to == texts[i].to, "%s: %d-%d", texts[i].text,
                      words.from, words.to);
        ck_assert_msg(!words.because == !texts[i].found, "%s", texts[i].text);
    }
}

// The table that people read says what is read.
static void check_table(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < AGE_ROWS; i++) {
        const struct age_row *row = &age_table[i];
        struct date_words words = {0, 0, NULL};
        ck_assert_msg(row->words && row->custom && date_words(arena, row->words, &words), "row %zu", i);
        ck_assert_msg(words.from == row->from && words.to == row->to, "%s: %d-%d", row->words, words.from,
                      words.to);
    }
}

START_TEST(the_table_of_words_says_what_is_read) {
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, check_table, NULL));
    arena_free(arena);
}
END_TEST

START_TEST(words_alone_have_the_same_years) {
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, check_words, NULL));
    arena_free(arena);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: dates");
    TCase *tests = tcase_create("dates");
    tcase_add_test(tests, dates_decades);
    tcase_add_test(tests, dates_centuries);
    tcase_add_test(tests, dates_years);
    tcase_add_test(tests, dates_unsure);
    tcase_add_test(tests, dates_styles);
    tcase_add_test(tests, dates_no_ages);
    tcase_add_test(tests, years_given);
    tcase_add_test(tests, words_alone_have_the_same_years);
    tcase_add_test(tests, the_table_of_words_says_what_is_read);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
