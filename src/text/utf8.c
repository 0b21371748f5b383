// SPDX-License-Identifier: MIT
// Checking and walking are our own (tables of utf8proc are not needed for them); normal form, folding,
// classes and case are utf8proc's, whose tables are fixed at build time and know no locale.
#include "text/utf8.h"

#include <string.h>
#include <utf8proc.h>

#include "text/buf.h"

// Length of a well-formed sequence at `at`, 0 when there is none (table 3-7 of the Unicode standard).
static size_t sequence_length(const unsigned char *at, size_t left) {
    unsigned char lead = at[0];
    if (lead < 0x80) return 1;
    if (lead < 0xC2 || lead > 0xF4) return 0;
    size_t length = lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
    if (left < length) return 0;
    unsigned char low = lead == 0xE0 ? 0xA0 : lead == 0xF0 ? 0x90 : 0x80;
    unsigned char high = lead == 0xED ? 0x9F : lead == 0xF4 ? 0x8F : 0xBF;
    if (at[1] < low || at[1] > high) return 0;
    for (size_t i = 2; i < length; i++) {
        if ((at[i] & 0xC0) != 0x80) return 0;
    }
    return length;
}

size_t utf8_check(const char *bytes, size_t size) {
    const unsigned char *at = (const unsigned char *)bytes;
    size_t i = 0;
    while (i < size) {
        size_t length = sequence_length(at + i, size - i);
        if (!length) return i;
        i += length;
    }
    return size;
}

uint32_t utf8_next_wide(const char *text, size_t size, size_t *at) {
    const unsigned char *from = (const unsigned char *)text + *at;
    unsigned char lead = from[0];
    size_t length = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
    if (length > size - *at) length = size - *at;
    uint32_t point = length == 1 ? lead : lead & (0x7Fu >> length);
    for (size_t i = 1; i < length; i++) point = point << 6 | (from[i] & 0x3Fu);
    *at += length;
    return point;
}

size_t utf8_put(uint32_t point, char *to) {
    if (point < 0x80) {
        to[0] = (char)point;
        return 1;
    }
    size_t length = point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
    static const unsigned char LEAD[] = {0, 0, 0xC0, 0xE0, 0xF0};
    for (size_t i = length - 1; i > 0; i--) {
        to[i] = (char)(0x80u | (point & 0x3Fu));
        point >>= 6;
    }
    to[0] = (char)(LEAD[length] | point);
    return length;
}

static bool is_tag(uint32_t point) {
    return point >= 0xE0020 && point <= 0xE007F;
}

// Zero-width joiner and non-joiner and the variation selectors stay: emoji and several scripts are spelt with
// them.
static bool is_unwanted(uint32_t point) {
    if (point < 0x20 || (point >= 0x7F && point < 0xA0)) return true;
    if (point == 0xAD || point == 0x61C || point == 0x180E || point == 0x200B) return true;
    if (point == 0x200E || point == 0x200F || (point >= 0x2028 && point <= 0x202E)) return true;
    if (point >= 0x2060 && point <= 0x206F) return true;
    if (point == 0xFEFF || (point >= 0xFFF9 && point <= 0xFFFB) || (point & 0xFFFE) == 0xFFFE) return true;
    return point == 0xE0001 || is_tag(point);
}

size_t utf8_unwanted(const char *text, size_t size, bool lines) {
    uint32_t before = 0;
    size_t at = 0;
    while (at < size) {
        size_t from = at;
        // Nearly all of most texts.
        while (at < size && (unsigned char)(text[at] - ' ') < 0x7F - ' ') at++;
        if (at > from) before = ' ';
        if (at > from) continue;
        uint32_t point = utf8_next(text, size, &at);
        bool fine = !is_unwanted(point);
        // Tag characters are the spelling of some flags, after the black flag only.
        if (is_tag(point)) fine = before == 0x1F3F4;
        if (lines) {
            fine = fine || point == '\t' || point == '\n';
            fine = fine || (point == '\r' && at < size && text[at] == '\n');
        }
        if (!fine) return from;
        if (!is_tag(point)) before = point;
    }
    return size;
}

enum { SCRATCH = 256, SEGMENT = 4096, MARKS_MOST = 1000 };

