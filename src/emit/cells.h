/* A row of work as cells: the columns that `csv` and `yaml` share, a row of the table each, in the order of the CSV.
 *
 * A row is a run of like sets. Names, never titles; numbers with '.', no trailing zeros, weights in the unit of the bar
 * of the day's gym; an empty cell is open. What the design leaves to us:
 *   rpe    the target, else the expected one; where a cap lowered the load the expected one, since that is what is done
 *   note   joined by "; ": what stands for an open load ("15 % below the top set"), then the notes of the set group,
 *          of the entry and of changes. Cues and the notes of lifts, days and weeks belong to the training sheet */
#ifndef EMIT_CELLS_H
#define EMIT_CELLS_H

#include "emit/out.h"

struct row {
    const struct plan *plan;
    const struct plan_week *week;
    const struct plan_day *day;
    const struct plan_entry *entry;
    const struct plan_group *group;
    const struct plan_run *run;
    int seq; /* from 1 within the day */
};

enum cell_kind {
    CELL_NAME,   /* a name or a word of ours: needs no quotes in CSV */
    CELL_TEXT,   /* may hold anything */
    CELL_NUMBER, /* a number, or a text such as "6-7" or "30 s" in its place */
    CELL_DONE    /* left empty, for what was done */
};
struct column {
    const char *name;
    enum cell_kind kind;
    void (*write)(struct out *to, const struct row *row); /* NULL: stays empty */
};

enum { COLUMN_COUNT = 22, COLUMN_SEQ = 5 }; /* the columns before seq are the same all day */
extern const struct column columns[COLUMN_COUNT];

bool cell_is_number(const char *bytes, size_t length); /* "-2.5" is, "" and "30 s" are not */

/* Where a cap lowered the load the effort is what is left of it. */
static inline bool run_shows_expected(const struct plan_run *run)
{
    return run->has_expected && (!run->has_effort || run->capped);
}

#endif
