// SPDX-License-Identifier: MIT
// Words of a fault that say something else where they stand: of another part, of what the dirt or the worm
// does, of a title, of a degree. Each is asked of a hit before it is one.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/place.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Engraved with a bird": a picture, and no letters of anybody.
static bool is_cut_picture(const struct fault_reader *r, const struct phrase_hit *hit) {
    enum { FAR = 7 };
    static const char *const letters[] = {
        "initial",     "initials", "letter",  "letters",    "monogram",     "name",
        "names",       "crest",    "crests",  "arms",       "coat",         "cipher",
        "inscription", "date",     "dates",   "message",    "words",        "motto",
        "verse",       "number",   "numbers", "dedication", "presentation", "badge",
        "script",      "writing",  "year",    "armorial",   "shield",       "to",
        "from",        "for",      "her",     "his",        "somebody's",   "year"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->flaw->rule.id, "monogram") ||
        !ANY(tokens, hit->to - 1, "engraved", "inscribed", "engraving") || !token_is(tokens, hit->to, "with"))
        return false;
    size_t at = hit->to + 1;
    if (at >= tokens->count || tokens->at[at].kind != TOKEN_WORD) return false;
    for (size_t i = at; i < tokens->count && i < at + FAR && tokens->at[i].stop == STOP_NONE; i++)
        if (token_among(tokens, i, letters, sizeof letters / sizeof *letters) || tokens->at[i].capital ||
            tokens->at[i].kind != TOKEN_WORD ||
            (tokens->at[i].to - tokens->at[i].from < 2 && !token_is(tokens, i, "a")))
            return false;
    return true;
}

// "Varnish on the front is crackled", "paint on the back has flaked": what the sentence is about, and no
// stain.
static bool is_own_finish(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    if (!text_same(hit->flaw->rule.id, "stain") ||
        !ANY(tokens, i, "paint", "varnish", "ink", "enamel", "glaze"))
        return false;
    while (i > 0 && tokens->at[i - 1].stop == STOP_NONE && i + 3 > hit->from) i--;
    bool opens = i == 0 || tokens->at[i - 1].stop >= STOP_COMMA;
    return opens && tokens->at[hit->to - 1].stop == STOP_NONE &&
           ANY(tokens, hit->to, "is", "are", "has", "have", "was", "were");
}

// "You won't find a missing button", "doesn't have a broken switch": not what the thing does.
static bool is_of_reader(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const nots[] = {"won't", "wont", "doesn't", "doesnt", "don't", "dont"};
    static const char *const verbs[] = {"find", "see", "have", "regret", "need", "notice", "get"};
    return hit->near && hit->flaw->class == CLASS_FUNCTION && !text_same(hit->flaw->rule.id, "untested") &&
           token_among(&r->note->tokens, hit->from, nots, sizeof nots / sizeof *nots) &&
           token_among(&r->note->tokens, hit->from + 1, verbs, sizeof verbs / sizeof *verbs);
}

// "Checked for repairs": those that were looked for, and no goods for a workshop.
static bool is_sought(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const verbs[] = {"check",    "checked",  "look",    "looked",    "looking", "examined",
                                        "searched", "over",     "inspect", "inspected", "vain",    "light",
                                        "lamp",     "checking", "search",  "hunted"};
    enum { FAR = 6 };
    if (!text_same(hit->flaw->rule.id, "for-parts") || !token_is(&r->note->tokens, hit->from, "for"))
        return false;
    for (size_t i = hit->from; i > 0 && hit->from - i < FAR && r->note->tokens.at[i - 1].stop == STOP_NONE;
         i--)
        if (token_among(&r->note->tokens, i - 1, verbs, sizeof verbs / sizeof *verbs)) return true;
    return false;
}

static bool is_deposit(const struct flaw *kind) {
    return text_same(kind->rule.id, "stain") || text_same(kind->rule.id, "mineral-deposit") ||
           text_same(kind->rule.id, "sticker-residue") || text_same(kind->rule.id, "cloudy-glass") ||
           text_same(kind->rule.id, "ring-mark") || text_same(kind->rule.id, "tarnish");
}

