// SPDX-License-Identifier: MIT
// Cutting: words, figures, codes and signs with their stops; what is said for punctuation; phrases.
#include "support.h"

#include "notes/speech.h"

// "word|word ," … : a stop is shown by what follows it: "," comma, ";" clause, "." sentence, "/" line.
static const char *tell(const struct note *note) {
    static const char *const stops[] = {"", "<,>", "<;>", "<.>", "</>"};
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->tokens.count; i++) {
        const struct token *token = &note->tokens.at[i];
        const char *fold = strcmp(token->fold, "\n") != 0 ? token->fold : "\\n";
        buf_format(&out, "%s%s%s", i ? " " : "", fold, stops[token->stop]);
    }
    return out.at;
}

static const char *tell_kinds(const struct note *note) {
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->tokens.count; i++) buf_byte(&out, "wfcs"[note->tokens.at[i].kind]);
    return out.at;
}

static const char *tell_ones(const struct note *note) {
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->tokens.count; i++)
        buf_format(&out, "%s%s", i ? " " : "", note->tokens.at[i].one);
    return out.at;
}

static const char *tell_starts(const struct note *note) {
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->tokens.count; i++)
        if (note->tokens.at[i].starts) buf_format(&out, "%s%s", out.n ? " " : "", note->tokens.at[i].fold);
    return out.at;
}

static void nothing(struct note *note) {
    (void)note;
}

static const struct notes_case cuts[] = {
    {"", ""},
    {"   ", ""},
    {"Oil lamp", "oil lamp"},
    {"Oil lamp, brass. No wick!", "oil lamp ,<,> brass .<.> no wick !<.>"},
    {"lamp; brass: dull", "lamp ;<;> brass :<;> dull"},
    {"lamp (brass)", "lamp (<;> brass )<;>"},
    {"lamp - brass", "lamp -<;> brass"},
    {"lamp \xE2\x80\x94 brass", "lamp -<;> brass"},
    {"lamp\xE2\x80\x94"
     "brass",
     "lamp -<;> brass"},
    {"wait... brass", "wait ...<;> brass"},
    {"wait\xE2\x80\xA6 brass", "wait \xE2\x80\xA6<;> brass"},
    {"mother-of-pearl knob", "mother-of-pearl knob"},
    {"the lid\xE2\x80\x99s loose", "the lid's loose"},
    {"isn't", "isn't"},
    {"\xE2\x80\x9CNo 4\xE2\x80\x9D", "\" no 4 \""},
    {"caf\xC3\xA9 enamel", "cafe enamel"},
    {"\xC3\x89mail", "email"},
    {"cafe\xCC\x81 enamel", "cafe enamel"},
    {"line one\nline two", "line one \\n</> line two"},
    {"- brass\n- no wick", "-</> brass \\n</> -</> no wick"},
    {"* brass\n* no wick", "*</> brass \\n</> *</> no wick"},
    {"\xE2\x80\xA2 brass", "\xE2\x80\xA2</> brass"},
    {"1. lamp\n2. tin", "1.</> lamp \\n</> 2.</> tin"},
    {"1) lamp\n2) tin", "1)</> lamp \\n</> 2)</> tin"},
    {"brass\xF0\x9F\x99\x82 lamp", "brass \xF0\x9F\x99\x82<;> lamp"},
    {"\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x94\xA7 tools",
     "\xF0\x9F\x91\xA9\xE2\x80\x8D\xF0\x9F\x94\xA7<;> tools"},
    {"w/ lid, w/o wick", "w/ lid ,<,> w/o wick"},
    {"n/c on chips", "n/c on chips"},
    {"b&w print", "b&w print"},
    {"h.m. ship", "h.m . ship"},
    {"clean.The lid", "clean .<.> the lid"},
};

