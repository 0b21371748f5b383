// SPDX-License-Identifier: MIT
// Figures with units: how they are written and said, what they measure, whose they are.
#include "support.h"

static const char *tell(const struct note *note) {
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->record->measurement_count; i++) {
        const struct measurement *m = &note->record->measurements[i];
        buf_format(&out, "%s%s", out.n ? "; " : "", m->dimension);
        if (m->of) buf_format(&out, " of %s", m->of);
        buf_format(&out, " %s%s", m->figure.about ? "about " : "",
                   say_decimal(note->arena, m->range ? m->from : m->figure.value));
        if (m->range) buf_format(&out, "-%s", say_decimal(note->arena, m->to));
        buf_format(&out, " %s", m->figure.unit->name);
    }
    for (size_t i = 0; i < note->record->attribute_count; i++) {
        const struct value *v = &note->record->attributes[i];
        buf_format(&out, "%s%s=%s", out.n ? "; " : "", v->name, v->value);
        if (v->of) buf_format(&out, " of %s", v->of);
    }
    return out.at;
}

static void read(struct note *note) {
    read_measures(note);
    settle_measures(note);
}

static const struct notes_case writings[] = {
    {"5G-118820 on the frame", ""},
    {"8.5 in tall", "height 8.5 in"},
    {"bench, 6 ft by 10 in, 17 high", "length 6 ft; width 10 in; height 17 in"},
    {"bell, diameter at the mouth 7 in", "diameter of mouth 7 in"},
    {"bell, 8 inches at the mouth", "diameter of mouth 8 in"},
    {"basket, 14 inches at its widest, 6 in. at the base", "width 14 in; width of base 6 in"},
    {"crock, crack 4 in at the rim", ""},
    {"feed bin, holds 25 lbs", "capacity 25 lb"},
    {"pantry scale, off by 2 oz", ""},
    {"stencil set, 3 inch letters", "height of letter 3 in"},
    {"lamp, 15 inches high without counting the shade", "height of without shade 15 in"},
    {"lantern, 14 inches to the top of the ring", "height 14 in"},
    {"corkscrew, 5 1/4 in overall", "length 5.25 in"},
    {"roller, 18 in wide, 14 in across", "width 18 in; diameter 14 in"},
    {"Chest of six drawers", ""},
    {"Scales. Weights: 2 lb, 1 lb", ""},
    {"gauge, 0-200 lbs", ""},
    {"baby scales, up to 25 lb in half ounces", ""},
    {"8 1/2 in tall", "height 8.5 in"},
    {"8-1/2 in tall", "height 8.5 in"},
    {"8\xC2\xBD in tall", "height 8.5 in"},
    {"8 \xC2\xBD in tall", "height 8.5 in"},
    {"8 and a half inches tall", "height 8.5 in"},
    {"8 & 1/2 inches tall", "height 8.5 in"},
    {"8 and 1/2 inches tall", "height 8.5 in"},
    {"eight and a half inches tall", "height 8.5 in"},
    {"eight and three quarters inches tall", "height 8.75 in"},
    {"eight and a quarter inches high", "height 8.25 in"},
    {"twelve inches high", "height 12 in"},
    {"twenty-two inches high", "height 22 in"},
    {"thirty eight inches long", "length 38 in"},
    {"a hundred and ten inches long", "length 110 in"},
    {"8\xE2\x85\x9D\xE2\x80\x9D tall", "height 8.63 in"},
    {"9\" tall", "height 9 in"},
    {"9'' tall", "height 9 in"},
    {"9\xE2\x80\x9D high", "height 9 in"},
    {"9in. high", "height 9 in"},
    {"9 in. high, dull", "height 9 in"},
    {"9 INCHES HIGH", "height 9 in"},
    {"9-inch-high trivet", "height 9 in"},
    {"24cm high", "height 24 cm"},
    {"24 cms high", "height 24 cm"},
    {"240 mm high", "height 240 mm"},
    {"1.2 m long", "length 1.2 m"},
    {"half an inch thick", "thickness 0.5 in"},
    {"a quarter inch thick", "thickness 0.25 in"},
    {"three eighths of an inch thick", "thickness 0.38 in"},
    {"an inch and a half deep", "depth 1.5 in"},
    {"an inch and a quarter wide", "width 1.25 in"},
    {"a foot and a half long", "length 1.5 ft"},
    {"5' 10\" long", "length 70 in"},
    {"5'10\" long", "length 70 in"},
    {"5'10 runner, wool", "size=70 in"},
    {"5 ft 10 in long", "length 70 in"},
    {"6 foot 3 long", "length 75 in"},
    {"4 feet long", "length 4 ft"},
    {"1,250 mm long", "length 1250 mm"},
    {"height 81/2\" or so I wrote", ""},
    {".5 in thick", "thickness 0.5 in"},
    {"10 in high. Sound.", "height 10 in"},
    {"the barn lantern is 10 inches in height", "height 10 in"},
    {"three quarters of an inch across the dial", "diameter of dial 0.75 in"},
};