// "Stained inside, won't shift": it is the dirt that does not.
static bool is_of_dirt(const struct fault_reader *r, const struct phrase_hit *hit) {
    enum { FAR = 5 };
    const struct fault_hit *last = r->hit_count ? &r->hits[r->hit_count - 1] : NULL;
    const struct phrase_hits *hits = &r->note->hits;
    bool seized = text_same(hit->flaw->rule.id, "seized");
    for (size_t i = 0; i < hits->count && seized && !hit->near; i++) // "couldn't shift the lime"
        if (hits->at[i].from >= hit->to && hits->at[i].from <= hit->to + 1 &&
            (hits->at[i].flaw->class == CLASS_DIRT || is_deposit(hits->at[i].flaw)) &&
            r->note->tokens.at[hit->to - 1].stop == STOP_NONE &&
            r->note->tokens.at[hit->to].stop == STOP_NONE)
            return true;
    if (!last || !seized || hit->from < last->to || hit->from - last->to > FAR) return false;
    if (!ANY(&r->note->tokens, hit->from, "won't", "wont", "will", "doesn't")) return false;
    for (size_t i = last->to; i < hit->from; i++)
        if (r->note->tokens.at[i].stop >= STOP_SENTENCE) return false;
    return last->kinds[0]->class == CLASS_DIRT || is_deposit(last->kinds[0]);
}

// "Lantern won't light": of two words apart that praise, no word between may deny.
static bool is_crossed(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->near &&
        ((ANY(tokens, hit->from, "apart", "aside") && ANY(tokens, hit->from + 1, "from")) ||
         (ANY(tokens, hit->to - 1, "apart", "aside") && ANY(tokens, hit->to, "from") &&
          !ANY(tokens, hit->to - 2, "sound", "tight", "firm", "solid")))) // of joints, that one is not
        return true; // "clean apart from a water stain in one corner"
    for (size_t i = hit->from + 1;
         hit->near && text_same(hit->flaw->rule.id, "loose-part") && i + 1 < hit->to; i++)
        if (ANY(&r->note->tokens, i, "so") && ANY(&r->note->tokens, i + 1, "it", "they"))
            return true; // "base a bit dished so it rocks": of the whole
    for (size_t i = hit->from + 1; hit->near && hit->flaw->form == FAULT && i + 2 < hit->to; i++)
        if (ANY(&r->note->tokens, i, "with") && ANY(&r->note->tokens, i + 1, "a", "an") &&
            place_noun(r->note, hit->to - 1) && !place_noun(r->note, hit->from))
            return true; // "an old split with an iron strap"
    for (size_t i = hit->from + 1; hit->near && i + 2 < hit->to;
         i++) // "wobbly at the joint and another has been reglued"
        if (ANY(&r->note->tokens, i, "and", "but") &&
            (ANY(&r->note->tokens, i + 1, "another") ||
             (ANY(&r->note->tokens, i + 1, "one") &&
              ANY(&r->note->tokens, i + 2, "has", "is", "was", "had"))))
            return true;
    for (size_t i = hit->from + 1; hit->near && i + 3 < hit->to; i++) // "finger is cracked and two tacks are"
        if (ANY(tokens, i, "and", "but") && degrees_number(tokens, i + 1) > 1 &&
            (ANY(tokens, i + 3, "are", "have", "were") || // "three tines broken and two bent"
             (hit->flaw->form == FAULT && i + 4 >= hit->to && i > hit->from + 1)))
            return true;
    static const char *const words[] = {
        "no",     "not",      "never",   "won't",    "wont",    "doesn't", "doesnt", "don't",  "dont",
        "can't",  "cant",     "cannot",  "isn't",    "isnt",    "didn't",  "didnt",  "hasn't", "wouldn't",
        "wasn't", "couldn't", "nothing", "neither",  "stopped", "quit",    "nor",    "hardly", "barely",
        "except", "unless",   "until",   "untested", "if",      "should",  "used"};
    if (!hit->near || !fault_is_virtue(hit->flaw)) return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (token_among(&r->note->tokens, i, words, sizeof words / sizeof *words)) return true;
    return false;
}

// "A crack in the lid and the strap has gone": it is the strap that has.
static bool is_of_next_part(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->flaw->form != ABSENCE) return false;
    for (size_t i = hit->from + 1; i + 3 < hit->to; i++)
        if (ANY(tokens, i, "and", "but") && spot_article(tokens, i + 1) && r->part[i + 2] &&
            ANY(tokens, i + 3, "has", "is", "was"))
            return true;
    return false;
}

// "Woodworm in one stile, dead I believe": the worm is.
static bool is_of_worm(const struct fault_reader *r, const struct phrase_hit *hit) {
    enum { FAR = 10 };
    const struct tokens *tokens = &r->note->tokens;
    if (hit->to != hit->from + 1 || !token_is(tokens, hit->from, "dead")) return false;
    for (size_t i = hit->from, n = 0; i > 0 && n < FAR && tokens->at[i - 1].stop < STOP_SENTENCE; i--, n++)
        if (ANY(tokens, i - 1, "woodworm", "worm", "worms", "wormholes", "moth", "beetle")) {
            note_take(r->note, hit->from, hit->to, TAKEN_SCOPE);
            return true;
        }
    return false;
}

