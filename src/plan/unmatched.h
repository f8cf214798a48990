/* What is said of diary entries that fit no session of the plan, or only in part. For plan/record alone. */
#ifndef PLAN_UNMATCHED_H
#define PLAN_UNMATCHED_H

#include "plan/record.h"

/* Warnings: what was lifted feeds the running max, and nothing else. */
void unmatched_session(const struct record *record, const struct record_session *session); /* no such week or day */
void unmatched_parts(const struct record *record, const struct record_session *session, const struct record_lift *lift,
                     int parts); /* more or fewer than the plan's */
void unmatched_lift(const struct record *record, const struct record_session *session,
                    const struct record_lift *lift); /* `as planned`, and not planned */
void unmatched_progression(const struct record *record, const struct record_session *session,
                           const struct lift *lift, const struct progression *progression); /* not named, though a progression waits for it */

/* Errors. */
void unmatched_doubled(const struct record *record, const struct record_session *session,
                       const struct record_session *first); /* a second entry for one session */
void unmatched_bare(const struct record *record, const struct record_session *session,
                    const struct record_lift *lift); /* a load without a unit that is lighter than the empty bar: 5 x 5 */

#endif
