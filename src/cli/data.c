// SPDX-License-Identifier: MIT
// The data lie beside the program, at ../share/asfound, in a build folder as in an installed tree: a copied
// tree still works and no path is compiled in. ASFOUND_DATA overrides it, and then nothing else is tried.
#include "cli/data.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static const char *default_folder(struct session *session) {
    char path[PATH_MAX];
    ssize_t size = readlink("/proc/self/exe", path, sizeof path - 1);
    if (size > 0) {
        // This path is whole and has no links in it: two names less is the folder above the program's own.
        path[size] = '\0';
        for (int names = 0; names < 2; names++) {
            char *slash = strrchr(path, '/');
            if (slash) *slash = '\0';
        }
        return arena_format(session->arena, "%s/share/asfound", path);
    }
    const char *slash = strrchr(session->program, '/');
    if (!slash) return NULL;
    return arena_format(session->arena, "%.*s/../share/asfound", (int)(slash - session->program),
                        session->program);
}

static const char *named_folder(struct session *session) {
    const char *told = getenv("ASFOUND_DATA");
    return told && *told ? told : default_folder(session);
}

static bool has_rules(struct session *session, const char *folder) {
    struct stat about;
    return stat(arena_format(session->arena, "%s/rules", folder), &about) == 0 && S_ISDIR(about.st_mode);
}

const char *data_folder_if_any(struct session *session) {
    const char *folder = named_folder(session);
    return folder && has_rules(session, folder) ? folder : NULL;
}

const char *data_folder(struct session *session) {
    const char *folder = named_folder(session);
    const char *hint = "set ASFOUND_DATA to the folder that holds 'rules' and 'dict'";
    if (folder && has_rules(session, folder)) return folder;
    if (folder)
        session_complain(session, CODE_RULE_NONE, NULL, hint, "there are no rules in %s", folder);
    else
        session_complain(session, CODE_RULE_NONE, NULL, hint,
                         "the folder of the program is not known, and so its rules are not");
    return NULL;
}
