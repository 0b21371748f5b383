// SPDX-License-Identifier: MIT
// Which part of the thing a fault is of, of those that its words or those around it may name; and
// whether a fault of the same kind is another one.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/of_use.h"
#include "notes/traces.h"
#include "text/order.h"

// "No lid", "the box is missing", "an edge that was ground": the part that the kind has by itself.
static bool is_implied(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                       const char *part) {
    if (kind->says && strstr(kind->says, part)) return true;
    // "Base only": what is there, and not what is missing.
    if (kind->form == ABSENCE && token_is(&r->note->tokens, hit->to - 1, "only")) return true;
    if (kind->form != ABSENCE || !kind->part) return false;
    const char *one = say_singular(r->note->arena, part), *last = strrchr(kind->part, ' ');
    const char *joined =
        arena_format(r->note->arena, "%s %s", part, note_words(r->note, hit->from, hit->from + 1));
    return text_same(part, kind->part) || text_same(one, kind->part) || text_same(joined, kind->part) ||
           (last && text_same(one, last + 1));
}

// "The zoom ring is stiff", "line's rotten": words that are no part where it is marked with them.
static bool is_ring(const struct flaw *kind, const char *part) {
    static const char *const kinds[] = {"seized",        "dent-bend",  "loose-part",  "partly-working",
                                        "rust",          "warped",     "fabric-weak", "broken-part",
                                        "replaced-part", "not-working"};
    bool ring = text_same(part, "ring") || text_same(part, "rings") || text_same(part, "line");
    for (size_t i = 0; ring && i < sizeof kinds / sizeof *kinds; i++)
        if (text_same(kind->rule.id, kinds[i])) return true;
    return false;
}

// "Three of the bits are bent": of a brace; but "no bits missing".
static bool is_bits(const struct note *note, const struct flaw *kind, const char *part) {
    const char *type = note->record->type.value;
    return text_same(part, "bits") && kind->form == FAULT && type &&
           (strstr(type, "brace") || strstr(type, "drill") || strstr(type, "auger"));
}

// "The radio does not work" of a radio: the thing itself is no part of it.
static bool is_whole_thing(struct note *note, const char *part) {
    const char *type = note->record->type.value, *one = say_singular(note->arena, part);
    if (!type || note->record->count > 1 || strstr(type, " and ")) return false; // "cup and saucer"
    const char *head = strrchr(type, ' ');
    if (text_same(one, "rocker")) return false; // of a rocker: a part of it
    return text_same(part, type) || text_same(one, type) || (head && text_same(one, head + 1));
}

// "Box has no key": what lacks is named in the words of the flaw, and the box is where it lacks.
static bool is_owner(const struct note *note, const struct fault_hit *hit, const struct flaw *kind,
                     const struct spot *spot) {
    if (kind->form != ABSENCE || !kind->part || spot->part_to > hit->from) return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (note->tokens.at[i].one && text_same(note->tokens.at[i].one, kind->part)) return true;
    return false;
}

// "Haze in the left lens" of the lens: the place is the part itself, and told once; "on the edge of the lens"
// is a place that names it.
void fault_place_of_part(const char **where, const char **part) {
    if (!*where || !*part) return;
    if (text_same(*where, *part)) *where = NULL; // "a replaced front"
    if (!*where) return;
    size_t size = strlen(*part), n = strlen(*where);
    if (n <= size + 1 || (*where)[n - size - 1] != ' ' || !text_same(*where + n - size, *part)) return;
    static const char *const sides[] = {"left ",  "right ", "front ", "back ",  "rear ",
                                        "upper ", "lower ", "top ",   "bottom "};
    bool side = false;
    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++) {
        size_t k = strlen(sides[i]);
        side |= k == n - size && !strncmp(*where, sides[i], k);
    }
    if (side) *part = *where;
    if (side) *where = NULL;
    if (!side && strstr(*where, " of ")) *part = NULL;
}

// "Drawer" and "other drawer" of what was said of "drawers".
bool fault_is_one_of(const struct fault_reader *r, const char *one, const char *parts) {
    const char *single = say_singular(r->note->arena, parts);
    size_t size = strlen(single), n = strlen(one);
    if (text_same(one, parts) || text_same(one, single)) return true;
    return !text_same(single, parts) && n > size + 1 && one[n - size - 1] == ' ' &&
           text_same(one + n - size, single);
}

