#include "base/date.h"

#include <string.h>

enum { LAST_DAY = 3652059, DAYS_400 = 146097, DAYS_100 = 36524, DAYS_4 = 1461 };

static const int days_before[] = { 0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365 };

static bool is_leap(int year)
{
    return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

/* Days of the year before a month's first, month 1 to 13. */
static int month_start(int year, int month)
{
    return days_before[month - 1] + (month > 2 && is_leap(year));
}

bool date_make(int year, int month, int day, struct date *out)
{
    if (year < 1 || year > 9999 || month < 1 || month > 12)
        return false;
    if (day < 1 || day > month_start(year, month + 1) - month_start(year, month))
        return false;
    int past = year - 1;
    out->day = 365 * past + past / 4 - past / 100 + past / 400 + month_start(year, month) + day;
    return true;
}

/* Exactly `count` digits; -1 otherwise. */
static int digits_at(const char *text, int count)
{
    int value = 0;
    for (int i = 0; i < count; i++) {
        if (text[i] < '0' || text[i] > '9')
            return -1;
        value = value * 10 + (text[i] - '0');
    }
    return value;
}

bool date_parse(const char *text, size_t length, struct date *out)
{
    if (length != 10 || text[4] != '-' || text[7] != '-')
        return false;
    return date_make(digits_at(text, 4), digits_at(text + 5, 2), digits_at(text + 8, 2), out);
}

void date_parts(struct date date, int *year, int *month, int *day)
{
    if (!date_is_set(date)) {
        *year = *month = *day = 0;
        return;
    }
    int rest = date.day - 1;
    int cycles = rest / DAYS_400;
    rest %= DAYS_400;
    int centuries = rest / DAYS_100 < 3 ? rest / DAYS_100 : 3; /* the last day of a 400-year cycle is the 366th */
    rest -= centuries * DAYS_100;
    int fours = rest / DAYS_4;
    rest %= DAYS_4;
    int years = rest / 365 < 3 ? rest / 365 : 3;
    rest -= years * 365;
    *year = 400 * cycles + 100 * centuries + 4 * fours + years + 1;
    *month = 1;
    while (rest >= month_start(*year, *month + 1))
        ++*month;
    *day = rest - month_start(*year, *month) + 1;
}

enum weekday date_weekday(struct date date)
{
    return date_is_set(date) ? (enum weekday)((date.day - 1) % 7 + 1) : (enum weekday)0;
}

struct date date_plus(struct date date, int days)
{
    int64_t day = (int64_t)date.day + days;
    if (!date_is_set(date) || day < 1 || day > LAST_DAY)
        return (struct date){ 0 };
    return (struct date){ (int32_t)day };
}

struct date date_monday(struct date date)
{
    return date_plus(date, MON - (int)date_weekday(date));
}

struct date date_on_or_after(struct date date, enum weekday weekday)
{
    return date_plus(date, ((int)weekday - (int)date_weekday(date) + 7) % 7);
}

static void digits_write(char *to, int count, int value)
{
    for (int i = count - 1; i >= 0; i--, value /= 10)
        to[i] = (char)('0' + value % 10);
}

int date_write(char to[11], struct date date)
{
    int year, month, day;
    date_parts(date, &year, &month, &day);
    memcpy(to, "0000-00-00", 11);
    digits_write(to, 4, year);
    digits_write(to + 5, 2, month);
    digits_write(to + 8, 2, day);
    return 10;
}

const char *date_text(struct arena *arena, struct date date)
{
    char text[11];
    return arena_copy(arena, text, (size_t)date_write(text, date));
}

static const struct {
    const char *name, *title;
} weekdays[] = {
    { "", "" },          { "mon", "Monday" },   { "tue", "Tuesday" }, { "wed", "Wednesday" }, { "thu", "Thursday" },
    { "fri", "Friday" }, { "sat", "Saturday" }, { "sun", "Sunday" },
};

static const char *const months[] = { "",     "January", "February",  "March",   "April",    "May",     "June",
                                      "July", "August",  "September", "October", "November", "December" };

enum weekday weekday_find(const char *name)
{
    for (int i = MON; i <= SUN; i++)
        if (strcmp(weekdays[i].name, name) == 0)
            return (enum weekday)i;
    return (enum weekday)0;
}

const char *weekday_name(enum weekday weekday)
{
    return weekdays[weekday].name;
}

const char *weekday_title(enum weekday weekday)
{
    return weekdays[weekday].title;
}

const char *month_title(int month)
{
    return months[month];
}
