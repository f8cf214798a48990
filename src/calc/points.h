/* Competition points: a result made comparable across bodyweights, by two published formulas, bw and result in kg.
 *
 *   GL    100 x result / (A - B e^(-C bw))                          IPF, in force from 1 May 2020
 *   DOTS  500 x total / (a0 + a1 bw + a2 bw^2 + a3 bw^3 + a4 bw^4)  Konertz, 2019; bw is held within the row's domain
 *
 * All constants stand in one table in points.c and are from memory: the federations' own sheets were not at hand.
 * Binary floating point in here, for the exponential and the fourth power; the result is rounded to a multiple of
 * 1e-8. */
#ifndef CALC_POINTS_H
#define CALC_POINTS_H

#include "base/dec.h"

enum points_formula { POINTS_GL, POINTS_DOTS };
enum points_sex { POINTS_WOMEN, POINTS_MEN };
enum points_kit { POINTS_CLASSIC, POINTS_EQUIPPED }; /* DOTS knows no difference: its rows are classic */
enum points_event { POINTS_FULL, POINTS_BENCH };     /* of three lifts, or the bench press alone; DOTS: full */

struct points_row {
    enum points_formula formula;
    enum points_sex sex;
    enum points_kit kit;
    enum points_event event;
    double by[5];           /* GL: A, B, C; DOTS: a0 to a4 */
    int lightest, heaviest; /* kg, DOTS alone; heaviest 0: no domain */
};

const struct points_row *points_find(enum points_formula formula, enum points_sex sex, enum points_kit kit,
                                     enum points_event event); /* NULL: the formula has no such row */
/* False where the formula gives no sensible number: a bodyweight or result not above 0, or a bodyweight too low for GL. */
bool points_of(const struct points_row *row, struct weight bodyweight, struct weight result, struct dec *points);

#endif
