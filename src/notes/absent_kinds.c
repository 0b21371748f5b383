// SPDX-License-Identifier: MIT
// Which kind it is that a part is missing: by the part, by what the thing is, and by how many of them lack.
#include <string.h>

#include "notes/faults.h"
#include "notes/any.h"
#include "notes/lacking.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// No singular begins with another letter than its plural, so most are another noun at first sight.
static bool same_noun(struct arena *arena, const char *a, const char *b) {
    return *a == *b && text_same(say_singular(arena, a), say_singular(arena, b));
}

// The sound box of a gramophone is no box that it came in.
static bool is_inner_box(const char *part) {
    static const char *const parts[] = {"sound box", "gear box",  "junction box", "fuse box", "smoke box",
                                        "fire box",  "wind box",  "bobbin case",  "axle box", "valve box",
                                        "ash box",   "grass box", "dust box",     "key box",  "drip tray",
                                        "ash pan",   "pen tray",  "crumb tray"};
    for (size_t i = 0; i < COUNT(parts); i++)
        if (text_same(part, parts[i])) return true;
    return false;
}

const struct flaw *absent_kind(struct arena *arena, const struct ruleset *rules, const char *part) {
    if (is_inner_box(part)) return ruleset_flaw(rules, "missing-accessory");
    if (text_same(part, "dj") || text_same(part, "DJ") || text_same(part, "dustwrapper"))
        return ruleset_flaw(rules, "missing-jacket");
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct flaw *kind = rules->flaws[i];
        if (kind->form != ABSENCE) continue;
        if (kind->part && same_noun(arena, kind->part, part)) return kind;
    }
    const char *head = strrchr(part, ' ');
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct flaw *kind = rules->flaws[i];
        if (kind->form != ABSENCE) continue;
        for (size_t k = 0; k < kind->parts.count; k++)
            if (same_noun(arena, kind->parts.at[k], part)) return kind;
        if (head && kind->part && same_noun(arena, kind->part, head + 1)) return kind;
    }
    const struct flaw *fittings = ruleset_flaw(rules, "missing-hardware"); // "chin strap buckle"
    for (size_t k = 0; head && (*part < '0' || *part > '9') && fittings && k < fittings->parts.count; k++)
        if (same_noun(arena, fittings->parts.at[k], head + 1)) return fittings;
    return ruleset_flaw(rules, "missing-accessory");
}

static bool occurs_in(const struct flaw *kind, const struct family *family) {
    for (size_t i = 0; i < kind->on.count; i++)
        if (text_same(kind->on.at[i], family->rule.id)) return true;
    return !kind->on.count;
}

static bool has_part(struct arena *arena, const struct flaw *kind, const char *part) {
    for (size_t k = 0; k < kind->parts.count; k++)
        if (same_noun(arena, kind->parts.at[k], part)) return true;
    return false;
}

// Goods of which a part that lacks is a part of the thing, and no piece of a set.
static bool is_one_thing(const struct family *family) {
    static const char *const ids[] = {"furniture", "bags",           "clothing", "lighting", "electrical",
                                      "music",     "clocks-watches", "cameras",  "footwear", "metalware"};
    for (size_t i = 0; family && i < COUNT(ids); i++)
        if (text_same(family->rule.id, ids[i])) return true;
    return false;
}

// What is sewn to cloth as decoration: pearls of a bodice, beads of a bag. `part` is singular.
bool absent_is_trim(const char *part) {
    static const char *const trims[] = {"pearl",   "bead",   "sequin",  "rhinestone", "tuft", "tassel",
                                        "spangle", "pompom", "feather", "applique",   "bow",  "fringe"};
    const char *last = strrchr(part, ' ');
    for (size_t i = 0; i < COUNT(trims); i++)
        if (text_same(last ? last + 1 : part, trims[i])) return true;
    return false;
}

static bool is_of_cloth(const struct family *family) {
    static const char *const cloths[] = {"clothing", "linens", "bags", "footwear"};
    for (size_t i = 0; family && i < COUNT(cloths); i++)
        if (text_same(family->rule.id, cloths[i])) return true;
    return false;
}

