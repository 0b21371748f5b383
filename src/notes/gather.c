// SPDX-License-Identifier: MIT
// The places of a note where a flaw's words stand, sorted into hits that do not overlap.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/place.h"
#include "text/order.h"

// "The edge has gilt wear": the second of the two words belongs to the name of another kind.
static bool is_taken_by_phrase(const struct fault_reader *r, size_t i) {
    const struct phrase_hits *hits = &r->note->hits;
    const struct phrase_hit *near = &hits->at[i];
    for (size_t k = i + 1; k < hits->count && hits->at[k].from < near->to; k++) {
        const struct phrase_hit *h = &hits->at[k];
        struct fault_hit phrase = {.from = h->from, .to = h->to};
        if (!h->near && h->from > near->from && h->to >= near->to && h->to > h->from + 1 &&
            kind_is_whole(r, h->flaw, &phrase))
            return true;
    }
    return false;
}

static struct fault_hit hit_of(const struct phrase_hit *hit) {
    return (struct fault_hit){.from = hit->from,
                              .to = hit->to,
                              .kinds = {hit->flaw},
                              .kind_count = 1,
                              .near = hit->near,
                              .denied = hit->denied};
}

// "One key lost its cap", "one missing its hook": the part, or the one, is what lacks something.
static bool has_object(const struct tokens *tokens, const struct phrase_hit *hit) {
    static const char *const verbs[] = {"lost", "missing", "lacking"};
    static const char *const objects[] = {"its", "a", "an", "one", "two", "some", "their", "his", "three"};
    return hit->flaw->form == ABSENCE && hit->to - hit->from > 1 &&
           tokens->at[hit->to - 1].stop == STOP_NONE &&
           token_among(tokens, hit->to - 1, verbs, sizeof verbs / sizeof *verbs) &&
           token_among(tokens, hit->to, objects, sizeof objects / sizeof *objects) &&
           !token_is(tokens, hit->from, "is");
}

// "One rubber foot gone": the foot, and no rubber; the hair of a bow is no pet's; a lamp has no plug that
// stops it.
static bool is_of_part(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const rubbers[] = {"foot", "feet", "bung",    "stopper", "buffer",
                                          "tip",  "tips", "ferrule", "washer",  "seal",
                                          "grip", "stop", "cap",     "bumper",  "knob"};
    static const char *const wired[] = {"electrical", "lighting", "tools",
                                        "music",      "cameras",  "clocks-watches"};
    const struct tokens *tokens = &r->note->tokens;
    const char *id = hit->flaw->rule.id, *type = r->note->record->type.value,
               *family = r->note->record->family ? r->note->record->family->rule.id : "";
    if (has_object(tokens, hit)) return true;
    if (text_same(id, "zip-fault") && *family &&
        !kind_can_be(r, hit->flaw, NULL)) { // the hook of a plumb bob
        static const char *const zips[] = {"zip's",   "zipper's", "zip",     "zipper", "zips",
                                           "zippers", "popper",   "poppers", "snap",   "snaps",
                                           "velcro",  "zipped",   "teeth",   "slider", "pull"};
        bool zip = false;
        for (size_t i = hit->from; i < hit->to; i++)
            zip |= token_among(tokens, i, zips, sizeof zips / sizeof *zips);
        if (!zip) return true;
    }
    if (text_same(id, "rubber-perished"))
        return hit->near && token_is(tokens, hit->from, "rubber") && token_is(tokens, hit->to - 1, "gone") &&
               token_among(tokens, hit->from + 1, rubbers, sizeof rubbers / sizeof *rubbers);
    if (text_same(id, "pet-hair"))
        return type && (strstr(type, "bow") || strstr(type, "brush")) && !strstr(type, "bowl");
    static const char *const worn[] = {"clothing", "linens", "furniture", "footwear", "bags"};
    if (text_same(id, "missing-button") && *family) { // the belt of a machine
        bool ours = false, belt = false;
        for (size_t i = 0; i < sizeof worn / sizeof *worn; i++) ours |= text_same(family, worn[i]);
        for (size_t i = hit->from; i < hit->to; i++)
            belt |= token_is(tokens, i, "belt") || token_is(tokens, i, "hook") ||
                    token_is(tokens, i, "tie") || token_is(tokens, i, "snap");
        return belt && !ours;
    }
    bool plug = text_same(id, "missing-stopper");
    bool alien = false;
    for (size_t i = 0; i < sizeof wired / sizeof *wired; i++) alien |= text_same(family, wired[i]);
    for (size_t i = hit->from; plug && alien && i < hit->to; i++)
        if (token_is(tokens, i, "plug") || token_is(tokens, i, "cap")) return true;
    return false;
}

