// SPDX-License-Identifier: MIT
// Every offset is checked where it is followed, so that a damaged file gives wrong words and never a wrong
// read.
#include "words/wordbook.h"

#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include "words/wordbook_form.h"

struct wordbook {
    const unsigned char *bytes;
    size_t size;
    const struct wordbook_entry *entries;
    const uint32_t *slots;
    const struct wordbook_first *firsts;
    const char *texts;
    struct wordbook_head head;
};

static const struct wordbook *complain(const char *path, const char *what, struct diags *diags) {
    diags_add(diags, CODE_DICT, (struct place){NULL, 0, 0},
              "build the program again: the file is made with it", "the word book %s %s", path, what);
    return NULL;
}

static bool lay_out(struct wordbook *book) {
    if (book->size < sizeof book->head) return false;
    memcpy(&book->head, book->bytes, sizeof book->head);
    const struct wordbook_head *h = &book->head;
    bool powers = h->slots && !(h->slots & (h->slots - 1)) && h->firsts && !(h->firsts & (h->firsts - 1));
    if (h->magic != WORDBOOK_MAGIC || h->version != WORDBOOK_VERSION || !powers) return false;
    size_t entries = sizeof *h, slots = entries + (size_t)h->entries * sizeof *book->entries,
           firsts = slots + (size_t)h->slots * sizeof *book->slots,
           texts = firsts + (size_t)h->firsts * sizeof *book->firsts;
    if (texts + h->texts != book->size || !h->texts || book->bytes[book->size - 1] != '\0') return false;
    book->entries = (const struct wordbook_entry *)(const void *)(book->bytes + entries);
    book->slots = (const uint32_t *)(const void *)(book->bytes + slots);
    book->firsts = (const struct wordbook_first *)(const void *)(book->bytes + firsts);
    book->texts = (const char *)book->bytes + texts;
    return true;
}

static const unsigned char *map_file(const char *path, size_t *size) {
    int file = open(path, O_RDONLY | O_CLOEXEC);
    if (file < 0) return NULL;
    struct stat about;
    void *bytes = MAP_FAILED;
    if (!fstat(file, &about) && about.st_size > 0) {
        *size = (size_t)about.st_size;
        bytes = mmap(NULL, *size, PROT_READ, MAP_PRIVATE, file, 0);
    }
    close(file);
    return bytes == MAP_FAILED ? NULL : bytes;
}

const struct wordbook *wordbook_open(struct arena *arena, const char *path, struct diags *diags) {
    struct wordbook *book = arena_alloc(arena, sizeof *book);
    book->bytes = map_file(path, &book->size);
    if (!book->bytes) return complain(path, "cannot be opened", diags);
    arena_defer(arena, wordbook_close, book);
    if (!lay_out(book)) return complain(path, "was not made for this version", diags);
    return book;
}

void wordbook_close(void *thing) {
    struct wordbook *book = thing;
    munmap((void *)(uintptr_t)book->bytes, book->size);
}

static const char *text_at(const struct wordbook *book, uint32_t offset) {
    return offset < book->head.texts ? book->texts + offset : "";
}

static bool is_text(const struct wordbook *book, uint32_t offset, const char *text, size_t size) {
    const char *at = text_at(book, offset);
    return !strncmp(at, text, size) && !at[size];
}

uint32_t wordbook_number(const struct wordbook *book, const char *phrase, size_t size) {
    uint32_t mask = book->head.slots - 1;
    uint64_t hash = wordbook_hash(phrase, size);
    uint32_t at = (uint32_t)hash & mask, tag = wordbook_tag(hash);
    for (uint32_t n = 0; n <= mask && book->slots[at]; n++, at = (at + 1) & mask) {
        if ((book->slots[at] & ~WORDBOOK_SLOT_MASK) != tag) continue;
        uint32_t number = book->slots[at] & WORDBOOK_SLOT_MASK;
        if (!number || number > book->head.entries) return 0;
        if (is_text(book, book->entries[number - 1].phrase, phrase, size)) return number;
    }
    return 0;
}

void wordbook_entry(const struct wordbook *book, uint32_t number, struct word_entry *entry) {
    const struct wordbook_entry *e = &book->entries[number - 1];
    *entry = (struct word_entry){.phrase = text_at(book, e->phrase),
                                 .print = text_at(book, e->print),
                                 .uses = e->uses,
                                 .family = e->family ? text_at(book, e->family) : NULL,
                                 .candidate = e->candidate,
                                 .broader = e->broader ? text_at(book, e->broader) : NULL};
}

uint32_t wordbook_uses(const struct wordbook *book, uint32_t number) {
    return book->entries[number - 1].uses;
}

bool wordbook_find(const struct wordbook *book, const char *phrase, size_t size, struct word_entry *entry) {
    uint32_t number = book ? wordbook_number(book, phrase, size) : 0;
    if (number) wordbook_entry(book, number, entry);
    return number != 0;
}

size_t wordbook_longest(const struct wordbook *book, const char *word, size_t size) {
    uint32_t mask = book->head.firsts - 1;
    uint64_t hash = wordbook_hash(word, size);
    uint32_t at = (uint32_t)hash & mask, tag = wordbook_tag(hash);
    for (uint32_t n = 0; n <= mask && book->firsts[at].word; n++, at = (at + 1) & mask)
        if ((book->firsts[at].longest & ~WORDBOOK_SLOT_MASK) == tag &&
            is_text(book, book->firsts[at].word, word, size))
            return book->firsts[at].longest & WORDBOOK_SLOT_MASK;
    return 0;
}
