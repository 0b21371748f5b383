// SPDX-License-Identifier: MIT
// A word that wants a qualifier is told with it: the thing is of that style, that tone, plated. What a mark
// calls for goes before what the rule says of every such word.
#include "evidence/qualify.h"

#include <string.h>

static bool ends_word(const char *at) {
    return !*at || *at == ' ' || *at == '-' || *at == ',';
}

static char lower(char c) {
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool begins(const char *at, const char *word) {
    while (*word && lower(*at) == lower(*word)) at++, word++;
    return !*word;
}

// Whole words in any case, of one or of many: "ster" inside "sterling silver" bars nothing else, "antique"
// bars "Antiques".
bool qualify_stands_at(const char *text, size_t from, const char *word, struct span *at_out) {
    size_t n = strlen(word);
    for (const char *at = text + from; *at; at++) {
        if (!begins(at, word)) continue;
        bool before = at == text || at[-1] == ' ' || at[-1] == '-' || at[-1] == ',';
        size_t more = 0;
        if (!ends_word(at + n)) more = at[n] == 's' && ends_word(at + n + 1) ? 1 : 2;
        if (more == 2 && (strncmp(at + n, "es", 2) != 0 || !ends_word(at + n + 2))) continue;
        if (!before) continue;
        *at_out = (struct span){(size_t)(at - text), (size_t)(at - text) + n + more};
        return true;
    }
    return false;
}

// Does the word stand with its qualifier here?
bool qualify_is_written(const char *text, struct span at, const char *written) {
    struct span whole = {0, 0};
    for (size_t from = 0; written && qualify_stands_at(text, from, written, &whole); from = whole.from + 1)
        if (whole.from <= at.from && whole.to >= at.to) return true;
    return false;
}

// --- the wording ---

static const char *rewritten(struct arena *arena, const char *word, const struct short_form *writes,
                             size_t count) {
    for (size_t i = 0; i < count; i++) {
        struct span at;
        if (!qualify_stands_at(word, 0, writes[i].text, &at)) continue;
        size_t end = at.from + strlen(writes[i].text);
        return arena_format(arena, "%.*s%s%s", (int)at.from, word, writes[i].means, word + end);
    }
    return NULL;
}

void qualify(struct arena *arena, struct claim_found *found, const char *mark) {
    const struct claim *claim = found->claim;
    if (claim->verdict == VERDICT_QUALIFY && mark) {
        found->written = rewritten(arena, found->word, claim->marked_writes, claim->marked_count);
        if (found->written) found->shown_by = mark;
    }
    if (claim->verdict == VERDICT_QUALIFY && !found->written)
        found->written = rewritten(arena, found->word, claim->writes, claim->write_count);
    if (found->written || !found->color || claim->verdict == VERDICT_ASK) return;
    found->written = rewritten(arena, found->word, claim->color_writes, claim->color_count);
    if (found->written) found->verdict = VERDICT_QUALIFY;
}

static const char *with_qualifier(struct arena *arena, const struct claim_found *found, const char *text) {
    struct span at;
    for (size_t from = 0; qualify_stands_at(text, from, found->word, &at);) {
        from = at.to;
        if (qualify_is_written(text, at, found->written)) continue;
        // An ending of many stays behind the word.
        size_t end = at.from + strlen(found->word);
        text = arena_format(arena, "%.*s%s%s", (int)at.from, text, found->written, text + end);
        from = at.from + strlen(found->written);
    }
    return text;
}

// Of a text that may not be told at all no part is made tellable: "fox fur" is no "fox used fur".
static bool is_barred(const struct claims *claims, const char *text) {
    struct span at;
    for (size_t i = 0; i < claims->count; i++) {
        const struct claim_found *found = &claims->items[i];
        if (found->verdict != VERDICT_ALLOW && !found->written &&
            qualify_stands_at(text, 0, found->word, &at))
            return true;
    }
    return false;
}

const char *claims_qualify(struct arena *arena, const struct claims *claims, const char *text) {
    if (text && is_barred(claims, text)) return text;
    for (size_t i = 0; text && i < claims->count; i++) {
        const struct claim_found *found = &claims->items[i];
        if (found->verdict == VERDICT_QUALIFY && found->written) text = with_qualifier(arena, found, text);
    }
    return text;
}
