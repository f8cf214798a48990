/* Training sheets that come back filled in: the CSV that `build --format csv` writes, with what was done in its last three
 * columns. Columns are found by their names, in any order; columns of other names are left alone. Text to rows of facts:
 * whether a row fits a plan is not asked here. Owner: rows live in the arena given. */
#ifndef RECORDS_FILLED_H
#define RECORDS_FILLED_H

#include "base/date.h"
#include "base/dec.h"
#include "base/diag.h"

enum filled_column {
    FILLED_ATHLETE, FILLED_BLOCK, FILLED_WEEK, FILLED_DATE, FILLED_DAY, FILLED_SEQ, FILLED_LIFT, FILLED_ROLE, FILLED_SETS,
    FILLED_REPS_LOW, FILLED_REPS_HIGH, FILLED_LOAD, FILLED_UNIT, FILLED_DONE_LOAD, FILLED_DONE_REPS, FILLED_DONE_RPE, FILLED_COLUMNS
};

struct filled_cell {
    const char *text; /* as written, "" where empty; athlete, block, day and lift interned in NFC; NULL: no such column (role alone) */
    struct span at;   /* where it is empty, the place it would stand */
};
struct filled_number {
    struct dec number; /* loads may be negative: help on a bodyweight lift */
    char unit;         /* 's' or 'm' behind a repetition, else 0 */
};
struct filled_list {
    const struct filled_number *at; /* one value for all sets, or one a set */
    int count;                      /* 0: the cell is empty */
};
struct filled_row {
    struct filled_cell cells[FILLED_COLUMNS];
    int week, seq;    /* 1 or more */
    struct date date; /* unset: empty */
    struct filled_list loads, reps, efforts;
    bool is_filled;   /* something stands under done_… */
    bool decimal_comma;
    struct span at;
};
struct filled {
    const struct filled_row *rows;
    int count;
};

/* Reads the source's text, adding findings of kind `sheet` at the cell: a needed column that is missing, cells that do not
 * fit their columns (once a row), words or numbers under done_… that cannot be (repetitions are whole, 0 to 1000; rpe 0 to 10 in
 * halves), a load or an effort without repetitions. A row with a finding is left out. So is, without one, a row in which nothing
 * is filled and a cell cannot be read: nobody needs it. */
struct filled filled_read(struct arena *arena, struct interner *interner, struct source *source, struct findings *findings);

const char *filled_column_name(enum filled_column column);

/* Whether the cell says the same as a text of the plan: numbers by value, words without blanks. */
bool filled_same(const struct filled_row *row, enum filled_column column, const char *text);

#endif