// A plug of a lamp is none of a bottle: of two kinds with that part, the one that such goods have.
static const struct flaw *kind_by_family(const struct fault_reader *r, const struct flaw *kind,
                                         const char *part) {
    const struct ruleset *rules = r->note->rules;
    const struct family *family = r->note->record->family;
    if (!family || !kind) return kind;
    bool handle = same_noun(r->note->arena, part, "handle") || same_noun(r->note->arena, part, "pull");
    bool built = !strcmp(family->rule.id, "furniture") || kind_note_has(r, "drawer drawers"); // a tool chest
    if (handle && built) return ruleset_flaw(rules, "missing-hardware");
    bool driven = same_noun(r->note->arena, part, "belt") && strcmp(family->rule.id, "clothing") != 0;
    if (driven) return ruleset_flaw(rules, "missing-accessory"); // a treadle's, a turntable's
    static const char *const played[] = {"games-puzzles", "toys", "crafts", "holiday"};
    bool game = false;
    for (size_t i = 0; i < COUNT(played); i++) game |= text_same(family->rule.id, played[i]);
    if (!game && (same_noun(r->note->arena, part, "peg") || !strncmp(part, "shelf p", 7)))
        return ruleset_flaw(rules, "missing-hardware");
    if (occurs_in(kind, family)) return kind;
    for (size_t i = 0; i < rules->flaw_count; i++)
        if (rules->flaws[i]->form == ABSENCE && rules->flaws[i] != kind &&
            occurs_in(rules->flaws[i], family) && has_part(r->note->arena, rules->flaws[i], part))
            return rules->flaws[i];
    if (text_same(kind->rule.id, "stone-missing") && text_same(family->rule.id, "lighting"))
        return ruleset_flaw(rules, "missing-accessory"); // the crystals of a chandelier
    if (text_same(kind->rule.id, "missing-button") ||
        (text_same(kind->rule.id, "missing-stopper") && (strstr(part, "cap") || strstr(part, "plug"))))
        return ruleset_flaw(rules, "missing-accessory"); // a machine's belt
    return kind;
}

// Of a figure, a flower or a creature what is missing is broken off.
static bool is_limb(const char *word) {
    static const char *const words[] = {"finger", "thumb", "ear",  "tail",  "wing", "beak",   "petal",
                                        "horn",   "toe",   "nose", "arm",   "head", "branch", "twig",
                                        "antler", "hoof",  "paw",  "tooth", "tine"};
    for (size_t i = 0; i < COUNT(words); i++)
        if (text_same(word, words[i])) return true;
    return false;
}

// The horn of a thing that sounds, or of one that rides, is no limb.
static bool has_horn(const char *type) {
    static const char *const things[] = {"gramophone", "phonograph",    "car",
                                         "bicycle",    "record player", "talking machine"};
    for (size_t i = 0; type && i < COUNT(things); i++)
        if (strstr(type, things[i])) return true;
    return false;
}

// "6 cups and 5 plates": are there several of what the word names?
static bool is_counted(const struct fault_reader *r, const char *word) {
    enum { BACK = 2 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        if (tokens->at[i].one == tokens->at[i].fold || !text_same(tokens->at[i].one, word)) continue;
        for (size_t n = 1; n <= BACK && n <= i && tokens->at[i - n].stop == STOP_NONE; n++)
            if (degrees_number(tokens, i - n) > 1) return true;
    }
    return false;
}

