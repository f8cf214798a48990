/* The `allow` lines of a club, found by where they hold. */
#ifndef CHECK_ALLOWS_H
#define CHECK_ALLOWS_H

#include "check/rule.h"

struct allows;
struct allows *allows_new(struct arena *arena, const struct model *model);

/* The one that permits what a rule says of a place: of those in whose scope its words or one of its origins stand the first written,
 * else the block's (NULL: of none): a block's `allow` reaches the template's words and the athletes' maxes too. NULL: none. */
const struct allow_line *allows_find(struct allows *allows, const struct rule *rule, const struct block *block, struct span at,
                                     const struct origin *origin);

#endif
