// SPDX-License-Identifier: MIT
// How much of it: "paint 90% gone", "about half the lacquer is left", "a third of the veneer missing".
#include <stdlib.h>

#include "notes/any.h"
#include "notes/degrees.h"
#include "notes/share.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { FAR = 6, WHOLE = 100, MUCH = 50, LITTLE = 10 };

static int portion_at(const struct tokens *tokens, size_t i, size_t *taken) {
    static const struct {
        const char *words;
        int percent;
    } portions[] = {{"about half", 50}, {"half", 50},       {"a third", 33},      {"a quarter", 25},
                    {"two thirds", 67}, {"most of", 80},    {"mostly", 80},       {"three quarters", 75},
                    {"nearly all", 95}, {"almost all", 95}, {"hardly any", 5},    {"not much", 10},
                    {"very little", 5}, {"a tenth", 10},    {"all but", 95},      {"a fifth", 20},
                    {"a sixth", 17},    {"an eighth", 12},  {"three fifths", 60}, {"one third", 33},
                    {"one quarter", 25}};
    *taken = 0;
    int percent = 0;
    bool may = token_may_open(tokens, i, portions, COUNT(portions), sizeof *portions);
    for (size_t k = 0; may && k < COUNT(portions); k++) {
        size_t n = token_phrase(tokens, i, portions[k].words);
        if (n <= *taken) continue;
        *taken = n;
        percent = portions[k].percent;
    }
    bool sign =
        token_is(tokens, i + 1, "%") || token_is(tokens, i + 1, "percent") || token_is(tokens, i + 1, "pct");
    if (*taken || !sign || tokens->at[i].kind != TOKEN_FIGURE) return percent;
    *taken = 2;
    return (int)strtol(tokens->at[i].fold, NULL, 10);
}

// "Gone", "left": what has happened to the share, `*left` if it is what remains.
static bool fate_at(const struct tokens *tokens, size_t i, bool *left) {
    static const char *const gone[] = {"gone",   "missing", "lost",    "off",    "worn",   "flaked", "faded",
                                       "peeled", "chipped", "dropped", "fallen", "lifted", "rubbed"};
    static const char *const kept[] = {"left", "remaining", "remains", "there", "intact", "present"};
    *left = token_among(tokens, i, kept, COUNT(kept));
    return *left || token_among(tokens, i, gone, COUNT(gone));
}

static enum severity degree_of(int lost) {
    if (lost >= MUCH) return SEVERITY_HEAVY;
    return lost > LITTLE ? SEVERITY_MODERATE : SEVERITY_LIGHT;
}

enum severity degree_of_share(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->kinds[0]->class != CLASS_DAMAGE) return SEVERITY_UNKNOWN; // "half a label still on it"
    size_t from = scope_sentence_start(&r->scope, hit->from), to = hit->to + FAR;
    if (hit->from > FAR && hit->from - FAR > from) from = hit->from - FAR;
    for (size_t i = from; i < to && i < tokens->count && tokens->at[i].stop < STOP_CLAUSE; i++) {
        size_t taken;
        int percent = portion_at(tokens, i, &taken);
        if (percent <= 0 || percent > WHOLE) continue;
        bool left;
        for (size_t k = i + taken; k < i + taken + FAR && k < tokens->count; k++) {
            if (tokens->at[k].stop != STOP_NONE || token_is(tokens, k, "and") || token_is(tokens, k, "but"))
                break;
            if (!fate_at(tokens, k, &left)) continue;
            enum severity own = percent == MUCH ? degree_of_tell(hit->kinds[0], "half") : SEVERITY_UNKNOWN;
            return own ? own : degree_of(left ? WHOLE - percent : percent);
        }
    }
    return SEVERITY_UNKNOWN;
}

// "Foxing on three of the plates", "scribbles on two pages": as many as it is on. Of "scratches on two of the
// legs" nobody knows.
int fault_on_several(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->from + 1; i <= hit->to; i++) {
        const struct token *last = &tokens->at[i - 1];
        if (last->stop != STOP_NONE) return 0;
        int n = ANY(tokens, i, "on", "in", "across") ? degrees_number(tokens, i + 1) : 0;
        if (n > 1 && ANY(tokens, i + 2, "pages", "leaves") &&
            text_same(hit->kinds[0]->rule.id, "writing-inside"))
            return n;
        if (last->one != last->fold) return 0;
        if (n > 1 && token_phrase(tokens, i + 2, "of the")) return n;
    }
    return 0;
}

bool fault_is_where_one_drinks(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { DRINKS_FAR = 14 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->from; i + 2 < tokens->count && i < hit->from + DRINKS_FAR; i++) {
        if (ANY(tokens, i, "where") &&
            ANY(tokens, i + 1, "you", "people", "one", "folks", "we", "lips", "they", "your") &&
            ANY(tokens, i + 2, "drink", "drank", "sip", "sipped", "lips", "touch"))
            return true;
        if (tokens->at[i].stop >= STOP_SENTENCE) return false;
    }
    return false;
}
