/* What the coach wrote at a place: for findings that are about one set group. */
#ifndef MODEL_WRITTEN_H
#define MODEL_WRITTEN_H

#include "model/model.h"

/* The words of the set group that holds the place, on one line: "back-off 4 x 5 drop 15%", as a scheme has them where it is one's.
 * Looks where the setting says; NULL when it names no lift or the place is in no group. The text is the arena's. */
const char *written_group(struct arena *arena, const struct model *model, const struct setting *setting, struct span at);

#endif
