// SPDX-License-Identifier: MIT
// The words are those of the notes, the type, the attributes, parts and what is included; without notes a
// record is asked about by the rest alone.
#include "disclosure/concerns.h"

#include <string.h>

#include "text/utf8.h"

static bool is_letter(char c) {
    unsigned char u = (unsigned char)c;
    return ((u | 32) >= 'a' && (u | 32) <= 'z') || (u >= '0' && u <= '9') || u >= 0x80;
}

static void put(struct arena *arena, struct buf *out, const char *text) {
    if (!text) return;
    for (const char *at = utf8_fold(arena, text); *at;) {
        size_t n = 0;
        while (is_letter(at[n])) n++;
        if (n) {
            buf_text(out, say_singular(arena, arena_copy(arena, at, n)));
            buf_byte(out, ' ');
        }
        at += n ? n : 1;
    }
}

// What the thing is shows early; notes may be megabytes.
static const char *beginning(struct arena *arena, const char *notes) {
    enum { BYTES_MOST = 4096 };
    size_t size = notes ? strnlen(notes, BYTES_MOST) : 0;
    while (size == BYTES_MOST || (size && notes[size] && notes[size] != ' ')) size--;
    return size ? arena_copy(arena, notes, size) : NULL;
}

const char *concerns_words(struct arena *arena, const struct record *record) {
    struct buf out = buf_start(arena);
    buf_byte(&out, ' ');
    put(arena, &out, record->type.value);
    put(arena, &out, beginning(arena, record->notes));
    for (size_t i = 0; i < record->attribute_count; i++) {
        put(arena, &out, record->attributes[i].value);
        put(arena, &out, record->attributes[i].of);
    }
    for (size_t i = 0; i < record->flaw_count; i++) {
        put(arena, &out, record->flaws[i].part);
        put(arena, &out, record->flaws[i].where);
    }
    for (size_t i = 0; i < record->include_count; i++) put(arena, &out, record->includes[i].what);
    return out.at;
}

static bool holds(const char *words, const char *const *any, size_t count) {
    for (size_t i = 0; i < count; i++) {
        size_t n = strlen(any[i]);
        for (const char *at = strstr(words, any[i]); at; at = strstr(at + 1, any[i]))
            if (at[-1] == ' ' && at[n] == ' ') return true;
    }
    return false;
}

bool concerns(const char *words, const struct texts *about, const struct texts *never) {
    return (!about->count || holds(words, about->at, about->count)) && !holds(words, never->at, never->count);
}

bool concerns_flame(const char *words) {
    static const char *const flames[] = {"oil",    "paraffin", "kerosene", "wick",     "candle",
                                         "burner", "carbide",  "storm",    "hurricane"};
    static const char *const plugs[] = {"electric", "plug",  "cord",   "flex",
                                        "bulb",     "wired", "switch", "battery"};
    return holds(words, flames, sizeof flames / sizeof *flames) &&
           !holds(words, plugs, sizeof plugs / sizeof *plugs);
}