// "Pads gone crumbly": words that speak of old paper say nothing of that of goods that are no paper, where
// the note names none. The kind's own name stays.
static bool is_alien(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const of_paper[] = {"album-residue", "binding-weak",  "brittle-paper", "ex-library",
                                           "jacket-damage", "pages-loose",   "price-clipped", "toning",
                                           "trimmed",       "writing-inside"};
    static const char *const hard[] = {"tools",    "kitchenware", "metalware", "glassware",
                                       "ceramics", "footwear",    "clothing",  "electrical",
                                       "lighting", "cameras",     "bags",      "sports",
                                       "jewelry",  "music",       "furniture", "clocks-watches"};
    static const char *const sheets[] = {"paper", "book",    "books",    "page",   "pages", "music",
                                         "score", "hymnal",  "songbook", "card",   "map",   "print",
                                         "label", "leaves",  "sheet",    "sheets", "cover", "wrapper",
                                         "flap",  "booklet", "manual",   "album",  "photo", "photos"};
    const struct tokens *tokens = &r->note->tokens;
    const char *id = hit->flaw->rule.id,
               *family = r->note->record->family ? r->note->record->family->rule.id : "";
    bool paper = false, off = false;
    for (size_t i = 0; i < sizeof of_paper / sizeof *of_paper; i++) paper |= text_same(of_paper[i], id);
    for (size_t i = 0; i < sizeof hard / sizeof *hard; i++) off |= text_same(hard[i], family);
    for (size_t i = hit->from; i < hit->to; i++) // "torn out a plate": it is the fault that names it
        off &= r->note->taken[i] != TAKEN_TYPE;
    struct fault_hit own = hit_of(hit);
    static const char *const of_media[] = {"disc-scratches", "media-degraded"};
    static const char *const players[] = {"media", "cameras", "electrical", "other", "toys", "parts"};
    for (size_t i = 0; i < sizeof of_media / sizeof *of_media && *family; i++)
        if (text_same(of_media[i], id)) {
            off = true;
            for (size_t k = 0; k < sizeof players / sizeof *players; k++)
                off &= !text_same(players[k], family);
            if (!off || kind_is_whole(r, hit->flaw, &own)) return false;
            for (size_t k = 0; k < tokens->count; k++) {
                static const char *const reels[] = {"film",     "tape",   "record",   "records", "disc",
                                                    "negative", "reel",   "lp",       "cd",      "cassette",
                                                    "cylinder", "slides", "78",       "45",      "33",
                                                    "78s",      "45s",    "negatives"};
                if (token_among(tokens, k, reels, sizeof reels / sizeof *reels)) return false;
            }
            return true;
        }
    if (!paper || !off || (!text_same(id, "toning") && kind_is_whole(r, hit->flaw, &own))) return false;
    for (size_t i = 0; i < tokens->count; i++)
        if ((hit->near || i < hit->from || i >= hit->to) &&
            token_among(tokens, i, sheets, sizeof sheets / sizeof *sheets))
            return false;
    return true;
}

// "Tea bowl with a crack running down", "switch box split": the first word only names what sort of thing it
// is.
static bool is_of_name(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct note *note = r->note;
    if (!hit->near || note->taken[hit->from] != TAKEN_TYPE) return false;
    bool before = hit->from + 1 < hit->to && note->taken[hit->from + 1] == TAKEN_TYPE &&
                  note->tokens.at[hit->from].stop == STOP_NONE;
    static const char *const stuffs[] = {"stain",     "odor-food",    "odor-fuel",  "mineral-deposit",
                                         "tide-line", "water-damage", "heat-damage"}; // tea, oil, cigars
    bool stuff = false;
    for (size_t i = 0; i < sizeof stuffs / sizeof *stuffs; i++)
        stuff |= text_same(hit->flaw->rule.id, stuffs[i]);
    return (before && stuff) || text_same(hit->flaw->rule.id, "box-wear");
}

// "One lid's hinge has gone": the hinge, and not the lid.
static bool is_owner_of_part(const struct fault_reader *r, const struct phrase_hit *hit) {
    const char *word = r->note->tokens.at[hit->from].fold;
    size_t size = strlen(word);
    return hit->near && hit->from + 2 < hit->to && size > 2 && text_same(word + size - 2, "'s") &&
           place_noun(r->note, hit->from + 1);
}

