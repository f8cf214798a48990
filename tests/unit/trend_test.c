/* The running max. The series in tests/cases/trend/ were filtered by statsmodels, and tests/trend.py finds the same by
 * least squares at 50 digits; limits beside the edge tests were worked out with bc -l. */
#include "pool.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/csv.h"
#include "base/file.h"
#include "calc/trend.h"

enum { DAY = 739000 };
#define CLOSE 1e-9
#define GRAM (DEC_ONE / 1000)

/* ---- series filtered by another program ---- */

enum cell { CELL_DAY, CELL_SOURCE, CELL_KG, CELL_N, CELL_BORROWED, CELL_MAX, CELL_VARIANCE, CELL_COUNT };

static struct dec number(const struct csv_row *row, enum cell at)
{
    struct dec value;
    assert_true(dec_parse(row->cells[at].text, row->cells[at].length, &value));
    return value;
}

static struct trend_observation observation_of(const struct csv_row *row)
{
    static const char *const names[] = { [TREND_TESTED] = "tested", [TREND_SET] = "set", [TREND_SPEED] = "speed" };
    int source = 0;
    while (strcmp(names[source], row->cells[CELL_SOURCE].text) != 0)
        assert_in_range(++source, 0, TREND_SPEED);
    return (struct trend_observation){ .day = (int32_t)dec_floor(number(row, CELL_DAY)),
                                       .dated = true,
                                       .source = (enum trend_source)source,
                                       .max = ratio_int(number(row, CELL_KG).e10),
                                       .n = ratio_dec(number(row, CELL_N)),
                                       .borrowed = number(row, CELL_BORROWED).e10 != 0 };
}

static void assert_close(double found, double expected)
{
    if (!(fabs(found / expected - 1) < CLOSE))
        fail_msg("%.12g instead of %.12g", found, expected);
}

struct progress {
    struct trend trend;
    int observed;
};

static bool row_is_as_filtered(void *context, const struct csv_row *row)
{
    struct progress *progress = context;
    if (row->cells[0].text[0] == '#' || strcmp(row->cells[0].text, "day") == 0)
        return true;
    assert_int_equal(row->count, CELL_COUNT);
    struct trend_observation seen = observation_of(row);
    trend_observe(&progress->trend, &seen);
    assert_close(exp(progress->trend.level), (double)number(row, CELL_MAX).e10);
    assert_close(progress->trend.variance, (double)number(row, CELL_VARIANCE).e10 / (1e6 * (double)DEC_ONE));
    progress->observed++;
    return true;
}

static void series_are_as_statsmodels_filters_them(void **state)
{
    const char *top = getenv("SETWRIGHT_SRC"), *why;
    char folder[4096], path[8192];
    snprintf(folder, sizeof folder, "%s/tests/cases/trend", top ? top : ".");
    int count = 0;
    const char *const *names = file_list(*state, folder, ".csv", &count, &why);
    assert_non_null(names);
    assert_true(count >= 4);
    for (int i = 0; i < count; i++) {
        size_t length, at;
        struct progress progress = { .observed = 0 };
        snprintf(path, sizeof path, "%s/%s", folder, names[i]);
        char *text = file_read(*state, path, 1 << 20, false, &length, &why);
        assert_non_null(text);
        struct csv_taker taker = { .row = row_is_as_filtered, .context = &progress };
        assert_true(csv_read(*state, text, length, &taker, &why, &at));
        assert_true(progress.observed > 2);
    }
}

/* ---- by hand ---- */

static struct trend_observation tested(int32_t day, int64_t grams)
{
    return (
        struct trend_observation){ .day = day, .dated = true, .source = TREND_TESTED, .max = ratio_int(grams * GRAM) };
}

static struct trend_observation by_speed(int32_t day, int64_t grams)
{
    struct trend_observation seen = tested(day, grams);
    seen.source = TREND_SPEED;
    return seen;
}

static struct trend_observation by_set(int32_t day, int64_t grams, int n)
{
    struct trend_observation seen = tested(day, grams);
    seen.source = TREND_SET;
    seen.n = ratio_int(n);
    return seen;
}

static struct trend_observation undated(struct trend_observation seen)
{
    seen.dated = false;
    return seen;
}

static struct trend_observation borrowed(struct trend_observation seen)
{
    seen.borrowed = true;
    return seen;
}

static struct trend trend_from(struct trend_observation seen)
{
    struct trend trend = { .started = false };
    trend_observe(&trend, &seen);
    return trend;
}

static void observe(struct trend *trend, struct trend_observation seen)
{
    trend_observe(trend, &seen);
}