// Putting marks in order takes the square of their number, and no language writes so many on one letter.
static bool marks_pile_up(const char *text, size_t size) {
    size_t run = 0;
    for (size_t at = 0; at < size && run <= MARKS_MOST;) {
        uint32_t point = utf8_next(text, size, &at);
        run = point >= 0x300 && utf8proc_get_property((utf8proc_int32_t)point)->combining_class ? run + 1 : 0;
    }
    return run > MARKS_MOST;
}

// Both normal form and folding may be done piece by piece: nothing composes or reorders across the start of
// an ASCII character. So the scratch array stays small even for megabytes of notes.
static void map_segment(struct buf *out, const char *text, size_t size, utf8proc_option_t options) {
    if (marks_pile_up(text, size)) {
        buf_add(out, text, size);
        return;
    }
    utf8proc_int32_t small[SCRATCH];
    utf8proc_int32_t *points = small;
    const utf8proc_uint8_t *bytes = (const utf8proc_uint8_t *)text;
    utf8proc_ssize_t length = utf8proc_decompose(bytes, (utf8proc_ssize_t)size, small, SCRATCH - 1, options);
    if (length >= SCRATCH) {
        points = arena_array(out->arena, (size_t)length + 1, sizeof *points);
        length = utf8proc_decompose(bytes, (utf8proc_ssize_t)size, points, length, options);
    }
    if (length >= 0) length = utf8proc_reencode(points, length, options);
    if (length >= 0)
        buf_add(out, (const char *)points, (size_t)length);
    else
        buf_add(out, text,
                size); // not valid UTF-8, which the caller had to rule out: unchanged is the least harm
}

static const char *map_text(struct arena *arena, const char *text, size_t size, utf8proc_option_t options) {
    struct buf out = buf_start(arena);
    size_t from = 0;
    while (from < size) {
        size_t to = size - from > SEGMENT ? from + SEGMENT : size;
        while (to < size && (unsigned char)text[to] >= 0x80) to++;
        map_segment(&out, text + from, to - from, options);
        from = to;
    }
    return out.at;
}

const char *utf8_nfc(struct arena *arena, const char *text) {
    // Everything below U+0300 (lead bytes up to 0xCB) is in NFC as it stands.
    size_t size = 0;
    bool plain = true;
    for (; text[size]; size++) plain = plain && (unsigned char)text[size] < 0xCC;
    if (plain) return text;
    const char *made = map_text(arena, text, size, UTF8PROC_STABLE | UTF8PROC_COMPOSE);
    return strcmp(made, text) == 0 ? text : made;
}

const char *utf8_fold(struct arena *arena, const char *text) {
    size_t size = strlen(text);
    char *copy = arena_copy(arena, text, size);
    bool plain = true;
    for (size_t i = 0; i < size; i++) {
        if (copy[i] >= 'A' && copy[i] <= 'Z') copy[i] = (char)(copy[i] + ('a' - 'A'));
        plain = plain && (unsigned char)copy[i] < 0x80;
    }
    if (plain) return copy;
    return map_text(arena, text, size, UTF8PROC_STABLE | UTF8PROC_COMPOSE | UTF8PROC_CASEFOLD);
}

static utf8proc_category_t category(uint32_t point) {
    return utf8proc_category((utf8proc_int32_t)point);
}

bool utf8_is_letter_wide(uint32_t point) {
    utf8proc_category_t kind = category(point);
    return kind >= UTF8PROC_CATEGORY_LU && kind <= UTF8PROC_CATEGORY_LO;
}

bool utf8_is_digit_wide(uint32_t point) {
    return category(point) == UTF8PROC_CATEGORY_ND;
}

bool utf8_is_space_wide(uint32_t point) {
    if (point == 0x85) return true;
    utf8proc_category_t kind = category(point);
    return kind >= UTF8PROC_CATEGORY_ZS && kind <= UTF8PROC_CATEGORY_ZP;
}

uint32_t utf8_upper_wide(uint32_t point) {
    return (uint32_t)utf8proc_toupper((utf8proc_int32_t)point);
}

uint32_t utf8_lower_wide(uint32_t point) {
    return (uint32_t)utf8proc_tolower((utf8proc_int32_t)point);
}
