// SPDX-License-Identifier: MIT
// Phrases for what is wrong: from the grammar of the flaw's rule (noun, adjective, part) or from the rule's
// own title words. A fuller wording tells more than a bare one; a wording that names the place beats one that
// does not.
#include <string.h>

#include "item/told.h"
#include "item/wording.h"
#include "text/order.h"
#include "title/plan.h"

// More flaws than any title names, so that an absurd record costs no more than a rich one.
enum { FLAWS_MOST = 60, RANKS = 64 };

struct fault {
    struct phrase_maker *m;
    const struct item_flaw *flaw, *listed; // as it is told, as the record has it
    const struct flaw *kind;
    struct plan_phrase *phrase;
    const char *at;                // "on Rim", "Inside", or NULL
    const char *part;              // "Handle": what an adjective can stand before, or NULL
    const char *severity, *adverb; // "Small", "Slightly", or ""
    const char *adjective;         // of this degree, or NULL
    bool degree;                   // the words at hand put the degree before the noun
    const char *some;              // "One With", "2 With" where only some pieces have it, or NULL
    int tells;
};

static int base_tells(const struct item_flaw *flaw) {
    const struct flaw *kind = flaw->kind;
    if (kind->duty == DUTY_MUST) return 40;
    if (kind->duty == DUTY_SHOULD || (kind->duty == DUTY_IF_HEAVY && flaw->severity == SEVERITY_HEAVY))
        return 30;
    int tells = kind->duty == DUTY_IF_HEAVY ? 13 : 10;
    if (kind->class == CLASS_STATUS || kind->class == CLASS_FEATURE) tells -= 3;
    if (kind->class == CLASS_DIRT || kind->class == CLASS_ODOR) tells -= 2;
    if (flaw->severity == SEVERITY_HEAVY) tells += 6;
    return tells;
}

static bool is_must(const struct item_flaw *flaw) {
    return flaw->kind->duty == DUTY_MUST ||
           (flaw->kind->duty == DUTY_IF_HEAVY && flaw->severity == SEVERITY_HEAVY);
}

// An adjective stands before a plain noun ("Chipped Rim"), never before a phrase ("near the base", "left of
// center").
static bool plain_noun(const char *text) {
    return text && !strchr(text, ',') && !strstr(text, " of ") && !strstr(text, " the ") &&
           !strstr(text, " and ") && strncmp(text, "in ", 3) != 0 && strncmp(text, "near ", 5) != 0 &&
           strncmp(text, "along ", 6) != 0 && strncmp(text, "under ", 6) != 0 &&
           strncmp(text, "inside", 6) != 0 && strncmp(text, "all ", 4) != 0 &&
           strncmp(text, "both ", 5) != 0 && strncmp(text, "on ", 3) != 0 && strncmp(text, "at ", 3) != 0;
}

static void add(struct fault *f, const char *text, int more) {
    if (f->phrase->count < 8) spelling_add(f->m, f->phrase, text, f->tells + more, 1);
}

// --- words with placeholders ---

// "Dents at both ends": the place says how many.
static bool at_both(const struct item_flaw *flaw) {
    return flaw->where && !strncmp(flaw->where, "both ", 5) && flaw->count == 2;
}

static bool counted(const struct fault *f) {
    bool both = at_both(f->flaw);
    return !f->kind->mass && f->flaw->count >= 2 && !f->flaw->of && !f->flaw->of_part && !both;
}

static const char *noun_text(struct fault *f) {
    int count = f->flaw->count;
    const struct flaw *kind = f->kind;
    const char *noun = kind->form == ABSENCE ? (f->flaw->part ? f->flaw->part : kind->part) : kind->noun;
    if (!noun) return "";
    bool several = kind->form == FAULT && !kind->mass &&
                   (at_both(f->flaw) || (!count && ((kind->many && !f->flaw->lone) || f->flaw->several)));
    if (!counted(f) && !several) return noun;
    const char *plural = kind->form == ABSENCE ? (f->flaw->part ? NULL : kind->part_plural) : kind->plural;
    if (!plural) plural = say_plural(f->m->arena, noun);
    if (several) return plural;
    const char *degree = f->degree ? f->severity : ""; // "2 Small Chips": the number leads
    return arena_format(f->m->arena, "%d %s%s%s", count, degree, *degree ? " " : "", plural);
}

