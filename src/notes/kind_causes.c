// SPDX-License-Identifier: MIT
// The kind that a fault is by what the note says brought it about: a line from the firing is no crack, and
// what is open where a seam let go is the seam's.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/kind_goods.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "A line in the base, from the firing": so it left the kiln.
static bool is_from_kiln(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 9 };
    static const char *const kinds[] = {"hairline",  "crack-through", "crack",
                                        "dent-bend", "scratches",     "chip"};
    static const char *const made[] = {
        "in making",       "in the making",  "in manufacture",   "from manufacture", "from making",
        "from the making", "from the mould", "from the mold",    "done in making",   "from the factory",
        "at the factory",  "when made",      "when it was made", "as made"};
    const struct tokens *tokens = &r->note->tokens;
    bool may = false;
    for (size_t k = 0; k < COUNT(kinds); k++) may |= text_same(hit->kinds[0]->rule.id, kinds[k]);
    for (size_t i = hit->to; may && i < tokens->count && i < hit->to + FAR; i++) {
        if (tokens->at[i].stop > STOP_COMMA || ANY(tokens, i, "and", "but", "not")) return false;
        if (token_longest(tokens, i, made, COUNT(made))) return true;
        size_t at = i + 1 + ANY(tokens, i + 1, "the", "its");
        if (ANY(tokens, i, "from", "in", "during", "since") && ANY(tokens, at, "firing", "kiln")) return true;
    }
    return false;
}

#define GAMING_PIECES "tile tiles piece pieces domino dominoes counter counters"

// The plating that flakes is no paint, the teeth of a gear wear and do not chip.
static const char *by_part(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                           const char *place) {
    static const struct {
        const char *said, *meant, *of, *last, *families; // NULL: any
    } parts[] = {
        {"paint-flaking", "plate-wear", "plating chrome nickel", NULL, NULL},
        {"chip", "wear-rub", "gear gears cog cogs thread threads pinion", "worn", NULL},
        {"chip", "broken-part", "screw screws bolt bolts nail nails pin pins rivet rivets stud studs", NULL,
         NULL},
        {"seam-split", "seam-open",
         "leather cloth canvas lining bag cover cushion hide vinyl pouch strap holster", NULL, NULL},
        {"stone-missing", "missing-accessory", "crystal", NULL, "clocks-watches"},
        {"clasp-fault", "broken-part", "hook hooks eyelet eyelets", "broken", "footwear"},
        {"loose-part", "pages-loose", "map maps plate plates page pages leaf leaves chart charts", "loose",
         "books"},
        {"crack-through", "crack", GAMING_PIECES, NULL, "games-puzzles"},
        {"crack", "crack", GAMING_PIECES, NULL, "games-puzzles"}, // though a tile is fired elsewhere
        {"binding-weak", "crack", "hinge hinges", "cracked", "media"},
        {"binding-weak", "crack", "hinge hinges", "split", "media"},
        {"peeling-coating", "rubber-perished", "sole soles heel heels tread treads", NULL, "footwear"},
        {"broken-part", "plate-wear", "plating", NULL, NULL},
        {"rust", "moth-holes", "velvet baize felt pad cloth", "away", NULL},
        {"decoration-wear", "broken-part", "beak tail wing ear horn nose antler hand foot arm finger", "gone",
         NULL},
        {"screen-damage", "missing-accessory", "glass crystal", "missing", NULL},
        {"screen-damage", "missing-accessory", "glass crystal", "gone", NULL},
        {"screen-damage", "chip", "knob knobs handle lid stopper finial bowl jug base shade dome",
         "chip chips chipped nick nicks nicked", NULL},
        {"screen-damage", "scratches", "knob knobs handle lid stopper finial bowl jug base shade dome",
         "scratch scratches scratched", NULL},
        {"screen-damage", "crack-through", "knob knobs handle lid stopper finial bowl jug base shade", NULL,
         NULL},
        {"peeling-coating", "crack",
         "knob knobs handle handles case casing lid base housing button buttons key keys dial bezel",
         "cracked", NULL},
        {"woodworm", "hole", "bag bags sack hose cover cloth sleeve pouch", NULL, NULL},
        {"wear-unspecified", "decoration-wear", "border pattern decoration design", NULL,
         "ceramics glassware"},
        {"wear-unspecified", "gilt-wear", "bands band", NULL, "ceramics glassware"}};
    for (size_t i = 0; i < COUNT(parts); i++) {
        if (!text_same(kind->rule.id, parts[i].said)) continue;
        const struct family *family = r->note->record->family;
        if (parts[i].families && (!family || !kind_has_word(parts[i].families, family->rule.id))) continue;
        if (parts[i].last && !kind_has_word(parts[i].last, r->note->tokens.at[hit->to - 1].fold)) continue;
        for (const char *word = parts[i].of; *word;) {
            size_t size = strcspn(word, " ");
            const char *found = strstr(place, arena_copy(r->note->arena, word, size));
            if (found && (found == place || found[-1] == ' ') && (!found[size] || found[size] == ' '))
                return parts[i].meant;
            word += size + (word[size] == ' ');
        }
    }
    return NULL;
}

