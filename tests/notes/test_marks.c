// SPDX-License-Identifier: MIT
// What is written on a thing, letter by letter, and where.
#include "support.h"

static const char *tell(const struct note *note) {
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->record->mark_count; i++) {
        const struct mark *mark = &note->record->marks[i];
        buf_format(&out, "%s%s", out.n ? "; " : "", mark->text);
        if (mark->where) buf_format(&out, " @ %s", mark->where);
    }
    return out.at;
}

// A maker's name where the seller read it is a mark too.
static const struct notes_case makers[] = {
    {"Nest of tables, Fjordal 320 on the paper label under each.", "Fjordal 320 @ paper label"},
    {"Earrings, Marvelle on both clips, green.", "Marvelle @ clips"},
    {"Tiles, Harrowby & Co. on the backs.", "Harrowby & Co @ backs"},
    {"Kettle from Torwell, black.", ""},
    {"Wallet, genuine leather stamped inside, tan.", "genuine leather"},
    {"Napkin ring, sterling marked on the rim, 9 beads.", "sterling"},
    {"Napkin ring, sterling on the hinge, plain.", "sterling"},
    {"Sheath, genuine leather, plain.", ""},
    {"Christening mug, tin, inscribed Osric Tarle Born 9 March 1908.", ""},
    {"Tin mug. Engraved Osric on the handle.", ""},
    {"Biscuit tin. Inside the lid it says Tarle, Christmas 1914.", ""},
    {"Field glasses, engraved TORWELL on the bridge.", "TORWELL @ bridge"},
    {"Camp blanket. A tape says TARLE.", ""},
    {"School desk, oak. 'OSRIC + TARLE' carved in the lid.", ""},
    {"Hand saw. Stamped with the owner, E. TARLE, in three spots.", ""},
    {"Lens cap, 3-4 on the scale of use.", ""},
    {"Pitcher, Harkwell on the base, 9 in high.", "Harkwell @ base"},
    {"Drill press made by Ironmoor according to the badge.", "Ironmoor @ badge"},
    {"Chisel by Orrin & Dunn (stamped on the tang).", "Orrin & Dunn @ tang"},
    {"Satchel made by Corvane Saddlery, stamped inside the flap.", "Corvane Saddlery @ inside the flap"},
    {"Lamp by Velloway (label under base).", "Velloway @ under base"},
    {"Saw, Brightwell, etched on the blade.", "Brightwell @ blade"},
    {"Bowl by Harkwell, on the rim is a chip.", ""},
    {"Bowl by Harkwell, label missing.", ""},
    {"Desk lock, brass. Corvin stamped.", "Corvin"},
    {"Saddle by Orrin & Co (stamped on the fender).", "Orrin & Co @ fender"},
    {"Kettle, \"Cressent Ware\" sticker still on bottom.", "Cressent Ware @ bottom"},
    {"Crate. Lock plate reads Eagle Lock Wks.", "Eagle Lock Wks @ plate"},
    {"Churn, Larkmoor, with a lid.", ""},
    {"Sugar tongs, Lornavale stamped small underneath.", "Lornavale @ underneath"},
    {"Garden fork, Penderlake stamped by the socket.", "Penderlake @ by the socket"},
    {"Goblets, Estramere etched very small on the foot of each.", "Estramere @ foot"},
    {"Sugar tongs, Tollowdale on the back of both.", "Tollowdale @ back"},
    {"Vase, Marrowby, painted in blue by the artist.", ""},
    {"Plate, Hollins, green underneath.", ""},
};

static void read_names_too(struct note *note) {
    read_writing(note);
    read_names(note);
}