static const char *filler(struct fault *f, const char *name, size_t n) {
    struct arena *arena = f->m->arena;
    if (!strncmp(name, "at", n) && n == 2) return f->at;
    if (!strncmp(name, "part", n) && n == 4) return f->part;
    if (!strncmp(name, "where", n) && n == 5) return f->flaw->where;
    if (!strncmp(name, "sev", n) && n == 3) return f->degree && counted(f) ? "" : f->severity;
    if (!strncmp(name, "noun", n) && n == 4) return noun_text(f);
    if (!strncmp(name, "adjective", n) && n == 9) return f->adjective;
    if (!strncmp(name, "n", n) && n == 1)
        return f->flaw->count ? arena_format(arena, "%d", f->flaw->count) : NULL;
    return NULL;
}

// NULL when a placeholder has nothing to stand for it. An empty {sev} takes its space with it.
static const char *fill(struct fault *f, const char *words) {
    struct buf out = buf_start(f->m->arena);
    f->degree = strstr(words, "{sev} {noun}") != NULL;
    for (const char *c = words; *c;) {
        if (*c != '{') {
            if (!(*c == ' ' && (!out.n || out.at[out.n - 1] == ' '))) buf_byte(&out, *c);
            c++;
            continue;
        }
        const char *end = strchr(c, '}');
        const char *value = end ? filler(f, c + 1, (size_t)(end - c - 1)) : NULL;
        if (!value) return NULL;
        buf_text(&out, value);
        c = end + 1;
    }
    while (out.n && out.at[out.n - 1] == ' ') out.at[--out.n] = '\0';
    return out.at;
}

static bool begins_with_adjective(struct fault *f, const char *text) {
    if (!f->adjective) return false;
    const char *adjective = utf8_fold(f->m->arena, f->adjective);
    return !strncmp(utf8_fold(f->m->arena, text), adjective, strlen(adjective));
}

// The handle of an awl handle: its word stands in the title already and may not stand there twice.
static bool shares_type(const struct fault *f) {
    const char *type = f->m->record->type.value, *last = strrchr(f->flaw->part, ' ');
    return type && strstr(type, say_singular(f->m->arena, last ? last + 1 : f->flaw->part));
}

static void set_turn(struct fault *f, const char *words) {
    struct plan_spelling *s = &f->phrase->spellings[f->phrase->count - 1];
    bool absence = f->kind->form == ABSENCE && !strncmp(s->text, "No ", 3);
    s->turn = absence ? TURN_ABSENCE : turned_way(words, f->kind->noun);
    bool number = strstr(words, "{noun}") && counted(f);
    s->lead = (uint8_t)((f->degree && *f->severity) + number);
}

// "Chipped", "Worn": what the pieces are, and nothing that they are with.
static bool is_state(const char *text) {
    static const char *const does[] = {"Wobbles", "Sticks", "Leaks", "Rattles", "Squeaks", "Leans", "Rocks"};
    for (size_t i = 0; i < sizeof does / sizeof *does; i++)
        if (text_same(text, does[i])) return true;
    size_t size = strlen(text);
    return !strchr(text, ' ') &&
           ((size > 4 && !strcmp(text + size - 2, "ed")) || text_same(text, "Worn") ||
            text_same(text, "Bent") || text_same(text, "Torn") || text_same(text, "Loose"));
}

