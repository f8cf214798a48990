/* The plan of one athlete in one block: weeks, days, entries, set groups, each number with its reason.
 *
 * Owner: a plan lives in the scratch arena given to plan_make and dies with it; athletes are planned and written one by one.
 * Weights are totals in 1e-10 kg unless said otherwise. */
#ifndef PLAN_PLAN_H
#define PLAN_PLAN_H

#include "model/model.h"

/* Why a number is what it is: a step and the step before it, down to the coach's words. `why` prints the chain; notes on the
 * sheet and findings read it too. */
enum reason_kind {
    REASON_MAX,           /* lift, date, ratio load: a tested max line */
    REASON_MAX_ESTIMATED, /* the same, worked out from a set */
    REASON_MAX_BORROWED,  /* lift, percent: like */
    REASON_MAX_REDUCED,   /* percent: max to 90% */
    REASON_RUNNING,       /* the running max of lift `name`: load, date of the last that counts; amount: its standard error and
                             count: sessions; before it what moved it */
    REASON_RUNNING_STOOD, /* load after the first `count` lines and sessions */
    REASON_RESULT,        /* name: a set of the diary, date, load: what it says; amount, other: the max before and after, 1e-10 kg */
    REASON_RESULT_FIRST,  /* the same, with no max before it */
    REASON_RESULT_OUT,    /* the same, so far off that it stays out */
    REASON_BODYWEIGHT,    /* date, load */
    REASON_EFFORT,        /* amount: rpe asked for */
    REASON_SERIES,        /* index of count: which training week */
    REASON_SHARE,         /* share by curve at n repetitions: name, amount n, percent */
    REASON_PERCENT,       /* percent of the max, of another lift, of bodyweight: name */
    REASON_OF_DAY,        /* percent of the load of day `name` */
    REASON_WEIGHT,        /* load as written */
    REASON_SAME,
    REASON_DROP,          /* percent or weight below the load of `name` */
    REASON_WARM_UP,       /* percent of the first working load */
    REASON_PROGRESSION,   /* name, count of sessions, load */
    REASON_PROGRESSION_MOVE, /* name: what came of the session and what the progression did, date, load after it */
    REASON_DELOAD, REASON_TAPER, REASON_ADJUST, /* name: what was changed, in words */
    REASON_CAP,           /* name: which cap; load */
    REASON_RAW,           /* the load before rounding */
    REASON_ROUNDED,       /* load; name: gym; rounding */
    REASON_UNDER_BAR,
    REASON_DISCS          /* name: "25+20+2.5" */
};
enum { REASON_MOVES_MOST = 6 }; /* of the sessions that moved a load or a max: the latest */
struct reason {
    enum reason_kind kind;
    struct span at; /* the words that led here; nowhere for defaults */
    const struct origin *origin;
    const char *name;
    struct ratio load;   /* 1e-10 kg */
    struct dec amount;   /* per cent, effort, n */
    struct dec other;
    struct date date;
    int index, count;
    const struct reason *before;
};

/* A run of like sets. */
struct plan_run {
    int sets; /* rounds multiplied in; 0 for `total`, where their number is open */
    bool has_effort; /* a target effort, rpe */
    struct dec effort_low, effort_high;
    bool has_load;
    struct weight load;  /* total; a hand for dumbbells */
    struct weight shown; /* what the sheet prints: as load, but added (or, negative, taken off) weight on bodyweight lifts */
    struct ratio max;    /* the full max it is compared with; 0/1: none */
    struct ratio own_max; /* the lift's own: of the `max` line where by_line, else the running one; 0/1: none */
    bool by_line;        /* asked for in per cent of the lift's max, or hanging on such a set */
    bool has_percent;
    struct dec percent;  /* load of max after rounding, one decimal */
    bool has_expected;   /* load-based, with a max and counted reps */
    struct dec expected; /* rpe to the half */
    bool expected_under_one;
    int disc_count;      /* a side, heaviest first; -1: no discs known */
    const struct weight *discs;
    bool capped;         /* a cap lowered it */
    bool under_bar;
    const char *open;    /* has_load false: what to print instead ("15 % below"), or NULL */
    const struct reason *reason;
};

struct plan_group {
    const struct group *group;
    enum role role;
    int sets_low, sets_high; /* equal without a band; rounds not multiplied in */
    enum reps_kind reps_kind;
    int reps_low, reps_high; /* reps, seconds or metres; amrap: at least (0: none) and 0; cluster: the sum */
    const struct plan_run *runs;
    int run_count;
};

struct plan_entry {
    const struct entry *entry;
    const struct lift *lift;     /* what is trained, after swaps */
    const struct lift *instead_of; /* the lift it was before a swap, or NULL */
    const char *because;         /* reason of an `avoid`, or NULL */
    const struct lift *const *choices; /* further lifts of `row or pulldown`, the planned one left out */
    int choice_count;
    int superset, rounds;        /* rounds 0: not stated */
    int superset_minutes;
    const struct plan_group *groups; /* warm-ups first as written */
    int group_count;
    const char *const *notes; /* of changes */
    int note_count;
};

