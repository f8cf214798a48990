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

/* All of it done as printed: made, and full when the target was the top of the range. False: the day does not train it. */
bool outcome_as_printed(const struct work_day *day, const struct state *state, struct outcome *out);

/* By the diary where it is known, else as printed. Done is compared with what was printed. */
struct outcome outcome_of(const struct planning *p, const struct stint *stint);

#endif