static void add_words(struct fault *f, const struct texts *words, int more) {
    for (size_t i = 0; i < words->count && f->phrase->count < 6; i++) {
        const char *text = fill(f, words->at[i]);
        if (!text) continue;
        bool placed =
            strstr(words->at[i], "{at}") || strstr(words->at[i], "{part}") || strstr(words->at[i], "{where}");
        // "Stuck" of a needle says too little by itself.
        bool bare = f->flaw->part && f->flaw->span.to && f->phrase->count && !placed &&
                    f->kind->rollup != ROLLUP_NONE && !strchr(text, ' ') && begins_with_adjective(f, text) &&
                    !shares_type(f);
        if (bare) continue;
        if (f->some && !strstr(words->at[i], "{n}") && (placed || !f->flaw->of_part)) {
            // "One Cracked", but "Three With Blade Wear".
            bool noun_first = f->kind->form != STATE && !begins_with_adjective(f, text) && !is_state(text);
            if (noun_first && strstr(words->at[i], "{part}")) noun_first = false; // "One Replaced Knob"
            const char *said = text; // "One Needs Upholstery", "Two Need Upholstery"
            if (!strncmp(text, "Needs ", 6)) {
                noun_first = false;
                if (f->flaw->count != 1) said = arena_format(f->m->arena, "Need%s", text + 5);
            }
            add(f, arena_format(f->m->arena, "%s%s %s", f->some, noun_first ? " with" : "", said),
                more + (placed ? 5 : 1) + 2 + f->phrase->must);
        }
        // "Dented" of notes tells what "Dent" tells.
        bool same = i && !f->flaw->part && !f->flaw->where && f->flaw->span.to &&
                    text_same(words->at[i], "{adjective}") && text_same(words->at[i - 1], "{noun}");
        int rank = (int)i - (same ? *f->severity ? 1 : 2 : 0);
        size_t before = f->phrase->count;
        add(f, text, more + (placed ? 5 : 0) - 2 * rank);
        if (f->phrase->count > before) set_turn(f, words->at[i]);
    }
}

// --- the three forms ---

static void fault_words(struct fault *f) {
    struct arena *arena = f->m->arena;
    const struct flaw *kind = f->kind;
    if (kind->title.count || kind->title_part.count) {
        if (f->flaw->part) add_words(f, &kind->title_part, 3);
        add_words(f, &kind->title, 0);
        return;
    }
    static const char *full[] = {"{sev} {noun} {at}", "{noun} {at}", "{adjective} {part}",
                                 "{sev} {noun}",      "{noun}",      "{adjective}"};
    // A part is best told by its adjective ("Cracked Handle"); a place by the noun ("Chip on Ear").
    static const char *part[] = {"{adverb} {adjective} {part}",
                                 "{adjective} {part}",
                                 "{sev} {noun} {at}",
                                 "{noun} {at}",
                                 "{noun}",
                                 "{adjective}"};
    const char **words = f->flaw->part && f->adjective && f->part ? part : full;
    size_t from = 0;
    const char *before = wording_before(arena, f->flaw);
    if (before) add(f, arena_format(arena, "%s %s", before, f->part ? f->part : f->flaw->part), 6);
    const char *rest = wording_rest(f->flaw); // "Left Sole Separation": the part's noun is not said twice
    if (rest && say_is_plural(f->flaw->part))
        add(f, kind->noun, 6);
    else if (rest)
        add(f, arena_format(arena, "%s %s", f->flaw->part, rest), 6);
    if (words == part) {
        if (*f->adverb) add(f, arena_format(arena, "%s %s %s", f->adverb, f->adjective, f->part), 6);
        from = 1;
    }
    if (f->some && f->adjective && !f->flaw->where && !f->flaw->part)
        add(f, arena_format(arena, "%s %s%s%s", f->some, f->adverb, *f->adverb ? " " : "", f->adjective),
            6 + f->phrase->must);
    struct texts usual = {words + from, 6 - from};
    add_words(f, &usual, 0);
}

