// SPDX-License-Identifier: MIT
// It was tried at its own work: "I chopped an onion", "made two pots in it this week", "put a film through it
// and the pictures came out". A deed with goods of that kind, done by the seller and lately, says that they
// work, unless the note says otherwise. What somebody once did with it, did for years or would do tells
// nothing of today.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// What is done with machines, and the families whose goods do it, "machine" for kitchenware that is one and
// "lately" where the deed is a trial only if it was done of late: a drill that was used is a used drill.
static const struct deed {
    const char *verb, *object, *families; // `object`: one of these words has to follow; NULL: any
} deeds[] = {
    {"chopped", NULL, "electrical machine"},
    {"whipped", NULL, "electrical machine"},
    {"whisked", NULL, "electrical machine"},
    {"blended", NULL, "electrical machine"},
    {"juiced", NULL, "electrical machine"},
    {"minced", NULL, "electrical machine"},
    {"ground", NULL, "electrical machine"},
    {"grated", NULL, "electrical machine"},
    {"kneaded", NULL, "electrical machine"},
    {"mixed", NULL, "electrical machine"},
    {"baked", NULL, "electrical machine"},
    {"brewed", NULL, "electrical machine"},
    {"perked", NULL, "electrical machine"},
    {"steamed", NULL, "electrical machine"},
    {"roasted", NULL, "electrical machine"},
    {"ran", "slice slices bread pot water load", "electrical machine"},
    {"boiled", NULL, "electrical machine"},
    {"cooked", NULL, "electrical machine"},
    {"toasted", NULL, "electrical machine"},
    {"grilled", NULL, "electrical machine"},
    {"fried", NULL, "electrical"},
    {"popped", "corn popcorn batch bag", "electrical machine"},
    {"made",
     "toast toastie toasties sandwich sandwiches coffee coffees tea pot pots cup cups batch batches waffle "
     "waffles "
     "pancakes smoothie smoothies soup juice bread loaf loaves cake cakes breakfast supper dinner lunch "
     "popcorn crepes dough stew curry rice pizza ice "
     "yogurt yoghurt jam custard",
     "electrical machine"},
    {"ironed", NULL, "electrical"},
    {"pressed", "shirt shirts trousers curtains dress skirt blouse tablecloth", "electrical"},
    {"vacuumed", NULL, "electrical"},
    {"hoovered", NULL, "electrical"},
    {"did", "stairs carpet carpets rug landing hall ironing", "electrical"},
    {"dried", "hair", "electrical"},
    {"sewed", NULL, "electrical crafts tools other"},
    {"hemmed", NULL, "electrical crafts tools other lately"},
    {"stitched", NULL, "electrical crafts tools other"},
    {"ran", "up", "electrical crafts tools other"},
    {"typed", NULL, "electrical tools other paper"},
    {"printed", NULL, "electrical"},
    {"copied", NULL, "electrical media"},
    {"scanned", NULL, "electrical"},
    {"recorded", NULL, "electrical media"},
    {"taped", "song programme program minute side", "electrical media"},
    {"played", "record records tape tapes cassette disc side album cd lp film song tune game",
     "electrical media music toys games-puzzles"},
    {"listened", "radio news match concert record play", "electrical media"},
    {"watched", "film tape movie match programme program news", "electrical media"},
    {"showed", "film films slide slides reel", "electrical cameras media"},
    {"took", "picture pictures photo photos photograph photographs snap snaps shot shots",
     "cameras electrical"},
    {"shot", "roll film rolls picture pictures", "cameras"},
    {"put", "through", "cameras electrical media"},
    {"drilled", NULL, "tools electrical lately"},
    {"sanded", NULL, "tools electrical lately"},
    {"sawed", NULL, "tools electrical lately"},
    {"planed", NULL, "tools electrical lately"},
    {"mowed", NULL, "tools electrical lately"},
    {"strimmed", NULL, "tools electrical lately"},
    {"cut", "board boards plank hedge grass lawn log logs scrap", "tools electrical lately"},
    {"weighed", NULL, "machine electrical tools"},
};

enum { OBJECT_FAR = 6, CLAUSE_FAR = 16 };

// A pan is cooked in and does not work.
static bool is_machine(const struct fault_reader *r) {
    return kind_note_has(r,
                         "electric electrical motor plug plugged cord lead mixer blender grinder mill mincer "
                         "processor percolator toaster toastie maker machine cooker fryer grill speed speeds "
                         "element");
}

static const struct deed *deed_at(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    for (size_t k = 0; k < COUNT(deeds); k++) {
        if (!token_is(tokens, i, deeds[k].verb)) continue;
        bool kitchen =
            text_same(family->rule.id, "kitchenware") && kind_has_word(deeds[k].families, "machine");
        if (!kind_has_word(deeds[k].families, family->rule.id) && !(kitchen && is_machine(r))) continue;
        if (!deeds[k].object) return &deeds[k];
        for (size_t at = i + 1; at < tokens->count && at <= i + OBJECT_FAR; at++) {
            if (kind_has_word(deeds[k].object, tokens->at[at].fold)) return &deeds[k];
            if (tokens->at[at].stop != STOP_NONE) break;
        }
    }
    return NULL;
}

