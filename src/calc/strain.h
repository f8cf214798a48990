/* Load, monotony and strain of a week (Foster 1998, Med Sci Sports Exerc 30(7); Foster and others 2001, J Strength
 * Cond Res 15(1)).
 *
 *     session load = session rpe x minutes; a day's load is the sum of its sessions, 0 on a day of rest
 *     monotony = mean / sd of the seven days; strain = their sum x monotony
 *
 * The papers seen do not say which sd. Ours has n - 1, as of a sample. Exact throughout: roots are found by comparing
 * squares. */
#ifndef CALC_STRAIN_H
#define CALC_STRAIN_H

#include "base/dec.h"

struct strain {
    struct dec load;               /* the week's sum */
    struct dec mean;               /* to 0.01 */
    bool has_monotony;             /* false when all days are alike: sd 0; the rest is then 0 */
    struct dec monotony;           /* to 0.01; at most 1e6 */
    struct dec strain;             /* to 1; at most 1e8 */
    struct ratio monotony_squared; /* exact, for comparing with a limit */
};

/* Seven loads of 0 or more, any order; each at most 1e6. All roundings are halves up. */
struct strain strain_of_week(const struct dec daily[7]);

#endif
