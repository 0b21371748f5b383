// SPDX-License-Identifier: MIT
// One alternation a finder: its `unless` phrases first, skipped over by (*SKIP)(*FAIL) so that a word inside
// one can never match, then its words, then its own patterns. Steps are limited on every match: PCRE2 ends a
// catastrophic pattern with an error, never with a wrong answer.
#define PCRE2_CODE_UNIT_WIDTH 8
#include "rules/scan.h"

#include <pcre2.h>
#include <stdlib.h>
#include <string.h>

#include "text/limits.h"
#include "text/utf8.h"

enum { JIT_AFTER = 16 };

struct scanner {
    struct arena *arena;
    pcre2_code **codes;
    bool *broken;
    unsigned char *uses; // up to JIT_AFTER
    size_t count;
    pcre2_general_context *general;
    pcre2_compile_context *compile;
    pcre2_match_context *match;
    pcre2_match_data *data;
};

static void clean(void *thing) {
    struct scanner *s = thing;
    for (size_t i = 0; i < s->count; i++) pcre2_code_free(s->codes[i]);
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
    s->codes = arena_array(arena, finder_count + 1, sizeof(pcre2_code *));
    s->broken = arena_array(arena, finder_count + 1, sizeof *s->broken);
    s->uses = arena_array(arena, finder_count + 1, sizeof *s->uses);
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

static void add_phrase(struct buf *out, const char *phrase) {
    // A boundary only where a word begins or ends: `1/2"` has none after its quote.
    if (is_word(phrase)) buf_text(out, "\\b");
    const char *last = phrase;
    for (const char *c = phrase; *c; c++) {
        if ((*c & 0xC0) != 0x80) last = c;
        if (*c == ' ')
            buf_text(out, "[\\s-]+");
        else if (*c == '\'')
            buf_text(out, "['\xE2\x80\x99]?");
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

// PCRE2 takes the first branch that matches: "snapped off" must be tried before "snapped".
static void add_phrases(struct arena *arena, struct buf *out, const struct texts *phrases) {
    if (!phrases->count) return;
    const char **sorted = arena_array(arena, phrases->count, sizeof *sorted);
    memcpy((void *)sorted, phrases->at, phrases->count * sizeof *sorted);
    qsort((void *)sorted, phrases->count, sizeof *sorted, longer_first);
    for (size_t i = 0; i < phrases->count; i++) {
        if (i) buf_byte(out, '|');
        add_phrase(out, sorted[i]);
    }
}

const char *finder_pattern(struct arena *arena, const struct finder *finder, bool without_unless) {
    struct buf out = buf_start(arena);
    if (finder->unless.count && !without_unless) {
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

static pcre2_code *compile(struct scanner *s, const char *pattern) {
    int code;
    size_t offset;
    pcre2_code *made = pcre2_compile((PCRE2_SPTR)pattern, PCRE2_ZERO_TERMINATED, options | PCRE2_NO_UTF_CHECK,
                                     &code, &offset, s->compile);
    if (!made && code == PCRE2_ERROR_HEAP_FAILED) arena_give_up(s->arena);
    return made;
}

enum scan_result scanner_find(struct scanner *s, const struct finder *finder, const char *text, size_t size,
                              size_t from, struct span *match) {
    size_t n = finder->number;
    if (s->broken[n]) return SCAN_BROKEN;
    if (!s->codes[n]) {
        const char *pattern = finder_pattern(s->arena, finder, false);
        if (!pattern) return SCAN_NONE;
        s->codes[n] = compile(s, pattern);
        if (!s->codes[n]) {
            s->broken[n] = true;
            return SCAN_BROKEN;
        }
    }
    // Machine code pays off only for a pattern that is asked again and again. Where it cannot be had the
    // interpreter goes on, with the same matches.
    if (s->uses[n] < JIT_AFTER && ++s->uses[n] == JIT_AFTER)
        (void)pcre2_jit_compile(s->codes[n], PCRE2_JIT_COMPLETE);
    int found = pcre2_match(s->codes[n], (PCRE2_SPTR)text, size, from, PCRE2_NO_UTF_CHECK, s->data, s->match);
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
bool finder_check(struct arena *arena, const struct finder *finder, const struct rule *rule,
                  struct diags *diags) {
    struct scanner *s = scanner_new(arena, 1);
    bool fine = true;
    for (size_t i = 0; i < finder->match.count; i++) fine &= check_one(s, rule, finder->match.at[i], diags);
    const char *whole = fine && finder->match.count ? finder_pattern(arena, finder, false) : NULL;
    return whole ? check_one(s, rule, whole, diags) : fine;
}
