// SPDX-License-Identifier: MIT
// Ways in which a part went out of the world or of the seller's hands, put together from the verb, what goes
// with it and who did it: "rolled away", "got recycled by mistake", "never made it to me", "wasn't at the
// sale"; "threw away the", "whoever had it before kept the", "never did find the".
#include "notes/any.h"
#include "notes/lost_ways.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool joined(const struct tokens *tokens, size_t i) {
    return i > 0 && i < tokens->count && tokens->at[i - 1].stop == STOP_NONE;
}

static bool is_end(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i - 1].stop != STOP_NONE;
}

// "By the dog", "by mistake", "on us", "from me", "years ago", "in the move": who, how or when; how many
// tokens.
static size_t circumstance(const struct tokens *tokens, size_t i) {
    if (!joined(tokens, i)) return 0;
    if (ANY(tokens, i, "by") && ANY(tokens, i + 1, "mistake", "accident")) return 2;
    if (ANY(tokens, i, "on", "from") && ANY(tokens, i + 1, "us", "me", "him", "her", "them")) return 2;
    if (ANY(tokens, i, "years", "ages", "long") && ANY(tokens, i + 1, "ago", "since")) return 2;
    if (ANY(tokens, i, "somewhere", "someplace", "once", "anyway")) return 1;
    return 0;
}

// Who would have it: "ended up with my sister", "went to the other owner".
static bool is_keeper(const struct tokens *tokens, size_t i) {
    while (ANY(tokens, i, "the", "my", "our", "his", "her", "their", "some", "another", "other", "a", "last",
               "first", "old", "previous", "next", "former", "original"))
        i++;
    return ANY(tokens, i, "sister", "brother", "cousin", "aunt", "uncle", "mother", "father", "mom", "mum",
               "dad", "son", "daughter", "niece", "nephew", "neighbor", "neighbour", "ex", "husband", "wife",
               "grandson", "granddaughter", "kids", "owner", "owners", "seller", "buyer", "family", "friend",
               "someone", "somebody", "people", "tenants", "bidder", "dealer");
}

// Where what is thrown out goes.
static size_t to_the_bin(const struct tokens *tokens, size_t i) {
    static const char *const ways[] = {
        "in the trash",         "into the trash",       "in the garbage",      "in the bin",
        "into the bin",         "in the recycling",     "to the dump",         "to the landfill",
        "in the skip",          "in the dumpster",      "in the rubbish",      "out with the trash",
        "out with the garbage", "out with the rubbish", "out with the papers", "out with the recycling",
        "down the drain",       "down the sink",        "up the vacuum",       "overboard"};
    return token_longest(tokens, i, ways, COUNT(ways));
}

// "Thrown out", "tossed", "recycled by mistake", behind a word of being or getting.
static size_t done_away(const struct tokens *tokens, size_t i) {
    static const char *const acts[] = {"thrown",  "tossed",  "chucked",   "pitched",   "recycled", "binned",
                                       "trashed", "junked",  "dumped",    "swallowed", "vacuumed", "hoovered",
                                       "stolen",  "pinched", "discarded", "flushed"};
    if (!AMONG(tokens, i, acts)) return 0;
    size_t at = i + 1;
    bool by_itself =
        !ANY(tokens, i, "thrown", "tossed", "pitched", "vacuumed", "pinched", "dumped", "flushed");
    if (joined(tokens, at)) {
        size_t bin = to_the_bin(tokens, at);
        if (bin) return at + bin - i;
        if (ANY(tokens, at, "out", "away", "up")) {
            at++;
            by_itself = true;
        }
    }
    size_t more = circumstance(tokens, at);
    if (!by_itself && !more && !is_end(tokens, at))
        return 0; // "was tossed in the wash", "pinched in the lid"
    if (ANY(tokens, i, "pinched", "flushed", "dumped") && !more) return 0;
    return at + more - i;
}