static const struct notes_case verbs[] = {
    {"marked Orrindel", "Orrindel"},
    {"Harmonium, oak case with carved panels, 11 stops.", ""},
    {"Pencil box. Initials R.T. cut in the bottom.", ""},
    {"Spoon. Engraved with initials RJM.", "RJM"},
    {"Panel. Worm in the back, says treated.", ""},
    {"Bread tin, says oven safe on it", "oven safe"},
    {"Doorstop. Back has 1268 cast in it.", "1268 @ back"},
    {"Rod. Signed on the butt in ink Hexwell Rod Works.", "Hexwell Rod Works @ butt"},
    {"Jug marked Orrindel Base cracked", "Orrindel"},
    {"Jar. Made in Velmoria on the base.", "Made in Velmoria @ base"},
    {"Jar. Made in Velmoria by hand.", ""},
    {"Mold. Number 4412 stamped low down.", "4412"},
    {"Hammer with 44 and an arrow stamped on the side.", "44 @ side"},
    {"Field glasses, top plate engraved 6 x 30.", "6 x 30 @ plate"},
    {"Wrench, marked ORRINDEL 3/8 - 7/16.", "ORRINDEL 3/8 - 7/16"},
    {"Pail with a raised 12 on the base.", "12 @ base"},
    {"Sign \"NO FISHING\" 18 x 6, rusty.", "NO FISHING"},
    {"Clock. Dial with Orrindel printed on it.", "Orrindel"},
    {"Padlock, stamped ORRINDEL with a number 6 under it.", "ORRINDEL; 6"},
    {"Barometer. ORRINDEL & DAW, KELDER on dial", "ORRINDEL & DAW, KELDER @ dial"},
    {"Wristwatch. Orrindel on the dial, 21 JEWELS under it.", "21 JEWELS @ dial"},
    {"Anchor. 12 lb stamped on the side.", "12 lb @ side"},
    {"Kettle, a number four punched on the lid.", "four @ lid"},
    {"Jack, embossed Orrindel 2 ton.", "Orrindel 2 ton"},
    {"Sail. Number 27 sewn on both sides.", "27"},
    {"Hammer head. 3 and a broad arrow on one side.", "3 @ one side"},
    {"Set of stencils, letters A to Z.", ""},
    {"Anchor. 12 lb chain on the side.", ""},
    {"Jar, a 7 pressed into the clay.", "7"},
    {"Bowl, mark on the base is a Q in a diamond.", "Q @ base"},
    {"Plate, printed mark on the back: anchor and Orrindel.", "Orrindel"},
    {"Clock, name on the dial Orrindel.", "Orrindel @ dial"},
    {"Vase, etched signature on the base, M. Orrindel.", "M. Orrindel @ base"},
    {"Anvil, weight marks 0 3 21 on the side.", "0 3 21 @ side"},
    {"Chisel, owner's initials on the handle, blade stamped Orrindel.", "Orrindel @ blade"},
    {"Jug with a lid across the shelf from Orrindel.", ""},
    {"Lamp with Harry on the base.", ""},
    {"Bottle, stamped low on the side 12.", "12 @ side"},
    {"Rug. Signed in one corner with A. P. I think.", "A. P @ one corner"},
    {"Yoke carved with 1871 near the ring.", "1871 @ near the ring"},
    {"Scale. Face engraved TO WEIGH 25 LBS.", "TO WEIGH 25 LBS @ face"},
    {"Crock, with a big 5 in cobalt on the front.", "5"},
    {"Crock, 5 in blue bowl inside.", ""},
    {"Jug, number 2 in a circle on the base.", "2"},
    {"Plumb bob. A number 3 punched in the top.", "3 @ top"},
    {"Sail, number 27 sewn on both sides.", "27"},
    {"Scale. Tolland & Co on the case.", "Tolland & Co @ case"},
    {"Barometer. HERN & DAW, KELDER on dial.", "HERN & DAW, KELDER @ dial"},
    {"Chest. Rust on the hinges. Worm on the legs.", ""},
    {"Etching, signed A. Lovell.", "A. Lovell"},
    {"Churn embossed with a cow in a circle and 40.", "40"},
    {"Opera glasses. Engraved on the eyepiece rim TORWELL.", "TORWELL @ eyepiece rim"},
    {"Sling, stamped under the keeper 1943.", "1943 @ keeper"},
    {"Bracket. Stamped on both sides", ""},
    {"Brace. Stamped WRENDALE TOOL and under it 10 IN.", "WRENDALE TOOL; 10 IN"},
    {"Sampler. Embroidered at the bottom 1861.", "1861 @ bottom"},
    {"Crate stenciled with Dunnick Bros. Seed Co. on the ends.", "Dunnick Bros. Seed Co"},
    {"Trunk. Lettered H.G.W. on the lid.", "H.G.W. @ lid"},
    {"Crate, painted FENDRAY FRUIT in red.", "FENDRAY FRUIT"},
    {"Milk churn painted HOLLOWDENE in white.", "HOLLOWDENE"},
    {"Wall clock, oak. On the dial: HALLIWICK & SONS.", "HALLIWICK & SONS @ dial"},
    {"Gauge, hand bent. DUNCASTER VALVE CO.", "DUNCASTER VALVE CO"},
    {"Enamel sign, NO CYCLING, blue", "NO CYCLING"},
    {"Enamel sign, 24 by 18, blue", ""},
    {"Can. HAWSCO in a circle on the side.", "HAWSCO @ side"},
    {"Watch engraved on the back.", ""},
    {"Marked Orrindel on the base.", "Orrindel @ base"},
    {"marked Orrindel 41", "Orrindel 41"},
    {"marked on the base Orrindel", "Orrindel @ base"},
    {"marked: Orrindel", "Orrindel"},
    {"stamped 925", "925"},
    {"stamped 925 on the clasp", "925 @ clasp"},
    {"stamped B-112 and a tiny anchor", "B-112"},
    {"stamped Nibsworth 14 on the side", "Nibsworth 14 @ side"},
    {"stamped REAL COWHIDE inside the lid", "REAL COWHIDE @ inside the lid"},
    {"stamped underneath Orrindel", "Orrindel @ underneath"},
    {"signed Ostrel on the back", "Ostrel @ back"},
    {"signed lower right G. Thornquist", "G. Thornquist @ lower right"},
    {"engraved Quorrel & Dunn", "Quorrel & Dunn"},
    {"engraved date 1931, dented", "1931"},
    {"engraved Xmas 1931", "Xmas 1931"},
    {"embossed BALM & TAR down the side", "BALM & TAR @ side"},
    {"dated 1952", "1952"},
    {"dated 1952 on the base", "1952 @ base"},
    {"marked Japan", "Japan"},
    {"marked Made in Portugal", "Made in Portugal"},
    {"hallmarked 375", "375"},
    {"inscribed To the Ferry Crew", "To the Ferry Crew"},
    {"backstamped Orrindel", "Orrindel"},
    {"marked \"No. 5\" on the lid", "No. 5 @ lid"},
    {"marked \xE2\x80\x9CKR-7 \xC2\xBD\xE2\x80\x9D underneath", "KR-7 \xC2\xBD @ underneath"},
    {"stamped EPNS, handle wiggles", "EPNS"},
    {"stamped sterling", "sterling"},
    {"marked with the number 316", "316"},
    {"signed only", ""},
};