static void assert_tenths(struct weight weight, int64_t tenths)
{
    assert_int_equal(weight.e10, tenths * (DEC_ONE / 10));
}

static void assumptions_are_those_of_the_design(void **state)
{
    (void)state;
    static const struct {
        const char *name;
        int64_t tenths; /* of a per cent */
    } expected[] = { { "tested max", 5 },
                     { "a set, besides", 15 },
                     { "speed", 50 },
                     { "borrowed, besides", 40 },
                     { "a day passing", 5 } };
    assert_int_equal(trend_row_count(), sizeof expected / sizeof *expected);
    for (int i = 0; i < trend_row_count(); i++) {
        const struct trend_row *row = trend_row_at(i);
        assert_string_equal(row->name, expected[i].name);
        assert_int_equal(row->percent.e10, expected[i].tenths * (DEC_ONE / 10));
        assert_non_null(row->per);
        assert_true(strlen(row->evidence) > 20);
    }
}

static void nothing_is_known_before_the_first(void **state)
{
    (void)state;
    struct trend trend = { .started = false };
    struct trend_observation seen = tested(DAY, 1000);
    assert_tenths(trend_max(&trend), 0);
    assert_tenths(trend_error(&trend, DAY), 0);
    assert_false(trend_is_far(&trend, &seen));
}

static void the_first_is_the_max(void **state)
{
    (void)state;
    struct trend trend = trend_from(tested(DAY, 102058)); /* 225 lb to the gram */
    assert_tenths(trend_max(&trend), 1021);
    trend = trend_from(tested(DAY, 102040));
    assert_tenths(trend_max(&trend), 1020);
    trend = trend_from(tested(DAY, 20));
    assert_tenths(trend_max(&trend), 1);
}

/* On one day the mean weighted by 1 / variance: with alike variances the geometric mean and half the variance. */
static void two_on_one_day_count_alike(void **state)
{
    (void)state;
    struct trend trend = trend_from(tested(DAY, 100000));
    observe(&trend, tested(DAY, 104000));
    assert_tenths(trend_max(&trend), 1020); /* sqrt(10400) = 101.98 */
    assert_close(trend.variance, 0.0000125);
}

static void an_undated_start_passes_no_days(void **state)
{
    (void)state;
    struct trend trend = trend_from(undated(tested(DAY, 100000)));
    assert_false(trend.dated);
    assert_tenths(trend_error(&trend, DAY), 5);
    observe(&trend, tested(DAY, 100000));
    assert_close(trend.variance, 0.0000125);
    observe(&trend, undated(tested(DAY + 40, 100000)));
    assert_close(trend.variance, 0.000025 / 3);
    assert_int_equal(trend.day, DAY);
    observe(&trend, tested(DAY + 3, 100000)); /* P = 25/3 + 75 = 250/3, R = 25: P R / (P + R) = 250/13 millionths */
    assert_close(trend.variance, 0.00025 / 13);
}

static void an_earlier_date_passes_no_days_and_turns_nothing_back(void **state)
{
    (void)state;
    struct trend trend = trend_from(tested(DAY, 100000));
    observe(&trend, tested(DAY - 30, 100000));
    assert_close(trend.variance, 0.0000125);
    assert_int_equal(trend.day, DAY);
}

/* (25 + 25 d) millionths: 0.5 % at once, 1 % after 3 days, 1.5 % after 8, 3 % after 35. */
static void the_error_grows_with_days(void **state)
{
    (void)state;
    struct trend trend = trend_from(tested(DAY, 100000));
    assert_tenths(trend_error(&trend, DAY - 50), 5);
    assert_tenths(trend_error(&trend, DAY), 5);
    assert_tenths(trend_error(&trend, DAY + 3), 10);
    assert_tenths(trend_error(&trend, DAY + 8), 15);
    assert_tenths(trend_error(&trend, DAY + 35), 30);
    trend = trend_from(tested(DAY, 4000));
    assert_tenths(trend_error(&trend, DAY), 1);
}

static void the_largest_weight_overflows_nothing(void **state)
{
    (void)state;
    struct trend trend = trend_from(tested(1, INT64_C(899999999) * 1000));
    assert_in_range(trend_max(&trend).e10, INT64_C(899999000) * DEC_ONE, INT64_C(900000000) * DEC_ONE);
    assert_int_equal(trend_error(&trend, 3652059).e10, INT64_C(900000000) * DEC_ONE);
}

/* ---- far, and agreeing ---- */

static bool is_far(struct trend trend, struct trend_observation seen)
{
    return trend_is_far(&trend, &seen);
}

