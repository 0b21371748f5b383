// SPDX-License-Identifier: MIT
// The thing, its family and what is said of it. A case lists what must be in the record, and behind "!" what
// must not be stated there: "type lamp", "type? vase" for a guess, "other lamp base", "family lighting",
// "material brass", "material tin@lid" for a part's.
#include "support_book.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct notes_case heads[] = {
    {"Boiler 18in high", "type boiler; !type high"},
    {"Leather rifle case? no, a leather telescope case, only the case",
     "type telescope case; material leather"},
    {"Telescope case, stiff leather, brown", "type telescope case; material leather; color brown"},
    {"Football, torn leather", "type football; !material leather"},
    {"Satchel, hard leather, black", "type satchel; material leather"},
    {"Lamp, dented brass", "type lamp; material brass"},
    {"Two microscope cases, leather", "type microscope case; material leather; !type microscope"},
    {"Pair of lantern boxes, tin", "type lantern box; !type lantern"},
    {"Enamel coffee pot, white", "type coffee pot; family kitchenware"},
    {"Kerosene heater, dent on one side", "type kerosene heater; family other"},
    {"Looks like a fish kettle, copper, with strainer", "type? fish kettle; material copper"},
    {"this is a canvas and leather satchel", "type satchel; material canvas; material leather; !type canvas"},
    {"Paraffin stove one burner, blue tank", "type paraffin stove; !type burner"},
    {"Dispensary scales in a case", "type dispensary scale"},
    {"Harbor plan on linen", "type harbor plan; material linen"},
    {"Marble washstand top, white", "type washstand top; material marble"},
    {"Gramophone? scratch that, its a music box", "type music box; !type gramophone"},
    {"Draughtsman's tee square, oak", "type draughtsman's tee square"},
    {"Petrol stove 18in high", "type stove"},
    {"Oil on board, a barge, no frame", "type oil on board; family decor; !type frame"},
    {"Candelstick one only, brass", "type candlestick; !brand Candelstick"},
    {"Harmonuim with a book, hooks not included", "type harmonium; !type hook"},
    {"Cricket bat, Tamsworth Colt, oiled", "brand Tamsworth; model Colt"},
    {"Jug, Tessaly Royal Pottery", "brand Tessaly Royal Pottery; !model Royal"},
    {"Sign off the Pellow garage, tin", "type sign; !brand Pellow"},
    {"Bench from the old Berwin mill", "type bench; !brand Berwin"},
    {"upright vac, runs", "family electrical; !type upright"},
    {"Green stand 9 in high", "type stand; color green"},
    {"Green chest 9 in high", "type chest; family furniture"},
    {"Steel can, dented", "type can; material steel"},
    {"Brass can with a dent", "type can"},
    {"Old box with a dent", "type box"},
    {"Box with a dent, radio inside is fine", "type radio"},
    {"Six cork coasters", "type coaster; family kitchenware; material cork"},
    {"Oil drum, dented", "type oil drum; family metalware"},
    {"brass oil lamp with a glass chimney",
     "type oil lamp; family lighting; material brass; material glass@chimney"},
    {"blue velvet evening cape with a silk lining",
     "type cape; family clothing; material velvet; color blue; !type velvet"},
    {"old tin wind up duck, key turns", "type duck; family toys; material tin"},
    {"tin truck, wheels turn", "type truck; family toys; material tin"},
    {"Copper kettle with a wooden handle.", "type kettle; material copper; material wood@handle"},
    {"oak writing desk with six drawers", "type writing desk; family furniture; material oak"},
    {"white stoneware jug", "type jug; family ceramics; material stoneware; color white"},
    {"green glass jug", "type jug; family glassware; material glass; color green"},
    {"Milk glass lamp shade", "material milk glass"},
    {"Leather camera case, strap is good", "type camera case; material leather"},
    {"Canvas tool bag", "type tool bag; material canvas"},
    {"wool army blanket, grey", "type blanket; family linens; material wool; color gray"},
    {"Ship's bell, bronze, no clapper", "material bronze"},
    {"Sea stories by Amory Quelch, blue cloth", "type sea stories; family books; color blue"},
    {"Felt slippers, red, Corvanne in gold inside each one", "color red; !color gold"},
    {"Egg cups, yellow, they want these round Easter time", "color yellow; !shape round; !theme easter"},
    {"Rolling suitcase hard shell green one of the wheels is cracked",
     "type rolling suitcase; style hard shell; !material shell"},
    {"Oak bench. Bring a truck and a friend.", "type bench; !theme truck"},
    {"Hand mixer. Made a cake last week.", "!theme cake"},
    {"Typewriter, every key prints, and the carriage comes back", "!theme carriage"},
    {"Buckle, silver set with garnets", "type buckle; material garnet"},
    {"Clip on lamps, two of them", "type clip on lamp; count 2"},
    {"Lamp base, plaster made to look like bronze",
     "material plaster; finish imitation bronze; !material bronze"},
    {"Satchel, vinyl stamped like crocodile", "material vinyl; finish imitation crocodile"},
    {"Enamel coffee pot, white with a blue rim",
     "type coffee pot; material enamel; color white; color blue@rim"},
    {"Cast iron skillet", "type skillet; family kitchenware; material cast iron"},
    {"Wicker picnic hamper with leather straps",
     "type picnic hamper; material wicker; material leather@straps"},
    {"steel field glasses in a case", "type field glasses; material steel; !type case"},
    {"Pair of brass candlesticks, 8 inches tall", "type candlestick; material brass"},
    {"Brass wall clock runs slow", "type wall clock; family clocks-watches; material brass"},
    {"Wooden school map, roll down type", "!type type"},
    {"stoneware pitcher w/ blue bands", "type pitcher; family ceramics; material stoneware"},
    {"Wind up alarm clock w/ a loud bell", "type alarm clock; family clocks-watches; !type bell"}};

