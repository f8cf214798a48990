/* The training record of one athlete: her diary beside what was printed for her.
 *
 * A session of the diary belongs to the block and week of its date (or the week it names), and there to the day of its label, or
 * of its date. It is matched when that week has been planned, so that `as planned` stands for what was printed. What matches
 * nothing still tells what was lifted. Owner: lives in the scratch arena, with the plans of the athlete.
 *
 * As-of rule (language.md, 5.8): nothing here looks at dates but to find a session's place; whoever reads it for a week leaves out
 * what is dated on or after the week's first day. */
#ifndef PLAN_RECORD_H
#define PLAN_RECORD_H

#include "plan/plan.h"

/* One set that was done. */
struct record_set {
    const struct lift *lift;
    bool has_load;
    struct weight load;  /* a total on bodyweight lifts: unknown without a bodyweight */
    struct weight shown; /* as written; of `as planned` as printed */
    int reps;
    bool counted;        /* reps, and no seconds or metres */
    bool has_effort;
    struct dec rated;    /* rpe as written */
    struct dec effort;   /* after her own `effort` line, within 0 to 10 */
    bool has_speed;
    struct dec speed;    /* m/s */
    bool as_planned;
    struct span at;
};

/* A written set group of the plan beside what was done of it. */
struct record_part {
    const struct plan_entry *entry;
    const struct plan_group *groups; /* those that one written group came to, in order */
    int group_count;
    const struct record_set *sets;   /* none: not done */
    int set_count;
};

enum record_how {
    RECORD_DONE,    /* with parts that match the groups of the plan, one each */
    RECORD_UNEVEN,  /* done, with more or fewer parts than there are groups: they match nothing */
    RECORD_SKIPPED,
    RECORD_UNNAMED, /* planned, and the diary says nothing of it */
    RECORD_EXTRA    /* done without being planned */
};
struct record_lift {
    const struct lift *lift;        /* as done; as planned where it was not */
    enum record_how how;
    const struct done_lift *done;   /* NULL: RECORD_UNNAMED */
    const struct record_part *parts; /* a part for each group of the plan; none: RECORD_EXTRA */
    int part_count;
    const struct record_set *sets;  /* all that were done */
    int set_count;
    bool other_choice; /* the other lift of `row or pulldown` */
};

struct record_session {
    const struct diary_session *diary;
    int block, week; /* of the athlete's blocks, as given to record_new, and its week as printed; block -1: outside all */
    const struct plan_day *day; /* as printed; NULL: not planned yet, or matched with nothing */
    bool doubled; /* its session has an entry already, which is an error */
    const struct record_lift *lifts; /* in order of the diary, then those not named */
    int lift_count;
    const struct record *record;
};

struct session_place {
    int block, week, session;
};
struct record {
    struct arena *arena;
    const struct model *model;
    const struct athlete *athlete;
    const struct block *const *blocks;
    int block_count;
    struct record_session *sessions; /* by date, as the athlete's diary */
    int session_count;
    const struct session_place *by_week; /* the sessions by block, week, date */
    struct record_index *index; /* record.c's own */
    struct tracks *tracks; /* running.c's own */
};

/* NULL for an athlete without a diary. `blocks`: all that she trains. */
struct record *record_new(struct arena *scratch, const struct model *model, const struct athlete *athlete,
                          const struct block *const *blocks, int block_count);

/* The block that a session lies in, or NULL. */
const struct block *record_block(const struct record *record, const struct record_session *session);

/* Matches the sessions of a week that has just been planned. Findings go to the model's: a second entry for one session, and
 * what does not match. */
void record_take_week(struct record *record, const struct plan *plan, const struct plan_week *week);

/* Once all her blocks are planned: findings for sessions outside every block, and in weeks that have no such day. */
void record_finish(struct record *record);

/* The session trained on a day of a plan, or NULL. */
const struct record_session *record_of_day(const struct record *record, const struct plan_day *day);
const struct record_lift *record_lift_of(const struct record_session *session, const struct plan_entry *entry); /* or NULL */

/* What was printed for a set of a part; those beyond the last are beside the last. */
struct record_beside {
    const struct plan_group *group;
    const struct plan_run *run;
};
struct record_beside record_beside(const struct record_part *part, int set);
/* Reps, seconds or metres that a set as planned stands for: the target of a progression, the middle of a range, halves up. */
int record_reps_planned(const struct plan_group *group);

/* Whether less was done than printed: a set left out, or reps short of the target; lighter counts where a weight or a per cent was
 * asked for, since at an effort the load is the lifter's to find. */
bool record_part_missed(const struct record_part *part);
int record_sets_printed(const struct record_part *part); /* rounds multiplied in; the least of a band */

/* The last day before `day` on which the diary has the lift; unset: none. */
struct date record_last_day(const struct record *record, const struct lift *lift, struct date day);

#endif
