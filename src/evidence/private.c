// SPDX-License-Identifier: MIT
// All matchers over one text, their spans put in order, and the text without them.
#include "evidence/private.h"

#include <string.h>

#include "evidence/private_parts.h"
#include "text/buf.h"

enum { REDACT_ROUNDS = 3 };

static const struct {
    const char *name, *phrase, *reason;
} kinds[PRIVATE_KINDS] = {
    [PRIVATE_NAME] = {"owner-name", "an owner's name", "it names a person"},
    [PRIVATE_INITIALS] = {"initials-with-date", "initials with a date",
                          "with the date they point to a person"},
    [PRIVATE_ADDRESS] = {"address", "an address", "a person can be found by it"},
    [PRIVATE_TELEPHONE] = {"telephone", "a telephone number", "a person can be reached by it"},
    [PRIVATE_ACCOUNT] = {"account", "an account number", "it can be misused"},
    [PRIVATE_PRESCRIPTION] = {"prescription", "words of a prescription", "it tells of a person's health"},
    [PRIVATE_SERIAL] = {"serial", "a serial number", "a whole serial number can be misused"},
    [PRIVATE_EMAIL] = {"e-mail", "an e-mail address", "a person can be reached by it"},
    [PRIVATE_WEB] = {"web-address", "a person's web address", "a person can be found by it"},
    [PRIVATE_PLATE] = {"vehicle-plate", "a vehicle's number", "a person can be found by it"},
};

const char *private_kind_name(enum private_kind kind) {
    return kinds[kind].name;
}
const char *private_phrase(enum private_kind kind) {
    return kinds[kind].phrase;
}
const char *private_reason(enum private_kind kind) {
    return kinds[kind].reason;
}

void (*const private_matchers[PRIVATE_MATCHERS])(struct private_text *t,
                                                 size_t i) = {[MATCH_OWNER] = match_owner,
                                                              [MATCH_TITLE] = match_title,
                                                              [MATCH_DEDICATION] = match_dedication,
                                                              [MATCH_BARE_NAME] = match_bare_name,
                                                              [MATCH_INITIALS] = match_initials,
                                                              [MATCH_ADDRESS] = match_address,
                                                              [MATCH_POSTAL] = match_postal,
                                                              [MATCH_TELEPHONE] = match_telephone,
                                                              [MATCH_EXCHANGE] = match_exchange,
                                                              [MATCH_ACCOUNT] = match_account,
                                                              [MATCH_CARD] = match_card,
                                                              [MATCH_SERIAL] = match_serial,
                                                              [MATCH_PRESCRIPTION] = match_prescription,
                                                              [MATCH_MAIL] = match_mail,
                                                              [MATCH_WEB] = match_web,
                                                              [MATCH_PLATE] = match_plate};

// Spans come nearly in order, so that insertion is quick. Of those that overlap the longest names the kind.
static void settle(struct private_spans *spans) {
    struct private_span *items = spans->items;
    for (size_t i = 1; i < spans->count; i++) {
        struct private_span span = items[i];
        size_t at = i;
        for (; at > 0 && items[at - 1].from > span.from; at--) items[at] = items[at - 1];
        items[at] = span;
    }
    size_t kept = 0, longest = 0;
    for (size_t i = 0; i < spans->count; i++) {
        size_t size = items[i].to - items[i].from;
        if (kept && items[i].from < items[kept - 1].to) {
            if (size > longest) {
                items[kept - 1].kind = items[i].kind;
                longest = size;
            }
            if (items[i].to > items[kept - 1].to) items[kept - 1].to = items[i].to;
            continue;
        }
        items[kept++] = items[i];
        longest = size;
    }
    spans->count = kept;
}

struct private_spans private_find(struct arena *arena, const char *text, unsigned place) {
    struct arena_mark mark = arena_mark(arena);
    struct private_text t = {.arena = arena, .text = text, .place = place};
    private_cut(&t);
    for (size_t i = 0; i < t.count; i++)
        for (unsigned left = private_starts(&t, i); left; left &= left - 1)
            private_matchers[__builtin_ctz(left)](&t, i);
    if (!t.found.count) {
        arena_release(arena, &mark);
        return (struct private_spans){0};
    }
    settle(&t.found);
    return t.found;
}

static bool has_content(const char *text, size_t from, size_t to) {
    for (size_t i = from; i < to; i++) {
        char c = text[i];
        if ((c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c & 0x80))
            return true;
    }
    return false;
}

static bool is_edge(char c) {
    return strchr(" \t\n,;:-/|&+(\"'.=#", c) != NULL;
}

// Words that lead to what is gone: "letter from", "marked with".
static size_t trim_end(const char *text, size_t n) {
    static const char *const leads[] = {"from", "to", "by", "of",  "with", "for", "and",
                                        "in",   "at", "on", "the", "no",   "near"};
    for (bool more = true; more;) {
        more = false;
        while (n && is_edge(text[n - 1]) && text[n - 1] != '"' && text[n - 1] != '.') n--;
        for (size_t i = 0; i < sizeof leads / sizeof *leads; i++) {
            size_t size = strlen(leads[i]);
            if (n <= size || text[n - size - 1] != ' ' || strncmp(text + n - size, leads[i], size) != 0)
                continue;
            n -= size;
            more = true;
        }
    }
    return n;
}

// "near Mrs Quillow's label" is near an owner's label.
static const char *phrase_of(const char *text, const struct private_span *span) {
    size_t size = span->to - span->from;
    const char *end = text + span->to;
    bool owns = size > 2 && end[-1] == 's' && (end[-2] == '\'' || (unsigned char)end[-2] == 0x99);
    bool thing = end[0] == ' ' && end[1] >= 'a' && end[1] <= 'z';
    return span->kind == PRIVATE_NAME && owns && thing ? "an owner's" : private_phrase(span->kind);
}

static const char *join(struct arena *arena, const char *text, const struct private_spans *spans,
                        enum private_style style) {
    struct buf out = buf_start(arena);
    size_t size = strlen(text), done = 0;
    for (size_t i = 0; i <= spans->count; i++) {
        size_t to = i < spans->count ? spans->items[i].from : size;
        size_t from = done;
        bool first = !has_content(out.at, 0, out.n);
        if (first && style != PRIVATE_PHRASE)
            while (from < to && is_edge(text[from]) && done) from++;
        else if (done)
            while (from < to && text[from] == ' ' && out.n && out.at[out.n - 1] == ' ') from++;
        if (from < to) buf_add(&out, text + from, to - from);
        if (i == spans->count) break;
        done = spans->items[i].to;
        bool inside = has_content(out.at, 0, out.n) && has_content(text, done, size);
        if (style == PRIVATE_PHRASE || (style == PRIVATE_VALUE && inside))
            buf_text(&out, phrase_of(text, &spans->items[i]));
    }
    size_t n = style == PRIVATE_PHRASE ? out.n : trim_end(out.at, out.n);
    return has_content(out.at, 0, n) ? arena_copy(arena, out.at, n) : NULL;
}

const char *private_redact(struct arena *arena, const char *text, unsigned place, enum private_style style,
                           struct private_spans *given) {
    struct private_spans spans = private_find(arena, text, place);
    if (given) *given = spans;
    for (size_t round = 0; spans.count; round++) {
        if (round == REDACT_ROUNDS) return NULL;
        text = join(arena, text, &spans, style);
        if (!text) return NULL;
        spans = private_find(arena, text, place);
    }
    return text;
}