static const struct notes_case pairs[] = {
    {"11 1/4\" x 7", "length 11.25 in; width 7 in"},
    {"11 x 7 in", "length 11 in; width 7 in"},
    {"11 by 7 inches", "length 11 in; width 7 in"},
    {"11\xC3\x97"
     "7 inches",
     "length 11 in; width 7 in"},
    {"40 x 60 cm", "width 40 cm; length 60 cm"},
    {"11x7in", "length 11 in; width 7 in"},
    {"11\"x7\"x5\"", "length 11 in; width 7 in; height 5 in"},
    {"tin box 11 x 7 x 5 inches", "length 11 in; width 7 in; height 5 in"},
    {"HxWxD 11x7x5 in", "height 11 in; width 7 in; depth 5 in"},
    {"H x W x D: 11 x 7 x 5 in", "height 11 in; width 7 in; depth 5 in"},
    {"11 x 7 x 5 in (LxWxH)", "length 11 in; width 7 in; height 5 in"},
    {"HxWxD 11x7x5", "height 11 in; width 7 in; depth 5 in"},
    {"11\"h x 7\"w x 5\"d", "height 11 in; width 7 in; depth 5 in"},
    {"11 in h x 7 in w", "height 11 in; width 7 in"},
    {"11h x 7w inches", "height 11 in; width 7 in"},
    {"H 11 x W 7 in", "height 11 in; width 7 in"},
    {"18 inches long by 12 inches wide", "length 18 in; width 12 in"},
    {"18 long by 12 wide, in inches", "length 18 in; width 12 in"},
    {"18 inches long and 12 wide", "length 18 in; width 12 in"},
    {"9 inches tall, 5 wide", "height 9 in; width 5 in"},
    {"9 in tall and like 5 wide", "height 9 in; width about 5 in"},
    {"6 foot by 4 foot 3", "length 6 ft; width 51 in"},
    {"wall map, 36 by 48", "width 36 in; length 48 in"},
    {"map opens to 24 x 36 in", "width of open 24 in; length of open 36 in"},
    {"about 50 by 60 inches", "width about 50 in; length about 60 in"},
    {"roughly 30 x 20 cm", "length about 30 cm; width about 20 cm"},
    {"2x4", ""},
    {"two by four", ""},
    {"8x30 field glasses in a case", "size=8x30"},
    {"field glasses 10 x 50, strap gone", "size=10x50"},
    {"34 inches square", "width 34 in; length 34 in"},
    {"72 X 86 INCHES.", "width 72 in; length 86 in"},
    {"height 9 width 6 depth 4", "height 9 in; width 6 in; depth 4 in"},
    {"height 9 in, width 6 in, depth 4 in", "height 9 in; width 6 in; depth 4 in"},
    {"Height: 9 in. Width: 6 in.", "height 9 in; width 6 in"},
    {"measures 22 pit to pit 28 long", "chest of pit to pit 22 in; length 28 in"},
    {"pit to pit 22, length 28", "chest of pit to pit 22 in; length 28 in"},
    {"wool vest, measures 40 inches at the chest", "chest 40 in"},
    {"kilt, 28 inches round the waist", "waist 28 in"},
    {"coat, tear 2 inches at the waist", ""},
};

