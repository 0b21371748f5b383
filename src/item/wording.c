// SPDX-License-Identifier: MIT
// One table of degree words for each family of them (size, amount, extent, strength, stiffness).
#include "item/wording.h"

#include <string.h>

#include "item/told.h"
#include "text/order.h"

static const char *const light_words[] = {"small", "light", "slight", "faint", "slight"};
static const char *const heavy_words[] = {"large", "heavy", "severe", "strong", "severe"};
static const char *const light_adverbs[] = {"slightly", "lightly", "slightly", "faintly", "slightly"};
static const char *const heavy_adverbs[] = {"badly", "heavily", "badly", "strongly", "badly"};

const char *wording_degree(const struct item_flaw *flaw, bool moderate) {
    switch (flaw->unsaid ? SEVERITY_UNKNOWN : flaw->severity) {
    case SEVERITY_LIGHT:
        return flaw->unsaid ? "" : light_words[flaw_told(flaw)->degree];
    case SEVERITY_MODERATE:
        return moderate ? "moderate" : "";
    case SEVERITY_HEAVY:
        return flaw->unsaid ? "" : heavy_words[flaw_told(flaw)->degree];
    default:
        return "";
    }
}

const char *wording_adverb(const struct item_flaw *flaw, bool moderate) {
    if (flaw_told(flaw)->adjective_at[flaw->severity]) return "";
    switch (flaw->unsaid ? SEVERITY_UNKNOWN : flaw->severity) {
    case SEVERITY_LIGHT:
        return flaw->unsaid ? "" : light_adverbs[flaw_told(flaw)->degree];
    case SEVERITY_MODERATE:
        return moderate ? "moderately" : "";
    case SEVERITY_HEAVY:
        return flaw->unsaid ? "" : heavy_adverbs[flaw_told(flaw)->degree];
    default:
        return "";
    }
}

const char *wording_adjective(const struct item_flaw *flaw) {
    const char *own = flaw_told(flaw)->adjective_at[flaw->severity];
    return own ? own : flaw_told(flaw)->adjective;
}

// "Strap or handle damage" of the straps: "damage". A noun that ends with the second ("dent or bend") has
// none.
static const char *rest_of_two(const char *noun, const char *head) {
    const char *first = strstr(noun, " or "), *second = first ? first + 4 : NULL;
    const char *rest = second ? strchr(second, ' ') : NULL;
    if (!rest) return NULL;
    size_t n = strlen(head), a = (size_t)(first - noun), b = (size_t)(rest - second);
    for (size_t cut = 0; cut < 2 && cut < n; cut++) { // one, and many
        if (cut && head[n - 1] != 's') break;
        bool is = (n - cut == a && !strncmp(noun, head, a)) || (n - cut == b && !strncmp(second, head, b));
        if (is) return rest + 1;
    }
    return NULL;
}

const char *wording_rest(const struct item_flaw *flaw) {
    const char *part = flaw->part, *noun = flaw_told(flaw)->noun;
    if (!part || !noun || flaw_told(flaw)->form != FAULT) return NULL;
    const char *head = strrchr(part, ' ');
    head = head ? head + 1 : part;
    size_t n = strlen(head);
    bool many = n > 3 && head[n - 1] == 's' && strncmp(noun, head, n) != 0; // "edges" of "edge wear"
    n -= many;
    bool held = !strncmp(noun, head, n) && noun[n] == ' ' && strncmp(noun + n, " or ", 4) != 0;
    return held ? noun + n + 1 : rest_of_two(noun, head);
}

const char *wording_before(struct arena *arena, const struct item_flaw *flaw) {
    const char *part = flaw->part, *noun = flaw_told(flaw)->noun;
    if (!part || !noun || flaw->kind->form != FAULT || flaw_told(flaw)->mass) return NULL;
    const char *head = strrchr(part, ' '), *last = strrchr(noun, ' ');
    if (!last || strchr(noun, ' ') != last ||
        !text_same(say_singular(arena, head ? head + 1 : part), last + 1))
        return NULL;
    return arena_copy(arena, noun, (size_t)(last - noun));
}

static bool ends_with(const char *text, const char *end) {
    size_t n = strlen(text), m = strlen(end);
    return n > m && text_same(text + n - m, end);
}

