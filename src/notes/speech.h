// SPDX-License-Identifier: MIT
// Punctuation that was dictated: "comma", "period", "new line".
#ifndef NOTES_SPEECH_H
#define NOTES_SPEECH_H

#include "notes/token.h"

// Turns words that were said as punctuation into signs; two words that make one become one token.
void speech_stops(struct tokens *tokens);

#endif