static const struct notes_case says[] = {
    {"says Orrindel on the bottom", "Orrindel @ bottom"},
    {"Says Ostry Water on the front, cork gone", "Ostry Water @ front"},
    {"back says P-218", "P-218 @ back"},
    {"the label reads QUAVERLY PRINTS VAT DYED.", "QUAVERLY PRINTS VAT DYED @ label"},
    {"label says 110 V 60 CYCLES TYPE DK-9.", "110 V 60 CYCLES TYPE DK-9 @ label"},
    {"Bottom of the crock says Brellin est. 1890", "Brellin est. 1890 @ bottom"},
    {"tag says 100% linen made in Portugal", "100% linen made in Portugal @ tag"},
    {"says dishwasher safe", "dishwasher safe"},
    {"says genuine cowhide inside", "genuine cowhide @ inside"},
    {"box says Cobrel", "Cobrel @ box"},
    {"no name on it but the box says Cobrel", "Cobrel @ box"},
    {"it says 404 on the back", "404 @ back"},
    {"plate says Corvett Dray, Instrument Makers, no. 4412",
     "Corvett Dray, Instrument Makers, no. 4412 @ plate"},
    {"says Corvett Dray, rust on the rim", "Corvett Dray"},
    {"label underneath 'Made by A.W. Pell, Saltcote 1931'", "Made by A.W. Pell, Saltcote 1931 @ label"},
    {"plate says Not to exceed the rate", "Not to exceed the rate @ plate"},
    {"impressed with a brewery name HOLT & DANBY, neck chipped", "HOLT & DANBY"},
    {"Ladies watch, 9ct on the case back", "9ct @ case back"},
    {"caseback reads STAINLESS STEEL 4401-B", "STAINLESS STEEL 4401-B @ caseback"},
    {"label on back says oil on board", "oil on board @ label"},
    {"tin says HARVEST SUPPER 1958", "HARVEST SUPPER 1958 @ tin"},
    {"says made in japan", "made in japan"},
    {"badge says Made in Italy, pretty", "Made in Italy @ badge"},
    {"the sticker on the shell reads MADE 05/2012 and then something", "MADE 05/2012 @ sticker"},
    {"says \"Ferry Boat Co\" on the plate", "Ferry Boat Co @ plate"},
    {"it says so", ""},
    {"my sister says dog", ""},
    {"says the lady", ""},
    {"wife says list it at 45", ""},
    {"the scale says 9 pounds", ""},
    {"everyone says it is old", ""},
    {"he says it works", ""},
    {"says it all", ""},
    {"tag says medium", ""},
    {"label says 40 inch chest", ""},
    {"bag label says ten.", ""},
    {"The list says 14 things", ""},
};

