// SPDX-License-Identifier: MIT
// Colors, materials, techniques, patterns, styles, shapes, finishes and themes: each word goes under the key
// that its neighbors call for, and belongs to the part that it stands before ("brass handle", "the lid is
// tin") or else to the thing. A word in doubt is a guess; a word denied is none.
#include <string.h>

#include "notes/any.h"
#include "notes/chunk.h"
#include "notes/correct.h"
#include "notes/idioms.h"
#include "notes/standing.h"
#include "notes/talk.h"
#include "notes/unsure.h"
#include "notes/value_keep.h"
#include "notes/value_of_other.h"
#include "say/say.h"
#include "text/order.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct {
    enum word_use use;
    const char *name;
} keys[] = {{USE_MATERIAL, "material"}, {USE_COLOR, "color"},   {USE_TECHNIQUE, "technique"},
            {USE_PATTERN, "pattern"},   {USE_FINISH, "finish"}, {USE_SHAPE, "shape"},
            {USE_STYLE, "style"},       {USE_THEME, "theme"}};

static bool has_use(const struct word_entry *entry, enum word_use use) {
    return entry->uses & (1u << use);
}

// The next token that says something: signs within a phrase and "and", "with" are no neighbors.
static size_t next_word(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    while (i < tokens->count && (token_is(tokens, i, "-") || token_is(tokens, i, "&"))) i++;
    return i < tokens->count && tokens->at[i].stop == STOP_NONE ? i : tokens->count;
}

static bool is_metal_color(const char *word) {
    static const char *const words[] = {"gold", "silver"};
    for (size_t i = 0; i < COUNT(words); i++)
        if (text_same(word, words[i])) return true;
    return false;
}

// "Amber glass" is a color, "brass lamp" a material: of a word that is both, what follows decides.
static enum word_use settle(const struct note *note, size_t from, size_t to, const struct word_entry *entry) {
    struct word_entry other;
    static const char *const tones[] = {"tone",   "toned", "colored", "coloured", "color",
                                        "colour", "tint",  "tinted",  "finish"};
    size_t next = next_word(note, to);
    bool toned = token_among(&note->tokens, next, tones, COUNT(tones));
    if (has_use(entry, USE_MATERIAL) && toned &&
        (has_use(entry, USE_COLOR) || !ANY(&note->tokens, next, "finish")))
        return USE_COLOR; // "walnut colour"
    if (has_use(entry, USE_COLOR) && from > 0 &&
        ANY(&note->tokens, from, "wheat", "rose", "lilac", "lavender", "olive", "violet") &&
        (ANY(&note->tokens, from - 1, "molded", "moulded", "embossed", "raised", "carved", "relief",
             "pressed") ||
         ANY(&note->tokens, next, "design", "pattern", "motif")))
        return USE_PATTERN; // "moulded wheat rim"
    if (has_use(entry, USE_MATERIAL) && has_use(entry, USE_COLOR)) {
        if (is_metal_color(entry->print)) return USE_COLOR; // metal only where a mark says so
        bool material = word_at(note, next, 1u << USE_MATERIAL, &other) > 0;
        bool color = from > 0 && word_at(note, from - 1, 1u << USE_COLOR, &other) > 0;
        static const char *const gems[] = {"amber", "ivory",    "coral", "turquoise", "jade",
                                           "pearl", "amethyst", "ruby",  "emerald",   "sapphire",
                                           "topaz", "opal",     "cobalt"};
        bool gem = false;
        if (ANY(&note->tokens, from, "ebony", "amber", "jet", "pearl") &&
            ANY(&note->tokens, to, "stem", "mouthpiece", "handle", "handles", "knob", "knobs", "finial",
                "finials", "nut", "fingerboard", "feet", "stringing", "buttons"))
            return USE_MATERIAL; // "amber stem"
        for (size_t i = 0; i < COUNT(gems); i++) gem |= text_same(entry->print, gems[i]);
        return material || color || gem ? USE_COLOR : USE_MATERIAL;
    }
    static const char *const made[] = {"pattern", "print", "design", "patterned"};
    if (!has_use(entry, USE_COLOR) && !has_use(entry, USE_TECHNIQUE) &&
        ANY(&note->tokens, next, "pattern", "patterned") &&
        (has_use(entry, USE_MATERIAL) || has_use(entry, USE_THEME)))
        return USE_PATTERN; // "bead pattern"
    static const char *const one[] = {"a", "an"};
    uint32_t theme = 1u << USE_THEME;
    const char *type = note->record->type.value;
    if (has_use(entry, USE_PATTERN) && has_use(entry, USE_THEME) && type && strstr(type, "quilt"))
        return USE_PATTERN;
    if (has_use(entry, USE_PATTERN) && has_use(entry, USE_THEME))
        return token_among(&note->tokens, next, made, COUNT(made)) ? USE_PATTERN : USE_THEME;
    if (entry->uses & theme && !has_use(entry, USE_MATERIAL) && from > 0 &&
        token_among(&note->tokens, from - 1, one, 2) && !word_at(note, next, standing_uses, &other))
        return USE_THEME;
    if (has_use(entry, USE_PATTERN) &&
        ANY(&note->tokens, from, "crackle", "crackled", "hammered", "wrinkle", "mottled") &&
        ANY(&note->tokens, next, "finish", "glaze", "paint", "enamel", "black", "gray"))
        return USE_FINISH; // "grey crackle finish"
    if (has_use(entry, USE_FINISH) && ANY(&note->tokens, from, "lacquered") &&
        word_at(note, next, 1u << USE_MATERIAL, &other))
        return USE_FINISH; // "lacquered brass"
    if (has_use(entry, USE_FINISH) && to > from && ANY(&note->tokens, to - 1, "glaze")) return USE_FINISH;
    for (size_t k = 0; k < COUNT(keys); k++)
        if (has_use(entry, keys[k].use)) return keys[k].use;
    return USE_COUNT;
}

