// SPDX-License-Identifier: MIT
// The schema table. To add a key: a field in model.h and a row here. To add a kind: a struct, a row in
// `kinds`, its keys.
#include "rules/schema.h"

#include <string.h>

#include "rules/model.h"
#include "text/order.h"

#define AT(type, field) .offset = offsetof(struct type, field)
#define CHOICES(list, from) .choices = (list), .first = (from)
#define END                                                                                                  \
    { .name = NULL }

static const char *const class_words[] = {"function", "damage", "missing", "repair", "dirt",
                                          "odor",     "status", "feature", NULL};
static const char *const form_words[] = {"fault", "absence", "state", NULL};
static const char *const duty_words[] = {"no", "if-heavy", "should", "must", NULL};
static const char *const rollup_words[] = {"repair", "damaged", "incomplete", NULL};
static const char *const yes_words[] = {"fault", "clear", NULL};
static const char *const degree_words[] = {"size", "amount", "extent", "strength", "stiff", NULL};
static const char *const grade_words[] = {"A", "B", "C", "D", NULL};
static const char *const sure_words[] = {"firm", "usual", "memory", NULL};
static const char *const reads_words[] = {"year", "number", "book-number", "bar-code", "diamond", NULL};
static const char *const verdict_words[] = {"allow", "qualify", "ask", "refuse", NULL};

// Every kind begins with a struct rule named `rule`, so these rows fit all of them.
#define RULE_KEYS                                                                                            \
    {.name = "why", .type = KEY_TEXT, AT(rule, why), .help = "why the rule is there, spoken to the seller"}, \
        {.name = "source", .type = KEY_TEXT, AT(rule, source), .help = "where a stated fact comes from"}, {  \
        .name = "gaps", .type = KEY_TEXTS, AT(rule, gaps),                                                   \
        .help = "what comes out wrong today: a text with the match in brackets that is not found yet, or "   \
                "one without "                                                                               \
                "brackets that is found and should not be"                                                   \
    }
#define FINDER_KEYS(kind, need)                                                                              \
    {.name = "said",                                                                                         \
     .type = KEY_TEXTS,                                                                                      \
     .required = (need),                                                                                     \
     AT(kind, finder.said),                                                                                  \
     .help = "words and phrases that name it, whole words, any case"},                                       \
        {.name = "unless",                                                                                   \
         .type = KEY_TEXTS,                                                                                  \
         AT(kind, finder.unless),                                                                            \
         .help = "phrases that hold such a word and mean something else"},                                   \
        {.name = "match",                                                                                    \
         .type = KEY_TEXTS,                                                                                  \
         AT(kind, finder.match),                                                                             \
         .help = "PCRE2 patterns where plain words do not do"},                                              \
        {.name = "match_on",                                                                                 \
         .type = KEY_TEXTS,                                                                                  \
         AT(kind, finder.match_on),                                                                          \
         .help = "words of which one stands wherever a pattern of `match` can; without them it is always "   \
                 "tried"},                                                                                   \
        {.name = "hits",                                                                                     \
         .type = KEY_TEXTS,                                                                                  \
         AT(kind, rule.hits),                                                                                \
         .help = "texts it must find, the match in brackets"},                                               \
    {                                                                                                        \
        .name = "misses", .type = KEY_TEXTS, AT(kind, rule.misses),                                          \
        .help = "texts it must leave alone, best with a word of `said` in them"                              \
    }

static const struct key_spec scale_keys[] = {
    {.name = "light", .type = KEY_TEXT, AT(flaw, scale[SEVERITY_LIGHT]), .help = "what counts as light"},
    {.name = "moderate",
     .type = KEY_TEXT,
     AT(flaw, scale[SEVERITY_MODERATE]),
     .help = "what counts as moderate"},
    {.name = "heavy", .type = KEY_TEXT, AT(flaw, scale[SEVERITY_HEAVY]), .help = "what counts as heavy"},
    END};
