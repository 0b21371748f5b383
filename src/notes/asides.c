// SPDX-License-Identifier: MIT
// What is not about the thing: prices, where and from whom it came, errands, feelings, the post. A trigger
// marks its clause or the rest of it; words of a fault are never part of an aside, so that "found in the barn
// so a bit rusty" keeps its rust.
#include <string.h>

#include "notes/any.h"
#include "notes/note.h"
#include "notes/number.h"
#include "notes/things.h"
#include "notes/unit.h"
#include "text/order.h"

enum reach {
    REACH_CLAUSE, // the clause from its beginning
    REACH_ON,     // from the trigger to the end of the clause
    REACH_WORDS,  // the trigger alone
    REACH_STORY   // the clause, and those behind it that go on with the story
};

struct trigger {
    const char *words;
    enum reach reach;
};

static const struct trigger triggers_list[] = {
    // money
    {"paid", REACH_CLAUSE},
    {"worth a", REACH_CLAUSE},
    {"worth about", REACH_CLAUSE},
    {"worth more", REACH_CLAUSE},
    {"worth the", REACH_CLAUSE},
    {"is worth", REACH_CLAUSE},
    {"asking", REACH_CLAUSE},
    {"list it at", REACH_CLAUSE},
    {"list it for", REACH_CLAUSE},
    {"sells for", REACH_CLAUSE},
    {"sell for", REACH_CLAUSE},
    {"sold for", REACH_CLAUSE},
    {"goes for", REACH_CLAUSE},
    {"going for", REACH_CLAUSE},
    {"go for", REACH_CLAUSE},
    {"retails for", REACH_CLAUSE},
    {"cost me", REACH_CLAUSE},
    {"priced for", REACH_CLAUSE},
    {"priced at", REACH_CLAUSE},
    {"at this price", REACH_CLAUSE},
    {"for the price", REACH_ON},
    {"make an offer", REACH_CLAUSE},
    {"make me an offer", REACH_CLAUSE},
    {"obo", REACH_CLAUSE},
    {"or best offer", REACH_ON},
    {"price is firm", REACH_CLAUSE},
    // where it was found or bought
    {"bought it", REACH_STORY},
    {"bought this", REACH_STORY},
    {"bought them", REACH_STORY},
    {"bought at", REACH_ON},
    {"bought from", REACH_ON},
    {"bought in", REACH_ON},
    {"bought for", REACH_ON},
    {"bought with", REACH_ON},
    {"bought along with", REACH_ON},
    {"i bought", REACH_STORY},
    {"purchased", REACH_ON},
    {"picked up at", REACH_ON},
    {"picked it up", REACH_CLAUSE},
    {"picked this up", REACH_CLAUSE},
    {"picked these up", REACH_CLAUSE},
    {"picked up in", REACH_ON},
    {"picked up for", REACH_ON},
    {"picked up from", REACH_ON},
    {"got it at", REACH_ON},
    {"got it from", REACH_ON},
    {"got it for", REACH_ON},
    {"got it in", REACH_ON},
    {"got this at", REACH_ON},
    {"got this from", REACH_ON},
    {"got this for", REACH_ON},
    {"got this in", REACH_ON},
    {"got them at", REACH_ON},
    {"got them from", REACH_ON},
    {"got these at", REACH_ON},
    {"got these from", REACH_ON},
    {"came in a box lot", REACH_ON},
    {"came in a mixed", REACH_ON},
    {"came in a job lot", REACH_ON},
    {"came out of", REACH_ON},
    {"came from", REACH_ON},
    {"comes from", REACH_ON},
    {"came with a load", REACH_ON},
    {"in with a load", REACH_CLAUSE},
    {"found this", REACH_CLAUSE},
    {"found these", REACH_CLAUSE},
    {"found it", REACH_CLAUSE},
    {"found them", REACH_CLAUSE},
    {"found in", REACH_ON},
    {"found at", REACH_ON},
    {"found under", REACH_ON},
    {"found behind", REACH_ON},
    {"dug up", REACH_CLAUSE},
    {"dug out of", REACH_CLAUSE},
    {"turned up in", REACH_CLAUSE},
    {"turned up at", REACH_CLAUSE},
    {"pulled it out", REACH_CLAUSE},
    {"pulled this", REACH_CLAUSE},
    {"inherited", REACH_STORY},
    {"was given", REACH_STORY},
    {"given to me", REACH_CLAUSE},
    {"belonged to", REACH_ON},
    {"used to belong", REACH_ON},
    {"handed down", REACH_CLAUSE},
    {"passed down", REACH_CLAUSE},
    {"from a barn", REACH_ON},
    {"from the barn", REACH_ON},
    {"from an estate", REACH_ON},
    {"from the estate", REACH_ON},
    {"estate of", REACH_ON},
    {"estate sale", REACH_CLAUSE},
    {"estate auction", REACH_CLAUSE},
    {"from an old", REACH_ON},
    {"from a house", REACH_ON},
    {"house clearance", REACH_CLAUSE},
    {"from the attic", REACH_ON},
    {"from a shed", REACH_ON},
    {"from my shed", REACH_ON},
    {"yard sale", REACH_CLAUSE},
    {"garage sale", REACH_CLAUSE},
    {"tag sale", REACH_CLAUSE},
    {"boot sale", REACH_CLAUSE},
    {"jumble sale", REACH_CLAUSE},
    {"rummage sale", REACH_CLAUSE},
    {"church sale", REACH_CLAUSE},
    {"thrift store", REACH_CLAUSE},
    {"thrift shop", REACH_CLAUSE},
    {"charity shop", REACH_CLAUSE},
    {"flea market", REACH_CLAUSE},
    {"flea mkt", REACH_CLAUSE},
    {"at auction", REACH_CLAUSE},
    {"at an auction", REACH_CLAUSE},
    {"farm sale", REACH_CLAUSE},
    {"bottom of the box lot", REACH_CLAUSE},
    {"box lot", REACH_CLAUSE},
    {"bottom of a toolbox", REACH_CLAUSE},
    {"kept in a", REACH_ON},
    {"kept in the", REACH_ON},
    {"been in a barn", REACH_CLAUSE},
    {"been in the", REACH_CLAUSE},
    {"sat in a", REACH_CLAUSE},
    {"sat in the", REACH_CLAUSE},
    {"sat in my", REACH_CLAUSE},
    {"sat on my", REACH_CLAUSE},
    {"sat on our", REACH_CLAUSE},
    {"stored in", REACH_ON},
    {"stood in the", REACH_CLAUSE},
    {"hung over", REACH_CLAUSE},
    {"hung in", REACH_CLAUSE},
    {"lived on top of", REACH_CLAUSE},
    {"lived in", REACH_CLAUSE},
    // selling, moving, the post
    {"has to go", REACH_CLAUSE},
    {"must go", REACH_CLAUSE},
    {"selling it because", REACH_STORY},
    {"selling this because", REACH_STORY},
    {"selling them because", REACH_STORY},
    {"selling because", REACH_STORY},
    {"selling only because", REACH_STORY},
    {"only selling because", REACH_STORY},
    {"reason for selling", REACH_STORY},
    {"reason i'm selling", REACH_STORY},
    {"why i'm selling", REACH_STORY},
    {"moving so", REACH_CLAUSE},
    {"we're moving", REACH_CLAUSE},
    {"downsizing", REACH_CLAUSE},
    {"need the space", REACH_CLAUSE},
    {"need the room", REACH_CLAUSE},
    {"don't need it", REACH_CLAUSE},
    {"no room for", REACH_CLAUSE},
    {"making room", REACH_CLAUSE},
    {"clearing out", REACH_CLAUSE},
    {"postage", REACH_CLAUSE},
    {"shipping", REACH_CLAUSE},
    {"ship it", REACH_CLAUSE},
    {"will ship", REACH_CLAUSE},
    {"can ship", REACH_CLAUSE},
    {"can post", REACH_CLAUSE},
    {"will post", REACH_CLAUSE},
    {"pick up only", REACH_CLAUSE},
    {"pickup only", REACH_CLAUSE},
    {"collection only", REACH_CLAUSE},
    {"local pickup", REACH_CLAUSE},
    {"floor pickup", REACH_CLAUSE},
    {"porch pickup", REACH_CLAUSE},
    {"cash only", REACH_CLAUSE},
    {"no returns", REACH_CLAUSE},
    {"message me", REACH_CLAUSE},
    {"text me", REACH_CLAUSE},
    {"call me", REACH_CLAUSE},
    {"first come", REACH_CLAUSE},
    {"will fit in your", REACH_CLAUSE},
    {"before posting", REACH_CLAUSE},
    {"fit in a small car", REACH_CLAUSE},
    {"in the car", REACH_CLAUSE},
    // feelings and advice
    {"my favorite", REACH_CLAUSE},
    {"my favourite", REACH_CLAUSE},
    {"almost kept", REACH_CLAUSE},
    {"nearly kept", REACH_CLAUSE},
    {"hate to", REACH_CLAUSE},
    {"sad to", REACH_CLAUSE},
    {"sorry to see", REACH_CLAUSE},
    {"i love", REACH_CLAUSE},
    {"i loved", REACH_CLAUSE},
    {"we loved", REACH_CLAUSE},
    {"breaks my heart", REACH_CLAUSE},
    {"great gift", REACH_CLAUSE},
    {"nice gift", REACH_CLAUSE},
    {"lovely gift", REACH_CLAUSE},
    {"good gift", REACH_CLAUSE},
    {"perfect gift", REACH_CLAUSE},
    {"would make a", REACH_CLAUSE},
    {"make someone", REACH_CLAUSE},
    {"must see", REACH_WORDS},
    {"you'll love", REACH_CLAUSE},
    {"back hurts", REACH_CLAUSE},
    {"i was going to", REACH_STORY},
    {"i meant to", REACH_STORY},
    {"i always meant", REACH_STORY},
    {"i always wanted", REACH_STORY},
    {"i kept", REACH_CLAUSE},
    {"went to the dump", REACH_CLAUSE},
    {"grew up", REACH_CLAUSE},
    {"when i was", REACH_CLAUSE},
    {"i drove", REACH_CLAUSE},
    {"drove an hour", REACH_CLAUSE},
    {"i used it for", REACH_CLAUSE},
    {"good home", REACH_CLAUSE},
    // errands and notes to oneself
    {"remind me", REACH_CLAUSE},
    {"note to self", REACH_CLAUSE},
    {"remember to", REACH_CLAUSE},
    {"don't forget", REACH_CLAUSE},
    {"dont forget", REACH_CLAUSE},
    {"check later", REACH_CLAUSE},
    {"look up later", REACH_CLAUSE},
    {"look it up", REACH_CLAUSE},
    {"looked it up", REACH_CLAUSE},
    {"don't put that in", REACH_CLAUSE},
    {"don't print that", REACH_CLAUSE},
    {"dont print that", REACH_CLAUSE},
    {"leave that out", REACH_CLAUSE},
    {"see last note for the measurements", REACH_WORDS},
    {"see last note for measurements", REACH_WORDS},
    {"see last note for the size", REACH_WORDS},
    {"see last note", REACH_CLAUSE},
    {"hold on phone", REACH_CLAUSE},
    {"hold on the phone", REACH_CLAUSE},
    {"hold on someone", REACH_CLAUSE},
    {"phone rang", REACH_CLAUSE},
    {"to do", REACH_CLAUSE},
    {"todo", REACH_CLAUSE},
    {"where was i", REACH_CLAUSE},
    {"i already sold", REACH_CLAUSE},
    {"strike the part", REACH_CLAUSE},
    // the market, and what others say
    {"don't sell", REACH_CLAUSE},
    {"dont sell", REACH_CLAUSE},
    {"online", REACH_CLAUSE},
    {"on the internet", REACH_CLAUSE},
    {"on the web", REACH_CLAUSE},
    {"collectors", REACH_CLAUSE},
    {"hard to find", REACH_CLAUSE},
    {"don't see many", REACH_CLAUSE},
    {"dont see many", REACH_CLAUSE},
    {"rare find", REACH_CLAUSE},
    {"worth a fortune", REACH_CLAUSE},
    {"told me it", REACH_CLAUSE},
    {"antiques show", REACH_CLAUSE},
    {"antiques roadshow", REACH_CLAUSE},
    {"every sunday", REACH_CLAUSE},
    {"for the wedding", REACH_ON},
    {"to a wedding", REACH_ON},
    {"nobody won", REACH_CLAUSE},
};

