/* Runs the command line in a child of the test, in a folder of its own, and keeps what it says. */
#ifndef TESTS_UNIT_COMMAND_LINE_H
#define TESTS_UNIT_COMMAND_LINE_H

#include "cmd/command.h"

#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

struct said {
    int status;
    char out[1 << 16], err[1 << 14];
};

static struct said said;

static inline void said_read(FILE *file, char *to, size_t room)
{
    rewind(file);
    to[fread(to, 1, room - 1, file)] = 0;
    fclose(file);
}

/* One line, words apart by blanks: "check club.block". Returns the exit status, 128 and more after a signal; the output
 * is in `said`. */
static inline int say(const char *line)
{
    char words[1024], *argv[32] = { words };
    int argc = 0;
    snprintf(words, sizeof words, "setwright%s%s", *line ? " " : "", line);
    for (char *word = strtok(words, " "); word && argc < 31; word = strtok(NULL, " "))
        argv[argc++] = word;
    argv[argc] = NULL;
    FILE *out = tmpfile(), *err = tmpfile();
    assert_true(out && err);
    fflush(NULL);
    pid_t child = fork();
    assert_true(child >= 0);
    if (!child) {
        signal(SIGSEGV, SIG_DFL); /* a crash is a crash, not the test framework's affair */
        signal(SIGABRT, SIG_DFL);
        dup2(fileno(out), STDOUT_FILENO);
        dup2(fileno(err), STDERR_FILENO);
        exit(command_line(argc, argv));
    }
    int status = 0;
    assert_int_equal(waitpid(child, &status, 0), child);
    said.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    said_read(out, said.out, sizeof said.out);
    said_read(err, said.err, sizeof said.err);
    return said.status;
}

static inline void put(const char *path, const char *text)
{
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_int_equal(fwrite(text, 1, strlen(text), file), strlen(text));
    assert_int_equal(fclose(file), 0);
}

static inline const char *got(const char *path)
{
    static char text[1 << 16];
    FILE *file = fopen(path, "rb");
    if (!file)
        return NULL;
    text[fread(text, 1, sizeof text - 1, file)] = 0;
    fclose(file);
    return text;
}

/* A fresh folder to work in; gone with the run's TMPDIR. */
static inline int folder_setup(void **state)
{
    static char folder[512];
    const char *temporary = getenv("TMPDIR");
    (void)state;
    snprintf(folder, sizeof folder, "%s/setwright-XXXXXX", temporary ? temporary : P_tmpdir);
    return mkdtemp(folder) && chdir(folder) == 0 ? 0 : -1;
}

#define CLUB_TEXT \
    "lift squat { kind competition; loads bar; works quads }\n" \
    "athlete ines { max squat 100 kg on 2026-12-28 }\nathlete tomas { max squat 140 kg on 2026-12-28 }\n" \
    "block winter { for all; starts 2027-01-04; weeks 2; day A on mon { squat 3 x 5 at 80% } }\n"

#define assert_has(text, part) \
    do { \
        if (!strstr(text, part)) \
            fail_msg("no \"%s\" in \"%s\"", part, text); \
    } while (0)

#endif
