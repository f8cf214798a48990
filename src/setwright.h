/* libsetwright: training blocks in, findings and plans out.
 *
 * Files come through a reader function, so unsaved buffers and tests can stand in for the disk. The library never exits, prints
 * nothing of its own and has no global state; two `struct setwright` may be used in two threads. One owns all it gives
 * out: every pointer is good until setwright_free. The order is load, check, then build or walk; each may be called again.
 * All text is UTF-8. Once a call has run out of memory every further one returns SETWRIGHT_LIMIT (or what it has for nothing). */
#ifndef SETWRIGHT_H
#define SETWRIGHT_H

#include <stdbool.h>
#include <stddef.h>

enum setwright_status {
    SETWRIGHT_FINE = 0,
    SETWRIGHT_FINDINGS = 1, /* the coach's files have errors; setwright_finding says which */
    SETWRIGHT_USAGE = 2,    /* no such format, athlete, block, week or day: setwright_problem says which */
    SETWRIGHT_FILES = 3,    /* a file could not be read, or the sink refused */
    SETWRIGHT_LIMIT = 4     /* a finding of the kind `limit`, or no memory: then setwright_problem says so */
};

/* The bytes of a path, valid until setwright_free, or NULL with *why as part of a sentence ("no such file"). */
struct setwright_reader {
    const char *(*read)(void *context, const char *path, size_t *length, const char **why);
    void *context;
    bool ended; /* a NUL stands behind the bytes: then they are read where they lie, else copied */
};
/* Where output goes; false ends the build. */
struct setwright_sink {
    bool (*write)(void *context, const char *bytes, size_t length);
    void *context;
};

struct setwright;
struct setwright *setwright_new(struct setwright_reader reader); /* NULL: out of memory */
void setwright_free(struct setwright *sw);                       /* NULL is fine */
/* Memory that a run may take, in bytes; 2 GiB without this call. What the reader returns is the caller's and not counted. */
void setwright_memory(struct setwright *sw, size_t most);

/* Reads the files and all they use, and binds every name. Once for each struct setwright. */
enum setwright_status setwright_load(struct setwright *sw, const char *const *paths, int count);
/* Plans every block for every athlete; findings grow, nothing is written. */
enum setwright_status setwright_check(struct setwright *sw);
/* The same for who only builds: what is an error is found, what only warns is left unsaid. A check may follow. */
enum setwright_status setwright_check_errors(struct setwright *sw);

enum setwright_level { SETWRIGHT_ERROR, SETWRIGHT_WARNING, SETWRIGHT_ADVICE };
struct setwright_place {
    const char *file; /* NULL: nowhere */
    unsigned line, column, end_line, end_column; /* from 1, in characters; the end is the first one past */
    unsigned byte, end_byte; /* from 0, a byte-order mark not counted */
};
struct setwright_related { /* a second place: "first declared here" */
    struct setwright_place place;
    const char *message;
};
struct setwright_finding {
    enum setwright_level level;
    const char *name; /* "unknown-name"; setwright_explain tells more */
    const char *message, *help; /* help may be NULL */
    struct setwright_place place;
    const struct setwright_related *related;
    int related_count;
    const char *block, *day, *lift; /* where in training: names; NULL and 0 where not known */
    const char *group;              /* the set group as written: "back-off 4 x 5 drop 15%"; NULL: about none */
    int week;
    const char *const *athletes; /* the first it is for, `named` of `athlete_count`; none: everyone's */
    int named, athlete_count;
    const char *allowed; /* the coach's reason; NULL but for setwright_allowed */
};
int setwright_finding_count(const struct setwright *sw);
struct setwright_finding setwright_finding(struct setwright *sw, int index); /* sorted by file and place */
int setwright_allowed_count(struct setwright *sw); /* what `allow` permits: in none of the other counts */
struct setwright_finding setwright_allowed(struct setwright *sw, int index);
/* Makes as if the findings whose flag is set, by index, had not been met; the others close up. Never an error. */
enum setwright_status setwright_silence(struct setwright *sw, const bool *silent);
int setwright_errors(const struct setwright *sw);
int setwright_warnings(const struct setwright *sw);
/* The findings as text for people; at most `most` of them (0: all), with the true total. All of the text or, with
 * SETWRIGHT_LIMIT, none. */
struct setwright_style {
    bool colour; /* for a terminal */
    bool brief;  /* the first line of each alone */
    int most;
};
enum setwright_status setwright_findings_text(struct setwright *sw, struct setwright_sink sink, struct setwright_style style);

/* Who takes turns with others to build one output: `athletes` of them at a time, the turn-th (from 0) of `turns`. `done` is called
 * after each turn, when all bytes of it are in the sink, which gets them as late as may be; what all write, turn by turn, is the
 * whole, byte for byte. `sure` of the choice is called before any of them. */
