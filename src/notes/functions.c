// SPDX-License-Identifier: MIT
// What a part does not do: "the lock doesn't latch", "two poppers won't snap", "the fan won't spin". Which
// kind that is follows from the part: a fastener does not hold, what turns or slides is stuck, what works by
// itself works no more.
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/things.h"
#include "text/order.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const denials[] = {"doesn't", "don't",  "won't",    "can't", "doesnt", "dont",
                                      "wont",    "cannot", "wouldn't", "isn't", "aren't", "never"};

// What a sound part does; "wobble", "leak" and their like are no such verbs.
static const char *const verbs[] = {"call",        "cuckoo",        "speak",          "sound",
                                    "sing",        "stay down",     "stay where",     "stay in place",
                                    "burn",        "brown",         "latch",          "latching",
                                    "snap",        "snapping",      "close",          "closing",
                                    "shut",        "shutting",      "turn",           "turning",
                                    "open",        "opening",       "spin",           "spinning",
                                    "light",       "lighting",      "ring",           "ringing",
                                    "hold",        "holding",       "lock",           "locking",
                                    "move",        "moving",        "slide",          "sliding",
                                    "catch",       "catching",      "click",          "work",
                                    "working",     "play",          "playing",        "fire",
                                    "firing",      "charge",        "charging",       "tick",
                                    "ticking",     "strike",        "striking",       "chime",
                                    "chiming",     "pump",          "pumping",        "swivel",
                                    "lift",        "fold",          "extend",         "retract",
                                    "fasten",      "grip",          "engage",         "rotate",
                                    "wind",        "winding",       "glow",           "blow",
                                    "suck",        "spray",         "seal",           "sealing",
                                    "screw",       "unscrew",       "undo",           "reach",
                                    "spring",      "budge",         "shift",          "start",
                                    "pour",        "flow",          "draw",           "register",
                                    "come on",     "do up",         "stay up",        "stay shut",
                                    "stay on",     "stay put",      "stay open",      "stay closed",
                                    "stay in",     "go on",         "go in",          "go up",
                                    "go down",     "go round",      "record",         "rewind",
                                    "erase",       "print",         "drain",          "fill",
                                    "boil",        "toast",         "return",         "feed",
                                    "advance",     "focus",         "bite",           "read",
                                    "cut",         "respond",       "reverse",        "oscillate",
                                    "trigger",     "pick up",       "wind on",        "let go",
                                    "spring back", "come back",     "pop up",         "come out",
                                    "come off",    "throw",         "shoot",          "draw back",
                                    "light up",    "screw down",    "screw on",       "pull out",
                                    "push in",     "zero",          "settle",         "swing",
                                    "hinge",       "drop",          "float",          "level",
                                    "puff",        "prime",         "receive",        "transmit",
                                    "grind",       "squirt",        "take up",        "take air",
                                    "hold air",    "hold pressure", "build pressure", "build up pressure"};

static const struct {
    const char *kind, *parts;
} kinds[] = {
    {"zip-fault", " zip zipper popper press-stud snap "},
    {"clasp-fault",
     " lock clasp catch latch hasp hook buckle fastener fastening clip pin brooch button stud bolt padlock "},
    {"seized",
     " key knob wheel hinge drawer lid door tap valve screw nut handle crank lever shutter slide ring "
     "focus cap top stopper cover castor caster winder tuner peg pedal blind gate tray leg shelf head "
     "jaw vice dial cursor barrel piston trigger carriage plunger arm hatch flap drawers runner ratchet "
     "blade chuck pulley roller treadle platen slider pivot turret zoom mechanism action brake "},
    {"partly-working",
     " light lamp bulb motor fan speaker bell horn timer switch button meter needle pump "
     "bellows battery heater element alarm strike chime display screen indicator gauge reed "
     "burner mantle flash player turntable deck channel reel spring bladder side movement radio clock "
     "tape cassette hotplate grill oven compressor blower note drone pickup socket pot volume tone "
     "oscillation brake remote digit segment clutch igniter thermostat relay aerial antenna tuner "
     "channel string letter backlight lead eyecup eyepiece magnet band turnlock governor neck lance spindle "
     "rewind ear earpiece earphone gear growler squeaker whistle buzzer siren hooter doorbell bleeper "
     "spindle bird cuckoo "},
};