// "Tin sign? No, cardboard."
static bool is_asked(const struct note *note, size_t from) {
    size_t end = note_clause_to(note, from, STOP_COMMA);
    if (end > from + 4) return false;
    if (!token_is(&note->tokens, end, "?")) return false;
    return token_is(&note->tokens, end + 1, "no") || token_is(&note->tokens, end + 1, "nope");
}

// "Well I say carved, it's composition": taken back, here and where it was said before.
static bool is_loosely_said(struct note *note, size_t i, size_t n) {
    const struct tokens *tokens = &note->tokens;
    if (i < 2 || !ANY(tokens, i - 1, "say") || !ANY(tokens, i - 2, "i") ||
        (i > 2 && ANY(tokens, i - 3, "would", "should")))
        return false;
    if (i + n >= tokens->count || tokens->at[i + n].stop < STOP_COMMA) return false;
    const char *word = tokens->at[i].fold;
    for (size_t k = 0; k < note->record->attribute_count; k++)
        if (text_same(note->record->attributes[k].value, word)) note->record->attributes[k].sure = SURE_GUESS;
    return true;
}

// "Wooden... no, brass handles": what follows takes its place.
static bool is_mended(const struct note *note, size_t to, const struct word_entry *entry) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry next;
    size_t at = to;
    while (at < tokens->count && at < to + 3 && tokens->at[at].kind == TOKEN_SIGN) at++;
    if (at == to || !ANY(tokens, at, "no", "sorry", "rather")) return false;
    at++;
    while (at < tokens->count &&
           (token_is(tokens, at, ",") || ANY(tokens, at, "it's", "sorry", "make", "that")))
        at++;
    return word_at(note, at, entry->uses & ((1u << USE_MATERIAL) | (1u << USE_COLOR)), &next) > 0;
}

static bool is_denied(const struct note *note, size_t from) {
    if (is_asked(note, from)) return true;
    static const char *const words[] = {"not", "isn't", "no", "without", "never", "aren't", "nor"};
    for (size_t back = 1; back <= 2 && back <= from; back++) {
        if (note->tokens.at[from - back].stop != STOP_NONE) return false;
        if (token_among(&note->tokens, from - back, words, COUNT(words))) return true;
    }
    return false;
}

