// SPDX-License-Identifier: MIT
// strtod and printf follow the locale of the program that uses the library. Reading is exact by itself for
// what fits in 53 bits and a small power of ten; the rest asks strtod in whatever decimal point it wants at
// present.
#include "format/number.h"

#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "format/tree.h"
#include "text/buf.h"

enum { NUMBER_LONGEST = 400, POINT_LONGEST = 8 }; // longer numbers are not read: no measure needs them

static size_t digits_at(const char *text, size_t size, size_t at) {
    size_t from = at;
    while (at < size && text[at] >= '0' && text[at] <= '9') at++;
    return at - from;
}

size_t number_length(const char *text, size_t size) {
    size_t at = size && text[0] == '-';
    size_t whole = digits_at(text, size, at);
    if (!whole) return 0;
    at += text[at] == '0' ? 1 : whole;
    if (at < size && text[at] == '.') {
        size_t part = digits_at(text, size, at + 1);
        if (!part) return at;
        at += 1 + part;
    }
    if (at < size && (text[at] == 'e' || text[at] == 'E')) {
        size_t sign = at + 1 < size && (text[at + 1] == '+' || text[at + 1] == '-');
        size_t power = digits_at(text, size, at + 1 + sign);
        if (power) at += 1 + sign + power;
    }
    return at;
}

// Up to 2^53 and ten to the 22nd both operands are exact, so one operation rounds once: the correctly rounded
// value.
static bool read_exact(const char *text, double *value) {
    uint64_t whole = 0;
    int scale = 0;
    bool after = false;
    const char *at = text + (*text == '-');
    for (; *at && *at != 'e' && *at != 'E'; at++) {
        if (*at == '.') {
            after = true;
            continue;
        }
        if (whole > (UINT64_C(1) << 53) / 10 - 1) return false;
        whole = whole * 10 + (uint64_t)(*at - '0');
        scale -= after;
    }
    if (*at) {
        if (strlen(at) > 5) return false;
        int power = 0;
        bool less = at[1] == '-';
        for (at += 1 + (at[1] == '-' || at[1] == '+'); *at; at++) power = power * 10 + (*at - '0');
        scale += less ? -power : power;
    }
    if (scale < -22 || scale > 22) return false;
    double ten = 1;
    for (int i = scale < 0 ? -scale : scale; i > 0; i--) ten *= 10;
    *value = scale < 0 ? (double)whole / ten : (double)whole * ten;
    if (*text == '-') *value = -*value;
    return true;
}

// The decimal point of the moment, as printf writes it.
static size_t point_now(char *point) {
    char sample[POINT_LONGEST + 3];
    int size = snprintf(sample, sizeof sample, "%.1f", 0.5);
    if (size < 3 || (size_t)size >= sizeof sample) return 0;
    memcpy(point, sample + 1, (size_t)size - 2);
    return (size_t)size - 2;
}

static bool read_strtod(const char *text, double *value) {
    char point[POINT_LONGEST], copy[NUMBER_LONGEST + POINT_LONGEST];
    size_t wide = point_now(point), size = strlen(text);
    if (!wide || size >= NUMBER_LONGEST) return false;
    const char *dot = strchr(text, '.');
    size_t before = dot ? (size_t)(dot - text) : size;
    memcpy(copy, text, before);
    if (dot) {
        memcpy(copy + before, point, wide);
        memcpy(copy + before + wide, dot + 1, size - before);
    } else {
        copy[before] = '\0';
    }
    char *end = NULL;
    *value = strtod(copy, &end);
    return !*end && isfinite(*value);
}

bool node_number(const struct node *node, double *value) {
    if (node->kind != NODE_NUMBER && !(node->kind == NODE_TEXT && node->plain)) return false;
    if (!node->size || number_length(node->text, node->size) != node->size) return false;
    return read_exact(node->text, value) || read_strtod(node->text, value);
}

static bool reads_back(const char *text, double value) {
    double again = 0;
    return (read_exact(text, &again) || read_strtod(text, &again)) && again == value;
}

// Lays out digits d1d2d3… times ten to `power` (of d1) as people write numbers, with an exponent only far
// from one.
static void lay_out(struct buf *out, bool minus, const char *digits, size_t count, int power) {
    if (minus) buf_byte(out, '-');
    bool scientific = power < -6 || power > 20;
    int at = scientific ? 0 : power;
    if (at < 0) buf_text(out, "0.");
    for (int i = at + 1; i < 0; i++) buf_byte(out, '0');
    for (size_t i = 0; i < count; i++) {
        if (at >= 0 && i == (size_t)at + 1) buf_byte(out, '.');
        buf_byte(out, digits[i]);
    }
    for (int i = (int)count; i <= at; i++) buf_byte(out, '0');
    if (scientific) buf_format(out, "e%+d", power);
}

static const char *write_real(struct arena *arena, double value, int precision) {
    char shown[64], digits[32];
    size_t count = 0;
    snprintf(shown, sizeof shown, "%.*e", precision, fabs(value));
    const char *at = shown;
    // Whatever stands between the digits is the locale's decimal point.
    for (; *at && *at != 'e'; at++) {
        if (*at >= '0' && *at <= '9') digits[count++] = *at;
    }
    int power = *at ? (int)strtol(at + 1, NULL, 10) : 0;
    while (count > 1 && digits[count - 1] == '0') count--;
    struct buf out = buf_start(arena);
    lay_out(&out, value < 0, digits, count, power);
    return out.at;
}

struct node *node_real(struct arena *arena, double value) {
    struct node *node = arena_alloc(arena, sizeof *node);
    node->kind = isfinite(value) ? NODE_NUMBER : NODE_NULL;
    node->text = "null"; // JSON has no word for infinity or a value that is no number
    if (isfinite(value)) {
        int precision = 0;
        do node->text = write_real(arena, value, precision);
        while (!reads_back(node->text, value) && ++precision < 17);
    }
    node->size = strlen(node->text);
    return node;
}
