# SPDX-License-Identifier: MIT
# Proposals that a person looked through in LibreOffice and saved again, as an .ods in between and as CSV straight: what
# is applied is what was proposed, and an id that the spreadsheet changed is refused, never written to another row.
import csv, os, subprocess, sys, tempfile

command, demo = sys.argv[1], sys.argv[2]
work = tempfile.mkdtemp()
os.chdir(work)
os.environ["HOME"] = work
bad = 0

def complain(text):
    global bad
    bad += 1
    if bad < 20: print(text)

# The demo's shelf with ids that a spreadsheet takes for numbers, days or formulas.
ODD = ["00123", "1E5", "3-4", "12345678901234567890", "1/2", "TRUE", "7.50", "1,234", " 42", "2024-03-01", "10%", "MAR1", "0x1F", "1:30"]
stock = list(csv.reader(open(demo, newline="", encoding="utf-8")))
for i, odd in enumerate(ODD): stock[1 + i][0] = odd
with open("shelf.csv", "w", newline="", encoding="utf-8") as f: csv.writer(f).writerows(stock)
made = subprocess.run([command, "retitle", "--quiet", "--today", "2025-11-25", "--older-than", "60d", "shelf.csv"], capture_output=True)
proposals = list(csv.DictReader(made.stdout.decode().splitlines(True)))
if len(proposals) < 30: complain(f"only {len(proposals)} proposals: {made.stderr[:300]!r}")
wanted = {p["id"]: p for p in proposals}
with open("proposals.csv", "w", newline="", encoding="utf-8") as f:
    w = csv.DictWriter(f, proposals[0].keys())
    w.writeheader()
    for p in proposals: w.writerow({**p, "approve": "yes"})

def convert(name, kind, way):
    extra = ["--infilter=CSV:44,34,76,1"] if name.endswith(".csv") else []
    kind = kind if kind != "csv" else "csv:Text - txt - csv (StarCalc):44,34,76,1"
    got = subprocess.run(["soffice", "--headless", "--norestore", *extra, "--convert-to", kind, "--outdir", way, name], capture_output=True, timeout=300)
    made = os.path.join(way, os.path.splitext(os.path.basename(name))[0] + "." + kind.split(":")[0])
    if not os.path.exists(made): complain(f"soffice made no {made}: {got.stderr[-300:]!r}")
    return made

ods = convert("proposals.csv", "ods", "ods")
ways = {"by .ods": convert(ods, "csv", "again"), "straight": convert("proposals.csv", "csv", "straight")}
before = {r[0]: r for r in stock[1:]}
for way, file in ways.items():
    ids = [r["id"] for r in csv.DictReader(open(file, newline="", encoding="utf-8"))]
    altered = [i for i in ids if i not in wanted]
    for name in ("n.csv", "ledger", "ledger-wal", "ledger-shm"):
        if os.path.exists(name): os.unlink(name)
    got = subprocess.run([command, "apply", "shelf.csv", file, "--write", "n.csv", "--store", "ledger"], capture_output=True)
    if not os.path.exists("n.csv"):
        complain(f"{way}: nothing written: {got.stdout[-300:]!r} {got.stderr[-300:]!r}")
        continue
    after = list(csv.reader(open("n.csv", newline="", encoding="utf-8")))
    title = stock[0].index("Item Title") if "Item Title" in stock[0] else 1
    applied = wrong = 0
    for old, new in zip(stock[1:], after[1:]):
        if old == new: continue
        applied += 1
        p = wanted.get(old[0])
        same = [c for i, c in enumerate(old) if i != title] == [c for i, c in enumerate(new) if i != title]
        if not p or new[title] != p["new_title"] or not same: wrong += 1
    if len(after) != len(stock): complain(f"{way}: {len(after)} rows of {len(stock)}")
    if wrong: complain(f"{way}: {wrong} rows were changed otherwise than proposed")
    if applied + len(altered) < len(proposals) - len(ODD): complain(f"{way}: only {applied} applied, {len(altered)} ids altered, of {len(proposals)}")
    for i in altered:
        if i.encode() not in got.stderr + got.stdout: complain(f"{way}: the altered id {i!r} is not told")
    print(f"{way}: {len(proposals)} proposals, {applied} applied, {wrong} wrong, {len(altered)} ids altered by the spreadsheet and refused")
sys.exit(1 if bad else 0)
