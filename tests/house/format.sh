#!/bin/sh
# SPDX-License-Identifier: MIT
# All C files stand as clang-format writes them.
cd "$1" || exit 2
find src tests -name '*.[ch]' | sort | xargs clang-format --dry-run --Werror
