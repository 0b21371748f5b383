# SPDX-License-Identifier: MIT
# Item records of many kinds, the same on every machine: -v form=ndjson|json|yaml|csv -v n=COUNT -v seed=NUMBER.
# 2 to 8 attributes, 0 to 5 flaws, and now and then a count, marks, measurements, notes and parts unchecked.

# A linear congruence that stays below 2^53, so that every awk computes it exactly.
function roll(sides) {
    state = (state * 69069 + 12345) % 4294967296
    return int(state / 65536) % sides
}

function pick(words,    all) { return all[1 + roll(split(words, all, /, /))] }

function kind(family, types, parts, flaws) {
    kinds++
    family_of[kinds] = family
    types_of[kinds] = types
    parts_of[kinds] = parts
    flaws_of[kinds] = flaws
}

function set_up() {
    kind("lighting", "ship lantern, oil lamp, bulkhead light, desk lamp", "base, chimney, burner, hinge, cord",
         "dent-bend, rust, crack, untested, missing-accessory, paint-flaking, verdigris")
    kind("tools", "smoothing plane, chisel, socket set, drawknife, spirit level", "handle, blade, sole, case, ferrule",
         "rust, crack, blade-wear, wood-split, replaced-part, grease-film, missing-pieces")
    kind("kitchenware", "enamel mug, milk pail, coffee boiler, sieve", "rim, lid, handle, base, spout",
         "rust, chip, missing-lid, scratches, stain, dent-bend")
    kind("ceramics", "stoneware jug, plate, bowl, vase", "rim, base, handle, lip, foot", "chip, crack, crazing, stain, scratches")
    kind("linens", "wool blanket, tablecloth, tea towel", "hem, corner, center, edge", "moth-holes, stain, fading, fraying, hole")
    kind("bags", "kit bag, school satchel, tool bag", "strap, buckle, corner, lining",
         "missing-hardware, stain, fraying, scratches, tear")
    kind("furniture", "school desk, stool, bench, bookcase", "leg, top, drawer, seat, lid",
         "scratches, loose-joint, paint-flaking, wood-split, stain, missing-hardware")
    kind("books", "atlas, nautical almanac, hardcover", "cover, spine, page, title page", "foxing, tear, stain, fading")
    kind("paper", "nautical chart, wall map, school poster", "fold, edge, corner, back", "tear, foxing, stain, fading")
    kind("electrical", "portable radio, voltmeter", "case, dial, knob, cord, battery box",
         "untested, crack, cord-frayed, missing-accessory, scratches")
    kind("glassware", "fishing float, apothecary jar, pitcher", "rim, base, neck, stopper", "chip, crack, scratches, stain, missing-lid")
    kind("music", "fog horn, cornet", "bell, valve, mouthpiece, case", "dent-bend, tarnish, seized, missing-accessory")
    kind("cameras", "field glasses, microscope", "lens, strap, eyepiece, case", "scratches, missing-accessory, untested, dent-bend")
    kind("sports", "oar, compass, canoe paddle", "blade, shaft, grip, dial", "wood-split, scratches, paint-flaking, missing-accessory")
    makers = "Lunsetter, Thrupple, Hoskaby, Ostrelin, Wendacre, Quillfane, Bramstow, Pellindry"
    models = "No. 5, R6, 1402, Junior, Mk 3, B-12, Harbor 40"
    values["brand"] = makers
    values["model"] = models
    values["material"] = "brass, beech, steel, oak, cast iron, leather, glass, canvas, pine, copper, ash"
    values["color"] = "green, gray, red, blue, brown, white, black, cream, amber, dark green"
    values["pattern"] = "striped, checked, plain, floral, ribbed, herringbone"
    values["technique"] = "hand forged, riveted, stitched, pressed, turned"
    values["shape"] = "round, square, oval, tapered, octagonal"
    values["style"] = "school, workshop, folding, naval, farmhouse"
    values["finish"] = "painted, varnished, polished, matte, lacquered"
    values["theme"] = "harbor, anchor, railway, forest, birds"
    values["size"] = "1/2 in drive, large, 12 x 18 in, 2 qt, No. 8"
    values["age"] = "1950s, 1930s, old, 1970s"
    names = "brand, model, material, color, pattern, technique, shape, style, finish, theme, size, age"
    severities = "light, moderate, heavy"
}

# Everything of one record, as flat as the sheet wants it.
function make(number,    i, n, name, seen) {
    state = (seed * 1000003 + number * 7919) % 4294967296
    for (i = 0; i < 3; i++) roll(2)
    k = 1 + roll(kinds)
    id = "item-" number
    type = pick(types_of[k])
    count = roll(6) ? "" : 2 + roll(8)
    attributes = 0
    n = 2 + roll(7)
    for (i = 0; attributes < n && i < 40; i++) {
        name = pick(names)
        if (name in seen) continue
        seen[name] = 1
        attribute[++attributes] = name
        value[attributes] = pick(values[name])
        of[attributes] = (name == "material" || name == "color") && roll(3) == 0 ? pick(parts_of[k]) : ""
        sure[attributes] = roll(8) ? "stated" : "likely"
    }
    flaws = roll(6)
    for (i = 1; i <= flaws; i++) {
        flaw[i] = pick(flaws_of[k])
        part[i] = roll(5) ? pick(parts_of[k]) : ""
        severity[i] = roll(3) ? pick(severities) : ""
        pieces[i] = roll(5) ? "" : 1 + roll(4)
        millimeters[i] = roll(5) ? "" : 2 + roll(60)
    }
    mark = roll(3) ? "" : pick(makers) " " (10 + roll(90))
    clear = roll(4) ? "" : pick(flaws_of[k])
    unchecked = roll(5) ? "" : pick("seized, the inside, whether it works, working load")
    inches = roll(3) ? 3 + roll(40) : ""
    notes = roll(3) ? "" : "out of the " pick("boat house, engine shed, village school, workshop") ", " pick("wiped down, as it came, needs a look")
}

