#include "calc/series.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* Expected values are a coach's arithmetic by hand, in tenths of a per cent, of an rpe and so on: 725 is 72.5 %. */
#define BAND(l, h)                                                                                                     \
    {                                                                                                                  \
        { (l) * (DEC_ONE / 10) },                                                                                      \
        {                                                                                                              \
            (h) * (DEC_ONE / 10)                                                                                       \
        }                                                                                                              \
    }
#define ONE(v) BAND(v, v)
#define WEEK(bands)                                                                                                    \
    {                                                                                                                  \
        (bands), sizeof(bands) / sizeof((bands)[0])                                                                    \
    }
#define LIST(k, w) .kind = (k), .weeks = (w), .count = sizeof(w) / sizeof((w)[0])

static const struct dec no_grain = { 0 }, half = { DEC_ONE / 2 }, whole = { DEC_ONE };

static struct ratio tenths(int64_t num)
{
    return ratio_make(num, 10);
}

static void assert_value(struct ratio is, struct ratio expected)
{
    if (ratio_cmp(is, expected) != 0)
        fail_msg("%lld/%lld is not %lld/%lld", (long long)is.num, (long long)is.den, (long long)expected.num,
                 (long long)expected.den);
}

static void assert_band(struct ratio_band is, struct ratio low, struct ratio high)
{
    assert_value(is.low, low);
    assert_value(is.high, high);
}

/* `expected` holds n weeks of the first set, in tenths. */
static void assert_weeks(const struct series *series, int n, struct dec grain, const int *expected)
{
    for (int i = 1; i <= n; i++)
        assert_band(series_value(series, i, n, 0, grain), tenths(expected[i - 1]), tenths(expected[i - 1]));
}

static const struct band seven[] = { ONE(70) }, seven_half[] = { ONE(75) }, eight[] = { ONE(80) },
                         eight_half[] = { ONE(85) }, six[] = { ONE(60) };

/* 7 */
static void test_single_value(void **state)
{
    (void)state;
    const struct series_week weeks[] = { WEEK(seven) };
    const struct series series = { LIST(SERIES_LIST, weeks) };
    assert_weeks(&series, 4, half, (const int[]){ 70, 70, 70, 70 });
    assert_int_equal(series_sets(&series, 3), 1);
}

/* 7 | 7.5 | 8: the i-th; the last holds, also past n; more than the weeks is no harm */
static void test_list(void **state)
{
    (void)state;
    const struct series_week weeks[] = { WEEK(seven), WEEK(seven_half), WEEK(eight) };
    const struct series series = { LIST(SERIES_LIST, weeks) };
    assert_weeks(&series, 5, half, (const int[]){ 70, 75, 80, 80, 80 });
    assert_weeks(&series, 2, half, (const int[]){ 70, 75 });
    assert_band(series_value(&series, 9, 5, 0, half), tenths(80), tenths(80));
}

/* from 7 to 8.5 in 4 and 5 weeks, rpe to the half: 7, 7.375, 7.75, 8.125, 8.5; 7.75 goes away from zero */
static void test_ramp_of_effort(void **state)
{
    (void)state;
    const struct series_week weeks[] = { WEEK(seven), WEEK(eight_half) };
    const struct series series = { LIST(SERIES_RAMP, weeks) };
    assert_weeks(&series, 4, half, (const int[]){ 70, 75, 80, 85 });
    assert_weeks(&series, 5, half, (const int[]){ 70, 75, 80, 80, 85 });
    assert_weeks(&series, 1, half, (const int[]){ 70 });
    assert_weeks(&series, 2, half, (const int[]){ 70, 85 });
    assert_band(series_value(&series, 7, 5, 0, half), tenths(85), tenths(85));
    assert_band(series_value(&series, 2, 1, 0, half), tenths(70), tenths(70));
}

/* at rpe from 6 to 8 in 5 weeks, one of the design's own examples */
static void test_ramp_exactly_on_halves(void **state)
{
    (void)state;
    const struct series_week weeks[] = { WEEK(six), WEEK(eight) };
    const struct series series = { LIST(SERIES_RAMP, weeks) };
    assert_weeks(&series, 5, half, (const int[]){ 60, 65, 70, 75, 80 });
}

/* at from 70 to 80% in 4 weeks: 73.3.. and 76.6.. to the half per cent, to the whole, and kept exact for weights */
static void test_ramp_grains(void **state)
{
    (void)state;
    const struct band seventy[] = { ONE(700) }, eighty[] = { ONE(800) };
    const struct series_week weeks[] = { WEEK(seventy), WEEK(eighty) };
    const struct series series = { LIST(SERIES_RAMP, weeks) };
    assert_weeks(&series, 4, half, (const int[]){ 700, 735, 765, 800 });
    assert_weeks(&series, 4, whole, (const int[]){ 700, 730, 770, 800 });
    assert_band(series_value(&series, 2, 4, 0, no_grain), ratio_make(220, 3), ratio_make(220, 3));
    assert_band(series_value(&series, 3, 4, 0, no_grain), ratio_make(230, 3), ratio_make(230, 3));
}

/* (from 5 to 2) reps in 3 weeks: 3.5 is rounded away from zero, downhill too; a negative ramp likewise */
static void test_ramp_downhill(void **state)
{
    (void)state;
    const struct band five[] = { ONE(50) }, two[] = { ONE(20) }, down_two[] = { ONE(-20) }, down_five[] = { ONE(-50) };
    const struct series_week fewer[] = { WEEK(five), WEEK(two) }, below[] = { WEEK(down_two), WEEK(down_five) };
    const struct series reps = { LIST(SERIES_RAMP, fewer) }, minus = { LIST(SERIES_RAMP, below) };
    assert_weeks(&reps, 3, whole, (const int[]){ 50, 40, 20 });
    assert_weeks(&minus, 3, whole, (const int[]){ -20, -40, -50 });
}

