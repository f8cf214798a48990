#include "calc/line.h"

#include <math.h>

enum {
    POINTS_LEAST = 3,
    SPEEDS_LEAST = 5,
    MILLION = 1000000,
    SHARE_LEAST = MILLION / 5, /* in millionths */
    SHARE_MOST = MILLION / 5 * 6,
};

/* Points of either kind, without a copy. */
struct points {
    const double *x, *y; /* both NULL when they are speeds */
    const struct speed_point *speeds;
    int count;
};

static double real(struct ratio a)
{
    return (double)a.num / (double)a.den;
}

static double x_of(const struct points *points, int i)
{
    return points->speeds ? real(points->speeds[i].share) : points->x[i];
}

static double y_of(const struct points *points, int i)
{
    return points->speeds ? real(ratio_dec(points->speeds[i].speed)) : points->y[i];
}

static double mean(const struct points *points, double (*of)(const struct points *points, int i))
{
    double sum = 0;
    for (int i = 0; i < points->count; i++)
        sum += of(points, i);
    return sum / points->count;
}

static double missed(const struct points *points, double mx, double my, double slope)
{
    double squares = 0;
    for (int i = 0; i < points->count; i++) {
        double residual = (y_of(points, i) - my) - slope * (x_of(points, i) - mx);
        squares += residual * residual;
    }
    return squares;
}

static bool fit(struct line *line, const struct points *points)
{
    if (points->count < POINTS_LEAST)
        return false;
    double mx = mean(points, x_of), my = mean(points, y_of), xx = 0, xy = 0, yy = 0;
    for (int i = 0; i < points->count; i++) {
        double dx = x_of(points, i) - mx, dy = y_of(points, i) - my;
        xx += dx * dx;
        xy += dx * dy;
        yy += dy * dy;
    }
    if (!(xx > 0))
        return false;
    double slope = xy / xx, squares = missed(points, mx, my, slope);
    *line = (struct line){ .slope = slope,
                           .intercept = my - slope * mx,
                           .residual_sd = sqrt(squares / (points->count - 2)),
                           .r2 = yy > 0 ? 1 - squares / yy : 0,
                           .count = points->count };
    return true;
}

bool line_fit(struct line *line, const double *x, const double *y, int count)
{
    return fit(line, &(struct points){ .x = x, .y = y, .count = count });
}

/* Three different shares are the lowest, the highest and one that is neither. */
static bool are_spread(const struct speed_point *points, int count)
{
    struct ratio low = points[0].share, high = low;
    for (int i = 1; i < count; i++) {
        if (ratio_cmp(points[i].share, low) < 0)
            low = points[i].share;
        if (ratio_cmp(points[i].share, high) > 0)
            high = points[i].share;
    }
    bool between = false;
    for (int i = 0; i < count; i++)
        between |= ratio_cmp(points[i].share, low) != 0 && ratio_cmp(points[i].share, high) != 0;
    return between && ratio_cmp(ratio_sub(high, low), ratio_make(15, 100)) >= 0;
}

bool line_of_speeds(const struct speed_point *points, int count, struct line *line)
{
    return count >= SPEEDS_LEAST && are_spread(points, count) &&
           fit(line, &(struct points){ .speeds = points, .count = count }) && line->slope < 0;
}

/* The one rounding of binary floating point in this module; what is beyond any share stays beyond. */
static long long nearest_millionth(double share)
{
    return llround(fmax(0, fmin(share, 2)) * MILLION);
}

bool line_share_at(const struct line *line, struct dec speed, struct ratio *share)
{
    long long millionths = nearest_millionth((real(ratio_dec(speed)) - line->intercept) / line->slope);
    if (millionths < SHARE_LEAST || millionths > SHARE_MOST)
        return false;
    *share = ratio_make(millionths, MILLION);
    return true;
}