static void absence_words(struct fault *f) {
    struct arena *arena = f->m->arena;
    const struct item_flaw *flaw = f->flaw;
    // The rule's own words know better than the grammar what is missing where no part is named ("Missing
    // Pieces").
    if (f->kind->title.count && !flaw->part && !flaw->count && !(flaw->single && !f->kind->says)) {
        add_words(f, &f->kind->title, 0);
        return;
    }
    const char *part = flaw->part ? flaw->part : f->kind->part;
    if (flaw->count > 1) {
        const char *plural =
            !flaw->part && f->kind->part_plural ? f->kind->part_plural : say_plural(arena, part);
        add(f, arena_format(arena, "missing %d %s", flaw->count, plural), 4);
        add(f, arena_format(arena, "missing %s", plural), 2);
        return;
    }
    if (flaw->count == 1 || flaw->single) part = say_singular(arena, part);
    if (flaw->count == 1 && flaw->of > 1 && !text_same(part, "piece"))
        add(f, arena_format(arena, "one %s missing", part), 5);
    if (flaw->single) add(f, arena_format(arena, "one %s missing", part), 5);
    if (flaw->count == 1 || flaw->single)
        add(f, arena_format(arena, "missing %s", part), 4);
    else {
        if (f->kind->title.count) add_words(f, &f->kind->title, 0);
        size_t before = f->phrase->count;
        add(f, arena_format(arena, "no %s", part), 4);
        if (f->phrase->count > before) f->phrase->spellings[before].turn = TURN_ABSENCE;
    }
}

static bool names(const struct texts *ids, const struct item_flaw *flaw) {
    for (size_t i = 0; i < ids->count; i++)
        if (text_same(ids->at[i], flaw->kind->rule.id)) return true;
    return false;
}

// The first certain flaw of one of those kinds that reaches this one: of the whole thing, of a part of what
// this one has whole ("motor not working" of what works only partly), or of the same part.
static const struct item_flaw *told_by(const struct phrase_maker *m, const struct texts *ids,
                                       const struct item_flaw *flaw) {
    for (size_t i = 0; ids->count && i < m->record->flaw_count; i++) {
        const struct item_flaw *other = &m->record->flaws[i];
        bool reaches = !other->part || !flaw->part || text_same(other->part, flaw->part);
        if (reaches && other->sure == SURE_STATED && names(ids, other)) return other;
    }
    return NULL;
}

static void state_words(struct fault *f) {
    const struct family *family = f->m->record->family;
    if (told_by(f->m, &f->kind->beside, f->flaw)) {
        add_words(f, &f->kind->title_beside, 2);
        return;
    }
    for (size_t i = 0; i < family->flaw_word_count && !f->flaw->part; i++)
        if (text_same(family->flaw_words[i].text, f->kind->rule.id)) add(f, family->flaw_words[i].means, 3);
    // Without a part the place may take its seat: "Stamps, pocket" tell where an ex-library copy shows it.
    if (f->flaw->part || f->part) add_words(f, &f->kind->title_part, 2);
    // Of a part that fails, the bare words would say it of the whole thing, and of the worst there is.
    bool less = f->flaw->part && f->kind->class == CLASS_FUNCTION && f->kind->title_part.count &&
                f->kind->cap[SEVERITY_LIGHT] == GRADE_D;
    add_words(f, &f->kind->title, less ? -12 : 0);
}

// A word stands once in a title, so each doubt has a word of its own.
static void hedge(struct fault *f) {
    static const char *const doubts[] = {"Possible", "Maybe", "Perhaps"};
    if (f->flaw->sure == SURE_STATED) return;
    size_t before = 0;
    for (const struct item_flaw *flaw = f->m->record->flaws; flaw < f->listed; flaw++)
        before += flaw->sure != SURE_STATED && is_must(flaw);
    for (size_t i = 0; i < f->phrase->count; i++) {
        const char *text = f->phrase->spellings[i].text;
        // "Possible Crack", but "Possibly Cracked Handle" and "Possibly Not Working".
        bool noun = f->kind->form == FAULT && !begins_with_adjective(f, text);
        const char *doubt = before % 3 || noun ? doubts[before % 3] : "Possibly";
        f->phrase->spellings[i].text = arena_format(f->m->arena, "%s %s", doubt, text);
        f->phrase->spellings[i].lead++;
    }
}

