/* What may be trained in a lift's place (`instead leg-press, split-squat`): the small print under its title. */
#ifndef EMIT_INSTEAD_H
#define EMIT_INSTEAD_H

#include "plan/plan.h"

/* Whether a gym has what the lift is loaded with: its bar or stack by name, dumbbells where the gym states them; the body
 * and free loads always. */
bool gym_loads(const struct gym *gym, const struct lift *lift);

/* The next of the entry's substitutes that this gym loads and the athlete does not avoid, from index *at on; NULL: no more.
 * The lift it has replaced is none, nor is one that the sheet offers as her choice anyway. */
const struct lift *instead_next(const struct athlete *athlete, const struct gym *gym, const struct plan_entry *entry, int *at);

#endif