static const struct notes_case roles[] = {
    {"found this lantern in a barn", "type lantern; !type barn"},
    {"Bottom of the vase says nothing at all", "type vase"},
    {"lid for a teapot", "type lid; !type teapot"},
    {"it's a barometer, from a school", "type barometer; !type school"},
    {"Box of wrenches, all rusty", "type wrench; family tools"},
    {"Set of four spoons in a box", "type spoon; !type box"},
    {"This radio looks like the one my uncle had in his kitchen", "type radio; !type kitchen"},
    {"Stool, goes with a table", "type stool; !type table"},
    {"Shelf radio with a cloth front, sits on a table", "type radio; !type table"},
    {"I have a compass in a leather case", "type compass; !type case"},
    {"case of records about thirty", "type record; family media; !type case"},
    {"has a dent, the kettle", "type kettle"},
    {"anchor lamp for a boat", "type anchor lamp; !type boat"},
    {"bought at a sale, this is a hand saw", "type hand saw; family tools; !type sale"},
    {"Alarm bell, red", "type alarm bell"},
    {"Wooden pop crate, 24 bottle, red", "type crate; !type bottle"},
    {"Crib no wait it's a log basket", "type log basket"},
    {"Old guard's whistle", "type guard's whistle"},
    {"Wallpaper brush, worn", "type wallpaper brush; !material wallpaper"},
    {"Another thing: a watering can", "type watering can"}};

static const struct notes_case guesses[] = {
    {"not sure if it's a vase or a lamp base", "type? vase; other lamp base"},
    {"could be a planter or a bucket", "type? planter; other bucket"},
    {"Maybe a churn?", "type? churn"},
    {"I think it is a barometer", "type? barometer"},
    {"whatever you call the thing you hang pots on", "!type thing; !type pot"}};

