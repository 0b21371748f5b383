#!/bin/sh
# SPDX-License-Identifier: MIT
# One cell of a thousand million bytes: passed through unread, in little memory, while the row beside it is changed.
set -u
command=${ASFOUND_RELEASE:-$1/build-release/bin/asfound}
[ -x "$command" ] || { echo "$command is not there: tests/run builds it"; exit 1; }
exec python3 "$1/tests/house/shelf_huge.py" "$command"
