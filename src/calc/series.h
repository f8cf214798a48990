/* A series gives a number (or a band, or one per set) for each training week. See language.md, section 3.
 *
 *   list   the i-th; the last holds                      7 | 7.5 | 8
 *   ramp   straight line from the first to the last week from 7 to 8.5
 *   step   first + by * floor((i - 1) / each)            75% plus 2.5% each week
 *   wave   the list over and over, each pass `by` higher  wave 72.5 | 80 | 87.5% plus 2% each pass */
#ifndef CALC_SERIES_H
#define CALC_SERIES_H

#include "base/dec.h"

struct band {
    struct dec low, high; /* equal without a band */
};
struct series_week {
    const struct band *sets; /* a comma list, one band a set; one when all sets are alike */
    int count;               /* 1 or more */
};
enum series_kind { SERIES_LIST, SERIES_RAMP, SERIES_STEP, SERIES_WAVE };
struct series {
    enum series_kind kind;
    const struct series_week *weeks; /* list, wave: all; step: the first alone; ramp: first and last */
    int count;
    struct dec by; /* step, wave; may be negative; 0 for a wave without growth */
    int each;      /* step: weeks between steps, 1 or more */
};

/* Exact bounds of a value; equal without a band. */
struct ratio_band {
    struct ratio low, high;
};

int series_sets(const struct series *series, int i); /* comma-list length in training week i; 1 when all are alike */

/* The value where it stands as written; NULL: it has to be worked out. */
const struct band *series_written(const struct series *series, int i, int set);

/* Training week i of n (both from 1; i > n holds the last for a ramp). `set` counts from 0; past the list its last holds.
 * Only a ramp is rounded to the grain, halves away from zero; a grain of 0 rounds nothing. */
struct ratio_band series_value(const struct series *series, int i, int n, int set, struct dec grain);

#endif
