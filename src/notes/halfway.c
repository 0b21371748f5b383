// SPDX-License-Identifier: MIT
// It works, but not quite, not always or not by itself: "works, sort of", "runs if you hold the lead", "goes
// in fits and starts", "barely works". And it does not work, but only in some way: "doesn't run for long",
// "won't play on batteries". Either is working partly.
#include <string.h>

#include "notes/any.h"
#include "notes/things.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static const char *const verbs[] = {
    "strike",  "sound",  "sounds",   "print",   "type",   "light",   "heat",     "go",
    "works",   "work",   "worked",   "working", "runs",   "run",     "goes",     "plays",
    "play",    "ticks",  "lights",   "heats",   "starts", "fires",   "operates", "functions",
    "charges", "prints", "records",  "rings",   "chimes", "strikes", "going",    "running",
    "calls",   "sings",  "whistles", "buzzes",  "hoots",  "tolls"};

// What a part does; it halves its work only by what must be done for it.
static const char *const motions[] = {"winds", "turns", "opens",  "closes", "pulls", "folds",
                                      "locks", "moves", "slides", "comes",  "burns", "shuts"};

static const char *const before[] = {
    "sort of",  "kind of",        "more or less", "only just", "just about", "barely",    "hardly",
    "scarcely", "partly",         "partially",    "half",      "mostly",     "sometimes", "occasionally",
    "almost",   "only sometimes", "sorta",        "kinda",     "semi"};

// Behind a verb that is not denied.
static const char *const after[] = {"most times",
                                    "one time in",
                                    "about half the time",
                                    "half of the time",
                                    "when warm",
                                    "when it's warm",
                                    "when it is warm",
                                    "with patience",
                                    "badly",
                                    "weakly",
                                    "very weakly",
                                    "faintly",
                                    "very faintly",
                                    "feebly",
                                    "quietly",
                                    "very quietly",
                                    "hesitantly",
                                    "unevenly",
                                    "erratically",
                                    "poorly",
                                    "slow",
                                    "a bit slow",
                                    "rather slow",
                                    "slowly",
                                    "noisily",
                                    "very noisy",
                                    "noisy",
                                    "loses speed",
                                    "losing speed",
                                    "whenever it",
                                    "when it feels like",
                                    "off whenever it",
                                    "off when it feels",
                                    "except one",
                                    "except two",
                                    "bar one",
                                    "but one",
                                    "but two",
                                    "save the",
                                    "save one",
                                    "on except",
                                    "up except",
                                    "sort of",
                                    "kind of",
                                    "after a fashion",
                                    "some of the time",
                                    "most of the time",
                                    "part of the time",
                                    "half the time",
                                    "on a good day",
                                    "now and then",
                                    "now and again",
                                    "at times",
                                    "sometimes",
                                    "occasionally",
                                    "when it wants",
                                    "when it likes",
                                    "when it feels like it",
                                    "when it's in the mood",
                                    "if it feels like it",
                                    "if you're patient",
                                    "if you are patient",
                                    "if you jiggle",
                                    "if you hold",
                                    "if you wiggle",
                                    "if you press",
                                    "if you push",
                                    "if you tap",
                                    "if you thump",
                                    "if you bang",
                                    "if you shake",
                                    "if you lean",
                                    "if you twist",
                                    "if you keep",
                                    "if you give",
                                    "if you are gentle",
                                    "if you're gentle",
                                    "if you go slow",
                                    "if you nudge",
                                    "if you help",
                                    "if you prop",
                                    "if held",
                                    "if laid",
                                    "if tilted",
                                    "if tipped",
                                    "if pushed",
                                    "if pressed",
                                    "when you jiggle",
                                    "when you hold",
                                    "when you wiggle",
                                    "when you press",
                                    "when you push",
                                    "when you tap",
                                    "when you thump",
                                    "when you bang",
                                    "when held",
                                    "when tilted",
                                    "when tipped",
                                    "when laid",
                                    "only if",
                                    "only when",
                                    "only on",
                                    "only with",
                                    "only sometimes",
                                    "only after",
                                    "only now and then",
                                    "only part",
                                    "only half",
                                    "only for",
                                    "as long as you",
                                    "so long as you",
                                    "provided you",
                                    "after a thump",
                                    "after a whack",
                                    "after a knock",
                                    "after a shove",
                                    "after a nudge",
                                    "after a kick",
                                    "after a shake",
                                    "after a few tries",
                                    "after a few goes",
                                    "after several",
                                    "after a bang",
                                    "after a tap",
                                    "once warm",
                                    "once it's warm",
                                    "once it warms",
                                    "once it has warmed",
                                    "once warmed",
                                    "in fits and starts",
                                    "by fits and starts",
                                    "in bursts",
                                    "in spurts",
                                    "off and on",
                                    "up to a point",
                                    "for a bit then",
                                    "for a while then",
                                    "for a bit and then",
                                    "for a minute then",
                                    "for a few minutes then",
                                    "for a while and then",
                                    "with a push",
                                    "with a shove",
                                    "with a nudge",
                                    "with a bit of help",
                                    "with some help",
                                    "with coaxing",
                                    "with persuasion",
                                    "with some persuasion",
                                    "with encouragement",
                                    "except for",
                                    "except the",
                                    "except that",
                                    "apart from",
                                    "bar the",
                                    "aside from",
                                    "other than the"};

