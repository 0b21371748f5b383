// SPDX-License-Identifier: MIT
// "Nobody marked a route on it", "no one has torn a map out": what nobody did was not done, where the verb is
// a word of a fault itself. What nobody knows, noticed or wanted denies nothing.
#include <string.h>

#include "notes/any.h"
#include "notes/scope.h"

// "Marked", "wrote": done, and not what nobody likes or can see.
static bool is_past(const struct tokens *tokens, size_t i) {
    static const char *const strong[] = {"wrote",  "written", "tore", "torn",   "cut",   "broke", "broken",
                                         "drew",   "drawn",   "put",  "ground", "stuck", "took",  "taken",
                                         "chewed", "burnt",   "bent", "split",  "ate",   "wore"};
    if (tokens->at[i].kind != TOKEN_WORD) return false;
    const char *word = tokens->at[i].fold;
    size_t size = strlen(word);
    return token_among(tokens, i, strong, sizeof strong / sizeof *strong) ||
           (size > 4 && !strcmp(word + size - 2, "ed"));
}

size_t scope_nobody(struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    size_t n = ANY(tokens, i, "nobody", "noone") ? 1 : token_phrase(tokens, i, "no one"), at = i + n;
    if (!n) return 0;
    while (ANY(tokens, at, "ever", "has", "had", "have", "ever", "even", "seems", "to")) at++;
    bool bites = ANY(tokens, at, "chewed", "gnawed", "nibbled", "bit", "bitten", "scribbled", "drew",
                     "painted"); // some goods
    if (at >= tokens->count || !(bites || (s->fault[at] && is_past(tokens, at)))) return 0;
    scope_mark(s, at, scope_clause_end(s, at), STANCE_DENIED, i);
    return at + 1 - i;
}