// "The lid has a corner missing": the corner is what lacks, and the lid is there.
static bool is_of_owned(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const verbs[] = {"has", "have", "had", "got", "shows"};
    static const char *const articles[] = {"a",     "an",  "one",   "two",     "three",  "its",
                                           "some",  "bit", "small", "several", "little", "the",
                                           "their", "big", "tiny",  "couple"};
    const struct tokens *tokens = &r->note->tokens;
    if (!hit->near || hit->flaw->form != ABSENCE) return false;
    for (size_t i = hit->from + 1; i + 3 < hit->to; i++)
        if (token_among(tokens, i, verbs, sizeof verbs / sizeof *verbs) &&
            token_among(tokens, i + 1, articles, sizeof articles / sizeof *articles))
            return true;
    return false;
}

// "The page isn't loose": not that it is not there.
static bool is_not_so(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const nots[] = {"isn't", "aren't", "isnt", "arent"};
    static const char *const places[] = {"there", "here",   "present",  "with", "included", "in",   "on",
                                         "any",   "around", "anywhere", "to",   "among",    "mine", "all"};
    const struct tokens *tokens = &r->note->tokens;
    return hit->near && token_among(tokens, hit->to - 1, nots, sizeof nots / sizeof *nots) &&
           hit->to < tokens->count && tokens->at[hit->to].stop == STOP_NONE &&
           !token_among(tokens, hit->to, places, sizeof places / sizeof *places);
}

// "Lid stitching gone": the stitching, which is a fault of its own, and not the lid.
static bool is_of_compound(const struct fault_reader *r, size_t i) {
    const struct phrase_hits *hits = &r->note->hits;
    const struct phrase_hit *hit = &hits->at[i];
    if (!hit->near || hit->flaw->form != ABSENCE || r->note->tokens.at[hit->from].stop != STOP_NONE)
        return false;
    for (size_t k = i + 1; k < hits->count && hits->at[k].from <= hit->from + 1; k++)
        if (hits->at[k].from == hit->from + 1 && hits->at[k].to >= hit->to && hit->to > hit->from + 2)
            return true;
    return false;
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
    if (!type || hit->near || hit->to != hit->from + 1 || !text_same(hit->flaw->rule.id, "darned-patched") ||
        !ANY(tokens, hit->from, "patch", "patches") || (!strstr(type, "quilt") && !strstr(type, "patchwork")))
        return false;
    return !ANY(tokens, hit->to, "over", "on", "where", "sewn", "covering", "replaced", "added") &&
           !(hit->from > 0 && ANY(tokens, hit->from - 1, "replaced", "replacement", "new", "added", "later"));
}

// "No charger so": none is there, told by a rule's phrase of its own, and the last word tells that nothing
// was tried. How many hits they are.
static size_t leave_part(const struct fault_reader *r, struct fault_hit *hit) {
    const struct phrase_hits *hits = &r->note->hits;
    const struct tokens *tokens = &r->note->tokens;
    if (hit->near || hit->to != hit->from + 3 || !text_same(hit->kinds[0]->rule.id, "untested") ||
        !token_is(tokens, hit->from, "no") || !ANY(tokens, hit->to - 1, "so", "to"))
        return 1;
    for (size_t i = 0; i < hits->count; i++) {
        if (hits->at[i].from != hit->from || hits->at[i].to != hit->to - 1 ||
            hits->at[i].flaw->form != ABSENCE)
            continue;
        hit[1] = *hit;
        hit[1].from = hit->to - 1;
        hit[1].own_no = true;
        *hit = hit_of(&hits->at[i]);
        return 2;
    }
    return 1;
}