// "Strap broken, lid hinge is leather and it's perishing": the subject of the clause that "it" goes on about.
static bool take_subject_before(const struct fault_reader *r, const struct fault_hit *hit,
                                struct spot *spot) {
    enum { FAR = 10 };
    const struct tokens *tokens = &r->note->tokens;
    size_t it = hit->from;
    while (it > 0 && ANY(tokens, it - 1, "is", "has", "are", "have", "a", "bit", "very", "badly", "all"))
        it--;
    if (it < 3 || !ANY(tokens, it - 1, "it", "it's", "they", "they're", "its", "that's") ||
        !ANY(tokens, it - 2, "and", "but", "so"))
        return false;
    size_t from = it - 2;
    while (from > 0 && it - from < FAR && tokens->at[from - 1].stop == STOP_NONE) from--;
    if (from > 0 && tokens->at[from - 1].stop == STOP_NONE) return false;
    while (spot_article(tokens, from)) from++;
    size_t to = from;
    while (to < it && r->part[to] && !r->scope.fault[to] && r->note->taken[to] != TAKEN_TYPE) to++;
    if (to == from || spot->part_to > from || !ANY(tokens, to, "is", "are")) return false;
    for (size_t k = to; k < it; k++)
        if (r->scope.fault[k]) return false;
    spot->part_from = from;
    spot->part_to = to;
    return true;
}

// "The dial of the clock is foxed", "the knob on the dome has a flake off": behind the part stands the thing.
// "The cord has not been changed, it's cloth and a bit frayed": what the sentence speaks of.
static void take_part_of_pronoun(const struct fault_reader *r, const struct fault_hit *hit,
                                 struct spot *spot) {
    enum { FAR = 8 };
    if (spot_of_whole(r, hit)) return;
    const struct tokens *tokens = &r->note->tokens;
    size_t it = hit->from, start = scope_sentence_start(&r->scope, hit->from);
    while (it > start && hit->from - it < FAR && tokens->at[it - 1].stop == STOP_NONE &&
           !ANY(tokens, it - 1, "but", "though"))
        it--;
    // "the movement is battery, put in later"
    bool later = hit->kinds[0]->class == CLASS_REPAIR && it == hit->from && it > start &&
                 tokens->at[it - 1].stop == STOP_COMMA &&
                 ANY(tokens, it, "put", "fitted", "added", "changed", "swapped");
    // "the left arm is loose and someone has put a screw through it"
    if (hit->kinds[0]->class == CLASS_REPAIR && hit->from > start && ANY(tokens, hit->to, "it", "them") &&
        ANY(tokens, hit->to - 1, "through", "in", "into", "round")) {
        later = true;
        it = hit->from;
    }
    // "the seat folds but is loose on its pin"
    bool but = later || (it > start && it == hit->from && ANY(tokens, it, "is", "are", "feels", "has") &&
                         ANY(tokens, it - 1, "but", "though"));
    if (it == start || (!but && (!ANY(tokens, it, "it's", "it", "they're", "they", "its") ||
                                 tokens->at[it - 1].stop != STOP_COMMA)))
        return;
    for (size_t k = it; k < hit->from; k++)
        if (r->part[k]) return;
    size_t from = start;
    while (spot_article(tokens, from)) from++;
    size_t to = from;
    while (to < it && to < from + 3 && r->part[to] && r->note->taken[to] != TAKEN_TYPE &&
           !r->scope.fault[to] &&
           !(but && to > from &&
             ANY(tokens, to, "folds", "catches", "locks", "hooks", "clips", "snaps", "fits")))
        to++;
    size_t end = it - 1, named = end; // "the one thing is the left cuff, it's frayed"
    while (!but && named > start && end - named < 3 && r->part[named - 1] && !r->scope.fault[named - 1])
        named--;
    if (!but && named < end && named > start + 1 && ANY(tokens, named - 1, "the", "its", "one", "a") &&
        ANY(tokens, named - 2, "is", "are", "was", "be", "just", "only") &&
        r->note->taken[named] != TAKEN_TYPE) {
        spot->part_from = named;
        spot->part_to = end;
        return;
    }
    if (to == from ||
        (!but && !ANY(tokens, to, "is", "are", "has", "have", "isn't", "hasn't", "was", "looks", "had")))
        return;
    for (size_t k = to; !but && k < it; k++) // "the back is fine, it wobbles though"
        if (ANY(tokens, k, "fine", "good", "sound", "ok", "okay", "solid", "perfect", "missing", "gone",
                "lost", "tight"))
            return;
    bool many = tokens->at[to - 1].one != tokens->at[to - 1].fold; // "the varnish flakes, they're not bowed"
    if (!but && (many ? ANY(tokens, it, "it's", "it", "its") : ANY(tokens, it, "they're", "they"))) return;
    spot->part_from = from;
    spot->part_to = to;
}

