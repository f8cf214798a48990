/* Entries that come to the same in every week: coaches write most of a week again in the next, and in the next block. What such an
 * entry came to is kept while its athlete is checked, and taken up wherever the same is asked for again.
 *
 * Steady is an entry of one number for each value, the same for all weeks and sets, whose loads hang on nothing outside of it but the
 * athlete's max and the gym; in a block and a week that change nothing of it; and about which there was nothing to say. */
#ifndef PLAN_STEADY_H
#define PLAN_STEADY_H

#include "plan/work.h"

void steadies_trim(struct steadies *steadies); /* bounds what is kept; no plan made with them is still in use */

/* Whether entries of this week may be steady: no change, warm-up, result or derivation has a say in it. */
bool steady_week(struct planning *p, const struct work_week *week);

/* Looks at an entry of such a week before anything of it is worked out. True: it is known, and its groups stay empty. */
bool steady_find(struct planning *p, const struct work_week *week, const struct work_day *day, struct work_entry *entry);

/* The groups of an entry that was known, as its own. */
const struct plan_group *steady_groups(struct planning *p, const struct work_entry *entry, int *count);

/* What an entry came to that was looked for, and not known. */
void steady_keep(struct planning *p, const struct work_entry *entry, const struct plan_group *groups, int count);

#endif
