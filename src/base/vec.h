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

#define vec_grow_(arena, vec) \
    ((vec)->count < (vec)->room \
         ? (void)0 \
         : (void)((vec)->room = (vec)->room ? 2 * (vec)->room : 4, \
                  (vec)->at = vec_moved_((arena), (vec)->at, sizeof *(vec)->at * (size_t)(vec)->count, \
                                         sizeof *(vec)->at * (size_t)(vec)->room)))

static inline void *vec_moved_(struct arena *arena, const void *old, size_t used, size_t room)
{
    void *moved = arena_alloc(arena, room);
    if (used)
        memcpy(moved, old, used);
    return moved;
}

#endif
