# SPDX-License-Identifier: MIT
# Odd CSV files: where nothing is approved the new file is the old one byte for byte; where one title is, Python's csv
# reads the same rows but for that title. Then titles with words that nobody knows: none is lost in a proposal.
import csv, io, os, random, re, subprocess, sys, tempfile

command, rules = sys.argv[1], random.Random(20)
work = tempfile.mkdtemp(dir="/dev/shm" if os.path.isdir("/dev/shm") else None)
os.chdir(work)
bad = 0

def complain(text):
    global bad
    bad += 1
    if bad < 20: print(text)

WORDS = ["tin", "lamp", "12\" saw", "caf\u00e9 sign", "a, b", "x;y", "tab\there", "say \"so\"", "", "two\nlines", "cr\rhere", " edge ", "| bar", "7", "0012", "\u20ac 5"]

def cell(text, d, end):
    needed = any(c in text for c in (d, "\n", "\r")) or text.startswith('"')
    if needed or rules.random() < 0.3: return '"' + text.replace('"', '""') + '"'
    return text

def make():
    d = rules.choice(",,,;\t|")
    end = rules.choice(["\n", "\r\n", "\r\n", "\r"])
    encoding = rules.choice(["utf-8", "utf-8", "utf-8-sig", "cp1252"])
    width = rules.randint(3, 6)
    names = ["sku", "title"] + ["extra%d" % i for i in range(width - 2)]
    order = list(range(width))
    rules.shuffle(order)
    rows = [names] + [["K%03d" % r, "Old Thing %d" % r] + [rules.choice(WORDS) for _ in names[2:]] for r in range(rules.randint(1, 12))]
    lines = [d.join(cell(row[k], d, end) for k in order) for row in rows]
    for i in range(len(lines) - 1, 0, -1):
        if rules.random() < 0.05: lines.insert(i, "")
        if rules.random() < 0.05: lines.insert(i, "ragged" + d + "row")
        if rules.random() < 0.05: lines[i] += d + "one more"
    text = end.join(lines) + (end if rules.random() < 0.7 else "")
    return text.encode(encoding), d, encoding, order

def rows_of(raw, d, encoding):
    return list(csv.reader(io.StringIO(raw.decode(encoding), newline=""), delimiter=d))

def run(raw, approve, id):
    with open("p.csv", "w", newline="") as f:
        w = csv.writer(f)
        w.writerow(["id", "old_title", "new_title", "approve"])
        w.writerow([id, "Old Thing %d" % int(id[1:]), 'New 5" Thing, better', approve])
    for name in ("n.csv", "ledger", "ledger-wal", "ledger-shm"):
        if os.path.exists(name): os.unlink(name)
    got = subprocess.run([command, "apply", "s.csv", "p.csv", "--write", "n.csv", "--store", "ledger"], capture_output=True)
    return open("n.csv", "rb").read() if os.path.exists("n.csv") else None, got

count, changed = 2000, 0
for n in range(count):
    raw, d, encoding, order = make()
    open("s.csv", "wb").write(raw)
    title = order.index(1)
    made, got = run(raw, "held", "K000")
    if made != raw: complain(f"file {n} ({d!r}, {encoding}): not byte for byte: {got.stderr[:300]!r} {raw[:200]!r}")
    if n % 4: continue
    made, got = run(raw, "yes", "K000")
    before = rows_of(raw, d, encoding)
    whole = any("K000" in row and "Old Thing 0" in row and len(row) == len(before[0]) for row in before[1:])
    if made is None:
        if whole: complain(f"file {n}: refused: {got.stderr[:300]!r}")
        continue
    changed += 1
    after = rows_of(made, d, encoding)
    for row in before:
        if len(row) > title and row[title] == "Old Thing 0": row[title] = 'New 5" Thing, better'
    if before != after: complain(f"file {n} ({d!r}, {encoding}): other rows for Python's csv: {raw[:300]!r}")
print(f"{count} odd files byte for byte, {changed} with one title changed read alike")
if changed < 300: complain("too few files were changed")

# --- words that nobody knows ---
HEAD, TAIL = ["Gren", "Pell", "Ostr", "Vund", "Harr", "Quil", "Drev", "Mosk"], ["holt", "mar", "elby", "ikson", "oway", "fryt"]
THINGS = ["brass oil lamp", "green biscuit tin", "grey wool blanket", "walnut valve radio", "leather map case", "steel hand plane", "copper kettle", "white enamel jug"]
rows = []
for i in range(1000):
    maker = rules.choice(HEAD) + rules.choice(TAIL)
    pattern = rules.choice(["Zeff", "Tharn", "Wolbe", "Krill"]) + rules.choice(["wick", "ora", "umbel"])
    number = rules.choice(["", "No. %d" % rules.randint(2, 990), "Q%d" % rules.randint(10, 99), "%dA" % rules.randint(2, 9)])
    parts = [maker, rules.choice(THINGS), pattern, number]
    if rules.random() < 0.5: parts = [parts[1], maker, pattern, number]
    rows.append(("W%04d" % i, " ".join(p for p in parts if p), [maker, pattern] + ([number] if number else [])))
with open("s.csv", "w", newline="") as f:
    w = csv.writer(f)
    w.writerow(["sku", "title", "description"])
    for id, title, words in rows: # the measure has the figure of the number: "12 in" tells no "No. 12"
        tall = re.sub(r"\D", "", words[-1]) or "12"
        w.writerow([id, title, "Small dent near the base, light rust inside. %s in tall. Sold as found." % tall])
out = subprocess.run([command, "retitle", "s.csv", "--jobs", "2"], capture_output=True)
one = subprocess.run([command, "retitle", "-", "--jobs", "1"], stdin=open("s.csv"), capture_output=True)
if out.stdout != one.stdout: complain("two jobs write other proposals than one")
proposals = {r["id"]: r for r in csv.DictReader(io.StringIO(out.stdout.decode(), newline=""))}
if len(proposals) != 1000: complain(f"{len(proposals)} proposals for 1000 rows")
lost = given = 0
for id, title, words in rows:
    new = proposals.get(id, {}).get("new_title", "")
    given += new != ""
    for word in words if new else []:
        if not re.search(r"(?<!\w)" + re.escape(word) + r"(?!\w)", new, re.I):
            lost += 1
            complain(f"'{word}' of '{title}' is lost in '{new}'")
print(f"1000 titles with words that nobody knows: {given} proposed, {lost} words lost")
if given < 500: complain("too few were proposed")
subprocess.run(["rm", "-rf", work])
sys.exit(bad > 0)