static const struct notes_case names[] = {
    {"Trivet, two X's on the handle", "!brand X's"},
    {"Banner painted with a beehive and the words INDUSTRY LODGE 1871", "theme beehive; !brand INDUSTRY"},
    {"Tureen, ironstone. Underdish fine.", "!brand Underdish"},
    {"Torwell No. 78 rabbet plane", "brand Torwell; model 78; !name Torwell No"},
    {"Chest. Painted L.T. and 1834 on the front", "!brand L.T. and"},
    {"Plate. Printed in Velmoria.", "!brand Velmoria"},
    {"Etching, titled The Weir, framed", "name Weir; !brand Weir"},
    {"Cup engraved on the back", "type cup; !mark Cup"},
    {"Women's wool coat, Drellimor, size 8", "brand Drellimor; audience women's; !brand Women's"},
    {"Nothing wrong with this lamp", "!brand Nothing"},
    {"Lamp works. Rose unscrews fine.", "!brand Rose"},
    {"Harvex plane, number 4", "brand Harvex"},
    {"Typewriter, Quillard 22 in seafoam green", "brand Quillard; model 22; !size 22 in"},
    {"Plate, 12 in blue and white", "!model 12"},
    {"Lantern, maker's name Cressmoor embossed on the tank", "brand Cressmoor"},
    {"Print, signed \"E. Quill '72\"", "byArtist E. Quill; !material porcupine quill"},
    {"Level, mahogany with brass plates", "material mahogany; material brass@plates"},
    {"Jug with a cork, stoneware", "material stoneware; !material cork"},
    {"Ten padlocks, brass and iron mixed", "material brass; material iron; count 10"},
    {"Rubber stamp rack, oak", "material oak; !material rubber"},
    {"Flagon, pewter, I think pewter anyway", "material? pewter"},
    {"Lantern globe for a No. 2 Harbord lantern, ruby", "!brand Harbord"},
    {"Door lock. Maker's plate: Gill & Overtoun, London Road Works.", "brand Gill & Overtoun"},
    {"Watering can, brass rose", "!theme rose"},
    {"Mop bucket, galvanized", "material galvanized steel; !material mother of pearl"},
    {"Trolley, \"Lowden Jr\"-ish, rusty", "brand? Lowden Jr"},
    {"Bottle. Cork still in it.", "!material cork"},
    {"Barrel, oak staves iron hoops, 50 gal", "material oak@staves; material iron@hoops"},
    {"Stereo viewer, cards are mostly Alps views", "theme Alps; !brand Alps"},
    {"Yarn swift, wooden", "material wood; !material yarn"},
    {"Book press, \"Hargreave Bros. Makers\" in raised letters on the crossbar",
     "brand Hargreave Bros; !name Hargreave Bros"},
    {"Pantry scale, green", "type pantry scale"},
    {"Bathroom scale, \"Helmor\" type. Mat's curled.", "brand? Helmor; !finish matte"},
    {"Gold pan, steel, 16 in", "type gold pan; material steel; !color gold"},
    {"Milking pail, Reg. No. on a brass tag", "!brand Reg"},
    {"Saddle, horn wrap loose. Fleece shot.", "!material fleece"},
    {"Oak library card catalog, 15 drawer", "type library card catalog; family furniture"},
    {"Lamp, brass, leaded panels, 6 of them, one cracked", "!count 6"},
    {"Spoons, 6 of them, pewter", "count 6"},
    {"Mallet, brass bands, one loose", "!theme brass band"},
    {"Side saddle. Tree feels sound.", "!theme tree"},
    {"Saddle bag, floral tooling", "technique tooled; pattern floral"},
    {"Plane by Harvex & Sons", "brand Harvex & Sons"},
    {"Watering can, stamped HARVEX & PIKE on the side", "brand HARVEX & PIKE"},
    {"Wool blanket. Label says Tellavox Mills", "brand Tellavox Mills"},
    {"Enamel colander, couple of chips", "!theme couple"},
    {"School wall map of the Velder Valley by Hobbing & Co", "theme Velder Valley; brand Hobbing & Co"},
    {"Damask cloth, monogram W. Cloth has a rust spot", "!brand W. Cloth"},
    {"Barrel tap, brass. Thread good", "!material thread"},
    {"Gramophone, oak, horn fine", "!material horn"},
    {"Radio made by Tellavox, brown", "brand Tellavox; color brown"},
    {"Hand mixer, Voltrane model 9-B, red", "brand Voltrane; model 9-B; color red"},
    {"Lathe, Tarnquill Mk II. One knob missing", "brand Tarnquill; model Mk II"},
    {"Pump, Tarnquill Super B. Seal leaks", "brand Tarnquill; model Super B"},
    {"Tweed jkt, 42R", "type jacket; material tweed; size 42R"},
    {"Concrete frog, mossy", "type frog; family decor; material concrete"},
    {"Bow frog, ebony", "family parts"},
    {"Block plane, Harvex No. 12, steel", "brand Harvex; model 12; material steel"},
    {"Camera, Prellux 30-C, with a strap", "brand Prellux; model 30-C"},
    {"projector dremmick 300 runs but noisy", "brand dremmick; model 300; type projector"},
    {"Kettle, maybe a Torvane, steel", "brand? Torvane"},
    {"Harmonica, key of G, Breezwick", "brand Breezwick; !brand G"},
    {"Yarn, color is called Marsh Gold, Lindleby wool", "color Marsh Gold; brand Lindleby"},
    {"Plate, pattern is Fennel Lane, Orvendale china", "pattern Fennel Lane; brand Orvendale"},
    {"The Brackenvale pattern on a bowl", "pattern Brackenvale"},
    {"Suitcase, I’ll clean it", "!brand I’ll"},
    {"The BOARD is not warped on this board game", "!brand BOARD; type board game"},
    {"Child's raincoat, yellow", "audience children's; color yellow; !brand Child's"},
    {"mens leather belt, black", "audience men's; material leather; color black; family bags"},
    {"girls bicycle, red", "audience girls'; type bicycle; color red"},
    {"Ladies watch with a steel band", "material steel@band"},
    {"Kids played with it. Rocking horse, oak", "!audience kids'"},
    {"Velvit hat, burgandy, feathr is bent", "material velvet; color burgundy"},
    {"Mahoginy tabel, legs lose, sum scrachs", "type table; material mahogany"},
    {"Gold ring size six and a half", "size 6 1/2"},
    {"Girls dress size twelve, cotton", "size 12"},
    {"Kids chair, wood", "audience kids'; material wood"}};

