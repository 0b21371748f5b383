// SPDX-License-Identifier: MIT
// Nouns whose number the endings alone do not tell. Every list is in byte order, for a search by halves; a
// test checks that.
#include "say/nouns.h"

#include "text/order.h"

// Plural in form for one thing; nothing comes off.
static const char *const plural_only[] = {
    "bagpipes",     "barracks",    "bellows",     "belongings", "binoculars", "bloomers",   "breeches",
    "cattle",       "clothes",     "crossroads",  "culottes",   "dungarees",  "earmuffs",   "eaves",
    "eyeglasses",   "forceps",     "furnishings", "gallows",    "goggles",    "goods",      "headquarters",
    "innards",      "jackstraws",  "jeans",       "jodhpurs",   "knickers",   "lederhosen", "leggings",
    "loppers",      "ninepins",    "nippers",     "oddments",   "overalls",   "pajamas",    "pants",
    "pincers",      "pliers",      "pyjamas",     "scissors",   "secateurs",  "shears",     "shorts",
    "slacks",       "smithereens", "snips",       "spectacles", "spillikins", "suds",       "sunglasses",
    "surroundings", "tights",      "tongs",       "trousers",   "tweezers",   "waders"};

// Stuff without a number; neither form changes.
static const char *const mass[] = {
    "aircraft",      "asbestos",    "athletics",    "baggage",     "bedding",
    "bison",         "brassware",   "bric-a-brac",  "bunting",     "cardboard",
    "chaos",         "chassis",     "china",        "clothing",    "corduroy",
    "cosmos",        "crockery",    "cutlery",      "data",        "deer",
    "denim",         "ephemera",    "equipment",    "ethos",       "firewood",
    "fish",          "flannelette", "flatware",     "furniture",   "gingham",
    "grouse",        "gymnastics",  "haberdashery", "hardware",    "hessian",
    "hollowware",    "hosiery",     "hovercraft",   "jewellery",   "jewelry",
    "kindling",      "kudos",       "lingerie",     "linoleum",    "luggage",
    "lumber",        "machinery",   "marquetry",    "mathematics", "media",
    "memorabilia",   "millinery",   "molasses",     "moose",       "mother-of-pearl",
    "netting",       "news",        "offspring",    "oilcloth",    "papier-mache",
    "paraphernalia", "pathos",      "pewter",       "physics",     "plywood",
    "porcelain",     "pottery",     "rickrack",     "sacking",     "salmon",
    "scrimshaw",     "seersucker",  "series",       "sheep",       "shrimp",
    "silverplate",   "software",    "spacecraft",   "species",     "stationery",
    "sterling",      "stuffing",    "swine",        "tableware",   "tackle",
    "taxidermy",     "tinsel",      "trout",        "tweed",       "twill",
    "upholstery",    "wadding",     "ware",         "watercraft",  "webbing"};

// Singular though they end in s, where the endings do not show it.
static const char *const singular_s[] = {
    "across",  "afterwards", "alias",   "alms",     "always",  "arras",     "as",         "atlas",
    "besides", "bias",       "biceps",  "bus",      "canvas",  "christmas", "cyclops",    "does",
    "dos",     "downwards",  "epns",    "gas",      "gps",     "has",       "hers",       "his",
    "is",      "its",        "lens",    "madras",   "measles", "mews",      "mrs",        "mumps",
    "nos",     "ours",       "pampas",  "pancreas", "perhaps", "pus",       "quadriceps", "rhinoceros",
    "sas",     "sos",        "summons", "theirs",   "towards", "trellis",   "triceps",    "upwards",
    "us",      "vhs",        "was",     "whereas",  "yes",     "yours"};

