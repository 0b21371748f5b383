// SPDX-License-Identifier: MIT
// The same words are another kind on other goods: a key that is missing from a keyboard opens nothing, teeth
// that marked a toy were a child's, and a pearl that came off a gown is trim.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/traces.h"
#include "notes/kind_goods.h"
#include "text/order.h"

static const struct flaw *named(const struct fault_reader *r, const struct flaw *kind, const char *id) {
    const struct flaw *other = ruleset_flaw(r->note->rules, id);
    return other ? other : kind;
}

static bool is_of_family(const struct fault_reader *r, const char *const *ids, size_t count) {
    const struct family *family = r->note->record->family;
    for (size_t i = 0; family && i < count; i++)
        if (text_same(family->rule.id, ids[i])) return true;
    return false;
}

#define OF(r, ...)                                                                                           \
    is_of_family(r, (const char *const[]){__VA_ARGS__},                                                      \
                 sizeof((const char *const[]){__VA_ARGS__}) / sizeof(const char *))

// Does the name of the thing, or of its part, have one of the words in it?
static bool has_one(const char *name, const char *const *words, size_t count) {
    for (size_t i = 0; name && i < count; i++)
        for (const char *at = strstr(name, words[i]); at; at = strstr(at + 1, words[i])) {
            char before = at == name ? ' ' : at[-1], behind = at[strlen(words[i])];
            if ((before == ' ' || before == '-') && (!behind || behind == ' ' || behind == 's')) return true;
        }
    return false;
}

#define HAS(name, ...)                                                                                       \
    has_one(name, (const char *const[]){__VA_ARGS__},                                                        \
            sizeof((const char *const[]){__VA_ARGS__}) / sizeof(const char *))

// What is pressed by the fingers, many of them.
const struct flaw *kind_pressed(const struct fault_reader *r, const struct flaw *kind) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "missing-key")) return kind;
    for (size_t i = 0; i + 2 < tokens->count; i++) // "no key for the case"
        if (ANY(tokens, i, "key", "keys") && ANY(tokens, i + 1, "for", "to") &&
            ANY(tokens, i + 2, "it", "the", "its", "them"))
            return kind;
    return HAS(r->note->record->type.value, "laptop", "keyboard", "typewriter", "calculator", "piano",
               "organ", "accordion", "concertina", "computer", "notebook", "melodeon", "adding machine",
               "flute", "clarinet", "saxophone", "oboe", "synthesizer", "cash register")
               ? named(r, kind, "missing-pieces")
               : kind;
}

static const struct flaw *bitten(const struct fault_reader *r, const struct fault_hit *hit,
                                 const struct flaw *kind) {
    const struct tokens *tokens = &r->note->tokens;
    bool chewed = false; // "the puppy chewed the wire": what carries the current
    for (size_t i = hit->from; i < hit->to; i++)
        chewed |= ANY(tokens, i, "chewed", "gnawed", "bit", "nibbled");
    if (chewed && text_same(kind->rule.id, "broken-part") &&
        OF(r, "electrical", "lighting", "tools", "cameras", "media"))
        for (size_t i = hit->from; i < hit->to + 4 && i < tokens->count; i++)
            if (ANY(tokens, i, "wire", "cord", "lead", "flex", "cable")) return named(r, kind, "cord-frayed");
    if (!text_same(kind->rule.id, "pest-signs") || !OF(r, "toys", "games-puzzles")) return kind;
    bool teeth = false;
    for (size_t i = hit->from; i < hit->to; i++) teeth |= ANY(tokens, i, "teeth", "tooth");
    for (size_t i = 0; i < tokens->count; i++)
        if (ANY(tokens, i, "mouse", "mice", "rat", "rats", "rodent", "rodents", "squirrel")) return kind;
    return teeth ? named(r, kind, "play-wear") : kind;
}

// A bead, a pearl, a sequin on what is worn; a button that was an eye.
static const struct flaw *sewn_on(const struct fault_reader *r, const struct flaw *kind, const char *part) {
    bool worn = OF(r, "clothing", "bags", "footwear", "linens");
    if (worn && text_same(kind->rule.id, "broken-part") &&
        HAS(part, "pearl", "bead", "sequin", "rhinestone", "diamante", "pompom", "tassel", "bow", "rosette"))
        return named(r, kind, "trim-loss");
    if (OF(r, "toys") && HAS(part, "eye", "nose", "mouth") &&
        (text_same(kind->rule.id, "zip-fault") || text_same(kind->rule.id, "missing-button")))
        return named(r, kind, "broken-part");
    return kind;
}

