// SPDX-License-Identifier: MIT
// The words that say a part is not there, put together as people put them: "has long since vanished", "are
// nowhere to be seen", "came without", "was robbed of its", "there isn't a". The kind by the part, where no
// rule names that part.
#include <string.h>

#include "notes/faults.h"
#include "notes/lacking.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// Longest of the phrases that stands at `i`; how many tokens.
static bool joined(const struct tokens *tokens, size_t i) {
    return i < tokens->count && tokens->at[i].stop == STOP_NONE && tokens->at[i].kind == TOKEN_WORD;
}

// "The handle has lost a flake", "case missing its hook": it is what lacks something.
static bool has_object(const struct tokens *tokens, size_t i) {
    static const char *const lose[] = {"lost", "missing", "lacking", "mislaid", "wanting"};
    static const char *const objects[] = {"a",    "an",      "its",   "his",  "her",  "their", "the",
                                          "one",  "two",     "some",  "any",  "both", "all",   "three",
                                          "four", "five",    "six",   "most", "half", "bits",  "much",
                                          "part", "several", "every", "of"};
    return AMONG(tokens, i - 1, lose) && joined(tokens, i - 1) && AMONG(tokens, i, objects);
}

size_t lacking_behind(const struct tokens *tokens, size_t i) {
    static const char *const leads[] = {
        "is",        "are",       "was",       "were",       "has",     "have",     "had",
        "been",      "be",        "being",     "got",        "gets",    "went",     "gone",
        "going",     "seems",     "seem",      "appears",    "appear",  "looks",    "to",
        "both",      "all",       "long",      "since",      "sadly",   "alas",     "now",
        "already",   "also",      "just",      "then",       "clean",   "simply",   "unfortunately",
        "sometime",  "somehow",   "somewhere", "completely", "totally", "entirely", "apparently",
        "evidently", "obviously", "probably",  "quite",      "too",     "either",   "must",
        "may",       "might",     "himself",   "itself"};
    static const char *const gone[] = {"absent",
                                       "absent without leave",
                                       "adrift somewhere",
                                       "astray",
                                       "awol",
                                       "binned",
                                       "chucked",
                                       "chucked out",
                                       "deserted",
                                       "did not survive",
                                       "didn't survive",
                                       "didn't turn up",
                                       "disappeared",
                                       "discarded",
                                       "ditched",
                                       "eloped",
                                       "elsewhere",
                                       "flown the nest",
                                       "for good",
                                       "for a burton",
                                       "for a walk",
                                       "gone",
                                       "hasn't survived",
                                       "haven't survived",
                                       "history",
                                       "in the bin",
                                       "in the skip",
                                       "isn't among them",
                                       "isn't in it",
                                       "isn't in the box",
                                       "isn't included",
                                       "isn't on it",
                                       "isn't present",
                                       "isn't to be found",
                                       "aren't in it",
                                       "aren't in the box",
                                       "aren't included",
                                       "aren't on it",
                                       "aren't present",
                                       "aren't to be found",
                                       "lacking",
                                       "left the building",
                                       "lost",
                                       "mislaid",
                                       "missing",
                                       "misplaced",
                                       "never found",
                                       "never made it",
                                       "never showed up",
                                       "never turned up",
                                       "no longer here",
                                       "no longer present",
                                       "no longer there",
                                       "no longer with it",
                                       "no more",
                                       "not among them",
                                       "not in it",
                                       "not in the box",
                                       "not on it",
                                       "not provided",
                                       "not found",
                                       "not to hand",
                                       "not located",
                                       "parted from it",
                                       "parted from its base",
                                       "not supplied",
                                       "nowhere in sight",
                                       "nowhere to be had",
                                       "nowhere about",
                                       "nowhere around",
                                       "departed",
                                       "parted company",
                                       "removed and lost",
                                       "robbed",
                                       "scarpered",
                                       "snaffled",
                                       "stayed behind",
                                       "stolen",
                                       "swiped",
                                       "taken a walk",
                                       "the way of all flesh",
                                       "vanished",
                                       "walkabout",
                                       "wandered",
                                       "wandered off",
                                       "walked",
                                       "walked off",
                                       "west",
                                       "what's missing",
                                       "what is missing",
                                       "done a runner",
                                       "did a runner",
                                       "done a bunk",
                                       "fallen off and lost",
                                       "fell off and got lost",
                                       "fell off and lost",
                                       "came off and got lost",
                                       "came off and lost",
                                       "come off and lost",
                                       "snapped off and lost",
                                       "broke off and lost",
                                       "fallen by the wayside",
                                       "to the great beyond",
                                       "begging",
                                       "wanting"};
    size_t at = i;
    while (at < i + 5 && joined(tokens, at) && AMONG(tokens, at, leads)) at++;
    // "gone" leads ("gone missing") and says it by itself; a bare "went", "been" or "walked" says nothing.
    for (;; at--) {
        size_t n = token_longest(tokens, at, gone, COUNT(gone));
        static const char *const led[] = {"for good", "for a burton", "for a walk",  "west",     "walked",
                                          "robbed",   "elsewhere",    "no more",     "history",  "begging",
                                          "wanting",  "in the bin",   "in the skip", "departed", "deserted",
                                          "stolen",   "chucked"};
        bool needs_lead = n && token_longest(tokens, at, led, COUNT(led)) == n;
        if (n && has_object(tokens, at + n)) return 0;
        if (n && !(needs_lead && at == i)) return at + n - i;
        if (at == i) return 0;
    }
}

