// SPDX-License-Identifier: MIT
// That a part is not there, where the part comes first: "the key I never had", "lid: no", "the handle fell
// off and I lost it"; or who has it: "my brother kept the strap", "somebody threw the lid out".
#include <string.h>

#include "notes/any.h"
#include "notes/things.h"
#include "notes/traces.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool is_over(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || token_is(tokens, i, "but") ||
           token_is(tokens, i, "and") || token_is(tokens, i, "so");
}

// "Fell off" by itself tells a break; with its loss behind it the part is away.
static size_t lost_after(const struct tokens *tokens, size_t i) {
    static const char *const off[] = {
        "fell off",     "came off",     "dropped off", "has fallen off", "had fallen off",
        "has come off", "had come off", "fell out",    "dropped out",    "came out",
        "came loose",   "fallen off",   "come off",    "worked loose",   "has dropped off",
        "rotted",       "perished",     "is off",      "'s off",         "was off",
    };
    static const char *const then[] = {"and i lost it",
                                       "and we lost it",
                                       "and got lost",
                                       "and was lost",
                                       "and it's lost",
                                       "and i threw it",
                                       "and i binned it",
                                       "and got thrown",
                                       "and got binned",
                                       "and was thrown",
                                       "and i can't find it",
                                       "and i couldn't find it",
                                       "and went missing",
                                       "and is lost",
                                       "and is gone",
                                       "and has gone",
                                       "and i don't have it",
                                       "and i never found it",
                                       "and nobody found it",
                                       "and was binned",
                                       "and i haven't got it",
                                       "and i've lost it",
                                       "and rolled away",
                                       "and i don't know where",
                                       "and vanished",
                                       "and disappeared",
                                       "and i chucked it",
                                       "and got chucked",
                                       "and got swept",
                                       "and is missing",
                                       "and it's gone",
                                       "and was never found",
                                       "and never found",
                                       "and the dog",
                                       "but i can't find it",
                                       "but i lost it",
                                       "and it went in the bin",
                                       "and went in the bin",
                                       "and lost",
                                       "and not been seen",
                                       "and hasn't been seen",
                                       "and never seen again",
                                       "never seen again",
                                       "and has not been seen",
                                       "never to be seen",
                                       "and was never seen",
                                       "and i no longer have it",
                                       "and gone",
                                       "and binned",
                                       "and i've not got it",
                                       "and i don't have the"};
    size_t n = token_longest(tokens, i, off, COUNT(off)), at = i + n;
    if (!n) return 0;
    if (at < tokens->count && tokens->at[at].stop == STOP_COMMA) at++;
    while (ANY(tokens, at, "years", "ago", "somewhere", "once", "long", "at", "some", "point")) at++;
    size_t m = token_longest(tokens, at, then, COUNT(then));
    if (!m && ANY(tokens, at, "i", "we", "lost", "binned", "since") && at > i + n) {
        static const char *const bare[] = {"i lost it",  "i've lost it",     "we lost it",
                                           "lost",       "i can't find it",  "i don't have it",
                                           "binned",     "i haven't got it", "i binned it",
                                           "i threw it", "since lost",       "i no longer have it"};
        m = token_longest(tokens, at, bare, COUNT(bare));
    }
    return m ? at + m - i : 0;
}

