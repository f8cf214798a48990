/* Text from the coach's files on its way to paper or a table: nothing in it can steer a printer or a terminal.
 * Control characters, and characters that turn the direction of writing, come out as \x1b or \u202e. */
#ifndef EMIT_VISIBLE_H
#define EMIT_VISIBLE_H

#include "emit/out.h"

enum visible_breaks {
    VISIBLE_ONE_LINE, /* line ends and tabs become a space */
    VISIBLE_BREAKS    /* line ends (LF) and tabs stay */
};
void visible_add(struct out *to, const char *bytes, size_t length, enum visible_breaks breaks);

/* Columns on the screen or on paper, as utf8proc_charwidth counts them; and the bytes of the first character. */
int columns_of(const char *bytes, size_t length);
size_t character_size(const char *bytes, size_t length);

#endif
