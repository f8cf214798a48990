/* Days of the proleptic Gregorian calendar as one number, 1 = 0001-01-01 (a Monday), and weekdays (ISO 8601). */
#ifndef BASE_DATE_H
#define BASE_DATE_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

struct date {
    int32_t day; /* 1 .. 3652059 (9999-12-31); 0: none */
};

enum weekday { MON = 1, TUE, WED, THU, FRI, SAT, SUN };

static inline bool date_is_set(struct date date)
{
    return date.day != 0;
}
bool date_make(int year, int month, int day, struct date *out); /* false when no such day exists */
bool date_parse(const char *text, size_t length, struct date *out); /* exactly YYYY-MM-DD */
void date_parts(struct date date, int *year, int *month, int *day);
enum weekday date_weekday(struct date date);
struct date date_plus(struct date date, int days); /* none when it leaves the calendar, or from none */
struct date date_monday(struct date date); /* of its week (ISO 8601) */
struct date date_on_or_after(struct date date, enum weekday weekday); /* the first such weekday */
int date_write(char to[11], struct date date); /* "2027-01-04"; returns 10 */
const char *date_text(struct arena *arena, struct date date);

/* "mon" .. "sun"; 0 when it is none. */
enum weekday weekday_find(const char *name);
const char *weekday_name(enum weekday weekday);   /* "mon" */
const char *weekday_title(enum weekday weekday);  /* "Monday" */
const char *month_title(int month);               /* "January" */

#endif
