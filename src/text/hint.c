// SPDX-License-Identifier: MIT
// Edit distance with transpositions (optimal string alignment) over short ASCII ids and keys. Ties keep the
// first offered, so that hints do not depend on anything but the order of the tables.
#include "text/hint.h"

#include <string.h>

enum { LONGEST = 48 };

static size_t least(size_t a, size_t b) {
    return a < b ? a : b;
}

static size_t distance(const char *a, size_t an, const char *b, size_t bn) {
    size_t rows[3][LONGEST + 1];
    size_t *two = rows[0], *one = rows[1], *now = rows[2];
    for (size_t j = 0; j <= bn; j++) one[j] = j;
    for (size_t i = 1; i <= an; i++) {
        now[0] = i;
        for (size_t j = 1; j <= bn; j++) {
            size_t swap = a[i - 1] != b[j - 1];
            now[j] = least(least(one[j] + 1, now[j - 1] + 1), one[j - 1] + swap);
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                now[j] = least(now[j], two[j - 2] + 1);
        }
        size_t *spare = two;
        two = one;
        one = now;
        now = spare;
    }
    return one[bn];
}

struct nearest nearest_start(const char *word) {
    return (struct nearest){word, NULL, LONGEST};
}

void nearest_offer(struct nearest *nearest, const char *known) {
    size_t an = strlen(nearest->word), bn = strlen(known);
    if (!an || an > LONGEST || bn > LONGEST) return;
    size_t most = an <= 3 ? 1 : an / 3;
    if ((an > bn ? an - bn : bn - an) > most) return;
    size_t d = distance(nearest->word, an, known, bn);
    if (d <= most && d < nearest->distance) {
        nearest->best = known;
        nearest->distance = d;
    }
}

const char *nearest_hint(struct arena *arena, const struct nearest *nearest) {
    return nearest->best ? arena_format(arena, "did you mean '%s'?", nearest->best) : NULL;
}