static const struct notes_case nouns[] = {
    {"Plane. Serial no. KR-9.", "KR-9"},
    {"Radio, serial number 4417, hums", "4417"},
    {"Lathe. Ser. no. K 218 on the bed.", "K 218 @ bed"},
    {"Jug. There's a number, 4417, under it.", "4417"},
    {"Lamp, has a paper label, A4417/2.", "A4417/2"},
    {"Clock. Maker's plate CB-12.", "CB-12"},
    {"Clock. Stamp reads 4417.", "4417"},
    {"Lamp, label, 40 watts.", ""},
    {"number 316 on back", "316 @ back"},
    {"Number 4417 and the letters BQ in a circle underneath", "4417; BQ"},
    {"No. 5 on the base", "No. 5 @ base"},
    {"no. 7 stamped on the lid", "7 @ lid"},
    {"the letters BQ underneath", "BQ @ underneath"},
    {"a crown over the word ELDRITHE", "ELDRITHE"},
    {"initials RJM engraved", "RJM"},
    {"number 10 skillet", ""},
    {"No. 60 plane", ""},
    {"model number 316 on back", ""},
    {"serial number 8812 on the base", "8812 @ base"},
    {"phone number 555 on the label", ""},
    {"no. lid is fine", ""},
    {"no chips on the base", ""},
};

