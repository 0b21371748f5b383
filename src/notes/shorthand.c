// SPDX-License-Identifier: MIT
// The shorthand of those who write lists: words cut short ("repl. stopper", "poss repair"), and the number of
// a fault behind its name ("chips x2 to rim", "rim chips (3)"). The words are written out and the number
// leaves the tokens, so that what follows stands beside the fault; the text between the two tokens keeps it.
// Common practice, no source.
#include <string.h>

#include "notes/any.h"
#include "notes/note.h"
#include "notes/shorthand.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct shortened {
    const char *said, *meant;
} words[] = {
    {"abt", "about"},         {"bdly", "badly"},         {"bkn", "broken"},         {"bnt", "bent"},
    {"brkn", "broken"},       {"brokn", "broken"},       {"btm", "bottom"},         {"chippd", "chipped"},
    {"chp", "chip"},          {"chpd", "chipped"},       {"chps", "chips"},         {"cond", "condition"},
    {"crackd", "cracked"},    {"crk", "crack"},          {"crkd", "cracked"},       {"crks", "cracks"},
    {"crzd", "crazed"},       {"discol", "discolored"},  {"dmgd", "damaged"},       {"dnt", "dent"},
    {"dntd", "dented"},       {"exc", "excellent"},      {"fdd", "faded"},          {"frayd", "frayed"},
    {"gd", "good"},           {"hdl", "handle"},         {"hdle", "handle"},        {"hdles", "handles"},
    {"hline", "hairline"},    {"hndl", "handle"},        {"hndle", "handle"},       {"jckt", "jacket"},
    {"jkt", "jacket"},        {"jkts", "jackets"},       {"lge", "large"},          {"lse", "loose"},
    {"lthr", "leather"},      {"missg", "missing"},      {"mkd", "marked"},         {"msng", "missing"},
    {"orig", "original"},     {"othrwise", "otherwise"}, {"pcs", "pieces"},         {"poss", "possibly"},
    {"prob", "probably"},     {"repl", "replaced"},      {"replmt", "replacement"}, {"reprd", "repaired"},
    {"rpr", "repair"},        {"rprd", "repaired"},      {"rprs", "repairs"},       {"rstd", "rusted"},
    {"rsty", "rusty"},        {"rustd", "rusted"},       {"scrtch", "scratch"},     {"scrtchd", "scratched"},
    {"scrtchs", "scratches"}, {"scuffd", "scuffed"},     {"sev", "several"},        {"sgd", "signed"},
    {"slgt", "slight"},       {"slt", "slight"},         {"sltly", "slightly"},     {"splt", "split"},
    {"stn", "stain"},         {"stnd", "stained"},       {"stns", "stains"},        {"tstd", "tested"},
    {"unmkd", "unmarked"},    {"untstd", "untested"},    {"wdn", "wooden"},         {"wkg", "working"},
    {"wrkg", "working"},      {"wrn", "worn"},           {"wrpd", "warped"},
};

// What is counted by "x2" and "(2)" behind it: on goods such a figure is a size or a number of the maker.
static bool is_counted(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "chip", "chips", "nick", "nicks", "crack", "cracks", "hairline", "hairlines",
               "dent", "dents", "ding", "dings", "scratch", "scratches", "stain", "stains", "hole", "holes",
               "tear", "tears", "bruise", "bruises", "fleabite", "fleabites", "bite", "bites", "flake",
               "flakes", "spot", "spots", "missing", "broken", "chipped", "cracked", "rips", "rip", "scuffs",
               "burns");
}

static bool is_number(const struct token *token) {
    const char *at = token->fold;
    return token->kind == TOKEN_FIGURE && strspn(at, "0123456789") == strlen(at) && strlen(at) < 3;
}

// How many tokens from `i` on say how often: "x2", "x 2", "(2)", "(x2)"; 0 where none do.
static size_t times_at(const struct tokens *tokens, size_t i) {
    size_t at = i + (token_is(tokens, i, "(") ? 1 : 0);
    bool round = at > i, x = false;
    if (at >= tokens->count) return 0;
    if (tokens->at[at].fold[0] == 'x' && tokens->at[at].fold[1] >= '1' && tokens->at[at].fold[1] <= '9' &&
        strspn(tokens->at[at].fold + 1, "0123456789") == strlen(tokens->at[at].fold + 1)) {
        x = true;
        at++;
    } else {
        x = token_is(tokens, at, "x");
        at += x;
        if (at >= tokens->count || !is_number(&tokens->at[at])) return 0;
        at++;
    }
    if (round && !token_is(tokens, at, ")")) return 0;
    if (!round && (!x || ANY(tokens, at, "x", "by", "in", "inch", "inches", "mm", "cm", "\""))) return 0;
    return at + round - i;
}

int shorthand_times(const struct tokens *tokens, size_t i) {
    if (!i || i > tokens->count) return 0;
    size_t at = tokens->at[i - 1].to, end = i < tokens->count ? tokens->at[i].from : tokens->size;
    while (at < end && strchr(" (xX", tokens->text[at])) at++;
    int n = 0;
    while (at < end && tokens->text[at] >= '0' && tokens->text[at] <= '9')
        n = n * 10 + (tokens->text[at++] - '0');
    return n;
}

// "Rusty n blunt", "pestle n mortar".
static bool is_and(const struct tokens *tokens, size_t i, size_t next) {
    return i > 0 && next < tokens->count && token_is(tokens, i, "n") &&
           tokens->at[i - 1].kind == TOKEN_WORD && tokens->at[i - 1].stop == STOP_NONE &&
           tokens->at[next].kind == TOKEN_WORD && strlen(tokens->at[i - 1].fold) > 1 &&
           strlen(tokens->at[next].fold) > 1;
}

static bool write_out(struct note *note, size_t i, size_t next) {
    const struct tokens *tokens = &note->tokens;
    if (is_and(tokens, i, next)) note_reword(note, i, "and", "and");
    if (!token_may_open(tokens, i, words, COUNT(words), sizeof *words)) return false;
    for (size_t k = 0; k < COUNT(words); k++)
        if (token_is(tokens, i, words[k].said)) {
            note_reword(note, i, words[k].meant, words[k].meant);
            return true;
        }
    return false;
}

void note_write_out(struct note *note) {
    struct tokens *tokens = &note->tokens;
    size_t kept = 0;
    for (size_t i = 0; i < tokens->count; i++) {
        tokens->at[kept] = tokens->at[i];
        if (kept != i) tokens->at[kept].vain = NULL;
        size_t skip = 0;
        if (tokens->at[kept].kind == TOKEN_WORD && write_out(note, kept, i + 1) &&
            token_is(tokens, i + 1, ".") && tokens->at[i + 1].stop == STOP_NONE)
            skip = 1; // the full stop of the short form
        else if (is_counted(tokens, kept))
            skip = times_at(tokens, i + 1);
        kept++;
        i += skip;
        if (skip) tokens->altered = true;
    }
    if (kept == tokens->count) return;
    memset(tokens->at + kept, 0, (tokens->count - kept) * sizeof *tokens->at);
    tokens->count = kept;
}