// Ending in -ie: -ies loses only its s.
static const char *const ie[] = {
    "aerie",    "beanie",        "birdie",      "bogie",       "boiserie",    "boogie",  "bookie",
    "bootie",   "bourgeoisie",   "bowtie",      "brasserie",   "brie",        "brownie", "budgie",
    "cabbie",   "calorie",       "camaraderie", "charcuterie", "chinoiserie", "collie",  "cookie",
    "coterie",  "cowrie",        "dearie",      "die",         "eyrie",       "foodie",  "freebie",
    "genie",    "ghillie",       "gillie",      "goalie",      "groupie",     "hankie",  "hippie",
    "hoodie",   "indie",         "junkie",      "kelpie",      "kiltie",      "laddie",  "lassie",
    "lie",      "magpie",        "menagerie",   "movie",       "necktie",     "nightie", "onesie",
    "organdie", "passementerie", "patisserie",  "pie",         "pinkie",      "pixie",   "potpie",
    "prairie",  "quickie",       "reverie",     "rookie",      "rotisserie",  "selfie",  "sharpie",
    "smoothie", "sortie",        "stymie",      "talkie",      "tie",         "toughie", "townie",
    "veggie",   "walkie",        "yuppie",      "zombie"};

// Ending in -o with -oes: potato, potatoes.
static const char *const oes[] = {"buffalo", "cargo",   "domino",   "echo",   "embargo", "grotto",
                                  "hero",    "mango",   "mosquito", "motto",  "potato",  "tomato",
                                  "tornado", "torpedo", "veto",     "volcano"};

// Ending in -use, unlike cactuses and buses.
static const char *const use[] = {"abuse",      "diffuse", "disuse", "excuse", "fuse",
                                  "hypotenuse", "misuse",  "muse",   "peruse", "profuse",
                                  "recluse",    "refuse",  "reuse",  "ruse",   "use"};

// Ending in -is with -ises; all other -ises are -ise.
static const char *const is[] = {"amaryllis",  "cannabis",   "chrysalis", "clematis",   "epidermis",
                                 "ibis",       "iris",       "lis",       "mantis",     "marquis",
                                 "metropolis", "necropolis", "pelvis",    "portcullis", "propolis",
                                 "tennis",     "trellis"};

// Ending in -as or -os with -ases, -oses; all others are -ase, -ose.
static const char *const as[] = {"alias",  "arras",    "asbestos",  "atlas", "bias",
                                 "biogas", "canvas",   "christmas", "gas",   "madras",
                                 "pampas", "pancreas", "rhinoceros"};

// Ending in -sse.
static const char *const ss_e[] = {"coulisse", "crevasse", "demitasse", "finesse", "fosse",
                                   "impasse",  "mousse",   "palliasse", "pelisse", "posse"};

// Ending in -che or -she: only the s comes off.
static const char *const che[] = {
    "ache",      "avalanche", "backache",   "barouche",  "brioche",     "cache",   "caleche",  "capuche",
    "cartouche", "cliche",    "cloche",     "creche",    "douche",      "earache", "farouche", "gouache",
    "headache",  "heartache", "microfiche", "moustache", "mustache",    "niche",   "panache",  "pastiche",
    "psyche",    "quiche",    "ruche",      "seiche",    "stomachache", "tache",   "toothache"};

// Ending in -xe: axe, axes.
static const char *const xe[] = {"axe", "battleaxe", "broadaxe", "pickaxe", "poleaxe"};

// Doubling their z: quiz, quizzes.
static const char *const zz[] = {"biz", "fez", "quiz", "whiz"};

// Ending in -z after a vowel: topaz, topazes.
static const char *const z[] = {"topaz"};

// Ending in -i or -u whose plural looks like -is, -us.
static const char *const i_u[] = {
    "alibi", "bayou",  "bikini",  "bonsai",  "caribou", "chili", "chilli",  "corgi",  "deli",
    "dhoti", "emu",    "gnu",     "guru",    "haiku",   "houri", "kepi",    "khaki",  "kiwi",
    "kukri", "litchi", "martini", "maxi",    "menu",    "midi",  "mini",    "obi",    "okapi",
    "peri",  "rabbi",  "safari",  "samurai", "sari",    "semi",  "ski",     "tatami", "taxi",
    "thou",  "tiki",   "tutu",    "wapiti",  "yeti",    "yogi",  "zucchini"};

// Ending in a -ch that sounds like k: stomachs.
static const char *const ch_k[] = {"epoch",   "eunuch",    "loch",    "matriarch",
                                   "monarch", "patriarch", "stomach", "tech"};