// "Rolled away", "walked off somewhere", "got away from us".
static size_t moved_off(const struct tokens *tokens, size_t i) {
    static const char *const moves[] = {"rolled", "walked",  "wandered", "strayed",   "flew",
                                        "blew",   "drifted", "floated",  "scampered", "sailed",
                                        "hopped", "sneaked", "snuck"};
    bool far = AMONG(tokens, i, moves) && ANY(tokens, i + 1, "away", "off") && joined(tokens, i + 1);
    if (far) {
        size_t more = circumstance(tokens, i + 2);
        // "walked off with the prize", "rolled off the line" has an object
        return more || is_end(tokens, i + 2) || ANY(tokens, i + 2, "and", "so", "but", "in", "at", "when")
                   ? 2 + more
                   : 0;
    }
    if (ANY(tokens, i, "got") && ANY(tokens, i + 1, "away") && ANY(tokens, i + 2, "from") &&
        joined(tokens, i + 2))
        return 4;
    if (ANY(tokens, i, "went", "gone", "goes") && joined(tokens, i + 1)) {
        size_t bin = to_the_bin(tokens, i + 1);
        return bin ? bin + 1 : 0;
    }
    return 0;
}

// "Never made it to me", "wasn't at the sale", "hasn't shown up", "is not part of the deal".
static size_t never_here(const struct tokens *tokens, size_t i) {
    static const char *const nots[] = {"never", "didn't", "didnt", "hasn't", "haven't", "hasnt", "havent"};
    static const char *const arrivals[] = {
        "made it to", "make it to", "got to me",     "get to me",     "came to me",    "come to me",
        "came along", "come along", "turned up",     "turn up",       "shown up",      "show up",
        "showed up",  "surfaced",   "surface",       "been found",    "came home",     "come home",
        "come back",  "came back",  "make the trip", "made the trip", "make the move", "made the move"};
    static const char *const beings[] = {"wasn't", "weren't", "wasnt", "werent",
                                         "isn't",  "aren't",  "isnt",  "arent"};
    static const char *const parts_of[] = {
        "part of the deal", "part of the sale", "part of this sale",  "part of this listing",
        "part of the lot",  "for sale with it", "going with it",      "coming with it",
        "at the sale",      "at the auction",   "at the estate sale", "in the carton",
        "in the drawer",    "in the house",     "in the lot",         "in the carry case",
        "in its case",      "with the rest",    "among the things",   "around any more",
        "around anymore",   "here any more",    "here anymore"};
    if (AMONG(tokens, i, nots) || (ANY(tokens, i, "did", "has", "have") && ANY(tokens, i + 1, "not"))) {
        size_t at = i + (AMONG(tokens, i, nots) ? 1 : 2);
        if (ANY(tokens, at, "did", "ever", "yet", "even")) at++;
        size_t n = joined(tokens, at) ? token_longest(tokens, at, arrivals, COUNT(arrivals)) : 0;
        if (!n) return 0;
        at += n;
        if (ANY(tokens, at - 1, "to")) { // "made it to the sale", "to me"
            if (ANY(tokens, at, "the", "my", "our")) at++;
            at++;
        }
        return at - i;
    }
    bool apart = ANY(tokens, i, "is", "are", "was", "were") && ANY(tokens, i + 1, "not");
    if (!apart && !AMONG(tokens, i, beings)) return 0;
    size_t at = i + (apart ? 2 : 1),
           n = joined(tokens, at) ? token_longest(tokens, at, parts_of, COUNT(parts_of)) : 0;
    return n ? at + n - i : 0;
}

size_t lost_ways_behind(const struct tokens *tokens, size_t i) {
    enum { LEADS_MOST = 5 };
    size_t at = i, n = never_here(tokens, i);
    bool led = false, got = false;
    if (n) return n;
    for (; at < i + LEADS_MOST && at < tokens->count; at++) {
        if (at > i && !joined(tokens, at)) return 0;
        if ((n = moved_off(tokens, at)) != 0) return at + n - i;
        if (led && (n = done_away(tokens, at)) != 0) return at + n - i;
        if (ANY(tokens, at, "ended", "wound") && ANY(tokens, at + 1, "up")) {
            size_t bin = to_the_bin(tokens, at + 2);
            if (bin) return at + 2 + bin - i;
            if (ANY(tokens, at + 2, "with") && is_keeper(tokens, at + 3)) return at + 3 - i;
            return 0;
        }
        if (got && ANY(tokens, at, "eaten", "et") && ANY(tokens, at + 1, "by")) return at + 2 - i;
        bool be = ANY(tokens, at, "is", "are", "was", "were", "been", "got", "gets", "has", "have", "had",
                      "must", "must've");
        led |= be;
        got |= ANY(tokens, at, "got", "was", "were", "been");
        if (!be && !ANY(tokens, at, "just", "then", "long", "since", "sadly", "somehow", "apparently",
                        "probably", "also", "both", "all", "itself", "long", "later", "always", "once"))
            return 0;
    }
    return 0;
}