// Buttons of clothes fasten; those of an instrument or a machine are pressed.
static bool is_pressed(const struct fault_reader *r, size_t i) {
    static const char *const ids[] = {"music", "electrical", "cameras", "clocks-watches", "media", "tools"};
    static const char *const words[] = {"button", "buttons", "stud", "studs"};
    const struct family *family = r->note->record->family;
    for (size_t k = 0; family && k < COUNT(ids); k++)
        if (text_same(family->rule.id, ids[k])) return token_among(&r->note->tokens, i, words, COUNT(words));
    return false;
}

const struct flaw *function_kind(const struct fault_reader *r, size_t i) {
    if (i >= r->note->tokens.count || r->note->tokens.at[i].kind != TOKEN_WORD) return NULL;
    const struct token *token = &r->note->tokens.at[i];
    if (is_pressed(r, i)) return ruleset_flaw(r->note->rules, "partly-working");
    for (size_t k = 0; k < COUNT(kinds); k++) {
        const char *words[] = {token->one, token->fold};
        for (size_t w = 0; w < COUNT(words); w++) {
            char padded[32];
            if (!words[w]) continue;
            size_t size = strlen(words[w]);
            if (size > 2 && text_same(words[w] + size - 2, "'s")) size -= 2; // "the lock's dodgy"
            if (size + 3 > sizeof padded) continue;
            padded[0] = ' ';
            memcpy(padded + 1, words[w], size);
            memcpy(padded + size + 1, " ", 2);
            if (strstr(kinds[k].parts, padded)) return ruleset_flaw(r->note->rules, kinds[k].kind);
        }
    }
    return NULL;
}

// "Doesn't", "do not", "hasn't": how many tokens the denial takes.
size_t function_denial(const struct tokens *tokens, size_t i) {
    static const char *const helpers[] = {"do",  "does", "did",  "will",  "is",
                                          "are", "has",  "have", "would", "could"};
    static const char *const perfects[] = {"hasn't", "haven't", "hasnt"};
    if (token_among(tokens, i, denials, COUNT(denials)) || token_among(tokens, i, perfects, COUNT(perfects)))
        return 1;
    return token_among(tokens, i, helpers, COUNT(helpers)) && token_is(tokens, i + 1, "not") ? 2 : 0;
}

// "Never comes on", "never rings".
static size_t third_person(const struct tokens *tokens, size_t i) {
    size_t size = i < tokens->count ? strlen(tokens->at[i].fold) : 0;
    if (size < 4 || tokens->at[i].fold[size - 1] != 's') return 0;
    for (size_t k = 0; k < COUNT(verbs); k++) {
        size_t first = strcspn(verbs[k], " ");
        bool same = !strncmp(tokens->at[i].fold, verbs[k], first) && (size == first + 1 || size == first + 2);
        if (!same) continue;
        if (!verbs[k][first]) return i + 1;
        if (token_is(tokens, i + 1, verbs[k] + first + 1)) return i + 2;
    }
    return 0;
}

static size_t verb_at(const struct tokens *tokens, size_t i) {
    static const char *const adverbs[] = {"quite",    "fully", "always", "really",
                                          "properly", "even",  "want to"};
    if (token_among(tokens, i, adverbs, COUNT(adverbs))) i++;
    bool opens = token_may_open(tokens, i, (const void *)verbs, COUNT(verbs), sizeof *verbs);
    for (size_t k = 0; opens && k < COUNT(verbs); k++) {
        size_t n = token_phrase(tokens, i, verbs[k]);
        if (n) return i + n;
    }
    static const char *const stirred[] = {"budged", "moved", "shifted", "stirred"};
    static const char *const perfects[] = {"hasn't", "haven't", "hasnt"}; // "needle hasn't budged"
    if (i > 0 && token_among(tokens, i - 1, perfects, COUNT(perfects)))
        return token_among(tokens, i, stirred, COUNT(stirred)) ? i + 1 : 0;
    return i > 0 && token_is(tokens, i - 1, "never") ? third_person(tokens, i) : 0;
}

