// SPDX-License-Identifier: MIT
#include "rules/fingerprint.h"

#include <string.h>

#include "rules/folder.h"
#include "text/buf.h"
#include "text/digest.h"
#include "text/limits.h"

enum { DIGITS = 12 };

// The digest of digests: names and texts cannot run into each other.
const char *rules_fingerprint(struct arena *arena, const char *const *folders, size_t count,
                              struct diags *diags) {
    struct buf all = buf_start(arena);
    for (size_t i = 0; i < count; i++) {
        size_t files;
        const char **paths = folder_list(arena, folders[i], ".yaml", &files, diags);
        if (!paths) return NULL;
        buf_format(&all, "folder\n");
        for (size_t k = 0; k < files; k++) {
            const struct source *file = folder_read_file(arena, paths[k], LIMIT_RULE_FILE_BYTES, diags);
            if (!file) return NULL;
            const char *name = paths[k] + strlen(folders[i]);
            buf_format(&all, "%s %s\n", digest_sha256(arena, name, strlen(name)),
                       digest_sha256(arena, file->text, file->size));
        }
    }
    return arena_copy(arena, digest_sha256(arena, all.at, all.n), DIGITS);
}
