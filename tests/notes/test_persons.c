// SPDX-License-Identifier: MIT
// Whose it was, who sells it and where they live is nobody's business; makers, titles and marks are kept.
#include "support.h"

static const char *tell(const struct note *note) {
    struct buf out = buf_start(note->arena);
    for (size_t i = 0; i < note->aside_count; i++) {
        buf_text(&out, out.n ? " | " : "");
        buf_add(&out, note->tokens.text + note->asides[i].from, note->asides[i].to - note->asides[i].from);
    }
    return out.at;
}

static const struct notes_case people[] = {
    {"Bowl. Gave Jerry ten for it.", "Jerry"},
    {"Toolbox from Frank at the garage.", "Frank"},
    {"Knife from Grant & Sons.", ""},
    {"Quilt made by Great Aunt Ludmilla for a wedding.", "Great Aunt Ludmilla"},
    {"Mirror, my ex-wife Denise hated it.", "Denise"},
    {"Lantern. Was my father's, Walter Haskin.", "Walter Haskin"},
    {"Wagon. It was my late uncle's (George Penhall).", "George Penhall"},
    {"Saw. My dad's Torwell saw.", ""},
    {"Oak chest. It was Mrs Threlby's from new.", "Mrs Threlby's"},
    {"Accordion, and Mr. Fennimore who lives at number nine played it.", "Mr. Fennimore"},
    {"Cup. Given to me by Rev. Thomas Ellery.", "Rev. Thomas Ellery"},
    {"Sewing box, previous owner Beryl.", "Beryl"},
    {"Churn lid, embossed RETURN TO HALVERTON DAIRY.", ""},
    {"Teapot, sold to me by Sandra at the WI.", "Sandra"},
    {"Folding chair, bought off a fellow called Nige.", "Nige"},
    {"Chest of drawers, it was in Hetty's room.", "Hetty's"},
    {"Chair. It's Sam's.", "Sam's"},
    {"Lamp from the Cobbery estate.", "Cobbery"},
    {"Tankard. It was Dad's and he kept pens in it.", "Dad's"},
    {"Blazer. It was Grandad's best.", "Grandad's"},
    {"Jug. Cash to Keith please.", "Keith"},
    {"Radio, my neighbor Gladys Penhurst found it.", "Gladys Penhurst"},
    {"Bench. Hair on one end because Rollo sleeps there.", "Rollo"},
    {"Rug. There's a hole where Tansy chewed it.", "Tansy"},
    {"Rug, Rollo's favorite spot.", "Rollo's"},
    {"Saw. Torwell sits well in the hand.", ""},
    {"Locket. Engraved inside, Maud from Ellery 6-3-52.", "Maud from Ellery 6-3-52"},
    {"Watch, engraved Orla love Fenn on the back.", "Orla love Fenn"},
    {"Print of Harbor Lane from Tolmouth.", ""},
    {"Jar. Somebody scratched their name underneath, Dorrit Pelhane.", "Dorrit Pelhane"},
    {"Stool. She wrote her name under the seat: Elspeth Marne.", "Elspeth Marne"},
    {"Hymn book, name in the front, Ada Brightwell.", "Ada Brightwell"},
    {"Tray. Inscription to somebody called Corin on the back.", "Corin"},
    {"Kite. The kids named it Thunder.", "Thunder"},
    {"Bible. Births and deaths written in the middle, Hostler-Vane.", "Hostler-Vane"},
    {"Bible. Family record filled in, the Ormeshaws.", "Ormeshaws"},
    {"Radio called the Commander, name on the dial, Torwell.", ""},
};

