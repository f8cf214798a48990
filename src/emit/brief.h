/* A run of like sets in as few signs as a coach reads at a glance: "4 x 5", "92.5 kg", "@8", "25+10+1.25". Each function
 * adds to a scratch text, or nothing where there is nothing to say. */
#ifndef EMIT_BRIEF_H
#define EMIT_BRIEF_H

#include "emit/wording.h"

void brief_sets(struct out *say, const struct row *row);   /* "2-5 x 3", "3 x amrap, 6+", "30 reps in all" */
void brief_load(struct out *say, const struct row *row);   /* "+2.5 kg" and "bodyweight" on bodyweight lifts; open: "____ kg" */
void brief_effort(struct out *say, const struct row *row); /* the target alone: "@6-7" */
/* The discs a side from index `at` on, as many as fit in `room` columns but one at least, a "+" after all but the last; returns
 * the index past them. "empty bar" where there are none. */
int brief_discs(struct out *say, const struct row *row, int at, int room);

#endif