// "Straps have gone stiff": turned into, and not missing. "Paint's worn off one ear": the paint is off, and
// the ear is there.
static bool is_turned_or_worn(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const states[] = {
        "stiff",  "hard",   "soft",  "brittle", "dull",   "dark",  "black",  "brown",  "yellow", "green",
        "grey",   "gray",   "white", "rusty",   "sticky", "tacky", "cloudy", "limp",   "slack",  "baggy",
        "saggy",  "crispy", "dry",   "crumbly", "mouldy", "moldy", "patchy", "loose",  "wobbly", "flat",
        "spotty", "milky",  "foggy", "hazy",    "weak",   "pale",  "thin",   "floppy", "stale",  "smelly"};
    static const char *const wears[] = {"worn", "rubbed", "flaked", "peeled", "faded", "scraped", "polished"};
    const struct tokens *tokens = &r->note->tokens;
    bool lost = hit->flaw->form == ABSENCE || text_same(hit->flaw->rule.id, "broken-part") ||
                text_same(hit->flaw->rule.id, "strap-damage") || text_same(hit->flaw->rule.id, "trim-loss") ||
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

// "In a fitted wooden box, box has a split": the split of a thing, and no wear of its packing.
static bool is_of_made_box(const struct fault_reader *r, const struct phrase_hit *hit) {
    if (!text_same(hit->flaw->rule.id, "box-wear")) return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(&r->note->tokens, i, "box", "box's", "boxes")) return packing_is_made(r->note, i);
    return false;
}

// "Ring at the top is bent": of a ring, and not of a mark.
static bool is_of_bent_ring(const struct fault_reader *r, size_t i) {
    const struct phrase_hits *hits = &r->note->hits;
    const struct phrase_hit *hit = &hits->at[i];
    if (!text_same(hit->flaw->rule.id, "ring-mark") ||
        !ANY(&r->note->tokens, hit->to, "is", "are", "has", "have"))
        return false;
    for (size_t k = i + 1; k < hits->count && hits->at[k].from <= hit->to + 2; k++)
        if (hits->at[k].from > hit->to && hits->at[k].flaw != hit->flaw) return true;
    return false;
}

// "Handle bent and it jams": between two words apart a damage by itself, which an "and" parts from the
// second.
static bool is_within(const struct fault_reader *r, const struct fault_hit *last,
                      const struct phrase_hit *hit) {
    if (!last->near || hit->near || hit->to != hit->from + 1 || hit->from <= last->from ||
        hit->to >= last->to)
        return false;
    return hit->flaw->class == CLASS_DAMAGE && hit->flaw->form == FAULT && last->kinds[0] != hit->flaw &&
           ANY(&r->note->tokens, hit->to, "and", "so");
}

// What the last word says by itself, which the "no" before the others reaches.
static struct fault_hit last_word(const struct phrase_hit *hit) {
    struct fault_hit last = hit_of(hit);
    last.from = hit->to - 1;
    last.near = false;
    last.own_no = true;
    return last;
}

// "No measuring cup or manual": the cup is told by itself.
static bool is_last_of_two(const struct fault_reader *r, const struct phrase_hit *hit) {
    return hit->near && hit->flaw->form == ABSENCE && hit->to > hit->from + 3 &&
           ANY(&r->note->tokens, hit->from, "no", "without") &&
           ANY(&r->note->tokens, hit->to - 2, "or", "nor");
}

