// SPDX-License-Identifier: MIT
// Files are read by descriptor with their size checked twice, so that a file that grows while it is read
// cannot overrun.
#include "rules/folder.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "text/order.h"

static void complain(struct diags *diags, enum code code, const char *path) {
    diags_add(diags, code, (struct place){NULL, 0, 0}, NULL, "%s: %s", path, strerror(errno));
}

static bool read_all(int file, char *to, size_t size) {
    for (size_t done = 0; done < size;) {
        ssize_t got = read(file, to + done, size - done);
        if (got < 0 && errno == EINTR) continue;
        if (got <= 0) return false;
        done += (size_t)got;
    }
    return true;
}

struct source *folder_read_file(struct arena *arena, const char *path, size_t most, struct diags *diags) {
    int file = open(path, O_RDONLY | O_CLOEXEC);
    struct stat about;
    if (file < 0 || fstat(file, &about) < 0) {
        complain(diags, CODE_OPEN, path);
        if (file >= 0) close(file);
        return NULL;
    }
    if (!S_ISREG(about.st_mode) || (size_t)about.st_size > most) {
        diags_add(diags, CODE_TOO_LARGE, (struct place){NULL, 0, 0}, NULL,
                  "%s: not a file of at most %zu bytes", path, most);
        close(file);
        return NULL;
    }
    // The arena may leave this function when memory runs out: ask for everything before the descriptor is at
    // risk.
    size_t size = (size_t)about.st_size;
    close(file);
    char *text = arena_alloc(arena, size + 1);
    struct source *source = arena_alloc(arena, sizeof *source);
    *source = (struct source){.name = arena_string(arena, path), .text = text, .size = size, .first_line = 1};
    file = open(path, O_RDONLY | O_CLOEXEC);
    bool fine = file >= 0 && read_all(file, text, size);
    if (!fine) complain(diags, CODE_READ, path);
    if (file >= 0) close(file);
    return fine ? source : NULL;
}

static int by_name(const void *a, const void *b) {
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static void close_folder(void *folder) {
    DIR **open = folder;
    if (*open) closedir(*open);
    *open = NULL;
}

struct names {
    const char **at;
    size_t count, room;
};

static void walk(struct arena *arena, const char *folder, const char *ending, struct names *names,
                 struct diags *diags, int depth) {
    DIR **open = arena_alloc(arena, sizeof *open);
    arena_defer(arena, close_folder, (void *)open);
    *open = opendir(folder);
    if (!*open) {
        complain(diags, CODE_OPEN, folder);
        return;
    }
    for (struct dirent *entry; (entry = readdir(*open));) {
        if (entry->d_name[0] == '.') continue;
        const char *path = arena_format(arena, "%s/%s", folder, entry->d_name);
        struct stat about;
        if (stat(path, &about) < 0)
            complain(diags, CODE_OPEN, path);
        else if (S_ISDIR(about.st_mode) && depth > 0)
            walk(arena, path, ending, names, diags, depth - 1);
        else {
            size_t n = strlen(path), e = strlen(ending);
            if (n < e || !text_same(path + n - e, ending)) continue;
            names->at = arena_grow(arena, (void *)names->at, names->count, &names->room, sizeof *names->at);
            names->at[names->count++] = path;
        }
    }
    close_folder((void *)open);
}

const char **folder_list(struct arena *arena, const char *folder, const char *ending, size_t *count,
                         struct diags *diags) {
    struct names names = {NULL, 0, 0};
    size_t before = diags->count;
    walk(arena, folder, ending, &names, diags, 4);
    *count = names.count;
    if (names.count) qsort((void *)names.at, names.count, sizeof *names.at, by_name);
    return diags->count > before && !names.count ? NULL : names.at;
}
