// SPDX-License-Identifier: MIT
#include "engine.h"

#include "text/codes.h"

bool sink_put(const struct sink *sink, const char *bytes, size_t size) {
    return !sink->put || !size || sink->put(sink->context, bytes, size);
}

void sink_tell(const struct sink *sink, struct arena *arena, struct diags *diags) {
    struct buf out = buf_start(arena);
    size_t kept = 0;
    for (size_t i = 0; i < diags->count; i++)
        if (!sink->quiet || code_entry(diags->items[i].code)->level == LEVEL_ERROR)
            diags->items[kept++] = diags->items[i];
    diags->count = kept;
    diags_print(diags, &out, sink->color);
    sink_put(sink, out.at, out.n);
}

enum asfound_status sink_no_memory(const struct sink *sink) {
    static const char text[] = "asfound: error: memory ran out [memory]\n";
    sink_put(sink, text, sizeof text - 1);
    return ASFOUND_IO;
}

struct arena_memory engine_memory(const struct asfound_memory *memory) {
    return (struct arena_memory){memory->alloc, memory->free, memory->context};
}

struct sink engine_messages(const asfound_engine *engine, asfound_put *put, void *context) {
    return (struct sink){put, context, engine->color, engine->quiet};
}
