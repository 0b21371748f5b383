// SPDX-License-Identifier: MIT
// English words that are written for others which sound the same: "small tare at the edge", "pages are lose".
// No spelling gives them away, so each needs a neighbor that only the other could have. Common practice, no
// source.
#include "notes/cut.h"
#include "notes/note.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// `before`, `behind`: words with a bar between, one of which must stand there; "." is the end of a clause.
// NULL: anything may. Where both are given one of them is enough, unless `both` is set.
struct confused {
    const char *said, *meant, *before, *behind;
    bool both;
};

static const struct confused words[] = {
    {"bak", "back", NULL, NULL, false},
    {"bleu", "blue", NULL, NULL, false},
    {"bord", "board", NULL, NULL, false},
    {"bout", "about", NULL, "a|an|half|1|2|3|4|5|6|7|8|9|10|12|one|two|three|four|five|six|the", false},
    {"checkr", "checker", NULL, NULL, false},
    {"coller", "collar", NULL, NULL, false},
    {"filld", "filled", NULL, NULL, false},
    {"flee", "flea", NULL, "bite|bites|bitten|market", false},
    {"glas", "glass", NULL, NULL, false},
    {"haf", "half", NULL, NULL, false},
    {"handels", "handles", NULL, NULL, false},
    {"heal", "heel", NULL, NULL, false},
    {"inchs", "inches", NULL, NULL, false},
    {"ladys", "ladies", NULL, NULL, false},
    {"peaces", "pieces", NULL, NULL, false},
    {"purs", "purse", NULL, NULL, false},
    {"riped", "ripped", NULL, NULL, false},
    {"ruff", "rough", NULL, "spot|spots|edge|edges|patch|patches|area|place|places|rim|to|on|around|shape|at",
     false},
    {"runer", "runner", NULL, NULL, false},
    {"runers", "runners", NULL, NULL, false},
    {"shoos", "shoes", NULL, NULL, false},
    {"shoud", "should", NULL, NULL, false},
    {"thru", "through",
     "worn|rusted|wore|way|all|right|clear|shows|showing|burnt|burned|goes|went|going|clean|gone",
     "to|.|the|in|at", true},
    {"tite", "tight", NULL, NULL, false},
    {"titely", "tightly", NULL, NULL, false},
    {"watter", "water", NULL, NULL, false},
    {"craking", "cracking", NULL, NULL, false},
    {"cudnt", "couldn't", NULL, NULL, false},
    {"dident", "didn't", NULL, NULL, false},
    {"didint", "didn't", NULL, NULL, false},
    {"doesen't", "doesn't", NULL, NULL, false},
    {"doesent", "doesn't", NULL, NULL, false},
    {"dos'nt", "doesn't", NULL, NULL, false},
    {"dosen't", "doesn't", NULL, NULL, false},
    {"dosent", "doesn't", NULL, NULL, false},
    {"dosn't", "doesn't", NULL, NULL, false},
    {"dosnt", "doesn't", NULL, NULL, false},
    {"issnt", "isn't", NULL, NULL, false},
    {"woudnt", "wouldn't", NULL, NULL, false},
    {"wudnt", "wouldn't", NULL, NULL, false},
    {"cheep", "chip", "a|small|tiny|one|no|little|wee|big|slight", "on|in|at|to|near|out|off|by", false},
    {"cheeps", "chips", NULL, NULL, false},
    {"feat", "feet", "the|four|one|all|three|of", "is|are|missing|broken|gone|worn|chipped", false},
    {"feint", "faint", NULL, "mark|marks|stain|stains|smell|odor|scratch|scratches|crack|crease|line", false},
    {"fraid", "frayed", NULL, "at|along|on|edge|edges|and|.", false},
    {"handel", "handle", NULL, NULL, false},
    {"heals", "heels", NULL, NULL, false},
    {"leek", "leak", "a|they|bellows|small|slow|slight|bad|to|will|does|doesn't|don't|might|no", NULL, false},
    {"leeks", "leaks",
     "it|they|bellows|still|base|seam|bottom|spout|tap|valve|that|which|also|lid|no|slowly|always", NULL,
     false},
    {"leeking", "leaking", NULL, NULL, false},
    {"lense", "lens", NULL, NULL, false},
    {"lether", "leather", NULL, NULL, false},
    {"loos", "loose", NULL, NULL, false},
    {"lose", "loose",
     "is|are|was|were|bit|slightly|little|very|feels|gone|come|coming|came|quite|fairly|pretty|rather|some|"
     "has|"
     "pages|handle|not|isn't|aren't|hinge|hinges|joint|joints|knob|leg|legs|lid|spine|screw|screws|stone|"
     "stones|rungs|rung|slats|boards|bolts|nuts|spokes|buttons|feet|panel|seat",
     "pages|page|joint|joints|handle|leg|legs|screw|screws|knob|hinge|spine|stitching|threads|stone|stones|"
     "wire|"
     "in|at|on",
     false},
    {"mist", "missed", "have|i've|i|may", NULL, false},
    {"peal", "peel", "to|will|starting|starts", NULL, false},
    {"pealed", "peeled", NULL, NULL, false},
    {"pealing", "peeling", NULL, NULL, false},
    {"of", "off",
     "flaked|come|came|broke|broken|fell|fallen|snapped|torn|rubbed|knocked|ripped|chipped|peeling|worn|cut|"
     "coming|fallin|flaking",
     ".|at|on|in|near|and|but", true},
    {"nob", "knob", NULL, NULL, false},
    {"nobs", "knobs", NULL, NULL, false},
    {"peace", "piece", "one|a|missing|small|little|every|each", "missing|broken|gone|off|of|is|has|out",
     false},
    {"rapped", "wrapped", NULL, "in|with|up|around|round", false},
    {"seem", "seam", "the|a|one|side|back|bottom|shoulder|arm|sleeve|each|this|inner|outer|leg|floor",
     "split|open|ripped|torn|undone|has|gone|came|along|leaks|leaking", false},
    {"seems", "seams", "the|side|both|all|shoulder|inner|outer|floor|two|some",
     "split|open|ripped|torn|undone|are|have|come|coming", false},
    {"souls", "soles", NULL, NULL, false},
    {"staned", "stained", NULL, NULL, false},
    {"stane", "stain", NULL, NULL, false},
    {"stanes", "stains", NULL, NULL, false},
    {"sum", "some", NULL,
     "rust|spots|wear|marks|scratches|stains|chips|light|small|fading|loss|cracks|dents|crazing|crasing|"
     "foxing|tarnish|dust|dirt|scuffs|damage|paint",
     false},
    {"tare", "tear", "a|small|slight|little|one|no|big|tiny|long|short|inch|cm|bad|another|slit",
     "in|on|at|to|near|along|across|by|through|down", false},
    {"tares", "tears", NULL, NULL, false},
    {"teared", "torn", NULL, NULL, false},
    {"ware", "wear", "some|slight|edge|shelf|general|normal|surface|obvious|heavy|no|usual|much",
     "to|on|and|at|from|along", true},
    {"warn", "worn",
     "is|are|bit|badly|well|slightly|little|very|has|edges|edge|,|quite|looks|handles|handle|tires|"
     "soles|heels|rug|carpet|leather|fabric|cover|paint|finish",
     "out|through|thin|down|in|at|on|off|away|smooth|edges|spot|spots|patch|patches|place|places|.", false},
    {"whole", "hole", "a|small|tiny|one|moth|little|big|another|no|large|pin", "in|on|at|near|through|by|.",
     true},
    {"wholes", "holes", NULL, NULL, false},
    {"writting", "writing", NULL, NULL, false},
    {"worm", "worn", "is|are|badly|slightly|very|a|bit", "out|through|thin|down|away|smooth|off|at|on|.",
     true},
};

static bool stands(const struct tokens *tokens, size_t i, const char *barred) {
    if (i >= tokens->count) return strchr(barred, '.') != NULL;
    const struct token *token = &tokens->at[i];
    if (token->stop != STOP_NONE && strchr(barred, '.')) return true;
    size_t n = strlen(token->fold);
    for (const char *at = strstr(barred, token->fold); at; at = strstr(at + 1, token->fold))
        if ((at == barred || at[-1] == '|') && (at[n] == '|' || !at[n])) return true;
    return false;
}

static bool is_meant(const struct tokens *tokens, size_t i, const struct confused *word) {
    if (!word->before && !word->behind) return true;
    bool before = word->before && i > 0 && stands(tokens, i - 1, word->before),
         behind = word->behind && stands(tokens, i + 1, word->behind);
    return word->both ? before && behind : before || behind;
}

void note_mend_confused(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (!token_may_open(tokens, i, words, COUNT(words), sizeof *words)) continue;
        for (size_t k = 0; k < COUNT(words); k++)
            if (token_is(tokens, i, words[k].said) && is_meant(tokens, i, &words[k])) {
                note_mend(note, i, words[k].meant, words[k].meant, "sounds as it");
                break;
            }
    }
}
