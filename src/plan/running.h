/* The running max of a lift as of a day (language.md, 5.9): what the `max` lines and the diary say together.
 *
 * Each `max` line dated on or before the day and each session of the lift dated before it is an observation for the filter of
 * calc/trend. A session counts by its highest estimate: load / share(reps + 10 - rpe) of a rated set, or, where a set has a speed
 * and no rating, her load-velocity line (calc/line): speed regressed on load as a share of the running max of that day, over her
 * last SPEEDS_MOST sets of up to SPEED_REPS reps with a speed in SPEED_DAYS days. Without own lines a `like` lift starts from the
 * borrowed ones. The curve is the one in force for the block that asks.
 *
 * An estimate far from the running max stays out until a second one within 8 weeks agrees with it, or its session is let in. */
#ifndef PLAN_RUNNING_H
#define PLAN_RUNNING_H

#include "plan/record.h"

struct tracks;
struct tracks *tracks_new(struct record *record);
void tracks_changed(struct record *record, struct date date); /* what was done on this day is known better now */

struct running {
    bool known;            /* at least one session counts; otherwise the `max` lines alone hold */
    struct weight max;     /* to 0.1 kg */
    struct weight error;   /* its standard error as of the day, to 0.1 kg */
    int sessions;          /* that count */
    struct date last;      /* of the last line or session that counts */
    const struct reason *reason; /* REASON_RUNNING, and before it what moved it */
};
struct running running_max(struct record *record, const struct lift *lift, struct date day, const struct block *block);

/* An estimate that is far from the running max, for the finding that asks. */
struct outlier {
    const struct lift *lift;
    const struct record_session *session;
    const struct record_set *set;
    struct weight estimate, max; /* max: the running one of that day */
};
/* Those that stay out once all of the diary is known, and those that only an `allow` lets in; returns their number. */
int running_outliers(struct record *record, const struct lift *lift, const struct block *block, const struct outlier **out);

#endif
