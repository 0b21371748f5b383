// SPDX-License-Identifier: MIT
// Records at random, the same on every machine: families and their things, attributes of the whole and of
// parts, unsure values, claims without evidence, flaws of every kind, what is clear and unchecked, measures,
// marks, counts.
#ifndef TEST_RULES_RECORDS_H
#define TEST_RULES_RECORDS_H

#include <strings.h>

#include "support.h"

#include "format/write.h"

// Words that stand in no rule, so that they can be looked for in what comes out.
static const char *const UNSURE_WORDS[] = {"quorbish", "zandric", "plimmetal", "vorrowed"};
static const char *const PART_COLORS[] = {"magenta", "teal", "ochre", "indigo"};
static const char *const PART_NAMES[] = {"lid", "handle", "shade", "band", "spout", "knob"};

// Whether the word stands anywhere in the text with no word of doubt before it.
static inline bool stands_unhedged(const char *text, const char *word) {
    static const char *const hedges[] = {"possible ",   "probable ",    "possibly ",   "probably ",
                                         "possibly a ", "possibly an ", "probably a ", "probably an "};
    for (const char *at = text; (at = strstr(at, word)) != NULL; at++) {
        const char *from = at;
        while (from > text && from[-1] != '\n' && from[-1] != '.') from--;
        if (!strncmp(from, "\\n", 2)) from += 2;      // as JSON has it
        bool hedged = !strncmp(from, "Possibly ", 9); // the whole sentence
        for (size_t i = 0; i < sizeof hedges / sizeof *hedges; i++) {
            size_t n = strlen(hedges[i]);
            hedged |= (size_t)(at - text) >= n && !strncasecmp(at - n, hedges[i], n);
        }
        if (!hedged) return true;
    }
    return false;
}

#define PICK(dice, list) ((list)[dice_roll((dice), sizeof(list) / sizeof *(list))])

static inline void put_word(struct arena *arena, struct node *map, const char *key, const char *text) {
    node_put(arena, map, key, node_text(arena, text));
}

static inline struct node *record_value(struct arena *arena, struct dice *dice, const char *text) {
    struct node *value = node_map(arena);
    bool unsure = dice_roll(dice, 8) == 0;
    put_word(arena, value, "value", unsure ? PICK(dice, UNSURE_WORDS) : text);
    if (unsure) put_word(arena, value, "sure", dice_roll(dice, 2) ? "likely" : "guess");
    return value;
}

static inline const char *random_claim(struct dice *dice, const struct ruleset *rules) {
    const struct claim *claim = rules->claims[dice_roll(dice, (uint32_t)rules->claim_count)];
    return claim->finder.said.at[dice_roll(dice, (uint32_t)claim->finder.said.count)];
}

static inline void put_attributes(struct arena *arena, struct dice *dice, const struct ruleset *rules,
                                  struct node *record) {
    static const struct {
        const char *name, *words[6];
    } pool[] = {
        {"color", {"green", "dark blue", "amber", "cream", "gray", "red"}},
        {"material", {"glass", "tin", "oak", "stoneware", "cotton", "steel"}},
        {"pattern", {"vertical panels", "Meadow Gate", "striped", "checked", "basket weave", "dotted"}},
        {"technique", {"pressed", "turned", "printed", "hammered", "woven", "molded"}},
        {"shape", {"round", "octagonal", "square base", "oval", "fluted", "tapered"}},
        {"style", {"folding", "hanging", "two handled", "footed", "stretch", "ribbed"}},
        {"finish", {"matte", "varnished", "painted", "polished", "waxed", "galvanized"}},
        {"theme", {"harbor scene", "windmill", "oak leaf", "sailing", "beehive", "fern"}},
        {"brand",
         {"Brassendell", "Obberstead Forge", "Vellacomb", "Pellander", "Tarn & Ottley", "Quillhaven"}},
        {"model", {"KR-9", "C-6", "1400", "No. 3", "Duplo 2", "G-114"}},
        {"size", {"8", "M", "18V", "3/8 drive", "10", "queen"}},
        {"audience", {"men", "women", "children", "boys", "unisex", "girls"}},
        {"itemCondition", {"unused", "new in box", "opened", "used", "unworn", "sealed"}},
        {"age", {"1970s", "old", "old", "1960s", "old", "1950s"}}};
    struct node *attributes = node_map(arena);
    for (size_t i = 0; i < sizeof pool / sizeof *pool; i++) {
        if (dice_roll(dice, i < 2 ? 2 : 4) != 0) continue;
        struct node *list = node_list(arena);
        node_push(arena, list, record_value(arena, dice, PICK(dice, pool[i].words)));
        if (i == 0 && dice_roll(dice, 3) == 0)
            node_push(arena, list, record_value(arena, dice, PICK(dice, pool[i].words)));
        if (i == 0 && dice_roll(dice, 3) == 0) {
            struct node *of = node_map(arena);
            put_word(arena, of, "value", PICK(dice, PART_COLORS));
            put_word(arena, of, "of", PICK(dice, PART_NAMES));
            node_push(arena, list, of);
        }
        node_put(arena, attributes, pool[i].name, list);
    }
    if (dice_roll(dice, 5) == 0 && !node_get(attributes, "style"))
        put_word(arena, attributes, "style", random_claim(dice, rules));
    if (dice_roll(dice, 12) == 0 && !node_get(attributes, "material"))
        put_word(arena, attributes, "material", dice_roll(dice, 2) ? "gold" : "silver");
    if (attributes->count) node_put(arena, record, "attributes", attributes);
}

