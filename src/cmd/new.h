/* The files of a new folder, a row each: what `setwright new` writes. */
#ifndef CMD_NEW_H
#define CMD_NEW_H

#include "cmd/command.h"

struct new_text {
    const char *name; /* within the folder */
    const char *text; /* with @template@, @starts@ (a date) and @tested@ (a date before it) to be filled in */
};

extern const struct new_text new_texts[];
extern const int new_text_count;

#endif