// "A white ring of lime", "smells of frying oil": what it is of tells more than the ring and the oil do.
static const char *by_stuff(const struct fault_reader *r, const struct fault_hit *hit) {
    static const struct {
        const char *said, *meant, *stuffs;
    } all[] = {{"ring-mark", "mineral-deposit", "lime limescale scale chalk scum salt salts calcium fur"},
               {"ring-mark", "rust", "rust"},
               {"ring-mark", "dust-grime", "dirt grime dust soot mud muck"},
               {"ring-mark", "grease-film", "grease fat"},
               {"odor-fuel", "odor-food",
                "salad cooking olive vegetable frying chip sesame rancid corn sunflower coconut"}};
    enum { FAR = 3 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t k = 0; k < COUNT(all); k++) {
        if (!text_same(hit->kinds[0]->rule.id, all[k].said)) continue;
        bool ring = text_same(all[k].said, "ring-mark");
        if (ring && !(ANY(tokens, hit->to - 1, "ring", "rings") && token_is(tokens, hit->to, "of"))) continue;
        size_t from = ring ? hit->to + 1 : hit->from, to = ring ? from + FAR : hit->to;
        for (size_t i = from; i < to && i < tokens->count; i++) {
            if (tokens->at[i].kind == TOKEN_WORD && kind_has_word(all[k].stuffs, tokens->at[i].fold))
                return all[k].meant;
            if (tokens->at[i].stop != STOP_NONE) break;
        }
    }
    return NULL;
}

// "A leather handle has snapped" of a bag or trunk.
static bool is_handle_of_hide(const struct fault_reader *r, const struct fault_hit *hit,
                              const struct flaw *kind, const char *place) {
    const struct family *family = r->note->record->family;
    return place && family && text_same(family->rule.id, "bags") && text_same(kind->rule.id, "broken-part") &&
           (kind_has_word(place, "handle") || kind_has_word(place, "handles")) &&
           ANY(&r->note->tokens, hit->to - 1, "snapped", "broken", "broke", "off") &&
           (kind_is_leather(r, place) || kind_note_has(r, "leather hide"));
}

// "Its carrying case has a split seam", "the leather case of the radio": sewn, whatever the goods are made
// of.
static bool is_sewn(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    static const char *const soft[] = {"leather", "canvas",  "carrying", "carry",  "pouch",
                                       "bag",     "holster", "strap",    "sleeve", "padded",
                                       "nylon",   "quilted", "vinyl",    "gig",    "webbing"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "seam-split")) return false;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->to; i++)
        if (token_among(tokens, i, soft, COUNT(soft))) return true;
    return false;
}

// "Pads patched with felt", "elbow patched in leather": sewn on, not stuck.
static bool is_patched_with_cloth(const struct fault_reader *r, const struct fault_hit *hit,
                                  const struct flaw *kind) {
    static const char *const cloths[] = {"felt",  "cloth",    "fabric",  "denim",  "leather",
                                         "wool",  "cotton",   "canvas",  "calico", "velvet",
                                         "suede", "corduroy", "flannel", "linen",  "ticking"};
    enum { FAR = 4 };
    const struct tokens *tokens = &r->note->tokens;
    bool patched = false;
    for (size_t i = hit->from; i < hit->to; i++) patched |= ANY(tokens, i, "patched");
    if (!patched || !text_same(kind->rule.id, "glued-repair")) return false;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + FAR && tokens->at[i - 1].stop == STOP_NONE;
         i++)
        if (token_among(tokens, i, cloths, COUNT(cloths))) return !kind_is_hard(r, NULL);
    return false;
}

