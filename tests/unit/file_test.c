#include "base/file.h"
#include "base/stop.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { MOST = 1024 * 1024 };

static jmp_buf out_of_memory;

struct place {
    struct arena *arena;
    char folder[32];
};

static int place_setup(void **state)
{
    struct place *place = calloc(1, sizeof *place);
    place->arena = arena_new(&out_of_memory);
    strcpy(place->folder, "/tmp/file_test.XXXXXX");
    *state = place;
    signal(SIGPIPE, SIG_IGN);
    return mkdtemp(place->folder) ? 0 : -1;
}

static int place_teardown(void **state)
{
    struct place *place = *state;
    char command[64];
    snprintf(command, sizeof command, "rm -rf %s", place->folder);
    int failed = system(command);
    arena_free(place->arena);
    free(place);
    return failed;
}

static const char *path_to(const struct place *place, const char *name)
{
    return arena_format(place->arena, "%s/%s", place->folder, name);
}

static void put(const char *path, const char *text)
{
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fputs(text, file);
    fclose(file);
}

static const char *got(const struct place *place, const char *path)
{
    size_t length;
    const char *why = NULL, *text = file_read(place->arena, path, MOST, false, &length, &why);
    return text ? text : why;
}

static int entries(const struct place *place)
{
    int count = 0;
    const char *why;
    assert_non_null(file_list(place->arena, place->folder, "", &count, &why));
    return count - 2; /* . and .. */
}

static void files_are_read_whole(void **state)
{
    const struct place *place = *state;
    const char *path = path_to(place, "a.block"), *why;
    size_t length;
    put(path, "lift squat\n");
    assert_string_equal(got(place, path), "lift squat\n");
    put(path, "");
    assert_string_equal(got(place, path), "");
    put(path, "12345");
    assert_non_null(file_read(place->arena, path, 5, false, &length, &why));
    assert_int_equal(length, 5);
    assert_null(file_read(place->arena, path, 4, false, &length, &why));
    assert_string_equal(why, "larger than 4 bytes");
    assert_int_equal(truncate(path, 65 * MOST), 0);
    assert_null(file_read(place->arena, path, 64 * MOST, false, &length, &why));
    assert_string_equal(why, "larger than 64 MB");
    assert_non_null(
        file_read(place->arena, "/proc/self/status", MOST, false, &length, &why)); /* says that it is empty */
    assert_true(length > 100);
}

static void what_is_no_file_is_named(void **state)
{
    const struct place *place = *state;
    const char *file = path_to(place, "a.block");
    put(file, "x");
    assert_string_equal(got(place, path_to(place, "none")), "no such file");
    assert_string_equal(got(place, place->folder), "it is a folder");
    assert_string_equal(got(place, path_to(place, "a.block/b")), "a part of the path is no folder");
    assert_string_equal(got(place, "/dev/zero"), "it is a device, not a file");
    assert_string_equal(got(place, "/dev/null"), "it is a device, not a file");
    assert_int_equal(symlink("loop", path_to(place, "loop")), 0);
    assert_string_equal(got(place, path_to(place, "loop")), "its links lead in a circle");
    assert_int_equal(mkfifo(path_to(place, "pipe"), 0600), 0);
    assert_string_equal(got(place, path_to(place, "pipe")), "it is a pipe, not a file");
    assert_true(file_is_folder(place->folder));
    assert_false(file_is_folder(file));
    assert_false(file_is_folder(path_to(place, "none")));
}

static void a_pipe_without_a_writer_is_not_waited_for(void **state)
{
    const struct place *place = *state;
    const char *path = path_to(place, "pipe"), *why = NULL;
    size_t length;
    mkfifo(path, 0600);
    time_t begun = time(NULL);
    assert_null(file_read(place->arena, path, MOST, true, &length, &why));
    assert_string_equal(why, "nobody writes to it");
    assert_true(time(NULL) - begun <= 3);
}

