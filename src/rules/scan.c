// SPDX-License-Identifier: MIT
// One alternation a finder: its `unless` phrases first, skipped over by (*SKIP)(*FAIL) so that a word inside
// one can never match, then its words, then its own patterns. Steps are limited on every match: PCRE2 ends a
// catastrophic pattern with an error, never with a wrong answer. A text of ASCII alone, as most are, is asked
// of a second pattern compiled for bytes: what a letter or a word's edge is then takes one look at a table.
#define PCRE2_CODE_UNIT_WIDTH 8
#include "rules/scan.h"

#include <pcre2.h>
#include <stdlib.h>
#include <string.h>

#include "text/limits.h"
#include "text/utf8.h"

#define APOSTROPHES "['\xE2\x80\x99]"

enum { JIT_AFTER = 16 };

struct compiled {
    pcre2_code *code;
    bool broken;
    unsigned char uses; // up to JIT_AFTER
};

// The PROBEs hold the finder's own patterns alone: a text of which one of its words stands is asked of those
// first, since nearly all texts hold none of them, and without the many words and phrases that is soon seen.
enum { FOR_UTF8, FOR_ASCII, PROBE_UTF8, PROBE_ASCII, FORMS };

struct scanner {
    struct arena *arena;
    struct compiled (*finders)[FORMS];
    size_t count;
    pcre2_general_context *general;
    pcre2_compile_context *compile;
    pcre2_match_context *match;
    pcre2_match_data *data;
};

static void clean(void *thing) {
    struct scanner *s = thing;
    for (size_t i = 0; i < s->count; i++)
        for (int form = 0; form < FORMS; form++) pcre2_code_free(s->finders[i][form].code);
    pcre2_match_data_free(s->data);
    pcre2_match_context_free(s->match);
    pcre2_compile_context_free(s->compile);
    pcre2_general_context_free(s->general);
}

// PCRE2's own blocks come from the arena's source, so that a test that counts or fails allocations sees them
// too.
static void *get(size_t size, void *context) {
    const struct arena_memory *memory = context;
    return memory->alloc(memory->context, size);
}

static void put(void *block, void *context) {
    const struct arena_memory *memory = context;
    if (block) memory->free(memory->context, block);
}

struct scanner *scanner_new(struct arena *arena, size_t finder_count) {
    struct scanner *s = arena_alloc(arena, sizeof *s);
    s->arena = arena;
    s->finders = arena_array(arena, finder_count + 1, sizeof *s->finders);
    s->count = finder_count;
    arena_defer(arena, clean, s);
    s->general = pcre2_general_context_create(get, put, (void *)(uintptr_t)arena_source(arena));
    s->compile = s->general ? pcre2_compile_context_create(s->general) : NULL;
    s->match = s->general ? pcre2_match_context_create(s->general) : NULL;
    s->data = s->general ? pcre2_match_data_create(8, s->general) : NULL;
    if (!s->compile || !s->match || !s->data) arena_give_up(arena);
    pcre2_set_parens_nest_limit(s->compile, 20);
    scanner_limit(s, LIMIT_PATTERN_STEPS);
    return s;
}

void scanner_limit(struct scanner *scanner, uint32_t steps) {
    pcre2_set_match_limit(scanner->match, steps);
    pcre2_set_depth_limit(scanner->match, steps);
    pcre2_set_heap_limit(scanner->match, 4096); // KiB
}

static bool is_word(const char *at) {
    size_t i = 0;
    uint32_t point = utf8_next(at, strlen(at), &i);
    return utf8_is_letter(point) || utf8_is_digit(point) || point == '_';
}

// The bytes of a phrase from `from` on, and the boundary behind it: only where a word ends, for `1/2"` has
// none after its quote.
static void add_phrase(struct buf *out, const char *phrase, size_t from) {
    const char *last = phrase;
    for (const char *c = phrase; *c; c++) {
        if ((*c & 0xC0) != 0x80) last = c;
        if ((size_t)(c - phrase) < from) continue;
        if (*c == ' ')
            buf_text(out, "[\\s-]+");
        else if (*c == '\'')
            buf_text(out, APOSTROPHES "?");
        else {
            if (strchr("\\^$.[]|()?*+{}-#/", *c)) buf_byte(out, '\\');
            buf_byte(out, *c);
        }
    }
    if (is_word(last)) buf_text(out, "\\b");
}

static int longer_first(const void *a, const void *b) {
    const char *x = *(const char *const *)a, *y = *(const char *const *)b;
    size_t n = strlen(x), m = strlen(y);
    return n != m ? (n < m) - (n > m) : strcmp(x, y);
}

static char small(char c) {
    return c >= 'A' && c <= 'Z' ? (char)(c | 0x20) : c;
}

static bool is_ascii_letter(char c) {
    return small(c) >= 'a' && small(c) <= 'z';
}

