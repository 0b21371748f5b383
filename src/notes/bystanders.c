// SPDX-License-Identifier: MIT
// "For once nobody broke a thing", "I broke the habit", "he was dead wrong", "the ferry broke down": a verb
// whose subject is a person, an animal or the world, and whose object, if it has one, is no part of the
// thing. What happened to somebody else's goods is no fault of these. "The dog chewed the strap", "I dropped
// it" are.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/things.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

enum who {
    WHO_NOT,
    WHO_SELF,
    WHO_PERSON,
    WHO_FIGURE,
    WHO_CREATURE,
    WHO_WORLD
}; // a figure: "she", who may be
// one of clay

static const char *const persons[] = {
    "uncle",      "aunt",       "auntie",       "mother",     "mom",       "mum",         "father",
    "dad",        "grandma",    "grandmother",  "grandpa",    "granny",    "grandfather", "granddad",
    "grandad",    "gran",       "nan",          "nana",       "nanny",     "grandson",    "granddaughter",
    "son",        "sons",       "daughter",     "daughters",  "husband",   "wife",        "sister",
    "sisters",    "brother",    "brothers",     "cousin",     "cousins",   "neighbor",    "neighbour",
    "neighbors",  "neighbours", "nephew",       "nephews",    "niece",     "nieces",      "friend",
    "friends",    "boss",       "parents",      "kids",       "kid",       "boys",        "boy",
    "girls",      "girl",       "grandparents", "landlady",   "landlord",  "mate",        "mates",
    "partner",    "teacher",    "ex",           "baby",       "child",     "children",    "grandchildren",
    "doctor",     "dentist",    "tenor",        "man",        "woman",     "men",         "women",
    "lady",       "fella",      "fellow",       "bloke",      "guy",       "chap",        "lad",
    "lads",       "lodger",     "guests",       "guest",      "family",    "law",         "folks",
    "teenager",   "teenagers",  "grandkids",    "twins",      "toddler",   "plumber",     "builder",
    "vicar",      "captain",    "sergeant",     "coach",      "crew",      "team",        "owner",
    "owners",     "dealer",     "seller",       "student",    "students",  "customer",    "customers",
    "everybody",  "everyone",   "nobody",       "somebody",   "someone",   "people",      "colleague",
    "colleagues", "bride",      "groom",        "singer",     "pianist",   "nurse",       "stepfather",
    "stepmother", "stepson",    "dressmaker",   "tailor",     "farmer",    "soldier",     "sailor",
    "fisherman",  "baker",      "butcher",      "joiner",     "carpenter", "painter",     "drummer",
    "tenant",     "tenants",    "widow",        "vet",        "priest",    "milkman",     "postman",
    "stranger",   "opponent",   "opponents",    "visitors",   "visitor",   "roommate",    "girlfriend",
    "boyfriend",  "fiance",     "godmother",    "great-aunt", "hubby",     "missus"};
static const char *const creatures[] = {
    "dog",     "dogs",    "cat",     "cats",   "hound",    "hounds",   "puppy",  "pup",     "kitten",
    "horse",   "pony",    "goat",    "goats",  "sheep",    "cow",      "cows",   "hen",     "hens",
    "rooster", "parrot",  "budgie",  "rabbit", "mule",     "donkey",   "ferret", "hamster", "pig",
    "pigs",    "terrier", "spaniel", "collie", "labrador", "greyhound"};
// What stands around everybody: places, weather, vehicles, the fittings of a house, what goes on.
static const char *const world[] = {
    "fish",       "pie",      "pies",     "bread",        "toast",      "cake",     "roast",    "turkey",
    "bacon",      "stew",     "dinner",   "supper",       "biscuits",   "ferry",    "bus",      "train",
    "boat",       "car",      "truck",    "van",          "lorry",      "plane",    "tractor",  "mill",
    "factory",    "house",    "barn",     "office",       "shop",       "store",    "school",   "church",
    "pub",        "hotel",    "farm",     "garage",       "cabin",      "cottage",  "hospital", "theater",
    "theatre",    "cinema",   "bakery",   "pier",         "ceiling",    "boiler",   "furnace",  "electricity",
    "internet",   "phone",    "fridge",   "freezer",      "dishwasher", "dryer",    "washer",   "plumbing",
    "toilet",     "weather",  "storm",    "wind",         "rain",       "snow",     "frost",    "sun",
    "sea",        "tide",     "river",    "creek",        "lake",       "pond",     "night",    "day",
    "morning",    "war",      "party",    "wedding",      "market",     "business", "company",  "marriage",
    "engagement", "economy",  "bank",     "conversation", "crowd",      "fever",    "heatwave", "road",
    "street",     "yard",     "hill",     "harbor",       "harbour",    "piano",    "bonfire",  "tree",
    "trees",      "grass",    "lawn",     "hedge",        "crops",      "village",  "town",     "city",
    "holiday",    "vacation", "camper",   "caravan",      "greenhouse", "shed",     "attic",    "cellar",
    "loft",       "kitchen",  "parlor",   "elevator",     "world",      "season",   "summer",   "winter",
    "weekend",    "dairy",    "creamery", "depot",        "library"};

