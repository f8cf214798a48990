/* The planner's own workings: a week while it is being planned. Only plan/ includes it.
 *
 * The order of language.md, sections 3 and 5: series, then deload or taper, then adjust, then progressions, then loads (each
 * rounded once), then runs of like sets. */
#ifndef PLAN_WORK_H
#define PLAN_WORK_H

#include "base/numbers.h"
#include "base/vec.h"
#include "model/history.h"
#include "plan/running.h"

/* What one set asks for, before its load is worked out. Sets that are alike share one. */
struct spec {
    int reps_low, reps_high;
    struct dec effort_low, effort_high; /* rpe */
    struct ratio amount;                /* per cent as a number, or a weight in 1e-10 kg; the middle of a band */
};

/* A change of load waiting for the load: `amount` as the change's value of that week. */
struct load_change {
    const struct change *change;
    struct ratio amount; /* per cent, or 1e-10 kg */
    bool percent;
    enum reason_kind why;
};

struct work_run {
    int sets;
    const struct spec *spec;
    struct plan_run made;
};

struct work_group {
    const struct group *group;
    enum role role;
    enum load_kind load_kind; /* the group's, or open after a swap */
    enum reps_kind reps_kind; /* the group's; amrap becomes a count in a progression's deload */
    bool all_alike;
    int sets_low, sets_high;
    struct spec *specs;
    int spec_count; /* 1 when all sets are alike */
    VEC(struct load_change) load_changes;
    VEC(struct load_change) reps_changes; /* of a progression's sets: they wait for its target */
    int state_low, state_high; /* reps as the progression asked for them, before changes */
    struct dec cap_effort; /* of changes; the lowest; below 0: none */
    struct span cap_at;
    bool cap_from_change;
    struct dec own_cap_effort; /* below 0: none */
    bool has_own_cap;
    struct ratio own_cap; /* per cent, or 1e-10 kg */
    struct state *state;  /* progression */
    struct ratio state_load;
    int state_sessions; /* that moved it */
    int state_stint;    /* its latest by then, of the block's; -1: none */
    bool has_state_load;
    bool left_out;
    struct work_run *runs;
    int run_count;
    const struct reason *changes; /* of sets, reps and effort, the last first */
};

struct steady;
enum work_stage { STAGE_NEW, STAGE_WORKING, STAGE_DONE };
struct work_entry {
    const struct entry *entry;
    const struct lift *lift, *written; /* now; as written */
    const char *because;
    const struct change *swapped_by; /* NULL: not by a change */
    VEC(struct work_group) groups;
    VEC(const char *) notes;
    int superset, rounds;
    struct steady *steady; /* steady.c's: known, unless there are groups; NULL: not steady */
    bool said;             /* there was something to say while it was worked out */
    enum work_stage stage;
    const struct work_group *first, *before, *top; /* while loads are worked out: of the groups that sets may hang on the first, and
                                                      the last so far, of any role and of the top ones; NULL: none */
};

struct work_day {
    const struct day *day;
    struct date date;
    const struct gym *gym;
    VEC(struct work_entry) entries;
    VEC(const char *) notes;
};

struct work_week {
    int number, block_week;
    enum week_kind kind;
    struct date start;
    VEC(struct work_day) days;
    VEC(const char *) notes;
    int64_t sets; /* kept so far */
};

/* A progression's state: language.md, section 6. Shared by all days of a block. */
struct state {
    const struct lift *lift;
    const struct progression *progression;
    enum load_kind load_kind;
    struct ratio written; /* the starting load or per cent as written */
    struct ratio start;   /* what that comes to */
    struct ratio load;    /* exact, 1e-10 kg */
    int target;           /* of a range; 0: its low end */
    struct ratio last_load;
    int last_target;
    bool trained;
    int missed;           /* in a row */
    int sessions;
    int stint;            /* its latest of the block's; -1: none */
    struct state *same;   /* before it, another of its key, see state_for */
    struct outcome *now;  /* of the day being gone through; else NULL */
    struct span at;
    const struct reason *reason; /* of the start */
};

