// SPDX-License-Identifier: MIT
// Words that want a qualifier get it in the listing's own copy, before anything is made of it, so that title,
// description and data tell the same. Names stay as they are: a maker may be called anything.
#include <string.h>

#include "listing/listing.h"
#include "text/order.h"

static void write_out(struct arena *arena, const struct claims *claims, const char **text) {
    *text = claims_qualify(arena, claims, *text);
}

static bool is_name(const char *attribute) {
    static const char *const names[] = {"brand", "model", "mpn",      "name",    "author", "byArtist",
                                        "isbn",  "gtin",  "audience", "pattern", "theme"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        if (text_same(attribute, names[i])) return true;
    return false;
}

void listing_qualify(struct arena *arena, const struct claims *claims, struct record *r) {
    write_out(arena, claims, &r->type.value);
    for (size_t i = 0; i < r->others.count; i++) write_out(arena, claims, &r->others.at[i]);
    for (size_t i = 0; i < r->attribute_count; i++) {
        if (is_name(r->attributes[i].name)) continue;
        write_out(arena, claims, &r->attributes[i].value);
        write_out(arena, claims, &r->attributes[i].of);
    }
    for (size_t i = 0; i < r->include_count; i++) write_out(arena, claims, &r->includes[i].what);
    for (size_t i = 0; i < r->flaw_count; i++) {
        if (!claims_leave(r->flaws[i].kind, r->flaws[i].part)) write_out(arena, claims, &r->flaws[i].part);
        if (!claims_leave(r->flaws[i].kind, r->flaws[i].where)) write_out(arena, claims, &r->flaws[i].where);
    }
}
