#!/bin/sh
# SPDX-License-Identifier: MIT
# Disclosure sheets: digests taken again by another program, pages set on paper by another.
exec /usr/bin/python3 "$1/tests/house/sheets.py" "$2" "$1"