// A place that is itself a part: "elbow", and not "near the elbow" or "both ends".
static bool is_part(const char *where) {
    static const char *const others[] = {
        "in ",  "near ",   "along ", "under ", "inside", "outside", "all ", "both ",  "on ",
        "at ",  "top",     "bottom", "left",   "right",  "front",   "back", "middle", "one ",
        "over", "around ", "round ", "behind", "where ", "through", "side", "two ",   "three ",
        "end",  "lower",   "upper",  "center", "centre", "between"};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++)
        if (!strncmp(where, others[i], strlen(others[i]))) return false;
    return !strchr(where, ',') && !strchr(where, '-') && !strstr(where, " of ") && !strstr(where, " the ") &&
           !strstr(where, " and ");
}

const struct item_flaw *wording_shown(struct arena *arena, const struct item_flaw *flaw) {
    const struct flaw *told = flaw_told(flaw);
    if (flaw->part || !flaw->where || !flaw->span.to || flaw->count || flaw->of || told->form != FAULT ||
        !told->adjective || !told->adjective_own || flaw->has_size ||
        (!ends_with(told->noun, " part") && !ends_with(told->noun, " piece")) || !is_part(flaw->where))
        return flaw;
    struct item_flaw *shown = arena_alloc(arena, sizeof *shown);
    *shown = *flaw;
    shown->part = flaw->where;
    shown->where = NULL;
    return shown;
}

static const char *head_of(const char *part) {
    const char *head = strrchr(part, ' ');
    return head ? head + 1 : part;
}

static bool is_plain(const char *part) {
    return part && !strchr(part, ',') && !strstr(part, " or ");
}

// "Stuck or stiff part" of the chuck: "stuck or stiff chuck".
static bool is_of_part(const struct flaw *kind, const char *part) {
    return is_plain(part) && kind->form == FAULT && !kind->sought && kind->adjective && kind->adjective_own &&
           ends_with(kind->noun, " part");
}

// "Strap or handle damage" of the straps: "damage", behind the part.
static const char *behind_part(const struct flaw *kind, const char *part) {
    return is_plain(part) && kind->form == FAULT && !kind->sought && kind->mass
               ? rest_of_two(kind->noun, head_of(part))
               : NULL;
}

// The lining of "lining damage": the noun names it.
static bool is_in_noun(const struct flaw *kind, const char *part) {
    size_t n = part ? strlen(part) : 0;
    return n && kind->form == FAULT && !kind->sought && !strncmp(kind->noun, part, n) &&
           kind->noun[n] == ' ' && strncmp(kind->noun + n, " or ", 4) != 0;
}

bool wording_sought_holds_part(const struct flaw *kind, const char *part) {
    return kind->form == ABSENCE || is_of_part(kind, part) || is_in_noun(kind, part) ||
           behind_part(kind, part);
}

const char *wording_sought(struct arena *arena, const struct flaw *kind, const char *part) {
    if (is_of_part(kind, part)) return arena_format(arena, "%s %s", kind->adjective, part);
    if (kind->sought) return kind->sought;
    if (kind->form == ABSENCE) {
        const char *plural = kind->part_plural ? kind->part_plural : say_plural(arena, kind->part);
        return arena_format(arena, "missing %s", part ? part : plural);
    }
    if (kind->form == STATE) return kind->print;
    const char *behind = behind_part(kind, part);
    if (behind) return arena_format(arena, "%s %s", say_singular(arena, part), behind);
    bool fastener = part && text_same(kind->noun, "fastener fault"); // of a clasp or chain it is another kind
    if (fastener && !ends_with(part, "clasp") && !ends_with(part, "chain")) return "faults";
    if (kind->mass || say_is_plural(kind->noun)) return kind->noun;
    return kind->plural ? kind->plural : say_plural(arena, kind->noun);
}

// "Broken" has no degree: all its degrees are told in one word.
static bool is_absolute(const struct flaw *told) {
    const char *heavy = told->adjective_at[SEVERITY_HEAVY];
    return heavy && told->adjective && text_same(heavy, told->adjective) &&
           told->adjective_at[SEVERITY_LIGHT];
}

bool wording_unsized(const struct item_flaw *flaw) {
    const struct flaw *kind = flaw->kind;
    return !is_absolute(flaw_told(flaw)) && kind->form == FAULT && kind->class != CLASS_FUNCTION &&
           kind->class != CLASS_FEATURE && flaw->severity == SEVERITY_UNKNOWN && !flaw->has_size &&
           kind->cap[SEVERITY_LIGHT] != kind->cap[SEVERITY_HEAVY];
}

bool wording_names_one(const struct item_flaw *flaw) {
    const char *last = flaw->part ? strrchr(flaw->part, ' ') : NULL;
    return last && text_same(last, " one") && flaw->count == 1;
}