// Is the word at `i` the thing on sale or what it shows?
static bool is_on_sale(const struct fault_reader *r, size_t i) {
    const struct note *note = r->note;
    if (note->taken[i] == TAKEN_TYPE || note->taken[i] == TAKEN_INCLUDES) return true;
    const char *one = note->tokens.at[i].one;
    const struct record *record = note->record;
    if (record->type.value && kind_has_word(record->type.value, one)) return true;
    for (size_t k = 0; k < record->attribute_count; k++) {
        const struct value *value = &record->attributes[k];
        if (text_same(value->name, "theme") && kind_has_word(value->value, one)) return true;
    }
    return false;
}

static bool is_own_article(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "my", "our", "your", "their", "his", "her", "whose");
}

// "My", "the", "one of my", with adjectives between: where the words before the noun at `i` begin.
static size_t lead_of(const struct tokens *tokens, size_t i, bool *own) {
    enum { ADJECTIVES_MOST = 3 };
    *own = false;
    for (size_t at = i, n = 0; at > 0 && n <= ADJECTIVES_MOST && tokens->at[at - 1].stop == STOP_NONE;
         at--, n++) {
        if (is_own_article(tokens, at - 1)) {
            *own = true;
            return at - 1;
        }
        if (ANY(tokens, at - 1, "the", "a", "an", "some", "every", "any", "that", "this", "each"))
            return at - 1;
        if (tokens->at[at - 1].kind != TOKEN_WORD) break;
    }
    return i;
}

// Was somebody named in the sentence, or in the one before, that "he" and "she" may stand for? A doll is
// "she" as well.
static bool has_person_before(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, i);
    if (start > 0) start = scope_sentence_start(&r->scope, start - 1);
    for (size_t at = i; at > start; at--) {
        bool own;
        if (is_on_sale(r, at - 1)) return false;
        if (AMONG(tokens, at - 1, persons) || AMONG(tokens, at - 1, creatures))
            return lead_of(tokens, at - 1, &own) < at - 1 || tokens->at[at - 1].starts;
    }
    return false;
}

// "My machine died", "our old kettle packed up": another thing that whoever sells has or had.
static bool is_other_of_mine(const struct fault_reader *r, size_t i) {
    static const char *const gave[] = {"died", "quit", "packed", "gave", "failed", "blew", "conked", "broke"};
    const struct tokens *tokens = &r->note->tokens;
    const struct record *record = r->note->record;
    bool own;
    if (!record->type.value || !AMONG(tokens, i + 1, gave) || is_on_sale(r, i)) return false;
    bool any =
        ANY(tokens, i, "machine", "one", "set", "thing", "unit", "pair", "copy", "example", "piece", "model");
    bool of_parts = record->family && text_same(record->family->rule.id, "parts");
    for (size_t k = 0; k < record->others.count; k++)
        if (kind_has_word(record->others.at[k], tokens->at[i].one)) return false;
    struct noun_found noun;
    lead_of(tokens, i, &own);
    return own && (any ? of_parts : noun_at(r->note, i, &noun));
}

