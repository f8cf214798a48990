/* Running the rules: levels by goal, house limits, `allow`, folding; one walk over each athlete's plans. */
#ifndef CHECK_RUN_H
#define CHECK_RUN_H

#include "check/rule.h"

struct checking; /* one check of a whole club */

/* Reads the `checks` and `allow` lines: findings for unknown rules (nearest name), missing reasons, limits that do not fit. */
struct checking *checking_new(struct arena *arena, const struct model *model);

/* Whether the house's `checks` make errors of other rules than the trade's table: then all must be asked of everyone. */
bool checking_wants_everyone(const struct model *model);
/* As checking_new, to ask only what that table has as an error; nothing else is said. NULL where checking_wants_everyone. Such plans
 * may be bare. */
struct checking *checking_new_errors(struct arena *arena, const struct model *model);

/* Whether anything would be asked about an athlete without a diary who trains this block alone. */
bool checking_asks(const struct checking *checking, const struct block *block);

/* One athlete at a time: begin, then each of her plans by the starts of their blocks, then end. A plan may be forgotten before the
 * next one is made. begin: false: nothing would be asked, and neither is to be called. `hers` and the record (NULL: no diary) have
 * to stand until the end; views and texts are made in `scratch`. */
bool checking_begin(struct checking *checking, struct arena *hers, const struct athlete *athlete, struct record *record,
                    const struct block *const *blocks, int block_count);
void checking_plan(struct checking *checking, struct arena *scratch, const struct plan *plan);
void checking_end(struct checking *checking, struct arena *scratch);

bool checking_met(const struct checking *checking); /* whether a rule has met anything so far */

/* Says what was met, folded over weeks and athletes; silences what is off or allowed; names unused names, lets and allows. */
void checking_finish(struct checking *checking);

/* For tests: asks one rule of hand-built views. */
void checking_ask(struct checking *checking, const struct rule *rule, struct arena *scratch, const struct athlete_view *view,
                  const struct block_view *blocks, int block_count);

#endif