static const struct notes_case dimensions[] = {
    {"vise, jaw 3 1/2 in, opens to 4", "width of jaw 3.5 in"},
    {"bench, 5 foot long, foot wide, foot and a half high", "length 5 ft; width 1 ft; height 1.5 ft"},
    {"bed, foot and a half of it gone", ""},
    {"stand, 12 in tall, outlet 3 in", "height 12 in; size=3 in of outlet"},
    {"clock, 7 foot 8 to the finial", "height 92 in"},
    {"pole, 6 foot to the hook", "height 6 ft"},
    {"cake stand, 10 in across", "diameter 10 in"},
    {"peel, 5 feet 2 overall", "length 62 in"},
    {"rug, wool. 3 feet 4 by 2 feet", "length 40 in; width 2 ft"},
    {"chest on 4 feet, 2 missing", ""},
    {"stand, 8 in tall, outlet is 2 in", "height 8 in; size=2 in of outlet"},
    {"telescope, 34 inches pulled out, 11 in closed", "length of extended 34 in; length of closed 11 in"},
    {"telescope, closed it is 11 inches, 34 when drawn out",
     "length of closed 11 in; length of extended 34 in"},
    {"ladder, 8 ft closed and 14 extended", "length of closed 8 ft; length of extended 14 ft"},
    {"tripod. Folds to 26 inches, opens to 5 feet", "length of folded 26 in; length of open 5 ft"},
    {"umbrella, 38 in furled, 44 across when open", "length of folded 38 in; width of open 44 in"},
    {"chart 12 by 10 in folded", "length of folded 12 in; width of folded 10 in"},
    {"umbrella stand, 24 high, open at the back", "height 24 in"},
    {"box, 9 in open top", "size=9 in"},
    {"bellows, 22 in long, 9 at the widest", "length 22 in; width 9 in"},
    {"bed warmer, 44 in overall, pan 12 in wide", "length 44 in; width of pan 12 in"},
    {"locker 12 x 8 in, inside is 11 by 7",
     "length 12 in; width 8 in; length of inside 11 in; width of inside 7 in"},
    {"kettle, 10 in tall handle up", "height 10 in"},
    {"rug, nine by twelve", "width 9 ft; length 12 ft"},
    {"chest: 36\"w x 18\"d x 20\"h", "width 36 in; depth 18 in; height 20 in"},
    {"watering can, 15\" from base to top of handle", "height 15 in"},
    {"basin stand, 31 inches floor to rim", "height 31 in"},
    {"gate hook, 9 in eye to point", "length 9 in"},
    {"fork, 38 in from the tip of the tines to the end of the handle", "length 38 in"},
    {"lamp, 20 in to the collar, 4 in base diameter", "height 20 in; diameter of base 4 in"},
    {"bucket, 12 in tall, 10 in top dia", "height 12 in; diameter of top 10 in"},
    {"barometer, 38 inches top to bottom", "height 38 in"},
    {"chairs, seat height 14 in, 28 overall", "height of seat 14 in; height 28 in"},
    {"box 6 x 14 x 9 in (HWD)", "height of box 6 in; width of box 14 in; depth of box 9 in"},
    {"six-inch-deep pan", "depth 6 in"},
    {"tile, 16\" sq", "width 16 in; length 16 in"},
    {"rug, 6 sq ft", ""},
    {"oval tub, 27 inches by 19 and 11 deep handles each end", "length 27 in; width 19 in; depth 11 in"},
    {"bag, 10 across x 8 high x 4 in", "width 10 in; height 8 in; depth 4 in"},
    {"screen, 24 1/4 w, 29 high", "width 24.25 in; height 29 in"},
    {"ribbon tins, 2 1/2 inches round and 3/4 in deep", "diameter 2.5 in; depth 0.75 in"},
    {"a 12 inch round table", "size=12 in"},
    {"ladder, ten-foot-long", "length 10 ft"},
    {"bench, two feet eight inches tall", "height 32 in"},
    {"a bench on two feet, eight are lost", ""},
    {"stands 14 inches", "height 14 in"},
    {"stands about 14 inches", "height about 14 in"},
    {"stands 14 inches tall", "height 14 in"},
    {"height of 14 inches", "height 14 in"},
    {"height is 14 inches", "height 14 in"},
    {"diameter: 10 1/4 in", "diameter 10.25 in"},
    {"10 1/4 inch diameter", "diameter 10.25 in"},
    {"4 1/2in dia. and sound", "diameter 4.5 in"},
    {"round tray, 12 in across", "diameter 12 in"},
    {"oval tray, 12 in across", "width 12 in"},
    {"oak shelf 30 in across", "width 30 in"},
    {"12 cm across the top", "width of top 12 cm"},
    {"crock 12 cm across the top", "diameter of top 12 cm"},
    {"5 inches wide at the top", "width of top 5 in"},
    {"5 in wide at its widest", "width 5 in"},
    {"14 inches around", "circumference 14 in"},
    {"31 inches long end to end", "length 31 in"},
    {"thirty two centimeters end to end", "length 32 cm"},
    {"9\" handle to handle", "width of handle to handle 9 in"},
    {"inside diameter 6 in", "diameter of inside 6 in"},
    {"inside diameter 6 in, outside diameter 6 and 3/4 in",
     "diameter of inside 6 in; diameter of outside 6.75 in"},
    {"16 in deep", "depth 16 in"},
    {"8 in in diameter", "diameter 8 in"},
    {"8 inches in height", "height 8 in"},
    {"42 inch chest", "chest 42 in"},
    {"chest 42 inches", "chest 42 in"},
    {"chest 42 inches, sleeve 24 inches", "chest 42 in; sleeve 24 in"},
    {"waist 32, inseam 30", "waist 32 in; inseam 30 in"},
    {"waist 16 flat", "waist 16 in"},
    {"19 in across bust", "chest of across bust 19 in"},
    {"strap drop 10 in", "drop of strap 10 in"},
    {"10 inch strap drop", "drop of strap 10 in"},
    {"cord's about 4 ft", "length of cord about 4 ft"},
    {"cord is 6 ft long", "length of cord 6 ft"},
    {"cord: 6 ft", "length of cord 6 ft"},
    {"6 ft cord", "length of cord 6 ft"},
    {"fan with 10 inch metal blades", "length of blade 10 in"},
    {"saw, 26 INCH BLADE", "length of blade 26 in"},
    {"3 inch heel", "height of heel 3 in"},
    {"4 in base", "width of base 4 in"},
    {"base is 4 in wide", "width of base 4 in"},
    {"lamp 14 in tall, base 5 in across", "height 14 in; width of base 5 in"},
    {"box is 12 x 9 in", "length of box 12 in; width of box 9 in"},
    {"lid 6 in across", "diameter of lid 6 in"},
    {"400 foot reel", "length of reel 400 ft"},
    {"brass compass, 3 inches", "size=3 in"},
    {"tablet, 7 inch", "size=7 in"},
    {"paperweight about 3 inches", "size=about 3 in"},
    {"9 inches tall to the top of the handle", "height 9 in"},
    {"48 W x 30 D x 29 H. Ring marks on top", "width 48 in; depth 30 in; height 29 in"},
    {"Table W48 x D30 x H29", "width 48 in; depth 30 in; height 29 in"},
    {"12 inches tall w/o handle", "height of without handle 12 in"},
    {"Pipe, inside diameter 4 in, outside 5 1/2", "diameter of inside 4 in; diameter of outside 5.5 in"},
    {"About 18 in tall and 13 wide", "height about 18 in; width about 13 in"},
    {"11 in tall with the stopper", "height 11 in"},
    {"it goes up to 152 cm high", "height 152 cm"},
    {"hamper eleven inches deep inside", "depth 11 in"},
    {"picnic hamper, holds four plates and four cups", ""},
    {"oil can, pint size", "capacity 1 pt"},
    {"set of 7 weights. The 4 oz one is odd", ""},
    {"glass bowl. Small chip on the foot, about 2 mm across", ""},
    {"rope, blue, 50 m", "size=50 m"},
};

