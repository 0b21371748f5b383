// SPDX-License-Identifier: MIT
// A draft makes some two hundred small texts out of others: the C library takes several times as long to find
// out that there is nothing to format in them.
#include "text/print.h"

#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

struct out {
    char *to;
    size_t room, n; // `n` goes on where there is no more room
};

static void put(struct out *out, const char *bytes, size_t size) {
    if (out->n < out->room) {
        size_t left = out->room - out->n;
        memcpy(out->to + out->n, bytes, size < left ? size : left);
    }
    out->n += size;
}

static void put_number(struct out *out, uint64_t number, bool below) {
    char digits[24], *at = digits + sizeof digits;
    do {
        *--at = (char)('0' + number % 10);
        number /= 10;
    } while (number);
    if (below) *--at = '-';
    put(out, at, (size_t)(digits + sizeof digits - at));
}

// Behind the form that begins at `c`, its value taken; NULL when it is another one.
static const char *put_form(struct out *out, const char *c, va_list *arguments) {
    if (c[1] == 's') {
        const char *text = va_arg(*arguments, const char *);
        if (!text) return NULL;
        put(out, text, strlen(text));
        return c + 2;
    }
    if (c[1] == 'd') {
        int number = va_arg(*arguments, int);
        put_number(out, number < 0 ? 0 - (uint64_t)number : (uint64_t)number, number < 0);
        return c + 2;
    }
    if (c[1] == 'c' || c[1] == '%') {
        char byte = c[1] == 'c' ? (char)va_arg(*arguments, int) : '%';
        put(out, &byte, 1);
        return c + 2;
    }
    if (!strncmp(c + 1, "zu", 2)) {
        put_number(out, va_arg(*arguments, size_t), false);
        return c + 3;
    }
    if (strncmp(c + 1, ".*s", 3) != 0) return NULL;
    int most = va_arg(*arguments, int);
    const char *text = va_arg(*arguments, const char *);
    if (most < 0 || !text) return NULL;
    put(out, text, strnlen(text, (size_t)most));
    return c + 4;
}

int text_print(char *to, size_t room, const char *format, va_list arguments) {
    struct out out = {to, room, 0};
    va_list own;
    va_copy(own, arguments);
    for (const char *c = format; c && *c;) {
        size_t plain = 0;
        while (c[plain] && c[plain] != '%') plain++;
        if (plain) put(&out, c, plain);
        c += plain;
        if (*c && !(c = put_form(&out, c, &own))) {
            va_end(own);
            return vsnprintf(to, room, format, arguments);
        }
    }
    va_end(own);
    if (room) to[out.n < room ? out.n : room - 1] = '\0';
    return out.n > INT32_MAX ? -1 : (int)out.n;
}
