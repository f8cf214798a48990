/* The running max: what a lifter could lift once, followed through tests, sets and speeds (language.md, 5.9).
 *
 * A local-level Kalman filter on the natural logarithm of the max (Kalman 1960; Durbin, Koopman 2012, Time Series
 * Analysis by State Space Methods, chapter 2). With x the level, P its variance, and an observation y of variance R
 * after d days:
 *
 *     P = P + d x process        the max may have drifted meanwhile
 *     K = P / (P + R)            how far the observation is believed
 *     x = x + K (log y - x)      P = P R / (P + R)
 *
 * The first observation is the level, its variance the level's: what the filter gives when nothing was known before.
 * On the logarithm a standard deviation is, nearly, a part of the max. All that is assumed stands in one table,
 * trend.c.
 *
 * Binary floating point lives in here and is rounded to 0.1 kg on its way out by one function. The Makefile forbids
 * the compiler to fuse a product and a sum, so that every compiler gives the same bytes. Maxes lie within the range
 * of a weight. */
#ifndef CALC_TREND_H
#define CALC_TREND_H

#include "base/dec.h"

/* One lift of one lifter; all zero before the first observation. Copying it keeps what was known then. */
struct trend {
    bool started;
    bool dated;             /* some observation had a date; without one no days pass */
    int32_t day;            /* the latest date so far, as struct date counts */
    double level, variance; /* of the logarithm of the max in 1e-10 kg, on that day */
};

enum trend_source {
    TREND_TESTED, /* a `max` line */
    TREND_SET,    /* a set, or `max ... from` one: load / share(n) */
    TREND_SPEED,  /* a velocity against the lifter's own load-velocity line */
};

struct trend_observation {
    int32_t day;
    bool dated; /* without a date (a `max` line may have none) no days pass before it */
    enum trend_source source;
    struct ratio max; /* what it says the max is, 1e-10 kg; above 0 */
    struct ratio n;   /* TREND_SET: repetitions that could be done, below 1 as 1; the others do not read it */
    bool borrowed;    /* the max of the lift this one is `like` */
};

/* Observations come in rising order of date. One dated before the latest moves the max with no days passed. */
void trend_observe(struct trend *trend, const struct trend_observation *seen);

/* Both to 0.1 kg, halves up, at least 0.1 kg; 0 before the first observation. The error is the standard error of the
 * max as of a day: it grows with each day since the latest date, and not at all for a day before it. */
struct weight trend_max(const struct trend *trend);
struct weight trend_error(const struct trend *trend, int32_t day);

/* More than 15 % of the running max (as rounded to 0.1 kg, compared exactly) and more than 3 standard errors away,
 * that of the difference: sqrt(P + R) on the day of the observation. Never before the first observation. */
bool trend_is_far(const struct trend *trend, const struct trend_observation *seen);

/* Whether a second observation bears out the first: both dated, at most these days apart, and not far from the first by
 * the same two measures, the standard error being sqrt(R1 + R2 + process x days). */
enum { TREND_AGREE_DAYS = 8 * 7 };
bool trend_agrees(const struct trend_observation *first, const struct trend_observation *second);

/* What the filter assumes, row by row, for the manual and the tests. */
struct trend_row {
    const char *name;
    struct dec percent;   /* the standard deviation, in per cent of the max; what adds up is its square */
    const char *per;      /* "" or what it is counted by, such as "day": variances add, so n of them are sqrt(n) as much */
    bool published;       /* else a choice of ours */
    const char *evidence; /* the source, or the reason with what is published beside it */
};
int trend_row_count(void);
const struct trend_row *trend_row_at(int index);

#endif
