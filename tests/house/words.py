# SPDX-License-Identifier: MIT
# The words of tests/listing/forbidden.h in what the command writes: in all that it writes while the tests of the command
# run, the sessions of README.md, the demo in every form, and every text of the rules that reaches a listing. What a seller
# wrote is not looked at: it stands in quotes, in the fields of a record, and in the columns of old titles.
import csv
import glob
import io
import json
import os
import re
import subprocess
import sys
import tempfile

import yaml_lines

source, command = sys.argv[1], sys.argv[2]


def fail(why):
    sys.exit("words: " + why)


header = open(source + "/tests/listing/forbidden.h", encoding="utf-8").read()
table = re.search(r"FORBIDDEN\[\] = \{(.*?)\};", header, re.S).group(1)
WORDS = re.findall(r'"([^"]+)"', table)
LOOK = re.compile(r"(?<![^\W\d_])(?<!match )(?:%s)(?![^\W\d_])" % "|".join(map(re.escape, WORDS)), re.I)
QUOTED = re.compile(r"(?<!\w)'[^'\n]*'(?!\w)|\"[^\"\n]*\"|\u201c[^\u201d\n]*\u201d")


def found(text):
    hit = LOOK.search(QUOTED.sub("", text))
    return hit.group(0) if hit else None


if len(WORDS) < 40 or not found("it is food safe") or found("kept out: 'rare', \"mint condition\"; a match safe"):
    fail("the look-out does not work")


def run(*arguments):
    done = subprocess.run([command, *arguments], capture_output=True, check=False)
    return done.stdout.decode() + done.stderr.decode()


def look(where, text):
    for line in text.splitlines():
        if found(line):
            fail("%s: '%s' in: %s" % (where, found(line), line))
    return len(text)


def draft_texts(listing):
    yield from [listing["title"], listing["description"], listing["disclosure"]]
    yield from listing["alternates"] + listing["condition"]["reasons"] + listing["score"]["less"]
    yield from (listing.get("given") or {}).get("less", [])
    for key, names in [("questions", ["ask", "because"]), ("photos", ["shows", "because"]), ("cautions", ["text"]),
                       ("withheld", ["what", "why"]), ("findings", ["message"]), ("left_out", ["why"])]:
        for one in listing[key]:
            yield from [one[name] for name in names if name in one]


# What a run of the command wrote: by the fields of a listing or of a row of proposals where it has such, else by line.
OURS = ("new_title", "adds", "why", "attention")
RECORDS = ("read", "apply", "undo", "history")  # records and stock are the seller's words


NAME = re.compile(r"[A-Z][\w'-]*(?: [A-Z][\w'-]*)+")


# A name with capitals of its own in an old title stays a name; where every word has one, none is a name.
def without_names(row, text):
    old = row["old_title"] or ""
    for name in NAME.findall(old) if re.search(r"(?<!\S)[a-z]", old) else []:
        words = name.split(" ")
        for pair in zip(words, words[1:]):
            text = text.replace(" ".join(pair), "")
    return text


def look_at_rows(where, text):
    rows = csv.DictReader(io.StringIO(text))
    return sum(look(where, without_names(row, row[name] or "")) for row in rows for name in OURS)


# A case whose reader goes away leaves the last line unfinished: only whole lines are listings. A line ends at its line feed
# alone, since a listing's text may hold other characters that end lines elsewhere.
def look_at_json(where, text):
    return sum(look(where, one) for line in text.split("\n")[:-1] for one in draft_texts(json.loads(line)))


def look_at_output(where, words, text):
    if words[0] in RECORDS or words[0] == "rules":
        return 0
    if text.startswith("id,days_listed,"):
        return look_at_rows(where, text)
    if text.startswith('{"id":') and words[0] == "draft":
        return look_at_json(where, text)
    given = words[words.index("--title") + 1] if "--title" in words[:-1] else None
    return look(where, "\n".join(line for line in text.splitlines() if line.strip() != given))


SHIM = """#!/bin/sh
at=$(mktemp -d "$WORDS_LOG/XXXXXX")
for word in "$@"; do printf '%s\\n' "$word" >> "$at/words"; done
{ "$WORDS_REAL" "$@" 2> "$at/stderr"; echo $? > "$at/status"; } | tee --output-error=exit "$at/stdout"
cat "$at/stderr" >&2
find . -name '*.csv' -newer "$at/words" -exec cp {} "$at" ';'
exit "$(cat "$at/status")"
"""


def look_at_cases(log):
    shim = log + "/asfound"
    with open(shim, "w", encoding="ascii") as file:
        file.write(SHIM)
    os.chmod(shim, 0o755)
    os.mkdir(log + "/runs")
    known = dict(os.environ, WORDS_LOG=log + "/runs", WORDS_REAL=os.path.abspath(command))
    cases = sorted(glob.glob(source + "/tests/cli/*.case"))
    # A case that wants the program itself, with its streams closed or its store on a link, fails here and not in its own test.
    subprocess.run(["sh", source + "/tests/cli/run_cases.sh", shim, *cases], env=known, capture_output=True, check=False)
    size, runs = 0, 0
    for at in sorted(glob.glob(log + "/runs/*")):
        if not os.path.exists(at + "/words"):
            continue
        words = open(at + "/words", encoding="utf-8", errors="replace").read().splitlines()
        runs += 1
        where = "asfound " + " ".join(words)
        for name in ["/stdout", "/stderr"]:
            size += look_at_output(where, words, open(at + name, encoding="utf-8", errors="replace").read())
        for name in glob.glob(at + "/*.csv"):
            text = open(name, encoding="utf-8", errors="replace").read()
            size += look_at_rows(where, text) if text.startswith("id,days_listed,") else 0
    if runs < 150 or size < 100000:
        fail("too little was run: %d runs, %d characters" % (runs, size))
    return size


with tempfile.TemporaryDirectory() as folder:
    looked = look_at_cases(folder)
readme = open(source + "/README.md", encoding="utf-8").read()
for session in re.findall(r"```\n\$ asfound (?!rules)(.*?)```", readme, re.S):
    looked += look("README.md", session)
# The demo.
stock = source + "/demo/stock.yaml"
listings = [json.loads(line) for line in run("draft", "--format", "json", stock).splitlines() if line.startswith("{")]
for listing in listings:
    for text in draft_texts(listing):
        looked += look(listing["id"], text)
for arguments in [("draft",), ("draft", "--format", "html"), ("draft", "--sheet", "--today", "2025-11-25"), ("explain",),
                  ("draft", "--sheet", "--today", "2025-11-25", "--format", "html")]:
    looked += look(" ".join(arguments), run(*arguments, stock))
# What rules print.
KEYS = {"text", "says", "ask", "shows", "instead", "print", "noun", "adjective", "words", "sought", "because"}
rules = 0
for name in sorted(glob.glob(source + "/rules/core/*/*.yaml")):
    for number, key, text in yaml_lines.texts(name):
        if key in KEYS:
            rules += 1
            hit = LOOK.search(text)
            if hit:
                fail("%s:%d: '%s' in %s: %s" % (name, number, hit.group(0), key, text))
if looked < 10000 or rules < 1000 or len(listings) < 20:
    fail("too little was looked at: %d, %d, %d" % (looked, rules, len(listings)))
# Nothing of the demo is kept from being listed, and few of its things ask for care that they do not need.
held = [one["id"] for one in listings if any(caution["stop"] for caution in one["cautions"])]
if held:
    fail("the demo is held back: %s" % held)