// Behind one that is.
static const char *const denied_after[] = {
    "well",          "very well",     "too well",     "that well",       "properly",
    "right",         "correctly",     "as it should", "as they should",  "like it should",
    "for long",      "all the time",  "every time",   "all of the time", "reliably",
    "smoothly",      "straight away", "first time",   "consistently",    "evenly",
    "on low",        "on high",       "on mains",     "on battery",      "on batteries",
    "on the low",    "on the high",   "on full",      "at full",         "at first",
    "half the time", "much",          "fully",        "on every",        "on all",
    "in reverse",    "cleanly",       "without a",    "unless you",      "unless it's",
    "until you",     "until it"};

// Is it the verb of the thing or of a part, and no noun: "it works", "clock ticks", "will run"?
static bool has_subject(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"it",   "and",  "still", "they", "which", "that", "but",   "will",
                                        "does", "only", "just",  "now",  "also",  "all",  "both",  "is",
                                        "are",  "get",  "gets",  "keep", "side",  "then", "itself"};
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE) return true;
    static const char *const many[] = {"letters",  "notes",     "stations", "speeds",
                                       "settings", "functions", "cuckoo",   "bird"};
    return r->note->taken[i - 1] == TAKEN_TYPE || r->part[i - 1] || AMONG(tokens, i - 1, many) ||
           AMONG(tokens, i - 1, words) || function_kind(r, i - 1);
}

// "Joints sound apart from one": whole, and nothing that is heard.
static bool is_whole(const struct tokens *tokens, size_t i) {
    static const char *const heard[] = {"notes", "note",  "reeds",    "keys",  "strings", "buttons", "pipes",
                                        "all",   "they",  "will",     "bells", "both",    "drones",  "chimes",
                                        "horn",  "horns", "speakers", "tones", "stops",   "to"};
    return token_is(tokens, i, "sound") &&
           (i == 0 || noun_excepts(tokens, i + 1) || !AMONG(tokens, i - 1, heard));
}

static bool is_denied(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"doesn't", "don't", "won't", "not",  "isn't",  "didn't",  "never",
                                        "doesnt",  "dont",  "wont",  "isnt", "aren't", "wouldn't"};
    for (size_t back = 1; back <= 2 && back <= i && tokens->at[i - back].stop == STOP_NONE; back++)
        if (AMONG(tokens, i - back, words)) return true;
    return false;
}

