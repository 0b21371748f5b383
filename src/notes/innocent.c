// SPDX-License-Identifier: MIT
// Words of a kind that are innocent by what they are said of: a lining without marks has no maker that lacks,
// a flood that a thing came out of did not wet it, and a sole that is split by its make is whole.
#include <string.h>

#include "notes/any.h"
#include "notes/beside.h"
#include "notes/meant.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool is_kind(const struct fault_hit *hit, const char *id) {
    return text_same(hit->kinds[0]->rule.id, id);
}

// Is one of the words between the two tokens in the list?
static bool any_between(const struct tokens *tokens, size_t from, size_t to, const char *const *words,
                        size_t count) {
    for (size_t i = from; i < to; i++)
        if (token_among(tokens, i, words, count)) return true;
    return false;
}

// "The lining has no marks", "no marks on the screen": what would be seen there is dirt and damage, and no
// maker's.
static bool is_of_surface(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const surfaces[] = {
        "lining",   "linings", "screen",  "screens", "top",     "tops",   "surface", "surfaces",  "collar",
        "cuffs",    "cuff",    "seat",    "seats",   "face",    "faces",  "cushion", "cushions",  "cover",
        "covers",   "fabric",  "cloth",   "leather", "glass",   "lens",   "lenses",  "pages",     "page",
        "knees",    "elbows",  "sleeves", "sleeve",  "front",   "fronts", "body",    "paintwork", "paint",
        "finish",   "casing",  "display", "tray",    "strings", "jacket", "sides",   "table",     "skirt",
        "toes",     "soles",   "uppers",  "upper",   "crystal", "mirror", "plastic", "chrome",    "wood",
        "woodwork", "veneer",  "velvet",  "satin",   "silk",    "canvas", "print",   "picture",   "mount",
        "dial",     "bezel",   "bodice",  "leaf",    "panels",  "doors",  "door",    "arms",      "legs",
        "hem",      "border",  "field",   "playing", "pile",    "suede",  "rug",     "sheets"};
    static const char *const between[] = {"has", "have", "had", "with", "shows", "show", "is", "are", "and"};
    static const char *const makers[] = {"label",      "labels",   "tag",   "tags",  "signature",
                                         "signatures", "name",     "names", "stamp", "stamps",
                                         "sticker",    "stickers", "maker"};
    enum { FAR = 5 };
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "authenticity-unverified") ||
        !ANY(tokens, hit->to - 1, "mark", "marks", "marked", "unmarked"))
        return false;
    size_t i = hit->to; // "no marks or bends in them": in one breath with what is damage
    if (token_is(tokens, hit->to - 1, "marks") && i + 1 < tokens->count &&
        (ANY(tokens, i, "or", "nor", "and") || tokens->at[i].stop == STOP_COMMA)) {
        size_t next = i + 1 + (ANY(tokens, i + 1, "any", "no", "other") ? 1 : 0);
        next += tokens->at[i].stop == STOP_COMMA && ANY(tokens, next, "or", "nor") ? 1 : 0;
        bool joined = tokens->at[i].stop == STOP_NONE || token_is(tokens, next - 1, "or");
        if (joined && next < tokens->count && r->scope.fault[next] && !AMONG(tokens, next, makers))
            return true;
    }
    i = hit->from;
    while (i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
           (AMONG(tokens, i - 1, between) || ANY(tokens, i - 1, "no", "not")))
        i--;
    if (i < hit->from && i > 0 && tokens->at[i - 1].stop == STOP_NONE && AMONG(tokens, i - 1, surfaces))
        return true;
    for (i = hit->to; i < hit->to + 3 && i < tokens->count; i++) { // "no marks at all on the"
        if (tokens->at[i - 1].stop != STOP_NONE) return false;
        if (ANY(tokens, i, "on", "to", "across", "over")) break;
    }
    for (size_t k = i + 1; k < i + FAR && k < tokens->count && ANY(tokens, i, "on", "to", "across", "over");
         k++) {
        if (tokens->at[k].stop != STOP_NONE) return false;
        if (AMONG(tokens, k, surfaces)) return true;
    }
    return false;
}