static const struct notes_case figures[] = {
    {"8.5", "8.5"},
    {"8 1/2", "8 1/2"},
    {"8-1/2", "8-1/2"},
    {"8\xC2\xBD", "8\xC2\xBD"},
    {"1,000 nails", "1,000 nails"},
    {"1,000,000", "1,000,000"},
    {"4, 5", "4 ,<,> 5"},
    {"4,5", "4 ,<,> 5"},
    {"8in", "8in"},
    {"18v", "18v"},
    {"1920s", "1920s"},
    {"1920's", "1920's"},
    {"'62", "' 62"},
    {"3rd", "3rd"},
    {"2x4", "2 x 4"},
    {"36x24x10", "36 x 24 x 10"},
    {"8\xC3\x97"
     "10",
     "8 x 10"},
    {"8 x 10", "8 x 10"},
    {"5'10\"", "5 ' 10 \""},
    {"1:64", "1 : 64"},
    {"6-8", "6 - 8"},
    {"6\xE2\x80\x93"
     "8",
     "6 - 8"},
    {"9-inch-high", "9 - inch - high"},
    {"2/3/64", "2/3/64"},
    {"12.5.1983", "12.5.1983"},
    {"0012", "0012"},
    {".5 in", ".5 in"},
    {"100%", "100 %"},
    {"$4", "$ 4"},
    {"2#", "2 #"},
    {"CB-12", "cb-12"},
    {"KR9", "kr9"},
    {"x100", "x100"},
};

static const struct notes_case stops[] = {
    {"11 in. tall", "11 in . tall"},
    {"11 in. Tall", "11 in .<.> tall"},
    {"what is it in. no idea", "what is it in .<.> no idea"},
    {"approx. 5", "approx . 5"},
    {"No. 5 plane", "no . 5 plane"},
    {"any? no. the lid", "any ?<.> no .<.> the lid"},
    {"c. 1890", "c . 1890"},
    {"G. Thornby", "g . thornby"},
    {"J.B. Orly", "j.b . orly"},
    {"PAT. APR 4", "pat . apr 4"},
    {"3 lbs. of nails", "3 lbs . of nails"},
    {"made by Orly Co. in tin", "made by orly co . in tin"},
    {"4 qt.", "4 qt .<.>"},
    {"1.5 in. and 2 ft. long", "1.5 in . and 2 ft . long"},
};

static const struct notes_case spoken[] = {
    {"barometer comma oak period no cracks period", "barometer ,<,> oak .<.> no cracks .<.>"},
    {"period new line chip on foot comma small", ".<.> \\n</> chip on foot ,<,> small"},
    {"tin box full stop lid dented full stop", "tin box .<.> lid dented .<.>"},
    {"is it oak question mark lid comma loose period", "is it oak ?<.> lid ,<,> loose .<.>"},
    {"oak period lamp. Brass.", "oak period lamp .<.> brass .<.>"},
    {"a comma shaped hook, brass.", "a comma shaped hook ,<,> brass .<.>"},
    {"art deco period piece comma chrome", "art deco period piece ,<,> chrome"},
    {"reel with new line", "reel with new line"},
    {"hook like a comma comma brass period", "hook like a comma ,<,> brass .<.>"},
    {"crate comma new paragraph next one", "crate ,<,> \\n</> next one"},
};

static const struct notes_case wrapped[] = {
    {"A long hamper that came down from the loft of the boat house with\nboth straps and the tray. Good.",
     "a long hamper that came down from the loft of the boat house with \\n both straps and the tray .<.> "
     "good .<.>"},
    {"hamper\nstraps gone", "hamper \\n</> straps gone"},
};

static const struct notes_case kinds[] = {
    {"Lamp 8.5 CB-12 ,", "wfcs"}, {"8\xC2\xBD in", "fw"},     {"\xC2\xBD in", "fw"},
    {"1920s MK2", "fc"},          {"\xC3\xA9mail 18v", "wf"},
};

static const struct notes_case ones[] = {
    {"knives and feet", "knife and foot"},
    {"boxes, glasses", "box , glass"},
    {"glass brass", "glass brass"},
    {"tins lamp's", "tin lamp's"},
};

static const struct notes_case starts[] = {
    {"Lamp. Brass, dull. No wick", "lamp brass no"},
    {"- lamp\n- tin", "lamp tin"},
    {"lamp (brass) dull", "lamp"},
};

#define CASES(name, how)                                                                                     \
    START_TEST(cuts_##name) {                                                                                \
        support_cases(name, sizeof name / sizeof *name, LOCALE_US, nothing, how);                            \
    }                                                                                                        \
    END_TEST