// "Somebody has soldered the pan": what was mended stands behind the verb.
static void take_object(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    size_t the = ANY(tokens, hit->to - 1, "the", "its") ? hit->to - 1 : hit->to, part = the + 1;
    if (hit->kinds[0]->class != CLASS_REPAIR || !ANY(tokens, the, "the", "its", "one", "a", "two", "both") ||
        part >= tokens->count || the <= hit->from || !r->part[part] || r->note->taken[part] == TAKEN_TYPE ||
        (part + 1 < tokens->count && tokens->at[part + 1].stop == STOP_NONE &&
         !ANY(tokens, part + 1, "for", "so", "to")) ||
        !ANY(tokens, the - 1, "soldered", "welded", "glued", "mended", "repaired", "riveted", "brazed",
             "replaced", "changed", "patched", "filled", "repainted", "stripped", "re-glued", "reglued",
             "painted", "renewed", "drilled"))
        return;
    spot->part_from = part;
    spot->part_to = part + 1;
}

// "The hanging wire has scratched the back": what did it has no mark of it.
static void take_marked(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    size_t part = hit->to + 1, last = hit->to - 1;
    if (hit->kinds[0]->class != CLASS_DAMAGE || hit->from == 0 || part >= tokens->count ||
        spot->part_to != hit->from - 1 || !ANY(tokens, hit->from - 1, "has", "have", "had") ||
        !ANY(tokens, hit->to, "the", "its", "both") || !r->part[part] ||
        !ANY(tokens, last, "scratched", "marked", "dented", "rubbed", "worn", "stained", "scuffed",
             "scorched", "burnt", "burned", "gouged", "chipped", "cracked", "bruised", "cut", "dulled",
             "faded", "rusted"))
        return;
    spot->part_from = part;
    spot->part_to = part + 1;
    while (spot->part_to < tokens->count && r->part[spot->part_to] &&
           tokens->at[spot->part_to - 1].stop == STOP_NONE)
        spot->part_to++;
}

// "Sticky from sitting in a drawer": where the thing lay, and no place of the fault.
static void leave_where_it_lay(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    enum { FAR = 4 };
    static const char *const lay[] = {"sitting", "lying",  "standing", "hanging", "living", "being",
                                      "years",   "stored", "kept",     "storage", "resting"};
    const struct tokens *tokens = &r->note->tokens;
    bool placed = spot->where_to > spot->where_from;
    size_t from = placed ? spot->where_from : spot->part_from, at = hit->to;
    if (from < hit->to || (!placed && spot->part_to == spot->part_from)) return;
    if (!ANY(tokens, at, "from", "after") && ANY(tokens, at - 1, "from", "after")) at--;
    if (!ANY(tokens, at, "from", "after") && !token_among(tokens, at - 1, lay, sizeof lay / sizeof *lay))
        return;
    bool lain = token_among(tokens, at - 1, lay, sizeof lay / sizeof *lay) && at > hit->from + 1 &&
                ANY(tokens, at - 2, "from", "after");
    for (size_t i = at; !lain && i < from && i < at + FAR; i++)
        lain = token_among(tokens, i, lay, sizeof lay / sizeof *lay);
    if (!lain) return;
    if (placed)
        spot->where_from = spot->where_to = 0;
    else
        spot->part_from = spot->part_to = 0;
}

