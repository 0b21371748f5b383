// SPDX-License-Identifier: MIT
// A look that was not had because nobody did what it takes: "didn't take the spool off", "not lifted the
// lining", "the bottom drawer hasn't been opened". What lies under it or in it was not seen. Where a label or
// dirt was left on, nothing is hidden by that.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { UNDER, INSIDE, TAKEN_OUT, ITSELF, COVERED };

static size_t negation_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"didn't",     "did not",  "didnt",      "haven't", "have not",
                                        "havent",     "hasn't",   "has not",    "hasnt",   "not",
                                        "nobody has", "nobody's", "no one has", "nobody",  "no one's",
                                        "noone has",  "never",    "without",    "haven't", "not going to"};
    return token_longest(tokens, i, words, COUNT(words));
}

static size_t fillers_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"i",     "been",        "yet",      "actually", "ever",
                                        "even",  "had",         "tried to", "tried",    "to",
                                        "dared", "bothered to", "got",      "have",     "managed to"};
    size_t from = i, n;
    while ((n = token_longest(tokens, i, words, COUNT(words))) != 0) i += n;
    return i - from;
}

// With the word that has to stand behind what was not moved; NULL where none has to.
static const struct act {
    const char *verbs, *behind;
    int what;
} acts[] = {
    {"take|taken|took|taking|pull|pulled|lift|lifted|slide|slid|get|got|had|have|prise|prised|pry|pried|"
     "peel|peeled",
     "off", UNDER},
    {"take|taken|took|taking|pull|pulled|lift|lifted|slide|slid|get|had|have|got|empty|emptied", "out",
     TAKEN_OUT},
    {"take|taken|took|taking|pull|pulled|get|got|had|have", "apart|open", INSIDE},
    {"lift|lifted|lifting|remove|removed|removing|unscrew|unscrewed|move|moved|raise|raised|unpin|unpinned",
     NULL, UNDER},
    {"open|opened|opening|unlock|unlocked|undo|undone|unlace|unlaced|unbox|unboxed|unpack|unpacked|empty|"
     "emptied",
     NULL, INSIDE},
    {"unfold|unfolded|unfolding|unroll|unrolled|unwrap|unwrapped|untie|untied|extend|extended|spread", NULL,
     ITSELF},
};

static bool is_verb(const struct tokens *tokens, size_t i, const char *verbs) {
    for (const char *at = verbs; *at;) {
        size_t n = strcspn(at, "|");
        if (i < tokens->count && !strncmp(tokens->at[i].fold, at, n) && !tokens->at[i].fold[n]) return true;
        at += n + (at[n] == '|');
    }
    return false;
}

// What sits on the surface hides nothing that a seller would look for.
static bool is_coat(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "sticker", "stickers", "label", "labels", "tag", "tags", "price", "tape", "rust",
               "dirt", "paint", "polish", "dust", "mark", "marks", "stain", "stains", "grime", "gunk",
               "tarnish", "wax", "patina", "staples", "nails", "nail", "name", "varnish", "lid", "it", "them",
               "this", "these", "box", "time", "money", "care", "offers", "returns", "advantage", "chance",
               "risk", "risks", "bid", "bids");
}

static bool ends(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           ANY(tokens, i, "to", "so", "as", "because", "since", "but", "yet", "for", "and", "in", "myself",
               "at", "of", "from", "by", "or", "either");
}

static bool is_governed(const struct fault_reader *r, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (r->note->taken[i] == TAKEN_MARK || r->note->taken[i] == TAKEN_ASIDE ||
            r->note->taken[i] == TAKEN_FLAW || (r->scope.stance[i] & (STANCE_UNKNOWN | STANCE_WITHDRAWN)))
            return true;
    return false;
}

static size_t name_from(const struct tokens *tokens, size_t i) {
    while (ANY(tokens, i, "the", "its", "any", "either", "a", "of", "all", "every", "their", "both")) i++;
    return i;
}