const struct flaw *absent_kind_here(const struct fault_reader *r, const char *part, int count) {
    static const char *const sides[] = {"left ", "right ", "upper ", "lower ", "rear "};
    for (size_t i = 0; i < COUNT(sides); i++)
        if (!strncmp(part, sides[i], strlen(sides[i]))) part += strlen(sides[i]);
    const struct note *note = r->note;
    const struct family *family = note->record->family;
    const char *type = note->record->type.value ? note->record->type.value : "", *last = strrchr(part, ' '),
               *head = say_singular(note->arena, last ? last + 1 : part),
               *own = lacking_kind(say_singular(note->arena, part), family ? family->rule.id : NULL);
    static const char *const built[] = {"furniture", "lighting",   "tools",
                                        "music",     "electrical", "clocks-watches"};
    bool made = false; // the arm of a lamp was made apart
    for (size_t i = 0; family && i < COUNT(built); i++)
        made |= text_same(family->rule.id, built[i]) && text_same(head, "arm");
    static const char *const fired[] = {"ceramics", "glassware", "jewelry"};
    for (size_t i = 0; family && i < COUNT(fired); i++) // of a flower, and of no book
        if (text_same(family->rule.id, fired[i]) && text_same(head, "leaf"))
            return ruleset_flaw(note->rules, "broken-part");
    static const char *const modelled[] = {"ceramics", "glassware"}; // the handle of a jug was made with it
    bool grown = text_same(head, "handle") || text_same(head, "spout");
    for (size_t i = 0; family && grown && i < COUNT(modelled); i++)
        if (text_same(family->rule.id, modelled[i])) return ruleset_flaw(note->rules, "broken-part");
    if (text_same(head, "handle") && family && text_same(family->rule.id, "metalware"))
        return ruleset_flaw(note->rules, "missing-hardware");
    if (is_limb(head) && !made && !(text_same(head, "horn") && has_horn(type)))
        return ruleset_flaw(note->rules, "broken-part");
    static const char *const labeled[] = {"furniture", "clothing", "linens", "bags", "footwear"};
    for (size_t i = 0; family && (!strcmp(head, "label") || !strcmp(head, "tag")) && i < COUNT(labeled); i++)
        if (!strcmp(family->rule.id, labeled[i])) return ruleset_flaw(note->rules, "missing-tag");
    static const char *const bands[] = {"band", "ball band", "label", "wrapper", "paper band"}; // of yarn
    for (size_t i = 0; family && text_same(family->rule.id, "crafts") && i < COUNT(bands); i++)
        if (text_same(say_singular(note->arena, part), bands[i]))
            return ruleset_flaw(note->rules, "missing-tag");
    static const char *const worn[] = {"elbow", "knee", "seat", "toe", "thumb", "fingertip"};
    bool cloth = family && (text_same(family->rule.id, "clothing") || text_same(family->rule.id, "linens"));
    for (size_t i = 0; cloth && i < COUNT(worn); i++) // "elbows gone": worn through
        if (text_same(head, worn[i])) return ruleset_flaw(note->rules, "hole");
    if (is_of_cloth(family) && absent_is_trim(say_singular(note->arena, head)))
        return ruleset_flaw(note->rules, "trim-loss");
    if (family && (text_same(head, "selvedge") || text_same(head, "selvage") || text_same(head, "edging")))
        return ruleset_flaw(note->rules, "trim-loss");
    if (family && text_same(family->rule.id, "games-puzzles") && !strncmp(part, "double ", strlen("double ")))
        return ruleset_flaw(note->rules, "missing-pieces"); // of dominoes
    static const char *const cards[] = {"club",    "clubs",    "heart", "hearts", "spade", "spades",
                                        "diamond", "diamonds", "ace",   "jack",   "queen", "king",
                                        "joker",   "two",      "three", "four",   "five",  "six",
                                        "seven",   "eight",    "nine",  "ten"};
    bool pack = kind_note_has(r, "cards deck decks");
    for (size_t i = 0; pack && i < COUNT(cards); i++) // "one deck is short the four of clubs"
        if (text_same(head, cards[i])) return ruleset_flaw(note->rules, "missing-pieces");
    bool brittle =
        family && (text_same(family->rule.id, "glassware") || text_same(family->rule.id, "ceramics"));
    if (brittle && (text_same(head, "scallop") || text_same(head, "hob") || text_same(head, "petal")))
        return ruleset_flaw(note->rules, "chip");
    if (family && text_same(family->rule.id, "books") && text_same(head, "volume"))
        return ruleset_flaw(note->rules, "missing-pieces");
    if (family && text_same(family->rule.id, "bags") && text_same(head, "foot"))
        return ruleset_flaw(note->rules, "missing-hardware");
    // "Veneer has come up and a strip is gone"
    bool strip = text_same(head, "strip") || text_same(head, "sliver") || text_same(head, "slip");
    if (strip && family && text_same(family->rule.id, "furniture") &&
        kind_note_has(r, "veneer veneers veneered"))
        return ruleset_flaw(note->rules, "veneer-damage");
    bool leaves = family && (text_same(family->rule.id, "books") || text_same(family->rule.id, "paper"));
    if (leaves && text_same(head, "cover")) return ruleset_flaw(note->rules, "binding-weak");
    const struct flaw *kind = own ? ruleset_flaw(note->rules, own)
                                  : kind_by_family(r, absent_kind(note->arena, note->rules, part), part);
    const char *set = strrchr(type, ' ');
    bool service = strstr(type, "service") || strstr(type, "cutlery") || strstr(type, "flatware") ||
                   (set && text_same(set + 1, "set") && is_counted(r, head));
    bool several = service ? !strstr(" box case stand bag key lid instructions manual ",
                                     arena_format(note->arena, " %s ", head))
                           : count > 1 && !is_one_thing(family);
    const struct flaw *pieces = ruleset_flaw(note->rules, "missing-pieces");
    several &= !strstr(" felt baize pad ", arena_format(note->arena, " %s ", head)); // under each piece
    return several && pieces && kind == ruleset_flaw(note->rules, "missing-accessory") ? pieces : kind;
}