static void take_part_of_thing(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    enum { BETWEEN_MOST = 6, NAME_MOST = 3 };
    const struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    const char *type = note->record->type.value;
    leave_where_it_lay(r, hit, spot);
    take_marked(r, hit, spot);
    if (hit->kinds[0]->form == FAULT && take_subject_before(r, hit, spot)) return;
    if (spot->part_to > spot->part_from || hit->kinds[0]->form == ABSENCE) return;
    if (spot->where_to == spot->where_from) take_object(r, hit, spot);
    if (spot->part_to > spot->part_from) return;
    bool loose = ANY(tokens, hit->to - 1, "loose", "wobbly", "slack"); // "is loose on its pin"
    bool state = hit->kinds[0]->form == FAULT || hit->kinds[0]->class == CLASS_REPAIR;
    if ((loose || spot->where_to == spot->where_from) && state) take_part_of_pronoun(r, hit, spot);
    if (!type || spot->part_to > spot->part_from) return;
    size_t at = hit->from, thing;
    while (at > 0 && hit->from - at < BETWEEN_MOST && tokens->at[at - 1].stop == STOP_NONE &&
           ANY(tokens, at - 1, "is", "are", "has", "have", "isn't", "aren't", "hasn't", "haven't", "not",
               "no", "any", "a", "an", "got", "bit", "little", "small", "slightly", "very", "quite", "had",
               "looks", "feels", "some", "two", "one", "tiny", "s", "shows", "rather"))
        at--;
    thing = at;
    while (thing > 0 && at - thing < NAME_MOST && tokens->at[thing - 1].stop == STOP_NONE &&
           tokens->at[thing - 1].one && strstr(type, tokens->at[thing - 1].one))
        thing--;
    size_t lead = thing;
    while (lead > 0 && ANY(tokens, lead - 1, "the", "its", "this")) lead--;
    if (thing == at || lead < 2 || (lead == thing && !ANY(tokens, lead - 1, "of")) ||
        !ANY(tokens, lead - 1, "on", "of", "in", "inside", "to"))
        return;
    size_t to = lead - 1, from = to;
    while (from > 0 && tokens->at[from - 1].stop == STOP_NONE && r->part[from - 1] &&
           note->taken[from - 1] != TAKEN_TYPE && !r->scope.fault[from - 1])
        from--;
    if (from == to) return;
    spot->part_from = from;
    spot->part_to = to;
}

void fault_take_part_of_thing(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    take_part_of_thing(r, hit, spot);
    function_take_failing(r, hit, spot);
    fault_drop_means(r, hit, spot);
}

// "Works on two speeds, third does nothing": which of the speeds does not.
static const char *speed_before(struct fault_reader *r, const struct fault_hit *hit,
                                const struct flaw *kind) {
    static const char *const which[] = {"high",  "low",    "medium", "first", "second",
                                        "third", "fourth", "top",    "slow",  "fast"};
    struct note *note = r->note;
    size_t i = hit->from;
    bool speeds = false;
    if (!text_same(kind->rule.id, "partly-working") || i == 0 || note->tokens.at[i - 1].stop != STOP_NONE ||
        !token_among(&note->tokens, i - 1, which, sizeof which / sizeof *which))
        return NULL;
    for (size_t k = scope_sentence_start(&r->scope, i); k < i; k++)
        speeds |= ANY(&note->tokens, k, "speeds", "speed", "settings");
    if (!speeds) return NULL;
    note_take(note, i - 1, i, TAKEN_FLAW);
    return arena_format(note->arena, "%s speed", note->tokens.at[i - 1].fold);
}

// "Right eyepiece turns, the left is stiff": the left eyepiece.
static const char *without_side(const char *which, const char *part) {
    static const char *const sides[] = {"left ", "right ",  "front ", "back ",
                                        "top ",  "bottom ", "upper ", "lower "};
    for (size_t i = 0; *which && i < sizeof sides / sizeof *sides; i++)
        if (!strncmp(part, sides[i], strlen(sides[i]))) return part + strlen(sides[i]);
    return part;
}

// "Both knobs turn but the sound is weak": the words of the fault have a subject of their own.
static bool has_own_subject(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const heard[] = {"sound",    "picture", "volume",    "tone", "image",
                                        "playback", "pitch",   "reception", "spark"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from;
    if (at > 0 && ANY(tokens, at, "reads", "weighs", "registers", "shows"))
        return ANY(tokens, at - 1, "scale", "scales", "balance", "it", "they") ||
               (ANY(tokens, at - 1, "gauge", "meter") && !r->part[at - 1]);
    if (!token_among(tokens, at, heard, sizeof heard / sizeof *heard)) return false;
    while (at > 0 && ANY(tokens, at - 1, "the", "its")) at--;
    return at == 0 || tokens->at[at - 1].stop != STOP_NONE ||
           ANY(tokens, at - 1, "but", "and", "though", "yet");
}

// "One of the knobs is a replacement": the part stands in the words of the flaw, before their verb.
static const char *part_inside(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "replaced-part")) return NULL;
    for (size_t to = hit->from; to + 1 < hit->to; to++) {
        if (!ANY(tokens, to, "is", "are", "was", "were", "has", "have", "isn't", "aren't", "doesn't",
                 "don't"))
            continue;
        size_t from = to;
        while (from > hit->from && r->part[from - 1]) from--;
        return from < to ? fault_words(r->note, from, to) : NULL;
    }
    return NULL;
}

