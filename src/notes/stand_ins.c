// SPDX-License-Identifier: MIT
// Parts that are not the thing's own ("wrong key", "the knob came off another one", "later lid"), and parts
// that are off and lie beside it ("handle's off but here").
#include <string.h>

#include "notes/any.h"
#include "notes/of_use.h"
#include "notes/things.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool is_known(const struct fault_reader *r, const char *id, const char *part) {
    const struct record *record = r->note->record;
    for (size_t i = 0; i < record->flaw_count; i++)
        if (text_same(record->flaws[i].kind->rule.id, id) &&
            (!record->flaws[i].part || text_same(record->flaws[i].part, part)))
            return true;
    return false;
}

static void tell(struct fault_reader *r, const char *id, const struct part_at *part, size_t from, size_t to) {
    const struct flaw *kind = ruleset_flaw(r->note->rules, id);
    static const uint16_t off = STANCE_OTHER | STANCE_WITHDRAWN | STANCE_UNKNOWN | STANCE_PLANNED;
    if (!kind || r->scope.stance[part->from] & off) return;
    if (ANY(&r->note->tokens, part->to - 1, "ring", "rings", "mark", "marks", "stain") &&
        token_is(&r->note->tokens, part->to, "from"))
        return; // "a ring from something wet"
    if (text_same(id, "replaced-part") && use_is_consumable(&r->note->tokens, part->from, part->to)) return;
    for (size_t i = 0; i < r->hit_count; i++) {
        const struct fault_hit *hit = &r->hits[i];
        bool mine = hit->kinds[0]->class == CLASS_REPAIR || hit->kinds[0] == kind;
        if (hit->from >= to || hit->to <= from) continue;
        if (!mine) continue;
        for (size_t k = hit->from; k < hit->to; k++) // a rule says so itself
            r->scope.stance[k] &= (uint16_t) ~(STANCE_PAST | STANCE_DENIED | STANCE_NONE_SEEN);
        return;
    }
    const char *name = fault_words(r->note, part->from, part->to);
    if (is_known(r, id, name)) return;
    fault_add(r, kind, name, NULL, from, to);
    part_close(r, from, to);
}

static bool all_parts(const struct fault_reader *r, const struct part_at *part) {
    for (size_t k = part->from; k < part->to; k++)
        if (r->scope.fault[k] && !r->part[k]) return false;
    return part->to > part->from && r->part[part->to - 1];
}

