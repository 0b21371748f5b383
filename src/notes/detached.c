// SPDX-License-Identifier: MIT
// A part that is no longer where it was fixed: "the hem is coming down", "two ties have come off", "rush seat
// has come undone at the corner". What is wrong follows from the part: sewing has opened, a trim is lost, a
// sole has parted, a joint of furniture is loose; what stands out from the rest is broken off. That something
// comes off at all is no fault ("the cover comes off for washing"), so the verb has to say that it did.
#include <stdio.h>
#include <string.h>

#include "notes/any.h"
#include "text/order.h"
#include "notes/stuff.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct {
    const char *kind, *families, *parts; // families: NULL is any
} kinds[] = {
    {"seam-open", NULL, " hem seam stitch stitching topstitching hemming sewing thread "},
    {"lining-damage", NULL, " lining "},
    {"chip", NULL, " glaze "},
    {"loose-part", " furniture games-puzzles ", " velvet baize satin "},
    {"lining-damage", NULL, " velvet baize satin "},
    {"seam-open", " linens clothing ", " binding edging "},
    {"insole-wear", NULL, " insole footbed "},
    {"sole-separation", NULL, " sole heel outsole midsole welt "},
    {"upholstery-wear", NULL, " webbing rush cane caning padding stuffing upholstery seat "},
    {"pages-loose", " books paper music ", " page leaf plate map section gathering signature frontispiece "},
    {"binding-weak", " books ", " cloth leather buckram calf vellum covering "},
    {"binding-weak", " books paper ", " cover board spine backstrip hinge joint binding "},
    {"binding-weak", " music ", " cover board spine binding "}, // but the hinge of a concertina's box
    {"binding-weak", NULL, " backstrip "},
    {"veneer-damage", NULL, " veneer inlay banding laminate stringing crossbanding marquetry "},
    {"peeling-coating", NULL, " leatherette rexine leathercloth covering vinyl skin "},
    {"peeling-coating", " media electrical cameras music bags ", " cloth fabric canvas "},
    {"upholstery-wear", " furniture ", " cloth fabric "},
    {"peeling-coating", " cameras electrical lighting decor media ", " leather "},
    {"trim-loss", NULL,
     " tie braid fringe tassel ribbon lace sequin feather patch trim trimming edging pompom bobble "
     "applique "
     "piping bead gimp rosette "},
    {"trim-loss", " clothing linens ", " loop eyelet "},
    {"missing-button", " clothing linens bags crafts holiday ", " button toggle popper hook stud "},
    {"zip-fault", " clothing bags textiles footwear linens ", " pull puller slider tab "},
    {"strap-damage", " bags footwear cameras sports music ", " strap handle sling "},
    {"stone-missing", " jewelry ", " stone pearl rhinestone gem crystal "},
    {"loose-joint", " decor ", " corner mitre joint frame "},
    {"loose-joint", " furniture ",
     " leg arm stretcher rail rung spindle back slat foot joint bracket frame corner "},
    {"loose-part", " furniture bags metalware electrical music clocks-watches tools ", " lid door flap "},
    {"broken-part", " furniture bags decor tools other sports kitchenware ", " bottom floor "},
    {"broken-part", NULL,
     " head knob hook handle foot leg arm wing ear finger tail spout finial clip bracket castor caster wheel "
     "rung "
     "slat peg tip prong tooth hand spring pin hinge catch guard nameplate badge bar rail panel fin blade "
     "spoke string antenna aerial pedal crank lever hasp latch ferrule stretcher spindle lug beak horn "
     "bail grip rivet foot mount bezel nut gear belt bulb hose nozzle trigger pointer needle "}};

enum manner { NONE, DID, DOES }; // it did come off, it is about to

static const struct flaw *kind_of(const struct fault_reader *r, size_t i) {
    const struct family *family = r->note->record->family;
    for (size_t k = 0; k < COUNT(kinds); k++) {
        char padded[40];
        const char *id = family ? family->rule.id : "";
        if (kinds[k].families) {
            int size = family ? snprintf(padded, sizeof padded, " %s ", id) : 0;
            if (size <= 0 || (size_t)size >= sizeof padded || !strstr(kinds[k].families, padded)) continue;
        }
        if (stuff_among(kinds[k].parts, &r->note->tokens.at[i]))
            return ruleset_flaw(r->note->rules, kinds[k].kind);
    }
    return NULL;
}