// Without a shared short word, a kind that was told of one part cannot be told of the next in the same words.
static bool told_before(const struct phrase_maker *m, const struct item_flaw *flaw) {
    for (const struct item_flaw *other = m->record->flaws; other < flaw; other++)
        if (other->kind == flaw->kind && is_must(other) && flaw->kind->rollup == ROLLUP_NONE) return true;
    return false;
}

// "Latch of the door" is the door latch; "left of the handle" is no part of it.
static const char *part_first(struct arena *arena, const char *place) {
    static const char *const sides[] = {"left", "right", "inside", "outside", "rest",
                                        "most", "half",  "one",    "both"};
    const char *further = place ? strstr(place, " on ") : NULL; // "bottom on one side": the bottom
    if (further && further > place && strncmp(place, "on ", 3) != 0)
        place = arena_copy(arena, place, (size_t)(further - place));
    const char *of = place ? strstr(place, " of the ") : NULL;
    if (!of || memchr(place, ' ', (size_t)(of - place)) || strchr(of + 8, ' ')) return place;
    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++)
        if (!strncmp(place, sides[i], strlen(sides[i])) && place[strlen(sides[i])] == ' ') return place;
    static const char *const numbers[] = {"two",   "three", "four", "five", "six",
                                          "seven", "eight", "nine", "ten",  "several"};
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) // "two of the pages": two pages
        if (!strncmp(place, numbers[i], strlen(numbers[i])) && place[strlen(numbers[i])] == ' ')
            return arena_format(arena, "%s %s", numbers[i], of + 8);
    return arena_format(arena, "%s %.*s", of + 8, (int)(of - place), place);
}

static bool is_bare_absence(const struct item_flaw *flaw) {
    return flaw->kind->form == ABSENCE && !flaw->count && !flaw->single;
}

// Function first, then in the order of the record; what is missing stands together ("No Reel or Cord").
static size_t rank_of(const struct record *record, const struct item_flaw *flaw, size_t nth) {
    size_t first = nth;
    bool function = flaw->kind->class == CLASS_FUNCTION;
    for (size_t i = 0; is_bare_absence(flaw) && i < nth && i < RANKS && first == nth; i++)
        if (is_bare_absence(&record->flaws[i]) &&
            (record->flaws[i].kind->class == CLASS_FUNCTION) == function)
            first = i;
    return (first + (function ? 0 : 1000)) * RANKS + (nth - first < RANKS ? nth - first : RANKS - 1);
}

// "Four with broken glass": what nobody counts.
static bool is_stuff(const char *part) {
    static const char *const stuffs[] = {
        "glass",     "paint",   "enamel",  "glaze",      "leather", "veneer",    "cloth",  "paper",
        "wood",      "plating", "gilding", "varnish",    "wiring",  "fabric",    "silver", "trim",
        "stitching", "lacquer", "rubber",  "upholstery", "canvas",  "lettering", "print"};
    const char *last = strrchr(part, ' ');
    last = last ? last + 1 : part;
    for (size_t i = 0; i < sizeof stuffs / sizeof *stuffs; i++)
        if (text_same(last, stuffs[i])) return true;
    return false;
}

