/* The pipeline once for all commands: files named on the command line, read from the disk, checked. */
#ifndef CMD_SESSION_H
#define CMD_SESSION_H

#include "cmd/command.h"

struct disk; /* remembers what was read */
struct session {
    struct setwright *sw;
    struct disk *disk;
};

/* Reads and checks the files among the request's words; folders stand for their .block files. 0, or an exit status when
 * there is nothing to go on with (it has been said). The session is to be closed in every case. */
int session_open(struct request *request, struct session *session);
int session_read(struct request *request, struct session *session); /* the same, not checked yet */
int session_ended(struct session *session, int status); /* closes it where memory ended, and says so; returns the status */
/* What the options choose. */
struct setwright_choice choice_of(const struct request *request);
void session_close(struct session *session);
/* Says why a call of the library failed, where no finding does; returns the status. `left`: what has come of it, said where
 * memory ended, such as "nothing was written". */
int session_said(const struct session *session, int status, const char *left);

void session_name(struct session *session, const char *path); /* a further file that the coach named: it may be read wherever it is */
bool session_has_read(const struct session *session, const char *path); /* the same file, whatever its name */

#endif
