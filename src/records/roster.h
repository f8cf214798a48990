/* The athletes' spreadsheet: one row a max, columns in any order, named in the first row:
 * athlete,title,group,gym,bodyweight,lift,max,unit,reps,rpe,date. Only `athlete` must be there. Text to rows of facts;
 * names are not looked up here. Rows are not kept: whoever wants them reads them again. */
#ifndef RECORDS_ROSTER_H
#define RECORDS_ROSTER_H

#include "base/date.h"
#include "base/dec.h"
#include "base/diag.h"

struct roster_cell {
    const char *text; /* NULL: empty or no such column; names in NFC */
    struct span at;
};
/* Of a row that is being looked at; its athlete and title are gone with it, the other names are interned. */
struct roster_row {
    struct roster_cell athlete, title, group, gym, lift;
    bool has_bodyweight, has_max, has_reps, has_rpe, has_unit;
    struct dec bodyweight, max, reps, rpe; /* numbers as written */
    enum weight_unit unit;
    struct date date;
    struct span at, bodyweight_at, max_at, reps_at, rpe_at, date_at;
};
struct roster_names {
    const struct roster_cell *at; /* each name once, where it first stands */
    int count;
};
struct roster {
    const struct table *table; /* how to read it again */
    const struct repeats *repeats;
    int row_count;
    /* Where all is plain, one lifter can be read without the others: her rows stand together, nothing is quoted, names of lifters
     * are ASCII, nobody is in a group, no max has more than two decimals, and lifts and gyms are few. */
    bool is_plain;
    const uint32_t *places; /* in the text, of each lifter's name in her first row; NULL unless plain */
    int lifter_count;
    struct roster_names lifts, gyms; /* all, if plain */
};

/* Reads the source's text (`,` or `;` between cells; with `;` decimal commas are read too). Findings of kind `roster`, all of them
 * errors, at the cell: unknown or doubled column (nearest name offered), no athlete, a cell that is no number, date or unit, a max
 * without a lift, reps or rpe without a max. A row with a finding is left out; the others count. What is returned lives in
 * `arena`; `scratch` is for the time of reading. */
struct roster roster_read(struct arena *arena, struct arena *scratch, struct interner *interner, struct source *source, struct findings *findings);

/* All rows again, in order, for `each`; `scratch` has what it takes to read them. */
void roster_rows(const struct roster *roster, struct arena *scratch, void (*each)(void *context, const struct roster_row *row), void *context);
/* The name of a lifter of a plain roster, the index-th from 0: bytes of the text, so many. */
const char *roster_lifter_name(const struct roster *roster, int index, size_t *length);
/* roster_rows for her rows alone. */
void roster_lifter(const struct roster *roster, int index, struct arena *scratch, void (*each)(void *context, const struct roster_row *row), void *context);

#endif