size_t lacking_before(const struct tokens *tokens, size_t i) {
    static const char *const lacks[] = {"all there but",
                                        "all there except",
                                        "all there except for",
                                        "all there apart from",
                                        "all there bar",
                                        "bereft of",
                                        "came to me without",
                                        "came without",
                                        "comes without",
                                        "complete apart from",
                                        "complete bar",
                                        "complete but for",
                                        "complete except",
                                        "complete except for",
                                        "crying out for",
                                        "deprived of",
                                        "devoid of",
                                        "did not come with",
                                        "didn't have",
                                        "didn't get",
                                        "do not have",
                                        "does not come with",
                                        "does not have",
                                        "doesn't come with",
                                        "doesn't have",
                                        "don't have",
                                        "denuded of",
                                        "had no",
                                        "has mislaid",
                                        "has parted with",
                                        "has shed",
                                        "hasn't any",
                                        "hasn't got",
                                        "hasn't got any",
                                        "have no",
                                        "haven't any",
                                        "haven't got",
                                        "haven't",
                                        "i've no",
                                        "i've never had",
                                        "in need of",
                                        "in want of",
                                        "it's got no",
                                        "got no",
                                        "lack",
                                        "lacking",
                                        "lacks",
                                        "lost",
                                        "minus",
                                        "misses",
                                        "missing",
                                        "never came with",
                                        "no longer got",
                                        "no longer has",
                                        "not a sign of",
                                        "not got",
                                        "not with",
                                        "nothing left of",
                                        "parted company with",
                                        "parted with",
                                        "robbed of",
                                        "sans",
                                        "separated from",
                                        "shorn of",
                                        "short of",
                                        "shy of",
                                        "sold without",
                                        "stripped of",
                                        "supplied without",
                                        "there are no",
                                        "there isn't",
                                        "there is no",
                                        "there was no",
                                        "there's no",
                                        "there's not",
                                        "theres no",
                                        "wanting",
                                        "what became of",
                                        "what happened to",
                                        "with neither",
                                        "without",
                                        "without so much as"};
    static const char *const counts[] = {
        "one",     "two",  "three",   "four",   "five", "six",      "some",   "both",   "all",   "most",
        "several", "half", "another", "any",    "a",    "an",       "the",    "its",    "their", "his",
        "it's",    "new",  "few",     "couple", "of",   "original", "proper", "single", "my"};
    // With no word for how many, these lead to a part; the rest ask for one ("wants a clean").
    size_t n = token_longest(tokens, i, lacks, COUNT(lacks));
    if (!n || tokens->at[i + n - 1].stop != STOP_NONE) return 0;
    size_t at = i + n;
    while (at < i + n + 4 && joined(tokens, at) && AMONG(tokens, at, counts)) at++;
    static const char *const asks[] = {"haven't", "lost", "not with", "there isn't", "hasn't got"};
    if (at == i + n && token_longest(tokens, i, asks, COUNT(asks)) == n) return 0;
    return at - i;
}

const char *lacking_kind(const char *part, const char *family) {
    static const struct {
        const char *kind, *words;
    } kinds[] = {
        {"missing-hardware",
         " nut wingnut castor caster escutcheon latch hasp glide peg washer rivet bolt screw hook eyelet "
         "grommet fixing drawer-pull clip stud runner keeper catch thumbscrew cleat rowlock "},
        {"missing-key", " handcrank starting-handle winding-handle winding-key "},
        {"missing-cord", " lead adaptor adapter transformer charger "},
        {"missing-pieces",
         " pawn domino counter peg marble spoon fork knife rook bishop knight king queen token draught "
         "checker jigsaw-piece joker skittle "},
        {"missing-box", " sleeve-box gig-bag "},
        {"missing-instructions", " booklet handbook rulebook rules diagram plan drawing "},
        {"missing-stopper", " bung stopper "},
        {"trim-loss", " tassel fringe bobble sequin bead "},
    };
    static const char leaves[] =
        " page leaf map plate frontispiece index flyleaf endpaper section title-page centrefold centerfold ";
    static const char fasteners[] = " popper toggle cufflink press-stud press-stud ";
    const char *head = strrchr(part, ' ');
    head = head ? head + 1 : part;
    size_t n = strlen(head);
    const char *at = leaves;
    bool book = family && (!strcmp(family, "books") || !strcmp(family, "paper"));
    for (; book && (at = strstr(at, head)) != NULL; at++)
        if (at[-1] == ' ' && at[n] == ' ') return "pages-loose";
    bool worn = family && (!strcmp(family, "clothing") || !strcmp(family, "bags"));
    for (at = fasteners; worn && (at = strstr(at, head)) != NULL; at++)
        if (at[-1] == ' ' && at[n] == ' ') return "missing-button";
    for (size_t k = 0; k < COUNT(kinds); k++)
        for (at = kinds[k].words; (at = strstr(at, head)) != NULL; at++)
            if (at[-1] == ' ' && at[n] == ' ') return kinds[k].kind;
    return NULL;
}

