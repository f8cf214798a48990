/* The set groups of a training sheet: what to do, and under it a blank for each set that was done. */
#ifndef EMIT_SET_LINES_H
#define EMIT_SET_LINES_H

#include "emit/lines.h"
#include "emit/wording.h"

enum { SHEET_LABEL = 4, SHEET_INDENT = 14 };

struct sheet {
    struct lines lines;
    struct out say;     /* a phrase being put together */
    struct out waiting; /* phrases put aside, a NUL after each, until it is known how many there are */
};

/* All set groups of row->entry, in order; `row` has plan, week, day and entry. */
void set_lines(struct sheet *sheet, struct row row);

#endif
