/* `why`: the derivation of each number of one lift, from the coach's words to the discs on the bar, each step with its place. */
#ifndef EMIT_AS_WHY_H
#define EMIT_AS_WHY_H

#include "emit/format.h"

/* Writes the derivations of `lift` (by name, also as written before a swap) in the plan's week `week` (as printed), on day
 * `day` or on every day when NULL. Returns how many runs of sets were written; -1 when the sink refused. */
int why_write(struct arena *arena, struct sink sink, const struct plan *plan, int week, const char *day, const struct lift *lift);

#endif
