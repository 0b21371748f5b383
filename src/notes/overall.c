// SPDX-License-Identifier: MIT
// What is said of all faults together, in a sentence of its own: "All very minor.", "Neither shows in use.",
// "Nothing drastic, any of it.", and before them: "Small faults: a dent, a stain.", "Minor faults are …".
#include "notes/any.h"
#include "notes/faults.h"

static bool is_open(const struct item_flaw *flaw) {
    const struct flaw *kind = flaw->kind;
    return !flaw->severity && kind->form == FAULT && kind->class != CLASS_FUNCTION &&
           kind->class != CLASS_STATUS;
}

// "All", "both", "neither of them", "none of this": what opens such a sentence.
static bool is_of_all(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "all", "neither", "none", "both"))
        return !ANY(tokens, i + 1, "the", "original", "there", "works", "work", "working", "complete",
                    "present", "buttons", "parts", "pieces", "in", "else", "missing", "over", "my", "other",
                    "others");
    return ANY(tokens, i, "nothing") &&
           ANY(tokens, i + 1, "drastic", "major", "serious", "dramatic", "too", "terrible", "structural",
               "really", "that", "awful", "bad", "huge", "to");
}

static enum severity said_at(const struct fault_reader *r, size_t i, size_t to) {
    size_t end = 0;
    enum severity found = degree_of_statement(r, i, &end);
    struct around span = {i, to};
    if (!found) found = degree_of_notice(r, &span, false);
    if (found || !ANY(&r->note->tokens, i, "neither", "none")) return found;
    bool seen = false; // "neither shows"
    for (size_t k = i + 1; k < to && k < i + 5; k++)
        seen |= ANY(&r->note->tokens, k, "shows", "show", "visible", "noticeable", "obvious", "affects",
                    "affect", "spoils", "detracts", "matters", "bad", "serious");
    return seen ? SEVERITY_LIGHT : SEVERITY_UNKNOWN;
}

// Of the faults before byte `at`: "both" and "neither" of the last two.
static void tell_before(struct fault_reader *r, size_t at, bool two, enum severity degree) {
    struct record *record = r->note->record;
    size_t left = two ? 2 : record->flaw_count;
    for (size_t i = record->flaw_count; i-- > 0 && left > 0;) {
        struct item_flaw *flaw = &record->flaws[i];
        if (flaw->span.from >= at || !flaw->span.to) continue;
        left--;
        if (is_open(flaw)) flaw->severity = degree;
    }
}

static bool is_head(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "things", "faults", "flaws", "issues", "problems", "niggles", "marks", "points",
               "defects", "imperfections", "damage", "blemishes", "complaints", "bits", "quibbles", "stuff");
}

// "Small faults: a dent, a stain": of those behind it in the sentence.
static void tell_listed(struct fault_reader *r, size_t i) {
    enum { AHEAD = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t n = 0, at = i;
    while (ANY(tokens, at, "only", "just", "some", "a", "few", "couple", "of", "the", "very", "has", "there",
               "are"))
        at++;
    enum severity degree = degree_word(r, at, &n);
    if (!degree) return;
    size_t head = at + n;
    while (head < at + n + AHEAD && ANY(tokens, head, "cosmetic", "little", "age", "related", "condition"))
        head++;
    if (!is_head(tokens, head) || !(token_is(tokens, head + 1, ":") ||
                                    ANY(tokens, head + 1, "are", "is", "being", "include", "like", "-")))
        return;
    size_t end = scope_sentence_end(&r->scope, head);
    struct record *record = r->note->record;
    size_t from = tokens->at[head].from, to = end > 0 ? tokens->at[end - 1].to : 0;
    for (size_t k = 0; k < record->flaw_count; k++)
        if (record->flaws[k].span.from > from && record->flaws[k].span.from < to &&
            is_open(&record->flaws[k]))
            record->flaws[k].severity = degree;
}

void read_overall(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        bool opens = i == 0 || tokens->at[i - 1].stop >= STOP_CLAUSE;
        if (!opens) continue;
        tell_listed(r, i);
        size_t at = i;
        while (ANY(tokens, at, "but", "though", "and", "so")) at++;
        if (!is_of_all(tokens, at)) continue;
        size_t to = scope_sentence_end(&r->scope, at);
        enum severity degree = said_at(r, at, to);
        if (degree) tell_before(r, tokens->at[i].from, ANY(tokens, at, "both", "neither"), degree);
    }
}