// "Soles coming off at the heel and crumbling": what of a boot crumbles is the foam or rubber under it.
static bool is_crumbling_sole(const struct fault_reader *r, const struct fault_hit *hit,
                              const struct flaw *kind) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "peeling-coating") ||
        !ANY(tokens, hit->from, "crumbling", "crumbles", "crumbled", "crumbly"))
        return false;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->from; i++)
        if (ANY(tokens, i, "sole", "soles", "midsole", "midsoles", "tread", "treads")) return true;
    return false;
}

// "A popper has come off the cuff" of a coat: it is gone as a button is, and not loose.
static bool is_fastener_off(const struct fault_reader *r, const struct fault_hit *hit,
                            const struct flaw *kind, const char *place) {
    const struct family *family = r->note->record->family;
    const char *one = place ? say_singular(r->note->arena, place) : NULL;
    if (!one || !family || !text_same(kind->rule.id, "loose-part") ||
        !kind_has_word("clothing bags linens footwear", family->rule.id) ||
        !kind_has_word("popper toggle snap press-stud stud button frog", one))
        return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(&r->note->tokens, i, "off")) return true;
    return false;
}

// "One latch is broken off the case": the latch is gone; of a bracelet it is the clasp's fault all the same.
static bool is_latch_off(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    const struct family *family = r->note->record->family;
    return text_same(kind->rule.id, "clasp-fault") && family &&
           !kind_has_word("jewelry clothing clocks-watches footwear", family->rule.id) &&
           ANY(&r->note->tokens, hit->to - 1, "broken", "snapped", "broke", "sheared", "off") &&
           (ANY(&r->note->tokens, hit->to, "off") || ANY(&r->note->tokens, hit->to - 1, "off"));
}

// "The spout joint weeps" of a thing of sheet metal: its solder.
static bool is_leaky_joint(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                           const char *place) {
    const struct tokens *tokens = &r->note->tokens;
    bool joint = false;
    for (size_t i = hit->from; i < hit->to; i++) joint |= ANY(tokens, i, "joint", "joints", "join");
    return joint && text_same(kind->rule.id, "partly-working") && kind_is_metal(r, place) &&
           ANY(tokens, hit->to - 1, "leaks", "leak", "leaking", "drips", "weeps", "seeps", "weeping",
               "dribbles");
}

// "In a wooden box with a sliding lid": such a lid splits as wood does.
static bool is_of_wooden_box(const struct fault_reader *r, const char *place) {
    return place && kind_has_word("lid box cover case drawer tray", place) &&
           kind_note_has(r, "wood wooden oak pine mahogany walnut teak beech") &&
           !kind_note_has(r, "card cardboard carton paper");
}

// "White crust inside" of a radio: out of its batteries.
static bool is_of_battery(const struct fault_reader *r, const struct fault_hit *hit,
                          const struct flaw *kind) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "mineral-deposit") ||
        !kind_note_has(r, "radio radios flashlight flashlights torch battery batteries transistor calculator "
                          "walkie cassette recorder metronome lantern camera"))
        return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(tokens, i, "crust", "powder", "residue", "fuzz", "deposit", "deposits", "crusty"))
            return true;
    return false;
}

// "The slipcase is split at a corner": a box for books, whatever they are bound in.
static bool is_of_slipcase(const struct fault_reader *r, const struct fault_hit *hit,
                           const struct flaw *kind) {
    enum { BACK = 4 };
    const struct tokens *tokens = &r->note->tokens;
    bool torn = false;
    for (size_t i = hit->from; i < hit->to; i++)
        torn |= ANY(tokens, i, "split", "torn", "cracked", "splitting", "open");
    if (!torn || kind->class != CLASS_DAMAGE) return false;
    for (size_t i = hit->to, n = 0; i > 0 && (i > hit->from || n++ < BACK); i--) {
        if (ANY(tokens, i - 1, "slipcase")) return true;
        if (i <= hit->from && tokens->at[i - 1].stop != STOP_NONE) return false;
    }
    return false;
}

// "Silver overlay is worn", "lustre is rubbed": what was laid on the glass or the glaze.
static bool is_of_overlay(const struct fault_reader *r, const struct fault_hit *hit,
                          const struct flaw *kind) {
    enum { BACK = 4 };
    if (!text_same(kind->rule.id, "wear-unspecified") && !text_same(kind->rule.id, "wear-rub")) return false;
    for (size_t i = hit->from, n = 0; i > 0 && n < BACK && r->note->tokens.at[i - 1].stop == STOP_NONE;
         i--, n++)
        if (ANY(&r->note->tokens, i - 1, "overlay", "gilding", "gilt")) return true;
    return false;
}