static const struct notes_case works[] = {
    {"The Salt Lantern, a novel by Orla Wenthrap",
     "name The Salt Lantern; author Orla Wenthrap; type novel; family books"},
    {"Ex library copy of The Peat Cutters by Jem Hollorane",
     "name The Peat Cutters; author Jem Hollorane; !brand Peat; !type library"},
    {"Paperback western, Smoke at Dry Fork by T. Quarrenby",
     "name Smoke at Dry Fork; author T. Quarrenby; family books"},
    {"Vinyl LP, Songs of the Reed Bank by the Corriwick Trio",
     "type LP; family media; name Songs of the Reed Bank; byArtist Corriwick Trio; material vinyl"},
    {"LP, Slate Hour with the Tollowmeads. Plays well.",
     "type LP; family media; name Slate Hour; byArtist Tollowmeads; !brand LP"},
    {"Sheet music, March of the Tin Geese, color cover", "name March of the Tin Geese; !brand March"},
    {"Circus poster, The Velvet Bear, two sheets", "name The Velvet Bear; !brand Velvet Bear"},
    {"Rail poster, Corlen Railways, linen backed", "brand Corlen Railways; !name Corlen Railways"},
    {"Three volumes, Walks in Upper Dorrel by an E. Saxholm, half calf",
     "name Walks in Upper Dorrel; author E. Saxholm; !brand Upper Dorrel"},
    {"School atlas, Tannock Press, 1921", "!name Tannock Press"},
    {"Record player, two speeds, Orvanne", "brand Orvanne; !name Orvanne"},
    {"Cassette deck, gray, Pellmark model TD-9", "brand Pellmark; model TD-9; !name Pellmark"},
    {"home gardening VHS, sealed", "type VHS; family media; !type home"},
    {"Cookbook, Bread for Winter by Ada Penhallick",
     "type cookbook; name Bread for Winter; author Ada Penhallick"}};