// "One cuff button is gone", "missing a collar button": the button by its place, as no list has it.
static const char *button_in(struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const places[] = {"cuff",      "cuffs",     "sleeve",  "collar",   "pocket",
                                         "waist",     "fly",       "bottom",  "shoulder", "coat",
                                         "epaulette", "waistband", "neck",    "side",     "lower",
                                         "inside",    "lapel",     "placket", "hip"};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->from > 0 ? hit->from : 1; i < hit->to; i++)
        if (ANY(tokens, i, "button", "buttons") && token_among(tokens, i - 1, places, COUNT(places)))
            return fault_words(r->note, i - 1, i + 1);
    return NULL;
}

// "Several buttons are off, they are in an envelope": where they are now is no place of the thing.
bool absent_is_kept(const struct note *note, const char *where, size_t to) {
    const struct tokens *tokens = &note->tokens;
    bool kept = false;
    for (size_t i = to; i < tokens->count && tokens->at[i].stop < STOP_SENTENCE; i++) {
        kept |= ANY(tokens, i, "they're", "it's", "theyre") && ANY(tokens, i + 1, "in");
        kept |= ANY(tokens, i, "they", "it", "which", "these") && ANY(tokens, i + 1, "are", "is") &&
                ANY(tokens, i + 2, "in");
        if (kept && token_is(tokens, i, where)) return true;
    }
    return false;
}

// "Rose missing", "no bell", "without its rose": the kind has no name of its own for what lacks, its words
// have.
const char *absent_part_in(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    static const char *const about[] = {"missing", "gone",  "lost",     "no",   "not", "without", "its",
                                        "the",     "a",     "is",       "are",  "has", "lacks",   "lacking",
                                        "minus",   "needs", "wants",    "but",  "it",  "with",    "here",
                                        "absent",  "never", "included", "lost", "and", "there",   "lacking",
                                        "an",      "of",    "none",     "on",   "to",  "in",      "them"};
    enum { WORDS_MOST = 2 };
    const struct tokens *tokens = &r->note->tokens;
    size_t from = hit->to, to = hit->from;
    if (text_same(kind->rule.id, "missing-button")) return button_in(r, hit);
    if (kind->form != ABSENCE || !kind->says || !kind->part || !text_same(kind->part, "accessory"))
        return NULL;
    for (size_t i = hit->from; i < hit->to; i++) {
        if (token_among(tokens, i, about, COUNT(about))) continue;
        if (tokens->at[i].kind != TOKEN_WORD || (to > hit->from && to != i)) return NULL;
        if (from == hit->to) from = i;
        to = i + 1;
    }
    return to > from && to - from <= WORDS_MOST ? fault_words(r->note, from, to) : NULL;
}

// "Sleeve split, name on the front": the packing by the word that they have for it.
const char *fault_packing(const struct fault_reader *r, const struct fault_hit *hit) {
    size_t cue = r->scope.cue[hit->from];
    const char *packing =
        cue < r->note->tokens.count && token_is(&r->note->tokens, cue, "sleeve") ? "sleeve" : "box";
    const struct flaw *kind = hit->kinds[0]; // "box lid is missing": its lid, and the box is there
    bool lid = kind->form == ABSENCE && kind->part && text_same(kind->part, "lid");
    return lid ? arena_format(r->note->arena, "%s %s", packing, kind->part) : packing;
}

// "The neck has a piece missing", "a bit gone from the rim": of one thing, and no set.
bool absent_is_of_one(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const ids[] = {"ceramics", "glassware", "furniture", "metalware",
                                      "lighting", "decor",     "tools",     "kitchenware"};
    static const char *const pieces[] = {"piece", "bit", "chunk", "lump", "section"};
    const struct family *family = r->note->record->family;
    bool one = false;
    for (size_t i = 0; family && i < COUNT(ids); i++) one |= text_same(family->rule.id, ids[i]);
    return one && r->note->record->count < 2 && !hit->near &&
           token_among(&r->note->tokens, hit->from, pieces, COUNT(pieces));
}

// "The left handle is gone": which of them, which no list of parts has.
size_t absent_with_side(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0 || !ANY(tokens, i - 1, "left", "right", "upper", "lower", "rear") || r->note->taken[i - 1] ||
        tokens->at[i - 1].stop != STOP_NONE)
        return i;
    bool opens = i == 1 || tokens->at[i - 2].stop != STOP_NONE || spot_article(tokens, i - 2) ||
                 ANY(tokens, i - 2, "and", "but");
    return opens ? i - 1 : i;
}