enum sure value_sure(const struct note *note, size_t from, size_t to) {
    static const char *const maybe[] = {"maybe", "possibly", "perhaps", "?", "probably", "ish", "or"};
    const struct tokens *tokens = &note->tokens;
    struct word_entry next;
    if (unsure_before(note, from) || unsure_behind(note, to) || unsure_in_all(note, to)) return SURE_GUESS;
    for (size_t back = 1; back <= 5 && back <= from; back++) {
        if (tokens->at[from - back].stop >= STOP_COMMA) break;
        if (ANY(tokens, from - back, "either", "or", "pass", "sure")) return SURE_GUESS;
    }
    if (ANY(tokens, to, "ish", "or")) return SURE_GUESS;
    if (token_is(tokens, to + 1, "or") && word_at(note, to + 2, 1u << USE_MATERIAL, &next))
        return SURE_GUESS; // "bone handle or plastic"
    if (to + 1 < tokens->count && tokens->at[to].stop == STOP_NONE && token_is(tokens, to + 1, "?"))
        return SURE_GUESS; // "ivory discs?"
    // "Horn handle (could be plastic)"
    size_t open = tokens->at[to - 1].stop == STOP_NONE && to + 1 < tokens->count && !token_is(tokens, to, "(")
                      ? to + 1
                      : to;
    bool comma = open < tokens->count && tokens->at[open].stop == STOP_COMMA;
    if (token_is(tokens, open, "(") && ANY(tokens, open + 1, "maybe", "possibly", "or") &&
        word_at(note, open + 2, 1u << USE_MATERIAL, &next))
        return SURE_GUESS;
    if ((token_is(tokens, open, "(") || comma) && ANY(tokens, open + 1, "could", "might", "may") &&
        ANY(tokens, open + 2, "be", "well"))
        return SURE_GUESS;
    // "wooden, maybe oak": the oak is in doubt
    if (tokens->count > to + 2 && tokens->at[to].stop == STOP_COMMA &&
        token_among(tokens, to + 1, maybe, COUNT(maybe)) && !word_at(note, to + 2, standing_uses, &next))
        return SURE_GUESS;
    return note_guessed(note, from, to) ? SURE_LIKELY : SURE_STATED;
}

static bool is_known(const struct note *note, const char *name, const char *value, const char *of) {
    const struct record *r = note->record;
    for (size_t i = 0; i < r->attribute_count; i++) {
        const struct value *v = &r->attributes[i];
        if (text_same(v->name, name) && text_same(v->value, value) &&
            ((!v->of && !of) || (v->of && of && text_same(v->of, of))))
            return true;
    }
    return false;
}

static const char *key_of(enum word_use use) {
    for (size_t k = 0; k < COUNT(keys); k++)
        if (keys[k].use == use) return keys[k].name;
    return NULL;
}

// Do words of correction end just before token `from`? A bare "no" or "well" may mean much else.
static bool is_corrected(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    size_t no = from > 0 && token_is(tokens, from - 1, ",") ? from - 2 : from - 1;
    if (from > 1 && token_is(tokens, no, "no") && token_is(tokens, to, "actually")) return true;
    for (size_t back = 1; back <= 4 && back <= from; back++) {
        size_t at = from - back, taken = correction_at(note, at);
        bool plain = token_is(&note->tokens, at, "no") || token_is(&note->tokens, at, "well") ||
                     token_is(&note->tokens, at, "wait");
        if (!taken || (taken == 1 && plain)) continue;
        size_t k = at + taken;
        while (k < from && note->tokens.at[k].stop != STOP_NONE) k++;
        if (k == from) return true;
    }
    return false;
}

// "It's copper. Actually brass": the later word takes the place of the last of its name.
static struct value *place_for(struct note *note, const char *name, const char *of, size_t from, size_t to) {
    struct record *r = note->record;
    if (r->attribute_count && is_corrected(note, from, to)) {
        struct value *last = &r->attributes[r->attribute_count - 1];
        if (!of && !last->of && text_same(last->name, name)) return last;
    }
    return note_attribute(note);
}

void value_keep(struct note *note, const char *name, const char *print, const char *of, size_t from,
                size_t to, enum sure sure) {
    bool look = text_same(name, "color") || text_same(name, "technique");
    if (of && (text_same(of, "soft") || (text_same(of, "hand") && look))) of = NULL; // "hand smocked"
    if (look && (!of || text_same(print, "beveled")) && value_is_of_pane(note, to, print)) of = "glass";
    if (is_known(note, name, print, of) || (!of && talk_value(note, from, to))) return;
    struct value *value = place_for(note, name, of, from, to);
    *value = (struct value){
        .name = name, .value = print, .of = of, .sure = sure, .span = note_span_of(note, from, to)};
    note_reading(note, from, to, arena_format(note->arena, "%s %s", name, print), "word book");
}