// Those that begin with `letter`, its letter once.
static bool add_of_letter(struct buf *out, const char *const *phrases, size_t count, char letter, bool more) {
    bool any = false;
    for (size_t i = 0; i < count; i++) {
        if (small(phrases[i][0]) != letter) continue;
        if (!any) buf_format(out, "%s%c(?:", more ? "|" : "", letter);
        if (any) buf_byte(out, '|');
        add_phrase(out, phrases[i], 1);
        any = true;
    }
    if (any) buf_byte(out, ')');
    return any || more;
}

// PCRE2 takes the first branch that matches: "snapped off" must be tried before "snapped". Two phrases of
// which one begins with another letter never match at one place, so each letter, and the boundary before them
// all, is tried once a place and not once a phrase.
static void add_phrases(struct arena *arena, struct buf *out, const struct texts *phrases) {
    if (!phrases->count) return;
    const char **sorted = arena_array(arena, phrases->count, sizeof *sorted);
    memcpy((void *)sorted, phrases->at, phrases->count * sizeof *sorted);
    qsort((void *)sorted, phrases->count, sizeof *sorted, longer_first);
    bool any = false;
    for (size_t i = 0; i < phrases->count && !any; i++) any = is_ascii_letter(sorted[i][0]);
    if (any) {
        buf_text(out, "\\b(?:");
        bool more = false;
        for (int letter = 'a'; letter <= 'z'; letter++)
            more = add_of_letter(out, sorted, phrases->count, (char)letter, more);
        buf_byte(out, ')');
    }
    for (size_t i = 0; i < phrases->count; i++) {
        if (is_ascii_letter(sorted[i][0])) continue;
        if (any) buf_byte(out, '|');
        if (is_word(sorted[i])) buf_text(out, "\\b");
        add_phrase(out, sorted[i], 0);
        any = true;
    }
}

// Behind the class of characters that begins at `c`, or at the end of the pattern.
static const char *class_end(const char *c) {
    c += c[1] == '^' ? 2 : 1;
    if (*c == ']') c++;
    while (*c && *c != ']') {
        const char *named = *c == '[' && c[1] == ':' ? strstr(c, ":]") : NULL;
        c = named ? named + 2 : *c == '\\' && c[1] ? c + 2 : c + 1;
    }
    return c;
}

// Does it begin at a word's edge, whichever of its branches matches? Not told of what is hard to read.
static bool begins_at_edge(const char *pattern) {
    size_t depth = 0;
    if (strncmp(pattern, "\\b", 2) != 0 || (pattern[2] && strchr("?*+{", pattern[2])) ||
        strchr(pattern, '#') || strstr(pattern, "\\Q"))
        return false;
    for (const char *c = pattern; *c; c++) {
        if (*c == '\\' && c[1]) {
            c++;
            continue;
        }
        if (*c == '[') c = class_end(c);
        if (*c == '|' && !depth) return false;
        depth += *c == '(';
        depth -= *c == ')';
        if (!*c) return false; // a class without an end
    }
    return depth == 0;
}

// Its own patterns. The edge that all of them begin at is tried once a place and not once a pattern.
static char *probe_pattern(struct arena *arena, const struct finder *finder) {
    struct buf out = buf_start(arena);
    bool edges = true;
    for (size_t i = 0; i < finder->match.count; i++) edges = edges && begins_at_edge(finder->match.at[i]);
    buf_text(&out, edges ? "\\b(?:" : "(?:");
    for (size_t i = 0; i < finder->match.count; i++)
        buf_format(&out, "%s(?:%s)", i ? "|" : "", finder->match.at[i] + (edges ? 2 : 0));
    buf_byte(&out, ')');
    return out.at;
}

// NULL when the finder is empty.
static char *finder_pattern(struct arena *arena, const struct finder *finder) {
    struct buf out = buf_start(arena);
    if (finder->unless.count) {
        buf_text(&out, "(?:");
        add_phrases(arena, &out, &finder->unless);
        buf_text(&out, ")(*SKIP)(*FAIL)|");
    }
    size_t start = out.n;
    add_phrases(arena, &out, &finder->said);
    for (size_t i = 0; i < finder->match.count; i++)
        buf_format(&out, "%s(?:%s)", out.n > start ? "|" : "", finder->match.at[i]);
    return out.n > start ? out.at : NULL;
}

static const uint32_t options =
    PCRE2_CASELESS | PCRE2_MULTILINE | PCRE2_UTF | PCRE2_UCP | PCRE2_NEVER_BACKSLASH_C;

static pcre2_code *compile(struct scanner *s, const char *pattern, uint32_t how) {
    int code;
    size_t offset;
    pcre2_code *made =
        pcre2_compile((PCRE2_SPTR)pattern, PCRE2_ZERO_TERMINATED, how, &code, &offset, s->compile);
    if (!made && code == PCRE2_ERROR_HEAP_FAILED) arena_give_up(s->arena);
    return made;
}

static bool is_ascii(const char *text, size_t size) {
    unsigned char any = 0;
    for (size_t i = 0; i < size; i++) any |= (unsigned char)text[i];
    return any < 0x80;
}

