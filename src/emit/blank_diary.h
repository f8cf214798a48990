/* A diary to fill in: the plan's sessions with a line a lift, each `as planned`, and behind it what was printed. */
#ifndef EMIT_BLANK_DIARY_H
#define EMIT_BLANK_DIARY_H

#include "emit/out.h"
#include "plan/plan.h"

/* The remarks above the first diary: how it is filled in. */
void blank_diary_head(struct out *out);

/* The diary of one athlete after a blank line, plans in output order; sessions that `narrow` leaves out are left out, and a
 * diary without any. An undated day stands on its week's first day, with a remark. False after a failed write. */
bool blank_diary(struct out *out, const struct narrow *narrow, const struct athlete *athlete, struct plan *const *plans,
                 int count);

#endif
