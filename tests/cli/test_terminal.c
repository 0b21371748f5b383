// SPDX-License-Identifier: MIT
// What only shows on a terminal: color, progress, and the refusal to wait for a person who named no file. The
// command runs with chosen streams on a pseudo-terminal, all else in files.
#define _XOPEN_SOURCE 700
#include <check.h>
#include <fcntl.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { ROOM = 1 << 20 };

struct shown {
    char terminal[ROOM]; // all that the terminal got
    size_t size;
    int status;
};

static struct shown shown;

// Opens both sides; on Linux a line end arrives as "\r\n".
static int open_terminal(int *other) {
    int master = posix_openpt(O_RDWR | O_NOCTTY);
    ck_assert_int_ge(master, 0);
    ck_assert_int_eq(grantpt(master), 0);
    ck_assert_int_eq(unlockpt(master), 0);
    *other = open(ptsname(master), O_RDWR | O_NOCTTY);
    ck_assert_int_ge(*other, 0);
    return master;
}

// Runs `script` with $ASFOUND as the command and descriptor 9 as the terminal. Descriptor 8 is a pipe that
// ends when the terminal has shown `awaited`; with NULL, at once.
static void run_until(const char *script, const char *awaited) {
    int slave, master = open_terminal(&slave), held[2];
    ck_assert_int_eq(pipe(held), 0);
    const char *command = getenv("ASFOUND_COMMAND");
    ck_assert_msg(command != NULL, "ASFOUND_COMMAND does not name the program");
    setenv("ASFOUND", command, 1);
    pid_t child = fork();
    ck_assert_int_ge(child, 0);
    if (child == 0) {
        close(master);
        close(held[1]);
        if (dup2(slave, 9) < 0 || dup2(held[0], 8) < 0) _exit(99);
        execl("/bin/sh", "sh", "-c", script, (char *)NULL);
        _exit(99);
    }
    close(slave);
    close(held[0]);
    if (!awaited) close(held[1]);
    bool holding = awaited != NULL;
    shown.size = 0;
    shown.terminal[0] = '\0';
    // Reading ends with an error when the last writer has gone.
    for (;;) {
        ssize_t got = read(master, shown.terminal + shown.size, sizeof shown.terminal - 1 - shown.size);
        if (got <= 0) break;
        shown.size += (size_t)got;
        shown.terminal[shown.size] = '\0';
        if (!holding || !strstr(shown.terminal, awaited)) continue;
        close(held[1]);
        holding = false;
    }
    if (holding) close(held[1]);
    close(master);
    int status = 0;
    ck_assert_int_eq(waitpid(child, &status, 0), child);
    ck_assert(WIFEXITED(status));
    shown.status = WEXITSTATUS(status);
}

static void run(const char *script) {
    run_until(script, NULL);
}

static size_t count_of(const char *part) {
    size_t count = 0;
    for (const char *at = shown.terminal; (at = strstr(at, part)) != NULL; at += strlen(part)) count++;
    return count;
}

// Records for about as long as it takes: the feeder waits between them.
#define FEED(count, wait)                                                                                    \
    "i=0; while [ $i -lt " #count " ]; do echo '{\"type\": \"tin\", \"family\": \"other\"}'; sleep " #wait   \
    "; i=$((i + 1)); done | "
#define DRAFT "\"$ASFOUND\" draft --from ndjson --format json "

START_TEST(no_file_on_a_terminal_is_wrong_usage) {
    run("\"$ASFOUND\" draft <&9 >/dev/null 2>&9");
    ck_assert_int_eq(shown.status, 2);
    ck_assert_uint_eq(count_of("there is no FILE to read, and standard input is a terminal"), 1);
    ck_assert_uint_eq(count_of("see 'asfound draft --help'"), 1);
}
END_TEST

START_TEST(messages_are_colored_on_a_terminal) {
    run("unset NO_COLOR; TERM=xterm \"$ASFOUND\" sell 2>&9");
    ck_assert_uint_eq(count_of("\033[1;31merror\033[0m"), 1);
}
END_TEST

START_TEST(color_asks_the_environment_and_the_options) {
    run("TERM=xterm NO_COLOR=1 \"$ASFOUND\" draft gone.yaml 2>&9");
    ck_assert_uint_eq(count_of("gone.yaml: error: "), 1);
    run("unset NO_COLOR; TERM=dumb \"$ASFOUND\" draft gone.yaml 2>&9");
    ck_assert_uint_eq(count_of("gone.yaml: error: "), 1);
    run("unset NO_COLOR; TERM=xterm \"$ASFOUND\" draft --color=never gone.yaml 2>&9");
    ck_assert_uint_eq(count_of("gone.yaml: error: "), 1);
    run("unset NO_COLOR; TERM=xterm NO_COLOR= \"$ASFOUND\" draft gone.yaml 2>&9");
    ck_assert_uint_eq(count_of("\033[1;31merror\033[0m"), 1);
}
END_TEST

START_TEST(results_and_messages_are_colored_apart) {
    run("unset NO_COLOR; echo '{\"type\": \"tin\", \"family\": \"other\"}' | TERM=xterm "
        "\"$ASFOUND\" draft --from json - gone.yaml >&9 2>/dev/null");
    ck_assert_uint_gt(count_of("\033["), 0);
    run("unset NO_COLOR; echo '{\"type\": \"tin\", \"family\": \"other\"}' | TERM=xterm "
        "\"$ASFOUND\" draft --from json - gone.json 2>&9 | grep -c \"$(printf '\\033')\" | "
        "sed 's/^/lines of results in color: /' >&9");
    ck_assert_uint_eq(count_of("gone.json: \033[1;31merror\033[0m"), 1);
    ck_assert_uint_eq(count_of("lines of results in color: 0\r\n"), 1);
}
END_TEST