// "Caught on something and there is a tear at one end": how the tear came about.
static bool is_cause_of_tear(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "snag") || !any_between(tokens, hit->from, hit->to, (const char *const[]){"caught"}, 1))
        return false;
    size_t end = scope_sentence_end(&r->scope, hit->from);
    for (size_t i = 0; i < r->hit_count; i++) {
        const char *id = r->hits[i].kinds[0]->rule.id;
        bool worse = text_same(id, "tear") || text_same(id, "hole") || text_same(id, "strap-damage");
        if (worse && r->hits[i].from >= hit->to && r->hits[i].from < end &&
            !(r->scope.stance[r->hits[i].from] & (STANCE_DENIED | STANCE_NONE_SEEN)))
            return true;
    }
    return false;
}

// "Darned in a cream that is not quite the same": of the mend's own stuff, where the pieces would be meant.
static bool is_of_mend(const struct fault_reader *r, const struct fault_hit *hit) {
    if (!is_kind(hit, "married-set")) return false;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    for (size_t i = 0; i < r->hit_count; i++) {
        const struct fault_hit *other = &r->hits[i];
        if (other->from < start || other->to > hit->from) continue;
        const char *id = other->kinds[0]->rule.id;
        if (text_same(id, "darned-patched") || text_same(id, "filled-overpainted") ||
            text_same(id, "glued-repair") || text_same(id, "tape-repair"))
            return true;
    }
    return false;
}

// "Ballet slippers, split sole": how shoes for dancing are made.
static bool is_split_by_make(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const dances[] = {"ballet", "jazz",   "dance",    "dancing",   "pointe",
                                         "tap",    "dancer", "ballroom", "gymnastic", "gymnastics"};
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    bool split = ANY(tokens, i, "split") &&
                 (ANY(tokens, hit->to - 1, "sole", "soles") || ANY(tokens, hit->to, "sole", "soles"));
    return split && any_between(tokens, 0, tokens->count, dances, COUNT(dances));
}

// "His name is Major", "her name was on the list": how somebody is called.
static bool is_called(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const put[] = {"on",     "in",      "inside", "written", "inked", "sewn",  "scratched",
                                      "penned", "painted", "carved", "stamped", "under", "across"};
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "owner-name") || hit->to > hit->from + 3 ||
        !ANY(tokens, hit->to - 1, "name", "names") || hit->to >= tokens->count ||
        !ANY(tokens, hit->to, "is", "was", "being", "are", "were"))
        return false;
    size_t end = scope_clause_end(&r->scope, hit->to);
    return !any_between(tokens, hit->to, end, put, COUNT(put));
}

// "It washed out of the bank in a flood", "dug out after the flood": how it came to light.
static bool is_flood_it_came_by(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const came[] = {"out", "from", "found", "dug", "up", "came", "rescued", "saved"};
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "water-damage") || !ANY(tokens, hit->from, "flood", "floods") ||
        hit->to != hit->from + 1)
        return false;
    return any_between(tokens, scope_clause_start(&r->scope, hit->from), hit->from, came, COUNT(came));
}

// "Gold has worn off the handle and it's patchy at the spout", "crazed, and the lines have gone brown": more
// of the same.
static bool is_wear_again(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool brown = ANY(tokens, hit->to - 1, "brown", "browned", "dark");
    if (!brown && !ANY(tokens, hit->from, "patchy")) return false;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    for (size_t i = 0; i < r->hit_count; i++) {
        const char *id = r->hits[i].kinds[0]->rule.id;
        if (r->hits[i].from < start || r->hits[i].to > hit->from) continue;
        if (brown ? text_same(id, "crazing")
                  : (text_same(id, "gilt-wear") || text_same(id, "plate-wear") ||
                     text_same(id, "decoration-wear") || text_same(id, "paint-flaking") ||
                     text_same(id, "finish-crackle")))
            return true;
    }
    return false;
}

