/* `build -o FOLDER/`: many files at once, all of them or none. */
#ifndef CMD_FOLDER_H
#define CMD_FOLDER_H

#include "cmd/build.h"

/* Writes a file for each athlete and block, or as the sheet has it, and with --per week for each week:
 *
 *   athlete (csv and yaml too)  ATHLETE-BLOCK.txt       ATHLETE-BLOCK-week-03.txt
 *   group                       BLOCK.txt               BLOCK-week-03.txt
 *   meet                        ATHLETE-BLOCK-meet.txt  (a block that ends on a meet)
 *   coach                       coach.txt
 *
 * A block that an athlete's seasons run again is BLOCK-2 the second time, whatever else is chosen. Only files whose bytes
 * change are touched, none is removed. Everything is written beside its place before the first file is renamed; a failure up to
 * then leaves the folder as it was. Returns the exit status; what is wrong has been said. */
int folder_build(struct build *build, const char *path);

#endif
