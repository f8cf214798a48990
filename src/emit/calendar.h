/* The season at a glance: for each athlete a line a week. */
#ifndef EMIT_CALENDAR_H
#define EMIT_CALENDAR_H

#include "emit/format.h"
#include "emit/out.h"

/* Writes one athlete's weeks across her plans (any order; sorted here by date): Monday, block, week, goal, weeks out, deload, taper, meet,
 * breaks and gaps, and for each main lift its sets and mean per cent; at most 100 columns for a year. False after a failed write. */
bool calendar_write(struct out *out, const struct narrow *narrow, const struct athlete *athlete, struct plan *const *plans, int count);

#endif