// "Home made lid", "later knobs", "made a new key", "fitted another strap".
static bool read_before(struct fault_reader *r, size_t i) {
    static const char *const apart[] = {"wrong",         "later",
                                        "home made",     "homemade",
                                        "home-made",     "makeshift",
                                        "stand-in",      "stand in",
                                        "substitute",    "substituted",
                                        "improvised",    "unoriginal",
                                        "non original",  "non-original",
                                        "aftermarket",   "after market",
                                        "repro",         "reproduction",
                                        "borrowed",      "donor",
                                        "mismatched",    "unmatched",
                                        "pattern",       "third party",
                                        "incorrect",     "not the original",
                                        "not the right", "not the correct",
                                        "not its own",   "not its original",
                                        "not the proper"};
    static const char *const made[] = {"made a new",
                                       "made up a new",
                                       "made a",
                                       "turned a new",
                                       "turned up a new",
                                       "cut a new",
                                       "carved a new",
                                       "fashioned a new",
                                       "fashioned a",
                                       "fitted a new",
                                       "fitted another",
                                       "fitted a different",
                                       "put a new",
                                       "put another",
                                       "put a different",
                                       "found a new",
                                       "knocked up a",
                                       "whittled a",
                                       "whittled a new",
                                       "bodged a",
                                       "rigged up a",
                                       "improvised a",
                                       "substituted a",
                                       "made another",
                                       "bought a new",
                                       "bought a replacement",
                                       "added a new",
                                       "put on a new",
                                       "fitted new",
                                       "put new",
                                       "made new",
                                       "cobbled together a",
                                       "swapped the",
                                       "swapped out the",
                                       "changed the",
                                       "renewed the",
                                       "borrowed the",
                                       "borrowed a",
                                       "fitted a spare",
                                       "fitted a modern",
                                       "fitted a replacement",
                                       "put a modern"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!token_may_open(tokens, i, apart, COUNT(apart), sizeof *apart) &&
        !token_may_open(tokens, i, made, COUNT(made), sizeof *made))
        return false;
    size_t n = token_longest(tokens, i, apart, COUNT(apart)),
           m = n ? 0 : token_longest(tokens, i, made, COUNT(made));
    if (!(n + m) || tokens->at[i + n + m - 1].stop != STOP_NONE || !part_named_at(r, i + n + m, &part) ||
        !all_parts(r, &part))
        return true;
    if (n && part.lead != part.from) return true;
    if (token_is(tokens, i, "pattern") && i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
        !ANY(tokens, i - 1, "a", "with", "has", "the", "is"))
        return true; // "vine pattern handle": what is on it
    if (m && i > 0 &&
        ANY(tokens, i - 1, "never", "not", "could", "be", "to", "you", "haven't", "can", "needs", "easily"))
        return true;
    if (ANY(tokens, part.to - 1, "side", "end", "way", "place", "bottom", "top", "back", "front", "inside",
            "page", "pages", "number", "pattern", "mark", "label", "hand", "case", "box", "edge", "edges",
            "sides", "ends", "corner", "corners", "stain", "spot", "seam", "hem", "face", "size", "bowl",
            "sheet", "sheets", "piece", "book", "thread", "threads", "stitching", "stitches", "paint",
            "color", "colour", "string", "tape"))
        return true;
    bool place = m && ANY(tokens, i, "put", "found", "bought") && !part_ends(tokens, part.to);
    if (place || (i > 0 && ANY(tokens, i - 1, "no", "isn't", "never", "without") && n)) return true;
    tell(r, "replaced-part", &part, i, part.to);
    return true;
}

