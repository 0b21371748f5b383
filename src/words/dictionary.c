// SPDX-License-Identifier: MIT
// hunspell's handle keeps state while it looks a word up, so each worker has a dictionary of its own. Running
// out of memory within hunspell ends the program: its C interface has no way to tell.
#include "words/dictionary.h"

#include <ctype.h>
#include <hunspell/hunspell.h>
#include <stdio.h>
#include <string.h>

enum { HEAD = 8192 }; // SET stands at the top of an .aff file, after comments at most

static size_t read_head(const char *path, char head[HEAD + 1]) {
    FILE *file = fopen(path, "rb");
    if (!file) return 0;
    size_t size = fread(head, 1, HEAD, file);
    head[size] = '\0';
    fclose(file);
    return size;
}

// The encoding that the head of an .aff file names, into `name`; hunspell's own default where it names none.
static void read_encoding(const char *head, char name[32]) {
    static const char usual[] = "ISO8859-1";
    memcpy(name, usual, sizeof usual);
    for (const char *line = head; line; line = strchr(line, '\n'), line = line ? line + 1 : NULL) {
        if (!strncmp(line, "\xEF\xBB\xBF", 3)) line += 3;
        if (strncmp(line, "SET", 3) != 0 || (line[3] != ' ' && line[3] != '\t')) continue;
        size_t from = 3 + strspn(line + 3, " \t"), size = strcspn(line + from, " \t\r\n");
        if (size > 31) size = 31;
        memcpy(name, line + from, size);
        name[size] = '\0';
        return;
    }
}

static bool starts_with_count(const char *head) {
    if (!strncmp(head, "\xEF\xBB\xBF", 3)) head += 3;
    return isdigit((unsigned char)*head);
}

static void complain(const struct dictionary *d, struct diags *diags, const char *path, const char *what) {
    const char *hint = arena_format(diags->arena, "install the package %s", d->package);
    diags_add(diags, CODE_DICT_MISSING, (struct place){0}, hint,
              "spelling in %s English is not checked: %s %s", d->language, path, what);
}

// NULL when both files may be handed to hunspell.
static const char *find_fault(const struct dictionary *d, struct diags *diags, const char **path) {
    char head[HEAD + 1], encoding[32];
    *path = d->affix;
    if (!read_head(d->affix, head)) return "cannot be read";
    read_encoding(head, encoding);
    if (strcmp(encoding, "UTF-8") != 0)
        return arena_format(diags->arena, "is written in %s, and only UTF-8 is read", encoding);
    *path = d->words;
    if (!read_head(d->words, head)) return "cannot be read";
    return starts_with_count(head) ? NULL : "does not start with the count of its words";
}

bool dictionary_open(struct dictionary *d, struct diags *diags) {
    if (d->state != DICTIONARY_UNTRIED) return d->state == DICTIONARY_OPEN;
    d->state = DICTIONARY_ABSENT;
    const char *path = NULL, *fault = find_fault(d, diags, &path);
    if (fault) {
        complain(d, diags, path, fault);
        return false;
    }
    d->handle = Hunspell_create(d->affix, d->words);
    if (!d->handle || !Hunspell_spell(d->handle, "the") || Hunspell_spell(d->handle, "thqqe")) {
        complain(d, diags, d->words, "does not know the word 'the', or knows what is no word");
        dictionary_close(d);
        return false;
    }
    d->state = DICTIONARY_OPEN;
    return true;
}

void dictionary_close(struct dictionary *d) {
    if (d->handle) Hunspell_destroy(d->handle);
    d->handle = NULL;
    d->state = DICTIONARY_ABSENT;
}

bool dictionary_knows(const struct dictionary *d, const char *word) {
    return Hunspell_spell(d->handle, word) != 0;
}
