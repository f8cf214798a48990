/* Rows of filled-in sheets against one athlete's plans. For src/api/ alone. */
#ifndef API_MATCH_H
#define API_MATCH_H

#include "emit/cells.h"
#include "emit/diary_lines.h"
#include "records/filled.h"

#include "base/vec.h"

/* A row of the plan, and what the sheets say about it. */
struct slot {
    struct done_sets done;
    const struct filled_row *filled; /* the row in which something is filled, or NULL */
};
struct session {
    const struct plan *plan;
    const struct plan_week *week;
    const struct plan_day *day;
    struct slot *slots; /* by seq - 1 */
    int slot_count;
    struct date date;                /* the plan's, or the lifter's own; unset: none is known yet */
    const struct filled_row *dated;  /* who said the own date */
    const struct filled_row *first;  /* the first row in which something is filled; NULL: not trained */
    bool moved;                      /* another lift or role stands in a row: the rows below need not be said */
};
struct matching {
    struct arena *arena; /* a call's */
    struct findings *findings;
    const struct model *model;
    const struct athlete *athlete;
    VEC(struct session) sessions;
    struct session *last; /* where the row before it belonged */
    const struct filled_row *unknown; /* the last row that belonged nowhere */
};

/* Adds the sessions of a plan, which must live as long as the matching. */
void match_plan(struct matching *m, const struct plan *plan);
/* Finds the row's place, or says as a finding why it has none; rows with something filled in them come first (match_filled),
 * then the others of their sessions (match_empty). */
void match_filled(struct matching *m, const struct filled_row *row);
void match_empty(struct matching *m, const struct filled_row *row);
/* After all rows: an undated session needs the lifter's own date. */
void match_dates(struct matching *m);

/* A finding of kind `sheet` about a row. */
struct finding *match_refuse(struct matching *m, const struct filled_row *row, struct span at, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
/* What the row says was done of its row of the plan (done.c); nothing where it cannot be, which it then says. */
void done_make(struct matching *m, const struct filled_row *row, const struct row *plan, struct done_sets *done);

#endif