static inline const char *random_place(struct dice *dice, const struct flaw *flaw) {
    static const char *const places[] = {"rim",       "inside",     "left corner",    "near the base",
                                         "both ends", "underside",  "along the seam", "bottom edge",
                                         "front",     "two corners"};
    if (flaw->parts.count && dice_roll(dice, 2))
        return flaw->parts.at[dice_roll(dice, (uint32_t)flaw->parts.count)];
    return PICK(dice, places);
}

static inline struct node *random_flaw(struct arena *arena, struct dice *dice, const struct ruleset *rules,
                                       int pieces) {
    const struct flaw *flaw = rules->flaws[dice_roll(dice, (uint32_t)rules->flaw_count)];
    struct node *map = node_map(arena);
    put_word(arena, map, "kind", flaw->rule.id);
    if (dice_roll(dice, 2)) put_word(arena, map, "where", random_place(dice, flaw));
    if (dice_roll(dice, 4) == 0) put_word(arena, map, "part", PICK(dice, PART_NAMES));
    if (dice_roll(dice, 4) == 0) {
        int count = 1 + (int)dice_roll(dice, 3);
        node_put(arena, map, "count", node_whole(arena, count));
        if (pieces >= count && dice_roll(dice, 2)) node_put(arena, map, "of", node_whole(arena, pieces));
    }
    static const char *const degrees[] = {"light", "moderate", "heavy"};
    if (dice_roll(dice, 3)) put_word(arena, map, "severity", PICK(dice, degrees));
    if (dice_roll(dice, 10) == 0) put_word(arena, map, "sure", "likely");
    if (dice_roll(dice, 5) == 0) {
        struct node *size = node_map(arena);
        node_put(arena, size, "value", node_real(arena, (1 + dice_roll(dice, 40)) / 4.0));
        put_word(arena, size, "unit", dice_roll(dice, 2) ? "mm" : "in");
        if (dice_roll(dice, 3) == 0) node_put(arena, size, "about", node_bool_new(arena, true));
        node_put(arena, map, "size", size);
    }
    return map;
}

static inline bool names_kind(const struct node *flaws, const char *kind) {
    for (size_t i = 0; i < flaws->count; i++)
        if (!strcmp(node_get(flaws->members[i].value, "kind")->text, kind)) return true;
    return false;
}

static inline void put_condition(struct arena *arena, struct dice *dice, const struct ruleset *rules,
                                 struct node *record, int pieces) {
    struct node *flaws = node_list(arena), *clear = node_list(arena), *unchecked = node_list(arena);
    for (uint32_t i = dice_roll(dice, 5); i > 0; i--)
        node_push(arena, flaws, random_flaw(arena, dice, rules, pieces));
    for (uint32_t i = dice_roll(dice, 3); i > 0; i--) {
        const struct flaw *flaw = rules->flaws[dice_roll(dice, (uint32_t)rules->flaw_count)];
        if (names_kind(flaws, flaw->rule.id) || names_kind(clear, flaw->rule.id)) continue;
        struct node *map = node_map(arena);
        put_word(arena, map, "kind", flaw->rule.id);
        if (dice_roll(dice, 2)) put_word(arena, map, "where", random_place(dice, flaw));
        if (dice_roll(dice, 2)) put_word(arena, map, "how", "none-seen");
        node_push(arena, clear, map);
    }
    for (uint32_t i = dice_roll(dice, 3); i > 0; i--) {
        const struct flaw *flaw = rules->flaws[dice_roll(dice, (uint32_t)rules->flaw_count)];
        node_push(arena, unchecked,
                  node_text(arena, dice_roll(dice, 2) ? flaw->rule.id : "the back of the label"));
    }
    if (flaws->count) node_put(arena, record, "flaws", flaws);
    if (clear->count) node_put(arena, record, "clear", clear);
    if (unchecked->count) node_put(arena, record, "unchecked", unchecked);
}