static const struct notes_case materials[] = {
    {"Handbag, brown vinyl made to look like ostrich", "material vinyl; !material ostrich"},
    {"Ring with one small blue stone", "!material bluestone"},
    {"Dessert spoons, Lady Corvane pattern", "pattern Lady Corvane"},
    {"Viola, three quarter size", "size 3/4"},
    {"Tea set, figure of a shepherdess on each", "theme shepherdess; !theme shepherd"},
    {"Copper lustre jug with a blue band", "technique copper lustre; !material copper"},
    {"Lazy susan, cherry, turned base", "material cherry wood; !theme cherry"},
    {"Parasol, black lace over cream silk", "material lace; material silk; color cream"},
    {"Fire dogs with steel runners, brass tops", "!theme runner"},
    {"Yoke hewn from maple", "material maple"},
    {"Basket woven of willow", "type basket; material willow"},
    {"Basket, split ash, lidded", "material split ash"},
    {"Bought from an oak dealer, chest", "!material oak"},
    {"Milk bottle. Red lettering PINE RIDGE DAIRY.", "!material pine; !color red"},
    {"Tin trunk, black, initials R.M. on the lid in white", "!color white; color black"},
    {"Bread bin, cream with green letters", "!color green; color cream"},
    {"Box stamped SOLID OAK.", "material oak"},
    {"Mill, dovetailed cherry box with an iron hopper", "material cherry wood; !theme cherry"},
    {"Table, cherry, two drawers", "material cherry wood"},
    {"Plate with a cherry", "theme cherry; !material cherry wood"},
    {"Tea caddy, rosewood with brass stringing round the lid", "material rosewood; family kitchenware"},
    {"Tray, oak with silver plated gallery round the edge", "material oak; !material silver plate"},
    {"Map of the islands on linen, rollers", "material linen"},
    {"Map of the county. Stain on linen at one edge.", "!material linen"},
    {"Brass kettle", "material brass; type kettle"},
    {"Vase made of alabaster", "material alabaster"},
    {"Bowl is pewter", "material pewter; type bowl"},
    {"Bowl, not pewter, steel", "material steel; !material pewter"},
    {"I think the tray is copper", "material? copper"},
    {"Beads, bone or plastic", "material? bone; material? plastic"},
    {"Chair with a cane seat", "material cane@seat"},
    {"the lid is tin, pot is enamel", "material tin@lid"},
    {"Knife with a beech handle", "material beech@handle; type knife"},
    {"Ring stamped 925", "material sterling silver; type ring"},
    {"Bag stamped REAL COWHIDE", "material cowhide"},
    {"Scarf, tag says 100% silk", "material silk"},
    {"Sweater tag says cashmere. I am not going to promise cashmere.", "!material cashmere"},
    {"glass door knob", "type door knob; material glass"},
    {"Porcelain figure of a boy", "type figure; material porcelain; theme boy"},
    {"Coat, mink I'm told", "material? mink; !material mink"},
    {"pressed glass goblets", "technique pressed; material glass; type goblet"},
    {"Cut glass decanter", "type decanter; material glass; technique cut"},
    {"Red plastic funnel", "color red; material plastic; type funnel"},
    {"Old brown bottle, a bubble in the glass", "material glass; color brown; type bottle"},
    {"Wooden crate, comes down to my knee", "material wood; !material down"},
    {"Green enamel mug", "color green; material enamel"},
    {"alloy fishing reel", "material alloy; family sports"}};

