/* The kinds of findings that are no rule of the trade: a row each, with what `explain` says about it.
 * The rules of the trade have their own table. */
#ifndef BASE_KINDS_H
#define BASE_KINDS_H

enum level { LEVEL_ERROR, LEVEL_WARNING, LEVEL_ADVICE };

enum kind {
    KIND_NONE,
    /* text and words */
    KIND_SYNTAX, KIND_TEXT, KIND_NUMBER, KIND_UNIT, KIND_DATE, KIND_LIMIT,
    /* files */
    KIND_FILE, KIND_USE, KIND_ROSTER, KIND_SHEET,
    /* names and declarations */
    KIND_UNKNOWN_NAME, KIND_DUPLICATE, KIND_CYCLE, KIND_MISSING, KIND_REPEATED, KIND_MISPLACED, KIND_RANGE,
    KIND_WEEKS, KIND_UNTOUCHED, KIND_LIST_LENGTH, KIND_UNKNOWN_LET, KIND_PROGRESSION,
    /* loads */
    KIND_MISSING_MAX, KIND_MISSING_BODYWEIGHT, KIND_OPEN_LOAD, KIND_NO_TOP, KIND_IMPOSSIBLE_SET, KIND_UNDER_BAR,
    KIND_AVOIDED_LIFT, KIND_OVERLAP,
    /* results */
    KIND_DIARY, KIND_UNMATCHED_DIARY,
    /* the calendar */
    KIND_SEASON, KIND_MEET_DAY, KIND_NOT_BUILT,
    KIND_COUNT,
    KIND_RULE /* a rule of the trade: its row is in a table of its own */
};

struct kind_row {
    const char *name; /* printed in brackets: unknown-name */
    enum level level;
    const char *says;    /* one line for the list of `explain` */
    const char *explain; /* a page: what it looks for, an example, how to mend it */
};

const struct kind_row *kind_row(enum kind kind); /* never NULL */
enum kind kind_find(const char *name);           /* KIND_NONE: no such kind */
const char *level_name(enum level level);        /* "error" */

#endif
