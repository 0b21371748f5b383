// SPDX-License-Identifier: MIT
// Nettle's context lies on the stack and holds no resource, so an arena that gives up leaves nothing behind.
#include "text/digest.h"

#include <nettle/sha2.h>
#include <stdint.h>

const char *digest_sha256(struct arena *arena, const char *bytes, size_t size) {
    static const char digits[] = "0123456789abcdef";
    struct sha256_ctx context;
    uint8_t digest[SHA256_DIGEST_SIZE];
    sha256_init(&context);
    sha256_update(&context, size, (const uint8_t *)bytes);
    sha256_digest(&context, sizeof digest, digest);
    char *text = arena_alloc(arena, 2 * sizeof digest + 1);
    for (size_t i = 0; i < sizeof digest; i++) {
        text[2 * i] = digits[digest[i] >> 4];
        text[2 * i + 1] = digits[digest[i] & 15];
    }
    text[2 * sizeof digest] = '\0';
    return text;
}
