# SPDX-License-Identifier: MIT
# Reads 300 pages of hostile records with Python's html.parser, which knows nothing of ours: the tags are the
# ones a page may have and in their order, every text is the value itself, what is read from right to left is
# isolated, and the linked data is JSON that says the same as the listing.
import html.parser
import json
import subprocess
import sys
import unicodedata

command = sys.argv[1]
VALUES = [
    "<script>alert(1)</script>", "</script><script>x</script>", "<!-- a", "--><b>", "<![CDATA[x]]>", "]]>",
    "\"quoted\" 'twice'", "&amp; & &lt; &#39; &nbsp", "</article></body></html>", "</pre><h1>", "</style><i>",
    "<img src=x onerror=y>", "<svg/onload=z>", "javascript:alert(1)", "data:text/html,<b>x", "${x} {{y}} %s %n",
    "=1+1", "+1+1", "-2+3", "@SUM(A1)", "=cmd|' /C calc'!A0", "\\u003c \\n \\", "a\u2019b \u201cc\u201d", "e\u0301\u0302",
    "\U0001f642 lamp", "\U0001f469\u200d\U0001f527", "\U0001f1e6\U0001f1f6", "\u05e9\u05de\u05df 12 \u05d8\u05d5\u05d1",
    "\u0634\u0645\u0639\u0629", "red \u05d0\u05d3\u05d5\u05dd (2) \u05d8\u05d5\u05d1 mill", "\u062c\u062f\u064a\u062f <b>",
    "\u65e5\u672c", "\ufffd", "x" * 300, "<" * 40, "&" * 40,
]
REFUSED = ["a\u202eb", "a\u200fb", "a\u2028b", "a\u2029b", "a\u0000b", "a\u001bb", "a\u0085b", "a\ufeffb", "a\u2066b"]
BOXES = {"h2", "p", "pre", "h3", "li"}


def fail(why):
    sys.exit("pages: " + why)


class Dice:
    def __init__(self, seed):
        self.state = seed

    def pick(self, values):
        self.state = (self.state * 6364136223846793005 + 1442695040888963407) % 2**64
        return values[(self.state >> 33) % len(values)]


def record(number):
    dice = Dice(number)
    value = lambda: dice.pick(VALUES)
    attributes = {name: value() for name in ["color", "material", "brand", "model", "pattern", "size", "theme", "name"]
                  if dice.pick([True, False])}
    return {
        "id": "%d %s" % (number, value()), "type": dice.pick([value(), "jug"]), "family": "other",
        "attributes": attributes,
        "flaws": [{"kind": "chip", "where": value()}, {"kind": "rust", "part": value(), "photo": value()}],
        "clear": [{"kind": "crack-through", "where": value()}], "unchecked": [value()],
        "marks": [value(), {"text": value(), "where": value()}], "includes": [value()],
        "photos": [{"file": value(), "shows": value()}], "fits": [{"brand": value(), "model": value()}],
        "measurements": [{"dimension": "height", "value": 3, "unit": "in", "of": value()}],
        "listing": {"title": value(), "description": value(), "price": dice.pick(["12", value()]), "currency": value(),
                    "where": "javascript:alert(1)"},
        "own": {"bin": value()},
    }


class Page(html.parser.HTMLParser):
    """Tags in order, the text of each box, and whether what runs leftward was isolated."""

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.tags, self.open, self.articles, self.box, self.loose = [], [], [], None, ""

    def handle_starttag(self, tag, attributes):
        allowed = {"article": {"id"}, "p": {"class"} if attributes else set(), "script": {"type"}, "html": {"lang"},
                   "meta": None}
        names = {name for name, _ in attributes}
        if allowed.get(tag, set()) is not None and names != allowed.get(tag, set()):
            fail("attributes %s of <%s>" % (attributes, tag))
        if tag != "bdi":
            self.tags.append(tag)
        if tag == "article":
            self.articles.append({"id": attributes[0][1], "boxes": [], "script": ""})
        if tag in BOXES:
            if self.box is not None:
                fail("<%s> inside a box" % tag)
            self.box = (tag, [])
        if tag == "script" and attributes != [("type", "application/ld+json")]:
            fail("a script that may run: %s" % attributes)
        if tag != "meta":
            self.open.append(tag)

    def handle_endtag(self, tag):
        if not self.open or self.open.pop() != tag:
            fail("</%s> closes nothing" % tag)
        if tag != "bdi":
            self.tags.append("/" + tag)
        if tag in BOXES:
            self.articles[-1]["boxes"].append((tag, "".join(self.box[1])))
            self.box = None

    def handle_data(self, data):
        if self.open and self.open[-1] == "script":
            self.articles[-1]["script"] += data
        elif self.box is not None:
            self.box[1].append(data)
            leftward = [c for c in data if unicodedata.bidirectional(c) in ("R", "AL")]
            if leftward and "bdi" not in self.open:
                fail("not isolated: %r" % data)
        elif self.open and self.open[-1] not in ("title", "style") and data.strip():
            fail("text outside of any box: %r" % data)

    def handle_comment(self, data):
        fail("a comment: %r" % data)

    def unknown_decl(self, data):
        fail("a declaration: %r" % data)

    handle_pi = handle_comment