// Does the seller write token `i` with a capital?
static bool has_capital(const struct note *note, size_t i) {
    if (i >= note->tokens.count || note->tokens.at[i].kind != TOKEN_WORD || note->tokens.shouts) return false;
    char first = note_words(note, i, i + 1)[0];
    return first >= 'A' && first <= 'Z';
}

// "Rust on the Rails by T. Ovenden": words of a title, which a name follows.
static bool is_of_work(const struct fault_reader *r, const struct phrase_hit *hit) {
    enum { FAR = 7, BACK = 4 };
    const struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    size_t by = hit->to;
    while (by < tokens->count && by < hit->to + FAR && tokens->at[by - 1].stop == STOP_NONE &&
           !token_is(tokens, by, "by"))
        by++;
    if (!token_is(tokens, by, "by") || tokens->at[by - 1].stop != STOP_NONE || !has_capital(note, by + 1))
        return false;
    size_t from = hit->from;
    while (from > 0 && hit->from - from < BACK && tokens->at[from - 1].stop == STOP_NONE) from--;
    bool opens = from == 0 || tokens->at[from - 1].stop != STOP_NONE;
    for (size_t i = from; i < by; i++)
        if (!has_capital(note, i) && !ANY(tokens, i, "on", "in", "of", "the", "a", "and", "at", "to", "for",
                                          "from", "under", "with", "other"))
            return false;
    return opens && from > 0 && by > from + 1 && has_capital(note, from);
}

// "A dent in the front, nothing missing": nothing came off there, and nobody counted.
static bool is_of_hurt(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const struct fault_hit *last = r->hit_count ? &r->hits[r->hit_count - 1] : NULL;
    if (!last || !text_same(hit->flaw->rule.id, "complete-counted") ||
        last->kinds[0]->class != CLASS_DAMAGE ||
        !ANY(tokens, hit->from, "nothing", "nothing's", "none", "no"))
        return false;
    for (size_t i = last->to; i < hit->from; i++)
        if (tokens->at[i].stop >= STOP_SENTENCE || ANY(tokens, i, "counted", "but", "all")) return false;
    return hit->to >= tokens->count || tokens->at[hit->to].stop != STOP_NONE;
}

// Of a quilt its patches are what it is made of: "two patches have split".
static bool is_of_patchwork(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value;
    if (!hit->near && hit->to == hit->from + 1 && hit->from && token_is(tokens, hit->from, "hole") &&
        ANY(tokens, hit->to, "is", "measures") && hit->to + 1 < tokens->count &&
        tokens->at[hit->to + 1].kind == TOKEN_FIGURE && tokens->at[hit->from - 1].kind == TOKEN_WORD &&
        !ANY(tokens, hit->from - 1, "the", "a", "one", "small", "big", "moth", "this", "that"))
        return true; // "lid hole is 3 inches"
    if (!type || hit->near || hit->to != hit->from + 1 || !text_same(hit->flaw->rule.id, "darned-patched") ||
        !ANY(tokens, hit->from, "patch", "patches") || !kind_note_has(r, "quilt patchwork quilts"))
        return false;
    return !ANY(tokens, hit->to, "over", "on", "where", "sewn", "covering", "replaced", "added") &&
           !(hit->from > 0 && ANY(tokens, hit->from - 1, "replaced", "replacement", "new", "added", "later"));
}

// "Straps have gone stiff": turned into, and not missing. "Paint's worn off one ear": the paint is off, and
// the ear is there.
static bool is_turned_or_worn(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const states[] = {
        "stiff",    "hard",   "soft",  "brittle", "dull",  "dark",    "black",  "brown",  "yellow",
        "green",    "grey",   "gray",  "white",   "rusty", "sticky",  "tacky",  "cloudy", "limp",
        "slack",    "baggy",  "saggy", "crispy",  "dry",   "crumbly", "mouldy", "moldy",  "musty",
        "mildewed", "patchy", "loose", "wobbly",  "flat",  "spotty",  "milky",  "foggy",  "hazy",
        "weak",     "pale",   "thin",  "floppy",  "stale", "smelly"};
    static const char *const wears[] = {"worn", "rubbed", "flaked", "peeled", "faded", "scraped", "polished"};
    const struct tokens *tokens = &r->note->tokens;
    bool lost = hit->flaw->form == ABSENCE || text_same(hit->flaw->rule.id, "broken-part") ||
                text_same(hit->flaw->rule.id, "strap-damage") || text_same(hit->flaw->rule.id, "trim-loss") ||
                text_same(hit->flaw->rule.id, "lining-damage") ||
                text_same(hit->flaw->rule.id, "stone-missing");
    if (!lost) return false;
    if (token_is(tokens, hit->to - 1, "gone") && tokens->at[hit->to - 1].stop == STOP_NONE &&
        token_among(tokens, hit->to, states, sizeof states / sizeof *states))
        return true;
    return hit->from > 0 && token_is(tokens, hit->from, "off") &&
           token_among(tokens, hit->from - 1, wears, sizeof wears / sizeof *wears);
}

