// SPDX-License-Identifier: MIT
// Number of one word. Endings come first, then the lists of nouns.h for what endings do not tell.
// Invariant: a rule sees lower-case ASCII; what it changes at the end of the word is put back in the word's
// own capitals.
#include "say/inflect.h"

#include <string.h>

#include "say/nouns.h"
#include "text/order.h"

enum { FORM_ROOM = INFLECT_LONGEST + 16 }; // an ending grows a word by less than ten bytes

struct form {
    char text[FORM_ROOM];
    size_t size;
};

static bool is_upper(char c) {
    return c >= 'A' && c <= 'Z';
}
static bool is_lower(char c) {
    return c >= 'a' && c <= 'z';
}
static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
static bool is_vowel(char c) {
    return c && strchr("aeiou", c) != NULL;
}

static struct form form_lower(const char *word, size_t size) {
    struct form form = {.size = size};
    for (size_t i = 0; i < size; i++)
        form.text[i] = is_upper(word[i]) ? (char)(word[i] + ('a' - 'A')) : word[i];
    return form;
}

static inline bool ends_in(const struct form *form, const char *ending, size_t size) {
    return form->size >= size && form->text[form->size - 1] == ending[size - 1] &&
           !memcmp(form->text + form->size - size, ending, size);
}
#define ends(form, ending) ends_in(form, "" ending, sizeof ending - 1)

// Takes `drop` bytes off the end and puts `ending` there.
static void change(struct form *form, size_t drop, const char *ending) {
    form->size -= drop;
    memcpy(form->text + form->size, ending, strlen(ending) + 1);
    form->size += strlen(ending);
}

// Whether the word less its last `drop` bytes stands in a list.
static bool stem_in(const struct form *form, size_t drop, enum noun_kind kind) {
    struct form stem = *form;
    change(&stem, drop, "");
    return nouns_has(kind, stem.text);
}

static bool is_unchanging(const struct form *form) {
    char last = form->size ? form->text[form->size - 1] : '\0';
    bool word = is_lower(last) || is_digit(last) || (unsigned char)last >= 0x80;
    if (!word || ends(form, "'s")) return true; // an owner, or no word at all
    return nouns_has(NOUNS_PLURAL_ONLY, form->text) || nouns_has(NOUNS_MASS, form->text) ||
           (form->size > 4 && ends(form, "ware"));
}

static void to_plural(struct form *form) {
    const struct noun_pair *pair = nouns_of_singular(form->text);
    if (pair) {
        change(form, form->size, pair->plural);
        return;
    }
    size_t count;
    const struct noun_ending *endings = nouns_endings(&count);
    for (size_t i = 0; i < count; i++)
        if (ends_in(form, endings[i].pair.singular, endings[i].singular)) {
            change(form, endings[i].singular, endings[i].pair.plural);
            return;
        }
    if (form->size > 3 && ends(form, "man") && !nouns_has(NOUNS_MAN, form->text))
        change(form, 2, "en");
    else if (nouns_has(NOUNS_OES, form->text))
        change(form, 0, "es");
    else if (nouns_has(NOUNS_ZZ, form->text))
        change(form, 0, "zes");
    else if (ends(form, "s") || ends(form, "x") || ends(form, "z") || ends(form, "sh"))
        change(form, 0, "es");
    else if (ends(form, "ch"))
        change(form, 0, nouns_has(NOUNS_CH_K, form->text) ? "s" : "es");
    else if (ends(form, "quy"))
        change(form, 1, "ies");
    else if (form->size > 1 && ends(form, "y") && is_lower(form->text[form->size - 2]) &&
             !is_vowel(form->text[form->size - 2]))
        change(form, 1, "ies");
    else
        change(form, 0, "s");
}

