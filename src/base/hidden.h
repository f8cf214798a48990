/* Characters that cannot be seen and that change what is: marks that turn the direction of writing (Unicode Standard Annex 9)
 * and characters without width. By them two texts that look alike may differ, or a line may read otherwise than it stands. */
#ifndef BASE_HIDDEN_H
#define BASE_HIDDEN_H

#include "base/diag.h"

#include <stdbool.h>

struct hidden {
    const char *what; /* "a right-to-left override" */
    int32_t code;
    uint32_t start, end; /* bytes in the text */
};

/* The first one in a text. Joiners after a letter of a script that is written with them, or within an emoji, are none. */
bool hidden_find(const char *text, uint32_t length, struct hidden *hidden);
/* Warns of the first one in a text that starts at `base` on the number line; `where`: "text", "remark", "cell". */
void hidden_say(struct findings *findings, const char *text, uint32_t length, uint32_t base, const char *where);

#endif