// "One ear has been sewn back on", of what is sewn.
static const struct flaw *sewn_back(const struct fault_reader *r, const struct fault_hit *hit,
                                    const struct flaw *kind) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "glued-repair")) return kind;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(tokens, i, "sewn", "stitched", "sewed", "resewn", "restitched"))
            return HAS(r->note->record->type.value, "book", "bible", "shoe", "boot", "bag", "saddle", "ball",
                       "case", "satchel")
                       ? kind
                       : named(r, kind, "darned-patched");
    if (ANY(tokens, hit->to - 1, "patched", "patch", "patches") &&
        HAS(r->note->record->type.value, "bear", "teddy", "doll", "rabbit", "bunny", "puppet", "toy",
            "elephant", "monkey", "dog", "cat", "lamb", "animal") &&
        kind_note_has(
            r, "mohair plush cloth felt stuffed fabric knitted knit corduroy rag velveteen fur sawdust"))
        return named(r, kind, "darned-patched"); // of a toy that is sewn
    return kind;
}

// "They have gone dull" of scissors: the edge, and no color of the metal.
static const struct flaw *of_an_edge(const struct fault_reader *r, const struct fault_hit *hit,
                                     const struct flaw *kind) {
    return text_same(kind->rule.id, "tarnish") &&
                   ANY(&r->note->tokens, hit->to - 1, "dull", "blunt", "duller") &&
                   HAS(r->note->record->type.value, "scissors", "shears", "knife", "knives", "chisel",
                       "chisels", "saw", "axe", "hatchet", "razor", "clippers", "peeler", "cleaver", "snips",
                       "hoe", "scythe", "sickle", "machete", "slicer", "loppers", "pruners", "cutter",
                       "cutters", "plane")
               ? named(r, kind, "blade-wear")
               : kind;
}

// "The cat has clawed the arm", of a seat with a cover.
static const struct flaw *clawed(const struct fault_reader *r, const struct fault_hit *hit,
                                 const struct flaw *kind) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "scratches") ||
        !HAS(r->note->record->type.value, "sofa", "couch", "settee", "armchair", "recliner", "ottoman",
             "footstool", "chesterfield", "pouffe", "loveseat", "daybed"))
        return kind;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(tokens, i, "clawed", "claws", "claw", "cat", "cat's", "cats", "dog", "kitten"))
            return named(r, kind, "upholstery-wear");
    return kind;
}

// "The print has come off the rim": a coat that is gone from there, and no loose part.
static const struct flaw *coat_gone(const struct fault_reader *r, const struct fault_hit *hit,
                                    const struct flaw *kind) {
    static const struct {
        const char *coat, *id;
    } coats[] = {
        {"paint", "paint-flaking"},        {"print", "decoration-wear"},  {"transfer", "decoration-wear"},
        {"decoration", "decoration-wear"}, {"design", "decoration-wear"}, {"glaze", "decoration-wear"},
        {"gilding", "gilt-wear"},          {"gilt", "gilt-wear"},         {"gold", "gilt-wear"},
        {"plating", "plate-wear"},         {"chrome", "plate-wear"},      {"nickel", "plate-wear"}};
    static const char *const more[] = {"platinum", "silver", "luster", "lustre"};
    enum { BACK = 14 };
    const struct tokens *tokens = &r->note->tokens;
    if (text_same(kind->rule.id, "broken-part") || text_same(kind->rule.id, "missing-hardware")) {
        if (!ANY(tokens, hit->from + 1, "on", "at", "of", "along", "around", "round")) return kind;
        for (size_t k = 0; k < sizeof coats / sizeof *coats; k++) // "gold on the handle is half gone"
            if (token_is(tokens, hit->from, coats[k].coat)) return named(r, kind, coats[k].id);
        if (token_among(tokens, hit->from, more, sizeof more / sizeof *more))
            return named(r, kind, ANY(tokens, hit->from, "silver") ? "plate-wear" : "gilt-wear");
        return kind;
    }
    if (!text_same(kind->rule.id, "loose-part") && !text_same(kind->rule.id, "dye-bleed")) return kind;
    bool off = false;
    for (size_t i = hit->from; i <= hit->to; i++) off |= ANY(tokens, i, "off");
    if (!off || !ANY(tokens, hit->to - 1, "the", "its", "one", "off", "both")) return kind;
    for (size_t i = hit->to, n = 0; i > 0 && n < BACK; i--, n++) {
        if (tokens->at[i - 1].stop >= STOP_CLAUSE) break;
        for (size_t k = 0; k < sizeof coats / sizeof *coats; k++)
            if (token_is(tokens, i - 1, coats[k].coat)) return named(r, kind, coats[k].id);
    }
    return kind;
}