function item(list, text) { return list (list == "" ? "" : ",") text }

function json(    out, list, i, more) {
    out = "{\"id\":\"" id "\",\"type\":\"" type "\",\"family\":\"" family_of[k] "\""
    if (notes != "") out = out ",\"notes\":\"" notes "\""
    if (count != "") out = out ",\"count\":" count
    for (i = 1; i <= attributes; i++) {
        more = of[i] != "" ? ",\"of\":\"" of[i] "\"" : ""
        list = item(list, "\"" attribute[i] "\":[{\"value\":\"" value[i] "\",\"sure\":\"" sure[i] "\"" more "}]")
    }
    out = out ",\"attributes\":{" list "},\"flaws\":["
    list = ""
    for (i = 1; i <= flaws; i++) {
        more = part[i] != "" ? ",\"part\":\"" part[i] "\"" : ""
        if (severity[i] != "") more = more ",\"severity\":\"" severity[i] "\""
        if (pieces[i] != "") more = more ",\"count\":" pieces[i]
        if (millimeters[i] != "") more = more ",\"size\":{\"mm\":" millimeters[i] "}"
        list = item(list, "{\"kind\":\"" flaw[i] "\"" more "}")
    }
    out = out list "]"
    if (clear != "") out = out ",\"clear\":[{\"kind\":\"" clear "\",\"how\":\"none-seen\"}]"
    if (unchecked != "") out = out ",\"unchecked\":[\"" unchecked "\"]"
    if (mark != "") out = out ",\"marks\":[\"" mark "\"]"
    if (inches != "") out = out ",\"measurements\":[{\"dimension\":\"height\",\"value\":" inches ",\"unit\":\"in\"}]"
    return out ",\"own\":{\"bin\":\"B" number_of_record "\"}}"
}

function yaml(    i) {
    print "---\nid: " id "\ntype: " type "\nfamily: " family_of[k]
    if (notes != "") print "notes: " notes
    if (count != "") print "count: " count
    print "attributes:"
    for (i = 1; i <= attributes; i++)
        print "  " attribute[i] ": {value: " value[i] ", sure: " sure[i] (of[i] != "" ? ", of: " of[i] : "") "}"
    if (flaws) print "flaws:"
    for (i = 1; i <= flaws; i++)
        print "  - {kind: " flaw[i] (part[i] != "" ? ", part: " part[i] : "") \
              (severity[i] != "" ? ", severity: " severity[i] : "") (pieces[i] != "" ? ", count: " pieces[i] : "") \
              (millimeters[i] != "" ? ", size: {mm: " millimeters[i] "}" : "") "}"
    if (clear != "") print "clear: [{kind: " clear ", how: none-seen}]"
    if (unchecked != "") print "unchecked: [" unchecked "]"
    if (mark != "") print "marks: [" mark "]"
    if (inches != "") print "measurements: [{dimension: height, value: " inches ", unit: in}]"
    print "own: {bin: B" number_of_record "}"
}

function csv_head(    i, all, n) {
    line = "id,type,family,notes,count"
    n = split(names, all, /, /)
    for (i = 1; i <= n; i++)
        line = line ",attributes." all[i] ".1.value,attributes." all[i] ".1.sure,attributes." all[i] ".1.of"
    for (i = 1; i <= 5; i++)
        line = line ",flaws." i ".kind,flaws." i ".part,flaws." i ".severity,flaws." i ".count,flaws." i ".size.mm"
    print line ",clear.1.kind,clear.1.how,unchecked.1,marks.1.text,measurements.1.dimension,measurements.1.value," \
          "measurements.1.unit,own.bin"
}

function csv(    i, j, all, n, cells) {
    line = id "," type "," family_of[k] ",\"" notes "\"," count
    n = split(names, all, /, /)
    for (i = 1; i <= n; i++) {
        cells = ",,,"
        for (j = 1; j <= attributes; j++)
            if (attribute[j] == all[i]) cells = "," value[j] "," sure[j] "," of[j]
        line = line cells
    }
    for (i = 1; i <= 5; i++)
        line = line (i <= flaws ? "," flaw[i] "," part[i] "," severity[i] "," pieces[i] "," millimeters[i] : ",,,,,")
    line = line "," clear "," (clear != "" ? "none-seen" : "") "," unchecked "," mark
    print line (inches != "" ? ",height," inches ",in" : ",,,") ",B" number_of_record
}

BEGIN {
    set_up()
    if (form == "csv") csv_head()
    if (form == "json") print "["
    for (number_of_record = 1; number_of_record <= n; number_of_record++) {
        make(number_of_record)
        if (form == "csv") csv()
        else if (form == "yaml") yaml()
        else print json() (form == "json" && number_of_record < n ? "," : "")
    }
    if (form == "json") print "]"
}
