// SPDX-License-Identifier: MIT
// The years that words of age stand for. Private to the room.
#ifndef NOTES_PERIOD_H
#define NOTES_PERIOD_H

#include <stdbool.h>
#include <stddef.h>

struct period {
    int from, to; // 0: open to that side; both 0: no years are meant for sure
    size_t taken; // tokens, for those who count them
    size_t size;  // bytes of the text
    const char *because;
    bool plain; // a bare year or two, which may be anything
};

// May a word (small letters) be the year, decade, century or era that words of age are about? None of them
// goes without one, at most PERIOD_LEAD tokens from its start; every word that period_read() and
// period_of_era() know for one is told here.
bool period_may_hold(const char *word);
enum { PERIOD_LEAD = 12 };
// Words of age at the start of the text.
bool period_read(const char *text, size_t size, struct period *period);
// The same; `*looked` is the last piece of the text that was looked at, counted from 0: where it is 0 nothing
// behind the first piece had a say.
bool period_read_far(const char *text, size_t size, struct period *period, size_t *looked);
// The years of an era that is named at the start of the text: "late Victorian period". `*said` where the word
// "period", "era", "dynasty" or "reign" stands with it.
bool period_of_era(const char *text, size_t size, struct period *period, bool *said);

// Does the name of any era begin with that word (small letters)?
bool period_begins_era(const char *word);
// May what names an era, and a word before it ("late", "reign"), begin with that word?
bool period_opens_era(const char *word);
// Does one end with it, so that "period" behind it is a word and no spoken stop?
bool period_ends_era(const char *word);

#endif