// Who the word at `i` names, where it ends the subject of a verb.
static enum who who_at(const struct fault_reader *r, size_t i, bool *own) {
    static const char *const selves[] = {"i",     "we",   "i'd",   "we'd", "i've",  "we've",  "i'm",
                                         "we're", "i'll", "we'll", "you",  "you'd", "you've", "you'll"};
    static const char *const anybody[] = {"nobody", "everybody", "everyone", "someone", "somebody", "anybody",
                                          "folk",   "folks",     "people",   "no-one",  "who",      "who'd"};
    static const char *const them[] = {"he", "she", "he'd", "she'd", "he's", "she's", "he'll", "she'll"};
    const struct tokens *tokens = &r->note->tokens;
    *own = true;
    if (AMONG(tokens, i, selves)) return WHO_SELF;
    if (AMONG(tokens, i, anybody)) return WHO_PERSON;
    if (AMONG(tokens, i, them)) return has_person_before(r, i) ? WHO_PERSON : WHO_FIGURE;
    if (is_on_sale(r, i) || r->part[i]) return WHO_NOT;
    bool person = AMONG(tokens, i, persons), creature = AMONG(tokens, i, creatures),
         thing = AMONG(tokens, i, world);
    if (!person && !creature && !thing) return is_other_of_mine(r, i) ? WHO_WORLD : WHO_NOT;
    size_t lead = lead_of(tokens, i, own);
    bool bare = (person || thing) && (tokens->at[i].starts || (i > 0 && tokens->at[i - 1].stop != STOP_NONE));
    if (lead == i && !bare) return WHO_NOT;
    return person ? WHO_PERSON : creature ? WHO_CREATURE : WHO_WORLD;
}

// The words that may stand between a subject and its verb.
static bool is_between(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "was",    "were",   "is",      "are",     "had",     "have",        "has",        "been",
        "be",     "being",  "got",     "would",   "could",   "should",      "must",       "might",
        "will",   "can",    "did",     "do",      "just",    "all",         "both",       "nearly",
        "almost", "always", "never",   "ever",    "even",    "only",        "also",       "really",
        "then",   "soon",   "once",    "half",    "finally", "practically", "promptly",   "still",
        "there",  "quite",  "so",      "very",    "too",     "a",           "bit",        "am",
        "often",  "twice",  "usually", "somehow", "about",   "finally",     "completely", "totally"};
    return AMONG(tokens, i, words);
}

static bool is_copula(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "was", "were", "is", "are", "am", "been", "be", "got", "get", "gets", "being",
               "he's", "she's", "i'm", "we're", "feels", "felt");
}

static bool ends_object(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "and", "but", "when", "so", "because", "before", "after", "while", "till", "until",
               "as", "if", "where", "though", "than", "then", "or", "every");
}

enum object { OBJECT_NONE, OBJECT_OURS, OBJECT_OTHERS, OBJECT_KNOWN }; // known: of the lists

// What is it that the verb at `v` is done to? Ours: the thing, a part of it, or what may be one.
static bool is_losing(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "lost", "lose", "loses", "losing");
}

static enum object object_of(const struct fault_reader *r, size_t v) {
    enum { FAR = 8 };
    static const char *const its[] = {"it",      "them",     "this",    "these",    "those",
                                      "one",     "ones",     "em",      "itself",   "mine",
                                      "chapter", "chapters", "passage", "passages", "paragraphs"};
    static const char *const ways[] = {"up", "down", "off", "out", "away", "over", "back"};
    // Behind "the" what no list has may be a part; these are none.
    static const char *const others[] = {
        "habit",    "ice",     "news",   "bank",     "rules",  "rule",    "law",      "record",   "silence",
        "journey",  "race",    "match",  "game",     "plot",   "way",     "weight",   "job",      "money",
        "feeling",  "lot",     "will",   "bet",      "war",    "weather", "toast",    "dinner",   "cake",
        "bread",    "cheese",  "meat",   "turkey",   "ham",    "pie",     "roast",    "cost",     "corn",
        "hay",      "wood",    "logs",   "deal",     "ribbon", "sleep",   "interest", "patience", "temper",
        "mind",     "count",   "track",  "heart",    "touch",  "trout",   "fish",     "bass",     "argument",
        "election", "fortune", "battle", "sandwich", "hour",   "hours",   "cause",    "nerve",    "faith",
        "hope",     "balance", "grip",   "footing",  "bets",   "games",   "bearings", "town",     "country",
        "argument", "vote",    "farm",   "baby",     "dog",    "cat",     "kids"};
    const struct tokens *tokens = &r->note->tokens;
    bool lost = is_losing(tokens, v), ours = false, any = false, definite = false, behind = false;
    if (ANY(tokens, v, "broke", "broken", "burst") && token_is(tokens, v + 1, "into") &&
        !ANY(tokens, v + 2, "pieces", "bits", "two", "three", "several", "four", "a", "many", "shards"))
        return OBJECT_OTHERS; // "broke into it with a hairpin"
    for (size_t i = v + 1; i < tokens->count && i <= v + FAR && tokens->at[i - 1].stop == STOP_NONE; i++) {
        if (tokens->at[i].kind != TOKEN_WORD) break;
        if (i == v + 1 && AMONG(tokens, i, ways)) continue;
        if (ends_object(tokens, i)) break;
        if (ANY(tokens, i, "with") && AMONG(tokens, i + 1, its))
            return any && !ours ? OBJECT_OTHERS : OBJECT_OURS;
        bool like_it =
            i > v + 2 && token_is(tokens, i - 1, "of") && !ANY(tokens, i - 2, "one", "some", "part", "bit");
        if (like_it && ANY(tokens, i, "these", "those", "them")) return OBJECT_OTHERS; // "three of these"
        if (AMONG(tokens, i, its) || r->note->taken[i] == TAKEN_TYPE) return OBJECT_OURS;
        if (spot_preposition(tokens, i) || ANY(tokens, i, "of", "with", "for", "to", "from", "into")) {
            behind = true;
            continue;
        }
        if (ANY(tokens, i, "the", "that", "both")) {
            definite |= !any;
            continue;
        }
        if (token_is(tokens, i, "lot") && token_is(tokens, i + 1, "of")) continue; // "a lot of it"
        bool world_word = AMONG(tokens, i, world) || AMONG(tokens, i, others);
        if (behind && AMONG(tokens, i, world) && !is_on_sale(r, i) &&
            (ANY(tokens, i - 1, "of", "off") || ANY(tokens, i - 2, "of", "off")))
            return OBJECT_OTHERS; // "the roof off the barn"
        if (ANY(tokens, i, "others", "rest") && ANY(tokens, i - 1, "the") && r->note->record->count < 2)
            return OBJECT_OTHERS; // "cracked the others, this one came through"
        if (!behind && world_word && (!r->scope.fault[i] || lost)) return OBJECT_KNOWN;
        ours |= (r->part[i] || r->scope.fault[i]) && !(behind && AMONG(tokens, i, world));
        any |= !behind;
    }
    if (ours) return OBJECT_OURS;
    if (!any) return OBJECT_NONE;
    return ours || definite ? OBJECT_OURS : OBJECT_OTHERS;
}