// "Motor runs but I had no beans to try": all that is known is that it comes on.
static const struct flaw *runs_untried(const struct fault_reader *r, const struct fault_hit *hit,
                                       const struct flaw *kind) {
    static const char *const untried[] = {"i had no",   "i have no",     "i haven't",      "we haven't",
                                          "we had no",  "i didn't",      "we didn't",      "haven't",
                                          "had no",     "i never",       "not tried",      "have no",
                                          "didn't try", "i've not",      "i couldn't try", "couldn't try",
                                          "we have no", "couldn't test", "not tested",     "untested"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "partly-working")) return kind;
    bool comes = ANY(tokens, hit->from, "comes", "came", "turns", "switches", "powers", "lights") &&
                 ANY(tokens, hit->from + 1, "on", "up"); // "comes on and hums, haven't tried it with paper"
    if (!comes && !ANY(tokens, hit->to - 1, "but")) return kind;
    size_t at = hit->to;
    if (comes && at < tokens->count && tokens->at[at].stop == STOP_COMMA) at++;
    if (comes) at += ANY(tokens, at, "but", "and", "though", "only");
    return token_longest(tokens, at, untried, sizeof untried / sizeof *untried) ||
                   (comes && ANY(tokens, at, "didn't", "haven't", "never"))
               ? named(r, kind, "powers-on-only")
               : kind;
}

// What a toy is stuffed with shows where a seam has opened; and the lace of a skate is no trim.
static const struct flaw *of_toy_or_shoe(const struct fault_reader *r, const struct flaw *kind,
                                         const char *part) {
    if (text_same(kind->rule.id, "upholstery-wear") && OF(r, "toys", "holiday"))
        return named(r, kind, "seam-open");
    return text_same(kind->rule.id, "trim-loss") && OF(r, "sports", "footwear") &&
                   HAS(part, "lace", "laces", "shoelace")
               ? named(r, kind, "missing-accessory")
               : kind;
}

// Of what has no blade a tip is broken off; and what runs on a battery runs by its lead where that is spent.
static const struct flaw *of_what_it_has(const struct fault_reader *r, const struct fault_hit *hit,
                                         const struct flaw *kind, const char *part) {
    const struct tokens *tokens = &r->note->tokens;
    if (text_same(kind->rule.id, "blade-wear") && ANY(tokens, hit->to - 1, "tip", "tips") &&
        OF(r, "clocks-watches", "decor", "ceramics", "glassware", "holiday", "jewelry", "toys", "furniture"))
        return named(r, kind, "broken-part");
    bool holds = ANY(tokens, hit->to - 1, "hold", "charge", "holding");
    if (text_same(kind->rule.id, "not-working") && holds && HAS(part, "battery", "batteries"))
        return named(r, kind, "partly-working");
    return kind;
}