// "Off a saucepan", "came off a different one", "borrowed from some other clock", "out of another": what it
// was of before. Of a hinge, of a hook it has only come off.
static size_t taken_from(const struct fault_reader *r, size_t i) {
    enum { WORDS_MOST = 4 };
    static const char *const ways[] = {"came",    "come",   "comes",    "taken",     "borrowed", "robbed",
                                       "pinched", "lifted", "salvaged", "scavenged", "poached",  "stolen"};
    static const char *const others[] = {"another", "something", "different", "other",
                                         "donor",   "scrap",     "else"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i + AMONG(tokens, i, ways);
    if (!ANY(tokens, at, "off", "from", "out")) return 0;
    at += token_phrase(tokens, at, "out of") ? 2 : 1;
    if (!ANY(tokens, at, "a", "an", "another", "some", "something")) return 0;
    size_t noun_from = i; // "a ring on the top from a plant pot": where it is
    while (noun_from > 0 && (r->part[noun_from - 1] || spot_article(tokens, noun_from - 1))) noun_from--;
    if (noun_from > 0 && ANY(tokens, noun_from - 1, "on", "in", "at", "inside", "under", "round", "around"))
        return 0;
    for (size_t k = at; k < at + WORDS_MOST && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++) {
        struct noun_found noun;
        if (AMONG(tokens, k, others)) return k + 1 - i;
        if (k == at) continue;
        bool own = k == at + 1 && r->part[k]; // "off a hinge", and "off an old stable door"
        if (!own && noun_at(r->note, k, &noun) && noun.thing && !(noun.uses & (1u << USE_GATED)))
            return noun.to - i;
    }
    return 0;
}

// "The knob is a stand-in", "lid came off a different one", "key isn't right for it".
static void read_behind(struct fault_reader *r, size_t i) {
    static const char *const are[] = {"is",        "are",        "was",         "were",    "has been",
                                      "have been", "looks like", "looks to be", "looks",   "seems to be",
                                      "seems",     "has",        "probably",    "clearly", "obviously",
                                      "may be",    "'s"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!r->part[i] || (i > 0 && r->part[i - 1]) || !part_named_at(r, i, &part) || !all_parts(r, &part))
        return;
    size_t on = part.from; // "the knob on the lid is off a saucepan": the knob
    while (on > 0 && spot_article(tokens, on - 1)) on--;
    bool under =
        on > 1 && ANY(tokens, on - 1, "under", "inside", "behind", "round", "around"); // "the felt under the
    bool felt = under && !r->scope.fault[on - 2] && tokens->at[on - 2].kind == TOKEN_WORD; // base is new"
    bool owned = felt || (on > 1 && ANY(tokens, on - 1, "on", "of", "in", "to", "for") && r->part[on - 2]);
    size_t at = part.to, a = token_longest(tokens, at, are, COUNT(are));
    if (a && token_is(tokens, at + a, "a") && token_is(tokens, at + a + 2, "one") &&
        ANY(tokens, at + a + 3, "off", "from", "out")) {
        tell(r, "replaced-part", &part, i, at + a + 4); // "is a plastic one off a wine box"
        return;
    }
    size_t made =
        a && !ANY(tokens, at, "has") ? part_made_at(tokens, at + a) : 0; // but "has a chip I missed"
    if (made) {
        tell(r, "replaced-part", &part, i, made);
        return;
    }
    size_t n = taken_from(r, at + a);
    if (owned) part = (struct part_at){on - 2, on - 2, on - 1};
    if (n) {
        tell(r, "replaced-part", &part, i, at + a + n);
        return;
    }
    n = part_not_own_at(tokens, at + a);
    bool alone = a == 0 && (part.from == 0 || tokens->at[part.from - 1].stop >= STOP_COMMA) && // "back board
                 part_ends(tokens, at + 1);                                                    // later."
    if (!n || ANY(tokens, at + a + n, "way", "side", "size", "place", "end") ||
        (a == 0 && !alone &&
         ANY(tokens, at, "changed", "makeshift", "swapped", "new", "modern", "later", "newer")) ||
        (a == 0 && ANY(tokens, at, "wrong") &&
         (!part_ends(tokens, at + 1) || ANY(tokens, at + 1, "and", "but"))))
        return;
    if (a == 0 && ANY(tokens, at, "off", "out") && !ANY(tokens, at + 1, "a", "another", "something", "of"))
        return;
    bool turned = token_phrase(tokens, at + a, "not right") || token_phrase(tokens, at + a, "isn't right") ||
                  token_phrase(tokens, at + a, "wrong") || token_phrase(tokens, at + a, "not correct") ||
                  token_phrase(tokens, at + a, "changed") || token_phrase(tokens, at + a, "brand new") ||
                  ANY(tokens, at + a, "modern", "later", "newer", "new", "quite", "all", "recent") ||
                  token_phrase(tokens, at + a, "more recent") || token_phrase(tokens, at + a, "fairly new");
    turned |= ANY(tokens, at + a + n - 1, "one", "ones") && token_is(tokens, at + a + n - 2, "the") && n == 3;
    size_t to = at + a + n;
    if (turned &&
        !(to >= tokens->count || tokens->at[to].stop != STOP_NONE || ANY(tokens, to, "for", "and", "but")))
        return;
    tell(r, "replaced-part", &part, i, to);
}

// "Handle's off but here", "the foot has come off, I have it".
static void read_off(struct fault_reader *r, size_t i) {
    static const char *const off[] = {
        "is off",          "are off",       "'s off",          "off",
        "has come off",    "have come off", "came off",        "come off",
        "is detached",     "are detached",  "detached",        "has come away",
        "come away",       "came away",     "fell off",        "has fallen off",
        "has dropped off", "dropped off",   "has come adrift", "has parted company",
        "is loose in",     "is in bits",    "is separate",     "has come out",
        "came out"};
    static const char *const here[] = {"but here",
                                       "but with it",
                                       "but it's here",
                                       "but i have it",
                                       "but present",
                                       "but included",
                                       "but i've got it",
                                       "but it's with it",
                                       "but it's in",
                                       "but in the",
                                       "and here",
                                       "and with it",
                                       "i have it",
                                       "i've got it",
                                       "i've kept it",
                                       "and i have it",
                                       "and in the",
                                       "it's in the",
                                       "it's here",
                                       "it's with it",
                                       "included",
                                       "but there",
                                       "but inside",
                                       "but it's inside",
                                       "but it's in",
                                       "but it's there",
                                       "but all there",
                                       "but i kept it",
                                       "and i've kept it",
                                       "but they're here",
                                       "but both here",
                                       "but it comes with it",
                                       "but saved",
                                       "but i've kept it",
                                       "kept it",
                                       "but i have them",
                                       "i have them",
                                       "but it's included",
                                       "will be included",
                                       "comes with it",
                                       "taped inside",
                                       "in a bag",
                                       "in the bag",
                                       "in the drawer",
                                       "in an envelope",
                                       "but goes with it",
                                       "it's in a",
                                       "but it is here",
                                       "but i still have it",
                                       "i still have it",
                                       "i kept it",
                                       "wrapped inside"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!r->part[i] || (i > 0 && r->part[i - 1]) || !part_named_at(r, i, &part) || !all_parts(r, &part))
        return;
    size_t n = token_longest(tokens, part.to, off, COUNT(off)), at = part.to + n;
    bool owner =
        !n && part.to == i + 1 && strstr(tokens->at[i].fold, "'s") && token_is(tokens, part.to, "off");
    if (owner) at = part.to + 1;
    if (!n && !owner) return;
    if (at < tokens->count && (tokens->at[at].stop == STOP_COMMA || token_is(tokens, at, "("))) at++;
    size_t m = token_longest(tokens, at, here, COUNT(here));
    if (!m || r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN)) return;
    bool board = ANY(tokens, part.to - 1, "cover", "covers", "board", "boards", "spine", "backstrip");
    const struct family *family = r->note->record->family;
    bool book = family && (text_same(family->rule.id, "books") || text_same(family->rule.id, "paper"));
    tell(r, board && book ? "binding-weak" : "broken-part", &part, i, at + m);
}

