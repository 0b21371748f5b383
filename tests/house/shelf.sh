#!/bin/sh
# SPDX-License-Identifier: MIT
# apply and undo, killed before every single call that changes something on the disk, and with the disk full at each of
# them: the stock file is never touched, the new file is whole or not there, and the next run settles the ledger. Then
# folders that cannot be written to, two runs that want the same name, and ledgers that are none.
set -u
source=$1
command=${ASFOUND_RELEASE:-$source/build-release/bin/asfound}
[ -x "$command" ] || { echo "$command is not there: tests/run builds it"; exit 1; }
# In memory where there is such a folder: a disk is waited for at every call otherwise.
work=$(mktemp -d -p /dev/shm 2> /dev/null || mktemp -d)
trap 'chmod -R u+w "$work"; rm -rf "$work"' EXIT
cd "$work" || exit 2
fail=0
complain() { echo "$*"; fail=1; }
cc -std=gnu17 -O1 -Wall -Wextra -Werror -fPIC -shared -o kill.so "$source/tests/fault/kill.c" || exit 1

awk 'BEGIN { print "sku,title,note"; for (i = 1; i <= 9000; i++) printf "S%04d,\"Tin, number %d\",left as it was %d\r\n", i, i, i }' > stock.csv
awk 'BEGIN { print "id,old_title,new_title,approve"; for (i = 1; i <= 9000; i += 300)
  printf "S%04d,\"Tin, number %d\",\"Biscuit Tin %d\",yes\n", i, i, i }' > proposals.csv
awk 'BEGIN { print "sku,title,note"; for (i = 1; i <= 9000; i++) printf "S%04d,%s,left as it was %d\r\n", i,
  i % 300 == 1 ? "\"Biscuit Tin " i "\"" : "\"Tin, number " i "\"", i }' > wanted.csv
cp stock.csv before.csv
state() { "$command" history --store ledger --format json | tail -n 1 | sed 's/.*"state":"\([a-z]*\)".*/\1/'; }

"$command" apply stock.csv proposals.csv --write made.csv --store ledger > out 2>&1 || complain "apply: $(cat out)"
cmp -s made.csv wanted.csv || complain "apply: another file than wanted"
"$command" undo 1 made.csv --write back.csv --store ledger > out 2>&1 || complain "undo: $(cat out)"
cmp -s back.csv before.csv || complain "undo: another file than at first"
cp ledger ledger.undo
rm -f ledger ledger-* made.csv back.csv

# A stock file that was changed a moment ago is read twice, an older one once: both are tried.
sleep 2.1
each_call() { # what: apply or undo; how: kill or ENOSPC; "fresh": the stock was changed a moment ago
  what=$1 how=$2 fresh=${3:-} n=0 calls=1 seen_old=0 seen_new=0
  while [ "$n" -le "$calls" ]; do
    rm -f ledger ledger-* new.csv new.csv.part*
    if [ "$what" = apply ]; then old=stock.csv new=wanted.csv; set -- apply stock.csv proposals.csv
    else old=wanted.csv new=before.csv; cp ledger.undo ledger; set -- undo 1 wanted.csv; fi
    cp $old kept.csv
    [ -z "$fresh" ] || touch $old
    KILL_AT=$n KILL_HOW=$how KILL_COUNT=count LD_PRELOAD=./kill.so "$command" "$@" --write new.csv --store ledger > out 2>&1
    status=$?
    [ "$n" -gt 0 ] || { calls=$(cat count); [ "$calls" -gt 10 ] || complain "$what: only $calls calls"; }
    cmp -s kept.csv $old || complain "$what $how at $n: the stock file was touched"
    if [ -e new.csv ]; then
      seen_new=$((seen_new + 1))
      cmp -s new.csv $new || complain "$what $how at $n: the new file is neither old nor new"
    else
      seen_old=$((seen_old + 1))
      [ "$status" -ne 0 ] || complain "$what $how at $n: says that all is well, and there is no file"
      [ "$how" = kill ] || [ "$status" -eq 5 ] || complain "$what $how at $n: status $status: $(cat out)"
    fi
    [ "$how" = kill ] || ! ls new.csv.part* > /dev/null 2>&1 || complain "$what $how at $n: leaves a piece"
    # The next run settles what this one left.
    "$command" undo 999 wanted.csv --store ledger > out 2>&1
    if [ -e ledger ] && "$command" history --store ledger > entries 2> told; then
      ! grep -q ' intended:' entries || complain "$what $how at $n: an entry is still open"
      if [ -e new.csv ]; then [ "$(state)" = done ] || complain "$what $how at $n: the file is there and the ledger says $(state)"; fi
      if [ ! -e new.csv ] && [ "$what" = apply ] && [ -s entries ]; then
        [ "$(state)" = abandoned ] || complain "$what $how at $n: there is no file and the ledger says $(state)"
      fi
    elif [ -e new.csv ]; then complain "$what $how at $n: no ledger beside a new file: $(cat told)"; fi
    n=$((n + 1))
  done
  [ "$seen_old" -gt 0 ] && [ "$seen_new" -gt 0 ] || complain "$what $how: $seen_old times no file, $seen_new times one"
  echo "$what, $how at each of $calls calls${fresh:+ of a $fresh stock}: $seen_old times no new file, $seen_new times the whole one"
}
each_call apply kill
each_call apply ENOSPC
each_call undo kill
each_call undo ENOSPC
each_call apply kill fresh
rm -f ledger ledger-* new.csv new.csv.part*