#define CAP(word, severity)                                                                                  \
    {                                                                                                        \
        .name = (word), .type = KEY_CHOICE, .required = true, AT(flaw, cap[severity]),                       \
        CHOICES(grade_words, GRADE_A), .help = "best grade that a " word " fault leaves"                     \
    }
static const struct key_spec cap_keys[] = {CAP("light", SEVERITY_LIGHT), CAP("moderate", SEVERITY_MODERATE),
                                           CAP("heavy", SEVERITY_HEAVY), END};
static const struct key_spec tells_keys[] = {
    {.name = "light",
     .type = KEY_TEXTS,
     AT(flaw, tells[SEVERITY_LIGHT]),
     .help = "words beside the fault that tell of a light one"},
    {.name = "moderate", .type = KEY_TEXTS, AT(flaw, tells[SEVERITY_MODERATE]), .help = "of a moderate one"},
    {.name = "heavy",
     .type = KEY_TEXTS,
     AT(flaw, tells[SEVERITY_HEAVY]),
     .help = "of a heavy one; where words of two degrees stand, the heavier counts"},
    END};
static const struct key_spec adjective_keys[] = {
    {.name = "light", .type = KEY_TEXT, AT(flaw, adjective_at[SEVERITY_LIGHT]), .help = "as in 'stiff'"},
    {.name = "moderate",
     .type = KEY_TEXT,
     AT(flaw, adjective_at[SEVERITY_MODERATE]),
     .help = "as in 'very stiff'"},
    {.name = "heavy", .type = KEY_TEXT, AT(flaw, adjective_at[SEVERITY_HEAVY]), .help = "as in 'seized'"},
    END};
static const struct key_spec title_keys[] = {
    {.name = "duty",
     .type = KEY_CHOICE,
     .required = true,
     AT(flaw, duty),
     CHOICES(duty_words, DUTY_NO),
     .help = "whether the title has to tell it"},
    {.name = "rollup",
     .type = KEY_CHOICE,
     AT(flaw, rollup),
     CHOICES(rollup_words, ROLLUP_REPAIR),
     .help = "shared short wording that may stand in where space is short"},
    {.name = "words",
     .type = KEY_TEXTS,
     AT(flaw, title),
     .help = "title wordings, best first, with {at} {part} …"},
    {.name = "part", .type = KEY_TEXTS, AT(flaw, title_part), .help = "title wordings where a part is named"},
    {.name = "implied_by",
     .type = KEY_TEXTS,
     AT(flaw, implied_by),
     .help = "ids of flaws that tell it too, and more; beside them it needs no words of its own"},
    {.name = "beside",
     .type = KEY_TEXTS,
     AT(flaw, beside),
     .help = "ids of flaws that tell a part of it; beside them its words are `beside_words`"},
    {.name = "beside_words",
     .type = KEY_TEXTS,
     AT(flaw, title_beside),
     .help = "title wordings beside a flaw of `beside`, which leave out what that one says"},
    END};

static const struct key_spec telling_keys[] = {
    {.name = "said",
     .type = KEY_TEXTS,
     .required = true,
     AT(flaw, finder.said),
     .help = "words of the seller that call for it"},
    {.name = "noun", .type = KEY_TEXT, AT(flaw, noun), .help = "as in 'a bend'"},
    {.name = "plural", .type = KEY_TEXT, AT(flaw, plural), .help = "where irregular"},
    {.name = "mass", .type = KEY_YES_NO, AT(flaw, mass), .help = "takes no article and no number"},
    {.name = "many", .type = KEY_YES_NO, AT(flaw, many), .help = "told in the plural without a number"},
    {.name = "adjective", .type = KEY_TEXT, AT(flaw, adjective), .help = "as in 'bent'"},
    {.name = "adjectives",
     .type = KEY_GROUP,
     .keys = adjective_keys,
     .help = "where a degree has a word of its own"},
    {.name = "degree",
     .type = KEY_CHOICE,
     AT(flaw, degree),
     CHOICES(degree_words, DEGREE_SIZE),
     .help = "which words tell light and heavy"},
    {.name = "says", .type = KEY_TEXT, AT(flaw, says), .help = "form state: its predicate"},
    {.name = "says_part", .type = KEY_TEXT, AT(flaw, says_part), .help = "the same of a part"},
    {.name = "words", .type = KEY_TEXTS, AT(flaw, title), .help = "title wordings, best first"},
    {.name = "part", .type = KEY_TEXTS, AT(flaw, title_part), .help = "title wordings where a part is named"},
    END};

