// SPDX-License-Identifier: MIT
// Words of a kind that mean something else where they stand: what is asked is not where it comes from, nor
// how it is sold.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/lacking.h"
#include "notes/of_use.h"
#include "text/order.h"
#include "text/utf8.h"

// "Can't vouch for the mark": what it is, and not how well a part of it does.
static bool asks_origin(const struct tokens *tokens, size_t cue, size_t i) {
    static const char *const words[] = {
        "maker", "age",   "mark",   "signature", "gold",      "silver",  "genuine", "real",
        "old",   "date",  "artist", "period",    "original",  "origin",  "it's",    "it",
        "marks", "name",  "names",  "signed",    "stamp",     "stamped", "who",     "authenticity",
        "made",  "carat", "stones", "what",      "provenance"};
    enum { FAR = 6 };
    for (size_t at = i; at < i + FAR && at < tokens->count && tokens->at[at].stop == STOP_NONE; at++)
        if (token_among(tokens, at, words, sizeof words / sizeof *words)) return true;
    if (i < tokens->count && tokens->at[i].stop == STOP_NONE) return false;
    // "Springs I can't vouch for": what it is of stands before
    size_t from = cue;
    while (from > 0 && tokens->at[from - 1].stop == STOP_NONE && cue - from < FAR) from--;
    for (size_t at = from; at < cue; at++)
        if (token_among(tokens, at, words, sizeof words / sizeof *words)) return true;
    return cue - from < 2; // "I can't vouch for."
}

// "I was told it has no chips", "said to be free of moth": of its condition, and not of what it is.
static bool hears_condition(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->to; i < tokens->count && tokens->at[i].stop < STOP_CLAUSE; i++)
        if (r->scope.fault[i] && (r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN)) &&
            (r->scope.stance[i] & STANCE_HEARD))
            return true;
    return false;
}

// "Lid engraved with a bird": a picture, and nobody's name.
static bool engraves_picture(const struct tokens *tokens, const struct fault_hit *hit) {
    static const char *const names[] = {"name",         "names",      "initial", "initials",    "monogram",
                                        "date",         "letter",     "letters", "inscription", "crest",
                                        "presentation", "dedication", "message", "number",      "script",
                                        "single",       "capital"};
    size_t at = hit->to;
    if (!ANY(tokens, at - 1, "engraved", "etched", "cut") || !ANY(tokens, at, "with") ||
        !ANY(tokens, at + 1, "a", "an", "some", "little"))
        return false;
    for (size_t k = at + 2; k < at + 5 && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
        if (token_among(tokens, k, names, sizeof names / sizeof *names) || tokens->at[k].capital)
            return false;
    return true;
}

// "Burnt on one end is TR 2", "burned into the lid is a name": with an iron, and to be read.
static bool is_branded(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 8 };
    static const char *const read[] = {"letter", "letters", "initials", "initial", "name",  "names",
                                       "number", "numbers", "mark",     "date",    "brand", "stamp"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "heat-damage") ||
        !ANY(tokens, hit->from, "burnt", "burned", "burn", "branded"))
        return false;
    bool is = false;
    for (size_t i = hit->from + 1; i < tokens->count && i < hit->from + FAR; i++) {
        if (tokens->at[i - 1].stop >= STOP_SENTENCE) return false;
        is |= ANY(tokens, i, "is", "are", "reads", "says", "with", ":", "the");
        if (is && i >= hit->to &&
            (tokens->at[i].capitals || r->note->taken[i] == TAKEN_MARK ||
             token_among(tokens, i, read, sizeof read / sizeof *read)))
            return true;
    }
    return false;
}

