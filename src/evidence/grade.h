// SPDX-License-Identifier: MIT
// The grade: the lowest cap of all flaws that lower one, with the reasons beside it. Our own four steps; ISO
// 20245 has four as well, but its wording was not read and is not used.
#ifndef EVIDENCE_GRADE_H
#define EVIDENCE_GRADE_H

#include "item/record.h"

struct grading {
    enum grade grade;
    const char **reasons; // "rust on the handle (degree not stated): C"
    size_t count;
    const char *schema_org; // schema.org OfferItemCondition
};

struct grading grade_record(struct arena *arena, const struct record *record);
const char *grade_letter(enum grade grade);
const char *grade_word(enum grade grade);

#endif
