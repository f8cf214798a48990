/* The words of the training sheet: a fact of the plan as an athlete says it. Each function adds to a scratch text;
 * loads carry their unit, dumbbells "a hand", and nothing here holds a line end. */
#ifndef EMIT_WORDING_H
#define EMIT_WORDING_H

#include "emit/cells.h"

void say_seconds(struct out *say, struct seconds_band band); /* "90 s", "2-3 min" */
void say_sets(struct out *say, const struct row *row);       /* "4 sets x 8-12 reps", "30 reps in all" */
void say_load(struct out *say, const struct row *row);       /* "90 kg", or what to do about an open one */
void say_discs(struct out *say, const struct row *row);      /* "discs a side: 25 + 10 kg"; nothing when not known */
void say_effort(struct out *say, const struct row *row);     /* "rpe 8 (2 left)"; nothing when none */
void say_rpe(struct out *say, const char *before, struct dec low, struct dec high); /* "until rpe 8-9" */
void say_weight(struct out *say, struct weight weight, enum weight_unit unit);      /* "102.5 kg" */
void say_date(struct out *say, struct date date, bool month, bool year); /* "Mon 4 January 2027", or less of it */
void say_week_dates(struct out *say, struct date first); /* "Mon 29 March to Sun 4 April 2027" */
void say_count(struct out *say, int64_t count, const char *one, const char *many); /* "1 set", "4 sets" */

static inline const char *unit_word(enum weight_unit unit)
{
    return unit == UNIT_KG ? "kg" : "lb";
}
static inline const char *lift_words(const struct lift *lift)
{
    return lift->title ? lift->title : lift->name;
}
/* An open load whose effort is part of the words about the load. */
static inline bool load_says_effort(const struct plan_run *run)
{
    return !run->has_load && !run->open && run->has_effort;
}
/* A warm-up that is all said in a few words, and those: "65 kg x 3, 20+2.5 a side". */
bool is_plain_warm_up(const struct row *row);
void say_warm_up(struct out *say, const struct row *row);
/* Nothing but the body: the athlete writes down repetitions alone. */
bool is_body_alone(const struct row *row);
int sets_most(const struct row *row); /* of the group, rounds and all; 0: open */

#endif
