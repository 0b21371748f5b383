// SPDX-License-Identifier: MIT
// Bytes come in, pieces go out: this file keeps the one buffer, the line count and the limit; cut.c says
// where a record ends and piece.c turns a piece into a tree. Invariant: buffer[from, filled) are the bytes of
// the record at hand from its byte `dropped` on, and `line` and `columns` say where buffer[from] stands in
// the file.
#include "format/stream.h"

#include <string.h>

#include "format/cut.h"
#include "format/piece.h"
#include "text/limits.h"

#ifdef ASFOUND_TEST_TINY
enum { CHUNK = 7 };
#else
enum { CHUNK = 64 << 10 };
#endif
enum {
    KEPT = 8,
    REWINDS_MOST = 100
}; // KEPT: a marker line that has begun may still move the cut before itself

struct stream {
    struct stream_source from_where;
    struct arena *own; // the name, the CSV header
    struct arena_memory memory;
    struct cutter cutter;
    struct pieces pieces;
    const char *name;
    char *buffer;
    size_t from, filled, room;
    size_t dropped, begun_line, begun_columns; // of the record at hand
    size_t line, columns;
    char last;      // the byte before buffer[from]
    char head[120]; // what a record that is too large began with
    bool started, eof, broken, over;
    bool found; // `cut`, and not yet taken
    struct cut cut;
    unsigned rewinds;
};

static void name_copy(struct arena *arena, void *context) {
    struct stream *stream = context;
    stream->name = arena_string(arena, stream->from_where.name);
}

struct stream *stream_open(const struct stream_source *from, enum form form,
                           const struct arena_memory *memory) {
    struct arena *own = arena_new(memory);
    if (!own) return NULL;
    struct arena_memory source = *arena_source(own);
    struct stream *stream = source.alloc(source.context, sizeof *stream);
    if (stream) {
        memset(stream, 0, sizeof *stream);
        stream->from_where = *from;
        stream->own = own;
        stream->memory = source;
        stream->cutter.form = form;
        stream->pieces.own = own;
        stream->line = stream->begun_line = 1;
        if (arena_try(own, name_copy, stream)) return stream;
        source.free(source.context, stream);
    }
    arena_free(own);
    return NULL;
}

void stream_close(struct stream *stream) {
    if (!stream) return;
    struct arena_memory memory = stream->memory;
    if (stream->buffer) memory.free(memory.context, stream->buffer);
    arena_free(stream->own);
    memory.free(memory.context, stream);
}

// Moves past bytes, counting lines as source_locate() does.
static void pass(struct stream *stream, size_t size) {
    for (size_t i = 0; i < size; i++) {
        char byte = stream->buffer[stream->from + i];
        bool second = byte == '\n' && stream->last == '\r';
        if (byte == '\r' || byte == '\n') {
            stream->line += !second;
            stream->columns = 0;
        } else {
            stream->columns += ((unsigned char)byte & 0xC0) != 0x80;
        }
        stream->last = byte;
    }
    stream->from += size;
}

static void make_room(struct stream *stream, struct arena *arena) {
    size_t left = stream->filled - stream->from;
    if (stream->room - stream->filled >= CHUNK) return;
    if (stream->from && stream->room - left >= CHUNK && left <= stream->room - stream->room / 4) {
        memmove(stream->buffer, stream->buffer + stream->from, left);
    } else {
        size_t room = stream->room ? stream->room * 2 : (size_t)CHUNK * 2;
        char *buffer = stream->memory.alloc(stream->memory.context, room);
        if (!buffer) arena_give_up(arena);
        if (left) memcpy(buffer, stream->buffer + stream->from, left);
        if (stream->buffer) stream->memory.free(stream->memory.context, stream->buffer);
        stream->buffer = buffer;
        stream->room = room;
    }
    stream->from = 0;
    stream->filled = left;
}

static void fill(struct stream *stream, struct arena *arena) {
    make_room(stream, arena);
    size_t got = stream->from_where.read(stream->from_where.context, stream->buffer + stream->filled, CHUNK);
    if (got == (size_t)-1)
        stream->broken = true;
    else if (!got)
        stream->eof = true;
    else
        stream->filled += got;
}

// The byte-order mark is no part of any record.
static void start(struct stream *stream, struct arena *arena) {
    stream->started = true;
    while (stream->filled < 3 && !stream->eof && !stream->broken) fill(stream, arena);
    if (stream->filled >= 3 && memcmp(stream->buffer, "\xEF\xBB\xBF", 3) == 0) stream->from = 3;
}

static void begin_record(struct stream *stream) {
    cutter_restart(&stream->cutter);
    stream->dropped = 0;
    stream->begun_line = stream->line;
    stream->begun_columns = stream->columns;
}

// Beyond the limit only enough is kept to find the end.
static void drop_excess(struct stream *stream) {
    size_t have = stream->cutter.seen - stream->dropped;
    if (stream->cutter.seen <= LIMIT_RECORD_BYTES + CHUNK || have <= KEPT) return;
    if (!stream->dropped) memcpy(stream->head, stream->buffer + stream->from, sizeof stream->head);
    pass(stream, have - KEPT);
    stream->dropped += have - KEPT;
}