// "Stuck on a bit crooked and some glue has squeezed out": no bit is out.
static bool is_bit_of_degree(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const goes_on[] = {
        "of",   "has",     "is",   "was",  "missing", "gone",   "out",    "off",  "broken", "chipped",
        "been", "knocked", "came", "come", "snapped", "fell",   "fallen", "that", "which",  "taken",
        "lost", "from",    "at",   "on",   "in",      "flaked", "bust",   "broke"};
    const struct tokens *tokens = &r->note->tokens;
    return hit->near && hit->to > hit->from + 2 && hit->from > 0 && token_is(tokens, hit->from, "bit") &&
           token_is(tokens, hit->from - 1, "a") &&
           !token_among(tokens, hit->from + 1, goes_on, sizeof goes_on / sizeof *goes_on);
}

// "Missing the clapper at the top": the top is where it is missing.
static bool is_lost_there(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t last = hit->to - 1;
    if (!hit->near || hit->flaw->form != ABSENCE || last < hit->from + 3) return false;
    if (!ANY(tokens, hit->from, "missing", "lost", "lacks", "lacking", "no")) return false;
    size_t at = ANY(tokens, last - 1, "the", "its") ? last - 1 : last;
    return ANY(tokens, at - 1, "at", "on", "from", "near", "in", "by", "under", "inside");
}

// "The drawer has lost its knob": the reader of what is lost tells whose it was.
static bool is_of_owner(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    bool lost = hit->flaw->form == ABSENCE || text_same(hit->flaw->rule.id, "broken-part") ||
                text_same(hit->flaw->rule.id, "strap-damage");
    if (!lost || hit->to != i + 3 || i < 2 || !token_is(tokens, i, "lost") ||
        !ANY(tokens, i + 1, "its", "their", "the") || !place_noun(r->note, i + 2))
        return false;
    i -= ANY(tokens, i - 1, "has", "have") ? 1 : 0;
    return tokens->at[i - 1].stop == STOP_NONE && r->note->taken[i - 1] != TAKEN_TYPE &&
           place_noun(r->note, i - 1);
}

// "A bolt and the rope is missing", "cards are foxed and 5 have corners missing": what lacks stands right
// before the last word, and is not what the pair begins with.
static bool lacks_other(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const between[] = {"is",  "are",  "was",  "were", "has", "have", "been",
                                          "all", "both", "also", "gone", "now", "just"};
    static const char *const ties[] = {"on", "of", "in", "at",   "from",    "for", "to",    "by",
                                       "or", "no", "&",  "with", "without", "off", "under", "inside"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to - 1;
    if (!hit->near || hit->flaw->form != ABSENCE || at < hit->from + 3 ||
        !ANY(tokens, at, "missing", "gone", "lost", "absent"))
        return false;
    while (at > hit->from + 1 && token_among(tokens, at - 1, between, sizeof between / sizeof *between)) at--;
    if (--at <= hit->from + 1 || tokens->at[at].one == tokens->at[hit->from].one) return false;
    if (!spot_word(r, at)) return false;
    bool one = ANY(tokens, at + 1, "is", "was", "has"), parted = false;
    for (size_t k = hit->from + 1; k < at; k++) {
        if (token_among(tokens, k, ties, sizeof ties / sizeof *ties)) return false;
        parted |= ANY(tokens, k, "have", "has") || (one && ANY(tokens, k, "and", "but"));
    }
    return parted;
}

// "The cover is cracked and the cup is missing its strap": the strap is what lacks.
static bool lacks_between(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!hit->near || hit->flaw->form != FAULT || hit->to < hit->from + 5) return false;
    bool joint = false;
    for (size_t k = hit->from + 1; k + 1 < hit->to; k++) {
        joint |= ANY(tokens, k, "and", "but");
        if (joint && ANY(tokens, k, "missing", "lacks", "lacking", "without")) return true;
    }
    return false;
}

