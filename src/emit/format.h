/* Output formats: a row each. A writer is called athlete by athlete and holds no more than one plan at a time. */
#ifndef EMIT_FORMAT_H
#define EMIT_FORMAT_H

#include "plan/alike.h"

/* Where bytes go. `write` returns false after a failure; writers stop then and say nothing. */
struct sink {
    bool (*write)(void *context, const char *bytes, size_t length);
    void *context;
    size_t load; /* bytes that it would have at once; 0: the usual */
};

/* Which weeks are written; 0: no bound. Dates inclusive: with bounds undated days go by their week's first day. */
enum { FLIGHTS_MOST = 8 };
struct narrow {
    int first_week, last_week;
    struct date from, to;
    int flights[FLIGHTS_MOST]; /* the meet sheet: when each lift's flight starts, in minutes after midnight, in its order */
    int flight_count;
};

struct writer; /* a format's own state */

struct format_options {
    bool crlf; /* csv */
    bool resumed; /* what goes before has been written: no head, and a page begins as a second one does */
    struct narrow narrow;
};

struct format {
    const char *name;   /* "csv" */
    const char *ending; /* ".csv" */
    const char *says;   /* for --help */
    bool bare;          /* shows neither reasons nor totals: plans without them will do */
    struct writer *(*begin)(struct arena *arena, struct sink sink, const struct format_options *options);
    bool (*athlete)(struct writer *writer, const struct athlete *athlete); /* before her plans */
    bool (*plan)(struct writer *writer, const struct plan *plan);
    /* May be NULL, both: which lifts of such an athlete have been written before, for one alike in it (plan/alike.h), and whether
     * all have: then her whole plan is written again without being made. */
    bool (*knows)(const struct writer *writer, const struct alike *alike); /* sets alike->known */
    bool (*again)(struct writer *writer, const struct athlete *athlete, const struct alike *alike);
    bool (*pause)(struct writer *writer); /* after an athlete's plans: all that was written is in the sink */
    bool (*end)(struct writer *writer); /* also frees what is not the arena's; false: something was not written */
};

const struct format *format_find(const char *name);
int format_count(void);
const struct format *format_at(int index);

/* Whether the options let a week or a day through. */
bool narrow_has_week(const struct narrow *narrow, const struct plan_week *week);
bool narrow_has_day(const struct narrow *narrow, const struct plan_week *week, const struct plan_day *day);

#endif
