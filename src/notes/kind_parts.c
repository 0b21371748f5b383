// SPDX-License-Identifier: MIT
// What a word of fault is by the part that it is said of: what has a grain is wood, whatever the thing.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/kind_goods.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

bool kind_names_one(const char *place, const char *const *words, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (kind_has_word(place, words[i])) return true;
    return false;
}
static bool is_in(const struct fault_reader *r, const char *const *ids, size_t count) {
    const struct family *family = r->note->record->family;
    for (size_t i = 0; family && i < count; i++)
        if (text_same(family->rule.id, ids[i])) return true;
    return false;
}

static bool is_paper(const struct fault_reader *r) {
    return is_in(r, (const char *const[]){"books", "paper"}, 2);
}

static bool is_fired_goods(const struct fault_reader *r) {
    return !r->note->record->family || is_in(r, (const char *const[]){"ceramics", "glassware"}, 2);
}

// A hit and the place that it is said of, which may be NULL.
struct said {
    const struct fault_reader *r;
    const struct fault_hit *hit;
    const char *place;
};

#define DESIGNS                                                                                              \
    "pattern design transfer decal etch etching engraving decoration lettering graduations markings "        \
    "numerals "                                                                                              \
    "figures letters numbers"
#define TAPS "tap taps lid valve spigot cap washer gland stopper"
#define LEAKS "leaks leak leaking drips dripping weeps"
#define BARS                                                                                                 \
    "bar rail leg legs arm arms frame pole poles slat slats stave staves rung rungs spindle post posts "     \
    "stretcher block bracket roller batten"
#define HIDES "leather leathercloth leatherette oilcloth vinyl skin hide paper parchment vellum canvas"
#define SHOES "boots shoes clog clogs sandal sandals sole soles slipper slippers welt"
#define PINS "pin pins hook hooks chain chains"
#define GONE_OFF "broken off snapped sheared broke"
#define AT(said, i, ...) ANY(&(said)->r->note->tokens, i, __VA_ARGS__)

