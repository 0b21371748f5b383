// SPDX-License-Identifier: MIT
// What was found to be right, by the words that the rules have for it: "rim is smooth", "lining whole",
// "didn't lose a drop". It denies that fault as narrowly as it was said, and a word of a fault inside it is
// none ("boards haven't bowed"). What is denied, past, only heard, or not known denies nothing.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Between the two words of a pair stands little: "rim is smooth", "silvering still good".
static bool is_filler(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "is",     "are",       "still",      "all",        "both", "each",  "nice",  "nicely", "very",
        "pretty", "quite",     "really",     "absolutely", "just", "as",    "the",   "a",      "it",
        "its",    "feels",     "feel",       "seems",      "seem", "looks", "look",  "stays",  "well",
        "right",  "perfectly", "completely", "totally",    "and",  "has",   "have",  "lovely", "good",
        "round",  "around",    "up",         "down",       "come", "comes", "go",    "goes",   "runs",
        "run",    "also",      "nor",        "it's",       "full", "'s",    "every", "clean",  "keeps",
        "stayed", "remains",   "itself",     "them",       "of"};
    return token_among(tokens, i, words, COUNT(words));
}

// "Rim was smooth", "zip should run", "worn smooth": not so, not now, or made so.
static bool blocks(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "was",    "were",     "used",     "should", "would",   "could",  "will",     "might",   "may",
        "nearly", "almost",   "once",     "not",    "never",   "isn't",  "aren't",   "doesn't", "don't",
        "won't",  "can't",    "ground",   "sanded", "filed",   "worn",   "half",     "hardly",  "barely",
        "must",   "needs",    "need",     "nobody", "partly",  "mostly", "isnt",     "doesnt",  "wont",
        "cannot", "wouldn't", "couldn't", "didn't", "if",      "unless", "until",    "till",    "one",
        "some",   "most",     "whether",  "to",     "neither", "rubbed", "polished", "wish",    "without",
        "no",     "far",      "that",     "which",  "'ll",     "it'll",  "they'll"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool is_close(const struct fault_reader *r, const struct phrase_hit *hit) {
    static const char *const places[] = {"on", "at", "in", "inside", "along"};
    enum { OTHERS_MOST = 1 };
    const struct tokens *tokens = &r->note->tokens;
    size_t others = 0;
    for (size_t i = hit->from + 1; i + 1 < hit->to; i++) {
        if (tokens->at[i].stop != STOP_NONE || blocks(tokens, i)) return false;
        if (token_among(tokens, i, places, COUNT(places)) &&
            i + 3 < hit->to) { // "gilt on the spine is bright"
            i += token_is(tokens, i + 1, "the") || token_is(tokens, i + 1, "its") ? 2 : 1;
            continue;
        }
        if (is_filler(tokens, i)) continue;
        if (r->note->fault_word[i] || ++others > OTHERS_MOST) return false;
    }
    return true;
}

static struct fault_hit hit_of(const struct phrase_hit *hit) {
    return (struct fault_hit){
        .from = hit->from, .to = hit->to, .kinds = {hit->flaw}, .kind_count = 1, .near = hit->near};
}

// "Zip up jacket runs small", "ring": the name of the thing.
static bool is_of_type(const struct note *note, const struct phrase_hit *hit) {
    for (size_t i = hit->from; i < hit->to; i++)
        if (note->taken[i] == TAKEN_TYPE) return true;
    return false;
}

void sound_said_find(struct fault_reader *r) {
    struct note *note = r->note;
    if (!note->phrases) return;
    struct phrase_hits found = phrases_find_sound(note->arena, note->phrases, &note->tokens);
    struct fault_hit *sounds = arena_array(note->arena, found.count + 1, sizeof *sounds);
    size_t count = 0;
    for (size_t i = 0; i < found.count; i++) {
        const struct phrase_hit *hit = &found.at[i];
        if (hit->near && !is_close(r, hit)) continue;
        if (is_of_type(note, hit) || (hit->gated && !note->record->family && hit->flaw->on.count)) continue;
        if (hit->gated && !kind_can_be(r, hit->flaw, note_words(note, hit->from, hit->to))) continue;
        if (text_same(hit->flaw->rule.id, "snag") && fault_is_drawer_pull(r, hit->from, hit->to)) continue;
        bool any = count > 0;
        struct fault_hit *last = &sounds[any ? count - 1 : 0];
        if (any && last->from == hit->from && last->to == hit->to) {
            if (last->kind_count < FAULT_KINDS_MOST) last->kinds[last->kind_count++] = hit->flaw;
        } else if (any && hit->near && last->near && hit->to == last->to) {
            sounds[count++] = hit_of(hit); // "base and rim both smooth"
        } else if (any && hit->from < last->to) {
            if (hit->to - hit->from > last->to - last->from) *last = hit_of(hit);
        } else {
            sounds[count++] = hit_of(hit);
        }
    }
    r->sounds = sounds;
    r->sound_count = count;
}

bool sound_said_holds(const struct fault_reader *r, size_t from, size_t to) {
    for (size_t i = 0; i < r->sound_count; i++)
        if (r->sounds[i].from <= from && r->sounds[i].to >= to) return true;
    return false;
}

// By words outside of it: those that it has of its own, as in "doesn't rock", belong to it.
static bool is_governed(const struct fault_reader *r, const struct fault_hit *hit) {
    static const uint16_t mask = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_UNKNOWN |
                                 STANCE_WITHDRAWN | STANCE_OTHER | STANCE_PLANNED | STANCE_DOUBT |
                                 STANCE_LIMITED | STANCE_HEARD;
    for (size_t i = hit->from; i < hit->to; i++) {
        size_t cue = r->scope.cue[i];
        bool own = cue >= hit->from && cue < hit->to && (!hit->near || cue == hit->from);
        own |= cue + 1 == hit->from && token_is(&r->note->tokens, hit->from, "no"); // "has no engraving"
        if ((r->scope.stance[i] & mask) && !own) return true;
        if (r->note->taken[i] == TAKEN_MARK || r->note->taken[i] == TAKEN_ASIDE) return true;
    }
    return false;
}

// What may follow: the end, a place, or more of the statement; "zip runs rough" and "clear ring for the
// chain" say something else.
static bool ends_at(const struct tokens *tokens, size_t i, bool near) {
    static const char *const manners[] = {"home", "shut",   "properly", "tight", "tightly", "well",
                                          "fine", "nicely", "up",       "down",  "freely",  "again",
                                          "now",  "too",    "either",   "both",  "though"};
    static const char *const words[] = {
        "and",       "no",      "with",    "so",         "all",     "throughout", "everywhere", "anywhere",
        "at",        "on",      "in",      "inside",     "round",   "around",     "right",      "along",
        "still",     "which",   "or",      "nor",        "under",   "by",         "as",         "that",
        "from",      "i",       "when",    "over",       "both",    "top",        "where",      "it",
        "to",        "because", "there",   "yet",        "since",   "you",        "they",       "has",
        "left",      "after",   "without", "anything",   "them",    "sweet",      "sweetly",    "smoothly",
        "smooth",    "not",     "across",  "underneath", "outside", "behind",     "either",     "after",
        "overnight", "either"};
    static const char *const phrases[] = {"for its age", "for the age", "for a", "for its"};
    static const char *const counts[] = {"one",  "two",  "three", "four",  "some",
                                         "most", "half", "part",  "places"};
    while (token_among(tokens, i, manners, COUNT(manners))) i++;
    if (i >= tokens->count || tokens->at[i].stop != STOP_NONE || tokens->at[i].kind == TOKEN_SIGN)
        return true;
    if (token_longest(tokens, i, phrases, COUNT(phrases)) || (!near && token_is(tokens, i, "the")))
        return true;
    return token_among(tokens, i, words, COUNT(words)) && !token_among(tokens, i + 1, counts, COUNT(counts));
}

// "Rim smooth except by the handle", "smooth?", "folds sound but one", and what a negation stands before.
static bool is_taken_back(const struct tokens *tokens, const struct fault_hit *hit) {
    static const char *const behind[] = {"except", "apart", "other",   "until",  "if",  "when",
                                         "only",   "?",     "once",    "unless", "bar", "save",
                                         "minus",  "aside", "besides", "till",   "but", "though"};
    static const char *const looking[] = {"held",   "i",      "you",     "looked",
                                          "tapped", "filled", "flicked", "struck"};
    static const char *const anew[] = {"the", "no",   "its", "there's", "a",
                                       "it",  "they", "has", "not",     "there"};
    enum { BACK_MOST = 4 };
    size_t i = hit->to, from = hit->from;
    if (token_is(tokens, i, ",")) i++;
    bool back = i < tokens->count && tokens->at[i].stop < STOP_SENTENCE &&
                token_among(tokens, i, behind, COUNT(behind));
    back &= !(ANY(tokens, i, "though") && // "stands steady though."
              (i + 1 >= tokens->count || tokens->at[i + 1].stop >= STOP_SENTENCE));
    back &= !(token_is(tokens, i, "when") && token_among(tokens, i + 1, looking, COUNT(looking)));
    back &= !(token_is(tokens, i, "but") && token_among(tokens, i + 1, anew, COUNT(anew)));
    if (back || token_is(tokens, hit->to, "?")) return true;
    for (size_t n = 0; n < BACK_MOST && from > 0 && tokens->at[from - 1].stop == STOP_NONE; n++, from--)
        if (blocks(tokens, from - 1) && !token_is(tokens, from - 1, "to") &&
            !token_is(tokens, from - 1, "no"))
            return true;
    return from > 0 && hit->from > 0 && token_is(tokens, hit->from - 1, "no");
}

static bool is_told(const struct fault_reader *r, const struct flaw *kind, const char *part) {
    for (size_t i = 0; i < r->note->record->flaw_count; i++) {
        const struct item_flaw *flaw = &r->note->record->flaws[i];
        if (flaw->kind == kind && (!part || (flaw->part && fault_is_one_of(r, flaw->part, part))))
            return true;
    }
    return false;
}

// Words of parts that stand there for what a thing does.
static bool is_verb(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"rings", "ring",  "stands", "stand",
                                        "holds", "keeps", "cuts",   "seals"};
    return token_among(tokens, i, words, COUNT(words));
}

