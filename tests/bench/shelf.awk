# SPDX-License-Identifier: MIT
# A stock file of rows of about 200 bytes, the same on every machine: -v n=ROWS -v stale=PERCENT (older than sixty days
# on 2025-11-25) -v seed=NUMBER. Titles as people write them: short, in capitals, a word twice, a maker nobody knows.

# A linear congruence that stays below 2^53, so that every awk computes it exactly.
function roll(sides) {
    state = (state * 69069 + 12345) % 4294967296
    return int(state / 65536) % sides
}

function list(text, to) { size[text] = split(text, to, / *\| */) }

function good(title, text) {
    goods++
    title_of[goods] = title
    text_of[goods] = text
}

BEGIN {
    good("brass oil lamp", "Oil lamp with a glass chimney, %s on the base. %d in tall. Wick turns, burner is complete")
    good("biscuit tin", "Green tin out of a boat house, %s on the lid. %d inches wide. The hinge is tight, the inside is clean")
    good("wool blanket", "Gray wool blanket, %s near one corner. %d x 80 in. Washed once, the binding holds all round it")
    good("field glasses 8x30", "With leather case, %s on the case. %d in long. Both tubes focus, the strap is not with them")
    good("valve radio", "Untested. Walnut case, %s at the dial. %d in wide. The back panel is on, four knobs are there")
    good("enamel jug", "White enamel jug with a blue rim, %s on the spout. %d in tall. Stands level, the handle is firm")
    good("school map on rollers", "Cloth-backed wall map, %s at the lower edge. %d in wide. Rolls up well, colors are strong")
    good("steel hand plane", "Iron sharp, tote of beech, %s on the sole. %d in long. The adjuster turns freely both ways")
    good("wicker hamper", "Hamper with lid, %s on one side. %d in wide. Two straps with buckles, the lining is cotton")
    good("copper kettle", "Kettle with lid, %s on the side. %d in tall. The handle is a bail, and the seam is tight all round")
    good("aneroid barometer", "Needle moves, %s on the glass. %d in across. Oak back board with a brass ring for hanging")
    good("railway lantern", "Signal lantern, %s on the top. %d in tall. The slides move, the burner and the wick are in it")
    good("concertina", "Twenty keys, %s at the bellows. %d in across. All reeds speak, one end of it has been revarnished")
    good("outboard motor tool kit", "Kit in a canvas roll, %s on two spanners. %d in long. Nine pieces, plug spanner is among them")
    list("small dent|rust|a chip|scratches|a crack|a stain|light rust|some scratches", flaw)
    list("Lunsetter|Thrupple|Hoskaby|Ostrelin|Wendacre|Quillfane|Bramstow|Pellindry", maker)
    list("Lighting|Kitchen|Bedding|Instruments|Workshop|Music|Paper", category)
    state = (seed * 1000003 + 7919) % 4294967296
    print "sku,title,description,price,date listed,views,photos,category,where it stands"
    for (i = 1; i <= n; i++) {
        g = 1 + roll(goods)
        title = title_of[g]
        k = roll(6)
        if (k == 0) title = toupper(title) " OLD"
        if (k == 1) title = maker[1 + roll(8)] " " title
        if (k == 2) title = "old " title " No. " 1 + roll(90)
        if (k == 3) title = title " " maker[1 + roll(8)] " as found in the loft"
        text = sprintf(text_of[g], flaw[1 + roll(8)], 4 + roll(60))
        old = roll(10000) < stale * 100
        day = old ? sprintf("2025-%02d-%02d", 1 + roll(8), 1 + roll(28)) : sprintf("2025-%02d-%02d", 10 + roll(2), 1 + roll(20))
        printf "SHED-%07d,%s,\"%s.\",%d.50,%s,%d,%d,%s,long shed row %d bin %d\n", i, title, text, 4 + roll(70), day, roll(60), roll(9),
            category[1 + roll(7)], 1 + roll(40), 1 + roll(400)
    }
}
