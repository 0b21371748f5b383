# SPDX-License-Identifier: MIT
# Sheets of the demo's stock and of a thing with thirty faults: the digest is hashlib's of the text that the listing
# gives, the text stands whole, nothing is fetched from elsewhere, private words and claims without evidence are out,
# and weasyprint sets each on one page.
import hashlib
import html
import json
import re
import subprocess
import sys

import weasyprint

command, source = sys.argv[1], sys.argv[2]
STOCK = source + "/demo/stock.yaml"
DATE = "2025-11-25"
SHOWS = "It shows that the text is unchanged; it proves neither date nor delivery."


def fail(why):
    sys.exit("sheets: " + why)


def run(*arguments, given=None):
    done = subprocess.run([command, "draft", "--today", DATE, *arguments], input=given, capture_output=True, check=False)
    if done.returncode not in (0, 1):
        fail("%s: %s" % (arguments, done.stderr.decode()))
    return done.stdout.decode()


def statement(listing):
    if not listing["description"]:
        return listing["disclosure"]
    return listing["title"] + "\n\n" + listing["description"] if listing["title"] else listing["description"]


def check(arguments, given=None):
    listings = [json.loads(line) for line in run("--format", "json", *arguments, given=given).splitlines()]
    page = run("--sheet", "--format", "html", *arguments, given=given)
    text = run("--sheet", *arguments, given=given)
    articles = re.findall(r"<article.*?</article>", page, re.S)
    if len(articles) != len(listings) or not articles:
        fail("%d sheets of %d listings" % (len(articles), len(listings)))
    for article, listing in zip(articles, listings):
        words = statement(listing)
        digest = hashlib.sha256(words.encode()).hexdigest()
        plain = html.unescape(re.sub(r"</?bdi>", "", article))
        for wanted in [digest, words, SHOWS, "dated " + DATE, listing["id"]] + [c["text"] for c in listing["cautions"]]:
            if wanted not in plain:
                fail("%s: the page lacks %r" % (listing["id"], wanted))
            if wanted not in text:
                fail("%s: the text lacks %r" % (listing["id"], wanted))
        pages = len(weasyprint.HTML(string=page[: page.index("<article")] + article).render().pages)
        if pages != 1:
            fail("%s takes %d pages" % (listing["id"], pages))
    if re.search(r"\b(?:src|href|url|@import|https?:)", page.replace("schema.org", "")):
        fail("a page asks for something from elsewhere")
    if len(weasyprint.HTML(string=page).render().pages) != len(listings):
        fail("sheets share pages")
    return page, text


check([STOCK])
flaws = ["chip", "scratches", "rust", "crack", "dent-bend", "paint-flaking", "verdigris", "untested", "stain", "fading"]
parts = ["lid", "base", "handle"]
big = {"id": "big", "type": "box", "family": "other", "notes": "NOTES-STAY-OUT", "own": {"bin": "OWN-STAYS-OUT"},
       "attributes": {"material": ["sterling silver", "oak"]},
       "listing": {"title": "TITLE-STAYS-OUT", "price": "12"},
       "flaws": [{"kind": k, "part": p, "where": "at the left edge near the maker's plate", "severity": "moderate"}
                 for k in flaws for p in parts],
       "photos": [{"file": "box-%d.jpg" % i, "shows": "the left edge from above"} for i in range(12)]}
page, text = check(["--from", "json", "-"], json.dumps(big).encode())
for out in ("STAY-OUT", "STAYS-OUT", "sterling"):
    if out in page or out in text:
        fail("%s stands on a sheet" % out)
if "(kept out: nothing in the record shows it) and oak" not in text:
    fail("what is kept out has no note")
held = {"id": "cot", "type": "crib", "family": "furniture", "notes": "a drop side crib", "flaws": ["scratches"]}
page, text = check(["--from", "json", "-"], json.dumps(held).encode())
if "Not to be listed: " not in page or "scratches" not in text.split("----- end of text -----")[0]:
    fail("what is held back does not say so")
# The checks can fail: a longer page does take two.
if len(weasyprint.HTML(string="<p>a</p>" * 400).render().pages) < 2:
    fail("weasyprint counts no pages")
