/* The tables of commands and options. */
#include "cmd/command.h"

#include "base/diag.h"
#include "base/kinds.h"
#include "cmd/findings.h"

#include <stdlib.h>
#include <string.h>

/* ---- options ---- */

static bool take_athlete(struct request *request, const char *argument)
{
    vec_add(request->arena, &request->athletes, argument);
    return true;
}

static bool take_block(struct request *request, const char *argument)
{
    vec_add(request->arena, &request->blocks, argument);
    return true;
}

static bool take_flight(struct request *request, const char *argument)
{
    vec_add(request->arena, &request->flights, argument);
    return true;
}

static const char *digits(const char *text, int *number)
{
    for (*number = 0; *text >= '0' && *text <= '9' && *number < 10000; text++)
        *number = *number * 10 + (*text - '0');
    return text;
}

static bool take_week(struct request *request, const char *argument)
{
    const char *rest = digits(argument, &request->first_week);
    request->last_week = request->first_week;
    if (*rest == '-')
        rest = digits(rest + 1, &request->last_week);
    if (!*rest && request->first_week >= 1 && request->last_week >= request->first_week)
        return true;
    diag_say(stderr, "--week takes a week or a range of weeks, such as 3 or 2-4, not %s", argument);
    return false;
}

#define TAKE_TEXT(field) \
    static bool take_##field(struct request *request, const char *argument) \
    { \
        request->field = argument; \
        return true; \
    }
TAKE_TEXT(from)
TAKE_TEXT(to)
TAKE_TEXT(format)
TAKE_TEXT(out)
TAKE_TEXT(day)
TAKE_TEXT(lift)
TAKE_TEXT(sheet)
TAKE_TEXT(starts)
TAKE_TEXT(accept)
TAKE_TEXT(write_accept)
#undef TAKE_TEXT

static bool take_strict(struct request *request, const char *argument)
{
    (void)argument;
    request->fail_on = SETWRIGHT_WARNING;
    return true;
}

static bool take_fail_on(struct request *request, const char *argument)
{
    for (int level = SETWRIGHT_ERROR; level <= SETWRIGHT_ADVICE; level++)
        if (!strcmp(argument, level_name((enum level)level))) {
            request->fail_on = (enum setwright_level)level;
            return true;
        }
    diag_say(stderr, "--fail-on takes error, warning or advice, not %s", argument);
    return false;
}

static bool take_findings(struct request *request, const char *argument)
{
    const char *near = findings_form_near(argument);
    request->form = findings_form_find(argument);
    if (!request->form)
        diag_say(stderr, near ? "--findings takes text, short, json, sarif or github, not %s; did you mean %s?" :
                                "--findings takes text, short, json, sarif or github, not %s%s", argument, near ? near : "");
    return request->form;
}

static bool take_per(struct request *request, const char *argument)
{
    request->per_week = !strcmp(argument, "week");
    if (request->per_week || !strcmp(argument, "block"))
        return true;
    diag_say(stderr, "--per takes block (the default) or week, not %s", argument);
    return false;
}

static bool take_part(struct request *request, const char *argument)
{
    const char *rest = digits(argument, &request->part);
    if (*rest == '/')
        rest = digits(rest + 1, &request->parts);
    if (!*rest && request->part >= 1 && request->parts >= request->part)
        return true;
    diag_say(stderr, "--part takes which part of how many, such as 2/4, not %s", argument);
    return false;
}

static bool take_threads(struct request *request, const char *argument)
{
    const char *rest = digits(argument, &request->threads);
    if (rest > argument && !*rest && request->threads >= 1 && request->threads <= THREADS_MOST)
        return true;
    diag_say(stderr, "--threads takes a number from 1 to %d, not %s", THREADS_MOST, argument);
    return false;
}

static bool take_crlf(struct request *request, const char *argument)
{
    (void)argument;
    return request->crlf = true;
}

const struct option_row option_athlete = { "athlete", 'a', "NAME", "only this athlete, or the athletes of this group; may be repeated", take_athlete },
                        option_block = { "block", 'b', "NAME", "only this block; may be repeated", take_block },
                        option_week = { "week", 'w', "N[-M]", "only these weeks of each block", take_week },
                        option_from = { "from", 0, "DATE", "only days on or after this date (2027-01-04)", take_from },
                        option_to = { "to", 0, "DATE", "only days up to this date", take_to },
                        option_format = { "format", 'f', "FORMAT", "text (for athletes, the default), csv or yaml", take_format },
                        option_out = { "output", 'o', "PATH", "write a file, whole or not at all; a folder gets a file per athlete and block", take_out },
                        option_per = { "per", 0, "WORD", "in a folder, a file per block (the default) or per week", take_per },
                        option_sheet = { "sheet", 's', "SHEET", "athlete (the default), group, coach or meet", take_sheet },
                        option_flight = { "flight", 0, "TIME", "meet sheet: when a lift's flight starts (9:30); repeated in the order of the lifts", take_flight },
                        option_crlf = { "crlf", 0, NULL, "csv lines end in CR LF, for programs that need it", take_crlf },
                        option_strict = { "strict", 0, NULL, "a warning counts as an error: --fail-on warning", take_strict },
                        option_fail_on = { "fail-on", 0, "LEVEL", "exit with 1 from this level on: error (the default), warning, advice", take_fail_on },
                        option_findings = { "findings", 0, "FORM", "text (the default) or short, to standard error; json (a line each), sarif or github, to standard output", take_findings },
                        option_accept = { "accept", 0, "FILE", "be silent about the known findings that this file counts", take_accept },
                        option_write_accept = { "write-accept", 0, "FILE", "write that file; one that is there only shrinks", take_write_accept },
                        option_day = { "day", 'd', "LABEL", "only this day", take_day },
                        option_lift = { "lift", 'l', "NAME", "this lift", take_lift },
                        option_part = { "part", 0, "K/N", "only the K-th of N shares of the athletes; all of them together are the whole, byte for byte", take_part },
                        option_threads = { "threads", 0, "N", "work on N athletes at a time (1 unless said); same bytes, same order", take_threads },
                        option_starts = { "starts", 0, "DATE", "the Monday on which the first block starts; else the next one", take_starts };