static const struct notes_case hands[] = {
    {"Plane. Owner marks too, W. SPRANE twice and J. POTTLE once.", "W. SPRANE | J. POTTLE"},
    {"Fire bucket, gold lettering, J. WALDOTT NO. 2 1803.", "J. WALDOTT NO. 2 1803"},
    {"Scale lettered J. TORWELL.", ""},
    {"Stand. Martha's initials are burned in the bottom.", "Martha's"},
    {"Jug. Maker's initials on the base, T.K.", ""},
    {"Frame. Back has \"To Helen, love Frank, 1938\" in ink.", "To Helen, love Frank, 1938"},
    {"Box. \"To the trade\" on the side.", ""},
    {"Lantern. The railroad man's name was Pruitt.", "Pruitt"},
    {"Plane. Owner stamp on the toe, J. MARLOWE.", "J. MARLOWE"},
    {"Barometer. Dial engraved J. Larkmere.", ""},
    {"Box. Plate engraved M. Ridge & Sons.", ""},
    {"Chest. Painted on the front J. HOLLAND.", "J. HOLLAND"},
    {"Crate painted TOM WEATHERBY.", "TOM WEATHERBY"},
    {"Crate painted KELLOW ORCHARDS on both ends.", ""},
    {"Kit bag. Stencilled on the side in white 2214086 RUDGE T.", "2214086 RUDGE T"},
    {"Kit bag. Painted on the flap 40213 R. TESSEL in black.", "40213 R. TESSEL"},
    {"Print, signed in pencil E. Marlin.", ""},
    {"Oak box. Label says E. Hobday, 12 Pier Lane.", "12 Pier Lane | E. Hobday"},
    {"Box. Brass plate: Walter Pensby for long service.", "Walter Pensby"},
    {"Trunk. Tag reads PTE 44120 Marley.", "PTE 44120 Marley"},
    {"Trunk. There's Gwen scratched in the paint.", "Gwen"},
    {"Bag. From the shed of J. T. Marley.", "J. T. Marley"},
    {"Trunk, painted by hand, will scratch.", ""},
    {"Box by Marley & Sons, label says 12 Pier Lane works.", "12 Pier Lane"},
    {"Canvas bag. Old owner put SALLOWAY on the strap in ink.", "SALLOWAY"},
    {"Exercise books, two have names on the front: Janet Pryce.", "Janet Pryce"},
    {"Sledge. You can read SALTER ESTATE YARD on the side.", ""},
    {"Sledge. You can read T. DUNMORE on the side.", "T. DUNMORE"},
    {"Wall telephone. Dial card says Tel: Marden 214.", "Marden 214"},
    {"Saw, handle has W. Entwistle burnt into it.", "W. Entwistle"},
    {"Toolbox, painted F. Garside on the front.", "F. Garside"},
    {"Oars, Ashby & Son painted on the blades.", ""},
    {"Gas mask, box with name D. Ramsbottom.", "D. Ramsbottom"},
    {"Desk, scratched with DAZ WOZ ERE.", "DAZ WOZ ERE"},
    {"Safe, small, code is 7714.", "7714"},
    {"Photo of our Trevor in a hat.", "Trevor"},
    {"Tools ex Jack Threlfall, all rusty.", "Jack Threlfall"},
    {"Passport in the name of Lionel Crabbe.", "Lionel Crabbe"},
};

static const struct notes_case papers[] = {
    {"Wool blanket. It was Thessaly Grantham's before she moved.", "Thessaly Grantham's"},
    {"Card table. A tag tied to the leg says Corwin Haddle 555-0188.", "Corwin Haddle 555-0188"},
    {"Guitar case. Claim ticket inside for Imelda Varga, 555-0133.", "Imelda Varga, 555-0133"},
    {"Crib quilt. It was for baby Clementina.", "Clementina"},
    {"Poetry book. Inscribed inside, To Winona from Cleo 1948.", "To Winona from Cleo 1948"},
    {"Drawknife. H. GANT is stamped in the handle.", "H. GANT"},
    {"Caliper. Employee number 4418 etched on the jaw.", "4418"},
    {"Tuxedo jacket. Label in the pocket says Mr. C. Dunmire May 1957.", "Mr. C. Dunmire May 1957"},
    {"Lamp, model 4418, takes a 60 watt bulb.", ""},
    {"Doll, Baby Clementine, in the box.", ""},
    {"Plane. J. PIKE is stamped on the toe.", ""},
    {"Sign embossed Torwell Dairy 555-0142.", ""},
    {"Blanket, paper label says Hadwick Blythe.", ""},
    {"Radio. This is Harlow's best set.", ""},
};

static const struct notes_case errands[] = {
    {"Ring Harry on 07700 900123 about the lamp.", "Ring Harry on 07700 900123 about the lamp"},
    {"Lamp (ask for Brenda, ext 204).", "ask for Brenda, ext 204"},
    {"Chair. Phone me, five five five oh one four two.", "Phone me, five five five oh one four two"},
    {"Camera. Lens clear, see 3 pictures.", ""},
};

static const struct notes_case places[] = {
    {"Trunk. Painted under the lid: 14 Gorse Lane, Dray.", "14 Gorse Lane, Dray"},
    {"Jug. Collect from Unit 7, Barley Wharf.", "Unit 7, Barley Wharf"},
    {"Chair. The postcode is ZZ4 9QQ.", "ZZ4 9QQ"},
    {"Helmet, account no 33219 on a card.", "account no 33219"},
    {"Sign, enamel, Holt Road.", ""},
    {"Map of Barley Wharf.", ""},
};

static const struct notes_case kept[] = {
    {"Smoothing plane by Harkwidge, number 4.", ""},
    {"Aunt Tilly's Jam jar, stoneware.", ""},
    {"Miss Dunmore doll, bisque head.", ""},
    {"Tin stamped Dr Quill on the lid.", ""},
    {"Doctor's bag, black.", ""},
    {"Captain's chair, oak.", ""},
    {"Never had it running. Clock.", ""},
    {"Haven't had it out. Print in a frame.", ""},
    {"Novel by Miss Idony Marchpaine.", ""},
};

#define CASES(name)                                                                                          \
    START_TEST(persons_##name) {                                                                             \
        support_cases(name, sizeof name / sizeof *name, LOCALE_US, read_persons, tell);                      \
    }                                                                                                        \
    END_TEST
CASES(people)
CASES(hands)
CASES(papers)
CASES(errands)
CASES(places)
CASES(kept)

int main(void) {
    Suite *suite = suite_create("notes: persons");
    TCase *tests = tcase_create("persons");
    tcase_add_test(tests, persons_people);
    tcase_add_test(tests, persons_hands);
    tcase_add_test(tests, persons_papers);
    tcase_add_test(tests, persons_errands);
    tcase_add_test(tests, persons_places);
    tcase_add_test(tests, persons_kept);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