static size_t away_behind(const struct tokens *tokens, size_t i) {
    static const char *const phrases[] = {"i never had",
                                          "was taken off before",
                                          "were taken off before",
                                          "taken off before",
                                          "was removed before",
                                          "were removed before",
                                          "removed by",
                                          "was removed by",
                                          "were removed by",
                                          "never with it",
                                          "never in it",
                                          "never there",
                                          "was taken off by",
                                          "gone the way of",
                                          "has gone the way of",
                                          "went the way of",
                                          "have gone the way of",
                                          "was removed years ago",
                                          "was removed long ago",
                                          "were removed years ago",
                                          "i can't lay my hands on",
                                          "i can't put my hands on",
                                          "i can't put my hand on",
                                          "i couldn't lay my hands on",
                                          "i couldn't put my hands on",
                                          "i'm missing",
                                          "we're missing",
                                          "i'm short of",
                                          "that's missing",
                                          "that is missing",
                                          "that's gone",
                                          "that's lost",
                                          "that isn't here",
                                          "that's not here",
                                          "that isn't there",
                                          "that's not there",
                                          "that isn't with it",
                                          "that's gone missing",
                                          "which is missing",
                                          "which i don't have",
                                          "that i don't have",
                                          "that i haven't got",
                                          "which i haven't got",
                                          "that i can't find",
                                          "which i can't find",
                                          "which has gone",
                                          "which isn't here",
                                          "which is gone",
                                          "which is lost",
                                          "you don't get",
                                          "you won't get",
                                          "we no longer have",
                                          "i no longer have",
                                          "isn't part of the deal",
                                          "isn't in the picture",
                                          "is anyone's guess",
                                          "is anybody's guess",
                                          "is not mine to sell",
                                          "i don't have",
                                          "i haven't got",
                                          "i do not have",
                                          "we never had",
                                          "we don't have",
                                          "i never got",
                                          "i never found",
                                          "i can't find",
                                          "i couldn't find",
                                          "i've lost",
                                          "i lost",
                                          "we lost",
                                          "i don't seem to have",
                                          "i've mislaid",
                                          "we couldn't find",
                                          "i have not got",
                                          "i've not got",
                                          "i've never had",
                                          "i've never seen",
                                          "never came to me",
                                          "never came with it",
                                          "i cannot find",
                                          "i can't lay hands on",
                                          "i didn't get",
                                          "must have fallen off",
                                          "must have come off",
                                          "must have dropped off",
                                          "must've fallen off",
                                          "must have gone",
                                          "must have got lost",
                                          "must have been lost",
                                          "must be lost",
                                          "must have fallen out",
                                          "must have dropped out",
                                          "must have been thrown out",
                                          "must have been thrown away",
                                          "fell off somewhere",
                                          "fell off long ago",
                                          "fell off years ago",
                                          "fell off at some point",
                                          "dropped off somewhere",
                                          "came off somewhere",
                                          "must be in the",
                                          "must be at",
                                          "must be somewhere",
                                          "is somewhere",
                                          "are somewhere",
                                          "will be somewhere",
                                          "is around here somewhere",
                                          "is here somewhere",
                                          "has been lost",
                                          "was used for firewood",
                                          "used for firewood",
                                          "burnt for firewood",
                                          "was burnt",
                                          "got burnt",
                                          "was kept for something",
                                          "were kept for something",
                                          "kept for something else",
                                          "kept for another",
                                          "were kept for",
                                          "was kept for",
                                          "kept by",
                                          "was kept by",
                                          "were kept by",
                                          "got left behind",
                                          "were left behind",
                                          "left behind",
                                          "are not mine to sell",
                                          "had gone before",
                                          "had gone by",
                                          "gone before",
                                          "went before",
                                          "were gone before",
                                          "was gone before",
                                          "had already gone",
                                          "already gone",
                                          "was never with it",
                                          "were never with it",
                                          "never was with it",
                                          "were never found",
                                          "was never found",
                                          "borrowed back",
                                          "taken back",
                                          "was taken by",
                                          "were taken by",
                                          "was stolen",
                                          "were stolen",
                                          "was pinched",
                                          "got pinched"};
    if (i < tokens->count && tokens->at[i].stop == STOP_COMMA && ANY(tokens, i + 1, "i", "we")) i++;
    size_t n = token_longest(tokens, i, phrases, COUNT(phrases));
    if (n && ANY(tokens, i + n - 1, "burnt") && ANY(tokens, i + n, "out", "on", "by", "at")) return 0;
    bool other = n && ANY(tokens, i + n - 1, "find", "found") && ANY(tokens, i + n, "a", "an", "any", "one");
    return other ? 0 : n; // "the frame I can't find a warp in"
}

// "Key: no", "lid - n/a", "lid? no".
static size_t no_entry(const struct tokens *tokens, size_t i) {
    if (token_is(tokens, i, "none") && is_over(tokens, i + 1)) return 1;
    bool sign = ANY(tokens, i, ":", "-", "=", "?", "–", "—");
    if (token_is(tokens, i, "?") && i + 2 < tokens->count && tokens->at[i + 2].stop == STOP_COMMA &&
        ANY(tokens, i + 3, "a", "an", "the", "it's", "its", "that's", "more", "just", "i"))
        return 0; // "a roller? No, a grindstone": it is called something else
    bool no = ANY(tokens, i + 1, "no", "nope", "nil", "none", "nowhere", "absent", "gone", "missing", "n/a",
                  "0", "lost");
    return sign && no && is_over(tokens, i + 2) && !part_is_other_stuff(tokens, i + 1) ? 2 : 0;
}

