// SPDX-License-Identifier: MIT
// What is there and what is not, where the second clause leaves out its verb: "rear cap yes, front cap no",
// "the lid is there, the key isn't", "nine with their screws and three without", "all with cushions but one".
#include "notes/any.h"
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool ends_clause(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || token_is(tokens, i, "and") ||
           token_is(tokens, i, "but");
}

// "Is there", "is here", "is with it" in the few words before `i`.
static bool told_there(const struct tokens *tokens, size_t from, size_t i) {
    static const char *const words[] = {"there", "here",    "present",  "included",
                                        "yes",   "with it", "still on", "in place"};
    for (size_t at = from; at < i; at++)
        if (token_longest(tokens, at, words, COUNT(words))) return true;
    return false;
}

// "The key isn't.", "front cap no": the part behind its own clause's start, and nothing behind the denial.
static void read_denied_part(struct fault_reader *r, size_t i) {
    static const char *const denials[] = {"isn't", "aren't", "no", "not", "wasn't", "isnt", "arent"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_among(tokens, i, denials, COUNT(denials)) ? 1 : 0;
    if (!n && (token_phrase(tokens, i, "is not") || token_phrase(tokens, i, "are not"))) n = 2;
    if (!n || i == 0 || !ends_clause(tokens, i + n)) return;
    size_t start = i;
    while (start > 0 && tokens->at[start - 1].stop == STOP_NONE && !token_is(tokens, start - 1, "and") &&
           !token_is(tokens, start - 1, "but"))
        start--;
    bool alone = token_is(tokens, i, "no") && start + 1 == i &&
                 (i + 1 >= tokens->count || tokens->at[i + 1].stop >= STOP_SENTENCE) &&
                 (start == 0 || tokens->at[start - 1].stop >= STOP_SENTENCE); // "Key no."
    size_t end = i + n; // "door key no, winding key yes"
    while (token_is(tokens, i, "no") && end < tokens->count && tokens->at[end].stop < STOP_SENTENCE) end++;
    alone |= tokens->at[start > 0 ? start - 1 : 0].stop >= STOP_COMMA && end > i + n &&
             ANY(tokens, end - 1, "yes", "there", "here", "present");
    if (!alone && (start == 0 || !told_there(tokens, scope_sentence_start(&r->scope, start - 1), start)))
        return;
    size_t from = start;
    while (from < i && (token_is(tokens, from, "the") || token_is(tokens, from, "its"))) from++;
    size_t parts = absent_part(r, from);
    if (parts) absent_tell(r, from, from + parts, i, i + n);
}

// The flaw of the part that lacks, also where a phrase of the rules has told it already, with its number.
static void tell_count(struct fault_reader *r, size_t from, size_t to, size_t cue_from, size_t cue_to,
                       int count) {
    struct note *note = r->note;
    struct item_flaw *flaw = absent_tell(r, from, to, cue_from, cue_to);
    const struct flaw *kind = absent_kind(note->arena, note->rules, fault_words(note, from, to));
    for (size_t i = 0; i < note->record->flaw_count && !flaw; i++)
        if (note->record->flaws[i].kind == kind && !note->record->flaws[i].count)
            flaw = &note->record->flaws[i];
    if (flaw) flaw->count = count;
}

// "Nine with their screws and three without".
static void read_without(struct fault_reader *r, size_t i) {
    enum { BACK = 8 };
    const struct tokens *tokens = &r->note->tokens;
    bool bare = token_is(tokens, i, "without") && i > 0 && ends_clause(tokens, i + 1);
    int count = bare ? degrees_number(tokens, i - 1) : 0;
    if (!count) return;
    size_t start = scope_sentence_start(&r->scope, i);
    for (size_t at = i - 1; at > start && at + BACK > i; at--) {
        size_t from = at;
        if (!token_is(tokens, at - 1, "with")) continue;
        while (from < i && (token_is(tokens, from, "the") || token_is(tokens, from, "their"))) from++;
        size_t parts = absent_part(r, from);
        if (parts) tell_count(r, from, from + parts, i - 1, i + 1, count);
        return;
    }
}

// "All but one have their jackets", "all bar two of them with lids".
static void read_all_but_have(struct fault_reader *r, size_t i) {
    static const char *const buts[] = {"but", "bar", "except", "save"};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, i, "all") || !token_among(tokens, i + 1, buts, COUNT(buts))) return;
    int count = degrees_number(tokens, i + 2);
    size_t at = i + 3;
    if (ANY(tokens, at, "of") && ANY(tokens, at + 1, "them", "these")) at += 2;
    if (!count || !ANY(tokens, at, "have", "has", "with", "still", "got")) return;
    size_t from = at + 1;
    while (ANY(tokens, from, "have", "got", "their", "its", "the", "a", "an")) from++;
    size_t parts = absent_part(r, from);
    if (parts && ends_clause(tokens, from + parts) && !r->scope.fault[from])
        tell_count(r, from, from + parts, i, from, count);
}

