/* Where things stand in a record, so that none of its lists is gone through for one thing. Only plan/record.c, and running.c for the
 * sessions of a lift, include it. */
#ifndef PLAN_RECORD_INDEX_H
#define PLAN_RECORD_INDEX_H

#include "base/places.h"
#include "plan/record.h"

struct lift_days {
    VEC(int) sessions;     /* that name the lift, by date, once for each line */
    VEC(struct date) done; /* their days, without those on which it was skipped */
};

struct record_index {
    struct arena *arena;
    struct numbers blocks; /* of her blocks: their places */
    struct numbers lines;  /* of a lift beside the session whose line it is */
    VEC(int) line_at;      /* the place of the first such line in the session's lifts */
    struct numbers lifts;  /* that were done */
    VEC(struct lift_days) days;
    struct numbers taken;  /* days of the plan */
    VEC(const struct record_session *) takers;
};

/* Over the blocks and the diary. */
struct record_index *record_index_new(const struct record *record);
void record_index_line(const struct record *record, const struct record_session *session, const struct lift *lift, int place);
void record_index_take(const struct record *record, const struct record_session *session);

int record_line_of(const struct record_session *session, const struct lift *lift); /* -1: it has none */
const struct record_session *record_taker_of(const struct record *record, const struct plan_day *day); /* NULL: nobody yet */
const struct lift_days *record_days_of(const struct record *record, const struct lift *lift); /* NULL: never done */

#endif