// The part of to_singular() for -es, which is where most of English hides.
static void singular_es(struct form *form) {
    size_t drop = 1;
    bool lens = stem_in(form, 2, NOUNS_SINGULAR_S) &&
                !ends(form, "oses"); // lenses and buses, but "noses" is no "nos"
    if (lens || stem_in(form, 2, NOUNS_AS) || stem_in(form, 2, NOUNS_IS))
        drop = 2;
    else if (ends(form, "ies")) {
        if (!stem_in(form, 1, NOUNS_IE)) {
            change(form, 3, "y");
            return;
        }
    } else if (ends(form, "oes"))
        drop = stem_in(form, 2, NOUNS_OES) ? 2 : 1;
    else if (ends(form, "ches") || ends(form, "shes"))
        drop = stem_in(form, 1, NOUNS_CHE) ? 1 : 2;
    else if (ends(form, "sses"))
        drop = stem_in(form, 1, NOUNS_SS_E) ? 1 : 2;
    else if (ends(form, "xes"))
        drop = stem_in(form, 1, NOUNS_XE) ? 1 : 2;
    else if (ends(form, "zzes"))
        drop = stem_in(form, 3, NOUNS_ZZ) ? 3 : 2;
    else if (ends(form, "zes"))
        drop = ends(form, "tzes") || stem_in(form, 2, NOUNS_Z) ? 2 : 1;
    else if (ends(form, "uses"))
        drop = ends(form, "ouses") || ends(form, "auses") || stem_in(form, 1, NOUNS_USE) ? 1 : 2;
    change(form, drop, "");
}

static void to_singular(struct form *form) {
    const struct noun_pair *pair = nouns_of_plural(form->text);
    if (pair) {
        change(form, form->size, pair->singular);
        return;
    }
    size_t count;
    const struct noun_ending *endings = nouns_endings(&count);
    for (size_t i = 0; i < count; i++)
        if (ends_in(form, endings[i].pair.plural, endings[i].plural)) {
            change(form, endings[i].plural, endings[i].pair.singular);
            return;
        }
    if (form->size > 3 && ends(form, "men") && !nouns_has(NOUNS_MEN, form->text))
        change(form, 2, "an");
    else if (ends(form, "eaux"))
        change(form, 1, "");
    if (form->size < 3 || !ends(form, "s") || ends(form, "ss") || nouns_has(NOUNS_SINGULAR_S, form->text))
        return;
    char before = form->text[form->size - 2];
    if (!is_lower(before) && !is_digit(before) && (unsigned char)before < 0x80) return; // "men's"
    if (ends(form, "is") || ends(form, "us")) {
        if (stem_in(form, 1, NOUNS_I_U) || ends(form, "eaus")) change(form, 1, "");
    } else if (ends(form, "es"))
        singular_es(form);
    else
        change(form, 1, "");
}

// "KR-9", "DVD", "LED": written in capitals and said letter by letter, so the plural takes a small s.
static bool is_code(const char *word, size_t size) {
    bool letters = false, digits = false, vowels = false;
    for (size_t i = 0; i < size; i++) {
        if (is_lower(word[i]) || (unsigned char)word[i] >= 0x80) return false;
        letters = letters || is_upper(word[i]);
        digits = digits || is_digit(word[i]);
        vowels = vowels || (word[i] && strchr("AEIOUY", word[i]));
    }
    if (!letters) return false;
    return digits || !vowels || nouns_has(NOUNS_SPELLED, form_lower(word, size).text);
}

static bool is_decade(const char *word, size_t size) {
    for (size_t i = 0; i + 1 < size; i++)
        if (!is_digit(word[i])) return false;
    return size >= 3 && word[size - 1] == 's' && word[size - 2] == '0';
}

static bool is_code_plural(const char *word, size_t size) {
    return size > 1 && word[size - 1] == 's' && is_code(word, size - 1) && !is_decade(word, size);
}

// Where the part begins that takes the number: "sons-in-law" and "men-of-war" at the front,
// "jack-in-the-boxes" at the end.
static void number_part(const char *word, size_t size, size_t *from, size_t *to) {
    *from = 0, *to = size;
    if (!memchr(word, '-', size)) return; // most words
    static const char *const joints[] = {"-of-", "-de-", "-in-law"};
    for (size_t j = 0; j < sizeof joints / sizeof *joints; j++)
        for (size_t i = 1; i + strlen(joints[j]) <= size; i++)
            if (!memcmp(word + i, joints[j], strlen(joints[j]))) {
                *to = i;
                return;
            }
    for (size_t i = size; i > 0; i--)
        if (word[i - 1] == '-' && i < size) {
            *from = i;
            return;
        }
}

