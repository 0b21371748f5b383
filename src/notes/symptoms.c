// SPDX-License-Identifier: MIT
// What tells of a fault and is none beside it: a cracked bell that rings dull, a crack with light through it,
// "tarnished brown all over", "sticks on the slow speeds".
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_kind(const struct flaw *kind, const char *const *ids, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (text_same(kind->rule.id, ids[i])) return true;
    return false;
}

// The fault of the same sentence that was told last before token `i`; NULL where none was.
static const struct fault_hit *told_before(const struct fault_reader *r, size_t i) {
    const struct fault_hit *last = r->hit_count ? &r->hits[r->hit_count - 1] : NULL;
    if (!last || last->to > i) return NULL;
    for (size_t k = last->to; k < i; k++)
        if (r->note->tokens.at[k].stop >= STOP_SENTENCE) return NULL;
    return last;
}

static bool holds(const struct tokens *tokens, const struct phrase_hit *hit, const char *word) {
    for (size_t i = hit->from; i < hit->to; i++)
        if (token_is(tokens, i, word)) return true;
    return false;
}

// "Works but the key tab is lost": what follows is wrong with another part, and is told.
static bool is_before_other(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const ills[] = {"lost",   "missing", "gone", "broken", "cracked",   "bent",  "loose",
                                       "dented", "chipped", "worn", "torn",   "scratched", "rusty", "split"};
    enum { FAR = 11 };
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, hit->to - 1, "but")) return false;
    if (ANY(tokens, hit->to, "there's", "theres", "only") &&
        ANY(tokens, hit->to + 1, "only", "no", "one", "just"))
        return true; // "works but there's only one key"
    if (!ANY(tokens, hit->to, "the", "its", "no", "one")) return false;
    for (size_t i = hit->to + 1; i < tokens->count && i < hit->to + FAR; i++) {
        if (tokens->at[i].stop != STOP_NONE) return false;
        if (i > hit->to + 1 && token_among(tokens, i, ills, COUNT(ills))) return true;
    }
    return false;
}

// "Strap part present, the catch plate isn't": of a part that another reader tells.
static bool is_here_not(const struct tokens *tokens, const struct phrase_hit *hit) {
    enum { BACK = 4 };
    if (!ANY(tokens, hit->to - 1, "isn't", "aren't") ||
        (hit->to < tokens->count && tokens->at[hit->to].stop == STOP_NONE))
        return false;
    size_t at = hit->from;
    while (at > 0 && hit->from - at < BACK && tokens->at[at - 1].stop == STOP_NONE) at--;
    return at > 1 && tokens->at[at - 1].stop == STOP_COMMA &&
           ANY(tokens, at - 2, "present", "here", "there", "included");
}

// "Leaks at the ankle where the rubber has split", "leaks from a crack in the base": what it leaks by is
// told.
static bool is_leak_by(const struct fault_reader *r, const struct phrase_hit *hit) {
    enum { FAR = 9 };
    static const char *const leaks[] = {"leaks", "leak", "leaking", "weeps", "weeping", "drips", "dripping"};
    static const char *const openings[] = {"crack",      "crack-through", "hairline",        "wood-split",
                                           "tear",       "hole",          "rubber-perished", "seam-open",
                                           "seam-split", "chip",          "leather-crack",   "broken-part"};
    const struct tokens *tokens = &r->note->tokens;
    const struct phrase_hits *hits = &r->note->hits;
    size_t at = hit->from;
    while (at < hit->to && !token_among(tokens, at, leaks, COUNT(leaks))) at++;
    if (at == hit->to) return false;
    bool by = false;
    for (size_t i = at + 1; i < tokens->count && i < at + FAR && tokens->at[i - 1].stop == STOP_NONE; i++) {
        by |= ANY(tokens, i, "where", "because", "as", "from", "through", "since", "by", "via");
        for (size_t k = 0; by && k < hits->count && hits->at[k].from <= i; k++)
            if (hits->at[k].from == i && is_kind(hits->at[k].flaw, openings, COUNT(openings))) {
                note_take(r->note, at, at + 1, TAKEN_SCOPE);
                return true;
            }
    }
    return false;
}