static const struct notes_case hedged[] = {
    {"about 9 inches tall", "height about 9 in"},
    {"approx. 9 inches tall", "height about 9 in"},
    {"approx 9 inches tall", "height about 9 in"},
    {"~9 in tall", "height about 9 in"},
    {"9ish inches tall", "height about 9 in"},
    {"9 inches or so tall", "height about 9 in"},
    {"9 inches tall or so", "height about 9 in"},
    {"9 inches tall give or take", "height about 9 in"},
    {"22 inches give or take", "size=about 22 in"},
    {"maybe 9 inches tall", "height about 9 in"},
    {"a hair over 9 inches tall", "height about 9 in"},
    {"just under 9 inches tall", "height about 9 in"},
    {"just shy of 10 inches tall", "height about 10 in"},
    {"nearly 10 inches tall", "height about 10 in"},
    {"close to 10 inches tall", "height about 10 in"},
    {"a little over 10 inches wide", "width about 10 in"},
    {"about a foot tall", "height about 1 ft"},
    {"a foot tall", "height 1 ft"},
    {"a couple of inches thick", "thickness about 2 in"},
    {"between 14 and 15 inches long", "length 14-15 in"},
    {"14 to 15 inches long", "length 14-15 in"},
    {"14-15 in long", "length 14-15 in"},
    {"14 or 15 inches long", "length 14-15 in"},
    {"about 14 to 15 inches long", "length about 14-15 in"},
    {"from 36 to 42 inches long", "length 36-42 in"},
    {"chest 36-42 inches", "chest 36-42 in"},
    {"7 to 8 inch depending where", "size 7-8 in"},
    {"20 something tall", "height about 20-29 in"},
    {"9 inches tall, no sorry, 8 inches tall", "height 8 in"},
    {"9 inches tall, no wait, 8 inches", "height 8 in"},
    {"6 inches, sorry 6 centimeters across", "width 6 cm"},
    {"10 inch plate more like 10 and a quarter", "size=about 10 1/4 in"},
    {"5 feet long, make that 6 feet long", "length 6 ft"},
};