// "Pulls in four stations", "it drags on a full reel": the verb of the statement, which is no part's name.
static bool is_verb_of(const struct fault_reader *r, const struct fault_hit *hit, const char *part) {
    static const char *const deeds[] = {"pulls", "drags", "ticks", "picks", "brings", "runs",
                                        "plays", "goes",  "skips", "hums",  "slips",  "turns"};
    const struct tokens *tokens = &r->note->tokens;
    bool noun = ANY(tokens, hit->from + 1, "is", "are", "were", "was", "have", "has", "gone", "missing");
    return !noun && hit->to > hit->from + 1 && tokens->at[hit->from].stop == STOP_NONE &&
           token_among(tokens, hit->from, deeds, sizeof deeds / sizeof *deeds) &&
           text_same(part, tokens->at[hit->from].fold);
}

const char *fault_part(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                       const struct spot *spot, const char *where) {
    struct note *note = r->note;
    size_t first = spot->part_from; // "three of the four corners": the corners
    while (first + 1 < spot->part_to && degrees_number(&note->tokens, first) > 1) first++;
    size_t last = spot->part_to; // "the straps inside are dry": the straps
    if (where && last > first + 1 && token_is(&note->tokens, last - 1, "inside") &&
        text_same(where, "inside"))
        last--;
    const char *part = fault_place(note, first, last);
    if (part && text_same(part, "set") && text_same(kind->rule.id, "missing-pieces"))
        part = NULL; // "not a full set"
    if (part && first > 0 && first + 1 == last && degrees_number(&note->tokens, first) &&
        ANY(&note->tokens, first - 1, "side", "disc", "disk", "page", "volume", "drawer"))
        part = NULL; // "side two": which one, and told as the place
    if (part && spot->part_from > 0 && spot_is_turn_of_speech(&note->tokens, spot->part_from)) part = NULL;
    if (part && spot->part_from > 0 && token_is(&note->tokens, spot->part_from - 1, "no") &&
        token_is(&note->tokens, spot->part_to, "of"))
        part = NULL; // "no end of scratches"
    size_t of =
        part && is_whole_thing(note, part) ? spot->part_from : 0; // "the knob on the dome has a flake off"
    while (of > 0 && ANY(&note->tokens, of - 1, "the", "its", "this")) of--;
    if (of > 1 && ANY(&note->tokens, of - 1, "on", "of", "in", "inside") && r->part[of - 2] &&
        note->tokens.at[of - 2].stop == STOP_NONE && note->taken[of - 2] != TAKEN_TYPE)
        part = fault_place(note, of - 2, of - 1);
    if (text_same(kind->rule.id, "drilled-converted") &&
        ANY(&note->tokens, hit->to - 1, "electric", "electricity", "electrified"))
        part = NULL; // "been wired for electric": the whole of it
    if (part && kind->class == CLASS_REPAIR && spot->part_to == spot->part_from + 1 &&
        ANY(&note->tokens, spot->part_to, "patch", "patches", "repair", "repairs", "splint", "plate") &&
        (ANY(&note->tokens, spot->part_from, "tin", "copper", "lead", "brass", "steel", "iron", "canvas",
             "leather") ||
         (ANY(&note->tokens, spot->part_from, "strap", "band", "plate") && spot->part_from > 0 &&
          note->taken[spot->part_from - 1] == TAKEN_VALUE)))
        part = NULL; // "held with a tin patch", "iron strap repair": by what it was mended
    bool usual = spot->part_to > spot->part_from && spot_usual(&note->tokens.at[spot->part_to - 1]);
    if (part && (is_implied(r, hit, kind, part) || (!usual && is_whole_thing(note, part)) ||
                 (spot_is_no_part(part) && !is_ring(kind, part) && !is_bits(note, kind, part))))
        part = NULL;
    bool denied = r->scope.stance[hit->from] & (STANCE_DENIED | STANCE_NONE_SEEN);
    if (part && spot->which && !denied && text_same(spot->which, "others")) // "the other three are stiff"
        part =
            arena_format(note->arena, "other %s", say_plural(note->arena, say_singular(note->arena, part)));
    else if (part && spot->which && !denied) // "the other is cracked"
        part = arena_format(note->arena, "%s%s%s", spot->which, *spot->which ? " " : "",
                            say_singular(note->arena, without_side(spot->which, part)));
    if (part && text_same(kind->rule.id, "owner-name") &&
        (!strncmp(part, "number", 6) || !strncmp(part, "stamp", 5)))
        part = NULL; // "number 4 painted on the side", "school stamp inside the lid"
    if (part && text_same(part, "maker")) part = "maker's name"; // "maker's name is worn"
    if (part && kind->class == CLASS_REPAIR && (text_same(part, "pattern") || text_same(part, "design")))
        part = NULL; // "blue pattern, one with a stapled repair"
    if (part && (text_same(part, "does") || text_same(part, "did"))) part = NULL; // "does smell a bit"
    if (part && is_owner(note, hit, kind, spot)) part = NULL;
    if (part && kind->noun && text_same(say_singular(note->arena, part), kind->noun)) part = NULL; // a crease
    if (part && text_same(kind->rule.id, "firing-flaw") && text_same(part, "casting"))
        part = NULL; // "a casting flaw"
    if (part && (text_same(part, "belt") || text_same(part, "buckle")) &&
        ANY(&note->tokens, hit->to - 1, "rash", "rub", "wear"))
        part = NULL; // "belt rash on the back": what did it
    if (part && !denied && text_same(kind->rule.id, "sticker-residue") &&
        (strstr(part, "sticker") || strstr(part, "label")))
        part = NULL; // what was stuck on
    if (part && text_same(kind->rule.id, "snag") && strstr(part, "pull"))
        part = NULL; // a thread, and no knob
    if (part && ANY(&note->tokens, hit->to - 1, "pull", "push", "tug", "twist", "shove") &&
        ANY(&note->tokens, hit->from, "needs", "takes", "wants", "need", "want"))
        part = NULL; // "needs a hard pull"
    if (part && ANY(&note->tokens, spot->part_to - 1, "pieces") && spot->part_from > 1 &&
        token_is(&note->tokens, spot->part_from - 2, "in"))
        part = NULL; // "one of them in three pieces"
    if (part && text_same(kind->rule.id, "rewired") && hit->from > 0 && spot->part_to + 1 < hit->from &&
        note->tokens.at[hit->from - 1].stop == STOP_COMMA)
        part = NULL;                                    // "shade has been cut down, arm loose, rewired"
    if (text_same(kind->rule.id, "as-is")) part = NULL; // "bowl A/F"
    bool own = has_own_subject(r, hit);
    if (own) part = NULL;
    if (!part && !where && !own) part = function_place(r, hit, kind);
    if (!part) part = speed_before(r, hit, kind);
    if (part && text_same(kind->rule.id, "missing-pieces") &&
        token_is(&note->tokens, hit->to - 1, "incomplete"))
        part = NULL; // "weights incomplete": some of them are there
    if (part && kind->class == CLASS_REPAIR && (!strncmp(part, "rivet", 5) || !strncmp(part, "staple", 6)))
        part = NULL; // "rivet repair"
    if (part && kind->class == CLASS_REPAIR &&
        ANY(&note->tokens, spot->part_to - 1, "crack", "cracks", "split", "splits", "dent", "dents", "chip",
            "chips"))
        part = NULL; // "the crack in the case has been filled"
    if (part && kind->form == FAULT && absent_has_object(&note->tokens, hit))
        part = absent_object(r, hit, part);
    if (!part) part = absent_part_in(r, hit, kind);
    if (!part) part = renewed_part_in(r, hit, kind);
    if (part && is_verb_of(r, hit, part)) part = NULL;
    size_t size = part ? strlen(part) : 0; // "the top drawer slides rough": the drawer
    if (size > 7 && text_same(part + size - 7, " slides") && hit->to > hit->from + 2 &&
        token_is(&note->tokens, hit->from + 1, "slides"))
        part = arena_copy(note->arena, part, size -= 7);
    if (size > 6 && text_same(part + size - 6, " pulls") && ANY(&note->tokens, hit->to - 1, "out", "off"))
        part = arena_copy(note->arena, part, size - 6); // "the stem pulls out"
    if (part && text_same(part, "shade") &&
        ANY(&note->tokens, hit->from, "lighter", "darker", "smaller", "bigger", "paler", "off", "different"))
        part = NULL; // "one is a shade lighter"
    part = fault_part_of(r, hit, kind, spot, part);
    const char *inside = !part || spot->part_to <= hit->from ? part_inside(r, hit, kind) : NULL;
    if (inside) part = inside;                              // "wheel split, one leg is a replacement"
    const char *bracket = part ? strstr(part, " (") : NULL; // "the weight (the 1 oz) is missing"
    return bracket && bracket > part ? arena_copy(note->arena, part, (size_t)(bracket - part)) : part;
}

