/* Lists of numbers by thing: where in a list each thing stands, in the order of the list. Things are those of numbers.h.
 *
 * Owner: the arena. Start with { .arena = arena }. */
#ifndef BASE_PLACES_H
#define BASE_PLACES_H

#include "base/numbers.h"
#include "base/vec.h"

struct place_list {
    VEC(int) at;
};
struct places {
    struct arena *arena;
    struct numbers things;
    VEC(struct place_list) lists; /* by the thing's number */
};
void places_add(struct places *places, const void *thing, uint64_t beside, int place);
struct place_list places_of(const struct places *places, const void *thing, uint64_t beside); /* empty: it stands nowhere */

#endif