// Where the subject of the verb at `v` ends; SIZE_MAX where the words before it are none. Behind "and" it is
// the one that opens the clause.
static size_t subject_of(const struct fault_reader *r, size_t v, bool *copula, bool *joined, bool *relative) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = v;
    *copula = *joined = *relative = false;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE && is_between(tokens, at - 1)) {
        *copula |= is_copula(tokens, at - 1);
        at--;
    }
    if (at == 0) return SIZE_MAX;
    size_t head = at - 1;
    if (head > 1 && token_is(tokens, head, "door") && token_is(tokens, head - 1, "next")) head -= 2;
    if (tokens->at[head].stop == STOP_NONE && head > 0 &&
        ANY(tokens, head, "that", "which", "who", "who'd")) {
        *relative = true; // "the office that burned", "a tailor who'd cut"
        return ANY(tokens, head, "that", "which") || !ends_object(tokens, head - 1) ? head - 1 : head;
    }
    if (!ANY(tokens, head, "and", "then", "or") || tokens->at[head].stop != STOP_NONE) {
        *copula |= is_copula(tokens, head);
        return tokens->at[head].stop == STOP_NONE ? head : SIZE_MAX;
    }
    *joined = true;
    size_t from = scope_clause_start(&r->scope, head);
    while (from < head &&
           ANY(tokens, from, "and", "when", "so", "once", "one", "day", "then", "because", ",", "but"))
        from++;
    for (size_t i = from; i < head && i < from + 4; i++) {
        bool own;
        if (who_at(r, i, &own) != WHO_NOT) return i;
    }
    return SIZE_MAX;
}

static bool is_damage(const struct fault_reader *r, size_t i) {
    if (is_losing(&r->note->tokens, i)) return true; // no rule has these alone
    bool found = false;
    for (size_t k = 0; k < r->hit_count && r->hits[k].from <= i; k++) {
        const struct flaw *kind = r->hits[k].kinds[0];
        if (r->hits[k].from != i) continue;
        if (ANY(&r->note->tokens, i, "played", "loved", "used", "handled")) return false; // that wears it
        if (fault_is_silent(kind) || kind->class == CLASS_FEATURE || kind->class == CLASS_STATUS)
            return false;
        found = true;
    }
    return found;
}