// Words that share one head when joined: "salt and peppers", "black and whites".
static const char *const stuff[] = {"black",  "blue",    "bone",   "bread", "brown",  "butter", "cream",
                                    "gold",   "gray",    "green",  "grey",  "groove", "oil",    "orange",
                                    "pepper", "pink",    "purple", "rag",   "red",    "salt",   "silver",
                                    "tongue", "vinegar", "white",  "yellow"};

// Ending in -man without being a man.
static const char *const man[] = {"brahman", "caiman",  "cayman", "german", "human",    "mussulman",
                                  "norman",  "ottoman", "roman",  "shaman", "talisman", "toman"};

// Ending in -men in the singular.
static const char *const men[] = {"abdomen",    "acumen",   "albumen",  "amen",     "bitumen", "carmen",
                                  "catechumen", "cognomen", "culmen",   "cyclamen", "dolmen",  "examen",
                                  "foramen",    "gravamen", "lumen",    "numen",    "omen",    "ramen",
                                  "regimen",    "rumen",    "specimen", "stamen",   "tegmen",  "yemen"};

// Short forms said letter by letter though they have a vowel.
static const char *const spelled[] = {"aa",  "aaa", "ac",   "ad",  "am",  "cpu",  "ecu", "ep",  "epns",
                                      "gpu", "ide", "io",   "iou", "ip",  "iq",   "irs", "isa", "led",
                                      "nos", "oem", "raf",  "sos", "uae", "ufo",  "uhf", "uk",  "ups",
                                      "us",  "usa", "usaf", "usb", "usn", "ussr", "uv"};

// Irregular pairs, once in the order of each side.
static const struct noun_pair by_singular[] = {{"addendum", "addenda"},
                                               {"alga", "algae"},
                                               {"alumnus", "alumni"},
                                               {"analysis", "analyses"},
                                               {"appendix", "appendices"},
                                               {"bacterium", "bacteria"},
                                               {"cactus", "cacti"},
                                               {"calf", "calves"},
                                               {"cat-o'-nine-tails", "cat-o'-nine-tails"},
                                               {"chateau", "chateaux"},
                                               {"child", "children"},
                                               {"corpus", "corpora"},
                                               {"crisis", "crises"},
                                               {"criterion", "criteria"},
                                               {"diagnosis", "diagnoses"},
                                               {"die", "dice"},
                                               {"dormouse", "dormice"},
                                               {"dwarf", "dwarves"},
                                               {"elf", "elves"},
                                               {"erratum", "errata"},
                                               {"foot", "feet"},
                                               {"fungus", "fungi"},
                                               {"gateau", "gateaux"},
                                               {"genus", "genera"},
                                               {"goose", "geese"},
                                               {"graffito", "graffiti"},
                                               {"half", "halves"},
                                               {"hanger-on", "hangers-on"},
                                               {"hoof", "hooves"},
                                               {"hypothesis", "hypotheses"},
                                               {"knife", "knives"},
                                               {"larva", "larvae"},
                                               {"leaf", "leaves"},
                                               {"life", "lives"},
                                               {"loaf", "loaves"},
                                               {"looker-on", "lookers-on"},
                                               {"louse", "lice"},
                                               {"low-life", "low-lifes"},
                                               {"madame", "mesdames"},
                                               {"man", "men"},
                                               {"matrix", "matrices"},
                                               {"mongoose", "mongooses"},
                                               {"mouse", "mice"},
                                               {"nebula", "nebulae"},
                                               {"nucleus", "nuclei"},
                                               {"oasis", "oases"},
                                               {"ovum", "ova"},
                                               {"ox", "oxen"},
                                               {"parenthesis", "parentheses"},
                                               {"passer-by", "passers-by"},
                                               {"passerby", "passersby"},
                                               {"person", "people"},
                                               {"phenomenon", "phenomena"},
                                               {"quantum", "quanta"},
                                               {"radius", "radii"},
                                               {"runner-up", "runners-up"},
                                               {"scarf", "scarves"},
                                               {"self", "selves"},
                                               {"seraph", "seraphim"},
                                               {"sergeant-at-arms", "sergeants-at-arms"},
                                               {"sheaf", "sheaves"},
                                               {"shelf", "shelves"},
                                               {"still-life", "still-lifes"},
                                               {"stimulus", "stimuli"},
                                               {"stratum", "strata"},
                                               {"synopsis", "synopses"},
                                               {"tableau", "tableaux"},
                                               {"tenderfoot", "tenderfoots"},
                                               {"terminus", "termini"},
                                               {"thesis", "theses"},
                                               {"thief", "thieves"},
                                               {"thou", "thous"},
                                               {"titmouse", "titmice"},
                                               {"tooth", "teeth"},
                                               {"trousseau", "trousseaux"},
                                               {"vertebra", "vertebrae"},
                                               {"vertex", "vertices"},
                                               {"wharf", "wharves"},
                                               {"wife", "wives"},
                                               {"wolf", "wolves"},
                                               {"woman", "women"},
                                               {"woodlouse", "woodlice"}};

