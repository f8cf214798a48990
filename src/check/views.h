/* Plans as rules see them: flat arrays of working sets, days and weeks, in order. */
#ifndef CHECK_VIEWS_H
#define CHECK_VIEWS_H

#include "check/rule.h"

/* The view of one plan, in `scratch`, and what is left of it once it is forgotten. */
struct block_view block_view_make(struct arena *scratch, const struct plan *plan);
struct block_term block_term_of(const struct block_view *view);

/* diary_views.c: the ratings and sessions of her record, NULL without one. */
void diary_views_make(struct arena *scratch, struct athlete_view *view);

#endif