static inline void put_figures(struct arena *arena, struct dice *dice, struct node *record) {
    static const char *const dimensions[] = {"height", "width",    "length", "diameter",
                                             "weight", "capacity", "chest",  "drop"};
    static const char *const units[] = {"in", "in", "cm", "mm", "oz", "ml", "in", "in"};
    struct node *measures = node_list(arena), *marks = node_list(arena), *includes = node_list(arena);
    for (uint32_t i = dice_roll(dice, 4); i > 0; i--) {
        uint32_t which = dice_roll(dice, 8);
        struct node *map = node_map(arena);
        put_word(arena, map, "dimension", dimensions[which]);
        node_put(arena, map, "value", node_real(arena, (1 + dice_roll(dice, 200)) / 4.0));
        put_word(arena, map, "unit", units[which]);
        if (dice_roll(dice, 5) == 0) put_word(arena, map, "of", PICK(dice, PART_NAMES));
        node_push(arena, measures, map);
    }
    static const char *const texts[] = {
        "No 4", "HARBOR MILL",      "Chalk Powder",
        "17",   "Gate & Sons 1931", "made by hand in the long shed by the lock, 1922, for the fair"};
    for (uint32_t i = dice_roll(dice, 3); i > 0; i--)
        node_push(arena, marks, node_text(arena, PICK(dice, texts)));
    static const char *const extras[] = {"case", "spare strap", "lid", "manual", "two keys"};
    for (uint32_t i = dice_roll(dice, 3); i > 0; i--)
        node_push(arena, includes, node_text(arena, PICK(dice, extras)));
    if (measures->count) node_put(arena, record, "measurements", measures);
    if (marks->count) node_put(arena, record, "marks", marks);
    if (includes->count) node_put(arena, record, "includes", includes);
}

static inline const char *random_type(struct arena *arena, struct dice *dice, const struct ruleset *rules,
                                      const struct family *family) {
    const struct thing *thing = &family->things[dice_roll(dice, (uint32_t)family->thing_count)];
    uint32_t roll = dice_roll(dice, 24);
    if (roll == 0) return "gribble stand";
    if (roll == 1) return arena_format(arena, "%s %s", random_claim(dice, rules), thing->noun);
    if (roll < 6 && thing->also.count) return thing->also.at[dice_roll(dice, (uint32_t)thing->also.count)];
    return thing->noun;
}

static inline struct node *random_record(struct arena *arena, struct dice *dice, const struct ruleset *rules,
                                         size_t number) {
    const struct family *family = rules->families[dice_roll(dice, (uint32_t)rules->family_count)];
    struct node *record = node_map(arena);
    put_word(arena, record, "id", arena_format(arena, "r%zu", number));
    if (dice_roll(dice, 8)) put_word(arena, record, "family", family->rule.id);
    if (dice_roll(dice, 20)) {
        struct node *type = record_value(arena, dice, random_type(arena, dice, rules, family));
        if (dice_roll(dice, 6) == 0) put_word(arena, type, "others", family->things[0].noun);
        node_put(arena, record, "type", type);
    }
    int pieces = dice_roll(dice, 3) ? 1 : 2 + (int)dice_roll(dice, 11);
    if (pieces > 1) node_put(arena, record, "count", node_whole(arena, pieces));
    put_attributes(arena, dice, rules, record);
    put_condition(arena, dice, rules, record, pieces);
    put_figures(arena, dice, record);
    if (!strcmp(family->rule.id, "parts") || dice_roll(dice, 12) == 0) {
        struct node *fit = node_map(arena), *fits = node_list(arena);
        put_word(arena, fit, "brand", "Pellander");
        put_word(arena, fit, "model", dice_roll(dice, 2) ? "C-6" : "Tidewater 40");
        if (dice_roll(dice, 6) == 0) put_word(arena, fit, "sure", "guess");
        node_push(arena, fits, fit);
        node_put(arena, record, "fits", fits);
    }
    if (dice_roll(dice, 5) == 0) {
        struct node *dates = node_map(arena);
        node_put(arena, dates, "from", node_whole(arena, 1950));
        node_put(arena, dates, "to", node_whole(arena, 1950 + (long long)dice_roll(dice, 40)));
        node_put(arena, record, "dates", dates);
    }
    return record;
}

static inline const char *yaml_of(struct arena *arena, const struct node *node) {
    struct buf out = buf_start(arena);
    yaml_write(arena, &out, node);
    return out.at;
}

// The record of a made tree; it must have no fault.
static inline struct record *read_made(struct arena *arena, const struct ruleset *rules,
                                       const struct node *tree) {
    struct diags diags = diags_start(arena);
    struct record *record = arena_alloc(arena, sizeof *record);
    bool fine = record_read(arena, rules, tree, LOCALE_US, 1, record, &diags);
    ck_assert_msg(fine, "%s\n%s", yaml_of(arena, tree), printed(arena, &diags));
    return record;
}

#endif
