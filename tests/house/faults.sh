#!/bin/sh
# SPDX-License-Identifier: MIT
# The command as people run it, with the n-th call for memory, write, read, open or close made to fail, one run for each n.
# A failure must end with status 5 and a message, and what was written before it must be a beginning of the full output
# that ends with a line. Interruptions and short transfers must change nothing.
set -u
source=$1
command=${ASFOUND_RELEASE:-$source/build-release/bin/asfound}
[ -x "$command" ] || { echo "$command is not there: tests/run builds it"; exit 1; }
cd "$source" || exit 2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
unset ASFOUND_DATA
fail=0
complain() { echo "$*"; fail=1; }

cc -std=c17 -O1 -Wall -Wextra -Werror -fPIC -shared -o "$work/preload.so" tests/fault/preload.c || exit 1
head -60 demo/stock.yaml > "$work/some.yaml"
"$command" draft --format json demo/stock.yaml > "$work/stock.json" 2> /dev/null
[ -s "$work/stock.json" ] || { echo "nothing is drafted"; exit 1; }

# The call, its descriptor and the way it fails are set for one run only.
run() { # call, file, how, at, last, arguments of the command
  FAULT_CALL=$1 FAULT_FILE=$2 FAULT_HOW=$3 FAULT_AT=$4 FAULT_LAST=$5 FAULT_COUNT=$work/count
  export FAULT_CALL FAULT_FILE FAULT_HOW FAULT_AT FAULT_LAST FAULT_COUNT
  shift 5
  LD_PRELOAD=$work/preload.so "$command" "$@" < "$work/input" > "$work/out" 2> "$work/messages"
  status=$?
}

undisturbed() { # call, file, arguments
  call=$1 file=$2
  shift 2
  run "$call" "$file" EIO 0 0 "$@"
  normal=$status
  calls=$(cat "$work/count")
  cp "$work/out" "$work/whole"
  cp "$work/messages" "$work/told"
  [ "$normal" -le 4 ] || complain "$call $*: status $normal undisturbed"
  [ "$calls" -gt 0 ] || complain "$call on $file never happens in: $*"
}

# The output so far is a beginning of the whole one and ends with a line.
clean_beginning() { # what was done
  size=$(wc -c < "$work/out")
  head -c "$size" "$work/whole" | cmp -s - "$work/out" || complain "$1: other output"
  [ "$size" -eq 0 ] || [ "$(tail -c 1 "$work/out" | od -An -tx1 | tr -d ' ')" = 0a ] || complain "$1: half a line"
}

must_fail() { # what was done, pattern of the message
  [ "$status" -eq 5 ] || complain "$1: status $status, $(head -c 200 "$work/messages")"
  grep -Eq "$2" "$work/messages" || complain "$1: says '$(head -c 200 "$work/messages")'"
}

must_be_whole() { # what was done
  [ "$status" -eq "$normal" ] || complain "$1: status $status, not $normal"
  cmp -s "$work/out" "$work/whole" || complain "$1: other output"
  cmp -s "$work/messages" "$work/told" || complain "$1: other messages"
}

# --- memory: all calls of libyaml, PCRE2 and the C library. Of thousands, each one at both ends and some between. ---
# The C library sorts in place when it gets no memory, so a few failures go unnoticed: then nothing may be different.
: > "$work/input"
unnoticed=0 tried=0
no_memory='^asfound: error: memory ran out \[memory\]$'
memory() { # how many at each end, last, arguments
  ends=$1 last=$2
  shift 2
  html=no
  case "$*" in *html*) html=yes ;; esac
  undisturbed alloc files "$@"
  n=1
  while [ "$n" -le "$calls" ]; do
    to=$n
    [ "$last" = once ] || to=0
    run alloc files EIO "$n" "$to" "$@"
    tried=$((tried + 1))
    if [ "$status" -eq "$normal" ] && [ "$status" -ne 5 ]; then
      unnoticed=$((unnoticed + 1))
      must_be_whole "memory $last at $n of $calls in: $*"
    else
      must_fail "memory $last at $n of $calls in: $*" "$no_memory|Cannot allocate memory \\[file.open\\]$"
      # A folder of rules that could not be opened is told with all that follows from it; anything else is one line.
      if ! grep -q '\[file.open\]$' "$work/messages"; then
        [ "$(wc -l < "$work/messages")" -eq 1 ] || complain "memory at $n in: $*: $(head -c 300 "$work/messages")"
        # A page that was begun is ended, whatever came between.
        [ "$html" = yes ] || clean_beginning "memory $last at $n of $calls in: $*"
      fi
    fi
    if [ "$n" -lt "$ends" ] || [ $((calls - n)) -le "$ends" ]; then n=$((n + 1))
    else
      n=$((n + 1 + n / 12))
      [ $((calls - n)) -ge "$ends" ] || n=$((calls - ends))
    fi
  done
}
memory 150 on draft --format json "$work/some.yaml"
memory 60 once draft --format json "$work/some.yaml"
memory 60 on draft demo/stock.csv
memory 30 once draft --format html demo/one.json
memory 30 on explain "$work/some.yaml"
memory 30 on rules show chip
memory 30 once help draft
[ "$unnoticed" -lt $((tried / 10)) ] || complain "$unnoticed of $tried calls for memory may fail unnoticed"

