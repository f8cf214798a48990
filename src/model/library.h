/* The library shipped with setwright, compiled in so that the program runs from anywhere: `use "std/…"`. */
#ifndef MODEL_LIBRARY_H
#define MODEL_LIBRARY_H

#include <stddef.h>

struct library_file {
    const char *name; /* as in `use`: "std/warm-ups.block" */
    const char *text; /* NUL-terminated */
    size_t length;
};
extern const struct library_file library_files[];
extern const size_t library_count;

const struct library_file *library_find(const char *name); /* NULL: the library has no such file */

#endif
