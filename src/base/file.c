#include "base/file.h"

#include "base/stop.h"
#include "base/vec.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <poll.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

/* Reasons */

static const struct {
    int number;
    const char *says;
} reasons[] = {
    { ENOENT, "no such file" },
    { ENOTDIR, "a part of the path is no folder" },
    { EISDIR, "it is a folder" },
    { EACCES, "no permission" },
    { EPERM, "no permission" },
    { EROFS, "the disk can only be read" },
    { ENOSPC, "the disk is full" },
    { EDQUOT, "the disk quota is used up" },
    { EFBIG, "the file would be too large" },
    { ENAMETOOLONG, "the name is too long" },
    { ELOOP, "its links lead in a circle" },
    { EMFILE, "too many files are open" },
    { ENFILE, "too many files are open" },
    { EPIPE, "the reader has gone away" },
    { EBADF, "it is closed" },
    { EIO, "the disk reports a fault" },
    { EINTR, "setwright was asked to stop" },
    { EXDEV, "it lies on another disk than its folder" },
    { ENOMEM, "the machine has no memory left" },
    { ENXIO, "nothing reads from it" },
};

static const char *reason_of(int number)
{
    for (size_t i = 0; i < sizeof reasons / sizeof *reasons; i++)
        if (reasons[i].number == number)
            return reasons[i].says;
    return "the system refuses it";
}

/* Reading */

enum { PATIENCE_MS = 1000, LONG_PATIENCE_MS = 10000, FIRST_ROOM = 64 * 1024, MB = 1024 * 1024 };

static const char *too_large(struct arena *arena, size_t most)
{
    if (most >= MB)
        return arena_format(arena, "larger than %zu MB", most / MB);
    return arena_format(arena, "larger than %zu bytes", most);
}

/* NULL when it may be read, else the reason why not. */
static const char *refusal_of(const struct stat *about, bool pipes)
{
    if (S_ISREG(about->st_mode) || (pipes && S_ISFIFO(about->st_mode)))
        return NULL;
    if (S_ISDIR(about->st_mode))
        return "it is a folder";
    return S_ISFIFO(about->st_mode) ? "it is a pipe, not a file" : "it is a device, not a file";
}

/* Waits for a pipe to have something or to end; false after `patience` milliseconds (-1: for ever). */
static bool pipe_waited(int fd, int patience)
{
    struct pollfd wait = { .fd = fd, .events = POLLIN };
    int ready;
    do
        ready = poll(&wait, 1, patience);
    while (ready < 0 && errno == EINTR);
    return ready > 0;
}

/* The next bytes of a pipe, 0 at its end. An end before anything came, even after a while, means that nobody writes; a
 * writer that is only slow makes the read say EAGAIN and is waited for. */
static ssize_t pipe_read(int fd, char *to, size_t room, bool begun, const char **why)
{
    bool ready = pipe_waited(fd, begun ? LONG_PATIENCE_MS : PATIENCE_MS);
    for (bool waited = begun;;) {
        ssize_t got = read(fd, to, room);
        if (got > 0 || (got == 0 && ready))
            return got;
        if (got == 0 || (errno != EINTR && errno != EAGAIN)) {
            *why = got == 0 ? "nobody writes to it" : reason_of(errno);
            return -1;
        }
        if (got < 0 && errno == EAGAIN && waited) {
            *why = "who writes to it keeps silent";
            return -1;
        }
        ready = pipe_waited(fd, LONG_PATIENCE_MS);
        waited = true;
    }
}

static ssize_t plain_read(int fd, char *to, size_t room, const char **why)
{
    ssize_t got;
    do
        got = read(fd, to, room);
    while (got < 0 && errno == EINTR);
    if (got < 0)
        *why = reason_of(errno);
    return got;
}

