// SPDX-License-Identifier: MIT
// Runs whole programs from a small one: what the kernel reports as the peak of a child is never less than
// what its parent held, and the time to start it grows with that too.
//   drafts_run start RUNS COMMAND RECORD        alternating with hunspell on one word; medians and their
//   ratio drafts_run memory COMMAND FORM FILE FILE    peak memory for both files, and the second divided by
//   the first
#define _DEFAULT_SOURCE
#include <fcntl.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

extern char **environ;

struct ran {
    double wall, cpu; // seconds
    long peak;        // KiB
    int status;
};

static double seconds(struct timeval at) {
    return (double)at.tv_sec + (double)at.tv_usec * 1e-6;
}

static double now(void) {
    struct timespec at;
    clock_gettime(CLOCK_MONOTONIC, &at);
    return (double)at.tv_sec + (double)at.tv_nsec * 1e-9;
}

static int input_of(const char *text) {
    int ends[2];
    if (!text) return open("/dev/null", O_RDONLY | O_CLOEXEC);
    if (pipe(ends) < 0 || write(ends[1], text, strlen(text)) != (ssize_t)strlen(text)) exit(2);
    close(ends[1]);
    return ends[0];
}

static struct ran run(const char *const *words, const char *text) {
    posix_spawn_file_actions_t files;
    struct ran ran = {0};
    struct rusage usage;
    pid_t child;
    int status, input = input_of(text);
    posix_spawn_file_actions_init(&files);
    posix_spawn_file_actions_adddup2(&files, input, STDIN_FILENO);
    posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    posix_spawn_file_actions_addopen(&files, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    double begun = now();
    if (posix_spawnp(&child, words[0], &files, NULL, (char **)words, environ) ||
        wait4(child, &status, 0, &usage) < 0) {
        fprintf(stderr, "drafts_run: %s cannot be run\n", words[0]);
        exit(2);
    }
    ran.wall = now() - begun;
    ran.cpu = seconds(usage.ru_utime) + seconds(usage.ru_stime);
    ran.peak = usage.ru_maxrss;
    ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
    posix_spawn_file_actions_destroy(&files);
    close(input);
    if (ran.status > 1) {
        fprintf(stderr, "drafts_run: %s ended with status %d\n", words[0], ran.status);
        exit(2);
    }
    return ran;
}

static int by_value(const void *a, const void *b) {
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static double median(double *values, size_t count) {
    qsort(values, count, sizeof *values, by_value);
    return values[count / 2];
}

static int start(size_t runs, const char *command, const char *record) {
    enum { MOST = 1000, WARM = 2 };
    static double wall[2][MOST], cpu[2][MOST];
    const char *const draft[] = {command, "draft", record, NULL};
    const char *const spell[] = {"hunspell", "-d", "en_US", "-l", NULL};
    if (runs < 1 || runs > MOST) return 2;
    for (size_t i = 0; i < runs + WARM; i++)
        for (int which = 0; which < 2; which++) {
            struct ran ran = which ? run(spell, "lantern\n") : run(draft, NULL);
            if (i < WARM) continue; // the first runs bring the files into memory
            wall[which][i - WARM] = ran.wall;
            cpu[which][i - WARM] = ran.cpu;
        }
    double ours = median(wall[0], runs), theirs = median(wall[1], runs);
    printf("draft of one record: %.1f ms, of it CPU %.1f\n", ours * 1e3, median(cpu[0], runs) * 1e3);
    printf("hunspell -l of one word: %.1f ms, of it CPU %.1f\n", theirs * 1e3, median(cpu[1], runs) * 1e3);
    printf("start-ratio %.2f (medians of %zu runs each)\n", ours / theirs, runs);
    return 0;
}

static int memory(const char *command, const char *form, const char *const *files) {
    const char *const nothing[] = {"true", NULL};
    long floor = run(nothing, NULL).peak, peaks[2];
    for (int i = 0; i < 2; i++) {
        const char *const draft[] = {command, "draft", "--format", "json", "--from", form, files[i], NULL};
        struct ran ran = run(draft, NULL);
        peaks[i] = ran.peak;
        const char *slash = strrchr(files[i], '/');
        printf("%s: %ld KiB at most, CPU %.1f s\n", slash ? slash + 1 : files[i], ran.peak, ran.cpu);
        if (ran.peak <= floor) {
            fprintf(stderr, "drafts_run: this cannot be told from the %ld KiB of its parent\n", floor);
            return 2;
        }
    }
    printf("memory-ratio-%s %.3f\n", form, (double)peaks[1] / (double)peaks[0]);
    return 0;
}

int main(int argc, char **argv) {
    if (argc == 5 && !strcmp(argv[1], "start")) return start(strtoul(argv[2], NULL, 10), argv[3], argv[4]);
    if (argc == 6 && !strcmp(argv[1], "memory"))
        return memory(argv[2], argv[3], (const char *const *)argv + 4);
    fputs("usage: drafts_run start RUNS COMMAND RECORD | memory COMMAND FORM FILE FILE\n", stderr);
    return 2;
}
