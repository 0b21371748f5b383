// SPDX-License-Identifier: MIT
#include "shelf/filehash.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

static const uint64_t FIRST = 0x9E3779B97F4A7C15u, SECOND = 0xC2B2AE3D27D4EB4Fu;

static uint64_t mix(uint64_t sum, uint64_t word, uint64_t factor) {
    sum = (sum ^ word) * factor;
    return sum ^ (sum >> 29);
}

static const char *mix_blocks(uint64_t lanes[FILE_HASH_LANES], const char *bytes, size_t blocks) {
    uint64_t a = lanes[0], b = lanes[1], c = lanes[2], d = lanes[3];
    for (; blocks; blocks--, bytes += FILE_HASH_BLOCK) {
        uint64_t words[FILE_HASH_LANES];
        memcpy(words, bytes, sizeof words);
        a = mix(a, words[0], FIRST);
        b = mix(b, words[1], FIRST);
        c = mix(c, words[2], FIRST);
        d = mix(d, words[3], FIRST);
    }
    lanes[0] = a, lanes[1] = b, lanes[2] = c, lanes[3] = d;
    return bytes;
}

void file_hash_start(struct file_hash *hash) {
    *hash = (struct file_hash){
        .lanes = {0x243F6A8885A308D3u, 0x13198A2E03707344u, 0xA4093822299F31D0u, 0x082EFA98EC4E6C89u}};
}

void file_hash_add(struct file_hash *h, const char *bytes, size_t size) {
    h->size += size;
    if (h->filled) {
        size_t n = FILE_HASH_BLOCK - h->filled < size ? FILE_HASH_BLOCK - h->filled : size;
        memcpy(h->rest + h->filled, bytes, n);
        h->filled += (unsigned)n;
        bytes += n;
        size -= n;
        if (h->filled < FILE_HASH_BLOCK) return;
        mix_blocks(h->lanes, (const char *)h->rest, 1);
        h->filled = 0;
    }
    bytes = mix_blocks(h->lanes, bytes, size / FILE_HASH_BLOCK);
    h->filled = (unsigned)(size % FILE_HASH_BLOCK);
    if (h->filled) memcpy(h->rest, bytes, h->filled);
}

const char *file_hash_text(struct arena *arena, const struct file_hash *hash) {
    struct file_hash h = *hash;
    memset(h.rest + h.filled, 0, FILE_HASH_BLOCK - h.filled);
    mix_blocks(h.lanes, (const char *)h.rest, 1);
    uint64_t a = h.size, b = ~h.size;
    for (int i = 0; i < FILE_HASH_LANES; i++) {
        a = mix(a, h.lanes[i], FIRST);
        b = mix(b, h.lanes[i] << 32 | h.lanes[i] >> 32, SECOND);
    }
    return arena_format(arena, "%016llx%016llx%016llx", (unsigned long long)a, (unsigned long long)b,
                        (unsigned long long)h.size);
}

const char *file_hash_of(struct arena *arena, const char *path) {
    int file = open(path, O_RDONLY | O_CLOEXEC | O_NOCTTY | O_NONBLOCK);
    if (file < 0) return NULL;
    char bytes[16 << 10];
    struct file_hash hash;
    file_hash_start(&hash);
    ssize_t got;
    while ((got = read(file, bytes, sizeof bytes)) > 0 || (got < 0 && errno == EINTR))
        if (got > 0) file_hash_add(&hash, bytes, (size_t)got);
    close(file);
    return got < 0 ? NULL : file_hash_text(arena, &hash);
}