static bool worn_part(const struct said *s) {
    return kind_is_worn_part(s->r, s->hit, s->place);
}
static bool fired(const struct said *s) {
    return kind_is_fired(s->r, s->place);
}
static bool fired_goods(const struct said *s) {
    return s->r->note->record->family && is_fired_goods(s->r);
}
static bool stoved(const struct said *s) {
    return kind_note_has(s->r, "japanned japanning lacquered stoved");
}
static bool unfired(const struct said *s) {
    return !is_in(s->r, (const char *const[]){"ceramics", "glassware", "paper"}, 3) &&
           !kind_is_picture(s->r) && !mends_hide_damage(s->r, s->hit);
}
static bool not_fired_goods(const struct said *s) {
    return !is_fired_goods(s->r);
}
static bool blade_of_paddle(const struct said *s) {
    return kind_is_blade_of_paddle(s->r);
}
static bool metal(const struct said *s) {
    return kind_is_metal(s->r, s->place);
}
static bool metal_or_fired(const struct said *s) {
    return (metal(s) || fired(s)) && !is_in(s->r, (const char *const[]){"clothing", "linens", "bags"}, 3);
}
static bool picture(const struct said *s) {
    return kind_is_picture(s->r);
}
static bool bad_lie(const struct said *s) {
    return kind_lies_badly(&s->r->note->tokens, s->hit);
}
static bool paper(const struct said *s) {
    return is_paper(s->r);
}
static bool other_tray(const struct said *s) {
    return kind_is_other_tray(s->r, s->hit);
}
static bool wooden(const struct said *s) {
    static const char *const soft[] = {"bellows", "canvas", "leather", "cloth", "webbing", "cover", "seat"};
    return kind_is_all_wood(s->r) && !AT(s, s->hit->to - 1, "darned", "darn") && // but wicker is
           !(s->place && kind_names_one(s->place, soft, COUNT(soft)));
}
static bool sheet(const struct said *s) {
    return kind_is_sheet(s->r);
}
static bool nameplate(const struct said *s) {
    return s->hit->from > 0 &&
           AT(s, s->hit->from - 1, "maker's", "makers", "name", "rating", "data", "number");
}
static bool skin(const struct said *s) {
    return s->place && kind_is_skin(s->r, s->place);
}
static bool by_moth(const struct said *s) {
    return kind_is_by_moth(s->r, s->hit);
}
static bool gilding(const struct said *s) {
    return kind_is_gilding(s->r, s->hit);
}
static bool by_battery(const struct said *s) {
    return kind_is_by_battery(s->r, s->hit);
}
static bool box(const struct said *s) {
    return kind_is_box(s->r);
}
static bool hinge(const struct said *s) {
    return s->place && kind_is_hinge_of_goods(s->r, s->hit, s->place);
}
static bool plastic(const struct said *s) {
    return kind_is_plastic(s->r) || kind_note_has(s->r, "wooden wood"); // of its grips
}
static bool hides_damage(const struct said *s) {
    return mends_hide_damage(s->r, s->hit);
}
static bool of_one(const struct said *s) {
    return s->place && absent_is_of_one(s->r, s->hit);
}
static bool idle(const struct said *s) {
    return !running_can(s->r->note);
}
static bool pane(const struct said *s) {
    return kind_is_pane(s->r, s->place);
}
static bool plated(const struct said *s) {
    return kind_is_plated(s->r);
}
static bool rustless(const struct said *s) {
    return kind_is_rustless(s->r, s->hit);
}
static bool porous(const struct said *s) {
    return kind_is_porous(s->r);
}
static bool plain_paint(const struct said *s) {
    return kind_is_plain_paint(s->r);
}
static bool of_leather(const struct said *s) {
    return kind_is_leather(s->r, s->place);
}
static bool hard_goods(const struct said *s) {
    return kind_is_hard(s->r, s->place);
}
static bool hardware(const struct said *s) {
    return kind_is_hardware(s->r) && !of_leather(s);
}
static bool unshod(const struct said *s) { // the toe of a figure or a bracket
    return !kind_note_has(s->r, SHOES) && !is_in(s->r, (const char *const[]){"footwear", "clothing"}, 2);
}
static bool zipless(const struct said *s) {
    return !kind_note_has(s->r, "zip zips zipper zippers") && hardware(s);
}
static bool unwired(const struct said *s) {
    return is_in(s->r,
                 (const char *const[]){"jewelry", "bags", strstr(s->place, "cable") ? "sports" : "bags"}, 3);
}
// Does the place name one of the list?
static bool is_of(const char *list, const char *place) {
    for (const char *at = list; place && *at;) {
        size_t size = strcspn(at, " ");
        char word[24];
        memcpy(word, at, size);
        word[size] = '\0';
        if (kind_has_word(place, word)) return true;
        at += size + strspn(at + size, " ");
    }
    return false;
}
static bool mainsless(const struct said *s) {
    return kind_is_mainsless(s->r);
}
static bool on_mains(const struct said *s) {
    return !mainsless(s) && !(s->place && is_of("handset receiver earpiece", s->place));
}
static bool edgeless(const struct said *s) {
    return !is_in(s->r, (const char *const[]){"tools", "kitchenware"}, 2);
}
static bool unplated(const struct said *s) {
    return kind_is_unplated(s->r);
}
static bool bare_handle(const struct said *s) {
    return hardware(s) && kind_is_bare_handle(s->r, s->hit, s->place);
}
static bool seated(const struct said *s) {
    return hardware(s) && !is_in(s->r, (const char *const[]){"furniture"}, 1);
}
static bool cellless(const struct said *s) {
    return !kind_note_has(s->r, "battery batteries terminals contacts");
}
static bool vessel(const struct said *s) {
    return kind_is_of_vessel(s->r, s->hit);
}
static bool mirror(const struct said *s) {
    const char *type = s->r->note->record->type.value;
    return type && strstr(type, "mirror");
}
static bool forged(const struct said *s) {
    return is_in(s->r, (const char *const[]){"metalware", "kitchenware", "jewelry"}, 3);
}
static bool metal_coat(const struct said *s) {
    return kind_is_metal_coat(s->r, s->hit);
}
static bool unpowered(const struct said *s) {
    return s->place && is_in(s->r, (const char *const[]){"metalware", "kitchenware", "ceramics", "decor"}, 4);
}
static bool tin_worn(const struct said *s) {
    return kind_is_tin_worn(s->r, s->hit);
}
static bool tinware(const struct said *s) {
    return kind_is_tinware(s->r);
}
static bool plated_metal(const struct said *s) {
    return is_in(s->r, (const char *const[]){"metalware", "jewelry"}, 2) && plated(s) && !tinware(s);
}
static bool locked(const struct said *s) {
    return kind_is_locked(s->r);
}
static bool tool(const struct said *s) {
    return is_in(s->r, (const char *const[]){"tools"}, 1);
}

