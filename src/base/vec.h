/* Growable typed arrays in an arena: VEC(struct day) days; vec_add(arena, &days, day). Old storage is left to the arena. */
#ifndef BASE_VEC_H
#define BASE_VEC_H

#include "base/arena.h"

#include <string.h>

#define VEC(type) \
    struct { \
        type *at; \
        int count, room; \
    }

#define vec_add(arena, vec, value) (vec_grow_((arena), (vec)), (vec)->at[(vec)->count++] = (value))

/* Of large things there are mostly one or two. */
#define vec_first_(vec) (sizeof *(vec)->at > 128 ? 2 : 4)

#define vec_grow_(arena, vec) \
    ((vec)->count < (vec)->room \
         ? (void)0 \
         : (void)((vec)->room = (vec)->room ? 2 * (vec)->room : vec_first_(vec), \
                  (vec)->at = arena_grown((arena), (vec)->at, sizeof *(vec)->at * (size_t)(vec)->count, \
                                          sizeof *(vec)->at * (size_t)(vec)->room)))

#endif