// "New key fitted", "new knobs put on": but "new handles" alone is praise.
static bool read_new(struct fault_reader *r, size_t i) {
    static const char *const done[] = {"fitted",      "put on",        "added",           "put in",
                                       "made for it", "made by me",    "has been fitted", "have been fitted",
                                       "was fitted",  "were fitted",   "screwed on",      "glued on",
                                       "sewn on",     "bought for it", "installed",       "since"};
    static const char *const news[] = {"new",         "another", "different", "modern", "spare",
                                       "replacement", "newer",   "later",     "second"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!AMONG(tokens, i, news)) return false;
    if (tokens->at[i].stop != STOP_NONE || !part_named_at(r, i + 1, &part) || !all_parts(r, &part))
        return true;
    size_t n = token_longest(tokens, part.to, done, COUNT(done));
    if (n && !(i > 0 && ANY(tokens, i - 1, "no", "needs", "with")))
        tell(r, "replaced-part", &part, i, part.to + n);
    return true;
}

// "Drawstring is a bit of washing line", "a cork for a stopper", "a nail instead of the hinge pin".
static size_t makeshift_at(const struct tokens *tokens, size_t i) {
    static const char *const bits[] = {
        "a bit of",   "a piece of", "a length of",  "a scrap of",   "a twist of", "bits of", "a loop of",
        "a strip of", "an old",     "a bent",       "an offcut of", "a lump of",  "only a",  "just a",
        "a",          "an",         "some",         "now a",        "just",       "only",    "a carved",
        "a whittled", "a lollipop", "a filed down", "a cut down"};
    static const char *const stuff[] = {
        "string",  "wire",       "rope",         "cord",       "twine",     "line",      "tape",
        "elastic", "ribbon",     "bootlace",     "shoelace",   "bootlaces", "shoelaces", "nail",
        "nails",   "matchstick", "matchsticks",  "cork",       "button",    "coin",      "paperclip",
        "pin",     "bolt",       "bolts",        "stick",      "twig",      "needle",    "cap",
        "reel",    "wood",       "dowel",        "screw",      "screws",    "washer",    "washers",
        "spoon",   "broomstick", "pencil",       "penny",      "pebble",    "bead",      "cardboard",
        "card",    "foil",       "wool",         "rag",        "sock",      "baler",     "stocking",
        "clip",    "staple",     "staples",      "hook",       "putty",     "plastic",   "tin",
        "leather", "chain",      "fishing line", "marble",     "acorn",     "conker",    "skewer",
        "hairpin", "peg",        "pegs",         "bottle top", "rubber",    "band",      "hose",
        "straw",   "webbing",    "pipe",         "tube",       "tubing",    "bracket"};
    size_t n = token_longest(tokens, i, bits, COUNT(bits));
    if (!n) return 0;
    for (size_t k = i + n; k < i + n + 3 && k < tokens->count; k++) {
        if (AMONG(tokens, k, stuff) &&
            (k + 1 >= tokens->count || tokens->at[k + 1].stop != STOP_NONE ||
             tokens->at[k + 1].kind == TOKEN_SIGN ||
             ANY(tokens, k + 1, "and", "but", "which", "now", "tied", "that", "someone", "from", "off",
                 "pushed", "stuck", "for", "as", "instead", "in", "doing", "serving", "standing")))
            return k + 1 - i;
        if (tokens->at[k].stop != STOP_NONE || tokens->at[k].kind != TOKEN_WORD ||
            ANY(tokens, k, "and", "or", "with", "in", "on"))
            return 0;
    }
    return 0;
}