// "The lid has engraving, a flower", "engraving filled with polish": no letters.
static bool is_plain_engraving(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const names[] = {"name", "names", "initials", "initial",     "letters",
                                        "date", "crest", "monogram", "inscription", "to",
                                        "for",  "reads", "says",     "with",        "from"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "monogram") || hit->to != hit->from + 1 ||
        !token_is(tokens, hit->from, "engraving") ||
        (r->scope.stance[hit->from] & (STANCE_DENIED | STANCE_NONE_SEEN)))
        return false;
    for (size_t i = hit->to; i < hit->to + 4 && i < tokens->count && tokens->at[i].stop < STOP_CLAUSE; i++)
        if (token_among(tokens, i, names, sizeof names / sizeof *names) &&
            !ANY(tokens, i - 1, "filled", "worn", "rubbed"))
            return false;
    return true;
}

// "Repainted, drips on the back": of the paint, and no leak.
static bool is_paint_drip(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, hit->from, "drip", "drips", "runs") ||
        !(text_same(hit->kinds[0]->rule.id, "seam-split") ||
          text_same(hit->kinds[0]->rule.id, "partly-working")))
        return false;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->from; i++)
        if (ANY(tokens, i, "paint", "painted", "repainted", "varnish", "varnished", "lacquered")) return true;
    return false;
}

// "Beech frame stained dark": how it was finished.
static bool is_wood_stain(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const woods[] = {"furniture", "music", "decor"};
    const struct tokens *tokens = &r->note->tokens;
    bool wood = false;
    for (size_t i = 0; r->note->record->family && i < sizeof woods / sizeof *woods; i++)
        wood |= text_same(r->note->record->family->rule.id, woods[i]);
    return wood && text_same(hit->kinds[0]->rule.id, "stain") && hit->to == hit->from + 1 &&
           token_is(tokens, hit->from, "stained") && tokens->at[hit->from].stop == STOP_NONE &&
           ANY(tokens, hit->to, "dark", "walnut", "mahogany", "ebony", "oak", "cherry", "brown", "red",
               "green", "black") &&
           (hit->to + 1 >= tokens->count || tokens->at[hit->to + 1].stop != STOP_NONE);
}

// "Rust bleeding through the paint": rust, and paint that is there.
static bool is_rust_through(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool coat =
        text_same(hit->kinds[0]->rule.id, "paint-flaking") || text_same(hit->kinds[0]->rule.id, "plate-wear");
    if (!coat || hit->from == 0) return false;
    return ANY(tokens, hit->from, "bleeding", "coming", "showing", "breaking", "creeping") &&
           ANY(tokens, hit->from - 1, "rust", "it") && tokens->at[hit->from - 1].stop == STOP_NONE;
}

// "One end has lost its fringe": what was lost is told by itself.
static bool is_loser(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->kinds[0]->form == ABSENCE && token_is(tokens, hit->to - 1, "missing") &&
        hit->to > hit->from + 1 && tokens->at[hit->to - 1].stop == STOP_NONE &&
        ANY(tokens, hit->to, "most", "much", "half", "some", "part", "bits") &&
        ANY(tokens, hit->to + 1, "of", "its", "the", "their"))
        return true; // "the yellow ball is missing most of its paint"
    if (hit->kinds[0]->form == ABSENCE && token_is(tokens, hit->to - 1, "lost") && hit->to > hit->from + 1 &&
        tokens->at[hit->to - 1].stop == STOP_NONE &&
        ANY(tokens, hit->to, "its", "most", "some", "much", "half", "all", "their", "a"))
        return true; // "the top has lost most of its paint"
    return text_same(hit->kinds[0]->rule.id, "broken-part") && hit->near &&
           ANY(tokens, hit->to - 1, "lost", "missing") && tokens->at[hit->to - 1].stop == STOP_NONE &&
           ANY(tokens, hit->from, "end", "side", "edge", "corner", "tip") &&
           ANY(tokens, hit->to, "its", "a", "the", "one", "two", "some", "their");
}

// "Some of the brown patches have perished": of a quilt, what it is sewn of.
static bool is_patchwork(const struct fault_reader *r, const struct fault_hit *hit) {
    const char *type = r->note->record->type.value;
    return type && text_same(hit->kinds[0]->rule.id, "stain") &&
           token_is(&r->note->tokens, hit->to - 1, "patches") &&
           (strstr(type, "quilt") || strstr(type, "patchwork"));
}

