/* Repetition curves: the share of the one-repetition maximum that allows n repetitions to failure, and back.
 *
 * share(n) = 1 for n <= 1; each named curve is scaled so that one repetition is the whole max: f(n) / f(1).
 *   epley     f = 1 / (1 + n/30)                      Epley 1985, in the 1/30 form
 *   brzycki   f = (37 - n) / 36                       Brzycki 1993, rational form
 *   lombardi  f = n^-0.10                             Lombardi 1989
 *   oconner   f = 1 / (1 + 0.025 n)                   O'Conner 1989
 *   mayhew    f = (52.2 + 41.9 e^(-0.055 n)) / 100    Mayhew 1992
 *   wathan    f = (48.8 + 53.8 e^(-0.075 n)) / 100    Wathan 1994
 *   lander    f = (101.3 - 2.67123 n) / 100           Lander 1985
 *   handbook  the published load chart (Baechle, Earle): 1:100 2:95 3:93 4:90 5:87 6:85 7:83 8:80 9:77 10:75 11:70
 *             12:67 15:65, linear between its rows, held at 65 % beyond 15
 * The default is Brzycki up to 10 and Epley (unscaled) above: they meet exactly at n = 10, 75 %.
 * Where a formula ends (Brzycki at 37, Lander at 37.9), n is held at the last whole n with a positive share.
 *
 * Binary floating point only where a formula is irrational; the others are exact fractions.
 * An irrational share is rounded to a multiple of 1e-12. */
#ifndef CALC_CURVE_H
#define CALC_CURVE_H

#include "base/dec.h"

struct curve_row; /* a named curve */

struct curve {
    const struct curve_row *row; /* NULL: share(n) = 1 / (1 + k (n - 1)) from the athlete's own points */
    struct ratio k;
};

struct curve_point {
    struct ratio reps;  /* above 1 */
    struct dec percent; /* above 0, at most 100 */
};

const struct curve_row *curve_find(const char *name); /* NULL: no such curve; the default has no name */
const char *curve_name(const struct curve_row *row);   /* "" for the default */
const char *curve_source(const struct curve_row *row); /* author, year */
int curve_count(void);
const struct curve_row *curve_at(int index);

struct curve curve_default(void);
struct curve curve_named(const struct curve_row *row);
/* k by least squares on 1/share - 1 against n - 1: k = sum((n-1)(1/s-1)) / sum((n-1)^2). count >= 1; k is never below 0. */
struct curve curve_fit(const struct curve_point *points, int count);

/* The repetitions that could be done by who does `reps` at an effort: n = reps + 10 - rpe. */
struct ratio curve_could_do(struct ratio reps, struct dec rpe);

/* n: repetitions that could be done, quarters and the like; any n is accepted. Result in (0, 1]. */
struct ratio curve_share(const struct curve *curve, struct ratio n);

/* The effort (rpe = 10 - (n - reps)) of `reps` at share p = load / max, p > 0, compared exactly with `rpe`:
 * -1 below, 0 equal, 1 above. Monotone in p. A p above 1 is above any effort of a single. */
int curve_compare(const struct curve *curve, struct ratio p, struct ratio reps, struct dec rpe);

/* The repetitions n that the share p in (0, 1] allows: the inverse of curve_share, exact where the formula is a fraction, else
 * to 1e-12; held at the formula's end, at most CURVE_REPS_MOST. A p above 1 gives half a repetition. */
enum { CURVE_REPS_MOST = 1000 };
struct ratio curve_reps(const struct curve *curve, struct ratio p);

/* The same effort to the nearest half, quarters away from zero; within -40 .. 12. A p above 1 has no n to work it out
 * from: it gets half a point more than the max itself (a single above the max is 10.5). */
struct dec curve_effort(const struct curve *curve, struct ratio p, struct ratio reps);

#endif