// A lining that is worn through is no sole, a card that is bent no metal, leather that has gone hard no
// rubber; a blanket is not trimmed, and what yellows is paper only where there is any.
static const struct flaw *of_its_stuff(const struct fault_reader *r, const struct fault_hit *hit,
                                       const struct flaw *kind, const char *part) {
    enum { BACK = 4 };
    const struct tokens *tokens = &r->note->tokens;
    const char *id = kind->rule.id;
    bool wear = text_same(id, "sole-wear") || text_same(id, "wear-rub");
    if (wear && HAS(part, "lining", "linings")) return named(r, kind, "lining-damage");
    if ((text_same(id, "crack") || text_same(id, "binding-weak") || text_same(id, "wood-split")) &&
        HAS(part, "slip case", "slipcase", "slip-case", "carton", "outer box", "game box", "lid of the box"))
        return named(r, kind, "box-wear"); // of card, and what it came in
    if (text_same(id, "lining-damage") && OF(r, "linens") && HAS(part, "rod pocket", "rod pockets", "pocket"))
        return named(r, kind, "tear");
    if (text_same(id, "fabric-weak") &&
        HAS(part, "grip", "grips", "handle", "handles", "seal", "hose", "gasket", "tire"))
        return named(r, kind, "rubber-perished");
    bool loss = text_same(id, "broken-part") || text_same(id, "loose-part");
    bool filling = HAS(part, "straw", "stuffing", "sawdust", "kapok", "filling", "batting", "excelsior");
    for (size_t i = hit->from; i < hit->to; i++)
        filling |= ANY(tokens, i, "straw", "stuffing", "sawdust", "kapok", "batting", "excelsior");
    if (loss && filling) return named(r, kind, "hole"); // what it is filled with comes out of one
    if (text_same(id, "tear") && ANY(tokens, hit->to - 1, "off") && hit->from > 0 &&
        ANY(tokens, hit->from - 1, "pull", "pulls", "knob", "knobs", "handle", "handles", "hinge", "caster",
            "latch"))
        return named(r, kind, "broken-part");
    bool vessel = OF(r, "ceramics", "glassware", "kitchenware", "metalware");
    if (text_same(id, "mineral-deposit") && !vessel &&
        ANY(tokens, hit->from, "water", "waterline", "waterlines") &&
        OF(r, "furniture", "bags", "books", "paper", "linens", "clothing", "music"))
        return named(r, kind, "tide-line");
    if (text_same(id, "hole") && OF(r, "games-puzzles") && kind_note_has(r, "jigsaw puzzle") &&
        kind_note_has(r, "did done together made built"))
        return named(r, kind, "missing-pieces");
    if (text_same(id, "fading") && vessel &&
        ANY(tokens, hit->from, "stripes", "stripe", "bands", "band", "pattern", "design"))
        return named(r, kind, "decoration-wear");
    if (text_same(id, "dent-bend") && HAS(part, "card", "page", "cardboard", "tag", "booklet", "leaflet"))
        return named(r, kind, "crease");
    if (text_same(id, "trimmed") && OF(r, "linens", "clothing") && ANY(tokens, hit->to - 1, "down"))
        return named(r, kind, "hem-altered");
    if (text_same(id, "toning") && OF(r, "holiday", "glassware", "ceramics", "lighting", "kitchenware"))
        return named(r, kind, "yellowing");
    if (text_same(id, "missing-pieces") && HAS(part, "fringe", "fringes", "tassels", "lace"))
        return named(r, kind, "trim-loss");
    if (text_same(id, "stain") && OF(r, "books", "music") && ANY(tokens, hit->to - 1, "marked", "marks") &&
        ANY(tokens, hit->to, "for", "up", "with"))
        return named(r, kind, "writing-inside");
    if (text_same(id, "cloudy-glass") && ANY(tokens, hit->to - 1, "clear") &&
        OF(r, "electrical", "tools", "other", "music", "media", "cameras"))
        return named(r, kind, "partly-working");
    if (text_same(id, "cloudy-glass") && hit->from > 1 &&
        ANY(tokens, hit->from - 2, "chrome", "nickel", "steel", "brass"))
        return named(r, kind, "tarnish");
    if (text_same(id, "rubber-perished") && HAS(part, "strap", "straps", "handle", "belt") &&
        kind_note_has(r, "leather") && !kind_note_has(r, "rubber vinyl plastic elastic"))
        return named(r, kind, "leather-crack");
    if (text_same(id, "refinished") && OF(r, "books", "paper", "linens", "clothing") &&
        ANY(tokens, hit->to - 1, "stained"))
        return named(r, kind, "stain");
    if (text_same(id, "moth-holes") && OF(r, "toys", "games-puzzles") &&
        ANY(tokens, hit->to - 1, "chewed", "gnawed", "nibbled"))
        return named(r, kind, "play-wear");
    bool browned = ANY(tokens, hit->to - 1, "browned", "faded", "brown");
    if (text_same(id, "stain") && browned && ANY(tokens, hit->from, "ink")) return named(r, kind, "fading");
    if (text_same(id, "chip") && OF(r, "jewelry") && hit->from > 0 &&
        (ANY(tokens, hit->from - 1, "missing", "lost") ||
         (hit->from > 1 && ANY(tokens, hit->from - 2, "missing", "lost"))))
        return named(r, kind, "stone-missing");
    if (text_same(id, "seam-split") && OF(r, "linens", "clothing", "bags"))
        return named(r, kind, "seam-open");
    if (text_same(id, "sole-separation") && OF(r, "clothing", "linens", "toys", "bags", "holiday", "decor"))
        return named(r, kind, "loose-part");
    if (text_same(id, "binding-weak") && HAS(part, "hinge", "hinges", "box hinges") &&
        !OF(r, "books", "paper", "music", "media"))
        return named(r, kind, "loose-part");
    if (text_same(id, "clasp-fault") && HAS(part, "gear", "gears", "cog", "clutch"))
        return named(r, kind, "partly-working");
    if (text_same(id, "married-set") && HAS(part, "button", "buttons"))
        return named(r, kind, "replaced-part");
    if (text_same(id, "tear") && HAS(part, "hinge", "hinges", "screw", "screws", "bracket", "latch"))
        return named(r, kind, "loose-part");
    if (text_same(id, "crack") && OF(r, "clothing", "linens", "toys", "decor") && hit->from > 0 &&
        (ANY(tokens, hit->from - 1, "paint") || (hit->from > 1 && ANY(tokens, hit->from - 2, "paint"))))
        return named(r, kind, "finish-crackle");
    if (text_same(id, "leather-crack") &&
        kind_note_has(
            r, "plastic vinyl rubber rubberized nylon rain rainboots wellies wellingtons galoshes waders") &&
        !kind_note_has(r, "leather suede patent calf"))
        return named(r, kind, "rubber-perished");
    if (text_same(id, "rubber-perished"))
        for (size_t i = hit->from, n = 0; n < BACK && i > 0; i--, n++) {
            if (tokens->at[i - 1].stop != STOP_NONE) break;
            if (ANY(tokens, i - 1, "leather", "suede", "pigskin", "calfskin", "hide"))
                return named(r, kind, "leather-crack");
        }
    return kind;
}

