// SPDX-License-Identifier: MIT
// Places of a fault: "on the inside rim", "where it bends", "bottom right", "mostly in the margins", behind
// the fault or before it.
#include <string.h>

#include "notes/any.h"
#include "notes/fault_size.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { PLACE_WORDS_MOST = 6, GAP_MOST = 6 };

bool spot_preposition(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "on",         "in",         "at",      "near",    "by",   "under",   "along",
        "around",     "inside",     "round",   "across",  "over", "behind",  "beside",
        "underneath", "between",    "below",   "above",   "down", "up",      "to",
        "through",    "throughout", "of",      "from",    "off",  "next to", "close to",
        "towards",    "toward",     "against", "beneath", "into", "onto"};
    return token_among(tokens, i, words, COUNT(words)) &&
           !(i > 0 && ANY(tokens, i, "near", "off") && // of a horse or cart
             token_is(tokens, i + 1, "side") && spot_article(tokens, i - 1)) &&
           !(ANY(tokens, i, "down", "to") && spot_tells_depth(tokens, i));
}

bool spot_adverb(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"inside",     "outside", "underneath", "throughout",
                                        "everywhere", "overall", "lengthwise", "lengthways"};
    return token_among(tokens, i, words, COUNT(words));
}

bool spot_article(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"the",  "a",   "an", "its",   "one",  "both", "this", "that",
                                        "each", "all", "my", "their", "it's", "his",  "her"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool ends_place(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {
        "is",   "are",     "was",   "has",  "have", "but", "and",     "with",   "where",
        "that", "which",   "so",    "you",  "i",    "it",  "there",   "can",    "shows",
        "from", "about",   "maybe", "just", "only", "not", "no",      "like",   "when",
        "if",   "because", "or",    "we",   "they", "due", "nothing", "unless", "until"};
    const struct tokens *tokens = &r->note->tokens;
    return tokens->at[i].stop != STOP_NONE || tokens->at[i].kind == TOKEN_FIGURE ||
           token_among(tokens, i, words, COUNT(words)) || (r->scope.fault[i] && !r->part[i]);
}

// "At both ends", "on one side": which of them.
static bool tells_how_many(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"both", "each", "one", "every"};
    return token_among(tokens, i, words, COUNT(words));
}

bool spot_side(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"front", "back", "left", "right", "top", "bottom", "rear", "other"};
    return token_among(tokens, i, words, COUNT(words));
}

// "From the top edge right down to the grille", "top to bottom": the end of such a range from `i` on, with
// the place behind it ("on the back panel"); 0 if none.
static size_t range_behind(const struct fault_reader *r, size_t i) {
    static const char *const ways[] = {"down", "up",      "right",  "all",  "the",
                                       "way",  "through", "across", "over", "out"};
    enum { WAYS_MOST = 5 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i + (token_is(tokens, i, "from") ? 1 : 0), way = 0;
    while (spot_article(tokens, at)) at++;
    size_t first = at;
    while (at < tokens->count && at < first + WAYS_MOST && r->part[at] && !spot_preposition(tokens, at)) at++;
    if (at == first) return 0;
    while (way < WAYS_MOST && token_among(tokens, at, ways, COUNT(ways))) at++, way++;
    if (!token_is(tokens, at, "to") && !token_is(tokens, at, "into")) return 0;
    at++;
    while (spot_article(tokens, at)) at++;
    size_t second = at;
    while (at < tokens->count && at < second + WAYS_MOST && r->part[at] && !spot_preposition(tokens, at))
        at++;
    return at > second ? at : 0;
}

// "Chip to the base and handle has a crack": the second part has a statement of its own.
static bool opens_statement(const struct fault_reader *r, size_t i) {
    static const char *const verbs[] = {
        "has",    "have",   "had",     "is",      "are",     "was",     "were",   "needs", "got",   "shows",
        "looks",  "isn't",  "won't",   "doesn't", "does",    "feels",   "aren't", "lacks", "wants", "missing",
        "gone",   "won't",  "wont",    "doesnt",  "sticks",  "wobbles", "leaks",  "works", "runs",  "opens",
        "fits",   "moves",  "turns",   "closes",  "hasn't",  "haven't", "holds",  "comes", "seems", "hangs",
        "slides", "wasn't", "weren't", "can't",   "doesn't", "rattles", "shuts",  "locks"};
    enum { WORDS_MOST = 3 };
    size_t at = i;
    while (at < i + WORDS_MOST && at < r->note->tokens.count && r->note->tokens.at[at].stop == STOP_NONE &&
           !token_among(&r->note->tokens, at, verbs, COUNT(verbs)) && !spot_preposition(&r->note->tokens, at))
        at++;
    return at > i && token_among(&r->note->tokens, at, verbs, COUNT(verbs));
}

static bool tells_which(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"first", "last",  "inner", "outer", "upper",  "lower", "left",
                                        "right", "front", "rear",  "top",   "bottom", "back"};
    return tokens->at[i].stop == STOP_NONE && token_among(tokens, i, words, COUNT(words));
}

