/* Lists that mostly stand in order already: they cost one look, others a qsort. */
#ifndef BASE_SORT_H
#define BASE_SORT_H

#include <stddef.h>
#include <stdlib.h>

/* `compare` as for qsort; it tells any two apart, so that equal ones are no matter of luck. */
static inline void sort_unless_sorted(void *list, int count, size_t size, int (*compare)(const void *, const void *))
{
    const char *at = list;
    int sorted = 1;
    while (sorted < count && compare(at, at + size) <= 0)
        sorted++, at += size;
    if (sorted < count)
        qsort(list, (size_t)count, size, compare);
}

#endif