static void fifteen_per_cent_is_not_far(void **state)
{
    (void)state;
    struct trend trend = trend_from(tested(DAY, 100000));
    assert_false(is_far(trend, tested(DAY, 115000)));
    assert_true(is_far(trend, tested(DAY, 115001)));
    assert_false(is_far(trend, tested(DAY, 85000)));
    assert_true(is_far(trend, tested(DAY, 84999)));
    trend = trend_from(tested(DAY, 100040)); /* shown as 100.0 kg, and measured from there */
    assert_true(is_far(trend, tested(DAY, 115001)));
}

/* e^(3 sqrt(variance)), the variance in millionths: that of the max, the days, and the observation. */
static void three_standard_errors_are_not_far(void **state)
{
    (void)state;
    struct trend trend = trend_from(tested(DAY, 100000));
    assert_false(is_far(trend, by_speed(DAY, 116200))); /* 25 + 2500: 1.16270 */
    assert_true(is_far(trend, by_speed(DAY, 116300)));
    assert_false(is_far(trend, by_speed(DAY + 100, 123600))); /* 25 + 2500 + 2500: 1.23697 */
    assert_true(is_far(trend, by_speed(DAY + 100, 123700)));
    assert_false(is_far(trend, by_set(DAY, 122400, 21))); /* 25 + 25 + 20 x 225: 1.22429 */
    assert_true(is_far(trend, by_set(DAY, 122500, 21)));
    assert_false(is_far(trend, borrowed(by_speed(DAY, 121200)))); /* 25 + 2500 + 1600: 1.21249 */
    assert_true(is_far(trend, borrowed(by_speed(DAY, 121300))));
    assert_true(is_far(trend, undated(by_speed(DAY, 116300))));
}

static bool agrees(struct trend_observation first, struct trend_observation second)
{
    return trend_agrees(&first, &second);
}

static void a_second_within_eight_weeks_may_agree(void **state)
{
    (void)state;
    assert_true(agrees(tested(DAY, 100000), tested(DAY + 56, 100000)));
    assert_false(agrees(tested(DAY, 100000), tested(DAY + 57, 100000)));
    assert_true(agrees(tested(DAY + 56, 100000), tested(DAY, 100000)));
    assert_false(agrees(tested(DAY + 57, 100000), tested(DAY, 100000)));
    assert_false(agrees(undated(tested(DAY, 100000)), tested(DAY, 100000)));
    assert_false(agrees(tested(1, 100000), undated(tested(1, 100000))));
}

static void a_second_agrees_when_it_is_not_far(void **state)
{
    (void)state;
    assert_true(agrees(tested(DAY, 100000), tested(DAY, 115000)));
    assert_false(agrees(tested(DAY, 100000), tested(DAY, 115001)));
    assert_true(agrees(by_speed(DAY, 100000), by_speed(DAY, 123600))); /* 2500 + 2500: 1.23631 */
    assert_false(agrees(by_speed(DAY, 100000), by_speed(DAY, 123700)));
    assert_true(agrees(by_speed(DAY, 100000), by_speed(DAY + 56, 127100))); /* 56 x 25 besides: 1.27125 */
    assert_false(agrees(by_speed(DAY, 100000), by_speed(DAY + 56, 127200)));
    assert_false(agrees(by_set(DAY, 100000, 1), by_set(DAY, 120000, 9))); /* 25 + 25 + 1800: 1.13774 */
    assert_true(agrees(by_set(DAY, 100000, 9), by_set(DAY, 119800, 9)));  /* 1825 + 1825: 1.19871 */
    assert_false(agrees(by_set(DAY, 100000, 9), by_set(DAY, 119900, 9)));
}

int main(void)
{
    static const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(series_are_as_statsmodels_filters_them, pool_setup, pool_teardown),
        cmocka_unit_test(assumptions_are_those_of_the_design),
        cmocka_unit_test(nothing_is_known_before_the_first),
        cmocka_unit_test(the_first_is_the_max),
        cmocka_unit_test(two_on_one_day_count_alike),
        cmocka_unit_test(an_undated_start_passes_no_days),
        cmocka_unit_test(an_earlier_date_passes_no_days_and_turns_nothing_back),
        cmocka_unit_test(the_error_grows_with_days),
        cmocka_unit_test(the_largest_weight_overflows_nothing),
        cmocka_unit_test(fifteen_per_cent_is_not_far),
        cmocka_unit_test(three_standard_errors_are_not_far),
        cmocka_unit_test(a_second_within_eight_weeks_may_agree),
        cmocka_unit_test(a_second_agrees_when_it_is_not_far),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
