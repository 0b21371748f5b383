#!/bin/sh
# SPDX-License-Identifier: MIT
# Reads every #include under src/ against the table of rooms: fails on an arrow the wrong way, on a third-party header
# outside its one room, on a file over 600 lines, on a list of
# words without an address of its own and on a table row that no folder answers.
set -u
cd "$1" || exit 2
fail=0
complain() { echo "$*"; fail=1; }

may_include() { # room -> rooms it may include besides itself
  case $1 in
  text) echo "" ;;
  format) echo "text" ;;
  rules) echo "text format" ;;
  say) echo "text" ;;
  words) echo "text format" ;;
  notes) echo "text format rules words say item" ;;
  tools) echo "text words" ;;
  item) echo "text format rules say" ;;
  evidence) echo "text format rules say item" ;;
  title | disclosure) echo "text format rules say item evidence" ;;
  shelf) echo "text format rules words say item notes evidence title listing" ;;
  listing) echo "text format rules words say item evidence title disclosure notes" ;;
  cli) echo "text" ;;
  *) echo "unknown" ;;
  esac
}

room_of_library() { # third-party header -> the one room that may name it
  case $1 in
  utf8proc.h | nettle/sha2.h) echo text ;;
  yaml.h) echo format ;;
  pcre2.h) echo rules ;;
  hunspell/hunspell.h) echo words ;;
  sqlite3.h) echo shelf ;;
  *) echo "" ;;
  esac
}

standard=" assert.h ctype.h dirent.h emmintrin.h errno.h fcntl.h float.h inttypes.h limits.h locale.h math.h pthread.h setjmp.h signal.h stdarg.h
 stdbool.h stddef.h stdint.h stdio.h stdlib.h string.h sys/mman.h sys/stat.h sys/types.h time.h unistd.h sanitizer/asan_interface.h "

check_file() {
  file=$1 room=$2
  sed -n 's/^[[:space:]]*#[[:space:]]*include[[:space:]]*\([<"][^>"]*\)[>"].*/\1/p' "$file" | while read -r include; do
    name=${include#?}
    case $include in
    \<*)
      case $standard in *" $name "*) continue ;; esac
      case "$(echo $standard)" in *"$name"*) continue ;; esac
      [ "$(room_of_library "$name")" = "$room" ] || echo "$file: <$name> is outside its room"
      ;;
    *)
      [ "$name" = asfound.h ] && { [ "$room" = cli ] || [ "$room" = . ] || echo "$file: only cli/ and the library include asfound.h"; continue; }
      target=${name%%/*}
      [ "$target" = "$room" ] || [ "$room" = . ] && { [ -f "src/$name" ] || echo "$file: no such header $name"; continue; }
      case " $(may_include "$room") " in *" $target "*) ;; *) echo "$file: $room/ may not include $name" ;; esac
      ;;
    esac
  done
}

for folder in src/*/; do
  room=$(basename "$folder")
  [ "$(may_include "$room")" = unknown ] && complain "src/$room has no row in the table of rooms"
done
found=$(find src -name '*.[ch]' | sort | while read -r file; do
  room=$(dirname "${file#src/}")
  check_file "$file" "$room"
done)
[ -n "$found" ] && complain "$found"
# Process-wide state: what the compiler put into a writable section. Tables of pointers are const and relocated read-only.
archive=$1/build-release/libasfound_core.a
if [ -f "$archive" ]; then
  state=$(objdump -t "$archive" | awk '$2 == "l" && ($4 == ".data" || $4 == ".bss") && $3 == "O" || $3 == ".bss" || $3 == ".data" {print $NF}' |
    grep -vE '^\.(data|bss)$')
  [ -n "$state" ] && complain "state outside any handle: $state"
else
  complain "no release build to look for process-wide state in: $archive"
fi
long=$(find src tests -name '*.[ch]' | xargs wc -l | awk '$2 != "total" && $1 > 600 {print $2 ": " $1 " lines"}')
[ -n "$long" ] && complain "files over 600 lines: $long"
bare=$(find src rules dict tests demo -type f ! -name '*.json' ! -name '*.ndjson' ! -name '*.csv' | xargs grep -L 'SPDX-License-Identifier: MIT')
[ -n "$bare" ] && complain "without a licence line: $bare"
# The check itself must be able to fail: a wrong arrow made on purpose has to be seen.
probe=$(mktemp -d)
printf '#include "listing/listing.h"\n#include <yaml.h>\n' > "$probe/wrong.c"
wrong=$(check_file "$probe/wrong.c" text | wc -l)
rm -rf "$probe"
[ "$wrong" -eq 2 ] || complain "the check no longer sees a wrong include"
[ "$fail" -eq 0 ] && echo "all includes follow the table"
# What is learned of a list goes by its address, which one on the stack does not keep.
grep -nE '(token_among|token_longest|AMONG)\(.*\(const char \*const\[\]\)' src/notes/*.c && complain "a list of words that is not static"
exit $fail
