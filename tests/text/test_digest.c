// SPDX-License-Identifier: MIT
// SHA-256 against the examples published with the standard, and against sha256sum of coreutils at every
// length about a block.
#include "support.h"

#include <stdio.h>

#include "text/buf.h"
#include "text/digest.h"

static const struct {
    const char *text;
    size_t times;
    const char *digest;
} EXAMPLES[] = {
    // FIPS 180-2, appendix B, and the empty text of its validation list.
    {"abc", 1, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"},
    {"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", 1,
     "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"},
    {"a", 1000000, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"},
    {"a", 0, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
};

static void check_examples(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof EXAMPLES / sizeof *EXAMPLES; i++) {
        struct buf text = buf_start(arena);
        for (size_t k = 0; k < EXAMPLES[i].times; k++) buf_text(&text, EXAMPLES[i].text);
        ck_assert_str_eq(digest_sha256(arena, text.at, text.n), EXAMPLES[i].digest);
    }
}

START_TEST(the_examples_of_the_standard) {
    within(check_examples, NULL);
}
END_TEST

static void check_lengths(struct arena *arena, void *context) {
    (void)context;
    FILE *sums = popen("i=50; while [ $i -le 70 ]; do head -c $i /dev/zero | tr '\\0' 'n' | sha256sum; "
                       "i=$((i+1)); done",
                       "r");
    ck_assert_ptr_nonnull(sums);
    char line[128], text[80];
    memset(text, 'n', sizeof text);
    for (size_t size = 50; size <= 70; size++) {
        ck_assert_ptr_nonnull(fgets(line, sizeof line, sums));
        line[64] = '\0';
        ck_assert_str_eq(digest_sha256(arena, text, size), line);
    }
    ck_assert_int_eq(pclose(sums), 0);
}

START_TEST(the_same_as_another_program) {
    within(check_lengths, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("digest");
    TCase *cases = tcase_create("digest");
    tcase_add_test(cases, the_examples_of_the_standard);
    tcase_add_test(cases, the_same_as_another_program);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