/* 75% plus 2.5% each week; 3 plus 1 each 2 weeks; 80 minus 2.5 each week. Steps are never rounded. */
static void test_step(void **state)
{
    (void)state;
    const struct band start[] = { ONE(750) }, three[] = { ONE(30) };
    const struct series_week at_75[] = { WEEK(start) }, at_3[] = { WEEK(three) };
    struct series series = { LIST(SERIES_STEP, at_75), .by = { 5 * (DEC_ONE / 2) }, .each = 1 };
    assert_weeks(&series, 4, whole, (const int[]){ 750, 775, 800, 825 });
    series.by.e10 = -series.by.e10;
    assert_weeks(&series, 4, whole, (const int[]){ 750, 725, 700, 675 });

    const struct series sets = { LIST(SERIES_STEP, at_3), .by = { DEC_ONE }, .each = 2 };
    assert_weeks(&sets, 6, whole, (const int[]){ 30, 30, 40, 40, 50, 50 });
    assert_band(series_value(&sets, 8, 6, 0, whole), tenths(60), tenths(60));
}

/* wave 72.5 | 80 | 87.5%, over and over, and each pass 2 % higher */
static void test_wave(void **state)
{
    (void)state;
    const struct band low[] = { ONE(725) }, middle[] = { ONE(800) }, high[] = { ONE(875) };
    const struct series_week weeks[] = { WEEK(low), WEEK(middle), WEEK(high) };
    struct series series = { LIST(SERIES_WAVE, weeks) };
    assert_weeks(&series, 7, whole, (const int[]){ 725, 800, 875, 725, 800, 875, 725 });
    series.by = dec_int(2);
    assert_weeks(&series, 7, whole, (const int[]){ 725, 800, 875, 745, 820, 895, 765 });
}

/* 65-70%, and 8-12 reps: both ends move */
static void test_bands(void **state)
{
    (void)state;
    const struct band first[] = { BAND(650, 700) }, last[] = { BAND(750, 850) };
    const struct series_week weeks[] = { WEEK(first), WEEK(last) };
    const struct series list = { LIST(SERIES_LIST, weeks) }, ramp = { LIST(SERIES_RAMP, weeks) };
    const struct series step = { .kind = SERIES_STEP, .weeks = weeks, .count = 1, .by = dec_int(3), .each = 1 };
    const struct series wave = { LIST(SERIES_WAVE, weeks), .by = dec_int(1) };
    assert_band(series_value(&list, 2, 4, 0, half), tenths(750), tenths(850));
    assert_band(series_value(&ramp, 2, 4, 0, half), tenths(685), tenths(750)); /* 68.33.. 75 */
    assert_band(series_value(&ramp, 2, 4, 0, no_grain), ratio_make(205, 3), ratio_int(75));
    assert_band(series_value(&step, 3, 4, 0, half), tenths(710), tenths(760));
    assert_band(series_value(&wave, 3, 4, 0, half), tenths(660), tenths(710));
}

/* 70, 75% | 75, 80, 85%: a list for the sets in each week; past the list its last holds */
static void test_comma_lists(void **state)
{
    (void)state;
    const struct band first[] = { ONE(700), ONE(750) }, second[] = { ONE(750), ONE(800), BAND(850, 900) };
    const struct series_week weeks[] = { WEEK(first), WEEK(second) };
    struct series series = { LIST(SERIES_LIST, weeks) };
    assert_int_equal(series_sets(&series, 1), 2);
    assert_int_equal(series_sets(&series, 2), 3);
    assert_int_equal(series_sets(&series, 3), 3);
    assert_band(series_value(&series, 1, 2, 1, half), tenths(750), tenths(750));
    assert_band(series_value(&series, 1, 2, 4, half), tenths(750), tenths(750));
    assert_band(series_value(&series, 2, 2, 0, half), tenths(750), tenths(750));
    assert_band(series_value(&series, 2, 2, 2, half), tenths(850), tenths(900));

    series.kind = SERIES_WAVE;
    assert_int_equal(series_sets(&series, 3), 2);
    assert_int_equal(series_sets(&series, 4), 3);
    series.kind = SERIES_RAMP;
    assert_int_equal(series_sets(&series, 1), 3);
    assert_band(series_value(&series, 2, 3, 1, half), tenths(775), tenths(775));
    assert_band(series_value(&series, 2, 3, 2, half), tenths(800), tenths(825)); /* from 75 to 85-90 */
    series = (struct series){ .kind = SERIES_STEP, .weeks = weeks, .count = 1, .by = dec_int(2), .each = 1 };
    assert_int_equal(series_sets(&series, 5), 2);
    assert_band(series_value(&series, 2, 5, 1, half), tenths(770), tenths(770));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_single_value),   cmocka_unit_test(test_list),
        cmocka_unit_test(test_ramp_of_effort), cmocka_unit_test(test_ramp_exactly_on_halves),
        cmocka_unit_test(test_ramp_grains),    cmocka_unit_test(test_ramp_downhill),
        cmocka_unit_test(test_step),           cmocka_unit_test(test_wave),
        cmocka_unit_test(test_bands),          cmocka_unit_test(test_comma_lists),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