// "Somebody sewed a patch on the foot", of a toy too, and a switch that is stuck.
static const struct flaw *patched_or_stuck(const struct fault_reader *r, const struct fault_hit *hit,
                                           const struct flaw *kind) {
    enum { FAR = 5 };
    const struct tokens *tokens = &r->note->tokens;
    if (text_same(kind->rule.id, "partly-working") && ANY(tokens, hit->from, "switch", "switches") &&
        ANY(tokens, hit->to - 1, "stuck", "jammed"))
        return named(r, kind, "seized");
    if (text_same(kind->rule.id, "fraying") && kind_note_has(r, "beaded beads beadwork sequins sequined"))
        for (size_t i = hit->from; i < hit->to; i++)
            if (ANY(tokens, i, "strand", "strands", "string", "strings"))
                return named(r, kind, "trim-loss"); // "a couple strands loose" of beads
    bool patch =
        text_same(kind->rule.id, "glued-repair") && ANY(tokens, hit->to - 1, "patch", "patches", "patched");
    for (size_t i = hit->from > FAR ? hit->from - FAR : 0; patch && i < hit->to + FAR && i < tokens->count;
         i++)
        if (ANY(tokens, i, "sewed", "sewn", "stitched", "sew", "handsewn", "darned"))
            return named(r, kind, "darned-patched");
    return kind;
}

// A mark that won't budge is no part that is stuck; the crust of a battery is none of water; and what is
// written on the back of a photograph was not sent through the mail.
static const struct flaw *of_what_is_named(const struct fault_reader *r, const struct fault_hit *hit,
                                           const struct flaw *kind) {
    enum { BACK = 7, MAILED = 40 };
    const struct tokens *tokens = &r->note->tokens;
    const char *id = kind->rule.id;
    if (text_same(id, "seized") && ANY(tokens, hit->to - 1, "budge", "shift", "out", "off", "move")) {
        for (size_t i = hit->to - 1, n = 0; i > 0 && n < BACK; i--, n++) {
            if (tokens->at[i - 1].stop != STOP_NONE) break;
            if (ANY(tokens, i - 1, "mark", "marks", "spot", "spots", "patch", "patches", "smudge", "streak",
                    "blotch", "stain", "stains", "splash", "drip", "smear"))
                return named(r, kind, "stain");
        }
    }
    if (text_same(id, "mineral-deposit")) {
        size_t start = scope_sentence_start(&r->scope, hit->from);
        for (size_t i = hit->from, n = 0; i > start && n < MAILED; i--, n++)
            if (ANY(tokens, i - 1, "battery", "batteries", "terminals", "contacts"))
                return named(r, kind, "battery-corrosion");
    }
    if (text_same(id, "missing-jacket"))
        for (size_t i = hit->from > 3 ? hit->from - 3 : 0; i < hit->to;
             i++) // "the jacket has about an inch missing"
            if (ANY(tokens, i, "inch", "inches", "piece", "pieces", "bit", "bits", "chunk", "chunks",
                    "corner", "strip", "flap", "panel", "part", "half", "sliver", "patch", "mm", "cm"))
                return named(r, kind, "jacket-damage");
    if (text_same(id, "postally-used") && ANY(tokens, hit->from, "written", "writing", "message") &&
        HAS(r->note->record->type.value, "photo", "photograph", "print", "tintype", "snapshot", "portrait",
            "picture", "map", "drawing", "daguerreotype", "ambrotype", "carte de visite") &&
        !kind_note_has(r, "postcard postcards posted postmark stamp stamped mailed sent"))
        return named(r, kind, "writing-inside");
    return kind;
}

