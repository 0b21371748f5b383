// SPDX-License-Identifier: MIT
// What does nothing, in the words of every day: "the right one stays cold", "the needle just lays there", "it
// pays no attention", "not a peep out of it", "the hands never moved". Of the whole it is not working; of one
// of its parts, settings or halves, or beside something that does its work, it works in part.
#include <string.h>

#include "notes/any.h"
#include "notes/beside.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// What is said of the thing or of a part of it.
static const char *const idle[] = {"stays cold",        "stay cold",          "stays dark",
                                   "stay dark",         "stays dead",         "stays silent",
                                   "stays blank",       "stays put",          "stayed cold",
                                   "stayed dark",       "stayed dead",        "stayed silent",
                                   "stayed blank",      "remains dark",       "remains silent",
                                   "quits turning",     "quits running",      "quits spinning",
                                   "quit turning",      "quits working",      "quit working",
                                   "quits heating",     "makes no sound",     "make no sound",
                                   "made no sound",     "makes no noise",     "make no noise",
                                   "makes no heat",     "makes no light",     "gives no sound",
                                   "gives no light",    "gives no heat",      "puts out no heat",
                                   "puts out no sound", "just lays there",    "just lies there",
                                   "just sits there",   "just hangs there",   "just lays",
                                   "only lays there",   "pays no attention",  "pay no attention",
                                   "ignores you",       "ignores me",         "ignore you",
                                   "ignores it",        "refuses to turn",    "refuses to steer",
                                   "refuses to go",     "refuses to light",   "refuses to move",
                                   "refuses to play",   "refuse to move",     "refuse to light",
                                   "refuse to turn",    "refuse to play",     "refuses to spin",
                                   "refuses to work",   "is silent",          "are silent",
                                   "is mute",           "are mute",           "is dead",
                                   "are dead",          "it's mute",          "it's dead",
                                   "it's silent",       "isn't going round",  "isn't going around",
                                   "isn't turning",     "isn't spinning",     "isn't moving",
                                   "isn't lighting",    "isn't heating",      "isn't coming on",
                                   "aren't lighting",   "aren't turning",     "aren't moving",
                                   "isn't responding",  "doesn't go round",   "doesn't go around",
                                   "doesnt go round",   "doesnt go around",   "won't go round",
                                   "won't go around",   "doesn't respond",    "don't respond",
                                   "won't respond",     "doesn't come on",    "don't come on",
                                   "won't come on",     "never moved",        "never budged",
                                   "never lit",         "never turned",       "never came on",
                                   "never started",     "never answered",     "never caught",
                                   "wouldn't catch",    "wouldn't kick over", "wouldn't turn over",
                                   "wouldn't come on",  "wouldn't light",     "won't catch",
                                   "does nothing",      "do nothing",         "did nothing",
                                   "won't glow",        "doesn't glow"};
// By themselves of the whole.
static const char *const nothings[] = {"not a peep",
                                       "not a sound out of it",
                                       "not a flicker",
                                       "not a glimmer",
                                       "not a click out of it",
                                       "nothing glows",
                                       "nothing lights",
                                       "nothing lights up",
                                       "nothing moves",
                                       "nothing turns",
                                       "nothing comes on",
                                       "nothing plays",
                                       "can't get it to come on",
                                       "couldn't get it to come on",
                                       "can't get it to start",
                                       "couldn't get it to start",
                                       "can't get it to turn on",
                                       "couldn't get it to turn on",
                                       "still can't get it to come on"};
// Who stands for the whole thing as a subject.
static const char *const wholes[] = {
    "it",       "they",    "this",      "that",  "thing", "unit",   "machine", "set",     "motor",
    "engine",   "platter", "turntable", "hands", "blade", "blades", "screen",  "display", "spring",
    "movement", "she",     "he",        "both",  "all",   "which",  "one"};
// What else does its work.
static const char *const does[] = {
    "works", "work",   "plays",   "play",     "runs",    "run",      "lights", "light", "browns", "heats",
    "heat",  "fires",  "fire",    "stitches", "respond", "responds", "goes",   "go",    "turns",  "spins",
    "rings", "sounds", "prints",  "types",    "records", "answers",  "answer", "blows", "good",   "fine",
    "great", "strong", "perfect", "ok",       "okay",    "call",     "hear",   "do",    "glow",   "glows"};
static const char *const breaks[] = {"but", "and", "so", "though", "yet", "then", "while", "until", "or"};

// How many tokens say so at `i`, with what may stand behind them.
static size_t idle_at(const struct tokens *tokens, size_t i, bool *whole) {
    static const char *const behind[] = {
        "at",   "no",     "when",  "unless",  "until", "after",  "whatever", "even",  "on",
        "with", "but",    "and",   "so",      "or",    "out",    "from",     "about", "in",
        "now",  "either", "any",   "anymore", "every", "for",    "if",       "left",  "right",
        "by",   "to",     "there", "as",      "while", "though", "half",     "since", "all"};
    size_t n = token_longest(tokens, i, nothings, COUNT(nothings));
    *whole = n > 0;
    if (!n) n = token_longest(tokens, i, idle, COUNT(idle));
    if (!n) return 0;
    return i + n >= tokens->count || tokens->at[i + n].stop != STOP_NONE || AMONG(tokens, i + n, behind) ? n
                                                                                                         : 0;
}

