/* Meet day: what a season comes down to for an athlete, from her maxes and the season's lines.
 *
 * Owner: everything lives in the arena given. Weights are totals in 1e-10 kg; `shown` is what is announced and loaded: the same,
 * but the added weight on lifts that load the body.
 *
 * Attempts: each is its per cent of the max as of the meet's day (no growth is assumed), to the nearest legal load, ties down, and
 * none is lighter than the one before it. Legal are the loads that the meet's bar can make and that are multiples of 2.5 kg, or of
 * 5 lb in a gym whose bar is in lb (all its loads, where none is such a multiple). A season that names no gym has competition gear:
 * 25 kg of bar and collars (20 + 2 x 2.5), discs of 25, 20, 15, 10, 5, 2.5 and 1.25 kg, as many as it takes (IPF Technical Rules).
 *
 * Two other thirds: half of the jump from second to third, to the nearest legal load, ties down, and a legal step at least, is
 * taken off for the cautious third (never below the second) and put on for the bold one. Our own choice.
 *
 * Warm-ups: shares of the opener with repetitions and minutes before the first attempt, one table in season.c; common practice.
 * One that is not a twentieth of the opener above the one before it, or not lighter than the opener, is left out. */
#ifndef PLAN_SEASON_H
#define PLAN_SEASON_H

#include "model/history.h"
#include "plan/running.h"

enum { ATTEMPT_COUNT = 3 };

struct meet_load {
    struct weight load, shown;
    int disc_count; /* a side, heaviest first; -1: no discs known */
    const struct weight *discs;
};
struct meet_warm_up {
    struct meet_load load;
    int reps, minutes; /* before her first attempt */
};
enum meet_open { MEET_KNOWN, MEET_NO_MAX, MEET_NO_BODYWEIGHT }; /* why a lift has no loads */
struct meet_lift {
    const struct attempts_line *line;
    enum meet_open open; /* otherwise the rest is not set */
    struct max_used max; /* as of the meet's day; its load is the running max where there is one */
    struct running running;
    struct weight empty; /* bar and collars; 0: the lift loads no bar, or its gym has no list of discs */
    struct meet_load attempts[ATTEMPT_COUNT], cautious, bold;
    const struct meet_warm_up *warm_ups; /* light to heavy */
    int warm_up_count;
};
/* Competition points of the expected total, classic lifting: the language knows neither sex nor equipment. */
struct meet_points {
    const char *who; /* "women", "men" */
    bool has_gl, has_dots;
    struct dec gl, dots;
};
struct meet_day {
    const struct season *season;
    const struct meet *meet;
    const struct athlete *athlete;
    enum weight_unit unit;
    struct weight step;   /* the smallest legal one: 2.5 kg or 5 lb */
    struct weight collar; /* each, of competition gear; 0: the gym's own, which its bar includes */
    const struct meet_lift *lifts; /* in the order of the attempts lines */
    int lift_count;
    struct weight totals[ATTEMPT_COUNT]; /* of all openers, seconds, thirds: what is shown; the last is what is expected */
    bool whole;                          /* every lift has loads, and there is one */
    const struct bodyweight_line *bodyweight; /* as of the day; NULL: none */
    struct meet_points points[2];
    bool has_points; /* a whole total of three lifts, and a bodyweight */
};

/* The day of one of the season's meets. `block` is the one that a max worked out from a set belongs to: the season's last.
 * `record` is her diary's, NULL without one: the running max counts, unless the block says `max fixed`. */
struct meet_day *season_meet_day(struct arena *arena, const struct season *season, const struct meet *meet,
                                 const struct athlete *athlete, const struct block *block, struct record *record);

/* The meet that the season is counted back from, or NULL. */
static inline const struct meet *season_last_meet(const struct season *season)
{
    return season && season->meet_count ? &season->meets[season->meet_count - 1] : NULL;
}

#endif