static bool is_person(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "uncle", "aunt", "auntie", "mother", "mom", "mum", "mother's", "mom's",
               "mum's", "father", "dad", "dad's", "father's", "grandma", "grandmother", "grandma's",
               "grandpa", "grandfather", "granddad", "gran", "nan", "nana", "grandson", "granddaughter",
               "son", "daughter", "husband", "husband's", "wife", "sister", "sister's", "brother",
               "brother's", "cousin", "neighbor", "neighbour", "neighbor's", "neighbour's", "nephew",
               "nephew's", "niece", "friend", "friend's", "boss", "parents", "parents'", "kids", "kid",
               "late", "grandparents", "in-laws", "landlady", "landlord", "mate", "partner", "teacher", "ex",
               "aunt's", "uncle's", "grandmother's", "grandfather's", "grandpa's", "gran's", "nan's");
}

// "my uncle", "grandma swore", "the lady told me", "wife says".
static size_t person_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i, "my", "our", "his", "her") && is_person(note, i + 1)) return 2;
    if (ANY(tokens, i, "grandma", "grandpa", "granddad", "grandson", "granddaughter", "nana", "wife",
            "husband", "mom", "mum") &&
        i + 1 < tokens->count && tokens->at[i + 1].stop == STOP_NONE)
        return tokens->at[i].starts || ANY(tokens, i + 1, "says", "said", "swore", "used", "kept", "told",
                                           "thinks", "was", "had")
                   ? 1
                   : 0;
    if (ANY(tokens, i, "the", "a", "some") &&
        ANY(tokens, i + 1, "lady", "woman", "guy", "man", "fellow", "seller", "dealer", "widow", "sailor",
            "captain", "doctor") &&
        ANY(tokens, i + 2, "said", "says", "told", "swore", "who", "at", "i", "reckoned", "thought", "next",
            "from"))
        return 2;
    if (ANY(tokens, i, "somebody", "someone", "people", "they", "everyone", "nobody") &&
        ANY(tokens, i + 1, "told", "said", "says", "reckons", "ever"))
        return 1;
    return 0;
}

