// SPDX-License-Identifier: MIT
// Headers are compared by their letters and digits alone. A name that is meant exactly goes before one with a
// bracket behind it, that before one whose first or last word says it; of equals the one further left is
// taken.
#include "shelf/columns.h"

#include <string.h>

#include "text/utf8.h"

struct known {
    const char *name;
    const char *said; // exact names, small letters, parted by |
    const char *word; // as the last or first word of a header; NULL: never
};

static const struct known KNOWN[COLUMN_COUNT] = {
    [COLUMN_ID] =
        {"id",
         "id|sku|item id|itemid|item number|item no|item nr|item|stock number|stock no|stock id|stock code|"
         "custom label|listing id|product id|ref|reference|code|no|nr|number|inventory number|lot number",
         "id|sku"},
    [COLUMN_TITLE] = {"title",
                      "title|item title|listing title|product title|name|item name|product name|listing|"
                      "headline|heading|titel|titre",
                      "title"},
    [COLUMN_DESCRIPTION] = {"description",
                            "description|item description|listing description|desc|details|notes|"
                            "item notes|body|text|condition notes|beschreibung",
                            "description"},
    [COLUMN_LISTED] =
        {"listed",
         "listed|date listed|listed on|list date|listing date|start date|start time|date|created|"
         "created at|date created|date added|added|published|first listed|online since",
         "listed"},
    [COLUMN_DAYS] = {"days",
                     "days|days listed|age|age in days|days online|days active|days on shelf|days old", NULL},
    [COLUMN_VIEWS] = {"views", "views|view count|page views|visits|hits|seen|views total|total views",
                      "views"},
    [COLUMN_PRICE] =
        {"price",
         "price|item price|asking price|start price|buy now price|list price|asking|sale price|preis",
         "price"},
    [COLUMN_CATEGORY] = {"category", "category|category name|categories|department|section|kategorie",
                         "category"},
    [COLUMN_PHOTOS] = {"photos",
                       "photos|photo count|pictures|picture count|images|image count|number of photos|pics",
                       NULL},
    [COLUMN_BRAND] = {"brand", "brand|maker|manufacturer|make", NULL},
    [COLUMN_MODEL] = {"model", "model|model number|model no|mpn|part number", NULL},
    [COLUMN_MATERIAL] = {"material", "material|materials|made of", NULL},
    [COLUMN_COLOR] = {"color", "color|colour|main color|main colour", NULL},
};

const char *column_name(enum column column) {
    return KNOWN[column].name;
}

void sheet_tell(struct diags *diags, enum code code, const char *name, const struct sheet_row *row,
                int column, const char *hint, const char *message) {
    struct source source = {name, row->bytes ? row->bytes : "", 0, row->line, 0};
    struct place at = {&source, 0, 0};
    if (row->bytes) {
        source.size = (size_t)row->size;
        at.to = source.size;
        if (column >= 0 && (size_t)column < row->count) {
            at.from = row->cells[column].from;
            at.to = row->cells[column].to;
        }
        if (at.to - at.from > 200) at.to = at.from + 1;
    }
    diags_add(diags, code, at, hint, "%s", message);
}

// Letters and digits, words parted by one space; cut at a bracket where `bare`.
static const char *plain(struct arena *arena, const char *header, bool bare) {
    const char *fold = utf8_fold(arena, header);
    struct buf out = buf_start(arena);
    size_t size = strlen(fold);
    bool gap = false;
    for (size_t at = 0; at < size;) {
        size_t from = at;
        uint32_t point = utf8_next(fold, size, &at);
        if (bare && out.n && (point == '(' || point == '[')) break;
        if (!utf8_is_letter(point) && !utf8_is_digit(point)) {
            gap = true;
            continue;
        }
        if (gap && out.n) buf_byte(&out, ' ');
        gap = false;
        buf_add(&out, fold + from, at - from);
    }
    return out.at;
}

static bool in_list(const char *list, const char *text, size_t size) {
    for (const char *at = list; at; at = strchr(at, '|') ? strchr(at, '|') + 1 : NULL)
        if (size && !strncmp(at, text, size) && (!at[size] || at[size] == '|')) return true;
    return false;
}

// "ItemTitle" and "date_listed" are the same words as "item title" and "date listed".
static bool said(const char *list, const char *text) {
    if (in_list(list, text, strlen(text))) return true;
    for (const char *at = list; at;) {
        const char *end = strchr(at, '|'), *a = at, *b = text;
        size_t size = end ? (size_t)(end - at) : strlen(at);
        while (a < at + size && *b) {
            if (*a == ' ')
                a++;
            else if (*b == ' ')
                b++;
            else if (*a == *b)
                a++, b++;
            else
                break;
        }
        if (a == at + size && !*b) return true;
        at = end ? end + 1 : NULL;
    }
    return false;
}

static int match(struct arena *arena, const struct known *known, const char *header) {
    const char *whole = plain(arena, header, false), *bare = plain(arena, header, true);
    if (said(known->said, whole)) return 3;
    if (said(known->said, bare)) return 2;
    if (!known->word) return 0;
    const char *space = strrchr(bare, ' '), *first = strchr(bare, ' ');
    if (!space) return 0;
    return in_list(known->word, space + 1, strlen(space + 1)) ||
           in_list(known->word, bare, (size_t)(first - bare));
}