// "Rim split where the solder let go": what comes of it and what came first are one.
const char *kind_of_cause(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                          const char *place) {
    enum { FAR = 5 };
    if (is_leaky_joint(r, hit, kind, place)) return "seam-split";
    if (is_of_slipcase(r, hit, kind)) return "box-wear";
    if (is_of_battery(r, hit, kind)) return "battery-corrosion";
    if (is_of_overlay(r, hit, kind)) return "gilt-wear";
    const struct family *family = r->note->record->family;
    if (family && text_same(family->rule.id, "jewelry") && text_same(kind->rule.id, "wood-split") &&
        !kind_note_has(r, "wood wooden bamboo ebony rosewood"))
        return "crack"; // the band of a ring
    if (family && text_same(family->rule.id, "music") && text_same(kind->rule.id, "chip") && place &&
        kind_has_word("edge edges corner corners cover covers", place) &&
        kind_note_has(r, "sheet score songbook"))
        return "edge-wear"; // sheet music
    if (text_same(kind->rule.id, "not-working") && !kind_note_has(r, "engine motor electric petrol") &&
        ANY(&r->note->tokens, hit->from, "seized", "frozen", "jammed"))
        return "seized"; // a roller, a vise
    if (text_same(kind->rule.id, "partly-working") &&
        ANY(&r->note->tokens, hit->to, "match", "quite", "suit"))
        for (size_t i = hit->from; i < hit->to; i++) // "replaced with one that doesn't match"
            if (ANY(&r->note->tokens, i, "replaced", "swapped", "changed")) return "replaced-part";
    bool shape = text_same(kind->rule.id, "warped") && ANY(&r->note->tokens, hit->to - 1, "shape");
    if (shape && (kind_is_metal(r, place) ||
                  (r->note->record->family && text_same(r->note->record->family->rule.id, "jewelry"))))
        return "dent-bend"; // "the band has gone out of shape"
    if (text_same(kind->rule.id, "woodworm") && place && kind_note_has(r, "bag bags hose sack")) {
        const char *hole = by_part(r, hit, kind, place);
        if (hole) return hole;
    }
    const char *stuff = by_stuff(r, hit);
    if (stuff) return stuff;
    if (is_patched_with_cloth(r, hit, kind)) return "darned-patched";
    if (text_same(kind->rule.id, "stone-missing") && place) return by_part(r, hit, kind, place);
    if (kind->class != CLASS_DAMAGE && !text_same(kind->rule.id, "clasp-fault")) return NULL;
    if (is_sewn(r, hit, kind)) return "seam-open";
    if (is_crumbling_sole(r, hit, kind)) return "rubber-perished";
    if (is_from_kiln(r, hit)) return "firing-flaw";
    if (text_same(kind->rule.id, "wood-split") && r->note->record->family && // of a game's box, mostly
        text_same(r->note->record->family->rule.id, "games-puzzles") &&
        (ANY(&r->note->tokens, hit->from, "split") || ANY(&r->note->tokens, hit->to - 1, "split")) &&
        !kind_is_of_material(r, kind, place) && !is_of_wooden_box(r, place))
        return "tear";
    if (is_fastener_off(r, hit, kind, place)) return "missing-button";
    if (is_latch_off(r, hit, kind)) return "broken-part";
    if (is_handle_of_hide(r, hit, kind, place)) return "strap-damage";
    if (text_same(kind->rule.id, "upholstery-wear") && ANY(&r->note->tokens, hit->to - 1, "hole", "holes") &&
        kind_is_by_moth(r, hit))
        return "moth-holes"; // of a covered seat
    const char *meant = place ? by_part(r, hit, kind, place) : NULL;
    if (meant) return meant;
    static const char *const joins[] = {"seam-split", "seam-open", "loose-joint", "clasp-fault"};
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, hit->to, "where", "because", "as", "since") ||
        tokens->at[hit->to - 1].stop != STOP_NONE ||
        !ANY(tokens, hit->to - 1, "split", "open", "opened", "parted", "gaping", "gapes", "cracked", "loose"))
        return NULL;
    for (size_t i = 0; i < r->hit_count; i++)
        for (size_t k = 0; k < COUNT(joins) && r->hits[i].from > hit->to && r->hits[i].from < hit->to + FAR;
             k++)
            if (text_same(r->hits[i].kinds[0]->rule.id, joins[k])) return joins[k];
    return NULL;
}
