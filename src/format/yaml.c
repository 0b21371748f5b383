// SPDX-License-Identifier: MIT
// YAML trees from libyaml's events. libyaml itself takes anchors, tags, any number of documents and the same
// key twice; all of these are refused here, because each lets a record say something its reader cannot see at
// a glance.
#include <stdlib.h>
#include <string.h>
#include <yaml.h>

#include "format/check.h"
#include "format/read.h"
#include "format/yaml_error.h"
#include "text/limits.h"

struct level {
    struct node *node;
    const char *key; // of the value that comes next, NULL where a key comes next
    struct place key_at;
    struct keys keys;
    bool drop; // the value that comes next belongs to a key that was refused
};

struct reader {
    struct arena *arena;
    const struct source *source;
    struct diags *diags;
    struct yaml_marks marks;
    struct node *root;
    struct level levels[LIMIT_DEPTH];
    size_t depth;
    bool failed;
};

// What libyaml allocates: freed at the end of reading, or with the arena when memory ran out before that.
struct parts {
    yaml_parser_t parser;
    yaml_event_t event;
    bool live;
};

static void parts_clean(void *thing) {
    struct parts *parts = thing;
    if (!parts->live) return;
    parts->live = false;
    yaml_event_delete(&parts->event);
    yaml_parser_delete(&parts->parser);
}

static struct place event_place(struct reader *reader, const yaml_event_t *event) {
    struct place at = {reader->source, 0, 0};
    at.from = yaml_marks_byte(&reader->marks, event->start_mark.index);
    at.to = yaml_marks_byte(&reader->marks, event->end_mark.index);
    return at;
}

static void refuse(struct reader *reader, enum code code, struct place at, const char *hint,
                   const char *message) {
    reader->failed = true;
    diags_add(reader->diags, code, at, hint, "%s", message);
}

static void check_extras(struct reader *reader, const yaml_char_t *anchor, const yaml_char_t *tag,
                         struct place at) {
    if (anchor) refuse(reader, CODE_YAML_ALIAS, at, "take the &name out", "anchors are not used here");
    const char *name = (const char *)tag;
    if (!name || strcmp(name, "!") == 0) return;
    if (strcmp(name, YAML_STR_TAG) == 0 || strcmp(name, YAML_SEQ_TAG) == 0 || strcmp(name, YAML_MAP_TAG) == 0)
        return;
    refuse(reader, CODE_YAML_TAG, at, "take the !tag out", "tags are not used here");
}

static void take_key(struct reader *reader, struct level *level, const struct node *key) {
    struct arena *arena = reader->arena;
    level->key = key->text;
    level->key_at = key->at;
    level->drop = false;
    if (key->kind == NODE_NULL && !key->size) {
        refuse(reader, CODE_KEY_FORM, key->at, "every line of a map is `key: value`", "a key is missing");
        level->drop = true;
        return;
    }
    const struct member *same = keys_find(&level->keys, arena, level->node, key->text);
    if (!same) return;
    // Finding a line walks the text: not for a message that will only be counted.
    bool kept = reader->diags->count < DIAGS_MOST;
    size_t line = kept ? source_locate(reader->source, same->key_at.from).line : 0;
    reader->failed = level->drop = true;
    diags_add(reader->diags, CODE_DUPLICATE_KEY, key->at, "keep one of the two",
              "key `%s` stands twice, first in line %zu", key->text, line);
}

static void take_value(struct reader *reader, struct level *level, struct node *value) {
    struct place at = value->at;
    if (level->node->kind == NODE_LIST)
        node_put_at(reader->arena, level->node, NULL, at, value);
    else if (!level->drop)
        node_put_at(reader->arena, level->node, level->key, level->key_at, value);
    level->key = NULL;
    level->drop = false;
}

static bool wants_key(const struct level *level) {
    return level->node->kind == NODE_MAP && !level->key && !level->drop;
}

// Puts a finished scalar or a collection that just began where it belongs.
static void place_node(struct reader *reader, struct node *node) {
    if (!reader->depth) {
        reader->root = node;
        return;
    }
    struct level *level = &reader->levels[reader->depth - 1];
    if (!wants_key(level)) {
        take_value(reader, level, node);
    } else if (node->kind == NODE_LIST || node->kind == NODE_MAP) {
        refuse(reader, CODE_KEY_FORM, node->at, "a key is one word or a short text",
               "a list or map cannot be a key");
        level->drop = true;
    } else {
        take_key(reader, level, node);
    }
}

// Line ends that a mark takes in after a block scalar or after an anchor are no part of the place.
static void trim_end(struct place *at) {
    const char *text = at->source->text;
    while (at->to > at->from && strchr(" \t\r\n", text[at->to - 1])) at->to--;
}