static size_t ahead(const struct tokens *tokens, size_t i) {
    for (size_t back = 1; back <= 3 && back <= i; back++) {
        size_t n = token_longest(tokens, i - back, before, COUNT(before));
        if (n == back) return n;
    }
    return 0;
}

// "Goes forward but not back", "plays records but won't take tapes": one thing and not the other.
static size_t contrast(const struct tokens *tokens, size_t i) {
    enum { FAR = 4 };
    static const char *const nots[] = {"not",    "doesn't", "don't", "won't",  "never",
                                       "doesnt", "wont",    "dont",  "nothing"};
    static const char *const looks[] = {
        "tested",  "tried",  "timed",  "checked", "sure",    "very",    "too",      "for",      "as",
        "much",    "bad",    "great",  "in",      "badly",   "perfect", "original", "included", "guaranteed",
        "that",    "by",     "pretty", "new",     "used",    "been",    "cleaned",  "polished", "show",
        "detract", "affect", "matter", "look",    "have",    "need",    "know",     "leak",     "smell",
        "wobble",  "stick",  "major",  "serious", "come",    "quote",   "hold",     "expect",   "opened",
        "a",       "the",    "to",     "wrong",   "include", "mind",    "rattle",   "worth",    "had"};
    static const char *const wholes[] = {"go", "work", "run", "start", "tick", "function", "fire"};
    static const char *const ways[] = {"back", "backward", "backwards", "reverse",
                                       "in",   "up",       "down",      "other"};
    for (size_t at = i; at <= i + FAR && at + 2 < tokens->count && tokens->at[at].stop == STOP_NONE; at++) {
        if (!token_is(tokens, at, "but")) continue;
        size_t no = at + 1;
        if (ANY(tokens, no, "it", "they") && tokens->at[no].stop == STOP_NONE) no++; // "but it won't"
        if (!AMONG(tokens, no, nots) || no + 1 >= tokens->count) continue;
        bool way = tokens->at[no + 1].stop == STOP_NONE && AMONG(tokens, no + 2, ways);
        if (AMONG(tokens, no + 1, wholes)) return way ? no + 3 - i : 0; // "winds but won't go"
        return AMONG(tokens, no + 1, looks) || tokens->at[no + 1].stop != STOP_NONE ? 0 : no + 2 - i;
    }
    return 0;
}

// "About half the notes sound", "only two of the speeds run".
static size_t share_at(const struct fault_reader *r, size_t i) {
    enum { FAR = 6 };
    static const char *const shares[] = {"half", "some", "few", "several", "only", "part", "two-thirds"};
    const struct tokens *tokens = &r->note->tokens;
    static const char *const more[] = {"when", "with",     "on", "now",  "and",   "but",
                                       "if",   "properly", "at", "only", "right", "well"};
    bool ends = i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE || AMONG(tokens, i + 1, more);
    if (i == 0 || !ends || !function_kind(r, i - 1)) return 0;
    for (size_t back = 1; back <= FAR && back <= i && tokens->at[i - back].stop == STOP_NONE; back++)
        if (AMONG(tokens, i - back, shares) ||
            (token_is(tokens, i - back, "one") && token_is(tokens, i - back + 1, "of")))
            return back;
    return 0;
}

// "Works fine but only on low": a word of praise and "but" between.
static size_t behind(const struct tokens *tokens, size_t i) {
    static const char *const fine[] = {"fine", "ok", "okay", "well", "alright", "great", "good", "it"};
    static const char *const turns[] = {"but", "though", "and", "although"};
    size_t at = i, n = token_longest(tokens, at, after, COUNT(after));
    if (!n && AMONG(tokens, at, fine)) n = token_longest(tokens, ++at, after, COUNT(after));
    if (!n && at < tokens->count && tokens->at[at].stop == STOP_COMMA)
        n = token_longest(tokens, ++at, after, COUNT(after));
    static const char *const ways[] = {"back", "out", "in", "up", "down", "round", "on", "off", "over"};
    if (!n && AMONG(tokens, i, ways)) n = token_longest(tokens, at = i + 1, after, COUNT(after));
    if (!n && AMONG(tokens, at, turns)) n = token_longest(tokens, ++at, after, COUNT(after));
    if (!n && (n = contrast(tokens, i))) at = i;
    return n ? at + n - i : 0;
}