// "A crack, my nail catches in it": of the crack that was told.
static bool is_felt_by_nail(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    static const char *const nails[] = {"nail", "fingernail"};
    static const char *const feels[] = {"catches", "catch", "drops", "feel", "feels", "caught", "snags"};
    if (!any_between(tokens, hit->from, hit->to, nails, COUNT(nails)) ||
        !any_between(tokens, hit->from, hit->to, feels, COUNT(feels)))
        return false;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    for (size_t i = 0; i < r->hit_count; i++)
        if (r->hits[i].from >= start && r->hits[i].to <= hit->from && r->hits[i].kinds[0]->form == FAULT &&
            r->hits[i].kinds[0]->class == CLASS_DAMAGE)
            return true;
    return false;
}

// "Soles are stuck down tight": where they should be.
static bool is_stuck_as_it_should(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return (is_kind(hit, "sole-wear") || is_kind(hit, "sole-separation")) &&
           any_between(tokens, hit->from, hit->to, (const char *const[]){"stuck", "glued"}, 2) &&
           !any_between(tokens, hit->from, hit->to, (const char *const[]){"worn", "unstuck", "come"}, 3);
}

// "A front board tied on with string": what holds it is no mend of a book.
static bool is_tied_on(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct family *family = r->note->record->family;
    return hit->kinds[0]->class == CLASS_REPAIR && ANY(&r->note->tokens, hit->from, "tied") && family &&
           text_same(family->rule.id, "books");
}

// "I felt bad tearing it out", "without breaking it": what somebody would do, or was afraid to.
static bool is_done_by_hand(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const doings[] = {"tearing",   "breaking", "scratching", "cracking", "ripping",
                                         "chipping",  "denting",  "bending",    "cutting",  "staining",
                                         "splitting", "burning",  "melting",    "snapping", "damaging"};
    static const char *const led[] = {"bad",    "about", "risk",    "risking", "avoid",  "without", "of",
                                      "for",    "from",  "afraid",  "worried", "before", "after",   "stop",
                                      "guilty", "like",  "imagine", "fancy",   "hate",   "hated",   "than"};
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    return i > 0 && hit->to == i + 1 && AMONG(tokens, i, doings) && tokens->at[i - 1].stop == STOP_NONE &&
           AMONG(tokens, i - 1, led) &&
           ANY(tokens, i + 1, "it", "them", "anything", "the", "him", "her", "one");
}

// "The paint is not fired": of the kiln that it never saw.
static bool is_of_kiln(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const fired[] = {"fired"};
    static const char *const coats[] = {"paint",  "glaze",   "gold",  "gilding", "decoration",
                                        "colors", "colours", "color", "colour"};
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "untested") || !any_between(tokens, hit->from, hit->to, fired, 1)) return false;
    const struct family *family = r->note->record->family;
    return (family && (text_same(family->rule.id, "ceramics") || text_same(family->rule.id, "glassware"))) ||
           any_between(tokens, scope_sentence_start(&r->scope, hit->from), hit->from, coats, COUNT(coats));
}

// "They had old wax in the cups and hot water shifted it": gone before it was sold.
static bool is_shifted(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const moved[] = {"shifted it",    "shifted that", "shifted them",   "got it off",
                                        "got it out",    "got that off", "got them off",   "moved it",
                                        "lifted it off", "saw it off",   "brought it off", "took it off",
                                        "took it out",   "cleared it",   "got rid of it",  "dealt with it"};
    static const char *const undone[] = {"couldn't", "can't",  "not",    "didn't", "nothing", "hasn't",
                                         "never",    "hardly", "partly", "half",   "most",    "won't"};
    const struct tokens *tokens = &r->note->tokens;
    if (hit->kinds[0]->class != CLASS_DIRT && hit->kinds[0]->class != CLASS_ODOR) return false;
    size_t end = scope_sentence_end(&r->scope, hit->from);
    for (size_t i = hit->to; i < end; i++) {
        if (AMONG(tokens, i, undone)) return false;
        size_t n = token_longest(tokens, i, moved, COUNT(moved));
        if (n) return !ANY(tokens, i + n, "a", "some", "mostly", "except", "but", "in");
    }
    return false;
}

