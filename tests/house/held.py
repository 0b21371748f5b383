# SPDX-License-Identifier: MIT
# A thousand held titles as people write them: makers of many scripts, patterns named with plain words, models, measures,
# words of a trade, places they were found, and words that turn a name ("not Grenholt", "Grenholt type"). Whatever of that
# the old title says, the new one says in the same order and side by side; and it says no word twice that was there once.
#   held.py COMMAND [SEED]
import csv, io, random, re, subprocess, sys, unicodedata

command, rules = sys.argv[1], random.Random(int(sys.argv[2]) if len(sys.argv) > 2 else 41)
bad = 0

def complain(text):
    global bad
    bad += 1
    if bad < 20: print(text)

MAKERS = ["Vorndale", "Quillisk", "Ostermarch & Fenn", "Brindleby", "Hask & Tovey", "J. Pellworth", "Kaddon Bros", "Mirravane", "O'Thessaly",
          "Sturmgate", "Ælfwynn Works", "Nørholt", "Müllgaard", "Cœurval", "Тавромир", "Ψυχολάμπ", "紫电社", "Ferro-Dunn", "T.R. Wexcombe",
          "McThurlow", "Eskil-Rowe", "Doomfrith", "Quarn", "Hollin & Sons", "Beskar & Co", "Zundit", "Lunsetter", "Thrupple"]
NAMED = ["Moor Hen", "Blue Gate", "Seven Reeds", "Iron Crown", "Rare Bird", "Old Mill", "Little Wonder", "Paper Moon"]  # with capitals of their own
STRANGE = ["Zeffwick", "Tharnora", "Krillumbel", "Wolbefryt"]
MODELS = ["XR-7", "No. 14", "KB 220", "Mk II", "4711", "A.12", "B/17", "55-C", "Series E", "No 8", "Model 9b", "VII"]
MEASURES = ["12 in", '9"', "3 x 5 ft", "14 lb", "2 gallon", "30 cm", "6 ft", "220 V"]
ODD = ["flumper", "gimbal-arm", "wobbulator", "scratterpan", "thrumstick", "brobble", "snood", "quoin", "spile"]
PLACES = ["boat house", "signal box", "village school", "workshop"]
TURNS = ["not {}", "{} type", "{} style", "unlike {}", "possibly {}", "after {}", "copy of {}", "for {}", "like {}", "replica {}", "{}?"]
GOODS = [("oil lamp", "Brass base, %s on the base. 14 in tall."), ("enamel jug", "White with blue rim, %s on the spout."),
         ("field glasses", "With leather case, %s on the case."), ("biscuit tin", "From a shed. %s on the lid. 9 in wide."),
         ("wool blanket", "Grey, %s near one corner. 60 x 80 in."), ("wall map", "Cloth backed on rollers, %s at the lower edge."),
         ("valve radio", "Untested. Walnut case, %s on the case."), ("hand plane", "Steel, %s on the sole. 10 in long."),
         ("copper kettle", "Kettle with lid, %s on the side."), ("barometer", "Oak case, %s on the case. 8 in across."),
         ("hurricane lantern", "%s on the tank, no globe."), ("spirit level", "Rosewood and brass, %s at one end. 9 in long."),
         ("hand bell", "Brass hand bell, wooden handle, %s on the rim."), ("school desk", "Oak and cast iron, %s on the top.")]
FLAWS = ["small dent", "rust", "a chip", "scratches", "a stain"]

def plain_case(text): return text
def title_case(text): return " ".join(w[:1].upper() + w[1:] for w in text.split(" "))

def make():
    goods, text = rules.choice(GOODS)
    maker, case = rules.choice(MAKERS), rules.choice([plain_case, plain_case, title_case, str.upper])
    if rules.random() < 0.1:
        turn = rules.choice(TURNS).format(maker)
        parts, kept = [goods, turn], [turn]
    else:
        parts, kept = [maker, goods], [maker]
        def add(share, words, places):
            if rules.random() >= share: return
            word = rules.choice(words)
            kept.append(word)
            parts.insert(rules.choice(places(len(parts))), word)
        add(0.3, NAMED if case is plain_case else STRANGE, lambda n: [1, n])
        add(0.5, MODELS, lambda n: [n])
        add(0.3, MEASURES, lambda n: [n])
        add(0.3, ODD, lambda n: list(range(n + 1)))
        if rules.random() < 0.2: parts.insert(rules.choice([0, len(parts)]), rules.choice(PLACES))
        if rules.random() < 0.2: parts.insert(0, rules.choice(["rare", "vintage", "old", "nice"]))
    return case(" ".join(parts)), text % rules.choice(FLAWS), kept

# Words for comparing: units in one form and parted from their figures.
def words(text):
    text = unicodedata.normalize("NFC", text).casefold().replace('"', " in ").replace("gallon", "gal")
    text = re.sub(r"(?<=\d)(cm|in|ft|lb|v)\b", r" \1", text)
    return re.findall(r"[^\W_]+(?:['./-][^\W_]+)*|[?]", text)

def side_by_side(part, whole): return any(whole[i:i + len(part)] == part for i in range(len(whole) - len(part) + 1))

rows = [make() for _ in range(1000)]
stock = io.StringIO(newline="")
csv.writer(stock).writerows([["sku", "title", "description"]] + [["H%d" % i, title, text] for i, (title, text, _) in enumerate(rows)])
out = subprocess.run([command, "retitle", "--quiet", "-"], input=stock.getvalue().encode(), capture_output=True)
proposals = list(csv.DictReader(io.StringIO(out.stdout.decode(), newline="")))
if len(proposals) != len(rows): complain(f"{len(proposals)} proposals for {len(rows)} rows")
proposed = 0
for (title, _, kept), row in zip(rows, proposals):
    new = row["new_title"]
    if not new: continue
    proposed += 1
    told, old = words(new), words(title)
    if len(new) > 80: complain(f"'{new}' is longer than 80")
    for part in kept:
        if not side_by_side(words(part), told): complain(f"'{part}' of '{title}' is lost in '{new}'")
    for word in set(told):
        if len(word) > 2 and told.count(word) > max(1, old.count(word)): complain(f"'{word}' stands twice in '{new}', of '{title}'")
print(f"{len(rows)} held titles: {proposed} proposed, {bad} losses")
if proposed < 900: complain("too few were proposed")
sys.exit(bad > 0)