CASES(cuts, tell)
CASES(figures, tell)
CASES(stops, tell)
CASES(spoken, tell)
CASES(wrapped, tell)
CASES(kinds, tell_kinds)
CASES(ones, tell_ones)
CASES(starts, tell_starts)

static void check_bytes(struct arena *arena, void *context) {
    const char *text = context;
    struct tokens tokens = tokens_cut(arena, text, strlen(text));
    size_t at = 0;
    for (size_t i = 0; i < tokens.count; i++) {
        for (; at < tokens.at[i].from; at++)
            ck_assert_msg(text[at] == ' ', "byte %zu belongs to no token", at);
        ck_assert_uint_gt(tokens.at[i].to, tokens.at[i].from);
        at = tokens.at[i].to;
    }
    for (; text[at]; at++) ck_assert_int_eq(text[at], ' ');
}

// Every byte that is no space belongs to one token.
START_TEST(nothing_is_lost) {
    static const char *const texts[] = {
        "Lamp, 8\xC2\xBD in. (\xE2\x80\x9CNo. 4\xE2\x80\x9D) \xF0\x9F\x99\x82!!! $4 @ #3 ~x",
        "a...b -- c---d 'e' \"f\" 1/2/3/4 5x6x7x8 x9",
        "1,2,3.4.5 w/ w/o n/c && -- - .5 . , \xCC\x81 \xE2\x80\x8D"};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        struct arena *arena = arena_new(NULL);
        ck_assert(arena_try(arena, check_bytes, (void *)(uintptr_t)texts[i]));
        arena_free(arena);
    }
}
END_TEST

static void check_phrases(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        const char *text, *phrase;
        size_t taken;
    } wants[] = {{"hair line crack", "hair line", 2},
                 {"hair-line crack", "hair line", 1},
                 {"hair line crack", "hair-line", 2},
                 {"hairline crack", "hair line", 0},
                 {"dont know", "don't know", 2},
                 {"don't know", "dont know", 2},
                 {"mother of pearl", "mother-of-pearl", 3},
                 {"mother-of-pearl knob", "mother of", 0},
                 {"one two", "one two three", 0},
                 {"onetwo", "one", 0},
                 {"three-quarter view", "three quarter view", 2}};
    for (size_t i = 0; i < sizeof wants / sizeof *wants; i++) {
        struct tokens tokens = tokens_cut(arena, wants[i].text, strlen(wants[i].text));
        ck_assert_msg(token_phrase(&tokens, 0, wants[i].phrase) == wants[i].taken, "%s: %s", wants[i].text,
                      wants[i].phrase);
        ck_assert_uint_eq(token_phrase(&tokens, tokens.count, wants[i].phrase), 0);
    }
    struct tokens caps = tokens_cut(arena, "OAK LAMP WITH SHADE", 19),
                  small = tokens_cut(arena, "oak lamp", 8);
    ck_assert(caps.shouts && !caps.flat && small.flat && !small.shouts);
    ck_assert(caps.at[0].capitals && !small.at[0].capital);
}

START_TEST(phrases_and_case) {
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, check_phrases, NULL));
    arena_free(arena);
}
END_TEST

// --- the words of flaws ---

static const char *tell_flaws(const struct note *note) {
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->hits.count; i++) {
        const struct phrase_hit *hit = &note->hits.at[i];
        buf_format(&out, "%s%s=%s", out.n ? "; " : "", hit->flaw->rule.id,
                   note_words(note, hit->from, hit->to));
    }
    return out.at;
}

static const struct notes_case flaw_words[] = {
    {"a chip on the lid", "chip=chip"},
    {"tin of poker chips", ""},
    {"chip-carved box", ""},
    {"two flea-bites", "fleabite=flea-bites"},
    {"a hair-line by the spout", "hairline=hair-line"},
    {"a plain tin", ""},
};

START_TEST(flaws_by_their_words) {
    support_cases(flaw_words, sizeof flaw_words / sizeof *flaw_words, LOCALE_US, nothing, tell_flaws);
}
END_TEST