// "All with their cushions but one".
static void read_all_but(struct fault_reader *r, size_t i) {
    static const char *const owners[] = {"with", "have", "their", "its", "the", "a", "got"};
    enum { OWNERS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, i, "all") && !token_is(tokens, i, "each")) return;
    size_t from = i + 1;
    while (from < i + 1 + OWNERS_MOST && token_among(tokens, from, owners, COUNT(owners))) from++;
    size_t parts = from > i + 1 ? absent_part(r, from) : 0, at = from + parts;
    bool but = token_is(tokens, at, "but") || token_is(tokens, at, "except") || token_is(tokens, at, "bar");
    int count = parts && but ? degrees_number(tokens, at + 1) : 0;
    if (!count || !ends_clause(tokens, at + 2)) return;
    tell_count(r, from, at, at, at + 2, count);
}

// "Poles all there bar one", "the pegs are all present except two", "nails complete apart from two or three".
static void read_there_but(struct fault_reader *r, size_t i) {
    static const char *const heres[] = {"there", "present", "here", "intact", "included", "complete"};
    static const char *const buts[] = {"bar",        "but",        "except",     "save",    "apart from",
                                       "aside from", "except for", "other than", "save for"};
    enum { BACK = 5 };
    const struct tokens *tokens = &r->note->tokens;
    size_t n = i < 3 ? 0 : token_longest(tokens, i, buts, COUNT(buts));
    if (!n || !token_among(tokens, i - 1, heres, COUNT(heres))) return;
    int count = degrees_number(tokens, i + n);
    size_t behind = i + n + 1;
    if (!count) return;
    if (ANY(tokens, behind, "or", "to") && degrees_number(tokens, behind + 1)) behind += 2, count = 0;
    if (!ends_clause(tokens, behind)) return;
    size_t at = i - 1;
    while (at > 0 && i - at < BACK && ANY(tokens, at - 1, "all", "are", "is", "still", "both")) at--;
    size_t end = at;
    while (at > 0 && end - at < BACK && r->part[at - 1] && tokens->at[at - 1].stop == STOP_NONE) at--;
    bool plain = at == end && at > 0 && tokens->at[at - 1].kind == TOKEN_WORD && // no list has them as parts
                 tokens->at[at - 1].one != tokens->at[at - 1].fold && r->note->taken[at - 1] == TAKEN_NOT &&
                 (at == 1 || tokens->at[at - 2].stop != STOP_NONE || spot_article(tokens, at - 2));
    if (plain) at--;
    if (at == end || (end == i - 1 && !plain && !token_is(tokens, end, "complete"))) return;
    struct record *record = r->note->record; // they are not all there
    size_t kept = 0;
    for (size_t k = 0; k < record->clear_count; k++)
        if (record->clear[k].span.from != tokens->at[at].from) record->clear[kept++] = record->clear[k];
    record->clear_count = kept;
    tell_count(r, at, end, i - 1, behind, count);
}