// "Green glass", "pressed glass": the color, or the way of making, and the material are two facts.
static bool read_two(struct note *note, size_t i, size_t n, const char *of, enum sure sure) {
    static const char *const plain[] = {"glass", "enamel", "velvet",  "leather",  "plastic",
                                        "metal", "wood",   "crystal", "ironstone"};
    static const uint32_t looks = (1u << USE_COLOR) | (1u << USE_TECHNIQUE);
    struct word_entry look, material;
    if (n < 2 || !token_among(&note->tokens, i + n - 1, plain, COUNT(plain))) return false;
    size_t size = word_at(note, i, looks, &look);
    // A phrase that is longer than the look alone holds the material too.
    while (size >= n && size > 0) size = 0;
    if (!size)
        for (size = n - 1; size > 0; size--) {
            const char *words = note_words(note, i, i + size);
            struct buf small = buf_start(note->arena);
            for (const char *c = words; *c; c++)
                buf_byte(&small, *c >= 'A' && *c <= 'Z' ? (char)(*c + 32) : *c);
            if (wordbook_find(note->book, small.at, strlen(small.at), &look) && look.uses & looks) break;
        }
    if (size + 1 != n || !word_at(note, i + size, 1u << USE_MATERIAL, &material)) return false;
    bool color = look.uses & (1u << USE_COLOR);
    value_keep(note, color ? "color" : "technique", look.print, of, i, i + size, sure);
    value_keep(note, "material", material.print, of, i + size, i + n, sure);
    return true;
}

// "Painted red", "green glaze": a finish, and the thing is of that color.
static void read_paint(struct note *note, size_t i, const char *of, enum sure sure) {
    struct word_entry color;
    for (size_t k = i; k < i + 2; k++) {
        const char *other = note->tokens.at[k == i ? i + 1 : i].fold;
        if (!text_same(other, "painted") && !text_same(other, "paint") && !text_same(other, "lacquered") &&
            !text_same(other, "glaze") && !text_same(other, "gloss") && !text_same(other, "shiny"))
            continue;
        const char *word = note->tokens.at[k].fold;
        if (wordbook_find(note->book, word, strlen(word), &color) && color.uses & (1u << USE_COLOR))
            value_keep(note, "color", color.print, of, k, k + 1, sure);
    }
}

// "The sun got to it", "worms have been in the leg": who did it is not depicted.
static bool is_doer(const struct note *note, size_t i, size_t to) {
    static const char *const doers[] = {"sun", "worm", "mouse", "moth", "rat",  "dog",
                                        "cat", "bird", "puppy", "kid",  "salt", "wasp"};
    static const char *const verbs[] = {"got",  "has", "have", "had",    "ate",    "was",
                                        "were", "did", "came", "chewed", "gnawed", "nested"};
    bool doer = false;
    for (size_t k = 0; i < to && k < COUNT(doers); k++)
        doer |= text_same(note->tokens.at[to - 1].one, doers[k]);
    return doer && token_among(&note->tokens, to, verbs, COUNT(verbs));
}

// "Wood handled garden fork": the wood is the handle's.
static const char *parted_by(const struct note *note, size_t i, size_t *taken) {
    static const char *const words[][2] = {
        {"handled", "handle"},  {"framed", "frame"},  {"backed", "back"},    {"bladed", "blade"},
        {"stemmed", "stem"},    {"topped", "top"},    {"lidded", "lid"},     {"rimmed", "rim"},
        {"soled", "sole"},      {"cased", "case"},    {"seated", "seat"},    {"lined", "lining"},
        {"trimmed", "trim"},    {"tipped", "tip"},    {"edged", "edge"},     {"faced", "face"},
        {"filled", "filling"},  {"banded", "band"},   {"hooped", "hoop"},    {"headed", "head"},
        {"bottomed", "bottom"}, {"wheeled", "wheel"}, {"panelled", "panel"}, {"paneled", "panel"},
        {"strapped", "strap"},  {"mounted", "mount"}, {"shafted", "shaft"},  {"hilted", "hilt"},
        {"stocked", "stock"},   {"gripped", "grip"}};
    struct word_entry more; // "purple silk lined"
    size_t value = i < note->tokens.count && note->tokens.at[i].stop == STOP_NONE
                       ? word_at(note, i, 1u << USE_MATERIAL, &more)
                       : 0;
    if (value && token_is(&note->tokens, i + value, "lined") && note->taken[i + value] == TAKEN_NOT) {
        *taken = 0;
        return "lining";
    }
    size_t at = token_is(&note->tokens, i, "-") ? i + 1 : i;
    if (at >= note->tokens.count || (i > 0 && note->tokens.at[i - 1].stop != STOP_NONE)) return NULL;
    for (size_t k = 0; k < COUNT(words); k++)
        if (token_is(&note->tokens, at, words[k][0]) && note->taken[at] == TAKEN_NOT) {
            *taken = at + 1 - i;
            return words[k][1];
        }
    return NULL;
}

