/* Effort honesty: what a lifter rates her sets beside what they were (language.md, 5.9).
 *
 * Compared are her ratings, after her own `effort` lines, with the effort worked out from the load, the reps and the
 * newest `max` line of her own that is at most 12 weeks old: the running max is moved by the same ratings. How far
 * lifters misjudge: about 1 rep near failure (Hackett and others 2017; Halperin and others 2022); 1.5 points over 6 sets
 * as a habit are our own choice. */
#ifndef PLAN_HONESTY_H
#define PLAN_HONESTY_H

#include "plan/record.h"

enum { HONESTY_SETS = 6 }; /* rated sets that make a habit */

struct rating { /* one rated set whose effort can be worked out */
    const struct lift *lift;
    struct date date;
    struct ratio written;           /* rpe as the diary has it */
    struct ratio rated, worked_out; /* after her `effort` line; from the load and the max line, 0 to 10 */
    struct span at;
};
struct rating_list {
    struct rating *at;
    int count, room;
};
/* Adds the ratings of a session, in order. */
void ratings_add(struct arena *arena, const struct record *record, const struct record_session *session,
                 struct rating_list *list);

struct honesty {
    const struct lift *lift;
    int sets;
    struct ratio written, rated, worked_out; /* means; 0 without a set */
    struct ratio apart;                      /* rated - worked_out: above 0 she rates too high */
    bool off;                                /* by more than 1.5 points either way, over HONESTY_SETS or more */
    const struct rating *last;               /* NULL: no set */
};
struct honesty honesty_of(const struct rating *ratings, int count, const struct lift *lift);

/* "effort bench 8 means 7": the line that makes the ratings count as what was done, each to the half within 0 to 10. */
const char *honesty_line(struct arena *arena, const struct honesty *honesty);
/* "add `…` to the athlete, so that …", or the line of hers to change into it. */
const char *honesty_advice(struct arena *arena, const struct athlete *athlete, const struct honesty *honesty);

#endif
