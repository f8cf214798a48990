/* A session of many: athletes down, lifts across, in each cell the working sets with load, target effort and discs a side.
 *
 * A column is an entry as the coach wrote it, so a lift swapped for one athlete stays under it and says its own name. Lines
 * break at words, discs after a "+"; a column is at most COLUMN_MOST wide. Owner: everything lives in the arena given. */
#ifndef EMIT_GROUP_TABLE_H
#define EMIT_GROUP_TABLE_H

#include "emit/out.h"
#include "plan/plan.h"

enum { GROUP_COLUMNS = 100 }; /* of the page */

/* One athlete's day in the session. */
struct member {
    const struct plan *plan;
    const struct plan_week *week;
    const struct plan_day *day;
};

struct group_table;
/* At least one member; rows in their order, an athlete with two days on one date has one row. */
struct group_table *group_table_make(struct arena *arena, const struct member *members, int count);
int group_table_columns(const struct group_table *table);
/* The column past the last that fits beside column `first`: at least first + 1. */
int group_table_past(const struct group_table *table, int first);
int group_table_height(const struct group_table *table, int first, int past); /* lines written, one to spare */
void group_table_write(struct out *out, const struct group_table *table, int first, int past);

#endif