// "Across the shell when you hold it up": a noun of no list, where the words go on about something else.
static bool goes_across(const struct fault_reader *r, size_t i, size_t noun) {
    const struct tokens *tokens = &r->note->tokens;
    return ANY(tokens, i, "across", "along") && noun == i + 2 && spot_article(tokens, i + 1) &&
           spot_plain_noun(r, noun) &&
           !ANY(tokens, noun, "room", "yard", "board", "house", "street", "road", "shop", "way", "hall",
                "world", "country", "years", "line", "lines", "kitchen", "garage") &&
           (noun + 1 >= tokens->count || tokens->at[noun + 1].stop != STOP_NONE ||
            ANY(tokens, noun + 1, "when", "that", "which", "if", "but", "and", "where", "you"));
}

// A place phrase behind `i`: "on the inside rim", "near the base", "inside". Its words without the first
// preposition.
static size_t place_behind(const struct fault_reader *r, size_t i, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    if (i >= tokens->count) return 0;
    if (place_is_of_room(tokens, i) || place_is_of_doer(r, i)) return 0;
    size_t clause = place_in_clause(tokens, i), hour = place_dial_figure(r, i);
    if (clause || hour) {
        *from = hour ? hour - 1 : token_is(tokens, i, "where") ? i : i - 1;
        return clause ? clause : hour;
    }
    if (spot_adverb(tokens, i) && (i + 1 >= tokens->count || ends_place(r, i + 1))) {
        *from = i;
        return i + 1;
    }
    bool dead = token_is(tokens, i, "dead") && ANY(tokens, i + 1, "centre", "center", "middle");
    bool scattered = token_is(tokens, i, "in") && ANY(tokens, i + 1, "places", "spots", "patches");
    size_t more, patch = place_of_patch(tokens, i);
    if (patch) return place_behind(r, patch, from);
    if (scattered || dead || token_phrase(tokens, i, "all over") || token_phrase(tokens, i, "all around")) {
        size_t of = scattered && tokens->at[i + 1].stop == STOP_NONE ? place_behind(r, i + 2, &more) : 0;
        *from = of ? more : i; // "gone in spots along the bottom"
        return of ? of : i + 2;
    }
    size_t range = range_behind(r, i);
    if (range) {
        size_t last = place_behind(r, range, &more);
        *from = i;
        return last ? last : range;
    }
    if (token_is(tokens, i, "off") && token_phrase(tokens, i + 1, "all over"))
        return place_behind(r, i + 1, from); // "flaking off all over"
    bool about = token_is(tokens, i, "about") && token_is(tokens, i + 1, "the") && i + 2 < tokens->count &&
                 r->part[i + 2];
    if ((!about && !spot_preposition(tokens, i)) || token_phrase(tokens, i, "at some")) return 0;
    if (ANY(tokens, i, "on", "in", "at") && ANY(tokens, i + 1, "as", "because", "since", "when", "until"))
        return 0; // "taped on as the clip broke"
    static const char *const idioms[] = {
        "by hand",     "by eye",        "to hand",        "at hand",       "in half",      "in two",
        "in use",      "to side",       "to end",         "in place",      "at a glance",  "in hand",
        "by side",     "in one piece",  "in case",        "to speak",      "to mention",   "of note",
        "in pieces",   "of use",        "on hand",        "at some point", "at one point", "at some time",
        "at one time", "at the moment", "at the time",    "at present",    "on occasion",  "in time",
        "in the past", "at some stage", "by now",         "at times",      "to heck",      "to hell",
        "to buggery",  "to bits",       "to pieces",      "to death",      "to shreds",    "to blazes",
        "to nothing",  "to ribbons",    "to high heaven", "in marker",     "in ink",       "in pen",
        "in pencil",   "in crayon",     "in biro",        "in chalk",      "in ballpoint", "in felt tip",
        "in capitals"};
    bool corners = token_is(tokens, i + 1, "two") && i + 2 < tokens->count &&
                   tokens->at[i + 1].stop == STOP_NONE &&
                   (r->part[i + 2] || token_phrase(tokens, i + 2, "of the")); // "in two corners"
    if (!corners && token_first(tokens, i, idioms, COUNT(idioms))) return 0;
    if (token_is(tokens, i, "from") && i > 0 &&
        (token_is(tokens, i - 1, "apart") || token_is(tokens, i - 1, "aside")))
        return 0;
    size_t share = spot_share_of(tokens, i + 1); // "from about half of the rim"
    if (token_is(tokens, i, "from") && !spot_article(tokens, i + 1) && !share)
        return 0; // "ring marks from cups"
    static const char *const bared[] = {
        "copper", "brass",  "metal",   "wood",       "tin",    "steel", "iron",  "card",
        "canvas", "primer", "backing", "base metal", "board",  "weft",  "white", "stubs",
        "stumps", "knots",  "threads", "points",     "yellow", "gray",  "grey",  "brown",
        "black",  "pink",   "green",   "red",        "silver", "gold",  "clear"};
    static const char *const down[] = {"worn", "rubbed", "through", "polished", "down", "chipped", "cleaned"};
    if (token_is(tokens, i, "to") && i > 0 && token_among(tokens, i - 1, down, COUNT(down)) &&
        token_longest(tokens, i + 1 + (spot_article(tokens, i + 1) ? 1 : 0), bared, COUNT(bared)))
        return 0; // "plate worn to copper"
    if (i > 0 && token_is(tokens, i, "by") && token_is(tokens, i - 1, "replaced")) return 0;
    if (i > 0 && token_is(tokens, i, "in") && spot_is_stuff(tokens, i + 1) &&
        ANY(tokens, i - 1, "recovered", "covered", "redone", "upholstered", "reupholstered", "wrapped"))
        return 0;                                                             // "recovered in felt"
    if (token_is(tokens, i, "to") && token_is(tokens, i + 1, "be")) return 0; // "turned out to be"
    if (token_is(tokens, i, "of") && ANY(tokens, i + 1, "a", "an", "half", "about") &&
        ANY(tokens, i + 2, "inch", "foot", "an", "a"))
        return 0;                                               // "a tear of an inch in the margin"
    if (ANY(tokens, i + 1, "as", "because", "since")) return 0; // "not plugged in as the flex is bare"
    size_t at = share ? share : i + 1, last = 0;
    static const char *const kept[] = {"inside", "next", "close", "underneath", "of"};
    static const char *const leading[] = {"up", "down", "over", "round", "out"}; // "up near the top"
    if (at < tokens->count && at == i + 1 && spot_preposition(tokens, at) &&
        !token_among(tokens, at, kept, COUNT(kept)) && !token_among(tokens, i, kept, COUNT(kept)))
        return token_among(tokens, i, leading, COUNT(leading)) ? place_behind(r, i + 1, from) : 0;
    static const char *const sizes[] = {"size", "shape", "width", "length", "type", "sort",
                                        "kind", "bit",   "touch", "trace",  "lot",  "spot",
                                        "hint", "half",  "color", "depth"};
    if (token_is(tokens, i, "of") && i > 0 && token_among(tokens, i - 1, sizes, COUNT(sizes))) return 0;
    if (token_is(tokens, i, "of") && ANY(tokens, i + 1, "old", "dried", "spilled", "spilt") &&
        ANY(tokens, i - 1, "ring", "rings", "crust", "line", "film", "residue", "smear", "splash", "patch",
            "coat"))
        return 0; // "a ring of old tea in the bottom"
    static const char *const losing[] = {"missing", "gone",    "lost",    "broken", "flaking",
                                         "flaked",  "chipped", "peeling", "peeled", "rubbed",
                                         "worn",    "scraped", "coming",  "come"};
    bool lost = i > 0 && token_among(tokens, i - 1, losing, COUNT(losing)) && ANY(tokens, i, "off", "from");
    bool between = token_is(tokens, i, "between");
    bool near = !ANY(tokens, i, "on", "in", "at", "of", "to", "off", "onto", "into") && !about && !lost;
    while (at < tokens->count && (spot_article(tokens, at) || token_is(tokens, at, "every"))) at++;
    bool few = token_is(tokens, at, "few") || token_is(tokens, at, "couple"); // "on a few blades"
    size_t start = at > i + 1 && (few || tells_how_many(tokens, at - 1)) ? at - 1 : at;
    for (; at < tokens->count && at < start + PLACE_WORDS_MOST; at++) {
        if (last && place_is_of_doer(r, at)) break;
        if (last && ANY(tokens, at, "size") && ANY(tokens, at + 1, "of"))
            break; // "near the foot the size of"
        if (spot_preposition(tokens, at) && last && at + 1 < tokens->count) {
            size_t next = at + 1;
            while (next < tokens->count && spot_article(tokens, next)) next++;
            size_t one = spot_one_of(r, next);
            if (one) last = one; // "on the foot of the left one"
            if (one || !r->part[next < tokens->count ? next : at]) break;
            continue;
        }
        if (token_is(tokens, at, "and") && last && r->part[at + 1 < tokens->count ? at + 1 : at] &&
            !(at + 2 < tokens->count && r->scope.fault[at + 2]) && !opens_statement(r, at + 1))
            continue;
        if (token_is(tokens, at, "and") && at > start && tells_which(tokens, at - 1) &&
            tells_which(tokens, at + 1) && at + 2 < tokens->count && r->part[at + 2]) {
            last = at + 3; // "the first and last pages"
            break;
        }
        size_t piece = spot_one_of(r, at);
        if (piece && (last = piece) > 0) break; // "the back one"
        if (spot_article(tokens, at) && last) continue;
        if (ends_place(r, at)) break;
        if (r->part[at]) last = at + 1;
    }
    bool side =
        !last && start > i + 1 && ANY(tokens, start, "left", "right") &&
        (start + 1 >= tokens->count || tokens->at[start].stop != STOP_NONE || ends_place(r, start + 1));
    if (side) last = start + 1; // "cut down on the left, it goes into the print"
    if (!last && start > i + 1) last = spot_one_of(r, start); // "inside the left one", "on the right boot"
    bool within = token_is(tokens, i, "inside") &&
                  ANY(tokens, i + 1, "the", "its") && // "rust inside the teapot"
                  start < tokens->count && r->note->taken[start] != TAKEN_TYPE;
    if (!last && (lost || between || within) && start > i + 1 && spot_plain_noun(r, start)) last = start + 1;
    if (!last && goes_across(r, i, start)) last = start + 1;
    if (!last && spot_adverb(tokens, i) && // "dirt inside all three", "a spot inside smaller than a pea"
        !ANY(tokens, i + 1, "the", "its", "a", "an", "my", "his", "her", "their", "this", "that", "of")) {
        *from = i;
        return i + 1;
    }
    if (!last) return 0;
    *from = near ? i : start;
    size_t figure = place_dial_figure(r, last); // "in the crystal near the 9"
    return figure ? figure : last;
}