// "$4", "4 bucks", "six dollars", "£3", "50p" where it is a price.
static size_t money_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct number number;
    if (ANY(tokens, i, "$", "\xC2\xA3", "\xE2\x82\xAC") && number_at(tokens, i + 1, &number))
        return 1 + number.taken;
    if (!number_at(tokens, i, &number) || *number.tail) return 0;
    size_t at = i + number.taken;
    if (ANY(tokens, at, "bucks", "buck", "dollars", "dollar", "quid", "cents", "euros", "pence")) {
        // a coin as a ruler, or one that is sold
        if (ANY(tokens, at + 1, "size", "sized", "coin", "coins", "stamp", "bill", "piece")) return 0;
        return number.taken + 1;
    }
    return 0;
}

// "tell Dana to bring the tape": an errand, not "can't tell".
static size_t errand_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "tell", "ask", "remind", "call", "text", "email") || i + 2 >= tokens->count) return 0;
    bool start = tokens->at[i].starts || (i && tokens->at[i - 1].stop >= STOP_COMMA) ||
                 (i && ANY(tokens, i - 1, "and", "must", "should", "to"));
    if (!start) return 0;
    if (ANY(tokens, i + 2, "to", "if", "about", "when", "whether", "for") || tokens->at[i + 1].capital)
        return 2;
    return 0;
}

