// SPDX-License-Identifier: MIT
// "Didn't check for moth", "no idea if it runs", "haven't looked inside": not looked at, which is neither
// there nor not.
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {
    {"can't check", 0},         {"can't say whether", 0},
    {"can't tell if", 0},       {"can't test", 0},
    {"cannot check", 0},        {"couldn't check", 0},
    {"couldn't tell if", 0},    {"couldn't tell whether", 0},
    {"couldn't test", 0},       {"did not check", 0},
    {"did not look", 0},        {"did not test", 0},
    {"didn't check", 0},        {"didn't examine", 0},
    {"didn't inspect", 0},      {"didn't look", 0},
    {"didn't test", 0},         {"didn't try", 0},
    {"didnt check", 0},         {"didnt look", 0},
    {"didnt test", 0},          {"don't know about", 0},
    {"don't know if", 0},       {"don't know whether", 0},
    {"dont know if", 0},        {"hard to tell if", 0},
    {"have not checked", 0},    {"have not looked", 0},
    {"have not tested", 0},     {"haven't checked", 0},
    {"haven't examined", 0},    {"haven't inspected", 0},
    {"haven't looked", 0},      {"haven't looked at", 0},
    {"haven't looked for", 0},  {"haven't tested", 0},
    {"haven't tried", 0},       {"havent checked", 0},
    {"havent tested", 0},       {"needs checking for", 0},
    {"never checked", 0},       {"no clue about", 0},
    {"no clue if", 0},          {"no clue whether", 0},
    {"no idea about", 0},       {"no idea if", 0},
    {"no idea whether", 0},     {"not checked", 0},
    {"not checked for", 0},     {"not inspected for", 0},
    {"not looked at", 0},       {"not looked for", 0},
    {"not sure about", 0},      {"not sure whether", 0},
    {"not tested for", 0},      {"still have to check", 0},
    {"still need to check", 0}, {"unsure about", 0},
    {"unsure if", 0},           {"unsure whether", 0},
};

void scope_unknown(struct scope *s) {
    for (size_t i = 0; i < s->note->tokens.count; i++) {
        size_t n;
        if (!cue_at(s, cues, COUNT(cues), i, &n)) continue;
        scope_mark(s, i + n, scope_clause_end(s, i + n), STANCE_UNKNOWN, i);
        i += n - 1;
    }
}