/* A day's sessions of one progression, and what came of it. */
struct stint {
    struct state *state;
    int week, day;        /* its number as printed; its place in the week */
    const struct work_day *work;
    bool known;           /* its diary counts by now */
    const char *says;     /* for `why`: what came of it and what the progression did */
    struct ratio after;   /* the load after it */
    struct span at;       /* of the diary's words, where known */
    struct outcome *outcome; /* by the diary where it is known, else as printed */
    int before;           /* the state's stint before it, of the block's; -1: none */
};

struct planning {
    struct arena *arena; /* scratch */
    const struct model *model;
    const struct block *block;
    const struct athlete *athlete;
    struct record *record; /* NULL: no diary */
    struct shapes *shapes; /* NULL: none are kept */
    const struct alike *alike; /* NULL: she is like nobody */
    bool bare, for_rules;  /* as in plan_job */
    struct reason no_reason; /* what the reasons are written to that are not kept, and nobody reads */
    bool *touched;
    VEC(struct state *) states;
    struct numbers state_keys;
    VEC(struct state *) keyed; /* by their keys: the last made of each */
    VEC(struct stint) stints; /* of all progressions, in order of training */
    struct steadies *steadies; /* NULL: none are kept */
    const struct work_day *day_now; /* for findings met while its entries are read */
    struct plan *plan;
};

/* steady.c had it already: there are no groups of sets to work out. */
static inline bool entry_is_known(const struct work_entry *entry)
{
    return entry->steady && !entry->groups.at;
}

static inline struct date day_reckoned(const struct work_week *week, const struct work_day *day)
{
    return date_is_set(day->date) ? day->date : week->start;
}

struct finding *plan_finding(const struct planning *p, const struct work_week *week, const struct work_day *day,
                             const struct work_entry *entry, const struct origin *origin, enum kind kind, struct span at,
                             const char *format, ...) __attribute__((format(printf, 8, 9)));

/* sets.c: the values of a week for one entry */
void sets_evaluate(struct planning *p, const struct work_week *week, struct work_entry *entry);
bool work_group_make(struct planning *p, const struct work_week *week, const struct work_entry *entry, const struct group *group,
                     struct work_group *out); /* false: not in this week, or broken */
int value_index(const struct value *value, int block_week); /* which training week of its frame */
struct ratio_band value_in_week(const struct value *value, int block_week, int set, struct dec grain);

/* change.c */
void changes_week(struct planning *p, struct work_week *week);
bool changes_reach_entries(struct planning *p, const struct work_week *week); /* false: they leave notes, if anything */
void avoids_apply(struct planning *p, struct work_week *week);
void reps_change_apply(const struct load_change *waiting, struct work_group *group);

/* progress.c */
void progress_week(struct planning *p, struct work_week *week);
const struct reason *progress_reasons(struct planning *p, const struct work_group *group); /* where its state comes from */

/* equipment.c */
bool gym_has_equipment(const struct gym *gym, const struct lift *lift); /* its bar or stack by name, where one is asked for */
/* A load (total) to one the gym can make; on bodyweight lifts what is added is rounded, steps both ways from nothing, ties down. */
struct weight load_round(const struct gym *gym, const struct lift *lift, struct ratio load, struct weight bodyweight, enum rounding rounding);

/* load.c: every load of the week */
void loads_week(struct planning *p, struct work_week *week);
struct max_used work_max(const struct planning *p, const struct work_week *week, const struct lift *lift);
struct ratio reps_middle(const struct spec *spec);

/* totals.c */
void totals_week(struct planning *p, struct plan_week *week);

/* unroll.c */
struct reason *reason_add(struct planning *p, enum reason_kind kind, struct span at, const struct origin *origin,
                          const struct reason *before);
/* The derivation so far: with the reason just added, or without it where it is not kept. */
static inline const struct reason *reasons_with(const struct planning *p, const struct reason *added)
{
    return added == &p->no_reason ? added->before : added;
}
static inline bool reasons_are_told(const struct planning *p) /* somebody reads their words */
{
    return !p->bare && !p->for_rules;
}

#endif