static const struct key_spec flaw_keys[] = {
    {.name = "class",
     .type = KEY_CHOICE,
     .required = true,
     AT(flaw, class),
     CHOICES(class_words, CLASS_FUNCTION),
     .help = "what sort of flaw; status and feature lower no grade"},
    {.name = "form",
     .type = KEY_CHOICE,
     .required = true,
     AT(flaw, form),
     CHOICES(form_words, FAULT),
     .help = "how it is put in words: a fault somewhere, a part that is absent, a state of the thing"},
    {.name = "print", .type = KEY_TEXT, .required = true, AT(flaw, print), .help = "the trade's term"},
    {.name = "means",
     .type = KEY_TEXT,
     .required = true,
     AT(flaw, means),
     .help = "what it is, in one sentence"},
    {.name = "noun", .type = KEY_TEXT, AT(flaw, noun), .help = "form fault: as in 'a chip'"},
    {.name = "plural",
     .type = KEY_TEXT,
     AT(flaw, plural),
     .help = "where the rule for plurals does not give it"},
    {.name = "mass", .type = KEY_YES_NO, AT(flaw, mass), .help = "takes no article and no number: 'rust'"},
    {.name = "adjective",
     .type = KEY_TEXT,
     AT(flaw, adjective),
     .help = "form fault: as in 'the rim is chipped'"},
    {.name = "adjectives",
     .type = KEY_GROUP,
     .keys = adjective_keys,
     .help = "where a degree has a word of its own"},
    {.name = "degree",
     .type = KEY_CHOICE,
     AT(flaw, degree),
     CHOICES(degree_words, DEGREE_SIZE),
     .help = "which words tell light and heavy"},
    {.name = "part",
     .type = KEY_TEXT,
     AT(flaw, part),
     .help = "form absence: what is missing, unless a part is named"},
    {.name = "part_plural", .type = KEY_TEXT, AT(flaw, part_plural), .help = "its plural where irregular"},
    {.name = "many",
     .type = KEY_YES_NO,
     AT(flaw, many),
     .help = "told in the plural where no number is given"},
    {.name = "gathers",
     .type = KEY_YES_NO,
     AT(flaw, gathers),
     .help = "several kinds of damage under one name: a denial of one of them is told as that one"},
    {.name = "says",
     .type = KEY_TEXT,
     AT(flaw, says),
     .help = "form state: the predicate, beginning with {is}, {has} or {was}"},
    {.name = "says_part",
     .type = KEY_TEXT,
     AT(flaw, says_part),
     .help = "the same of a part, where it differs"},
    {.name = "sought",
     .type = KEY_TEXT,
     AT(flaw, sought),
     .help = "as in 'No … seen' and 'Not checked for …', where the noun does not do"},
    {.name = "scale",
     .type = KEY_GROUP,
     .required = true,
     .keys = scale_keys,
     .help = "what each degree means here"},
    {.name = "cap",
     .type = KEY_GROUP,
     .required = true,
     .keys = cap_keys,
     .help = "best grade at each degree"},
    {.name = "tells",
     .type = KEY_GROUP,
     .keys = tells_keys,
     .help = "words in a note that place the fault on its scale"},
    {.name = "title", .type = KEY_GROUP, .required = true, .keys = title_keys, .help = "its place in titles"},
    {.name = "spoken",
     .type = KEY_TEXTS,
     AT(flaw, spoken),
     .help = "patterns of words in notes: 'a|b' is one of them, '-' among them lets it be skipped, '~' is up "
             "to three words of any kind"},
    {.name = "spoken_on",
     .type = KEY_TEXTS,
     AT(flaw, spoken_on),
     .help = "the same, naming it only where `on` fits the thing"},
    {.name = "alone",
     .type = KEY_TEXTS,
     AT(flaw, alone),
     .help = "words that name it where they are all that a clause says of the thing ('dull', 'it is a bit "
             "dull'), and `on` fits the thing"},
    {.name = "off",
     .type = KEY_TEXTS,
     AT(flaw, off),
     .help = "families that it never occurs on; what `on` names brings it back"},
    {.name = "as_said",
     .type = KEY_ITEMS,
     AT(flaw, tellings),
     .count_offset = offsetof(struct flaw, telling_count),
     .keys = telling_keys,
     .size = sizeof(struct flaw),
     .help = "the words it is told with where the notes name one of the several things it may be"},
    {.name = "near",
     .type = KEY_TEXTS,
     AT(flaw, near),
     .help = "two groups of words parted by ' / ': one of each, near in a clause of a note, is the flaw; "
             "{no} stands for the words of denial, {on} makes it count only where `on` fits, {then} keeps "
             "the order"},
    {.name = "sound",
     .type = KEY_TEXTS,
     AT(flaw, sound),
     .help = "what a seller says who found it right: phrases, or two groups of words parted by ' / ' close "
             "together; it is then told as not there"},
    {.name = "narrows",
     .type = KEY_TEXTS,
     AT(flaw, narrows),
     .help = "flaw ids that are of this kind on the materials under `on`"},
    {.name = "within",
     .type = KEY_TEXTS,
     AT(flaw, within),
     .help = "parts on which the flaws under `narrows` are of this kind, whatever the material"},
    {.name = "parts", .type = KEY_TEXTS, AT(flaw, parts), .help = "where it usually is"},
    {.name = "on", .type = KEY_TEXTS, AT(flaw, on), .help = "materials and families where it occurs"},
    {.name = "ask",
     .type = KEY_TEXTS,
     .required = true,
     AT(flaw, ask),
     .help = "what to find out, first things first"},
    {.name = "photo",
     .type = KEY_TEXT,
     .required = true,
     AT(flaw, photo),
     .help = "the picture that shows it"},
    {.name = "caution", .type = KEY_TEXT, AT(flaw, caution), .help = "health, safety or law"},
    {.name = "not", .type = KEY_TEXTS, AT(flaw, confused), .help = "ids easily taken for it"},
    FINDER_KEYS(flaw, true),
    RULE_KEYS,
    END};