// "Tooled leather" is one word of the book; what is worked so is a fact of its own.
static void keep_stuff(struct note *note, size_t i, size_t n, const char *of, enum sure sure) {
    static const char *const plain[] = {"leather", "glass", "wood",   "metal", "tin",
                                        "silver",  "brass", "copper", "steel", "aluminum"};
    struct word_entry stuff;
    if (n > 1 && ANY(&note->tokens, i + n - 1, "bound", "covered") &&
        ANY(&note->tokens, i, "leather", "cloth", "buckram", "vellum") &&
        word_at(note, i, 1u << USE_MATERIAL, &stuff) == 1) // "leather bound"
        value_keep(note, "material", stuff.print, of, i, i + 1, sure);
    if (n < 2 || !token_among(&note->tokens, i + n - 1, plain, COUNT(plain))) return;
    if (word_at(note, i + n - 1, 1u << USE_MATERIAL, &stuff) == 1)
        value_keep(note, "material", stuff.print, of, i + n - 1, i + n, sure);
}

// "Marked with a lion and an anchor": a maker's device, and nothing that the thing shows.
static bool is_device(const struct note *note, size_t i) {
    enum { FAR = 12 };
    const struct tokens *tokens = &note->tokens;
    for (size_t back = 1; back < FAR && back <= i && tokens->at[i - back].stop == STOP_NONE; back++)
        if (ANY(tokens, i - back, "marked", "stamped", "hallmarked", "backstamped", "impressed", "mark",
                "hallmark"))
            return true;
    return false;
}

// "A bolt on a bit of wire", "tied with a length of cord": what somebody made do with, and no stuff of the
// thing.
static bool is_makeshift(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i < 3 || !token_is(tokens, i - 1, "of") ||
        !ANY(tokens, i - 2, "bit", "bits", "piece", "pieces", "length", "lengths", "scrap", "lump", "loop",
             "twist"))
        return false;
    size_t at = i - 2;
    while (at > 0 && ANY(tokens, at - 1, "a", "an", "the", "some", "old", "two", "odd", "small", "little"))
        at--;
    return at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           ANY(tokens, at - 1, "on", "with", "by", "using", "from", "in");
}

// "Hand coloured" and "hand colored", but not "hand stitched" and "hand sewn".
static bool same_stem(const char *a, const char *b) {
    enum { STEM = 2 };
    const char *last = strrchr(a, ' '), *other = strrchr(b, ' ');
    return !strncmp(last ? last + 1 : a, other ? other + 1 : b, STEM);
}