// "The bow is missing at the top so it can't go on a chain": a place, and what follows is of the thing.
static bool is_place_of_cause(const struct tokens *tokens, size_t part, size_t denial) {
    bool so = false;
    for (size_t i = part + 1; i < denial; i++) so |= ANY(tokens, i, "so", "because", "as", "since", "and");
    size_t before = part;
    while (before > 0 && spot_article(tokens, before - 1)) before--;
    return so && before > 0 && spot_preposition(tokens, before - 1);
}

// "One reed on the left side", at the "side": what is there does not work, and not the side.
static size_t owner_of(const struct fault_reader *r, size_t at) {
    enum { WORDS = 3 };
    static const char *const sides[] = {"side", "end", "top", "bottom", "front", "back", "row", "corner"};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_among(tokens, at, sides, COUNT(sides))) return at;
    for (size_t k = at; k > 1 && at - k < WORDS && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (ANY(tokens, k - 1, "on", "at", "in"))
            return tokens->at[k - 2].stop == STOP_NONE && function_kind(r, k - 2) ? k - 2 : at;
    return at;
}

// The part before the denial, at most a few words back in its clause.
bool function_part(const struct fault_reader *r, size_t i, size_t *at) {
    enum { BACK = 4, PLACED = 6 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t back = 1; back <= PLACED && back <= i; back++) {
        if (back > BACK && !ANY(tokens, i - back + 1, "on", "of", "at", "in"))
            continue; // "zip on the left pocket"
        if (tokens->at[i - back].stop != STOP_NONE || token_is(tokens, i - back, "i") ||
            token_is(tokens, i - back, "you"))
            return false;
        *at = i - back;
        if (function_kind(r, i - back)) return !is_place_of_cause(tokens, *at = owner_of(r, *at), i);
    }
    return false;
}

static bool is_told(const struct fault_reader *r, size_t from, size_t to) {
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from < to && r->hits[k].to > from && r->note->taken[r->hits[k].from] == TAKEN_FLAW)
            return true;
    return false;
}

// "Lid won't stay shut", "knob won't stay on": what does not stay where it is put is the opposite of stuck.
static const struct flaw *kind_of_verb(const struct fault_reader *r, size_t part, size_t verb, size_t to) {
    const struct flaw *kind = function_kind(r, part);
    static const char *const effects[] = {"seal",  "sealing", "hold",   "holding", "grip",     "engage",
                                          "bite",  "speak",   "sound",  "sing",    "register", "play",
                                          "print", "ring",    "strike", "chime",   "light",    "respond"};
    if (text_same(kind->rule.id, "seized") && token_among(&r->note->tokens, verb, effects, COUNT(effects)))
        return ruleset_flaw(r->note->rules, "partly-working"); // "cap doesn't seal", "two keys don't sound"
    if (!token_is(&r->note->tokens, verb, "stay") || !text_same(kind->rule.id, "seized")) return kind;
    static const char *const closed[] = {"shut", "closed", "down", "open"};
    bool fastens = token_among(&r->note->tokens, to - 1, closed, COUNT(closed));
    const struct flaw *loose = ruleset_flaw(r->note->rules, fastens ? "clasp-fault" : "loose-part");
    return loose ? loose : kind;
}

// "Handle has a hairline, doesn't move when you press it": the crack, and no part that should move.
bool function_of_crack(const struct fault_reader *r, size_t verb, size_t to) {
    enum { FAR = 8 };
    const struct tokens *tokens = &r->note->tokens;
    bool runs = ANY(tokens, verb, "go", "reach", "come", "run", "extend") && // "doesn't go up the side"
                ANY(tokens, to - 1, "up", "down", "in", "reach", "round", "out", "on", "through");
    if (ANY(tokens, verb, "way", "right") && verb > 2) // "doesn't go all the way through"
        while (verb > 1 && ANY(tokens, verb, "way", "right", "the", "all")) verb--;
    runs |= ANY(tokens, verb, "go", "reach", "come", "run", "extend") &&
            ANY(tokens, verb + 1, "right", "all", "clean", "straight", "through", "far", "very", "deep",
                "past", "beyond", "into", "to");
    runs |= ANY(tokens, verb, "up", "down", "in", "round", "through") && verb > 0 &&
            ANY(tokens, verb - 1, "go", "come", "run", "extend");
    if (!runs && (!ANY(tokens, verb, "move", "moving", "open", "give", "spread") ||
                  !ANY(tokens, to, "when", "if", "under", "at")))
        return false;
    for (size_t h = 0; h < r->hit_count; h++) {
        const struct fault_hit *hit = &r->hits[h];
        if (hit->to > verb || verb - hit->to > FAR || hit->from < scope_sentence_start(&r->scope, verb))
            continue;
        for (size_t k = 0; k < hit->kind_count; k++)
            if (text_same(hit->kinds[k]->rule.id, "crack") || text_same(hit->kinds[k]->rule.id, "hairline") ||
                text_same(hit->kinds[k]->rule.id, "crack-through") ||
                text_same(hit->kinds[k]->rule.id, "wood-split"))
                return true;
    }
    return false;
}