// What was read of those words before: that it works, or that it does not.
static void forget(struct fault_reader *r, size_t from, size_t to) {
    struct record *record = r->note->record;
    struct note_span told = note_span_of(r->note, from, to);
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        // "Only one of the two blades moves": the other is there.
        bool either = flaw->kind->class == CLASS_MISSING ||
                      text_same(flaw->kind->rule.id, "working-tested") ||
                      text_same(flaw->kind->rule.id, "not-working");
        if (!either || flaw->span.to <= told.from || flaw->span.from >= told.to)
            record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

// "Winds back only with a finger", "opens if you lift it".
static size_t by_hand(const struct tokens *tokens, size_t i) {
    static const char *const ways[] = {"back", "out", "in", "up", "down", "round", "on", "off", "over"};
    static const char *const helps[] = {"only if",       "only with",     "if you push",   "if you press",
                                        "if you lift",   "if you hold",   "if you jiggle", "if you pull",
                                        "when you lift", "when you push", "but only with", "but only if",
                                        "but only when", "but only just", "only just"};
    size_t at = AMONG(tokens, i, ways) ? i + 1 : i, n = token_longest(tokens, at, helps, COUNT(helps));
    return n ? at + n - i : 0;
}

static bool is_told(const struct fault_reader *r, size_t from, size_t to) {
    struct note_span told = note_span_of(r->note, from, to);
    for (size_t i = 0; i < r->note->record->flaw_count; i++) {
        const struct item_flaw *flaw = &r->note->record->flaws[i];
        bool over =
            flaw->span.to > told.from && flaw->span.from < told.to && flaw->kind->class != CLASS_MISSING;
        if (over && !text_same(flaw->kind->rule.id, "working-tested") &&
            !text_same(flaw->kind->rule.id, "not-working"))
            return true;
    }
    return false;
}

static void tell(struct fault_reader *r, size_t from, size_t i, size_t to) {
    size_t part = 0;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "partly-working");
    bool of_part = function_part(r, from, &part) && r->note->taken[part] != TAKEN_TYPE;
    const struct flaw *own = of_part ? function_kind(r, part) : NULL;
    bool moves = own && text_same(own->rule.id, "seized") && to >= 2 &&
                 token_is(&r->note->tokens, to - 2, "nothing"); // "the handle turns but nothing prints"
    if (of_part && !moves) kind = own;
    if (!kind || (!of_part && !running_can(r->note)) || is_told(r, i, to)) return;
    if (function_of_crack(r, to - 1, to) || function_of_crack(r, i, to)) return;
    forget(r, i, to);
    struct fault_hit hit = {.from = i, .to = to, .kinds = {kind}, .kind_count = 1};
    fault_tell(r, &hit, kind, of_part ? fault_place(r->note, part, part + 1) : NULL, NULL);
}