static const struct notes_case weights[] = {
    {"bell, weighs in at 3 1/4 pounds", "weight 3.25 lb"},
    {"vise, a heavy one at 22 pounds", "weight 22 lb"},
    {"five-pound hammer", "weight 5 lb"},
    {"weighs 3 lbs 4", "weight 3.25 lb"},
    {"weighs 3 lb 4 oz", "weight 3.25 lb"},
    {"weighs 3 pounds 4 ounces", "weight 3.25 lb"},
    {"wt 2#", "weight 2 lb"},
    {"wt 2 lbs", "weight 2 lb"},
    {"maybe 10 pounds", "weight about 10 lb"},
    {"71 grams on my kitchen scale", "weight 71 g"},
    {"about 7.5 kg on the bathroom scale", "weight about 7.5 kg"},
    {"weighs 22 oz on the postal scale", "weight 22 oz"},
    {"anvil, nine pounds", "weight 9 lb"},
    {"half a pound of nails", "weight 0.5 lb"},
    {"4 oz hank of twine", "weight 4 oz"},
    {"weighs 2 stone", "weight 2 st"},
    {"ring with two stones missing", ""},
    {"light as a feather", ""},
};

// What a scale shows and what a weight is called is no weight of the thing.
static const struct notes_case not_weights[] = {
    {"scale, to weigh 50 lbs by half pounds", ""},
    {"scale, the needle sticks at 2 lb", ""},
    {"Pointer sticks at 2 lb", ""},
    {"8 weights, the 50g isn't there", ""},
    {"five weights out of six (1 oz missing)", ""},
    {"Anvil, the whole 20 lb of it", "weight 20 lb"},
};

