#!/bin/sh
# SPDX-License-Identifier: MIT
# What the README shows is run: every fenced block that begins with "$ " is a session. Its commands run in the source folder
# with the built program; what they print, messages included, has to be what the block shows, byte for byte.
# With a third argument "update" the document takes over what was printed, for outputs that changed on purpose.
set -u
source=$1 command=$2
cd "$source" || exit 2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/bin"
printf '#!/bin/sh\nexec "%s" "$@"\n' "$command" > "$work/bin/asfound"
chmod +x "$work/bin/asfound"
PATH=$work/bin:$PATH
unset ASFOUND_DATA
export PATH

# One file a session, named by the line of the document that it begins on.
cut_sessions() { # document, folder
  awk -v folder="$2" '
    /^```/ { if (open) { open = 0; close(file) } else { open = 1; first = 1 } next }
    open && first { session = /^\$ /; first = 0; file = sprintf("%s/%05d", folder, NR) }
    open && session { print > file }' "$1"
}

# The session as it comes out when its commands are run: each command, then what it printed.
play() { # session
  grep '^\$ ' "$1" | while IFS= read -r line; do
    printf '%s\n' "$line"
    sh -c "${line#\$ }" 2>&1 < /dev/null
  done
}

# The document with what was played in place of its sessions.
take_over() { # document, folder
  awk -v folder="$2" '
    /^```/ { open = !open; first = open; session = 0; print; next }
    first { first = 0
      if (/^\$ /) { session = 1; file = sprintf("%s/%05d", folder, NR); while ((getline line < file) > 0) print line } }
    !session { print }' "$1"
}

mkdir "$work/sessions" "$work/played"
cut_sessions README.md "$work/sessions"
fail=0 count=0
for session in "$work"/sessions/*; do
  [ -f "$session" ] || break
  count=$((count + 1))
  name=$(basename "$session")
  play "$session" > "$work/played/$name"
  cmp -s "$session" "$work/played/$name" && continue
  fail=1
  echo "README.md: the session at line $name prints something else:"
  diff -u "$session" "$work/played/$name" | sed 1,2d
done
[ "$count" -ge 6 ] || { echo "README.md: only $count sessions found"; fail=1; }

if [ "${3:-}" = update ]; then
  take_over README.md "$work/played" > "$work/new" && cp "$work/new" README.md
  exit 0
fi

# The check itself must be able to fail: a session with one word changed on purpose has to be seen.
printf '$ asfound version\nno such version\n' > "$work/probe"
play "$work/probe" > "$work/probe.played"
cmp -s "$work/probe" "$work/probe.played" && { echo "the check no longer sees a wrong session"; fail=1; }

[ "$fail" -eq 0 ] && echo "$count sessions print what README.md shows"
exit $fail
