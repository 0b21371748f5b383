// SPDX-License-Identifier: MIT
// vsnprintf() for the few forms that texts are made of, quicker.
#ifndef TEXT_PRINT_H
#define TEXT_PRINT_H

#include <stdarg.h>
#include <stddef.h>

#include "text/attributes.h"

// As vsnprintf(), which does what is not %s, %.*s, %d, %zu, %c or %%.
int text_print(char *to, size_t room, const char *format, va_list arguments) TEXT_PRINTF(3, 0);

#endif