// "It leans because the pole is bent": what makes it lean is told.
static bool is_lean_by(const struct fault_reader *r, const struct phrase_hit *hit) {
    enum { FAR = 8 };
    static const char *const leans[] = {"leans",  "lean", "leaning", "tilts", "tilted", "lists",
                                        "droops", "tips", "wobbles", "rocks", "sags"};
    static const char *const causes[] = {"dent-bend", "broken-part", "loose-part",       "missing-hardware",
                                         "warped",    "wood-split",  "missing-accessory"};
    const struct tokens *tokens = &r->note->tokens;
    const struct phrase_hits *hits = &r->note->hits;
    if (!token_among(tokens, hit->to - 1, leans, COUNT(leans))) return false;
    bool by = false;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + FAR && tokens->at[i].stop < STOP_SENTENCE;
         i++) {
        by |= ANY(tokens, i, "because", "since", "cause", "cos");
        for (size_t k = 0; by && k < hits->count && hits->at[k].from <= i; k++)
            if (hits->at[k].from == i && is_kind(hits->at[k].flaw, causes, COUNT(causes))) {
                note_take(r->note, hit->from, hit->to, TAKEN_SCOPE);
                return true;
            }
    }
    return false;
}

static bool reads_not(const struct tokens *tokens, size_t i) {
    enum { FAR = 4 };
    bool no = false;
    for (size_t at = i; at < i + FAR && at < tokens->count && tokens->at[at - 1].stop == STOP_NONE; at++) {
        no |= ANY(tokens, at, "can't", "cannot", "couldn't", "cant");
        if (no && (ANY(tokens, at, "read") || token_phrase(tokens, at, "make out"))) return true;
    }
    return false;
}

static bool so_before(const struct tokens *tokens, size_t i) {
    for (size_t back = 1; back <= 3 && back <= i && tokens->at[i - back].stop == STOP_NONE; back++)
        if (token_is(tokens, i - back, "so")) return true;
    return token_is(tokens, i, "so");
}

// "One foot is missing so it rocks", "the pins are gone so it just rests on blocks": the lack is what is
// told.
static bool is_for_lack(const struct tokens *tokens, const struct phrase_hit *hit) {
    enum { BACK = 9 };
    if (!ANY(tokens, hit->to - 1, "rocks", "wobbles", "leans", "tilts", "tips", "wobbly", "rock", "wobble") &&
        !(token_is(tokens, hit->from, "just") && ANY(tokens, hit->to - 1, "on")))
        return false;
    size_t so = hit->from;
    while (so > 0 && hit->from - so < 3 &&
           ANY(tokens, so - 1, "it", "it's", "they", "just", "now", "sort", "of"))
        so--;
    if (so == 0 || !ANY(tokens, so - 1, "so")) return false;
    for (size_t i = so - 1; i > 0 && so - i < BACK && tokens->at[i - 1].stop < STOP_CLAUSE; i--)
        if (ANY(tokens, i - 1, "missing", "gone", "lost", "absent")) return true;
    return false;
}