static void make_one(struct phrase_maker *m, const struct item_flaw *flaw, size_t nth) {
    bool must = is_must(flaw);
    if (flaw->sure != SURE_STATED && !must) {
        phrase_bar(m, flaw->kind->print, "the seller is not certain of it; the disclosure says so");
        return;
    }
    const struct item_flaw *wider = told_by(m, &flaw->kind->implied_by, flaw);
    bool whole = wider && (!flaw->part || wider->part); // one of a part may still be told by its part
    if (whole) {
        phrase_bar(m, flaw->kind->print, arena_format(m->arena, "'%s' tells it too", wider->kind->print));
        return;
    }
    struct plan_phrase *phrase =
        phrase_add(m, SLOT_FLAWS, arena_format(m->arena, "flaw %s", flaw->kind->rule.id), flaw->span);
    phrase->rank = rank_of(m->record, flaw, nth);
    if (told_by(m, &flaw->kind->beside, flaw)) phrase->rank += FLAWS_MOST * RANKS; // behind what it adds to
    phrase->must = must && !wider && !told_before(m, flaw);
    phrase->rollup = flaw->kind->rollup;
    struct fault f = {.m = m,
                      .flaw = wording_shown(m->arena, flaw),
                      .listed = flaw,
                      .kind = flaw_told(flaw),
                      .phrase = phrase,
                      .tells = base_tells(flaw)};
    flaw = f.flaw;
    f.severity = wording_degree(flaw, false);
    f.adjective = wording_adjective(flaw);
    f.adverb = wording_adverb(flaw, false);
    const char *place = flaw->part ? flaw->part : flaw->where;
    if (flaw->part && flaw->where && !plain_noun(flaw->where) && flaw->kind->form == FAULT && !f.adjective)
        place = flaw->where;
    if (place) f.at = say_place_title(m->arena, part_first(m->arena, place));
    if (f.at && !*f.at) f.at = NULL;
    f.part = flaw->part ? part_first(m->arena, flaw->part) : plain_noun(flaw->where) ? flaw->where : NULL;
    bool several = flaw->of && flaw->count > 1;
    if (f.part && several && !is_stuff(f.part) && !say_is_plural(f.part))
        f.part = say_plural(m->arena, f.part);
    if (flaw->of > flaw->count && flaw->count && !wording_names_one(flaw))
        f.some = say_number_title(m->arena, flaw->count);
    bool pages = flaw->part && (text_same(flaw->part, "pages") || text_same(flaw->part, "leaves"));
    if (flaw->of_part && !pages) f.some = say_number_title(m->arena, flaw->count ? flaw->count : 1);
    if (flaw->kind->form == FAULT)
        fault_words(&f);
    else if (flaw->kind->form == ABSENCE)
        absence_words(&f);
    else
        state_words(&f);
    // A telling's words may be those of the type ("Alarm Not Working" of an alarm clock): then the kind's
    // own.
    if (f.kind != f.listed->kind && f.kind->form == STATE && must) add_words(&f, &f.listed->kind->title, -6);
    if (!phrase->count) add(&f, flaw->kind->print, 0);
    hedge(&f);
    if (!phrase->count) phrase_drop(m, phrase);
}

static bool met(const struct flaw **kinds, size_t *count, const struct flaw *kind) {
    for (size_t i = 0; i < *count; i++)
        if (kinds[i] == kind) return true;
    kinds[(*count)++] = kind;
    return false;
}

// Each of the first flaws has a phrase. Of the others a must is told by its kind, or by the words that stand
// for all faults of its roll-up: a phrase of just these words is a must that no other phrase can answer.
void make_flaws(struct phrase_maker *m) {
    const struct record *r = m->record;
    const struct flaw **kinds = arena_array(m->arena, r->flaw_count + 1, sizeof *kinds);
    size_t count = 0;
    bool beyond[ROLLUP_COUNT] = {false};
    for (size_t i = 0; i < r->flaw_count; i++) {
        const struct item_flaw *flaw = &r->flaws[i];
        if (i < FLAWS_MOST)
            make_one(m, flaw, i);
        else if (!is_must(flaw))
            phrase_bar(m, flaw->kind->print, "a title has no room for so many flaws");
        else if (flaw->kind->rollup != ROLLUP_NONE)
            beyond[flaw->kind->rollup] = true;
        else if (!met(kinds, &count, flaw->kind) && !told_before(m, flaw))
            make_one(m, flaw, i);
    }
    for (int i = 0; i < ROLLUP_COUNT; i++) {
        if (!beyond[i]) continue;
        struct plan_phrase *phrase = phrase_add(m, SLOT_FLAWS, "flaws", (struct note_span){0, 0});
        phrase->rank = (r->flaw_count + 1000) * RANKS;
        phrase->must = true;
        phrase->rollup = (enum rollup)i;
        spelling_add(m, phrase, rollup_words((enum rollup)i), 0, 1);
    }
}
