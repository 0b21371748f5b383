// SPDX-License-Identifier: MIT
// "Black Tin Trunk, hinges stiff": who writes the head of a note with capitals throughout names no maker by
// them. Where all words up to the first stop have capitals and goods are among them, those that are English
// lose theirs; what is left ("Harnby Cricket Bat") may be a name.
#include "notes/title_case.h"

#include "notes/any.h"
#include "notes/english.h"
#include "notes/things.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

void read_title_case(struct note *note) {
    static const char *const small[] = {"of", "the", "in", "with", "and", "for", "a", "an", "on", "to", "&"};
    enum { LONGEST = 10 };
    struct tokens *tokens = &note->tokens;
    size_t end = 0, capitals = 0;
    if (tokens->shouts || tokens->flat || ANY(tokens, 0, "the", "a", "an")) return;
    for (; end < tokens->count && end < LONGEST; end++) {
        const struct token *token = &tokens->at[end];
        if (token->kind != TOKEN_WORD || token->stop != STOP_NONE) break;
        if (token->capital && !token->capitals)
            capitals++;
        else if (!token_among(tokens, end, small, COUNT(small)))
            break;
    }
    bool over = end >= tokens->count || tokens->at[end].stop != STOP_NONE ||
                tokens->at[end].kind != TOKEN_WORD; // and not "Oak desk"
    if (capitals < 2 || !over || token_is(tokens, end, "'")) return;
    bool goods = false;
    for (size_t i = 0; i < end && !goods; i++) {
        struct noun_found noun;
        goods =
            tokens->at[i].capital && noun_at(note, i, &noun) && noun.thing && noun.to > 1 && noun.to <= end;
    }
    for (size_t i = 1; goods && i < end; i++)
        if (tokens->at[i].capital && english_at(note, i)) tokens->at[i].capital = false;
}
