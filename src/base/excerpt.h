/* Text of the coach's files on its way to a terminal: nothing in it can steer the terminal, and a place in it can be
 * shown. Columns on the screen follow utf8proc_charwidth; bytes that are no UTF-8 and characters that do not show are
 * written as \x1b or \u202e. */
#ifndef BASE_EXCERPT_H
#define BASE_EXCERPT_H

#include "base/span.h"

#include <stdio.h>

/* Shows as itself and steers nothing: no control, separator or invisible mark. Joiners shape letters in many scripts and stay. */
bool character_is_harmless(int32_t code);

char *safe_text(struct arena *arena, const char *text); /* what safe_print prints */
void safe_print(FILE *out, const char *text); /* tabs and line ends count as characters that do not show */

/* The line where the span starts, with its number, and under it a ^ for each column of the span, to the end of that line
 * at most and one at least. Tabs are copied into the line of marks. Of a long line a stretch around the span is shown.
 * `colour` is the escape sequence for the marks, or "". Prints nothing for a span that is nowhere. */
void excerpt_print(struct sources *sources, struct span at, FILE *out, const char *colour);

#endif