static const struct option_row *const check_options[] = { &option_findings, &option_strict, &option_fail_on, &option_accept,
                                                          &option_write_accept, NULL };
static const struct option_row *const build_options[] = { &option_athlete, &option_block, &option_week, &option_from, &option_to,
                                                          &option_format, &option_sheet, &option_flight, &option_out, &option_per, &option_part, &option_threads, &option_crlf, &option_findings, &option_strict,
                                                          &option_fail_on, &option_accept, NULL };
static const struct option_row *const why_options[] = { &option_athlete, &option_block, &option_week, &option_day, &option_lift, NULL };
static const struct option_row *const calendar_options[] = { &option_athlete, &option_block, &option_from, &option_to, NULL };
static const struct option_row *const collect_options[] = { &option_out, &option_findings, NULL };
static const struct option_row *const diary_options[] = { &option_athlete, &option_block, &option_week, &option_from, &option_to, &option_out, NULL };
static const struct option_row review_format = { "format", 'f', "FORMAT", "text (the default) or csv", take_format },
                               review_out = { "output", 'o', "FILE", "write this file, whole or not at all", take_out };
static const struct option_row *const review_options[] = { &option_athlete, &option_block, &option_week, &option_from, &option_to, &review_format,
                                                           &review_out, NULL };
static const struct option_row *const new_options[] = { &option_starts, NULL };
static const struct option_row *const no_options[] = { NULL };

/* ---- commands ---- */

const struct command commands[] = {
    { "check", "[OPTION]… FILE…", "read the files and say what is wrong in them",
      "  setwright check club/\n"
      "  setwright check --strict winter.block athletes.block\n"
      "  setwright check --findings sarif club/ > findings.sarif\n"
      "  setwright check --write-accept club.accepted club/\n"
      "  setwright check --accept club.accepted --fail-on advice club/\n",
      check_options, cmd_check },
    { "build", "[OPTION]… FILE…", "turn the files into sheets, week by week, for each athlete",
      "  setwright build club/ | less\n"
      "  setwright build --athlete ines --week 3 club/\n"
      "  setwright build --format csv -o plan.csv club/\n"
      "  setwright build -o sheets/ club/\n"
      "  setwright build --per week -o sheets/ club/\n",
      build_options, cmd_build },
    { "why", "--athlete NAME --week N --lift NAME [--day LABEL] FILE…", "show where each number of a lift comes from",
      "  setwright why --athlete ines --week 2 --day A --lift squat club/\n",
      why_options, cmd_why },
    { "calendar", "[OPTION]… FILE…", "show each athlete's weeks across blocks and seasons, a line a week",
      "  setwright calendar club/\n"
      "  setwright calendar --athlete ines --from 2027-01-04 club/\n",
      calendar_options, cmd_calendar },
    { "collect", "[-o FILE] FILE.block… SHEET.csv…", "turn csv sheets in which was filled in what was done into a diary",
      "  setwright collect club/ ines.csv\n"
      "  setwright collect -o diary.block club/ week-3.csv\n",
      collect_options, cmd_collect },
    { "diary", "[OPTION]… FILE…", "write a diary to fill in: each session as it was planned",
      "  setwright diary --week 3 -o diary.block club/\n"
      "  setwright diary --athlete ines --from 2027-01-04 --to 2027-01-10 club/\n",
      diary_options, cmd_diary },
    { "review", "[OPTION]… FILE…", "look back at what the diaries say was done, beside what was planned",
      "  setwright review --athlete ines club/ | less\n"
      "  setwright review --from 2027-01-04 --to 2027-01-31 club/\n"
      "  setwright review --format csv -o review.csv club/\n",
      review_options, cmd_review },
    { "explain", "[FINDING]", "tell what a finding means and how to mend it; without a name, list them",
      "  setwright explain missing-max\n",
      no_options, cmd_explain },
    { "templates", "[NAME]", "list the library that comes with setwright, or print one of its files",
      "  setwright templates\n"
      "  setwright templates strength > strength.block\n",
      no_options, cmd_templates },
    { "new", "[--starts DATE] FOLDER [TEMPLATE]", "start a coach's folder: a gym, two athletes and one block from a template",
      "  setwright new club\n"
      "  setwright new --starts 2027-01-04 club strength\n",
      new_options, cmd_new },
};
const int command_count = sizeof commands / sizeof *commands;