// The part that it begins with, or that stands before or behind it.
static const char *place_of(struct fault_reader *r, const struct fault_hit *hit, const char **where) {
    static const char *const none[] = {"nose",  "bow",   "cup",  "tooth",    "pulls",
                                       "pen",   "name",  "tape", "glue",     "catches",
                                       "catch", "names", "fold", "stitches", "bald"};
    const struct tokens *tokens = &r->note->tokens;
    size_t from = hit->from, to = hit->from, last = hit->near ? hit->to - 1 : hit->to;
    *where = NULL;
    while (to < last && r->part[to] && r->note->taken[to] != TAKEN_TYPE && !is_verb(tokens, to) &&
           !(!hit->near && token_among(tokens, to, none, COUNT(none))))
        to++;
    if (to > from) return fault_place(r->note, from, to);
    struct spot spot = spot_of_hit(r, hit);
    bool inside = spot.where_from < hit->to && spot.where_to > hit->from; // "plenty of tread left"
    bool part = spot.part_to <= hit->from || spot.part_from >= hit->to;
    if (!inside) *where = fault_place(r->note, spot.where_from, spot.where_to);
    if (!part || (spot.part_to > spot.part_from && is_verb(tokens, spot.part_to - 1))) return NULL;
    return fault_place(r->note, spot.part_from, spot.part_to);
}

