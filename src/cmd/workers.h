/* `build --threads N`: the work on athletes shared by N processes. Each is a copy of this one once the files are read (fork, so
 * that nothing has to be locked and what was read is shared as it is); all check their share, then build their turns, and this
 * process puts the turns together in order. */
#ifndef CMD_WORKERS_H
#define CMD_WORKERS_H

#include "base/file.h"
#include "cmd/session.h"

struct workers;

/* Copies that check their share of the athletes; NULL: the machine has no room for them, work alone. */
struct workers *workers_begin(struct request *request, struct session *session);
/* What the checks came to: 0, or the status that speaks against building. */
int workers_checked(struct workers *workers);
/* Lets them build, and writes what they send, in order. 0 or an exit status. */
int workers_build(struct workers *workers, struct file_out *out);
/* Ends them, whatever they are at. NULL is fine. */
void workers_end(struct workers *workers);

#endif