// "Rusted nearly through".
static bool nearly(const struct said *s) {
    return AT(s, s->hit->from + 1, "nearly", "almost") ||
           (s->hit->from > 0 && AT(s, s->hit->from - 1, "nearly", "almost"));
}

// "Legs worn at the foot".
static bool worn_there(const struct said *s) {
    return s->place && s->hit->to == s->hit->from + 1 &&
           s->r->note->tokens.at[s->hit->from].stop == STOP_NONE;
}

static bool whole_lost(const struct said *s) {
    return kind_is_wholly_lost(s->r, s->hit);
}
static bool shod(const struct said *s) {
    return kind_is_shod(s->r, s->hit);
}

static bool hard(const struct said *s) {
    return kind_is_untearable(s->r, s->place);
}

static bool is_listed(const char *list, const struct tokens *tokens, size_t i) {
    return i < tokens->count && kind_has_word(list, tokens->at[i].fold);
}

// "A bent corner" of a plate of brass.
static bool hard_metal(const struct said *s) {
    static const char *const ids[] = {"metalware", "kitchenware", "lighting", "tools", "clocks-watches"};
    return (is_in(s->r, ids, COUNT(ids)) || metal(s)) &&
           (AT(s, s->hit->from, "bent", "bend", "folded") || AT(s, s->hit->to - 1, "bent")) &&
           !(s->place && is_of("card label box paper page shade", s->place));
}

// "Gone brown", of a finish that was thought to be a patina.
static bool darkened(const struct said *s) {
    return AT(s, s->hit->to - 2, "gone", "turned", "going") &&
           AT(s, s->hit->to - 1, "brown", "black", "dark", "yellow");
}

// "The volume doesn't work".
static bool works_in_part(const struct said *s) {
    return s->place &&
           !is_of("movement mechanism engine works machine unit set motor clock watch", s->place) &&
           AT(s, s->hit->to - 1, "work", "working", "works");
}

// What cuts.
static bool edged(const struct said *s) {
    const char *type = s->r->note->record->type.value;
    return tool(s) || (type && is_of("knife knives cleaver scissors shears razor axe sword", type));
}
static bool unbound(const struct said *s) {
    return kind_is_unbound(s->r);
}
static bool beltless(const struct said *s) {
    return !kind_note_has(s->r, "belt girdle");
}

static bool at_seam(const struct said *s) {
    return kind_is_at_seam(s->r, s->hit) || (s->place && strstr(s->place, "seam"));
}
static bool stony(const struct said *s) {
    const char *type = s->r->note->record->type.value;
    return type && (strstr(type, "stone") || strstr(type, "grinder"));
}
static bool flexed(const struct said *s) {
    return kind_is_flexed(s->r, s->hit, s->place);
}
static bool rubbery(const struct said *s) {
    return kind_is_rubber(s->r, s->hit);
}
static bool metal_said(const struct said *s) {
    return kind_metal_said(s->r, s->hit);
}
// "Loose in the wires" of a lantern: its guard.
static bool cordless(const struct said *s) {
    return !kind_note_has(s->r, "flex plug mains electric electrical wired bulb cord cable socket");
}

static bool housing(const struct said *s) {
    return kind_is_housing(s->r, s->hit);
}
static bool recorded(const struct said *s) {
    return is_in(s->r, (const char *const[]){"media"}, 1);
}