/* A writer that is at once there, and one that takes longer than the reader waits for one to come. */
static void a_pipe_is_read_to_its_end(void **state)
{
    const struct place *place = *state;
    for (int pause = 0; pause < 2; pause++) {
        int ends[2];
        assert_int_equal(pipe(ends), 0);
        pid_t writer = fork();
        if (writer == 0) {
            usleep(pause ? 1500000 : 0);
            for (int i = 0; i < 20000; i++)
                if (write(ends[1], "0123456789", 10) != 10)
                    _exit(1);
            _exit(0);
        }
        close(ends[1]);
        size_t length = 0;
        const char *why = "";
        const char *path = arena_format(place->arena, "/dev/fd/%d", ends[0]);
        const char *bytes = file_read(place->arena, path, MOST, true, &length, &why);
        close(ends[0]);
        waitpid(writer, NULL, 0);
        assert_string_equal(why, "");
        assert_non_null(bytes);
        assert_int_equal(length, 200000);
        assert_memory_equal(bytes + 199990, "0123456789", 11);
    }
}

static void a_pipe_has_its_limit_too(void **state)
{
    const struct place *place = *state;
    int ends[2];
    assert_int_equal(pipe(ends), 0);
    assert_int_equal(write(ends[1], "0123456789", 10), 10);
    size_t length;
    const char *why = "";
    assert_null(file_read(place->arena, arena_format(place->arena, "/dev/fd/%d", ends[0]), 9, true, &length, &why));
    assert_string_equal(why, "larger than 9 bytes");
    close(ends[0]);
    close(ends[1]);
}

static void a_file_appears_only_when_complete(void **state)
{
    const struct place *place = *state;
    const char *path = path_to(place, "sheet.txt"), *why = "";
    put(path, "old");
    struct file_out *out = file_create(place->arena, path, &why);
    assert_non_null(out);
    for (int i = 0; i < 10000; i++)
        assert_true(file_write(out, "0123456789", 10));
    assert_string_equal(got(place, path), "old");
    assert_true(file_commit(out, &why));
    assert_int_equal(strlen(got(place, path)), 100000);
    assert_int_equal(entries(place), 1);
}

static void what_is_given_up_leaves_nothing(void **state)
{
    const struct place *place = *state;
    const char *path = path_to(place, "sheet.txt"), *why = "";
    struct file_out *out = file_create(place->arena, path, &why);
    assert_int_equal(entries(place), 1);
    assert_true(file_write(out, "half", 4));
    file_abandon(out);
    assert_int_equal(entries(place), 0);
    assert_null(file_create(place->arena, path_to(place, "none/sheet.txt"), &why));
    assert_string_equal(why, "no such folder");
    assert_null(file_create(place->arena, place->folder, &why));
    assert_string_equal(why, "it is a folder");
}

static void a_failed_rename_leaves_nothing(void **state)
{
    const struct place *place = *state;
    const char *path = path_to(place, "sheet.txt"), *why = "";
    struct file_out *out = file_create(place->arena, path, &why);
    assert_int_equal(mkdir(path, 0700), 0); /* a folder came in between */
    assert_true(file_write(out, "x", 1));
    assert_false(file_commit(out, &why));
    assert_string_equal(why, "it is a folder");
    assert_int_equal(entries(place), 1);
}

static unsigned mode_of(const char *path)
{
    struct stat about;
    assert_int_equal(stat(path, &about), 0);
    return about.st_mode & 07777;
}

static void write_word(const struct place *place, const char *path, const char *word)
{
    const char *why = "";
    struct file_out *out = file_create(place->arena, path, &why);
    assert_non_null(out);
    assert_true(file_write(out, word, strlen(word)));
    assert_true(file_commit(out, &why));
}

static void permissions_are_as_umask_and_the_old_file_say(void **state)
{
    const struct place *place = *state;
    const char *fresh = path_to(place, "new"), *old = path_to(place, "old");
    mode_t before = umask(027);
    write_word(place, fresh, "x");
    put(old, "x");
    chmod(old, 0606);
    write_word(place, old, "y");
    umask(before);
    assert_int_equal(mode_of(fresh), 0640);
    assert_int_equal(mode_of(old), 0606);
    assert_string_equal(got(place, old), "y");
}

static void a_link_stays_a_link(void **state)
{
    const struct place *place = *state;
    const char *link = path_to(place, "link"), *target = path_to(place, "target");
    struct stat about;
    put(target, "old");
    assert_int_equal(symlink("target", link), 0);
    write_word(place, link, "new");
    assert_int_equal(lstat(link, &about), 0);
    assert_true(S_ISLNK(about.st_mode));
    assert_string_equal(got(place, target), "new");
}

