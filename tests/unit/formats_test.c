#include "emit/format.h"

#include <stdlib.h>
#include <string.h>

#include "pool.h"
#include "sample_plan.h"

/* Every row of the table is whole, found by its own name and by no other's. */
static void every_format_is_found_by_its_name(void **state)
{
    (void)state;
    assert_int_equal(format_count(), 3);
    for (int i = 0; i < format_count(); i++) {
        const struct format *format = format_at(i);
        assert_ptr_equal(format_find(format->name), format);
        assert_int_equal(format->ending[0], '.');
        assert_true(format->says && format->begin && format->athlete && format->plan && format->end);
    }
    assert_string_equal(format_find("text")->ending, ".txt");
    assert_null(format_find("CSV"));
    assert_null(format_find(""));
}

static void the_same_plan_gives_the_same_bytes(void **state)
{
    struct format_options options = { 0 };
    for (int i = 0; i < format_count(); i++) {
        struct caught first = caught_new(*state, 1 << 16), again = caught_new(*state, 1 << 16);
        const char *name = format_at(i)->name;
        assert_true(write_plan(name, *state, &sample_plan(*state)->plan, &options, &first, 2));
        assert_true(write_plan(name, *state, &sample_plan(*state)->plan, &options, &again, 2));
        assert_string_equal(first.text, again.text);
    }
}

static struct date day(int month, int number)
{
    struct date date = { 0 };
    date_make(2027, month, number, &date);
    return date;
}

static void weeks_are_narrowed_by_number(void **state)
{
    (void)state;
    struct plan_week week = { .number = 3 };
    static const struct {
        int first, last;
        bool in;
    } rows[] = { { 0, 0, true }, { 3, 3, true }, { 2, 4, true }, { 4, 0, false }, { 0, 2, false }, { 3, 0, true } };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct narrow narrow = { .first_week = rows[i].first, .last_week = rows[i].last };
        assert_int_equal(narrow_has_week(&narrow, &week), rows[i].in);
    }
}

/* Both dates belong; a day without a date goes by its week's first. */
static void days_are_narrowed_by_date(void **state)
{
    (void)state;
    struct plan_day days[] = { { .date = day(1, 13) }, { .date = { 0 } } };
    struct plan_week week = { .number = 1, .start = day(1, 11), .days = days, .day_count = 2 };
    static const struct {
        int from, to; /* of January; 0: no bound */
        bool week, dated, undated;
    } rows[] = {
        { 0, 0, true, true, true },      { 13, 13, true, true, false },  { 14, 0, false, false, false },
        { 0, 12, true, false, true },    { 0, 10, false, false, false }, { 11, 11, true, false, true },
        { 12, 12, false, false, false },
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct narrow narrow = { 0 };
        if (rows[i].from)
            narrow.from = day(1, rows[i].from);
        if (rows[i].to)
            narrow.to = day(1, rows[i].to);
        assert_int_equal(narrow_has_week(&narrow, &week), rows[i].week);
        assert_int_equal(narrow_has_day(&narrow, &week, &days[0]), rows[i].dated);
        assert_int_equal(narrow_has_day(&narrow, &week, &days[1]), rows[i].undated);
    }
    struct narrow second = { .first_week = 2 };
    assert_false(narrow_has_day(&second, &week, &days[0]));
    week.day_count = 0;
    struct narrow from = { .from = day(1, 12) };
    assert_false(narrow_has_week(&from, &week));
    from.from = day(1, 11);
    assert_true(narrow_has_week(&from, &week));
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(every_format_is_found_by_its_name),
        TEST(the_same_plan_gives_the_same_bytes),
        TEST(weeks_are_narrowed_by_number),
        TEST(days_are_narrowed_by_date),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
