/* Disks that refuse. Each call that opens for writing, writes, secures, closes, renames or makes a folder is made to fail in turn,
 * for every reason a disk has. The run ends with 3 and a sentence that names the file and the reason; what was there is whole,
 * nothing new is half-written, and nothing unfinished is left. */
#include "command_line.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <sys/stat.h>
#include <sys/syscall.h>

/* ---- the calls, by number of the system's own ---- */

enum call { NONE, OPEN, WRITE, FSYNC, CLOSE, RENAME, MKDIR, FCHMOD, CALLS };

static struct {
    bool armed;
    enum call call;
    int fails, reason, stop; /* the how manieth fails, why; or a signal that comes just before it */
    int counts[CALLS];
} refused;

static bool refuses(enum call call)
{
    if (!refused.armed || ++refused.counts[call] != refused.fails || call != refused.call)
        return false;
    if (refused.stop)
        raise(refused.stop);
    else
        errno = refused.reason;
    return !refused.stop;
}

int open(const char *path, int flags, ...)
{
    va_list args;
    va_start(args, flags);
    mode_t mode = flags & O_CREAT ? va_arg(args, mode_t) : 0;
    va_end(args);
    if ((flags & (O_WRONLY | O_RDWR)) && refuses(OPEN))
        return -1;
    return (int)syscall(SYS_openat, AT_FDCWD, path, flags, mode);
}

ssize_t write(int fd, const void *bytes, size_t length)
{
    return refuses(WRITE) ? -1 : (ssize_t)syscall(SYS_write, fd, bytes, length);
}

int fsync(int fd)
{
    return refuses(FSYNC) ? -1 : (int)syscall(SYS_fsync, fd);
}

int close(int fd)
{
    bool refusing = refuses(CLOSE);
    int saved = errno, done = (int)syscall(SYS_close, fd); /* a file that close complains about is closed all the same */
    errno = refusing ? saved : errno;
    return refusing ? -1 : done;
}

int rename(const char *old, const char *new)
{
    return refuses(RENAME) ? -1 : (int)syscall(SYS_renameat2, AT_FDCWD, old, AT_FDCWD, new, 0);
}

int mkdir(const char *path, mode_t mode)
{
    return refuses(MKDIR) ? -1 : (int)syscall(SYS_mkdirat, AT_FDCWD, path, mode);
}

int fchmod(int fd, mode_t mode)
{
    return refuses(FCHMOD) ? -1 : (int)syscall(SYS_fchmod, fd, mode);
}

static const struct {
    enum call call;
    int reason;
    const char *says;
} reasons[] = {
    { OPEN, EROFS, "the disk can only be read" },
    { OPEN, EACCES, "no permission" },
    { OPEN, ENOSPC, "the disk is full" },
    { OPEN, EMFILE, "too many files are open" },
    { WRITE, ENOSPC, "the disk is full" },
    { WRITE, EDQUOT, "the disk quota is used up" },
    { WRITE, EFBIG, "the file would be too large" },
    { WRITE, EIO, "the disk reports a fault" },
    { WRITE, EROFS, "the disk can only be read" },
    { FSYNC, EIO, "the disk reports a fault" },
    { FSYNC, ENOSPC, "the disk is full" },
    { CLOSE, EIO, "the disk reports a fault" },
    { CLOSE, EDQUOT, "the disk quota is used up" },
    { RENAME, EACCES, "no permission" },
    { RENAME, ENOSPC, "the disk is full" },
    { RENAME, EROFS, "the disk can only be read" },
    { MKDIR, EROFS, "the disk can only be read" },
    { MKDIR, ENOSPC, "the disk is full" },
    { FCHMOD, EPERM, "no permission" },
};
enum { REASONS = sizeof reasons / sizeof *reasons };

/* ---- one run ---- */

static int run(const char *line, enum call call, int fails, int reason, int stop, int counts[CALLS])
{
    char words[512], *argv[32] = { words };
    int argc = 0, told[2], status = 0;
    snprintf(words, sizeof words, "setwright %s", line);
    for (char *word = strtok(words, " "); word && argc < 31; word = strtok(NULL, " "))
        argv[argc++] = word;
    argv[argc] = NULL;
    assert_int_equal(pipe(told), 0);
    pid_t child = fork();
    if (!child) {
        if (!freopen("../out", "w", stdout) || !freopen("../err", "w", stderr))
            _exit(-1);
        refused.call = call, refused.fails = fails, refused.reason = reason, refused.stop = stop;
        refused.armed = true;
        status = command_line(argc, argv);
        refused.armed = false;
        fflush(NULL);
        bool sent = write(told[1], refused.counts, sizeof refused.counts) == sizeof refused.counts;
        _exit(sent ? status : -1);
    }
    close(told[1]);
    assert_int_equal(waitpid(child, &status, 0), child);
    memset(counts, 0, sizeof(int[CALLS]));
    bool whole = read(told[0], counts, sizeof(int[CALLS])) == sizeof(int[CALLS]);
    close(told[0]);
    FILE *err = fopen("../err", "rb");
    said_read(err, said.err, sizeof said.err);
    return WIFSIGNALED(status) ? 128 + WTERMSIG(status) : whole ? WEXITSTATUS(status) : -1;
}