// "Faded on one side where it lay folded": where the fault before it is, and no fold of its own.
static bool is_old_place(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from; // "scuffed on the bottom where the color's gone": of the scuff
    bool color = text_same(hit->kinds[0]->rule.id, "fading") &&
                 ANY(tokens, at, "color", "colour", "color's", "colour's");
    if (!color && !text_same(hit->kinds[0]->rule.id, "storage-spots")) return false;
    if (color && at > 0 && token_is(tokens, at - 1, "the")) at--;
    if (color && at > 0) at--;
    if (!token_is(tokens, at, "where")) return false;
    size_t start = color ? scope_sentence_start(&r->scope, at) : scope_clause_start(&r->scope, at);
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from >= start && r->hits[k].to <= at && r->hits[k].kinds[0]->form == FAULT)
            return true;
    return false;
}

// "Not opened up" of a crack: how far it goes, and not what nobody looked into.
static bool is_of_crack(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const gaps[] = {"crack",         "wood-split", "hairline",
                                       "crack-through", "seam-open",  "seam-split"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "inside-not-inspected") ||
        !ANY(tokens, hit->to - 1, "up", "opened"))
        return false;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    for (size_t k = 0; k < r->hit_count; k++)
        for (size_t g = 0; g < sizeof gaps / sizeof *gaps; g++)
            if (r->hits[k].from >= start && r->hits[k].to <= hit->from &&
                text_same(r->hits[k].kinds[0]->rule.id, gaps[g]))
                return true;
    return false;
}

// "The line up the side is only the mold", "a seam from the mold": what it was cast in, and no growth.
static bool is_form(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const words[] = {"line",  "lines", "seam",    "seams", "ridge", "ridges", "bump",
                                        "bumps", "cast",  "pressed", "blown", "join",  "joins"};
    static const char *const leads[] = {"the", "a", "its"};
    const struct tokens *tokens = &r->note->tokens;
    if (strcmp(hit->kinds[0]->rule.id, "mold") != 0 || hit->from == 0 ||
        !token_among(tokens, hit->from - 1, leads, sizeof leads / sizeof *leads))
        return false;
    bool form = false; // but of a fault before it, "the stain on the seam is from the mould", it is the cause
    for (size_t i = scope_clause_start(&r->scope, hit->from); i < hit->from; i++) {
        if (r->scope.fault[i]) return false;
        form |= token_among(tokens, i, words, sizeof words / sizeof *words);
    }
    return form;
}

// "Bandages, not opened", "two packets, never opened": goods that are sealed, and no inside that was not
// seen.
static bool is_sealed(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    static const char *const opened[] = {"opened", "unopened"};
    if (strcmp(hit->kinds[0]->rule.id, "inside-not-inspected") != 0 || hit->from < 2 ||
        !token_among(tokens, hit->to - 1, opened, sizeof opened / sizeof *opened))
        return false;
    size_t noun = hit->from - 1;
    if (tokens->at[noun].stop == STOP_COMMA) noun--;
    const struct token *token = &tokens->at[noun];
    bool ends = hit->to >= tokens->count || tokens->at[hit->to].stop != STOP_NONE;
    bool goods =
        token->kind == TOKEN_WORD && token->one != token->fold && !r->part[noun] && !r->scope.fault[noun];
    return goods && ends;
}

