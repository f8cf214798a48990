#include "cmd/workers.h"

#include "base/diag.h"

#include <errno.h>
#include <signal.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

enum {
    TURN_ATHLETES = 16,
    SHELVES = 3,
    SHELF_ROOM = 1 << 20 /* a turn of tables fits one, so that nobody waits for the one before */
};

/* What a copy writes lies on its shelves, in memory that both see; what it says tells how much and what of it. */
enum saying { SAYS_BYTES, SAYS_TURN_DONE, SAYS_SURE };
struct said {
    enum saying saying;
    int shelf;
    size_t length;
};

struct worker {
    pid_t id;
    int from, to; /* what it says; a byte for each shelf that is free again */
    char *shelves;
};
struct workers {
    struct worker *at;
    int count, sure;
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

/* ---- in a copy ---- */

struct telling {
    int to, from;
    char *shelves;
    int shelf, taken; /* where bytes go now; how many the other side has not cleared */
    size_t used;
};

/* What lies on the shelf is told of; then the next one has to be free. */
static bool shelf_tell(struct telling *telling)
{
    struct said said = { SAYS_BYTES, telling->shelf, telling->used };
    char cleared;
    if (!telling->used)
        return true;
    if (!tell(telling->to, &said, sizeof said))
        return false;
    telling->shelf = (telling->shelf + 1) % SHELVES;
    telling->used = 0;
    if (++telling->taken < SHELVES)
        return true;
    telling->taken--;
    return hear(telling->from, &cleared, 1);
}

static bool tell_bytes(void *context, const char *bytes, size_t length)
{
    struct telling *telling = context;
    while (length) {
        size_t room = SHELF_ROOM - telling->used, piece = length < room ? length : room;
        memcpy(telling->shelves + (size_t)telling->shelf * SHELF_ROOM + telling->used, bytes, piece);
        telling->used += piece;
        bytes += piece;
        length -= piece;
        if (telling->used == SHELF_ROOM && !shelf_tell(telling))
            return false;
    }
    return true;
}

static bool tell_done(void *context)
{
    struct telling *telling = context;
    struct said said = { .saying = SAYS_TURN_DONE };
    return shelf_tell(telling) && tell(telling->to, &said, sizeof said);
}

static bool tell_sure(void *context)
{
    struct telling *telling = context;
    struct said said = { .saying = SAYS_SURE };
    return tell(telling->to, &said, sizeof said);
}

static int copy_run(struct request *request, struct session *session, int index, struct telling *telling)
{
    struct setwright_turns turns = { index, request->threads, TURN_ATHLETES, tell_done, telling };
    struct setwright_choice choice = choice_of(request);
    choice.turns = &turns;
    choice.sure = tell_sure;
    return (int)setwright_build_checked(session->sw, request->format, &choice,
                                        (struct setwright_sink){ tell_bytes, telling });
}

/* ---- here ---- */

static void pipe_close(const int *ends)
{
    close(ends[0]);
    close(ends[1]);
}

static void shelves_free(void *shelves)
{
    munmap(shelves, (size_t)SHELVES * SHELF_ROOM);
}

static char *shelves_new(struct arena *arena)
{
    void *shelves = mmap(NULL, (size_t)SHELVES * SHELF_ROOM, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
    if (shelves == MAP_FAILED)
        return NULL;
    arena_ends(arena, shelves_free, shelves);
    return shelves;
}

static bool worker_begin(struct workers *workers, struct request *request, struct session *session, int index)
{
    int says[2], clears[2];
    char *shelves = shelves_new(request->arena);
    if (!shelves || pipe(says))
        return false;
    if (pipe(clears)) {
        pipe_close(says);
        return false;
    }
    fflush(NULL);
    pid_t id = fork();
    if (id == 0) {
        for (int i = 0; i < workers->count; i++) {
            close(workers->at[i].from);
            close(workers->at[i].to);
        }
        close(says[0]);
        close(clears[1]);
        _exit(copy_run(request, session, index,
                       &(struct telling){ .to = says[1], .from = clears[0], .shelves = shelves }));
    }
    close(says[1]);
    close(clears[0]);
    workers->at[workers->count++] = (struct worker){ id, says[0], clears[1], shelves };
    return id >= 0;
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

/* Once nobody can meet an error any more nothing is held back. */
static bool one_more_is_sure(struct workers *workers, struct file_out *out)
{
    return ++workers->sure < workers->count || file_let_go(out);
}

static bool take_shelf(const struct worker *worker, const struct said *said, struct file_out *out)
{
    if (said->shelf < 0 || said->shelf >= SHELVES || said->length > SHELF_ROOM ||
        !file_write(out, worker->shelves + (size_t)said->shelf * SHELF_ROOM, said->length))
        return false;
    tell(worker->to, "", 1); /* who is done has gone, and needs no shelf */
    return true;
}

/* One turn of one worker; false: it has no more, or the target takes no more. */
static bool take_turn(struct workers *workers, const struct worker *worker, struct file_out *out)
{
    struct said said;
    while (hear(worker->from, &said, sizeof said)) {
        if (said.saying == SAYS_TURN_DONE)
            return true;
        if (!(said.saying == SAYS_SURE ? one_more_is_sure(workers, out) : take_shelf(worker, &said, out)))
            return false;
    }
    return false;
}

static void worker_hang_up(struct worker *worker)
{
    if (worker->from < 0)
        return;
    close(worker->from);
    close(worker->to);
    worker->from = -1;
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
    for (int turn = 0; take_turn(workers, &workers->at[turn % workers->count], out);)
        turn++;
    for (int i = 0; i < workers->count; i++) { /* the others say once more that they are done */
        while (!file_failed(out) && take_turn(workers, &workers->at[i], out))
            continue;
        worker_hang_up(&workers->at[i]);
    }
    for (int i = 0; i < workers->count; i++) {
        int status = worker_wait(&workers->at[i]);
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
        worker_hang_up(worker);
        if (worker->id <= 0)
            continue;
        kill(worker->id, SIGKILL);
        worker_wait(worker);
    }
}