// "Has come away", "is coming down", "fell off", "is hanging off": how many tokens.
static size_t verb_at(const struct tokens *tokens, size_t i, enum manner *manner) {
    static const char *const verbs[] = {"come",    "came",    "coming",   "fell",   "fallen",  "falling",
                                        "hanging", "dropped", "dropping", "pulled", "pulling", "worked",
                                        "working", "popped",  "popping",  "peeled", "peeling", "dangling",
                                        "torn",    "ripped",  "wrenched"};
    static const char *const going[] = {"coming",  "falling", "hanging", "dropping", "pulling",
                                        "working", "popping", "peeling", "dangling"};
    static const char *const ways[] = {"off",       "away",       "undone",   "adrift",    "unstuck",
                                       "unglued",   "unstitched", "apart",    "out",       "down",
                                       "loose",     "unsewn",     "unstrung", "detached",  "unwound",
                                       "unraveled", "unravelled", "free",     "unriveted", "unscrewed",
                                       "unhooked",  "unsoldered", "unpinned", "unclipped", "unbolted"};
    static const char *const lone[] = {"detached", "unattached", "unstitched", "unglued", "unstuck"};
    static const char *const opens[] = {"come",       "came",     "coming",   "fell",
                                        "fallen",     "falling",  "hanging",  "dropped",
                                        "dropping",   "pulled",   "pulling",  "worked",
                                        "working",    "popped",   "popping",  "peeled",
                                        "peeling",    "dangling", "detached", "unattached",
                                        "unstitched", "torn",     "ripped",   "wrenched",
                                        "unglued",    "unstuck",  "is",       "are",
                                        "parted",     "half"}; // most words are none of them
    if (!token_among(tokens, i, opens, COUNT(opens))) return 0;
    if (token_is(tokens, i, "parted")) return *manner = DID, ANY(tokens, i + 1, "from", "company") ? 2 : 0;
    if (token_is(tokens, i, "half")) // "the label's half off"
        return *manner = DOES, ANY(tokens, i + 1, "off", "away") && tokens->at[i].stop == STOP_NONE ? 2 : 0;
    if (token_among(tokens, i, lone, COUNT(lone))) {
        *manner = DID;
        return 1;
    }
    static const char *const plain[] = {"and",     "to",    "can",  "will",   "should", "could",  "may",
                                        "must",    "would", "they", "didn't", "didnt",  "might",  "won't",
                                        "doesn't", "don't", "not",  "never",  "can't",  "cannot", "did",
                                        "these",   "both",  "all",  "or"};
    size_t off = i + (ANY(tokens, i + 2, "inside", "underneath", "now") ? 3 : 2); // "a strap is off inside"
    if ((token_is(tokens, i, "is") || token_is(tokens, i, "are")) && token_is(tokens, i + 1, "off") &&
        (off >= tokens->count || tokens->at[off].stop != STOP_NONE)) {
        *manner = DID;
        return 2;
    }
    if (!token_among(tokens, i, verbs, COUNT(verbs))) return 0;
    if (token_is(tokens, i, "come") && i > 0 && token_among(tokens, i - 1, plain, COUNT(plain))) return 0;
    size_t way = i + 1;
    static const char *const between[] = {"right",   "completely", "partly", "clean", "slightly",
                                          "totally", "mostly",     "half",   "itself"};
    if (token_among(tokens, way, between, COUNT(between))) way++;
    if (!token_among(tokens, way, ways, COUNT(ways)) || tokens->at[i].stop != STOP_NONE) return 0;
    bool held = !strncmp(tokens->at[way].fold, "un", 2) && // "come unriveted": what held it let go
                ANY(tokens, way, "unriveted", "unscrewed", "unhooked", "unsoldered", "unpinned", "unclipped",
                    "unbolted");
    *manner = held || token_among(tokens, i, going, COUNT(going)) ? DOES : DID;
    return way + 1 - i;
}