// "Enamel is stained and has a chip": a word of another fault stands between the two, and each is told. Is
// the last word of the pair a phrase by itself, which can take the pair's place?
static bool spans_another(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const joints[] = {"and", "but", "&"};
    const struct phrase_hits *hits = &r->note->hits;
    const struct tokens *tokens = &r->note->tokens;
    if (!hit->near || hit->flaw->form != FAULT || hit->to < hit->from + 5) return false;
    bool inner = false, last = false;
    for (size_t i = 0; i < hits->count; i++) {
        const struct phrase_hit *h = &hits->at[i];
        if (h->near || h->gated || h->flaw->form != FAULT) continue;
        last |= h->from == hit->to - 1 && h->to == hit->to;
        if (h->from <= hit->from + 1 || h->to + 1 >= hit->to || h->flaw == hit->flaw) continue;
        bool narrows = false; // "lid has gone brittle and cracked": one fault
        for (size_t k = 0; k < h->flaw->narrows.count; k++)
            narrows |= text_same(h->flaw->narrows.at[k], hit->flaw->rule.id);
        for (size_t k = h->to; k < hit->to - 1 && !narrows; k++) inner |= token_among(tokens, k, joints, 3);
    }
    return inner && last;
}

// "No burner missing": the "no" is of what lacks, and the burner is there.
static bool is_none_missing(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    static const char *const owned[] = {"knob",   "knobs",  "handle", "hinge",  "hinges", "finial", "catch",
                                        "clip",   "screw",  "screws", "latch",  "stay",   "clasp",  "pull",
                                        "lining", "liner",  "spring", "chain",  "string", "strap",  "lock",
                                        "button", "gasket", "seal",   "insert", "rod",    "pin",    "rest"};
    if (hit->flaw->form != ABSENCE || hit->to < hit->from + 2 || tokens->at[hit->to - 1].stop != STOP_NONE)
        return false;
    if (!hit->near && ANY(tokens, hit->to - 1, "lid", "door", "drawer", "burner") &&
        ANY(tokens, hit->from, "lost", "missing", "lacks", "lacking", "has", "without", "minus") &&
        ANY(tokens, hit->to, "knob", "handle", "hinge", "finial", "catch", "screw", "pull", "rest", "latch"))
        return true; // "lost its lid knob"
    if (!token_is(tokens, hit->to - 2, "no")) return false;
    static const char *const said[] = {
        "though",  "tho",      "sadly",  "either", "present",   "included", "anymore",
        "left",    "now",      "here",   "yet",    "supplied",  "fitted",   "found",
        "today",   "sorry",    "any",    "with",   "available", "attached", "unfortunately",
        "however", "required", "needed", "at",     "on",        "in",       "and"};
    bool over = hit->to + 1 >= tokens->count || tokens->at[hit->to + 1].stop != STOP_NONE;
    bool top =
        over && hit->to < tokens->count && tokens->at[hit->to].kind == TOKEN_WORD &&
        !token_among(tokens, hit->to, said, COUNT(said)) &&
        (ANY(tokens, hit->to - 1, "top", "cover") || spot_word(r, hit->to)); // "no top rail", "no shade ring"
    return top || ANY(tokens, hit->to, "missing", "lost", "lacking") ||
           token_among(tokens, hit->to, owned, sizeof owned / sizeof *owned); // "no lid knob"
}

// "The other has just got some paint gone": the paint, and no lamp.
static bool is_gone_of_other(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->flaw->rule.id, "missing-mate")) return false;
    if (ANY(tokens, hit->to - 1, "lost", "missing") && tokens->at[hit->to - 1].stop == STOP_NONE &&
        (ANY(tokens, hit->to, "its", "the", "a", "an", "one", "two", "some", "most", "half", "all", "both",
             "their", "several", "three") ||
         token_is(tokens, hit->to + 1, "of")))
        return true; // "the other has lost its collar"
    if (token_is(tokens, hit->from, "other's") && hit->to > hit->from + 2) return true; // its stopper
    if (token_is(tokens, hit->from, "one") && token_is(tokens, hit->to - 1, "only") &&
        tokens->at[hit->to - 1].stop == STOP_NONE && hit->to < tokens->count &&
        tokens->at[hit->to].kind == TOKEN_WORD &&
        !ANY(tokens, hit->to, "of", "so", "and", "but", "not", "no", "as", "here", "i", "-", "sadly", "now"))
        return true; // "the large one only gets warm"
    if (!hit->near || hit->to < hit->from + 3) return false;
    if (!ANY(tokens, hit->to - 1, "gone", "missing", "lost")) return false;
    return tokens->at[hit->to - 2].kind == TOKEN_WORD &&
           !ANY(tokens, hit->to - 2, "other", "one", "is", "has", "was", "it", "been", "just", "also", "now",
                "long", "mate", "partner", "pair", "half", "shoe", "sadly", "gone", "all", "are", "been",
                "got");
}

