// SPDX-License-Identifier: MIT
// Names of goods that people write down by ear, each word of it English, so that no spelling gives them away:
// "chester drawers", "candle abra". A name of one word stands here too where more than one letter is off.
#include "notes/things.h"

#include <string.h>

static const struct {
    const char *said, *meant;
} heard[] = {
    {"arm war", "armoire"},
    {"baro meter", "barometer"},
    {"base drum", "bass drum"},
    {"base guitar", "bass guitar"},
    {"beauro", "bureau"},
    {"bkt", "bucket"},
    {"black board", "blackboard"},
    {"black bord", "blackboard"},
    {"broach pin", "brooch"},
    {"by noculars", "binoculars"},
    {"candle abra", "candelabra"},
    {"candle labra", "candelabra"},
    {"candleabra", "candelabra"},
    {"candlelabra", "candelabra"},
    {"chandaleer", "chandelier"},
    {"chandileer", "chandelier"},
    {"chase longue", "chaise longue"},
    {"chase lounge", "chaise longue"},
    {"chest a drawers", "chest of drawers"},
    {"chest of draws", "chest of drawers"},
    {"chester drawer", "chest of drawers"},
    {"chester drawers", "chest of drawers"},
    {"chester draws", "chest of drawers"},
    {"chiffon robe", "chifforobe"},
    {"coatstand", "coat stand"},
    {"coo coo clock", "cuckoo clock"},
    {"cookoo clock", "cuckoo clock"},
    {"cuff lengths", "cuff links"},
    {"desert bowl", "dessert bowl"},
    {"desert bowls", "dessert bowls"},
    {"desert plate", "dessert plate"},
    {"desert plates", "dessert plates"},
    {"door nob", "door knob"},
    {"door nobs", "door knobs"},
    {"draw pull", "drawer pull"},
    {"draw pulls", "drawer pulls"},
    {"fishing real", "fishing reel"},
    {"flower sifter", "flour sifter"},
    {"gally stove", "galley stove"},
    {"hurdy gerdy", "hurdy gurdy"},
    {"hydro meter", "hydrometer"},
    {"life boy", "lifebuoy"},
    {"mangel", "mangle"},
    {"micro scope", "microscope"},
    {"mortar and pistol", "mortar and pestle"},
    {"neckless", "necklace"},
    {"pee coat", "pea coat"},
    {"pitch fork", "pitchfork"},
    {"plum bob", "plumb bob"},
    {"rullock", "rowlock"},
    {"rullocks", "rowlocks"},
    {"screw driver", "screwdriver"},
    {"screw drivers", "screwdrivers"},
    {"shiffer robe", "chifforobe"},
    {"shift robe", "chifforobe"},
    {"sosepan", "saucepan"},
    {"sowing basket", "sewing basket"},
    {"sowing box", "sewing box"},
    {"sowing machine", "sewing machine"},
    {"stationary box", "stationery box"},
    {"stationary paper", "stationery"},
    {"stationary set", "stationery set"},
    {"tarpolin", "tarpaulin"},
    {"tarpolins", "tarpaulins"},
    {"tele scope", "telescope"},
    {"thermo meter", "thermometer"},
    {"toolchest", "tool chest"},
    {"type writer", "typewriter"},
    {"type writers", "typewriters"},
    {"ward robe", "wardrobe"},
    {"wardrope", "wardrobe"},
    {"weather vain", "weather vane"},
    {"weather vein", "weather vane"},
};

const char *sound_alike(const struct note *note, size_t i, size_t *taken) {
    if (!token_may_open(&note->tokens, i, heard, sizeof heard / sizeof *heard, sizeof *heard)) return NULL;
    char first = note->tokens.at[i].fold[0];
    for (size_t k = 0; k < sizeof heard / sizeof *heard; k++) {
        if (heard[k].said[0] != first) continue;
        *taken = token_phrase(&note->tokens, i, heard[k].said);
        if (*taken) return heard[k].meant;
    }
    return NULL;
}
