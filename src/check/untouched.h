/* Changes (deload, taper, adjust) that no plan has felt. */
#ifndef CHECK_UNTOUCHED_H
#define CHECK_UNTOUCHED_H

#include "model/model.h"

/* A finding for each change of the club that is not touched. touched[block][change id] has been set by plan_make for all
 * athletes of all blocks. A change that names only weeks its block does not have is left out: that has been said. */
void untouched_say(const struct model *model, bool *const *touched);

#endif