struct setwright_turns {
    int turn, turns, athletes;
    bool (*done)(void *context); /* false ends the build */
    void *context;
};
/* What is built. NULL and 0 leave a bound open; dates are "2027-01-04". */
struct setwright_choice {
    const char *const *athletes; /* names of athletes or groups */
    int athlete_count;
    const char *const *blocks;
    int block_count;
    int run; /* of a block that seasons run more than once for an athlete: which time, from 1; 0: each */
    int first_week, last_week;
    const char *from, *to;
    bool crlf; /* csv */
    const char *const *flights; /* the meet sheet: "9:30" for each lift, in its order */
    int flight_count;
    const char *sheet; /* text: "athlete" (as NULL), "group", "coach" or "meet" */
    int part, parts;   /* the part-th of so many shares of the athletes, in output order; built one after the other they are the
                          whole, byte for byte (not with a `sheet`); 0: all */
    /* setwright_build_checked */
    const struct setwright_turns *turns; /* NULL: alone */
    bool (*sure)(void *context); /* called with the sink's context where it is known early that no error will make void what was
                                    written: then nothing needs to be held back any more; false ends the build. NULL: never */
};
/* Whether a choice has anything to build; SETWRIGHT_USAGE with a problem when not. */
enum setwright_status setwright_fits(struct setwright *sw, const struct setwright_choice *choice);
int setwright_weeks(struct setwright *sw, const struct setwright_choice *choice); /* of the longest block it covers */
/* A sentence after SETWRIGHT_USAGE, with the nearest name, or after a call that ran out of memory; else NULL. */
const char *setwright_problem(const struct setwright *sw);

/* Writes the plans in a format ("text", "csv", "yaml"). Fit after a check without errors. */
enum setwright_status setwright_build(struct setwright *sw, const char *format, const struct setwright_choice *choice,
                                      struct setwright_sink sink);
/* Looks for errors (as setwright_check_errors does) and builds in one go, after setwright_load alone: each athlete is planned once.
 * With SETWRIGHT_FINDINGS what the sink has got is void. Not for a sheet but the usual one. Of a choice with a part, only the
 * athletes of that part are looked at. */
enum setwright_status setwright_build_checked(struct setwright *sw, const char *format, const struct setwright_choice *choice,
                                              struct setwright_sink sink);
/* Whether others can help: not where the house made errors of rules that look at everyone. After setwright_load. */
bool setwright_may_share(struct setwright *sw);
/* A line a week for each chosen athlete, across blocks and seasons. */
enum setwright_status setwright_calendar(struct setwright *sw, const struct setwright_choice *choice, struct setwright_sink sink);
/* A diary to fill in: the chosen sessions, each lift `as planned` with what was printed behind it. */
enum setwright_status setwright_diary(struct setwright *sw, const struct setwright_choice *choice, struct setwright_sink sink);
/* What the chosen athletes' diaries say of the time chosen: "text", a page each, or "csv", one table. Dates without a plan are fine. */
enum setwright_status setwright_review(struct setwright *sw, const char *format, const struct setwright_choice *choice,
                                       struct setwright_sink sink);
/* The pairs of athlete and block that a choice covers, in output order; false ends the walk. */
enum setwright_status setwright_pairs(struct setwright *sw, const struct setwright_choice *choice,
                                      bool (*each)(void *context, const char *athlete, const char *block), void *context);

/* Walks the plan: one row for each run of like sets, its cells as in the csv format without quoting, "" where open. Cells
 * are good until `each` returns; false ends the walk. */
const char *setwright_column(int index); /* NULL past the last */
enum setwright_status setwright_walk(struct setwright *sw, const struct setwright_choice *choice,
                                     bool (*each)(void *context, const char *const *cells), void *context);

/* Takes back sheets of the csv format with what was done filled in: diary text for the athletes in output order, written in one
 * piece once every filled row has been matched with its row of the plan, or (SETWRIGHT_FINDINGS) not at all. *sessions: how many
 * were filled in; with 0 nothing is written. Sheets are read through the reader. */
enum setwright_status setwright_collect(struct setwright *sw, const char *const *sheets, int count, struct setwright_sink sink,
                                        int *sessions);

/* The whole derivation of each number of one lift on one day. day NULL: every day of the week. */
struct setwright_question {
    const char *athlete, *block, *day, *lift;
    int week;
};
enum setwright_status setwright_why(struct setwright *sw, const struct setwright_question *question, struct setwright_sink sink);

/* Tables that need no files. NULL past the end or for an unknown name. */
const char *setwright_version(void);
const char *setwright_format_name(int index, const char **ending, const char **says);
const char *setwright_sheet_name(int index, const char **says);
const char *setwright_finding_name(int index, const char **says);
const char *setwright_explain(struct setwright *sw, const char *finding_name); /* a page; good until setwright_free */
/* Nearest finding name, or NULL. */
const char *setwright_finding_near(const char *name);
const char *setwright_library_name(int index, const char **text); /* "std/strength.block" */

#endif