// "Drawcord is baler twine", "back board is cardboard off a box": of stuff that no maker uses.
static bool read_plain_makeshift(struct fault_reader *r, size_t i) {
    static const char *const stuff[] = {"baler twine",  "cardboard",    "hardboard",       "washing line",
                                        "garden twine", "fencing wire", "fuse wire",       "parcel tape",
                                        "a bootlace",   "gaffer tape",  "electrical tape", "old rope",
                                        "garden hose"};
    enum { WORDS_MOST = 3, LEAST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "is", "are") || i == 0 || !token_first(tokens, i + 1, stuff, COUNT(stuff)))
        return false;
    size_t from = i;
    while (from > 0 && i - from < WORDS_MOST && tokens->at[from - 1].stop == STOP_NONE &&
           tokens->at[from - 1].kind == TOKEN_WORD && !spot_article(tokens, from - 1) &&
           !ANY(tokens, from - 1, "and", "but", "which", "that"))
        from--;
    if (from == i || strlen(tokens->at[i - 1].fold) < LEAST || r->note->taken[i - 1] == TAKEN_TYPE ||
        ANY(tokens, i - 1, "this", "that", "there", "which", "here"))
        return false;
    struct part_at part = {from, from, i};
    tell(r, "replaced-part", &part, from, i + 1 + token_first(tokens, i + 1, stuff, COUNT(stuff)));
    return true;
}

