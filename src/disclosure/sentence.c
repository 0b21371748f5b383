// SPDX-License-Identifier: MIT
// One flaw, one plain sentence. The form of its rule decides the frame; number, place, size and degree come
// from the record as they were said, and nothing is softened or explained.
#include <string.h>

#include "disclosure/disclosure.h"
#include "item/wording.h"

struct teller {
    struct arena *arena;
    const struct item_flaw *flaw;
    const struct flaw *kind;
    enum locale locale;
    bool maybe;
};

static const char *size_words(const struct teller *t) {
    if (!t->flaw->has_size) return "";
    const struct figure *size = &t->flaw->size;
    return arena_format(t->arena, ", %s%s", size->about ? "about " : "",
                        say_both(t->arena, size->value, size->unit, t->locale));
}

static const char *plural_of(const struct teller *t, const char *noun, const char *irregular) {
    return irregular ? irregular : say_plural(t->arena, noun);
}

// "a small chip", "three small chips", "light rust"; `*many` tells the verb.
static const char *noun_phrase(const struct teller *t, bool *many) {
    const char *degree = wording_degree(t->flaw, true), *space = *degree ? " " : "";
    int count = t->flaw->of ? 1 : t->flaw->count;
    *many = false;
    if (t->kind->mass) return arena_format(t->arena, "%s%s%s", degree, space, t->kind->noun);
    if (say_is_plural(t->kind->noun) || count > 1) {
        *many = true;
        const char *nouns =
            say_is_plural(t->kind->noun) ? t->kind->noun : plural_of(t, t->kind->noun, t->kind->plural);
        const char *number = count > 1 ? say_number(t->arena, count) : "";
        return arena_format(t->arena, "%s%s%s%s%s", number, *number ? " " : "", degree, space, nouns);
    }
    const char *phrase = arena_format(t->arena, "%s%s%s", degree, space, t->kind->noun);
    return arena_format(t->arena, "%s %s", say_article(phrase), phrase);
}

static const char *spaced(const struct teller *t, const char *text) {
    return text && *text ? arena_format(t->arena, " %s", text) : "";
}

static const char *where_words(const struct teller *t) {
    return t->flaw->where ? spaced(t, say_place(t->arena, t->flaw->where)) : "";
}

// "On one of the six, " — or nothing where all or an unknown number is meant.
static const char *some_of(const struct teller *t) {
    if (!t->flaw->of || !t->flaw->count) return "";
    if (t->flaw->count == t->flaw->of && t->flaw->of == 1) return "";
    if (t->flaw->count == 2 && t->flaw->of == 2) return "on both";
    if (t->flaw->count == t->flaw->of)
        return arena_format(t->arena, "on all %s", say_number(t->arena, t->flaw->of));
    return arena_format(t->arena, "on %s of the %s", say_number(t->arena, t->flaw->count),
                        say_number(t->arena, t->flaw->of));
}

static const char *finish(const struct teller *t, const char *lead, const char *body) {
    const char *whole = *lead ? arena_format(t->arena, "%s, %s", lead, body) : body;
    return arena_format(t->arena, "%s.", say_sentence_case(t->arena, whole));
}

static const char *tell_fault(const struct teller *t) {
    const char *part = t->flaw->part, *where = where_words(t), *size = size_words(t), *some = some_of(t);
    const char *adverb = wording_adverb(t->flaw, true);
    bool many;
    if (part && wording_adjective(t->flaw) && !t->flaw->count) {
        const char *verb = t->maybe ? "may be" : say_is_plural(part) ? "are" : "is";
        return finish(t, some,
                      arena_format(t->arena, "the %s %s%s%s %s%s%s", part, verb, *adverb ? " " : "", adverb,
                                   wording_adjective(t->flaw), where, size));
    }
    const char *noun = noun_phrase(t, &many);
    if (part) {
        const char *verb = t->maybe ? "may have" : say_is_plural(part) ? "have" : "has";
        return finish(t, some, arena_format(t->arena, "the %s %s %s%s%s", part, verb, noun, where, size));
    }
    const char *verb = t->maybe ? "may be" : many ? "are" : "is";
    return finish(t, some, arena_format(t->arena, "there %s %s%s%s", verb, noun, where, size));
}

static const char *tell_state(const struct teller *t);

static const char *tell_absence(const struct teller *t) {
    const char *part = t->flaw->part ? t->flaw->part : t->kind->part;
    const char *plural = t->flaw->part ? NULL : t->kind->part_plural, *where = where_words(t);
    int count = t->flaw->count;
    if (t->kind->says && !t->flaw->part && !count) return tell_state(t);
    bool many = count > 1 || (!count && say_is_plural(part));
    const char *verb = t->maybe ? "may be" : many ? "are" : "is";
    if (!count) return finish(t, "", arena_format(t->arena, "the %s %s missing%s", part, verb, where));
    const char *noun = count > 1 ? plural_of(t, part, plural) : part;
    if (t->flaw->of > count)
        return finish(t, "",
                      arena_format(t->arena, "%s of %s %s %s missing%s", say_number(t->arena, count),
                                   say_number(t->arena, t->flaw->of), plural_of(t, part, plural), verb,
                                   where));
    return finish(
        t, "", arena_format(t->arena, "%s %s %s missing%s", say_number(t->arena, count), noun, verb, where));
}

static void put_agreed(struct buf *out, const struct teller *t, const char *name, size_t n) {
    bool many = t->flaw->part && say_is_plural(t->flaw->part);
    if (n == 4 && !strncmp(name, "part", n))
        buf_text(out, t->flaw->part ? t->flaw->part : "");
    else if (n == 2 && !strncmp(name, "is", n))
        buf_text(out, many ? "are" : "is");
    else if (n == 3 && !strncmp(name, "has", n))
        buf_text(out, many ? "have" : "has");
    else if (n == 3 && !strncmp(name, "was", n))
        buf_text(out, many ? "were" : "was");
}

static const char *tell_state(const struct teller *t) {
    struct buf out = buf_start(t->arena);
    const char *some = some_of(t);
    if (*some) buf_format(&out, "%s: ", some);
    if (t->maybe) buf_text(&out, "not certain: ");
    for (const char *c = t->flaw->part ? t->kind->says_part : t->kind->says; *c; c++) {
        const char *end = *c == '{' ? strchr(c, '}') : NULL;
        if (!end)
            buf_byte(&out, *c);
        else {
            put_agreed(&out, t, c + 1, (size_t)(end - c - 1));
            c = end;
        }
    }
    while (out.n && out.at[out.n - 1] == '.') out.at[--out.n] = '\0';
    if (t->flaw->where) buf_format(&out, " (%s)", t->flaw->where);
    return arena_format(t->arena, "%s.", say_sentence_case(t->arena, out.at));
}

const char *flaw_sentence(struct arena *arena, const struct item_flaw *flaw, enum locale locale) {
    struct teller t = {arena, flaw, flaw->kind, locale, flaw->sure != SURE_STATED};
    if (flaw->kind->form == FAULT) return tell_fault(&t);
    return flaw->kind->form == ABSENCE ? tell_absence(&t) : tell_state(&t);
}