// At the end of the input the last record may lack its line end; what is left without one is the last record.
static bool cut_last(struct stream *stream, struct cut *cut) {
    struct cutter before = stream->cutter;
    size_t total = before.seen;
    if (!total) return false;
    if (!cutter_step(&stream->cutter, '\n', cut)) {
        struct cut all = {total, 0, CUT_RECORD};
        *cut = all;
        // A CSV quote that is never closed: only its first line is given up.
        const char *text = stream->buffer + stream->from;
        const char *end = stream->dropped ? NULL : memchr(text, '\n', total);
        if (before.form == FORM_CSV && end && stream->rewinds++ < REWINDS_MOST) {
            cut->length = (size_t)(end - text);
            cut->skip = 1;
            if (cut->length && text[cut->length - 1] == '\r') {
                cut->length--;
                cut->skip = 2;
            }
        }
    }
    if (cut->length > total) cut->length = total;
    if (cut->skip > total - cut->length) cut->skip = total - cut->length;
    return true;
}

// Looks on from where it looked last. What was found stays found until it is taken.
static bool find_cut(struct stream *stream) {
    size_t at = stream->from + (stream->cutter.seen - stream->dropped);
    while (!stream->found && at < stream->filled)
        stream->found = cutter_step(&stream->cutter, stream->buffer[at++], &stream->cut);
    return stream->found;
}

bool stream_at_hand(struct stream *stream) {
    return stream->started && !stream->over && !stream->pieces.over && find_cut(stream);
}

// False at the end of the input or when reading failed.
static bool next_cut(struct stream *stream, struct arena *arena, struct cut *cut) {
    for (;;) {
        if (find_cut(stream)) {
            *cut = stream->cut;
            stream->found = false;
            return true;
        }
        if (stream->broken) return false;
        if (stream->eof) return cut_last(stream, cut);
        drop_excess(stream);
        fill(stream, arena);
    }
}

// A place that outlives the record: in the arena of the messages.
static struct place place_of(const struct stream *stream, struct diags *diags, struct source source) {
    struct source *kept = arena_alloc(diags->arena, sizeof *kept);
    *kept = source;
    kept->name = arena_string(diags->arena, stream->name);
    if (source.text) kept->text = arena_copy(diags->arena, source.text, source.size);
    struct place at = {kept, 0, kept->size ? 1 : 0};
    return at;
}

static void add_too_large(struct stream *stream, const struct source *piece, struct diags *diags) {
    struct source source = *piece;
    source.text = stream->head;
    source.size = sizeof stream->head;
    for (size_t k = 0; k < 3 && ((unsigned char)stream->head[source.size - 1] & 0x80); k++) source.size--;
    diags_add(diags, CODE_TOO_LARGE, place_of(stream, diags, source), "the other records are still read",
              "this record is larger than %zu MiB", LIMIT_RECORD_BYTES >> 20);
}

// Takes the cut record out of the buffer, as a piece in `arena`. The buffer moves on first: when memory runs
// out here, this record is lost and the next one is still whole.
static struct piece take_piece(struct stream *stream, struct arena *arena, const struct cut *cut,
                               bool large) {
    struct piece piece = {.kind = cut->kind, .last = stream->eof && cut->kind == CUT_RECORD};
    struct source source = {.name = stream->name,
                            .text = large ? "" : stream->buffer + stream->from,
                            .size = large ? 0 : cut->length,
                            .first_line = stream->begun_line,
                            .columns_before = stream->begun_columns};
    pass(stream, cut->length + cut->skip - stream->dropped);
    begin_record(stream);
    struct source *kept = arena_alloc(arena, sizeof *kept);
    *kept = source;
    kept->name = arena_string(arena, source.name);
    kept->text = arena_copy(arena, source.text, source.size);
    piece.source = kept;
    return piece;
}

static void add_end(struct stream *stream, struct diags *diags) {
    struct source nothing = {0},
                  end = {.text = "", .first_line = stream->line, .columns_before = stream->columns};
    stream->over = true;
    if (stream->broken) {
        diags_add(diags, CODE_READ, place_of(stream, diags, nothing), NULL, "reading failed in line %zu",
                  stream->line);
    } else if (pieces_open(&stream->pieces, &stream->cutter)) {
        diags_add(diags, CODE_JSON, place_of(stream, diags, end), "the closing ] is missing",
                  "a list that never ends");
    } else if (!stream->pieces.told) {
        diags_add(diags, CODE_EMPTY, place_of(stream, diags, nothing), NULL,
                  "there is nothing in it to read");
    }
}

bool stream_next(struct stream *stream, struct arena *arena, struct diags *diags, struct node **record) {
    *record = NULL;
    if (!stream->started) start(stream, arena);
    while (!stream->over && !stream->pieces.over) {
        struct cut cut = {0};
        if (!next_cut(stream, arena, &cut)) {
            add_end(stream, diags);
            break;
        }
        bool large = cut.length > LIMIT_RECORD_BYTES;
        if (large && !stream->dropped)
            memcpy(stream->head, stream->buffer + stream->from, sizeof stream->head);
        struct piece piece = take_piece(stream, arena, &cut, large);
        if (large) {
            pieces_skip(&stream->pieces, &stream->cutter);
            add_too_large(stream, piece.source, diags);
            return true;
        }
        if (pieces_read(&stream->pieces, &stream->cutter, arena, &piece, diags, record)) return true;
    }
    return false;
}
