/* A sink of fixed size that keeps what is written to it, and refuses what does not fit. */
#ifndef TESTS_UNIT_CAUGHT_H
#define TESTS_UNIT_CAUGHT_H

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

struct caught {
    char *text;
    size_t length, most;
};

static inline bool catch_bytes(void *context, const char *bytes, size_t length)
{
    struct caught *caught = context;
    if (caught->length + length > caught->most)
        return false;
    memcpy(caught->text + caught->length, bytes, length);
    caught->length += length;
    return true;
}

#endif