// "A nick that you won't see once it is on the shelf": how little it shows.
static bool is_seldom_seen(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const through[] = {"through", "inside", "into", "in", "out", "yourself", "face"};
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "cloudy-glass") && token_is(tokens, hit->to - 1, "see") &&
           ANY(tokens, hit->from, "won't", "wouldn't", "don't") &&
           !any_between(tokens, hit->from, hit->to + 3, through, COUNT(through));
}

// "It never once had water in it": never used, where one that was never washed would be dirty.
static bool is_never_filled(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "dust-grime") && token_is(tokens, hit->to - 1, "water") &&
           ANY(tokens, hit->to, "in", "through");
}

// "Dry inside, no smell", "clean and dry": where it was kept, and no leather.
static bool is_dry_within(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "leather-crack") || hit->to != hit->from + 1 || !token_is(tokens, hit->from, "dry"))
        return false;
    return ANY(tokens, hit->to, "inside", "within", "indoors") ||
           (ANY(tokens, hit->to, "and") && ANY(tokens, hit->to + 1, "clean", "tidy", "sweet", "sound"));
}

// "The library pocket is still glued in": where it belongs.
static bool is_pasted_in(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const pasted[] = {"glued", "pasted", "stuck", "gummed"};
    static const char *const slips[] = {"pocket",    "slip",  "card",    "ticket",
                                        "bookplate", "plate", "pockets", "errata"};
    enum { BACK = 5 };
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    if (!family || !kind_has_word("books paper music", family->rule.id) ||
        !any_between(tokens, hit->from, hit->to, pasted, COUNT(pasted)) ||
        any_between(tokens, hit->from, hit->to + 1, (const char *const[]){"back", "together", "down"}, 3))
        return false;
    for (size_t i = hit->from, n = 0; i > 0 && n < BACK && tokens->at[i - 1].stop == STOP_NONE; i--, n++)
        if (AMONG(tokens, i - 1, slips))
            return ANY(tokens, hit->to - 1, "in", "inside") ||
                   ANY(tokens, hit->to, "in", "inside", "to", "on", "at");
    return false;
}

// "Studio stamp on the back": whose picture it is, and nothing that went through the post.
static bool is_stamp_of_maker(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "postally-used")) return false;
    size_t i = hit->from;
    while (i < hit->to && !ANY(tokens, i, "stamp", "stamps", "stamped")) i++;
    return i < hit->to && i > 0 &&
           ANY(tokens, i - 1, "studio", "photographer's", "maker's", "dealer's", "shop", "rubber", "school",
               "church", "library", "gallery", "club", "publisher's", "printer's", "teacher's", "press",
               "agency", "company", "museum", "ink");
}

// "The zipper pull was replaced with a paper clip": told of the zipper.
static bool is_pull_told(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { BACK = 3 };
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "replaced-part")) return false;
    for (size_t k = 1; k <= BACK && k < hit->from && tokens->at[hit->from - k].stop == STOP_NONE; k++)
        if (ANY(tokens, hit->from - k, "pull", "pulls", "tab", "puller"))
            return ANY(tokens, hit->from - k - 1, "zipper", "zip", "zippers");
    return false;
}

// Is a hit of one of the kinds told before in the same sentence?
static bool told_before(const struct fault_reader *r, const struct fault_hit *hit, const char *const *ids,
                        size_t count) {
    size_t start = scope_sentence_start(&r->scope, hit->from);
    for (size_t i = 0; i < r->hit_count; i++)
        for (size_t k = 0; k < count && r->hits[i].from >= start && r->hits[i].to <= hit->from; k++)
            if (text_same(r->hits[i].kinds[0]->rule.id, ids[k])) return true;
    return false;
}