// "He was six foot three", "my husband is 6 foot 2", "I'm five four": how tall somebody is.
static size_t stature_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i, taken = 0;
    if (ANY(tokens, i, "he's", "she's", "i'm"))
        at++;
    else {
        size_t who = ANY(tokens, i, "my", "our", "his", "her") && is_person(note, i + 1) ? 2
                     : ANY(tokens, i, "he", "she", "i")                                  ? 1
                                                                                         : 0;
        if (!who || !ANY(tokens, i + who, "is", "was", "am", "stood", "stands")) return 0;
        at += who + 1;
    }
    while (ANY(tokens, at, "only", "about", "over", "nearly", "a", "good", "all", "of", "around", "almost"))
        at++;
    struct number number;
    if (!number_at(tokens, at, &number) || number.value < 4 || number.value > 7) return 0;
    taken = number.taken;
    if (!ANY(tokens, at + taken, "foot", "feet", "ft", "'")) return 0;
    at += taken + 1;
    if (number_at(tokens, at, &number) && number.value < 12) at += number.taken;
    return at - i + ANY(tokens, at, "tall", "inches", "in", "\"");
}

// "I did it with my niece and all 60 pieces are there": what was counted, whoever helped.
static bool is_tally(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct number number;
    size_t at = i + 1 + ANY(tokens, i + 1, "of", "the", "its", "single");
    if (!ANY(tokens, i, "all", "every")) return false;
    if (number_at(tokens, at, &number)) at += number.taken;
    return ANY(tokens, at, "piece", "pieces", "card", "cards", "tiles", "parts", "pages", "counters") &&
           ANY(tokens, at + 1, "is", "are", "was", "were", "present", "there", "accounted");
}