// The note's hits by phrase: all kinds of one span together, none inside a longer one. Two words apart that
// name a fault outrank a phrase of one of them ("paint … worn").
static void gather(struct fault_reader *r) {
    const struct phrase_hits *hits = &r->note->hits;
    struct fault_hit *const kept = arena_array(r->note->arena, 2 * hits->count + 2, sizeof *kept);
    r->hits = kept;
    if (!kept) return; // never so, which readers of code by machine do not know
    size_t reach = 0;
    for (size_t i = 0; i < hits->count; i++) {
        const struct phrase_hit *hit = &hits->at[i];
        if ((hit->near && is_taken_by_phrase(r, i)) || is_crossed(r, hit) || is_alien(r, hit) ||
            is_of_part(r, hit))
            continue;
        if (hit->near && r->note->taken[hit->from] == TAKEN_TYPE && r->note->taken[hit->to - 1] == TAKEN_TYPE)
            continue; // "candle cups": the name of the thing
        if (is_of_name(r, hit) || is_owner_of_part(r, hit) || is_of_compound(r, i) || is_not_so(r, hit) ||
            is_of_owned(r, hit))
            continue;
        if (is_of_reader(r, hit) || is_sought(r, hit) || is_of_dirt(r, hit)) continue;
        if (sound_said_holds(r, hit->from, hit->to)) continue;
        if (hit->gated && hit->near && !kind_can_be(r, hit->flaw, note_words(r->note, hit->from, hit->to)))
            continue;
        if (hit->gated && !hit->near && !kind_fits_words(r, hit->flaw, hit->from, hit->to)) continue;
        if (hit->flaw->off.count && kind_is_off(r, hit)) continue;
        if (is_of_made_box(r, hit) || is_of_bent_ring(r, i)) continue;
        if (is_of_work(r, hit) || is_of_hurt(r, hit) || is_of_patchwork(r, hit)) continue;
        if (spans_another(r, hit) || is_turned_or_worn(r, hit) || is_lost_there(r, hit)) continue;
        if (lacks_other(r, hit) || lacks_between(r, hit)) continue;
        if (is_bit_of_degree(r, hit)) continue;
        struct fault_hit *last = r->hit_count ? &kept[r->hit_count - 1] : NULL;
        if (last && hit->from == last->from && hit->to == last->to && (hit->near == last->near)) {
            last->denied &= hit->denied;
            if (last->kind_count < FAULT_KINDS_MOST) last->kinds[last->kind_count++] = hit->flaw;
            continue;
        }
        if (last && hit->from == last->from && hit->to > last->to &&
            (!hit->near || last->to - last->from < 2)) {
            *last = hit_of(hit); // longer from the same word: it alone counts
            reach = hit->to;
            continue;
        }
        if (hit->from >= reach && is_last_of_two(r, hit)) {
            kept[r->hit_count++] = last_word(hit);
            reach = hit->to;
            continue;
        }
        bool absence = last && hit->near && hit->from == last->from && last->kinds[0]->form == ABSENCE &&
                       hit->flaw->form == STATE;
        if (absence) { // "no bulb to try it with": no bulb, and not tried
            kept[r->hit_count++] = last_word(hit);
            reach = hit->to;
            continue;
        }
        if (last && is_within(r, last, hit)) kept[r->hit_count++] = hit_of(hit);
        if (hit->from < reach) continue;
        if (last && !last->near && !hit->near && hit->from == last->to && last->kinds[0] == hit->flaw &&
            last->kind_count == 1 && ANY(&r->note->tokens, hit->from, "out", "off", "from", "gone")) {
            last->to = reach = hit->to; // "a chip out of the edge": one, and where it is
            continue;
        }
        kept[r->hit_count] = hit_of(hit);
        r->hit_count += leave_part(r, &kept[r->hit_count]);
        reach = hit->to;
    }
}

static void add_kind(struct fault_hit *hit, const struct flaw *kind) {
    for (size_t i = 0; i < hit->kind_count; i++)
        if (hit->kinds[i] == kind) return;
    if (hit->kind_count < FAULT_KINDS_MOST) hit->kinds[hit->kind_count++] = kind;
}

// "The lid … split": where the word by itself may name the same kind, it may name its others as well, and
// the material decides.
static void widen(struct fault_reader *r, struct fault_hit *hit) {
    const struct phrase_hits *hits = &r->note->hits;
    for (size_t pass = 0; pass < 2; pass++) {
        bool same = pass > 0;
        for (size_t i = 0; i < hits->count; i++) {
            const struct phrase_hit *word = &hits->at[i];
            bool end = (word->from == hit->from || word->to == hit->to) && word->to == word->from + 1;
            if (word->near || !end) continue;
            if (!pass) same |= word->flaw == hit->kinds[0];
            if (pass) add_kind(hit, word->flaw);
        }
        if (!same) return;
    }
}

// "Not a marriage": the article belongs to the denial, and a fault is governed by its own first word.
static void drop_article(const struct fault_reader *r, struct fault_hit *hit) {
    static const char *const articles[] = {"a", "an", "the"};
    if (!hit->near && hit->to > hit->from + 1 &&
        token_among(&r->note->tokens, hit->from, articles, sizeof articles / sizeof *articles))
        hit->from++;
}

// "Torn in two places": torn, and not in two.
static void drop_places(const struct fault_reader *r, struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool places = token_is(tokens, hit->to, "places") || token_is(tokens, hit->to, "spots");
    if (places && hit->to > hit->from + 2 && token_is(tokens, hit->to - 2, "in")) hit->to -= 2;
}

void faults_gather(struct fault_reader *r) {
    sound_said_find(r);
    gather(r);
    faults_drop_likeness(r);
    faults_join(r);
    for (size_t i = 0; i < r->hit_count; i++) {
        drop_article(r, &r->hits[i]);
        drop_places(r, &r->hits[i]);
    }
    for (size_t i = 0; i < r->hit_count; i++)
        if (r->hits[i].near) widen(r, &r->hits[i]);
}
