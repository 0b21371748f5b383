// SPDX-License-Identifier: MIT
// Every kind of flaw with the best grade that it leaves when light, moderate and heavy, and what a title owes it: written
// down a second time, apart from the rules, so that neither can change unseen. Sorted by id.
#ifndef TEST_RULES_FLAWS_H
#define TEST_RULES_FLAWS_H

#include "rules/model.h"

static const struct {
    const char *id, *caps;
    enum title_duty duty;
} EXPECTED_FLAWS[] = {
    {"album-residue", "BCC", DUTY_NO}, {"as-is", "BCD", DUTY_SHOULD},
    {"authenticity-unverified", "ABC", DUTY_SHOULD}, {"battery-corrosion", "CCD", DUTY_IF_HEAVY},
    {"binding-weak", "BCD", DUTY_IF_HEAVY}, {"blade-wear", "ABC", DUTY_IF_HEAVY},
    {"box-wear", "ABC", DUTY_NO}, {"brittle-paper", "BCD", DUTY_SHOULD}, {"broken-part", "CCD", DUTY_MUST},
    {"bruise-impact", "BCD", DUTY_SHOULD}, {"chip", "BCD", DUTY_MUST},
    {"clasp-fault", "BCD", DUTY_IF_HEAVY}, {"cloudy-glass", "BCD", DUTY_IF_HEAVY},
    {"coating-worn", "BCD", DUTY_IF_HEAVY}, {"complete-counted", "AAC", DUTY_SHOULD},
    {"completeness-unknown", "CCD", DUTY_MUST}, {"cord-frayed", "CDD", DUTY_MUST},
    {"crack", "BCD", DUTY_SHOULD}, {"crack-through", "CDD", DUTY_MUST}, {"crazing", "BBC", DUTY_NO},
    {"crease", "ABC", DUTY_NO}, {"darned-patched", "BCD", DUTY_NO},
    {"decoration-wear", "ABC", DUTY_IF_HEAVY}, {"dent-bend", "ABD", DUTY_IF_HEAVY},
    {"disc-scratches", "ABD", DUTY_IF_HEAVY}, {"drilled-converted", "CCD", DUTY_MUST},
    {"dust-grime", "BBC", DUTY_NO}, {"dye-bleed", "BCD", DUTY_IF_HEAVY}, {"edge-wear", "ABC", DUTY_NO},
    {"enamel-chip", "BCD", DUTY_IF_HEAVY}, {"ex-library", "BCC", DUTY_MUST},
    {"fabric-weak", "CDD", DUTY_MUST}, {"fading", "ABC", DUTY_IF_HEAVY},
    {"filled-overpainted", "BCD", DUTY_SHOULD}, {"finish-crackle", "ABC", DUTY_NO},
    {"firing-flaw", "ABC", DUTY_NO}, {"fleabite", "BBC", DUTY_NO}, {"for-parts", "DDD", DUTY_MUST},
    {"foxing", "BCC", DUTY_NO}, {"fraying", "ABC", DUTY_IF_HEAVY}, {"gilt-wear", "ABC", DUTY_NO},
    {"glued-repair", "CCD", DUTY_MUST}, {"grease-film", "BCC", DUTY_NO}, {"hairline", "CCD", DUTY_MUST},
    {"heat-damage", "BCD", DUTY_IF_HEAVY}, {"hem-altered", "ABC", DUTY_SHOULD},
    {"hole", "BCD", DUTY_IF_HEAVY}, {"impact-history-unknown", "DDD", DUTY_MUST},
    {"inside-not-inspected", "BCD", DUTY_NO}, {"insole-wear", "BBC", DUTY_NO},
    {"jacket-damage", "ABC", DUTY_NO}, {"leather-crack", "BCD", DUTY_IF_HEAVY},
    {"lining-damage", "BCD", DUTY_NO}, {"locked-device", "BCD", DUTY_MUST},
    {"loose-joint", "BCD", DUTY_IF_HEAVY}, {"loose-part", "ABC", DUTY_IF_HEAVY},
    {"married-set", "BCD", DUTY_MUST}, {"media-degraded", "CCD", DUTY_SHOULD},
    {"mineral-deposit", "ABC", DUTY_NO}, {"mirror-silvering", "ABC", DUTY_IF_HEAVY},
    {"missing-accessory", "BCD", DUTY_MUST}, {"missing-battery-cover", "CCD", DUTY_SHOULD},
    {"missing-box", "ABC", DUTY_NO}, {"missing-button", "BCC", DUTY_NO},
    {"missing-cord", "BCD", DUTY_MUST}, {"missing-hardware", "BCD", DUTY_IF_HEAVY},
    {"missing-instructions", "ABC", DUTY_NO}, {"missing-jacket", "ABC", DUTY_SHOULD},
    {"missing-key", "BCD", DUTY_SHOULD}, {"missing-lid", "BCD", DUTY_MUST},
    {"missing-liner", "BCD", DUTY_SHOULD}, {"missing-mate", "BCD", DUTY_MUST},
    {"missing-pieces", "CCD", DUTY_MUST}, {"missing-stopper", "BCD", DUTY_MUST},
    {"missing-tag", "AAC", DUTY_NO}, {"mold", "CDD", DUTY_MUST}, {"monogram", "AAB", DUTY_SHOULD},
    {"moth-holes", "CCD", DUTY_MUST}, {"not-working", "DDD", DUTY_MUST}, {"odor-food", "BCD", DUTY_NO},
    {"odor-fuel", "BCD", DUTY_SHOULD}, {"odor-mildew", "CCD", DUTY_SHOULD},
    {"odor-mothball", "BCD", DUTY_NO}, {"odor-musty", "BCD", DUTY_IF_HEAVY},
    {"odor-perfume", "ABC", DUTY_NO}, {"odor-pet", "BCD", DUTY_IF_HEAVY},
    {"odor-smoke", "BCD", DUTY_IF_HEAVY}, {"owner-name", "ABC", DUTY_NO},
    {"pages-loose", "CCD", DUTY_MUST}, {"paint-flaking", "BCD", DUTY_IF_HEAVY},
    {"partly-used-supplies", "BBC", DUTY_SHOULD}, {"partly-working", "CCD", DUTY_MUST},
    {"patina", "AAB", DUTY_NO}, {"peeling-coating", "CDD", DUTY_MUST}, {"pest-signs", "DDD", DUTY_MUST},
    {"pet-hair", "BBC", DUTY_NO}, {"pilling", "ABC", DUTY_NO}, {"plate-wear", "BCC", DUTY_IF_HEAVY},
    {"play-wear", "ABC", DUTY_NO}, {"postally-used", "AAC", DUTY_SHOULD},
    {"powers-on-only", "CCD", DUTY_MUST}, {"price-clipped", "ABB", DUTY_NO},
    {"refinished", "ABC", DUTY_SHOULD}, {"replaced-part", "ABC", DUTY_IF_HEAVY},
    {"rewired", "ABD", DUTY_SHOULD}, {"rim-ground", "BCD", DUTY_SHOULD}, {"ring-mark", "BBC", DUTY_NO},
    {"rubber-perished", "BCD", DUTY_IF_HEAVY}, {"rust", "BCD", DUTY_IF_HEAVY},
    {"scratches", "ABC", DUTY_NO}, {"screen-damage", "BCD", DUTY_MUST},
    {"seal-broken", "ABC", DUTY_SHOULD}, {"seam-open", "BCC", DUTY_IF_HEAVY},
    {"seam-split", "CCD", DUTY_SHOULD}, {"seized", "BCD", DUTY_IF_HEAVY}, {"size-changed", "BBC", DUTY_NO},
    {"snag", "ABC", DUTY_NO}, {"sole-separation", "CDD", DUTY_MUST}, {"sole-wear", "ABC", DUTY_IF_HEAVY},
    {"stain", "ABC", DUTY_IF_HEAVY}, {"sticker-residue", "AAB", DUTY_NO},
    {"sticky-plastic", "CDD", DUTY_IF_HEAVY}, {"stone-missing", "CCD", DUTY_MUST},
    {"storage-spots", "BCC", DUTY_NO}, {"strap-damage", "BCD", DUTY_IF_HEAVY},
    {"sweat-stain", "BCD", DUTY_NO}, {"tape-repair", "BCD", DUTY_NO}, {"tarnish", "ABB", DUTY_NO},
    {"tear", "BCD", DUTY_IF_HEAVY}, {"tide-line", "BCD", DUTY_SHOULD},
    {"timekeeping-unverified", "BCD", DUTY_SHOULD}, {"toning", "ABC", DUTY_NO},
    {"trim-loss", "ABC", DUTY_IF_HEAVY}, {"trimmed", "CCD", DUTY_MUST}, {"untested", "CCD", DUTY_MUST},
    {"upholstery-wear", "BCD", DUTY_IF_HEAVY}, {"utensil-marks", "ABC", DUTY_NO},
    {"veneer-damage", "BCD", DUTY_IF_HEAVY}, {"verdigris", "BCD", DUTY_IF_HEAVY},
    {"warped", "BCD", DUTY_IF_HEAVY}, {"water-damage", "BCD", DUTY_SHOULD}, {"wear-rub", "ABC", DUTY_NO},
    {"wear-unspecified", "BBC", DUTY_NO}, {"wood-split", "BCD", DUTY_IF_HEAVY},
    {"woodworm", "BCD", DUTY_SHOULD}, {"working-tested", "AAB", DUTY_NO},
    {"writing-inside", "ABC", DUTY_NO}, {"yellowing", "ABC", DUTY_NO}, {"zip-fault", "BCD", DUTY_IF_HEAVY},
};
enum { EXPECTED_FLAW_COUNT = sizeof EXPECTED_FLAWS / sizeof *EXPECTED_FLAWS };

#endif
