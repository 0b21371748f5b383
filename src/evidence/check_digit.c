// SPDX-License-Identifier: MIT
// ISBN-10: weights 10 to 2, modulo 11. SBN: the same behind a zero. Bar codes: weights 3 and 1 from the
// right.
#include "evidence/check_digit.h"

#include <string.h>

#include "text/arena.h"

enum { MOST = 24 };

size_t check_digits(const char *text, char *to, size_t room) {
    size_t count = 0;
    for (; *text; text++) {
        if (*text == ' ' || *text == '-') continue;
        char c = *text == 'x' ? 'X' : *text;
        bool digit = c >= '0' && c <= '9';
        if ((!digit && c != 'X') || (count && to[count - 1] == 'X') || count == room) return 0;
        to[count++] = c;
    }
    return count;
}

char check_digit_bar_code(const char *digits, size_t count) {
    unsigned sum = 0;
    for (size_t i = 1; i < count; i++) sum += (unsigned)(digits[count - 1 - i] - '0') * (i % 2 ? 3 : 1);
    return (char)('0' + (10 - sum % 10) % 10);
}

char check_digit_book(const char *digits) {
    unsigned sum = 0;
    for (unsigned i = 0; i < 9; i++) sum += (unsigned)(digits[i] - '0') * (10 - i);
    unsigned check = (11 - sum % 11) % 11;
    return check == 10 ? 'X' : (char)('0' + check);
}

static const char *against(struct arena *arena, char has, char wants) {
    return has == wants ? NULL : arena_format(arena, "its check digit is %c and should be %c", has, wants);
}

static bool ends_in_x(const char *digits, size_t count) {
    return count && digits[count - 1] == 'X';
}

const char *check_book_number(struct arena *arena, const char *text) {
    char digits[MOST] = "";
    size_t count = check_digits(text, digits, MOST);
    if (count == 9) {
        char whole[10] = "0";
        memcpy(whole + 1, digits, 9);
        return against(arena, whole[9], check_digit_book(whole));
    }
    if (count == 10) return against(arena, digits[9], check_digit_book(digits));
    if (count != 13 || ends_in_x(digits, count))
        return count ? arena_format(arena, "it has %zu figures, and a book number has 10 or 13", count)
                     : "it is no number";
    if (strncmp(digits, "978", 3) != 0 && strncmp(digits, "979", 3) != 0)
        return "thirteen figures of a book begin with 978 or 979";
    return against(arena, digits[12], check_digit_bar_code(digits, count));
}

const char *check_bar_code(struct arena *arena, const char *text) {
    char digits[MOST] = "";
    size_t count = check_digits(text, digits, MOST);
    if (!count || ends_in_x(digits, count)) return "it is no number";
    if (count != 8 && (count < 12 || count > 14))
        return arena_format(arena, "it has %zu figures, and a bar code has 8, 12, 13 or 14", count);
    return against(arena, digits[count - 1], check_digit_bar_code(digits, count));
}