static size_t trigger_at(const struct note *note, size_t i, enum reach *reach) {
    const struct token *token = &note->tokens.at[i];
    *reach = REACH_CLAUSE;
    if (token->kind == TOKEN_FIGURE || token->kind == TOKEN_SIGN) return money_at(note, i);
    size_t taken = money_at(note, i);
    if (taken) return taken;
    taken = errand_at(note, i);
    if (taken) return taken;
    taken = stature_at(note, i);
    *reach = taken ? REACH_WORDS : REACH_STORY;
    if (taken) return taken;
    taken = person_at(note, i);
    for (size_t k = i; taken && k < note->tokens.count && note->tokens.at[k].stop < STOP_COMMA; k++)
        if (is_tally(note, k + 1)) return 0;
    if (taken) return taken;
    static const size_t count = sizeof triggers_list / sizeof *triggers_list;
    if (!token_may_open(&note->tokens, i, triggers_list, count, sizeof *triggers_list)) return 0;
    for (size_t k = 0; k < count; k++) {
        if (triggers_list[k].words[0] != token->fold[0]) continue;
        taken = token_phrase(&note->tokens, i, triggers_list[k].words);
        if (!taken || ANY(&note->tokens, i + taken, "parts", "spares", "repair", "scale", "scales", "journal",
                          "gazette", "company", "office", "agent", "agents", "line", "news", "chart"))
            continue; // "sold for parts", "postage scale", "shipping journal"
        if (i > 0 && token_is(&note->tokens, i, "shipping") && token_is(&note->tokens, i - 1, "of"))
            continue; // "journal of shipping"
        *reach = triggers_list[k].reach;
        return taken;
    }
    return 0;
}

// --- how far it goes ---

static bool is_joint(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "but", "so", "and", "because", "though", "although", "except", "oh", "with",
               "since");
}

// Something of the thing: a fault, a measure, a mark that was read.
static bool is_fact(const struct note *note, size_t i) {
    if (note->taken[i] != TAKEN_NOT || note->fault_word[i]) return true;
    if (ANY(&note->tokens, i, "smell", "smells", "smelly", "stinks", "odor", "odour", "broken", "broke",
            "missing", "leaks", "leak", "damage", "damaged", "smelled", "stank", "musty", "smoke", "smoked",
            "smoking", "flooded", "mold", "mould", "mouse", "mice", "fell", "dropped", "fault", "faulty",
            "worm", "worms", "moth", "moths", "rats", "rat", "counted"))
        return true;
    struct number number;
    size_t taken;
    if (note->tokens.at[i].kind != TOKEN_FIGURE || !number_at(&note->tokens, i, &number)) return false;
    const struct unit *unit = unit_at(note, i + number.taken, &number, &taken);
    return unit && unit->kind;
}

