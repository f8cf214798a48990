/* What an athlete's calendar has a line for: weeks of training, weeks of a season's break, gaps and meets, in order of date.
 *
 * Owner: all is in the arena given and points into the plans. */
#ifndef EMIT_CALENDAR_ITEMS_H
#define EMIT_CALENDAR_ITEMS_H

#include "base/vec.h"
#include "emit/format.h"

enum item_kind { ITEM_WEEK, ITEM_BREAK, ITEM_GAP, ITEM_MEET };
struct item {
    enum item_kind kind; /* in this order on one date */
    struct date date;
    int days;
    const struct plan *plan; /* of a week; NULL in the others */
    const struct plan_week *week;
    const struct season *season; /* of a week: NULL where its block stands alone */
    const struct meet *meet;
};
struct items {
    VEC(struct item) list;
    VEC(const struct season *) seasons; /* that the plans belong to, in their order */
};

/* The plans are one athlete's, in any order; at least one. A block of hers that is not among them is no gap. */
struct items items_find(struct arena *arena, const struct narrow *narrow, const struct athlete *athlete, struct plan *const *plans, int count);

#endif
