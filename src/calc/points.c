#include "calc/points.h"

#include <math.h>

#define ROUNDED_TO 1e8
#define MOST 1e6

/* Constants from memory, as in IPF GL Coefficients 2020 and Konertz 2019; so is the women's upper limit of DOTS. */
static const struct points_row rows[] = {
    { POINTS_GL, POINTS_WOMEN, POINTS_CLASSIC, POINTS_FULL, { 610.32796, 1045.59282, 0.03048 }, 0, 0 },
    { POINTS_GL, POINTS_WOMEN, POINTS_EQUIPPED, POINTS_FULL, { 758.63878, 949.31382, 0.02435 }, 0, 0 },
    { POINTS_GL, POINTS_WOMEN, POINTS_CLASSIC, POINTS_BENCH, { 142.40398, 442.52671, 0.04724 }, 0, 0 },
    { POINTS_GL, POINTS_WOMEN, POINTS_EQUIPPED, POINTS_BENCH, { 221.82209, 357.00377, 0.02937 }, 0, 0 },
    { POINTS_GL, POINTS_MEN, POINTS_CLASSIC, POINTS_FULL, { 1199.72839, 1025.18162, 0.00921 }, 0, 0 },
    { POINTS_GL, POINTS_MEN, POINTS_EQUIPPED, POINTS_FULL, { 1236.25115, 1449.21864, 0.01644 }, 0, 0 },
    { POINTS_GL, POINTS_MEN, POINTS_CLASSIC, POINTS_BENCH, { 320.98041, 281.40258, 0.01008 }, 0, 0 },
    { POINTS_GL, POINTS_MEN, POINTS_EQUIPPED, POINTS_BENCH, { 381.22073, 733.79378, 0.02398 }, 0, 0 },
    { POINTS_DOTS,
      POINTS_WOMEN,
      POINTS_CLASSIC,
      POINTS_FULL,
      { -57.96288, 13.6175032, -0.1126655495, 0.0005158568, -0.0000010706 },
      40,
      150 },
    { POINTS_DOTS,
      POINTS_MEN,
      POINTS_CLASSIC,
      POINTS_FULL,
      { -307.75076, 24.0900756, -0.1918759221, 0.0007391293, -0.0000010930 },
      40,
      210 },
};

const struct points_row *points_find(enum points_formula formula, enum points_sex sex, enum points_kit kit,
                                     enum points_event event)
{
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if (rows[i].formula == formula && rows[i].sex == sex && rows[i].kit == kit && rows[i].event == event)
            return &rows[i];
    return NULL;
}

static double kilos(struct weight weight)
{
    return (double)weight.e10 / (double)DEC_ONE;
}

static double held(const struct points_row *row, double bodyweight)
{
    if (!row->heaviest)
        return bodyweight;
    return bodyweight < row->lightest ? row->lightest : bodyweight > row->heaviest ? row->heaviest : bodyweight;
}

/* What a result is divided by, for 100 or 500 points. */
static double divisor(const struct points_row *row, double bodyweight)
{
    const double *by = row->by;
    if (row->formula == POINTS_GL)
        return by[0] - by[1] * exp(-by[2] * bodyweight);
    return (((by[4] * bodyweight + by[3]) * bodyweight + by[2]) * bodyweight + by[1]) * bodyweight + by[0];
}

bool points_of(const struct points_row *row, struct weight bodyweight, struct weight result, struct dec *points)
{
    if (bodyweight.e10 <= 0 || result.e10 <= 0)
        return false;
    double by = divisor(row, held(row, kilos(bodyweight)));
    double scored = by > 0 ? (row->formula == POINTS_GL ? 100 : 500) * kilos(result) / by : MOST;
    if (!(scored < MOST))
        return false;
    *points = (struct dec){ llround(scored * ROUNDED_TO) * (DEC_ONE / (int64_t)ROUNDED_TO) };
    return true;
}