static void read_makeshift(struct fault_reader *r, size_t i) {
    static const char *const is[] = {"is",
                                     "are",
                                     "is now",
                                     "are now",
                                     "is only",
                                     "is just",
                                     "'s",
                                     "was",
                                     "has become",
                                     "consists of",
                                     "is made from",
                                     "is made of",
                                     "has been made from",
                                     "made out of",
                                     "is made out of",
                                     "has been made out of"};
    static const char *const held[] = {"is part of", "is a nice"};
    static const char *const scraps[] = {"a bit of", "a piece of", "a length of", "a scrap of",
                                         "a bent",   "an old",     "just a"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (read_plain_makeshift(r, i)) return;
    if (!r->part[i] || (i > 0 && r->part[i - 1]) || !part_named_at(r, i, &part) || !all_parts(r, &part))
        return;
    if (i > 1 && ANY(tokens, i - 1, "of", "in", "on", "with", "under")) return;
    size_t at = part.to, n = token_longest(tokens, at, is, COUNT(is));
    bool opens = part.lead == 0 || tokens->at[part.lead - 1].stop != STOP_NONE; // "strap a bit of webbing"
    if (!n && !(opens && token_first(tokens, at, scraps, COUNT(scraps)))) return;
    if (token_longest(tokens, at, held, COUNT(held))) return;
    bool made = n && ANY(tokens, at + n - 1, "from", "of");
    size_t m = makeshift_at(tokens, at + n);
    bool worth = m > 1 && !made;
    for (size_t k = at + n; k < at + n + m; k++) // "the handle is a piece of leather" may be its own
        if (ANY(tokens, k, "leather", "chain", "rope", "cord", "wood", "tin", "plastic", "card", "cardboard",
                "rubber") &&
            !ANY(tokens, at + n, "an", "just", "only") && !token_phrase(tokens, at + n, "a bit of"))
            worth = false;
    for (size_t k = 0; k < r->hit_count; k++) // another rule has a name for it
        worth &= r->hits[k].to <= i || r->hits[k].from >= at + n + m;
    if (worth) tell(r, "replaced-part", &part, i, at + n + m);
}

// "A nail instead of the pin", "a bolt doing duty as a handle", "matchsticks for pegs".
static bool read_instead(struct fault_reader *r, size_t i) {
    static const char *const ways[] = {
        "instead of",     "in place of",   "in lieu of",       "standing in for",
        "stands in for",  "stand in for",  "doing duty as",    "does duty as",
        "doing duty for", "does duty for", "acting as",        "acts as",
        "serves as",      "serving as",    "doing the job of", "does the job of",
        "does for",       "in for",        "passing for",      "pressed into service as",
        "replaces",       "has replaced",  "have replaced",    "replacing",
        "used as",        "being used as", "used for",         "for a",
        "as a",           "for its",       "as its",           "for the",
        "as the"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    if (!token_may_open(tokens, i, ways, COUNT(ways), sizeof *ways)) return false;
    size_t n = token_longest(tokens, i, ways, COUNT(ways));
    if (!n || i == 0 || !part_named_at(r, i + n, &part) || !all_parts(r, &part) ||
        !part_ends(tokens, part.to))
        return true;
    bool lead = part.lead != part.from || ANY(tokens, i + n - 1, "of", "for");
    if (!lead || ANY(tokens, part.to - 1, "box", "case", "base", "stand", "cover", "bag")) return true;
    bool thing = ANY(tokens, i + n - 1, "as", "for", "in");
    bool stuff = false;
    for (size_t back = 1; back <= 4 && back <= i; back++)
        stuff |=
            makeshift_at(tokens, i - back) >= back || ANY(tokens, i - 1, "string", "matchsticks", "nails",
                                                          "washers", "bolts", "wire", "nail", "bolt", "cork");
    if (thing && !stuff) return true; // "jar used as a stand"
    tell(r, "replaced-part", &part, i, part.to);
    return true;
}

// "Had its handle off and a new one put on": one of what was named before.
static bool read_new_one(struct fault_reader *r, size_t i) {
    static const char *const ones[] = {
        "a new one put on",   "a new one fitted", "new ones fitted",         "new ones put on",
        "a new one made",     "new one fitted",   "new one put on",          "a new one put in",
        "another one fitted", "another fitted",   "another put on",          "a different one fitted",
        "a new one sewn on",  "new ones sewn on", "a new one made for it",   "a fresh one fitted",
        "new ones made",      "a new one since",  "replaced with a new one", "put a new one on",
        "put new ones on",    "fitted a new one", "fitted new ones",         "made a new one",
        "made new ones"};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_may_open(tokens, i, ones, COUNT(ones), sizeof *ones)) return false;
    size_t n = token_longest(tokens, i, ones, COUNT(ones));
    if (!n || ANY(tokens, i + n, "and") ||
        (i > 0 && ANY(tokens, i - 1, "needs", "have", "get", "want", "wants", "need")))
        return true;
    size_t start = scope_sentence_start(&r->scope, i);
    for (size_t at = i; at > start; at--) {
        if (!r->part[at - 1] || r->note->taken[at - 1] == TAKEN_TYPE) continue;
        struct part_at part = {at - 1, at - 1, at};
        tell(r, "replaced-part", &part, i, i + n);
        return true;
    }
    return true;
}

// "The dress she has on", "the hat on him", "shoes he's wearing": how many tokens before `i` say who wears
// it.
static size_t worn_by(const struct tokens *tokens, size_t i) {
    size_t at = i;
    if (at > 2 && token_is(tokens, at - 1, "on") && ANY(tokens, at - 2, "has", "had", "got")) {
        at -= 2;
        if (token_is(tokens, at - 1, "has")) at--; // "has got on"
    } else if (at > 1 && ANY(tokens, at - 1, "wearing", "wears", "wore")) {
        at -= ANY(tokens, at - 2, "is", "was") ? 2 : 1;
    } else if (at > 2 && ANY(tokens, at - 1, "him", "her") && token_is(tokens, at - 2, "on")) {
        return 2;
    }
    if (at == i || at < 2 || !ANY(tokens, at - 1, "she", "he", "it", "she's", "he's", "doll")) return 0;
    at -= at > 2 && ANY(tokens, at - 2, "that", "which", "the") ? 2 : 1;
    return i - at;
}

// "The dress isn't hers", "boots are not his": what a doll or a figure wears was another's.
static void read_not_whose(struct fault_reader *r, size_t i) {
    static const char *const never[] = {"name", "names", "initials", "signature", "writing", "work", "hand",
                                        "it",   "this",  "that",     "which",     "they",    "idea", "fault"};
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "hers", "his") || i < 2 || !part_ends(tokens, i + 1)) return;
    size_t not = i - 1;
    if (ANY(tokens, not, "really", "actually", "originally")) not --;
    if (!ANY(tokens, not, "isn't", "aren't", "not", "isnt", "arent") || not == 0) return;
    size_t to = not ;
    if (token_is(tokens, not, "not") && ANY(tokens, to - 1, "is", "are", "was", "were")) to--;
    to -= worn_by(tokens, to);
    if (to == 0 || tokens->at[to - 1].kind != TOKEN_WORD || tokens->at[to - 1].stop != STOP_NONE ||
        r->scope.fault[to - 1] || AMONG(tokens, to - 1, never) || absent_is_small(tokens, to - 1))
        return;
    struct part_at part = {to - 1, to - 1, to};
    tell(r, "replaced-part", &part, to - 1, i + 1);
}

// Those of what stands before a part say whether they know the word at all; what none of them knows is not
// shown to them again.
void read_stand_ins(struct fault_reader *r) {
    static const char key[] = "opens a stand-in";
    read_renewed(r);
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        bool open = token_told(tokens, i, key) != 0, known = open && read_before(r, i);
        if (open) known |= read_new(r, i);
        read_off(r, i);
        if (open) known |= read_new_one(r, i);
        read_makeshift(r, i);
        if (open) known |= read_instead(r, i);
        if (open && !known) token_tell(tokens, i, key, false);
        read_behind(r, i);
        read_not_whose(r, i);
    }
}