// "I can't tell you whether it goes": the thing itself.
static bool is_doubted(const struct fault_reader *r, size_t i) {
    static const char *const subjects[] = {"it", "they", "she", "still", "this"};
    static const char *const ifs[] = {"if", "whether", "that"};
    const struct tokens *tokens = &r->note->tokens;
    static const char *const knows[] = {"know",    "knows",    "say",       "tell", "sure", "clue",
                                        "promise", "promises", "guarantee", "see",  "idea", "swear"};
    bool open = r->scope.stance[i] & STANCE_UNKNOWN;
    for (size_t at = scope_sentence_start(&r->scope, i); at < i && !open; at++)
        open = AMONG(tokens, at, knows) && at + 8 > i;
    static const char *const cores[] = {"work", "works", "working",   "go",       "goes",  "going",
                                        "run",  "runs",  "functions", "operates", "plays", "play"};
    if (!open || i < 2 || !AMONG(tokens, i, cores) || !AMONG(tokens, i - 1, subjects) ||
        !running_can(r->note) || running_is_told(r->note->record))
        return false;
    static const char *const certain[] = {"i know",        "i'm sure",  "can say",    "can tell",
                                          "can promise",   "we know",   "can see",    "could see",
                                          "can guarantee", "i promise", "i guarantee"};
    for (size_t at = scope_sentence_start(&r->scope, i); at < i; at++)
        if (token_longest(tokens, at, certain, COUNT(certain))) return false;
    bool asked = AMONG(tokens, i - 2, ifs) || (i > 2 && AMONG(tokens, i - 3, ifs));
    static const char *const ways[] = {"with", "to", "in", "on", "back", "for", "together"}; // "goes with"
    return asked && !AMONG(tokens, i + 1, ways);
}

// "Only seen in lamp light", "heat in the kitchen": no verb.
static bool is_noun(const struct tokens *tokens, size_t i) {
    return i > 0 && ANY(tokens, i, "light", "heat", "sound", "print", "type", "run", "play") &&
           ANY(tokens, i - 1, "in", "by", "under", "with", "of", "a", "the", "lamp", "candle", "good",
               "strong", "bright", "natural", "raking", "right", "certain", "from", "no", "any", "some",
               "direct", "full");
}

void read_halfway(struct fault_reader *r) {
    static const uint16_t off =
        STANCE_PAST | STANCE_UNKNOWN | STANCE_WITHDRAWN | STANCE_OTHER | STANCE_PLANNED;
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD || is_noun(tokens, i)) continue;
        bool motion = AMONG(tokens, i, motions);
        bool verb = AMONG(tokens, i, verbs) && !is_whole(tokens, i);
        bool other = !motion && !verb && contrast(tokens, i + 1) && function_does(tokens, i) &&
                     has_subject(r, i); // "sprays", "reels"
        if (!motion && !verb && !other) continue;
        if (is_doubted(r, i)) {
            fault_add(r, ruleset_flaw(r->note->rules, "untested"), NULL, NULL, i, i + 1);
            continue;
        }
        if ((r->scope.stance[i] & off) || r->note->taken[i] == TAKEN_TYPE ||
            r->note->taken[i] == TAKEN_ASIDE || r->note->taken[i] == TAKEN_MARK)
            continue;
        bool denied = is_denied(tokens, i);
        if (other) {
            size_t n = denied ? 0 : contrast(tokens, i + 1);
            if (n) tell(r, i, i, i + 1 + n);
            continue;
        }
        if (motion) {
            size_t back = denied ? 0 : share_at(r, i);
            if (back) tell(r, i, i - back, i + 1);
            size_t n = denied || !has_subject(r, i) ? 0 : by_hand(tokens, i + 1);
            if (!n && !denied && has_subject(r, i)) n = contrast(tokens, i + 1);
            if (n) tell(r, i, i, i + 1 + n);
            continue;
        }
        size_t lead = denied ? 0 : ahead(tokens, i), from = i - lead, n = 0;
        if (denied) {
            while (from > 0 && from + 2 > i && tokens->at[from - 1].stop == STOP_NONE &&
                   is_denied(tokens, from))
                from--;
            n = token_longest(tokens, i + 1, denied_after, COUNT(denied_after));
        } else if (!lead && has_subject(r, i)) {
            n = behind(tokens, i + 1);
            bool own = n && ANY(tokens, i + n, "one", "two") && // "both work but one is bent"
                       ANY(tokens, i + 1 + n, "is", "has", "are", "have", "was", "needs");
            if (own) n = 0;
        }
        size_t back = denied || lead || n ? 0 : share_at(r, i);
        if (!lead && !n && !back) continue;
        tell(r, from, i - back, i + 1 + n);
        i += n;
    }
}