// "Not swollen, sits level": of what runs on a battery, which has seen no water and is not warped.
static bool is_of_battery(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const swells[] = {"swollen", "swelled", "swelling", "bulging", "bulged"},
                             *const rocks[] = {"rock", "rocks"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    bool runs = family && (text_same(family->rule.id, "electrical") || text_same(family->rule.id, "cameras"));
    bool denied = false; // a wooden cabinet may well be swollen
    for (size_t k = hit->from > 3 ? hit->from - 3 : 0; k < hit->to; k++)
        denied |=
            ANY(tokens, k, "not", "isn't", "isnt", "no", "hasn't", "doesn't", "doesnt", "never", "aren't");
    if (!runs || !denied) return false;
    if (text_same(hit->kinds[0]->rule.id, "water-damage") && hit->to == hit->from + 1)
        return token_among(tokens, hit->from, swells, sizeof swells / sizeof *swells);
    return text_same(hit->kinds[0]->rule.id, "warped") &&
           token_among(tokens, hit->to - 1, rocks, sizeof rocks / sizeof *rocks);
}

// "One short pull on the hem": a length, and nothing lacks; "one short of a set" does.
static bool is_short_thing(const struct tokens *tokens, const struct fault_hit *hit) {
    static const char *const others[] = {
        "of",    "on",    "by",   "in",    "from",   "for",       "and",    "but",   "or",     "so", "i",
        "it",    "the",   "when", "still", "now",    "set",       "after",  "as",    "if",     "to", "at",
        "since", "which", "we",   "they",  "though", "otherwise", "unless", "there", "because"};
    return text_same(hit->kinds[0]->rule.id, "missing-pieces") && token_is(tokens, hit->to - 1, "short") &&
           hit->to < tokens->count && tokens->at[hit->to - 1].stop == STOP_NONE &&
           tokens->at[hit->to].kind == TOKEN_WORD &&
           !token_among(tokens, hit->to, others, sizeof others / sizeof *others);
}

// "I didn't take the cover off", "had to get the lid off": what somebody did, or did not, to see beneath it.
static bool is_lifted(const struct tokens *tokens, const struct fault_hit *hit) {
    static const char *const verbs[] = {"take", "took", "taken",  "taking", "get",    "got",
                                        "had",  "pull", "pulled", "lift",   "lifted", "have"};
    static const char *const who[] = {"i",       "we",      "to",       "didn't",   "didnt", "not",
                                      "never",   "haven't", "havent",   "i've",     "we've", "you",
                                      "can't",   "cant",    "could",    "couldn't", "can",   "hadn't",
                                      "without", "dare",    "bothered", "even"};
    enum { LEADS_MOST = 3 };
    if (!ANY(tokens, hit->to - 1, "off", "out")) return false;
    size_t at = hit->from, leads = 0;
    while (at > 0 && leads < LEADS_MOST &&
           ANY(tokens, at - 1, "the", "its", "back", "top", "front", "bottom", "a"))
        at--, leads++;
    return at > 1 && token_among(tokens, at - 1, verbs, sizeof verbs / sizeof *verbs) &&
           token_among(tokens, at - 2, who, sizeof who / sizeof *who);
}

// "The other one's buckle is missing": the buckle, and not the other one.
static bool is_owners(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "missing-mate")) return false;
    for (size_t i = hit->from; i < hit->to && i + 1 < tokens->count; i++)
        if (token_is(tokens, i, "one's")) return r->part[i + 1] && !r->scope.fault[i + 1];
    return false;
}

// "No guarantee it reads right" is a doubt of that, and not how the thing is sold; nor is every going a
// working.
// "The iron has plenty left", "bristles are half gone", "some gone green": of no supplies.
static bool is_no_supply(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const supplies = " tin tins tube tubes roll rolls ball balls reel reels skein skeins "
                                        "pad pads pack packet box boxes bottle "
                                        "bottles jar jars pot can cans candle candles chalk polish wax paint "
                                        "paints ink thread twine wire tape "
                                        "glue grease oil sandpaper paper film nails tacks screws crayons "
                                        "pencils soap stationery matches string "
                                        "cord rope varnish cloth fabric wool yarn leather bundle "
                                        "pencil crayon spool cone ";
    const char *type = r->note->record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    if (!type || !text_same(hit->kinds[0]->rule.id, "partly-used-supplies")) return false;
    if (ANY(&r->note->tokens, hit->to, "green", "rusty", "dull", "moldy", "mouldy")) return false; // a turn
    if (ANY(&r->note->tokens, hit->to - 1, "used") && (strstr(type, "postcard") || strstr(type, "stamp")))
        return true; // in the post
    for (size_t i = hit->from; i < hit->to; i++)
        if (!ANY(&r->note->tokens, i, "plenty", "half", "most", "some", "gone", "left", "nearly", "almost",
                 "about", "a", "third", "quarter", "all", "of", "mostly", "loads", "good", "bit"))
            return false;
    const struct family *family = r->note->record->family;
    if (family && text_same(family->rule.id, "crafts")) return false;
    const char *word = utf8_fold(r->note->arena, head ? head + 1 : type);
    return !strstr(supplies, arena_format(r->note->arena, " %s ", word));
}

