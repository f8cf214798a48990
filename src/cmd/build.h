/* What `build` to one place and `build` into a folder share. */
#ifndef CMD_BUILD_H
#define CMD_BUILD_H

#include "base/file.h"
#include "cmd/progress.h"
#include "cmd/session.h"

struct build {
    struct request *request;
    struct session session;
    const char *ending; /* of the format's files, ".txt" */
    struct progress progress;
    bool checks; /* errors are looked for while building */
};

/* Writes a choice and finishes the file, which is then committed or abandoned; path NULL is standard output. *any: some bytes
 * came out of it. Returns the exit status; with another than 0 *out is NULL and what is wrong has been said. */
int build_write(struct build *build, const char *path, const struct setwright_choice *choice, struct file_out **out, bool *any);
/* Says why a library's call failed, if it has not been said; returns the status. */
int build_said(struct build *build, int status);

#endif
