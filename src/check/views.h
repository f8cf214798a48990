/* Plans as rules see them: flat arrays of working sets, days and weeks, in order. */
#ifndef CHECK_VIEWS_H
#define CHECK_VIEWS_H

#include "check/rule.h"

/* The view of one plan and of all plans of an athlete, in `scratch`; plans in file order. */
struct block_view block_view_make(struct arena *scratch, const struct plan *plan);
struct athlete_view athlete_view_make(struct arena *scratch, const struct model *model, const struct athlete *athlete,
                                      struct record *record, struct plan *const *plans, int plan_count);

/* diary_views.c: the ratings and sessions of her record, NULL without one. */
void diary_views_make(struct arena *scratch, struct athlete_view *view);

#endif
