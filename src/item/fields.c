// SPDX-License-Identifier: MIT
// Each reader accepts what people write by hand (a plain value for a map, one value for a list) and says
// where it fails.
#include "item/fields.h"

#include <math.h>
#include <string.h>

#include "text/hint.h"
#include "text/order.h"
#include "text/utf8.h"

void reader_fault(struct reader *r, enum code code, struct place at, const char *hint, const char *format,
                  ...) {
    va_list arguments;
    va_start(arguments, format);
    struct buf message = buf_start(r->arena);
    buf_vformat(&message, format, arguments);
    va_end(arguments);
    diags_add(r->diags, code, at, hint, "%s", message.at);
    r->fine = false;
}

void fields_read(struct reader *r, const struct field *fields, const struct node *map, void *to) {
    for (size_t i = 0; i < map->count; i++) {
        const struct member *member = &map->members[i];
        const struct field *field = fields;
        while (field->name && !text_same(field->name, member->key)) field++;
        if (field->name) {
            if (field->read && member->value->kind != NODE_NULL) field->read(r, member->value, to);
            continue;
        }
        struct nearest nearest = nearest_start(member->key);
        for (field = fields; field->name; field++) nearest_offer(&nearest, field->name);
        reader_fault(r, CODE_UNKNOWN_KEY, member->key_at, nearest_hint(r->arena, &nearest),
                     "unknown key '%s'", member->key);
    }
}

const char *read_text(struct reader *r, const struct node *node, const char *what) {
    if (node->kind != NODE_TEXT && node->kind != NODE_NUMBER) {
        reader_fault(r, CODE_TYPE, node->at, NULL, "'%s' wants text, not %s", what, node_kind_name(node));
        return NULL;
    }
    if (!node->size) {
        reader_fault(r, CODE_VALUE, node->at, "leave the key out where nothing is known", "'%s' is empty",
                     what);
        return NULL;
    }
    return utf8_nfc(r->arena, node->text);
}

int read_whole(struct reader *r, const struct node *node, const char *what, int least) {
    double value;
    if (!node_number(node, &value) || value != floor(value) || value < least || value > 1e6) {
        reader_fault(r, CODE_TYPE, node->at, NULL, "'%s' wants a whole number from %d to 1000000", what,
                     least);
        return 0;
    }
    return (int)value;
}

bool read_number(struct reader *r, const struct node *node, const char *what, double *value) {
    if (node_number(node, value) && *value >= 0 && *value <= 1e9) return true;
    reader_fault(r, CODE_TYPE, node->at, "write a plain decimal such as 6.25",
                 "'%s' wants a number that is not negative", what);
    return false;
}

bool read_yes_no(struct reader *r, const struct node *node, const char *what) {
    bool value = false;
    if (!node_bool(node, &value))
        reader_fault(r, CODE_TYPE, node->at, NULL, "'%s' wants true or false", what);
    return value;
}

struct note_span read_span(struct reader *r, const struct node *node) {
    double from, to;
    struct note_span none = {0, 0};
    if (node->kind != NODE_LIST || node->count != 2 || !node_number(node->members[0].value, &from) ||
        !node_number(node->members[1].value, &to) || from != floor(from) || to != floor(to) || from < 0 ||
        to <= from) {
        reader_fault(r, CODE_TYPE, node->at, "two byte offsets into notes: [from, to]",
                     "'span' wants two whole numbers");
        return none;
    }
    if (to > (r->notes ? (double)strlen(r->notes) : 0)) {
        reader_fault(r, CODE_VALUE, node->at, NULL, "'span' ends beyond the notes");
        return none;
    }
    return (struct note_span){(size_t)from, (size_t)to};
}

static const char *const sure_words[] = {"stated", "likely", "guess"};
static const char *const severity_words[] = {"unknown", "light", "moderate", "heavy"};

const char *sure_name(enum sure sure) {
    return sure_words[sure];
}
const char *severity_name(enum severity severity) {
    return severity_words[severity];
}

enum sure read_sure(struct reader *r, const struct node *node) {
    for (int i = 0; i < 3; i++)
        if (node->kind == NODE_TEXT && text_same(node->text, sure_words[i])) return (enum sure)i;
    reader_fault(r, CODE_VALUE, node->at, "stated (seen or read), likely, or guess", "'sure' cannot be this");
    return SURE_GUESS;
}

static bool bare_base(const struct node *map, struct reader *r, struct figure *figure) {
    static const char *const bases[] = {"mm", "g", "ml"};
    for (size_t i = 0; i < 3; i++) {
        const struct node *node = node_get(map, bases[i]);
        if (!node) continue;
        if (!read_number(r, node, bases[i], &figure->base)) return false;
        figure->value = figure->base;
        figure->unit = say_unit(bases[i], r->locale);
        return true;
    }
    reader_fault(r, CODE_REQUIRED, map->at, "give value and unit, or one of mm, g, ml",
                 "a figure without value or unit");
    return false;
}

bool read_figure(struct reader *r, const struct node *map, const char *what, struct figure *figure) {
    const struct node *value = node_get(map, "value"), *unit = node_get(map, "unit"),
                      *about = node_get(map, "about");
    if (about) figure->about = read_yes_no(r, about, "about");
    if (!value && !unit) return bare_base(map, r, figure);
    if (!value || !unit) {
        reader_fault(r, CODE_REQUIRED, map->at, "a bare number says nothing: give value and unit together",
                     "the figure of '%s' lacks its %s", what, value ? "unit" : "value");
        return false;
    }
    if (!read_number(r, value, "value", &figure->value)) return false;
    const char *name = read_text(r, unit, "unit");
    if (!name) return false;
    figure->unit = say_unit(name, r->locale);
    if (!figure->unit) {
        size_t count;
        const struct unit *known = say_units(&count);
        struct nearest nearest = nearest_start(name);
        for (size_t i = 0; i < count; i++) nearest_offer(&nearest, known[i].name);
        const char *hint = nearest_hint(r->arena, &nearest);
        reader_fault(r, CODE_VALUE, unit->at, hint ? hint : "such as in, cm, mm, oz, lb, g, fl oz, ml or l",
                     "there is no unit '%s'", name);
        return false;
    }
    figure->base = figure->value * figure->unit->factor;
    return true;
}

const struct flaw *read_flaw_id(struct reader *r, const struct node *node) {
    const char *id = read_text(r, node, "kind");
    const struct flaw *flaw = id ? ruleset_flaw(r->rules, id) : NULL;
    if (id && !flaw)
        reader_fault(r, CODE_UNKNOWN_FLAW, node->at, ruleset_flaw_hint(r->arena, r->rules, id),
                     "there is no flaw '%s'", id);
    return flaw;
}

const struct node *read_item(const struct node *node, size_t index) {
    return node->kind == NODE_LIST ? node->members[index].value : node;
}

size_t read_items(const struct node *node) {
    return node->kind == NODE_LIST ? node->count : 1;
}