static const struct notes_case volumes[] = {
    {"a two-gallon bucket", "capacity 2 gal"},
    {"milk pump, 25 gal an hour", ""},
    {"tin flask, 12 oz capacity", "capacity 12 fl oz"},
    {"bucket, takes 2 quarts to the brim", "capacity 2 qt"},
    {"mug, holds 12 oz", "capacity 12 fl oz"},
    {"12 oz mug", "capacity 12 fl oz"},
    {"8 oz glass", "capacity 8 fl oz"},
    {"goblets hold 9 oz each", "capacity 9 fl oz"},
    {"pewter mug weighs 12 oz", "weight 12 oz"},
    {"16 fl oz jar", "capacity 16 fl oz"},
    {"16 fl. oz. jar", "capacity 16 fl oz"},
    {"16 fluid ounces", "capacity 16 fl oz"},
    {"half pint jar", "capacity 0.5 pt"},
    {"half a pint", "capacity 0.5 pt"},
    {"holds about a quart", "capacity about 1 qt"},
    {"2 quart crock", "capacity 2 qt"},
    {"2 gallon crock", "capacity 2 gal"},
    {"holds 2 cups", "capacity 2 cup"},
    {"8 cup teapot", "capacity 8 cup"},
    {"8 cups and 8 saucers", ""},
    {"12-cup percolator", "capacity 12 cup"},
    {"stock pot, 12 qt", "capacity 12 qt"},
    {"40L pot", "capacity 40 l"},
    {"1.5 liter jug", "capacity 1.5 l"},
    {"750 ml bottle", "capacity 750 ml"},
    {"2 pt jug", "capacity 2 pt"},
    {"saw 10 PT", ""},
    {"pint canning jars", "capacity 1 pt"},
    {"a half-gallon jug", "capacity 0.5 gal"},
    {"gallon jug, no handle", "capacity 1 gal"},
    {"reel, 4 in dia. and 11 oz as far as I can see", "diameter 4 in; weight 11 oz"},
    {"marked up to 2 pints, the proper twenty ounce kind", "capacity 2 imperial pt"},
    {"an imperial pint pot, holds 1 imperial pint", "capacity 1 imperial pt"},
    {"holds 1 1/2 gallons", "capacity 1.5 gal"},
    {"can, capacity 5 gal", "capacity 5 gal"},
};

static const struct notes_case ratings[] = {
    {"drill, 18v", "size=18V"},
    {"drill, 12 volt", "size=12V"},
    {"40 watt bulb", "size=40W of bulb"},
    {"35mm film camera", "size=35mm"},
    {"camera with a 50mm lens", "size=50mm of lens"},
    {"adapter 12 V 2 A", "size=12V; size=2A"},
    {"fan 60 Hz", "size=60Hz"},
};

static const struct notes_case faults[] = {
    {"1/4 inch chip on the rim", ""},
    {"quarter inch chip", ""},
    {"chip about 3mm", ""},
    {"chip size of 3mm maybe", ""},
    {"a 2 inch hairline by the handle", ""},
    {"Oak bench. The left arm has a split along the grain, 4 inches long.", ""},
    {"Clutch. Beads are missing along the seam, a strip about 1 inch long.", ""},
    {"Oak bench with a split, 40 inches long.", "length 40 in"},
    {"crack about 3 inches long", ""},
    {"crack below the bridge about 3 inches long", ""},
    {"hairline that comes down about 2 inches", ""},
    {"seam split 4 inches", ""},
    {"lid has a dent, half an inch across", ""},
    {"a split up the grain, two inches, at the back", ""},
    {"hole the size of a dime", ""},
    {"tear of an inch or so", ""},
    {"3 inch long scratch on the side", ""},
    {"8 inches tall with a chip on the rim", "height 8 in"},
    {"tiny chip on base 8 inches tall", "height 8 in"},
    {"no chips 9 inches long", "length 9 in"},
    {"6 inch chipped bowl", "size=6 in"},
    {"6 inch bowl has a chip", "size=6 in"},
    {"quarter sized chip", ""},
    {"The leather has lifted along the front, two inches or so.", ""},
    {"a strip has lifted at the corner, perhaps an inch", ""},
    {"the seam parted about 3 inches", ""},
    {"the veneer isn't lifting, 14 inches", "size=14 in"},
    {"pinhead hole in the bellows", ""},
    {"stain like a grain of rice", ""},
    {"Chip on the rim. 9 inches long.", "length 9 in"},
    {"clasp aint broke 22 inches give or take", "size=about 22 in"},
    {"2 x 3 in stain on the lid", ""},
    {"enamel pan 10 in across, rust spot 1 in wide", "width 10 in"},
};

