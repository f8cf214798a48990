/* Places in the coach's files. A span is two byte offsets in one number line that runs through all files of a run, so
 * that a place is 8 bytes and knows its file. Lines and columns are worked out only when a finding prints. */
#ifndef BASE_SPAN_H
#define BASE_SPAN_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

struct span {
    uint32_t start, end; /* start <= end; both 0: nowhere */
};

struct source {
    const char *name; /* as it is shown: the path the coach wrote or its join with the using file's folder */
    const char *text; /* NUL-terminated; a byte-order mark is dropped */
    uint32_t base;    /* offset of the first byte on the number line; at least 1 */
    uint32_t length;
    bool named;   /* named on the command line (or within a folder named there) */
    bool library; /* std/ */
    uint32_t *lines; /* starts of lines, built on first use */
    uint32_t line_count;
};

struct position {
    const struct source *source; /* NULL: nowhere */
    uint32_t line, column;       /* from 1; column in characters (code points) */
    uint32_t byte;               /* from 0, in the text after the mark */
};

struct sources;
struct sources *sources_new(struct arena *arena);

/* Keeps a copy of the bytes; or the bytes themselves, which have a NUL behind them and live as long as the sources. NULL when
 * all files together pass 4 GiB. */
struct source *sources_add(struct sources *sources, const char *name, const char *bytes, size_t length);
struct source *sources_keep(struct sources *sources, const char *name, const char *bytes, size_t length);
struct source *sources_find(const struct sources *sources, uint32_t offset); /* NULL: nowhere; end of file belongs to it */
int sources_count(const struct sources *sources);
struct source *sources_at(const struct sources *sources, int index); /* in order of adding */

struct position position_of(struct sources *sources, uint32_t offset);
/* The line's text without its line end (LF or CRLF), by number from 1; length in bytes. */
const char *source_line(struct source *source, uint32_t line, uint32_t *length);

static inline bool span_is_somewhere(struct span span)
{
    return span.end != 0;
}
static inline struct span span_join(struct span first, struct span last)
{
    return (struct span){ first.start, last.end };
}

#endif