static void the_same_bytes_are_not_written_again(void **state)
{
    const struct place *place = *state;
    const char *path = path_to(place, "sheet.txt");
    struct stat before, after;
    enum { LONG = 10000 }; /* more than is compared at once */
    char *text = arena_alloc(place->arena, LONG + 1);
    memset(text, 'x', LONG);
    write_word(place, path, text);
    assert_int_equal(stat(path, &before), 0);
    write_word(place, path, text);
    assert_int_equal(stat(path, &after), 0);
    assert_int_equal(after.st_ino, before.st_ino);
    assert_int_equal(after.st_mtim.tv_nsec, before.st_mtim.tv_nsec);
    assert_int_equal(entries(place), 1);
    text[LONG - 1] = 'y'; /* the last byte, as many as before */
    write_word(place, path, text);
    assert_string_equal(got(place, path), text);
    text[LONG - 1] = 0; /* one byte fewer */
    write_word(place, path, text);
    assert_string_equal(got(place, path), text);
    write_word(place, path, "");
    assert_string_equal(got(place, path), "");
}

static void many_files_appear_together(void **state)
{
    const struct place *place = *state;
    const char *why = "";
    enum { MANY = 300 };
    struct file_out *out[MANY];
    for (int i = 0; i < MANY; i++) {
        out[i] = file_create(place->arena, path_to(place, arena_format(place->arena, "%d.txt", i)), &why);
        assert_true(file_write(out[i], "sheet", 5) && file_finish(out[i], &why) && file_finish(out[i], &why));
    }
    assert_string_equal(got(place, path_to(place, "0.txt")), "no such file");
    assert_true(file_commit(out[0], &why) && file_commit(out[1], &why));
    for (int i = 2; i < MANY; i++)
        file_abandon(out[i]);
    assert_int_equal(entries(place), 2);
    assert_string_equal(got(place, path_to(place, "1.txt")), "sheet");
    const char *folder = path_to(place, "folder");
    assert_true(folder_make(folder, &why));
    put(path_to(place, "folder/a"), "");
    folder_drop(folder);
    assert_true(file_is_folder(folder));
    unlink(path_to(place, "folder/a"));
    folder_drop(folder);
    assert_false(file_is_folder(folder));
}

static void a_full_disk_is_told(void **state)
{
    const struct place *place = *state;
    const char *why = "";
    struct file_out *out = file_create(place->arena, "/dev/full", &why);
    assert_non_null(out);
    assert_true(file_write(out, "x", 1)); /* still in the buffer */
    assert_false(file_commit(out, &why));
    assert_string_equal(why, "the disk is full");
    assert_false(file_fails_quietly(out));
    out = file_create(place->arena, "/dev/full", &why);
    char *large = arena_alloc(place->arena, 100000);
    assert_false(file_write(out, large, 100000));
    assert_false(file_write(out, "x", 1));
    file_abandon(out);
}

static void a_reader_that_went_away_is_known(void **state)
{
    const struct place *place = *state;
    int ends[2];
    const char *why = "";
    assert_int_equal(pipe(ends), 0);
    struct file_out *out = file_create(place->arena, arena_format(place->arena, "/dev/fd/%d", ends[1]), &why);
    assert_non_null(out);
    close(ends[0]);
    assert_true(file_write(out, "x", 1));
    assert_false(file_commit(out, &why));
    assert_true(file_fails_quietly(out));
    assert_string_equal(why, "the reader has gone away");
    close(ends[1]);
}

static void what_is_held_back_is_let_go(void **state)
{
    enum { MORE = 1500000, PIECE = 1000 }; /* more than memory holds */
    const struct place *place = *state;
    const char *why = "", *path = path_to(place, "out");
    char piece[PIECE];
    for (int all = PIECE; all <= MORE; all += MORE - PIECE) {
        int file = open(path, O_WRONLY | O_CREAT | O_TRUNC, 0600), kept = dup(STDOUT_FILENO);
        fflush(stdout);
        dup2(file, STDOUT_FILENO);
        struct file_out *out = file_create(place->arena, NULL, &why);
        file_hold(place->arena, out);
        bool fine = true, seen = false;
        for (int i = 0; i < all; i += PIECE) {
            memset(piece, 'a' + i / PIECE % 26, PIECE);
            fine &= file_write(out, piece, PIECE);
            seen |= file_is_seen(out);
        }
        struct stat about;
        bool held = fstat(file, &about) == 0 && about.st_size == 0;
        fine &= file_let_go(out) && file_let_go(out); /* a second time is nothing */
        fine &= file_write(out, "end", 3) && file_commit(out, &why);
        bool seen_then = file_is_seen(out);
        dup2(kept, STDOUT_FILENO);
        close(kept);
        close(file);
        assert_true(fine && held && !seen && seen_then);
        size_t length;
        const char *text = file_read(place->arena, path, 2 * MORE, false, &length, &why);
        assert_int_equal(length, all + 3);
        for (int i = 0; i < all; i++)
            assert_int_equal(text[i], 'a' + i / PIECE % 26);
        assert_string_equal(text + all, "end");
    }
}

