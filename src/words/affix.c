// SPDX-License-Identifier: MIT
// hunspell has no call that lists its words, so the two files are read here a second time. The rules of one
// flag stand together; a rule takes `strip` off one end of a word, puts `add` there, and holds where
// `condition` does.
#include "words/affix.h"

#include <string.h>

enum { WORD_LONGEST = 40, FORM_LONGEST = 64, FIELDS = 5, FLAGS = 256 };

struct span {
    const char *at;
    size_t size;
};

struct rule {
    struct span strip, add, condition;
};

struct flag_rules {
    bool prefix, cross;
    struct rule *rules;
    size_t count, room;
};

struct affixes {
    struct arena *arena;
    struct flag_rules of[FLAGS];
    bool silent[FLAGS]; // flags of words that are not to be shown
    bool plain;         // false: flags of a kind that is not read
};

static struct span next_line(const char *text, size_t size, size_t *at) {
    const char *stop = memchr(text + *at, '\n', size - *at);
    size_t end = stop ? (size_t)(stop - text) : size;
    struct span line = {text + *at, end - *at};
    *at = end + 1;
    if (line.size && line.at[line.size - 1] == '\r') line.size--;
    return line;
}

static size_t split(struct span line, struct span fields[FIELDS]) {
    size_t count = 0;
    for (size_t i = 0; i < line.size && count < FIELDS;) {
        while (i < line.size && (line.at[i] == ' ' || line.at[i] == '\t')) i++;
        size_t from = i;
        while (i < line.size && line.at[i] != ' ' && line.at[i] != '\t') i++;
        if (i > from) fields[count++] = (struct span){line.at + from, i - from};
    }
    return count;
}

static bool is(struct span span, const char *word) {
    return span.size == strlen(word) && !memcmp(span.at, word, span.size);
}

static struct span keep(struct arena *arena, struct span span) {
    if (is(span, "0")) return (struct span){"", 0};
    return (struct span){arena_copy(arena, span.at, span.size), span.size};
}

static void read_affix(struct affixes *a, const struct span fields[FIELDS], size_t count) {
    struct flag_rules *flag = &a->of[(unsigned char)fields[1].at[0]];
    if (fields[1].size != 1) {
        a->plain = false;
        return;
    }
    if (count == 4) { // the head: kind, flag, may be crossed, how many rules
        flag->prefix = is(fields[0], "PFX");
        flag->cross = is(fields[2], "Y");
        return;
    }
    // A further flag after '/' belongs to a second level of affixes; possessives are put back by the speller.
    if (memchr(fields[3].at, '/', fields[3].size) || memchr(fields[3].at, '\'', fields[3].size)) return;
    flag->rules = arena_grow(a->arena, flag->rules, flag->count, &flag->room, sizeof *flag->rules);
    flag->rules[flag->count++] =
        (struct rule){keep(a->arena, fields[2]), keep(a->arena, fields[3]), keep(a->arena, fields[4])};
}

static bool is_hiding(struct span name) {
    static const char *const hiding[] = {"NOSUGGEST", "ONLYINCOMPOUND", "FORBIDDENWORD", "NEEDAFFIX",
                                         "KEEPCASE"};
    for (size_t i = 0; i < sizeof hiding / sizeof *hiding; i++)
        if (is(name, hiding[i])) return true;
    return false;
}

struct affixes *affixes_read(struct arena *arena, const char *text, size_t size) {
    struct affixes *a = arena_alloc(arena, sizeof *a);
    a->arena = arena;
    a->plain = true;
    for (size_t at = 0; at < size;) {
        struct span fields[FIELDS], line = next_line(text, size, &at);
        size_t count = split(line, fields);
        if (count < 2) continue;
        if (is(fields[0], "FLAG") || is(fields[0], "AF"))
            a->plain = false;
        else if (is_hiding(fields[0]))
            a->silent[(unsigned char)fields[1].at[0]] = true;
        else if (count >= 4 && (is(fields[0], "PFX") || is(fields[0], "SFX")))
            read_affix(a, fields, count);
    }
    return a;
}

// Whether the byte is in the class that starts at `*at`, which is moved past it.
static bool in_class(struct span condition, size_t *at, char byte) {
    char first = condition.at[*at];
    if (first != '[') {
        ++*at;
        return first == '.' || first == byte;
    }
    bool negated = *at + 1 < condition.size && condition.at[*at + 1] == '^', found = false;
    for (*at += negated ? 2 : 1; *at < condition.size && condition.at[*at] != ']'; ++*at)
        if (condition.at[*at] == byte) found = true;
    ++*at;
    return found != negated;
}