static const struct noun_pair by_plural[] = {{"addendum", "addenda"},
                                             {"alga", "algae"},
                                             {"alumnus", "alumni"},
                                             {"analysis", "analyses"},
                                             {"appendix", "appendices"},
                                             {"bacterium", "bacteria"},
                                             {"cactus", "cacti"},
                                             {"calf", "calves"},
                                             {"cat-o'-nine-tails", "cat-o'-nine-tails"},
                                             {"chateau", "chateaux"},
                                             {"child", "children"},
                                             {"corpus", "corpora"},
                                             {"crisis", "crises"},
                                             {"criterion", "criteria"},
                                             {"diagnosis", "diagnoses"},
                                             {"die", "dice"},
                                             {"dormouse", "dormice"},
                                             {"dwarf", "dwarves"},
                                             {"elf", "elves"},
                                             {"erratum", "errata"},
                                             {"foot", "feet"},
                                             {"fungus", "fungi"},
                                             {"gateau", "gateaux"},
                                             {"goose", "geese"},
                                             {"genus", "genera"},
                                             {"graffito", "graffiti"},
                                             {"half", "halves"},
                                             {"hanger-on", "hangers-on"},
                                             {"hoof", "hooves"},
                                             {"hypothesis", "hypotheses"},
                                             {"knife", "knives"},
                                             {"larva", "larvae"},
                                             {"leaf", "leaves"},
                                             {"louse", "lice"},
                                             {"life", "lives"},
                                             {"loaf", "loaves"},
                                             {"looker-on", "lookers-on"},
                                             {"low-life", "low-lifes"},
                                             {"matrix", "matrices"},
                                             {"man", "men"},
                                             {"madame", "mesdames"},
                                             {"mouse", "mice"},
                                             {"mongoose", "mongooses"},
                                             {"nebula", "nebulae"},
                                             {"nucleus", "nuclei"},
                                             {"oasis", "oases"},
                                             {"ovum", "ova"},
                                             {"ox", "oxen"},
                                             {"parenthesis", "parentheses"},
                                             {"passer-by", "passers-by"},
                                             {"passerby", "passersby"},
                                             {"person", "people"},
                                             {"phenomenon", "phenomena"},
                                             {"quantum", "quanta"},
                                             {"radius", "radii"},
                                             {"runner-up", "runners-up"},
                                             {"scarf", "scarves"},
                                             {"self", "selves"},
                                             {"seraph", "seraphim"},
                                             {"sergeant-at-arms", "sergeants-at-arms"},
                                             {"sheaf", "sheaves"},
                                             {"shelf", "shelves"},
                                             {"still-life", "still-lifes"},
                                             {"stimulus", "stimuli"},
                                             {"stratum", "strata"},
                                             {"synopsis", "synopses"},
                                             {"tableau", "tableaux"},
                                             {"tooth", "teeth"},
                                             {"tenderfoot", "tenderfoots"},
                                             {"terminus", "termini"},
                                             {"thesis", "theses"},
                                             {"thief", "thieves"},
                                             {"thou", "thous"},
                                             {"titmouse", "titmice"},
                                             {"trousseau", "trousseaux"},
                                             {"vertebra", "vertebrae"},
                                             {"vertex", "vertices"},
                                             {"wharf", "wharves"},
                                             {"wife", "wives"},
                                             {"wolf", "wolves"},
                                             {"woman", "women"},
                                             {"woodlouse", "woodlice"}};

