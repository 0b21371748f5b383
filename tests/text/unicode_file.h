// SPDX-License-Identifier: MIT
// Unicode's own test files, from Debian's package unicode-data. A missing file fails the test and says what
// to install.
#ifndef TEST_TEXT_UNICODE_FILE_H
#define TEST_TEXT_UNICODE_FILE_H

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "text/utf8.h"

#ifndef UNICODE_FOLDER
#define UNICODE_FOLDER "/usr/share/unicode"
#endif

static inline FILE *unicode_open(const char *name) {
    const char *folder = getenv("UNICODE_FOLDER");
    if (!folder) folder = UNICODE_FOLDER;
    char command[1280];
    int size = snprintf(command, sizeof command, "cat '%s/%s' 2>/dev/null || bzip2 -dc '%s/%s.bz2'", folder,
                        name, folder, name);
    ck_assert_int_lt(size, (int)sizeof command);
    return popen(command, "r");
}

static inline void unicode_require(size_t cases, const char *name) {
    ck_assert_msg(cases > 1000, "%s: %zu cases; is the package unicode-data installed?", name, cases);
}

// A field of hexadecimal code points up to `end`; returns the text after it.
static inline const char *unicode_field(const char *at, char end, char *to, size_t *size) {
    *size = 0;
    while (*at && *at != end) {
        char *next = NULL;
        unsigned long point = strtoul(at, &next, 16);
        if (next == at) {
            at++;
            continue;
        }
        *size += utf8_put((uint32_t)point, to + *size);
        at = next;
    }
    to[*size] = '\0';
    return *at ? at + 1 : at;
}

#endif