// Bytes beyond ASCII mean single characters only to the other form, and so may an escape ("\\x{2019}").
static pcre2_code *compile_form(struct scanner *s, const struct finder *finder, int form) {
    char *pattern = form >= PROBE_UTF8 ? probe_pattern(s->arena, finder) : finder_pattern(s->arena, finder);
    if (!pattern) return NULL;
    if (form == FOR_UTF8 || form == PROBE_UTF8) return compile(s, pattern, options | PCRE2_NO_UTF_CHECK);
    char *to = pattern; // the other apostrophe stands in no text of ASCII
    for (const char *at = pattern; *at; to++) {
        if (!strncmp(at, APOSTROPHES, strlen(APOSTROPHES))) {
            *to = '\'';
            at += strlen(APOSTROPHES);
        } else
            *to = *at++;
    }
    *to = '\0';
    if (!is_ascii(pattern, strlen(pattern))) return NULL;
    return compile(s, pattern, PCRE2_CASELESS | PCRE2_MULTILINE | PCRE2_NEVER_BACKSLASH_C);
}

// NULL where there is no such form.
static pcre2_code *code_of(struct scanner *s, const struct finder *finder, int form) {
    struct compiled *c = &s->finders[finder->number][form];
    if (c->broken) return NULL;
    if (!c->code) c->code = compile_form(s, finder, form);
    c->broken = !c->code;
    // Machine code pays off only for a pattern that is asked again and again. Where it cannot be had the
    // interpreter goes on, with the same matches.
    if (c->code && c->uses < JIT_AFTER && ++c->uses == JIT_AFTER)
        (void)pcre2_jit_compile(c->code, PCRE2_JIT_COMPLETE);
    return c->code;
}

// A pattern that steers PCRE2 itself may match in company where it does not alone.
static bool steers(const struct finder *finder) {
    for (size_t i = 0; i < finder->match.count; i++)
        if (strstr(finder->match.at[i], "(*")) return true;
    return false;
}

bool scanner_may_match(struct scanner *s, const struct finder *finder, const char *text, size_t size) {
    if (!finder->match.count) return false;
    if (steers(finder)) return true;
    pcre2_code *code = is_ascii(text, size) ? code_of(s, finder, PROBE_ASCII) : NULL;
    if (!code) code = code_of(s, finder, PROBE_UTF8);
    return !code || pcre2_match(code, (PCRE2_SPTR)text, size, 0, PCRE2_NO_UTF_CHECK, s->data, s->match) !=
                        PCRE2_ERROR_NOMATCH;
}

enum scan_result scanner_find(struct scanner *s, const struct finder *finder, const char *text, size_t size,
                              size_t from, struct span *match) {
    pcre2_code *code = is_ascii(text, size) ? code_of(s, finder, FOR_ASCII) : NULL;
    if (!code) code = code_of(s, finder, FOR_UTF8);
    if (!code) return finder->said.count || finder->match.count ? SCAN_BROKEN : SCAN_NONE;
    int found = pcre2_match(code, (PCRE2_SPTR)text, size, from, PCRE2_NO_UTF_CHECK, s->data, s->match);
    if (found == PCRE2_ERROR_NOMEMORY) arena_give_up(s->arena);
    if (found == PCRE2_ERROR_NOMATCH) return SCAN_NONE;
    if (found < 0) return SCAN_SLOW;
    const size_t *at = pcre2_get_ovector_pointer(s->data);
    *match = (struct span){at[0], at[1]};
    return at[1] > at[0] ? SCAN_FOUND : SCAN_NONE;
}

static void complain(struct arena *arena, const struct rule *rule, const char *pattern, int code,
                     size_t offset, struct diags *diags) {
    unsigned char message[160];
    pcre2_get_error_message(code, message, sizeof message);
    diags_add(diags, CODE_RULE_PATTERN, rule->at,
              arena_format(arena, "at character %zu of: %s", offset + 1, pattern),
              "a pattern of '%s' does not compile: %s", rule->id, (const char *)message);
}

static bool check_one(struct scanner *s, const struct rule *rule, const char *pattern, struct diags *diags) {
    int code;
    size_t offset;
    pcre2_code *made =
        pcre2_compile((PCRE2_SPTR)pattern, PCRE2_ZERO_TERMINATED, options, &code, &offset, s->compile);
    if (!made && code == PCRE2_ERROR_HEAP_FAILED) arena_give_up(s->arena);
    if (!made) complain(s->arena, rule, pattern, code, offset, diags);
    pcre2_code_free(made);
    return made != NULL;
}

// Each pattern alone, so that the message names the one at fault; then all together, as they are used: a
// comment inside one can swallow what stands behind it.
bool finder_check(struct arena *arena, const struct finder *finder, const struct rule *rule, bool whole,
                  struct diags *diags) {
    struct scanner *s = scanner_new(arena, 1);
    bool fine = true;
    for (size_t i = 0; i < finder->match.count; i++) fine &= check_one(s, rule, finder->match.at[i], diags);
    struct finder used = *finder;
    if (!whole) used.said = (struct texts){0};
    const char *pattern = fine ? finder_pattern(arena, &used) : NULL;
    return pattern ? check_one(s, rule, pattern, diags) : fine;
}
