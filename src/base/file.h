/* Files: read whole, written whole or not at all. */
#ifndef BASE_FILE_H
#define BASE_FILE_H

#include "base/arena.h"

#include <stdbool.h>

/* Reads a regular file (or, for `pipes`, a pipe on which someone writes) of at most `most` bytes into the arena.
 * NULL on failure, with *why a sentence part such as "no such file", "it is a folder", "larger than 64 MB". */
char *file_read(struct arena *arena, const char *path, size_t most, bool pipes, size_t *length, const char **why);

/* Output that appears only when complete, and is abandoned with the arena unless it was: written beside the target and renamed by file_commit. A target that holds the
 * same bytes already is not touched. One that is no regular file (/dev/full, a pipe) is written directly; path NULL is
 * standard output. */
struct file_out;
struct file_out *file_create(struct arena *arena, const char *path, const char **why);
/* What is written from here on is held back until file_finish: in memory, and where it is much in a file that has no name. For a
 * target that is written directly; one that is renamed holds it back anyway. file_let_go ends it earlier. */
void file_hold(struct arena *arena, struct file_out *out);
bool file_let_go(struct file_out *out); /* false: a write failed */
/* Buffered; false after any failure, and once the run is asked to stop (stop.h). */
bool file_write(struct file_out *out, const char *bytes, size_t length);
bool file_push(struct file_out *out); /* writes what is buffered; false as file_write */
/* What a copy of this process (fork) has done to it, told to the one who finishes it. The copy begins with nothing buffered. */
struct file_state {
    int failure; /* an errno; 0: none */
    bool seen;
};
struct file_state file_state(const struct file_out *out);
void file_join(struct file_out *out, struct file_state state);
bool file_finish(struct file_out *out, const char **why); /* flushes, syncs, closes: all but the rename; false: abandoned */
bool file_commit(struct file_out *out, const char **why); /* finishes and renames; false: nothing was replaced */
void file_abandon(struct file_out *out);                  /* closes, removes what was begun */
bool file_is_seen(const struct file_out *out); /* some of it has gone where it cannot be taken back */
bool file_failed(const struct file_out *out);
bool file_fails_quietly(const struct file_out *out); /* not worth a word: the reader went away, or the run is stopped */

const char *file_real(struct arena *arena, const char *path); /* without links, from the root; NULL: there is no such file */
bool file_is_folder(const char *path);
bool folder_make(const char *path, const char **why); /* one that is there already is fine; its parent must be there */
bool folder_place(const char *made, const char *path, const char **why); /* under its own name, once it is whole */
void folder_drop(const char *path); /* if it is empty */
/* The names (not paths) in a folder that end in `ending`, sorted by bytes; NULL and *why on failure. */
const char *const *file_list(struct arena *arena, const char *folder, const char *ending, int *count, const char **why);

#endif
