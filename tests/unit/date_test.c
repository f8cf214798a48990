#include "base/date.h"

#include "pool.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static struct date day_of(const char *text)
{
    struct date date = { 0 };
    assert_true(date_parse(text, strlen(text), &date));
    return date;
}

/* Day number, date, weekday, the Monday of its ISO week as Python's datetime says them: 400 years of Mondays with the
 * days around them, and every 97th day from 0001-01-01 to 9999-12-31. */
static const char python[] =
    "python3 -c \"\n"
    "from datetime import date\n"
    "a, b = date(1900, 1, 1).toordinal(), date(2300, 1, 1).toordinal()\n"
    "days = sorted({d + i for d in range(a, b, 7) for i in (-1, 0, 1)} | set(range(1, 3652060, 97)) | {3652059})\n"
    "for d in days:\n"
    "    year, week, weekday = date.fromordinal(d).isocalendar()\n"
    "    print(d, date.fromordinal(d), weekday, date.fromisocalendar(year, week, 1).toordinal())\n"
    "\"";

static void days_are_those_of_python(void **state)
{
    (void)state;
    if (system("command -v python3 >/dev/null 2>&1") != 0)
        skip();
    FILE *days = popen(python, "r");
    assert_non_null(days);
    int number, weekday, monday, count = 0;
    char text[16], written[11];
    while (fscanf(days, "%d %10s %d %d", &number, text, &weekday, &monday) == 4) {
        struct date date = day_of(text);
        assert_int_equal(date.day, number);
        assert_int_equal(date_write(written, date), 10);
        assert_string_equal(written, text);
        assert_int_equal(date_weekday(date), weekday);
        assert_int_equal(date_monday(date).day, monday);
        count++;
    }
    assert_int_equal(pclose(days), 0);
    assert_true(count > 60000);
}

static void every_day_comes_back(void **state)
{
    (void)state;
    int year, month, day;
    for (int32_t number = 1; number <= 3652059; number++) {
        struct date made = { 0 };
        date_parts((struct date){ number }, &year, &month, &day);
        if (!date_make(year, month, day, &made) || made.day != number)
            fail_msg("day %d came back as %d", number, made.day);
    }
}

static void only_days_of_the_calendar_are_dates(void **state)
{
    (void)state;
    /* ISO 8601: leap years are divisible by 4, of the centuries those by 400 */
    static const char *const wrong[] = { "2027-02-29", "1900-02-29", "2100-02-29", "2027-04-31",  "2027-00-10",
                                         "2027-13-01", "2027-01-00", "2027-01-32", "0000-01-01",  "2027-1-04",
                                         "2027-01-4",  "2027/01/04", "04-01-2027", "2027-01-041", "+027-01-04",
                                         "2027-01-0x", "",           "2027-01--4", " 2027-1-04" };
    struct date date;
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++)
        assert_false(date_parse(wrong[i], strlen(wrong[i]), &date));
    assert_int_equal(date_weekday(day_of("2000-02-29")), TUE);
    assert_int_equal(day_of("0001-01-01").day, 1);
    assert_int_equal(day_of("9999-12-31").day, 3652059);
}

static void days_add_up(void **state)
{
    struct arena *arena = *state;
    struct date monday = day_of("2027-01-04");
    assert_string_equal(date_text(arena, date_plus(monday, 7 * 4)), "2027-02-01");
    assert_string_equal(date_text(arena, date_plus(monday, -4)), "2026-12-31");
    assert_false(date_is_set(date_plus(day_of("9999-12-31"), 1)));
    assert_false(date_is_set(date_plus(day_of("0001-01-01"), -1)));
    assert_false(date_is_set(date_plus(monday, INT32_MAX)));
    assert_false(date_is_set(date_plus(monday, INT32_MIN)));
    assert_false(date_is_set(date_plus((struct date){ 0 }, 5)));
    assert_string_equal(date_text(arena, (struct date){ 0 }), "0000-00-00");
    assert_int_equal(date_weekday((struct date){ 0 }), 0);
    assert_int_equal(date_plus(day_of("9999-12-30"), 1).day, 3652059);
}

/* cal 1 2027: 4 January is a Monday */
static void the_first_weekday_from_a_day_on(void **state)
{
    struct arena *arena = *state;
    struct date monday = day_of("2027-01-04");
    assert_string_equal(date_text(arena, date_on_or_after(monday, MON)), "2027-01-04");
    assert_string_equal(date_text(arena, date_on_or_after(monday, THU)), "2027-01-07");
    assert_string_equal(date_text(arena, date_on_or_after(day_of("2027-01-05"), MON)), "2027-01-11");
    assert_false(date_is_set(date_on_or_after(day_of("9999-12-31"), MON))); /* a Friday */
    assert_int_equal(date_on_or_after(day_of("9999-12-31"), FRI).day, 3652059);
}

static void days_and_months_have_names(void **state)
{
    (void)state;
    assert_int_equal(weekday_find("mon"), MON);
    assert_int_equal(weekday_find("sun"), SUN);
    assert_int_equal(weekday_find("Mon"), 0);
    assert_int_equal(weekday_find(""), 0);
    for (int i = MON; i <= SUN; i++)
        assert_int_equal(weekday_find(weekday_name((enum weekday)i)), i);
    assert_string_equal(weekday_title(WED), "Wednesday");
    assert_string_equal(month_title(1), "January");
    assert_string_equal(month_title(9), "September");
    assert_string_equal(month_title(12), "December");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(days_are_those_of_python),
        cmocka_unit_test(every_day_comes_back),
        cmocka_unit_test(only_days_of_the_calendar_are_dates),
        cmocka_unit_test(days_add_up),
        cmocka_unit_test(the_first_weekday_from_a_day_on),
        cmocka_unit_test(days_and_months_have_names),
    };
    return cmocka_run_group_tests(tests, pool_setup, pool_teardown);
}
