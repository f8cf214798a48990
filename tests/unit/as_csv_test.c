/* The expected table has been read cell by cell against section 7 of the design. */

#include <stdlib.h>

#include "pool.h"
#include "sample_plan.h"

/* clang-format off */
static const char expected[] =
    "athlete,block,week,date,day,seq,lift,role,sets,reps_low,reps_high,rpe,percent,load,unit,per_side,rest_s,tempo,note,done_load,done_reps,done_rpe\n"
    "ines,winter-base,1,2027-01-11,A,1,squat,warm-up,1,5,5,,,20,kg,,,,,,,\n"
    "ines,winter-base,1,2027-01-11,A,2,squat,warm-up,1,3,3,,,60,kg,20,,,,,,\n"
    "ines,winter-base,1,2027-01-11,A,3,squat,top,1,1,1,8,89.6,107.5,kg,25+15+2.5+1.25,240,,,,,\n"
    "ines,winter-base,1,2027-01-11,A,4,squat,back-off,4,5,5,6.5,77.1,92.5,kg,25+10+1.25,180,31X0,\"Same bar path as on the top set, \"\"every\"\" rep\",,,\n"
    "ines,winter-base,1,2027-01-11,A,5,bench,work,1,5,5,<1,,40,kg,,,,,,,\n"
    "ines,winter-base,1,2027-01-11,A,6,bench,work,1,5,5,7.5,,50,kg,,,,,,,\n"
    "ines,winter-base,1,2027-01-11,A,7,row,work,3,8,12,6-7,,22.5,kg,,120-180,,\"'=1+1; elbow\n"
    "in; lighter\\x1b[31m than last week\",,,\n"
    "ines,winter-base,1,2027-01-11,A,8,curl,work,2,10,15,8,,,,,,,,,,\n"
    "ines,winter-base,1,2027-01-11,A,9,pulldown,work,2,10,15,8,,,,,,,,,,\n"
    "ines,winter-base,1,,2,1,pull-up,top,1,5,,,,-30,lb,,,,,,,\n"
    "ines,winter-base,1,,2,2,pull-up,work,2,,,,,0,lb,,,,,,,\n"
    "ines,winter-base,1,,2,3,pull-up,back-off,2,5,5,,,,,,180,31X0,\"15 % below the top set; Same bar path as on the top set, \"\"every\"\" rep\",,,\n"
    "ines,winter-base,1,,2,4,plank,work,2,30 s,30 s,7,,,,,,,,,,\n"
    "ines,winter-base,1,,2,5,carry,work,2,20 m,20 m,,,50,lb,,,,,,,\n"
    "ines,winter-base,1,,2,6,deadlift,work,2,6,6,,,,,,,,,,,\n"
    "ines,winter-base,1,,2,7,deadlift,work,,30,30,,,95,lb,,,,,,,\n"
    "ines,winter-base,1,,2,8,deadlift,work,4,3,3,,,135,lb,,,,,,,\n";
/* clang-format on */

static void every_shape_of_set_is_a_row(void **state)
{
    struct caught caught = caught_new(*state, 1 << 16);
    struct format_options options = { 0 };
    assert_true(write_plan("csv", *state, &sample_plan(*state)->plan, &options, &caught, 1));
    assert_string_equal(caught.text, expected);
}

static void the_header_stands_once_and_always(void **state)
{
    struct caught caught = caught_new(*state, 1 << 16);
    struct format_options options = { 0 };
    assert_true(write_plan("csv", *state, &sample_plan(*state)->plan, &options, &caught, 0));
    assert_int_equal(caught.length, strchr(expected, '\n') + 1 - expected);
    assert_memory_equal(caught.text, expected, caught.length);
    struct caught twice = caught_new(*state, 1 << 16);
    assert_true(write_plan("csv", *state, &sample_plan(*state)->plan, &options, &twice, 2));
    assert_int_equal(twice.length, 2 * strlen(expected) - caught.length);
}

/* The break within a cell is the coach's own and stays as it is. */
static void crlf_ends_rows_when_asked(void **state)
{
    struct caught caught = caught_new(*state, 1 << 16);
    struct format_options options = { .crlf = true };
    assert_true(write_plan("csv", *state, &sample_plan(*state)->plan, &options, &caught, 1));
    int rows = 0, breaks = 0;
    for (size_t i = 0; i < caught.length; i++) {
        rows += caught.text[i] == '\r';
        breaks += caught.text[i] == '\n';
        assert_true(caught.text[i] != '\r' || caught.text[i + 1] == '\n');
    }
    assert_int_equal(rows, 18);
    assert_int_equal(breaks, 19);
}

static void weeks_and_dates_narrow_the_rows(void **state)
{
    struct sample *sample = sample_plan(*state);
    struct format_options second = { .narrow = { .first_week = 2, .last_week = 2 } };
    struct caught caught = caught_new(*state, 1 << 16);
    assert_true(write_plan("csv", *state, &sample->plan, &second, &caught, 1));
    assert_int_equal(caught.length, strchr(expected, '\n') + 1 - expected);
    sample->days[0].date = date_plus(sample->days[0].date, 1);
    struct format_options monday = { .narrow = { .to = sample->weeks[0].start } };
    struct caught undated = caught_new(*state, 1 << 16);
    assert_true(write_plan("csv", *state, &sample->plan, &monday, &undated, 1));
    assert_null(strstr(undated.text, "squat"));
    assert_non_null(strstr(undated.text, "\nines,winter-base,1,,2,1,pull-up,top,1,5,,,,-30,lb,,"));
}

static void a_failed_write_is_told(void **state)
{
    struct format_options options = { 0 };
    struct caught none = caught_new(*state, 100);
    assert_false(write_plan("csv", *state, &sample_plan(*state)->plan, &options, &none, 1));
    struct caught some = caught_new(*state, 100000);
    assert_false(write_plan("csv", *state, &sample_plan(*state)->plan, &options, &some, 200));
    assert_int_equal(some.writes, 1);
}

/* 200 blocks are 3400 rows, about 200 KB: a handful of writes, none of them small but the last. */
static void rows_go_out_in_large_pieces(void **state)
{
    struct format_options options = { 0 };
    struct caught caught = caught_new(*state, 1 << 20);
    assert_true(write_plan("csv", *state, &sample_plan(*state)->plan, &options, &caught, 200));
    assert_true(caught.length > 200000);
    assert_true(caught.writes <= (int)(caught.length / (1 << 16)) + 1);
}

#define TEST(function) cmocka_unit_test_setup_teardown(function, pool_setup, pool_teardown)

int main(void)
{
    const struct CMUnitTest tests[] = {
        TEST(every_shape_of_set_is_a_row), TEST(the_header_stands_once_and_always),
        TEST(crlf_ends_rows_when_asked),   TEST(weeks_and_dates_narrow_the_rows),
        TEST(a_failed_write_is_told),      TEST(rows_go_out_in_large_pieces),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
