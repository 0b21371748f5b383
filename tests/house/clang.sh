#!/bin/sh
# SPDX-License-Identifier: MIT
# The same sources under clang with the same warnings as errors, then clang-tidy with the checks of .clang-tidy.
set -eu
build=$(mktemp -d)
trap 'rm -rf "$build"' EXIT
CC=clang cmake -S "$1" -B "$build" -DASFOUND_SANITIZE=ON -DCMAKE_EXPORT_COMPILE_COMMANDS=ON > "$build.log" 2>&1 || { cat "$build.log"; exit 1; }
cmake --build "$build" -j2 > "$build.log" 2>&1 || { grep -E 'error|warning' "$build.log"; exit 1; }
rm -f "$build.log"
find "$1/src" -name '*.c' | sort | xargs -P2 -n8 clang-tidy -p "$build" --quiet
