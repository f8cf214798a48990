/* What a session needs at once when several athletes train the same lift at the same time: bars, dumbbells, stacks. */
#ifndef EMIT_NEEDS_H
#define EMIT_NEEDS_H

#include "emit/group_table.h"
#include "emit/lines.h"

/* A line for each lift that two or more of them train in one gym; nothing, not even the headline, where there is none.
 * `arena` holds what is counted. */
void needs_lines(struct lines *lines, struct arena *arena, const struct member *members, int count);

#endif