static const struct notes_case none[] = {
    {"Bought for 20 pounds at the market.", ""},
    {"It cost 40 pounds new", ""},
    {"4 in a box", ""},
    {"3 in good shape", ""},
    {"2 in the tin", ""},
    {"one foot is chipped", ""},
    {"stands on 4 feet", ""},
    {"4 feet, one is loose", ""},
    {"I'm 5 foot 6 and it fits", ""},
    {"fits rods up to 3 in", ""},
    {"number 9 across the lid", ""},
    {"paid $5 in cash", ""},
    {"two long handles", ""},
    {"8", ""},
    {"about 40 pieces of harness", ""},
    {"14 ct gold rim", ""},
    {"1/250 in pencil under the print", ""},
    {"the 3 in front are fine", ""},
    {"3rd one is taller", ""},
    {"serial 0047718", ""},
    {"it's a 5 pounder", ""},
    {"#3 on the side", ""},
    {"palm sized dish", ""},
    {"paper size, like letter", ""},
    {"18 stone of books", ""},
    {"some have holes", ""},
    {"price tag 2.99 on the bottom", ""},
    {"runs 20 minutes in a day", ""},
    {"the size of a playing card", ""},
};

static const struct notes_case sizes[] = {
    {"size 8", "size=8"},
    {"size 7", "size=7"},
    {"sz 10.5", "size=10.5"},
    {"sz M", "size=M"},
    {"size M but runs small", "size=M"},
    {"size 10 wide", "size=10 wide"},
    {"size 7 US", "size=7 US"},
    {"size 12 UK", "size=12 UK"},
    {"size: XL", "size=XL"},
    {"size small", "size=small"},
    {"size extra large", "size=extra large"},
    {"kids size 13", "size=13"},
    {"mens size 9 1/2", "size=9 1/2"},
    {"boots, UK 9 / EU 43", "size=UK 9 / EU 43"},
    {"ladies UK 5\xC2\xBD", "size=UK 5\xC2\xBD"},
    {"ring, UK size N\xC2\xBD", "size=N\xC2\xBD"},
    {"womens 8.5", "size=8.5"},
    {"adult medium", "size=medium"},
    {"oilskin jacket, XL, lined", "size=XL"},
    {"tag says medium", "size=medium"},
    {"label says L", "size=L"},
    {"twin size quilt", "size=twin"},
    {"queen-size blanket", "size=queen"},
    {"blanket fits a double", "size=double"},
    {"banjo, 3/4 size", "size=3/4"},
    {"raincoat, age 3-4", "size=age 3-4"},
    {"scale 1:64", "size=1:64"},
    {"1/64 scale", "size=1/64"},
    {"2 person tent", "size=2 person"},
    {"one size fits all", "size=one size fits all"},
    {"size 12-14", "size=12-14"},
    {"size 3 inch", "size=3 in"},
};

// The same figure in two units is one. The factors are those of the international inch and pound.
static const struct notes_case again[] = {
    {"12 in (30.5 cm) long", "length 12 in"},
    {"12 in [30 cm] long", "length 12 in"},
    {"14 in / 35 cm tall", "height 14 in"},
    {"18in/45cm high", "height 18 in"},
    {"9 in high or 23cm", "height 9 in"},
    {"16 x 12 in (40.6 x 30.5 cm)", "length 16 in; width 12 in"},
    {"30 x 20 x 10 cm (12 x 8 x 4 in)", "length 30 cm; width 20 cm; height 10 cm"},
    {"60 x 80 inches or 150 x 200 cm", "width 60 in; length 80 in"},
    {"20cm (8 inches) across, 10cm (4 inches) deep", "width 20 cm; depth 10 cm"},
    {"weighs 2 lb (about 900g)", "weight 2 lb"},
    {"weighs 1.2kg (2lb 10oz)", "weight 1.2 kg"},
    {"holds 1 pint (600 ml)", "capacity 1 pt"},
    {"5' 10\" (178 cm) tall", "height 70 in"},
    // other things
    {"3 or 4 in tall", "height 3-4 in"},
    {"12 in tall (40 cm with the handle)", "height 12 in; size=40 cm"},
    {"12 in long (4 kg)", "length 12 in; weight 4 kg"},
};

