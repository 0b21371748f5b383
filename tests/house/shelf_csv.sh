#!/bin/sh
# SPDX-License-Identifier: MIT
# Stock files of many shapes, against Python's csv.
set -u
command=${ASFOUND_RELEASE:-$1/build-release/bin/asfound}
[ -x "$command" ] || { echo "$command is not there: tests/run builds it"; exit 1; }
exec python3 "$1/tests/house/shelf_csv.py" "$command"
