// SPDX-License-Identifier: MIT
// Reading files of rules and words. Names are taken in byte order, whatever the system's locale or the disk's
// order.
#ifndef RULES_FOLDER_H
#define RULES_FOLDER_H

#include <stdbool.h>
#include <stddef.h>

#include "text/diag.h"

// The whole file into the arena as a source; NULL with a message when it cannot be read or is larger than
// `most`.
struct source *folder_read_file(struct arena *arena, const char *path, size_t most, struct diags *diags);
// Paths of all files below `folder` that end in `ending`, sorted. NULL with a message when it cannot be read.
const char **folder_list(struct arena *arena, const char *folder, const char *ending, size_t *count,
                         struct diags *diags);

#endif