// Where the clause of token `i` begins, or what of it is no fact: behind a comma, "but" or the last fact.
static size_t span_from(const struct note *note, size_t i) {
    size_t from = note_clause_from(note, i, STOP_COMMA);
    for (size_t k = i; k > from; k--) {
        if (ANY(&note->tokens, k - 1, "but", "except")) return k;
        if (!is_fact(note, k - 1)) continue;
        // Behind a fact: from the joint between, or from the preposition before the trigger.
        for (size_t j = k; j < i; j++)
            if (is_joint(note, j) || ANY(&note->tokens, j, "by", "from", "of", "that", "which", "when",
                                         "where", "i", "my", "for", "after"))
                return j;
        return i;
    }
    return from;
}

static size_t span_to(const struct note *note, size_t i) {
    size_t to = note_clause_to(note, i, STOP_COMMA);
    for (size_t k = i; k < to; k++) {
        if (ANY(&note->tokens, k, "but", "except")) return k;
        if (!is_fact(note, k)) continue;
        size_t joint = 0;
        for (size_t j = i; j < k; j++)
            if (is_joint(note, j)) joint = j;
        return joint ? joint : k;
    }
    return to;
}

static bool has_fact(const struct note *note, size_t from, size_t to) {
    for (size_t k = from; k < to; k++)
        if (is_fact(note, k)) return true;
    return false;
}

// A clause behind a comma that goes on with the story.
static bool goes_on(const struct note *note, size_t from, size_t to) {
    if (from >= to) return false;
    size_t first = from;
    if (ANY(&note->tokens, first, "and", "so", "then", "well")) first++;
    if (first > from && ANY(&note->tokens, first, "because", "since", "as")) return !has_fact(note, from, to);
    if (!ANY(&note->tokens, first, "i", "he", "she", "we", "they", "who", "where", "when", "until", "which",
             "my", "because", "six", "said", "nobody", "never", "only", "took", "but"))
        return false;
    if (ANY(&note->tokens, first, "i", "never", "only", "which", "but") &&
        ANY(&note->tokens, first + 1, "checked", "looked", "see", "saw", "measured", "counted", "count",
            "think", "guess", "tested", "tried", "cannot", "can't", "cant", "ran", "plugged", "found", "felt",
            "opened", "believe", "know", "don't", "dont", "haven't", "couldn't"))
        return false;
    if (ANY(&note->tokens, first, "never", "only") && ANY(&note->tokens, first + 1, "used", "worn", "opened",
                                                          "been", "repaired", "washed", "lit", "played"))
        return false;
    return !has_fact(note, from, to);
}

static size_t story_to(const struct note *note, size_t to) {
    enum { CLAUSES_MOST = 4 };
    for (int n = 0; n < CLAUSES_MOST && to < note->tokens.count && note->tokens.at[to].stop == STOP_COMMA;
         n++) {
        size_t end = note_clause_to(note, to + 1, STOP_COMMA);
        if (!goes_on(note, to + 1, end)) break;
        to = end;
    }
    return to;
}

// "We got it new in 1983": when it was new is an age.
static bool tells_age(const struct note *note, size_t from, size_t to) {
    bool fresh = false, year = false;
    for (size_t i = from; i < to; i++) {
        fresh |= token_is(&note->tokens, i, "new");
        year |= note->tokens.at[i].kind == TOKEN_FIGURE && strlen(note->tokens.at[i].fold) == 4;
    }
    return fresh && year;
}

