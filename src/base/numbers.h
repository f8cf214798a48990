/* Numbers for things, from 0 in the order in which they are first asked for: joins lists without going through one for each of the
 * other. A thing is a pointer and a word beside it (0 where there is nothing to say), compared bit by bit.
 *
 * Owner: the arena. Start with { .arena = arena }. */
#ifndef BASE_NUMBERS_H
#define BASE_NUMBERS_H

#include "base/arena.h"

struct numbers {
    struct arena *arena;
    struct numbered *slots; /* a hash table, at most half full */
    int count, room;
};

int numbers_give(struct numbers *numbers, const void *thing, uint64_t beside);
int numbers_known(const struct numbers *numbers, const void *thing, uint64_t beside); /* -1: it has none */

#endif
