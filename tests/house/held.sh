#!/bin/sh
# SPDX-License-Identifier: MIT
# Old titles with names, numbers and words that no rule knows, in capitals and in none: what of them a proposal keeps.
set -u
command=${ASFOUND_RELEASE:-$1/build-release/bin/asfound}
[ -x "$command" ] || { echo "$command is not there: tests/run builds it"; exit 1; }
exec python3 "$1/tests/house/held.py" "$command"