// "No picture", "no image" of a frame or a slide: none is in it.
static bool is_picture_held(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const screens[] = {"electrical", "cameras", "media"};
    const struct family *family = r->note->record->family;
    if (hit->kinds[0]->class != CLASS_FUNCTION || !ANY(&r->note->tokens, hit->to - 1, "picture", "image") ||
        !family)
        return false;
    for (size_t k = 0; k < sizeof screens / sizeof *screens; k++)
        if (text_same(family->rule.id, screens[k])) return false;
    return true;
}

// "Box key missing": the key.
static bool is_part_of_box(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "missing-box")) return false;
    for (size_t i = hit->from; i + 1 < hit->to; i++)
        if (ANY(tokens, i, "box", "carton", "packaging") && tokens->at[i].stop == STOP_NONE &&
            (r->part[i + 1] || lacking_kind(tokens->at[i + 1].one, NULL)))
            return true;
    return false;
}

// "They fit a 1 5/8 inch hole": of where it goes.
static bool is_hole_for_it(const struct tokens *tokens, const struct fault_hit *hit) {
    enum { BACK = 7 };
    if (!ANY(tokens, hit->to - 1, "hole", "holes")) return false;
    for (size_t k = hit->from; k > 0 && k + BACK > hit->from && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (ANY(tokens, k - 1, "fit", "fits", "takes", "suits", "needs"))
            return !ANY(tokens, k, "over", "the");
    return false;
}

// "A stain from a leaky bottle", "a ring from a wet pot": of what left it.
static bool is_of_cause(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { BACK = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from;
    if (at < 3 || !ANY(tokens, at - 1, "a", "an", "some", "somebody's", "someone's") ||
        !ANY(tokens, at - 2, "from", "by") || hit->to >= tokens->count ||
        tokens->at[hit->to].kind != TOKEN_WORD || tokens->at[hit->to - 1].stop != STOP_NONE)
        return false;
    if (spot_preposition(tokens, hit->to) || ANY(tokens, at - 3, "apart", "aside", "away", "except"))
        return false;
    for (size_t k = at - 2; k > 0 && k + BACK > at - 2; k--)
        if (r->scope.fault[k - 1]) return true;
    return false;
}

bool fault_means_other(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const ways[] = {"through", "over",     "into", "near",
                                       "there",   "anywhere", "deep", "further"};
    const struct tokens *tokens = &r->note->tokens;
    if (is_wood_stain(r, hit) || is_rust_through(r, hit) || fault_means_place(r, hit)) return true;
    if (is_paint_drip(r, hit) || is_loser(r, hit) || is_plain_engraving(r, hit)) return true;
    if (is_branded(r, hit) || is_of_crack(r, hit) || is_patchwork(r, hit) || is_old_place(r, hit))
        return true;
    if (text_same(hit->kinds[0]->rule.id, "crease") && hit->from > 0 && hit->to > hit->from + 1 &&
        ANY(tokens, hit->to - 1, "folds", "fold", "creases") && degrees_number(tokens, hit->from) &&
        ANY(tokens, hit->from - 1, "on", "at", "along", "across", "in", "near", "by"))
        return true; // "patched on three folds": where
    if (is_form(r, hit) || is_sealed(r, hit) || fault_is_harmless(r, hit) || fault_is_of_use(r, hit) ||
        is_of_cause(r, hit) || is_hole_for_it(tokens, hit) || fault_is_innocent(r, hit))
        return true;
    if (token_is(tokens, hit->to - 1, "go") && !token_is(tokens, hit->to - 2, "let") &&
        token_among(tokens, hit->to, ways, sizeof ways / sizeof *ways))
        return true; // "didn't go through them"
    const char *doing = hit->to < tokens->count ? tokens->at[hit->to].fold : "";
    if (token_is(tokens, hit->to - 1, "go") && strlen(doing) > 4 &&
        text_same(doing + strlen(doing) - 3, "ing"))
        return true; // "so don't go filing it"
    if (is_short_thing(tokens, hit) || is_of_battery(r, hit) || is_lifted(tokens, hit) || is_owners(r, hit) ||
        is_no_supply(r, hit) || is_picture_held(r, hit) || is_part_of_box(r, hit))
        return true;
    static const char *const needs[] = {"needed", "required", "necessary"}; // "no key needed"
    if (hit->kinds[0]->form == ABSENCE && token_among(tokens, hit->to, needs, sizeof needs / sizeof *needs))
        return true;
    static const char *const tries[] = {"tried", "try", "trying"};
    static const char *const uses[] = {"run", "use", "start", "play", "work", "power", "switch", "operate"};
    if (token_among(tokens, hit->to - 1, tries, sizeof tries / sizeof *tries) &&
        token_is(tokens, hit->to, "to") &&
        !token_among(tokens, hit->to + 1, uses, sizeof uses / sizeof *uses))
        return true; // "haven't tried to free it"
    static const char *const spans[] = {"longer", "more", "sale", "years",  "time", "long",
                                        "ages",   "a",    "some", "parts",  "now",  "me",
                                        "many",   "that", "this", "spares", "over", "at"};
    bool untested = text_same(hit->kinds[0]->rule.id, "untested");
    // "No shade rewired tested": the "no" is the shade's, and what is left of the two words says the
    // contrary.
    if (untested && hit->near && hit->to == hit->from + 1 && token_is(tokens, hit->from, "tested"))
        for (size_t k = 0; k < r->hit_count; k++)
            if (r->hits[k].kinds[0]->form == ABSENCE && r->hits[k].to <= hit->from &&
                token_is(tokens, r->hits[k].from, "no") &&
                scope_clause_start(&r->scope, hit->from) <= r->hits[k].from)
                return true;
    if (untested && token_is(tokens, hit->to, "for") &&
        !token_among(tokens, hit->to + 1, spans, sizeof spans / sizeof *spans))
        return true; // "for leaks", "for accuracy"
    size_t head;     // "wiring not been looked at by anybody"
    static const char *const works[] = {"wiring",    "electrics", "works", "engine",
                                        "insides",   "internals", "motor", "movement",
                                        "mechanism", "pipework",  "gas",   "brakes"};
    if (text_same(hit->kinds[0]->rule.id, "authenticity-unverified") && token_is(tokens, hit->to - 1, "by") &&
        hit->from > 0 && tokens->at[hit->from - 1].stop == STOP_NONE &&
        r->note->taken[hit->from - 1] != TAKEN_TYPE)
        return r->part[hit->from - 1] ||
               token_among(tokens, hit->from - 1, works, sizeof works / sizeof *works);
    if (text_same(hit->kinds[0]->rule.id, "monogram") && engraves_picture(tokens, hit)) return true;
    if (text_same(hit->kinds[0]->rule.id, "authenticity-unverified") && hears_condition(r, hit)) return true;
    if (text_same(hit->kinds[0]->rule.id, "authenticity-unverified") &&
        scope_unsure(tokens, hit->from, &head))
        return !asks_origin(tokens, hit->from, hit->to);
    return text_same(hit->kinds[0]->rule.id, "as-is") && scope_unsure(tokens, hit->from, &head) > 0;
}
