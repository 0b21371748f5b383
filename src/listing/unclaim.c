// SPDX-License-Identifier: MIT
// Places, extras and pictures are told to a buyer as well: what they claim without evidence is cut out of
// them, and the place stays. A finding names each word that was kept out.
#include <string.h>

#include "listing/listing.h"
#include "say/say.h"
#include "text/order.h"

static void cut(struct arena *arena, const struct claims *claims, const char **text) {
    *text = claims_cut(arena, claims, *text);
}

static void cut_place(struct arena *arena, const struct claims *claims, const struct flaw *kind,
                      const char **text) {
    if (!claims_leave(kind, *text)) cut(arena, claims, text);
}

// What a part may be called whose name is a claim: without a name the fault would be told of the whole thing.
static const char *plain_name(const char *name) {
    static const struct {
        const char *claimed, *plain;
    } names[] = {{"pearl", "bead"}, {"coral", "bead"},     {"amber", "bead"},    {"diamond", "stone"},
                 {"ruby", "stone"}, {"sapphire", "stone"}, {"emerald", "stone"}, {"opal", "stone"},
                 {"gem", "stone"},  {"crystal", "glass"}};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        if (strstr(name, names[i].claimed)) return names[i].plain;
    return "part";
}

static void cut_part(struct arena *arena, const struct claims *claims, const struct flaw *kind,
                     const char **text) {
    const char *name = *text;
    cut_place(arena, claims, kind, text);
    if (!name || *text || text_same(kind->rule.id, "stone-missing")) return; // that kind names a stone itself
    const char *last = strrchr(name, ' ');
    const char *plain = plain_name(name);
    *text = say_is_plural(last ? last + 1 : name) ? say_plural(arena, plain) : plain;
}

// "Sterling spoon" without its mark is a spoon: the noun stays, or the type is left to its family.
static void cut_type(struct arena *arena, const struct claims *claims, struct value *type) {
    if (!type->value) return;
    const char *bare = claims_cut(arena, claims, type->value);
    if (!bare) return;
    const char *noun = strrchr(type->value, ' '), *left = strrchr(bare, ' ');
    if (noun && text_same(noun + 1, left ? left + 1 : bare)) type->value = bare;
}

void listing_unclaim(struct arena *arena, const struct ruleset *rules, const struct claims *claims,
                     struct record *r) {
    if (!claims->count) return;
    cut_type(arena, claims, &r->type);
    for (size_t i = 0; i < r->flaw_count; i++) {
        cut_part(arena, claims, r->flaws[i].kind, &r->flaws[i].part);
        cut_place(arena, claims, r->flaws[i].kind, &r->flaws[i].where);
    }
    for (size_t i = 0; i < r->clear_count; i++) {
        cut_part(arena, claims, r->clear[i].kind, &r->clear[i].part);
        cut_place(arena, claims, r->clear[i].kind, &r->clear[i].where);
    }
    for (size_t i = 0; i < r->measurement_count; i++) cut(arena, claims, &r->measurements[i].of);
    for (size_t i = 0; i < r->mark_count; i++) cut(arena, claims, &r->marks[i].where);
    for (size_t i = 0; i < r->photo_count; i++) cut(arena, claims, &r->photos[i].shows);
    size_t kept = 0;
    for (size_t i = 0; i < r->include_count; i++) {
        struct item_included included = r->includes[i];
        cut(arena, claims, &included.what);
        if (included.what) r->includes[kept++] = included;
    }
    r->include_count = kept;
    const char **areas = arena_array(arena, r->unchecked.count + 1, sizeof *areas);
    kept = 0;
    for (size_t i = 0; i < r->unchecked.count; i++) {
        areas[kept] = r->unchecked.at[i];
        if (!ruleset_flaw(rules, areas[kept])) cut(arena, claims, &areas[kept]);
        kept += areas[kept] != NULL;
    }
    r->unchecked.at = areas;
    r->unchecked.count = kept;
}