static bool is_thing(const struct fault_reader *r, size_t i) {
    const struct token *token = &r->note->tokens.at[i];
    struct word_entry entry;
    return r->note->book && wordbook_find(r->note->book, token->one, strlen(token->one), &entry) &&
           (entry.uses & (1u << USE_THING)) && !(entry.uses & ((1u << USE_PART) | (1u << USE_PLACE)));
}

// "Rim: two chips", "Lock - broken", "The lock? Broken": a part by itself before the stop at `start` - 1.
static bool is_heading(const struct fault_reader *r, size_t start) {
    const struct tokens *tokens = &r->note->tokens;
    if (start < 2 || !r->part[start - 2] || r->note->taken[start - 2] == TAKEN_TYPE) return false;
    size_t lead = start - 2; // "I turned it under the lamp: no chips"
    while (lead > 0 && (r->part[lead - 1] || spot_article(tokens, lead - 1))) lead--;
    bool light = lead > 1 && ANY(tokens, lead - 1, "under", "to", "against", "by", "with") &&
                 tokens->at[lead - 2].stop == STOP_NONE;
    if (light) return false;
    if (token_is(tokens, start - 1, ":")) return tokens->at[start - 1].stop == STOP_CLAUSE;
    if (tokens->at[start - 1].stop != STOP_CLAUSE && !token_is(tokens, start - 1, "?")) return false;
    size_t at = start - 1;
    while (at > 0 && (r->part[at - 1] || spot_article(tokens, at - 1))) at--;
    if (at + 2 == start && at == 0 && is_thing(r, at)) return false; // "Camera: top plate dented"
    return at == 0 || tokens->at[at - 1].stop != STOP_NONE;
}

