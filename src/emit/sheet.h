/* Sheets: what `build --format text` prints besides a page for each athlete and week. A row each.
 *
 * `write` gets the plans its scope names and writes whole pages: form feed between pages (`begun` says whether a page went
 * before), at most 100 columns (athlete and meet 80). It returns false after a failed write. */
#ifndef EMIT_SHEET_H
#define EMIT_SHEET_H

#include "emit/format.h"
#include "emit/out.h"

enum sheet_scope {
    SHEET_ATHLETE, /* the usual pages: as_text.c */
    SHEET_BLOCK,   /* once for each block, with the plans of all its chosen athletes */
    SHEET_CLUB,    /* once, with all chosen plans, athletes in output order */
    SHEET_MEET     /* once for each athlete's last block of a season with a meet */
};

struct sheet {
    const char *name; /* "group" */
    const char *says;
    enum sheet_scope scope;
    bool (*write)(struct out *out, const struct narrow *narrow, struct plan *const *plans, int count, bool *begun);
};

const struct sheet *sheet_find(const char *name);
int sheet_count(void);
const struct sheet *sheet_at(int index);

/* The writers. */
bool sheet_group(struct out *out, const struct narrow *narrow, struct plan *const *plans, int count, bool *begun);
bool sheet_coach(struct out *out, const struct narrow *narrow, struct plan *const *plans, int count, bool *begun);
bool sheet_meet(struct out *out, const struct narrow *narrow, struct plan *const *plans, int count, bool *begun);

#endif
