#!/bin/sh
# SPDX-License-Identifier: MIT
# Runs command-line cases: run_cases.sh BINARY CASE...
#
# A case file holds one or more cases. A line "=== TITLE" begins one; what follows is prose, up to the first of these:
#   --- file NAME   a file that lies in the folder where the command runs
#   --- stdin       what it is given; nothing where this is absent
#   --- run         the command, for sh; the program is called asfound
#   --- stdout      all that it must write there; nothing where this is absent
#   --- stdout has  lines that must be among what it writes, in any order
#   --- stderr, --- stderr has    the same for messages
#   --- status N    the exit status; 0 where this is absent
# Empty lines at the end of a section do not belong to it.
# A failure names the file and line of its case and shows the difference.
set -u
[ $# -ge 2 ] || { echo "usage: run_cases.sh BINARY CASE..." >&2; exit 2; }
binary=$(cd "$(dirname "$1")" && pwd)/$(basename "$1")
[ -x "$binary" ] || { echo "$1 is no program" >&2; exit 2; }
shift
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
trap 'exit 130' INT TERM
mkdir "$work/bin"
ln -s "$binary" "$work/bin/asfound"
unset ASFOUND_DATA NO_COLOR
export LC_ALL=C PATH="$work/bin:$PATH"
ran=0 failed=0

# Cuts a case file into one folder a case.
cut_cases() {
  awk -v work="$2" '
    function begin(title) { folder = sprintf("%s/%03d", work, ++count); system("mkdir -p \"" folder "/files\"")
      print title > (folder "/title"); print FNR > (folder "/line"); print 0 > (folder "/status"); target = "" }
    function aim(path) { target = path; blank = 0; printf "" > target }
    /^=== / { begin(substr($0, 5)); next }
    !count { next }
    /^--- status [0-9]+$/ { close(folder "/status"); print $3 > (folder "/status"); target = ""; next }
    /^--- file / { aim(folder "/files/" substr($0, 10)); next }
    /^--- (stdin|run|stdout|stderr)$/ { aim(folder "/" $2); next }
    /^--- (stdout|stderr) has$/ { aim(folder "/" $2 ".has"); next }
    /^--- / { print FILENAME ":" FNR ": unknown section: " $0 > "/dev/stderr"; bad = 1; next }
    # Empty lines at the end of a section only part it from the next.
    target != "" && /^$/ { blank++; next }
    target != "" { for (; blank > 0; blank--) print "" > target; print > target }
    END { exit bad || !count }' "$1"
}

# compare NAME: what came on one stream against what was expected; prints the difference.
compare() {
  if [ -f "$1.has" ]; then
    while IFS= read -r line; do
      grep -qxF -e "$line" "got.$1" || { echo "$1 lacks: $line"; echo "$1 was:"; cat "got.$1"; }
    done < "$1.has"
  else
    [ -f "$1" ] || : > "$1"
    cmp -s "$1" "got.$1" || { echo "$1, expected and got:"; diff -u "$1" "got.$1" | sed '1,2d'; }
  fi
}

run_case() {
  [ -f run ] || { echo "the case runs nothing"; return; }
  [ -f stdin ] || : > stdin
  (cd files && sh ../run < ../stdin > ../got.stdout 2> ../got.stderr)
  got=$?
  [ "$got" -eq "$(cat status)" ] || echo "status: expected $(cat status), got $got"
  compare stdout
  compare stderr
}

for file in "$@"; do
  cases="$work/$(basename "$file")"
  if ! cut_cases "$file" "$cases"; then
    echo "$file: no cases that can be read"
    failed=$((failed + 1))
    continue
  fi
  for case in "$cases"/*; do
    ran=$((ran + 1))
    told=$(cd "$case" && run_case)
    [ -z "$told" ] && continue
    failed=$((failed + 1))
    printf '%s:%s: %s\n%s\n\n' "$file" "$(cat "$case/line")" "$(cat "$case/title")" "$told"
  done
done
echo "$ran cases, $failed failed"
[ "$failed" -eq 0 ] && [ "$ran" -gt 0 ]
