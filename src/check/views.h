/* Plans as rules see them: flat arrays of working sets, days and weeks, in order. */
#ifndef CHECK_VIEWS_H
#define CHECK_VIEWS_H

#include "check/rule.h"

/* The view of one plan and of all plans of an athlete, in `scratch`; plans in file order. */
struct block_view block_view_make(struct arena *scratch, const struct plan *plan);
struct athlete_view athlete_view_make(struct arena *scratch, const struct model *model, const struct athlete *athlete,
                                      struct plan *const *plans, int plan_count);

#endif
