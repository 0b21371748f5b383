// SPDX-License-Identifier: MIT
// Where the shipped rules and words are.
#ifndef CLI_DATA_H
#define CLI_DATA_H

#include "cli/session.h"

// The folder that holds rules/ and dict/, in the arena of the session; NULL when there is none, which has
// been told.
const char *data_folder(struct session *session);
// The same for those who can do without: nothing is told.
const char *data_folder_if_any(struct session *session);

#endif
