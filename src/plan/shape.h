/* What a block comes to before anybody's maxes are looked at: its weeks, days and set groups with their values, changed by deload
 * and taper. Athletes who change nothing of it (no `adjust`, no `avoid`) share one shape, worked out once; each gets a copy that
 * loads are put into. Only plan/ includes it. */
#ifndef PLAN_SHAPE_H
#define PLAN_SHAPE_H

#include "plan/work.h"

struct shape {
    const struct block *block;
    const struct work_week *weeks;
    int week_count;
    const bool *touched; /* by change id: what found something to change */
    bool unfit; /* something was said of its making, and each athlete has to hear it */
};
struct shapes {
    struct arena *arena;
    struct numbers blocks;
    VEC(struct shape *) list; /* by the block's number */
};

/* Whether this athlete's weeks are those of all others. */
bool shape_is_shared(const struct planning *p);
struct shape *shape_find(const struct shapes *shapes, const struct block *block); /* NULL: not worked out yet */
struct shape *shape_keep(struct shapes *shapes, struct shape *shape); /* worked out now */

/* A week to plan on, as the shape has it; what planning changes is hers. Entries of lifts that are known (alike.h) stay empty. */
void shape_week(struct planning *p, const struct work_week *shape, struct work_week *out);

#endif
