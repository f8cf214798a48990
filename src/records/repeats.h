/* Rows of a roster that say behind the athlete's name what a row before them said: in a club of thousands most maxes are of the same
 * lift, load and day as others. Their cells are read once.
 *
 * Owner: the arena given. At most REPEATS_MOST rows are kept; the others are just not known. */
#ifndef RECORDS_REPEATS_H
#define RECORDS_REPEATS_H

#include "records/roster.h"

enum { REPEATS_MOST = 1024 };

struct repeats;
struct repeats *repeats_new(struct arena *arena);
/* Of the bytes from the separator behind the name to the end of the line, at a place of the source: the row, without its athlete and
 * without a title; false: none is known. */
bool repeats_find(const struct repeats *repeats, const struct source *source, struct span rest, struct roster_row *row);
/* A row that was read well. */
void repeats_keep(struct repeats *repeats, const struct source *source, struct span rest, const struct roster_row *row);

#endif