static const struct key_spec shape_keys[] = {{.name = "words",
                                              .type = KEY_SLOTS,
                                              .required = true,
                                              AT(wording_shape, words),
                                              .help = "slots whose words it takes"},
                                             {.name = "weight",
                                              .type = KEY_WHOLE,
                                              .required = true,
                                              AT(wording_shape, weight),
                                              .help = "what answering it earns"},
                                             END};
static const struct key_spec want_keys[] = {
    {.name = "want", .type = KEY_TEXT, .required = true, AT(want_shape, id), .help = "name of the want"},
    {.name = "wordings",
     .type = KEY_ITEMS,
     .required = true,
     AT(want_shape, shapes),
     .count_offset = offsetof(struct want_shape, count),
     .keys = shape_keys,
     .size = sizeof(struct wording_shape),
     .help = "searches for it; a title is paid for the best it answers"},
    END};
static const struct key_spec thing_keys[] = {
    {.name = "noun",
     .type = KEY_TEXT,
     .required = true,
     AT(thing, noun),
     .help = "singular, as buyers type it"},
    {.name = "plural", .type = KEY_TEXT, AT(thing, plural), .help = "where irregular"},
    {.name = "also", .type = KEY_TEXTS, AT(thing, also), .help = "other names of the same thing"},
    {.name = "pair", .type = KEY_YES_NO, AT(thing, pair), .help = "one item although plural in form"},
    END};
#define CONCERNS(what)                                                                                       \
    {.name = "about", .type = KEY_TEXTS, AT(what, about), .help = "only where the record has such a word"},  \
    {                                                                                                        \
        .name = "never", .type = KEY_TEXTS, AT(what, never), .help = "not where the record has such a word"  \
    }