static void tell(struct fault_reader *r, int what, size_t name, size_t to, size_t from, size_t end) {
    struct note *note = r->note;
    const char *words = fault_words(note, name, to);
    note_unchecked(note, what == UNDER     ? arena_format(note->arena, "under the %s", words)
                         : what == INSIDE  ? arena_format(note->arena, "inside the %s", words)
                         : what == COVERED ? arena_format(note->arena, "what the %s covers", words)
                         : what == ITSELF  ? arena_format(note->arena, "%s, not opened out", words)
                                           : arena_format(note->arena, "%s, not taken out", words));
    note_take(note, from, end, TAKEN_SCOPE);
    note_reading(note, from, end, "unchecked area", "not looked at");
}

// "Never took it out of the frame", "not been out of its box": what holds it covers a part of it.
static size_t read_out_of(struct fault_reader *r, size_t i, size_t at) {
    static const char *const covers[] = {"frame", "mount",  "case", "box",     "sleeve", "wrapper",
                                         "glass", "album",  "bag",  "cover",   "jacket", "holder",
                                         "crate", "sheath", "mat",  "packing", "frames", "sleeves",
                                         "cases", "boxes",  "tube", "folder"};
    const struct tokens *tokens = &r->note->tokens;
    while (ANY(tokens, at, "take", "taken", "took", "get", "got", "had", "have", "it", "them", "pulled",
               "slid", "been"))
        at++;
    if (!token_phrase(tokens, at, "out of")) return 0;
    size_t name = name_from(tokens, at + 2);
    if (!token_among(tokens, name, covers, COUNT(covers)) || !ends(tokens, name + 1) ||
        is_governed(r, i, name))
        return 0;
    tell(r, COVERED, name, name + 1, i, name + 1);
    return name + 1;
}

// "Didn't take the spool off": verb, name, particle.
static size_t read_act(struct fault_reader *r, size_t i, size_t verb) {
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t k = 0; k < COUNT(acts); k++) {
        if (!is_verb(tokens, verb, acts[k].verbs)) continue;
        size_t name = name_from(tokens, verb + 1), to = name;
        while (to < tokens->count && to < name + WORDS_MOST && tokens->at[to].kind == TOKEN_WORD &&
               !ends(tokens, to) && !(acts[k].behind && is_verb(tokens, to, acts[k].behind)))
            to++;
        if (to == name || is_coat(tokens, to - 1) || is_coat(tokens, name) ||
            (!acts[k].behind && r->scope.fault[to - 1]))
            continue;
        bool moved = acts[k].behind && is_verb(tokens, to, acts[k].behind);
        if (acts[k].behind ? !moved : !ends(tokens, to)) continue;
        size_t end = moved ? to + 1 : to;
        if (!acts[k].behind && name == verb + 1) continue; // "not opened yet", "not moved house"
        if (is_governed(r, i, end)) return 0;
        tell(r, acts[k].what, name, to, i, end);
        return end;
    }
    return 0;
}

// "The leaf has not been unfolded": the name before it.
static size_t read_passive(struct fault_reader *r, size_t i, size_t verb) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t to = i;
    while (to > 0 && ANY(tokens, to - 1, "has", "have", "was", "were", "is", "are")) to--;
    size_t from = to;
    while (from > 0 && to - from < WORDS_MOST && r->part[from - 1] && tokens->at[from - 1].stop == STOP_NONE)
        from--;
    if (from == to || is_coat(tokens, to - 1)) return 0;
    for (size_t k = 0; k < COUNT(acts); k++) {
        if (!is_verb(tokens, verb, acts[k].verbs)) continue;
        bool moved = acts[k].behind && is_verb(tokens, verb + 1, acts[k].behind);
        size_t end = moved ? verb + 2 : verb + 1;
        if ((acts[k].behind && !moved) || !ends(tokens, end)) continue;
        if (is_governed(r, i, end)) return 0;
        tell(r, acts[k].what, from, to, i, end);
        return end;
    }
    return 0;
}

void read_unlifted(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n = negation_at(tokens, i);
        if (!n) continue;
        size_t verb = i + n + fillers_at(tokens, i + n);
        if (verb >= tokens->count) return;
        bool passive = verb > i + n && token_is(tokens, verb - 1, "been");
        size_t end = passive ? read_passive(r, i, verb) : read_act(r, i, verb);
        if (!end && verb > i + n && !passive) end = read_act(r, i, verb - 1); // "not had the felt off"
        if (!end) end = read_out_of(r, i, i + n);
        if (end) i = end - 1;
    }
}
