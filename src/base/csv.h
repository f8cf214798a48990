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

/* Who takes what is read. */
struct csv_taker {
    bool (*row)(void *context, const struct csv_row *row); /* each that is not empty, in order, good until it returns; false stops */
    /* NULL, or shown each row first that is a line without quotes, by its bytes in the file: true, and it is not cut into cells. */
    bool (*line)(void *context, size_t start, size_t end);
    void *context;
};
/* The delimiter is ',' or ';' (when the first line holds more ';' than ','). False with *why and *at when the bytes are no such
 * file (an open quote). */
bool csv_read(struct arena *arena, const char *bytes, size_t length, const struct csv_taker *taker, const char **why, size_t *at);
/* Rows that were read before, again, from the first byte of one of them on and before that of another: of bytes in which no quote
 * stands. */
void csv_read_again(struct arena *arena, const char *bytes, size_t from, size_t past, char delimiter, const struct csv_taker *taker);
/* What csv_read takes as the delimiter. */
char csv_delimiter(const char *bytes, size_t length);

#endif
