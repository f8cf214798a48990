/* Memory made scarce: malloc and its kin for all of the test program, the libraries and the C library under it included.
 * While `scarce.armed`, allocations are counted, the one numbered `fails` finds no memory, and `live` says how many are not
 * given back. Under the sanitizers the memory comes from theirs, so that misuse still shows. */
#ifndef TESTS_UNIT_SCARCE_H
#define TESTS_UNIT_SCARCE_H

#include <errno.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#ifdef __SANITIZE_ADDRESS__
#define REAL(name) __interceptor_##name
#else
#define REAL(name) __libc_##name
#endif

void *REAL(malloc)(size_t size);
void *REAL(calloc)(size_t count, size_t size);
void *REAL(realloc)(void *old, size_t size);
void REAL(free)(void *piece);

static struct {
    bool armed;
    long count, fails, live;
} scarce;

static inline bool scarce_gives(bool fresh)
{
    if (!scarce.armed)
        return true;
    if (++scarce.count == scarce.fails) {
        errno = ENOMEM;
        return false;
    }
    scarce.live += fresh;
    return true;
}

void *malloc(size_t size)
{
    return scarce_gives(true) ? REAL(malloc)(size) : NULL;
}

void *calloc(size_t count, size_t size)
{
    return scarce_gives(true) ? REAL(calloc)(count, size) : NULL;
}

void *realloc(void *old, size_t size)
{
    return scarce_gives(!old) ? REAL(realloc)(old, size) : NULL;
}

char *strdup(const char *text) /* the sanitizers' own would pass by */
{
    size_t size = strlen(text) + 1;
    char *copy = malloc(size);
    return copy ? memcpy(copy, text, size) : NULL;
}

void free(void *piece)
{
    scarce.live -= scarce.armed && piece;
    REAL(free)(piece);
}

#endif