static const struct key_spec check_keys[] = {
    {.name = "check", .type = KEY_TEXT, .required = true, AT(check, id), .help = "id within the family"},
    {.name = "ask", .type = KEY_TEXT, .required = true, AT(check, ask), .help = "what a buyer would ask"},
    {.name = "flaws", .type = KEY_TEXTS, AT(check, flaws), .help = "flaw ids that answer it, also denied"},
    {.name = "yes",
     .type = KEY_CHOICE,
     AT(check, yes),
     CHOICES(yes_words, YES_FAULT),
     .help = "what a yes says: that a flaw is there (fault) or that none is (clear)"},
    {.name = "facts", .type = KEY_TEXTS, AT(check, facts), .help = "dimensions, attributes, keys that do"},
    CONCERNS(check),
    END};
static const struct key_spec photo_keys[] = {
    {.name = "shows", .type = KEY_TEXT, .required = true, AT(photo_wish, shows), .help = "what is on it"},
    {.name = "flaws", .type = KEY_TEXTS, AT(photo_wish, flaws), .help = "flaw ids that it would prove"},
    CONCERNS(photo_wish),
    END};
static const struct key_spec example_keys[] = {
    {.name = "record", .type = KEY_RECORD, .required = true, AT(family, example), .help = "an item record"},
    {.name = "title",
     .type = KEY_TEXT,
     .required = true,
     AT(family, example_title),
     .help = "the title it must get"},
    END};
#define ITEMS(kind, field, number, spec, element)                                                            \
    .type = KEY_ITEMS, AT(kind, field), .count_offset = offsetof(struct kind, number), .keys = (spec),       \
    .size = sizeof(struct element)

static const struct key_spec family_keys[] = {
    {.name = "print", .type = KEY_TEXT, .required = true, AT(family, print), .help = "its name in words"},
    {.name = "order",
     .type = KEY_SLOTS,
     .required = true,
     AT(family, order),
     .help = "title slots from left to right"},
    {.name = "tells",
     .type = KEY_TELLS,
     AT(family, tells),
     .help = "what a buyer must know, searched for or not"},
    {.name = "wants",
     .required = true,
     ITEMS(family, wants, want_count, want_keys, want_shape),
     .help = "what buyers look for"},
    {.name = "things",
     .required = true,
     ITEMS(family, things, thing_count, thing_keys, thing),
     .help = "nouns of the family"},
    {.name = "checks",
     .required = true,
     ITEMS(family, checks, check_count, check_keys, check),
     .help = "what to inspect and what buyers ask"},
    {.name = "photos",
     .required = true,
     ITEMS(family, photos, photo_count, photo_keys, photo_wish),
     .help = "pictures that the family calls for"},
    {.name = "areas",
     .type = KEY_TEXTS,
     AT(family, areas),
     .help = "places that are told as not described where a record says nothing of them"},
    {.name = "measures",
     .type = KEY_TEXTS,
     .required = true,
     AT(family, measures),
     .help = "dimensions to give"},
    {.name = "default_dimension",
     .type = KEY_TEXT,
     AT(family, default_dimension),
     .help = "what a bare figure means"},
    {.name = "short",
     .type = KEY_PAIRS,
     AT(family, shorts),
     .count_offset = offsetof(struct family, short_count),
     .size = sizeof(struct short_form),
     .help = "the trade's abbreviations and what they mean"},
    {.name = "flaw_words",
     .type = KEY_PAIRS,
     AT(family, flaw_words),
     .size = sizeof(struct short_form),
     .count_offset = offsetof(struct family, flaw_word_count),
     .help = "title words that this family has for a flaw: {untested: Not Played}"},
    {.name = "avoid", .type = KEY_TEXTS, AT(family, avoid), .help = "words read in notes and never printed"},
    {.name = "example",
     .type = KEY_GROUP,
     .keys = example_keys,
     .help = "a record and the title it must get"},
    RULE_KEYS,
    END};

