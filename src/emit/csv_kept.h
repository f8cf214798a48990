/* The rows of a table that were written, kept by lift for the athletes who are alike in it (plan/alike.h): what comes after the
 * number of the row within its day, since before it stand her name and how many rows her other lifts have that day.
 *
 * Owner: the arena given to kept_new, of which the texts take KEPT_MOST bytes at most; what comes later is not kept. */
#ifndef EMIT_CSV_KEPT_H
#define EMIT_CSV_KEPT_H

#include "emit/out.h"
#include "plan/alike.h"

enum { KEPT_MOST = 64 << 20 };

struct kept;
struct kept *kept_new(struct arena *arena);

/* A plan that is being written: kept_begin, then its days in order, each with the cells that are the same all day (her name
 * first), its entries and their rows, then kept_end. What is new is learnt. */
void kept_begin(struct kept *kept, const struct plan *plan);
void kept_day(struct kept *kept, const char *head, size_t length);
/* Writes the rows of a known entry, *seq being the number of the row before them; false: it is not known, and its rows are to be
 * written and shown to kept_row. */
bool kept_entry(struct kept *kept, const struct lift *lift, int *seq, struct out *out);
void kept_row(struct kept *kept, const char *bytes, size_t length);
void kept_end(struct kept *kept);

bool kept_knows(const struct kept *kept, const struct alike *alike); /* all; sets alike->known for each */
/* All rows of an athlete of whom all is known. False: a write failed. */
bool kept_write(struct kept *kept, const char *name, const struct alike *alike, struct out *out);

#endif