// A part of no kind above that is coming away, by its stuff.
static const struct flaw *kind_of_stuff(const struct fault_reader *r, size_t part) {
    static const char *const ids[STUFFS] = {[STUFF_CLOTH] = "seam-open",
                                            [STUFF_LEATHER] = "seam-open",
                                            [STUFF_RUBBER] = "rubber-perished",
                                            [STUFF_WOOD] = "loose-joint"};
    const char *id = ids[stuff_of_part(r, part)];
    return ruleset_flaw(r->note->rules, id ? id : "loose-part");
}

// What stands between the part and the verb: "has", "are starting to", "on one side has".
static size_t part_before(const struct fault_reader *r, size_t i, enum manner manner) {
    enum { BACK = 7 };
    static const char *const off[] = {"off", "away"};
    static const char *const ends[] = {"i", "you", "it", "they", "we", "he", "she", "comes", "can"};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t back = 1; back <= BACK && back <= i; back++) {
        size_t at = i - back;
        if (tokens->at[at].stop != STOP_NONE) break;
        if (token_among(tokens, at, ends, COUNT(ends))) return 0;
        if (tokens->at[at].kind != TOKEN_WORD) continue;
        bool place =
            at > 0 && ANY(tokens, at - 1, "on", "at", "in", "of", "from", "to", "under", "round", "near");
        if (back > 1 && ANY(tokens, at, "the", "its") && !place) break; // "a chip on an ear and the felt has"
        size_t lead = at; // "the top has come away", but "velvet in the lid"
        while (lead > 0 && tokens->at[lead - 1].stop == STOP_NONE &&
               (r->part[lead - 1] || spot_article(tokens, lead - 1)))
            lead--;
        if (lead > 0 && tokens->at[lead - 1].stop == STOP_NONE && ANY(tokens, lead - 1, "in", "inside"))
            continue;                                               // "velvet in the lid"
        bool bits = lead > 1 && token_is(tokens, lead - 1, "of") && // "bits of the molding have dropped off"
                    ANY(tokens, lead - 2, "bits", "bit", "pieces", "piece", "chunks", "lumps", "sections",
                        "parts", "strips", "lengths", "flakes", "some", "most", "lots");
        bits &= !ANY(tokens, at, "have", "has", "are", "is", "been", "just", "all", "now", "also");
        bool some = bits && ANY(tokens, lead - 2, "some", "most", "lots");
        if (bits) lead -= 2;
        while (bits && lead > 0 &&
               ANY(tokens, lead - 1, "a", "few", "some", "little", "small", "several", "odd"))
            lead--;
        bool opens =
            lead == 0 || tokens->at[lead - 1].stop != STOP_NONE || ANY(tokens, lead - 1, "and", "but");
        bool away = opens && back < (bits ? 4 : 3) && ANY(tokens, i + 1, "off", "away", "out", "adrift");
        if (kind_of(r, at) || ((manner == DOES || away) && ((bits && !some) || r->part[at]) &&
                               r->note->taken[at] != TAKEN_TYPE))
            return at + 1;
    }
    bool gone = manner == DID && token_among(tokens, i + 1, off, COUNT(off)) &&
                !(token_is(tokens, i, "is") || token_is(tokens, i, "are"));
    return gone ? stuff_subject(r, i) : 0;
}

// "Came off a boat", "comes off for cleaning", "came out in 1950", "coming out of": where it comes from.
static bool leads_on(const struct tokens *tokens, size_t i, enum manner manner) {
    static const char *const from[] = {"of", "for", "to", "as", "with", "a", "an", "when"};
    if (i >= tokens->count || tokens->at[i].stop != STOP_NONE) return false;
    if (ANY(tokens, i, "and", "then") && ANY(tokens, i + 1, "sewn", "stitched", "sewed", "been", "was"))
        return ANY(tokens, i + 1, "sewn", "stitched", "sewed") || ANY(tokens, i + 2, "sewn", "stitched");
    if (i > 1 &&
        ANY(tokens, i - 2, "parted", "torn", "ripped", "wrenched", "pulled")) // "pulled off the case"
        return token_among(tokens, i, from, COUNT(from) - 3);
    if (token_among(tokens, i, from, COUNT(from))) return true;
    return manner == DID && (token_is(tokens, i, "the") || token_is(tokens, i, "my"));
}