const char *fault_words(struct note *note, size_t from, size_t to) {
    char *copy = arena_string(note->arena, note_meant(note, from, to));
    size_t size = strlen(copy);
    bool shouts = note->tokens.shouts;
    for (size_t i = 0; i < size && (shouts || i == 0); i++)
        if (copy[i] >= 'A' && copy[i] <= 'Z' && (shouts || !(copy[1] >= 'A' && copy[1] <= 'Z')))
            copy[i] = (char)(copy[i] + ('a' - 'A'));
    const struct token *last = to > from ? &note->tokens.at[to - 1] : NULL; // "winder's stiff": the winder
    if (last && size > 2 && last->fold[strlen(last->fold) - 1] == 's' && strstr(last->fold, "'s")) {
        size_t n = size - 1;
        while (n > 0 && ((unsigned char)copy[n - 1] >= 0x80 || copy[n - 1] == '\'')) n--;
        copy[n] = '\0';
    }
    return copy;
}

const char *fault_place(struct note *note, size_t from, size_t to) {
    for (size_t i = to; i > from; i--) // "to Mr. Somebody on one side": a name is no place
        if (note->taken[i - 1] == TAKEN_ASIDE) {
            from = i + (i < to && ANY(&note->tokens, i, "on", "in", "at") ? 1 : 0);
            break;
        }
    if (to <= from) return NULL;
    bool raised = ANY(&note->tokens, to - 1, "high", "raised") &&
                  ANY(&note->tokens, to, "points", "spots", "parts", "places"); // "on the high points"
    to += raised;
    note_take(note, from, to, TAKEN_PART);
    if (to == from + 1 &&
        ANY(&note->tokens, from, "feels", "sits", "looks", "sounds", "seems", "stands", "hangs", "smells",
            "leans", "runs", "feel", "keeps", "gets", "goes", "opens", "closes", "come", "coming", "gone",
            "going", "has", "have", "been", "got", "worked", "sprung", "lost", "spins", "turns", "rolls"))
        return NULL; // "Feels loose", "sits crooked": the whole does so
    if (to == from + 1 && from > 0 && ANY(&note->tokens, from, "bit", "touch", "tad") &&
        token_is(&note->tokens, from - 1, "a"))
        return NULL; // "and a bit slack"
    bool all = from > 1 && ANY(&note->tokens, from - 1, "all", "right", "most", "halfway", "just");
    bool around = token_is(&note->tokens, from, "round") && to > from + 1 && from > 0 &&
                  note->fault_word[from - (all ? 2 : 1)] && !spot_article(&note->tokens, from + 1);
    if (around)
        return arena_format(note->arena, "round the %s",
                            fault_words(note, from + 1, to)); // "rust round rims"
    return fault_words(note, from, to);
}