// "All the bottles are here apart from the smallest", "complete except one fork", "all there but the black
// king": what lacks by its name, or which of those before.
static void read_there_save(struct fault_reader *r, size_t i) {
    static const char *const heres[] = {"there", "present", "here", "included", "complete"};
    static const char *const buts[] = {"bar",        "but",        "except",     "save",    "apart from",
                                       "aside from", "except for", "other than", "save for"};
    enum { WORDS_MOST = 3, BACK = 4 };
    const struct tokens *tokens = &r->note->tokens;
    size_t n = i < 1 ? 0 : token_longest(tokens, i, buts, COUNT(buts));
    if (!n || !token_among(tokens, i - 1, heres, COUNT(heres)) || r->scope.stance[i - 1] & STANCE_UNKNOWN)
        return;
    size_t from = i + n, to;
    if (!ANY(tokens, from, "the", "one", "a", "an", "its") ||
        (degrees_number(tokens, from + 1) && !token_is(tokens, from, "the")))
        return;
    to = ++from;
    while (to < tokens->count && to < from + WORDS_MOST && tokens->at[to].kind != TOKEN_SIGN) {
        if (r->scope.fault[to] || r->note->taken[to] == TAKEN_FLAW || absent_is_small(tokens, to) ||
            strchr(tokens->at[to].fold, '\''))
            return;
        if (tokens->at[to++].stop != STOP_NONE) break;
    }
    if (to == from || !ends_clause(tokens, to)) return;
    size_t size = strlen(tokens->at[to - 1].fold), at = i - 1;
    bool which = tokens->at[from].kind == TOKEN_FIGURE || ANY(tokens, to - 1, "one", "last", "first") ||
                 (size > 4 && text_same(tokens->at[to - 1].fold + size - 3, "est"));
    while (at > 0 && i - at < BACK && ANY(tokens, at - 1, "are", "is", "still", "all")) at--;
    struct record *record = r->note->record; // they are not all there
    size_t kept = 0, start = tokens->at[scope_sentence_start(&r->scope, i)].from;
    for (size_t k = 0; k < record->clear_count; k++)
        if (record->clear[k].span.from < start || record->clear[k].span.from > tokens->at[i].from)
            record->clear[kept++] = record->clear[k];
    bool plural =
        at > 0 && tokens->at[at - 1].one != tokens->at[at - 1].fold && tokens->at[at - 1].stop == STOP_NONE;
    const struct flaw *pieces = ruleset_flaw(r->note->rules, "missing-pieces");
    record->clear_count = kept;
    if (which && plural)
        tell_count(r, at - 1, at, i - 1, to, 1);
    else if (which && pieces)
        fault_add(r, pieces, NULL, NULL, i - 1, to)->count = 1;
    else if (!which)
        absent_tell(r, from, to, i - 1, from - 1);
}

// "Five of the weights are here, the 8 oz is not": what is not there while the rest is.
static void read_here_not(struct fault_reader *r, size_t i) {
    static const char *const heres[] = {"here", "there", "present", "included"};
    enum { SUBJECT_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    bool apart = token_is(tokens, i, "not") && i > 0 && ANY(tokens, i - 1, "is", "are");
    if (!apart && !ANY(tokens, i, "isn't", "aren't")) return;
    size_t verb = apart ? i - 1 : i, at = verb;
    if (!ends_clause(tokens, i + 1)) return;
    while (at > 0 && verb - at < SUBJECT_MOST && tokens->at[at - 1].stop == STOP_NONE &&
           !ANY(tokens, at - 1, "but", "and"))
        at--;
    size_t end = at;
    while (end > 0 && (tokens->at[end - 1].stop == STOP_COMMA || ANY(tokens, end - 1, "but", "and"))) end--;
    if (end == at || end < 2 || !token_among(tokens, end - 1, heres, COUNT(heres))) return;
    size_t from = at;
    while (from < verb && ANY(tokens, from, "the", "its", "a")) from++;
    if (from == verb || !note_free(r->note, i, i + 1) || r->scope.fault[i]) return;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "missing-pieces");
    if (kind && tokens->at[from].kind == TOKEN_FIGURE) // "the 8 oz"
        fault_add(r, kind, NULL, NULL, from, i + 1);
    else
        absent_tell(r, from, verb, verb, i + 1);
}

// "The tall one has its stopper, the short one doesn't": it is the short one that lacks it.
static void name_lacker(struct fault_reader *r, struct item_flaw *flaw, size_t from, size_t to) {
    const struct tokens *tokens = &r->note->tokens;
    while (from < to && ANY(tokens, from, "the", "its", "my", "a")) from++;
    bool bare = from + 1 == to && ANY(tokens, from, "one", "it", "they", "two", "three");
    if (flaw && from < to && !bare && !ANY(tokens, from, "other", "others", "rest"))
        flaw->where = fault_place(r->note, from, to);
}