static const struct flaw *kind_told(const struct fault_reader *r, size_t part, enum manner manner) {
    const struct flaw *kind = kind_of(r, part);
    if (!kind && manner == DID) return ruleset_flaw(r->note->rules, "broken-part");
    if (!kind) return kind_of_stuff(r, part);
    bool solid = kind && !strcmp(kind->rule.id, "broken-part");
    return solid && manner == DOES ? ruleset_flaw(r->note->rules, "loose-part") : kind;
}

// "Has come out" and "came off" are past of a stain, and not of a stone.
static bool is_off(struct fault_reader *r, size_t part, size_t i, size_t n) {
    static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_WITHDRAWN |
                                STANCE_OTHER | STANCE_UNKNOWN | STANCE_PLANNED;
    bool own = r->scope.cue[i] + 1 >= i && r->scope.cue[i] < i + n;
    for (size_t k = part; own && k < i + n; k++) r->scope.stance[k] &= (uint16_t)~STANCE_PAST;
    return r->scope.stance[i] & off;
}

// "One hinge off", "two legs off": where it is all that the clause says; a back or a lid may be off to be
// looked into.
static bool is_off_it(const struct fault_reader *r, size_t i) {
    static const char *const opened[] = {"back", "cover", "panel", "lid", "top", "leaf", "plate"};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, i, "off") || !r->part[i - 1] || tokens->at[i - 1].stop != STOP_NONE ||
        (i + 1 < tokens->count && tokens->at[i + 1].stop == STOP_NONE && !token_is(tokens, i + 1, "and")) ||
        token_among(tokens, i - 1, opened, COUNT(opened)) || !kind_of(r, i - 1))
        return false;
    size_t at = i - 1;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           (r->part[at - 1] || degrees_number(tokens, at - 1) || spot_side(tokens, at - 1)))
        at--;
    return at == 0 || tokens->at[at - 1].stop != STOP_NONE;
}

// "A split seam with the stuffing coming out", "torn and the batting is coming out": it comes out of what was
// told.
static bool is_filling_of_gap(const struct fault_reader *r, size_t part, size_t i) {
    if (!ANY(&r->note->tokens, part, "stuffing", "filling", "feathers", "down", "batting", "wadding", "kapok",
             "beans", "sawdust", "straw", "padding", "foam", "insides", "horsehair"))
        return false;
    size_t start = scope_sentence_start(&r->scope, i);
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from >= start && r->hits[k].to <= part &&
            !(r->scope.stance[r->hits[k].from] & (STANCE_DENIED | STANCE_NONE_SEEN)))
            return true;
    return false;
}

void read_detached(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        enum manner manner = NONE;
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        size_t n = verb_at(tokens, i, &manner), behind = n ? part_before(r, i, manner) : 0;
        if (!n && is_off_it(r, i)) {
            manner = DID;
            n = 1;
            behind = i;
        }
        if (!behind || leads_on(tokens, i + n, manner)) continue;
        behind = stuff_head(r, behind);
        size_t part = behind - 1, from = part;
        if (ANY(tokens, i + n - 1, "out") &&
            ANY(tokens, part, "picture", "pictures", "photo", "photos", "print", "prints", "copies", "loaf",
                "bread", "toast", "sound"))
            continue; // "the pictures came out fine": what it makes
        if (fault_takes_any(r, part, i + n)) continue;
        if (is_filling_of_gap(r, part, i)) continue;
        bool free = r->note->taken[part] == TAKEN_PART || r->note->taken[part] == TAKEN_SCOPE;
        if (!free && !note_free(r->note, part, part + 1)) continue;
        const struct flaw *kind = kind_told(r, part, manner);
        if (kind && manner == DID && ANY(tokens, i + n - 1, "off") && text_same(kind->rule.id, "loose-joint"))
            kind = ruleset_flaw(r->note->rules, "broken-part"); // a leg that has come off is not merely loose
        if (!kind || is_off(r, part, i, n)) continue;
        while (from > 0 && r->part[from - 1]) from--;
        struct fault_hit hit = {.from = i, .to = i + n, .kinds = {kind}, .kind_count = 1};
        fault_tell(r, &hit, kind, fault_place(r->note, from, part + 1), stuff_where(r, &hit));
        i += n - 1;
    }
}
