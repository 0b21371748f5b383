// SPDX-License-Identifier: MIT
// What the disclosure says was looked for and not seen, and what was not looked at.
#include <string.h>

#include "notes/faults.h"
#include "notes/paragraph.h"

// What is looked for at the head of `text`, on `part` where one was named: the kind with the longest words.
static const char *kind_after(struct told *told, const char *text, const char *part,
                              const struct flaw **kind) {
    const char *end = NULL;
    for (size_t i = 0; i < told->rules->flaw_count; i++) {
        const struct flaw *one = told->rules->flaws[i];
        const char *rest = words_after(text, wording_sought(told->arena, one, part));
        if (!rest || (end && rest <= end)) continue;
        *kind = one;
        end = rest;
    }
    return end;
}

static const char *sign_after(const char *text) {
    static const char *const signs[] = {", or ", ", ", " or "};
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++)
        if (!strncmp(text, signs[i], strlen(signs[i]))) return text + strlen(signs[i]);
    return NULL;
}

// "missing hinges": a part that no rule names so.
static const char *part_after(struct told *told, const char *text, const struct flaw **kind,
                              const char **part) {
    if (strncmp(text, "missing ", strlen("missing ")) != 0) return NULL;
    const char *from = text + strlen("missing "), *end = from;
    while (*end && !sign_after(end) && strncmp(end, " seen", strlen(" seen")) != 0) end++;
    *part = arena_copy(told->arena, from, (size_t)(end - from));
    *kind = absent_kind(told->arena, told->rules, *part);
    return end > from ? end : NULL;
}

// "loose handle", "stuck or stiff lid", "strap damage": a kind that is told with the part that it is of.
static const char *ill_part_after(struct told *told, const char *text, const struct flaw **kind,
                                  const char **part) {
    const char *end = text;
    while (*end && strncmp(end, ", ", 2) != 0 && strncmp(end, " seen", strlen(" seen")) != 0) end++;
    const char *all = arena_copy(told->arena, text, (size_t)(end - text)), *last = strrchr(all, ' ');
    if (!last) return NULL;
    for (size_t i = 0; i < told->rules->flaw_count; i++) {
        const struct flaw *one = told->rules->flaws[i];
        if (one->form != FAULT) continue;
        const char *rest = one->adjective ? words_after(text, one->adjective) : NULL;
        const char *const parts[] = {rest && *rest == ' ' ? rest + 1 : NULL, text};
        for (size_t k = 0; k < 2; k++) {
            if (!parts[k]) continue;
            for (const char *stop = parts[k]; stop < end + 1; stop++) {
                if (stop == parts[k] || (*stop != ' ' && stop != end && *stop != ',')) continue;
                const char *named = arena_copy(told->arena, parts[k], (size_t)(stop - parts[k]));
                if (!wording_sought_holds_part(one, named)) continue;
                const char *to = words_after(text, wording_sought(told->arena, one, named));
                if (!to || (to < end && !sign_after(to))) continue;
                *kind = one;
                *part = named;
                return to;
            }
        }
    }
    return NULL;
}

// "chips, cracks or crazing": where the list ends, NULL if one of it is nothing that is looked for.
static const char *list_after(struct told *told, const char *text, const char *on, bool clear) {
    for (size_t n = 0; n < TOLD_MOST; n++) {
        const char *other = clear ? words_after(text, "other") : NULL;
        if (other && *other == ' ') text = other + 1;
        const struct flaw *kind = NULL;
        const char *part = on, *end = kind_after(told, text, on, &kind);
        if (!end && !on) end = part_after(told, text, &kind, &part);
        if (!end && !on && clear) end = ill_part_after(told, text, &kind, &part);
        if (!end) return NULL;
        if (clear)
            told->clear[told->clear_count++] =
                (struct item_clear){.kind = kind, .part = part, .none_seen = true};
        else
            told->unchecked[told->unchecked_count++] = kind->rule.id;
        const char *next = sign_after(end);
        if (!next) return end;
        text = next;
    }
    return NULL;
}

static bool areas_read(struct told *told, const char *text) {
    while (*text && told->unchecked_count < TOLD_MOST) {
        const char *end = strstr(text, "; ");
        size_t n = end ? (size_t)(end - text) : strlen(text);
        told->unchecked[told->unchecked_count++] = arena_copy(told->arena, text, n);
        text += n + (end ? 2 : 0);
    }
    return !*text && told->unchecked_count;
}

static bool clear_read(struct told *told, const char *text, const char *part) {
    if (!strstr(text, " seen")) return false; // before all kinds are tried
    const char *end = list_after(told, text, part, true), *place = end ? words_after(end, " seen") : NULL;
    if (!place || (*place && (*place != ' ' || !place_is_ours(told, place + 1)))) {
        told->clear_count = 0;
        return false;
    }
    for (size_t i = 0; *place && i < told->clear_count; i++)
        told->clear[i].where = place_bare(told, place + 1);
    return true;
}

bool sought_read(struct told *told, const char *text) {
    static const char kinds[] = "not checked for ", areas[] = "not checked: ", on[] = "on the ",
                      no[] = ", no ";
    if (!strncmp(text, areas, strlen(areas))) return areas_read(told, text + strlen(areas));
    if (!strncmp(text, kinds, strlen(kinds))) {
        const char *end = list_after(told, text + strlen(kinds), NULL, false);
        if (end && !*end) return true;
        told->unchecked_count = 0;
        return false;
    }
    if (!strncmp(text, "no ", strlen("no "))) return clear_read(told, text + strlen("no "), NULL);
    const char *front = strncmp(text, on, strlen(on)) ? NULL : strstr(text, no);
    if (!front) return false;
    const char *part = arena_copy(told->arena, text + strlen(on), (size_t)(front - text) - strlen(on));
    return clear_read(told, front + strlen(no), part);
}
