/* Lines of a page, 80 columns unless `width` is set to more: pieces side by side that wrap under an indent. A piece is
 * never cut, unless it is longer than a whole line. No line ends in a space.
 *
 * Owner: the lines write into the page's `out` and hold nothing but where they are. */
#ifndef EMIT_LINES_H
#define EMIT_LINES_H

#include "emit/out.h"

enum { LINE_COLUMNS = 80 };

struct lines {
    struct out *out;
    struct out word; /* a text of the coach's, made visible, before it is laid out */
    int width;       /* of the page: LINE_COLUMNS, or what the owner sets after lines_new */
    int indent;      /* where a wrapped line starts */
    int column;      /* columns written on this line */
    int stop;        /* the next piece starts here or later on this line; 0: nowhere in particular */
};

struct lines lines_new(struct out *out, struct arena *arena);

/* Starts a line: `label` at column `at`, what follows at `indent`. The label is ours and shorter than the indent. */
void line_begin(struct lines *lines, int at, const char *label, int indent);
void line_stop(struct lines *lines, int column);
void line_piece(struct lines *lines, int gap, const char *bytes, size_t length); /* `gap` spaces before it, at least */
void line_say(struct lines *lines, int gap, const char *text);
/* The coach's words: made visible, broken at spaces. */
void line_words(struct lines *lines, int gap, const char *text);
void line_bytes(struct lines *lines, int gap, const char *words, size_t count);
void line_end(struct lines *lines);

void lines_rule(struct lines *lines, char c);
/* One text at the left, one flush right; below each other where both do not fit. Either may hold the coach's words. */
void lines_sides(struct lines *lines, const char *left, const char *right);

#endif