// "The handle gets hot so use a rag": of a pot, which does what it should.
static bool is_hot_on_stove(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    if (!is_kind(hit, "powers-on-only") || !ANY(tokens, hit->to - 1, "hot", "warm")) return false;
    return (hit->from > 0 &&
            ANY(tokens, hit->from - 1, "handle", "handles", "lid", "knob", "rim", "sides", "grip")) ||
           (family && kind_has_word("kitchenware metalware ceramics glassware", family->rule.id) &&
            !kind_note_has(r, "electric plug cord plugged"));
}

// "Alligatored from a sunny window": what came of the sun is told.
static bool is_sun_cause(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    if (!is_kind(hit, "fading") || !ANY(tokens, hit->from, "sunny", "sun") || !family) return false;
    return told_before(r, hit,
                       (const char *const[]){"finish-crackle", "warped", "leather-crack", "yellowing",
                                             "paint-flaking", "crack", "toning", "wood-split"},
                       8);
}

// "A tie was torn off and sewn back on": it is there, and mended.
static bool is_put_back(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to;
    if (hit->kinds[0]->class == CLASS_REPAIR) return false;
    while (ANY(tokens, at, "and", "then", "was", "has", "been", "since", "i", "somebody", "someone")) at++;
    return at > hit->to && ANY(tokens, at, "sewn", "stitched", "sewed", "tacked") &&
           (ANY(tokens, at + 1, "back") || ANY(tokens, at + 2, "back"));
}

// "There were two holes": so many of them, and no pair.
static bool is_number_of(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "missing-mate") && ANY(tokens, hit->to - 1, "two") &&
           ANY(tokens, hit->from, "were", "was") && hit->to < tokens->count &&
           tokens->at[hit->to].kind == TOKEN_WORD &&
           !ANY(tokens, hit->to, "of", "once", "originally", "but", "and", "when", "at", "until", "so");
}

// "Spine faded so you can't read it": no mark, but what has faded.
static bool is_of_faded(const struct fault_reader *r, const struct fault_hit *hit) {
    return is_kind(hit, "authenticity-unverified") &&
           ANY(&r->note->tokens, hit->to - 1, "it", "them", "read", "title") &&
           told_before(r, hit,
                       (const char *const[]){"fading", "decoration-wear", "gilt-wear", "stain", "edge-wear",
                                             "wear-rub", "binding-weak"},
                       7);
}

// "Pages yellow but they bend": so they are not brittle.
static bool is_supple(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return (is_kind(hit, "crease") || is_kind(hit, "dent-bend")) && hit->to == hit->from + 1 &&
           ANY(tokens, hit->from, "bend") && hit->from > 0 &&
           ANY(tokens, hit->from - 1, "they", "still", "pages", "leaves", "will", "and", "it", "corners",
               "to", "nicely");
}

// "The chain is not gold": what it is made of.
static bool is_of_metal_said(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "gilt-wear") && hit->to == hit->from + 2 && ANY(tokens, hit->from, "not", "isn't") &&
           (hit->to >= tokens->count || tokens->at[hit->to].stop != STOP_NONE ||
            ANY(tokens, hit->to, "but", "though"));
}

// "A spot I didn't work on", "the rest I never worked on": at it, with soap.
static bool is_labor(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return hit->kinds[0]->class != CLASS_DIRT && hit->from > 0 && ANY(tokens, hit->from - 1, "i", "we") &&
           ANY(tokens, hit->to - 1, "work", "worked") && token_is(tokens, hit->to, "on");
}

// "The ring slot is empty of course": nobody would look for it there.
static bool is_of_course(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const sure[] = {"of course", "naturally", "obviously", "needless to say",
                                       "as you'd expect"};
    return is_kind(hit, "missing-pieces") && token_longest(&r->note->tokens, hit->to, sure, COUNT(sure)) > 0;
}

// "Stamps soaked off about ten": taken off with water, which did no harm to the rest.
static bool is_soaked_off(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "water-damage") && ANY(tokens, hit->to - 1, "soaked", "steamed") &&
           ANY(tokens, hit->to, "off", "out");
}

