/* One line on a terminal's standard error while a command takes longer than a second; nothing anywhere else. */
#ifndef CMD_PROGRESS_H
#define CMD_PROGRESS_H

#include <stdbool.h>
#include <stdint.h>

struct progress {
    int64_t begun, shown; /* milliseconds; shown 0: not yet */
    bool terminal;
};

struct progress progress_begin(void);
void progress_show(struct progress *progress, const char *what, int done, int total); /* "sheets: 12 of 90" */
void progress_end(struct progress *progress); /* takes the line away; before anything else is said */

#endif
