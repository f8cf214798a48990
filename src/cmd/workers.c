#include "cmd/workers.h"

#include "base/diag.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdint.h>
#include <sys/wait.h>
#include <unistd.h>

enum {
    TURN_ATHLETES = 16,     /* a turn fits a pipe, so that nobody waits for the one before */
    PIPE_ROOM = 1 << 20,
    BYTES_MOST = 1 << 16    /* of one piece */
};

struct worker {
    pid_t id;
    int from; /* what it says */
};
struct workers {
    struct worker *at;
    int count;
};

/* ---- in a copy ---- */

struct telling {
    int to;
    bool failed;
};

static bool tell(struct telling *telling, const void *bytes, size_t length)
{
    for (const char *at = bytes; length && !telling->failed;) {
        ssize_t written = write(telling->to, at, length);
        if (written < 0 && errno != EINTR)
            telling->failed = true;
        if (written > 0)
            at += written, length -= (size_t)written;
    }
    return !telling->failed;
}

/* Pieces with their length before them. */
static bool tell_bytes(void *context, const char *bytes, size_t length)
{
    struct telling *telling = context;
    while (length) {
        uint32_t piece = length > BYTES_MOST ? BYTES_MOST : (uint32_t)length;
        if (!tell(telling, &piece, sizeof piece) || !tell(telling, bytes, piece))
            return false;
        bytes += piece;
        length -= piece;
    }
    return true;
}

/* No bytes: a turn is done. */
static bool tell_done(void *context)
{
    uint32_t none = 0;
    return tell(context, &none, sizeof none);
}

static int copy_run(struct request *request, struct session *session, int index, int to)
{
    struct telling telling = { .to = to };
    struct setwright_turns turns = { index, request->threads, TURN_ATHLETES, tell_done, &telling };
    struct setwright_choice choice = choice_of(request);
    choice.turns = &turns;
    return (int)setwright_build_checked(session->sw, request->format, &choice, (struct setwright_sink){ tell_bytes, &telling });
}

/* ---- here ---- */

static bool worker_begin(struct workers *workers, struct request *request, struct session *session, int index)
{
    int ends[2];
    if (pipe(ends))
        return false;
    fcntl(ends[1], F_SETPIPE_SZ, PIPE_ROOM); /* where that is more than allowed, the usual room does */
    fflush(NULL);
    pid_t id = fork();
    if (id == 0) {
        for (int i = 0; i < workers->count; i++)
            close(workers->at[i].from);
        close(ends[0]);
        _exit(copy_run(request, session, index, ends[1]));
    }
    close(ends[1]);
    if (id < 0) {
        close(ends[0]);
        return false;
    }
    workers->at[workers->count++] = (struct worker){ id, ends[0] };
    return true;
}

struct workers *workers_begin(struct request *request, struct session *session)
{
    struct workers *workers = NEW(request->arena, struct workers);
    workers->at = NEW_MANY(request->arena, struct worker, request->threads);
    for (int i = 0; i < request->threads; i++)
        if (!worker_begin(workers, request, session, i)) {
            workers_end(workers);
            return NULL;
        }
    return workers;
}

static bool hear(const struct worker *worker, void *bytes, size_t length)
{
    for (char *at = bytes; length;) {
        ssize_t count = read(worker->from, at, length);
        if (count == 0 || (count < 0 && errno != EINTR))
            return false;
        if (count > 0)
            at += count, length -= (size_t)count;
    }
    return true;
}

/* One turn of one worker; false: it has no more, or the target takes no more. */
static bool take_turn(const struct worker *worker, struct file_out *out)
{
    char bytes[BYTES_MOST];
    uint32_t length;
    while (hear(worker, &length, sizeof length)) {
        if (!length)
            return true;
        if (length > sizeof bytes || !hear(worker, bytes, length) || !file_write(out, bytes, length))
            return false;
    }
    return false;
}

/* One that did not end by itself was killed, mostly for want of memory. */
static int worker_wait(struct worker *worker)
{
    int status = 0;
    while (waitpid(worker->id, &status, 0) < 0 && errno == EINTR)
        continue;
    worker->id = 0;
    return WIFEXITED(status) ? WEXITSTATUS(status) : EXIT_LIMIT;
}

int workers_build(struct workers *workers, struct file_out *out)
{
    int worst = 0;
    for (int turn = 0; take_turn(&workers->at[turn % workers->count], out);)
        turn++;
    for (int i = 0; i < workers->count; i++) { /* the others say once more that they are done */
        while (!file_failed(out) && take_turn(&workers->at[i], out))
            continue;
        close(workers->at[i].from);
        workers->at[i].from = -1;
    }
    for (int i = 0; i < workers->count; i++) {
        int status = worker_wait(&workers->at[i]);
        worst = status > worst ? status : worst;
    }
    if (worst == EXIT_LIMIT)
        diag_say(stderr, "a part of the work broke off, mostly for want of memory; nothing was written; ask for fewer --threads");
    return worst;
}

void workers_end(struct workers *workers)
{
    for (int i = 0; workers && i < workers->count; i++) {
        struct worker *worker = &workers->at[i];
        if (worker->from >= 0)
            close(worker->from);
        if (worker->id <= 0)
            continue;
        kill(worker->id, SIGKILL);
        worker_wait(worker);
    }
}