enum { PARTS_MOST = 1024 };

// The pattern of all words of a rule; several, each of a part of them, where all are too many for one.
struct patterns {
    struct finder finders[PARTS_MOST];
    struct scanner *scanners[PARTS_MOST];
    size_t count;
};

// Of what it never means, all that may hold a phrase of its own: what has the phrase's first word.
static struct texts unless_of(struct arena *arena, const struct texts *unless, const char *said) {
    struct texts kept = {arena_array(arena, unless->count + 1, sizeof *kept.at), 0};
    const char *word = arena_copy(arena, said, strcspn(said, " "));
    for (size_t i = 0; i < unless->count; i++)
        if (strstr(unless->at[i], word)) kept.at[kept.count++] = unless->at[i];
    return kept;
}

static void add_patterns(struct arena *arena, struct patterns *p, struct finder finder) {
    struct span span;
    if (finder.said.count == 1) finder.unless = unless_of(arena, &finder.unless, finder.said.at[0]);
    struct scanner *scanner = scanner_new(arena, support.rules->finder_count);
    if (scanner_find(scanner, &finder, "x", 1, 0, &span) != SCAN_BROKEN) {
        ck_assert_uint_lt(p->count, PARTS_MOST);
        p->finders[p->count] = finder;
        p->scanners[p->count++] = scanner;
        return;
    }
    ck_assert_msg(finder.said.count > 1, "what '%s' never means is too much for a pattern",
                  finder.said.at[0]);
    struct finder second = finder;
    finder.said.count /= 2;
    second.said.at += finder.said.count;
    second.said.count -= finder.said.count;
    add_patterns(arena, p, finder);
    add_patterns(arena, p, second);
}

static bool found_by(const struct patterns *p, const struct tokens *tokens) {
    struct span span;
    for (size_t i = 0; i < p->count; i++)
        if (scanner_find(p->scanners[i], &p->finders[i], tokens->text, tokens->size, 0, &span) == SCAN_FOUND)
            return true;
    return false;
}

static void against_examples(struct arena *arena, void *context) {
    size_t *counts = context;
    for (size_t i = 0; i < support.rules->flaw_count; i++) {
        const struct flaw *flaw = support.rules->flaws[i];
        struct patterns patterns = {.count = 0};
        add_patterns(arena, &patterns, flaw->finder);
        for (size_t k = 0; k < flaw->finder.said.count; k++) {
            struct note *note = support_note(arena, flaw->finder.said.at[k], LOCALE_US);
            bool scan = found_by(&patterns, &note->tokens);
            bool hit = false;
            for (size_t h = 0; h < note->hits.count; h++)
                hit |= note->hits.at[h].flaw == flaw && !note->hits.at[h].near && !note->hits.at[h].alone;
            counts[0]++;
            if (hit != scan) {
                fprintf(stderr, "  %s: '%s' is %sfound by its tokens\n", flaw->rule.id,
                        flaw->finder.said.at[k], hit ? "" : "not ");
                counts[1]++;
            }
        }
    }
}

// The table of phrases and the rules' own pattern must agree on every word that a rule lists.
START_TEST(same_as_the_patterns) {
    size_t counts[2] = {0, 0};
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, against_examples, counts));
    arena_free(arena);
    printf("phrases of flaws: %zu, read otherwise than by their pattern: %zu\n", counts[0], counts[1]);
    ck_assert_uint_ge(counts[0], 1000);
    ck_assert_uint_eq(counts[1], 0);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: tokens");
    TCase *tests = tcase_create("tokens");
    tcase_add_test(tests, cuts_cuts);
    tcase_add_test(tests, cuts_figures);
    tcase_add_test(tests, cuts_stops);
    tcase_add_test(tests, cuts_spoken);
    tcase_add_test(tests, cuts_wrapped);
    tcase_add_test(tests, cuts_kinds);
    tcase_add_test(tests, cuts_ones);
    tcase_add_test(tests, cuts_starts);
    tcase_add_test(tests, nothing_is_lost);
    tcase_add_test(tests, phrases_and_case);
    tcase_add_test(tests, flaws_by_their_words);
    tcase_add_test(tests, same_as_the_patterns);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