// "Handle doesn't move" of a saucepan: it is meant not to.
static bool is_firm(struct fault_reader *r, size_t part, size_t verb, size_t to) {
    static const char *const fixed[] = {"handle", "handles", "head", "leg", "legs", "foot", "feet", "stem"};
    static const char *const shifts[] = {"move", "budge", "shift", "moving", "turn"};
    static const char *const ids[] = {"kitchenware", "ceramics", "glassware", "metalware",
                                      "bags",        "linens",   "decor"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    bool dish = false;
    for (size_t k = 0; k < COUNT(ids) && family; k++) dish |= text_same(family->rule.id, ids[k]);
    static const char *const held[] = {
        "fork",   "spade", "shovel", "hoe",    "rake",     "axe",    "hammer", "mallet", "hatchet", "adze",
        "chisel", "file",  "trowel", "pick",   "mattock",  "broom",  "paddle", "oar",    "bat",     "racket",
        "hook",   "saw",   "knife",  "sickle", "billhook", "sledge", "maul",   "edger"};
    const char *type = r->note->record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    head = head ? head + 1 : type;
    for (size_t k = 0; k < COUNT(held) && head; k++) dish |= text_same(head, held[k]);
    const struct flaw *kind = ruleset_flaw(r->note->rules, "loose-part");
    if (!dish || !kind || !token_among(tokens, part, fixed, COUNT(fixed)) ||
        !token_among(tokens, verb, shifts, COUNT(shifts)))
        return false;
    clear_add(r, kind, fault_place(r->note, part, part + 1), NULL, false, part, to);
    return true;
}

const char *function_place(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    static const char *const ids[] = {"seized", "partly-working", "clasp-fault", "loose-part"};
    size_t at = 0;
    bool fits = false;
    for (size_t k = 0; k < COUNT(ids); k++) fits |= text_same(kind->rule.id, ids[k]);
    if (!fits || hit->from == 0 || r->note->tokens.at[hit->from - 1].stop != STOP_NONE ||
        !function_part(r, hit->from, &at) || !note_free(r->note, at, at + 1))
        return NULL;
    return fault_place(r->note, at, at + 1);
}

static bool function_holds(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                           size_t at, const char *part) {
    static const char *const ids[] = {"zip-fault", "clasp-fault", "seized"};
    const struct flaw *fault = function_kind(r, at);
    if (!fault || !text_same(kind->rule.id, "working-tested")) return false;
    for (size_t k = 0; k < COUNT(ids); k++)
        if (text_same(fault->rule.id, ids[k])) {
            clear_add(r, fault, part, NULL, false, hit->from, hit->to);
            return true;
        }
    return false;
}

bool function_is_of_faulty(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    while (i > 0 && token_is(tokens, i - 1, "still")) i--;
    if (i < 2 || !token_is(tokens, i - 1, "but")) return false;
    size_t end = tokens->at[i - 2].stop == STOP_COMMA ? i - 2 : i - 1;
    for (size_t h = 0; h < r->hit_count; h++) {
        if (r->hits[h].to != end || r->hits[h].kinds[0]->form != FAULT) continue;
        struct spot spot = spot_found(r, &r->hits[h]);
        return spot.part_to > spot.part_from && r->note->taken[spot.part_to - 1] != TAKEN_TYPE;
    }
    return false;
}

// "Focus works both coarse and fine", "screw runs in and out": what stands right before the words is what
// works.
bool function_of_part(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind, size_t to,
                      const char *part) {
    static const char *const links[] = {"still", "both", "all", "also", "just"};
    const struct tokens *tokens = &r->note->tokens;
    if (part) return function_holds(r, hit, kind, to - 1, part);
    for (size_t k = hit->from + 1; k < hit->to; k++) // "fine focus works": fine is which focus
        if (ANY(tokens, k, "works", "work", "worked") && (r->part[k - 1] || function_kind(r, k - 1)) &&
            r->note->taken[k - 1] != TAKEN_TYPE) {
            function_holds(r, hit, kind, k - 1, fault_place(r->note, k - 1, k));
            return true;
        }
    size_t at = hit->from;
    while (at > 0 && token_among(tokens, at - 1, links, COUNT(links))) at--;
    if (at > 1 && ANY(tokens, at, "both", "all") && tokens->at[at - 1].stop == STOP_COMMA &&
        r->part[at - 2]) // "brass locks, both work"
        return function_holds(r, hit, kind, at - 2, fault_place(r->note, at - 2, at - 1));
    if (at > 0 && (r->part[at - 1] || function_kind(r, at - 1)) && tokens->at[at - 1].stop == STOP_NONE &&
        r->note->taken[at - 1] != TAKEN_TYPE)
        return function_holds(r, hit, kind, at - 1, fault_place(r->note, at - 1, at));
    return text_same(kind->rule.id, "working-tested") && function_is_of_faulty(r, at);
}

// "Spins fine" of a globe or a stool: what has no works does not work, it is not stuck.
bool function_moves(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    static const char *const ids[] = {"decor",     "furniture", "metalware", "kitchenware", "ceramics",
                                      "glassware", "bags",      "books",     "sports",      "other"};
    static const char *const motions[] = {"spins",   "turns", "rotates", "revolves",
                                          "swivels", "opens", "folds"};
    const struct family *family = r->note->record->family;
    const struct flaw *seized = ruleset_flaw(r->note->rules, "seized");
    bool still = false;
    for (size_t k = 0; family && k < COUNT(ids); k++) still |= text_same(family->rule.id, ids[k]);
    if (!still || !seized || !text_same(kind->rule.id, "working-tested") ||
        !token_among(&r->note->tokens, hit->from, motions, COUNT(motions)))
        return false;
    clear_add(r, seized, NULL, NULL, false, hit->from, hit->to);
    return true;
}

bool function_does(const struct tokens *tokens, size_t i) {
    static const char *const more[] = {"works", "runs", "goes", "light", "lights", "fine", "ok", "yes"};
    // "Is brown", "looks level": how it is, and nothing that it does
    if (i > 0 && ANY(tokens, i, "brown", "open", "level", "light", "cut", "slack", "fold", "spring") &&
        ANY(tokens, i - 1, "is", "are", "was", "were", "looks", "look", "gone", "turned", "a", "the", "very",
            "quite", "it's", "all", "rather"))
        return false;
    return third_person(tokens, i) || token_among(tokens, i, more, COUNT(more)) ||
           (i > 0 && token_among(tokens, i, verbs, COUNT(verbs)) && tokens->at[i].stop == STOP_NONE);
}

// "So it won't draw", "does not oscillate": what the thing itself does not do, as a pronoun or not named at
// all. What it does among other things leaves the rest.
static bool read_whole(struct fault_reader *r, size_t i, size_t verb, size_t to) {
    static const char *const mains[] = {"draw",     "puff",     "prime",         "pump",          "suck",
                                        "blow",     "spray",    "grind",         "squirt",        "mix",
                                        "take air", "hold air", "hold pressure", "build pressure"};
    static const char *const others[] = {"strike",  "chime",    "ring",  "oscillate", "record",  "rewind",
                                         "reverse", "feed",     "zero",  "take up",   "receive", "transmit",
                                         "wind on", "register", "erase", "advance"};
    static const char *const its[] = {"it", "they", "which", "so", "and", "but"};
    static const char *const behind[] = {"anything", "any", "at",    "properly", "well",  "now",
                                         "water",    "air", "right", "because",  "until", "unless",
                                         "without",  "as",  "and",   "but",      "paper", "up"};
    const struct tokens *tokens = &r->note->tokens;
    bool led = i == 0 || tokens->at[i - 1].stop != STOP_NONE || token_among(tokens, i - 1, its, COUNT(its)) ||
               r->note->taken[i - 1] == TAKEN_TYPE;
    bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                tokens->at[to - 1].stop != STOP_NONE || token_among(tokens, to, behind, COUNT(behind));
    bool main = token_longest(tokens, verb, mains, COUNT(mains)) > 0;
    if (!led || !ends || !running_can(r->note) ||
        (!main && !token_longest(tokens, verb, others, COUNT(others))))
        return false;
    struct fault_hit hit = {.from = i, .to = to, .kind_count = 1};
    hit.kinds[0] = ruleset_flaw(r->note->rules, main ? "not-working" : "partly-working");
    if (hit.kinds[0]) fault_tell(r, &hit, hit.kinds[0], NULL, NULL);
    return true;
}

void read_functions(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        size_t part = 0, to, n = function_denial(tokens, i);
        if (!n || !(to = verb_at(tokens, i + n))) continue;
        bool whole = !function_part(r, i, &part) || (i > part + 2 && token_is(tokens, i - 1, "it") &&
                                                     ANY(tokens, i - 2, "but", "so", "and"));
        if (whole) part = i;
        if (is_told(r, part, to) || sound_said_holds(r, part, to)) continue;
        static const char *const blades[] = {"blade", "blades", "scissors", "knife", "teeth"};
        if (token_is(tokens, to - 1, "cut") && token_among(tokens, part, blades, COUNT(blades))) continue;
        if (r->scope.stance[i] & (STANCE_WITHDRAWN | STANCE_OTHER | STANCE_UNKNOWN)) continue;
        if ((r->scope.stance[i] & STANCE_PAST) && !scope_past_is_own(&r->scope, i, to)) continue;
        if (whole) {
            read_whole(r, i, i + n, to);
            continue;
        }
        if (function_of_crack(r, i + n, to) || is_firm(r, part, i + n, to)) continue;
        struct fault_hit hit = {
            .from = part, .to = to, .kinds = {kind_of_verb(r, part, i + n, to)}, .kind_count = 1};
        size_t from = part;
        while (from > 0 && r->part[from - 1]) from--;
        if (!note_free(r->note, part, part + 1) && r->note->taken[part] != TAKEN_PART) continue;
        fault_tell(r, &hit, hit.kinds[0], fault_place(r->note, from, part + 1), NULL);
        i = to - 1;
    }
}