static void read_scalar(struct reader *reader, const yaml_event_t *event) {
    struct node *node = arena_alloc(reader->arena, sizeof *node);
    yaml_scalar_style_t style = event->data.scalar.style;
    node->kind = NODE_TEXT;
    node->size = event->data.scalar.length;
    node->text = arena_copy(reader->arena, (const char *)event->data.scalar.value, node->size);
    node->at = event_place(reader, event);
    node->plain = style == YAML_PLAIN_SCALAR_STYLE && event->data.scalar.plain_implicit;
    if (style == YAML_LITERAL_SCALAR_STYLE || style == YAML_FOLDED_SCALAR_STYLE) trim_end(&node->at);
    bool nothing = !node->size || strcmp(node->text, "~") == 0 || strcmp(node->text, "null") == 0;
    if (node->plain && nothing) node->kind = NODE_NULL;
    check_extras(reader, event->data.scalar.anchor, event->data.scalar.tag, node->at);
    bool key = reader->depth && wants_key(&reader->levels[reader->depth - 1]);
    if (!check_value(node->text, node->size, node->at, key, reader->diags)) reader->failed = true;
    place_node(reader, node);
}

static bool open_level(struct reader *reader, const yaml_event_t *event, enum node_kind kind) {
    struct node *node = arena_alloc(reader->arena, sizeof *node);
    node->kind = kind;
    node->at = event_place(reader, event);
    trim_end(&node->at);
    bool map = kind == NODE_MAP;
    check_extras(reader, map ? event->data.mapping_start.anchor : event->data.sequence_start.anchor,
                 map ? event->data.mapping_start.tag : event->data.sequence_start.tag, node->at);
    if (reader->depth == LIMIT_DEPTH) {
        refuse(reader, CODE_DEEP, node->at, NULL, "lists and maps are nested too deep");
        return false;
    }
    place_node(reader, node);
    struct level level = {.node = node};
    reader->levels[reader->depth++] = level;
    return true;
}

// A block collection's end mark stands at whatever comes next; its place ends with its last value instead.
static void close_level(struct reader *reader, const yaml_event_t *event) {
    struct node *node = reader->levels[--reader->depth].node;
    struct place end = event_place(reader, event);
    if (end.to > end.from) {
        node->at.to = end.to; // a flow collection ends with its bracket
    } else if (node->count) {
        const struct member *last = &node->members[node->count - 1];
        node->at.to = last->value->at.to > last->key_at.to ? last->value->at.to : last->key_at.to;
    }
}

// False when reading must stop.
static bool read_event(struct reader *reader, const yaml_event_t *event) {
    switch (event->type) {
    case YAML_SCALAR_EVENT:
        read_scalar(reader, event);
        return true;
    case YAML_SEQUENCE_START_EVENT:
        return open_level(reader, event, NODE_LIST);
    case YAML_MAPPING_START_EVENT:
        return open_level(reader, event, NODE_MAP);
    case YAML_SEQUENCE_END_EVENT:
    case YAML_MAPPING_END_EVENT:
        close_level(reader, event);
        return true;
    case YAML_ALIAS_EVENT: {
        struct node *node = arena_alloc(reader->arena, sizeof *node);
        node->text = "";
        node->at = event_place(reader, event);
        refuse(reader, CODE_YAML_ALIAS, node->at, "a value that starts with * needs quotes",
               "aliases are not used here");
        node->kind = NODE_TEXT;
        place_node(reader, node);
        return true;
    }
    case YAML_DOCUMENT_START_EVENT:
        if (!reader->root) return true;
        refuse(reader, CODE_YAML, event_place(reader, event), "one document is expected here",
               "a second document starts");
        return false;
    case YAML_STREAM_END_EVENT:
        return false;
    default:
        return true;
    }
}

static void read_all(struct reader *reader, struct parts *parts) {
    for (bool more = true; more;) {
        if (!yaml_parser_parse(&parts->parser, &parts->event)) {
            if (parts->parser.error == YAML_MEMORY_ERROR) arena_give_up(reader->arena);
            reader->failed = true;
            yaml_error_add(&parts->parser, &reader->marks, reader->diags);
            return;
        }
        more = read_event(reader, &parts->event);
        yaml_event_delete(&parts->event);
    }
}

struct node *yaml_read(struct arena *arena, const struct source *source, struct diags *diags) {
    if (!check_source(source, diags)) return NULL;
    struct reader *reader = arena_alloc(arena, sizeof *reader);
    reader->arena = arena;
    reader->source = source;
    reader->diags = diags;
    reader->marks = yaml_marks_start(source);
    struct parts *parts = arena_alloc(arena, sizeof *parts);
    if (!yaml_parser_initialize(&parts->parser)) arena_give_up(arena);
    parts->live = true;
    arena_defer(arena, parts_clean, parts);
    size_t skip = reader->marks.start;
    yaml_parser_set_encoding(&parts->parser, YAML_UTF8_ENCODING);
    yaml_parser_set_input_string(&parts->parser, (const unsigned char *)source->text + skip,
                                 source->size - skip);
    read_all(reader, parts);
    parts_clean(parts);
    const struct node *root = reader->root;
    bool empty = root && root->kind == NODE_NULL && !root->size;
    return reader->failed || empty ? NULL : reader->root;
}