static void read_behind(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (!r->part[i] && !ANY(tokens, i, "the", "its")) return;
    struct part_at part;
    static const char *const bits[] = {"bit", "piece", "part", "chunk", "corner",
                                       "end", "half",  "some", "tip"};
    if (!part_named_at(r, i, &part)) return;
    size_t at = part.to, lead = part.lead; // "a bit of the moulding has come off and is lost"
    if (lead > 0 && ANY(tokens, lead - 1, "the", "its")) lead--;
    if (lead > 1 && token_is(tokens, lead - 1, "of") && AMONG(tokens, lead - 2, bits)) return;
    size_t n = lost_after(tokens, at), entry = n ? 0 : no_entry(tokens, at);
    if (!n && !entry) n = away_behind(tokens, at);
    if (n && absent_turns_into(r, at + n)) return; // "with a cord that's gone brittle"
    if (n && token_is(tokens, at + n - 1, "somewhere") && !is_over(tokens, at + n)) return;
    // "Missing buttons? None", "water rings none": it is the fault that there is none of.
    bool fault = i > 0 && r->scope.fault[i - 1] && tokens->at[i - 1].stop == STOP_NONE;
    if (entry && fault) return;
    if (n + entry && !absent_is_renamed(r, at)) part_tell_missing(r, &part, i, at + n + entry);
}

// "Manual? Not with it.", "The lens cap? Never had one": the question at `i` names the part, and nothing
// else.
static void read_asked(struct fault_reader *r, size_t i) {
    static const char *const answers[] = {"not with it",
                                          "not there",
                                          "not here",
                                          "not included",
                                          "not present",
                                          "not supplied",
                                          "not found",
                                          "not any more",
                                          "not anymore",
                                          "not now",
                                          "not got it",
                                          "not got one",
                                          "not seen it",
                                          "never had it",
                                          "never had one",
                                          "never came with it",
                                          "never came with one",
                                          "never with it",
                                          "never seen it",
                                          "never saw it",
                                          "never got it",
                                          "never got one",
                                          "didn't come with it",
                                          "didn't come with one",
                                          "didn't have one",
                                          "didn't get one",
                                          "didn't get it",
                                          "didn't come",
                                          "didn't survive",
                                          "haven't got it",
                                          "haven't got one",
                                          "haven't found it",
                                          "don't have it",
                                          "don't have one",
                                          "no sign of it",
                                          "no sign of one",
                                          "no sign",
                                          "couldn't find it",
                                          "can't find it",
                                          "gone years ago",
                                          "lost years ago",
                                          "lost long ago",
                                          "gone long ago",
                                          "long gone",
                                          "long lost",
                                          "lost",
                                          "gone",
                                          "missing",
                                          "gone missing",
                                          "nowhere",
                                          "nowhere to be found",
                                          "went missing",
                                          "it's gone",
                                          "it's missing",
                                          "it's lost",
                                          "it isn't with it",
                                          "it's not with it",
                                          "isn't here",
                                          "isn't with it",
                                          "none with it",
                                          "none came with it",
                                          "already gone",
                                          "doesn't have one",
                                          "hasn't got one"};
    struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    enum { WORDS_MOST = 5 };
    size_t start = i, at = i + 1;
    while (start > 0 && tokens->at[start - 1].stop == STOP_NONE && tokens->at[start - 1].kind == TOKEN_WORD)
        start--;
    if (start == i || i - start > WORDS_MOST) return;
    while (ANY(tokens, at, "i", "i've", "sadly", "sorry", "well", ",")) at++;
    size_t n = token_longest(tokens, at, answers, COUNT(answers)), to = at + n;
    struct part_at part;
    if (!n || !is_over(tokens, to) || !part_named_at(r, start, &part) || part.to != i) return;
    part_tell_missing(r, &part, start, to);
}