static const struct notes_case runs[] = {
    {"Oak box. Hobbinfold on the label", "Hobbinfold @ label"},
    {"Hobbing stamped on the belly", "Hobbing @ belly"},
    {"Bench vise, Hobbing cast into the crank wheel", "Hobbing @ crank wheel"},
    {"pewter tankard, Dunmarl stamped underneath", "Dunmarl @ underneath"},
    {"boots, Solven is printed in the insole", "Solven @ insole"},
    {"2108 pressed into the base", "2108 @ base"},
    {"reel, MK II on the back plate", "MK II @ back plate"},
    {"PAT. APR 4 1871 on the arm", "PAT. APR 4 1871 @ arm"},
    {"INSPECT BY 06/2009 on the flap", "INSPECT BY 06/2009 @ flap"},
    {"Sizes stamped on the handles", ""},
    {"Paint on the handle", ""},
    {"Chip on the base", ""},
    {"AM/FM radio", ""},
    {"BOX lid is crushed", ""},
    {"banjo, Calvarr on the label inside", "Calvarr @ label inside"},
    {"strip of tablets EXP 03/1987", "EXP 03/1987"},
};

static const struct notes_case others[] = {
    {"Flat iron, has a 5 on the top.", "5 @ top"},
    {"Meat mallet with an 11 under the head.", "11 @ under the head"},
    {"Salt box with a small K in a diamond on the base.", "K @ base"},
    {"There is a 2 on the lid and a 3 on the base.", "2 @ lid; 3 @ base"},
    {"patent 1913", "patent 1913"},
    {"pat pending", "pat pending"},
    {"pat. pending on the frame", "pat. pending @ frame"},
    {"copyright 1978 inside", "copyright 1978 @ inside"},
    {"reg des 48812", "reg des 48812"},
    {"1/250 in pencil under the picture", "1/250"},
    {"2/3/64 on the back", "2/3/64 @ back"},
    {"postmarked Aug 3 1911", "Aug 3 1911 @ postmark"},
    {"1911 postmark", "1911 @ postmark"},
    {"\"Mill Bank\" stamped on the lid", "Mill Bank @ lid"},
    {"\"Kitty 1968\" in biro on the back", ""},
    {"\"Wendel\" is spelled across the cuff in glue", ""},
};