static size_t condition_length(struct span condition) {
    size_t length = 0;
    for (size_t at = 0; at < condition.size; length++) (void)in_class(condition, &at, 'a');
    return length;
}

static bool holds(const struct rule *rule, bool prefix, struct span word) {
    size_t length = condition_length(rule->condition);
    if (is(rule->condition, ".")) length = 0;
    if (word.size < length || word.size <= rule->strip.size) return false;
    const char *end = prefix ? word.at : word.at + word.size - rule->strip.size;
    if (memcmp(end, rule->strip.at, rule->strip.size) != 0) return false;
    const char *look = prefix ? word.at : word.at + word.size - length;
    for (size_t i = 0, at = 0; i < length; i++)
        if (!in_class(rule->condition, &at, look[i])) return false;
    return true;
}

// Writes the form into `to` (FORM_LONGEST bytes); size 0 where the rule does not hold.
static struct span apply(const struct rule *rule, bool prefix, struct span word, char *to) {
    if (!holds(rule, prefix, word)) return (struct span){to, 0};
    size_t stays = word.size - rule->strip.size;
    if (stays + rule->add.size > FORM_LONGEST) return (struct span){to, 0};
    if (prefix) {
        memcpy(to, rule->add.at, rule->add.size);
        memcpy(to + rule->add.size, word.at + rule->strip.size, stays);
    } else {
        memcpy(to, word.at, stays);
        memcpy(to + stays, rule->add.at, rule->add.size);
    }
    return (struct span){to, stays + rule->add.size};
}

struct expansion {
    const struct affixes *affixes;
    struct span flags;
    size_t richness;
    affix_taker *take;
    void *context;
};

static void give(const struct expansion *e, struct span word, bool stem, bool prefixed) {
    struct affix_form form = {word.at, word.size, e->richness, stem, prefixed};
    e->take(e->context, &form);
}

static void give_prefixed(const struct expansion *e, struct span word, bool crossed) {
    char form[FORM_LONGEST];
    for (size_t f = 0; f < e->flags.size; f++) {
        const struct flag_rules *flag = &e->affixes->of[(unsigned char)e->flags.at[f]];
        if (!flag->prefix || (crossed && !flag->cross)) continue;
        for (size_t r = 0; r < flag->count; r++) {
            struct span made = apply(&flag->rules[r], true, word, form);
            if (made.size) give(e, made, false, true);
        }
    }
}

static void expand_line(const struct expansion *e, struct span stem) {
    char form[FORM_LONGEST];
    give(e, stem, true, false);
    give_prefixed(e, stem, false);
    for (size_t f = 0; f < e->flags.size; f++) {
        const struct flag_rules *flag = &e->affixes->of[(unsigned char)e->flags.at[f]];
        if (flag->prefix) continue;
        for (size_t r = 0; r < flag->count; r++) {
            struct span made = apply(&flag->rules[r], false, stem, form);
            if (!made.size) continue;
            give(e, made, false, false);
            if (flag->cross) give_prefixed(e, made, true);
        }
    }
}

static bool is_wanted(struct span word) {
    if (word.size < 2 || word.size > WORD_LONGEST || word.at[0] == '\'' || word.at[0] == '-') return false;
    for (size_t i = 0; i < word.size; i++) {
        unsigned char c = (unsigned char)word.at[i];
        bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c >= 0x80 || c == '\'' || c == '-';
        if (!letter) return false;
    }
    return true;
}

void affixes_expand(const struct affixes *affixes, const char *text, size_t size, affix_taker *take,
                    void *context) {
    size_t at = 0;
    if (!affixes->plain) return;
    (void)next_line(text, size, &at); // how many lines follow
    while (at < size) {
        struct span line = next_line(text, size, &at), word = line, flags = {"", 0};
        for (word.size = 0; word.size < line.size && !strchr(" \t/", line.at[word.size]);) word.size++;
        if (word.size < line.size && line.at[word.size] == '/') {
            flags.at = line.at + word.size + 1;
            size_t most = line.size - word.size - 1;
            while (flags.size < most && flags.at[flags.size] != ' ' && flags.at[flags.size] != '\t')
                flags.size++;
        }
        if (!is_wanted(word)) continue;
        bool hidden = false;
        for (size_t f = 0; f < flags.size; f++)
            hidden = hidden || affixes->silent[(unsigned char)flags.at[f]];
        if (hidden) continue;
        struct expansion e = {affixes, flags, flags.size, take, context};
        expand_line(&e, word);
    }
}
