// SPDX-License-Identifier: MIT
// What lies beside the thing in a lot, and words that only look like its own. The sentences are ours; the
// facts are common practice, no source.
#include "support_facts.h"

// The other goods of a lot, and whose a fault is there.
static const struct notes_case lots[] = {
    {"Box lot out of a boat shed: 6 brass cleats, 2 pulley blocks (one with split cheek), a coil of rope and "
     "an anchor shackle seized solid.",
     "type cleats; count 6; include 2 pulley block; include coil of rope; include anchor shackle; seized "
     "anchor shackle; crack cheek of one pulley block; family metalware; !material brass@blocks"},
    {"bundle from the shed: a brass oil can, two pairs of pliers, a spirit level with cracked vial and a box "
     "of brass hinges",
     "type oil can; include 2 pair of pliers; include spirit level; include box of brass hinges; crack vial "
     "of "
     "the spirit level; !material brass@hinges; !count 2"},
    {"Job lot, enamel mug, a tin opener, 3 wooden spoons and a sieve with a hole in it",
     "type enamel mug; include tin opener; include 3 wooden spoon; include sieve; hole sieve"},
    {"lot of 5 planes - 3 wooden moulding planes, 1 block plane with a cracked sole, 1 spokeshave",
     "count 3; include 1 block plane; include 1 spokeshave; crack sole of the block plane; !count 5"},
    {"Cake stand, two tiers, one cake stand", "count 1"},
    {"Four mugs and one milk jug, blue", "count 5"},
    {"Eight round and six square trays", "count 14"},
    {"Eight round trays and six square ones", "count 14"},
    {"Shawls, one black one white", "count 2"},
    {"Trays, five black and two brown. Dents", "count 7"},
    {"Cloth puppets, two sisters, hand sewn", "count 2"},
    {"Planters, three swans, white", "count 3"},
    {"Prints, matted, mostly views, 13 of them", "count 13"},
    {"Lamp, leaded panels, 6 of them", "!count 6"},
    {"Planters, three legs each, white", "!count 3"},
    {"Lantern. Just this one lantern.", "count 1"},
    {"Nutcracker, brass, just the one.", "count 1; !missing-mate"},
    {"Lone glove, just the one.", "count 1; missing-mate"},
    {"Three volume history of canals, roan backs.", "count 3"},
    {"Curtains, cotton, two panels. They are faded.", "count 2"},
    {"Bookcase, two panels in the door.", "!count 2"},
    {"Tea towels, days of the week. Only six here, Thursday is missing.", "count 6"},
    {"Oak bookcase. Only two here know it.", "!count 2"},
    {"jug and a basin, white ironstone", "type jug; include basin"},
    {"Mantel clock. Pendulum and key with it.", "include key; include Pendulum"},
    {"Oak wardrobe. The last buyer came with a trailer.", "!include trailer"},
    {"Steam iron. Pressed two shirts with it.", "!include Pressed two shirts; !include two shirts"},
    {"Table lamp, oak base, key with it", "include key; !include oak base"},
    {"Lamp, chimney and spare wick included", "include chimney; include spare wick"},
    {"Trunk with 2 keys. Hasp bent.", "include 2 key"},
    {"teacup and basin, brass lamp", "!include brass lamp"},
    {"child's desk & attached seat, oak top", "type desk; include attached seat; !type seat"},
    {"blackboard compass & protractor, wooden", "type compass; include protractor; !theme compass rose"},
    {"school rulers & set squares, boxwood", "type ruler; include set squares"},
    {"hat & coat stand, bentwood", "type coat stand; !include coat stand"},
    {"salt & pepper pots, pewter", "!type salt; !include pepper pots"},
    {"job lot of rulers, boxwood", "type ruler; !type job"},
    {"brass lamp, a bit dented, a crack in the shade and a missing screw",
     "type lamp; !include crack; !include screw; !include bit"},
    {"oak school desk lift lid, inkwell missing", "type school desk; !type lid"},
    {"hurricane lantern green paint, glass is cracked", "type hurricane lantern; !type paint"},
    {"enamel jug blue rim", "type jug"},
    {"oak desk, a handle is off and a drawer sticks", "!include handle; !include drawer"},
    {"Concertina, 20 button, hexagonal", "!include 20 button"},
    {"lamp and chain, rusty", "!rust chain"}};