// "Broken off and glued back": the break is what was mended.
static void take_mended_break(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const breaks[] = {"broken",  "broke", "snapped", "split",  "cracked", "parted",
                                         "sheared", "come",  "came",    "fallen", "crack",   "cracks",
                                         "splits",  "break", "breaks",  "chip",   "hairline"};
    static const char *const between[] = {"off",  "and",  "then",   "in",    "two",  "half",     "since",
                                          "been", "away", "apart",  "was",   "has",  "once",     "clean",
                                          "but",  "that", "that's", "which", "have", "somebody", "someone"};
    struct note *note = r->note;
    if (hit->kinds[0]->class != CLASS_REPAIR) return;
    size_t at = hit->from + (token_is(&note->tokens, hit->from, "and") ? 1 : 0);
    bool linked = at > hit->from;
    while (at > 0 && token_among(&note->tokens, at - 1, between, sizeof between / sizeof *between)) {
        linked |= ANY(&note->tokens, at - 1, "and", "then", "since", "but", "that", "that's", "which");
        at--;
    }
    if (at > 0 && linked && note->taken[at - 1] == TAKEN_NOT &&
        token_among(&note->tokens, at - 1, breaks, sizeof breaks / sizeof *breaks))
        note_take(note, at - 1, at, TAKEN_SCOPE);
}

void fault_take_course(const struct fault_reader *r, const struct fault_hit *hit, const struct spot *spot) {
    static const char *const words[] = {"runs", "goes",  "running", "going",     "ran",
                                        "that", "which", "extends", "extending", "right"};
    struct note *note = r->note;
    size_t to = hit->to;
    take_mended_break(r, hit);
    while (token_among(&note->tokens, to, words, sizeof words / sizeof *words)) to++;
    bool leads = to > hit->to && spot->where_from >= to && spot->where_from <= to + 2;
    for (size_t i = hit->to; leads && i < to; i++)
        if (note->taken[i] == TAKEN_NOT) note_take(note, i, i + 1, TAKEN_SCOPE);
}

