/* What an athlete decides on at the bar: the back-off for a top set that came out heavier or lighter than planned, and
 * the effort that ends a band of sets. Weights as in plan.h; nothing is kept. */
#ifndef PLAN_BACKOFF_H
#define PLAN_BACKOFF_H

#include "plan/plan.h"

enum { BACKOFF_TOPS = 4 };

/* One other top set and the back-off that follows from it; both as shown on the sheet (see plan_run.shown). */
struct backoff {
    struct weight top, load;
};

/* The back-offs of a run of a `drop` group for a top set 5 and 2.5 kg (10 and 5 lb) lighter, then as much heavier than
 * planned, lightest first. `sets_before` counts the group's sets before the run, rounds aside. Returns how many were
 * written: tops that would weigh nothing or less than the empty bar are left out; 0 when the run does not follow from
 * the top by its drop alone (a load is open, or something else has changed it). Where a cap lowered the run, no
 * back-off is heavier than planned. */
int backoff_rows(const struct plan_week *week, const struct plan_day *day, const struct plan_entry *entry,
                 const struct plan_run *top, const struct plan_group *group, const struct plan_run *run,
                 int sets_before, struct backoff rows[BACKOFF_TOPS]);

/* The `top` group that a `drop` group hangs on: the nearest before it in the entry; -1: none, or not a drop. */
int backoff_top(const struct plan_entry *entry, int group);

/* The rpe that ends a band of sets in this week; false when none is written. */
bool group_until(const struct plan_week *week, const struct group *group, struct dec *rpe);

#endif
