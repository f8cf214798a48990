/* What a training sheet says of an entry: its title, swaps and choices, cue and notes, and its sets. */
#ifndef EMIT_ENTRY_LINES_H
#define EMIT_ENTRY_LINES_H

#include "emit/set_lines.h"

/* A line of the coach's words between words of ours, either of which may be "". */
void words_line(struct lines *lines, int indent, const char *before, const char *text, const char *after);
void notes_lines(struct lines *lines, int indent, const char *const *notes, int count);
const char *phrase_end(struct out *say); /* the phrase with a NUL behind it */

/* "1.", or "2b." within a superset: `part` from 0, below 0 outside of one. */
void number_write(char to[32], int number, int part);
void entry_lines(struct sheet *sheet, const struct row *row, const char *number); /* `row` has plan, week, day and entry */
void superset_line(struct sheet *sheet, const struct plan_entry *first, int number);

#endif
