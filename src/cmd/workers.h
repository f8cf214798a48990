/* `build --threads N`: the work on athletes shared by N processes. Each is a copy of this one once the files are read (fork, so
 * that nothing has to be locked and what was read is shared as it is). Each looks for errors in its turns first; if nobody has met
 * any, they write their turns into the one output, each when the one before it has written. */
#ifndef CMD_WORKERS_H
#define CMD_WORKERS_H

#include "base/file.h"
#include "cmd/session.h"

struct workers;

/* Begins them; NULL: the machine has no room for them, or there would be nothing to share: work alone. */
struct workers *workers_begin(struct request *request, struct session *session, struct file_out *out);
/* Waits until they have written all. 0 or an exit status; SETWRIGHT_FINDINGS: there are errors, and nothing was written;
 * SETWRIGHT_LIMIT: a process broke off, which is said. */
int workers_build(struct workers *workers, struct file_out *out);
/* Ends them, whatever they are at. NULL is fine. */
void workers_end(struct workers *workers);

#endif