// "Ratchet not working", "the dynamo won't run": what fails, though no list of parts has it.
void function_take_failing(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    static const char *const fails[] = {"not",    "won't", "wont", "doesn't",
                                        "doesnt", "isn't", "dead", "never"};
    const struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    if (spot->part_to > spot->part_from || !text_same(hit->kinds[0]->rule.id, "not-working") ||
        !token_among(tokens, hit->from, fails, sizeof fails / sizeof *fails))
        return;
    size_t to = hit->from;
    while (to > 0 && ANY(tokens, to - 1, "is", "are", "was", "still")) to--;
    if (to == 0 || tokens->at[to - 1].kind != TOKEN_WORD || tokens->at[to - 1].stop != STOP_NONE) return;
    size_t from = to - 1, at = from;
    if (note->taken[from] != TAKEN_NOT || r->scope.fault[from]) return;
    if (at > 0 && ANY(tokens, at - 1, "the", "its", "but", "and", "one")) at--;
    struct noun_found noun;
    bool opens = at < from || at == 0 || tokens->at[at - 1].stop != STOP_NONE;
    if (!opens || !noun_at(note, from, &noun) || noun.to != to ||
        ANY(tokens, from, "movement", "mechanism", "engine", "works", "machine", "unit", "set", "motor",
            "clock", "watch", "thing", "rest", "others", "other", "lot", "piece", "item", "power"))
        return;
    spot->part_from = from;
    spot->part_to = to;
}