expect() { # what, status, part of the message, arguments
  what=$1 wanted=$2 part=$3
  shift 3
  "$command" "$@" > out 2>&1
  got=$?
  [ "$got" -eq "$wanted" ] || complain "$what: status $got, not $wanted: $(cat out)"
  grep -qF "$part" out || complain "$what: says $(cat out)"
  cmp -s stock.csv before.csv || complain "$what: the stock file was touched"
}
if [ "$(id -u)" -ne 0 ]; then
  mkdir closed && chmod a-w closed
  expect "a folder that is read-only" 5 "cannot be made" apply stock.csv proposals.csv --write closed/new.csv --store ledger
else
  expect "a folder that takes no files" 5 "cannot be made" apply stock.csv proposals.csv --write /proc/new.csv --store ledger
fi
expect "the stock itself" 5 "never written to" apply stock.csv proposals.csv --write stock.csv --store ledger
ln stock.csv twin.csv
expect "the stock by another name" 5 "never written to" apply stock.csv proposals.csv --write twin.csv --store ledger
echo kept > there.csv
expect "a file that is there" 5 "none is replaced" apply stock.csv proposals.csv --write there.csv --store ledger
[ "$(cat there.csv)" = kept ] || complain "a file that was there is lost"
expect "a folder that is not there" 5 "cannot be" apply stock.csv proposals.csv --write nowhere/new.csv --store ledger
rm -f ledger ledger-*

# An id that turns out to stand again, at the very end and in another form, after its title was written.
{ cat stock.csv; printf '"S0301",again,x\r\n'; } > again.csv
{ head -n 301 wanted.csv; sed -n 302p stock.csv; tail -n +303 wanted.csv; printf '"S0301",again,x\r\n'; } > again.wanted
sleep 2.1
expect "an id that stands again" 4 "29 titles changed" apply again.csv proposals.csv --write again.new --store ledger
grep -q "'S0301' is left as it is: the id stands more than once" out || complain "an id that stands again: $(cat out)"
cmp -s again.new again.wanted || complain "an id that stands again: $(diff again.new again.wanted | head -n 5)"
# Now there is a ledger, which takes changes while the stock is read: the one taken back is not in it.
expect "the same, with a ledger" 4 "29 titles changed in again.2; entry 2" apply again.csv proposals.csv --write again.2 --store ledger
cmp -s again.2 again.wanted || complain "the same, with a ledger: $(diff again.2 again.wanted | head -n 5)"
"$command" history --store ledger | grep -c 'done: 29 titles' | grep -qx 2 || complain "the ledger: $("$command" history --store ledger)"
expect "an id that was taken back" 2 "nothing was ever changed of 'S0301'" history S0301 --store ledger
expect "and one that was not" 0 "Biscuit Tin 601" history S0601 --store ledger
# Another holds the ledger for a while: it is waited for, and nothing is lost.
python3 - <<'P' &
import sqlite3, time
db = sqlite3.connect("ledger", isolation_level=None)
db.execute("BEGIN IMMEDIATE")
open("held", "w").close()
time.sleep(1.5)
db.execute("ROLLBACK")
P
while [ ! -e held ]; do sleep 0.05; done
expect "a ledger that another holds" 0 "30 titles changed in waited.csv; entry 3" apply stock.csv proposals.csv --write waited.csv --store ledger
cmp -s waited.csv wanted.csv || complain "a ledger that another holds: another file than wanted"
wait
rm -f ledger ledger-*