/* ---- the folder ---- */

/* What stands in the folder and below it: names and bytes, one after the other. */
static char *below(char *to, const char *folder)
{
    struct dirent **list;
    int count = scandir(folder, &list, NULL, alphasort);
    for (int i = 0; i < count; i++) {
        char path[PATH_MAX];
        struct stat about;
        snprintf(path, sizeof path, "%s/%s", folder, list[i]->d_name);
        if (list[i]->d_name[0] != '.' || strstr(list[i]->d_name, "tmp"))
            to += sprintf(to, "\n== %s\n", path);
        if (stat(path, &about) == 0 && S_ISREG(about.st_mode))
            to += sprintf(to, "%s", got(path));
        else if (list[i]->d_name[0] != '.')
            to = below(to, path);
        free(list[i]);
    }
    free(list);
    return to;
}

static void folder_fill(void)
{
    int ignored = system("rm -rf * .setwright*; mkdir sheets");
    (void)ignored;
    put("c.block", CLUB_TEXT);
    put("long.block", "lift squat\nathlete ines { max squat 100 kg on 2026-12-28 }\n"
                      "block long { for all; starts 2027-01-04; weeks 40; day A on mon { squat 3 x 5 at 60% } }\n");
    put("old.csv", "as it was\n");
    put("sheets/ines-winter.csv", "as it was\n");
}

/* ---- every call in turn ---- */

static const struct {
    const char *line;
    const char *named; /* in what is said */
    bool many;         /* several files: those before the failed rename are new */
} rows[] = {
    { "build -f csv -o old.csv c.block", "old.csv: ", false },
    { "build -f csv -o new.csv c.block", "new.csv: ", false },
    { "build -f yaml -o new.yaml c.block", "new.yaml: ", false },
    { "build -f csv -o sheets/ c.block", "sheets/", true },
    { "build -o new/ --per week c.block", "new/", true },
    { "diary -o new.block c.block", "new.block: ", false },
    { "diary -o new.block long.block", "new.block: ", false },
    { "build -f csv -o old.csv long.block", "old.csv: ", false },
    { "check --write-accept old.txt c.block", "old.txt: ", false },
    { "new club", "club: ", false },
};
enum { ROWS = sizeof rows / sizeof *rows };

static char before[1 << 16], after[1 << 16];

/* Whether the run noticed: files that were only read may be closed badly. */
static bool one_call_fails(int row, int reason, int fails)
{
    int counts[CALLS];
    const char *line = rows[row].line;
    folder_fill();
    below(before, ".");
    int status = run(line, reasons[reason].call, fails, reasons[reason].reason, 0, counts);
    below(after, ".");
    if (status == 0 && reasons[reason].call == CLOSE)
        return false;
    const char *end = strchr(said.err, '\n');
    if (status != 3 || strncmp(said.err, "setwright: ", 11) || !strstr(said.err, rows[row].named) ||
        !strstr(said.err, reasons[reason].says) || !end || end[1])
        fail_msg("%s, call %d no. %d: status %d, \"%s\"", line, reasons[reason].call, fails, status, said.err);
    if (strstr(after, "tmp") || (strcmp(before, after) != 0 && !(rows[row].many && reasons[reason].call == RENAME)))
        fail_msg("%s, call %d no. %d: the folder is not as it was: %s", line, reasons[reason].call, fails, after);
    return true;
}

static void each_call_may_fail(void **state)
{
    (void)state;
    assert_true(mkdir("work", 0777) == 0 && chdir("work") == 0);
    for (int i = 0; i < ROWS; i++) {
        int counts[CALLS];
        folder_fill();
        assert_int_equal(run(rows[i].line, NONE, 0, 0, 0, counts), 0);
        assert_true(counts[WRITE] && counts[RENAME] && counts[FSYNC]);
        for (int j = 0; j < REASONS; j++) {
            int noticed = 0, count = counts[reasons[j].call];
            for (int fails = 1; fails <= count; fails++)
                noticed += one_call_fails(i, j, fails);
            assert_true(noticed > 0 || !count);
        }
    }
}

/* A signal before each call: nothing is left, and the run ends by the signal. Once the first file is put in its place the others
 * follow. */
static void a_stop_leaves_nothing_unfinished(void **state)
{
    static const int stops[] = { SIGINT, SIGTERM, SIGHUP };
    (void)state;
    for (int i = 0; i < ROWS; i++) {
        int counts[CALLS], ignored[CALLS];
        folder_fill();
        assert_int_equal(run(rows[i].line, NONE, 0, 0, 0, counts), 0);
        for (int call = OPEN; call < CALLS; call++)
            for (int fails = 1; fails <= counts[call]; fails++) {
                int stop = stops[(call + fails) % 3];
                folder_fill();
                int status = run(rows[i].line, (enum call)call, fails, 0, stop, ignored);
                below(after, ".");
                if (status != 128 + stop || said.err[0] || strstr(after, "tmp"))
                    fail_msg("%s, stopped at call %d no. %d: status %d, \"%s\", %s", rows[i].line, call, fails, status, said.err, after);
            }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_call_may_fail),
        cmocka_unit_test(a_stop_leaves_nothing_unfinished),
    };
    return cmocka_run_group_tests(tests, folder_setup, NULL);
}