/* What will be renamed is not seen before, and can be taken back. */
static void what_is_renamed_is_never_seen_half(void **state)
{
    const struct place *place = *state;
    const char *why = "", *path = path_to(place, "1.txt");
    char *large = arena_alloc(place->arena, 100000);
    memset(large, 'x', 100000);
    struct file_out *out = file_create(place->arena, path, &why);
    assert_true(file_write(out, large, 100000));
    assert_false(file_is_seen(out));
    file_abandon(out);
    assert_int_equal(entries(place), 0);
}

static void standard_output_stays_open(void **state)
{
    const struct place *place = *state;
    const char *path = path_to(place, "out"), *why = "";
    fflush(stdout);
    int kept = dup(STDOUT_FILENO), file = open(path, O_WRONLY | O_CREAT, 0600);
    dup2(file, STDOUT_FILENO);
    struct file_out *out = file_create(place->arena, NULL, &why);
    bool written = file_write(out, "sheet\n", 6) && file_commit(out, &why);
    bool open = fcntl(STDOUT_FILENO, F_GETFD) >= 0;
    dup2(kept, STDOUT_FILENO);
    close(kept);
    close(file);
    assert_true(written);
    assert_true(open);
    assert_string_equal(got(place, path), "sheet\n");
}

/* `count` bytes that differ along their way; they belong to the arena. */
static char *many_bytes(const struct place *place, size_t count)
{
    char *bytes = arena_alloc(place->arena, count + 1);
    for (size_t i = 0; i < count; i++)
        bytes[i] = (char)('a' + (i * 7 + i / 1000) % 26);
    bytes[count] = 0;
    return bytes;
}

static off_t size_of(const char *path)
{
    struct stat about;
    return stat(path, &about) == 0 ? about.st_size : -1;
}

/* Little is held back in memory, much in a file without a name: either way nothing is to be seen before the end. */
static void what_is_held_back_comes_at_the_end(void **state)
{
    const struct place *place = *state;
    static const size_t sizes[] = { 0, 10, 100000, 3000000 };
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        const char *path = path_to(place, "out"), *why = "";
        char *bytes = many_bytes(place, sizes[i]), *back = arena_alloc(place->arena, sizes[i] + 1);
        fflush(stdout);
        int kept = dup(STDOUT_FILENO), file = open(path, O_RDWR | O_CREAT | O_TRUNC, 0600);
        dup2(file, STDOUT_FILENO);
        struct file_out *out = file_create(place->arena, NULL, &why);
        file_hold(place->arena, out);
        bool written = true;
        for (size_t at = 0; at < sizes[i]; at += 5000)
            written &= file_write(out, bytes + at, sizes[i] - at < 5000 ? sizes[i] - at : 5000);
        off_t before = size_of(path);
        written &= file_commit(out, &why);
        dup2(kept, STDOUT_FILENO);
        close(kept);
        assert_true(written);
        assert_int_equal(before, 0);
        assert_int_equal(size_of(path), sizes[i]);
        assert_int_equal(pread(file, back, sizes[i], 0), sizes[i]);
        assert_memory_equal(back, bytes, sizes[i]);
        close(file);
    }
}

static void what_is_held_back_may_be_given_up(void **state)
{
    const struct place *place = *state;
    const char *why = "";
    static const size_t sizes[] = { 10, 3000000 };
    for (size_t i = 0; i < 2; i++) {
        int ends[2];
        char byte;
        assert_int_equal(pipe(ends), 0);
        struct file_out *out = file_create(place->arena, arena_format(place->arena, "/dev/fd/%d", ends[1]), &why);
        file_hold(place->arena, out);
        assert_true(file_write(out, many_bytes(place, sizes[i]), sizes[i]));
        file_abandon(out);
        close(ends[1]);
        assert_int_equal(read(ends[0], &byte, 1), 0);
        close(ends[0]);
    }
}