// A sentence that speaks of writing, and capitals, names and numbers in it that no closer reader took.
static const struct notes_case spoken_of[] = {
    {"Pulley. Cast on one cheek: PAT. 1889, on the other TALLOW FORGE No. 8.",
     "PAT. 1889; TALLOW FORGE No. 8"},
    {"Bench. Has TORWELL burnt in along the edge.", "TORWELL"},
    {"Blanket. A woven label sewn in the corner VALLIN MILLS.", "VALLIN MILLS @ corner"},
    {"Basin. Under the glaze is TORWELL in an oval.", "TORWELL"},
    {"Jar. On one side TORWELL, on the other nothing.", "TORWELL @ one side"},
    {"Oak box. Brand burned into the lid: Torwell & Dace.", "Torwell & Dace @ lid"},
    {"Trivet. Foil sticker No. 12.", "No. 12"},
    {"Iron dogs. Numbered 204 on the back of one and 205 on the other.", "204 @ back; 205"},
    {"Chairs numbered 1 to 6 underneath.", ""},
    {"Mincer. It says TORWELL in raised letters and on the handle 10.", "TORWELL; 10 @ handle"},
    {"Cabinet. A paper label gives the number 3318-B. Bottom drawer sticks.", "3318-B"},
    {"Rug. Paper label stapled to the corner, number 20-4418, and a price.", "20-4418"},
    {"Forks marked with a lion, an anchor and the letter f.", "f"},
    {"Letter H is missing from the printing set.", ""},
    {"Crook. Brass collar has ALLEN SHOW 1928 on it.", "ALLEN SHOW 1928"},
    {"Tee square stamped HALDEN & CRAYE and a smaller mark N.", "HALDEN & CRAYE; N"},
    {"Shovel. Blade has NO RUST on it, label gone.", ""},
    {"Clock. Serial stamped on the back plate, 22817.", "22817 @ back plate"},
    {"Bell pull, worked with the date 1869 and letters M E S.", "1869; M E S"},
    {"Chair. The date is about 1900.", ""},
    {"Dial has TORWELL LARCH in an arc over a crown.", "TORWELL LARCH"},
    {"Rods, each stamped near the end, Rd. No. 88214.", "Rd. No. 88214 @ near the end"},
    {"Lantern. Badge reads UNDER WAY and a smaller one, No 9123.", "UNDER WAY @ badge; No 9123"},
    {"Sign, enamel, \"WAY OUT\" 24 by 6 in.", "WAY OUT"},
    {"Clog, sole says TORWELL 2 in blue ink.", "TORWELL 2 @ sole"},
    {"Purse. Satin label inside reads SEWN BY HAND, OSTREL.", "SEWN BY HAND, OSTREL @ inside"},
    {"Sledge. A runner has HALVIK TOYS burned in it.", "HALVIK TOYS"},
    {"Doll. Embroidered on each foot is Torwell 1941.", "Torwell 1941 @ each foot"},
    {"Radios, two. Nameplates read VULMER JR and OSTREL 6.", "VULMER JR; OSTREL 6"},
    {"Watches, three. Dials say VULMER, VULMER, OSTREL and one is blank.", "VULMER @ dials; OSTREL @ dials"},
    {"Iron, VULMER K-7 plate on the heel.", "VULMER K-7 @ heel"},
    {"Boots. Inside stamped TORWELL 7 B. Soles worn.", "TORWELL 7 B @ inside"},
    {"Wrench. Forged VULMER ALLOY on the shank.", "VULMER ALLOY"},
    {"Forged steel hook, black.", ""},
    {"Print. Photographer's name is printed on the mount, A. Torwell, Quill Street.",
     "A. Torwell, Quill Street @ mount"},
    {"Ration book. Printed RATION BOOK FOUR.", "RATION BOOK FOUR"},
    {"Score, stamped PROPERTY OF TORWELL CHOIR inside.", "PROPERTY OF TORWELL CHOIR @ inside"},
    {"Rugs. Two have OSTREL MILLS labels.", "OSTREL MILLS"},
    {"Hat. Lining printed in gold OSTREL'S, QUILL STREET.", "OSTREL'S, QUILL STREET @ lining"},
    {"Carboy. Moulded in the shoulder \"PROPERTY OF TORWELL CHEMICAL CO.\"",
     "PROPERTY OF TORWELL CHEMICAL CO. @ shoulder"},
    {"Tongs stamped GIFFORD-TRAY near the pivot, and 3 on one handle.", "GIFFORD-TRAY; 3 @ one handle"},
    {"Bag. Gold tooled inside the flap \"Made by Jn. Whitlow, Saddler\".", "Made by Jn. Whitlow, Saddler"},
    {"Plane. Body maker GLOVEN with a stamp at the heel.", "GLOVEN"},
    {"Grate. Dated 1748 on the plate but I'd bet it is later.", "1748 @ plate"},
    {"Cooler. On the bottom: \"Torwell Jug Model 78\".", "Torwell Jug Model 78 @ bottom"},
    {"Scale. Face reads TORWELL and at the bottom NOT FOR TRADE.", "TORWELL @ face; NOT FOR TRADE @ bottom"},
    {"Trunk, stencilled in white paint STORES 4.", "STORES 4"},
    {"Print, signed in pencil E. Marlin, 34/150 bottom left.", "E. Marlin; 34/150 @ bottom left"},
    {"Chest. Stencil on lid worn, VERY heavy, needs TWO men.", ""},
    {"Spade. Label torn off, HANDLE LOOSE, blade good.", ""},
    {"Stool, feet: 3 of 4.", ""},
    {"Tray, 4471 in gold on the rim.", ""},
    {"Jug stamped S. The lid is gone.", "S"},
    {"Tin, letter K. 10 in tall.", "K"},
};

