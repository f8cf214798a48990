/* What an athlete could lift, and weighed, as of a day: her `max` and `bodyweight` lines read as a history.
 *
 * The newest line dated on or before the day counts; an undated one counts as the oldest; of two of one day the later written.
 * Her own max counts once its date has come; until then the one borrowed by `like`, times its percentages, exactly. */
#ifndef MODEL_HISTORY_H
#define MODEL_HISTORY_H

#include "model/model.h"

struct max_used {
    const struct max_line *line;  /* NULL: she has none, own or borrowed */
    const struct lift *lent_by;   /* the lift whose line it is, when it is borrowed; else NULL */
    struct ratio load;            /* 1e-10 kg, percentages of `like` taken */
    struct ratio lent;            /* before they were taken: what the line itself comes to */
};
/* A max worked out from a set follows the block's `model` where she has neither points nor a model of her own: the same set
 * at the same effort stays the same load. `block` may be NULL. */
struct max_used history_max(const struct athlete *athlete, const struct lift *lift, struct date day, const struct block *block);

/* The line that it counts by; NULL: she has none. */
const struct max_line *history_max_line(const struct athlete *athlete, const struct lift *lift, struct date day);

/* For her with many max lines: sorts them, so that they are found at once. When her lines are complete. */
void history_sort(struct arena *arena, struct athlete *athlete);

bool history_has_points(const struct athlete *athlete, const struct lift *lift); /* a curve of her own for it */

/* What one line comes to: a max worked out from a set follows the curve in force, as above. 1e-10 kg. */
struct ratio history_line_load(const struct athlete *athlete, const struct max_line *line, const struct block *block);

/* The repetitions that its set tells could be done; of a max that was lifted 1. */
struct ratio history_line_reps(const struct max_line *line);

/* An effort as rated to what it means, by her `effort` line for the lift; within rpe 0 to 10. */
struct dec history_effort(const struct athlete *athlete, const struct lift *lift, struct dec rated);

const struct avoid_line *history_avoid(const struct athlete *athlete, const struct lift *lift); /* NULL: she does not */

const struct bodyweight_line *history_bodyweight(const struct athlete *athlete, struct date day); /* NULL: none at all */

/* Her curve for a lift: own points, then her model, the block's, the top level's, the default. */
struct curve history_curve(const struct model *model, const struct block *block, const struct athlete *athlete,
                           const struct lift *lift);

#endif