static void find_one(struct arena *arena, struct columns *c, enum column column, const bool *used) {
    static const char *const whys[] = {"", "one of its words says so",
                                       "its name before the bracket is one for it", "its name is one for it"};
    int best = 0, also = -1;
    for (size_t i = 0; i < c->count; i++) {
        int score = used[i] ? 0 : match(arena, &KNOWN[column], c->headers[i]);
        if (score && score == best && also < 0) also = (int)i;
        if (score <= best) continue;
        best = score;
        also = -1;
        c->at[column] = (int)i;
    }
    if (!best) return;
    c->why[column] = also < 0 ? whys[best]
                              : arena_format(arena, "%s; '%s' further right would do too", whys[best],
                                             cell_line(arena, c->headers[also]));
}

static int header_at(const struct columns *c, const char *name) {
    int found = -1;
    for (size_t i = 0; i < c->count; i++)
        if (!strcmp(c->headers[i], name)) found = found < 0 ? (int)i : -2;
    return found;
}

// One "title=Header" of the map; NULL or what is wrong with it.
static const char *map_one(struct arena *arena, struct columns *c, const char *pair, bool *used) {
    const char *equals = strchr(pair, '=');
    if (!equals) return arena_format(arena, "--map: '%s' is not NAME=HEADER", pair);
    for (int k = 0; k < COLUMN_COUNT; k++) {
        if (strlen(KNOWN[k].name) != (size_t)(equals - pair) ||
            strncmp(KNOWN[k].name, pair, (size_t)(equals - pair)) != 0)
            continue;
        int at = header_at(c, equals + 1);
        if (at == -1) return arena_format(arena, "--map: there is no column '%s'", equals + 1);
        if (at == -2) return arena_format(arena, "--map: two columns are called '%s'", equals + 1);
        if (used[at]) return arena_format(arena, "--map: '%s' is taken twice", equals + 1);
        c->at[k] = at;
        c->why[k] = "you said so";
        used[at] = true;
        return NULL;
    }
    return arena_format(arena, "--map: '%.*s' is nothing that a column can be", (int)(equals - pair), pair);
}

static bool take_map(struct arena *arena, struct columns *c, const char *map, bool *used,
                     struct diags *diags) {
    bool fine = true;
    while (map && *map) {
        const char *end = strchr(map, ',');
        const char *pair = end ? arena_copy(arena, map, (size_t)(end - map)) : map;
        const char *wrong = map_one(arena, c, pair, used);
        if (wrong) diags_add(diags, CODE_USAGE, (struct place){NULL, 0, 0}, NULL, "%s", wrong);
        fine = fine && !wrong;
        map = end ? end + 1 : NULL;
    }
    return fine;
}

bool columns_find(struct arena *arena, const struct dialect *dialect, const struct sheet_row *header,
                  const char *map, const char *name, struct columns *c, struct diags *diags) {
    *c = (struct columns){.count = header->count};
    c->headers = arena_array(arena, header->count + 1, sizeof *c->headers);
    bool *used = arena_array(arena, header->count + 1, sizeof *used);
    for (int k = 0; k < COLUMN_COUNT; k++) c->at[k] = -1;
    for (size_t i = 0; i < header->count; i++) {
        const char *why, *text = cell_text(arena, dialect, header, i, &why);
        c->headers[i] = text ? text : "";
    }
    if (!take_map(arena, c, map, used, diags)) return false;
    for (int k = 0; k < COLUMN_COUNT; k++) {
        if (c->at[k] < 0) find_one(arena, c, (enum column)k, used);
        if (c->at[k] >= 0) used[c->at[k]] = true;
    }
    for (int k = COLUMN_ID; k <= COLUMN_TITLE; k++) {
        if (c->at[k] >= 0) continue;
        sheet_tell(diags, CODE_CSV_HEADER, name, header, -1,
                   arena_format(arena, "say which with --map %s=HEADER", KNOWN[k].name),
                   arena_format(arena, "no column of this header is known to hold the %s", KNOWN[k].name));
        return false;
    }
    return true;
}

void columns_explain(struct buf *out, const struct dialect *dialect, const struct columns *c) {
    buf_format(out, "delimiter %s, %s%s\n", dialect_delimiter_name(dialect),
               dialect->windows ? "Windows-1252" : "UTF-8", dialect->bom ? " with a byte-order mark" : "");
    for (size_t i = 0; i < c->count; i++) {
        int taken = -1;
        for (int k = 0; k < COLUMN_COUNT; k++)
            if (c->at[k] == (int)i) taken = k;
        buf_format(out, "column %zu '%s': %s%s%s\n", i + 1, cell_line(out->arena, c->headers[i]),
                   taken < 0 ? "not read, kept as it is" : KNOWN[taken].name, taken < 0 ? "" : ", for ",
                   taken < 0 ? "" : c->why[taken]);
    }
}
