#include "cmd/progress.h"

#include <stdio.h>
#include <time.h>
#include <unistd.h>

enum { PATIENCE_MS = 1000, PAUSE_MS = 100 };

static int64_t now_ms(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (int64_t)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

struct progress progress_begin(void)
{
    return (struct progress){ .begun = now_ms(), .terminal = isatty(STDERR_FILENO) };
}

void progress_show(struct progress *progress, const char *what, int done, int total)
{
    if (!progress->terminal)
        return;
    int64_t now = now_ms();
    if (now - progress->begun < PATIENCE_MS || now - progress->shown < PAUSE_MS)
        return;
    progress->shown = now;
    fprintf(stderr, "\r%s: %d of %d", what, done, total);
    fflush(stderr);
}

void progress_end(struct progress *progress)
{
    if (progress->shown)
        fputs("\r\033[K", stderr);
    progress->shown = 0;
}