// "A tear that somebody sewed up", "the leg my uncle broke", "the buttons I gave up on": where no joint
// stands before the subject at `i`, the object may.
static bool is_relative(const struct fault_reader *r, size_t i) {
    static const char *const joints[] = {
        "and",      "but",   "when",    "because", "so",     "if",    "till", "until",    "before",
        "after",    "while", "as",      "since",   "though", "where", "then", "for",      "how",
        "once",     "cos",   "or",      "than",    "why",    "also",  "now",  "whenever", "that's",
        "although", "yet",   "every",   "time",    "there",  "the",   "said", "says",     "swore",
        "think",    "told",  "thought", "well",    "like",   "whose", "once", "just"};
    const struct tokens *tokens = &r->note->tokens;
    return i > 0 && tokens->at[i - 1].stop == STOP_NONE && tokens->at[i - 1].kind == TOKEN_WORD &&
           !AMONG(tokens, i - 1, joints);
}

static void read_verb(struct fault_reader *r, size_t first) {
    const struct tokens *tokens = &r->note->tokens;
    bool copula, joined, relative, own;
    size_t head = subject_of(r, first, &copula, &joined, &relative), v = first;
    for (; is_between(tokens, v) && r->scope.fault[v + 1]; v++)
        copula |= is_copula(tokens, v); // "got soaked"
    while (copula && r->scope.fault[v + 1] && tokens->at[v].stop == STOP_NONE &&
           !ANY(tokens, v + 1, "it", "them"))
        v++; // "dead tired"
    if (head == SIZE_MAX) return;
    enum who who = who_at(r, head, &own);
    if (who == WHO_NOT) return;
    bool noun = AMONG(tokens, head, persons) || AMONG(tokens, head, creatures) || AMONG(tokens, head, world);
    if (!relative && is_relative(r, noun ? lead_of(tokens, head, &own) : head)) return;
    enum object object = object_of(r, v);
    if (object == OBJECT_OURS || (is_losing(tokens, v) && object != OBJECT_KNOWN)) return;
    bool way =
        ANY(tokens, v + 1, "up", "down", "out", "off", "away", "into") && tokens->at[v].stop == STOP_NONE;
    if (object == OBJECT_NONE && (joined || ANY(tokens, head, "somebody", "someone", "who"))) return;
    if (object == OBJECT_NONE && !copula && !way && who != WHO_WORLD) return; // "I chipped, sorry"
    if (who == WHO_FIGURE && (object < OBJECT_OTHERS || joined)) return;
    // "The boy is broken at the ankle", "the horse has lost its tail": what it shows.
    if (!own && who != WHO_WORLD && (copula || object == OBJECT_NONE)) return;
    size_t to = v + 1;
    while (to < tokens->count && r->scope.fault[to] && tokens->at[to - 1].stop == STOP_NONE) to++;
    while (is_losing(tokens, v) && to < tokens->count && tokens->at[to - 1].stop == STOP_NONE &&
           tokens->at[to].kind == TOKEN_WORD && !ends_object(tokens, to))
        to++; // what it is that was lost
    scope_mark(&r->scope, first, to, STANCE_OTHER, head);
}

// "Before they tore it down", "from the hall they tore down last year", "tearing the mill down": a building.
// Down the front or one side, it is cloth.
static void read_razed(struct fault_reader *r, size_t i) {
    enum { FAR = 5 };
    static const char *const when[] = {"in",    "last",  "and",   "to",     "when", "for",
                                       "after", "years", "this",  "some",   "so",   "by",
                                       "ago",   "a",     "about", "around", "but",  "because"};
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "tore", "tear", "tearing", "torn", "ripped")) return;
    size_t down = i + 1;
    while (down < tokens->count && down < i + FAR && tokens->at[down - 1].stop == STOP_NONE &&
           !token_is(tokens, down, "down"))
        down++;
    if (!token_is(tokens, down, "down") || tokens->at[down - 1].stop != STOP_NONE) return;
    bool ends =
        down + 1 >= tokens->count || tokens->at[down + 1].stop != STOP_NONE || AMONG(tokens, down + 1, when);
    bool who =
        i > 0 && ANY(tokens, i - 1, "they", "they'd", "he", "we", "city", "people", "somebody", "someone",
                     "company", "council", "county", "were", "was", "got", "being", "been", "bulldozers");
    for (size_t k = i + 1; k < down; k++)
        if (r->part[k]) return; // "tore the pocket down"
    if (ends && who) scope_mark(&r->scope, i, down + 1, STANCE_OTHER, i > 0 ? i - 1 : i);
}

void read_bystanders(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    if (r->note->off & SCOPE_INTENDED) return;
    for (size_t i = 1; i < tokens->count; i++) {
        read_razed(r, i);
        if (tokens->at[i].kind == TOKEN_WORD && tokens->at[i - 1].stop == STOP_NONE && is_damage(r, i))
            read_verb(r, i);
    }
}
