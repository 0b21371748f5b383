# SPDX-License-Identifier: MIT
# The words of tests/listing/forbidden.h in what the command writes: all that the tests of the command and README.md
# expect of it, the demo in every form, and every text of the rules that reaches a listing. What a seller wrote stands in
# quotes, and in the record that was given.
import glob
import json
import re
import subprocess
import sys

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
    for key, names in [("questions", ["ask", "because"]), ("photos", ["shows", "because"]), ("cautions", ["text"]),
                       ("withheld", ["what", "why"]), ("findings", ["message"]), ("left_out", ["why"])]:
        for one in listing[key]:
            yield from [one[name] for name in names if name in one]


looked = 0
# Expected outputs: the blocks of cases that are not files, commands or comments.
for name in sorted(glob.glob(source + "/tests/cli/*.case")):
    block, given = None, ""
    for line in open(name, encoding="utf-8", errors="replace"):
        if line.startswith(("=== ", "--- ")):
            given = "" if line.startswith("=== ") else given
            block = line[4:].split()[0] if line.startswith("--- ") else None
        elif block in ("stdout", "stderr") and found(line) and found(line).lower() not in given.lower():
            fail("%s: '%s' in: %s" % (name, found(line), line))
        elif block:
            given += line if block in ("file", "run") else ""
            looked += 1
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