struct plan_day {
    const struct day *day;
    struct date date; /* unset: undated */
    const struct gym *gym;
    const struct plan_entry *entries;
    int entry_count;
    const char *const *notes; /* of changes */
    int note_count;
};

struct lift_total {
    const struct lift *lift;
    int sets, reps;
    struct ratio percent_reps; /* sum of reps × per cent of max, over the sets with a known one */
    int64_t reps_with_percent; /* the mean is the quotient; 0: none */
};
struct muscle_total {
    const char *muscle;
    int half_sets; /* works counts 2, helps 1 */
};
/* Of working sets; warm-ups count nowhere but in the minutes. */
struct plan_totals {
    int sets, reps;
    const struct lift_total *lifts; /* in order of first training */
    int lift_count;
    const struct muscle_total *muscles;
    int muscle_count;
    struct weight tonnage;      /* of sets with a known load and counted reps; pairs and each side doubled */
    bool has_percent;
    struct dec mean_percent;    /* by reps, of sets with a known per cent; one decimal */
    int by_effort[4];           /* sets: below 5, 5 to below 7, 7 to below 9, 9 and above */
    int minutes;                /* expected, rounded up */
};

struct plan_week { /* of WEEK_SETS_MOST sets at most, warm-ups among them, so that its sums are ints */
    int number;      /* as printed, from 1 */
    int block_week;  /* the block's week it comes from */
    enum week_kind kind;
    struct date start;
    const struct plan_day *days; /* in order of date, undated last */
    int day_count;
    const char *const *notes;
    int note_count;
    struct plan_totals totals;
};

struct record; /* record.h: what the athlete did beside what was printed */
struct plan {
    const struct model *model;
    const struct athlete *athlete;
    const struct block *block;
    enum weight_unit unit; /* of her gym */
    struct record *record; /* of all her blocks; NULL: she has no diary */
    const struct alike *alike; /* alike.h: with whom she shares it; NULL: nobody */
    bool said;                 /* findings were added while it was made: each athlete has to hear them of herself */
    const struct plan_week *weeks;
    int week_count;
};

/* The reachable loads of a lift in a gym: its bar's, the dumbbells', its stack's, else free steps. */
const struct ladder *ladder_for(const struct gym *gym, const struct lift *lift);

/* Expected length of a day in seconds: 40 s a set, rest as stated or else 3 min for main lifts and 90 s for others (a superset
 * rests once a round), a minute a warm-up set. */
int64_t plan_day_seconds(const struct plan_day *day);
int64_t plan_entry_seconds(const struct plan_day *day, int index); /* one entry's share of it */
int plan_minutes(int64_t seconds); /* rounded up */

/* What a run of working sets adds to the totals of its week: reps are all of its sets', tonnage is 0 and a per cent missing where they
 * are not known. `percent` is reps x load / max. */
struct run_share {
    int sets, reps;
    struct ratio tonnage, percent;
    bool has_percent;
};
struct run_share run_share_of(const struct plan_entry *entry, const struct plan_group *group, const struct plan_run *run);
/* Sums of shares, to the totals' own precision: tonnage, and the mean of per cents over the reps that have one. */
struct totals_sum {
    int sets, reps;
    struct ratio tonnage, percent;
    int64_t reps_with_percent;
};
void totals_sum_add(struct totals_sum *sum, const struct run_share *share);
void totals_from_sum(struct plan_totals *totals, const struct totals_sum *sum);

/* How many weeks the block has for an athlete: those she repeats are counted twice. */
int plan_week_count(const struct block *block, const struct athlete *athlete);

/* What athletes who train the same block share, kept for a run; memory grows with the blocks that three or more train. */
struct shapes;
struct shapes *shapes_new(struct arena *arena);

/* What one athlete's plans came to before, see steady.h; for plans of which nobody tells the reasons. */
struct steadies;
struct steadies *steadies_new(struct arena *owner);
void steadies_forget(struct steadies *steadies); /* before another athlete */

struct plan_job {
    const struct model *model;
    const struct block *block;
    const struct athlete *athlete;
    struct record *record; /* her diary's, of record_new; NULL without one. With one, her blocks are planned in order of their
                              starts, and the record learns each week as it is planned */
    bool *touched;         /* block->change_count flags: learns which changes found something to change; may be NULL */
    struct shapes *shapes; /* NULL: none are kept */
    struct steadies *steadies; /* the same; the plan is to be forgotten before the next one is made with them */
    const struct alike *alike; /* what alike_find found; NULL: nobody asked, or she is like nobody */
    bool bare;             /* without reasons and totals, for who looks at neither */
    bool for_rules;        /* without totals, and of the reasons only those that the rules read: the max and the load before rounding */
};
/* Plans one athlete through one block. Never NULL. Findings go to the model's. */
struct plan *plan_make(struct arena *scratch, const struct plan_job *job);

#endif