static bool stuffed(const struct said *s) {
    return kind_note_has(s->r, "stuffing horsehair needlework tapestry kapok cushion kneeler hassock") &&
           !metal(s);
}
static bool woodwork(const struct said *s) {
    return kind_is_woodwork(s->r, s->hit);
}
static bool veneered(const struct said *s) {
    return kind_is_of_veneer(s->r, s->hit);
}
// What stands on the floor or is of wood.
static bool standing(const struct said *s) {
    return wooden(s) || (!metal(s) && is_in(s->r, (const char *const[]){"furniture", "decor"}, 2));
}

// The lens of a lamp and the glass of a heater are for no look through.
static bool lit(const struct said *s) {
    const char *type = s->r->note->record->type.value;
    bool lamp = type && is_of("lamp lamps lantern lanterns light headlamp flashlight torch", type);
    return is_of("lens lenses", s->place) ? lamp
                                          : is_of("glass", s->place) && kind_note_has(s->r, "wick burner");
}

// Of the rows of a kind the first counts of which all holds that it asks: the place names one of `of`, the
// first word of the hit, its last, the next one behind it and any of its words are listed, and `when`. Words
// are parted by blanks; `absent`: the part is missing.
static bool painted(const struct said *s) {
    return kind_coat(s->r, s->hit) == 'p';
}
static bool japanned(const struct said *s) {
    return kind_is_japanned(s->r);
}
static bool unlined(const struct said *s) {
    return kind_is_unlined(s->r);
}
static bool woven(const struct said *s) {
    return is_in(s->r, (const char *const[]){"linens", "clothing", "decor"}, 3);
}
static bool varnished(const struct said *s) {
    return kind_coat(s->r, s->hit) == 'v';
}

