// SPDX-License-Identifier: MIT
// What is pictured on a thing, its stuffs and colors, and labelled sizes. The sentences are ours; the facts
// are common practice, no source.
#include "support_facts.h"

static const struct notes_case pictured[] = {
    {"Six tumblers, clear with lemon wedges printed on them.", "theme lemon wedge; !color lemon"},
    {"Ice bucket, etched bulrushes, two handles.", "theme bulrush"},
    {"Tea caddy, little herons molded around the lid.", "theme heron"},
    {"Square scarf, oar blades on a green ground.", "theme oar blade; color green"},
    {"Tray cloth, white, with kingcups in the weave.", "theme kingcup"},
    {"Bench, painted black with stenciled punts on the rail.", "theme punt; !mark punts"},
    {"Biscuit barrel, small acorns carved on the lid.", "theme acorn; !theme oak leaf"},
    {"Card game about smugglers, in its box.", "theme smuggler"},
    {"Enamel mug, name printed on the base.", "!theme name"},
    {"Map case, lines printed on the flap.", "!theme line"},
    {"Stool, dents on a black seat.", "!theme dent"},
    {"Six tumblers with oranges and green leaves printed on them.",
     "theme orange; theme green leaf; !color orange@leaves"},
    {"Vase with palm leaves on it.", "theme palm leaf; !material palm leaf"},
    {"Basket, palm leaf.", "material palm leaf"},
    {"Rug in oranges and browns.", "!theme orange"},
    {"Overalls, blue hickory stripe.", "pattern hickory stripe; !material hickory"},
    {"County history, blue cloth.", "type county history; family books"},
    {"Two volume history of ferries, brown cloth.", "type history book; family books; material cloth"},
    {"Brown cloth, history unknown.", "!family books"},
    {"Cloth bound poetry, Songs of the Otter by Wilma Trask.", "type poetry book; name Songs of the Otter"},
    {"Card game, Newt and Heron, 40 cards.", "name Newt and Heron; !brand Newt and Heron"},
    {"Board game, Race for the Mill, by Corvane.", "name Race for the Mill; brand Corvane"},
    {"Board game, Hobley Toys, no dice.", "brand Hobley Toys; !name Hobley Toys"},
    {"Field guide, Snails of the Fen by Wilma Trask.", "name Snails of the Fen; author Wilma Trask"},
    {"Game table, Oak and Ash, folding.", "!name Oak and Ash"},
    {"Sheet music, Ferry over the Fen, 1911.", "name Ferry over the Fen"},
    {"Earrings, plastic daisies with a yellow middle.", "!yellowing"},
    {"Radio, screws in the back.", "!theme screw"},
    {"Etching of a ferry, signed Wilma Trask in the plate.", "byArtist Wilma Trask; !brand Wilma Trask"},
    {"Regatta poster, folded once.", "!theme folded"},
    {"Ferry playset, tin, no cars.", "theme ferry"},
    {"Otter bookends, bronze.", "theme otter"},
    {"Goat head bookends, resin.", "theme goat; type bookends"},
    {"Owl weathervane, copper.", "theme owl"},
    {"Fish platter, white.", "!theme fish"},
    {"Rose bowl, amber glass.", "!theme rose"},
    {"Trivet, hen shape, iron.", "theme hen; shape hen shaped"},
    {"Griddle, heart shaped.", "!theme heart"},
    {"Bulb pot with fern shapes pressed in the side.", "theme fern; !shape fern shaped"},
    {"Puzzle, 60 pieces, map of a fjord.", "theme fjord"},
    {"Photo album, 12 snapshots of a canal family.", "theme canal family"},
    {"Snapshot of a boy with a penny farthing bicycle.", "theme boy; theme penny farthing bicycle"},
    {"Neckerchief, green with tiny yellow dots.", "pattern dotted; color yellow; color green"},
    {"Lamp base in a pewter colored finish.", "finish pewter colored; !material pewter"},
    {"Fair isle bobble hat.", "pattern fair isle; !type isle bobble hat"},
    {"Strand of jade beads, screw clasp.", "type bead necklace; family jewelry"},
    {"Deck of poker size cards, a hound on the backs.", "type playing cards; size poker; !theme poker"},
    {"String of lanterns, paper.", "!family jewelry"},
};

