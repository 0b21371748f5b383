#!/bin/sh
# SPDX-License-Identifier: MIT
# Pages of hostile records, read back by another parser.
exec python3 "$1/tests/house/pages.py" "$2"
