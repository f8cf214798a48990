/* The command line: a row for each command, a row for each option; --help is printed from them. */
#ifndef CMD_COMMAND_H
#define CMD_COMMAND_H

#include "base/vec.h"
#include "setwright.h"

#include <stdio.h>

struct findings_form;
enum { THREADS_MOST = 64 };

/* The exit statuses of language.md, section 8; the library's statuses are the same numbers. */
enum { EXIT_ERRORS = SETWRIGHT_FINDINGS, EXIT_USAGE = SETWRIGHT_USAGE, EXIT_FILES = SETWRIGHT_FILES, EXIT_LIMIT = SETWRIGHT_LIMIT };

/* What the options of all commands come to. */
struct request {
    struct arena *arena;
    const char *const *words; /* files and names, options taken out */
    int word_count;
    VEC(const char *) athletes;
    VEC(const char *) blocks;
    VEC(const char *) flights;
    int first_week, last_week;
    const char *from, *to, *format, *out, *day, *lift, *sheet, *starts;
    bool crlf, per_week;
    int part, parts; /* 0: all athletes */
    int threads;     /* 0: not said, so one */
    enum setwright_level fail_on; /* this level and graver ones end in status 1 */
    const struct findings_form *form; /* NULL: text */
    const char *accept, *write_accept;
    const struct command *command;
};

struct option_row {
    const char *name; /* long */
    char letter;      /* 0: none */
    const char *argument; /* "NAME", or NULL */
    const char *says;
    bool (*take)(struct request *request, const char *argument); /* false: it has said what is wrong */
};

struct command {
    const char *name, *usage, *says;
    const char *examples; /* lines */
    const struct option_row *const *options; /* NULL-ended */
    int (*run)(struct request *request); /* the exit status */
};

extern const struct command commands[];
extern const int command_count;

extern const struct option_row option_athlete, option_block, option_week, option_from, option_to, option_format, option_out, option_per,
    option_crlf, option_sheet, option_flight, option_strict, option_fail_on, option_findings, option_accept, option_write_accept, option_day, option_lift, option_starts, option_part, option_threads;

/* Runs `setwright ARGV[1] …`; the exit status of language.md, section 8. */
int command_line(int argc, char **argv);
void command_help(const struct command *command, FILE *out); /* NULL: all commands */

int cmd_check(struct request *request);
int cmd_build(struct request *request);
int cmd_why(struct request *request);
int cmd_calendar(struct request *request);
int cmd_collect(struct request *request);
int cmd_diary(struct request *request);
int cmd_review(struct request *request);
int cmd_explain(struct request *request);
int cmd_templates(struct request *request);
int cmd_new(struct request *request);

#endif