// "Selling my late father's tackle box": whose it was is an aside, and the box is the thing.
static size_t owned_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "my", "our") ||
        (i && tokens->at[i - 1].stop < STOP_SENTENCE &&
         !ANY(tokens, i - 1, "selling", "listing", "is", "was", "got", "have")))
        return 0;
    size_t at = i + 1;
    while (ANY(tokens, at, "late", "great", "old", "dear")) at++;
    if (at >= tokens->count || !is_person(note, at) || at + 1 >= tokens->count) return 0;
    const char *word = tokens->at[at].fold;
    size_t size = strlen(word);
    if (ANY(tokens, at + 1, "and", "but", "or", "she", "he", "who", "is", "was", "so", "for")) return 0;
    bool owns = size > 2 && (text_same(word + size - 2, "'s") || text_same(word + size - 2, "s'"));
    if (!owns || tokens->at[at + 1].kind != TOKEN_WORD || is_person(note, at + 1) || // "my husband's brother"
        ANY(tokens, at + 1, "house", "attic", "estate", "things", "stuff", "barn", "garage", "shed",
            "favorite", "home"))
        return 0;
    return at + 1 - i;
}

// "Worms have been in the leg": no story of where it was.
static bool is_pest(const struct note *note, size_t i) {
    for (size_t back = 1; back <= 3 && back <= i; back++)
        if (ANY(&note->tokens, i - back, "worm", "worms", "mice", "mouse", "rats", "moths", "moth", "water",
                "beetle", "beetles", "damp", "wasps", "ants", "squirrels"))
            return true;
    return false;
}

// "Bought this brass desk lamp along with a box of reels": what was got is the thing, and only how is a
// story. The words from `*from` to the returned end; the same where nothing but "this" stands.
static size_t object_of(const struct note *note, size_t i, size_t taken, size_t to, size_t *from) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i + taken;
    if (ANY(tokens, at, "this", "these")) at++;
    *from = at;
    if (at == i || !ANY(tokens, at - 1, "this", "these")) return at;
    bool goods = false;
    struct noun_found noun;
    for (; at < to; at++) {
        if (ANY(tokens, at, "with", "along", "at", "from", "in", "on", "off", "for", "when", "and", "last",
                "years", "year", "ages", "to", "because", "as", "by", "together", "while", "thinking",
                "hoping", "out", "up", "back", "new", "years", "about", "under", "behind", "so"))
            break;
        goods |= noun_at(note, at, &noun) && (noun.thing || !noun.gated);
    }
    return goods ? at : *from;
}

static void leave_aside(struct note *note, size_t from, size_t to) {
    if (from >= to) return;
    note_reading(note, from, to, "aside", "not about the thing");
    note_aside(note, from, to);
}

static size_t aside_from(struct note *note, size_t i) {
    enum reach reach;
    size_t owner = owned_at(note, i);
    if (owner) {
        note_reading(note, i, i + owner, "aside", "whose it was");
        note_aside(note, i, i + owner);
        return i + owner;
    }
    size_t taken = note->fault_word[i] ? 0 : trigger_at(note, i, &reach);
    if (!taken || !note_free(note, i, i + taken) || is_pest(note, i)) return i + 1;
    if (ANY(&note->tokens, i, "selling", "reason", "why", "only") &&
        has_fact(note, i + taken, note_clause_to(note, i, STOP_COMMA)))
        return i + 1; // "selling because a drawer is missing"
    size_t from = reach == REACH_ON || reach == REACH_WORDS ? i : span_from(note, i);
    size_t to = reach == REACH_WORDS ? i + taken : span_to(note, i + taken);
    if (to < i + taken) to = i + taken;
    if (reach == REACH_STORY) to = story_to(note, to);
    while (from < i && note->taken[from] != TAKEN_NOT) from++;
    while (to > i + 1 && ANY(&note->tokens, to - 1, "so", "and", "but", "because")) to--;
    if (tells_age(note, from, to)) return i + taken;
    for (size_t k = from; k < to; k++)
        if (note->taken[k] != TAKEN_NOT) return i + taken;
    size_t object, end = object_of(note, i, taken, to, &object);
    if (end == object) object = end = to;
    leave_aside(note, from, object);
    leave_aside(note, end, to);
    return to;
}

void read_asides(struct note *note) {
    for (size_t i = 0; i < note->tokens.count;) i = note->taken[i] == TAKEN_NOT ? aside_from(note, i) : i + 1;
    read_asides_beside(note);
}