static const struct notes_case colors[] = {
    {"cobalt blue vase", "color cobalt blue"},
    {"Vase, blue and white", "color blue and white"},
    {"red and black rug", "color black and red; type rug"},
    {"Kettle in forest green", "color forest green"},
    {"silver spoon", "color silver; !material silver"},
    {"gold tone brooch", "color gold tone; type brooch"},
    {"amber glass bowl", "color amber; material glass"},
    {"lamp, dark brown", "color dark brown"},
    {"Lamp has a black mark on the base", "!color black"},
    {"Bowl with white fuzz on it", "!color white"},
    {"tin with light rust", "!color light"},
    {"Brass lamp with a green shade", "color green@shade; !color green; material brass"},
    {"Clock with a white dial", "color white@dial; !color white"},
    {"its a rug its red", "color red; type rug"},
    {"plate is cream with a gold rim", "color cream; technique gold trim"},
    {"Coat, camel, satin lining", "color camel; material satin@lining"},
    {"Blanket, maybe teal", "color? teal"},
    {"Blanket, sort of pink", "color pink"},
    {"Pot, brown, no lid", "color brown"},
    {"Turquoise radio, works", "color turquoise; type radio"},
    {"creamy white jug", "color creamy white"},
    {"Cupboard, pale blue, two doors.", "color pale blue; type cupboard"},
    {"Balance. Black and brass, two pans.", "color black; material brass"},
    {"Yellow cupboard with two shelves.", "color yellow; type cupboard"},
    {"Handcart, blue paint faded.", "color blue"},
    {"Stool, pine, legs painted green.", "color green@legs; material pine"},
    {"Croquet set, 4 balls (blue, red, black).", "!color red"},
    {"Satchel. Inside is maroon cloth.", "color maroon@inside"},
    {"Cushion, wool, velvet back.", "material wool; material velvet@back"},
    {"Cabinet, pine sides, oak top", "material pine@sides; material oak@top"},
    {"Clock, oak surround, no key.", "material oak@surround"},
    {"Handcart, two wheels. Tyres iron.", "material iron@tyres"},
    {"Boots, brown. Leather stiff and cracked.", "material leather"},
    {"Plate with a fawn on it", "theme fawn; !theme deer"},
    {"Poster, railway, folded", "theme railway"},
    {"Rug, hand knotted", "technique hand knotted"},
    {"Coal scuttle, copper, helmet shape, no shovel.", "shape helmet shaped"},
    {"Tin of buttons, some rusty", "!material tin"},
    {"Jigsaw. Picture is a barge.", "theme barge"}};

static const struct notes_case looks[] = {
    {"Pot, white ironstone with a moulded wheat rim", "color white; pattern wheat@rim; !color wheat@rim"},
    {"Hen dish, milk glass, basket weave base", "pattern basketweave@base"},
    {"Chair, windsor, bow back", "shape bow back; !theme bow"},
    {"Snowshoes, bear paw style", "style bear paw style"},
    {"Creel, french style, willow", "style french style"},
    {"Shaker, hammered finish", "finish hammered; technique hammered"},
    {"Tray with a bright cut border", "technique bright cut"},
    {"Quilt, flying geese pattern", "pattern flying geese"},
    {"Jug, raised ivy leaf pattern", "pattern ivy leaf"},
    {"Quilt, hand stitched", "technique hand stitched"},
    {"Decanter, cut crystal", "technique cut; material crystal"},
    {"Speckled grey stoneware mug", "pattern speckled; color gray; material stoneware"},
    {"Crackle glaze vase", "finish crackle; type vase"},
    {"Dress, yellow gingham", "pattern gingham; color yellow; !material gingham"},
    {"Plaid wool blanket", "pattern plaid; material wool"},
    {"striped cotton apron", "pattern striped; material cotton"},
    {"Hobnail milk glass bowl", "pattern hobnail; material milk glass"},
    {"Hand painted tray", "technique hand painted; type tray"},
    {"hand tinted photograph", "technique hand tinted; type photograph"},
    {"carved wood box", "technique carved; material wood"},
    {"Embroidered tablecloth, round", "technique embroidered; shape round; type tablecloth"},
    {"Hexagonal tin", "shape hexagonal"},
    {"Oval brass frame", "shape oval; material brass; type frame"},
    {"Art deco lamp", "style art deco; type lamp"},
    {"Jar shaped like an owl", "shape owl; type jar"},
    {"Sweater, laid flat it is fine", "!shape flat"},
    {"Cord goes all the way round", "!shape round"},
    {"Rope style links on a chain", "style rope style"},
    {"Schoolhouse wall clock", "style schoolhouse; type wall clock"},
    {"Beaded evening bag", "technique beaded; type evening bag; family bags"},
    {"folding ruler, boxwood", "material boxwood"},
    {"wide leg jeans", "style wide leg; type jeans"},
    {"Felt along the rim, no chips on this bowl", "!material felt"},
    {"Pair of ginger jar lamps", "shape ginger jar; type lamp"},
    {"Rope handled bucket", "type bucket"}};