static void read_value(struct note *note, size_t i, size_t n, const struct word_entry *entry) {
    const char *of = NULL;
    if (n == 1 && ANY(&note->tokens, i, "copper", "silver", "pink", "gold", "canary", "ruby") &&
        ANY(&note->tokens, i + 1, "lustre", "luster")) { // a look of the glaze, and no copper
        value_keep(note, "technique", arena_format(note->arena, "%s lustre", note->tokens.at[i].fold), NULL,
                   i, i + 2, value_sure(note, i, i + 2));
        note_take(note, i, i + 1, TAKEN_VALUE);
        return;
    }
    enum word_use use = settle(note, i, i + n, entry);
    if (use == USE_COUNT || is_denied(note, i) || is_mended(note, i + n, entry) ||
        is_loosely_said(note, i, n))
        return;
    if (value_is_of_other(note, i, n, use) || is_makeshift(note, i)) return;
    size_t more = 0;
    const char *part = use == USE_MATERIAL || use == USE_COLOR ? parted_by(note, i + n, &more) : NULL;
    if (part) {
        value_keep(note, key_of(use), entry->print, part, i, i + n, value_sure(note, i, i + n));
        note_take(note, i, i + n + more, TAKEN_VALUE);
        return;
    }
    const struct token *first = &note->tokens.at[i];
    struct word_entry plural;
    if (use == USE_MATERIAL && n == 1 && first->one != first->fold &&
        !(wordbook_find(note->book, first->fold, strlen(first->fold), &plural) &&
          has_use(&plural, USE_MATERIAL)))
        return; // "laces", "coppers": goods, and no stuff
    if (value_is_idiom(note, i, n, use)) {
        if (token_is(&note->tokens, i, "crystal")) note_take(note, i, i + n, TAKEN_VALUE);
        return;
    }
    static const char *const sounds[] = {"rings", "reads", "sounds", "rang", "plays", "speaks",
                                         "dings", "look",  "looks",  "seem", "seems", "looked"};
    if (token_is(&note->tokens, i, "clear") && i > 0 &&
        token_among(&note->tokens, i - 1, sounds, COUNT(sounds)))
        return;                              // "rings clear"
    if (value_is_holder(note, i, n)) return; // "in a japanned tin"
    if (n == 1 && token_is(&note->tokens, i, "tin") &&
        ANY(&note->tokens, i + 1, "of", "says", "reads", "holds"))
        return; // "tin of buttons"
    if (ANY(&note->tokens, i, "number", "numbers") && i + 1 < note->tokens.count &&
        note->tokens.at[i + 1].kind == TOKEN_FIGURE)
        return;
    if (token_is(&note->tokens, i, "stamped") && (i == 0 || note->tokens.at[i - 1].stop != STOP_NONE) &&
        ANY(&note->tokens, i + 1, "with", "on", "in", "under"))
        return; // "stamped with a crown": a mark
    struct word_entry other;
    if (use == USE_TECHNIQUE && i > 0 && note->tokens.at[i - 1].capital &&
        note->tokens.at[i - 1].stop == STOP_NONE &&
        (note->taken[i - 1] == TAKEN_VALUE || note->taken[i - 1] == TAKEN_MARK) &&
        ANY(&note->tokens, i, "impressed", "stamped", "incised", "printed", "engraved", "embossed", "etched",
            "painted"))
        return; // "Bramley Works impressed": how the mark was made
    if (i > 0 && note->tokens.at[i - 1].kind == TOKEN_FIGURE && ANY(&note->tokens, i, "panel", "panels"))
        return;
    if (ANY(&note->tokens, i, "wood", "metal", "fabric", "leather", "stone", "cloth") &&
        ANY(&note->tokens, i + 1, "is", "was", "looks") && word_at(note, i + 2, 1u << USE_MATERIAL, &other))
        return; // "wood is ash"
    if (token_is(&note->tokens, i, "covered") && ANY(&note->tokens, i + 1, "in", "with", "by", "over", "all"))
        return; // no lid
    if (token_is(&note->tokens, i, "felt") && chunk_breaks(note, i + n) &&
        !(i > 0 && note->taken[i - 1] == TAKEN_VALUE))
        return; // by hand: "felt along the rim"
    if (use == USE_THEME) {
        if (token_is(&note->tokens, i, "stag") &&
            ANY(&note->tokens, i + 1, "handle", "handles", "grip", "scales")) {
            value_keep(note, "material", "stag horn", "handle", i, i + 1, value_sure(note, i, i + 1));
            note_take(note, i, i + 1, TAKEN_VALUE);
            return;
        }
        if (value_read_fruitwood(note, i, n) || value_read_flower_color(note, i, n)) return;
        if (ANY(&note->tokens, i + n, "effect", "skin", "grain", "hide", "type"))
            return; // "crocodile effect strap"
        if (token_is(&note->tokens, i, "couple") &&
            (token_is(&note->tokens, i + n, "of") || (i > 0 && token_is(&note->tokens, i - 1, "a"))))
            return;
        if (is_doer(note, i, i + n) || is_device(note, i)) return;
        if (has_use(entry, USE_PART) && i > 0 && note->taken[i - 1] == TAKEN_VALUE &&
            word_at(note, i - 1, 1u << USE_MATERIAL, &other) == 1)
            return; // "steel runners"
        if (!is_depicted(note, i, i + n)) return;
        struct word_entry borne; // "acorn finial": of the finial
        bool parted = word_at(note, i + n, 1u << USE_PART, &borne) > 0 && !standing_is_type(note, i + n) &&
                      note->tokens.at[i + n].stop == STOP_NONE;
        if (!parted || standing_of(note, i, i + n, &of) != STANDING_PART) of = NULL;
    } else if (standing_of(note, i, i + n, &of) == STANDING_NONE &&
               !(use == USE_MATERIAL && value_is_ground(note, i)))
        return;
    if (of && value_is_elsewhere(note, i, of)) return;
    enum sure sure =
        use == USE_MATERIAL && unsure_is_asked(note, i + n) ? SURE_GUESS : value_sure(note, i, i + n);
    if (use == USE_FINISH && n == 2) read_paint(note, i, of, sure);
    static const char *const looks[] = {"colored", "coloured"};
    // "Tortoise" is no turtle, "hand knotted" more than knotted, though one list has both
    bool own = use == USE_THEME || use == USE_TECHNIQUE || use == USE_STYLE || use == USE_PATTERN;
    const char *print = own                   ? word_own_name(note, entry)
                        : use == USE_MATERIAL ? word_trade_name(entry)
                                              : entry->print;
    enum { STEM = 5 };
    if (own && !strncmp(print, entry->print, STEM) && !(use == USE_THEME && strchr(print, ' ')) &&
        same_stem(print, entry->print))
        print = entry->print; // "stripes" are "striped"
    if (use == USE_TECHNIQUE && strlen(print) < strlen(entry->print)) print = entry->print; // "gilt": gilded
    if (use == USE_THEME) print = say_singular(note->arena, print);
    bool metal = n == 2 && is_metal_color(entry->print) &&
                 token_among(&note->tokens, i + 1, looks, COUNT(looks)); // "silver coloured"
    if (use == USE_COLOR &&
        (metal || (has_use(entry, USE_MATERIAL) && token_among(&note->tokens, i + n, looks, COUNT(looks)))))
        print = arena_format(note->arena, "%s-colored", print); // no gold, no ivory
    if (use != USE_MATERIAL || !read_two(note, i, n, of, sure))
        value_keep(note, key_of(use), print, of, i, i + n, sure);
    if (use == USE_TECHNIQUE) keep_stuff(note, i, n, of, sure);
    if (use == USE_FINISH && ANY(&note->tokens, i, "hammered", "engraved", "chased", "marbled"))
        value_keep(note, "technique", note->tokens.at[i].fold, of, i, i + 1, sure); // "hammered finish"
    if (use == USE_FINISH && n == 2 && ANY(&note->tokens, i + 1, "steel", "aluminum", "aluminium", "iron"))
        value_keep(note, "material", note->tokens.at[i + 1].fold, of, i + 1, i + 2, sure); // "brushed steel"
    note_take(note, i, i + n, TAKEN_VALUE);
    bool toned = use == USE_COLOR && ANY(&note->tokens, i + n, "colored", "coloured", "colour", "color");
    if (toned && note_free(note, i + n, i + n + 1)) note_take(note, i + n, i + n + 1, TAKEN_FILLER);
}