static const struct meaning {
    const char *said, *meant, *of, *first, *last, *next, *any;
    bool (*when)(const struct said *);
    bool absent;
} meanings[] = {
    {"wear-unspecified", "decoration-wear", .of = DESIGNS, .when = worn_part},
    {"wear-unspecified", "plate-wear", .when = tin_worn},
    {"wear-unspecified", "plate-wear", .any = "through thru", .when = plated},
    {"wear-unspecified", "plate-wear", .next = "through thru", .when = plated},
    {"wear-unspecified", "wear-rub", .when = worn_part},
    {"wear-unspecified", "wear-rub", .first = "worn", .next = "at near under where by", .when = worn_there},
    {"wear-unspecified", "decoration-wear", .of = DESIGNS},
    {"wear-rub", "decoration-wear", .of = DESIGNS},
    {"wear-rub", "plate-wear", .any = "through thru", .when = plated},
    {"wear-rub", "plate-wear", .next = "through thru", .when = plated},
    {"edge-wear", "plate-wear", .any = "through thru", .when = plated},
    {"edge-wear", "plate-wear", .next = "through thru", .when = plated},
    {"crack", "wood-split", .of = "grain"},
    {"crack", "crack-through", .when = fired},
    {"crack", "tear", .when = skin},
    {"leather-crack", "wood-split", .of = BARS " board boards rim shaft", .any = "split splits"},
    {"fabric-weak", "broken-part", .of = "case box trunk cabinet", .when = hardware}, // "is falling apart"
    {"stain", "rust", .of = "blade blades iron plate teeth jaw jaws pan", .any = "rust"},
    {"stain", "screen-damage", .of = "viewfinder lens lenses eyepiece objective", .any = "spot spots"},
    {"trimmed", "drilled-converted", .of = "hose tube pipe rod pole grip"},
    {"finish-crackle", "crazing", .of = "crock bowl plate dish tile glaze insert jar pot lid liner",
     .any = "crazing crazed craze"},
    {"scratches", "screen-damage", .of = "crystal lens lenses", .when = not_fired_goods},
    {"wood-split", "crack", .when = metal},
    {"wood-split", "leather-crack", .of = "binding bindings strap straps lacing laces", .any = "dried"},
    {"wood-split", "tear", .when = skin},
    {"wood-split", "tear", .of = HIDES},
    {"wood-split", "seam-open", .when = at_seam},
    {"screen-damage", "crack-through", .any = "cracked crack cracks", .when = lit},
    {"screen-damage", "chip", .any = "chipped chip chips", .when = lit},
    {"cord-frayed", "loose-part", .of = "wires", .any = "loose", .when = cordless},
    {"box-wear", "dent-bend", .any = "dent dents dented", .when = housing},
    {"box-wear", "tear", .any = "torn tear", .when = housing},
    {"box-wear", "crack", .any = "split crack cracked", .when = housing},
    {"tear", "wood-split", .of = BARS " rod rods rollers", .any = "crack cracked cracks"},
    {"rubber-perished", "media-degraded", .any = "brittle", .when = recorded},
    {"wood-split", "loose-joint", .any = "sprung"},
    {"wood-split", "broken-part", .of = "fretwork carving molding moulding", .any = "broken"},
    {"crack", "tear", .of = "paper leather hide", .any = "split splits"},
    {"crack", "tear", .of = "fold folds", .when = paper},
    {"crack", "leather-crack", .of = "leather leathers hide"},
    {"seam-split", "seam-open", .first = "stitching stitches sewing"},
    {"hole", "wear-rub", .of = "edging piping trim", .any = "worn rubbed scuffed"},
    {"seam-split", "seam-open", .first = "seam seams", .when = stuffed},
    {"crack-through", "wood-split", .of = "side sides rail foot frame base", .when = woodwork},
    {"hole", "seam-open", .of = "seam seams", .any = "leaks leak leaking lets"},
    {"lining-damage", "moth-holes", .any = "moth moths"},
    {"loose-part", "lining-damage", .of = "lining linings"},
    {"rust", "hole", .first = "hole holes"}, // "a hole rusted through"
    {"binding-weak", "loose-part", .of = "flap flaps lid door handle strap case catch", .when = unbound},
    {"chip", "cord-frayed", .of = "cord flex cable lead", .any = "nick nicks nicked"},
    {"rubber-perished", "cord-frayed", .when = flexed},
    {"fabric-weak", "rubber-perished", .when = rubbery},
    {"dent-bend", "loose-part", .of = "door doors flap", .any = "dropped"},
    {"dent-bend", "warped", .any = "round", .when = stony},
    {"crack", "leather-crack", .of = "flap flaps skirt skirts girth girths panel panels", .when = of_leather},
    {"blade-wear", "wear-rub", .last = "worn", .when = blade_of_paddle},
    {"darned-patched", "glued-repair", .when = metal_or_fired}, // "a patch on the base" of an iron pot
    {"darned-patched", "glued-repair", .when = wooden},
    {"refinished", "filled-overpainted", .last = "overpainted repainted painted over", .when = picture},
    {"refinished", "filled-overpainted", .when = hides_damage},
    {"finish-crackle", "yellowing", .last = "gone turned going",
     .next = "yellow brown amber yellowish orange"},
    {"binding-weak", "crack", .any = "split splits crack cracks cracked", .when = unbound},
    {"seized", "warped", .when = bad_lie},
    {"seized", "inside-not-inspected", .any = "open opened unlock", .when = locked},
    {"seized", "album-residue", .any = "down", .when = sheet}, // "the print is stuck down"
    {"chip", "veneer-damage", .any = "gone missing lost", .when = veneered},
    {"seized", "rubber-perished", .of = "cord flex lead cable", .any = "stiff"},
    {"seized", "strap-damage", .of = "strap straps"}, // "the straps have gone stiff"
    {"hole", "rust", .first = "rusted rust rotted", .when = nearly},
    {"hole", "moth-holes", .when = by_moth},
    {"tear", "wood-split", .of = BARS, .last = "split splits splitting"}, // "the spreader bar has split"
    {"tear", .last = "missing gone off lost away", .when = shod, .absent = true},
    {"tear", "broken-part", .any = "missing gone lost loss losses", .when = hard},
    {"chip", "edge-wear", .first = "edges edge chipped corners", .when = paper},
    {"stone-missing", "chip", .last = "chipped chips"}, // of what is made of stone
    {"missing-liner", "missing-accessory", .when = other_tray},
    {"firing-flaw", "hole", .first = "pinhole pinholes pin", .when = not_fired_goods},
    {"paint-flaking", "decoration-wear", .last = "worn rubbed thin faded wearing", .when = fired_goods},
    {"peeling-coating", "paint-flaking", .when = painted},
    {"peeling-coating", "finish-crackle", .when = varnished},
    {"paint-flaking", "finish-crackle", .when = varnished},
    {"clasp-fault", "partly-working", .of = "chuck jaw jaws vice clutch brake"},
    {"clasp-fault", "dent-bend", .of = PINS " wire wires", .last = "bent", .when = hardware}, // of a shackle
    {"clasp-fault", "broken-part", .of = PINS, .last = GONE_OFF, .when = hardware},
    {"clasp-fault", .of = PINS, .last = "missing gone lost", .when = hardware, .absent = true},
    {"clasp-fault", "loose-part", .of = PINS, .last = "loose wobbly", .when = hardware},
    {"clasp-fault", "seized", .of = PINS, .last = "stuck stiff turn", .when = hardware},
    {"zip-fault", "dent-bend", .of = "pull pulls buckle buckles hook hooks", .last = "bent", .when = zipless},
    {"zip-fault", "broken-part", .of = "pull pulls", .last = GONE_OFF, .when = zipless},
    {"zip-fault", .of = "pull pulls eye eyes", .last = "missing gone lost", .when = zipless, .absent = true},
    {"zip-fault", "seized", .of = "pull pulls", .last = "stuck stiff", .when = zipless},
    {"strap-damage", "wear-rub", .any = "scuffed scuff scuffs scuffing rubbed"},
    {"strap-damage", "broken-part", .of = "handle handles", .last = GONE_OFF, .when = bare_handle},
    {"strap-damage", .of = "strap straps", .last = "missing gone lost", .when = hardware, .absent = true},
    {"strap-damage", "dent-bend", .of = "buckle buckles tongue lug lugs ring rings", .last = "bent",
     .when = beltless},
    {"blade-wear", "broken-part", .of = "tip tips", .last = "missing gone lost broken off snapped",
     .when = edgeless},
    {"blade-wear", "broken-part", .of = "antenna tine tines prong prongs finial spike",
     .any = "snapped broken missing gone lost off"},
    {"blade-wear", "dent-bend", .any = "bent"},
    {"blade-wear", "broken-part", .of = "teeth tooth", .last = "missing gone snapped", .when = edgeless},
    {"edge-wear", "blade-wear", .any = "nick nicks nicked", .when = edged},
    {"edge-wear", "fraying", .of = "linen canvas hessian felt", .any = "frayed fraying frays"},
    {"chip", "blade-wear", .of = "blade blades teeth tooth cutter cutters", .any = "nick nicks nicked",
     .when = hardware},
    {"sole-separation", "broken-part", .of = "toe toes heel", .any = "broken off snapped gone",
     .when = unshod},
    {"peeling-coating", "loose-part", .next = "unwound undone unwrapped unraveled unravelled"},
    {"plate-wear", "broken-part", .of = "plate plates", .last = "off broken", .when = unplated},
    {"plate-wear", .of = "plate plates", .last = "missing gone lost", .when = unplated, .absent = true},
    {"plate-wear", "rust", .of = "plate plates", .last = "pitted", .when = unplated},
    {"loose-joint", "broken-part", .of = "arm arms leg legs", .last = "missing gone lost"},
    {"battery-corrosion", "rust", .of = "spring springs", .last = "rusty rusted", .when = cellless},
    {"fraying", "wear-rub", .of = "collar collars", .last = "worn", .when = hard_goods},
    {"upholstery-wear", "partly-working", .of = "spring springs", .any = "tired weak", .when = seated},
    {"fabric-weak", "rubber-perished", .of = "foam surround surrounds"},
    {"cord-frayed", "fraying", .of = "cable cables cord cords", .any = "frayed fraying", .when = unwired},
    {"upholstery-wear", "broken-part", .of = "seat spring springs", .last = GONE_OFF, .when = seated},
    {"partly-working", "seized", .last = "stops stop", .next = "halfway short part", .when = idle},
    {"warped", "loose-joint", .of = "corner corners joint joints mitre miter dovetail dovetails",
     .last = "sprung"},
    {"dent-bend", "warped", .any = "leans leaning lean", .when = standing},
    {"screen-damage", "crack-through", .any = "cracked crack cracks", .when = pane},
    {"screen-damage", "chip", .any = "chipped chip chips", .when = pane},
    {"screen-damage", "scratches", .any = "scratched scratches scratch grazed", .when = pane},
    {"crack-through", "partly-working", .of = TAPS, .any = LEAKS}, // an urn's tap
    {"seam-split", "partly-working", .of = TAPS, .any = LEAKS},
    {"screen-damage", "crack-through", .first = "glass", .any = "cracked crack cracks", .when = vessel},
    {"screen-damage", "chip", .first = "glass", .any = "chipped chip chips", .when = vessel},
    {"screen-damage", "scratches", .first = "glass", .any = "scratched scratches scratch", .when = vessel},
    {"decoration-wear", "fading", .first = "paint paintwork", .last = "faded fading", .when = plain_paint},
    {"decoration-wear", "fading", .first = "faded fading", .last = "paint paintwork", .when = plain_paint},
    {"dent-bend", "crease", .any = "creased crease creases", .when = of_leather},
    {"hairline", "wood-split", .next = "split splits", .when = wooden},
    {"hairline", "wood-split", .of = "handle shaft stock tote seat board panel oar haft",
     .next = "split splits"},
    {"mold", "stain", .first = "dark", .last = "spots spot specks patches flecks marks", .when = hard_goods},
    {"patina", "tarnish", .when = darkened},
    {"not-working", "partly-working", .when = works_in_part},
    {"plate-wear", "rust", .last = "pitted pitting pits", .when = tool}, // the plate of a saw
    {"plate-wear", "gilt-wear", .when = gilding},
    {"plate-wear", "gilt-wear", .first = "gold gilt", .when = tinware},
    {"gilt-wear", "plate-wear", .when = plated_metal},
    {"paint-flaking", "wear-rub",
     .of = "felt velvet baize pad pads lining cloth leather fabric carpet cushion", .last = "bare"},
    {"paint-flaking", "plate-wear", .when = metal_coat},
    {"crease", "dent-bend", .when = hard_metal},
    {"not-working", "broken-part", .first = "broken", .last = "broken", .when = unpowered},
    {"wear-rub", "plate-wear", .when = tin_worn},
    {"chip", "mirror-silvering", .of = "silvering", .any = "flaked flaking flakes"},
    {"bruise-impact", "dent-bend", .first = "bruise bruises bruised", .when = metal},
    {"seized", "loose-part", .next = "tighten hold grip bite", .any = "worn stripped"},
    {"pest-signs", "dent-bend", .any = "teeth tooth", .when = forged},
    {"clasp-fault", .of = "chain chains", .last = "missing gone lost", .absent = true},
    {"gilt-wear", "plate-wear", .of = "plate plating"}, // on the mounts of a jug of glass
    {"rust", "battery-corrosion", .when = by_battery},
    {"rust", "tarnish", .first = "gone turned going brown went browned", .when = rustless},
    {"fading", "mirror-silvering", .any = "silvering silver mirroring silvered", .when = mirror},
    {"mold", "mineral-deposit", .last = "bloom blooming", .when = porous},
    {"sticky-plastic", "partly-working", .of = "button buttons key keys switch switches", .first = "sticky"},
    {"rewired", "replaced-part", .of = "handset receiver earpiece"},
    {"rewired", "replaced-part", .when = mainsless},
    {"replaced-part", "rewired", .when = on_mains,
     .of = "wire wires wiring flex cord cable plug wire's flex's cord's plug's cable's lead's wiring's"},
    {"broken-part", .of = "cap caps cover lid knob plug stopper screw key finial",
     .last = "lost missing gone", .when = whole_lost, .absent = true},
    {"binding-weak", .of = "hinges", .when = box, .absent = true},
    {"binding-weak", "broken-part", .of = "lid door flap", .any = "off"},
    {"binding-weak", "loose-part", .when = hinge},
    {"rubber-perished", "fabric-weak",
     .of = "burlap canvas cloth silk linen hessian fabric webbing jute felt", .last = "brittle"},
    {"rubber-perished", "crack", .last = "brittle cracked", .when = plastic}, // "the lid has gone brittle"
    {"missing-pieces", "broken-part", .when = of_one},
    {"rubber-perished", "leather-crack", .of = "leather leather's hide"},
    {"gilt-wear", "plate-wear", .first = "plating plating's nickel chrome tinning"},
    {"coating-worn", "plate-wear", .first = "chrome nickel silver"},
    {"plate-wear", "paint-flaking", .last = "iron steel metal tin through", .when = japanned},
    {"plate-wear", "decoration-wear", .when = nameplate},
    {"edge-wear", "wear-rub", .any = "scuffed scuff scuffs scuffing", .when = of_leather},
    {"edge-wear", "wear-rub", .of = "board boards cover covers", .any = "rubbed rubbing scuffed"},
    {"glued-repair", "darned-patched", .any = "darned darn darns"},
    {"lining-damage", "wear-rub", .first = "velvet felt baize plush",
     .last = "worn rubbed bald thin smooth bare", .when = unlined},
    {"fabric-weak", "wear-rub", .last = "foundation"}, // the pile of a rug
    {"trim-loss", "snag", .of = "loop loops", .any = "pulling pulled out", .when = woven},
    {"hem-altered", "trimmed", .when = sheet},
    {"decoration-wear", "paint-flaking", .first = "paint paintwork", .any = "worn rubbed", .when = stoved},
    {"stain", "grease-film", .first = "grease greasy fat", .when = hard_goods},
    {"gilt-wear", .of = "mount mounts handle handles knob knobs finial foot feet ornament corner corners",
     .last = "missing gone lost", .absent = true},
    {"wear-unspecified", "mirror-silvering", .of = "mirror mirrors", .any = "worn wear tired used"},
    {"storage-spots", "stain", .first = "rust iron", .last = "spot mark mold mould"}, // one, of a nail
    {"box-wear", "wear-rub", .any = "scuffed scuffs scuff rubbed", .when = box},
    {"crack", "decoration-wear", .of = "letters lettering print transfer design logo figures numbers"},
    {"size-changed", "wear-rub", .any = "matted matting", .when = woven},
    {"seized", "leather-crack", .of = "backing hide skin leather"},
    {"filled-overpainted", "refinished", .first = "repainted varnished lacquered", .when = unfired},
    {"crack", "finish-crackle", .of = "varnish lacquer shellac polish"},
    {"woodworm", "hole", .any = "pin pinhole pinholes hole holes", .when = metal_said},
    {"toning", "yellowing", .of = "varnish lacquer shellac"},
    {"dye-bleed", "decoration-wear", .any = "rubbed", .when = fired_goods},
};