// "Ocarina, ten holes", "cribbage board, 120 holes": those that it is made with.
static bool is_made_holes(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const things[] = {"ocarina",   "recorder", "whistle", "flute",    "fife",
                                         "flageolet", "chanter",  "pipe",    "cribbage", "peg board",
                                         "pegboard",  "peg loom", "shawm",   "solitaire"};
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value;
    if (!type || hit->near || hit->to != hit->from + 1 || !hit->from ||
        !token_is(tokens, hit->from, "holes") ||
        !(degrees_number(tokens, hit->from - 1) > 1 || tokens->at[hit->from - 1].kind == TOKEN_FIGURE ||
          ANY(tokens, hit->from - 1, "finger", "all")) ||
        ANY(tokens, hit->to, "in", "on", "at", "near", "through", "along"))
        return false;
    bool made = false;
    for (size_t k = 0; k < COUNT(things); k++) made |= strstr(type, things[k]) != NULL;
    return made;
}

// "One end plate gone", "end brass tip lost": the end that it is of, and not the end that has gone.
static bool is_end_part(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t next = hit->from + 1;
    if (!hit->near || !ANY(tokens, hit->from, "end", "wing", "arm", "tip") ||
        tokens->at[hit->from].stop != STOP_NONE)
        return false;
    while (next < hit->to && r->note->taken[next] == TAKEN_VALUE) next++;
    if (!ANY(tokens, hit->from, "end") &&
        !ANY(tokens, next, "nut", "nuts", "pad", "pads", "screw", "bolt", "cap"))
        return false; // "one wing nut is missing"
    return next + 1 < hit->to && !absent_is_small(tokens, next) && tokens->at[next].kind == TOKEN_WORD &&
           tokens->at[next].stop == STOP_NONE &&
           !ANY(tokens, next, "cap", "broken", "snapped", "gone", "piece", "now", "long", "since", "been",
                "got", "completely", "clean", "all", "bit", "also", "sadly", "just");
}

// "Cord is the old cloth kind, not frayed": what it is made of, and that it is sound.
static bool is_sound_cord(const struct fault_reader *r, const struct phrase_hit *hit) {
    enum { FAR = 6 };
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->flaw->rule.id, "cord-frayed") || !ANY(tokens, hit->to - 1, "old", "cloth", "stiff"))
        return false;
    for (size_t i = hit->to; i + 1 < tokens->count && i < hit->to + FAR && tokens->at[i].stop < STOP_SENTENCE;
         i++)
        if (ANY(tokens, i, "not", "isn't", "isnt") &&
            ANY(tokens, i + 1, "frayed", "perished", "cracked", "brittle", "worn", "damaged"))
            return true;
    return false;
}

// "Canvas strap frayed right through at one end": the strap has parted, and no hole is in it.
static bool is_frayed_through(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool frayed = false, strap = false;
    if (!text_same(hit->flaw->rule.id, "hole") || !ANY(tokens, hit->to - 2, "through")) return false;
    for (size_t i = hit->to; i > 0 && hit->to - i < 10 && tokens->at[i - 1].stop < STOP_SENTENCE; i--) {
        frayed |= ANY(tokens, i - 1, "frayed", "chafed");
        strap |= ANY(tokens, i - 1, "strap", "straps", "cord", "rope", "sling", "webbing", "handle");
    }
    return frayed && strap;
}

// "A joint open at the top and some of the beading is missing": it is no top that lacks.
static bool is_lost_beside(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!hit->near || hit->flaw->form != ABSENCE || hit->to < hit->from + 4) return false;
    for (size_t i = hit->from + 1; i + 2 < hit->to; i++)
        if (ANY(tokens, i, "and", "but") && ANY(tokens, i + 1, "some", "the", "its", "part", "one", "most"))
            return true;
    return false;
}

// "Doors don't meet, a gap you could post a letter through": of the doors, and no board has split.
static bool is_gap_of_doors(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, hit->from, "gap", "post") || hit->flaw->form != FAULT ||
        ANY(tokens, hit->from + 1, "where"))
        return false;
    for (size_t i = hit->from; i > 0 && tokens->at[i - 1].stop < STOP_SENTENCE; i--)
        if (ANY(tokens, i - 1, "door", "doors", "meet")) return true;
    return false;
}

