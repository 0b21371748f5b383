// SPDX-License-Identifier: MIT
// The two compiler attributes in use, each behind one macro.
#ifndef TEXT_ATTRIBUTES_H
#define TEXT_ATTRIBUTES_H

#if defined(__GNUC__)
#define TEXT_PRINTF(text, first) __attribute__((format(printf, text, first)))
#define TEXT_NODISCARD __attribute__((warn_unused_result))
#else
#define TEXT_PRINTF(text, first)
#define TEXT_NODISCARD
#endif

#endif