bool fault_is_symptom(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const cracks[] = {"crack", "crack-through", "hairline", "wood-split"};
    static const char *const openings[] = {"crack", "crack-through", "hairline",  "wood-split", "tear",
                                           "hole",  "moth-holes",    "seam-open", "seam-split"};
    static const char *const darkened[] = {"tarnish", "toning", "fading", "stain", "heat-damage"};
    static const char *const looseners[] = {"loose-part", "loose-joint", "broken-part", "missing-hardware",
                                            "dent-bend",  "warped",      "wood-split"};
    static const char *const clouded[] = {"cloudy-glass", "decoration-wear", "yellowing", "scratches",
                                          "dust-grime"};
    static const char *const stuck[] = {"seized", "partly-working", "not-working"};
    const struct tokens *tokens = &r->note->tokens;
    const char *id = hit->flaw->rule.id;
    const struct fault_hit *before = told_before(r, hit->from);
    if (text_same(id, "partly-working") && is_before_other(r, hit)) return true;
    if (is_for_lack(tokens, hit)) return true;
    if (text_same(id, "broken-part") && hit->near && ANY(tokens, hit->to - 1, "gone", "lost", "missing") &&
        ANY(tokens, hit->from + 1, "paint", "color", "colour", "trim", "gilding", "glaze", "flocking", "fur",
            "enamel"))
        return true; // "the beak paint is about gone"
    if (text_same(id, "edge-wear") && hit->near &&
        (holds(tokens, hit, "hole") || holds(tokens, hit, "holes")))
        return true; // "the corner has a hole worn in it"
    if (text_same(id, "peeling-coating") && before &&
        ANY(tokens, hit->from, "bits", "bit", "pieces", "flakes") &&
        text_same(before->kinds[0]->rule.id, "brittle-paper"))
        return true; // "brittle, and bits come off"
    if (text_same(id, "fraying") && ANY(tokens, hit->to - 1, "bits") && holds(tokens, hit, "brittle"))
        return true; // "edges are brittle and bits come off"
    if (text_same(id, "complete-counted") && ANY(tokens, hit->to - 1, "counted") && hit->from < hit->to &&
        ANY(tokens, hit->from, "i", "we") &&
        (degrees_number(tokens, hit->to) || ANY(tokens, hit->to, "about", "around", "only", "just", "some")))
        return true; // "I counted thirty": how many there are, and not that these are all
    struct word_entry entry;
    if (hit->flaw->form == ABSENCE && hit->near && hit->to == hit->from + 3 &&
        tokens->at[hit->from].stop == STOP_NONE &&
        ANY(tokens, hit->to - 1, "gone", "missing", "lost", "absent", "lacking") &&
        word_at(r->note, hit->from, 1u << USE_PART, &entry) == 1 &&
        word_at(r->note, hit->from + 1, 1u << USE_PART, &entry) == 1)
        return true; // "lid chain gone": the chain
    if (hit->flaw->form != ABSENCE && (is_leak_by(r, hit) || is_lean_by(r, hit))) return true;
    if (ANY(tokens, hit->from, "hard") && hit->to == hit->from + 1 &&
        ANY(tokens, hit->to, "pull", "tug", "shove", "push", "yank", "twist", "knock", "press"))
        return true; // "sticks, needs a hard pull"
    if ((text_same(id, "firing-flaw") || text_same(id, "hole")) &&
        (holds(tokens, hit, "pinholes") || holds(tokens, hit, "pinhole")) &&
        ((token_is(tokens, hit->to, "of") && ANY(tokens, hit->to + 1, "rust", "corrosion")) ||
         (before && text_same(before->kinds[0]->rule.id, "rust"))))
        return true; // "pinholes of rust", "rusted through in pinholes"
    if (text_same(id, "rubber-perished") && holds(tokens, hit, "grip") &&
        !ANY(tokens, hit->from, "rubber", "grips", "elastic"))
        return true; // a clamp that "doesn't grip"
    if (text_same(id, "rust") && ANY(tokens, hit->to - 1, "on") &&
        ANY(tokens, hit->to - 2, "off", "away", "apart", "loose", "down") &&
        ANY(tokens, hit->to, "one", "the", "both", "its", "either"))
        return true; // "the hinge has come off on one side"
    bool liner = text_same(id, "missing-liner") && token_is(tokens, hit->to - 1, "inner");
    if (liner && hit->to < tokens->count && tokens->at[hit->to].stop == STOP_NONE &&
        !ANY(tokens, hit->to, "liner", "lining", "tray", "tube", "bag", "pan"))
        return true; // "has lost its inner white paint"
    bool ring = text_same(id, "ring-mark") && hit->to == hit->from + 1 && hit->from > 0;
    if (ring && ANY(tokens, hit->from - 1, "left", "right", "strap", "brass", "steel", "d", "split", "top",
                    "bottom", "end"))
        return true; // "gone at the left ring"
    if (text_same(id, "ring-mark") && ANY(tokens, hit->from, "left") && hit->from > 0 &&
        ANY(tokens, hit->from - 1, "the", "on", "at", "this", "its"))
        return true; // "at the left ring"
    if (text_same(id, "stain") && hit->near && holds(tokens, hit, "and") &&
        ANY(tokens, hit->from, "cups", "cup", "glass", "mugs", "glasses"))
        return true; // "5 cups 6 saucers and milk jug"
    if (text_same(id, "missing-pieces") && ANY(tokens, hit->from, "one") &&
        ANY(tokens, hit->from + 1, "down") && hit->from > 0 &&
        ANY(tokens, hit->from - 1, "first", "second", "third", "fourth", "next", "the"))
        return true; // "third one down has a dent"
    static const char *const looks[] = {
        "scorched", "burnt",  "burned",  "bald",       "bare",   "worn",   "faded",   "stained",
        "damp",     "wet",    "rusty",   "rusted",     "sticky", "greasy", "thin",    "dull",
        "shiny",    "rough",  "soft",    "dark",       "light",  "pale",   "brown",   "black",
        "white",    "green",  "rubbed",  "threadbare", "melted", "cloudy", "scuffed", "blistered",
        "unglazed", "crazed", "chipped", "flaky",      "raised", "matt",   "charred"};
    if ((text_same(id, "darned-patched") || text_same(id, "glued-repair")) && hit->from > 0 &&
        ANY(tokens, hit->from, "patch", "patches") && tokens->at[hit->from - 1].stop == STOP_NONE &&
        token_among(tokens, hit->from - 1, looks, COUNT(looks)))
        return true; // "a scorched patch on the bottom"
    if (text_same(id, "stain") && ANY(tokens, hit->to - 1, "mark", "marks") &&
        ANY(tokens, hit->to, "i", "that", "which", "we") && reads_not(tokens, hit->to))
        return true; // "a faint mark I can't read": the maker's
    if (is_here_not(tokens, hit)) return true;
    if (text_same(id, "tarnish") && hit->near && ANY(tokens, hit->to - 1, "plate") &&
        ANY(tokens, hit->to - 2, "dinner", "tea", "side", "a", "small"))
        return true; // "a dark stain the size of a dinner plate"
    if (ANY(tokens, hit->to - 1, "line") && ANY(tokens, hit->from, "glaze") && hit->from > 1 &&
        ANY(tokens, hit->from - 1, "the") && ANY(tokens, hit->from - 2, "past", "to", "below", "above", "at"))
        return true; // "down past the glaze line"
    if (text_same(id, "dent-bend") && hit->near && ANY(tokens, hit->from, "dropped", "knocked")) {
        enum { FAR = 6 };
        for (size_t i = hit->from + 1;
             i < tokens->count && i < hit->to + FAR && tokens->at[i].stop < STOP_SENTENCE; i++)
            if (i < hit->to
                    ? ANY(tokens, i, "piece", "bit", "chunk", "lump", "flake")
                    : ANY(tokens, i, "broke", "broken", "snapped", "cracked", "smashed", "split", "chipped"))
                return true; // "dropped the base and it broke", "knocked a piece off the edge"
    }
    if (!before) return false;
    if (text_same(id, "seized") && text_same(before->kinds[0]->rule.id, "seized") &&
        ANY(tokens, hit->to - 1, "hands")) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "stiff, it takes both hands"
    }
    if (text_same(id, "binding-weak") && text_same(before->kinds[0]->rule.id, "binding-weak") &&
        holds(tokens, hit, "still")) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "hinge cracked, the board still hanging on"
    }
    if (text_same(id, "hairline") && text_same(before->kinds[0]->rule.id, "glued-repair") &&
        ANY(tokens, hit->to - 1, "line", "lines") &&
        !ANY(tokens, hit->to, "in", "on", "from", "down", "across", "through", "along", "inside", "to",
             "at")) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "glued back at the neck, tight line": that of the mend
    }
    if (text_same(id, "cloudy-glass") && before->to == hit->from && before->kinds[0]->form == FAULT &&
        ANY(tokens, hit->from, "from", "in", "through")) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "etching faint from the dishwasher"
    }
    if (text_same(id, "mirror-silvering") && hit->from > 0 && ANY(tokens, hit->from - 1, "where") &&
        ANY(tokens, hit->from, "damp", "water", "wet", "moisture")) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "peeling where damp got it"
    }
    if (text_same(id, "yellowing") && hit->from > 0 &&
        ANY(tokens, hit->from - 1, "glue", "adhesive", "has") &&
        text_same(before->kinds[0]->rule.id, "glued-repair") && before->to >= hit->from - 1) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "the glue has gone yellow"
    }
    static const char *const soils[] = {"stain",           "mineral-deposit", "cloudy-glass",
                                        "sticker-residue", "grease-film",     "heat-damage",
                                        "dust-grime",      "tarnish",         "ring-mark"};
    if ((text_same(id, "seized") || text_same(id, "stain")) && before->to <= hit->from &&
        ANY(tokens, hit->to - 1, "shift", "budge") &&
        ANY(tokens, hit->from - 1, "i", "we", "that", "which", "inside") &&
        is_kind(before->kinds[0], soils, COUNT(soils))) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "a lime ring I can't shift"
    }
    static const char *const skins[] = {"veneer-damage", "paint-flaking", "peeling-coating", "gilt-wear",
                                        "enamel-chip"};
    if (text_same(id, "broken-part") && ANY(tokens, hit->from, "bit", "piece", "some", "bits", "pieces") &&
        is_kind(before->kinds[0], skins, COUNT(skins))) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "veneer lifting on the left and a bit missing there"
    }
    if (before->kinds[0]->form == ABSENCE && hit->flaw->form == ABSENCE && holds(tokens, hit, "slot"))
        return true; // "the scale isn't there, that's the empty slot"
    const struct flaw *kind = before->kinds[0];
    if (text_same(kind->rule.id, "hairline") && before->to == hit->from && before->to == before->from + 1 &&
        ANY(tokens, hit->from, "split", "splits", "crack", "cracks", "fracture", "fractures", "line",
            "lines"))
        return true; // "hairline splits"
    if (text_same(id, "hairline") && text_same(kind->rule.id, "scratches"))
        return ANY(tokens, hit->to, "ones");
    if (text_same(id, "tarnish") && ANY(tokens, hit->to - 1, "out", "off") &&
        (ANY(tokens, hit->from - 1, "would", "will", "should", "could", "might") ||
         ANY(tokens, hit->from, "would", "will", "should", "could", "might")))
        return true; // "scuffs, would polish out"
    if (text_same(id, "fading") && ANY(tokens, hit->from, "hard", "difficult"))
        return is_kind(kind, clouded, COUNT(clouded)); // "dial cloudy, hard to read"
    if (is_kind(hit->flaw, cracks, COUNT(cracks)) && holds(tokens, hit, "daylight"))
        return is_kind(kind, openings, COUNT(openings));
    bool hurt = kind->class == CLASS_DAMAGE && kind->form == FAULT;
    static const char *const stops[] = {"seized", "clasp-fault", "warped"};
    if (is_kind(hit->flaw, stops, COUNT(stops)) && is_kind(kind, (const char *const[]){"dent-bend"}, 1) &&
        so_before(tokens, hit->from)) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "dented at the rim so the lid won't seat": how bad the dent is
    }
    static const char *const emptied[] = {"partly-working", "hole", "leak", "seam-split"};
    static const char *const opened[] = {"hole",          "seam-split", "crack",
                                         "crack-through", "wood-split", "seam-open"};
    if (is_kind(hit->flaw, emptied, COUNT(emptied)) && is_kind(kind, opened, COUNT(opened)) &&
        ANY(tokens, hit->from, "won't", "doesn't", "wont", "doesnt", "hold") &&
        so_before(tokens, hit->from)) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "tank has pinholes so it won't hold oil"
    }
    if (hurt && ANY(tokens, hit->to - 1, "leans") && hit->from > 1 &&
        ANY(tokens, hit->from - 1, "it", "they") && ANY(tokens, hit->from - 2, "so")) {
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return true; // "one leg short so it leans"
    }
    if (hurt && text_same(id, "partly-working") &&
        (ANY(tokens, hit->from, "unless", "if") ||
         (ANY(tokens, hit->from, "won't", "doesn't") && is_kind(kind, looseners, 2))))
        return true; // "dented, won't go on unless you twist it", "floppy, won't hold up"
    if (text_same(id, "seized") &&
        (text_same(kind->rule.id, "dent-bend") || text_same(kind->rule.id, "warped")) &&
        ANY(tokens, hit->from, "won't", "doesn't", "wont") && ANY(tokens, hit->to - 1, "in", "on", "back"))
        return true; // "so bent it won't go in"
    if (text_same(id, "cord-frayed") && kind == hit->flaw && holds(tokens, hit, "showing"))
        return true; // "lead chewed, bare wire showing"
    bool loose = text_same(id, "loose-part") || text_same(id, "loose-joint");
    for (size_t i = before->to; loose && i < hit->from; i++) // "hinge pin loose so the lid flops"
        if (ANY(tokens, i, "so")) return is_kind(kind, looseners, COUNT(looseners));
    if (is_kind(hit->flaw, cracks, COUNT(cracks)) && is_kind(kind, cracks, COUNT(cracks)))
        return ANY(tokens, hit->from, "rings", "ring", "sounds", "dull", "can", "feel", "felt", "feels");
    if (text_same(id, "hole"))
        return (holds(tokens, hit, "light") || holds(tokens, hit, "daylight")) &&
               is_kind(kind, openings, COUNT(openings));
    if (text_same(id, "rust") && hit->from <= before->to + 1)
        return ANY(tokens, hit->from, "brown", "black", "dark") && is_kind(kind, darkened, COUNT(darkened));
    return text_same(id, "partly-working") && token_is(tokens, hit->to - 1, "speeds") &&
           is_kind(kind, stuck, COUNT(stuck));
}
