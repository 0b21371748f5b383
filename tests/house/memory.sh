#!/bin/sh
# SPDX-License-Identifier: MIT
# Two promises about memory, which do not depend on how busy the machine is: at the 99th percentile a draft takes at most
# 256 KiB of its arena, and 100,000 records need hardly more than 1,000.
set -u
source=$1
ASFOUND_BUILD=${ASFOUND_BUILD:-$source/build-release}
export ASFOUND_BUILD
[ -x "$ASFOUND_BUILD/bin/asfound" ] || { echo "$ASFOUND_BUILD is not there: tests/run builds it"; exit 1; }
result=$("$source/tests/bench/run" drafts memory-of-lines) || { echo "$result"; exit 1; }
echo "$result"
echo "$result" | awk '
  $1 == "messages" { messages = $2 }
  $1 == "arena-p99" { arena = $2 }
  $1 == "memory-ratio-ndjson" { ratio = $2 }
  END {
    if (messages != 0) { print "the records of the bench are not clean"; bad = 1 }
    if (!(arena > 0 && arena <= 262144)) { print "a draft takes " arena " bytes, more than 262144"; bad = 1 }
    if (!(ratio > 0 && ratio <= 1.25)) { print "memory grows " ratio "-fold"; bad = 1 }
    exit bad
  }'