static const struct notes_case stuffs[] = {
    {"Bud vase, matte teal glaze.", "color teal; finish matte"},
    {"Churn, salt glazed, two handles.", "finish salt glaze; !technique salt glazed"},
    {"Cherub plaque, white bisque.", "material bisque; !color bisque"},
    {"Muff, knit, oatmeal.", "technique knitted; !material knit"},
    {"Toy crane, pressed steel, orange.", "material steel; color orange"},
    {"Wind up tram, black cast metal.", "color black; material metal"},
    {"Coin wallet, trifold, tan.", "style trifold"},
    {"Blanket chest, waterfall front.", "style waterfall front; !theme waterfall"},
    {"Bread board, maple strips.", "material maple"},
    {"Sawyer's chess set, boxwood men.", "material boxwood"},
    {"Pin, STER stamped on the catch.", "material sterling silver@catch"},
    {"Skipping rope, ster.", "!material sterling silver"},
    {"Note cards, wood engraving of a barge on the front.", "technique wood engraving; theme barge"},
    {"Wood box, engraving on the lid.", "!technique wood engraving"},
    {"Tole tray with painted tulips.", "technique painted; theme tulip"},
    {"Cloth bound ledger.", "material cloth"},
    {"Toaster with a wheat design on the side.", "pattern wheat; !color wheat"},
    {"Coffee pot, blue speckled enamel.", "color blue; pattern speckled; material enamel"},
    {"Raincoat, stone, with a belt.", "color stone; !material stone"},
    {"Garden trough, stone.", "material stone"},
    {"Cherry drop leaf table.", "material cherry wood; !theme cherry"},
    {"Jug painted with a cherry.", "!material cherry wood"},
    {"Mirror in a gilded wood frame.", "finish gilded@frame; material wood@frame"},
    {"Lamp with a frosted glass shade.", "finish frosted@shade; material glass@shade"},
    {"Standard lamp, brushed steel.", "material brushed steel"},
    {"Blazer, navy wool mix.", "material wool blend"},
    {"Border fork, ash shaft.", "type border fork; !pattern border"},
    {"Turkey platter, oval.", "!family holiday"},
    {"Clarinet, wood. It rained on the march, but we had plastic ones for that.", "!material plastic"},
    {"Canvas bag, rust. It is lovely with navy.", "!color navy blue"},
    {"Pine chest. The wooden pulls were swapped for brass ones.", "!material brass"},
    {"Stock pot, blue. Big enough for a dozen ears of corn.", "!theme corn; color blue"},
    {"Six cups, bone china. Gold is good on all of them.", "!color gold"},
    {"Walking stick. My uncle lost a race with a goat on it.", "!theme goat"},
    {"Maple roller with red painted handles, 17 inches long.", "color red@handles; !mark 17"},
    {"Needlepoint pillow of a hen.", "family linens; theme hen"},
    {"Strawberry pot, turquoise glaze.", "color turquoise; finish turquoise glaze"},
    {"Strawberry pot, cobalt blue glaze.", "color cobalt blue; !color blue"},
    {"Bifold card holder, oxblood.", "style bifold; !brand Bifold"},
    {"Work lamp, gooseneck, green.", "style gooseneck; !shape gooseneck"},
    {"Settle, oak, lift lid.", "style lift lid"},
    {"Wardrobe, waterfall front.", "style waterfall front; !theme waterfall"},
    {"Kilt, pleated, gray.", "style pleated"},
};

static const struct notes_case sizes[] = {
    {"Work boots, 11 wide, brown.", "size 11 wide"},
    {"Plank, 11 wide.", "!size 11 wide"},
    {"Snowsuit, 18-24 months, yellow.", "size 18-24 months"},
    {"Clock, ran 18-24 months.", "!size 18-24 months"},
    {"Romper, green, 3T, hardly worn.", "size 3T"},
    {"Toddler coat, 4T, navy.", "size 4T"},
    {"Anvil, lifts 3T.", "!size 3T"},
    {"Drill jacket, gray, L. Both cuffs good.", "size L"},
    {"Waders, green, 9 D. Straps good.", "size 9 D; !mark D. Straps"},
    {"Rain cape 5T, red.", "size 5T"},
    {"Etching by P. Orrin, L. Harrow lettered it.", "!size L"},
    {"Crate, pine, 9 D 14 W 6 H.", "!size 9 D"},
    {"Tweed coat, size 16, fits more like a 14.", "size 16; !size 14"},
    {"Work trousers, tag says 34 x 30.", "size 34 x 30; !mark 34 x 30"},
    {"Boys slicker, yellow, 5T, a hood.", "size 5T"},
    {"Leather vest. XL on the tag.", "size XL; !mark XL"},
    {"Fedora, brown, 7 1/4, lined.", "size 7 1/4"},
    {"Bowl, brown, 7 1/4, lined.", "!size 7 1/4"},
    {"Picture, label says 34 x 30.", "!size 34 x 30"},
};

FACTS(pictured)
FACTS(stuffs)
FACTS(sizes)

int main(void) {
    Suite *suite = suite_create("notes: looks");
    TCase *tcase = tcase_create("looks");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, reads_pictured);
    tcase_add_test(tcase, reads_stuffs);
    tcase_add_test(tcase, reads_sizes);
    suite_add_tcase(suite, tcase);
    return support_main(suite);
}