// Words that are no picture, no pattern, no stuff and no maker where they stand so.
static const struct notes_case strays[] = {
    {"Hand whisk, quicker than my electric one", "type hand whisk; !style electric"},
    {"Oak chest, heavier than the pine one I had", "material oak; !material pine"},
    {"Gilt spoons, worn through at the tips to the yellow metal", "!material yellow metal; !color yellow"},
    {"Oak stool. Found it in the loft, along with a cricket bat.", "type stool; !theme bat"},
    {"Sheet music. The man who used to come in on Saturdays has stopped.", "!brand Saturdays"},
    {"Teak salad servers, a crack running up the bowl", "!theme running"},
    {"Plate with a hunting scene", "theme hunting scene"},
    {"School wall map, someone drew on the lighthouse", "!theme lighthouse"},
    {"boxwood ruler, leaf brass, one joint loose", "!theme leaf"},
    {"Ship in a bottle. Wax seal on the cork cracked.", "!theme seal; material wax@seal"},
    {"Glass float, green. Seal button on the bottom has a mark.", "!theme seal"},
    {"Brass porthole, one dog bolt seized", "!theme dog"},
    {"Chair, a wedding present", "!theme wedding"},
    {"Compote, marigold luster glass", "color marigold; !theme marigold"},
    {"Pillow, embroidered roses on black velvet", "material velvet"},
    {"Handbag, black patent, brass clasp", "material patent leather"},
    {"Counterpane, pink, double bed size", "size double"},
    {"Sheet set, queen.", "size queen; !theme queen"},
    {"Card table, folding", "!material card"},
    {"Bench. He was six foot three and it held him.", "!width 75 in; !size 75 in"},
    {"Six juice glasses", "material glass"},
    {"Soup plates. They came out each Easter.", "!theme easter; !brand Easter"},
    {"Carving board. Only used for Thanksgiving and New Year's Day.",
     "!brand Year's Day; !brand Thanksgiving"},
    {"Runner with a Christmas Eve scene", "theme christmas eve scene"},
    {"Tripod. She kept it in the den along with a stack of maps.", "!include stack of maps"},
    {"Loom. Comes with a box of bobbins. Those are not included though.", "!include box of bobbins"},
    {"Loom along with two extra heddles", "include 2 extra heddle"},
    {"Fishing reel, alloy. Check works one way.", "!pattern checked"},
    {"Oak clamp, wing nut replaced w/ a modern one", "!style modern"},
    {"Pottery bowl with an iron brown swirl", "color iron brown; !material iron"},
    {"Umbrella stand, copper. Drip tray is a replacement, tin.", "material tin@drip tray; !material tin"},
    {"Cornet, lacquered brass, Tamberlane Student", "brand Tamberlane; model Student"},
    {"Box camera, Corlane Reflexa", "brand Corlane; model Reflexa"},
    {"Satchel. Small tear in the canvas near the strap.", "material canvas"},
    {"Box camera. Leather case, scuff on the leather.", "material leather@case; !material leather"},
    {"3/4 violin in a case", "size 3/4"},
    {"Mop wringer, galvanized", "!material mother of pearl"},
    {"Barograph, oak case with bevelled glass", "technique beveled@glass"},
    {"Ship's lamp, red and clear glass", "color red@glass; color clear@glass"},
    {"Picnic hamper, wicker, 4 plates (melamine)", "material melamine@plates; !material melamine"},
    {"Stool, cork and canvas", "material cork; material canvas; !material cork@canvas"},
    {"Scales w/ brass pans & marble slab", "material brass@pans; material marble@slab; !material brass@slab"},
    {"Fishing reel, horn handle (could be plastic)", "material? horn@handle; !material horn@handle"},
    {"Lace bobbins, bone", "material bone; !material lace"},
    {"Fob seal with a gold coloured mount", "color gold-colored@mount; !color gold@mount"},
    {"silver coloured watch", "color silver-colored; !color silver"},
    {"Cello bow, ivory coloured tip", "color ivory-colored@tip; !color ivory-colored"},
    {"Theodolite, brass, telescope lens clear", "!color clear"},
    {"Theodolite, brass. Tripod not included.", "!shape three footed"},
    {"Croquet set, 6 hoops, 3 balls blue red yellow", "!color blue; !color red"},
    {"Split willow creel", "material split willow"},
    {"Set squares. In a biscuit tin, picture of a lifeboat on the lid",
     "theme lifeboat@lid; !theme lifeboat"},
    {"Linen bag with monogram HB in the corner", "!pattern monogram"},
    {"life ring, painted white", "finish painted; color white; !finish painted white"},
    {"Oars, spruce, from the old boathouse at Wren's Hythe", "!brand Wren's Hythe"},
    {"Sextant, plate in the lid says Corvett Dray, Instrument Makers", "!brand Instrument Makers"},
    {"Owl under a dome, label says High Street", "!brand High Street"},
    {"Lace bobbins, some have names (like 'Love Ann')", "!brand Love Ann"},
    {"Bench. Plaque says 'In memory of R. Ullyet, Groundsman'.", "!brand In; !brand? In; !brand Groundsman"},
    {"Sledge, made by B. Tarling 1950", "!model 1950"},
    {"Glass dome, base foot missing x1", "!model x1"},
    {"Linen sheet? embroidered tablecloth, white", "type tablecloth; !type sheet"},
    {"Right, miner's safety lamp, brass", "type lamp; !type right"},
    {"dictating machine wax cylinder type, oak lid", "!type wax cylinder"},
    {"paper mould, mahogany", "family crafts; !mold"},
    {"Tooled leather tool roll", "technique tooled; material leather"},
    {"Jug, drip glazed, brown", "finish drip glaze; color brown"},
    {"Pine chest, painted up in matt cream paint", "color cream; material pine"},
    {"Iron bench, repainted in gloss black", "color black"},
    {"Oak board, painted in red letters", "!color red letters; type board"},
    {"Board game called Harrow Lane by Quillby", "type board game; name Harrow Lane; brand Quillby"},
    {"Card game called Silver Cove", "type card game; name Silver Cove; !brand Silver Cove"},
    {"Vase. Marked Made in Japan.", "countryOfOrigin Japan"},
    {"Vase, might be made in Japan", "!countryOfOrigin Japan"},
    {"sextant. Case is mahogany", "material mahogany@case; !material mahogany@Case"}};

FACTS(lots)
FACTS(strays)

int main(void) {
    Suite *suite = suite_create("notes: lots");
    TCase *tcase = tcase_create("lots");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, reads_lots);
    tcase_add_test(tcase, reads_strays);
    suite_add_tcase(suite, tcase);
    return support_main(suite);
}
