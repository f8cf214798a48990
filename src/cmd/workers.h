/* `build --threads N`: the work on athletes shared by N processes. Each is a copy of this one once the files are read (fork, so
 * that nothing has to be locked and what was read is shared as it is); each checks and builds its turns into memory that it shares
 * with this process, which writes them from there in order. */
#ifndef CMD_WORKERS_H
#define CMD_WORKERS_H

#include "base/file.h"
#include "cmd/session.h"

struct workers;

/* Begins them; NULL: the machine has no room for them, work alone. */
struct workers *workers_begin(struct request *request, struct session *session);
/* Writes what they send, in order. 0 or an exit status; SETWRIGHT_FINDINGS: there are errors, and what was written is void;
 * SETWRIGHT_LIMIT: a process broke off, which is said. */
int workers_build(struct workers *workers, struct file_out *out);
/* Ends them, whatever they are at. NULL is fine. */
void workers_end(struct workers *workers);

#endif
