// SPDX-License-Identifier: MIT
// What a part is, where that is none of its own: "is a bolt somebody hung in there", "is just a nut", "is a
// modern screw one".
#include "notes/any.h"
#include "notes/traces.h"

enum { WORDS_MOST = 5 };

static bool is_somebody(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "somebody", "someone", "he", "they", "dad", "grandad", "we", "i");
}

static bool goes_on(const struct tokens *tokens, size_t i) {
    return i < tokens->count && tokens->at[i].stop == STOP_NONE;
}

size_t part_made_at(const struct tokens *tokens, size_t i) {
    size_t at = i + (ANY(tokens, i, "just", "only") ? 1 : 0), to = at + 1;
    bool article = ANY(tokens, at, "a", "an");
    while (article && to < i + WORDS_MOST && goes_on(tokens, to) && !is_somebody(tokens, to) &&
           !ANY(tokens, to, "but", "and", "so"))
        to++;
    if (article && to > at + 1 && is_somebody(tokens, to) && goes_on(tokens, to + 1) &&
        !ANY(tokens, to + 1, "think", "reckon", "believe", "guess", "can", "can't", "don't", "couldn't",
             "didn't", "missed", "noticed", "saw", "see", "spotted", "hadn't", "hate", "like", "love",
             "mentioned", "mention", "felt", "feel", "thought", "show", "will", "would", "haven't"))
        return to + 1;
    if (article && to < i + WORDS_MOST &&
        ANY(tokens, to - 1, "nut", "nail", "bolt", "screw", "stick", "matchstick", "pin", "paperclip",
            "washer", "cork", "twig"))
        return to;
    size_t first = i + (token_is(tokens, i, "a") ? 1 : 0);
    if (!ANY(tokens, first, "modern", "newer", "later", "new", "replacement", "different", "reproduction",
             "odd"))
        return 0;
    for (to = first + 1; to < i + WORDS_MOST && goes_on(tokens, to); to++)
        if (ANY(tokens, to, "one", "ones")) return to + 1;
    return 0;
}

// What says of a part that it is not the one it was made with.
static const char *const not_own[] = {"a stand-in",
                                      "a stand in",
                                      "stand-ins",
                                      "a substitute",
                                      "a later one",
                                      "later ones",
                                      "of a later date",
                                      "a newer one",
                                      "newer ones",
                                      "a makeshift",
                                      "makeshift",
                                      "not right for it",
                                      "doesn't belong",
                                      "don't belong",
                                      "isn't right for it",
                                      "aren't right for it",
                                      "not right",
                                      "isn't right",
                                      "wrong",
                                      "the wrong one",
                                      "a wrong one",
                                      "the wrong ones",
                                      "the wrong sort",
                                      "wrong for it",
                                      "not the right one",
                                      "isn't the right one",
                                      "not the correct one",
                                      "isn't the correct one",
                                      "not correct",
                                      "isn't correct",
                                      "not its own",
                                      "isn't its own",
                                      "not the proper one",
                                      "isn't the proper one",
                                      "made up by",
                                      "been made up by",
                                      "home made",
                                      "homemade",
                                      "home-made",
                                      "a home made one",
                                      "one i made",
                                      "one he made",
                                      "a bodge",
                                      "improvised",
                                      "not the one it",
                                      "isn't the one it",
                                      "aren't the ones it",
                                      "not the ones it",
                                      "not the first one",
                                      "not the one",
                                      "isn't the one",
                                      "aren't the ones",
                                      "not the ones",
                                      "not as old",
                                      "newer than the rest",
                                      "younger than the rest",
                                      "more recent",
                                      "modern",
                                      "later",
                                      "newer",
                                      "a replacement",
                                      "replacements",
                                      "much newer",
                                      "a modern one",
                                      "modern ones",
                                      "shop bought",
                                      "from the hardware shop",
                                      "from the hardware store",
                                      "an odd one",
                                      "odd ones",
                                      "swapped",
                                      "swapped out",
                                      "changed",
                                      "changed over",
                                      "been swapped",
                                      "been changed",
                                      "been renewed",
                                      "renewed",
                                      "of no relation",
                                      "no relation to it",
                                      "wasn't born with it",
                                      "not born with it",
                                      "never started life with it",
                                      "never belonged to it",
                                      "belongs to something else",
                                      "belonged to something else",
                                      "belongs to another",
                                      "a transplant",
                                      "a ring in",
                                      "an interloper",
                                      "a cuckoo",
                                      "not period",
                                      "a repro",
                                      "a reproduction",
                                      "aftermarket",
                                      "a pattern part",
                                      "a recent copy",
                                      "a copy",
                                      "new not old",
                                      "fairly new",
                                      "brand new",
                                      "new",
                                      "new ones",
                                      "a new one",
                                      "quite new",
                                      "all new",
                                      "recent",
                                      "from the diy shop"};

size_t part_not_own_at(const struct tokens *tokens, size_t i) {
    return token_longest(tokens, i, not_own, sizeof not_own / sizeof *not_own);
}
