/* The athletes' spreadsheet: one row a max, columns in any order, named in the first row:
 * athlete,title,group,gym,bodyweight,lift,max,unit,reps,rpe,date. Only `athlete` must be there. Text to rows of facts;
 * names are not looked up here. Owner: rows live in the arena given. */
#ifndef RECORDS_ROSTER_H
#define RECORDS_ROSTER_H

#include "base/date.h"
#include "base/dec.h"
#include "base/diag.h"

struct roster_cell {
    const char *text; /* interned, NFC where a name; NULL: empty or no such column */
    struct span at;
};
struct roster_row {
    struct roster_cell athlete, title, group, gym, lift;
    bool has_bodyweight, has_max, has_reps, has_rpe, has_unit;
    struct dec bodyweight, max, reps, rpe; /* numbers as written */
    enum weight_unit unit;
    struct date date;
    struct span at, bodyweight_at, max_at, reps_at, rpe_at, date_at;
};
struct roster {
    const struct roster_row *const *rows;
    int count;
};

/* Reads the source's text (`,` or `;` between cells; with `;` decimal commas are read too). Findings of kind `roster` at the
 * cell: unknown or doubled column (nearest name offered), no athlete, a cell that is no number, date or unit, a max
 * without a lift, reps or rpe without a max. A row with a finding is left out; the others are kept. */
struct roster roster_read(struct arena *arena, struct interner *interner, struct source *source,
                          struct findings *findings);

#endif