// "One has a lid, the other doesn't", "vinegar has its stopper but the oil hasn't": of what the first clause
// has, the second lacks one.
static void read_other_lacks(struct fault_reader *r, size_t i) {
    static const char *const denials[] = {
        "doesn't",         "hasn't",        "does not", "has not", "doesn't have one",
        "hasn't got one",  "hasn't one",    "has none", "doesnt",  "hasnt",
        "doesn't have it", "hasn't got it", "haven't",  "don't"};
    static const char *const owners[] = {"a", "an", "its", "the", "their"};
    enum { FAR = 5, SUBJECT_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, denials, COUNT(denials)), subject = i;
    if (!n || !i || (i + n < tokens->count && tokens->at[i + n].stop == STOP_NONE)) return;
    while (subject > 0 && i - subject < SUBJECT_MOST && tokens->at[subject - 1].stop == STOP_NONE &&
           !ANY(tokens, subject - 1, "and", "but", "while"))
        subject--;
    size_t end = subject; // of the first clause
    while (end > 0 && (tokens->at[end - 1].stop == STOP_COMMA || ANY(tokens, end - 1, "and", "but", "while")))
        end--;
    if (end == subject || end < 3) return;
    for (size_t at = end; at-- > 1 && at + FAR > end;) {
        if (tokens->at[at].stop >= STOP_CLAUSE || r->scope.fault[at]) return;
        if (!ANY(tokens, at - 1, "has", "have", "with", "got") ||
            !token_among(tokens, at, owners, COUNT(owners)))
            continue;
        size_t parts = absent_part(r, at + 1);
        if (parts && at + 1 + parts == end) name_lacker(r, absent_tell(r, at + 1, end, i, i + n), subject, i);
        return;
    }
}

// Was it just told that a part is missing, in words that end before `end`?
static bool told_missing(const struct fault_reader *r, size_t end) {
    const struct record *record = r->note->record;
    for (size_t i = 0; i < record->flaw_count; i++)
        if (record->flaws[i].kind->form == ABSENCE &&
            record->flaws[i].span.to == r->note->tokens.at[end - 1].to)
            return true;
    return false;
}

// "Pendulum missing, and the key.", "lid gone and two of the feet too".
static void read_and_too(struct fault_reader *r, size_t i) {
    static const char *const lost[] = {"missing", "gone", "lost", "absent"};
    static const char *const small[] = {"the", "its", "one", "of", "both", "two", "three", "four"};
    static const char *const tails[] = {"too", "as", "also"};
    const struct tokens *tokens = &r->note->tokens;
    size_t end = i > 0 && tokens->at[i - 1].stop == STOP_COMMA ? i - 1 : i, from = i + 1;
    if (!token_is(tokens, i, "and") || end == 0 || !token_among(tokens, end - 1, lost, COUNT(lost)) ||
        !told_missing(r, end))
        return;
    while (token_among(tokens, from, small, COUNT(small))) from++;
    size_t to = from;
    while (to < tokens->count && r->part[to] && r->note->taken[to] == TAKEN_NOT) to++;
    bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                token_among(tokens, to, tails, COUNT(tails));
    if (from > i + 1 && to > from && ends) absent_tell(r, from, to, i, i + 1);
}

bool read_other_gone(struct fault_reader *r, size_t i) {
    static const char *const gone[] = {"missing", "gone", "lost", "absent"};
    const struct tokens *tokens = &r->note->tokens;
    struct spot other = {0};
    if (!token_among(tokens, i, gone, COUNT(gone)) || !ends_clause(tokens, i + 1)) return false;
    if (r->scope.stance[i] & (STANCE_OTHER | STANCE_WITHDRAWN | STANCE_UNKNOWN | STANCE_DENIED)) return false;
    size_t at = i; // "the other's stopper is missing" is no word of the other
    while (at > 0 &&
           ANY(tokens, at - 1, "is", "are", "has", "have", "been", "was", "now", "long", "also", "gone"))
        at--;
    if (at > 1 && ANY(tokens, at - 2, "other's", "others'") && tokens->at[at - 1].stop == STOP_NONE)
        return false;
    if (!spot_other(r, i, &other) || !other.which || !*other.which) {
        // "Brass knob on one side, the other knob is gone"
        if (at < 2 || !token_is(tokens, at - 2, "other") || !r->part[at - 1] ||
            r->note->taken[at - 1] == TAKEN_TYPE)
            return false;
        absent_tell(r, at - 1, at, i, i + 1);
        return true;
    }
    absent_tell(r, other.part_from, other.part_to, i, i + 1);
    return true;
}

void read_elliptical(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        if (r->note->taken[i] == TAKEN_NOT) read_other_gone(r, i);
        read_denied_part(r, i);
        read_without(r, i);
        read_all_but(r, i);
        read_all_but_have(r, i);
        read_there_but(r, i);
        read_there_save(r, i);
        read_here_not(r, i);
        read_other_lacks(r, i);
        read_and_too(r, i);
    }
}