START_TEST(progress_is_shown_and_taken_away) {
    run(FEED(8, 0.05) DRAFT "- >/dev/null 2>&9");
    ck_assert_int_eq(shown.status, 0);
    ck_assert_uint_ge(count_of(" records done, "), 1);
    ck_assert_uint_le(count_of(" records done, "), 8);
    const char erase[] = "\r\033[K";
    ck_assert_uint_gt(shown.size, sizeof erase);
    ck_assert_str_eq(shown.terminal + shown.size - (sizeof erase - 1), erase);
}
END_TEST

START_TEST(progress_is_not_rewritten_for_every_record) {
    // Far more records than tenths of a second.
    struct timespec from, to;
    clock_gettime(CLOCK_MONOTONIC, &from);
    run("yes '{\"type\": \"tin\", \"family\": \"other\"}' | head -n 3000 | " DRAFT "- >/dev/null 2>&9");
    clock_gettime(CLOCK_MONOTONIC, &to);
    double tenths = 10.0 * ((double)(to.tv_sec - from.tv_sec) + 1e-9 * (double)(to.tv_nsec - from.tv_nsec));
    ck_assert_int_eq(shown.status, 0);
    ck_assert_double_lt(tenths, 1500.0);
    ck_assert_uint_ge(count_of(" records done, "), 1);
    ck_assert_double_le((double)count_of(" records done, "), tenths);
}
END_TEST

START_TEST(progress_keeps_away_from_messages_results_and_quiet) {
    run(FEED(6, 0.05) DRAFT "- >&9 2>&9");
    ck_assert_uint_eq(count_of(" records done, "), 0);
    run(FEED(6, 0.05) DRAFT "- --quiet >/dev/null 2>&9");
    ck_assert_uint_eq(shown.size, 0);
    run(FEED(6, 0.05) DRAFT "- gone.yaml >/dev/null 2>&9");
    ck_assert_uint_eq(count_of("\r\033[Kgone.yaml: "), 1);
    ck_assert_int_eq(shown.status, 5);
}
END_TEST

#define SHELF(rows)                                                                                          \
    "awk 'BEGIN { print \"sku,title\"; for (i = 0; i < " #rows "; i++) print \"T\" i \",OLD BISCUIT TIN "    \
    "number \" i }' "

START_TEST(rows_of_a_file_say_how_long_they_take) {
    char folder[] = "/tmp/asfound-XXXXXX";
    ck_assert_ptr_nonnull(mkdtemp(folder));
    setenv("WORK", folder, 1);
    run(SHELF(1500) "> \"$WORK/s.csv\"; \"$ASFOUND\" retitle --jobs 2 \"$WORK/s.csv\" 2>&9 > /dev/null");
    ck_assert_int_eq(shown.status, 0);
    ck_assert_uint_ge(count_of(" rows, "), 1);
    ck_assert_uint_ge(count_of(" a second, "), 1);
    ck_assert_uint_eq(count_of(" left"), count_of(" rows, "));
    // The line is gone before the summary is written.
    ck_assert_uint_eq(count_of("\r\033[K1500 of 1500 rows are stale"), 1);
    run("\"$ASFOUND\" retitle --quiet \"$WORK/s.csv\" 2>&9 > /dev/null");
    ck_assert_uint_eq(shown.size, 0);
    run("\"$ASFOUND\" retitle \"$WORK/s.csv\" 2> \"$WORK/told\" > /dev/null; grep -c 'a second' "
        "\"$WORK/told\" >&9; "
        "rm -r \"$WORK\"");
    ck_assert_uint_eq(count_of("0\r\n"), 1);
}
END_TEST

START_TEST(rows_of_a_pipe_have_no_end_to_tell) {
    run(SHELF(1500) "| \"$ASFOUND\" retitle --jobs 2 - 2>&9 > /dev/null");
    ck_assert_int_eq(shown.status, 0);
    ck_assert_uint_ge(count_of(" rows, "), 1);
    ck_assert_uint_eq(count_of(" left"), 0);
}
END_TEST

START_TEST(results_reach_a_terminal_at_once) {
    // The input ends only after its first listing was seen; what is kept back would make this wait for ever.
    run_until("{ echo '{\"id\": \"one\", \"type\": \"tin\", \"family\": \"other\"}'; cat <&8; } | " DRAFT
              "- 8<&- >&9 2>/dev/null",
              "\"id\":\"one\"");
    ck_assert_int_eq(shown.status, 0);
    ck_assert_uint_eq(count_of("\"id\":\"one\""), 1);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("terminal");
    TCase *tests = tcase_create("terminal");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, no_file_on_a_terminal_is_wrong_usage);
    tcase_add_test(tests, messages_are_colored_on_a_terminal);
    tcase_add_test(tests, color_asks_the_environment_and_the_options);
    tcase_add_test(tests, results_and_messages_are_colored_apart);
    tcase_add_test(tests, progress_is_shown_and_taken_away);
    tcase_add_test(tests, progress_is_not_rewritten_for_every_record);
    tcase_add_test(tests, progress_keeps_away_from_messages_results_and_quiet);
    tcase_add_test(tests, results_reach_a_terminal_at_once);
    tcase_add_test(tests, rows_of_a_file_say_how_long_they_take);
    tcase_add_test(tests, rows_of_a_pipe_have_no_end_to_tell);
    suite_add_tcase(suite, tests);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