// "Dry rot cracks" of rubber: one fault in three words.
static bool is_rot_of_rubber(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "fabric-weak") || !ANY(tokens, hit->from, "dry", "dryrot") ||
        !ANY(tokens, hit->to, "cracks", "cracked", "cracking", "crack"))
        return false;
    return kind_note_has(r,
                         "rubber boots tire tires tyre tyres hose gasket belt wheels galoshes waders soles");
}

// "Puts out power on one side": what it gives.
static bool is_power_given(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "powers-on-only") && ANY(tokens, hit->from, "power") && hit->from > 0 &&
           ANY(tokens, hit->from - 1, "out", "gives", "puts", "of", "the", "no", "has");
}

// "Somebody glued a felt ring under it", "a label is glued to the base": put on, where nothing was broken.
static bool is_glued_on(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const extras[] = {"felt",   "felts",   "label", "pads",    "pad",  "magnet",
                                         "ribbon", "sticker", "feet",  "bumpers", "cork", "tag",
                                         "number", "velcro",  "photo", "picture", "card"};
    enum { FAR = 4 };
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "glued-repair") ||
        !any_between(tokens, hit->from, hit->to, (const char *const[]){"glued", "stuck"}, 2))
        return false;
    for (size_t i = hit->to; i < hit->to + FAR && i < tokens->count && tokens->at[i].stop == STOP_NONE; i++) {
        if (ANY(tokens, i, "back", "together")) return false;
        if (AMONG(tokens, i, extras)) return true;
    }
    for (size_t i = hit->from, n = 0; i > 0 && n < FAR && tokens->at[i - 1].stop == STOP_NONE; i--, n++)
        if (AMONG(tokens, i - 1, extras))
            return ANY(tokens, hit->to, "to", "on", "under", "underneath", "inside");
    return false;
}

// "Carbon blade", "high carbon steel": the steel.
static bool is_carbon_steel(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return hit->to == hit->from + 1 && ANY(tokens, hit->from, "carbon") &&
           ANY(tokens, hit->to, "blade", "blades", "steel", "knife", "knives", "copy", "copies", "paper",
               "fiber", "fibre");
}

// "The bridge is not glued, that's normal": how it is made, and no repair that was looked for.
static bool is_not_glued_by_make(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const normal[] = {"that's normal",  "thats normal", "as it should", "as they should",
                                         "it floats",      "floats",       "held by",      "just sits",
                                         "that is normal", "by design",    "normal"};
    const struct tokens *tokens = &r->note->tokens;
    if (!is_kind(hit, "glued-repair") || !ANY(tokens, hit->to - 1, "glued")) return false;
    size_t end = scope_sentence_end(&r->scope, hit->to);
    for (size_t i = hit->to; i < end; i++)
        if (token_longest(tokens, i, normal, COUNT(normal))) return true;
    return false;
}

// "A blade scrapes if you tip it": what it does, and no mark.
static bool is_scraping(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "scratches") && hit->to == hit->from + 1 &&
           ANY(tokens, hit->from, "scrapes", "scratches") &&
           ANY(tokens, hit->to, "if", "when", "against", "unless", "as", "every") && hit->from > 0 &&
           r->part[hit->from - 1];
}

// "The corners haven't opened", "the seams haven't opened": they are shut, and nobody looked inside.
static bool is_joint_shut(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "inside-not-inspected") && hit->from > 0 &&
           tokens->at[hit->from - 1].stop == STOP_NONE &&
           ANY(tokens, hit->from - 1, "corners", "seams", "joints", "miters", "mitres", "cracks", "splits",
               "glue", "corner", "seam", "joint");
}

// "The handle is not stuck on with glue": how it is held.
static bool is_stuck_on(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "seized") && ANY(tokens, hit->to - 1, "stuck") &&
           (ANY(tokens, hit->to, "together", "back") ||
            (ANY(tokens, hit->to, "on", "to", "down") && ANY(tokens, hit->to + 1, "with", "by")));
}