bool gather_means_other(const struct fault_reader *r, const struct phrase_hit *hit) {
    return is_end_part(r, hit) || is_crossed(r, hit) || is_made_holes(r, hit) || is_of_next_part(r, hit) ||
           is_of_worm(r, hit) || is_of_reader(r, hit) || is_sought(r, hit) || is_of_dirt(r, hit) ||
           is_of_work(r, hit) || is_of_hurt(r, hit) || is_of_patchwork(r, hit) || spans_another(r, hit) ||
           is_turned_or_worn(r, hit) || is_lost_there(r, hit) || is_of_owner(r, hit) || lacks_other(r, hit) ||
           is_gone_of_other(r, hit) || lacks_between(r, hit) || is_bit_of_degree(r, hit) ||
           is_none_missing(r, hit) || is_own_finish(r, hit) || is_cut_picture(r, hit) ||
           is_sound_cord(r, hit) || is_gap_of_doors(r, hit) || is_lost_beside(r, hit) ||
           is_frayed_through(r, hit);
}

// "Post hole digger", "replacement lid": words of the thing's own name; "jam pan with an iron handle": what
// begins that name is no fault of what follows.
bool fault_is_in_name(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct note *note = r->note;
    if (hit->near && hit->to > hit->from + 2 && note->taken[hit->from] == TAKEN_TYPE &&
        note->taken[hit->from + 1] == TAKEN_TYPE && note->taken[hit->to - 1] != TAKEN_TYPE &&
        note->tokens.at[hit->from].stop == STOP_NONE && r->part[hit->to - 1] && !r->part[hit->from])
        return true;
    for (size_t i = hit->from; i <= hit->to; i++)
        if (i >= note->tokens.count || note->taken[i] != TAKEN_TYPE) return false;
    return note->tokens.at[hit->to - 1].stop == STOP_NONE;
}

// "Quillisk Works": of the name of a maker or a work.
bool fault_is_in_maker(const struct note *note, const struct fault_hit *hit) {
    size_t from = note->tokens.at[hit->from].from, last = note->tokens.at[hit->to - 1].from;
    for (size_t i = 0; i < note->record->attribute_count; i++) {
        const struct value *value = &note->record->attributes[i];
        if (!text_same(value->name, "brand") && !text_same(value->name, "name")) continue;
        if (value->span.from < from && value->span.to > from) return true;
        if (value->span.from < last && value->span.to > last) return true; // "lamp by Quillisk Works"
    }
    return false;
}

// "Case scratched and doesn't work": what is in the case does not.
bool fault_is_of_housed(const struct fault_reader *r, const struct fault_hit *hit, const struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    return spot->part_to > spot->part_from && hit->kinds[0]->class == CLASS_FUNCTION && hit->from > 0 &&
           token_is(tokens, hit->from - 1, "and") && ANY(tokens, hit->to - 1, "work", "go", "run") &&
           ANY(tokens, spot->part_to - 1, "case", "cabinet", "body", "housing", "cover", "box", "casing");
}

static bool is_one(const char *a, const char *b) { // or both are nowhere
    return a && b ? text_same(a, b) : a == b;
}

// "Some rust but no pitting": of the same kind at the same part, and worse; that it is there stands.
bool fault_is_there_less(const struct fault_reader *r, const struct flaw *kind, const char *part,
                         const char *where, size_t from) {
    const struct note *note = r->note;
    size_t start = scope_sentence_start(&r->scope, from), end = scope_sentence_end(&r->scope, from);
    if (start >= note->tokens.count || from >= note->tokens.count) return false;
    for (size_t k = 0; k < r->hit_count; k++) // "not pitted, hardly any rust on it"
        if (r->hits[k].kinds[0] == kind && r->hits[k].from > from && r->hits[k].from < end &&
            r->scope.stance[r->hits[k].from] & STANCE_LIMITED)
            return true;
    for (size_t i = 0; i < note->record->flaw_count; i++) {
        const struct item_flaw *flaw = &note->record->flaws[i];
        if (flaw->kind != kind || !is_one(flaw->part, part) || !is_one(flaw->where, where) ||
            flaw->span.to > note->tokens.at[from].from || flaw->span.from < note->tokens.at[start].from)
            continue;
        for (size_t k = start; k < from; k++)
            if (token_is(&note->tokens, k, "but") && note->tokens.at[k].from >= flaw->span.to) return true;
    }
    return false;
}