// "One bishop has a broken tip": of goods that have no edge to cut with.
static const struct flaw *of_no_blade(const struct fault_reader *r, const struct fault_hit *hit,
                                      const struct flaw *kind) {
    static const char *const edged[] = {"tools", "kitchenware", "metalware", "sports", "parts", "other"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    if (!family || !text_same(kind->rule.id, "blade-wear")) return kind;
    if (!ANY(tokens, hit->from, "tip", "tips") && !ANY(tokens, hit->to - 1, "tip", "tips")) return kind;
    for (size_t k = 0; k < sizeof edged / sizeof *edged; k++)
        if (text_same(family->rule.id, edged[k])) return kind;
    return kind_note_has(r, "blade blades knife scissors shears nib") ? kind : named(r, kind, "broken-part");
}

// "The paint is worn thin but it isn't flaking": rubbed, where the other damage of paint is denied.
static const struct flaw *worn_not_flaking(const struct fault_reader *r, const struct fault_hit *hit,
                                           const struct flaw *kind) {
    enum { FAR = 12 };
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "paint-flaking") ||
        !ANY(tokens, hit->to - 1, "worn", "rubbed", "thin", "faded"))
        return kind;
    for (size_t k = hit->to; k < hit->to + FAR && k < tokens->count && tokens->at[k - 1].stop < STOP_SENTENCE;
         k++)
        if (ANY(tokens, k, "flaking", "flaky", "flakes", "peeling", "chipping", "lifting", "flaked",
                "chipped") &&
            r->scope.stance[k] & (STANCE_DENIED | STANCE_NONE_SEEN))
            return named(r, kind, "wear-rub");
    return kind;
}

// "It stays dark" of the whole: it does nothing; beside what does its work it works in part.
static const struct flaw *stays_dark(const struct fault_reader *r, const struct fault_hit *hit,
                                     const struct flaw *kind) {
    static const char *const does[] = {"works", "lights", "heats", "runs",      "plays", "half",
                                       "side",  "one",    "other", "sometimes", "low",   "high",
                                       "until", "unless", "when",  "browns"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "partly-working") || hit->to != hit->from + 2 || hit->from < 2 ||
        !ANY(tokens, hit->from, "stays", "stayed") || !ANY(tokens, hit->to - 1, "dark", "dead", "cold") ||
        !ANY(tokens, hit->from - 1, "it", "still", "just"))
        return kind;
    size_t end = scope_sentence_end(&r->scope, hit->to);
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < end; i++)
        if (token_among(tokens, i, does, sizeof does / sizeof *does)) return kind;
    return named(r, kind, "not-working");
}

const struct flaw *kind_else(const struct fault_reader *r, const struct fault_hit *hit,
                             const struct flaw *kind, const char *part) {
    kind = patched_or_stuck(r, hit, kind);
    kind = kind_of_leavings(r, hit, kind);
    kind = of_an_edge(r, hit, worn_not_flaking(r, hit, kind));
    kind = coat_gone(r, hit, clawed(r, hit, sewn_back(r, hit, bitten(r, hit, stays_dark(r, hit, kind)))));
    kind = of_what_is_named(r, hit, of_toy_or_shoe(r, of_its_stuff(r, hit, kind, part), part));
    return of_what_it_has(r, hit, runs_untried(r, hit, of_no_blade(r, hit, sewn_on(r, kind, part))), part);
}

// "Gold on the handle is mostly gone": the part is where it is, and not what is lost.
bool kind_is_at_place(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return hit->to > hit->from + 2 &&
           ANY(tokens, hit->from + 1, "on", "at", "along", "around", "round", "over");
}
