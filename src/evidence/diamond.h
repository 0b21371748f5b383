// SPDX-License-Identifier: MIT
// The British registration diamond of 1842 to 1883.
#ifndef EVIDENCE_DIAMOND_H
#define EVIDENCE_DIAMOND_H

struct diamond {
    int year;          // of the registration; 0: not to be read
    const char *month; // or NULL
    const char *class; // what the thing is made of; or NULL
    const char *wrong; // why the corners cannot be read, or NULL; a mark without corners is not wrong
};

// `text` names the corners: "diamond mark, class IV, top S, left W, right 6".
struct diamond diamond_read(const char *text);

#endif