// "Is real weak compared to the other": of a part that gives a sound or a light.
static size_t weak_at(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "is", "are") || i == 0 ||
        !ANY(tokens, i - 1, "pickup", "pickups", "speaker", "speakers", "channel", "signal", "sound",
             "picture", "bass", "treble", "volume", "suction", "flash", "strike", "beam", "alarm", "buzzer",
             "ringer", "bell", "motor"))
        return 0;
    size_t at = i + 1;
    while (ANY(tokens, at, "real", "very", "pretty", "so", "rather", "a", "bit", "kind", "of", "awful", "too",
               "quite"))
        at++;
    return ANY(tokens, at, "weak", "faint", "feeble", "dim") ? at + 1 - i : 0;
}

// Does something else in the sentence do its work, and is not denied?
static bool other_works(const struct fault_reader *r, size_t from, size_t to) {
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, from), end = scope_sentence_end(&r->scope, to);
    for (size_t i = start; i < end && i < start + 40; i++) {
        if (i >= from && i < to) continue;
        if (!AMONG(tokens, i, does) || (r->scope.stance[i] & (STANCE_DENIED | STANCE_PAST | STANCE_UNKNOWN)))
            continue;
        bool no = false;
        for (size_t k = i; k > start && k + 4 > i; k--)
            no |= ANY(tokens, k - 1, "no", "not", "nothing", "never", "doesn't", "don't", "won't", "to",
                      "can't", "the", "a", "if", "when", "couldn't");
        if (!no) return true;
    }
    return false;
}

// The noun that ends before token `i` and opens the clause; `*from` its first token. False: none, or the
// whole.
static bool part_before(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    enum { WORDS_MOST = 6 };
    static const char *const fillers[] = {"just",   "still",  "always", "only", "then",
                                          "simply", "really", "now",    "also", "both"};
    const struct tokens *tokens = &r->note->tokens;
    size_t end = i;
    while (end > 0 && tokens->at[end - 1].stop == STOP_NONE && AMONG(tokens, end - 1, fillers)) end--;
    size_t at = end;
    while (at > 0 && end - at < WORDS_MOST && tokens->at[at - 1].stop == STOP_NONE &&
           !AMONG(tokens, at - 1, breaks))
        at--;
    while (at < end && (spot_article(tokens, at) || ANY(tokens, at, "its", "his", "trouble", "is"))) at++;
    *from = at;
    *to = end;
    if (at >= end || AMONG(tokens, end - 1, wholes) || r->note->taken[end - 1] == TAKEN_TYPE ||
        ANY(tokens, at, "i", "we", "you", "it"))
        return at < end && ANY(tokens, end - 1, "one") && spot_tells_which(tokens, at); // "right one"
    if (ANY(tokens, end - 1, "handle", "handles", "grip", "wall", "outside", "body", "shell", "room", "lid"))
        return *to = 0, false; // of what is meant to
    return tokens->at[end - 1].kind == TOKEN_WORD && !r->scope.fault[end - 1];
}

static bool is_taken(const struct fault_reader *r, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (r->note->taken[i] == TAKEN_FLAW || r->note->taken[i] == TAKEN_TYPE ||
            r->note->taken[i] == TAKEN_ASIDE)
            return true;
    return false;
}

void read_goes_dead(struct fault_reader *r) {
    static const uint16_t off =
        STANCE_PAST | STANCE_OTHER | STANCE_WITHDRAWN | STANCE_PLANNED | STANCE_HEARD | STANCE_UNKNOWN;
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *dead = ruleset_flaw(r->note->rules, "not-working"),
                      *partly = ruleset_flaw(r->note->rules, "partly-working");
    if (!dead || !partly || !running_may(r)) return;
    for (size_t i = 0; i < tokens->count; i++) {
        bool whole;
        size_t n = idle_at(tokens, i, &whole), from = 0, to = 1;
        bool past = ANY(tokens, i, "never", "wouldn't", "quit", "stayed", "made"); // of the trial itself
        uint16_t mask = past ? off & (uint16_t)~STANCE_PAST : off;
        bool weak = false;
        if (!n) weak = (n = weak_at(tokens, i)) > 0;
        if (!n || (r->scope.stance[i] & mask) || is_taken(r, i, i + n)) continue;
        bool part = !whole && part_before(r, i, &from, &to);
        if (!whole && !to) continue;
        if (weak && !part) continue;
        bool half = part || other_works(r, i, i + n);
        const char *name = part && to - from <= 3 && !ANY(tokens, to - 1, "one", "half", "side")
                               ? note_words(r->note, from, to)
                               : NULL;
        fault_add(r, half ? partly : dead, name, NULL, i, i + n);
        i += n - 1;
    }
}