// "On the bottom there's a chip", "inside: rust", "underneath, two chips".
bool spot_place_before(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_clause_start(&r->scope, i);
    if (start > 1 && token_is(tokens, start - 1, "but") && token_is(tokens, start - 2, "all"))
        start = scope_clause_start(&r->scope, start - 2); // "strings: all but two broken"
    for (size_t at = start; at < i; at++)
        if (r->scope.stance[at] & STANCE_WITHDRAWN) start = at + 1;
    if (is_heading(r, start)) { // "rim: two chips"
        *to = start - 1;
        *from = start - 2;
        while (*from > 0 && r->part[*from - 1]) --*from;
        return true;
    }
    static const char *const stays[] = {"stood",     "sat",     "kept", "hung",  "lived", "stored",
                                        "displayed", "sitting", "left", "spent", "found", "bought",
                                        "standing",  "hanging", "came", "from"};
    for (size_t at = start; at < i; at++)
        if (token_among(tokens, at, stays, COUNT(stays)))
            return false;   // where it stood, not where the fault is
    size_t segment = start; // behind the last comma or "and"
    for (size_t at = start; at < i; at++)
        if (tokens->at[at].stop == STOP_COMMA || token_is(tokens, at, "and")) segment = at + 1;
    while (segment < i && spot_article(tokens, segment)) segment++;
    size_t n = place_behind(r, segment, from);
    if (!n && segment > start) { // "underneath, two chips": a segment that is a place and nothing else
        n = place_behind(r, start, from);
        if (n && n + 1 < segment) n = 0;
    }
    if (!n || n > i) return false;
    for (size_t k = n; k < i; k++) // another fault in between has the place
        if (r->scope.fault[k] && !r->part[k]) return false;
    *to = n;
    return true;
}

