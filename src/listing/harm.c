// SPDX-License-Identifier: MIT
// Beginnings of words, and turns of speech, of damage, loss, function or smell: what nobody understood may be
// a fault. Too many of them ask once too often; too few keep silent about a fault.
#include "listing/harm.h"

#include <string.h>

#include "notes/alien.h"

static const char beginnings[] =
    "miss|broke|break|crack|chip|torn|tear|rip|loose|leak|smell|stink|odor|burn|dead|stuck|stick|"
    "stiff|rust|stain|worn|wear|dent|bent|split|hole|scratch|peel|flak|mold|mould|faded|gone|"
    "lost|damage|fault|fail|works|working|worked|transmit|receive|does not|do "
    "not|cut|repair|glue|patch|mend|wobbl|wonky|rattl|warp|dirty|sticky|"
    "frayed|snap|nick|snag|moth|worm|bubbl|pitted|corro|flaw|blemish|defect|issues|problem|wrong|"
    "trouble|dodgy|duff|busted|knacker|kaput|jams|jammed|seiz|squeak|grinds|buzz|hums|sparks|"
    "musty|damp|smok|whiff|reek|stank|fumes|rotten|rotted|rotting|perish|shatter|smash|bash|"
    "gouge|scuff|scrape|dings|dinged|chew|gnaw|eaten|nibbl|fray|ravel|undone|unstuck|detach|"
    "separat|sags|sagg|buckl|bowed|crook|leans|craz|cloud|hazy|haze|fog|discol|yellowed|"
    "yellowing|fade|bleach|blot|splotch|smudg|spill|soak|flooded|mildew|brittle|crumbl|lack|"
    "without|absent|power|spins|ticks|runs|charg|heats|skips|jumps|slips|hiss|static|ruin|wreck|"
    "tatter|lifting|shedding|foul|stale|odour|tarn|oxid|shrunk|stretch|loses|gummy|grim|needs|"
    "wants|all but|most of|only one|only two|not all|handy|not right|isn't right|not quite right|"
    "better days|hard life|the wars|worse|them isn't|other isn't|fix|restor|marks|spot|lifts|"
    "rough|part isn't|one isn't|had it|had its day|let go|come away|came away|comes away|adrift|"
    "sit right|sit flat|sit level|stand up|stand straight|something else|off another|"
    "off a different|isn't the one|under water|in a fire|got to it|at it|a go at|dropped|knock|"
    "bang|tumble|keeps going|shock|tingle|a bow in|to bits|in bits|in two|out of true|"
    "out of round|gets hot|got hot|desired|another story|best side|bad side|from one side|"
    "from a distance|from the front|last legs|astray|ought to|tips over|falls|comes off|"
    "do with a new|a line in the|is short|could be better|has seen|have gone|skew|uneven|kink|"
    "rocks|won't|wont|doesn't|doesnt|halves|walkabout|wheez|drip|weep|sick|toast|went west|"
    "done for|blunt|dull|unwind|unwoven|sprung|sunk|flies off|squeal|awful|funny|niff|pong|mouse|"
    "mice|rat |rats|trips|daylight|filler|bodge|held on|iffy|cut out|immaculate but|but for|shot|"
    "lets water|gains|stops|drops|drawn|finger catches|flies|double image|have run|has run|"
    "lighter than|darker than|the rain|rained|the flood|ignore|pulling|to death|used hard|can't|"
    "cannot|cant |";

bool harm_is_told(const char *text) {
    for (const char *from = beginnings, *end; (end = strchr(from, '|')) != NULL; from = end + 1) {
        size_t size = (size_t)(end - from);
        for (const char *at = text; *at; at++)
            if ((at == text || at[-1] == ' ' || at[-1] == '-') && !strncmp(at, from, size)) return true;
    }
    return false;
}

bool harm_is_foreign(const char *text) {
    enum { WORD_ROOM = 16 };
    size_t count = 0;
    for (const char *at = text; *at;) {
        size_t size = strcspn(at, " ,.;:\n");
        char word[WORD_ROOM];
        if (size && size < WORD_ROOM) {
            memcpy(word, at, size);
            word[size] = '\0';
            count += alien_word(word);
        }
        at += size + (at[size] != '\0');
    }
    return count >= 2;
}

// Understood as far as it goes: that nothing is wrong is said of no fault in particular.
bool harm_is_denied(const char *text) {
    static const char *const denials[] = {
        "no damage",    "no issues",        "no problems",    "nothing wrong",  "no faults",
        "no flaws",     "no defects",       "no smell",       "no smells",      "no odor",
        "no odour",     "no odors",         "no odours",      "doesn't smell",  "does not smell",
        "no blemishes", "no imperfections", "without faults", "without damage", "no marks",
        "no problem",   "no fault",         "no losses",      "no harm"};
    for (size_t i = 0; i < sizeof denials / sizeof *denials; i++)
        if (!strcmp(text, denials[i])) return true;
    return false;
}
