// SPDX-License-Identifier: MIT
// Facts of whole notes. A case lists what must be in the record, and behind "!" what must not be stated
// there: "type lamp", "type? vase" for a guess, "other lamp base", "family lighting", "material brass",
// "material tin@lid" for a part's, "mark TORWELL", "fits Torwell".
#ifndef TESTS_NOTES_SUPPORT_FACTS_H
#define TESTS_NOTES_SUPPORT_FACTS_H

#include "support_book.h"

// Fails where a fact of any note is read otherwise; all differences are printed before.
void support_facts(const struct notes_case *cases, size_t count);

#define FACTS(name)                                                                                          \
    START_TEST(reads_##name) {                                                                               \
        support_facts(name, sizeof(name) / sizeof *(name));                                                  \
    }                                                                                                        \
    END_TEST

#endif