static bool stands(const struct meaning *row, const struct said *s) {
    const struct tokens *tokens = &s->r->note->tokens;
    const struct fault_hit *hit = s->hit;
    bool any = !row->any;
    for (size_t i = hit->from; i < hit->to && !any; i++) any = is_listed(row->any, tokens, i);
    return (!row->of || is_of(row->of, s->place)) &&
           (!row->first || is_listed(row->first, tokens, hit->from)) &&
           (!row->last || is_listed(row->last, tokens, hit->to - 1)) && any &&
           (!row->next || is_listed(row->next, tokens, hit->to)) && (!row->when || row->when(s));
}

const struct flaw *kind_of_part(const struct fault_reader *r, const struct fault_hit *hit,
                                const struct flaw *kind, const char *place) {
    const struct said said = {r, hit, place};
    const char *meant = kind_of_cause(r, hit, kind, place);
    for (size_t i = 0; !meant && i < COUNT(meanings); i++) {
        if (!text_same(meanings[i].said, kind->rule.id) || !stands(&meanings[i], &said)) continue;
        if (meanings[i].absent && kind_is_at_place(r, hit)) return kind;
        if (meanings[i].absent) return absent_kind_here(r, place ? place : "corner", 1);
        meant = meanings[i].meant;
    }
    const struct flaw *other = meant ? ruleset_flaw(r->note->rules, meant) : NULL;
    return other ? other : kind;
}
