/* Which files a run reads: those named, and what they `use`, each once, circles harmless.
 *
 * A used path is relative to the file that names it and stays within the working folder or the folder of a named file; "std/…"
 * comes from the shipped library. A file that cannot be had is the finding `file` at its `use`. */
#ifndef MODEL_LOAD_H
#define MODEL_LOAD_H

#include "base/diag.h"
#include "records/roster.h"
#include "syntax/tree.h"

enum { LOAD_FILES_MOST = 10000, LOAD_DEPTH_MOST = 64, LOAD_BYTES_MOST = 256 << 20 };
enum { LOAD_STEPS_A_BYTE = 1 << 16 }; /* of arena_work, for each byte read: about a minute for each MB */

/* Gives the bytes of a path (in memory that lives as long as the run), or NULL and why, a sentence part: "no such file". */
struct reader {
    const char *(*read)(void *context, const char *path, size_t *length, const char **why);
    void *context;
    bool ended; /* a NUL stands behind the bytes */
};

struct file_unit {
    struct tree *tree;
    enum weight_unit unit; /* of its `units` line; kg without one */
};
struct roster_file {
    struct roster roster;
    enum weight_unit unit; /* of the file that names it */
    struct span at;        /* of the `roster` line */
};

struct loaded {
    struct file_unit *files; /* in order of reading: a file before what it uses */
    int file_count;
    struct roster_file *rosters;
    int roster_count;
    struct arena *scratch; /* where the trees are */
};

/* The trees are made in `trees`, which has to live until the model is resolved: nothing looks at them later. */
struct loaded load_files(struct arena *arena, struct arena *trees, struct interner *interner, struct sources *sources,
                         struct findings *findings, struct reader reader, const char *const *paths, int path_count);

/* "b/../a.block" seen from folder "x" is "x/a.block"; never fails. Exposed for its test. */
const char *load_join(struct arena *arena, const char *using_file, const char *path);

#endif