/* Whether somebody wrote to the file meanwhile. */
static bool is_changed(int fd, const struct stat *before)
{
    struct stat now;
    return S_ISREG(before->st_mode) && fstat(fd, &now) == 0 &&
           (now.st_size != before->st_size || now.st_mtim.tv_sec != before->st_mtim.tv_sec ||
            now.st_mtim.tv_nsec != before->st_mtim.tv_nsec);
}

static char *read_whole(struct arena *arena, int fd, const struct stat *about, size_t most, size_t *length,
                        const char **why)
{
    bool pipe = S_ISFIFO(about->st_mode);
    if (!pipe && (uint64_t)about->st_size > most) {
        *why = too_large(arena, most);
        return NULL;
    }
    size_t room = pipe ? FIRST_ROOM : (size_t)about->st_size + 1, used = 0;
    char *bytes = arena_alloc(arena, room + 1);
    for (;;) {
        if (used == room) {
            bytes = arena_grown(arena, bytes, used, 2 * room + 1);
            room *= 2;
        }
        ssize_t got = pipe ? pipe_read(fd, bytes + used, room - used, used > 0, why)
                           : plain_read(fd, bytes + used, room - used, why);
        if (got < 0)
            return NULL;
        used += (size_t)got;
        if (used > most) {
            *why = too_large(arena, most);
            return NULL;
        }
        if (got == 0)
            break;
    }
    if (is_changed(fd, about)) {
        *why = "it is being written to; try again";
        return NULL;
    }
    bytes[used] = '\0';
    *length = used;
    return bytes;
}

char *file_read(struct arena *arena, const char *path, size_t most, bool pipes, size_t *length, const char **why)
{
    /* O_NONBLOCK: opening a pipe must not wait for a writer */
    int fd = open(path, O_RDONLY | O_NONBLOCK | O_CLOEXEC | O_NOCTTY);
    if (fd < 0) {
        *why = errno == ENXIO ? "it is a device, not a file" : reason_of(errno);
        return NULL;
    }
    struct stat about;
    char *bytes = NULL;
    const char *refusal = fstat(fd, &about) == 0 ? refusal_of(&about, pipes) : reason_of(errno);
    if (refusal)
        *why = refusal;
    else
        bytes = read_whole(arena, fd, &about, most, length, why);
    close(fd);
    return bytes;
}

/* Writing */

enum { BUFFER = 4 * 1024, TRIES = 100, GLANCE_MS = 100, HELD_MOST = 1 << 20 };

struct file_out {
    int fd;             /* -1: closed */
    bool owned;         /* closed by us: not standard output */
    bool finished;
    bool may_wait;      /* a pipe, a socket, a terminal: whoever reads it may stop reading */
    const char *target; /* NULL: written directly */
    char *beside;       /* the unfinished file; NULL: none */
    bool seen;          /* bytes have gone to where they are meant to */
    int failure;        /* errno of the first failure, 0: none */
    size_t used;
    char buffer[BUFFER];
    char *held;         /* what is held back, HELD_MOST at most; NULL: nothing is */
    size_t held_used;
    int spool;          /* where it goes once that is full; -1: not there yet */
};

/* Where a link leads, so that the link stays and its target is replaced. */
static const char *target_of(struct arena *arena, const char *path)
{
    const char *real = file_real(arena, path);
    return real ? real : arena_copy(arena, path, strlen(path));
}

/* FNV-1a, so that many files begun in one folder do not try each other's names. */
static uint32_t hash_of(const char *text)
{
    uint32_t hash = 2166136261u;
    for (; *text; text++)
        hash = (hash ^ (unsigned char)*text) * 16777619u;
    return hash;
}

