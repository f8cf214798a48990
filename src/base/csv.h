/* Comma-separated values: cells out by RFC 4180, rows in through libcsv. */
#ifndef BASE_CSV_H
#define BASE_CSV_H

#include "base/arena.h"

#include <stdbool.h>

/* Writes a text cell to `to` (room of 2 * length + 4): quoted where it must be, and with a leading ' where a spreadsheet
 * would run it as a formula (it starts with = + - @, tab, CR or LF; OWASP, CSV injection). Returns the length. */
size_t csv_cell(char *to, const char *text, size_t length);

struct csv_cell {
    const char *text; /* NUL-terminated, trimmed of spaces */
    size_t length;
    size_t start, end; /* bytes of the cell in the file, quotes included */
};
struct csv_row {
    const struct csv_cell *cells;
    int count;
};

/* Calls `row` for each row that is not empty, in order; stops when it returns false. The row is good until then. The delimiter is ',' or ';' (when
 * the first line holds more ';' than ','). False with *why and *at when the bytes are no such file (an open quote). */
bool csv_read(struct arena *arena, const char *bytes, size_t length, bool (*row)(void *context, const struct csv_row *row),
              void *context, const char **why, size_t *at);
/* Rows that were read before, again, from the first byte of one of them on and before that of another: of bytes in which no quote
 * stands. */
void csv_read_again(struct arena *arena, const char *bytes, size_t from, size_t past, char delimiter,
                    bool (*row)(void *context, const struct csv_row *row), void *context);
/* What csv_read takes as the delimiter. */
char csv_delimiter(const char *bytes, size_t length);

#endif
