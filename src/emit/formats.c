#include "emit/formats.h"

#include <string.h>

static const struct format formats[] = {
    { .name = "text",
      .ending = ".txt",
      .says = "training sheets to print, a page for each athlete and week",
      .begin = text_begin,
      .athlete = text_athlete,
      .plan = text_plan,
      .knows = text_knows,
      .again = text_again,
      .pause = text_pause,
      .end = text_end },
    { .name = "csv",
      .ending = ".csv",
      .says = "a table for a spreadsheet, a row for each run of like sets",
      .bare = true,
      .begin = csv_begin,
      .athlete = csv_athlete,
      .plan = csv_plan,
      .knows = csv_knows,
      .again = csv_again,
      .pause = csv_pause,
      .end = csv_end },
    { .name = "yaml",
      .ending = ".yaml",
      .says = "everything, with each week's totals, for other programs",
      .begin = yaml_begin,
      .athlete = yaml_athlete,
      .plan = yaml_plan,
      .pause = yaml_pause,
      .end = yaml_end },
};

int format_count(void)
{
    return (int)(sizeof formats / sizeof formats[0]);
}

const struct format *format_at(int index)
{
    return &formats[index];
}

const struct format *format_find(const char *name)
{
    for (int i = 0; i < format_count(); i++)
        if (strcmp(formats[i].name, name) == 0)
            return &formats[i];
    return NULL;
}

static bool narrow_has_date(const struct narrow *narrow, struct date date)
{
    if (date_is_set(narrow->from) && date.day < narrow->from.day)
        return false;
    return !date_is_set(narrow->to) || date.day <= narrow->to.day;
}

static bool narrow_has_number(const struct narrow *narrow, int week)
{
    return week >= narrow->first_week && (narrow->last_week == 0 || week <= narrow->last_week);
}

bool narrow_has_day(const struct narrow *narrow, const struct plan_week *week, const struct plan_day *day)
{
    return narrow_has_number(narrow, week->number) &&
           narrow_has_date(narrow, date_is_set(day->date) ? day->date : week->start);
}

bool narrow_has_week(const struct narrow *narrow, const struct plan_week *week)
{
    if (week->day_count == 0)
        return narrow_has_number(narrow, week->number) && narrow_has_date(narrow, week->start);
    for (int i = 0; i < week->day_count; i++)
        if (narrow_has_day(narrow, week, &week->days[i]))
            return true;
    return false;
}
