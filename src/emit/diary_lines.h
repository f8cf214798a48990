/* Lines of a diary, as the language has them: what was done, in text that can be read back.
 *
 * Warm-ups are no part of a diary. Numbers with '.', no trailing zeros; loads in the unit of the day's gym. */
#ifndef EMIT_DIARY_LINES_H
#define EMIT_DIARY_LINES_H

#include "emit/out.h"
#include "plan/plan.h"

/* What was done of one run of like sets (a row of the CSV). */
struct done_sets {
    bool asked;               /* the sheet had the row: else nobody can say whether it was done */
    int sets;                 /* that were done; 0: none */
    const struct dec *loads;  /* one a set; on bodyweight lifts what is added, negative what is taken off */
    const struct dec *reps;   /* one a set: repetitions, seconds or metres; 0: a failed one */
    const struct dec *efforts;
    int effort_count;         /* 0, 1 (of the last set) or as many as sets */
};

void diary_open(struct out *out, const char *athlete); /* "diary ines {" */
void diary_close(struct out *out);
/* "  2027-01-04 A {", with `week 2` where the date lies in another week than the plan's. */
void diary_session_open(struct out *out, const struct plan_week *week, const struct plan_day *day, struct date date);
void diary_session_close(struct out *out);

/* Whether an entry has anything but warm-ups. */
bool diary_has_entry(const struct plan_entry *entry);

/* A line a lift; `done` holds one for each run of the day, in their order. A lift of which nothing was done is skipped, one
 * that the sheet did not ask for is left out; a set group of which nothing was done is `x 0` at its load (an open one at the
 * load before it). Several runs of one set group are one part; its efforts are all of them, or else that of its last set. */
void diary_session(struct out *out, const struct plan_week *week, const struct plan_day *day, struct date date,
                   const struct done_sets *done);

#endif