# --- writes to standard output ---
outputs() { # arguments
  undisturbed write 1 "$@"
  n=1
  while [ "$n" -le "$calls" ]; do
    for how in ENOSPC EIO; do
      run write 1 $how "$n" 0 "$@"
      must_fail "write $how at $n of $calls in: $*" '^asfound: error: standard output: (No space left on device|Input/output error) \[file.write\]$'
      size=$(wc -c < "$work/out")
      head -c "$size" "$work/whole" | cmp -s - "$work/out" || complain "write $how at $n in: $*: other output"
    done
    run write 1 EINTR "$n" "$n" "$@"
    must_be_whole "write EINTR at $n of $calls in: $*"
    run write 1 short "$n" 0 "$@"
    must_be_whole "write short from $n of $calls in: $*"
    n=$((n + 1))
  done
  run close 1 EIO 1 1 "$@"
  must_fail "close in: $*" '^asfound: error: standard output: Input/output error \[file.write\]$'
}
outputs draft --format json demo/stock.yaml
outputs draft demo/stock.csv
outputs draft --format html demo/one.json
outputs draft --format yaml demo/one.json
outputs explain demo/one.json
outputs rules check
outputs rules show chip
outputs rules describe
outputs help draft
outputs version

# --- writes to standard error: nobody can be told, so the status alone does ---
undisturbed write 2 draft --format json demo/broken.yaml
n=1
while [ "$n" -le "$calls" ]; do
  run write 2 ENOSPC "$n" 0 draft --format json demo/broken.yaml
  [ "$status" -ge 4 ] && [ "$status" -le 5 ] || complain "messages lost at $n: status $status"
  cmp -s "$work/out" "$work/whole" || complain "messages lost at $n: other output"
  run write 2 EINTR "$n" "$n" draft --format json demo/broken.yaml
  must_be_whole "message EINTR at $n"
  run write 2 short "$n" 0 draft --format json demo/broken.yaml
  must_be_whole "message short from $n"
  n=$((n + 1))
done

# --- reads: of rules and records, and of standard input ---
inputs() { # descriptor, arguments
  about=$1
  shift
  undisturbed read "$about" "$@"
  n=1
  while [ "$n" -le "$calls" ]; do
    run read "$about" EIO "$n" "$n" "$@"
    must_fail "read EIO at $n of $calls in: $*" 'error: .*(Input/output error|reading failed in line [0-9]+) \[file.read\]$'
    [ "$about" = 0 ] && clean_beginning "read EIO at $n of $calls in: $*"
    run read "$about" EINTR "$n" "$n" "$@"
    must_be_whole "read EINTR at $n of $calls in: $*"
    n=$((n + 1))
  done
  run read "$about" short 1 0 "$@"
  must_be_whole "short reads in: $*"
}
inputs files draft --format json "$work/some.yaml"
cp demo/stock.yaml "$work/input"
inputs 0 draft --format json --from yaml -
cp demo/stock.csv "$work/input"
inputs 0 draft --format json --from csv -
cp "$work/stock.json" "$work/input"

# --- files that cannot be opened, as when too many are open ---
undisturbed open files draft --format json "$work/some.yaml"
n=1
while [ "$n" -le "$calls" ]; do
  run open files EMFILE "$n" 0 draft --format json "$work/some.yaml"
  must_fail "open at $n of $calls" 'error: .*Too many open files \[file.(open|read)\]$'
  n=$((n + 1))
done

[ "$fail" -eq 0 ] && echo "$tried calls for memory and every write, read and open failed in turn; $unnoticed went unnoticed"
exit $fail