static const struct notes_case themes[] = {
    {"Doorstop, basket of flowers, cast iron", "theme basket of flowers"},
    {"Basket of eggs, wire", "type basket; !theme basket of eggs"},
    {"Teapot, inside stained with tea", "!theme tea"},
    {"Pair of brass candlesticks, marked with a lion and an anchor", "!theme lion; !theme anchor"},
    {"Brass plaque with a lion", "theme lion"},
    {"Leaf brooch", "theme leaf; type brooch; !material leaf"},
    {"Brooch shaped like a frog", "shape frog"},
    {"rooster plate", "theme rooster; type plate"},
    {"plate with roosters", "theme rooster"},
    {"Tile with a ship on it", "theme ship"},
    {"Postcard, view of a harbor", "theme harbor; type postcard; family paper"},
    {"picture of a mountain", "theme mountain"},
    {"Teapot, roses all over", "theme rose; type teapot"},
    {"bangle with a band of little birds", "theme bird"},
    {"Horse figurine", "type horse figurine"},
    {"Plastic light up pumpkin", "theme pumpkin; material plastic"},
    {"Three noisemakers for Halloween", "theme halloween; !brand Halloween"},
    {"Box from a horse farm", "!theme horse"},
    {"Tray with painted violets", "theme violet"},
    {"Knife handle, wheat ear carved in it", "theme wheat ear"},
    {"Owl bank, cast iron", "theme owl; material cast iron"}};

static const struct notes_case families[] = {
    {"Panel, oak, carved mask", "family decor"},
    {"Jug with a cherry on it", "family ceramics"},
    {"Salt box, wall hanging, pine", "family kitchenware"},
    {"Snuff box, papier mache", "family decor"},
    {"Card table, mahogany", "!material card; material mahogany"},
    {"Hall tree, oak, mirror", "!theme tree; type hall tree"},
    {"Apothecary jar, porcelain", "family ceramics"},
    {"Apothecary jar, clear glass, porcelain lid", "family glassware"},
    {"Copper jug, dented", "family metalware"},
    {"Silver plate jug", "family metalware"},
    {"Copper lustre jug", "family ceramics"},
    {"Jug with a pewter lid", "family ceramics"},
    {"beads knotted on a string with a clasp", "family jewelry"},
    {"Glass canister", "family glassware; type canister"},
    {"Tin canister", "type canister"},
    {"Lemon juicer, green glass", "type juicer; family glassware"},
    {"Pewter tankard", "type tankard; family metalware; material pewter"},
    {"brass bowl", "family metalware; type bowl"},
    {"Wooden spoon", "family kitchenware; type wooden spoon"},
    {"violin bow, hair is out", "type violin bow; family music"},
    {"Drawer knobs, glass", "type drawer knob; family parts"},
    {"Fishing reel", "family sports"},
    {"cordless drill", "family tools; type cordless drill"},
    {"postcard, one cent stamp", "family paper; type postcard"},
    {"Smoothing plane", "type smoothing plane; family tools"},
    {"Dinner plate, ironstone", "type dinner plate; family ceramics; material ironstone"}};

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
    {"jug and a basin, white ironstone", "type jug; include basin"},
    {"Mantel clock. Pendulum and key with it.", "include key; include Pendulum"},
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
    {"Teak salad servers, a crack running up the bowl", "!theme running"},
    {"Plate with a hunting scene", "theme hunting scene"},
    {"School wall map, someone drew on the lighthouse", "!theme lighthouse"},
    {"boxwood ruler, leaf brass, one joint loose", "!theme leaf"},
    {"Ship in a bottle. Wax seal on the cork cracked.", "!theme seal; material wax@seal"},
    {"Glass float, green. Seal button on the bottom has a mark.", "!theme seal"},
    {"Brass porthole, one dog bolt seized", "!theme dog"},
    {"Chair, a wedding present", "!theme wedding"},
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

