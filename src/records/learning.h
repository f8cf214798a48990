/* What is learnt of a roster while it is read for the first time, so that one lifter's rows can be read again without the others:
 * roster.h says when a roster is plain enough for it. */
#ifndef RECORDS_LEARNING_H
#define RECORDS_LEARNING_H

#include "records/roster.h"
#include "records/table.h"

struct learning;

/* What is kept goes into `arena`; what only reading needs, into `scratch`. */
struct learning *learning_new(struct arena *arena, struct arena *scratch, const struct source *source);
/* A row that was read well; `is_next`: its athlete is not the one of the row before. */
void learning_row(struct learning *learning, const struct table *table, const struct roster_row *row, bool is_next);
/* Whether the roster is plain, and then where its lifters, lifts and gyms stand. */
void learning_end(const struct learning *learning, struct roster *roster);

size_t name_length(const char *name); /* of an unquoted name that stands here in a spreadsheet */

#endif