static int open_beside(struct arena *arena, struct file_out *out)
{
    const char *slash = strrchr(out->target, '/');
    int folder = slash ? (int)(slash + 1 - out->target) : 0;
    for (int i = 0; i < TRIES; i++) {
        out->beside = arena_format(arena, "%.*s.setwright-%ld-%08x-%d.tmp", folder, out->target, (long)getpid(), (unsigned)hash_of(out->target), i);
        int fd = open(out->beside, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        if (fd >= 0)
            return fd;
        if (errno != EEXIST)
            break;
    }
    out->beside = NULL;
    return -1;
}

/* A file that is replaced keeps its permissions; one that may not be written is not replaced either. */
static bool replaces(struct file_out *out, const struct stat *about)
{
    if (access(out->target, W_OK) != 0)
        return false;
    return fchmod(out->fd, about->st_mode & 0777) == 0;
}

static bool may_wait(int fd)
{
    struct stat about;
    return fstat(fd, &about) != 0 || !(S_ISREG(about.st_mode) || (S_ISCHR(about.st_mode) && !isatty(fd)));
}

static void out_drop(void *out)
{
    file_abandon(out);
}

/* Opens what is there and no file. A pipe wants a reader, who is given a moment to come. */
static int open_there(const char *path, bool pipe)
{
    enum { NAP_MS = 20 };
    int flags = O_WRONLY | O_CLOEXEC | O_NOCTTY | (pipe ? O_NONBLOCK : 0), fd;
    for (int waited = 0; (fd = open(path, flags)) < 0 && errno == ENXIO && pipe && waited < PATIENCE_MS; waited += NAP_MS)
        poll(NULL, 0, NAP_MS);
    return fd;
}

struct file_out *file_create(struct arena *arena, const char *path, const char **why)
{
    struct file_out *out = NEW(arena, struct file_out);
    out->fd = STDOUT_FILENO;
    out->spool = -1;
    out->may_wait = may_wait(out->fd);
    if (!path)
        return out;
    out->fd = -1;
    arena_ends(arena, out_drop, out);
    struct stat about;
    bool exists = stat(path, &about) == 0;
    out->owned = true;
    if (exists && !S_ISREG(about.st_mode)) {
        out->fd = open_there(path, S_ISFIFO(about.st_mode));
        out->may_wait = out->fd >= 0 && may_wait(out->fd);
    } else {
        out->may_wait = false;
        out->target = target_of(arena, path);
        out->fd = open_beside(arena, out);
    }
    if (out->fd >= 0 && (!exists || !out->target || replaces(out, &about)))
        return out;
    *why = reason_of(errno);
    if (errno == ENOENT)
        *why = "no such folder";
    if (errno == ENXIO)
        *why = exists && S_ISFIFO(about.st_mode) ? "nobody reads from this pipe" : "it is a device that is not there";
    file_abandon(out);
    return NULL;
}

/* A write into a pipe that nobody empties would wait for ever, the signals held: so it waits here, and asks. A pipe that takes
 * anything takes PIPE_BUF bytes. */
static bool may_write(struct file_out *out)
{
    struct pollfd wait = { .fd = out->fd, .events = POLLOUT };
    bool ready = !out->may_wait || poll(&wait, 1, GLANCE_MS) > 0;
    if (stop_asked())
        out->failure = EINTR;
    return ready && !out->failure;
}

static bool write_through(struct file_out *out, const char *bytes, size_t length);

/* ---- holding back ---- */

void file_hold(struct arena *arena, struct file_out *out)
{
    if (!out->target)
        out->held = arena_alloc(arena, HELD_MOST);
}

static bool spool_write(struct file_out *out, const char *bytes, size_t length)
{
    while (length > 0 && !out->failure) {
        ssize_t done = write(out->spool, bytes, length);
        if (done < 0 && errno != EINTR)
            out->failure = errno;
        if (done > 0)
            bytes += done, length -= (size_t)done;
        if (stop_asked())
            out->failure = EINTR;
    }
    return !out->failure;
}

static bool spool_open(struct file_out *out)
{
    const char *folder = getenv("TMPDIR");
    out->spool = open(folder && *folder ? folder : "/tmp", O_TMPFILE | O_RDWR | O_CLOEXEC, 0600);
    if (out->spool < 0)
        out->failure = errno;
    return out->spool >= 0 && spool_write(out, out->held, out->held_used);
}

static bool hold(struct file_out *out, const char *bytes, size_t length)
{
    if (out->spool < 0 && length <= HELD_MOST - out->held_used) {
        memcpy(out->held + out->held_used, bytes, length);
        out->held_used += length;
        return true;
    }
    return (out->spool >= 0 || spool_open(out)) && spool_write(out, bytes, length);
}

static void spool_close(struct file_out *out)
{
    if (out->spool >= 0)
        close(out->spool);
    out->spool = -1;
}

static bool spool_copy(struct file_out *out)
{
    char bytes[BUFFER];
    const char *why;
    ssize_t got = lseek(out->spool, 0, SEEK_SET) < 0 ? -1 : 1;
    while (got > 0 && !out->failure) {
        got = plain_read(out->spool, bytes, sizeof bytes, &why);
        if (got > 0)
            write_through(out, bytes, (size_t)got);
    }
    if (got < 0 && !out->failure)
        out->failure = EIO;
    return !out->failure;
}

/* All that was held back goes where it is meant to. */
static void let_go(struct file_out *out)
{
    char *held = out->held;
    out->held = NULL;
    if (out->spool >= 0)
        spool_copy(out);
    else if (held)
        write_through(out, held, out->held_used);
    spool_close(out);
}

static bool write_through(struct file_out *out, const char *bytes, size_t length)
{
    if (out->held)
        return hold(out, bytes, length);
    while (length > 0 && !out->failure) {
        if (!may_write(out))
            continue;
        size_t piece = !out->may_wait || length < PIPE_BUF ? length : PIPE_BUF;
        ssize_t done = write(out->fd, bytes, piece);
        if (done >= 0) {
            bytes += done;
            length -= (size_t)done;
            out->seen |= done > 0;
        } else if (errno != EINTR && errno != EAGAIN) {
            out->failure = errno;
        }
    }
    return !out->failure;
}

bool file_let_go(struct file_out *out)
{
    if (out->held)
        let_go(out);
    return !out->failure;
}

static bool flush(struct file_out *out)
{
    size_t used = out->used;
    out->used = 0;
    return write_through(out, out->buffer, used);
}

bool file_push(struct file_out *out)
{
    return !out->failure && flush(out);
}

struct file_state file_state(const struct file_out *out)
{
    return (struct file_state){ out->failure, out->seen };
}

void file_join(struct file_out *out, struct file_state state)
{
    out->failure = out->failure ? out->failure : state.failure;
    out->seen |= state.seen;
}

bool file_write(struct file_out *out, const char *bytes, size_t length)
{
    if (out->failure)
        return false;
    if (length > BUFFER - out->used && !flush(out))
        return false;
    if (length > BUFFER)
        return write_through(out, bytes, length);
    if (length)
        memcpy(out->buffer + out->used, bytes, length);
    out->used += length;
    return true;
}

static void close_out(struct file_out *out)
{
    if (out->owned && out->fd >= 0 && close(out->fd) != 0 && !out->failure && errno != EINTR)
        out->failure = errno;
    out->fd = -1;
}

/* Whether the target holds the very bytes that stand beside it. */
static bool is_unchanged(const struct file_out *out)
{
    char new[BUFFER], old[BUFFER];
    int fresh = open(out->beside, O_RDONLY | O_CLOEXEC), there = open(out->target, O_RDONLY | O_NONBLOCK | O_CLOEXEC | O_NOCTTY);
    struct stat a, b;
    bool same = fresh >= 0 && there >= 0 && fstat(fresh, &a) == 0 && fstat(there, &b) == 0 && S_ISREG(b.st_mode) &&
                a.st_size == b.st_size;
    const char *why;
    for (ssize_t got = 1; same && got > 0;) {
        got = plain_read(fresh, new, sizeof new, &why);
        same = got >= 0 && plain_read(there, old, sizeof old, &why) == got && memcmp(new, old, (size_t)got) == 0;
    }
    if (fresh >= 0)
        close(fresh);
    if (there >= 0)
        close(there);
    return same;
}

static void drop_beside(struct file_out *out)
{
    if (out->beside)
        unlink(out->beside);
    out->beside = NULL;
}

/* False after a failure, which has been told and cleaned up after. */
static bool is_well(struct file_out *out, const char **why)
{
    if (!out->failure)
        return true;
    *why = reason_of(out->failure);
    file_abandon(out);
    return false;
}

bool file_finish(struct file_out *out, const char **why)
{
    if (out->finished)
        return is_well(out, why);
    out->finished = true;
    if (!out->failure)
        flush(out);
    if (out->held && !out->failure)
        let_go(out);
    if (out->beside && !out->failure && is_unchanged(out))
        drop_beside(out);
    if (out->beside && !out->failure && fsync(out->fd) != 0 && errno != EINVAL)
        out->failure = errno;
    close_out(out);
    return is_well(out, why);
}

bool file_commit(struct file_out *out, const char **why)
{
    if (!file_finish(out, why))
        return false;
    if (out->beside && rename(out->beside, out->target) != 0)
        out->failure = errno;
    else
        out->beside = NULL;
    return is_well(out, why);
}

void file_abandon(struct file_out *out)
{
    spool_close(out);
    close_out(out);
    drop_beside(out);
}

bool file_is_seen(const struct file_out *out)
{
    return out->seen && !out->target;
}

bool file_failed(const struct file_out *out)
{
    return out->failure != 0;
}

bool file_fails_quietly(const struct file_out *out)
{
    return out->failure == EPIPE || out->failure == EINTR;
}

/* Folders */

const char *file_real(struct arena *arena, const char *path)
{
    char *real = arena_alloc(arena, PATH_MAX);
    if (realpath(path, real))
        return real;
    if (errno == ENOMEM)
        arena_exhausted(arena);
    return NULL;
}

bool file_is_folder(const char *path)
{
    struct stat about;
    return stat(path, &about) == 0 && S_ISDIR(about.st_mode);
}

bool folder_make(const char *path, const char **why)
{
    if (file_is_folder(path) || mkdir(path, 0777) == 0)
        return true;
    *why = errno == ENOENT ? "no such folder to make it in" : errno == EEXIST ? "it is a file, not a folder" : reason_of(errno);
    return false;
}

bool folder_place(const char *made, const char *path, const char **why)
{
    if (rename(made, path) == 0)
        return true;
    *why = reason_of(errno);
    return false;
}

void folder_drop(const char *path)
{
    rmdir(path);
}

static int compare_names(const void *left, const void *right)
{
    return strcmp(*(const char *const *)left, *(const char *const *)right);
}

static bool ends_in(const char *name, const char *ending)
{
    size_t length = strlen(name), tail = strlen(ending);
    return length >= tail && strcmp(name + length - tail, ending) == 0;
}

static void folder_close(void *of)
{
    DIR **opened = of;
    if (*opened)
        closedir(*opened);
    *opened = NULL;
}

const char *const *file_list(struct arena *arena, const char *folder, const char *ending, int *count, const char **why)
{
    DIR **opened = NEW(arena, DIR *);
    arena_ends(arena, folder_close, opened);
    if (!(*opened = opendir(folder))) {
        if (errno == ENOMEM)
            arena_exhausted(arena);
        *why = errno == ENOENT ? "no such folder" : reason_of(errno);
        return NULL;
    }
    VEC(const char *) names = { 0 };
    const struct dirent *entry;
    while (errno = 0, (entry = readdir(*opened)))
        if (ends_in(entry->d_name, ending))
            vec_add(arena, &names, arena_copy(arena, entry->d_name, strlen(entry->d_name)));
    int failure = errno;
    folder_close(opened);
    if (failure) {
        *why = reason_of(failure);
        return NULL;
    }
    *count = names.count;
    if (names.count == 0)
        return NEW(arena, const char *);
    qsort(names.at, (size_t)names.count, sizeof *names.at, compare_names);
    return names.at;
}