void fault_join(const struct note *note, struct item_flaw *known, size_t from, size_t to) {
    if (from < 2 || !ANY(&note->tokens, from - 1, "and", "&") ||
        note->tokens.at[from - 2].stop != STOP_NONE ||
        note_span_of(note, from - 2, from - 1).to != known->span.to)
        return;
    known->span.to = note_span_of(note, from, to).to;
}

// "One snapped. Lid hinge broken": another word, in another sentence, of a part that the first has not.
bool fault_is_another(const struct note *note, const struct item_flaw *first, size_t from, size_t to,
                      bool gathers) {
    enum { STEM = 4 };
    const struct tokens *tokens = &note->tokens;
    size_t at = from;
    while (at > 0 && tokens->at[at - 1].stop < STOP_SENTENCE) at--;
    if ((first->kind->class != CLASS_FUNCTION && !text_same(first->kind->rule.id, "broken-part") &&
         !gathers) ||
        !first->span.to || first->span.from >= tokens->at[at].from)
        return false;
    for (size_t i = 0; i < tokens->count && tokens->at[i].from < first->span.to; i++)
        for (size_t k = from; tokens->at[i].from >= first->span.from && k < to; k++)
            if (!strncmp(tokens->at[i].fold, tokens->at[k].fold, STEM)) return false;
    return true;
}

// "It hums. The dial slips.": what the whole does wrong, in another sentence than what the part does. Behind
// it "it" may be that part.
bool fault_is_apart(const struct note *note, const struct item_flaw *other, size_t from, bool back) {
    const struct tokens *tokens = &note->tokens;
    size_t start = from, end = from;
    if (!text_same(other->kind->rule.id, "partly-working") || !other->span.to) return false;
    while (start > 0 && tokens->at[start - 1].stop < STOP_SENTENCE) start--;
    while (end + 1 < tokens->count && tokens->at[end].stop < STOP_SENTENCE) end++;
    return other->span.from >= tokens->at[end].to || (!back && other->span.to <= tokens->at[start].from);
}

// "A few dents, spout is bent": what is dented as a whole, and a part that is bent.
static bool is_bent_part(const struct note *note, const struct item_flaw *first, size_t from, size_t to) {
    static const char *const knocks[] = {"dent",  "dents", "ding",  "dings",  "dented", "dinged", "dint",
                                         "dints", "dink",  "dinks", "knocks", "knock",  "bumps",  "bump"};
    static const char *const bends[] = {"bent",    "bend",   "bends",   "buckled", "crooked", "twisted",
                                        "crushed", "kinked", "bending", "skewed",  "squashed"};
    bool knock = false, bend = false;
    if (!text_same(first->kind->rule.id, "dent-bend")) return false;
    for (size_t i = 0; i < to; i++) {
        knock |= note->tokens.at[i].from >= first->span.from && note->tokens.at[i].to <= first->span.to &&
                 token_among(&note->tokens, i, knocks, sizeof knocks / sizeof *knocks);
        bend |= i >= from && token_among(&note->tokens, i, bends, sizeof bends / sizeof *bends);
    }
    return knock && bend;
}

// "The leather is dry and the handle is cracked": another word of another part, in a clause of its own.
bool fault_in_next_clause(const struct note *note, const struct item_flaw *first, size_t from, size_t to) {
    enum { BACK = 8, STEM = 4 };
    const struct tokens *tokens = &note->tokens;
    if (is_bent_part(note, first, from, to)) return true;
    size_t at = from;
    while (at > 0 && from - at < BACK && tokens->at[at - 1].stop == STOP_NONE &&
           !ANY(tokens, at - 1, "and", "but"))
        at--;
    if (at == 0 || !ANY(tokens, at - 1, "and", "but") || tokens->at[at - 1].from < first->span.to ||
        !ANY(tokens, at, "the", "its", "one", "another", "two", "three", "both") || at + 1 >= from)
        return false;
    for (size_t i = 0; i < tokens->count && tokens->at[i].from < first->span.to; i++)
        for (size_t k = from; tokens->at[i].from >= first->span.from && k < to; k++)
            if (!strncmp(tokens->at[i].fold, tokens->at[k].fold, STEM)) return false;
    return true;
}