static size_t behind_hit(const struct fault_reader *r, size_t i) {
    static const char *const skipped[] = {
        "right",   "mostly",  "mainly",   "especially", "maybe", "just", "only",    "also", "marks",
        "mark",    "or",      "two",      "spots",      "spot",  "all",  "about",   "here", "there",
        "visible", "showing", "starting", "you",        "can",   "see",  "running", "going"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    if (token_phrase(tokens, at, "to speak of")) at += token_phrase(tokens, at, "to speak of");
    for (size_t n = 0; n < 4 && at < tokens->count && token_among(tokens, at, skipped, COUNT(skipped)); n++)
        at++;
    return at;
}

// Places behind the next faults of the same list belong to all of it only where nothing else stands between:
// "no chips or cracks on the rim".
static size_t place_of_list(const struct fault_reader *r, size_t i, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    bool joined = false;
    for (size_t n = 0; n < 8 && at < tokens->count; n++, at++) {
        if (token_is(tokens, at, "or") || token_is(tokens, at, "and") || tokens->at[at].stop == STOP_COMMA) {
            joined = true;
            continue;
        }
        bool denied = r->scope.stance[at] & (STANCE_DENIED | STANCE_NONE_SEEN);
        if (r->scope.fault[at] && joined && !denied) return 0; // "no loose pages, name on the flyleaf"
        if (r->scope.fault[at] && joined) continue;
        break;
    }
    return joined ? place_behind(r, at, from) : 0;
}

// "Engraved with a big M in the middle": a place further on in the clause, before any other fault.
static size_t place_further(const struct fault_reader *r, size_t i, size_t *from) {
    enum { FURTHER = 7 };
    static const char *const others[] = {"and",   "but",  "apart", "aside",   "except",
                                         "other", "just", "only",  "besides", "well"};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = i; at < tokens->count && at < i + FURTHER; at++) {
        if (tokens->at[at].stop != STOP_NONE || token_among(tokens, at, others, COUNT(others)) ||
            (r->scope.fault[at] && !(at > i && spot_inscribes(tokens, at)))) // "initials AB are engraved on"
            return 0;
        size_t to = place_behind(r, at, from);
        if (to) return to;
    }
    return 0;
}