# The stock is changed while the new file is written, by one byte of a row that was read: no mixture of the two.
awk 'BEGIN { print "sku,title,note"; for (i = 1; i <= 90000; i++) printf "S%05d,Tin number %d,left as it was %d and as it came\n", i, i, i }' > long.csv
printf 'id,old_title,new_title,approve\nS00007,Tin number 7,Biscuit Tin,yes\nS89999,Tin number 89999,Biscuit Tin,yes\n' > long.proposals
# Read once: a byte that was read already. Read twice: one that was read the first time, and not yet the second time.
for age in settled fresh; do
  cp long.csv while.csv
  [ $age = fresh ] && place=$(($(wc -c < long.csv) - 9)) || { place=40; sleep 2.1; }
  KILL_AT=1 KILL_HOW=change KILL_CHANGE=while.csv KILL_PLACE=$place LD_PRELOAD=./kill.so \
    "$command" apply while.csv long.proposals --write while.new --store ledger > out 2>&1
  status=$?
  cmp -s long.csv while.csv && complain "$age: the stock was not changed: this tries nothing"
  [ "$status" -eq 5 ] && grep -q "was changed while it was read" out || complain "$age, changed while read: status $status: $(cat out)"
  ls while.new* > /dev/null 2>&1 && complain "$age, changed while read: a file is left"
done
expect "the same, left alone" 0 "2 titles changed" apply long.csv long.proposals --write long.new --store ledger
[ "$(diff long.csv long.new | grep -c '^>')" -eq 2 ] || complain "a long file: $(diff long.csv long.new | head -n 5)"
rm -f ledger ledger-*

# Permissions are kept.
chmod 640 stock.csv
expect "permissions" 0 "30 titles changed" apply stock.csv proposals.csv --write mode.csv --store ledger
[ "$(stat -c %a mode.csv)" = 640 ] || complain "permissions are $(stat -c %a mode.csv)"

# Two at once: each with its own file; then both with the same one.
rm -f ledger ledger-*
for i in 1 2 3 4; do "$command" apply stock.csv proposals.csv --write "own$i.csv" --store ledger > "out$i" 2>&1 & done
wait
for i in 1 2 3 4; do cmp -s "own$i.csv" wanted.csv || complain "two at once: own$i.csv: $(cat "out$i")"; done
[ "$("$command" history --store ledger | grep -c ' done: 30 titles')" -eq 4 ] || complain "two at once: $("$command" history --store ledger)"
for i in 1 2 3 4; do "$command" apply stock.csv proposals.csv --write one.csv --store ledger > "out$i" 2>&1 & done
wait
cmp -s one.csv wanted.csv || complain "one name for four: the file is not whole"
[ "$(cat out1 out2 out3 out4 | grep -c 'titles changed in one.csv')" -eq 1 ] || complain "one name for four: $(cat out1 out2 out3 out4)"
[ "$("$command" history --store ledger | grep -c 'intended')" -eq 0 ] || complain "one name for four: an entry is open"

