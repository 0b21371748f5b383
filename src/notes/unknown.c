// SPDX-License-Identifier: MIT
// "Didn't check for moth", "no idea if it runs", "haven't looked inside": not looked at, which is neither
// there nor not.
#include "notes/scope.h"

enum { AHEAD, BACK }; // governs what follows, or the clause before it

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {
    {"can't check", AHEAD},          {"can't say if", AHEAD},      {"can't say whether", AHEAD},
    {"can't tell if", AHEAD},        {"can't test", AHEAD},        {"can't vouch for", AHEAD},
    {"cannot check", AHEAD},         {"couldn't check", AHEAD},    {"couldn't say if", AHEAD},
    {"couldn't say whether", AHEAD}, {"couldn't tell if", AHEAD},  {"couldn't tell whether", AHEAD},
    {"couldn't tell you if", AHEAD}, {"couldn't test", AHEAD},     {"did not check", AHEAD},
    {"did not look", AHEAD},         {"did not look for", AHEAD},  {"did not test", AHEAD},
    {"didn't check", AHEAD},         {"didn't examine", AHEAD},    {"didn't get to", AHEAD},
    {"didn't inspect", AHEAD},       {"didn't look", AHEAD},       {"didn't look for", AHEAD},
    {"didn't test", AHEAD},          {"didn't try", AHEAD},        {"didnt check", AHEAD},
    {"didnt look", AHEAD},           {"didnt test", AHEAD},        {"don't know about", AHEAD},
    {"don't know how", AHEAD},       {"don't know if", AHEAD},     {"don't know what", AHEAD},
    {"don't know whether", AHEAD},   {"dont know how", AHEAD},     {"dont know if", AHEAD},
    {"dont know what", AHEAD},       {"hard to tell if", AHEAD},   {"have not checked", AHEAD},
    {"have not looked", AHEAD},      {"have not tested", AHEAD},   {"haven't been able to check", AHEAD},
    {"haven't checked", AHEAD},      {"haven't examined", AHEAD},  {"haven't inspected", AHEAD},
    {"haven't looked", AHEAD},       {"haven't looked at", AHEAD}, {"haven't looked for", AHEAD},
    {"haven't tested", AHEAD},       {"haven't tried", AHEAD},     {"havent checked", AHEAD},
    {"havent tested", AHEAD},        {"i can't say", BACK},        {"i can't tell", BACK},
    {"i cannot say", BACK},          {"i cant say", BACK},         {"i couldn't say", BACK},
    {"i couldn't tell", BACK},       {"i didn't check", BACK},     {"i didn't look", BACK},
    {"i didn't test", BACK},         {"i didnt check", BACK},      {"i didnt look", BACK},
    {"i didnt test", BACK},          {"i don't know", BACK},       {"i haven't checked", BACK},
    {"i haven't looked", BACK},      {"i haven't tested", BACK},   {"needs checking for", AHEAD},
    {"never checked", AHEAD},        {"no clue about", AHEAD},     {"no clue how", AHEAD},
    {"no clue if", AHEAD},           {"no clue what", AHEAD},      {"no clue whether", AHEAD},
    {"no idea about", AHEAD},        {"no idea how", AHEAD},       {"no idea if", AHEAD},
    {"no idea what", AHEAD},         {"no idea whether", AHEAD},   {"not checked", AHEAD},
    {"not checked for", AHEAD},      {"not inspected for", AHEAD}, {"not looked at", AHEAD},
    {"not looked for", AHEAD},       {"not sure about", AHEAD},    {"not sure what", AHEAD},
    {"not sure whether", AHEAD},     {"not tested for", AHEAD},    {"still have to check", AHEAD},
    {"still need to check", AHEAD},  {"unsure about", AHEAD},      {"unsure if", AHEAD},
    {"unsure whether", AHEAD},       {"who knows", BACK},
};

// "Whether it was dropped I can't say": nothing stands behind the cue in its clause.
static bool ends_clause(const struct scope *s, size_t i) {
    return i >= s->note->tokens.count || s->note->tokens.at[i].stop != STOP_NONE;
}

void scope_unknown(struct scope *s) {
    for (size_t i = 0; i < s->note->tokens.count; i++) {
        size_t n;
        const struct cue *cue = cue_at(s, cues, COUNT(cues), i, &n);
        if (!cue) continue;
        if (cue->kind == BACK && ends_clause(s, i + n))
            scope_mark(s, scope_clause_start(s, i), i, STANCE_UNKNOWN, i);
        else
            scope_mark(s, i + n, scope_clause_end(s, i + n), STANCE_UNKNOWN, i);
        i += n - 1;
    }
}