size_t spot_place_at(const struct fault_reader *r, size_t i, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    static const char *const links[] = {"it",     "it's",   "its", "is",      "was",
                                        "that's", "should", "be",  "actually"};
    while (i < tokens->count && tokens->at[i].stop == STOP_COMMA) i++;
    size_t place = place_behind(r, i, from);
    if (place) return place;
    size_t link = i; // "scratch that, it's the left side"
    while (link < i + 3 && token_among(tokens, link, links, COUNT(links))) link++;
    if (link == i) return 0;
    if ((place = place_behind(r, link, from)) != 0) return place;
    while (spot_article(tokens, link)) link++;
    static const char *const looks[] = {"part",  "pattern", "design", "style",      "glaze",
                                        "grain", "light",   "photo",  "reflection", "shadow",
                                        "print", "texture", "mold",   "mould"};
    if (token_among(tokens, link, looks, COUNT(looks))) return 0; // "it's part of the pattern"
    *from = link;
    size_t last = 0;
    for (; link < *from + PLACE_WORDS_MOST && link < tokens->count && !ends_place(r, link); link++)
        if (r->part[link]) last = link + 1;
    return last == link ? last : 0;
}

// "Wear in two places on the lid": the number is told by itself.
static size_t behind_places(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    bool places = token_is(tokens, i + 2, "places") || token_is(tokens, i + 2, "spots");
    return token_is(tokens, i, "in") && places ? i + 3 : i;
}

// "Glued", "stuck", "put": what is so back is where it was.
static bool is_put(const char *word) {
    size_t n = strlen(word);
    return !strcmp(word, "stuck") || !strcmp(word, "put") || !strcmp(word, "sewn") ||
           (n > 4 && !strcmp(word + n - 2, "ed"));
}

// "Brown stain top left": a corner without its preposition.
size_t spot_bare_place(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"top",  "bottom", "upper",  "lower",  "left",   "right",  "front",
                                        "back", "rear",   "center", "centre", "middle", "corner", "edge"};
    const struct tokens *tokens = &r->note->tokens;
    size_t to = i, sides = place_bare_sides(tokens, i);
    if (sides) return sides;
    while (to < tokens->count && to < i + 3 && token_among(tokens, to, words, COUNT(words))) to++;
    if (i > 0 && token_is(tokens, i, "right") && ANY(tokens, i + 1, "back", "down", "up", "home", "round") &&
        ANY(tokens, i - 1, "slide", "open", "close", "fold", "push", "pull", "go", "wind", "move", "shut",
            "turn", "screw", "lift", "slides", "opens", "goes", "come"))
        return 0; // "doesn't slide right back"
    bool side = to > i;
    if (to == i + 1 && token_is(tokens, i, "left") && i > 0 && tokens->at[i - 1].stop == STOP_NONE)
        return 0; // "no smell left"
    if (to == i + 1 && token_is(tokens, i, "back") && i > 0 &&
        (is_put(tokens->at[i - 1].fold) || spot_way_back(tokens, i)))
        return 0; // "been off and glued back"
    while (side && to < tokens->count && to < i + 3 && r->part[to] && !r->scope.fault[to]) to++;
    bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE;
    bool two =
        to == i + 2 && token_among(tokens, i + 1, words, COUNT(words)); // "top left through to the metal"
    return side && (ends || two) ? to : 0;
}

// "Small tear, 8 mm, at the hem", "three holes, tiny, at one end", "a stain, tea coloured, on the back": the
// comma behind a size, a degree or a color that stands between commas; 0 if none does.
static size_t behind_size(const struct fault_reader *r, size_t i) {
    enum { WORDS_MOST = 5 };
    static const char *const tells[] = {"colored",  "coloured", "sized", "shaped", "size",     "pinhead",
                                        "pinheads", "pin",      "old",   "clean",  "hairline", "neatly",
                                        "brown",    "black",    "yes",   "one"};
    const struct tokens *tokens = &r->note->tokens;
    bool tell = false; // "a hole, just the one, near the label"
    size_t n, most = WORDS_MOST;
    bool like = ANY(tokens, i, "size") || token_phrase(tokens, i, "the size of") ||
                token_phrase(tokens, i, "about the size of"); // "size of a tea cup": no part of the thing
    if (like) most += 3;
    for (size_t at = i; at < tokens->count && at < i + most; at++) {
        if (tokens->at[at].stop == STOP_COMMA) return tell ? at : 0;
        if (tokens->at[at].stop != STOP_NONE || (r->part[at] && !like) ||
            (r->scope.fault[at] && !r->part[at]))
            return 0;
        tell |= tokens->at[at].kind == TOKEN_FIGURE || token_among(tokens, at, tells, COUNT(tells)) ||
                degree_word(r, at, &n) || degrees_number(tokens, at) > 1; // "four or five, near one end"
    }
    return 0;
}

