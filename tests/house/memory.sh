#!/bin/sh
# SPDX-License-Identifier: MIT
# Two promises about memory that do not depend on how busy the machine is: a draft takes at most 256 KiB of its arena at
# the 99th percentile, and 100,000 records need hardly more than 1,000.
set -u
source=$1
build=${ASFOUND_BUILD:-$source/build-release}
[ -x "$build/bin/asfound" ] || { echo "$build is not there: tests/run builds it"; exit 1; }
cd "$source" || exit 2
ASFOUND_BUILD=$build
export ASFOUND_BUILD
tests/bench/run drafts || exit 1 