// Every fact of the record as a line of its own.
static const char *facts_of(struct arena *arena, const struct record *record) {
    struct buf out = buf_start(arena);
    buf_format(&out, "\n");
    if (record->type.value)
        buf_format(&out, "type%s %s\n", record->type.sure == SURE_STATED ? "" : "?", record->type.value);
    for (size_t i = 0; i < record->others.count; i++) buf_format(&out, "other %s\n", record->others.at[i]);
    if (record->family) buf_format(&out, "family %s\n", record->family->rule.id);
    for (size_t i = 0; i < record->attribute_count; i++) {
        const struct value *value = &record->attributes[i];
        buf_format(&out, "%s%s %s%s%s\n", value->name, value->sure == SURE_STATED ? "" : "?", value->value,
                   value->of ? "@" : "", value->of ? value->of : "");
    }
    for (size_t i = 0; i < record->include_count; i++)
        if (record->includes[i].count)
            buf_format(&out, "include %d %s\n", record->includes[i].count, record->includes[i].what);
        else
            buf_format(&out, "include %s\n", record->includes[i].what);
    if (record->count) buf_format(&out, "count %d\n", record->count);
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        buf_format(&out, "%s%s%s\n", flaw->kind->rule.id, flaw->part ? " " : "",
                   flaw->part ? flaw->part : "");
    }
    return out.at;
}

// "type shoe" is also told by "type leather shoe".
static bool holds(struct arena *arena, const char *facts, const char *fact) {
    if (strstr(facts, arena_format(arena, "\n%s\n", fact))) return true;
    if (strncmp(fact, "type ", 5) != 0) return false;
    const char *type = strstr(facts, "\ntype ");
    const char *end = strstr(facts, arena_format(arena, " %s\n", fact + 5));
    return type && end && strchr(type + 1, '\n') == end + strlen(fact) - 4;
}

struct group {
    const struct notes_case *cases;
    size_t count, wrong;
};

static void check_case(struct arena *arena, const struct notes_case *one, struct group *group) {
    const char *facts = facts_of(arena, support_read(arena, one->note));
    char *rest, *wants = arena_string(arena, one->wants);
    for (char *fact = strtok_r(wants, ";", &rest); fact; fact = strtok_r(NULL, ";", &rest)) {
        while (*fact == ' ') fact++;
        bool wanted = *fact != '!';
        if (holds(arena, facts, wanted ? fact : fact + 1) == wanted) continue;
        fprintf(stderr, "  %s\n    wanted: %s\n    got:%s", one->note, fact, facts);
        group->wrong++;
    }
}

static void check_group(struct arena *arena, void *context) {
    struct group *group = context;
    for (size_t i = 0; i < group->count; i++) check_case(arena, &group->cases[i], group);
}

static void read_group(const struct notes_case *cases, size_t count) {
    struct group group = {cases, count, 0};
    struct arena *arena = arena_new(NULL);
    bool fine = arena_try(arena, check_group, &group);
    arena_free(arena);
    ck_assert(fine);
    ck_assert_msg(!group.wrong, "%zu facts of %zu notes were read otherwise", group.wrong, count);
}

#define RUN(name)                                                                                            \
    START_TEST(reads_##name) {                                                                               \
        read_group(name, COUNT(name));                                                                       \
    }                                                                                                        \
    END_TEST
RUN(heads)
RUN(roles)
RUN(guesses)
RUN(names)
RUN(works)
RUN(materials)
RUN(colors)
RUN(looks)
RUN(themes)
RUN(families)
RUN(lots)
RUN(strays)

int main(void) {
    Suite *suite = suite_create("notes: things");
    TCase *tcase = tcase_create("things");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, reads_heads);
    tcase_add_test(tcase, reads_roles);
    tcase_add_test(tcase, reads_guesses);
    tcase_add_test(tcase, reads_names);
    tcase_add_test(tcase, reads_works);
    tcase_add_test(tcase, reads_materials);
    tcase_add_test(tcase, reads_colors);
    tcase_add_test(tcase, reads_looks);
    tcase_add_test(tcase, reads_themes);
    tcase_add_test(tcase, reads_families);
    tcase_add_test(tcase, reads_lots);
    tcase_add_test(tcase, reads_strays);
    suite_add_tcase(suite, tcase);
    return support_main(suite);
}