void fault_take_own_part(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    static const char *const places[] = {"corner",     "corners", "side", "sides",  "edge",   "edges",
                                         "end",        "ends",    "back", "front",  "top",    "bottom",
                                         "inside",     "outside", "rim",  "middle", "centre", "center",
                                         "underneath", "surface", "base", "ring",   "rings"};
    if (spot->part_to > spot->part_from && ANY(tokens, spot->part_to, "percent", "%", "pct"))
        spot->part_from = spot->part_to = 0; // "paint 70 percent gone"
    if (hit->kinds[0]->class == CLASS_REPAIR && spot->part_from > hit->from + 1 && spot->part_to <= hit->to &&
        (ANY(tokens, hit->from + 1, "with") || ANY(tokens, hit->to - 1, "through", "into", "in")))
        spot->part_from = spot->part_to = 0; // "bound with copper wire", "put a screw through"
    bool sided = spot->part_to == spot->part_from + 1 && hit->from == spot->part_to + 1 &&
                 ANY(tokens, spot->part_from, "front", "back", "rear", "top", "bottom", "side", "end", "head",
                     "stage", "main", "tail", "centre", "center");
    size_t next = spot->part_to, n; // "the front standard wobbles"
    if (sided && tokens->at[next].kind == TOKEN_WORD && tokens->at[next].stop == STOP_NONE &&
        r->note->taken[next] == TAKEN_NOT && !absent_is_small(tokens, next) && !degree_word(r, next, &n) &&
        strlen(tokens->at[next].fold) > 3 &&
        !ANY(tokens, next, "still", "just", "feels", "looks", "also", "quite", "both", "gets", "once", "been",
             "even", "half", "well", "area", "where", "there", "only", "side", "edge", "then", "always",
             "once", "seems", "goes", "sits", "having", "being", "does", "doesn't", "slightly", "badly",
             "heavily", "inch", "nearly", "almost", "partly", "fully", "mostly"))
        spot->part_to++;
    bool lined = text_same(hit->kinds[0]->rule.id, "lining-damage") && spot->part_to == spot->part_from;
    for (size_t at = hit->from; lined && at < hit->to; at++)
        if (ANY(tokens, at, "lining", "linings")) { // "inside lining torn"
            spot->part_from = at, spot->part_to = at + 1;
            return;
        }
    bool gone = ANY(tokens, hit->to - 1, "gone", "missing", "lost");
    size_t own = hit->from + (ANY(tokens, hit->from, "one", "a") ? 1 : 0);
    if (gone && own > 0 && own + 1 < hit->to && r->part[own] &&
        !token_among(tokens, own, places, sizeof places / sizeof *places) && spot->part_to <= hit->from &&
        text_same(hit->kinds[0]->rule.id, "broken-part") &&
        spot_owner(r, own, &spot->where_from, &spot->where_to)) {
        spot->part_from = own; // "the strainer has one foot gone"
        spot->part_to = own + 1;
        return;
    }
    bool one = hit->from > 1 && (ANY(tokens, hit->from - 1, "a", "an", "one") ||
                                 degrees_number(tokens, hit->from - 1) > 0); // "have loose handles"
    if (hit->from < 2 || hit->kinds[0]->form == ABSENCE || hit->kinds[0]->class == CLASS_REPAIR ||
        token_is(tokens, hit->from, "fade") ||
        !ANY(tokens, hit->from - (one ? 2 : 1), "has", "have", "had", "with", "w/"))
        return;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(tokens, i, "of", "off", "on", "in", "to", "from", "at")) return; // "a nibble out of the foot"
    size_t at = hit->to > hit->from + 1 && r->part[hit->to - 1] ? hit->to - 1 : hit->to;
    bool over = at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE;
    bool ends = over || ANY(tokens, at + 1, "and", "but");
    bool named = at < tokens->count && !ANY(tokens, at, "line", "lines", "mark", "marks") &&
                 (r->part[at] || (tokens->at[at].one != tokens->at[at].fold && at == hit->to &&
                                  r->note->taken[at] == TAKEN_NOT &&
                                  !ANY(tokens, at, "splits", "cracks", "lines", "marks", "spots", "patches",
                                       "scratches", "bits", "places"))); // "bent shackles"
    bool within = at > hit->from && at < hit->to && !ANY(tokens, at - 1, "a", "the");
    if (!named || !r->scope.fault[hit->to - 1] || !ends ||
        (!one && !within && tokens->at[at].one == tokens->at[at].fold) || at < spot->part_to ||
        token_among(tokens, at, places, sizeof places / sizeof *places))
        return;
    spot->part_from = spot->part_to = at + 1;
    if (!r->part[at]) spot->part_from = at;
    while (spot->part_from > hit->from && r->part[spot->part_from - 1] && spot->part_to - spot->part_from < 3)
        spot->part_from--;
}