/* Where much cannot be held back, because TMPDIR is no folder for files, that is the failure. */
static void nowhere_to_hold_back(void **state)
{
    const struct place *place = *state;
    const char *why = "", *set = getenv("TMPDIR"), *kept = set ? arena_copy(place->arena, set, strlen(set)) : NULL;
    setenv("TMPDIR", path_to(place, "none"), 1);
    struct file_out *out = file_create(place->arena, "/dev/null", &why);
    file_hold(place->arena, out);
    assert_false(file_write(out, many_bytes(place, 3000000), 3000000));
    assert_false(file_commit(out, &why));
    assert_string_equal(why, "no such file");
    setenv("TMPDIR", "", 1); /* as if it were not set */
    out = file_create(place->arena, "/dev/null", &why);
    file_hold(place->arena, out);
    assert_true(file_write(out, many_bytes(place, 3000000), 3000000));
    assert_true(file_commit(out, &why));
    if (kept)
        setenv("TMPDIR", kept, 1);
    else
        unsetenv("TMPDIR");
}

/* How a copy of the test ends in which `act` changes what holds for a whole process; 0 when it finds all well. */
static int in_a_copy(int (*act)(const struct place *place), const struct place *place)
{
    int status = 0;
    fflush(NULL);
    pid_t child = fork();
    if (!child)
        exit(act(place));
    assert_true(child > 0);
    assert_int_equal(waitpid(child, &status, 0), child);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

static int write_too_much(const struct place *place)
{
    const struct rlimit limit = { 100000, 100000 };
    const char *why = "";
    signal(SIGXFSZ, SIG_IGN);
    if (setrlimit(RLIMIT_FSIZE, &limit))
        return 2;
    struct file_out *out = file_create(place->arena, path_to(place, "large"), &why);
    if (file_write(out, many_bytes(place, 300000), 300000) || !file_failed(out) || file_fails_quietly(out))
        return 3;
    if (file_commit(out, &why) || strcmp(why, "the file would be too large") != 0 || entries(place))
        return 4;
    out = file_create(place->arena, "/dev/null", &why); /* nor can it be held back */
    file_hold(place->arena, out);
    if (file_write(out, many_bytes(place, 3000000), 3000000))
        return 5;
    return file_commit(out, &why) || strcmp(why, "the file would be too large") != 0 ? 6 : 0;
}

static void a_file_has_its_limit(void **state)
{
    assert_int_equal(in_a_copy(write_too_much, *state), 0);
}

static int write_when_stopped(const struct place *place)
{
    const char *why = "";
    struct file_out *out = file_create(place->arena, path_to(place, "sheet"), &why),
                    *held = file_create(place->arena, "/dev/null", &why);
    file_hold(place->arena, held);
    struct stop stop = stop_hold();
    raise(SIGTERM);
    int wrong = 0;
    if (file_write(out, many_bytes(place, 300000), 300000) || !file_fails_quietly(out))
        wrong = 2;
    if (file_commit(out, &why) || strcmp(why, "setwright was asked to stop") != 0 || entries(place))
        wrong = 3;
    if (file_write(held, many_bytes(place, 3000000), 3000000) || !file_fails_quietly(held))
        wrong = 4;
    file_abandon(held);
    signal(SIGTERM, SIG_IGN); /* drops the one that waits */
    stop_release(&stop);
    return wrong;
}

static void who_is_asked_to_stop_writes_no_more(void **state)
{
    assert_int_equal(in_a_copy(write_when_stopped, *state), 0);
}

/* As somebody who may not do everything: the folder is open to all, the file in it is not. */
static int write_over_anothers(const struct place *place)
{
    const char *why = "";
    if (getuid() == 0 && setuid(65534) != 0)
        return 2;
    struct file_out *out = file_create(place->arena, path_to(place, "sheet"), &why);
    if (out || strcmp(why, "no permission") != 0)
        return 3;
    out = file_create(place->arena, path_to(place, "locked/sheet"), &why);
    if (out || strcmp(why, "no permission") != 0)
        return 4;
    return entries(place) == 2 ? 0 : 5;
}

static void what_may_not_be_written_is_not_replaced(void **state)
{
    const struct place *place = *state;
    const char *path = path_to(place, "sheet");
    put(path, "old");
    chmod(path, 0444);
    chmod(place->folder, 0777);
    assert_int_equal(mkdir(path_to(place, "locked"), 0555), 0);
    assert_int_equal(in_a_copy(write_over_anothers, place), 0);
    assert_string_equal(got(place, path), "old");
}

static void folders_take_their_place(void **state)
{
    const struct place *place = *state;
    const char *why = "", *made = path_to(place, "made"), *path = path_to(place, "club");
    assert_true(folder_make(made, &why));
    assert_true(folder_make(made, &why)); /* is there already */
    assert_false(folder_make(path_to(place, "none/club"), &why));
    assert_string_equal(why, "no such folder to make it in");
    put(path, "x");
    assert_false(folder_make(path, &why));
    assert_string_equal(why, "it is a file, not a folder");
    assert_false(folder_make(path_to(place, "club/inner"), &why));
    assert_string_equal(why, "a part of the path is no folder");
    assert_false(folder_place(made, path, &why));
    assert_string_equal(why, "a part of the path is no folder");
    unlink(path);
    assert_true(folder_make(path, &why));
    put(path_to(place, "club/a"), "");
    assert_false(folder_place(made, path, &why)); /* never over what has something in it */
    assert_true(file_is_folder(made));
    unlink(path_to(place, "club/a"));
    folder_drop(path);
    assert_true(folder_place(made, path, &why));
    assert_true(file_is_folder(path));
    assert_false(file_is_folder(made));
}

static void folders_are_listed_by_bytes(void **state)
{
    const struct place *place = *state;
    static const char *const names[] = {
        "b.block", "B.block", "a.block", "\xC3\xA9.block", "a.txt", "block", "10.block"
    };
    static const char *const sorted[] = { "10.block", "B.block", "a.block", "b.block", "\xC3\xA9.block" };
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        put(path_to(place, names[i]), "");
    int count = 0;
    const char *why = "";
    const char *const *list = file_list(place->arena, place->folder, ".block", &count, &why);
    assert_int_equal(count, 5);
    for (int i = 0; i < 5; i++)
        assert_string_equal(list[i], sorted[i]);
    assert_non_null(file_list(place->arena, place->folder, ".csv", &count, &why));
    assert_int_equal(count, 0);
    assert_null(file_list(place->arena, path_to(place, "none"), "", &count, &why));
    assert_string_equal(why, "no such folder");
    assert_null(file_list(place->arena, path_to(place, "a.txt"), "", &count, &why));
    assert_string_equal(why, "a part of the path is no folder");
}

#define IN_A_FOLDER(test) cmocka_unit_test_setup_teardown(test, place_setup, place_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        IN_A_FOLDER(files_are_read_whole),
        IN_A_FOLDER(what_is_no_file_is_named),
        IN_A_FOLDER(a_pipe_without_a_writer_is_not_waited_for),
        IN_A_FOLDER(a_pipe_is_read_to_its_end),
        IN_A_FOLDER(a_pipe_has_its_limit_too),
        IN_A_FOLDER(a_file_appears_only_when_complete),
        IN_A_FOLDER(what_is_given_up_leaves_nothing),
        IN_A_FOLDER(a_failed_rename_leaves_nothing),
        IN_A_FOLDER(permissions_are_as_umask_and_the_old_file_say),
        IN_A_FOLDER(a_link_stays_a_link),
        IN_A_FOLDER(the_same_bytes_are_not_written_again),
        IN_A_FOLDER(many_files_appear_together),
        IN_A_FOLDER(a_full_disk_is_told),
        IN_A_FOLDER(a_reader_that_went_away_is_known),
        IN_A_FOLDER(what_is_held_back_is_let_go),
        IN_A_FOLDER(what_is_renamed_is_never_seen_half),
        IN_A_FOLDER(standard_output_stays_open),
        IN_A_FOLDER(folders_are_listed_by_bytes),
        IN_A_FOLDER(what_is_held_back_comes_at_the_end),
        IN_A_FOLDER(what_is_held_back_may_be_given_up),
        IN_A_FOLDER(nowhere_to_hold_back),
        IN_A_FOLDER(a_file_has_its_limit),
        IN_A_FOLDER(who_is_asked_to_stop_writes_no_more),
        IN_A_FOLDER(what_may_not_be_written_is_not_replaced),
        IN_A_FOLDER(folders_take_their_place),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