// "My brother kept the strap", "somebody threw the lid out", "we binned the box".
static void read_takers(struct fault_reader *r, size_t i) {
    static const char *const others[] = {
        "brother", "sister",   "son",      "daughter",  "wife",       "husband",  "mother",    "dad",
        "father",  "mum",      "mom",      "owner",     "owners",     "neighbor", "neighbour", "dog",
        "cat",     "kids",     "children", "uncle",     "aunt",       "cousin",   "family",    "dealer",
        "someone", "somebody", "they",     "burglar",   "cousins",    "nephew",   "niece",     "grandson",
        "lodger",  "friend",   "she",      "he",        "tenants",    "movers",   "auction",   "partner",
        "ex",      "people",   "folk",     "someone's", "somebody's", "mice",     "puppy",     "baby",
        "grandad", "grandma",  "granddad", "else",      "seller",     "shop"};
    static const char *const keep[] = {"kept",
                                       "took",
                                       "had",
                                       "has",
                                       "has kept",
                                       "hung on to",
                                       "held on to",
                                       "wanted",
                                       "has taken",
                                       "borrowed",
                                       "walked off with",
                                       "went off with",
                                       "made off with",
                                       "ran off with",
                                       "ate",
                                       "has eaten",
                                       "stole",
                                       "pinched",
                                       "swiped",
                                       "has had",
                                       "lost",
                                       "has lost",
                                       "binned",
                                       "threw out",
                                       "threw away",
                                       "chucked",
                                       "chucked out",
                                       "had lost",
                                       "threw",
                                       "buried",
                                       "swallowed",
                                       "chewed up",
                                       "have kept",
                                       "have had",
                                       "has still got",
                                       "still has",
                                       "still have",
                                       "sold",
                                       "used",
                                       "gave away",
                                       "nicked",
                                       "robbed",
                                       "removed",
                                       "'s had",
                                       "had away",
                                       "took off",
                                       "taken",
                                       "have taken",
                                       "left",
                                       "left out",
                                       "forgot",
                                       "forgot to include",
                                       "forgot to send"};
    static const char *const mine[] = {
        "threw out", "threw away", "binned",      "chucked out", "chucked away", "thrown out", "thrown away",
        "threw the", "chucked",    "chucked the", "mislaid",     "lost",         "have lost",  "gave away",
        "kept back", "'ve lost",   "am keeping",  "kept",        "'m keeping",   "keeping"};
    struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    struct part_at part;
    static const char *const strong[] = {
        "helped themselves to", "helped himself to", "helped herself to", "relieved it of",  "robbed it of",
        "deprived it of",       "stripped it of",    "made off with",     "walked off with", "went off with",
        "ran off with",         "walked away with",  "gone off with",     "scarpered with",  "had away"};
    size_t took = token_longest(tokens, i, strong, COUNT(strong));
    if (took && part_named_at(r, i + took, &part)) {
        part_tell_missing(r, &part, i, part.to);
        return;
    }
    bool other = AMONG(tokens, i, others) && i + 1 < tokens->count && tokens->at[i].stop == STOP_NONE;
    bool me = ANY(tokens, i, "i", "we", "i've", "we've", "i'm");
    if (!other && !me) return;
    size_t n = other ? token_longest(tokens, i + 1, keep, COUNT(keep))
                     : token_longest(tokens, i + 1, mine, COUNT(mine));
    bool possessive = other && ANY(tokens, i, "someone's", "somebody's") &&
                      ANY(tokens, i + 1, "had", "taken", "pinched", "lost", "nicked", "removed", "stolen");
    if (possessive && !n) n = 1;
    for (size_t k = i + 1 + n; other && n && k < i + 5 + n && k < tokens->count; k++)
        if (note->taken[k] == TAKEN_ASIDE && r->part[k]) note->taken[k] = TAKEN_NOT; // a story, but of a part
    if (!n ||
        !ANY(tokens, i + 1 + n, "the", "its", "one", "both", "that", "my", "their", "his", "two", "three",
             "a") ||
        !part_named_at(r, i + 1 + n, &part))
        return;
    bool light = ANY(tokens, i + 1, "had", "has", "wanted", "used", "left", "kept", "keeping", "took", "have",
                     "still", "am") ||
                 token_is(tokens, i, "i'm");
    static const char *const away[] = {"away",
                                       "out",
                                       "off it",
                                       "off",
                                       "for himself",
                                       "for herself",
                                       "for spares",
                                       "for theirs",
                                       "for his",
                                       "for hers",
                                       "for something else",
                                       "for another",
                                       "as a keepsake",
                                       "as a souvenir",
                                       "for mine",
                                       "for my own",
                                       "back"};
    size_t m = token_longest(tokens, part.to, away, COUNT(away)), to = part.to + m;
    bool over = to >= tokens->count || tokens->at[to].stop != STOP_NONE;
    if (!m && light && ANY(tokens, i + 1 + n, "a")) return; // "somebody used a drawer knob": put on
    if (m == 1 && ANY(tokens, part.to, "off") && light && !ANY(tokens, i + 1, "took"))
        return; // "he had the knobs off to clean them": and put them back
    if (!over && !m && (light || !part_ends(tokens, to))) return;
    if (!m && me && ANY(tokens, i + 1, "kept", "keeping", "am")) return; // "I kept the lid"
    if (!m && other && ANY(tokens, i + 1, "had", "has", "used", "left") &&
        ANY(tokens, i, "they", "she", "he", "family", "mother", "father", "owner"))
        return;
    for (size_t k = 0; k < r->hit_count; k++) // "took the border off": a rule has these words
        if (r->hits[k].from < to && r->hits[k].to > i && r->hits[k].kinds[0]->form != ABSENCE) return;
    part_tell_missing(r, &part, i, to);
}

void read_strays(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        if (token_is(&r->note->tokens, i, "?")) read_asked(r, i);
        if (r->note->tokens.at[i].kind != TOKEN_WORD) continue;
        read_behind(r, i);
        read_takers(r, i);
    }
}