def draft(form, records):
    lines = "".join(json.dumps(r) + "\n" for r in records)
    done = subprocess.run([command, "draft", "--from", "ndjson", "--format", form, "-"], input=lines.encode(),
                          capture_output=True, check=False)
    return done.returncode, done.stdout.decode()


def given_title(listing):
    given = listing["score"].get("given")
    if not given:
        return []
    items = []
    for miss in given["misses"]:
        if miss["kind"] == "search":
            items.append("misses: the search %s (%s, %d)" % (miss["text"], miss["want"], miss["worth"]))
        elif miss["kind"] != "must":
            items.append("misses: %s (%d)" % (miss["text"], miss["worth"]))
    items += ["less: " + text for text in given["less"]]
    return [("h3", "The title as given"), ("p", given["title"]), ("p", None)] + [("li", item) for item in items]


def expected_boxes(listing):
    lists = [
        ("Why this grade", listing["condition"]["reasons"]), ("Other titles", listing["alternates"]),
        ("To settle", ["%s: %s" % (f["level"], f["message"]) for f in listing["findings"]]),
        ("Kept back", ["%s: %s" % (w["what"], w["why"]) for w in listing["withheld"]]),
        ("Look at before listing", [q["ask"] for q in listing["questions"]]),
        ("Photos", [p["shows"] for p in listing["photos"]]),
    ]
    boxes = [("h2", listing["title"] or "(no title)"), ("p", None), ("pre", listing["description"])]
    for name, items in lists:
        if name == "To settle":
            boxes += given_title(listing)
        if items:
            boxes.append(("h3", name))
            boxes += [("li", item) for item in items]
    return boxes


def expected_tags(boxes, script):
    tags = ["article"]
    for i, (tag, _) in enumerate(boxes):
        if tag == "li" and boxes[i - 1][0] != "li":
            tags.append("ul")
        tags += [tag, "/" + tag]
        if tag == "li" and (i + 1 == len(boxes) or boxes[i + 1][0] != "li"):
            tags.append("/ul")
    return tags + (["script", "/script"] if script else []) + ["/article"]


def check_linked(article, listing):
    if not listing["title"]:
        if article["script"]:
            fail("linked data without a title")
        return
    data = json.loads(article["script"])
    said = {"@context": "https://schema.org", "@type": "Product", "sku": listing["id"], "name": listing["title"],
            "description": listing["description"],
            "itemCondition": "https://schema.org/" + listing["condition"]["schema_org"]}
    for key, value in said.items():
        if data.get(key) != value:
            fail("%s is %r and not %r" % (key, data.get(key), value))


def check_pages(records):
    _, text = draft("html", records)
    listings = [json.loads(line) for line in draft("json", records)[1].splitlines()]
    page = Page()
    page.feed(text)
    page.close()
    if page.open or len(page.articles) != len(records) or len(listings) != len(records):
        fail("%d articles, %d listings, left open: %s" % (len(page.articles), len(listings), page.open))
    tags = ["html", "head", "meta", "meta", "title", "/title", "style", "/style", "/head", "body"]
    for article, listing in zip(page.articles, listings):
        boxes = expected_boxes(listing)
        tags += expected_tags(boxes, bool(listing["title"]))
        for (tag, given), (wanted, value) in zip(article["boxes"], boxes):
            if tag != wanted or (value is not None and given != value):
                fail("<%s> %r where <%s> %r should stand" % (tag, given, wanted, value))
        if article["id"] != listing["id"]:
            fail("the id %r" % article["id"])
        check_linked(article, listing)
    if page.tags != tags + ["/body", "/html"]:
        fail("other tags than a page has")
    return len(records)


def main():
    read = sum(check_pages([record(n)]) for n in range(4))
    read += sum(check_pages([record(4 + 37 * n + k) for k in range(37)]) for n in range(8))
    for value in REFUSED:
        status, text = draft("html", [{"id": "a", "type": value}])
        if status != 4 or "<article" in text:
            fail("%r was let in" % value)
    # The reader itself must be able to fail.
    try:
        Page().feed("<article id=\"a\"><h2>\u05d0</h2>")
    except SystemExit:
        print("%d hostile records read back from their pages" % read)
        return
    fail("what is not isolated is no longer seen")


main()