static const struct key_spec claim_keys[] = {
    {.name = "verdict",
     .type = KEY_CHOICE,
     .required = true,
     AT(claim, verdict),
     CHOICES(verdict_words, VERDICT_ALLOW),
     .help = "what happens without the evidence"},
    {.name = "evidence",
     .type = KEY_TEXTS,
     AT(claim, evidence.match),
     .help = "patterns on marks that allow the word"},
    {.name = "at_least",
     .type = KEY_WHOLE,
     AT(claim, at_least),
     .help = "years of age, shown by dates or marks, that allow the word"},
    {.name = "more_than",
     .type = KEY_WHOLE,
     AT(claim, more_than),
     .help = "the same where the age must be exceeded"},
    {.name = "from_year",
     .type = KEY_YEAR,
     AT(claim, from_year),
     .help = "first year of the era; years within it allow the word"},
    {.name = "to_year", .type = KEY_YEAR, AT(claim, to_year), .help = "last year of the era"},
    {.name = "instead", .type = KEY_TEXT, AT(claim, instead), .help = "the honest wording to offer"},
    {.name = "writes",
     .type = KEY_PAIRS,
     AT(claim, writes),
     .count_offset = offsetof(struct claim, write_count),
     .size = sizeof(struct short_form),
     .help = "what a word of it becomes where it is told with its qualifier: {fur: used fur}"},
    {.name = "marked",
     .type = KEY_TEXTS,
     AT(claim, marked.match),
     .help = "patterns on marks that call for the words of 'marked_writes'"},
    {.name = "marked_writes",
     .type = KEY_PAIRS,
     AT(claim, marked_writes),
     .count_offset = offsetof(struct claim, marked_count),
     .size = sizeof(struct short_form),
     .help = "the same as 'writes' beside such a mark: {silver: silver plated}"},
    {.name = "color_writes",
     .type = KEY_PAIRS,
     AT(claim, color_writes),
     .count_offset = offsetof(struct claim, color_count),
     .size = sizeof(struct short_form),
     .help = "the same where the record has the word as a color: {gold: gold tone}"},
    FINDER_KEYS(claim, true),
    RULE_KEYS,
    END};

static const struct key_spec bound_keys[] = {
    {.name = "not_before", .type = KEY_YEAR, AT(bound, not_before), .help = "first year of such marks"},
    {.name = "not_after",
     .type = KEY_YEAR,
     AT(bound, not_after),
     .help = "last year of such marks; old molds and stock run on, so it only questions"},
    {.name = "sure",
     .type = KEY_CHOICE,
     .required = true,
     AT(bound, sure),
     CHOICES(sure_words, BOUND_FIRM),
     .help = "how sure the years are; what is only remembered is told and narrows nothing"},
    {.name = "reads",
     .type = KEY_CHOICE,
     AT(bound, reads),
     CHOICES(reads_words, READS_YEAR),
     .help = "what of the years is read out of the words found"},
    {.name = "steps",
     .type = KEY_PAIRS,
     AT(bound, steps),
     .size = sizeof(struct short_form),
     .count_offset = offsetof(struct bound, step_count),
     .help = "with reads number: the first number of a year, and the year: {'1000000': '1911'}"},
    {.name = "text", .type = KEY_TEXT, .required = true, AT(bound, text), .help = "how it is told"},
    FINDER_KEYS(bound, false),
    RULE_KEYS,
    END};