// "The", "its", "that": what stands between a verb and the part.
static size_t owner_at(const struct tokens *tokens, size_t i) {
    return joined(tokens, i) && ANY(tokens, i, "the", "its", "their", "that", "his", "her") ? 1 : 0;
}

// Somebody else than the seller, near in front: what they kept is not here.
static bool is_by_another(const struct tokens *tokens, size_t i) {
    enum { FAR = 7 };
    if (i == 0 || ANY(tokens, i - 1, "i", "we", "i've", "we've", "and", "to")) return false;
    for (size_t k = i; k > 0 && i - k < FAR && (k == i || tokens->at[k - 1].stop == STOP_NONE); k--)
        if (ANY(tokens, k - 1, "whoever", "owner", "owners", "sister", "brother", "cousin", "someone",
                "somebody", "seller", "family", "ex", "tenant", "tenants", "neighbor", "neighbour", "kids",
                "she", "he", "they", "son", "daughter", "niece", "nephew", "mother", "aunt", "uncle"))
            return true;
    return false;
}

// "(Threw the) manual out", "(took the) lid off": a word of going behind the part; into the bin, or any.
static bool goes_behind(const struct tokens *tokens, size_t i, bool binned) {
    enum { FAR = 4 };
    for (size_t k = i + 1; k < i + FAR && joined(tokens, k); k++) {
        if (ANY(tokens, k, "out", "away") || to_the_bin(tokens, k)) return true;
        if (!binned && ANY(tokens, k, "off", "apart", "down", "to", "for", "on", "up", "in", "clean", "and"))
            return true;
    }
    return false;
}

size_t lost_ways_before(const struct tokens *tokens, size_t i) {
    static const char *const throws[] = {"threw",    "tossed",  "chucked", "pitched",   "binned",
                                         "recycled", "trashed", "junked",  "misplaced", "mislaid"};
    static const char *const searches[] = {
        "never did find",
        "never did get",
        "never did have",
        "never found",
        "never could find",
        "could never find",
        "can't locate",
        "couldn't locate",
        "cannot locate",
        "haven't found",
        "haven't located",
        "still looking for",
        "gave up looking for",
        "gave up on finding",
        "looked everywhere for",
        "looked all over for",
        "no idea what happened to",
        "don't know what happened to",
        "no clue what happened to",
        "no idea what became of",
        "don't know where",
        "no idea where",

    };
    static const char *const wants[] = {
        "have to find your own",   "have to buy your own", "have to buy a",
        "have to get a",           "have to get your own", "have to supply a",
        "have to supply your own", "have to track down a", "find your own",
        "supply your own",         "buy your own",         "have to come up with a"};
    size_t n = token_longest(tokens, i, searches, COUNT(searches));
    if (n) {
        size_t owner = owner_at(tokens, i + n);
        if (!owner && joined(tokens, i + n) && ANY(tokens, i + n, "a", "any", "an")) owner = 1;
        return owner ? n + owner : 0;
    }
    if ((n = token_longest(tokens, i, wants, COUNT(wants))) != 0) return joined(tokens, i + n) ? n : 0;
    if (AMONG(tokens, i, throws) && joined(tokens, i + 1)) {
        bool out = ANY(tokens, i + 1, "out", "away");
        size_t at = i + 1 + (out ? 1 : 0), owner = owner_at(tokens, at);
        bool needs = ANY(tokens, i, "threw", "tossed", "chucked", "pitched");
        return owner && (out || !needs || goes_behind(tokens, at + owner, true)) ? at + owner - i : 0;
    }
    bool kept = ANY(tokens, i, "kept", "took", "snaffled", "swiped") ||
                (ANY(tokens, i, "held") && ANY(tokens, i + 1, "on") && ANY(tokens, i + 2, "to"));
    bool ended = ANY(tokens, i, "ended", "wound") && ANY(tokens, i + 1, "up") && ANY(tokens, i + 2, "with");
    if ((kept || ended) && is_by_another(tokens, i)) {
        size_t at = i + (ANY(tokens, i, "kept", "took", "snaffled", "swiped") ? 1 : 3),
               owner = owner_at(tokens, at);
        return owner && !goes_behind(tokens, at + owner, false) ? at + owner - i : 0;
    }
    return 0;
}
