/* A look back at what was done: what `review` prints, as text and as one table for a spreadsheet. */
#ifndef EMIT_AS_REVIEW_H
#define EMIT_AS_REVIEW_H

#include "emit/out.h"
#include "plan/review.h"

/* A page of at most 80 columns; form feed before it when one has begun. `review` NULL: she has no diary. False after a
 * failed write. */
bool review_text(struct out *out, const struct athlete *athlete, const struct review *review, bool *begun);

/* Rows of one flat table; the header comes first (RFC 4180, LF, numbers with '.'; a mean has two decimals). Each of the
 * six parts is a `kind`, and `what` says more:
 *   max      running, line, none                    missed   missed, skipped, unnamed, no-entry
 *   work     done, short, none, apart               honesty  fine, off, few
 *   load     whole, part, none                      best     set, estimate
 * `load` and `planned_load` are as `load_is` says: total, added, hand, or body (a total with the body in it). */
void review_csv_header(struct out *out);
bool review_csv(struct out *out, const struct athlete *athlete, const struct review *review);

#endif
