/* Findings: what setwright has to say to the coach. They are collected as data, sorted and printed at the end.
 *
 * One mistake gives one finding: a second finding of the same kind at the same span is dropped (only counted), however
 * many weeks or athletes it reaches. Only this module (with excerpt) writes to standard error. */
#ifndef BASE_DIAG_H
#define BASE_DIAG_H

#include "base/kinds.h"
#include "base/span.h"

#include <stdio.h>

/* Where in training a finding belongs; each NULL or 0 where it is not known. Names, not titles. */
struct setting {
    const char *block, *day, *lift, *athlete;
    int week;
};

/* A second place that explains a finding: "first declared here", "used by block spring here". */
struct related {
    struct span at;
    const char *says;
    struct related *next;
};

enum { SETTING_ATHLETES = 8 };
struct finding {
    enum kind kind;
    const struct kind_row *row; /* name and explanation; that of the kind, or of a rule */
    enum level level;    /* that of the kind, or as raised or lowered */
    struct span at;
    const char *message; /* one sentence, no full stop at the end */
    const char *help;    /* what to do; NULL where the message says it */
    struct related *related;
    struct setting setting;
    int times;           /* how often it was met: 1 or more */
    const char *athletes[SETTING_ATHLETES]; /* the first for whom it was met, by setting */
    int athlete_count;                      /* of all for whom it was met */
    char *last_athlete; /* NULL: nobody yet */
    int order;           /* of adding; breaks ties when sorting */
    bool off;            /* silenced: counted and printed nowhere */
    const char *allowed; /* the coach's reason for allowing it: silent too, but SARIF lists it; NULL: not allowed */
};

struct findings;

/* `most` findings are printed (50 for the command line); all are kept. */
struct findings *findings_new(struct arena *arena, struct sources *sources);

/* Adds a finding at the kind's level and returns it, so that help and places can be added; never NULL. For a repeated
 * one (same kind, same span) the first is returned with `times` raised, and help and places added to it are ignored. */
struct finding *diag_add(struct findings *findings, enum kind kind, struct span at, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
struct finding *diag_vadd(struct findings *findings, enum kind kind, struct span at, const char *format, va_list args);
/* For a rule of the trade: row and level are the rule's. Always a finding of its own: its caller folds. */
struct finding *diag_add_rule(struct findings *findings, const struct kind_row *row, enum level level, struct span at,
                              const char *format, ...) __attribute__((format(printf, 5, 6)));
void diag_level(struct findings *findings, struct finding *finding, enum level level);
void diag_help(struct findings *findings, struct finding *finding, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
void diag_related(struct findings *findings, struct finding *finding, struct span at, const char *format, ...)
    __attribute__((format(printf, 4, 5)));
/* For a repeat the first setting stays; another athlete joins the ones it is `for`. */
void diag_setting(struct findings *findings, struct finding *finding, struct setting setting);

int findings_count(const struct findings *findings, enum level level);
/* Whether an error was added behind the first `count` of findings_all. */
bool findings_erred_after(const struct findings *findings, int count);
int findings_total(const struct findings *findings);
int findings_said(const struct findings *findings); /* how often something was added, repeats counted */
bool findings_has_kind(const struct findings *findings, enum kind kind);

/* Those that are neither off nor allowed; sorted by file (in order of reading), place, order of adding. Valid until the next
 * diag_add or findings_sorted; findings_total says how many. */
const struct finding *const *findings_sorted(struct findings *findings);
/* Those that the coach allowed and that are not off, in the same order; valid until the next findings_allowed. */
const struct finding *const *findings_allowed(struct findings *findings, int *count);
/* All that were added, in order of adding, off and allowed ones too: for whoever silences. */
struct finding *const *findings_all(struct findings *findings, int *count);

struct diag_style {
    bool colour;
    bool brief; /* the first line alone */
    int most;   /* 0: all */
};

/* FILE:LINE:COLUMN: LEVEL: message [rule-name], the source line with the span marked by ^, `in` setting, `help:`, and the
 * related places in the same form. When more than style.most exist, a closing line gives the true total. Control
 * characters of files are written as \x1b and the like; tabs are copied into the marker line; wide characters take two
 * columns of marks. A finding without a place starts with `setwright: LEVEL: `. */
void findings_print(struct findings *findings, FILE *out, struct diag_style style);

/* A message of the program itself (wrong usage, a file that cannot be read): "setwright: message". */
void diag_say(FILE *err, const char *format, ...) __attribute__((format(printf, 2, 3)));

#endif
