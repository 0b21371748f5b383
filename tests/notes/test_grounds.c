// SPDX-License-Identifier: MIT
// What lets a name be a maker's, a mark or a machine that the thing fits, and what leaves it somebody's. The
// sentences are ours; what sellers keep to themselves is common practice, no source.
#include "support_facts.h"

static const struct notes_case makers[] = {
    {"Storm lantern, Torwell, red paint.", "brand Torwell"},
    {"Storm lantern. Torwell & Finch.", "brand Torwell & Finch"},
    {"Storm lantern, red. It is a Torwell 40 with its first burner.", "brand Torwell"},
    {"Storm lantern. Made by Torwell, red paint.", "brand Torwell"},
    {"- Storm lantern, Torwell\n- red paint", "brand Torwell"},
    {"Came off a boat. Storm lantern, Torwell, red paint.", "brand Torwell"},
    {"Storm lantern. Torwell 40, with a spare wick.", "brand Torwell"},
    {"storm lantern torwell 40 my neighbor had it on the barge", "brand torwell"},
};

static const struct notes_case somebody[] = {
    {"Oar. Old Haldrun rowed every morning with it.", "!brand Haldrun; !brand Old Haldrun"},
    {"Oar, the one Perrin Aldous won the cup with.", "!brand Perrin Aldous"},
    {"Enamel pail. She got into the Vellmere school with that.", "!brand Vellmere"},
    {"Enamel pail. Stood in the yard of the dairy at Coombrey, Pellgate.", "!brand Pellgate"},
    {"Stood in the yard of a dairy, Pellgate. Enamel pail, Torwell.", "brand Torwell; !brand Pellgate"},
    {"Sold to me by Miss Orla Penhew, 12 Fennel Steps. Tin trunk.", "!brand Fennel Steps"},
    {"Tin trunk. Knitted bag with it, made by the ladies of Saint Orrin.", "!brand Saint Orrin"},
    {"Slide rule. The book it came in was from Edmer Pask, Esq., Hollowford House.",
     "!brand Hollowford House"},
    {"Was on Orla's piano. China spaniel, Torwell.", "brand Torwell; !brand Orla's"},
    {"Gramophone, Torwell. Came from the tea room at the Blue Heron on the quay.",
     "!color blue; !color blue@Heron"},
    {"The farm it came off, Pellgate, was sold. Pewter plate.", "!brand Pellgate"},
    {"Christening gown, silk. Worn once, in May, by Idony Pask.", "!brand Idony Pask"},
    {"Pair of oars, ash, by Torwell.", "brand Torwell"},
    {"Chess board. The tag says Dunmoor Chess Club.", "!brand Dunmoor Chess Club"},
    {"Rocking chair. Idony, Perrin and little Maud all slept in it.", "!brand Idony"},
    {"Trivet. It is called Old Smoky and this is Wilfra.", "!brand Wilfra"},
    {"Blanket. It was meant for Perrin, but he grew.", "!fits Perrin"},
    {"Bugle. Initials on the bell, P.A., for Perrin Aldous.", "!fits Perrin Aldous; !brand Perrin Aldous"},
    {"Spare burner for a Torwell 40.", "fits Torwell"},
    {"Spare burner for Torwell lanterns.", "fits Torwell"},
    {"Locker key. The tag has the stock number of the Dunmoor mill, KT-118.", "!model KT-118"},
    {"Bench grinder. KT-118 on the plate, Dunmoor.", "mark KT-118"},
};

static const struct notes_case writing[] = {
    {"School desk. Somebody cut PERRIN in the lid with a compass.", "!mark PERRIN; owner-name"},
    {"School desk. The boys burned HALDRUN under the seat with a poker.", "!mark HALDRUN; owner-name"},
    {"Toolbox. The lid is lettered in white-out HUT NINE DUNMOOR.", "!mark HUT NINE DUNMOOR"},
    {"Enamel mug. It says P.A. from Dad 1951 on the base.", "!mark P.A."},
    {"Enamel mug, stamped PROPERTY OF P. ALDOUS on the base.", "!mark PROPERTY OF P. ALDOUS"},
    {"Tea tin. The lid has \"P. Aldous his tea\" scratched inside.", "!mark P. Aldous his tea"},
    {"Bowler hat. Punched with the initials P.A. inside.", "monogram"},
    {"Bowler hat. A pawn stub, number 4117, was under the band.", "!mark 4117"},
    {"Mallet stamped for my own grandfather, H. PASK.", "!mark H. PASK"},
    {"Pewter mug. Engraved on the front: Idony Maud, 9 May 1931.", "!mark Idony Maud"},
    {"Tin trunk. The tag says Pask, Flat 3, Orrin House.", "!mark Pask, Flat 3, Orrin House"},
    {"Railway share, issued to Mr. P. Aldous, number 004418.", "!mark 004418"},
    {"School desk. Names cut all over the lid, the biggest is PERRIN ALDOUS.", "!mark PERRIN ALDOUS"},
    {"Mallet stamped by two owners: P. ALDOUS, E. PASK.", "!mark P. ALDOUS; !mark E. PASK"},
    {"Brass brooch, round, Torwell on the back in script.", "mark Torwell"},
    {"Brass buckles, Torwell on the backs of the bars. They match.", "mark Torwell"},
    {"Maple mallet, Torwell burned into the head.", "mark Torwell; brand Torwell"},
    {"Oilskin. Over the pocket the name Perrin, that was my uncle.", "!mark Perrin; !brand Perrin"},
    {"Pewter mug stamped PEWTER on the base.", "mark PEWTER; !brand PEWTER"},
    {"Bucket. Made in Haldenmark stamped beneath.", "!brand Made in Haldenmark"},
    {"Enamel mug, \"Souvenir of Lake Orrin\" on the side.", "mark Souvenir of Lake Orrin"},
    {"Boat hook. Signed Torwell in pencil under the grip.", "mark Torwell"},
    {"Sugar tin stamped TORWELL & SONS on the base.", "mark TORWELL & SONS"},
};

FACTS(makers)
FACTS(somebody)
FACTS(writing)

int main(void) {
    Suite *suite = suite_create("notes: grounds");
    TCase *tcase = tcase_create("grounds");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, reads_makers);
    tcase_add_test(tcase, reads_somebody);
    tcase_add_test(tcase, reads_writing);
    suite_add_tcase(suite, tcase);
    return support_main(suite);
}