static const struct notes_case british[] = {
    {"2 pint jug", "capacity 2 imperial pt"},
    {"holds a gallon", "capacity 1 imperial gal"},
    {"8 fl oz glass", "capacity 8 imperial fl oz"},
    {"30 tall", ""},
    {"30 x 40", ""},
    {"30 cm tall", "height 30 cm"},
    {"12 in tall, 5 wide", "height 12 in; width 5 in"},
    {"thirty centimetres long", "length 30 cm"},
    {"two metres long", "length 2 m"},
};

static struct figure asked;
static size_t asked_taken;

static void ask(struct arena *arena, void *context) {
    const struct notes_case *c = context;
    struct note *note = support_note(arena, c->note, LOCALE_US);
    asked = (struct figure){0};
    if (!figure_at(note, 0, &asked, &asked_taken)) asked_taken = 0;
}

#define CASES(name, locale)                                                                                  \
    START_TEST(reads_##name) {                                                                               \
        support_cases(name, sizeof name / sizeof *name, locale, read, tell);                                 \
    }                                                                                                        \
    END_TEST
CASES(writings, LOCALE_US)
CASES(pairs, LOCALE_US)
CASES(dimensions, LOCALE_US)
CASES(hedged, LOCALE_US)
CASES(weights, LOCALE_US)
CASES(not_weights, LOCALE_US)
CASES(volumes, LOCALE_US)
CASES(ratings, LOCALE_US)
CASES(faults, LOCALE_US)
CASES(none, LOCALE_US)
CASES(sizes, LOCALE_US)
CASES(british, LOCALE_GB)
CASES(again, LOCALE_US)

// What a fault measures, as its reader asks for it.
START_TEST(figures_of_faults) {
    static const struct {
        const char *text;
        double mm;
        size_t taken;
        bool about;
    } wants[] = {{"1/4 inch chip", 6.35, 2, false},
                 {"quarter inch", 6.35, 2, false},
                 {"about 3mm", 3, 2, true},
                 {"3mm maybe", 3, 2, true},
                 {"the size of a dime", 17.91, 5, true},
                 {"about the size of a quarter", 24.26, 6, true},
                 {"dime size", 17.91, 2, true},
                 {"dime-sized", 17.91, 1, true},
                 {"no bigger than a nickel", 21.21, 5, true},
                 {"like a grain of rice", 6.5, 5, true},
                 {"pinhead", 1.75, 1, true},
                 {"pencil eraser sized", 6.5, 3, true},
                 {"size of a playing card", 88.9, 5, true},
                 {"an inch and a half or so", 38.1, 7, true},
                 {"half an inch", 12.7, 3, false},
                 {"1 to 2 inches", 50.8, 4, true},
                 {"two cm", 20, 2, false},
                 {"as big as my hand", 0, 0, false},
                 {"quarter", 0, 0, false},
                 {"12 oz", 0, 0, false},
                 {"2 places", 0, 0, false}};
    for (size_t i = 0; i < sizeof wants / sizeof *wants; i++) {
        struct notes_case c = {wants[i].text, NULL};
        struct arena *arena = arena_new(NULL);
        ck_assert(arena_try(arena, ask, &c));
        ck_assert_msg(asked_taken == wants[i].taken, "%s: took %zu tokens", wants[i].text, asked_taken);
        ck_assert_double_eq_tol(asked.base, wants[i].mm, 0.01);
        ck_assert_msg(asked.about == wants[i].about, "%s: about", wants[i].text);
        arena_free(arena);
    }
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: measures");
    TCase *tests = tcase_create("measures");
    tcase_add_test(tests, reads_writings);
    tcase_add_test(tests, reads_pairs);
    tcase_add_test(tests, reads_dimensions);
    tcase_add_test(tests, reads_hedged);
    tcase_add_test(tests, reads_weights);
    tcase_add_test(tests, reads_not_weights);
    tcase_add_test(tests, reads_volumes);
    tcase_add_test(tests, reads_ratings);
    tcase_add_test(tests, reads_faults);
    tcase_add_test(tests, reads_none);
    tcase_add_test(tests, reads_sizes);
    tcase_add_test(tests, reads_british);
    tcase_add_test(tests, reads_again);
    tcase_add_test(tests, figures_of_faults);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
