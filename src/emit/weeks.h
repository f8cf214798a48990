/* Plans seen by the calendar's weeks, Monday to Sunday, whatever day a block's own weeks start on: what the coach's page
 * asks of them. Undated days go by their week's first day. */
#ifndef EMIT_WEEKS_H
#define EMIT_WEEKS_H

#include "emit/format.h"

/* The Mondays of the first and the last of the plans' weeks; false: there is none. */
bool weeks_span(struct plan *const *plans, int count, struct date *first, struct date *last);
bool weeks_has_day(struct date monday, const struct plan_week *week, const struct plan_day *day);
bool weeks_starts(struct date monday, const struct plan_week *week); /* its first day is in the calendar week */
/* Whether a plan's week has a day in the calendar week that the options let through; without days, whether it starts there. */
bool weeks_meet(struct date monday, const struct narrow *narrow, const struct plan_week *week);

/* What an athlete does of a lift in a calendar week; working sets alone. */
struct lift_week {
    int64_t sets;
    bool has_load;
    struct weight heaviest; /* as shown on the sheet */
    enum weight_unit unit;
};
struct week_lift {
    const struct lift *lift;
    struct lift_week work;
};
struct week_lifts {
    struct week_lift *at; /* in order of first training */
    int count, room;
};
struct week_lifts weeks_lifts(struct arena *arena, struct date monday, struct plan *const *plans, int count,
                              const struct athlete *athlete);

/* The lift whose sets, and the lift whose heaviest load, changed most between two weeks; of equal changes the first. A lift
 * of one week alone has no sets in the other, and its load is not compared. False: nothing changed. */
struct week_change {
    const struct lift *lift;
    struct lift_week before, now;
};
bool weeks_most_sets(const struct week_lifts *now, const struct week_lifts *before, struct week_change *change);
bool weeks_most_load(const struct week_lifts *now, const struct week_lifts *before, struct week_change *change);

/* The meets of the plans' seasons from the Monday to `days` later, by date, each once. */
struct meet_due {
    const struct meet *meet;
    const struct season *season;
};
struct meet_list {
    struct meet_due *at;
    int count, room;
};
struct meet_list weeks_meets(struct arena *arena, struct date monday, struct plan *const *plans, int count, int days);

/* Adds the max lines that the calendar week's loads hang on, as the plan's week reckons them, and that are older than `days` on
 * the Monday or undated; each line once. */
struct stale_max {
    const struct lift *lift; /* the line's: the lender's for a borrowed max */
    const struct max_line *line;
};
struct stale_list {
    struct stale_max *at;
    int count, room;
};
void weeks_stale(struct arena *arena, struct date monday, const struct narrow *narrow, const struct plan *plan, int days,
                 struct stale_list *list);

#endif
