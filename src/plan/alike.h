/* Who is alike: athletes for whom a block's entries of a lift come out the same, number for number, since all that planning
 * asks of an athlete for them is the same: her gym, her curve, her bodyweight, her max of the lift and of those it is loaded by.
 * In a club of thousands most are like somebody in each of their lifts; who keeps what was written for one has the other's.
 *
 * Owner: the arena given to alikes_new; it holds MARKS_MOST marks at most, and who comes after is like nobody. */
#ifndef PLAN_ALIKE_H
#define PLAN_ALIKE_H

#include "plan/plan.h"

enum { MARKS_MOST = 16384, ALIKE_LIFTS_MOST = 64 /* of a block; in one with more nobody is like another */ };

/* What an athlete is in a block, lift by lift. */
struct alike {
    const struct lift *const *lifts; /* the block's, in order of first training */
    /* One a lift, good until the next question: */
    const int *marks; /* from 0 through the run: who has the same is alike in it */
    bool *known;      /* who looks at the plan knows its entries, and they stay without set groups; false until the looker says so */
    int count;
};

/* A lift's place in alike->lifts, which has it. */
static inline int alike_place(const struct alike *alike, const struct lift *lift)
{
    int at = 0;
    while (at + 1 < alike->count && alike->lifts[at] != lift)
        at++;
    return at;
}

struct alikes;
struct alikes *alikes_new(struct arena *arena);

/* Whether all that is alike to her was planned before and nothing was said of it; and that it now was. */
bool alike_is_fine(const struct alikes *alikes, const struct alike *alike);
void alike_was_fine(struct alikes *alikes, const struct alike *alike);

/* False: she is like nobody, or nobody's plan of the block was made yet. Like nobody is who has a diary, weeks of her own
 * (`adjust`, `avoid`), a curve of her own, or a max or bodyweight that changes while the block is trained. */
bool alike_find(struct alikes *alikes, const struct plan_job *job, struct alike *out);

#endif
