/* What came of a progression's session: made, missed, easy or full (language.md, section 6). For plan/progress alone. */
#ifndef PLAN_OUTCOME_H
#define PLAN_OUTCOME_H

#include "plan/work.h"

struct outcome {
    bool held; /* skipped, missed as a whole, or not told: it counts for nothing */
    bool made, full, easy;
    int weakest;     /* reps of the weakest set; below 0: none is counted */
    const char *why; /* held: the words for it */
    struct span at;
};

/* Before any set is looked at: made and full. */
extern const struct outcome outcome_best;

/* A group that is done as printed: made, and full when the target was the top of the range. */
void outcome_add_printed(struct outcome *out, const struct work_group *group);

/* Puts into the outcomes of a day's stints, all of them, what the diary says. Done is compared with what was printed. */
void outcomes_done(const struct record_session *session, const struct plan_day *day, struct stint *stints, int count);

#endif