static const struct key_spec caution_keys[] = {
    {.name = "text",
     .type = KEY_TEXT,
     .required = true,
     AT(caution, text),
     .help = "what to look for and why; ends by deferring to local rules or a licensed person"},
    {.name = "stop",
     .type = KEY_YES_NO,
     AT(caution, stop),
     .help = "such goods are not listed: title and description stay empty"},
    {.name = "history",
     .type = KEY_YES_NO,
     AT(caution, history),
     .help = "raised by what befell the goods: notes that tell of other things than the goods count too"},
    {.name = "shown",
     .type = KEY_YES_NO,
     AT(caution, shown),
     .help = "a picture of it, or a book about it, raises it as the thing itself does"},
    {.name = "residue",
     .type = KEY_YES_NO,
     AT(caution, residue),
     .help = "raised by what was once kept in it, of which enough is left behind"},
    {.name = "signs",
     .type = KEY_TEXTS,
     AT(caution, signs),
     .help = "words that raise it together: 'a|b / c' are one of each near in a sentence, ' // ' parts what "
             "may stand anywhere in the note, '!' leads words that may not stand there"},
    {.name = "things",
     .type = KEY_TEXTS,
     AT(caution, things),
     .help = "nouns that raise it where they are the type, what else it may be, or included"},
    {.name = "flaws", .type = KEY_TEXTS, AT(caution, flaws), .help = "flaw ids that raise it"},
    {.name = "on", .type = KEY_TEXTS, AT(caution, on), .help = "family ids; none: all of them"},
    {.name = "with",
     .type = KEY_TEXTS,
     AT(caution, with.said),
     .help = "words of which one must stand in the record too"},
    FINDER_KEYS(caution, true),
    RULE_KEYS,
    END};

static const struct key_spec group_keys[] = {
    {.name = "means",
     .type = KEY_TEXT,
     .required = true,
     AT(word_group, means),
     .help = "what they say, or are"},
    {.name = "are",
     .type = KEY_TEXTS,
     .required = true,
     AT(word_group, are),
     .help = "its members, of one word or several; 'a|b' is one of some, '-' among them may be skipped"},
    {.name = "with",
     .type = KEY_TEXTS,
     AT(word_group, with),
     .help = "ids of groups whose members are its own too; they have no 'with' themselves"},
    RULE_KEYS,
    END};

static const struct key_spec pack_keys[] = {
    {.name = "version", .type = KEY_TEXT, .required = true, AT(pack, version), .help = "of the pack"},
    {.name = "flaws", .type = KEY_WHOLE, AT(pack, flaws), .help = "how many flaw rules it holds"},
    {.name = "families", .type = KEY_WHOLE, AT(pack, families), .help = "how many family rules it holds"},
    {.name = "claims", .type = KEY_WHOLE, AT(pack, claims), .help = "how many claim rules it holds"},
    {.name = "bounds", .type = KEY_WHOLE, AT(pack, bounds), .help = "how many bound rules it holds"},
    {.name = "cautions", .type = KEY_WHOLE, AT(pack, cautions), .help = "how many caution rules it holds"},
    {.name = "groups", .type = KEY_WHOLE, AT(pack, groups), .help = "how many group rules it holds"},
    RULE_KEYS,
    END};

static const struct kind_spec kinds[RULE_KIND_COUNT] = {
    [RULE_PACK] = {"pack", sizeof(struct pack), false, pack_keys,
                   "what a folder of rules is and how many it holds"},
    [RULE_FLAW] = {"flaw", sizeof(struct flaw), true, flaw_keys, "one kind of fault, loss, repair or state"},
    [RULE_FAMILY] = {"family", sizeof(struct family), false, family_keys,
                     "one family of goods and how it is listed"},
    [RULE_CLAIM] = {"claim", sizeof(struct claim), true, claim_keys, "a word that promises something"},
    [RULE_BOUND] = {"bound", sizeof(struct bound), true, bound_keys,
                    "a mark and the years in which such marks were used"},
    [RULE_CAUTION] = {"caution", sizeof(struct caution), true, caution_keys,
                      "what safety or law asks of a seller of such goods"},
    [RULE_GROUP] = {"group", sizeof(struct word_group), false, group_keys,
                    "words that mean the same, for '@id' in patterns of 'spoken'"},
};

const struct kind_spec *schema_kind(enum rule_kind kind) {
    return &kinds[kind];
}

const struct kind_spec *schema_kind_of_name(const char *name, enum rule_kind *kind) {
    for (int i = 0; i < RULE_KIND_COUNT; i++)
        if (text_same(kinds[i].name, name)) {
            *kind = (enum rule_kind)i;
            return &kinds[i];
        }
    return NULL;
}
