// SPDX-License-Identifier: MIT
// Writing YAML with libyaml's emitter, which knows the quoting rules. Ours is only to say what must be quoted
// so that no reader, ours or another, takes a text for a number, a date or a yes.
#include <string.h>
#include <yaml.h>

#include "format/write.h"
#include "text/utf8.h"

struct writer {
    struct arena *arena;
    struct buf *out;
    yaml_emitter_t emitter;
    bool live;
};

static void writer_clean(void *thing) {
    struct writer *writer = thing;
    if (writer->live) yaml_emitter_delete(&writer->emitter);
    writer->live = false;
}

static int writer_add(void *data, unsigned char *bytes, size_t size) {
    struct writer *writer = data;
    buf_add(writer->out, (const char *)bytes, size);
    return 1;
}

// The emitter takes the event over, whether it succeeds or not; it fails only where memory does.
static void emit(struct writer *writer, yaml_event_t *event, int made) {
    if (!made || !yaml_emitter_emit(&writer->emitter, event)) arena_give_up(writer->arena);
}

static bool is_reserved(const char *text) {
    static const char *const WORDS[] = {"true", "false", "yes", "no", "on", "off", "y", "n", "null"};
    for (size_t i = 0; i < sizeof WORDS / sizeof *WORDS; i++) {
        size_t k = 0;
        for (; WORDS[i][k] && (text[k] | 0x20) == WORDS[i][k]; k++) {
        }
        if (!WORDS[i][k] && !text[k]) return true;
    }
    return false;
}

static yaml_scalar_style_t style_of(const struct node *node) {
    const char *text = node->text;
    if (node->kind != NODE_TEXT) return YAML_PLAIN_SCALAR_STYLE;
    if (strchr(text, '\r') || strstr(text, "\xC2\x85") || strstr(text, "\xE2\x80\xA8") ||
        strstr(text, "\xE2\x80\xA9")) {
        return YAML_DOUBLE_QUOTED_SCALAR_STYLE; // these are line ends for YAML and would be read back as LF
    }
    if (strchr(text, '\n')) return YAML_LITERAL_SCALAR_STYLE;
    bool nothing = !*text || strcmp(text, "~") == 0 || strcmp(text, "null") == 0;
    if (node->plain && !nothing) return YAML_PLAIN_SCALAR_STYLE;
    size_t at = 0;
    bool word = *text && utf8_is_letter(utf8_next(text, node->size, &at));
    return word && !is_reserved(text) ? YAML_PLAIN_SCALAR_STYLE : YAML_SINGLE_QUOTED_SCALAR_STYLE;
}

static void write_scalar(struct writer *writer, const struct node *node) {
    const char *text = node->kind == NODE_NULL ? "null" : node->text;
    size_t size = node->kind == NODE_NULL ? 4 : node->size;
    const struct node shown = {.kind = node->kind, .plain = node->plain, .text = text, .size = size};
    yaml_event_t event;
    int made = yaml_scalar_event_initialize(&event, NULL, NULL, (const yaml_char_t *)text, (int)size, 1, 1,
                                            style_of(&shown));
    emit(writer, &event, made);
}

static void write_node(struct writer *writer, const struct node *node) {
    yaml_event_t event;
    if (node->kind == NODE_LIST) {
        yaml_sequence_style_t style = node->count ? YAML_BLOCK_SEQUENCE_STYLE : YAML_FLOW_SEQUENCE_STYLE;
        emit(writer, &event, yaml_sequence_start_event_initialize(&event, NULL, NULL, 1, style));
        for (size_t i = 0; i < node->count; i++) write_node(writer, node->members[i].value);
        emit(writer, &event, yaml_sequence_end_event_initialize(&event));
    } else if (node->kind == NODE_MAP) {
        yaml_mapping_style_t style = node->count ? YAML_BLOCK_MAPPING_STYLE : YAML_FLOW_MAPPING_STYLE;
        emit(writer, &event, yaml_mapping_start_event_initialize(&event, NULL, NULL, 1, style));
        for (size_t i = 0; i < node->count; i++) {
            const char *key = node->members[i].key;
            const struct node name = {.kind = NODE_TEXT, .text = key, .size = strlen(key)};
            write_scalar(writer, &name);
            write_node(writer, node->members[i].value);
        }
        emit(writer, &event, yaml_mapping_end_event_initialize(&event));
    } else {
        write_scalar(writer, node);
    }
}

void yaml_write(struct arena *arena, struct buf *out, const struct node *node) {
    struct writer *writer = arena_alloc(arena, sizeof *writer);
    writer->arena = arena;
    writer->out = out;
    if (!yaml_emitter_initialize(&writer->emitter)) arena_give_up(arena);
    writer->live = true;
    arena_defer(arena, writer_clean, writer);
    yaml_emitter_set_output(&writer->emitter, writer_add, writer);
    yaml_emitter_set_unicode(&writer->emitter, 1);
    yaml_emitter_set_width(&writer->emitter, -1);
    yaml_event_t event;
    emit(writer, &event, yaml_stream_start_event_initialize(&event, YAML_UTF8_ENCODING));
    emit(writer, &event, yaml_document_start_event_initialize(&event, NULL, NULL, NULL, 1));
    write_node(writer, node);
    emit(writer, &event, yaml_document_end_event_initialize(&event, 1));
    emit(writer, &event, yaml_stream_end_event_initialize(&event));
    writer_clean(writer);
}
