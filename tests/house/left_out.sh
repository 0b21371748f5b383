#!/bin/sh
# SPDX-License-Identifier: MIT
# A file of the core rules that is lost or broken is told (status 3 of the contract), and what the other files
# know is still read: no kind of fault is taken for granted by the readers of notes.
set -u
source=$1 command=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
data=$(dirname "$command")/../share/asfound
cp -RL "$data" "$work/data" || exit 2
# Every twelfth of the notes that the readers are tried on, and some in the words of a disclosure.
{
  sed -n 's/^\([^#|]*[^ #|]\) *|.*/\1/p' "$source"/tests/notes/phenomena/*.txt | sed -n '1~12p'
  echo 'Tin lamp. Base is dented, no burner, two screws are missing and the split shade was glued.'
  echo 'Brass lamp. The cap is missing.'
  echo 'Oak chest. Condition C (fair): It has splits on the lid. The knob is missing. The hinge is loose.'
} | sed 's/$/\n---/' > "$work/notes.txt"
fail=0
for file in "$work"/data/rules/core/flaws/*.yaml; do
  mv "$file" "$work/kept"
  ASFOUND_DATA=$work/data "$command" draft --from txt --format json --quiet "$work/notes.txt" > "$work/out" 2> "$work/messages"
  status=$?
  [ "$status" -eq 3 ] || { echo "without $(basename "$file"): status $status"; tail -3 "$work/messages"; fail=1; }
  [ "$(wc -l < "$work/out")" -ge 100 ] || { echo "without $(basename "$file"): $(wc -l < "$work/out") listings"; fail=1; }
  mv "$work/kept" "$file"
done
exit $fail