# A ledger of the first form: its entries are still told and undone, and new ones are added.
python3 - <<'P'
import sqlite3
db = sqlite3.connect("first.ledger")
db.executescript("""PRAGMA application_id=1095976524; PRAGMA user_version=1; PRAGMA journal_mode=WAL;
CREATE TABLE entry(number INTEGER PRIMARY KEY AUTOINCREMENT, kind TEXT NOT NULL, state TEXT NOT NULL, at TEXT NOT NULL, stock TEXT NOT NULL,
 output TEXT NOT NULL, old_hash TEXT NOT NULL, new_hash TEXT NOT NULL, rules TEXT NOT NULL, undoes INTEGER);
CREATE TABLE change(entry INTEGER NOT NULL REFERENCES entry(number), id TEXT NOT NULL, old_title TEXT NOT NULL, new_title TEXT NOT NULL,
 old_bytes BLOB NOT NULL, new_bytes BLOB NOT NULL, old_earned TEXT, new_earned TEXT, best TEXT, PRIMARY KEY(entry, id)) WITHOUT ROWID;
CREATE INDEX change_id ON change(id);
CREATE TABLE held(entry INTEGER NOT NULL REFERENCES entry(number), id TEXT NOT NULL, title TEXT NOT NULL, PRIMARY KEY(entry, id)) WITHOUT ROWID;
INSERT INTO entry VALUES(1,'apply','done','2025-11-25','stock.csv','made.csv','','','0.1.0',NULL);""")
db.executemany("INSERT INTO change VALUES(1,?,?,?,?,?,'','','')", [("S%04d" % i, "Tin, number %d" % i, "Biscuit Tin %d" % i,
  b'"Tin, number %d"' % i, b'"Biscuit Tin %d"' % i) for i in range(1, 9001, 300)])
db.commit()
P
expect "history of the first form" 0 "entry 1  2025-11-25  apply  done: 30 titles" history --store first.ledger
expect "history of an id, first form" 0 "Biscuit Tin 301" history S0301 --store first.ledger
[ "$(wc -l < out)" -eq 3 ] || complain "history of an id, first form: $(cat out)"
expect "undo of the first form" 0 "30 titles changed in first.csv; entry 2" undo 1 wanted.csv --write first.csv --store first.ledger
cmp -s first.csv before.csv || complain "undo of the first form: another file than at first"
expect "history of an id, second form" 0 "entry 2" history S0301 --store first.ledger
[ "$(wc -l < out)" -eq 6 ] || complain "history of an id, second form: $(cat out)"

# Ledgers that are none.
echo "this is no database, however long the line is that it begins with, and it must stay as it is" > note
cp note note.before
expect "a text as ledger" 5 "this file is no ledger [file." apply stock.csv proposals.csv --write n1.csv --store note
cmp -s note note.before || complain "a text taken for a ledger was changed"
[ ! -e n1.csv ] || complain "a new file without a ledger"
python3 - <<'P'
import sqlite3
for name, lines in (("newer", ("PRAGMA application_id=1095976524", "CREATE TABLE entry(a)", "PRAGMA user_version=99")), ("other", ("CREATE TABLE stamps(a)",))):
    db = sqlite3.connect(name)
    for line in lines: db.execute(line)
    db.commit()
P
expect "a newer ledger" 5 "use that version, or name another ledger with --store" apply stock.csv proposals.csv --write n2.csv --store newer
expect "another program's file" 5 "this is another program's file, and no ledger" apply stock.csv proposals.csv --write n3.csv --store other
[ ! -e n2.csv ] && [ ! -e n3.csv ] || complain "a new file without a ledger"
head -c 3000 ledger > torn && head -c 20000 /dev/zero >> torn
expect "a broken ledger" 5 "keep it for whoever can read it, and name a new one with --store" apply stock.csv proposals.csv --write n4.csv --store torn
[ ! -e n4.csv ] || complain "a new file beside a broken ledger"
# Another that does not let go of it.
rm -f ledger ledger-* held
"$command" apply stock.csv proposals.csv --write first.new --store ledger > out 2>&1 || complain "a first entry: $(cat out)"
python3 - <<'P' &
import os, sqlite3, time
db = sqlite3.connect("ledger", isolation_level=None)
db.execute("BEGIN IMMEDIATE")
open("held", "w").close()
while not os.path.exists("let-go"): time.sleep(0.1)
P
while [ ! -e held ]; do sleep 0.05; done
expect "a ledger that stays held" 5 "another process holds the ledger" apply stock.csv proposals.csv --write locked.csv --store ledger
grep -qF "wait until it has ended, then try again" out || complain "a ledger that stays held: no hint: $(cat out)"
[ ! -e locked.csv ] || complain "a new file without an entry in the ledger"
: > let-go
wait

[ "$fail" -eq 0 ] && echo "no run left anything but the old file or the new"
exit $fail
