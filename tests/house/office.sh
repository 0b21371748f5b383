#!/bin/sh
# SPDX-License-Identifier: MIT
# Proposals through a spreadsheet and back.
set -u
command=${ASFOUND_RELEASE:-$1/build-release/bin/asfound}
[ -x "$command" ] || { echo "$command is not there: tests/run builds it"; exit 1; }
command -v soffice > /dev/null || { echo "soffice is not installed: .ci/setup tests installs it"; exit 1; }
exec python3 "$1/tests/house/office.py" "$command" "$1/demo/shelf.csv"
