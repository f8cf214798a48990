/* Findings that are known and accepted, in a file of its own: how many of which rule in which file.
 *
 * A line is `COUNT RULE FILE`, FILE as seen from the folder of the accept file, lines sorted by file and rule, # a comment. In
 * FILE a control character, a per cent sign and a space at either end are written as %0A and the like.
 *
 * As many findings of a rule in a file as the count says are silent, from the top of the file down. Errors are never accepted:
 * nothing is built while there are any, and what comes after them has not been looked at. The file only ever shrinks:
 * --write-accept makes it where there is none; in one that is there it lowers the counts to what is met and adds nothing. */
#ifndef CMD_ACCEPT_H
#define CMD_ACCEPT_H

#include "cmd/session.h"

/* Whether --accept and --write-accept go together; if not, it has said so. */
bool accept_asked_well(const struct request *request);

/* Does what --accept and --write-accept ask of a session that was opened with `status`, and silences. 0, or the exit status when
 * the file cannot be read, is none of ours or cannot be written; it has been said, and a file that was there is as before. */
int accept_apply(const struct request *request, struct session *session, int status);

#endif