// "Black as your hat in there" of iron: seasoned.
static bool is_black_iron(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "tarnish") && ANY(tokens, hit->from, "black") &&
           kind_note_has(r, "iron skillet oven griddle") && !kind_note_has(r, "silver brass copper");
}

// "I quit smoking in '91", "I have burned it this winter", "blade could stand a touch up": of the seller, of
// its work, and of what should be done.
static bool is_of_seller(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    if (i > 0 && ANY(tokens, i, "quit", "quits") && ANY(tokens, i - 1, "i", "we", "he", "she")) return true;
    size_t by = i > 0 && ANY(tokens, i - 1, "have", "had", "just", "always") ? i - 1 : i;
    if (is_kind(hit, "heat-damage") && by > 0 && ANY(tokens, by - 1, "i", "we", "i've", "we've") &&
        ANY(tokens, hit->to - 1, "burned", "burnt", "burn") &&
        ANY(tokens, hit->to, "it", "them", "wood", "coal", "oil"))
        return true;
    if (is_kind(hit, "filled-overpainted"))
        for (size_t k = 1; k < 4 && k <= i; k++)
            if (ANY(tokens, i - k, "stand", "use", "take", "need", "needs", "wants")) return true;
    if (is_kind(hit, "odor-perfume") && ANY(tokens, hit->to - 1, "pillow", "pillows")) return true;
    return is_kind(hit, "stain") && ANY(tokens, hit->to - 1, "lipstick") && hit->to == i + 1 && i > 0 &&
           ANY(tokens, i - 1, "no", "without");
}

// "A crack you could drop a nickel through": the coin.
static bool is_coin(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "plate-wear") && ANY(tokens, hit->from, "nickel", "nickels") && hit->from > 0 &&
           ANY(tokens, hit->from - 1, "a", "your", "two", "three") &&
           ANY(tokens, hit->to - 1, "through", "in", "wide", "thick", "under", "nickel");
}

// "Patches were taken off": badges that are there no more.
static bool is_badge_gone(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to;
    if (!is_kind(hit, "darned-patched") || !ANY(tokens, at - 1, "patch", "patches")) return false;
    while (ANY(tokens, at, "were", "was", "are", "have", "has", "been", "all")) at++;
    return at > hit->to &&
           (ANY(tokens, at, "removed") ||
            (ANY(tokens, at, "taken", "cut", "picked", "ripped") && token_is(tokens, at + 1, "off")));
}

bool fault_is_innocent(const struct fault_reader *r, const struct fault_hit *hit) {
    return is_of_surface(r, hit) || is_cause_of_tear(r, hit) || is_of_mend(r, hit) ||
           is_split_by_make(r, hit) || is_called(r, hit) || is_flood_it_came_by(r, hit) ||
           is_wear_again(r, hit) || is_felt_by_nail(r, hit) || is_stuck_as_it_should(r, hit) ||
           is_tied_on(r, hit) || is_done_by_hand(r, hit) || is_of_kiln(r, hit) || is_shifted(r, hit) ||
           is_seldom_seen(r, hit) || is_never_filled(r, hit) || is_dry_within(r, hit) ||
           is_pasted_in(r, hit) || is_stamp_of_maker(r, hit) || is_pull_told(r, hit) ||
           is_hot_on_stove(r, hit) || is_sun_cause(r, hit) || is_put_back(r, hit) || is_number_of(r, hit) ||
           is_of_faded(r, hit) || is_supple(r, hit) || is_of_metal_said(r, hit) || is_labor(r, hit) ||
           is_of_course(r, hit) || is_soaked_off(r, hit) || is_rot_of_rubber(r, hit) ||
           is_power_given(r, hit) || is_glued_on(r, hit) || is_carbon_steel(r, hit) ||
           is_not_glued_by_make(r, hit) || is_scraping(r, hit) || is_joint_shut(r, hit) ||
           is_stuck_on(r, hit) || is_black_iron(r, hit) || is_of_seller(r, hit) || is_coin(r, hit) ||
           is_badge_gone(r, hit) || fault_is_beside(r, hit) || fault_is_made_so(r, hit);
}