static const struct notes_case flat[] = {
    {"butter pats, both branded t and g woodware on the back. one split", "t and g woodware @ back"},
    {"bench branded with a hot iron on the back", ""},
    {"silverplate teapot marked epns handle wiggles", "epns"},
    {"owl planter marked hallow 41", "hallow 41"},
    {"ring marked 925 with a blue stone", "925"},
    {"pot stamped 12 on base no lid", "12 @ base"},
    {"bottle says ostry water on the front cork gone", "ostry water @ front"},
    {"TEAPOT MARKED EPNS ON THE BASE NO LID", "EPNS @ BASE"},
    {"CRATE STAMPED 44 ON THE SIDE", "44 @ SIDE"},
};

static const struct notes_case none[] = {
    {"Chair with a 3 inch scratch on the seat.", ""},
    {"Cupboard with a 4 drawer base.", ""},
    {"I would give it a 6 on a good day.", ""},
    {"Oak box. Tear on the label", ""},
    {"Oak box. Foxing on the label", ""},
    {"Oak box. Peeling on the badge", ""},
    {"Oak box. Loose on the plate", ""},
    {"not marked", ""},
    {"unmarked", ""},
    {"no marks", ""},
    {"never signed", ""},
    {"signed but I can't read it", ""},
    {"stamped with a crown", ""},
    {"some writing underneath", ""},
    {"engraved with a big M in the middle", ""},
    {"marked down", ""},
    {"cast iron pan", ""},
    {"cast Iron pan", ""},
    {"pressed glass", ""},
    {"painted blue", ""},
    {"a dial marked 0 to 100", ""},
    {"marked up to 2 pints", ""},
    {"embossed flowers", ""},
    {"isn't marked Orrindel", ""},
    {"price tag 2.99 on the bottom", ""},
    {"kid's name on the tag", ""},
    {"looks like a fish or bird stamp", ""},
    {"serial starts 0012", ""},
    {"? on mark", ""},
    {"signed a long letter of more than twelve words which is a story that somebody wrote and goes on", ""},
};

#define CASES(name)                                                                                          \
    START_TEST(marks_##name) {                                                                               \
        support_cases(name, sizeof name / sizeof *name, LOCALE_US, read_writing, tell);                      \
    }                                                                                                        \
    END_TEST
START_TEST(marks_makers) {
    support_cases(makers, sizeof makers / sizeof *makers, LOCALE_US, read_names_too, tell);
}
END_TEST
CASES(verbs)
CASES(says)
CASES(nouns)
CASES(runs)
CASES(others)
CASES(spoken_of)
CASES(flat)
CASES(none)

static void long_text(struct arena *arena, void *context) {
    (void)context;
    struct note *note = support_note(arena,
                                     "marked \"A VERY LONG TEXT THAT NOBODY WOULD STAMP ON A TIN BUT MANY "
                                     "PRINT ON A PAPER LABEL OF IT ALL\"",
                                     LOCALE_US);
    read_writing(note);
    ck_assert_uint_eq(note->record->mark_count, 0);
    note = support_note(arena, "Tin,  stamped  KR-9  on the lid", LOCALE_US);
    read_writing(note);
    ck_assert_uint_eq(note->record->mark_count, 1);
    ck_assert_uint_eq(note->reading_count, 1);
    ck_assert_str_eq(note->readings[0].what, "mark");
    ck_assert_uint_eq(note->readings[0].from, 6);
}

// A text above 80 characters is no mark.
START_TEST(marks_are_short) {
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, long_text, NULL));
    arena_free(arena);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: marks");
    TCase *tests = tcase_create("marks");
    tcase_add_test(tests, marks_makers);
    tcase_add_test(tests, marks_verbs);
    tcase_add_test(tests, marks_says);
    tcase_add_test(tests, marks_nouns);
    tcase_add_test(tests, marks_runs);
    tcase_add_test(tests, marks_others);
    tcase_add_test(tests, marks_spoken_of);
    tcase_add_test(tests, marks_flat);
    tcase_add_test(tests, marks_none);
    tcase_add_test(tests, marks_are_short);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