static bool ends_type(const struct note *note, const char *word) {
    const char *type = note->record->type.value;
    size_t a = strlen(type), b = strlen(word);
    return a >= b && text_same(type + a - b, word);
}

// "Wool" of "wool blanket", "frog" of a tin frog: also said of the thing.
static void read_type_words(struct note *note) {
    struct word_entry entry;
    for (size_t i = 0; i < note->tokens.count; i++) {
        if (note->taken[i] != TAKEN_TYPE) continue;
        bool last = i + 1 >= note->tokens.count || note->taken[i + 1] != TAKEN_TYPE;
        bool metal =
            last && i > 0 && ANY(&note->tokens, i, "brass", "copper", "pewter", "bronze"); // "horse brass"
        uint32_t uses = last && !metal ? 1u << USE_THEME : (1u << USE_MATERIAL) | (1u << USE_TECHNIQUE);
        size_t n = value_read_shown_by_name(note, i);
        if (n) {
            i += n - 1;
            continue;
        }
        n = word_at(note, i, uses, &entry);
        struct noun_found noun;
        bool goods = last && noun_at(note, i, &noun) && (noun.thing || !noun.gated);
        if (metal && n) goods = false;
        if (!n || goods || (last && !ends_type(note, entry.print))) continue;
        if (last && i > 0 && note->taken[i - 1] == TAKEN_TYPE && noun_at(note, i - 1, &noun) &&
            noun.to == i + 1 && noun.thing)
            continue;                                                  // "hall tree"
        if (!last && ANY(&note->tokens, i, "card", "cards")) continue; // "card game"
        if (!last && (value_is_worked(note, i, n) || value_is_all_of_type(note, i, n))) continue;
        enum word_use use = metal ? USE_MATERIAL : last ? USE_THEME : settle(note, i, i + n, &entry);
        if (use == USE_COUNT || value_is_idiom(note, i, n, use)) continue;
        bool asked = use == USE_MATERIAL && unsure_is_asked(note, i + n);
        value_keep(note, key_of(use), entry.print, NULL, i, i + n,
                   asked ? SURE_GUESS : value_sure(note, i, i + n));
        i += n - 1;
    }
}

