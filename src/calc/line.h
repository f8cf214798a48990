/* The straight line of least squares, y on x, and the load-velocity line of one lifter and lift.
 *
 * With mx, my the means, Sxx = sum (x - mx)^2, and Sxy, Syy alike: slope = Sxy / Sxx, intercept = my - slope mx. The
 * means come first and the differences from them after, so that little is lost in subtracting (Chan, Golub, LeVeque
 * 1983).
 *
 * Binary floating point stays in here (the fields of a line are for the tests); a share is rounded to a multiple of
 * 1e-6 on its way out by one function. The Makefile forbids fused products, as for calc/trend. */
#ifndef CALC_LINE_H
#define CALC_LINE_H

#include "base/dec.h"

struct line {
    double slope, intercept;
    double residual_sd; /* sqrt(sum of squared residuals / (count - 2)) */
    double r2;          /* 1 - that sum / Syy; 0 when all y are equal */
    int count;
};

/* False for fewer than 3 points, or when all x are equal. */
bool line_fit(struct line *line, const double *x, const double *y, int count);

struct speed_point {
    struct ratio share; /* load as part of the max of that day; above 0 */
    struct dec speed;   /* mean velocity of a repetition, m/s */
};

/* Speed on share: the load is known to the gram, the speed is what varies. False, since such a line would say more
 * than the sets do: fewer than 5 points, fewer than 3 different shares, all within less than 0.15 of one another, or
 * a bar that does not get slower with the load. */
bool line_of_speeds(const struct speed_point *points, int count, struct line *line);

/* The share at which the line has this speed, to the nearest 1e-6. False outside 0.2 .. 1.2, where no set stands by
 * it. */
bool line_share_at(const struct line *line, struct dec speed, struct ratio *share);

#endif