// The changed part in the capitals of the word it came from.
static const char *put_back(struct arena *arena, const char *word, size_t size, size_t from, size_t to,
                            const struct form *form) {
    size_t same = 0;
    struct form old = form_lower(word + from, to - from);
    while (same < old.size && same < form->size && old.text[same] == form->text[same]) same++;
    bool upper = to - from > 1 && is_upper(word[from]) && is_upper(word[to - 1]);
    char tail[FORM_ROOM];
    for (size_t i = same; i <= form->size; i++)
        tail[i - same] =
            upper && is_lower(form->text[i]) ? (char)(form->text[i] - ('a' - 'A')) : form->text[i];
    if (!same && form->size && is_upper(word[from]) && is_lower(tail[0]))
        tail[0] = (char)(tail[0] - ('a' - 'A'));
    size_t head = from + same, more = form->size - same;
    char *out = arena_alloc(arena, head + more + (size - to) + 1);
    memcpy(out, word, head);
    memcpy(out + head, tail, more);
    memcpy(out + head + more, word + to, size - to);
    return out;
}

// No plural, regular or listed, ends in these; most words are settled here, without a search.
static bool never_plural(const char *word, size_t size) {
    if (size < 2 || memchr(word, '-', size)) return false;
    char last = word[size - 1], before = word[size - 2];
    if (is_upper(before)) return false;
    switch (last) { // a plural without s ends as one of the irregular pairs does
    case 'a':
        return is_lower(before) && !strchr("dirt", before);
    case 'e':
        return is_lower(before) && !strchr("acslv", before);
    case 'h':
        return before != 't';
    case 'i':
        return is_lower(before) && !strchr("ncgeit", before);
    case 'm':
        return before != 'i';
    case 'n':
        return before != 'e';
    case 't':
        return before != 'e';
    case 'x':
        return before != 'u';
    case 'y':
        return before != 'b';
    default:
        return last && strchr("bcdfgjklopqruvwz", last);
    }
}

// Applied until nothing changes, so "womens" ends where "women" does. Two rounds reach the end; the bound is
// a safeguard.
static struct form singular_form(struct form form) {
    for (int round = 0; round < 4; round++) {
        struct form before = form;
        if (round && never_plural(form.text, form.size)) break;
        if (is_unchanging(&form) || nouns_of_singular(form.text)) break;
        to_singular(&form);
        if (text_same(before.text, form.text)) break;
    }
    return form;
}

// False when the word's number is not to be read from its letters: codes, decades, and what is far too long.
static bool is_readable(const char *word, size_t size) {
    return size > 0 && size <= INFLECT_LONGEST && !is_decade(word, size);
}

static bool listed_whole(const struct form *whole) {
    return nouns_of_singular(whole->text) || nouns_of_plural(whole->text) || is_unchanging(whole);
}

static void part_of(const char *word, size_t size, size_t *from, size_t *to) {
    number_part(word, size, from, to);
    if (!*from && *to == size) return;
    struct form whole = form_lower(word, size);
    if (listed_whole(&whole)) *from = 0, *to = size;
}

bool inflect_is_plural(const char *word, size_t size) {
    if (!is_readable(word, size)) return false;
    if (never_plural(word, size)) return nouns_has(NOUNS_PLURAL_ONLY, form_lower(word, size).text);
    if (is_code_plural(word, size)) return true;
    if (is_code(word, size)) return false;
    size_t from, to;
    part_of(word, size, &from, &to);
    struct form form = form_lower(word + from, to - from), single = singular_form(form);
    return nouns_has(NOUNS_PLURAL_ONLY, form.text) || !text_same(form.text, single.text);
}

const char *inflect_singular(struct arena *arena, const char *word, size_t size) {
    if (never_plural(word, size) || !is_readable(word, size)) return arena_copy(arena, word, size);
    if (is_code_plural(word, size)) return arena_copy(arena, word, size - 1);
    if (is_code(word, size)) return arena_copy(arena, word, size);
    size_t from, to;
    part_of(word, size, &from, &to);
    struct form form = singular_form(form_lower(word + from, to - from));
    return put_back(arena, word, size, from, to, &form);
}

const char *inflect_plural(struct arena *arena, const char *word, size_t size) {
    if (!size || is_decade(word, size) || inflect_is_plural(word, size)) return arena_copy(arena, word, size);
    if (size > INFLECT_LONGEST || is_code(word, size)) return arena_format(arena, "%.*ss", (int)size, word);
    size_t from, to;
    part_of(word, size, &from, &to);
    struct form form = form_lower(word + from, to - from);
    if (!is_unchanging(&form)) to_plural(&form);
    return put_back(arena, word, size, from, to, &form);
}