bool lacking_extra(const char *noun) {
    static const char *const words[] = {
        "brush",   "hose",   "nozzle", "tool",    "attachment", "bag",     "filter", "needle", "pad",
        "tube",    "basket", "tray",   "clip",    "hook",       "stake",   "pole",   "peg",    "mat",
        "ball",    "net",    "bat",    "dart",    "nib",        "reed",    "bow",    "rosin",  "mute",
        "stick",   "rack",   "grille", "grate",   "guard",      "battery", "bulb",   "mantle", "wick",
        "chimney", "globe",  "pump",   "saddle",  "pedal",      "mount",   "tripod", "cap",    "hood",
        "flash",   "remote", "stand",  "plate",   "mirror",     "shelf",   "pan",    "beater", "paddle",
        "spike",   "float",  "reel",   "paddles", "oar",        "sail"};
    for (size_t i = 0; i < COUNT(words); i++)
        if (!strcmp(noun, words[i])) return true;
    return false;
}

// Whole phrases, sorted by their bytes.
static const struct cue before[] = {
    {"bring your own", 0},
    {"but none of its", 0},
    {"but none of the", 0},
    {"came without a", 0},
    {"came without its", 0},
    {"came without the", 0},
    {"can't find its", 0},
    {"can't find the", 0},
    {"cannot find its", 0},
    {"cannot find the", 0},
    {"cant find the", 0},
    {"couldn't find its", 0},
    {"couldn't find the", 0},
    {"didn't come with", 0},
    {"doesn't have a", 0},
    {"doesn't have its", 0},
    {"doesn't have the", 0},
    {"has lost a", 0},
    {"has lost its", 0},
    {"has lost the", 0},
    {"has no", 0},
    {"hasn't a", 0},
    {"hasn't got a", 0},
    {"hasn't got its", 0},
    {"hasn't got the", 0},
    {"hasn't its", 0},
    {"have to find a", 0},
    {"haven't got the", 0},
    {"haven't the", 0},
    {"it's lost its", 0},
    {"lacking a", 0},
    {"lacking its", 0},
    {"lacking the", 0},
    {"lacks", 0},
    {"lacks a", 0},
    {"lacks its", 0},
    {"lacks the", 0},
    {"less its", 0},
    {"less the", 0},
    {"lost a", 0},
    {"lost its", 0},
    {"lost one", 0},
    {"lost one of its", 0},
    {"lost one of the", 0},
    {"lost the", 0},
    {"minus a", 0},
    {"minus its", 0},
    {"minus one", 0},
    {"minus some", 0},
    {"minus the", 0},
    {"minus two", 0},
    {"missing", 0},
    {"missing a", 0},
    {"missing an", 0},
    {"missing its", 0},
    {"missing one", 0},
    {"missing some", 0},
    {"missing the", 0},
    {"need a new", 0},
    {"need to find a", 0},
    {"needs a", 0},
    {"needs a new", 0},
    {"never came with a", 0},
    {"never came with its", 0},
    {"never had a", 0},
    {"never had its", 0},
    {"never had the", 0},
    {"no", 0},
    {"no original", 0},
    {"no sign of a", 0},
    {"no sign of any", 0},
    {"no sign of its", 0},
    {"no sign of the", 0},
    {"no trace of its", 0},
    {"no trace of the", 0},
    {"not got a", 0},
    {"not got its", 0},
    {"not got the", 0},
    {"not its", 0},
    {"sans", 0},
    {"sans its", 0},
    {"short of a", 0},
    {"short of its", 0},
    {"short of one", 0},
    {"supply your own", 0},
    {"that's lost its", 0},
    {"w/o", 0},
    {"with no", 0},
    {"without", 0},
    {"without a", 0},
    {"without any", 0},
    {"without its", 0},
    {"without one of its", 0},
    {"without one of the", 0},
    {"without the", 0},
    {"without two of its", 0},
    {"you need your own", 0},
    {"you'd have to find a", 0},
    {"you'd need a", 0},
    {"you'd need to find a", 0},
    {"you'd need your own", 0},
    {"you'll have to find a", 0},
    {"you'll need a", 0},
    {"you'll need to find a", 0},
    {"you'll need your own", 0},
};

