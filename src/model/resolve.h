/* Trees to model: every name bound, every declaration worked out, blocks ready to plan.
 *
 * Never NULL. Findings say what is wrong; the model is fit for planning when none of them is an error. */
#ifndef MODEL_RESOLVE_H
#define MODEL_RESOLVE_H

#include "model/load.h"
#include "model/model.h"

struct model *model_resolve(struct arena *arena, struct interner *interner, struct sources *sources,
                            struct findings *findings, struct loaded loaded);

/* Those who wait have no names yet: model_gather comes before these. The people whom an athlete's or a group's name (or "all") means;
 * NULL: no such name. */
const struct people *model_people(const struct model *model, const char *name);
const struct athlete *model_athlete(const struct model *model, const char *name); /* NULL: none, or a group */
const char *model_nearest_person(const struct model *model, const char *name); /* NULL: none is near */
const struct lift *model_lift(const struct model *model, const char *name);    /* NULL: no such lift */
const char *model_nearest_lift(const struct model *model, const char *name);

#endif