// The same at the end of a longer word: penknife, bookshelf, eyetooth.
#define ENDING(singular, plural)                                                                             \
    { {singular, plural}, sizeof singular - 1, sizeof plural - 1 }

static const struct noun_ending endings[] = {
    ENDING("child", "children"), ENDING("foot", "feet"),     ENDING("hoof", "hooves"),
    ENDING("knife", "knives"),   ENDING("leaf", "leaves"),   ENDING("loaf", "loaves"),
    ENDING("scarf", "scarves"),  ENDING("shelf", "shelves"), ENDING("thief", "thieves"),
    ENDING("tooth", "teeth"),    ENDING("wife", "wives"),    ENDING("wolf", "wolves")};

static const struct noun_list lists[NOUNS_COUNT] = {
    [NOUNS_PLURAL_ONLY] = {plural_only, sizeof plural_only / sizeof *plural_only},
    [NOUNS_MASS] = {mass, sizeof mass / sizeof *mass},
    [NOUNS_SINGULAR_S] = {singular_s, sizeof singular_s / sizeof *singular_s},
    [NOUNS_IE] = {ie, sizeof ie / sizeof *ie},
    [NOUNS_OES] = {oes, sizeof oes / sizeof *oes},
    [NOUNS_USE] = {use, sizeof use / sizeof *use},
    [NOUNS_IS] = {is, sizeof is / sizeof *is},
    [NOUNS_AS] = {as, sizeof as / sizeof *as},
    [NOUNS_SS_E] = {ss_e, sizeof ss_e / sizeof *ss_e},
    [NOUNS_CHE] = {che, sizeof che / sizeof *che},
    [NOUNS_XE] = {xe, sizeof xe / sizeof *xe},
    [NOUNS_ZZ] = {zz, sizeof zz / sizeof *zz},
    [NOUNS_Z] = {z, sizeof z / sizeof *z},
    [NOUNS_I_U] = {i_u, sizeof i_u / sizeof *i_u},
    [NOUNS_CH_K] = {ch_k, sizeof ch_k / sizeof *ch_k},
    [NOUNS_STUFF] = {stuff, sizeof stuff / sizeof *stuff},
    [NOUNS_MAN] = {man, sizeof man / sizeof *man},
    [NOUNS_MEN] = {men, sizeof men / sizeof *men},
    [NOUNS_SPELLED] = {spelled, sizeof spelled / sizeof *spelled},
};

const struct noun_list *nouns_list(enum noun_kind kind) {
    return &lists[kind];
}

bool nouns_has(enum noun_kind kind, const char *word) {
    return text_sorted_has(lists[kind].words, lists[kind].count, word);
}

struct noun_pairs nouns_by_singular(void) {
    return (struct noun_pairs){by_singular, sizeof by_singular / sizeof *by_singular};
}

struct noun_pairs nouns_by_plural(void) {
    return (struct noun_pairs){by_plural, sizeof by_plural / sizeof *by_plural};
}

const struct noun_ending *nouns_endings(size_t *count) {
    *count = sizeof endings / sizeof *endings;
    return endings;
}

static const struct noun_pair *pair_of(const struct noun_pair *pairs, size_t count, const char *word,
                                       bool plural) {
    for (size_t from = 0, to = count; from < to;) {
        size_t middle = from + (to - from) / 2;
        const struct noun_pair *pair = &pairs[middle];
        int side = text_order(word, plural ? pair->plural : pair->singular);
        if (!side) return pair;
        if (side < 0)
            to = middle;
        else
            from = middle + 1;
    }
    return NULL;
}

const struct noun_pair *nouns_of_singular(const char *word) {
    return pair_of(by_singular, sizeof by_singular / sizeof *by_singular, word, false);
}

const struct noun_pair *nouns_of_plural(const char *word) {
    return pair_of(by_plural, sizeof by_plural / sizeof *by_plural, word, true);
}
