// SPDX-License-Identifier: MIT
// Buyers type the narrower word. Both of them side by side ("wood beech plane") read as if two things were
// meant.
#include "item/narrower.h"

#include <string.h>

#include "text/order.h"

// A wide word, then what is of it; each with a space before and behind.
static const char *const groups[][2] = {
    {"wood", " beech oak pine mahogany walnut teak elm ash maple cherry birch rosewood ebony boxwood cedar "
             "sycamore yew hickory plywood fruitwood satinwood hardwood softwood bamboo "},
    {"metal", " brass copper iron steel tin pewter aluminum aluminium bronze zinc nickel chrome tinplate "},
    {"leather", " suede pigskin calfskin cowhide sheepskin "},
    {"cloth", " wool linen cotton silk canvas tweed corduroy velvet denim flannel felt "},
    {"fabric", " wool linen cotton silk canvas tweed corduroy velvet denim flannel felt "},
    {"ceramic", " stoneware earthenware porcelain china ironstone terracotta creamware "},
    {"pottery", " stoneware earthenware ironstone terracotta creamware "}};

static const char *head_of(const char *words) {
    const char *head = strrchr(words, ' ');
    return head ? head + 1 : words;
}

static bool has_word(const char *list, const char *word) {
    size_t n = strlen(word);
    for (const char *at = strstr(list, word); at && n; at = strstr(at + 1, word))
        if (at[-1] == ' ' && at[n] == ' ') return true;
    return false;
}

// "Wooden jigsaw", "metalware dish": the type begins one of its words with it.
static bool begins_word(const char *text, const char *word) {
    for (const char *at = strstr(text, word); at; at = strstr(at + 1, word))
        if (at == text || at[-1] == ' ') return true;
    return false;
}

// "Engraved": the fault, or the feature, that it is tells it.
static bool is_of_flaw(const struct record *record, const struct value *value) {
    for (size_t i = 0; i < record->flaw_count && value->span.to; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        if (flaw->sure == SURE_STATED && flaw->span.from <= value->span.from &&
            flaw->span.to >= value->span.to)
            return true;
    }
    return false;
}

bool value_said_narrower(const struct record *record, const struct value *value) {
    if (text_same(value->name, "technique") && !value->of) return is_of_flaw(record, value);
    if (!text_same(value->name, "material") || value->of) return false;
    for (size_t g = 0; g < sizeof groups / sizeof *groups; g++) {
        if (!text_same(value->value, groups[g][0])) continue;
        if (record->type.value && record->type.sure == SURE_STATED &&
            begins_word(record->type.value, groups[g][0]))
            return true;
        for (size_t i = 0; i < record->attribute_count; i++) {
            const struct value *other = &record->attributes[i];
            if (text_same(other->name, "material") && !other->of && other->sure == SURE_STATED &&
                has_word(groups[g][1], head_of(other->value)))
                return true;
        }
    }
    return false;
}