static bool is_own_part(struct fault_reader *r, const struct flaw *kind, const char *part) {
    const char *one = say_singular(r->note->arena, part);
    if (kind->says && strstr(kind->says, part)) return true;
    return kind->part && (text_same(part, kind->part) || text_same(one, kind->part));
}

// "Moth hasn't been near it, but I only looked by lamplight".
// What it does ("turns freely") is an area of its own then.
static bool is_unknown(const struct fault_reader *r, const struct fault_hit *hit) {
    bool own = false;
    for (size_t i = hit->from; i < hit->to; i++) own |= strstr(r->note->tokens.at[i].fold, "n't") != NULL;
    if (!own) return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (r->scope.stance[i] & STANCE_UNKNOWN &&
            (r->scope.cue[i] < hit->from || r->scope.cue[i] >= hit->to))
            return true;
    return false;
}

static void read_one(struct fault_reader *r, const struct fault_hit *hit) {
    if (is_unknown(r, hit)) {
        note_unchecked(r->note, kind_of_hit(r, hit, NULL)->rule.id);
        note_take(r->note, hit->from, hit->to, TAKEN_FLAW);
        return;
    }
    if (is_governed(r, hit) || is_taken_back(&r->note->tokens, hit) ||
        !ends_at(&r->note->tokens, hit->to, hit->near))
        return;
    const char *where, *part = place_of(r, hit, &where);
    const struct flaw *kind = kind_of_hit(r, hit, part ? part : where);
    if (part && is_own_part(r, kind, part)) part = NULL;
    if (is_told(r, kind, part)) return;
    clear_add(r, kind, part, where, false, hit->from, hit->to);
    for (size_t k = 0; k < hit->kind_count && kind->class == CLASS_ODOR; k++) // one word for several smells
        if (hit->kinds[k] != kind && !is_told(r, hit->kinds[k], NULL))
            clear_add(r, hit->kinds[k], part, where, false, hit->from, hit->to);
}

// "Rust-free", "mold-free": one word to the eye. All that stands before the hyphen names the fault.
static void read_free(struct fault_reader *r, size_t i) {
    static const char tail[] = "-free";
    struct note *note = r->note;
    const char *word = note->tokens.at[i].fold;
    size_t size = strlen(word);
    if (size <= sizeof tail || !text_same(word + size - (sizeof tail - 1), tail) ||
        note->taken[i] == TAKEN_MARK)
        return;
    const char *name = arena_copy(note->arena, word, size - (sizeof tail - 1));
    struct tokens tokens = tokens_cut(note->arena, name, strlen(name));
    struct phrase_hits found = phrases_find(note->arena, note->phrases, &tokens);
    struct fault_hit hit = {.from = i, .to = i + 1};
    for (size_t k = 0; k < found.count; k++) {
        bool whole = found.at[k].from == 0 && found.at[k].to == tokens.count && !found.at[k].near;
        if (whole && hit.kind_count < FAULT_KINDS_MOST) hit.kinds[hit.kind_count++] = found.at[k].flaw;
    }
    if (hit.kind_count) read_one(r, &hit);
}

void read_sound_said(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count && r->note->phrases; i++)
        if (strchr(r->note->tokens.at[i].fold, '-')) read_free(r, i);
    for (size_t i = 0; i < r->sound_count; i++) read_one(r, &r->sounds[i]);
}
