/* What was done, looked back at: the parts of `review`, each worked out by itself from an athlete's record.
 *
 * The period: sessions of the diary that the scope lets through, and planned weeks that meet it, from the first entry
 * of her diary to the last. What is planned for a day after the last entry is not due yet, and a day before the first
 * was never asked for. Weights are totals in 1e-10 kg, or `shown`: as the sheet shows them, on bodyweight lifts what is
 * added. A planned range of reps counts its middle, halves up, as in the week's totals; with a progression its target.
 *
 * Owner: all lists live in the arena given to review_new, beside the record. */
#ifndef PLAN_REVIEW_H
#define PLAN_REVIEW_H

#include "plan/honesty.h"
#include "plan/running.h"

struct review_scope {
    const struct plan *const *plans; /* those looked at, of one athlete */
    int plan_count;
    bool outside;                    /* sessions that lie in none of her blocks are looked at too */
    int first_week, last_week;       /* of each block; 0: no bound */
    struct date from, to;            /* inclusive; unset: no bound */
};

/* A week of a plan; or, for sessions outside all blocks, a week from Monday on. */
struct review_week {
    const struct plan *plan; /* NULL: outside */
    const struct plan_week *week;
    int number;              /* as printed; 0: outside */
    struct date start;
};
struct review_session {
    const struct record_session *session;
    const struct review_week *week;
};
struct review {
    struct arena *arena;
    struct record *record;
    struct review_scope scope;
    enum weight_unit unit;         /* of her gym */
    const struct review_week *weeks; /* by start, one plan after the other on one day */
    int week_count;
    const struct review_session *sessions; /* looked at, by date; those missed too */
    int session_count;
    struct date first, last;       /* their dates; unset: there is none */
    const struct lift *const *lifts; /* that were done in them, in order of first doing */
    int lift_count;
};
struct review *review_new(struct arena *arena, struct record *record, const struct review_scope *scope);

bool review_looks_at(const struct review *review, const struct record_session *session);

/* Whether a planned day has come by the last entry, or has been trained: only then can it have been missed. An optional
 * day is due when it was trained. *session gets its entry, or NULL. */
bool review_day_due(const struct review *review, const struct review_week *week, const struct plan_day *day,
                    const struct record_session **session);

/* ---- the max over time: review_max.c ---- */

struct review_max {
    const struct review_week *week; /* NULL: the day after the last entry */
    struct date day;                /* as of which */
    bool has_max, by_line;          /* by_line: the newest `max` line, while no session counts; no error */
    struct weight max, error;       /* to 0.1 kg; totals on bodyweight lifts */
    int sessions;                   /* that count */
};
struct review_maxes {
    struct review_max *at; /* by day; none unless a session counts by the last */
    int count, room;
};
struct review_maxes review_maxes(const struct review *review, const struct lift *lift);

/* ---- planned against done, by week and lift: review_work.c ---- */

struct review_amount {
    int64_t sets, reps;        /* a failed rep is none, and a set of it no set; `total 30` has no planned sets */
    int64_t loaded;            /* reps with a known load */
    struct ratio shown, total; /* sums of reps x load; total: pairs and each side doubled, the tonnage */
};
struct review_work {
    const struct review_week *week;
    const struct lift *lift;     /* as planned */
    struct review_amount planned, done;
    struct review_amount apart;  /* done, and matched with nothing planned */
    int rated;                   /* sets done with an effort rated, and asked for or expected of the load */
    struct ratio asked_sum, rated_sum; /* their efforts, rpe, after her own `effort` lines */
    bool fell_short;             /* in at least one session that did it */
    const struct lift *as;       /* the other lift of `row or pulldown` where it was done, or NULL: its loads are left out */
};
struct review_works {
    struct review_work *at; /* by week, within one in order of the plan, then what was not planned */
    int count, room;
};
struct review_works review_works(const struct review *review);
/* Done of planned reps, or of sets where no reps are planned, per cent; false: nothing was planned. */
bool review_percent(const struct review_work *work, struct ratio *percent);

/* ---- what was left out: review.c ---- */

struct review_miss {
    const struct review_week *week;
    struct date date;       /* planned or written; undated days: the week's first */
    bool dated;
    const char *label;      /* of the day, or NULL */
    const struct lift *lift; /* NULL: the whole session */
    enum { MISS_MISSED, MISS_SKIPPED, MISS_UNNAMED, MISS_NO_ENTRY } how;
    const char *because;    /* or NULL */
};
struct review_misses {
    struct review_miss *at; /* by date */
    int count, room;
};
struct review_misses review_misses(const struct review *review);

/* ---- effort honesty: plan/honesty.h over the sessions looked at ---- */

struct review_honesty {
    struct honesty *at; /* each lift with a rating whose effort can be worked out, in order of first doing */
    int count, room;
};
struct review_honesty review_honesty(const struct review *review);

/* ---- session load: review_load.c ---- */

struct review_load { /* a week, Monday to Sunday: all her sessions in it, of whatever block */
    struct date monday;
    int sessions, rated;  /* trained; those with an effort and minutes */
    int64_t minutes;      /* of those rated */
    struct dec load;      /* session rpe x minutes; a sum of those rated */
    bool has_monotony;    /* all sessions are rated, at least one is, and the days are not all alike */
    struct dec monotony, strain; /* calc/strain.h: n - 1, rest days 0 */
};
struct review_loads {
    struct review_load *at; /* every week from that of the first session looked at to that of the last */
    int count, room;
};
struct review_loads review_loads(const struct review *review);
/* The trained sessions of those weeks without an effort or minutes, by date. */
struct review_unrated {
    const struct record_session **at;
    int count, room;
};
struct review_unrated review_unrated(const struct review *review);

/* ---- bests: review_best.c ---- */

struct review_best {
    int reps;
    struct weight shown, load; /* load: the total; 0 where a bodyweight is not known */
    struct date date;
    bool in_period; /* done in a session looked at */
};
struct review_bests {
    struct review_best *at; /* by reps, of all her diary up to the last session looked at */
    int count, room;
    bool has_estimate;
    struct weight estimate;       /* the highest of a rated set: load / share(reps + 10 - rpe), to 0.1 kg, a total */
    const struct record_set *from;
    struct date estimate_date;
    bool estimate_in_period;
};
/* The heaviest load for each number of reps that no longer set was as heavy as. Sets so far off that they stay out of
 * the running max have no part in the estimate. */
struct review_bests review_bests(const struct review *review, const struct lift *lift);

#endif