// "Speckled grey plate", "blue enamel chipped": a word of a fault that here is a look or a material.
static bool is_made_so(const struct note *note, size_t i, size_t n, const struct word_entry *entry) {
    static const uint32_t looks = (1u << USE_PATTERN) | (1u << USE_FINISH) | (1u << USE_TECHNIQUE);
    const char *of;
    struct word_entry next;
    static const char *const coats[] = {"glaze", "varnish", "lacquer", "paint", "plating", "gilding", "gilt"};
    if (n == 1 && token_among(&note->tokens, i, coats, COUNT(coats))) return false; // "glaze crazed"
    if (has_use(entry, USE_COLOR) && (standing_is_paint(note, i + n) || standing_painted(note, i)))
        return true;
    if (n > 1 && has_use(entry, USE_FINISH) && standing_painted(note, i + 1)) return true; // "painted green"
    const struct family *of_clay = note->record->family; // "speckled brown all over" of a pot
    if (has_use(entry, USE_COLOR) && i > 0 && ANY(&note->tokens, i - 1, "speckled", "mottled", "flecked") &&
        of_clay && strstr("ceramics kitchenware", of_clay->rule.id))
        return true;
    if (n > 1 && has_use(entry, USE_COLOR) && ANY(&note->tokens, i, "dark", "light", "pale")) return true;
    // "Blue speckled, tall": a look with its color
    struct word_entry look;
    size_t said = i + n;
    if (has_use(entry, USE_COLOR) && said < note->tokens.count && note->tokens.at[i].stop == STOP_NONE &&
        (n = word_at(note, said, looks, &look)) > 0 && chunk_breaks(note, said + n))
        return true;
    n = said - i;
    if (entry->uses & looks && i > 0 && n == 1 && chunk_breaks(note, said) &&
        note->tokens.at[i - 1].stop == STOP_NONE && word_at(note, i - 1, 1u << USE_COLOR, &look) == 1)
        return true;
    const struct family *family = of_clay; // "enamel, speckled"
    if (entry->uses & looks && i > 0 && n == 1 && note->tokens.at[i - 1].stop != STOP_NONE &&
        standing_is_stop(note, said) && ANY(&note->tokens, i, "speckled", "mottled", "flecked") && family &&
        (text_same(family->rule.id, "ceramics") || text_same(family->rule.id, "kitchenware")))
        return true;
    struct word_entry stuff, part; // "worn gold damask", "black metal frame"
    size_t more = has_use(entry, USE_COLOR) && note->tokens.at[i].stop == STOP_NONE
                      ? word_at(note, i + n, 1u << USE_MATERIAL, &stuff)
                      : 0;
    // "Leather straps brittle": the fault is of the straps
    if (has_use(entry, USE_MATERIAL) && note->tokens.at[i].stop == STOP_NONE &&
        word_at(note, i + n, 1u << USE_PART, &part))
        return true;
    if (more && (!note->fault_word[i + n] || word_at(note, i + n + more, 1u << USE_PART, &part))) return true;
    if (n > 1 && has_use(entry, USE_MATERIAL) && token_is(&note->tokens, i, "split"))
        return true; // "split cane"
    if (entry->uses & (1u << USE_MATERIAL) && i + n < note->tokens.count && note->fault_word[i + n]) {
        const char *word = note->tokens.at[i + n].fold;
        size_t size = strlen(word);
        return size > 3 && text_same(word + size - 2, "ed");
    }
    if (!(entry->uses & looks) || standing_of(note, i, i + n, &of) != STANDING_THING) return false;
    size_t at = next_word(note, i + n);
    return at < note->tokens.count &&
           (ANY(&note->tokens, at, "view", "glaze") || note->taken[at] == TAKEN_TYPE ||
            word_at(note, at, standing_uses, &next) > 0);
}

void read_values(struct note *note) {
    struct word_entry entry;
    read_type_words(note);
    value_read_audience(note);
    value_read_patent(note);
    value_read_forms(note);
    value_read_likened(note);
    value_read_shown(note);
    value_read_men(note);
    for (size_t i = 0; i < note->tokens.count; i++) {
        if (note->taken[i] != TAKEN_NOT) continue;
        size_t n = word_at(note, i, standing_uses, &entry);
        if (!n || !note_free(note, i, i + n)) continue;
        if (note->fault_word[i] && !is_made_so(note, i, n, &entry)) continue;
        if (value_is_beside(note, i, n)) continue;
        if (!value_read_plates(note, i, n) && !value_read_cloth_color(note, i, n) &&
            !value_read_fruit(note, i))
            read_value(note, i, n, &entry);
        i += n - 1;
    }
    value_read_stuffs(note);
}
