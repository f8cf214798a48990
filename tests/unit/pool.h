/* An arena for each test, handed over as its state; the test's own out-of-memory point is never jumped to. */
#ifndef TESTS_UNIT_POOL_H
#define TESTS_UNIT_POOL_H

#include "base/arena.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static inline int pool_setup(void **state)
{
    static jmp_buf out_of_memory;
    *state = arena_new(&out_of_memory);
    return *state ? 0 : -1;
}

static inline int pool_teardown(void **state)
{
    arena_free(*state);
    return 0;
}

#endif