// "A small tear, bottom right", "foxing, mostly in the margins": the same in a clause of its own.
static size_t bare_clause(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const adverbs[] = {"mostly",  "mainly",     "just",  "only",         "right", "all",
                                          "chiefly", "largely",    "both",  "one",          "two",   "each",
                                          "three",   "especially", "again", "particularly", "but",   "low",
                                          "down",    "up",         "high",  "halfway"};
    static const char *const others[] = {"of", "from", "to", "in", "up", "down", "over", "by", "through"};
    static const char *const fills[] = {"or", "so", "of", "them", "few", "several", "about", "maybe", "more"};
    const struct tokens *tokens = &r->note->tokens;
    if (token_is(tokens, i, "though")) i++;
    if (i >= tokens->count || tokens->at[i].stop != STOP_COMMA) return 0;
    size_t sized = behind_size(r, i + 1);
    if (sized) i = sized;
    *from = i + 1;
    size_t bare = spot_bare_place(r, i + 1), at = i + 1, n;
    if (bare) return bare;
    if (i + 2 < tokens->count && r->part[i + 1] && token_is(tokens, i + 2, "only") &&
        (i + 3 >= tokens->count || tokens->at[i + 3].stop != STOP_NONE))
        return i + 2; // "fungus, edge only"
    while (token_among(tokens, at, adverbs, COUNT(adverbs)) || token_is(tokens, at, "a") ||
           degree_word(r, at, &n))
        at += !token_among(tokens, at, adverbs, COUNT(adverbs)) && degree_word(r, at, &n) ? n : 1;
    if (at > i + 1 && ANY(tokens, at, "down", "up") && !spot_article(tokens, at + 1)) at++; // "low down near"
    size_t number = at; // "moth holes, four or so near one end"
    while (at < number + 4 && (degrees_number(tokens, at) || token_among(tokens, at, fills, COUNT(fills))))
        at++;
    bool counted = at > number;
    bool the = token_is(tokens, at + 1, "the") || ((sized || counted) && spot_article(tokens, at + 1));
    if (counted && !the) return 0;
    if (at == i + 1 && (token_among(tokens, at, others, COUNT(others)) || !the)) return 0;
    size_t to = place_behind(r, at, from);
    if (to && token_is(tokens, to, "only")) return to; // "on the back only"
    return to && (to >= tokens->count || tokens->at[to].stop != STOP_NONE) ? to : 0;
}

// "Scratched and flaking in the middle": one place for both.
static size_t place_of_both(const struct fault_reader *r, size_t i, size_t *from) {
    enum { LEAST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, i, "and") || i + 2 >= tokens->count || r->part[i + 1]) return 0;
    const char *word = tokens->at[i + 1].fold;
    size_t size = strlen(word);
    bool participle = size > LEAST && (text_same(word + size - 2, "ed") || text_same(word + size - 3, "ing"));
    return participle ? place_behind(r, i + 2, from) : 0;
}

// "Ink stains and scratches on the lid": of two faults that share a place, where none has an article or a
// number of its own.
static size_t place_of_pair(const struct fault_reader *r, const struct fault_hit *hit, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->to, n;
    if (!token_is(tokens, i, "and") || hit->kinds[0]->form != FAULT || hit->near) return 0;
    for (size_t k = hit->from + 1; k < hit->to; k++) // "ring around the collar" has its place
        if (r->part[k] && (spot_preposition(tokens, k - 1) || token_is(tokens, k - 1, "the"))) return 0;
    i++;
    while (degree_word(r, i, &n) && !r->scope.fault[i]) i += n;
    size_t end = i;
    while (end < tokens->count && end < i + 3 && r->scope.fault[end] && !r->part[end] &&
           !spot_preposition(tokens, end) && !token_is(tokens, end, "all"))
        end++;
    if (end == i || spot_article(tokens, i) || degrees_number(tokens, i)) return 0;
    if (hit->from > 0 && (spot_article(tokens, hit->from - 1) || degrees_number(tokens, hit->from - 1)))
        return 0;
    bool same = ((r->scope.stance[hit->from] ^ r->scope.stance[i]) & STANCE_DENIED) == 0;
    return same ? place_behind(r, behind_hit(r, end), from) : 0;
}

