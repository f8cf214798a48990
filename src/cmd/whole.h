/* Text that a command has made in memory, written whole or not at all. */
#ifndef CMD_WHOLE_H
#define CMD_WHOLE_H

#include "cmd/session.h"

struct whole {
    struct arena *arena;
    VEC(char) text;
};

struct setwright_sink whole_sink(struct whole *whole); /* keeps what is written to it */
/* Writes the text to --output or standard output, refusing a file that the session has read. The exit status; what is wrong has
 * been said. */
int whole_write(const struct whole *whole, const struct request *request, const struct session *session);

#endif
