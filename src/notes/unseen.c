// SPDX-License-Identifier: MIT
// Not looked at, said by what was not done: "didn't unroll it", "only unfolded half", "dark in there", "I
// have no sense of smell". What stays unknown has then no word in the note, and is named here.
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { INSIDE, REST, PAGES, SMELL, LEAKS, UNDER, DARK, OTHERS, SCALE };

static const char *const told[] = {"inside, not unrolled",
                                   "rest, not opened out",
                                   "every page",
                                   "smell",
                                   "leaks",
                                   "underneath",
                                   "inside",
                                   "rest",
                                   "calibration"};

static const struct cue cues[] = {
    {"as far as i opened it", REST},
    {"calibration not checked", SCALE},
    {"calibration unknown", SCALE},
    {"can't get my nose to it", SMELL},
    {"can't smell at the moment", SMELL},
    {"can't smell much", SMELL},
    {"can't smell these days", SMELL},
    {"couldn't smell it", SMELL},
    {"couldn't turn it over", UNDER},
    {"couldn't turn over", UNDER},
    {"dark in there", DARK},
    {"didn't lift it", UNDER},
    {"didn't open it out", REST},
    {"didn't turn every page", PAGES},
    {"didn't turn it over", UNDER},
    {"didn't unfold", REST},
    {"didn't unroll", INSIDE},
    {"don't have much of a nose", SMELL},
    {"had a cold", SMELL},
    {"hasn't been calibrated", SCALE},
    {"have a cold", SMELL},
    {"have no sense of smell", SMELL},
    {"haven't been in water", LEAKS},
    {"haven't been inside it", DARK},
    {"haven't filled it", LEAKS},
    {"haven't got a nose", SMELL},
    {"haven't had water in", LEAKS},
    {"haven't opened it out", REST},
    {"haven't put water in", LEAKS},
    {"haven't smelled it", SMELL},
    {"haven't smelt it", SMELL},
    {"haven't sniffed it", SMELL},
    {"haven't turned every page", PAGES},
    {"haven't turned it over", UNDER},
    {"haven't unfolded", REST},
    {"haven't unrolled", INSIDE},
    {"lost my sense of smell", SMELL},
    {"my nose is no good", SMELL},
    {"never been inside it", DARK},
    {"never calibrated", SCALE},
    {"never filled it", LEAKS},
    {"never had water in", LEAKS},
    {"never put water in", LEAKS},
    {"never turned it over", UNDER},
    {"never unfolded", REST},
    {"never unrolled", INSIDE},
    {"no sense of smell", SMELL},
    {"not been able to smell", SMELL},
    {"not been calibrated", SCALE},
    {"not been in water", LEAKS},
    {"not been inside it", DARK},
    {"not calibrated", SCALE},
    {"not filled it", LEAKS},
    {"not had anything in it", LEAKS},
    {"not had water in", LEAKS},
    {"not looked inside it", DARK},
    {"not opened it out", REST},
    {"not put water in", LEAKS},
    {"not read every page", PAGES},
    {"not smelled it", SMELL},
    {"not smelt it", SMELL},
    {"not sniffed it", SMELL},
    {"not turned every page", PAGES},
    {"not turned it over", UNDER},
    {"not unfolded", REST},
    {"not unrolled", INSIDE},
    {"only been over", OTHERS},
    {"only checked over", OTHERS},
    {"only examined", OTHERS},
    {"only inspected", OTHERS},
    {"only looked at", OTHERS},
    {"only looked over", OTHERS},
    {"only opened the first", REST},
    {"only opened the top", REST},
    {"only unfolded", REST},
    {"only unrolled", INSIDE},
    {"only unwrapped", REST},
    {"only went over", OTHERS},
    {"pitch dark inside", DARK},
    {"too dark to see", DARK},
    {"too heavy to turn over", UNDER},
    {"uncalibrated", SCALE},
    {"without unfolding", REST},
    {"without unrolling", INSIDE},
};

void read_unseen(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n;
        const struct cue *cue = cue_at(&r->scope, cues, COUNT(cues), i, &n);
        if (!cue || r->note->taken[i] == TAKEN_MARK || r->note->taken[i] == TAKEN_ASIDE) continue;
        note_unchecked(r->note, told[cue->kind]);
        note_take(r->note, i, i + n, TAKEN_SCOPE);
        note_reading(r->note, i, i + n, "unchecked area", "not looked at");
        i += n - 1;
    }
}