// "I", "we", "I just", or the beginning of a clause: who did it. SIZE_MAX: somebody else, or nobody did.
static size_t doer_of(const struct tokens *tokens, size_t i) {
    static const char *const between[] = {"just", "also", "even", "actually", "have", "successfully", "then"};
    static const char *const hands[] = {"i", "we", "i've", "we've"};
    size_t at = i;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE && AMONG(tokens, at - 1, between)) at--;
    if (at == 0 || tokens->at[at - 1].stop != STOP_NONE) return at;
    if (AMONG(tokens, at - 1, hands)) return at - 1;
    if (ANY(tokens, at - 1, "and", "then"))
        for (size_t k = at - 1; k > 0 && k + CLAUSE_FAR > at && tokens->at[k - 1].stop < STOP_CLAUSE; k--)
            if (AMONG(tokens, k - 1, hands)) return at;
    return SIZE_MAX;
}

// Words beside the deed that keep it from telling of today.
static bool is_of_old(const struct tokens *tokens, size_t from, size_t to) {
    static const char *const words[] = {
        "ago",   "years",  "never",  "used", "would",     "if",     "always",    "every",  "often",  "once",
        "child", "hardly", "didn't", "not",  "christmas", "barely", "childhood", "rarely", "seldom", "until"};
    for (size_t i = from; i < to && i < tokens->count; i++)
        if (AMONG(tokens, i, words) ||
            (token_is(tokens, i, "when") && ANY(tokens, i + 1, "i", "we", "she", "he", "they")))
            return true;
    return false;
}

static bool is_lately(const struct tokens *tokens, size_t from, size_t to) {
    static const char *const words[] = {"today",     "yesterday", "morning", "afternoon", "evening",
                                        "tonight",   "week",      "weekend", "monday",    "tuesday",
                                        "wednesday", "thursday",  "friday",  "saturday",  "sunday",
                                        "month",     "earlier",   "just",    "night"};
    for (size_t i = from; i < to && i < tokens->count; i++)
        if (AMONG(tokens, i, words)) return true;
    return false;
}

// "In it", "on it", "with this": the thing was what it was done with.
static bool is_with_it(const struct tokens *tokens, size_t from, size_t to) {
    for (size_t i = from; i < to && i + 1 < tokens->count; i++)
        if (ANY(tokens, i, "in", "on", "with", "through", "using", "out") &&
            (ANY(tokens, i + 1, "it", "this", "them") ||
             (ANY(tokens, i + 1, "of") && ANY(tokens, i + 2, "it"))))
            return true;
    return false;
}

// "A", "two", "some", "my": so much was done, as one does to try it.
static bool is_amount(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "a", "an", "some", "my", "our", "several", "up", "off", "out") ||
           degrees_number(tokens, i) || (i < tokens->count && tokens->at[i].kind == TOKEN_FIGURE);
}

// "Made a cup in it and then it died".
static bool ends_badly(const struct tokens *tokens, size_t to, size_t i) {
    static const char *const ends[] = {"stopped", "died",   "broke",  "awful",    "tripped",
                                       "blew",    "smoke",  "smoked", "failed",   "burned",
                                       "burnt",   "jammed", "leaked", "terrible", "packed"};
    for (size_t k = i; k < to || (k < tokens->count && k < to + CLAUSE_FAR); k++) {
        if (AMONG(tokens, k, ends)) return true;
        if (tokens->at[k].stop >= STOP_SENTENCE) return false;
    }
    return false;
}

void read_put_to_use(struct fault_reader *r) {
    static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN | STANCE_OTHER |
                                STANCE_WITHDRAWN | STANCE_DOUBT | STANCE_PLANNED | STANCE_HEARD;
    struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    const struct flaw *kind = ruleset_flaw(note->rules, "working-tested");
    if (!kind || !note->record->family || running_is_told(note->record)) return;
    for (size_t i = 0; i + 1 < tokens->count; i++) {
        const struct deed *deed = tokens->at[i].kind == TOKEN_WORD ? deed_at(r, i) : NULL;
        if (!deed || r->scope.stance[i] & off || note->taken[i] == TAKEN_FLAW || note->taken[i] == TAKEN_TYPE)
            continue;
        size_t from = doer_of(tokens, i), to = i + 1;
        if (from == SIZE_MAX) continue;
        bool said = from < i && ANY(tokens, from, "i", "we", "i've", "we've");
        while (to < tokens->count && to < i + CLAUSE_FAR && tokens->at[to - 1].stop < STOP_CLAUSE) to++;
        if (is_of_old(tokens, note_clause_from(note, i, STOP_COMMA), to)) continue;
        bool with = is_with_it(tokens, i, to), lately = is_lately(tokens, from, to);
        bool trial = is_amount(tokens, i + 1);
        if (kind_has_word(deed->families, "lately") && !lately) continue;
        if (ends_badly(tokens, to, i)) continue;
        if (!trial && !(with && (said || lately)) && !(said && lately)) continue;
        fault_add(r, kind, NULL, NULL, i, i + 1);
        return;
    }
}