static const struct cue behind[] = {
    {"absent", 0},
    {"are absent", 0},
    {"are gone", 0},
    {"are lost", 0},
    {"are missing", 0},
    {"are not missing", 0},
    {"are not there", 0},
    {"are not with it", 0},
    {"are nowhere", 0},
    {"are nowhere to be found", 0},
    {"are nowhere to be seen", 0},
    {"aren't here", 0},
    {"aren't missing", 0},
    {"aren't there", 0},
    {"aren't with it", 0},
    {"binned", 0},
    {"can't be found", 0},
    {"couldn't be found", 0},
    {"did not come with it", 0},
    {"didn't come with it", 0},
    {"disappeared", 0},
    {"gone", 0},
    {"gone astray", 0},
    {"gone walkabout", 0},
    {"got lost", 0},
    {"got lost in the move", 0},
    {"got thrown away", 0},
    {"got thrown out", 0},
    {"has been lost", 0},
    {"has been mislaid", 0},
    {"has disappeared", 0},
    {"has gone", 0},
    {"has gone astray", 0},
    {"has gone missing", 0},
    {"has gone walkabout", 0},
    {"has gone west", 0},
    {"has long gone", 0},
    {"has long since gone", 0},
    {"has vanished", 0},
    {"has wandered", 0},
    {"has wandered off", 0},
    {"have been lost", 0},
    {"have disappeared", 0},
    {"have gone", 0},
    {"have gone astray", 0},
    {"have gone missing", 0},
    {"have gone walkabout", 0},
    {"have long gone", 0},
    {"have vanished", 0},
    {"have wandered", 0},
    {"have wandered off", 0},
    {"is absent", 0},
    {"is gone", 0},
    {"is long gone", 0},
    {"is lost", 0},
    {"is missing", 0},
    {"is not here", 0},
    {"is not missing", 0},
    {"is not there", 0},
    {"is not with it", 0},
    {"is nowhere", 0},
    {"is nowhere to be found", 0},
    {"is nowhere to be seen", 0},
    {"isn't here", 0},
    {"isn't missing", 0},
    {"isn't there", 0},
    {"isn't with it", 0},
    {"lacking", 0},
    {"long gone", 0},
    {"long lost", 0},
    {"long since gone", 0},
    {"long since lost", 0},
    {"lost", 0},
    {"mislaid", 0},
    {"missing", 0},
    {"never came with it", 0},
    {"not here", 0},
    {"not included", 0},
    {"not missing", 0},
    {"not present", 0},
    {"not there", 0},
    {"not to be found", 0},
    {"not with it", 0},
    {"nowhere", 0},
    {"nowhere to be found", 0},
    {"nowhere to be seen", 0},
    {"thrown away", 0},
    {"thrown out", 0},
    {"was binned", 0},
    {"was left behind", 0},
    {"was lost", 0},
    {"was mislaid", 0},
    {"was missing", 0},
    {"was not missing", 0},
    {"was thrown away", 0},
    {"was thrown out", 0},
    {"wasn't there", 0},
    {"wasn't with it", 0},
    {"went astray", 0},
    {"went long ago", 0},
    {"went missing", 0},
    {"went years ago", 0},
    {"were lost", 0},
    {"were missing", 0},
    {"were thrown out", 0},
    {"weren't there", 0},
    {"weren't with it", 0},
};

// "Lid: missing", "lid - gone": an entry of a list.
static size_t told_as_entry(const struct tokens *tokens, size_t i) {
    static const char *const signs[] = {":", "-"}, *const gone[] = {"missing", "gone", "lost", "absent",
                                                                    "none"};
    bool entry = AMONG(tokens, i, signs) && AMONG(tokens, i + 1, gone);
    return entry && (i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE) ? 2 : 0;
}

size_t lacking_said_behind(const struct scope *scope, size_t i, size_t *n) {
    size_t more = lacking_behind(&scope->note->tokens, i);
    if (!more) more = told_as_entry(&scope->note->tokens, i);
    if (!cue_at(scope, behind, COUNT(behind), i, n) || *n < more) *n = more;
    return *n;
}

size_t lacking_said_before(const struct scope *scope, size_t i, size_t *n) {
    size_t more = lacking_before(&scope->note->tokens, i);
    if (!cue_at(scope, before, COUNT(before), i, n) || *n < more) *n = more;
    return *n;
}
