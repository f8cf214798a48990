#include "calc/strain.h"

enum { DAYS = 7 };
#define ROOT_MOST INT64_C(100000000) /* in grains: beyond any real week */

/* The root of a square, to the nearest grain: the most grains g with (g - 1/2)^2 <= square. */
static struct dec root_nearest(struct ratio square, struct dec grain)
{
    int64_t low = 0, high = ROOT_MOST;
    while (low < high) {
        int64_t middle = low + (high - low + 1) / 2;
        struct ratio edge = ratio_mul(ratio_make(2 * middle - 1, 2), ratio_dec(grain));
        if (ratio_cmp(ratio_mul(edge, edge), square) <= 0)
            low = middle;
        else
            high = middle - 1;
    }
    return (struct dec){ low * grain.e10 };
}

struct strain strain_of_week(const struct dec daily[7])
{
    struct ratio sum = ratio_int(0), squares = ratio_int(0);
    for (int i = 0; i < DAYS; i++) {
        struct ratio load = ratio_dec(daily[i]);
        sum = ratio_add(sum, load);
        squares = ratio_add(squares, ratio_mul(load, load));
    }
    struct ratio mean = ratio_div(sum, ratio_int(DAYS));
    struct ratio spread = ratio_sub(squares, ratio_mul(sum, mean)); /* of the squares about the mean */
    const struct dec hundredth = { DEC_ONE / 100 };
    struct strain week = { .load = ratio_nearest(sum, (struct dec){ 1 }), .mean = ratio_nearest(mean, hundredth) };
    if (spread.num == 0) {
        week.monotony_squared = ratio_int(0);
        return week;
    }
    week.has_monotony = true;
    week.monotony_squared = ratio_div(ratio_mul(mean, mean), ratio_div(spread, ratio_int(DAYS - 1)));
    week.monotony = root_nearest(week.monotony_squared, hundredth);
    week.strain = root_nearest(ratio_mul(ratio_mul(sum, sum), week.monotony_squared), dec_int(1));
    return week;
}