// "Seam at the base weeps": between what has the fault and what it does.
static size_t place_within(const struct fault_reader *r, const struct fault_hit *hit, size_t *from) {
    static const char *const words[] = {"at",    "on",     "in",    "near",  "by",
                                        "round", "around", "along", "under", "inside"};
    if (!hit->near || hit->to < hit->from + 4 ||
        !token_among(&r->note->tokens, hit->from + 1, words, COUNT(words)))
        return 0;
    size_t to = place_behind(r, hit->from + 1, from);
    return to && to < hit->to ? to : 0;
}

static size_t place_of(const struct fault_reader *r, const struct fault_hit *hit, size_t *from) {
    size_t sized = fault_size_behind(r, hit->to); // "hole (2 in) on the edge"
    size_t next = behind_places(r, sized ? sized : hit->to), to = place_behind(r, behind_hit(r, next), from);
    size_t last = hit->to - 1; // "pull on the" of its own words
    size_t own_place = to ? place_before_clause(r, hit, from) : 0;
    if (own_place) return own_place;
    if (!to && last > hit->from && token_phrase(&r->note->tokens, last, "all over")) {
        *from = last; // "dull gray all over", where "all" is of its own words
        return last + 2;
    }
    while (last > hit->from && spot_article(&r->note->tokens, last)) last--;
    if (!to && last > hit->from && spot_preposition(&r->note->tokens, last)) {
        to = place_behind(r, last, from); // "cracked through the base"
        if (to <= hit->to) to = 0;        // "rust inside"
        bool own = (*from == last && ANY(&r->note->tokens, last, "inside", "under", "underneath", "behind",
                                         "beneath", "near")) || // "rust inside the base"
                   (*from == last && to == last + 2 && ANY(&r->note->tokens, last, "in") &&
                    ANY(&r->note->tokens, last + 1, "places", "spots", "patches"));
        while (to && !own &&
               (*from < hit->to ||
                (spot_article(&r->note->tokens, *from) && !token_is(&r->note->tokens, *from + 1, "of"))))
            ++*from; // but "growing on one of the knobs"
    }
    bool named = !to && ANY(&r->note->tokens, hit->to - 1, "name", "initials") &&
                 ANY(&r->note->tokens, hit->to, "and") &&
                 ANY(&r->note->tokens, hit->to + 1, "number", "address", "date");
    if (named) to = place_behind(r, hit->to + 2, from); // "stencilled with a name and number on the side"
    if (!to && (to = place_bare_sides(&r->note->tokens, next)) != 0) *from = next;
    if (!to) to = place_further(r, next, from);
    if (!to && (r->scope.stance[hit->from] & (STANCE_DENIED | STANCE_NONE_SEEN)))
        to = place_of_list(r, hit->to, from);
    for (size_t k = hit->from + 1; !to && hit->near && k + 1 < hit->to; k++) { // "fungus … in the lens"
        to = place_behind(r, k, from);
        if (to && to < hit->to) to = 0;
    }
    if (!to) to = place_within(r, hit, from);
    if (!to && (to = spot_bare_place(r, next)) != 0) *from = next;
    if (!to) to = spot_narrowed(r, hit->to, from);
    if (!to) to = bare_clause(r, hit->to, from);
    if (!to) to = place_of_both(r, hit->to, from);
    if (!to) to = place_of_pair(r, hit, from);
    if (!to) to = place_in_brackets(r, hit->to, from);
    return to ? to : spot_said_later(r, hit, from);
}

// "Lid jammed, so no idea what it's like inside": a place that is not known is no place of the fault.
size_t spot_place_of(const struct fault_reader *r, const struct fault_hit *hit, size_t *from) {
    size_t to = place_of(r, hit, from);
    bool apart = to && *from >= hit->to && (r->scope.stance[*from] & STANCE_UNKNOWN) &&
                 !(r->scope.stance[hit->from] & STANCE_UNKNOWN);
    return apart ? 0 : to;
}
