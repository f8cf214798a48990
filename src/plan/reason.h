/* Reasons in words: the sentence for each step of a derivation. */
#ifndef PLAN_REASON_H
#define PLAN_REASON_H

#include "plan/plan.h"

/* One step as a sentence without its place: "75 % of the max: 90 kg". Weights in `unit`, to two decimals. */
const char *reason_sentence(struct arena *arena, const struct reason *reason, enum weight_unit unit);

#endif
