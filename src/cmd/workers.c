#include "cmd/workers.h"

#include "base/diag.h"

#include <errno.h>
#include <poll.h>
#include <sched.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

enum {
    TURN_ATHLETES = 32, /* whose tables are no more than a worker keeps until its turn (setwright_turns) */
    LOOKS_MOST = 1000   /* for its turn, before it sleeps: to be woken takes longer than most turns are away */
};

/* Whose turn it is to write goes around as a byte, from each worker to the next. */
struct worker {
    pid_t id;
    bool sure;
    int says[2]; /* a pipe to us */
    int turn[2]; /* a pipe to it: a byte when it may write */
};
struct said { /* once it is sure, and once it has ended */
    bool ended;
    struct file_state state;
};
struct workers {
    struct worker *at;
    int count;
};

static bool tell(int to, const void *bytes, size_t length)
{
    ssize_t written;
    while ((written = write(to, bytes, length)) < 0 && errno == EINTR)
        continue;
    return written == (ssize_t)length; /* less than a pipe takes at once */
}

static bool hear(int from, void *bytes, size_t length)
{
    for (char *at = bytes; length;) {
        ssize_t count = read(from, at, length);
        if (count == 0 || (count < 0 && errno != EINTR))
            return false;
        if (count > 0)
            at += count, length -= (size_t)count;
    }
    return true;
}

static void hang_up(int *end)
{
    if (*end >= 0)
        close(*end);
    *end = -1;
}

/* ---- in a copy ---- */

struct writing {
    int says, turn, next;
    struct file_out *out;
    bool sure, ours; /* it is our turn to write */
};

static bool is_readable(int from)
{
    struct pollfd look = { .fd = from, .events = POLLIN };
    return poll(&look, 1, 0) != 0;
}

/* Looks for it before it sleeps; where there are more workers than processors, others go on meanwhile. */
static bool turn_take(struct writing *w)
{
    char turn;
    for (int looks = 0; !w->ours && looks < LOOKS_MOST && !is_readable(w->turn); looks++)
        sched_yield();
    if (!w->ours)
        w->ours = w->sure && hear(w->turn, &turn, 1);
    return w->ours;
}

static bool write_bytes(void *context, const char *bytes, size_t length)
{
    struct writing *w = context;
    return turn_take(w) && file_write(w->out, bytes, length);
}

static bool turn_done(void *context)
{
    struct writing *w = context;
    if (!turn_take(w) || !file_push(w->out))
        return false;
    w->ours = false;
    tell(w->next, "", 1); /* who has no more turns has gone, and needs none */
    return true;
}

static bool is_sure(void *context)
{
    struct writing *w = context;
    struct said said = { .ended = false };
    w->sure = file_let_go(w->out) && tell(w->says, &said, sizeof said);
    return w->sure;
}

static int copy_run(struct request *request, struct session *session, int index, struct writing *w)
{
    struct setwright_turns turns = { index, request->threads, TURN_ATHLETES, turn_done, w };
    struct setwright_choice choice = choice_of(request);
    choice.turns = &turns;
    choice.sure = is_sure;
    int status = (int)setwright_build_checked(session->sw, request->format, &choice, (struct setwright_sink){ write_bytes, w });
    struct said said = { true, file_state(w->out) };
    tell(w->says, &said, sizeof said);
    return status;
}

/* ---- here ---- */

/* The copy keeps the ends that are its own. */
static void copy_begin(struct workers *workers, struct request *request, struct session *session, int index, struct file_out *out)
{
    struct worker *own = &workers->at[index], *next = &workers->at[(index + 1) % workers->count];
    struct writing w = { .says = own->says[1], .turn = own->turn[0], .next = next->turn[1], .out = out };
    own->says[1] = own->turn[0] = next->turn[1] = -1;
    for (int i = 0; i < workers->count; i++)
        for (int end = 0; end < 2; end++) {
            hang_up(&workers->at[i].says[end]);
            hang_up(&workers->at[i].turn[end]);
        }
    _exit(copy_run(request, session, index, &w));
}

static bool pipes_make(struct workers *workers)
{
    for (int i = 0; i < workers->count; i++)
        if (pipe(workers->at[i].says) || pipe(workers->at[i].turn))
            return false;
    return true;
}

struct workers *workers_begin(struct request *request, struct session *session, struct file_out *out)
{
    if (!setwright_may_share(session->sw))
        return NULL;
    struct workers *workers = NEW(request->arena, struct workers);
    workers->at = NEW_MANY(request->arena, struct worker, request->threads);
    workers->count = request->threads;
    for (int i = 0; i < workers->count; i++)
        workers->at[i] = (struct worker){ .says = { -1, -1 }, .turn = { -1, -1 } };
    bool made = pipes_make(workers);
    fflush(NULL);
    for (int i = 0; made && i < workers->count; i++) {
        workers->at[i].id = fork();
        if (workers->at[i].id == 0)
            copy_begin(workers, request, session, i, out);
        made = workers->at[i].id > 0;
    }
    for (int i = 0; i < workers->count; i++) {
        hang_up(&workers->at[i].says[1]);
        hang_up(&workers->at[i].turn[0]);
    }
    if (made)
        return workers;
    workers_end(workers);
    return NULL;
}

static bool all_sure(struct workers *workers)
{
    bool all = true;
    for (int i = 0; i < workers->count; i++) {
        struct said said;
        workers->at[i].sure = hear(workers->at[i].says[0], &said, sizeof said) && !said.ended;
        all &= workers->at[i].sure;
    }
    return all;
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

/* The first may write. From then on only they hold the ends of their turns: if one breaks off, the next one hears it. */
static void turns_begin(struct workers *workers)
{
    tell(workers->at[0].turn[1], "", 1);
    for (int i = 0; i < workers->count; i++)
        hang_up(&workers->at[i].turn[1]);
}

int workers_build(struct workers *workers, struct file_out *out)
{
    int worst = 0;
    bool writes = all_sure(workers);
    if (writes)
        turns_begin(workers);
    for (int i = 0; i < workers->count; i++) {
        struct worker *worker = &workers->at[i];
        struct said said;
        if (!writes && worker->sure)
            continue; /* it waits for its turn, and would for ever */
        if (writes && hear(worker->says[0], &said, sizeof said))
            file_join(out, said.state);
        int status = worker_wait(worker);
        worst = status > worst ? status : worst;
    }
    if (worst == EXIT_LIMIT)
        diag_say(stderr, "a part of the work broke off, mostly for want of memory; %s; ask for fewer --threads",
                 file_is_seen(out) ? "what came out is not whole" : "nothing was written");
    return worst;
}

void workers_end(struct workers *workers)
{
    for (int i = 0; workers && i < workers->count; i++) {
        struct worker *worker = &workers->at[i];
        for (int end = 0; end < 2; end++) {
            hang_up(&worker->says[end]);
            hang_up(&worker->turn[end]);
        }
        if (worker->id <= 0)
            continue;
        kill(worker->id, SIGKILL);
        worker_wait(worker);
    }
}
